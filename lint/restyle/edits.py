"""Changes to a text: where, to what, and under which rule of the house; put in all at once."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from lint.source import SourceText, Span


@dataclass(frozen=True, slots=True)
class Edit:
    """One stretch of the text and what it becomes.

    `rule`: the check that finds the old words; `subject`: what edits of one kind share ("sl st", "row labels").
    """

    span: Span
    new: str
    rule: str
    subject: str


@dataclass(frozen=True, slots=True)
class Kept:
    """Words that may want a change but were left, because nothing says for certain what they mean."""

    span: Span
    why: str


def settled(text: str, edits: Iterable[Edit]) -> list[Edit]:
    """Edits that change something, in the order of the text; of two that meet, the first given is kept."""
    chosen: list[Edit] = []
    taken: list[Span] = []
    for edit in edits:
        if text[edit.span.start : edit.span.end] == edit.new:
            continue
        if any(_meet(edit.span, other) for other in taken):
            continue
        chosen.append(edit)
        taken.append(edit.span)
    return sorted(chosen, key=lambda edit: (edit.span.start, edit.span.end))


def _meet(one: Span, other: Span) -> bool:
    if one.start == one.end or other.start == other.end:
        return other.start < one.start < other.end or one.start < other.start < one.end or one == other
    return one.start < other.end and other.start < one.end


def applied(text: str, edits: list[Edit]) -> str:
    """The text with settled edits put in."""
    pieces, at = [], 0
    for edit in edits:
        pieces += [text[at : edit.span.start], edit.new]
        at = edit.span.end
    return "".join([*pieces, text[at:]])


def lines_before(source: SourceText, edits: list[Edit]) -> list[int]:
    """For each line of the text with settled edits put in, the line that it was; a new line has its neighbour's number."""
    found, at = [1], 0
    for edit in edits:
        found += _lines_begun(source, at, edit.span.start)
        here = source.line_of(Span(edit.span.start, edit.span.start))
        found += [here] * edit.new.count("\n")
        at = edit.span.end
        if edit.new.endswith("\n"):
            found[-1] = source.line_of(Span(at, at))  # what stands behind an inserted line keeps its own number
    return [*found, *_lines_begun(source, at, len(source.text))]


def _lines_begun(source: SourceText, start: int, end: int) -> list[int]:
    first = source.line_of(Span(start, start))
    return [first + number for number in range(1, source.text.count("\n", start, end) + 1)]


def cased(new: str, old: str) -> str:
    """New words in the letter case of the old: "Sc" gives "Dc", "DOUBLE CROCHET" gives "TREBLE CROCHET"."""
    letters = [character for character in old if character.isalpha()]
    if len(letters) > 1 and all(character.isupper() for character in letters):
        return new.upper()
    words = old.replace("-", " ").split()
    if len(words) > 1 and all(word[0].isupper() for word in words if word[0].isalpha()):
        return " ".join(word[:1].upper() + word[1:] for word in new.split(" "))
    return new[:1].upper() + new[1:] if old[:1].isupper() else new
