"""Shaping that is spread over a run, which the words tell apart from it."""

from __future__ import annotations

from lint.growth import ShapedWhere
from lint.place import Place, Target, TargetKind, Which
from lint.tree import Group, Loops, OpenWork, Remark, Repeat, Shaping, Step, Work
from lint.working.cursor import PlacesUnknown
from lint.working.fabric import UNTOLD_KIND
from lint.working.grouping import Grouping
from lint.working.kinds import family

_AT_EDGES = (ShapedWhere.EACH_END, ShapedWhere.ONE_END)


def _makes_stitches(step: Step) -> bool:
    return isinstance(step, (Group, Repeat)) or isinstance(step, Work) and step.stitch != "sl st"


class Spreading(Grouping):
    """ "Sc across, increasing 4 sts evenly", "dec 4 sts evenly over next 20 sts"."""

    def shape(self, step: Shaping, steps: tuple[Step, ...], index: int, following: tuple[Step, ...]) -> None:
        """Shaping told of the run before (done then), of the run that follows, or of a row of which nothing else is said."""
        if self.repeating and self.turned_at < 0 and step.over is None:
            raise PlacesUnknown("where the row is shaped in every pass is not said")  # "*sc in 4 sts, inc in last st"
        runs = [
            s
            for s in steps
            if isinstance(s, Work)
            and s.places
            and s.places[-1].which is Which.EACH
            or isinstance(s, OpenWork)
            and s.plain
        ]
        before = next((s for s in reversed(steps[:index]) if not isinstance(s, (Remark, Loops))), None)
        if before in runs if step.over is None else isinstance(before, Work) and step.over in before.places:
            return
        left = any(node.is_stitch for node in self.cursor.nodes[self.cursor.at :])
        if before in runs and step.over.which is not Which.NEXT and not left:  # "sc across, inc 3 over first 6 sts"
            raise PlacesUnknown("whether these stitches are of the run before is not said")
        self.shaping = step
        if step.over is None and any(s in runs for s in steps[index + 1 :]):
            return
        if step.over is None and step.where in _AT_EDGES and any(map(_makes_stitches, steps[:index])):
            raise PlacesUnknown("which of the row's stitches are worked beside the shaping is not said")
        kinds = (family(node.kind) for node in self.cursor.nodes if node.is_stitch and node.kind != UNTOLD_KIND)
        stitch = next(kinds, self.main)
        whole = Place(step.span, Which.EACH, (Target(TargetKind.ANY_STITCH),))
        run = Work(step.span, stitch, places=(step.over or whole,))
        self.work_stitches(run, (*steps[index + 1 :], *following))
