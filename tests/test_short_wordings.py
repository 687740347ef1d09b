"""Rows in few words: "hdc for the rest", "[5 sc, inc] repeat.", "8 sc (white) 4 sc".

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, counts

TWELVE = "Ball\n\nUS terms\n\nBALL\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: "


def made(words: str) -> int | None:
    """The count of a round of these words on twelve stitches."""
    return counts(check(TWELVE + words + "\n"))[-1]


@pytest.mark.parametrize(
    ("words", "count"),
    [
        ("Sc in next 4, hdc for the remaining 8.", 12),
        ("Sc for 4, hdc for the rest.", 12),
        ("Sc for the first 4 sts, hdc for the last 8 sts.", 12),
        ("Sc the first 4 sts, hdc the last 8 sts.", 12),
        ("Sc in next 4, hdc for each sleeve.", None),
        ("Sc in next 4, 30 hdc for 8 sts.", None),
    ],
)
def test_for_so_many_stitches(words: str, count: int | None) -> None:
    """ "For" stands where "in each of" might; before a piece, or behind a number that may be all in one, it does not."""
    assert made(words) == count


@pytest.mark.parametrize("words", ["[5 sc, inc] repeat.", "(5 sc, inc), repeat. (14)", "[5 sc, inc] and repeat."])
def test_a_repeat_behind_a_bracket_that_says_no_more(words: str) -> None:
    """It goes on to the round's end."""
    assert made(words) == 14


@pytest.mark.parametrize(
    ("words", "count"),
    [
        ("[W] 8 sc [R] 4 sc", 12),
        ("(white) 8 sc (red) 4 sc", 12),
        ("5 sc, (change to white) 2 sc, (change to red) 5 sc", 12),
        ("(BLO) 8 sc (FLO) 4 sc", 12),
        ("Sc in next 6 (front), sc in next 6 (back) 12 sc", 12),
    ],
)
def test_work_behind_a_bracket_that_holds_a_note(words: str, count: int) -> None:
    """Another figure than what is worked so far is work, and no count."""
    assert made(words) == count


def test_a_number_is_not_taken_for_stitches_in_one_place_to_make_a_row_fit() -> None:
    """Seven places are used in each pass, which do not go into twelve: eight in two would, but nobody says so."""
    assert made("[6 sc, 2 sc in next st] around.") is None


@pytest.mark.parametrize(
    "words", ["Starting in next st, sc in each st around.", "Beginning in same st, sc in each st."]
)
def test_a_round_starts_where_it_would(words: str) -> None:
    """The place where a round starts anyway is no place that is passed over."""
    assert made(words) == 12


@pytest.mark.parametrize(
    ("words", "count"),
    [
        ("Inc in 1st and 7th st, sc in the rest.", 14),
        ("2 sc in 6th st, sc in each remaining st.", 13),
        ("2 sc in 3rd, 6th, 9th and 12th sts, sc in all others.", 16),
        ("Inc in first and seventh st, sc in all other sts.", 14),
        ("Sc around, 2 sc in 6th and 12th sts.", 14),
        ("Dec over 3rd and 4th st, sc in the rest.", 11),
    ],
)
def test_work_into_numbered_stitches(words: str, count: int) -> None:
    """The stitches before and between the numbered ones belong to the rest."""
    assert made(words) == count


@pytest.mark.parametrize(
    "words", ["Inc in 6th and 12th st.", "Inc in 1st and 7th st.", "Dec in 3rd and 9th st, sc in the rest."]
)
def test_what_the_stitches_between_have_is_not_guessed(words: str) -> None:
    """Nothing is said of them, or what is said does not come out."""
    assert made(words) is None


@pytest.mark.parametrize(
    "words",
    [
        "(4 sc, dec) - 2 times.",
        "(4 sc, dec) for 2 times.",
        "(4 sc, dec) twice around.",
        "(4 sc, dec) throughout.",
        "(4 sc, dec), do this twice.",
        "4 sc, dec. Do this 2 times in total.",
    ],
)
def test_how_often_in_other_words(words: str) -> None:
    """Two passes over twelve stitches."""
    assert made(words) == 10


def test_what_goes_on_throughout_must_be_said() -> None:
    """The whole list, or its last clause?"""
    assert made("4 sc, dec throughout.") is None


SQUARE = (
    "Square\n\nUS terms\n\nSQUARE\nRnd 1: Ch 4, join to form ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, "
    "*3 dc in ring, ch 2; rep from * 2 times more, join. (12 dc, 4 ch-2 sps)\nRnd 2: "
)


@pytest.mark.parametrize(
    ("words", "count"),
    [
        ("Dc in each dc, ch 3 at each corner, join.", 12),
        ("Dc in each dc, ch 2 over each corner, join.", 12),
        ("(Sc in next dc) 3 times, (sc, ch 2, sc) in corner; rep around.", 20),
    ],
)
def test_chains_at_corners_and_lists_with_brackets(words: str, count: int) -> None:
    """A chain takes a corner's space on the way round; "rep around" is said of the whole list."""
    assert counts(check(SQUARE + words + "\n"))[-1] == count


def test_a_chain_at_a_corner_stitch_is_not_guessed() -> None:
    """Whether that stitch is worked as well is not said."""
    rows = "*Sc in next 2, 3 sc in next; rep from * around. (20)\nRnd 3: Sc in each sc, ch 2 at each corner."
    assert made(rows) is None


@pytest.mark.parametrize(
    ("words", "count"), [("Sc in next 11 sts, 2 sc in end st.", 13), ("Sc in next 10, 2 sc in end sts.", None)]
)
def test_the_end_stitch_is_the_last(words: str, count: int | None) -> None:
    """One of them; of several it is not said at which end."""
    assert made(words) == count
