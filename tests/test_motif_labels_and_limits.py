"""Wordings of squares, doilies, blankets and borders as they came in fresh patterns: labels, counts, groups and limits."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

_TERMS = "US terms\n\n"


@pytest.mark.parametrize("extra", [", white –", ", pale blue:", ", wrong side -", ", MC –"])
def test_label_with_a_colour_behind_a_comma(extra: str) -> None:
    """ "Row 1, white –" is a label; "Row 1, turn –" says what is done and is none."""
    text = f"Mat\n{_TERMS}MAT\nCh 11.\nRow 1{extra} Sc in 2nd ch from hook and in each ch across. (10)\n"
    assert outcomes(check(text)) == ["agrees"]


def test_first_block_made_tells_no_block_apart() -> None:
    """ "(first block made)" is said of one of two blocks alike: "next block" in the row above is either of them."""
    text = (
        f"Cloth\n{_TERMS}CLOTH\nRow 1: Ch 6, dc in 4th, 5th and 6th ch from hook. Turn. (1 block)\n"
        "Row 2: Ch 6, dc in 4th, 5th and 6th ch from hook (first block made); sl st in ch-3 sp of next block, ch 3, 3 dc in same sp. Turn. (2 blocks)\n"
        "Row 3: Ch 6, dc in 4th, 5th and 6th ch from hook; *sl st in ch-3 sp of next block, ch 3, 3 dc in same sp; rep from * to end. Turn. (3 blocks)\n"
    )
    assert counts(check(text)) == [3, 6, 9]
    assert outcomes(check(text)) == ["agrees"] * 3


def test_beginning_cluster_of_a_stitch_with_two_names() -> None:
    """ "Beginning cl" is one of the clusters that the list calls "cl (cluster)"."""
    text = (
        "Mat\nUK terms\n\nSPECIAL STITCHES\ncl (cluster) - tr3tog into the same sp\nBeginning cl - 2ch, tr2tog into the same sp\n\n"
        "MAT\n6ch, ss to form a ring.\nRound 1 - 4ch (counts as tr, 1ch), *1tr into ring, 1ch, rep from * 6 times more, ss into 3rd of 4ch. (8tr)\n"
        "Round 2 - ss into 1ch-sp. Beginning cl, 2ch, *cl into next sp, 2ch, rep from * around, ss into top of first cl. (STATED)\n"
    )
    assert outcomes(check(text.replace("STATED", "8cl, 8 2ch-sp"))) == ["agrees", "agrees"]
    assert outcomes(check(text.replace("STATED", "9cl, 8 2ch-sp"))) == ["agrees", "differs"]


def test_loops_of_a_pineapple_between_shells() -> None:
    """ "(3 loops)" may count the loops from sc to sc alone, not the spaces of the shells beside them."""
    text = (
        f"Lace\n{_TERMS}SPECIAL STITCHES\nShell: (2 dc, ch 2, 2 dc) in space indicated.\n\nLACE\nCh 20.\n"
        "Row 1: Shell in 6th ch from hook, ch 3, sk 6 ch, 5 dc in next ch, ch 3, sk 5 ch, shell in next ch, leave last ch unworked. Turn.\n"
        "Row 2: Ch 5 (does not count), shell in shell, ch 3, sc in first dc of 5-dc group, (ch 3, sc in next dc) 4 times, ch 3, shell in shell. Turn. (STATED loops)\n"
    )
    assert outcomes(check(text.replace("STATED", "4")))[1] == "agrees"
    assert outcomes(check(text.replace("STATED", "3")))[1] == "differs"


_LINEN = (
    f"Cloth\n{_TERMS}CLOTH\nCh 12.\nRow 1: Sc in 2nd ch from hook, *dc in next ch, sc in next ch; rep from * to end. Turn. (11)\n"
    "Row 2: Ch 3 (counts as dc), *sc in next dc, dc in next sc; rep from * to end. Turn. (11)\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "then rep from * to end as Row 1",
        "rep from * across as in Row 1",
        "rep from * of 1st row to end",
        "work from * to end as Row 1",
        "then as Row 1 from * to end",
        "complete as R1 from *",
    ],
)
def test_repeat_whose_star_stands_in_another_row(words: str) -> None:
    """ "rep from * to end as Row 1" works the passage that Row 1 has marked; what is "next ch" there is a stitch here."""
    report = check(f"{_LINEN}Row 3: Ch 1, sc in first st, {words}. Turn. (11)\n")
    assert counts(report) == [11, 11, 11]
    assert not corrections(report)
    assert outcomes(check(f"{_LINEN}Row 3: Ch 1, sc in first st, {words}. Turn. (12)\n"))[-1] == "differs"


def test_passage_of_another_row_once() -> None:
    """ "work from first * to second * of Row 2" works that passage once; of a row that has none, nothing is known."""
    text = (
        f"Cloth\n{_TERMS}CLOTH\nCh 15.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (14)\n"
        "Row 2: Ch 1, sc in first st, *sc in next 3 sts, 2 sc in next st, sc2tog*, rep from * to * once, sc in last st, turn. (14)\n"
        "Row 3: Ch 1, work from first * to second * of Row NUMBER, sc in each st to end, turn.\n"
    )
    assert counts(check(text.replace("NUMBER", "2"))) == [14, 14, 14]
    assert counts(check(text.replace("NUMBER", "1")))[2] is None
    assert not corrections(check(text.replace("NUMBER", "1")))


_TWO_ROWS = (
    "\n\nSCARF\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10)\n"
    "Row 2: Ch 2 (counts as dc), fpdc around next 8 sts, dc in last st. (10)\n"
)


@pytest.mark.parametrize(
    "listed",
    [
        "We work in US terms: ch chain, dc double crochet, sc single crochet, fpdc front post double crochet, st stitch.",
        "Also used (US): ch – chain, sc – single crochet, dc – double crochet, fpdc – front post double crochet, st – stitch",
        "Special stitches\nFPdc (front post double crochet)\nBPdc (back post double crochet)\nAlso used (US): ch – chain, sc – single crochet, dc – double crochet, st – stitch",
        "US terms\nch chain · sc single crochet · dc double crochet · fpdc front post double crochet · st stitch",
    ],
)
def test_lists_led_to_by_a_sentence(listed: str) -> None:
    """Words that lead to a list are no part of its first entry, and a line in brackets alone goes on in no other."""
    report = check(f"Scarf\n\n{listed}{_TWO_ROWS}")
    assert outcomes(report) == ["agrees", "agrees"]
    assert not corrections(report)


def test_stitch_defined_beneath_a_full_line() -> None:
    """ "shell = 5 dc in one st" on a line of its own is an entry, however long the line before."""
    text = (
        "Scallop\n\nUS terms\nch chain · dc double crochet · sc single crochet · sk skip\nshell = 5 dc all in same st\n\n"
        "EDGE\nCh 14.\nRow 1: Sc in 2nd ch from hook, *sk 2 ch, shell in next ch, sk 2 ch, sc in next ch; rep from * to end. (STATED shells, 3 sc)\n"
    )
    assert outcomes(check(text.replace("STATED", "2"))) == ["agrees"]
    assert outcomes(check(text.replace("STATED", "3"))) == ["differs"]


@pytest.mark.parametrize("use", ["cable over next 4 sts", "work cable across next 4 sts", "cable"])
@pytest.mark.parametrize("held", ["working in front FPtr around each of", "working in front of these sts FPtr around"])
def test_cable_over_as_many_stitches_as_it_takes(use: str, held: str) -> None:
    """A cable that its own words place is one cable "over next 4 sts"; over a number that they do not take, unread."""
    text = (
        f"Mat\n{_TERMS}SPECIAL STITCHES\nCable: skip next 2 sts, FPtr around each of next 2 sts, {held} the 2 skipped sts.\n\n"
        "MAT\nCh 14.\nRow 1: Dc in 4th ch from hook (3 sk chs count as first dc) and in each ch across, turn. (12)\n"
        f"Row 2: Ch 2 (counts as dc), dc in next 3 sts, *{use}, dc in next 4 sts; rep from * across, turn. (12)\n"
    )
    assert counts(check(text)) == [12, 12]
    assert counts(check(text.replace("next 4 sts, dc", "next 6 sts, dc")))[1] in (None, 12)
    assert "4 sts" not in use or counts(check(text.replace("next 4 sts, dc", "next 6 sts, dc")))[1] is None


@pytest.mark.parametrize(
    ("words", "stitches"),
    [
        ("2 sc in each st in MC", 12),
        ("2 sc in each st around in blue, sl st in first sc", 12),
        ("[sc in next st, 2 sc in next st] 3 times in CC", 9),
        ("*sc in next st in MC, 2 sc in next st in CC; rep from * around", 9),
    ],
)
def test_colour_behind_a_place(words: str, stitches: int) -> None:
    """A declared colour behind a place or a repeat changes no count."""
    text = f"Mat\n{_TERMS}Yarn: DK in MC (white) and CC (blue).\n\nMAT\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: {words}. ({stitches})\n"
    assert outcomes(check(text)) == ["agrees", "agrees"]


@pytest.mark.parametrize("label", ["5-6. Repeat R2.", "5-6. With A, repeat R2.", "5-6) As R2."])
def test_number_alone_in_a_run_of_labels(label: str) -> None:
    """The next number in a run of labels is a row, though its letter is left out; "5. Sew on a loop." is none."""
    rows = f"Mat\n{_TERMS}MAT\nCh 11.\nR1: sc in 2nd ch from hook and in each ch across. Turn. (10)\nR2: ch 1, sc in each st across. Turn. (10)\nR3-4: Repeat R2.\n"
    assert counts(check(f"{rows}{label}\nR7: ch 1, 2 sc in each st. (20)\n")) == [10] * 6 + [20]
    assert counts(check(f"{rows}5. Sew on a loop.\n")) == [10] * 4


def test_chain_below_a_multiple_and_above_numbered_rows() -> None:
    """The chain between "Multiple of 3 + 2" and a first row that a bare number labels is the first row's."""
    text = (
        f"Cloth\n{_TERMS}Multiple of 3 + 2. (Add 2 for the beginning chain.)\nCh 16.\n\n1. Dc in 4th ch from hook and in each ch across. Turn. [14 dc]\n"
        "2. Ch 2 (counts as dc), dc in each st across. Turn. [14 dc]\n3. Repeat row 2.\n"
    )
    assert counts(check(text)) == [14, 14, 14]


