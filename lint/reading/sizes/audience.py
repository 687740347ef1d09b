"""Whom words speak to: "sizes M and L only", "for the two largest sizes", "all sizes except S", "2nd and 3rd sizes"."""

from __future__ import annotations

from dataclasses import dataclass

import regex

from lint.expression import expression
from lint.reading.sizes.sizenames import is_size_name
from lint.remembered import remembered

Sizes = tuple[int, ...]

# one name for all the ways to print a size
_CANON = (
    (r"\s*(?:months?|mos?|years?|yrs?)\b\.?", ""),
    (r"\bextra[ -]?", "x"),
    (r"\bsm(?:al)?l?\b|\bsmall\b", "s"),
    (r"\bmed(?:ium)?\b", "m"),
    (r"\bl(?:arge|ge|g)\b", "l"),
    (r"x[ -]?small\b", "xs"),
    (r"x[ -]?large\b", "xl"),
    (r"(?<=x)[ -](?=[sl]\b)", ""),
    (r"\bxxxl\b|\b3x(?:l)?\b", "3x"),
    (r"\bxxl\b|\b2x(?:l)?\b", "2x"),
    (r"\b([4-9])xl\b", r"\1x"),
    (r"\s*\([^()]*\)", ""),
)
_AND = expression(r"\s*(?:,\s*(?:and|&|or)\b|[,;&|]|\band\b|\bor\b|\+)\s*", regex.I)
_RANGE = expression(r"\s*(?:\bto\b|\bthrough\b|\bthru\b|[-–—])\s*", regex.I)
_NUMBER_WORDS = {"two": 2, "three": 3, "four": 4, "five": 5, "2": 2, "3": 3, "4": 4, "5": 5}
_ORDINALS = {"first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "last": 0}  # fmt: skip
_LEAD = expression(
    r"(?i)[\W_]*(?:(?:now|then|continue|cont|resume|proceed|work(?:ing)?|rejoin)\b\.?\s*)*(?P<for>(?:for|in|with)\b\s*)?(?:the\s+|both\s+(?!(?:the\s+)?(?:sizes?|ages?)\b))?"
)
_TAIL = expression(  # searched from the end on, for it stands there if anywhere
    r"(?ir)(?P<only>\s*,?\s*\bonly\b)?(?:\s*,?\s*(?:again|cont(?:inue)?|work|as\s+foll(?:ows)?|from\s+here)\b\.?)*[\s*_)\]#.:;|!=~…–—>→»-]*$"
)
_UP = r"(?:larger|bigger|greater|older|above|over)"
_DOWN = r"(?:smaller|lower|younger|below|under)"
_SIZES_BEHIND = r"(?:\s+sizes?)?"
_ONWARD = tuple(
    expression(rf"(?i){form}")
    for form in (
        rf"(?P<name>.+?)\s*(?:(?:and|&|or|\+)\s*(?:(?P<up>(?:all\s+)?(?:{_UP}|up(?:wards?)?))|(?:all\s+)?{_DOWN})|(?P<up>\+|\s+(?:up|on)wards?)){_SIZES_BEHIND}",
        r"from\s+(?:the\s+)?(?:sizes?\s+)?(?P<name>.+?)\s+(?P<up>up|on|(?:up|on)wards?)",
        r"up\s+to\s+(?:and\s+including\s+)?(?:the\s+)?(?:sizes?\s+)?(?P<name>.+)",
        rf"(?:all\s+)?(?:sizes?\s+)?(?P<beyond>(?P<up>{_UP})|{_DOWN})(?:\s+than)?\s+(?:the\s+)?(?:sizes?\s+)?(?P<name>.+)",
    )
)
_MAY_BE_ROWS = expression(r"(?i)(?:from|up\s+to)\s+\d+(?:\s+(?:up|on)(?:wards?)?)?")  # figures alone: "From 36 on -"
_RELATIVE = expression(r"(?i)(?:the\s+)?(?:smaller|larger|bigger|middle|in-between)\s+sizes")  # which, is not said
_NO_SIZES = expression(r"(?i)\bsize needed|\b(?:rows?|rnds?|rounds?|sts?|hooks?|yarn)\b")
_SIZE_WORD = expression(r"(?i)\b(?:sizes?|ages?)\b")
_AGE = expression(r"(?i)\b(?:months?|mths?|mos?|years?|yrs?)\b")
_EVERY = expression(r"(?i)(?:all|both|every)(?:\s+(?:the\s+)?(?:sizes?|ages?))?")
_OTHERS = expression(r"(?i)(?:all\s+)?(?:the\s+)?(?:other|remaining)\s+(?:sizes?|ages?)")
_EXCEPT = expression(
    r"(?i)(?:(?:all|every)\s+(?:the\s+)?(?:sizes?\s+)?)?(?:except(?:ing)?|but|excluding|other\s+than|(?:but\s+)?not|omit(?:ted)?|left\s+out)\s+(?:(?:for|in)\s+)?(?:the\s+)?(?P<names>.+)"
)


@dataclass(frozen=True, slots=True)
class Audience:
    """Whom words speak to: `sizes`, None where sizes are meant that can't be told."""

    sizes: Sizes | None
    every: bool = False
    others: bool = False  # those that the gate before shuts out
    sure: bool = False  # the word "size", "only" or "for" stands there; else names alone


UNKNOWN_SIZES = "which of the pattern's sizes this is for was not understood"  # why such a row is not worked


@remembered()
def canonical(name: str) -> str:
    """One name for a size however it is printed: "Medium" and "med" are m, "XXL" and "2XL" are 2x."""
    name = name.strip().lower()
    for form, to in _CANON:
        name = expression(form).sub(to, name)
    return " ".join(name.split()).strip(" .:")


def size_places(names: tuple[str, ...]) -> dict[str, int]:
    """The place of each size in the order printed, by its canonical name."""
    return {canonical(name): at for at, name in enumerate(names)}


def _plural(name: str) -> str:
    """ "babies" of "baby": a size may be spoken to as those who wear it."""
    return f"{name[:-1]}ies" if name.endswith("y") and name[-2] not in "aeiou" else f"{name}s"


class SizeWords:
    """Knows the sizes of one pattern by their names, their place in the order, and as a whole."""

    def __init__(self, names: tuple[str, ...], others: dict[str, int] | None = None) -> None:
        """`others`: what else the sizes are called."""
        self.number = len(names)
        called = {**(others or {}), **size_places(names)}
        self.index = {**{_plural(name): at for name, at in called.items() if len(name) > 3}, **called}

    def audience(self, words: str) -> Audience | None:
        """Whom words that stand before a colon, or alone, speak to; None where they speak to nobody."""
        lead = _LEAD.match(words)
        core = words[lead.end() :]
        tail = _TAIL.search(core)
        core, only = core[: tail.start()].strip(), tail["only"] is not None
        if core.count("(") > core.count(")") and tail[0].lstrip().startswith(")"):
            core += ")"  # "Size 1 (0-6 months)": the bracket is the name's own
        said = _SIZE_WORD.search(core) is not None
        if not core or core.count("(") != core.count(")"):
            return None
        everyone = tuple(range(self.number))
        if _EVERY.fullmatch(core) and (said or lead["for"]):
            return Audience(everyone, every=True, sure=True)
        if _OTHERS.fullmatch(core):
            return Audience((), others=True, sure=True)
        shut_out = _EXCEPT.fullmatch(core)
        if shut_out is not None:
            out = self.sizes_of(_bare(shut_out["names"]))
            return Audience(tuple(size for size in everyone if size not in out), sure=True) if out else None
        sizes = self.sizes_of(_bare(core))
        sure = said or only or lead["for"] is not None
        if not sure and _MAY_BE_ROWS.fullmatch(core):
            return None
        sure = sure or self._onward(_bare(core)) is not None
        if sizes is not None:
            return Audience(sizes, sure=sure)
        said = said or all(_AGE.search(piece) and is_size_name(piece) for piece in _AND.split(_bare(core)))
        speaks = said and (only or lead["for"]) and len(core.split()) <= 8 and not _NO_SIZES.search(core)
        return Audience(None, sure=True) if speaks or _RELATIVE.fullmatch(core) else None

    def sizes_of(self, words: str) -> Sizes | None:
        """The sizes that are named; None where any word is not a size's name."""
        told = self._told(words)
        if told is not None:
            return told
        if (onward := self._onward(words)) is not None:
            return onward
        found: list[int] = []
        spoken = expression(r"^([^()]+)\(([^()]+)\)$").match(words.strip())
        others = spoken is not None and all(self._named(piece) is not None for piece in _AND.split(spoken[2]))
        if spoken is not None and not others and self._named(spoken[1]):
            words = spoken[1]  # "1 (0-6 months)": what the size is for; but "S (M, L)" are three sizes
        words = expression(r"^([^()]+)\(([^()]+)\)$").sub(r"\1, \2", words.strip())  # "M (L)"
        for piece in _AND.split(words):
            named = self._named(piece)
            if named is None:
                return None
            found += named
        return tuple(sorted(set(found)))

    def _onward(self, words: str) -> Sizes | None:
        """ "M and larger", "S, L and up", "from M up", "up to 6 months", "larger than M": the sizes on one side of one of them."""
        for told in (form.fullmatch(words.strip()) for form in _ONWARD):
            named = [self._named(piece) for piece in _AND.split(told["name"])] if told is not None else [None]
            if None in named:
                continue
            groups, ends, one_by_one = (
                told.groupdict(),
                named[-1] or [0],
                [one for some in named[:-1] for one in some or ()],
            )
            beyond = groups.get("beyond") is not None
            if beyond and one_by_one:
                continue  # "larger than S and M"
            side = range(ends[0] + beyond, self.number) if groups.get("up") else range(ends[-1] + (not beyond))
            return tuple(sorted({*one_by_one, *side})) or None
        return None

    def _named(self, piece: str) -> list[int] | None:
        """One name, two with a stroke between, or a run of sizes from one to another."""
        piece = expression(r"(?i)^sizes?\s+|\s+sizes?$").sub("", piece.strip())
        if canonical(piece) in self.index:
            return [self.index[canonical(piece)]]
        placed = self._placed(piece)
        if placed is not None:
            return [placed]
        ends = [self.index.get(canonical(end)) for end in _RANGE.split(piece)]
        if len(ends) == 2 and None not in ends and ends[0] < ends[1]:
            return list(range(ends[0], ends[1] + 1))
        parts = [self.index.get(canonical(part)) for part in piece.split("/")]
        return parts if len(parts) > 1 and None not in parts else None

    def _told(self, words: str) -> Sizes | None:
        """ "smallest", "two largest", "largest": sizes by their place in the order."""
        match = expression(
            r"(?i)\s*(?:the\s+)?(?:(?P<n>\w+)\s+)?(?P<end>smaller|smallest|larger|largest)\s*"
        ).fullmatch(words)
        if match is None:
            return None
        last = match["end"].lower().startswith("larg")
        number = _NUMBER_WORDS.get((match["n"] or "").lower(), 1 if match["n"] is None else 0)
        exact = match["n"] or match["end"].lower().endswith("est") or self.number == 2
        if not exact or not 0 < number < self.number:
            return None
        return tuple(range(self.number - number, self.number)) if last else tuple(range(number))

    def _placed(self, piece: str) -> int | None:
        """The size that "2nd", "third" or "last" names by its place."""
        piece = piece.strip().lower()
        number = expression(r"(\d+)(?:st|nd|rd|th)").fullmatch(piece)
        place = int(number[1]) if number else _ORDINALS.get(piece)
        if place is None or place > self.number:
            return None
        return (place or self.number) - 1


def _bare(words: str) -> str:
    """The names alone, without the word "sizes"."""
    return expression(r"(?i)^(?:sizes?|ages?)\s+|\s+(?:sizes?|ages?)$").sub("", words.strip())
