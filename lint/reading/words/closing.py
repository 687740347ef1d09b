"""Tells the join that closes a round from slip stitches on the way, whatever they are called."""

from __future__ import annotations

from dataclasses import replace

from lint.lexicon import Lexeme
from lint.place import TargetKind, Which
from lint.reading.words.rowending import is_talk
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.source import Span
from lint.tree import (
    MAKES_STITCHES,
    NOT_UNDERSTOOD,
    Chain,
    Counting,
    FastenOff,
    Group,
    Join,
    JoinYarn,
    NoJoin,
    OpenWork,
    Remark,
    Repeat,
    Step,
    Turn,
    Unread,
    Work,
    walk,
)


def joined_on_the_way(steps: list[Step]) -> list[Step]:
    """ "join with sl st to ch-3 sp of next tile, ch 3, 3 dc in same sp": before more work, a slip stitch like any other."""
    found: list[Step] = []
    for index, step in enumerate(steps):
        if isinstance(step, Repeat):
            step = replace(step, items=tuple(joined_on_the_way(list(step.items))))
        into = step.places[0].targets[0].kind if isinstance(step, Join) and len(step.places) == 1 else None
        if into in (TargetKind.SPACE, TargetKind.SPECIAL) and step.places[0].which in (Which.NEXT, Which.SAME):
            if any(isinstance(after, (Work, Group)) and not _slip(after) for after in walk(tuple(steps[index + 1 :]))):
                step = Work(step.span, "sl st", places=step.places)
        found.append(step)
    return found


def _slip(step: Step) -> bool:
    return isinstance(step, Work) and step.stitch == "sl st"


def chain_told_by_count(steps: list[Step], lexemes: list[Lexeme]) -> list[Step]:
    """ "12 dc, counting ch 3": the printed count says that the beginning chain is one of its stitches."""
    told = next((i for i, item in enumerate(lexemes) if item.lower in _COUNTING), None)
    words = lexemes[told : told + 5] if told is not None else []
    several = any(item.kind == "space" or item.kind == "chain" and item.lower.endswith("s") for item in words)
    if several or not any(item.kind in ("chain", "turning_chain") for item in words):
        return steps  # "counting ch-3 sps": all the spaces of the row
    note = Counting(Span(words[0].start, words[-1].end), True)
    found = list(steps)
    for index, step in enumerate(found):
        hooked = isinstance(step, Work) and bool(step.places) and step.places[0].which is Which.FROM_HOOK
        if hooked and step.closing is None:
            found[index] = replace(step, closing=note)
        ahead = next((s for s in found[index + 1 :] if isinstance(s, (Work, Group, Repeat))), None)
        founds = isinstance(ahead, Work) and bool(ahead.places) and ahead.places[0].which is Which.FROM_HOOK
        if isinstance(step, Chain) and not founds and step.counting is None:
            found[index] = replace(step, counting=note)
        if isinstance(step, (Work, Group, Repeat)) or isinstance(step, Chain) and not founds:
            break
    return found


_OF_THIS_PIECE = ("half", "side", "sides", "shoulder", "edge")
_COUNTING = ("counting", "including", "incl")
MOST_PICOT_CHAINS = 7  # common practice, no source: a longer loop is no picot


def picots_closed(steps: list[Step], repeated: bool = False) -> list[Step]:
    """ "sc in next 4 dc, ch 3, sl st in last sc": a picot, closed into the stitch just made and not into the row below.

    What ends the row is left to the join, unless the passage is `repeated`.
    """
    found: list[Step] = []
    for index, step in enumerate(steps):
        if isinstance(step, Repeat):
            step = replace(step, items=tuple(picots_closed(list(step.items), True)))
            if step.last_pass is not None:
                step = replace(step, last_pass=tuple(picots_closed(list(step.last_pass), True)))
        elif isinstance(step, Group):
            step = replace(step, items=tuple(picots_closed(list(step.items), True)))
        goes_on = repeated or any(isinstance(after, (Work, Group, Repeat)) for after in steps[index + 1 :])
        if goes_on and len(found) > 1 and _closes_picot(found[-2], found[-1], step):
            step = replace(step, places=(replace(step.places[0], which=Which.JUST_MADE, from_words=""),))
        found.append(step)
    return found


