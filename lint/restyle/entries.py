"""Which lines are entries of the pattern's own abbreviation list, cut into their forms and their meaning.

Prose stands near a list and under the same heading ("Tip: work loosely."), and a heading may have stitches defined
below it.  What is an entry is told by its form, which is a known one or one that the rows use, by the block of lines it
stands in, and by a meaning that is no sentence where the list's others are none.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from lint.expression import expression
from lint.pattern import Abbreviation
from lint.restyle.ground import Ground
from lint.source import Span

_SIGN = expression(r"\s+[-–—=~]+\s+|\s*[=:]\s+|\s{2,}")
# how a stitch is worked, which is no entry of the list though it may stand under the same heading
_RECIPE = expression(r"[.;]\s+\S|\b(?:ch|sl st|ss)\s\d|\b\d+\s?(?:ch|s?dc|sc|h?tr|hdc)\b")
_NEXT_SENTENCE = expression(r"(?<=\p{L}{2}|\))\.\s+(?=\p{Lu})")  # behind a meaning's own words
_MOST_MEANING = 5  # words, for a meaning that is no sentence


@dataclass(frozen=True, slots=True)
class Listed:
    """An entry cut up: the words of its forms and of its meaning, and the stretch without its closing stop.

    `block` is the number of the stretch of lines without a gap that it stands in; `bold` the mark that sets the forms
    in bold ("**"), which stands in the stretch and not in the forms.
    """

    forms: str
    meaning: str
    span: Span
    abbreviation_first: bool
    simple: bool  # its two sides and nothing else
    block: int = 0
    bold: str = ""

    @property
    def shown(self) -> str:
        """The forms with their marks."""
        return f"{self.bold}{self.forms}{self.bold}"


def listed(ground: Ground) -> list[Listed]:
    """The plain entries under the heading of the abbreviations, in the order of the text; stitches defined there apart."""
    sections = [section.span for section in ground.pattern.sections if section.key == "abbreviations"]
    defined = {special.span for special in ground.pattern.specials if special.items}
    entries = [
        entry
        for entry in ground.pattern.abbreviations
        if entry.span not in defined and any(span.start <= entry.span.start < span.end for span in sections)
    ]
    entries.sort(key=lambda entry: entry.span.start)
    known = _known_forms(ground)
    cut = [
        (_cut(ground, entry, block, entry is entries[-1]), entry)
        for entry, block in zip(entries, _blocks(ground, entries), strict=True)
    ]
    both = [(one, entry) for one, entry in cut if one is not None]
    closing = _closing(ground, [one for one, _ in both])
    standard = {one for one, entry in both if any(form in known or _is_together(ground, form) for form in entry.forms)}
    told = {one for one, _ in both if _is_sentence(ground, one, closing)}
    home = {one.block for one in standard - told}
    return [
        one
        for one, entry in both
        if not expression(r"^\d|\d(?!(?:\d*)?tog)").search(one.forms)
        and (one.block in home or one in standard - told)
        and (one in standard or not (one in told or _RECIPE.search(one.meaning)) and _named(ground, one, entry))
    ]


def _known_forms(ground: Ground) -> frozenset[str]:
    """Every form of the trade's lists and of the house's, in lower case."""
    rules = ground.book.abbreviations[ground.terms.terms].abbreviations
    found = {form.lower() for rule in rules for form in rule.forms}
    for entry in ground.house.abbreviations:
        found |= {form.lower() for form in (entry.use, entry.several, *entry.replace)}
    return frozenset(found)


def _blocks(ground: Ground, entries: list[Abbreviation]) -> list[int]:
    """The block of each entry: a new one begins at a wider gap than the list's usual one, or behind a line of other words."""
    text = ground.source.text
    gaps = [text[one.span.end : other.span.start] for one, other in zip(entries, entries[1:], strict=False)]
    lines = [gap.count("\n") for gap in gaps]
    usual = max(1, Counter(lines).most_common(1)[0][0]) if lines else 1
    found, block = [], 0
    for index in range(len(entries)):
        if index and (lines[index - 1] > usual or expression(r"\n[^\n]*\p{L}[^\n]*\n").search(gaps[index - 1])):
            block += 1
        found.append(block)
    return found


