"""Signatures: what a slip leaves in the numbers.  One function each; SIGNATURES and QUIET are the registry.

A function looks at one departure of one tester's course and says how well the numbers fit (0 to 1), or None.
The fit is a judgement: how often such numbers have that cause, given what the row's words say.  The causes and their
words stand in rules/testers.yaml under the same names.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from lint.testers.courses import Course, Departure
from lint.testers.drift import every_row, now_and_then, steady
from lint.testers.paths import PathRow, labels_between
from lint.testerwords import TesterFile

_TALL, _FLAT = 1.3, 0.77  # stitches so much taller or shorter than meant are another stitch (UK tr for US tr is 3 to 4)
_A_FEW = 2  # stitches that are easily counted too many or too few
_NEXT_ROWS = 3  # rows further on whose count a tester may have by working one too many


@dataclass(frozen=True, slots=True)
class Fit:
    """How well a signature fits (0 to 1), and the figures that its sentence names."""

    share: float
    number: int = 0
    ratio: str = ""


@dataclass(frozen=True, slots=True)
class Suggestion:
    """A likely slip: its name, its title, the question that asks about it, and how well it fits."""

    name: str
    title: str
    says: str
    share: float


@dataclass(frozen=True, slots=True)
class Facts:
    """What else a tester said that a slip may show in: whether an edge leans; how tall the stitches are to those meant."""

    slants: bool = False
    tall: float | None = None
    tall_words: str = ""


# one off in every row -------------------------------------------------------------------------------------------


def turning_chain_not_worked(course: Course, departure: Departure) -> Fit | None:
    """-1 each row where the chain counts."""
    if not every_row(course, departure, -1) or not _chain_counts(departure):
        return None
    return Fit(0.9 if _flat(departure) else 0.6)


def first_stitch_doubled(course: Course, departure: Departure) -> Fit | None:
    """+1 each row where the chain counts."""
    if not every_row(course, departure, +1):
        return None
    if _chain_counts(departure):
        return Fit(0.6 if departure.first.row.joined else 0.9)
    return Fit(0.4) if _flat(departure) else None


def first_stitch_skipped(course: Course, departure: Departure) -> Fit | None:
    """-1 each row where the chain does not count."""
    if not every_row(course, departure, -1) or _chain_counts(departure):
        return None
    return Fit(0.9 if _flat(departure) else 0.7)


def last_stitch_missed(course: Course, departure: Departure) -> Fit | None:
    """-1 now and then, or in each row."""
    if now_and_then(departure):
        return Fit(0.85)
    if every_row(course, departure, -1):
        return Fit(0.5)
    return Fit(0.3) if _flat(departure) and departure.offs[0] == -1 and steady(departure) else None


def one_each_row(course: Course, departure: Departure) -> Fit | None:
    """One more or fewer in each row, where nothing said of chains or joins explains it: a spiral."""
    if not (every_row(course, departure, +1) or every_row(course, departure, -1)):
        return None
    return Fit(0.35, ratio="more" if departure.offs[0] > 0 else "fewer")


def join_worked(course: Course, departure: Departure) -> Fit | None:
    """+1 each joined round."""
    return Fit(0.85) if departure.first.row.joined and every_row(course, departure, +1) else None


# at the start ---------------------------------------------------------------------------------------------------


def chain_missed_in_start(course: Course, departure: Departure) -> Fit | None:
    """-1 once, in the row that is worked into the chain."""
    if not departure.first.row.on_chain or departure.offs[0] != -1 or not steady(departure):
        return None
    return Fit(0.8 if not departure.back else 0.3)


def slip_knot_counted(course: Course, departure: Departure) -> Fit | None:
    """-1 in the chain itself, or in the first row."""
    if departure.offs[0] != -1 or not steady(departure):
        return None
    if departure.first.row.founds:
        return Fit(0.9)
    return Fit(0.6) if departure.first.row.on_chain and not departure.back else None


def first_row_convention(course: Course, departure: Departure) -> Fit | None:
    """One more or fewer in the first row only."""
    if not departure.first.row.on_chain or abs(departure.offs[0]) != 1 or not steady(departure):
        return None
    if departure.back and len(departure.steps) == 1:
        return Fit(0.92)
    if departure.offs[0] > 0:
        return Fit(0.8)
    return Fit(0.55 if len(departure.steps) == 1 else 0.4)


def chain_not_counted(course: Course, departure: Departure) -> Fit | None:
    """-1 in every row with a chain that counts, and never more."""
    rows = [step.row for step in departure.steps]
    right = [step.row for step in course.steps if step.off == 0]
    if set(departure.offs) != {-1} or not all(row.chain_counts for row in rows) or any(r.chain_counts for r in right):
        return None
    return Fit(0.84 if len(rows) > 1 else 0.35)


# once, and it stays ---------------------------------------------------------------------------------------------


def one_by_accident(course: Course, departure: Departure) -> Fit | None:
    """One more or fewer from some row on."""
    if abs(departure.offs[0]) != 1 or not steady(departure):
        return None
    if departure.first.row.on_chain or departure.first.row.founds:
        return Fit(0.2)
    return Fit(0.4 if departure.between or departure.back else 0.8)


def counted_wrongly(course: Course, departure: Departure) -> Fit | None:
    """Off by a few in one row alone, with a sound count on either side."""
    alone = departure.back and len(departure.steps) == 1 and not departure.first.row.on_chain
    return Fit(0.85) if alone and departure.before is not None and abs(departure.offs[0]) <= _A_FEW else None


def repeats_left_out(course: Course, departure: Departure) -> Fit | None:
    """Short by a multiple of what the row's repeat makes, or of what it gains."""
    short = -departure.offs[0]
    if short <= 0:
        return None
    fits = [
        fit for unit in departure.first.row.units if (fit := _units_short(unit.times, unit.makes, unit.gain, short))
    ]
    if not fits:
        return None
    often, share = max(fits, key=lambda one: one[1])
    if departure.between or not steady(departure):
        share = min(share, 0.5)
    return Fit(share, often)


