"""The house that patterns imply: for every choice of a house file, the form under which the fewest words would change.

The ways of restyling do the measuring: a form that they would change nothing for is the pattern's own.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, get_args

from lint.house.model import House, HouseAbbreviation, Labels, TurningChain, Units, Wording
from lint.house.samples import label_form
from lint.restyle import (
    Way,
    abbreviations,
    chains,
    counts,
    headings,
    labels,
    listing,
    repeats,
    sizelists,
    turning,
    units,
)
from lint.restyle.edits import settled
from lint.restyle.ground import Ground

_RANGE_JOINTS = ("-", "–", " - ", " to ", " thru ", " through ")
_COUNTS = ("(12 sts)", "[12 sts]", "{12 sts}", "— 12 sts", "– 12 sts", "- 12 sts", "; 12 sts", ": 12 sts", "= 12 sts")
_LISTS = (
    "60 (66, 72)",
    "60 (66: 72)",
    "60 (66:72)",
    "60 [66, 72]",
    "60 [66: 72]",
    "60 (66-72)",
    "60 (66/72)",
    "60(66-72)",
    "60/66/72",
)
_ENTRIES = (
    "ch = chain",
    "ch: chain",
    "ch – chain",
    "ch - chain",
    "ch — chain",
    "chain (ch)",
    "ch (chain)",
    "ch  chain",
)
_EXAMPLES = 3


@dataclass(frozen=True, slots=True)
class Habit:
    """A choice found: its key in a house file, the form, how many places are otherwise, and what some of them read."""

    key: str
    form: str | tuple[str, ...]  # several where the key takes a list
    otherwise: int = 0
    examples: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class FormHabit:
    """An abbreviation found: what the patterns mostly print, and the other forms with how often."""

    entry: HouseAbbreviation
    others: tuple[tuple[str, int], ...]


def habits(grounds: list[Ground]) -> list[Habit]:
    """Every choice that the patterns show, in the order of a house file."""
    found: list[Habit] = []
    terms = Counter(ground.terms.terms for ground in grounds).most_common()
    found.append(Habit("terms", terms[0][0], sum(number for _, number in terms[1:])))
    for kind in ("row", "round"):
        found += _labels(grounds, kind)
    forms = [*_COUNTS, *(form.replace(" sts", "") for form in _COUNTS)]
    found += _best(grounds, "counts.form", forms, counts.edits)
    for name, way in (
        ("skip", abbreviations.edits),
        ("chain", chains.edits),
        ("chain_space", chains.edits),
        ("stitches", chains.edits),
        ("times", repeats.edits),
        ("more", repeats.edits),
        ("first_word", repeats.edits),
        ("gauge", headings.edits),
    ):
        found += _best(grounds, f"wording.{name}", _options(Wording, name), way)
    for name in ("note", "note_not"):
        found += _best(grounds, f"turning_chain.{name}", _options(TurningChain, name), turning.edits)
    for name in units.FORMS:
        found += _best(grounds, f"units.{name}", _options(Units, name), units.edits)
    found += _best(grounds, "sizes", list(_LISTS), sizelists.edits)
    found += _best(grounds, "abbreviation_list.form", list(_ENTRIES), listing.edits)
    return found


def forms(grounds: list[Ground], bases: dict[str, House]) -> list[FormHabit]:
    """The abbreviations that rows print, each with its rivals, as the standard houses set them side by side."""
    terms = Counter(ground.terms.terms for ground in grounds).most_common(1)[0][0]
    printed: Counter[str] = Counter()
    for ground in grounds:
        if ground.terms.terms == terms:
            for row in ground.rows:
                for run, words in abbreviations.runs(ground, row):
                    if run[0].kind != "special" and not (len(words) > 1 and words.isupper() and len(run) > 2):
                        printed[words] += 1
    listed = {form for ground in grounds for entry in ground.pattern.abbreviations for form in entry.forms}
    found = []
    for entry in bases[terms].abbreviations:
        forms_of = (entry.use, *entry.replace)
        capitals = (form.upper() for form in forms_of if len(form) > 1 and form.upper() not in forms_of)
        seen = {form: _times(printed, form) for form in dict.fromkeys((*forms_of, *capitals))}
        seen = {form: number for form, number in seen.items() if number}
        if not seen:
            continue
        most = max(seen, key=lambda form: (seen[form], form == entry.use))
        others = tuple(
            sorted(((form, number) for form, number in seen.items() if form != most), key=lambda one: -one[1])
        )
        own = HouseAbbreviation(
            use=most,
            means=entry.means,
            replace=[form for form, _ in others],
            listed=most.lower() in listed,
            plural=entry.plural if most == entry.use else None,
        )
        found.append(FormHabit(own, others))
    return found


def _times(printed: Counter[str], form: str) -> int:
    """How often a form is printed, in the singular, in the plural, or with a sentence's capital."""
    both = {form, form + "s", form + "es", form[:1].upper() + form[1:], form[:1].upper() + form[1:] + "s"}
    return sum(printed[one] for one in both)


