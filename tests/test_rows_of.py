"""Rows told by their number, not stitch by stitch: "Work 3 rows even", "dec 1 st at each end of next 4 rows"."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

_HEAD = "Vest\n\nTerms: US\n\nBACK\nRow 1: Fsc 24, turn. (24)\n"


def _rows(words: str, then: str = "") -> list[int | None]:
    """What a line of these words makes after a row of 24, row by row."""
    report = check(_HEAD + words + "\n" + then)
    return [row.cells[0].made.stitches if row.cells[0].made is not None else None for row in report.ledger.rows][1:]


@pytest.mark.parametrize(
    "words",
    [
        "Work 4 rows even.",
        "Work even for 4 rows.",
        "Work in sc for 4 rows.",
        "Work 4 rows in sc.",
        "Work 4 more rows straight.",
        "Continue even for 4 more rows.",
        "4 rows even.",
        "Sc for 4 rows.",
        "Work straight in sc on these 24 sts for 4 rows.",
        "Work without shaping for 4 rows, ending with a WS row.",
        "Next 4 rows: Work even.",
    ],
)
def test_rows_that_neither_gain_nor_lose(words: str) -> None:
    """Four rows of 24, numbered on, so that the next label is in order."""
    assert _rows(words, "Row 6: Ch 1, sc across. (24)\n") == [24, 24, 24, 24, 24]
    assert not corrections(check(_HEAD + words + "\nRow 6: Ch 1, sc across. (24)\n"))


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Dec 1 st at each end of next 3 rows. (18 sts)", [22, 20, 18]),
        ("Dec 1 st at each end of every row until 14 sts remain.", [22, 20, 18, 16, 14]),
        ("Inc 1 st at each end of every row 3 times.", [26, 28, 30]),
        ("Dec 1 st at neck edge on next 3 rows.", [23, 22, 21]),
        ("Dec 1 st at neck edge on every row 4 times. (20 sts)", [23, 22, 21, 20]),
        (
            "Dec 1 st at each end of next row and every following alternate row until 18 sts remain.",
            [22, 22, 20, 20, 18],
        ),
        ("Inc 1 st at each end of next row and of every 3rd row 2 times more.", [26, 26, 26, 28, 28, 28, 30]),
        ("Rows 2-4: Dec 1 st at each end of every row. (18)", [22, 20, 18]),
    ],
)
def test_shaping_over_several_rows(words: str, made: list[int]) -> None:
    """Every row of them, with the even rows that lie between where the words fix them."""
    assert _rows(words) == made


def test_rows_apart_have_their_counts_and_no_numbers() -> None:
    """ "every 4th row 3 times" does not say which row is the first: only the shaped rows are counted."""
    report = check(_HEAD + "Inc 1 st at each end of every 4th row 3 times. (30)\nRow 14: Ch 1, sc across. (30)\n")
    assert _rows("Inc 1 st at each end of every 4th row 3 times. (30)") == [26, 28, 30]
    assert [row.number for row in report.ledger.rows[1:4]] == [None, None, None]
    assert not corrections(report)


def test_rows_even_need_one_sort_of_stitch() -> None:
    """Over chain spaces, "work even" does not say what goes where."""
    report = check(
        "Mesh\n\nTerms: US\n\nPANEL\nRow 1: Fdc 21, turn. (21)\n"
        "Row 2: Ch 3 (counts as dc), *ch 1, sk 1, dc in next st; rep from * across, turn. (11 dc, 10 ch-1 sps)\n"
        "Work 2 rows even.\n"
    )
    assert counts(report) == [21, 11]
    assert [row.cells[0].made for row in report.ledger.rows[2:]] == [None, None]


def test_rounds_even_before_a_brim() -> None:
    """Rounds told by number in a hat, and a round named by its place after them."""
    report = check(
        "Pippin\n\nTerms: US\n\nCROWN\nRnd 1: 8 hdc in magic ring, join. (8)\nRnd 2: Ch 1, 2 hdc in each st around, join. (16)\n"
        "Rnd 3: Ch 1, work even. Join. (16)\nWork 2 more rnds even.\n"
        "Brim rnd: Ch 1, (sc in next 3 sts, sk next st) around, join. [12]\n"
    )
    assert [row.cells[0].made.stitches for row in report.ledger.rows] == [8, 16, 16, 16, 16, 12]
    assert not corrections(report)


FRONTS = """Kittiwake Gilet

Sizes: S (M)
Left Front
Ch 35 (37).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. — 34 (36) sts
Rows 2-20: Ch 1, sc in each st across, turn.
Dec row: Ch 1, sc2tog, sc in each st across, turn. — 33 (35) sts
Rep Dec row 3 (4) times more. — 30 (31) sts

