"""Notes that rows are for some sizes: "Rounds 9 and 10 are worked for sizes XL and 2X only."."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from lint.expression import expression
from lint.pattern import Label
from lint.reading.lines.headings import Line
from lint.reading.lines.labels import LabelReader
from lint.reading.sizes.figures import numbers_of
from lint.reading.sizes.gates import GateReader, Sizes

_SENTENCE = expression(r"[^.;!]+")
_ROWS = r"(?P<kind>rows?|rnds?|rounds?|rds?)\s+(?P<rows>\d+(?:\s*(?:-|–|\bto\b|\band\b|&|,)\s*\d+)*)"
_NAMES = r"(?:the\s+)?(?P<names>[^:\s][^:]{0,80}?)"
_OMIT = r"(?P<not>omits?|skips?|leaves?\s+out|miss(?:es)?|(?:do(?:es)?\s+not|don[’']t|doesn[’']t)\s+work)"
_FORMS = tuple(
    expression(rf"(?i)\W*{form}\W*")
    for form in (
        # "Rounds 9 and 10 are worked for sizes XL and 2X only", "Row 4 is omitted for size S"
        rf"{_ROWS}\s+(?:(?:is|are)\s+)?(?P<not>not\s+)?(?:(?:only|to\s+be|worked|made|meant|(?P<not>skipped|omitted|left\s+out))\s+)*(?:for|in|by)\s+{_NAMES}(?:\s+only)?",
        rf"(?:for\s+)?{_NAMES}(?:\s+only)?\s*[:,–—-]?\s*{_OMIT}\s+{_ROWS}",  # "Size S: omit Row 4", "Size S does not work Row 4"
        rf"{_OMIT}\s+{_ROWS}\s+(?:for|in)\s+{_NAMES}(?:\s+only)?",  # "Skip Row 4 for size S"
        # "Only sizes M and L work Row 4", "Sizes M and L only work Row 4", and "Sizes M and L work Row 4" right above that row
        rf"(?P<sure>only\s+|just\s+)?{_NAMES}(?:\s+(?P<sure>only))?(?:\s+|\s*(?P<gate>[:,])\s*)(?:should\s+|will\s+)?(?:works?|makes?)\s+{_ROWS}(?P<sure>\s+only)?",
        # "Work Row 4 for sizes M and L only", "Only work Row 4 for size M"
        rf"(?P<sure>only\s+)?(?P<bid>work)\s+{_ROWS}\s+(?P<sure>only\s+)?(?:for|in)\s+{_NAMES}(?P<sure>\s+only)?",
    )
)
_NUMBERED = expression(r"(?i)\b(?:rows?|rnds?|rounds?|rds?)\s+\d")
_LONGEST = 600  # characters of a line of notes
_SIZES = expression(r"(?i)\bsizes?\b")


@dataclass(frozen=True, slots=True)
class NotedRows:
    """Rows by their numbers, and the sizes that work them; None where it can't be told which rows or sizes are meant."""

    kind: str
    numbers: frozenset[int]
    sizes: Sizes | None
    below: tuple[Line, ...] = ()  # the lines of the rows, where these stand right below the note
    line: int | None = None  # where the note's line begins, if nothing else stands in it

    def names(self, label: Label) -> bool:
        """Whether a label's rows are among them."""
        if self.below:
            return any(line.start <= label.span.start < line.end for line in self.below)
        return label.kind in (self.kind, "either") and not self.numbers.isdisjoint(label.numbers)


def noted_rows(lines: Sequence[Line], gates: GateReader, labels: LabelReader) -> tuple[NotedRows, ...]:
    """What the lines of a pattern say of rows that only some of its sizes work."""
    found: list[NotedRows] = []
    for index, line in enumerate(lines) if gates.number > 1 else ():
        told_of_rows = len(line.text) < _LONGEST and _NUMBERED.search(line.text) is not None
        sentences = _SENTENCE.findall(line.text) if told_of_rows else []
        sentences = [sentence for sentence in sentences if sentence.strip(" *_()[]")]
        for sentence in sentences:
            told = next(filter(None, (form.fullmatch(sentence) for form in _FORMS)), None)
            spoken = gates.audience(told["names"]) if told is not None else None
            not_told = spoken is None or not (spoken.sizes or spoken.others)
            if told is None or spoken is not None and spoken.every or not_told and not _SIZES.search(told["names"]):
                continue
            kind = "row" if told["kind"].lower().startswith("row") else "round"
            numbers = frozenset(numbers_of(told["rows"]))
            sizes = spoken.sizes if spoken is not None and not spoken.others else None
            if sizes is not None and told.groupdict().get("not"):
                sizes = tuple(size for size in range(gates.number) if size not in sizes)
            below = _right_below(lines[index + 1 :], labels, kind, numbers)
            weak = "sure" in told.groupdict() and not told["sure"] and not below
            gate, bid = told.groupdict().get("gate"), told.groupdict().get("bid")
            if gate and weak or (gate or bid) and not below and not _come(lines[index + 1 :], labels, kind, numbers):
                continue  # "Sizes M and L: work Row 4" again; "Size L only: work Row 4" behind that row
            sizes = sizes if below or not weak and _one_of_each(lines, labels, kind, numbers) else None
            alone = line.start if sizes is not None and len(sentences) == 1 else None
            found.append(NotedRows(kind, numbers, sizes, below, alone))
    return tuple(found)


def _right_below(lines: Sequence[Line], labels: LabelReader, kind: str, numbers: frozenset[int]) -> tuple[Line, ...]:
    """The next lines with words, if they are these rows one after the other and none beside."""
    met: list[Line] = []
    left = sorted(numbers)
    for line in lines:
        if line.blank:
            continue
        label = found.label if (found := labels.at_line(line.text, 0)) is not None else None
        rows = list(label.numbers) if label is not None and label.kind in (kind, "either") else []
        if not rows or rows != left[: len(rows)]:
            break
        met.append(line)
        left = left[len(rows) :]
        if not left:
            return tuple(met)
    return ()


def _come(lines: Sequence[Line], labels: LabelReader, kind: str, numbers: frozenset[int]) -> bool:
    """Whether any of these rows is still to come."""
    met = (found.label for line in lines if (found := labels.at_line(line.text, 0)) is not None)
    return any(label.kind in (kind, "either") and not numbers.isdisjoint(label.numbers) for label in met)


def _one_of_each(lines: Sequence[Line], labels: LabelReader, kind: str, numbers: frozenset[int]) -> bool:
    """Whether the pattern has one row of each number, so that it is plain which are meant, and none beside in its label."""
    met = [found.label for line in lines if (found := labels.at_line(line.text, 0)) is not None]
    here = [label.numbers for label in met if label.kind in (kind, "either") and not numbers.isdisjoint(label.numbers)]
    return sorted(number for one in here for number in one) == sorted(numbers)
