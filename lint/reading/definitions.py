"""Reads the pattern's own list of abbreviations and the stitches that it defines."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from itertools import pairwise

import regex

from lint.expression import Expression, expression
from lint.lexicon import Lexicon
from lint.loops import hangs_free
from lint.pattern import Abbreviation
from lint.place import Place, TargetKind
from lint.reading.clauses.reader import all_read, read_inside
from lint.reading.definedways import read_options
from lint.reading.measure import measure
from lint.reading.words.listentries import Entry
from lint.reading.words.onestitch import one_stitch_name
from lint.reading.words.shapingnames import recipe_beside
from lint.reading.words.stream import Stream, Vocabulary
from lint.rulebook import Rulebook
from lint.source import Span
from lint.tree import PLAIN, Chain, Group, Remark, Skip, Special, Step, Turn, Work, walk

_PLACE = r"(?:place|st|stitch|sp|space|loop|ch|dc|sc|tr)s?"
_A_PLACE = (
    rf"(?:{_PLACE}|shell|lp|ch(?:ain)?[- ](?:\d+[- ])?(?:sp|space|lp|loop)s?)"  # where the row is to tell it, too
)
_TOLD = r"(?:indicated|stated|specified|named|given|designated|shown)"
_PLACE_TAIL = expression(
    r"\s*,?\s*(?:all\s+|worked\s+|made\s+)?(?:in|into|around)\s+(?:the\s+)?(?:(?:same|one|next|an?|indicated|stated|specified|named|given|designated)\s+)*"
    rf"(?:{_PLACE}(?:\s*(?:,|or)\s*(?:the\s+)?(?:{_PLACE}|shell))*\s*{_TOLD}?"
    rf"|{_A_PLACE}(?:\s*(?:,|or)\s*(?:the\s+)?{_A_PLACE})*\s+{_TOLD}"
    rf"|(?<={_TOLD}\s){_A_PLACE}(?:\s*(?:,|or)\s*(?:the\s+)?{_A_PLACE})*)\s*$",
    regex.IGNORECASE,
)
# "sl st in next ch-3 sp, ch 3, 3 dc in same sp": which space that is, the words before say
_SAME_AGAIN = expression(
    r"(?i)^(?:sl\s?st|slip\sst(?:itch)?|ss)\s(?:in(?:to)?|to)\s(?:the\s)?next\b.*\bin(?:to)?\s(?:the\s|that\s)?same\s(?:sp|space|lp|loop)$"
)
# "(dc, ch 1, dc), worked in the ch-1 sp of the corner below": the group, and where it goes
_WORKED_IN = expression(r"(?i)(?<=\))\s*,?\s*(?:worked|made)(?=\s+in(?:to)?\s)")
_OF_BELOW = expression(
    r"(?i)(?<=\bsp|\bspace)\s+of\s+the\s+(?:(?:corner|row|rnd|round)\s+below|(?:previous|last)\s+(?:corner|row|rnd|round))\s*$"
)
_COUNTS = expression(
    r"(?i)(?:\.\s+(?:the\s+)?(?:ch(?:ain)?\s?-?\s?\d+|\d+\s?ch)\s+at\s[^.;]*\bcounts?\s+as[^.;]*|[.;,]?\s*(?:\(counts? as[^()]*\)|counts? as[^(),;]*))$"
)  # a note at the end, or a sentence about the turning chain

# "V-st: V stitch, (1 tr, 1 ch, 1 tr) in same place", "Sh: a shell, that is 5 dc in next st": the name before the recipe
_NAME_FIRST = expression(
    r"(?i)^\s*(?:an?\s+)?(?P<name>(?:\p{L}[\p{L}-]*\s+)?(?:\p{L}-)?(?P<sort>stitch|st|shell|fan|group))\s*[,;]\s+(?:that is,?\s+|i\.e\.,?\s+)?(?=[(\[\d]|ch\s?\d)"
)

# "A cable is 4 sts.", "Each shell makes 5 sts." behind a recipe: what it comes to
_COMES_TO = expression(
    r"(?i)[.;]\s*(?:an?|one|each|every|the|this|it)\s+(?:\p{L}[\p{L}\d-]*\s+){0,2}?(?:is|has|makes?|(?P<uses>uses|takes|covers|is (?:worked|made) over))\s+(?P<number>\d{1,2})\s+(?:sts|stitches)(?:\s+wide)?\s*\.?\s*$"
)

# "JS = joining stitch", "ES: end st": the one stitch at either end of an overlay row (common practice, no source)
_EDGE_STITCH = expression(
    r"(?i)\s*(?:an?\s+|the\s+)?(?:join(?:ing|ed)?|end(?:ing)?|edge|border|start(?:ing)?|beginning|finishing)\s+(?:st|stitch)\b"
)

_IN_ITS_LIKE = expression(r"(?P<one>[\w-]+) (?:in|into|over) (?:an? |next )?(?P=one)")


@lru_cache(maxsize=256)
def _alone(word: str) -> Expression:
    return expression(rf"\b{regex.escape(word)}\b")


def is_talk(entry: Entry, known: frozenset[str], book: Rulebook) -> bool:
    """Whether a line under a list's heading only tells something: "Tip: work loosely.", "How to read this page: …"."""
    if not known.isdisjoint(entry.forms):
        return False
    if any(form in book.layout.talk_words for form in entry.forms):
        return True
    recipe = expression(r"\d").search(entry.body) or any(
        word in entry.body.lower() for word in book.words.hand_movements
    )
    return not recipe and all(len(form.split()) > 3 for form in entry.forms)


