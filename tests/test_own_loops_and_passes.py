"""A pattern's own words for stitches in one loop, for loops of chains, and for how Tunisian rows are worked off.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, mades, outcomes


def _overlay(listed: str, rows: str) -> str:
    return (
        f"Hanging\nUS terms\n\nAbbreviations\nch: chain\n{listed}\nsc: single crochet\nst(s): stitch(es)\n\nPANEL\n"
        f"Ch 15.\nRow 1: Sc in 2nd ch from hook and in each ch across. (14 sts)\n{rows}\n"
    )


@pytest.mark.parametrize(
    ("listed", "word"),
    [
        ("bs: sc in the back loop only", "bs"),
        ("SBL = single crochet in back loop", "SBL"),
        ("BL: back loop sc", "BL"),
        ("BLO: back loop only", "scBLO"),
        ("BLO: back loop only", "BLsc"),
    ],
)
@pytest.mark.parametrize(
    "row", ["1 sc, 12 {}, 1 sc", "sc, {} 12, sc", "sc, {} in next 12 sts, sc", "sc, [2 {}, 1 sc] 4 times, sc"]
)
def test_a_word_for_a_stitch_in_one_loop(listed: str, word: str, row: str) -> None:
    """A pattern's short word for a stitch in one of the loops works one stitch in one place."""
    report = check(_overlay(listed, f"Row 2: {row.format(word)}. (14 sts)"))
    assert counts(report)[-1] == 14
    assert not [rule for rule, _ in corrections(report) if rule.startswith("places")]


@pytest.mark.parametrize(
    "told",
    [
        "dc in the unworked front loop of the stitch two rows below, skip the stitch behind it",
        "dc in the free front loop two rows below, skipping the st behind it",
        "long dc – dc in the unused front loop of the st 2 rows below",
    ],
)
@pytest.mark.parametrize("row", ["sc, LD in next 3 sts, sc in next 10 sts", "1 sc, 3 LD, 9 sc, 1 sc"])
def test_long_stitches_of_an_overlay_one_in_each(told: str, row: str) -> None:
    """A stitch that reaches two rows down covers one place, and over three it is worked three times."""
    report = check(_overlay(f"LD: {told}", f"Row 2: Sc in blo of each st across. (14)\nRow 3: {row}. (14 sts)"))
    assert counts(report)[-1] == 14


def test_a_free_loop_of_no_told_row_is_not_guessed() -> None:
    """Which round an unworked loop belongs to must be said."""
    report = check(_overlay("dc: double crochet", "Row 2: Sc, dc in the unworked front loop, sc in next 12 sts."))
    assert outcomes(report)[-1] == "not-recomputed"


_LACE = (
    "Mat\nUS terms\n\nAbbreviations: ch, chain; dc, double crochet; sc, single crochet; sl st, slip stitch; lp, loop\n"
    "{told}\n\nRnd 1: Ch 3 (counts as dc), 11 dc in magic ring, join to top of ch-3. (12 dc)\n"
    "Rnd 2: Ch 1, sc in same place, *{name}, skip next dc, sc in next dc; rep from * 4 more times, {name}, join to first sc.\n"
)


@pytest.mark.parametrize(
    ("told", "name"),
    [
        ("Picot: ch 3, sl st in 3rd ch from hook.\nPicot loop: Ch 2, picot, ch 3, picot, ch 2.", "picot loop"),
        ("P (picot): Ch 3, sc in 3rd ch from hook.\nP lp (picot loop): Ch 3, p, ch 4, p, ch 3.", "p lp"),
        ("Knob loop: (ch 5, sl st in 4th ch from hook) twice, ch 2.", "knob loop"),
    ],
)
@pytest.mark.parametrize("where", ["in center of next {}", "in next {}"])
def test_loops_of_chains_and_picots(told: str, name: str, where: str) -> None:
    """A loop that a pattern defines uses no stitch, and the next round works into it by its name."""
    into = where.format(name)
    text = _LACE.format(told=told, name=name) + (
        f"Rnd 3: Sl st to center of first {name}, ch 3 (counts as dc), dc in same place, *ch 4, 2 dc {into}; "
        "rep from * around, ch 4, join to top of ch-3.\n"
    )
    assert counts(check(text)) == [12, 6, 12]


