"""Colour letters declared and used, markers placed and used, abbreviations explained twice."""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.checks.context import Context
from lint.expression import Expression, expression
from lint.finding import Finding, Related
from lint.madeonce import made_once
from lint.pattern import Abbreviation, Part, Row
from lint.reading.facts.declared import (
    colour_letters,
    is_colour_letter,
    letter_used,
    letters_taken,
    marker_used_before_placed,
)
from lint.remembered import remembered
from lint.rulebook import AbbreviationFile, WordFile
from lint.source import Span
from lint.tree import FastenOff, JoinYarn, UseYarn, walk

_SEE = expression(r"(?i)\b(?:see|defined|explained|described|instructions?)\b|\b(?:below|above)\b")
_CHANGE = expression(r"(?i:\b(?:to|with|join))\s+(?i:colou?r\s+)?(MC|CC\d?|[B-H])\b")


def _front(context: Context) -> Span:
    """The text before the first row."""
    rows = [row.span.start for part in context.pattern.parts for row in part.rows]
    return Span(0, min(rows, default=0))


def _used(context: Context) -> Iterator[tuple[str, Span, Part, Row]]:
    """Every colour letter that a row works with, by its steps or by its words."""
    for taken in letters_taken(context.source.text, _front(context).end):
        part, row = context.place(taken.span)
        if part is not None and row is not None:
            yield taken.letter, taken.span, part, row
    for part in context.pattern.parts:
        for row in part.rows:
            if row.label is not None and is_colour_letter(row.label.colour):
                yield row.label.colour or "", row.label.span, part, row
            for step in walk(row.steps):
                if not isinstance(step, (JoinYarn, UseYarn, FastenOff)):
                    continue
                if is_colour_letter(step.colour):
                    yield step.colour or "", step.span, part, row
                elif step.colour is None and (named := _CHANGE.search(context.source.slice(step.span))):
                    yield named[1], step.span, part, row


def check_colours(context: Context) -> Iterator[Finding]:
    """colour-not-declared, colour-not-used: only in patterns that declare two colours or more by letters."""
    text, front = context.source.text, _front(context)
    declared = {one.letter: one for one in colour_letters(text, front)}
    if len(declared) < 2:
        return
    places: dict[str, list[tuple[Span, Part, Row]]] = {}
    for letter, span, part, row in _used(context):
        places.setdefault(letter, []).append((span, part, row))
    if not places:
        return
    unknown = {
        letter: found
        for letter, found in places.items()
        if letter not in declared and not letter_used(text[front.start : front.end], letter, ())
    }
    materials = tuple(
        section.span for section in context.pattern.sections if section.key in ("materials", "abbreviations", "gauge")
    )
    unused = [
        one
        for one in declared.values()
        if one.letter not in places and not letter_used(text, one.letter, (*materials, _line(text, one.span)))
    ]
    for letter, found in unknown.items():
        span, part, row = found[0]
        yield context.finding(
            "colour-not-declared",
            span,
            part.name,
            row.label.words if row.label is not None else None,
            letter=letter,
            declared=", ".join(declared),
            related=tuple(Related(other, "here too") for other, _, _ in found[1:10]),
        )
    if len(unknown) == len(unused) == 1:
        return  # one letter written for the other
    for one in unused:
        yield context.finding("colour-not-used", one.span, letter=one.letter)


def _line(text: str, span: Span) -> Span:
    end = text.find("\n", span.start)
    return Span(text.rfind("\n", 0, span.start) + 1, end if end >= 0 else len(text))


def check_markers(context: Context) -> Iterator[Finding]:
    """marker-not-placed: a marker that is removed or worked to, and was put nowhere before."""
    span = marker_used_before_placed(context.source.text, _front(context).end)
    if span is None:
        return
    for part in context.pattern.parts:
        for row in part.rows:
            if row.span.start <= span.start < row.span.end:
                label = row.label.words if row.label is not None else None
                words = " ".join(context.source.slice(span).split())
                yield context.finding("marker-not-placed", span, part.name, label, words=words)
                return


def check_twice(context: Context) -> Iterator[Finding]:
    """abbreviation-twice: one abbreviation with two meanings in the list."""
    lists = [section.span for section in context.pattern.sections if section.key == "abbreviations"]
    first: dict[str, Abbreviation] = {}
    standard = _standard(context.book.abbreviations[context.terms.terms])
    movements = _movements(context.book.words)
    for entry in context.pattern.abbreviations:
        if not entry.forms or not any(span.start <= entry.span.start < span.end for span in lists):
            continue
        form = entry.forms[0]
        before = first.setdefault(form, entry)
        if any(_SEE.search(one.meaning) for one in (before, entry)):
            continue  # "bobble (see below)": the other entry is the explanation
        one, other = _plain(before.meaning), _plain(entry.meaning)
        if before.meaning.strip(" .").lower() in entry.forms or entry.meaning.strip(" .").lower() in before.forms:
            continue  # "SH = shell" in the list, "Shell (SH): 5 dc in st" below it: a name and its making
        makings = [_tells_making(one.meaning, movements) for one in (before, entry)]
        if makings[0] != makings[1]:  # "PS = puff stitch" and "PS: (yo, insert hook …)": so are these
            first[form] = entry if makings[1] else before
            continue
        other_stitches = standard.get(_key(before.meaning)) and standard.get(_key(entry.meaning))
        other_stitches = other_stitches and _key(before.meaning) != _key(entry.meaning)  # "treble" and "triple treble"
        if before is entry or not one or not other or not other_stitches and (one <= other or other <= one):
            continue
        yield context.finding(
            "abbreviation-twice",
            entry.span,
            word=form,
            one=" ".join(before.meaning.split())[:60],
            other=" ".join(entry.meaning.split())[:60],
            related=(Related(before.span, "explained here first"),),
        )


@made_once
def _standard(listed: AbbreviationFile) -> dict[str, str]:
    """The abbreviation that stands for each meaning in the trade."""
    return {_key(rule.meaning): rule.abbr for rule in listed.abbreviations}


@made_once
def _movements(words: WordFile) -> Expression:
    """Finds any movement of the hand."""
    return expression(rf"\W(?:{'|'.join(map(regex.escape, words.hand_movements)) or '(?!)'})\W")


def _tells_making(meaning: str, movements: Expression) -> bool:
    """Whether a meaning tells how a stitch is made, and not only what it is called."""
    lower = f" {meaning.lower()} "
    return expression(r"\d").search(lower) is not None or movements.search(lower) is not None


def _key(meaning: str) -> str:
    return " ".join(meaning.lower().split()).removesuffix(" crochet").strip(" .")


@remembered()
def _plain(meaning: str) -> frozenset[str]:
    """The words of a meaning, without what only varies: plurals, brackets."""
    words = expression(r"[a-z\d]+").findall(meaning.lower())
    return frozenset(word.rstrip("s") for word in words if word not in ("s", "es", "or"))
