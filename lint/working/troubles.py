"""A place that was wanted and not found as named, and its name in the trade's words."""

from __future__ import annotations

from dataclasses import dataclass

from lint.place import Target, TargetKind
from lint.working.fabric import Node


@dataclass
class Trouble:
    """A place that was wanted and not found as named."""

    kind: str  # "run out" | "not there" | "left" | "does not fit" | "passed" | "chains too"
    wanted: str
    number: int = 1
    found: str = ""


def describe(target: Target, size: int) -> str:
    """The sort of place in the trade's words."""
    if target.kind is TargetKind.SPACE:
        length = target.length.at(size) if target.length else None
        return f"ch-{length} sp" if length else "sp"
    if target.kind in (TargetKind.STITCH, TargetKind.SPECIAL):
        return target.name or "st"
    return {
        TargetKind.ANY_STITCH: "st",
        TargetKind.CHAIN: "ch",
        TargetKind.TURNING_CHAIN: "turning chain",
        TargetKind.CORNER: "corner",
        TargetKind.RING: "ring",
        TargetKind.MARKED: "marked st",
    }.get(target.kind, "place")


def name_of(node: Node) -> str:
    """What a place of the row below is called."""
    return f"ch-{node.length} sp" if node.kind == "space" else node.kind
