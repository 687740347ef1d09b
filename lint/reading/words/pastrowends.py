"""Chains behind row ends in one round are those of the foundation: "sc in each of 20 row ends, sc in each of next 16 ch"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.place import Place, Target, TargetKind, Which
from lint.tree import AlongEdge, Evenly, Step, Work

_ANY = Target(TargetKind.ANY_STITCH)


def chains_past_row_ends(steps: list[Step]) -> list[Step]:
    """The steps; chains that are told by their number, once the work has left the row below, are places of their own."""
    found: list[Step] = []
    turned = False  # round the corner, along the edge of the rows
    for step in steps:
        places = step.places if isinstance(step, Work) else ()
        along = isinstance(step, AlongEdge) and not step.row or isinstance(step, Evenly) and step.edge
        turned = turned or along or any(place.targets[0].kind is TargetKind.ROW_END for place in places)
        if turned and isinstance(step, Work) and len(places) == 1 and _chains(places[0]):
            there = replace(places[0], which=Which.ELSEWHERE, targets=(_ANY,), bare=False)
            step = replace(step, places=(there,))
        found.append(step)
    return found


def _chains(place: Place) -> bool:
    """Whether a place is a run of chains of which the number is said, and not those of a space."""
    run = place.which in (Which.NEXT, Which.LAST, Which.FIRST) and place.number is not None and place.number != ONE
    plain = place.limit is None and not place.ordinals and place.of is None and not place.from_words
    return run and plain and place.targets[0].kind is TargetKind.CHAIN and place.targets[0].length is None


__all__ = ["chains_past_row_ends"]
