"""Words that look like those of graded patterns, and say something else: no count is guessed from them, and none corrected."""

from __future__ import annotations

import pytest
from helpers import check

_US = "Test piece\nUS terms\n\n{}\n"
_UK = "Test coat\nUK terms\n\n{}\n"


def _made(text: str, size: int = 0) -> list[int | None]:
    """What every row makes in one size; None where it was not counted."""
    return [
        cell.made and cell.made.stitches
        for row in check(text).ledger.rows
        for cell in (row.cells[size : size + 1] or row.cells[:1])
    ]


def _rules(text: str) -> set[str]:
    return {finding.rule for finding in check(text).findings if finding.weight.value != "style"}


_FRONT = "FRONT\nCh 15.\nRow 1: Hdc in 3rd ch from hook and in each ch across, {0}. (13 hdc)\nRow 2: Hdc in each hdc across, {0}. (13 hdc)\n\nBACK\n{1}"


@pytest.mark.parametrize("turning", ["ch 2, turn", "ch 3, turn", "turn, ch 2", "ch 4, turn"])
@pytest.mark.parametrize(
    "row",
    [
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)",
        "Row 1: Hdc in 2nd ch from hook, hdc in next 10 ch, turn. (11 hdc)",
        "Row 1: Sc in 2nd ch from hook, sc in each st across. (12 sc)",
    ],
)
def test_a_chain_to_turn_with_is_not_the_next_piece_s(turning: str, row: str) -> None:
    """A piece whose own chain is told elsewhere is not worked along the turning chain of the piece before."""
    text = _US.format(_FRONT.format(turning, row))
    assert _made(text)[-1] is None and not {"count-differs", "places-run-out", "places-left-over"} & _rules(text)


@pytest.mark.parametrize("chain", ["ch 4, turn", "ch 9, turn"])
def test_a_chain_with_the_stitches_behind_it(chain: str) -> None:
    """Where the stitches behind it are named, the row goes along the chain and on."""
    row = "Row 1: Sc in 2nd ch from hook and in each ch, sc in each sc across, turn."
    front = f"FRONT\nCh 14.\nRow 1: Sc in 2nd ch from hook and in each ch across, {chain}. (13 sc)\n\nBACK\n{row}"
    assert _made(_US.format(front))[-1] == {"4": 16, "9": 21}[chain[3]]


_LEG = "LEFT LEG\nCh 9, join.\nRnd 1: Ch 1 (not a st), sc in each ch around, join. (9 sc)\nRnd 2: Ch 1, 2 sc in first sc, sc in each sc around, join. (10 sc)\nFasten off.\n\nRIGHT LEG\n"


@pytest.mark.parametrize("words", ["from the beginning", "from start to end", "from beg"])
def test_a_piece_worked_as_another_from_its_beginning(words: str) -> None:
    """All of that piece."""
    assert _made(_US.format(f"{_LEG}Work as for Left Leg {words}."))[-2:] == [9, 10]


@pytest.mark.parametrize("words", ["from ribbing", "from the marker", "from waist down"])
def test_a_piece_worked_as_another_from_a_place(words: str) -> None:
    """From which of its rows, is not told."""
    assert _made(_US.format(f"{_LEG}Work as for Left Leg {words}."))[-1] is None


_POCKET = (
    "BACK\nMake 16 ch.\n1st row: 1 dc in 2nd ch from hook, * 1 tr in next ch, 1 dc in next ch; rep from * to end. (15 sts)\n"
    "2nd row: 3 ch (counts as 1 tr), miss first dc, * 1 dc in next tr, 1 tr in next dc; rep from * to end.\n"
    "3rd row: 1 ch (not a st), 1 dc in first tr, * 1 tr in next dc, 1 dc in next tr; rep from * to end.\n"
    "Fasten off.\n\nPOCKET\nMake 12 ch.\n1st row: 1 dc in 2nd ch from hook, * 1 tr in next ch, 1 dc in next ch; rep from * to end. (11 sts)\n{}"
)


