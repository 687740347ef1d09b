"""Wordings of motifs that were once miscounted or passed over (worked by hand; common practice, no source)."""

from __future__ import annotations

from helpers import all_findings, check, counts, spaces


def _rules(text: str, weights: tuple[str, ...] = ("correction", "query")) -> list[str]:
    return [rule for rule, _ in all_findings(check(text), weights)]


_LAYERS = (
    "Windmill\nUS terms\n\nRnd 1: (2 dc, ch 1) 4 times in magic ring, sl st in first dc. (8 dc, 4 ch-1 sps)\n"
    "Rnd 2: 5 dc in each ch-1 sp around, sl st in first dc. (20 dc)\n"
    "Rnd 3: Ch 1 (not a st), [sc in next 5 dc, {} between 2 petals of Rnd 2] 4 times, sl st in first sc. (24 sc)\n"
)


def test_a_long_stitch_into_an_earlier_gap_covers_no_stitch() -> None:
    """A long stitch between the groups of an earlier round lies between two stitches of the one below."""
    text = _LAYERS.format("long sc")
    assert counts(check(text)) == [8, 20, 24]
    assert "repeat-does-not-fit" not in _rules(text)
    assert _rules(text.replace("(24 sc)", "(25 sc)"), ("correction",)) == ["count-differs"]


_TILE = (
    "Tile\nUS terms. Ch 1 never counts.\n\nRnd 1: 6 sc in magic ring, sl st in first sc. (6 sc)\n"
    "Rnd 2: Ch 1, 3 sc in each sc around, sl st in first sc. (18 sc)\n"
    "Rnd 3: Ch 1, sc in first st, 3 sc in next st, *sc in next 2 sts, 3 sc in next st; rep from * 4 times more, sc in last st, "
    "sl st in first sc. (30 sc)\nRnd 4: Ch 1, {}, sl st in first sc. ({} sc)\n"
)


def test_corners_and_the_stitches_left_are_one_way_round() -> None:
    """Corners named first and "all other sts" after: a corner stitch is worked as a corner, the others once."""
    for words in (
        "3 sc in each corner st and sc in each remaining st around",
        "2 sc in each corner st, then sc in all other sts around",
        "2 sc in each corner and 1 sc in each of the other sts",
    ):
        more = 2 if words.startswith("3") else 1
        text = _TILE.format(words, 30 + 6 * more)
        assert counts(check(text))[3] == 30 + 6 * more, words
        assert _rules(text) == []
        assert _rules(_TILE.format(words, 30)) == ["count-differs"]


def test_every_other_stitch_beside_corners_is_not_guessed() -> None:
    """ "Every other st" may be every second one or all the others: its row is not counted."""
    for words in ("3 sc in each corner st and sc in every other st around", "sc in each other st, 3 sc in corners"):
        assert counts(check(_TILE.format(words, 42)))[3] is None
        assert _rules(_TILE.format(words, 42)) == ["not-understood"]


def test_a_star_within_a_bracket_is_where_its_last_pass_ends() -> None:
    """ "[…, * ch 2, …] 5 times, ending last rep at *": the last pass stops at the star."""
    text = (
        "Spoke\nUS terms. Ch 1 never counts.\n\nRnd 1: Ch 1, 15 sc in magic ring, sl st in first sc. (15 sc)\n"
        "Rnd 2: Ch 1, [sc in next 3 sc, * ch 2] 5 times, ending last rep at *, hdc in first sc. (15 sc, {} ch-2 sps)\n"
    )
    assert spaces(check(text.format(4)))[1].get(2) == 4
    assert _rules(text.format(5), ("correction",)) == ["count-differs"]
    lost = text.replace("* ch 2", "ch 2")
    assert counts(check(lost.format(4)))[1] is None


_TWICE = (
    "Pincushion\nUS terms. Ch 1 never counts.\n\nTOP\nRnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each sc around. (12 sc)\n"
    "Fasten off.{}\n\nBASE\n{}\n\nEDGE\nRnd 1: Join B in any st, ch 1, 2 sc in each sc around. (24 sc)\n"
)


