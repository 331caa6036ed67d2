"""What content may say: typed, frozen entries. A folder of content is named after its kind."""
