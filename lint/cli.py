"""The command: frogproof check, frogproof read, frogproof explain."""

from __future__ import annotations

import gc
import json
import os
import sys
from collections.abc import Mapping
from pathlib import Path

import click

from lint.source import SourceText
from lint.yamlfile import RuleFileError

_GRADING_FORMS = (".csv", ".xlsx", ".html")
_TERMS = click.Choice(["us", "uk", "auto"])


def main(arguments: list[str] | None = None) -> None:
    """Run the command; a wrong option is told in one line on standard error, exit status 2."""
    try:
        commands.main(arguments, prog_name="frogproof", standalone_mode=False)
    except click.ClickException as error:
        _refuse(" ".join(error.format_message().split()))
    except click.Abort:
        _refuse("stopped")


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="frogproof")
def commands() -> None:
    """Reads a written crochet pattern as a technical editor does: every row and round is worked stitch by
    stitch, and every count that does not come out is shown at its words."""


@commands.command()
@click.argument("paths", nargs=-1, required=True)
@click.option("--terms", type=_TERMS, default="auto", help="Stitch names: US, UK, or found from the pattern.")
@click.option("--html", "html_path", type=click.Path(dir_okay=False), help="Write the report as one HTML file.")
@click.option("--large-print", "large", is_flag=True, help="The HTML file opens in large print, black on white.")
@click.option("--json", "json_path", help="Write the report as JSON; - for standard output.")
@click.option("--grading", "grading_path", help="Write every count in every size as a table: FILE.csv, .xlsx or .html.")
@click.option("--house", type=click.Path(dir_okay=False), hidden=True)
def check(
    paths: tuple[str, ...],
    terms: str,
    html_path: str | None,
    large: bool,
    json_path: str | None,
    grading_path: str | None,
    house: str | None,
) -> None:
    """Check patterns: files, folders of .txt files, or - for standard input.

    Exit status: 0 no correction found, 1 at least one, 2 something could not be done.
    """
    if house is not None:
        _refuse("--house: house files are not read by this version")
    if grading_path is not None and not grading_path.lower().endswith(_GRADING_FORMS):
        _refuse(f"{grading_path}: a grading table is written as .csv, .xlsx or .html")
    gc.disable()  # nothing that loading makes is garbage, and looking for some costs a tenth of the start
    book = _book()
    from lint.inspection import inspect
    from lint.reports.data import as_data
    from lint.reports.page import as_page, as_pages
    from lint.reports.terminal import one_line, show

    files, problems = _files(paths)
    reports, entries = [], []
    for path, text in files:
        if isinstance(text, str):
            report = inspect(SourceText(text, path), book, terms, workings=bool(html_path or json_path))
            reports.append(report)
            gc.enable()
            entries.append(as_data(report) if json_path else None)
        else:
            problems.append(f"{path}: {text[0]}")
            entries.append({"schema": "frogproof-report/1", "source": {"path": path}, "error": text[0]})
    for problem in problems:
        click.echo(problem, err=True)
    outputs: dict[str, str | bytes] = {}
    if html_path and reports:
        outputs[html_path] = as_pages(reports, large) if len(reports) > 1 else as_page(reports[0], large)
    if grading_path and reports:
        from lint.reports.grading import grading_file

        outputs[grading_path] = grading_file(reports, grading_path)
    if json_path and (reports or json_path == "-" or len(paths) > 1):
        several = len(entries) != 1 or len(paths) > 1
        outputs[json_path] = json.dumps(entries if several else entries[0], indent=1, ensure_ascii=False) + "\n"
    _write_all(outputs)
    if not outputs:
        for report in reports:
            show(report)
    elif json_path != "-":
        for report in reports:
            click.echo(one_line(report))
    if problems:
        sys.exit(2)
    sys.exit(1 if any(f.weight.value == "correction" for report in reports for f in report.findings) else 0)


