"""Hooks whose names are not those of one size, and yarns whose word and number are not of one weight."""

from __future__ import annotations

from collections.abc import Iterator

from lint.checks.context import Context
from lint.expression import expression
from lint.finding import Finding, Related, Weight
from lint.reading.facts.materials import Hook, HookName, YarnName, read_hooks, yarn_reader
from lint.rulemodels import HookSize, MaterialFile

_SAME = 0.06  # mm: "5", "5.0", and "12.75" printed as "12.7"
_THINNEST = 2.0  # hooks for yarn begin here; thinner ones are steel hooks, numbered on scales of their own
_SPOKEN_OF = expression(r"(?i)(?:\bU\.?S\.?A?\.?|\bhooks?(?:\s+size)?|\bsize)[\s:,(]*$")
_HOOK_BEHIND = expression(r"(?i)[\s,)]*(?:crochet\s+)?hook\b")


def check_hooks(context: Context) -> Iterator[Finding]:
    """hook-size-disagrees: "5 mm (US I-9)"."""
    table = context.book.materials
    for hook in read_hooks(context.source.text):
        names = [name for name in hook.names if name.scale != "mm"]
        if hook.mm is None:
            if len(hook.names) == len(names) == 1:
                yield from _without_mm(context, names[0])
            continue
        for name in names:
            steel = hook.steel or hook.mm < _THINNEST
            told = _steel(table, hook.mm, name) if steel else _told(table, hook.mm, name)
            if told is not None:
                yield _finding(context, hook, name, *told)
                break


def _finding(context: Context, hook: Hook, name: HookName, what: str, weight: Weight) -> Finding:
    beside = next(other for other in hook.names if other.scale == "mm")
    return context.finding_at(
        "hook-size-disagrees",
        name.span,
        found=context.source.slice(name.span).strip(),
        related=(Related(beside.span, "the same hook in millimetres"),),
        weight=weight,
        what=what,
    )


def _without_mm(context: Context, name: HookName) -> Iterator[Finding]:
    """ "H-9 hook": a letter and a number that belong to two hooks, where it is surely a hook that is named."""
    text = context.source.text
    named = name.scale == "us" and name.letters and name.number
    spoken = _SPOKEN_OF.search(text, max(0, name.span.start - 16), name.span.start)
    if not named or not (spoken or text[name.span.start : name.span.end].upper().startswith("US")):
        if not named or not _HOOK_BEHIND.match(text, name.span.end):
            return
    what = _own_contradiction(context.book.materials, name)
    if what is not None:
        yield context.finding_at(
            "hook-size-disagrees", name.span, found=context.source.slice(name.span).strip(), what=what
        )


def _told(table: MaterialFile, mm: float, name: HookName) -> tuple[str, Weight] | None:
    """What is to be said of a name beside a size in mm, and how heavily; None where they agree."""
    sure, some = _sizes(table.hooks, name), _sizes(table.hooks_of_some_makers, name)
    if name.scale == "any":
        return _of_no_country(table, mm, name)
    if not sure and not some:
        what = _own_contradiction(table, name)
        return None if what is None else (what, Weight.CORRECTION)
    if _has(sure, mm):
        return None
    shown, usual = _shown(name), sure or some
    if _has(some, mm):
        if not sure:
            return None  # a size that only some makers have is named as they name it
        return f"With most makers {shown} is {_listed(sure)} mm, with some {mm:g} mm.", Weight.QUERY
    right = next((row for row in table.hooks if abs(row.mm - mm) < _SAME and _row_name(row, name.scale)), None)
    own = f"{_row_name(right, name.scale)}; " if right is not None else "another size: "
    what = f"{mm:g} mm is {own}{shown} is {_listed(usual)} mm."
    others = [abs(row.mm - mm) for row in table.hooks if _row_name(row, name.scale) and not _has(usual, row.mm)]
    near = min(abs(one - mm) for one in (*sure, *some))
    return what, Weight.CORRECTION if others and min(others) < near - 0.01 else Weight.QUERY


def _of_no_country(table: MaterialFile, mm: float, name: HookName) -> tuple[str, Weight] | None:
    """ "No. 9 (3.5 mm)": US, old UK or steel numbers may be meant; only a number of none of them is asked about."""
    every = {size for scale in ("us", "uk") for rows in (table.hooks, table.hooks_of_some_makers)
             for size in _sizes(rows, HookName(name.span, scale, (), name.number))}  # fmt: skip
    every |= {size for hook in table.steel_hooks if hook.number == name.number for size in hook.mm}
    if not every or _has(every, mm):
        return None
    return f"A number {name.number} hook is {_listed(every)} mm by the tables in use, not {mm:g} mm.", Weight.QUERY


