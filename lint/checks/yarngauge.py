"""The gauge against the yarn's weight: twenty-five stitches to four inches are no bulky yarn."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

import regex

from lint.checks.context import Context
from lint.expression import expression
from lint.finding import Finding, Related
from lint.reading.facts.gauge import Gauge
from lint.reading.facts.materials import yarn_reader
from lint.reading.facts.measures import CM_IN_AN_INCH
from lint.source import Span

_SHORT = ("sc", "hdc", "dc")  # stitches that are about as wide as a single crochet
_STRANDS = expression(
    r"(?i)\b(?:double|two|2|three|3|both|several|multiple)\s+strands?\b|\bheld\s+(?:double|together|triple)\b|\bdoubled\b|\bstrands\b"
)
_TIGHT = expression(r"(?i)\b(?:amigurumi|stuff\w*|fibre?fill|toy)\b")


def check_yarn_gauge(context: Context) -> Iterator[Finding]:
    """gauge-unlike-yarn: only where the materials name one weight, and one gauge is in short stitches without spaces."""
    text, table = context.source.text, context.book.materials
    zones = [section.span for section in context.pattern.sections if section.key == "materials"]
    reader = yarn_reader(table)
    named = [(weight, zone) for zone in zones for weight in reader.weights_named(text, zone)]
    gauges = context.gauges
    if not named or len(gauges) != 1 or _STRANDS.search(text) or not _in_short_stitches(context, gauges[0]):
        return
    numbers = set.intersection(*({*weight.numbers} for weight, _ in named))
    allowed = {number for weight, _ in named for number in (*weight.numbers, *weight.also)}
    ranges = [one for one in table.stitch_ranges if one.number in allowed]
    if not numbers or not ranges:
        return
    low, high = min(one.sts[0] for one in ranges), max(one.sts[1] for one in ranges)
    there = gauges[0].per_cm * 4 * CM_IN_AN_INCH
    tight = there > high * table.far.factor and 0 not in allowed and not _TIGHT.search(text)
    if not tight and there * table.far.factor >= low:
        return
    word = max(named, key=lambda one: len(one[0].word))[0].word
    yield context.finding_at(
        "gauge-unlike-yarn",
        gauges[0].span,
        found=f"{there:.0f}",
        expected=f"{low}–{high}",
        word="DK" if word == "dk" else word,
        related=(Related(_place(text, word, zones), "the yarn"),),
    )


def _place(text: str, word: str, zones: list[Span]) -> Span:
    """Where the yarn's weight stands in the materials."""
    form = expression(regex.escape(word, literal_spaces=True).replace(" ", r"[ -]?"), regex.I)
    found = next((match for zone in zones if (match := form.search(text, zone.start, zone.end))), None)
    return Span(*found.span()) if found is not None else zones[0]


def _in_short_stitches(context: Context, gauge: Gauge) -> bool:
    """Whether the gauge counts single crochet or the like: by its own word, else by what the rows are made of."""
    if gauge.stitch is not None:
        forms = {
            form.lower()
            for rule in context.book.stitches.stitches
            if rule.key in _SHORT
            for form in (rule.uk if context.terms.terms == "uk" else rule.us)
        }
        return gauge.stitch in forms
    kinds: Counter[str] = Counter()
    for row in context.ledger.rows:
        if row.first.made is not None:
            kinds.update(row.first.made.by_kind)
            kinds["space"] += sum(row.first.made.spaces.values())
    return bool(kinds) and kinds.most_common(1)[0][0] in _SHORT and kinds["space"] * 20 < kinds.total()