_LEAF = (
    f"Leaf\n{_TERMS}LEAF\nCh 7.\nRnd 1: Sc in 2nd ch from hook, hdc in next ch, dc in next 3 ch, 3 sc in last ch; working on other side of ch, "
    "dc in next 3 ch, hdc in next ch, sc in last ch, sl st in first sc. (13)\n"
)


@pytest.mark.parametrize(
    ("words", "stitches"),
    [
        ("sc in each st to the tip, (sc, ch 2, sc) in the center sc of 3 at the tip, sc in each st to the end", 14),
        ("sc in next 6 sts, (sc, ch 2, sc) in tip, sc in next 6 sts", 14),
        ("sc in each st to point, 3 sc in point, sc in each st to end", 15),
        ("sc in each st up to the tip, 3 sc in tip st, sc in each st back to the start", 15),
    ],
)
def test_tip_of_a_leaf(words: str, stitches: int) -> None:
    """The tip of a leaf is the middle of the stitches that turn it there."""
    assert counts(check(f"{_LEAF}Rnd 2: Ch 1, {words}, sl st in first sc. ({stitches})\n")) == [13, stitches]


def test_part_of_something_not_understood() -> None:
    """ "in center sc of 3 at the blorp" names a place that is not known: the row is not counted."""
    words = "sc in next 6 sts, 3 sc in center sc of 3 at the blorp, sc in next 6 sts"
    assert counts(check(f"{_LEAF}Rnd 2: Ch 1, {words}, sl st in first sc. (15)\n"))[1] is None


@pytest.mark.parametrize(
    "words",
    [
        "*(sc, hdc, 3 dc, hdc, sc) in next ch-3 loop; rep from * around",
        "(sc, hdc, 3 dc, hdc, sc) in each ch-3 loop around",
        "*sl st in next loop, (ch 2, 3 dc, ch 2, sl st) in same loop; rep from * around",
    ],
)
def test_petals_that_go_unnamed(words: str) -> None:
    """Brackets that begin and end low are petals to a count of petals, where all are alike."""
    text = (
        f"Flower\n{_TERMS}FLOWER\nRnd 1: 10 sc in magic ring, sl st in first sc. (10)\n"
        "Rnd 2: Ch 1, sc in first sc, *ch 3, sk 1 sc, sc in next sc; rep from * to last sc, ch 3, sk last sc, sl st in first sc. (5 loops)\n"
        f"Rnd 3: {words}. (NUMBER petals)\n"
    )
    assert outcomes(check(text.replace("NUMBER", "5")))[2] == "agrees"
    assert outcomes(check(text.replace("NUMBER", "6")))[2] == "differs"
