"""Lists without brackets in passages for some sizes, as the pattern parts its own: "34, 38 sts", "34-38 sts" for two of four."""

from __future__ import annotations

from lint.reading.words.cursor import CLOSERS, OPENERS, Cursor

_ROWS = ("row", "round")
_WORK = ("stitch", "special", "one_stitch", "group_word", "increase", "decrease")
_TO_A_PLACE = ("in", "over", "around", "together", "each", "next")  # "next 3, 5 sc in next st": the 5 are worked there
_ENDS = (",", ";", ".", "end", *CLOSERS)
_BEGINS = ("end", ".", ";", ":", "=", "dash", "turn", "join", "no_turn", *OPENERS)


def parted_in_gate(stream: Cursor, sizes: int, signs: tuple[str, ...]) -> tuple[tuple[int, ...], int] | None:
    """One figure for each of the `sizes` of the passage at the cursor, and their length; `signs`: what parts the pattern's lists.

    Commas part the sizes of a passage in any pattern, whatever its own lists look like.  Of two figures both could be
    numbers of their own, "next 3, 5 sc", so that the words around must leave them no other meaning.
    """
    length = 2 * sizes - 1
    figures = [stream.peek(ahead) for ahead in range(0, length, 2)]
    between = [stream.peek(ahead) for ahead in range(1, length, 2)]
    plain = all(item.kind == "number" and item.amount is None and item.text.isdigit() for item in figures)
    sign = between[0].kind if between else ""
    signs = (*signs, ",", ";") if sizes > 2 else (*signs, ",")
    if not plain or sign not in signs or any(item.kind != sign for item in between):
        return None
    if sign == "dash" and not all(item.glued for item in (*between, *figures[1:])):
        return None  # "12 – 14 sts": a count behind a dash
    longer = stream.kind(length) == sign and stream.kind(length + 1) == "number"
    if longer or stream.kind(-1) == sign and stream.kind(-2) == "number" or _names_rows(stream):
        return None
    if stream.kind(length) in _WORK and stream.kind(length + 1) in _TO_A_PLACE:
        return None
    if sizes == 2 and not (_no_others(stream, length) or _stroke_in_run(stream, length)):
        return None
    return tuple(item.number for item in figures), length


def _names_rows(stream: Cursor) -> bool:
    """Whether the figures are rows that are named, or go on from such: "Rep Rows 2, 3", "Rows 2 and 3, 4"."""
    at = -1
    while stream.kind(at) in ("number", "and", "to", "dash", ",") and stream.at + at >= 0:
        at -= 1
    return stream.kind(at) in _ROWS and (at == -1 or stream.kind(-1) != "number")


def _no_others(stream: Cursor, length: int) -> bool:
    """Whether two figures are surely one number: a chain, a run, times, rows or a printed count for each of two sizes."""
    before, behind = stream.kind(-1), stream.kind(length)
    ended = stream.kind(length + 1) in _ENDS
    if before == "chain":
        return behind in (".", ";", "end")
    more = length + (behind == "more")
    if stream.kind(more) in ("times", *_ROWS) or stream.peek(more).lower.startswith(("row", "round", "rnd")):
        return True
    if before in ("next", "first", "last"):
        return behind == "any_stitch" or behind in _WORK and ended and _same_stitch(stream, stream.peek(length).lower)
    return before in _BEGINS and (behind in ("any_stitch", *_WORK) and ended or before in OPENERS and behind in CLOSERS)


def _stroke_in_run(stream: Cursor, length: int) -> bool:
    """Whether the figures are those of a run, with a stroke between: "sc 14/17," parts no two runs."""
    close = all(stream.peek(ahead).glued for ahead in range(1, length))
    run = stream.kind(-1) in ("stitch", "increase", "decrease", "skip")
    return stream.kind(1) == "/" and close and run and stream.kind(length) in _ENDS


def _same_stitch(stream: Cursor, name: str) -> bool:
    """Whether the run before the figures is of the stitch behind them, "sc in next 34, 38 sc": nobody parts it in two."""
    at = -1
    while stream.kind(at) in ("next", "first", "last", "in", "each", "of", "the"):
        at -= 1
    return stream.peek(at).lower == name
