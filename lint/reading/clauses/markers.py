"""Reads where markers are put: "place a marker in center st", "pm", "move marker up", "mark each corner sp"."""

from __future__ import annotations

from lint.place import Marked
from lint.reading.words.stream import SIGNS, Stream
from lint.tree import Marker, Remark, Step

_STAY = (
    "move", "moving", "remove", "removing", "slip", "slipping", "sl", "sm", "replace", "replacing", "carry", "carrying", "transfer",
    "transferring",
)  # fmt: skip  # it goes up with the work, or comes off
_ASIDE = (
    "left",
    "right",
    "over",
    "along",
    "forward",
    "forwards",
    "back",
    "backwards",
    "inward",
    "inwards",
    "outward",
    "outwards",
)
_FIRST = ("first", "beginning")
_OF_GROUPS = ("number", "dash", "stitch", "any_stitch", "group_word", "increase", "the", "of")
_MADE = ("just", "made", "worked", "formed", "that", "this", "same", "last")


def read_marker(stream: Stream, steps: list[Step], start: int) -> bool:
    """A marker put, moved or taken off; where that is not plain, no place in the row can be told by a marker."""
    lead = stream.take().lower
    words = stream.at
    while not stream.done and stream.kind() not in SIGNS:
        if stream.kind() == "dash" and not stream.peek().glued:
            break
        if stream.leads_to_work(stream.at) or stream.kind() == "and" and stream.kind(1) in ("turn", "join", "make"):
            break
        stream.take()
    span = stream.span_from(start)
    if lead.split()[0] in _STAY:
        moved = stream.lexemes[words : stream.at]
        aside = any(item.kind in ("number", "ordinal") or item.lower in _ASIDE for item in moved) or _to_an_end(moved)
        steps.append(Marker(span, Marked.ASIDE) if aside else Remark(span))  # "move the markers 2 sts to the left"
        return True
    where, number = _where(stream, words)
    steps.append(Marker(span, where, number))
    return True


def _where(stream: Stream, start: int) -> tuple[Marked, int]:
    inner = stream.lexemes[start : stream.at]
    kinds = [item.kind for item in inner]
    words = [item.lower for item in inner]
    number = next((item.number for item in inner if item.kind in ("number", "ordinal")), 0)
    space = "space" in kinds
    if not inner or kinds == ["between"]:
        return Marked.BETWEEN, 0
    if kinds[0] in ("chain", "word"):
        return Marked.UNCLEAR, 0
    if any(kind in kinds for kind in _FIRST) or "start" in words:
        return Marked.FIRST, 0
    if ("each" in kinds or "all" in kinds) and (size := _of_each_group(kinds, inner)) is not None:
        return Marked.EACH_MIDDLE, size
    if "each" in kinds or "all" in kinds:
        length = next(
            (item.number for i, item in enumerate(inner) if item.kind == "number" and "chain" in kinds[:i]), 0
        )
        return (
            (Marked.EACH_SPACE, length)
            if space
            else (Marked.EACH_CORNER, 0)
            if "corner" in kinds
            else (Marked.UNCLEAR, 0)
        )
    if "middle" in kinds:
        of_group = "of" in kinds or "group_word" in kinds or "corner" in kinds
        return (Marked.GROUP_MIDDLE if of_group else Marked.MIDDLE), 0
    if "ordinal" in kinds and not space:
        of_group = "of" in kinds and kinds[kinds.index("of") + 1 :].count("number") == 1
        return (Marked.GROUP_MIDDLE if of_group else Marked.NTH), number
    if any(word in _MADE for word in words) and not any(kind in ("row", "round") for kind in kinds):
        return (Marked.SPACE_MADE if space else Marked.JUST_MADE), 0
    return Marked.UNCLEAR, 0


def _to_an_end(moved: list) -> bool:
    """Whether a marker is moved "to first st of the 3 just made": not the middle one, where it would go up by itself."""
    kinds = [item.kind for item in moved if item.kind != "the"]
    ends = [at for at, kind in enumerate(kinds) if kind in ("first", "last") and at and kinds[at - 1] in ("to", "in")]
    return any(kinds[at + 1 : at + 2] and kinds[at + 1] in ("any_stitch", "stitch", "of") for at in ends)


def _of_each_group(kinds: list[str], inner: list) -> int | None:
    """How many stitches there are in each of the groups whose middle is marked, "center hdc of each 3-hdc group"; 0: not said."""
    each = next(at for at, kind in enumerate(kinds) if kind in ("each", "all"))
    before, group = kinds[:each], inner[each + 1 :]
    if before[-1:] != ["of"] or not any(kind in ("middle", "ordinal") for kind in before):
        return None
    size = next((item.number for item in group if item.kind == "number"), 0)
    which = next((item.number for item in inner[:each] if item.kind == "ordinal"), 0)
    if which and 2 * which - 1 != size or size and not size % 2 or not group:
        return None
    known = all(item.kind in _OF_GROUPS or item.lower in ("group", "groups") for item in group)
    told = size or any(item.kind == "increase" for item in group)
    return size if known and told else None


def unclear_markers(steps: list[Step], lexemes: list) -> list[Step]:
    """The steps; a remark that speaks of a marker in any other way leaves open where it is."""
    at = [item.start for item in lexemes if item.kind == "marker_word" or item.lower == "markers"]
    if not at:
        return steps
    return [
        Marker(step.span, Marked.UNCLEAR)
        if isinstance(step, Remark)
        and any(step.span.start <= place < step.span.end for place in at)
        and not _told(step, lexemes)
        else step
        for step in steps
    ]


def _told(step: Remark, lexemes: list) -> bool:
    """Whether a remark begins as one that only moves a marker, or marks where the round begins."""
    words = [item for item in lexemes if step.span.start <= item.start < step.span.end]
    return words[0].lower.split()[0] in _STAY or any(item.kind in _FIRST or item.lower == "start" for item in words)
