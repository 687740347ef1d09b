"""Abbreviations in the house's form: in rows only, one for one, with their plurals and their sentence's capital."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.house.model import House, HouseAbbreviation
from lint.lexicon import Lexeme, Lexicon
from lint.restyle.chainspaces import chain_spaces
from lint.restyle.edits import Edit
from lint.restyle.ground import Ground, RowWords
from lint.tree import RowCall, walk

RULE = "abbreviation-not-house"
FORBIDDEN = "abbreviation-forbidden"
_MOST_WORDS = 5
_POINTERS = ("ordinal", "next", "last", "same", "each", "first", "number", "of", "the", "repeat")


@dataclass(frozen=True, slots=True)
class Replacement:
    """What a printed form becomes, and the entry of the house's list that says so."""

    new: str
    entry: HouseAbbreviation


class FormTable:
    """Printed forms and what the house puts for them."""

    def __init__(self, house: House) -> None:
        self._exact: dict[str, Replacement] = {}
        self._lower: dict[str, Replacement] = {}
        self.never: dict[str, HouseAbbreviation] = {}
        self.own: dict[str, HouseAbbreviation] = {}
        for entry in entries_of(house):
            for form in (entry.use, entry.several):
                self.own.setdefault(form, entry)
            for form in entry.replace:
                for old, new in ((form, entry.use), *((one, entry.several) for one in _plurals(form))):
                    self._exact.setdefault(old, Replacement(new, entry))
                    self._lower.setdefault(old.lower(), Replacement(new, entry))
            for form in entry.never:
                for old in (form, *_plurals(form)):
                    self.never.setdefault(old, entry)
        for form, entry in self.own.items():  # what one entry prints is nothing to replace, but for its capitals
            self._exact.pop(form, None)
            self._lower.pop(form.lower(), None)
            if form.islower():  # but "mc" may be a magic circle where "MC" is the main colour
                self._lower[form] = Replacement(form, entry)

    def replacement(self, printed: str) -> Replacement | None:
        """What the house puts for a printed form; None where it is the house's own, or unknown.

        Letter case is part of a form ("HDC" becomes "hdc"), but for the capital that a sentence begins with.
        """
        if printed in self.own:
            return None
        small = printed[:1].lower() + printed[1:]
        return self._exact.get(printed) or self._exact.get(small) or self._lower.get(printed.lower())


def entries_of(house: House) -> list[HouseAbbreviation]:
    """The house's abbreviations, and its word for skip."""
    skip = house.wording.skip
    if skip is None:
        return house.abbreviations
    others = [form for form in ("skip", "sk", "miss") if form != skip]
    rest = [entry for entry in house.abbreviations if entry.use not in ("skip", "sk", "miss")]
    past, other = ("missed", "skipped") if skip == "miss" else ("skipped", "missed")
    return [
        *rest,
        HouseAbbreviation(use=skip, means="skip", replace=others, plural=skip, listed=skip == "sk"),
        HouseAbbreviation(use=past, means=past, replace=[other], plural=past, listed=False),
    ]


def _plurals(form: str) -> list[str]:
    if form.endswith("s") or len(form) < 2:
        return []
    return [form + "es"] if form.endswith(("stitch", "arch")) else [form + "s"]


def edits(ground: Ground) -> Iterator[Edit]:
    """Every printed form in a row that the house has another for."""
    if not ground.house.abbreviations and ground.house.wording.skip is None:
        return
    table = FormTable(ground.house)
    for row in ground.rows:
        if not row.certain:
            continue
        sized = chain_spaces(row) if ground.house.wording.chain_space is not None else set()
        called = _called(row) if ground.house.labels.round is not None else set()
        for run, printed in runs(ground, row):
            if run[0].start in sized or run[0].start in called:
                continue  # the house words such a space, and a row's label, as a whole
            found = table.replacement(printed)
            if found is not None and same_thing(ground.lexicon, run, found.new) and not _is_around(row, run):
                span = run[0].span.to(run[-1].span)
                opens = _is_label(row, run) or ground.begins_row(row.row, span.start)
                opens = opens or ground.opens_sentence(span.start)
                new = _cased(found.new, printed, opens)
                if new != printed and not (new.lower() == printed.lower() and _all_capitals(ground, row)):
                    yield Edit(span, new, RULE, found.entry.use)


def _called(row: RowWords) -> set[int]:
    """Where "round" stands with its number in rows that are called for: "Rep Rnd 3", "as 3rd rnd"."""
    spans = [step.span for step in walk(row.row.steps) if isinstance(step, RowCall)]
    neighbours = zip((None, *row.lexemes), row.lexemes, (*row.lexemes[1:], None), strict=False)
    return {
        one.start
        for before, one, behind in neighbours
        if one.kind == "round" and any(span.start <= one.start < span.end for span in spans)
        if behind is not None and behind.kind == "number" or before is not None and before.kind == "ordinal"
    }


def runs(ground: Ground, row: RowWords) -> Iterator[tuple[tuple[Lexeme, ...], str]]:
    """Stretches of a row of one lexeme and more, longest first at each place, with their words in single spaces."""
    lexemes = row.lexemes
    for index in range(len(lexemes)):
        for length in range(min(_MOST_WORDS, len(lexemes) - index), 0, -1):
            run = lexemes[index : index + length]
            if run[-1].end - run[0].start <= 60 and "\n" not in ground.source.text[run[0].start : run[-1].end]:
                yield run, " ".join(ground.source.text[run[0].start : run[-1].end].split())


def same_thing(lexicon: Lexicon, old: tuple[Lexeme, ...], new: str) -> bool:
    """Whether the reader takes both for the same: the house's word for it must be one that is known for it here."""
    if any(lexeme.kind == "special" for lexeme in old):
        return False  # the pattern's own stitch of that name
    if len(old) > 1:
        return True  # re-working the row decides
    there = lexicon.read(new)
    if len(there) > 1:
        return True
    one, other = old[0], there[0]
    return one.kind == other.kind and (one.kind != "stitch" or one.value == other.value)


def _is_around(row: RowWords, run: tuple[Lexeme, ...]) -> bool:
    """Whether "round" tells where ("evenly round the edge"), not which: no number, and nothing that points at a round."""
    if run[0].kind != "round" or run[0].lower != "round":
        return False
    index = row.lexemes.index(run[0])
    before = row.lexemes[index - 1] if index else None
    after = row.lexemes[index + 1] if index + 1 < len(row.lexemes) else None
    return not (after is not None and after.kind == "number") and (before is None or before.kind not in _POINTERS)


def _is_label(row: RowWords, run: tuple[Lexeme, ...]) -> bool:
    """Whether a round is called by its label, "rep Rnd 3", which may keep its capital."""
    after = row.lexemes.index(run[-1]) + 1
    return run[-1].kind == "round" and after < len(row.lexemes) and row.lexemes[after].kind == "number"


def _cased(new: str, printed: str, opens: bool) -> str:
    """A form with the capital that its sentence begins with, where the text has one there."""
    return new[:1].upper() + new[1:] if opens and printed[:1].isupper() and new.islower() else new


def _all_capitals(ground: Ground, row: RowWords) -> bool:
    """Whether all of a row is in capitals, so that they are none of its abbreviations'."""
    return not any(letter.islower() for lexeme in row.lexemes for letter in lexeme.text if lexeme.text != "x")
