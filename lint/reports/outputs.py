"""The files that a check can write: OUTPUTS is the one registry.  Nothing is written here, only made.

Each is made in two steps.  What one pattern gives to it, its share, is made where the pattern is checked, be it in another
process: plain values (words, numbers, lists of them) that can travel and be kept.  All shares together make the file.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import asdict, dataclass
from enum import StrEnum
from typing import Any

from lint.documents.unreadable import Unreadable
from lint.grading import GradedLine, GradingTable
from lint.inspection import Report
from lint.reports.data import failure_as_data
from lint.reports.summary import Checked


class Output(StrEnum):
    """What can be asked for, by the name of its option."""

    SUMMARY = "summary"  # words for the terminal
    HTML = "html"
    PAGES = "pages"
    INDEX = "index"
    JSON = "json"
    DOCX = "docx"
    PDF = "pdf"
    SARIF = "sarif"
    CSV = "csv"
    XLSX = "xlsx"
    GRADING = "grading"


MARKS_THE_FILE = frozenset({Output.DOCX, Output.PDF})  # the pattern's own file, with marks
WITH_WORKINGS = frozenset({Output.HTML, Output.PAGES, Output.JSON})  # they tell how every count comes


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked of every pattern alike."""

    outputs: tuple[Output, ...] = ()
    terms: str = "auto"
    large: bool = False
    size: str | None = None  # as the maker of one size reads it
    several: bool = False  # more than one pattern may come: JSON is a list, HTML a page with an index

    @property
    def with_workings(self) -> bool:
        """Whether an output tells how every count comes, or only those that differ."""
        return not WITH_WORKINGS.isdisjoint(self.outputs)

    @property
    def marks_the_file(self) -> bool:
        """Whether the output is the pattern's own file, with marks."""
        return self in (Output.DOCX, Output.PDF)


@dataclass(frozen=True, slots=True)
class Job:
    """A file to be made: its path, and what every pattern gives to it, in the order in which they were named."""

    path: str
    asked: Asked
    checked: Sequence[Checked]
    pages: Sequence[str] = ()  # the file of each pattern's page, where there are such

    def shares(self, output: Output) -> Iterator[Any]:
        """What the patterns that could be checked give."""
        return (one.shares[output] for one in self.checked if one.summary is not None)

    @property
    def failures(self) -> list[dict[str, Any]]:
        """The entries of those that could not."""
        return [failure_as_data(one.path, one.problem) for one in self.checked if one.summary is None]


class WrongKind(Exception):
    """An output that cannot be made of what was given; the message is one sentence."""


@dataclass(frozen=True, slots=True)
class Made:
    """How an output is made: the share of one report (`anchor` tells it from all others), and the file of all shares."""

    share: Callable[[Report, bytes, Asked, str], Any]
    file: Callable[[Job], Iterable[bytes]] | None
    of_failures: Callable[[Job], bool] = lambda job: False  # whether it is made although nothing could be checked


def file_of(output: Output, job: Job) -> Iterable[bytes] | None:
    """An output as stretches of bytes; None where there is nothing to say.  May raise WrongKind."""
    made = OUTPUTS[output]
    if made.file is None or not (any(one.summary for one in job.checked) or made.of_failures(job)):
        return None
    return made.file(job)


def _bytes(text: str) -> bytes:
    return text.encode("utf-8", "backslashreplace")


# the page ---------------------------------------------------------------------------------------------------------


def _page(report: Report, raw: bytes, asked: Asked, anchor: str) -> Any:
    from lint.reports.page import as_page, as_part

    return as_part(report, f"{anchor}-") if asked.several else as_page(report, asked.large)


def _page_file(job: Job) -> Iterable[bytes]:
    from lint.reports.page import joined

    shares = list(job.shares(Output.HTML))
    return map(_bytes, joined(shares, job.asked.large)) if job.asked.several else [_bytes(shares[0])]


def _own_page(report: Report, raw: bytes, asked: Asked, anchor: str) -> str:
    from lint.reports.page import as_page

    return as_page(report, asked.large)


def _index_file(job: Job) -> Iterable[bytes]:
    from lint.reports.index import index_file

    return index_file(job.checked, job.path, job.pages)


# data -------------------------------------------------------------------------------------------------------------


def _json(report: Report, raw: bytes, asked: Asked, anchor: str) -> str:
    from lint.reports.data import as_data

    return _dumped(as_data(report))


def _json_file(job: Job) -> Iterator[bytes]:
    texts = (
        one.shares[Output.JSON] if one.summary is not None else _dumped(failure_as_data(one.path, one.problem))
        for one in job.checked
    )
    if not job.asked.several:
        yield _bytes(next(texts) + "\n")
        return
    before = b"["
    for text in texts:
        yield before + _bytes("\n " + text.replace("\n", "\n "))  # no line ends stand within JSON's words
        before = b","
    yield b"\n]\n" if before == b"," else b"[]\n"


