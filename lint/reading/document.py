"""From a pattern's text to its tree: the only module that knows the order of the reading stages."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

import regex

from lint.lexicon import Lexeme, Lexicon
from lint.madeonce import made_once
from lint.pattern import Abbreviation, Label, Part, Pattern, Row
from lint.place import Which
from lint.reading import definitions, listentries
from lint.reading.audience import canonical, size_places
from lint.reading.borrowing import with_borrowed
from lint.reading.chainnotes import countings
from lint.reading.clauses import Reading, read_row
from lint.reading.colourwork import figures_explained
from lint.reading.firstuse import with_first_uses
from lint.reading.headings import begins_work
from lint.reading.houseletters import house_letters
from lint.reading.layout import Layout, LayoutReader, PartText, RowText
from lint.reading.likework import as_another_piece, is_work, label_in_vain, vain_number
from lint.reading.linestops import with_line_stops
from lint.reading.piecewords import PIECE_WORDS
from lint.reading.prose import running, unbroken, unwrapped
from lint.reading.rings import ring_words
from lint.reading.stream import Stream, Vocabulary
from lint.reading.terms import Terms, find_terms
from lint.rulebook import AbbreviationFile, Rulebook, StitchFile
from lint.source import SourceText, Span
from lint.tree import (
    Evenly,
    FastenOff,
    Group,
    Join,
    JoinYarn,
    Repeat,
    Special,
    Turn,
    Unread,
    Work,
    walk,
)

# what a row says and no stitch's definition does
_ROW_WORDS = regex.compile(
    r"(?i)\brep(?:eat)? from|\bfasten off|\bin each (?:st|stitch|sc|dc|hdc|tr|htr|ch|sp)s? (?:across|around|to)\b|\bjoin\b(?! to last)|,? turn\.?$"
)
_BOTH_SIDES = regex.compile(r"(?i)\b(?:other|opposite|second) side\b")
_TOLD_OF = regex.compile(r"(?i)\bat\s+(?:the\s+)?end\s+of\s+(?:row|round|rnd|rd|r)\s*(?P<row>\d+)\b[^.;\d]*$")
_NAME = regex.compile(
    r"(?i)(?!\W*(?:row|rnd|round|rd|r\d))\W*(?P<name>[A-Za-z][\w-]*(?: [\w-]+){0,3}(?: ?\([\w -]+\))?)\s*[:=]\s"
)
_NO_DEFINITIONS = ("gauge", "size", "materials", "skill", "multiple", "colours")


def read_pattern(source: SourceText, book: Rulebook, wanted_terms: str = "auto") -> tuple[Pattern, Terms, Lexicon]:
    """The tree of a pattern, the terms it was read in, and the lexicon used."""
    layout = LayoutReader(source, book).read()
    terms = find_terms(source.text, book.layout, wanted_terms)
    plain = Lexicon(book, terms.terms)
    known = _known_forms(book.abbreviations, book.stitches)
    entries = _entries(source, layout, known, book)
    specials = _specials(entries, plain, book)
    lexicon = plain
    rings = ring_words(entries, source.text)
    letters = house_letters(entries, plain, source)
    if specials or rings or letters:
        own = [(form, "special", special.name) for form, special in _forms(entries, specials, _named_alone(book))]
        lexicon = Lexicon(book, terms.terms, [*own, *((form, "ring", form) for form in rings), *letters])
    sizes = layout.sizes
    vocabulary = Vocabulary(
        {special.name: special for special in specials},
        max(1, len(sizes)),
        _colours(source.text, book),
        *count_words(book),
        size_places(sizes),
        regex.search(
            r"(?i)\btunisian\b|\btss\b|(?<!\bthrough\s(?:\w+\s){0,3})\bloops on (?:the )?hook\b|\b(?:return|forward) pass\b",
            source.text,
        )
        is not None,
    )
    vocabulary = replace(vocabulary, figured=figures_explained(source.text))
    reader = _RowReader(source, lexicon, vocabulary)
    parts = tuple(part for part in (reader.part(item) for item in layout.parts) if part.rows)
    parts = with_first_uses(with_borrowed(parts))
    abbreviations = tuple(_listed(entries))
    pattern = Pattern(
        layout.title,
        layout.title_span,
        parts,
        tuple(layout.sections),
        abbreviations,
        tuple(specials),
        tuple(countings(source, layout, lexicon, vocabulary, book.words)),
        sizes,
        unplaced=tuple(_unplaced(source, layout, parts, entries, lexicon)),
        sizes_unnamed=layout.sizes_unnamed,
        facts={"spiral": any(word in source.text.lower() for word in book.layout.spiral_words)},
    )
    return pattern, terms, lexicon


def _unplaced(
    source: SourceText, layout: Layout, parts: tuple[Part, ...], entries: list[listentries.Entry], lexicon: Lexicon
) -> Iterator[Span]:
    """Lines that look like work and were taken for talk: three stitches and two numbers or more."""
    taken = [row.span for part in parts for row in part.rows]
    taken += [entry.span for entry in entries] + [section.span for section in layout.sections]
    for span in layout.prose:
        if any(other.start < span.end and span.start < other.end for other in taken):
            continue
        kinds = [lexeme.kind for lexeme in lexicon.read(source.slice(span), span.start)]
        stitches = sum(kind in ("stitch", "chain", "increase", "decrease", "special") for kind in kinds)
        if stitches >= 3 and kinds.count("number") >= 2:
            yield span


def count_words(book: Rulebook) -> tuple[frozenset[str], ...]:
    """The words behind, before and in printed counts, as the vocabulary of a stream wants them."""
    words = book.words
    return frozenset(words.count_tails), frozenset(words.count_openers), frozenset(words.count_units)


class _RowReader:
    def __init__(self, source: SourceText, lexicon: Lexicon, vocabulary: Vocabulary) -> None:
        self.source = source
        self.lexicon = lexicon
        self.vocabulary = vocabulary
        self.rounds_to = 0  # the number of the last round, where the part before is worked in rounds
        self.ended: set[int] = set()  # "Sizes … only" that the rows under it have outgrown

    def part(self, text: PartText) -> Part:
        numbers = [row.label.numbers for row in text.rows if row.label is not None and row.label.numbers]
        goes_on = self.rounds_to > 0 and numbers[:1] == [(self.rounds_to + 1,)]
        round_part = _round_by_words(self.source, text, goes_on)
        self.rounds_to = numbers[-1][-1] if round_part and numbers else 0
        rows = [row for row in (self.row(item, round_part) for item in text.rows) if row is not None]
        return Part(text.name, text.span, text.make, tuple(rows))

    def row(self, text: RowText, round_part: bool) -> Row | None:
        sizes = text.sizes
        if text.sizes_unknown:
            words = "the sizes that this is for are not among those of the pattern"
            at = text.label.span if text.label is not None else text.span
            unread = Unread(at, self.source.slice(at), words)
            reading, lexemes = self.read(text.span)
            label = text.label
            if label is None and not is_work(reading, lexemes):
                if not any(lexeme.kind in ("row", "round", "stitch", "chain") for lexeme in lexemes):
                    return None
                label = Label(at, "row", (), words="A line for some sizes")
            return Row(at.to(text.span), label, (unread, *reading.steps))
        reading, lexemes = self.read(text.span, sizes)
        if text.gate and (text.gate in self.ended or self._speaks_for_all(text, reading)):
            self.ended.add(text.gate)
            sizes = None
        vain = label_in_vain(lexemes) if text.label is None else None
        if vain is not None:
            span = Span(text.span.start, lexemes[vain].start)
            kind, number = vain_number(lexemes[:vain]) or ("row", 0)
            text.label = Label(span, kind, (number,) if number else (), words=self.source.slice(span).strip())
        elif text.label is None and as_another_piece(reading, self.source.slice(text.span)):
            text.label = Label(reading.steps[0].span, "row", (), words="The piece worked as another")
        if text.label is None:
            if self._named(self.source.slice(text.span)):
                return self.named_row(text)
            if not is_work(reading, lexemes):
                return None
            return Row(text.span, None, tuple(reading.steps), reading.stated, sizes)
        label = text.label
        if label.kind == "either":
            label = replace(label, kind="round" if round_part else "row")
        steps = tuple(reading.steps)
        stated = reading.stated
        if stated is not None and self.vocabulary.sizes > 1 and stated.series:
            rows = {len(label.at(size)) for size in range(self.vocabulary.sizes)}
            if self.vocabulary.sizes not in rows:
                stated = stated.over_sizes(self.vocabulary.sizes)
            if stated.series and len(stated.series) not in rows:  # neither one for each size nor one for each row
                words = self.source.slice(stated.span)
                steps = (Unread(stated.span, words, f"the count has {len(stated.series)} figures"), *steps)
        if stated is not None and self._of_another_row(text, label, stated.span.start):
            stated = None
        if label.unclear:
            words = self.source.slice(label.span)
            steps = (Unread(label.span, words, "the numbers are not one for each size"), *steps)
        return Row(label.span.to(text.span), label, steps, stated, sizes)

    def _of_another_row(self, text: RowText, label: Label, at: int) -> bool:
        """Whether the count at a place is told of another row than the label's last: "At the end of Row 10: 60 dc"."""
        told = _TOLD_OF.search(self.source.text, text.span.start, at)
        lasts = {label.at(size)[-1:] for size in range(self.vocabulary.sizes)}
        return told is not None and bool(label.numbers) and (int(told["row"]),) not in lasts

    def _named(self, words: str) -> bool:
        """Whether a line begins with a name and a sign, "Edging: …"; a size's name is none, "Small: Ch 21 (for medium ch 23)"."""
        name = _NAME.match(words) if not begins_work(words) else None
        return name is not None and canonical(name["name"]) not in self.vocabulary.size_names

    def named_row(self, text: RowText) -> Row | None:
        """ "Edging: Ch 1, sc in each st across." is a row; "Picot: ch 3, sl st in 3rd ch from hook" only defines."""
        match = regex.match(r"\W*(?P<name>[^:=(]*[^\s:=(])[^:=]*[:=]", self.source.slice(text.span))
        if match is None or match["name"].lower() in self.vocabulary.specials:
            return None
        reading, lexemes = self.read(Span(text.span.start + match.end(), text.span.end), text.sizes)
        steps = tuple(reading.steps)
        if any(isinstance(step, JoinYarn) for step in steps) and not any(isinstance(step, Work) for step in steps):
            if set(match["name"].lower().split()) & set(PIECE_WORDS):
                return Row(
                    text.span, None, steps, reading.stated, text.sizes
                )  # "Second side of neck: skip 10 sts, join"
        ends = any(isinstance(step, (Repeat, Turn, Join, FastenOff, Evenly)) for step in walk(steps))
        runs = any(place.which is Which.EACH for s in walk(steps) if isinstance(s, (Work, Group)) for place in s.places)
        if not (ends or runs) or not is_work(reading, lexemes):
            return None
        joins = any(isinstance(step, Join) for step in steps)
        at = Span(text.span.start + match.start("name"), text.span.start + match.end("name"))
        label = Label(at, "round" if joins else "row", (), words=match["name"])
        return Row(text.span, label, steps, reading.stated, text.sizes)

    def _speaks_for_all(self, text: RowText, reading: Reading) -> bool:
        """Whether a gate has ended unsaid: the row gives its number or its count for sizes that the gate shuts out."""
        out = [size for size in range(self.vocabulary.sizes) if text.sizes is not None and size not in text.sizes]
        numbers = [item.number for item in reading.stated.items] if reading.stated is not None else []
        listed = [number for number in numbers if len(number.values) > 1]
        labelled = text.label is not None and bool(text.label.by_size)
        return any(number.at(size) is not None for number in listed for size in out) or (
            labelled and any(text.label.at(size) for size in out)
        )

    def read(self, span: Span, sizes: tuple[int, ...] | None = None) -> tuple[Reading, list[Lexeme]]:
        lexemes = with_line_stops(self.lexicon.read(self.source.slice(span), span.start), self.source)
        return read_row(Stream(lexemes, replace(self.vocabulary, gate=sizes or ()))), lexemes


