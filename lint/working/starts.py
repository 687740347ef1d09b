"""How a row is worked, told from its words: round or flat, on its own chain or ring, corner to corner."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from itertools import chain, dropwhile, takewhile

from lint.place import Place, TargetKind, Which
from lint.tree import (
    MAKES_STITCHES,
    Alongside,
    Chain,
    Evenly,
    Group,
    Join,
    JoinYarn,
    MakeRing,
    NoJoin,
    OpenWork,
    OtherSide,
    Remark,
    Repeat,
    Skip,
    Step,
    Turn,
    UseYarn,
    Work,
    walk,
)
from lint.working.fabric import Fabric, Node
from lint.working.instances import Instance

MOST_TURNING_CHAINS = 6  # common practice, no source


def is_round(instance: Instance, fabric: Fabric | None) -> bool:
    """Whether a row is worked in the round: by its label, else by its join and turn."""
    if instance.kind == "round":
        return not turned_flat(instance.steps)
    joins = any(isinstance(step, Join) for step in instance.steps)
    turns = any(isinstance(step, Turn) and step.turned for step in instance.steps)
    if instance.kind == "row":
        return joins and not turns
    return bool(fabric and fabric.circular)


def turned_flat(steps: tuple[Step, ...]) -> bool:
    """A "round" that ends in a turn without a join is a row under another name."""
    joins = any(isinstance(step, Join) for step in steps)
    pairs = zip(steps, (*steps[1:], None), strict=False)
    turns = any(isinstance(s, Turn) and s.turned and not isinstance(after, OtherSide) for s, after in pairs)
    return bool(steps) and not joins and turns  # "turn and work along the other side of the ch" ends nothing


def until_turned(steps: tuple[Step, ...], kind: str, ring: bool, coming: Instance | None) -> tuple[Step, ...]:
    """The steps of a row in a ring, and the turn with which the next one begins: a half circle is flat."""
    both_rows = kind == "row" and coming is not None and coming.kind == "row"
    ring = ring or any(isinstance(step, MakeRing) for step in steps)
    if not (both_rows and ring) or any(isinstance(step, (Join, Turn, NoJoin)) for step in steps):
        return steps
    opening = takewhile(lambda step: isinstance(step, (Chain, Remark, Turn, UseYarn)), coming.steps)
    turn = next((step for step in opening if isinstance(step, Turn) and step.turned), None)
    return (*steps, turn) if turn is not None else steps


def names_structure(steps: tuple[Step, ...]) -> bool:
    """Whether the words name corners, or parts of groups: what a row known only by its count does not show."""
    for step in walk(steps):
        places = step.places if isinstance(step, (Work, Group, Skip)) else ()
        limits = [place.limit for place in places] + ([step.times.limit] if isinstance(step, Repeat) else [])
        targets = [target for place in places for target in place.targets]
        targets += [limit.target for limit in limits if limit is not None and limit.target is not None]
        if any(target.kind in (TargetKind.CORNER, TargetKind.SPECIAL) or target.corner for target in targets):
            return True
        if any(place.of is not None or place.middle and not isinstance(step, Skip) for place in places):
            return True
        if any(limit is not None and limit.middle for limit in limits):
            return True
    return False


def names_spaces(steps: tuple[Step, ...]) -> bool:
    """Whether the words work into chain spaces, count them, or go over chains and stitches: "dc in each dc and each ch"."""
    places = [place for step in walk(steps) if isinstance(step, (Work, Group, Skip)) for place in step.places]
    own = any(place.which is Which.FROM_HOOK for place in places)  # a chain of the row's own
    return any(
        target.kind is TargetKind.SPACE or target.kind is TargetKind.CHAIN and _one_by_one(place) and not own
        for place in places
        for target in place.targets
    )


def _one_by_one(place: Place) -> bool:
    """ "in each ch", "in each of the 2 ch"; not the one chain at a row's end, which may have stood for a stitch."""
    return place.which is Which.EACH or place.each_of


def founds(steps: tuple[Step, ...]) -> bool:
    """Whether the steps begin with a foundation chain."""
    for index, step in enumerate(steps):
        if isinstance(step, Chain):
            rest = [s for s in steps[index + 1 :] if isinstance(s, (Work, Group, Repeat, Chain, Skip))]
            if not rest:
                return True
            head = rest[0]
            places = head.places if isinstance(head, (Work, Group, Skip)) else ()
            return bool(places) and places[0].which is Which.FROM_HOOK
        if isinstance(step, (Work, Group, Repeat)):
            return (
                isinstance(step, Work) and step.stitch.startswith("f") and step.stitch[1:] in ("sc", "hdc", "dc", "tr")
            )
    return False


def along_row_ends(steps: tuple[Step, ...]) -> bool:
    """Whether all work of a row goes into row ends, each of them: "sc in each row end around"."""
    works = [step for step in walk(steps) if isinstance(step, (Work, Group)) and step.places]
    works = [step for step in works if not (isinstance(step, Work) and step.stitch == "sl st")]
    runs = [place for step in works for place in step.places]
    return (
        len(runs) == 1
        and runs[0].which is Which.EACH
        and runs[0].targets[0].kind is TargetKind.ROW_END
        and not runs[0].targets[0].rows_of  # "in each dc row end": not in the others
        and not any(isinstance(step, (JoinYarn, Repeat, Skip, OpenWork, Evenly)) for step in walk(steps))
        and not any(isinstance(step, Work) and not step.places for step in walk(steps))
    )


def on_foundation(steps: tuple[Step, ...]) -> bool:
    """Whether a row begins on the other side of the chain that the piece was begun on."""
    for step in steps:
        if isinstance(step, OtherSide):
            return not step.perhaps
        if isinstance(step, (Work, Group, Skip, JoinYarn)) and step.places:
            named = any(target.name == "foundation" for target in step.places[0].targets)
            if named or not isinstance(step, JoinYarn):
                return named
        elif isinstance(step, (Work, Group, Repeat)):
            return False
    return False


