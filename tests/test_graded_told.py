"""Words of garments in several sizes that tell who works what, and how many; patterns are invented, common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, worked_rows


def table(text: str) -> list[list[int | None]]:
    """What every labelled row makes in each size; None where it is not recomputed or not worked."""
    return [
        [cell.made.stitches if cell.made is not None else None for cell in row.cells]
        for row in worked_rows(check(text))
    ]


@pytest.mark.parametrize(
    "figures", ["{0}, {1}, {2} or {3}", "{0}, {1}, {2}, or {3}"], ids=["without a comma", "with a comma"]
)
def test_lists_whose_last_figure_stands_behind_or(figures: str) -> None:
    """ "For a calf of 30, 34, 38 or 42 cm" names the sizes, and all such lists have one figure for each of them."""
    text = (
        f"Test gaiters\n\nFor a calf of {figures.format(30, 34, 38, 42)} cm\n\nUS terms\n\nLEG\n"
        f"Row 1: Fsc {figures.format(40, 44, 48, 52)}, turn. ({figures.format(40, 44, 48, 52)} sc)\n"
        f"Row 2: Ch 1, sc in next {figures.format(9, 10, 11, 12)} sts, sc2tog, sc in each st across, turn.\n"
        f"The two larger sizes only:\nRow 3: Ch 1, sc in first 20 or 22 sts, sc2tog, sc in each st across, turn.\n"
    )
    report = check(text)
    assert report.pattern.sizes == ("30", "34", "38", "42")
    assert table(text) == [[40, 44, 48, 52], [39, 43, 47, 51], [None, None, 46, 50]]


@pytest.mark.parametrize("words", ["sc in next 5 or 6 sts", "sc2tog 2, 3 or 4 times"])
def test_what_is_left_to_the_maker_is_no_list(words: str) -> None:
    """As many figures as there are sizes are needed, and in two sizes "5 or 6" may mean either."""
    text = f"Test cap\n\nUS terms\n\nSizes: S (M)\n\nCAP\nRow 1: Fsc 20 (24), turn.\nRow 2: Ch 1, {words}, turn.\n"
    assert table(text)[1] == [None, None]