def _dumped(data: Any) -> str:
    return json.dumps(data, indent=1, ensure_ascii=False)


def _sarif(report: Report, raw: bytes, asked: Asked, anchor: str) -> Any:
    from lint.reports.sarif import run_part

    return run_part(report)


def _sarif_file(job: Job) -> Iterable[bytes]:
    from lint.reports.sarif import joined

    return [_bytes(_dumped(joined(list(job.shares(Output.SARIF)), job.failures)) + "\n")]


def _words(report: Report, raw: bytes, asked: Asked, anchor: str) -> list[list[Any]]:
    from lint.reports.terminal import summary_lines

    return [[line.text, line.indent, line.head, line.style] for line in summary_lines(report)]


# tables -----------------------------------------------------------------------------------------------------------


def _csv(report: Report, raw: bytes, asked: Asked, anchor: str) -> Any:
    from lint.reports.sheets import ledger_lines

    return list(ledger_lines(report))


def _csv_file(job: Job) -> Iterator[bytes]:
    from lint.reports.sheets import LEDGER, csv_text

    yield b"\xef\xbb\xbf" + csv_text([LEDGER])
    for rows in job.shares(Output.CSV):
        yield csv_text(rows)


def _xlsx(report: Report, raw: bytes, asked: Asked, anchor: str) -> Any:
    from lint.reports.sheets import ledger_lines, point_lines

    return [list(ledger_lines(report)), list(point_lines(report))]


def _xlsx_file(job: Job) -> Iterable[bytes]:
    from lint.reports.sheets import workbook

    shares = list(job.shares(Output.XLSX))
    return [workbook(*((row for share in shares for row in share[at]) for at in (0, 1)))]


def _grading(report: Report, raw: bytes, asked: Asked, anchor: str) -> Any:
    from lint.reports.grading import titled

    ((title, table),) = titled([report])
    return [title, asdict(table)]


def _grading_file(job: Job) -> Iterable[bytes]:
    from lint.reports.grading import grading_file

    tables = [
        (title, GradingTable(tuple(table["sizes"]), tuple(map(_graded, table["lines"])), table["gauge"]))
        for title, table in job.shares(Output.GRADING)
    ]
    return [grading_file(tables, job.path)]


def _graded(line: dict[str, Any]) -> GradedLine:
    return GradedLine(**{**line, "values": tuple(line["values"])})


# the designer's own file, with notes --------------------------------------------------------------------------------


def _docx(report: Report, raw: bytes, asked: Asked, anchor: str) -> str:
    from lint.reports.marked import as_docx

    return _marked(as_docx, "docx", "--docx", report, raw, asked)


def _pdf(report: Report, raw: bytes, asked: Asked, anchor: str) -> str:
    from lint.reports.marked import as_pdf

    return _marked(as_pdf, "pdf", "--pdf-notes", report, raw, asked)


def _marked(
    make: Callable[[Report, bytes], bytes], kind: str, option: str, report: Report, raw: bytes, asked: Asked
) -> str:
    if asked.several:
        raise WrongKind(f"{option} marks one document at a time; name one .{kind} file")
    if report.source.origin is None or report.source.origin.kind != kind:
        raise WrongKind(f"{option} marks a .{kind} file, and {report.source.path} is none")
    try:
        return make(report, raw).decode("latin-1")
    except Unreadable as error:
        raise WrongKind(f"{report.source.path} {error}") from error


def _marked_file(output: Output) -> Callable[[Job], Iterable[bytes]]:
    return lambda job: [share.encode("latin-1") for share in job.shares(output)]


def _nothing(report: Report, raw: bytes, asked: Asked, anchor: str) -> None:
    return None


OUTPUTS: dict[Output, Made] = {
    Output.SUMMARY: Made(_words, None),
    Output.HTML: Made(_page, _page_file),
    Output.PAGES: Made(_own_page, None),  # a file for each, written as they come
    Output.INDEX: Made(_nothing, _index_file, lambda job: job.asked.several),
    Output.JSON: Made(_json, _json_file, lambda job: job.asked.several or job.path == "-"),
    Output.DOCX: Made(_docx, _marked_file(Output.DOCX)),
    Output.PDF: Made(_pdf, _marked_file(Output.PDF)),
    Output.SARIF: Made(_sarif, _sarif_file),
    Output.CSV: Made(_csv, _csv_file),
    Output.XLSX: Made(_xlsx, _xlsx_file),
    Output.GRADING: Made(_grading, _grading_file),
}
