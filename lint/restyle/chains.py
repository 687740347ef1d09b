"""Chains and chain spaces as the house words them: "ch 3" or "3 ch", "ch-3 sp" or "3-ch sp"; "2 dc" or "2dc"."""

from __future__ import annotations

from collections.abc import Iterator

from lint.lexicon import Lexeme
from lint.restyle.chainspaces import space_at
from lint.restyle.edits import Edit
from lint.restyle.ground import Ground, RowWords
from lint.source import Span
from lint.tree import Chain, MakeRing, walk

RULE = "wording-not-house"


def edits(ground: Ground) -> Iterator[Edit]:
    """Every chain, chain space and number of stitches that the house words otherwise."""
    wording = ground.house.wording
    for row in ground.rows:
        if not row.certain:
            continue
        edits = list(_spaces(row, wording.chain_space)) if wording.chain_space else []
        yield from edits
        taken = [edit.span for edit in edits]
        if wording.chain:
            yield from _chains(ground, row, wording.chain, taken)
            yield from _chains_made(ground, row, wording.chain, taken)
        if wording.stitches and row.row.label is not None:
            yield from _numbers(row, " " if wording.stitches == "2 dc" else "")


def _spaces(row: RowWords, sample: str) -> Iterator[Edit]:
    index = 0
    while index < len(row.lexemes):
        run = space_at(row.lexemes, index)
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


def _chains(ground: Ground, row: RowWords, sample: str, taken: list[Span]) -> Iterator[Edit]:
    """Chains that are worked, and those that a note says a chain counts as: "(counts as dc and ch 1)"."""
    by_start = {lexeme.start: index for index, lexeme in enumerate(row.lexemes)}
    for step in walk(row.row.steps):
        if not isinstance(step, (Chain, MakeRing)):
            continue
        if step.length is not None:
            yield from _chain(ground, row, by_start.get(step.span.start), sample, taken)
        counting = step.counting if isinstance(step, Chain) else None
        if counting is not None and counting.space is not None:
            for index, lexeme in enumerate(row.lexemes):
                if counting.span.start <= lexeme.start < counting.span.end and lexeme.kind in ("chain", "number"):
                    yield from _chain(ground, row, index, sample, taken)


def _chain(ground: Ground, row: RowWords, index: int | None, sample: str, taken: list[Span]) -> Iterator[Edit]:
    found = _chain_at(row.lexemes, index) if index is not None else None
    if found is None:
        return
    word, first, last = found
    span = min(word.span, first.span).to(max(word.span, last.span))
    if any(other.start < span.end and span.start < other.end for other in taken):
        return
    before = ground.source.text[row.row.span.start : span.start].split()
    if sample.startswith("ch") and word.start > first.start and before and before[-1].lower() in ("make", "work"):
        return  # "Make 71 ch" keeps its verb
    number = ground.source.text[first.start : last.end]
    printed = word.text if word.lower not in ("chs", "chains") else word.text[:-1]
    space = " " if " " in sample else ""
    if sample.startswith("ch"):
        capital = word.start > first.start and ground.opens_sentence(first.start)
        new = f"{printed.capitalize() if capital else printed}{space}{number}"
    else:
        space = space or (" " if number[-1] in ")]" else "")  # "3ch", but "60 (66, 72) ch"
        new = f"{number}{space}{printed if printed.isupper() else printed.lower()}"
    yield Edit(span, new, RULE, "chains")


def _chain_at(lexemes: tuple[Lexeme, ...], index: int) -> tuple[Lexeme, Lexeme, Lexeme] | None:
    """The word and the first and last lexeme of the number of a chain: "ch 3", "60 (66, 72) ch"."""
    if lexemes[index].kind == "chain":
        last = _number_end(lexemes, index + 1)
        return (lexemes[index], lexemes[index + 1], lexemes[last]) if last is not None else None
    last = _number_end(lexemes, index)
    if last is None or last + 1 >= len(lexemes) or lexemes[last + 1].kind != "chain":
        return None
    return lexemes[last + 1], lexemes[index], lexemes[last]


