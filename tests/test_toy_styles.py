"""Toys as they are published: colours by letter within a round, rings by their short names, list numbers among labels."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, mades, outcomes

_TOP = "Ball\n\nAbbreviations: sc = single crochet; inc = increase; mr = magic ring\nColors: A = red, B = white\n\n"


def test_letters_before_and_behind_the_work_are_colours() -> None:
    """A colour's letter may lead a clause or follow it, at the ring and at a whole round as well."""
    report = check(
        _TOP + "R1: 6 sc A in mr [6]\nR2: A inc x 6 [12]\nR3: A (sc, inc) x 6 [18]\nR4: 6 sc A, B 4 sc, A 8 sc [18]\n"
        "R5: A: 1 sc, B: 1 sc, A: (3 sc, inc) x 4 [22]\nR6: sc around in B [22]\nR7: inc A, 21 sc B [23]\n"
    )
    assert counts(report) == [6, 12, 18, 18, 22, 22, 23]
    assert set(outcomes(report)) == {"agrees"}
    assert corrections(report) == []


def test_figures_with_colour_letters_are_stitches() -> None:
    """ "4A, 2B" are six stitches where the round's count is printed behind them, in brackets as well."""
    report = check(
        _TOP + "R1: 6 sc in mr [6]\nR2: inc x 6 [12]\nR3: 4A, 2B, 6A [12]\nR4: (3A, 1B) x 3 [12]\nR5: 12A [12]\n"
        "R6: 4A, 2B, 5A [12]\n"
    )
    assert counts(report) == [6, 12, 12, 12, 12, 11]
    assert outcomes(report) == [*["agrees"] * 5, "differs"]


def test_figures_with_colours_and_no_count_stay_unread() -> None:
    """Without a printed count "2A, 2B" may be rows of stripes: the row is not recomputed."""
    report = check(_TOP + "R1: 6 sc in mr [6]\nR2: inc x 6 [12]\nR3: 2A, 2B\n")
    assert outcomes(report)[-1] == "not-recomputed"


def test_letters_that_are_shapings_are_no_colours() -> None:
    """Where A is the decrease, "6A" takes in twelve stitches."""
    report = check(
        "Ball\n\nX: single crochet\nV: increase\nA: decrease\n\nR1: 6X in mr (6)\nR2: 6V (12)\nR3: 4X, 2A, 4X (10)\nR4: 5A (5)\n"
    )
    assert counts(report) == [6, 12, 10, 5]


def test_mc_is_the_ring_unless_it_is_the_main_colour() -> None:
    """ "8 sc in mc" begins a round where no main colour is named; where one is, mc is that yarn."""
    for first in ("8 sc in mc", "8 sc in MC", "MC, 8 sc", "8 sc into a mc"):
        assert counts(check(f"Ball\n\nR1: {first} (8)\nR2: inc x 8 (16)\n")) == [8, 16]
    yarn = "Ball\nMaterials: MC black, CC white\n\nR1: With MC, 6 sc in mr (6)\nR2: inc x 6 (12)\nR3: 8 sc in MC, 4 sc in CC (12)\n"
    assert counts(check(yarn)) == [6, 12, 12]


def test_a_ring_by_the_pattern_s_own_letters() -> None:
    """ "KA - amigurumi ring" in a line of its own names the ring, whatever heading stands above it."""
    report = check("Ball\n\nLegend:\nKA - amigurumi ring\n\n1 row: 6 sc in KA (6)\n2 row: 6 inc (12)\n")
    assert counts(report) == [6, 12]


def test_abbreviations_parted_by_strokes() -> None:
    """A list in one line parted by strokes or dots is as many entries, and redefines no stitch."""
    for sign in ("/", "|", "·"):
        listed = f"sc – single crochet {sign} inc – 2 sc in 1 st {sign} mr – magic ring"
        report = check(f"Ball\n\n{listed}\n\nR1: 6 sc in mr [6]\nR2: inc x 6 [12]\nR3: sc around [12]\n")
        assert counts(report) == [6, 12, 12]


