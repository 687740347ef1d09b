"""The designer's own document with a note at each point: comments in a .docx, highlights in a .pdf."""

from __future__ import annotations

from collections.abc import Iterator

from lint.documents.unreadable import Unreadable
from lint.finding import Finding, Weight
from lint.inspection import Report
from lint.reports import wording
from lint.reports.workings import sums_under

_COLOURS = {Weight.CORRECTION: (255, 196, 140), Weight.QUERY: (255, 236, 139), Weight.STYLE: (190, 220, 250)}


def as_docx(report: Report, raw: bytes) -> bytes:
    """A .docx, the bytes that the report was made of, with a comment at each finding; raises Unreadable."""
    from lint.documents.docxcomments import Comment, with_comments

    comments = [Comment(finding.span, tuple(_note(report, finding))) for finding in wording.in_order(report)]
    return with_comments(raw, _origin(report), comments)


def as_pdf(report: Report, raw: bytes) -> bytes:
    """A .pdf, the bytes that the report was made of, with a highlight and a note at each finding; raises Unreadable."""
    from lint.documents.pdfnotes import Note, with_notes

    notes = [
        Note(finding.span, "\n".join(_note(report, finding)), _COLOURS[finding.weight])
        for finding in wording.in_order(report)
    ]
    return with_notes(raw, _origin(report), notes)


def _origin(report: Report):
    if report.source.origin is None:
        raise Unreadable("is plain text, which takes no notes")
    return report.source.origin


def _note(report: Report, finding: Finding) -> Iterator[str]:
    """A finding as the paragraphs of a note."""
    title = wording.WEIGHTS[finding.weight].title
    place = wording.place_of(finding)
    yield wording.tame(f"{title}{f' ({place})' if place else ''}: {wording.message_of(finding)}")
    if finding.sizes:
        yield wording.tame(f"{wording.in_sizes(finding.sizes)}.")
    for size, words in sums_under(report, finding):
        yield wording.tame(f"How it comes{f' in {size}' if size else ''}: {words}")
    for cause in finding.likely:
        yield wording.tame(wording.could_it_be(cause))
    for other in finding.related:
        yield wording.tame(f"See {wording.where(report, other.span.start)}: {other.label}")