def works_ring(steps: tuple[Step, ...]) -> bool:
    """ "6 sc in magic ring": the ring is made in the row that works into it."""
    for step in walk(steps):
        if isinstance(step, (Work, Group)) and step.places:
            return step.places[0].targets[0].kind.value == "ring"
    return False


def _slips_to_space(step: Step) -> bool:
    """ "sl st in ch-3 sp of next block", "(sl st, ch 3, 3 dc) in next ch-3 sp": how one block is joined to the next."""
    if isinstance(step, Group) and step.items and isinstance(step.items[0], Work) and step.items[0].stitch == "sl st":
        return any(target.kind is TargetKind.SPACE for place in step.places for target in place.targets)
    if isinstance(step, Work) and step.special is not None and step.special.items:
        first = step.special.items[0]
        slips = isinstance(first, Work) and first.stitch == "sl st"
        return slips and _slips_to_space(replace(first, places=first.places or step.places))
    if not (isinstance(step, Work) and step.stitch == "sl st"):
        return False
    return any(target.kind is TargetKind.SPACE for place in step.places for target in place.targets)


def first_steps(instances: list[Instance]) -> tuple[Step, ...]:
    """The steps of the first row of a piece that has any."""
    return next((instance.steps for instance in instances if instance.steps), ())


def begins_own(instances: list[Instance]) -> bool:
    """Whether a piece begins on a ring or chain of its own, and does not go on from the piece before."""
    steps = first_steps(instances)
    return any(isinstance(step, MakeRing) for step in steps[:4]) or founds(steps) or works_ring(steps)


def begins_on_chain(instances: list[Instance], led: Chain) -> bool:
    """Whether a piece's first row is worked along a chain that the row before it ended on.

    One so short that it may be there to turn with, is such a chain only where the row says so: all of it is counted,
    "2nd ch from hook and next 4 ch", or the stitches behind it are named, "… and in each ch, sc in each sc across".
    """
    placed = [_places(step) for step in first_steps(instances) if isinstance(step, (*MAKES_STITCHES, Skip, Alongside))]
    length = led.length.at(0) or 0
    if not placed or not placed[0] or placed[0][0].which is not Which.FROM_HOOK:
        return False
    first, *behind = chain.from_iterable(placed)
    kinds = [{target.kind for target in place.targets} for place in behind]
    told = [place for place, kind in zip(behind, kinds, strict=True) if kind == {TargetKind.CHAIN}]
    counted = first.ordinals[0] + sum(place.number.at(0) or 0 for place in told if place.which is Which.NEXT)
    said = any(TargetKind.STITCH in kind for kind in kinds) or counted == length > first.ordinals[0]
    return length >= first.ordinals[0] and (said or length > MOST_TURNING_CHAINS)


def _places(step: Step) -> tuple[Place, ...]:
    """The places that a step names for its own work."""
    return (step.place,) if isinstance(step, Alongside) else getattr(step, "places", ())


def begins_bare(instances: list[Instance]) -> bool:
    """Whether a piece's Rnd 1 is so many stitches and no more, "R1: 6X (6)", which may leave the ring unsaid."""
    made = [step for step in first_steps(instances) if isinstance(step, MAKES_STITCHES)]
    one = made[0] if len(made) == 1 and isinstance(made[0], Work) else None
    bare = one is not None and not one.places and one.number_said and one.special is None and not one.together
    return bare and one.stitch not in ("inc", "dec") and instances[0].number == 1


def corner_to_corner(instances: list[Instance]) -> bool:
    """Whether rows after the first begin with a chain of their own that is worked into: blocks from corner to corner."""
    for instance in instances:
        if instance.kind == "row" and instance.number not in (None, 1):
            steps = _spelled_out(instance.steps)
            if founds(steps) and any(_slips_to_space(step) for step in walk(steps)):
                return True
    return False


def _spelled_out(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """A row's steps with the pattern's own stitches told by what they are made of: "inc tile, 2 tiles"."""
    own = (step.special.items if isinstance(step, Work) and step.special is not None else () for step in steps)
    return tuple(one for step, items in zip(steps, own, strict=True) for one in items or (step,))


def turns_first(steps: tuple[Step, ...]) -> bool:
    """Whether the work is turned before anything is worked: this round is met from its other end."""
    return _turned(takewhile(lambda step: not _makes(step), steps))


def turns_after(steps: tuple[Step, ...]) -> bool:
    """Whether the work is turned once something is worked: the next round is met from its other end."""
    return _turned(dropwhile(lambda step: not _makes(step), steps))


def from_other_end(nodes: list[Node]) -> list[Node]:
    """A round met the other way about: it begins at the same stitch, whichever way it goes."""
    return [*nodes[:1], *reversed(nodes[1:])]


def _turned(steps: Iterable[Step]) -> bool:
    return any(isinstance(step, Turn) and step.turned for step in steps)


def _makes(step: Step) -> bool:
    """Whether stitches are worked; slip stitches at a round's start only move there."""
    return isinstance(step, MAKES_STITCHES) and not (isinstance(step, Work) and step.stitch == "sl st")


def into_round_start(place: Place, first: Node | None) -> bool:
    """Whether a place is where the round began: the join, or its first stitch, as `first` shows it has one."""
    target = place.targets[0]
    if target.kind is TargetKind.PLACE:
        return target.name == "join"
    named = place.which is Which.FIRST and (first is None or first.is_stitch) or place.from_words in ("top", "start")
    return named and target.kind in (TargetKind.STITCH, TargetKind.ANY_STITCH)
