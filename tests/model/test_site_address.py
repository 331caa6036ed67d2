"""The address of a site: what RFC 3986 lets stand in one, over https, ending in a folder."""

from __future__ import annotations

from urllib.parse import urlsplit

import pytest
from pydantic import ValidationError

from generator.model.plan import Farm


def farm(address: str) -> Farm:
    return Farm(name="The Invented Hearth", first_units="metric", plan="saturday", site_address=address)


@pytest.mark.parametrize(
    "address",
    [
        "https://farm.example/",
        "https://farm.example/day/",
        "https://xn--hfe-rna.example:8443/~ida/day-1/h%C3%B6fe/",
        "https://192.0.2.7/a/b.c/",
    ],
)
def test_addresses_of_folders_over_https_pass(address: str) -> None:
    assert farm(address).site_address == address
    assert urlsplit(address).path.endswith("/")


@pytest.mark.parametrize(
    "address",
    [
        "farm.example/",
        "http://farm.example/",
        "https://farm.example",
        "https:///",
        "https://[x/",
        "https://my farm/",
        "https://farm.example:abc/",
        "https://farm.example//",
        "https://farm.example/day/../",
        "https://farm.example/day?x=/",
        "https://farm.example/#/",
        "https://ida@farm.example/",
        "https://farm.example/höfe/",
        "https://farm.example/\n/",
        "https://farm.example/</script>/",
    ],
)
def test_anything_else_is_refused(address: str) -> None:
    with pytest.raises(ValidationError):
        farm(address)
