"""Printed counts that no sign sets apart, and such as name the unit first.

Truths worked out by hand; the forms are common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

HEAD = "Ball\n\nUS terms\n\nBALL\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around"


@pytest.mark.parametrize(
    "form",
    [
        " {} sts.", " *{}*", " **{} sc**", " _{} sts_", " #{}", " to make {} sc.", " (sts {})", " ({} sc worked)",
        " so you have {} sts.", "\nTotal: {}", "\nSts: {}", ".\nTotal sts: {}", " {} sc, join.",
    ],
)  # fmt: skip
def test_a_count_in_another_form(form: str) -> None:
    """It agrees where it is right, and is held against the row where it is wrong."""
    right = check(HEAD + form.format(12) + "\nRnd 3: Sc in each st around. (12)\n")
    assert counts(right) == [6, 12, 12]
    assert not [rule for rule, _ in all_findings(right, ("correction", "query")) if rule == "count-differs"]
    wrong = check(HEAD + form.format(14) + "\nRnd 3: Sc in each st around. (12)\n")
    assert "count-differs" in [rule for rule, _ in all_findings(wrong, ("correction", "query"))]


@pytest.mark.parametrize("words", [" 12 cm.", " and 12 sc.", " for 12 rounds of fun.", " 3 times."])
def test_figures_that_are_no_count(words: str) -> None:
    """What more is said keeps the figure from being one; the row is not counted."""
    assert counts(check(HEAD + words + "\n"))[-1] is None
