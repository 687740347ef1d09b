"""Increases and decreases that a list names and explains in one breath.

Forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

_LIST = "Duck\n\nUS terms\n\nAbbreviations\nsc = single crochet\nst = stitch\nMR = magic ring\n"


@pytest.mark.parametrize(
    "meaning",
    [
        "increase, 2 single crochet in one stitch",
        "increase by one stitch; work two sc into the same st",
        "sc increase, i.e. 2 sc in the next stitch",
        "2 sc in the same st (increase)",
        "increase (sc twice into one stitch)",
    ],
)
def test_an_increase_that_is_named_and_explained_is_one_increase(meaning: str) -> None:
    """The name and the words behind it are the same two stitches, not four."""
    report = check(_LIST + f"U = {meaning}\n\nBILL\nR1: MR, 5 sc (5)\nR2: 5U (10)\nR3: (sc, U)*5 (15)\n")
    assert counts(report) == [5, 10, 15]
    assert corrections(report) == []


@pytest.mark.parametrize(
    "meaning",
    ["decrease, sc2tog", "decrease: single crochet the next 2 sts together", "decrease, 2 sts together as one"],
)
def test_a_decrease_that_is_named_and_explained_is_one_decrease(meaning: str) -> None:
    """The name and the words behind it are one stitch over two."""
    report = check(_LIST + f"D = {meaning}\n\nBILL\nR1: MR, 9 sc (9)\nR2: (sc, D)*3 (6)\n")
    assert counts(report) == [9, 6]
    assert corrections(report) == []


@pytest.mark.parametrize(
    ("entry", "row", "made"),
    [
        ("inc: 3 sc in one st", "inc, 5 sc", 8),
        ("inc = increase, work 3 sc in the same stitch", "inc, 5 sc", 8),
        ("E = increase (3 sc in the same stitch)", "E, 5 sc", 8),
        ("dec = sc3tog", "dec, 3 sc", 4),
    ],
)
def test_a_shaping_of_more_than_two_is_the_patterns_own(entry: str, row: str, made: int) -> None:
    """Where the list says three, the pattern's increase makes three and its decrease takes three."""
    report = check(_LIST + f"{entry}\n\nBILL\nR1: MR, 6 sc (6)\nR2: {row} ({made})\n")
    assert counts(report) == [6, made]
    assert corrections(report) == []


@pytest.mark.parametrize(
    ("entry", "row"),
    [
        ("D = decrease, skip one stitch", "D, 4 sc"),
        ("dec: sc 3 sts together", "dec, 3 sc"),
        ("D = decrease (skip 1)", "D, 4 sc"),
    ],
)
def test_a_shaping_explained_in_words_not_understood_is_not_worked(entry: str, row: str) -> None:
    """The usual meaning of the name is not put in the place of other words."""
    report = check(_LIST + f"{entry}\n\nBILL\nR1: MR, 6 sc (6)\nR2: {row}\n")
    assert counts(report)[0] == 6
    assert outcomes(report)[-1] == "not-recomputed"


@pytest.mark.parametrize("row", ["hdc in 3LO of each st around", "3LO, 8 hdc", "(hdc 3LO, hdc) 4 times"])
@pytest.mark.parametrize("name", ["3LO", "TLO"])
def test_the_third_loop_under_a_short_name(name: str, row: str) -> None:
    """A short name for the third loop, which may begin with its figure, tells where the hook goes and no number."""
    report = check(
        _LIST + f"hdc = half double crochet\n{name}: third loop only\n\nCAP\nRnd 1: 8 hdc in magic ring. (8)\n"
        f"Rnd 2: {row.replace('3LO', name)}. (8)\n"
    )
    assert counts(report) == [8, 8]
    assert corrections(report) == []


def test_a_recipe_in_brackets_among_bare_entries() -> None:
    """ "V-st (dc, ch 1, dc) in one place" stands among entries without a sign between form and meaning."""
    report = check(
        "Marker\n\nUS: ch chain / dc double crochet / sl st slip stitch / st stitch / V-st (dc, ch 1, dc) in one place\n\n"
        "STRIP\nRow 1: Fdc 6, turn. (6)\nRow 2: Ch 3 (counts as dc), V-st in each of next 4 sts, dc in last st. (10)\n"
    )
    assert counts(report) == [6, 10]
    assert [rule for rule, _ in corrections(report) if rule != "abbreviation-undefined"] == []


@pytest.mark.parametrize("single", ["X   sc, single crochet\n", ""])
def test_letters_beside_a_shaping_that_is_explained(single: str) -> None:
    """ "sc, single crochet" is one stitch under two names; a letter that only the counts tell is read beside those listed."""
    report = check(
        f"Duck\n\nStitches\n{single}V   inc, 2 sc in one stitch\nA   dec, 2 sc together\nch  chain\nsl  slip stitch\nBLO  back loop only\n\n"
        "HEAD\nR1: 6X in magic ring (6)\nR2: 6V (12)\nR3: (X, V)*6 (18)\nR4: (X, A)*6 (12)\nR5: 12X (12)\n"
    )
    assert counts(report) == [6, 12, 18, 12, 12]
