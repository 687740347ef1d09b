"""Reads stitches of a piece that is joined in: "40 body sts", "each st of first sleeve", "Work 38 body sts, 28 sleeve sts"."""

from __future__ import annotations

from lint.amount import ONE, Amount
from lint.place import Place, Target, TargetKind, Which
from lint.reading.words.piecewords import has_stitches
from lint.reading.words.stream import Stream
from lint.tree import PLAIN, Step, Work

PIECE = (Target(TargetKind.PLACE, "piece"),)


def piece_stitches(stream: Stream, start: int, number: Amount | None) -> Place | None:
    """The "body sts" of "40 (44, 48) body sts", whose number is taken: so many of that piece; None if there are none."""
    word = stream.peek().lower
    if number is None or not has_stitches(word) or stream.kind(1) != "any_stitch":
        return None
    stream.at += 2
    return Place(stream.span_from(start), Which.ELSEWHERE, PIECE, number, from_words=word)


def piece_run(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "Work 38 body sts", and in the same list "28 sleeve sts": each of them worked as the row is."""
    stream.at = start
    anew = stream.take_if("make") is not None
    found = piece_stitches(stream, start, stream.amount())
    before = _last_of_piece(steps) if found is not None and not anew else None
    if found is None or not anew and (before is None or not _one_in_each(before)):
        stream.at = start
        return False
    steps.append(Work(stream.span_from(start), before.stitch if before is not None else PLAIN, ONE, (found,)))
    return True


def _last_of_piece(steps: list[Step]) -> Work | None:
    """The last work on the stitches of a piece."""
    works = (step for step in reversed(steps) if isinstance(step, Work))
    return next((step for step in works if step.places[:1] and step.places[0].targets == PIECE), None)


def _one_in_each(step: Work) -> bool:
    """Whether one plain stitch goes into each place: of "2 sc in 38 body sts, 28 sleeve sts" it is not said what the 28 get."""
    return step.number == ONE and step.together is None and step.stitch not in ("inc", "dec", "sl st")
