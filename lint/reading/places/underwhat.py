"""Reads what a place in a row below lies under: "around sc 2 rows below next dc", "… of Rnd 3 directly below next sc"."""

from __future__ import annotations

from lint.reading.places.targets import target
from lint.reading.words.stream import Stream


def below_what(stream: Stream) -> None:
    """Takes the "next dc" of "around sc 2 rows below next dc": what the place lies under."""
    start = stream.at
    if stream.word("directly", "straight", "right", "immediately", "just") and stream.kind(1) == "below":
        stream.at += 2  # "around fpdc of Rnd 3 directly below next sc"
    led = stream.at
    while stream.kind() in ("the", "next", "last", "same", "unused"):
        stream.take()
    if stream.at > led and target(stream) is None:
        stream.at = start
