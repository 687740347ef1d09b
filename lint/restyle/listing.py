"""The pattern's own abbreviation list: its forms, the shape of its entries, what is used and missing in it, its order.

The designer's own meanings stay as they are; only an entry that is added gets the house's.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import regex

from lint.house.model import HouseAbbreviation
from lint.house.samples import EntryForm, entry_form
from lint.pattern import Abbreviation
from lint.restyle.abbreviations import FormTable, entries_of
from lint.restyle.edits import Edit
from lint.restyle.ground import Ground
from lint.source import Span

RULE = "abbreviation-list-not-house"
_SEPARATOR = regex.compile(r"\s*(?:=|:|\.{3,}|\s[-–—~]+\s|[-–—]+(?=\s)|—|\s\.\s|\t+|\s{2,})\s*")


@dataclass(frozen=True, slots=True)
class Listed:
    """An entry cut up: the words of its forms and of its meaning, and the stretch without its closing stop."""

    forms: str
    meaning: str
    span: Span
    abbreviation_first: bool
    simple: bool  # its two sides and nothing else


def edits(ground: Ground) -> Iterator[Edit]:
    """What the house changes in the list; the forms first, then shape and order, then what is missing."""
    entries = listed(ground)
    if len(entries) < 2:
        return
    changed = list(_forms(ground, entries))
    yield from changed
    if changed:
        return  # the list is read anew before its shape is looked at
    sample = ground.house.abbreviation_list.form
    if sample is not None:
        form = entry_form(sample)
        shaped = [Edit(one.span, _written(form, one), RULE, "shape of the list") for one in entries if one.simple]
        shaped = [edit for edit in shaped if ground.source.slice(edit.span) != edit.new]
        yield from shaped
        if shaped:
            return
    if ground.house.abbreviation_list.order == "alphabetical":
        ordered = list(_order(ground, entries))
        yield from ordered
        if ordered:
            return
    yield from _added(ground, entries)


def listed(ground: Ground) -> list[Listed]:
    """The entries that stand under the heading of the abbreviations, in the order of the text."""
    sections = [section.span for section in ground.pattern.sections if section.key == "abbreviations"]
    found = [
        _cut(ground, entry)
        for entry in ground.pattern.abbreviations
        if any(span.start <= entry.span.start < span.end for span in sections)
    ]
    return sorted((one for one in found if one is not None), key=lambda one: one.span.start)


def _cut(ground: Ground, entry: Abbreviation) -> Listed | None:
    text = ground.source.slice(entry.span)
    stripped = text.rstrip()
    if stripped.endswith(".") and not regex.search(r"\p{L}\.\p{L}\.$|\bf\. ?\w+\.$", stripped):
        stripped = stripped[:-1]
    span = Span(entry.span.start, entry.span.start + len(stripped))
    body = ground.source.slice(entry.body).strip().rstrip(".") if entry.body is not None else ""
    match = _SEPARATOR.search(stripped)
    if match and match.start():
        left, right = stripped[: match.start()], stripped[match.end() :]
        first = right.strip() == body
        forms, meaning = (left, right) if first else (right, left)
        simple = bool(regex.fullmatch(r"[^()\n]{1,24}(?:\(\w{1,3}\))?", forms)) and "\n" not in stripped
        return Listed(forms.strip(), meaning.strip(), span, first, simple and (first or left.strip() == body))
    bracket = regex.fullmatch(r"(?P<a>.+?)\s*\((?P<b>.+)\)", stripped)
    if bracket is None:
        return Listed(stripped, "", span, True, False)
    first = bracket["b"].strip() == body
    forms, meaning = (bracket["a"], bracket["b"]) if first else (bracket["b"], bracket["a"])
    return Listed(forms.strip(), meaning.strip(), span, first, "\n" not in stripped and len(forms) <= 24)


def _written(form: EntryForm, one: Listed) -> str:
    return form.written(one.forms, one.meaning)


def _forms(ground: Ground, entries: list[Listed]) -> Iterator[Edit]:
    """Forms of the list that the house replaces; an entry whose form needs no explaining goes, with its line."""
    table = FormTable(ground.house)
    present = {form for one in entries for form in _each(one.forms)}
    for one in entries:
        for form in _each(one.forms):
            found = table.replacement(form)
            if found is None or _kind(ground, form) != _kind(ground, found.new):
                continue
            at = ground.source.text.find(form, one.span.start, one.span.end)
            if not found.entry.listed or found.new in present:
                line = _whole_line(ground, one)
                if line is not None and len(_each(one.forms)) == 1:
                    yield Edit(line, "", RULE, found.entry.use)
            elif at >= 0:
                yield Edit(Span(at, at + len(form)), found.new, RULE, found.entry.use)
                present.add(found.new)


def _each(forms: str) -> list[str]:
    return [piece.strip() for piece in regex.split(r",|/", forms) if piece.strip()]


def _kind(ground: Ground, form: str) -> str:
    lexemes = ground.lexicon.read(form)
    return lexemes[0].kind if len(lexemes) == 1 else ""


def _whole_line(ground: Ground, one: Listed) -> Span | None:
    text = ground.source.text
    start = text.rfind("\n", 0, one.span.start) + 1
    end = text.find("\n", one.span.end)
    alone = not text[start : one.span.start].strip(" \t•*-") and not text[one.span.end : end].strip(" \t.")
    return Span(start, end + 1) if alone and end >= 0 else None


def _order(ground: Ground, entries: list[Listed]) -> Iterator[Edit]:
    """Entries put in the order of the alphabet, each in the place of another."""
    if not all(one.simple for one in entries):
        return
    ordered = sorted(entries, key=lambda one: (one.forms if one.abbreviation_first else one.meaning).casefold())
    for place, one in zip(entries, ordered, strict=True):
        yield Edit(place.span, ground.source.slice(one.span), RULE, "order of the list")


def missing(ground: Ground, entries: list[Listed]) -> list[HouseAbbreviation]:
    """Abbreviations of the house that rows use and that the list lacks, though the house wants them explained."""
    explained = {form for entry in ground.pattern.abbreviations for form in entry.forms}
    explained |= {piece for form in explained for piece in form.split("-") if piece}
    used = {lexeme.lower for row in ground.rows for lexeme in row.lexemes}
    wanted = (entry for entry in entries_of(ground.house) if entry.listed)
    return [
        entry
        for entry in wanted
        if {entry.use.lower(), entry.several.lower()} & used
        and not {entry.use.lower(), entry.several.lower()} & explained
    ]


def _added(ground: Ground, entries: list[Listed]) -> Iterator[Edit]:
    lacking = missing(ground, entries)
    last = entries[-1]
    simple = [one for one in entries if one.simple]
    if not lacking or not simple or ground.house.terms not in (None, ground.terms.terms):
        return
    model = simple[-1]
    form = _form_of(ground, model)
    text = ground.source.text
    own_lines = _whole_line(ground, entries[0]) is not None
    between = "\n" if own_lines else text[entries[-2].span.end : last.span.start]
    start = text.rfind("\n", 0, last.span.start) + 1
    lead = text[start : last.span.start] if own_lines else ""
    if not own_lines and not regex.fullmatch(r"\s*[;,.]\s+", between):
        return
    added = "".join(f"{between}{lead}{form.written(entry.use, entry.means)}" for entry in lacking)
    yield Edit(Span(last.span.end, last.span.end), added, RULE, "entries that the list lacks")


def _form_of(ground: Ground, one: Listed) -> EntryForm:
    """The shape in which an entry is printed."""
    text = ground.source.slice(one.span)
    first, second = (one.forms, one.meaning) if one.abbreviation_first else (one.meaning, one.forms)
    between = text[len(first) : len(text) - len(second)] if second else " = "
    if text.endswith(")") and between.strip().startswith("("):
        return EntryForm("(", one.abbreviation_first)
    return EntryForm(between if between.strip() or not regex.fullmatch(r" {2,}", between) else "  ", one.abbreviation_first)