@pytest.mark.parametrize(
    "more",
    [", inc 1 st at each end", ", shaping armholes", ", working 2 tr in last st", ", turn, leaving 3 sts"],
)
def test_more_behind_the_pattern_of_another_piece(more: str) -> None:
    """What else is done besides is not passed over, and is not worked behind a full row."""
    text = _UK.format(_POCKET.format(f"2nd row: Work in patt as given for Back{more}."))
    assert _made(text)[-1] is None and "places-run-out" not in _rules(text)


def test_a_turn_behind_the_pattern_of_another_piece() -> None:
    """A turn is no more than its end."""
    assert _made(_UK.format(_POCKET.format("2nd row: Work in patt as given for Back, turn.")))[-1] == 11


_PANEL = "PANEL\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\nRow 2: Ch 1, sc in each sc across, turn.\nRep Row 2 until there are 7 rows {}."


@pytest.mark.parametrize("words", ["in sc", "in each stripe", "in the same color", "in pattern"])
def test_rows_counted_in_what_is_no_piece(words: str) -> None:
    """How many rows there are of a stitch or a colour, is not how many there are in all."""
    assert _made(_US.format(_PANEL.format(words)))[-1] is None


_COLLAR = (
    "COLLAR\nCh 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (40 sc)\nShort Row 1: Ch 1, sc in first 25 sc, turn - 25 sts\n"
    "Short Row 2: Ch 1, sc in first 10 sc, turn - 10 sts\nShort Row 3: Ch 1, {}, turn"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc in each st of previous short row, sc2tog over the gap, sc in next 3 sts", None),
        ("sc in each st of previous short row to last 2 sts, sc in next 2 sts", None),
        ("2 sc in last st of previous short row, sc in next 4 sts", 6),
        ("sc in first 5 sts of previous short row, sc in next 5 sts", 10),
        ("sc in each st of previous short row and in next 4 sts", None),
        ("sc in each st of previous short row, then sc in next 4 sts", 14),
    ],
)
def test_where_a_short_row_is_gone_past(words: str, made: int | None) -> None:
    """Only behind each of its stitches do the next ones lie past the turn."""
    text = _US.format(_COLLAR.format(words))
    assert _made(text)[-1] == made and not {"places-run-out", "count-differs"} & _rules(text)


_TOP = "Top\nUS terms\n\nSizes: {}\n\nFinished measurements\nChest: {} in\nLength: {} in\n\nBODY\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8 sc)"


@pytest.mark.parametrize(
    ("sizes", "chest", "length", "asked"),
    [
        ("4 (6, 8, 10, 12)", "23 (25, 27, 29, 34)", "12 (13, 14, 15, 16)", True),
        ("S (M, L, XL, 2X)", "33 (35, 37, 39, 45)", "21 (22, 23, 24, 25)", True),
        ("S (M, L, XL, 3X)", "33 (35, 37, 39, 45)", "21 (22, 23, 24, 25)", False),
        ("4 (6, 8, 10, Adult)", "23 (25, 27, 29, 42)", "12 (13, 14, 15, 16)", False),
        ("4 (6, 8, 10, 16)", "23 (25, 27, 29, 36)", "12 (13, 14, 15, 16)", False),
        ("Newborn (3, 6, 9, 12)", "11 (17, 18, 19, 20)", "5 (6, 7, 8, 9)", False),
        ("4 (6, 8, 10, 12)", "23 (25, 27, 29, 34)", "12 (13, 14, 15, 19)", False),
    ],
)
def test_leaps_that_the_sizes_make(sizes: str, chest: str, length: str, asked: bool) -> None:
    """A leap is asked about where one measure makes it, and not where the sizes do, or every measure."""
    assert ("size-step-broken" in _rules(_TOP.format(sizes, chest, length))) is asked


_PLAIN = "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, 2 sc in first sc, sc in each sc across, turn. (11 sc)\nRow 3: Ch 1, sc in each sc across. (11 sc)\n"


