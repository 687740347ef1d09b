"""Toys and plain home things as bloggers, shops and leaflets write them: what stands around the rows.

Forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

_HEAD = "Toy\n\nUS terms\n\nEAR\n"


@pytest.mark.parametrize(
    "behind", ["Knot two more tails like this one.", "Draw thread through the rem sts and pull up."]
)
def test_words_behind_fasten_off_are_no_part_of_the_row(behind: str) -> None:
    """The row is counted; what follows its end and is not understood is told by itself."""
    report = check(
        _HEAD + f"Rnd 1: 8 sc in magic ring. (8)\nRnd 2: sc in each st around (8 sc). Fasten off. {behind}\n"
    )
    assert counts(report)[:2] == [8, 8]
    assert corrections(report) == []


@pytest.mark.parametrize(
    "row",
    [
        "2 sc in next 4 sts. Fasten off. Bloop the other 4 sts. (12)",
        "2 sc in each st. Fasten off. Join B, sc in each st around, bloop. (16)",
    ],
)
def test_a_row_that_goes_on_behind_fasten_off_is_not_cut(row: str) -> None:
    """Where the printed count or more work stands behind it, "fasten off" ends one yarn and not the row."""
    report = check(_HEAD + f"Rnd 1: 8 sc in magic ring. (8)\nRnd 2: {row}\n")
    assert outcomes(report)[1] == "not-recomputed"


def test_a_slanted_line_between_rows_is_no_repeat() -> None:
    """Stars around a line that works nothing only slant its letters; around stitches they are a repeat."""
    report = check(
        _HEAD + "Rnd 1: 6 sc in magic ring. (6)\n*Change to cream.*\nRnd 2: 2 sc in each st around. (12)\n"
        "*Stuff lightly, and go on stuffing.*\nRnd 3:\n*sc in next st, 2 sc in next st*\n(18)\n"
    )
    assert counts(report) == [6, 12, 18]
    assert corrections(report) == []


def test_finish_as_for_another_piece_does_not_say_where_to_begin() -> None:
    """ "Finish as for the crown" calls for its end: how many of its rows is not told, so none is worked."""
    report = check(
        "Hat\n\nUS terms\n\nCROWN\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: sc2tog six times. (6)\nFasten off.\n\n"
        "FLAP\nRnd 1: 4 sc in magic ring. (4)\nRnd 2: sc in each st around. (4)\nFinish as for the crown.\n"
    )
    assert corrections(report) == []
    assert counts(report)[:4] == [12, 6, 4, 4]


@pytest.mark.parametrize(
    ("again", "made"),
    [
        ("work *-* 5 times in all", 15),
        ("do * to * 5 times in total", 15),
        ("repeat between the asterisks all the way around", 15),
        ("repeat the part between the stars 4 more times", 15),
        ("work *-* to the last 4 sts, sc 4", 13),
    ],
)
def test_a_passage_is_called_for_by_its_marks(again: str, made: int) -> None:
    """The passage between the marks is worked again, whether "repeat" is said and the marks are printed or named."""
    report = check(_HEAD + f"Rnd 1: 10 sc in magic ring. (10)\nRnd 2: *sc 1, inc*, {again}. ({made})\n")
    assert counts(report) == [10, made]
    assert corrections(report) == []


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("2 sc, (inc, sc)*3, 4 sc, (inc, sc)*3 (24)", 24),
        ("(sc, inc)*2, 6 sc, [inc, sc]*2, 4 sc (22)", 22),
        ("((sc, inc)*2, 5 sc)*2 (22)", 22),
    ],
)
def test_two_stars_behind_brackets_are_no_pair(row: str, made: int) -> None:
    """A star close between a bracket and a figure is a cross, as often as it stands in a round."""
    report = check(_HEAD + f"Rnd 1: 18 sc in magic ring. (18)\nRnd 2: {row}\n")
    assert counts(report) == [18, made]
    assert corrections(report) == []


_COVER = "Cover\n\nUS terms\n\nMaterials\nWorsted yarn in ecru (A) and plum (B)\n\n{}FRONT\nRow 1: Fsc 12, turn. (12)\nRow 2: {}\n"
_TOLD = "Notes\nCh 1 at the start of a row is not a st. The number after each letter tells how many sts to work in that color.\n\n"


@pytest.mark.parametrize("row", ["Ch 1, A2, (B4, A2) once, B4, turn.", "Ch 1, *B2, A4; rep from * across, turn."])
def test_letters_with_figures_are_stitches_where_the_pattern_says_so(row: str) -> None:
    """ "A2, B4" is two stitches in one colour and four in the other, if it is said or the row's count bears it out."""
    assert counts(check(_COVER.format(_TOLD, row))) == [12, 12]
    assert counts(check(_COVER.format("", row + " (12 sc)"))) == [12, 12]
    assert outcomes(check(_COVER.format("", row)))[-1] == "not-recomputed"


