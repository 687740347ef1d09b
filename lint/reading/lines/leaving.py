"""Sizes that leave off: "Size S stops here.", "End here for sizes S and M. Continue to Rnd 19.", "Small stop after Row 12."."""

from __future__ import annotations

from dataclasses import dataclass, replace

import regex

from lint.expression import expression
from lint.pattern import Label
from lint.reading.sizes.gates import GateReader, Sizes, goes_on_to

_NAMES = r"[\w/][\w/.½¼¾,&+ ()–-]{0,60}?"
_DONE = r"(?:stops?|ends?|finish(?:es)?|(?:is|are)\s+(?:now\s+)?(?:done|finished|completed?)|done|fastens?\s+off)"
_AFTER = r"(?:\s+(?:after|at\s+the\s+end\s+of|at|with)\s+(?:row|rnd|round|rd)\s+(?P<after>\d+))"
_FORMS = (
    rf"(?:for\s+)?(?:the\s+)?(?P<said>sizes?\s+)?(?P<names>{_NAMES})(?:\s+sizes?)?(?:\s+only)?\s*[:,–—-]?\s*(?P<done>{_DONE})(?:\s+(?P<here>here|now|at\s+this\s+point)\b|{_AFTER})?(?:\s+[\w\s]{{0,30}}?)?",
    rf"(?P<done>{_DONE})(?:\s+\p{{L}}+)?(?P<here>\s+here)?\s+for\s+(?:the\s+)?(?P<said>sizes?\s+)?(?P<names>{_NAMES})(?:\s+sizes?)?(?:\s+only)?(?P<here>\s+here)?",
)
_SENTENCE = expression(r"[^.;!)\]]+(?:[.;!)\]]+|$)")
_SAYS = tuple(expression(rf"[\W_]*{form}[\s*_)\]]*[.;!]?\s*", regex.I) for form in _FORMS)
_ALSO = expression(rf"[\W_]*(?:and\s+)?(?:sizes?\s+)?(?P<names>{_NAMES}){_AFTER}[\s*_)\]]*[.;!]?\s*", regex.I)


@dataclass(frozen=True, slots=True)
class Leaving:
    """Sizes that leave off where they are, or after a row; None: it is not told which."""

    sizes: Sizes | None
    after: int | None = None
    goes_on: str | None = None


def leavings(reader: GateReader, line: str) -> tuple[list[Leaving], int]:
    """What the sentences of a line say of sizes that leave off, and where those begin, if nothing else follows."""
    found: list[Leaving] = []
    begin = len(line)
    if reader.number < 2 or not expression(r"(?i)\b(?:stop|end|finish|done|fasten|complet)").search(line):
        return found, begin
    for match in _SENTENCE.finditer(line):
        sentence = match[0]
        if not sentence.strip(" .;!*_()[]"):
            continue
        one = _leaving(reader, sentence, bool(found))
        if one is not None:
            begin = min(begin, match.start())
            found.append(one)
        elif found and (where := goes_on_to(sentence)):
            found[-1] = replace(found[-1], goes_on=where)
        else:
            begin = len(line)
    return found, begin


def _leaving(reader: GateReader, sentence: str, more: bool) -> Leaving | None:
    for form in _SAYS:
        match = form.fullmatch(sentence)
        if match is None:
            continue
        sizes, after = reader.sizes_of(match["names"]), match.groupdict().get("after")
        if sizes is not None and len(sizes) < reader.number:
            return Leaving(sizes, int(after) if after else None)
        if sizes is None and match["said"] and (match["here"] or after):
            return Leaving(None)
    match = _ALSO.fullmatch(sentence) if more else None
    sizes = reader.sizes_of(match["names"]) if match is not None else None
    return Leaving(sizes, int(match["after"])) if match is not None and sizes is not None else None


def cut_after(label: Label, leaving: Leaving, number: int) -> Label:
    """The label, without rows that the sizes which leave off work no more; `number` of sizes in all."""
    numbers = [label.at(size) for size in range(number)]
    for size in leaving.sizes or ():
        numbers[size] = tuple(row for row in numbers[size] if row <= (leaving.after or row))
    if all(own == label.at(size) for size, own in enumerate(numbers)):
        return label
    return replace(label, by_size=tuple(numbers))
