"""A pattern as the maker of one size reads it: the words, the counts and the findings of that size alone."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest
from helpers import ROOT, check, counts

from lint.maker.view import NoSuchSize, report_for, size_called
from lint.maker.words import MakersWords
from lint.reports.page import as_page

# invented; counts worked by hand: row 2 decreases 1 (of M's 71 only 70 is printed), row 4 decreases 2, 3 and none
TABARD = """Wicken Tabard

Sizes: S (M, L)
Finished bust: 80.5 (90, 100) cm / 31¾ (35½, 39¼) in
Yarn: DK weight, 4 (5, 6) balls of 50 g
Hook: 4 mm

Back
Ch 65 (73, 81).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. 64 (72, 80) sc
Row 2: Ch 1, sc in next 10 (12, 14) sts, sc2tog, sc in each st to end, turn. 63 (70, 79) sc
Sizes M and L only:
Row 3: Ch 1, sc in each st across, turn.
All sizes:
Row 4: Ch 1, sc2tog 2 (3, -) times, sc in each st to end, turn. 61 (68, 79) sc
Rows 5-8 (10, 12): Ch 1, sc in each st across, turn. 61 (68, 79) sc
Size S stops here.
Row 13: Ch 1, sc in next 5 (6, 7) sts, sl st in each st to end. Fasten off.
"""


def words(text: str, size: int) -> list[str]:
    """The lines of a pattern with words in them, as one size reads it."""
    return [line for line in MakersWords(check(text)).words(size).splitlines() if line.strip()]


def test_each_maker_reads_her_own_figures() -> None:
    """Labels, chains, repeats, counts, measures and amounts have the one figure of the size."""
    small, large = words(TABARD, 0), words(TABARD, 2)
    assert "Sizes: S" in small and "Sizes: L" in large
    assert "Finished bust: 80.5 cm / 31¾ in" in small and "Finished bust: 100 cm / 39¼ in" in large
    assert "Yarn: DK weight, 6 balls of 50 g" in large
    assert "Ch 81." in large
    assert "Rows 5-8: Ch 1, sc in each st across, turn. 61 sc" in small
    assert "Rows 5-12: Ch 1, sc in each st across, turn. 79 sc" in large


def test_what_others_work_is_left_out() -> None:
    """A row, a clause and the words that say who works them are not there for a maker who does not."""
    small, large = "\n".join(words(TABARD, 0)), "\n".join(words(TABARD, 2))
    assert "Row 3" not in small and "Row 3" in large
    assert "only" not in small + large and "All sizes" not in small + large
    assert "sc2tog 2 times" in small
    assert "Row 4: Ch 1, sc in each st to end, turn. 79 sc" in large
    assert "stops here" in small and "stops here" not in large
    assert "Row 13" not in small and "Row 13" in large


def test_lines_stay_where_they_are() -> None:
    """What is not for a size leaves an empty line, so that the line of a finding is that of the file."""
    for size in range(3):
        assert MakersWords(check(TABARD)).words(size).count("\n") == TABARD.count("\n")


@pytest.mark.parametrize("size", [0, 1, 2])
def test_counts_are_those_of_the_whole_report(size: int) -> None:
    """Nothing is worked otherwise because one size is looked at."""
    whole = check(TABARD)
    rows = [row.cells[size] for row in whole.ledger.rows if row.row.label is not None]
    own = [cell.made.stitches for cell in rows if cell.outcome.value != "not-worked"]
    assert counts(report_for(whole, size)) == own


def test_findings_are_those_of_the_size_in_its_own_figures() -> None:
    """The count that is wrong in M is told to M alone, with M's figures; nothing is found that the whole has not."""
    whole = check(TABARD)
    told = [
        [(f.expected, f.found) for f in report_for(whole, size).findings if f.rule == "count-differs"]
        for size in range(3)
    ]
    assert [len(one) for one in told] == [0, 1, 0]
    rules = {finding.rule for finding in whole.findings}
    assert all({f.rule for f in report_for(whole, size).findings} <= rules for size in range(3))


