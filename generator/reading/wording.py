"""The shape checker's findings in the words of someone who writes content."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from generator.problems import as_shown, did_you_mean
from generator.reading.complaint import EMPTY, Complaint, Said, what_it_is
from generator.reading.known_keys import known_keys

_SITE = "write `https://`, the host and its folders, `/` at the end; no blanks, accents, `?` or `#` in it"


def describe(complaint: Complaint) -> Said:
    """The words for a finding; a value that is empty is always said to be empty."""
    kind = complaint.detail["type"]
    if complaint.path[-1:] == ("[key]",):
        return _bad_id(complaint)
    if complaint.detail["input"] is None and kind not in ("missing", "extra_forbidden"):
        return Said(f"{complaint.subject} is empty", EMPTY)
    words = _WORDS.get(kind)
    if words:
        return words(complaint)
    return Said(f"{complaint.subject}: {complaint.detail['msg']}")


def _missing(complaint: Complaint) -> Said:
    if isinstance(complaint.node.value, list):
        return Said(f"`{complaint.field}` has too few items", "write all of them: [first, second]")
    return Said(f"`{complaint.owner}` lacks `{complaint.field}`", f"add a line `{complaint.field}: ...` to it")


def _unknown_key(complaint: Complaint) -> Said:
    known = known_keys(complaint.kind, complaint.name, complaint.path[:-1])
    if complaint.detail["input"] is None:
        return Said(
            f"unknown key {as_shown(complaint.field)}", "inside `{ }` and `[ ]`, text with a comma stands in quotes"
        )
    hint = did_you_mean(complaint.field, known, "known keys: " + ", ".join(known))
    return Said(f"unknown key {as_shown(complaint.field)}", hint)


def _bad_id(complaint: Complaint) -> Said:
    text = complaint.detail["input"]
    if complaint.detail["type"] == "string_too_long":
        return Said(f"the id {as_shown(text)} is too long", f"at most {complaint.context('max_length')} characters")
    letters = "`-`" if complaint.kind == "sources" and len(complaint.path) == 1 else "`_`"
    return Said(f"{as_shown(text)} is not an id", f"small letters a to z, digits and {letters}, a letter first")


def _bad_id_value(complaint: Complaint) -> Said:
    text = complaint.detail["input"]
    if complaint.field == "site_address":
        return Said(f"`site_address` is {as_shown(text)}", _SITE)
    if complaint.field == "emergency_call":
        return Said(f"`emergency_call` is {as_shown(text)}", "digits, blanks, `-` and `+` alone, in straight quotes")
    dash = complaint.field == "id"
    return Said(
        f"{complaint.subject} holds {as_shown(text)}, which is not an id",
        f"small letters a to z, digits and {'`-`' if dash else '`_`'}, a letter first",
    )


def _too_long(complaint: Complaint) -> Said:
    limit, length = int(str(complaint.context("max_length"))), len(str(complaint.detail["input"]))
    return Said(f"{complaint.subject} is {length} characters long, {length - limit} too many", f"at most {limit}")


def _too_short(complaint: Complaint) -> Said:
    return Said(f"{complaint.subject} is empty", EMPTY)


def _too_many(complaint: Complaint) -> Said:
    length, limit = complaint.context("actual_length"), complaint.context("max_length")
    return Said(f"`{complaint.field}` has {length} items, not {limit}", f"write {limit}")


def _one_of(complaint: Complaint) -> Said:
    known = str(complaint.context("expected")).replace('"', "'").removesuffix("'")
    options = _options(known)
    value = complaint.detail["input"]
    hint = did_you_mean(str(value), options, "")
    if complaint.field == "source":
        return Said(
            f"`source` is {as_shown(str(value))}",
            hint or f"write {{id: ..., place: ...}} or one of: {', '.join(options)}",
        )
    listed = "one of: " + ", ".join(options)
    return Said(f"{complaint.subject} is {as_shown(str(value))}", f"{hint} {listed}".strip())


def _options(expected: str) -> list[str]:
    """`'a', 'b' or 'c'` as a list; an apostrophe inside one of them stays."""
    parts = expected.replace(" or '", ", '").split(", '")
    return [part.strip().removeprefix("'").removesuffix("'") for part in parts]


def _fault(complaint: Complaint) -> Said:
    return Said(f"{complaint.subject} {complaint.context('what')}", str(complaint.context("hint")))


def _wrong_type(wanted: str, hint: str) -> Callable[[Complaint], Said]:
    def words(complaint: Complaint) -> Said:
        return Said(f"{complaint.subject} must be {wanted}, not {what_it_is(complaint.detail['input'])}", hint)

    return words


def _not_text(complaint: Complaint) -> Said:
    has_colon = isinstance(complaint.detail["input"], Mapping)  # as YAML reads `Step back: it is hot.`
    hint = "put text that contains `: ` in quotes" if has_colon else "write text; figures that are text stand in quotes"
    return _wrong_type("text", hint)(complaint)


_MAPPING = _wrong_type("a mapping", "write lines of `key: value` below it")
_LIST = _wrong_type("a list", "write [a, b], or lines that begin with `- `")
_NUMBER = _wrong_type("a number", "write digits, without a unit")
_WORDS: dict[str, Callable[[Complaint], Said]] = {
    "missing": _missing,
    "extra_forbidden": _unknown_key,
    "string_type": _not_text,
    "string_too_long": _too_long,
    "string_too_short": _too_short,
    "string_pattern_mismatch": _bad_id_value,
    "too_long": _too_many,
    "literal_error": _one_of,
    "fault": _fault,
    "int_type": _wrong_type("a whole number", "write digits only"),
    "float_type": _NUMBER,
    "finite_number": _NUMBER,
    "bool_type": _wrong_type("true or false", "write true or false"),
    "dict_type": _MAPPING,
    "model_type": _MAPPING,
    "tuple_type": _LIST,
}
