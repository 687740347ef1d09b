"""Stitches between shells and V-stitches: "shell in next shell, dc in next dc" goes past the rest of the shell."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

_FANS = (
    "Fan Scarf\nUS terms\n\nFan: (2 dc, ch 2, 2 dc) in same st or sp.\n\nSCARF\nRow 1: Fsc 19, turn. (19)\n"
    "Row 2: Ch 3 (counts as dc throughout), sk 2 sts, *fan in next st, sk 2 sts, dc in next st, sk 2 sts; rep from * once more, fan in next st, sk 2 sts, dc in last st, turn. (3 fans, 4 dc)\n"
    "Row 3: {}\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "Ch 3, *fan in ch-2 sp of next fan, dc in next dc; rep from * to end. (3 fans, 4 dc)",
        "Ch 3, *fan in next fan, dc in next dc; rep from * across.",
        "Ch 3, [fan in next ch-2 sp, dc in next dc] 3 times.",
        "Ch 3, *fan in next fan, dc in next dc; rep from * across, ending with dc in top of ch-3.",
        "Ch 3, *fan in ch-2 sp, sk 2 dc, dc in next dc; rep from * to end.",
        "Ch 3, fan in each fan and dc in each dc across. (3 fans, 4 dc)",
    ],
)
def test_the_stitch_behind_a_group(words: str) -> None:
    """The dc told behind a fan is the one between two fans, so that every pass takes one of each."""
    report = check(_FANS.format(words))
    assert counts(report)[-1] == 16
    assert not corrections(report)


def test_the_rest_of_a_group_where_it_is_told() -> None:
    """ "Dc in next 5 dc" behind a space begins with the rest of the fan."""
    words = "Ch 3, dc in next 2 dc, *2 dc in next ch-2 sp, dc in next 5 dc; rep from * once more, 2 dc in next ch-2 sp, dc in last 3 sts."
    assert counts(check(_FANS.format(words)))[-1] == 22


def test_a_group_without_a_name_as_its_count_tells() -> None:
    """Where the group has no name, "dc in next dc" is the one behind it if the round comes out so."""
    text = _FANS.replace("*fan in next st", "*(2 dc, ch 2, 2 dc) in next st").replace(
        "more, fan in", "more, (2 dc, ch 2, 2 dc) in"
    )
    text = text.replace("(3 fans, 4 dc)", "(16 dc)")
    words = "Ch 3, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next dc; rep from * across. (16 dc)"
    assert outcomes(check(text.format(words)))[-1] == "agrees"


def test_work_beside_a_fan_that_is_not_there() -> None:
    """ "Fan in each fan and sc in each bobble" over a row without bobbles is no row of fans alone."""
    assert counts(check(_FANS.format("Ch 3, fan in each fan and tr in each bobble across. (3 fans)")))[-1] != 13
