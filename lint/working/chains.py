"""What a beginning or turning chain stands for: said in the row, said in the notes, or inferred and tried."""

from __future__ import annotations

from dataclasses import dataclass, field

from lint.pattern import Pattern
from lint.source import Span
from lint.tree import Chain, Counting, Repeat, Step, Work
from lint.working.choices import Choices

COUNTS, DOES_NOT = 0, 1


@dataclass(frozen=True, slots=True)
class JoinHint:
    """What the round's own join shows of its beginning chain: into it, it counts; into the first stitch, it does not.

    `top`: the chain joined into, where it is told ("in 3rd ch of ch-5"): those beyond it are a space.
    """

    counts: bool
    top: int | None = None


@dataclass(frozen=True, slots=True)
class Standing:
    """What a chain stands for: a stitch of a kind (None: nothing), and a space of so many chains beside it."""

    stitch: str | None
    space: int = 0
    said: bool = True


@dataclass
class ChainRules:
    """What the notes, and rows so far ("here and throughout"), say of beginning chains by their length."""

    by_length: dict[int, Counting] = field(default_factory=dict)
    any_length: Counting | None = None
    here: dict[int | None, Counting] = field(default_factory=dict)  # said of the piece at hand alone; None: any length
    said_before: set[int] = field(default_factory=set)  # lengths that some row, for itself, said to count
    said_not: set[int] = field(default_factory=set)  # and those that some row said not to
    heights: dict[str, int] = field(default_factory=dict)
    never_count: frozenset[str] = frozenset()  # stitches whose turning chain never stands for one
    spaces: dict[int, int] = field(default_factory=dict)  # by their length, the stitches that chain spaces count as

    @classmethod
    def of(cls, pattern: Pattern, heights: dict[str, int], never_count: frozenset[str]) -> ChainRules:
        """The rules of a pattern by its notes; what is said of single pieces is put in when they are begun."""
        said = {length: counting for length, counting in pattern.countings if not counting.pieces}
        by_length = {length: counting for length, counting in said.items() if length is not None}
        spaces = dict(pattern.spaces_counted)
        return cls(by_length, said.get(None), heights=heights, never_count=never_count, spaces=spaces)

    def said_of(self, length: int) -> Counting | None:
        by_length = self.here.get(length) or self.by_length.get(length)
        return by_length or self.here.get(None) or self.any_length

    def take_note(self, length: int, counting: Counting) -> None:
        """Keeps what one row says of its beginning chain, for it alone or "here and throughout"."""
        if counting.throughout:
            self.by_length[length] = counting
        elif counting.counts:
            self.said_before.add(length)
        else:
            self.said_not.add(length)

    def take_notes(self, steps: tuple[Step, ...], size: int) -> None:
        """Keeps what is said of chains in a row that is not worked: the rows behind it go by that as well."""
        for step in steps:
            length = step.length.at(size) if isinstance(step, Chain) and step.counting is not None else None
            if length is not None:
                self.take_note(length, step.counting)

    def height(self, stitch: str) -> int:
        return self.heights.get(stitch, 3)


