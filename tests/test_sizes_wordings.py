"""Lists over the sizes that name some sizes at their figures, runs of rows for each size, and what stands beside them."""

from __future__ import annotations

import pytest
from helpers import check, counts, worked_rows

FRONT = """Alder Cuff

Sizes: Small, Medium, Large

US terms: ch chain; sc single crochet; st(s) stitch(es)

CUFF
"""
CUFF = """{chain}
Row 1: Sc in 2nd ch from hook and in each ch across. {first}
Row 2: Ch 1, turn, sc in next {run} sts, 2 sc in each of next 2 sts, sc in each st to end. {second}
"""


@pytest.mark.parametrize(
    ("chain", "first", "run", "second"),
    [
        ("Ch 21 (medium: 23, large: 27).", "20 (medium: 22, large: 26) sc", "4 (M: 5, L: 6)", "22 (24, 28) sc"),
        ("For Small ch 21 (for medium ch 23, for large ch 27).", "20 (22, 26) sc", "4 (5, 6)", "22 (24, 28)"),
        ("Small: Ch 21 (for medium ch 23, for large ch 27).", "20 (22, 26) sc", "4 (5, 6)", "22 (24, 28)"),
        ("For Small make 21 ch [for Medium 23 ch, for Large 27 ch].", "(20, 22, 26)", "4 (5, 6)", "22 (24, 28)"),
        ("Ch 21, 23, 27.", "20 sc (22 for medium, 26 for large)", "4/5/6", "22 (small cuff), 24 (medium cuff) or 28 (large cuff)"),
        ("Ch 21 (medium 23 ch, large 27 ch).", "20 sc for Small (22 sc for Medium, 26 sc for Large)", "4/5/6", "= 22; 24; 28"),
    ],
)  # fmt: skip
def test_a_list_that_names_the_sizes_in_brackets(chain: str, first: str, run: str, second: str) -> None:
    """The figure before the brackets is the first size's, those in them the sizes' that they name: 21, 23 and 27 chains."""
    report = check(FRONT + CUFF.format(chain=chain, first=first, run=run, second=second))
    assert [counts(report, size) for size in range(3)] == [[20, 22], [22, 24], [26, 28]]
    assert [row.cells[size].stated is not None for row in worked_rows(report) for size in range(3)] == [True] * 6
    assert [part.name for part in report.pattern.parts] == ["CUFF"]


def test_a_size_that_the_brackets_do_not_name_leaves_the_list_unread() -> None:
    """A figure for two of three sizes is none for the third."""
    report = check(FRONT + "Ch 21 (medium: 23).\nRow 1: Sc in 2nd ch from hook and in each ch across.\n")
    assert [cell.made for row in worked_rows(report) for cell in row.cells] == [None] * 3


@pytest.mark.parametrize(
    "label",
    [
        "Rows 2 to 4; 2 to 5; 2 to 6",
        "2nd to 4th; 2nd to 5th; 2nd to 6th rows",
        "Rows 2-4, 2-5, 2-6",
        "Rows 2 to 4, 2 to 5 and 2 to 6",
    ],
)
def test_a_run_of_rows_for_each_size(label: str) -> None:
    """No row is named twice by one label, so the runs are the sizes': three, four and five rows."""
    sign = " -" if "rows" in label else ":"
    text = FRONT + CUFF.split("Row 2")[0].format(chain="Ch 21 (23, 27).", first="(20, 22, 26)")
    report = check(text + f"{label}{sign} Ch 1, turn, sc in each st across.\n")
    assert [len([n for n in counts(report, size) if n is not None]) for size in range(3)] == [4, 5, 6]


def test_rows_whose_label_was_not_read_are_told() -> None:
    """A line that begins as a label does, and calls another row, is never passed over as talk."""
    text = (
        FRONT
        + "Ch 21 (23, 27).\nRow 1: Sc in 2nd ch from hook and in each ch across. (20, 22, 26)\nRow 2: Ch 1, turn, sc in each st across. (20, 22, 26)\n"
    )
    report = check(
        text + "3rd to 5th (or, in the largest, 9th) rows - as Row 2.\nRow 10: Ch 1, turn, sc in each st across.\n"
    )
    assert any("3rd to 5th" in report.source.slice(finding.span) for finding in report.findings)


@pytest.mark.parametrize("label", ["Row 2, large only:", "Row 2, for Large:", "Row 2 – Large only:", "Row 2 (Large):"])
def test_a_label_with_the_sizes_behind_a_comma(label: str) -> None:
    """Row 2 is worked in the largest size alone, and Row 3 in all."""
    text = FRONT + CUFF.split("Row 2")[0].format(chain="Ch 21 (23, 27).", first="(20, 22, 26)")
    report = check(
        text
        + f"{label} Ch 1, turn, 2 sc in first st, sc in each st across.\nRow 3: Ch 1, turn, sc in each st across.\n"
    )
    assert [counts(report, size) for size in range(3)] == [[20, None, 20], [22, None, 22], [26, 27, 27]]


