"""Printed counts in the house's form: "(12 sts)", "— 12 sts", "; 12 sts"; a bare number gets its "sts"."""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.expression import expression
from lint.house.samples import CountForm, count_form
from lint.pattern import Row, Stated
from lint.restyle.edits import Edit
from lint.restyle.ground import Ground
from lint.source import Span

RULE = "count-not-house"
_PAIRS = {"(": ")", "[": "]", "{": "}"}
_LEAD = expression(r"[ \t\n]*(?:[—–:;=→|•●]|(?<=\s)-|[—–-]+)[ \t]*\Z")

_SENTENCE = expression(r"(?<=\w[.])[ \t]+\Z")
# "Stitch count: 12 dc", "sts: 12": a sentence
_TOLD = expression(r"(?i)\b(?:counts?|totals?|have|made|now|(?:sts|stitches)(?=\s*[:=]))\s*[^\w\s]*\s*\Z")


def edits(ground: Ground) -> Iterator[Edit]:
    """Every count whose signs the house writes otherwise."""
    if ground.house.counts.form is None:
        return
    form = count_form(ground.house.counts.form)
    for part in ground.pattern.parts:
        for row in part.rows:
            if row.label is not None and row.stated is not None and not row.unread():
                edit = _edit(ground, row, row.stated, form)
                if edit is not None:
                    yield edit


def _edit(ground: Ground, row: Row, stated: Stated, form: CountForm) -> Edit | None:
    text = ground.source.text
    start, end = stated.span.start, stated.span.end
    before = len(text[:start].rstrip())
    behind = end + len(text[end:]) - len(text[end:].lstrip())
    opening = text[before - 1 : before]
    if opening in _PAIRS:
        close = text.find(_PAIRS[opening], end)
        if close < 0 or close != behind and text[end:close].strip(" ."):
            return None
        inner, start, end = text[before:close].strip().rstrip("."), before - 1, close + 1
        lead = _lead(ground, row, start)
        start = lead.start() if lead is not None else start
    else:
        stops = False
        lead = _LEAD.search(text, row.span.start, start)
        if lead is None:
            lead = _SENTENCE.search(text, row.span.start, start)  # "… around. 47 sc."
            stops = lead is not None and text[end : end + 1] == "."
        if lead is None or "\n" in lead[0] or not _closes(text, end) or _TOLD.search(text, row.span.start, lead.end()):
            return None
        inner, start = text[start:end].strip(), lead.start()
        if inner.endswith("."):
            inner, end = inner[:-1], end - 1
        end += stops
    if "\n" in inner:
        return None
    inner = _with_unit(inner, stated, form)
    kept = text[:start].rstrip(" \t")
    start = len(kept)
    sign = form.opening
    if sign[0] in ";:=":
        if kept.endswith((".", ";", ",")) and not kept.endswith(("..", "sts.", "st.")):
            start -= 1
        new = f"{'' if sign[0] in ';:' else ' '}{sign}{inner}"
    else:
        new = f" {sign}{inner}{form.closing.rstrip('.')}"
    if form.closing.endswith(".") and text[end : end + 1] != ".":
        new += "."
    return Edit(Span(start, end), new, RULE, "printed counts")


def _with_unit(inner: str, stated: Stated, form: CountForm) -> str:
    """A bare number with its "sts", or without, as the house's sample shows it; counts of kinds keep their words."""
    if len(stated.items) != 1 or stated.items[0].unit != "stitches":
        return inner
    bare = expression(r"(\d[\d\s()\[\]{},:;/-]*?)(\s?(?:sts?|stitch(?:es)?)\.?)?").fullmatch(inner)
    if bare is None or bool(bare[2]) == form.unit:
        return inner
    return f"{bare[1]} {'st' if bare[1] == '1' else 'sts'}" if form.unit else bare[1]


def _lead(ground: Ground, row: Row, start: int) -> regex.Match | None:
    """The sign before a count; not the one that closes the row's label."""
    text = ground.source.text
    begin = row.label.span.end if row.label is not None else row.span.start
    lead = _LEAD.search(text, begin, start)
    if lead is None or "\n" in lead[0] or not expression(r"\w").search(text[begin : lead.start()]):
        return None
    return lead


def _closes(text: str, end: int) -> bool:
    """Whether a count without brackets is the last of its sentence, so that brackets can close behind it."""
    return expression(r"[ \t]*(?:\.|\n|\Z)").match(text, pos=end) is not None