def _round_by_words(source: SourceText, part: PartText, goes_on: bool) -> bool:
    """Whether a part labelled "R1", "1)" is worked in rounds: a ring, a join, a spiral, both sides of a chain.

    `goes_on`: its numbers go on from rounds of the part before.
    """
    words = " ".join(source.slice(row.span).lower() for row in part.rows[:6])
    first = next((i for i, row in enumerate(part.rows) if row.label is not None), 0)
    worked = [
        row for i, row in enumerate(part.rows[:6]) if row.label is not None or i < first
    ]  # no seam told after them
    joins = " ".join(source.slice(row.span).lower() for row in worked)
    later = " ".join(
        source.slice(row.span).lower() for row in worked if row.label is not None and row is not worked[first]
    )
    turned = regex.search(r"(?<!\bnot |n't |without )\bturn(?:ing)?\b(?! ch)", later) is not None
    if turned and not regex.search(r"\bjoin|\bs(?:l )?st? (?:in|to|into) ", later):
        return False  # a half circle begins in a ring, too
    if goes_on or worked and _BOTH_SIDES.search(source.slice(worked[0].span)):
        return True
    if regex.search(r"\b(?:in|into|make|magic)\s.{0,12}\b(?:mr|ring|circle|loop)\b|\bas rounds\b", words):
        return True
    if regex.search(r"\bjoin\b|\bsl st (?:in|to) (?:first|top)", joins):
        return True
    return bool(regex.search(r"(?i)spiral|continuous round", source.text)) and "turn" not in words


