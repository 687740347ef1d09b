"""Tunisian rows: loops drawn up and kept on the hook, the first of which is the loop that is there already.

The counts are worked out by hand from the trade's common practice (no published source).
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

_BEGUN = "Marl\n\nTerms: US\n\nCLOTH\nCh 18.\n"


def _rows(*words: str) -> list[int | None]:
    rows = "".join(f"Row {number}: {one}\n" for number, one in enumerate(words, 1))
    return counts(check(_BEGUN + rows))


@pytest.mark.parametrize(
    "words",
    [
        "Pull up a loop in 2nd ch from hook and in each ch across, return pass.",
        "Draw up a loop in the 2nd ch from hook and in each ch across, leaving all loops on hook (18 loops on hook). Return.",
        "Insert hook in 2nd ch from hook, yo, pull up a loop, *insert hook in next ch, yo, pull up a loop; rep from * across. Return.",
        "Insert hook in 2nd ch from hook, yo, draw up a loop. Repeat in each ch across, keeping all loops on hook.",
        "Pull up a loop in 2nd ch and in each ch to end, 18 loops on hook. Work return pass.",
    ],
)
def test_the_foundation_row(words: str) -> None:
    """Seventeen loops are drawn up, and one is on the hook."""
    assert _rows(words) == [18]


_FIRST = "Pull up a loop in 2nd ch from hook and in each ch across, return pass."


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Tss in each st across, return pass.", 18),
        ("Sk first vertical bar, tss in each st to last st, edge st, return.", 18),
        ("Tss in next 6 sts, tss2tog, tss in each st to end. RP.", 17),
        ("Tss2tog, tss in each st to last 3 sts, tss2tog, tss in last st, return pass.", 16),
        ("*Tks in next st, tps in next st; rep from * to last st, tks in last st. Return.", 18),
        (
            "Forward pass: tss in each st across. Return pass: yo, pull through 1 loop, *yo, pull through 2 loops; rep from * to end.",
            18,
        ),
        ("*Insert hook under next vertical bar, yo, pull up a loop; rep from * across. Return.", 18),
    ],
)
def test_rows_on_eighteen(words: str, made: int) -> None:
    """The loop on the hook stands over the first bar."""
    assert _rows(_FIRST, words) == [18, made]


def test_a_wrong_count_of_loops_is_found() -> None:
    """One decrease leaves seventeen, not sixteen."""
    report = check(
        _BEGUN + f"Row 1: {_FIRST}\nRow 2: Tss2tog, tss in each st across, return pass. (16 loops on hook)\n"
    )
    assert [rule for rule, _ in corrections(report)] == ["count-differs"]


def test_a_return_pass_under_its_own_label() -> None:
    """It works no stitches, and the row after it goes on as if it were not there."""
    text = "Row 1 (forward): Pull up a loop in 2nd ch from hook and in each ch across, leaving loops on hook.\nRow 1 (return): Yo, pull through 1 loop, *yo, pull through 2 loops; rep from * until 1 loop remains on hook.\nRow 2 (forward): Tss in each st across.\n"
    assert counts(check(_BEGUN + text)) == [18, 18]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        (
            "Ch 1, turn, draw up a loop in each of next 2 sts, yo and draw through all 3 loops on hook, sc in each st across.",
            11,
        ),
        (
            "Ch 1, turn, draw up a loop in next st, draw up a loop in next st, yarn over and draw through all loops on hook, sc across.",
            11,
        ),
        (
            "Ch 1, turn, sc in next 9 sts, insert hook in next st, yo, pull up a loop, insert hook in next st, yo, pull up a loop, yo, draw through all 3 loops, sc in last st.",
            11,
        ),
    ],
)
def test_a_decrease_told_by_hand(words: str, made: int) -> None:
    """Loops drawn up in two stitches and drawn through together are one stitch."""
    assert counts(check(f"Marl\n\nTerms: US\n\nTAB\nRow 1: Fsc 12. (12)\nRow 2: {words}\n"))[1:] == [made]


_LOOPS = (
    "Cloth\n\nUS terms\n\nCLOTH\nCh 12.\nRow 1: Pull up a loop in 2nd ch from hook and in each ch across, RetP. (12)\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("*Tss2tog, yo; rep from * to last st, Tss in last st, RetP.", 12),
        ("*Yo, Tss2tog; rep from * to last st, Tss in last st, RetP.", 12),
        ("Tss in next 2 sts, yo, yo, Tss in each st to end. Return.", 14),
        ("Tss in each st, yo, return pass.", 13),
        ("Tss in next st, yo twice, Tss in each st. RetP.", None),
        ("Tss across to last st and yo, Tss in last st. RetP.", None),
        ("*Insert hook in next st, yo, pull up a loop; rep from * across. Return.", 12),
    ],
)
def test_yarn_over_between_stitches(words: str, made: int | None) -> None:
    """A yarn over alone between Tunisian stitches is a loop of its own; those that work a stitch are none."""
    assert counts(check(f"{_LOOPS}Row 2: {words}\n")) == [12, made]


@pytest.mark.parametrize(
    "words", ["Tss in each st and each yo", "Tss in each st and yo across", "Tss in each st and in each yo sp"]
)
def test_yarn_over_of_the_row_before(words: str) -> None:
    """The yarn overs of a row are places of the next one."""
    text = (
        f"{_LOOPS}Row 2: *Tss2tog, yo; rep from * to last st, Tss in last st, RetP. (12)\nRow 3: {words}, RetP. (12)\n"
    )
    assert outcomes(check(text)) == ["agrees"] * 3
