"""Beginning and turning chains: is it said whether they count, is one worked at all, is it of one length; and joins to them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import groupby, pairwise

from lint.checks.context import Context
from lint.expression import expression
from lint.finding import Finding, Likely, Related
from lint.ledger import LedgerRow, Outcome
from lint.likely.numerals import numeral
from lint.place import TargetKind, Which
from lint.source import Span
from lint.tree import MAKES_STITCHES, Chain, Group, Join, JoinYarn, Repeat, RowCall, Step, Turn, Work, walk
from lint.working.goingon import last_chain

_MOST = 6  # chains: a longer one at a row's start is more than a turning chain
_FEWEST = 3  # rows of a stitch that begin alike, before one that does not is odd
_FEWEST_OF_ALL = 3


def check_unsaid(context: Context) -> Iterator[Finding]:
    """turning-chain-unsaid: one finding for each length of chain, at its first place."""
    places: dict[tuple[str, bool | None], list[tuple[Span, LedgerRow]]] = {}
    for row in context.ledger.rows:
        unsaid = row.first.unsaid_chain
        if unsaid is None or row.first.made is None:
            continue
        span, counted = unsaid
        length = _length(context, context.source.slice(span))
        if length == "1" and not counted:
            continue  # ch 1 before sc never counts: nobody needs telling
        places.setdefault((length, counted), []).append((span, row))
    for length in [length for length, counted in places if counted is None]:
        told = next((key for key in places if key[0] == length and key[1] is not None), None)
        if told is not None:  # another row's count tells what this one leaves open
            places[told] = sorted([*places[told], *places.pop((length, None))], key=lambda one: one[0].start)
    said = {(str(length), counts) for length, counts in _told_in_rows(context)}
    for (length, counted), found in places.items():
        if (length, counted) in said:
            continue  # "3 ch (count as first tr)" in another row, and it is as that says
        spans = list(dict.fromkeys(span for span, _ in found))
        row = found[0][1]
        agrees = any(other.first.outcome is Outcome.AGREES for _, other in found)
        verb = "counts." if counted else "does not count."
        reading = f" The counts come out if it {verb}" if agrees else f" It is read here as if it {verb}"
        reading = " The counts come out either way." if counted is None else reading
        related = tuple(Related(span, "here too") for span in spans[1:])
        yield context.finding(
            "turning-chain-unsaid", spans[0], row.part.name, row.label, length=length, reading=reading, related=related
        )


def _told_in_rows(context: Context) -> Iterator[tuple[int | None, bool]]:
    """Length, and whether they count, of the chains of which a row says so."""
    for row in context.ledger.rows:
        for step in walk(row.row.steps):
            if isinstance(step, Chain) and step.counting is not None:
                yield step.length.lone, step.counting.counts


def _length(context: Context, words: str) -> str:
    """How many chains the words name, in figures: "ch 3", "chain three", "dc in 4th ch from hook" (which skips three)."""
    spelled = {**context.book.words.numbers, **context.book.words.ordinals}
    numbers = [
        int(word) if word.isdigit() else spelled.get(word, -1)
        for word in expression(r"\d+|\p{L}+").findall(words.lower())
    ]
    number = next((number for number in numbers if number >= 0), None)
    if number is None:
        own = (one.items[0] for one in context.pattern.specials if one.items and one.name == words.lower())
        chain = next((step for step in own if isinstance(step, Chain)), None)  # the list's own word for it, "tch"
        return str(chain.length.lone) if chain is not None else ""
    return str(number - 1 if "hook" in words.lower() else number)


# how rows begin ------------------------------------------------------------------------------------------------------


def check_missing(context: Context) -> Iterator[Finding]:
    """turning-chain-missing: a row that starts straight with a stitch, after a turn, or where other rows of it have a chain."""
    for _, group in groupby(context.ledger.rows, key=lambda row: id(row.part)):
        rows = list(group)
        led_on = {
            id(below)
            for line, below in pairwise(rows[0].part.rows)
            if line.label is None and line.steps and isinstance(line.steps[-1], Chain)
        }  # rows behind a "Ch 1." in a line of its own
        begun = Counter(_begins(row, before) for before, row in zip(rows, rows[1:], strict=False))
        found: dict[Span, tuple[Work, LedgerRow]] = {}
        for before, row in zip(rows, rows[1:], strict=False):
            first = _first(row.row.steps)
            flat = row.kind == "row" and before.kind == "row" and row.row.label is not None
            if not flat or id(row.row) in led_on or _begins(row, before) != "stitch" or row.first.made is None:
                continue
            if isinstance(first, Work) and any(place.which is Which.FROM_HOOK for place in first.places):
                continue  # on a longer chain at the end of the row before
            turned = _turns(before, row)
            others = begun["chain"] >= _FEWEST and begun["chain"] > begun["stitch"]
            if not isinstance(first, Work) or not (turned or others and turned is None):
                continue
            if first.together and [place.span for place in first.places] == [first.span]:
                continue  # "ch 2, dc in next dc (counts as dc2tog)": the chain is a leg of it
            height = context.book.stitch(first.stitch.removeprefix("FP").removeprefix("BP"))
            if height is not None and height.height and first.special is None:
                found.setdefault(row.row.span, (first, row))
        if begun["chain"] >= len(found):
            for first, row in found.values():
                yield _missing(context, first, row, ())
        elif found:  # none of these rows has one: that is one question
            (first, row), *others = found.values()
            yield _missing(context, first, row, tuple(Related(other.span, "here too") for other, _ in others))


def _missing(context: Context, first: Work, row: LedgerRow, related: tuple[Related, ...]) -> Finding:
    stitch = context.stitch_word(first.stitch)
    name = "turning-chain-missing"
    return context.finding(name, first.span, row.part.name, row.label, stitch=stitch, related=related)


def _first(steps: tuple[Step, ...]) -> Step | None:
    """The chain, yarn or stitch that a row begins with."""
    first = next((s for s in walk(steps) if isinstance(s, (Chain, JoinYarn, *MAKES_STITCHES))), None)
    if isinstance(first, Repeat):
        first = next((s for s in walk(first.items) if isinstance(s, (Chain, Work))), None)
    return first


def _begins(row: LedgerRow, before: LedgerRow) -> str:
    """How a row begins: with a "chain", worked now or at the end of the row before, with a "stitch", or otherwise ("")."""
    first = _first(row.row.steps)
    if isinstance(first, Chain) or last_chain(before.row.steps) is not None:
        return "chain"
    if any(isinstance(step, RowCall) or _hangs(step) for step in walk(before.row.steps)):
        return ""  # the row called for may end with the chain; slip stitches up another piece stand for one
    return "stitch" if isinstance(first, Work) and first.stitch != "sl st" else ""


def _hangs(step: Step) -> bool:
    """ "sl st in next 2 sts of the leg"."""
    slips = isinstance(step, Work) and step.stitch == "sl st"
    return slips and any(place.which is Which.ELSEWHERE for place in step.places)


def _turns(before: LedgerRow, row: LedgerRow) -> bool | None:
    """Whether the work is turned between two rows; None where nothing is said."""
    ahead = row.row.steps[:2]
    said = [s.turned for s in (*before.row.steps, *ahead) if isinstance(s, Turn)]
    if not said:
        return None
    return any(isinstance(s, Turn) and s.turned for s in ahead) or any(
        isinstance(s, Turn) and s.turned for s in before.row.steps
    )


def check_lengths(context: Context) -> Iterator[Finding]:
    """turning-chain-inconsistent: rows of one stitch, or all rows of a piece, that begin with ch 1, and one with ch 2."""
    for _, group in groupby(context.ledger.rows, key=lambda row: id(row.part)):
        by_stitch: dict[tuple[str, str], dict[Span, tuple[Chain, LedgerRow]]] = {}
        of_all: dict[str, dict[Span, tuple[Chain, LedgerRow]]] = {}
        for row in group:
            chain, stitches = _opening(row.row.steps)
            if chain is None or not stitches or row.row.label is None or row.number == 1:
                continue
            of_all.setdefault(row.kind, {})[chain.span] = (chain, row)
            if len(stitches) == 1:
                by_stitch.setdefault((row.kind, *stitches), {})[chain.span] = (chain, row)
        told = [one for places in by_stitch.values() for one in _odd_one(context, list(places.values()), _FEWEST)]
        yield from told
        for places in of_all.values() if not told else ():
            yield from _odd_one(context, list(places.values()), _FEWEST_OF_ALL)


def _opening(steps: tuple[Step, ...]) -> tuple[Chain | None, frozenset[str]]:
    """A short chain that opens a row of plain stitches, or is worked at its end before the turn, and those stitches."""
    kinds = frozenset(s.stitch for s in walk(steps) if isinstance(s, Work)) - {"sl st", "inc", "dec"}
    chains = [s for s in walk(steps) if isinstance(s, Chain)]
    if len(chains) != 1 or any(isinstance(s, JoinYarn) for s in walk(steps)):
        return None, frozenset()
    length = chains[0].length.lone
    if length is None or length > _MOST or chains[0] is not _first(steps) and chains[0] is not last_chain(steps):
        return None, frozenset()
    return chains[0], kinds


def _in_squares(places: list[tuple[Chain, LedgerRow]]) -> set[int | None]:
    """The lengths of the chains in the squares that rows work, which a row's own chain may take in."""
    worked = (step for _, row in places for step in walk(row.row.steps) if isinstance(step, Work))
    items = (item for step in worked if step.special is not None for item in step.special.items)
    return {item.length.lone for item in items if isinstance(item, Chain)}


