"""Reads clauses that begin with a word of no kind of its own: "continue along …", "pull up a loop", "except …"."""

from __future__ import annotations

from dataclasses import replace

from lint.place import LimitKind, Which
from lint.reading.clauses.base import STITCHY
from lint.reading.clauses.ending import EndingClauses
from lint.reading.places.limits import limit
from lint.reading.repeating import repeats
from lint.reading.repeating.omitting import no_last_chain
from lint.reading.repeating.rowcalls import row_call, rows_of_piece
from lint.reading.words.heldtogether import faced
from lint.reading.words.lastpass import so_many_at_end
from lint.reading.words.piecewords import PIECE_WORDS, tells_piece
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS
from lint.tree import Chain, OpenWork, Remark, Times, TimesKind, UseYarn, Work

_FORM = ("form", "forms", "set", "sets", "make", "are", "is", "establish", "create", "complete", "constitute")
_PATTERNS = ("pattern", "patt", "pat", "texture", "sequence", "design", "patterning")
_SORTS = ("word", "color", "any_stitch", "group_word", "special", "one_stitch", "and", "the")
_MOST_SORTS = 4  # words between "form" and "pattern"
_OF_ROWS = ("the", "same", "last", "first", "number", "ordinal", "row", "round", "and", "dash", "all")
_BEHIND_ROWS = (".", "end", "=", "dash", "turn", *OPENERS)
_GONE_ON_WITH = ("repeat", "increase", "decrease")

_ON_THE_WAY = {"on", "going", "back", "down", "up", "along", "across", "around", "to", "the", "over", "onto"}


