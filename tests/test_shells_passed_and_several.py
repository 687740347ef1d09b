"""Shells and V-stitches passed over whole, several of them in one place, and the gaps beside them; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

_LIST = "Mist\n\nUS terms\n\nSpecial stitches\nV-st: (dc, ch 1, dc) in same st.\nFan: 5 dc in same st.\n\nMIST\n"
_SIX = (
    _LIST + "Row 1: Fsc 19, turn. (19)\n"
    "Row 2: Ch 3 (counts as dc), sk 1, [V-st in next st, sk 2] 5 times, V-st in next st, dc in last st, turn. (6 V-sts, 2 dc)\n"
    "Row 3: Ch 3 (counts as dc), {}\n"
)
_PLAIN = _LIST + "Row 1: Fsc 13, turn. (13)\nRow 2: Ch 3 (counts as dc), {}\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("*fan in next V-st, sk next V-st; rep from * across, dc in last st.", 17),
        ("[fan in next V-st, sk 1 V-st] 3 times, dc in last st.", 17),
        ("*sk V-st, fan in next V-st; rep from * across, dc in last st.", 17),
        ("sk first V-st, [fan in next V-st, sk next V-st] twice, fan in last V-st, dc in last st.", 17),
        ("fan in first V-st, sk next 2 V-sts, fan in next V-st, sk 2 V-sts, dc in last st.", 12),
        ("fan in first V-st, sk next V-st, fan in ch-1 sp of next V-st, sk last 3 V-sts, dc in last st.", 12),
    ],
)
def test_a_v_stitch_is_skipped_whole(words: str, made: int) -> None:
    """Skipping a V-stitch passes over all of it, and never over the rest of the one just worked into; nothing is left over."""
    report = check(_SIX.format(words))
    assert counts(report)[-1] == made
    assert "places-left-over" not in [rule for rule, _ in all_findings(report)]


def test_v_stitches_that_are_left_are_told() -> None:
    """A V-stitch that no words pass over is told as left, though the ones before it were worked into their spaces."""
    report = check(_SIX.format("fan in next V-st, sk next V-st, fan in next V-st, dc in last st."))
    assert "places-left-over" in [rule for rule, _ in all_findings(report)]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("2 V-sts in next st, sk 4, 2 fans in next st, sk 5, dc in last st.", 16),
        ("2 V-sts in each of next 2 sts, sk 9, dc in last st.", 10),
        ("V-st in next 2 sts, sk 9, dc in last st.", 6),
        ("sk 11, 3 fans in last st.", 16),
    ],
)
def test_several_shells_go_into_one_place(words: str, made: int) -> None:
    """ "2 V-sts in next st" makes two of them."""
    assert counts(check(_PLAIN.format(words)))[-1] == made


def test_each_of_several_in_one_place_is_worked_into() -> None:
    """The next round finds as many V-stitches as a ring holds, though all are in one place."""
    text = _LIST + (
        "Rnd 1: Ch 4, join with sl st to form a ring, ch 1 (does not count as a st), 4 V-sts in ring, join. (4 V-sts)\n"
        "Rnd 2: Ch 1 (does not count as a st), fan in each V-st around, join."
    )
    assert counts(check(text)) == [8, 20]


def test_v_stitches_named_where_none_lie_leave_no_count() -> None:
    """ "Fan in each V-st" over plain stitches is not counted as a row without fans."""
    assert counts(check(_PLAIN.format("fan in each V-st across, dc in last st.")))[-1] is None


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("V-st in sp between V-sts across, dc in last st.", 12),
        ("dc in sp between first dc and V-st, V-st between V-sts across, dc in last st.", 13),
        ("dc between first dc and V-st, V-st between V-sts across, dc in last st.", 13),
        ("dc in sp between first dc and first V-st, (V-st between next 2 V-sts) 5 times, dc in last st.", 13),
        ("V-st between next 2 V-sts 5 times, dc in last st.", 12),
    ],
)
def test_gaps_beside_v_stitches(words: str, made: int | None) -> None:
    """The gap between a stitch and a V-stitch is not one between two V-stitches; "across" is in all of them."""
    assert counts(check(_SIX.format(words)))[-1] == made


_SHELLS = (
    _LIST + "Row 1: Fsc 25, turn. (25)\n"
    "Row 2: Ch 3 (counts as dc), [sk 2, fan in next st, sk 2, dc in next st] 4 times, turn. (4 fans, 5 dc)\nRow 3: {}\n"
)
_V_AND_DC = (
    _LIST + "Row 1: Fsc 17, turn. (17)\n"
    "Row 2: Ch 3 (counts as dc), [sk 1, V-st in next st, sk 1, dc in next st] 4 times, turn. (4 V-sts, 5 dc)\nRow 3: {}\n"
)


@pytest.mark.parametrize(
    ("below", "words", "made"),
    [
        (_V_AND_DC, "Ch 3 (counts as dc), *V-st in next V-st, dc in next dc; rep from * across, turn.", 13),
        (_V_AND_DC, "Ch 3 (counts as dc), *V-st in next ch-1 sp, dc in next dc; rep from * across, turn.", 13),
        (_V_AND_DC, "Ch 3 (counts as dc), [V-st in next V-st, dc in next st] 4 times, turn.", 13),
        (_V_AND_DC, "Ch 1, sc in each dc and ch-1 sp across, turn.", 17),
        (
            _V_AND_DC,
            "Ch 1, sc in first dc, *sc in next dc, sc in next ch-1 sp, sc in next 2 dc; rep from * across.",
            17,
        ),
        (_SHELLS, "Ch 3 (counts as dc), *fan in center of next fan, dc in next dc; rep from * across, turn.", 25),
        (
            _SHELLS,
            "Ch 1, sc in first dc, *ch 3, sc in 3rd dc of next fan, ch 3, sc in next dc; rep from * across, turn.",
            9,
        ),
        (
            _SHELLS,
            "Ch 3 (counts as dc), *sk 2 dc, fan in next dc, sk 2 dc, dc in next dc; rep from * across, turn.",
            25,
        ),
        (_SHELLS, "Ch 1, sc in first dc, *sc in 2nd dc of next fan, sc in next 5 dc; rep from * across, turn.", None),
    ],
)
def test_the_rest_of_a_group_is_passed_as_its_beginning_was(below: str, words: str, made: int | None) -> None:
    """Where a row goes to the middle of a fan without a word on its first stitches, "next dc" lies beyond its last ones."""
    report = check(below.format(words))
    assert counts(report)[-1] == made
    assert made is None or "places-left-over" not in [rule for rule, _ in all_findings(report)]


def test_sides_that_come_again_in_turn_are_alike() -> None:
    """A round of six corners whose repeat holds two of them has sides of two lengths by design; an odd one out is told."""
    begun = _LIST + "Rnd 1: 12 sc in magic ring, join. (12)\nRnd 2: Ch 1, *{}; rep from * twice more{}, join.\n"
    even = check(
        begun.format("(sc, ch 2, sc) in next sc, sc in next sc, (sc, ch 2, sc) in next sc, 2 sc in next sc", "")
    )
    assert "corners-differ" not in [rule for rule, _ in all_findings(even)]
    odd = check(
        begun.format(
            "(sc, ch 2, sc) in next sc, sc in next 2 sc", ", (sc, ch 2, sc) in next sc, sc in next sc, 2 sc in last sc"
        )
    )
    assert "corners-differ" in [rule for rule, _ in all_findings(odd)]


def test_the_skip_before_the_join_goes_without_saying() -> None:
    """ "[Sk next 2 sc, fan in next sc] 5 times, join": what a last skip would pass over is not told as left; more is."""
    begun = (
        _LIST
        + "Rnd 1: Ch 1, {} sc in magic ring, join. ({})\nRnd 2: Ch 3 (counts as dc), 4 dc in same st, [sk next 2 sc, fan in next sc] 5 times, join.\n"
    )
    for stitches, told in ((18, False), (20, True)):
        report = check(begun.format(stitches, stitches))
        assert counts(report)[-1] == 30
        assert ("places-left-over" in [rule for rule, _ in all_findings(report)]) is told


def test_a_beginning_v_stitch_is_one_wherever_the_round_is_joined() -> None:
    """The chain of a beginning V-stitch that the pattern defines is a part of it, though the join names the first dc."""
    text = _LIST.replace("Fan:", "Beg V-st: ch 4, dc in same st.\nFan:") + (
        "Rnd 1: Ch 1, 12 sc in magic ring, join. (12)\n"
        "Rnd 2: Beg V-st in first st, *sk 1, V-st in next sc; rep from * around, join with sl st in first dc."
    )
    assert counts(check(text))[-1] == 12


def test_an_ending_that_says_the_last_slip_stitch_again() -> None:
    """Tiles from corner to corner: "ending with the sl st in the last sp" is the one that the last pass has made."""
    text = (
        "Tile\n\nUS terms\n\nTILE\nRow 1: Ch 6, dc in 4th, 5th and 6th ch from hook. (1 tile)\n"
        "Row 2: Turn. Ch 6, dc in 4th ch from hook and in next 2 ch, sl st in ch-3 sp of last row's tile, ch 3, 3 dc in same sp. (2 tiles)\n"
        "Row 3: Turn. Ch 6, dc in 4th ch from hook and in next 2 ch, [sl st in next ch-3 sp, ch 3, 3 dc in same sp] twice. (3 tiles)\n"
        "Row 4: Turn. Sl st in each of the first 3 dc and in the ch-3 sp, *ch 3, 3 dc in same sp, sl st in next ch-3 sp; "
        "rep from * across, ending with the sl st in the last ch-3 sp. (2 tiles)\n"
    )
    report = check(text)
    assert counts(report)[-1] == 6
    assert not {rule for rule, _ in all_findings(report)} & {"places-run-out", "places-left-over", "count-differs"}


def test_of_two_v_stitches_in_a_spine_each_is_one() -> None:
    """ "(V-st, ch 2, V-st) in ch-2 sp": the next row goes into the first, the space and the second, and passes over none of them."""
    text = _LIST + (
        "Row 1: Fsc 7, turn. (7)\nRow 2: Ch 3 (counts as dc), sk 2, (V-st, ch 2, V-st) in next st, sk 2, dc in last st, turn. (2 V-sts, 2 dc)\n"
        "Row 3: Ch 3 (counts as dc), {} (V-st, ch 2, V-st) in ch-2 sp, {} dc in last st, turn.\n"
    )
    for words in ("V-st in next V-st,", "V-st in ch-1 sp of next V-st,", "V-st in each V-st to next ch-2 sp,"):
        back = words.replace("to next ch-2 sp,", "to last st,")
        report = check(text.format(words, back))
        assert counts(report)[-1] == 10, words
        assert not {rule for rule, _ in all_findings(report)} & {"places-run-out", "places-left-over"}


def test_stitches_skipped_by_number_are_counted_from_the_place_worked_into() -> None:
    """ "Fan in ch-2 sp of fan, ch 3, sk next 5 dc": the two that are left of the fan are among the five."""
    text = _LIST.replace("Fan: 5 dc in same st.", "Fan: (2 dc, ch 2, 2 dc) in same sp or st.") + (
        "Ch 9.\nRow 1: Fan in 5th ch from hook (skipped chs do not count as a st), ch 3, sk next 3 chs, dc in last ch; turn.\n"
        "Row 2: Ch 3 (counts as dc), 3 dc in ch-3 sp, fan in ch-2 sp of fan; turn. (8 dc)\n"
        "Row 3: Ch 5, fan in ch-2 sp of fan, ch 3, sk next 5 dc, dc in top of tch; turn. (5 dc)\n"
    )
    report = check(text)
    assert counts(report) == [5, 8, 5]
    assert not {rule for rule, _ in all_findings(report)} & {"count-differs", "places-run-out", "places-left-over"}
