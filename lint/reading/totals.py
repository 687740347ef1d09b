"""Reads how many stitches come of work along an edge, told behind it: "sc evenly around, working 84 sc"."""

from __future__ import annotations

from lint.amount import Amount
from lint.reading.stream import OPENERS, Stream


def told_in_all(stream: Stream, stitch: str) -> Amount | None:
    """Takes ", working 84 sc", ", for a total of 84 sc"; None and nothing taken where more than a number is told."""
    start = stream.at
    stream.take_if(",")
    told = bool(stream.take_if("make"))
    stream.skip("for", "the")
    told = bool(stream.take_if("total")) or told
    stream.skip("of")
    number = stream.amount() if told else None
    if number is not None and stream.kind() == "stitch" and stream.take().value == stitch:
        stream.take() if stream.word("in all", "altogether") else stream.take_if("total")
        if stream.done or stream.kind() in (".", ";", ",", "join", "turn", "dash", *OPENERS):
            return number
    stream.at = start
    return None
