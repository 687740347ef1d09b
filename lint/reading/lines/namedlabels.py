"""Labels that name the sizes at their figures: "Rows 3 to 5 (S), 6 (M), 7 (L):", "Rows 4-9 (4-11 for sizes L and XL):"."""

from __future__ import annotations

from dataclasses import replace

from lint.expression import expression
from lint.reading.lines.labels import Found, LabelReader
from lint.reading.sizes.audience import SizeWords
from lint.source import Span

_LONGEST = 300  # characters of a label
_WORD = r"(?:rows?|rnds?|rounds?|rds?)\.?\s+"
_TO = r"\s*(?:[-–—]|to|thru|through)\s*"
_FIGURE = rf"\d{{1,3}}(?:{_TO}\d{{1,3}})?"
_NAMED = rf"(?P<figure>{_FIGURE})\s*(?:[(\[]\s*(?:for\s+)?(?P<name>[^()\[\]:,;]{{1,24}})[)\]]|for\s+(?P<name>[^()\[\]:,;]{{1,24}}?))"
_SIGN = r"\s*(?:,\s*(?:and\s+|or\s+)?|;\s*|/\s*|\s(?:and|or)\s+)"
_LABEL_SIGN = r"(?:\s*(?P<sign>:)|(?P<sign>\s[-–—]+(?=\s)))"
_LABEL = expression(
    rf"(?i)(?P<lead>[\s*•_#-]*(?P<core>{_WORD}(?P<first>\d{{1,3}}{_TO})?))(?P<list>{_NAMED}(?:{_SIGN}{_NAMED})+){_LABEL_SIGN}"
)
# a figure for all, and in brackets that of some: "Rows 29-31 (31-34 for sizes L and XL):", "Rows 4-9 (L: Rows 4-11):"
_BUT_SOME = expression(
    rf"(?i)[\s*•_#-]*(?P<core>{_WORD})(?P<figure>{_FIGURE})\s*[(\[]\s*(?:(?P<other>{_FIGURE})\s+for\s+(?P<name>[^()\[\]:;]{{1,30}})"
    rf"|(?:for\s+)?(?P<name>[^()\[\]:;\d]{{1,30}})\s*:\s*(?:{_WORD})?(?P<other>{_FIGURE}))\s*(?P<end>[)\]]){_LABEL_SIGN}"
)


def named_label(labels: LabelReader, sizes: SizeWords, line: str, offset: int) -> Found | None:
    """The label of a line in which every size is named once, each at its last row or its run of rows."""
    if sizes.number < 2:
        return None
    some = _BUT_SOME.match(line[:_LONGEST])
    if some is not None and (others := sizes.sizes_of(some["name"].strip())):
        figures = [some["other"] if size in others else some["figure"] for size in range(sizes.number)]
        return _with_figures(
            labels, some["core"], figures, offset, (some.start("core"), some.end("end")), some.end("sign")
        )
    match = _LABEL.match(line[:_LONGEST])
    if match is None:
        return None
    told = list(match.captures("figure"))
    runs = [not figure.isdigit() for figure in told[1:]]
    lead = match["lead"]
    if match["first"] and all(runs):  # "Rows 3-5 (S), 3-6 (M)": the first is a run as well
        lead, told[0] = lead[: len(lead) - len(match["first"])], match["first"] + told[0]
    elif match["first"] and any(runs):
        return None
    by_size: dict[int, str] = {}
    for figure, name in zip(told, match.captures("name"), strict=True):
        named = sizes.sizes_of(name.strip()) or ()
        if not named or not by_size.keys().isdisjoint(named):
            return None
        by_size |= dict.fromkeys(named, figure)
    if len(by_size) != sizes.number:
        return None
    figures = [by_size[size] for size in range(sizes.number)]
    return _with_figures(labels, lead, figures, offset, (match.start("core"), match.end("list")), match.end("sign"))


def _with_figures(
    labels: LabelReader, lead: str, figures: list[str], offset: int, place: tuple[int, int], body: int
) -> Found | None:
    """The label that has these figures, one a size, as if it were printed so."""
    first, *others = figures
    found = labels.at_line(f"{lead}{first} ({', '.join(others)}):", offset)
    if found is None:
        return None
    span = Span(offset + place[0], offset + place[1])
    return replace(found, label=replace(found.label, span=span), body=offset + body)
