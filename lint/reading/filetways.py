"""Filet squares that are worked one way over a block and another over a space, each way an entry of its own."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.expression import expression
from lint.place import Place, Target, TargetKind, Which
from lint.reading.words.listentries import Entry
from lint.reading.words.lists import alike
from lint.source import Span
from lint.tree import Chain, Either, Skip, Special, Step, Unread, Work, walk

_FILLED = ("bl", "block", "solid mesh", "filled mesh")
_OPEN = ("sp", "space", "mesh", "open mesh")
_KIND = r"(?:(?:a|an|another|next)\s+)?(?:bl|block|sp|space|(?:(?:open|solid|filled)\s+)?mesh)"
# "Block over space", "To work a sp over a bl", "bl made over a sp": what is worked, and what lies below
_OVER = expression(
    rf"(?i)(?:to\s+(?:work|make)\s+)?(?P<what>{_KIND})\s+(?:(?:worked|made)\s+)?over\s+(?P<below>{_KIND})s?"
)
_ARTICLE = expression(r"(?i)^(?:a|an|another|next)\s+")


def _sort(name: str) -> str | None:
    """ "bl" and "block" are one sort, "sp", "space" and "mesh" the other."""
    bare = _ARTICLE.sub("", name.lower())
    return "block" if bare in _FILLED else "space" if bare in _OPEN else None


def with_ways_over(specials: list[Special], entries: list[Entry]) -> tuple[list[Special], list[Entry]]:
    """The squares with all their ways, and entries that name those which are nowhere defined without what lies below."""
    by_span = {special.span: special for special in specials}
    ways: dict[str, dict[str, tuple[Step, ...]]] = {}
    told: dict[str, Entry] = {}
    for entry in entries:
        found = next((match for form in entry.forms if (match := _OVER.fullmatch(form)) is not None), None)
        sort, below = (_sort(found["what"]), _sort(found["below"])) if found is not None else (None, None)
        if sort is None or below is None:
            continue
        special = by_span.get(entry.span)
        told.setdefault(sort, entry)
        ways.setdefault(sort, {})[below] = (special.items if special is not None else ()) or _unread(entry.span)
    plain = {sort: special for special in specials if (sort := _sort(special.name)) is not None}
    merged: dict[str, Special] = {}
    named: list[Entry] = []
    for sort in ("block", "space"):
        special, over = plain.get(sort), ways.get(sort, {})
        if special is None and sort in told:
            entry = told[sort]
            span = Span(entry.span.start, entry.span.start + 1)
            special = Special(sort, span, (), False, places_itself=True)
            named.append(Entry((sort, sort[:2] if sort == "block" else "sp"), (), entry.body, entry.body_at, span))
        if special is None or any(isinstance(step, Either) for step in walk(special.items)):
            continue
        over_stitches = over.get("block") or special.items or _unread(special.span)
        over_space = over.get("space") or _into_space(special.items) or (() if not over else _unread(special.span))
        if over_space:
            items = _chosen_below(special.span, over_stitches, over_space)
            merged[special.name] = replace(special, items=items, one_stitch=False, places_itself=True)
    known = {special.name for special in specials}
    kept = [merged.get(special.name, special) for special in specials]
    return [*kept, *(special for name, special in merged.items() if name not in known)], named


def _chosen_below(span: Span, stitches: tuple[Step, ...], space: tuple[Step, ...]) -> tuple[Step, ...]:
    """The steps of both ways: the chain that both begin with, and what is worked over stitches or over a space."""
    chained = isinstance(stitches[0], Chain) and alike(stitches[0], space[0])
    behind = len(stitches) > 1 + chained and len(space) > 1 + chained and stitches[-1] == space[-1]
    cut = slice(int(chained), -1 if behind else None)
    choice = Either(span, (stitches[cut], space[cut]), ("stitch", "space"))
    return (*stitches[:chained], choice, *(stitches[-1:] if behind else ()))


def _unread(span: Span) -> tuple[Step, ...]:
    return (
        Unread(span, "", "how this square is worked over what lies below is not told in words that were understood"),
    )


def _into_space(items: tuple[Step, ...]) -> tuple[Step, ...]:
    """The same square over a space, where its words count the chains of the space below among the stitches.

    "Dc in next 3 sts" is there 2 dc in the ch-2 space and a dc behind it, "skip next 2 sts" passes over the space. Words
    that name another sort of stitch ("dc in next 3 dc") do not say what is done there.
    """
    made: list[Step] = []
    for step in items:
        place = step.places[0] if isinstance(step, (Work, Skip)) and len(step.places) == 1 else None
        number = place.number.lone if place is not None and place.which is Which.NEXT else None
        several = number is not None and number > 1 and isinstance(step, Work) and step.number.lone == 1
        if number is None or not (several or isinstance(step, Skip)) or place.targets[0].kind is TargetKind.SPACE:
            made.append(step)
        elif place.targets[0].kind is not TargetKind.ANY_STITCH:
            return _unread(step.span)
        elif isinstance(step, Skip):
            made.append(replace(step, places=(_space_of(number, place),)))
        else:
            space, behind = _space_of(number - 1, place), replace(place, number=ONE, each_of=False)
            made.append(replace(step, number=Amount.of(number - 1), number_said=True, places=(space,)))
            made.append(replace(step, places=(behind,)))
    return tuple(made) if tuple(made) != items else ()


def _space_of(chains: int, place: Place) -> Place:
    return replace(place, number=ONE, targets=(Target(TargetKind.SPACE, length=Amount.of(chains)),), each_of=False)
