"""What every layer of the clause reader shares: the stream, the steps read so far."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lint.pattern import Stated
from lint.place import LimitKind, Place, Which
from lint.reading.repeating.loosestars import fold_loose
from lint.reading.words.shortlists import signs_as_commas
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.source import Span
from lint.tree import (
    Chain,
    Evenly,
    Group,
    Remark,
    Repeat,
    Step,
    Unread,
    Work,
    walk,
)

MOST_BRACKETS = 40  # deeper than any pattern; a text that goes on is not read further

SEPARATORS = (
    "…",
    ",",
    ";",
    ".",
    ":",
    "dash",
    "and",
    "then",
    "..",
    "...",
    "•",
    "·",
    "=",
    "→",
    "|",
    "●",
    "with?",
    "but",
    "!",
    '"',
)

STITCHY = {
    "stitch",
    "special",
    "one_stitch",
    "group_word",
    "chain",
    "increase",
    "decrease",
    "skip",
    "picot",
    "repeat",
    "number",
}


@dataclass
class Reading:
    """Steps read so far, the printed count met, and what is open."""

    steps: list[Step]
    stated: Stated | None = None
    gap: Place | None = None  # "working in sps between dc": what "sp" means in this row


def is_run(step: Step) -> bool:
    """Whether a step is one stitch in each place to the row's end."""
    run = step.places[-1] if isinstance(step, Work) and len(step.places) == 1 else None
    return run is not None and run.which is Which.EACH and (run.limit is None or run.limit.kind is LimitKind.END)


class ClauseBase:
    """Steps read so far in one row or bracket; the layers above read the sorts of clause."""

    def __init__(self, stream: Stream, reading: Reading, top: bool) -> None:
        self.stream = stream
        self.reading = reading
        self.steps = reading.steps
        self.top = top
        self.depth = 0  # brackets around these words
        self.loops_kept = False  # the row's words show that loops are kept on the hook, as in Tunisian crochet

    def runs_on(self, start: int) -> bool:
        """Whether the words at `start` hang on a clause before them without a stop: they may change what it means."""
        if not start or self.stream.lexemes[start - 1].kind in (*SEPARATORS, *OPENERS, "star"):
            return False
        counted = self.reading.stated.span.end if self.reading.stated is not None else -1
        closed = self.stream.lexemes[start - 1].kind in CLOSERS and self.stream.lexemes[start - 2].end == counted
        return not closed  # "30 sc (30) put the eyes …": the row's count ends its clauses

    def has_work(self) -> bool:
        return any(isinstance(step, (Work, Group, Evenly)) for step in walk(tuple(self.steps)))

    def stops_on_the_way(self) -> bool:
        """Whether the last work said goes into single places: "…, 1 sc in next, continue around" is more of the same."""
        last = next((step for step in reversed(self.steps) if isinstance(step, (Work, Group, Repeat))), None)
        listed = isinstance(last, Work) and not last.places and sum(isinstance(step, Work) for step in self.steps) > 1
        run = last.places[-1] if isinstance(last, (Work, Group)) and last.places else None
        ends = run and (run.which is not Which.EACH or run.limit and run.limit.kind is LimitKind.BEFORE)  # "to corner"
        return bool(ends) or listed  # "5 sc, 2 inc, continue around"

    def attach_counting(self, note, of_chain: bool = False) -> None:
        """Keeps what is said of a chain with it; `of_chain`: "(ch 2 does not count)" names it, wherever it stands."""
        first = next((i for i, step in enumerate(self.steps) if isinstance(step, Chain)), None)
        begins = first is not None and not any(isinstance(step, (Work, Group)) for step in self.steps[:first])
        last = len(self.steps) - 1
        if begins and first < last and self.steps[first].counting is None and self._names_first_chain(first, note.span):
            self.steps[first], self.steps[last:] = replace(self.steps[first], counting=note), []
            return
        if of_chain and begins and self.steps[first].counting is None:
            self.steps[first] = replace(self.steps[first], counting=note)
            return
        for index in range(len(self.steps) - 1, max(-1, len(self.steps) - 3), -1):
            step = self.steps[index]
            if isinstance(step, Chain) and step.counting is None:
                self.steps[index] = replace(step, counting=note)
                return
            if isinstance(step, Work) and step.closing is None:
                self.steps[index] = replace(step, closing=note)
                return
        self.steps.append(Remark(note.span, counting=note))

    def _names_first_chain(self, first: int, note: Span) -> bool:
        """Whether "Ch 3 counts as dc." behind a row's work is a sentence on the chain that the row begins with."""
        one, last = self.steps[first], self.steps[-1]
        if not isinstance(last, Chain) or last.length != one.length or last.counting is not None or not self.has_work():
            return False
        between = [item for item in self.stream.lexemes if last.span.end <= item.start < note.start]
        before = [item for item in self.stream.lexemes if item.end <= last.span.start][-1:]
        ends = self.stream.kind() in (".", ";", "end", *OPENERS)
        return ends and not between and [item.kind for item in before] in (["."], [";"])

    def run(self) -> None:
        raise NotImplementedError  # the last layer reads every sort of clause

    def colour(self) -> str | None:
        raise NotImplementedError  # the yarn layer reads colours

    def what_for(self, start: int) -> bool:
        raise NotImplementedError  # the layer of words reads what a row is for

    def more_places(self, found) -> bool:
        raise NotImplementedError  # the layer of places said first adds them to the stitch before

    def clause(self) -> bool:
        raise NotImplementedError

    def read_plain(self, start: int) -> bool:
        raise NotImplementedError  # the plain layer reads "work to last 2 sts"

    def read_inside(self, stream: Stream) -> list[Step]:
        """The steps of a bracket's words."""
        reading = Reading([])
        inner = type(self)(signs_as_commas(stream), reading, top=False)
        inner.depth = self.depth + 1
        inner.loops_kept = self.loops_kept
        if inner.depth > MOST_BRACKETS:
            span = stream.span_from_all()
            return [Unread(span, "(", f"more than {MOST_BRACKETS} brackets stand inside each other")]
        inner.run()
        return fold_loose(reading.steps)


def all_read(steps: list[Step]) -> bool:
    """Whether nothing in these steps is left unread."""
    return not any(isinstance(step, Unread) for step in walk(tuple(steps)))
