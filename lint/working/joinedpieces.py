"""How many stitches the pieces have that a later round is worked round: "sc around the first leg"."""

from __future__ import annotations

from dataclasses import replace
from operator import is_

from lint.amount import ONE, Amount
from lint.ledger import Cell
from lint.pattern import Part
from lint.place import Place, Which
from lint.reading.words.piecewords import piece_word
from lint.tree import Step, Work
from lint.working.cursor import PlacesUnknown

_SHAPES = ("sl st", "inc", "dec")


def with_piece(known: dict[str, int | None], part: Part, cells: list[Cell]) -> dict[str, int | None]:
    """What is known of the pieces after one more; of two with one name and different counts, nothing."""
    word = piece_word([word.removesuffix("s") for word in part.name.lower().replace("-", " ").split()])
    last = cells[-1].made if cells else None
    if not word:
        return known
    number = last.stitches if last is not None and not last.spaces else None
    return {**known, word: number if known.get(word, number) == number else None}


def counted_round_pieces(steps: tuple[Step, ...], known: dict[str, int | None]) -> tuple[Step, ...]:
    """The steps; "sc around the first leg" with the number of its stitches.  Raises PlacesUnknown."""
    found: list[Step] = []
    for step in steps:
        place = step.places[0] if isinstance(step, Work) and step.places else None
        if (
            place is not None
            and _is_piece(place)
            and place.number == ONE  # else it says how many of them: "next 40 sts of body"
            and (place.each_of or not step.number_said and step.stitch not in _SHAPES)
        ):
            number, each = known.get(place.from_words), step.number.lone
            if number is None or each is None or step.stitch in _SHAPES or step.together is not None or step.places[1:]:
                raise PlacesUnknown  # "inc in each st of first sleeve", "sc in each st of body and each st of sleeve"
            told = replace(place, each_of=False)
            step = replace(step, number=Amount.of(each * number), places=(told,), number_said=True)
        found.append(step)
    return steps if all(map(is_, found, steps)) else tuple(found)


def _is_piece(place: Place) -> bool:
    return place.which is Which.ELSEWHERE and place.targets[0].name == "piece" and bool(place.from_words)
