"""Reads chains and rings."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import Amount
from lint.place import Place, Target, TargetKind, Which
from lint.reading.clauses.base import is_run
from lint.reading.clauses.leave import LeaveClauses
from lint.reading.places import notes
from lint.reading.places.places import places
from lint.reading.places.targets import is_space_word
from lint.reading.words.stream import OPENERS, SIGNS, Stream
from lint.tree import Alongside, Chain, Counting, Group, MakeRing, Remark, Skip, Unread, Work, walk

_POINTS_BACK = ("this", "that", "these", "those")  # "ch 4 over these 4 sts"


class ChainClauses(LeaveClauses):
    """ "ch 3", "ch 4, join to form a ring", "ch 1 over next ch-1 sp"."""

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
        elif number is not None and stream.kind() == "chain" and stream.kind(1) in (*SIGNS, "end", "any_stitch"):
            stream.take()  # "With A, chain 46 ch."
            stream.take_if("any_stitch")
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

    def counting_in(self, inner: Stream) -> Counting | None:
        """The note in brackets on what a chain counts as; "tr in 4th ch from hook (= 2 tr)": the chains passed are one."""
        step, words = self.steps[-1] if self.steps else None, inner.lexemes
        first = isinstance(step, Work) and bool(step.places) and step.places[-1].which is Which.FROM_HOOK
        two = [item.kind for item in words] == ["=", "number", "stitch"] and words[1].number == 2
        if first and two and step.number.lone == 1 and step.stitch == words[2].value:
            return Counting(inner.span_from_all(), True, step.stitch)
        return notes.counting(inner)

    def read_turning_chain(self, start: int) -> bool:
        """The "tch" of "tch, dc in each st", as the pattern's list explains it."""
        stream = self.stream
        special = stream.vocabulary.specials.get(str(stream.take().value))
        if special is None or not special.items or self.has_work() and stream.kind() not in (*SIGNS, "end", "turn"):
            return False
        self.steps.append(replace(special.items[0], span=stream.span_from(start)))
        return True

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
        short = stream.word("p") and stream.kind(1) in (*SIGNS, "end") and self._hyphened(start)
        if short or stream.kind() == "picot" or stream.kind() == "dash" and stream.kind(1) == "picot":
            stream.take() if short else stream.skip("dash", "picot")  # "ch-3 picot", "ch-5 p": of how many chains
            self.steps.append(Work(stream.span_from(start), "picot", special=stream.vocabulary.specials.get("picot")))
            return True
        number = number.plus(self.more_chains())
        self.steps.append(Chain(stream.span_from(start), number))
        note = notes.for_first_stitch(stream, number.lone)
        if note is not None:
            self.attach_counting(note)
        self.ring_close(start, number)
        if self.over_space(start):
            return True
        if stream.word("instead"):
            stream.take()
        self.all_in_ring()
        if stream.kind() == "from" and stream.kind(1) == "base":
            stream.pass_to()  # "14 ch from base of tr just worked"
        if stream.kind() == "to" and (stream.kind(1) == "beginning" or stream.word("start", "begin", ahead=1)):
            stream.pass_to()  # "ch 1 to start edging"
        return True

    def read_all_in_ring(self, start: int) -> bool:
        """ "3 ch, 1 tr, (1 ch, 2 tr) 5 times, all into ring": where stitches with no place go in any case."""
        if not self.all_in_ring():
            return False
        self.steps.append(Remark(self.stream.span_from(start)))
        return True

    def all_in_ring(self) -> bool:
        """Takes the "in ring", "all worked into the ring" behind a list or repeat of which nothing names a place."""
        stream = self.stream
        before = stream.at
        stream.skip("all")
        stream.take() if stream.word("worked") else None
        ring = stream.take_if("in") and (stream.skip("the"), stream.take_if("ring"))[1]
        if ring and self.has_work():
            if not any(isinstance(step, (Work, Group)) and step.places for step in walk(tuple(self.steps))):
                return True
        stream.at = before
        return False

    def _hyphened(self, start: int) -> bool:
        """Whether a chain's number hangs on by a hyphen: "ch-5"."""
        return any(item.kind == "dash" and item.glued for item in self.stream.lexemes[start : self.stream.at])

    def over_space(self, start: int) -> bool:
        """ "ch 1 over next ch-1 sp" passes that space, "ch 2 over next 2 sts" those stitches; "over each" so along a run."""
        stream = self.stream
        before = stream.at
        stream.take() if stream.word("above") else stream.take_if("over", "at", "in")
        found = places(stream, bare=True) if stream.at > before else ()
        chain = self.steps[-1]
        sort = found[0].targets[0].kind if len(found) == 1 else None
        corners = sort is TargetKind.CORNER and found[0].which is Which.EACH and found[0].of is None
        if corners and len(self.steps) > 1 and is_run(self.steps[-2]) and isinstance(chain, Chain):
            self.steps[-1] = Alongside(stream.span_from(start), (chain,), replace(found[0], shared=False))
            return True  # "dc in each dc, ch 3 at each corner"
        if stream.lexemes[before].kind in ("at", "in") if before < len(stream.lexemes) else False:
            stream.at = before
            return False
        stitches = sort in (TargetKind.ANY_STITCH, TargetKind.STITCH) and found[0].which is Which.NEXT
        if stitches and any(item.lower in _POINTS_BACK for item in stream.lexemes[before : stream.at]):
            why = "whether these are still to be passed over, or lie behind the chain, is not said"
            self.steps.append(Unread(stream.span_from(start), stream.words(start, stream.at), why))
            return True
        if sort is not TargetKind.SPACE and not stitches or not isinstance(chain, Chain):
            stream.at = before
            return False
        span, place = stream.span_from(start), replace(found[0], shared=False)
        if place.which is Which.EACH:
            self.steps[-1] = Alongside(span, (chain,), place)
        else:
            self.steps.append(Skip(span, (place,)))
        return True

    def more_chains(self) -> Amount:
        """Takes the "+ 4 ch" of "36 ch + 4 ch"; a "+" before stitches only joins the clauses."""
        stream = self.stream
        more = Amount.of(0)
        while (stream.kind() == "+" or stream.word("plus")) and stream.kind(1) in ("number", "stitch", "chain"):
            start = stream.at
            stream.take()
            number = stream.amount()
            turning = bool(stream.take_if("turning_chain"))  # "80 ch + 3 turning ch"
            chains = turning or bool(stream.take_if("chain")) or stream.kind() in (",", ".", ";", "end", "(", "for")
            if number is None or not chains:
                stream.at = start + 1 if stream.kind() in ("stitch", "chain") else start
                break
            stream.take_if("increase")  # "85 chain sts + 1 chain st increase"
            more = more.plus(number)
        return more

    def read_foundation(self, start: int) -> bool:
        """ "a foundation ch of 36 ch", "a foundation chain of 36"."""
        stream = self.stream
        stream.take()
        led = stream.kind() in (":", "of", "number")
        stream.skip(":", "of")
        numbered = stream.at
        number = stream.amount() if led else None
        stream.take_if("any_stitch") if number is not None else None
        if number is not None and stream.kind() in (*SIGNS, "end", "and", "turn", "join"):
            return self.chain_of(start, number)
        stream.at = numbered
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
                in_round = stream.kind() == "round" and self.top and verb.kind == "join" and not self.has_work()
                ring = ring or stream.kind() == "ring" or in_round
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
            kinds = [item.kind for item in words]  # "ch 2, sl st in ch-5 loop of First Tape" goes to that loop
            to_chain = to_chain and "space" not in kinds[: kinds.index("forming") if "forming" in kinds else None]
            whole = any(item.kind == "ordinal" and item.number == number.lone for item in words)
            hooked = any(item.kind == "hook" for item in words)
            if whole and hooked and self.top and not self.has_work():
                behind = [item.kind for item in stream.lexemes[stream.at :]]
                # "ch 6, sl st in 6th ch from hook": in the first of them; but "…, sc in next sc" opens a row with a picot
                ring = "ring" in behind or not {"next", "each"}.intersection(behind)
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
        after = ("any_stitch", "end", ".", ",", ";", "(", "[", "{", "dash", "=", "→")
        if (
            self.top
            and stream.kind() == "number"
            and stream.kind(1) in after
            and (number := stream.amount()) is not None
        ):
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
