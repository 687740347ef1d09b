"""The pattern's own abbreviation list: its forms, the shape of its entries, what is used and missing in it, its order.

The designer's own meanings stay as they are; only an entry that is added gets the house's.
"""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.expression import expression
from lint.house.model import HouseAbbreviation
from lint.house.samples import EntryForm, entry_form
from lint.restyle import abbreviations, labels
from lint.restyle.abbreviations import FormTable, entries_of
from lint.restyle.edits import Edit, Kept
from lint.restyle.entries import Listed, listed
from lint.restyle.ground import Ground
from lint.source import Span

RULE = "abbreviation-list-not-house"
_NOUNS = ("round", "row", "space", "any_stitch", "loop")
LACKING = "entries that the list lacks"
ORDER = "order of the list"


def edits(ground: Ground) -> Iterator[Edit]:
    """What the house changes in the list; the forms first, then their shape, what is missing, and the order."""
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
        moved = [edit for edit in _order(ground, entries) if ground.source.slice(edit.span) != edit.new]
        yield from moved
        if moved:
            return
    yield from _added(ground, entries)


def _written(form: EntryForm, one: Listed) -> str:
    return form.written(one.shown, one.meaning)


def _forms(ground: Ground, entries: list[Listed]) -> Iterator[Edit]:
    """Forms of the list that the house replaces; an entry whose form needs no explaining goes, with its line."""
    table = FormTable(ground.house)
    present = {form for one in entries for form in _each(one.forms)}
    printed: _Printed | None = None  # it is asked for seldom
    for one in entries:
        for form in _each(expression(r"\((?:s|es)\)").sub("", one.forms)):  # "St(s)"
            found = table.replacement(form)
            if found is None or _kind(ground, form) != _kind(ground, found.new):
                continue
            printed = printed or _Printed(ground)
            if form.lower() != found.new.lower() and printed.places(form):
                continue
            at = ground.source.text.find(form, one.span.start, one.span.end)
            if not found.entry.listed or found.new in present:
                gone = _with_its_sign(ground, entries, one)
                if gone is not None and len(_each(one.forms)) == 1:
                    yield Edit(gone, "", RULE, found.entry.use)
            elif at >= 0:
                yield Edit(Span(at, at + len(form)), found.new, RULE, found.entry.use)
                present.add(found.new)


def _each(forms: str) -> list[str]:
    return [piece.strip() for piece in expression(r",|/").split(forms) if piece.strip()]


def _kind(ground: Ground, form: str) -> str:
    lexemes = ground.lexicon.read(form)
    return lexemes[0].kind if len(lexemes) == 1 else ""


class _Printed:
    """Where a text prints forms that stay: in prose and in rows that are not understood, which keep their words."""

    def __init__(self, ground: Ground) -> None:
        self._text = ground.source.text
        self._aside = [section.span for section in ground.pattern.sections if section.key == "abbreviations"]
        self._aside += [edit.span for edit in (*abbreviations.edits(ground), *labels.edits(ground))]

    def places(self, form: str) -> list[int]:
        """Where a form, or more than one of it, will still stand when the rows are in the house's form."""
        first = f"[{form[0].upper()}{form[0].lower()}]" if form[0].isalpha() else regex.escape(form[0])
        printed = expression(rf"(?<![\w-]){first}{regex.escape(form[1:])}(?:e?s)?(?![\w-])", own_words=True)
        places = (match.start() for match in printed.finditer(self._text))
        return [at for at in places if not any(span.start <= at < span.end for span in self._aside)]


def kept(ground: Ground) -> Iterator[Kept]:
    """Entries whose form the house replaces and that stay, for the text still uses them; with the first place."""
    table = FormTable(ground.house)
    printed = _Printed(ground)
    for one in listed(ground):
        for form in _each(expression(r"\((?:s|es)\)").sub("", one.forms)):
            found = table.replacement(form)
            if found is None or form.lower() == found.new.lower():
                continue
            if places := printed.places(form):
                span = Span(places[0], places[0] + len(form))
                yield Kept(span, f"“{form}” is still printed here, so it stays in the list beside “{found.new}”")


def _with_its_sign(ground: Ground, entries: list[Listed], one: Listed) -> Span | None:
    """An entry that goes, with its line, or with the sign between it and a neighbour."""
    line = _whole_line(ground, one)
    index = entries.index(one)
    if line is not None or len(entries) < 3:
        return line
    text = ground.source.text
    spans = []
    if index:
        spans.append((Span(entries[index - 1].span.end, one.span.end), entries[index - 1].span.end, one.span.start))
    if index + 1 < len(entries):
        behind = entries[index + 1].span.start
        spans.append((Span(one.span.start, behind), one.span.end, behind))
    spans.sort(key=lambda found: "\n" in text[found[1] : found[2]])  # lines stay where they are broken
    return next((gone for gone, start, end in spans if expression(r"\s*[;,.]\s+").fullmatch(text[start:end])), None)


def _whole_line(ground: Ground, one: Listed) -> Span | None:
    text = ground.source.text
    start = text.rfind("\n", 0, one.span.start) + 1
    end = text.find("\n", one.span.end)
    alone = not text[start : one.span.start].strip(" \t•*-") and not text[one.span.end : end].strip(" \t.")
    return Span(start, end + 1) if alone and end >= 0 else None


def _key(one: Listed) -> str:
    """What an entry is put in order by: the side that stands first."""
    return (one.forms if one.abbreviation_first else one.meaning).casefold()


def _is_ordered(entries: list[Listed]) -> bool:
    return all(_key(one) <= _key(other) for one, other in zip(entries, entries[1:], strict=False))


