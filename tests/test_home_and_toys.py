"""Baskets, slippers, flags and toys in houses of their own: turning chains by a word, chains from below, joined limbs.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts

_HOOD = "Ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12)\n"


@pytest.mark.parametrize(
    ("entry", "ground", "row", "made"),
    [
        ("tch: turning chain (ch 1, not counted as a st)", "Row 1: Fsc 9. (9)", "tch, sc in each st, turn. (9)", 9),
        ("T = ch 1 to turn", "Row 1: Fsc 9. (9)", "T, sc in each st. (9)", 9),
        ("tc - turning chain of 3 ch, counts as 1 dc", "Row 1: Fdc 9. (9)", "tc, dc in next 7 dc, dc in top of tc.", 9),
    ],
)
def test_a_word_of_the_list_for_the_turning_chain(entry: str, ground: str, row: str, made: int) -> None:
    """The pattern's own word for its turning chain is that chain, and no stitch but where the list says so."""
    report = check(f"Mat\nUS terms\n\nAbbreviations\n{entry}\nsc = single crochet\n\nMAT\n{ground}\nRow 2: {row}\n")
    assert counts(report) == [9, made]
    assert not [rule for rule, _ in all_findings(report) if rule in ("count-differs", "places-left-over")]


def test_a_turning_chain_without_its_length_stays_unread() -> None:
    """ "tch: turning chain" says neither its length nor whether it counts: the row is not recomputed."""
    report = check(
        "Mat\nUS terms\n\nAbbreviations\ntch: turning chain\n\nMAT\nRow 1: Fsc 9.\nRow 2: tch, sc in each st.\n"
    )
    assert counts(report) == [9, None]


def test_a_chain_too_low_for_the_stitch_of_the_note() -> None:
    """What is said of turning chains that stand for a treble is not said of the 1 ch before double crochet."""
    report = check(
        "Mat\nUK terms\nTurning chain of 3 counts as the first tr throughout. Turning ch counts as first tr.\n\n"
        "MAT\n1st round: Make 4 ch, join into a ring with ss. 1 ch, 8 dc in ring, ss to first dc. (8 dc)\n"
        "2nd round: 3 ch, 1 tr in same place, 2 tr in each dc to end, ss to top of 3 ch. (16 tr)\n"
    )
    assert counts(report) == [8, 16]


@pytest.mark.parametrize("named", ["of 2nd rnd", "of the 2nd round", "of Rnd 2"])
def test_a_round_named_by_its_ordinal(named: str) -> None:
    """Loops behind petals go into the round that is named, be it by a number or an ordinal."""
    report = check(
        "Rose\nUS terms\n\nROSE\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: *Sc in next st, ch 3, skip 1; rep from * around. (6 sc)\n"
        f"Rnd 3: 5 dc in each ch-3 sp around. (30)\nRnd 4: *Sc around next sc {named}, ch 4; rep from * around. (6 sc)\n"
    )
    assert counts(report) == [12, 6, 30, 6]


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("Turn, (sl st, 2 sc in next) 6 times. (12)", 12),
        ("Turn, *sl st, (sc, dc, sc) in next st; rep from * across. (18)", 18),
        ("Turn, *3 dc in next st, sl st; rep from * across. (18)", 18),
        ("Turn, (sk 1, 4 dc in next, sk 1, sl st) x 3. (12)", 12),
        ("Turn, sl st, hdc, 8 dc, hdc, sl st. (10)", 10),
        ("Turn, sl st in next st, 9 sc, leave rem sts unworked. (9)", 9),
    ],
)
def test_slip_stitches_that_name_no_place_take_one(row: str, made: int) -> None:
    """A slip stitch among stitches goes into a stitch of its own, at the ends of a repeat or row, too; nothing is left over."""
    report = check(f"Fin\nUS terms\n\nFIN\n{_HOOD}Row 2: {row}\n")
    assert counts(report) == [12, made]
    assert not [
        rule for rule, _ in all_findings(report) if rule in ("places-left-over", "places-run-out", "count-differs")
    ]


def test_a_slip_stitch_at_the_end_of_a_round_joins_it() -> None:
    """In the round a last slip stitch without a place takes none of the stitches."""
    report = check(
        "Ball\nUS terms\n\nBALL\nRnd 1: 8 sc in magic ring. (8)\nRnd 2: (sc, inc) 4 times, sl st. (12)\nRnd 3: Sc around. (12)\n"
    )
    assert counts(report) == [8, 12, 12]
    assert corrections(report) == []


