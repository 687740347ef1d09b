"""Mats, covers and edgings of one size: numbered colours, loops said with "the", rows that end without their turning chain.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

_TUBE = "Cover\nUS terms\n\nTube\nRnd 1: 7 sc in magic ring. (7)\nRnd 2: inc x 7 (14)\nRnd 3: {}\nRnd 4: sc in each st around. ({})\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("14 sc in the back loops (14)", 14),
        ("in the back loops 14 sc (14)", 14),
        ("in the front loops, 14 inc (28)", 28),
        ("(sc 5, dec) x 2 in the back loops (12)", 12),
        ("hdc 14 in the front loops; (14)", 14),
        ("14 sc in color 2 (14)", 14),
        ("7 sc in colour 1, 7 sc in colour 2 (14)", 14),
        ("(sc 6, inc) x 2 in color 1 (16)", 16),
        ("*ch 4, sc in next 2 sts* x 7 – 7 feathers", 14),
    ],
)
def test_loops_and_colours_are_how_and_not_where(words: str, made: int) -> None:
    """What loop or colour a round is worked in changes no count, with "the" and with a number as well."""
    report = check(_TUBE.format(words, made))
    assert counts(report)[2] == made
    assert corrections(report) == []


@pytest.mark.parametrize("words", ["14 sc in the back loops of the stitches", "2 sc in the back loops of the sts"])
def test_so_many_in_the_loops_of_the_stitches(words: str) -> None:
    """So many in each of them, or in all of them: that is not said."""
    assert outcomes(check(_TUBE.format(words, 14)))[2] == "not-recomputed"


_STRIP = (
    "Strip\nUS terms\n\nCh-3 at the beginning of a row counts as a dc.\n\nStrip\nCh 11.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across. Ch 3, turn. (10 sc)\n"
    "Row 2: Sk first sc, dc in each sc across. Ch 1, turn. (10 dc)\n"
    "Row 3: Sc in each dc across. Ch 3, turn. (10 sc)\n{}\nRow 10: {}\n"
)


@pytest.mark.parametrize(
    "rows",
    [
        "Rows 4-9: Rep Rows 2 and 3 3 times, omitting the ch-3 at end of last row.",
        "Rows 4-9: Rep Rows 2 and 3. Do not ch 3 at the end of the last row.",
        "Rows 4-9: Rep Rows 2 and 3. At end of last row, do not ch 3.",
        "Rows 4-9: Rep Rows 2 and 3, omitting turning ch on last row.",
    ],
)
def test_the_last_row_ends_without_its_turning_chain(rows: str) -> None:
    """A row on the last of them begins on its first stitch: no ch 3 stands there that counts."""
    report = check(_STRIP.format(rows, "Sc in each sc across. (10)"))
    assert counts(report) == [10] * 10
    assert corrections(report) == []


def test_a_turning_chain_that_is_not_left_out() -> None:
    """Without those words the last ch 3 counts as the first stitch of the next row."""
    report = check(_STRIP.format("Rows 4-9: Rep Rows 2 and 3.", "Sk first sc, dc in each sc across. (10)"))
    assert counts(report) == [10] * 10


def test_what_else_a_last_row_omits_is_not_passed_over() -> None:
    """A clause that the last row leaves out is no turning chain: the rows are not recomputed."""
    report = check(_STRIP.format("Rows 4-9: Rep Rows 2 and 3, omitting the last sc on last row.", "Sc in each sc."))
    assert outcomes(report)[3] == "not-recomputed"


@pytest.mark.parametrize(
    "words",
    ["Press the opening flat and sc 4 through both layers", "Pinch the opening closed, sc 4 through both layers"],
)
def test_an_opening_pressed_flat_and_closed(words: str) -> None:
    """A round of eight closed flat takes four stitches, through both layers."""
    paw = "Paw\nUS terms\n\nPaw\nRnd 1: 4 sc in magic ring. (4)\nRnd 2: inc x 4 (8)\n"
    report = check(f"{paw}Rnd 3: {words}. (4)\n")
    assert counts(report) == [4, 8, 4]
    assert corrections(report) == []


_GAP = (
    "Mitt\nUS terms\n\nHand\nCh 20, join with sl st in first ch.\nRnd 1: Ch 1, sc in each ch around, join. (20)\n"
    "Rnd 2: Ch 1, sc in first 8 sts, ch 5, sk 5 sts, sc in last 7 sts, join. (15)\n"
    "Rnd 3: Ch 1, sc in each st and in each ch around, join. (20)\nFasten off.\n\nThumb\n"
    "Join yarn in the first of the 5 sts skipped in Rnd 2.\nRnd 1: Ch 1, sc in each of the 5 skipped sts, {}, join.{}\n"
)


@pytest.mark.parametrize("words", ["free side", "unused loop", "leftover loops", "unused side"])
def test_a_thumb_on_the_free_side_of_the_chain(words: str) -> None:
    """Five skipped stitches and the other side of five chains are ten, whatever that side is called."""
    report = check(_GAP.format(f"sc in the {words} of each of the 5 ch", " (10)"))
    assert counts(report)[-1] == 10


@pytest.mark.parametrize("words", ["the free loop of each ch", "the unused side of each ch", "the free loops of Rnd 1"])
def test_a_free_side_without_a_number(words: str) -> None:
    """How many there are of them is not said: never one."""
    assert outcomes(check(_GAP.format(f"sc in {words}", "")))[-1] == "not-recomputed"


@pytest.mark.parametrize("end", ["narrow end", "the short end", "the narrow edge"])
def test_an_edging_along_narrow_ends(end: str) -> None:
    """So many along a long side and along a narrow end, twice, with three in each corner, through all layers."""
    rnd = f"Ch 1, *3 sc in corner, 18 sc along long side, 3 sc in corner, 9 sc along {end}; rep from * once more, working through all layers, join."
    report = check(f"{_STRIP.format('', 'Sc in each sc.')}\nEdging\nRnd 1: {rnd} (66 sc)\n")
    assert counts(report)[-1] == 66


def test_a_stroke_within_a_list_cut_at_semicolons() -> None:
    """ "BLO / FLO = back / front loop only" is the last entry of a list of one line, and cuts no other."""
    report = check(
        "Bell\n\nAbbreviations: ch = chain; sc = single crochet; MR = magic ring; rnd = round; BLO / FLO = back / front loop only\n\n"
        "Bell\nRnd 1: 6 sc in MR (6)\nRnd 2: BLO, ch 1, sc in each sc. (6)\n"
    )
    assert counts(report) == [6, 6]
    assert [rule for rule, _ in corrections(report)] == []


_BIN = "Bin\nUS terms\n\nBase\nRnd 1: 7 sc in magic ring. (7)\nRnd 2: inc x 7 (14)\nRnd 3: (sc, inc) x 7 (21)\n\n{}\n{}\nRnd 3: sc in each st around.\n"


@pytest.mark.parametrize(
    "line",
    ["Work Rnds 1 and 2 of the Base.", "With Straw, rep Rnds 1-2 of Base.", "Using Straw, work Rnds 1-2 of the base."],
)
def test_rounds_of_a_piece_whose_name_is_a_place(line: str) -> None:
    """A base or a top is a piece, too, whose rounds may be called for."""
    report = check(_BIN.format("Lid", line))
    assert counts(report)[3:] == [14]


@pytest.mark.parametrize(
    "line",
    [
        "Using Straw, work Rnds 1-2 as for the base of the other bin.",
        "Follow Rnds 1-2 of the lid above.",
        "Make Rnds 1 and 2 as in the rest of the set.",
    ],
)
def test_a_line_that_calls_rounds_in_a_way_not_known(line: str) -> None:
    """It is not passed over: the round behind it does not stand on the piece above."""
    assert outcomes(check(_BIN.format("Lid", line)))[-1] == "not-recomputed"


@pytest.mark.parametrize(
    ("line", "made"),
    [
        ("Work in the back loops that are left from Rnd 2.", 42),
        ("Attach soft blue to one of the back loops of Rnd 2, at the side.", 42),
    ],
)
def test_each_of_a_number_of_loops(line: str, made: int) -> None:
    """A group in each of so many loops, which a line before it names."""
    base = _BIN.replace("Rnd 3: (sc", "Rnd 3: FLO, (sc")
    row = "ch 1, (sc, ch 2, sc, hdc) in each of the 14 back loops, join"
    report = check(base.format("Fringe", line).replace("Rnd 3: sc in each st around", f"Rnd 1: {row}"))
    assert counts(report)[-1] == made


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("On first 5 sts: 2 hdc in each st; hdc in next 10 sts. (20)", 20),
        ("Over the first 5 sts, 2 hdc in each; hdc in each st to end.", 20),
        ("Working over the first 5 sts, ch 1, 2 hdc in first st, hdc in next 3 sts, 2 hdc in last st.", 7),
        ("On first 5 sts: 2 hdc in each st, turn, hdc in next 10 sts.", None),
    ],
)
def test_a_few_stitches_for_one_clause_or_for_the_row(row: str, made: int | None) -> None:
    """Where more follows than those stitches hold, they are for their own clause; a turn among it leaves that open."""
    report = check(f"Bag\n\nUS terms\n\nFLAP\nRow 1: Fhdc 15, turn. (15)\nRow 2: {row}\n")
    assert counts(report) == [15, made]
    assert corrections(report) == []


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("Hdc around, increasing in the last 4 sts.", 19),
        ("Hdc in each st around, increasing 1 st in each of the last 4 sts.", 19),
        ("Hdc in next 11 sts, increasing in next 4 sts.", 19),
        ("Hdc around, increasing 1 st in last 4 sts.", None),
        ("Hdc around, increasing in each of the first 4 sts.", None),
        ("Hdc in next 11 sts, increasing in last 4 sts.", None),
    ],
)
def test_increasing_in_several_of_the_last_stitches(row: str, made: int | None) -> None:
    """An increase in each of them; where it may be one in all, or in stitches told already, it is not worked."""
    report = check(f"Bag\n\nUS terms\n\nFLAP\nRnd 1: 15 hdc in magic ring. (15)\nRnd 2: {row}\n")
    assert counts(report) == [15, made]
