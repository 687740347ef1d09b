"""Cuts text into tokens with exact offsets.  The only module that imports spaCy."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

import regex

from lint.expression import expression

# One token is taken off the front at a time: a number, a word, a run of stars or dashes, or one sign
# (a variation selector behind it says how it is drawn, not which it is).
MARKS = "†‡#★☆✱✲✶⋆∗✽⁎※"  # beside the star, what a passage to be repeated is marked with
_TOKEN = expression(
    rf"\d+(?:\.\d+)?|\p{{L}}+(?:['’]\p{{L}}+)?|\*+|([{MARKS}])\1*|[-–—−=]*[-–—−=]>|[-–—−]+|\.{{2,}}|/{{2,}}|.[\uFE0E\uFE0F]?",
    regex.DOTALL,
)
_CHUNK = expression(r"\S{1,400}")  # no word is as long; a ruled line is, and would be copied for each of its signs
ARROWS = "→⇒⇢⇨⇾⟶⟹▶►▸➔➙➛➜➝➞➟➠➡➢➣➤➥➦➧➨➩➪➫➬➭➮➯➱➲➳➵➸➺➻➼➽➾"
# Cyrillic letters that look like Latin ones and are typed for them: "dс", "1 О sc".
LATIN = str.maketrans("асеорхАСЕОРХТКМНВ", "aceopxACEOPXTKMHB")  # noqa: RUF001
# Signs that mean the same, one character for one, so that offsets stay right.
_PLAIN = str.maketrans(
    LATIN
    | {"’": "'", "‘": "'", "–": "-", "—": "-", "−": "-", "“": '"', "”": '"', "″": '"', "İ": "I", "ı": "i"}
    | dict.fromkeys(
        map(chr, range(0xD800, 0xE000)), "\N{REPLACEMENT CHARACTER}"
    )  # halves of characters, which spaCy refuses
)


class Token(NamedTuple):
    """A token: its text, offsets in the source text, whether it touches the token before it, and it in lower case."""

    text: str
    start: int
    end: int
    glued: bool
    lower: str


class PhraseHit(NamedTuple):
    """Tokens first..last (exclusive) are a phrase of a kind."""

    first: int
    last: int
    kind: str
    value: str


@lru_cache(maxsize=1)
def _tokenizer():
    """A spaCy tokenizer on a bare vocabulary: no language data, no exceptions."""
    from spacy.attrs import LOWER, NORM
    from spacy.tokenizer import Tokenizer
    from spacy.vocab import Vocab

    vocab = Vocab(lex_attr_getters={LOWER: str.lower, NORM: str.lower})
    return Tokenizer(vocab, prefix_search=_TOKEN.match)


class PhraseBook:
    """Finds the phrases of a vocabulary in a line; the longest wins."""

    def __init__(self, phrases: Iterable[tuple[str, str, str]], beneath: PhraseBook | None = None) -> None:
        """`phrases`: (phrase, kind, value) in lower case; of two alike the first wins, and any before one `beneath`."""
        from spacy.matcher import PhraseMatcher

        tokenizer = _tokenizer()
        self._matcher = PhraseMatcher(tokenizer.vocab, attr="LOWER")
        self._beneath = beneath  # a large book that many share, so that a few phrases more cost little
        self._meaning: dict[str, tuple[str, str]] = {}
        self._single: dict[str, tuple[str, str]] = {}  # one word needs no matching
        for printed, kind, value in phrases:
            phrase = printed.translate(_PLAIN).lower()
            if _TOKEN.fullmatch(phrase):
                self._single.setdefault(phrase, (kind, value))
            elif phrase not in self._meaning:
                self._meaning[phrase] = (kind, value)
                self._matcher.add(phrase, [tokenizer(phrase)])

    def single(self, word: str) -> tuple[str, str]:
        """Kind and value of a phrase of one word; empty where it is none."""
        found = self._single.get(word)
        if found is None:
            return self._beneath.single(word) if self._beneath is not None else ("", "")
        return found

    def cut(self, text: str, offset: int = 0) -> tuple[list[Token], list[PhraseHit]]:
        """Tokens of a text that starts at `offset` of the source, and the phrases among them."""
        # spaCy makes tokens of odd white space, which would break phrases apart: it is shown single
        # spaces, and every token is put back where it stood.
        chunks = [match.span() for match in _CHUNK.finditer(text)]
        shown = " ".join([text[start:end] for start, end in chunks])
        shifts = [] if shown == text else _shifts(chunks)
        tokens: list[Token] = []
        words: list[str] = []  # in lower case, with plain signs
        shift, end_before = 0, -1
        doc = _tokenizer()(shown.translate(_PLAIN))
        for item in doc:
            start = item.idx
            while shifts and start >= shifts[-1][0]:
                shift = shifts.pop()[1]
            start += shift
            end = start + len(item)
            word = text[start:end]
            words.append(item.lower_)
            tokens.append(Token(word, offset + start, offset + end, start == end_before, word.lower()))
            end_before = end
        longest = self._longest(doc)
        hits: list[PhraseHit] = []
        index = 0
        while index < len(tokens):
            phrase = longest.get(index)
            if phrase is None or "\n" in text and _begins_anew(tokens[index : phrase[0]], text, offset):
                phrase = (index + 1, *self.single(words[index]))
            last, kind, value = phrase
            if kind:
                hits.append(PhraseHit(index, last, kind, value))
            index = last
        return tokens, hits

    def _longest(self, doc) -> dict[int, tuple[int, str, str]]:
        """The longest phrase of several words at each token: where it ends, its kind and value."""
        longest = self._beneath._longest(doc) if self._beneath is not None else {}
        strings = doc.vocab.strings
        own: dict[int, tuple[int, str, str]] = {}
        for match_id, first, last in self._matcher(doc):
            if first not in own or last > own[first][0]:
                own[first] = (last, *self._meaning[strings[match_id]])
        for first, phrase in own.items():
            if first not in longest or phrase[0] >= longest[first][0]:
                longest[first] = phrase
        return longest


def _shifts(chunks: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Where each chunk begins when single spaces part them, and how much further on it stands in the text; the last first."""
    found, begins = [], 0
    for start, end in chunks:
        found.append((begins, start - begins))
        begins += end - start + 1
    return found[::-1]


def _begins_anew(tokens: list[Token], text: str, offset: int) -> bool:
    """Whether a line begins with a capital within a phrase in small letters: "to end" and, below it, "Stitch count"."""
    gaps = zip(tokens, tokens[1:], strict=False)
    return tokens[0].text.islower() and any(
        "\n" in text[one.end - offset : two.start - offset] and two.text.istitle() for one, two in gaps
    )
