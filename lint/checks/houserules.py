"""What a house asks for and only a person can put right: forbidden forms, brackets, sections, measures, notes."""

from __future__ import annotations

from collections.abc import Iterator

from lint.checks.context import Context
from lint.checks.house import ground_of
from lint.finding import Finding, Related
from lint.house.explained import STEPS
from lint.reading.facts.measures import Length, read_lengths, read_pairs
from lint.restyle import counts
from lint.restyle.abbreviations import FORBIDDEN, FormTable, runs
from lint.source import Span
from lint.tree import Chain, Group, Repeat, walk

_CALLED = {"a group": "stitches that go into one place"}
_BRACKETS = {"(": "( )", "[": "[ ]", "{": "{ }"}


def check_forbidden(context: Context) -> Iterator[Finding]:
    """abbreviation-forbidden: forms that the house does not print, though nothing says what is meant by them."""
    if context.house is None or not any(entry.never for entry in context.house.abbreviations):
        return
    never = FormTable(context.house).never
    places: dict[str, list[Span]] = {}
    ground = ground_of(context)
    for row in ground.rows:
        for run, printed in runs(ground, row):
            if printed in never:
                places.setdefault(printed, []).append(run[0].span.to(run[-1].span))
    for word, spans in places.items():
        related = tuple(Related(span, "here too") for span in spans[1:])
        yield context.finding_at(FORBIDDEN, spans[0], word=word, use=never[word].use, related=related)


def check_brackets(context: Context) -> Iterator[Finding]:
    """bracket-not-house: brackets of a kind that the house keeps for something else."""
    if context.house is None:
        return
    wanted = context.house.brackets
    found: dict[tuple[str, str], list[Span]] = {}
    mended = [edit.span for edit in counts.edits(ground_of(context))]  # count-not-house tells of those
    for part in context.pattern.parts:
        for row in part.rows:
            for step in walk(row.steps):
                what, allowed = ("a repeat", wanted.repeats) if isinstance(step, Repeat) else ("a group", wanted.groups)
                if isinstance(step, (Repeat, Group)) and allowed is not None:
                    sign = context.source.text[step.span.start]
                    if sign in _BRACKETS and _BRACKETS[sign] not in allowed:
                        found.setdefault((what, sign), []).append(Span(step.span.start, step.span.start + 1))
            if row.stated is not None and wanted.counts is not None:
                at = len(context.source.text[: row.stated.span.start].rstrip()) - 1
                sign = context.source.text[at : at + 1]
                told = any(span.start <= at < span.end for span in mended)
                if sign in _BRACKETS and _BRACKETS[sign] not in wanted.counts and not told:
                    found.setdefault(("a count", sign), []).append(Span(at, at + 1))
    if wanted.marks is not None:
        for row in ground_of(context).rows:
            for lexeme in row.lexemes:
                if lexeme.kind == "star" and lexeme.text not in wanted.marks:
                    found.setdefault(("a repeat mark", lexeme.text), []).append(lexeme.span)
    allowed_for: dict[str, list | None] = {
        "a repeat mark": wanted.marks,
        "a repeat": wanted.repeats,
        "a group": wanted.groups,
        "a count": wanted.counts,
    }
    for (what, sign), spans in found.items():
        related = tuple(Related(span, "here too") for span in spans[1:])
        yield context.finding_at(
            "bracket-not-house",
            spans[0],
            what=_CALLED.get(what, what),
            found=_BRACKETS.get(sign, sign),
            expected=" or ".join(allowed_for[what] or ["none"]),
            related=related,
        )


def check_order(context: Context) -> Iterator[Finding]:
    """section-out-of-order: a section that stands before one that the house puts first."""
    if context.house is None or context.house.sections is None:
        return
    order = {key: place for place, key in enumerate(context.house.sections)}
    first_row = next((row.span.start for part in context.pattern.parts for row in part.rows), None)
    standing = [(section.heading, section.key) for section in context.pattern.sections if section.key in order]
    if first_row is not None and "instructions" in order:
        standing = [one for one in standing if one[1] != "instructions"]
        standing.append((Span(first_row, first_row + 1), "instructions"))
    seen: set[str] = set()
    latest: tuple[Span, str] | None = None
    for span, key in sorted(standing, key=lambda one: one[0].start):
        if key in seen:
            continue
        seen.add(key)
        if latest is not None and order[key] < order[latest[1]]:
            related = (Related(latest[0], f"{latest[1]} stands here"),)
            yield context.finding_at("section-out-of-order", span, what=key, before=latest[1], related=related)
        else:
            latest = (span, key)


def check_measures(context: Context) -> Iterator[Finding]:
    """measure-not-house: which unit comes first, and to what a measure is rounded."""
    if context.house is None:
        return
    units, text = context.house.units, context.source.text
    lengths = read_lengths(text, max(1, len(context.pattern.sizes)))
    if units.first is not None:
        wanted = "in" if units.first == "inches" else "cm"
        wrong = [pair for pair in read_pairs(text, lengths) if pair.first.unit != wanted]
        if wrong:
            related = tuple(Related(pair.first.span, "here too") for pair in wrong[1:])
            what = f"this house gives {units.first} first"
            yield context.finding_at("measure-not-house", wrong[0].first.span, what=what, related=related)
    for unit, name, step in (("in", "inches", units.inches_to), ("cm", "centimetres", units.centimetres_to)):
        spans = [span for length in lengths if step and length.unit == unit for span in _unrounded(length, step)]
        if spans:
            related = tuple(Related(span, "here too") for span in spans[1:])
            what = f"this house rounds {name} to {STEPS[step]}"
            yield context.finding_at("measure-not-house", spans[0], what=what, related=related)


def _unrounded(length: Length, step: float) -> Iterator[Span]:
    for side in length.sides:
        for figure in side:
            if figure.value is not None and abs(figure.value / step - round(figure.value / step)) > 1e-6:
                yield figure.span


def check_note_places(context: Context) -> Iterator[Finding]:
    """turning-chain-note-misplaced: said beside the chain where the house wants a note, or the other way round."""
    if context.house is None or context.house.turning_chain.place is None:
        return
    beside = [
        step.counting.span
        for part in context.pattern.parts
        for row in part.rows
        for step in walk(row.steps)
        if isinstance(step, Chain) and step.counting is not None
    ]
    in_notes = [counting.span for _, counting in context.pattern.countings]
    wrong = in_notes if context.house.turning_chain.place == "beside the chain" else beside
    if wrong and not (wrong is in_notes and beside):
        related = tuple(Related(span, "here too") for span in wrong[1:])
        place = context.house.turning_chain.place
        yield context.finding_at("turning-chain-note-misplaced", wrong[0], expected=place, related=related)
