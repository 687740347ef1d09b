"""Cuts a list of abbreviations or special stitches into its entries: form and meaning, however they are set apart."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import regex

from lint.expression import expression
from lint.remembered import remembered
from lint.source import Span

# "ch = chain", "ch – chain", "ch: chain", "ch .... chain", "ch   chain"
_SEPARATOR = expression(r"(?<!\s)\s*(?:=|:|\.{2,}|\s[-–—~]+\s|(?<![-–—])[-–—]+(?=\s)|—|\s\.\s|\t+|\s{2,})\s*")
# "chain (ch)", "space(s) (sp, sps)"; not "space(s)", nor "Ch 11 (13)", which is a number for each size
_PAREN = expression(
    r"(?P<a>[^()]{1,40}?(?:\(s\)|\(es\))?)\s*\((?=[^)]*\p{L})(?!e?s\))(?P<b>(?:[^()]|\(\w{0,3}\))*)\)\.?(?:\s(?:U\.?[SK]|British|American)\b[^()]*)?"
)
_A_IS = expression(
    r"(?i)^(?:(?:an?|each|the)\s+|(?=[\"“][\w-]+[\"”]\s))(?!(?:rnd|round|row|rd|piece|size)s?\s)[\"'“‘]?(?P<name>[\w-]+(?:\s+(?:stitch|st))?)[\"'”’]?(?:\s+\((?P<form>[\w-]{1,8}(?:\(s\))?)\))?\s+(?:(?:is|are)\s+worked(?:\s+as)?|is|are|=|means)\s+"
    r"(?P<body>\([^()]+\)(?=\.\s+(?-i:\p{Lu})).|.+?(?=\.\s+(?-i:An?|Each)\s[\w-]+\s(?:is|means)\s).|.+$)"  # what a bracket holds is all, whatever is said behind it
)


# "US terms:", "Written in UK terms." before a list in the same line
_LIST_LEAD = expression(
    r"(?i)\s*(?:all\s+)?(?:(?:the\s+|this\s+)?(?:pattern\s+(?:is\s+)?)?(?:written\s+)?(?:in|uses)\s+)?(?:(?:u\.?s\.?a?\.?|u\.?k\.?|american|british|standard|crochet)\s+)*(?:terms|terminology|abbreviations?|abbrev\.?|abbr\.?)(?:\s*\([^)]*\)|\s+used|\s+(?:are|is)\s+(?:all\s+)?(?:u\.?s\.?a?|u\.?k|american|british))?\s*[:!.–-]\s*(?=\S)"
    r"|(?i)\s*\((?:u\.?s\.?a?\.?|u\.?k\.?|american|british)(?:\s[^()]*)?\)\s*[:.–-]\s*(?=\S)"  # behind the heading "Abbr."
)
# "I use British terms: ch chain; …", "Also used (US): ch – chain, …": a sentence that leads to a list
_TALK_LEAD = expression(r"\s*(?P<words>\p{L}[^:;=–\n]{8,60}):\s+(?=\S)")
_FIRST_FORM = expression(r"\s*(?P<form>[\w()/ ]{1,12}?)\s*(?:[=–-]|,)\s")
_WORDED_LEAD = expression(
    r"(?i)\s*(?=[^\n:;,=]*\b(?:terms|terminology|abbreviations?|abbrevs?|used?|using|stitches)\b)[^\n:;,=]{6,60}:\s+(?=\S)"
)
_PLURAL = r"(?:\(e?s\))?"  # "st(s) stitch(es)"
_OR_OTHER = r"(?:/\p{L}+)?"  # "WS/RS wrong/right side"
_BARE_ENTRY = expression(
    rf"\s*(?P<one>\p{{L}}[\p{{L}}\d-]{{0,8}}{_OR_OTHER}{_PLURAL})(?: (?P<two>\p{{L}}+{_PLURAL}))?"
    rf"(?: (?P<rest>(?:\d ?)?\p{{L}}[\p{{L}}\d]*{_OR_OTHER}{_PLURAL}(?: (?:\d|\d?\p{{L}}[\p{{L}}\d]*{_OR_OTHER}{_PLURAL})){{0,4}}"  # "inc 2 dc in one st"
    r"(?: \([^()]{1,80}\))?))\s*"  # "dec decrease (by working dc2tog)"
)
_BARE_RECIPE = expression(  # "V-st (dc, ch 2, dc) in same place"
    r"\s*(?P<form>\p{L}[\p{L}-]{0,11}(?: st(?:itch)?)?) (?P<body>\((?=[^()]*[\d,])[^()]{4,80}\)(?: (?:all |worked )?in(?:to)? [\w -]{2,40})?)\s*"
)
# "… miss 2, 1 tr. 1 solid mesh (sm) = 3 tr": the sentence that a named stitch begins
_NEXT_NAMED = expression(
    r"(?<=[\w)])\.\s+(?=(?:(?:an?|one|1|each)\s)?\p{L}[\w-]*(?: [\w-]+){0,2} \([\w-]{1,8}(?: [\w-]{1,8})?\)\s*[=:])(?i)"
)
# "sp—space, rnd—round. Shell: (2 dc, ch 2, 2 dc) in same place.": the sentence that tells how one is worked
_NEXT_TOLD = expression(
    r"(?<=[\w)])\.\s+(?=\p{Lu}[\w-]*(?: [\w-]+){0,3}(?: \([\w-]{1,8}(?: [\w-]{1,8})?\))?(?::|\s=)\s)"
)


# "…, double crochet (dc). Also repeat (rep), …"
_ALSO = expression(r"(?<=\))\.\s+(?=(?:Also|And|Plus),?\s+\p{Ll})")
# "FPdc. Yarn over, insert hook from front to back …", "hdc2tog (half double crochet 2 together) [Yarn over, …": how a stitch of
# a known name is worked, or of one that is told in brackets
_TOLD_BEHIND = expression(
    r"(?P<form>[\w-]{2,15}(?: st)?)(?: \((?P<name>\p{L}[^()]{3,60})\))?\.?\s+(?=(?:[\[(]?(?:Yarn over|Yarn round|Yo|YO|Yrh|Yoh|Insert|Draw up)|Work \d)\b)"
)

_STROKES = r"(?<!\s)\s+(?:[/|•·\p{So}]{1,3}|\*(?=\s+\p{L}[\w()/]{0,11}(?: \p{L}{1,10}){0,2}\s*[=:–(-]))\s+"
_STOPS = r";\s+"
_OTHER_CUTS = (
    r",\s+|(?<=\))\s+and\s+(?=\p{L}[^(),]{1,40}\()",  # "…, round (rnd) and stitch (st)"
    r"(?<=\w{2}|\w\))\.\s+(?=[\w-]{1,8}(?: [\w-]{1,6})?(?:\(\w+\))?\s*[:=–,])",
)
_SEE = expression(r"(?i)\s*[(\[]\s*see\s[^()\[\]]*[)\]]\W*$")  # "loop stitch (see below)"


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
    text = expression(r"\n(?=[ \t]*+=)").sub(
        " ", text
    )  # "sc = single crochet, ch" / "= chain", cut by the page's width
    columns = len(expression(r"(?m)^[ \t]*(?:[•*–-][ \t]+)?[\w()]+(?: [\w()]+)?[ ]{2,}\p{L}").findall(text)) > 2
    for line in text.splitlines(keepends=True):
        stripped = line.strip()
        lead = _LIST_LEAD.match(line)
        lead = lead and _LIST_LEAD.match(line, lead.end()) or lead  # "Terms: US. Abbrev.: ch: chain • …"
        lead = lead or _worded_lead(line, known) or _talk_lead(line, known)
        body = " " * lead.end() + line[lead.end() :] if lead is not None else line
        plain = list(_bare_entries(body, offset + position, known))
        found += plain
        if stripped and not plain:
            for start, chunk in _chunks(body, known):
                entry = _entry(chunk, offset + position + start, known)
                if entry is None and columns:
                    entry = _narrow_entry(chunk, offset + position + start, known)
                if entry is not None:
                    found.append(entry)
        position += len(line)
    return found


def _talk_lead(line: str, known: frozenset[str]) -> regex.Match | None:
    """The words in front of a list in the same line: "What you'll need (US): ch, chain; hdc, half double crochet"."""
    lead = _TALK_LEAD.match(line)
    if lead is None or expression(r"\s[-–]\s|\s\s").search(lead["words"]):
        return None
    if not known.isdisjoint(lead["words"].lower().split()[:1]):
        return None
    rest = line[lead.end() :]
    cut = rest.split(";") if ";" in rest else expression(r",(?=[^,]*[=–-]\s)").split(rest)
    named = [form for piece in cut if (form := _FIRST_FORM.match(piece)) is not None]
    if len(named) < 2 or not all(not known.isdisjoint(expand(form["form"])) for form in named[:2]):
        return None
    return lead


def _worded_lead(line: str, known: frozenset[str]) -> regex.Match | None:
    """The words that lead to a list in the same line: three entries or more, the first of them of a known form."""
    lead = _WORDED_LEAD.match(line)
    rest = line[lead.end() :] if lead is not None else ""
    first = expression(r"(?P<form>\p{L}[\w-]{0,8}(?: st)?)(?:\s*[=–:·-])?\s+\(?\p{L}").match(rest)
    several = len(expression(r"[,;·•|.]").findall(rest)) > 1
    return lead if first is not None and several and first["form"].lower() in known else None


def _bare_entries(line: str, offset: int, known: frozenset[str]) -> Iterator[Entry]:
    """The entries of "ch chain, dc double crochet, sl st slip stitch": no sign between form and meaning, three at least."""
    pieces = [
        match
        for match in expression(r"(?:\([^()\n]{1,80}\)|[^,;.·•|●\n/*]|(?<! )[/*]|[/*](?! )|(?<![\w)] )\*)+").finditer(
            line
        )
    ]
    cut, recipes = [], 0
    for piece in pieces:
        match = _BARE_ENTRY.fullmatch(piece.group(0))
        recipe = _BARE_RECIPE.fullmatch(piece.group(0)) if match is None else None
        if recipe is not None:
            at, meant = offset + piece.start() + recipe.start("form"), recipe["body"]
            span = Span(at, offset + piece.start() + recipe.end("body"))
            cut.append(Entry(expand(recipe["form"]), (), meant, span.end - len(meant), span))
            recipes += 1
            continue
        longer = match is not None and match["two"] and not known.isdisjoint(expand(f"{match['one']} {match['two']}"))
        form = f"{match['one']} {match['two']}" if longer else match["one"] if match is not None else ""
        meaning = (
            match["rest"] if longer else f"{match['two'] or ''} {match['rest']}".strip() if match is not None else ""
        )
        forms = expand(form)
        if meaning and not known.isdisjoint(forms):
            at = offset + piece.start() + len(piece.group(0)) - len(piece.group(0).lstrip())
            end = offset + piece.start() + len(piece.group(0).rstrip())
            cut.append(Entry(forms, (), meaning, end - len(meaning), Span(at, end)))
    if len(cut) - recipes >= 3 and len(cut) >= len(pieces) - 1:
        yield from cut


def _chunks(line: str, known: frozenset[str]) -> list[tuple[int, str]]:
    """A line cut at ";" or at commas where each piece is an entry of its own."""
    body = line.rstrip("\n")
    columns = _columns(body, known)
    if columns:
        return columns
    cut = [
        0,
        *sorted({match.end() for sign in (_NEXT_NAMED, _NEXT_TOLD, _ALSO) for match in sign.finditer(body)}),
        len(body),
    ]
    if len(cut) > 2:
        return [(start + at, piece) for start, end in pairwise(cut) for at, piece in _chunks(body[start:end], known)]
    strokes, stops = _cut(body, _STROKES, known), _cut(body, _STOPS, known)
    if len(stops) > len(strokes):
        strokes = []  # "ch = chain; …; BLO / FLO = back / front loop only"
    for pieces in (strokes, stops, *(_cut(body, cutter, known) for cutter in _OTHER_CUTS)):
        if pieces:
            joined: list[tuple[int, str]] = []
            held: int | None = None
            loose = sum(_is_form(piece, known) for _, piece in pieces) > 2  # "sc, hdc, dc, slst (slip stitch), …"
            for start, piece in pieces:
                if loose and _is_form(piece, known):
                    continue  # named, and not explained
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


def _cut(body: str, cutter: str, known: frozenset[str]) -> list[tuple[int, str]]:
    """A line cut at a sign, if most of the pieces are entries then; [] if they are not."""
    pieces, last = [], 0
    for match in expression(cutter).finditer(body):
        if _balanced(body[last : match.start()]):
            pieces.append((last, body[last : match.start()]))
            last = match.end()
    pieces.append((last, body[last:]))
    found = sum(_is_entry(piece, known) for _, piece in pieces)
    named = sum(_is_form(piece, known) for _, piece in pieces)
    return pieces if len(pieces) > 1 and found > 1 and 2 * (found + named) >= len(pieces) else []


def _columns(body: str, known: frozenset[str]) -> list[tuple[int, str]]:
    """The entries of a line set in two columns: "Ch = Chain      Rnd = Round", "ch   chain      dc   double crochet"."""
    cells = [(match.start(), match.group(0)) for match in expression(r"\S+(?:\s\S+)*").finditer(body)]
    if len(cells) == 2 and all(expression(r"\S\s*[=:–]\s*\S").search(cell) for _, cell in cells):
        return cells
    named = [any(form in known for form in expand(cell)) for _, cell in cells]
    if len(cells) == 4 and named[0] and named[2]:
        (first, _), (second, words), (third, _), (fourth, last) = cells
        return [(first, body[first : second + len(words)]), (third, body[third : fourth + len(last)])]
    return []


def _balanced(text: str) -> bool:
    return text.count("(") == text.count(")") and text.count("[") == text.count("]")


@remembered()
def _is_entry(piece: str, known: frozenset[str]) -> bool:
    piece = piece.strip(" .\t•*-")
    if (sentence := _A_IS.match(piece)) is not None and sentence["form"]:
        return True
    comma = expression(r"([^\s,]+(?: [^\s,]+)?),\s+[\w(\[*]").match(piece)
    if comma and any(form in known for form in expand(comma[1])):
        return True
    if _SEPARATOR.search(piece):
        left = _SEPARATOR.split(piece, 1)[0]
        return 0 < len(left) <= 40
    paren = _PAREN.fullmatch(piece)
    if paren is None or any(form in known for side in ("a", "b") for form in expand(paren[side])):
        return paren is not None
    short = all(len(paren[side].split()) <= 3 for side in ("a", "b"))  # "popcorn (pc)", not "ch 1 to close (eye made)"
    return short and not expression(r"\b\d+\b").search(piece)


def _is_form(piece: str, known: frozenset[str]) -> bool:
    """Whether a piece is an abbreviation that the trade knows, and nothing else."""
    return piece.strip(" .\t").lower() in known


_OTHER_FORM = expression(r"\s*(?:,|/(?!\w{2,}\b(?<=inc))|\bor\b)\s*")


@remembered()
def expand(form: str) -> tuple[str, ...]:
    """ "st(s)" and "sp, sps" and "st/s" written out, in lower case."""
    forms: list[str] = []
    for piece in _OTHER_FORM.split(form.strip().strip(".")):
        piece = piece.strip().strip("._*").lower().replace("’", "'")  # "**V-st**" in bold
        if not piece:
            continue
        match = expression(r"(.+?)\s?\((s|es)\)").fullmatch(piece)
        if match:
            forms += [match.group(1), match.group(1) + match.group(2)]
        else:
            forms.append(piece)
    return tuple(forms)


# "sl st slip stitch": the longest form of a column, with one space behind it
_NARROW = expression(
    rf"\s*(?P<form>\p{{L}}+{_PLURAL}(?: st{_PLURAL})?) (?P<body>\p{{L}}+(?: \p{{L}}+){{0,3}}{_PLURAL})\s*"
)


def _narrow_entry(chunk: str, at: int, known: frozenset[str]) -> Entry | None:
    """The entry of a column that its form fills to the last space."""
    lead = len(chunk) - len(chunk.lstrip(" \t•*·-–"))
    chunk, at = chunk[lead:], at + lead
    match = _NARROW.fullmatch(chunk)
    forms = expand(match["form"]) if match is not None else ()
    if match is None or known.isdisjoint(forms) or match["form"][0].lower() != match["body"][0].lower():
        return None
    return Entry(
        forms, (), match["body"], at + match.start("body"), Span(at + match.start("form"), at + match.end("body"))
    )


def _only_names(text: str, known: frozenset[str]) -> bool:
    """Whether a list goes on with two short forms of the trade or more, one behind the other."""
    pieces = [piece.strip(" .").lower() for piece in text.split(",")]
    return len(pieces) > 1 and all(piece in known for piece in pieces[:2])


def _entry(chunk: str, at: int, known: frozenset[str]) -> Entry | None:
    lead = len(chunk) - len(chunk.lstrip(" \t•*·-–"))
    text = _SEE.sub("", chunk[lead:].rstrip())
    at += lead
    if not text:
        return None
    span = Span(at, at + len(text))
    sentence = _A_IS.match(text)
    if sentence:
        forms = (*expand(sentence["form"] or ""), sentence["name"].lower())
        return Entry(forms, (sentence["name"],), sentence["body"], at + sentence.start("body"), span)
    told = _TOLD_BEHIND.match(text)
    if told is not None and (told["name"] or told["form"].lower() in known):
        names = (told["name"],) if told["name"] else ()
        forms = (*expand(told["form"]), *(form for name in names for form in expand(name)))
        return Entry(forms, names, text[told.end() :], at + told.end(), span)
    match = _SEPARATOR.search(text)
    paren = _PAREN.fullmatch(text)
    if match is not None and paren is not None and match.start() > paren.start("b"):
        match = None  # "dec (decrease: sc next 2 sts tog)"
    if match is None:
        comma = expression(r"([^\s,]+(?: [^\s,]+)?),\s+").match(text)  # "ch, chain"
        known_form = comma is not None and any(form in known for form in expand(comma[1]))
        match = expression(r",\s+").search(text, comma.end(1)) if comma is not None and known_form else None
        if match is not None and _only_names(text[match.end() :], known):
            return None  # "sc, inc, dec, ch": names, and none of them explained
    known_left = match is not None and any(form in known for form in expand(text[: match.start()]))
    known_left = known_left or match is not None and match.start() == 1 and text[0].isalpha()  # "A - decrease (2 sc …)"
    if match and 0 < match.start() <= 60 and (known_left or not (paren and "=" not in text and ":" not in text)):
        left, right = text[: match.start()], text[match.end() :]
        whole = expression(r"(?i)(?:all|each|every)\s+(?P<name>\w+?)s?\s*").fullmatch(left)
        left = f"{whole['name']}(s)" if whole is not None else left  # "All fans: 7 dc"
        left = expression(r"(?i)(?:how )?to (?:make|work) an? ").sub("", left, count=1)  # "To make a space: …"
        right_at = at + match.end()
        named = expression(r"(?P<a>.+?)\s*\((?P<b>[^()]+(?:\(\w{1,2}\))?)\)").fullmatch(left)
        if named and named["b"].lower() not in ("s", "es"):  # "Popcorn (pc): …"
            return Entry(expand(named["b"]) + expand(named["a"]), (named["a"],), right, right_at, span)
        left_forms = expand(left)
        right_forms = expand(right.rstrip("."))
        if (
            right_forms
            and all(form in known for form in right_forms)
            and (not any(form in known for form in left_forms) or len(left) > 4 >= len(right))  # "Treble = tr"
            and len(right) <= 24
            and len(left) > len(right)  # "X = sc" is the other way round
        ):
            return Entry(right_forms, (left,), left, at, span)  # "Chain = ch"
        nested = _SEPARATOR.search(right)  # "V-st(s)  V-stitch(es): (1 tr, 1 ch, 1 tr) …"
        if nested and nested.start() <= 40 and len(right) - nested.end() > 8 and not expression(r"\W*\d").match(right):
            name = right[: nested.start()]
            return Entry(left_forms + expand(name), (name,), right[nested.end() :], right_at + nested.end(), span)
        return Entry(left_forms, (), right, right_at, span)
    if paren:
        a, b = paren["a"], paren["b"]
        a_forms, b_forms = expand(a), expand(b)
        a_known, b_known = (any(form in known for form in forms) for forms in (a_forms, b_forms))
        if b_known and not (a_known and len(a) <= len(b)) or not a_known and len(b) < len(a):  # "tr (treble)"
            return Entry(b_forms, (a,), a, at, span)
        return Entry(a_forms, (b,), b, at + paren.start("b"), span)
    return None
