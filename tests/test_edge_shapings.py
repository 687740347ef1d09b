"""Shaping at the edges told by its stitch, and runs that stop short of the end; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

_FRONT = "Test front\nUS terms\n\nFRONT\nCh 25.\nRow 1: Hdc in 2nd ch from hook and in each ch across, turn. (24 hdc)\nRow 2: Ch 1, {}\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("hdc2tog at each end of row, turn. (22)", 22),
        ("work a hdc2tog at the neck edge, turn. (23)", 23),
        ("hdc across, working hdc3tog at both edges. (20)", 20),
        ("hdc across, hdc2tog at beg and end of row. (22)", 22),
        ("hdc across, hdc2tog at armhole edge. (23)", 23),
        ("hdc2tog at beg, hdc to last 2 sts, hdc2tog at end of row. (22)", 22),
        ("hdc2tog at the beginning of the row, hdc to end. (23)", 23),
        ("hdc across, working 2 hdc in both the first and the last st. (26)", 26),
        ("hdc in each st across, with 3 hdc in first and last st. (28)", 28),
        ("decrease over the first two and the last two sts. (22)", 22),
        ("hdc across, stopping 4 sts before the end, turn. (20)", 20),
        ("hdc in each st, stop when 4 sts remain. (20)", 20),
        ("hdc across, stopping with 4 sts left. (20)", 20),
    ],
)
def test_one_row(words: str, made: int) -> None:
    """What is gained, lost or left at the edges is, and the rest of the row is as it is told, or as before."""
    assert counts(check(_FRONT.format(words)))[-1] == made
    assert corrections(check(_FRONT.format(words))) == []


@pytest.mark.parametrize(
    "words",
    [
        "Row 2: Hdc2tog at neck edge on next 4 rows. (20)",
        "Row 2: Hdc2tog at armhole edge every row 4 times. (20 hdc)",
        "Next 4 rows: hdc2tog at neck edge. (20)",
        "Rows 2-5: Ch 1, hdc across, working hdc2tog at neck edge, turn. (20)",
    ],
)
def test_rows_of_it(words: str) -> None:
    """The rows that it is worked in are rows, and the last is held against the count."""
    text = _FRONT.replace("Row 2: Ch 1, {}", words)
    assert counts(check(text))[-4:] == [23, 22, 21, 20]
    assert [rule for rule, _ in corrections(check(text.replace("(20", "(19")))] == ["count-differs"]


@pytest.mark.parametrize(
    "words",
    [
        "hdc2tog at each of next 2 markers",
        "hdc across, working 2 hdc in the first and 3 hdc in the last st",
        "decrease over the first three and the last three sts",
        "hdc across, stop 2 rows before the end",
        "hdc to last 4 sts, hdc2tog at each end",
        "2 hdc at beg, hdc to end",
    ],
)
def test_other_words_are_not_taken_for_it(words: str) -> None:
    """Where it is not the edges, or how many is not told, the row is not worked as if it were plain."""
    assert counts(check(_FRONT.format(words)))[-1] is None


def test_in_the_first_stitch_is_a_place() -> None:
    """ "hdc2tog in first st" goes into one stitch, with both its legs."""
    assert counts(check(_FRONT.format("hdc2tog in first st, hdc in each st to end.")))[-1] == 24


@pytest.mark.parametrize("words", ["As Row 1, increasing in color B.", "Rep Row 2, decreasing."])
def test_by_how_much_is_not_said(words: str) -> None:
    """A row called for that is to grow by nobody knows how much is not worked as if it were plain."""
    text = _FRONT.format("hdc in each st across, turn. (24)") + f"Row 3: {words}\n"
    assert counts(check(text))[-1] is None
