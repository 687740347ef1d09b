"""Squares, circles and blankets told in sentences: what "this" is, which place is meant, what lies over a space."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes, spaces

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


_BLOCK = "Ch 6, dc in 4th ch from hook, dc in next 2 ch"


@pytest.mark.parametrize(
    ("tile", "special"),
    [
        ("(sl st, ch 3, 3 dc) in ch-3 sp of next tile", ""),
        ("sl st in next ch-3 sp, ch 3, 3 dc in same sp", ""),
        ("tile in next ch-3 sp", "Special stitches\nTile: (sl st, ch 3, 3 dc) in indicated sp.\n\n"),
    ],
)
def test_tiles_from_corner_to_corner_are_told_by_their_slip_stitches(tile: str, special: str):
    """The chains skipped on each row's own chain are the tile's space, however the tiles after it are put."""
    report = check(
        f"Wrap\n{special}Row 1: {_BLOCK}, turn. (1 tile)\nRow 2: {_BLOCK}, {tile}, turn. (2 tiles)\n"
        f"Row 3: {_BLOCK}, *{tile}; rep from * across, turn. (3 tiles)\n"
    )
    assert counts(report) == [3, 6, 9]
    assert spaces(report) == [{3: 1}, {3: 2}, {3: 3}]
    assert outcomes(report) == ["agrees"] * 3


def test_a_row_that_loses_a_block_stops_at_the_last():
    """The first block of a row was worked into its own chain, and is one of those below like the others."""
    report = check(
        f"Wrap\nRow 1: {_BLOCK}, turn.\nRow 2: {_BLOCK}, sl st in next ch-3 sp, ch 3, 3 dc in same sp, turn.\n"
        f"Row 3: {_BLOCK}, *sl st in next ch-3 sp, ch 3, 3 dc in same sp; rep from * across, turn. (3 blocks)\n"
        "Row 4: Sl st in next 3 dc and in ch-3 sp, ch 3, 3 dc in same sp, *sl st in next ch-3 sp, ch 3, 3 dc in same sp; "
        "rep from * to last block, sl st in ch-3 sp of last block. (2 blocks)\n"
    )
    assert counts(report) == [3, 6, 9, 6]
    assert outcomes(report)[2:] == ["agrees", "agrees"]


def test_spaces_are_not_looked_for_in_a_round_known_only_by_its_stitches():
    """Where the row before was not read, its count of stitches tells nothing of its spaces."""
    report = check(
        "Mat\nRnd 1: 4 ch, ss to form ring, 3 ch, 1 tr, (1 ch, 2 tr) 5 times in some such manner, 1 ch, ss to 3rd of 3 ch. (12 tr)\n"
        "Rnd 2: Ss to 1 ch sp, 3 ch, 1 tr, 1 ch, 2 tr in same sp, (2 tr, 1 ch, 2 tr) in each 1 ch sp to end, ss to 3rd of 3 ch. (24 tr)\n",
        "uk",
    )
    assert counts(report) == [None, None]
    assert corrections(report) == []


@pytest.mark.parametrize("words", ["all into ring", "all worked into the ring", "all in ring"])
def test_all_into_the_ring_says_where_the_round_goes(words: str):
    """Stitches without a place go into the ring in any case."""
    report = check(
        f"Mat\nRnd 1: Ch 4, sl st to form ring. Ch 3 (counts as dc), dc, (ch 1, 2 dc) 5 times, {words}, ch 1, join. (12 dc)\n"
    )
    assert counts(report) == [12]
    assert spaces(report) == [{1: 6}]


@pytest.mark.parametrize("long", ["long sc", "dropped sc", "spike sc", "elongated sc"])
def test_long_stitches_by_their_names(long: str):
    """One goes two rows down and covers the stitch behind it."""
    report = check(
        "Mat\nRow 1: Ch 12, sc in 2nd ch, and in each ch across (11)\nRow 2: Ch 1, turn, sc across (11)\n"
        f"Row 3: Ch 1, turn, sc in first sc, *{long} in next st 2 rows below, sc in next sc; rep from * to end (11)\n"
    )
    assert counts(report) == [11, 11, 11]


def test_list_numbers_label_rounds_that_begin_with_slip_stitches():
    """Two of three lines begin with "Ss"."""
    report = check(
        "Granny\n1. Ch 4, join. Ch 3 (1dc), 2dc in ring, ch 2, *3dc in ring, ch 2* 3 times, ss in top of ch 3.\n"
        "2. Ss in each st to ch sp, ch 3 (1dc), 2dc, ch 2, 3dc in same sp, ch 1, *3dc, ch 2, 3dc in next sp, ch 1* 3 times, ss in top of ch 3.\n"
        "3. Ss in each st to ch sp, ch 3 (1dc), 2dc, ch 2, 3dc in same sp, ch 1, 3dc in next sp, ch 1, "
        "*3dc, ch 2, 3dc in corner, ch 1, 3dc in next sp, ch 1* 3 times, ss in top of ch 3.\n"
    )
    assert counts(report) == [12, 24, 36]


def test_remarks_among_the_words_of_a_square_are_not_counted():
    """Tips, what has been reached, and what to look at next."""
    report = check(
        "Learner's Square\nRnd 1: Ch 4, join to form a ring (it will look small!). Ch 3 (counts as dc), 2 dc in ring, ch 2 (your first corner), "
        "*3 dc in ring, ch 2; repeat from * two more times until you have 4 groups of 3 dc. Join. (12 dc)\n"
        "Rnd 2: Turn your attention to the corners. Sl st in next 2 dc and into corner sp. Ch 3, (2 dc, ch 2, 3 dc) in same sp. "
        "Tip: keep your chains loose. *Ch 1, (3 dc, ch 2, 3 dc) in next corner sp; repeat from * to end, ch 1, join. "
        "Remember that each corner has two groups of 3 dc. (24 dc)\n"
    )
    assert counts(report) == [12, 24]
    assert spaces(report) == [{2: 4}, {2: 4, 1: 4}]


def test_what_follows_until_is_work_again():
    """Only the words up to the comma tell what is reached."""
    report = check(
        "Tile\nRnd 1: In magic ring, ch 3 (counts as dc), 2 dc, ch 2, *3 dc, ch 2; rep from * twice more until you have 4 groups of dc, "
        "3 dc in ring, join. (15 dc)\n"
    )
    assert counts(report) == [15]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("ch 3 (counts as dc), dc in same sp, 2 dc between each dc around, join. (32 dc)", 32),
        ("(puff, ch 1) between each st, join. (16 puffs, 16 ch-1 sps)", 16),
    ],
)
def test_a_round_begun_between_stitches_goes_between_all_of_them(words: str, made: int):
    """Sixteen gaps, the one begun in among them."""
    report = check(
        "Tile\nRnd 1: Ch 4, 15 dc in 4th ch from hook (skipped ch count as dc), join. (16 dc)\n"
        f"Rnd 2: Attach B between any 2 dc, {words}\n"
    )
    assert counts(report) == [16, made]


def test_a_wavy_dash_ends_a_label():
    """ "Rnd 1 ~"."""
    assert counts(
        check(
            "Disc\nRnd 1 ~ Mr, ch 2 (not a st), 12 dc, join. [12]\nRnd 2 ~ Ch 2, 2 dc in each st around, join. [24]\n"
        )
    ) == [12, 24]


def test_a_border_round_a_flat_piece_counts_what_its_words_name():
    """The corners of a flat piece are told in words; the next round finds them."""
    report = check(
        "Block\nRow 1: Ch 21, sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
        "Rows 2-20: Ch 1, sc in each sc across, turn. (20 sc)\n"
        "Border: Rnd 1: Ch 1, 3 sc in corner, 18 sc across top, 3 sc in corner, 18 sc down side, 3 sc in corner, "
        "18 sc across bottom, 3 sc in corner, 18 sc up side. Join. (84 sc)\n"
        "Rnd 2: Ch 1, sc in each sc around, working 3 sc in center sc of each corner. Join. (92 sc)\n"
    )
    assert counts(report)[-2:] == [84, 92]


@pytest.mark.parametrize("words", ["in ch-2 sp of next shell", "in next shell sp"])
def test_spaces_between_shells_are_not_the_shells(words: str):
    """A repeat that works into the shells ends with the last of them, though a space as long lies behind it."""
    report = check(
        "Doily\nSpecial stitches\nShell = (2 dc, ch 2, 2 dc) in one place.\n\nRnd 1: Ch 4, join to form ring, ch 1, 8 sc in ring, join. (8 sc)\n"
        "Rnd 2: Ch 1, *shell in next sc, ch 2, sk 1 sc; rep from * around, join. (4 shells)\n"
        f"Rnd 3: Ch 1, *(sc, ch 3, sc) {words}, ch 5; rep from * around, join. (8 sc)\n"
    )
    assert counts(report) == [8, 16, 8]
    assert not {rule for rule, _ in all_findings(report)} & {"count-differs", "places-left-over"}


def test_the_first_stitch_comes_round_as_the_last_one_named():
    """The round begins in the top of the first cluster, and its last pass ends there."""
    report = check(
        "Square\nRnd 1: Ch 6, join to form ring. Ch 2 (not a st), (3dc-cl in ring, ch 5) 4 times, join. (4 clusters, 4 ch-5 sps)\n"
        "Rnd 2: Ch 1, *12 tr in next ch-5 sp, sc in next cluster; rep from * around, join. (48 tr, 4 sc)\n"
    )
    assert counts(report) == [4, 52]
    assert corrections(report) == []
