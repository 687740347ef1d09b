"""Reads what is said of a beginning chain: whether it counts, and as what."""

from __future__ import annotations

from dataclasses import replace

from lint.lexicon import Lexeme
from lint.reading.places.targets import is_space_word
from lint.reading.words.stream import Stream
from lint.tree import AlongEdge, Counting, OtherSide, Step, Unread

_ALWAYS = ("throughout", "subsequent", "always", "hereafter", "henceforth")


def counting(stream: Stream) -> Counting | None:
    """The note in a stretch ("counts as dc and ch 1", "not a st", "3 skipped ch count as dc"), or None."""
    lexemes = stream.lexemes
    if not lexemes:
        return None
    for index, lexeme in enumerate(lexemes):
        if lexeme.kind == "counts_not" or (lexeme.lower in ("not", "never", "no") and index <= 3):
            later = lexemes[index:]
            if lexeme.kind == "counts_not" or any(item.kind in ("counts", "any_stitch", "stitch") for item in later):
                return Counting(stream.span_from_all(), False, throughout=_throughout(lexemes))
            return None
        if lexeme.kind == "counts":
            if any(item.lower in ("not", "never", "n't", "no") for item in lexemes[max(0, index - 3) : index]):
                return Counting(stream.span_from_all(), False, throughout=_throughout(lexemes))
            return _counted(stream, index + 1)
        if lexeme.kind == "forming" and any(item.kind in ("space", "chain") for item in lexemes[index:]):
            return _counted(stream, index + 1)
        if lexeme.lower == "=" and index == 0 and len(lexemes) <= 8 and lexemes[-1].kind != "any_stitch":
            return _counted(stream, index + 1) if _value_like(lexemes[1:]) else None
    return None


def _value_like(lexemes: list[Lexeme]) -> bool:
    """ "(= 1 dc + 2 ch)": a stitch and chains; "(= 12 dc)" is a printed count."""
    return any(item.kind == "chain" for item in lexemes)


def _throughout(lexemes: list[Lexeme]) -> bool:
    """Whether a note is for more rows than its own: "now and always", "in this or any rnd", "at beg of each row"."""
    for index, item in enumerate(lexemes):
        if item.kind == "throughout" or item.lower in _ALWAYS:
            return True
        every = item.kind in ("each", "any", "all") or item.lower in ("following", "later", "in all")
        if every and any(after.kind in ("row", "round") for after in lexemes[index + 1 : index + 4]):
            return True
    return False


def _counted(stream: Stream, index: int) -> Counting | None:
    """What stands after "counts as": a stitch, and maybe chains or a space."""
    lexemes = stream.lexemes
    stitch, space, closing = None, None, None
    position = index
    while position < len(lexemes):
        lexeme = lexemes[position]
        if lexeme.kind == "stitch" and lexeme.value != "sl st" and stitch is None:
            stitch = lexeme.value
        elif lexeme.kind in ("special", "one_stitch") and stitch is None:
            stitch = lexeme.value or lexeme.lower
        elif lexeme.kind == "any_stitch" and stitch is None:
            stitch = "stitch"
        elif lexeme.kind == "chain":
            number = _chain_number(lexemes, position) or _one_chain(lexemes, position)
            rest = stream.inside(position + 1, len(lexemes))
            after_number = [item for item in rest.lexemes[:4] if item.kind in ("space", "special")]
            if number is not None and after_number and stitch is None:
                closing = number
            elif number is not None and stitch is not None and not _is_skipped(lexemes, position):
                space = number
        elif is_space_word(stream.inside(position, len(lexemes))) and stitch is None and closing is None:
            closing = 0
        position += 1
    if stitch is None and closing is None:
        return None
    return Counting(
        stream.span_from_all(),
        True,
        stitch,
        space if closing is None else closing,
        _throughout(lexemes),
    )


def _is_skipped(lexemes: list[Lexeme], position: int) -> bool:
    """ "1 ch is missed": not a space."""
    return any(
        item.kind == "skip" or item.lower in ("is", "are", "missed", "skipped")
        for item in lexemes[position + 1 : position + 4]
    )


def _chain_number(lexemes: list[Lexeme], position: int) -> int | None:
    """The number that belongs to the chain word at `position`: "ch-2", "ch 2", "2 ch", "turning chain of 2"."""
    follower = position + 1
    if follower < len(lexemes) and lexemes[follower].kind in ("dash", "of"):
        follower += 1
    if follower < len(lexemes) and lexemes[follower].kind == "number" and lexemes[follower].amount is None:
        return lexemes[follower].number
    before = position - 1
    if before >= 0 and lexemes[before].kind == "dash":
        before -= 1
    if before >= 0 and lexemes[before].kind == "number" and lexemes[before].amount is None:
        return lexemes[before].number
    return None


