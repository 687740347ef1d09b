"""How leaflets of motifs, shawls and filet say it: counts in sentences, last passes, growth, standing stitches (no source)."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, spaces

_HEAD = "Trinket\nUS terms\nCh 3 counts as dc, ch 1 does not count.\n\n"
_RING = "Rnd 1: Ch 3, 2 dc in ring, (ch 3, 3 dc in ring) 3 times, ch 3, join. (12 dc)\n"


def _rules(text: str, weights: tuple[str, ...] = ("correction", "query")) -> list[str]:
    return [rule for rule, _ in all_findings(check(text), weights)]


def test_each_sort_of_a_count_in_a_sentence() -> None:
    """Behind the join "24 sc. 12 hdc. 4 ch-2 sps." is one count; before it, or with a place, the words are work."""
    text = _HEAD + _RING
    text += "Rnd 2: Ch 1. *(1 sc. 1 hdc. 1 sc) in each of next 3 dc. Ch 2. Skip next sp. Rep from * around.{}\n"
    assert counts(check(text.format(" Join. 24 sc. 12 hdc. 4 ch-2 sps."))) == [12, 36]
    assert counts(check(text.format(" 24 sc. 12 hdc. Join."))) == [12, 36]
    assert _rules(text.format(" Join. 24 sc. 11 hdc. 4 ch-2 sps."), ("correction",)) == ["count-differs"]
    assert counts(check(text.format(" 12 sc. 2 sc in next sc."))) != [12, 36]


@pytest.mark.parametrize(
    "words",
    [
        "working only 3 dc in last sc",
        "but make just 3 dc in the last sc",
        "with only 3 dc in last sc",
        "ending with only 3 dc in last sc",
    ],
)
def test_only_so_many_in_the_last(words: str) -> None:
    """A fan of five ends a repeat; in the last stitch it is one of three."""
    text = _HEAD + (
        "Ch 20.\nRow 1: Sc in 2nd ch and in each ch across, turn. (19 sc)\n"
        "Row 2: Ch 3, 2 dc in first sc, *skip 2 sc, sc in next sc, skip 2 sc, 5 dc in next sc; rep from * across, {}, turn. (19 sts)\n"
    )
    assert counts(check(text.format(words))) == [19, 19]
    other = words.replace("3 dc", "3 sc")
    assert counts(check(text.format(other)))[1] is None


def test_an_article_before_what_is_made_in_a_place() -> None:
    """ "In next sp make a 3-dc cluster, ch 2 and another 3-dc cluster": all of it goes into the space."""
    text = _HEAD + _RING + "Rnd 2: *In next sp make {}, ch 2 and {}, ch 1; rep from * around, join. ({})\n"
    for one, other in (("a 3-dc cluster", "another 3-dc cluster"), ("an hdc", "an hdc")):
        report = check(text.format(one, other, "8 sts"))
        assert counts(report) == [12, 8], one
        assert spaces(report)[1] == {2: 4, 1: 4}
    assert counts(check(text.format("a petal", "a petal", "8 petals")))[1] is None


def test_rows_that_grow_by_several_sorts() -> None:
    """ "Each row adds 2 dc and 1 ch-1 sp" is held to what the rows make; another growth leaves them uncounted."""
    text = _HEAD + (
        "Row 1: In a magic ring: ch 4 (counts as dc and ch 1), dc in ring; turn. (2 dc, 1 ch-1 sp)\n"
        "Row 2: Ch 4 (counts as dc and ch 1), dc in next sp, ch 1, dc in 3rd ch of ch-4; turn. (3 dc, 2 ch-1 sps)\n"
        "Rows 3-4: {} (5 dc, 4 ch-1 sps)\n"
    )
    grown = text.replace("Rows 3-4: {}", "Row 3: Ch 4 (counts as dc and ch 1), [dc in next sp, ch 1] to end, dc in 3rd ch of ch-4; turn. (4 dc)\nRows 4-5: {}")  # fmt: skip
    grown = grown.replace("(5 dc, 4 ch-1 sps)", "(6 dc, 5 ch-1 sps)")
    for words in (
        "Rep Row 3; each row adds 1 dc and 1 ch-1 sp.",
        "Rep Row 3, adding 1 dc and 1 ch-1 sp in each row.",
        "Rep Row 3. Every row grows by 1 st.",
    ):
        assert counts(check(grown.format(words))) == [2, 3, 4, 5, 6], words
    assert counts(check(grown.format("Rep Row 3; each row adds 1 dc and 2 ch-1 sps.")))[3] is None


def test_a_list_of_what_is_skipped_ends_with_a_space() -> None:
    """ "Sk next ch-3 sp, sc and ch-3 sp" passes all three, and so does "skip next ch-3 sp and sc" if no count says otherwise."""
    text = _HEAD + (
        "Rnd 1: Ch 1, *5 sc in ring, ch 3, sc in ring, ch 3; rep from * twice more, join. (18 sc)\n"
        "Rnd 2: Ch 1, *sc in next 5 sc, {}; rep from * around, join. ({} sc)\n"
    )
    for words in ("skip next ch-3 sp, sc and ch-3 sp", "skip (ch-3 sp, sc, ch-3 sp)", "skip ch-3 sp, sc, and ch-3 sp"):
        assert counts(check(text.format(words, 15))) == [18, 15], words
    assert counts(check(text.format("skip next ch-3 sp, sc, skip next ch-3 sp", 18))) == [18, 18]
    for printed in (15, 18):  # passed over too, or worked in the next stitch: the count decides
        assert counts(check(text.format("skip next ch-3 sp and sc", printed))) == [18, printed]
    assert counts(check(text.format("skip next ch-3 sp and sc", 16))) == [18, 15]


def test_a_standing_stitch_brings_its_yarn() -> None:
    """Behind a fastened-off round a standing stitch is where the new yarn begins; a plain one is not."""
    text = (
        _HEAD
        + "Rnd 1: 12 dc in ring, join. Fasten off. (12 dc)\nRnd 2: {} in any dc, sc in each dc around, join. (12 sc)\n"
    )
    assert "yarn-not-joined" not in _rules(text.format("Standing sc"))
    assert "yarn-not-joined" in _rules(text.format("Sc"))


def test_a_standing_raised_stitch_in_uk_terms() -> None:
    """ "Standing rtrf round any tr" is a stitch of the pattern's own terms, and "round" says where it goes."""
    text = (
        "Medal\nUK terms\nAbbreviations: ch chain; dc double crochet; rtrf raised treble front; tr treble\n\n"
        "Round 1: In a magic ring work 12 tr, join. Fasten off. (12 tr)\n"
        "Round 2: Standing rtrf round any tr, 1 rtrf round each tr around, join. ({} rtrf)\n"
    )
    assert counts(check(text.format(12))) == [12, 12]
    assert corrections(check(text.format(12))) == []
    assert _rules(text.format(13), ("correction",)) == ["count-differs"]