def _closing(ground: Ground, entries: list[Listed]) -> bool:
    """Whether the list closes its lines with a full stop."""
    text = ground.source.text
    ends = [text[one.span.end : one.span.end + 2] for one in entries]
    ends = [end for end in ends if end in (".", ".\n") or end[:1] in ("", "\n")]
    return 2 * sum(end[:1] == "." for end in ends) > len(ends)


def _is_sentence(ground: Ground, one: Listed, closing: bool) -> bool:
    """Whether a line tells something, as no meaning of the list does: it is long, or alone closed by a full stop."""
    closed = ground.source.text[one.span.end : one.span.end + 2] in (".", ".\n")
    return len(one.meaning.split()) > _MOST_MEANING or closed and not closing


def _is_together(ground: Ground, form: str) -> bool:
    """Whether a form is a decrease that says its own number: dc2tog."""
    return expression(r"\p{L}+\d?tog").fullmatch(form) is not None and not _is_word(ground, form)


def _is_word(ground: Ground, form: str) -> bool:
    return all(lexeme.kind == "word" for lexeme in ground.lexicon.read(form))


def _named(ground: Ground, one: Listed, entry: Abbreviation) -> bool:
    """Whether an unknown form is one of the pattern's own: the rows use it, or it is clipped as no word is ("pm")."""
    forms = {form.lower() for form in entry.forms}
    used = any(lexeme.lower in forms for row in ground.rows for lexeme in row.lexemes)
    return used or expression(r"[aeiou]").search(one.forms.lower()) is None


def _cut(ground: Ground, entry: Abbreviation, block: int, last: bool) -> Listed | None:
    if entry.body is None:
        return None
    whole = entry.span
    text = ground.source.text
    run_in = ";" in text[text.rfind("\n", 0, whole.start) + 1 : whole.start]
    several = run_in and ";" in ground.source.slice(entry.body)  # "sp (space); ss (slip stitch), worked tightly"
    talk = _NEXT_SENTENCE.search(text, entry.body.start, whole.end) if not several else None
    end = talk.start() if talk is not None and last else whole.end  # "…; ss, slip stitch. UK terms."
    if text[whole.start : end].endswith(".") and not expression(r"\p{L}\.\p{L}\.$").search(text[whole.start : end]):
        end -= 1
    span = Span(whole.start, end)
    body_end = min(entry.body.end, end)
    meaning = text[entry.body.start : body_end].strip()
    before, after = text[span.start : entry.body.start], text[body_end:end]
    first = bool(before.strip())
    named = _SIGN.search(before.rstrip(" :=–—-")) if first else None
    if named is not None and named.start():  # "htr2tog - half treble 2 together: …": its name and its making explain it
        meaning = text[span.start + named.end() : end].strip()
        before, after = before[: named.end()], ""
    side = (before if first else after).strip()
    if side.startswith("(") and side.endswith(")"):
        side = side[1:-1]
    elif first and side.endswith("(") and after.strip() == ")":
        side, after = side[:-1], ""
    forms = expression(r"^[\s:=–—~.-]+|[\s:=–—~-]+$|[\s,]+$|\.{2,}$").sub("", side).strip(" ,")
    forms, meaning, bold = _unmarked(text[: span.start][-2:], forms, meaning)
    if bold and text[: span.start].endswith(bold) and not text[span.start :].startswith(bold):
        span = Span(span.start - len(bold), span.end)
    simple = 0 < len(forms) <= 24 and "\n" not in text[span.start : end] and bool(meaning)
    simple = simple and not several and (talk is None or last)
    return Listed(forms, meaning, span, first, simple and not (first and after.strip()), block, bold)


def _unmarked(ahead: str, forms: str, meaning: str) -> tuple[str, str, str]:
    """Forms and meaning without the mark that sets the forms in bold, and the mark: "**BLO** – …", "**BLO:** …"."""
    for mark in ("**", "__", "*", "_"):
        if forms.endswith(mark) and (ahead.endswith(mark) or forms.startswith(mark)):
            return forms.removesuffix(mark).removeprefix(mark), meaning, mark
        if ahead.endswith(mark) and meaning.startswith(mark):
            return forms, meaning.removeprefix(mark).strip(), mark
    return forms, meaning, ""
