"""`verify`: whether a published site is what was built."""

from __future__ import annotations

from argparse import Namespace

from generator.publishing.comparing import compare_with_host


def run(options: Namespace) -> int:
    """Compares every file and says how many were alike; differences are raised and reported."""
    number = compare_with_host(options.into / "site", options.address)
    print(f"All {number} files at {options.address} are as they were built.")
    return 0