@made_once
def _known_forms(abbreviations: Mapping[str, AbbreviationFile], stitches: StitchFile) -> frozenset[str]:
    forms = {form.lower() for listed in abbreviations.values() for rule in listed.abbreviations for form in rule.forms}
    for rule in stitches.stitches:
        forms.update(form for form in (*rule.us, *rule.uk) if " " not in form.replace("sl st", "") and len(form) <= 6)
    return frozenset(forms | {"sl st", "ss", "rnd", "rnds", "st", "sts", "sp", "sps", "ch", "chs"})


def _entries(source: SourceText, layout: Layout, known: frozenset[str], book: Rulebook) -> list[listentries.Entry]:
    found: list[listentries.Entry] = []
    listed = False
    for section in layout.sections:
        if section.key in ("abbreviations", "specials"):
            span = section.span
            if section.key == "specials":  # "Special stitch – Front post double crochet (FPdc): …"
                span = Span(section.span.start, section.span.end)
            some = listentries.entries(unwrapped(source.slice(span)), span.start, known)
            found += [entry for entry in some if not definitions.is_talk(entry, known, book)]
            listed = listed or section.key == "abbreviations"
    for span in running(source, layout.prose):
        opened = next((s for s in layout.sections if s.heading.start >= span.start and s.heading.end <= span.end), None)
        if opened is not None and opened.key in _NO_DEFINITIONS:
            continue  # "Tension: 24 tr and 12 rows to 10 cm" defines no stitch
        if opened is not None and opened.key == "notes":
            span = Span(min(opened.span.start, span.end), span.end)  # "Notes: V-st = (dc, ch 1, dc) in one place."
        words = unbroken(source.slice(span))
        inside = any(
            s.key in ("abbreviations", "specials") and s.span.start <= span.end and span.start <= s.span.end
            for s in layout.sections
        )
        if inside or _ROW_WORDS.search(words):
            continue  # "Edging: Ch 1, sc in each st across, fasten off." works a row
        some = listentries.entries(words, span.start, known)
        for stop in regex.finditer(r"\.\s+(?=[A-Za-z][\w-]*(?: [\w-]+)?(?: ?\([^)]{1,8}\))?\s*[:=])", words):
            some += listentries.entries(words[stop.end() :], span.start + stop.end(), known)
        real = [entry for entry in some if known.intersection((*entry.forms, entry.body.strip(" .").lower()))]
        if not listed and len(real) >= 3:
            found += real  # a list without a heading
        else:
            found += [entry for entry in some if _defines(entry, book)]
    return found


