"""Runs over shells and V-stitches beside runs over other stitches, and decreases over so many; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, counts

_LIST = "Mist\n\nUS terms\n\nSpecial stitches\nV-st: (dc, ch 1, dc) in same st.\nFan: 5 dc in same st.\n\nMIST\n"
_FANS = (
    _LIST + "Row 1: Fsc 13, turn. (13)\n"
    "Row 2: Ch 1, sc in first st, *sk 2, fan in next st, sk 2, sc in next st; rep from * once, turn. (2 fans, 3 sc)\n"
    "Row 3: Ch 1, {}\n"
)
_VS = (
    _LIST + "Row 1: Fsc 10, turn. (10)\n"
    "Row 2: Ch 3 (counts as dc), sk 1, [V-st in next st, sk 2] twice, V-st in next st, dc in last st, turn. (3 V-sts, 2 dc)\n"
    "Row 3: Ch 1, {}\n"
)
_PLAIN = "Piece\n\nUS terms\n\nPIECE\nRow 1: Fsc 12, turn. (12)\nRow 2: {}\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc in each sc and fan in each fan across.", 13),
        ("fan in each fan and sc in each sc to end.", 13),
        ("fan in each fan and 2 sc in each sc across.", 16),
        ("2 fans in each fan and sc in each sc across.", 23),
        ("sc in each sc and 3 sc in each fan across.", 9),
        ("2 sc in each fan and sc in each sc across.", 7),
    ],
)
def test_a_shell_is_one_place_beside_others(words: str, made: int) -> None:
    """What goes into each shell goes there once, or as often as said, whichever of the two runs is told first."""
    assert counts(check(_FANS.format(words)))[-1] == made


@pytest.mark.parametrize(
    "words",
    [
        "sc in each st and fan in each fan across.",
        "sc in each dc and 2 sc in each fan across.",
        "sc in each sc and in center dc of each fan across.",
        "sc in each sc and 3rd dc of each fan across.",
        "fan in each fan and sc in each sc to last sc, 2 sc in last sc.",
        "fan in each fan and sc in each dc across.",
        "4 fans across, sc in last sc.",
        "fans to last sc, sc in last sc.",
    ],
)
def test_what_is_not_told_of_shells_is_not_guessed(words: str) -> None:
    """Whether a shell's other stitches are meant, or those passed before, or how many go where, is not said."""
    assert counts(check(_FANS.format(words)))[-1] is None


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc in each dc and 2 sc in each ch-1 sp except the last.", 12),
        ("sc in each dc, 2 sc in each ch-1 sp to last ch-1 sp, sc in last ch-1 sp, sc in last dc.", None),
        ("sc in each dc and 2 sc in each ch-1 sp across.", 14),
        ("2 sc in each V-st and sc in each dc across.", None),
    ],
)
def test_spaces_to_the_last_one_and_but_the_last_one(words: str, made: int | None) -> None:
    """ "Except the last" leaves one space out; "to the last" is where the whole run may end, which is not guessed."""
    assert counts(check(_VS.format(words)))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Sc in first 9 sts, dec over last 3 sts.", 10),
        ("Dec one st over next 2 sts, sc in each st to end.", 11),
        ("Sc in first 8 sts, dec 2 sts over last 4 sts.", 10),
        ("Sc in first 8 sts, dec 1 st over last 4 sts.", None),
        ("Dec 1 st over next 6 sts, sc to end.", None),
        ("[Dec 1 st over next 3 sts] 4 times.", None),
        ("Sc in next 8 sts, dec in each of the last 4 sts.", None),
    ],
)
def test_one_stitch_fewer_over_several(words: str, made: int | None) -> None:
    """ "Dec 1 st over 6 sts" takes one stitch away, but does not say how; "dec over 3" works three in one."""
    assert counts(check(_PLAIN.format(words)))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("On first 8 sts only, sc2tog, sc in each st to last 2 sts, sc2tog.", 6),
        ("Working on the first 8 sts only, inc, sc in next 6 sts, inc, turn.", 10),
        ("Working over these 12 sts only, sc2tog, sc to last 2 sts, sc2tog.", 10),
        ("Working over first 8 sts only, sc2tog 4 times.", 4),
        ("Working over first 8 sts only, hdc, sc, turn.", None),
        ("Hdc over the first 5 sts only. Turn.", None),
    ],
)
def test_a_row_for_a_few_stitches_alone(words: str, made: int | None) -> None:
    """Several clauses behind "on first 8 sts only" share these among them; the first is not worked over all of them."""
    assert counts(check(_PLAIN.format(words)))[-1] == made


@pytest.mark.parametrize(
    "words",
    [
        "Sc in each st across (add 1 st if needed).",
        "Sc in each st across (dec where necessary to lie flat).",
        "Sc in each st across (work 2 in some sts to lie flat).",
        "Sc in each st across (increasing as needed).",
    ],
)
def test_stitches_left_to_the_maker_are_no_remark(words: str) -> None:
    """What a bracket leaves to the maker's eye may alter the count, which is not shown."""
    assert counts(check(_PLAIN.format(words)))[-1] is None


def test_a_bracket_that_leaves_no_stitches_open_is_a_remark() -> None:
    """A hook changed, or a marker placed, at will: the count stands."""
    for words in ("use a larger hook if needed", "place 1 stitch marker in the last st if desired"):
        assert counts(check(_PLAIN.format(f"Sc in each st across ({words}).")))[-1] == 12


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("As 2nd row, working last 2 sc in last st.", None),
        ("As 2nd row, working last sc in last st.", 14),
    ],
)
def test_the_last_stitches_of_a_row_called_for(words: str, made: int | None) -> None:
    """ "The last 2 sc in last st" may be one more than the called row has."""
    rows = "2 sc in first st, sc in each st to end, turn. (13)\nRow 3: Sc in each st, turn. (13)\nRow 4: " + words
    assert counts(check(_PLAIN.format(rows)))[-1] == made
