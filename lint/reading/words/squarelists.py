"""Rows of filet squares parted by semicolons or full stops: "3 sps; 1 bl; 4 sps; 1 bl" is worked, and counts nothing."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace

from lint.lexicon import Lexeme
from lint.reading.words.stream import Stream

_SQUARES = ("special", "space", "group_word", "one_stitch")
_FILET = ("bl", "block", "blk", "sp", "space", "mesh", "om")
_FEWEST = 3  # pieces that make a list where no squares stand before it


@dataclass(frozen=True)
class _Piece:
    """ "4 sps" between two signs: where the sign before it stands, what it is, and how many."""

    sign: int
    sort: str
    number: int
    stitch: bool
    led: bool = True  # by a semicolon or a full stop, and not by a comma


def squares_as_list(stream: Stream) -> Stream:
    """The row with such signs as commas, as far as its squares are worked, and as semicolons in what counts them."""
    words = stream.lexemes
    cuts = [-1, *(at for at, item in enumerate(words) if item.kind in (";", ".")), len(words)]
    put: dict[int, str] = {}
    run: list[_Piece] = []
    for before, behind in zip(cuts, cuts[1:], strict=False):
        pieces = _pieces(words, before, behind)
        run += pieces
        if run and (not pieces or behind == len(words)):
            worked = _worked(run, _told_before(words, max(0, run[0].sign)))
            for at, piece in enumerate(run):
                if piece.sign >= 0 and (at < worked or worked):
                    put[piece.sign] = "," if at < worked else ";"
            run = []
    if not put:
        return stream
    changed = [replace(item, kind=put.get(at, item.kind), text=put.get(at, item.text)) for at, item in enumerate(words)]
    return Stream(changed, stream.vocabulary)


def _pieces(words: list[Lexeme], sign: int, end: int) -> list[_Piece]:
    """The squares of "2 bls, 2 sps" between two signs, all of them; of stitches there may be but one sort."""
    commas = [at for at in range(sign + 1, end) if words[at].kind == ","]
    cuts = [sign, *commas, end]
    if commas and [item.kind for item in words[commas[-1] + 1 : end]] == ["turn"]:
        cuts = cuts[:-1]  # "1 bl, turn"
    parts = [_piece(words, one, other) for one, other in zip(cuts, cuts[1:], strict=False)]
    found = [part for part in parts if part is not None]
    several = len(found) > 1 and any(part.stitch for part in found)
    if len(found) < len(parts) or several:
        return []
    return [replace(part, led=part.sign == sign) for part in found]


def _piece(words: list[Lexeme], sign: int, end: int) -> _Piece | None:
    """A piece that is a number of squares or stitches and no more, its count or a turn behind it perhaps."""
    first = sign + 1
    kinds = [item.kind for item in words[first : min(end, first + 3)]]
    ends = len(kinds) == 2 or kinds[2:] in (["("], ["["], ["turn"], ["dash"])
    if kinds[:1] != ["number"] or not ends or kinds[1] not in (*_SQUARES, "stitch"):
        return None
    return _Piece(sign, _sort(words[first + 1]), words[first].number, kinds[1] == "stitch")


def _sort(unit: Lexeme) -> str:
    return (unit.value or unit.lower).rstrip("s")


def _told_before(words: list[Lexeme], end: int) -> Counter[str]:
    """How many squares of each sort are worked in front of a sign: "Ch 3, turn, 2 sps, 1 bl;"."""
    found: Counter[str] = Counter()
    for one, other in zip(words[:end], words[1:end], strict=False):
        if one.kind == "number" and other.kind in _SQUARES:
            found[_sort(other)] += one.number
    return found


def _worked(run: list[_Piece], before: Counter[str]) -> int:
    """How many of the pieces are worked; those behind them count what the row has, each sort once."""
    several = next((at for at in range(len(run) - 1) if not run[at + 1].led), None)
    if several is not None and not any(_counts(run[at:], run[:at], before) for at in range(1, len(run))):
        run = run[:several]  # "1 sp, 5 bls, 1 sp." between two stops is mostly a count
    sorts = Counter(piece.sort for piece in run)
    end = len(run)
    while end and run[end - 1].stitch and sorts[run[end - 1].sort] == 1:
        end -= 1  # "…; 1 bl; 14 dc": the stitches of all squares
    body = run[:end]
    new = [at for at, piece in enumerate(body, 1) if not piece.stitch and piece.sort not in before]
    if all(sorts[piece.sort] == 1 for piece in body):
        filet = any(sort in _FILET for sort in before)
        told = [at for at in new if body[at - 1].sort in _FILET] if filet else []
        return (told[-1] if _counts(body[told[-1] :], body[: told[-1]], before) else end) if told else 0
    if len(body) < _FEWEST or all(piece.stitch for piece in body):
        return 0
    return next((at for at in range(1, end) if _counts(body[at:], body[:at], before)), end)


def _counts(rest: list[_Piece], worked: list[_Piece], before: Counter[str]) -> bool:
    """Whether pieces count all that is worked in front of them, to the figure."""
    made = Counter(before)
    for piece in worked:
        made[piece.sort] += piece.number
    counted = {piece.sort: piece.number for piece in rest if not piece.stitch}
    return len(counted) > 0 and len({piece.sort for piece in rest}) == len(rest) and counted == dict(made)
