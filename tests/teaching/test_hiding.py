"""Words are hidden one after the other, the heaviest first, and the sentence stays whole."""

from __future__ import annotations

from tests.teaching.conftest import Phone


def test_numbers_and_long_words_go_first(phone: Phone) -> None:
    pieces = phone.ask("piecesOf(text)", text="Start the timer: 90 s.")
    turns = {piece["text"]: piece["turn"] for piece in pieces if piece["word"]}
    assert turns == {"90": 1, "Start": 2, "timer": 3, "the": 4, "s": 5}


def test_all_pieces_together_are_the_sentence(phone: Phone) -> None:
    text = "Don’t “park” a scalded bird – ever (145 °F)!"
    assert "".join(piece["text"] for piece in phone.ask("piecesOf(text)", text=text)) == text
    assert phone.ask("piecesOf('')") == []