@pytest.mark.parametrize(
    "way",
    [
        "Rotate the bag and go on along the bottom of the chain: ",
        "Pivot and continue on the bottom side of the chain, ",
        "Going on along the underside of the chain, ",
    ],
)
def test_the_chain_from_below_however_it_is_told(way: str) -> None:
    """Work along the chain's other side has its places there, and none is lacking."""
    report = check(
        f"Bag\nUS terms\n\nBASE\nCh 11.\nRnd 1: Sc in 2nd ch from hook, sc in next 8 ch, 3 sc in last ch. {way}sc in next 9 ch. (21)\n"
    )
    assert counts(report) == [21]
    assert corrections(report) == []


@pytest.mark.parametrize("label", ["Rnds 2 up to and including 4", "Rnd 2 up to 4", "Rnd 2 to and including 4"])
def test_a_range_up_to_and_including(label: str) -> None:
    """The last row of such a label is one of its rows."""
    report = check(
        f"Bin\nUS terms\n\nBIN\nRnd 1: 8 sc in magic ring. (8)\n{label}: Sc in every st. (8)\nRnd 5: 2 sc in each st. (16)\n"
    )
    assert counts(report) == [8, 8, 8, 8, 16]
    assert corrections(report) == []


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Now we make the ears. 3 sc, 3 dc in next st, 8 sc", 14),
        ("In this round we make the handles: 4 sc, ch 4, skip 4, 4 sc", 8),
        ("Now you make the 2 increases: 12 sc", None),
        ("In this round we skip the ears. 12 sc", None),
        ("Now we make the body as the head. 12 sc", None),
        ("In this round you make the back longer. 12 sc", None),
        ("Sc 6, pivot and go on along the bottom of the body, sc 6", None),
    ],
)
def test_what_a_round_is_for(words: str, made: int | None) -> None:
    """A sentence that says which parts the round makes is no work; one that says more stops the row."""
    report = check(f"Cat\nUS terms\n\nCAT\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: {words}.\n")
    assert counts(report) == [12, made]


@pytest.mark.parametrize(
    "through", ["taking the arm and the body together", "thru leg 1 & body", "through both arm 2 and body"]
)
def test_limbs_worked_on_through_both(through: str) -> None:
    """Stitches through a limb and the body are as many as those of the body."""
    report = check(f"Cat\nUS terms\n\nCAT\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: 3 sc, 4 sc {through}, 5 sc. (12)\n")
    assert counts(report) == [12, 12]


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("3 sc, inc*3, 6 sc", 15),
        ("dec*2, 8 sc", 10),
        ("*2 sc, inc*4", 16),
        ("*inc*12", 24),
        ("4*(sc, dec)", 8),
        ("*sc, inc*3, 6 sc", 15),
    ],
)
def test_a_star_close_to_its_figure_is_a_cross(row: str, made: int) -> None:
    """ "inc*3" is three of them; behind a closing star stands how often the passage is worked."""
    report = check(f"Cat\nUS terms\n\nCAT\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: {row} ({made})\n")
    assert counts(report) == [12, made]
    assert corrections(report) == []


def test_doubling_by_the_patterns_own_word() -> None:
    """ "double every 2nd st" gains one in every two, although the list defines the word as a stitch."""
    report = check(
        "Cat\nUS terms\n\nAbbreviations\ndouble: 2 sc in the same st\nMR: magic ring\n\nHead\nIn grey\nRnd 1: 6 sc in a MR. (6)\n"
        "Rnd 2: double every st. (12)\nRnd 3: double every 3rd st. (16)\nRnd 4: crochet the 1st and 2nd st tog, sc in the rest. (15)\n\n"
        "Body\nWhite yarn\nRnds 1-3: crochet like the head Rnds 1-3, but do not fo. (16)\nRnd 4: Sc around. (16)\n"
    )
    assert counts(report) == [6, 12, 16, 15, 6, 12, 16, 16]
    assert [part.name for part in report.pattern.parts] == ["Head", "Body"]


@pytest.mark.parametrize("start", ["With M make 10 ch.", "With C2 make a chain of 10.", "Using yarn A make 10 ch."])
def test_a_yarn_without_a_comma_before_the_chain(start: str) -> None:
    """The chain behind a yarn's name is what the piece begins with."""
    report = check(f"Cosy\nUS terms\n\nSIDE\n{start}\nRow 1: Sc in 2nd ch from hook and in each ch across. (9)\n")
    assert counts(report) == [9]


def test_a_table_with_pipes_at_both_ends() -> None:
    """A table of stitches and changes is read in Markdown's form, too; its first row is said not to be recomputed."""
    report = check(
        "Bun\nUS terms\n\nBUN\n| Rnd | Sts | Change |\n|---|---|---|\n| 1 | 6 | into ring |\n| 2 | 12 | +6 |\n"
        "| 3-4 | 12 | no change |\n| 5 | 9 | -3 |\n"
    )
    assert counts(report) == [None, 12, 12, 12, 9]


