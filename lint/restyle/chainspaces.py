"""Chain spaces that say their length, in every shape in print: "ch-3 sp", "3-ch sp", "ch 3 space"."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.restyle.ground import RowWords

_SPACES = {"sp": "sp", "sps": "sp", "space": "space", "spaces": "space"}
_SHAPES = (
    ("chain", "dash", "number", "space"),
    ("chain", "dash", "number", "dash", "space"),
    ("chain", "number", "space"),
    ("number", "dash", "chain", "space"),
    ("number", "dash", "chain", "dash", "space"),
    ("number", "chain", "space"),
    ("number", "chain", "dash", "space"),
)


def chain_spaces(row: RowWords) -> set[int]:
    """Where the words for a space stand in a row that belong to a space with its length."""
    found, index = set(), 0
    while index < len(row.lexemes):
        run = space_at(row.lexemes, index)
        if run:
            found.add(run[-1].start)
        index += len(run) or 1
    return found


def space_at(lexemes: tuple[Lexeme, ...], index: int) -> tuple[Lexeme, ...]:
    """The lexemes of a space with its length that begins at `index`; none where there is no such space."""
    before = lexemes[index - 1] if index else None
    if before is not None and before.kind == "dash" and before.glued:
        return ()
    for shape in _SHAPES:
        run = lexemes[index : index + len(shape)]
        if tuple(lexeme.kind for lexeme in run) == shape and run[-1].lower in _SPACES and _plain_number(run):
            if len(shape) == 3 and shape[0] == "number" and not run[1].glued and before is not None:
                continue  # "in next 3 ch sps": three spaces, not a space of three
            return run
    return ()


def _plain_number(run: tuple[Lexeme, ...]) -> bool:
    return all(lexeme.text.isdecimal() for lexeme in run if lexeme.kind == "number")
