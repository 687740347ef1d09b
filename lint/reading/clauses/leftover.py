"""What is left of a row once all that is known is read: a remark where it can be no work, else not understood."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.reading.clauses.base import STITCHY
from lint.reading.clauses.tunisian import TunisianClauses
from lint.reading.words.stream import SIGNS
from lint.tree import NOT_UNDERSTOOD, Remark, Unread

_WORKING_WORDS = {
    "continue", "work", "working", "pattern", "patt", "complete", "same", "repeat", "until", "even", "correspond", "as", "match",
    "established", "decrease", "increase",
}  # fmt: skip
# words that may take back, or add to, what was worked before them: "omit the last st", "but not in the first", "half way"
_ALTERS = {
    "omit", "ignore", "ignoring", "miss", "missing", "stop", "stopping", "except", "excluding", "but", "gain", "gaining", "lose",
    "losing", "leave", "leaving", "half", "halfway", "half way", "far", "short", "extra", "again", "drop", "dropping", "both", "only",
    "once", "twice", "less", "minus", "plus", "add",
}  # fmt: skip
_WHERE = (
    "last", "first", "next", "same", "corner", "ending", "beginning", "marker_word", "any_stitch", "stitch", "row_end", "side", "middle",
    "turning_chain",
)  # fmt: skip
_POINTS_TO_WORK = ("make", "row", "round", "each", "ordinal", "remaining")
PLACE_ENDS = ("last", "next", "first", "each", "same", "any_stitch", "stitch", "space", "chain")
_SHAPES = {"decreasing", "increasing", "shaping", "doubling", "adding", "skipping", "omitting"}
_GOES_ON = {
    "etc",
    "repeated",
    "onwards",
    "likewise",
    "alternately",
    "alternating",
}  # and "so on": what is before them, again
_TURNS_ABOUT = {"reverse", "reversed", "reversing", "mirror", "mirrored", "mirroring", "backwards"}
_FILLS = ({"gap", "gaps"}, {"fill", "filling", "close", "closing", "in", "into"})
_MIDDLES = {
    "middle",
    "center",
    "centre",
    "half",
    "halfway",
    "halves",
    "corners",
    "ends",
    "sides",
    "markers",
    "point",
    "points",
    "peak",
    "peaks",
    "tip",
    "tips",
    "valley",
    "valleys",
    "dip",
    "dips",
}
_NO_TALK = ("turn", "no_turn", "join", "fasten_off")  # behind a comma these are no part of a remark
_OPEN_ENDS = ("around", "across", "to", "within", "until")  # a clause of these alone says how far to work


class LeftClauses(TunisianClauses):
    """Words that nothing else reads."""

    def may_be_a_stitch(self, start: int) -> bool:
        """Whether a word or two between commas of a working sentence may name a stitch: "sc in next 36 sts, wibble."."""
        stream = self.stream
        if not start or stream.lexemes[start - 1].kind not in (",", ";", "and", "then"):
            return False
        clause = stream.lexemes[start : stream.next_of(*SIGNS, start=start)]
        if len(clause) == 1 and clause[0].text == "A":
            return True  # a colour, or a decrease in another house's letters
        if not self.has_work() or not clause or clause[0].kind != "word":
            return False
        named = len(clause) <= 2 and clause[-1].kind in ("word", "any_stitch")
        far = next((at for at, item in enumerate(clause) if item.kind in _OPEN_ENDS), 9)
        if far <= 2 and all(item.kind == "word" for item in clause[:far]) or clause[0].lower == "so":
            return True  # "wibble across", "and so on"
        return named or len(clause) <= 5 and clause[1].kind == "in" and clause[-1].kind in PLACE_ENDS

    def may_alter(self, start: int, sentence: list[Lexeme]) -> bool:
        """Whether words behind work may change it: where, after a comma, "V in the middle"; with a verb for it, anywhere."""
        if not self.has_work():
            return False
        words = {word for item in sentence for word in (item.lower, *item.lower.split())}
        if not words.isdisjoint(_SHAPES) or not words.isdisjoint(_GOES_ON) or {"so", "on"} <= words:
            return True
        if words & {"stop", "stopping", "ending", "turning"} and words & {"short", "early"}:
            return True
        placed = any(item.kind in _WHERE for item in sentence) or not words.isdisjoint(_MIDDLES)
        goes_on = start > 0 and self.stream.lexemes[start - 1].kind in (",", "and", "then", ";")
        about = goes_on or sentence[0].lower in _TURNS_ABOUT
        if about and (sentence[0].lower == "back" or not words.isdisjoint(_TURNS_ABOUT)):
            return True  # "sc to end, ch 1 and back again", "5 sc, the reverse"
        if goes_on and not any(words.isdisjoint(part) for part in _FILLS):
            return True
        return placed and (goes_on or not words.isdisjoint(_ALTERS))

    def tells_shares(self, start: int, end: int) -> bool:
        """ "23 sts rem on each side for the shoulders": how a row's stitches are shared out, said behind the row."""
        kinds = [item.kind for item in self.stream.lexemes[start:end]]
        kinds = kinds[1:] if kinds[:1] == ["with"] else kinds
        told = kinds[:2] == ["number", "any_stitch"] and "side" in kinds
        return told and not self.runs_on(start) and not set(kinds[2:]) & {*STITCHY, "make"}

    def not_read(self, start: int) -> None:
        """What is left of the clause: a remark if it can't be work, else Unread."""
        stream = self.stream
        sentence_end = stream.sentence_end(start, ".")
        signed = (i for i in range(start + 1, sentence_end) if stream.lexemes[i - 1].kind in (",", ";"))
        sentence_end = next((i for i in signed if stream.lexemes[i].kind in _NO_TALK), sentence_end)
        sentence = stream.lexemes[start:sentence_end]
        if (
            sentence
            and not self.may_be_a_stitch(start)
            and not self.runs_on(start)
            and sentence[0].kind not in _OPEN_ENDS
            and not _names_place(sentence)
            and not self.may_alter(start, sentence)
            and not any(
                item.kind in STITCHY or item.lower in _WORKING_WORDS or item.kind in _POINTS_TO_WORK
                for item in sentence
            )
        ):
            stream.at = sentence_end
            self.steps.append(Remark(stream.span_from(start)))
            return
        end = stream.next_of(*SIGNS, start=start + 1)
        stream.at = end
        if self.tells_shares(start, end):
            self.steps.append(Remark(stream.span_from(start)))
            return
        words = stream.words(start, end)
        self.steps.append(Unread(stream.span_from(start), words, NOT_UNDERSTOOD))


def _names_place(sentence: list[Lexeme]) -> bool:
    """Whether words like "granny group in next sp" say that something goes into a place."""
    pointed = ("next", "each", "same", "first", "last", "corner")
    for word, after, end in zip(sentence, sentence[1:], sentence[2:], strict=False):
        if word.kind == "in" and after.kind in pointed and end.kind in (*PLACE_ENDS, "corner", "group_word"):
            return True
    return False
