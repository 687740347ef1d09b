"""Restyling measured over a folder of sound patterns: does every count stay, do round trips give the text back?

Usage: python tests/bench/restyling.py [FOLDER …] [--list]     (corpus_demo without a FOLDER; "faulty" in a name: left out)

For every pattern: the opposite terms and back, each example house, each once more, and the house's own checks.
  counts        rows (times sizes) whose stitches, kinds and spaces are the same, of those recomputed before
  same text     round trips through the other country's terms that give back the text, letter for letter
  but listed    the same, but for words of which the log said beforehand that they would come back otherwise
  house trip    the same between the two countries' example houses: one's form, the other's, and the first's again
  nothing more  second restylings that change nothing
  findings      findings on the restyled text of the rules that restyling mends
--list shows every text that comes back otherwise, and what was left for a person.
"""

from __future__ import annotations

import argparse
import difflib
import sys
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

HOUSES = {"us": "example-us", "uk": "example-uk"}
MENDED = (
    "terms-not-house",
    "abbreviation-not-house",
    "abbreviation-list-not-house",
    "label-not-house",
    "count-not-house",
    "wording-not-house",
    "turning-chain-note-not-house",
    "size-list-not-house",
    "unit-not-house",
)


@dataclass
class Tally:
    """What was tried and what came out, by column."""

    tried: dict[str, int] = field(default_factory=dict)
    right: dict[str, int] = field(default_factory=dict)
    told: list[str] = field(default_factory=list)

    def count(self, column: str, right: int, of: int = 1) -> None:
        self.tried[column] = self.tried.get(column, 0) + of
        self.right[column] = self.right.get(column, 0) + right


def main() -> None:
    """Measure and print one line a column."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folders", nargs="*", default=[str(ROOT / "corpus_demo")])
    parser.add_argument("--list", action="store_true", dest="listed")
    options = parser.parse_args()
    paths = sorted(path for folder in options.folders for path in Path(folder).rglob("*.txt"))
    tally = Tally()
    for path in paths:
        if "faulty" not in path.name:
            measure(path, tally)
    for column, tried in tally.tried.items():
        share = 100 * tally.right[column] / tried if tried else 0.0
        print(f"{column:14} {tally.right[column]:6} of {tried:6}  {share:5.1f} %")
    if options.listed:
        print("\n".join(tally.told))


def measure(path: Path, tally: Tally) -> None:
    """One pattern through the opposite terms, and through both countries' example houses."""
    from lint.house.loading import house_path, load_house, read_house
    from lint.inspection import inspect
    from lint.rulebook import load_rulebook
    from lint.source import SourceText

    book = load_rulebook()
    text = path.read_text(encoding="utf-8")
    before = inspect(SourceText(text, path.name), book)
    own = before.terms.terms
    other = "uk" if own == "us" else "us"
    terms = {country: read_house(f"terms: {country}", country, book) for country in HOUSES}
    houses = {country: load_house(house_path(name), book) for country, name in HOUSES.items()}
    there = made(text, terms[other], before, path, tally)
    back = made(there, terms[own], before, path, tally) if there is not None else None
    tally.count("same text", back == text)
    tally.count(
        "but listed", back is not None and set(lines_that_differ(text, back)) <= one_way(text, terms[other], path)
    )
    tell(text, back, f"{path.name}, {own} terms and back", tally)
    first = made(text, houses[own], before, path, tally)
    second = made(first, houses[other], before, path, tally) if first is not None else None
    third = made(second, houses[own], before, path, tally) if second is not None else None
    tally.count("house trip", third == first and third is not None)
    tell(first or "", third, f"{path.name}, {HOUSES[own]} to {HOUSES[other]} and back", tally)


def made(text: str, house: Any, before: Any, path: Path, tally: Tally) -> str | None:
    """A text restyled, with all that is measured of it; None where it was refused."""
    from lint.house.loading import book_for
    from lint.inspection import inspect
    from lint.restyling import NotRestyled, restyle
    from lint.rulebook import load_rulebook
    from lint.source import SourceText

    book = load_rulebook()
    try:
        result = restyle(SourceText(text, path.name), house, book)
    except NotRestyled as error:
        tally.count("restyled", 0)
        tally.told.append(f"{path.name}: refused: {error}")
        return None
    tally.count("restyled", 1)
    after = inspect(SourceText(result.text, path.name), book_for(house, book), house=house)
    tally.count("counts", *same_cells(before, after))
    tally.count("nothing more", result.text == restyle(SourceText(result.text), house, book).text)
    found = [finding for finding in after.findings if finding.rule in MENDED]
    tally.count("no findings", not found)
    tally.told += [f"{path.name}: line {after.source.line_of(one.span)}: {one.message}" for one in found]
    tally.told += [f"{path.name}: line {line}, left: {why}" for line, why in result.kept]
    return result.text


def lines_that_differ(text: str, back: str) -> list[int]:
    """The lines of a text, from 1, that came back otherwise; 0 where lines came or went."""
    before, after = text.splitlines(), back.splitlines()
    if len(before) != len(after):
        return [0]
    return [number for number, pair in enumerate(zip(before, after, strict=True), 1) if pair[0] != pair[1]]


def one_way(text: str, house: Any, path: Path) -> set[int]:
    """The lines with a word that the log says would come back otherwise."""
    from lint.restyling import restyle
    from lint.rulebook import load_rulebook
    from lint.source import SourceText

    kept = restyle(SourceText(text, path.name), house, load_rulebook()).kept
    return {line for line, why in kept if "changed back it would be" in why}


def same_cells(before: Any, after: Any) -> tuple[int, int]:
    """Cells that make the same stitches, kinds and spaces, and all cells recomputed before."""
    same = of = 0
    rows = after.ledger.rows
    for index, row in enumerate(before.ledger.rows):
        for size, cell in enumerate(row.cells):
            if cell.made is None:
                continue
            of += 1
            now = rows[index].cells[size].made if index < len(rows) and size < len(rows[index].cells) else None
            same += now is not None and (
                (cell.made.stitches, cell.made.by_kind, cell.made.spaces) == (now.stitches, now.by_kind, now.spaces)
            )
    return same, of


def tell(text: str, back: str | None, what: str, tally: Tally) -> None:
    """List the lines in which a round trip did not give back the text."""
    if back is None or back == text:
        return
    tally.told.append(what)
    lines = difflib.unified_diff(text.splitlines(), back.splitlines(), lineterm="", n=0)
    tally.told += ["    " + line[:160] for line in lines if line[:1] in "+-" and line[:3] not in ("+++", "---")]


if __name__ == "__main__":
    main()
