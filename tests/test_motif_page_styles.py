"""How pages of motif patterns are set and worded: titles behind labels, steps in bullets, names with figures (common practice, no source)."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts, mades, outcomes, spaces, worked_rows


def _rules(text: str, weights: tuple[str, ...] = ("correction",)) -> list[str]:
    return [rule for rule, _ in all_findings(check(text), weights)]


_STEPS = (
    "Trivet\n\nUS terms\n\n{0} 1{1}\n\n- Magic ring.\n- Ch 1, 8 sc in the ring, sl st in first sc.\n\nYou now have 8 sc.\n\n"
    "{0} 2{2}\n\n- Ch 1.\n- 2 sc in each st around, sl st in first sc.\n\n{3}\n"
)


@pytest.mark.parametrize(
    ("label", "first", "second"),
    [
        ("**Round", "**", "**"),
        ("### Round", ": Magic Ring", ": The Increases"),
        ("**Round", ": Magic Circle**", ": Doubling Up**"),
        ("Round", " – The Center", " – A Wider Center"),
    ],
)
def test_steps_below_a_label_with_a_title_are_its_row(label: str, first: str, second: str) -> None:
    """The title is no work, the steps below are, and so is the count in a line of its own held against them."""
    text = _STEPS.format(label, first, second, "Stitch count: 16 sc")
    assert counts(check(text)) == [8, 16]
    assert outcomes(check(text)) == ["agrees", "agrees"]
    assert outcomes(check(text.replace("count: 16", "count: 18"))) == ["agrees", "differs"]


@pytest.mark.parametrize("words", ["You should have 12 squares.", "Total: 2 hours", "You now have a coaster."])
def test_a_line_that_counts_no_stitches_is_no_count(words: str) -> None:
    """What is said of pieces and time below a row is not held against it."""
    text = _STEPS.format("Round", "", "", words)
    assert outcomes(check(text)) == ["agrees", "not-stated"]
    assert _rules(text, ("correction", "query")) == []


@pytest.mark.parametrize("words", ["Sc Around", "Repeat Round One", "Same As Before", "2 Sc", "Decrease Twice", "Join"])
def test_words_of_work_behind_a_label_are_no_title(words: str) -> None:
    """What may be work stays the row's own words."""
    text = _STEPS.format("Round", ": Center", f": {words}", "")
    assert [row.row.label.words for row in worked_rows(check(text))] == ["Round 1", "Round 2"]
    body = [row.row for row in worked_rows(check(text))][1]
    assert body.steps and words.split()[0] in text[body.steps[0].span.start : body.span.end]


@pytest.mark.parametrize("name", ["3-ch picot", "3ch picot", "3 ch picot", "3-chain picot", "2sc-knot"])
def test_a_name_may_begin_with_a_figure(name: str) -> None:
    """The pattern's own stitch is its whole name; the figure in it counts nothing."""
    text = (
        "Trim\nUS terms\n\nRnd 1: 12 sc in ring, sl st in first sc. (12 sc)\n"
        f"Rnd 2: Ch 1, (sc, {name}, sc) in each sc around, sl st in first sc. (24 sc)\n\n"
        f"Special stitch\n{name}: ch 3, sl st in first of these 3 ch.\n"
    )
    assert counts(check(text)) == [12, 24]
    assert outcomes(check(text)) == ["agrees", "agrees"]


def test_a_figure_before_a_name_still_counts() -> None:
    """ "2 shells" of a named stitch are two, also where another name begins with that figure."""
    text = (
        "Trim\nUS terms\n\nShell: 3 dc in st named.\n2dc-fan: 2 dc in st named.\n\nRnd 1: 6 sc in ring, sl st in first sc. (6 sc)\n"
        "Rnd 2: Ch 1, *shell in next sc, 2dc-fan in next sc; rep from * around, sl st in first dc. (15 dc)\n"
    )
    assert counts(check(text)) == [6, 15]


_CHEQUER = (
    "Chequer\nUS terms\n\nAbbreviations\nch = chain\nrep = repeat\n{}\nst(s) = stitch(es)\ntks = Tunisian knit stitch\ntss = Tunisian simple stitch\n\n"
    "Ch 11.\nRow 1: Pull up a loop in 2nd ch from hook and in each ch across, {}. (11 sts)\n"
    "Row 2: *Tks in next st, tss in next st; rep from * to end, {}. (11 sts)\n"
)


