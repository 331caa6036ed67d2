"""How people are taught: questions with the day's numbers, words explained where they are met."""
