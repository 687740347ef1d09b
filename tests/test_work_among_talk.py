"""Work behind sentences that are not understood, or in words that else only tell: counted, or said to be lacking."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts

_US = "Bell\n\nUS terms\n\nRnd 1: 7 sc in magic ring. (7)\nRnd 2: 2 sc in each st around. (14)\n{}\nRnd {}: (Sc2tog) 7 times. (7)\n"
_UK = "Bell\n\nUK terms\n\nRnd 1: 7 dc in magic ring. (7)\nRnd 2: 2 dc in each st around. (14)\n{}\nRnd {}: (Dc2tog) 7 times. (7)\n"


@pytest.mark.parametrize(
    "line", ["Complete the curve. Sc in each sc around.", "Finish round. (Sc in next 6 sts, 2 sc in next st) around."]
)
def test_a_row_behind_a_sentence_that_is_not_understood(line: str) -> None:
    """It is work, and the line is said not to be understood."""
    assert ("not-understood", 7) in all_findings(check(_US.format(line, 4)), ("query",))


@pytest.mark.parametrize(
    "line",
    [
        "Complete the curve. Weave in the tail.",
        "Count with care. You have 14 sc around.",
        "Stuff the bell. Keep it firm.",
    ],
)
def test_talk_behind_talk(line: str) -> None:
    """Sentences that work no row stay talk."""
    report = check(_US.format(line, 3))
    assert counts(report) == [7, 14, 7] and "not-understood" not in [rule for rule, _ in all_findings(report)]


@pytest.mark.parametrize(
    ("text", "line"),
    [
        (_UK, "Cont in rounds of dc for 5 rounds."),
        (_US, "Work in rounds of sc for 5 rounds."),
        (_UK, "Continue in rounds of dc straight for 5 rounds."),
    ],
)
def test_rounds_of_a_stitch(text: str, line: str) -> None:
    """So many rounds are worked, all of the number of stitches that there is."""
    made = [row.cells[0].made.stitches for row in check(text.format(line, 8)).ledger.rows]
    assert made == [7, 14, *[14] * 5, 7]


def test_rounds_of_nobody_knows_what() -> None:
    """So many rounds without a stitch are said not to be understood."""
    assert ("not-understood", 7) in all_findings(check(_US.format("Cont in rounds for 5 rounds.", 8)), ("query",))


@pytest.mark.parametrize("line", ["Cont in rounds of sc.", "Work in rounds for the first 8 rounds."])
def test_rounds_that_are_only_told(line: str) -> None:
    """How the work goes on, but not for how many rounds from here, makes none."""
    assert counts(check(_US.format(line, 3))) == [7, 14, 7]


_FLAT = "Strap\n\nUK terms\n\nMake 10 ch.\nRow 1: 1 dc in 2nd ch from hook and in each ch to end (9 dc){}\nRow 2: 1 ch, turn, 1 dc in each st to end. (9 dc)\n"


@pytest.mark.parametrize(
    "more", [". Repeat on the other side.", ". Rep along the opposite edge.", ". Repeat for the other end."]
)
def test_more_at_the_other_side_behind_a_count(more: str) -> None:
    """A row that may go on, or another that is worked there, is not passed over in silence."""
    assert counts(check(_FLAT.format(more))) == [None, 9]


def test_another_piece_behind_a_count() -> None:
    """A piece made again is no work of the row."""
    assert counts(check(_FLAT.format(". Repeat for the other strap."))) == [9, 9]


_SLEEVE = "Cuff\n\nUK terms\n\nMake 17 ch.\nRow 1: 1 dc in 2nd ch from hook and in each ch to end. (16 dc)\n{}\nRow {}: 1 ch, turn, 1 dc in each st to end. ({} dc)\n"


@pytest.mark.parametrize(
    ("line", "number", "made"),
    [
        ("Shape cuff: Inc 1 dc at each end of next row and 2 foll alt rows. (22)", 7, 22),
        ("Widen: Inc 1 dc at each end of next 3 rows. (22)", 5, 22),
    ],
)
def test_numbers_behind_rows_that_are_told_under_a_name(line: str, number: int, made: int) -> None:
    """The rows told so have numbers of their own, so that none is left out."""
    report = check(_SLEEVE.format(line, number, made))
    assert counts(report)[-1] == made and corrections(report) == []


def test_numbers_behind_one_row_under_a_name() -> None:
    """One row is one number, and others are left out."""
    report = check(_SLEEVE.format("Next row: 1 ch, turn, 1 dc in each st to end. (16 dc)", 7, 16))
    assert [rule for rule, _ in corrections(report)] == ["row-number-out-of-order"]


_WEDGE = "Wedge\n\n{} terms\n\nCh 8.\nRow 1: {s} in 2nd ch from hook and in each ch across. (7)\nRow 2: Ch 1, turn, 2 {s} in first st, {s} in each st across. (8)\nRow 3: Ch 1, turn, {s} in each st across. (8)\n{line}\n"


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize(
    ("line", "made"),
    [
        ("(Rep Row 2, then Row 3) 4 times.", [9, 9, 10, 10, 11, 11, 12, 12]),
        ("[Rep Row 2, Row 3] twice more. (10)", [9, 9, 10, 10]),
        ("(Rep Row 2 twice, then Row 3) 4 times.", [None]),
        ("(Rep Row 3, then Row 2) twice.", [8, 9, 9, 10]),
    ],
)
def test_rows_in_turn_in_a_bracket(line: str, made: list[int | None], terms: str) -> None:
    """Rows named one after the other are repeated together in that order; with times of their own they are not understood."""
    report = check(_WEDGE.format(terms, s="sc" if terms == "US" else "dc", line=line))
    cells = [row.cells[0].made for row in report.ledger.rows][4:]
    assert [cell.stitches if cell is not None else None for cell in cells] == made


_HORN = "Horn\n\n{} terms\n\nRnd 1: 6 {s} in magic ring. (6)\nRnds 2-4: {S} in each st around. (6){line}\nRnd 5: {S} in each st around.\n"


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize(
    ("line", "made"),
    [
        (" Close the tip the same way.", 6),
        (" Close the point in the same manner.", 6),
        ("\nClose the end of it in the same way", 6),
        (" Close the tip with 2 {s} the same way.", None),
    ],
)
def test_openings_closed_like_others(line: str, made: int | None, terms: str) -> None:
    """What is drawn together works no stitch; with stitches it may."""
    s = "sc" if terms == "US" else "dc"
    report = check(_HORN.format(terms, s=s, S=s.title(), line=line.format(s=s)))
    assert counts(report)[1:4] == [made] * 3
