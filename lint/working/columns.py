"""What the post stitches of a row are worked around: posts below, or plain stitches."""

from __future__ import annotations

from dataclasses import dataclass

from lint.working.fabric import Node


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
    return node.kind.startswith(("FP", "BP"))