def test_a_round_begins_in_the_nth_stitch_of_any_group() -> None:
    """The stitches of that group before the place come last, and need not be worked."""
    text = _HEAD + (
        "Rnd 1: Ch 1, *sc in ring, ch 2, 5 dc in ring, ch 2; rep from * 3 times more, join. Fasten off. (24 sts)\n"
        "Rnd 2: Join yarn with sl st in 3rd dc of any group, ch 1, sc in same st, *ch 4, sc in next sc, ch 4, sc in 3rd dc of next "
        "group; rep from * around, omitting last sc, join. ({} sc)\n"
    )
    assert counts(check(text.format(8))) == [24, 8]
    assert spaces(check(text.format(8)))[1] == {4: 8}
    assert _rules(text.format(9), ("correction",)) == ["count-differs"]


def test_an_edge_stitch_named_and_told() -> None:
    """ "ES = edge stitch: sc in both loops, then cut the yarn" is one sc; two stitches are not taken for one."""
    text = (
        "Pad\nUS terms\nKEY\nch = chain\nsc = single crochet\n{}\n\n"
        "Ch 12.\nRow 1: Sc in 2nd ch from hook and in each ch across. (11 sc)\nRow 2: ES, sc 9, ES. (11 sts)\n"
    )
    assert counts(check(text.format("ES = edge stitch: sc in both loops, then cut the yarn"))) == [11, 11]
    assert counts(check(text.format("ES = edge stitch: sc then hdc in last st")))[1] is None


