"""Tells stitches worked "through both layers", which join two edges: of two pieces, or of a round folded flat."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.pattern import Stated
from lint.place import Which
from lint.reading.words.stream import CLOSERS
from lint.tree import Evenly, Group, Remark, Repeat, Step, Unread, Work

_LAYERS = ("layer", "thickness", "both sides", "both pieces", "both walls", "both edges", "both halves")


def seam_behind_count(steps: list[Step], lexemes: list[Lexeme], stated: Stated | None) -> list[Step]:
    """The steps; a sentence behind the row's count that works through both layers closes the piece: "(12). Fold and 6 sc …"."""
    if stated is None:
        return steps
    behind = [item for item in lexemes if item.start >= stated.span.end]
    said = next((at for at, item in enumerate(behind) if item.kind == "manner" and _of_layers(item)), None)
    stops = [at for at, item in enumerate(behind[:said]) if item.kind in (".", ";")] if said is not None else []
    begins = next((item.start for item in behind[(stops or [0])[0] :] if item.kind not in (".", ";", *CLOSERS)), None)
    sewn = [step for step in steps if begins is not None and step.span.start >= begins]
    if not stops or not any(isinstance(step, (Work, Group, Repeat, Evenly)) for step in sewn):
        return steps
    seam = Remark(sewn[0].span.to(sewn[-1].span), seam=True)
    return [*(step for step in steps if step not in sewn), seam]


def layers_noted(steps: list[Step], lexemes: list[Lexeme], worked: list[Lexeme]) -> list[Step]:
    """The steps with a note before the row's first work; `lexemes` are the row's words, `worked` those that were read.

    Whether a round is folded the words often leave to the numbers; where they speak of folding, or of stitches
    "across", it is.
    """
    kept = {item.start for item in worked}
    said = next((i for i in lexemes if i.kind == "manner" and i.start not in kept and _of_layers(i)), None)
    first = next((at for at, step in enumerate(steps) if isinstance(step, (Work, Group, Repeat, Evenly))), None)
    if said is None or first is None:
        return steps
    folds = any(item.kind == "rotate" or item.lower in ("pinch", "flattened", "folded") for item in lexemes)
    alone = sum(isinstance(step, (Work, Group, Repeat, Evenly)) for step in steps) == 1
    run = steps[first] if alone and isinstance(steps[first], Work) else None
    across = any(item.kind == "across" for item in lexemes) and run is not None and _whole(run)
    one = steps[first]
    if not alone and isinstance(one, Work) and not (one.places or one.number_said) and one.span.end <= said.start:
        why = "how many go through both layers is not said"  # "fold, sc through both layers, 9 sc"
        return [*steps[:first], Unread(one.span, said.text, why), *steps[first + 1 :]]
    note = Remark(said.span, layers="folded" if alone and (folds or across) else "perhaps")
    return [*steps[:first], note, *steps[first:]]


def _of_layers(item: Lexeme) -> bool:
    return any(word in item.lower for word in _LAYERS)


def _whole(step: Work) -> bool:
    return not step.places or step.places[-1].which is Which.EACH


__all__ = ["layers_noted", "seam_behind_count"]