@pytest.mark.parametrize(
    ("entry", "word"),
    [
        ("RtP = return pass", "RtP"),
        ("Rtn: return pass - ch 1, *yo, draw through 2 loops; rep from * to end", "Rtn"),
        ("WO: yo and pull through 1 loop, [yo, pull through 2 loops] until 1 loop remains", "WO"),
    ],
)
def test_a_return_pass_by_any_name(entry: str, word: str) -> None:
    """What works the loops off makes no stitch, whatever the pattern's list calls it."""
    text = _CHEQUER.format(entry, word, word)
    assert counts(check(text)) == [11, 11]
    assert _rules(text) == []
    assert outcomes(check(text.replace("end, " + word + ". (11", "end, " + word + ". (12")))[1] == "differs"


def test_a_stitch_that_is_drawn_up_is_no_return_pass() -> None:
    """A word whose recipe draws a loop up in the work stays a stitch."""
    text = _CHEQUER.format(
        "Dot: insert hook in next st, yo and pull up a loop, yo, pull through 1 loop", "return", "Dot"
    )
    assert mades(check(text))[1].by_kind["dot"] == 1


_WHEEL = (
    "Wheel\nUS terms\n\nRnd 1: Ch 3 (counts as dc here and throughout), 15 dc in ring, join to top of ch-3. (16 dc)\n"
    "Rnd 2: Ch 3, dc in next 2 dc, *sc in next dc, dc in next 3 dc; rep from * twice more, sc in last dc, join to top of ch-3. (12 dc, 4 sc)\n"
    "Rnd 3: Ch 3, dc in next 2 dc, *ch 5, dc in next 3 dc; rep from * {}, join to top of ch-3. (12 dc, 4 ch-5 loops)\n"
)


@pytest.mark.parametrize("rest", ["around, ending with ch 5", "twice more, ch 5", "across to last sc, ch 5"])
def test_the_last_loop_stands_over_what_the_others_do(rest: str) -> None:
    """ "dc in next 3 dc" passes the sc below the loops; that below the last loop is left in the same way."""
    text = _WHEEL.format(rest)
    assert spaces(check(text))[2] == {5: 4}
    assert _rules(text, ("correction", "query")) == []


def test_a_stitch_that_the_other_loops_do_not_pass_is_left_over() -> None:
    """Two sc below the last loop where the others stand over one."""
    text = _WHEEL.format("twice more, ch 5").replace("15 dc in ring", "16 dc in ring").replace("(16 dc)", "(17 dc)")
    text = text.replace("sc in last dc, join", "sc in last 2 dc, join").replace("4 sc)", "5 sc)")
    assert "places-left-over" in _rules(text, ("correction", "query"))


def test_the_longest_form_of_a_column_is_an_entry_too() -> None:
    """ "sl st slip stitch", set apart by one space where all others are by more."""
    text = (
        "Dot\nUS terms\n\nAbbreviations\nch    chain\nrep   repeat\nrnd   round\nsc    single crochet\nsl st slip stitch\nsp(s) space(s)\n\n"
        "Rnd 1: Ch 4, sl st in first ch to form a ring; ch 1, *sc in ring, ch 2; rep from * 5 times more; sl st in first sc. (6 sc, 6 ch-2 sps)\n"
    )
    assert _rules(text) == []
    assert "abbreviation-undefined" in _rules(text.replace("sl st slip stitch\n", ""))


_BLOOM = (
    "Bloom\nUS terms\n\nRnd 1: 8 sc in ring, sl st in first sc. (8 sc)\n"
    "Rnd 2: Ch 1, *sc in next sc, ch 3; rep from * 7 times more, sl st in first sc. (8 sc, 8 ch-3 sps)\n"
    "Rnd 3: Ch 1, (sc, 3 dc, sc) in each ch-3 sp around, sl st in first sc. (40 sts)\n"
    "Rnd 4: {} ch 1, *BPsc around next sc of Rnd 2, ch 5; rep from * {} times more, sl st in first BPsc. (8 BPsc, 8 ch-5 sps)\n"
    "Rnd 5: Ch 1, (sc, 5 dc, sc) in each ch-5 sp around, sl st in first sc. ({} sts)\n"
)


@pytest.mark.parametrize("held", ["Behind the petals:", "Once more behind the petals,", "Working again behind petals,"])
def test_behind_the_petals(held: str) -> None:
    """How the work is held, before work into an older round."""
    assert counts(check(_BLOOM.format(held, 7, 56))) == [8, 8, 40, 8, 56]


def test_behind_the_petals_of_no_round_is_not_known() -> None:
    """Where no older round is named, it is not said what is worked into."""
    text = _BLOOM.format("Behind the petals:", 7, 56).replace("BPsc around next sc of Rnd 2", "sc in next st")
    assert counts(check(text))[3] is None


