"""Free loops of chains as places: "in the free loops of foundation ch around", "in free loop of each ch", "of each of the 3 ch"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.place import FREE_CHAIN, Place, Target, TargetKind, Which
from lint.reading.places.limits import limit
from lint.reading.places.targets import FOUNDATION
from lint.reading.words.stream import Stream

_CHAIN = Target(TargetKind.CHAIN)


def free_chains(stream: Stream, place: Place | None, several: bool) -> Place | None:
    """The place whose free loops are meant, the cursor behind it; None where the words leave open how many those are.

    `several`: "the free loops of", of a chain as a whole.  Which chain "each ch" is one of, the row before tells, or nothing.
    """
    if place is None:
        return None
    if place.which is Which.EACH and place.number == ONE and place.targets in ((_CHAIN,), (FOUNDATION,)):
        return replace(place, targets=(FREE_CHAIN,)) if place.targets == (_CHAIN,) else place
    if several and place.targets == (FOUNDATION,) and place.number == ONE:
        return replace(place, which=Which.EACH, limit=place.limit or limit(stream))
    open_end = place.limit is not None or place.which is Which.EACH and place.number == ONE
    return None if open_end else replace(place, which=Which.ELSEWHERE)


__all__ = ["free_chains"]
