"""Reads loops that are drawn up and kept on the hook: Tunisian rows, their return pass, and decreases told by hand."""

from __future__ import annotations

from dataclasses import replace

from lint.amount import ONE
from lint.lexicon import Lexeme
from lint.pattern import Stated
from lint.place import Place, TargetKind, Which
from lint.reading.clauses.hand import HandClauses
from lint.reading.places.places import places
from lint.reading.places.targets import ANY, how_many, target
from lint.reading.words.needleloops import on_a_needle
from lint.reading.words.stream import CLOSERS, OPENERS, SIGNS, Stream
from lint.tree import OpenWork, Remark, Step, Work, walk

TUNISIAN = ("tss", "tks", "tps", "tfs")
_DRAWS = ("draw", "pull", "pick")
_YARN_OVER = ("yo", "yoh", "yrh", "yarn over")


def bars_as_stitches(stream: Stream) -> Stream:
    """Where loops are kept on the hook, "bar" alone is a vertical bar, and so a stitch; elsewhere it may be a loop of chains.

    So is a yarn over of the row before, where a place is told: "in each st and each yo", "in next yo sp".
    """
    kept = stream.vocabulary.loops_kept or any(
        item.kind in ("return_pass", "forward_pass") or item.kind == "stitch" and item.value in TUNISIAN
        for item in stream.lexemes
    )
    if not kept or not any(item.lower in ("bar", "bars", *_YARN_OVER) for item in stream.lexemes):
        return stream
    named: list[Lexeme] = []
    for item in stream.lexemes:
        bar = item.kind == "word" and item.lower in ("bar", "bars")
        space = item.kind == "space" and named and named[-1].lower in _YARN_OVER and named[-1].kind == "any_stitch"
        if space:
            named[-1] = replace(named[-1], text=f"{named[-1].text} {item.text}", end=item.end)
        else:
            named.append(replace(item, kind="any_stitch") if bar or _yarn_over_below(item, named) else item)
    return Stream(named, stream.vocabulary)


def _yarn_over_below(item: Lexeme, before: list[Lexeme]) -> bool:
    """Whether a yarn over is one of the row before: "in each yo", "in each st and yo"."""
    kinds = [one.kind for one in before[-3:]]
    told = kinds[-1:] in (["each"], ["next"], ["in"], ["first"], ["last"], ["same"])
    return item.lower in _YARN_OVER and (told or kinds == ["each", "any_stitch", "and"])


