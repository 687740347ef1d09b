"""The command: frogproof check, testers, recheck, read, rules, explain, completion."""

from __future__ import annotations

import gc
import json
import sys
import textwrap
from difflib import get_close_matches
from os.path import isfile
from pathlib import Path

import click

from lint.cli_check import add_check
from lint.cli_house import Houses, Tools, add_commands
from lint.documents.inputs import gather
from lint.documents.plaintext import decoded
from lint.documents.unreadable import Unreadable
from lint.rulefolder import RuleFileError
from lint.writing import NotWritten, write_files

_HOUSE = "Hold them to a house file; without it, to the house.yaml beside each pattern or above it in FOLDER, if any."
_TERMS = click.Choice(["us", "uk", "auto"])


_SHELLS = ("bash", "zsh", "fish")


def main(arguments: list[str] | None = None) -> None:
    """Run the command; a wrong option is told in one line on standard error, exit status 2."""
    try:
        commands.main(arguments, prog_name="frogproof", standalone_mode=False)
    except click.ClickException as error:
        _refuse(" ".join(error.format_message().split()))
    except click.Abort:
        _refuse("stopped")


class _Commands(click.Group):
    """The group of all commands; a file that cannot be written is told in one line, exit status 2."""

    def invoke(self, ctx: click.Context):
        try:
            return super().invoke(ctx)
        except NotWritten as error:
            _refuse(str(error))


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="frogproof")
def commands() -> None:
    """Reads a written crochet pattern as a technical editor does: every row and round is worked stitch by
    stitch, and every count that does not come out is shown at its words."""


@commands.command()
@click.argument("pattern")
@click.argument("reports", nargs=-1)
@click.option("--terms", type=_TERMS, default="auto", help="Stitch names: US, UK, or found from the pattern.")
@click.option("--html", "html_path", type=click.Path(dir_okay=False), help="Write the report as one HTML file.")
@click.option("--json", "json_path", help="Write the report as JSON; - for standard output.")
@click.option("--csv", "csv_path", help="Write one line for each count as CSV; - for standard output.")
@click.option("--form", "form_path", type=click.Path(dir_okay=False), help="Write a blank form, .xlsx or .csv.")
@click.option("--anonymous", is_flag=True, help="Initials instead of testers' names.")
def testers(
    pattern: str,
    reports: tuple[str, ...],
    terms: str,
    html_path: str | None,
    json_path: str | None,
    csv_path: str | None,
    form_path: str | None,
    anonymous: bool,
) -> None:
    """Set testers' reported counts beside a pattern: REPORTS are CSV, TSV, XLSX or text; - for standard input.

    Exit status: 0 no printed count is shown wrong, 1 at least one, 2 something could not be done.
    """
    if not reports and not form_path:
        _refuse("no report is named; --form FILE writes a blank one for testers")
    if json_path == "-" == csv_path:
        _refuse("--json - and --csv -: only one of them can go to standard output")
    if form_path and not form_path.lower().endswith((".xlsx", ".csv")):
        _refuse(f"{form_path}: a form is written as .xlsx or .csv")
    gc.disable()
    report = _inspected(pattern, terms, Houses(_book(), None, True, _refuse))
    gc.enable()
    outputs: dict[str, str | bytes] = {}
    if form_path:
        from lint.reports.testers_form import as_csv_form, as_workbook_form

        as_form = as_workbook_form if form_path.lower().endswith(".xlsx") else as_csv_form
        outputs[form_path] = as_form(report)
    problems, review, files = [], None, []
    if reports:
        from lint.reports.testers_data import as_csv, as_data
        from lint.reports.testers_page import as_testers_page
        from lint.reports.testers_terminal import one_line, show
        from lint.testers.review import review as judge

        files, problems = _raw_files(reports)
        review = judge(report, files, anonymous)
        problems += [f"{name}: {why}" for name, why in review.intake.unread]
        if html_path:
            outputs[html_path] = as_testers_page(review)
        if json_path:
            outputs[json_path] = json.dumps(as_data(review), indent=1, ensure_ascii=False) + "\n"
        if csv_path:
            outputs[csv_path] = "\ufeff" * (csv_path != "-") + as_csv(
                review
            )  # the mark by which spreadsheets know UTF-8
    for problem in problems:
        click.echo(problem, err=True)
    write_files(outputs, [pattern, *(name for name, _ in files)])
    if review is not None and not (html_path or json_path or csv_path):
        show(review)
    elif review is not None and "-" not in outputs:
        click.echo(one_line(review))
    if problems:
        sys.exit(2)
    sys.exit(1 if review is not None and any(point.kind == "print-wrong" for point in review.points) else 0)


