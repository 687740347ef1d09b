"""Cuts the pattern's text into lines and pieces, so that every finding's words can be marked.

Spans may overlap, lie inside one another, run over line breaks or be empty; the pieces of a line put together
are always the line as it stands in the text.
"""

from __future__ import annotations

from dataclasses import dataclass

from lint.source import SourceText, Span


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of one line under the same marks, given by the numbers of the notes, the widest mark first."""

    text: str
    marks: tuple[int, ...] = ()
    opens: tuple[int, ...] = ()  # the notes whose first words these are
    ends: tuple[int, ...] = ()  # the notes whose last words these are


@dataclass(frozen=True, slots=True)
class TextLine:
    """A line of the text, with the notes that begin on it."""

    number: int
    pieces: tuple[Piece, ...]
    notes: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class _Stretch:
    """What of one mark lies on one line."""

    note: int
    start: int
    end: int
    width: int  # of the whole mark
    opens: bool
    ends: bool


def cut(source: SourceText, spans: list[Span]) -> list[TextLine]:
    """The text in lines, cut where marks begin and end; notes are numbered from 1 in the order of the spans."""
    lines = [_visible(line) for line in source.text.split("\n")]
    by_line: dict[int, list[_Stretch]] = {}
    for note, span in enumerate(spans, 1):
        for line, stretch in _stretches(source, lines, note, span):
            by_line.setdefault(line, []).append(stretch)
    if lines[-1] == "" and len(lines) not in by_line:
        lines.pop()  # the end of the last line begins no further one
    return [_line(number, text, by_line.get(number, [])) for number, text in enumerate(lines, 1)]


def _visible(line: str) -> str:
    """A line in which a carriage return that does not belong to its end is shown as a sign."""
    return line[:-1].replace("\r", "␍") + line[-1:]


def _stretches(source: SourceText, lines: list[str], note: int, span: Span):
    """The line number and part on it of one mark, for every line that it touches."""
    size = len(source.text)
    start = min(max(span.start, 0), size)
    end = min(max(span.end, start), size)
    first = source.position(start).line
    touched = []
    for number in range(first, source.position(max(start, end - 1)).line + 1):
        begin = source.line_starts[number - 1]
        here, there = max(start - begin, 0), min(end - begin, len(lines[number - 1]))
        if here < there or number == first:
            touched.append((number, here, max(here, there)))
    for number, here, there in touched:
        yield number, _Stretch(note, here, there, end - start, number == first, number == touched[-1][0])


def _line(number: int, text: str, stretches: list[_Stretch]) -> TextLine:
    if not stretches:
        return TextLine(number, (Piece(text),) if text else ())
    cuts = sorted({0, len(text), *(at for s in stretches for at in (s.start, s.end))})
    pieces = []
    for here, there in zip(cuts, [*cuts[1:], None], strict=True):
        pieces += [_point(s) for s in stretches if s.start == s.end == here]
        if there is not None:
            pieces.append(_piece(text[here:there], here, there, stretches))
    return TextLine(number, tuple(pieces), tuple(s.note for s in stretches if s.opens))


def _point(stretch: _Stretch) -> Piece:
    note = (stretch.note,)
    return Piece("", note, note if stretch.opens else (), note if stretch.ends else ())


def _piece(text: str, here: int, there: int, stretches: list[_Stretch]) -> Piece:
    over = sorted((s for s in stretches if s.start <= here and there <= s.end), key=lambda s: (-s.width, s.note))
    return Piece(
        text,
        tuple(s.note for s in over),
        tuple(s.note for s in over if s.opens and s.start == here),
        tuple(sorted(s.note for s in over if s.ends and s.end == there)),
    )
