"""Lists over the sizes in all the trade's shapes, and row labels made of them: "60 (66, 72)", "Rows 2-32 (36) 40 (44)".

The number of sizes decides what a run of figures is: "20-22 (22-24)" ends at 22, 22 and 24 in three sizes, and is
20 to 22 or 22 to 24 in two.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise

from lint.expression import expression

Numbers = tuple[int, ...]  # the rows that one size works under a label; () where it works none
Ends = Iterator[tuple[Numbers, int]]  # what can be read at a token, and the token behind it
Lists = Iterator[tuple[tuple[Numbers, ...], int]]

_TOKEN = expression(
    r"(?P<number>\d+)(?:\s?(?:st|nd|rd|th|d)\b\.?)?|(?P<sign>\b(?:(?:up\s+)?to(?:\s+and\s+including)?|thru|through|t/m|till?|bis|and|or)\b|[-–—−&+,;:/|()\[\]{}])"
)
_SPANS = ("-", "to")
_SAME = {
    "–": "-",
    "—": "-",
    "−": "-",
    "thru": "to",
    "through": "to",
    "t/m": "to",  # Dutch, Scandinavian and German words left in translated patterns
    "til": "to",
    "till": "to",
    "bis": "to",
    "&": "and",
    "+": "and",
    "[": "(",
    "{": "(",
    "]": ")",
    "}": ")",
}
_BETWEEN = (",", ":", ";", "/", "-", "|", "and")  # what parts the numbers of one list; one list has one of them
_IN_LABELS = ("/", ";", ":", "|")  # between bare numbers; a label's commas name several rows
FIRST_BARE = "first group bare"  # the pattern's lists are such as "8, 9 (10, 11)", which elsewhere are two numbers
_MOST_ROWS = 2000
_UNLIKE = 8  # rows by which sizes may differ, and the double: beyond that, brackets hold something else


def size_list(tokens: list[str], sizes: int, bare: tuple[str, ...]) -> tuple[tuple[int | None, ...], int] | None:
    """A list over the sizes at the head of some tokens, and the token behind it; `bare`: what may part it without brackets.

    Tokens are digits and signs, every opening bracket a "(".  None is a dash: "not worked in this size".
    """
    for values, end in _lists(tokens, 0, sizes, _number, bare):
        return tuple(value[0] if value else None for value in values), end
    return None


def sized_numbers(text: str, sizes: int, commas: bool = False, first_bare: bool = False) -> tuple[Numbers, ...] | None:
    """The row numbers of each size; one entry where all sizes have the same; None where no reading fits the sizes.

    `commas`: whether numbers parted by commas alone are a list over the sizes, not several rows; `first_bare`: whether
    lists are in groups of which the first has no brackets.
    """
    tokens = list(_tokens(text))
    if "or" in tokens and not commas:  # "Rows 3 to 5, 6 or 7": no row is worked or not as the maker likes
        found = sized_numbers(text, sizes, commas=True) if sizes > 1 else None
        return found if found is not None and len(found) > 1 else None
    if sizes > 1:
        bare = (*_bare(sizes), *([","] if commas else []), *([FIRST_BARE] if first_bare else []))
        for read in (_from_to, _listed, _side_by_side):
            for values, end in read(tokens, 0, sizes, bare):
                if end == len(tokens) and _alike(values):
                    return values
    if "(" in tokens:
        return None
    plain = plain_numbers(tokens)
    if sizes > 1 and not commas and any(later <= earlier for earlier, later in pairwise(plain)):
        # "Rows 5 to 9, 5 to 10, 5 to 11": no row is named twice, so these are a run for each size
        found = sized_numbers(text, sizes, commas=True) if any(sign in tokens for sign in _SPANS) else None
        return found if found is None or len(found) > 1 else None
    return (plain,)


def plain_numbers(tokens: list[str]) -> Numbers:
    """Every number named: "4-6" is 4, 5, 6; "3, 4 and 5" is 3, 4, 5."""
    found: list[int] = []
    spread = False
    for token in tokens:
        if token.isdigit():
            number = int(token)
            if spread and found and found[-1] < number <= found[-1] + _MOST_ROWS:
                found += range(found[-1] + 1, number + 1)
            else:
                found.append(number)
        spread = token in _SPANS
    return tuple(found)


def numbers_of(text: str) -> Numbers:
    """Every number named by a label that holds for all sizes."""
    return plain_numbers(list(_tokens(text)))


def _tokens(text: str) -> Iterator[str]:
    for match in _TOKEN.finditer(text.lower()):
        sign = match["sign"] or ""
        yield match["number"] or _SAME.get(sign) or ("to" if "to" in sign.split() else sign)  # "up to and including"


def _alike(values: tuple[Numbers, ...]) -> bool:
    """Whether the sizes' numbers can be those of one row: "Row 3 (24)" has a count in its brackets."""
    firsts = [numbers[0] for numbers in values if numbers]
    lasts = [numbers[-1] for numbers in values if numbers]
    near = all(max(ends) <= 2 * min(ends) + _UNLIKE for ends in (firsts, lasts) if ends)
    return bool(firsts) and near and all(first <= last for first, last in zip(firsts, lasts, strict=True))


