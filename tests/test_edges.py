"""Rows worked on edges that earlier rows left: stitches left unworked, row ends, the foundation's other side.

The counts are worked out by hand from what the trade's words do (semantics of written crochet; no published source).
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

_DIVIDED = """Fernlow

Terms: US

FRONT
Ch 34.
Row 1: Sc in 2nd ch from hook and in each ch across. (33 sc)
Row 2: Ch 1, turn, sc in each sc across. (33 sc)

FIRST SIDE
Row 1: Ch 1, turn, sc in first 12 sc, leave rem sts unworked. (12 sc)
Row 2: Ch 1, turn, sc2tog, sc in each sc across. (11 sc)
Fasten off.

SECOND SIDE
"""


@pytest.mark.parametrize(
    "words",
    [
        "With RS facing, skip the centre 9 sts of the last full row and rejoin yarn in next st.",
        "Skip next 9 unworked sts of the last full row for the neck and join yarn in next st.",
        "Miss 9 sts at centre front and attach yarn in next st.",
        "Leave the centre 9 sts unworked, rejoin yarn to next st with RS facing.",
        "Skip 9 sts from first side, join yarn with a sl st in next st.",
    ],
)
def test_the_second_side_is_worked_on_what_the_first_left(words: str) -> None:
    """Twelve and nine of thirty-three are gone by: twelve are left, with or without a printed count."""
    report = check(_DIVIDED + f"{words}\nRow 1: Ch 1, sc in same st and in each st across. (12 sc)\n")
    assert counts(report)[-1] == 12
    assert not corrections(report)
    assert counts(check(_DIVIDED + f"{words}\nRow 1: Ch 1, sc in same st and in each st across.\n"))[-1] == 12


def test_a_wrong_count_on_the_second_side_is_found() -> None:
    """The print says one fewer than are left."""
    words = "Skip the centre 9 sts of the last full row and rejoin yarn in next st."
    report = check(_DIVIDED + f"{words}\nRow 1: Ch 1, sc in same st and in each st across. (11 sc)\n")
    assert ("count-differs", 17) in corrections(report)


def test_centre_stitches_that_are_not_in_the_middle() -> None:
    """With twelve worked, the centre seven do not begin at the thirteenth stitch: no count is made up."""
    words = "Skip the centre 7 sts of the last full row and rejoin yarn in next st."
    assert counts(check(_DIVIDED + f"{words}\nRow 1: Ch 1, sc in same st and in each st across.\n"))[-1] is None


def test_a_body_divided_in_three() -> None:
    """Each section goes on from what the one before left: 15, then 3 and 30, then 3 and 15 of 66."""
    report = check(
        "Osier\n\nTerms: US\n\nBODY\nCh 67.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n\n"
        "RIGHT FRONT\nRow 1: Ch 1, turn, sc in first 15 sts, leave rem sts unworked.\nFasten off.\n\n"
        "BACK\nWith RS facing, skip next 3 sts at underarm, join yarn in next st.\n"
        "Row 1: Ch 1, sc in same st, sc in next 29 sts, turn, leaving rem sts unworked.\nFasten off.\n\n"
        "LEFT FRONT\nWith RS facing, skip next 3 sts, join yarn in next st.\n"
        "Row 1: Ch 1, sc in same st and in each st across.\n"
    )
    assert counts(report) == [66, 15, 30, 15]


def test_numbers_begin_again_on_the_second_side_of_a_neck() -> None:
    """Rows 3 and 4 stand twice under one heading, once for each side: the yarn was joined anew."""
    report = check(
        "Sedge\n\nTerms: UK\n\nYoke\nCh 22, turn.\nRow 1: 1 dc in 2nd ch from hook, 1 dc in each ch to end. 21 dc\n"
        "Row 2: 1 ch, 1 dc in each dc to end, turn. 21 dc\nRow 3: 1 ch, 1 dc in each of next 7 dc, turn. Leave rem 14 sts. 7 dc\n"
        "Row 4: 1 ch, 1 dc in each dc to end, turn. 7 dc\nFasten off.\n"
        "Miss 7 dc at centre of Row 2 and rejoin yarn to next dc.\n"
        "Row 3: 1 ch, 1 dc in same dc, 1 dc in each dc to end, turn. 7 dc\nRow 4: 1 ch, 1 dc in each dc to end, turn. 7 dc\n"
    )
    assert counts(report) == [21, 21, 7, 7, 7, 7]
    assert not corrections(report)


_STRIP = "Kelp\n\nTerms: US\n\nCUFF\nCh 8.\nRow 1: Sc in 2nd ch from hook and in each ch across. (7 sc)\nRows 2-26: Ch 1, turn, sc in back loop of each sc across. (7 sc)\n"


@pytest.mark.parametrize(
    "seam",
    [
        "Hold the first and last rows together and join them with 7 sl sts. Do not fasten off.",
        "Bring the first row behind the last row and sl st through both layers in each of the 7 sts.",
        "Join the short ends with sl st. Turn the cuff right side out.",
        "Sew the short ends together to form a tube.",
        "Join last row to foundation ch with sl sts.",
    ],
)
def test_row_ends_round_a_seamed_strip(seam: str) -> None:
    """Twenty-six rows have twenty-six ends round a tube."""
    text = _STRIP + seam + "\n\nHAND\nRnd 1: Ch 1, sc in each row end around, join.\n"
    report = check(text)
    assert counts(report)[-1] == 26
    assert outcomes(report)[-1] == "not-stated"


@pytest.mark.parametrize("words", ["sc in each row end around", "2 sc in each row end around"])
def test_row_ends_of_an_open_strip_are_no_round(words: str) -> None:
    """Nothing was seamed: how a round goes about the strip is not known."""
    assert counts(check(_STRIP + f"\nHAND\nRnd 1: Ch 1, {words}, join.\n"))[-1] is None


def test_row_ends_along_a_strip() -> None:
    """One stitch for each row along one side, two where the words say so."""
    assert counts(check(_STRIP + "\nBODY\nRow 1: Ch 1, sc in each row end across.\n"))[-1] == 26
    assert counts(check(_STRIP + "\nBODY\nRow 1: Ch 1, 2 sc in edge of each row.\n"))[-1] == 52


def test_a_seam_told_in_the_last_row_does_not_stop_it() -> None:
    """The row is counted, and the seam is none of its stitches."""
    strip = _STRIP.replace("sc across. (7 sc)\n", "sc across. (7 sc) Sl st Row 1 and the last row together.\n")
    assert counts(check(strip))[-1] == 7


_COWL = (
    "Bract\n\nTerms: US\n\nCOWL\nCh 45, join to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. (45 sc)\n"
    "Rnd 2: Ch 1, (sc in next 4 sc, 2 sc in next sc) around, join. (54 sc)\nFasten off.\n\nLOWER EDGE\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "Join yarn in any ch, ch 1, sc in the free loop of each foundation ch around, join.",
        "Working in the free loops of the foundation chain, join yarn in any ch, ch 1, sc in each ch around, join.",
        "Join yarn, ch 1, sc in each free loop of the foundation chain around, join.",
        "Join yarn, ch 1, sc in each foundation ch around, join.",
    ],
)
def test_the_other_side_of_the_foundation(words: str) -> None:
    """Forty-five chains below a round of fifty-four stitches."""
    assert counts(check(_COWL + f"Rnd 1: {words}\n"))[-1] == 45


def test_two_foundations_are_not_told_apart() -> None:
    """Which piece's chain is meant is not said: no count is made up."""
    text = _COWL.replace(
        "LOWER EDGE\n", "TAB\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8 sc)\nFasten off.\n\nEDGE\n"
    )
    assert counts(check(text + "Rnd 1: Join yarn, ch 1, sc in each foundation ch around, join.\n"))[-1] is None


