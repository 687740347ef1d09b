"""The checks: every one a function from a Context to findings, listed here and nowhere else."""

from __future__ import annotations

from dataclasses import replace

from lint.checks import (
    amounts,
    armholes,
    calls,
    carried,
    cautions,
    chains,
    colours,
    declared,
    ease,
    edges,
    folding,
    gauge,
    house,
    houserules,
    kit,
    labels,
    leftovers,
    level,
    materials,
    measures,
    mirrors,
    misprints,
    motifs,
    multiples,
    names,
    passedby,
    pieces,
    posts,
    putup,
    rows,
    seams,
    shape,
    sides,
    sizelists,
    steps,
    tallies,
    words,
    yarngauge,
)
from lint.checks.context import Context
from lint.finding import Finding, Weight

CHECKS = (
    folding.check_rows,
    passedby.check_passed_by,
    rows.check_counts_missing,
    rows.check_unchecked,
    rows.check_repeats,
    tallies.check_told,
    calls.check_called,
    calls.check_called_sides,
    calls.check_cycle_ends,
    shape.check_growth,
    shape.check_spread,
    shape.check_balanced,
    shape.check_flat,
    posts.check_posts,
    chains.check_unsaid,
    chains.check_missing,
    chains.check_lengths,
    chains.check_joins,
    sizelists.check_lists,
    sizelists.check_named,
    labels.check_order,
    labels.check_yarn,
    labels.check_sections,
    materials.check_hooks,
    materials.check_yarns,
    yarngauge.check_yarn_gauge,
    colours.check_named_colours,
    measures.check_measures,
    gauge.check_gauge,
    motifs.check_motifs,
    steps.check_steps,
    amounts.check_amounts,
    putup.check_put_up,
    ease.check_ease,
    kit.check_kit,
    level.check_level,
    sides.check_sides,
    pieces.check_pieces,
    mirrors.check_mirrors,
    armholes.check_armholes,
    carried.check_carried,
    multiples.check_multiples,
    seams.check_seams,
    edges.check_edges,
    cautions.check_cautions,
    declared.check_colours,
    declared.check_markers,
    declared.check_twice,
    names.check_standard,
    names.check_special_names,
    names.check_forms,
    leftovers.check_lost,
    leftovers.check_leftover_pieces,
    leftovers.check_leftover_sizes,
    words.check_unread,
    misprints.check_misprints,
    words.check_terms,
    words.check_undefined,
    words.check_unused,
    words.check_word_rules,
    house.check_house,
    houserules.check_forbidden,
    houserules.check_brackets,
    houserules.check_order,
    houserules.check_measures,
    houserules.check_note_places,
)


def run_checks(context: Context) -> tuple[Finding, ...]:
    """All findings in the order of the text, as heavy as the house has them; of two alike at the same words, one."""
    found: dict[tuple, Finding] = {}
    weights = context.house.rules if context.house is not None else {}
    for check in CHECKS:
        for finding in check(context):
            weight = weights.get(finding.rule)
            if weight == "off":
                continue
            finding = replace(finding, weight=Weight(weight)) if weight is not None else finding
            # rows of a range share their words; findings of no row are told apart by what they say
            told = "" if finding.row else finding.message
            found.setdefault((finding.rule, finding.span.start, finding.span.end, told), finding)
    return tuple(
        sorted(
            folding.fold_figures(folding.fold_others(list(found.values()))),
            key=lambda f: (f.span.start, f.span.end, f.rule, f.message),
        )
    )
