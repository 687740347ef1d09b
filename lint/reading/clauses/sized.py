"""Clauses of a row that only some sizes work: "(size L only: sc2tog)", "2 sc in last st for sizes M and L"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import Amount
from lint.expression import expression
from lint.place import LimitKind, Which
from lint.reading.clauses.base import SEPARATORS, all_read
from lint.reading.clauses.placefirst import PlaceFirstClauses
from lint.reading.sizes.audience import Audience, SizeWords
from lint.reading.words.stream import CLOSERS, OPENERS
from lint.source import Span
from lint.tree import (
    MAKES_STITCHES,
    Chain,
    Evenly,
    Group,
    Passage,
    Remark,
    Repeat,
    Shaping,
    Skip,
    Step,
    Times,
    TimesKind,
    Unread,
    Work,
)

_WHOLE = (
    Work,
    Group,
    Chain,
    Skip,
    Repeat,
    Passage,
    Evenly,
    Shaping,
)  # steps that are a clause each, and can fall away alone
_SIZE = expression(r"(?i)\bsizes?\b")
_LONGEST = 14  # lexemes that name sizes: "for sizes 6-12 months, 12-18 months and 2 years only"


class SizedClauses(PlaceFirstClauses):
    """Words that say who works a clause; the other sizes pass it over."""

    def for_some_sizes(self, start: int, close: int) -> bool:
        """ "(size L only: sc in next 4 sts)": worked once by the sizes that are named, and not at all by the others."""
        stream = self.stream
        colon = next((i for i in range(start + 1, close) if stream.lexemes[i].kind == ":"), close)
        if colon == close:
            return False
        heard = self._heard(start + 1, colon)
        if heard is None or not heard.sure or not heard.sizes:
            return False
        items = self.read_inside(stream.inside(colon + 1, close))
        if not items or not all_read(items) or start and stream.lexemes[start - 1].kind not in SEPARATORS:
            return False  # "inc (L only: inc twice)" may be told instead of the clause before
        stream.at = close + 1
        self.steps.append(self._by(heard.sizes, stream.span_from(start), tuple(items)))
        return True

    def sizes_behind(self, start: int) -> bool:
        """ "2 sc in last st for size M only", "ch 4 (M and L only)": only these sizes work the clause before."""
        stream = self.stream
        if stream.vocabulary.sizes < 2 or not stream.vocabulary.size_names or not self.steps:
            return False
        if stream.kind() in OPENERS:
            close = stream.matching(start)
            found = self._heard(start + 1, close) if close is not None and close - start <= _LONGEST else None
            plural = stream.peek().glued  # "skip 1 (1, 2) st(s)"
            lettered = found is not None and any(item.text.isalpha() for item in stream.lexemes[start:close])
            end = close + 1 if found is not None and (found.sure or lettered and not plural) else start
        elif self.runs_on(start) and stream.word("for", "in", "size", "sizes", "except", "but", "not"):
            end, found = self._longest(start)
        else:
            return False
        if end == start:
            return False
        stream.at = end
        self._only_by(found, stream.span_from(start))
        return True

    def _longest(self, start: int) -> tuple[int, Audience | None]:
        """Where the words that name sizes end, up to a stop or a bracket, and whom they speak to."""
        stream = self.stream
        stops = (*SEPARATORS, *CLOSERS, *OPENERS, "turn", "join", "star")
        found: tuple[int, Audience | None] = start, None  # names that are not the pattern's, if no others are heard
        for end in range(min(start + _LONGEST, len(stream.lexemes)), start, -1):
            stopped = end == len(stream.lexemes) or stream.lexemes[end].kind in stops
            heard = self._heard(start, end) if stopped and stream.lexemes[end - 1].kind not in SEPARATORS else None
            if heard is None or not heard.sure or not (not stream.word("in") or _SIZE.search(stream.words(start, end))):
                continue
            found = end, heard
            if heard.every or heard.sizes:
                break
        return found

    def _heard(self, start: int, end: int) -> Audience | None:
        names = self.stream.vocabulary.size_names
        if self.stream.vocabulary.sizes < 2 or not names:
            return None
        return SizeWords(tuple(names)).audience(self.stream.words(start, end))

    def _only_by(self, heard: Audience | None, span: Span) -> None:
        """Says of the last step who works it."""
        last = self.steps[-1]
        if heard is not None and heard.every:
            self.steps.append(Remark(span))
        elif heard is not None and heard.sizes and heard.sure and isinstance(last, _WHOLE) and not self._ends_row():
            self.steps[-1] = self._worked_by(heard.sizes, last, Span(last.span.start, span.end))
        else:
            why = "which of the words before it the other sizes leave out is not known"
            self.steps.append(Unread(span, "only some sizes", why))

    def _ends_row(self) -> bool:
        """Whether "(M and L only)" stands behind "…, inc, sc to end", and so may be told of the whole row."""
        places = getattr(self.steps[-1], "places", ())
        run = places[-1] if places else None
        ends = run is not None and run.which is Which.EACH and (run.limit is None or run.limit.kind is LimitKind.END)
        return ends and any(isinstance(step, MAKES_STITCHES) for step in self.steps[:-1])

    def _worked_by(self, sizes: tuple[int, ...], step: Step, span: Span) -> Step:
        """The step with a dash for its number in the other sizes; once or not at all where it has no number."""
        if isinstance(step, (Work, Evenly, Shaping)):
            return replace(step, span=span, number=self._dashes(sizes, step.number))
        if isinstance(step, Chain):
            return replace(step, span=span, length=self._dashes(sizes, step.length))
        return self._by(sizes, span, (step,))

    def _dashes(self, sizes: tuple[int, ...], number: Amount) -> Amount:
        everyone = range(self.stream.vocabulary.sizes)
        return Amount(tuple(number.at(size) if size in sizes else None for size in everyone))

    def _by(self, sizes: tuple[int, ...], span: Span, items: tuple[Step, ...]) -> Repeat:
        once = Amount(tuple(int(size in sizes) for size in range(self.stream.vocabulary.sizes)))
        return Repeat(span, items, Times(span, TimesKind.IN_ALL, once))