class TunisianClauses(HandClauses):
    """ "Insert hook in next ch, yo, pull up a loop", "return pass", "draw up a loop in each of next 2 sts, yo, draw through all"."""

    def keeps_loops(self) -> bool:
        """Whether the row's words show that loops are kept on the hook."""
        if not self.loops_kept:
            self.loops_kept = self.stream.vocabulary.loops_kept or on_a_needle(self.stream)
            self.loops_kept = self.loops_kept or any(
                item.kind in ("return_pass", "forward_pass")
                or item.kind == "stitch"
                and item.value in TUNISIAN
                or item.kind == "any_stitch"
                and ("hook" in item.lower or "bar" in item.lower)
                and not any("through" in one.lower for one in self.stream.lexemes[max(at - 4, 0) : at])
                for at, item in enumerate(self.stream.lexemes)  # "through all 3 loops on hook" keeps none
            )
        return self.loops_kept

    def read_loop_drawn(self, start: int) -> bool:
        """ "pull up a loop in each ch across", "draw up a loop in next 2 sts, yo and draw through all 3 loops on hook"."""
        stream = self.stream
        found = _drawn_up(stream)
        if found is None:
            stream.at = start
            return False
        before = stream.at
        legs = [found]
        while stream.kind() in (",", "and", ";", "."):
            mark = stream.at
            stream.skip(",", "and", ";", ".", "then")
            if stream.kind() == "skip" and (passed := _passed_between(stream)) is not None:
                legs += [passed] if passed else []
                continue
            more = _drawn_up(stream)
            if more is None:
                stream.at = mark
                break
            legs.append(more)
        step = _closed(stream, legs, start)
        if step is None and self.keeps_loops():
            stream.at = before
            stitch = "tss" if all(place.targets[0].kind is not TargetKind.RING for place in found) else "sc"
            step = Work(stream.span_from(start), stitch, places=found)
        if step is None:
            stream.at = start
            return False
        self.steps.append(step)
        return True

    def repeat_drawn(self, start: int) -> bool:
        """ "Repeat in each ch across, leaving all loops on hook": one more place for the loop drawn up before."""
        stream = self.stream
        last = self.steps[-1] if self.steps else None
        if not (isinstance(last, Work) and last.stitch in TUNISIAN and stream.kind(1) == "in"):
            return False
        stream.take()
        found = places(stream)
        if not found:
            stream.at = start
            return False
        self.steps[-1] = replace(last, places=(*last.places, *found))
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def drawn_alike(self, start: int) -> bool:
        """ "…, draw up a loop; do the same in every ch to the end": more places for that loop."""
        stream = self.stream
        stream.take()
        if not stream.take_if("the") or not stream.take_if("same") or stream.kind() != "in":
            stream.at = start
            return False
        last = next((at for at in range(len(self.steps) - 1, -1, -1) if not isinstance(self.steps[at], Remark)), None)
        work = self.steps[last] if last is not None else None
        found = places(stream) if isinstance(work, Work) and work.stitch in TUNISIAN else ()
        if not found:
            stream.at = start
            return False
        self.steps[last] = replace(work, places=(*work.places, *found))
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def loop_is_first(self, start: int) -> bool:
        """ "The loop on your hook is the first stitch(, so …)": of each row that is begun with that loop."""
        stream = self.stream
        end = stream.next_of(",", ";", ".", *OPENERS, start=start + 1)
        words = [item.lower for item in stream.lexemes[start:end]]
        kinds = [item.kind for item in stream.lexemes[start:end]]
        hooked = len(words) > 1 and words[1] in ("loop", "lp") and any("hook" in word for word in words)
        told = any(word in ("is", "counts", "makes", "forms", "stands") for word in words)
        if not (hooked and told and "first" in kinds and kinds[-1] in ("any_stitch", "stitch")):
            return False
        stream.at = end
        if stream.kind() == "," and stream.word("so", ahead=1):
            stream.at += 2
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def read_keeping_loops(self, start: int) -> bool:
        """ "leaving all loops on hook", "keeping loops on hook"."""
        stream = self.stream
        end = stream.next_of(",", ";", ".", *OPENERS, start=start + 1)
        words = [item.lower for item in stream.lexemes[start + 1 : end]]
        kept = any("l" == word[:1] for word in words) or words[:1] in (["it"], ["them"])  # "and leave it on the hook"
        if not (any("hook" in word for word in words) and kept):
            return False
        stream.at = end
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def read_return_pass(self, start: int) -> bool:
        """ "Return.", "return pass: yo, draw through 1 loop, *yo, draw through 2 loops; rep from * to end": works nothing."""
        stream = self.stream
        word = stream.take()
        if word.lower == "return" and stream.kind() not in (",", ";", ".", "end", ":", "dash", "(", ")"):
            return False
        explained = stream.kind() in (":", "dash") or stream.kind() == "movement"
        stream.pass_to(",", ";", ".", "(", "[", ":", "dash")
        if explained:
            self._pass_movements()
        self.steps.append(_worked_off(stream, start))
        return True

    def read_movements(self, start: int) -> bool:
        """ "Yo, pull through 1 loop, *yo, pull through 2 loops; rep from * to end": a return pass that is not named."""
        stream = self.stream
        if self.eyelet(start):
            return True
        if start or self.steps or not self.top:
            return False
        self._pass_movements()
        words = stream.lexemes[start : stream.at]
        if not (stream.done or stream.kind() in OPENERS) or not any(
            "loop" in item.lower or item.lower in ("lp", "lps") for item in words
        ):
            return False
        self.steps.append(_worked_off(stream, start))
        return True

    def eyelet(self, start: int) -> bool:
        """ "Tss2tog, yo": between Tunisian stitches, a yarn over alone is a loop kept on the hook, and stands on no stitch."""
        stream = self.stream
        alone = stream.kind(-1) in (",", ";", "star", "end", *OPENERS) and stream.word(*_YARN_OVER)
        if not alone or not self.keeps_loops():
            return False
        ahead = 1
        while stream.kind(ahead) in (",", ";", "and", "."):
            ahead += 1
        then = stream.peek(ahead)
        if ahead == 1 and then.kind not in ("star", "end", *OPENERS, *CLOSERS):
            return False
        if then.kind == "movement" and then.lower not in _YARN_OVER or then.lower in _DRAWS or "insert" in then.lower:
            return False  # "yo, pull through 2 loops": the hand's way of working a stitch
        stream.take()
        self.steps.append(Work(stream.span_from(start), "ftss"))
        return True

    def read_edge_stitch(self, start: int) -> bool:
        """ "tss to last st, edge st": the last one, however its loop is drawn up."""
        stream = self.stream
        stream.take()
        if not self.keeps_loops():
            return False
        span = stream.span_from(start)
        self.steps.append(Work(span, "tss", places=(Place(span, Which.NEXT, (ANY,)),)))
        return True

    def read_end_stitch(self, start: int) -> bool:
        """ "tss across, end st": the edge stitch, where it is a clause by itself."""
        stream = self.stream
        if stream.kind(1) != "any_stitch" or stream.kind(2) not in (*SIGNS, *OPENERS, "end", "dash", "return_pass"):
            return False
        stream.take()
        return self.read_edge_stitch(start)

    def read_forward_pass(self, start: int) -> bool:
        """ "Forward pass: tss in each st", "FP: tss …": what follows is the row."""
        stream = self.stream
        signed = stream.take().lower.endswith(":")
        if not signed and stream.kind() not in (":", "dash", ",", "."):
            return False
        self.steps.append(Remark(stream.span_from(start)))
        return True

    def _pass_movements(self) -> None:
        """Passes what tells how loops are worked off, to the row's end or its count."""
        stream = self.stream
        while not stream.done:
            item = stream.peek()
            if item.kind in OPENERS:
                close = stream.matching(stream.at)
                inside = stream.lexemes[stream.at : close] if close is not None else []
                if not any(one.kind == "movement" for one in inside):
                    return  # its count
                stream.at = close + 1
                continue
            works = item.kind in ("stitch", "special", "one_stitch", "increase", "decrease", "skip")
            works = works or item.kind == "in" and stream.kind(1) != "hook"
            if (
                works
                or item.kind == "number"
                and stream.kind(1) in ("stitch", "any_stitch")
                and "loop" not in stream.peek(1).lower
            ):
                return
            stream.take()


