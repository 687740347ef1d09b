"""Wordings met in motifs, toys, lace, blankets and edgings: labels, counts, places and remarks in further house styles."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, mades, outcomes, spaces

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


_EAR = f"Ear\n{_TERMS}EAR\nRnd 1: 5 sc in magic ring. (5)\nRnd 2: 2 sc in each st around. (10)\n"


@pytest.mark.parametrize(
    ("words", "stitches"),
    [
        ("Row 3: 5 sc through both layers. (5)", 5),
        ("Row 3: Sc in next 5 sts through both layers. (5)", 5),
        ("Rnd 3: Fold flat, sc across through both layers.", 5),
        ("Rnd 3: Sc across through both thicknesses. (5)", 5),
        ("Rnd 3: Sc in each st around through both layers. (10)", 10),
        ("Rnd 3: Sc in next 3 sts, sc in next 4 sts through both layers, sc in next 3 sts. (10)", 10),
    ],
)
def test_through_both_layers(words: str, stitches: int) -> None:
    """A stitch through both layers of a round that is folded takes two of its places; two pieces are not folded."""
    report = check(_EAR + words + "\n")
    assert counts(report)[-1] == stitches
    assert not [rule for rule, _ in all_findings(report, ("correction", "query")) if rule != "gauge-missing"]


def test_folded_round_short_of_stitches() -> None:
    """Of a folded round four of five pairs worked leave places over, and the words do not say so."""
    report = check(_EAR + "Row 3: Fold flat, 4 sc through both layers. (4)\n")
    assert ("places-left-over", 7) in all_findings(report)
