"""Tells a beginning cluster: "ch 3, dc2tog" where the other clusters of the round are dc3tog is one stitch, not two."""

from __future__ import annotations

from dataclasses import dataclass

from lint.place import TargetKind
from lint.tree import Chain, Counting, Group, Join, Loops, Remark, Step, UseYarn, Work, walk

_CLUSTERS = ("cluster", "cl", "bobble", "puff", "popcorn")


@dataclass(frozen=True, slots=True)
class FirstCluster:
    """The work that a beginning chain is the first leg of; `name`, where the row's clusters have one; `said` in words."""

    work: Work
    name: str | None
    said: bool


def first_cluster(chain: Chain, following: tuple[Step, ...]) -> FirstCluster | None:
    """The cluster that a beginning chain may be the first leg of; None where it stands for itself."""
    index = next((i for i, step in enumerate(following) if not isinstance(step, (Remark, Loops, UseYarn))), None)
    if index is None:
        return None
    legs = _legs(following[index])
    if legs is None:
        return None
    rest = following[index + 1 :]
    named = _named_after(rest) or _cluster_of(chain.counting) or _cluster_of(legs.closing)
    others = [step for step in walk(rest) if isinstance(step, Work)]
    used = next((step.stitch for step in others if _is_cluster(step.stitch)), None)
    if named or used and legs.together:
        return FirstCluster(legs, used or None, named is not None or _joined_to_cluster(rest))
    alike = used is not None and legs.stitch == used and all(_is_cluster(step.stitch) for step in others)
    if alike and chain.counting is None:  # "ch 3, 2-dc cl in same st, *ch 3, 3-dc cl in next st"
        return FirstCluster(legs, used, _joined_to_cluster(rest))
    if legs.special is not None:  # "ch 3, 2 dc held back" before clusters of three
        number = legs.special.items[0].number.lone or 0
        clusters = [step.special for step in others if step.stitch == legs.stitch and step.special is not None]
        one_more = bool(clusters) and all((s.items[0].number.lone or 0) == number + 1 for s in clusters if s.items)
        return FirstCluster(legs, None, _joined_to_cluster(rest)) if one_more else None
    if legs.together is None:
        said = legs.closing is not None and legs.closing.counts and any(step.together == 2 for step in others)
        return FirstCluster(legs, None, True) if said else None
    alike = [step for step in others if step.stitch == legs.stitch and step.together]
    if alike and all(step.together == legs.together + 1 for step in alike):
        return FirstCluster(legs, None, _joined_to_cluster(rest))
    return None


def _legs(step: Step) -> Work | None:
    """The one stitch or decrease in one place, or over some, that follows the chain."""
    if isinstance(step, Group) and len(step.items) == 1:
        step = step.items[0]
    if (
        isinstance(step, Work)
        and step.stitch == "cluster"
        and step.special is not None
        and len(step.special.items) == 1
    ):
        return step if len(step.places) == 1 else None
    if not isinstance(step, Work) or step.special is not None or step.stitch in ("sl st", "picot", "inc", "dec"):
        return None
    return step if step.number.lone == 1 and len(step.places) <= 1 else None


def _named_after(rest: tuple[Step, ...]) -> str | None:
    """The name in "(beg cl made)" right after the work."""
    first = rest[0] if rest else None
    name = first.names if isinstance(first, Remark) else None
    return name if _is_cluster(name) else None


def _cluster_of(note: Counting | None) -> str | None:
    return note.stitch if note is not None and note.counts and note.stitch and _is_cluster(note.stitch) else None


def _is_cluster(stitch: str | None) -> bool:
    return stitch is not None and any(word in _CLUSTERS for word in stitch.lower().replace("-", " ").split())


def _joined_to_cluster(rest: tuple[Step, ...]) -> bool:
    """Whether the round is joined "in top of first cluster"."""
    join = next((step for step in reversed(rest) if isinstance(step, Join)), None)
    target = join.places[0].targets[0] if join is not None and join.places else None
    return target is not None and target.kind is TargetKind.SPECIAL and _is_cluster(target.name)
