"""W and M of toys without a list, rounds "per stitch", and pieces whose ring is left unsaid (common practice, no source)."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts

_BALL = "Ball\n\n2.5 mm hook, DK cotton.\n\nBody\nR1: 6X in MR (6)\nR2: 6V (12)\n{rest}"


def test_three_in_one_and_three_together_by_the_counts() -> None:
    """On the stitches below, W can only be three in one stitch, and M three worked as one."""
    rest = "R3: (X, W)*6 (24)\nR4: 24X (24)\nR5: (X, M)*6 (12)\nR6: 6A (6)\n"
    report = check(_BALL.format(rest=rest))
    assert counts(report) == [6, 12, 24, 24, 12, 6] and corrections(report) == []


@pytest.mark.parametrize(
    ("rest", "made"),
    [
        (
            "R3: (X, W)*6 (24)\nR4: 22X, W (26)\nR5: 26X (26)\n",
            [6, 12, None, None, 26],
        ),  # the second count speaks against it
        ("R3: 12X (12)\nR4: (M, 2X)*4 (12)\nR5: 12X (12)\n", [6, 12, 12, None, 12]),  # another house's letter
        ("R3: (X, V)*6 (18)\nR5: (3X, M)*3 (12)\nR6: 12X (12)\n", [6, 12, 18, None, 12]),  # the row below is not there
        ("R3: (X, V)*6 (18)\nR4: 12X, W, M\nR5: 18X (18)\n", [6, 12, 18, None, 18]),  # no count
    ],
)
def test_letters_that_no_count_proves(rest: str, made: list[int | None]) -> None:
    """A letter that the counts do not bear out on every row is not understood, and nothing is corrected for it."""
    report = check(_BALL.format(rest=rest))
    wrong = [rule for rule, _ in corrections(report) if rule != "row-number-out-of-order"]
    assert counts(report) == made and wrong == []


def test_a_colour_called_w_is_no_stitch() -> None:
    """ "W" that only names a yarn is none of the letters."""
    text = "Ball\n\nW: white\n\nBody\nR1: 6X in MR (6)\nR2: 6V (12)\nR3: W: 12X (12)\nR4: (X, V)*6 (18)\n"
    assert counts(check(text))[3] == 18


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("1 sc per st. (12)", 12),
        ("2 sc per st. (24)", 24),
        ("2 sc per st around. (24)", 24),
        ("2 sc per stitch to last 2 sts, sc in last 2 sts. (22)", 22),
        ("just sc around. (12)", 12),
        ("Just 1 sc in each st. (12)", 12),
        ("6 sc per side. (12)", None),
        ("1 sc per row end. (12)", None),
    ],
)
def test_so_many_per_stitch(words: str, made: int | None) -> None:
    """ "Per st" is "in each st", and "just" says nothing; per side it is another thing."""
    report = check(f"Toy\n\nUS terms\n\nBODY\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: {words}\n")
    assert counts(report) == [12, made]


def test_per_stitch_in_british_terms() -> None:
    """The print behind it is held against the round."""
    report = check("Toy\n\nUK terms\n\nBODY\nRnd 1: 8 dc in magic ring. [8]\nRnd 2: 2 dc per st. [15]\n")
    assert counts(report) == [8, 16] and [rule for rule, _ in corrections(report)] == ["count-differs"]


_PIECES = """Set of beads

US terms
X - single crochet, V - increase, A - decrease

Bead
R1: 6X (6)
R2: 6V (12)
eyes between R1 and R2, 4 stitches apart
R3: 6A (6)

Disc
R1: {first}
R2: {second}
"""


def test_pieces_that_leave_their_ring_unsaid() -> None:
    """The second piece begins as the first did, and is not worked on its last round."""
    report = check(_PIECES.format(first="8X (8)", second="8V (16)"))
    assert counts(report) == [6, 12, 6, 8, 16]
    assert not [rule for rule, _ in all_findings(report) if rule.startswith("places")]


def test_a_piece_that_goes_on_is_still_held_against_the_one_before() -> None:
    """ "3V, X" is no beginning: it goes on from the six stitches, and leaves some over."""
    report = check(_PIECES.format(first="3V, X (7)", second="7X (7)"))
    assert "places-left-over" in [rule for rule, _ in all_findings(report)]


def test_work_under_a_count_is_no_talk() -> None:
    """A line of work under a closed count goes on with the row where it is work: only eyes and the like are talk."""
    text = "Toy\n\nUS terms\n\nR1: 6 sc in MR (6)\nR2: 6 inc (12)\nnose at R1\nR3: 6 dec (6)\n"
    assert counts(check(text)) == [6, 12, 6]
