"""Reads clusters in old words: "holding back last loop of each on hook, 2 dc in next st, yo and draw through all loops"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.place import Place, Which
from lint.reading.clauses.shaping import ShapingClauses
from lint.reading.places.work import work
from lint.tree import Special, Work

_HELD = ("of", "the", "each", "last", "space", "in", "hook", "stitch", "any_stitch")
_WORKED = ("in", "next", "each", "over", "same")


class ClusterClauses(ShapingClauses):
    """Loops held back make one stitch of several, once the yarn is drawn through all of them."""

    def read_hold_back(self, start: int) -> bool:
        """One stitch: of the work that follows, or, where none does, of that before."""
        stream = self.stream
        stream.take()
        while stream.kind() in _HELD and not self.leg_begins():
            stream.take()
        stream.skip(",", "and")
        stream.take_if("make")
        legs = self.legs()
        if not legs and self.steps and isinstance(self.steps[-1], Work):
            legs = [self.steps.pop()]
        if not legs or not self.closed_by_movements():
            return False
        joined = _one_stitch(legs)
        if joined is None:
            return False
        self.steps.append(replace(joined, span=stream.span_from(start)))
        return True

    def leg_begins(self) -> bool:
        """Whether a stitch stands here that is worked, not one whose loop is held back."""
        stream = self.stream
        return stream.kind() == "stitch" and stream.kind(1) in _WORKED and stream.kind(2) != "hook"

    def legs(self) -> list[Work]:
        """The stitches held together: "2 dc in next st", "dc in next st and 2 dc in following st"."""
        stream = self.stream
        found: list[Work] = []
        while stream.kind() in ("number", "stitch"):
            at = stream.at
            leg = work(stream, at, stream.amount())
            if not isinstance(leg, Work) or leg.together or len(leg.places) != 1:
                stream.at = at
                return []
            found.append(leg)
            before = stream.at
            stream.skip(",", "and")
            if stream.kind() not in ("number", "stitch"):
                stream.at = before
                break
        return found

    def closed_by_movements(self) -> bool:
        """Takes ", thread over and draw through all loops on hook": what makes one stitch of loops held back."""
        stream = self.stream
        start = stream.at
        stream.skip(",", ";", "and")
        if stream.kind() != "movement":
            stream.at = start
            return False
        while stream.kind() == "movement":
            stream.pass_to()
            before = stream.at
            stream.skip(",", "and")
            if stream.kind() != "movement":
                stream.at = before
                break
        return True


def _one_stitch(legs: list[Work]) -> Work | None:
    """The stitch that the legs make together; None where the places they stand in are not told one by one."""
    first = legs[0]
    places = [leg.places[0] for leg in legs]
    numbers = [place.number.lone or 0 for place in places]
    if len(legs) == 1 and numbers == [1] and places[0].which is not Which.EACH:
        plain = replace(first, places=())
        name = Special("cluster", plain.span, (plain,))
        return Work(first.span, "cluster", ONE, first.places, special=name, number_said=True)
    if any(place.which is not Which.NEXT or place.targets != places[0].targets or place.of for place in places):
        return None
    over = Place(first.span, Which.NEXT, places[0].targets, Amount.of(sum(numbers)), shared=True)
    return replace(first, number=ONE, together=sum(numbers), places=(over,))
