"""Reads work along edges: the other side of a chain, the sides of a piece, "across back neck"."""

from __future__ import annotations

from lint.place import Which
from lint.reading.clusterclauses import ClusterClauses
from lint.reading.stream import SIGNS
from lint.reading.targets import PIECE_WORDS, is_space_word
from lint.tree import Group, OtherSide, Skip, Work

_EDGE_WORDS = (
    "foundation", "beginning", "outer", "bottom", "top", "long", "short", "right", "left", "lower", "upper", "other",
    "first", "second", "next",
)  # fmt: skip


class EdgeClauses(ClusterClauses):
    """Where a row goes on when it leaves the row below."""

    def _piece_edge(self) -> bool:
        """Takes "back neck", "the left front edge", "neck opening": an edge by the piece or body part it belongs to."""
        stream = self.stream
        words = stream.at
        while stream.word(*PIECE_WORDS) or stream.kind() == "edge":
            stream.take()
        if stream.at > words and stream.word("opening", "openings", "edging", "band", "line"):
            stream.take()
        return stream.at > words and (stream.kind() in (*SIGNS, "end", "and", "dash", "turn", "join"))

    def _round_a_chain(self) -> bool:
        """Whether the row began in the chain from the hook."""
        works = (step for step in self.steps if isinstance(step, (Work, Group, Skip)))
        return any(place.which is Which.FROM_HOOK for step in works for place in step.places)

    def read_other_side(self, start: int) -> bool:
        """ "…, 3 sc in last ch; other side: sc 4": the chain from below."""
        stream = self.stream
        stream.take()
        stream.take_if("chain", "foundation")
        if stream.kind() not in (",", ":") or not self._round_a_chain():
            return False
        self.steps.append(OtherSide(stream.span_from(start)))
        return True

    def on_other_side(self) -> bool:
        """Takes "on the other side of the ch", "along the other side" after stitches."""
        stream = self.stream
        start = stream.at
        stream.skip("in", "across", "the")
        if stream.take_if("other_side"):
            stream.skip("of", "the", "beginning")
            if stream.take_if("chain", "foundation") or stream.kind() in (*SIGNS, "end"):
                return True
        stream.at = start
        return False

    def along_edge(self) -> bool:
        """Takes "along top", "down side", "across the lower edge" after a number of stitches."""
        stream = self.stream
        start = stream.at
        if stream.take_if("across", "over", "around") or stream.word("along", "down", "up") and stream.take():
            stream.skip("the", "each")
            if stream.kind() == "other_side" and not self._round_a_chain():
                stream.take()  # "8 sc up the other side"
                stream.skip("of", "the")
                stream.take_if("chain", "foundation", "edge")
                return True
            named = False  # "along the bottom"
            while stream.word(*_EDGE_WORDS):
                named = stream.take().lower in ("bottom", "top")
            if stream.take_if("side", "edge", "top", "row_end", "chain", "foundation") or stream.word("side") or named:
                if stream.word("side"):
                    stream.take()
                if stream.kind() == "dash" and stream.kind(1) == "number" and stream.kind(-1) == "chain":
                    stream.at += 2  # "along the ch-3"
                if stream.kind() == "of":
                    stream.pass_to()
                return True
            if self._piece_edge():
                return True
        stream.at = start
        return False

    def _other_side(self, start: int) -> bool:
        """ "working along the opposite side of the ch"."""
        stream = self.stream
        end = stream.next_of(",", ";", ".", ":", "(", "[", "star")
        side = min(stream.next_of("other_side"), self._free_loops(end))
        chain = stream.next_of("chain", "foundation", start=side)
        if side < end <= chain and any(i.kind in ("chain", "foundation") for i in stream.lexemes[start:side]):
            stream.at = end  # "working in starting ch on opposite side of row 1"
            self.steps.append(OtherSide(stream.span_from(start)))
            return True
        if chain >= end and side < end and self._round_a_chain():
            stream.at = end  # "working along opposite side"
            self.steps.append(OtherSide(stream.span_from(start)))
            return True
        if chain >= end:
            return False
        stream.at = end
        if chain + 1 < end and stream.lexemes[chain + 1].kind in ("number", "stitch", "special", "increase"):
            stream.at = chain + 1  # "on other side of ch sc in next 5 chs"
        self.steps.append(OtherSide(stream.span_from(start)))
        return True

    def _free_loops(self, end: int) -> int:
        """Index of the "free loops" of "working in the free loops of the ch", which are its other side."""
        words = self.stream.lexemes
        for index in range(self.stream.at, end):
            loops = is_space_word(self.stream, index - self.stream.at) and words[index].lower[:2] in ("lo", "lp")
            free = words[index - 1].kind == "unused" or words[index - 1].lower in (
                "bottom",
                "other",
                "lower",
                "opposite",
                "remaining",
                "rem",
                "rest",
            )
            unused = words[index].kind == "unused" or loops and free
            named = any(item.kind in ("number", "each", "skip") for item in words[self.stream.at : end])
            if unused and not named and words[index + 1 : end] and words[index + 1].kind == "of":
                return index
        return len(words)
