"""Rows in rib that are told by few words: "rib to last st", "work to last st keeping rib correct"; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

_CUFF = (
    "Cuff\nUS terms\n\nCUFF\nCh 29.\nRow 1: Sc in 2nd ch from hook and in each rem ch. (28 sc)\n"
    "Row 2: Ch 2 (counts as first dc), turn, sk first st, dc in each st across. (28 sts)\n"
    "Row 3: Ch 2, turn, sk first st, *FPdc around next st, BPdc around next st; rep from * to last st, dc in top of turning ch. (28 sts)\n"
    "Row 4: {}\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 2, turn, sk first st, work to last st keeping rib correct, dc in top of turning ch.", 28),
        ("Ch 2, turn, sk first st, work in rib to last st, dc in top of turning ch.", 28),
        ("Ch 2, turn, sk first st, rib to last st, dc in top of turning ch.", 28),
        ("Keeping rib correct, ch 2, turn, sk first st, work to last st, dc in top of turning ch.", 28),
        (
            "Ch 2, turn, sk first st, FPdc in each FPdc and BPdc in each BPdc, keeping rib correct, dc in top of turning ch.",
            28,
        ),
        ("Keeping the ribbing correct, dec 1 st at each end.", 26),
        ("Ch 1, turn, sc2tog, rib to last 2 sts, sc2tog.", 26),
        ("Ch 1, turn, rib 10, sc to end.", 28),
        ("Work in rib for 2 in.", None),
        ("Rib 4 rows.", None),
        ("Cont in rib until cuff measures 3 in.", None),
    ],
)
def test_rib_in_few_words(words: str, made: int | None) -> None:
    """Each stitch of the run is worked as the rib has it; rows by their number or length alone are not told by these words."""
    report = check(_CUFF.format(words))
    assert counts(report)[-1] == made
    assert not corrections(report)