def test_figures_that_fit_no_size_stay() -> None:
    """A list that has a figure too few stands whole, and what was said of it is said to every maker."""
    text = TABARD.replace("10 (12, 14) sts", "10 (12) sts")
    view = report_for(check(text), 1)
    assert "10 (12) sts" in view.source.text
    assert "size-list-length" in [finding.rule for finding in view.findings]


@pytest.mark.parametrize(
    ("line", "read"),
    [
        ("Row 2: Ch 1, sc in next S: 3, M: 4, L: 5 sts, sc2tog, sc in each st to end.", "sc in next 4 sts, sc2tog"),
        ("Row 2: Ch 1, sc in next 3/4/5 sts, sc2tog, sc in each st to end.", "sc in next 4 sts, sc2tog"),
        ("Row 2: Ch 1, sc in next 3-4-5 sts, sc2tog, sc in each st to end.", "sc in next 4 sts, sc2tog"),
        ("Row 2: Ch 1, sc in next 3 (4) 5 sts, sc2tog, sc in each st to end.", "sc in next 4 sts, sc2tog"),
        ("Row 2: Ch 1, sc in each st across. (20, 24, 28)", "sc in each st across. (24)"),
    ],
)
def test_every_shape_of_list_gives_one_figure(line: str, read: str) -> None:
    """Names, strokes, hyphens, alternating brackets, and a count that is all in brackets."""
    text = f"Cuff\n\nSizes: S (M, L)\n\nCh 21 (25, 29).\nRow 1: Sc in 2nd ch from hook and in each ch across. 20 (24, 28) sc\n{line}\n"
    assert read in MakersWords(check(text)).words(1)


def test_a_size_may_be_called_as_makers_do() -> None:
    """By its name in any letters, in full, or by its place; what is not there is answered with those that are."""
    report = check(TABARD)
    assert [size_called(report, name) for name in ("m", "Medium", "2nd", "size M")] == [1, 1, 1, 1]
    with pytest.raises(NoSuchSize, match="there is no size “XL”; its sizes are S, M and L"):
        size_called(report, "XL")
    with pytest.raises(NoSuchSize, match="several"):
        size_called(report, "S and M")


def test_one_size_has_none_to_choose() -> None:
    """A pattern that names no sizes is not shown for one."""
    with pytest.raises(NoSuchSize, match="none to choose"):
        size_called(check("Square\n\nRnd 1: 6 sc in magic ring. (6)\n"), "M")


def frogproof(*arguments: str) -> subprocess.CompletedProcess:
    """The command, run."""
    return subprocess.run([sys.executable, "-m", "lint", *arguments], capture_output=True, text=True, cwd=ROOT)


def test_the_command_shows_one_size(tmp_path: Path) -> None:
    """Points and text on the terminal; the size and its text in JSON, whose places are in that text."""
    path = tmp_path / "tabard.txt"
    path.write_text(TABARD, encoding="utf-8")
    shown = frogproof("check", str(path), "--size", "L")
    assert "Wicken Tabard, size L" in shown.stdout and "Ch 81." in shown.stdout
    data = json.loads(frogproof("check", str(path), "--size", "m", "--json", "-").stdout)
    assert data["size"] == "M" and data["sizes"] == ["M"]
    wrong = next(finding for finding in data["findings"] if finding["rule"] == "count-differs")
    assert data["text"][wrong["start"]["offset"] : wrong["end"]["offset"]].startswith("70")


def test_a_size_that_is_not_there_is_told(tmp_path: Path) -> None:
    """One line on standard error, exit status 2."""
    path = tmp_path / "tabard.txt"
    path.write_text(TABARD, encoding="utf-8")
    done = frogproof("check", str(path), "--size", "Q")
    assert done.returncode == 2
    assert done.stderr.strip() == f"{path}: there is no size “Q”; its sizes are S, M and L"


def test_the_page_shows_every_size() -> None:
    """The report of all sizes has each maker's text in it; that of one size has no such choice."""
    whole = check(TABARD)
    assert "As the maker of each size reads it" in as_page(whole)
    one = as_page(report_for(whole, 2))
    assert "As the maker of each size reads it" not in one and "Wicken Tabard, size L" in one