def _odd_one(context: Context, places: list[tuple[Chain, LedgerRow]], fewest: int) -> Iterator[Finding]:
    """The one chain of another length than all others, unless its row has a stitch that theirs have not."""
    lengths = Counter(chain.length.lone for chain, _ in places)
    if len(lengths) != 2:
        return
    (usual, often), (_, odd) = lengths.most_common(2)
    if odd != 1 or often < fewest:
        return
    chain, row = next((chain, row) for chain, row in places if chain.length.lone != usual)
    if chain.counting is not None:
        return  # said on purpose
    others = {stitch for one, other in places if one is not chain for stitch in _opening(other.row.steps)[1]}
    if not _opening(row.row.steps)[1] <= others or abs(usual - chain.length.lone) in _in_squares(places):
        return  # in filet, "ch 5" begins a row that opens with a space, and "ch 3" one that opens with a block
    at = numeral(context.source.text, chain.span, chain.length, 0)
    likely = (Likely(f"ch {usual} instead of ch {chain.length.lone}", "the rows then begin alike", at, str(usual)),)
    yield context.finding(
        "turning-chain-inconsistent",
        chain.span,
        row.part.name,
        row.label,
        usual=usual,
        length=chain.length.lone,
        likely=likely if at is not None else (),
        related=tuple(Related(other.span, f"ch {usual} here") for other, _ in places if other is not chain)[:3],
    )


