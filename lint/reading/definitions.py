"""Reads the pattern's own list of abbreviations and the stitches that it defines."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise

import regex

from lint.lexicon import Lexicon
from lint.pattern import Abbreviation
from lint.reading.clauses import all_read, read_inside
from lint.reading.stream import Stream, Vocabulary
from lint.rulebook import Rulebook
from lint.source import Span
from lint.tree import PLAIN, Chain, Group, Remark, Skip, Special, Step, Turn, Unread, Work, walk

# "ch = chain", "ch – chain", "ch: chain", "ch .... chain", "ch   chain"
_SEPARATOR = regex.compile(r"\s*(?:=|:|\.{3,}|\s[-–—~]+\s|[-–—]+(?=\s)|—|\s\.\s|\t+|\s{2,})\s*")
_PLACE_TAIL = regex.compile(
    r"\s*,?\s*(?:all\s+|worked\s+|made\s+)?(?:in|into|around)\s+(?:the\s+)?(?:(?:same|one|next|an?|indicated|stated|specified|named|given|designated)\s+)*(?:place|st|stitch|sp|space|ch|dc|sc|tr)s?"
    r"(?:\s*(?:,|or)\s*(?:the\s+)?(?:sp|space|st|stitch|shell|place)s?)*\s*(?:stated|named|indicated|given|specified|shown)?\s*$",
    regex.IGNORECASE,
)
_COUNTS = regex.compile(r"(?i)[.;,]?\s*(?:\(counts? as[^()]*\)|counts? as[^(),;]*)$")  # a note at the end
# "chain (ch)", "space(s) (sp, sps)"; not "space(s)", nor "Ch 11 (13)", which is a number for each size
_PAREN = regex.compile(r"(?P<a>[^()]{1,40}?(?:\(s\)|\(es\))?)\s*\((?=[^)]*\p{L})(?!e?s\))(?P<b>(?:[^()]|\(\w{0,3}\))*)\)\.?")
_A_IS = regex.compile(
    r"(?i)^(?:an?|each|the)\s+(?P<name>[\w-]+(?:\s+(?:stitch|st))?)\s+(?:is|are|=|means)\s+(?P<body>.+)$"
)


# "US terms:" before a list in the same line
_LIST_LEAD = regex.compile(
    r"(?i)\s*(?:(?:u\.?s\.?a?\.?|u\.?k\.?|american|british|standard|crochet)\s+)*(?:terms|terminology|abbreviations?|abbr\.?)(?:\s*\([^)]*\)|\s+used)?\s*[:–-]\s*(?=\S)"
)
_PLURAL = r"(?:\(e?s\))?"  # "st(s) stitch(es)"
_BARE_ENTRY = regex.compile(
    rf"\s*(?P<one>\p{{L}}[\p{{L}}\d-]{{0,8}}{_PLURAL})(?: (?P<two>\p{{L}}+{_PLURAL}))?"
    rf"(?: (?P<rest>(?:\d )?\p{{L}}+{_PLURAL}(?: \p{{L}}+{_PLURAL}){{0,3}}))\s*"  # "inc 2 dc in one st"
)
# "… miss 2, 1 tr. 1 solid mesh (sm) = 3 tr": the sentence that a named stitch begins
_NEXT_NAMED = regex.compile(
    r"(?<=[\w)])\.\s+(?=(?:(?:an?|one|1|each)\s)?\p{L}[\w-]*(?: [\w-]+){0,2} \([\w-]{1,8}\)\s*[=:])(?i)"
)


# "JS = joining stitch", "ES: end st": the one stitch at either end of an overlay row (common practice, no source)
_EDGE_STITCH = regex.compile(
    r"(?i)\s*(?:an?\s+|the\s+)?(?:join(?:ing|ed)?|end(?:ing)?|edge|border|start(?:ing)?|beginning|finishing)\s+(?:st|stitch)\b"
)


@dataclass(frozen=True, slots=True)
class Entry:
    """An entry of a list: its forms, and the words that explain them, with their offset in the source."""

    forms: tuple[str, ...]
    names: tuple[str, ...]
    body: str
    body_at: int
    span: Span


def entries(text: str, offset: int, known: frozenset[str]) -> list[Entry]:
    """All entries of an abbreviations or special-stitches section that starts at `offset`."""
    found: list[Entry] = []
    position = 0
    for line in text.splitlines(keepends=True):
        stripped = line.strip()
        lead = _LIST_LEAD.match(line)
        body = " " * lead.end() + line[lead.end() :] if lead is not None else line
        plain = list(_bare_entries(body, offset + position, known))
        found += plain
        if stripped and not plain:
            for start, chunk in _chunks(body, known):
                entry = _entry(chunk, offset + position + start, known)
                if entry is not None:
                    found.append(entry)
        position += len(line)
    return found


def _bare_entries(line: str, offset: int, known: frozenset[str]) -> Iterator[Entry]:
    """The entries of "ch chain, dc double crochet, sl st slip stitch": no sign between form and meaning, three at least."""
    pieces = [match for match in regex.finditer(r"[^,;.\n]+", line)]
    cut = []
    for piece in pieces:
        match = _BARE_ENTRY.fullmatch(piece.group(0))
        longer = match is not None and match["two"] and not known.isdisjoint(expand(f"{match['one']} {match['two']}"))
        form = f"{match['one']} {match['two']}" if longer else match["one"] if match is not None else ""
        meaning = (
            match["rest"] if longer else f"{match['two'] or ''} {match['rest']}".strip() if match is not None else ""
        )
        forms = tuple(expand(form))
        if meaning and not known.isdisjoint(forms):
            at = offset + piece.start() + len(piece.group(0)) - len(piece.group(0).lstrip())
            end = offset + piece.start() + len(piece.group(0).rstrip())
            cut.append(Entry(forms, (), meaning, end - len(meaning), Span(at, end)))
    if len(cut) >= 3 and len(cut) >= len(pieces) - 1:
        yield from cut


def _chunks(line: str, known: frozenset[str]) -> list[tuple[int, str]]:
    """A line cut at ";" or at commas where each piece is an entry of its own."""
    body = line.rstrip("\n")
    columns = _columns(body, known)
    if columns:
        return columns
    cut = [0, *(match.end() for match in _NEXT_NAMED.finditer(body)), len(body)]
    if len(cut) > 2:
        return [(start + at, piece) for start, end in pairwise(cut) for at, piece in _chunks(body[start:end], known)]
    for cutter in (r"\s+[/|•·♥]\s+", r";\s+", r",\s+", r"(?<=\w{2}|\w\))\.\s+(?=[\w-]{1,8}(?: [\w-]{1,6})?(?:\(\w+\))?\s*[:=–])"):
        pieces, last = [], 0
        for match in regex.finditer(cutter, body):
            if _balanced(body[last : match.start()]):
                pieces.append((last, body[last : match.start()]))
                last = match.end()
        pieces.append((last, body[last:]))
        if len(pieces) > 1 and sum(_is_entry(piece, known) for _, piece in pieces) >= max(2, (len(pieces) + 1) // 2):
            joined: list[tuple[int, str]] = []
            held: int | None = None
            for start, piece in pieces:
                if held is not None and _is_entry(piece, known):
                    start, piece, held = held, body[held : start + len(piece)], None  # "sp, sps (space, spaces)"
                elif held is None and piece.strip().lower() in known and not _is_entry(piece, known):
                    held = start
                    continue
                if joined and not _is_entry(piece, known):
                    before, words = joined[-1]
                    joined[-1] = (before, body[before : start + len(piece)])
                    del words
                else:
                    joined.append((start, piece))
            return joined
    return [(0, body)]


def _columns(body: str, known: frozenset[str]) -> list[tuple[int, str]]:
    """The entries of a line set in two columns: "Ch = Chain      Rnd = Round", "ch   chain      dc   double crochet"."""
    cells = [(match.start(), match.group(0)) for match in regex.finditer(r"\S+(?:\s\S+)*", body)]
    if len(cells) == 2 and all(regex.search(r"\S\s*[=:–]\s*\S", cell) for _, cell in cells):
        return cells
    named = [any(form in known for form in expand(cell)) for _, cell in cells]
    if len(cells) == 4 and named[0] and named[2]:
        (first, _), (second, words), (third, _), (fourth, last) = cells
        return [(first, body[first : second + len(words)]), (third, body[third : fourth + len(last)])]
    return []


def _balanced(text: str) -> bool:
    return text.count("(") == text.count(")") and text.count("[") == text.count("]")


def _is_entry(piece: str, known: frozenset[str]) -> bool:
    piece = piece.strip(" .\t•*-")
    comma = regex.match(r"([^\s,]+(?: [^\s,]+)?),\s+\w", piece)
    if comma and any(form in known for form in expand(comma[1])):
        return True
    if _SEPARATOR.search(piece):
        left = _SEPARATOR.split(piece, 1)[0]
        return 0 < len(left) <= 40
    paren = _PAREN.fullmatch(piece)
    if paren is None or any(form in known for side in ("a", "b") for form in expand(paren[side])):
        return paren is not None
    short = all(len(paren[side].split()) <= 3 for side in ("a", "b"))  # "popcorn (pc)", not "ch 1 to close (eye made)"
    return short and not regex.search(r"\b\d+\b", piece)


_OTHER_FORM = regex.compile(r"\s*(?:,|/(?!\w{2,}\b(?<=inc))|\bor\b)\s*")


def expand(form: str) -> list[str]:
    """ "st(s)" and "sp, sps" and "st/s" written out, in lower case."""
    forms: list[str] = []
    for piece in _OTHER_FORM.split(form.strip().strip(".")):
        piece = piece.strip().strip("._*").lower().replace("’", "'")  # "**V-st**" in bold
        if not piece:
            continue
        match = regex.fullmatch(r"(.+?)\s?\((s|es)\)", piece)
        if match:
            forms += [match.group(1), match.group(1) + match.group(2)]
        else:
            forms.append(piece)
    return forms


def _entry(chunk: str, at: int, known: frozenset[str]) -> Entry | None:
    lead = len(chunk) - len(chunk.lstrip(" \t•*·-–"))
    text = chunk[lead:].rstrip()
    at += lead
    if not text:
        return None
    span = Span(at, at + len(text))
    sentence = _A_IS.match(text)
    if sentence:
        return Entry(
            (sentence["name"].lower(),), (sentence["name"],), sentence["body"], at + sentence.start("body"), span
        )
    match = _SEPARATOR.search(text)
    paren = _PAREN.fullmatch(text)
    if match is None:
        comma = regex.match(r"([^\s,]+(?: [^\s,]+)?),\s+", text)  # "ch, chain"
        known_form = comma is not None and any(form in known for form in expand(comma[1]))
        match = regex.compile(r",\s+").search(text, comma.end(1)) if comma is not None and known_form else None
    known_left = match is not None and any(form in known for form in expand(text[: match.start()]))
    if match and 0 < match.start() <= 60 and (known_left or not (paren and "=" not in text and ":" not in text)):
        left, right = text[: match.start()], text[match.end() :]
        whole = regex.fullmatch(r"(?i)(?:all|each|every)\s+(?P<name>\w+?)s?\s*", left)
        left = f"{whole['name']}(s)" if whole is not None else left  # "All fans: 7 dc"
        right_at = at + match.end()
        named = regex.fullmatch(r"(?P<a>.+?)\s*\((?P<b>[^()]+(?:\(\w{1,2}\))?)\)", left)
        if named and named["b"].lower() not in ("s", "es"):  # "Popcorn (pc): …"
            return Entry(tuple(expand(named["b"])) + tuple(expand(named["a"])), (named["a"],), right, right_at, span)
        left_forms = expand(left)
        right_forms = expand(right.rstrip("."))
        if (
            right_forms
            and all(form in known for form in right_forms)
            and not any(form in known for form in left_forms)
            and len(right) <= 24
            and len(left) > len(right)  # "X = sc" is the other way round
        ):
            return Entry(tuple(right_forms), (left,), left, at, span)  # "Chain = ch"
        nested = _SEPARATOR.search(right)  # "V-st(s)  V-stitch(es): (1 tr, 1 ch, 1 tr) …"
        if nested and nested.start() <= 40 and len(right) - nested.end() > 8 and not regex.match(r"\W*\d", right):
            name = right[: nested.start()]
            return Entry(
                tuple(left_forms + expand(name)), (name,), right[nested.end() :], right_at + nested.end(), span
            )
        return Entry(tuple(left_forms), (), right, right_at, span)
    if paren:
        a, b = paren["a"], paren["b"]
        a_forms, b_forms = expand(a), expand(b)
        if any(form in known for form in a_forms) and not any(form in known for form in b_forms):
            return Entry(tuple(a_forms), (b,), b, at + paren.start("b"), span)
        if any(form in known for form in b_forms) or len(b) < len(a):
            return Entry(tuple(b_forms), (a,), a, at, span)
        return Entry(tuple(a_forms), (b,), b, at + paren.start("b"), span)
    return None


@lru_cache(maxsize=256)
def _alone(word: str) -> regex.Pattern:
    return regex.compile(rf"\b{regex.escape(word)}\b")


def is_talk(entry: Entry, known: frozenset[str], book: Rulebook) -> bool:
    """Whether a line under a list's heading only tells something: "Tip: work loosely.", "How to read this page: …"."""
    if not known.isdisjoint(entry.forms):
        return False
    if any(form in book.layout.talk_words for form in entry.forms):
        return True
    recipe = regex.search(r"\d", entry.body) or any(word in entry.body.lower() for word in book.words.hand_movements)
    return not recipe and all(len(form.split()) > 3 for form in entry.forms)


