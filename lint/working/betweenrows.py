"""Lines between rows that make no stitches, or are not understood: what they leave for the next row to go on from."""

from __future__ import annotations

from lint.expression import expression
from lint.ledger import Cell, Outcome
from lint.tree import MAKES_STITCHES, AlongEdge, Chain, JoinYarn, MakeRing, OtherSide, Remark, Skip, Unread, walk
from lint.working.edges import moves_on, seamed
from lint.working.fabric import Fabric
from lint.working.goingon import turned_over
from lint.working.instances import Instance
from lint.working.trials import PieceState

# "work in sc just like the Front": not "thread tie through the spaces"
_LIKE_ANOTHER = expression(r"(?i)\b(?:work|crochet|make|complete|finish|continue)\w*\b.*\b(?:as|like|same)\b")


def between_rows(line: Instance, coming: Instance | None, state: PieceState, unread: list[Unread]) -> Cell | None:
    """Takes a line without a label into the state; a cell where it is work, or has a count, and was not understood."""
    row = line.row
    if unread and any(isinstance(s, (Chain, MakeRing)) for s in row.steps):
        state.fabric = Fabric.unknown(False)  # a start that was not read
    if unread and moves_on(row):
        state.fabric, state.joining = Fabric.unknown(False), ()  # where the next row begins was not read
    begun = coming is None and any(isinstance(s, (Chain, MakeRing)) for s in row.steps)
    begun = begun and any(_LIKE_ANOTHER.search(one.words) for one in unread)  # and nothing else tells its rows
    begun = begun or bool(unread) and all(isinstance(step, (Unread, Remark)) for step in row.steps)  # rows told in vain
    if begun or row.stated is not None or any(isinstance(s, MAKES_STITCHES) for s in walk(line.steps)):
        state.fabric = Fabric.unknown(False)
        return Cell(
            Outcome.NOT_RECOMPUTED,
            stopped_by=unread[0].words if unread else None,
            stopped_at=unread[0].span if unread else None,
        )
    state.side, state.fabric = seamed(row.steps, state.side), turned_over(state.fabric, row.steps, coming)
    joining = tuple(step for step in row.steps if isinstance(step, (AlongEdge, JoinYarn, OtherSide, Skip)))
    if not unread and any(not isinstance(step, Skip) for step in joining):
        state.joining = joining  # "Skip the center 12 sts, join yarn in next st." opens the row after it
    elif joining and state.fabric is not None:
        state.fabric = Fabric.unknown(state.fabric.circular)  # "Leave the last 4 sts unworked from now on."
    return None