def test_rows_in_a_line_of_their_own_below_a_count_without_a_stop() -> None:
    """ "Work 2 rows even" begins a line, and a count has ended the one before it."""
    text = FRONT + CUFF.format(chain="Ch 21 (23, 27).", first="(20, 22, 26)", run="4 (5, 6)", second="= 22 (24, 28) sc")
    report = check(text + "Work 2 (2, 3) rows even in sc.\n")
    rows = [row for row in report.ledger.rows if row.label != "Foundation"]
    made = [[row.cells[size].made and row.cells[size].made.stitches for row in rows] for size in range(3)]
    assert made == [[20, 22, 22, 22, None], [22, 24, 24, 24, None], [26, 28, 28, 28, 28]]


def test_a_list_of_abbreviations_behind_the_statement_of_the_terms() -> None:
    """ "UK terms: ch chain; dc …" names the terms and lists the abbreviations."""
    report = check(FRONT + "Ch 21 (23, 27).\nRow 1: Sc in 2nd ch from hook and in each ch across.\n")
    assert [entry.forms[0] for entry in report.pattern.abbreviations][:2] == ["ch", "sc"]


@pytest.mark.parametrize(
    "note",
    [
        "3 ch counts as a tr, 2 ch as a htr, 1 ch does not count.",
        "Ch 3 counts as first tr and ch 2 as htr, but ch 1 never counts.",
        "3 ch at the beginning of a row counts as first tr; 2 ch counts as htr; 1 ch does not count.",
    ],
)
def test_what_is_said_of_one_chain_after_the_other(note: str) -> None:
    """Each chain has its own note, and none is a space of the one before it: 12 tr, 12 htr, 12 dc and nothing else."""
    text = f"""Test strip

UK terms

{note}

STRIP
Make 14 ch.
Row 1: 1 tr in 4th ch from hook, 1 tr in each ch to end, turn.
Row 2: 3 ch, miss first st, 1 tr in each st to end, turn.
Row 3: 2 ch, miss first st, 1 htr in each st to end, turn.
Row 4: 1 ch, 1 dc in each st to end, turn.
"""
    report = check(text)
    assert counts(report) == [12, 12, 12, 12]
    assert [dict(row.cells[0].made.spaces) for row in worked_rows(report)] == [{}] * 4


@pytest.mark.parametrize("list_", ["2-2-3", "2, 2, 3", "2/2/3", "2; 2; 3"])
@pytest.mark.parametrize("words", ["Work {} rows in sc.", "Work {} rows even.", "Sc even for {} more rows."])
def test_rows_told_by_a_list_without_brackets(list_: str, words: str) -> None:
    """Two rows more in S and M, and three in L."""
    text = FRONT + CUFF.split("Row 2")[0].format(chain="Ch 21 (23, 27).", first="(20, 22, 26)")
    rows = [row for row in check(text + words.format(list_) + "\n").ledger.rows if row.label != "Foundation"]
    made = [[row.cells[size].made and row.cells[size].made.stitches for row in rows] for size in range(3)]
    assert made == [[20, 20, 20, None], [22, 22, 22, None], [26, 26, 26, 26]]


def test_a_sentence_behind_fastening_off_opens_the_other_side() -> None:
    """ "Skip the center …" in a line below "Fasten off." is no part of the row that was fastened off."""
    text = (
        FRONT
        + """Ch 21 (23, 27).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20, 22, 26)
Row 2: Ch 1, sc in first 6 (7, 8) sts, turn. (6, 7, 8)
Row 3: Ch 1, sc in each st across. Fasten off.
Skip the center 8 (8, 10) sts, join yarn in next st.
Next row: Ch 1, sc in same st and in each st to end, turn. (6, 7, 8)
"""
    )
    report = check(text)
    assert [counts(report, size) for size in range(3)] == [[20, 6, 6, 6], [22, 7, 7, 7], [26, 8, 8, 8]]


@pytest.mark.parametrize(
    ("words", "stated"),
    [
        ("At the end of Row 4: 9 sc.", 9),
        ("At end of Row 4 you have 9 sc.", 9),
        ("At the end of Row 4 – 9 sts.", 9),
        ("At the end of Row 3: 8 sc.", None),  # of another row than the last
    ],
)
def test_a_count_told_at_the_end_of_a_row_by_its_number(words: str, stated: int | None) -> None:
    """A range that grows prints the count of its last row; one of a row in between is not compared with the last."""
    text = f"Test wedge\n\nUS terms\n\nWEDGE\nCh 7.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (6 sc)\nRows 2-4: Ch 1, 2 sc in first st, sc in each st across, turn. {words}\n"
    report = check(text)
    assert counts(report) == [6, 7, 8, 9]
    last = worked_rows(report)[-1].cells[0].stated
    assert (last.items[0].number.at(0) if last is not None else None) == stated
