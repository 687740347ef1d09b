"""Reads what the hands do besides stitches: a ring wound or closed by hand, a loop pulled tight, pieces joined through a loop."""

from __future__ import annotations

from lint.amount import Amount
from lint.reading.clauses.base import ClauseBase
from lint.reading.words.edgejoins import edges_joined
from lint.reading.words.piecewords import tells_piece
from lint.reading.words.stream import CLOSERS, OPENERS
from lint.tree import MakeRing, Remark

_SIGNS = (",", ";", ".", ":", "dash", "(", "[", "{", "star", *CLOSERS)
_MAKES = ("stitch", "special", "one_stitch", "group_word", "increase", "decrease", "make", "repeat")


class HandClauses(ClauseBase):
    """ "wind yarn round finger", "pull loop tight", "drop loop, insert hook in ch-3 sp of finished motif, pull loop through"."""

    def hand_join(self, start: int) -> bool:
        """ "drop loop, insert hook in ch-3 sp of finished motif, pull dropped loop through": how one piece is joined to another."""
        stream = self.stream
        end = stream.sentence_end(start, ".", ";")
        through = next((i for i in range(start, end) if "through" in stream.lexemes[i].lower), None)
        if through is None or not stream.word("drop", "remove", ahead=start - stream.at):
            return False
        stream.at, before = through + 1, stream.at
        stream.pass_to()
        words = stream.lexemes[start : stream.at]
        if not any(tells_piece(item.lower) for item in words) or any(item.kind in _MAKES for item in words):
            stream.at = before
            return False  # a popcorn is closed with the same movements
        if stream.kind() == "," and stream.word("replace", "return", "put", "place", ahead=1):
            stream.at = stream.next_of(*_SIGNS, start=stream.at + 1)  # ", replace loop on hook"
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def growth_told(self, start: int) -> bool:
        """ "There is one block more in every row", "you will have 2 sts fewer each row": how rows grow, which works nothing."""
        stream = self.stream
        end = stream.sentence_end(start, ".", ";")
        words = stream.lexemes[start:end]
        told = [item.lower for item in words]
        more = any(word in ("more", "fewer", "less", "extra") for word in told)
        rows = any(
            one.kind == "each" and other.kind in ("row", "round") for one, other in zip(words, words[1:], strict=False)
        )
        opens = told[:1] in (["there"], ["you"], ["this"], ["it"]) and any(
            word in ("is", "are", "be", "have", "gives", "makes", "adds", "gains", "grows") for word in told[1:4]
        )
        if not (opens and more and rows) or any(
            item.kind in ("next", "skip", "star", "repeat", "chain", "increase", "decrease") for item in words
        ):
            return False
        stream.at = end
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def pulled_tight(self, start: int) -> bool:
        """ "pull loop tight", "draw up tightly", "pull ring closed"."""
        stream = self.stream
        end = stream.next_of(*_SIGNS, "and", start=start)
        words = stream.lexemes[start:end]
        tight = any(item.lower in ("tight", "tightly", "closed", "close", "snug", "shut") for item in words)
        tight = tight or [item.lower for item in words[1:]] == ["up"]
        if not tight or not stream.word("pull", "draw", "tighten", "cinch", ahead=start - stream.at):
            return False
        if any(item.kind in (*_MAKES, "number") for item in words):
            return False
        stream.at = end
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def loop_to_hang_by(self, start: int) -> bool:
        """ "to make hanging loop, ch 10": what is worked is told behind it."""
        stream = self.stream
        end = stream.next_of(*_SIGNS, start=start)
        hung = any(item.lower in ("hanging", "hanger", "button") for item in stream.lexemes[start + 2 : end])
        if not hung or not stream.word("to") or stream.kind(1) not in ("make", "forming") or end - start > 5:
            return False
        stream.at = end
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def loop_for_ring(self, start: int) -> bool:
        """ "make a loop,", "wind yarn round finger to form a ring": a ring drawn up, told by how it is made."""
        stream = self.stream
        if self.has_work() or any(isinstance(step, MakeRing) for step in self.steps):
            return False
        end = stream.next_of(",", ";", ".", ":", *OPENERS, start=start)
        words = stream.lexemes[start:end]
        wound = any(item.lower == "finger" for item in words)
        stream.skip("the")
        alone = stream.word("loop") and stream.kind(1) in (",", ";", ".", ":", "end", *OPENERS)
        counted = any(item.kind == "number" and item.value != "word" for item in words)  # not "twice round finger"
        if not wound and not alone or counted or any(item.kind in ("stitch", "chain") for item in words):
            return False
        stream.at = end
        self.steps.append(MakeRing(stream.span_from(start)))
        return True

    def ring_by_hand(self, start: int, number: Amount) -> bool:
        """ "ch 4, insert hook in 1st ch, yo and pull through (ring made)": a ring of chains, told by the movements."""
        stream = self.stream
        end = stream.sentence_end(stream.at, ".", ";")
        ring = next((i for i in range(stream.at, end) if stream.lexemes[i].kind == "ring"), None)
        if ring is None or self.has_work() or not (stream.word("drop") or "insert" in stream.peek().lower):
            return False
        words = stream.lexemes[stream.at : ring + 1]
        by_hand = any("through" in item.lower for item in words) and any(item.kind == "chain" for item in words)
        if not by_hand or any(item.kind in ("stitch", "number", "skip", "repeat") for item in words):
            return False
        stream.at = ring + 1
        stream.skip("made", ")")
        self.steps[-1] = MakeRing(stream.span_from(start), number)
        return True

    def edges_joined(self, start: int) -> bool:
        """ "Sl st the last row to the foundation chain to make a tube.": edges joined, no stitches of a row."""
        end = edges_joined(self.stream, start)
        stitches = any(item.kind == "stitch" and item.value != "sl st" for item in self.stream.lexemes[start:end])
        if end is not None and stitches and not self.has_work():
            return False  # a row of its own, which may be counted
        if end is None:
            return False
        self.stream.at = end
        self.steps.append(Remark(self.stream.span_from(start), seam=True))
        return True
