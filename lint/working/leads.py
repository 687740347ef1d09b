"""What the clauses behind a row's first chain begin with."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.place import Limit, LimitKind, TargetKind, Which
from lint.tree import (
    MAKES_STITCHES,
    Alongside,
    Chain,
    Group,
    JoinYarn,
    Loops,
    OpenWork,
    Remark,
    Repeat,
    Shaping,
    Skip,
    Step,
    Turn,
    UseYarn,
    Work,
    walk,
)
from lint.working.cursor import PlacesUnknown


def skips_first(following: tuple[Step, ...]) -> bool:
    """Whether the next clause skips the row's first stitch."""
    ahead = next((s for s in following if not isinstance(s, (Turn, Remark, Loops, UseYarn))), None)
    place = ahead.places[0] if isinstance(ahead, Skip) and ahead.places else None
    return place is not None and place.which is Which.FIRST and place.number.lone == 1


def on_stitches(following: tuple[Step, ...]) -> bool:
    """Whether the first stitch goes into stitches: "sc in next 4 sts", and not "sl st in 2nd ch from hook"."""
    first = next((step for step in walk(following) if isinstance(step, (Work, Group, Skip))), None)
    if first is None or not first.places:
        return isinstance(first, Work)
    place = first.places[0]
    onward = place.which in (Which.NEXT, Which.FIRST, Which.EACH)
    return onward and place.targets[0].kind in (TargetKind.ANY_STITCH, TargetKind.STITCH)


def begins_far(following: tuple[Step, ...]) -> bool:
    """Whether the first stitch goes into none of the first ones: "skip 2 dc, sc in next dc", "sc in 3rd dc of next shell"."""
    first = next((step for step in walk(following) if isinstance(step, (Work, Group, Skip))), None)
    if isinstance(first, Skip):
        return not skips_first(following)
    place = first.places[0] if first is not None and first.places else None
    return place is not None and place.of is not None and (place.middle or any(nth > 1 for nth in place.ordinals))


def one_in_first(following: tuple[Step, ...], circular: bool) -> bool:
    """Whether one stitch goes into the first of a row, and the rest shows it to be no increase: the chain before it counts for nothing.

    It shows that where the row nowhere increases or decreases, or where its passes begin elsewhere: "ch 2, dc in first st, 2 dc in
    next st, (dc in next st, 2 dc in next st) 5 times".  In "ch 3, dc in first st, dc in next st, (2 dc in next st, dc in next st)
    5 times" the chain is one of the first two.
    """
    works = [step for step in following if isinstance(step, (Work, Group, Repeat, Skip))]
    first, second = works[0] if works else None, works[1] if len(works) > 1 else None
    place = first.places[0] if isinstance(first, Work) and first.places else None
    if place is None or place.which is not Which.FIRST or place.from_words or place.of is not None:
        return False
    if place.targets[0].kind not in (TargetKind.ANY_STITCH, TargetKind.STITCH) or not _one(first):
        return False
    again = isinstance(second, (Work, Group)) and any(place.which is Which.SAME for place in second.places)
    shaped = any(isinstance(step, (Shaping, Alongside, OpenWork)) for step in walk(following))
    shaped = shaped or any(isinstance(step, Remark) and step.gains for step in following)
    last = ends_in(following)
    flat = (
        last is not None and _one(last) and not _in_turning_chain(last)
    )  # "dc in top of ch-3": that of the row before counted
    return not again and not shaped and (circular or flat) and _shows_no_increase(works)


def _shows_no_increase(works: list[Step]) -> bool:
    """Whether all clauses work one stitch into each place, or passes that do not are not begun by the chain and the first stitch."""
    passes = next((at for at, step in enumerate(works) if isinstance(step, Repeat)), len(works))
    begins = _numbers(works[:passes])
    if begins is None or any(not _plain(step) for step in works[passes + 1 :]):
        return False
    even = set(begins) <= {1}
    if passes == len(works) or _plain(works[passes]):
        return even
    repeated = _numbers(list(works[passes].items))
    return repeated is not None and (begins == repeated or even and [begins[0] + 1, *begins[1:]] != repeated)


def _plain(step: Step) -> bool:
    """Whether a clause works one stitch into each of its places."""
    inner = [one for one in walk((step,)) if isinstance(one, (Work, Group))]
    return all(isinstance(one, Work) and _one(one) and not one.together and one.stitch != "dec" for one in inner)


def _numbers(steps: list[Step]) -> list[int] | None:
    """How many stitches go into each place, one after the other; a run to the end, or of all sizes' lengths, once. None if not said."""
    found: list[int] = []
    for step in steps:
        if isinstance(step, (Remark, Chain, Turn, Loops, UseYarn, Skip)):
            continue
        if not isinstance(step, Work) or step.together or step.stitch == "dec":
            return None
        each = 2 if step.stitch == "inc" else 1 if _one(step) else step.number.lone
        if each is None:
            return None
        for place in step.places:
            found += [each] * (1 if place.which is Which.EACH else place.number.lone or 1)
    return found


def _in_turning_chain(step: Work) -> bool:
    return any(target.kind is TargetKind.TURNING_CHAIN for place in step.places for target in place.targets)


def _one(step: Work) -> bool:
    """Whether one stitch goes into each place, as in "5 sc in next 5 sts", too."""
    several = step.number != ONE and any(place.each_of or place.number != step.number for place in step.places)
    return step.stitch != "inc" and step.special is None and not several


def ends_in(following: tuple[Step, ...]) -> Work | None:
    """The last stitch of a row, that of a repeat's last pass too."""
    last = next((step for step in reversed(following) if isinstance(step, (Work, Group, Repeat))), None)
    if isinstance(last, Repeat):
        return ends_in(last.items if last.last_pass is None else last.last_pass)
    return last if isinstance(last, Work) else None


def leads_to_piece(following: tuple[Step, ...]) -> bool:
    """Whether another piece is worked or joined next: "sc in 9 sts of the first leg"."""
    ahead = next((step for step in following if isinstance(step, (Work, Group, Repeat, JoinYarn, Skip))), None)
    if not isinstance(ahead, (Work, JoinYarn)) or not ahead.places or ahead.places[0].which is not Which.ELSEWHERE:
        return False
    return ahead.places[0].targets[0].name == "piece" or isinstance(ahead, Work) and bool(ahead.places[0].from_words)


def joined_and_turned(step: JoinYarn, ahead: tuple[Step, ...]) -> JoinYarn:
    """ "Join A in last st, ch 1, turn": the stitch that the row before ended in is the first one of the row to be worked."""
    place = step.places[0] if len(step.places) == 1 else None
    if place is None or place.which is not Which.LAST:
        return step
    coming = next((one for one in ahead if isinstance(one, (Turn, *MAKES_STITCHES))), None)
    if isinstance(coming, Turn) and coming.turned:
        return replace(step, places=(replace(place, which=Which.FIRST),))
    run = coming.places[0] if isinstance(coming, Work) and len(coming.places) == 1 else None
    if run is not None and run.which is Which.EACH and run.limit in (None, Limit(LimitKind.END)):
        raise PlacesUnknown(
            "which way the row goes on from the last stitch is not said"
        )  # "join in last st, sc in each st"
    return step
