"""Reads chains, rings, skips and stitches left unworked."""

from __future__ import annotations

from lint.amount import Amount
from lint.place import Place, Target, TargetKind, Which
from lint.reading import notes
from lint.reading.piecewords import names_piece
from lint.reading.places import places
from lint.reading.remarkclauses import RemarkClauses
from lint.reading.skips import at_the_middle, skipped
from lint.reading.stream import OPENERS, SIGNS, Stream
from lint.reading.targets import is_space_word, target
from lint.tree import Chain, Either, Group, Join, MakeRing, Remark, Repeat, Skip, Turn, Work, walk


class ChainClauses(RemarkClauses):
    """ "ch 3", "ch 4, join to form a ring", "skip next 2 dc", "leave last 4 sts unworked"."""

    def read_chain(self, start: int) -> bool:
        """ "ch 3", "ch3", "chain-3", and "ch 4, join to form a ring"."""
        stream = self.stream
        stream.take()
        if stream.kind() == "dash" and stream.peek(1).glued:
            stream.take()
        if stream.word("x", "×") and stream.kind(1) == "number":
            stream.take()
        stream.take_if("of") if stream.kind(1) == "number" else None  # "a ch of 12"
        if stream.kind() == "multiple":
            return self.read_whole_sentence(start)
        number = stream.amount()
        if number is not None and stream.kind() in ("more", "any_stitch"):
            stream.take()  # "ch 47, ch 1 more", "chain 14 sts"
        if number is None:
            if stream.kind() in ("number",) and stream.word("one"):
                number = stream.take().quantity
            else:
                return False
        if is_space_word(stream):
            return False
        if stream.kind() == "at" and self._says_what_counts():
            return True
        return self.chain_of(start, number)

    def _says_what_counts(self) -> bool:
        """ "Chain-3 at beg of row counts as first dc": a rule for all rows, not a chain to work."""
        stream = self.stream
        start = stream.at - 1
        end = stream.next_of(".", ";", start=start)
        note = notes.counting(stream.inside(stream.at, end))
        if note is None:
            return False
        stream.at = end
        self.steps.append(Remark(stream.span_from(start), counting=note))
        return True

    def chain_of(self, start: int, number: Amount) -> bool:
        stream = self.stream
        if stream.kind() == "picot" or stream.kind() == "dash" and stream.kind(1) == "picot":
            stream.skip("dash", "picot")  # "ch-3 picot": of how many chains it is made
            self.steps.append(Work(stream.span_from(start), "picot", special=stream.vocabulary.specials.get("picot")))
            return True
        number = number.plus(self.more_chains())
        self.steps.append(Chain(stream.span_from(start), number))
        note = notes.for_first_stitch(stream, number.lone)
        if note is not None:
            self.attach_counting(note)
        self.ring_close(start, number)
        if stream.word("instead"):
            stream.take()
        self.all_in_ring()
        if stream.kind() == "from" and stream.kind(1) == "base":
            stream.pass_to()  # "14 ch from base of tr just worked"
        if stream.kind() == "to" and (stream.kind(1) == "beginning" or stream.word("start", "begin", ahead=1)):
            stream.pass_to()  # "ch 1 to start edging"
        return True

    def all_in_ring(self) -> None:
        """Takes the "in ring" behind the last chain of a list or a repeat: "3 ch, 2 tr, (2 ch, 3 tr) x 3, 2 ch in ring".

        What names no place of its own goes into the open ring by itself.
        """
        stream = self.stream
        placed = any(isinstance(step, (Work, Group)) and step.places for step in walk(tuple(self.steps)))
        if not placed and stream.kind() == "in" and stream.kind(1) == "ring" and self.has_work():
            stream.at += 2

    def more_chains(self) -> Amount:
        """Takes the "+ 4 ch" of "36 ch + 4 ch"; a "+" before stitches only joins the clauses."""
        stream = self.stream
        more = Amount.of(0)
        while (stream.kind() == "+" or stream.word("plus")) and stream.kind(1) in ("number", "stitch", "chain"):
            start = stream.at
            stream.take()
            number = stream.amount()
            chains = bool(stream.take_if("chain")) or stream.kind() in (",", ".", ";", "end", "(", "for")
            if number is None or not chains:
                stream.at = start + 1 if stream.kind() in ("stitch", "chain") else start
                break
            stream.take_if("increase")  # "85 chain sts + 1 chain st increase"
            more = more.plus(number)
        return more

    def read_foundation(self, start: int) -> bool:
        """ "a foundation ch of 36 ch"."""
        stream = self.stream
        stream.take()
        stream.skip(":", "of")
        return stream.kind() in ("number", "chain") and self.clause()

    def ring_close(self, start: int, number: Amount) -> None:
        """After a chain: "join with sl st (in first ch) to form a ring" makes the chain a ring."""
        stream = self.stream
        mark = stream.at
        stream.skip(",", ".", ";", "and", "then")
        if stream.kind() == "telling":  # "ch 60, being careful not to twist, join"
            stream.pass_to()
            stream.skip(",", ".", ";", "and", "then")
        if self.ring_by_hand(start, number):
            return
        verb = stream.peek()
        if verb.kind == "join" or (verb.kind == "stitch" and verb.value == "sl st"):
            words_from = stream.at
            ring = False
            ordinal = False
            while not stream.done and stream.kind() not in (",", ";", ".", ":", "(", "[", "{", "star"):
                if stream.leads_to_work(stream.at):
                    break  # "join to form ring and work 12 sc in ring"
                ring = ring or stream.kind() == "ring"
                ordinal = ordinal or stream.kind() in ("first", "ordinal") or stream.word("back")
                stream.take()
            plain = self.top and stream.at - words_from <= 3 and verb.kind == "join"  # "ch 4, join."
            slip = [item.kind for item in stream.lexemes[words_from + 1 : stream.at]]
            plain = plain or self.top and slip in (["join"], ["to", "join"])  # "4 ch, ss to join,"
            to_chain = (
                self.top
                and not any(item.kind == "hook" for item in stream.lexemes[words_from : stream.at])
                and any(item.kind == "chain" for item in stream.lexemes[words_from : stream.at])
                and ordinal
            )
            words = stream.lexemes[words_from : stream.at]
            whole = any(item.kind == "ordinal" and item.number == number.lone for item in words)
            hooked = any(item.kind == "hook" for item in words)
            if whole and hooked and self.top and not self.has_work():
                ring = True  # "ch 6, sl st in 6th ch from hook": in the first of them
            if ring or ((plain or to_chain) and not self.has_work()):
                self.steps[-1] = MakeRing(stream.span_from(start), number)
                return
        stream.at = mark

    def read_ring(self, start: int) -> bool:
        stream = self.stream
        if self.has_work():
            return False
        stream.take()
        close = stream.matching(stream.at + 1) if stream.kind() == "with" and stream.kind(1) in OPENERS else None
        stream.at = close + 1 if close is not None else stream.at  # "a magic ring with (C1)"
        self.steps.append(MakeRing(stream.span_from(start)))
        self.number_in_ring(start)
        if stream.kind() == "or":  # "Magic loop or ch 5, join to form a ring": one ring, made as one likes
            before, ring = stream.at, self.steps[-1]
            stream.take()
            if not self.clause() or not isinstance(self.steps.pop(), MakeRing):
                stream.at, self.steps[-1:] = before, [ring]
                return False
        return True

    def number_in_ring(self, start: int) -> None:
        """ "MR 6": so many single crochet, the stitch of toys, in the ring (common practice, no source)."""
        stream = self.stream
        before = stream.at
        joined = stream.kind() in ("with", "of")
        stream.skip(",", "of", "with")
        after = ("any_stitch", "end", ".", ",", ";", "(", "[", "{", "dash", "=")
        if self.top and stream.kind() == "number" and stream.kind(1) in after:
            number = stream.amount()
            stream.take_if("any_stitch")
            span = stream.span_from(start)
            place = Place(span, Which.NEXT, (Target(TargetKind.RING),))
            self.steps.append(Work(span, "sc", number, (place,), number_said=True))
            return
        if joined and stream.kind() == "number" and stream.kind(1) == "stitch" and stream.kind(2) in after:
            number, stitch = stream.amount(), stream.take().value  # "magic ring with 6 sc"
            span = stream.span_from(start)
            self.steps.append(Work(span, stitch, number, (Place(span, Which.NEXT, (Target(TargetKind.RING),)),)))
            return
        stream.at = before

    def read_skip(self, start: int) -> bool:
        """ "skip next 2 dc", "sk 3", "miss first 4 ch (3 ch count as 1 tr)", "skip all remaining sts"."""
        stream = self.stream
        stream.take()
        stream.skip(",", "the", "over")
        if stream.kind() == "to" and names_piece(stream, 2 if stream.kind(1) == "the" else 1):
            stream.pass_to()  # "skip to the other leg"
            self.steps.append(Remark(stream.span_from(start)))
            return True
        if stream.kind() == "to" and self._skips_to(start):
            return True
        if stream.kind() in ("all", "remaining"):
            stream.pass_to(",", ";", ".")
            self.steps.append(Skip(stream.span_from(start), (), rest=True))
            return True
        if stream.kind() in OPENERS:
            close = stream.matching(stream.at)
            if close is None:
                return False
            inner = stream.inside(stream.at + 1, close)
            found = skipped(inner)
            if not found or not inner.done:
                found = self._skipped_list(stream.inside(stream.at + 1, close))
            if not found:
                return False
            stream.at = close + 1
        else:
            found = skipped(stream)
        if not found:
            return False
        if len(found) == 1 and stream.kind() == "at":
            found = (at_the_middle(stream, found[0]),)
        if self.steps and isinstance(self.steps[-1], Join) and found[0].targets[0].kind is TargetKind.CHAIN:
            self.steps.append(Remark(stream.span_from(start)))  # "join in first hdc, skipping ch-2"
            return True
        if stream.kind() == "made" and found[0].targets[0].kind is TargetKind.CHAIN:
            stream.take()  # "sk ch just made": this row's own
            self.steps.append(Remark(stream.span_from(start)))
            return True
        if stream.kind() == "word" and stream.word("directly", "behind") or stream.kind() == "between":
            stream.pass_to()
        stream.take_if("remaining")  # "skip one st and turning chain remaining"
        if stream.kind() == "or" and stream.kind(1) in ("next", "number", "chain"):
            stream.take()
            other = skipped(stream)
            if not other:
                return False
            span = stream.span_from(start)
            self.steps.append(Either(span, ((Skip(span, found),), (Skip(span, other),))))
            return True
        counting = None
        if stream.kind() == "(":
            close = stream.matching(stream.at)
            note = notes.counting(stream.inside(stream.at + 1, close)) if close else None
            if note is not None:
                counting = note
                stream.at = close + 1
        if stream.kind() == "at" and any(item.kind == "repeat" for item in stream.lexemes[stream.at : stream.at + 6]):
            if not (self.steps and isinstance(self.steps[-1], Repeat)):
                return False
            stream.pass_to()  # "…, skipping 1 sc at end of last rep"
        self.steps.append(Skip(stream.span_from(start), found, counting))
        return True

    def only_these(self, start: int) -> bool:
        """ "work on these sts only", "working on these 14 sts": the rest of the row below is left for later."""
        stream = self.stream
        words = stream.lexemes[start : stream.next_of(*SIGNS, start=start)]
        on = next((i for i, item in enumerate(words[:3]) if item.lower in ("on", "over")), None)
        kinds = [item.kind for item in words]
        these = any(item.lower in ("these", "those") for item in words)
        if on is None or not (these and "any_stitch" in kinds) or set(kinds) & {"row", "round", "each"}:
            return False
        stream.at = start + len(words)
        span = stream.span_from(start)
        self.steps.append(Skip(span, (), rest=True) if self.has_work() else Remark(span))
        return True

    def _skips_to(self, start: int) -> bool:
        """ "skip to next gap (and work …)": on to a place that the next clause works into."""
        stream = self.stream
        before = stream.at
        stream.take()
        found = places(stream, bare=True)
        if len(found) == 1 and found[0].which is Which.NEXT and stream.kind() in (",", ";", ".", "and", "then", "end"):
            self.steps.append(Skip(stream.span_from(start), (), to=found[0]))
            return True
        stream.at = before
        return False

    def _skipped_list(self, inner: Stream) -> tuple[Place, ...]:
        """What "sk (dc, ch 1, dc)" passes over: each stitch and each run of chains."""
        span = inner.span_from_all()
        found: list[Place] = []
        for item in self.read_inside(inner):
            if isinstance(item, Chain):
                sort = Target(TargetKind.SPACE, length=item.length)
                found.append(Place(span, Which.NEXT, (sort,)))
            elif isinstance(item, Work) and not item.places and item.special is None and item.together is None:
                found.append(Place(span, Which.NEXT, (Target(TargetKind.STITCH, item.stitch),), item.number))
            else:
                return ()
        return tuple(found)

    def read_leave(self, start: int) -> bool:
        self.stream.take()
        self.steps.append(Skip(self.stream.span_from(start), (), rest=True))
        return True

    def read_leave_last(self, start: int) -> bool:
        """ "leave last 4 sts unworked", "leaving the remaining 8 sc unworked for the instep"."""
        stream = self.stream
        stream.take()
        words = stream.at
        if any(
            item.lower in ("tail", "end", "ends", "length", "opening", "hole")
            for item in stream.lexemes[words : words + 7]
        ):
            stream.at = stream.sentence_end(words, ".", ";", ",")  # "leaving a 15 cm tail"
            self.steps.append(Remark(stream.span_from(start)))
            return True
        stream.skip("across", "the", "last", "remaining")
        middle = stream.take_if("middle") is not None
        number = stream.amount()
        named = target(stream)
        sort = named or Target(TargetKind.ANY_STITCH)
        joins = (
            stream.kind() == "unused" and stream.kind(1) in ("and", ",", ";") and stream.kind(2) in ("attach", "join")
        )
        if joins and number is not None and not self.has_work():
            stream.take()  # "Leave centre 10 sts unworked and rejoin yarn in next st": passed over from here
            span = stream.span_from(start)
            self.steps.append(Skip(span, (Place(span, Which.NEXT, (sort,), number, middle=middle),)))
            return True
        stream.pass_to()
        told = named is not None or bool(self.steps) and isinstance(self.steps[-1], Turn)
        if (
            not (told and number is not None and self.has_work())
            and not stream.peek(start - stream.at).lower.startswith("do not")
            and not any(
                item.kind == "unused" or item.lower in ("unworked", "un-worked", "free")
                for item in stream.lexemes[words : stream.at]
            )
        ):
            return False
        span = stream.span_from(start)
        left = (Place(span, Which.LAST, (sort,), number),) if number is not None else ()
        self.steps.append(Skip(span, left, rest=True))
        return True
