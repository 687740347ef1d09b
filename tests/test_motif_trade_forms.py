"""Wordings met in motifs, toys, lace, blankets and edgings: labels, counts, places and remarks in further house styles."""

from __future__ import annotations

import pytest
from helpers import check, counts, outcomes

_TERMS = "US terms\n\n"


def _strip(rows: str, chain: int = 11) -> str:
    return f"Fennel Strip\n{_TERMS}STRIP\nCh {chain}.\n{rows}\n"


@pytest.mark.parametrize(
    "label",
    ["Row (2):", "For Row 2,", "Row 2*:", "Row 2†:"],
)
def test_further_labels(label: str) -> None:
    """A number in brackets, "For Row 2,", a footnote's sign and the number of rows said again are all labels."""
    report = check(
        _strip(
            f"Row 1: Sc in 2nd ch from hook and in each ch across. (10)\n{label} ch 1, turn, sc in each sc across. (10)"
        )
    )
    assert outcomes(report) == ["agrees", "agrees"]


def test_range_with_its_number_of_rows() -> None:
    """ "4 - 8 rows = 5 rows:" stands for five rows."""
    text = "1 row: Sc in 2nd ch from hook and in each ch across. (10)\n2 - 3 rows = 2 rows: Ch 1, turn, sc in each sc across. (10)\n4 row: Ch 1, turn, 2 sc in each sc across. (20)"
    assert counts(check(_strip(text))) == [10, 10, 10, 20]


def test_for_a_row_as_a_remark() -> None:
    """ "For Row 2, use the smaller hook" labels no row."""
    text = "Row 1: Sc in 2nd ch from hook and in each ch across. (10)\nFor Row 2, use the smaller hook.\nRow 2: Ch 1, turn, sc in each sc across. (10)"
    assert counts(check(_strip(text)))[0] == 10
    assert outcomes(check(_strip(text))).count("agrees") == 2


@pytest.mark.parametrize(
    "count", ["<{}>", "<{} sc>", "~ {} sts", "/{}", "/{} sc", "» {} sc", "~{} sc~", "~{} sc: {} each side~"]
)
def test_counts_set_apart(count: str) -> None:
    """Signs that set a count apart are read, and a wrong count in them is found."""
    for stated, outcome in ((10, "agrees"), (12, "differs")):
        end = count.replace("{}", str(stated), 1).replace("{}", "5")
        row = f"Row 1: Sc in 2nd ch from hook and in each ch across, turn {end}"
        assert outcomes(check(_strip(row)))[0] == outcome, end


def test_wave_as_a_repeat_mark() -> None:
    """A "~" that other words repeat from stays the mark of a repeat."""
    row = "Row 1: Sc in 2nd ch from hook and in each ch across. (10)\nRow 2: Ch 1, turn, ~sc in next sc, 2 sc in next sc; rep from ~ across. (15)"
    assert outcomes(check(_strip(row))) == ["agrees", "agrees"]