def test_a_second_piece_the_same_is_a_piece() -> None:
    """Alone under its heading such a sentence works the piece before once more; changed, it is not recomputed."""
    for words in (
        "Crochet a second piece the same.",
        "Make another circle in exactly the same way.",
        "Work a second one like the first.",
    ):
        report = check(_TWICE.format("", words))
        made = [(row.part.name, row.cells[0].made.stitches) for row in report.ledger.rows]
        assert made == [("TOP", 6), ("TOP", 12), ("BASE", 6), ("BASE", 12), ("EDGE", 24)], words
    changed = check(_TWICE.format("", "Crochet a second piece the same, but with 2 rounds more."))
    assert [row.cells[0].made for row in changed.ledger.rows if row.part.name == "BASE"] == [None]


def test_a_piece_made_again_works_none_upon_itself() -> None:
    """Said of the piece just worked, it only tells how many are made."""
    report = check(_TWICE.format(" Make a second piece the same.", "Work as for Top."))
    assert [row.part.name for row in report.ledger.rows] == ["TOP", "TOP", "BASE", "BASE", "EDGE"]
    assert counts(report)[:2] == [6, 12]


_MESHES = (
    "Sampler\nUS terms\n\nA space (sp) is ch 2, skip 2 sts (or 2 ch), dc in next dc; a block (bl) is dc in next 2 sts (or 2 dc in the "
    "ch-2 sp), dc in next dc.\nCh 3 always counts as dc.\n\nCh 30.\n"
    "1st row: Dc in 4th ch from hook and in each ch across. (28 dc) Ch 3, turn.\n2nd row: {} Ch 3, turn.\n3rd row: Like 2nd.{}\n"
)


def test_squares_of_filet_explained_in_a_sentence_and_held_together() -> None:
    """Blocks and spaces told in one sentence, some of them in brackets; a row "like 2nd" is that row again."""
    for words in ("2 bls, (1 sp, 1 bl, 1 sp), 4 bls.", "(2 bls, 1 sp), 1 bl, [1 sp, 4 bls]."):
        report = check(_MESHES.format(words, " (24 dc, 2 ch-2 sps)"))
        assert counts(report) == [28, 24, 24], words
        assert spaces(report)[1:] == [{2: 2}, {2: 2}]
        assert _rules(_MESHES.format(words, " (24 dc, 2 ch-2 sps)"), ("correction",)) == []
        assert _rules(_MESHES.format(words, " (22 dc, 2 ch-2 sps)"), ("correction",)) == ["count-differs"]


def test_a_turn_said_beside_a_called_row_is_made_once() -> None:
    """ "As 2nd row. Ch 1, turn." of a row that ends with ch 1, turn: what is worked last is met first all the same."""
    text = (
        "Flap\nUS terms. Ch 1 never counts.\n\nCh 7.\n1st row: Sc in 2nd ch from hook and in each ch across. Ch 1, turn. (6 sc)\n"
        "2nd row: Sc in each sc across. Ch 1, turn. (6 sc)\n3rd row: As 2nd row.{}\n"
        "4th row: Sc in next 4 sc, leave rem sts unworked. Ch 1, turn. (4 sc)\n5th row: 2 sc in first sc, sc in next 3 sc. (5 sc)\n"
    )
    for tail in ("", " Ch 1, turn.", " Turn."):
        assert counts(check(text.format(tail))) == [6, 6, 6, 4, 5]
        assert _rules(text.format(tail), ("correction",)) == []


def test_the_square_below_is_met_from_its_end() -> None:
    """A row of filet called with its turn leaves the next row to begin where that one ended."""
    text = _MESHES.format("3 bls, 5 sps, 1 bl.", " Ch 3, turn.") + "4th row: 1 bl, 5 sps, 3 bls.\n"
    assert counts(check(text)) == [28, 18, 18, 18]
    assert _rules(text, ("correction", "query")) == []


_OLD = (
    "Mat\nUK terms\n\n1st round.—3 ch. (1 tr.), 11 tr. into ring, s.s. to 3rd of 3 ch. (12 tr.)\n"
    "2nd round.—5 ch. (1 tr. and 2 ch.), * 1 tr. into next tr., 2 ch. ; repeat from * all round, s.s. to 3rd of 5 ch. (12 tr.)\n"
    "3rd round.—* 2 d.c., 3 ch. and 2 d.c. into next sp. ; repeat from * all round, s.s. to first d.c.{}\n"
)