# what can stand at a token ------------------------------------------------------------------------------------


def _number(tokens: list[str], at: int) -> Ends:
    if at < len(tokens) and tokens[at].isdigit():
        yield (int(tokens[at]),), at + 1
    elif at < len(tokens) and tokens[at] == "-":
        yield (), at + 1


def _rows(tokens: list[str], at: int) -> Ends:
    """A number, or a run of them: "20-22", "20 and 21"."""
    for first, end in _number(tokens, at):
        if first and end + 1 < len(tokens) and tokens[end] in (*_SPANS, "and") and tokens[end + 1].isdigit():
            yield _run(first[0], int(tokens[end + 1])), end + 2
        yield first, end


def _run(first: int, last: int) -> Numbers:
    return tuple(range(first, last + 1)) if first <= last <= first + _MOST_ROWS else (first, last)


def _lists(
    tokens: list[str], at: int, sizes: int, item: Callable[[list[str], int], Ends], bare: tuple[str, ...]
) -> Lists:
    """Every list over the sizes that can be read at a token, in each of the trade's shapes."""
    yield from _bracketed(tokens, at, sizes, item)
    yield from _alternating(tokens, at, sizes, item)
    yield from _grouped(tokens, at, sizes, item)
    if FIRST_BARE in bare:
        yield from _first_bare(tokens, at, sizes, item)
    for sign in bare:  # "8/9/10", "8; 9; 10", "8-9-10"
        for values, end in _parted(tokens, at, sizes, item, sign):
            if tokens[end : end + 1] != [sign] or not "".join(tokens[end + 1 : end + 2]).isdigit():
                yield values, end


def _bracketed(tokens: list[str], at: int, sizes: int, item: Callable[[list[str], int], Ends]) -> Lists:
    """ "8 (9, 10)", "- - (9, 10)", "(8, 9, 10)"."""
    heads: list[tuple[tuple[Numbers, ...], int]] = [((), at)]
    for first, end in item(tokens, at):
        heads.append(((first,), end))
        while not first and end < len(tokens) and tokens[end] == "-":
            heads.append(((*heads[-1][0], ()), end + 1))
            end += 1
    for head, opened in heads:
        if opened < len(tokens) and tokens[opened] == "(":
            for sign in _BETWEEN:
                for values, end in _parted(tokens, opened + 1, sizes - len(head), item, sign):
                    if end < len(tokens) and tokens[end] == ")":
                        yield (*head, *values), end + 1


def _alternating(tokens: list[str], at: int, sizes: int, item: Callable[[list[str], int], Ends]) -> Lists:
    """ "8 (9) 10 (11)", in three sizes and more also "(8) 9 (10) 11": every second number in brackets."""
    values: list[Numbers] = []
    opened = int(sizes > 2 and tokens[at : at + 1] == ["("])
    while len(values) < sizes:
        inside = (len(values) + opened) % 2
        if inside and not (at < len(tokens) and tokens[at] == "("):
            return
        found = next(iter(item(tokens, at + inside)), None)
        if found is None:
            return
        values.append(found[0])
        at = found[1]
        if inside and not (at < len(tokens) and tokens[at] == ")"):
            return
        at += inside
    yield tuple(values), at


def _grouped(tokens: list[str], at: int, sizes: int, item: Callable[[list[str], int], Ends]) -> Lists:
    """ "8 (9, 10) (11, 12)", "8, (9, 9), (10, 11)", "8 (9, 10) 11 (12)": brackets one after the other."""
    if at < len(tokens) and tokens[at] == "(":
        for sign in _BETWEEN:
            for number in range(2, sizes):
                for values, end in _parted(tokens, at + 1, number, item, sign):
                    if tokens[end : end + 1] == [")"]:
                        yield from _more_groups(tokens, end + 1, values, sizes, item)
        return
    for first, end in item(tokens, at):
        yield from _more_groups(tokens, end, (first,), sizes, item)


