"""Likely causes: what small change would make a row, and the rows after it, agree."""

from __future__ import annotations

from helpers import check


def test_a_repeat_of_nothing_is_not_recomputed() -> None:
    """Marks with no words between them are no work: the row is not recomputed, and nothing is raised."""
    report = check(
        "Mat\nMake a magic ring.\nRnd 1: Ch 1, 6 sc in ring; join with sl st in first sc. (6 sc)\n"
        "Rnd 2: Ch 1, 2 sc in each sc, ** rep from * around; join with sl st in first sc. (12 sc)\n"
    )

    assert report.ledger.rows[-1].cells[0].outcome.value in ("not-recomputed", "differs", "agrees")