def test_full_stops_of_short_forms_end_no_clause() -> None:
    """ "2 d.c., 3 ch. and 2 d.c. into next sp." goes into one space, and "5 ch. (1 tr. and 2 ch.)" tells what the chain is."""
    assert counts(check(_OLD.format(""))) == [12, 12, 48]
    assert spaces(check(_OLD.format("")))[1:] == [{2: 12}, {3: 12}]
    assert _rules(_OLD.format(" (46 d.c.)"), ("correction",)) == ["count-differs"]
    wrong = _OLD.format("").replace("(1 tr. and 2 ch.)", "(1 tr. and 3 ch.)")
    assert counts(check(wrong))[1] is None


def test_translated_ways_to_say_how_far() -> None:
    """ "In all further ch", "in each further sc", "the rnd out", "from * work 4 times in total", "In every arch work: …"."""
    text = (
        "Lappen\nUS terms. Ch 1 never counts.\n\nCh 13.\nRow 1: 1 sc in the 2nd ch from the hook, 1 sc each in all further ch. = 12 sc.\n"
        "Row 2: Turn with 1 ch, * 1 sc in next st, 2 sc in following st, skip 1 st, from * work 4 times in total. = 12 sc.\n"
        "Row 3: Turn with 1 ch, 2 sc in first sc, 1 sc in each further sc. = {} sc.\n"
    )
    assert counts(check(text.format(13))) == [12, 12, 13]
    assert _rules(text.format(13)) == []
    assert _rules(text.format(12), ("correction",)) == ["count-differs"]
    around = (
        "Ster\nUS terms. Ch 1 never counts.\n\n1st rnd: 10 sc in a magic ring. = 10 sc.\n2nd rnd: * 1 sc in next sc, ch 4, skip 1 sc *, repeat "
        "from * to * the rnd out. = 5 sc and 5 ch-4 arches.\n3rd rnd: In every ch-4 arch work: 1 sc, 1 hdc, 3 dc, 1 hdc, 1 sc. = {} sts.\n"
    )
    assert counts(check(around.format(35))) == [10, 5, 35]
    assert _rules(around.format(30), ("correction",)) == ["count-differs"]


def test_first_stitch_named_without_in_and_a_way_gone_again() -> None:
    """ "sc 1st dc" is worked in it; "sl st to the corner sp again" only goes there."""
    text = (
        "Grid\nUS terms. Ch 1 never counts.\n\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2, sl st in top of ch-3. "
        "(12 dc)\nRnd 2: Sl st over to the corner sp again. Ch 3, 2 dc in same sp, (3 dc in next ch-2 sp) 3 times, sl st in top of ch-3. (12 dc)\n"
        "Rnd 3: Ch 1, sc 1st dc, sc in next 11 dc, sl st in first sc. ({} sc)\n"
    )
    assert counts(check(text.format(12))) == [12, 12, 12]
    assert _rules(text.format(13), ("correction",)) == ["count-differs"]


def test_pairs_are_groups_to_work_between() -> None:
    """ "2 dc between the next 2 pairs": a pair of stitches in one place is a group."""
    text = (
        "Bloem\nUS terms\n\nRnd 1: 8 dc in magic ring, sl st in first dc. (8 dc)\nRnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each dc "
        "around, sl st in top of ch-3. (16 dc)\nRnd 3: Attach B between two pairs of dc. Ch 3 (counts as dc), 1 dc in same space, ch 1, "
        "* 2 dc between the next 2 pairs, ch 1; rep from * {} times more, sl st in top of ch-3. (16 dc, 8 ch-1 sps)\n"
    )
    assert counts(check(text.format(6))) == [8, 16, 16]
    assert _rules(text.format(6), ("correction",)) == []
    assert _rules(text.format(5), ("correction",)) != []


def test_a_chain_and_what_it_stands_for_are_no_count() -> None:
    """ "Ch 3 (= 1 dc)" and "(= 1st dc)" tell what the chain is; "(10 dc)" behind a chain is the row's count."""
    text = (
        "Rand\nUS terms\n\nCh 11.\n1st row: Sc in 2nd ch from hook and in each ch across. (10 sc)\n"
        "2nd row: Ch 3 (= {}), turn, 1 dc in the 1st st, 1 dc in each st to end. ({} dc)\n"
    )
    for words in ("1 dc", "1st dc", "dc"):
        assert counts(check(text.format(words, 11))) == [10, 11], words
        assert _rules(text.format(words, 11)) == []
        assert _rules(text.format(words, 10)) == ["count-differs"]
    behind = "Rand\nUS terms\n\nCh 11.\n1st row: Sc in 2nd ch from hook and in each ch across, ch 1 ({} sc)\n"
    assert _rules(behind.format(10), ("correction",)) == []
    assert _rules(behind.format(9), ("correction",)) == ["count-differs"]