def test_a_list_of_what_is_skipped() -> None:
    """ "sk next ch-1 sp, next 9 dc and next ch-1 sp" passes over all three."""
    report = check(
        "Tansy\n\nTerms: US\n\nYOKE\nRnd 1: Ch 40, join, ch 3 (counts as dc here and throughout), dc in next 14 ch, "
        "(dc, ch 1, dc) in next ch, dc in next 9 ch, (dc, ch 1, dc) in next ch, dc in last 14 ch, join. (42 dc)\n"
        "Rnd 2: Ch 3, dc in next 15 dc, ch 4, sk next ch-1 sp, next 11 dc and next ch-1 sp, dc in last 15 dc, join.\n"
    )
    assert counts(report) == [42, 31]


def test_what_is_told_of_another_piece_after_fastening_off() -> None:
    """The round is counted: the second sleeve is none of its work."""
    report = check(
        "Yarrow\n\nTerms: US\n\nSLEEVE\nRnd 1: 24 sc in magic ring.\n"
        "Rnd 2: Ch 1, sc in each st around, join. Fasten off. Work the second sleeve in the other armhole.\n"
    )
    assert counts(report) == [24, 24]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, sc in first 6 sts, turn. Leave rem sts.", 6),
        ("Ch 1, sc in first 6 sts. Leave the remaining 6 sts for the neck, turn.", 6),
        ("Ch 1, turn, sc across to within 3 sts from end, turn.", 9),
        ("Sl st across 2 sts, work across to within 2 sts from end of row, turn.", 8),
        ("To shape armholes … pick up dark color, sl st across 2 sts, work to last 2 sts, turn.", 8),
        ("Shape neck: ch 1, turn, sc in first 5 sts, leave rem sts unworked.", 5),
        ("Sl st in next 3 sts, ch 2, skip same st as last sl st, hdc in each st to end.", 10),
        ("Ch 2, turn, dc in next st (together counts as dc2tog), dc in each st across.", 11),
        ("Ch 2, turn, dc2tog over next 2 sts (counts as dc3tog), dc in each st across.", 10),
    ],
)
def test_shaping_of_twelve(words: str, made: int) -> None:
    """Twelve stitches, shaped at an end in other words."""
    text = f"Kelp\n\nTerms: US\n\nFRONT\nRow 1: Fsc 12, turn. (12)\nRow 2: {words}\n"
    assert counts(check(text))[-1] == made


