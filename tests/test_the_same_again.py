"""Rows that are told as the same again as the last one, or as others by their numbers; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

_BALL = (
    "Ball\nUS terms\n\nBALL\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: Sc in each st around. (12)\n"
    "Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)\n{}\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Rnd 4: Same again as Rnd 2. (18)", [18]),
        ("Rnds 4-5: Same again as Rnd 2. (18)", [18, 18]),
        ("Rnds 4 and 5: Same again as Rnds 2 and 3. (27)", [18, 27]),
        ("Rnd 4: Same again. (27)", [27]),
        ("Next rnd: The same again.", [27]),
        ("Rnd 4: Work the same again. (27 sc)", [27]),
        ("Rnds 4-5: Same again.", [None, None]),
        ("Next 2 rnds: Same again.", [None, None]),
        ("Rnd 4: Same again without the increases: 18 sc. (18)", [None]),
        ("Rnd 4: Same again but in hdc. (27)", [None]),
    ],
)
def test_the_same_again(words: str, made: list[int | None]) -> None:
    """One row is as the last; of several it is not told which they are, and an exception leaves the row open."""
    report = check(_BALL.format(words))
    assert counts(report)[3:] == made
    assert not corrections(report)


def test_the_same_again_of_a_row_that_shapes() -> None:
    """The row is worked once more on what the first has made."""
    text = (
        "Top\nUS terms\n\nTOP\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\n"
        "Next row: Ch 1, sc2tog, sc in each st across, turn. (9 sc)\nNext row: Same again. {}\n"
    )
    assert counts(check(text.format("(8 sc)"))) == counts(check(text.format(""))) == [10, 9, 8]
    assert not corrections(check(text.format("(8 sc)"))) and not corrections(check(text.format("")))
    assert [rule for rule, _ in corrections(check(text.format("(9 sc)")))] == ["count-differs"]
