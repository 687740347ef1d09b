"""Reads what a row sets out with before its work: "Only in the BLO this time,", "Work with off white as follows:", "From the second leg", "Begin at hem with"."""

from __future__ import annotations

from lint.place import Place, Target, TargetKind, Which
from lint.reading.words.piecewords import names_piece, piece_alone
from lint.reading.words.stream import Stream
from lint.tree import Chain, Loops, Remark, Skip, Step, UseYarn

_SIGNS = (",", ":", "dash", ";")
_LOOPS = ("back_loop", "front_loop", "both_loops", "third_loop")
_IDLE_KINDS = ("in", "the", "same", "round", "row", "make", "throughout", "over", "of", "all", "made")
_IDLE_WORDS = (
    "only", "time", "is", "are", "now", "again", "whole", "entire", "here", "worked", "done", "crocheted", "entirely", "we", "you",
    "i", "for", "working", "just",
)  # fmt: skip
_LONGEST = 10  # lexemes before the sign


def set_out(stream: Stream, steps: list[Step], start: int) -> bool:
    """Reads such words at the cursor; takes nothing where there are none."""
    stream.at = start
    if (loop := _loop_of_chain(stream, steps)) is not None:
        steps.append(Skip(stream.span_from(start), (loop,)))
        return True
    stream.at = start
    if _from_piece(stream):
        steps.append(Remark(stream.span_from(start)))
        return True
    stream.at = start
    if _same_again(stream) or _back_along_chain(stream) or _where_begun(stream):
        steps.append(Remark(stream.span_from(start)))
        return True
    stream.at = start
    end = stream.sentence_end(start, *_SIGNS, ".")
    words = stream.lexemes[start:end]
    signed = end < len(stream.lexemes) and stream.lexemes[end].kind in _SIGNS
    if not signed or len(words) > _LONGEST:
        return False
    loops = [item for item in words if item.kind in _LOOPS]
    if len(loops) == 1 and all(item.kind in (*_IDLE_KINDS, *_LOOPS) or item.lower in _IDLE_WORDS for item in words):
        stream.at = end
        steps.append(Loops(stream.span_from(start), loops[0].kind.split("_")[0]))
        return True
    if stream.lexemes[end].kind == ":" and (colour := _with_yarn(stream, start, end)) is not None:
        stream.at = end
        steps.append(UseYarn(stream.span_from(start), colour))
        return True
    return False


def _loop_of_chain(stream: Stream, steps: list[Step]) -> Place | None:
    """Takes "from the second loop" behind a chain, as translators have it: the second from the hook."""
    stream.take_if("beginning")
    if not steps or not isinstance(steps[-1], Chain) or not stream.take_if("from", "in"):
        return None
    stream.skip("the")
    at = stream.at
    ordinal = stream.take_if("ordinal")
    if (
        ordinal is None
        or not stream.word("loop", "lp")
        or stream.kind(1) not in (",", ":", "number", "stitch", "increase")
    ):
        return None
    stream.take()
    return Place(stream.span_from(at), Which.FROM_HOOK, (Target(TargetKind.CHAIN),), ordinals=(ordinal.number,))


def _from_piece(stream: Stream) -> bool:
    """Takes "From the second leg", "Starting from leg 2,": where the yarn hangs."""
    if stream.kind() == "beginning":
        stream.take()
    if not stream.take_if("from"):
        return False
    ahead = 1 if stream.kind() == "the" else 0
    if names_piece(stream, ahead):
        stream.at += ahead + 2
    elif piece_alone(stream):
        stream.at += ahead + 1
    elif stream.kind(ahead) == "chain" and stream.kind(ahead + 1) in ("number", ":", ","):
        stream.at += ahead + (2 if stream.kind(ahead + 1) == "number" else 1)  # "from the ch2:", which was made before
        return stream.kind() in _SIGNS
    else:
        return False
    chained = stream.kind() == "number" and stream.kind(1) == "chain"  # "from the second leg 3 ch"
    return chained or stream.kind() in (*_SIGNS, "chain", "end", "and", "make")


def _same_again(stream: Stream) -> bool:
    """Takes "Same again:", "Same thing again:" before a row's own words; without these it would call the row before."""
    start = stream.at
    if not (stream.word("same") and stream.take()):
        return False
    if stream.word("thing", "thing's"):
        stream.take()
    if stream.word("again", "here") and stream.kind(1) == ":" and stream.kind(2) in ("chain", "number", "stitch"):
        stream.at += 1
        return True
    stream.at = start
    return False


def _where_begun(stream: Stream) -> bool:
    """Takes "Commence at the neck edge with", "Begin at hem by" before the chain that the piece begins on."""
    start, end = stream.at, stream.sentence_end(stream.at, *_SIGNS, ".")
    words = stream.lexemes[start:end]
    led = next((at for at, item in enumerate(words) if item.kind == "with" or item.lower in ("by", "and")), None)
    if led is None or [item.kind for item in words[:2]] != ["beginning", "at"]:
        return False
    chained = [item.kind for item in words[led + 1 :] if item.kind not in ("make", "the")][:2]
    where = all(item.kind in ("at", "the", "edge", "side", "base", "top", "word", "half") for item in words[1:led])
    if not where or sorted(chained) != ["chain", "number"]:
        return False
    stream.at = start + led + 1
    stream.take_if("make")
    return True


def _back_along_chain(stream: Stream) -> bool:
    """Takes "Working back along the chain:" before "sl st in 2nd ch from hook"."""
    start, end = stream.at, stream.sentence_end(stream.at, *_SIGNS, ".")
    words = [item.lower for item in stream.lexemes[start:end]]
    back = words[:1] in (["work"], ["working"]) and "back" in words and words[-1] in ("chain", "ch", "chs", "chains")
    ahead = [item.kind for item in stream.lexemes[end : end + 9]]
    if back and len(words) <= 6 and "ordinal" in ahead and "from" in ahead and "hook" in ahead:
        stream.at = end
        return True
    return False


def _with_yarn(stream: Stream, start: int, end: int) -> str | None:
    """The yarn of "Work with off white as follows": its words, which hold no stitch and no figure."""
    words = stream.lexemes[start:end]
    if len(words) < 3 or words[0].kind != "make" or words[1].kind != "with":
        return None
    named = [item for item in words[2:] if item.kind not in ("as", "manner", "telling") and item.lower != "follows"]
    if not named or any(item.kind not in ("word", "color", "yarn", "the") for item in named):
        return None
    return named[-1].text
