"""From folders of YAML to a checked library that knows where each of its parts is written."""

from generator.reading.reading import Reading, read_library

__all__ = ["Reading", "read_library"]
