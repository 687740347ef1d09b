"""Reads limbs worked in like one before: "join the fourth leg in the same way over the next 6 sts", worked as the round is."""

from __future__ import annotations

from lint.amount import ONE
from lint.lexicon import Lexeme
from lint.place import Place, Target, TargetKind, Which
from lint.reading.words.piecewords import is_piece, tells_piece
from lint.reading.words.stream import SIGNS, Stream
from lint.tree import PLAIN, JoinYarn, Remark, Step, Work

_JOINS = ("join", "attach", "connect", "add")
_ALIKE = ("in the same way", "in the same manner", "the same way", "as", "before", "likewise", "too", "also")
_OTHER = ("other", "left", "right", "your", *_ALIKE)
_MOST_WORDS = 8  # of such a clause before its stitches


def limb_joined(stream: Stream, steps: list[Step], start: int) -> bool:
    """Reads such a clause at the cursor, whose stitches are those of the work before; takes nothing where there is none."""
    if stream.word(*_JOINS) and (colon := _announced(stream)) is not None:
        stream.at = colon + 1
        steps.append(Remark(stream.span_from(start)))
        return True
    if stream.word("connect") and (end := _met(stream)) is not None:
        stream.at = end
        span = stream.span_from(start)
        steps.append(JoinYarn(span, places=(Place(span, Which.ELSEWHERE, (Target(TargetKind.PLACE, "piece"),)),)))
        return True
    before = next((step for step in reversed(steps) if isinstance(step, Work) and step.stitch != "sl st"), None)
    stitches = _stitches(stream) if before is not None and _is_plain(before) and stream.word(*_JOINS) else None
    if stitches is None:
        stream.at = start
        return False
    steps.append(Work(stream.span_from(start), before.stitch, ONE, (stitches,)))
    return True


def _announced(stream: Stream) -> int | None:
    """Where the colon of "join the first arm: 3 sc through arm and body" stands, which only tells what the stitches are for."""
    colon = stream.next_of(":", *SIGNS)
    named = stream.lexemes[stream.at + 1 : colon]
    ahead = colon + 1 - stream.at
    work = stream.kind(ahead) == "number" and stream.kind(ahead + 1) == "stitch" or stream.kind(ahead) == "stitch"
    if stream.kind(colon - stream.at) != ":" or not work or not any(tells_piece(item.lower) for item in named):
        return None
    return colon if all(item.kind in ("with", "to") or _is_idle(item) for item in named) else None


def _met(stream: Stream) -> int | None:
    """Where "connect with the first leg (with a sl st)", "connect the legs" ends, which tells what the chain leads to."""
    end = stream.next_of(",", ";", ".", ":")
    words = stream.lexemes[stream.at + 1 : end]
    slip = next(
        (
            at
            for at, item in enumerate(words)
            if item.value == "sl st" and any(one.kind == "with" for one in words[max(0, at - 2) : at])
        ),
        None,
    )
    words = words if slip is None else [item for at, item in enumerate(words) if at != slip]
    told = stream.kind(end - stream.at) == ":"
    named = any(
        is_piece(item.lower) or told and tells_piece(item.lower) for item in words
    )  # "connect the legs," not which
    return end if named and all(item.kind in ("with", "to") or _is_idle(item) for item in words) else None


def _is_idle(item: Lexeme) -> bool:
    """Whether a word only names or points at the limb."""
    pointing = ("the", "first", "last", "next", "ordinal")
    return item.kind in pointing or item.lower in _OTHER or tells_piece(item.lower)


def _is_plain(step: Work) -> bool:
    """Whether a step works one plain stitch in each place, or says no place at all."""
    run = not step.places or len(step.places) == 1 and step.places[0].which is Which.NEXT and step.number == ONE
    return run and step.together is None and step.special is None and step.stitch not in ("inc", "dec", PLAIN)


def _stitches(stream: Stream) -> Place | None:
    """The stitches of "join the second arm over the next 3 sts (in the same way)", with all words before them taken."""
    begin = stream.at + 1
    stream.at = over = stream.next_of("over", "across", "in", *SIGNS)
    named = stream.lexemes[begin:over]
    if len(named) > _MOST_WORDS or not any(tells_piece(item.lower) for item in named):
        return None
    if not all(map(_is_idle, named)):
        return None
    if stream.take_if("over", "across", "in") is None:
        return None
    stream.skip("the")
    at = stream.at
    number = stream.amount() if stream.take_if("next") is not None else None
    if number is None or stream.take_if("any_stitch") is None:
        return None
    span = stream.span_from(at)
    while stream.word(*_ALIKE):
        stream.take()
    alike = any(item.lower in _ALIKE for item in stream.lexemes[begin : stream.at])  # else how it is joined is not said
    if not alike or stream.kind() not in (*SIGNS, "end", "and", "dash", "="):
        return None
    return Place(span, Which.NEXT, (Target(TargetKind.ANY_STITCH),), number, each_of=True)


__all__ = ["limb_joined"]
