"""Lists over the sizes in the house's brackets and signs: "60 (66, 72)", "60 [66: 72]", "60/66/72"; in the whole text."""

from __future__ import annotations

from collections.abc import Iterator

from lint.expression import expression
from lint.house.samples import ListForm, list_form
from lint.lexicon import Lexeme
from lint.restyle.edits import Edit
from lint.restyle.ground import Ground
from lint.source import Span

RULE = "size-list-not-house"
_PAIRS = {"(": ")", "[": "]", "{": "}"}
_FRACTIONS = "½¼¾⅓⅔⅛⅜⅝⅞"


def edits(ground: Ground) -> Iterator[Edit]:
    """Every list with a number for each size that the house sets otherwise."""
    sizes = len(ground.pattern.sizes)
    if ground.house.sizes is None or sizes < 2:
        return
    form = list_form(ground.house.sizes)
    lexemes = ground.document
    for index, lexeme in enumerate(lexemes):
        if lexeme.kind in _PAIRS and index and _figure(lexemes[index - 1]):
            close = _close(lexemes, index)
            if close is not None:
                yield from _list_edits(ground, lexemes[index - 1 : close + 1], sizes, form)
    if sizes > 2:  # of two, "1/2" may be a fraction
        yield from _slashed(ground, sizes, form)


def _slashed(ground: Ground, sizes: int, form: ListForm) -> Iterator[Edit]:
    """Lists without brackets: "36/40/44/48 in"; a date is none, and no part of an address."""
    one = rf"\d+(?:\.\d+)?[{_FRACTIONS}]?"
    listed = expression(rf"(?:(?<=\b[Cc]h)|(?<![\w/.,:-]))({one})(?:/({one})){{{sizes - 1}}}(?![\d/]|[.,-]\d)")
    for match in listed.finditer(ground.source.text):
        figures = [match[1], *match.captures(2)]
        dated = (
            figures[-1].isdecimal()
            and 1900 <= int(figures[-1]) < 2100
            and float(expression(r"\d+").match(figures[0])[0]) < 32
        )
        if form.opening and not dated:
            yield Edit(Span(*match.span()), form.written(figures), RULE, "lists over the sizes")


def _figure(lexeme: Lexeme) -> bool:
    return lexeme.kind in ("number", "decimal") and lexeme.value != "word" or lexeme.text in _FRACTIONS


def _close(lexemes: tuple[Lexeme, ...], index: int) -> int | None:
    for at in range(index + 1, min(index + 80, len(lexemes))):
        if lexemes[at].kind == _PAIRS[lexemes[index].kind]:
            return at
        if lexemes[at].kind in _PAIRS:
            return None
    return None


def _list_edits(ground: Ground, run: tuple[Lexeme, ...], sizes: int, form: ListForm) -> Iterator[Edit]:
    """The list whose first figure, bracket, … and closing bracket are the run."""
    text = ground.source.text
    inner = text[run[1].end : run[-1].start]
    number = rf"(?:\d+(?:\.\d+)?\s?[{_FRACTIONS}]?|[{_FRACTIONS}]|\d+\s\d/\d|\d/\d)"
    one = rf"(?:{number}(?:-{number})?)"  # a range of rows may stand in a label's list
    match = expression(rf"\s*({one})(?:\s*([,:;/]|-)\s*({one}))*\s*").fullmatch(inner)
    if match is None or len(match.captures(3)) != sizes - 2 or len(set(match.captures(2))) > 1:
        return
    if "-" in match.captures(2) and "-" in "".join([match[1], *match.captures(3)]):
        return
    if not match.captures(2) and sizes > 2:
        return
    figures = [match[1].strip(), *(figure.strip() for figure in match.captures(3))]
    if any(form.between == sign and sign in figure for sign in "-/" for figure in (run[0].text, *figures)):
        return
    gap = text[run[0].end : run[1].start]
    start = run[1].start if gap.strip(" ") else run[0].end  # a list that a line's end cuts keeps its gap
    new = form.written(["", *figures])
    yield Edit(
        Span(start, run[-1].end), new if start < run[1].start or not gap else new.lstrip(), RULE, "lists over the sizes"
    )