def test_one_repeat_too_few_is_found_once() -> None:
    """The round behind it agrees with as many groups as are printed, and is worked on those."""
    text = _BLOOM.format("Working behind petals,", 6, 56)
    assert counts(check(text)) == [8, 8, 40, 7, 56]
    assert all_findings(check(text), ("correction", "query")) == [("count-differs", 7)]
    assert counts(check(text.replace("(56 sts)", "(49 sts)")))[4] == 49


@pytest.mark.parametrize("words", ["Do not FO yet.", "Don't fasten off yet.", "Do not cut yarn yet."])
def test_not_fastened_off_yet(words: str) -> None:
    """ "yet" adds nothing."""
    text = f"Cloth\nUS terms\n\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. {words} (10 sc)\n"
    assert counts(check(text)) == [10]


def test_across_the_last_side() -> None:
    """The last side of a square goes to the round's end, or to the corner that is named behind it."""
    text = (
        "Tile\nUS terms\n\nRnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 times more, join to top of ch-3. (12 dc, 4 ch-2 sps)\n"
        "Rnd 2: Ch 3, dc in next 2 dc, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each dc to next ch-2 sp; rep from * 2 times more, (2 dc, ch 2, 2 dc) in last ch-2 sp, join to top of ch-3. (28 dc, 4 ch-2 sps)\n"
        "Rnd 3: Ch 1, sc in same st, sc in next 4 dc, *3 sc in next ch-2 sp, sc in each dc across next side; rep from * 2 times more, 3 sc in last ch-2 sp, sc in each dc across the last side, sl st in first sc. (40 sc)\n"
    )
    assert counts(check(text)) == [12, 28, 40]


_TILES = (
    "Scrap cloth\nUS terms\n\nA tile is ch 3 and 3 dc. The ch 3 makes a ch-3 sp.\n\n"
    "Row 1: Ch 6, dc in 4th ch from hook, dc in next 2 ch. (1 tile)\n"
    "Row 2: Ch 6, turn, dc in 4th ch from hook, dc in next 2 ch, sl st in ch-3 sp of next tile, ch 3, 3 dc in same sp. (2 tiles)\n"
    "Rows 3-5: Ch 6, turn, dc in 4th ch from hook, dc in next 2 ch, (sl st in ch-3 sp of next tile, ch 3, 3 dc in same sp) across. (5 tiles in Row 5)\n"
    "Row 6: Turn, sl st in next 3 dc and in ch-3 sp, ch 3, 3 dc in same sp, (sl st in ch-3 sp of next tile, ch 3, 3 dc in same sp) 3 times, sl st in ch-3 sp of last tile. (4 tiles)\n"
    "{}\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "Rows 7-9: As Row 6, but with one tile less in each row.",
        "Rows 7-9: Rep Row 6, making one tile fewer in each row.",
    ],
)
def test_a_row_called_with_one_tile_fewer_each_time(words: str) -> None:
    """The counted repeat is worked once fewer in each row, and the chain of a tile is no turning chain."""
    text = _TILES.format(words)
    assert counts(check(text)) == [3, 6, 9, 12, 15, 12, 9, 6, 3]
    assert _rules(text, ("correction", "query")) == []


def test_two_tiles_fewer_do_not_come_out() -> None:
    """A row that can't lose as many as it is said to is not counted."""
    text = _TILES.format("Rows 7-9: As Row 6, but with two tiles less in each row.")
    assert counts(check(text))[6:] == [6, None, None]


@pytest.mark.parametrize("told", ["7 sts after row 6", "(7 sc after Row 6)", "7 sc by row 6"])
def test_a_count_after_a_row(told: str) -> None:
    """The count is that of the range's last row; told of a row before it, it is not held against the last."""
    text = (
        "Flag\nUS terms\n\nCh 2.\nRow 1: 2 sc in 2nd ch from hook, turn. (2 sc)\n"
        f"Rows 2-6: Ch 1 (does not count as a st), 2 sc in first sc, sc in each sc to end, turn. {told}.\n"
    )
    assert counts(check(text)) == [2, 3, 4, 5, 6, 7]
    assert outcomes(check(text))[-1] == "agrees"
    assert _rules(text.replace("7 s", "8 s")) == ["count-differs"]
    assert _rules(text.replace("7 s", "4 s").replace("ow 6.", "ow 3.").replace("ow 6).", "ow 3).")) == []


