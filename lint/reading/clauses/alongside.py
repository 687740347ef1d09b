"""Reads "with" and "working" clauses: yarn, hook and side, "with 3 sc in each corner", "working last dc in top of ch"."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE, Amount
from lint.growth import ShapedWhere
from lint.lexicon import Lexeme
from lint.place import Place, Target, TargetKind, Which
from lint.reading.clauses.base import STITCHY, Reading
from lint.reading.clauses.plain import PlainClauses
from lint.reading.places.places import places
from lint.reading.words import lastpass
from lint.reading.words.lists import bare
from lint.reading.words.runs import alongside
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream
from lint.source import Span
from lint.tree import (
    Chain,
    Group,
    JoinYarn,
    LastPlace,
    Remark,
    Repeat,
    RowCall,
    Shaping,
    Step,
    TimesKind,
    Turn,
    Unread,
    UseYarn,
    Work,
)

_STRANDS = (
    "strand",
    "strands",
    "held",
    "doubled",
    "double-stranded",
    "folded",
)  # "With 2 strands of A held together, ch 20"

_HOOK_WORDS = 7  # "and", the hook's size in two systems, and the word


# how it is said that a stitch stands in a place
_GOES = "is are being will should must be worked made placed crocheted comes goes falls coming going falling".split()


class WithClauses(PlainClauses):
    """ "With A,", "with RS facing", "with 3 sc in each corner", "working first sc in same st"."""

    def read_with(self, start: int) -> bool:
        """ "With A," "With RS facing," "with the last dc in top of turning ch"."""
        stream = self.stream
        stream.take()
        end = stream.sentence_end(stream.at, ",", ";", ".", ":")
        words = stream.lexemes[stream.at : end]
        facing = next((i for i, word in enumerate(words) if word.kind == "facing"), None)
        if facing is not None:
            rest = words[facing + 1 :]
            if rest[:1] and rest[0].kind == "as":  # "With RS facing as for Row 1 of left side": which side, and no row
                begins = (i for i, word in enumerate(rest) if word.kind in ("join", "attach"))
                stream.at += facing + 1 + next(begins, len(rest))
                self.steps.append(Remark(stream.span_from(start)))
                return True
            at_work = any(word.kind in (*STITCHY, "join", "attach", "make") for word in rest)
            # "With RS facing join B in any sp"; the hook beside it is no work
            stream.at = stream.at + facing + 1 + _and_hook(rest) if at_work else end
            self.steps.append(Remark(stream.span_from(start)))
            return True
        if stream.peek().text != "A":  # "With A joined in first sc": a colour's letter
            stream.skip("the")
        if stream.kind() in ("last", "first") and stream.kind(1) != "color":
            stream.at -= 1
            return self.read_last_place(start)
        if (
            self.has_work()
            and stream.kind() in ("number", "(", "[", "stitch")
            and any(w.kind in ("in", "at") for w in words)
        ):
            return self.read_alongside(start)  # "with 3 sc in center sc of each corner"
        if self.steps and isinstance(self.steps[-1], Turn) and self.with_stitch():
            return True
        if not self.has_work() and (made := _yarn_to_make(words)):
            stream.at += made  # "With Sky make 36 ch": the chain is work
            self.steps.append(UseYarn(stream.span_from(start), stream.peek(-1).text))
            return True
        colour = self.colour()
        stream.take_if("yarn") if colour is not None else None  # "With cream cotton, ch 40"
        named = len(words) <= 3 or any(word.kind == "yarn" for word in words)
        if colour is None and named and not any(word.kind in (*STITCHY, "any_stitch") for word in words):
            stream.at = end
            told = [word for word in words if word.lower not in ("joined", "in")]  # "With Red joined in,"
            colour = told[-1].text if told else None
        if colour is None:
            hook = next((i for i in range(len(words)) if _hook_or_strands(words, i)), None)
            if hook is not None:
                behind = range(stream.at + hook + 1, end)  # "Using 4 mm hook make 12 ch": the chain is work
                begins = (
                    i
                    for i in behind
                    if stream.work_at(i) or stream.lexemes[i].kind in ("make", "join", "attach", "repeat")
                )
                stream.at = next(begins, end)
                self.steps.append(Remark(stream.span_from(start)))
                return True
            return False
        if stream.word("joined", "attached") and self.with_yarn_joined(start, colour):
            return True
        hook = _and_hook(stream.lexemes[stream.at : end]) if stream.kind() == "and" else 0
        stream.at += hook  # "With Plum and smaller hook, ch 9"
        self.steps.append(UseYarn(stream.span_from(start), colour))
        return True

    def with_yarn_joined(self, start: int, colour: str) -> bool:
        """ "With B joined in, ch 1", "With A joined in any ch-1 sp, ch 3": new yarn, and where it is joined."""
        stream = self.stream
        joined = stream.at
        stream.take()
        if stream.kind() == "in" and stream.kind(1) in SIGNS:
            stream.take()
        found = places(stream, allow_to=True)
        if stream.kind() not in SIGNS:
            stream.at = joined
            return False
        span = stream.span_from(start)
        self.steps.append(JoinYarn(span, colour, None, found) if found else UseYarn(span, colour))
        return True

    def with_stitch(self) -> bool:
        """ "turn with a sl st in 2nd ch from hook": the first stitch behind the turn."""
        at = self.stream.at
        if self.stream.word("a", "an"):
            self.stream.take()
        if self.stream.work_at(self.stream.at) and self.clause():
            return True
        self.stream.at = at
        return False

    def read_alongside(self, start: int) -> bool:
        """ "working 3 sc in each ch-2 sp": applies on the way of the run before."""
        stream = self.stream
        items: list[Step] = []
        sub = type(self)(stream, Reading(items), top=False)
        while sub.clause() and bare(items[-1]) and stream.kind() in (",", "and"):
            stream.skip(",", "and")
        if len(items) != 1:
            return False
        item = items[0]
        found = item.places if isinstance(item, (Work, Group)) else ()
        if len(found) != 1:
            return False
        span = stream.span_from(start)
        before = self.steps[-1] if self.steps else None
        run = isinstance(before, Work) and bool(before.places) and before.places[-1].which is Which.EACH
        if run and found[0].which is Which.ELSEWHERE and _says_in(stream, found[0].span):
            why = "where in the row that is, is not known here"
            self.steps.append(Unread(span, stream.words(start, stream.at), why))
            return True
        sort = found[0].targets[0].kind
        if isinstance(before, Repeat) and before.times.kind is TimesKind.FILL and found[0].which is Which.LAST:
            self.steps[-1] = replace(before, breaks_off=True)  # "rep from * to end, working 2 sc in last ch"
        one_chain = found[0].which is not Which.NEXT or found[0].ordinals  # "3 sc in last ch", where the row ends
        crossed = sort is TargetKind.SPACE or sort is TargetKind.CHAIN and not one_chain  # "5 sc over the chain"
        middle = run and found[0].middle and found[0].of is not None  # "making a 5 dc inc in center st of 3 sc inc"
        of_many = found[0].which is Which.EACH or sort is TargetKind.CORNER or run and crossed or middle
        self.steps.append(alongside(item, span) if of_many else replace(item, span=span))
        return True

    def but_in_last(self, start: int) -> bool:
        """ "sc around, but work 2 sc in the last st": what the run before makes there instead of its one stitch."""
        stream, kept = self.stream, len(self.steps)
        last = self.steps[-1] if self.steps else None
        run = isinstance(last, Work) and bool(last.places) and last.places[-1].which is Which.EACH
        stream.take()
        stream.skip("make")
        told = run and (self.clause() if stream.kind() == "increase" else self.read_alongside(start))
        step = self.steps[-1] if told and len(self.steps) == kept + 1 else None
        if isinstance(step, Shaping) and step.where is ShapedWhere.ONE_END:
            return True  # "but inc in the last st"
        one = isinstance(step, Work) and [place.which for place in step.places] == [Which.LAST] and not step.together
        if not one or step.stitch == "dec" or step.places[0].number != ONE:
            del self.steps[kept:]
            stream.at = start
            return False
        return True

    def in_gaps_between(self, start: int) -> bool:
        """ "(Cl in next sp, ch 2) 12 times, working in each sp between dc": the spaces that the clause before goes into."""
        stream, at = self.stream, self.stream.at
        found = places(stream)
        gap = found[0] if len(found) == 1 and found[0].between and found[0].every == 1 else None
        said = stream.kind() in (*SIGNS, "end") and self.steps and gap is not None
        if gap is not None and stream.kind() in (*SIGNS, "end") and not self.has_work():
            self.reading.gap = gap  # "Working in sps between dc, ch 3, 2 dc in each sp around"
            self.steps.append(Remark(stream.span_from(start)))
            return True
        told = in_gaps(self.steps[-1], gap) if said else None
        if not told or told == self.steps[-1]:
            stream.at = at
            return False
        self.steps[-1:] = [told, Remark(stream.span_from(start))]
        return True

    def read_last_place(self, start: int) -> bool:
        """ "(working|with) (the) last dc in top of turning ch", "the first into the same place as the ss"."""
        stream = self.stream
        stream.skip("with", "the", "make")
        first = stream.kind() == "first"
        stream.take_if("last", "first")
        number = stream.amount() if not first and stream.kind() == "number" and stream.kind(1) == "stitch" else None
        named = stream.take_if("stitch", "any_stitch", "special")
        if named is None and not first and stream.word("one") and stream.kind(1) == "in":
            stream.take()  # "1 tr in every tr, the last one in the turning ch"
        while named is not None and stream.peek().lower in _GOES:
            stream.take()  # "the last dc comes in the top of the turning ch"
        if not first and stream.word("through", "thru") and stream.kind(1) != "last":
            stream.pass_to()  # "working last tss through both strands of the edge"
            self.steps.append(Remark(stream.span_from(start)))
            return True
        found = places(stream, allow_to=True)
        if not found or number is not None and not self.ends_in_so_many(number, named.value, found[0]):
            return False
        span = stream.span_from(start)
        if number is not None and named.value and isinstance(self.steps[-1], RowCall):
            self.steps.append(LastPlace(span, found, number, named.value))  # "Rep Row 6, working last 2 sc in last sc"
            return True
        if first and named is not None and named.kind == "stitch" and not self.has_work():
            self.steps.append(Work(span, named.value, places=found, perhaps=True))
            return True
        before = self.steps[-1] if self.steps else None
        if not first and isinstance(before, Repeat) and named is not None:
            self.steps[-1] = lastpass.last_into(before, named.value, found)
        counted = any(
            isinstance(step, Chain) and step.counting is not None and step.counting.counts for step in self.steps
        )
        if first and counted and found[0].which is Which.SAME:  # beside the chain that stands for a stitch there
            why = "whether that stitch is one more than the run makes is not said"
            self.steps.append(Unread(span, stream.words(start, stream.at), why))
            return True
        self.steps.append(Remark(span) if first else LastPlace(span, found))
        return True

    def ends_in_so_many(self, number: Amount, stitch: str, place: Place) -> bool:
        """Whether "working last 2 dc in turning ch" only says where the last of the work before goes: the two of a repeat's
        last pass, or of a run over stitches and spaces that ends in a chain which is both."""
        before = next((step for step in reversed(self.steps) if not isinstance(step, Remark)), None)
        if isinstance(before, RowCall):  # whether that row ends in so many, is seen where it is known
            return True
        if isinstance(before, Repeat):
            passes = before.items if before.last_pass is None else before.last_pass
            last = passes[-1] if passes else None
            return isinstance(last, Work) and (last.stitch, last.number) == (stitch, number)
        sorts = {target.kind for one in before.places for target in one.targets} if isinstance(before, Work) else set()
        whole = place.targets[0].kind in (TargetKind.TURNING_CHAIN, TargetKind.CHAIN) and not place.from_words
        each = TargetKind.SPACE in sorts and len(sorts) > 1 and before.stitch == stitch
        return each and whole and not place.ordinals and number.lone == 2


def in_gaps(step: Step, gap: Place) -> Step:
    """A step whose spaces without a name or length are the gaps between stitches."""
    if isinstance(step, Repeat):
        return replace(step, items=tuple(in_gaps(item, gap) for item in step.items))
    if not isinstance(step, (Work, Group)):
        return step
    return replace(
        step,
        places=tuple(
            replace(place, targets=gap.targets, between=True, from_words=gap.from_words)
            if place.targets == (Target(TargetKind.SPACE),)
            and place.of is None
            and place.which in (Which.NEXT, Which.EACH)
            else place
            for place in step.places
        ),
    )


def _says_in(stream: Stream, place: Span) -> bool:
    """Whether a place is one that stitches go "in": not "along the edge"."""
    before = [item for item in stream.lexemes if item.start <= place.start]
    return any(item.kind == "in" for item in before[-3:])


def _hook_or_strands(words: list[Lexeme], index: int) -> bool:
    """Whether a word names a hook or strands to work with: not "2nd ch from hook"."""
    hook = words[index].kind == "hook" and (index == 0 or words[index - 1].lower != "from")
    return hook or words[index].lower in _STRANDS


def _and_hook(words: list[Lexeme]) -> int:
    """How many words the hook takes in "and 3.5 mm hook", "and smaller hook" behind the side that faces; 0 for none."""
    hook = next((i for i in range(1, min(len(words), _HOOK_WORDS)) if _hook_or_strands(words, i)), 0)
    named = all(word.kind in ("word", "decimal", "number", "the", "size", *OPENERS, *CLOSERS) for word in words[1:hook])
    return hook + 1 if hook and words[0].kind == "and" and named else 0


def _yarn_to_make(words: list[Lexeme]) -> int:
    """How many words name a yarn before "make" and a chain or ring; 0 where they do not."""
    make = next((i for i, word in enumerate(words) if word.kind == "make"), 0)
    kinds = [word.kind for word in words[make + 1 :] if word.kind not in ("the", "of")]
    begins = kinds[:1] in (["chain"], ["ring"]) or kinds[:2] == ["number", "chain"]
    named = all(word.kind in ("word", "yarn", "color", "number", "the") for word in words[:make]) and make <= 4
    return make if begins and named and words[0].kind != "number" else 0
