"""The abbreviations that a pattern uses, explained: its list, ready to paste, in the house's form."""

from __future__ import annotations

from dataclasses import dataclass

from lint.expression import expression
from lint.house.model import House
from lint.house.samples import entry_form
from lint.inspection import Report
from lint.lexicon import Lexeme
from lint.restyle.abbreviations import FormTable, entries_of, same_thing
from lint.restyle.ground import Ground
from lint.restyling import ground_of

_LONGEST = 4  # lexemes in an abbreviation: "sl st", "ch-sp", "dc2tog"


@dataclass(frozen=True, slots=True)
class Explained:
    """An abbreviation in use, and what it stands for; `key` is its US abbreviation, for looking it up elsewhere."""

    form: str
    meaning: str
    key: str
    own: bool  # explained in the pattern's words


def glossary(report: Report) -> tuple[Explained, ...]:
    """Exactly what the rows and the pattern's own definitions use, in the order of the alphabet."""
    house = report.house or House()
    ground = ground_of(report, house)
    known = _known(report, house)
    found: dict[str, Explained] = {}
    words = [tuple(ground.all_words(row)) for part in report.pattern.parts for row in part.rows]
    words += [
        tuple(report.lexicon.read(entry.meaning)) for entry in report.pattern.abbreviations if _defines(entry.meaning)
    ]
    in_words = any(one is not None and one.own and " " in form for form, one in known.items())
    for lexemes in words:
        _collect(lexemes, known, found, in_words)
    for part in report.pattern.parts:
        for row in part.rows:
            label = row.label.words if row.label is not None else ""
            for word in expression(r"(?<![\d\p{L}])\p{L}+").findall(label):
                _take(word, known, found)
    _collect_notes(report, ground, known, found)
    return tuple(sorted(found.values(), key=lambda one: one.form.casefold()))


def _collect_notes(
    report: Report, ground: Ground, known: dict[str, Explained | None], found: dict[str, Explained]
) -> None:
    """What only the notes use ("Join means sl st in the first st"); of their words, those that the pattern explains."""
    lists = [section.span for section in report.pattern.sections if section.key in ("abbreviations", "materials")]
    own = {form: one for form, one in known.items() if one is not None and one.own and len(form) > 1}
    for lexeme in ground.outside_rows:
        if not any(span.start <= lexeme.start < span.end for span in lists) and not ground.named(lexeme.span):
            _take(lexeme.text, own, found)


def _defines(meaning: str) -> bool:
    return expression(r"\d").search(meaning) is not None


def _known(report: Report, house: House) -> dict[str, Explained | None]:
    """Every printed form that is an abbreviation, in lower case: the house's before the pattern's before the standard's."""
    known: dict[str, Explained | None] = {}
    standard = {}
    for rule in report.book.abbreviations[report.terms.terms].abbreviations:
        for form in rule.forms if not rule.abbr.endswith("-") else ():
            standard.setdefault(form.lower(), Explained(rule.abbr, rule.meaning, _key(report, rule.abbr), False))
    own: dict[str, Explained] = {}
    for entry in report.pattern.abbreviations:
        form = next((form for form in entry.forms if form), "")
        printed = _as_printed(report, entry.span.start, entry.span.end, form)
        meaning = " ".join(entry.meaning.split()).rstrip(".")
        meaning = expression(r"\((?:s|es)\)$").sub("", meaning if _defines(meaning) else meaning.partition(". ")[0])
        if not form or not meaning or len(form.split()) > 3:
            continue
        for one in entry.forms:
            own.setdefault(one, Explained(printed, meaning, _key(report, form), True))
    for entry in entries_of(house) if house.terms in (None, report.terms.terms) else []:
        if entry.listed:
            for form in (entry.use, entry.several):
                known.setdefault(form.lower(), Explained(entry.use, entry.means, _key(report, entry.use), False))
    for form, one in own.items():
        if form in known:
            meaning = known[form].meaning if not _defines(one.meaning) else one.meaning
            known[form] = Explained(known[form].form, meaning, one.key, one.own)
    for source in (own, standard):
        for form, one in source.items():
            known.setdefault(form, one)
    return _in_house(report, house, known)


def _in_house(report: Report, house: House, known: dict[str, Explained | None]) -> dict[str, Explained | None]:
    """The same under the forms that the house puts for others; None for one that it does not have explained."""
    if house.terms not in (None, report.terms.terms):
        return known
    table = FormTable(house)
    unlisted = {form.lower() for entry in entries_of(house) if not entry.listed for form in (entry.use, entry.several)}
    for form, one in list(known.items()):
        if form in unlisted and one is not None and not _defines(one.meaning):
            known[form] = None
            continue
        found = table.replacement(one.form) or table.replacement(form)
        words = report.lexicon.read(form)
        if found is None or _defines(one.meaning) or not same_thing(report.lexicon, words, found.entry.use):
            continue
        entry = found.entry
        known[form] = Explained(entry.use, entry.means, one.key, one.own) if entry.listed else None
    return known


def _as_printed(report: Report, start: int, end: int, form: str) -> str:
    text = report.source.text[start:end]
    at = text.lower().find(form)
    return text[at : at + len(form)] if at >= 0 else form


def _key(report: Report, form: str) -> str:
    lexemes = report.lexicon.read(form)
    return lexemes[0].value if len(lexemes) == 1 and lexemes[0].kind == "stitch" else form.lower()


def _collect(
    lexemes: tuple[Lexeme, ...], known: dict[str, Explained | None], found: dict[str, Explained], in_words: bool
) -> None:
    """Adds what a row uses; `in_words`: some forms of the pattern's own are of several words."""
    index = 0
    while index < len(lexemes):
        most = min(_LONGEST, len(lexemes) - index)
        if not in_words:  # no form is of several words: only what is printed in one can be one
            most = next((n for n in range(1, most) if not lexemes[index + n].glued), most)
        for length in range(most, 0, -1):
            run = lexemes[index : index + length]
            if run[0].kind == "number" and length > 1:
                continue
            word = "".join((" " if at and not one.glued else "") + one.text for at, one in enumerate(run))
            spaced = length > 1 and not all(one.glued for one in run[1:])
            own = known.get(word.lower())
            if (not spaced or own is not None and own.own) and _take(word, known, found):
                index += length - 1
                break
        else:
            for word in lexemes[index].text.split():  # "top of sc", "turning ch"
                _take(word, known, found)
        index += 1


def _take(word: str, known: dict[str, Explained | None], found: dict[str, Explained]) -> bool:
    lower = word.lower()
    one = known.get(lower) or (known.get(lower[:-1]) if lower.endswith("s") and len(lower) > 2 else None)
    if one is None and lower in known:
        return True  # in use, and the house does not have it explained
    if one is None or len(lower) == 1 and not one.own and word != one.form:
        return False
    found.setdefault(one.form, one)
    return True


def as_list(entries: tuple[Explained, ...], house: House | None) -> str:
    """The list in lines, ready to paste."""
    form = entry_form((house.abbreviation_list.form if house is not None else None) or "ch = chain")
    return "".join(form.written(one.form, one.meaning) + "\n" for one in entries)
