"""Words that would make a number only by a guess, and places left behind that used to go unsaid; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

_FLAT = "Slip\n\nUS terms\n\nSLIP\nRow 1: Fsc 12, turn. (12)\nRow 2: {}\n"
_ROUND = "Slip\n\nUS terms\n\nSLIP\nRnd 1: {} sc in magic ring, join. ({})\nRnd 2: {}\n"
_LOOPS = (
    "Slip\n\nUS terms\n\nSLIP\nRow 1: Fsc 13, turn. (13)\n"
    "Row 2: Ch 1, sc in first sc, *ch 5, sk 2 sc, sc in next sc; rep from * across, turn.\n"
    "Row 3: Ch 1, sc in first sc, *5 sc in next {}, sc in next sc; rep from * across.\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, 7 hdc in next 3 sts, sc in next 9 sts.", None),
        ("Ch 1, 7 hdc in next 3 sts, sc in next 9 sts. (30)", 30),
        ("Ch 1, 3 hdc in next 4 sts, sc in next 8 sts.", 20),
        ("Over first 6 sts, sc2tog, sc in next 2 sts, sc2tog, turn.", None),
        ("Over first 6 sts, sc2tog, turn.", 3),
    ],
)
def test_what_goes_into_several_places_is_not_guessed(words: str, made: int | None) -> None:
    """So many in each of some places, or over all of them: without a count that bears it out there is none."""
    assert counts(check(_FLAT.format(words)))[-1] == made


@pytest.mark.parametrize(
    "words", ["Inc in each of last 6 sts.", "[Sk next st, sc in next st] 5 times, sc in last st, join."]
)
def test_stitches_passed_over_without_a_word_are_told(words: str) -> None:
    """Stitches before the last ones, where the round's first clause goes there, also in a ring."""
    report = check(_ROUND.format(14, 14, words))
    assert "places-left-over" in [rule for rule, _ in all_findings(report)]


@pytest.mark.parametrize(("stitches", "told"), [(12, False), (13, True)])
def test_a_skip_in_every_pass_is_not_left_before_the_join(stitches: int, told: bool) -> None:
    """Where every pass has its skip, a stitch that is left at the round's end is one too many."""
    report = check(_ROUND.format(stitches, stitches, "[sk next st, sc in next st] 6 times, join."))
    assert ("places-left-over" in [rule for rule, _ in all_findings(report)]) is told


def test_a_stitch_that_joins_where_no_chain_is_left_open_stops_the_round() -> None:
    """ "Close the rnd with dc in first sc" closes a last loop; behind plain stitches it is no stitch of the round."""
    assert counts(check(_ROUND.format(12, 12, "Sc in each st around. Close the rnd with dc in first sc.")))[-1] is None


@pytest.mark.parametrize(("loop", "made"), [("ch-5", 25), ("ch-3", None)])
def test_a_loop_of_another_length_is_not_taken_for_the_one_named(loop: str, made: int | None) -> None:
    """Loops of 5 chains are not "next ch-3"."""
    assert counts(check(_LOOPS.format(loop)))[-1] == made
