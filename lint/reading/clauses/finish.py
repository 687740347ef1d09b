"""The words that end a row or a piece: "fasten off", "turn", "do not turn", "do not join"."""

from __future__ import annotations

from lint.reading.clauses.yarn import YarnClauses
from lint.reading.words.piecewords import piece_word
from lint.reading.words.stream import OPENERS, SIGNS
from lint.tree import AlongEdge, FastenOff, NoJoin, OtherSide, Remark, Turn

_ENDS_FASTENING = (*SIGNS, "dash", "=", "→", ":", "|", "●", "..", "...", "…")  # a count may stand behind these


class FinishClauses(YarnClauses):
    """What is done when a row, a round or a piece is worked."""

    def read_fasten_off(self, start: int) -> bool:
        stream = self.stream
        if self.fastens_on(start):
            return self.read_attach(start)
        stream.take()
        colour = self.colour()
        while not stream.done and stream.kind() not in _ENDS_FASTENING:
            if stream.kind() == "and" and stream.kind(1) in ("join", "attach", "turn"):
                break
            stream.take()
        self.steps.append(FastenOff(stream.span_from(start), colour))
        return True

    def read_turn(self, start: int) -> bool:
        stream = self.stream
        stream.take()
        clause = stream.lexemes[stream.at : stream.next_of(*SIGNS, ":", start=stream.at)]
        if any(item.kind == "other_side" for item in clause) and self._other_side(start):
            return True  # "turn so you work into the other side of the chain", "turn it around and go on along …"
        if self.turned_out(start) or self.turned_to_row_ends(start):
            return True
        self.pass_end_words()
        self.steps.append(Turn(stream.span_from(start)))
        side = stream.at
        if stream.word("on") and stream.take():  # "turn work on its side"
            stream.skip("the")
            stream.take() if stream.word("its") else None
            if stream.take_if("side"):
                self.steps.append(AlongEdge(stream.span_from(side)))
            else:
                stream.at = side
        stream.take_if("with") if stream.kind(1) in ("chain", "number") else None  # "turn with ch 1"
        return True

    def turned_out(self, start: int) -> bool:
        """ "Turn the brim right side out", "turn the cuff so that the seam is inside": the piece, not the work."""
        stream = self.stream
        end = stream.sentence_end(stream.at, ".", ";", ",", "and")
        words = {item.lower for item in stream.lexemes[stream.at : end]}
        if not words & {"out", "inside", "outside", "upside", "sideways", "outward", "outwards", "inward", "inwards"}:
            return False
        if any(item.kind in ("stitch", "number", "chain") for item in stream.lexemes[stream.at : end]):
            return False
        stream.at = end
        span = stream.span_from(start)
        over = "upside" in words and self.has_work()  # on the other side of a chain, if that is what lies there
        self.steps.append(OtherSide(span, perhaps=True) if over else Remark(span))
        return True

    def turned_to_row_ends(self, start: int) -> bool:
        """ "Turn the tube so you can work into the row ends": the piece, until its side lies on top."""
        stream = self.stream
        end = stream.sentence_end(stream.at, ".", ";", ",", ":")
        told = stream.lexemes[stream.at : end]
        ends = any(item.kind == "row_end" for item in told) or {"ends", "row"} <= {item.kind for item in told}
        ends = ends or any(item.lower in ("ends", "row ends", "row-ends", "sides of the rows") for item in told)
        works = any(item.kind in ("stitch", "any_stitch", "number", "chain", "skip", "repeat", "each") for item in told)
        if not ends or works or len(told) < 4:
            return False
        stream.at = end
        self.steps.append(AlongEdge(stream.span_from(start)))
        return True

    def pass_end_words(self) -> None:
        """Passes "at end of last row", "at the end of every round", "after Row 20" after a turn."""
        stream = self.stream
        start = stream.at
        if stream.word("after") and stream.take():
            stream.skip("the", "last")
            row = stream.take_if("row", "round") is not None
            stream.take_if("number") if row else None
            if row and stream.kind() in (*SIGNS, "end", *OPENERS):
                return
            stream.at = start
        if stream.take_if("at"):
            stream.skip("the")
            if stream.kind() in ("ending", "row_end"):
                stream.pass_to()
                return
        stream.at = start
        if stream.kind() == "to" and stream.kind(1) in ("right_side", "wrong_side"):
            stream.at += 2  # "turn to wrong side"

    def read_no_turn(self, start: int) -> bool:
        self.stream.take()
        self.pass_end_words()
        self.steps.append(Turn(self.stream.span_from(start), turned=False))
        return True

    def read_no_fasten(self, start: int) -> bool:
        """ "do not fasten off (at the end of Row 5)", "do not fasten off the second leg"."""
        self.stream.take()
        if self.stream.word("yet") and self.stream.kind(1) in (*SIGNS, "end", "at", "and", *OPENERS):
            self.stream.take()
        self.colour()  # "do not fasten off B"
        self.pass_piece()
        self.pass_end_words()
        self.steps.append(Remark(self.stream.span_from(start)))
        return True

    def pass_piece(self) -> None:
        """Passes "the second leg", "this one", "the last ear", of which alone a thing is said."""
        stream = self.stream
        end = stream.at
        while end < len(stream.lexemes) and stream.lexemes[end].kind in ("the", "ordinal", "first", "last"):
            end += 1
        ahead = end - stream.at
        ahead += ahead == 0 and stream.word("this", "your")
        if not ahead:
            return
        piece = piece_word([stream.peek(ahead).lower]) or stream.word("one", ahead=ahead)
        if piece and stream.kind(ahead + 1) in (*SIGNS, "end", "and", "dash", "=", *OPENERS):
            stream.at += ahead + 1

    def read_no_join(self, start: int) -> bool:
        self.stream.take()
        self.stream.pass_to(*SIGNS, "dash")
        self.steps.append(NoJoin(self.stream.span_from(start)))
        return True