def _defines(entry: listentries.Entry, book: Rulebook) -> bool:
    """A line of prose that defines a stitch: "Shell: 5 tr into the place stated.", "A shell is 5 tr into one st."."""
    rings = book.words.words["ring"]  # "MR, ch 2 (does not count)" begins a piece
    if any(
        len(form.split()) > 3
        or form.lower() in rings
        or form in ("note", "notes", "size", "gauge", "hook", "yarn", "materials")
        for form in entry.forms
    ):
        return False
    if any(f" {word} " in f" {entry.body.lower()} " for word in book.words.hand_movements):
        return True
    return (
        regex.match(
            r"(?i)\W*(?:work\s+)?\(?\s*(?:ch\s?\d|\d+\s?(?:dc|sc|tr|hdc|htr|ch|dtr)|(?:dc|sc|tr|hdc|yo|yrh|insert)\b"
            r"|(?:sk|skip|miss)\s+(?:the\s+)?(?:next|first|1|one|2|two)\b[^,;.]{0,20}[,;])",
            entry.body,
        )
        is not None
    )


def _specials(entries: list[listentries.Entry], lexicon: Lexicon, book: Rulebook) -> list[Special]:
    found: dict[str, Special] = {}
    for entry in entries:
        if not entry.forms or not entry.forms[0]:
            continue
        special = definitions.special_of(entry, lexicon, book)
        if special is not None and (special.name not in found or not found[special.name].items):
            found[special.name] = special
    return definitions.begun_alike(list(found.values()), entries)


