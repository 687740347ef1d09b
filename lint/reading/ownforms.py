"""What a pattern explains itself: the entries of its lists and its prose, its own stitches, and every form of their names."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

from lint.expression import expression
from lint.lexicon import Lexicon
from lint.madeonce import made_once
from lint.reading import definitions
from lint.reading.lines.layout import Layout
from lint.reading.page.prose import running, unbroken, unwrapped
from lint.reading.words import listentries
from lint.rulebook import AbbreviationFile, Rulebook, StitchFile
from lint.source import SourceText, Span
from lint.tree import Special

# what a row says and no stitch's definition does
_ROW_WORDS = expression(
    r"(?i)\brep(?:eat)? from|\bfasten off|\bin each (?:st|stitch|sc|dc|hdc|tr|htr|ch|sp)s? (?:across|around|to)\b|\bjoin\b(?! to last)|,? turn\.?$"
)
# "Left side: sc in first 14 sts, turn. (14 sc)": a row under a name of its own
_WORKS_ROW = expression(
    r"(?i)[^.]*(?:,? turn$|\b(?:in|into|of|over|across) (?:the )?(?:first \d+|(?:next|last) \d{2,3}) (?:sts|stitches|sc|dc|hdc|htr|tr)\b"
    r"|\bto (?:the )?last \d+ |\bleav(?:e|ing)\b(?![^.]*\b(?:loop|lp)s?\b)[^.]*\bunworked)"
)
_MEANING = expression(r"(?i)\s*(?:(?:make|work)\s+)?(?:an?\s+)?(?P<name>\p{L}+)(?:\s+(?:st|stitch))?\s*\.?")
_TILE = expression(r"(?i)\b(?:tile|block)s?$")
_PARAGRAPH = expression(r"\n[ \t\r]*\n\s*\S")  # ends, and another begins
_NO_DEFINITIONS = ("gauge", "size", "materials", "skill", "multiple", "colours")


@made_once
def known_forms(abbreviations: Mapping[str, AbbreviationFile], stitches: StitchFile) -> frozenset[str]:
    """The trade's own short forms, in lower case."""
    forms = {form.lower() for listed in abbreviations.values() for rule in listed.abbreviations for form in rule.forms}
    for rule in stitches.stitches:
        forms.update(form for form in (*rule.us, *rule.uk) if _short(form))
    return frozenset(forms | {"sl st", "ss", "rnd", "rnds", "st", "sts", "sp", "sps", "ch", "chs"})


def _short(form: str) -> bool:
    """Whether a form of a stitch is a short one: "dc", and the "d c" of old leaflets."""
    spaced = all(len(letters) <= 2 for letters in form.split())
    return len(form) <= 6 and (spaced or " " not in form.replace("sl st", ""))


# where a sentence begins that may define something: "…. Shell: 5 dc", "…. To make a bobble (bo): …"
_DEFINES_BEHIND = expression(
    r"\.\s+(?=(?i:to (?:make|work) an? )?[A-Za-z][\w-]*(?: [\w-]+)?(?: ?\([^)]{1,8}\))?\s*[:=])"
)
_TELLS_WHAT = (
    r"(?:An?|Each)\s[\"'“‘]?[\w-]+[\"'”’]?\s(?:is|means)\s"  # "…. A space is a chain of 2 and a dc in the next dc."
)
_TELLS_BEHIND = expression(rf"\.\s+(?={_TELLS_WHAT})(?P<told>[^.]*(?:\.(?=\d)[^.]*)*)")
_NOTE_NUMBER = expression(
    r"(?im)^[ \t]*(?:\d{1,2}[.)]|[•*-])[ \t]+(?=(?:an?|each|the)\s[\"'“‘]?[\w-]+[\"'”’]?\s(?:is|=|means)\s)"
)  # "2. A corner is …"
_IN_ONE_PLACE = expression(r"(?i)\bin(?:to)?\s+(?:the\s+)?(?:same|one|next|indicated|st|stitch|sp|space)\b")
_MOST_SENTENCES = 12  # of one paragraph: beyond these, each is looked at by itself, and not all that stands behind it


def entries_of(source: SourceText, layout: Layout, known: frozenset[str], book: Rulebook) -> list[listentries.Entry]:
    """The entries of the pattern's lists, and the lines of its prose that define a stitch."""
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
        words = _NOTE_NUMBER.sub(lambda number: " " * len(number[0]), unbroken(source.slice(span)))
        inside = any(
            s.key in ("abbreviations", "specials") and s.span.start <= span.end and span.start <= s.span.end
            for s in layout.sections
        )
        some = listentries.entries(words, span.start, known)
        forms = sum(not known.isdisjoint(entry.forms) for entry in some)
        told = [
            entry
            for one in _TELLS_BEHIND.finditer(words)
            for entry in listentries.entries(one["told"], span.start + one.start("told"), known)
        ]
        if inside or _ROW_WORDS.search(words) and forms < 3:
            found += [entry for entry in told if inside and _defines(entry, book)]
            continue  # "Edging: Ch 1, sc in each st across, fasten off." works a row; "ch chain, dc …, FO fasten off" none
        stops = [stop.end() for stop in _DEFINES_BEHIND.finditer(words)]
        for stop, coming in pairwise([*stops, len(words)]):
            end = len(words) if len(stops) <= _MOST_SENTENCES else coming
            some += listentries.entries(words[stop:end], span.start + stop, known)
        some += told
        meant = known | {meaning for _, meaning in _meanings(book.abbreviations)}  # "X - single crochet", "X - sc"
        real = {
            entry.span for entry in some if known.intersection(entry.forms) or entry.body.strip(" .").lower() in meant
        }
        gauge = any(
            s.key == "gauge" and s.span.start <= span.start and span.end <= s.span.end
            for s in layout.sections
            if not _PARAGRAPH.search(source.text, s.heading.end, span.start)
        )
        if not listed and len(real) >= 3:
            found += [
                entry for entry in some if entry.span in real or _defines(entry, book)
            ]  # a list without a heading
        else:  # "12 dc and 8 rounds to 10 cm (4 in)" under its heading defines nothing
            some = [entry for entry in some if not gauge or _IN_ONE_PLACE.search(entry.body)]
            meanings = _meanings(book.abbreviations) if listed else frozenset()  # beside the list, no list of its own
            explained = {
                entry.span
                for entry in some
                if any((form, entry.body.strip(" .").lower()) in meanings for form in entry.forms)
            }
            found += [entry for entry in some if entry.span in explained or _defines(entry, book)]
    return found


