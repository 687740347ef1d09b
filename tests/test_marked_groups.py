"""Markers in the middle of each group, and stitches passed over up to a marker; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_YOKE = (
    "Test yoke\nUS terms\n\nYOKE\nRow 1: Fsc 26, turn. (26 sc)\n"
    "Row 2: Ch 1, sc in next 4 sts, 3 sc in next st, sc in next 6 sts, 3 sc in next st, sc in next 8 sts, 3 sc in next st, sc in last 5 sts, turn. {}\n"
    "Row 3: Ch 1, sc in each st, turn.\n{}\n"
)
_ON = "Row 4: Ch 1, *sc in each st to marked st, 3 sc in marked st; rep from * twice more, sc in each st to end."


def _last(mark: str, row: str) -> tuple[int | None, list[str]]:
    report = check(_YOKE.format(mark, row))
    cell = report.ledger.rows[-1].cells[0]
    return cell.made.stitches if cell.made is not None else None, [f.rule for f in report.findings]


@pytest.mark.parametrize(
    "mark",
    [
        "Place markers in the center sc of each 3-sc group.",
        "Pm in 2nd sc of each group of 3 sc.",
        "Mark the middle st of each increase.",
    ],
)
def test_a_marker_in_the_middle_of_each_group(mark: str) -> None:
    """It hangs in the second of three stitches worked in one place, and goes up with the next row."""
    assert _last(mark, _ON)[0] == 38


@pytest.mark.parametrize(
    "mark", ["Pm in 1st sc of each 3-sc group.", "Pm in center sc of each 5-sc group.", "Pm in each increase."]
)
def test_groups_that_have_no_such_middle(mark: str) -> None:
    """The first of three is no middle, and there are no groups of five."""
    assert _last(mark, _ON)[0] is None


@pytest.mark.parametrize(
    "skip", ["skip all sts to next marked st", "sk sts of sleeve to next marked st", "skip to next marked st"]
)
def test_stitches_are_passed_over_up_to_a_marked_one(skip: str) -> None:
    """They are left on purpose, and the next clause works into the marked stitch."""
    row = (
        f"Row 4: Ch 1, sc in each st to marked st, sc in marked st, ch 3, {skip}, sc in next st, sc in each st to end."
    )
    made, rules = _last("Mark the middle st of each 3-sc group.", row)
    assert made == 24 and "places-left-over" not in rules


@pytest.mark.parametrize("skip", ["skip the sts between the markers", "skip sts between marked sts"])
def test_stitches_between_markers_are_not_one(skip: str) -> None:
    """How many they are is not said: not counted."""
    row = f"Row 4: Ch 1, sc in each st to marked st, sc in marked st, ch 3, {skip}, sc in each st to end."
    assert _last("Mark the middle st of each 3-sc group.", row)[0] is None
