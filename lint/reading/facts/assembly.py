"""What sentences of assembly say: how many pieces are sewn on, and how pieces are laid out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

import regex

from lint.expression import Expression, expression
from lint.source import Span

NUMBERS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "twelve": 12}  # fmt: skip
_NUMBER = rf"\d{{1,3}}|{'|'.join(NUMBERS)}"
_SENTENCE = expression(r"[^.!?;\n](?:[^.!?;\n]|\.(?=\d)|\n(?!\s*\n))*")
_SEWS = expression(
    r"(?i)\b(?:sew\w*|attach\w*|stitch(?=\s+(?:the|both|an?|each|one|all|on)\b)|seam(?!s?\s+(?:allowance|is|lies))|whip[- ]?stitch|oversew|overcast|mattress[- ]stitch|join(?:ing)?(?!\w*\s+(?:with|in|to|yarn|new|[A-H]\b|MC|CC))|graft|secure|pin|glue)\b"
)
_LAYS = expression(r"(?i)\b(?:lay|set|arrange\w*|place|layout|join|sew|put|block|assemble\w*|whip[- ]?stitch)\b")


@dataclass(frozen=True, slots=True)
class Mention:
    """A piece that a sentence of assembly speaks of, and how many of it."""

    span: Span
    words: tuple[str, ...]  # the piece's words, the last in the singular
    number: int | None  # "both ears", "two ears": so many
    plural: bool
    several: bool = False  # "an ear to each side", "the other ear": one of some


@dataclass(frozen=True, slots=True)
class LaidOut:
    """So many pieces in rows: "5 across and 8 down"."""

    span: Span
    rows: tuple[int, ...]  # pieces in each row
    noun: str | None

    @property
    def number(self) -> int:
        """Pieces in all."""
        return sum(self.rows)


def singular(word: str) -> str:
    """A noun in the singular, as far as its letters tell: leaves is leaf, eyes is eye."""
    word = word.lower()
    if word in ("feet", "foot"):
        return "foot"
    if word.endswith("ves") and len(word) > 4 and not word.endswith(("eeves", "oves")):
        return word[:-3] + "f"
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("ches", "shes", "xes", "sses")):
        return word[:-2]
    return word[:-1] if word.endswith("s") and not word.endswith("ss") else word


def sentences(text: str, span: Span) -> Iterator[Span]:
    """The sentences of a stretch of the text."""
    for match in _SENTENCE.finditer(text, span.start, span.end):
        yield Span(match.start(), match.end())


def sews(sentence: str) -> bool:
    """Whether a sentence puts pieces together."""
    return _SEWS.search(sentence) is not None


def as_number(words: str) -> int:
    """A number in figures or in words."""
    return int(words) if words.isdigit() else NUMBERS[words.lower()]


# pieces ----------------------------------------------------------------------------------------------------------

_REPEATED = expression(
    r"(?i)\b(?:each|every|either|both|other|another|second|remaining|rest|same|repeat\w*|likewise|opposite|sides|ends|corners|twice|pairs?|halves|together|remainder)\b"
)


_YARN_END = expression(r"(?i)\b(?:leav\w+|with|using|weav\w+|thread\w*|cut\w*|knot\w*|long|yarn|same)\s*$")


@lru_cache(maxsize=256)  # every sentence of a pattern is asked for the same pieces
def _mention(nouns: frozenset[str]) -> Expression:
    forms = {form for noun in nouns for form in _forms(noun)}
    listed = "|".join(sorted(map(regex.escape, forms), key=lambda form: (-len(form), form)))
    return expression(
        rf"(?i)\b(?P<det>both(?:\s+(?:of\s+)?the)?|all\s+(?:the\s+)?(?:{_NUMBER})|the\s+(?:{_NUMBER})|{_NUMBER}|the|an?|each|every|other|your)\s+(?P<adj>(?:(?!(?:{listed})\b)[a-z-]+\s+){{0,2}}?)(?P<noun>{listed})\b(?!\s*['’-]|\s+(?:seams?|edges?|holes?|openings?|ends?|sides?|tops?|stitch\w*|sts?|piece|row|round|rnd|area|position|marker)\b)",
        own_words=True,
    )


def mentions(text: str, span: Span, nouns: frozenset[str]) -> Iterator[Mention]:
    """The pieces of these names (in the singular) that a sentence speaks of as things to be put on."""
    sentence = text[span.start : span.end]
    several = _REPEATED.search(sentence) is not None
    if not nouns:
        return
    pattern = _mention(nouns)
    for match in pattern.finditer(sentence):
        if expression(
            r"(?i)\b(?:of|from|between|behind|under|above|below|near|inside|on|at|in|to|over|onto|into|across|through|around|along)\s+$"
        ).search(
            sentence[: match.start()],
        ):
            continue  # the place it is put to, not the piece
        if _YARN_END.search(sentence, 0, match.start()) or expression(r"\s+(?:end|for\s+sew)").match(
            sentence[match.end() :]
        ):
            continue  # a tail of yarn
        det = match["det"].lower().split()
        number = (
            2
            if det[0] == "both"
            else next((as_number(word) for word in det if word.isdigit() or word in NUMBERS), None)
        )
        noun = match["noun"].lower()
        adjectives = tuple(match["adj"].lower().split())
        if "of" in adjectives or "and" in adjectives or "sts" in adjectives or "stitches" in adjectives:
            continue
        yield Mention(
            Span(span.start + match.start(), span.start + match.end()),
            (*adjectives, singular(noun)),
            number,
            noun != singular(noun),
            several,
        )


def _forms(noun: str) -> tuple[str, ...]:
    """A noun and its plurals."""
    plural = "feet" if noun == "foot" else noun + ("es" if noun.endswith(("ch", "sh", "x", "ss")) else "s")
    more = (noun[:-1] + "ves",) if noun.endswith("f") else (noun[:-1] + "ies",) if noun.endswith("y") else ()
    return (noun, plural, *more)


_WIDE = r"(?:squares?|motifs?|blocks?|hexagons?|pieces?|grann(?:y|ies))?"
_LAYOUT = expression(
    rf"(?i)\b(?P<wide>{_NUMBER})\s+{_WIDE}\s*(?:across|wide)\s*(?:and|by|x|×|,)?\s*(?P<rows>{_NUMBER})\s+{_WIDE}\s*(?:down|long|deep|high|tall)\b"
    rf"|\b(?P<rows>{_NUMBER})\s+{_WIDE}\s*(?:down|long|deep|high|tall)\s*(?:and|by|x|×|,)?\s*(?P<wide>{_NUMBER})\s+{_WIDE}\s*(?:across|wide)\b"
    rf"|\b(?P<rows>{_NUMBER})\s+(?:rows|strips|columns)\s+(?:of|with)\s+(?P<wide>{_NUMBER})(?:\s+(?:squares|motifs|blocks|hexagons|pieces))?\s*(?:each|(?=[.,;]|$))"
    rf"|\b(?P<rows>{_NUMBER})\s+(?:rows|strips|columns)\s+(?:of|with)\s+(?P<wide>{_NUMBER})\s+(?:squares|motifs|blocks|hexagons|pieces)\b"
)
_ROWS_OF = expression(
    rf"(?i)\brows\s+of\s+(?P<list>(?:{_NUMBER})(?:\s*,\s*(?:{_NUMBER}))+\s*,?\s*(?:and|&)\s*(?:{_NUMBER}))\b"
)


def laid_out(text: str, span: Span, nouns: frozenset[str]) -> LaidOut | None:
    """The layout that a sentence gives, if it lays out pieces that it names or calls motifs, squares…"""
    sentence = text[span.start : span.end]
    words = {singular(word) for word in expression(r"[a-z]+").findall(sentence.lower())}
    noun = next((noun for noun in nouns if noun in words), None)
    generic = words & {"square", "motif", "block", "hexagon", "piece"}
    if not _LAYS.search(sentence) or not (noun or generic):
        return None
    found = [(match, (as_number(match["wide"]),) * as_number(match["rows"])) for match in _LAYOUT.finditer(sentence)]
    for match in _ROWS_OF.finditer(sentence):
        items = expression(rf"(?i){_NUMBER}").findall(match["list"])
        found.append((match, tuple(as_number(item) for item in items)))
    if len(found) != 1:
        return None
    match, rows = found[0]
    return LaidOut(Span(span.start + match.start(), span.start + match.end()), rows, noun)
