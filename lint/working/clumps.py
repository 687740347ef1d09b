"""Groups of the row below: what was worked into one place."""

from __future__ import annotations

from bisect import bisect_left
from itertools import groupby

from lint.working.fabric import Node


def in_one_place(nodes: list[Node], circular: bool) -> list[list[int]]:
    """Indexes of a row's nodes, parted where what lies side by side is no longer in one place."""
    runs: list[list[int]] = []
    for index, node in enumerate(nodes):
        if runs and node.group and nodes[runs[-1][-1]].group == node.group:
            runs[-1].append(index)
        else:
            runs.append([index])
    if circular and len(runs) > 1 and _around_the_join(nodes[runs[-1][-1]], nodes[runs[0][0]]):
        whole = runs.pop() + runs[0]  # begun at the round's start and ended at its end
        at_the_start = whole[len(whole) // 2] in runs[0]
        runs = [whole, *runs[1:]] if at_the_start else [*runs[1:], whole]
    return runs


def makes_group(nodes: list[Node], run: list[int]) -> bool:
    """Whether what stands in one place is a group: several stitches (not all of a ring), or some with a space."""
    if sum(nodes[i].is_stitch for i in run) >= 3 and len(run) < len(nodes):
        return True
    return len(run) > 1 and any(nodes[i].kind == "space" for i in run)


def those_named(nodes: list[Node], run: list[int], name: str | None) -> list[list[int]]:
    """The shells in what one place holds: of "(V-st, ch 2, V-st)" both V-stitches, of "V-st, dc in same place" the one."""
    begins = nodes[run[0]].special == name
    if len(run) < 3 or all((nodes[i].special == name) is begins for i in run):
        return [run] if begins else []
    parts = [list(part) for named, part in groupby(run, key=lambda i: nodes[i].special == name) if named]
    if len(parts) == 1 and nodes[run[0]].chain:
        return [run] if begins else []  # the chain that the row begins with is a part of its first shell
    return parts if len(parts) > 1 or not begins else [run]


def names_loops(nodes: list[Node], name: str | None) -> bool:
    """Whether a row has loops of that name, "picot loop": then no stitch can be meant by it."""
    return any(node.special == name and node.kind == "space" and not node.group for node in nodes)


def not_passed(runs: list[list[int]], at: int) -> list[list[int]]:
    """Those groups of a row, in its order, that do not end before `at`; the last one may go round the join."""
    if len(runs) < 3 or runs[0][-1] > runs[-2][-1]:  # several of a name in the place that the join lies in
        return [run for run in runs if run[-1] >= at]
    ahead = runs[bisect_left(runs, at, 0, len(runs) - 1, key=lambda run: run[-1]) : -1]
    return [*ahead, runs[-1]] if runs[-1][-1] >= at else ahead


def _around_the_join(last: Node, first: Node) -> bool:
    """Whether a round's last and first stitch are in one place: of a row, or of a ring with no space between."""
    if last.group and last.group == first.group:
        return True
    if not (last.parents and first.parents and last.is_stitch and first.is_stitch):
        return False
    if last.special and first.special and last.parents[0].kind == "ring":
        return False  # two shells, each whole
    return last.parents[0] is first.parents[0]
