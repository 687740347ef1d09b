"""Toys: legs joined by a round, arms worked in, rounds without change, letters for stitches.

The counts are worked out by hand from what the trade's words do (semantics of written crochet; no published source).
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes

_LEGS = (
    "Moth\n\nTerms: US\n\nLEG (make 2)\nRnd 1: 7 sc in magic ring. (7)\nRnd 2: Inc in each st around. (14)\n"
    "Rnds 3-5: Sc in each st around. (14)\nFasten off the first leg. Do not fasten off the second leg.\n\nBODY\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "Ch 4, sc in 14 sts of the first leg, sc in next 4 ch, sc in 14 sts of the second leg, sc in other side of 4 ch.",
        "Ch 4, join to the first leg, 14 sc around the first leg, 4 sc in the ch, 14 sc around the second leg, 4 sc on the other side of the ch.",
        "Join the legs: ch 4, 14 sc on leg 1, 4 sc along the ch, 14 sc on leg 2, 4 sc along the ch.",
        "Joining both legs together: ch 4, 14 sc around leg A, sc in next 4 ch, 14 sc around leg B, sc in opposite side of next 4 ch.",
        "Ch 4, sc around the first leg, 4 sc along the chain, sc around the second leg, 4 sc along the other side of the chain.",
        "Ch 4, 14 sc along the 1st leg, sc 4 along chain, 14 sc along the 2nd leg, sc 4 along the other side of the chain.",
    ],
)
def test_two_legs_and_the_chain_between(words: str) -> None:
    """Fourteen round each leg, and four on each side of the chain, whether a count is printed or not."""
    assert counts(check(_LEGS + f"Rnd 6: {words}\n"))[-1] == 36
    report = check(_LEGS + f"Rnd 6: {words} (36)\n")
    assert counts(report)[-1] == 36
    assert not corrections(report)


def test_around_a_piece_of_which_nothing_is_known() -> None:
    """No arm has been worked: how many stitches it has is not known."""
    assert counts(check(_LEGS + "Rnd 6: Sc around the first arm, sc in next 4 ch.\n"))[-1] is None


def test_pieces_of_one_name_that_differ() -> None:
    """Which of two unlike legs is meant is not told."""
    text = _LEGS.replace("LEG (make 2)", "FIRST LEG").replace(
        "BODY\n", "SECOND LEG\nRnd 1: 9 sc in magic ring. (9)\n\nBODY\n"
    )
    assert counts(check(text + "Rnd 6: Ch 2, sc around the first leg, 2 sc along the ch.\n"))[-1] is None


@pytest.mark.parametrize(
    "words",
    [
        "5 sc, 4 sc through arm and body together, 5 sc",
        "5 sc, 4 sc through both the arm and the body, 5 sc",
        "sc in next 5 sts, sc in next 4 sts through both layers, sc in next 5 sts",
        "5 sc, 4 sc together with the first arm, 5 sc",
        "5 sc, 4 sc joining the arm, 5 sc",
        "sc 5, sc 4 through both pieces, sc 5",
    ],
)
def test_stitches_through_two_pieces(words: str) -> None:
    """They take as many stitches of the body as they are."""
    report = check(f"Moth\n\nTerms: US\n\nBODY\nRnd 1: 14 sc in magic ring. (14)\nRnd 2: {words} (14)\n")
    assert counts(report) == [14, 14]
    assert not corrections(report)


@pytest.mark.parametrize(
    ("label", "words", "rounds"),
    [
        ("Rnds 3-6", "4 rounds without change (12)", 4),
        ("Rnds 3-6", "no changes (12)", 4),
        ("Rnds 3-5", "rounds without increases. (12)", 3),
        ("Rnd 3", "work 2 rounds without increasing (12)", 2),
        ("Rnds 3-4", "even (12)", 2),
        ("Rnds 3-4", "sc in each st without increasing or decreasing (12)", 2),
    ],
)
def test_rounds_without_change(label: str, words: str, rounds: int) -> None:
    """Every round keeps its twelve stitches, and the count printed behind it is read."""
    report = check(f"Moth\n\nTerms: US\n\nBODY\nRnd 1: 6 sc in magic ring (6)\nRnd 2: 6 inc (12)\n{label}: {words}\n")
    assert counts(report)[2:] == [12] * rounds
    wrong = check(
        f"Moth\n\nTerms: US\n\nBODY\nRnd 1: 6 sc in magic ring (6)\nRnd 2: 6 inc (12)\n{label}: {words.replace('12', '14')}\n"
    )
    assert [rule for rule, _ in corrections(wrong)] == ["count-differs"]


_LETTERED = "R1: 6{x} into MR (6)\nR2: 6{v} (12)\nR3: ({x}, {v})*6 (18)\nR4: (2{x}, {v})*6 (24)\nR5-R7: 24{x} (24)\nR8: (2{x}, {a})*6 (18)\nR9: {x}, {v}, 5{x}, {a}, 9{x} (18)\n"


@pytest.mark.parametrize(
    "legend",
    [
        "",
        "X: single crochet\nV: increase\nA: decrease\n\n",
        "Abbreviations\nx - single crochet\nv - increase\na - decrease\nMR - magic ring\n\n",
    ],
)
@pytest.mark.parametrize("letters", [("x", "v", "a"), ("X", "V", "A")])
def test_letters_for_stitches(legend: str, letters: tuple[str, str, str]) -> None:
    """x, v and a are read where the list says what they are, or every count bears it out."""
    x, v, a = letters
    report = check(f"Moth\n\n{legend}BODY\n" + _LETTERED.format(x=x, v=v, a=a))
    assert counts(report) == [6, 12, 18, 24, 24, 24, 24, 18, 18]
    assert not corrections(report)


def test_letters_that_the_counts_do_not_bear_out() -> None:
    """With no list and counts that say otherwise, the letters stay unread."""
    text = _LETTERED.format(x="x", v="v", a="a").replace("(24)", "(30)")
    assert set(counts(check(f"Moth\n\nBODY\n{text}"))) == {None}


def test_an_x_that_means_times() -> None:
    """ "x 6" stays six times where x is a stitch as well."""
    report = check(
        "Moth\n\nx: single crochet\nv: increase\n\nBODY\nR1: 6x in MR (6)\nR2: v x 6 (12)\nR3: (x, v) x 6 (18)\n"
    )
    assert counts(report) == [6, 12, 18]


@pytest.mark.parametrize(
    ("start", "words", "made"),
    [
        (12, "2 sc in every 2nd st", 18),
        (18, "2 sc in every 3rd st and 1 sc in all other sts", 24),
        (24, "sc, increasing in every 4th st", 30),
        (24, "1 sc in each st, working 2 sc in every 6th st", 28),
        (20, "*sc in next 3 sts, 2 sc in next st; rep from * around, except work only 1 sc in last st", 24),
        (20, "*sc in next 3 sts, 2 sc in next st* repeat to end, except work 3 sc in the last st", 26),
    ],
)
def test_increases_told_by_their_place(start: int, words: str, made: int) -> None:
    """Every nth stitch takes two; an exception changes the last of them."""
    report = check(f"Moth\n\nTerms: US\n\nHAT\nRnd 1: {start} sc in magic ring. ({start})\nRnd 2: {words}\n")
    assert counts(report) == [start, made]


def test_every_third_stitch_of_a_round_that_does_not_divide() -> None:
    """Where the increases fall in twenty stitches is not said."""
    assert counts(check("Moth\n\nTerms: US\n\nHAT\nRnd 1: 20 sc in magic ring. (20)\nRnd 2: 2 sc in every 3rd st\n"))[
        1:
    ] == [None]


@pytest.mark.parametrize(
    "label", ["Rows 3-5 -", "Rnds 3-5 –", "3-5 rnds -", "Rounds 3-5 (3 rounds) -", "3 - 5 rows / 3 rows / -"]
)
def test_a_dash_between_the_label_of_a_range_and_its_number(label: str) -> None:
    """The dash ends the label: it is no part of the range, and the number behind it is of stitches."""
    report = check(
        f"Moth\n\nTerms: US\n\nBODY\nR1: 6 sc in magic ring (6)\nR2: 6 inc (12)\n{label} 12 sc\nR6: (sc 1, dec) x 4 (8)\n"
    )
    assert counts(report) == [6, 12, 12, 12, 12, 8]
    assert not corrections(report)


def test_letters_of_another_language() -> None:
    """Sbn, P and U, as some translations leave them: every count bears out single crochet, increase and decrease."""
    report = check(
        "Moth\n\nBODY\nR1: 6 Sbn in the amigurumi ring (6)\nR2: 6P (12)\nR3: (1Sbn, 1P) * 6 = 18\nR4: 3Sbn, 1P, 5Sbn, 1P, 8Sbn = 20\n"
        "R5-R7: 20 Sbn = 20\nR8: (3Sbn, 1U) * 4 = 16\n"
    )
    assert counts(report) == [6, 12, 18, 20, 20, 20, 20, 16]


def test_an_ear_closed_by_stitches() -> None:
    """What closes the opening is no part of the last round."""
    report = check(
        "Moth\n\nTerms: US\n\nEAR\nRnd 1: 6 sc in magic ring (6)\nRnd 2: 2 sc in each st (12)\nRnd 3: [sc 1, sc2tog] 4x (8)\n"
        "Flatten and sc through both layers 4 times to close.\n"
    )
    assert counts(report)[2] == 8


JUMPER = (
    "Fen Jumper\n\nSizes: S (M, L)\nUS terms\n\nBODY\nCh 80 (88, 96), join with sl st to form a ring.\n"
    "Rnd 1: Ch 1, sc in each ch around, join. (80, 88, 96)\n\nSLEEVES (make 2)\nCh 30 (32, 34), join to form a ring.\n"
    "Rnd 1: Ch 1, sc in each ch around, join. (30, 32, 34)\n\nYOKE\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        (
            "Sc in next 40 (44, 48) sts of Body, sc in each st of first Sleeve, sc in next 40 (44, 48) sts of Body, "
            "sc in each st of second Sleeve.",
            [140, 152, 164],
        ),
        (
            "Ch 1, sc across 40 (44, 48) body sts, sc across 30 (32, 34) sleeve sts, sc across 40 (44, 48) body sts, "
            "sc across 30 (32, 34) sleeve sts, join.",
            [140, 152, 164],
        ),
        (
            "Work 38 (42, 46) body sts, skip 2, 28 (30, 32) sleeve sts, skip 2, 38 (42, 46) body sts, skip 2, "
            "28 (30, 32) sleeve sts, skip 2.",
            [132, 144, 156],
        ),
        (
            "Sc in first 36 (40, 44) sts of body, leave next 4 sts unworked, sc in 26 (28, 30) sts of one sleeve, leave 4 sts "
            "unworked, sc in next 36 (40, 44) sts of body, leave 4 sts unworked, sc in 26 (28, 30) sts of other sleeve, leave 4 sts "
            "unworked.",
            [124, 136, 148],
        ),
    ],
)
def test_yoke_takes_in_stitches_of_body_and_sleeves(words: str, made: list[int]) -> None:
    """A yoke's first round goes over stitches of three pieces, in every size; none of the piece before is left over."""
    report = check(JUMPER + f"Rnd 1: {words}\nRnd 2: Sc in each st around.\n")
    for size in range(3):
        assert counts(report, size)[-2:] == [made[size], made[size]]
    assert not [rule for rule, _ in all_findings(report) if rule == "places-left-over"]


