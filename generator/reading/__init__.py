"""From folders of YAML to a checked library that knows where each of its parts is written."""

from generator.reading.reading import Reading
from generator.reading.references import known_quantities
from generator.reading.story import read_library

__all__ = ["Reading", "known_quantities", "read_library"]
