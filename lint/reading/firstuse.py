"""Finds shells and V-stitches that are defined where they are first worked: "5 dc in next ch (shell made)"."""

from __future__ import annotations

from dataclasses import replace

from lint.pattern import Part
from lint.reading.places.countunits import singular
from lint.tree import Alongside, Chain, Either, Group, Passage, Remark, Repeat, Special, Step, Work


def with_first_uses(parts: tuple[Part, ...]) -> tuple[Part, ...]:
    """The parts, in which a stitch that "(shell made)" has named stands for what was made there."""
    known: dict[str, Special] = {}
    found = []
    for part in parts:
        rows = []
        for row in part.rows:
            _learn(row.steps, known)
            rows.append(replace(row, steps=_known_steps(row.steps, known)) if known else row)
        found.append(replace(part, rows=tuple(rows)))
    return tuple(found)


def _learn(steps: tuple[Step, ...], known: dict[str, Special]) -> None:
    """What the remarks of a row name: the work right before them, unless a beginning chain is a part of it."""
    for index, step in enumerate(steps):
        if isinstance(step, Repeat):
            _learn(step.items, known)
        before = steps[index - 1] if index else None
        if not isinstance(step, Remark) or not step.names or not isinstance(before, (Work, Group)):
            continue
        opens = index > 1 and isinstance(steps[index - 2], Chain)
        opens = opens and not any(isinstance(s, (Work, Group, Repeat)) for s in steps[: index - 1])
        if opens or len(before.places) != 1 or isinstance(before, Work) and (before.special or before.together):
            continue
        items = before.items if isinstance(before, Group) else (replace(before, places=()),)
        name = singular(step.names)
        known.setdefault(name, Special(name, before.span, items, one_stitch=False))


def _known_steps(steps: tuple[Step, ...], known: dict[str, Special]) -> tuple[Step, ...]:
    return tuple(_known_step(step, known) for step in steps)


def _known_step(step: Step, known: dict[str, Special]) -> Step:
    if isinstance(step, Work) and step.undefined and step.stitch in known:
        return replace(step, special=known[step.stitch], undefined=False)
    if isinstance(step, Repeat):
        last = _known_steps(step.last_pass, known) if step.last_pass is not None else None
        return replace(step, items=_known_steps(step.items, known), last_pass=last)
    if isinstance(step, (Group, Passage, Alongside)):
        return replace(step, items=_known_steps(step.items, known))
    if isinstance(step, Either):
        return replace(step, options=tuple(_known_steps(option, known) for option in step.options))
    return step