def test_list_numbers_among_labels() -> None:
    """A bare number that goes on from the row before labels a row; any other is left alone."""
    report = check(
        "Ball\n\nR1: 6 sc in mr (6)\nR2: inc x 6 (12)\n3. sc around (12)\nR4-5: sc around (12)\n6-7) sc around (12)\nR8: dec x 6 (6)\n"
    )
    assert counts(report) == [6, 12, 12, 12, 12, 12, 12, 6]
    assert corrections(report) == []


def test_numbered_pieces_are_pieces() -> None:
    """ "1. BODY - yellow" and "2. WING (x2)" are headings; the second's rows begin anew and are made twice."""
    report = check(
        "Duck\n\n1. BODY - yellow\nR1: 6 sc in mr (6)\nR2: inc x 6 (12)\nR3: sc around (12)\n\n"
        "2. WING (x2)\nR1: 5 sc in mr (5)\nR2: sc around (5)\n"
    )
    assert [(part.name, part.make) for part in report.pattern.parts] == [("BODY - yellow", 1), ("WING", 2)]
    assert counts(report) == [6, 12, 12, 5, 5]
    assert corrections(report) == []


def test_leaflets_with_headings_and_rounds_run_in() -> None:
    """ "BODY . . . Starting at bottom, ch 2. 1st rnd: …", rounds "incl", and pieces behind a dash."""
    report = check(
        "RABBIT\n\nBODY . . . Starting at bottom with White, ch 2. 1st rnd: 7 sc in 2nd ch from hook. 2nd rnd: 2 sc in each "
        "sc around—14 sc. 3rd to 5th rnds incl: Sc in each sc around. 6th rnd: * Sc in next 5 sc, work off 2 sc as 1 sc. "
        "Repeat from * around (12 sc). 7th rnd: Sc in each sc around. Break off.\n\n"
        "EAR (Make 2)—Starting at tip with White, ch 2. 1st rnd: 4 sc in 2nd ch from hook. 2nd and 3rd rnds inclusive: "
        "Sc in each sc around (4 sc). Break off.\n"
    )
    assert [(part.name, part.make) for part in report.pattern.parts] == [("BODY", 1), ("EAR", 2)]
    assert counts(report) == [7, 14, 14, 14, 14, 12, 12, 4, 4, 4]
    assert corrections(report) == []


def test_ranges_in_other_languages_words_and_without_a_sign() -> None:
    """ "t/m", "til" and "bis" span rows; "Rnds 6-7 Sc in each st" needs no sign behind its number."""
    rows = "Rnd 3 t/m 4 – sc in each st [12]\nRnd 5 til 6: sc in each st [12]\nRnds 7-8 Sc in each st [12]\nRnd 9 bis 10: sc around [12]\n"
    report = check(f"Ball\n\nRnd 1 – 6 sc in magic ring. [6]\nRnd 2 – 2 sc in each st. [12]\n{rows}")
    assert counts(report) == [6] + [12] * 9
    assert corrections(report) == []


def test_stitches_worked_together_told_in_words() -> None:
    """Old and translated ways to say a decrease, once and along the round."""
    rows = (
        ("work off 2 sc as 1 sc, sc in next 22 sc", 23),
        ("work 2 sc as 1, sc in next 21 sc", 22),
        ("take 2 sts tog, sc in next 20 sc", 21),
        ("sc together every 2nd and 3rd st", 14),
        ("decrease every 6th and 7th st", 12),
        ("crochet every 2nd and 3rd st together", 8),
        ("always crochet 2 sts together", 4),
        ("sc every 2 sts together", 2),
    )
    text = "Ball\n\nRnd 1: 6 sc in mr (6)\nRnd 2: double all sts (12)\nRnd 3: double every st (24)\n"
    report = check(text + "".join(f"Rnd {at}: {words} ({made})\n" for at, (words, made) in enumerate(rows, 4)))
    assert counts(report) == [6, 12, 24, *(made for _, made in rows)]
    assert set(outcomes(report)) == {"agrees"}


