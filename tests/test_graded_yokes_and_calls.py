"""Yokes up to a section's own space, chains that a piece goes on along, sizes that share a figure, rows under a name; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_US = "Test piece\nUS terms\n\nPIECE\n{}\n"
_UK = "Test coat\nUK terms\nSizes 1st (2nd, 3rd)\n\n{}\n"
_SETS = "Test set\nUS terms\n\nSizes: Toddler, Lady, Gent\n\nHAT\n{}\n"


def _made(text: str, size: int = 0) -> list[int | None]:
    """What every row makes in one size; None where it was not counted."""
    return [
        cell.made and cell.made.stitches
        for row in check(text).ledger.rows
        for cell in (row.cells[size : size + 1] or row.cells[:1])
    ]


def _rules(text: str) -> set[str]:
    return {finding.rule for finding in check(text).findings if finding.weight.value != "style"}


_YOKE = (
    "Ch 20, join.\nRnd 1: Ch 1 (not a st), sc in next 6 ch, (sc, ch 2, sc) in next ch, sc in next 3 ch, (sc, ch 2, sc) in next ch, "
    "sc in next 5 ch, (sc, ch 2, sc) in next ch, sc in next 2 ch, (sc, ch 2, sc) in last ch, join. (24 sc)\n"
    "Rnd 2: Ch 1, {}, join.\nRnd 3: Ch 1, sc in each sc and in each ch around, join.\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "sc in each sc of the back to first ch-2 sp, ch 5, skip next 5 sc of sleeve, sc in each sc of front to next ch-2 sp, "
        "ch 5, skip next 4 sc of sleeve, sc in each sc to end",
        "sc in each sc to first ch-2 sp, ch 5, skip next 5 sc, sc in each sc to next ch-2 sp, ch 5, skip next 4 sc, sc in each sc to end",
    ],
)
def test_a_section_up_to_its_own_space(words: str) -> None:
    """The space that a skipped sleeve ends at is not the one at which the front ends: 7 + 7 + 1."""
    assert _made(_US.format(_YOKE.format(words)))[-2:] == [15, 25]


def test_a_section_that_is_not_worked_to_its_end() -> None:
    """Where more is said than the space at its end, the row is not counted."""
    words = "sc in each sc of back to last 2 sc before ch-2 sp, ch 5, skip next 5 sc of sleeve, sc in each sc to end"
    assert _made(_US.format(_YOKE.format(words)))[-2] is None


_STRIP = "Ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\nRow 2: Ch 1, sc in each sc across, {}\n\nBACK\n"


@pytest.mark.parametrize("end", ["do not turn, ch 6, turn.", "ch 6, turn.", "turn. Ch 6."])
def test_a_piece_that_goes_on_along_a_chain(end: str) -> None:
    """Five stitches along the chain, and those of the row behind them."""
    rows = "Row 1: Sc in 2nd ch from hook and in next 4 ch, sc in each sc across, turn. (17 sc)\nRow 2: Ch 1, sc in each st across, turn.\n"
    assert _made(_US.format(_STRIP.format(end) + rows))[-2:] == [17, 17]


def test_a_turning_chain_is_no_such_chain() -> None:
    """A piece that begins on a chain nobody told does not begin on the turning chain before it."""
    rows = "Row 1: Sc in 4th ch from hook and in next 4 ch, sc in each sc across, turn.\n"
    assert _made(_US.format(_STRIP.format("ch 1, turn.") + rows))[-1] is None


@pytest.mark.parametrize(
    ("words", "rows"),
    [
        ("until there are 7 rows in Panel", 7),
        ("until 7 rows have been worked in the panel, ending with a RS row", 7),
        ("until there are 7 rows in Border", None),
    ],
)
def test_rows_counted_in_a_piece(words: str, rows: int | None) -> None:
    """Seven rows of the piece at hand; how many another piece has, tells nothing of this one."""
    text = f"PANEL\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\nRow 2: Ch 1, sc in each sc across, turn.\nRep Row 2 {words}."
    made = _made(_US.format(text))[1:]
    assert made == [8] * rows if rows else made[-1] is None


def test_a_row_one_behind_rows_without_numbers_begins_anew() -> None:
    """ "Work as for First Gap" ends before the next piece, though its last row has no number."""
    rows = (
        "RIGHT SIDE\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\n\nFIRST GAP\n"
        "Row 1: Ch 1, sc in first 5 sc, turn, leaving rem sts unworked. (5 sc)\nNext row: Ch 1, sc in each sc across, turn.\n\n"
        "MIDDLE\nRow 1: Ch 1, 2 sc in first sc, sc in each sc across, turn. (6 sc)\n\nSECOND GAP\nWork as for First Gap.\n"
    )
    assert _made("Test\nUS terms\n\n" + rows)[1:] == [8, 5, 5, 6, 5, 5]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("14 sc for Toddler, 18 for Lady and Gent", [14, 18, 18]),
        ("14 sc for both Toddler and Lady, 18 for Gent", [14, 14, 18]),
        ("Toddler and Lady: 14, Gent: 18", [14, 14, 18]),
        ("14 for Toddler, Lady, 18 for Gent", [14, 14, 18]),
    ],
)
def test_sizes_that_share_a_figure(words: str, made: list[int]) -> None:
    """One figure for two sizes is each one's."""
    figures = dict(zip(("Toddler", "Lady", "Gent"), made, strict=True))
    chains = ", ".join(f"{figure + 1} for {name}" for name, figure in figures.items())
    text = _SETS.format(f"Ch {chains}.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn ({words})")
    assert [_made(text, size)[-1] for size in range(3)] == made
    assert "count-differs" not in _rules(text)
    assert "count-differs" in _rules(
        text.replace("18 for Gent", "19 for Gent")
        .replace("Gent: 18", "Gent: 19")
        .replace("for Lady and Gent", "for Gent and Lady")
        .replace("18 for Gent and", "19 for Gent and")
    )