@pytest.mark.parametrize("into", ["into next 2-ch. sp. work", "into each 2-ch. sp. work"])
def test_a_verb_behind_the_stop_of_a_short_word(into: str) -> None:
    """ "sp." ends no sentence where its verb comes behind it in small letters, nor is it one more place for the stitch before."""
    text = (
        "Frame\nUK terms\n\n1st round: 3 ch. (counts as 1 tr.), 1 tr. into ring, * 2 ch., 2 tr. into ring; rep. from * 4 times more, 2 ch., s.s. to top of 3 ch. (12 tr.)\n"
        "2nd round: 3 ch. (counts as 1 tr.), 1 tr. into next tr., * into next 2-ch. sp. work 1 tr., 2 ch. and 1 tr., 1 tr. into each of next 2 tr.; rep. from * 4 times more, into last sp. work 1 tr., 2 ch. and 1 tr., s.s. to top of 3 ch. (24 tr.)\n"
    )
    assert counts(check(text)) == [12, 24]
    if "each" in into:
        text = text.replace("1 tr. into next tr., * into", f"1 tr. into next tr., {into.removesuffix(' work')}, * into")
        assert counts(check(text))[1] != 24


def test_a_run_that_stops_short_of_the_place_the_round_began_in() -> None:
    """The last side of a square ends before the corner in which the round began."""
    text = (
        "Patch\nUS terms\n\nRnd 1: Ch 1, [sc, ch 2] 4 times in ring, sl st in first sc. (4 sc, 4 ch-2 sps)\n"
        "Rnd 2: Sl st in ch-2 sp, ch 1, [(sc, ch 2, sc) in ch-2 sp, ch 1, skip 1 sc] 4 times, sl st in first sc. (8 sc, 4 ch-1 sps, 4 ch-2 sps)\n"
        "Rnds 3-5: Sl st in ch-2 sp, ch 1, *(sc, ch 2, sc) in ch-2 sp, [ch 1, skip 1 sc, sc in ch-1 sp] to last sc before ch-2 sp, ch 1, skip 1 sc; rep from * 3 times more, sl st in first sc. (12, 16, 20 sc)\n"
    )
    assert counts(check(text)) == [4, 8, 12, 16, 20]
    assert spaces(check(text))[-1] == {1: 16, 2: 4}


def test_a_beginning_cluster_is_one_of_the_clusters() -> None:
    """ "Beg cl" told in full, and "cl" only by its meaning: the count is of both."""
    text = (
        "Sun\nUS terms\n\nBeg cl: ch 2, dc2tog in same sp.\n\nRnd 1: Ch 4 (counts as dc and ch 1), [dc in ring, ch 1] 9 times, join to 3rd ch of ch-4. (10 dc, 10 ch-1 sps)\n"
        "Rnd 2: Sl st in ch-1 sp, beg cl in same sp, ch 3, [cl in next ch-1 sp, ch 3] 9 times, join to top of beg cl. (10 cl, 10 ch-3 sps)\n"
    )
    assert counts(check(text)) == [10, 10]
    assert _rules(text) == []
    assert _rules(text.replace("(10 cl", "(12 cl")) == ["count-differs"]


def test_a_pattern_in_full_words_needs_no_list() -> None:
    """A list of abbreviations is missed only where the rows have abbreviations in them."""
    text = (
        "Dot\nUS terms\n\nRound 1: Chain 4. Work 11 double crochet into the fourth chain from the hook (the skipped chains count as a double crochet). "
        "Slip stitch to the top of the chain to join. You have 12 double crochet.\n"
    )
    assert not any("abbreviations" in one.message for one in check(text).findings)
    short = text.replace("11 double crochet", "11 dc")
    assert any("abbreviations" in one.message for one in check(short).findings)


def test_the_title_may_tell_the_terms() -> None:
    """ "(UK)" behind the title: six more dc a round lie flat, for they are US single crochet."""
    text = "Pebble coaster {}\n\nR1 - 6 dc in a magic ring [6]\nR2 - 2 dc in each st [12]\nR3 - (1 dc, 2 dc in next st) x 6 [18]\nR4 - (2 dc, 2 dc in next st) x 6 [24]\n"
    for title in ("(UK)", "– UK version", "[UK]"):
        assert check(text.format(title)).terms.terms == "uk"
    assert check(text.format("for us")).terms.terms == "us"
    assert "may-not-lie-flat" not in _rules(text.format("(UK)"), ("query",))