def test_between_the_picots_of_a_loop() -> None:
    """ "Between the picots" tells the middle of the loop that is named."""
    told = "P (picot): Ch 3, sc in 3rd ch from hook.\nP lp (picot loop): Ch 3, p, ch 4, p, ch 3."
    row = "Rnd 3: Sl st to center of first p lp, ch 1, 2 sc in same place, *p lp, 2 sc in next p lp between the picots; rep from * around, p lp, join to first sc.\n"
    assert counts(check(_LACE.format(told=told, name="p lp") + row))[-1] == 12


_TUNISIAN = (
    "Cloth\nUS terms\n\nAbbreviations\nch = chain\nTss = Tunisian simple stitch\nyo = yarn over\n\nCLOTH\nCh 16.\n"
    "Row 1: Forward: {first} Return: yo, pull through 1 loop, *yo, pull through 2 loops; rep from * to end.\n"
    "Row 2: Forward: Tss in each st to end{count} Return: {back}\nRow 3: Forward: Tss in each st to end. Return: as Row 1.\n"
)
_UP = "Pull up a loop in 2nd ch from hook and in each ch to end."
_PLAIN = "yo, pull through 1 loop, *yo, pull through 2 loops; rep from * to end."


@pytest.mark.parametrize("count", [": 16 loops.", "; 16 loops on hook.", " (16 loops)."])
@pytest.mark.parametrize("first", [_UP, "Pick up a loop in 2nd ch from hook and in each ch across: 16 loops on hook."])
def test_loops_counted_before_they_are_worked_off(count: str, first: str) -> None:
    """The count of a Tunisian row may stand between its two passes, behind any sign."""
    report = check(_TUNISIAN.format(first=first, count=count, back=_PLAIN))
    assert counts(report) == [16, 16, 16]
    wrong = check(_TUNISIAN.format(first=first, count=count.replace("16", "17"), back=_PLAIN))
    assert ("count-differs", 14) in all_findings(wrong) or any(
        rule == "count-differs" for rule, _ in all_findings(wrong)
    )


@pytest.mark.parametrize(
    "back",
    [
        "yo, pull through 2 loops, *ch 2, yo, pull through 4 loops; rep from * to end.",
        "*yo and pull through 3 loops; rep from * to end.",
        "yo, pull through 1 loop, *yo, pull through 2 loops, ch 1; rep from * to end.",
    ],
)
def test_a_return_pass_that_changes_the_row(back: str) -> None:
    """Where loops are worked off several at once, or with chains between, the next row is not worked on as many."""
    assert outcomes(check(_TUNISIAN.format(first=_UP, count=".", back=back)))[-1] == "not-recomputed"


_RING = "Rnd 1: Ch 3 (counts as dc), 9 dc in magic ring, join to top of ch-3. (10 dc)\n"


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("(2 dc in sp, ch 1) 10 times, working in each sp between dc, join. (20 dc)", 20),
        ("(2 dc in next sp, ch 1) 10 times, working into the spaces between stitches, join.", 20),
        (
            "Join B in any sp between 2 dc, ch 3 (counts as dc), dc in same sp, ch 1, (2 dc in next sp, ch 1) 9 times, join.",
            20,
        ),
    ],
)
def test_spaces_between_stitches_told_behind_or_begun_in(row: str, made: int) -> None:
    """A clause behind the repeat, or where the round begins, says that the spaces are those between stitches."""
    report = check(f"Mandala\nUS terms\n\nMANDALA\n{_RING}Rnd 2: {row}\n")
    assert counts(report)[-1] == made
    assert not [rule for rule, _ in corrections(report) if rule.startswith("places")]


