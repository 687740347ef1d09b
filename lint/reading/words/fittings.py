"""Reads what is fixed to a toy between two stitches of a row, and how: "fixing the eyes between Rnds 9 and 10", "but not tightly"."""

from __future__ import annotations

from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream
from lint.tree import Remark, Step

_FIXED = frozenset(
    "fix fixing insert inserting attach attaching place placing put putting add adding position positioning secure securing "
    "pop popping sew sewing set setting".split()
)
_FITTINGS = frozenset("eye eyes nose whisker whiskers button buttons bead beads bell rattle squeaker".split())
_AMONG = (
    "the",
    "word",
    "number",
    "in",
    "dash",
    "ordinal",
)  # "fixing the two 8 mm safety eyes", "sewing on the buttons"
_WHERE = (*_AMONG, "between", "round", "row", "and", "at", "of", "over", "to", "with", "manner", "place", "any_stitch")
_HOW = ("word", "manner", "the")


def fitting_fixed(stream: Stream, steps: list[Step], start: int) -> bool:
    """Takes a clause that fixes eyes, a nose, buttons: it says between which rounds, and works no stitch."""
    words, at = stream.lexemes, start
    if words[at].lower not in _FIXED:
        return False
    at += 1
    while at < len(words) and words[at].kind in _AMONG and words[at].lower not in _FITTINGS:
        at += 1
    if at >= len(words) or words[at].lower not in _FITTINGS:
        return False
    end = stream.next_of(*SIGNS, *OPENERS, "end", start=at)
    end = next((i for i in range(at, end) if stream.leads_to_work(i)), end)
    rest = words[at + 1 : end]
    stitches = [item for item in rest if item.kind == "any_stitch"]
    if any(item.kind not in _WHERE for item in rest) or stitches and rest[-1].lower != "apart":
        return False  # "sewing on the buttons with sc in next 4 sts" works
    stream.at = end
    steps.append(Remark(stream.span_from(start)))
    return True


def but_how(stream: Stream, steps: list[Step], start: int) -> bool:
    """Takes "but not tightly", "but not too firmly", "but only lightly" behind a clause: how it is done."""
    words = stream.lexemes
    end = stream.next_of(*SIGNS, *OPENERS, "end", start=start)
    said = words[start + 1 : end]
    manner = any(item.kind == "manner" or item.lower in ("much", "full", "hard", "tight") for item in said)
    manner = manner or [item.lower for item in said] in (["not"], ["not", "too"])  # "tightly" was left out before
    if words[start].lower != "but" or not steps or not manner or any(item.kind not in _HOW for item in said):
        return False
    stream.at = end
    steps.append(Remark(stream.span_from(start)))
    return True


def so_far_apart(stream: Stream, steps: list[Step], start: int) -> bool:
    """Takes the "6 sts between them" of "put eyes between Rnds 4 and 5, 6 sts between them"."""
    told = bool(steps) and isinstance(steps[-1], Remark) and start > 0 and stream.lexemes[start - 1].kind == ","
    kinds = [item.kind for item in stream.lexemes[start : start + 3]]
    if not told or kinds != ["number", "any_stitch", "between"]:
        return False
    end = stream.next_of(*SIGNS, *OPENERS, "end", start=start)
    named = [item.lower for item in stream.lexemes[start + 3 : end] if item.kind != "the"]
    if named not in (["them"], ["eyes"], ["both"], ["both", "eyes"]):
        return False
    stream.at = end
    steps.append(Remark(stream.span_from(start)))
    return True


_ALIKE = ("way", "manner", "fashion", "likewise", "alike", "before")
_NAMED = ("word", "the", "ending", "same", "in", "as", "first", "manner", "other")  # "the tip in the same way"


def closed_alike(stream: Stream, steps: list[Step], start: int) -> bool:
    """Takes "Close the tip in the same way": an opening drawn together as another was, which works no stitch."""
    words = stream.lexemes
    if words[start].lower not in ("close", "closing") or start and words[start - 1].kind not in (".", ";", *CLOSERS):
        return False
    end = stream.sentence_end(start, ".", ";", *OPENERS)
    said = words[start + 1 : end]
    alike = said[-1:] if said and said[-1].kind == "open_work" else []  # "in the same way"
    named = said[: len(said) - len(alike)]
    if len(said) < 3 or any(item.kind not in _NAMED for item in named) or said[-1].lower.split()[-1] not in _ALIKE:
        return False
    stream.at = end
    steps.append(Remark(stream.span_from(start)))
    return True
