"""A round folded flat: each stitch worked through both layers takes up two of its places, one from either side."""

from __future__ import annotations

from lint.place import Which
from lint.tree import Remark, Work
from lint.working.choices import Choices
from lint.working.cursor import Cursor, PlacesUnknown


def fold(step: Remark, cursor: Cursor, choices: Choices, work: Work | None) -> None:
    """Lay the places of a round that is folded in pairs; `work` is the row's one run, if it has but one.

    Two rounds held together are worked all round, and two pieces of which the text tells elsewhere are not folded: the
    row's numbers tell which it is.
    """
    places = cursor.nodes
    if not cursor.circular and step.layers == "folded" and cursor.known and len(places) % 2 == 0:
        if choices.pick(("row folded", step.span.start), 2, 0):  # its end on its beginning, or its edge on another
            cursor.lay(places[: len(places) // 2])
        return
    if not cursor.known or not cursor.circular or len(places) < 2 or not all(node.is_stitch for node in places):
        return
    said = work is not None and work.number_said and not (work.places and work.places[-1].which is Which.EACH)
    half = said and work.number.lone is not None and 2 * work.number.lone in (len(places), len(places) - 1)
    if not choices.pick(("folded", step.span.start), 2, int(step.layers == "folded" or half)):
        return
    if len(places) % 2 and not half:
        raise PlacesUnknown(
            "a round with an odd number of stitches is folded, and which one lies at the fold is not said"
        )
    cursor.lay(places[: len(places) // 2])
