"""What else the sizes are called: the ages or wearers that the front of a pattern gives beside its S, M and L."""

from __future__ import annotations

from lint.expression import expression
from lint.reading.sizes.audience import canonical, size_places
from lint.reading.sizes.sizenames import Names, is_size_name, split_names, with_glosses

_FRONT = 60  # lines in which they may stand
_AGE = expression(
    r"(?i)\b(?:months?|mths?|mos?|years?|yrs?|ages?|aged|preemie|newborn|infant|baby|toddler|child|kid|teen|adult|wom[ae]n|m[ae]n)\b"
)


def size_glosses(text: str, names: Names) -> dict[str, int]:
    """The place of each size by its other names; none that is a size's name itself, or would name two of them."""
    if len(names) < 2:
        return {}
    own, found = size_places(names), dict[str, int | None]()
    lines = text.splitlines()[:_FRONT]
    for others in [*(_beside(line, names) for line in lines), _line_by_line(lines, names)]:
        places = size_places(others)
        if len(places) == len(names) and not set(places) & set(own):
            found |= {name: at if found.get(name, at) == at else None for name, at in places.items()}
    return {name: at for name, at in found.items() if at is not None}


def _beside(line: str, names: Names) -> Names:
    """ "S (0-6 months), M (6-12 months)", "To fit ages 0-6 (6-12) months": one for each size, in their order."""
    heads, glosses = with_glosses(line)
    if tuple(map(canonical, heads)) == tuple(map(canonical, names)):
        return glosses
    if not _AGE.search(line):
        return ()
    head, sign, behind = line.partition(":")
    if sign and (pair := [_list(words, len(names)) for words in (head, behind)])[0] and pair[1]:
        of_own = [canonical(name) for name in pair[1]] == [canonical(name) for name in names]
        return pair[0] if of_own else pair[1]  # "Small (medium, large): 0-6, 6-12, 12-24 months"
    return _list(line, len(names))


def _list(words: str, number: int) -> Names:
    """The first way to cut words into so many sizes' names."""
    return next((several for several in split_names(words, known=True) if len(several) == number), ())


def _line_by_line(lines: list[str], names: Names) -> Names:
    """ "S - 0-6 months", "M: 6-12 months", each in a line of its own."""
    found: dict[str, str] = {}
    for line in lines if any(_AGE.search(line) for line in lines) else ():
        match = expression(
            r"\W*(?:(?i:size)\s+)?(?P<name>[^:=–—(]{1,20}?)\s*(?:[:=(]|\s[-–—]\s)\s*(?P<gloss>[^:=(),;]+)"
        ).match(line)
        if match is not None and is_size_name(match["gloss"].strip()):
            found.setdefault(canonical(match["name"]), match["gloss"].strip())
    return tuple(found[name] for name in map(canonical, names) if name in found)
