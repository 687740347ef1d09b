"""What the commands on houses do: restyle, house, glossary.  Shown text comes back; files are the command line's."""

from __future__ import annotations

from itertools import groupby
from pathlib import Path

from lint.customs import customs
from lint.glossary import Explained, as_list, glossary
from lint.house.explained import explained
from lint.house.keys import all_keys
from lint.house.loading import book_for, house_beside, house_names, house_path, load_house, sections_known
from lint.house.model import House
from lint.inspection import inspect
from lint.reports.housefile import as_house_file
from lint.restyle.habits import forms, habits
from lint.restyle.listing import ORDER
from lint.restyling import Change, Restyled, ground_of, restyle
from lint.rulebook import Rulebook, load_languages
from lint.source import SourceText


def house_for(name: str | None, pattern: str | None, book: Rulebook) -> House | None:
    """The house named, or the one that stands beside the pattern.  Raises RuleFileError."""
    if name is not None:
        return load_house(house_path(name), book)
    beside = house_beside(Path(pattern)) if pattern not in (None, "-") else None
    return load_house(beside, book) if beside is not None else None


def restyled(source: SourceText, house: House, book: Rulebook, terms: str) -> Restyled:
    """A pattern in the house's form.  Raises NotRestyled."""
    return restyle(source, house, book, terms)


def log_of(result: Restyled) -> str:
    """Every change and everything left, a line each; changes that are alike and follow each other on one line are one."""
    lines = ["Lines are numbered as in the pattern that was given."] if result.changes or result.kept else []
    for (line, old, new, subject), alike in groupby(result.changes, _alike):
        changes = list(alike)
        number = len(changes)
        if subject == ORDER:
            moved = "entries change" if number > 1 else "entry changes"
            lines.append(f"line {changes[0].line}: {number} {moved} places in the list of abbreviations, {subject}")
            continue
        often = f" ({number} times)" if number > 1 else ""
        lines.append(f"line {line}: {_told(old, new)}{often}, {subject}")
    lines += [f"line {line}, left: {why}" for line, why in result.kept]
    made = len(result.changes)
    summary = "nothing to change" if not made else f"{made} change{'s' if made != 1 else ''}"
    return "".join(line + "\n" for line in [*lines, f"{summary}; every row makes the same as before"])


def _alike(change: Change) -> tuple[int, str, str, str]:
    """What changes share that are one line of the log; entries that change places are one by themselves."""
    return (0, "", "", ORDER) if change.subject == ORDER else (change.line, change.old, change.new, change.subject)


def _told(old: str, new: str) -> str:
    """What became of words: changed, put in, or taken out."""
    if not old:
        return f"put in {_shown(new)}"
    return f"{_shown(old)} -> {_shown(new)}" if new else f"taken out {_shown(old)}"


def _shown(words: str) -> str:
    flat = words.strip("\n").replace("\n", "⏎")
    return f"“{flat if len(flat) <= 70 else flat[:67] + '…'}”"


def told(name: str, book: Rulebook) -> str:
    """What a house demands, in plain words.  Raises RuleFileError."""
    return explained(load_house(house_path(name), book), book)


def keys(book: Rulebook) -> str:
    """A house file with every key there is, each explained."""
    return all_keys(sections_known(book))


def names() -> str:
    """The houses that come with the rules, a line each."""
    return "".join(f"{name}\n" for name in house_names())


def implied(sources: list[SourceText], book: Rulebook, terms: str) -> str:
    """The house file that patterns imply."""
    reports = [inspect(source, book, terms, workings=False) for source in sources]
    grounds = [ground_of(report, House()) for report in reports]
    bases = {country: load_house(house_path(country), book) for country in ("us", "uk")}
    found = [*habits(grounds), *customs(reports)]
    return as_house_file(found, forms(grounds, bases), [Path(source.path).name for source in sources])


def listed(
    source: SourceText, house: House | None, book: Rulebook, terms: str, languages: tuple[str, ...]
) -> tuple[str, str]:
    """The abbreviations that a pattern uses, ready to paste; with languages, what each is called there; and a note."""
    own = book_for(house, book) if house is not None else book
    report = inspect(source, own, terms, workings=False, house=house)
    entries = glossary(report)
    text = as_list(entries, house)
    for code in languages:
        text += _abroad(entries, code)
    own_terms, note = report.terms.terms.upper(), ""
    if house is not None and house.terms not in (None, report.terms.terms):
        note = f"the pattern is in {own_terms} terms and this house publishes in {house.terms.upper()} terms: "
        note += "the forms are the pattern's own; restyle it first for the house's"
    return text, note


def _abroad(entries: tuple[Explained, ...], code: str) -> str:
    language = next(language for language in load_languages() if language.code == code)
    terms = {term.key: term for term in language.terms}
    lines = [
        f"{one.form} = {', '.join(terms[one.key].words)}"
        + (f" ({', '.join(terms[one.key].abbr)})" if terms[one.key].abbr else "")
        for one in entries
        if one.key in terms
    ]
    return "".join(f"{line}\n" for line in ["", f"{language.name}, to look up:", *lines])


def languages_known() -> list[str]:
    """The codes of all languages in rules/lookup/languages.yaml."""
    return [language.code for language in load_languages()]


__all__ = ["House", "house_for", "implied", "keys", "languages_known", "listed", "log_of", "names", "restyled", "told"]
