"""Testers' counts on the terminal: one line, or a summary to read."""

from __future__ import annotations

from collections.abc import Iterator

from lint.reports import wording
from lint.reports.terminal import write
from lint.reports.testers_page import ShownPoint, sentence_of, shown_review
from lint.testers.review import Review


def one_line(review: Review) -> str:
    """ "Alder Hat: 3 testers, 41 counts - 1 printed count is wrong by testers and recount."."""
    testers = len(review.testers)
    said = f"{testers} {'tester' if testers == 1 else 'testers'}, {len(review.judged)} counts"
    return wording.tame(f"{wording.title_of(review.report)}: {said} - {sentence_of(review)}")


def show(review: Review) -> None:
    """Print a summary to standard output, open points first."""
    for line in _lines(review):
        write(line)


def _lines(review: Review) -> Iterator[str]:
    shown = shown_review(review)
    yield shown.title
    yield shown.sentence
    yield from shown.summary
    for heading, points in (("Open points", shown.open), ("Testers' slips", shown.slips), ("Notes", shown.notes)):
        if points:
            yield ""
            yield f"{heading}:"
        for one in points:
            yield from _point(one)
    if shown.uncounted:
        yield ""
        yield f"Rows that nobody counted: {'; '.join(shown.uncounted)}"
    if review.unmatched:
        yield ""
        yield "What could not be matched:"
        yield from (f"  {one.place}: {one.what}: {one.why}" for one in review.unmatched)


def _point(one: ShownPoint) -> Iterator[str]:
    where = f" - {one.place}, line {one.line}" if one.place else ""
    size = f", size {one.sizes}" if one.sizes else ""
    who = f" ({one.testers})" if one.testers else ""
    yield f"  {one.title}{where}{size}{who}"
    if one.point.says:
        yield f"    {one.point.says}"
    if one.follow:
        yield f"    {one.follow} {'follows' if len(one.point.follow) == 1 else 'follow'} from this."
    for cause in one.point.causes:
        yield f"    {wording.could_it_be(cause)}"
    for reading in one.point.readings:
        yield f"    Could it be read so? {wording.opening(reading.words)}"
    if one.point.kind != "read-otherwise":
        for cause in one.point.likely[:2]:
            yield f"    Could it be? {cause.says}"
    for remark in one.point.remarks:
        yield f'    "{" ".join(remark.words.split())}" ({remark.who.tester}, {remark.place})'
