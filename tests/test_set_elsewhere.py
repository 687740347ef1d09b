"""Lines between rows that set the work on another place: understood, or told as not understood, never passed over.

The forms are common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts, outcomes

_BODY = "Seal\nUS terms\n\nBody\nRnd 1: 7 sc in magic ring. (7)\nRnd 2: inc x 7 (14)\nRnd 3: sc 5, ch 4, sk 4, sc 5 (10)\nRnd 4: sc 14 (14)\n\nFlipper\n"


@pytest.mark.parametrize(
    "line",
    [
        "Working over the 4 skipped sts:",
        "Continue on the first 7 sts only.",
        "Pick up and sc 9 sts around the slit.",
        "Crochet around the opening that Rnd 3 has left:",
        "Return to the 4 sts left unworked.",
        "Turn the seal upside down and work along the starting chain.",
        "Join grey at the lower edge of the opening.",
        "Add 6 ch.",
        "Divide for the legs: skip 7 sts.",
        "Separate the legs here.",
        "Leave the last 4 sts unworked from now on.",
        "Sc 3 more to shift the marker.",
    ],
)
def test_the_round_behind_such_a_line_is_not_on_the_one_above(line: str) -> None:
    """Sixteen stitches lie in no place that these words name."""
    report = check(f"{_BODY}{line}\nRnd 1: sc in each st around.\n")
    assert outcomes(report)[-1] == "not-recomputed"


@pytest.mark.parametrize(
    "line",
    [
        "Stuff the body through the opening.",
        "The opening is at the bottom of the body.",
        "Place the eyes on Rnd 3, 5 sts apart.",
        "You may work over the yarn ends at the edge.",
        "From here on the seal grows to the tail.",
        "Continue on these 14 sts.",
    ],
)
def test_talk_between_rounds_is_passed_over(line: str) -> None:
    """Lines that only tell leave the round behind them on the one above, and ask nothing."""
    report = check(f"{_BODY}{line}\nRnd 5: sc in each st around. (14)\n")
    assert counts(report)[-1] == 14
    assert not [one for one in all_findings(report) if one[0] == "not-understood"]


def test_such_a_line_behind_the_last_round_asks_nothing() -> None:
    """Where no row stands behind it, there is nothing that it could set elsewhere."""
    report = check(f"{_BODY}Rnd 1: sc in each st around. (14)\nPick up and sc 9 sts around the slit.\n")
    assert not [one for one in all_findings(report) if one[0] == "not-understood"]


BALL = (
    "Ball\n\nUS terms\n\nBALL\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"
    "Rnd 3: Sc in each st around. (12)\n"
)


@pytest.mark.parametrize(
    "line",
    [
        "Continue on the first leg.",
        "Now work the legs separately:",
        "Join the first leg: with sc.",
        "Work in rows on the back only.",
        "Working on the front 6 sts:",
        "Now continue on half of the stitches.",
        "Return to the held sts.",
        "Fold in half and work through both thicknesses.",
    ],
)
def test_a_line_that_sets_the_work_on_a_part_of_it(line: str) -> None:
    """What the round behind it is worked on is not known; talk between rounds changes nothing."""
    assert counts(check(f"{BALL}{line}\nRnd 4: Sc in each st around.\n"))[-1] is None


@pytest.mark.parametrize(
    "line", ["Stuff the body.", "Change to smaller hook.", "Sew the front to the back through both layers."]
)
def test_a_line_that_only_talks(line: str) -> None:
    """The round behind it stands on the one before it."""
    assert counts(check(f"{BALL}{line}\nRnd 4: Sc in each st around.\n"))[-1] == 12


@pytest.mark.parametrize(
    "line",
    [
        "Add 4 stitches at the end.",
        "Unravel the last row.",
        "Rip back one round.",
        "From now on decrease at the end of each round.",
        "On the next round skip every third stitch.",
        "Skip the first st.",
        "Cut off the last stitch.",
    ],
)
def test_a_line_that_changes_what_comes(line: str) -> None:
    """What is bidden between rounds and not understood is told, and the round behind it is not counted without it."""
    assert counts(check(f"{BALL}{line}\nRnd 4: Sc in each st around.\n"))[-1] is None


@pytest.mark.parametrize(
    "line",
    ["Add eyes between rounds 1 and 2, 4 sts apart.", "Add 4 sts between the eyes for the nose with black yarn."],
)
def test_a_line_that_adds_no_stitches(line: str) -> None:
    """Eyes and noses are put on the work, and change no count."""
    assert counts(check(f"{BALL}{line}\nRnd 4: Sc in each st around.\n"))[-1] == 12
