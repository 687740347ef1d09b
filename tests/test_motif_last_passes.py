"""The ends of repeats and rounds in lace and ripples, loops told by their chains, filet rows that begin with a space, broomstick lace."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, mades, outcomes

_WAVE = "Wave Mat\nUS terms\n\nMAT\nCh 24.\nRow 1: 2 hdc in 2nd ch from hook, *hdc in next 4 ch, sk 2 ch, hdc in next 4 ch, 3 hdc in next ch; rep from * to end, {}\n"
_ARCHES = (
    "Lamp Mat\nUS terms\n\nMAT\nRnd 1: Ch 4, sl st in first ch to form ring, ch 1, 10 sc in ring, sl st in first sc. (10 sc)\n"
    "Rnd 2: Ch 1, sc in first sc, ch 6, sk next sc, *sc in next sc, ch 6, sk next sc; rep from * 3 more times, sl st in first sc. (5 sc, 5 ch-6 loops)\n"
)


@pytest.mark.parametrize(
    "end",
    [
        "but with 2 hdc instead of 3 in the last ch.",
        "but make just 2 hdc in last ch.",
        "ending with 2 hdc in last ch instead of 3 hdc.",
        "except that in last ch work 2 hdc.",
        "working 2 hdc (rather than 3) in last ch.",
        "ending last rep with 2 hdc in place of 3.",
        "omitting the last hdc of last repeat.",
        "omitting 1 hdc at end of last rep.",
    ],
)
def test_fewer_in_the_last_pass(end: str) -> None:
    """However it is put, the last pass of a ripple ends in two stitches and not three."""
    report = check(_WAVE.format(end))
    assert counts(report)[-1] == 23
    assert not corrections(report)


@pytest.mark.parametrize(
    "end",
    [
        "but work 2 hdc instead of 5 in last ch.",
        "but work 2 sc instead of 3 hdc in last ch.",
        "instead of the last 2 ch.",
        "but work it all more loosely in last ch.",
    ],
)
def test_what_the_last_pass_has_not_is_not_read(end: str) -> None:
    """A number or stitch that the repeat does not end in leaves the row uncounted."""
    assert outcomes(check(_WAVE.format(end)))[-1] == "not-recomputed"


_CORNER = (
    "Cushion\nUS terms\n\nCUSHION\n"
    "Row 1: Ch 6, dc in 4th ch from hook, dc in next 2 ch. Turn. (1 block)\n"
    "Row 2: Ch 6, dc in 4th ch from hook, dc in next 2 ch, sl st in ch-3 sp of block, ch 3, 3 dc in same sp. Turn. (2 blocks)\n"
    "Row 3: Ch 6, dc in 4th ch from hook, dc in next 2 ch, sl st in next ch-3 sp, [ch 3, 3 dc in same sp, sl st in next ch-3 sp] once, ch 3, 3 dc in same sp. Turn. (3 blocks)\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "Carry on in the same way, making 1 block more in each row.",
        "As Row 3, an extra block in every row.",
        "Repeat Row 3, adding a block per row.",
    ],
)
def test_a_block_more_in_each_row(words: str) -> None:
    """Rows that go on in the same way have a block of three stitches more each."""
    assert counts(check(f"{_CORNER}Rows 4-7: {words} (7 blocks)\n")) == [3, 6, 9, 12, 15, 18, 21]


def test_how_many_blocks_more_is_not_said() -> None:
    """ "Continue in this way" alone does not tell how the rows grow."""
    assert outcomes(check(f"{_CORNER}Rows 4-7: Continue in this way.\n"))[3] == "not-recomputed"


_FILET = (
    "Filet Mat\nUS terms\n\nSpecial terms. Space (sp): ch 2, sk 2 sts, dc in next dc. Block (bl): dc in each of next 3 sts {}. "
    "Ch 5 at the beginning of a row counts as the first dc and ch 2 of a sp.\n\nMat. Ch 26.\n\n"
    "1st row: Dc in 8th ch from hook, *ch 2, sk 2 ch, dc in next ch; rep from * across. 7 sps. Ch 5, turn.\n"
    "2nd row: Sk first sp, dc in next dc, *2 dc in next sp, dc in next dc; rep from * 4 times more, ch 2, dc in 3rd ch of turning ch. 1 sp, 5 bls, 1 sp. Ch 5, turn.\n"
    "3rd row: 1 sp, 1 bl, 3 sps, 1 bl, 1 sp. Ch 5, turn.\n4th row: 1 sp, 2 bls, 1 sp, 2 bls, 1 sp. Turn.\n"
)


@pytest.mark.parametrize(
    "over",
    ["(over a sp: 2 dc in sp, dc in next dc)", "(when worked over a space: 2 dc in sp, dc in next dc)"],
)
def test_a_filet_row_begins_with_the_chain_of_its_first_space(over: str) -> None:
    """The beginning ch 5 is the first dc and the chains of the row's first space; "Mat. Ch 26." begins the piece."""
    report = check(_FILET.format(over))
    assert counts(report)[-4:] == [8, 18, 12, 16]
    assert [made.spaces for made in mades(report)[-2:]] == [{2: 5}, {2: 3}]