def test_a_size_with_two_figures_is_no_list() -> None:
    """Where a size is named twice, nothing is told."""
    text = _SETS.format(
        "Ch 15.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn (14 for Toddler and Lady, 15 for Lady and Gent)"
    )
    assert "count-differs" not in _rules(text)


_RING = "Ch 12, join into a ring.\nRnd 1 - sc in each ch around (12)\nRnd 2 - 2 sc in first st, sc in each st to last st, 2 sc in last st (14)\nRnd 3 - sc in each st around\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Repeat rnds 2 and 3 until there are 18 sts", [16, 16, 18, 18]),
        ("Rep last 2 rnds twice more", [16, 16, 18, 18]),
        ("Repeat Rnd 3 two more times", [14, 14]),
    ],
)
def test_rows_called_in_a_line_of_their_own(words: str, made: list[int]) -> None:
    """The line above ends without a full stop, and is whole all the same."""
    assert _made(_US.format(f"{_RING}{words}"))[1:] == [12, 14, 14, *made]


def test_a_repeat_that_goes_on_with_its_clause() -> None:
    """A line that goes on with the clause above it stays part of that row."""
    rows = "Ch 12, join into a ring.\nRnd 1 - *sc in next 2 ch, 2 sc in next ch\nRep from * around (16)\n"
    assert _made(_US.format(rows))[1:] == [16]


@pytest.mark.parametrize(
    "label",
    ["Thumb rnd - ", "Heel opening round – ", "Split round. ", "Rim, rnd 4. ", "Rim rnd 4 - ", "Brim: next rnd - "],
)
def test_rows_under_a_name(label: str) -> None:
    """What a row is called stands before a dash or a full stop."""
    assert _made(_US.format(f"{_RING}{label}Skip 3 sts, sc in each st around."))[1:] == [12, 14, 14, 11]


@pytest.mark.parametrize(
    "line", ["After this round - ", "End of last round. ", "See also round 3. ", "Repeat each round. "]
)
def test_what_is_no_name(line: str) -> None:
    """Words of when and how before "round" do not make it a row of its own."""
    report = check(_US.format(f"{_RING}{line}Skip 3 sts, sc in each st around."))
    assert line.strip(" .-") not in {row.row.label.words for row in report.ledger.rows if row.row.label is not None}