def _closes_picot(stitch: Step, chain: Step, slip: Step) -> bool:
    """Whether a slip stitch after a short chain names the stitch before it: "last sc", "top of the sc"."""
    if not isinstance(chain, Chain) or (chain.length.lone or 99) > MOST_PICOT_CHAINS or chain.counting is not None:
        return False
    last = stitch.items[-1] if isinstance(stitch, Group) and stitch.items else stitch
    if not (isinstance(last, Work) and _slip(slip) and len(slip.places) == 1):
        return False
    place = slip.places[0]
    named = place.targets[0].kind is TargetKind.STITCH and place.targets[0].name == last.stitch
    alone = place.which is Which.LAST or place.which is Which.NEXT and place.from_words == "top"
    return named and alone and place.number.lone == 1 and place.of is None


def in_place_of_loop(stream: Stream) -> Span | None:
    """Takes the "in place of last ch-5", "instead of the last loop" behind "dc in first sc", which closes the round as that."""
    start = stream.at
    led = stream.word("in place of", "instead of") or stream.word("instead") and stream.kind(1) == "of"
    stream.at += (2 if stream.word("instead") else 1) if led else 0
    stream.skip("the")
    if led and stream.take_if("last") is not None:
        chained = stream.take_if("chain") is not None
        stream.take_if("dash")
        long = stream.amount() if chained else None
        space = stream.take_if("space") is not None
        if (long is not None or space and not chained) and stream.kind() in (*SIGNS, "end", "join", "turn", *OPENERS):
            return stream.span_from(start)
    stream.at = start
    return None


def closing_join(steps: list[Step]) -> list[Step]:
    """A slip stitch into the first stitch or the beginning chain, when nothing is worked after it, closes the round."""
    for index in range(len(steps) - 1, -1, -1):
        step = steps[index]
        if isinstance(step, (FastenOff, Turn, Remark, NoJoin)):
            continue
        if isinstance(step, Work) and step.stitch == "sl st" and len(step.places) == 1:
            place = step.places[0]
            to_chain = place.targets[0].kind in (TargetKind.TURNING_CHAIN,) or place.from_words == "top"
            if place.targets[0].name == "join" and not (index and isinstance(steps[index - 1], Chain)):
                to_chain = (
                    True  # "*3 ch, …; rep from * round, ss in base of first 3 ch", but not "…, ending 3 ch, ss in base"
                )
            own = index > 0 and any(isinstance(other, (Work, Group, Repeat)) for other in steps[:index])
            if own and (to_chain or place.which is Which.FIRST or place.ordinals):
                steps[index] = Join(step.span, step.places)
        break
    return steps


def after_fastening(steps: list[Step], lexemes: list[Lexeme]) -> list[Step]:
    """The steps; what "Fasten off. Work the second sleeve in the other armhole." tells of another piece is a remark.

    "Work the second half in the same way" are more rows of this piece, and none of this row.
    """
    off = next((i for i, step in enumerate(steps) if isinstance(step, FastenOff)), len(steps))
    worked = any(isinstance(step, MAKES_STITCHES) for step in walk(tuple(steps[:off])))
    if not worked or any(isinstance(step, JoinYarn) for step in steps[off:]):
        return steps
    behind = [_told_behind(step) if isinstance(step, OpenWork) else step for step in steps[off:]]
    if all(isinstance(step, (FastenOff, Remark)) or _is_of_no_work(step, lexemes) for step in behind):
        behind = [Remark(step.span) if isinstance(step, Unread) else step for step in behind]
    return [*steps[:off], *behind]


def _is_of_no_work(step: Step, lexemes: list[Lexeme]) -> bool:
    """Whether words that are not understood are mere talk: "Fasten off; pin out the points." """
    words = [item for item in lexemes if step.span.start <= item.start < step.span.end]
    talk = is_talk(words) and all(item.kind not in ("number", "any_stitch", "one_stitch", "special") for item in words)
    return isinstance(step, Unread) and talk and not any(item.lower in _OF_THIS_PIECE for item in words)


def _told_behind(step: OpenWork) -> Step:
    same = any(word in _OF_THIS_PIECE for word in step.words.lower().split())
    return Unread(step.span, step.words, NOT_UNDERSTOOD) if same else Remark(step.span)
