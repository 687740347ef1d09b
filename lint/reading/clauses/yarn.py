"""Reads joins, new yarn, colours, fastening off and turns."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.lexicon import Lexeme
from lint.place import Place, Target, TargetKind, Which
from lint.reading.clauses.base import STITCHY
from lint.reading.clauses.chain import ChainClauses
from lint.reading.places.besidecorner import after_corner
from lint.reading.places.freeloops import free_loops
from lint.reading.places.places import places
from lint.reading.places.targets import FOUNDATION
from lint.reading.words.piecewords import PIECE_WORDS, names_piece, tells_piece
from lint.reading.words.stream import SIGNS
from lint.tree import (
    AlongEdge,
    Chain,
    Counting,
    Join,
    JoinYarn,
    Remark,
    Repeat,
    Skip,
    UseYarn,
    Work,
)

# "join the last colour", "with a new color": told from the others without a letter
_WHICH_COLOUR = (
    "new", "next", "first", "second", "third", "fourth", "fifth", "last", "final", "main", "contrasting", "contrast", "other", "another",
    "border", "edging", "background", "accent", "different", "original", "same", "previous",
)  # fmt: skip

_YARNS = ("cord", "twine", "jute", "raffia", "string", "wool", "cotton")  # what may stand for the yarn

_GAPS = ("opening", "openings", "slit", "gap")


class YarnClauses(ChainClauses):
    """ "join with sl st in first sc", "Join B in any ch-2 sp", "With A,", "fasten off", "turn"."""

    def _which_stitch(self) -> None:
        """Passes the one stitch of another piece that it is joined in: "in any st", "in the next sc"."""
        stream = self.stream
        ahead = 2 if stream.kind(1) == "the" else 1
        pointed = stream.kind() == "in" and stream.kind(ahead) in ("any", "next", "first")
        if pointed and stream.kind(ahead + 1) in ("any_stitch", "stitch") and stream.kind(ahead + 2) in (*SIGNS, "end"):
            stream.at += ahead + 2

    def read_join(self, start: int) -> bool:
        stream = self.stream
        closes = stream.take().lower == "close"
        whole = 1 if stream.kind() == "the" else 0
        if closes and stream.kind(whole) == "ring":
            stream.pass_to()  # "close ring": drawn up
            self.steps.append(Remark(stream.span_from(start)))
            return True
        if self.joins_pieces(start) or self.seams_joined(start):
            return True
        if self.piece_worked_on(start):
            return True
        if stream.kind(whole) in ("round", "row") and stream.kind(whole + 1) == "with":
            stream.at += whole + 1  # "close the rnd with dc in first sc"
        elif stream.kind() in ("of", "as") or stream.kind(whole) in ("round", "row"):
            stream.pass_to()  # "to close the row"
            self.steps.append(Join(stream.span_from(start)))
            return True
        if stream.kind() == "last" and stream.kind(1) in ("any_stitch", "stitch") and stream.kind(2) == "to":
            stream.at += 2  # "join last st to first"
        self.last_chain()
        inner = stream.kind() == "in"  # "join in B", "join in the new yarn"
        stream.at += inner and 1 + (stream.word("new", ahead=1) and stream.kind(2) == "yarn")
        colour = self.colour()
        stream.at -= inner and colour is None and stream.kind() != "yarn"
        if stream.kind() == "the" and (stream.kind(1) == "yarn" or stream.word(*_YARNS, ahead=1)):
            stream.take()  # "join the yarn at the underarm"
        yarn = stream.take_if("yarn") or stream.word(*_YARNS) and stream.take()
        colour = colour or (self.colour() if yarn else None)
        stream.skip("then")
        stitch = None
        if stream.take_if("with"):
            stream.skip("the")
            if self._several():
                return False  # "close with 12 sc": work
            if stream.word("invisible", "fake", "false") and stream.kind(1) in ("join", "any_stitch"):
                stream.at += 2
            if stream.kind() == "stitch":
                stitch = stream.take().value
        if self.joins_on_loops(start, colour, stitch):
            return True
        found = places(
            stream,
            allow_to=True,
            bare=stream.kind(-1) in ("with", "the") and (stream.kind() == "first" or names_piece(stream)),
        )
        if not stitch and stream.kind() == "with":
            stream.take()
            stream.skip("the")
            if self._several():
                return False
            if stream.kind() == "stitch":
                stitch = stream.take().value
                if found and found[0].which is Which.ELSEWHERE:
                    self._which_stitch()  # "join to first leg with sc in any st"
            elif stream.kind() == "increase" and found and found[0].which is Which.ELSEWHERE:
                stream.take()  # "join in other leg with inc"
                self.steps.append(Work(stream.span_from(start), "inc", places=found))
                return True
        if not found:
            found = places(stream, allow_to=True)
        found = after_corner(stream, found)
        if not found and stream.kind() in ("in", "to") and not self.into_the_round():
            return False
        if stream.kind() == "together" or stream.word("together"):
            return False
        if stream.kind() == "at":  # "at the start of a short edge"
            told = stream.at
            stream.pass_to()
            words = stream.lexemes[told : stream.at]
            if not found and any(item.kind in ("edge", "row_end") or item.lower in _GAPS for item in words):
                found = (Place(stream.span_from(told), Which.ELSEWHERE, (Target(TargetKind.PLACE),)),)
        elsewhere = bool(found) and found[0].which in (Which.ANY, Which.ELSEWHERE)
        if stream.word("directly", "above", "left") or stream.kind() == "in" and stream.kind(2) == "middle":
            stream.pass_to()  # "in any ch-2 sp directly above a spike st", "in the middle of any side"
            found = found or (Place(stream.span_from(start), Which.ELSEWHERE, (Target(TargetKind.PLACE),)),)
        span = stream.span_from(start)
        if (
            colour
            or yarn
            or elsewhere
            or (found and not self.has_work() and not any(isinstance(s, Chain) for s in self.steps))
        ):
            found = self.on_foundation(start, found)
            self.steps.append(JoinYarn(span, colour, stitch if stitch != "sl st" else None, found))
        elif stitch not in (None, "sl st"):
            closing = (
                Counting(span, True, None, 0) if stitch != "sc" else None
            )  # a tall stitch closes as the last space
            self.steps.append(Work(span, stitch, places=found, closing=closing))
        else:
            self.steps.append(Join(span, found))
        if stream.kind() == "forming" or stream.kind() == "to" and stream.kind(1) in ("join", "word"):
            stream.pass_to()
        elif stream.kind() == "to" and stream.word("work in rounds", ahead=1):
            stream.at += 2
        elif stream.kind() == "to":
            self.into_the_round()  # "join with sl st to top of ch-3 to work in rounds"
        return True

    def joins_on_loops(self, start: int, colour: str | None, stitch: str | None) -> bool:
        """ "… in any leftover front loop of Rnd 8, (with sl st)": the row is worked on those loops."""
        stream = self.stream
        if (loops := free_loops(stream)) is None:
            return False
        span = stream.span_from(start)
        if stream.kind() == "with" and stream.kind(1) == "stitch":
            stitch = stream.peek(1).value
            stream.at += 2
        self.steps.append(AlongEdge(span, loops.row, loops.loop, loops.piece))
        place = Place(span, Which.ANY, (Target(TargetKind.ANY_STITCH),))
        self.steps.append(JoinYarn(span, colour, stitch if stitch != "sl st" else None, (place,)))
        return True

    def piece_worked_on(self, start: int) -> bool:
        """ "join the second arm with 3 sc (in the same way)": so many stitches through it and the row below."""
        stream = self.stream
        begun = stream.at
        while stream.kind() in ("the", "first", "last", "ordinal", "next") or stream.word("other", "left", "right"):
            stream.take()
        told = tells_piece(stream.peek().lower) and not stream.peek().lower.endswith("s")
        if told and stream.at > begun:
            stream.take()
            self._pass_same_way()
            number = stream.amount() if stream.take_if("with") else None
            stitch = stream.take_if("stitch") if number is not None else None
            if stitch is not None and stitch.value != "sl st":
                self._pass_same_way()
                ends = stream.kind() in (".", "end") or "fasten_off" in (stream.kind(), stream.kind(1))
                sewn = ends and not self.has_work()  # "Join the ear with 2 sc.", and nothing else, is no row
                if stream.kind() in (*SIGNS, "end", "and", "to") and not sewn:
                    self.steps.append(Work(stream.span_from(start), stitch.value, number, number_said=True))
                    return True
        stream.at = begun
        return False

    def _pass_same_way(self) -> None:
        stream = self.stream
        if stream.word("in the same way", "in the same manner", "likewise"):
            stream.take()

    def joins_pieces(self, start: int) -> bool:
        """ "Join the legs: ch 2, …", "Joining both legs together:", "Join shoulders and sides.": what the row is for."""
        stream = self.stream
        ahead = 0
        while stream.kind(ahead) in ("the", "all") or stream.word("both", "two", ahead=ahead):
            ahead += 1
        words = [stream.peek(ahead).lower]
        ahead += 1
        if stream.kind(ahead) == "and":
            words.append(stream.peek(ahead + 1).lower)
            ahead += 2
        ahead += stream.kind(ahead) == "together"
        parts = all(word.endswith("s") and (tells_piece(word) or word[:-1] in PIECE_WORDS) for word in words)
        if not parts or stream.kind(ahead) not in (":", ",", ".", "dash"):
            return False
        stream.at += ahead
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def seams_joined(self, start: int) -> bool:
        """ "Join side seam, leaving 4 cm open for the thumb.": sewn, no stitches of a row."""
        stream = self.stream
        end = stream.sentence_end(start, ".", ";")
        ahead = stream.lexemes[stream.at : min(stream.at + 6, end)]
        if self._slipped_together(ahead):
            stream.at += len(ahead)
            self.steps.append(Remark(stream.span_from(start), seam=True))
            return True
        seam = next((i for i, item in enumerate(ahead) if item.lower.startswith("seam")), None)
        if seam is None or any(item.kind in (",", "with", "in", "at", *STITCHY) for item in ahead[:seam]):
            return False
        stream.at = next((i for i in range(stream.at, end) if stream.leads_to_work(i)), end)
        self.steps.append(Remark(stream.span_from(start), seam=True))
        return True

    @staticmethod
    def _slipped_together(words: list[Lexeme]) -> bool:
        """Whether a sentence is no more than "Join the toe with ss", "Close heel together with sl sts": a seam."""
        pieces = [item for item in words if item.lower in PIECE_WORDS]
        slips = [item for item in words if item.kind == "stitch" and item.value == "sl st"]
        idle = ("the", "with", "together", "any_stitch")
        others = [item for item in words if item not in pieces and item not in slips and item.kind not in idle]
        return len(pieces) == len(slips) == 1 and not others

    def into_the_round(self) -> bool:
        """Passes "in the round", "to work in rnds" after "join": the row becomes a round."""
        stream = self.stream
        end = stream.sentence_end(stream.at, ".", ";", ",")
        words = stream.lexemes[stream.at : end]
        idle = all(
            item.kind in ("in", "to", "the", "make", "round", "forming", "ring", "with", "stitch") for item in words
        )
        if (
            not idle
            or words[-1].kind != "round"
            or any(item.kind == "stitch" and item.value != "sl st" for item in words)
        ):
            return False
        stream.at = end
        return True

    def last_chain(self) -> None:
        """Takes the "last ch-6" of "Join last ch-6 to first sc": a loop still to be made, unless the repeat ends in one."""
        stream = self.stream
        if stream.kind() != "last" or stream.kind(1) != "chain":
            return
        start = stream.at
        stream.at += 2
        stream.take_if("dash")
        number = stream.amount()
        before = self.steps[-1] if self.steps else None
        ends = before.items if isinstance(before, Repeat) else self.steps
        last = next((step for step in reversed(ends) if not isinstance(step, Skip)), None)
        if number is not None and not (isinstance(last, Chain) and last.length == number):
            self.steps.append(Chain(stream.span_from(start), number))

    def read_attach(self, start: int) -> bool:
        """ "join yarn with sl st in …", "attach White to any ch-5 sp"."""
        stream = self.stream
        stream.take()
        if self.piece_worked_on(start):
            return True
        if stream.kind() == "the" and (stream.kind(1) == "yarn" or stream.word(*_YARNS, ahead=1)):
            stream.at += 2  # "rejoin the yarn in the next st"
        colour = self.colour()
        while colour is None and stream.kind() == "word" and not stream.word("with"):
            colour = stream.take().text if stream.kind(1) != "word" else stream.take() and None  # "fluffy brown"
        if colour is not None:
            stream.take_if("yarn")  # "attach white yarn to"
        stitch = None
        if stream.take_if("with"):
            stream.skip("the")
            if self._several():
                return False
            if stream.kind() == "stitch":
                stitch = stream.take().value
        if self.joins_on_loops(start, colour, stitch):
            return True
        found = places(stream, allow_to=True)
        if any(place.number != ONE for place in found):
            return False  # "attach the arm over next 4 sts": what is worked there
        if not found and not stream.done and stream.kind() not in (",", ";", "."):
            told = stream.at
            stream.pass_to()
            words = stream.lexemes[told : stream.at]
            if any(tells_piece(i.lower) for i in words) and any(i.kind in ("any_stitch", "stitch") for i in words):
                return False  # "attach the arm to next 4 sts with sc"
            found = (Place(stream.span_from(start), Which.ELSEWHERE, (Target(TargetKind.PLACE),)),)
        elif found and (stream.kind() in ("of", "at") or stream.word("directly", "above")):
            stream.pass_to()
        elif found and stream.kind() == "with" and stream.kind(2 if stream.kind(1) == "the" else 1) == "stitch":
            stream.skip("with", "the")
            stitch = stream.take().value
        found = self.on_foundation(start, found)
        self.steps.append(JoinYarn(stream.span_from(start), colour, stitch if stitch != "sl st" else None, found))
        return True

    def on_foundation(self, start: int, found: tuple[Place, ...]) -> tuple[Place, ...]:
        """ "join yarn to first ch of foundation ch": yarn is joined on the chain's other side."""
        words = self.stream.lexemes[start : self.stream.at]
        kinds = [item.kind for item in words]
        starting = kinds[-3:] == ["of", "beginning", "chain"] or kinds[-4:] == ["of", "the", "beginning", "chain"]
        named = "foundation" in kinds or starting  # "in first ch of the starting chain", but not "in beginning ch-3"
        if not named and words[-1].kind != "number":  # "any ch of the starting chain at the back", not "of beg ch-3"
            pairs = [at for at in range(len(kinds) - 1) if kinds[at : at + 2] == ["beginning", "chain"]]
            named = "any" in (item.lower for item in words) and any(kinds[at + 2 : at + 3] != ["dash"] for at in pairs)
        chain = len(found) == 1 and found[0].targets[0] == Target(TargetKind.CHAIN)
        return (replace(found[0], targets=(FOUNDATION,)),) if named and chain else found

    def _several(self) -> bool:
        """Takes the "1" of "with 1 sl st"; whether several stitches are told instead."""
        number = self.stream.amount()
        return number is not None and number != ONE and self.stream.kind() in ("stitch", "any_stitch", "special")

    def colour_first(self) -> None:
        """Takes the "A:", "MC -", "Yarn B." that a row's words open with: the yarn it is worked in."""
        stream = self.stream
        start = stream.at
        stream.take_if("yarn")
        colour = self.colour()
        if colour is not None and stream.kind() in (":", "dash", ".", "|") and stream.kind(1) != "end":
            stream.take()
            self.steps.append(UseYarn(stream.span_from(start), colour))
        else:
            stream.at = start

    def drop_yarn(self, start: int) -> bool:
        """ "drop A", "drop yarn B", "carry A": the yarn that is not worked with."""
        stream = self.stream
        stream.take()
        stream.take_if("yarn")
        told = self.colour() is not None
        stream.at += 2 * (stream.kind() == "from" and stream.kind(1) == "hook")  # "drop A from hook"
        if not told or stream.kind() not in (*SIGNS, "end", "and"):
            return False
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def colour(self) -> str | None:
        """A colour's letter or name at the cursor, if the pattern declares it or it looks like one."""
        stream = self.stream
        start = stream.at
        if stream.kind() == "the" and stream.word(*_WHICH_COLOUR, ahead=1) and stream.kind(2) == "color":
            stream.take()  # "join a new colour"
        new = stream.word(*_WHICH_COLOUR)
        if new and stream.kind(1) == "color":
            stream.at += 2
            return "new colour"
        if stream.take_if("color"):
            stream.take_if("yarn")
        lexeme = stream.peek()
        if stream.word("cc", "mc", "c") and stream.kind(1) == "number" and stream.peek(1).glued:
            stream.at += 2  # "CC1", "C1"
            return stream.words(stream.at - 2, stream.at)
        placed = stream.kind(1) in ("with", "in", "between", "to", "at", "around")
        if (
            lexeme.kind == "word"
            and placed
            and (stream.kind(-1) in ("join", "attach", "yarn", "color") or stream.peek(-1).lower == "fasten")
        ):
            stream.take()
            return lexeme.text
        if lexeme.kind in ("word", "the", "ring") and (
            lexeme.lower in stream.vocabulary.colours
            or lexeme.text in ("A", "B", "C", "D", "E", "F", "MC", "CC")
            or lexeme.text[:1].isupper()
            and stream.kind(-2 if stream.kind(-1) == "in" else -1) in ("join", "attach", "color", "yarn")
            and lexeme.kind == "word"
            and lexeme.lower not in {opener.split()[0] for opener in stream.vocabulary.count_openers}
        ):  # a colour by its capital: "join Grey", but "Join You will have 12 sts."
            stream.take()
            return lexeme.text
        stream.at = start
        return None

    def fastens_on(self, start: int) -> bool:
        """ "Fasten Cream to any 2 ch sp": new yarn, where old patterns do not say "join"."""
        stream = self.stream
        if not stream.word("fasten"):
            return False
        stream.take()
        stream.skip("the", "yarn", "color")
        if stream.kind() == "word" or stream.peek().lower in stream.vocabulary.colours:
            stream.take()
        placed = stream.kind() in ("to", "in") and bool(places(stream, allow_to=True))
        stream.at = start
        return placed
