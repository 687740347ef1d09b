"""Stitch names of the other country: every name in the text changed with its stitch kept, sc to dc and dc to tr.

All of the text is changed, notes and definitions too: a name left behind would be another stitch under the new terms.
Names (the title, yarns, pieces) are left.  "dc (US sc)" in a UK-terms text becomes "sc (UK dc)".
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

import regex

from lint.expression import expression
from lint.lexicon import Lexeme
from lint.restyle.edits import Edit, Kept, cased
from lint.restyle.ground import Ground
from lint.rulebook import Rulebook
from lint.source import Span

RULE = "terms-not-house"
_ENDINGS = ("", "s", "es", "'s")
_SPEAKS_OF_TERMS = r"terms?\b|terminology|abbreviations|stitch(?:es)?(?: names?)?\b|names\b|crochet terms?\b"


def edits(ground: Ground) -> Iterator[Edit]:
    """Every change that puts the text into the house's terms."""
    wanted, own = ground.house.terms, ground.terms.terms
    if wanted is None or wanted == own:
        return
    yield from (Edit(span, new, RULE, "terms") for span, new in _statements(ground))
    for lexeme in _stitches(ground):
        change = _change(ground, lexeme)
        if isinstance(change, list):
            yield from change


def kept(ground: Ground) -> Iterator[Kept]:
    """Stitch names that are left as they are, or do not come back when the terms are changed back; with the reason."""
    if ground.house.terms in (None, ground.terms.terms):
        return
    for lexeme in _stitches(ground, names=True):
        if ground.named(lexeme.span):
            yield Kept(lexeme.span, f"“{ground.words(lexeme)}” stands in a name")
        elif not isinstance(_change(ground, lexeme), list):
            yield Kept(lexeme.span, f"“{ground.words(lexeme)}” is not a {ground.terms.terms.upper()} name")
        elif (one_way := _one_way(ground, lexeme)) is not None:
            yield Kept(lexeme.span, one_way)


def mixed(ground: Ground) -> Span | None:
    """The first name in a row that is not in the pattern's own terms: nobody knows then what its names mean."""
    if ground.house.terms in (None, ground.terms.terms):
        return None
    rows = [row.row.span for row in ground.rows]
    for lexeme in _stitches(ground):
        in_row = any(span.start <= lexeme.start < span.end for span in rows)
        if in_row and "/" not in lexeme.text and not isinstance(_change(ground, lexeme), list):
            return lexeme.span
    return None


def statements(text: str, book: Rulebook) -> list[tuple[Span, str]]:
    """Words that name a country where a text tells its terms, each with the country: "US" in "US terms"."""
    found: dict[Span, str] = {}
    for us, uk in book.countries.names:
        for name, country in ((us, "us"), (uk, "uk")):
            word = rf"(?<![\w.])(?P<name>{regex.escape(name)})(?![\w.]*[\s-]*\d)(?!\w)"
            after = expression(rf"(?i){word}[^.\n\d]{{0,20}}?\b(?:{_SPEAKS_OF_TERMS})")
            before = expression(rf"(?i)\b(?:{_SPEAKS_OF_TERMS})[^.\n\d]{{0,25}}?{word}")
            below = expression(rf"(?im)^[^\w\n]*+(?:terms|terminology)\W*\n\s*{word}")
            for pattern in (after, before, below):
                found |= {Span(*match.span("name")): country for match in pattern.finditer(text)}
    return sorted(found.items(), key=lambda item: item[0].start)


def _statements(ground: Ground) -> Iterator[tuple[Span, str]]:
    counterpart = {name.lower(): pair for pair in ground.book.countries.names for name in pair}
    told = [
        span
        for span, country in statements(ground.source.text, ground.book)
        if country == ground.terms.terms and not _glosses(ground, span)
    ]
    told = [span for span in told if not ground.named(span) or _TELLS.match(ground.source.text, span.end)]
    for span in dict.fromkeys([*told, *_versions(ground)]):
        printed = ground.source.slice(span)
        us, uk = counterpart[printed.lower()]
        new = uk if ground.terms.terms == "us" else us
        yield span, new.lower() if printed.islower() else new


