"""Slip stitches before a row's chain, counts behind commas, gates with a full stop, work behind words of where; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_US = "Test piece\nUS terms\n\nPIECE\n{}\n"
_UK = "Test coat\nUK terms\nSizes 1st (2nd, 3rd)\n\nCOAT\n{}\n"


def _made(text: str, size: int = 0) -> list[int | None]:
    return [
        cell.made and cell.made.stitches
        for row in check(text).ledger.rows
        for cell in (row.cells[size : size + 1] or row.cells[:1])
    ]


@pytest.mark.parametrize("words", ["Sl st across first 3 sts", "Sl st in first 3 sts", "Sl st over next 3 sts"])
def test_slips_before_a_chain_are_behind_the_row(words: str) -> None:
    """The next row is worked over the stitches between, and not over those that were slipped along, count or no count."""
    rows = f"Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: {words}, ch 1, sc in each st to last 3 sts, turn. (14 sc)\n"
    rows += "Row 3: Ch 1, sc in each st across, turn.\nRow 4: Ch 1, sc2tog, sc in each st across, turn."
    assert _made(_US.format(rows))[1:] == [20, 14, 14, 13]


def test_slips_without_a_chain_may_be_stitches() -> None:
    """Slip stitches that a printed count takes in are stitches of the row, as before."""
    rows = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Sl st in next 4 sts, sc in next 16 sts, turn. (20 sts)\n"
    assert _made(_US.format(rows + "Row 3: Ch 1, sc in each st across, turn. (20 sc)"))[1:] == [20, 16, 20]


@pytest.mark.parametrize(
    ("words", "makes"),
    [
        ("Dc in 4th ch from hook (3 skipped ch count as first dc) and in next 5 ch, ch 2, dc in last 8 ch", 15),
        ("Dc in 4th ch from hook (mark this st), and in next 5 ch, ch 2, dc in last 8 ch", 15),
        ("Dc in 4th ch from hook and in next 5 ch, ch 2, dc in last 8 ch", 15),
    ],
)
def test_more_places_behind_a_note(words: str, makes: int) -> None:
    """What "and in next 5 ch" names behind a note is more places for the stitch before, and not for the chain behind."""
    made = _made(_US.format(f"Ch 17.\nRow 1: {words}, turn. ({makes} dc)"))
    assert made[-1] == makes


def test_a_list_for_another_sort_of_place() -> None:
    """Into a space named behind a note goes what follows."""
    rows = "Ch 9.\nRow 1: Sc in 2nd ch from hook, ch 2, skip 2 ch, sc in last 5 ch, turn.\n"
    rows += "Row 2: Ch 1, sc in first st (mark it) and in next ch-2 sp make 3 dc, turn."
    assert _made(_US.format(rows))[-1] == 4


@pytest.mark.parametrize("never", ["is never a stitch", "is not a stitch", "isn't a st"])
def test_chains_that_are_no_stitches(never: str) -> None:
    """However it is denied, the chain is not counted, and nothing is asked."""
    rows = f"The turning ch-2 {never}.\nCh 22.\nRow 1: Hdc in 3rd ch from hook and in each ch across, turn.\nRow 2: Ch 2, hdc in each st across."
    report = check(_US.format(rows))
    assert [row.cells[0].made.stitches for row in report.ledger.rows][-1] == 20
    assert "turning-chain-unsaid" not in {finding.rule for finding in report.findings}


_SLEEVE = (
    "Make 30 (32, 34) ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end, 29(31, 33) dc, turn.\n"
    "2nd row: 1 ch, 1 dc in each of next 9 dc, 4 ch, miss 11(13, 15) dc, 1 dc in each of last 9 dc, turn.\nFasten off.\n"
    "SLEEVE\nRejoin yarn to first ch of underarm.\n1st row: 1 ch, 1 dc in each of next 4 ch, 1 dc in each of the 11(13, 15) missed dc, {}"
)


def test_a_count_that_the_words_come_to() -> None:
    """Behind a comma stands the count that the clauses before it make in each size, and no work."""
    for size, count in enumerate((15, 17, 19)):
        assert _made(_UK.format(_SLEEVE.format("15(17, 19) dc, turn.")), size)[-1] == count


@pytest.mark.parametrize(
    ("words", "count"),
    [("6 sc, inc, 8 sc, turn", 16), ("sc in next 6 sts, 3 sc in next st, sc in last 8 sts, turn", 17)],
)
def test_figures_that_are_work(words: str, count: int) -> None:
    """Where the clauses before name no places either, a figure that they happen to come to is work like them."""
    rows = f"Ch 16.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (15 sc)\nRow 2: Ch 1, {words}."
    assert _made(_US.format(rows))[-1] == count


@pytest.mark.parametrize(
    "end",
    [
        "30 dc, turn",
        "turn, 30 dc",
        "30 dc. Fasten off",
        "inc 1 st at centre back, 31 dc, turn",
        "increasing 1 st in the middle of the row, turn, 31 dc",
    ],
)
def test_counts_behind_a_run(end: str) -> None:
    """Behind a run to the end, its shaping and its turn, figures are its count."""
    rows = f"Make 31 ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn.\n2nd row: 1 ch, 1 dc in each dc to end, {end}."
    report = check(_UK.format(rows))
    assert report.ledger.rows[-1].cells[0].made.stitches == (31 if "1 st" in end else 30)
    assert report.ledger.rows[-1].cells[0].outcome.value == "agrees"


def test_shells_counted_behind_a_repeat() -> None:
    """So many shells behind a repeat to the end are counted; one shell is the last of them."""
    rows = "Make 32 ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn.\n"
    rows += "2nd row: 1 ch, 1 dc in first dc, *miss 2 dc, 5 tr in next dc (shell made), miss 2 dc, 1 dc in next dc; rep from * to end, {}, turn."
    assert _made(_UK.format(rows.format("5 shells")))[-1] == 31


@pytest.mark.parametrize(
    "words",
    ["Commence at the neck edge with 21 ch.", "Begin at hem with ch 21.", "Start at lower edge by making 21 ch."],
)
def test_where_the_chain_is_begun(words: str) -> None:
    """Words of where before the first chain are passed over, and the chain is worked."""
    assert _made(_UK.format(words + "\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn."))[-1] == 20


def test_where_work_begins_is_no_chain() -> None:
    """A place in the row below is no such words."""
    rows = "Make 21 ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn.\n2nd row: Begin at the second dc with 3 ch, 1 dc in each dc to end."
    assert _made(_UK.format(rows))[-1] is None


@pytest.mark.parametrize(
    "gate",
    ["2nd and 3rd sizes only.- 2nd row:", "2nd and 3rd sizes only. 2nd row:", "2nd and 3rd sizes only. - 2nd row:"],
)
def test_gates_that_end_in_a_full_stop(gate: str) -> None:
    """The row behind is for those sizes alone, until all are named in the same way."""
    rows = f"Make 21 (31, 41) ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn.\n{gate} 1 ch, 2 dc in first dc, 1 dc in each dc to end, turn.\n"
    rows += "All sizes.- Next row: 1 ch, 1 dc in each dc to end, turn."
    assert [_made(_UK.format(rows), size)[-2:] for size in range(3)] == [[None, 20], [31, 31], [41, 41]]


@pytest.mark.parametrize("led", ["Now then - Next row:", "Everybody.- Next row:", "On we go - last round:"])
def test_a_label_amid_the_words(led: str) -> None:
    """A line with a row's label behind words that are not understood is told of, never passed over."""
    rows = f"Make 21 ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn.\nDIVIDE\n{led} 1 ch, 1 dc in each dc to end, 2 dc in last dc, turn."
    report = check(_UK.format(rows))
    assert report.ledger.rows[-1].cells[0].made is None or report.ledger.rows[-1].cells[0].made.stitches == 21
    assert len(report.ledger.rows) == 3


