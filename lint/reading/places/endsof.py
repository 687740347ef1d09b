"""Reads the ends of rows as places, by their rows: "the end of every row", "the end of each rib row", "each rib row end"."""

from __future__ import annotations

from lint.place import OF_STITCH, Target, TargetKind
from lint.reading.words.stream import Stream

_RIBS = ("rib", "ribs", "ribbing", "ribbed")


def ends_of_rows(stream: Stream) -> Target | None:
    """Takes "end of each rib row", "end of every row of (the) ribbing", "rib row end(s)" at the cursor."""
    start = stream.at
    if stream.word(*_RIBS) and stream.kind(1) == "row_end":
        stream.take()
        several = stream.take().lower.endswith("s")
        return Target(TargetKind.ROW_END, "each" if several else None)
    if (told := _of_stitch_rows(stream)) is not None:
        return told
    if stream.take_if("ending") and stream.take_if("of") and stream.take_if("each"):
        rib = stream.word(*_RIBS) and bool(stream.take())
        if stream.take_if("row"):
            if not rib and stream.kind() == "of" and stream.word(*_RIBS, ahead=2 if stream.kind(1) == "the" else 1):
                stream.take()
                stream.skip("the")
                stream.take()
            return Target(TargetKind.ROW_END, "each")
    stream.at = start
    return None


def _of_stitch_rows(stream: Stream) -> Target | None:
    """Takes "end of each dc row", "the side of the sc row": those of rows of one stitch; nothing taken for any others."""
    start = stream.at
    stream.skip("the")
    led = stream.take_if("ending", "side", "edge") and stream.take_if("of")
    pointed = stream.take_if("each", "the") if led else None
    stitch = stream.take_if("stitch") if pointed is not None else None
    if pointed is None or stitch is None or not stream.take_if("row"):
        stream.at = start
        return None
    return Target(TargetKind.ROW_END, f"{'each ' if pointed.kind == 'each' else ''}{OF_STITCH}{stitch.value}")


def side_of(stream: Stream) -> Target | None:
    """ "side of next dc": along the edge of the work."""
    start = stream.at
    stream.at += 2
    each = False
    while stream.kind() in ("the", "next", "last", "each", "same", "first", "turning_chain"):
        each = stream.take().kind == "each" or each
    if stream.take_if("stitch", "any_stitch", "row", "chain") is None and stream.kind(-1) != "turning_chain":
        stream.at = start
        return None
    return Target(TargetKind.ROW_END, "each" if each else None)
