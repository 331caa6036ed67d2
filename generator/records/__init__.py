"""The records of days: taken from files, merged, judged, told on paper, kept by season, and learned from."""
