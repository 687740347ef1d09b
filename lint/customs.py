"""What patterns show of the demands that no restyling mends: where counts stand, what brackets mean, units, orders, sections."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from lint.house.model import House
from lint.inspection import Report
from lint.reading.facts.measures import read_lengths, read_pairs
from lint.restyle.habits import Habit
from lint.restyling import ground_of
from lint.tree import Chain, Group, Repeat, walk

_BRACKETS = {"(": "( )", "[": "[ ]", "{": "{ }"}
_MARKS = ("*", "**", "†", "‡", "#", "•", "+")
_MOST = 0.9  # of the places that show a custom, for it to be one
_FEW = 0.1
_ENTRIES = 4  # a list of fewer shows no order


def customs(reports: Sequence[Report]) -> list[Habit]:
    """Every demand of a house file that the patterns keep, with how many places do not."""
    found = [*_counts_required(reports), *_note_place(reports), *_brackets(reports)]
    return [*found, *_unit_first(reports), *_list_order(reports), *_sections(reports)]


def _counts_required(reports: Sequence[Report]) -> Iterator[Habit]:
    """Whether every row prints its count, or those that change it, or none."""
    changing, staying = Counter(), Counter()
    for report in reports:
        before, part, seen = None, None, set()
        for row in report.ledger.rows:
            made = row.cells[0].made if row.row.label is not None and row.cells else None
            if row.part is not part:
                before, part = None, row.part
            if made is None or id(row.row) in seen:
                continue
            seen.add(id(row.row))
            now = (made.stitches, dict(made.spaces))
            (changing if now != before else staying)[row.row.stated is not None] += 1
            before = now
    if not changing.total():
        return
    share = changing[True] / changing.total()
    if share >= _MOST and staying.total() and staying[True] / staying.total() >= _MOST:
        yield Habit("counts.required", "every row", changing[False] + staying[False])
    elif share >= _MOST:
        yield Habit("counts.required", "where it changes", changing[False])
    elif share <= _FEW:
        yield Habit("counts.required", "nowhere", changing[True])


def _note_place(reports: Sequence[Report]) -> Iterator[Habit]:
    """Whether chains are said to count beside them, or in notes."""
    beside = sum(
        isinstance(step, Chain) and step.counting is not None
        for report in reports
        for part in report.pattern.parts
        for row in part.rows
        for step in walk(row.steps)
    )
    noted = sum(len(report.pattern.countings) for report in reports)
    if beside and not noted:
        yield Habit("turning_chain.place", "beside the chain")
    elif noted and not beside:
        yield Habit("turning_chain.place", "in a note")


def _brackets(reports: Sequence[Report]) -> Iterator[Habit]:
    """What each kind of brackets holds, and the marks of repeats."""
    found: dict[str, Counter[str]] = {
        "repeats": Counter(),
        "groups": Counter(),
        "counts": Counter(),
        "marks": Counter(),
    }
    for report in reports:
        text = report.source.text
        for part in report.pattern.parts:
            for row in part.rows:
                for step in walk(row.steps):
                    if isinstance(step, (Repeat, Group)):
                        kind = "repeats" if isinstance(step, Repeat) else "groups"
                        found[kind][_BRACKETS.get(text[step.span.start], "")] += 1
                if row.stated is not None:
                    found["counts"][_BRACKETS.get(text[: row.stated.span.start].rstrip()[-1:], "")] += 1
        for row in ground_of(report, House()).rows:
            found["marks"].update(lexeme.text for lexeme in row.lexemes if lexeme.kind == "star")
    for kind, signs in found.items():
        known = {
            sign: number
            for sign, number in signs.items()
            if sign in (_MARKS if kind == "marks" else _BRACKETS.values())
        }
        kept = sorted((sign for sign, number in known.items() if number > _FEW * sum(known.values())), key=known.get)
        if kept:
            others = sum(number for sign, number in known.items() if sign not in kept)
            yield Habit(f"brackets.{kind}", tuple(reversed(kept)), others)


def _unit_first(reports: Sequence[Report]) -> Iterator[Habit]:
    """Which of inches and centimetres stands first where both are given."""
    first: Counter[str] = Counter()
    for report in reports:
        text = report.source.text
        lengths = read_lengths(text, max(1, len(report.pattern.sizes)))
        first.update(pair.first.unit for pair in read_pairs(text, lengths))
    names = {"in": "inches", "cm": "centimetres"}
    if first and (most := first.most_common(1)[0])[0] in names:
        yield Habit("units.first", names[most[0]], first.total() - most[1])


def _list_order(reports: Sequence[Report]) -> Iterator[Habit]:
    """Whether the lists of abbreviations go by the alphabet."""
    orders = []
    for report in reports:
        entries = sorted(report.pattern.abbreviations, key=lambda entry: entry.span.start)
        if len(entries) >= _ENTRIES:
            for heads in ([entry.forms[0] for entry in entries], [entry.meaning for entry in entries]):
                folded = [head.casefold() for head in heads]
                orders.append(folded == sorted(folded))
    if orders and any(orders):
        kept = sum(one or other for one, other in zip(orders[::2], orders[1::2], strict=True))
        yield Habit("abbreviation_list.order", "alphabetical", len(orders) // 2 - kept)
    elif orders:
        yield Habit("abbreviation_list.order", "as it stands")


def _sections(reports: Sequence[Report]) -> Iterator[Habit]:
    """The sections that all have, if all have them in one order."""
    orders = [_order_of(report) for report in reports]
    common = [key for key in orders[0] if all(key in order for order in orders)] if orders else []
    alike = all([key for key in order if key in common] == common for order in orders)
    if alike and len(common) > 1:
        yield Habit("sections", tuple(common))


def _order_of(report: Report) -> list[str]:
    wanted = {one.key for one in report.book.sections.required} | {"notes", "specials"}
    first_row = next((row.span.start for part in report.pattern.parts for row in part.rows), None)
    standing = [(one.heading.start, one.key) for one in report.pattern.sections if one.key in wanted]
    standing += [(-1, "title")] if report.pattern.title else []
    standing += [(first_row, "instructions")] if first_row is not None else []
    return list(dict.fromkeys(key for _, key in sorted(standing)))