def _one_chain(lexemes: list[Lexeme], position: int) -> int | None:
    """ "a treble and a chain", "dc plus ch": one chain, if no space is told whose length is left out."""
    before = position - 1 - (lexemes[position - 1].lower in ("a", "an", "one", "single"))
    joined = before >= 0 and lexemes[before].kind in ("and", "+", "plus")
    return 1 if joined and all(item.kind != "space" for item in lexemes[position + 1 : position + 3]) else None


_CLOSING = ("complete", "make", "close", "finish", "form", "create", "fill")
_OWN_CHAINS = {"sc": 1, "hdc": 2, "dc": 3, "tr": 4, "dtr": 5}  # by stitch; common practice, no source


def note_end(stream: Stream, start: int, length: int | None = None) -> int:
    """Where a note without brackets ends that begins at `start`: "counts as dc and ch 2", not the work behind it.

    A comma ends it, but before chains that make up the `length` of the beginning chain: "Ch 5, counts as dc, ch 2,".
    """
    end = stream.next_of(",", ";", ".", "(", "dash", "star", start=start)
    while stream.kind(end - stream.at) == "dash" and stream.peek(end - stream.at).glued:  # the hyphen of "ch-1 sp"
        end = stream.next_of(",", ";", ".", "(", "dash", "star", start=end + 1)
    end = next((i for i in range(start, end) if _work_follows(stream, i)), end)
    stitch = next((item.value for item in stream.lexemes[start:end] if item.kind == "stitch"), None)
    if end < len(stream.lexemes) and stream.lexemes[end].kind == "," and length is not None:
        after = end + 1
        number = (
            _chain_number(stream.lexemes[: after + 4], after) if stream.kind(after - stream.at) == "chain" else None
        )
        if number is not None and length == number + _OWN_CHAINS.get(stitch or "", 99):
            return stream.next_of(",", ";", ".", "(", "star", start=after)
    return end


def _work_follows(stream: Stream, index: int) -> bool:
    """Whether "and", "then" leads from the note to work; chains after "and" are the note's."""
    chain = any(stream.kind(index + ahead - stream.at) == "chain" for ahead in (1, 2))
    return stream.leads_to_work(index) and not chain


_ADDED_UP = (
    "=",
    "number",
    "stitch",
    "ordinal",
    "chain",
    "+",
    "and",
    ",",
    "dash",
    "space",
    "first",
    "the",
    "plus",
    "any_stitch",
)


def adds_up(inner: Stream, length: int | None) -> Counting | None:
    """ "ch 4 (dc + ch 1)", "3 ch. (1 tr.)": what a chain is made up of, where the heights come to its `length`."""
    inner = inner.without({index for index, item in enumerate(inner.lexemes) if item.kind == "."})
    if any(item.kind not in _ADDED_UP for item in inner.lexemes):
        return None
    several = any(inner.kind(at + 1) == "stitch" and one.number != 1 for at, one in _numbers(inner))
    note = _counted(inner, 0)
    if note is None or note.stitch is None or several:  # "dc in last st, ch 3 (12 dc)": the row's count
        return None
    return note if length == _OWN_CHAINS.get(note.stitch, 99) + (note.space or 0) else None


def _numbers(stream: Stream) -> list[tuple[int, Lexeme]]:
    return [(index, item) for index, item in enumerate(stream.lexemes) if item.kind == "number"]


def for_first_stitch(stream: Stream, length: int | None = None) -> Counting | None:
    """ "ch 7 for first trc and ch 3", "ch 1 in place of sc": after a chain, without brackets."""
    start = stream.at
    if stream.kind() == "for" and stream.kind(1) == "first":
        end = note_end(stream, start, length)
        note = _counted(stream.inside(start, end), 0)
        if note is not None and note.stitch:
            stream.at = end
            return note
    if stream.kind() == "in" and stream.kind(1) == "place" and stream.kind(2) == "of":
        end = note_end(stream, start, length)
        note = _counted(stream.inside(start + 3, end), 0)
        if note is not None and note.stitch:
            stream.at = end
            return note
    if stream.kind() in ("counts", "counts_not"):
        end = note_end(stream, start, length)
        note = counting(stream.inside(start, end))
        if note is not None:
            stream.at = end
            return note
    stream.at = start
    return None


