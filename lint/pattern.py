"""The document above the steps: labels, printed counts, rows, parts, sections, the whole pattern."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from lint.amount import Amount
from lint.source import Span
from lint.tree import Counting, Special, Step, Unread, Work, walk


@dataclass(frozen=True, slots=True)
class StatedItem:
    """One figure of a printed count, with the unit as printed."""

    span: Span
    number: Amount  # of the last row, where there is a series
    unit: str  # stitches | kind:dc | space | space:2 | chain | special:shell | corner | side | unknown
    words: str = ""
    series: tuple[Amount, ...] = ()  # one for each row of a range: "28, 36 and 44 sc"

    def at(self, size: int, index: int | None = None) -> int | None:
        """The figure for one size, and for one row of a range where there is a series."""
        amount = self.series[index] if self.series and index is not None and index < len(self.series) else self.number
        return amount.at(size)


@dataclass(frozen=True, slots=True)
class Stated:
    """A printed count: several items for several kinds."""

    span: Span
    items: tuple[StatedItem, ...]
    per_side: Amount | None = None
    perhaps: tuple[Work, ...] = ()  # what it is if it is no count: "9 inc. 9 sc.", "2 sps; 1 bl; 2 sps; 1 bl."

    @property
    def series(self) -> tuple[Amount, ...]:
        """The figures of the first item that has one for each row of a range."""
        return next((item.series for item in self.items if item.series), ())

    def without_perhaps(self) -> Stated | None:
        """What is left of the count where its doubtful figures are work: of "2 sps. (13 dc)" the stitches."""
        spans = {step.span for step in self.perhaps}
        items = tuple(item for item in self.items if item.span not in spans)
        return replace(self, items=items, perhaps=()) if items else None

    def over_sizes(self, sizes: int, among: Sequence[int] = ()) -> Stated:
        """The count with series of so many figures taken for one figure a size: "20, 24 sc" in two sizes.

        `among`: the sizes that work the row, where it is not for all of them.
        """
        own = tuple(among) or tuple(range(sizes))
        items = []
        for item in self.items:
            figures = dict(zip(own, (one.lone for one in item.series), strict=False))
            if len(item.series) == len(own) and None not in figures.values():
                item = replace(item, number=Amount(tuple(map(figures.get, range(sizes)))), series=())
            items.append(item)
        return replace(self, items=tuple(items))


@dataclass(frozen=True, slots=True)
class Label:
    """A row's label: "Rnds 4-9 (B):"."""

    span: Span
    kind: str  # row | round | foundation | next
    numbers: tuple[int, ...]  # every number named, ranges run out; the first size's, where sizes have their own
    side: str | None = None  # rs | ws
    colour: str | None = None
    words: str = ""
    by_size: tuple[tuple[int, ...], ...] = ()  # the numbers of each size where they differ; () where it works none
    rows: Amount | None = None  # "Next 4 rows": so many, without numbers
    alternate: bool = False  # "Row 2 and all even rows": every other row from here on
    unclear: bool = False  # figures that are neither one number for each size nor the same for all
    tally: bool = False  # "4 rounds:": so many of them or, if the numbers before it lead there, round 4

    def at(self, size: int) -> tuple[int, ...]:
        """The numbers as one size reads them."""
        return self.by_size[size] if self.by_size else self.numbers

    def for_gate(self, gate: tuple[int, ...], sizes: int) -> Label:
        """A label whose lists have a figure for each size of a gate alone, as all of so many sizes read it."""
        own = {size: self.by_size[at] for at, size in enumerate(gate)} if self.by_size else {}
        rows = self.rows
        if rows is not None and len(rows.values) > 1:
            figures = dict(zip(gate, rows.values, strict=True))
            rows = Amount(tuple(figures.get(size) for size in range(sizes)))
        by_size = tuple(own.get(size, ()) for size in range(sizes)) if own else ()
        return replace(self, by_size=by_size, rows=rows)

    def worked(self, size: int) -> bool:
        """Whether a size works any row under this label."""
        return bool(self.by_size[size]) if self.by_size else self.rows is None or bool(self.rows.at(size))


@dataclass(frozen=True, slots=True)
class Row:
    """One labelled row or round (or range of them), or an unlabelled line of work."""

    span: Span
    label: Label | None
    steps: tuple[Step, ...]
    stated: Stated | None = None
    sizes: tuple[int, ...] | None = None  # the sizes that work it; None: all
    mark: str = ""  # the sign behind it, up to which another piece may be worked: "as for Back to **"

    def unread(self) -> list[Unread]:
        return [step for step in walk(self.steps) if isinstance(step, Unread)]


@dataclass(frozen=True, slots=True)
class Part:
    """A piece of the pattern: the rows under one heading."""

    name: str
    span: Span
    make: int = 1
    rows: tuple[Row, ...] = ()
    piece: str = ""  # the heading over its own, where a piece has only sections under headings of their own
    of_piece: int = 1  # how many are made of that, or of this one as a sentence tells: "Make the second sock to match"

    @property
    def pieces(self) -> int:
        """How many of it are made in all."""
        return max(self.make, self.of_piece)


@dataclass(frozen=True, slots=True)
class Section:
    """A passage of front or back matter under a known heading."""

    key: str
    span: Span
    heading: Span


@dataclass(frozen=True, slots=True)
class Abbreviation:
    """An entry of the pattern's own list."""

    forms: tuple[str, ...]
    meaning: str
    span: Span
    body: Span | None = None  # where its meaning stands


@dataclass(frozen=True, slots=True)
class Pattern:
    """A whole pattern as read."""

    title: str | None
    title_span: Span | None
    parts: tuple[Part, ...]
    sections: tuple[Section, ...] = ()
    abbreviations: tuple[Abbreviation, ...] = ()
    specials: tuple[Special, ...] = ()
    countings: tuple[tuple[int | None, Counting], ...] = ()  # chain length (None: any) and what notes say of it
    sizes: tuple[str, ...] = ()
    sizes_unnamed: Span | None = None  # the first list over the sizes, where no line names them
    spaces_counted: tuple[tuple[int, int], ...] = ()  # by length, the stitches that a chain space counts as
    facts: dict[str, bool] = field(default_factory=dict)
    settled: tuple[tuple[int, tuple, int], ...] = ()  # readings in which all sizes have to be alike, once it is worked
    unplaced: tuple[Span, ...] = ()  # lines full of stitches that belong to no row, section or definition
