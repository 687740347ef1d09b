"""Toys in letters without a heading over their list, and ovals whose other side is told in an aside.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

_ROUNDS = "R1: 6X in MR (6)\nR2: 6V (12)\nR3: 5X, W, 5X, W (16)\nR4: M, 13X (14)\nR5: 5X, A, 7X (13)\n"
_TWO_ROUNDS = "R1: 6X in MR (6)\nR2: 6V (12)\n"  # too few to tell by their counts what the letters mean


@pytest.mark.parametrize(
    "listed",
    [
        "X - single crochet, V - increase, A - decrease, W - 3 sc in one stitch, M - 3 sc together",
        "X = sc; V = inc; A = dec; W = 3 sc in one stitch; M = sc3tog",
        "X - single crochet\nV - increase\nA - decrease\nW - 3 single crochets in the same stitch\nM - 3 sc together",
    ],
)
def test_letters_listed_without_a_heading(listed: str) -> None:
    """Letters given to stitches make a list, in one line or in several, with those that the trade has no word for."""
    report = check(f"Otter\n\nCotton, 2.5 mm hook. US terms.\n\n{listed}\n\n{_ROUNDS}")
    assert counts(report) == [6, 12, 16, 14, 13]
    assert "abbreviations" not in " ".join(one.message for one in report.findings if one.rule == "section-missing")


def test_letters_of_colours_are_no_stitches() -> None:
    """ "A - main color" under the materials gives no list of stitches."""
    report = check(f"Otter\n\nUS terms.\n\nA - main color\nB - contrasting color\nC - yarn\n\n{_TWO_ROUNDS}")
    assert counts(report) == [None, None]


_OVAL = "Sole\n\nUS terms\n\n"


@pytest.mark.parametrize(
    "aside",
    [
        "(other side of the chain)",
        "(on the other side of the chain)",
        "[now along the other side]",
        "(turn to the other side)",
        "turn to other side,",
        "(now working along the opposite side)",
        ", now turn to the other side and work",
        "(turn and work along the other side of the foundation chain)",
    ],
)
@pytest.mark.parametrize(
    "begins",
    ["Ch 6, sc in 2nd ch from hook and in next 3 ch", "Ch 6. From 2nd ch from hook: 4 sc", "Ch 6, skip 1 ch, 4 sc"],
)
def test_other_side_in_an_aside(aside: str, begins: str) -> None:
    """The work goes on along the chain from below; nothing is lacking there."""
    report = check(f"{_OVAL}Rnd 1: {begins}, 3 sc in last ch {aside} 3 sc, inc (12)\nRnd 2: 12 sc (12)\n")
    assert counts(report) == [12, 12]
    assert corrections(report) == []


def test_other_side_of_a_print_that_is_wrong() -> None:
    """The count behind such an aside is held against what the row makes."""
    report = check(
        f"{_OVAL}Rnd 1: Ch 6, sc in 2nd ch from hook and in next 3 ch, 3 sc in last ch (other side) 3 sc, inc (13)\n"
    )
    assert counts(report) == [12]
    assert [finding.rule for finding in report.findings if finding.weight.value == "correction"][-1] == "count-differs"


def test_a_later_round_that_names_the_side() -> None:
    """Where no chain is worked, an aside on the other side of an oval changes nothing."""
    text = f"{_OVAL}Rnd 1: Ch 4, 2 sc in 2nd ch from hook, sc, 4 sc in last ch, other side: sc, 2 sc in last ch (10)\n"
    report = check(text + "Rnd 2: inc, 3 sc, inc (other side), inc, 3 sc, inc (14)\n")
    assert counts(report) == [10, 14]


def test_a_label_with_we_behind_it() -> None:
    """ "3 row We knit behind the back wall (2X, 1A) * 6": the label needs no sign, and the counts tell the letters."""
    text = "Cap\n\nUS terms\n\n1 row: 6 sbn in MR = 6\n2 row: 6P = 12\n3 row We knit behind the back wall (1Sbn, 1P) * 6 = 18\n4 row We knit (1Sbn, 1U) * 6 = 12\n"
    assert counts(check(text)) == [6, 12, 18, 12]


@pytest.mark.parametrize("sign", ["/", ","])
def test_an_entry_without_a_name(sign: str) -> None:
    """A sign alone before a recipe names no stitch, and stops nothing."""
    report = check(f"Ball\nUS terms\n\n{sign} = sl st in next st, 5 dc.\n\nRnd 1: 6 sc in magic ring. (6)\n")
    assert counts(report)[-1] == 6