@pytest.mark.parametrize(
    "join",
    [
        "join with dc in first sc",
        "close the rnd with dc in first sc",
        "dc in first sc in place of last ch-6 loop",
        "dc in first sc instead of the last loop",
    ],
)
def test_a_stitch_that_closes_a_round_as_its_last_loop(join: str) -> None:
    """A dc that joins after half a loop makes that loop and is no stitch of the next round's places."""
    text = f"{_ARCHES}Rnd 3: Sl st in next 3 ch, ch 1, sc in same loop, [ch 6, sc in next loop] 4 times, ch 3, {join}.\nRnd 4: Ch 1, 7 sc in each loop around. (35 sc)\n"
    assert counts(check(text))[-1] == 35


@pytest.mark.parametrize("rest", ["dc in first sc instead of the last 2 sc", "dc in first sc in place of the button"])
def test_what_no_loop_stands_for(rest: str) -> None:
    """A stitch in place of something that is no loop is not understood."""
    text = f"{_ARCHES}Rnd 3: Ch 1, sc in first sc, [ch 6, sc in next sc] 4 times, ch 3, {rest}.\n"
    assert outcomes(check(text))[-1] == "not-recomputed"


@pytest.mark.parametrize(
    "words, made",
    [
        ("8 sc in each loop of 6 ch.", 40),
        ("8 sc in each arc of six chains.", 40),
        ("8 sc over each arch of chain.", 40),
        ("8 sc in each ch-6 around.", 40),
        ("8 sc over each 6-ch.", 40),
        ("(4 sc, ch 2, 4 sc) in each ch-6.", 40),
        ("Work into every arc of 6 ch: 2 sc, 4 hdc, 2 sc.", 40),
        ("Sc in each sc, 6 sc in each ch-6 around.", 35),
        ("Sc in each sc and each ch around.", 35),
        ("Sc in each ch around.", 30),
        ("4 sc in first ch-6 sp, *sc in next sc, 4 sc in next ch-6 sp; rep from * around, sc in last sc.", 25),
    ],
)
def test_loops_told_by_their_chains(words: str, made: int) -> None:
    """ "Each ch-6" and "each loop of 6 ch" are the loops themselves, "each ch" their chains alone."""
    report = check(f"{_ARCHES}Rnd 3: {words}\n")
    assert counts(report)[-1] == made
    assert not corrections(report)


def test_loops_of_another_length_are_not_there() -> None:
    """ "Each loop of 4 ch" over loops of six is a fault, and no round of nothing."""
    report = check(f"{_ARCHES}Rnd 3: 8 sc in each loop of 4 ch. (40 sc)\n")
    assert corrections(report)


