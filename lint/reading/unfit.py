"""Lists over the sizes that are not one number for each size: a row of work with one is not worked, for its maker reads
none of them; a printed count with one, where it surely is a count, says nothing, and its row is worked like one without.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from lint.lexicon import Lexeme
from lint.reading.namedlists import figure_of_size
from lint.reading.stream import CLOSERS, OPENERS
from lint.source import Span
from lint.tree import MAKES_STITCHES, AlongEdge, FastenOff, OpenWork, OtherSide, Remark, Step, Unread, UseYarn, Work

_SIGNS = (",", ":", ";", "/", "dash")
_COUNTED = ("any_stitch", "times", "space")
_FEWEST = 3  # figures of a list that is surely one over the sizes: "20 (22) sc" may be told of other things
_UNITS = ("stitch", "any_stitch", "space", "total")
_BEFORE_COUNTS = (
    ".",
    ":",
    ";",
    "dash",
    "=",
    "→",
    "turn",
    "join",
    "stitch",
    "any_stitch",
    "across",
    "around",
    "end",
    *CLOSERS,
)
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


def without_unfit_counts(steps: list[Step], lexemes: list[Lexeme], sizes: int) -> tuple[list[Step], list[Span]]:
    """The steps without the words of printed counts that fit no reading over the sizes; and where those counts stand."""
    made = [step.span for step in steps if isinstance(step, MAKES_STITCHES)]
    counts: list[Remark] = []
    for span in unfit_lists(lexemes, sizes) if sizes > 1 and made else ():
        first = next(index for index, item in enumerate(lexemes) if item.start == span.start)
        last = next(index for index, item in enumerate(lexemes) if item.end == span.end)
        opened = first > 0 and lexemes[first - 1].kind in OPENERS
        before = lexemes[first - 1 - opened].kind if first > opened else "end"
        kinds = [item.kind for item in lexemes[last + 1 :]]
        unit = next((index for index, kind in enumerate(kinds) if kind not in _UNITS), len(kinds))
        ends = kinds[unit : unit + 1] in ([], ["."], [";"], ["join"], ["turn"]) or kinds[unit] in CLOSERS
        alone = before == "." and kinds[unit:] in ([], ["."])  # a sentence of its own: "Turn. 18 (22, 26) sc."
        behind = all(one.end <= span.start or alone and one.start >= span.start for one in made)
        figures = sum(item.kind == "number" for item in lexemes[first : last + 1])
        if behind and ends and (unit or opened) and before in _BEFORE_COUNTS and figures >= _FEWEST:
            counts.append(Remark(Span(lexemes[first - opened].start, lexemes[last + unit].end), unfit=figures))
    left: list[Step] = [
        step
        for step in steps
        if not isinstance(step, (Unread, Work))
        or not any(step.span.start < one.span.end and one.span.start < step.span.end for one in counts)
    ]
    return [*left, *counts], [one.span for one in counts]


def unfit_lists(lexemes: list[Lexeme], sizes: int) -> Iterator[Span]:
    """The lists over sizes among lexemes that were not folded into one.

    Those without brackets, "8-9-10", are folded where a number is read; only such as have another length are found.
    """
    kinds = ["number" if _plain(item) else item.kind for item in lexemes] + ["end"] * 3
    index = 0
    while index < len(lexemes):
        end = _list_at(lexemes, kinds, index, sizes) if kinds[index] == "number" else None
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


def _plain(item: Lexeme) -> bool:
    return item.kind in ("number", "ordinal") and item.amount is None


def _list_at(lexemes: list[Lexeme], kinds: list[str], index: int, sizes: int) -> int | None:
    """The index behind a list that begins here: "11 (13, 15)", "11 (13) sts", "11-13-15", "11, 13, 15"."""
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
        inside = index and kinds[index - 1] in OPENERS
        counted = kinds[at + 1] in _COUNTED or inside and kinds[at + 1] in ("stitch", "number")
        chained = sizes > 1 and index > 0 and kinds[index - 1] == "chain" and kinds[index + 2] == "number"
        counted = counted or chained and lexemes[index].number != lexemes[index + 2].number
        return at + 1 if figures > 1 or counted else None
    sign = kinds[index + 1]
    before = lexemes[index - 1] if index else None
    if sign not in _SIGNS or before is not None and before.kind in ("row", "round", *OPENERS, *_SIGNS, "ordinal"):
        return None
    at, figures = index + 1, 1
    while kinds[at] == sign and kinds[at + 1] == "number" and (sign not in ("/", "dash") or lexemes[at].glued):
        figures, at = figures + 1, at + 2
    return at if figures > 2 and figures != sizes and kinds[at] != "and" else None
