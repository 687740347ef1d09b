"""Toys whose limbs are worked in, and what houses say behind a row's count.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts

_BALL = "Hen\nUS terms\n\nHEN\nRnd 1 - 6 sc in magic ring = 6\nRnd 2 - "


@pytest.mark.parametrize(
    "row",
    [
        "inc in every st = 12 (fill lightly)",
        "BLO, inc in every st = 12 (this gives the foot a sharp edge)",
        "inc x 6 = 12 (both feet are in place)".replace("both", "two"),
        "inc x 6 (12) (fill the head now)",
        "inc x 6 (12)\n(lilac)",
        "inc x 6 (12) *this will be the beak",
        "inc x 6 (12) (wings go here, 4 sts apart)",
    ],
)
def test_talk_behind_the_count(row: str) -> None:
    """What brackets or a star add behind the count, and works nothing, leaves the row as it is."""
    report = check(f"{_BALL}{row}\nRnd 3 - sc in each st = 12\n")
    assert counts(report) == [6, 12, 12]
    assert not corrections(report)


@pytest.mark.parametrize(
    "behind",
    [
        "(then sc 3 more)",
        "(skip the next 2 sts)",
        "(2 more)",
        "(work this round twice)",
        "(in the back loops)",
        "(do it twice)",
    ],
)
@pytest.mark.parametrize("count", ["= 12", "– 12 sc", "(12)"])
def test_more_than_talk_behind_the_count(count: str, behind: str) -> None:
    """Words behind a count that may be of more work, or of other work, are not passed over."""
    assert counts(check(f"{_BALL}inc x 6 {count} {behind}\nRnd 3 - sc in each st\n"))[1:] != [12, 12]


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("sc 2, hold a wing in front of the work and sc 3 through wing and body, sc 7", 12),
        ("sc 2, place the wing against the body and sc 3 through both, sc 7", 12),
        (
            "sc 2, hold the wing in front of the body and sc 3 through wing and body, sc 2, join the second wing in the same way over the next 3 sts, sc 2",
            12,
        ),
        (
            "sc 2, sc 3 through wing and body, sc 2, attach the second wing across next 3 sts as before, sc 2",
            12,
        ),
        ("hdc 2, join the wing over the next 3 sts, hdc 7", None),
        ("join the wing over the next 3 sts, sc 9", None),
        ("sc 2, join the wing with a few sts, sc 7", None),
        ("sc 2, join the wing over the next 3 sts twice, sc 4", None),
    ],
)
def test_limbs_worked_in_over_stitches(row: str, made: int | None) -> None:
    """A limb joined in over so many stitches takes those, if it is joined like one before; how else is not known."""
    report = check(f"Hen\nUS terms\n\nHEN\nRnd 1: 12 sc in magic ring (12)\nRnd 2: {row}\n")
    assert counts(report) == [12, made]


_LEGS = "Hen\nUS terms\n\nLEGS (make 2)\nRnd 1: 6 sc in magic ring (6)\nRnd 2: 2 sc in each st around (12)\n"


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("Sc around first leg (12), ch 2, sc around second leg (12), ch 2 (24)", 24),
        (
            "Ch 2, 12 sc round the first leg, 2 sc in the ch, 12 sc round the second leg, 2 sc in the other side of the ch (28)",
            28,
        ),
        (
            "from the ch2: join to the first leg with 1 sc, 11 sc, 2 sc along the ch, 12 sc on the second leg, 2 sc on the other side of the ch (28)",
            28,
        ),
    ],
)
def test_legs_joined_by_what_each_gives(row: str, made: int) -> None:
    """The stitches of each leg may be told in brackets, or said to be worked round it."""
    assert counts(check(f"{_LEGS}\nBODY\nRnd 1: {row}\n"))[-1] == made


@pytest.mark.parametrize("end", ["fo for the first leg; for the second leg do not fo, ch2", "fasten off the first leg"])
def test_a_line_in_small_letters_on_what_is_done_when_the_rows_are_over(end: str) -> None:
    """Behind a count it is no part of the rounds above, whose yarn goes on."""
    report = check(f"{_LEGS}Rnds 3-5: 12sc (12)\n{end}\n\nBODY\nRnd 1: 12 sc on first leg, 12 sc on second leg (24)\n")
    assert counts(report) == [6, 12, 12, 12, 12, 24]
    assert "yarn-not-joined" not in [rule for rule, _ in all_findings(report)]


@pytest.mark.parametrize(
    ("end", "made"),
    [
        ("(12)\nRepeat for the other handle.", 12),
        (". Total: 12 sc\nDo the same for the second strap.", 12),
        ("(12). Fasten off. Rep along the other long side.", 12),
        (". Repeat on the other side.", None),
    ],
)
def test_a_piece_done_again_when_the_row_is_over(end: str, made: int | None) -> None:
    """Behind its count a row is over, and what is repeated is the piece; before it, that may be within the row."""
    assert (
        counts(check(f"Bag\nUS terms\n\nBAG\nRnd 1: 6 sc in magic ring (6)\nRnd 2: 2 sc in each st around {end}\n"))[-1]
        == made
    )


@pytest.mark.parametrize(
    "row",
    [
        "Sc in 2nd ch from hook and in next 6 ch, 3 sc in last ch, go on along the other side of the chain with sc in next 6 ch, 2 sc in last ch. 18 sc",
        "Sc in 2nd ch from hook and in next 6 ch, 3 sc in last ch, carry on along the underside of the chain with 6 sc, 2 sc in last ch. 18 sc",
    ],
)
def test_the_other_side_of_the_chain_with_stitches(row: str) -> None:
    """ "with" leads to what is worked along the other side."""
    assert counts(check(f"Mat\nUS terms\n\nMAT\nCh 9.\nRnd 1: {row}\n"))[-1] == 18


def test_a_colour_alone_under_a_heading_is_no_piece() -> None:
    """ "Orange." under the name in capitals tells the yarn; and two blanks behind a number begin the row's words."""
    report = check(
        "Fish\nUS terms\n\nFISH HEAD\nOrange.\nRd 1  6 sc in MR (6)\nRd 2  orange: 2 sc, white: inc x3, orange: 1 sc (9)\n"
    )
    assert [part.name for part in report.pattern.parts] == ["FISH HEAD"]
    assert counts(report) == [6, 9]