@pytest.mark.parametrize(
    "tail", [", ending with a Row 2", ", ending with a WS row", " until piece measures 4 in", " ending with Row 2"]
)
def test_rows_in_a_range_are_so_many(tail: str) -> None:
    """A range of row numbers tells how many rows are worked again, whatever they are said to end with."""
    text = (
        "Cloth\nUS terms\n\nCLOTH\nRow 1: Fsc 12, turn. (12)\nRow 2: Ch 1, 2 sc in first st, sc in each st across, turn. (13)\n"
        f"Row 3: Ch 1, sc in each st across, turn. (13)\nRows 4-8: Rep Rows 2 and 3{tail}.\nRow 9: Ch 1, sc in each st across.\n"
    )
    assert counts(check(text))[-1] == 16


def test_rows_called_out_of_order() -> None:
    """ "Alternate Rows 3 and 2" begins with Row 3; "twice" is two passes of both."""
    text = (
        "Cloth\nUS terms\n\nCLOTH\nRow 1: Fsc 12, turn. (12)\nRow 2: Ch 1, 2 sc in first st, sc in each st across, turn. (13)\n"
        "Row 3: Ch 1, 3 sc in first st, sc in each st across, turn. (15)\n{}\n"
    )
    assert counts(check(text.format("Rows 4-6: Alternate Rows 3 and 2, ending with a Row 3.")))[-3:] == [17, 18, 20]
    assert counts(check(text.format("Rows 4-7: Rep Rows 3 and 2 twice.")))[-4:] == [17, 18, 20, 21]


@pytest.mark.parametrize(
    "call", ["As 2nd row, working last 2 dc in top of ch-3.", "As 2nd, placing the last 2 dc in 3rd of 3 ch."]
)
def test_where_the_last_of_a_called_row_go(call: str) -> None:
    """Where the last stitches of a row that is called go is no work of its own."""
    text = (
        "Strip\nUS terms\n\nSTRIP\n1st row: Fsc 12, turn. 12 sts.\n"
        f"2nd row: Ch 3 (counts as dc), dc in first st, dc in each st to last st, 2 dc in last st, turn. 14 sts.\n3rd row: {call}\n"
    )
    assert counts(check(text))[-1] == 16


_LOOPS = (
    "Broomstick Collar\nUS terms\n\nCOLLAR\nRow 1: Fsc 24. Do not turn. (24 sc)\n"
    "Row 2: {}\nRow 3: {}\nRow 4: Ch 1, turn, sc in each sc across. (24 sc)\n"
)
_DRAWN = "Place loop from hook onto needle, sk first st, *insert hook in next st, draw up a tall loop and slip it onto needle; rep from * across. (24 loops)"
_OFF = "*Insert hook through next 6 loops and slip them off needle together, 6 sc in group; rep from * across. (24 sc)"


@pytest.mark.parametrize(
    "drawn, off",
    [
        (_DRAWN, _OFF),
        ("Pull up a loop in each sc across and put it on the broomstick. (24 loops)", _OFF),
        (
            _DRAWN,
            "Slip first 4 loops off needle together, ch 1, work 4 sc in group, *slip next 4 loops off needle together, 4 sc in same group; rep from * to end. (6 groups)",
        ),
        (_DRAWN, "[Holding 3 loops together as one, 3 sc in center of loops] 8 times. (24 sc)"),
    ],
)
def test_broomstick_lace(drawn: str, off: str) -> None:
    """A loop for each stitch is laid on the needle, and as many stitches go through several loops at once."""
    report = check(_LOOPS.format(drawn, off))
    assert counts(report) == [24, 24, 24, 24]
    assert not corrections(report)


@pytest.mark.parametrize(
    "off",
    [
        "*Insert hook through next 6 loops and slip them off needle together, 2 sc in first loop, 4 sc in group; rep from * across.",
        "*Insert hook through next 6 loops and 2 sts of the row below, 6 sc in group; rep from * across.",
        "*Slip 6 loops off needle together, ch 3, 6 dc in group; rep from * across.",
    ],
)
def test_other_broomstick_groups_are_not_guessed(off: str) -> None:
    """Groups told with more than loops and stitches, or with a chain that may count, are left uncounted."""
    assert outcomes(check(_LOOPS.format(_DRAWN, off)))[2] == "not-recomputed"