@pytest.mark.parametrize("way", ["TO MAKE A BLOCK: over a sp, 2 dc in sp, dc in next dc; over a bl, dc in each of next 3 dc.", "Bl = 2 dc in sp, dc in next dc (over a sp); dc in next 3 dc (over a bl)."])  # fmt: skip
def test_blocks_of_filet_over_both_sorts_of_square(way: str) -> None:
    """A block over a space fills it, a block over a block goes on; the print counts all spaces, however they are told."""
    text = (
        f"Filet\nUS terms\nbl(s) - block(s)\nch - chain\ndc - double crochet\nsp(s) - space(s)\n\n{way} "
        "TO MAKE A SPACE: ch 2, skip 2 sts, dc in next dc.\n\n"
        "Ch 17.\nRow 1: Dc in 8th ch from hook, *ch 2, skip 2 ch, dc in next ch; repeat from * across. Turn. (4 sps)\n"
        "Row 2: Ch 5 (counts as dc and ch 2 throughout), dc in next dc, 2 bls, 1 sp. Turn. (2 sps, 2 bls)\n"
        "Row 3: Ch 5, dc in next dc, 1 bl, 2 sps. Turn. ({} sps, 1 bl)\n"
    )
    report = check(text.format(3))
    assert counts(report) == [5, 9, 7]
    assert spaces(report)[1:] == [{2: 2}, {2: 3}]
    assert _rules(text.format(4), ("correction",)) == ["count-differs"]


def test_a_group_named_in_the_repeat_and_not_behind_it() -> None:
    """ "5 dc in next dc (shell made)" in a repeat, and the last one without its name, are four shells."""
    text = (
        _HEAD
        + _RING
        + (
            "Rnd 2: Ch 1, *sc in next dc, 5 dc in next dc (shell made), sc in next dc, 3 sc in next sp; rep from * twice more, "
            "sc in next dc, 5 dc in next dc, sc in next dc, 3 sc in next sp, join. ({} sts, 4 shells)\n"
        )
    )
    assert corrections(check(text.format(44 - 4))) == []
    assert _rules(text.format(41), ("correction",)) == ["count-differs"]


def test_lists_of_abbreviations_under_more_heads() -> None:
    """ "ABBREVIATIONS. ch, chain." and "Abbreviations, US:" are lists: what is not in them is told."""
    rows = (
        "\n\nRnd 1: Ch 3, 11 dc in ring, join. (12 dc)\nRnd 2: *Sc in next dc, sk next dc; rep from * around. (6 sc)\n"
    )
    for listed in (
        "ABBREVIATIONS. ch, chain. dc, double crochet. sc, single crochet. rep, repeat.",
        "Abbreviations, US: ch chain; dc double crochet; sc single crochet; rep repeat",
    ):
        found = check("Mat\n\n" + listed + rows).findings
        assert "section-missing" not in [one.rule for one in found if "abbreviations" in one.message], listed
        assert "abbreviation-undefined" in [one.rule for one in found], listed


def test_a_group_and_its_chain_left_out_together() -> None:
    """One "3 dc in next sp, ch 1" too few on one side of a shawl's row is the cause that is offered."""
    text = _HEAD + (
        "Row 1: In a magic ring: ch 4 (counts as dc and ch 1 throughout), 3 dc in ring, ch 2, 3 dc in ring, ch 1, dc in ring; turn. (8 dc)\n"
        "Row 2: Ch 4, 3 dc in first sp, ch 1, (3 dc, ch 2, 3 dc) in center ch-2 sp, ch 1, 3 dc in last ch-1 sp, ch 1, dc in 3rd ch of "
        "ch-4; turn. (14 dc)\n"
        "Row 3: Ch 4, 3 dc in first sp, ch 1, 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in center ch-2 sp, ch 1, "
        "3 dc in last ch-1 sp, ch 1, dc in 3rd ch of ch-4; turn. (20 dc)\n"
        "Row 4: Ch 4, [3 dc in next ch-1 sp, ch 1] to center ch-2 sp, (3 dc, ch 2, 3 dc) in center ch-2 sp, [ch 1, 3 dc in next ch-1 sp] "
        "to end, ch 1, dc in 3rd ch of ch-4; turn. (26 dc)\n"
    )
    found = [one for one in check(text).findings if one.weight.value == "correction" and one.likely]
    assert "“3 dc in next ch-1 sp, ch 1”" in found[0].likely[0].change


