"""A table over many patterns, a line each: an HTML page that can be sorted without a script, or CSV."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import PurePath
from urllib.parse import quote

from lint.reports import wording
from lint.reports.sheets import csv_text
from lint.reports.summary import Checked, Summary
from lint.reports.templating import environment

HEADINGS = (
    "File", "Pattern", "Verdict", "Score", "Corrections", "Queries", "Style notes", "Rows recomputed", "Of rows",
    "Sizes", "Terms", "Kind", "Not checked because",
)  # fmt: skip
NOT_CHECKED = "not checked"
KINDS = (".html", ".csv")


@dataclass(frozen=True, slots=True)
class Line:
    """A pattern in the table; `ranks` are its places under each way to sort, `group` its verdict in one word."""

    path: str
    link: str
    summary: Summary | None
    problem: str
    verdict: str
    group: str  # corrections | queries | ready | unchecked
    ranks: dict[str, int]


@dataclass(frozen=True, slots=True)
class Total:
    """How many patterns have a verdict."""

    group: str
    number: int
    words: str


_Key = Callable[[tuple[int, Checked]], tuple]
_WORST = {"": 0, "corrections": 1, "queries": 2, "ready": 3}


def _by_number(value: Callable[[Summary], float]) -> _Key:
    """Patterns that could not be checked stand first, wherever something is sorted by its worst."""
    return lambda item: (item[1].summary is not None, value(item[1].summary) if item[1].summary is not None else 0)


ORDERS: dict[str, tuple[str, _Key]] = {
    "given": ("file", lambda item: ()),
    "worst": (
        "verdict",
        lambda item: (_WORST[item[1].summary.verdict if item[1].summary is not None else ""], _score(item[1])),
    ),
    "title": ("pattern", lambda item: ((item[1].summary.title if item[1].summary else item[1].path).casefold(),)),
    "score": ("score", lambda item: (_score(item[1]),)),
    "corrections": ("most corrections", _by_number(lambda one: -one.corrections)),
    "queries": ("most queries", _by_number(lambda one: -one.queries)),
    "unread": ("most rows not recomputed", _by_number(lambda one: one.rows - one.of)),
}


def _score(one: Checked) -> float:
    return one.summary.score if one.summary is not None else -1.0


def index_file(checked: Sequence[Checked], path: str, pages: Sequence[str] = ()) -> Iterable[bytes]:
    """The table in the form that the end of a file's name asks for: .html or .csv; KeyError for any other.

    `pages`: the file of each pattern's page, where there are such; the table's lines then lead there.
    """
    if PurePath(path).suffix.lower() == ".csv":
        return [b"\xef\xbb\xbf" + csv_text([HEADINGS, *map(_row, checked)])]
    if PurePath(path).suffix.lower() != ".html":
        raise KeyError(path)
    links = [_link(path, page) for page in pages] or [""] * len(checked)
    return (text.encode("utf-8", "backslashreplace") for text in as_index(checked, links))


def as_index(checked: Sequence[Checked], links: Sequence[str]) -> Iterator[str]:
    """The page, a stretch at a time; a link of "" leads nowhere."""
    ranks: list[dict[str, int]] = [{} for _ in checked]
    for name, (_, key) in ORDERS.items():
        for rank, (at, _) in enumerate(sorted(enumerate(checked), key=key)):
            ranks[at][name] = rank
    lines = [_line(one, link, own) for one, link, own in zip(checked, links, ranks, strict=True)]
    orders = {name: words for name, (words, _) in ORDERS.items()}
    return (
        environment()
        .get_template("index.html")
        .generate(
            lines=sorted(lines, key=lambda line: line.ranks["worst"]),
            orders=orders,
            totals=totals(checked),
            large=False,
        )
    )


def totals(checked: Sequence[Checked]) -> tuple[Total, ...]:
    """How many patterns there are of each verdict, those that could not be checked last; none of those of which there are none."""
    groups = [one.summary.verdict if one.summary is not None else "unchecked" for one in checked]
    words = {**wording.VERDICTS, "unchecked": NOT_CHECKED}
    order = ("corrections", "queries", "ready", "unchecked")
    return tuple(Total(group, groups.count(group), words[group]) for group in order if group in groups)


_TOLD = {"corrections": "with corrections to make", "queries": "with queries to settle"}


def in_one_line(checked: Sequence[Checked]) -> str:
    """ "7 patterns: 3 with corrections to make, 4 ready"."""
    said = ", ".join(f"{total.number} {_TOLD.get(total.group, total.words)}" for total in totals(checked))
    return f"{len(checked)} pattern{'' if len(checked) == 1 else 's'}: {said}"


def _line(one: Checked, link: str, ranks: dict[str, int]) -> Line:
    summary = one.summary
    verdict = wording.VERDICTS[summary.verdict] if summary is not None else NOT_CHECKED
    group = summary.verdict if summary is not None else "unchecked"
    return Line(one.path, link if summary is not None else "", summary, one.problem, verdict, group, ranks)


def _row(one: Checked) -> tuple[str | int | None, ...]:
    it = one.summary
    if it is None:
        return (one.path, None, NOT_CHECKED, *(None,) * 9, one.problem)
    figures = (it.corrections, it.queries, it.style, it.rows, it.of, it.sizes)
    score = wording.as_figure(it.score)
    return (one.path, it.title, wording.VERDICTS[it.verdict], score, *figures, it.terms.upper(), it.kind, None)


def _link(index: str, page: str) -> str:
    """The way from the table to a pattern's page, as an address."""
    way = os.path.relpath(page, os.path.dirname(os.path.abspath(index)))
    return quote(PurePath(way).as_posix().encode("utf-8", "surrogateescape"))
