"""Lists without brackets in passages for some sizes, and sizes named line by line; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_SCARF = "Test cowl\nUS terms\nSizes: {}\n\nCOWL\nCh {}.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. {} sc.\n{}\n"


def _pattern(sign: str, gate: str, rows: str) -> str:
    lists = [sign.join(figures) for figures in (("21", "25", "29", "33"), ("20", "24", "28", "32"))]
    return _SCARF.format(sign.join(("XS", "S", "M", "L")), *lists, f"{gate}\n{rows}")


def _made(text: str) -> list[list[int | None]]:
    return [
        [cell.made.stitches if cell.made is not None else None for cell in row.cells]
        for row in check(text).ledger.rows
        if row.row.label is not None
    ]


@pytest.mark.parametrize("sign", [", ", "; ", "-", "/"])
def test_two_figures_for_two_of_four_sizes(sign: str) -> None:
    """Figures parted as the pattern parts its own are one for each size of the passage, in runs, counts and times."""
    rows = f"Row 2: Ch 1, 2 sc in first sc, sc in each of next 26{sign}30 sc, 2 sc in last sc, turn. 30{sign}35 sc.\nRep Row 1 {sign.join('23')} times."
    report = check(_pattern(sign, "M and L only", rows))
    assert _made(report.source.text)[1] == [None, None, 30, 34]
    assert [f.sizes for f in report.findings if f.rule == "count-differs"] == [("L",)]


def test_three_figures_for_three_of_four_sizes() -> None:
    """Such a list lacks no figure, and a list for all sizes within the passage stays one for all."""
    row = "Row 2: Ch 1, sc in next 23, 27, 31 sc, 2 sc in last sc, turn. 25, 29, 33 sc."
    report = check(_pattern(", ", "Sizes S, M and L only", row))
    assert _made(report.source.text)[1] == [None, 25, 29, 33]
    assert "size-list-length" not in {f.rule for f in report.findings}


def test_work_in_the_next_clause_is_no_second_figure() -> None:
    """ "next 3, 5 sc in next sc" is a run and a shell."""
    row = "Row 2: Ch 1, sc in next 3, 5 sc in next sc, sc in each sc to end, turn."
    assert _made(_pattern(", ", "M and L only", row))[1] == [None, None, 32, 36]


@pytest.mark.parametrize(
    ("gate", "figures", "made"),
    [("S, M and L only", "20, 24, 28, 32", [None, 24, 28, 32]), ("M and L only", "28, 32", [None, None, None, None])],
)
def test_figures_that_are_not_one_for_each_size_of_the_passage(gate: str, figures: str, made: list[int | None]) -> None:
    """Figures for all sizes are theirs in a passage, too; two without a word behind them are told as not understood."""
    assert _made(_pattern(", ", gate, f"Row 2: Ch 1, sc in next {figures}, turn."))[1] == made


def test_sizes_line_by_line_with_dashes() -> None:
    """A line for each size is no list of two sizes in its first line."""
    text = 'Test cowl\nUS terms\n\nSizes\nS - 20-22" neck\nM - 22-24" neck\nL - 24-26" neck\n\nCOWL\nRow 1: Fsc 60 (S), 66 (M), 72 (L). (S: 60 sts, M: 66 sts, L: 72 sts)\n'
    report = check(text)
    assert report.pattern.sizes == ("S", "M", "L")
    assert _made(text) == [[60, 66, 72]]


@pytest.mark.parametrize("sizes", ["A, B, C, D", "ladies, gents, 8-10 yrs, 5-7 yrs"])
def test_names_of_sizes_without_brackets(sizes: str) -> None:
    """Letters from A on under the heading, and gents beside ladies."""
    report = check(_SCARF.format(sizes, "21, 25, 29, 33", "20, 24, 28, 32", ""))
    assert report.pattern.sizes == tuple(sizes.split(", "))


@pytest.mark.parametrize(
    ("gate", "lists"),
    [("Sizes S, M and L only", ("2, 3, 4", "24, 29, 34")), ("Sizes S (M, L) only", ("2 (3, 4)", "24 (29, 34)"))],
)
def test_lists_of_a_passage_in_a_pattern_with_brackets(gate: str, lists: tuple[str, str]) -> None:
    """Three sizes of four are named with commas or as the pattern names its own, and so are their figures."""
    text = (
        "Test cowl\nUS terms\nSizes: XS (S, M, L)\n\nCOWL\nCh 21 (24, 29, 34).\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. 20 (23, 28, 33) sc.\n"
        f"{gate}\nRow 2: Ch 1, sc in next {lists[0]} sts, 2 sc in next st, sc in each st to end. {lists[1]} sc.\n"
    )
    report = check(text)
    assert _made(text)[1] == [None, 24, 29, 34]
    assert "size-list-length" not in {finding.rule for finding in report.findings}


def test_two_figures_with_a_comma_in_a_pattern_with_brackets() -> None:
    """Two sizes of four are named, and each run has a figure for each of the two; work in one stitch stays work."""
    text = (
        "Test cowl\nUS terms\nSizes: XS (S, M, L)\n\nCOWL\nCh 21 (24, 29, 34).\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. 20 (23, 28, 33) sc.\n"
        "Sizes XS and L only\nRow 2: Ch 1, sc in next 9, 22 sc, sc2tog, sc in next 9 sts, turn. 19, 32 sc.\n"
        "Row 3: Ch 1, sc in next 3, 5 sc in next sc, sc in each sc to end, turn.\n"
    )
    assert _made(text)[1:] == [[19, None, None, 32], [23, None, None, 36]]