# a country's name that a title or the yarn may have is no statement: only "UK terms", "UK version"
_TELLS = expression(r"(?i)[\s-]+(?:crochet\s+|stitch\s+)?(?:terms?|terminology|version|edition)\b")


def _versions(ground: Ground) -> Iterator[Span]:
    """The country in a title, or in a line of its own at the head, that tells which version this is: "(UK)", "UK version"."""
    text, title = ground.source.text, ground.pattern.title_span
    if title is None:
        return
    sections = [section.heading.start for section in ground.pattern.sections if section.heading.start > title.end]
    head = min([*sections, *(row.row.span.start for row in ground.rows), len(text)])
    names = "|".join(regex.escape(pair[ground.terms.terms == "uk"]) for pair in ground.book.countries.names)
    version = r"[\s-]+(?:version|edition)"
    in_title = rf"(?i)[(\[]\s*({names})(?:{version})?\s*[)\]]|[-–—,:|]\s*({names})(?:{version})?\s*$"
    alone = rf"(?im)^[^\w\n]*+({names}){version}\W*$"
    for pattern, start, end in ((in_title, title.start, title.end), (alone, title.start, head)):
        for match in expression(pattern).finditer(text, pos=start, endpos=max(start, end)):
            yield Span(*next(match.span(group) for group in (1, 2) if group <= match.re.groups and match[group]))


def _glosses(ground: Ground, span: Span) -> bool:
    """Whether a stitch's name follows at once: "US sc" tells a name, not the terms of the text."""
    following = ground.lexicon.read(ground.source.text[span.end : span.end + 30], span.end)
    return bool(following) and following[0].kind in ("stitch", "prefix")


def _stitches(ground: Ground, names: bool = False) -> Iterator[Lexeme]:
    for lexeme in ground.document:
        rule = ground.book.stitch(_base_key(lexeme.value)) if lexeme.kind == "stitch" else None
        if rule is not None and rule.counted and (names or not ground.named(lexeme.span)):
            yield lexeme


def _base_key(key: str) -> str:
    key = key.removeprefix("FP").removeprefix("BP")
    return key[1:] if key.startswith("f") else key


def _change(ground: Ground, lexeme: Lexeme) -> list[Edit] | None:
    """The edits of one stitch's name; None where its words are not of the terms they stand in."""
    own, wanted = ground.terms.terms, ground.house.terms
    marker = _marker(ground, lexeme)
    country = marker[1] if marker is not None else own
    found = _form_in(ground.book, ground.source.slice(lexeme.span).lower(), country)
    if found is None:
        return None
    key, start, form = found
    to = wanted if country == own else own
    new = counterpart(ground.book, key, form, to)
    span = Span(lexeme.start + start, lexeme.start + start + len(form))
    printed = ground.source.slice(span)
    made = _smallest(span, printed, cased(new, printed))
    if marker is not None:
        made.insert(0, Edit(marker[0], marker[2], RULE, "terms"))
    return made


def _one_way(ground: Ground, lexeme: Lexeme) -> str | None:
    """A sentence where changing the terms back would not give the printed form again; None where it would."""
    own, wanted = ground.terms.terms, ground.house.terms
    found = _form_in(ground.book, ground.source.slice(lexeme.span).lower(), own)
    if found is None or wanted is None or paired(ground.book, found[0], found[2], own):
        return None
    new = counterpart(ground.book, found[0], found[2], wanted)
    back = counterpart(ground.book, found[0], new, own)
    return f"“{found[2]}” became “{new}”; changed back it would be “{back}”"