def test_a_list_without_signs_that_explains_fastening_off() -> None:
    """A list in one line, no sign between form and meaning, is a list though it speaks of fastening off."""
    text = (
        "Trim\n\naran (4) wool, 4 mm hook\n\nch chain, dc double crochet, FO fasten off, sc single crochet, st(s) stitch(es)\n\n"
        "R1: ch 11, sc in 2nd ch and each ch across, turn (10 sc)\nR2: ch 1, 2 hdc in each st, FO (20 hdc)\n"
    )
    found = [f.message for f in check(text).findings if f.rule in ("abbreviation-undefined", "section-missing")]
    assert not any("list of abbreviations" in message and "does not give" in message for message in found)
    assert any("“hdc”" in message for message in found)


def test_stitches_told_behind_a_list_and_worked_in_their_like() -> None:
    """A stitch explained in a sentence behind the list; "shell in shell" told by itself is that shell, in a shell."""
    text = (
        "Strip\nUS terms\nAbbreviations: ch—chain, dc—double crochet, st—stitch, sp—space. Fan: (3 dc, ch 1, 3 dc) in the same place. "
        "Fan in fan: fan in ch-1 sp of fan.\n\nCh 11. Row 1: Fan in 6th ch from hook (5 skipped ch count as dc and base), skip 4 ch, dc in last ch. "
        "(8 dc)\nRow 2: Ch 3 (counts as dc), turn, fan in fan, dc in top of turning ch. ({} dc)\n"
    )
    assert counts(check(text.format(8))) == [8, 8]
    assert "special-stitch-name" not in _rules(text.format(8))
    assert _rules(text.format(10), ("correction",)) == ["count-differs"]


def test_rows_go_on_from_a_count_of_two_kinds() -> None:
    """A slip in a row whose count names two kinds of stitch: the row after it, which agrees with the count, is right."""
    text = (
        "Coaster\nUS terms. Ch 1 never counts.\n\nRnd 1: 12 sc in magic ring, sl st in first sc. (12 sc)\n"
        "Rnd 2: Ch 1, 2 sc in each sc around, sl st in first sc. (24 sc)\n"
        "Rnd 3: Ch 1, *sc in next st, skip 2 sts, 5 dc in next st, skip 2 sts; rep from * 4 times more, sl st in first sc. (4 sc, 20 dc)\n"
        "Rnd 4: Ch 1, sc in each st around, sl st in first sc. (24 sc)\n"
    )
    report = check(text)
    assert counts(report)[3] == 24
    assert len(_rules(text, ("correction",))) == 1
    assert _rules(text.replace("4 times more", "3 times more")) == []


_TUFTS = (
    "Tuft\nUS terms. Ch 1 never counts.\nAbbreviations: ch = chain, TS = tuft stitch, sc = single crochet, st = stitch\n{}\n\nCh 11.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\nRow 2: Ch 1, turn, *sc in next st, TS in next st; repeat from * across.\n"
)


def test_a_name_and_how_it_is_made_are_one_explanation() -> None:
    """ "TS = tuft stitch" in the list and "TS: how it is made" below are no two meanings; two ways to make it are."""
    made = "TS: (yo, insert hook, pull up a loop) 3 times in same st, yo, pull through all loops."
    assert "abbreviation-twice" not in _rules(_TUFTS.format(made))
    again = made + "\nTS: (yo, insert hook, pull up a loop) 5 times in same st, yo twice, pull through all loops."
    assert _rules(_TUFTS.format(again)).count("abbreviation-twice") == 1
    assert "abbreviation-twice" in _rules(_TUFTS.format("TS = treble star"))


def test_a_sentence_that_says_where_is_no_remark() -> None:
    """ "Not in the last.", "Corner in the middle.", "As far as the marker." change the row: it is not counted."""
    text = "Flap\nUS terms. Ch 1 never counts.\n\nRnd 1: 12 sc in magic ring. (12 sc)\nRnd 2: Sc in each sc. {}\n"
    for words in (
        "Not in the last one.",
        "Corner in the middle.",
        "As far as the marker.",
        "Point at the end.",
        "Only in the first st.",
    ):
        report = check(text.format(words))
        assert [row.cells[0].made for row in report.ledger.rows][1:] == [None], words
        assert _rules(text.format(words)) == ["not-understood"], words
    assert counts(check(text.format("As usual."))) == [12, 12]


