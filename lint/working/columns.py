"""How a row stands on the one below: what its post stitches are worked around, and how its shaping is spread."""

from __future__ import annotations

from dataclasses import dataclass

from lint.tree import Step, Work
from lint.working.fabric import Node

_CLAUSES = 4
_POSTS = ("FP", "BP")


@dataclass(frozen=True, slots=True)
class Columns:
    """Post stitches of one row, by what lies below each; `missed`: posts below that none is worked around."""

    alike: int  # front around front, back around back
    contrary: int
    plain: int
    missed: int

    @property
    def stacked(self) -> int:
        return self.alike + self.contrary


def columns_of(nodes: list[Node], below: list[Node]) -> Columns | None:
    """The columns of a row on the one below; None where either has no post stitches."""
    if not any(kind.startswith(_POSTS) for kind in {node.kind for node in nodes}):
        return None
    posts = [node for node in nodes if _is_post(node) and node.parents]
    under = [node for node in below if _is_post(node)]
    if not posts or not under:
        return None
    stood_on = [node.parents[0] for node in posts]
    alike = sum(_is_post(one) and one.kind[:2] == node.kind[:2] for node, one in zip(posts, stood_on, strict=True))
    contrary = sum(map(_is_post, stood_on)) - alike
    used = {id(one) for one in stood_on}
    missed = sum(id(one) not in used for one in under)
    return Columns(alike, contrary, len(posts) - alike - contrary, missed)


def _is_post(node: Node) -> bool:
    return node.kind.startswith(_POSTS)


def told_singly(steps: tuple[Step, ...], circular: bool) -> bool:
    """Whether a round tells its increases one by one: what a repeat works is spread evenly as it is."""
    return circular and sum(isinstance(step, Work) for step in steps) >= _CLAUSES


def spread_of(nodes: list[Node]) -> tuple[int, ...]:
    """The plain stitches between one increase and the next, all round; () where nothing is doubled.

    An increase is two stitches worked into one: "sc, inc, sc, inc" has one stitch between.
    """
    gaps: list[int] = []
    since = 0
    for node, coming in zip(nodes, [*nodes[1:], None], strict=True):
        if not node.parents or len(node.parents) > 1:
            return ()
        doubled = coming is not None and coming.parents[:1] == node.parents
        if doubled:
            gaps.append(since)
            since = -1  # the second stitch of the increase comes next
        else:
            since += 1
    return (gaps[0] + since, *gaps[1:]) if gaps else ()