@commands.command()
@click.argument("clause", nargs=-1)
@click.option("--terms", type=_TERMS, default="auto")
@click.option("--json", "json_path", help="- writes JSON to standard output.")
def read(clause: tuple[str, ...], terms: str, json_path: str | None) -> None:
    """Say how one clause or row is read: what it uses and what it makes.  With -, one clause a line."""
    book = _book()
    from lint.reports.clause import read_clauses

    words = " ".join(clause)
    if words in ("", "-"):
        text = _decoded(sys.stdin.buffer.read())
        if not isinstance(text, str):
            _refuse(f"standard input {text[0]}")
        lines = text.splitlines()
    else:
        lines = [words]
    answers = read_clauses(lines, book, terms)
    if json_path:
        text = json.dumps([answer.as_data() for answer in answers], indent=1, ensure_ascii=False) + "\n"
        _write_all({json_path: text})
        return
    for answer in answers:
        click.echo(answer.in_words())


@commands.command()
@click.argument("rule", required=False)
def explain(rule: str | None) -> None:
    """Say what a rule finds, why it matters, and show a good and a bad example; without RULE, list all."""
    book = _book()
    if rule is None:
        for entry in (*book.checks.values(), *book.word_rules):
            click.echo(f"{entry.name}  ({entry.weight.value})")
        return
    try:
        entry = book.rule(rule)
    except KeyError:
        _refuse(f"{rule}: there is no rule of this name; `frogproof explain` lists them all")
    click.echo(f"{entry.name}  ({entry.weight.value})\n\n{entry.message}\n\n{entry.why.strip()}\n")
    click.echo(
        f"As it should be:\n{_indent(entry.example.good)}\n\nAs it is found:\n{_indent(entry.example.bad)}\n\nSource: {entry.source}"
    )


def _indent(text: str) -> str:
    return "\n".join("    " + line for line in text.strip().splitlines())


def _book():
    from lint.rulebook import load_rulebook

    try:
        return load_rulebook()
    except RuleFileError as error:
        _refuse(str(error))


def _refuse(message: str):
    click.echo(message, err=True)
    sys.exit(2)


def _files(paths: tuple[str, ...]) -> tuple[list[tuple[str, str | tuple[str]]], list[str]]:
    """(path, text) of every pattern, a one-element tuple with the problem where a file cannot be read."""
    found: list[tuple[str, str | tuple[str]]] = []
    problems: list[str] = []
    for name in paths:
        if name == "-":
            found.append(("-", _decoded(sys.stdin.buffer.read())))
            continue
        path = Path(name)
        if path.is_dir():
            inside = sorted(item for item in path.rglob("*.txt") if item.is_file())
            if not inside:
                found.append((name, ("no .txt pattern is in this folder",)))
            found += [(str(item), _read_file(item)) for item in inside]
        else:
            found.append((name, _read_file(path)))
    return found, problems


def _read_file(path: Path) -> str | tuple[str]:
    try:
        return _decoded(path.read_bytes())
    except FileNotFoundError:
        return ("there is no such file",)
    except OSError as error:
        return (f"cannot be read ({error.strerror or error})",)


def _decoded(raw: bytes) -> str | tuple[str]:
    """Text of a file in UTF-8, UTF-16 or Windows-1252."""
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        try:
            return raw.decode("utf-16")
        except UnicodeDecodeError:
            return ("is not text",)
    if b"\x00" in raw[:4096]:
        return ("is not text",)
    for encoding in ("utf-8-sig", "cp1252"):
        try:
            text = raw.decode(encoding)
            return text.replace("\r", "\n") if "\n" not in text else text  # files of old machines end lines with CR
        except UnicodeDecodeError:
            continue
    return ("is not text",)


def _write_all(outputs: Mapping[str, str | bytes]) -> None:
    """Write every output, or none: a place that cannot be written to is told before any file is touched."""
    for path in outputs:
        folder = Path(path).parent
        if path != "-" and (not folder.is_dir() or not os.access(path if Path(path).exists() else folder, os.W_OK)):
            _refuse(f"{path}: cannot be written (no such folder, or no leave to write there)")
    for path, content in outputs.items():
        raw = content.encode("utf-8", "backslashreplace") if isinstance(content, str) else content
        if path == "-":
            sys.stdout.buffer.write(raw)
            continue
        try:
            Path(path).write_bytes(raw)
        except OSError as error:
            _refuse(f"{path}: cannot be written ({error.strerror or error})")
