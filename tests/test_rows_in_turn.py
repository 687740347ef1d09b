"""A label over several calls, one after the other: "Row 3: Rep Row 2, then work 5 rows even."; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

_STRAP = (
    "Strap\n\nUS terms\n\nSTRAP\nRow 1: Fsc 14, turn. (14)\nRow 2: Ch 1, sc2tog, sc in each st across, turn. (13)\n{}\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Row 3: Rep Row 2. Work 2 rows even.\nRow 6: Ch 1, sc2tog, sc across. (11)", [14, 13, 12, 12, 12, 11]),
        ("Rows 3-6: Rep Row 2 twice, then work 2 rows even. (11)", [14, 13, 12, 11, 11, 11]),
        ("Row 3: As Row 2. Then dec 1 st at each end of next 2 rows.", [14, 13, 12, 10, 8]),
    ],
)
def test_rows_go_on_from_the_label(words: str, made: list[int]) -> None:
    """The rows are numbered on from a label of one number; a range has just so many."""
    report = check(_STRAP.format(words))
    assert counts(report) == made
    assert not {"row-not-there", "row-number-out-of-order"} & {rule for rule, _ in all_findings(report)}


def test_a_range_that_they_do_not_fit_is_not_guessed() -> None:
    """Nor is a row asked for that is there."""
    report = check(_STRAP.format("Rows 3-5: Rep Row 2. Work 5 rows even."))
    assert counts(report)[2:] == [None, None, None]
    assert "row-not-there" not in [rule for rule, _ in all_findings(report)]
    report = check(_STRAP.format("Row 3: Rep Row 9, then work 2 rows even."))
    assert ("row-not-there", 8) in all_findings(report)
