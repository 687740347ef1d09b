"""Restyles a whole pattern: every way in turn, each proved by working the result anew before the next is run."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from lint.house.loading import book_for
from lint.house.model import House
from lint.inspection import Report, Worked, work
from lint.restyle import WAYS, Way, listing, terms
from lint.restyle.edits import Edit, Kept, applied, settled
from lint.restyle.ground import Ground
from lint.rulebook import Rulebook
from lint.sameness import rows_that_differ
from lint.source import SourceText

_MOST_ROUNDS = 8  # a way may leave something for an earlier one
_SURE = {
    "us": ("sc", "hdc", "single crochet", "half double", "half double crochet"),
    "uk": ("htr", "half treble", "half treble crochet", "ttr", "qtr"),
}


class NotRestyled(Exception):
    """Nothing is given; the message says what stands in the way, and where."""


@dataclass(frozen=True, slots=True)
class Change:
    """One change: the line of the text, the words before and after, and the rule and subject of the house."""

    line: int
    old: str
    new: str
    rule: str
    subject: str


@dataclass(frozen=True, slots=True)
class Restyled:
    """A pattern in the house's form; `changes` in the order made, `kept` what wants a person's eye, by line."""

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
                line = self.report.source.line_of(row.row.span)
                self.kept.append((line, f"{row.row.label.words} is not understood, so its wording was left"))

    def keep(self, kept: Iterable[Kept]) -> None:
        self.kept += [(self.report.source.line_of(one.span), one.why) for one in kept]

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
        line = None
        if self.worked(text, "auto").terms.terms != self.house.terms:
            line = self.statement(text)
            text = text[: line[0]] + line[1] + text[line[0] :]
        after = self.worked(text, "auto")
        differing = rows_that_differ(self.report, after)
        if after.terms.terms != self.house.terms or differing is None or differing:
            where = ""
            if differing:
                where = f" ({self.report.ledger.rows[differing[0]].label} would come out otherwise)"
            raise NotRestyled(f"the pattern in {str(self.house.terms).upper()} terms does not make the same{where}")
        self.wanted = "auto"
        self.take(edits, after)
        if line is not None:
            self.changes.append(Change(after.source.position(line[0]).line, "", line[1].strip(), terms.RULE, "terms"))
        return True

    def statement(self, text: str) -> tuple[int, str]:
        """Where a line that tells the terms goes, and the line."""
        title = self.report.pattern.title_span
        at = text.find("\n", title.start) + 1 if title is not None else 0
        return at, f"{str(self.house.terms).upper()} terms.\n"

    def take(self, edits: list[Edit], after: Worked) -> None:
        before = self.report.source
        self.changes += [
            Change(before.line_of(edit.span), before.slice(edit.span), edit.new, edit.rule, edit.subject)
            for edit in edits
        ]
        self.text, self.report = after.source.text, after

    def spare(self, edits: list[Edit]) -> None:
        source = self.report.source
        self.kept += [
            (
                source.line_of(edit.span),
                f"“{source.slice(edit.span)}” was not made “{edit.new}”: the row would not come out the same",
            )
            for edit in edits
        ]