def special_of(entry: Entry, lexicon: Lexicon, book: Rulebook) -> Special | None:
    """The stitch that an entry defines by its words, or None where it only explains an abbreviation."""
    lower = entry.body.lower()
    movements = [word for word in book.words.hand_movements if word in lower and _alone(word).search(lower)]
    name = _name(entry)
    if name in book.words.hand_movements or not lexicon.read(name):
        return None
    if _EDGE_STITCH.match(entry.body) and lexicon.read(name)[0].kind == "word":
        named = next(
            (item for item in lexicon.read(entry.body) if item.kind == "stitch" and item.value != "sl st"), None
        )
        return Special(name, entry.span, (Work(entry.span, named.value if named else PLAIN),), one_stitch=False)
    standard = all(
        item.kind in ("stitch", "prefix", "increase", "decrease") for item in lexicon.read(name)[:1]
    ) and bool(lexicon.read(name))
    if movements:
        if standard or lexicon.read(name)[0].kind in ("any_stitch",):
            return None  # a standard stitch explained
        beginning = "beg" in name.lower() or regex.match(r"(?i)\s*(?:ch\s?\d|\d\s?ch)", entry.body) is not None
        return Special(
            name, entry.span, uses=_places_of_movements(lower, book), beginning=beginning and _of_beginning(name)
        )
    body = entry.body
    inner = regex.search(r"\((?P<in>ch[^()]*|[^()]*\d\s*(?:ch|dc|sc|tr|hdc)[^()]*)\)\s*\.?$", body)
    plain = _PLACE_TAIL.sub("", _COUNTS.sub("", body.strip().rstrip("."))).strip()
    start = entry.body_at + len(body) - len(body.lstrip())
    if inner and not regex.match(r"\W*(?:\d|ch\b|dc\b|sc\b|tr\b|hdc\b|skip)", body, regex.IGNORECASE):
        plain, start = inner["in"], entry.body_at + inner.start("in")
    if not regex.search(r"\d|\b(?:ch|one|two|three|sk|skip|miss)\b", plain, regex.IGNORECASE):
        return None  # a meaning, not a recipe
    options = _read_options(plain, start, lexicon)
    if options is None:
        return None
    steps = options
    worked = [step for step in walk(steps) if isinstance(step, (Work, Chain))]
    if not worked or not all_read(list(steps)):
        return None
    if standard and (len(worked) < 2 or not any(isinstance(step, Skip) for step in walk(steps))):
        return None  # explained; but "Xdc: skip next st, dc in next st, dc in skipped st" is the pattern's own
    if len(steps) == 1 and isinstance(steps[0], Group):
        steps = steps[0].items
    places = any(isinstance(step, (Work, Group)) and step.places for step in walk(steps)) or any(
        type(step).__name__ in ("Skip", "Either") for step in walk(steps)
    )
    beginning = _of_beginning(name)
    if _one_decrease(steps, beginning):
        return Special(name, entry.span, beginning=beginning)
    return Special(name, entry.span, tuple(steps), one_stitch=False, beginning=beginning, places_itself=places)


