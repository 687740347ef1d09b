"""Shapings told behind their places, and stitches bound off without their word: "evenly spacing 3 inc", "cast off 3"."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

_DOME = "Dome\n\n{} terms\n\nRnd 1: 5 {s} in magic ring (5)\nRnd 2: inc in each st (10)\nRnd 3: inc in each st (20)\nRnd 4: {line}\n"
_BAND = "Band\n\n{} terms\n\nCh 16.\nRow 1: {s} in 2nd ch from hook and in each ch across, turn. (15)\nRow 2: {line}\n"


def _made(text: str, line: str, terms: str) -> int | None:
    stitch = "sc" if terms == "US" else "dc"
    return counts(check(text.format(terms, s=stitch, line=line.replace("ST", stitch))))[-1]


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize(
    ("line", "made"),
    [
        ("ST in each st around, evenly spacing 5 inc.", 25),
        ("ST around, evenly spreading 5 dec, join. (15)", 15),
        ("Every 4th st: inc. (25)", 25),
        ("In every 5th st: inc", 24),
    ],
)
def test_shapings_behind_their_places(line: str, made: int, terms: str) -> None:
    """They are the same in either order."""
    assert _made(_DOME, line, terms) == made


@pytest.mark.parametrize(
    "line", ["Every 4th round: inc. (25)", "Every 4th st: 2 ST. (25)", "ST around, evenly 5 st markers."]
)
def test_no_shapings(line: str) -> None:
    """Rounds are no places, and stitches need not be all that is worked there."""
    assert _made(_DOME, line, "US") is None


def test_a_wrong_count_behind_them() -> None:
    """It is found."""
    report = check(_DOME.format("US", s="sc", line="sc around, evenly spacing 4 inc. (25)"))
    assert corrections(report) == [("count-differs", 8)]


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize(
    ("line", "made"),
    [
        ("Cast off 3, ST in each st to end.", 12),
        ("Bind off 3 at beg of row, ST to end. (12)", 12),
        ("ST to last 3 sts, bind off 3. (12)", 12),
        ("Bind off 3 rows, ST to end.", None),
        ("Bind off 3 times. (12)", None),
        ("Bind off 3. (12)", None),
        ("Bind off 3 sts. (12)", None),
    ],
)
def test_a_number_bound_off(line: str, made: int | None, terms: str) -> None:
    """A number alone is one of stitches; rows and times are not, and the rest of the row must be told."""
    assert _made(_BAND, line, terms) == made