def test_slip_stitches_by_turns_with_others() -> None:
    """Crunch stitch: the slip stitches of a row are worked into by the next, and the print counts them."""
    text = _HEAD + (
        "Ch 13.\nRow 1: Sl st in 2nd ch from hook, *hdc in next ch, sl st in next ch; rep from * to last ch, hdc in last ch, turn. (12 sts)\n"
        "Row 2: Ch 1, *sl st in next hdc, hdc in next sl st; rep from * across, turn. (12 sts)\nRow 3: Rep Row 2. ({} sts)\n"
        "Row 4: Ch 1, sc in each st across. (12 sc)\n"
    )
    assert counts(check(text.format(12))) == [6, 6, 6, 12]
    assert _rules(text.format(11), ("correction",)) == ["count-differs"]


def test_where_post_stitches_of_a_called_row_go() -> None:
    """ "Rep Row 2, working each FPdc around the FPdc 2 rows below" is that row; other work behind it is not passed over."""
    text = _HEAD + (
        "Ch 13.\nRow 1: Hdc in 3rd ch from hook and in each ch across, turn. (11 hdc)\n"
        "Row 2: Ch 1, hdc in next 4 sts, FPdc around next st, hdc in next st, FPdc around next st, hdc in last 4 sts, turn. (9 hdc, 2 FPdc)\n"
        "Row 3: Ch 1, hdc in each st across, turn. (11 hdc)\nRow 4: Rep Row 2, {}. ({} hdc, 2 FPdc)\n"
    )
    for words in ("working each FPdc around the FPdc 2 rows below", "but work all FPdc around FPdc of Row 2"):
        assert counts(check(text.format(words, 9))) == [11] * 4, words
        assert _rules(text.format(words, 8), ("correction",)) == ["count-differs"]
    for words in (
        "working each hdc around the FPdc 2 rows below",
        "working each FPdc around the FPdc 2 rows below and 1 more",
    ):
        assert counts(check(text.format(words, 9)))[3] is None, words


def test_the_name_of_a_stitch_before_its_recipe() -> None:
    """ "V-st: V stitch, (dc, ch 1, dc) in same place" defines what a V-st is."""
    text = (
        "Scarf\nUS terms\nAbbreviations\nch: chain\ndc: double crochet\nV-st: {}\n\n"
        "Ch 12.\nRow 1: Dc in 4th ch from hook (counts as 2 dc) and in each ch across, turn. (10 dc)\n"
        "Row 2: Ch 3 (counts as dc), [skip next 2 dc, V-st in next dc] twice, skip next 2 dc, dc in top of ch, turn. (6 dc, 2 ch-1 sps)\n"
    )
    for body in ("V stitch, (dc, ch 1, dc) in same place", "a V-stitch, that is (dc, ch 1, dc) in one st"):
        assert counts(check(text.format(body))) == [10, 6], body
    assert counts(check(text.format("a stitch like a V")))[1] is None


def test_a_chain_behind_the_full_name_of_a_colour() -> None:
    """ "With cream cotton, ch 13 loosely." begins the piece; "With RS facing" does not."""
    row = "\nRow 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\n"
    for words in ("With cream cotton, ch 13.", "Using colour A, 13 ch loosely.", "Using main color make 13 ch."):
        assert counts(check(_HEAD + words + row)) == [12], words
    assert counts(check(_HEAD + "With right side facing you, ch 13." + row)) == [None]


def test_a_row_that_a_picot_opens() -> None:
    """ "Ch 3, sl st in 3rd ch from hook, sc in each sc across" begins with a picot; with work in the ring it is a ring."""
    text = (
        _HEAD
        + "Ch 14.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (13 sc)\nRow 2: Ch 3, sl st in 3rd ch from hook, {}. ({} sc)\n"
    )
    words = "*sc in next 4 sc, ch 3, sl st in 3rd ch from hook; rep from * to last sc, sc in last sc"
    assert counts(check(text.format(words, 13))) == [13, 13]
    assert _rules(text.format(words, 12), ("correction",)) == ["count-differs"]
    assert counts(check(_HEAD + "Rnd 1: Ch 4, sl st in 4th ch from hook, ch 3, 11 dc in ring, join. (12 dc)\n")) == [12]