@pytest.mark.parametrize(
    ("level", "more", "asked"),
    [
        ("Experienced", "", True),
        ("Experienced beginner", "", False),
        ("Experienced novices", "", False),
        ("Advanced beginners", "", False),
        ("Experienced", "Follow the chart for the next 16 rows.", False),
        ("Experienced", "Embroider the roses in surface crochet.", False),
        ("Experienced", "Row 4: Ch 1, *sc, ch 1, skip 1; rep from * across.", False),
    ],
)
def test_levels_that_are_not_too_high(level: str, more: str, asked: bool) -> None:
    """What is said for beginners is no high level, and what is drawn or not counted may well ask for more."""
    text = _US.format(f"Skill level: {level}\n\nMAT\nCh 11.\n{_PLAIN}{more}")
    assert ("level-too-high" in _rules(text)) is asked


@pytest.mark.parametrize(
    ("words", "asked"),
    [
        ("Using larger hook, work on.", True),
        ("Using larger hook, work on, the edging with the finer hook.", False),
        ("Go up a hook size for the rim.", False),
        ("Work the rim with a hook one size smaller.", False),
    ],
)
def test_hooks_by_their_size(words: str, asked: bool) -> None:
    """Two hooks that are told apart without their numbers are both taken up."""
    text = _US.format(f"Materials\nDK yarn; 3.5 mm hook; 4 mm hook\n\nMAT\nCh 11.\n{_PLAIN}{words}")
    assert ("hook-not-used" in _rules(text)) is asked


_GATED = "Test cap\nUS terms\n\nSizes: {}\n\nCAP\nRnd 1: 7 sc in a magic ring. (7)\nRnd 2: 2 sc in each sc. (14)\n{}\nRnd 3: (sc 1, 2 sc in next) 7 times. (21)\nAll sizes:\nNext rnd: Sc in each sc around.\n"


@pytest.mark.parametrize(
    ("gate", "last"),
    [
        ("From size M up:", [14, 21, 21, 21]),
        ("Sizes from L on --", [14, 14, 21, 21]),
        ("Sizes larger than M:", [14, 14, 21, 21]),
        ("Sizes below XL:", [21, 21, 21, 14]),
        ("Up to and including size M:", [21, 21, 14, 14]),
        ("S, L and up:", [21, 14, 21, 21]),
        ("M +", [14, 21, 21, 21]),
        ("M; L; XL;", [14, 21, 21, 21]),
        ("S, M", [21, 21, 14, 14]),
        ("You have 14 sts for M --", [21, 21, 21, 21]),
        ("14 for M and up --", [21, 21, 21, 21]),
        ("For both M and XL:", [14, 21, 14, 21]),
        ("For both sizes:", [21, 21, 21, 21]),
        ("Larger than you thought?", [21, 21, 21, 21]),
    ],
)
def test_gates_that_say_how_far(gate: str, last: list[int]) -> None:
    """From one size to an end of them, however it is said; a count for some sizes is none."""
    text = _GATED.format("S (M, L, XL)", gate)
    assert [_made(text, size)[-1] for size in range(4)] == last


def test_sizes_that_are_only_compared() -> None:
    """Which are the larger ones of four is not known: then nobody's count is."""
    text = _GATED.format("S (M, L, XL)", "Larger sizes:")
    assert [_made(text, size)[-1] for size in range(4)] == [None] * 4 and "size-not-listed" in _rules(text)


@pytest.mark.parametrize("line", ["Up to 36 -", "36, 40, 44", "From 36 on -"])
def test_figures_that_may_be_sizes(line: str) -> None:
    """Figures alone may be rows as well as sizes."""
    text = _GATED.format("32 (36, 40, 44)", line)
    assert [_made(text, size)[-1] for size in range(4)] == [21] * 4


_PLAIN_RING = "RING\nCh 12, join into a ring.\nRnd 1: Sc in each ch around. (12)\nRnd 2: 2 sc in first st, sc in each st around. (13)\n{}\n"


