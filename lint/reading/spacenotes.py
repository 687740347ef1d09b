"""Chain spaces that a pattern counts as stitches: "each ch-1 sp counts as a st", "stitch counts include the ch-1 sps".

So linen and moss stitch are mostly written.  Such a space is one of the stitches of a printed count, and one of those
that "next 6 sts" goes over.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

from lint.expression import expression
from lint.pattern import Part, Row, Stated, StatedItem

# a chain space of a known length: "ch-1 sp", "1-ch spaces", "chain 2 space"
_SPACE = r"(?:ch(?:ain)?s?[ -]?(?P<after>\d)|(?P<before>\d)[ -]?ch(?:ain)?)[ -]+(?:sps?|spaces?)\b"
_AMONG = r"(?:\s*\([^()\n]*\))?\s+(?:(?:is|are|will be|each|always|also|all|both|here|throughout)\s+)*"
_STITCHES = r"(?P<number>\d|an?|one|two|three)?\s*(?:full\s+)?(?:sts?|stitch(?:es)?)\b"
_WAYS = (
    expression(rf"(?i){_SPACE}{_AMONG}count(?:s|ed)?\s+(?:as|for)\s+{_STITCHES}"),
    expression(rf"(?i)\bcount(?:ing)?\s+(?:each|every|the|all)\s+(?:of\s+the\s+)?{_SPACE}\s+as\s+{_STITCHES}"),
    expression(
        rf"(?i)\b(?:st(?:itch)?[ -]counts?|counts? of sts?|numbers? of sts?)\s+(?:\w+\s+){{0,2}}includes?\s+(?:the\s+|all\s+|each\s+|any\s+)*{_SPACE}"
    ),
    expression(
        rf"(?i){_SPACE}{_AMONG}(?:included|counted)\s+(?:in|into|among)\s+(?:the\s+|all\s+)*(?:st(?:itch)?[ -]counts?|sts|stitches)"
    ),
)
_DENIED = expression(r"(?i)\b(?:not|never|no|don['’]t|doesn['’]t)\b")
COUNTED = "with spaces:counted"  # the unit of a count that takes them in
_CLAUSES = expression(r"(?i)[.;:,\n]|\b(?:but|and|while)\b")  # "the turning chain does not count but each ch-1 sp …"
_MOST_WORDS = 80  # characters before, in which its clause has begun
_NUMBERS = {"": 1, "a": 1, "an": 1, "one": 1, "two": 2, "three": 3}


def spaces_that_count(text: str) -> tuple[tuple[int, int], ...]:
    """(length of a chain space, the stitches it counts as) by the words of a pattern; none where it says both."""
    found: dict[int, int] = {}
    for way in _WAYS:
        for told in way.finditer(text):
            begun = _CLAUSES.split(text[max(0, told.start() - _MOST_WORDS) : told.start()])[-1]
            if _DENIED.search(begun + told[0]):
                continue
            number = (told.groupdict().get("number") or "").lower()
            length = int(told["after"] or told["before"])
            value = int(number) if number.isdigit() else _NUMBERS[number]
            if found.setdefault(length, value) != value:
                return ()
    return tuple(sorted(found.items()))


def counted_with_spaces(parts: Iterable[Part], spaces: tuple[tuple[int, int], ...]) -> tuple[Part, ...]:
    """The parts, with "63 sts" as a count of such spaces as well; a count that names spaces leaves them out itself."""
    count = _with_note if spaces else _without_sum
    return tuple(replace(part, rows=tuple(_row(row, count) for row in part.rows)) for part in parts)


def _row(row: Row, count: Callable[[Stated], Stated]) -> Row:
    return row if row.stated is None else replace(row, stated=count(row.stated))


def _with_note(stated: Stated) -> Stated:
    named = any(_of_spaces(item) for item in stated.items)
    return stated if named and not _in_all(stated) else _stated(stated)


def _without_sum(stated: Stated) -> Stated:
    """The count without "16 sts" of "16 sts: 9 dc, 7 ch-1 sps", which only says what the others come to."""
    named = any(_of_spaces(item) or item.unit == "corner" for item in stated.items)
    if not named or not _in_all(stated):
        return stated
    return replace(stated, items=tuple(item for item in stated.items if item.unit != "stitches"))


def _of_spaces(item: StatedItem) -> bool:
    return item.unit.partition(":")[0] in ("space", "chain")


def _in_all(stated: Stated) -> bool:
    """Whether a count of stitches is what those told beside it come to, spaces and all: "16 sts: 9 dc, 7 ch-1 sps"."""
    whole = [item.number for item in stated.items if item.unit == "stitches"]
    parts = [item.number for item in stated.items if item.unit != "stitches"]
    return (
        len(whole) == 1
        and len(parts) > 1
        and all(figure == sum(part.at(size) or 0 for part in parts) for size, figure in enumerate(whole[0].values))
    )


def _stated(stated: Stated) -> Stated:
    items = (replace(item, unit=COUNTED) if item.unit == "stitches" else item for item in stated.items)
    return replace(stated, items=tuple(items))
