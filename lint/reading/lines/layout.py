"""Cuts a document into sections, parts and rows by its lines; reads no stitches."""

from __future__ import annotations

from dataclasses import dataclass

from lint.expression import expression
from lint.pattern import Label, Section
from lint.reading.lines.ahead import row_follows, stands_apart
from lint.reading.lines.headings import GATE, RUN_IN, Line, PartHeadings, begins_work
from lint.reading.lines.headless import headless_lists
from lint.reading.lines.labels import Found, LabelReader
from lint.reading.lines.leavers import Leavers
from lint.reading.lines.leaving import Leaving, leavings, speaks_to_some, told_first
from lint.reading.lines.makes import with_makes
from lint.reading.lines.notedrows import noted_rows
from lint.reading.lines.numbering import labelled_by_number, next_in_number
from lint.reading.lines.pieceheadings import told_pieces
from lint.reading.lines.secondpieces import made_again
from lint.reading.lines.sizecuts import by_size, for_other_sizes, under_their_label
from lint.reading.lines.sizedlines import SizedLines
from lint.reading.lines.texts import PartText, RowText, closed_apart
from lint.reading.lines.titles import steps_go_on, tells_count, title_behind
from lint.reading.page.colournames import names_for_labels
from lint.reading.page.sections import Heading, section_finder
from lint.reading.page.wrapping import TURNS_ALONE, goes_on, hangs_on
from lint.reading.sizes.gates import Gate, GateReader, Passage
from lint.reading.sizes.sizeglosses import size_glosses
from lint.reading.sizes.sizes import find_sizes
from lint.rulebook import Rulebook
from lint.source import SourceText, Span

_NO_PIECE = expression(
    r"(?i)\s*(?:foundation|base|start|note|turn|next|set|row|round|rnd|begin|cent|multiple|gauge|tension|size|to |for "
    r"|(?:open |solid |filled )?(?:space|sp|mesh|picot|cluster|popcorn|v-?st(?:itch)?)\s*:)"  # how a stitch is worked
)
_TITLED = expression(r"(?i)\s*(?:pattern(?: name)?|title|name|design)\s*:\s*(?P<title>\p{L}[^.:;]{2,60}?)\s*$")
# "sc evenly around. (96 sc)": a count of stitches at the end of a line that works some
_COUNTED_WORK = expression(
    r"(?i)\b(?:sc|dc|hdc|htr|tr)\s+(?:in|into|across|along|evenly|around)\b.*[(\[{]\s*\d+[^()\[\]{}]*\b(?:sc|dc|hdc|htr|tr|sts?|stitches)\b[^()\[\]{}]*[)\]}]\.?\s*$"
)
_MAKES = r"(?i)\b(?:\d+\s?)?(?:sc|dc|hdc|tr|htr|ch|mr|magic)\b"
_CHAIN_BEHIND = expression(r"(?i)[.;:]\s+(?=(?:with \w+, )?ch(?:ain)?s?\b\s*-?\s*\d)")
# a line cut in the middle of a sentence: "… at end of", and in the next "Row 64. 145 sts."
_NO_FIGURES = expression(r"[^\d\s()\[\]{},;:/–—-]")
_LABEL_CUT = expression(r"(?i)[\W_]*(?:\d{1,3}(?:st|nd|rd|th)|rows?|rnds?|rounds?|next|foundation)\b[^.:]{0,80}$")


@dataclass
class Layout:
    """A document cut up: title, sizes, sections, parts with their rows, and stretches of prose."""

    title: str | None
    title_span: Span | None
    sections: list[Section]
    parts: list[PartText]
    prose: list[Span]
    sizes: tuple[str, ...] = ()
    sizes_unnamed: Span | None = None  # the first list, where lists alone tell that there are sizes
    first_bare: bool = False  # lists over the sizes are such as "8, 9 (10, 11)"


