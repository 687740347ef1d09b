"""Reads what a row that is called is worked in instead: "as Rnd 3, but with hdc instead of sc", "rep Row 4 in dc"."""

from __future__ import annotations

from lint.growth import Swap
from lint.reading.words.stream import OPENERS, SIGNS, Stream

_VERBS = ("use", "using", "work", "working", "make", "making", "with", "do", "doing")
_FOR = ("instead of", "in place of", "rather than", "for")


def swap(stream: Stream) -> Swap | None:
    """Takes ", but use hdc instead of sc", ", replacing sc with hdc", "in hdc"; None where no stitch is changed so."""
    start = stream.at
    stream.take_if(",")
    stream.take() if stream.word("but", "except") else None
    found = _replacing(stream) or _instead(stream) or _in_another(stream)
    if found is None or found.new == "sl st" or stream.kind() not in (*SIGNS, "end", *OPENERS):
        stream.at = start
        return None
    return found


def changes_stitch(stream: Stream) -> bool:
    """Whether "changing sc to hdc" stands at the cursor, and not "changing to B in last st"."""
    ahead = next((at for at in range(1, 4) if stream.kind(at) not in ("the", "all", "each")), 1)
    sort = stream.kind(ahead) in ("stitch", "increase", "decrease")
    return stream.kind() == "change" and sort and stream.kind(ahead + 1) in ("to", "with")


def _replacing(stream: Stream) -> Swap | None:
    """ "replacing (all) sc with hdc", "changing sc to hdc"."""
    start = stream.at
    if stream.word("replacing", "replace", "changing", "change", "substituting"):
        stream.take()
        stream.skip("all", "each", "the")
        old = stream.take_if("stitch")
        led = stream.take_if("with", "to") or stream.word("by", "for") and stream.take()
        new = stream.take_if("stitch")
        if old and led and new:
            return Swap(new.value, old.value) if led.lower != "for" else Swap(old.value, new.value)
    stream.at = start
    return None


def _instead(stream: Stream) -> Swap | None:
    """ "using hdc instead of sc", "with hdc in place of sc"."""
    start = stream.at
    if stream.word(*_VERBS) or stream.kind() in ("make", "with"):
        stream.take()
    new = stream.take_if("stitch")
    ahead = " ".join(item.lower for item in stream.lexemes[stream.at : stream.at + 3])
    led = next((phrase for phrase in _FOR[:3] if new and (ahead + " ").startswith(phrase + " ")), None)
    if led is not None:
        words = 0
        while words < len(led.split()):
            words += len(stream.take().lower.split())
        old = stream.take_if("stitch")
        if old is not None:
            return Swap(new.value, old.value)
    stream.at = start
    return None


def _in_another(stream: Stream) -> Swap | None:
    """ "in hdc", "working in dc": all of the row."""
    start = stream.at
    stream.take() if stream.word("working", "worked", "work") else None
    new = stream.take_if("stitch") if stream.take_if("in") else None
    if new is not None:
        return Swap(new.value)
    stream.at = start
    return None
