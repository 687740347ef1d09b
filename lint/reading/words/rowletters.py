"""Reads rows named by a letter within a row: "bpsc around next sc of R2", where the labels are "R2:"."""

from __future__ import annotations

from dataclasses import replace

from lint.reading.words.stream import Stream

_OF_A_ROW = (
    "stitch", "any_stitch", "special", "one_stitch", "group_word", "space", "chain", "number", "picot", "back_loop", "front_loop",
)  # fmt: skip


def letters_as_rows(stream: Stream) -> Stream:
    """The row with the "R" of "sc of R2" as the round it stands for; a row and a round are named alike there."""
    words = stream.lexemes
    at = {
        i
        for i in range(2, len(words) - 1)
        if words[i].text in ("R", "r")
        and words[i + 1].kind == "number"
        and words[i + 1].glued
        and words[i - 1].lower in ("of", "from")
        and words[i - 2].kind in _OF_A_ROW
    }
    if not at:
        return stream
    changed = [replace(item, kind="round") if i in at else item for i, item in enumerate(words)]
    return Stream(changed, stream.vocabulary)
