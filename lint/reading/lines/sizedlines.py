"""What the lines of a document say of the sizes that work them: gates, sizes that leave off, labels under a gate."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lint.expression import expression
from lint.pattern import Label
from lint.reading.lines.headings import Line, PartHeadings, begins_work
from lint.reading.lines.labels import Found, LabelReader
from lint.reading.lines.leaving import Leaving
from lint.reading.lines.namedlabels import named_label
from lint.reading.lines.notedrows import NotedRows
from lint.reading.sizes.gates import Gate, Passage, Sizes, names_place

# a sentence with no figure that tells nothing of rows, of shaping or of what follows
_ONLY_TOLD = expression(
    r"(?i)(?!.*\b(?:rows?|r(?:oun|n)?ds?|follow\w*|below|next|as|even|rep\w*|dec\w*|inc\w*|shap\w*|begin\w*|start\w*|ch|chain|(?:re)?join\w*|only)\b)\W*\p{L}[^\d:]*[.!]\s*"
)
# all that a sentence says to some sizes: "use 5 mm hook", "change to the smaller hook"
_HOOK_TOLD = expression(
    r"(?i)\W*(?:use|using|work(?:ing)?|change|changing|switch|go\s+(?:up|down)|with|start|begin)\b(?:[^.!;:]|(?<=\d)\.(?=\d)){0,40}\bhook\b(?:\s+(?:sizes?|throughout|instead|from\s+here(?:\s+on)?))?\W*"
)
# "Row 3 and Row 4 (L):" may name the size of Row 4 alone; "Rows 3 and 4 (L):" names that of both
_EACH_NAMED = expression(r"(?i)\b(?:rows?|rnds?|rounds?|rds?)\b.*\b(?:row|rnd|round|rd)\b")


@dataclass(frozen=True)
class SizedLines:
    """Reads gates by their lines and the lines after them."""

    lines: list[Line]
    labels: LabelReader
    headings: PartHeadings
    passage: Passage
    sizes: int
    bare: bool  # rows are labelled by list numbers alone
    noted: tuple[NotedRows, ...] = ()  # rows that notes give to some sizes

    def gate(self, index: int, line: Line, among_rows: bool) -> Gate | None:
        """ "Sizes L and XL only" over rows, or in front of one; not the lists of sizes before the first row."""
        if among_rows and any(one.line == line.start for one in self.noted):
            return Gate((), len(line.text), leaves=True)  # told of the rows that the note names: no size leaves
        gate = self.passage.reader.at_line(line.text)
        if gate is not None and gate.goes_on is not None and not self._met(gate, index + 1):
            gate = replace(gate, sizes=None, leaves=False)  # sent where nothing is: which rows it works is not known
        if gate is None or among_rows:
            return gate
        rest = line.text[gate.end :]
        if rest.strip():
            return gate if self.labels.at_line(rest, 0) is not None or begins_work(rest) else None
        below = next((other for other in self.lines[index + 1 :] if not other.blank), None)
        begins = below is not None and (self.labels.at_line(below.text, 0) is not None or begins_work(below.text))
        return gate if begins or self.heading_follows(index) else None

    def leaving_gate(self, leaving: Leaving) -> Gate:
        """The gate that shuts out sizes which leave off; not told which, where they are sent to what is not there."""
        gate = Gate(leaving.sizes, 0, leaves=leaving.sizes is not None, goes_on=leaving.goes_on)
        sent = gate.goes_on is not None and gate.sizes is not None
        return replace(gate, sizes=None, leaves=False) if sent and not self._met(gate, 0) else gate

    def leave_here(self, leavings: list[Leaving], index: int) -> list[Leaving]:
        """Sizes that leave off in a line, as the row below shows it: "End here for S. Continue to Rnd 10" in front of Rnd 10.

        Whoever is sent to the next row is not one of those that leave off, and leaves nothing out.
        """
        below = next((line for line in self.lines[index + 1 :] if not line.blank), None)
        found = self.labels.at_line(below.text, 0, self.bare) if below is not None else None
        if found is None:
            return leavings
        here = [
            one.goes_on is not None and names_place(one.goes_on, below.text, found.label, one.sizes or ())
            for one in leavings
        ]
        told = zip(leavings, here, strict=True)
        return [
            replace(one, goes_on=None) if next_row else one for one, next_row in told if not (next_row and one.sent)
        ]

    def gate_behind_label(self, line: Line, body: int) -> Gate | None:
        """ "Row 2: For size L only: Ch 1, …", "Row 3, sizes M and L only: …": the row is for those sizes.

        `body`: where the row's words begin.  The gate's end is counted from the line's start.
        """
        reader = self.passage.reader
        behind = reader.behind_label(line.text)
        if behind is not None and line.start + behind[1] == body:
            each = _EACH_NAMED.search(line.text, 0, behind[0]) is not None
            return Gate(None if each else behind[2], behind[1])
        words = line.text[body - line.start :]
        gate = reader.at_line(words)
        if gate is None or gate.leaves or gate.every or not words[gate.end :].strip():
            return None
        return replace(gate, end=body - line.start + gate.end)

    def label(self, line: Line, bare: bool) -> Found | None:
        """The label of a line; in a passage for some sizes its lists may have a figure for each of these alone."""
        behind = self.passage.reader.behind_label(line.text)
        if behind is not None:
            found = self.labels.at_line(f"{line.text[: behind[0]]}:", line.start, bare)
            if found is not None:
                return replace(found, body=line.start + behind[1])
        named = named_label(self.labels, self.passage.reader, line.text, line.start)
        if named is not None:
            return named
        found, gate = self.labels.at_line(line.text, line.start, bare), self.passage.now
        if found is None or not found.label.unclear or not gate or len(gate) < 2:
            return found
        again = self.labels.for_sizes(len(gate)).at_line(line.text, line.start, bare)
        return replace(again, label=again.label.for_gate(gate, self.sizes)) if again is not None else found

    def as_noted(self, label: Label | None, sizes: Sizes | None, unknown: bool) -> tuple[Sizes | None, bool]:
        """The sizes that work a row, with what notes say of its number; not told where a label's size may be that of one row."""
        each = label is not None and _EACH_NAMED.search(label.words) is not None
        unknown = unknown or each and self.passage.reader.in_label(label.words) is not None
        for one in self.noted:
            if label is not None and one.names(label):
                unknown = unknown or one.sizes is None
                sizes = tuple(size for size in one.sizes or () if sizes is None or size in sizes)
        return sizes, unknown

    def heading_follows(self, index: int) -> bool:
        """Whether the next line with words is a heading over rows."""
        at = next((i for i in range(index + 1, len(self.lines)) if not self.lines[i].blank), None)
        return at is not None and self.headings.at(at, True)

    def for_line_only(self, index: int, words: str) -> bool:
        """ "For M, use 5 mm hook.", "For M, work loosely.": whether a gate in front of words shuts no size out of the lines behind."""
        asides = _HOOK_TOLD.fullmatch(words) is not None or _ONLY_TOLD.fullmatch(words) is not None
        return asides or not self.ends_with_all(index)

    def ends_with_all(self, index: int) -> bool:
        """Whether "All sizes" ends, in the same piece, what a gate in front of a row begins."""
        for at in range(index + 1, len(self.lines)):
            gate = self.passage.reader.at_line(self.lines[at].text)
            if gate is not None or self.headings.at(at, self.lines[at - 1].blank):
                return gate is not None and gate.every
        return False

    def _met(self, gate: Gate, first: int) -> bool:
        """Whether the row or the piece that sizes are sent to stands in a line, from the first one on."""
        labels = ((line.text, self.labels.at_line(line.text, 0, self.bare)) for line in self.lines[first:])
        return any(
            names_place(gate.goes_on or "", text, found and found.label, gate.sizes or ()) for text, found in labels
        )
