"""Pieces made against pieces sewn on or laid out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.checks.assembly import SEVERAL_NAMES, begins, talk
from lint.checks.context import Context
from lint.expression import expression
from lint.finding import Finding, Related, Weight
from lint.pattern import Part
from lint.reading.facts.assembly import NUMBERS, Mention, as_number, laid_out, mentions, sentences, sews, singular
from lint.source import Span

_FRACTION = expression(r"(?i)\b(?:half|halves|quarter|corner|filler|joining)\b")
_NUMBER = "|".join((r"\d{1,3}", *NUMBERS))
_MADE_MORE = expression(
    r"(?i)\b(?:make|work|crochet|knit|repeat|do|complete)\b[^.\n]{0,60}\b(?:another|second|2nd|other|both|alike|same|again|more|twice|each|pair|opposite|mirror\w*|like|as)\b|\bas (?:for )?(?:the )?first\b|\balike\b|\bmake\s+(?:\d|two|three|four|six)"
)
_MAKE_LINE = expression(rf"(?im)^[ \t(*•-]*+make\s+(?P<n>{_NUMBER})(?:\s+(?:alike|pieces|of these|in all))?[\s).!]*$")
_PAIR = expression(
    rf"(?i)\bmake (?:{_NUMBER}|both|a pair|several)\b|\bpair\b(?!\s+(?:of\s+)?(?:\d|safety|\w*\s?eyes|scissors|stitch|needles))|\balike\b|\btwice\b"
)


@dataclass(frozen=True, slots=True)
class _Piece:
    """A part as a thing that is made: its words (the last in the singular), and how many; None where that is not sure."""

    part: Part
    words: tuple[str, ...]
    made: int | None

    @property
    def noun(self) -> str:
        return self.words[-1]


def _pieces(context: Context) -> tuple[list[_Piece], frozenset[str]]:
    """The pieces of the pattern, and nouns of parts that are several things at once."""
    text = context.source.text
    parts = context.pattern.parts
    found: list[_Piece] = []
    mixed: set[str] = set()
    for index, part in enumerate(parts):
        name = expression(r"\([^)]*\)|\d+\s*$").sub("", part.name).strip(" .:-–—")
        words = tuple(expression(r"[a-z]+").findall(name.lower()))
        if not words or part.name == context.pattern.title:
            continue
        if SEVERAL_NAMES.search(name):
            mixed.update(singular(word) for word in words)
            continue
        end = parts[index + 1].span.start if index + 1 < len(parts) else len(text)
        heading = text[part.span.start : text.find("\n", part.span.start) % (len(text) + 1)]
        own = _words_after(context, part, end)
        made: int | None = part.make
        first = next((row.span.start for row in part.rows if row.label is not None), part.span.end)
        line = _MAKE_LINE.search(text, part.span.end, first)
        loose = (
            _MAKE_LINE.search(text, first, end)
            or index
            and _MAKE_LINE.search(text, parts[index - 1].rows[-1].span.start, part.span.start)
        )
        if loose or not begins(part):
            made = None
        elif line is not None and part.make in (1, as_number(line["n"])):
            made = as_number(line["n"])
        elif (
            _made_elsewhere(text, singular(words[-1]), part.make)
            or len(expression(r"\d+").findall(expression(r"^\D*\d+\s*(?=\()").sub("", heading))) > 1
        ):
            made = None  # "make 12 for the small one, 20 for the large one"
        elif _MADE_MORE.search(own) or expression(r"(?i)\beach\b|\bper\b|[(,]\s*\d+\s*,").search(heading):
            made = None
        elif part.make == 1 and (
            words[-1] != singular(words[-1]) or expression(r"(?i)\bmake\b|\bx\s?\d|\d").search(heading)
        ):
            made = None  # "EARS", or a number that was not read
        found.append(_Piece(part, (*words[:-1], singular(words[-1])), made))
    return found, frozenset(mixed)


def _made_elsewhere(text: str, noun: str, make: int) -> bool:
    """Whether a sentence anywhere says another number: "Make 20 squares"."""
    pattern = expression(
        rf"(?i)\b(?:make|work|crochet|need|total of)\s+(?:a total of\s+|another\s+)?(?P<n>{_NUMBER})\s+(?:\w+\s+){{0,3}}?(?P<noun>[a-z]+)\b"
    )
    return any(
        singular(match["noun"]) == noun and as_number(match["n"]) != make
        for match in pattern.finditer(text, overlapped=True)
    )


def _words_after(context: Context, part: Part, end: int) -> str:
    """What a part says outside its labelled rows, up to where pieces are put together."""
    rows = sorted((row.span for row in part.rows if row.label is not None), key=lambda span: span.start)
    pieces, at = [], part.span.end
    for span in (*rows, Span(end, end)):
        for sentence in sentences(context.source.text, Span(at, max(at, span.start))):
            if sews(context.source.slice(sentence)) and rows and sentence.start > rows[-1].start:
                return " . ".join(pieces)
            pieces.append(context.source.slice(sentence))
        at = max(at, span.end)
    return " . ".join(pieces)


def check_pieces(context: Context) -> Iterator[Finding]:
    """pieces-disagree: so many made, and more or fewer sewn on or laid out."""
    pieces, mixed = _pieces(context)
    text = context.source.text
    rows = [row for part in context.pattern.parts for row in part.rows if row.label is not None]
    intro = text[: context.pattern.parts[0].span.start] if context.pattern.parts else ""
    if not pieces or not rows or len(context.pattern.sizes) > 1 and _PAIR.search(intro):
        return
    nouns = frozenset(piece.noun for piece in pieces if len(piece.noun) > 2) - mixed
    spans = list(talk(context))
    used: dict[str, list[Mention]] = {}
    for span in spans:
        if sews(context.source.slice(span)):
            for mention in mentions(text, span, nouns):
                used.setdefault(mention.words[-1], []).append(mention)
        yield from _layout(context, span, pieces, nouns)
    if _PAIR.search(intro):
        return  # the whole thing is made twice: each piece, or all of it?
    for found in used.values():
        yield from _used(context, found, pieces)


def _named(mention: Mention, pieces: list[_Piece]) -> list[_Piece]:
    """The pieces that a mention can mean: those of its noun, and of its other words where names have them."""
    same = [piece for piece in pieces if piece.noun == mention.words[-1]]
    telling = [word for word in mention.words[:-1] if any(word in piece.words for piece in same)]
    return [piece for piece in same if all(word in piece.words for word in telling)] or same


def _used(context: Context, found: list[Mention], pieces: list[_Piece]) -> Iterator[Finding]:
    noun = found[0].words[-1]
    for mention in found:
        meant = _named(mention, pieces)
        if any(piece.made is None for piece in meant) or _told_again(context, noun, meant):
            return
        made = sum(piece.made or 0 for piece in meant)
        if mention.number is not None and mention.number > made:
            # where other headings say how many are made, this one says that it is one
            says = any(piece.part.make > 1 for piece in pieces)
            yield _disagree(context, mention, meant, made, mention.number, None if says else Weight.QUERY)
            return
    if len(found) > 1 or found[0].plural or found[0].several or found[0].number not in (None, 1):
        return
    meant = _named(found[0], pieces)
    made = sum(piece.made or 0 for piece in meant)
    if len(meant) == 1 and made == 2 and not _plural_elsewhere(context, noun, meant[0].part):
        yield _disagree(context, found[0], meant, made, 1, Weight.QUERY)


def _disagree(context: Context, mention: Mention, meant: list[_Piece], made: int, used: int, weight=None) -> Finding:
    heading = meant[0].part.name
    return context.finding(
        "pieces-disagree",
        mention.span,
        meant[0].part.name if len(meant) == 1 else None,
        weight=weight,
        words=" ".join(context.source.slice(mention.span).split()),
        made=made,
        heading=heading if len(meant) == 1 else " and ".join(piece.part.name for piece in meant[:4]),
        used=used,
        expected=made,
        found=used,
        related=tuple(Related(piece.part.span, f"{piece.made} made here") for piece in meant),
    )


def _told_again(context: Context, noun: str, meant: list[_Piece]) -> bool:
    """Whether words anywhere speak of a second one being made: "the second leg", "each leg" in a row."""
    pattern = expression(
        rf"(?i)\b(?:second|2nd|another|other|each|third|first|next|remaining)\s+(?:[a-z]+\s+)?{noun}\b",
        own_words=True,
    )
    headings = [piece.part.span for piece in meant]
    return any(
        not any(span.start <= match.start() < span.end for span in headings)
        and not sews(context.source.text[match.start() - 80 if match.start() > 80 else 0 : match.end()].split(".")[-1])
        for match in pattern.finditer(context.source.text)
    )


def _plural_elsewhere(context: Context, noun: str, part: Part) -> bool:
    """Whether the text speaks of several of them anywhere but in the heading."""
    heading_end = context.source.text.find("\n", part.span.start)
    return any(
        not part.span.start <= match.start() < max(heading_end, part.span.end)
        for match in expression(r"(?i)[a-z]+").finditer(context.source.text)
        if singular(match.group(0)) == noun and match.group(0).lower() != noun
    )


def _layout(context: Context, span: Span, pieces: list[_Piece], nouns: frozenset[str]) -> Iterator[Finding]:
    """Squares made against rows and columns of the layout."""
    found = laid_out(context.source.text, span, nouns)
    if found is None or len(context.pattern.sizes) > 1:
        return
    meant = [piece for piece in pieces if (piece.noun == found.noun if found.noun else (piece.made or 2) > 1)]
    fractions = any(_FRACTION.search(piece.part.name) for piece in pieces)
    if not meant or fractions or any(piece.made is None or piece.made < 2 for piece in meant):
        return
    made = sum(piece.made or 0 for piece in meant)
    if made % found.number == 0:
        return  # right, or laid out as often for front and back
    yield context.finding(
        "pieces-disagree",
        found.span,
        words=" ".join(context.source.slice(found.span).split()),
        made=made,
        heading=" and ".join(piece.part.name for piece in meant[:4]),
        used=found.number,
        weight=Weight.QUERY if made > found.number else None,  # some may be kept for elsewhere
        expected=made,
        found=found.number,
        related=tuple(Related(piece.part.span, f"{piece.made} made here") for piece in meant),
    )
