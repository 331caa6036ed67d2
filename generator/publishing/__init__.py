"""From pages to a folder that any host can serve: writes the Markdown, runs the site engine, seals, swaps, serves."""
