"""Yokes that are divided by the names of their sections, and skips on to a space; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_YOKE = (
    "Test raglan\nUS terms\n\nYOKE\nCh 36, join.\nRnd 1: Ch 1, sc in each ch around, join. (36 sc)\n"
    "Rnd 2: Ch 2 (counts as hdc), hdc in next 9 sc, (hdc, ch 1, hdc) in next sc, hdc in next 6 sc, (hdc, ch 1, hdc) in next sc, "
    "hdc in next 10 sc, (hdc, ch 1, hdc) in next sc, hdc in next 6 sc, (hdc, ch 1, hdc) in next sc, join. (40 hdc)\n"
    "Rnd 3: {}, join.\nRnd 4: Ch 1, sc in each hdc and each ch around, join.\n"
)


def _divided(words: str) -> list[int | None]:
    """What the dividing round makes, and the one over its stitches and chains."""
    rows = [row.first.made for row in check(_YOKE.format(words)).ledger.rows if row.row.label is not None]
    return [made.stitches if made is not None else None for made in rows[2:]]


@pytest.mark.parametrize(
    "words",
    [
        "Ch 2, hdc in each hdc to first ch-1 sp, ch 5, skip all hdc of first sleeve, hdc in each hdc of front, ch 5, "
        "skip all hdc of second sleeve, hdc in each hdc to end",
        "Ch 2, hdc in each st across the back, ch 5, skip the sleeve, hdc in each st across the front, ch 5, miss next sleeve, "
        "hdc in each remaining st",
        "Ch 2, *hdc in each hdc to next ch-1 sp, ch 5, skip to next ch-1 sp; rep from * once, hdc in each hdc to end",
        "Ch 2, hdc in each back st to ch-1 sp, ch 5, skip next 8 sleeve sts, hdc in next 12 front sts, ch 5, "
        "skip next 8 sleeve sts, hdc in each st to end",
        "Ch 2, hdc in each hdc to next ch-1 sp, ch 5, skip all hdc of sleeve to next ch-1 sp, hdc in each hdc to next ch-1 sp, "
        "ch 5, skip to next ch-1 sp, hdc in each hdc to end",
    ],
)
def test_front_back_and_sleeves(words: str) -> None:
    """Back and front have twelve each, 24; with the chains at both underarms 34."""
    assert _divided(words) == [24, 34]


def test_the_corner_spaces_worked_into() -> None:
    """A stitch in each of the four spaces beside: 28, and 38."""
    words = (
        "Ch 2, hdc in each hdc to first ch-1 sp, hdc in sp, ch 5, skip sleeve sts, hdc in next ch-1 sp, hdc in each hdc to next "
        "ch-1 sp, hdc in sp, ch 5, skip sleeve sts, hdc in next ch-1 sp, hdc in each hdc to end"
    )
    assert _divided(words) == [28, 38]


@pytest.mark.parametrize(
    "words",
    [
        "Ch 2, skip sleeve, hdc in each hdc of front, ch 5, skip second sleeve, hdc in each hdc to end",
        "Ch 2, hdc in each hdc to first ch-1 sp, ch 5, skip sleeve sts except the last, hdc in each hdc to end",
        "Ch 2, hdc in each hdc to first ch-1 sp, ch 5, skip both sleeves, hdc in each hdc to end",
        "Ch 2, hdc in each hdc to first ch-1 sp, ch 5, skip first 2 sts of sleeve, hdc in each hdc of front, ch 5, skip sleeve, hdc in each hdc to end",
    ],
)
def test_what_is_not_a_whole_sleeve(words: str) -> None:
    """A sleeve that no space begins, or less than one: not counted."""
    assert _divided(words)[0] is None


def test_a_yoke_without_spaces() -> None:
    """Where no spaces part the sections, which stitches are the front's is not known."""
    plain = _YOKE.replace("(hdc, ch 1, hdc)", "2 hdc")
    words = "Ch 2, hdc in each hdc of back, ch 5, skip sleeve, hdc in each hdc of front, ch 5, skip sleeve, hdc in each hdc to end"
    rows = [row.first.made for row in check(plain.format(words)).ledger.rows if row.row.label is not None]
    assert rows[2] is None


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, sc in each of the 9 unworked instep sts, 5 sc evenly along side of heel", 14),
        ("Ch 1, sc in next 9 heel sts, 5 sc evenly along the edge, sc in 9 instep sts", 23),
        ("Ch 1, sc in each of 9 instep sts, sc in each st across", None),
        ("Ch 1, sc in next 9 front sts, sc in each st across", None),
        ("Ch 1, sc in each of the instep sts, 5 sc evenly along side of heel", None),
    ],
)
def test_stitches_of_a_part_told_by_number(words: str, made: int | None) -> None:
    """So many are counted; what runs on behind them is not, for which stitches they were is not told."""
    text = f"Test sock\nUS terms\n\nHEEL\nRow 1: Fsc 18, turn.\nRow 2: {words}.\n"
    assert [row.first.made.stitches if row.first.made else None for row in check(text).ledger.rows][1:] == [made]


def test_a_chain_told_of_in_another_row() -> None:
    """A row that says of its chain that it counts has said it; nothing is asked."""
    rows = "Row 1: Dc in 4th ch from hook and in each ch across.{0}\nRow 2: Ch 3{1}, turn, sk first dc, dc in each dc across, dc in top of ch 3.{0}\n"
    text = "Test scarf\nUS terms\n\nSCARF\nCh 22.\n" + rows
    asked = [f.rule for f in check(text.format(" (20 dc)", "")).findings]
    told = [f.rule for f in check(text.format(" (20 dc)", " (counts as dc)")).findings]
    assert "turning-chain-unsaid" in asked
    assert "turning-chain-unsaid" not in told