_CHAIN_AT_START = expression(r"(?i)(?:ch(?:ain)?s?\s?-?\s?\d+|\d+\s?-?ch)\s+at\b")
# "Shape neck: sc in first 14 sts, turn.", "Row 1 A: sc in each ch": a row, or what it is for
_OF_PIECE = expression(r"(?i)(?:shap(?:e|ing)|divid(?:e|ing)|(?:rows?|rnds?|rounds?|rds?)\s?\d+\s+\p{L})\b")


# "Shell (sh): 5 dc in same sp. Beginning shell (beg sh): sl st to …": a name and a recipe of its own behind a full stop
_ANOTHER_TOLD = expression(
    r"[\w)]\.\s+\p{Lu}[^.:;()]{2,40}(?:\([^()]{1,20}\)\s*)?(?::|\s[=–-])\s+(?:[(\[]|\d|ch\b|sl\b|ss\b|[sdht]+c\b)"
)


def special_of(entry: Entry, lexicon: Lexicon, book: Rulebook) -> Special | None:
    """The stitch that an entry defines by its words, or None where it only explains an abbreviation."""
    lower = entry.body.lower()
    movements = [word for word in book.words.hand_movements if word in lower and _alone(word).search(lower)]
    name = _name(entry)
    if name in book.words.hand_movements or not lexicon.read(name):
        return None
    if _CHAIN_AT_START.match(name):
        return None  # "ch3 at start = dc": what a beginning chain counts as
    if _OF_PIECE.match(name):
        return None
    if lexicon.read(name)[0].kind in ("last", "first", "next", "edge_stitch"):
        return None  # "Last st: insert hook under both strands, …": how it is worked
    if _tells_pass(name, entry.body, lexicon):
        return None  # "RP: return pass - ch 1, *yo, pull through 2 lps; rep from * to end"
    if lexicon.read(name)[0].kind == "word" and (edge := _edge_stitch(name, entry, lexicon)) is not None:
        return edge
    if (turning := _turning_chain(name, entry, lexicon)) is not None:
        return turning
    kinds = [item.kind for item in lexicon.read(name)]  # an "inc tile" is no increase
    standard = kinds[0] in ("stitch", "prefix", "increase", "decrease") and "group_word" not in kinds
    if movements:
        if standard or lexicon.read(name)[0].kind in ("any_stitch",):
            return None  # a standard stitch explained
        if (between := _between_bars(name, entry, lower)) is not None:
            return between
        beginning = "beg" in name.lower() or expression(r"(?i)\s*(?:ch\s?\d|\d\s?ch)").match(entry.body) is not None
        return Special(
            name, entry.span, uses=_places_of_movements(lower, book), beginning=beginning and _of_beginning(name)
        )
    if _ANOTHER_TOLD.search(entry.body) is not None:
        return None  # where one recipe ends and the next begins was not seen
    body, told = entry.body, _COMES_TO.search(entry.body)
    body = body[: told.start()] if told is not None else body
    named = _NAME_FIRST.match(body)
    if named is not None and _is_own_name(named, name, body):
        body = " " * named.end() + body[named.end() :]
    if recipe := recipe_beside(lexicon.read(body)):  # "increase, 2 sc in the same stitch": one thing said twice
        start, end = recipe[0].start, recipe[-1].end
        body = " " * start + body[start:end]
    inner = expression(r"\((?P<in>ch[^()]*|[^()]*\d\s*(?:ch|dc|sc|tr|hdc)[^()]*)\)\s*\.?$").search(body)
    body = _WORKED_IN.sub(lambda found: " " * len(found[0]), body)
    plain = _OF_BELOW.sub("", _COUNTS.sub("", body.strip().rstrip(".")))
    plain = (plain if _SAME_AGAIN.search(plain) else _PLACE_TAIL.sub("", plain)).strip()
    start = entry.body_at + len(body) - len(body.lstrip())
    if inner and not expression(r"\W*(?:\d|ch\b|dc\b|sc\b|tr\b|hdc\b|skip)", regex.IGNORECASE).match(body):
        plain, start = inner["in"], entry.body_at + inner.start("in")
    if not expression(r"\d|\b(?:ch|one|two|three|sk|skip|miss)\b", regex.IGNORECASE).search(plain):
        return None  # a meaning, not a recipe
    steps = read_options(plain, start, lexicon) or ()
    worked = [step for step in walk(steps) if isinstance(step, (Work, Chain))]
    if not worked or not all_read(list(steps)):
        several = lexicon.read(name)[0].kind == "decrease" and _SEVERAL_TOGETHER.search(plain) is not None
        return Special(name, entry.span, uses=0) if several else None
    if told is not None and (measure(steps).uses if told["uses"] else measure(steps).makes) != int(told["number"]):
        return None
    if _IN_ITS_LIKE.fullmatch(name) and any(isinstance(step, Work) and step.undefined for step in worked):
        return None  # "Shell in shell: shell in ch-2 sp of shell" only tells where in it
    own = len(worked) > 1 and any(isinstance(step, Skip) for step in walk(steps)) or _shapes_more(name, worked, lexicon)
    if standard and not own:
        return None  # explained; but "Xdc: skip next st, dc in next st, dc in skipped st" is the pattern's own
    at: tuple[Place, ...] = ()
    if len(steps) == 1 and isinstance(steps[0], Group):
        at = tuple(place for place in steps[0].places if place.targets[0].kind is TargetKind.SPACE)
        steps = steps[0].items
    places = any(isinstance(step, (Work, Group)) and step.places for step in walk(steps)) or any(
        type(step).__name__ in ("Skip", "Either") for step in walk(steps)
    )
    places = places or hangs_free(steps)
    beginning = _of_beginning(name)
    if len(steps) == 1 and isinstance(steps[0], Work) and _counts_as_one(entry, lexicon):
        return Special(name, entry.span, beginning=beginning)  # "Bobble: 5 dc in one st", its closing left unsaid
    if _one_decrease(steps, beginning):
        if not _over_places(name, steps):
            return Special(name, entry.span, beginning=beginning)
        places = True
    return Special(name, entry.span, tuple(steps), False, beginning=beginning, places_itself=places, at=at)


