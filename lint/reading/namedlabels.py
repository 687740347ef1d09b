"""Labels that name the size at each figure: "Rows 3 to 5 (S), 6 (M), 7 (L):", "Rnds 4-9 for M, 4-11 for L:"."""

from __future__ import annotations

from dataclasses import replace

import regex

from lint.reading.audience import SizeWords
from lint.reading.labels import Found, LabelReader
from lint.source import Span

_WORD = r"(?:rows?|rnds?|rounds?|rds?)\.?\s+"
_TO = r"\s*(?:[-–—]|to|thru|through)\s*"
_FIGURE = rf"\d{{1,3}}(?:{_TO}\d{{1,3}})?"
_NAMED = rf"(?P<figure>{_FIGURE})\s*(?:[(\[]\s*(?:for\s+)?(?P<name>[^()\[\]:,;]{{1,24}})[)\]]|for\s+(?P<name>[^()\[\]:,;]{{1,24}}?))"
_SIGN = r"\s*(?:,\s*(?:and\s+|or\s+)?|;\s*|/\s*|\s(?:and|or)\s+)"
_LABEL = regex.compile(
    rf"(?i)(?P<lead>[\s*•_#-]*(?P<core>{_WORD}(?P<first>\d{{1,3}}{_TO})?))(?P<list>{_NAMED}(?:{_SIGN}{_NAMED})+)\s*(?P<sign>:)"
)


def named_label(labels: LabelReader, sizes: SizeWords, line: str, offset: int) -> Found | None:
    """The label of a line in which every size is named once, each at its last row or its run of rows."""
    match = _LABEL.match(line) if sizes.number > 1 else None
    if match is None:
        return None
    told = list(match.captures("figure"))
    runs = [not figure.isdigit() for figure in told[1:]]
    lead = match["lead"]
    if match["first"] and all(runs):  # "Rows 3-5 (S), 3-6 (M)": the first is a run as well
        lead, told[0] = lead[: len(lead) - len(match["first"])], match["first"] + told[0]
    elif match["first"] and any(runs):
        return None
    figures: dict[int, str] = {}
    for figure, name in zip(told, match.captures("name"), strict=True):
        named = sizes.sizes_of(name) or ()
        if len(named) != 1 or named[0] in figures:
            return None
        figures[named[0]] = figure
    if len(figures) != sizes.number:
        return None
    first, *others = (figures[size] for size in range(sizes.number))
    found = labels.at_line(f"{lead}{first} ({', '.join(others)}):", offset)
    if found is None:
        return None
    span = Span(offset + match.start("core"), offset + match.end("list"))
    return replace(found, label=replace(found.label, span=span), body=offset + match.end("sign"))
