"""Markers in the work: the stitches they hang in, the gaps they hang between, and how they go up with each row."""

from __future__ import annotations

from lint.tree import Marked, Marker
from lint.working.clumps import in_one_place
from lint.working.fabric import Fabric, Node

Gap = tuple[Node, Node]


class Markers:
    """What a row's words put markers on, and what comes of those of the row below."""

    def __init__(self, below: Fabric) -> None:
        self.below = below
        self.unclear = below.marks_unclear
        self.put: list[Node] = []
        self.gaps: list[int] = []  # numbers of nodes made before each marker that hangs between two
        self.later: list[Marker] = []  # those that the whole row tells
        self.aside = False  # those of the row below hang elsewhere now
        self.from_other_end = False  # the work was turned before the stitches were numbered

    def place(self, step: Marker, made: list[Node], is_round: bool, turned: bool) -> None:
        """Put one marker."""
        last = made[-1] if made else None
        if step.where is Marked.BETWEEN:
            self.gaps.append(len(made))
        elif step.where is Marked.FIRST and is_round:
            pass  # where the round begins
        elif step.where is Marked.JUST_MADE and last is not None and last.is_stitch:
            self.put.append(last)
        elif step.where is Marked.SPACE_MADE and any(node.is_space for node in made):
            self.put.append(next(node for node in reversed(made) if node.is_space))
        elif step.where is Marked.GROUP_MIDDLE and last is not None:
            group = [node for node in made if node.group == last.group and last.group]
            self._middle(group)
        elif step.where in (Marked.EACH_SPACE, Marked.EACH_CORNER, Marked.EACH_MIDDLE, Marked.MIDDLE, Marked.FIRST):
            self.later.append(step)
        elif step.where is Marked.NTH:
            self.later.append(step)
            self.from_other_end = turned and not is_round
        else:
            self.unclear, self.aside = True, self.aside or step.where is Marked.ASIDE

    def finish(self, made: list[Node], fabric: Fabric) -> None:
        """Hang the markers in what the row made."""
        stitches = [node for node in made if node.is_stitch] if self.later else []
        for step in self.later:
            if step.where is Marked.EACH_SPACE:
                self.put += [node for node in made if node.is_space and step.number in (0, node.length)]
            elif step.where is Marked.EACH_CORNER:
                self.put += [node for node in made if node.corner]
            elif step.where is Marked.EACH_MIDDLE:
                self._middle_of_each(made, step.number)
            elif step.where is Marked.MIDDLE:
                self._middle(stitches)
            elif step.where is Marked.FIRST:
                self.put += stitches[:1]
            elif 0 < step.number <= len(stitches):
                self.put.append(stitches[-step.number if self.from_other_end else step.number - 1])
        gaps = [(made[at - 1], made[at]) for at in self.gaps if 0 < at < len(made)]
        if (self.below.marks or self.below.gaps) and not self.aside:
            gaps += self._gone_up(made)
        unique: dict[int, Node] = {id(node): node for node in self.put}
        fabric.marks, fabric.gaps = tuple(unique.values()), tuple({(id(a), id(b)): (a, b) for a, b in gaps}.values())
        fabric.marks_unclear = self.unclear

    def _middle(self, nodes: list[Node]) -> None:
        spaces = [node for node in nodes if node.is_space]
        if len(spaces) == 1:
            self.put.append(spaces[0])
        elif len(nodes) % 2:
            self.put.append(nodes[len(nodes) // 2])
        else:
            self.unclear = True

    def _middle_of_each(self, made: list[Node], size: int) -> None:
        """The middle of each group of so many stitches in one place; of all such groups, where no number is said."""
        groups = [[made[at] for at in run] for run in in_one_place(made, False)]
        groups = [some for some in groups if (len(some) == size if size else len(some) > 1)]
        self.unclear = self.unclear or not groups
        for some in groups:
            self._middle(some)

    def _gone_up(self, made: list[Node]) -> list[Gap]:
        """The markers of the row below, in what was worked into their places."""
        into: dict[int, list[int]] = {}
        for index, node in enumerate(made):
            for parent in node.parents:
                into.setdefault(id(parent), []).append(index)
        put = {id(node) for node in self.put}
        for node in self.below.marks:
            kids = [made[index] for index in into.get(id(node), [])]
            if any(id(kid) in put for kid in kids):
                continue
            if kids:
                self._middle(kids)
            else:
                self.unclear = True
        gaps: list[Gap] = []
        for pair in self.below.gaps:
            one, other = sorted((into.get(id(node), []) for node in pair), key=lambda found: found[:1])
            if one and other and one[-1] < other[0]:
                gaps.append((made[one[-1]], made[other[0]]))
            else:
                self.unclear = True
        return gaps