Right Front
{again}
Row 21: Ch 1, sc in each st to last 2 sts, sc2tog, turn. — 33 (35) sts
"""


@pytest.mark.parametrize(
    "again",
    ["Work Rows 1-20 as for Left Front.", "Work Rows 1 to 20 of Left Front.", "Work Rows 1-20 same as the Left Front."],
)
def test_rows_of_another_piece_by_their_numbers(again: str) -> None:
    """Its chain and its rows are worked again: 34 and 36 sts, then one decrease."""
    report = check(FRONTS.format(again=again))
    assert [counts(report, size)[-1] for size in range(2)] == [33, 35]
    assert all(cell.outcome.value != "not-recomputed" for row in report.ledger.rows for cell in row.cells)
    assert not corrections(report)


@pytest.mark.parametrize(("change", "made"), [("reversing shaping", 33), ("in ridges", None)])
def test_rows_not_as_they_are_are_not_worked(change: str, made: int | None) -> None:
    """Rows worked in another way are not recomputed; mirrored ones make as many stitches as those that they mirror."""
    report = check(FRONTS.format(again=f"Work Rows 1-20 as for Left Front, {change}."))
    assert counts(report)[-1] == made


@pytest.mark.parametrize(
    ("again", "last"),
    [
        ("Rep Rows 2 and 3 a total of 4 times. 32 sc.", 32),
        ("Work Rows 2 and 3 a total of 4 times. 32 sc.", 32),
        ("Rep Rows 2 and 3 4 times in all. 32 sc.", 32),
        ("Rows 4-7: [Rep Rows 2 and 3] twice. 34 sc.", 34),
    ],
)
def test_rows_just_worked_are_among_those_in_all(again: str, last: int) -> None:
    """From 40 sts two are lost in every other row: the rows that stand there are the first of four times in all."""
    report = check(
        "Shrug\n\nCh 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. 40 sc.\n"
        "Row 2: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. 38 sc.\n"
        f"Row 3: Ch 1, sc in each st across, turn. 38 sc.\n{again}\n"
    )
    assert report.ledger.rows[-1].cells[0].made.stitches == last
    assert not corrections(report)


@pytest.mark.parametrize(("printed", "rows"), [("30 sc", 11), ("32 sc", 9)])
def test_so_many_times_is_read_as_the_counts_say(printed: str, rows: int) -> None:
    """ "4 times" alone is four more or four in all; the printed count settles which, as it does between stars."""
    report = check(
        "Shrug\n\nCh 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. 40 sc.\n"
        "Row 2: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. 38 sc.\n"
        f"Row 3: Ch 1, sc in each st across, turn. 38 sc.\nRep last 2 rows 4 times. {printed}.\n"
    )
    assert report.ledger.rows[-1].number == rows
    assert not corrections(report)


@pytest.mark.parametrize(
    "label",
    [
        "Row 2 (dec row):",
        "Row 2 (RS, dec row):",
        "Row 2 [Decrease Row]:",
        "Row 2 - Dec row:",
        "Row 2, decrease row:",
        "Decrease Row:",
        "Next row (decrease):",
    ],
)
@pytest.mark.parametrize(
    "call",
    [
        "Rep Dec row 2 times more.",
        "Repeat Decrease Row every 4th row 2 times more.",
        "Work 1 row even.\nRep dec row twice.",
    ],
)
def test_a_row_called_for_by_its_name(label: str, call: str) -> None:
    """The name stands before, behind or in the brackets of the label, long or short; each such row takes two away."""
    words = _rows(f"{label} Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn.\n{call} (18)")
    assert [one for one, before in zip(words, [24, *words], strict=False) if one != before] == [22, 20, 18]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Dec 1 st at each end of next row and every other row 4 times in all.", [22, 22, 20, 20, 18, 18, 16]),
        ("Dec 1 st at each end of next row, then every alternate row until 18 sts rem.", [22, 22, 20, 20, 18]),
        ("Dec 1 st at each end of next row, then every 3rd row 2 times more.", [22, 22, 22, 20, 20, 20, 18]),
    ],
)
def test_the_next_row_is_the_first_of_those_apart(words: str, made: list[int]) -> None:
    """What is said of all of them counts the next row in; "times more" does not."""
    assert _rows(words) == made


@pytest.mark.parametrize("label", ["Row 2, every other row:", "Row 2 - same row:", "Row 2, each row:"])
def test_words_for_other_rows_are_no_name(label: str) -> None:
    """ "Every other row" behind a number says how often, and no count is given that leaves it out."""
    assert [row for row in _rows(f"{label} Ch 1, sc2tog, sc in each st across, turn.") if row is not None] == []


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Work even for 3 rows. Dec 1 st at each end of next row. Work even for 2 rows.", [24, 24, 24, 22, 22, 22]),
        ("Work even for 3 rows. Dec 1 st at each end of next row. (22)", [24, 24, 24, 22]),
        ("Work even for 3 rows. Sc2tog, sc across, turn. Work even for 2 rows.", [24, 24, 24, 23, 23, 23]),
    ],
)
def test_rows_told_one_after_the_other(words: str, made: list[int]) -> None:
    """Rows even, a row that shapes, rows even: each in its turn, though one line tells them all."""
    assert _rows(words) == made


PLAIN = "Row 1: Fsc 12, turn. (12)\nRow 2: Ch 1, sc in each st across, turn. (12)\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Rep Row 2, increasing 2 sts evenly in every row.", [14, 16, 18]),
        ("Rep Row 2, inc 1 st at each end.", [14, 16, 18]),
        ("Rep Row 2, dec 1 st at beg of each row.", [11, 10, 9]),
        ("Rep Row 2, inc 1 st at each end of every other row.", [None, None, None]),
        ("Rep Row 2, dec 1 st at beg of next row.", [None, None, None]),
    ],
)
def test_rows_called_again_are_each_shaped(words: str, made: list[int | None]) -> None:
    """Shaping said of rows that are worked again is worked in each of them, or in none if other rows are named."""
    assert counts(check(f"Tab\n\nUS terms\n\nTAB\n{PLAIN}Rows 3-5: {words}\n"))[2:] == made


def test_first_stitch_beside_a_counted_chain_is_not_passed_over() -> None:
    """ "working the first dc in the same st" may add one to the chain that stands there."""
    row = "Row 3: Ch 3 (counts as dc), dc in each st, working the first dc in same st.\n"
    assert counts(check(f"Tab\n\nUS terms\n\nTAB\n{PLAIN}{row}"))[-1] is None
