"""What the command `explain` says: of every rule its name, of one its sentence as it is met, why, and an example."""

from __future__ import annotations

from lint.house.loading import book_for, read_house
from lint.inspection import inspect
from lint.rulebook import Rulebook
from lint.source import SourceText


def all_rules(book: Rulebook) -> str:
    """The rules' names with their weights, a line each."""
    return "".join(f"{entry.name}  ({entry.weight.value})\n" for entry in (*book.checks.values(), *book.word_rules))


def explained(name: str, book: Rulebook) -> str:
    """One rule in full.  Raises KeyError where there is none of this name."""
    entry = book.rule(name)
    example = entry.example
    blocks = [f"{entry.name}  ({entry.weight.value})", entry.why.strip()]
    if example.house:
        blocks.append(f"Where a house file says:\n{_indented(example.house)}")
    if example.good.strip():
        blocks.append(f"As it should be:\n{_indented(example.good)}")
    blocks.append(f"As it is found:\n{_indented(example.bad)}")
    said = sentence(name, book)
    if said is not None:
        blocks.append(f"What is said of that:\n{_indented(said)}")
    blocks.append(f"Source: {entry.source}")
    return "\n\n".join(blocks) + "\n"


def sentence(name: str, book: Rulebook) -> str | None:
    """The rule's sentence as a maker meets it: what the check says of the rule's own bad example."""
    example = book.rule(name).example
    held = read_house(example.house, "house.yaml", book) if example.house else None
    own = book_for(held, book) if held is not None else book
    report = inspect(SourceText(example.bad), own, workings=False, house=held)
    return next((finding.message for finding in report.findings if finding.rule == name), None)


def _indented(text: str) -> str:
    return "\n".join("    " + line for line in text.strip().splitlines())
