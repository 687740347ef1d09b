"""The report on the terminal: one line, or a summary to read.  In colour and wrapped only where somebody is looking."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lint.finding import Finding
from lint.inspection import Report
from lint.reports import wording
from lint.reports.rows import not_recomputed, what_stopped
from lint.reports.workings import sums_under

_STYLES = {"title": "bold", "Correction": "bold", "Query": "bold", "Style": "bold", "aside": "dim"}
_PLAIN_SIGNS = str.maketrans("“”‘’–—×\u00a0", "\"\"''--x ")


@dataclass(frozen=True, slots=True)
class Line:
    """A line of the summary: how far in it stands, and a head that is set off from what follows."""

    text: str
    indent: int = 0
    head: str = ""
    style: str = ""


def one_line(report: Report) -> str:
    """ "Brickfield Square: 1 correction, 2 queries; 7 of 7 rows recomputed; score 91.5 - corrections needed"."""
    score = wording.as_figure(report.grade.score)
    said = [
        wording.points(report),
        wording.rows_recomputed(report),
        f"score {score} - {wording.VERDICTS[report.grade.verdict]}",
    ]
    return wording.tame(f"{wording.title_of(report)}: {'; '.join(said)}")


def show(report: Report) -> None:
    """Print a summary to standard output."""
    show_lines(summary_lines(report))


def show_lines(lines: Sequence[Line]) -> None:
    """Print the lines of a summary to standard output."""
    if sys.stdout.isatty():
        _show_styled(lines)
    else:
        for line in lines:
            write(" " * line.indent + line.head + line.text)


def summary_lines(report: Report) -> tuple[Line, ...]:
    """The summary of a report, to be shown here or elsewhere."""
    return tuple(_summary(report))


def _summary(report: Report) -> Iterator[Line]:
    yield Line(wording.title_of(report), style="title")
    yield Line(report.grade.sentence)
    score = wording.as_figure(report.grade.score)
    yield Line(
        f"{wording.opening(wording.points(report))}. {wording.opening(wording.rows_recomputed(report))}. Score {score} of 100."
    )
    for note in wording.read_as(report):
        yield Line(f"{note}.")
    for finding in wording.in_order(report):
        yield Line("")
        yield from _finding(report, finding)
    rows = not_recomputed(report)
    if rows:
        yield Line("")
        yield Line("Not recomputed; nothing is said about these counts:", style="title")
    for row in rows:
        words, quoted = what_stopped(report, row)
        stopped = f'stopped at "{" ".join(words.split())}"' if quoted else words
        at = wording.where(report, row.first.span.start)
        yield Line(f"{row.first.part.name}, {row.label}, {at}: {stopped}", 2)
    yield Line("")
    if report.maker is not None:
        yield from _makers_text(report)


def _makers_text(report: Report) -> Iterator[Line]:
    """The pattern's words in one size, with the numbers of their lines; the lines for other sizes are empty."""
    yield Line(f"The pattern as size {report.maker} reads it:", style="title")
    lines = report.source.text.splitlines()
    for number, line in enumerate(lines, 1):
        if line.strip():
            yield Line(f"{number:>{len(str(len(lines)))}}  {line.rstrip()}")
    yield Line("")


def _finding(report: Report, finding: Finding) -> Iterator[Line]:
    position = report.source.position(finding.span.start)
    at = report.source.place(finding.span.start) or f"{position.line}:{position.column}"
    title = wording.WEIGHTS[finding.weight].title
    place = wording.place_of(finding)
    message = wording.message_of(finding)
    yield Line(f" - {place}: {message}" if place else f" - {message}", 0, f"{wording.opening(at)} {title}", title)
    if finding.sizes:
        yield Line(wording.in_sizes(finding.sizes), 4)
    for size, words in sums_under(report, finding):
        yield Line(f"How it comes{f' in {size}' if size else ''}: {words}", 4)
    for cause in finding.likely:
        yield Line(wording.could_it_be(cause), 4)
    for lines, label in wording.related_lines(report, finding):
        named = wording.listed([str(line) for line in lines])
        yield Line(f"See line{'s' if len(lines) > 1 else ''} {named}: {label}", 4, style="aside")


def _shown(text: str) -> str:
    """Text that standard output can take: plain signs for printers' ones, and question marks, where it must be."""
    encoding = sys.stdout.encoding or "utf-8"
    text = wording.tame(text)
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        text = text.translate(_PLAIN_SIGNS).encode(encoding, "replace").decode(encoding, "replace")
    return text


def write(text: str) -> None:
    """One line to standard output, in signs that it can take."""
    sys.stdout.write(_shown(text).rstrip() + "\n")


def _show_styled(lines: Sequence[Line]) -> None:
    from rich.console import Console
    from rich.padding import Padding
    from rich.text import Text

    console = Console(highlight=False, markup=False, emoji=False)
    for line in lines:
        style = _STYLES.get(line.style, "")
        text = Text(_shown(line.head or line.text), style)
        if line.head:
            text.append(_shown(line.text), "not bold")
        console.print(Padding(text, (0, 0, 0, line.indent), expand=False))
