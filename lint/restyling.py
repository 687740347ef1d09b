"""Restyles a whole pattern: every way in turn, each proved by working the result anew before the next is run."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from lint.house.loading import book_for
from lint.house.model import House
from lint.inspection import Report, Worked, work
from lint.restyle import WAYS, Way, listing, terms
from lint.restyle.edits import Edit, Kept, applied, lines_before, settled
from lint.restyle.ground import Ground
from lint.rulebook import Rulebook
from lint.sameness import rows_that_differ
from lint.source import SourceText, Span

_MOST_ROUNDS = 8  # a way may leave something for an earlier one
_SURE = {
    "us": ("sc", "hdc", "single crochet", "half double", "half double crochet"),
    "uk": ("htr", "half treble", "half treble crochet", "ttr", "qtr"),
}


class NotRestyled(Exception):
    """Nothing is given; the message says what stands in the way, and where."""


@dataclass(frozen=True, slots=True)
class Change:
    """One change: the line of the text as it was given, the words before and after, and the house's rule and subject."""

    line: int
    old: str
    new: str
    rule: str
    subject: str


@dataclass(frozen=True, slots=True)
class Restyled:
    """A pattern in the house's form; `changes` in the order made, `kept` what wants a person's eye, by line as given."""

    text: str
    changes: tuple[Change, ...]
    kept: tuple[tuple[int, str], ...]


def ground_of(report: Report | Worked, house: House) -> Ground:
    """A pattern as it was inspected, as the ground of a house's ways."""
    return Ground(report.source, report.pattern, report.terms, report.lexicon, report.book, house)


def restyle(source: SourceText, house: House, book: Rulebook, wanted_terms: str = "auto") -> Restyled:
    """A pattern's text in the house's form.  Raises NotRestyled where that can't be done for certain."""
    work = _Work(source, house, book_for(house, book), wanted_terms)
    work.check_terms()
    for _ in range(_MOST_ROUNDS):
        if not any([work.run(way) for way in WAYS]):
            break
    work.name_unread()
    work.keep(listing.kept(ground_of(work.report, house)))
    return Restyled(work.text, tuple(work.changes), tuple(dict.fromkeys(work.kept)))


