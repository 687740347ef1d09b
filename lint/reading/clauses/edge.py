"""Reads work along edges: the other side of a chain, the sides of a piece, "across back neck"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.lexicon import Lexeme
from lint.place import Place, Target, TargetKind, Which
from lint.reading.clauses.base import STITCHY
from lint.reading.clauses.cluster import ClusterClauses
from lint.reading.places.freeloops import NOT_NUMBERED, FreeLoops, free_loops
from lint.reading.places.limits import worded_edge
from lint.reading.places.targets import ANY, FREE, LOOPS, is_space_word
from lint.reading.repeating.marks import Mark
from lint.reading.words.piecewords import PIECE_WORDS, tells_piece
from lint.reading.words.stream import OPENERS, SIGNS
from lint.tree import MAKES_STITCHES, AlongEdge, Chain, Evenly, Group, OtherSide, Remark, Skip, Step, Turn, Work

_EDGE_WORDS = (
    "foundation", "beginning", "outer", "bottom", "top", "long", "short", "narrow", "right", "left", "lower", "upper", "other",
    "first", "second", "next",
)  # fmt: skip
_UP_TO = ("the", "beginning", "of", "at", "side", "edge")
_WAY_WORDS = {"make", "in", "the", "across", "over", "around", "at", "then", "to"}  # what leads to "the other side"


def _names_row_ends(item: Lexeme) -> bool:
    """Whether a word may stand in "(working) in the ends of the rows of the band"."""
    return item.kind in ("in", "over", "the", "of", "ending", "row", "row_end", "side") or item.lower in PIECE_WORDS


_WORK_BEGINS = ("make", "number", "stitch", "special", "increase")


class EdgeClauses(ClusterClauses):
    """Where a row goes on when it leaves the row below."""

    def old_loops(self, start: int) -> bool:
        """ "work in leftover FLO of Rnd 30", "working in the unused loops of Rnd 2,": loops of a round below."""
        stream = self.stream
        if (found := free_loops(stream, free=True)) is not None:
            return self.on_old_loops(start, found)
        if stream.kind() != "in":
            return False
        old, loop, at = False, None, stream.at + 1
        while at < len(stream.lexemes):
            item = stream.lexemes[at]
            free = item.kind in ("unused", "remaining") or item.lower in FREE
            if not free and item.kind not in ("the", *LOOPS) and item.lower not in ("loops", "lps"):
                break
            old, loop, at = old or free, item.kind if item.kind in LOOPS else loop, at + 1
        alone = stream.peek(at - stream.at).kind in (*SIGNS, "end") and stream.word(
            "loops", "lps", ahead=at - 1 - stream.at
        )
        if not old or loop is None and (not alone or self.has_work()):
            return False
        stream.pass_to()
        return self.on_old_loops(start)

    def on_old_loops(self, start: int, loops: FreeLoops = NOT_NUMBERED) -> bool:
        """Sets work on loops of an earlier row: all that follows, or "(sc, inc) 6 times" just before these words."""
        works = [at for at, step in enumerate(self.steps) if isinstance(step, (*MAKES_STITCHES, Mark))]
        behind = bool(works) and self.runs_on(start)
        if behind and works != [len(self.steps) - 1]:
            self.stream.at = start
            return False
        known = loops.row if behind or not works else 0
        edge = AlongEdge(self.stream.span_from(start), known, loops.loop, loops.piece)
        self.steps.insert(works[0] if behind else len(self.steps), edge)
        return True

    def _piece_edge(self) -> bool:
        """Takes "back neck", "the left front edge", "neck opening": an edge by the piece or body part it belongs to."""
        stream = self.stream
        words = stream.at
        while stream.word(*PIECE_WORDS) or stream.kind() == "edge":
            stream.take()
        if stream.at > words and stream.word("opening", "openings", "edging", "band", "line"):
            stream.take()
        named = stream.at > words
        stream.take_if("any_stitch") if named else None  # "5 dc along neck sts"
        return named and (self._as_far_as() or stream.kind() in (*SIGNS, "end", "and", "dash", "turn", "join"))

    def _round_a_chain(self) -> bool:
        """Whether the row began in the chain from the hook, or passed over the first of its own chain."""
        works = (step for step in self.steps if isinstance(step, (Work, Group, Skip)))
        passed = [type(step) for step in self.steps[:2]] == [Chain, Skip]
        return passed or any(place.which is Which.FROM_HOOK for step in works for place in step.places)

    def read_other_side(self, start: int) -> bool:
        """ "…, 3 sc in last ch; other side of ch: sc 4", "underside (2 sc, inc)": the chain from below."""
        stream = self.stream
        stream.take()
        stream.skip("of", "the", "beginning")
        stream.skip("chain", "foundation")
        if not self._round_a_chain() or stream.kind() not in (":", ",", *OPENERS):
            return False
        close = stream.matching(stream.at) if stream.kind() in OPENERS else stream.at
        if close is None:
            return False
        self.steps.append(OtherSide(stream.span_from(start)))
        if close > stream.at:
            self.steps += self.read_inside(stream.inside(stream.at + 1, close))
            stream.at = close + 1
        return True

    def on_other_side(self) -> bool:
        """Takes "on the other side of the ch", "along the other side" after stitches."""
        stream = self.stream
        start = stream.at
        if stream.kind() not in ("in", "across", "over"):
            return False
        stream.skip("in", "across", "over", "the")
        if stream.take_if("other_side"):
            stream.skip("of", "the", "beginning", "next", "same")
            counted = stream.kind() == "number" and stream.kind(1) == "chain"
            if counted or stream.kind() == "chain" and stream.kind(1) in ("dash", "number"):
                return True  # "sc in other side of 3 ch": a stitch in each
            if stream.take_if("chain", "foundation") or stream.kind() in (*SIGNS, "end"):
                return True
            if stream.kind() == "each":
                return True  # "in the other side of each of the 4 ch"
            if stream.kind() == "in" and self._round_a_chain():
                return True
        stream.at = start
        return False

    def in_chains(self, start: int, step: Work) -> Work:
        """ "sc in other side of 3 ch": in each of them, as "sc along the other side"; "3 sc in other side of ch-3" says how many."""
        stream = self.stream
        if stream.kind() not in ("number", "chain"):
            along = any(item.lower in ("along", "across") for item in stream.lexemes[start : stream.at])
            each = along and not step.number_said and step.stitch not in ("inc", "dec") and step.together is None
            return replace(step, places=(Place(step.span, Which.EACH, (Target(TargetKind.CHAIN),)),)) if each else step
        stream.take_if("chain")
        stream.take_if("dash")
        number = stream.amount() or ONE
        stream.take_if("chain")
        span = stream.span_from(start)
        if step.number_said and step.number == number:
            return replace(step, span=span)
        place = Place(span, Which.NEXT, (Target(TargetKind.CHAIN),), number, each_of=True)
        return replace(step, places=(place,), span=span)

    def says_how_many(self, start: int, step: Work) -> bool:
        """Whether stitches on the other side have a number or a place: "sc on the other side" may be one, or the whole side."""
        plain = not step.places and step.stitch not in ("inc", "dec") and step.together is None
        one = any(item.lower in ("same", "next", "a", "an") for item in self.stream.lexemes[start : self.stream.at])
        return one or step.number_said or not plain

    def along_edge(self) -> bool:
        """Takes "along top", "down side", "up front edge to start of neck shaping" after a number of stitches."""
        along = self._along_one_edge()
        return self._as_far_as() or along and self._to_its_end() or along

    def _to_its_end(self) -> bool:
        """Takes the "to other corner", "to the opposite end" of an edge that is named before it."""
        stream = self.stream
        words = stream.lexemes[stream.at : stream.next_of(*SIGNS, "and")]
        which = [item for item in words[1:-1] if item.kind != "the"]
        ends = words[:1] != [] and words[0].kind == "to" and words[-1].kind in ("corner", "ending")
        if not ends or not all(item.lower in ("other", "opposite", "far", "left", "right", "front") for item in which):
            return False
        stream.at += len(words)
        return True

    def _as_far_as(self) -> bool:
        """Takes "(up) to start of neck shaping", "to the shoulder": where on the edge of a piece so many stitches end."""
        stream = self.stream
        if stream.word("down", "up") and stream.kind(1) == "to" or stream.kind() == "to":
            end = stream.next_of(*SIGNS, "and")
            words = stream.lexemes[stream.at + 1 + (stream.kind() != "to") : end]
            names = [item for item in words if item.lower in (*PIECE_WORDS, "shaping", "hem") or item.kind == "edge"]
            if names and all(item in names or item.kind in _UP_TO or item.lower in _EDGE_WORDS for item in words):
                stream.at = end
                return True
        return False

    def _along_one_edge(self) -> bool:
        stream = self.stream
        start = stream.at
        if stream.take_if("across", "over", "around") or stream.word("along", "down", "up", "round") and stream.take():
            stream.skip("the", "each")
            if (stream.kind() in ("first", "ordinal") or stream.word("one")) and stream.kind(1) in ("side", "edge"):
                stream.take()  # "along the first side of the heel", "along one side"
            if stream.kind() == "other_side" and not self._round_a_chain():
                stream.take()  # "8 sc up the other side"
                stream.skip("of", "the")
                stream.take_if("chain", "foundation", "edge")
                while stream.word(*PIECE_WORDS):
                    stream.take()  # "along the other side of the heel"
                return True
            if stream.kind() == "last" and stream.kind(1) == "row" and stream.kind(-1) == "the":
                stream.at += 2  # "24 sc across the last row"
                return True
            if stream.kind() == "word" and (length := worded_edge(stream)):
                stream.at += length  # "along the cast-off edge"
                return True
            named = False  # "along the bottom"
            while stream.word(*_EDGE_WORDS):
                named = stream.take().lower in ("bottom", "top", "foundation")
            if stream.kind() == "ending" and stream.word("short", "narrow", ahead=-1):
                stream.take()  # "along the narrow end"
                return stream.kind() in (*SIGNS, "end", "and", "dash")
            if stream.kind() in ("chain", "foundation") and stream.kind(1) == "edge":
                stream.take()  # "along foundation ch edge"
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

    def over_all_edges(self, start: int, step: Work) -> Evenly:
        """So many stitches along an edge and those named behind it: "evenly up right front, round neck and down left front"."""
        stream, edges = self.stream, 1
        while stream.kind() in (",", "and"):
            before = stream.at
            stream.skip(",", "and")
            if not self.along_edge() or stream.kind() not in (*SIGNS, "end", "and", "turn", "join"):
                stream.at = before
                break
            edges += 1
        words = stream.lexemes[start : stream.at]
        chain = any(item.kind in ("chain", "foundation") for item in words)
        named = any(item.kind == "edge" or item.lower in PIECE_WORDS or tells_piece(item.lower) for item in words)
        if any(item.kind == "evenly" for item in words):
            edges = 1  # "90 sc evenly up right front, round neck and down left front": over all of them
        return Evenly(stream.span_from(start), step.stitch, step.number, edge=named and not chain, edges=edges)

    def of_an_edge(self, start: int) -> bool:
        """ "sc in each of 46 ch along the neck edge": so many places, which are on an edge and not on the row below."""
        stream, last = self.stream, self.steps[-1] if self.steps else None
        place = last.places[0] if isinstance(last, Work) and len(last.places) == 1 else None
        so_many = place is not None and place.which in (Which.NEXT, Which.ELSEWHERE) and not place.limit
        so_many = so_many and (place.each_of or place.number != ONE)
        behind = start and last is not None and last.span.end == stream.lexemes[start - 1].end
        if not so_many or not behind or not stream.word("along", "down", "up") or not self.along_edge():
            return False
        self.steps[-1] = replace(last, places=(replace(place, which=Which.ELSEWHERE, targets=(ANY,)),))
        return True

    def along_edge_words(self, start: int) -> bool:
        """ "working along side edge of ribbing,", "working in rnds around outer edges in sts and ends of rows,"."""
        stream = self.stream
        end = stream.next_of(*SIGNS, ":")
        words = stream.lexemes[stream.at : end]
        edge = any(item.kind in ("edge", "row_end", "side") or item.lower in ("ends", "end") for item in words)
        along = any(item.kind in ("across", "around") or item.lower in ("along", "down", "up") for item in words)
        along = along or bool(words) and words[0].kind in ("in", "over") and all(map(_names_row_ends, words))
        works = any(item.kind in STITCHY and item.lower != "one" or item.kind == "each" for item in words)
        if not edge or not along or works:  # but "along one long edge"
            return False
        stream.at = end
        self.steps.append(AlongEdge(stream.span_from(start)))
        return True

    def _other_side(self, start: int) -> bool:
        """ "working along the opposite side of the ch", "in the free loops of the starting ch", "on the other side"."""
        if self.steps and isinstance(self.steps[-1], Turn) and self.has_work() and self.steps[-1].turned:
            before = self.steps[-1]
            if self._other_side_words(start):
                self.steps[-2:] = [Remark(before.span), self.steps[-1]]  # the piece goes round, and is not turned over
                return True
            return False
        return self._other_side_words(start)

    def _other_side_words(self, start: int) -> bool:
        stream = self.stream
        end = stream.next_of(",", ";", ".", ":", "(", "[", "star")
        side = min(stream.next_of("other_side"), self._free_loops(end))
        if any(item.kind in ("stitch", "special", "increase") for item in stream.lexemes[start : min(side, end)]):
            return False  # "work 1 sc in each ch along other side of ch": work, and where it goes
        chain = stream.next_of("chain", "foundation", start=side)
        between = set(self._kinds(side + 1, chain)) - {"of", "the", "beginning", "same"}
        if side < end and stream.lexemes[side].kind == "other_side" and between:
            chain = len(stream.lexemes)  # "along opposite side sc in next 8 ch": those are worked into
        if side < end <= chain and any(i.kind in ("chain", "foundation") for i in stream.lexemes[start:side]):
            stream.at = end  # "working in starting ch on opposite side of row 1"
            self._go_to_other_side(start)
            return True
        starting = next((i for i in range(start, end) if stream.lexemes[i].kind == "foundation"), end)
        if side >= end and starting < end and self.has_work() and not set(self._kinds(start, starting)) - _WAY_WORDS:
            if starting == end - 1 and "across" in self._kinds(start, end):
                stream.at = end  # "working along foundation ch": its other side, when this one is worked
                self._go_to_other_side(start)
                return True
        if chain >= end:
            leads = side == end - 1 or side < end and (stream.work_at(side + 1) or self._leads_list(side + 1, end))
            alone = leads and self.has_work() and not set(self._kinds(start, side)) - _WAY_WORDS
            if alone or side < end and self._round_a_chain() and leads:
                stream.at = side + 1  # "working on the other side, sc 4": of what, only the chain can tell
                self._go_to_other_side(start)
                return True
            return False
        stream.at = end
        led = chain + 2 < end and stream.lexemes[chain + 1].kind == "with"  # "… of the ch with sc in each ch"
        if chain + 1 + led < end and stream.lexemes[chain + 1 + led].kind in _WORK_BEGINS:
            stream.at = chain + 1 + led  # "on other side of ch sc in next 5 chs", "… of the ch work 1 sc in each ch"
        self._go_to_other_side(start)
        return True

    def _leads_list(self, first: int, end: int) -> bool:
        """Whether "on the other side" leads to a list of single stitches: "dc, hdc, sc"."""
        words = self.stream.lexemes
        alone = end == first + 1 and words[first].kind == "stitch"
        return alone and [item.kind for item in words[end : end + 2]] == [",", "stitch"]

    def _go_to_other_side(self, start: int) -> None:
        """The chain from below, for what follows, and for "sc in each ch" just before "along the other side of the ch".

        Of "3 sc in last ch, hdc in next 4 ch, sc in next 5 ch along the other side", all behind the chain's end goes there.
        """
        last = self.steps[-1] if self.steps else None
        there = isinstance(last, Work) and start > 0 and last.span.end == self.stream.lexemes[start - 1].end
        if there and not last.places and last.stitch != "sl st":  # "sc down the opposite side", "sc 9 back along it"
            side = OtherSide(self.stream.span_from(start))
            plain = not last.number_said and last.stitch not in ("inc", "dec") and last.together is None
            each = (Place(last.span, Which.EACH, (Target(TargetKind.CHAIN),)),)
            self.steps[-1:] = [side, replace(last, places=each) if plain else last]
            return
        whichs = [_last_which(step) for step in self.steps] if there else []
        end = whichs.index(Which.LAST) + 1 if Which.LAST in whichs else len(whichs)
        goes_on = end < len(whichs) and all(which in (*_ALONG, Which.LAST) for which in whichs[end:])
        first = end if goes_on else len(self.steps) - (whichs[-1:] != [] and whichs[-1] in _ALONG)
        self.steps.insert(first, OtherSide(self.stream.span_from(start)))

    def _kinds(self, first: int, last: int) -> list[str]:
        return [item.kind for item in self.stream.lexemes[first:last] if item.lower not in ("down", "up", "back")]

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


_ALONG = (Which.EACH, Which.NEXT)


def _last_which(step: Step) -> Which | None:
    """Which places a step of stitches goes into, the last that it names."""
    return step.places[-1].which if isinstance(step, Work) and step.places else None
