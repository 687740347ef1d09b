"""What all sizes have in common: one reading of the words, pieces with their headings, counts that lack a size.

Counts by arithmetic; that a ch 1 before single crochet is no stitch: common practice, no source.
"""

from __future__ import annotations

from typing import Any

import pytest
from helpers import all_findings, check, corrections, counts, line_of


def _made(report: Any) -> list[int | None]:
    """What every row makes in the first size, those that a piece calls for among them."""
    rows = [row for row in report.ledger.rows if row.first.made is None or row.first.made.stitches]
    return [row.first.made.stitches if row.first.made is not None else None for row in rows]


BACK = """Fell Vest

US terms
Sizes: S (M, L, XL)

BACK
Ch 21 (25, 29, 33).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 (24, 28, 32) sc)
Row 2: {row}
"""


@pytest.mark.parametrize(
    ("row", "wrong"),
    [
        ("Ch 1, sc in each sc to last 3 (2, 2, 2) sc, sc2tog{rest}, turn. (19 (23, 27, 31) sc)", 0),
        ("Ch 1, *2 sc in next sc, sc in next sc; rep from * 2 (3, 4, 5) times, sc in each sc across, turn. (22 (27, 32, 38) sc)", 3),
        ("Ch 1, *2 sc in next sc, sc in next sc; rep from * 2 (3, 4, 5) times, sc in each sc across, turn. (23 (28, 33, 37) sc)", 3),
    ],
)  # fmt: skip
def test_words_mean_the_same_in_every_size(row: str, wrong: int) -> None:
    """A count of one size that only comes out if the words mean something else there is a slip of that size."""
    row = row.replace("{rest}", "")
    found = [one for one in check(BACK.format(row=row)).findings if one.weight == "correction" and one.row == "Row 2"]
    assert [one.sizes for one in found] == [(("S", "M", "L", "XL")[wrong],)]


def test_sizes_that_agree_are_read_as_their_counts_say() -> None:
    """ "3 times" after the star is three times more where that alone comes out in every size."""
    text = BACK.format(
        row="Ch 1, *2 sc in next sc, sc in next sc; rep from * 2 (3, 4, 5) times, sc in each sc across, turn. (23 (28, 33, 38) sc)"
    )
    assert not [one for one in corrections(check(text)) if one[0] == "count-differs"]


SHAPED = (
    BACK.format(row="Ch 1, sc in each sc across, turn. (20 (24, 28, 32) sc)")
    + """
Shape Armholes
Next row: Ch 1, sc2tog, sc in each sc to last 2 sc, sc2tog, turn. {count}
Work even for 6 rows.
Fasten off.

FRONT
{front}
"""
)


@pytest.mark.parametrize("front", ["Work as for Back.", "Work same as Back.", "Make the same as the Back."])
def test_a_piece_is_worked_with_the_headings_within_it(front: str) -> None:
    """The front has the armholes of the back: every one of its rows again."""
    made = _made(check(SHAPED.format(count="(18 (22, 26, 30) sc)", front=front)))
    assert made == 2 * [20, 20, *7 * [18]]


@pytest.mark.parametrize(
    "more",
    [
        "\n\nShape Neck\nNext row: Ch 1, sc in next 6 sc, turn. (6 sc)",
        "\nRow 3: Ch 1, sc in next 6 sc, turn. (6 sc)",
    ],
)
def test_how_much_of_a_piece_is_meant_is_not_guessed(more: str) -> None:
    """A front that goes its own way after "Work as for Back" can't have all of the back's rows: none is counted."""
    report = check(SHAPED.format(count="(18 (22, 26, 30) sc)", front="Work as for Back." + more))
    called = [row for row in report.ledger.rows if row.part.name == "FRONT" and row.row.label is None]
    assert called and all(cell.made is None for row in called for cell in row.cells)


@pytest.mark.parametrize(
    "count", ["18 (22, 26) sc", "(18 (22, 26) sc)", "– 18 (22, 26) sts", "(18 (22, 26, 30, 34) sc)"]
)
def test_a_count_that_lacks_a_size_hides_no_row(count: str) -> None:
    """The row is worked by its words, and so are the rows after it; the list is told once, with what it would be."""
    text = SHAPED.format(count=count, front="Work as for Back.")
    report = check(text)
    assert _made(report) == 2 * [20, 20, *7 * [18]]
    told = [one for one in all_findings(report) if one[0] in ("size-list-length", "count-missing", "not-understood")]
    assert told == [("size-list-length", line_of(text, "Next row"))]
    (finding,) = [one for one in report.findings if one.rule == "size-list-length"]
    assert "18 (22, 26, 30)" in finding.message


def test_work_that_lacks_a_size_is_not_counted() -> None:
    """A list that says how many stitches to work is no count: nobody knows what XL works there, and that is told once."""
    text = SHAPED.replace("sc2tog, turn. {count}", "sc2tog; sk 2 (3, 4) sc, turn. {count}")
    report = check(text.format(count="", front="Work as for Back."))
    assert None in _made(report)
    told = [one for one in all_findings(report) if one[0] in ("size-list-length", "not-understood")]
    assert told == [("size-list-length", line_of(text, "Next row"))]


def test_the_place_where_a_number_is_left_out() -> None:
    """Of steps of four, the one of eight has a number missing in it."""
    text = BACK.format(row="Ch 1, sc in each sc across, turn.").replace("L, XL)", "L, XL, 2X)")
    text = text.replace("21 (25, 29, 33)", "21 (25, 33, 37)").replace("20 (24, 28, 32)", "20 (24, 28, 32, 36)")
    (finding,) = [one for one in check(text + "Row 3: Ch 1, sc in next 4 (5, 6, 7, 8) sc, turn. (4 (5, 6, 7, 8) sc)\n").findings if one.rule == "size-list-length"]  # fmt: skip
    assert "between 25 and 33" in finding.message


def test_so_many_in_so_many_by_size() -> None:
    """ "3 sc in next 3 (4, 5) sts" is three in each for every size, for the larger ones can't read it otherwise."""
    text = "Test hat\n\nUS terms\n\nSizes: S (M, L)\n\nBRIM\nRow 1: Fsc 12 (16, 20), turn.\nRow 2: Ch 1, 3 sc in next 3 (4, 5) sts, sc in each st to end.\n"
    assert [counts(check(text), size)[1] for size in range(3)] == [18, 24, 30]


def test_a_size_whose_count_is_wrong_reads_as_the_others() -> None:
    """What the chain at the start stands for is settled by the sizes whose counts come out, for the one that slips, too."""
    text = (
        "Test vest\n\nUK terms\n\nSizes: S (M, L, XL)\n\nBACK\nMake 22 (24, 27, 28)ch.\n"
        "Row 1: 1htr in 3rd ch from hook, 1htr in each ch to end, turn. 20 (22, 24, 26) sts\n"
        "Row 2: 2ch, 1htr in each st to end, turn. 20 (22, 24, 26) sts\n"
    )
    assert [counts(check(text), size)[0] for size in range(4)] == [20, 22, 25, 26]