JACKET = (
    "Jacket\n\nUS terms\n\nBODY\nRnd 1: Fsc 60, join. (60)\nRnd 2: Sc around. (60)\n\n"
    "SLEEVE (make 2)\nRnd 1: Fsc 30, join. (30)\nRnd 2: Sc around. (30)\n\nYOKE\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("1 sc in each st of first sleeve, sc across 25 body sts.", 55),
        ("2 sc in each st of first sleeve, sc across 25 body sts.", 85),
        ("Dc in 25 body sts, 26 sleeve sts.", 51),
        # what more is said, or how it is meant, is not guessed
        ("2 dc in 25 body sts, 26 sleeve sts.", None),
        ("Sc across 25 body sts, inc in each st of sleeve.", None),
        ("Sc in each st of body and each st of sleeve.", None),
        ("Sc in each st of body to last 2 sts, sc2tog.", None),
        ("Sc in each st of sleeve decreasing 4 sts evenly.", None),
        ("Sc in next 36 sts of body twice, sc in next 20 sts of sleeve.", None),
        ("Sc in next 36 sts of body decreasing 4 evenly.", None),
    ],
)
def test_what_is_worked_into_stitches_of_a_piece(words: str, made: int | None) -> None:
    """All of a piece's stitches are as many as its last round has; words behind its name are not passed over."""
    assert counts(check(f"{JACKET}Rnd 1: {words}\n"))[-1] == made


