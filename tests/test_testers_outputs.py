"""What is given out: the page, JSON, CSV, the blank form, and how the command ends."""

from __future__ import annotations

import csv
import io
import json
import subprocess
import sys
from pathlib import Path

import pytest
from helpers import DEMO, ROOT
from testers_help import HAT, counts, inspected, reviewed

from lint.reports.testers_data import as_csv, as_data
from lint.reports.testers_form import as_csv_form, as_workbook_form
from lint.reports.testers_page import as_testers_page

FORMULAS = ["=1+1", "+1", "-1+2", "@SUM(A1)", "\t=1", " =1", "|x"]


def run(*arguments: str, stdin: str = "") -> subprocess.CompletedProcess:
    """The command, as it is called."""
    call = [sys.executable, "-m", "lint", *arguments]
    return subprocess.run(call, cwd=ROOT, input=stdin, capture_output=True, text=True, check=False)


@pytest.fixture
def hat(tmp_path: Path) -> str:
    """The pattern in a file."""
    path = tmp_path / "hat.txt"
    path.write_text(HAT, encoding="utf-8")
    return str(path)


class TestData:
    """JSON and CSV."""

    def test_json(self) -> None:
        """Counts, points and everything else of the review are in the JSON, which is plain data."""
        data = json.loads(json.dumps(as_data(reviewed(HAT, mia_eml="Size: M\nCrown Rnd 3: 20\nused 130 g of yarn\n"))))

        assert data["schema"] == "frogproof-testers/1"
        assert [(one["row"], one["printed"], one["recount"], one["got"], one["verdict"]) for one in data["counts"]] == [
            ("Rnd 3", 21, 21, 20, "testers-slip")
        ]
        assert [one["kind"] for one in data["points"]] == ["yarn-more", "untested", "untested", "testers-slip"]
        assert data["points"][-1]["likely"][0]["name"]

    @pytest.mark.parametrize("words", FORMULAS)
    def test_cells_are_inert(self, words: str) -> None:
        """A tester's words that a spreadsheet would take for a formula are plain text in the CSV, and nothing of them is lost."""
        out = io.StringIO()
        csv.writer(out).writerow(["Tester", "Size", "Part", "Row", "Count", "Note"])
        csv.writer(out).writerow([words, "M", "Crown", "3", "21", words])
        review = reviewed(HAT, t_csv=out.getvalue())
        (line,) = list(csv.DictReader(io.StringIO(as_csv(review))))

        for cell in (line["tester"], line["note"]):
            assert cell == "'" + words.strip()


class TestPage:
    """HTML."""

    def test_it_is_complete_in_itself(self) -> None:
        """The page fetches nothing and runs nothing, and what testers wrote is text in it."""
        page = as_testers_page(
            reviewed(HAT, mia_eml="Size: M\nCrown Rnd 3: 20\n<script>alert(1)</script> <img src=x>\n")
        )

        assert "<script" not in page and "<img" not in page
        assert "&lt;script&gt;" in page
        assert "http:" not in page and "https:" not in page

    def test_it_shows_who_counted_what(self) -> None:
        """Each size has a table of its testers; more than eight are set in further tables."""
        mails = {f"t{number}_eml": "Size: M\nCrown Rnd 3: 21\n" for number in range(10)}
        page = as_testers_page(reviewed(HAT, **mails))

        assert page.count('<table class="sized testers"') == 2
        assert all(f">T{number}</th>" in page for number in range(10))

    def test_hazards(self) -> None:
        """A toy's page carries the caution of the editor's report."""
        page = as_testers_page(
            reviewed(HAT.replace("Alder Hat", "Alder the Toy Mouse"), mia_eml="Size: M\nCrown Rnd 3: 21\n")
        )

        assert "Caution" in page and "local law" in page


class TestForm:
    """The blank form."""

    def test_every_row_and_size_with_a_count(self) -> None:
        """The form has a line for every row and size that has a printed count."""
        lines = list(csv.reader(io.StringIO(as_csv_form(inspected(HAT)))))
        table = lines[lines.index(["Part", "Row", "Size", "As printed", "Count got", "Kind of note", "Note"]) + 1 :]

        assert len(table) == 10 * 3
        assert ["CROWN", "Rnd 4", "M", "28 sc", "", "", ""] in table

    def test_drop_downs(self) -> None:
        """The workbook lets a tester choose the size and the kind of a note."""
        from openpyxl import load_workbook

        book = load_workbook(io.BytesIO(as_workbook_form(inspected(HAT))))
        lists = {v.formula1 for sheet in book for v in sheet.data_validations.dataValidation if v.type == "list"}

        assert '"S,M,L"' in lists and '"typo,unclear,suggestion,error"' in lists

    def test_no_cell_is_a_formula(self) -> None:
        """A part that is called "=1+1" is a text in the form."""
        from openpyxl import load_workbook

        pattern = HAT.replace("BRIM", "=HYPERLINK(1)")
        book = load_workbook(io.BytesIO(as_workbook_form(inspected(pattern))))

        assert {cell.data_type for sheet in book for row in sheet for cell in row} <= {"s", "n"}
        assert "'=HYPERLINK" not in as_csv_form(inspected(HAT))

    @pytest.mark.parametrize("sort", ["csv", "xlsx"])
    def test_a_filled_form_is_read_back(self, sort: str) -> None:
        """What a tester fills in comes back whole; what was left blank says nothing."""
        filled = (_filled_csv if sort == "csv" else _filled_workbook)(inspected(HAT))
        review = reviewed(HAT, **{f"form_{sort}": filled})

        assert counts(review) == [("Mia", "M", "CROWN", "Rnd 4", 27)]
        assert [(one.who.size, one.amount, one.unit) for one in review.intake.claims if hasattr(one, "amount")] == [
            ("M", 115, "g")
        ]
        assert [(remark.kind, remark.words, index) for remark, index in review.placement.remarks] == [
            ("unclear", "Where does it begin?", 3)
        ]
        assert [line.stitches for line in review.together.gauges] == [17]
        assert review.unmatched == ()

    @pytest.mark.parametrize("sort", ["csv", "xlsx"])
    def test_a_blank_form_says_nothing(self, sort: str) -> None:
        """A form that was sent back blank makes no claim."""
        report = inspected(HAT)
        blank = as_csv_form(report).encode() if sort == "csv" else as_workbook_form(report)
        review = reviewed(HAT, **{f"form_{sort}": blank})

        assert review.intake.claims == () and review.unmatched == ()


