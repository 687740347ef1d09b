"""The commands on houses: frogproof restyle, frogproof house, frogproof glossary."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import click

from lint.documents.inputs import Input
from lint.rulefolder import RuleFileError
from lint.source import SourceText
from lint.writing import write_files

_NOT_TEXT = (".docx", ".odt", ".rtf", ".pdf", ".html", ".htm")
_TERMS = click.Choice(["us", "uk", "auto"])


@dataclass(frozen=True)
class Tools:
    """What the command line lends: the rules, reading one pattern, refusing in one line."""

    book: Callable[[], Any]
    gather: Callable[[tuple[str, ...]], Iterable[Input]]
    refuse: Callable[[str], Any]


class Houses:
    """The house that each pattern is held to, and the rules as that house has them; each file is read once."""

    def __init__(self, book, name: str | None, none: bool, refuse: Callable[[str], Any]) -> None:
        self._book, self._name, self._none, self._refuse = book, name, none, refuse
        self._read: dict = {}

    def of(self, pattern: str, folder: str | None = None):
        """The house of a pattern, None where it has none, and its rules."""
        from lint.house.loading import book_for, house_beside, house_path, load_house

        if self._none:
            return None, self._book
        path = house_path(self._name) if self._name is not None else None
        if path is None and pattern != "-":
            path = house_beside(Path(pattern), Path(folder) if folder is not None else None)
        if path is None:
            return None, self._book
        if path not in self._read:
            try:
                held = load_house(path, self._book)
            except RuleFileError as error:
                self._refuse(str(error))
            self._read[path] = held, book_for(held, self._book)
        return self._read[path]


def add_commands(group: click.Group, tools: Tools) -> None:
    """Add the commands on houses to the command's group."""

    @group.command()
    @click.argument("pattern")
    @click.option("--house", help="A house file, or the name of one that comes with the rules (us, uk, example-us …).")
    @click.option(
        "--to",
        "to",
        type=click.Choice(["us", "uk"]),
        help="The terms to change to, whatever the house says; without --house, the terms alone.",
    )
    @click.option("-o", "--output", required=True, help="Where the restyled pattern goes; - for standard output.")
    @click.option("--terms", type=_TERMS, default="auto", help="The terms the pattern is in now.")
    @click.option("--log", "log_path", help="Write the log of all changes here; else it is shown.")
    def restyle(pattern: str, house: str | None, to: str | None, output: str, terms: str, log_path: str | None) -> None:
        """Put a pattern into a house's form: only what is certain, and only if every row makes the same as before.

        Without --house and --to, the house.yaml beside the pattern is taken.  Exit status: 0 done, 2 nothing was written.
        """
        from lint.houseclerk import House, log_of, restyled
        from lint.restyling import NotRestyled

        if Path(output).suffix.lower() in _NOT_TEXT:
            tools.refuse(f"{output}: a restyled pattern is written as plain text; name a file that ends in .txt")
        if log_path == output:
            tools.refuse("-o and --log: the pattern and the log cannot both go there")
        book = tools.book()
        source = _one(tools, pattern)
        held = _house(tools, house, pattern) if house is not None or to is None else None
        if held is None and to is None:
            tools.refuse("no house is given: name one with --house, or the terms alone with --to")
        held = held or House()
        if to is not None:
            held = held.model_copy(update={"terms": to})
        try:
            result = restyled(source, held, book, terms)
        except NotRestyled as error:
            tools.refuse(f"{pattern}: {error}")
        outputs = {output: result.text}
        if log_path is not None:
            outputs[log_path] = log_of(result)
        write_files(outputs, [pattern, *_house_files(house)])
        if log_path is None:
            click.echo(log_of(result), nl=False, err=output == "-")

    @group.command()
    @click.argument("names", nargs=-1)
    @click.option("--explain", is_flag=True, help="Say in plain words what the house demands.")
    @click.option("--from", "from_patterns", is_flag=True, help="Write the house file that the patterns named imply.")
    @click.option("--keys", "all_keys", is_flag=True, help="Show a house file with every key there is and its choices.")
    @click.option("-o", "--output", default="-", help="Where the house file goes (with --from and --keys).")
    @click.option("--terms", type=_TERMS, default="auto", help="The terms the patterns are in (with --from).")
    def house(
        names: tuple[str, ...], explain: bool, from_patterns: bool, all_keys: bool, output: str, terms: str
    ) -> None:
        """Look a house file over: it is read and every mistake in it shown.  Without a name, list those that come with it.

        To write one: begin with --keys, or with what your patterns show (--from), and name it with --house, or lay it
        as house.yaml beside the patterns.
        """
        from lint import houseclerk

        book = tools.book()
        if all_keys:
            write_files({output: houseclerk.keys(book)}, [])
            return
        if from_patterns:
            if not names:
                tools.refuse("--from: name the patterns to look at")
            items = list(tools.gather(names))
            bad = [f"{item.path}: {item.problem}" for item in items if item.source is None]
            if bad:
                tools.refuse("\n".join(bad))
            sources = [item.source for item in items if item.source is not None]
            write_files({output: houseclerk.implied(sources, book, terms)}, [item.path for item in items])
            return
        if not names:
            click.echo(houseclerk.names(), nl=False)
            return
        for name in names:
            held = _house(tools, name, None)
            words = houseclerk.told(name, book) if explain else f"{name}: {held.title}, nothing wrong in the file\n"
            click.echo(words, nl=False)

    @group.command()
    @click.argument("pattern")
    @click.option("--house", help="The house whose form and meanings are taken.")
    @click.option("--terms", type=_TERMS, default="auto", help="The terms the pattern is in.")
    @click.option("--language", "languages", multiple=True, help="Also what the words are called there: de, fr, nl …")
    def glossary(pattern: str, house: str | None, terms: str, languages: tuple[str, ...]) -> None:
        """The list of the abbreviations that a pattern uses, ready to paste."""
        from lint import houseclerk

        book = tools.book()
        known = houseclerk.languages_known()
        for code in languages:
            if code not in known:
                tools.refuse(f"--language {code}: no such language; there are {', '.join(known)}")
        held = _house(tools, house, pattern)
        words, note = houseclerk.listed(_one(tools, pattern), held, book, terms, languages)
        if note:
            click.echo(note, err=True)
        click.echo(words, nl=False)


def _house_files(name: str | None) -> list[Path]:
    from lint.house.loading import house_path

    return [house_path(name)] if name is not None else []


def _one(tools: Tools, pattern: str) -> SourceText:
    if pattern != "-" and Path(pattern).is_dir():
        tools.refuse(f"{pattern}: that is a folder; name one pattern")
    item = next(iter(tools.gather((pattern,))))
    if item.source is None:
        tools.refuse(f"{item.path}: {item.problem}")
    return item.source


def _house(tools: Tools, name: str | None, pattern: str | None) -> Any:
    from lint.houseclerk import house_for

    try:
        return house_for(name, pattern, tools.book())
    except RuleFileError as error:
        tools.refuse(str(error))