def test_rows_behind_a_name_and_a_number_of_them() -> None:
    """ "Brim: next 3 rnds" are three rows of the piece."""
    assert _made(_US.format(f"{_RING}Brim: next 3 rnds - sc in each st around."))[1:] == [12, 14, 14, 14, 14, 14]


_COAT = (
    "BACK\nMake 20 ch.\n1st row: 1 dc in 2nd ch from hook, * 1 tr in next ch, 1 dc in next ch; rep from * to end. (19 sts)\n"
    "2nd row: 3 ch (counts as 1 tr), miss first dc, * 1 dc in next tr, 1 tr in next dc; rep from * to end.\n"
    "3rd row: 1 ch (not a st), 1 dc in first tr, * 1 tr in next dc, 1 dc in next tr; rep from * to end.\n"
    "{}Fasten off.\n\nPOCKET\nMake 10 ch.\n1st row: 1 dc in 2nd ch from hook, * 1 tr in next ch, 1 dc in next ch; rep from * to end. (9 sts)\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "Cont in patt as for Back until pocket measures 8 cm.\nNext row: Patt to last 2 sts, turn. (7 sts)",
        "2nd row: Work in patt as given for Back.\nNext row: Patt to last 2 sts, turn. (7 sts)",
    ],
)
def test_in_the_pattern_of_another_piece(words: str) -> None:
    """A pattern that kept its number there keeps it here."""
    made = _made("Test coat\nUK terms\n\n" + _COAT.format("") + words)
    assert made[-3:] == [9, 9, 7]


def test_in_a_pattern_that_does_not_keep_its_number() -> None:
    """Of a piece that gains in its rows the pattern tells nothing."""
    more = "4th row: 1 ch, 2 dc in first st, 1 dc in each st to end. (20 sts)\n"
    grows = _COAT.replace("rep from * to end.\n3rd", "rep from * to end, 1 tr in same place.\n3rd")
    made = _made(
        "Test coat\nUK terms\n\n" + grows.format(more) + "Cont in patt as for Back until pocket measures 8 cm."
    )
    assert made[-1] is None


@pytest.mark.parametrize(
    ("words", "made"),
    [
        (
            "Inc 1 st at each end of next row and every foll 2nd (3rd, 3rd) row until there are 16 sts",
            [[12, 12, 14, 14, 16], [12, 12, 12, 14, 14, 14, 16]],
        ),
        (
            "Inc 1 st at each end of next and every foll 3rd (2nd, 2nd) row 2 times more",
            [[12, 12, 12, 14, 14, 14, 16], [12, 12, 14, 14, 16]],
        ),
    ],
)
def test_rows_as_far_apart_as_a_size_has_them(words: str, made: list[list[int]]) -> None:
    """Each size has rows between the shaped ones of its own."""
    text = _UK.format(
        "COAT\nMake 11 ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end. (10 dc)\n" + words + "."
    )
    for size, expected in enumerate(made):
        shaped = [one for one in _made(text, size)[2:] if one is not None]
        assert shaped == expected


def test_called_rows_as_far_apart_as_a_size_has_them() -> None:
    """The rows between them are not told one by one, what all come to is."""
    text = _UK.format(
        "COAT\nMake 11 ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end. (10 dc)\nInc 1 st at each end of every 4th (6th, 8th) row 3 (3, 2) times. (16 (16, 14) dc)"
    )
    assert [_made(text, size)[-1] for size in (0, 1)] == [16, 16]
    assert "count-differs" not in _rules(text)
    assert "count-differs" in _rules(text.replace("(16 (16, 14) dc)", "(16 (18, 14) dc)"))


_LEG = "LEFT LEG\nCh 10, join.\nRnd 1: Ch 1 (not a st), sc in each ch around, join. (10 sc)\nRnd 2: Ch 1, 2 sc in first sc, sc in each sc around, join. (11 sc)\nRnd 3: Ch 1, sc in each sc around, join.\nFasten off.\n\nRIGHT LEG\nCh 8, join.\nRnd 1: Ch 1, sc in each ch around, join. (8 sc)\n"


