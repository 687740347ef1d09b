"""Rows that are for some stitches alone, decreases over so many, and bare numbers of times; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

_FLAT = "Band\n\nUS terms\n\nBAND\nRow 1: Fsc 12, turn. (12)\nRow 2: {}\n"
_ROUND = "Bud\n\nUS terms\n\nBUD\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: {}\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Working across the first 5 sts only, ch 1, sc in each st, turn.", 5),
        ("On next 5 sts, ch 1, sc in each st, turn.", 5),
        ("Over the first 7 stitches, hdc in each st across, turn.", 7),
        ("Work only on the first 5 sts: ch 3 (counts as dc), dc in next 4 sts, turn.", 5),
        ("Working over first 5 sts only, sc in next 3 sts, sc2tog, turn.", 4),
        ("Working over first 5 sts only, sc in next 7 sts, turn.", None),
        ("Ch 1, work on these 5 sts only, sc across, turn.", None),
        ("Ch 1, work on these 12 sts only, sc across, turn.", 12),
        ("On first 5 sts, sc, turn.", 5),
    ],
)
def test_a_row_is_confined_to_the_stitches_named(words: str, made: int | None) -> None:
    """The row has these stitches alone; which they are must be said, and the chain before it is no stitch in each of them."""
    assert counts(check(_FLAT.format(words)))[-1] == made


def test_what_a_confined_row_leaves_is_there_for_the_other_side() -> None:
    """The stitches beyond are left, and yarn joined to them works the rest."""
    words = (
        "Working over first 5 sts only, ch 1, sc in each st, turn. (5)\nRow 3: Ch 1, sc in each st across, turn. (5)\n"
        "Fasten off.\nRow 4: Skip next 2 unworked sts of Row 1, join yarn in next st, ch 1, sc in same st and in each st across. (5)"
    )
    report = check(_FLAT.format(words))
    assert counts(report) == [12, 5, 5, 5]
    assert "count-differs" not in [rule for rule, _ in all_findings(report)]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc in next 9 sts, dec over last 3 sts.", 10),
        ("*sc in next st, dec over next 3 sts; rep from * around.", 6),
        ("(dec over 3 sts) 4 times. (4)", 4),
        ("dec over next 4 sts, sc in next 8 sts. (10)", 10),
        ("dec over next 4 sts, sc in next 8 sts. (9)", 9),
        ("dec over next 4 sts, sc in next 8 sts.", None),
        ("dec over next 5 sts, sc in next 7 sts.", None),
        ("dec in next 3 sts, sc in next 9 sts.", None),
        ("2 dec over next 4 sts, sc in next 8 sts.", 10),
        ("sc2tog over next 3 sts, sc in next 9 sts.", None),
    ],
)
def test_a_decrease_over_so_many_closes_them_all(words: str, made: int | None) -> None:
    """Three go together as one; of four it is not said without a count; a number that does not come out stops the row."""
    assert counts(check(_ROUND.format(words)))[-1] == made


def test_the_stitches_that_a_decrease_goes_over_are_no_stitches_of_a_chart() -> None:
    """In a row of decreases with its count behind, "over next 2 sts" is a place, and nothing is asked about it."""
    report = check(_ROUND.format("(dec over next 2 sts) 6 times. (6)"))
    assert counts(report)[-1] == 6
    assert "place-not-there" not in [rule for rule, _ in all_findings(report)]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("[sc, inc] repeat (6). (18)", 18),
        ("(sc 1, inc 1), repeat 6. (18)", 18),
        ("(sc 1, inc 1) repeat (6x) (18)", 18),
        ("(sc, inc) repeat (18)", 18),
        ("1 sc, 1 inc x6 (18)", 18),
        ("6 sc, 1 inc x6 (18)", 18),
        ("sc 1, inc 1 x6 (18)", 18),
        ("1 inc x 12 (24)", 24),
        ("2 sc x 6 (24)", 12),  # over 12 places or into 6 of them, and 24 is wrong
    ],
)
def test_a_bare_number_of_times(words: str, made: int | None) -> None:
    """A number behind "repeat" is one of passes where the count stands behind it; "x6" is of one increase or of the list."""
    assert counts(check(_ROUND.format(words)))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Work 5 sts in sc, 2 dc in next st, work 6 sts in sc, turn.", 13),
        ("Work in sc on the next 5 sts, 3 dc in next st, sc to end, turn.", 14),
        ("Work in sc on next 5 sts, work in dc over last 7 sts.", 12),
        ("Work 5 sts in next st, sc to end.", None),
        ("A row of sc.", 12),
        ("Work a row of hdc in every st.", 12),
        ("Work a row of sc in every other st.", None),
        ("Work a row of sc around the edge.", None),
        ("Sc in each st across, but work 3 sc in the last st.", 14),
        ("Sc across, but inc in last st.", 13),
        ("Sc across, but inc in the last 2 sts.", None),
        ("Sc across, but work 2 sc in the first st.", None),
        ("Ch 1, sc in each st across, increasing 1 st in the last st.", 13),
    ],
)
def test_rows_of_one_stitch_and_their_exceptions(words: str, made: int | None) -> None:
    """ "Work 5 sts in sc", "a row of sc", and what the last stitch gets; a place that is not sure leaves no count."""
    assert counts(check(_FLAT.format(words)))[-1] == made
