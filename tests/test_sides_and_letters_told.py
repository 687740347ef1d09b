"""Sides worked "across", rounds that go on "in this manner", more told behind the fastening, rows with a yarn's letter."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, worked_rows

_SQUARE = """Square

{terms} terms. Ch 3 counts as a {dc}.

Rnd 1: Ch 4, join to form ring. Ch 3, 4 {dc} in ring, ch 2, (5 {dc} in ring, ch 2) 3 times, join to top of ch-3. (20 {dc})
Rnd 2: {words}
"""


def _square(words: str, terms: str = "US"):
    """The report on a second round over a square with five stitches to a side."""
    dc, sc = ("dc", "sc") if terms == "US" else ("tr", "dc")
    return check(_SQUARE.format(terms=terms, dc=dc, words=words.replace("SC", sc).replace("DC", dc)))


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize(
    "words",
    [
        "Sl st to corner sp, ch 1, *(2 SC, ch 2, 2 SC) in corner sp, SC across side; rep from * 3 more times, join. (36 SC)",
        "Sl st to corner sp, ch 1, [(2 SC, ch 2, 2 SC) in corner sp, SC along the side] 4 times, join. (36 SC)",
        "Sl st to corner sp, ch 1, (2 SC, ch 2, 2 SC) in corner sp, SC in each DC across side, continue around in this manner, join. (36 SC)",
        "Sl st to corner sp, ch 1, (2 SC, ch 2, 2 SC) in corner sp, SC along the side, repeat around, join. (36 SC)",
        "Sl st to corner sp, ch 1, (2 SC, ch 2, 2 SC) in corner sp, SC in next 5 DC, and so on around, join. (36 SC)",
    ],
)
def test_sides_as_far_as_the_corner(words: str, terms: str) -> None:
    """A stitch in each as far as the next corner, and all sides as the first; the moves before them are made once."""
    report = _square(words, terms)
    assert counts(report) == [20, 36] and corrections(report) == []
    wrong = _square(words.replace("36", "35"), terms)
    assert counts(wrong) == [20, 36] and [rule for rule, _ in corrections(wrong)] == ["count-differs"]


@pytest.mark.parametrize(
    "words",
    [
        "Ch 3, DC across side, (2 DC, ch 2, 2 DC) in corner sp, continue around in this manner, join. (36 DC)",
        "Sl st to corner sp, ch 1, (2 SC, ch 2, 2 SC) in corner sp, SC in next 5 DC, continue around in this manner, join. (36 SC)",
        "Sl st to corner sp, ch 1, (2 SC, ch 2, 2 SC) in corner sp, SC across side, continue around in patt, join. (36 SC)",
    ],
)
def test_what_goes_on_is_not_guessed(words: str) -> None:
    """Where a chain stands for the first stitch, or what goes on is not a side and its corner, the round is not counted."""
    report = _square(words)
    assert counts(report) == [20, None] and corrections(report) == []


def test_a_side_of_row_ends_is_not_known() -> None:
    """Along the edge of rows nobody can tell how many stitches "sc across side" are."""
    text = "Cloth\n\nUS terms\n\nCh 6.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (5)\n"
    text += "Rows 2-5: Ch 1, sc in each sc across, turn. (5)\n\nBorder\nRnd 1: Ch 1, *3 sc in corner, sc across side; rep from * 3 more times, join.\n"
    assert counts(check(text)) == [5] * 5 + [None]


_ENDS = """Runner

UK terms