def _worked_off(stream: Stream, start: int) -> Step:
    """A return pass: it works nothing, unless it makes the row another one than was drawn up."""
    span = stream.span_from(start)
    if _closes_several(stream.lexemes[start : stream.at]):
        return OpenWork(span, stream.words(start, stream.at))
    return Remark(span, returns=True)


def _closes_several(words: list[Lexeme]) -> bool:
    """Whether a return pass draws through more loops than one stitch's, or chains between them: the row is no longer as wide."""
    starred = next((at for at, item in enumerate(words) if item.kind in ("star", *OPENERS)), len(words))
    for at, item in enumerate(words):
        ahead = words[at + 1 : at + 5]
        if "through" in item.lower:
            drawn = [one for one in ahead if one.kind == "number"][:1]
            if drawn and drawn[0].number > 2 or not drawn and any(one.kind == "all" for one in ahead):
                return True
        length = next((one.number for one in (words[at - 1 : at] + ahead[:1]) if one.kind == "number"), 1)
        if item.kind == "chain" and (at > starred or length > 1):
            return True
    return False


def loops_as_stitches(steps: list[Step], stated: Stated | None) -> Stated | None:
    """The printed count of a row; the loops of a Tunisian row are its stitches, not chain spaces."""
    tunisian = any(isinstance(step, Work) and step.stitch in TUNISIAN for step in walk(tuple(steps)))
    if stated is None or not tunisian:
        return stated
    loops = ("loop", "loops", "lp", "lps")
    items = (replace(i, unit="stitches") if i.unit == "space" and i.words.lower() in loops else i for i in stated.items)
    return replace(stated, items=tuple(items))


def _drawn_up(stream: Stream) -> tuple[Place, ...] | None:
    """Takes "pull up a loop in next st", "insert hook in next ch, yo and draw up a loop": where the loop is drawn up."""
    start = stream.at
    if stream.kind() == "in" and "insert" in stream.peek().lower:
        found = places(stream)
        if found:
            stream.skip(",", "and", ";")
            stream.take_if("movement")
            stream.skip(",", "and", ";")
            if _draws_loop(stream):
                return found
    elif _draws_loop(stream) and stream.kind() in ("in", "under", "around", "from"):
        found = _from_hook(places(stream))
        if found:
            return found
    stream.at = start
    return None