def _as_what_it_begins(entry: Entry) -> bool:
    """ "Beginning cluster (beg cl): 2 ch, then as cl but with 2 tr only": one stitch, made as the one that it stands for."""
    bare = {form.lower().partition(" ")[2] for form in (*entry.forms, *entry.names)} - {""}
    alike = _MADE_AS.search(entry.body.lower())
    return alike is not None and any(alike["what"].startswith(name) for name in bare)


_MADE_AS = expression(r"\b(?:as|like|same as)\s+(?:(?:for|given|in|an?|the)\s+)*(?P<what>[\p{L}-]+(?: [\p{L}-]+)?)")
_SEVERAL_TOGETHER = expression(r"(?i)\b(?:[3-9]|three|four|five)\b[^,;.]*\btog(?:ether)?\b")


def _shapes_more(name: str, worked: list[Step], lexicon: Lexicon) -> bool:
    """ "inc: 3 sc in one st", "dec = sc3tog": the pattern's own, for the trade's are of two."""
    kind, one = lexicon.read(name)[0].kind, worked[0]
    if len(worked) > 1 or not isinstance(one, Work) or kind not in ("increase", "decrease"):
        return False
    return (one.together or 2 if kind == "decrease" else one.number.lone or 2) > 2


# "insert hook in the space before the next vertical bar", "under the horizontal strand between two bars"
_IN_A_GAP = expression(
    r"\b(?:in|into|under|through|beneath)\s+(?:(?:the|a|an|next|following)\s+)*(?:horizontal\s+(?:bar|strand|thread|loop)s?|(?:sp|space|gap|strand)\b[^,;.]*?\b(?:before|between|behind|after)\b)"
)
_INTO = expression(r"\b(?:in|into|under|through|beneath)\b")