@pytest.mark.parametrize(
    "words",
    ["Work as for Left Leg from Rnd 2 to end", "Finish as Left Leg from Rnd 2", "Work as Left Leg from Rnd 2 onwards"],
)
def test_a_piece_gone_on_with_as_another(words: str) -> None:
    """Rows 2 and 3 of that leg, on the stitches of this one, and without its beginning."""
    assert _made(f"Test\nUS terms\n\n{_LEG}{words}.")[-3:] == [8, 9, 9]


def test_a_row_that_the_other_piece_has_not() -> None:
    """Where there is no such row, nothing is worked."""
    assert _made(f"Test\nUS terms\n\n{_LEG}Work as for Left Leg from Rnd 7 to end.")[-1] is None


@pytest.mark.parametrize(
    "label", ["Rnds 4-5 for Toddler, 4-6 for Lady and Gent - ", "Rnds 4-5 (Toddler), 4-6 (Lady), 4-6 (Gent): "]
)
def test_labels_that_name_the_sizes(label: str) -> None:
    """Two rounds for one size, three for the others."""
    text = _SETS.format(f"{_RING}{label}sc in each st around")
    assert [len([one for one in _made(text, size)[1:] if one]) for size in range(3)] == [5, 6, 6]


@pytest.mark.parametrize("end", ["After Rnd 4, fasten off.", "After the last rnd cut yarn."])
def test_when_a_piece_is_fastened_off(end: str) -> None:
    """What is done after a row, is no work of it."""
    assert _made(_US.format(f"{_RING}Rnd 4 - sc in each st around. {end}"))[1:] == [12, 14, 14, 14]


def test_work_after_a_row_is_not_passed_over() -> None:
    """Stitches worked after a row are not when it is fastened off."""
    assert _made(_US.format(f"{_RING}Rnd 4 - sc in each st around. After Rnd 4, 2 sc in next st."))[-1] is None


@pytest.mark.parametrize("end", ["to other corner", "to the opposite end", "to opposite corner"])
def test_along_an_edge_to_its_end(end: str) -> None:
    """So many stitches along an edge, however its end is called."""
    rows = f"Ch 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8 sc) Fasten off.\nBAND\nJoin yarn at corner, ch 1, work 15 sc along neck edge {end}, turn.\nNext row: Ch 1, sc in each sc across."
    assert _made(_US.format(rows))[-2:] == [15, 15]


def test_along_an_edge_short_of_its_end() -> None:
    """Before so many stitches is not to its end."""
    rows = "Ch 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8 sc) Fasten off.\nBAND\nJoin yarn at corner, ch 1, work 15 sc along neck edge to last 3 sts, turn."
    assert _made(_US.format(rows))[-1] is None


@pytest.mark.parametrize("verb", ["stand for", "take the place of", "act as"])
def test_what_chains_stand_for(verb: str) -> None:
    """A note in the plural says as much as one in the singular."""
    rows = f"3 ch at the beg of a row {verb} the first tr.\n\nCOAT\nMake 12 ch.\n1st row: 1 tr in 4th ch from hook, 1 tr in each ch to end. (10 tr)\n2nd row: 3 ch, miss first tr, 1 tr in each tr to end."
    text = "Test coat\nUK terms\n\n" + rows
    assert _made(text)[1:] == [10, 10] and "turning-chain-unsaid" not in _rules(text)


_GATED = "Test cap\nUS terms\n\nSizes: S (M, L, XL)\n\nCAP\nRnd 1: 6 sc in a magic ring. (6)\nRnd 2: 2 sc in each sc. (12)\n{}\nRnd 3: (sc 1, 2 sc in next) 6 times. (18)\nAll sizes:\nNext rnd: Sc in each sc around.\n"


@pytest.mark.parametrize(
    "gate",
    [
        "Sizes M, L and XL only --",
        "SIZES M/L/XL ONLY -->",
        "M/L/XL --",
        "Sizes M, L and XL only ~",
        "= Sizes M, L and XL only =",
        "Sizes M, L and XL only!",
        "Sizes M and larger:",
        "Sizes M and up only",
        "Size M and all larger sizes:",
        "Sizes M+ only:",
    ],
)
def test_gates_with_other_signs_behind_them(gate: str) -> None:
    """Whatever sign stands behind the sizes, the others do not work what follows."""
    assert [_made(_GATED.format(gate), size)[-1] for size in range(4)] == [12, 18, 18, 18]


