"""What a repeat without a mark goes over: "sl st to corner, ch 1, 3 sc in corner, sc in next 3, repeat around"."""

from __future__ import annotations

from itertools import takewhile

from lint.tree import Chain, Step, Work


def begun(steps: list[Step]) -> int:
    """How many steps come before the round's work: "sl st to corner sp, ch 1,", which no pass works again."""
    moves = takewhile(lambda step: isinstance(step, Work) and step.stitch == "sl st", steps)
    at = sum(1 for _ in moves)
    return at + 1 if at and at < len(steps) and isinstance(steps[at], Chain) else 0


def period(body: tuple[Step, ...]) -> tuple[Step, ...]:
    """The passage that a list goes through several times: "inc, sc" of "inc, sc, inc, sc, and so on"."""
    if not all(isinstance(step, Work) for step in body):
        return body
    told = [
        (step.stitch, step.number, step.together, [(place.which, place.number, place.targets) for place in step.places])
        for step in body
    ]
    lengths = (n for n in range(1, len(body)) if not len(body) % n and told == told[:n] * (len(body) // n))
    return body[: next(lengths, len(body))]