def test_every_other_space_between_stitches_is_not_guessed() -> None:
    """What is said of the spaces and not understood is not passed over."""
    row = "Rnd 2: (2 dc in next sp, ch 1) 10 times, working in every other sp between dc, join.\n"
    assert outcomes(check(f"Mandala\nUS terms\n\nMANDALA\n{_RING}{row}"))[-1] == "not-recomputed"


def test_a_v_stitch_beside_a_stitch_in_one_place() -> None:
    """ "V-st in top of turning ch, dc in same place" is a V-stitch for the next row, whichever end it is met from."""
    text = (
        "Shawl\nUS terms\nV-st: (dc, ch 1, dc) in place indicated.\nCh 3 counts as dc.\n\nSHAWL\n"
        "Row 1: Ch 7, dc in 4th ch from hook and in next 3 ch, turn. (5 dc)\n"
        "Row 2: Ch 3, sk next dc, V-st in next dc, sk next dc, V-st in top of turning ch, dc in same place, turn.\n"
        "Row 3: Ch 3, V-st in ch-1 sp of each V-st to turning ch, dc in top of turning ch.\n"
    )
    assert counts(check(text)) == [5, 6, 6]
    assert mades(check(text))[-1].groups["v-st"] == 2


def test_a_piece_again_is_read_as_it_was() -> None:
    """The chain that does not count in the first tape does not count in the next, which has no count of its own."""
    text = (
        "Tape\nUK terms\n\nFirst Tape\nMake 9ch.\nRow 1: 1tr in 5th ch from hook, 1tr in each of next 4ch, turn. (5tr)\n"
        "Row 2: 5ch, 1tr in each of next 5tr, turn. (5tr)\n\nSecond Tape\nWork as First Tape to end of Row 2.\n"
        "Row 3: 2ch, ss in corresponding 5ch loop of First Tape, 2ch, 1tr in each of next 5tr, turn. (5tr)\n"
    )
    report = check(text)
    made = [row.cells[0].made.stitches for row in report.ledger.rows if row.cells[0].made is not None]
    assert made[-3:] == [5, 5, 5]
    assert not [rule for rule, _ in corrections(report) if rule.startswith("places")]


@pytest.mark.parametrize(
    ("ending", "made"),
    [
        ("ending with ch 4; join to first sc", 6),
        ("ch 4, join to first sc", 6),
        ("ending with ch 2; join to first sc", None),
        ("ending with sc in last dc, ch 4, join", None),
    ],
)
def test_a_round_behind_petals_ends_with_its_last_loop(ending: str, made: int | None) -> None:
    """The last loop of such a round has no stitch behind it; any other ending is not guessed at."""
    text = (
        "Rose\nUS terms\n\nROSE\nRnd 1: Ch 5 (counts as dc and ch 2), (dc in magic ring, ch 2) 5 times, join to 3rd ch of ch-5. (6 dc)\n"
        "Rnd 2: (Sc, 3 dc, sc) in each ch-2 sp around, join. (30)\n"
        f"Rnd 3: Ch 1, sc around first dc of Rnd 1, *ch 4, sc around next dc of Rnd 1; rep from * around, {ending}.\n"
    )
    assert counts(check(text))[-1] == made


@pytest.mark.parametrize(
    ("count", "right"),
    [
        ("(20 dc/5 ch-2 sps)", True),
        ("[20 dc / 5 ch-2 sps]", True),
        ("(dc: 20, ch-2 sps: 5)", True),
        ("(ch-2 sps = 5; dc = 20)", True),
        ("(22 dc/5 ch-2 sps)", False),
        ("(dc: 20, ch-2 sps: 6)", False),
    ],
)
def test_counts_of_two_sorts_in_further_forms(count: str, right: bool) -> None:
    """A stroke between the sorts, or the unit before its figure: both are compared."""
    row = "Ch 3 (counts as dc), dc in same st, ch 2, *2 dc in each of next 2 sts, ch 2; rep from * 3 more times, 2 dc in last st, join."
    report = check(f"Square\nUS terms\n\nSQUARE\n{_RING}Rnd 2: {row} {count}\n")
    assert counts(report)[-1] == 20
    assert ("count-differs" in [rule for rule, _ in corrections(report)]) is not right