_ROWS = (
    "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20)\nRow 2: Ch 1, sc in each st across, turn. (20)\n"
    "Row 3: Ch 1, sc2tog, sc in each st across, turn. (19)\nRow 4: Ch 1, sc in each st across, turn. (19)\n{}"
)


@pytest.mark.parametrize(
    "words",
    [
        "Rep these 2 rows twice more. (17)",
        "Repeat the previous two rows 2 more times. (17)",
        "Rep the above 2 rows until 17 sts remain.",
        "Work the same 2 rows twice more.",
    ],
)
def test_the_rows_just_worked(words: str) -> None:
    """ "These 2 rows" are the last two, and never Row 2."""
    assert _made(_US.format(_ROWS.format(words)))[5:] == [18, 18, 17, 17]


@pytest.mark.parametrize(
    "words",
    [
        "Repeat this row 3 times.",
        "Rep this row until 7 rows are done.",
        "Keep repeating that row for 7 rows total.",
        "Work 3 more rows the same.",
    ],
)
def test_the_row_just_worked(words: str) -> None:
    """ "This row" is the last one, and a figure behind it tells how often."""
    assert _made(_US.format(_ROWS.format(words)))[5:] == [19, 19, 19]


@pytest.mark.parametrize(
    "words", ["Rep these rows twice more.", "Rep 2 rows 3 times more.", "Work 3 more rows in the same way, but looser."]
)
def test_rows_that_are_not_told(words: str) -> None:
    """How many rows are meant, or which, is not made up."""
    assert _made(_US.format(_ROWS.format(words)))[-1] is None


