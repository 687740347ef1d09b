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
_FOR = expression(
    r"(?i)\W*(?P<kind>rows?|rnds?|rounds?|rds?)\s+(?P<rows>\d+(?:\s*(?:-|–|\bto\b|\band\b|&|,)\s*\d+)*)\s+(?:(?:is|are)\s+)?(?P<not>not\s+)?"
    r"(?:(?:only|to\s+be|worked|made|meant|(?P<not>skipped|omitted|left\s+out))\s+)*(?:for|in|by)\s+(?:the\s+)?(?P<names>[^:\s][^:]{0,80}?)(?:\s+only)?\W*"
)
_SIZES = expression(r"(?i)\bsizes?\b")


@dataclass(frozen=True, slots=True)
class NotedRows:
    """Rows by their numbers, and the sizes that work them; None where it can't be told which rows or sizes are meant."""

    kind: str
    numbers: frozenset[int]
    sizes: Sizes | None

    def names(self, label: Label) -> bool:
        """Whether a label's rows are among them."""
        return label.kind in (self.kind, "either") and not self.numbers.isdisjoint(label.numbers)


def noted_rows(lines: Sequence[Line], gates: GateReader, labels: LabelReader) -> tuple[NotedRows, ...]:
    """What the lines of a pattern say of rows that only some of its sizes work."""
    found: list[NotedRows] = []
    for line in lines if gates.number > 1 else ():
        for sentence in _SENTENCE.findall(line.text):
            told = _FOR.fullmatch(sentence)
            spoken = gates.audience(told["names"]) if told is not None else None
            not_told = spoken is None or not (spoken.sizes or spoken.others)
            if told is None or spoken is not None and spoken.every or not_told and not _SIZES.search(told["names"]):
                continue
            kind = "row" if told["kind"].lower().startswith("row") else "round"
            numbers = frozenset(numbers_of(told["rows"]))
            sizes = spoken.sizes if spoken is not None and not spoken.others else None
            if sizes is not None and told["not"]:
                sizes = tuple(size for size in range(gates.number) if size not in sizes)
            found.append(NotedRows(kind, numbers, sizes if _one_of_each(lines, labels, kind, numbers) else None))
    return tuple(found)


def _one_of_each(lines: Sequence[Line], labels: LabelReader, kind: str, numbers: frozenset[int]) -> bool:
    """Whether the pattern has one row of each number, so that it is plain which are meant, and none beside in its label."""
    met = [found.label for line in lines if (found := labels.at_line(line.text, 0)) is not None]
    here = [label.numbers for label in met if label.kind in (kind, "either") and not numbers.isdisjoint(label.numbers)]
    return sorted(number for one in here for number in one) == sorted(numbers)
