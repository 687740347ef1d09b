"""Counts, corners and fit: what a row makes against what is printed, and against the row below.

A row has at most one of these findings; which of them only follow from an earlier one is told in folding.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from lint.checks.context import Context
from lint.checks.sizelists import wrong_lists
from lint.expression import expression
from lint.faults import RULES, SERIOUS, fault_of, told_in, unequal_sides
from lint.finding import Finding, Related, Weight
from lint.ledger import Cell, LedgerRow, Outcome
from lint.pattern import Label, Part
from lint.source import Span
from lint.tree import FastenOff, Group, Passage, Remark, Repeat, RowCall, Turn, walk
from lint.working.cells import joins_yarn, skips_to_join
from lint.working.compare import Difference
from lint.working.starts import founds


def finding_of(row: LedgerRow, context: Context) -> Finding | None:
    """The one finding of a row, over all sizes in which it shows."""
    by_rule: dict[str, list[int]] = {}
    for size, cell in enumerate(row.cells):
        rule = fault_of(cell)
        if rule is not None:
            by_rule.setdefault(rule, []).append(size)
    if not by_rule:
        return None
    rule = max(by_rule, key=lambda name: len(by_rule[name]))
    sizes = told_in(row.cells, by_rule[rule])
    if len(sizes) < len(by_rule[rule]):
        rule = "count-differs"
    cell = row.cells[sizes[0]]
    left = rule == "places-left-over" and cell.outcome is not Outcome.DIFFERS
    if left and (_joined_later(context, row) or _only_these(context, row)):
        return None  # left on purpose: the other side is worked there, or "in first 6 sts only"
    names = context.pattern.sizes
    concerned = tuple(names[size] for size in sizes) if names and len(sizes) < len(names) else ()
    builder = {
        "count-differs": _count_differs,
        "corners-differ": _corners_differ,
        "place-not-there": _not_there,
        "chains-called-stitches": _chains_too,
    }.get(rule, _misfit)
    found = _in_its_row(builder(context, row, cell, concerned), row)
    apart = [size for size in by_rule.get("count-differs", ()) if rule != "count-differs" and size not in sizes]
    if not apart:
        return found
    # in other sizes the same words fit and make another number than printed: that is not to be lost behind this
    differ = _count_differs(context, row, row.cells[apart[0]], tuple(names[size] for size in apart))
    return replace(differ, message=f"{differ.message} In {_listed_sizes(found.sizes)}: {found.message}")


_ONLY_THESE = expression(r"(?i)\d\s?(?:sts?|stitches|sc|h?dc|h?tr)\s+only\b")
_GOES_ON = expression(
    r"(?i)[\s.)]*\*?(?:cont(?:inue|inuing)?|work(?:ing)?|complete|keep)\b[^.;\n]{0,40}?\bon (?:just )?th(?:ese|is|ose)(?: (?:last|first))?(?: \d+)? (?:sts|stitches|side|half)\b"
)
_FAR = 120  # characters behind a row in which the next sentence may tell that only its stitches are worked on


def _only_these(context: Context, row: LedgerRow) -> bool:
    """ "In first 6 sts only"; "Cont on these sts for first side" right behind the row."""
    text, span = context.source.text, row.row.span
    if _ONLY_THESE.search(text, span.start, span.end):
        return True
    return _GOES_ON.match(text, span.end, span.end + _FAR) is not None


def _joined_later(context: Context, row: LedgerRow) -> bool:
    """Whether a row turns early, and yarn is joined later in its piece beside stitches passed over: "Miss 23 sts, rejoin"."""
    if not any(isinstance(step, Turn) and step.turned or isinstance(step, FastenOff) for step in row.row.steps):
        return False
    later = [other for part in context.pattern.parts for other in part.rows if other.span.start > row.row.span.start]
    for other in later:
        if founds(other.steps):
            return False
        if joins_yarn(other.steps) and skips_to_join(other.steps):
            return True
    return False


def _listed_sizes(names: tuple[str, ...]) -> str:
    return f"size{'s' * (len(names) != 1)} {', '.join(names)}"


def _in_its_row(finding: Finding, row: LedgerRow) -> Finding:
    """A finding of a row that works the words of another ("Same as Rnd 3"), at the words that call for those."""
    own = row.row.span
    if own.start <= finding.span.start < own.end:
        return finding
    calls = (step.span for step in walk(row.row.steps) if isinstance(step, (RowCall, Passage)))
    call = next((span for span in calls if own.start <= span.start < own.end), None)
    if call is None:
        return finding
    return replace(finding, span=call, related=(*finding.related, Related(finding.span, "the words worked here")))


def _base(row: LedgerRow, concerned: tuple[str, ...]) -> dict:
    return {"part": row.part.name, "row": row.label, "sizes": concerned}


def _count_differs(context: Context, row: LedgerRow, cell: Cell, concerned: tuple[str, ...]) -> Finding:
    difference = cell.comparison.differences[0]
    span = difference.item.span
    made, stated = _figures(context, difference, difference.made), _figures(context, difference, difference.stated)
    more = ""
    weight = None
    if cell.leans:
        more = f" They start from the count printed for {cell.leans}, which could not be worked out: one of the two counts is wrong."
    elif difference.under and not _spaces_left_out(context, row):
        more = f" The printed figure would be right if {difference.under}; is that meant?"
        weight = Weight.QUERY
    elif len(cell.comparison.differences) > 1:
        others = [
            _figures(context, other, other.made) + f" for {other.stated}" for other in cell.comparison.differences[1:]
        ]
        more = f" (Also {', '.join(others)}.)"
    elif difference.item.unit.startswith("kind:") and cell.made and difference.stated == cell.made.stitches:
        more = f" All stitches together are {cell.made.stitches}."
    return context.finding(
        "count-differs",
        span,
        expected=made,
        found=stated,
        more=more,
        weight=weight,
        related=_neighbour(context, row, cell),
        **_base(row, concerned),
    )


def _spaces_left_out(context: Context, row: LedgerRow) -> bool:
    """Whether the counts of the other sizes, or those of two other rows of the piece, leave its spaces out."""
    if any(map(_agrees_beside_spaces, row.cells)):
        return True
    others = (other for other in context.ledger.rows if other.part is row.part and other.row is not row.row)
    return sum(_agrees_beside_spaces(other.first) for other in others) > 1


def _agrees_beside_spaces(cell: Cell) -> bool:
    """Whether a printed count is that of the stitches alone, where the row makes spaces as well."""
    return cell.comparison is not None and bool(cell.comparison.agrees) and bool(cell.made and cell.made.spaces)


def _figures(context: Context, difference: Difference, number: int) -> str:
    unit, _, name = difference.item.unit.partition(":")
    if unit == "kind":
        return f"{number} {context.stitch_word(name)}"
    if unit == "space":
        return (
            f"{number} {'ch-' + name + ' sps' if name else 'spaces'}"
            if number != 1
            else f"1 {'ch-' + name + ' sp' if name else 'space'}"
        )
    if unit == "special":
        return f"{number} {difference.item.words or name}"
    if unit.startswith("with "):
        return f"{number} sts and {unit.removeprefix('with ')}"
    if unit == "per side":
        return f"{number} {context.stitch_word(name) if name else 'sts'} on each side"
    return f"{number} {'corners' if unit == 'corner' else 'chains' if unit == 'chain' else 'sts'}"


def _neighbour(context: Context, row: LedgerRow, cell: Cell) -> tuple[Related, ...]:
    """The row that this size worked before this one in its part, with what it makes: the figures it starts from."""
    size = next(size for size, one in enumerate(row.cells) if one is cell)
    rows = [other for other in context.ledger.rows if other.part is row.part]
    index = next(i for i, other in enumerate(rows) if other is row)
    worked = (other for other in reversed(rows[:index]) if other.cells[size].outcome is not Outcome.NOT_WORKED)
    before = next(worked, None)
    if before is not None and cell.leans:
        return (Related(before.span, f"{before.label} could not be worked out, and its printed count was taken"),)
    if before is None or before.cells[size].made is None:
        return ()
    return (Related(before.span, f"{before.label} leaves {before.cells[size].made.stitches} sts"),)


def _misfit(context: Context, row: LedgerRow, cell: Cell, concerned: tuple[str, ...]) -> Finding:
    kinds = [misfit for misfit in cell.misfits if misfit.kind in SERIOUS]
    first = kinds[0]
    rule = RULES[first.kind]
    number = sum(misfit.number for misfit in kinds if misfit.kind == first.kind and misfit.wanted == first.wanted)
    unit = _plural(_word(context, first.wanted), number)
    difference = cell.comparison.differences[0] if cell.outcome is Outcome.DIFFERS else None
    more, weight = "", None
    if difference is not None:
        more = f" They make {_figures(context, difference, difference.made)}; the count printed is {_figures(context, difference, difference.stated)}."
        if (
            first.kind in ("does not fit", "left over")
            and difference.item.unit in ("stitches",)
            or difference.item.unit.startswith("kind:")
        ):
            repeated = any(isinstance(step, Repeat) for step in row.row.steps)
            if (
                repeated
                and first.kind not in ("run out", "too often")
                and difference.stated == difference.made + number
            ):
                weight = Weight.QUERY  # the stitches left are silently worked plain
                more = f" The count printed is right if {'they are' if number > 1 else 'it is'} worked plain; is that meant?"
    elif cell.outcome is not Outcome.AGREES or first.kind in ("left over", "left"):
        weight = Weight.QUERY  # no count speaks for the reading, or one speaks against a mistake
    span = first.span
    values = {"number": number, "unit": unit, "verb": "are" if number != 1 else "is", "more": more}
    if rule == "repeat-does-not-fit":
        passes = int(first.found or 0)
        times = f"{passes} times" if passes != 1 else "1 time"
        if first.kind == "too often":
            values["how"] = f"it is worked {first.number} times, and the row below has places for {passes}"
        else:
            values["how"] = f"after {times} there {values['verb']} {number} {unit} left over"
    found = context.finding(
        rule, span, weight=weight, related=_neighbour(context, row, cell), **values, **_base(row, concerned)
    )
    if rule == "repeat-does-not-fit" and more:
        found = replace(found, message=found.message + more)
    if difference is not None:
        found = replace(found, expected=str(difference.made), found=str(difference.stated))
    return found


def _not_there(context: Context, row: LedgerRow, cell: Cell, concerned: tuple[str, ...]) -> Finding:
    misfit = next(m for m in cell.misfits if m.kind == "not there")
    named_space = "sp" in misfit.wanted
    has = f"{_plural(_word(context, misfit.found), 2)} there" if misfit.found else "no such place"
    return context.finding(
        "place-not-there",
        misfit.span,
        weight=None if named_space else Weight.QUERY,
        wanted=_word(context, misfit.wanted),
        has=has,
        related=_neighbour(context, row, cell),
        **_base(row, concerned),
    )


def _chains_too(context: Context, row: LedgerRow, cell: Cell, concerned: tuple[str, ...]) -> Finding:
    misfit = next(m for m in cell.misfits if m.kind == "chains too")
    return context.finding(
        "chains-called-stitches",
        misfit.span,
        number=misfit.number,
        unit=_plural("ch", misfit.number),
        words=" ".join(context.source.slice(misfit.span).split()),
        related=_neighbour(context, row, cell),
        **_base(row, concerned),
    )


def _corners_differ(context: Context, row: LedgerRow, cell: Cell, concerned: tuple[str, ...]) -> Finding:
    sides = unequal_sides(cell.made)
    total = cell.made.stitches
    listed = ", ".join(str(side) for side in sides[:-1]) + f" and {sides[-1]}"
    what = (
        f"the total of {total} sts is right, but the sides between the corners have {listed} sts."
        if cell.outcome is Outcome.AGREES
        else f"the sides between the corners have {listed} sts."
    )
    span = row.row.label.span if row.row.label is not None else row.row.span
    span = Span(span.end, row.row.span.end) if row.row.label is not None else span
    return context.finding("corners-differ", _trim(context, span), what=what, **_base(row, concerned))


def _trim(context: Context, span: Span) -> Span:
    text = context.source.slice(span)
    lead = len(text) - len(text.lstrip(" :.\n\t–-"))
    return Span(span.start + lead, span.start + len(text.rstrip()))


def _word(context: Context, name: str) -> str:
    return context.stitch_word(name) if context.book.stitch(name.removeprefix("FP").removeprefix("BP")) else name


def _plural(word: str, number: int) -> str:
    if number == 1:
        return word
    if word.endswith(" sp") or word in ("st", "sp"):
        return word + "s"
    return word + ("" if word.endswith(("c", "s", "r")) else "s")


_WHERE_CHANGED = "where the number of stitches changes"


def check_counts_missing(context: Context) -> Iterator[Finding]:
    """count-missing: one finding for all rows of the pattern that change the count and print none."""
    required = context.house.counts.required if context.house is not None else None
    if required == "nowhere":
        return
    missing: list[LedgerRow] = []
    unfit = [span for span, _, _ in wrong_lists(context)]  # a count that lacks a size's figure is not missing
    before: dict[int, tuple] = {}  # what each size had last: a range may end in another row in each of them
    untold = False  # what the row before had: that this one has another number is not known
    part = None
    for row in context.ledger.rows:
        if row.part is not part:
            part, before, untold = row.part, {}, False
        cell = row.first
        if cell.made is None or row.row.label is None:
            before, untold = ({}, True) if cell.made is None else (before, untold)
            continue
        if not cell.made.stitches and not cell.made.spaces:
            continue  # a chain alone: its length is its count
        made = {size: one.made for size, one in enumerate(row.cells) if one.made is not None}
        now = {size: (one.stitches + one.counted, {} if one.counted else one.spaces) for size, one in made.items()}
        if (
            row.stated is None
            and row.row.stated is None
            and (required == "every row" or not untold and any(before.get(size) != made for size, made in now.items()))
            and cell.outcome is Outcome.NOT_STATED
            and row.index_in_range == 0
            and not any(row.row.span.start <= span.start < row.row.span.end for span in unfit)
        ):
            missing.append(row)
        before, untold = before | now, False
    if missing:
        labels = [f"{row.part.name}: {row.label}" for row in missing]
        shown = "; ".join(labels[:4]) + (f" and {len(labels) - 4} more" if len(labels) > 4 else "")
        related = tuple(Related(row.span, "prints none") for row in missing[1:])
        where = "here, and this house prints one in every row" if required == "every row" else _WHERE_CHANGED
        first = missing[0]
        yield context.finding(
            "count-missing", first.span, first.part.name, first.label, rows=shown, where=where, related=related
        )


def check_unchecked(context: Context) -> Iterator[Finding]:
    """figure-not-checked: a printed figure in a unit that the pattern nowhere defines; once for each printed row."""
    seen: set[Span] = set()
    defined = {special.plain_name.lower() for special in context.pattern.specials}
    rows = [row for part in context.pattern.parts for row in part.rows]
    named = {step.names for row in rows for step in walk(row.steps) if isinstance(step, Remark)}  # "(half shell made)"
    for row in context.ledger.rows:
        comparison = row.first.comparison
        for item in comparison.unchecked if comparison is not None else ():
            name = item.unit.partition(":")[2]
            if name in named or name in defined and fault_of(row.first) is not None:
                continue  # that there is none of them comes of what is told already
            if name in defined and any(isinstance(step, Group) for step in walk(row.row.steps)):
                continue  # "in next dc make 2 dc, ch 2 and 2 dc": a shell told stitch by stitch
            if item.span not in seen:
                seen.add(item.span)
                figure = context.source.slice(item.span).strip()
                yield context.finding("figure-not-checked", item.span, row.part.name, row.label, figure=figure)


def range_differs(context: Context, part: Part, label: Label, labelled: int, worked: int, *related: Related) -> Finding:
    """range-length-differs: a label that names so many rows, where the words work or tell of others."""
    rule, told = "range-length-differs", {"labelled": labelled, "worked": worked}
    return context.finding(
        rule, label.span, part.name, label.words, expected=worked, found=labelled, related=related, **told
    )


def range_finding(context: Context, last: LedgerRow, count: Finding | None) -> Finding | None:
    """range-length-differs: "Rows 4-9: Rep Rows 2 and 3 four times"; `count`: what the last of these rows lacks beside."""
    found = next((one for one in context.ledger.range_faults if one[0].span.start == last.row.span.start), None)
    if found is None or found[0].label is None:
        return None
    row, part, labelled, worked = found
    finding = range_differs(context, part, row.label, labelled, worked)
    if count is None:
        return finding
    related = (Related(count.span, "the count printed of them"), *count.related)
    return replace(finding, message=f"{finding.message} {count.message}", related=related, sizes=count.sizes)


def check_repeats(context: Context) -> Iterator[Finding]:
    """repeat-ambiguous: "rep from * 12 times", read by the counts where they settle it."""
    for row in context.ledger.rows:
        unclear = next((cell.unclear_times for cell in row.cells if cell.unclear_times is not None), None)
        if unclear is None:
            continue
        span, said, passes, settled = unclear
        words = context.source.slice(span)
        if settled and "more" in words.lower():
            continue  # "ch 3, dc in ring, (2 dc in ring) 5 times more": what stands before is the first
        note = f" Only {passes} in all comes out; say so." if settled else " The counts do not settle which is meant."
        yield context.finding(
            "repeat-ambiguous",
            span,
            row.part.name,
            row.label,
            words=words,
            fewer=said,
            more=said + 1,
            settled=note,
            weight=Weight.STYLE if settled else Weight.QUERY,
        )
