"""Finds rules/, reads and validates it into frozen models.

Every fault in a rule file is a RuleFileError whose message is `file:line:column: what is wrong`.
"""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import Literal

import regex
from pydantic import field_validator

from lint.alternatives import all_spelled_out
from lint.countries import CountryFile, Language, LanguageFile
from lint.finding import Weight
from lint.rulefolder import RuleFileError, rules_folder
from lint.rulemodels import FormFile, MaterialFile, ShapeFile
from lint.ruletexts import CheckRule, WordRule, load_checks, load_word_rules
from lint.strict import Strict, each_once
from lint.testerwords import TesterFile
from lint.yamlfile import read_model


class StitchRule(Strict):
    """A stitch: its key is its US abbreviation; `us` and `uk` are its printed forms."""

    key: str
    name: str
    us: list[str]
    uk: list[str]
    height: int
    uses: int = 1
    makes: int = 1
    turning_chain_counts: Literal["never", "usually", "always"]
    counted: bool = True
    source: str = ""


class PostForms(Strict):
    """How stitches around the post are printed; {} stands for the stitch's own form."""

    front: list[str]
    back: list[str]


class StitchFile(Strict):
    """rules/stitches.yaml."""

    stitches: list[StitchRule]
    post: PostForms
    foundation: list[str]
    standing: list[str]
    long: list[str]
    backwards: list[str]

    @field_validator("stitches")
    @classmethod
    def _once(cls, stitches: list[StitchRule]) -> list[StitchRule]:
        return each_once(stitches, [stitch.key for stitch in stitches])


class AbbreviationRule(Strict):
    """A standard abbreviation with every printed form."""

    abbr: str
    forms: list[str]
    meaning: str
    source: str


class AbbreviationFile(Strict):
    """rules/abbreviations_us.yaml and rules/abbreviations_uk.yaml."""

    terms: Literal["us", "uk"]
    abbreviations: list[AbbreviationRule]


class WordFile(Strict):
    """The reading vocabulary: phrases by kind, number words, ordinal words."""

    words: dict[str, list[str]]
    numbers: dict[str, int]
    ordinals: dict[str, int]
    hand_movements: list[str]
    count_tails: list[str]
    count_openers: list[str]
    colour_names: list[str]
    count_units: list[str]

    @field_validator("words")
    @classmethod
    def _each_spelled_out(cls, words: dict[str, list[str]]) -> dict[str, list[str]]:
        return {kind: all_spelled_out(phrases) for kind, phrases in words.items()}

    @field_validator("count_openers")
    @classmethod
    def _spelled_out(cls, phrases: list[str]) -> list[str]:
        return all_spelled_out(phrases)


class LayoutFile(Strict):
    """How documents are laid out: section headings by key, label words, terms statements."""

    sections: dict[str, list[str]]
    row_words: list[str]
    round_words: list[str]
    either_words: list[str]
    named_rows: list[str]
    us_statements: list[str]
    uk_statements: list[str]
    uk_evidence: list[str]
    us_evidence: list[str]
    talk_words: list[str]
    spiral_words: list[str]


class PlainWordFile(Strict):
    """rules/plain_words.yaml: words that need no explaining."""

    units: list[str]
    size_names: list[str]
    notation: list[str]


class CautionFile(Strict):
    """rules/cautions.yaml: words that call for a caution, and words that give one."""

    for_children: list[str]
    small_parts: list[str]
    parts_for_others: list[str]
    cords: list[str]
    cords_for_others: list[str]
    older_children: list[str]
    given_by: list[str]


class RequiredSection(Strict):
    """What every pattern has to give, and how it is known by heading or content."""

    key: str
    name: str
    headings: list[str] = []
    known_by: list[str]  # regular expressions that show its content
    why: str

    @field_validator("known_by")
    @classmethod
    def _readable(cls, patterns: list[str]) -> list[str]:
        for pattern in patterns:
            try:
                regex.compile(pattern)
            except regex.error as error:
                raise ValueError(f"'{pattern}' is no regular expression ({error})") from error
        return patterns


class SectionFile(Strict):
    """rules/sections.yaml."""

    required: list[RequiredSection]


