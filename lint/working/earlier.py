"""Rounds worked into an earlier one, behind what lies between: "*sl st in next dc of Rnd 1, ch 4; rep from * around".

How often such a repeat runs the named round tells, not the row below, of which nothing is worked into.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from lint.pattern import Pattern
from lint.place import UNWORKED, Place, Target, TargetKind, Which
from lint.tree import MAKES_STITCHES, AlongEdge, Chain, Group, Loops, Repeat, Skip, Step, Work, walk
from lint.working.cursor import PlacesUnknown
from lint.working.fabric import Fabric, Made, Node
from lint.working.kinds import family

_ANY = "any stitch"
_LEAST_CHAINS = 2  # of a loop that lies behind; a single chain stands between stitches, which are in columns


@dataclass(frozen=True)
class Behind:
    """What a pass takes of an earlier row."""

    row: int
    target: Target
    number: int


@dataclass(frozen=True)
class Earlier:
    """What an earlier row made, and the sorts of place of which the row on it has taken some and left others."""

    made: Made
    in_part: frozenset[str] = frozenset()
    free: str | None = None  # the loop of its stitches that the row on it has left: back | front


Shelf = dict[tuple[str, int], Earlier | None]


class EarlierRows:
    """The rows of a piece by their numbers, as far as they are known.

    `shelf` has those of all pieces that have left loops free, by the heading they stand under; None where it is not known.
    """

    def __init__(self, shelf: Shelf | None = None) -> None:
        self.shelf: Shelf = {} if shelf is None else shelf
        self.part = ""  # the heading that the work stands under
        self._rows: dict[int, Earlier] = {}
        self._last, self._last_part = 0, ""

    @property
    def last(self) -> int:
        """The number of the row worked last; 0 where that is not known."""
        return self._last

    def get(self, number: int) -> Earlier | None:
        return self._rows.get(number)

    def loops(self, step: AlongEdge, circular: bool) -> Fabric:
        """The loops of a row's stitches that the next one has left free, as places to work into.

        The row is the one of this heading, else of the only piece that has such loops or that the words name.
        """
        own = (self.part, step.row)
        named = {
            key: row
            for key, row in self.shelf.items()
            if key[1] == step.row
            and (step.piece in key[0].lower() if step.piece else key == own or own not in self.shelf)
        }
        found = [row for row in named.values() if row is None or step.loop in (None, row.free)]
        row = found[0] if len(found) == 1 else None
        if row is None or _ANY in row.in_part or row.made.spaces:
            raise PlacesUnknown(f"how many free loops row or round {step.row} has is not known here")
        kinds = list(row.made.by_kind)
        fabric = Fabric.plain(kinds[0] if len(kinds) == 1 else "free loop", row.made.stitches, circular)
        fabric.loops = True
        return fabric

    def worked(self, number: int, below: list[Node], nodes: list[Node], made: Made, steps: tuple[Step, ...]) -> None:
        """A row is worked, on the places `below`; what it made, and that counted."""
        under = self._rows.get(self._last)
        on_loops = any(isinstance(step, AlongEdge) and step.row for step in from_free_loops(steps))
        if under is not None and self._last and not on_loops:  # else it stands on those, and not on the row made last
            self._rows[self._last] = left = Earlier(under.made, _in_part(below, nodes), _left_free(steps))
            self.shelf.pop((self._last_part, self._last), None)
            if left.free is not None:
                self.shelf[self._last_part, self._last] = left
        self._rows[number], self._last, self._last_part = Earlier(made), number, self.part
        self.shelf.pop((self.part, number), None)

    def not_known(self, number: int) -> None:
        self._rows.pop(number, None)
        self._rows.pop(self._last, None)  # which of its places are taken, is not known
        self.shelf[self.part, number] = None
        if self._last:
            self.shelf[self._last_part, self._last] = None
        self._last = 0


def from_free_loops(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """The steps of a row that begins "2 sc in each free front loop of Rnd 3", with those loops as the row below."""
    at = next((i for i, s in enumerate(steps) if isinstance(s, (*MAKES_STITCHES, Skip))), None)
    work = steps[at] if at is not None else None
    place = work.places[0] if isinstance(work, Work) and len(work.places) == 1 else None
    told = place is not None and (work.loop in ("front", "back") or place.from_words not in ("", UNWORKED))
    if not told or not place.row or place.which is not Which.EACH and not (place.each_of and place.from_words):
        return steps
    piece = place.from_words if place.from_words != "loops" else ""
    loops = AlongEdge(work.span, place.row, work.loop, piece)
    plain = replace(work, places=(replace(place, below=False, row=0, from_words=""),))
    return (*steps[:at], loops, plain, *steps[at + 1 :])


def named_as_below(steps: tuple[Step, ...], number: int) -> tuple[Step, ...]:
    """The steps of a row in which "next sc of Rnd 2", or what is skipped of it, is of the row below, which has that number."""
    if not number or not any(_earlier(step) == number for step in walk(steps)):
        return steps
    return tuple(_as_below(step, number) for step in steps)


def _as_below(step: Step, number: int) -> Step:
    if isinstance(step, (Repeat, Group)):
        step = replace(step, items=tuple(_as_below(item, number) for item in step.items))
    if isinstance(step, Repeat) and step.last_pass is not None:
        step = replace(step, last_pass=tuple(_as_below(item, number) for item in step.last_pass))
    if isinstance(step, (Work, Group, Skip)) and not getattr(step, "loop", None):
        step = replace(step, places=tuple(_place_below(place, number) for place in step.places))
    return step


def _place_below(place: Place, number: int) -> Place:
    if place.row != number or place.which not in (Which.NEXT, Which.ELSEWHERE):
        return place
    return replace(place, which=Which.NEXT, below=False, row=0)


def works_behind(pattern: Pattern) -> bool:
    """Whether any row names an earlier one to work into: else nothing of earlier rows need be kept."""
    return any(_earlier(step) for part in pattern.parts for row in part.rows for step in walk(row.steps))


def _earlier(step: Step) -> int:
    """The number of the earlier row that a step works into; 0 where it names none."""
    places = getattr(step, "places", ())
    return step.row if isinstance(step, AlongEdge) else next((place.row for place in places if place.row), 0)


def _left_free(steps: tuple[Step, ...]) -> str | None:
    """The loop of the row below that a row leaves free, where all its stitches go into the other one."""
    told, loops = None, set()
    for step in walk(steps):
        if isinstance(step, Loops):
            told = step.loop
        elif isinstance(step, Work) and step.stitch != "sl st":
            loops.add(step.loop or told)
    return {"back": "front", "front": "back"}.get(loops.pop() or "") if len(loops) == 1 else None


def _in_part(below: list[Node], made: list[Node]) -> frozenset[str]:
    taken = {id(place) for node in made for place in node.parents}
    sorts: dict[str, set[bool]] = {}
    for node in below:
        names = (family(node.kind), _ANY) if node.is_stitch else ("space",) if node.kind == "space" else ()
        for name in names:
            sorts.setdefault(name, set()).add(id(node) in taken)
    return frozenset(name for name, found in sorts.items() if len(found) > 1)


def behind(step: Repeat, size: int) -> Behind | None:
    """What each pass takes of the one earlier row that it works into; None where it works into the row below too."""
    loops = any(isinstance(s, Chain) and (s.length.at(size) or 0) >= _LEAST_CHAINS for s in step.items)
    works = [s for s in walk(step.items) if isinstance(s, (Work, Group, Skip))]
    places = [place for one in works for place in one.places]
    if not loops or not places or not all(one.places for one in works) or isinstance(works[-1], Skip):
        return None
    which = {
        id(place): Which.ELSEWHERE if isinstance(one, Skip) else Which.NEXT for one in works for place in one.places
    }
    if not all(p.row and p.which is which[id(p)] and p.targets == places[0].targets for p in places):
        return None
    if len({place.row for place in places}) > 1:
        return None
    return Behind(places[0].row, places[0].targets[0], sum(place.number.at(size) or 0 for place in places))


def passes(one: Behind, row: Earlier | None, used: int, closes: bool) -> int:
    """How often the repeat runs, of whose places the round has `used` some before; `closes`: chains come after it."""
    there = _number(one.target, row.made) if row is not None else None
    if row is None or there is None:
        raise PlacesUnknown(f"how many such places round {one.row} has is not known here")
    if _sort(one.target) in row.in_part:
        raise PlacesUnknown(f"whether all such places of round {one.row} are meant, or those left free, is not said")
    whole, rest = divmod(there - used, one.number) if one.number else (0, 1)
    if rest or whole < 1 or used and not closes:
        raise PlacesUnknown(f"how often the repeat runs over round {one.row} is not said")
    return whole


def _sort(target: Target) -> str:
    if target.kind is TargetKind.STITCH:
        return family(target.name or "")
    return _ANY if target.kind is TargetKind.ANY_STITCH else "space"


def _number(target: Target, made: Made) -> int | None:
    if target.kind is TargetKind.ANY_STITCH:
        return made.stitches
    if target.kind is TargetKind.STITCH and target.name is not None:
        return made.by_kind.get(target.name)
    if target.kind is TargetKind.SPACE and target.name is None and not target.corner:
        length = target.length.lone if target.length is not None else None
        return made.spaces.get(length) if length is not None else sum(made.spaces.values()) or None
    return None
