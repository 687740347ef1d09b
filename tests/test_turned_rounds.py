"""Joined rounds that are turned: each turn is made once, wherever the words put it, so that stitches meet their like."""

from __future__ import annotations

import pytest
from helpers import all_findings, check

_START = "Dulse Pouch\nUS terms\n\nPOUCH\nCh 4, join with sl st to form a ring.\nRnd 1: Ch 1, sc in ring, 6 dc in ring"
_JOIN = "join with sl st in first sc"
_HALVES = "sc in first sc, hdc in next 2 dc, sc in next 4 dc"
_AGAIN = "sc in first sc, sc in next 4 sc, hdc in next 2 hdc"  # met from the other end
_ON = "sc in first sc, sc in next 2 hdc, hdc in next 4 sc"  # in the order in which they were made


@pytest.mark.parametrize(
    ("second", "third"),
    [
        (f"Ch 1, turn, {_HALVES}; {_JOIN}.", f"Ch 1, turn, {_AGAIN}; {_JOIN}."),
        (f"Turn, ch 1, {_HALVES}; {_JOIN}.", f"Turn, ch 1, {_AGAIN}; {_JOIN}."),
        (f"Ch 1, turn, {_HALVES}; {_JOIN}.", f"Ch 1, {_ON}; {_JOIN}."),
        (f"Ch 1, {_HALVES}; {_JOIN}, turn.", f"Ch 1, {_AGAIN}; {_JOIN}."),
        (f"Ch 1, {_HALVES}; {_JOIN}, ch 1, turn.", f"{_AGAIN[0].upper()}{_AGAIN[1:]}; {_JOIN}."),
        (f"Ch 1, {_HALVES}; {_JOIN}. (7 sts)\nTurn.", f"Ch 1, {_AGAIN}; {_JOIN}."),
        (f"Ch 1, {_HALVES}; {_JOIN}. (7 sts)\nTurn the work.", f"Ch 1, {_AGAIN}; {_JOIN}."),
        (
            f"Ch 1, {_HALVES}; {_JOIN}. (7 sts)\nTurn at the end of every rnd from now on, stuffing lightly.",
            f"Ch 1, {_ON}; {_JOIN}.",
        ),
    ],
)
def test_each_turn_is_made_once(second: str, third: str) -> None:
    """The third round finds every hdc and sc where the second left it, seen from the side it is worked from."""
    text = f"{_START}; {_JOIN}. (7 sts)\nRnd 2: {second}\nRnd 3: {third} (7 sts)\n"
    assert not _unfit(text)
    swapped = third.replace(_AGAIN[17:], _ON[17:]) if _AGAIN[17:] in third else third.replace(_ON[17:], _AGAIN[17:])
    assert _unfit(f"{_START}; {_JOIN}. (7 sts)\nRnd 2: {second}\nRnd 3: {swapped} (7 sts)\n")


def _unfit(text: str) -> bool:
    return bool(
        {"places-run-out", "repeat-does-not-fit", "places-left-over", "place-not-there", "stitch-passed-over"}
        & _rules(text)
    )


def _rules(text: str) -> set[str]:
    return {rule for rule, _ in all_findings(check(text))}


def test_short_round_turned_at_its_end() -> None:
    """A round of few clauses that ends in a turn is itself worked on in the order below."""
    text = (
        "Dulse Pouch\nUS terms\n\nPOUCH\nRnd 1: 6 sc in magic ring; join with sl st in first sc.\n"
        "Rnd 2: Ch 1, [sc in next sc, hdc in next sc, dc in next sc] twice; join.\n"
        "Rnd 3: Ch 1, [sc in next sc, sc in next hdc, dc in next dc] twice; join, turn. (6 sts)\n"
        "Rnd 4: Ch 1, sc in next sc, sc in next dc, sc in next 2 sc, sc in next dc, sc in next sc; join.\n"
    )
    assert not _unfit(text)


_BORDER = (
    "Dulse Mat\nUS terms\n\nMAT\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across; turn. (10 sc)\n"
    "Rows 2-6: Ch 1, sc in each sc across; turn. (10 sc)\nRow 7: Ch 1, sc in each sc across. (10 sc)\n\nBORDER\n"
    "Rnd 1: Ch 1, {turn}3 sc in first sc, sc in next 8 sc, 3 sc in last sc, work 5 sc evenly down the side, 3 sc in first "
    "foundation ch, 8 sc evenly along the foundation edge, 3 sc in last foundation ch, work 5 sc evenly up the side; "
    "join with sl st in first sc. (38 sc)\n"
    "Rnd 2: Ch 1, sc in first sc, 3 sc in next sc, *sc in each sc to center sc of next 3-sc corner, 3 sc in center sc; "
    "rep from * 2 more times, sc in each sc around; join with sl st in first sc. (46 sc)\n"
)


@pytest.mark.parametrize("turn", ["", "turn, "])
def test_border_turned_onto(turn: str) -> None:
    """A border that says the turn after the last row goes the same way round as one that leaves it unsaid."""
    assert "corners-differ" not in _rules(_BORDER.format(turn=turn))
