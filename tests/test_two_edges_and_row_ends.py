"""Shaping at two edges at once, rows that grow as they are said to, and row ends by their rows; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_FRONT = (
    "Test top\nUS terms\nSizes: S (M)\n\nFRONT\nCh 31 (35).\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. 30 (34) sc.\n{}\n"
)


def _made(text: str, size: int = 0) -> list[int | None]:
    return [
        cell.made and cell.made.stitches
        for cell in (row.cells[min(size, len(row.cells) - 1)] for row in check(text).ledger.rows)
        if cell.outcome.value != "not-worked"
    ]


@pytest.mark.parametrize(
    "words",
    [
        "Dec 1 st at armhole edge every row 2 (3) times, AT THE SAME TIME dec 1 st at neck edge every row 4 (3) times.",
        "At the same time, dec 1 st at armhole edge on next 2 (3) rows and dec 1 st at neck edge on next 4 (3) rows.",
        "Dec 1 st at neck edge every row 4 (3) times, and at the same time dec 1 st at armhole edge every row 2 (3) times. 24 (28) sc.",
        "Continue to dec 1 st at armhole edge every RS row 2 (3) times and at the same time dec 1 st at neck edge every RS row 4 (3) times, until 24 (28) sts remain.",
    ],
)
def test_two_edges_at_once(words: str) -> None:
    """Rows that lose at both edges come first, then those of the edge that has more of them, in each size by itself."""
    text = _FRONT.format(words)
    assert _made(text)[2:] == [28, 26, 25, 24]
    assert _made(text, 1)[2:] == [32, 30, 28]
    assert "count-differs" not in {finding.rule for finding in check(text).findings}


def test_a_wrong_count_behind_both() -> None:
    """How many stitches are said to remain is held against what the rows leave."""
    words = "Dec 1 st at armhole edge every row twice and at the same time dec 1 st at neck edge every row 4 times, until 23 sts remain."
    assert "count-differs" in {finding.rule for finding in check(_FRONT.format(words)).findings}


@pytest.mark.parametrize(
    "words",
    [
        "Dec 1 st at armhole edge every row 2 (3) times, AT THE SAME TIME dec 1 st at neck edge every 4th row 4 (3) times.",
        "Dec 1 st at armhole edge every row 2 (3) times, then dec 1 st at neck edge every row until shoulder fits.",
        "At the same time, dec 1 st at armhole edge every row, and dec 1 st at neck edge every row 4 (3) times.",
    ],
)
def test_two_edges_of_which_the_rows_are_not_told(words: str) -> None:
    """Two paces, or one without an end: which row loses how many is not made up."""
    assert _made(_FRONT.format(words))[-1] is None


_SHAWL = (
    "Test shawl\nUS terms\n\nSHAWL\nCh 4.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (3 sc)\n"
    "Row 2: Ch 1, 2 sc in first sc, sc in each sc across, turn. (4 sc)\n"
    "Row 3: Ch 1, sc in each sc to last sc, 2 sc in last sc, turn. (5 sc)\n{}\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Rows 4-7: Rep Rows 2 and 3, increasing 1 st at the same edge on every row.", [6, 7, 8, 9]),
        ("Rows 4-5: Rep Rows 2 and 3, inc 1 st at shaped edge in each row. (7 sc)", [6, 7]),
        ("Rows 4-5: Rep Rows 2 and 3, increasing 2 sts at the neck edge on every row.", [None, None]),
    ],
)
def test_a_remark_on_what_rows_gain(words: str, made: list[int | None]) -> None:
    """It tells what the rows do that are called for; where they do something else, they are not what is meant."""
    assert _made(_SHAWL.format(words))[-len(made) :] == made


_STRIP = (
    "Test strip\nUS terms\n\nSTRIP\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\n"
    "Rows 2-6: Ch 1, sc in each st across, turn. (8 sc)\n"
    "Rows 7-9: Ch 3 (counts as dc), dc in next st and in each st across, turn. (8 dc)\n{}\n\nEDGE\nRow 1: Ch 1, {}.\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("2 sc in each dc row end across, turn", 6),
        ("sc in the end of each sc row, 2 sc in the end of each dc row, turn", 12),
        ("sc in each sc row end across, 2 sc in each dc row end across, turn", 12),
        ("2 sc in the side of each dc row across, turn", 6),
        ("2 sc in each tr row end across, turn", None),
    ],
)
def test_row_ends_by_the_stitch_of_their_rows(words: str, made: int | None) -> None:
    """Only rows of that stitch are meant; those of a stitch that no row has are not made up."""
    assert _made(_STRIP.format("", words))[-1] == made


@pytest.mark.parametrize("last", ["Rep Row 2 until strip measures 10 in.", "Rep Row 2 every 4th row 3 times."])
def test_rows_of_untold_number_have_untold_ends(last: str) -> None:
    """Behind rows worked to a length, or at intervals, nobody knows how many row ends there are."""
    assert _made(_STRIP.format(last, "sc in each row end across, turn"))[-1] is None


@pytest.mark.parametrize(
    "words",
    [
        "Continue to dec 1 st at armhole edge every RS row 1 (2) times more and AT THE SAME TIME dec 1 st at neck edge every other RS row 2 (2) times more. 25 (28) sc.",
        "Dec 1 st at armhole edge every other row 1 (2) times more, at the same time dec 1 st at neck edge every 4th row 2 (2) times more, until 25 (28) sts remain.",
    ],
)
def test_two_paces_from_one_row(words: str) -> None:
    """Where the row before was shaped at both edges, the paces meet in every second of the faster one's rows."""
    begun = "Row 2 (RS): Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. 28 (32) sc.\n"
    text = _FRONT.format(begun + words)
    assert _made(text)[2:] == [28, 27, 26, 25]
    assert _made(text, 1)[2:] == [32, 31, 29, 28]
    assert check(text).ledger.rows[-1].cells[0].outcome.value == "agrees"
    wrong = check(_FRONT.format(begun + words.replace("25 (28)", "24 (28)")))
    assert [finding.sizes for finding in wrong.findings if finding.rule == "count-differs"] == [("S",)]


