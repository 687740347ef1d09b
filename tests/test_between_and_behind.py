"""What stands between two loops, behind a leg's name, or in a line of chains, is neither lost nor guessed.

Truths worked out by hand; what the words mean is common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts

HEAD = "Piece\n\nUS terms\n\nPIECE\n"
LEGS = (
    "Toy\n\nUS terms\n\nLEG 1\nRnd 1: 18 sc in magic ring. (18)\n\n"
    "LEG 2\nRnd 1: 18 sc in magic ring. (18)\nDo not fasten off.\n"
)


def last(rows: str, head: str = HEAD) -> int | None:
    """The count of the last row."""
    return counts(check(f"{head}{rows}\n"))[-1]


def on_a_round(stitches: int, words: str) -> int | None:
    """The count of words worked on a round of so many stitches."""
    return last(f"Rnd 1: {stitches} sc in magic ring. ({stitches})\nRnd 2: {words}")


def in_a_row(stitches: int, words: str) -> int | None:
    """The count of words worked on a row of so many stitches."""
    return last(f"Row 1: Fsc {stitches}, turn. ({stitches})\nRow 2: {words}")


@pytest.mark.parametrize(
    ("between", "made"),
    [
        ("skip next sc,", 4),
        ("sk 1,", 4),
        ("miss next sc,", 4),
        ("skip next 2 sts,", 3),
        ("", 6),
        ("omit next sc,", None),
    ],
)
def test_what_is_skipped_between_two_loops(between: str, made: int | None) -> None:
    """A stitch that lies between two loops drawn up is used by the stitch they make."""
    words = f"*draw up a loop in next sc, {between} draw up a loop in next sc, yo and draw through all 3 loops on hook; rep from * around"
    assert on_a_round(12, words) == made


@pytest.mark.parametrize("sign", ["=", "|", "→", "-", "–"])
def test_a_count_behind_the_name_of_a_leg(sign: str) -> None:
    """ "18 sc on the first leg = 35" has a count, which is wrong."""
    words = f"Rnd 1: 18 sc on the second leg, 18 sc on the first leg {sign} 35 sts\n"
    rules = [rule for rule, _ in corrections(check(LEGS + words))]
    assert rules == ["count-differs"]
    assert not corrections(check(LEGS + words.replace("35", "36")))


@pytest.mark.parametrize(
    ("stitches", "words", "made"),
    [
        (9, "Ch 1, double inc in first st, sc in next 8 sts, turn.", 11),
        (9, "Ch 1, sc in next 8 sts, make a double increase in the last st, turn.", 11),
        (9, "Ch 1, sc in next 6 sts, double decrease, turn.", 7),
        (9, "Ch 1, sc in next 6 sts, double dec over last 3 sts, turn.", 7),
        (9, "Ch 1, double dec at each end, turn.", 5),
        (9, "Ch 1, sc in next 8 sts, double inc 1 st at end, turn.", None),
        (9, "Ch 1, sc in next 8 sts, 3 sc in the 9th, turn.", 11),
        (9, "Ch 1, sc in next 7 sts, 3 sc in the 9th, turn.", None),
    ],
)
def test_doubled_shaping(stitches: int, words: str, made: int | None) -> None:
    """A double increase makes three of one stitch, a double decrease one of three; "the 9th" is the one behind eight."""
    assert in_a_row(stitches, words) == made


def test_doubled_shaping_in_the_round() -> None:
    """So they do in repeats."""
    assert on_a_round(12, "[sc in next 3 sts, double inc] 3 times") == 18
    assert on_a_round(12, "[double decrease over next 3 sts] 4 times") == 4
    assert on_a_round(12, "*sc in each of 5 sts, 2 sc in the 6th; rep from * around") == 14


def test_so_many_from_the_hook() -> None:
    """ "into 2nd ch from hook 11 sts": that chain and the ten behind it."""
    assert last("Row 1: Ch 12. Hdc into 2nd ch from hook 11 sts (11)") == 11


@pytest.mark.parametrize(
    ("line", "made"),
    [
        ("Ch 1.", 12),
        ("Ch 1", 12),
        ("Ch 3 (counts as dc).", 12),
        ("Ch 7.", None),
        ("Ch 4, join to the other side of the leg.", None),
        ("Make a chain of 4 and join it to the body.", None),
    ],
)
def test_chains_in_a_line_of_their_own(line: str, made: int | None) -> None:
    """Where the rows' numbers go on, such chains lead to the next row, or leave open what it is worked into."""
    rows = "Row 1: Fdc 12, turn. (12)\nRow 2: Ch 3 (counts as dc), dc in each st across, turn. (12)\n"
    report = check(f"{HEAD}{rows}{line}\nRow 3: Dc in each st across, turn.\n")
    assert counts(report)[-1] == made
    assert "turning-chain-missing" not in [rule for rule, _ in all_findings(report)]


def test_a_chain_that_begins_the_next_piece() -> None:
    """A row worked into the chain from the hook stands on it."""
    assert last("Row 1: Fsc 12, turn. (12)\nCh 7.\nRow 2: Sc in 2nd ch from hook and in each ch across, turn.") == 6


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sk dc, hdc, 4 dc in next sc", None),
        ("sk (dc, hdc), 4 dc in next sc", 11),
        ("sk dc, hdc in next st, 4 dc in next sc", 12),
    ],
)
def test_two_names_behind_a_skip(words: str, made: int | None) -> None:
    """ "sk dc, hdc, …" passes over both, or works the second: where both fit, and no count tells, nothing is said."""
    rows = (
        "Row 1: Fsc 10, turn. (10)\n"
        "Row 2: Ch 1, sc in first 4 sts, hdc in next st, dc in next st, sc in next st, hdc in next st, dc in next st, sc in next st, turn. (10)\n"
    )
    assert last(f"{rows}Row 3: Ch 1, sc in first st, {words}, sc in last 6 sts, turn.") == made


def test_a_count_tells_what_is_passed_over() -> None:
    """With a count there is nothing to ask."""
    rows = (
        "Row 1: Fsc 10, turn. (10)\n"
        "Row 2: Ch 1, sc in first 7 sts, hdc in next st, dc in next st, sc in next st, turn. (10)\n"
    )
    assert last(f"{rows}Row 3: Ch 1, sc in first st, sk dc, hdc, 4 dc in next sc, sc in last 6 sts, turn. (11)") == 11