def test_a_piece_in_rounds_that_begins_on_both_sides_of_a_chain_above() -> None:
    """The chain may stand in a line of its own before the round that goes along both its sides."""
    report = check(
        "Bear\nUS terms\n\nNOSE\nch6\nR1) start in 2nd ch from hook, 4sc, 3sc in last ch; continue on the other side of the ch, 3sc, inc in last ch (12)\nR2) 12sc (12)\n"
    )
    assert [row.row.label.kind for row in report.ledger.rows if row.row.label] == ["round", "round"]


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("ch 1, turn, sc in each of next 6 sc, leave 2 — 6", 6),
        ("ch 1, turn, sc in next 6, leaving 2 (6)", 6),
        ("ch 1, turn, sc in next 6, leaving 2 sts at the end. (6)", 6),
        ("ch 1, turn, sc across, leave a tail of 12 inches. (8)", 8),
        ("ch 1, turn, sc in next 6, leave 2 more. (6)", None),
        ("ch 1, turn, sc in next 6, leave 2 at each end (6)", None),
    ],
)
def test_stitches_left_by_a_bare_number(row: str, made: int | None) -> None:
    """ "leave 2" at a row's end leaves two stitches; what says more than that is not passed over."""
    report = check(f"Crab\nUS terms\n\nLEG\nRow 1: Fsc 8. (8)\nRow 2: {row}\n")
    assert counts(report) == [8, made]
    assert "places-left-over" not in [rule for rule, _ in all_findings(report)]


@pytest.mark.parametrize(
    ("how", "made"),
    [
        ("Inc in the same way, with one more hdc between incs on each rnd: 36 hdc.", 36),
        ("Increase as before, working one more hdc between increases each rnd. (36)", 36),
        ("Inc in the same way, 36 hdc.", None),
    ],
)
def test_increases_that_go_on_in_the_same_way(how: str, made: int | None) -> None:
    """How far apart they come says what the rounds are; without it that is not known."""
    report = check(
        f"Mat\nUS terms\n\nMAT\nRnd 1: 6 hdc in ring, join. (6)\nRnd 2: 2 hdc in each st, join. (12)\nRnd 3: (Hdc in next st, 2 hdc in next st) around, join. (18)\nRnds 4-6: {how}\n"
    )
    assert counts(report)[-1] == made


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("Alternate sc and inc around (18)", 18),
        ("alternating 1 sc and 1 inc to the end (18)", 18),
        ("Alternate sc, hdc and dc around. (12)", 12),
        ("6 reps of (sc, inc) (18)", 18),
        ("Alternate sc and inc in the next 6 sts, sc 6", None),
        ("alternate colors around", None),
        ("color 1: 6 sc, color 2: 6 sc (12)", 12),
        ("color 2: (sc, inc) x 6 (18)", 18),
        ("white 8, red 4 (12)", 12),
        ("white: 8, red: 4 = 12", 12),
        ("white 8, red 4", None),
        ("white 8, red 6 (14)", 14),
        ("sc 3, join first wing: sc 3 through wing and body, sc 6 (12)", 12),
        ("sc 3, join the wing: 3 rounds as before, sc 9", None),
        ("sc across, leaving 20 cm for sewing (12)", 12),
    ],
)
def test_stitches_in_turn_and_in_colours(row: str, made: int | None) -> None:
    """Stitches that alternate fill the round; figures behind a yarn's name are stitches where the count bears it out."""
    yarn = "Yarn: DK in red and white; color 1 red, color 2 white."
    assert (
        counts(check(f"Crab\nUS terms\n{yarn}\n\nCRAB\nRnd 1: 6 sc in ring (6)\nRnd 2: inc x 6 (12)\nRnd 3: {row}\n"))[
            -1
        ]
        == made
    )
