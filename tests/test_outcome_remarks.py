"""Sentences that tell what comes of a row's work ("It comes out even", "This makes the edge turn up"): remarks, and no work."""

from __future__ import annotations

import pytest
from helpers import check, counts, outcomes

ROWS = """Ear Flap
US terms
FLAP
Ch 13.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)
Row 2: Ch 1, {}
"""


@pytest.mark.parametrize(
    "words",
    [
        "sc in each sc across. It comes out even. (12 sc)",
        "sc in each sc across. This makes the edge turn up. (12 sc)",
        "sc in each sc across, which keeps the edge straight, turn. (12 sc)",
        "sc in next 6 sc, that lets it lie flat, sc in each sc to end. (12 sc)",
    ],
)
def test_what_comes_of_it_is_a_remark(words: str) -> None:
    """Such a sentence changes nothing of the count."""
    report = check(ROWS.format(words))
    assert (counts(report)[-1], outcomes(report)[-1]) == (12, "agrees")


@pytest.mark.parametrize(
    "words",
    [
        "sc in next 6 sc. This makes it easy to sc in next 6 sc. (12 sc)",
        "sc in next 6 sc, it keeps the edge neat if you sc in each of last 6 sc. (12 sc)",
        "2 sc in each sc, which makes the 24 sc lie flat. (24 sc)",
    ],
)
def test_with_work_in_it_is_not_passed_over(words: str) -> None:
    """Where stitches or numbers stand in it, it may be work: the row is not recomputed."""
    assert outcomes(check(ROWS.format(words)))[-1] == "not-recomputed"
