"""Confines a row to some stitches of the row below: "working over the first 6 sts only"."""

from __future__ import annotations

from lint.working.cursor import Cursor, PlacesUnknown
from lint.working.fabric import Node


def confine(cursor: Cursor, number: int, first: bool) -> list[Node]:
    """Lays only the first so many stitches before the cursor, and returns the places beyond, which are left.

    Raises PlacesUnknown where the row below is not known, has fewer, or where "these 6 sts" are not all that it has.
    """
    stitches = [index for index, node in enumerate(cursor.nodes) if node.is_stitch]
    if not cursor.known or len(stitches) < number or number < 1:
        raise PlacesUnknown(f"the {number} stitches named are not known in the row below")
    if not first and len(stitches) != number:
        raise PlacesUnknown(f"which {number} of the {len(stitches)} stitches below are meant is not said")
    last = stitches[number - 1]
    if cursor.at > last + 1:
        raise PlacesUnknown("the work has gone beyond the stitches named")
    beyond = cursor.nodes[last + 1 :]
    if any(node.is_stitch for node in beyond):
        cursor.lay(cursor.nodes[: last + 1])
        return beyond
    return []
