"""Draft against draft: what is settled, open and new, matched by meaning; whose counts changed."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

from helpers import ROOT
from testers_help import HAT, inspected

from lint.drafts.comparison import compare_drafts
from lint.testers.review import review

OLD = HAT.replace(
    "(24 (28, 32) sc)\nRnds 5-8", "(25 (28, 32) sc)\nRnds 5-8"
)  # Rnd 4 is printed wrong in the first size


def compared(old: str, new: str, **mails: str) -> Any:
    """Two drafts compared, with mails of testers on the old one."""
    drafts = inspected(old), inspected(new)
    files = [(f"{name}.eml", text.encode()) for name, text in mails.items()]
    return compare_drafts(*drafts, review(drafts[0], files) if files else None)


def rules(findings: Any) -> list[tuple[str, str | None]]:
    """Rule and row of findings about counts."""
    return [(one.rule, one.row) for one in findings if one.rule.startswith("count")]


def test_a_mended_count_is_settled() -> None:
    """A finding that the new draft does not show is settled, and the row's printed count has changed."""
    found = compared(OLD, HAT)

    assert rules(found.settled) == [("count-differs", "Rnd 4")]
    assert [(c.part, c.row, c.size, c.old.printed, c.new.printed) for c in found.counts] == [
        ("CROWN", "Rnd 4", 0, 25, 24)
    ]


def test_what_stays_is_open() -> None:
    """The same finding in both drafts is open, and no count has changed."""
    found = compared(OLD, OLD.replace("Alder Hat", "Alder Hat, second draft"))

    assert rules(one.new for one in found.open) == [("count-differs", "Rnd 4")]
    assert rules(found.settled) == rules(found.new_findings) == []
    assert found.counts == ()


def test_lines_and_numbers_play_no_part() -> None:
    """A finding is the same one after lines were put in above it and its row got another number."""
    moved = OLD.replace("US terms\n", "US terms\n\nA word from the designer.\n\n").replace("Rnds 5-8", "Rnds 6-9")
    for number in (4, 3, 2):
        moved = moved.replace(f"Rnd {number}: *Sc", f"Rnd {number + 1}: *Sc").replace(
            f"Rnd {number}: 2", f"Rnd {number + 1}: 2"
        )
    first = "Rnd 1: Make a magic ring, 6 (7, 8) sc in ring. (6 (7, 8) sc)\n"
    moved = moved.replace(first, f"{first}Rnd 2: Sc in each sc around. (6 (7, 8) sc)\n")
    found = compared(OLD, moved)

    assert rules(one.new for one in found.open) == [("count-differs", "Rnd 5")]
    assert rules(found.settled) == rules(found.new_findings) == []
    assert {(c.row, c.old) for c in found.counts} == {("Rnd 2", None)}


def test_a_finding_with_other_figures_is_open_and_changed() -> None:
    """A count that was mended to another wrong one is open still."""
    found = compared(OLD, OLD.replace("(25 (28", "(26 (28"))

    assert [(one.new.rule, one.changed) for one in found.open if one.new.row == "Rnd 4"] == [("count-differs", True)]


def test_a_new_mistake_is_new() -> None:
    """A finding that only the new draft has is new."""
    assert rules(compared(HAT, OLD).new_findings) == [("count-differs", "Rnd 4")]


def test_rows_that_go_are_told() -> None:
    """A row that the new draft does not have is among the counts that changed."""
    found = compared(HAT, HAT.replace("Rnd 2: Sc in each sc around. (30 (35, 40) sc)\n", ""))

    assert {(c.part, c.row, c.size, c.new) for c in found.counts} == {
        ("BRIM", "Rnd 2", size, None) for size in range(3)
    }


class TestTesters:
    """Testers' points from draft to draft."""

    COUNTS = "Size: S\nPart: Crown\nRnd 3: 18\nRnd 4: 24\n"

    def test_a_print_that_was_mended_is_settled(self) -> None:
        """A print that testers showed wrong, mended."""
        found = compared(OLD, HAT, mia=self.COUNTS, bea=self.COUNTS)

        assert [point.kind for point in found.testers.settled] == ["print-wrong"]
        assert "print-wrong" not in [point.kind for point, _ in found.testers.open]

    def test_a_print_that_was_not_mended_is_open(self) -> None:
        """A print that testers showed wrong, and that is as it was."""
        found = compared(OLD, OLD, mia=self.COUNTS, bea=self.COUNTS)

        assert "print-wrong" in [point.kind for point, _ in found.testers.open]

    def test_counts_go_with_their_rows(self) -> None:
        """A tester's count of Rnd 4 is that of Rnd 5 once a round was put in before it."""
        new = HAT.replace("Rnds 5-8", "Rnds 6-9").replace("Rnd 4: *", "Rnd 5: *")
        new = new.replace("Rnd 3: *", "Rnd 3: Sc in each sc around. (12 (14, 16) sc)\nRnd 4: *")
        found = compared(HAT, new, mia="Size: S\nPart: Crown\nRnds 1-8 all match\n")

        assert [point.kind for point in found.testers.new] == []

    def test_words_that_are_gone_settle_a_remark(self) -> None:
        """A typing error is settled once the quoted words are gone, and open while they stand."""
        old = HAT.replace("Make a magic ring", "Make a magci ring")
        mail = 'Size: S\nTypo in Crown Rnd 1: "magci"\n'

        assert "typo" in [point.kind for point in compared(old, HAT, mia=mail).testers.settled]
        assert "typo" in [point.kind for point, _ in compared(old, old, mia=mail).testers.open]


def test_command(tmp_path: Path) -> None:
    """frogproof recheck writes HTML and JSON; 1 while the new draft has a correction."""
    (tmp_path / "old.txt").write_text(OLD, encoding="utf-8")
    (tmp_path / "new.txt").write_text(HAT, encoding="utf-8")
    (tmp_path / "mia.eml").write_text(TestTesters.COUNTS, encoding="utf-8")
    page = tmp_path / "out.html"

    def run(old: str, new: str) -> subprocess.CompletedProcess:
        call = [sys.executable, "-m", "lint", "recheck", str(tmp_path / old), str(tmp_path / new), "--json", "-"]
        call += ["--html", str(page), "--testers", str(tmp_path / "mia.eml")]
        return subprocess.run(call, cwd=ROOT, capture_output=True, text=True, check=False)

    data = json.loads(run("old.txt", "new.txt").stdout)
    assert data["schema"] == "frogproof-recheck/1"
    assert [one["rule"] for one in data["settled"] if one["rule"] == "count-differs"] == ["count-differs"]
    assert [one["row"] for one in data["counts_changed"]] == ["Rnd 4"]
    assert "Rows whose counts changed" in page.read_text(encoding="utf-8")
    assert run("new.txt", "old.txt").returncode == 1
    assert run("old.txt", "none.txt").returncode == 2