@pytest.mark.parametrize(
    "label", ["Dec rounds: ", "Inc rnds - ", "Next rnds: ", "All rnds: ", "Inc rnds (4 times): ", "Last rounds: "]
)
def test_rows_of_which_no_number_is_told(label: str) -> None:
    """A plural is more than one row, and how many is not known."""
    text = _US.format(_PLAIN_RING.format(f"{label}2 sc in first st, sc in each st around."))
    assert _made(text)[-1] is None and "not-understood" in _rules(text)


@pytest.mark.parametrize(
    ("line", "made"),
    [
        ("Next rnd, sc in each st around.", [13]),
        ("Next two rnds, sc in each st around.", [13, 13]),
        ("Following 2 rnds, 2 sc in first st, sc in each st around.", [14, 15]),
        ("On next rnd, sc2tog, sc in next 11 sts.", [None]),
        ("Over the next two rnds, sc2tog 3 times.", [None]),
        ("Next rnd, you will find the sts tight.", []),
        ("During the next 4 rnds, change colors at will.", []),
        ("On the next rnd, mark the first st.", []),
    ],
)
def test_a_comma_behind_the_next_row(line: str, made: list[int | None]) -> None:
    """Work behind a comma is work, and is not passed over as talk."""
    assert _made(_US.format(_PLAIN_RING.format(line)))[3:] == made


@pytest.mark.parametrize(
    ("line", "made"),
    [
        ("If you would like a wider ring, inc 2 sts in each rnd.", 13),
        ("If you want it flatter, dec 1 st in every second rnd.", 13),
        ("If working the large ring, inc 2 sts in each rnd.", None),
    ],
)
def test_what_a_maker_may_wish(line: str, made: int | None) -> None:
    """Shaping for those who want it is none of the pattern's, shaping under any other condition may be."""
    assert _made(_US.format(_PLAIN_RING.format(f"{line}\nNext rnd: Sc in each sc around.")))[-1] == made


_TOLD = "COAT\nMake 13 ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end. (12 dc)\n2nd row: 1 ch, 1 dc in each dc to end. (12 dc)\n{}\nNext row: 1 ch, 1 dc in each dc to end."


@pytest.mark.parametrize(
    ("line", "made"),
    [
        ("As 2nd row to last 4 dc, turn.", None),
        ("Work as 2nd row to last 2 dc.", None),
        ("Work in rows of 9 dc for 3 rows.", None),
        ("Work in rows of dc for 3 rows.", 12),
        ("As 2nd row.", 12),
        ("As you see, the last 4 dc lean.", 12),
    ],
)
def test_rows_told_without_a_label(line: str, made: int | None) -> None:
    """A part of a row, or rows of so many stitches, are not passed over between two rows."""
    text = _UK.format(_TOLD.format(line))
    assert _made(text)[-1] == made and ("not-understood" in _rules(text)) is (made is None)


_STRIPES = (
    "Mat\n\nUS terms\nYarn: A (cream), B (blue)\n\nMAT\nWith A, ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n"
    "Row 2: Ch 1, 2 sc in first sc, sc in each sc across, turn. (13 sc)\n{}\n"
)


@pytest.mark.parametrize("words", ["5 rows in blue", "5 rows in B", "5 blue rows", "5 rows in color B"])
def test_rows_of_a_colour_are_not_rows_in_all(words: str) -> None:
    """Five rows of one colour are others than five rows in all: which row is the last is not guessed."""
    report = check(_STRIPES.format(f"Rep Row 2 until there are {words}."))
    made = [row.cells[0].made for row in report.ledger.rows]
    assert made[-1] is None and len([one for one in made if one is not None]) == 3  # the chain and two rows


@pytest.mark.parametrize("words", ["for 3 rows in B", "until there are 5 rows in all", "until there are 5 rows"])
def test_rows_that_are_told_are_worked_in_any_colour(words: str) -> None:
    """So many rows more, or in all, are as many in any colour."""
    report = check(_STRIPES.format(f"Rep Row 2 {words}."))
    assert [row.cells[0].made.stitches for row in report.ledger.rows][1:] == [12, 13, 14, 15, 16]
