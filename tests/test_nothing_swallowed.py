"""Work that stands behind a note, a remark, a join or a place is worked, or the row is said not to be understood.

Each of these was once passed over in silence.  Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts, outcomes

ROUND_12 = "Rnd 1: 6 sc in magic ring.\nRnd 2: 2 sc in each st around.\n"
ROUND_12_DC = (
    "Ch 4, join with sl st to form ring.\n"
    "Rnd 1: Ch 3 (counts as dc), 11 dc in ring, join with sl st in top of beg ch-3.\n"
)
ROW_20 = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
OVAL = "Ch 9.\nRnd 1: Sc in 2nd ch from hook and in next 6 ch, 3 sc in last ch, "

# row, and how many stitches it makes; what is not understood is no fault here, another number is
WORDS = [
    # notes on the beginning chain
    (ROUND_12_DC, "Rnd 2: Ch 3, counts as first dc, dc in next 11 sts, join.", 12),
    (ROUND_12_DC, "Rnd 2: Ch 3, this counts as first dc, 2 dc in each of next 11 sts, join.", 23),
    (ROUND_12, "Rnd 3: Ch 1, does not count as st, 2 sc in each st around, join.", 24),
    (ROUND_12_DC, "Rnd 2: Ch 3 for first dc and dc in next 11 sts, join.", 12),
    # rings and chains
    ("", "Rnd 1: Ch 4, join with sl st to form ring and work 12 sc in ring.", 12),
    (ROUND_12, "Rnd 3: Ch 1 to begin then 2 sc in each st around.", 24),
    # times in brackets behind a list
    (ROUND_12, "Rnd 3: 1 sc, 1 inc (6 x).", 18),
    (ROUND_12, "Rnd 3: Sc in next st, inc in next st (repeat around).", 18),
    (ROUND_12, "Rnd 3: 1 sc, inc (x6) (18 sts)", 18),
    (ROUND_12, "Rnd 3: sc 1, inc x 6 (18)", 18),
    (ROUND_12, "Rnd 3: 2 sc in next st (3 times), sc in last 9 sts.", 15),
    # the other side of the chain
    (OVAL, "working along opposite side of ch and sc in next 6 ch, 2 sc in last ch.", 18),
    (OVAL, "now work along the other side of the chain and sc in next 6 ch, 2 sc in last ch.", 18),
    # where it is, and what it is for
    (ROUND_12, "Rnd 3: *3 sc in next st for corner and sc in next 2 sts; rep from * around.", 20),
    (ROUND_12, "Rnd 3: Sc in next 6 sts for the toe then 2 sc in each of next 6 sts.", 18),
    (ROUND_12, "Rnd 3: Sc in first st of the round then 2 sc in each of next 11 sts.", 23),
    (ROUND_12, "Rnd 3: Sc in same st as join then 2 sc in each of next 11 sts.", 23),
    (ROW_20, "Row 2: Ch 1, 2 sc in first st of the row and sc in each st to end.", 21),
    # remarks
    (ROUND_12, "Rnd 3: Sc in next 6 sts, change to B then 2 sc in each of next 6 sts.", 18),
    (ROUND_12, "Rnd 3: Sc in next 6 sts, place marker for the heel then 2 sc in each of next 6 sts.", 18),
    (ROUND_12, "Rnd 3: Sc in next 6 sts, stuff head then 2 sc in each of next 6 sts.", 18),
    (ROUND_12, "Rnd 3: Switch to B for 2 sc in next st, sc in next 11 sts.", 13),
    (ROUND_12, "Rnd 3: Place 6 mm eyes on Rnd 2 and sc2tog 6 times.", 6),
    (ROW_20, "Row 2: Ch 1, taking care to sc2tog over the first 2 sts, sc in each st to end.", 19),
    (ROW_20, "Row 2: Ch 1, being careful to inc 6 sts evenly, sc across.", 26),
    (ROW_20, "Row 2: Ch 1, frabble the wuzzocks, turn.", 20),
    # joins
    (ROUND_12, "Rnd 3: Join with 2 sc in any st, 2 sc in each of next 11 sts.", 24),
    (ROUND_12, "Rnd 3: Ch 1, *sc in next st, ch 3, skip 1 st; rep from * around, omitting last ch 3; join with hdc in first sc.", 6),
    # old clusters over several places
    (ROW_20, "Row 2: Ch 3 (counts as dc), *holding back last loop of each dc on hook, dc in next st and 2 dc in following st, yo and draw through all loops; rep from * to last st, dc in last st.", 11),
    (ROW_20, "Row 2: Ch 3 (counts as dc), *holding back last loop of each, 2 dc in next 2 sts, yo and draw through all 5 loops; rep from * to last st, dc in last st.", 11),
    # "these", "that", "of the"
    (ROW_20, "Row 2: Ch 1, sc in each st to last 4 sts, 2 sc in each of those 4 sts.", 24),
    (ROW_20, "Row 2: Ch 3 (counts as dc), *skip 2 sts, dc in next st, dc in first of the 2 skipped sts; rep from * to last st, dc in last st.", 14),
    (ROW_20, "Row 2: Ch 1, sc to last 2 sts, dec at end of row.", 19),
    (ROW_20, "Row 2: Ch 1, sc in each of next 18 sts, on the last 2 sts sc2tog.", 19),
    (ROUND_12, "Rnd 3: Inc in first st and every 3rd st after.", 16),
    # a chain said to count, after slip stitches; the turning chain's own space; a last space with others before it
    (ROW_20, "Row 2: Ch 1, sl st in next 5 sts, ch 3 (counts as dc), dc in next 10 sts.", 11),
    (ROW_20, "Row 2: Ch 4 (counts as dc and ch 1), turn, skip 1 sc, *dc in next sc, ch 1, skip 1 sc; rep from * to last 2 sc, dc in last 2 sc.\nRow 3: Ch 3 (counts as dc), turn, dc in each dc and in each ch-1 sp to t-ch, dc in t-ch sp, dc in 3rd ch of t-ch.", 20),
    ("Ch 4, join to form a ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 times more, join.", "Rnd 2: Ch 1, *sc in next 3 dc, (sc, ch 2, sc) in next ch-2 sp; rep from * twice, sc in next 3 dc, (sc, ch 2, sc) in last ch-2 sp, join.", 20),
    (ROW_20, "Row 2: Ch 1, turn, sc in each sc across.\nRep last row 3 times more.", 20),
]  # fmt: skip


@pytest.mark.parametrize(("before", "words", "stitches"), WORDS, ids=[words[:80] for _, words, _ in WORDS])
def test_no_work_is_lost(before: str, words: str, stitches: int) -> None:
    """The row makes all its words say, or is not recomputed; and no right count is called wrong."""
    separator = "" if before.endswith(", ") else "\n"
    report = check(f"Test\nUS terms\n\n{before}{separator}{words}\n")
    cell = report.ledger.rows[-1].cells[0]
    assert cell.made is None or cell.made.stitches == stitches
    wrong = [f.rule for f in report.findings if f.weight.value == "correction" and f.rule != "section-missing"]
    assert not wrong


READ = [words for words in WORDS if "counts as" in words[1] or "then 2 sc" in words[1] or "(repeat" in words[1]]


@pytest.mark.parametrize(("before", "words", "stitches"), READ, ids=[words[:80] for _, words, _ in READ])
def test_and_it_is_read(before: str, words: str, stitches: int) -> None:
    """Notes, connecting words and repeats in brackets are understood, not only kept from doing harm."""
    report = check(f"Test\nUS terms\n\n{before}{words}\n")
    made = report.ledger.rows[-1].cells[0].made
    assert made is not None and made.stitches == stitches


def test_work_with_a_printed_count_under_joining_is_no_talk():
    """A border told under "Joining" is a row: worked, or said not to be understood."""
    head = "Bunting\nPattern\nTRIANGLE\nRow 1: Ch 2, 3 sc in 2nd ch from hook. Turn. (3 sc)\n\nJoining\n"
    report = check(
        head
        + "Sew the triangles side by side.\nChain 20, sc across the top edge of one triangle, ch 5, sc in next 3 sts. Turn. (6 sc)\n"
    )
    last = report.ledger.rows[-1]
    assert last.part.name == "Joining" and last.cells[0].outcome.value == "not-recomputed"
    report = check(head + "Sew the triangles side by side. Weave in ends.\n")
    assert [row.part.name for row in report.ledger.rows] == ["TRIANGLE"]


def test_a_title_behind_its_word_is_the_title():
    """ "Pattern: …" in the first line names the pattern."""
    report = check(
        "Pattern: Otter Creek Washcloth\n\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n"
    )
    assert report.pattern.title == "Otter Creek Washcloth"


@pytest.mark.parametrize(
    "words",
    [
        "stopping before the marker", "except the third", "both ends", "half way", "omit the last but one",
        "but not in the middle", "leaving out one", "short of the last", "extra in corners", "again in the last",
        "increasing in the corners", "increasing before and after the marker", "decreasing in the usual way", "adding 2 sts",
        "decrease every 4 sts", "increasing 2 sts in the first and last st",
    ],
)  # fmt: skip
def test_words_that_may_change_the_work_before_them_stop_the_row(words: str) -> None:
    """What may take back stitches just worked, or add to them, is no remark."""
    rows = "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (24)\n"
    report = check(f"Wrap\nUS terms\n\nWRAP\nCh 25.\n{rows}Row 2: Ch 1, sc across, {words}, turn.\n")
    assert outcomes(report)[1] == "not-recomputed"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc across, increasing in the first and last st", 26),
        ("2 sc in 1st and last st, sc in all sts between", 26),
        ("hdc in 1st 5 sts, sc in next 14, hdc in final 5 sts", 24),
        ("increase every 4 sts", 30),
        ("(3 sc + inc) 6 times", 30),
        ("sc across, taking care with the tension", 24),
    ],
)
def test_shaping_in_few_words_is_worked(words: str, made: int | None) -> None:
    """Shaping at both ends, every so many stitches, and joined by a plus; a mere remark changes nothing."""
    rows = "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (24)\n"
    report = check(f"Wrap\nUS terms\n\nWRAP\nCh 25.\n{rows}Row 2: Ch 1, {words}, turn.\n")
    assert counts(report)[1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("*sc in each of next 8 sts, 3 sc in corner; rep from * around", 44),
        ("*sc in each of next 7 sts, 3 sc in corner; rep from * 3 times more", None),
        ("*sc in each st to corner, 3 sc in corner; rep from * around", None),
    ],
)
def test_corners_that_come_out_in_turn(words: str, made: int | None) -> None:
    """In a round without corners the next stitch becomes one, if the round then comes out; else none is made up."""
    rows = "Ch 36, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. (36)\n"
    report = check(f"Frame\nUS terms\n\nFRAME\n{rows}Rnd 2: Ch 1, {words}, join with sl st in first sc.\n")
    assert counts(report)[1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Over next 10 sts: sc, leave the rest unworked.", 10),
        ("For the first half, sc in each st.", None),
        ("Using half the stitches, sc in each st across.", None),
        ("Starting at the 5th st, sc in each st across.", None),
        ("With 2 strands, sc in each st across.", 24),
    ],
)
def test_which_stitches_a_row_is_for(words: str, made: int | None) -> None:
    """Words before the work that say which stitches it is for are worked, or stop the row."""
    rows = "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (24)\n"
    report = check(f"Wrap\nUS terms\n\nWRAP\nCh 25.\n{rows}Row 2: Ch 1. {words}\n")
    assert counts(report)[1] == made


@pytest.mark.parametrize(
    "words",
    [
        "sc in next 5 sts, then wibble across",
        "sc in next 5 sts, zdc across",
        "sc in next 5 sts, wob wob around",
        "sc in next 5 sts then wob st",
        "sc in next st, dc in next st, and so on",
    ],
)
def test_an_unknown_stitch_up_to_the_end_is_no_remark(words: str) -> None:
    """A word that nothing explains, said of the rest of the row, may be a stitch; "and so on" is work that is not told."""
    report = check(f"Piece\n\nUS terms\n\nPIECE\nRow 1: Fsc 20, turn. (20)\nRow 2: Ch 1, {words}.\n")
    assert report.ledger.rows[-1].first.made is None
    assert "not-understood" in {one.rule for one in report.findings}


@pytest.mark.parametrize(
    "words",
    [
        "*sc in next 3 sts, 3 dc in next st; rep from * once for each point.",
        "*sc in next 3 sts, 3 dc in next st; rep from * (except at the seam).",
        "sc in next 6 sts, hdc for the remaining half.",
        "sc in next 11 sts, 2 sc for the last.",
        "2 sc for each st.",
        "sc in each st (corner = 3 sc).",
        "sc in next 6 sts; 3 sc in next; with white to end.",
        "sc in each st, ch 1, and back again.",
        "sc in each st, then down the side.",
    ],
)
def test_who_and_what_work_is_for_is_not_passed_over(words: str) -> None:
    """ "For the remaining 6", "once for each point", "and back again" say where or how often something is worked."""
    text = f"Tab\n\nUS terms\n\nTAB\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12)\nRow 2: Ch 1, turn, {words}\n"
    assert counts(check(text)) == [12, None]


def test_one_in_each_is_no_addition() -> None:
    """ "(one in each st)" behind a run says no more than the run."""
    text = "Tab\n\nUS terms\n\nTAB\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12)\nRow 2: Ch 1, turn, 12 sc (one in each st).\n"
    assert counts(check(text)) == [12, 12]


def test_what_a_stitch_is_for_is_a_remark() -> None:
    """ "2 sc in next st for the point" only says what for."""
    text = "Tab\n\nUS terms\n\nTAB\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12)\nRow 2: Ch 1, turn, sc in next 11 sts, 2 sc in last st for the point.\n"
    assert counts(check(text)) == [12, 13]


@pytest.mark.parametrize(
    "tail", ["working along the side", "continuing around the corner", "continuing along the side edge"]
)
def test_a_called_row_that_goes_on_along_an_edge_is_not_counted(tail: str) -> None:
    """ "Rep Row 2, working along the side" works more than Row 2 does, and nobody says how many."""
    text = f"Pad\n\nUS terms\n\nPAD\nRow 1: Fsc 12, turn. (12)\nRow 2: Ch 1, sc in each st across, turn. (12)\nRow 3: Rep Row 2, {tail}.\n"
    assert counts(check(text)) == [12, 12, None]


@pytest.mark.parametrize("words", ["3 sc in corner, sc in all other sts.", "3 sc in corner, sc in each st around."])
def test_a_round_in_a_ring_has_no_corner(words: str) -> None:
    """Twelve stitches in one ring are no group whose middle is a corner."""
    text = f"Pad\n\nUS terms\n\nPAD\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: {words}\n"
    assert counts(check(text)) == [12, None]


@pytest.mark.parametrize("turn", ["turn with a sc in 2nd ch from hook", "turn with sc in 2nd ch from hook"])
def test_stitch_that_a_turn_is_made_with_is_work(turn: str) -> None:
    """ "Turn with a sc in 2nd ch from hook" is the first stitch along the chain, not a remark about the hook."""
    text = f"Hare\n\nUS terms\n\nBODY\nRow 1: Fsc 40, turn. (40)\n\nWHISKERS (2 pcs.)\n9 ch, {turn}, sc in each ch.\n"
    assert [row.cells[0].made.stitches for row in check(text).ledger.rows] == [40, 8]


def test_stitches_called_chains_are_asked_about() -> None:
    """ "Sc in next 3 ch" over a row without chains is worked in its stitches, and asked about where no count bears it out."""
    text = "Tab\n\nUS terms\n\nTAB\nRow 1: Fsc 10, turn. (10)\nRow 2: Ch 1, sc in next 3 ch, sc in each st across.\n"
    report = check(text)
    assert counts(report) == [10, 10]
    assert ("place-not-there", 7) in all_findings(report, ("query",))


@pytest.mark.parametrize(
    "rows",
    [
        "Rnd 1: Make a magic ring with (white) twice. (12)\nRnd 2: Sc around. (12)\n",
        "Ch 10.\nRow 1: Skip all ch, place marker in first st.\nRow 2: Sc across. (9)\n",
    ],
)
def test_odd_words_come_to_a_report(rows: str) -> None:
    """Words that make no sense together are told as not understood or counted; nothing raises."""
    report = check(f"Pad\n\nUS terms\n\nPAD\n{rows}")
    assert report.findings


@pytest.mark.parametrize(
    "tail",
    [
        " - 8 sc (work Row 2 again).",
        ". (8 sc) (rep Row 2 once)",
        " - 8 sc (do this twice).",
        ". (8 sc; repeat this row 2 more times)",
    ],
)
def test_brackets_that_bid_to_work_again_are_no_talk(tail: str) -> None:
    """ "(work Row 2 again)" behind a count makes more rows than the label says."""
    text = f"Tab\n\nUS terms\n\nTAB\nRow 1: Fsc 9, turn. (9)\nRow 2: Ch 1, sc2tog, sc to end, turn{tail}\n"
    assert counts(check(text)) == [9, None]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc around (incl. ch-sps), join", None),
        ("sc around (including corner sps), join", None),
        ("sc around (also into the chains), join", None),
        ("sc in next st (an increase), sc in each dc around, join", None),
        ("2 sc in next st (an increase), sc in each dc around, join", 13),
    ],
)
def test_brackets_that_add_to_a_run_are_no_remark(words: str, made: int | None) -> None:
    """What a run takes in besides, or a stitch too few for what it is called, is not passed over."""
    ring = "Rnd 1: Ch 4, join to form ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more, join.\n"
    assert counts(check(f"Tile\n\nUS terms\n\nTILE\n{ring}Rnd 2: Ch 1, {words}.\n"))[-1] == made


@pytest.mark.parametrize(
    "line",
    [
        "Work base row and first 2 rows as given for Back.",
        "Work foundation row as on Back.",
        "Work the first three rows of Back.",
        "Work the set-up row like the Back.",
    ],
)
def test_rows_of_another_piece_that_are_not_found(line: str) -> None:
    """Rows that a line calls for in words that are not understood are not passed over: what follows is not recomputed."""
    text = (
        "Vest\n\nUK terms\n\nBACK\nMake 13 ch.\nFoundation row: 1 tr into 4th ch from hook, 1 tr into each ch to end, turn. (11 tr)\n"
        "1st row: 3 ch (counts as 1 tr), miss first st, 1 tr into each st to end, turn. (11 tr)\nFasten off.\n\n"
        f"FRONT\nMake 9 ch.\n{line}\n4th row: 3 ch (counts as 1 tr), miss first st, 1 tr into each st to end, turn.\n"
    )
    assert outcomes(check(text))[-1] == "not-recomputed"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("5 sc (along the edge: 3 sc), sc in each st to end", None),
        ("5 sc (on the wrong side, 3 sc), sc in each st to end", None),
        ("5 sc (other side of ch, 3 sc) 15 sc", None),
        ("5 sc, inc (2 sc), sc in each st to end", 21),
        ("5 sc, inc (i.e. 2 sc), sc in each st to end", 21),
        ("sl st across 2 sc, 1 dc, sc in each st to end", None),  # is the dc worked, or walked over?
        ("sl st over 5 sc, 10 sc, leave 5 sc unworked", 10),
        ("sl st over 2 sc, 1 dc in next st, sc in each st to end", 18),
    ],
)
def test_brackets_and_lists_that_may_be_work(words: str, made: int | None) -> None:
    """Work in brackets behind words of where is no explanation; a list that may be walked over or worked is not guessed."""
    assert counts(check(f"Piece\nUS terms\n\n{ROW_20}Row 2: Ch 1, {words}.\n"))[1] == made