_NEXT_PLACES = regex.compile(
    r"\b(?:next|following)\s+(?:(?P<n>\d+|[a-z]+)\s+)?(?:sts?|stitch(?:es)?|places?|[a-z]{1,3}c|tr|ch|chs)\b"
)
_AGAIN = regex.compile(r"\b(?:rep(?:eat)?|times|twice|thrice|more)\b")


def _places_of_movements(body: str, book: Rulebook) -> int:
    """How many places the hand movements of a stitch take: "pull up a loop in next 2 sts" are two; 0 where it is unclear."""
    numbers = book.words.numbers
    found = list(_NEXT_PLACES.finditer(body))
    each = [int(one["n"]) if (one["n"] or "").isdigit() else numbers.get(one["n"], 1) for one in found]
    again = [one.start() for one in _AGAIN.finditer(body)]
    if not found or "same" in body and len(found) == 1 and each == [1]:
        return 1
    in_repeat = any(
        sign in body[: found[-1].start()] and any(at > found[0].start() for at in again) for sign in ("*", "(", "[")
    )
    if regex.search(r"\b(?:skip|sk|miss)\b", body) or again and (sum(each) > 1 or in_repeat):
        return 0
    return sum(each)


def begun_alike(specials: list[Special], entries: list[Entry]) -> list[Special]:
    """ "beg-cl (beginning cluster)" beside "cl (3-dc cluster)": whichever of its names is used, it begins that stitch."""
    forms = {entry.span: entry.forms for entry in entries}
    plain = {form: one.name for one in specials if not one.beginning for form in forms[one.span]}
    named = []
    for one in specials:
        if one.beginning and one.plain_name not in plain:
            bare = [replace(one, name=form).plain_name for form in forms[one.span]]
            begun = next((plain[form] for form in bare if form in plain), None)
            one = replace(one, name=f"beg {begun}") if begun is not None else one
        named.append(one)
    return named