# joins ---------------------------------------------------------------------------------------------------------------


def check_joins(context: Context) -> Iterator[Finding]:
    """place-not-there: a round joined in the top of a chain, or in a first stitch, that it does not have."""
    reported: set[Span] = set()
    for row in context.ledger.rows:
        join = next((s for s in row.row.steps if isinstance(s, Join) and s.places), None)
        made = row.first.made
        if join is None or made is None or row.kind != "round" or row.row.span in reported:
            continue
        place = join.places[0]
        target = place.targets[0]
        chain = _first(row.row.steps)
        has = None
        if target.kind in (TargetKind.TURNING_CHAIN, TargetKind.CHAIN) and target.length is not None:
            lengths = {s.length.lone for s in walk(row.row.steps) if isinstance(s, Chain)}
            works = [one for s in walk(row.row.steps) if isinstance(s, (Work, Group)) for one in s.places]
            lengths |= {one.ordinals[0] - 1 for one in works if one.which is Which.FROM_HOOK and one.ordinals}
            if isinstance(chain, Chain) and target.length.lone not in lengths:
                has = f"it begins with ch {chain.length.lone}"
        elif target.kind is TargetKind.STITCH and place.which is Which.FIRST and target.name is not None:
            kinds = [kind for kind in made.by_kind if kind]
            if len(kinds) == 1 and kinds[0] in _PLAIN and target.name in _PLAIN and target.name != kinds[0]:
                has = f"it is made of {context.stitch_word(kinds[0])}"
        if has is not None:
            reported.add(row.row.span)
            words = " ".join(context.source.slice(place.span).split())
            yield context.finding("join-not-there", place.span, row.part.name, row.label, words=words, has=has)


_PLAIN = ("sc", "hdc", "dc", "tr", "dtr")
