"""Lexemes with a place among them: taken one by one, looked ahead at, their brackets matched."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.source import Span

OPENERS = {"(": ")", "[": "]", "{": "}"}
CLOSERS = {")", "]", "}"}
SIGNS = (",", ";", ".", *OPENERS, *CLOSERS, "star")  # what ends a clause


class Cursor:
    """Lexemes and a place among them; beyond the end stands a lexeme of kind "end".

    What the next lexeme is, is asked some hundred times for each that is taken: these questions call no other.
    """

    def __init__(self, lexemes: list[Lexeme]) -> None:
        self.lexemes = lexemes
        self.at = 0
        self._pairs: dict[int, int] | None = None  # brackets that close each other
        offset = lexemes[-1].end if lexemes else 0
        self._end = Lexeme("end", "", offset, offset, False)

    def peek(self, ahead: int = 0) -> Lexeme:
        index = self.at + ahead
        return self.lexemes[index] if 0 <= index < len(self.lexemes) else self._end

    def kind(self, ahead: int = 0) -> str:
        index = self.at + ahead
        return self.lexemes[index].kind if 0 <= index < len(self.lexemes) else "end"

    def take(self) -> Lexeme:
        at = self.at
        self.at = at + 1
        return self.lexemes[at] if 0 <= at < len(self.lexemes) else self._end

    def take_if(self, *kinds: str) -> Lexeme | None:
        at = self.at
        lexeme = self.lexemes[at] if 0 <= at < len(self.lexemes) else self._end
        if lexeme.kind not in kinds:
            return None
        self.at = at + 1
        return lexeme

    def skip(self, *kinds: str) -> None:
        """Pass over any lexemes of these kinds."""
        while self.kind() in kinds:
            self.at += 1

    def next_of(self, *kinds: str, start: int | None = None) -> int:
        """Index of the next lexeme of these kinds, from the cursor or `start`; the number of lexemes if there is none."""
        index = self.at if start is None else start
        while index < len(self.lexemes) and self.lexemes[index].kind not in kinds:
            index += 1
        return index

    def sentence_end(self, start: int, *stops: str) -> int:
        """Index of the first of `stops` outside brackets from `start` on, or of the bracket that closes around it."""
        depth = 0
        for index in range(start, len(self.lexemes)):
            kind = self.lexemes[index].kind
            if not depth and kind in OPENERS and kind in stops:
                return index
            depth += (kind in OPENERS) - (kind in CLOSERS)
            if depth < 0 or not depth and kind in stops:
                return index
        return len(self.lexemes)

    def word(self, *words: str, ahead: int = 0) -> bool:
        """Whether the next lexeme is one of these words, whatever its kind."""
        index = self.at + ahead
        return (self.lexemes[index] if 0 <= index < len(self.lexemes) else self._end).lower in words

    @property
    def done(self) -> bool:
        return self.at >= len(self.lexemes)

    def words(self, first: int, last: int) -> str:
        """Lexemes first..last (exclusive) as printed, with single spaces where any stood."""
        return "".join(
            (" " if index and not item.glued else "") + item.text for index, item in enumerate(self.lexemes[first:last])
        )

    def span_from(self, start: int) -> Span:
        """The stretch from lexeme index `start` to the last one taken."""
        last = max(start, min(self.at, len(self.lexemes)) - 1)
        if not self.lexemes:
            return Span(0, 0)
        first = self.lexemes[min(start, len(self.lexemes) - 1)]
        return Span(first.start, self.lexemes[min(last, len(self.lexemes) - 1)].end)

    def span_from_all(self) -> Span:
        """The stretch of all the lexemes."""
        return Span(self.lexemes[0].start, self.lexemes[-1].end) if self.lexemes else Span(0, 0)

    def matching(self, index: int) -> int | None:
        """Index of the bracket that closes the one at `index`, or None."""
        if self._pairs is None:
            self._pairs = {}
            open_at: list[int] = []
            for position, lexeme in enumerate(self.lexemes):
                if lexeme.kind in OPENERS:
                    open_at.append(position)
                elif lexeme.kind in CLOSERS and open_at:
                    if OPENERS[self.lexemes[open_at[-1]].kind] == lexeme.kind:
                        self._pairs[open_at.pop()] = position
                    else:
                        open_at.clear()  # none that is open here is closed in its turn
        return self._pairs.get(index)