def test_a_stitch_told_under_a_run_on_list() -> None:
    """A line "Fan: …" under a list that runs on is an entry of its own, though the list ends in no stop."""
    text = (
        "Mat\nUS terms\n\nAbbreviations: ch, chain; dc, double crochet; sp, space\nFan: (3 dc, ch 1, 3 dc) in sp indicated.\n\n"
        "Rnd 1: Ch 4 (counts as dc and ch 1), (dc in magic ring, ch 1) 3 times, join to 3rd ch of ch-4. (4 dc)\n"
        "Rnd 2: Fan in each ch-1 sp around, join.\n"
    )
    assert counts(check(text))[-1] == 24


@pytest.mark.parametrize(
    "told",
    [
        "1 tr in each of next 3 sts, putting 2 tr into a space where you meet one",
        "1 tr in each of next 3 sts, working 2 tr into the 2ch-sp of the row below",
        "1 tr into each of the next 2 tr or 2 tr into next sp, then 1 tr into next tr",
        "1 tr in next 2 tr or 2 tr in next sp, 1 tr in next tr",
    ],
)
def test_a_filet_block_that_goes_into_spaces(told: str) -> None:
    """What a block does over a space may be said in an added clause, or before the stitch that ends it either way."""
    text = (
        f"Mat\nUK terms\n\nNotes\nBlock (bl): {told}.\nSpace (sp): 2ch, miss 2 sts, 1tr in next tr.\n\nMAT\nMake 12ch.\n"
        "Row 1: 1tr in 4th ch from hook (missed 3ch count as 1tr), 1tr in each ch to end, turn. (10 tr)\n"
        "Row 2: 3ch (counts as 1tr), 1 bl, 1 sp, 1 bl, turn.\nRow 3: 3ch (counts as 1tr), 1 sp, 1 bl, 1 sp, turn.\n"
    )
    assert counts(check(text)) == [10, 8, 6]


def test_a_filet_block_of_two_ways_that_differ() -> None:
    """Where it is not told which of the last words are for either way, a block has no count."""
    text = (
        "Mat\nUK terms\n\nNotes\nBlock (bl): 1 tr in next tr or 2 tr in next sp, 2 tr in next tr.\n\nMAT\nMake 12ch.\n"
        "Row 1: 1tr in 4th ch from hook (missed 3ch count as 1tr), 1tr in each ch to end, turn. (10 tr)\n"
        "Row 2: 3ch (counts as 1tr), 3 bl, turn.\n"
    )
    assert counts(check(text)) == [10, None]


def test_a_stitch_and_its_loop_in_one_word_are_words_of_the_terms() -> None:
    """ "scBLO" and "BLsc" are no words of the other country, and "blo" in the list explains both."""
    text = _overlay(
        "BLO: back loop only", "Row 2: Ch 1, turn, scBLO in each st across.\nRow 3: Ch 1, turn, BLsc in each st across."
    )
    assert counts(check(text)) == [14, 14, 14]
    rules = [rule for rule, _ in all_findings(check(text))]
    assert not {"terms-mixed", "abbreviation-undefined", "abbreviation-unused"}.intersection(rules)


@pytest.mark.parametrize("ending", ["ending with p-lp; join to first sc", "p-lp, join to first sc"])
def test_a_round_that_ends_with_a_loop_that_the_pattern_defines(ending: str) -> None:
    """The last loop of a round passes over what all others do, as a chain does."""
    text = (
        "Doily\nUS terms\n\nGauge: First rnd = 1 inch.\n\nch—chain; sc—single crochet; sl st—slip stitch; rep—repeat\n\n"
        "Picot (p): Ch 3, sl st in 3rd ch from hook.\nPicot loop (p-lp): Ch 2, p, ch 3, p, ch 2.\n\n"
        "1st rnd: Ch 1, 20 sc in magic ring; join. (20 sc)\n"
        f"2nd rnd: Ch 1, sc in same place, *p-lp, skip 3 sc, sc in next sc; rep from * around, {ending}. (5 p-lps)\n"
    )
    assert counts(check(text)) == [20, 5]
    assert not [rule for rule, _ in corrections(check(text)) if rule in ("repeat-does-not-fit", "count-differs")]