def test_a_round_begins_in_the_first_stitch_of_a_group() -> None:
    """ "Join in first dc of any 5-dc group": the gaps between the groups come where the groups end."""
    text = (
        "Rosette\nUS terms\n\nRnd 1: Ch 3 (counts as dc), dc in ring, ch 1, (2 dc, ch 1) 4 times in ring, join to top of ch-3. (10 dc, 5 ch-1 sps)\n"
        "Rnd 2: Sl st in next dc and in ch-1 sp, (ch 3, 4 dc) in same sp, 5 dc in each of next 4 ch-1 sps, join to top of ch-3. Fasten off. (25 dc)\n"
        "Rnd 3: Join with sc in {} dc of any 5-dc group, sc in next 4 dc, tr between groups, *sc in next 5 dc, tr between groups; rep from * 3 times more, join in first sc. (25 sc, 5 tr)\n"
    )
    assert counts(check(text.format("first"))) == [10, 25, 30]
    assert _rules(text.format("first"), ("correction", "query")) == []


def test_a_stitch_that_is_made_is_an_entry_of_the_list() -> None:
    """ "MB   make bobble" is no heading, and its bobbles are counted by that name."""
    text = (
        "Patch\nUS terms\n\nAbbreviations\nch     chain\nMB     make bobble\nrep    repeat\nsc     single crochet\nst(s)  stitch(es)\n\n"
        "MB: work 4 dc in next st, leaving last loop of each on hook, yarn over and draw through all 5 loops.\n\nCh 10.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (9 sc)\n"
        "Row 2: Ch 1, sc in first st, *MB, sc in next st; rep from * across, turn. (5 sc, {} bobbles)\n"
    )
    assert counts(check(text.format(4))) == [9, 9]
    assert _rules(text.format(4), ("correction", "query")) == []
    assert _rules(text.format(5)) == ["count-differs"]


def test_a_join_in_the_skipped_chains() -> None:
    """ "15 dc in 4th ch from hook, join in top of ch-3": those skipped are that ch-3."""
    text = "Dot\nUS terms\n\nRnd 1: Ch 4, 11 dc in 4th ch from hook (skipped chs count as dc), sl st in top of ch-{} to join. (12 dc)\n"
    assert _rules(text.format(3), ("correction", "query")) == []
    assert _rules(text.format(2), ("query",)) == ["join-not-there"]


_INSET = (
    "Tile\nUS terms\n\nAbbreviations: ch = chain; Mdc = mosaic double crochet; rep = repeat; sc = single crochet; sp = space; st(s) = stitch(es)\n\n"
    "Ch 12.\nRow 1: Sc in 2nd ch from hook and in each ch across; turn. (11 sc)\n"
    "Row 2: Ch 1, sc in first st, *ch 1, skip next st, sc in next st; rep from * across; turn. (6 sc, 5 ch-1 sp)\n"
    "Row 3: Ch 1, sc in first st, *Mdc, sc in next st; rep from * across; turn.{}\n"
)


def test_a_mosaic_stitch_takes_the_place_of_the_chain_before_it() -> None:
    """A long stitch with no place told stands over the chain loop where one lies there, counted or not."""
    assert counts(check(_INSET.format(" (6 sc, 5 Mdc)"))) == [11, 6, 11]
    assert counts(check(_INSET.format(""))) == [11, 6, 11]
    assert _rules(_INSET.format(" (6 sc, 5 Mdc)"), ("correction", "query")) == []
    assert _rules(_INSET.format(" (6 sc, 6 Mdc)")) == ["count-differs"]


def test_lower_stitches_do_not_go_into_loops_unsaid() -> None:
    """Where all stitches are alike, those with no place told go into stitches: too few of them are missed."""
    text = _INSET.format(" (11 sc)").replace("*Mdc, sc", "*sc, sc")
    assert counts(check(text))[2] != 11


@pytest.mark.parametrize("linked", ["of Row 1 BLK", "of BLK of Row 1", "of first BLK"])
def test_blocks_turned_before_they_are_linked(linked: str) -> None:
    """ "…, dc in next 2 ch, turn, sl st in ch-3 sp of Row 1 BLK": the turn leads on to the row below."""
    text = (
        "Strip\nUS terms\n\nRow 1: Ch 6, dc in 4th ch from hook, dc in next 2 ch – 1 BLK.\n"
        f"Row 2: Ch 6, dc in 4th ch from hook, dc in next 2 ch, turn, sl st in ch-3 sp {linked}, ch 3, 3 dc in same ch-3 sp – 2 BLKs.\n"
        "Row 3: Ch 6, dc in 4th ch from hook, dc in next 2 ch, turn, (sl st in next ch-3 sp, ch 3, 3 dc in same ch-3 sp) 2 times – 3 BLKs.\n"
    )
    assert counts(check(text)) == [3, 6, 9]
    assert _rules(text, ("correction", "query")) == []
    assert _rules(text.replace("3 BLKs", "4 BLKs")) == ["count-differs"]