def _of_beginning(name: str) -> bool:
    return name.lower().startswith(("beg", "start", "first"))


def _one_decrease(steps: tuple[Step, ...], beginning: bool) -> bool:
    """ "Cl: dc3tog", "Beg cl: ch 2, dc2tog in same sp": one stitch, however many legs it has."""
    works = [step for step in steps if not isinstance(step, (Remark, Chain))]
    chains = [step for step in steps if isinstance(step, Chain)]
    single = len(works) == 1 and isinstance(works[0], Work) and bool(works[0].together) and works[0].number.lone == 1
    single = single and all(place.number.lone == 1 for place in works[0].places)  # not "dc3tog over next 3 sts"
    return single and (not chains or beginning and len(chains) == 1 and steps[0] is chains[0])


def _name(entry: Entry) -> str:
    """The shortest form names the stitch; "picot" keeps its own name, for it is known as a place too."""
    forms = [form for form in entry.forms if form]
    if any("picot" in form for form in [*forms, *(name.lower() for name in entry.names), entry.body[:12].lower()]):
        return "picot"
    singular = [form for form in forms if not (form.endswith("s") and form[:-1] in forms)]
    return (singular or forms)[0]


def _read_options(text: str, start: int, lexicon: Lexicon) -> tuple[Step, ...] | None:
    """Steps of a definition; "…, or 2 dc in next ch-2 sp; dc in next dc" gives an Either and what follows."""
    from lint.tree import Either

    vocabulary = Vocabulary()
    whole = [
        step
        for step in read_inside(Stream(lexicon.read(text, start), vocabulary))
        if not isinstance(step, (Remark, Turn))
    ]
    if whole and all_read(whole):
        return tuple(whole)
    match = regex.search(r",?\s+or\s+(?=\d|ch|dc|tr|sc)", text)
    if match:
        first, rest = text[: match.start()], text[match.end() :]
        cut = rest.find(";")
        second, tail = (rest[:cut], rest[cut + 1 :]) if cut >= 0 else (rest, "")
        one = read_inside(Stream(lexicon.read(first, start), vocabulary))
        two = read_inside(Stream(lexicon.read(second, start + match.end()), vocabulary))
        after = read_inside(Stream(lexicon.read(tail, start + match.end() + cut + 1), vocabulary)) if tail else []
        span = Span(start, start + len(text))
        return (Either(span, (tuple(one), tuple(two))), *after)
    read = read_inside(Stream(lexicon.read(text, start), vocabulary))
    kept = [step for step in read if not isinstance(step, (Remark, Turn))]
    if any(isinstance(step, Unread) for step in walk(tuple(kept))):
        return None
    return tuple(kept)


def abbreviation_of(entry: Entry) -> Abbreviation:
    """The entry as the pattern's tree keeps it."""
    body = Span(entry.body_at, entry.body_at + len(entry.body))
    return Abbreviation(entry.forms, entry.body, entry.span, body)
