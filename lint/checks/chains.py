"""Beginning and turning chains: is it said whether they count, and is one worked at all."""

from __future__ import annotations

from collections.abc import Iterator

import regex

from lint.checks.context import Context
from lint.finding import Finding, Related
from lint.ledger import LedgerRow, Outcome
from lint.source import Span
from lint.tree import MAKES_STITCHES, Chain, JoinYarn, Repeat, Step, Turn, Work, walk


def check_unsaid(context: Context) -> Iterator[Finding]:
    """turning-chain-unsaid: one finding for each length of chain, at its first place."""
    places: dict[tuple[str, bool | None], list[tuple[Span, LedgerRow]]] = {}
    for row in context.ledger.rows:
        unsaid = row.first.unsaid_chain
        if unsaid is None or row.first.made is None:
            continue
        span, counted = unsaid
        length = _length(context.source.slice(span), context.book.words.ordinals)
        if length == "1" and not counted:
            continue  # ch 1 before sc never counts: nobody needs telling
        places.setdefault((length, counted), []).append((span, row))
    for length in [length for length, counted in places if counted is None]:
        told = next((key for key in places if key[0] == length and key[1] is not None), None)
        if told is not None:  # another row's count tells what this one leaves open
            places[told] = sorted([*places[told], *places.pop((length, None))], key=lambda one: one[0].start)
    for (length, counted), found in places.items():
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


def _length(words: str, ordinals: dict[str, int]) -> str:
    match = regex.search(r"\d+", words)
    named = next((ordinals[word] for word in regex.findall(r"[a-z]+", words.lower()) if word in ordinals), None)
    if match is None and named is not None:
        return str(named - 1)  # "in fourth ch from hook"
    if match and "hook" in words.lower():  # "dc in 4th ch from hook" skips three
        return str(int(match.group(0)) - 1)
    return match.group(0) if match else ""


def _behind_the_work(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """What a row says after its last stitches: "…, ch 1, turn"."""
    last = max((index for index, step in enumerate(steps) if isinstance(step, MAKES_STITCHES)), default=-1)
    return steps[last + 1 :]


def check_missing(context: Context) -> Iterator[Finding]:
    """turning-chain-missing: a row that starts straight with a stitch after a turn."""
    before: LedgerRow | None = None
    reported: set[Span] = set()
    for row in context.ledger.rows:
        if (
            row.kind == "row"
            and before is not None
            and before.part is row.part
            and before.kind == "row"
            and row.row.label is not None
        ):
            first = next((s for s in walk(row.row.steps) if isinstance(s, (Chain, JoinYarn, *MAKES_STITCHES))), None)
            turned = any(isinstance(s, Turn) and s.turned for s in before.row.steps) or any(
                isinstance(s, Turn) and s.turned for s in row.row.steps[:2]
            )
            carried = any(isinstance(s, Chain) for s in _behind_the_work(before.row.steps))
            if isinstance(first, Repeat):
                first = next((s for s in walk(first.items) if isinstance(s, (Chain, Work))), None)
            if (
                isinstance(first, Work)
                and first.stitch != "sl st"
                and turned
                and not carried
                and row.first.made is not None
                and row.row.span not in reported
            ):
                height = context.book.stitch(first.stitch.removeprefix("FP").removeprefix("BP"))
                if height is not None and height.height and first.special is None:
                    reported.add(row.row.span)
                    yield context.finding(
                        "turning-chain-missing",
                        first.span,
                        row.part.name,
                        row.label,
                        stitch=context.stitch_word(first.stitch),
                    )
        before = row