def _number_end(lexemes: tuple[Lexeme, ...], index: int) -> int | None:
    """Where a number, or a list over the sizes, that begins at `index` ends; None where there is none."""
    if index >= len(lexemes) or not lexemes[index].text.isdecimal():
        return None
    at = index + 1
    if at < len(lexemes) and lexemes[at].kind in ("(", "["):
        while at < len(lexemes) and (lexemes[at].kind in ("number", ",", ":", "(", "[", "dash")):
            at += 1
        if at < len(lexemes) and lexemes[at].kind in (")", "]") and at > index + 2:
            return at
    while at + 1 < len(lexemes) and lexemes[at].kind == "/" and lexemes[at + 1].text.isdecimal():
        at += 2  # 75/81/87
    return at - 1 if lexemes[at - 1].text.isdecimal() else index


def _chains_made(ground: Ground, row: RowWords, sample: str, taken: list[Span]) -> Iterator[Edit]:
    """Chains that lie there already: "top of ch-3", "3rd of 3 ch"."""
    for index in range(1, len(row.lexemes) - 1):
        of, first, second = row.lexemes[index - 1 : index + 2]
        third = row.lexemes[index + 2] if index + 2 < len(row.lexemes) else None
        if of.kind not in ("of", "beginning", "turning_chain") and of.lower not in ("of", "top of", "beg"):
            continue
        if sample.startswith("ch") and (first.kind, second.kind) == ("number", "chain") and first.text.isdecimal():
            if third is not None and third.kind in ("space", "dash"):
                continue
            span, new = first.span.to(second.span), f"{second.text}-{first.text}"
        elif sample.startswith("ch") and (first.kind, second.kind) == ("number", "dash") and first.text.isdecimal():
            behind = row.lexemes[index + 3] if index + 3 < len(row.lexemes) else None
            if (
                third is None
                or third.kind != "chain"
                or not third.glued
                or behind is not None
                and behind.kind == "space"
            ):
                continue
            span, new = first.span.to(third.span), f"{third.text}-{first.text}"  # "3rd ch of 3-ch"
        elif not sample.startswith("ch") and (first.kind, second.kind) == ("chain", "dash"):
            behind = row.lexemes[index + 3] if index + 3 < len(row.lexemes) else None
            if third is None or not third.text.isdecimal() or behind is not None and behind.kind in ("space", "dash"):
                continue
            span, new = first.span.to(third.span), f"{third.text}{' ' if ' ' in sample else ''}{first.text}"
        elif (first.kind, second.kind) == ("number", "chain") and first.text.isdecimal():
            if third is not None and third.kind in ("space", "dash"):
                continue
            span, new = first.span.to(second.span), f"{first.text}{' ' if ' ' in sample else ''}{second.text}"
        else:
            continue
        if not any(other.start < span.end and span.start < other.end for other in taken):
            yield Edit(span, new, RULE, "chains")


def _numbers(row: RowWords, space: str) -> Iterator[Edit]:
    """ "2dc" and "2 dc"; not "dc2tog" and not "ch2dc", where the number belongs to what stands before.

    Houses that print "2dc" print "12 sc" in a count, so a count's spaces are not taken out.
    """
    count = row.row.stated.span if row.row.stated is not None and not space else None
    for before, number, stitch in zip((None, *row.lexemes), row.lexemes, row.lexemes[1:], strict=False):
        if number.kind != "number" or stitch.kind != "stitch" or not number.text.isdecimal():
            continue
        if (
            number.glued
            and before is not None
            and (before.kind not in ("(", "[", "{", "star", "×") or before.text == "x")
        ):
            continue
        if stitch.start - number.end > 1 or (stitch.glued and space == "") or stitch.lower[0].isdecimal():
            continue
        if count is not None and count.start <= number.start < count.end:
            continue
        yield Edit(number.span.to(stitch.span), number.text + space + stitch.text, RULE, "numbers of stitches")
