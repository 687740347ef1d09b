"""Reads how the last pass of a repeat differs: "ending with …", "omitting last ch 2", "on the last time, … instead of …"."""

from __future__ import annotations

from dataclasses import replace

from lint.place import TargetKind
from lint.reading.clauses.base import all_read
from lint.reading.clauses.listrepeats import ListRepeats
from lint.reading.places.places import places
from lint.reading.repeating.endingatmark import ending_at_mark
from lint.reading.repeating.omitting import omit, without
from lint.reading.repeating.rowcalls import ends_with_row
from lint.reading.words import lastpass
from lint.reading.words.stream import SIGNS
from lint.tree import LastPlace, OpenWork, Remark, Repeat, RowCall, TimesKind, Work

_DONE_THERE = ("fasten_off", "no_fasten", "turn", "no_turn")


class EndingClauses(ListRepeats):
    """What is said of a repeat's end, behind it."""

    def read_ending(self, start: int) -> bool:
        stream = self.stream
        if ending_at_mark(stream, self.steps):
            return True
        if self.steps and isinstance(self.steps[-1], (RowCall, OpenWork)) and ends_with_row(stream):
            self.steps.append(Remark(stream.span_from(start)))
            return True
        stream.take()
        if stream.kind() == "(" and stream.kind(1) in ("last", "repeat") and (close := stream.matching(stream.at)):
            stream.at = close + 1  # "ending (last rep) with"
        of_last = any(item.kind in ("last", "repeat") for item in stream.lexemes[start : start + 4]) or "rep" in (
            stream.peek(-1).lower
        )
        stream.skip("last", "repeat", "with", "by", "the")
        if stream.word("without", "before"):
            return omit(stream, self.steps, start, self.read_inside)
        if stream.done or stream.kind() in (",", ";", "."):
            return False
        if self.into_turning_chain(start):
            return True
        if not (self.steps and isinstance(self.steps[-1], Repeat)):
            bare = (
                stream.kind() == "stitch"
                and stream.peek().value != "sl st"
                and stream.kind(1) in (*SIGNS, "end", "turn")
            )
            return not bare and self.clause()  # "hdc in next 6 sts, finish with sc": one, or all that are left?
        at = len(self.steps) - 1
        self.steps[at] = replace(self.steps[at], breaks_off=True)
        read = self.clause()
        if read and of_last and len(self.steps) == at + 2 and self.steps[at].times.kind is not TimesKind.FILL:
            self.steps[at] = lastpass.ending_in(self.steps[at], self.steps[at + 1])
        return read

    def into_turning_chain(self, start: int) -> bool:
        """ "dc in each dc, 1 bl, ending in 3rd ch of turning ch": where the last stitch of the clause before goes."""
        stream, at = self.stream, self.stream.at
        if stream.kind() != "in" or not self.steps or not isinstance(self.steps[-1], Work):
            return False
        found = places(stream)
        if len(found) != 1 or found[0].targets[0].kind not in (TargetKind.TURNING_CHAIN, TargetKind.CHAIN):
            stream.at = at
            return False
        self.steps.append(LastPlace(stream.span_from(start), found))
        return True

    def read_last_pass(self, start: int) -> bool:
        """ "At end of last rep, do not ch 2": what the last pass of the repeat before leaves out."""
        stream = self.stream
        if self._at_row_end(start):
            return True
        stream.take()
        stream.skip("the")
        if stream.take_if("ending"):
            stream.skip("of", "the")
        if not (stream.take_if("last") and stream.take_if("repeat", "times")):
            return False
        stream.take_if(",")
        if self.worked_instead():
            return True
        if stream.word("do") and stream.word("not", ahead=1):
            stream.take()
        elif stream.kind() != "omit":
            return False
        return omit(stream, self.steps, start, self.read_inside)

    def _at_row_end(self, start: int) -> bool:
        """Takes the "At end of Row 5," of "At end of Row 5, fasten off": when what makes no stitches is done."""
        stream = self.stream
        number = 2 if stream.kind(1) == "the" else 1
        told = stream.kind() == "at" and stream.kind(number) == "row_end" and stream.kind(number + 1) == "number"
        behind = number + 2 + (stream.kind(number + 2) == ",")
        if not told or stream.kind(behind) not in _DONE_THERE:
            return False
        stream.at += behind
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def read_after_row(self, start: int) -> bool:
        """Takes the "After Rnd 4," of "After Rnd 4, fasten off", "after the last round cut yarn": when it is done."""
        stream = self.stream
        if not stream.word("after"):
            return False
        stream.take()
        stream.skip("the")
        last = stream.take_if("last") is not None
        row = stream.take_if("row", "round") is not None
        told = row and (last or stream.take_if("number") is not None)
        stream.take_if(",")
        if not told or stream.kind() not in ("fasten_off", "no_fasten"):
            stream.at = start
            return False
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def worked_instead(self) -> bool:
        """ "on the last time, sl st to first dc instead of making a new dc": the last pass ends in another way."""
        stream = self.stream
        start, end = stream.at, stream.sentence_end(stream.at)
        instead = next((i for i in range(start, end) if stream.lexemes[i].lower in ("instead of", "instead")), None)
        last = self.steps[-1] if self.steps else None
        if instead is None or not isinstance(last, Repeat):
            return False
        skip = ("of", "make", "the", "next", "last")
        left = next((i for i in range(instead + 1, end) if stream.lexemes[i].kind not in skip), end)
        left += stream.lexemes[left].lower in ("new", "another") if left < end else 0
        kept = without(last.items, self.read_inside(stream.inside(left, end)))
        done = self.read_inside(stream.inside(start, instead))
        if kept is None or not done or not all_read(done):
            return False
        self.steps[-1] = replace(last, last_pass=kept)
        self.steps += done
        stream.at = end
        return True

    def read_omit(self, start: int) -> bool:
        return omit(self.stream, self.steps, start, self.read_inside)
