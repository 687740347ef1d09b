"""Words of spirals, of closing a top, and lengths with fractions, which make no stitches; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_TOP = "Test top\nUS terms\n{}\nTOP\nRnd 1: 12 sc in magic ring. (12 sc)\nRnd 2: {}\n"


def _made(row: str, sizes: str = "") -> int | None:
    cell = check(_TOP.format(sizes, row)).ledger.rows[1].cells[0]
    return cell.made.stitches if cell.made is not None else None


@pytest.mark.parametrize(
    "words",
    [
        "Do not join; work in a spiral, marking the first st of each rnd.",
        "Working in a continuous spiral, mark the first st of each rnd.",
        "Continue in a spiral from now on.",
    ],
)
def test_a_spiral_is_told(words: str) -> None:
    """How the rounds go on is no work of this one."""
    assert _made(f"2 sc in each st. {words}") == 24


@pytest.mark.parametrize("words", ["Work in a spiral 2 sc in next st.", "Work in a spiral in sc."])
def test_work_told_with_it_is_not_passed_over(words: str) -> None:
    """Stitches in the same clause are not taken for talk."""
    assert _made(words) is None


@pytest.mark.parametrize(
    "words", ["thread end through last sts and draw up tightly.", "run tail through rem sts and close the top."]
)
def test_the_top_is_closed(words: str) -> None:
    """The thread through the last stitches is finishing."""
    assert _made(f"*Sc2tog; rep from * to end. Fasten off, {words}") == 6


def test_lengths_with_fractions_are_no_list_that_lacks_a_figure() -> None:
    """ "10, 11, 12½, 14 in" has one length for each of four sizes."""
    text = (
        "Test cuff\nUS terms\nSizes: XS, S, M, L\n\nCUFF\nRow 1: Fsc 9, 10, 11, 12. (9, 10, 11, 12 sc)\n"
        "Row 2: Ch 1, sc in each sc, turn.\nRep Row 2 until piece measures 10, 11, 12½, 14 in.\nRow 3: Ch 1, sc in each sc, turn.\n"
    )
    last = check(text).ledger.rows[-1].cells
    assert [cell.made.stitches for cell in last if cell.made is not None] == [9, 10, 11, 12]
