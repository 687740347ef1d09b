"""All testers together: gauge, yarn and measures against what is stated; sizes and rows that nobody covered."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from statistics import mean

from lint.inspection import Report
from lint.ledger import Outcome
from lint.rulemodels import HookSize
from lint.testers.claims import GaugeGot, Intake, Measured, YarnUsed
from lint.testers.names import Names, plain
from lint.testers.placing import Placement
from lint.testers.stated import Figures, StatedGauge, StatedMeasure

_NEAR = 0.5  # stitches or rows in 10 cm that two swatches may differ by (common practice, no source)
_NEAR_SHARE = 0.03
_ALONG = ("length", "long", "height", "tall", "high", "deep", "depth")


@dataclass(frozen=True, slots=True)
class GaugeLine:
    """One tester's gauge in 10 cm beside the one stated, and the hook that would meet it.

    `fit`: meets | more (stitches than stated, the work is too tight) | fewer | not-stated.
    """

    got: GaugeGot
    stitches: float | None
    rows: float | None
    due_stitches: float | None
    due_rows: float | None
    fit: str
    hook: float | None = None

    @property
    def tall(self) -> float | None:
        """How tall the stitches are to those meant."""
        return self.due_rows / self.rows if self.rows and self.due_rows else None


@dataclass(frozen=True, slots=True)
class YarnLine:
    """The yarn of one size: stated and used, in one unit (g, m or ball).  `more`: testers needed more than is stated."""

    size: int
    unit: str
    stated: float | None
    used: tuple[YarnUsed, ...]
    more: bool

    @property
    def most(self) -> float:
        return max(one.amount for one in self.used)

    @property
    def on_average(self) -> float:
        return mean(one.amount for one in self.used)


@dataclass(frozen=True, slots=True)
class MeasureLine:
    """One measure in one size: stated and measured, in cm.  `off`: the testers' mean lies outside the tolerance."""

    size: int
    what: str
    stated: float | None
    got: tuple[Measured, ...]
    off: bool

    @property
    def on_average(self) -> float:
        return mean(one.cm for one in self.got)


@dataclass(frozen=True)
class Together:
    """What all testers' reports come to beside the counts; rows are places in the ledger."""

    gauges: tuple[GaugeLine, ...]
    yarn: tuple[YarnLine, ...]
    measures: tuple[MeasureLine, ...]
    untested: tuple[int, ...]  # sizes
    uncounted: tuple[int, ...]  # rows that have something to count and were counted by nobody


def put_together(report: Report, names: Names, intake: Intake, placement: Placement, figures: Figures) -> Together:
    """All that is not a count, set beside what the pattern states."""
    return Together(
        tuple(_gauge(one, figures, report.book.materials.hooks) for one in _gauges(intake)),
        tuple(_yarn(names, intake, placement, figures)),
        tuple(_measured(report, names, intake, placement, figures)),
        tuple(_untested(names, intake, placement)),
        tuple(_uncounted(report, placement)),
    )


def _size_of(names: Names, placement: Placement, claim: YarnUsed | Measured) -> int | None:
    said = names.size(claim.who.size) if claim.who.size else None
    return said if said is not None else placement.sizes.get(claim.who.tester)


# gauge ----------------------------------------------------------------------------------------------------------


def _gauges(intake: Intake) -> Iterator[GaugeGot]:
    """Gauges, each with the hook that the tester names elsewhere, if only one is named."""
    hooks: dict[str, set[float]] = defaultdict(set)
    for one in intake.of(GaugeGot):
        if one.hook_mm is not None:
            hooks[one.who.tester].add(one.hook_mm)
    with_figures = {one.who.tester for one in intake.of(GaugeGot) if one.stitches is not None or one.rows is not None}
    for one in intake.of(GaugeGot):
        bare = one.stitches is None and one.rows is None
        if bare and one.who.tester in with_figures:
            continue
        own = hooks[one.who.tester]
        hook = one.hook_mm if one.hook_mm is not None or len(own) != 1 else next(iter(own))
        yield GaugeGot(one.who, one.place, one.stitches, one.rows, one.over_cm, hook, one.quoted)