def test_a_row_with_a_label_of_an_unknown_form_is_not_passed_over() -> None:
    """What stands under a number, a row word and a sign may be work, whatever stands between: it is not understood."""
    report = check(
        "Ball\n\n1st rnd: 6 sc in ring\n2nd rnd: 2 sc in each sc (12 sc)\n3rd rnd, once over: Sc in each sc around.\n4th rnd: sc in each sc around (12 sc)\n"
    )
    assert ("not-understood", 5) in all_findings(report)


def test_a_list_behind_words_of_its_own() -> None:
    """A list in one line may follow any words and a colon; its first entry is as good as the others."""
    for lead in ("Abbreviations in US terms", "Stitches you'll need (US)", "In this pattern I use"):
        report = check(
            f"Leaf\n\n{lead}: ch = chain; sc = single crochet; hdc = half double crochet\n\nCh 6.\nRow 1: sc in 2nd ch from hook, hdc in next 4 ch (5)\n"
        )
        assert corrections(report) == []


def test_a_leaf_that_begins_and_ends_with_slip_stitches() -> None:
    """On its own chain a slip stitch takes a place, and counts where slip stitches are named."""
    report = check(
        "Leaf\n\nCh 8.\nRow 1: sl st in 2nd ch from hook, sc in next ch, hdc in next 3 ch, sc in next ch, sl st in last ch (5 sts, 2 sl sts)\n"
        "Row 2: turn, blo sl st in next st, sc in next, hdc in next 3, sc in next, sl st in last (5 sts)\n"
    )
    assert counts(report) == [5, 5]
    assert all_findings(report, ("correction", "query")) == []


def test_a_turning_chain_told_behind_the_turn() -> None:
    """ "turn with 1 ch" and "turn, ch 1" end a row with the next one's chain: no space of this row, and none lacking there."""
    for turn in ("turn with 1 ch", "turn, 1 ch", "1 ch, turn"):
        rows = "".join(f"{n} row: 1 dc into each st to end, {turn} (12 dc)\n" for n in ("2nd", "3rd", "4th"))
        report = check(
            f"Bootee\n\nAbbreviations: ch, chain; dc, double crochet; tr, treble; st, stitch; sts, stitches\n\nMake 13 ch.\n1st row: Miss 1 ch, 1 dc into each ch to end, {turn} (12 dc)\n{rows}"
        )
        assert counts(report) == [12] * 4
        assert not any(made.spaces for made in mades(report))
        assert all_findings(report, ("correction", "query")) == []


def test_loops_of_called_tunisian_rows_are_stitches() -> None:
    """The loops printed behind "Rep Rows 2 and 3" are those on the hook."""
    report = check(
        "Square\n\nTunisian crochet\nCh 8.\nRow 1: Pull up a loop in 2nd ch from hook and in each ch across. (8 loops) Return pass.\n"
        "Row 2: Tss in next st and in each st across. (8 loops) Return pass.\nRow 3: Tps in next st and in each st across. (8 loops) Return pass.\n"
        "Rows 4-7: Rep Rows 2 and 3. (8 loops)\n"
    )
    assert counts(report) == [8] * 7
    assert corrections(report) == []


def test_a_loose_repeat_works_the_list_to_the_end() -> None:
    """ "repeat", "repeat until the end", "repeat all the way": the list so far, over and over."""
    rows = (
        ("1 sc, 1 inc; repeat until the end", 18),
        ("2 sc, 1 inc, repeat till end of round", 24),
        ("*2 sc, 2 sc tog* all the way", 18),
        ("1 sc, 1 dec and repeat", 12),
        ("1 sc, 1 inc, repeat", 18),
        ("2 sc tog all the way", 9),
    )
    text = "Ball\n\nR1: 6 sc in mr (6)\nR2: inc all the way (12)\n"
    report = check(text + "".join(f"R{at}: {words} ({made})\n" for at, (words, made) in enumerate(rows, 3)))
    assert counts(report) == [6, 12, *(made for _, made in rows)]
    assert corrections(report) == []