def _options(model: type, name: str) -> list[str]:
    """The forms that a key of a house file may have."""
    annotation = model.model_fields[name].annotation
    return [option for part in get_args(annotation) for option in get_args(part)]


def _best(grounds: list[Ground], key: str, options: list[str], way: Way) -> list[Habit]:
    """The form under which the fewest words would change; [] where the patterns do not show any."""
    changed = {option: list(_changes(grounds, key, option, way)) for option in options}
    best = min(options, key=lambda option: len(changed[option]))
    if len(changed[best]) == max(len(one) for one in changed.values()):
        return []
    left = Counter(changed[best])
    examples = tuple(words for words, _ in left.most_common(_EXAMPLES))
    return [Habit(key, best, sum(left.values()), examples)]


def _changes(grounds: list[Ground], key: str, option: str, way: Way) -> Iterator[str]:
    for ground in grounds:
        house = _house_with(key, option)
        held = Ground(ground.source, ground.pattern, ground.terms, ground.lexicon, ground.book, house)
        for edit in settled(ground.source.text, way(held)):
            yield " ".join(ground.source.slice(edit.span).split())


def _house_with(key: str, option: str) -> House:
    data: dict[str, Any] = {}
    first, _, second = key.partition(".")
    data[first] = {second: option} if second else option
    return House.model_validate(data)


def _labels(grounds: list[Ground], kind: str) -> list[Habit]:
    """The label of one row, then that of several."""
    samples = []
    for ground in grounds:
        samples += labels.samples(ground, kind)
    singles = list(dict.fromkeys(samples))
    if not singles:
        return []
    changed = {sample: list(_label_changes(grounds, kind, Labels(**{kind: sample}))) for sample in singles}
    best = min(singles, key=lambda sample: (len(changed[sample]), -samples.count(sample)))
    left = Counter(changed[best])
    found = [
        Habit(f"labels.{kind}", best, sum(left.values()), tuple(words for words, _ in left.most_common(_EXAMPLES)))
    ]
    form = label_form(best)
    words = [form.singular + "s", form.singular] if len(form.singular) > 1 else [form.singular]
    ranges = [f"{word}{form.space}2{joint}5{form.sign}" for word in words for joint in _RANGE_JOINTS]
    if not form.ordinal:
        several = {
            sample: list(_label_changes(grounds, kind, Labels(**{kind: best, kind + "s": sample}))) for sample in ranges
        }
        chosen = min(ranges, key=lambda sample: len(several[sample]))
        if len(several[chosen]) < max(len(one) for one in several.values()):
            found.append(Habit(f"labels.{kind}s", chosen, max(0, len(several[chosen]) - sum(left.values()))))
    return found


def _label_changes(grounds: list[Ground], kind: str, wanted: Labels) -> Iterator[str]:
    for ground in grounds:
        held = Ground(ground.source, ground.pattern, ground.terms, ground.lexicon, ground.book, House(labels=wanted))
        for edit in settled(ground.source.text, labels.edits(held)):
            yield ground.source.slice(edit.span)