@pytest.mark.parametrize(
    "words",
    [
        "These 2 rows set the shell pattern.",
        "Rows 1 and 2 form the colour sequence.",
        "Last 2 rows make the lace design.",
    ],
)
def test_rows_that_are_the_pattern(words: str) -> None:
    """What the rows so far are called makes no row of its own."""
    text = f"Strip\nUS terms\n\nSTRIP\nRow 1: Fsc 12, turn. (12)\nRow 2: Ch 1, sc in each st across, turn.\n{words}\nRow 3: Ch 1, 2 sc in each st across. (24)\n"
    assert counts(check(text))[-1] == 24


def test_a_change_of_colour_hides_no_print() -> None:
    """Where a row differs, a later row bears its print out beyond a change of colour."""
    text = (
        "Stripes\nUS terms\n\nSTRIPES\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12)\n"
        "Row 2: Ch 1, turn, sc in first 10 sts, sc2tog. (12)\nRow 3: Ch 1, turn, sc in each st across. Fasten off A, join B.\n"
        "Row 4: Ch 1, turn, sc in each st across. (12)\n"
    )
    report = check(text)
    assert counts(report)[-2:] == [12, 12]
    assert len(corrections(report)) == 1


def test_a_mesh_goes_on_as_printed() -> None:
    """A mesh that lacks a space of those printed goes on as printed where the next row bears that out."""
    text = (
        "Edging\nUS terms\n\nEDGING\nCh 20.\nRow 1: Sc in 2nd ch from hook and in each ch across. (19 sc) Ch 5 (counts as dc and ch 2), turn.\n"
        "Row 2: Sk first 4 sc, dc in next sc, *ch 2, sk 2 sc, dc in next sc; rep from * across. (6 sps) Ch 1, turn.\n"
        "Row 3: Sc in first dc, *ch 5, sk next dc, sc in next dc; rep from * across, working last sc in 3rd ch of ch-5. (3 loops)\n"
    )
    assert counts(check(text))[-1] == 4


@pytest.mark.parametrize("end", ["ending last rep with dc in last sc", "ending with dc in last sc"])
def test_a_first_chain_like_the_rows_last_stitch(end: str) -> None:
    """The ch 6 that begins a row of loops is the like of the dc, with its ch 3, that cuts the last pass short."""
    text = (
        "Edging\nUS terms\n\nEDGING\nRow 1: Fsc 13. Turn. (13)\nRow 2: Ch 1, sc in first sc, *(2 dc, ch 3, 2 dc) in next sc, sc in next sc; rep from * across. Turn. (7 sc, 24 dc)\n"
        f"Row 3: Ch 6, *sc in next ch-3 sp, ch 3, dc in next sc, ch 3; rep from * across, {end}. (12 ch-3 sps)\n"
    )
    report = check(text)
    assert counts(report)[-1] == 13
    assert not corrections(report)


def test_lists_behind_dotted_headings() -> None:
    """ "ABBREVIATIONS . . . dc, double crochet" opens the list as a full stop does."""
    text = (
        "Edging\n\nMATERIALS . . . Cotton, one ball.\nABBREVIATIONS . . . ch, chain; p, picot (ch 3, sl st in last sc made); rep, repeat; sc, single crochet.\n\n"
        "EDGING . . . Ch 9.\n1st row: Sc in 2nd ch from hook and in each ch across (8 sc).\n2nd row: Ch 1, turn, * sc in next 2 sc, p; rep from * across. (8 sc)\n"
    )
    report = check(text)
    assert counts(report)[-1] == 8
    assert not [line for rule, line in all_findings(report) if rule == "abbreviation-undefined"]