@pytest.mark.parametrize(
    "words",
    [
        "6 sc, hold the first wing against the body and work 2 sc through wing and body, 6 sc, join the second wing with 2 sc in the same way, 6 sc",
        "6 sc, attach the first wing with 2 sc, 6 sc, attach the other wing in the same way with 2 sc, 6 sc",
    ],
)
def test_a_piece_joined_with_so_many_stitches(words: str) -> None:
    """Stitches through the piece and the body are so many of the body's round."""
    report = check(
        f"Bird\nUS terms\n\nBody\nRnd 1: 11 sc in magic ring. (11)\nRnd 2: inc x 11 (22)\nRnd 3: {words}. (22)\n"
    )
    assert counts(report) == [11, 22, 22]
    assert corrections(report) == []


@pytest.mark.parametrize(
    "words", ["join the wings with 2 sc each", "join the second wing with 4 ch", "join the second wing with sc"]
)
def test_a_piece_joined_in_a_way_that_is_not_told(words: str) -> None:
    """How many stitches of the round that takes is not said: the round is not recomputed."""
    report = check(f"Bird\nUS terms\n\nBody\nRnd 1: 11 sc in magic ring. (11)\nRnd 2: 5 sc, {words}, 4 sc.\n")
    assert outcomes(report)[1] == "not-recomputed"