@pytest.mark.parametrize(
    ("gate", "last"), [("Sizes L and smaller:", [18, 18, 18, 12]), ("Size XL and up:", [12, 12, 12, 18])]
)
def test_gates_from_a_size_on(gate: str, last: list[int]) -> None:
    """From a size on, upwards or downwards."""
    assert [_made(_GATED.format(gate), size)[-1] for size in range(4)] == last


@pytest.mark.parametrize(
    "words", ["Work straight in rounds of dc for 5 rounds.", "Cont straight in rows of dc for 5 rows."]
)
def test_in_rows_of_a_stitch(words: str) -> None:
    """Five rows of the stitch that they are said to be of."""
    text = (
        "Test coat\nUK terms\n\nCOAT\nMake 13 ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end. (12 dc)\n"
    )
    assert _made(text + words)[1:] == [12] * 6


@pytest.mark.parametrize(
    ("words", "rows"),
    [("until 6, 8, 10 rows have been worked", [6, 8, 10]), ("until there are 6, 8, 10 rows", [6, 8, 10])],
)
def test_rows_in_all_by_a_list_of_commas(words: str, rows: list[int]) -> None:
    """Each size has so many rows as its figure says."""
    text = f"Test top\nUS terms\nSizes: 32, 36, 40 in\n\nBACK\nCh 21, 23, 25.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20, 22, 24 sc)\nRow 2: Ch 1, sc in each sc across, turn.\nRep Row 2 {words}."
    assert [len([one for one in _made(text, size)[1:] if one]) for size in range(3)] == rows


_SLEEVE = (
    "SLEEVE\nMake 21 (23, 25) ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end. (20 (22, 24) dc)\n"
    "Inc 1 st at each end of next and every foll alt row until there are {} sts.\nNext row: 1 ch, 1 dc in each dc to end.\n"
)


def test_rows_that_pass_their_number_by_in_one_size() -> None:
    """24 stitches and two more each time are 30, and then 32: never 31; the others come to theirs, and nothing else is told."""
    found = [one for one in check(_UK.format(_SLEEVE.format("26 (28, 31)"))).findings if one.weight.value != "style"]
    assert [(one.rule, one.sizes) for one in found if one.rule != "section-missing"] == [("count-differs", ("3",))]
    assert "30 sts, and then 32" in next(one.message for one in found if one.rule == "count-differs")


@pytest.mark.parametrize("more", [" (not counting edge st)", ", excluding the edge sts", ""])
def test_a_number_that_is_counted_otherwise(more: str) -> None:
    """Where something is left out of the number, nobody knows that it was passed by."""
    told = _SLEEVE.format("26 (28, 31)").replace("31) sts", f"31) sts{more}")
    assert ("count-differs" in _rules(_UK.format(told))) == (not more)


@pytest.mark.parametrize("figures", ["26 (28, 30)", "25 (27, 29)"])
def test_rows_that_all_come_to_their_number_or_none(figures: str) -> None:
    """Where no size comes to its number, the words may mean other rows: that is asked, and not corrected."""
    assert "count-differs" not in _rules(_UK.format(_SLEEVE.format(figures)))


_COLLAR = (
    "Ch 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (40 sc)\nShort Row 1: Ch 1, sc in first 25 sc, turn - 25 sts\n"
    "Short Row 2: Ch 1, sc in first 10 sc, turn - 10 sts\nShort Row 3: Ch 1, sc in each st of previous short row, {}, turn - 14 sts\n{}"
)


@pytest.mark.parametrize("past", ["sc in next 4 sts beyond it", "sc in next 4 sts past the turn", "sc in next 4 sts"])
@pytest.mark.parametrize("again", ["Rep Short Row 3 until there are 26 sts.", "Repeat Short Row 3 three more times."])
def test_short_rows_that_widen(past: str, again: str) -> None:
    """Ten stitches, and four more each time, which lie behind the turn."""
    assert _made(_US.format(_COLLAR.format(past, again)))[2:] == [25, 10, 14, 18, 22, 26]


