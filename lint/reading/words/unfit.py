"""Lists over the sizes that are not one number for each size: a row of work with one is not worked, for its maker reads
none of them; a printed count with one, where it surely is a count, says nothing, and its row is worked like one without.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lint.amount import Amount
from lint.expression import expression
from lint.lexicon import Lexeme
from lint.pattern import Stated
from lint.reading.sizes.namedlists import TIMES, figure_of_size
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.source import Span
from lint.tree import MAKES_STITCHES, AlongEdge, FastenOff, OpenWork, OtherSide, Remark, Step, Unread, UseYarn

_BRACKETED = expression(r"[(\[{]")
_SIGNS = (",", ":", ";", "/", "dash")
_FRACTIONS = ("½", "¼", "¾")
_COUNTED = ("any_stitch", "times", "space")
_FEWEST = 3  # figures of a list that is surely one over the sizes: "20 (22) sc" may be told of other things
_ASIDE = (Remark, FastenOff, UseYarn, AlongEdge, OtherSide, OpenWork, Unread)  # figures there make no stitches


def unfit_lists_unread(steps: list[Step], lexemes: list[Lexeme], sizes: int, names: Mapping[str, int]) -> list[Step]:
    """The steps, and an Unread for each list that fits no reading over so many sizes; `lexemes`: fitting lists folded."""
    if sizes > 1:
        why = f"the figures are not one for each of the {sizes} sizes"
    else:
        why = "the figures look like one for each size, and no sizes are named"
    asides = [step.span for step in steps if isinstance(step, _ASIDE)]
    opened = {item.start for item in lexemes if item.kind in OPENERS}  # a remark in brackets may be a count
    spans = [*unfit_lists(lexemes, sizes), *(_some_sizes_named(lexemes, names) if sizes > 1 else ())]
    found = [
        Unread(span, " ".join(item.text for item in lexemes if span.start <= item.start < span.end), why)
        for span in spans
        if not any(aside.start <= span.start < aside.end and aside.start not in opened for aside in asides)
    ]
    return [*found, *steps] if found else steps


@dataclass(frozen=True, slots=True)
class UnfitList:
    """A list that is not one figure for each size: where it stands, and how many figures it has."""

    span: Span
    figures: int


def with_unfit_folded(stream: Stream) -> tuple[Stream, list[UnfitList]]:
    """The stream with each list that fits no reading as one number, for what stands around it to be read; and the lists.

    Its figures stand for sizes at random, so that no row may be worked with them.
    """
    sizes = stream.vocabulary.sizes
    if sizes < 2:
        return stream, []
    lexemes, lists = list(stream.lexemes), []
    for span in reversed(list(unfit_lists(lexemes, sizes))):
        first = next(index for index, item in enumerate(lexemes) if item.start == span.start)
        last = next(index for index, item in enumerate(lexemes) if item.end == span.end)
        inside = lexemes[first : last + 1]
        figures = [figure for item in inside if _figure(item) for figure in _values(item)]
        kind = "ordinals" if any(item.kind == "ordinal" for item in inside) else "number"
        amount = Amount(tuple([*figures, *figures[-1:] * sizes][:sizes]))  # no size is without work there
        words = stream.words(first, last + 1)
        lexemes[first : last + 1] = [Lexeme(kind, words, span.start, span.end, inside[0].glued, amount=amount)]
        lists.append(UnfitList(span, len(figures)))
    return Stream(lexemes, stream.vocabulary), lists[::-1]


def without_unfit_counts(
    steps: list[Step], stated: Stated | None, lists: list[UnfitList]
) -> tuple[list[Step], Stated | None, list[Span]]:
    """The steps and the printed count, which is a remark where it has such a list; and the lists that are counts."""
    within = [one for one in lists if stated is not None and stated.span.start <= one.span.start < stated.span.end]
    if stated is None or not within:
        return steps, stated, []
    made = any(isinstance(step, MAKES_STITCHES) for step in steps)
    if not made or any(one.figures < _FEWEST for one in within):
        return steps, None, []
    return [*steps, Remark(stated.span, unfit=within[0].figures)], None, [one.span for one in within]


def without_unfit_series(steps: tuple[Step, ...], stated: Stated, sizes: int) -> tuple[tuple[Step, ...], Stated | None]:
    """The same for a count that is a list in brackets, "(20, 28, 32 sc)"; of two sizes it may be told of other things."""
    made = any(isinstance(step, MAKES_STITCHES) for step in steps)
    if sizes <= 2 or not made or len(stated.series) < _FEWEST:
        return steps, stated
    return (*steps, Remark(stated.span, unfit=len(stated.series))), None


def of_each_row(steps: tuple[Step, ...], stated: Stated, rows: int) -> tuple[Step, ...]:
    """The steps without the Unread of a count that has one figure for each row of a range: "Rows 3-5: … = 8, 6, 4 sc"."""
    if rows < 2 or len(stated.series) != rows:
        return steps
    at = stated.span
    return tuple(
        step
        for step in steps
        if not (isinstance(step, Unread) and at.start <= step.span.start < step.span.end <= at.end)
    )


def unfit_lists(lexemes: list[Lexeme], sizes: int) -> Iterator[Span]:
    """The lists over sizes among lexemes that were not folded into one.

    Those without brackets, "8-9-10", are folded where a number is read; only such as have another length are found.
    """
    kinds = ["number" if _plain(item) else item.kind for item in lexemes] + ["end"] * 3
    index = 0
    while index < len(lexemes):
        end = _list_at(lexemes, kinds, index, sizes) if kinds[index] == "number" else _whole_at(kinds, index, sizes)
        if end is None:
            index += 1
        else:
            yield Span(lexemes[index].start, lexemes[end - 1].end)
            index = end


def _some_sizes_named(lexemes: list[Lexeme], names: Mapping[str, int]) -> Iterator[Span]:
    """Figures of sizes by their names that are not one for each: "21 (medium: 23)" in three sizes."""
    for index in range(len(lexemes) - 4):
        opened = next((at for at in (index + 1, index + 2) if lexemes[at].kind in OPENERS), None)
        if not _plain(lexemes[index]) or opened is None:
            continue
        found = figure_of_size(lexemes, opened + 1, names)
        if found is not None:
            yield Span(lexemes[index].start, lexemes[found[1] - 1].end)


def _figure(item: Lexeme) -> bool:
    return item.kind in ("number", "ordinal", "dash")


def _values(item: Lexeme) -> tuple[int | None, ...]:
    return item.amount.values if item.amount is not None else (None if item.kind == "dash" else item.number,)


def _plain(item: Lexeme) -> bool:
    return item.kind in ("number", "ordinal") and item.amount is None


def _whole_at(kinds: list[str], index: int, sizes: int) -> int | None:
    """The index behind a list that is in brackets as a whole, with its unit behind it: "(11, 13, 15) sts"."""
    at, figures = index + 1, 0
    while kinds[index] in OPENERS and kinds[at] in ("number", "dash") and kinds[at + 1] in (*_SIGNS, *CLOSERS):
        figures, at = figures + 1, at + 2
        if kinds[at - 1] in CLOSERS:
            counted = kinds[at] in ("stitch", "any_stitch", "space")
            return (
                at if sizes > 2 and figures >= _FEWEST and counted and kinds[index - 1 : index] != ["number"] else None
            )
    return None


def _times_behind(lexemes: list[Lexeme], kinds: list[str], index: int) -> int | None:
    """The index behind "once (twice)", "2 times (3 times)": times in brackets behind other times."""
    opened = index + 1 + (kinds[index + 1] == "times")
    if opened == index + 1 and lexemes[index].lower not in TIMES or kinds[opened] not in OPENERS:
        return None
    close = next((at for at in range(opened + 1, len(lexemes)) if kinds[at] not in ("number", "times", *_SIGNS)), None)
    inside = lexemes[opened + 1 : close]
    worded = any(item.kind == "times" or item.lower in TIMES for item in inside)
    return close + 1 if close is not None and kinds[close] in CLOSERS and worded else None


def _list_at(lexemes: list[Lexeme], kinds: list[str], index: int, sizes: int) -> int | None:
    """The index behind a list that begins here: "11 (13, 15)", "11 (13) 15", "11 (13) sts", "11-13-15", "11, 13, 15"."""
    if (behind := _times_behind(lexemes, kinds, index)) is not None and sizes > 1:
        return behind
    longer = lexemes[index + 1].amount is not None if index + 1 < len(lexemes) else False
    if longer and _BRACKETED.match(lexemes[index + 1].text) and not (index and kinds[index - 1] in ("row", "round")):
        return index + 2  # "11 (13, 15, 17)" in three sizes
    if kinds[index + 1] in OPENERS:
        at, figures = index + 2, 0
        while kinds[at] == "number" or kinds[at] == "dash" and kinds[at + 1] in (*_SIGNS, *CLOSERS):
            figures, at = figures + 1, at + 1
            if kinds[at] not in (*_SIGNS, "and"):
                break
            at += 1
            at += kinds[at] == "and"
        if not figures or kinds[at] not in CLOSERS:
            return None
        end, more = at + 1, 0
        while figures == 1 and sizes > 1 and kinds[end] == "number" and _plain(lexemes[end]):
            more, end = more + 1, end + 1
            if (
                kinds[end] in OPENERS
                and kinds[end + 1] == "number"
                and end + 2 < len(kinds)
                and kinds[end + 2] in CLOSERS
            ):
                more, end = more + 1, end + 3
        if more:  # "11 (13) 15"
            return end
        inside = index and kinds[index - 1] in OPENERS
        counted = kinds[at + 1] in _COUNTED or inside and kinds[at + 1] in ("stitch", "number")
        chained = sizes > 1 and index > 0 and kinds[index - 1] == "chain" and kinds[index + 2] == "number"
        counted = counted or chained and lexemes[index].number != lexemes[index + 2].number
        return at + 1 if figures > 1 or counted else None
    sign = kinds[index + 1]
    before = lexemes[index - 1] if index else None
    if sign not in _SIGNS or before is not None and before.kind in ("row", "round", *OPENERS, *_SIGNS, "ordinal"):
        return None
    of_rows = index > 2 and kinds[index - 1] in ("and", "to", "dash") and kinds[index - 2] == "number"
    if of_rows and kinds[index - 3] in ("row", "round"):
        return None  # "Rep Rows 3 and 4, 5, 6, 6 times more": 4 is a row
    at, figures = index + 1, 1
    while kinds[at] == sign and kinds[at + 1] == "number" and (sign not in ("/", "dash") or lexemes[at].glued):
        figures, at = figures + 1, at + 2
    if kinds[at] in _FRACTIONS:
        return None  # "10, 11, 12½, 14 in" are lengths
    return at if figures > 2 and figures != sizes and kinds[at] != "and" else None