def test_words_that_set_out_a_row() -> None:
    """Loops and yarn told in a clause before the work, in the words of teaching and translated patterns."""
    rows = (
        "In the front loops: sc in each st",
        "Only in the BLO this time, sc in each st",
        "Working only in the back loops, sc in each st",
        "This round is worked in BLO: sc in each st",
        "Work with off white as follows: sc in each st",
    )
    text = "Ball\n\nR1: 6 sc in mr (6)\nR2: inc x 6 (12)\n"
    report = check(text + "".join(f"R{at}: {words} (12)\n" for at, words in enumerate(rows, 3)))
    assert outcomes(report) == ["agrees"] * 7


def test_a_body_that_sets_out_from_the_second_leg() -> None:
    """ "From the second leg ch 3, …" goes on from that leg's yarn; the first one is joined with its stitches."""
    report = check(
        "Doll\n\nLEGS (make 2)\nRnd 1: 6 sc in mr (6)\nRnd 2: inc x 6 (12)\nFasten off the first leg only.\n\nBODY\n"
        "Rnd 3: From the second leg ch 3, join to the first leg with a sc, 11 more sc around the first leg, 3 sc along the chain, "
        "12 sc around the second leg, 3 sc along the other side of the chain (30)\nRnd 4: sc around (30)\n"
    )
    assert counts(report) == [6, 12, 30, 30]


def test_until_you_have_one_left() -> None:
    """ "across until you have 1 st left, dc in that last st"."""
    report = check(
        "Scarf\n\nCh 8.\nRow 1: hdc in 2nd ch from hook and in each ch across (7). Turn.\nRow 2: Ch 3 (counts as a dc), sk first st, "
        "dc in next st, *ch 1, sk 1 st, dc in next st* across until you have 1 st left, dc in that last st. (5 dc, 2 ch-1 sps) Turn.\n"
    )
    assert outcomes(report) == ["agrees", "agrees"]


def test_arms_that_stand_out_from_a_round() -> None:
    """A chain worked back along is an arm: its chains are no space, and the round goes on where it was left."""
    rounds = (
        (
            "*ch 5, 2 hdc in the 2nd ch from the hook, 2 hdc in each of the next 3 ch, sl st in the next 3 sts* repeat 4x",
            32,
        ),
        ("*ch 5, sl st in 2nd ch from hook, sc in next 3 ch, sc in next 2 sts* around", 30),
        ("*sc in next 2 sts, ch 5, sc in 2nd ch from hook and in each ch across; rep from * around", 36),
        ("(ch 8, hdc in 3rd ch from hook, hdc in next 5 ch, sl st in next st of round) 12 times", 72),
        ("*sl st in next st, ch 6, sc in 2nd ch from hook, sc in next 4 ch, skip 1 st; rep from * around", 30),
        ("sc in next 3, ch 4, sl st in 2nd ch from hook, sl st in next 2 ch, sc in next 9", 12),
    )
    for words, made in rounds:
        report = check(f"Ball\n\nR1: 6 sc in mr (6)\nR2: inc x 6 (12)\nR3: {words} ({made})\n")
        assert counts(report) == [6, 12, made], words
        assert not mades(report)[-1].spaces, words
        assert [rule for rule, _ in all_findings(report, ("correction", "query"))] in ([], ["turning-chain-unsaid"]), (
            words
        )


def test_a_picot_is_no_arm() -> None:
    """A chain closed with one slip stitch is a picot still."""
    report = check(
        "Ball\n\nR1: 6 sc in mr (6)\nR2: inc x 6 (12)\nR3: *sc in next 2 sts, ch 3, sl st in 3rd ch from hook; rep from * around (12 sc)\n"
    )
    assert counts(report) == [6, 12, 12]


