"""Tells words for pieces and for parts of a garment: "second leg", "corresponding sp of first motif", "back neck"."""

from __future__ import annotations

from lint.expression import expression
from lint.lexicon import Lexeme
from lint.reading.words.stream import SIGNS, Stream
from lint.tree import Chain, Skip, Step

_PIECES = (
    "motif", "motifs", "square", "squares", "hexagon", "hexagons", "octagon", "pentagon", "triangle", "rosette", "snowflake", "flower", "flowers", "strip", "panel", "piece", "medallion", "half",
    "leg", "arm", "ear", "wing", "fin", "fluke", "foot", "hand", "paw", "tail", "sleeve", "eyelet", "circle",
    "hump", "bump", "toe", "eye", "antenna", "flipper", "thumb", "finger", "tentacle", "lobe", "head", "body", "ball", "cup", "pom", "horn",
)  # fmt: skip
# where on a garment stitches and edges lie
PIECE_WORDS = (
    "back", "front", "left", "right", "center", "centre", "side", "neck", "neckline", "shoulder", "underarm", "armhole", "sleeve", "body",
    "yoke", "instep", "heel", "flap", "gusset", "toe", "foot", "sole", "ankle", "cuff", "thumb", "palm", "hand", "held",
)  # fmt: skip
# parts whose stitches are told by number: "next 12 heel sts"; not words that also say where on a row, "3 center sts"
_PARTS = tuple(word for word in PIECE_WORDS if word not in ("left", "right", "center", "centre", "side", "held"))
_ACROSS = ("corresponding", "matching", "adjacent", "adjoining", "neighbouring", "neighboring")
_DONE = ("completed", "finished", "previous", "prev", "preceding", "earlier", "made", "next", "joined", *_ACROSS)

_POINTING = ("the", "first", "last", "next", "ordinal", "same", "around", "across", "number")
_BESIDE = ("other", "left", "right", "a", "b", "c", "d")  # "of the other leg", "of leg B"

# "Make a second piece the same": a piece is named that no part of a row can be, or "one", "two more"
_PIECE = r"(?:pieces?|motifs?|squares?|hexagons?|triangles?|panels?|blocks?|strips?|coasters?|circles?)"
_THE_SAME = (
    r"(?:in )?(?:exactly )?(?:the same(?: way| manner)?|alike)(?: as (?:the )?first(?: one)?)?"
    rf"|(?:exactly )?(?:like|identical to) (?:it|this|this one|the first|the first one|the first {_PIECE})"
)
AGAIN = expression(
    r"(?:work|make|crochet) (?:(?:a|the) second|another|(?:the )?other|(?:one|two|three|four|five|six|seven|\d+) more)"
    rf"(?: (?P<piece>{_PIECE})| ones?)? (?:{_THE_SAME})(?:,? (?:but )?leaving a long (?:tail|end)[^.,]*)?"
    rf"|repeat (?:all )?for (?:the|a) second (?P<piece>{_PIECE})"
    # "Rep along the other long side", "Do the same for the second strap": where the row is over
    r"|(?:rep(?:eat)?|do) (?P<other>(?:all |this |(?:the )?same )*(?:for|on|along|around|at) (?:the |an? )?(?:other|second|2nd|opposite|remaining)"
    r"(?: (?!(?:rows?|rounds?|rnds?|sts?|stitch|stitches)\b)[\w-]+){1,3})"
)


def at_underarm(stream: Stream) -> bool:
    """Takes the "underarm" of "2 sc in underarm", the "base of the underarm": a place where body and sleeve meet."""
    start = stream.at
    if stream.kind() in ("base", "middle") or stream.word("base", "gap", "center", "centre", "middle"):
        stream.take()
        if stream.take_if("of", "at") is None:
            stream.at = start
            return False
    stream.skip("the")
    if stream.word("underarm") and stream.kind(1) in (*SIGNS, "end", "and", "join", "turn", "dash", "="):
        stream.take()
        return True
    stream.at = start
    return False


def tells_piece(word: str) -> bool:
    """Whether a word names a piece, or points at one beside this: "square", "corresponding"."""
    return word in _PIECES or word.removesuffix("s") in _PIECES or word in _ACROSS


def of_joined_piece(stream: Stream) -> bool:
    """Takes "corresponding ch-2 sp of first motif", "any corner sp of a completed square": a place of a piece to join to."""
    end = stream.next_of(*SIGNS)
    end = next((i for i in range(stream.at, end) if stream.leads_to_work(i)), end)
    words = stream.lexemes[stream.at : end]
    if stream.word(*_ACROSS):
        stream.at = end
        return True
    of = next((i for i, item in enumerate(words) if item.kind == "of" or item.lower in ("on", "from")), len(words))
    named = [item.lower for item in words[of + 1 :]]
    piece = any(tells_piece(word) for word in named)
    if not piece or not set(named) & set(_DONE) or any(item.kind in ("make", "repeat") for item in words):
        return False
    stream.at = end
    return True


def of_other_piece(stream: Stream) -> bool:
    """Takes "the finishing stitch of the 1st leg": a place of another piece, whatever it is called."""
    end = stream.next_of(*SIGNS)
    of = stream.next_of("of")
    if of >= end or any(item.kind in ("number", "make", "repeat", "and") for item in stream.lexemes[stream.at : of]):
        return False
    ahead = of + 1 - stream.at
    if not names_piece(stream, ahead + 1 if stream.kind(ahead) == "the" else ahead):
        return False
    stream.at = end
    return True


def on_a_piece(stream: Stream) -> bool:
    """Whether "on first motif", "on the adjoining square" follows: another piece, to be joined to."""
    words = stream.lexemes[stream.at + 1 : stream.next_of(*SIGNS)]
    idle = ("the", "first", "last", "next", "same", "any", "ordinal", "word", "side", "other_side")
    return bool(words) and words[-1].lower in _PIECES and all(item.kind in idle for item in words)