def _first_bare(tokens: list[str], at: int, sizes: int, item: Callable[[list[str], int], Ends]) -> Lists:
    """ "8, 9, 10 (11, 12, 13) (14, 15, 16)": the sizes in groups of which the first has no brackets."""
    for number in range(2, sizes):
        for values, end in _parted(tokens, at, number, item, ","):
            if tokens[end : end + 1] == ["("]:
                yield from _more_groups(tokens, end, values, sizes, item)


def _more_groups(
    tokens: list[str], at: int, before: tuple[Numbers, ...], sizes: int, item: Callable[[list[str], int], Ends]
) -> Lists:
    """The brackets behind what was read of a list, up to as many figures as there are sizes."""
    left = sizes - len(before)
    if not left:
        yield before, at
        return
    opened = at + (tokens[at : at + 1] == [","])
    if tokens[opened : opened + 1] == ["("]:
        for sign in _BETWEEN:
            for number in range(1, left + 1):
                for values, end in _parted(tokens, opened + 1, number, item, sign):
                    if tokens[end : end + 1] == [")"]:
                        yield from _more_groups(tokens, end + 1, (*before, *values), sizes, item)
    elif opened == at and len(before) > 1:  # "8 (9, 10) 11 (12)"
        for value, end in item(tokens, at):
            if tokens[end : end + 1] == ["("]:
                yield from _more_groups(tokens, end, (*before, value), sizes, item)


def _parted(tokens: list[str], at: int, number: int, item: Callable[[list[str], int], Ends], sign: str) -> Lists:
    """So many items with one sign between them."""
    for first, end in item(tokens, at):
        if number == 1:
            yield (first,), end
        elif (
            number > 1
            and end < len(tokens)
            and (tokens[end] == sign or number == 2 and tokens[end] in ("and", "or") and sign == ",")
        ):
            end += tokens[end : end + 2] == [",", "or"]  # "6, 7, or 8"
            for rest, last in _parted(tokens, end + 1, number - 1, item, sign):
                yield (first, *rest), last


# whole labels --------------------------------------------------------------------------------------------------


def _from_to(tokens: list[str], at: int, sizes: int, bare: tuple[str, ...]) -> Lists:
    """ "2-32 (36, 40)", "37 (40, 43)-52", "44th (46th) to 56th (58th)": the first or the last row has a list."""
    for first, middle in _amounts(tokens, at, sizes, bare):
        if middle >= len(tokens) or tokens[middle] not in _SPANS:
            continue
        for last, end in _amounts(tokens, middle + 1, sizes, bare):
            if len(first) == len(last) == 1:
                continue
            pairs = zip(first * (sizes // len(first)), last * (sizes // len(last)), strict=True)
            yield tuple(tuple(range(a[0], b[0] + 1)) if a and b else () for a, b in pairs), end


def _amounts(tokens: list[str], at: int, sizes: int, bare: tuple[str, ...]) -> Lists:
    yield from _lists(tokens, at, sizes, _number, bare)
    if at < len(tokens) and tokens[at].isdigit():
        yield ((int(tokens[at]),),), at + 1


def _bare(sizes: int) -> tuple[str, ...]:
    """What may part a label's numbers without brackets: one hyphen is a run of rows, two are a list."""
    return (*_IN_LABELS, "-") if sizes > 2 else _IN_LABELS


def _listed(tokens: list[str], at: int, sizes: int, bare: tuple[str, ...]) -> Lists:
    """ "8 (9, 10)", "19-21 (20-22, 21-23)": a number or a run of them for each size."""
    return _lists(tokens, at, sizes, _rows, bare)


def _side_by_side(tokens: list[str], at: int, sizes: int, bare: tuple[str, ...]) -> Lists:
    """ "8 (9, 10) and 9 (10, 11)": several such, one after the other."""
    for values, end in _listed(tokens, at, sizes, bare):
        if end < len(tokens) and tokens[end] in ("and", ","):
            for rest in (_listed, _side_by_side):
                for others, last in rest(tokens, end + 1, sizes, bare):
                    yield tuple((*one, *other) for one, other in zip(values, others, strict=True)), last


__all__ = ["FIRST_BARE", "numbers_of", "size_list", "sized_numbers"]
