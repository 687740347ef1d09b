"""Toys as they are published: colours by letter within a round, rings by their short names, list numbers among labels."""

from __future__ import annotations

from helpers import check, corrections, counts, outcomes

_TOP = "Ball\n\nAbbreviations: sc = single crochet; inc = increase; mr = magic ring\nColors: A = red, B = white\n\n"


def test_letters_before_and_behind_the_work_are_colours() -> None:
    """A colour's letter may lead a clause or follow it, at the ring and at a whole round as well."""
    report = check(
        _TOP + "R1: 6 sc A in mr [6]\nR2: A inc x 6 [12]\nR3: A (sc, inc) x 6 [18]\nR4: 6 sc A, B 4 sc, A 8 sc [18]\n"
        "R5: A: 1 sc, B: 1 sc, A: (3 sc, inc) x 4 [22]\nR6: sc around in B [22]\nR7: inc A, 21 sc B [23]\n"
    )
    assert counts(report) == [6, 12, 18, 18, 22, 22, 23]
    assert set(outcomes(report)) == {"agrees"}
    assert corrections(report) == []


def test_figures_with_colour_letters_are_stitches() -> None:
    """ "4A, 2B" are six stitches where the round's count is printed behind them, in brackets as well."""
    report = check(
        _TOP + "R1: 6 sc in mr [6]\nR2: inc x 6 [12]\nR3: 4A, 2B, 6A [12]\nR4: (3A, 1B) x 3 [12]\nR5: 12A [12]\n"
        "R6: 4A, 2B, 5A [12]\n"
    )
    assert counts(report) == [6, 12, 12, 12, 12, 11]
    assert outcomes(report) == [*["agrees"] * 5, "differs"]


def test_figures_with_colours_and_no_count_stay_unread() -> None:
    """Without a printed count "2A, 2B" may be rows of stripes: the row is not recomputed."""
    report = check(_TOP + "R1: 6 sc in mr [6]\nR2: inc x 6 [12]\nR3: 2A, 2B\n")
    assert outcomes(report)[-1] == "not-recomputed"


def test_letters_that_are_shapings_are_no_colours() -> None:
    """Where A is the decrease, "6A" takes in twelve stitches."""
    report = check(
        "Ball\n\nX: single crochet\nV: increase\nA: decrease\n\nR1: 6X in mr (6)\nR2: 6V (12)\nR3: 4X, 2A, 4X (10)\nR4: 5A (5)\n"
    )
    assert counts(report) == [6, 12, 10, 5]


def test_mc_is_the_ring_unless_it_is_the_main_colour() -> None:
    """ "8 sc in mc" begins a round where no main colour is named; where one is, mc is that yarn."""
    for first in ("8 sc in mc", "8 sc in MC", "MC, 8 sc", "8 sc into a mc"):
        assert counts(check(f"Ball\n\nR1: {first} (8)\nR2: inc x 8 (16)\n")) == [8, 16]
    yarn = "Ball\nMaterials: MC black, CC white\n\nR1: With MC, 6 sc in mr (6)\nR2: inc x 6 (12)\nR3: 8 sc in MC, 4 sc in CC (12)\n"
    assert counts(check(yarn)) == [6, 12, 12]


def test_a_ring_by_the_pattern_s_own_letters() -> None:
    """ "KA - amigurumi ring" in a line of its own names the ring, whatever heading stands above it."""
    report = check("Ball\n\nLegend:\nKA - amigurumi ring\n\n1 row: 6 sc in KA (6)\n2 row: 6 inc (12)\n")
    assert counts(report) == [6, 12]


def test_abbreviations_parted_by_strokes() -> None:
    """A list in one line parted by strokes or dots is as many entries, and redefines no stitch."""
    for sign in ("/", "|", "·"):
        listed = f"sc – single crochet {sign} inc – 2 sc in 1 st {sign} mr – magic ring"
        report = check(f"Ball\n\n{listed}\n\nR1: 6 sc in mr [6]\nR2: inc x 6 [12]\nR3: sc around [12]\n")
        assert counts(report) == [6, 12, 12]


def test_list_numbers_among_labels() -> None:
    """A bare number that goes on from the row before labels a row; any other is left alone."""
    report = check(
        "Ball\n\nR1: 6 sc in mr (6)\nR2: inc x 6 (12)\n3. sc around (12)\nR4-5: sc around (12)\n6-7) sc around (12)\nR8: dec x 6 (6)\n"
    )
    assert counts(report) == [6, 12, 12, 12, 12, 12, 12, 6]
    assert corrections(report) == []
