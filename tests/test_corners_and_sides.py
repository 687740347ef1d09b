"""Rounds told by their sides and corners: "each corner" in a repeat or once, runs along each side, repeats by the sides.

The forms are common practice, no source; counts worked out by hand: a side of 3 and a corner of 4, four times.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

_RND_1 = (
    "Square\n\nUS terms.\n\nRnd 1: Make a magic ring, ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; "
    "join with sl st in top of ch-3. (12 dc, 4 ch-2 sps)\n"
)
_BEGUN = "Ch 2 (does not count as a st), "
_CORNER = "(2 dc, ch 2, 2 dc)"


def _second(words: str, count: str = " (28 dc)"):
    return check(f"{_RND_1}Rnd 2: {words}; join with sl st in first dc.{count}\n")


@pytest.mark.parametrize(
    "words",
    [
        f"*dc in each dc to corner, {_CORNER} in each corner; rep from * around",
        f"*dc in each dc to corner sp, {_CORNER} in each corner sp; rep from * 3 more times",
        f"[dc in each dc to ch-2 sp, {_CORNER} in each ch-2 sp] around",
        f"dc in each dc to corner, *{_CORNER} in each corner, dc in each dc to next corner; rep from * around",
        f"dc in each dc to corner, {_CORNER} in each corner",
        f"dc in each dc along each side, {_CORNER} in each corner sp",
        f"{_CORNER} in each corner sp, dc in each dc along each side",
        f"{_CORNER} in each ch-2 corner sp and 1 dc in each dc across the sides",
        f"{_CORNER} in each 2-ch corner, dc in each dc along all sides",
        f"dc in each dc across all 4 sides, working {_CORNER} in each corner",
        f"dc in each dc along each side, {_CORNER} in each of 4 corners",
        f"1 dc in each of the 3 dc of each side and {_CORNER} in each corner",
    ],
)
def test_each_corner_beside_a_run(words: str) -> None:
    """All stitches of the sides are worked, and a corner at the end of each."""
    for count in (" (28 dc)", ""):
        report = _second(_BEGUN + words, count)
        assert counts(report) == [12, 28]
        assert corrections(report) == []


@pytest.mark.parametrize(
    "words",
    [
        f"*dc in next 3 dc, {_CORNER} in corner sp; rep from * for remaining 3 sides",
        f"*dc in next 3 dc, {_CORNER} in corner sp; rep from * on remaining sides",
        f"*dc in next 3 dc, {_CORNER} in corner sp; rep from * three more sides",
        f"*dc in next 3 dc, {_CORNER} in ch-2 sp; repeat from * for each side",
        f"*dc in next 3 dc, {_CORNER} in corner sp*, repeat for all 4 sides",
        f"[dc in next 3 dc, {_CORNER} in corner sp] on each side",
        f"dc in each dc to corner, {_CORNER} in corner; repeat for all four sides",
        f"dc in each dc to corner, {_CORNER} in corner sp. Repeat all around",
        f"dc in each dc to corner; in corner work {_CORNER}; repeat around",
    ],
)
def test_repeats_by_the_sides(words: str) -> None:
    """The number of the other sides is of passes more, that of all sides of all passes."""
    report = _second(_BEGUN + words)
    assert counts(report) == [12, 28]
    assert corrections(report) == []


def test_a_bracket_on_the_remaining_sides() -> None:
    """Behind a side that is told apart, the bracket is worked on the others alone."""
    first = f"Ch 3 (counts as dc), dc in next 2 dc, {_CORNER} in corner sp"
    report = _second(f"{first}, [dc in next 3 dc, {_CORNER} in corner sp] for remaining 3 sides")
    assert outcomes(report) == ["agrees", "agrees"]


@pytest.mark.parametrize(
    "words",
    [
        f"Ch 3 (counts as dc), dc in next 2 dc, {_CORNER} in corner sp. Repeat for remaining sides",  # what of the ch 3?
        f"{_BEGUN}dc in each dc to corner, {_CORNER} in corner, dc in each dc to corner; repeat around",
        f"{_BEGUN}1 dc in each of 3 dc along each side",
        f"{_BEGUN}3 dc along each side, {_CORNER} in each corner sp",
        f"{_BEGUN}dc in each dc to corner, {_CORNER} in each corner, sl st in next 2 sts",
        f"{_BEGUN}*dc in each dc to corner, {_CORNER} in each of next 2 corner sps; rep from * around",
    ],
)
def test_sides_that_are_not_clear(words: str) -> None:
    """What is worked again, or how many sides there are, is not guessed."""
    assert counts(_second(words)) == [12, None]


def test_a_wrong_count_with_each_corner() -> None:
    """A print that is out is found where the words are read so."""
    report = _second(f"{_BEGUN}*dc in each dc to corner, {_CORNER} in each corner; rep from * around", " (30 dc)")
    assert outcomes(report) == ["agrees", "differs"]


@pytest.mark.parametrize(
    "corner",
    ["center sc of each corner", "2nd sc of each corner", "second sc of each 3-sc corner", "middle sc of each corner"],
)
def test_the_middle_of_each_corner(corner: str) -> None:
    """The second of three is the middle one."""
    text = (
        "Edge\n\nUS terms.\n\nRnd 1: Make a magic ring, ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)\n"
        "Rnd 2: Ch 1, (sc in next 2 sc, 3 sc in next sc) 4 times; join with sl st in first sc. (20 sc)\n"
        f"Rnd 3: Ch 1, sc in each sc around, working 3 sc in {corner}; join with sl st in first sc. (28 sc)\n"
    )
    assert counts(check(text)) == [12, 20, 28]
    assert counts(check(text.replace(corner, "3rd sc of each corner"))) == [12, 20, None]


@pytest.mark.parametrize(
    "words",
    [
        "3 dc, ch 2, 3 dc, ch 1 in each of next 3 corner sps",
        "3 dc, ch 2, 3 dc and ch 1 in each remaining corner sp",
        "work 3 dc, ch 2, 3 dc, ch 1 in remaining 3 corners",
    ],
)
def test_a_list_that_ends_in_a_chain(words: str) -> None:
    """A chain by itself is worked into nothing: the place behind it is that of the whole list."""
    report = _second(f"Sl st to corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, {words}", " (24 dc)")
    assert outcomes(report) == ["agrees", "agrees"]


def test_a_chain_behind_one_stitch_takes_no_place() -> None:
    """ "dc in next dc, ch 1 in next sp" is no list for one place."""
    assert counts(_second(f"{_BEGUN}dc in next 3 dc, ch 1 in next corner sp, dc in each dc around"))[1] is None


_RND_2 = f"{_RND_1}Rnd 2: Ch 3 (counts as dc), dc in next 2 dc, {_CORNER} in corner sp, (dc in next 3 dc, {_CORNER} in corner sp) 3 times; join. (28 dc)\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc in each dc around, making 3 sc at each corner", 40),
        ("sc around, making 3 sc at corners", 40),
        ("sc around with (sc, ch 2, sc) at each corner", 36),
        ("sc in each dc and 3 sc in each corner sp around", 40),
        ("*sc in next dc, ch 1, skip next dc; rep from * around, working (sc, ch 2, sc) in each corner", None),
    ],
)
def test_what_is_worked_at_the_corners(words: str, made: int | None) -> None:
    """ "Making 3 sc at each corner" is no count of the round; what is worked beside a repeat is not passed over."""
    assert counts(check(f"{_RND_2}Rnd 3: Ch 1, {words}; join.\n"))[2] == made


@pytest.mark.parametrize(
    ("count", "outcome"),
    [
        ("(7 sc along each side, 3 sc in each corner)", "agrees"),
        ("(7 sc per side plus 3 in each corner)", "agrees"),
        ("[6 sc along each side and 3 sc at each corner]", "differs"),
    ],
)
def test_a_count_of_sides_and_corners(count: str, outcome: str) -> None:
    """The stitches of a side are held against those between the corners."""
    report = check(f"{_RND_2}Rnd 3: Ch 1, sc in each dc and 3 sc in each corner sp around; join. {count}\n")
    assert outcomes(report)[2] == outcome