Middle
Make 12 ch.
1st row: 1 dc into 2nd ch from hook, 1 dc into each ch to end (11 dc).
2nd row: 1 ch, turn, 1 dc into each dc to end (11 dc).{more}
"""


@pytest.mark.parametrize(
    "more",
    [
        " Fasten off. Repeat on other side.",
        "\nFasten off. Repeat on other side.",
        "\nFasten off. Repeat along opposite edge. Fasten off.",
        "\nFasten off.\nRepeat on the other side.",
    ],
)
def test_more_on_the_other_side_is_told(more: str) -> None:
    """Rows bid in a few words behind the fastening are not passed over in silence; the row before them stays counted."""
    report = check(_ENDS.format(more=more))
    assert counts(report) == [11, 11]
    assert ("not-understood", report.source.line_of(report.ledger.rows[-1].span)) in all_findings(report, ("query",))


@pytest.mark.parametrize(
    "more", [" Fasten off. Repeat for the other handle.", " Fasten off. Make a second runner the same."]
)
def test_another_piece_behind_the_fastening_is_no_row(more: str) -> None:
    """The piece is made twice, and no row of it is lacking."""
    report = check(_ENDS.format(more=more))
    assert counts(report) == [11, 11] and "not-understood" not in [rule for rule, _ in all_findings(report)]


_STRIPES = "Band\n\nUS terms\n\nCh 10.\nRow 1 {a}: Sc in 2nd ch from hook and in each ch across, turn. 9 sc\n{rows}"
_EACH = "Ch 1, sc in each sc across, turn. 9 sc\n"


@pytest.mark.parametrize(("a", "b"), [("A", "B"), ("W", "Y"), ("MC", "CC")])
def test_letters_behind_the_numbers_of_rows(a: str, b: str) -> None:
    """A yarn's letter behind a number or a range, declared or not, is no word of the row."""
    rows = f"Rows 2-3 {b}: {_EACH}Row 4 {a}: {_EACH}Rows 5 and 6 {b}: {_EACH}"
    report = check(_STRIPES.format(a=a, rows=rows))
    assert [row.number for row in worked_rows(report)] == [1, 2, 3, 4, 5, 6]
    assert counts(report) == [9] * 6 and corrections(report) == []


def test_letters_of_parts_are_no_yarns() -> None:
    """Two letters behind one number are two parts of a row, which nobody has told how they belong together."""
    rows = f"Row 2 W: {_EACH}Row 2 Y: {_EACH}Row 3 W: {_EACH}"
    assert None in counts(check(_STRIPES.format(a="W", rows=rows)))


def test_a_lone_letter_is_no_yarn_of_its_own() -> None:
    """One letter behind all numbers takes no turns with another, and is declared nowhere."""
    rows = f"Row 2 W: {_EACH}Row 3 W: {_EACH}"
    assert counts(check(_STRIPES.format(a="W", rows=rows))) == [None] * 3


def test_rows_named_by_letters_with_a_full_stop() -> None:
    """ "Row B. Ch 1, …" is a label, and "Rep Rows B and C" calls for both."""
    text = "Band\n\nUS terms\n\nCh 10.\nRow A. Sc in 2nd ch from hook and in each ch across, turn. 9 sc\nRow B. Ch 1, sc in each sc across, turn. 9 sc\n"
    text += "Row C. Ch 1, sc in each sc to last sc, 2 sc in last sc, turn. 10 sc\nRepeat Rows B and C twice. 12 sc\n"
    made = [row.cells[0].made.stitches for row in check(text).ledger.rows[1:]]
    assert made == [9, 9, 10, 10, 11, 11, 12]


@pytest.mark.parametrize(
    "listed",
    [
        "ch - chain * sc - single crochet * st - stitch",
        "ch chain * sc single crochet * st stitch",
        "ch: chain / sc: single crochet / st: stitch",
        "chain (ch) * single crochet (sc) * stitch (st)",
    ],
)
def test_lists_parted_by_stars_and_strokes(listed: str) -> None:
    """Each entry is one, and nothing used is unexplained."""
    report = check(
        f"Dot\n\nUS terms\nAbbreviations: {listed}\n\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: Ch 1, 2 sc in each st. (12)\n"
    )
    assert counts(report) == [6, 12] and corrections(report) == []
    assert [one.forms[0] for one in report.pattern.abbreviations] == ["ch", "sc", "st"]


def test_a_star_within_a_recipe_parts_nothing() -> None:
    """ "Cl: *yo, … * 3 times" stays one entry."""
    report = check(
        "Dot\n\nUS terms\nAbbreviations: Cl: *yo, insert hook, yo, draw up a loop * 3 times, yo, draw through all; sc: single crochet\n\nRnd 1: 6 sc in magic ring. (6)\n"
    )
    assert [one.forms[0] for one in report.pattern.abbreviations] == ["cl", "sc"]