@commands.command()
@click.argument("old")
@click.argument("new")
@click.option("--testers", "reports", multiple=True, help="A tester's report, or a folder of them, on the old draft.")
@click.option("--anonymous", is_flag=True, help="Initials instead of testers' names.")
@click.option("--terms", type=_TERMS, default="auto", help="Stitch names: US, UK, or found from the pattern.")
@click.option("--html", "html_path", type=click.Path(dir_okay=False), help="Write the report as one HTML file.")
@click.option("--json", "json_path", help="Write the report as JSON; - for standard output.")
@click.option("--house", help=_HOUSE)
@click.option("--no-house", is_flag=True, help="Hold them to no house.")
def recheck(
    old: str,
    new: str,
    reports: tuple[str, ...],
    anonymous: bool,
    terms: str,
    html_path: str | None,
    json_path: str | None,
    house: str | None,
    no_house: bool,
) -> None:
    """Set a NEW draft of a pattern beside the OLD one: what is settled, open still, or new, and whose counts changed.

    Exit status: 0 no correction in the new draft, 1 at least one, 2 something could not be done.
    """
    if old == "-" == new:
        _refuse("only one of the two drafts can come from standard input")
    houses = Houses(_book(), house, no_house, _refuse)
    drafts = _inspected(old, terms, houses), _inspected(new, terms, houses)
    from lint.drafts.comparison import compare_drafts
    from lint.reports.drafts_data import as_data
    from lint.reports.drafts_page import as_drafts_page, one_line, show
    from lint.testers.review import review as judge

    problems: list[str] = []
    review, files = None, []
    if reports:
        files, problems = _raw_files(reports)
        review = judge(drafts[0], files, anonymous)
        problems += [f"{name}: {why}" for name, why in review.intake.unread]
    found = compare_drafts(*drafts, review)
    outputs: dict[str, str | bytes] = {}
    if html_path:
        outputs[html_path] = as_drafts_page(found)
    if json_path:
        outputs[json_path] = json.dumps(as_data(found), indent=1, ensure_ascii=False) + "\n"
    for problem in problems:
        click.echo(problem, err=True)
    write_files(outputs, [old, new, *(name for name, _ in files)])
    if not outputs:
        show(found)
    elif "-" not in outputs:
        click.echo(one_line(found))
    if problems:
        sys.exit(2)
    sys.exit(1 if any(finding.weight.value == "correction" for finding in found.new.findings) else 0)


def _inspected(path: str, terms: str, houses: Houses):
    """The report on one pattern; a pattern that cannot be read is told, exit status 2."""
    from lint.inspection import inspect

    item = next(iter(gather((path,))))
    if item.source is None:
        _refuse(f"{path}: {item.problem}")
    held, own = houses.of(path)
    return inspect(item.source, own, terms, house=held)


def _raw_files(paths: tuple[str, ...]) -> tuple[list[tuple[str, bytes]], list[str]]:
    """Name and content of every file, those of folders too, and what cannot be read."""
    found: list[tuple[str, bytes]] = []
    problems: list[str] = []
    for name in paths:
        inside = [Path(name)]
        if name != "-" and Path(name).is_dir():
            inside = sorted(item for item in Path(name).rglob("*") if item.is_file() and not item.name.startswith("."))
            if not inside:
                problems.append(f"{name}: no report is in this folder")
        for path in inside:
            try:
                found.append((str(path), sys.stdin.buffer.read() if name == "-" else path.read_bytes()))
            except FileNotFoundError:
                problems.append(f"{path}: there is no such file")
            except OSError as error:
                problems.append(f"{path}: cannot be read ({error.strerror or error})")
    return found, problems