def test_curls_begin_with_their_own_yarn() -> None:
    """A piece of curls after fastening off needs no word of joining; nor does a second hump whose yarn is kept."""
    curls = "Top: *ch 12, sl st in 2nd ch from hook, sl st in each of the next 10 ch* rep from * to * 5 times in all. Sew on.\n"
    text = "Ball\n\nR1: 6 sc in mr (6)\nR2: inc x 6 (12)\n"
    assert corrections(check(text + "R3: sc around. Fasten off. (12)\n" + curls)) == []
    kept = "Fasten off the first; keep the yarn on the second.\nR3: 12 sc around the second hump, 12 sc around the first hump (24)\n"
    assert corrections(check(text + kept)) == []


def test_words_of_a_teacher_before_the_work() -> None:
    """ "Start by chaining", "Skip the very first chain", "Same thing again:", "Working back along the chain:"."""
    report = check(
        "Pumpkin\n\nStart by chaining 16.\nRow 1: Skip the very first chain and make 1 sc in each of the other 15 chains. (15) Turn.\n"
        "Row 2: Same thing again: ch 1, sc in BLO of each st. (15) Turn.\n"
    )
    assert outcomes(report) == ["agrees", "agrees"]
    leaf = "Leaf\n\nCh 8.\nRow 1: Working back along the chain: sl st in 2nd ch from hook, sc in next, hdc in each of next 3, sc in next, sl st in last. (5)\n"
    assert outcomes(check(leaf)) == ["agrees"]


def test_an_edging_through_both_pieces() -> None:
    """ "With B and working through both pieces" sets out an edging around two pieces held together."""
    report = check(
        "Holder\n\nFRONT\nCh 9.\nRow 1: sc in 2nd ch from hook and in each ch across, turn. (8 sc)\nRows 2-8: Ch 1, sc across, turn. (8 sc)\n\n"
        "EDGING\nHold the two pieces together with Front facing you.\nRnd 1: With B and working through both pieces, ch 1, 3 sc in corner st, "
        "sc in next 6 sts, 3 sc in corner, 6 sc evenly along side, 3 sc in corner, sc in next 6 chs, 3 sc in corner, "
        "6 sc evenly along side, join with sl st in first sc. (36 sc)\n"
    )
    assert counts(report)[-1] == 36
    assert corrections(report) == []


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("(2, inc) x 8 (32)", 32),
        ("2, inc *8 [32]", 32),
        ("5, inc, 11, inc, 6 (26)", 26),
        ("2 sts, (inc, 3 sts) x 5, inc, 1 st (30)", 30),
        ("BLO: (4, dec) x 4 (20 sts)", 20),
        ("3 sc + inc (x6) = 30", 30),
        ("(3 sc, inc) (x6)", 30),
        ("[3 sc, inc] (repeat 6 times) (30)", 30),
        ("(2, inc) x 8", None),
        ("24 (24)", None),
    ],
)
def test_figures_for_plain_stitches(row: str, made: int | None) -> None:
    """Bare figures among increases are plain stitches where a count bears them out; times may stand in brackets."""
    report = check(
        f"Ball\nUS terms\n\nRnd 1: 6 sc in mr (6)\nRnd 2: 2 sc in each st (12)\nRnd 3: 2 sc in each st (24)\nRnd 4: {row}\n"
    )
    assert counts(report)[3] == made
    assert corrections(report) == []


@pytest.mark.parametrize(
    "words",
    [
        "working 6 increases evenly spaced",
        "with 6 evenly spaced increases",
        "making 6 inc evenly",
        "work 6 increases evenly spaced around",
    ],
)
def test_shaping_spread_over_the_run_before(words: str) -> None:
    """ "Sc around, working 6 increases evenly spaced" gains six."""
    report = check(
        f"Ball\nUS terms\n\nRnd 1: 6 sc in mr (6)\nRnd 2: 2 sc in each st (12)\nRnd 3: Sc around, {words}. (18)\n"
    )
    assert counts(report) == [6, 12, 18]
