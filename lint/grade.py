"""How ready a pattern is to publish: a score, a verdict and areas, by the weights in rules/grade.yaml."""

from __future__ import annotations

from dataclasses import dataclass

from lint.finding import Finding, Weight
from lint.rulebook import Rulebook


@dataclass(frozen=True, slots=True)
class AreaScore:
    """The points of one area of the grade, of 100."""

    area: str
    shown_as: str
    score: float


@dataclass(frozen=True, slots=True)
class Grade:
    """Points of 100, the verdict (ready | queries | corrections) and how it is said, and each area's points."""

    score: float
    verdict: str
    sentence: str
    areas: tuple[AreaScore, ...]


def grade(findings: tuple[Finding, ...], recomputed: int, of: int, book: Rulebook) -> Grade:
    """Grade what was recomputed; a pattern with rows not recomputed is never ready."""
    rules = book.grade
    areas = []
    for area in rules.areas:
        own = [finding for finding in findings if book.rule(finding.rule).area == area.name]
        cost = sum(rules.cost[finding.weight] for finding in own)
        areas.append(AreaScore(area.name, area.shown_as, max(0.0, round(100.0 - cost, 1))))
    total = sum(area.weight for area in rules.areas) or 1.0
    score = sum(score.score * area.weight for score, area in zip(areas, rules.areas, strict=False)) / total
    if not of:
        score = 0.0  # nothing was recomputed
    else:
        score *= 0.5 + 0.5 * recomputed / of  # what was not recomputed can't earn its points
    weights = {finding.weight for finding in findings}
    if Weight.CORRECTION in weights:
        verdict = "corrections"
    elif Weight.QUERY in weights or recomputed < of or not of:
        verdict = "queries"
    else:
        verdict = "ready"
    return Grade(round(score, 1), verdict, rules.verdicts[verdict], tuple(areas))
