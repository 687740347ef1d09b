"""Words that the written reports share: weights, numbers of things, titles, and text made safe to show."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from lint.expression import expression
from lint.finding import Finding, Likely, Weight
from lint.inspection import Report


@dataclass(frozen=True, slots=True)
class WeightWords:
    """How a weight is said, of one finding and of several, and what it means."""

    title: str
    one: str
    many: str
    meaning: str


WEIGHTS = {
    Weight.CORRECTION: WeightWords("Correction", "correction", "corrections", "certainly wrong"),
    Weight.QUERY: WeightWords("Query", "query", "queries", "a question for you to answer"),
    Weight.STYLE: WeightWords("Style", "style note", "style notes", "a matter of house or common style"),
}

VERDICTS = {"ready": "ready", "queries": "queries to settle", "corrections": "corrections needed"}

# Control characters are shown by their pictures, or by the sign for an unknown character, and do nothing.
_PICTURES = {code: 0x2400 + code for code in range(32) if chr(code) not in "\t\n\r"} | {0x7F: 0x2421}
_UNSHOWN = dict.fromkeys([*range(0x80, 0xA0), *range(0xD800, 0xE000)], 0xFFFD)
_TAME = _PICTURES | _UNSHOWN


def tame(text: str) -> str:
    """Text with its control characters made visible and harmless; everything else stays."""
    return text if text.isprintable() else text.translate(_TAME)


def title_of(report: Report) -> str:
    """The pattern's title, or its file's name; and the size whose maker reads it, if it is one maker's."""
    return _title(report) if report.maker is None else f"{_title(report)}, size {report.maker}"


def _title(report: Report) -> str:
    if report.pattern.title and report.pattern.title.strip():
        return " ".join(report.pattern.title.split())
    name = Path(report.source.path).name
    return "Untitled pattern" if name in ("", "-") else name


def in_order(report: Report) -> list[Finding]:
    """The findings in the order of the text."""
    return sorted(report.findings, key=lambda finding: finding.span.start)


def number_of(report: Report, weight: Weight) -> int:
    """How many findings of a weight the report has."""
    return sum(finding.weight is weight for finding in report.findings)


def points(report: Report) -> str:
    """ "1 correction, 2 queries", or "nothing to note"."""
    said = [
        f"{number} {words.one if number == 1 else words.many}"
        for weight, words in WEIGHTS.items()
        if (number := number_of(report, weight))
    ]
    return ", ".join(said) or "nothing to note"


def rows_recomputed(report: Report) -> str:
    """ "7 of 7 rows recomputed"; of several sizes each row counts once in each."""
    done, of = report.recomputed
    if not of:
        return "no rows to recompute were found"
    several = len(report.pattern.sizes)
    sizes = f", each counted once in each of {several} sizes" if several > 1 else ""
    return f"{done} of {of} {'row' if of == 1 else 'rows'} recomputed{sizes}"


def listed(words: list[str]) -> str:
    """ "S, M and L"."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}" if words else ""


def as_figure(number: float) -> str:
    """ "91.5", and "100" rather than "100.0"."""
    return f"{number:g}"


def message_of(finding: Finding) -> str:
    """A finding's sentence without the row's label at its head, which the reports show apart."""
    return opening(unnamed_sizes(finding.message.removeprefix(f"{finding.row}: ") if finding.row else finding.message))


def in_sizes(sizes: tuple[str, ...]) -> str:
    """ "In S and M"; "In the 3rd size" where the pattern has no names for them."""
    unnamed = bool(sizes) and _UNNAMED.fullmatch(f"size {sizes[0]}") is not None
    return f"In {'the ' if unnamed else ''}{listed(list(sizes))}"


_UNNAMED = expression(r"\bsize (\d+(?:st|nd|rd|th) size)\b")


def unnamed_sizes(text: str) -> str:
    """ "for the 3rd size" where the sizes have no names, not "for size 3rd size"."""
    return _UNNAMED.sub(r"the \1", text)


def opening(text: str) -> str:
    """Text with a capital at its head, as at the opening of a sentence."""
    return text[:1].upper() + text[1:]


def question(cause: Likely) -> str:
    """A likely cause as a question, with what would come out then."""
    return opening(_asked(cause))


def could_it_be(cause: Likely) -> str:
    """The same where it stands alone: "Could it be: work the repeat 6 times instead of 5? Then Rnd 4 makes 24 sc."."""
    return f"Could it be: {_asked(cause)}"


def _asked(cause: Likely) -> str:
    then = unnamed_sizes(cause.then.strip().rstrip("."))
    return f"{unnamed_sizes(cause.change.strip().rstrip('.?'))}?" + (f" Then {then}." if then else "")


def where(report: Report, offset: int) -> str:
    """ "line 6" of a plain text, "paragraph 13" or "page 2" of a document."""
    return report.source.place(offset) or f"line {report.source.position(offset).line}"


def read_as(report: Report) -> tuple[str, ...]:
    """What must be known of how a document was read, and whose house it is held to, in sentences without a stop."""
    read = report.source.origin.notes if report.source.origin is not None else ()
    return read if report.house is None else (*read, f"Held to the style of {report.house.title}")


def place_of(finding: Finding) -> str:
    """ "Hexagon, Rnd 2", as far as known."""
    return ", ".join(name for name in (finding.part, finding.row) if name)


def related_lines(report: Report, finding: Finding) -> list[tuple[tuple[int, ...], str]]:
    """The other places of a finding: the lines of those that share a label, each once, and the label."""
    lines: dict[str, dict[int, None]] = {}
    for other in finding.related:
        place = report.source.place(other.span.start)
        label = f"{place}: {other.label}" if place else other.label
        lines.setdefault(label, {})[report.source.line_of(other.span)] = None
    return [(tuple(numbers), label) for label, numbers in lines.items()]