@pytest.mark.parametrize("words", ["As Row 2.", "Rep Row 2.", "The same as Row 2."])
def test_rows_by_their_numbers(words: str) -> None:
    """A number behind the row word is still the row's."""
    assert _made(_US.format(_ROWS.format(f"Row 5: {words}")))[-1] == 19


def test_two_decreases_around_a_run_that_shrinks() -> None:
    """Of rounds in turn the one that shapes has its run shorter each time, and the plain one is as it was."""
    rows = "Ch 24, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. (24)\nRnd 2: Ch 1, [sc2tog, sc in next 8 sts, sc2tog] twice, join. (20)\n"
    rows += "Rnd 3: Ch 1, sc in each st around, join.\nRnds 4-7: Rep Rnds 2 and 3, with 2 sts less between the decreases each time. (12)"
    assert _made(_US.format(rows))[1:] == [24, 20, 20, 16, 16, 12, 12]


@pytest.mark.parametrize(
    "words",
    [
        "Turn the tube so you can work into the row ends.",
        "Leave yarn attached and turn to work in the ends of the rows.",
    ],
)
def test_a_line_below_a_call(words: str) -> None:
    """A row's number ends its sentence where the next line begins another; a seam and a turn of the piece are no work."""
    rows = f"Ch 7.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (6)\nRows 2-18: repeat Row 1\nSl st the short ends together. {words}\n"
    rows = rows.replace("repeat Row 1", "Ch 1, sc in each st across, turn. (6)\nRow 19: Repeat Row 2")
    made = _made(_US.format(rows + "LEG\nRnd 1: Ch 1, sc in each row end around, join. (19)"))
    assert made[-1] == 19 and None not in made


@pytest.mark.parametrize(
    ("text", "makes"),
    [
        (
            "Test Socks\nUS terms\n\nCUFF\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8)\nTOE\nRow 1: Ch 1, sc in each st across. (8)\n\nOne done! Have a biscuit. Now make the second sock to match, or else.",
            [2, 2],
        ),
        (
            "Test Top\nUS terms\n\nBACK\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8)\nSLEEVES\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8)\nWork second sleeve to match.",
            [1, 2],
        ),
        (
            "Test\nUS terms\n\nMITTS\nBoth alike\n\nCuff\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8)\nHand\nRow 1: Ch 1, sc in each st across. (8)",
            [2, 2],
        ),
        (
            "Test Socks\nUS terms\n\nCUFF\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8)\nBefore you make the second sock, rest.",
            [1],
        ),
    ],
)
def test_how_many_are_made(text: str, makes: list[int]) -> None:
    """A sentence may tell it behind talk, or a line under a heading over sections; a sentence about it bids nothing."""
    assert [part.pieces for part in check(text).pattern.parts] == makes


def test_rounds_named_with_each_size() -> None:
    """A list that names the sizes may count rounds in all."""
    text = "Test hat\nUS terms\nSizes: Small, Large\n\nBODY\nCh 20, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. (20)\n"
    text += "Keep repeating that round for 4 rounds total for Small and 6 for Large."
    assert [sum(made is not None for made in _made(text, size)) for size in range(2)] == [5, 7]


@pytest.mark.parametrize("left", ["left behind it", "left at this end", "left over", "left unworked"])
def test_short_rows_gone_over_again(left: str) -> None:
    """A "short row" is a row of the piece, and what it left is worked where the words name it and its number."""
    rows = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20)\nShort row 1: Ch 1, sc in each st to last 5 sts, turn and leave those 5 sts. (15)\n"
    report = check(_US.format(rows + f"Next row: Ch 1, sc in each sc, then sc in each of the 5 sts {left}, turn. (20)"))
    assert [row.part.name for row in report.ledger.rows] == ["PIECE"] * 4
    assert report.ledger.rows[-1].cells[0].made.stitches == 20


@pytest.mark.parametrize(
    "until", ["measures (5, 6) in. from beginning", "is (5, 6) in. long", "is 5 in. below waist", "measures (5, 6) in"]
)
def test_inches_with_a_full_stop(until: str) -> None:
    """The full stop of "in." ends no sentence where the words go on."""
    text = f"Test skirt\nUS terms\nSizes (S, M)\n\nSKIRT\nCh (21, 31).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nWork even until skirt {until}.\nNext row: Ch 1, sc in each sc across, do not turn or fasten off."
    assert [_made(text, size)[-1] for size in range(2)] == [20, 30]


@pytest.mark.parametrize(("heading", "makes"), [("Sleeves, both the same", 2), ("SLEEVES, two alike", 2)])
def test_a_heading_with_a_comma(heading: str, makes: int) -> None:
    """How many are made may stand behind a comma."""
    text = f"Test top\nUS terms\n\nBack\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8)\nFasten off.\n{heading}\nJoin yarn in first st.\nRow 1: Ch 1, sc in each of 8 sts. (8)"
    assert check(text).pattern.parts[-1].pieces == makes