class LayoutReader:
    """Cuts one document."""

    def __init__(self, source: SourceText, book: Rulebook) -> None:
        self.source = source
        self.finder = section_finder(book.layout)
        self.size_line = find_sizes(source, self.finder)
        self.sizes = self.size_line.names  # their number decides what a run of figures is
        lists = self.size_line.commas, self.size_line.first_bare
        colours = names_for_labels(source.text, book, len(self.sizes))
        self.labels = LabelReader(book.layout, max(1, len(self.sizes)), *lists, colours)
        self.gates = GateReader(self.sizes, size_glosses(source.text, self.sizes))
        self.passage = Passage(self.gates)
        self.lines: list[Line] = []
        position = 0
        for raw in source.text.splitlines(keepends=True):
            self.lines += by_size(Line(position, raw.rstrip("\r\n")), self.gates)
            position += len(raw)
        self.lines = under_their_label(self.lines, self.gates, self.labels)
        self.bare = labelled_by_number(self.labels, self.lines)
        self.lower_case = not any(
            expression(r"\W*\p{Lu}").match(line.text) for line in self.lines
        )  # but for "US", "DK"
        self.unheaded = headless_lists([line.text for line in self.lines], self.finder, book)
        headings = PartHeadings(self.lines, self.labels, self.finder, self.bare, self.lower_case)
        self.headings, self.makes = with_makes(headings)
        self.lines = self.headings.lines
        noted = noted_rows(self.lines, self.gates, self.labels)
        self.sized = SizedLines(self.lines, self.labels, self.headings, self.passage, len(self.sizes), self.bare, noted)
        self.leavers = Leavers(self.sized)

    def read(self) -> Layout:
        layout = Layout(None, None, [], [], [], self.sizes, self.size_line.unnamed, self.size_line.first_bare)
        part: PartText | None = None
        section: str | None = None
        row: RowText | None = None
        after_blank = True
        leave: list[Leaving] = []  # sizes that leave off at the end of the line before
        cut = talk = -2  # the line that a label reaches into; the last line of a note between rows
        for index, line in enumerate(self.lines):
            if index == cut:
                continue
            for one in leave:
                self.leavers.leave(one, part)
            leave = []
            if line.blank:
                after_blank = row is None or not steps_go_on(self.lines, index, row.span)
                row = None if after_blank and row is not None and self._has_body(row) else row
                continue
            self.passage.next_line()
            if layout.title is None:
                heading = self.finder.at_line(line.text)
                titled = _TITLED.match(line.text)
                if titled is not None:  # "Pattern: Otter Creek Washcloth"
                    layout.title, layout.title_span = (
                        titled["title"],
                        Span(line.start + titled.start("title"), line.start + titled.end("title")),
                    )
                    continue
                if (
                    heading is None
                    and self.labels.at_line(line.text, 0) is None
                    and not self.labels.inline(line.text, 0)
                    and not begins_work(line.text)
                ):
                    layout.title = line.text.strip().strip("#* ")
                    layout.title_span = self._stripped(line)
                    after_blank = False
                    continue
                layout.title = ""
            if part is not None and section is None:
                leave, begin = leavings(self.gates, line.text)
                leave = self.sized.leave_here(leave, index) if leave else leave
                behind = told_first(self.gates, line.text) if leave and begin == len(line.text) else 0
                for one in leave if behind else ():
                    self.leavers.leave(one, part)
                leave = [] if behind else leave
                line = Line(line.start + behind, line.text[behind:begin])
                if leave and line.blank:
                    row, after_blank = None, True
                    continue
            elif part is None:
                headed = self.finder.at_line(line.text)
                self.leavers.tell_ahead(self.gates, line.text[headed.content if headed is not None else 0 :])
            gate = self.sized.gate(index, line, part is not None and section is None)
            if gate is not None and (gate.leaves or not line.text[gate.end :].strip()):
                self.passage.open(gate, before_heading=self.sized.heading_follows(index))
                row, section, after_blank = None, None, True
                continue
            if gate is not None:
                self.passage.open(gate, line_only=self.sized.for_line_only(index, line.text[gate.end :]))
                row = None
                line = Line(line.start + gate.end, line.text[gate.end :])
            begun = part is not None or self._begins_numbered(index)
            hangs = index > 0 and hangs_on(self.lines[index - 1].text, line.text)
            found = self.sized.label(line, self.bare and begun) if not hangs else None
            if found is None and not hangs and part is not None and section is None:
                found = next_in_number(self.labels, line, part.rows[-1].label if part.rows else None)
            if not hangs and (longer := self._with_next(index, line, found)) is not None:
                found, line, cut = self.sized.label(longer, False), longer, index + 1
            if found is not None:
                part = self._part_for_row(layout, part, found.piece, found.label.span)
                titled = title_behind(self.labels, self.lines, index, found.body - line.start)
                row = self._row(found.label, Span(line.end if titled else found.body, line.end))
                self._behind_label(row, line)
                part.rows.append(row)
                self._inline_rows(part, row)
                row = part.rows[-1]
                section, after_blank = None, False
                continue
            heading = None if hangs and row else self.finder.at_line(line.text)  # "… in 2nd ch from" / "hook (6)"
            if index in self.unheaded and part is None:
                begins = self.unheaded[index]
                heading = Heading("abbreviations", begins, begins or len(line.text), begins)
            if heading is not None and row is not None and not self._has_body(row):
                heading = None
            if heading is not None:
                row = None
                section = heading.key
                self._open_section(layout, index, line, heading)
                chain = _CHAIN_BEHIND.search(line.text, heading.content) if heading.key == "multiple" else None
                if chain is not None:  # "Multiple of 12 + 3. Ch 51."
                    part = self._part_for_row(layout, part)
                    row = self._row(None, Span(line.start + chain.end(), line.end))
                    part.rows.append(row)
                    section, after_blank = None, False
                    continue
                if (
                    heading.key in ("instructions", "finishing", "colours", "multiple")
                    and line.text[heading.content :].strip() == ""
                ):
                    part = self._opened(self.headings.name(line.text)[0], self._stripped(line))
                    part.rows = []
                    layout.parts.append(part)
                    section = None if heading.key == "instructions" else section
                elif part is not None and heading.key == "notes" and line.text[heading.content :].strip():
                    section, talk = None, index  # "Note: …" in one line between rows
                after_blank = False
                continue
            if talk == index - 1 and not after_blank and line.text[:1].islower():
                talk = index  # the note's next line
                layout.prose.append(Span(line.start, line.end))
                continue
            above = part.rows[-1] if part is not None and part.rows and section is None else None
            if above is not None and above.label is not None and TURNS_ALONE.fullmatch(line.text):
                above.span, after_blank = above.span.to(Span(line.start, line.end)), False
                continue
            # "10 sc in" / "A.", "… side of the" / "chain: sc in …", "Round 1: Ch 3" / "(counts as a dc), make 11 dc in"
            hung = row is not None and not after_blank and (hangs or line.text.lstrip()[:1] in ("(", "["))
            if not hung and self.headings.at(index, after_blank):
                name, make = self.headings.name(line.text)
                part = self._opened(name, self._stripped(line), self.makes.get(index, make))
                layout.parts.append(part)
                section, row, after_blank = None, None, False
                continue
            opens = (section is None or after_blank) and not hung
            run_in = RUN_IN.match(line.text) if opens and not _NO_PIECE.match(line.text) else None
            if run_in is not None and run_in["as"] and not self.headings.like_another(index, line.text[run_in.end() :]):
                run_in = None
            if run_in is not None and (
                self.gates.audience(run_in["name"]) is not None
                or tells_count(line.text)
                or self.headings.names_stitches(index, run_in["name"])
            ):
                run_in = None  # "Small: Ch 21 (for medium ch 23)", "Total: 12", "Inc tile: ch 6, …": no piece
            if run_in is not None:
                name, make = self.headings.name(run_in.group(0))
                span = Span(line.start + run_in.start("name"), line.start + run_in.end("name"))
                part = self._opened(name, span, make)
                layout.parts.append(part)
            if row is None and after_blank and part is not None and section is None and part.rows:
                row = part.rows[-1] if part.rows[-1].label is not None and tells_count(line.text) else None
                after_blank = row is None
            wrapped = row is not None and (not after_blank or not self._has_body(row)) and self._continues(row, line)
            if run_in is not None or not wrapped and self.labels.inline(line.text, line.start):
                part = self._part_for_row(layout, part)
                loose = self._row(None, self._stripped(line))
                if run_in is not None:
                    loose = self._row(None, Span(line.start + run_in.end(), line.end))
                part.rows.append(loose)
                self._inline_rows(part, loose)
                row, section, after_blank = part.rows[-1], None, False
                continue
            if wrapped:
                row.span = row.span.to(Span(line.start, line.end))
                self._inline_rows(part, row)
                row = part.rows[-1]
            elif part is not None and section is None:
                if not GATE.match(line.text):
                    row = self._row(None, self._stripped(line))
                    part.rows.append(row)
                layout.prose.append(Span(line.start, line.end))
                if speaks_to_some(self.gates, line.text) and not noted_rows([line], self.gates, self.labels):
                    self.passage.open(Gate(None, 0))  # which rows those sizes work is not known from here on
            elif begins_work(line.text) and (
                part is None and (section is None or after_blank) or self._row_below(index)
            ):
                part = self._part_for_row(layout, part)  # a piece without a heading starts on its chain or ring
                row = self._row(None, self._stripped(line))
                part.rows.append(row)
                section = None
            elif section == "finishing" and _COUNTED_WORK.search(line.text):
                heading = layout.sections[-1].heading  # work with a printed count, under "Joining": a row, not talk
                part = self._opened(self.source.slice(heading), heading)
                layout.parts.append(part)
                row, section = self._row(None, self._stripped(line)), None
                part.rows.append(row)
            elif section is not None and layout.sections:
                last = layout.sections[-1]
                layout.sections[-1] = Section(last.key, last.span.to(Span(line.start, line.end)), last.heading)
                layout.prose.append(Span(line.start, line.end))
            else:
                layout.prose.append(Span(line.start, line.end))
            after_blank = False
        for one in leave:
            self.leavers.leave(one, part)
        for item in layout.parts:
            item.rows = [own for row in item.rows for one in self._by_size(row) for own in closed_apart(self.source, one)]  # fmt: skip
        layout.parts = told_pieces(self.source, layout.parts)
        made_again(self.source, layout.parts, layout.title)
        if layout.title == "":
            layout.title, layout.title_span = None, None
        return layout

    def _with_next(self, index: int, line: Line, found: Found | None) -> Line | None:
        """The line with the next one, if a label begins in it and ends in that: "44th (46th, 48th) to 56th (58th,"."""
        below = self.lines[index + 1] if index + 1 < len(self.lines) else None
        if found is not None and (found.label.by_size or _NO_FIGURES.search(line.text, found.body - line.start)):
            return None  # a label with the numbers of all sizes, or one that has its work behind it
        if below is None or below.blank or not _LABEL_CUT.match(line.text):
            return None
        longer = Line(line.start, line.text + " " * (below.start - line.end) + below.text)
        cut, found = found is not None, self.sized.label(longer, False)
        whole = found is not None and below.start < found.body
        return longer if whole and (not cut or found.label.by_size) else None

    def _behind_label(self, row: RowText, line: Line) -> None:
        """What stands behind a label of the sizes that work its row."""
        gate = self.sized.gate_behind_label(line, row.span.start)
        if gate is not None:
            row.span = Span(line.start + gate.end, row.span.end)
            row.sizes, row.sizes_unknown = gate.sizes, gate.sizes is None

    def _by_size(self, row: RowText) -> list[RowText]:
        """The row; one for each passage of it where its words go on for other sizes: "… Sizes L and XL only: …"."""
        if row.label is None or not row.sizes:
            return [row]
        text, rows, whole = self.source.slice(row.span), [row], row.span
        for start in for_other_sizes(text, row.sizes, self.gates):
            line = Line(whole.start + start, text[start:])
            rows[-1].span = Span(rows[-1].span.start, line.start)
            rows.append(RowText(row.label, Span(line.start, whole.end), None, row.gate))
            self._behind_label(rows[-1], line)
        return rows

    def _row_below(self, index: int) -> bool:
        return row_follows(self.lines, index, self.labels, self.finder, self.bare)

    def _row(self, label: Label | None, span: Span) -> RowText:
        gated = self.passage.now is not None or self.passage.unknown or bool(self.passage.away)
        sizes, number, unknown = self.passage.row(label), self.passage.number if gated else 0, self.passage.unknown
        label = self.leavers.come_to(label)
        sizes, unknown = self.sized.as_noted(label, sizes, unknown)
        return RowText(label, span, sizes, number, unknown)

    def _opened(self, name: str, span: Span, make: int = 1) -> PartText:
        self.passage.heading(name)
        self.leavers.opened()
        return PartText(name, span, make)

    # lines ---------------------------------------------------------------------------------------

    def _stripped(self, line: Line) -> Span:
        lead = len(line.text) - len(line.text.lstrip())
        return Span(line.start + lead, line.start + len(line.text.rstrip()))

    def _begins_numbered(self, index: int) -> bool:
        """Whether a list of rows by bare numbers begins in this line, though no heading stands above it."""
        line = self.lines[index].text
        return expression(r"[\s|]*\[?1\b").match(line) is not None and expression(_MAKES).search(line) is not None

    def _has_body(self, row: RowText) -> bool:
        return bool(self.source.slice(row.span).strip(" \t\n:.•*-–"))

    def _part_for_row(
        self, layout: Layout, part: PartText | None, piece: str | None = None, at: Span | None = None
    ) -> PartText:
        """The part that a row belongs to: the one under way, or the piece that its label names ("Border Row 1:")."""
        if piece is not None and at is not None and (part is None or piece.lower() not in part.name.lower()):
            part = self._opened(piece, Span(at.start, at.start + len(piece)))
            layout.parts.append(part)
        if part is None:
            span = layout.title_span or Span(0, 0)
            part = PartText(layout.title or "Pattern", span, self.headings.make(layout.title or ""), named=False)
            layout.parts.append(part)
        return part

    def _inline_rows(self, part: PartText, row: RowText) -> None:
        """Cut a run-on paragraph at the labels inside it."""
        text = self.source.slice(row.span)
        offset = row.span.start
        end = row.span.end
        for found in self.labels.inline(text, offset):
            lettered = found.label.kind == "either" and not found.label.words[:1].isdigit()  # "R2", but not "2 r."
            if found.start <= part.rows[-1].span.start or lettered:
                continue
            before = part.rows[-1]
            before.span = Span(before.span.start, found.start)
            part.rows.append(self._row(found.label, Span(found.body, end)))

    def _open_section(self, layout: Layout, index: int, line: Line, heading) -> None:
        content = Span(line.start + heading.content, line.end)
        layout.sections.append(
            Section(heading.key, content, Span(line.start + heading.start, line.start + heading.end))
        )
        for inner in self.finder.inline(line.text):
            if inner.start > heading.content:
                last = layout.sections[-1]
                layout.sections[-1] = Section(last.key, Span(last.span.start, line.start + inner.start), last.heading)
                layout.sections.append(
                    Section(
                        inner.key,
                        Span(line.start + inner.content, line.end),
                        Span(line.start + inner.start, line.start + inner.end),
                    )
                )
        layout.prose.append(Span(line.start, line.end))

    def _continues(self, row: RowText, line: Line) -> bool:
        """Whether a line goes on with the row above it, or is a sentence of its own."""
        if not self._has_body(row):
            return True
        above = self.source.slice(row.span).rstrip()
        apart = row.label is None and stands_apart(above, line.text)
        return not apart and goes_on(above, line.text.strip(), self.lower_case, len(self.sizes))
