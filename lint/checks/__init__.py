"""The checks: every one a function from a Context to findings, listed here and nowhere else."""

from __future__ import annotations

from lint.checks import (
    amounts,
    cautions,
    chains,
    declared,
    ease,
    folding,
    gauge,
    kit,
    labels,
    level,
    materials,
    measures,
    motifs,
    pieces,
    rows,
    seams,
    sides,
    sizelists,
    steps,
    words,
)
from lint.checks.context import Context
from lint.finding import Finding

CHECKS = (
    folding.check_rows,
    rows.check_counts_missing,
    rows.check_ranges,
    rows.check_unchecked,
    rows.check_repeats,
    chains.check_unsaid,
    chains.check_missing,
    sizelists.check_lists,
    sizelists.check_named,
    labels.check_order,
    labels.check_yarn,
    labels.check_sections,
    materials.check_hooks,
    materials.check_yarns,
    measures.check_measures,
    gauge.check_gauge,
    motifs.check_motifs,
    steps.check_steps,
    amounts.check_amounts,
    ease.check_ease,
    kit.check_kit,
    level.check_level,
    sides.check_sides,
    pieces.check_pieces,
    seams.check_seams,
    cautions.check_cautions,
    declared.check_colours,
    declared.check_markers,
    declared.check_twice,
    words.check_unread,
    words.check_terms,
    words.check_undefined,
    words.check_unused,
    words.check_word_rules,
)


def run_checks(context: Context) -> tuple[Finding, ...]:
    """All findings in the order of the text; of two alike at the same words, one."""
    found: dict[tuple, Finding] = {}
    for check in CHECKS:
        for finding in check(context):
            # rows of a range share their words; findings of no row are told apart by what they say
            told = "" if finding.row else finding.message
            found.setdefault((finding.rule, finding.span.start, finding.span.end, told), finding)
    return tuple(sorted(found.values(), key=lambda f: (f.span.start, f.span.end, f.rule, f.message)))