@pytest.mark.parametrize("row", ["Ch 1, A2, sc in next 4, B6, turn. (12)", "Ch 1, A9, B3, A3 rows, turn. (12)"])
def test_letters_with_figures_beside_other_work_are_not_guessed_at(row: str) -> None:
    """A letter with a figure beside stitches that are named, or beside rows, may mean another thing."""
    assert outcomes(check(_COVER.format(_TOLD, row)))[-1] == "not-recomputed"


def test_a_colour_may_lead_a_round_with_a_comma() -> None:
    """ "plum, 12 sc" is a round in that colour; a word that names no colour is not passed over."""
    assert counts(check(_HEAD + "Rnd 1: 12 sc in magic ring. (12)\nRnd 2: dark plum, 12 sc (12)\n")) == [12, 12]
    other = check(_HEAD + "Rnd 1: 12 sc in magic ring. (12)\nRnd 2: frimp, 12 sc (12)\n")
    assert outcomes(other)[-1] == "not-recomputed"


@pytest.mark.parametrize(
    "side",
    [
        "Rotate. Sc in next 5 ch on the opposite side, 2 sc in last ch",
        "Working on the other side of the ch, sc in next 5 ch, 2 sc in last ch",
    ],
)
def test_the_other_side_of_a_chain_may_be_told_twice(side: str) -> None:
    """The work goes round the chain's end once, however often that is said."""
    report = check(_HEAD + f"Ch 8.\nRnd 1: Sc in 2nd ch from hook, sc in next 5 ch, 3 sc in last ch. {side}. (16)\n")
    assert counts(report) == [16]
    assert corrections(report) == []


@pytest.mark.parametrize(("number", "made"), [("25", 50), ("each of the 25", 50)])
def test_a_run_to_the_end_leaves_nothing_for_the_other_side(number: str, made: int) -> None:
    """ "sc in each ch across" goes to the chain's end: what is worked on its other side has places of its own."""
    words = f"sc in next {number} ch" if number.isdigit() else f"sc in {number} ch"
    report = check(
        _HEAD + "Ch 26.\nRnd 1: Sc in 2nd ch from hook and in each ch across; "
        f"working along the other side of the ch, {words}. ({made})\n"
    )
    assert counts(report) == [made]
    assert corrections(report) == []


@pytest.mark.parametrize(
    "call", ["Rep. 2nd and 3rd rows 4 times.", "Rep 2nd to 3rd rows twice.", "Rep. 3rd row 5 times."]
)
def test_a_bare_count_before_rows_that_are_called_again(call: str) -> None:
    """The row's count stands behind a colon, and the rows to be worked again in the line below."""
    report = check(
        "Mat\n\nUK terms\n\nMAT\nMake 17 ch.\n1st row: 1 dc into 2nd ch. from hook, 1 dc into each ch. to end, turn.\n"
        "2nd row: 1 ch., 1 dc into each st. to end, turn: 16 sts.\n"
        f"3rd row: 1 ch., 1 dc into each st. to end, turn.: 16 sts.\n{call}\n"
    )
    assert counts(report)[:3] == [16, 16, 16]
    assert corrections(report) == []


def test_rounds_labelled_without_a_sign_may_begin_with_their_ring() -> None:
    """ "R1 mc 6 (6)": the label has no colon, and the ring's short name follows it."""
    report = check(
        "Newt\n\nUS terms\n\nKey: sc = single crochet, inc = increase, mc = magic circle\n\nTail - lime\n"
        "R1 mc 5 (5)\nR2 inc x5 (10)\nR3-R5 10 sc (10)\n"
    )
    assert counts(report) == [5, 10, 10, 10, 10]
    assert [row.row.label.kind for row in report.ledger.rows] == ["round"] * 5
    assert corrections(report) == []
