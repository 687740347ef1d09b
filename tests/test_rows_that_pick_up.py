"""What a row along an edge says before its stitches, and where those lie that it picks up; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

_TOP = (
    "Top\nUS terms\n\nBACK\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
    "Rows 2-10: Ch 1, sc in each st across, turn. (20 sc)\n{}BAND\n{}\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        (
            "Row 1: With RS facing, 4 mm hook, join yarn to lower corner, ch 1 and work 24 sc evenly up edge, turn. (24 sc)",
            24,
        ),
        ("Row 1: RS facing, smaller hook, join yarn to lower corner, ch 1 and work 24 sc evenly up edge. (24 sc)", 24),
        (
            "Rnd 1: Join yarn, ch 1, 10 sc along the back neck, sc in each of the 12 sts at the middle front, 10 sc along edge, join. (32 sc)",
            32,
        ),
        (
            "Rnd 1: Join yarn, ch 1, sc in each of 12 skipped sts, sc in each of the 2 ch at the thumb opening, join. (14 sc)",
            14,
        ),
        (
            "Rnd 1: Join yarn, ch 1, sc in each of 12 skipped sts, sc in each of the 2 ch at center front and around, join. (14 sc)",
            None,
        ),
    ],
)
def test_along_an_edge(words: str, made: int | None) -> None:
    """The side and the hook are no work, and stitches known by where they lie are those of another row."""
    report = check(_TOP.format("Fasten off.\n\n", words))
    assert counts(report)[-1] == made
    assert not corrections(report)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Row 1: WS facing, smaller hook, ch 1, sc in each st across. (20 sc)", 20),
        ("Row 1: Ch 1, sc in next 4 sts, 4 mm hook, sc to end. (20 sc)", None),
        ("Row 1: Ch 1, sc in each of the 8 sts at center front, sc in each st to end. (20 sc)", None),
        ("Row 1: Join yarn, ch 1, sc in each of the 8 sts at center front, sc in each rem st. (20 sc)", None),
        (
            "Row 1: Ch 1, sc evenly along edge, sc in each of the 8 sts at center front, sc in each rem st. (20 sc)",
            None,
        ),
    ],
)
def test_in_the_row_below(words: str, made: int | None) -> None:
    """Where a row works all of the row below, what lies at the front is some of that."""
    report = check(_TOP.format("\n", words))
    assert counts(report)[-1] == made
    assert not corrections(report)


def test_a_count_over_the_sizes_behind_where_they_lie() -> None:
    """The bracket behind the place is the row's count, so that one more in the next rounds is found."""
    text = (
        "Mitt\nUS terms\nSizes: Child/Woman/Man\n\nHAND\nR1: Make a magic ring, 12/18/24 sc in ring (12/18/24)\nFasten off.\n\n"
        "THUMB\nJoin B in the first of the skipped sts.\n"
        "R1: sc in each of the 8/10/12 skipped sts, sc in each of the 2 ch at the opening (10/12/14)\nR2: sc around ({})\n"
    )
    assert not corrections(check(text.format("10/12/14")))
    report = check(text.format("11/13/15"))
    assert [counts(report, size)[1:] for size in range(3)] == [[10, 10], [12, 12], [14, 14]]
    assert [rule for rule, _ in corrections(report)] == ["count-differs"]


@pytest.mark.parametrize(
    ("seam", "made"),
    [
        ("Join the first and last rows with sl sts.", 24),
        ("Join first and last row.", 24),
        ("Join the last and first rows with sl sts, working through both layers.", 24),
        ("Join yarn at the first row.", None),
        ("Join first and last st with sl st.", None),
    ],
)
def test_a_band_closed_by_its_first_and_last_rows(seam: str, made: int | None) -> None:
    """The band is a tube then, and its row ends go round."""
    text = (
        "Mitt\nUS terms\n\nCUFF\nCh 9.\nR1: sc in 2nd ch from hook and in each rem ch (8)\nR2: ch 1, turn, sc in each st (8)\n"
        f"R3-R24: repeat R2 (8)\n{seam}\n\nHAND\nWith RS out, work into the row ends of the cuff:\nR1: sc in each row end (24)\nR2: sc around (24)\n"
    )
    assert counts(check(text))[-2] == made