_FRINGE = "Fringe\nUS terms. Ch 1 never counts.\n\nCh 7.\nRow 1: Sc in 2nd ch from hook and in each ch across. (6 sc)\nRow 2: {} ({} sc)\n"


def test_points_stand_out_from_a_flat_row() -> None:
    """A chain of its own in a row, worked back along, and then on along the row: its chains are used, and none of the row."""
    for words, number in (
        ("Ch 1, turn, sc in next 3 sc, ch 5, sc in 2nd ch from hook and in next 3 ch, sc in next 3 sc.", 10),
        ("Ch 1, turn, (sc in next sc, ch 4, sc in 2nd ch from hook and in each ch) 5 times, sc in last sc.", 21),
        ("Turn, *ch 4, sc in 2nd ch from hook and in each ch across, sl st in next 2 sc; rep from * twice more.", 9),
    ):
        text = _FRINGE.format(words, number)
        assert counts(check(text)) == [6, number], words
        assert _rules(text, ("correction",)) == [], words
        assert "count-differs" in _rules(_FRINGE.format(words, number + 2), ("correction",))
    short = "Ch 1, turn, sc in next 3 sc, ch 5, sc in 2nd ch from hook and in next 2 ch, sc in next 3 sc."
    assert counts(check(_FRINGE.format(short, 9)))[1] is None


_NET = (
    "Net\nUS terms. Ch 1 never counts. Ch 3 counts as dc.\n\nRnd 1: Ch 1, 8 sc in magic ring, sl st in first sc. (8 sc)\n"
    "Rnd 2: Ch 3, (ch 2, dc in next sc) around{}, sl st in top of ch-3. (8 dc, 8 ch-2 sps)\n"
    "Rnd 3: Ch 1, 3 sc in each ch-2 sp around, sl st in first sc. (24 sc)\n"
)


def test_the_last_space_left_unsaid_is_one_mistake() -> None:
    """The space before the join is lacking: told once, with that cause, and the next round is worked on the spaces printed."""
    report = check(_NET.format(""))
    assert counts(report) == [8, 8, 24]
    assert _rules(_NET.format("")) == ["count-differs"]
    finding = next(f for f in report.findings if f.rule == "count-differs")
    assert finding.likely[0].change == "add “ch 2” before the join"
    assert _rules(_NET.format(", ch 2")) == []


def test_two_rows_told_as_one_are_two() -> None:
    """ "Two rows of sc across": two rows, whatever the label counts."""
    text = "Band\nUS terms. Ch 1 never counts.\n\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n{}\nFasten off.\n"
    for words in ("Row 2: Two rows of sc across.", "Next row: 2 rows of sc.", "Rows 2-3: Two rows of sc across."):
        assert counts(check(text.format(words))) == [10, 10, 10], words


_PETALS = (
    "Aster\nUS terms. Ch 3 counts as dc.\n\nRnd 1: Ch 3, dc in magic ring, ch 1, (2 dc in ring, ch 1) 4 times, sl st in top of ch-3. (10 dc)\n"
    "Rnd 2: Sl st in next dc and in ch-1 sp, ch 3, (dc, ch 1, 2 dc) in same sp, (2 dc, ch 1, 2 dc) in ea ch-1 sp x4, sl st in top of ch-3. "
    "(20 dc)\nRnd 3: Sl st in next dc and in ch-1 sp, ch 3, 2 dc in same sp, [2 dc between next 2 groups, 3 dc in next ch-1 sp] 4 times, "
    "2 dc {}, sl st in top of ch-3. ({} dc)\n"
)


def test_a_gap_named_by_both_its_sides_is_one_place() -> None:
    """ "Between last group and first group" is one gap; "in ea ch-1 sp x4" is one group in each of four."""
    for words in (
        "between last group and first group",
        "between last and first groups",
        "between the last group and the next group",
    ):
        assert counts(check(_PETALS.format(words, 25))) == [10, 20, 25], words
        assert _rules(_PETALS.format(words, 25), ("correction",)) == []
        assert _rules(_PETALS.format(words, 27), ("correction",)) == ["count-differs"]