def test_a_list_behind_a_sentence_on_the_terms() -> None:
    """ "Written in US terms." before the list is no part of it; a movement in brackets explains its stitch."""
    report = check(
        "Cap\n\nWritten in US terms. ch, chain; sc, single crochet; st(s), stitch(es); rnd, round; sl st, slip stitch; "
        "sc2tog, (insert hook in next st and draw up a loop) twice, yo and draw through all 3 loops.\n\n"
        "CAP\nCh 3, join with sl st.\nRnd 1: 8 sc in ring. (8)\nRnd 2: Sc2tog, sc in each st. (7)\n"
    )
    assert counts(report) == [8, 7]
    assert corrections(report) == []


def test_figures_before_the_letters_of_colours() -> None:
    """Where the pattern says so, a figure before a letter is so many stitches, also within repeats."""
    report = check(
        "Mat\nUK terms\n\nYarn: DK cotton; A plum 50 g, B cream 25 g\nA figure before a letter tells how many in that colour.\n\n"
        "MAT\nWith A make 13 ch.\n1st row: 1 dc in 2nd ch from hook and in each ch to end, turn. 12 sts\n"
        "2nd row: 1 ch, 2A, *1B, 3A; rep from * to last 2 sts, 1B, 1A, turn. 12 sts\n3rd row: 1 ch, with B 1 dc in each st. 12 sts\n"
    )
    assert counts(report) == [12, 12, 12]
    assert corrections(report) == []


def test_stitches_more() -> None:
    """ "7 sc more around the leg": stitches like the one before."""
    report = check(
        "Doll\nUS terms\n\nLEG\nRnd 1: 8 sc in magic ring. (8)\nRnd 2: 1 sc in first st, 7 sc more around the leg. (8)\n"
    )
    assert counts(report) == [8, 8]


def test_a_stitch_left_beside_an_increase() -> None:
    """One that is neither skipped nor worked is asked about, though its twin of an increase was skipped."""
    report = check(
        "Mitt\nUS terms\n\nHAND\nRnd 1: 22 fsc, join. (22)\nRnd 2: Ch 1, sc in next 8 sts, 2 sc in next st, sc in next 4 sts, "
        "2 sc in next st, sc in last 8 sts, join. (24)\n"
        "Rnd 3: Ch 1, sc in first 8 sts, ch 2, skip next 7 sts, sc in last 8 sts, join. (16 sc, 1 ch-2 sp)\n"
    )
    assert counts(report) == [22, 24, 16]
    assert ("places-left-over", 7) in all_findings(report)


@pytest.mark.parametrize(
    ("place", "made"),
    [
        ("dc in the skipped stitch from previous round", 24),
        ("dc in skipped st of last rnd", 24),
        ("dc in skipped sc of Rnd 1", 24),
    ],
)
def test_a_stitch_into_one_that_the_round_before_skipped(place: str, made: int) -> None:
    """It lies in the round below that one, and takes none of the stitches of the round that it is worked in."""
    report = check(
        "Hat\nUS terms\n\nHAT\nRnd 1: 24 sc in magic ring. (24)\nRnd 2: *Sc in next 2 sts, ch 1, skip 1; rep from * around. (16 sc)\n"
        f"Rnd 3: *Sc in next 2 sc, {place}; rep from * around. (24)\n"
    )
    assert counts(report) == [24, 16, made]
    assert corrections(report) == []


def test_closing_a_limb_for_both_walls() -> None:
    """ "Knit 4 sc for both walls" closes a folded round: each stitch takes one of either side."""
    report = check(
        "Paw\nUS terms\n\nPAW\n1. 6 sc in magic ring (6)\n2. (2 sc, inc)*2 (8)\n3. Fold the part in half and knit 4 sc for both walls. (4)\n"
    )
    assert counts(report) == [6, 8, 4]
    assert not [rule for rule, _ in all_findings(report) if rule == "places-left-over"]


@pytest.mark.parametrize(
    "row",
    [
        "Sc in next 6 sts, turn, ch 1, sc in next 6 sts, turn",
        "Ch 1, sc in each st across, turn. Ch 1, 2 sc in each st across",
        "Fold in half and close with 6 sc",
        "Sc 4, attach the arm over next 4 sts, sc 4",
        "Sc 4, attach the arm to the next 4 sts with sc, sc 4",
        "Dec around until 5 sts are left",
        "Sc2tog until 4 sts remain",
    ],
)
def test_what_the_words_leave_open_stops_the_row(row: str) -> None:
    """Two rows in one, limbs attached over stitches, what is left of decreases: nothing of it is passed over."""
    report = check(f"Cat\nUS terms\n\nCAT\nRnd 1: 12 fsc, join. (12)\nRnd 2: {row}.\n")
    assert counts(report) == [12, None]


