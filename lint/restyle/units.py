"""Units as the house spells them, behind a number and outside the rows, where "in" could be a place."""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.expression import expression
from lint.restyle.edits import Edit
from lint.restyle.ground import Ground
from lint.source import Span

RULE = "unit-not-house"
FORMS = {
    "inches": ("in", "in.", "ins", "ins.", "inch", "inches", '"', "”", "″"),
    "centimetres": ("cm", "cms", "centimetres", "centimeters", "centimetre", "centimeter"),
    "yards": ("yd", "yds", "yard", "yards"),
    "metres": ("m", "metres", "meters", "metre", "meter"),
}
_FRACTIONS = "½¼¾⅓⅔⅛⅜⅝⅞"
# a measure ends here: what follows no longer says into what a stitch goes
_ENDS = r"(?=\s*(?:[(\[/,;:=)\].x×]|$|by\b|wide|long|high|tall|deep|square|across|around|in (?:diameter|width|length)|from|for|and|or|over|to\b|of\b))"


def edits(ground: Ground) -> Iterator[Edit]:
    """Every unit that the house spells otherwise."""
    units = ground.house.units
    wanted = {name: getattr(units, name) for name in FORMS if getattr(units, name) is not None}
    if not wanted:
        return
    rows = [row.span for part in ground.pattern.parts for row in part.rows]
    for name, form in wanted.items():
        for span in _printed(ground.source.text, name):
            if not any(row.start <= span.start < row.end for row in rows):
                printed = ground.source.slice(span)
                glued = printed in ('"', "”", "″")
                new = _spelled(ground.source.text, span, form, printed)
                if glued and form != '"' and ground.source.text[span.start - 1] != " ":
                    new = " " + new
                if form == '"' and not glued and ground.source.text[span.start - 1] == " ":
                    span = Span(span.start - 1, span.end)
                yield Edit(span, new, RULE, name)


def _printed(text: str, name: str) -> Iterator[Span]:
    forms = "|".join(regex.escape(form) for form in sorted(FORMS[name], key=len, reverse=True))
    short = "|".join(form for form in FORMS[name] if form.isalpha() and len(form) < 4)
    dotted = rf"(?i:{short})\.(?=\s+[\p{{Ll}}(\[])"  # "leaving 8 in. open": the stop is the unit's
    for match in expression(
        rf"(?m)(?<=[\d{_FRACTIONS}]\s?|\d[)\]]\s?)({dotted}|(?i:(?:{forms})(?![\w-]){_ENDS}))"
    ).finditer(text):
        if match[1] in ('"', "”") and expression(r'(?:^|[\s(])["“](?=\p{L})').search(_line_around(text, match.start())):
            continue  # quotation marks stand in this line
        yield Span(*match.span(1))


def _line_around(text: str, at: int) -> str:
    start = text.rfind("\n", 0, at) + 1
    end = text.find("\n", at)
    return text[start : len(text) if end < 0 else end]


def _spelled(text: str, span: Span, form: str, printed: str) -> str:
    """The house's form; a word in full follows its number: "1 inch", "2 inches"."""
    one = expression(r"(?<![\d.,/])1\s?$").search(text[max(0, span.start - 3) : span.start]) is not None
    if form in ("inches", "centimetres", "centimeters", "yards", "metres", "meters") and one:
        return "inch" if form == "inches" else form[:-1]
    if form == "in" and printed.endswith(".") and expression(r"\s*(?:\n|$|\p{Lu})").match(text[span.end :]):
        return "in."  # the stop is the sentence's
    return form
