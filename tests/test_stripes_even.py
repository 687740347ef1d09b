"""Rows worked even in a colour that is named before them, lengths with a full stop behind "in", and units of bare counts."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

HAT = "Hat\nMC cream, CC rust\nCh 48, sl st in first ch to form a ring.\nRnd 1: Ch 2, hdc in each ch around, join. (48 hdc)\n{}\nRnd {}: Ch 2, hdc in each st around, join. ({} hdc)\n"


@pytest.mark.parametrize(
    "words", ["With CC, work 2 rnds even.", "Join CC and work 2 rounds even.", "With CC work 2 rnds straight."]
)
def test_rows_even_in_a_colour(words: str) -> None:
    """As many rounds as are told, each with the stitches of the one below, and the next is counted upon them."""
    report = check(HAT.format(words, 4, 48))
    assert not any(rule in ("not-understood", "count-differs") for rule, _ in all_findings(report))
    assert len([row for row in report.ledger.rows if row.kind == "round"]) == 4
    assert ("count-differs", 6) in all_findings(check(HAT.format(words, 4, 50)), ("correction",))


def test_work_behind_a_colour_is_no_such_row() -> None:
    """Stitches that are told one by one are worked, and what is not known is not taken for rows even."""
    assert counts(check(HAT.format("With CC, 2 hdc in each st around.", 3, 96)))[-1] == 96
    assert ("not-understood", 5) in all_findings(check(HAT.format("With CC, work 2 rnds of flurbs.", 4, 48)))


SLEEVE = "Sleeve\nCh 11.\nRow 1: Hdc in 2nd ch from hook and in each ch across, turn. (10 hdc)\nRow 2: Ch 1, hdc in each st across, turn.{}\n{}\n"


def test_inches_with_a_full_stop_before_their_centimetres() -> None:
    """ "16 in. (40.5 cm) from beginning" is one length; work behind a full stop is none."""
    told = SLEEVE.format("", "Work even until sleeve measures 16 in. (40.5 cm) from beginning. Fasten off.")
    assert not any(rule == "not-understood" for rule, _ in all_findings(check(told)))
    flurb = SLEEVE.format("", "Work even until sleeve measures 16 in. (40.5 cm) from beginning. Flurb 3 hdc twice.")
    assert any(rule in ("not-understood", "abbreviation-undefined") for rule, _ in all_findings(check(flurb)))


def test_buttonholes_behind_the_turn() -> None:
    """They are a unit that the pattern does not define: the row is counted, and nothing is said of them."""
    report = check(SLEEVE.format(" 5 buttonholes", "Row 3: Ch 1, hdc in each st across. (10 hdc)"))
    assert not any(rule == "not-understood" for rule, _ in all_findings(report))
    assert counts(report)[-2:] == [10, 10]
    report = check(SLEEVE.format(" 5 flurbs", "Row 3: Ch 1, hdc in each st across. (10 hdc)"))
    assert ("not-understood", 4) in all_findings(report)
