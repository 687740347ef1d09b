"""Row labels in order, yarn joined before it is worked with, sections present."""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.checks.context import Context
from lint.finding import Finding, Related
from lint.pattern import Label, Part, Row
from lint.source import Span
from lint.tree import (
    MAKES_STITCHES,
    Chain,
    FastenOff,
    Group,
    JoinYarn,
    MakeRing,
    OpenWork,
    RowCall,
    UseYarn,
    Work,
    walk,
)


def check_order(context: Context) -> Iterator[Finding]:
    """row-number-out-of-order: a number left out, doubled or slipped; numbers may start again at 1."""
    for part in context.pattern.parts:
        for run in _runs(part.rows):
            yield from _order(context, part, run)


def _runs(rows: tuple[Row, ...]) -> Iterator[list[Label]]:
    """The labels that should number on from each other: rows called for and numbers that differ by size part them."""
    run: list[Label] = []
    for row in rows:
        label = row.label
        parts = label is None and any(isinstance(step, RowCall) for step in row.steps)
        if label is not None and label.numbers:
            by_size = regex.search(r"\d\s*[(\[]|/\d", label.words) is not None
            gaps = label.numbers != tuple(range(label.numbers[0], label.numbers[0] + len(label.numbers)))
            parts = by_size or gaps  # "Rows 2, 4 and 6": the others come after
            if not parts:
                run.append(label)
        if parts:
            yield run
            run = []
    yield run


def _order(context: Context, part: Part, run: list[Label]) -> Iterator[Finding]:
    """One finding for each number that is off; one that slipped by itself does not move those after it."""
    last: tuple[int, Label] | None = None
    for label, coming in zip(run, (*run[1:], None), strict=False):
        first, count = label.numbers[0], len(label.numbers)
        goes_on = last[0] + 1 if last is not None else 1
        if first == goes_on or first == 1 and last is not None and not _follows(goes_on, count, coming):
            last = (label.numbers[-1], label)
            continue
        alone = _follows(goes_on, count, coming)  # the next label numbers on as if this one were right
        if last is None and not (alone and first > 1):
            last = (label.numbers[-1], label)
            continue
        if len(context.pattern.sizes) > 1 and first > goes_on and not alone:
            last = (label.numbers[-1], label)
            continue
        word = "row" if label.kind == "row" else "round"
        left_out = first > goes_on and not alone
        yield context.finding(
            "row-number-out-of-order",
            label.span,
            part.name,
            label.words,
            before=last[1].words if last is not None else "the start of the piece",
            guess=f" Is a {word} {goes_on} left out?" if left_out else f" Should it be {goes_on}?",
            expected=goes_on,
            found=first,
            related=(Related(last[1].span, "the row before"),) if last is not None else (),
        )
        last = (label.numbers[-1] if left_out else goes_on - 1 + count, label)


def _follows(number: int, count: int, coming: Label | None) -> bool:
    """Whether the next label goes on from rows that begin with this number."""
    return coming is not None and coming.numbers[0] == number + count


def check_yarn(context: Context) -> Iterator[Finding]:
    """yarn-not-joined: work that goes on after fastening off, with no yarn joined."""
    # a colour in the label joins its yarn, unless this pattern says "Join B" behind such labels
    label_joins = not any(
        row.label is not None and row.label.colour and any(isinstance(step, JoinYarn) for step in walk(row.steps))
        for part in context.pattern.parts
        for row in part.rows
    )
    for part in context.pattern.parts:
        attached: bool | None = None  # not known at the start of a piece
        off: Span | None = None
        colour: str | None = None
        for row in part.rows:
            if (
                label_joins
                and row.label is not None
                and row.label.colour
                and colour is not None
                and row.label.colour.lower() != colour.lower()
            ):
                attached = True
            for step in row.steps:
                if isinstance(step, FastenOff):
                    if step.colour and colour and step.colour.lower() != colour.lower():
                        continue
                    attached, off = False, step.span
                elif isinstance(step, (JoinYarn, UseYarn)):
                    attached, colour = True, step.colour or colour
                elif isinstance(step, MakeRing):
                    attached = True
                elif isinstance(step, OpenWork):
                    attached = None  # "Work the second sleeve in the same way": its own join is meant
                elif isinstance(step, (Chain, RowCall, *MAKES_STITCHES)) and attached is False:
                    if row.label is not None and not _own_start(step, row):
                        if not any(isinstance(s, (JoinYarn, UseYarn)) for s in walk(row.steps)):
                            yield context.finding(
                                "yarn-not-joined",
                                step.span,
                                part.name,
                                row.label.words,
                                related=(Related(off, "fastened off here"),),
                            )
                    attached = True


def _own_start(step, row) -> bool:
    """A row that begins on a chain of its own, or "6 sc in magic ring", starts with new yarn."""
    if isinstance(step, Chain):
        return any(
            isinstance(s, (Work, Group)) and s.places and s.places[0].which.value == "from hook"
            for s in walk(row.steps)
        )
    places = step.places if isinstance(step, (Work, Group)) else ()
    return bool(places) and places[0].targets[0].kind.value == "ring"


def check_sections(context: Context) -> Iterator[Finding]:
    """section-missing: what every pattern has to give, known by heading or content."""
    text = context.source.text
    span = context.pattern.title_span or Span(0, min(len(text), max(1, text.find("\n"))) if text else 0)
    keys = {section.key for section in context.pattern.sections if context.source.slice(section.span).strip(" :\n")}
    if not context.ledger.rows:
        yield context.finding(
            "section-missing", span, what="any instructions that could be found (rows or rounds with labels)"
        )
    for section in context.book.sections.required:
        if section.key == "title":
            given = bool(context.pattern.title)
        else:
            given = any(key in keys for key in section.headings) or any(
                regex.search(pattern, text) for pattern in section.known_by
            )
        if not given:
            yield context.finding("section-missing", span, what=section.name)
