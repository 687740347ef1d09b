"""What is told beside a row's work: how often its run is worked now, what is put inside, what comes before the join.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

_WEDGE = """Wedge
US terms

Row 1: Fsc 4, turn. (4 sc)
Row 2: Ch 1, [sc in next st, 2 sc in next st] 2 times, turn. (6 sc)
Row 3: Rep Row 2, {}. (9 sc)
"""


@pytest.mark.parametrize(
    "words",
    [
        "working the instructions in brackets 3 times",
        "working each repeat between brackets 3 times",
        "repeating the bracketed section 3 times instead of 2",
    ],
)
def test_the_run_in_brackets_is_worked_so_often(words):
    """Six stitches are three pairs: nine."""
    assert counts(check(_WEDGE.format(words))) == [4, 6, 9]


@pytest.mark.parametrize("words", ["working the last part 3 times", "working repeat 1 more time", "working it 3 times"])
def test_how_often_is_not_guessed(words):
    """Which passage that is, or from which number it counts, is not told."""
    assert counts(check(_WEDGE.format(words)))[2] is None


def test_runs_worked_differently_often_have_no_one_number():
    """Of a run of two and one of three the words do not tell which is worked so often."""
    text = _WEDGE.replace("2 times, turn. (6 sc)", "2 times, [sc in same st] 3 times, turn. (9 sc)")
    assert counts(check(text.format("working the instructions in brackets 3 times")))[2] is None


_BALL = "Ball\nUS terms\n\n{0}\nRnd 1: Ch 1, 6 sc in magic ring, join. (6)\nRnd 2: Ch 1, 2 sc in each sc around, join. (12)\nFasten off.\n\n"


@pytest.mark.parametrize("name", ["FIRST HALF", "TOP PIECE", "FRONT HALF"])
def test_rounds_of_a_half_are_called_by_its_name(name):
    """ "Work Rnds 1 and 2 as for Front Half" makes them again."""
    text = _BALL.format(name) + f"THE OTHER ONE\nWork Rnds 1 and 2 as given for {name.title()}.\n"
    assert counts(check(text + "Rnd 3: Ch 1, sc in each sc around, join. (12)\n"))[-1] == 12


_ROUND = "Pad\nUS terms\n\nRnd 1: Ch 1, 6 sc in magic ring, join. (6)\nRnd 2: Ch 1, sc in next 3 sc. {} Sc in next 3 sc. {} (6)\n"


@pytest.mark.parametrize(
    ("put", "made"),
    [
        ("Place a bell between the 2 halves.", 6),
        ("Place the lavender bag inside.", 6),
        ("Place the remaining loops inside.", None),
    ],
)
def test_a_thing_put_inside_is_no_work(put, made):
    """What the piece is closed over changes no stitch; what is done with the hook may."""
    assert counts(check(_ROUND.format(put, "Join.")))[1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Before joining, ch 9 for a hanging loop. Join.", 6),
        ("Before you fasten off, ch 9 for a loop. Join.", 6),
        ("Before joining skip the last sc.", None),
        ("Before joining 2 sc in last sc.", None),
    ],
)
def test_what_is_worked_before_the_join_stands_in_its_order(words, made):
    """The words in front only tell when; without their comma they may hold work."""
    assert counts(check(_ROUND.format("", words)))[1] == made


@pytest.mark.parametrize(
    "wish",
    [
        "For a bigger pad, repeat Rnd 2.",
        "Count your stitches. For a wider mat, repeat Rnd 2 before you go on.",
        "If you'd like a larger one, work more rounds here.",
    ],
)
def test_a_wish_for_a_bigger_piece_leaves_the_counts_printed(wish):
    """The rows behind it have their counts without what is worked at will."""
    text = _BALL.format("PAD").replace("Fasten off.\n\n", f"{wish}\nRnd 3: Ch 1, sc in each sc around, join. (12)\n")
    report = check(text)
    assert counts(report)[-1] == 12 and not {"count-differs", "not-understood"} & set(dict(all_findings(report)))


def test_an_order_to_repeat_is_no_wish():
    """ "Repeat Rnd 2." is worked, and the next round told to be smaller differs."""
    text = _BALL.format("PAD").replace(
        "Fasten off.\n\n", "Repeat Rnd 2.\nRnd 4: Ch 1, sc in each sc around, join. (12)\n"
    )
    assert counts(check(text))[-1] == 24


@pytest.mark.parametrize(
    ("words", "made"),
    [("in each ch back to the rim", 6), ("in each ch back down to the belly", 6), ("in some ch back to the rim", None)],
)
def test_a_cord_is_worked_back_to_where_it_was_begun(words, made):
    """Every chain to the rim is every chain."""
    cord = f"Ch 8, sl st in 2nd ch from hook and {words}."
    assert counts(check(_ROUND.format(cord, "Join.")))[1] == made
