"""Stitches passed over on the way to a space without a word: asked about, and no way to make a row come out.

Common practice, no source: a run worked stitch by stitch up to a corner goes all the way, or says what it skips.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts

_SQUARE = (
    "Test square\nUS terms\n\n"
    "Rnd 1: Ch 4, join with sl st to form a ring. Ch 3 (counts as dc), 4 dc in ring, ch 2, (5 dc in ring, ch 2) 3 times, "
    "join with sl st to top of ch-3. (20 dc, 4 ch-2 sps)\nRnd 2: {}\n"
)
_ASKED = ("places-left-over", 5)


def _found(words: str) -> list[tuple[str, int]]:
    return [one for one in all_findings(check(_SQUARE.format(words)), ("query", "correction")) if one[0] == _ASKED[0]]


@pytest.mark.parametrize(
    "words",
    [
        "Ch 1, *sc in next 4 dc, 3 sc in corner sp; rep from * 3 more times, join. (28)",
        "Ch 1, sc in first 4 dc, *3 sc in next ch-2 sp, sc in next 4 dc; rep from * 2 more times, 3 sc in next ch-2 sp, join. (28)",
        "Ch 1, *sc in next 3 dc, (2 sc, ch 2, 2 sc) in corner sp; rep from * around, join. (28)",
    ],
)
def test_passed_without_a_word(words: str) -> None:
    """The count bears the words out, but a maker comes to the corner with stitches to spare: asked, once."""
    assert _found(words) == [_ASKED]
    assert corrections(check(_SQUARE.format(words))) == []


@pytest.mark.parametrize(
    "words",
    [
        "Ch 1, *sc in next 5 dc, 3 sc in corner sp; rep from * 3 more times, join. (32)",
        "Ch 1, *sc in next 4 dc, skip next dc, 3 sc in corner sp; rep from * 3 more times, join. (28)",
        "Ch 1, *sc in next 4 dc, ch 1, 3 sc in corner sp; rep from * 3 more times, join. (28 sc)",
        "Sl st to corner sp, ch 3, 2 dc in same sp, *ch 1, 3 dc in next ch-2 sp; rep from * around, ch 1, join. (12 dc)",
        "Join yarn in any corner, *3 sc in corner sp, sc in next 5 dc; rep from * around, join. (32)",
    ],
)
def test_what_is_said_or_spanned(words: str) -> None:
    """What words skip, what chains lead over and what a granny's groups span is asked about by nobody."""
    assert _found(words) == []


def test_a_number_is_not_put_into_one_stitch_to_make_room() -> None:
    """ "6 sc" before a corner with five stitches is one too many, though six in one of them would give the printed count."""
    report = check(_SQUARE.format("Ch 1, *6 sc, 3 sc in corner sp; rep from * 3 more times, join. (36)"))
    assert counts(report)[1] == 36
    assert [rule for rule, _ in corrections(report)] == ["repeat-does-not-fit"]


def test_a_shell_before_its_own_space() -> None:
    """From a stitch between shells to the space of the next shell, that shell's first stitches go without saying."""
    report = check(
        "Fans\nUS terms\nSpecial stitches\nShell = (2 dc, ch 1, 2 dc) in one place.\n\n"
        "Row 1: Ch 26, sc in 2nd ch from hook, (sk 2 ch, shell in next ch, sk 2 ch, sc in next ch) 4 times, turn.\n"
        "Row 2: Ch 1, sc in first sc, *shell in next ch-1 sp, sc in next sc; rep from * across, turn. (4 shells, 5 sc)\n"
    )
    assert [one for one in all_findings(report, ("query", "correction")) if one[0] == "places-left-over"] == []
