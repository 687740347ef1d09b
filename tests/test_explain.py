"""The command `explain`: what a rule finds, why, and what it says, as a person at the command line gets it."""

from __future__ import annotations

from pathlib import Path

from click.testing import CliRunner
from helpers import check

HOUSE = """
name: Mill Lane
extends: us
word_rules:
  - {name: no-simply, phrases: [simply], message: "“{words}” in {row} of {part} talks down.", why: The style sheet., where: everywhere}
"""


def explain(*arguments: str):
    """The result of the command."""
    from lint.cli import commands

    return CliRunner().invoke(commands, ["explain", *arguments])


def test_a_filled_sentence_is_shown() -> None:
    """What is said stands below the example of which it is said."""
    output = explain("count-differs").output
    assert "What is said of that:\n    Rnd 2: the words make 12 sc, but the count printed is 13 sc." in output
    assert "{" not in output


def test_a_rule_of_a_house_is_explained(tmp_path: Path) -> None:
    """A house's own word list has its why, too; without the house it is no rule."""
    path = tmp_path / "house.yaml"
    path.write_text(HOUSE, encoding="utf-8")
    assert "The style sheet." in explain("no-simply", "--house", str(path)).output
    assert "no-simply  (style)" in explain("--house", str(path)).output
    assert explain("no-simply").exit_code == 2


def test_words_outside_the_rows_are_told_by_their_line() -> None:
    """A sentence that names the row names the line where there is no row."""
    text = "Mat\nUS terms\n\nSimply lovely.\n\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across. (11 sc)\n"
    [message] = [one.message for one in check(text, house=HOUSE).findings if one.rule == "no-simply"]
    assert message == "“Simply” in line 4 of this pattern talks down."


def test_a_rule_has_the_weight_that_the_house_gives_it(tmp_path: Path) -> None:
    """What a house makes heavier, or leaves out, is told so; without the house the rule has its own weight."""
    path = tmp_path / "house.yaml"
    path.write_text(
        "name: Mill Lane\nextends: us\nrules: {count-missing: query, count-differs: off}\n", encoding="utf-8"
    )
    assert explain("count-missing", "--house", str(path)).output.startswith("count-missing  (query)")
    assert explain("count-differs", "--house", str(path)).output.startswith("count-differs  (off)")
    assert explain("count-missing").output.startswith("count-missing  (style)")
