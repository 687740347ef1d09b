"""What is said beside the work of motifs: how a picot is made, beads, spaces passed, where a round began (no source)."""

from __future__ import annotations

from helpers import all_findings, check, counts, spaces


def _rules(text: str, weights: tuple[str, ...] = ("correction", "query")) -> list[str]:
    return [rule for rule, _ in all_findings(check(text), weights)]


_HEAD = "Trinket\nUS terms\nCh 3 counts as dc, ch 1 does not count.\n\n"


def test_how_a_picot_is_made_stands_in_brackets_behind_it() -> None:
    """ "picot (ch 3, sl st in 3rd ch from hook)" is one picot; the same bracket behind a stitch is not passed over."""
    text = _HEAD + (
        "Rnd 1: 24 sc in ring, join. (24 sc)\nRnd 2: Ch 1, *sc in next 4 sts, {} (ch 3, sl st in 3rd ch from hook); rep from * around, join. (24 sc)\n"
    )
    assert counts(check(text.format("picot"))) == [24, 24]
    assert _rules(text.format("picot"), ("correction",)) == []
    assert counts(check(text.format("sc in next 2 sts")))[1] is None


def test_a_bead_brought_up_is_no_work() -> None:
    """ "Slide a bead up" changes no count; the stitches around it are counted."""
    text = (
        _HEAD
        + "Ch 9.\nRow 1: Sc in 2nd ch and each ch across. (8 sc)\nRow 2: Ch 1, turn. *Sc in next st, slide a bead up, sc in next st; rep from * across. ({} sc)\n"
    )
    assert counts(check(text.format(8))) == [8, 8]
    assert _rules(text.format(9), ("correction",)) == ["count-differs"]


def test_spaces_passed_by_a_run_over_stitches() -> None:
    """ "Sc in each dc around, skipping ch-2 sps": all stitches are worked, to the last one."""
    text = _HEAD + (
        "Rnd 1: Ch 3, 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join. (12 dc)\nRnd 2: Ch 1, sc in each dc around, {}, join. ({} sc)\n"
    )
    for words in ("skipping ch-2 sps", "skipping each ch-2 sp", "skipping the corner spaces"):
        assert counts(check(text.format(words, 12))) == [12, 12], words
        assert _rules(text.format(words, 11), ("correction",)) == ["count-differs"]


def test_the_corner_where_a_round_began() -> None:
    """ "2 dc in beginning corner sp" at a round's end goes into the space that the round began in."""
    text = _HEAD + (
        "Rnd 1: Ch 3, 2 dc in ring, [ch 2, 3 dc in ring] 3 times, hdc in top of ch-3 (counts as last ch-2 sp). (12 dc)\n"
        "Rnd 2: Ch 3, dc in sp formed by joining hdc, dc in next 3 dc, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 3 dc; rep from * 2 more "
        "times, 2 dc in beginning corner sp, hdc in top of ch-3. ({} dc)\n"
    )
    assert counts(check(text.format(28))) == [12, 28]
    assert spaces(check(text.format(28)))[1] == {2: 4}
    assert _rules(text.format(30), ("correction",)) == ["count-differs"]


def test_repeat_once_is_once_more() -> None:
    """ "Rep from * once": one pass and one more, for one in all would be no repeat."""
    text = (
        _HEAD
        + "Rnd 1: Ch 5 (counts as dc and ch 2), *2 dc in ring, ch 2; rep from * once, dc in ring, sl st in 3rd ch of ch-5. ({} dc)\n"
    )
    assert counts(check(text.format(6))) == [6]
    assert "repeat-ambiguous" not in _rules(text.format(6), ("correction", "query", "style"))
    assert _rules(text.format(4), ("correction",)) == ["count-differs"]


def test_how_often_a_group_is_worked_stands_behind_its_place() -> None:
    """ "(ch 2, 3 dc) in ring 3 times": the group is worked so often; a number that speaks of more is not taken for that."""
    text = _HEAD + "Rnd 1: Ch 3, 2 dc in ring, (ch 2, 3 dc) in ring {}, ch 2, join. ({} dc)\n"
    assert counts(check(text.format("3 times", 12))) == [12]
    assert spaces(check(text.format("3 times", 12))) == [{2: 4}]
    assert _rules(text.format("twice", 14), ("correction",)) == ["count-differs"]
    assert counts(check(text.format("3 times more", 12))) == [None]


def test_each_stitch_but_the_last() -> None:
    """ "2 sc in each st but the last": the run stops short of it."""
    text = (
        _HEAD
        + "Ch 9.\nRow 1: Sc in 2nd ch and each ch across. (8 sc)\nRow 2: Ch 1, turn, 2 sc in each st {}, sc in last {}. ({} sc)\n"
    )
    assert counts(check(text.format("but the last", "st", 15))) == [8, 15]
    assert counts(check(text.format("except the last 2", "2 sts", 14))) == [8, 14]
    assert _rules(text.format("but the last", "st", 16), ("correction",)) == ["count-differs"]


_LOOPS = _HEAD + (
    "Rnd 1: 18 sc in ring, join. (18 sc)\nRnd 2: *Ch 4, sk 2 sc, sl st in next sc; rep from * {}.\n"
    "Rnd 3: (Sc, 3 dc, sc) in each ch-4 lp around. (30 sts)\n"
)


def test_loops_fastened_with_slip_stitches_use_the_round_below() -> None:
    """Loops held down by slip stitches: how often they are worked shows in the places; too few leave some over."""
    assert spaces(check(_LOOPS.format("5 times")))[1] == {4: 6}
    assert _rules(_LOOPS.format("5 times")) == []
    assert "places-left-over" in _rules(_LOOPS.format("3 times more"))


def test_an_open_number_of_times_gives_no_count() -> None:
    """ "Rep from * 3 times" that neither the places nor a count settles: the row is asked about and not counted."""
    text = _HEAD + "Rnd 1: 12 sc in ring. (12 sc)\nRnd 2: *Ch 3, dc in next sc; rep from * {} times.\n"
    assert counts(check(text.format(12))) == [12, 12]
    assert counts(check(text.format(11))) == [12, 12]
    assert counts(check(text.format(5))) == [12, None]
    assert "repeat-ambiguous" in _rules(text.format(5))
