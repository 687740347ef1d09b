"""Reads the words of one row into steps, by recursive descent.  Never raises: what cannot be read
stays as an Unread step with the words that stopped it, and reading goes on at the next stop.

row     := clause ((","|";"|"."|"and"|dash) clause)*
clause  := chain | work | bracket | star | repeat | skip | join | yarn | turn | ring | loops | remark
bracket := "(" row ")" then a place (a group worked into it) or a number of times (a repeat)
star    := "*" … "rep from *" times        (folded in repeating.repeats)

The reader is built in layers, each a module of this folder: base, hand, tunisian, leftover, remark, skip, chain, yarn, finish,
evenly, shaping, cluster, edge, numberfirst, plain, alongside, placefirst, sized, bracket, motif, listrepeats, ending, otherwords, count,
opening; `sorts` lists every sort of clause in the order in which they are tried.
"""

from __future__ import annotations

from lint.reading.clauses.base import SEPARATORS, Reading, all_read
from lint.reading.clauses.opening import OpeningClauses
from lint.reading.clauses.prepared import prepared
from lint.reading.clauses.settled import settle
from lint.reading.clauses.sorts import readers_of
from lint.reading.repeating.loosestars import fold_loose
from lint.reading.words.linestops import without_short_stops
from lint.reading.words.shortlists import signs_as_commas
from lint.reading.words.stream import Stream
from lint.tree import Step, Unread

MOST_WORDS = 3_000  # of one row or definition: beyond this a text is something else, and reading it would take too long


def read_row(stream: Stream) -> Reading:
    """Read a whole row: all its words become steps, counts, or Unread steps."""
    reading = Reading([])
    if len(stream.lexemes) > MOST_WORDS:
        reading.steps = [_too_long(stream)]
        return reading
    stream, words, unfit = prepared(stream)
    parser = Clauses(stream, reading, top=True)
    parser.run()
    settle(reading, stream, words, unfit)
    return reading


def read_inside(stream: Stream) -> list[Step]:
    """Read the words inside a bracket (or of a definition)."""
    if len(stream.lexemes) > MOST_WORDS:
        return [_too_long(stream)]
    reading = Reading([])
    Clauses(signs_as_commas(without_short_stops(stream)), reading, top=False).run()
    return fold_loose(reading.steps)


def _too_long(stream: Stream) -> Unread:
    return Unread(stream.span_from_all(), stream.words(0, 12) + " …", "this is longer than any row is")


class Clauses(OpeningClauses):
    """Reads every sort of clause: the last layer."""

    def run(self) -> None:
        stream = self.stream
        if self.top and not stream.at:
            self.colour_first()
        while True:
            while stream.kind() in SEPARATORS:
                stream.take()
            if stream.done:
                return
            start = stream.at
            if self.count():
                continue
            if not self.clause():
                stream.at = max(stream.at, start)
                if not self.rest_told(start):
                    self.not_read(start)
            if stream.at == start:  # every turn takes something
                stream.take()

    def clause(self) -> bool:
        stream = self.stream
        start = stream.at
        for read in readers_of(stream.kind()):
            if read(self, start):
                return True
            stream.at = start
        return False


__all__ = ["Reading", "all_read", "read_inside", "read_row"]