class Area(Strict):
    """An area of the grade, its weight, and the words it is shown with."""

    name: str
    weight: float
    shown_as: str


class GradeFile(Strict):
    """Areas and what a finding of each weight costs, in points of 100 in its area."""

    areas: list[Area]
    cost: dict[Weight, float]
    verdicts: dict[Literal["ready", "queries", "corrections"], str]

    @field_validator("verdicts")
    @classmethod
    def _complete(cls, verdicts: dict[str, str]) -> dict[str, str]:
        missing = {"ready", "queries", "corrections"} - set(verdicts)
        if missing:
            raise ValueError(f"the verdict '{sorted(missing)[0]}' is missing")
        return verdicts


class Rulebook(Strict):
    """Everything in rules/."""

    stitches: StitchFile
    words: WordFile
    layout: LayoutFile
    abbreviations: dict[str, AbbreviationFile]
    countries: CountryFile
    plain_words: PlainWordFile
    cautions: CautionFile
    checks: dict[str, CheckRule]
    word_rules: list[WordRule]
    sections: SectionFile
    materials: MaterialFile
    testers: TesterFile
    shapes: ShapeFile
    forms: FormFile
    grade: GradeFile

    def rule(self, name: str) -> CheckRule | WordRule:
        """The check or word rule of a name.  KeyError if there is none."""
        if name in self.checks:
            return self.checks[name]
        return {rule.name: rule for rule in self.word_rules}[name]

    def stitch_word(self, terms: str, key: str) -> str:
        """A stitch's name in the terms "us" or "uk": sc is dc, and FPdc is FPtr, in UK terms."""
        if terms != "uk":
            return key
        before, stem, after = regex.fullmatch(r"(FP|BP|)(.*?)(\d+tog|)", key, regex.DOTALL).groups()
        rule = self.stitch(stem)
        if rule is None and stem.startswith("f"):
            before, rule = before + "f", self.stitch(stem[1:])
        return key if rule is None or not rule.uk else f"{before}{rule.uk[0]}{after}"

    def stitch(self, key: str) -> StitchRule | None:
        return _stitches_by_key(self).get(key)


def _stitches_by_key(book: Rulebook) -> dict[str, StitchRule]:
    return {rule.key: rule for rule in book.stitches.stitches}


@lru_cache(maxsize=4)
def load_rulebook(folder: Path | None = None) -> Rulebook:
    """Read and validate all rule files of a folder.  Raises RuleFileError."""
    folder = folder or rules_folder()
    checks = load_checks(folder)
    word_rules = load_word_rules(folder)
    grade = read_model(folder / "grade.yaml", GradeFile)
    areas = {area.name for area in grade.areas}
    for file, rules in (("checks.yaml", checks), ("word_rules.yaml", word_rules)):
        for rule in rules:
            if rule.area not in areas:
                raise RuleFileError(f"{folder / file}:1:1: the area '{rule.area}' of {rule.name} is not in grade.yaml")
    return Rulebook(
        stitches=read_model(folder / "stitches.yaml", StitchFile),
        words=read_model(folder / "words.yaml", WordFile),
        layout=read_model(folder / "layout.yaml", LayoutFile),
        abbreviations={
            terms: read_model(folder / f"abbreviations_{terms}.yaml", AbbreviationFile) for terms in ("us", "uk")
        },
        countries=read_model(folder / "countries.yaml", CountryFile),
        plain_words=read_model(folder / "plain_words.yaml", PlainWordFile),
        cautions=read_model(folder / "cautions.yaml", CautionFile),
        checks={check.name: check for check in checks},
        word_rules=word_rules,
        sections=read_model(folder / "sections.yaml", SectionFile),
        materials=read_model(folder / "materials.yaml", MaterialFile),
        testers=read_model(folder / "testers.yaml", TesterFile),
        shapes=read_model(folder / "shapes.yaml", ShapeFile),
        forms=read_model(folder / "forms.yaml", FormFile),
        grade=grade,
    )


@lru_cache(maxsize=1)
def load_languages() -> tuple[Language, ...]:
    """What words are called in other languages: read only where somebody looks.  Raises RuleFileError."""
    return tuple(read_model(rules_folder() / "lookup" / "languages.yaml", LanguageFile).languages)
