"""What content must hold to beyond its shape: one rule a file, all of them listed in `rulebook`."""

from generator.rules.rulebook import RULES, check_rules

__all__ = ["RULES", "check_rules"]