def _passed_between(stream: Stream) -> tuple[Place, ...] | None:
    """Takes the "skip next sc" between two loops: what it passes over, which the stitch stands on as well; () of a space."""
    start = stream.at
    stream.take()
    found = places(stream) or places(stream, bare=True)
    if not found and stream.kind() in ("number", "chain", "any_stitch", "stitch", "space"):
        number = how_many(stream) or ONE
        found = (Place(stream.span_from(start), Which.NEXT, (target(stream) or ANY,), number),)
    next_ones = all(place.which is Which.NEXT and place.limit is None and place.of is None for place in found)
    if not found or not next_ones or stream.kind() not in (",", ";", ".", "and"):
        stream.at = start
        return None
    passed = [place for place in found if place.targets[0].kind not in (TargetKind.SPACE, TargetKind.CHAIN)]
    return tuple(passed)


def _from_hook(found: tuple[Place, ...]) -> tuple[Place, ...]:
    """The places; "in 2nd ch" is the second from the hook."""
    first = found[0] if found else None
    if first is None or first.which is not Which.NTH or first.targets[0].kind is not TargetKind.CHAIN or first.of:
        return found
    return (replace(first, which=Which.FROM_HOOK), *found[1:])


def _draws_loop(stream: Stream) -> bool:
    start = stream.at
    if stream.word(*_DRAWS):
        stream.take()
        if stream.word("up"):
            stream.take()
            stream.skip("the")
            stream.at += stream.word("long", "large", "tall")
            stream.take_if("number") if stream.word("1", "one") else None
            if stream.word("loop", "lp", "loops", "lps"):
                stream.take()
                return True
        elif stream.kind() == "the" and stream.word("loop", "lp", ahead=1) and stream.word("through", ahead=2):
            stream.at += 3  # "yrh, draw a loop through"
            return stream.kind() in (*SIGNS, "and", "end")
    stream.at = start
    return False


def _closed(stream: Stream, legs: list[tuple[Place, ...]], start: int) -> Work | None:
    """The decrease that loops make once the yarn is drawn through all of them; None where it is not."""
    before = stream.at
    stream.skip(",", "and", ";", "then")
    if stream.kind() != "movement":
        stream.at = before
        return None
    end = stream.sentence_end(stream.at, ".", ";", *OPENERS)
    words = stream.lexemes[stream.at : end]
    through = any("through" in item.lower for item in words)
    all_loops = any(item.kind == "all" or item.lower in ("all", "3", "three", "4", "four") for item in words)
    single = [place for leg in legs for place in leg]
    named = all((place.which in (Which.NEXT, Which.SAME) or place.below) and place.number.lone for place in single)
    number = sum(place.number.lone or 0 for place in single)
    both = any(item.kind in ("all", "both_loops") or item.lower in ("both", "2", "two") for item in words)
    plain = number == 1 and len(single) == 1 and stream.kind(start - stream.at - 1) not in (":", "dash")
    if plain and through and both and not stream.vocabulary.loops_kept:
        while "through" not in stream.peek().lower:
            stream.take()
        stream.pass_to(",", *OPENERS)  # a single crochet written out
        return Work(stream.span_from(start), "sc", places=tuple(single))
    if not through or not all_loops or not named or number < 2:
        stream.at = before
        return None
    while not stream.done and stream.at < end and stream.kind() != ",":
        stream.take()
    while stream.kind() == "," and stream.kind(1) == "movement":
        stream.take()
        stream.pass_to(",", ".", ";")
    span = stream.span_from(start)
    sorts = {place.targets for place in single}
    if len(sorts - {(ANY,)}) < 2 and all(place.which is Which.NEXT and place.of is None for place in single):
        over = Place(
            span,
            Which.NEXT,
            sorts.pop() if len(sorts) == 1 else (ANY,),
            replace(single[0].number, values=(number,)),
            shared=True,
        )
        return Work(span, "sc", places=(over,), together=number)
    apart = tuple(replace(place, shared=place.which is Which.SAME) for place in single)  # one leg here, one there
    return Work(span, "sc", places=apart, together=number)