@pytest.mark.parametrize(
    ("second", "third", "made"),
    [
        ("Ch 7 (does not count as a st), dc in each of next 4 dc, turn. (4 dc, 1 ch-7 loop)", "9 dc in ch-7 loop", 13),
        ("Ch 7 (does not count as a st), dc in each of next 4 dc, turn. (4 dc)", "9 dc in ch-5 loop", None),
    ],
)
def test_a_loop_at_the_edge_of_a_row(second: str, third: str, made: int | None) -> None:
    """A long chain that begins a row and counts as no stitch is a loop, which is counted and worked into by its length."""
    text = (
        "Edging\nUS terms\n\nEDGING\nRow 1: Ch 6, dc in 4th ch from hook and in next 2 ch, turn. (4 dc)\n"
        f"Row 2: {second}\nRow 3: Ch 3 (counts as dc), dc in next 3 dc, {third}.\n"
    )
    report = check(text)
    assert counts(report)[1:] == [4, made]
    assert "count-differs" not in [rule for rule, _ in corrections(report)]


@pytest.mark.parametrize(
    ("skip", "made"), [("miss 2ch-sp", 8), ("miss 2ch sp", 8), ("miss next 2-ch sp", 8), ("miss 2 ch-sps", None)]
)
def test_a_space_of_two_chains_that_is_missed(skip: str, made: int | None) -> None:
    """ "2ch-sp" is one space of two chains; "2 ch-sps" are two."""
    text = (
        "Mesh\nUK terms\n\nMESH\nRow 1: 14ch, 1tr in 4th ch from hook (missed 3ch count as 1tr), 1tr in each of next 2ch, "
        "2ch, miss 2ch, 1tr in next ch, 2ch, miss 2ch, 1tr in each of last 3ch, turn. (8tr)\n"
        f"Row 2: 3ch (counts as 1tr), 1tr in each of next 2tr, 2ch, {skip}, 1tr in next tr, 2ch, {skip}, "
        "1tr in each of next 3tr, 1tr in top of 3ch.\n"
    )
    assert counts(check(text))[-1] == made


def test_a_note_on_the_chain_under_a_list_is_no_part_of_its_last_entry() -> None:
    """A line "Ch 3 … counts as dc" below a definition that ends in no stop does not belong to it."""
    text = (
        "Throw\nUS terms\n\nAbbreviations and Special Stitches\nch – chain\ndc – double crochet\nsc – single crochet\n"
        "Fan – 5 dc in st indicated\nHalf fan – 3 dc in st indicated\nCh 3 at the beginning of a row counts as dc.\n\nTHROW\n"
        "Row 1: Ch 14, sc in 2nd ch from hook and in each ch across, turn. (13)\n"
        "Row 2: Ch 1, sc in first sc, *sk 2 sc, fan in next sc, sk 2 sc, sc in next sc; rep from * across, turn. (13)\n"
        "Row 3: Ch 3, 2 dc in first sc, *sk 2 dc, sc in next dc, sk 2 dc, fan in next sc; rep from * across, ending last rep with half fan in last sc.\n"
    )
    assert counts(check(text)) == [13, 13, 13]


@pytest.mark.parametrize("where", ["in the right-hand corner of the hem", "in left-hand corner of the edge"])
def test_yarn_joined_in_a_corner_at_one_hand(where: str) -> None:
    """ "Right-hand" before a corner only says which."""
    report = check(
        f"Edging\nUS terms\n\nEDGING\nRow 1: Join thread {where}, ch 1, work 31 sc evenly along the edge. (31 sc)\n"
    )
    assert counts(report) == [31]