def _between_bars(name: str, entry: Entry, lower: str) -> Special | None:
    """ "M1: insert hook in the space before next bar, yo and pull up a loop": a loop more, drawn up where no stitch stands.

    How many stitches it takes is not told where the loop is not left on the hook, or where the hook goes into more.
    """
    over = expression(r"\W*(?:yo|yoh|yrh|yarn over)\W*").fullmatch(lower)
    if over is None and not _IN_A_GAP.search(lower):
        return None
    drawn = expression(r"\b(?:draw|pull)\b[^,;.]*\b(?:loop|lp)\b").search(lower)
    if over is None and (drawn is None or len(_INTO.findall(lower)) != 1):
        return Special(name, entry.span, uses=0)
    return Special(name, entry.span, (Work(entry.span, "ftss"),), one_stitch=False, places_itself=True)


def _is_own_name(named: regex.Match, name: str, body: str) -> bool:
    """Whether a name before a recipe is the entry's own in other words: no "Corner: shell, ch 2, shell", which works two."""
    again = named["sort"].lower() in ("shell", "fan", "group") and named["sort"].lower() in body[named.end() :].lower()
    return named["name"][0].lower() == name[:1].lower() and not again


def _edge_stitch(name: str, entry: Entry, lexicon: Lexicon) -> Special | None:
    """ "ES = edge stitch (sc in both loops)", "ES = end stitch: dc, then cut the yarn": one stitch at either end of a row."""
    if not _EDGE_STITCH.match(entry.body) and not any(map(_EDGE_STITCH.fullmatch, entry.names)):
        return None
    words = lexicon.read(entry.body)
    stitches = [item for item in words if item.kind == "stitch" and item.value != "sl st"]
    several = len({item.value for item in stitches}) > 1 or any(
        item.number != 1 and behind.kind in ("stitch", "special", "any_stitch")
        for item, behind in pairwise(words)
        if item.kind == "number"
    )
    chained = any(item.kind == "chain" for item in words) and _YARN_CUT.search(entry.body) is None
    if several or chained:
        return None
    return Special(name, entry.span, (Work(entry.span, stitches[0].value if stitches else PLAIN),), one_stitch=False)


_YARN_CUT = expression(r"(?i)\b(?:cut|break|fasten(?:ing)?|join(?:ing)?|tails?)\b")

_ONE_OF_LEGS = ("bobble", "popcorn", "puff")  # a cluster may be a mere group: "3 dc in same sp" of a granny square


def _counts_as_one(entry: Entry, lexicon: Lexicon) -> bool:
    """Whether an entry's forms, or the name that its body begins with, are those of a stitch of several legs."""
    told = [lexicon.read(form) for form in entry.forms] + [lexicon.read(entry.body)[:3]]
    return any(
        item.kind == "one_stitch" and one_stitch_name(item.lower) in _ONE_OF_LEGS for words in told for item in words
    )


_PASSES = ("return_pass", "forward_pass")
_WORKED_OFF = expression(r"\b(?:rep(?:eat)?|times|twice|thrice|more|until|till?|across)\b")  # loop by loop


def _tells_pass(name: str, body: str, lexicon: Lexicon) -> bool:
    """Whether an entry tells how the loops of a Tunisian row are taken up or worked off: no stitch of the row."""
    told = [item for item in lexicon.read(body) if item.kind != "the"][:1]
    if told and told[0].kind in _PASSES:
        return True
    return lexicon.read(name)[0].kind in _PASSES and _WORKED_OFF.search(body.lower()) is not None


