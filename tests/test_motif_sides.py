"""Sides of squares and other shapes told by the first of them, and repeats that run to the last side."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes

_RING = "Square\nUS terms\n\nSQUARE\nCh 4, join to form ring.\nRnd 1: Ch 1, [3 sc in ring, ch 2] 4 times, sl st in first sc. (12)\n"
_SQUARE = f"{_RING}Rnd 2: Ch 1, *sc in each of 3 sc, (sc, ch 2, sc) in next ch-2 sp; rep from * around, sl st in first sc. (20)\n"


@pytest.mark.parametrize(
    "others",
    [
        "; work other 3 sides and corners the same",
        "; work the other three sides in the same way",
        ". Make the other 3 sides and corners to match",
        ". Complete other sides the same way",
        ", repeat for remaining 3 sides",
        ", repeat on each side",
        ", do the same for the other 3 sides and corners",
        "; other 3 sides and corners the same",
    ],
)
@pytest.mark.parametrize("star", ["", "*"])
def test_other_sides_as_the_first(others: str, star: str) -> None:
    """A side with its corner, and words that the others are the same: worked so often, and a wrong count is found."""
    round_ = f"Rnd 2: Ch 1, {star}sc in each of 3 sc, (sc, ch 2, sc) in corner{others}, sl st in first sc."
    assert outcomes(check(f"{_RING}{round_} (20)\n")) == ["agrees", "agrees"]
    assert outcomes(check(f"{_RING}{round_} (24)\n")) == ["agrees", "differs"]


def test_first_side_that_begins_with_a_counting_chain() -> None:
    """A chain that is the first side's first stitch is none of the other sides': such a round is not guessed at."""
    round_ = "Rnd 2: Ch 3, dc in next 2 sc, (2 dc, ch 2, 2 dc) in corner; work other 3 sides and corners the same, join. (28)\n"
    assert outcomes(check(f"{_RING}{round_}"))[1] == "not-recomputed"


@pytest.mark.parametrize("end", ["to last side", "across to the last side", "around"])
@pytest.mark.parametrize(
    "words",
    [
        "sc in each sc to corner, *(sc, ch 2, sc) in corner, sc in each of 5 sc; rep from * END, (sc, ch 2, sc) in corner, sc in each sc to end",
        "sc in each of 4 sc, *(sc, ch 2, sc) in corner, sc in each sc to next corner; rep from * END, (sc, ch 2, sc) in last corner, sc in last sc",
        "sc in each of 4 sc, (sc, ch 2, sc) in corner, *sc in each of 5 sc, (sc, ch 2, sc) in corner; rep from * END, sc in last sc",
    ],
)
def test_repeat_to_the_last_side(words: str, end: str) -> None:
    """A repeat that ends before the last side leaves it, and the corner before it where that is told, to the words behind."""
    report = check(f"{_SQUARE}Rnd 3: Ch 1, {words.replace('END', end)}, sl st in first sc. (28)\n")
    assert counts(report) == [12, 20, 28]
    assert not corrections(report)


def test_last_side_short_of_stitches() -> None:
    """Of a last side that has one stitch two cannot be worked, and the words do not come out."""
    words = "sc in each of 4 sc, (sc, ch 2, sc) in corner, *sc in each of 5 sc, (sc, ch 2, sc) in corner; rep from * to last side, sc in last 2 sc"
    report = check(f"{_SQUARE}Rnd 3: Ch 1, {words}, sl st in first sc. (29)\n")
    assert [line for rule, line in all_findings(report, ("correction", "query")) if rule != "gauge-missing"] == [8]


_GRANNY = "Square\nUS terms\n\nSQUARE\nRnd 1: Ch 4, join to form ring. Ch 3 (counts as dc throughout), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * TIMES; join. Fasten off.\n"
_SECOND = "Rnd 2: Join in any corner. Ch 3, (2 dc, ch 2, 3 dc) in same corner, *ch 1, (3 dc, ch 2, 3 dc) in next corner; rep from * around, ch 1, join. (24)\n"


@pytest.mark.parametrize(
    "times",
    [
        "until you have four groups of three",
        "until there are 4 groups in all",
        "until you have 4 ch-2 sps",
        "until there are four 3-dc groups in the ring",
    ],
)
def test_repeat_until_so_many_groups(times: str) -> None:
    """ "until you have 4 groups" is three passes behind a group that the round opens with."""
    assert counts(check(_GRANNY.replace("TIMES", times) + _SECOND)) == [12, 24]


def test_repeat_until_so_many_groups_of_another_sort() -> None:
    """Where the opening is no such group, how many passes make so many is not guessed at."""
    text = _GRANNY.replace("2 dc in ring, ch 2, *3", "2 dc in ring, ch 2, 3 dc in ring, ch 2, *3")
    assert counts(check(text.replace("TIMES", "until you have 4 groups") + _SECOND))[0] is None


@pytest.mark.parametrize(
    "colour", ["the last color", "last color with sl st", "your final color", "the border color", "the third color"]
)
def test_yarn_told_by_its_place_in_the_order(colour: str) -> None:
    """ "Join the last color in any dc" joins yarn."""
    text = (
        _GRANNY.replace("TIMES", "2 more times")
        + f"Rnd 2: Join {colour} in any dc. Ch 1, sc in each dc around, 3 sc in each ch-2 sp. (24)\n"
    )
    report = check(text)
    assert counts(report) == [12, 24]
    assert not corrections(report)


def test_words_not_understood_may_join_yarn() -> None:
    """Where words before the work were not understood, yarn is not said to be missing."""
    text = (
        _GRANNY.replace("TIMES", "2 more times")
        + "Rnd 2: Slip the blorp of yarn over any dc. Ch 1, sc in each dc around. (12)\n"
    )
    assert ("yarn-not-joined", 6) not in all_findings(check(text))


@pytest.mark.parametrize("side", ["to the corner", "along the side", "across the side"])
@pytest.mark.parametrize("last", ["along the last side", "across last side", "to end"])
def test_bracket_along_a_side(side: str, last: str) -> None:
    """A bracket that works into spaces "along the side" ends at the corner, "along the last side" at the round's end."""
    third = (
        "Rnd 3: Join in any corner. Ch 3, (2 dc, ch 2, 3 dc) in same corner, ch 1, "
        f"*(3 dc in next ch-1 sp, ch 1) {side}, (3 dc, ch 2, 3 dc) in the corner, ch 1*; repeat between * twice more, (3 dc in next ch-1 sp, ch 1) {last}. Join. (36)\n"
    )
    assert (
        outcomes(
            check(_GRANNY.replace("TIMES", "2 more times") + _SECOND.replace("join. (", "join. Fasten off. (") + third)
        )[2]
        == "agrees"
    )