ABOUT = {"Tester:": "Mia", "Size:": "M", "Gauge:": "17 sts and 19 rows to 10 cm", "Yarn used:": "115 g"}


def _filled_csv(report: object) -> bytes:
    lines = list(csv.reader(io.StringIO(as_csv_form(report))))
    for line in lines:
        if line[:1] and line[0] in ABOUT:
            line[1] = ABOUT[line[0]]
        if line[:3] == ["CROWN", "Rnd 4", "M"]:
            line[4:] = ["27", "unclear", "Where does it begin?"]
    out = io.StringIO()
    csv.writer(out, delimiter=";").writerows(lines)
    return out.getvalue().encode()


def _filled_workbook(report: object) -> bytes:
    from openpyxl import load_workbook

    book = load_workbook(io.BytesIO(as_workbook_form(report)))
    for row in book["About you"]:
        if row[0].value in ABOUT:
            book["About you"].cell(row[0].row, 2, ABOUT[row[0].value])
    for row in book["Counts"]:
        if [cell.value for cell in row[:3]] == ["CROWN", "Rnd 4", "M"]:
            row[4].value, row[5].value, row[6].value = 27, "unclear", "Where does it begin?"
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


class TestCommand:
    """frogproof testers."""

    def test_status(self, hat: str, tmp_path: Path) -> None:
        """0 where no print is shown wrong, 1 where one is, 2 where something could not be done."""
        good, wrong = tmp_path / "good.eml", tmp_path / "wrong.txt"
        good.write_text("Size: M\nCrown Rnd 4: 28\n", encoding="utf-8")
        wrong.write_text(HAT.replace("24 (28, 32) sc)\nRnds", "24 (29, 32) sc)\nRnds"), encoding="utf-8")

        assert run("testers", hat, str(good)).returncode == 0
        assert run("testers", str(wrong), str(good)).returncode == 1
        assert run("testers", hat, str(tmp_path / "none.csv")).returncode == 2
        assert run("testers", hat).returncode == 2

    def test_outputs(self, hat: str, tmp_path: Path) -> None:
        """HTML, CSV and form are written, and JSON alone goes to standard output."""
        names = {kind: tmp_path / f"out.{kind}" for kind in ("html", "csv", "xlsx")}
        done = run(
            "testers", hat, "-", "--json", "-", "--html", str(names["html"]), "--csv", str(names["csv"]),
            "--form", str(names["xlsx"]), stdin="Size: M\nCrown Rnd 4: 27\n",
        )  # fmt: skip

        assert json.loads(done.stdout)["counts"][0]["got"] == 27
        assert all(path.stat().st_size for path in names.values())

    def test_an_unreadable_report_is_told_and_the_others_are_judged(self, hat: str, tmp_path: Path) -> None:
        """One line says which file and why; the JSON holds the counts of the others."""
        (tmp_path / "bad.xlsx").write_bytes(b"\x00\x01")
        (tmp_path / "good.eml").write_text("Size: M\nCrown Rnd 4: 28\n", encoding="utf-8")
        done = run("testers", hat, str(tmp_path / "bad.xlsx"), str(tmp_path / "good.eml"), "--json", "-")

        assert done.returncode == 2 and len(done.stderr.splitlines()) == 1 and "bad.xlsx" in done.stderr
        assert len(json.loads(done.stdout)["counts"]) == 1

    def test_the_demo(self) -> None:
        """The demo's reports are judged beside the shawl: Row 14, whose words do not fit, and two testers' slips."""
        done = run("testers", str(DEMO / "withybed-shawl.txt"), str(DEMO / "testers"), "--json", "-")
        data = json.loads(done.stdout)

        assert {(p["kind"], p["row"]) for p in data["points"] if p["kind"] in ("words-misread", "testers-slip")} == {
            ("words-misread", "Row 14"),
            ("testers-slip", "Row 3"),
            ("testers-slip", "Row 6"),
        }
        assert {p["likely"][0]["name"] for p in data["points"] if p["kind"] == "testers-slip"} == {
            "turning-chain-not-worked",
            "one-by-accident",
        }
