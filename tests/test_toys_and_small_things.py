"""Toys and small things in one size: what each of their phrasings makes, and what is told as not understood.

Worked out by hand; common practice, no source.
"""

from __future__ import annotations

from typing import Any

import pytest
from helpers import check, corrections, counts, line_of, worked_rows

HEAD = "Toy\n\nUS terms\n\n"


def _round(stitches: int, words: str) -> Any:
    """A report on a round worked upon one of so many single crochets."""
    return check(f"{HEAD}BODY\nRnd 1: {stitches} sc in magic ring. ({stitches})\nRnd 2: {words}\n")


ROUNDS = [
    # how much "n times" repeats, without brackets: the row tells
    (20, "3 sc, inc 5 times. (25)", 25),
    (20, "Sc in next 3 sts, inc five times. (25)", 25),
    (20, "sc, inc, 3 sc, inc 4 times, 2 sc. (25)", 25),
    (20, "5 sc, inc x 5, 10 sc. (25)", 25),
    (20, "3 sc, dec twice, 13 sc. (18)", 18),
    (24, "(3 sc, inc x 2, sc) x 4. (32)", 32),
    # one after the other
    (20, "sc, inc alternately around (30)", 30),
    (20, "FPsc and BPsc alternately to the end. (20)", 20),
    # one passage for each stitch
    (8, "(Hdc in next st, FPhdc around same st) in each st around. (16)", 16),
    (8, "(sc in next st, hdc in the same st) in each st to last 2 sts, sc in last 2 sts. (14)", 14),
    (8, "(sc in next st, 2 sc in next st) in each st around.", None),
    # colours that lead the work
    (20, "in white: 8 sc, in red: 4 sc, in white: 8 sc. (20)", 20),
    (20, "In white 8 sc, in red 12 sc. (20)", 20),
    (20, "In white, 8 sc, in red, 12 sc. (20)", 20),
    # slip stitches over a whole round are its stitches
    (20, "Sl st in next 20 sts. (20)", 20),
    (20, "20 sl st (20)", 20),
    (20, "Sl st in next 3 sts, fasten off.", 0),
    # what comes next
    (20, "Sc in each st around. Do not fasten off; continue with the body.", 20),
    (20, "Sc in each st around, continue to the marker.", None),
]


@pytest.mark.parametrize(("before", "words", "made"), ROUNDS, ids=[words[:70] for _, words, _ in ROUNDS])
def test_round_makes(before: int, words: str, made: int | None) -> None:
    """The round makes what is worked out by hand, without a correction, or it is not recomputed."""
    report = _round(before, words)
    assert counts(report)[-1] == made
    assert made is None or corrections(report) == []


@pytest.mark.parametrize("words", ["5 sc each (5)", "5 sc each.", "5 sc per round (5)", "sc 5 each [5]"])
def test_so_many_in_each_of_several_rounds(words: str) -> None:
    """In a range of rounds "5 sc each" is said of the rounds: it does not grow five times with every one."""
    report = check(f"{HEAD}ARM\nRnd 1: 5 sc in magic ring. (5)\nRnds 2-4: {words}\n")
    assert counts(report) == [5, 5, 5, 5]


def test_two_in_each_stitch_of_one_round() -> None:
    """ "2 sc each" is said of the stitches."""
    assert counts(_round(7, "2 sc each (14)"))[-1] == 14


JOINED = [
    ("sc in 10 sts of first leg, sc in 10 sts of second leg (20)", 20),
    ("sc in each of 10 sts of the first leg, sc in each of 10 sts of the second leg (20)", 20),
    ("sc around the first leg (10), sc around the second leg (10)", 20),
    ("3 ch, connect with the first leg, 10 sc along the first leg, 3 sc along the chain, 10 sc along the second leg, 3 sc along the other side of the chain (26)", 26),
    ("3 ch, connect to the first leg with a sl st, 10 sc on the first leg, 3 sc on the chain, 10 sc on the second leg, 3 sc on the other side of the chain (26)", 26),
    ("ch 3, sc in any st on the inside of first leg, sc in next 9 sts of first leg, sc in each of 3 ch, sc in each of 10 sts of second leg, sc in opposite side of each of 3 ch (26)", 26),
    ("ch 3, connect the legs, 10 sc, 3 sc on ch, 10 sc, 3 sc on ch (26)", None),
]  # fmt: skip


@pytest.mark.parametrize(("words", "made"), JOINED, ids=[words[:60] for words, _ in JOINED])
def test_legs_joined(words: str, made: int | None) -> None:
    """Two legs of ten stitches become one round; the count at its end is none of the second leg's."""
    report = check(
        f"{HEAD}LEG (make 2)\nRnd 1: 10 sc in magic ring. (10)\nDo not fasten off the second leg.\n\nBODY\nRnd 2: {words}\n"
    )
    assert counts(report)[-1] == made
    assert corrections(report) == []


@pytest.mark.parametrize("unit", ["s", "pts", "total", "in total"])
def test_short_words_for_stitches_in_a_count(unit: str) -> None:
    """A count in such a unit is compared."""
    assert corrections(_round(9, f"Sc in each st around. (9 {unit})")) == []
    assert [rule for rule, _ in corrections(_round(9, f"Sc in each st around. (8 {unit})"))] == ["count-differs"]


