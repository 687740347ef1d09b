"""What `frogproof rules` and `frogproof explain` tell of the rules."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from unittest import mock

import pytest
from command import run_command
from helpers import ROOT

from lint.rulebook import load_rulebook
from lint.rulefolder import rules_folder


def told(*arguments: str) -> str:
    """What the command says of the rules; it must succeed."""
    answer = run_command(*arguments)
    assert (answer.returncode, answer.stderr) == (0, b"")
    return answer.stdout.decode()


def test_every_rule_is_listed_once_with_its_weight() -> None:
    """The list holds the rules of the rulebook, no more and no fewer."""
    book = load_rulebook()
    every = [*book.checks.values(), *book.word_rules]
    listed = [line.split() for line in told("rules").splitlines() if line.endswith(")") and line.startswith("  ")]

    assert sorted(words[0] for words in listed) == sorted(rule.name for rule in every)
    assert {words[0]: words[1] for words in listed} == {rule.name: f"({rule.weight.value})" for rule in every}


def test_rules_of_one_area_and_weight() -> None:
    """The choices leave out the rest."""
    listed = told("rules", "--area", "measures", "--weight", "correction")

    assert "MEASURES" in listed and "(correction)" in listed
    assert "COUNTS" not in listed and "(query)" not in listed


def test_an_area_that_is_not_there() -> None:
    """It is refused with the areas that there are."""
    answer = run_command("rules", "--area", "cuonts")

    assert answer.returncode == 2
    assert b"there are counts, " in answer.stderr and answer.stderr.count(b"\n") == 1


def test_a_misspelt_rule_is_told_with_the_one_meant() -> None:
    """The nearest name is offered."""
    answer = run_command("explain", "cont-differs")

    assert answer.returncode == 2
    assert b"is count-differs meant?" in answer.stderr


def test_a_broken_rule_file_is_told_at_its_place(tmp_path: Path) -> None:
    """The list of rules names file, line and key, as every other use of the file does."""
    text = (rules_folder() / "checks.yaml").read_text(encoding="utf-8").replace("    area:", "    aera:", 1)
    (tmp_path / "checks.yaml").write_text(text, encoding="utf-8")
    (tmp_path / "word_rules.yaml").write_text("word_rules: []\n", encoding="utf-8")
    with (
        mock.patch("lint.rulelist.rules_folder", lambda: tmp_path),
        mock.patch("lint.ruletexts.rules_folder", lambda: tmp_path),
    ):
        answer = run_command("rules")

    assert answer.returncode == 2
    assert b"checks.yaml:" in answer.stderr and b"'aera'" in answer.stderr


@pytest.mark.parametrize("arguments", [["--help"], ["rules"], ["explain"], ["explain", "count-differs"]])
def test_what_needs_no_pattern_loads_nothing_heavy(arguments: list[str]) -> None:
    """Help and rules answer at once: neither the tokenizer nor the models of the rule files are loaded for them."""
    program = (
        "import sys\nfrom lint.cli import main\n"
        f"try:\n    main({arguments!r})\nexcept SystemExit:\n    pass\n"
        "print([name for name in ('spacy', 'pydantic', 'jinja2') if name in sys.modules], file=sys.stderr)"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, cwd=ROOT, check=True)

    assert done.stderr == "[]\n"
