"""What a person types: reads the words, calls the pipeline, prints findings, and never a traceback."""
