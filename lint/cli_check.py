"""The command frogproof check: patterns one after the other or side by side, and the files that come of them."""

from __future__ import annotations

import gc
import os
import signal
import sys
from collections.abc import Iterator, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Any

import click

from lint.cli_house import Tools
from lint.documents.inputs import find
from lint.documents.registry import READERS
from lint.rulefolder import RuleFileError
from lint.writing import make_folder, refuse_unwritable, write_files

_FILE = click.Path(dir_okay=False)
_KINDS = [reader.kind for reader in READERS]
_FILES = ("html", "json", "index", "docx", "pdf", "sarif", "csv", "xlsx", "grading")  # options that name a file


def add_check(group: click.Group, tools: Tools) -> None:
    """Add the command to the command's group."""

    @group.command()
    @click.argument("paths", nargs=-1, required=True)
    @click.option(
        "--terms",
        type=click.Choice(["us", "uk", "auto"]),
        default="auto",
        help="Stitch names: US, UK, or found from the pattern.",
    )
    @click.option("--html", type=_FILE, help="Write the report as one HTML file.")
    @click.option("--large-print", "large", is_flag=True, help="HTML files open in large print, black on white.")
    @click.option("--json", help="Write the report as JSON; - for standard output.")
    @click.option("--docx", type=_FILE, help="Write the .docx again, with a comment at each point.")
    @click.option(
        "--pdf-notes", "pdf", type=_FILE, help="Write the .pdf again, with a highlight and note at each point."
    )
    @click.option("--sarif", type=_FILE, help="Write the points as SARIF 2.1.0.")
    @click.option("--csv", type=_FILE, help="Write the ledger of rows and rounds as CSV.")
    @click.option("--xlsx", type=_FILE, help="Write the ledger and the points as a workbook.")
    @click.option("--grading", type=_FILE, help="Write every count in every size as a table: FILE.csv, .xlsx or .html.")
    @click.option("--index", type=_FILE, help="Write a table over all patterns, a line each: FILE.html or .csv.")
    @click.option(
        "--pages", type=click.Path(file_okay=False), help="Write each pattern's own page into a folder, with an index."
    )
    @click.option(
        "--house",
        help="Hold them to a house file; without it, to the house.yaml beside each pattern or above it in FOLDER, if any.",
    )
    @click.option("--size", help="Show the pattern as the maker of one size reads it: its words, rows and points.")
    @click.option("--no-house", is_flag=True, help="Hold them to no house.")
    @click.option(
        "--kind", "kinds", multiple=True, type=click.Choice(_KINDS), help="Of folders, only files of this kind."
    )
    @click.option(
        "--ignore", multiple=True, metavar="WHAT", help='Of folders, leave out what fits: "drafts/", "*-old.txt".'
    )
    @click.option(
        "--jobs", type=click.IntRange(min=0), default=1, help="Patterns checked side by side; 0: one for each core."
    )
    @click.option("--cluster", metavar="ADDRESS", help="Check on the dask cluster with this scheduler.")
    @click.option(
        "--cache",
        type=click.Path(file_okay=False),
        help="Keep results in a folder; what has not changed is not checked again.",
    )
    @click.option(
        "--fail-on",
        type=click.Choice(["correction", "query", "never"]),
        default="correction",
        help="The lightest point that gives exit status 1.",
    )
    def check(paths: tuple[str, ...], **options: Any) -> None:
        """Check patterns: files (.docx .odt .rtf .pdf .html .md .txt), folders of them, or - for standard input.

        Exit status: 0 no correction found (--fail-on says what else counts), 1 at least one, 2 something could not be done.
        """
        gc.disable()  # nothing that loading makes is garbage, and looking for some costs a tenth of the start
        sys.exit(_Run(tools, paths, options).run())