def of_last_loop(stream: Stream) -> Counting | None:
    """ "for last ch-5 loop", "to complete final sp", "in place of last lp": the loop that a joining stitch closes."""
    start = stream.at
    led = stream.kind() in ("counts", "forming", "for") or stream.kind() == "to" and stream.word(*_CLOSING, ahead=1)
    end = stream.next_of(",", ";", ".", "(", ")", "[", "star", start=start)
    words = stream.lexemes[start:end]
    last = any(item.kind == "last" or item.lower in ("closing", "joining") for item in words)
    if not led or not last or not any(item.kind == "space" for item in words) or len(words) > 10:
        return None
    note = _counted(stream.inside(start, end), 1)
    if note is not None:
        stream.at = end
    return note


def tells_made(lexemes: list[Lexeme]) -> bool:
    """Whether a stretch tells what has just been made: it is no work then."""
    return any(item.kind in ("made", "forming") or item.lower in ("made", "forms", "formed") for item in lexemes)


def calls_it_shaping(lexemes: list[Lexeme]) -> bool:
    """ "an increase", "a decrease": what two stitches in one place, or one over two, are called."""
    kinds = [item.lower if item.lower in ("a", "an") else item.kind for item in lexemes]
    return len(kinds) == 2 and kinds[0] in ("a", "an") and kinds[1] in ("increase", "decrease")


def made_name(lexemes: list[Lexeme]) -> str | None:
    """The name given by "(shell made)", "(first shell made)", "(forms X)"."""
    if not tells_made(lexemes):
        return None
    for before, lexeme in zip([None, *lexemes], lexemes, strict=False):
        if lexeme.kind in ("special", "one_stitch", "group_word", "picot"):
            half = "half " if before is not None and before.kind == "half" else ""  # "(half shell made)" is none
            return half + (lexeme.value or lexeme.lower)
    return None


def _says_no_more(rest: list[Lexeme]) -> bool:
    """Whether "count" ends a sentence, but for "unless otherwise stated", "throughout"."""
    return (
        not rest or rest[0].kind in (".", "throughout") or rest[0].lower in ("unless", "always", "throughout", *_ALWAYS)
    )


def _is_always(lexemes: list[Lexeme], index: int) -> bool:
    """ "The beg ch-3 is always a dc"."""
    words = [item.lower for item in lexemes[index : index + 2]]
    return words in (["is", "always"], ["are", "always"], ["always", "is"], ["always", "are"])


def _of_a_space(lexemes: list[Lexeme], position: int) -> bool:
    """Whether the chain at `position` is a space's, "ch-1 sp", "1-ch sp": it begins no row."""
    after = position + 1
    while after < len(lexemes) and lexemes[after].kind in ("dash", "number"):
        after += 1
    return after < len(lexemes) and lexemes[after].kind == "space"


def global_countings(sentence: Stream) -> list[tuple[int | None, Counting]]:
    """What a sentence of the notes says of beginning chains: (length or None for any, note).

    "Ch 3 at the start of a rnd counts as dc", "Ch 2 and ch 1 … never count as a st",
    "Beginning ch does not count as a st", "each ch 3 that begins a rnd counts as a dc".
    """
    lexemes = sentence.lexemes
    verb = next(
        (
            i
            for i, item in enumerate(lexemes)
            if item.kind in ("counts", "counts_not") or item.lower in ("counts", "count") or _is_always(lexemes, i)
        ),
        None,
    )
    if verb is None:
        return []
    note = counting(sentence)
    if note is None and _is_always(lexemes, verb):
        note = _counted(sentence, verb + 2)
        note = replace(note, throughout=True) if note is not None else None
    if note is None and lexemes[verb].kind == "counts" and _says_no_more(lexemes[verb + 1 :]):
        note = Counting(
            sentence.span_from_all(), True, throughout=True
        )  # "All turning chains count unless otherwise stated"
    if note is None:
        return []
    subject = lexemes[:verb]
    lengths: list[int | None] = []
    chain_words = [
        i for i, item in enumerate(subject) if item.kind in ("chain", "turning_chain") and not _of_a_space(subject, i)
    ]
    for position in chain_words:
        number = _chain_number(subject, position)
        if number is not None:
            lengths.append(number)
    if not chain_words:
        return []
    if not lengths:
        opening = any(
            item.kind in ("beginning", "turning_chain") or item.lower in ("start", "begin", "begins", "turning")
            for item in subject
        )
        if not opening:
            return []
        lengths = [None]
    return [(length, note) for length in lengths]


def only_named(items: list[Step], work: Step) -> bool:
    """Whether a bracket names a stitch and no place: "(2 sc)", "(i.e. 2 sc)" explains, "(along the edge: 3 sc)" works."""
    if getattr(work, "places", ()):
        return False
    led = (item for item in items if item.span.start < work.span.start)
    return not any(isinstance(item, (AlongEdge, OtherSide)) or _leads_elsewhere(item) for item in led)


def _leads_elsewhere(item: Step) -> bool:
    return isinstance(item, Unread) and item.words.lower() != "that is"
