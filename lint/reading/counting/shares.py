"""Tells where a printed count goes on with what of it lies on each part: "116 dc: 32 on the back, 26 on each sleeve"."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.reading.words.piecewords import PIECE_WORDS
from lint.reading.words.stream import CLOSERS, OPENERS

_SIGNS = (":", ",", ";", "dash", *OPENERS)
_IDLE_KINDS = (
    "number",
    "and",
    "the",
    "each",
    "in",
    "for",
    "any_stitch",
    "stitch",
    "all",
    "of",
    "at",
    *_SIGNS,
    *CLOSERS,
)
_IDLE_WORDS = ("on", "for", "per", "both", "every", "either", "with", "across")


def shares_begin(lexemes: list[Lexeme]) -> int:
    """Index of the sign behind which a count is only shared out among parts of a garment; 0 where it is not."""
    signs = (at for at, item in enumerate(lexemes) if item.kind in _SIGNS and not _in_list(lexemes, at))
    at = next(signs, len(lexemes))
    shares = lexemes[at + 1 :]
    numbered = any(item.kind == "number" for item in shares)
    placed = any(item.lower == "on" or item.lower == "for" or item.kind in ("for", "in") for item in shares)
    parts = [item for item in shares if _is_part(item)]
    told = all(item.kind in _IDLE_KINDS or item.lower in _IDLE_WORDS or _is_part(item) for item in shares)
    return at if numbered and placed and parts and told else 0


def _in_list(lexemes: list[Lexeme], at: int) -> bool:
    """Whether a comma stands between the figures of a list: "116, 120, 132 dc: …"."""
    around = [item.kind for item in lexemes[at - 1 : at + 2]] if at else []
    return around == ["number", ",", "number"]


def _is_part(item: Lexeme) -> bool:
    return item.kind in ("side", "edge") or item.lower in PIECE_WORDS or item.lower.removesuffix("s") in PIECE_WORDS