def _steel(table: MaterialFile, mm: float, name: HookName) -> tuple[str, Weight] | None:
    """Steel hooks are numbered on several scales: a number that is on none of them so is asked about."""
    sizes = {size for hook in table.steel_hooks if hook.number == name.number for size in hook.mm}
    if name.letters or name.scale == "uk" or not sizes or _has(sizes, mm):
        return None
    return (
        f"A steel hook number {name.number} is {_listed(sizes)} mm by the tables in use, not {mm:g} mm.",
        Weight.QUERY,
    )


def _own_contradiction(table: MaterialFile, name: HookName) -> str | None:
    """ "H-9": the letter is one hook, the number another."""
    if not name.letters or name.number is None:
        return None
    every = [*table.hooks, *table.hooks_of_some_makers]
    letter, number = (
        _sizes(every, HookName(name.span, "us", name.letters)),
        _sizes(every, HookName(name.span, "us", (), name.number)),
    )
    if not letter or not number or any(_has(number, size) for size in letter):
        return None
    usual = (
        _sizes(table.hooks, HookName(name.span, "us", name.letters)),
        _sizes(table.hooks, HookName(name.span, "us", (), name.number)),
    )
    return (
        f"Letter {'/'.join(name.letters)} is {_listed(usual[0] or letter)} mm, "
        f"number {name.number} is {_listed(usual[1] or number)} mm."
    )


def _sizes(rows: list[HookSize], name: HookName) -> set[float]:
    """The sizes in mm that a name stands for in some rows of the table."""
    if name.scale == "uk":
        return {row.mm for row in rows if row.uk is not None and row.uk == name.number}
    return {
        row.mm
        for row in rows
        if set(name.letters) <= set(row.letters)
        and (name.number is None or row.number == name.number or row.number is None and name.letters and row.letters)
        and (row.letters or row.number)
    }


def _has(sizes: set[float], mm: float) -> bool:
    return any(abs(size - mm) < _SAME for size in sizes)


def _row_name(row: HookSize, scale: str) -> str | None:
    if scale == "uk":
        return None if row.uk is None else f"UK {row.uk}"
    return None if row.us is None else f"US {row.us}"


def _shown(name: HookName) -> str:
    if name.scale == "uk":
        return f"UK {name.number}"
    letters = "/".join(name.letters)
    return f"{letters}-{name.number}" if letters and name.number else letters or f"US {name.number}"


def _listed(sizes: set[float]) -> str:
    shown = [f"{size:g}" for size in sorted(sizes)]
    return shown[0] if len(shown) == 1 else f"{', '.join(shown[:-1])} or {shown[-1]}"


def check_yarns(context: Context) -> Iterator[Finding]:
    """yarn-weight-disagrees: "DK weight yarn (4)"."""
    reader = yarn_reader(context.book.materials)
    listed = [section.span for section in context.pattern.sections if section.key == "materials"]
    names = list(reader.read(context.source.text, listed))
    agreed = {name.number_span for name in names if _agrees(name)}
    told = set()
    for name in names:
        # "4-ply worsted (4)": a number of plies is a weight only where no weight word says otherwise
        everyday = all(weight.plain or weight.word.endswith("ply") for weight in name.weights)
        if _agrees(name) or name.number_span in told or (everyday and name.number_span in agreed):
            continue  # "DK weight baby yarn (3)": the stronger word says it
        told.add(name.number_span)
        open_ = not name.sure or any(name.number in weight.also for weight in name.weights)
        own = sorted({number for weight in name.weights for number in weight.numbers})
        yield context.finding_at(
            "yarn-weight-disagrees",
            name.span,
            found=name.number,
            expected=_listed({float(number) for number in own}),
            related=(Related(name.number_span, "the number of another weight"),),
            weight=Weight.QUERY if open_ else None,
            word=context.source.slice(name.span).strip(),
            name=_weight_name(context.book.materials, name.number),
        )


def _agrees(name: YarnName) -> bool:
    return any(name.number in weight.numbers for weight in name.weights)


def _weight_name(table: MaterialFile, number: int) -> str:
    """The commonest word for a category number."""
    words = [one for one in table.yarn_weights if one.numbers == [number] and not one.word[0].isdigit()]
    word = next((one.word for one in words if not one.plain), words[0].word)
    return "DK" if word == "dk" else word
