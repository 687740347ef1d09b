"""What the notes of a pattern say of beginning chains, and of which pieces they say it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import regex

from lint.expression import Expression, expression
from lint.lexicon import Lexeme, Lexicon
from lint.madeonce import made_once
from lint.reading.lines.layout import Layout
from lint.reading.page.prose import running, unbroken
from lint.reading.places import notes
from lint.reading.words.stream import Stream, Vocabulary
from lint.rulebook import WordFile
from lint.source import SourceText
from lint.tree import Counting


@made_once
def _speaks_of_counting(words: WordFile) -> Expression:
    listed = "|".join(map(regex.escape, [*words.words["counts"], *words.words["counts_not"]]))
    return expression(rf"(?i)count|not a st|\b(?:is|are) always\b|\b(?:{listed})\b|{_FOR_FIRST}|{_EQUALS}|{_IS_FIRST}")


# "Work 3 ch at the beginning of each row for the first tr."
_FOR_FIRST = r"\bch(?:ain)?s?\b[^.;]{0,24}\b(?:beg|beginning|start)\b[^.;]{0,24}\bfor (?:the|a) (?:first )?(?:h?dc|h?tr|sc|treble|double)\b"


# "ch3 at start = dc", "ch 4 at beg of row = dc + ch 1"
_EQUALS = r"\bch(?:ain)?\s?-?\s?\d+\s+at\s[^.;=]{0,12}\b(?:beg\w*|start)\b[^.;=]{0,24}=\s*(?:an?\s|1\s|first\s)?(?:h?dc|h?tr|sc|dtr)\b"


# "The ch 3 that opens a round is your first dc"
_IS_FIRST = r"(?<!\p{L})ch(?:ain)?s?\b[^.;:]{0,40}\b(?:is|are) (?:the|your|a|an|one|1) (?:first |1st )?(?:h?dc|h?tr|sc|htr|dtr|half|single|double|treble|triple)\b"


# "The ch 3 makes a sp; it is not counted as a st" is one sentence
_SENTENCES = expression(r"(?i)(?<=[.;])\s+(?!(?<=;\s+)(?:it|this|they|these|which)\b)|\n")


def countings(
    source: SourceText,
    layout: Layout,
    lexicon: Lexicon,
    vocabulary: Vocabulary,
    words: WordFile,
) -> list[tuple[int | None, Counting]]:
    """(length of the chain or None for any, note) for each sentence of the prose that speaks of counting.

    `words`: its `counts` and `counts_not` tell which sentences those are.
    """
    speaks = _speaks_of_counting(words)
    rows = [row.span for part in layout.parts for row in part.rows if row.label is not None]
    loose = [row.span for part in layout.parts for row in part.rows if row.label is None]
    found: list[tuple[int | None, Counting]] = []
    of_starts: list[tuple[int | None, Counting]] = []
    for span in [*running(source, layout.prose), *loose]:
        text = source.slice(span)
        text = text if span in loose else unbroken(text)
        if not speaks.search(text) or any(row.start <= span.start < row.end for row in rows):
            continue
        position = 0
        for sentence in _SENTENCES.split(text):
            at = text.find(sentence, position)
            position = at + len(sentence)
            sentence = _first_word_on_it(sentence, speaks)
            if not speaks.search(sentence):
                continue
            for start, end in _chain_by_chain(sentence):
                told = notes.global_countings(
                    Stream(_as_counts(lexicon.read(sentence[start:end], span.start + at + start)), vocabulary)
                )
                pieces = tuple(_pieces_named(sentence, layout))
                notes_here = [(length, replace(note, pieces=pieces)) for length, note in told]
                (of_starts if _OF_STARTS.search(sentence, start, end) else found).extend(notes_here)
    found = [one for one in found if not any(_gainsays(other, one) for other in of_starts)] + of_starts
    for span in rows:
        found += _told_in_a_row(source.slice(span), span.start, speaks, lexicon, vocabulary)
    return found


_OF_STARTS = expression(r"(?i)\b(?:beg\w*|start\w*|turn\w*|t-?ch)\b")


def _gainsays(of_a_start: tuple[int | None, Counting], other: tuple[int | None, Counting]) -> bool:
    """Whether a note on beginning chains says the opposite of one for a chain of that length anywhere.

    "The ch-1 at the start of a row does not count. Each ch-1 counts as a stitch": the second is for chains in the fabric.
    """
    (length, start), (same, note) = of_a_start, other
    return length == same and start.pieces == note.pieces and start.counts != note.counts


def _told_in_a_row(
    text: str, offset: int, speaks: Expression, lexicon: Lexicon, vocabulary: Vocabulary
) -> Iterator[tuple[int | None, Counting]]:
    """ "12 dc into ring (ch 3 counts as first dc throughout)": a rule for all rows that names its chain, within one."""
    for note in _BRACKETED.finditer(text):
        if speaks.search(note["inner"]):
            told = notes.global_countings(Stream(lexicon.read(note["inner"], offset + note.start("inner")), vocabulary))
            yield from ((length, one) for length, one in told if length is not None and one.throughout)
    for note in _NEVER.finditer(text):
        told = notes.global_countings(Stream(lexicon.read(note["inner"], offset + note.start("inner")), vocabulary))
        yield from ((length, replace(one, throughout=True)) for length, one in told if length is not None)


# "The ch 2 never counts." behind the first round's work
_NEVER = expression(
    r"(?:^|[.;]\s+)(?P<inner>(?:The|Each|Every|All|This)\s[^.;(),]{0,40}\b(?:never|always)\b[^.;(),]*)(?=[.;]|\s*$)"
)
_BRACKETED = expression(r"[(\[](?P<inner>[^()\[\]]{8,120})[)\]]")


# "3 ch counts as a tr, 1 ch does not count", "ch 3 counts as dc and ch 2 as hdc": what is said of the next chain
_NEXT_CHAIN = expression(
    r"(?i)(?:\s*[,;]\s*(?:(?:and|but|while)\s+)?|\s+(?:and|but|while)\s+)(?=(?:(?:a|the|any|beg|beginning|starting|turning)\s+)*"
    r"(?:(?:turning|beginning|starting)?\s?ch(?:ain)?s?\sof\s)?(?:ch(?:ain)?s?[ -]?\d|\d+[ -]?ch|(?<=\sof\s)\d)\b[^,;.]{0,40}?\b(?:as|counts?|does|do|is|are|never)\b)"
)


def _chain_by_chain(sentence: str) -> Iterator[tuple[int, int]]:
    """Where a sentence speaks of one chain after the other; chains whose verb comes later belong to it."""
    start = 0
    for cut in _NEXT_CHAIN.finditer(sentence):
        if expression(r"(?i)\b(?:as|counts?|count)\b").search(sentence[start : cut.start()]):
            yield start, cut.start()
            start = cut.end()
    yield start, len(sentence)


def _as_counts(lexemes: list[Lexeme]) -> list[Lexeme]:
    """The lexemes of "ch 2 as hdc", "3 ch at the beginning for the first tr", with "as" or "for" for the verb."""
    if any(item.kind in ("counts", "counts_not") or item.lower in ("counts", "count") for item in lexemes):
        return lexemes
    verb = next((word for word in ("as", "for", "=") if any(item.lower == word for item in lexemes)), "")
    is_first = next((at for at in range(len(lexemes)) if _is_a_stitch(lexemes, at)), None)
    if is_first is not None:
        return [replace(item, kind="counts") if at == is_first else item for at, item in enumerate(lexemes)]
    return [replace(item, kind="counts") if item.lower == verb else item for item in lexemes]


def _is_a_stitch(lexemes: list[Lexeme], at: int) -> bool:
    """Whether "is the first dc", "is a dc" stands at an index."""
    behind = at + 1
    while behind < len(lexemes) and lexemes[behind].lower in ("the", "your", "a", "an", "one", "1", "first", "1st"):
        behind += 1
    stitch = behind < len(lexemes) and lexemes[behind].kind == "stitch"
    stitch = stitch and not any(item.lower in ("high", "tall", "height") for item in lexemes[behind + 1 :])
    return lexemes[at].lower in ("is", "are") and behind > at + 1 and stitch


def _first_word_on_it(sentence: str, speaks: Expression) -> str:
    """The half of "counts in the rim and never counts in the lid" that names the chain: the other is for another piece."""
    for cut in _DENIED.finditer(sentence):
        first = sentence[: cut.start()]
        if speaks.search(first) and speaks.search(sentence, cut.end()):
            return first
    return sentence


_DENIED = expression(r"(?i)(?:\s*,)?\s+(?:and|but)\s+(?=(?:\w+\s){0,2}(?:not|never|no|n't)\b)")


def _pieces_named(sentence: str, layout: Layout) -> Iterator[str]:
    """Names of the parts that a note is for: "in the base", "On the sides,", "For body:"."""
    for name in dict.fromkeys(part.name for part in layout.parts):
        own = name.lower().strip(" :.-")
        before = r"\b(?:in|on|for|of|through)\s+(?:(?:the|both|all|each)\s+)?"
        named = own and own in sentence.lower()
        if named and expression(rf"(?i){before}{regex.escape(own)}s?\b(?!\s+of)", own_words=True).search(sentence):
            yield name
