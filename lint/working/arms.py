"""Arms, curls and rays that stand out from a round: a chain of their own, worked back along, and then on along the round.

"ch 16, 2 hdc in 2nd ch from hook, hdc in each of next 14 ch, sl st in next 3 sts": while the chain is worked along, its chains
are the places; then the row below is gone on with where it was left.
"""

from __future__ import annotations

from lint.place import TargetKind, Which
from lint.tree import Group, Repeat, Skip, Step, Work, walk
from lint.working.cursor import Cursor, PlacesUnknown
from lint.working.fabric import Fabric
from lint.working.rowstate import RowState


class Arms(RowState):
    """Working along an arm's chain, and coming back to the round."""

    def begins_arm(self, length: int, ahead: Step, following: tuple[Step, ...]) -> bool:
        """Whether a chain begins an arm; its chains are then the places to be worked into."""
        cursor = self.cursor
        if not (cursor.known and cursor.nodes and (self.is_round or self.made or self.repeating)):
            return False  # a chain that a row begins with makes the row longer, where it is worked along
        below = cursor.nodes[0].kind
        if (
            self.outer is not None
            or below in ("ch", "ring")
            or not (_worked_back(ahead, following) or self._as_many_left(length, ahead, following))
        ):
            return False
        self.outer = cursor
        self.cursor = Cursor(Fabric.foundation(length))
        self.begun, self.arm_from = True, len(self.made)
        return True

    def _as_many_left(self, length: int, first: Step | None, following: tuple[Step, ...]) -> bool:
        """ "Ch 4, sl st in 2nd ch from hook, 2 sl st": the stitches told behind the first are just as many as its chains left."""
        works = [step for step in following if isinstance(step, (Work, Group, Repeat))]
        second = works[works.index(first) + 1] if first in works[:-1] else None
        if not isinstance(first, Work) or not isinstance(second, Work) or second.places or not second.number_said:
            return False
        place = first.places[0] if len(first.places) == 1 else None
        second_chain = place is not None and place.which is Which.FROM_HOOK and place.ordinals == (2,)
        one_each = second.together is None and second.special is None and second.stitch not in ("inc", "dec")
        return second_chain and one_each and self.amount(second.number) == length - 2 > 0

    def back_from_arm(self, coming: Step | None) -> None:
        """Goes on along the round where the arm's chain is worked to its end."""
        if self.outer is None or self.blocks:
            return
        if self.cursor.at >= len(self.cursor.nodes):
            self.cursor, self.outer = self.outer, None
            slips = sum(node.kind == "sl st" for node in self.made[self.arm_from :])
            if slips:  # along the arm alone: the next round meets none of them
                self.made[self.arm_from :] = [node for node in self.made[self.arm_from :] if node.kind != "sl st"]
                self.slipped += slips
        elif (self.is_round or self.made or self.repeating) and coming is not None and _not_on_chain(coming):
            raise PlacesUnknown("the chain of an arm is not worked along to its end")


def _worked_back(first: Step | None, following: tuple[Step, ...]) -> bool:
    """Whether more than one chain is worked into from the hook on: no picot, but an arm, a curl, a ray."""
    works = [step for step in following if isinstance(step, (Work, Group))]
    if first not in works:
        return False
    second = works[works.index(first) + 1 :][:1]
    into = [place for step in (first, *second) for place in (step.places[1:] if step is first else step.places[:1])]
    return any(target.kind is TargetKind.CHAIN for place in into for target in place.targets)


def _not_on_chain(step: Step) -> bool:
    """Whether a step goes into a place that is no chain."""
    works = [one for one in walk((step,)) if isinstance(one, (Work, Group, Skip))]
    places = [place for one in works if not isinstance(one, Repeat) for place in one.places]
    return any(
        place.which is not Which.FROM_HOOK and all(target.kind is not TargetKind.CHAIN for target in place.targets)
        for place in places
    )
