"""Single chains of loops, told one by one: in the same loop or the next, and never in a stitch; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

_ARCHES = (
    "Star\n\nUS terms\n\nSpecial stitch: Fan = 5 dc in same place.\n\nSTAR\nRnd 1: 12 sc in magic ring, join with sl st in first sc. (12)\n"
    "Rnd 2: Ch 1, sc in same st, ch 5, sk next 2 sc, *sc in next sc, ch 5, sk next 2 sc; rep from * around, join. (4 sc, 4 ch-5 sps)\n"
    "Rnd 3: Ch 1, {}, join.\n"
)
_FANS = (
    "Mist\n\nUS terms\n\nSpecial stitch: Fan = 5 dc in same place.\n\nMIST\nRow 1: Fsc 13, turn. (13)\n"
    "Row 2: Ch 1, sc in first st, *sk 2, fan in next st, sk 2, sc in next st; rep from * once, turn. (2 fans, 3 sc)\n"
    "Row 3: Ch 1, sc in first sc, {}\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        (
            "*sc in next sc, sc in first ch of ch-5, 3 sc in 3rd ch of ch-5, sc in last ch of ch-5; rep from * around",
            24,
        ),
        ("*sc in next sc, hdc in 2nd ch of ch-5, hdc in 4th ch of ch-5; rep from * around", 12),
        ("*sc in next sc, dc in first ch of next ch-5, ch 3, dc in last ch of same ch-5; rep from * around", 12),
        ("*sc in next sc, dc in first and last ch of next ch-5; rep from * around", 12),
        ("sc in 3rd ch of first ch-5, *ch 7, sc in 3rd ch of next ch-5; rep from * around, ch 7", 4),
        ("*sc in next sc, 2 sc in each ch of next ch-5; rep from * around", 44),
        ("*sc in next sc, sc in each ch of next loop; rep from * around", 24),
        ("*sc in next sc, sc in each ch; rep from * around", 24),
        ("*sc in next sc, 4 sc in each ch-5; rep from * around", 20),
    ],
)
def test_chains_of_one_loop(words: str, made: int) -> None:
    """Chains told by rising numbers are of one loop; "each ch" of a pass are those as far as the next stitch."""
    report = check(_ARCHES.format(words))
    assert counts(report)[-1] == made
    assert not {"places-left-over", "places-run-out"} & {rule for rule, _ in all_findings(report)}


@pytest.mark.parametrize(
    "words",
    [
        "*sc in next sc, sc in next ch-5 sp, ch 2, sc in 4th ch of ch-5; rep from * around",
        "*sc in next sc, sc in first 2 ch of ch-5; rep from * around",
        "*sc in next sc, sc in each ch of next ch-3; rep from * around",
        "*sc in next sc, 3 sc in next sp; rep from * around except last sp",
    ],
)
def test_a_loop_that_is_not_told_is_not_guessed(words: str) -> None:
    """The same loop or the next one, more than one chain of it, a loop of another length, a pass that ends within."""
    assert counts(check(_ARCHES.format(words)))[-1] is None


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("*2 sc in first and last dc of next fan, sc in next sc; rep from * across.", 11),
        ("*sc in first and last dc of each fan; rep from * across.", None),
    ],
)
def test_first_and_last_of_a_shell(words: str, made: int | None) -> None:
    """Both are of the one shell that is named."""
    assert counts(check(_FANS.format(words)))[-1] == made
