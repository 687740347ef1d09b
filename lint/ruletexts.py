"""The rules that patterns are held to, each with what it says, why it matters and its examples: rules/checks.yaml and
rules/word_rules.yaml. They are read apart from the rest of rules/, so that a rule is shown at once.
"""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from pydantic import Field, field_validator

from lint.finding import Weight
from lint.rulefolder import rules_folder
from lint.strict import Strict, each_once
from lint.yamlfile import read_model


class Example(Strict):
    """A small pattern, or the rows of one, that shows the thing found (bad) or mended (good).

    `house`: the house file, as text, that it is held to; "" for none.  `says`: the sentence that the bad one is told with.
    """

    good: str
    bad: str
    house: str = ""
    says: str = ""


class CheckRule(Strict):
    """A check: what it finds, how heavily it weighs, what it says and why it matters to the maker."""

    name: str
    area: str
    weight: Weight
    message: str
    why: str
    source: str = "common practice, no source"
    example: Example


class CheckFile(Strict):
    """rules/checks.yaml."""

    checks: list[CheckRule]

    @field_validator("checks")
    @classmethod
    def _once(cls, checks: list[CheckRule]) -> list[CheckRule]:
        return each_once(checks, [check.name for check in checks])


class WordRule(Strict):
    """A word-list rule: any of the phrases is a finding, each by itself or all places of one phrase together."""

    name: str
    area: str
    weight: Weight
    phrases: list[str] = Field(min_length=1)
    unless: list[str] = []  # words in whose sentence a phrase is no finding
    message: str
    why: str
    where: Literal["rows", "everywhere"] = "rows"
    together: bool = False
    source: str = "common practice, no source"
    example: Example


class WordRuleFile(Strict):
    """rules/word_rules.yaml."""

    word_rules: list[WordRule]


def load_checks(folder: Path) -> list[CheckRule]:
    """The checks, in the order of their file.  Raises RuleFileError."""
    return read_model(folder / "checks.yaml", CheckFile).checks


def load_word_rules(folder: Path) -> list[WordRule]:
    """The word-list rules, in the order of their file.  Raises RuleFileError."""
    return read_model(folder / "word_rules.yaml", WordRuleFile).word_rules


def load_rules(folder: Path | None = None) -> list[CheckRule | WordRule]:
    """All rules, checks first.  Raises RuleFileError."""
    folder = folder or rules_folder()
    return [*load_checks(folder), *load_word_rules(folder)]
