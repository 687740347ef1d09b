"""What is left over from another pattern, and what was lost in copying."""

from __future__ import annotations

from collections.abc import Iterator

from lint.checks.assembly import talk
from lint.checks.context import Context
from lint.checks.gated import names_of_no_size
from lint.expression import expression
from lint.finding import Finding
from lint.reading.facts.assembly import mentions, sews, singular
from lint.source import Span
from lint.tree import Unread, walk

_NUMBER = r"(?:\d+|two|three|four|five|six|seven|eight|nine|ten|twelve)"
_LOST = expression(
    rf"(?i)\b(?:as follows|the following)\b[\s:,;-]*(?={_NUMBER}\s+(?:more\s+)?times\b|twice\b|[.;]|$)"
    rf"(?:{_NUMBER}\s+(?:more\s+)?times|twice)?"
)
_BARE = expression(rf"(?i)^\W*(?:{_NUMBER}\s+(?:more\s+)?times|twice)\W*$")
_SIZE = expression(r"(?i:\bsizes?)\s+(?P<list>(?:\d?X{1,3}S|X{1,3}L|[2-6]XL?|S|M|L)(?:(?:\s*,\s*|\s+and\s+|\s*&\s*)(?:\d?X{1,3}S|X{1,3}L|[2-6]XL?|S|M|L))*)(?![\w-])")  # fmt: skip
_NAMES = {"small": "s", "medium": "m", "large": "l", "xsmall": "xs", "xlarge": "xl"}


def lost(context: Context) -> Iterator[Span]:
    """Where words must have stood that are gone: "as follows" with nothing following, "6 times" of nothing."""
    for part in context.pattern.parts:
        for row in part.rows:
            if row.label is None:
                continue
            words = context.source.text[row.label.span.end : row.span.end]
            match = _LOST.search(words)
            if match is not None:
                yield Span(row.label.span.end + match.start(), row.label.span.end + match.end())
                continue
            for step in walk(row.steps):
                if isinstance(step, Unread) and step.fault is None and _BARE.match(context.source.slice(step.span)):
                    yield step.span
                    break


def check_lost(context: Context) -> Iterator[Finding]:
    """words-lost: a passage in brackets that did not come through in copying."""
    for span in lost(context):
        yield context.finding_at("words-lost", span, words=" ".join(context.source.slice(span).split()))


def check_leftover_pieces(context: Context) -> Iterator[Finding]:
    """piece-not-made: "Sew the tail to the body", and no word of a tail anywhere else."""
    parts = [part for part in context.pattern.parts if part.name != context.pattern.title]
    if len(parts) < 2:
        return
    text = context.source.text
    names = frozenset(context.book.forms.piece_names)
    sewn = [span for span in talk(context) if sews(context.source.slice(span))]
    told = _masked(text, sewn)
    elsewhere = {singular(word) for word in expression(r"[a-z]+").findall(told.lower())}
    elsewhere |= {two for one in names for two in names if one + two in elsewhere}  # an earflap is a flap
    seen: set[str] = set()
    for span in sewn:
        for mention in mentions(text, span, names - elsewhere):
            noun = mention.words[-1]
            if noun not in seen:
                seen.add(noun)
                words = " ".join(context.source.slice(mention.span).split())
                yield context.finding("piece-not-made", mention.span, words=words, noun=noun)


def _masked(text: str, spans: list[Span]) -> str:
    pieces, end = [], 0
    for span in sorted(spans, key=lambda one: one.start):
        pieces.append(text[end : max(end, span.start)])
        end = max(end, span.end)
    return " ".join([*pieces, text[end:]])


def check_leftover_sizes(context: Context) -> Iterator[Finding]:
    """size-not-listed: "Size XL only", and the pattern's sizes end at L."""
    sizes = {_size(name) for name in context.pattern.sizes}
    listed = ", ".join(context.pattern.sizes)
    gates = list(names_of_no_size(context))
    for span in gates:
        yield context.finding_at("size-not-listed", span, word=context.source.slice(span), listed=listed)
    if len(sizes) < 2 or not sizes & {"s", "m", "l"}:
        return
    front = min((row.span.start for part in context.pattern.parts for row in part.rows), default=0)
    for match in _SIZE.finditer(context.source.text, front):
        for name in expression(r"\w+").finditer(context.source.text[match.start("list") : match.end("list")]):
            if name[0].lower() != "and" and _size(name[0]) not in sizes:
                start = match.start("list") + name.start()
                span = Span(start, start + len(name[0]))
                if span not in gates:
                    yield context.finding_at("size-not-listed", span, word=name[0], listed=listed)


def _size(name: str) -> str:
    plain = expression(r"[^a-z\d]").sub("", name.lower())
    plain = _NAMES.get(plain, plain)
    return expression(r"^(\d)x$").sub(r"\1xl", plain)
