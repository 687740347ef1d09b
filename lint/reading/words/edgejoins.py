"""Tells sentences in which edges of a piece are joined to each other: "Sl st the last row to the foundation chain"."""

from __future__ import annotations

from lint.reading.words.stream import Stream

_EDGE_KINDS = ("row", "edge", "side", "ending", "row_end", "foundation")
_EDGES = ("ends", "edges", "sides", "rows", "halves", "layers")
_WHICH = ("short", "long", "narrow", "both", "first", "last", "two", "side", "open", "cast-on")
_HELD = ("hold", "holding", "bring", "bringing", "line", "lining", "matching", "place", "placing", "fold", "folding")
_BY_HAND = ("sew", "sewing", "seam", "seaming", "whipstitch", "whip", "graft", "join", "close", "close up")
_ONE_TO_ANOTHER = ("chain", "foundation", "row", "edge", "side")
_WORKED = {"in", "next", "number", "each", "over", "any_stitch"}  # what work into a row names, and a seam does not


def edges_joined(stream: Stream, start: int) -> int | None:
    """Where the sentence at `start` ends, if it joins edges of the piece; None for any other sentence."""
    end = stream.sentence_end(start, ".", ";")
    first = start
    if stream.lexemes[first : first + 1] and stream.lexemes[first].kind == "with":  # "With RS together, …"
        comma = stream.next_of(",", start=first)
        first = comma + 1 if comma < end else first
    words = stream.lexemes[first:end]
    if len(words) < 3:
        return None
    verb, rest = words[0], words[1:]
    kinds = {item.kind for item in rest}
    edges = bool(kinds & set(_EDGE_KINDS)) or any(item.lower in _EDGES for item in rest)
    stitched = verb.kind == "stitch" and verb.value in ("sl st", "sc")
    flat = verb.kind == "rotate" and any(
        item.lower in ("close", "to close") for item in rest
    )  # "Flatten and sc 4 to close"
    if not (edges or flat) or not (stitched or verb.lower in (*_HELD, *_BY_HAND) or verb.kind in ("join", "rotate")):
        return None
    together = "together" in kinds or any("through" in item.lower or "thru" in item.lower for item in rest)
    if verb.lower in _HELD or verb.kind == "rotate":
        sewn = any(
            item.kind == "join" or item.lower in _BY_HAND or item.kind == "stitch" and item.value == "sl st"
            for item in rest
        )
        edge = [
            item
            for before, item in zip([verb, *rest], rest, strict=False)
            if item.kind in ("row", "foundation")
            or item.lower in ("ends", "edges", "sides")
            or item.kind == "chain"
            and before.kind == "beginning"  # "against your starting chain"
        ]
        closes = any(item.lower in ("close", "to close") for item in rest)
        return end if sewn and (edge and together or len(edge) > 1 or closes) else None
    if stitched:
        to_edge = "to" in kinds and bool(kinds & {"chain", "foundation", "row"})
        return end if (together or to_edge) and not _row_work(_without_depth(rest)) else None
    two = [item.kind for item in rest if item.kind != "the"][:3] in (["first", "and", "last"], ["last", "and", "first"])
    subject = [item for item in rest[: 6 if two else 4] if item.kind not in ("the", "first", "last", "and")]
    named = bool(subject) and (
        subject[0].kind in ("row", "foundation")
        or subject[0].lower in _EDGES
        or subject[0].lower in _WHICH
        and len(subject) > 1
        and (subject[1].lower in _EDGES or subject[1].kind in _EDGE_KINDS)
    )
    if not named or kinds & {"each"}:
        return None
    beside = "to" in kinds and any(item.kind in _ONE_TO_ANOTHER or item.lower == "foundation" for item in rest[2:])
    both = two and subject[0].kind == "row"  # "Join first and last row with sl sts."
    return end if together or beside or both or any(item.lower in _EDGES for item in subject[:2]) else None


def _without_depth(words: list) -> list:
    """The words without the stitches that the seam goes through: "through (all) 8 sts"."""
    for at, item in enumerate(words):
        behind = words[at + 1 :]
        behind = behind[1:] if behind[:1] and behind[0].kind in ("all", "the") else behind
        counted = [one.kind for one in behind[:2]] in (["number", "any_stitch"], ["number", "stitch"])
        if item.lower in ("through", "thru", "along", "across") and counted:
            return [*words[:at], *behind[2:]]
    return words


def _row_work(words: list) -> bool:
    """Whether work into a row is named; the number of "Row 1" is none."""
    for before, item in zip([None, *words], words, strict=False):
        both = item.kind == "number" and item.value == "word"  # "the two short ends"
        if (
            item.kind in _WORKED
            and not both
            and not (item.kind == "number" and before is not None and before.kind == "row")
        ):
            return True
    return False
