"""Reads content, computes the day's numbers, and publishes them as a site, cards and phone data."""