def test_an_edge_that_a_size_does_not_shape() -> None:
    """None at one edge leaves the rows of the other."""
    words = "Dec 1 st at armhole edge every row 0 (2) times, AT THE SAME TIME dec 1 st at neck edge every row 3 (3) times. 27 (29) sc."
    assert _made(_FRONT.format(words))[2:] == [29, 28, 27]
    assert _made(_FRONT.format(words), 1)[2:] == [32, 30, 29]


_TWO_SECTIONS = (
    "Test vest\nUS terms\nSizes: S (M)\n\nBACK\nRib\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8)\n"
    "Row 2: Ch 1, sc in each st across, turn. (8)\nRows 3-20 (24): Rep Row 2.\nRotate to work into the ends of the rows.\n"
    "Main\nRow 1: Ch 1, sc in each row end across, turn. 20 (24)\nRow 2: Ch 1, sc in each st across, turn. 20 (24)\nRows 3-10: Rep Row 2.\n"
    "Armholes\nRow 11: Sl st in first 2 sts, ch 1, sc in each st to last 2 sts, turn. 16 (20)\nFasten off.\n\nFRONT\n{}\n"
)


@pytest.mark.parametrize(
    "call",
    [
        "Work as Back through Row 10.\nNeck",
        "Work as for Back to end of Row 10. 20 (24)\n",
        "Work same as Back through Row 10. 20 (24)\nNeck",
    ],
)
def test_a_row_whose_number_two_sections_have(call: str) -> None:
    """The section whose row has the printed count, or ends there, is meant; rows of the sections stand beside their like."""
    text = _TWO_SECTIONS.format(call + "\nRow 11: Ch 1, sc in each of next 9 (11) sts, turn. 9 (11)")
    rows = [row for row in check(text).ledger.rows if row.part.name in ("FRONT", "Neck")]
    made = [[cell.made and cell.made.stitches for cell in row.cells] for row in rows]
    assert made[-12:] == [[None, 8], *[[20, 24]] * 10, [9, 11]]


def test_a_row_that_stands_amid_both() -> None:
    """Where neither count nor heading tells, nothing is worked."""
    text = _TWO_SECTIONS.format("Work as Back through Row 6.\nRow 7: Ch 1, sc in each of next 9 (11) sts, turn. 9 (11)")
    rows = [row for row in check(text).ledger.rows if row.part.name == "FRONT"]
    assert rows[0].cells[0].made is None and len(rows) == 2


def test_a_second_shoulder_of_letters_alone() -> None:
    """ "Join yarn" begins a row; only a join that closes makes rounds of "R2"."""
    text = "Test\nUS terms\n\nBACK\nCh 21.\nR1: Sc in 2nd ch from hook and in each ch across. (20)\nFirst shoulder\nR2: Ch 1, turn, sc in first 6 sts. (6) Fasten off.\n"
    text += "Second shoulder\nSkip the center 8 sts, join yarn in next st.\nR2: Ch 1, sc in same st and in each st to end. (6)"
    assert _made(text)[-1] == 6
