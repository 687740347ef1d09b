"""A printed count against what the row makes: agrees, differs, or cannot be compared."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from lint.pattern import Stated, StatedItem
from lint.reading.clauses.tunisian import TUNISIAN
from lint.working.fabric import Made
from lint.working.kinds import family, goes_by

CHAINS_COUNTED = "every single chain is counted"


@dataclass(frozen=True, slots=True)
class Difference:
    """One figure that is not what the row makes; `under` says in which other way of counting it agrees."""

    item: StatedItem
    stated: int
    made: int
    under: str | None = None


@dataclass(frozen=True, slots=True)
class Comparison:
    """None: nothing could be compared.  Figures in a unit that the pattern never defines are left out."""

    agrees: bool | None
    differences: tuple[Difference, ...] = ()
    unchecked: tuple[StatedItem, ...] = ()  # figures in a unit that the pattern nowhere defines


def compare(stated: Stated, made: Made, size: int, index: int | None = None) -> Comparison:
    """Compare for one size; `index` picks a figure of a series ("28, 36 and 44 sc")."""
    differences: list[Difference] = []
    unchecked: list[StatedItem] = []
    compared = 0
    for item in stated.items:
        number = item.at(size, index)
        if number is None:
            continue
        found = measured(item, made, stated)
        if not found:
            if item.unit.startswith("special:"):
                unchecked.append(item)
            continue
        if number not in found and _rest_in_others(item, number, found, stated, made, size, index):
            continue
        compared += 1
        if number not in found:
            under = _other_counting(item, number, made) if len(stated.items) == 1 else None
            differences.append(Difference(item, number, _meant(found, number), under))
    if not compared:
        return Comparison(None, unchecked=tuple(unchecked))
    return Comparison(not differences, tuple(differences), tuple(unchecked))


def _rest_in_others(
    item: StatedItem, number: int, found: list[int], stated: Stated, made: Made, size: int, index: int | None
) -> bool:
    """ "(7 V-sts, 2 dc)" where a V-st is nowhere defined: the other stitches may be in those, as many in each."""
    if item.unit.partition(":")[0] not in ("stitches", "kind") or number > min(found):
        return False
    others = [
        other.at(size, index)
        for other in stated.items
        if other.unit.partition(":")[0] in ("special", "unknown") and not measured(other, made, stated)
    ]
    others = [other for other in others if other]
    return len(others) > 1 or bool(others) and any((figure - number) % others[0] == 0 for figure in found)


def _meant(found: list[int], number: int) -> int:
    """Which of several ways of counting a kind the print means: the one that comes nearest; the first of those alike."""
    return min(found, key=lambda figure: abs(figure - number))


def measured(item: StatedItem, made: Made, stated: Stated) -> list[int]:
    """The figures a unit can mean for what was made, the likeliest first; [] where it means nothing here."""
    unit, _, name = item.unit.partition(":")
    if made.joining or made.joined_loops:
        return _with_joins(item, made, stated)
    if unit == "stitches":
        return [made.stitches, made.stitches + made.slips] if made.slips else [made.stitches]
    if unit == "kind":
        if name == "sl st":
            return [made.by_kind.get(name, made.slips)]
        name = family(name) if name.startswith("f") else name  # "20 fsc" are sc to what comes after
        exact = made.by_kind.get(name, 0)
        plain = sum(number for kind, number in made.by_kind.items() if goes_by(kind, name))
        listed = {other.unit.partition(":")[2] for other in stated.items if other.unit.startswith("kind:")}
        beside = sum(
            number
            for kind, number in made.by_kind.items()
            if goes_by(kind, name) and (kind == name or kind not in listed)
        )
        apart = [made.apart.get(name, 0)] if _counts_groups(stated) else []  # "8 V-sts and 2 dc"
        return [*apart, beside, exact, plain] if exact or plain else [exact]
    if (
        unit == "space"
        and not name
        and item.words.lower() in _LOOPS
        and (made.by_kind.keys() <= _ON_HOOK or not made.spaces and not made.lace_loops)
        and made.stitches
    ):
        return [made.stitches]  # the loops of a Tunisian row that calls another one; stitches, in translated words
    if unit == "space":
        apart = [made.spaces_apart] if _counts_groups(stated) else []  # "8 V-sts, 8 ch-1 sps": those beside them
        counted = [*apart, made.spaces] if made.spaces_apart != made.spaces else [made.spaces]
        loops = [made.lace_loops] if made.lace_loops and not name else []  # "5 loops" of a pineapple between shells
        loops += [made.spaces.get(int(name), 0) + 1] if name and int(name) == made.edge_loop else []
        return [*(spaces.get(int(name), 0) if name else sum(spaces.values()) for spaces in counted), *loops]
    if unit == "special":
        blocks = [sum(made.spaces.values())] if name.split()[-1] in _BLOCKS and _in_blocks(made) else []
        if name in _MESHES and len(made.spaces) == 1:
            blocks.append(sum(made.spaces.values()))  # one may be told stitch by stitch: "5 ch, miss 2, tr, 10 om"
        if name in ("sp", "space") and made.spaces and not any(_is_one_of(group, name) for group in made.groups):
            return [sum(made.spaces.values())]  # of filet, where the row tells its spaces stitch by stitch
        for key in (name, _ALIASES.get(name, name)):
            alike = [number for group, number in made.groups.items() if _is_one_of(group, key)]
            if alike:
                told_otherwise = _blocks_at_ends(made, sum(alike), item.number.lone) if name in ("bl", "block") else []
                return [sum(alike), *blocks, *told_otherwise]
            names = {key, _ALIASES.get(key, key)}  # the pattern's own "beg cl", and a "cl" that it does not define
            kinds = [n for kind, n in made.by_kind.items() if any(_is_one_of(kind, one) for one in names)]
            if kinds:
                return [sum(kinds)]
        if blocks:
            return blocks
        if name in ("bl", "block") and (made.filet_blocks or _all_blocks(made, item.number.lone)):
            return [made.filet_blocks or item.number.lone]
        if (loop := _PICOT.fullmatch(name)) is not None:  # closed into a stitch, or a loop that only looks like one
            return [made.spaces.get(int(loop[1]), 0), made.groups.get("picot", 0)]
        if name in ("picot", "picots") and len(made.spaces) == 1 and 2 <= min(made.spaces) <= 5:
            return [sum(made.spaces.values())]  # its only loops, small ones
        if made.petals and name.split()[-1] in ("petal", "petals"):
            return [made.petals]
        return [made.bunches] if made.bunches and not made.parted and name.split()[-1] in _BUNCHES else []
    if unit == "per side":
        return _of_a_side(made)
    if unit == "corner":
        return [made.corners] if made.corners else []
    if unit == "with chains":
        return [made.stitches + made.chains]
    if unit == "with spaces":
        return [made.stitches + (made.counted if name else sum(made.spaces.values()))]
    if unit == "chain":
        return [made.chains, sum(made.spaces.values())]
    return []


def _counts_groups(stated: Stated) -> bool:
    """Whether shells, V-stitches… are figures of their own in a count, so that its others may leave out what is in them."""
    return any(item.unit.startswith("special:") for item in stated.items)


def _with_joins(item: StatedItem, made: Made, stated: Stated) -> list[int]:
    """What a figure can mean where loops are joined to another piece half way: such a loop is one of the others still.

    It may be of the others' length with the join for its middle chain, and a stitch that joins may go uncounted.
    """
    joining, loops = made.joining, made.joined_loops + made.joining
    found = measured(item, replace(made, joining=0, joined_loops=0), stated)
    unit, _, length = item.unit.partition(":")
    if unit == "space":
        more = loops if length else -joining
        return [*found, *(figure + more for figure in found)]
    return [*found, *(figure - joining for figure in found if unit in ("stitches", "kind"))]


def _of_a_side(made: Made) -> list[int]:
    """What "15 sc on each side" may count, where all sides are alike: with what stands in the corners, or without.

    A corner that is a stitch belongs to both its sides, to one of them, or to neither.
    """
    if not made.sides or len(set(made.sides)) > 1 or len(set(made.runs)) > 1:
        return []
    side, run = made.sides[0], made.runs[0]
    stitch = sum(made.sides) < made.stitches
    return [side, run, side + 1, side + 2] if stitch else [side, run]


_LOOPS, _ON_HOOK = ("loop", "loops", "lp", "lps"), frozenset(TUNISIAN)
_PICOT = re.compile(r"ch-(\d{1,2}) picot")
# what the trade calls several stitches in one place, defined or not
_BUNCHES = ("shell", "shells", "sh", "fan", "fans", "petal", "petals", "scallop", "scallops", "group", "groups")
_ALIASES = {"cl": "cluster", "pc": "popcorn", "ps": "puff", "sh": "shell", "p": "picot", "block": "bl", "bl": "block"}


_MESHES = ("open mesh", "mesh", "om", "sp", "space")
_BLOCKS = ("block", "blocks", "bl", "blk", "blks", "tile", "tiles")


def _all_blocks(made: Made, number: int | None) -> bool:
    """Whether a row of one stitch and no spaces can be so many filet blocks: all of one width, and an edge stitch."""
    width, over = divmod(made.stitches - 1, number or 1)
    return len(made.by_kind) == 1 and not made.spaces and width > 1 and not over


def _blocks_at_ends(made: Made, named: int, number: int | None) -> list[int]:
    """The blocks of a filet row with those at its ends that are told stitch by stitch: "ch 3, dc in next 3 dc, 7 bls"."""
    if made.filet_blocks:
        return [made.filet_blocks]
    more = (number or 0) - named
    return [number] if 0 < more <= 2 and _all_blocks(made, number) else []


def _in_blocks(made: Made) -> bool:
    """Whether a row is made of three stitches and one chain space as high, so many times: corner to corner."""
    (length, number) = next(iter(made.spaces.items()), (0, 0))
    return len(made.spaces) == len(made.by_kind) == 1 and 2 <= length <= 4 and made.stitches == 3 * number


def _is_one_of(group: str, name: str) -> bool:
    """Whether a group counts under a name: its own, or that of the last or first of its sort ("end half SH", "make bobble")."""
    first, _, rest = group.lower().partition(" ")
    return (
        group == name
        or first in ("beg", "beginning", "end", "ending", "last", "first", "make")
        and rest == name.lower()
    )


def _other_counting(item: StatedItem, number: int, made: Made) -> str | None:
    """Another way of counting under which a total agrees."""
    if item.unit != "stitches" and not (item.unit.startswith("kind:") and len(made.by_kind) == 1):
        return None
    if number == made.stitches + sum(made.spaces.values()) and made.spaces:
        return "each chain space is counted as one"
    if number == made.stitches + made.chains and made.chains:
        return CHAINS_COUNTED
    return None
