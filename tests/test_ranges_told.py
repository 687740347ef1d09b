"""Ranges that say how many rows they are, and lines that stand between a piece's name and its first row.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

_FIN = "Fish\n\nFin (make 2)\nRnd 1: 9 sc in magic ring (9)\n"


@pytest.mark.parametrize(
    "words", ["9 sc (9) – 4 rnds", "9 sc (9), 4 rounds.", "sc around (9) - 4 rnds", "unchanged (9) – 4 rounds"]
)
def test_a_range_told_once_more_at_its_end(words: str) -> None:
    """ "– 4 rnds" behind the count of Rnds 2-5 says nothing new, and the next line's round stays its own."""
    report = check(_FIN + f"Rnds 2-5: {words}\nRnd 6: (1 sc, sc2tog) 3 times (6)\n")
    assert counts(report) == [9, 9, 9, 9, 9, 6]
    assert corrections(report) == []


def test_so_many_rounds_behind_one_number_are_not_passed_over() -> None:
    """Where the label is one round's, "– 4 rnds" would make more of them: that is not counted."""
    report = check(_FIN + "Rnd 2: 9 sc (9) – 4 rnds\n")
    assert outcomes(report)[1] == "not-recomputed"


@pytest.mark.parametrize("words", ["9 sc (9) – 4 rnds of hdc", "9 sc, 4 rnds more (9)"])
def test_rounds_of_something_else_stop_the_range(words: str) -> None:
    """Words behind the number of rounds may be work: the range is not counted without them."""
    report = check(_FIN + f"Rnds 2-5: {words}\n")
    assert set(outcomes(report)[1:]) == {"not-recomputed"}


@pytest.mark.parametrize(
    "line",
    [
        "Rnds 2-5 (5 rnds): sc around (9)",
        "Rnds 2-5: sc around (9) (5 rnds)",
        "Rnds 2-5: 9 sc (9) - 5 rnds",
        "Rnds 2-5: 9 sc (9) – 5 rnds unchanged",
    ],
)
def test_a_range_of_another_length_than_it_says(line: str) -> None:
    """Rnds 2-5 are four: where their own words say five, one of the two is wrong."""
    assert corrections(check(_FIN + line + "\nRnd 6: sc around (9)\n")) == [("range-length-differs", 5)]


@pytest.mark.parametrize(
    "line",
    [
        "Rnds 2-5 (4 rnds): sc around (9)",
        "Rnds 2-5: sc around (9), changing colour every 2 rnds.",
        "Rnds 2-5: 9 sc (9). Sew the fin on 3 rnds above the tail.",
        "Rnds 2-5: With A sc around (1 rnd), with B sc around (3 rnds) (9)",
    ],
)
def test_other_numbers_of_rounds_are_no_length(line: str) -> None:
    """A number of rounds that is right, or is told of something else or of some of them, is no fault of the range."""
    assert "range-length-differs" not in [rule for rule, _ in corrections(check(_FIN + line + "\n"))]


@pytest.mark.parametrize(
    "line", ["Now work back and forth in rows", "The tab is worked in turned rows", "Cont in short rows"]
)
def test_a_sentence_without_a_stop_before_a_row(line: str) -> None:
    """A sentence whose last word is "rows" does not go on with "Row 1:" in the next line."""
    report = check(_FIN + f"{line}\nRow 1: Ch 1, sc in next 4 sts, turn. (4)\nRow 2: Ch 1, sc in each st. (4)\n")
    assert counts(report) == [9, 4, 4]


@pytest.mark.parametrize("line", ["Orange thread", "Off white thread.", "Pale cotton", "Worked in a spiral"])
def test_a_line_on_yarn_or_way_under_a_piece_is_no_heading(line: str) -> None:
    """The yarn's colour or how the piece is worked, said under its name, is no piece of its own."""
    report = check(f"Fish\n\nFin (make 2)\n{line}\nRnd 1: 9 sc in magic ring (9)\n")
    assert [(part.name, part.make) for part in report.pattern.parts] == [("Fin", 2)]
    assert counts(report) == [9]


@pytest.mark.parametrize("line", ["Place the eyes between 3 and 4 rnds.", "Change to the other colour."])
def test_a_line_behind_a_range_told_once_more(line: str) -> None:
    """What stands below "(9) – 4 rnds" with a capital is a sentence of its own."""
    report = check(_FIN + f"Rnds 2-5: 9 sc (9) – 4 rnds\n{line}\nRnd 6: sc around (9)\n")
    assert counts(report) == [9, 9, 9, 9, 9, 9]