@made_once
def _meanings(abbreviations: Mapping[str, AbbreviationFile]) -> frozenset[tuple[str, str]]:
    """The trade's short forms, each with what it stands for, in lower case: "fpdc", "front post double crochet"."""
    rules = [rule for listed in abbreviations.values() for rule in listed.abbreviations]
    return frozenset((form.lower(), rule.meaning.partition(" (")[0].lower()) for rule in rules for form in rule.forms)


def _defines(entry: listentries.Entry, book: Rulebook) -> bool:
    """A line of prose that defines a stitch: "Shell: 5 tr into the place stated.", "A shell is 5 tr into one st."."""
    rings = book.words.words["ring"]  # "MR, ch 2 (does not count)" begins a piece
    if _WORKS_ROW.match(entry.body.partition(".")[0]) or any(
        len(form.split()) > 3
        or form.lower() in rings
        or form in ("note", "notes", "size", "gauge", "tension", "hook", "yarn", "materials")
        for form in entry.forms
    ):
        return False
    if any(f" {word} " in f" {entry.body.lower()} " for word in book.words.hand_movements):
        return True
    led = expression(r"(?i)\W*(?:sl\s?st|slip\sst(?:itch)?|ss)\b[^.;]*,\s*(?:ch\s?\d|\d+\s?ch)\b").match(entry.body)
    if led and any(form.lower().startswith("beg") or _TILE.search(form) for form in entry.forms[:1]):
        return True  # "Beginning shell: sl st to ch-2 sp, ch 3, dc, ch 2, 2 dc in same sp", "Tile: sl st in next ch-3 sp, ch 3, …"
    return (
        expression(
            r"(?i)\W*(?:work\s+)?\(?\s*(?:ch\s?\d|(?:an?\s)?chain\sof\s\d|\d+\s?(?:dc|sc|tr|hdc|htr|ch|dtr|(?:half |single |double |treble )+crochets?\b)|(?:dc|sc|tr|hdc|yo|yrh|insert)\b|(?:sc|h?dc|h?tr|dtr)\d?tog\b"
            r"|(?:sk|skip|miss)\s+(?:the\s+)?(?:next|first|1|one|2|two)\b[^,;.]{0,20}[,;])"
        ).match(
            entry.body,
        )
        is not None
    )


def specials_of(entries: list[listentries.Entry], lexicon: Lexicon, book: Rulebook) -> list[Special]:
    """The pattern's own stitches, each once."""
    found: dict[str, Special] = {}
    for entry in entries:
        if not entry.forms or not entry.forms[0]:
            continue
        special = definitions.special_of(entry, lexicon, book)
        if special is not None and (special.name not in found or not found[special.name].items):
            found[special.name] = special
    return definitions.begun_alike(list(found.values()), entries)


def forms_of(
    entries: list[listentries.Entry], specials: list[Special], named: frozenset[str]
) -> list[tuple[str, Special]]:
    """Every printed form of each special stitch; of those `named` by the trade also the one without "stitch" ("puff")."""
    by_span = {special.span: special for special in specials}
    by_name = {special.name: special for special in specials}
    forms: dict[str, Special] = {}
    for entry in entries:
        special = by_span.get(entry.span)
        if special is None:
            meant = listentries.expand(entry.body)  # "sp(s) - space(s)", and elsewhere "Space: ch 2, skip 2 sts, …"
            special = next((by_name[form] for form in (*entry.forms, *meant) if form in by_name), None)
        if special is None:
            continue
        listed = [*entry.forms]
        for name in entry.names:
            listed += listentries.expand(name)
        meaning = _MEANING.fullmatch(entry.body)
        if meaning is not None and meaning["name"].lower() in named:  # "MB make bobble", and "MB: 5 dc in one st, …"
            listed.append(meaning["name"].lower())
        if special.name == "picot":
            listed += ["picot", "picots"]
        for form in listed:
            if not form or len(form) > 40:
                continue
            forms.setdefault(form, special)
            if not form.endswith("s"):
                forms.setdefault(form + "s", special)
            if form.endswith(("sh", "ch", "x", "z", "ss")):  # "13 open meshes"
                forms.setdefault(form + "es", special)
            bare = expression(r"(?i)[- ]st(?:itch(?:es)?|s)?$").sub("", form)
            if bare.lower() in named:
                forms.setdefault(bare, special)
                forms.setdefault(bare + "s", special)
            if "-st" in form or " st" in form:
                forms.setdefault(expression(r"([- ])st\b").sub(r"\1sts", form), special)
                forms.setdefault(expression(r"([- ])st\b").sub(r"\1stitch", form), special)
                forms.setdefault(expression(r"([- ])st\b").sub(r"\1stitches", form), special)
    return list(forms.items())


def named_alone(book: Rulebook) -> frozenset[str]:
    """What the trade calls stitches of many legs without the word "stitch": puff, bobble, shell…"""
    return frozenset((*book.words.words["one_stitch"], *book.words.words["group_word"]))