_FLAT = (
    "Cloth\nUS terms\n\nCLOTH\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (11)\n"
    "Rows 2-10: Ch 1, sc in each sc across, turn. (11)\n\nEDGING\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "10 sc evenly down the side, 3 sc in the corner, sc in each ch across bottom, 3 sc in corner, work 10 sc evenly up the other side, 3 sc in corner, sc in each st across the top, 3 sc in last corner",
        "10 sc evenly down side, 3 sc in corner, sc in each ch along bottom edge, 3 sc in corner, 10 sc evenly up side, 3 sc in corner, sc in each st along top edge, 3 sc in corner",
        "sc in each st across top, 3 sc in corner, 10 sc evenly down side, 3 sc in corner, sc in each ch across the bottom, 3 sc in corner, 10 sc evenly up side, 3 sc in corner",
    ],
)
def test_border_over_named_edges(words: str) -> None:
    """After a side worked evenly "each ch across bottom" is the foundation's other side, "each st across the top" the last row."""
    assert outcomes(check(f"{_FLAT}Rnd 1: Do not turn. Ch 1, {words}, sl st in first sc. (54)\n"))[-1] == "agrees"
    assert outcomes(check(f"{_FLAT}Rnd 1: Do not turn. Ch 1, {words}, sl st in first sc. (56)\n"))[-1] == "differs"


@pytest.mark.parametrize(
    "words",
    [
        "work 11 sc along each of the 4 sides and 3 sc in each corner",
        "11 sc evenly on each of 4 sides, with 3 sc in each corner",
        "work 11 sc across all 4 edges, working 3 sc in each corner st",
    ],
)
def test_border_told_once_for_all_sides(words: str) -> None:
    """So many stitches along each of the 4 sides are worked four times, and the corners are corners to the next round."""
    second = "Rnd 2: Ch 1, sc in each sc around, working 3 sc in center sc of each corner, sl st in first sc. (64)\n"
    report = check(f"{_FLAT}Rnd 1: Ch 1, {words}, sl st in first sc. (56)\n{second}")
    assert outcomes(report)[-2:] == ["agrees", "agrees"]


@pytest.mark.parametrize("lead", ["Border – do not turn at end of Row 10. ", "Edging: Do not turn. ", "Border - "])
def test_border_run_in_behind_a_dash(lead: str) -> None:
    """A border named at the head of its own line is worked, and its first corner is one of the flat piece's."""
    words = "Ch 1, 2 sc in corner, 10 sc evenly along the side, 3 sc in corner, sc in each ch across bottom, 3 sc in corner, 10 sc evenly along other side, 3 sc in corner, sc in each st across top, sc in first corner, join."
    text = _FLAT.replace("\n\nEDGING\n", "\n") + lead + words
    assert not corrections(check(f"{text} (54)\n"))
    assert corrections(check(f"{text} (50)\n")) == [("count-differs", 8)]


@pytest.mark.parametrize(
    "where",
    [
        "Along the hem of the towel, work",
        "Along the long edge of the blanket,",
        "Down the side, work",
        "Working along the bottom edge,",
    ],
)
def test_row_that_opens_with_its_edge(where: str) -> None:
    """A row may open with the edge that it is worked along."""
    text = f"Edge\nUS terms\n\nEDGE\nRow 1: {where} 40 sc evenly. (40 sc)\nRow 2: Ch 1, turn, sc in each sc across. (40 sc)\n"
    assert outcomes(check(text)) == ["agrees", "agrees"]