def _units_short(times: int, makes: int, gain: int, short: int) -> tuple[int, float] | None:
    if makes > 1 and short % makes == 0 and short // makes < times:
        return short // makes, 0.88
    if gain > 0 and short % gain == 0 and short // gain <= times:
        return short // gain, 0.86 if short > 1 else 0.45
    return None


def repeat_doubled(course: Course, departure: Departure) -> Fit | None:
    """Half as many again; or the gain of the row twice; or what a row further on has; or a repeat or more too many."""
    more, row, got = departure.offs[0], departure.first.row, departure.first.placed.got
    due = row.due.count or 0
    if more < 2:
        return None
    if got * 2 == due * 3:
        return Fit(0.9, more)
    at = departure.first.at
    before = course.path.rows[at - 1].due.count if at else None
    if before is not None and more == due - before:
        return Fit(0.87, more)
    if got in {later.due.count for later in course.path.rows[at + 1 : at + 1 + _NEXT_ROWS]}:
        return Fit(0.84, more)
    for unit in row.units:
        if unit.makes > 1 and more % unit.makes == 0 or unit.gain > 1 and more % unit.gain == 0:
            return Fit(0.7, more)
    return None


def spaces_counted(course: Course, departure: Departure) -> Fit | None:
    """More by just the chain spaces of the row."""
    spaces = departure.first.row.spaces
    if spaces < 2 or any(step.off != step.row.spaces for step in departure.steps):
        return None
    return Fit(0.93)


# seen late, or all over the place -------------------------------------------------------------------------------


def early_fault_seen_late(course: Course, departure: Departure) -> Fit | None:
    """A constant difference, first counted after rows that were not counted although their counts are printed."""
    if not steady(departure) or not any(row.due.printed is not None for row in departure.between):
        return None
    return Fit(0.82 if len(departure.steps) > 1 else 0.75)


def no_printed_count(course: Course, departure: Departure) -> Fit | None:
    """A difference first seen after rows of which no count is printed."""
    if departure.between and steady(departure) and all(row.due.printed is None for row in departure.between):
        return Fit(0.86)
    return Fit(0.3) if departure.first.row.due.printed is None else None


