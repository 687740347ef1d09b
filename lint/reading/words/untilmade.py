"""Reads repeats that run until something is reached: "rep from * until you have 4 groups", "until there are 6 ch-2 sps"."""

from __future__ import annotations

from lint.amount import Amount
from lint.place import Which
from lint.reading.words.lists import alike
from lint.reading.words.stream import SIGNS, Stream
from lint.tree import Chain, Group, NoJoin, Remark, Repeat, Step, Times, TimesKind, Turn, UseYarn, Work

_HAVE = (
    "you",
    "have",
    "there",
    "are",
    "a",
    "the",
    "total",
    "total of",
    "a total of",
    "of",
    "now",
    "will",
    "made",
    "get",
    "has",
    "been",
)
_UNITS = ("group", "set", "cluster", "shell", "petal", "corner", "loop", "fan", "v-st", "point")  # one to a pass
_TAIL = (
    "of", "in", "all", "the", "ring", "total", "in all", "in total", "each", "made", "altogether", "around", "three", "two", "four", "five", "six",
)  # fmt: skip


_MAKES_NONE = (Remark, Turn, UseYarn, NoJoin)
_DONE = ("worked", "work", "done", "made", "completed", "repeated")
_OF_IT = (
    "you", "have", "has", "been", "it", "this", "that", "is", "are", "the", "ve", "'ve", "’ve", "you've", "you’ve", "a", "of", "total", "for",
)  # fmt: skip


def until_done(stream: Stream) -> Times | None:
    """Takes "until you have worked it 6 times in all", "until this has been done a total of 6 times": so often, as a rule no more."""
    start = stream.at
    if not stream.word("until", "till"):
        return None
    told = stream.next_of("number", *SIGNS, "end", start=start)
    words = [word for item in stream.lexemes[start + 1 : told] for word in item.lower.split()]
    stream.at = told
    number = stream.amount() if all(word in (*_DONE, *_OF_IT) for word in words) else None
    if number is None or stream.take_if("times") is None or not any(word in _DONE for word in words):
        stream.at = start
        return None
    if stream.take_if("total") is not None or stream.word("altogether") and stream.take():
        words.append("total")
    again = "repeated" in words and "total" not in words  # the first time counted, or not: as in "rep from * 5 times"
    return Times(stream.span_from(start), TimesKind.UNCLEAR if again else TimesKind.IN_ALL, number)


def until_made(stream: Stream, steps: list[Step], opened: int) -> Times | None:
    """How often a passage from `opened` on runs, where it makes one of what is counted each time, and so does its opening."""
    start = stream.at
    if not stream.word("until", "till"):
        return None
    stream.take()
    while stream.kind() in ("the", "total") or stream.word(*_HAVE):
        stream.take()
    number = stream.amount()
    body, before = steps[opened + 1 :], steps[:opened]
    if number is not None and _stitches(stream):
        passes = _passes_to_stitches(number.lone, body, before)
    else:
        passes = _passes(number, body, before) if number is not None and _unit(stream) else None
    if passes is None:
        stream.at = start
        return None
    return Times(stream.span_from(start), TimesKind.IN_ALL, passes)


def _stitches(stream: Stream) -> bool:
    """Takes "sts", "sc in all": all that the row has by then; not "sts left", which are of the row below."""
    end = stream.next_of(",", ";", ".", "(", "end", "join", "turn", start=stream.at)
    items = stream.lexemes[stream.at : end]
    if not items or items[0].kind not in ("any_stitch", "stitch") or any(i.lower not in _TAIL for i in items[1:]):
        return False
    stream.at = end
    return True


def _passes_to_stitches(number: int | None, body: list[Step], before: list[Step]) -> Amount | None:
    """The passes to so many stitches, where what each clause makes is plain by its words."""
    each = [_made(step) for step in body]
    ahead = [_made(step) for step in before if not isinstance(step, _MAKES_NONE)]
    if number is None or None in (*each, *ahead) or not sum(each):
        return None
    passes, over = divmod(number - sum(ahead), sum(each))
    return Amount.of(passes) if passes > 0 and not over else None


def _made(step: Step) -> int | None:
    """How many stitches a clause makes: "sc 2", "inc", "2 sc in next st"; None for any other."""
    if not isinstance(step, Work) or step.special is not None or step.stitch == "sl st" or step.number.lone is None:
        return None
    place = step.places[0] if len(step.places) == 1 else None
    if step.together or step.places and (place is None or place.which is not Which.NEXT or place.shared):
        return None if step.places else step.number.lone
    places = place.number.lone if place is not None else 1
    return step.number.lone * places * (2 if step.stitch == "inc" else 1) if places is not None else None


def _unit(stream: Stream) -> bool:
    """Takes "groups of three", "3-dc groups in all", "ch-2 sps"; whether it is a sort of which a pass may make one."""
    end = stream.next_of(",", ";", ".", "end", "join", "turn", start=stream.at)
    items = stream.lexemes[stream.at : end]
    words = [word for item in items for word in item.lower.split()]
    named = any(word.rstrip("s") in _UNITS for word in words) or any(
        item.kind in ("space", "group_word") for item in items
    )
    known = (
        "number",
        "stitch",
        "chain",
        "space",
        "dash",
        "any_stitch",
        "group_word",
        "one_stitch",
        "corner",
        "ring",
        "in",
        "of",
        "the",
    )
    plain = all(item.kind in known or item.lower in _TAIL or item.lower.rstrip("s") in _UNITS for item in items)
    if not items or not named or not plain:
        return False
    stream.at = end
    return True


def _passes(number: Amount, body: list[Step], before: list[Step]) -> Amount | None:
    """The passes to so many groups: a pass is one stitch or group with a chain, and what stands before the star another such."""
    works = [step for step in body if isinstance(step, (Work, Group, Repeat))]
    chains = [step for step in body if isinstance(step, Chain)]
    if len(works) != 1 or len(chains) > 1 or isinstance(works[0], Repeat) or number.lone is None:
        return None
    first = next((i for i, step in enumerate(before) if isinstance(step, (Work, Group, Repeat))), None)
    if first is None:
        return number
    opening = before[first:]
    made = [step for step in opening if isinstance(step, (Work, Group, Repeat))]
    closing = [step for step in opening if isinstance(step, Chain)]
    same = (
        len(made) == 1
        and isinstance(made[0], Work)
        and isinstance(works[0], Work)
        and made[0].stitch == works[0].stitch
    )
    same = same or len(made) == 1 and isinstance(made[0], Group) and isinstance(works[0], Group)
    spaced = len(closing) == len(chains) and all(alike(one, other) for one, other in zip(closing, chains, strict=True))
    return Amount.of(number.lone - 1) if same and spaced and number.lone > 1 else None


__all__ = ["until_done", "until_made"]
