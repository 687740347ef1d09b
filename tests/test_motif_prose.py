"""Squares, circles and blankets told in sentences: what "this" is, which place is meant, what lies over a space."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes, spaces

_RING = "Tile\nBegin with ch 4, sl st in first ch to form a ring.\n"
_TELLING = (
    "Rnd 1: Chain three, which counts as a double crochet. Work two double crochets into the ring, then chain two. "
    "Now work three double crochets into the ring, chain two, and repeat {this} twice more. "
    "Slip stitch to the top of the chain three. "
)


@pytest.mark.parametrize("this", ["this", "that"])
def test_repeat_this_is_the_last_sentence_where_the_count_says_so(this: str):
    """Four groups of three; the row's first sentence is not worked again."""
    report = check(_RING + _TELLING.format(this=this) + "(12 dc, 4 ch-2 sps)\n")
    assert counts(report) == [12]
    assert spaces(report) == [{2: 4}]


def test_repeat_this_is_all_the_words_where_the_count_says_so():
    """A count may show that both sentences are meant: 3, 3 + 2 and 3 + 2 again."""
    words = (
        "Rnd 1: Ch 1, work 3 sc into the ring. Work 2 hdc into the ring and repeat this twice more, join. (15 sts)\n"
    )
    assert counts(check(_RING + words)) == [15]


def test_repeat_this_without_a_count_is_not_guessed():
    """What "this" takes in shows only in a printed count."""
    assert counts(check(_RING + _TELLING.format(this="this") + "\n")) == [None]


@pytest.mark.parametrize(
    "words",
    [
        "two sc into the next stitch, one sc into the one after; repeat from the star all the way around",
        "two sc into the next stitch, one sc into the one after that; rep from asterisk around",
        "two sc into the next stitch, sc in the one following; repeat from the asterisk to the end",
    ],
)
def test_the_one_after_is_the_next_stitch(words: str):
    """Eight become twelve."""
    report = check(f"Disc\nRnd 1: 8 sc in magic ring, join. (8 sc)\nRnd 2: Ch 1, *{words}, join. (12 sc)\n")
    assert counts(report) == [8, 12]


@pytest.mark.parametrize(
    "move",
    ["Slip stitch across to the first corner space.", "Sl st over to next corner,", "Sl st around to next corner sp;"],
)
def test_slip_stitches_on_the_way_to_a_corner_end_in_it(move: str):
    """The round begins in the corner come to."""
    report = check(
        "Tile\nRnd 1: In magic ring, ch 3 (counts as dc), 2 dc, ch 2, (3 dc, ch 2) 3 times, join to top of ch-3. (12 dc)\n"
        f"Rnd 2: {move} ch 3, work two dc, chain two and three dc into the same corner. *Work three dc, chain two "
        "and three dc into the next corner. Repeat from * twice more. Join to the top of the chain three.\n"
    )
    assert counts(report) == [12, 24]
    assert spaces(report)[1] == {2: 4}


@pytest.mark.parametrize("lead", ["MC: ", "A: ", "Yarn B. ", "White - ", "CC2: "])
def test_a_colour_before_a_colon_opens_a_round(lead: str):
    """It is the yarn that the round is worked in."""
    assert counts(
        check(f"Disc\nRnd 1: {lead}8 sc in a magic ring, join.\nRnd 2: {lead}Ch 1, 2 sc in each st, join.\n")
    ) == [8, 16]


_MESH = (
    "Cloth\nRow 1: Ch 18, sc in 2nd ch from hook and in each ch across, turn. (17 sc)\n"
    "Row 2: Ch 1, sc in first 3 sc, *ch 2, sk 2 sc, sc in next 2 sc; rep from * twice more, sc in last 2 sc, turn. (11 sc, 3 ch-2 sps)\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "sc in each sc and ch 2 over each ch-2 sp across",
        "sc in each sc, ch 2 over each ch-2 sp",
        "sc in first 4 sc, *ch 2 over next ch-2 sp, sc in next 2 sc; rep from * across to last sc, sc in last sc",
        "sc in first 4 sc, (ch 2 above ch-2 sp, sc in next 2 sc) 3 times, sc in last sc",
    ],
)
def test_chains_over_a_space_pass_it(words: str):
    """The mesh goes up unaltered, whatever the row's words."""
    report = check(_MESH + f"Row 3: Ch 1, {words}, turn. (11 sc, 3 ch-2 sps)\n")
    assert counts(report) == [17, 11, 11]
    assert spaces(report)[2] == {2: 3}
    assert corrections(report) == []


def test_the_chains_of_a_turning_chain_that_are_skipped_are_its_space():
    """Behind them lies the stitch that the chain stands for."""
    report = check(
        "Panel\nRow 1: Ch 20, dc in 8th ch from hook (counts as dc, ch 2), *ch 2, sk 2 ch, dc in next ch; rep from * across, turn. (6 dc, 5 sps)\n"
        "Row 2: Ch 5 (counts as dc, ch 2), dc in next dc, *2 dc in next sp, dc in next dc; rep from * twice more, "
        "ch 2, skip 2 ch of turning ch, dc in next ch. (12 dc, 2 sps)\n"
    )
    assert counts(report) == [6, 12]
    assert outcomes(report) == ["agrees", "agrees"]