# "tch - turning chain (1 ch, does not count as a stitch)", "T: ch 2 to turn"
_TURNS = expression(
    r"(?i)\W*(?:the\s+)?(?:turn(?:ing)?\b|(?:ch(?:ain)?s?\s?-?\s?\d+|\d+\s?ch(?:ain)?s?)\s(?:to|and|for)\s(?:the\s)?turn(?:ing)?\b)[^.;]*\W*"
)
_ITS_CHAIN = expression(r"(?i)\b(?:ch(?:ain)?s?\s?-?\s?\d|\d+\s?ch(?:ain)?s?\b)[^()]*")


def _turning_chain(name: str, entry: Entry, lexicon: Lexicon) -> Special | None:
    """A word that the list gives for the turning chain, with its length and with whether it counts."""
    told = _TURNS.fullmatch(entry.body) or lexicon.read(name)[0].kind == "turning_chain"
    chain = _ITS_CHAIN.search(entry.body) if told else None
    if chain is None:
        return None
    steps = read_inside(Stream(lexicon.read(chain[0], entry.body_at + chain.start()), Vocabulary()))
    kept = tuple(step for step in steps if not isinstance(step, (Remark, Turn)))
    if len(kept) != 1 or not isinstance(kept[0], Chain):
        return None
    return Special(name, entry.span, kept, one_stitch=False, beginning=True)


def is_turning_chain(special: Special) -> bool:
    """Whether a word of the list is the turning chain."""
    return special.beginning and len(special.items) == 1 and isinstance(special.items[0], Chain)


_NEXT_PLACES = expression(
    r"\b(?:next|following)\s+(?:(?P<n>\d+|[a-z]+)\s+)?(?:sts?|stitch(?:es)?|places?|[a-z]{1,3}c|tr|ch|chs)\b"
)
_AGAIN = expression(r"\b(?:rep(?:eat)?|times|twice|thrice|more)\b")


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
    if expression(r"\b(?:skip|sk|miss)\b").search(body) or again and (sum(each) > 1 or in_repeat):
        return 0
    return sum(each)


def begun_alike(specials: list[Special], entries: list[Entry]) -> list[Special]:
    """ "beg-cl (beginning cluster)" beside "cl (3-dc cluster)": whichever of its names is used, it begins that stitch."""
    forms = {entry.span: entry.forms for entry in entries}
    plain = {form: one.name for one in specials if not one.beginning for form in forms[one.span]}
    whole = {one.name for one in specials if not one.items and one.uses == 1}  # of several legs, and one stitch
    told = {entry.span: entry for entry in entries}
    named = []
    for one in specials:
        if one.beginning and plain.get(one.plain_name) in whole and _as_what_it_begins(told[one.span]):
            one = replace(one, items=())
        if one.beginning and plain.get(one.plain_name) != one.plain_name:
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


def _over_places(name: str, steps: tuple[Step, ...]) -> bool:
    """Whether a decrease takes places of its own: "A: sc2tog", "M: 3 sc together"; "cl: dc3tog" is a cluster in one place."""
    works = [step for step in steps if isinstance(step, Work)]
    return not works[0].places and (works[0].stitch in ("sc", "hdc") or len(name) == 1)


def _name(entry: Entry) -> str:
    """The shortest form names the stitch; "picot" keeps its own name, for it is known as a place too."""
    forms = [form for form in entry.forms if form]
    loop = any(form.endswith((" loop", " lp")) for form in forms)  # "p lp (picot loop)"
    if not loop and any(
        "picot" in form for form in [*forms, *(name.lower() for name in entry.names), entry.body[:12].lower()]
    ):
        return "picot"
    singular = [form for form in forms if not (form.endswith("s") and form[:-1] in forms)]
    return (singular or forms)[0]


def abbreviation_of(entry: Entry) -> Abbreviation:
    """The entry as the pattern's tree keeps it."""
    body = Span(entry.body_at, entry.body_at + len(entry.body))
    return Abbreviation(entry.forms, entry.body, entry.span, body)