@pytest.mark.parametrize(
    "gauge", ["Swatch: 16 dc x 8 rows = 10 x 10 cm", "Stitch trial: 16 dc and 8 rows = 10 x 10 cm"]
)
def test_a_gauge_under_the_name_of_its_swatch(gauge: str) -> None:
    """A gauge headed by the word for the piece it is measured on is a gauge."""
    report = check(f"Fish\n\n{gauge}\n\nFin\nRnd 1: 9 sc in magic ring (9)\n")
    assert not [one for one in report.findings if one.rule == "section-missing" and "gauge" in one.message]


def test_a_gauge_under_its_heading_defines_nothing() -> None:
    """ "12 dc to 10 cm (4 in)" under "Gauge" is no entry of the list of abbreviations."""
    report = check(
        "Fish\n\nGAUGE\n12 dc and 7 rounds to 10 cm (4 in).\n\nABBREVIATIONS\nsc, single crochet; st(s), stitch(es).\n\n"
        "Fin\nRnd 1: 9 sc in magic ring (9)\nRnd 2: sc in next 9 sts (9)\n"
    )
    assert [form for entry in report.pattern.abbreviations for form in entry.forms] == ["sc", "st", "sts"]


_STRIP = "Shawl\n\nStrip\nCh 8.\nRow 1: Dc in 4th ch from hook (3 skipped ch count as dc) and in each ch. (6 dc)\n"


@pytest.mark.parametrize("verb", ["comes in", "goes into", "is worked in", "should be in"])
def test_where_the_last_stitch_comes(verb: str) -> None:
    """ "The last dc comes in the top of the turning ch" says where a repeat ends, with any verb."""
    report = check(
        _STRIP
        + f"Row 2: Turn, ch 3 (= 1 dc), *1 dc in next dc*, rep from * to * to the end, the last dc {verb} the top of the turning ch. (6 dc)\n"
    )
    assert counts(report) == [6, 6]


@pytest.mark.parametrize("words", ["is skipped", "is worked twice", "is worked as a sc in the turning ch"])
def test_what_alters_the_last_stitch_is_not_passed_over(words: str) -> None:
    """A last stitch that is left out, doubled or another one leaves the row not recomputed."""
    report = check(
        _STRIP + f"Row 2: Turn, ch 3 (= 1 dc), *1 dc in next dc*, rep from * to * to the end, the last dc {words}.\n"
    )
    assert outcomes(report)[1] == "not-recomputed"


def test_a_range_told_behind_an_equals_sign() -> None:
    """ "(9) = 4 rnds" tells how many rounds a range stands for, and the next line is its own."""
    report = check(_FIN + "Rnds 2-5: sc around (9) = 4 rnds\nRnd 6: sc around (9)\n")
    assert counts(report) == [9] * 6
    assert corrections(check(_FIN + "Rnds 2-5: sc around (9) = 3 rnds\n")) == [("range-length-differs", 5)]


@pytest.mark.parametrize(("number", "differs"), [("two", False), ("2", False), ("3", True)])
def test_handles_counted_by_their_chains(number: str, differs: bool) -> None:
    """ "2 ch-6 handles" in a count are the runs of so many chains over skipped stitches."""
    report = check(
        "Tub\nUS terms\n\nRnd 1: 20 sc in magic ring (20)\n"
        f"Rnd 2: sc in next 6 sts, ch 6, skip 4, sc in next 6 sts, ch 6, skip 4. (12 sc, {number} ch-6 handles)\n"
    )
    assert counts(report) == [20, 12]
    assert (corrections(report) == [("count-differs", 5)]) is differs


_WEDGE = (
    "Wedge\nUS terms\n\nBody\nCh 2.\nRow 1: 3 sc in 2nd ch from hook, turn. (3 sc)\n"
    "Row 2: Ch 1, 2 sc in first sc, sc in each sc to last sc, 2 sc in last sc, turn. (5 sc)\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "adding 2 sc in each row",
        "increasing by 2 sts in every row",
        "each row having 2 sc more than the one before",
    ],
)
def test_rows_again_that_grow_by_stitches(words: str) -> None:
    """How many stitches each repeated row gains is told beside the call, and held against what is worked."""
    report = check(_WEDGE + f"Rows 3-5: Rep Row 2, {words}. (11 sc)\n")
    assert counts(report) == [3, 5, 7, 9, 11]


@pytest.mark.parametrize(
    "words", ["increasing by 3 sts in every row", "decreasing 2 sts in every row", "with 2 sc more in each row"]
)
def test_rows_again_that_do_not_grow_so(words: str) -> None:
    """Where the row called for gains another number, or the words may be work besides, it is not counted."""
    assert counts(check(_WEDGE + f"Rows 3-5: Rep Row 2, {words}.\n"))[2] is None


def test_going_on_to_the_body_is_no_row() -> None:
    """ "Work straight on to the body" between two rounds is talk."""
    report = check(_FIN + "Work straight on to the body.\nRnd 2: sc around (9)\n")
    assert outcomes(report) == ["agrees", "agrees"]