def wrong_row_followed(course: Course, departure: Departure) -> Fit | None:
    """Counts that drift by more than one, or that are those of rows further on or back."""
    if every_row(course, departure, +1) or every_row(course, departure, -1):
        return None
    if _shifted(course, departure):
        return Fit(0.86)
    moves = {b - a for a, b in zip((0, *departure.offs), departure.offs, strict=False)}
    if len(departure.steps) > 2 and len(moves - {0}) > 1 and max(map(abs, departure.offs)) > 2:
        return Fit(0.8)
    if not steady(departure) and max(map(abs, departure.offs)) > 1 and not now_and_then(departure):
        return Fit(0.6)
    return Fit(0.25) if abs(departure.offs[0]) > 1 else None


def _shifted(course: Course, departure: Departure) -> bool:
    """Whether three counts and more, of which not all are alike, are those due one to three rows away."""
    got = [(step.at, step.placed.got) for step in departure.steps]
    if len({count for _, count in got}) < 3:
        return False
    dues = [row.due.count for row in course.path.rows]
    for by in (1, -1, 2, -2, 3, -3):
        if all(0 <= at + by < len(dues) and dues[at + by] == count for at, count in got):
            return True
    return False


# with sound counts ----------------------------------------------------------------------------------------------


def chain_at_one_end(course: Course, facts: Facts, words: TesterFile) -> Fit | None:
    """Sound counts, and an edge that leans."""
    return Fit(0.9) if facts.slants and any(step.row.row.kind == "row" for step in course.steps) else None


def other_countrys_names(course: Course, facts: Facts, words: TesterFile) -> Fit | None:
    """Sound counts, and stitches far taller or shorter than the gauge or the measures say."""
    if facts.tall is None or _FLAT < facts.tall < _TALL:
        return None
    return Fit(0.9, ratio=facts.tall_words)


SIGNATURES: dict[str, Callable[[Course, Departure], Fit | None]] = {
    "turning-chain-not-worked": turning_chain_not_worked,
    "first-stitch-doubled": first_stitch_doubled,
    "first-stitch-skipped": first_stitch_skipped,
    "last-stitch-missed": last_stitch_missed,
    "chain-missed-in-start": chain_missed_in_start,
    "slip-knot-counted": slip_knot_counted,
    "first-row-convention": first_row_convention,
    "one-by-accident": one_by_accident,
    "counted-wrongly": counted_wrongly,
    "repeats-left-out": repeats_left_out,
    "repeat-doubled": repeat_doubled,
    "join-worked": join_worked,
    "one-each-row": one_each_row,
    "wrong-row-followed": wrong_row_followed,
    "early-fault-seen-late": early_fault_seen_late,
    "no-printed-count": no_printed_count,
    "spaces-counted": spaces_counted,
    "chain-not-counted": chain_not_counted,
}
QUIET: dict[str, Callable[[Course, Facts, TesterFile], Fit | None]] = {
    "chain-at-one-end": chain_at_one_end,
    "other-countrys-names": other_countrys_names,
}


def suggestions(course: Course, departure: Departure, words: TesterFile) -> tuple[Suggestion, ...]:
    """What may be behind a departure, the likeliest first."""
    fits = [(name, fit) for name, of in SIGNATURES.items() if (fit := of(course, departure)) is not None]
    return _ranked(fits, words, departure.first.row, labels_between(list(departure.between)))


def quiet_suggestions(course: Course, facts: Facts, words: TesterFile) -> tuple[Suggestion, ...]:
    """What may be behind something else than the counts, where these are sound."""
    fits = [(name, fit) for name, of in QUIET.items() if (fit := of(course, facts, words)) is not None]
    return _ranked(fits, words, None, "")


def _ranked(
    fits: list[tuple[str, Fit]], words: TesterFile, row: PathRow | None, between: str
) -> tuple[Suggestion, ...]:
    found = []
    for name, fit in sorted(fits, key=lambda one: -one[1].share):
        cause = words.cause(name)
        label = row.label if row is not None else ""
        says = cause.says.format(row=label, between=between, number=fit.number, ratio=fit.ratio)
        found.append(Suggestion(name, cause.title, says, fit.share))
    return tuple(found)


def _chain_counts(departure: Departure) -> bool:
    said = [step.row.chain_counts for step in departure.steps if step.row.chain_counts is not None]
    return sum(said) * 2 > len(said)


def _flat(departure: Departure) -> bool:
    return departure.first.row.row.kind == "row"