@pytest.mark.parametrize("entry", ["pt, pts: stitch, stitches", "pt(s): stitch(es)", "pt = stitch"])
def test_own_word_for_a_stitch(entry: str) -> None:
    """What a list says is a stitch is worked into as one, and counted as one."""
    text = f"{HEAD}Abbreviations\nsc: single crochet\n{entry}\nch: chain\n\nBODY\nRnd 1: 8 sc in magic ring. (8 pts)\nRnd 2: 2 sc in each pt. (16 pts)\nRnd 3: Sc in each pt. (15 pts)\n"
    report = check(text)
    assert counts(report) == [8, 16, 16]
    assert ("count-differs", line_of(text, "Rnd 3")) in corrections(report)


@pytest.mark.parametrize(
    "listed",
    [
        "ch = chain // sc = single crochet // inc = 2 sc in the same stitch // st = stitch",
        "Abbreviations\nch chain | sc single crochet | inc increase (2 sc in one st) | st stitch",
        "Abbreviations\nch - chain\nsc - single crochet\ninc - increase (see below)\nst - stitch",
    ],
)
def test_lists_of_abbreviations(listed: str) -> None:
    """However an entry is set apart, and whatever stands in brackets behind it, it explains its word."""
    report = check(f"{HEAD}{listed}\n\nBODY\nRnd 1: 6 sc in ring. (6)\nRnd 2: Inc in each st. (12)\n")
    assert not [rule for rule, _ in corrections(report) if rule == "abbreviation-undefined"]


def test_plural_of_a_space_that_a_list_explains() -> None:
    """ "ch sp" in the list explains "ch sps"; "ch" alone does not."""
    rows = "BODY\nRnd 1: 6 sc in ring. (6)\nRnd 2: *Sc in next sc, ch 1; rep from * around. (6 sc, 6 ch sps)\n"
    words = "Abbreviations\nch - chain\nsc - single crochet\nrep - repeat\nrnd - round\n"
    assert corrections(check(f"{HEAD}{words}ch sp - chain space\n\n{rows}")) == []
    assert [rule for rule, _ in corrections(check(f"{HEAD}{words}\n{rows}"))] == ["abbreviation-undefined"]


@pytest.mark.parametrize(
    "words",
    [
        "Sc in each st around (10). Fold and 5 sc through both layers.",
        "Sc in each st around (10), flatten, 5 sc through both layers (5)",
        "Sc in each st around. Press flat, 5 sc through both layers. (5)",
    ],
)
def test_closing_behind_the_count_of_the_last_round(words: str) -> None:
    """How the piece is closed is no part of its last round."""
    report = _round(10, words)
    assert counts(report) == [10, 10]
    assert corrections(report) == []


def test_line_that_begins_with_no_fastening_off_is_not_passed_over() -> None:
    """Chains told behind "Do not fasten off." lie before the coming row: it is not said to run out of places."""
    report = check(
        f"{HEAD}BIB\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch, turn. (8)\nDo not fasten off. Ch 20 for the back of the waist, "
        "and join to the other end of Row 1.\nRound 1: Ch 1, sc in each of 8 sts of bib, sc in each of 20 ch. (28)\n"
    )
    assert corrections(report) == []


@pytest.mark.parametrize("begin", ["Bib: With Plum, make 9 ch.", "Bib: With 3 mm hook and Plum, ch 9.", "With Plum and smaller hook, ch 9."])  # fmt: skip
def test_chain_behind_colour_and_hook(begin: str) -> None:
    """The chain that a piece begins with, whatever is said of yarn and hook before it."""
    text = f"{HEAD}APRON\n{begin}\nRow 1: Sc in 2nd ch from hook and in each ch, turn. (8)\n"
    assert counts(check(text)) == [8]


def test_chain_that_is_a_piece() -> None:
    """A tie that is only chained is no row without stitches."""
    text = f"{HEAD}BODY\nRnd 1: 6 sc in ring. (6)\nFasten off.\n\nTies (make 2): With red, ch 40 and fasten off.\n"
    assert [row.row.label.words for row in worked_rows(check(text))] == ["Rnd 1"]


def test_seam_in_a_line_of_its_own() -> None:
    """How first and last row are joined, and how the tube is turned, is no part of the rows above."""
    report = check(
        f"{HEAD}CUFF\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch. (8)\nRow 2: Ch 1, turn, sc in each st.\nRows 3-6: Rep Row 2.\n"
        "Join the last row to the starting chain. Do not fasten off, but turn so that the seam is inside and work along one edge.\n"
    )
    assert counts(report) == [8, 8, 8, 8, 8, 8]


def test_names_of_pieces() -> None:
    """A colour under a piece's name is no piece, and bold marks are no part of a name."""
    report = check(
        f"{HEAD}Yarn: brown 50 g, cream 20 g\n\n**Ears** (make 2)\nRnd 1: 6 sc in ring. (6)\n\nHead and body (in one piece, begun at the nose)\nBrown.\nRnd 1: 6 sc in ring. (6)\n"
    )
    names = dict.fromkeys(row.part.name for row in worked_rows(report))
    assert list(names) == ["Ears", "Head and body (in one piece, begun at the nose)"]


def test_half_of_a_piece_named_with_a_colon() -> None:
    """ "First half:" over a first row is a piece that a later one may be worked like; "Yellow:" over a row is none."""
    report = check(
        f"{HEAD}TAIL\nFirst half (in rows):\nRow 1: Ch 6, sc in 2nd ch from hook and in each ch, turn. (5)\nRow 2: Ch 1, sc in each st. (5)\nFasten off.\n"
        "Second half: Join yarn in first st.\nRows 1-2: Work as for first half.\n"
    )
    assert counts(report) == [5, 5, 5, 5]
    plain = check(f"{HEAD}BODY\nRnd 1: 6 sc in ring. (6)\nYellow:\nRnd 2: Sc in each st around. (6)\n")
    assert {row.part.name for row in worked_rows(plain)} == {"BODY"}
