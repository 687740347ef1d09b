"""What restyling would change: words that are not in the house's form, one finding for all places alike."""

from __future__ import annotations

from collections.abc import Iterator

from lint.checks.context import Context
from lint.finding import Finding, Related
from lint.restyle import WAYS, abbreviations, listing, terms
from lint.restyle.edits import Edit, settled
from lint.restyle.ground import Ground

_NEED_OWN_TERMS = (abbreviations.edits, listing.edits)


def check_house(context: Context) -> Iterator[Finding]:
    """terms-not-house, abbreviation-not-house, label-not-house and the like, by what restyling would change."""
    if context.house is None:
        return
    ground = ground_of(context)
    foreign = context.house.terms not in (None, context.terms.terms)
    for way in WAYS:
        if foreign and way in _NEED_OWN_TERMS:
            continue  # its list speaks of the other country's names
        edits = settled(context.source.text, way(ground))
        if way is terms.edits:
            yield from _terms(context, edits)
            continue
        alike: dict[tuple[str, str], list[Edit]] = {}
        for edit in edits:
            if edit.subject != listing.LACKING:  # abbreviation-undefined speaks of those
                alike.setdefault((edit.rule, edit.subject), []).append(edit)
        for (rule, subject), places in alike.items():
            yield _finding(context, rule, subject, places)


def ground_of(context: Context) -> Ground:
    """The ground that the house's ways run on."""
    assert context.house is not None
    return Ground(context.source, context.pattern, context.terms, context.lexicon, context.book, context.house)


def _terms(context: Context, edits: list[Edit]) -> Iterator[Finding]:
    if edits:
        first = edits[0]
        yield context.finding_at(
            terms.RULE,
            first.span,
            found=context.terms.terms.upper(),
            expected=str(context.house.terms).upper() if context.house is not None else None,
        )


def _finding(context: Context, rule: str, subject: str, edits: list[Edit]) -> Finding:
    first = edits[0]
    old = " ".join(context.source.slice(first.span).split())
    places = "1 place" if len(edits) == 1 else f"{len(edits)} places"
    new = " ".join(first.new.split())
    return context.finding_at(
        rule,
        first.span,
        subject=subject[:1].upper() + subject[1:],
        old=old,
        new=new,
        becomes=f"would be “{new}”" if new else "would be left out",
        found=old,
        expected=new,
        places=places,
        related=_places(edits[1:]),
        replacement=first.new,
    )


def _places(edits: list[Edit]) -> tuple[Related, ...]:
    return tuple(Related(edit.span, "here too") for edit in edits)
