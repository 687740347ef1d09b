"""What a worked row leaves in its cell of the ledger besides its count: what does not fit, and what can be read two ways."""

from __future__ import annotations

from lint.ledger import Misfit
from lint.place import Which
from lint.source import Span
from lint.tree import Group, Repeat, Skip, Step, TimesKind, Work, walk
from lint.working.bench import Worked
from lint.working.expand import Instance
from lint.working.fabric import Fabric
from lint.working.trials import Trial


def misfits(worked: Worked, instance: Instance) -> tuple[Misfit, ...]:
    """What does not fit the row below, with the words it arose at."""
    found = [
        Misfit(n.trouble.kind, n.trouble.wanted, n.trouble.number, n.trouble.found, n.span) for n in worked.troubles
    ]
    if worked.left and not any(m.kind == "does not fit" for m in found):
        stitches = [node for node in worked.left if node.is_stitch]
        wanted = "st" if stitches else f"ch-{worked.left[0].length} sp"
        last = next((s for s in reversed(instance.steps) if isinstance(s, (Work, Group, Repeat))), None)
        found.append(
            Misfit(
                "left over",
                wanted,
                len(stitches) or len(worked.left),
                "",
                last.span if last is not None else instance.row.span,
            )
        )
    return tuple(found)


def unclear_times(best: Trial, steps: tuple[Step, ...], below: Fabric) -> tuple[Span, int, bool] | None:
    """A bare "n times": the passes taken, and whether the printed count settles it, or the places there are."""
    counted = below.known and bool(below.nodes) and below.nodes[0].kind != "ring"
    for step in walk(steps):
        if isinstance(step, Repeat) and step.times.kind is TimesKind.UNCLEAR and step.times.number is not None:
            taken = best.worked.choices.asked.get(("times", step.times.span.start))
            if taken is not None:
                passes = (step.times.number.values[0] or 0) + taken[0]
                return (
                    step.times.span,
                    passes,
                    best.fits and (bool(best.agrees) or counted and best.agrees is None and _uses_places(step)),
                )
    return None


def _uses_places(step: Repeat) -> bool:
    """Whether every pass takes places of the row below, so that only one number of passes fits it."""
    return any(
        place.which is Which.NEXT for s in walk(step.items) if isinstance(s, (Work, Group, Skip)) for place in s.places
    )
