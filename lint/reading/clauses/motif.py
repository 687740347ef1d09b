"""Reads what motifs, filet and lace say in few words: sides worked four times, meshes, rows named before their stitches."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.place import Limit, LimitKind, Place, Target, TargetKind, Which
from lint.reading.clauses.base import Reading, all_read
from lint.reading.clauses.bracket import BracketClauses
from lint.reading.places.places import places
from lint.reading.places.targets import of_a_row_below
from lint.reading.repeating import repeats
from lint.reading.repeating.rowcalls import names_rows, row_call
from lint.reading.repeating.times import times as read_times
from lint.reading.words.stream import OPENERS, SIGNS
from lint.tree import Group, Remark, Repeat, RowCall, Skip, Step, Times, TimesKind, Work

_TO_CORNER = Limit(LimitKind.BEFORE, target=Target(TargetKind.CORNER))
_FILET = {"bl": "block", "bls": "block", "sp": "space", "sps": "space", "space": "space", "spaces": "space"}


class MotifClauses(BracketClauses):
    """Clauses that only motifs and flat work have."""

    def motif_clause(self, start: int) -> bool:
        """Any of them at the cursor; where none is, the cursor stays."""
        stream = self.stream
        readers = {
            "number": (self.sides_so_often, self.meshes),
            "in": (self.into_a_row_below,),
            "from": (self.into_a_row_below,),
            "row": (self.more_rows, self.colour_of_rows),
            "round": (self.more_rows, self.colour_of_rows),
            "ordinal": (self.more_rows,),
            "word": (self.more_rows, self.stitch_over_so_many),
            "counts": (self.multiple_counted,),
        }
        for read in readers.get(stream.kind(), ()):
            if read(start):
                return True
            stream.at = start
        return False

    def sides_so_often(self, start: int) -> bool:
        """ "(tr, ch 2, tr) in corner, then tr across. 4 times.": a side with its corner, as a sentence of its own says."""
        stream = self.stream
        if not start or stream.lexemes[start - 1].kind not in (".", ";") or repeats.open_star(self.steps):
            return False
        often = read_times(stream)
        if often is None or often.number is None or stream.kind() not in (".", ",", ";", "end"):
            return False
        worked = [
            isinstance(s, (Group, Repeat, Skip)) or isinstance(s, Work) and s.stitch != "sl st" for s in self.steps
        ]
        first = worked.index(True) if any(worked) else None
        body = tuple(self.steps[first:]) if first is not None else ()
        named = [place.targets[0] for s in body if isinstance(s, (Work, Group)) for place in s.places]
        corner = any(target.kind is TargetKind.CORNER or target.corner for target in named)
        if not corner or not all_read(list(body)):
            return False
        span = body[0].span.to(stream.span_from(start))
        kind = TimesKind.IN_ALL if often.kind is TimesKind.UNCLEAR else often.kind
        sides = tuple(_to_corner(step) for step in body)
        self.steps[first:] = [Repeat(span, sides, replace(often, kind=kind))]
        return True

    def meshes(self, start: int) -> bool:
        """ "4 more sps, 1 bl, 3 sps": units of filet, which only the pattern's own definition makes stitches of."""
        stream = self.stream
        number = stream.amount()
        stream.skip("more")
        name = _FILET.get(stream.peek().lower) if stream.kind() in ("space", "back_loop") else None
        if number is None or name is None or stream.kind(1) not in (*SIGNS, "end", "and"):
            return False
        stream.take()
        self.steps.append(Work(stream.span_from(start), name, number, undefined=True, number_said=True))
        return True

    def into_a_row_below(self, start: int) -> bool:
        """ "on 2nd row below, sk next sc, FPdc around next sc;": where the stitches up to the next stop go."""
        stream = self.stream
        if not of_a_row_below(stream) or stream.kind() not in (",", ":"):
            return False
        items: list[Step] = []
        sub = type(self)(stream, Reading(items), top=False)
        while stream.kind() in (",", ":", "and", "then"):
            stream.take()
            at = stream.at
            if stream.kind() in ("in", "telling") or not sub.clause():
                stream.at = at
                break
        if not any(isinstance(item, Work) for item in items) or not all(
            isinstance(item, (Work, Skip)) for item in items
        ):
            return False
        for item in items:
            if isinstance(item, Skip):  # in that row, which is not the one that is used up
                self.steps.append(Remark(item.span))
            else:
                there = tuple(replace(place, below=True) for place in item.places)
                self.steps.append(replace(item, places=there))
        return True

    def more_rows(self, start: int) -> bool:
        """ "Rep R3 twice, then R5 twice", "…, then 3rd round twice": rows called for after others."""
        called = bool(self.steps) and isinstance(self.steps[-1], RowCall)
        return called and names_rows(self.stream) and row_call(self.stream, self.steps, start)

    def colour_of_rows(self, start: int) -> bool:
        """ "Rows 1-2 Cream": a line of a colour table."""
        stream = self.stream
        stream.take()
        while stream.kind() in ("number", "dash", "and", "to"):
            stream.take()
        numbered = stream.kind(-1) == "number"
        words = stream.lexemes[stream.at :]
        names = [item for item in words if item.kind in ("word", "the", "ring") and item.text[:1].isupper()]
        if not numbered or start or not 0 < len(words) <= 3 or len(names) != len(words):
            return False
        stream.at = len(stream.lexemes)
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def stitch_over_so_many(self, start: int) -> bool:
        """ "DecCluster (uses next three ch sp)": what a name takes up is said where it stands, and it is one stitch."""
        stream = self.stream
        name = stream.take().text
        close = stream.matching(stream.at) if stream.kind() in OPENERS else None
        if close is None or not stream.word("uses", "using", ahead=1):
            return False
        inner = stream.inside(stream.at + 2, close)
        found = places(inner, bare=True)
        if len(found) != 1 or not inner.done or found[0].which is not Which.NEXT:
            return False
        stream.at = close + 1
        together = tuple(replace(place, shared=True) for place in found)
        self.steps.append(Work(stream.span_from(start), name.lower(), ONE, together))
        return True

    def multiple_counted(self, start: int) -> bool:
        """ "Count 12 + 3": a multiple under another name."""
        stream = self.stream
        if start or not stream.word("count") or [stream.kind(i) for i in (1, 2, 3)] != ["number", "+", "number"]:
            return False
        stream.at += 4
        if stream.kind() not in (".", "end"):
            return False
        self.steps.append(Remark(stream.span_from(start)))
        return True


def _to_corner(step: Step) -> Step:
    """A run "across" within a side, which ends at the next corner."""
    if isinstance(step, Work) and step.places:
        return replace(step, places=tuple(_place_to_corner(place) for place in step.places))
    if isinstance(step, Repeat) and step.times.kind is TimesKind.FILL and _to_end(step.times.limit):
        return replace(step, times=Times(step.times.span, TimesKind.FILL, limit=_TO_CORNER))
    return step


def _place_to_corner(place: Place) -> Place:
    run = place.which is Which.EACH and _to_end(place.limit)
    return replace(place, limit=_TO_CORNER) if run else place


def _to_end(limit: Limit | None) -> bool:
    return limit is None or limit.kind is LimitKind.END
