"""Reads sides worked like the first: "work other 3 sides and corners the same", "repeat for remaining sides"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import Amount
from lint.lexeme import Lexeme
from lint.place import Limit, LimitKind, Place, Target, TargetKind, Which
from lint.reading.clauses.base import all_read
from lint.reading.repeating.marks import Mark
from lint.reading.words.stream import SIGNS, Stream
from lint.tree import Chain, Evenly, Group, Repeat, Skip, Step, Times, TimesKind, Work

_TO_CORNER = Limit(LimitKind.BEFORE, target=Target(TargetKind.CORNER))
_WORK_THEM = ("work", "make", "complete", "do", "repeat", "rep", "finish", "continue", "cont", "then", "and", "crochet")
_ALIKE = (
    "the", "same", "in", "same way", "way", "manner", "fashion", "to", "match", "correspond", "likewise", "alike", "similarly", "as",
    "first", "this", "like", "for", "on", "along", "across", "each", "all", "of", "established", "before", "above",
)  # fmt: skip
_AROUND = ("around", "round", "every", "all", "entire", "whole")
_SIDE_WORDS = ("side", "sides", "corner", "corners", "edge", "edges", "point", "points")


def other_sides(stream: Stream, steps: list[Step], start: int) -> bool:
    """Folds the side worked so far into a repeat over the others, where a clause says that they are alike."""
    end = stream.next_of(*SIGNS, "end", "join", start=start)
    words = [word for item in stream.lexemes[start:end] for word in item.lower.split()]
    number = next((item.quantity for item in stream.lexemes[start:end] if item.kind == "number"), None)
    others = any("side" in word for word in words) and _says_so(words)
    every = not others and _says_all(words)
    if not others and not every:
        return False
    opened = max((i for i, step in enumerate(steps) if isinstance(step, Mark)), default=None)
    works = [isinstance(s, (Group, Repeat, Skip)) or isinstance(s, Work) and s.stitch != "sl st" for s in steps]
    first = opened + 1 if opened is not None else works.index(True) if any(works) else None
    body = tuple(step for step in steps[first:] if not isinstance(step, Mark)) if first is not None else ()
    if not body or not _one_side(body) or not all_read(list(body)) or every and not _side_and_corner(body):
        return False
    begun = (s for s in steps[:first] if isinstance(s, Chain) and s.length != Amount.of(1))
    if opened is None and any(s.counting is None or s.counting.counts for s in begun):
        return False  # a chain that may be the first side's first stitch, which the others have as a stitch
    stream.at = end
    span = stream.span_from(start)
    times = (
        Times(span, TimesKind.IN_ALL if every else TimesKind.MORE, number)
        if number is not None
        else Times(span, TimesKind.FILL, limit=Limit(LimitKind.END))
    )
    sides = tuple(_to_corner(step) for step in body)
    steps[first - 1 if opened is not None else first :] = [Repeat(body[0].span.to(span), sides, times)]
    return True


def all_sides(stream: Stream, steps: list[Step], start: int) -> bool:
    """ "work 54 sc along each of the 4 sides and 3 sc in each corner": as often as there are sides, where that is said."""
    stream.take_if("make")
    number, stitch = stream.amount(), stream.take_if("stitch")
    stream.take_if("evenly")
    along = stream.take_if("across", "in") or stream.word("along", "down", "on") and stream.take()
    stream.take_if("each", "all")
    stream.skip("of", "the")
    sides = stream.amount()
    named = bool(stream.take_if("side", "edge"))
    said = number is not None and stitch is not None and along and sides is not None and sides.lone and named
    stream.skip(",", "and", "with", "make", "then")
    more, sort = stream.amount(), stream.take_if("stitch")
    cornered = bool(stream.take_if("in")) and bool(stream.take_if("each", "all"))
    stream.skip("of", "the")
    stream.amount()
    cornered = cornered and bool(stream.take_if("corner"))
    stream.take_if("any_stitch", "space")
    if not said or more is None or sort is None or not cornered or stream.kind() not in (*SIGNS, "end", "join", "turn"):
        stream.at = start
        return False
    span = stream.span_from(start)
    corner = Place(span, Which.NEXT, (Target(TargetKind.CORNER),))
    side = (Evenly(span, stitch.value, number), Work(span, sort.value, more, (corner,), number_said=True))
    steps.append(Repeat(span, side, Times(span, TimesKind.IN_ALL, sides)))
    return True


def along_side(stream: Stream, items: list[Step]) -> Times | None:
    """The "along the side", "across last side" behind a bracket that works into spaces: up to the corner, or to the end."""
    start = stream.at
    places = [place for step in items if isinstance(step, (Work, Group)) for place in step.places]
    spaces = bool(places) and all(place.targets[0].kind is TargetKind.SPACE for place in places)
    if not spaces or not (stream.take_if("across") or stream.word("along", "down", "up") and stream.take()):
        stream.at = start
        return None
    stream.take_if("the", "each", "same", "next", "first")
    last = bool(stream.take_if("last"))
    if not stream.take_if("side") or stream.kind() not in (*SIGNS, "end", "join"):
        stream.at = start
        return None
    return Times(stream.span_from(start), TimesKind.FILL, limit=Limit(LimitKind.END) if last else _TO_CORNER)


def along_one_side(words: list[Lexeme]) -> bool:
    """Whether words are a stitch "across side", "along the next side" and no more."""
    kinds = [item.kind for item in words if item.kind not in ("the", "next", "each") and item.lower not in _ALONG]
    return kinds in (["stitch", "side"], ["stitch", "across", "side"])


_ALONG = ("along", "down", "up")


def _says_so(words: list[str]) -> bool:
    """Whether a clause says no more than that the other sides are as the first one."""
    others = next(
        (i for i, word in enumerate(words) if word in ("other", "remaining", "rem", "opposite", "each")), None
    )
    if others is None or not any(word in _SIDE_WORDS for word in words[others:]) or "sides" not in words[others:]:
        return others is not None and words[others] == "each" and words[0] in ("repeat", "rep") and words[-1] == "side"
    before, behind = words[:others], words[others + 1 :]
    idle = all(word in _WORK_THEM or word in _ALIKE for word in before)
    rest = [
        word for word in behind if word not in _SIDE_WORDS and word not in ("and", "&", "their") and not _number(word)
    ]
    said = any(
        word in ("repeat", "rep", "same", "match", "likewise", "alike", "similarly", "correspond") for word in words
    )
    return idle and said and all(word in _ALIKE for word in rest)


def _says_all(words: list[str]) -> bool:
    """Whether a clause says that all sides, or the whole round, go on as one side did: "repeat for all four sides", "repeat around"."""
    if words[:1] not in (["repeat"], ["rep"], ["continue"], ["cont"]) or "from" in words:
        return False
    all_sides = any(word in ("each", "all", "every") for word in words) and any(word in _SIDE_WORDS for word in words)
    around = any(word in ("around", "round") for word in words) and not any(map(_number, words))
    idle = all(word in _ALIKE or word in _SIDE_WORDS or _number(word) or word in _AROUND for word in words[1:])
    return idle and (all_sides or around) and not any(word in ("first", "corner", "corners") for word in words)


def _side_and_corner(body: tuple[Step, ...]) -> bool:
    """Whether the steps are a run along a side, and a corner at its end or before it, no more."""
    if len(body) != 2 or not all(isinstance(step, (Work, Group)) and len(step.places) == 1 for step in body):
        return False
    run, corner = (step.places[0] for step in body)
    if corner.limit is not None:
        run, corner = corner, run
    along = run.which is Which.EACH and run.limit is not None and run.limit.kind is LimitKind.BEFORE
    place = corner.of or corner.targets[0]
    return along and (place.kind in (TargetKind.CORNER, TargetKind.SPACE) or place.corner)


def _number(word: str) -> bool:
    return word.isdigit() or word in ("two", "three", "four", "five", "six", "seven", "eight")


def _one_side(body: tuple[Step, ...]) -> bool:
    """Whether these steps are a side with its corner, which can be worked again where they end."""
    named = [place for step in body if isinstance(step, (Work, Group)) for place in step.places]
    again = all(place.which in (Which.NEXT, Which.EACH) for place in named)
    into = any(
        target.kind in (TargetKind.CORNER, TargetKind.SPACE) or target.corner or place.middle
        for place in named
        for target in place.targets
    )
    return again and into and any(isinstance(step, (Group, Work)) for step in body)


def _to_corner(step: Step) -> Step:
    """A run "across" within a side, which ends at the next corner."""
    if isinstance(step, Work) and step.places:
        return replace(step, places=tuple(_run_to_corner(place) for place in step.places))
    return step


def _run_to_corner(place: Place) -> Place:
    run = place.which is Which.EACH and (place.limit is None or place.limit.kind is LimitKind.END)
    return replace(place, limit=_TO_CORNER) if run else place
