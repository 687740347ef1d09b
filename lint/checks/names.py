"""What things are called: abbreviations against their standard meaning, stitches by another name, forms that are mixed."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

import regex

from lint.checks.context import Context
from lint.expression import Expression, expression
from lint.finding import Finding, Related
from lint.madeonce import made_once
from lint.remembered import remembered
from lint.restyle.abbreviations import FormTable
from lint.rulebook import AbbreviationFile
from lint.source import Span
from lint.tree import Work, walk

_MOST_PLACES = 20
_ONE_STITCH = frozenset(("popcorn", "bobble", "cluster", "puff"))
_STITCH_WORDS = frozenset("single double half treble slip stitch chain crochet".split())


# against the standard meaning ------------------------------------------------------------------------------------


def check_standard(context: Context) -> Iterator[Finding]:
    """abbreviation-not-standard: "sc = slip stitch"; the pattern's own meaning is another abbreviation's standard one."""
    standard, stitches = _usual(context.book.abbreviations[context.terms.terms])
    for entry in context.pattern.abbreviations:
        own = _plain(expression(r"[(\[,;/]|\b(?:or|uk|us)\b", regex.IGNORECASE).split(entry.meaning, maxsplit=1)[0])
        for form in entry.forms:
            usual = standard.get(form.lower())
            if usual is None or own == usual or not _is_stitch(usual):
                continue
            if own not in stitches and not _garbled(own, usual):
                continue
            yield context.finding(
                "abbreviation-not-standard",
                entry.span,
                word=form,
                meaning=" ".join(entry.meaning.split())[:60],
                usual=usual,
                known=f", which is mostly {stitches[own]}" if own in stitches else "",
            )
            break


@made_once
def _usual(listed: AbbreviationFile) -> tuple[dict[str, str], dict[str, str]]:
    """What each form stands for in the trade, and which abbreviation each stitch has."""
    rules = listed.abbreviations
    standard = {form.lower(): _plain(rule.meaning) for rule in rules for form in rule.forms}
    return standard, {_plain(rule.meaning): rule.abbr for rule in rules if _is_stitch(rule.meaning)}


def _garbled(own: str, usual: str) -> bool:
    """Whether a meaning is put together of stitches' words, but is neither shorter nor longer for the usual one."""
    words, others = (set(meaning.replace("triple", "treble").split()) for meaning in (own, usual))
    return words <= _STITCH_WORDS and len(words) > 1 and not words <= others and not others <= words


_WORD = expression(r"[a-z\d]+")
_OF_STITCH = expression(r"(?i)\b(?:crochet|treble|stitch)\b")


@remembered()
def _plain(meaning: str) -> str:
    return " ".join(_WORD.findall(meaning.lower().replace("(s)", "").replace("(es)", "")))


def _is_stitch(meaning: str) -> bool:
    return _OF_STITCH.search(meaning) is not None and meaning.lower() != "stitch"


# stitches by another name ----------------------------------------------------------------------------------------


def misnamed(context: Context) -> dict[str, tuple[Span, str, Span, str, str]]:
    """By the name used, where a stitch is worked that is nowhere defined while a defined one is never worked.

    Each: the words' span, the defined name, its definition's span, and the part and row.
    """
    worked: set[str] = set()
    lacking: dict[str, tuple[Span, str, str]] = {}
    known: dict[str, tuple[Span, str, str]] = {}  # popcorns and the like, which count as one stitch whoever makes them
    for part in context.pattern.parts:
        for row in part.rows:
            for step in walk(row.steps):
                if isinstance(step, Work) and step.special is not None:
                    worked.add(step.special.plain_name.lower())
                elif isinstance(step, Work) and step.undefined:
                    label = row.label.words if row.label is not None else ""
                    lacking.setdefault(step.stitch, (step.span, part.name, label))
                elif isinstance(step, Work) and step.stitch in _ONE_STITCH:
                    label = row.label.words if row.label is not None else ""
                    known.setdefault(step.stitch, (step.span, part.name, label))
    unused = [one for one in context.pattern.specials if one.plain_name.lower() not in worked and not one.beginning]
    if len(unused) == 1 and unused[0].plain_name.lower() in _ONE_STITCH:
        lacking = lacking or known
    if len(lacking) != 1 or len(unused) != 1:
        return {}
    (name, (span, part, row)) = next(iter(lacking.items()))
    return {name: (span, unused[0].name, unused[0].span, part, row)}


def check_special_names(context: Context) -> Iterator[Finding]:
    """special-stitch-name: "shell" in the rows, and only "fan" among the special stitches."""
    for name, (span, defined, place, part, row) in misnamed(context).items():
        related = (Related(place, "explained here"),)
        yield context.finding("special-stitch-name", span, part, row, word=name, defined=defined, related=related)


# one thing in two forms ------------------------------------------------------------------------------------------


def check_forms(context: Context) -> Iterator[Finding]:
    """forms-mixed: "rnd" here and "round" there; one finding for each thing, at the first of the rarer form's places."""
    rows = _words_of_rows(context)
    own_terms = context.house is not None and context.house.terms in (None, context.terms.terms)
    table = FormTable(context.house) if own_terms and context.house is not None else None
    for thing in context.book.forms.forms:
        places = [_places(rows, forms, thing.before_number) for forms in thing.same]
        used = sorted((found for found in places if found), key=len)
        if len(used) < 2:
            continue
        rare, usual = used[0], used[-1]
        text = context.source.text
        several = text[rare[0].start : rare[0].end].lower().endswith("s")
        shown = next((span for span in usual if text[span.start : span.end].lower().endswith("s") == several), usual[0])
        word, other = (text[span.start : span.end].lower() for span in (rare[0], shown))
        if table is not None and (table.replacement(word) or table.replacement(other)):
            continue  # abbreviation-not-house says which of them the house prints
        yield context.finding_at(
            "forms-mixed",
            rare[0],
            word=word,
            times=_times(len(rare)),
            other=other,
            others=_times(len(usual)),
            related=tuple(Related(span, "here too") for span in rare[1:_MOST_PLACES]),
        )


def _times(number: int) -> str:
    return {1: "once", 2: "twice"}.get(number, f"{number} times")


_NOTE = expression(r"\([^()]*\bcounts?\b[^()]*\)")


def _words_of_rows(context: Context) -> list[tuple[int, str]]:
    """Where each labelled row begins, and its words with notes in brackets blotted out."""
    return [
        (row.span.start, _NOTE.sub(lambda match: " " * len(match[0]), context.source.slice(row.span)))
        for part in context.pattern.parts
        for row in part.rows
        if row.label is not None
    ]


@lru_cache(maxsize=64)
def _where(forms: tuple[str, ...], before_number: bool) -> Expression:
    """Finds any of the forms."""
    listed = "|".join(regex.escape(form) for form in forms)
    ahead = r"(?=\s*\d)" if before_number else ""
    return expression(rf"(?i)(?<![\p{{L}}-])(?:{listed})(?![\p{{L}}-]){ahead}")


def _places(rows: list[tuple[int, str]], forms: list[str], before_number: bool) -> list[Span]:
    """Where a form stands in the rows: their labels, and their words outside brackets, which hold notes and counts."""
    pattern = _where(tuple(forms), before_number)
    return [
        Span(start + match.start(), start + match.end()) for start, words in rows for match in pattern.finditer(words)
    ]
