"""The grading table: every count in every size, and what follows from it by the gauge."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pytest
from helpers import check
from openpyxl import load_workbook

from lint.cli import main
from lint.grading import GradedLine, grading_table
from lint.reports.grading import grading_csv, grading_xlsx
from lint.reports.page import as_page

VEST = """Flatland Vest
US terms
Sizes: S (M, L)

Gauge
16 sc and 20 rows = 4 in

BACK
Ch 41 (45, 49).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (40 (44, 48) sc)
Rows 2-20 (24, 28): Ch 1, sc in each sc across, turn. (40 (44, 48) sc)
Row 21 (25, 29): Ch 1, sc2tog, sc in each sc to last 2 sc, sc2tog, turn. (38 (42, 46) sc)
"""


def lines_of(text: str) -> dict[tuple[str, str], GradedLine]:
    """The lines of a pattern's table by what they are, and their unit."""
    return {(line.what, line.unit): line for line in grading_table(check(text)).lines}


def test_counts_and_steps_of_every_size() -> None:
    """Where a part starts, how wide it gets, where it ends and how many rows it has, with the steps between sizes."""
    lines = lines_of(VEST)

    assert lines["starts with", "sts"].values == (40, 44, 48)
    assert lines["ends with", "sts"].values == (38, 42, 46)
    assert lines["rows or rounds", "rows"].values == (21, 25, 29)
    assert lines["widest", "sts"].steps == (4, 4)


def test_measures_follow_from_the_gauge() -> None:
    """40 sts at 16 to 4 in are 10 in; 21 rows at 20 to 4 in are 4.2 in (count = width x stitches per unit)."""
    lines = lines_of(VEST)

    assert lines["widest", "in"].values == (10, 11, 12)
    assert lines["rows or rounds", "in"].values == (4.2, 5, 5.8)


def test_centimetres_where_the_gauge_is_in_them() -> None:
    """Measures are in the gauge's own unit."""
    lines = lines_of(VEST.replace("16 sc and 20 rows = 4 in", "16 sc and 20 rows = 10 cm"))

    assert lines["widest", "cm"].values == (25, 27.5, 30)
    assert lines["rows or rounds", "cm"].values == (10.5, 12.5, 14.5)


def test_no_measures_without_a_gauge() -> None:
    """Without a gauge, or with several that could be meant, nothing is reckoned."""
    two = VEST.replace(
        "16 sc and 20 rows = 4 in", "16 sts = 4 in with the large hook\n18 sts = 4 in with the small hook"
    )

    for text in (VEST.replace("16 sc and 20 rows = 4 in", "is not important"), two):
        assert {unit for _, unit in lines_of(text)} == {"sts", "rows"}


def test_what_is_not_known_is_left_out() -> None:
    """A row that was not recomputed could be the widest or stand for several: those values are not given."""
    lines = lines_of(VEST.replace("Ch 1, sc2tog, sc in each sc to last 2 sc, sc2tog", "Frabble to the wuzzock"))

    assert lines["starts with", "sts"].values == (40, 44, 48)
    assert lines["widest", "sts"].values == lines["rows or rounds", "rows"].values == (None, None, None)


def test_rows_that_only_repeat_a_count_are_not_listed() -> None:
    """Of the single rows only those stand in the table at which a count changes, each with its measure."""
    single = [(line.what, line.unit) for line in grading_table(check(VEST)).lines if not line.summary]

    assert single == [("Row 1", "sts"), ("Row 1", "in"), ("Row 21 (25, 29)", "sts"), ("Row 21 (25, 29)", "in")]


def test_measures_as_printed() -> None:
    """The measures that the pattern prints over its sizes stand at the head, under the pattern's own words for them."""
    told = VEST.replace(
        "Sizes: S (M, L)\n", "Sizes: S (M, L)\nFinished bust: 20 (22, 24) in / 51 (56, 61) cm\nMeasures 8 in.\n"
    )

    first = [(line.part, line.what, line.unit, line.values) for line in grading_table(check(told)).lines[:3]]

    assert first == [
        ("as printed", "Finished bust", "in", (20, 22, 24)),
        ("as printed", "Finished bust", "cm", (51, 56, 61)),
        ("BACK", "starts with", "sts", (40, 44, 48)),
    ]