@pytest.mark.parametrize(
    "past", ["sc in next st", "sc in next 3 sts, 2 sc in next st", "sc in next 4 sts before the marker"]
)
def test_short_rows_that_are_not_understood(past: str) -> None:
    """Where it is not told that what comes next lies behind the short row, nothing is called wrong."""
    text = _US.format(_COLLAR.format(past, ""))
    assert _made(text)[4] is None and "count-differs" not in _rules(text)


def test_a_short_row_with_a_wrong_count() -> None:
    """Ten and four are fourteen."""
    assert "count-differs" in _rules(
        _US.format(_COLLAR.format("sc in next 4 sts beyond it", "").replace("14 sts", "15 sts"))
    )


@pytest.mark.parametrize("label", ["Last 2 rnds: ", "Final two rnds - ", "Next two rnds: ", "The last 2 rnds – "])
def test_how_many_rows_a_label_tells(label: str) -> None:
    """Two rows of decreases, each of which halves the stitches."""
    rows = "Ch 12, join into a ring.\nRnd 1 - sc in each ch around (12)\n"
    assert _made(_US.format(f"{rows}{label}sc2tog around."))[1:] == [12, 6, 3]


@pytest.mark.parametrize("label", ["Ribbing rnds: ", "Two dec rnds: "])
def test_how_many_rows_a_label_does_not_tell(label: str) -> None:
    """A plural without a number that is read is not one row."""
    assert _made(_US.format(f"{_RING}{label}sc2tog around."))[-1] is None


def test_last_rows_with_a_count_alone() -> None:
    """ "Last 2 rnds - 14 sts" tells of rows, and is none."""
    assert _made(_US.format(f"{_RING}Last 2 rnds - 14 sts"))[1:] == [12, 14, 14]


@pytest.mark.parametrize(
    "line",
    [
        "Work 3 rows as Row 2, then dec 1 st at each end of next row and wimble.",
        "Work 5 rows in the manner of an old fence.",
        "Now dec 2 sts on alternate sides of the wimble in every row.",
    ],
)
def test_rows_told_in_vain(line: str) -> None:
    """Rows and shaping in words that are not understood: the next row stands on what is not known, and the line is told."""
    rows = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Ch 1, sc in each sc across, turn.\n"
    report = check(_US.format(f"{rows}{line}\nNext row: Ch 1, sc in each sc across."))
    assert report.ledger.rows[-1].cells[0].made is None
    assert ("not-understood", 9) in {(one.rule, report.source.line_of(one.span)) for one in report.findings}


@pytest.mark.parametrize("line", ["Work should measure 10 cm by now.", "The left edge is the neck edge from now on."])
def test_talk_between_rows(line: str) -> None:
    """Talk of the rows leaves them as they are."""
    rows = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Ch 1, sc in each sc across, turn.\n"
    assert _made(_US.format(f"{rows}{line}\nNext row: Ch 1, sc in each sc across."))[1:] == [20, 20, 20]


_CALLED = (
    "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Ch 1, sc2tog, sc in each sc to last 2 sc, sc2tog, turn. (18 sc)\n"
    "Row 3: {}\nRow 4: Ch 1, sc in each sc across."
)


@pytest.mark.parametrize(
    "words", ["Work as Row 2 to last 6 sts, turn.", "As Row 2 to last 4 sts.", "As Row 2, leaving last 3 sts unworked."]
)
def test_a_part_of_a_row_that_is_called(words: str) -> None:
    """A row worked as another in part is neither that row, again and again, nor has it its count."""
    made = _made(_US.format(_CALLED.format(words)))
    assert made[3:] == [None] * len(made[3:])


def test_rows_called_until_so_many_are_left() -> None:
    """ "Until 12 sts remain" ends rows that are worked again."""
    assert _made(_US.format(_CALLED.format("Rep Row 2 until 12 sts remain.")))[-1] == 12
