"""Lines that only tell how many of the piece are made whose name stands above them: "LEGS", and below it "Make two"."""

from __future__ import annotations

from dataclasses import replace

from lint.expression import expression
from lint.reading.lines.headings import Line, PartHeadings, number_of

_N = r"(?P<n>\d{1,2}|two|three|four|five|six|eight|ten|twelve)"
_ALIKE = r"(?:\s+(?:alike|the\s+same|identical(?:ly)?|pieces?|pcs|of\s+(?:these|them|each)|like\s+this|in\s+all|in\s+total))*"
_TELLS = expression(
    rf"(?i)\W*(?:(?:make|work|crochet|mk)\s+{_N}{_ALIKE}|{_N}\s+(?:pieces|pcs|parts|alike)(?:\s+(?:alike|needed))?"
    rf"|(?:make|work|crochet)\s+{_N}\s*[,:–-]\s*(?:one|1)\s[^.;]*"
    r"|(?:make|work)\s+(?P<both>both)\s+(?:alike|the\s+same)|(?P<both>both)\s+alike)\W*"
)


def with_makes(headings: PartHeadings) -> tuple[PartHeadings, dict[int, int]]:
    """The headings without such lines, and by a heading's line how many of its piece are made."""
    lines, makes = list(headings.lines), {}
    for index, line in enumerate(lines):
        told = _TELLS.fullmatch(line.text) if 3 < len(line.text) < 60 else None
        above = next((at for at in (index - 1, index - 2) if at >= 0 and not lines[at].blank), None)
        if told is None or above is None or not headings.names_piece(above):
            continue
        makes[above] = number_of(told["n"]) or 1 if told["n"] else 2
        lines[index] = Line(line.start, "")
    return (replace(headings, lines=lines), makes) if makes else (headings, makes)


def without_makes(text: str) -> str:
    """The text without its lines that only tell how many are made."""
    return "\n".join(line for line in text.split("\n") if _TELLS.fullmatch(line) is None)