def _gauge(got: GaugeGot, figures: Figures, hooks: list[HookSize]) -> GaugeLine:
    stated = figures.gauge or StatedGauge(None, None, 10.0)
    stitches, rows = _in_ten(got.stitches, got.over_cm), _in_ten(got.rows, got.over_cm)
    due, due_rows = _in_ten(stated.stitches, stated.over_cm), _in_ten(stated.rows, stated.over_cm)
    if stitches is None or due is None:
        return GaugeLine(got, stitches, rows, due, due_rows, "not-stated")
    if abs(stitches - due) <= max(_NEAR, _NEAR_SHARE * due):
        return GaugeLine(got, stitches, rows, due, due_rows, "meets")
    fit = "more" if stitches > due else "fewer"
    return GaugeLine(got, stitches, rows, due, due_rows, fit, _hook(got.hook_mm, stitches / due, hooks))


def _in_ten(figure: float | None, over_cm: float) -> float | None:
    return figure * 10.0 / over_cm if figure is not None else None


def _hook(used: float | None, ratio: float, hooks: list[HookSize]) -> float | None:
    """The size of hook that would meet the gauge: more stitches than stated, a larger one; in proportion, a guess.

    That more stitches want a larger hook is what gauge lessons teach; that a stitch is as wide as its hook is thick, in
    proportion, is common practice, no source.
    """
    sizes = sorted({hook.mm for hook in hooks})
    if used is None:
        return None
    fitting = [mm for mm in sizes if (mm > used if ratio > 1 else mm < used)]
    return min(fitting, key=lambda mm: abs(mm - used * ratio)) if fitting else None


# yarn -----------------------------------------------------------------------------------------------------------


def _yarn(names: Names, intake: Intake, placement: Placement, figures: Figures) -> Iterator[YarnLine]:
    by_size: dict[tuple[int, str], list[YarnUsed]] = defaultdict(list)
    for one in intake.of(YarnUsed):
        size = _size_of(names, placement, one)
        if size is not None:
            by_size[size, one.unit].append(one)
    for (size, unit), used in sorted(by_size.items()):
        amounts = figures.yarn.get(unit)
        stated = amounts[size] if amounts is not None else None
        yield YarnLine(size, unit, stated, tuple(used), stated is not None and any(one.amount > stated for one in used))


# measures -------------------------------------------------------------------------------------------------------


def _measured(
    report: Report, names: Names, intake: Intake, placement: Placement, figures: Figures
) -> Iterator[MeasureLine]:
    tolerance = report.book.materials.tolerances.measurement
    grouped: dict[tuple[int, str], list[tuple[Measured, StatedMeasure | None]]] = defaultdict(list)
    for one in intake.of(Measured):
        size = _size_of(names, placement, one)
        if size is None:
            continue
        stated = _meant(one.what, figures.measures)
        grouped[size, stated.what if stated is not None else one.what].append((one, stated))
    for (size, what), found in sorted(grouped.items()):
        stated = found[0][1]
        cm = stated.cm[size] if stated is not None else None
        got = tuple(one for one, _ in found)
        off = cm is not None and not tolerance.allows(mean(one.cm for one in got), cm)
        yield MeasureLine(size, what, cm, got, off)


def _meant(said: str, stated: tuple[StatedMeasure, ...]) -> StatedMeasure | None:
    """The stated measure that is meant, by the words the two share; None where none or several could be."""
    words = _measure_words(said)
    shared = [(len(words & _measure_words(one.what)), one) for one in stated]
    most = max((number for number, _ in shared), default=0)
    best = [one for number, one in shared if number == most]
    if most == 0:
        return stated[0] if len(stated) == 1 and not words else None
    return best[0] if len(best) == 1 else None


_SAME = {
    "wide": "width",
    "long": "length",
    "high": "height",
    "tall": "height",
    "deep": "depth",
    "around": "circumference",
}


def _measure_words(words: str) -> set[str]:
    return {_SAME.get(word, word) for word in plain(words).split()} - {
        "the",
        "finished",
        "size",
        "of",
        "in",
        "cm",
        "about",
    }


def is_along(what: str) -> bool:
    """Whether a measure runs along the rows' height: length, height, depth."""
    return any(word in _ALONG for word in plain(what).split())


# what nobody covered --------------------------------------------------------------------------------------------


def _untested(names: Names, intake: Intake, placement: Placement) -> Iterator[int]:
    made = {one.size for one in placement.placed} | set(placement.sizes.values())
    yield from (size for size in range(len(names.sizes)) if len(names.sizes) > 1 and size not in made)


def _uncounted(report: Report, placement: Placement) -> Iterator[int]:
    counted = {one.index for one in placement.placed}
    for index, row in enumerate(report.ledger.rows):
        has_count = any(cell.stated is not None for cell in row.cells if cell.outcome is not Outcome.NOT_WORKED)
        if index not in counted and has_count:
            yield index