def names_piece(stream: Stream, ahead: int = 0) -> bool:
    """Whether "second leg", "other square" stands `ahead` of the cursor: another piece."""
    pointed = stream.kind(ahead) in ("ordinal", "first", "last") or stream.word("other", "left", "right", ahead=ahead)
    if stream.peek(ahead).lower in _PIECES:  # "leg 2", "leg B"
        behind = stream.peek(ahead + 1)
        return behind.kind == "number" and not behind.glued or behind.text in ("A", "B", "C", "D")
    named = stream.peek(ahead + 1).text[:1].isupper()
    if stream.word("half", ahead=ahead + 1) and not stream.word("other", ahead=ahead) and not named:
        return False  # "sc in first half of the sts" is half of the row; "First Half" is a piece
    return pointed and stream.peek(ahead + 1).lower in _PIECES


def piece_alone(stream: Stream, ahead: int = 0) -> bool:
    """Whether "leg", "the arm" stands `ahead` of the cursor by itself: "9 sc around the leg"."""
    ahead += stream.kind(ahead) == "the"
    return stream.peek(ahead).lower in _PIECES and stream.kind(ahead + 1) in (*SIGNS, "end", "and", "dash", "=")


def last_piece_told(stream: Stream, ahead: int) -> bool:
    """Whether the piece that stands `ahead` of the cursor by itself is the last one that the row names."""
    behind = stream.lexemes[stream.at + ahead + 1 :]
    return piece_alone(stream, ahead) and not any(item.lower in _PIECES or item.lower in PIECE_WORDS for item in behind)


def piece_word(words: list[str]) -> str:
    """The word for the piece among these: "leg" of "the second leg"."""
    return next((word for word in words if word in _PIECES), "")


def is_piece(word: str) -> bool:
    """Whether a word names a piece, and nothing that a stitch could be called: not "corresponding"."""
    return word in _PIECES


def has_stitches(word: str) -> bool:
    """Whether stitches may be called by a word, as those of a piece or of a part of a garment: "body sts", "heel sts"."""
    return is_piece(word) or tells_piece(word) or word in _PARTS


def only_piece(words: list[Lexeme]) -> str:
    """The piece that words behind an "of" or "on" name, "sleeve" of "st of first sleeve"; "" where they say more than that."""
    of = next((at for at, item in enumerate(words) if item.kind == "of" or item.lower == "on"), len(words))
    named = [item.lower for item in words[of + 1 :] if item.kind not in _POINTING and item.lower not in _BESIDE]
    return named[0] if len(named) == 1 and named[0] in _PIECES else ""


def through_pieces(stream: Stream, index: int) -> int | None:
    """Where "through arm and body together", "together with the first arm", "joining the arm" at `index` ends.

    Stitches of two pieces worked as one are as many as those of the one.
    """
    first = stream.lexemes[index]
    at = index + 1
    if first.kind == "together" and stream.lexemes[at : at + 1] and stream.lexemes[at].kind == "with":
        at += 1
    elif first.lower not in ("through", "thru", "joining", "attaching", "catching", "taking", "grabbing"):
        return None
    named = False
    while at < len(stream.lexemes):
        item = stream.lexemes[at]
        word = item.lower.removesuffix("s")
        if item.kind == "number" and stream.lexemes[at - 1].lower in _PIECES and not item.glued:
            at += 1  # "through leg 1 and body"
            continue
        if word in (*_PIECES, "body", "head", "layer", "thickness", "thicknesse") or tells_piece(item.lower):
            named = True
        elif item.kind not in ("the", "and", "of", "together", "first", "last", "ordinal", "all") and item.lower not in (
            "both", "two", "other", "left", "right", "in", "at", "same", "time", "at the same time", "&",
        ):  # fmt: skip
            break
        at += 1
    ends = at >= len(stream.lexemes) or stream.lexemes[at].kind in (*SIGNS, "turn", "join", "dash", "=")
    if not ends and stream.lexemes[at - 1].lower == "in" and stream.lexemes[at].kind in ("next", "each", "first"):
        at, ends = at - 1, True  # "sc through both ear and head in next 4 sts"
    both = [item.lower for item in stream.lexemes[index + 1 : at]] == ["both"] and first.lower in ("through", "thru")
    both = both and any(
        tells_piece(item.lower) for item in stream.lexemes[:index]
    )  # "hold the arm …, sc 3 through both"
    return at if (named or both) and ends else None


def for_a_thing(steps: list[Step], clause: list[Lexeme]) -> bool:
    """Whether "for the second tie", "for first sleeve" tells what becomes of the chains just made, or the stitches skipped."""
    words = [item for item in clause[1:] if item.kind not in ("the", "first", "last", "next", "ordinal")]
    if len(words) > 1 and words[-1].lower in ("loop", "loops"):
        words.pop()  # "for button loop"
    alone = len(words) == 1 and words[0].lower == "loop"  # "ch 8 for a loop"
    named = words and all(item.kind == "word" or item.lower in PIECE_WORDS or alone for item in words)
    return bool(named and steps and isinstance(steps[-1], (Chain, Skip)))


def makes_pieces(stream: Stream) -> bool:
    """Whether "2 panels" ends the sentence: how many pieces there are."""
    word = stream.peek(1).lower
    return (word in _PIECES or word.removesuffix("s") in _PIECES) and stream.kind(2) in (".", "end", ";")


def piece_ahead(stream: Stream) -> bool:
    """Whether a piece is named behind the word at the cursor."""
    return names_piece(stream, 2 if stream.kind(1) == "the" else 1) or piece_alone(stream, 1)
