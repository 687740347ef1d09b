"""The pattern's own short words for stitches: "X: single crochet", "v = inc", "PB = single crochet", "F = BLO"."""

from __future__ import annotations

import regex

from lint.lexicon import Lexicon
from lint.reading import definitions
from lint.source import SourceText

_MEANT = ("stitch", "increase", "decrease", "chain", "back_loop", "front_loop")


def house_letters(entries: list[definitions.Entry], plain: Lexicon, source: SourceText) -> list[tuple[str, str, str]]:
    """The pattern's own short words for stitches: "X: single crochet", "V: increase", "PB = single crochet"."""
    found: list[tuple[str, str, str]] = []
    for entry in entries:
        meant = plain.read(regex.sub(r"\(.*?\)|\.$", "", entry.body).strip())
        if len(meant) != 1 or meant[0].kind not in _MEANT:
            continue
        for form in entry.forms:
            printed = source.text[entry.span.start : entry.span.start + len(form)]
            letter = len(form) == 1
            if regex.fullmatch(r"\p{L}+", form) and (letter or len(form) > 1 and not plain.knows(form)):
                found.append((printed if letter else form, meant[0].kind, meant[0].value))
    return found
