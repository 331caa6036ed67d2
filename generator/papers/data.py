"""What a template is given: nothing but texts, numbers, lists and mappings.

It stands apart from the wording that makes it, since a process that only sets papers loads nothing else.
"""

from typing import Any

Data = dict[str, Any]