def test_one_size_has_a_table_of_one_column() -> None:
    """A pattern in one size has its counts in one column for a spreadsheet; the report sets nothing side by side."""
    report = check("Hat\nUS terms\nHAT\nRnd 1: 6 sc in ring. (6)\nRnd 2: 2 sc in each sc around. (12)\n")
    table = grading_table(report)

    assert table.sizes == ("one size",)
    assert [line.values for line in table.lines if line.what == "ends with"] == [(12,)]
    assert 'id="grading"' not in as_page(report)


def test_csv_for_a_spreadsheet() -> None:
    """The CSV has a column for each size and each step; words that look like formulas are written as words."""
    raw = grading_csv([check(VEST.replace("Flatland Vest", "=1+1"))])
    head, first, *_ = csv.reader(io.StringIO(raw.decode("utf-8-sig")))

    assert head == ["Pattern", "Part", "What", "Unit", "S", "M", "L", "S to M", "M to L"]
    assert first[0] == "'=1+1"
    assert first[4:] == ["40", "44", "48", "4", "4"]


@pytest.mark.parametrize("name", ["=2+3", "+2+3", "-2+3", "@SUM(A1)", "＝2+3", "Vest;=2+3"])
def test_names_are_never_formulas(name: str) -> None:
    """A part that is named like a formula is words in every cell, also where a semicolon is taken for a separator."""
    report = check(VEST.replace("Flatland Vest", name))
    raw = grading_csv([report]).decode("utf-8-sig")
    cells = [cell for line in raw.splitlines() for sign in ",;" for cell in next(csv.reader([line], delimiter=sign))]

    assert not [cell for cell in cells if cell.strip(" '\"").startswith(("=", "+", "@", "＝")) and cell[:1] != "'"]
    book = load_workbook(io.BytesIO(grading_xlsx([report])))
    assert {cell.data_type for sheet in book for row in sheet for cell in row} <= {"s", "n"}


@pytest.mark.parametrize(("ending", "head"), [("csv", b"\xef\xbb\xbf"), ("xlsx", b"PK"), ("html", b"<!DOCTYPE html>")])
def test_the_command_writes_the_table(tmp_path: Path, ending: str, head: bytes) -> None:
    """`check PATTERN --grading FILE` writes the table in the form that the file's name asks for."""
    (tmp_path / "vest.txt").write_text(VEST, encoding="utf-8")

    with pytest.raises(SystemExit) as left:
        main(["check", str(tmp_path / "vest.txt"), "--grading", str(tmp_path / f"sizes.{ending}")])

    assert left.value.code == 1  # the sections that the small pattern lacks
    assert (tmp_path / f"sizes.{ending}").read_bytes().startswith(head)


def test_other_forms_are_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A file's name that asks for another form is told in one line, and nothing is written."""
    with pytest.raises(SystemExit) as left:
        main(["check", str(tmp_path / "vest.txt"), "--grading", str(tmp_path / "sizes.ods")])

    assert left.value.code == 2
    assert capsys.readouterr().err.count("\n") == 1
    assert not list(tmp_path.iterdir())


def test_workbook_for_a_spreadsheet() -> None:
    """The workbook has the parts on one sheet and every count on the other, numbers as numbers, no formula."""
    book = load_workbook(io.BytesIO(grading_xlsx([check(VEST.replace("Flatland Vest", "=1+1"))])))

    assert book.sheetnames == ["Parts", "Counts"]
    assert [cell.value for cell in book["Parts"][2]][4:7] == [40, 44, 48]
    assert {cell.data_type for sheet in book for row in sheet for cell in row} <= {"s", "n"}


def test_the_report_shows_the_sizes_side_by_side() -> None:
    """The HTML report has the table, and says what the measures were reckoned with."""
    page = as_page(check(VEST))

    assert "The sizes side by side" in page
    assert "16 sc and 20 rows = 4 in" in page.split('id="grading"')[1]
    assert 'id="grading"' not in as_page(check("Hat\nUS terms\nRnd 1: 6 sc in ring. (6)\n"))


def test_steps_of_quarter_inches_are_told_in_full() -> None:
    """A step of 0.75 in is not 0.8: the table goes into a spreadsheet (20 in and 20 3/4 in are printed)."""
    printed = VEST.replace("Gauge", "Length: 20 (20¾, 21½) in\nGauge", 1)
    lines = lines_of(printed)

    assert lines["Length", "in"].values == (20, 20.75, 21.5)
    assert lines["Length", "in"].steps == (0.75, 0.75)
