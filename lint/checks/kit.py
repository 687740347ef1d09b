"""Hooks and notions: what the instructions ask for and the materials do not list."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import regex

from lint.amount import Amount
from lint.checks.context import Context
from lint.expression import Expression, expression
from lint.finding import Finding, Related
from lint.reading.facts.assembly import NUMBERS, as_number
from lint.reading.lines.seams import amount_of
from lint.source import Span

_MM = expression(r"(?i)(?<![\w.,])(?P<mm>\d{1,2}(?:[.,]\d{1,2})?)\s?mm\b")
_HOOK = expression(r"(?i)\bhooks?\b")
_FOR_SIZE = expression(
    r"\b[Ff]or\s+(?:the\s+)?(?:sizes?\s+)?[\p{Lu}\d].*\bmm\b|\bmm\b.*\bfor\s+(?:the\s+)?(?:sizes?\s+)?[\p{Lu}\d]"
)  # "For S and L, use 5.5 mm hook."
_LETTER = expression(r"(?<![\w-])(?:(?i:US|size)\s+)*(?P<letter>[B-Q])(?:[-/]\d{1,2}(?:\.5|½)?)?(?![\w'’&-])")
_LETTER_HOOK = expression(
    rf"(?i:\b(?:with|using|change to|changing to|switch to)\s+(?:the\s+|a\s+)?){_LETTER.pattern}\s+(?i:hook)\b"
)
_OTHER_HOOK = expression(
    r"(?i)\b(?:with|using|change to|changing to|switch to|to)\s+(?:the\s+|a\s+)?(?P<which>larger|smaller)\s+hook\b"
)
_LARGER, _SMALLER, _EITHER = (
    expression(rf"(?i)\b(?:{word})\s+(?:size\s+)?hooks?\b")
    for word in (
        "larger|bigger|thicker",
        "smaller|thinner|finer",
        "second|other|first|same|both|(?:change|changing|switch|switching) to (?:the )?(?:larger|smaller)",
    )
)
_SIZES_UP = expression(
    r"(?i)\b(?:up|down)\s+(?:a|an?other|\w+)\s+(?:hook\s+)?sizes?\b|\bhook\b[^.;\n]{0,20}\bsizes?\s+(?:larger|smaller|bigger|up|down)\b"
)  # "go up a hook size", "with a hook one size larger": another of those that are listed
_OVER_SIZES = r"\d{1,2}(?:[\s(,\[/:;{–-]{1,3}\d{1,2})*[)\]}]?"  # "5", "5 (5, 6, 6)"
_BUTTONS_LISTED = expression(
    rf"(?i)(?<![\w(-])(?P<number>{_OVER_SIZES}|{'|'.join(NUMBERS)})[ \t]+(?:(?!and\b)[\w½¾¼.\"”-]+[ \t]+){{0,4}}?buttons?\b"
)
_BUTTONS_SEWN = expression(
    rf"(?i)\bsew\s+(?:on\s+)?(?:the\s+)?(?P<number>{_OVER_SIZES}|{'|'.join(NUMBERS)})\s+buttons?\b"
)

_HOLES = expression(
    rf"(?i)(?<![\w(,.-])\(?(?P<number>{_OVER_SIZES}|{'|'.join(NUMBERS)})[ \t]+(?:evenly[ \t]+spaced[ \t]+|small[ \t]+)?button[ \t-]?holes\b"
)
_SOME_HOLES = expression(
    r"(?i)\b(?:more|other|others|first|last|remaining|further|each|both|every|rows?|apart|extra)\b"
)


@dataclass(frozen=True, slots=True)
class _Notion:
    """A thing besides yarn and hook: words that cannot be followed without it, words that name it, and what it is called."""

    needed: Expression
    named: Expression
    name: str
    asked_back: bool = True  # listed and never named again, it is asked about


def _notion(needed: str, named: str, name: str, asked_back: bool = True) -> _Notion:
    return _Notion(expression(rf"(?i){needed}"), expression(rf"(?i){named}"), name, asked_back)


_PUT = r"\b(?:sew|insert|attach|fix|place|add|glue)\s+(?:in\s+|on\s+)?(?:the\s+|two\s+|both\s+|\d+(?:\s?mm)?\s+)*"
_DRAW = r"\b(?:thread|weave|run|lace|draw|pull|insert)\s+(?:the\s+|a\s+)?(?:length\s+of\s+)?"
_NOTIONS = (
    _notion(r"\b(?:stitch\s+)?markers?\b|\bpm\b", r"\bmarkers?\b|\bscrap yarn|contrast(?:ing)? yarn|safety pin|bobby pin|paper ?clip", "stitch marker", False),
    _notion(r"\bsew (?:on )?(?:the |on |\d+ |two |three |four |five )*buttons?\b", r"\bbuttons?\b|\bbuttoned\b", "button"),
    _notion(r"\bstuff(?:ing)?\s+(?:firmly|lightly|the|as|body|head|it|with|before|and)\b", r"stuff|fibre?fill|filling|fiberfil|polyfill|wadding|toy fill|polyester fill|poly-?fil\b", "stuffing"),
    _notion(_PUT + r"(?:safety\s+|toy\s+)*eyes\b", r"\beyes?\b(?!\s+needle)|\bbeads?\b|\bbuttons?\b", "pair of eyes"),
    _notion(r"\b(?:sew|insert|set) (?:in )?(?:the )?zip(?:per)?\b", r"\bzip", "zip"),
    _notion(_DRAW + r"(?:narrow\s+|satin\s+)?ribbon\b", r"\bribbons?\b", "ribbon"),
    _notion(_DRAW + r"(?:the\s+)?elastic\b(?!\s+(?:st|rib))", r"\belastic", "elastic"),
)  # fmt: skip


def check_kit(context: Context) -> Iterator[Finding]:
    """hook-not-listed, hook-not-used, notion-not-listed, notion-not-used, notions-differ: only where a list names a hook."""
    text = context.source.text
    sections = [section for section in context.pattern.sections if section.key == "materials"]
    zones = [section.span for section in sections]
    listed = " ".join(context.source.slice(zone) for zone in zones)
    if not _HOOK.search(listed):
        return
    told = list(_told(context))
    yield from _hooks(context, listed, sections[0].heading, told)
    for notion in _NOTIONS:
        if notion.named.search(listed) or any(notion.named.search(line) for line in _unheaded(context, text)):
            continue
        found = next((one for zone in told if (one := notion.needed.search(text, zone.start, zone.end))), None)
        if found is not None:
            yield context.finding_at(
                "notion-not-listed", Span(*found.span()), found=found[0], notion=notion.name,
                related=(Related(sections[0].heading, "the list of materials"),),
            )  # fmt: skip
    yield from _not_used(context, zones, told)
    yield from _buttons(context, zones)
    yield from _buttonholes(context, zones)


def _not_used(context: Context, zones: list[Span], told: list[Span]) -> Iterator[Finding]:
    """Notions, and a second hook, that stand in the materials and nowhere else."""
    text = context.source.text
    ends = [0, *(zone.end for zone in zones)]
    begins = [*(zone.start for zone in zones), len(text)]
    rest = "\n".join(text[end:begin] for end, begin in zip(ends, begins, strict=True) if end < begin)
    if not told:
        return
    for notion in _NOTIONS:
        found = next((one for zone in zones if (one := notion.named.search(text, zone.start, zone.end))), None)
        if notion.asked_back and found is not None and not notion.named.search(rest):
            yield context.finding("notion-not-used", Span(*found.span()), found=found[0])
    hooks = [
        match for zone in zones for match in _MM.finditer(text, zone.start, zone.end) if _of_hook(text, match, zone)
    ]
    hooks.sort(key=_size_in_mm)
    if len({_size_in_mm(match) for match in hooks}) != 2 or any(
        one.search(rest) for one in (_EITHER, _SIZES_UP, _LETTER_HOOK)
    ):
        return
    taken = _SMALLER.search(rest), _LARGER.search(rest)  # one of them told by its size, the other has to be as well
    told_so = {_size_in_mm(match) for match, found in zip((hooks[0], hooks[-1]), taken, strict=True) if found}
    told_so |= {_size_in_mm(match) for match in _MM.finditer(rest)}
    by_size = (
        line
        for zone in zones
        for line in text[zone.start : zone.end].split("\n")
        if _FOR_SIZE.search(line) and context.pattern.sizes
    )
    told_so |= {_size_in_mm(match) for line in by_size for match in _MM.finditer(line)}
    unused = [match for match in hooks if _size_in_mm(match) not in told_so]
    if unused:
        unused = max(unused, key=lambda match: match.start())
        yield context.finding("hook-not-used", Span(*unused.span()), found=unused[0])


def _size_in_mm(match: regex.Match) -> float:
    return float(match["mm"].replace(",", "."))


def _of_hook(text: str, match: regex.Match, zone: Span) -> bool:
    """Whether a size in mm is that of a hook, and its clause does not say what it is for, or names another in its place."""
    start = max(text.rfind(sign, zone.start, match.start()) for sign in ";\n") + 1
    ends = [at for at in (text.find(sign, match.end(), zone.end) for sign in ";\n") if at >= 0]
    clause = text[max(start, zone.start) : min(ends, default=zone.end)]
    return _HOOK.search(clause) is not None and not expression(
        r"(?i)\b(?:eyes?|buttons?|beads?|ribbon|elastic|needles?|steel|ring|wire|for|or(?! (?:the )?size (?:needed|required|to)))\b"
    ).search(clause)


def _buttons(context: Context, zones: list[Span]) -> Iterator[Finding]:
    """Three buttons in the list, and five that are sewn on; one number, or one for each size."""
    found = _held_against_buttons(context, zones, _BUTTONS_SEWN)
    if found is None:
        return
    listed, wanted, sewn, told = found
    for size in range(max(1, len(context.pattern.sizes))):
        there, each = wanted.at(size), [one.at(size) or 0 for one in told]
        if there and sum(each) != there and there not in each:
            at = Span(*sewn[0].span())
            yield _differ(context, "notions-differ", at, listed, size, (sum(each), there), [wanted, *told])
            return


def _buttonholes(context: Context, zones: list[Span]) -> Iterator[Finding]:
    """Six buttons in the list and five buttonholes, where these are told in one sentence and are all there are."""
    found = _held_against_buttons(context, zones, _HOLES)
    if found is None:
        return
    listed, wanted, holes, told = found
    text = context.source.text
    lines = [
        text[text.rfind("\n", 0, one.start()) + 1 : one.end()] + text[one.end() :].partition("\n")[0] for one in holes
    ]
    if any(one != told[0] for one in told) or any(map(_SOME_HOLES.search, lines)):
        return
    for size in range(max(1, len(context.pattern.sizes))):
        there, made = wanted.at(size), told[0].at(size)
        if there and made and there != made:
            at = Span(*holes[0].span("number"))
            yield _differ(context, "buttonholes-differ", at, listed, size, (made, there), [wanted, told[0]])
            return


def _held_against_buttons(
    context: Context, zones: list[Span], words: Expression
) -> tuple[regex.Match, Amount, list[regex.Match], list[Amount]] | None:
    """The one number of buttons in the lists, and the numbers that `words` tell behind them; None where any is not clear."""
    text, sizes = context.source.text, max(1, len(context.pattern.sizes))
    listed = [match for zone in zones for match in _BUTTONS_LISTED.finditer(text, zone.start, zone.end)]
    told = list(words.finditer(text, max((zone.end for zone in zones), default=0)))
    wanted = _number(listed[0]["number"], sizes) if len(listed) == 1 else None
    numbers = [number for one in told if (number := _number(one["number"], sizes)) is not None]
    if wanted is None or not numbers or len(numbers) < len(told):
        return None
    return listed[0], wanted, told, numbers


def _differ(
    context: Context, rule: str, at: Span, listed: regex.Match, size: int, figures: tuple[int, int], of: list[Amount]
) -> Finding:
    """The finding that so many are made and so many listed; it names the size where the numbers are not for all of them."""
    names = context.pattern.sizes
    everywhere = all(one.lone is not None for one in of)
    return context.finding_at(
        rule,
        at,
        sizes=(names[size],) if len(names) > 1 and not everywhere else (),
        found=figures[0],
        expected=figures[1],
        related=(Related(Span(*listed.span()), "the list of materials"),),
    )


def _number(words: str, sizes: int) -> Amount | None:
    """A number in figures or in words, or a list over the sizes."""
    return amount_of(words, sizes) if words[0].isdigit() else Amount.of(as_number(words))


_FRONT_MATTER = ("materials", "gauge", "abbreviations", "size", "skill", "terms", "colours", "specials")


def _told(context: Context) -> Iterator[Span]:
    """What is said from the first piece on, but for front matter that stands behind it."""
    begin = min((part.span.start for part in context.pattern.parts if part.rows), default=len(context.source.text))
    for section in sorted(context.pattern.sections, key=lambda section: section.span.start):
        if section.key in _FRONT_MATTER and section.span.end > begin:
            if begin < section.heading.start:
                yield Span(begin, section.heading.start)
            begin = section.span.end
    if begin < len(context.source.text):
        yield Span(begin, len(context.source.text))


def _unheaded(context: Context, text: str) -> Iterator[str]:
    """The lines before the first piece: what is needed often stands there under no heading, or another."""
    first = min((part.rows[0].span.start for part in context.pattern.parts if part.rows), default=0)
    yield from text[:first].splitlines()


def _hooks(context: Context, listed: str, materials: Span, told: list[Span]) -> Iterator[Finding]:
    text = context.source.text
    sizes = {float(match["mm"].replace(",", ".")) for match in _MM.finditer(listed)}
    table = context.book.materials
    rows = (*table.hooks, *table.hooks_of_some_makers)
    letters = {match["letter"] for match in _LETTER.finditer(listed)}
    sizes |= {row.mm for row in rows if sizes | letters and letters & set(row.letters)}
    for zone in told:
        for match in _MM.finditer(text, zone.start, zone.end):
            size = float(match["mm"].replace(",", "."))
            hook = _HOOK.search(text, match.end(), min(len(text), match.end() + 24))
            if hook is not None and "\n" not in text[match.end() : hook.start()] and sizes and size not in sizes:
                yield _not_listed(context, Span(match.start(), hook.end()), materials)
                return
        for match in _LETTER_HOOK.finditer(text, zone.start, zone.end):
            named = {row.mm for row in rows if match["letter"] in row.letters}
            if sizes and named and match["letter"] not in letters and not named & sizes:
                yield _not_listed(context, Span(match.start("letter"), match.end()), materials)
                return
        other = _OTHER_HOOK.search(text, zone.start, zone.end)
        if other is not None and len(set(_MM.findall(listed))) <= 1 and len(_HOOK.findall(listed)) == 1:
            yield _not_listed(context, Span(*other.span()), materials)
            return


def _not_listed(context: Context, span: Span, materials: Span) -> Finding:
    return context.finding_at(
        "hook-not-listed",
        span,
        found=context.source.slice(span),
        related=(Related(materials, "the list of materials"),),
    )