@commands.command()
@click.argument("clause", nargs=-1)
@click.option("--terms", type=_TERMS, default="auto")
@click.option("--row", help="Of a pattern's file, only the rows of this label: 'Rnd 4', 'Sleeve Row 2'.")
@click.option("--json", "json_path", help="- writes JSON to standard output.")
def read(clause: tuple[str, ...], terms: str, row: str | None, json_path: str | None) -> None:
    """Say how one clause or row is read: what it uses and what it makes.  With -, one clause a line.

    With a pattern's file, every row of it: clause by clause, with the count so far and the sum.
    """
    words = " ".join(clause)
    if not json_path and words != "-" and isfile(words):
        _read_rows(words, terms, row or "")
        return
    if row is not None:
        _refuse("--row picks a row of a pattern's file; name the file")
    book = _book()
    from lint.reports.clause import read_clauses

    if words in ("", "-"):
        try:
            lines = decoded(sys.stdin.buffer.read()).splitlines()
        except Unreadable as error:
            _refuse(f"standard input {error}")
    else:
        lines = [words]
    answers = read_clauses(lines, book, terms)
    if json_path:
        text = json.dumps([answer.as_data() for answer in answers], indent=1, ensure_ascii=False) + "\n"
        write_files({json_path: text})
        return
    for answer in answers:
        click.echo(answer.in_words())


def _read_rows(path: str, terms: str, only: str) -> None:
    from lint.reports.rowwords import rows_in_words
    from lint.reports.terminal import write

    said = list(rows_in_words(_inspected(path, terms, Houses(_book(), None, True, _refuse)), only))
    if not said:
        _refuse(f"{path}: there is no row “{only}”" if only else f"{path}: no rows or rounds were found")
    write("\n".join(said))


@commands.command()
@click.option("--area", help="Only the rules of one area of the grade: counts, wording, structure ...")
@click.option("--weight", type=click.Choice(["correction", "query", "style"]), help="Only the rules of this weight.")
def rules(area: str | None, weight: str | None) -> None:
    """List all rules by the area of the grade that they count in, each with its weight and why it matters."""
    listed = _rules()
    areas = list(dict.fromkeys(entry.area for entry in listed))
    if area is not None and area not in areas:
        _refuse(f"--area {area}: there is no area of this name; there are {', '.join(areas)}")
    for name in areas if area is None else [area]:
        told = [entry for entry in listed if entry.area == name and weight in (None, entry.weight)]
        if told:
            click.echo(f"\n{name.upper()}")
        for entry in told:
            words = textwrap.fill(_first_sentence(entry.why), 96, initial_indent="    ", subsequent_indent="    ")
            click.echo(f"  {entry.name}  ({entry.weight})\n{words}")
    click.echo("\n`frogproof explain RULE` tells a rule whole, with a good and a bad example.")


@commands.command()
@click.argument("rule", required=False)
@click.option("--house", help="A house file whose own rules and weights are meant as well.")
def explain(rule: str | None, house: str | None) -> None:
    """Say what a rule finds, why it matters, and show a good and a bad example; without RULE, list all."""
    from lint.ruleclerk import all_rules, explained

    listed = _rules(house)
    if rule is None:
        click.echo(all_rules(listed), nl=False)
        return
    entry = next((entry for entry in listed if entry.name == rule), None)
    if entry is None:
        near = get_close_matches(rule, [entry.name for entry in listed], 1)
        meant = f"is {near[0]} meant? " if near else ""
        _refuse(f"{rule}: there is no rule of this name; {meant}`frogproof rules` lists them all")
    click.echo(explained(entry), nl=False)


@commands.command()
@click.argument("shell", type=click.Choice(_SHELLS))
def completion(shell: str) -> None:
    """Print what makes the tab key complete commands, options and file names in a shell."""
    from click.shell_completion import get_completion_class

    made = get_completion_class(shell)
    click.echo(made(commands, {}, "frogproof", "_FROGPROOF_COMPLETE").source())


def _first_sentence(words: str) -> str:
    """Up to the first full stop."""
    words = " ".join(words.split())
    return words[: words.index(". ") + 1] if ". " in words else words


def _book():
    from lint.rulebook import load_rulebook

    try:
        return load_rulebook()
    except RuleFileError as error:
        _refuse(str(error))


def _rules(house: str | None = None):
    """All rules, read apart from the rest of the rulebook: a rule is shown at once.  With a house, as that house has them."""
    from lint.rulelist import rule_texts

    try:
        if house is None:
            return rule_texts()
        from lint.ruleclerk import rules_of_house

        return rules_of_house(*Houses(_book(), house, False, _refuse).of("-"))
    except RuleFileError as error:
        _refuse(str(error))


def _refuse(message: str):
    click.echo(message, err=True)
    sys.exit(2)


_TOOLS = Tools(_book, gather, _refuse)
add_check(commands, _TOOLS)
add_commands(commands, _TOOLS)