def standing(
    length: int,
    note: Counting | None,
    stitch: str,
    rules: ChainRules,
    choices: Choices,
    hint: JoinHint | None,
    span: Span,
) -> Standing:
    """What a chain of `length` at the start of a row of `stitch` stands for."""
    height = rules.height(stitch)
    said = note or rules.said_of(length)
    if said is not None and note is None and _too_short_for(said, length, stitch, rules):
        said = None
    if said is not None:
        if not said.counts:
            return Standing(None)
        named = stitch if said.stitch in (None, "stitch") else said.stitch
        space = said.space or 0
        if note is None and said.space is None and rules.by_length.get(length) is None and length > rules.height(named):
            space = length - rules.height(named)  # a note for all chains, and this one is longer than the stitch
        elif said.space is None and said.stitch in (None, "stitch") and _joined_below(hint, length, height):
            space = length - height  # "(45 hdc counting beg ch)", and the round is joined in the 2nd of its 3 chains
        return Standing(named, space)
    top = hint.top if hint is not None and hint.top is not None and hint.top <= length else height
    space = max(0, length - top) if height >= 2 else 0
    counts = hint.counts if hint is not None else None
    if counts is None and length > height >= 2:
        shorter = rules.said_of(height)
        if shorter is not None and shorter.counts:
            counts = True  # ch 3 counts as dc is said; ch 5 is that and a ch-2 space
    if counts and length in rules.said_before:
        return Standing(stitch, space, said=False)
    tall = stitch not in rules.never_count and height >= 2 and length >= height
    default = COUNTS if counts or counts is None and tall and length not in rules.said_not else DOES_NOT
    if counts is not None:
        choices.hinted.add(("chain counts", length, stitch))
    taken = choices.pick(("chain counts", length, stitch), 2, default)
    return Standing(None, said=False) if taken == DOES_NOT else Standing(stitch, space, said=False)


def _joined_below(hint: JoinHint | None, length: int, height: int) -> bool:
    """Whether the row's end is joined where a chain is as high as its stitch, and the chain goes on beyond that."""
    return hint is not None and hint.top is not None and hint.top == height < length


def _too_short_for(said: Counting, length: int, stitch: str, rules: ChainRules) -> bool:
    """Whether a note for all chains names a stitch that this row has not and this chain is too low to stand for."""
    of_all = rules.by_length.get(length) is not said and rules.here.get(length) is not said
    other = said.counts and said.stitch not in (None, "stitch", stitch)
    return of_all and other and length < rules.height(said.stitch)


def skipped_standing(
    skipped: int,
    note: Counting | None,
    stitch: str,
    rules: ChainRules,
    choices: Choices,
    alone: bool = False,
    several: bool = False,
) -> Standing:
    """What the chains skipped by "nth ch from hook" stand for.

    `alone`: the place is the chain's last, as where a circle begins; `several`: several stitches go into it.
    """
    height = rules.height(stitch)
    said = note or rules.by_length.get(skipped)
    if said is None and rules.any_length is not None and rules.any_length.counts and 2 <= height <= skipped:
        said = rules.any_length  # "Turning chains count as a stitch": these do as well
    if said is not None:
        if not said.counts:
            return Standing(None)
        return Standing(stitch if said.stitch in (None, "stitch") else said.stitch, said.space or 0)
    if skipped < 2:
        return Standing(None)  # one chain skipped is never a stitch unless the text says so
    tall = stitch not in rules.never_count and height >= 2 and skipped >= height
    never = rules.any_length is not None and not rules.any_length.counts  # "Turning chains do not count as a stitch"
    default = COUNTS if tall and not never else DOES_NOT
    taken = choices.pick(("skipped chains count", skipped, stitch), 2, default)
    if taken == DOES_NOT:
        return Standing(None, said=never)
    beyond = skipped - height
    if alone:
        return Standing(stitch, max(0, beyond), said=False)
    # half of the chains beyond the stitch's height are its space, the other half the foundation passed below it
    return Standing(stitch, beyond // 2 if beyond >= 2 and not several else 0, said=False)


def chain_before(last: Work, steps: list[Step]) -> Chain | None:
    """The "ch 3" of "…, ch 3, dc in last sc", or of a repeat whose last pass is cut short by that stitch."""
    before = steps[steps.index(last) - 1] if last in steps[1:] else None
    if isinstance(before, Repeat):
        items = before.items if before.last_pass is None else before.last_pass
        alike = [at for at, item in enumerate(items) if isinstance(item, Work) and item.stitch == last.stitch]
        cut = alike[-1] if before.breaks_off and before.last_pass is None and alike else len(items)
        before = items[cut - 1] if cut else None
    return before if isinstance(before, Chain) else None