class _Work:
    def __init__(self, source: SourceText, house: House, book: Rulebook, wanted_terms: str) -> None:
        self.source, self.house, self.book, self.wanted = source, house, book, wanted_terms
        self.text = source.text
        self.report = self.worked(self.text)
        self.changes: list[Change] = []
        self.kept: list[tuple[int, str]] = []
        self.given_up: set[Way] = set()
        self.lines = list(range(1, self.text.count("\n") + 2))  # of each line now: its number in the text as given

    def worked(self, text: str, wanted: str | None = None) -> Worked:
        return work(SourceText(text, self.source.path), self.book, wanted or self.wanted)

    def check_terms(self) -> None:
        """Refuses where nobody can tell which stitches the pattern's names mean."""
        ground = ground_of(self.report, self.house)
        own = self.report.terms
        if self.house.terms in (None, own.terms):
            return
        words = {lexeme.lower for lexeme in ground.document}
        if self.wanted == "auto" and not own.said and not words & set(_SURE[own.terms]):
            raise NotRestyled(
                "the pattern does not say whether its stitch names are US or UK, and its names are used in both; "
                "say it with --terms"
            )
        span = terms.mixed(ground)
        if span is not None:
            older = " (older British patterns print sc for the slip stitch)"
            older = older if self.source.slice(span).lower() == "sc" and own.terms == "uk" else ""
            words = " ".join(self.source.slice(span).split())  # "d c" may be cut by a line's end
            raise NotRestyled(
                f"line {self.source.line_of(span)}: “{words}” is no name of {own.terms.upper()} terms, "
                f"in which the rest is read; settle which stitch it is first{older}"
            )
        self.keep(terms.kept(ground))

    def name_unread(self) -> None:
        """Rows that are not understood keep their wording; they are named, for a person's eye."""
        for row in ground_of(self.report, self.house).rows:
            if not row.certain and row.row.label is not None:
                self.kept.append(
                    (self.line(row.row.span), f"{row.row.label.words} is not understood, so its wording was left")
                )

    def keep(self, kept: Iterable[Kept]) -> None:
        self.kept += [(self.line(one.span), one.why) for one in kept]

    def line(self, span: Span) -> int:
        """The line of a stretch of the present text, as it is numbered in the text that was given."""
        return self.lines[self.report.source.line_of(span) - 1]

    def run(self, way: Way) -> bool:
        """Runs one way; what changes the fabric is left as it was.  Gives whether anything changed."""
        if way in self.given_up:
            return False
        edits = settled(self.text, way(ground_of(self.report, self.house)))
        if not edits:
            return False
        if way is terms.edits:
            return self.change_terms(edits)
        safe, after = self.safe(edits)
        spared = [edit for edit in edits if edit not in safe]
        if spared:
            self.spare(spared)
            self.given_up.add(way)  # what was spared would only be tried again
        if safe:
            self.take(safe, after)
        return bool(safe)

    def safe(self, edits: list[Edit]) -> tuple[list[Edit], Worked]:
        """The edits under which every row makes the same, and the text worked with them.

        A row that would come out otherwise loses its edits; where it is not clear which row that is, halves are tried.
        """
        after, differing = self.tried(edits)
        if differing == []:
            return edits, after
        if differing:
            spans = [self.report.ledger.rows[index].row.span for index in differing]
            left = [edit for edit in edits if not any(s.start <= edit.span.start < s.end for s in spans)]
            after, differing = self.tried(left)
            if differing == []:
                return left, after
        return self.safe_halves([], self.by_row(edits))

    def safe_halves(self, sure: list[Edit], groups: list[list[Edit]]) -> tuple[list[Edit], Worked]:
        """As `safe`, by trying the groups together with those that are sure, and each half apart where that fails."""
        together = settled(self.text, [*sure, *(edit for group in groups for edit in group)])
        after, differing = self.tried(together)
        if differing == []:
            return together, after
        if len(groups) == 1:
            return sure, self.tried(sure)[0]
        half = len(groups) // 2
        sure, after = self.safe_halves(sure, groups[:half])
        return self.safe_halves(sure, groups[half:])

    def by_row(self, edits: list[Edit]) -> list[list[Edit]]:
        """Edits that stand in one row together, and each of the others alone."""
        spans = [row.span for part in self.report.pattern.parts for row in part.rows]
        groups: dict[int, list[Edit]] = {}
        for edit in edits:
            row = next((at for at, span in enumerate(spans) if span.start <= edit.span.start < span.end), -1)
            groups.setdefault(row if row >= 0 else -2 - edit.span.start, []).append(edit)
        return list(groups.values())

    def tried(self, edits: list[Edit]) -> tuple[Worked, list[int] | None]:
        after = self.worked(applied(self.text, edits), self.terms_now())
        return after, rows_that_differ(self.report, after)

    def terms_now(self) -> str:
        return self.wanted if self.wanted == "auto" else self.report.terms.terms

    def change_terms(self, edits: list[Edit]) -> bool:
        """Changes the terms, all of them or none; a text that then would not be known for its terms is told them."""
        text = applied(self.text, edits)
        if self.worked(text, "auto").terms.terms != self.house.terms:
            line = self.statement()
            edits = settled(self.text, [*edits, line])
            text = applied(self.text, edits)
            self.keep([Kept(line.span, "the line that tells the terms was put in; it stays if they are changed back")])
        after = self.worked(text, "auto")
        differing = rows_that_differ(self.report, after)
        if after.terms.terms != self.house.terms or differing is None or differing:
            where = ""
            if differing:
                where = f" ({self.report.ledger.rows[differing[0]].label} would come out otherwise)"
            raise NotRestyled(f"the pattern in {str(self.house.terms).upper()} terms does not make the same{where}")
        self.wanted = "auto"
        self.take(edits, after)
        return True

    def statement(self) -> Edit:
        """A line under the title, or at the head, that tells the terms."""
        title = self.report.pattern.title_span
        at = self.text.find("\n", title.start) + 1 if title is not None else 0
        return Edit(Span(at, at), f"{str(self.house.terms).upper()} terms.\n", terms.RULE, "terms")

    def take(self, edits: list[Edit], after: Worked) -> None:
        before = self.report.source
        self.changes += [
            Change(self.line(edit.span), before.slice(edit.span), edit.new, edit.rule, edit.subject) for edit in edits
        ]
        self.lines = [self.lines[line - 1] for line in lines_before(before, edits)]
        self.text, self.report = after.source.text, after

    def spare(self, edits: list[Edit]) -> None:
        source = self.report.source
        self.kept += [
            (
                self.line(edit.span),
                f"“{source.slice(edit.span)}” was not made “{edit.new}”: the row would not come out the same",
            )
            for edit in edits
        ]