class _Run:
    """One call of the command."""

    def __init__(self, tools: Tools, paths: tuple[str, ...], options: dict[str, Any]) -> None:
        from lint.batch.pages import INDEX, page_paths
        from lint.batch.task import Houses
        from lint.reports.outputs import Asked, Output

        self.tools, self.options = tools, options
        book = tools.book()
        self.found = list(find(paths, _suffixes(options["kinds"]), options["ignore"]))
        self.houses = Houses(book, _named_house(tools, options["house"], book), options["no_house"])
        self.files = {path: Output(name) for name in _FILES if (path := options[name])}
        if len(self.files) < sum(bool(options[name]) for name in _FILES):
            tools.refuse("two outputs cannot go to one file")
        self.pages: list[str] = []
        if folder := options["pages"]:
            self.pages = page_paths(folder, self.found)
            self.files |= {os.path.join(folder, name): Output.INDEX for name in INDEX}
        wanted = [*self.files.values(), *([Output.PAGES] if self.pages else [])]
        several = len(self.found) != 1 or len(paths) > 1
        self.asked = Asked(
            tuple(wanted) or (Output.SUMMARY,), options["terms"], options["large"], options["size"], several
        )
        self.checked: list = []

    def run(self) -> int:
        """Check all, write what is asked for, and give the exit status."""
        from lint.reports.outputs import WrongKind

        self._refuse_early()
        try:
            with _stops_told(), ExitStack() as stack:
                step = stack.enter_context(_progress(len(self.found)))
                for number, one in enumerate(self._results(stack)):
                    self._show(number, one)
                    step()
            self._write()
        except WrongKind as error:
            self.tools.refuse(str(error))
        except KeyboardInterrupt:
            self.tools.refuse(self._finished())
        if self.asked.several and len(self.found) > 1 and not self._speaks:
            from lint.reports.index import in_one_line
            from lint.reports.terminal import write

            write(in_one_line(self.checked))
        if any(one.summary is None for one in self.checked):
            return 2
        weight = self.options["fail_on"]
        return int(weight != "never" and any(one.summary.reaches(weight) for one in self.checked))

    @property
    def _speaks(self) -> bool:
        """Whether standard output belongs to a file that is written to it."""
        return "-" in self.files

    def _refuse_early(self) -> None:
        """What cannot be written, in a line and before any pattern is read."""
        from lint.reports import grading, index
        from lint.reports.outputs import MARKS_THE_FILE

        if self.options["size"] is not None and not MARKS_THE_FILE.isdisjoint(self.files.values()):
            self.tools.refuse("--docx and --pdf-notes mark the file as it is, for all sizes; leave --size out")

        for name, kinds in (("grading", grading.KINDS), ("index", index.KINDS)):
            path = self.options[name]
            if path and not path.lower().endswith(kinds):
                what = "a grading table" if name == "grading" else "an index"
                self.tools.refuse(f"{path}: {what} is written as {', '.join(kinds[:-1])} or {kinds[-1]}")
        if folder := self.options["pages"]:
            make_folder(Path(folder))
        refuse_unwritable(self.files, self._inputs)
        held = {os.path.realpath(path) for path in self._inputs}
        for page in self.pages:
            if os.path.realpath(page) in held:
                self.tools.refuse(f"{page}: that is one of the patterns; name another folder for the pages")

    @property
    def _inputs(self) -> list[str | Path]:
        named = self.options["house"]
        return [*(one.path for one in self.found), *self.houses.files, *([named] if named else [])]

    def _results(self, stack: ExitStack) -> Iterator[Any]:
        from lint.batch.keeping import Kept
        from lint.batch.running import results
        from lint.batch.task import tasks_of

        jobs = self.options["jobs"] or -1
        if self.options["cluster"]:
            _enter_cluster(stack, self.options["cluster"], self.tools)
        kept = Kept(Path(self.options["cache"]), self.asked) if self.options["cache"] else None
        return results(tasks_of(self.found, self.houses), self.asked, jobs, kept)

    def _show(self, number: int, one: Any) -> None:
        """Tell what came of a pattern, write its page, and keep of it what the files are made of."""
        from lint.reports.outputs import Output
        from lint.reports.terminal import Line, show_lines, write

        words, page = one.shares.pop(Output.SUMMARY, None), one.shares.pop(Output.PAGES, None)
        self.checked.append(one)
        if one.summary is None:
            click.echo(f"{one.path}: {one.problem}", err=True)
            return
        if page is not None:
            make_folder(Path(self.pages[number]).parent)
            write_files({self.pages[number]: page}, self._inputs if not number else ())
        several = len(self.found) > 1  # drafts of one pattern have one title: then the file tells them apart
        if words is not None:
            title, *lines = (Line(*line) for line in words)
            show_lines([replace(title, text=f"{title.text} ({one.path})") if several else title, *lines])
        elif not self._speaks:
            write(f"{one.path}: {one.summary.line}" if several else one.summary.line)
        sys.stdout.flush()

    def _write(self) -> None:
        from lint.reports.outputs import Job, file_of

        made = {}
        for path, output in self.files.items():
            content = file_of(output, Job(path, self.asked, self.checked, self.pages))
            if content is not None:
                made[path] = content
        write_files(made, self._inputs)

    def _finished(self) -> str:
        done, of = len(self.checked), len(self.found)
        kept = "; their results are kept, and the next run goes on from there" if self.options["cache"] else ""
        pages = "; their pages are written" if self.pages and done else ""
        last = f", the last {self.checked[-1].path}" if done else ""
        return f"stopped: {done} of {of} patterns were checked{last}{pages}{kept}; no other file was written"


def _suffixes(kinds: Sequence[str]) -> list[str]:
    return [suffix for reader in READERS if not kinds or reader.kind in kinds for suffix in reader.suffixes]


def _named_house(tools: Tools, name: str | None, book: Any) -> Any:
    if name is None:
        return None
    from lint.house.loading import house_path, load_house

    try:
        return load_house(house_path(name), book)
    except RuleFileError as error:
        return tools.refuse(str(error))


def _enter_cluster(stack: ExitStack, address: str, tools: Tools) -> None:
    """Have joblib do its work on a dask cluster for as long as the stack is open."""
    try:
        import joblib
        from distributed import Client

        stack.enter_context(Client(address, timeout="10s"))
        stack.enter_context(joblib.parallel_config(backend="dask"))
    except ImportError:
        tools.refuse("--cluster needs the extra `dask`: pip install 'frogproof[dask]'")
    except (OSError, ValueError) as error:
        tools.refuse(
            f"--cluster {address}: no scheduler answers there ({' '.join(str(error).split()) or type(error).__name__})"
        )


@contextmanager
def _stops_told() -> Iterator[None]:
    """A request to end is treated as Ctrl-C is, so that nothing half written is left."""

    def stop(*_: object) -> None:
        raise KeyboardInterrupt

    before = signal.signal(signal.SIGTERM, stop)
    try:
        yield
    finally:
        signal.signal(signal.SIGTERM, before)


@contextmanager
def _progress(number: int) -> Iterator[Any]:
    """A bar on the terminal, if there is one and more than one pattern; gives what is to be called for each that is done."""
    if number < 2 or not sys.stderr.isatty():
        yield lambda: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeRemainingColumn

    columns = (TextColumn("Checking"), BarColumn(), MofNCompleteColumn(), TimeRemainingColumn())
    console = Console(stderr=True)
    with Progress(*columns, console=console, transient=True, redirect_stdout=sys.stdout.isatty()) as bar:
        task = bar.add_task("", total=number)
        yield lambda: bar.advance(task)
