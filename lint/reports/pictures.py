"""The pictures of a report: each piece as a diagram or an outline, how its rounds grow, and the plan of the assembly."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from lint.finding import Finding
from lint.inspection import Report
from lint.pattern import Part
from lint.pictures.diagram import MOST_STITCHES, Mark, diagram, yarns_shown
from lint.pictures.growth import growth
from lint.pictures.outline import MOST_STITCHES as MOST_OUTLINED
from lint.pictures.outline import outline
from lint.pictures.plan import Motif, edges, interlocks, plan
from lint.pictures.tubes import cut_open
from lint.reading.facts.assembly import sentences, singular
from lint.reading.facts.layouts import Layout, read_layout
from lint.reports import wording
from lint.source import Span
from lint.working.graph import Layer, Piece, stitch_graph

MOST_DRAWN = 3_000  # stitches drawn one by one in all the diagrams of a pattern; later pieces get outlines
_CUT_OPEN = "This piece does not lie flat. It is drawn cut open where its rounds begin, and spread out."
_ROUNDS_TO_PLOT = 4  # fewer make no curve
_FLAT_GROWTH = {
    1: 6,
    2: 8,
    3: 12,
    4: 16,
}  # stitches more a round, by turning chain: rules of thumb of several makers' sites


@dataclass(frozen=True, slots=True)
class Picture:
    """One picture with what is written under it; `parts` are the pieces that look just like it."""

    title: str
    svg: Markup
    caption: tuple[str, ...]
    yarns: tuple[tuple[str, int], ...] = ()
    growth: Markup | None = None


def pictures(report: Report, findings: Sequence[Finding]) -> tuple[Picture, ...]:
    """The pictures of a pattern, in the order of its pieces; `findings` in the order in which they are numbered."""
    heights = {rule.key: rule.height for rule in report.book.stitches.stitches}
    marks = [
        Mark(number, finding.row, finding.span)
        for number, finding in enumerate(findings, 1)
        if _about_stitches(report, finding)
    ]
    found: list[Picture] = []
    seen: dict[tuple, str] = {}
    left = MOST_DRAWN
    pieces = stitch_graph(report.pattern, report.book, unwatched=_too_large(report))
    as_large = Counter(map(_extent, pieces))
    for piece in pieces:
        name = wording.listed([part.name for part in piece.parts])
        alike = seen.setdefault(_shape(piece), name) if as_large[_extent(piece)] > 1 else name
        if alike is not name or piece.stitches < 2 or not any(layer.row for layer in piece.layers):
            continue
        drawn = piece.stitches <= min(MOST_STITCHES, left)
        if not drawn and piece.stitches > MOST_OUTLINED:
            continue
        left -= piece.stitches if drawn else 0
        opened = cut_open(piece, heights) if drawn else None
        if drawn:
            svg = diagram(opened or piece, heights, name, marks, opened is not None)
        else:
            svg = outline(piece, heights, name)
        found.append(
            Picture(
                name,
                Markup(wording.tame(svg)),
                (*_caption(piece, drawn, report), *([_CUT_OPEN] if opened is not None else [])),
                yarns_shown(piece) if drawn else (),
                _growth(piece, heights, name),
            )
        )
    laid = _layout(report)
    if laid is not None:
        motifs = tuple(_motifs(report, pieces))
        name = "the assembly"
        caption = edges(laid, motifs)
        if not interlocks(laid, motifs):
            caption = (
                *caption,
                "Laid so, no hexagon lies between two of the next row. Is a row to be set half to the side?",
            )
        found.append(Picture("Assembly", plan(laid, motifs, name), caption))
    return tuple(found)


def _too_large(report: Report) -> list[Part]:
    """The parts that are outlined at most, for they have too many stitches to be drawn one by one."""
    stitches: Counter = Counter()
    for row in report.ledger.rows:
        stitches[id(row.part)] += row.first.made.stitches if row.first.made is not None else 0
    return [part for part in report.pattern.parts if stitches[id(part)] > MOST_STITCHES]


def _about_stitches(report: Report, finding: Finding) -> bool:
    """Whether a note is about what is worked, so that it can be shown on the stitches; not one on an abbreviation."""
    try:
        return report.book.rule(finding.rule).area in ("counts", "wording")
    except KeyError:
        return True


def _extent(piece: Piece) -> tuple[int, int]:
    """Rows and stitches: only pieces that have the same can look alike."""
    return len(piece.layers), piece.stitches


def _shape(piece: Piece) -> tuple:
    """What two pieces that look alike have in common."""
    return tuple(
        (layer.circular, tuple((s.kind, s.length, s.parents) for s in layer.stitches)) for layer in piece.layers
    )


def _caption(piece: Piece, drawn: bool, report: Report):
    if len(report.pattern.sizes) > 1:
        yield f"Drawn in size {report.pattern.sizes[0]}."
    if piece.continued:
        yield "How it stands on the piece before is not known from the words, so it is drawn by itself."
    if not drawn:
        yield "Too many stitches to draw one by one."
    if drawn and any(layer.left for layer in piece.layers):
        yield "Circles show places that nothing was worked into."


def _growth(piece: Piece, heights: dict[str, int], name: str) -> Markup | None:
    """The plot of a piece worked in rounds from its middle."""
    rounds = [layer for layer in piece.layers if layer.row is not None]
    if len(rounds) < _ROUNDS_TO_PLOT or not all(layer.circular for layer in rounds):
        return None
    counts = [_counted(layer) for layer in rounds]
    if not counts[0]:
        return None
    flat: list[float] | None = [counts[0]]
    for layer in rounds[1:]:
        each = _FLAT_GROWTH.get(heights.get(_main(layer), 0))
        flat = [*flat, flat[-1] + each] if flat and each else None
    return growth([layer.label for layer in rounds], counts, flat, name)


def _counted(layer: Layer) -> int:
    return sum(stitch.kind not in ("space", "ch", "ring", "sl st") for stitch in layer.stitches)


def _main(layer: Layer) -> str:
    kinds = [stitch.kind for stitch in layer.stitches if stitch.kind not in ("space", "ch", "ring", "sl st")]
    return max(set(kinds), key=kinds.count, default="")


# the assembly -------------------------------------------------------------------------------------------------


def _layout(report: Report) -> Layout | None:
    """The layout that the words outside the rows give."""
    text = report.source.text
    nouns = frozenset(_noun(part) for part in report.pattern.parts if part.rows)
    rows = sorted(
        (row.span for part in report.pattern.parts for row in part.rows if row.label is not None),
        key=lambda span: span.start,
    )
    spans, at = [], 0
    for span in (*rows, Span(len(text), len(text))):
        spans += sentences(text, Span(at, max(at, span.start)))
        at = max(at, span.end)
    return read_layout(text, spans, nouns)


def _noun(part: Part) -> str:
    """The last word of a piece's name, in the singular: "HALF HEXAGON" is a hexagon."""
    words = [word for word in part.name.lower().replace("(", " ").split() if word.isalpha()]
    return singular(words[-1]) if words else ""


def _motifs(report: Report, pieces: Sequence[Piece]):
    for piece in pieces:
        last = piece.layers[-1]
        for part in piece.parts:
            half = part.name.lower().startswith("half")
            row = next((row for row in reversed(report.ledger.rows) if row.part is part), None)
            made = row.first.made if row is not None else None
            corners = sum(stitch.corner for stitch in last.stitches)
            yield Motif(_noun(part), half, corners, made.sides if made is not None else ())