def test_a_stitch_and_in_brackets_what_it_is_made_of() -> None:
    """ "popcorn (5 dc) in next st" is one popcorn."""
    report = check(
        "Cat\nUS terms\n\nCAT\nRnd 1: 12 fsc, join. (12)\nRnd 2: Sc 4, popcorn (5 dc) in next st, sc 7. (12)\n"
    )
    assert counts(report) == [12, 12]
    assert corrections(report) == []


@pytest.mark.parametrize("row", ["Sl st 3, sc 6, sl st 3. (6)", "3 sl st, 6 sc, 3 sl st (6)", "Sc 9, sl st 3. (9)"])
def test_several_slip_stitches_within_a_round(row: str) -> None:
    """Slip stitches with their number, at either end of a round, too, go into so many stitches."""
    report = check(f"Cat\nUS terms\n\nCAT\nRnd 1: 12 fsc, join. (12)\nRnd 2: {row}\n")
    assert not [rule for rule, _ in all_findings(report) if rule in ("places-left-over", "count-differs")]


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("Dec in each of next 3 sts, sc 6. (9)", 9),  # three decreases
        ("Dec in each of next 4 sts, sc 8. (10)", 10),  # two of them over these four
        ("Dec in each of next 4 sts, sc in each st around.", None),
    ],
)
def test_decreases_in_each_of_so_many(row: str, made: int | None) -> None:
    """Whether they go over these stitches or are so many the row tells; where it does not, it is not recomputed."""
    report = check(f"Cat\nUS terms\n\nCAT\nRnd 1: 12 fsc, join. (12)\nRnd 2: {row}\n")
    assert counts(report) == [12, made]


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("(1 sc, 1 inc) x6 around.", 18),
        ("[Sc 2, inc] repeat this 4 times.", 16),
        ("5 sc / 2 inc / 5 sc (14)", 14),
        ("Sc 4, then 4 inc in a row, sc 4.", 16),
        ("For the ears: sc 5, 3 dc in next st, sc 6.", 14),
        ("Sc 6, sc 2 over the wire, sc 4.", 12),
        ("Sc 4, sc through both ear and head in next 3 sts, sc 5.", 12),
        ("Sc 12, do not close the round.", 12),
    ],
)
def test_how_a_round_of_a_toy_is_told(row: str, made: int) -> None:
    """Words that repeat a list, part it or say how it is held."""
    report = check(f"Cat\nUS terms\n\nCAT\nRnd 1: 12 fsc, join. (12)\nRnd 2: {row}\n")
    assert counts(report) == [12, made]
    assert corrections(report) == []


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("Sc in each st across except the last 2. (8)", 8),
        ("Sc in each st except for the last. (9)", 9),
        ("Dec over next 3 sts, sc to end. (8)", 8),  # all three in one
        ("Sc in the first 6 sts only. (6)", 6),
        ("Fold in half, sc through both layers across. (5)", 5),
        ("Fold in half, sc through both layers across. (10)", 10),
        ("Fold in half, sc through both layers across.", None),
        ("Rsc in each st across. (10)", 10),
        ("Sc across, working over both tails. (10)", 10),
        ("Sc across. This is now the right side. (10)", 10),
    ],
)
def test_how_a_row_of_a_bag_is_told(row: str, made: int | None) -> None:
    """Runs that stop short, strips folded one way or the other as their count tells, words of how the row is held."""
    report = check(f"Bag\nUS terms\n\nBAG\nRow 1: 10 fsc, turn. (10)\nRow 2: Ch 1, {row}\n")
    assert counts(report) == [10, made]
    assert not [rule for rule, _ in all_findings(report) if rule in ("count-differs", "places-run-out")]


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("4(inc, 2sc) [16]", 16),
        ("6 sc, 2 (inc, 2 sc) (14)", 14),
        ("6hdc-inc, 6sc (18)", 18),
        ("5 sc, 1 bobble with 4 dc, 6 sc (12)", 12),
        ("12 sc, sl st, cut the yarn. (12)", 12),
    ],
)
def test_rounds_of_toys_in_shorthand(row: str, made: int) -> None:
    """A figure before a list says how often; a stitch and "inc" with a hyphen are one word where commas part the rest."""
    report = check(f"Cat\nUS terms\n\nCAT\nRnd 1: 12 fsc, join. (12)\nRnd 2: {row}\n")
    assert counts(report) == [12, made]
    assert corrections(report) == []
