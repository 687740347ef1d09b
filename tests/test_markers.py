"""Markers as places: where they are put, how they go up with the rows, and runs that end at them.

Counts worked out by hand; that a marker goes up in the middle stitch of three is common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import assert_workings_hold, check, corrections, counts

_FLAT = "Shawl\n\nTerms: US\n\nWING\nRow 1: Fsc 15, turn. (15)"
_ROUND = "Yoke\n\nTerms: US\n\nYOKE\nRnd 1: Fsc 24, join. (24)\n"


@pytest.mark.parametrize("put", ["Place a marker in the 8th st.", "Mark the center st.", "Put a marker in middle st."])
@pytest.mark.parametrize("to", ["to marked st", "in each st to marker", "to the marker"])
def test_a_spine_told_by_its_marker(put: str, to: str) -> None:
    """Three in the marked stitch on every row; the marker goes up to the second of them."""
    report = check(
        f"{_FLAT} {put}\nRow 2: Ch 1, sc {to}, 3 sc in marked st, sc to end, turn. Move marker to center st. (17)\n"
        f"Row 3: Ch 1, sc {to}, 3 sc in marked st, sc to end, turn. (19)\n"
        f"Row 4: Ch 1, sc to 1 st before marked st, sc3tog, sc to end. (17)\n"
    )
    assert counts(report) == [15, 17, 19, 17]
    assert not corrections(report)
    assert_workings_hold(report)


def test_stitches_short_of_the_marker_are_missed() -> None:
    """Seven stitches lie before the marked one; six leave one of them out."""
    report = check(f"{_FLAT} Mark the center st.\nRow 2: Ch 1, sc in next 6 sts, 3 sc in marked st, sc to end. (16)\n")
    assert [finding.rule for finding in report.findings if "left" in finding.rule] == ["places-left-over"]


def test_raglan_spaces_by_their_markers() -> None:
    """Four marked spaces, met one after the other; the markers go up in the new spaces."""
    report = check(
        f"{_ROUND}Rnd 2: Ch 1, *sc in next 5 sts, (sc, ch 2, sc) in next st; rep from * around, join. Place a marker in each"
        " ch-2 sp. (28 sc, 4 ch-2 sps)\n"
        "Rnd 3: Ch 1, *sc in each st to marked sp, (sc, ch 2, sc) in marked sp, move marker up; rep from * around, sc in"
        " each st to end, join. (36 sc, 4 ch-2 sps)\n"
        "Rnd 4: Ch 1, [sc to next marker, 3 sc in marked sp] 4 times, sc to end, join. (48 sc)\n"
    )
    assert counts(report) == [24, 28, 36, 48]
    assert not corrections(report)


def test_markers_between_stitches() -> None:
    """A thumb gusset between two markers: "pm" hangs between the stitches it is said between."""
    report = check(
        f"{_ROUND}Rnd 2: Ch 1, sc in first 11 sts, pm, 2 sc in next st, pm, sc in last 12 sts, join. (25)\n"
        "Rnd 3: Ch 1, sc to marker, sm, 2 sc in next st, sc to 1 st before marker, 2 sc in next st, sm, sc to end, join.\n"
        "Rnd 4: Ch 1, sc to marker, sm, 2 sc in next st, sc to 1 st before marker, 2 sc in next st, sm, sc to end, join.\n"
    )
    assert counts(report)[1:2] == [25]
    assert counts(report)[2] == 27
    assert counts(report)[3] == 29


@pytest.mark.parametrize("to", ["to marker", "around to marked st", "until you reach the marker"])
def test_the_marker_of_a_spiral_is_its_rounds_end(to: str) -> None:
    """A marker in the first stitch shows where rounds begin."""
    report = check(
        "Egg\n\nTerms: US\n\nBODY\nRnd 1: 7 sc in MR, place marker in first st. (7)\nRnd 2: 2 sc in each st around. (14)\n"
        f"Rnd 3: Sc {to if not to.startswith(('to', 'until')) else 'in each st ' + to}, move marker. (14)\n"
    )
    assert counts(report) == [7, 14, 14]


@pytest.mark.parametrize(
    "put", ["Place a marker where the ear will be.", "Place markers 4 sts either side of the point.", ""]
)
def test_a_marker_put_somewhere_else_is_not_guessed(put: str) -> None:
    """Where the words do not say in which stitch it hangs, a row that runs to it is not recomputed."""
    assert counts(check(f"{_FLAT} {put}\nRow 2: Ch 1, sc to marked st, 3 sc in marked st, sc to end.\n")) == [15, None]