def test_a_list_is_no_weight_of_yarn() -> None:
    """Balls over the sizes behind a yarn are no category of it."""
    text = "Test\nSizes (S, M, L)\n\nMaterials: sport cotton, (3, 3, 4) balls; size F-5 (3.75 mm) hook\n\nPIECE\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8)"
    assert "yarn-weight-disagrees" not in {finding.rule for finding in check(text).findings}
    assert "yarn-weight-disagrees" in {
        finding.rule for finding in check(text.replace("(3, 3, 4) balls", "(3)")).findings
    }


@pytest.mark.parametrize("chain", ["31 [41; 51] ch", "31[41;51] ch", "31-41-51 ch", "31 (41) 51 ch", "31/41/51 ch"])
def test_a_heading_over_a_list_of_chains(chain: str) -> None:
    """A piece may have no row with a label: its name stands over the chain, however its list is printed."""
    text = f"Test waistcoat\nUK terms\nSizes S, M, L\n\nBACK\n21 ch.\nRow 1: 1 dc into 2nd ch from hook, 1 dc into each ch to end.\nFasten off.\nBELT\n{chain}. 1 dc into 2nd ch from hook, 1 dc into each ch to end. Fasten off."
    report = check(text)
    assert [part.name for part in report.pattern.parts] == ["BACK", "BELT"]
    assert [cell.made.stitches for cell in report.ledger.rows[-1].cells] == [30, 40, 50]


def test_a_list_in_brackets_behind_the_terms() -> None:
    """Short forms may be explained in one bracket behind the terms, without a heading."""
    text = "Test\nSome wool. (British terminology; ch = chain, dc = double crochet, tr = treble, ss = slip stitch)\n\nBACK\n21 ch.\nRow 1: 1 dc into 2nd ch from hook, 1 dc into each ch to end."
    assert {form for one in check(text).pattern.abbreviations for form in one.forms} >= {"ch", "dc", "tr", "ss"}


def test_the_other_sock_is_no_row() -> None:
    """A sentence that tells that the piece is made twice is no row of it, whatever talk follows; more work is."""
    text = "Test Socks\nUS terms\n\nCUFF\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8)\nWork the other sock the same way, and weave in the ends."
    assert _made(text)[1:] == [8]
    assert _made(text.replace(", and weave in the ends.", ", but with 12 sc in Row 1."))[-1] is None


_GUSSET = (
    "Ch 20, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. (20)\n"
    "Rnd 2: Ch 1, sc in next 9 sc, 2 sc in each of next 2 sc, sc in each sc around, join. (22)\n"
    "Rnd 3: Ch 1, sc in next 9 sc, 2 sc in next sc, sc in next 2 sc, 2 sc in next sc, sc in each sc around, join. ({})\n{}\nNext rnd: Ch 1, sc in each sc around, join."
)


@pytest.mark.parametrize(
    "words",
    [
        "Continue to inc in this way every other rnd until there are 28 sc.",
        "Cont increasing as before on every alt rnd until there are 28 sts.",
        "Keep increasing in the same manner every rnd until there are 28 sc.",
    ],
)
def test_rows_that_go_on_in_this_way(words: str) -> None:
    """By how many each gains is what the printed counts before have gained, each from the other."""
    assert _made(_US.format(_GUSSET.format(24, words)))[1:] == [20, 22, 24, 26, 28, 28]


@pytest.mark.parametrize(
    ("count", "words"),
    [
        (24, "Continue to dec in this way every other rnd until there are 28 sc."),
        (25, "Continue to inc in this way every other rnd until there are 28 sc."),
        (24, "Continue to inc in this way, and dec at the other edge, every rnd until there are 28 sc."),
    ],
)
def test_rows_that_may_go_on_in_other_ways(count: int, words: str) -> None:
    """Counts that do not grow evenly, another sense, or more that is said: nothing is made up."""
    assert _made(_US.format(_GUSSET.format(count, words)))[4] is None


def test_rows_that_pass_their_end() -> None:
    """Rows that never come to the number are told of."""
    words = "Continue to inc in this way every other rnd until there are 27 sc."
    assert _made(_US.format(_GUSSET.format(24, words)))[-1] is None


@pytest.mark.parametrize("rows", ["on alt rows", "on alternate rows", "on every alt row", "every other row"])
def test_alternate_rows(rows: str) -> None:
    """Alternate rows are every other one."""
    text = (
        "Ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12)\n"
        + f"Dec 1 st at neck edge only {rows} until 9 sts rem."
    )
    assert _made(_US.format(text))[1:] == [12, 11, 10, 9]