@pytest.mark.parametrize(
    "words",
    [
        "Join to work in the rnd, ch 1, sc in each st around, join.",
        "Join in rounds; ch 1, sc around, join.",
    ],
)
def test_a_flat_piece_joined_into_the_round(words: str) -> None:
    """The row becomes a round of as many stitches."""
    text = f"Kelp\n\nTerms: US\n\nHAT\nCh 31.\nRow 1: Sc in 2nd ch from hook and in each ch across.\nRnd 2: {words}\n"
    assert counts(check(text)) == [30, 30]


@pytest.mark.parametrize(
    ("start", "made"),
    [
        ("With hook 4 mm and grey, ch 25.", 24),
        ("Make 2. Ch 25.", 24),
        ("Using a 4 mm hook and A, chain 25.", 24),
    ],
)
def test_beginnings_with_hook_and_yarn(start: str, made: int) -> None:
    """The chain is work, whatever is said before it."""
    text = f"Kelp\n\nTerms: US\n\nCUFF\n{start}\nRow 1: Sc 2nd ch from hook, sc across.\n"
    assert counts(check(text)) == [made]


def test_a_count_before_rows_called_for_is_read() -> None:
    """The count stands before "Rep last row", and belongs to the row that it ends."""
    text = "Kelp\n\nTerms: UK\n\nBACK\nCh 32.\nRow 1: 1 tr in 4th ch from hook, 1 tr in each ch to end. 30 tr\nNext row: 3 ch (counts as 1 tr), miss first tr, 1 tr in each tr to end, 1 tr in top of turning ch. 31 tr\nRep last row until back measures 35 cm.\n"
    assert ("count-differs", 8) in corrections(check(text))


def test_the_end_chain_worked_from_both_sides() -> None:
    """The toe of a sock: the last chain has stitches above and below, as the count says."""
    text = (
        "Kelp\n\nTerms: US\n\nTOE\nRnd 1: Ch 9, 2 sc in 2nd ch from hook, sc in next 6 ch, 2 sc in last ch, working along the "
        "bottom of the chain 2 sc in first ch, sc in next 6 ch, 2 sc in last ch. (20)\n"
    )
    report = check(text)
    assert counts(report) == [20]
    assert not corrections(report)


def test_a_body_round_an_oblong_base() -> None:
    """Short sides, the foundation and the last row are edges, of which the words give the numbers."""
    text = (
        "Kelp\n\nTerms: US\n\nBASE\nCh 25.\nRow 1: Sc in second ch from hook, sc in next 23 ch (24 sc)\n"
        "Rows 2-8: Ch 1, turn, sc in each st (24 sc)\n\nSIDES\nRnd 1: Ch 1, do not turn; work 8 sc evenly along short side, 24 sc "
        "along the foundation chain, 8 sc along other short side, 24 sc across the last row, join (64 sc)\n"
    )
    assert counts(check(text))[-1] == 64