def _forms(
    entries: list[listentries.Entry], specials: list[Special], named: frozenset[str]
) -> list[tuple[str, Special]]:
    """Every printed form of each special stitch; of those `named` by the trade also the one without "stitch" ("puff")."""
    by_span = {special.span: special for special in specials}
    by_name = {special.name: special for special in specials}
    forms: dict[str, Special] = {}
    for entry in entries:
        special = by_span.get(entry.span)
        if special is None:
            special = next((by_name[form] for form in entry.forms if form in by_name), None)
        if special is None:
            continue
        listed = [*entry.forms]
        for name in entry.names:
            listed += listentries.expand(name)
        if special.name == "picot":
            listed += ["picot", "picots"]
        for form in listed:
            if not form or len(form) > 40:
                continue
            forms.setdefault(form, special)
            if not form.endswith("s"):
                forms.setdefault(form + "s", special)
            bare = regex.sub(r"(?i)[- ]st(?:itch(?:es)?|s)?$", "", form)
            if bare.lower() in named:
                forms.setdefault(bare, special)
                forms.setdefault(bare + "s", special)
            if "-st" in form or " st" in form:
                forms.setdefault(regex.sub(r"([- ])st\b", r"\1sts", form), special)
                forms.setdefault(regex.sub(r"([- ])st\b", r"\1stitch", form), special)
                forms.setdefault(regex.sub(r"([- ])st\b", r"\1stitches", form), special)
    return list(forms.items())


def _named_alone(book: Rulebook) -> frozenset[str]:
    """What the trade calls stitches of many legs without the word "stitch": puff, bobble, shell…"""
    return frozenset((*book.words.words["one_stitch"], *book.words.words["group_word"]))


def _listed(entries: list[listentries.Entry]) -> list[Abbreviation]:
    return [definitions.abbreviation_of(entry) for entry in entries]


def _colours(text: str, book: Rulebook) -> frozenset[str]:
    """Colour letters and names that the materials declare: "A (oat)", "MC (charcoal)", "color B"; and common names."""
    found = {match[1].lower() for match in regex.finditer(r"\b(MC|CC\d?|[A-H])\b\s*(?=[(,:=]|and\b)", text)}
    found |= {match[1].lower() for match in regex.finditer(r"(?i)\bcolou?r\s+([A-H])\b", text)}
    if lines := regex.findall(
        r"(?im)^.*\b(?:yarn|cotton|wool|acrylic|colou?rs?)\b.*$", text
    ):  # "Black [B] and Natural [N]"
        found |= {
            letter.lower() for letter in regex.findall(r"(?<=\p{Ll} )[\[(]([A-HJKN-RT-WYZ])[\])]", "\n".join(lines))
        }
    if regex.search(r"\bCC\d?\b", text):  # "MC black, CC white": a contrast colour, and so a main one
        found |= {match[0].lower() for match in regex.finditer(r"\b(?:MC|CC\d?)\b", text)}
    return frozenset(found).union(book.words.colour_names)