def test_words_that_lead_to_a_list_and_tell_a_count() -> None:
    """ "UK terms! ch = chain, …" is a list; "You'll have 8 tr." is the count; "This round makes the corners." only tells."""
    text = (
        "Blanket Square\n\nUK terms! ch = chain, dc = double crochet, sl st = slip stitch, sp = space, st = stitch, tr = treble\n\n"
        "Round 1: Make a magic circle. 3ch (this counts as your first tr), 7tr into the circle. Sl st to the top of the 3ch. You'll have {} tr.\n"
        "Round 2: This round makes the corners. 1ch, *3dc in the next st, 1dc in the next st*, repeat from * to * three more times. 16 dc.\n"
    )
    assert counts(check(text.format(8))) == [8, 16]
    assert _rules(text.format(8), ("correction",)) == []
    assert _rules(text.format(9), ("correction",)) == ["count-differs"]


def test_a_colour_over_the_next_rounds_begins_no_piece() -> None:
    """ "Colour B" alone on its line: the spaces of the round before are still known, though the yarn was fastened off."""
    text = (
        "Tile\nUK terms.\n\nColour A\nRound 1: 3ch (counts as tr), 7tr into a magic ring. Sl st to top of 3ch. (8 tr)\n"
        "Round 2: 4ch (counts as 1tr + 1ch), *1tr in next st, 1ch* all the way round. Sl st to 3rd ch. Fasten off.\n\n{}\n"
        "Round 3: Join in any 1-ch sp. 3ch (counts as tr), 2tr in the same sp, 3tr in each 1-ch sp around. Sl st to top of 3ch. ({} tr)\n"
    )
    for heading in ("Colour B", "Color 2 (Rust)", "MC"):
        assert counts(check(text.format(heading, 24))) == [8, 8, 24], heading
    assert "count-differs" in _rules(text.format("Colour B", 16), ("correction",))
    assert counts(check(text.format("Handle", 24)))[2] is None


_CONE = (
    "Cone\nUS terms. Fan: (2 dc, ch 1, 2 dc) in one place.\n\nCh 16.\n"
    "Row 1: Fan in 5th ch from hook (4 skipped ch count as dc), ch 2, skip 4 ch, 5 dc in next ch, ch 2, skip 4 ch, fan in next ch, dc in last "
    "ch. (15 dc)\nRow 2: Ch 3 (counts as dc throughout), turn, fan in fan, ch 3, sc in first dc of 5-dc group, (ch 3, sc in next dc) 4 times, "
    "ch 3, fan in fan, dc in top of ch-3. (5 sc, 10 dc)\n"
    "Row 3: Ch 3, turn, fan in fan, ch 3, sc in first pineapple lp, (ch 3, sc in next {}) {} times, ch 3, fan in fan, dc in top of ch-3. (4 sc, 10 dc)\n"
)


def test_loops_of_a_pineapple_lie_between_stitches_that_stand_alone() -> None:
    """ "First pineapple lp" passes the loop beside the fan; one too many is not there."""
    assert counts(check(_CONE.format("pineapple lp", 3)))[2] == 14
    assert spaces(check(_CONE.format("lp", 3)))[2] == {1: 2, 3: 5}
    assert _rules(_CONE.format("pineapple lp", 2), ("correction",)) == ["count-differs"]
    assert counts(check(_CONE.format("pineapple lp", 4)))[2] is None


_TABLE = "Bauble\nUS terms\n\nWorked in spiral rounds.\n\nCh 2. Work 6 sc in 2nd ch from hook.\n\n{}\n1 | 6 | start\n2 | 12 | +6\n3-5 | 12 | no change\n6 | {} | -4\n7 | 8 | 0\n"


def test_a_table_of_stitches_and_their_change_is_reckoned() -> None:
    """ "6 | 8 | -4" under "Rnd | Sts | Change": so many fewer than before; of blocks or beads it is not read as stitches."""
    head = "Rnd | Sts | Change"
    assert counts(check(_TABLE.format(head, 8)))[1:] == [12, 12, 12, 12, 8, 8]
    assert _rules(_TABLE.format(head, 8), ("correction",)) == []
    assert _rules(_TABLE.format(head, 9), ("correction",)) == ["count-differs"]
    for other in ("Rnd | Beads | Change", "Row | Blocks | Spaces", "Rnd | Sts | Chart row"):
        assert set(counts(check(_TABLE.format(other, 8)))) == {None}, other