class WordClauses(EndingClauses):
    """Told by the word itself."""

    def read_this(self, start: int) -> bool:
        """ "these chs count as the first st", "this counts as a sc"; or "same as Row 2"."""
        stream = self.stream
        chain = stream.kind(1) == "chain"
        if chain and any(stream.word("part", ahead=ahead) for ahead in (3, 4, 5)):
            if self.steps and isinstance(self.steps[-1], Chain):
                self.steps.pop()  # "popcorn in next st, ch 1. This ch 1 is part of the popcorn."
            stream.pass_to()
            self.steps.append(Remark(stream.span_from(start)))
            return True
        counts_at = 2 if chain else 1
        if stream.kind(counts_at) in ("counts", "counts_not"):
            stream.at += counts_at
            return self.read_counting_sentence(start)
        return self.read_row_call(start)

    def read_rows(self, start: int) -> bool:
        """ "Rows 8-19: Rows 2 to 7 twice more.", "[Rows 2 and 3] twice": rows named and nothing besides are worked again."""
        stream, kept = self.stream, len(self.steps)
        if not self.has_work() and (self.depth or not start) and row_call(stream, self.steps, start):
            stream.take() if stream.word("again") else None
            if stream.kind() in _BEHIND_ROWS:
                return True
        del self.steps[kept:]
        stream.at = start
        return self.read_may_be(start)

    def rows_are_pattern(self, start: int) -> bool:
        """ "These 2 rows form the pattern", "The last 4 rows set the patt": what they are, and no work."""
        stream, rows = self.stream, False
        while stream.kind() in _OF_ROWS or stream.word("above", "previous", "these"):
            rows = stream.take().kind in ("row", "round") or rows
        told = rows and stream.word(*_FORM) and stream.take()
        stream.skip("the") if told else None
        named = next((i for i in range(_MOST_SORTS) if stream.word(*_PATTERNS, ahead=i)), None)  # "the stripe pattern"
        sorts = [stream.peek(i) for i in range(named or 0)]
        if not told or named is None or any(item.kind not in _SORTS for item in sorts):
            stream.at = start
            return False
        stream.at += named + 1
        stream.take_if("repeat") if stream.kind(1) in (".", ";", "end") else None
        if stream.kind() not in (".", ";", "end", *CLOSERS):
            stream.at = start
            return False
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def read_word(self, start: int) -> bool:
        """ "continue along the bottom of the foundation ch": on the way; else shaping ("increasing 1 st at each end")."""
        stream = self.stream
        if stream.word("draw", "pull", "pick") and self.read_loop_drawn(start):
            return True
        if stream.word("pick") and stream.word("up", ahead=1) and stream.kind(2) == "and":
            if stream.kind(3) in ("stitch", "make"):
                stream.at, worked = start + 3, len(self.steps)  # "pick up and sc 60 sts evenly around armhole"
                if self.clause() and stream.kind() in (*SIGNS, "end", "and", "join", "turn", *OPENERS):
                    return True
                del self.steps[worked:]
            stream.at = start
        if stream.word("keeping", "retaining") and self.read_keeping_loops(start):
            return True
        if stream.word("patt", "pat", "rib") and self.read_plain(start):
            return True
        stream.at = start
        if stream.word("patt", "pat") and not self.has_work() and stream.kind(1) in ("to", "across", "."):
            stream.at = stream.sentence_end(stream.at + 2, ".", ";", ",")  # "Patt. to turning ch"
            self.steps.append(OpenWork(stream.span_from(start), stream.words(start, stream.at)))
            return True
        if stream.word("down", "up", "back") and self._round_a_chain() and self._other_side_words(start):
            return True  # "sc in each ch back along the other side"
        stream.at = start
        if stream.word("down", "up") and not self.has_work() and self.along_edge_words(start):
            return True  # "Down the side, work 61 sc evenly"
        stream.at = start
        if stream.word("do") and rows_of_piece(stream, self.steps, start):
            return True  # "Do Row 2 again"
        stream.at = start
        if stream.word("do") and repeats.done_so_often(stream, self.steps, start):
            return True
        stream.at = start
        refused = stream.word("don't") or stream.word("do") and stream.word("not", ahead=1)
        if refused:
            stream.at += 1 if stream.word("don't") else 2
            if no_last_chain(stream, self.steps, start):
                return True
            stream.at = start
        if stream.word("you", "we") and self.parts_made(start):
            return True
        if stream.word("we") and stream.kind(1) == "make":
            stream.take()  # "we make 16 ch"
            return self.clause()
        if (
            stream.word("shape", "shaping")
            and self.what_for(start)
            or stream.word("pick")
            and self.yarn_picked_up(start)
        ):
            return True
        if stream.word("hold", "flip", "align", "position", "lay", "line"):
            stream.take()
            if self.turned_out(start) or self.held_in_place(start):
                return True  # "Hold the body upside down and join A in …"
            stream.at = start
        if stream.word("wind", "wrap", "wrapping", "winding") and self.loop_for_ring(start):
            return True
        if stream.word("drop", "dropping", "carry", "carrying"):
            if self.drop_yarn(start):
                return True
            stream.at = start
        if stream.word("instead") and stream.kind(-1) == "join":
            stream.take()  # "omit last sl st and join instead"
            self.steps.append(Remark(stream.span_from(start)))
            return True
        if stream.word("but", "except", "excepting", "excluding", "bar") and so_many_at_end(stream, self.steps, start):
            return True  # "but work only 3 dc in last st"
        if stream.word("but", "except") and self.but_in_last(start):
            return True
        making = 2 if stream.kind(1) == "make" else 1
        making += stream.kind(making) == "the"
        if stream.word("but") and (stream.kind(1) in ("at", "in", "for") or stream.kind(making) == "last"):
            stream.take()  # "but on the last time, …"
            return self.clause()
        if stream.word("which", "it") and stream.kind(1) in ("counts", "counts_not"):
            stream.take()  # "chain three, which counts as a dc"
            return self.read_counting_sentence(start)
        if self.growth_told(start) or self.pulled_tight(start) or self.hand_join(start):
            return True
        if stream.word("connect") and stream.kind(1) in (*SIGNS, "end") and stream.kind(-1) == ",":
            stream.take()  # "(sc, ch 3, connect, ch 3, sc)": to the other motif
            self.steps.append(Remark(stream.span_from(start)))
            return True
        if stream.word("continue", "cont") and stream.kind(1) == "from" and stream.kind(2) == "star":
            return self.read_repeat(start)
        if stream.word("cut") and self.one_yarn(1):
            return self.read_fasten_off(start)
        if stream.word("you") and stream.kind(1) == "ending":
            stream.take()  # "and after that you finish with row 3"
            return self.read_ending(stream.at)
        again = 2 if stream.kind(1) == "to" else 1
        shaped = stream.word("increasing", "decreasing", ahead=again)
        if stream.word("continue", "cont", "continuing", "keep") and (shaped or stream.kind(again) in _GONE_ON_WITH):
            stream.at += again  # "Continue to rep Rows 2-9 until …", "Cont to inc 1 st at each end of every 4th row …"
            return self.clause()
        if stream.word("continue") and stream.kind(1) == "star":
            return repeats.repeat_clause(stream, self.steps, start)  # "Continue * all the way around"
        if stream.word("alternately", "alternating", "in turn") and self.in_turn(start):
            return True
        if stream.word("continue", "continuing", "cont") and self.only_these(start):
            return True
        if stream.word("continue", "cont", "proceed", "continue working", "continue on") and self.next_piece(start):
            return True
        if stream.word("continue", "cont", "continuing", "go", "going", "come", "then", "carry"):
            stream.take()
            stream.take() if stream.word("back", "on", "down", "up") and stream.kind(1) in (
                "across",
                "in",
                "the",
            ) else 0
            if self._other_side(start) or stream.kind() == "across" and self.along_edge_words(start):
                return True
            stream.at = start
        if stream.word("carry", "keep", "proceed", "move", "moving", "turn to") and self.on_to_other_side(start):
            return True
        return self.read_shaping(start)

    def in_turn(self, start: int) -> bool:
        """ "sc, inc alternately around": the two, one after the other as often as there is room."""
        stream = self.stream
        stream.take()
        reach = limit(stream)
        works = [step for step in self.steps if isinstance(step, Work)]
        whole = (
            reach is not None
            and reach.kind in (LimitKind.END, LimitKind.LAST)
            and stream.kind() in (*SIGNS, "end", "dash", "=")
        )
        if whole and len(works) == 2 and all(p.which is Which.NEXT for step in works for p in step.places):
            span = stream.span_from(start)
            if repeats.fold_row(self.steps, Times(span, TimesKind.FILL, limit=reach), span):
                return True
        stream.at = start
        return False

    def next_piece(self, start: int) -> bool:
        """ "continue with the body", "proceed to Crown": which piece comes next, and no work."""
        stream = self.stream
        stream.take()
        stream.take() if stream.word("on", "now") else None
        led = stream.take_if("with", "to") is not None or stream.word("onto") and stream.take() is not None
        stream.skip("the")
        named = stream.kind() == "word" and stream.peek().text[:1].isupper()
        piece = led and stream.kind() not in STITCHY and (named or tells_piece(stream.peek().lower))
        if piece and stream.take() and stream.kind() in (".", ";", ",", "end"):
            self.steps.append(Remark(stream.span_from(start)))
            return True
        stream.at = start
        return False

    def read_put(self, start: int) -> bool:
        """ "place the arm against the body and work 3 sc through both": how it is held; else what is put somewhere."""
        self.stream.take()
        if self.held_in_place(start):
            return True
        self.stream.at = start
        return super().read_put(start)

    def on_to_other_side(self, start: int) -> bool:
        """ "carry on down the other side of the chain", "keep going along the bottom of the ch", "moving to the other side"."""
        stream = self.stream
        end = stream.next_of(",", ";", ".", ":", *OPENERS)
        side = stream.next_of("other_side", start=start)
        between = [item.lower for item in stream.lexemes[start + 1 : side]]
        if side < end and set(between) <= _ON_THE_WAY and self._other_side(start):
            return True
        stream.at = start
        return False

    def held_in_place(self, start: int) -> bool:
        """ "hold the first arm against the body and work 3 sc through both": how a piece is held that is worked into."""
        stream = self.stream
        if faced(stream, self.steps, start):
            return True
        end = stream.next_of(",", ";", ".", ":", "and", *OPENERS)
        words = stream.lexemes[stream.at : end]
        pointing = ("first", "last", "next", "ordinal")
        idle = all(
            item.kind in ("word", "the", "in", "to", "with", "number", "front", *pointing)
            or item.kind == "of"
            and before.lower == "front"
            or item.lower == "work"
            and before.kind == "the"  # "in front of the work"
            for before, item in zip(stream.lexemes[stream.at - 1 :], words, strict=False)
        )
        named = any(tells_piece(item.lower) for item in words)
        if not named or not idle or any(item.kind == "number" for item in words) or stream.word("back", "loops"):
            return False
        stream.at = end
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def one_yarn(self, ahead: int) -> bool:
        """Whether "yellow", "the Denim", "the red yarn" stands ahead, and no more."""
        stream = self.stream
        ahead += stream.kind(ahead) == "the"
        after = ahead + 1 + (stream.kind(ahead + 1) in ("yarn", "color"))
        return stream.kind(ahead) == "word" and stream.kind(after) in (*SIGNS, "end", "and")

    def behind_others(self, start: int) -> bool:
        """ "Again behind the petals: ch 1, *bpsc around next sc of Rnd 2": how the work is held."""
        stream = self.stream
        stream.at += int(stream.word("once") and stream.kind(1) == "more")
        stream.at += int(stream.kind() == "more" or stream.word("still", "back"))
        if stream.word("behind") and self.read_behind(start):
            return True
        stream.at = start
        return False

    def read_place_first(self, start: int) -> bool:
        """ "In this round we make the arms": what the round is for; else a place before its work."""
        ahead = 2 if self.stream.kind(1) in ("the", "same", "next") else 1
        told = self.stream.kind(ahead) in ("row", "round") and self.stream.word("we", "you", ahead=ahead + 1)
        if told:
            self.stream.at += ahead + 1
            if self.parts_made(start):
                return True
            self.stream.at = start
        return super().read_place_first(start)

    def read_rotate(self, start: int) -> bool:
        """ "Rotate the piece and go on along the bottom of the chain": its other side; else how the piece is held."""
        turned = self.stream.word("rotate", "rotate piece", "pivot", "pivot work", "pivot the work")
        if turned and self.has_work() and self._other_side_words(start):
            return True
        told = [item.kind for item in self.stream.lexemes[start : self.stream.next_of(*SIGNS, ":", start=start)]]
        if turned and "other_side" in told and "across" in told:
            return False  # "and go on along the bottom of the body": that is elsewhere
        self.stream.at = start
        return self.read_sentence_remark(start)

    def read_whole_row(self, start: int) -> bool:
        """ "hdc in 3rd ch from hook (does not count) and across": in each chain after it, too; else as in lists."""
        stream = self.stream
        opens = not start or stream.lexemes[start - 1].kind in (".", ";", ":")
        if opens and stream.word("along", "across") and self.along_edge_words(start):
            return True  # "Along the hem of the towel, work 61 sc evenly"
        stream.at = start
        if self.of_an_edge(start):
            return True
        stream.at = start
        behind_note = stream.kind(-1) == "and" and stream.kind(-2) in CLOSERS
        last = next((step for step in reversed(self.steps) if isinstance(step, Work)), None)
        if behind_note and last is not None and last.places and last.places[-1].which is Which.FROM_HOOK:
            reach = limit(stream)
            span = stream.span_from(start)
            if reach is not None and self.more_places(
                (replace(last.places[-1], span=span, which=Which.EACH, ordinals=(), limit=reach),)
            ):
                return True
            stream.at = start
        return super().read_whole_row(start)

    def rows_between_strokes(self, start: int) -> bool:
        """ "/ 5 rows /" behind a label: how many rows it stands for."""
        stream = self.stream
        told = stream.kind(1) == "number" and stream.kind(2) in ("row", "round") and stream.kind(3) == "/"
        if told:
            stream.at += 4
            self.steps.append(Remark(stream.span_from(start)))
        return told

    def parts_made(self, start: int) -> bool:
        """ "Now you make the handles.", "we make the ears and the arms:": what the row is for, and no word of how."""
        stream = self.stream
        end = stream.next_of(",", ";", ".", ":", "dash", *OPENERS)
        words = stream.lexemes[stream.at + 2 : end]
        parts = ("handle", "strap", "buttonhole", "slit", "heel", "sleeve", "thumb")
        named = [item.lower.removesuffix("s") in parts or tells_piece(item.lower) for item in words]
        plain = all(name or item.kind in ("the", "and") for name, item in zip(named, words, strict=True))
        if self.has_work() or stream.kind(1) != "make" or not any(named) or not plain:
            return False
        stream.at = end
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def what_for(self, start: int) -> bool:
        """ "Shape armholes:", "To shape neck …": what the row is for, before its work."""
        stream = self.stream
        end = stream.next_of(",", ";", ".", ":", "…", "..", "...", "dash", *OPENERS, start=start)
        by = next((at for at in range(start, end) if stream.lexemes[at].lower == "by"), None)
        words = stream.lexemes[start : end if by is None else by]  # "Shape sleeve by increasing 1 st at each end"
        end = end if by is None else by + 1
        named = any(item.lower.removesuffix("s") in PIECE_WORDS for item in words[1:])
        if self.has_work() or not named or any(item.kind in STITCHY for item in words):
            return False
        stream.at = end
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def yarn_picked_up(self, start: int) -> bool:
        """ "Pick up dark color": the yarn worked with from here on."""
        stream = self.stream
        end = stream.next_of(",", ";", ".", *OPENERS, start=start)
        words = stream.lexemes[start:end]
        if len(words) < 3 or words[1].lower != "up" or words[-1].kind not in ("color", "yarn"):
            return False
        stream.at = end
        self.steps.append(UseYarn(stream.span_from(start), words[-2].text if words[-2].kind == "word" else None))
        return True
