"""Prose as its sentences run: lines that a narrow column or a mail broke apart, put together again."""

from __future__ import annotations

from collections.abc import Iterable

import regex

from lint.expression import expression
from lint.source import SourceText, Span

# "shell = 5 tr in one st" under a full line is an entry of its own
_ENTRY = r"[\w-]{1,14}(?: [\w-]{1,12})?(?: ?\([^()\n]{1,12}\))?(?:\s*=\s|\s[-–]\s)"
_GOES_ON = expression(rf"[ \t]*(?!{_ENTRY})(?:[\p{{Ll}}(&+]|\d+[ -](?:\p{{Ll}}|\d/\d))")
_ENDS = expression(r"[.!?:;][\"')\]*_]*\s*$")
_SHORT = 25  # characters: a shorter line is no full one, so that what follows it is a line of its own


def running(source: SourceText, spans: Iterable[Span]) -> list[Span]:
    """Stretches of whole lines, those that go on in the next line joined with it."""
    found: list[Span] = []
    for span in spans:
        before = found[-1] if found else None
        between = source.text[before.end : span.start] if before is not None else ""
        if before is not None and 0 <= span.start - before.end <= 2 and between.count("\n") < 2:
            last = source.slice(before).rsplit("\n", 1)[-1]
            text = source.slice(span)
            if len(last) > _SHORT and not _ENDS.search(last) and _GOES_ON.match(text):
                found[-1] = Span(before.start, span.end)
                continue
        found.append(span)
    return found


def unbroken(text: str) -> str:
    """The text with its line breaks as spaces, one character for one."""
    return text.replace("\n", " ").replace("\r", " ")


def unwrapped(text: str) -> str:
    """Wrapped lines of a run-on list joined, one character for one."""
    joined = expression(r"(?<=[,;(=]|\w\sand)[ \t]*\n(?=\S)").sub(lambda match: " " * len(match.group(0)), text)
    joined = _IN_BRACKETS.sub(lambda match: match.group(0).replace("\n", " "), joined)
    lines = text.split("\n")
    if any(line.count(";") > 1 for line in lines):  # "Chain = ch; double crochet = dc; …"
        return expression(r"(?<=[^\s;.:])[ \t]*\n(?=[^\s\n])").sub(lambda match: _joint(joined, match), joined)
    if _LIST_SIGN.search(joined.lstrip()[:60]):  # in a list without signs each line is an entry
        joined = _CUT_SENTENCE.sub(" ", joined)
    run_on = any(max(len(sign.findall(line)) for sign in _LIST_SIGNS) > 1 for line in lines)
    return _CUT_ENTRY.sub(" ", joined) if run_on else joined


def _joint(text: str, match: regex.Match) -> str:
    """A line's end as spaces; as it is where an entry is whole before it and another begins behind it."""
    last = text[: match.start()].rsplit("\n", 1)[-1].rsplit(";", 1)[-1]
    named = expression(_ENTRY).match(text, pos=match.end()) or _NAMED.match(text, pos=match.end())
    whole = named is not None and _WHOLE.search(last) is not None
    whole = whole or _GLOSSED.fullmatch(last) is not None and _TOLD.match(text, pos=match.end()) is not None
    return match[0] if whole else " " * len(match[0])


_WHOLE = expression(r"\s[-–]\s|[—=:]|^\s*[\w()]{1,10},\s+\p{L}[^,]*$")
_NAMED = expression(r"\p{Lu}[\w-]*(?: [\w-]{1,12}){0,3}(?: \([^()\n]{1,12}\))?: ")  # "Shell in shell: work …"
_GLOSSED = expression(r"\s*[\w ]{1,14}\([^()]{1,40}\)\s*")  # "…; st (stitch)", and below it "Cl (cluster): (yo, …"
_TOLD = expression(r"[\w-]{1,14}(?: [\w-]{1,12})? ?\([^()\n]{1,20}\)\s*:\s")
_IN_BRACKETS = expression(r"[(\[][^()\[\]\n]{1,80}\n[^()\[\]\n]{1,80}[)\]]")
# a full line that ends in no stop, and a next one that begins no entry, nor tells what a chain counts as
_CUT_SENTENCE = expression(
    r"(?<=[^\n]{25}[^\s.:;][ \t]*)\n(?!(?i:the )?(?:Ch[- ]?\d|\d ?ch\b)[^\n]*\bcounts?\b)(?=[^\s—=:\n][^—=:\n]{0,40}(?:[,;.)]|\Z|\n|[^—=:\n]{40}))(?![^\n]{0,40}\s[-–]\s|[^\n]{1,30}[=:—]|[^\s]{1,12}(?: [^\s]{1,6})?(?:\t|[ ]{2,}))"
)
_LIST_SIGN = expression(r"\s[-–]\s|[—=:]")
# each alone, as a list parts its entries: "ch = chain, dc = double crochet"; "chain (ch), double crochet (dc)"
_LIST_SIGNS = tuple(
    map(expression, (r"\s-\s", r"\s–\s", "—", "=", ":", r"\w \([^()\n]{1,20}(?:\(s\)|\(es\))?\)\s*(?:[;,.]|$)"))
)
# a line of a list that goes on with the words of the line before: its first comma stands before any sign of an entry
_CUT_ENTRY = expression(
    r"(?<=[\w)][ \t]*)\n(?=[^\s—=:,;.\n][^—=:,;.\n]{0,40}(?:[,;.)]|\Z))(?![^\n]{0,30}\s[-–]\s|[^\n()]{1,20}\([^\n()]+\)[ \t]*(?:\n|\Z)|[\w/]{1,8}\(e?s\)\s?[:=—]|[^\s]{1,12}(?: [^\s]{1,6})?(?:\t|[ ]{2,}))"  # "st(s): stitch(es)", "st  stitch" begin an entry
)