def _order(ground: Ground, entries: list[Listed]) -> Iterator[Edit]:
    """Entries of each block put in the order of the alphabet, each in the place of another."""
    for block in {one.block for one in entries}:
        places = [one for one in entries if one.block == block]
        if not all(one.simple for one in places):
            continue
        for place, one in zip(places, sorted(places, key=_key), strict=True):
            if one is not place:
                yield Edit(place.span, ground.source.slice(one.span), RULE, ORDER)


def missing(ground: Ground) -> list[HouseAbbreviation]:
    """Abbreviations of the house that rows use and that the list lacks, though the house wants them explained."""
    if ground.house.terms not in (None, ground.terms.terms):
        return []
    explained = {form for entry in ground.pattern.abbreviations for form in entry.forms}
    explained |= {piece for form in explained for piece in form.split("-") if piece}
    used = {
        lexeme.lower for row in ground.rows for lexeme in row.lexemes if lexeme.kind != "together" or not lexeme.glued
    }
    labels = (row.row.label.words.lower() for row in ground.rows if row.row.label is not None)
    used |= {word for label in labels for word in expression(r"(?<![\d\p{L}])\p{L}+").findall(label)}
    wanted = (entry for entry in entries_of(ground.house) if entry.listed)
    return [
        entry
        for entry in wanted
        if {entry.use.lower(), entry.several.lower()} & used
        and not {entry.use.lower(), entry.several.lower()} & explained
    ]


def _added(ground: Ground, entries: list[Listed]) -> Iterator[Edit]:
    """Entries that the list lacks, each at its place in the alphabet where the list is in that order, else at the end."""
    lacking = missing(ground)
    simple = [one for one in entries if one.simple]
    simple = [one for one in simple if one.block == simple[-1].block]
    if not lacking or len(simple) < 2:
        return
    form = _form_of(ground, simple[-1])
    ordered = ground.house.abbreviation_list.order == "alphabetical" and _is_ordered(simple)
    nouns = [one for one in simple if _kind(ground, expression(r"\(.*").sub("", one.forms)) in _NOUNS]
    both = 2 * sum(one.forms.endswith("(s)") for one in nouns) > len(nouns)  # "st(s) = stitch(es)"
    places: dict[int, list[tuple[str, str]]] = {}
    for entry in lacking:
        forms, meaning = _singular_or_plural(ground, entry) if both else (entry.use, entry.means)
        key = (forms if simple[-1].abbreviation_first else meaning).casefold()
        at = sum(_key(one) <= key for one in simple) if ordered else len(simple)
        shown = f"{simple[-1].bold}{forms}{simple[-1].bold}"
        places.setdefault(at, []).append((key, form.written(shown, meaning)))
    for at, found in sorted(places.items()):
        yield from _put_in(ground, simple, at, [words for _, words in (sorted(found) if ordered else found)])


def _put_in(ground: Ground, simple: list[Listed], at: int, words: list[str]) -> Iterator[Edit]:
    """Entries put in before the one numbered `at`: as lines, or into the line that has room, with the list's own sign."""
    text = ground.source.text
    before, behind = (simple[at - 1] if at else None), (simple[at] if at < len(simple) else None)
    if _whole_line(ground, simple[0]) is not None:
        neighbour = before or behind
        start = text.rfind("\n", 0, neighbour.span.start) + 1
        lead = text[start : neighbour.span.start]
        if before is None:
            yield Edit(Span(start, start), "".join(f"{lead}{one}\n" for one in words), RULE, LACKING)
        else:
            yield Edit(
                Span(before.span.end, before.span.end), "".join(f"\n{lead}{one}" for one in words), RULE, LACKING
            )
        return
    between = text[simple[-2].span.end : simple[-1].span.start]
    if not expression(r"\s*[;,.]\s+").fullmatch(between):
        return
    sign = between.strip() + " "
    added = sign.join(words)
    if before is not None and (behind is None or _has_room(text, simple, before, behind, sign + added)):
        yield Edit(Span(before.span.end, before.span.end), sign + added, RULE, LACKING)
    elif behind is not None:
        yield Edit(Span(behind.span.start, behind.span.start), added + sign, RULE, LACKING)


def _has_room(text: str, simple: list[Listed], before: Listed, behind: Listed, added: str) -> bool:
    """Whether words go behind an entry in its line; where a line ends there, only as far as the list's longest line goes."""
    if "\n" not in text[before.span.end : behind.span.start]:
        return True
    longest = max(_line_length(text, one.span.start) for one in simple)
    return _line_length(text, before.span.start) + len(added) <= longest


def _line_length(text: str, at: int) -> int:
    end = text.find("\n", at)
    return (len(text) if end < 0 else end) - text.rfind("\n", 0, at) - 1


def _singular_or_plural(ground: Ground, entry: HouseAbbreviation) -> tuple[str, str]:
    """An entry for one and more where there can be more: "rnd(s)", "round(s)"."""
    if _kind(ground, entry.use) not in _NOUNS or entry.several != entry.use + "s":
        return entry.use, entry.means
    return f"{entry.use}(s)", entry.means + ("(es)" if entry.means.endswith("ch") else "(s)")


def _form_of(ground: Ground, one: Listed) -> EntryForm:
    """The shape in which an entry is printed."""
    text = ground.source.slice(one.span)
    first, second = (one.shown, one.meaning) if one.abbreviation_first else (one.meaning, one.shown)
    between = text[len(first) : len(text) - len(second)] if second else " = "
    if text.endswith(")") and between.strip().startswith("("):
        return EntryForm("(", one.abbreviation_first)
    return EntryForm(between or " = ", one.abbreviation_first)
