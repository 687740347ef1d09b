"""What the report gives for looking up: the abbreviations that the pattern uses, and the rules behind its notes."""

from __future__ import annotations

from dataclasses import dataclass

from lint.glossary import as_list, glossary
from lint.inspection import Report
from lint.rulebook import load_languages


@dataclass(frozen=True, slots=True)
class ShownGlossary:
    """The list to paste, and what its words are called elsewhere: a line a language."""

    lines: tuple[str, ...]
    abroad: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class RuleHelp:
    """A rule that has a note in the report: what it is for, with an example of each sort."""

    name: str
    why: str
    good: str
    bad: str
    source: str


def shown_glossary(report: Report) -> ShownGlossary:
    """The abbreviations in use, in the house's form where the pattern is held to one."""
    entries = glossary(report)
    lines = tuple(as_list(entries, report.house).splitlines())
    abroad = []
    for language in load_languages():
        words = {term.key: term.words[0] + (f" ({term.abbr[0]})" if term.abbr else "") for term in language.terms}
        told = [f"{one.form}: {words[one.key]}" for one in entries if one.key in words]
        if told:
            abroad.append((language.name, "; ".join(told)))
    return ShownGlossary(lines, tuple(abroad))


def rules_behind(report: Report) -> tuple[RuleHelp, ...]:
    """Every rule that a finding of the report comes from, in the order of the alphabet."""
    found = []
    rules = {**report.book.checks, **{rule.name: rule for rule in report.book.word_rules}}
    for name in sorted({finding.rule for finding in report.findings} & set(rules)):
        rule = rules[name]
        example = rule.example
        found.append(RuleHelp(name, rule.why.strip(), example.good.strip(), example.bad.strip(), rule.source))
    return tuple(found)