def test_a_row_below_told_by_its_number() -> None:
    """In Round 3 "skip 2 sc of Round 2" passes stitches of the row below; of a round before it, all are taken from there."""
    head = (
        _HEAD
        + "Round 1: 10 sc in ring, join. (10 sc)\nRound 2: Ch 1, *2 sc in next sc, sc in next sc; rep from * around, join. (15 sc)\n"
    )
    text = head + "Round 3: Ch 1, *{}; rep from * around, join. ({} sc)\n"
    for words in ("ch 3, skip 2 sc of Round 2, sc in next sc", "ch 3, skip 2 sc, sc in next sc of Round 2"):
        assert counts(check(text.format(words, 5))) == [10, 15, 5], words
        assert _rules(text.format(words, 6), ("correction",))[0] in ("count-differs", "repeat-does-not-fit")
    behind = (
        head
        + "Round 3: Ch 1, sc in each sc around, join. (15 sc)\nRound 4: Ch 1, *{}; rep from * around, join. (5 sc)\n"
    )
    assert counts(check(behind.format("ch 3, skip 2 sc of Round 2, sc in next sc of Round 2")))[3] == 5
    assert counts(check(behind.format("ch 3, skip 2 sc of Round 2, sc in next sc")))[3] is None


def test_rows_again_until_so_many_blocks_are_left() -> None:
    """ "Rep Row 4 until 1 block remains" counts blocks, and not stitches."""
    text = _HEAD + (
        "Row 1: Ch 6, dc in 4th, 5th and 6th ch from hook; turn. (1 block)\n"
        "Row 2: Ch 6, dc in 4th, 5th and 6th ch from hook, *sl st in next ch-3 sp, ch 3, 3 dc in same sp; rep from * across; turn. (2 blocks)\n"
        "Row 3: Rep Row 2. (3 blocks)\n"
        "Row 4: Sl st in each of first 3 dc and in ch-3 sp, ch 3, 3 dc in same sp, *sl st in next ch-3 sp, ch 3, 3 dc in same sp; rep from * "
        "to last block, sl st in ch-3 sp of last block; turn. (2 blocks)\n{}\n"
    )
    for words in ("Row 5: Rep Row 4 until 1 block remains.", "Row 5: Rep Row 4 until only 1 block is left."):
        assert counts(check(text.format(words))) == [3, 6, 9, 6, 3], words


def test_a_list_in_sentences_and_what_is_told_behind_a_name() -> None:
    """ "Stitches used (US). Chain (ch), … double crochet (dc). Also repeat (rep) and stitch (st)." and "FPdc. Yarn over, …" define all."""
    text = (
        "Mitt\n\nStitches used (US). Chain (ch), single crochet (sc), double crochet (dc). Also repeat (rep) and stitch (st).\n\n"
        "FPdc. Yarn over, insert hook from the front around the post of the stitch, and finish as a dc.\n\n"
        "Rnd 1: 12 dc in ring. (12 dc)\nRnd 2: *FPdc around next st, sc in next st; rep from * around. (12 sts)\nRnd 3: Hdc in each st. (12)\n"
    )
    found = [one.message for one in check(text).findings if one.rule == "abbreviation-undefined"]
    assert len(found) == 1
    assert "Hdc" in found[0]


@pytest.mark.parametrize("name", ["BPdc (back post double crochet)", "BPdc (back post double crochet).", "BPdc"])
def test_a_stitch_told_behind_its_name_without_a_sign(name: str) -> None:
    """ "BPdc (back post double crochet) Yarn over, …" explains the stitch as "BPdc: …" does."""
    text = (
        f"Mitt\n\nSTITCH EXPLANATIONS\n{name} Yarn over, insert hook from back around post of st, draw up a loop, (yarn over, draw through 2 loops) twice.\n\n"
        "ABBREVIATIONS (US)\ndc = double crochet\nrnd = round\nst(s) = stitch(es)\n\n"
        "MITT\nRnd 1: 12 dc in ring. (12 dc)\nRnd 2: BPdc around each st. (12 sts)\nRnd 3: Hdc in each st. (12)\n"
    )
    report = check(text)
    assert counts(report) == [12, 12, 12]
    found = [one.message for one in report.findings if one.rule == "abbreviation-undefined"]
    assert len(found) == 1
    assert "Hdc" in found[0]
