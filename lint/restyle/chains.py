"""Chains and chain spaces as the house words them: "ch 3" or "3 ch", "ch-3 sp" or "3-ch sp"; "2 dc" or "2dc"."""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.lexicon import Lexeme
from lint.restyle.edits import Edit
from lint.restyle.ground import Ground, RowWords
from lint.source import Span
from lint.tree import Chain, MakeRing, walk

RULE = "wording-not-house"
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


def edits(ground: Ground) -> Iterator[Edit]:
    """Every chain, chain space and number of stitches that the house words otherwise."""
    wording = ground.house.wording
    for row in ground.rows:
        if not row.certain or row.row.label is None:
            continue
        spaces = list(_spaces(row, wording.chain_space)) if wording.chain_space else []
        yield from spaces
        taken = [edit.span for edit in spaces]
        if wording.chain:
            yield from _chains(ground, row, wording.chain, taken)
        if wording.stitches:
            yield from _numbers(row, " " if wording.stitches == "2 dc" else "")


def _spaces(row: RowWords, sample: str) -> Iterator[Edit]:
    index = 0
    while index < len(row.lexemes):
        run = _space_at(row.lexemes, index)
        if not run:
            index += 1
            continue
        number = next(lexeme for lexeme in run if lexeme.kind == "number")
        several = run[-1].lower.endswith("s")
        word = sample.rpartition(" ")[2] + ("s" if several else "")
        new = f"{sample.rpartition(' ')[0].replace('3', str(number.number))} {word}"
        if run[0].text[:1].isupper() and new[:1].isalpha():
            new = new[:1].upper() + new[1:]
        yield Edit(run[0].span.to(run[-1].span), new, RULE, "chain spaces")
        index += len(run)


def _space_at(lexemes: tuple[Lexeme, ...], index: int) -> tuple[Lexeme, ...]:
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


def _chains(ground: Ground, row: RowWords, sample: str, taken: list[Span]) -> Iterator[Edit]:
    by_start = {lexeme.start: index for index, lexeme in enumerate(row.lexemes)}
    for step in walk(row.row.steps):
        if not isinstance(step, (Chain, MakeRing)) or step.length is None or step.length.lone is None:
            continue
        index = by_start.get(step.span.start)
        pair = row.lexemes[index : index + 2] if index is not None else ()
        if {lexeme.kind for lexeme in pair} != {"chain", "number"} or not _plain_number(pair):
            continue
        span = pair[0].span.to(pair[1].span)
        if span.end > step.span.end or any(other.start < span.end and span.start < other.end for other in taken):
            continue
        word, number = sorted(pair, key=lambda lexeme: lexeme.kind)
        if number.number != step.length.lone:
            continue
        printed = word.text if word.lower not in ("chs", "chains") else word.text[:-1]
        space = " " if " " in sample else ""
        if sample.startswith("ch"):
            capital = word is not pair[0] and _opens_sentence(ground, pair[0])
            new = f"{printed.capitalize() if capital else printed}{space}{number.text}"
        else:
            new = f"{number.text}{space}{printed.lower() if not printed.isupper() or len(printed) < 2 else printed}"
        yield Edit(span, new, RULE, "chains")


def _opens_sentence(ground: Ground, lexeme: Lexeme) -> bool:
    """Whether a word stands where this text would write a capital."""
    if ground.source.text == ground.source.text.lower():
        return False
    before = ground.source.text[: lexeme.start].rstrip(" \t*[(")
    return before.endswith((":", ".", "\n")) or regex.search(r"\d\s?[-–—)]$", before) is not None


def _numbers(row: RowWords, space: str) -> Iterator[Edit]:
    """ "2dc" and "2 dc"; not "dc2tog" and not "ch2dc", where the number belongs to what stands before."""
    for before, number, stitch in zip((None, *row.lexemes), row.lexemes, row.lexemes[1:], strict=False):
        if number.kind != "number" or stitch.kind != "stitch" or not number.text.isdecimal():
            continue
        if number.glued and before is not None and (before.kind not in ("(", "[", "{", "star", "×") or before.text == "x"):
            continue
        if stitch.start - number.end > 1 or (stitch.glued and space == "") or stitch.lower[0].isdecimal():
            continue
        yield Edit(Span(number.end, stitch.start), space, RULE, "numbers of stitches")