def _smallest(span: Span, old: str, new: str) -> list[Edit]:
    """Only the words that differ, so that line breaks and spaces inside a name stay."""
    before, after = old.split(), new.split()
    if len(before) == len(after):
        found, at = [], 0
        for one, other in zip(before, after, strict=True):
            at = old.index(one, at)
            if one != other:
                found.append(Edit(Span(span.start + at, span.start + at + len(one)), other, RULE, "terms"))
            at += len(one)
        return found
    return [Edit(span, new, RULE, "terms")]


def _marker(ground: Ground, lexeme: Lexeme) -> tuple[Span, str, str] | None:
    """A country's name straight before a stitch's: its place, the country, and what it becomes."""
    before = ground.source.text[max(0, lexeme.start - 16) : lexeme.start]
    for us, uk in ground.book.countries.names:
        for name, country, other in ((us, "us", uk), (uk, "uk", us)):
            match = expression(rf"(?i)(?<![\w.])({regex.escape(name)})(?:\s+(?:terms?|name))?\s*[:=]?\s*$").search(
                before
            )
            if match:
                start = lexeme.start - len(before) + match.start(1)
                return Span(start, start + len(name)), country, other.lower() if match[1].islower() else other
    return None


@lru_cache(maxsize=8)
def _printed_forms(forms: tuple[tuple[str, str], ...], shapes: tuple[str, ...]) -> dict[str, tuple[str, int, str]]:
    """Every printed name ("fpdcs", "front post double crochet"): its stitch, where its form begins, the form."""
    found: dict[str, tuple[str, int, str]] = {}
    for shape in shapes:
        before, after = shape.split("{}")
        for key, form in forms:
            for ending in _ENDINGS:
                found.setdefault(before + form + after + ending, (key, len(before), form))
    return found


def _form_in(book: Rulebook, words: str, terms: str) -> tuple[str, int, str] | None:
    """The stitch in a printed name: its key, where its form begins, the form; None where the terms have no such name."""
    rules = book.stitches
    forms = ((rule.key, form) for rule in rules.stitches if rule.counted for form in (rule.us, rule.uk)[terms == "uk"])
    made_of = (*rules.post.front, *rules.post.back, *rules.foundation, *rules.standing, *rules.long, *rules.backwards)
    table, flat = _printed_forms(tuple(forms), ("{}", *made_of)), expression(r"\s").sub(" ", words)
    if flat in table:
        return table[flat]
    for lead in (shape[:-2] for shape in made_of if shape.endswith(" {}")):  # "standing bpsc": made of two
        if flat.startswith(lead) and flat[len(lead) :] in table:
            key, start, form = table[flat[len(lead) :]]
            return key, start + len(lead), form
    return None


def counterpart(book: Rulebook, key: str, form: str, terms: str) -> str:
    """The form of a stitch in other terms that stands for a printed form; a name in full where it has no pair."""
    rule = book.stitch(key)
    there_forms = rule.us if terms == "us" else rule.uk
    pairs = next((pairs.forms for pairs in book.countries.pairs if pairs.stitch == key), None)
    if pairs is None:
        return there_forms[0]
    here, there = (1, 0) if terms == "us" else (0, 1)
    for pair in pairs:
        if pair[here] == form:
            return pair[there]
    if form in there_forms:
        return form  # "crab st" in both countries
    if form.endswith(" stitch"):  # its plural is "stitches"
        return next((pair[there] for pair in reversed(pairs) if pair[there].endswith(" stitch")), pairs[0][there])
    whole = len(max(form.split(), key=len)) > 5 and len(pairs) > 1
    return pairs[1 if whole else 0][there]


def paired(book: Rulebook, key: str, form: str, terms: str) -> bool:
    """Whether a form comes back when the terms are changed and changed back."""
    side = 0 if terms == "us" else 1
    rule = book.stitch(key)
    return (form in rule.us and form in rule.uk) or any(
        pairs.stitch == key and any(pair[side] == form for pair in pairs.forms) for pairs in book.countries.pairs
    )
