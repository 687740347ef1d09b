"""Recipes that stand one behind the other, rows of colours with a count behind them, closings where the round began."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, spaces

_LACE = """Doily

US terms
ch = chain; dc = double crochet; sc = single crochet; sk = skip; sl st = slip stitch; sp = space; st = stitch; lp = loop; rep = repeat

{told}

Ch 6, join with sl st to form a ring.
Rnd 1: Ch 1, sc in ring, *ch 3, sc in ring; rep from * 2 more times, ch 3, join to first sc. 4 lps
Rnd 2: Sl st into first lp, ch 3, (dc, ch 2, 2 dc) in same lp, *shell in next lp; rep from * around, join to top of ch-3. 4 shells
"""


@pytest.mark.parametrize(
    "told",
    [
        "Shell (sh): (2 dc, ch 2, 2 dc) in same sp. Beginning shell (beg sh): sl st to ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp.",
        "Shell: (2 dc, ch 2, 2 dc) in same sp. Beg shell: sl st to ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp.",
    ],
)
def test_recipes_one_behind_the_other(told: str) -> None:
    """Each name has its own recipe: the first does not go on into the second."""
    report = check(_LACE.format(told=told))
    assert counts(report) == [4, 16] and spaces(report)[1] == {2: 4} and corrections(report) == []


def test_recipes_whose_end_was_not_seen_define_nothing() -> None:
    """Where another name and recipe stand in one entry, no stitch is made of both, and its row is not counted."""
    told = "Shell (sh): (2 dc, ch 2, 2 dc) in same sp. A little shell [lsh]: ch 3, dc in same sp."
    report = check(_LACE.format(told=told))
    assert counts(report)[1] is None


_COLOURS = """Panel

{terms} terms. DK acrylic, {one} and {other}, 100g each.
Figures tell how many {dc} in that yarn. Each row begins 1 ch, turn; that ch is not a stitch.

13 ch.
Row 1: 1 {dc} in 2nd ch from hook, 1 {dc} in each ch to end. 12 {dc}
Row 2: {row}
"""


@pytest.mark.parametrize(
    ("row", "made", "right"),
    [
        ("3I, 6O, 3I. 12 DC", 12, True),
        ("*3I, 3O; rep from * once more. 12 DC", 12, True),
        ("1I, *2O, 2I; rep from * once more, 2O, 1I. 12 DC", 12, True),
        ("3I, 6O, 3I. 13 DC", 12, False),
        ("3I, 6O, 2I. 12 DC", 11, False),
        ("*3I, 3O; rep from * twice more. 12 DC", 18, False),
    ],
)
@pytest.mark.parametrize("terms", ["US", "UK"])
def test_figures_of_colours_and_their_count(row: str, made: int, right: bool, terms: str) -> None:
    """A figure of stitches behind the last colour counts the row, and is not worked."""
    dc = "dc" if terms == "UK" else "sc"
    text = _COLOURS.format(terms=terms, dc=dc, one="Ink (I)", other="Oat (O)", row=row.replace("DC", dc))
    report = check(text)
    assert counts(report) == [12, made] and (corrections(report) == []) == right


def test_one_letter_in_brackets_may_be_a_number() -> None:
    """ "(I)" alone behind a yarn may be a first part: no colour is called so."""
    text = _COLOURS.format(terms="UK", dc="dc", one="Ink (I)", other="oat", row="3I, 9 dc. 12 dc")
    assert counts(check(text))[1] is None


_ROUND = "Mat\n\nUS terms\n\nRnd 1: 12 sc in magic ring, join with sl st to first sc. (12)\nRnd 2: {words}\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("*Ch 3, sk 1 sc, sc in next sc; rep from * all round, sl st in base of first ch 3. (6 lps)", 6),
        ("Inc per st. (24)", 24),
        ("2 inc per st. (24)", None),
        ("Sc in each st around, sl st in next 2 sts to even things out. (12)", 12),
    ],
)
def test_rounds_of_few_words(words: str, made: int | None) -> None:
    """Where the round began takes no place of it; what a slip stitch is for is talk; two increases in one stitch are unclear."""
    report = check(_ROUND.format(words=words))
    assert counts(report) == [12, made] and corrections(report) == []


_SHAWL = """Shawl

US terms. Ch 3 counts as dc.

Ch 4, sl st in first ch for a ring.
Row 1: Ch 3, 2 dc, ch 2, 3 dc, all in the ring, turn. (6 dc)
Row 2: Ch 3, dc in first dc, dc in each dc as far as the spine sp, (2 dc, ch 2, 2 dc) in spine sp, dc in each dc to last st, 2 dc in last st, turn. (12 dc)
Rows 3-5: Rep Row 2, {growth}. ({last} dc)
"""


@pytest.mark.parametrize(
    ("growth", "last", "made"),
    [
        ("and you'll gain 6 dc every row", 30, [18, 24, 30]),
        ("so you add 6 dc in every row", 30, [18, 24, 30]),
        ("and you'll gain 4 dc every row", 24, None),
        ("and you'll gain in confidence every row", 30, None),
    ],
)
def test_what_the_maker_gains(growth: str, last: int, made: list[int] | None) -> None:
    """Rows called again must grow as the words say; else they are not counted."""
    found = counts(check(_SHAWL.format(growth=growth, last=last)))
    assert found[:2] == [6, 12] and (found[2:] == made if made else found[2] is None)


@pytest.mark.parametrize(
    ("besides", "made"),
    [("swapping colour each row", 5), ("using color B", 5), ("working 2 sc in each color change", None)],
)
def test_colours_that_change_row_by_row(besides: str, made: int | None) -> None:
    """A change of colour makes no stitch, and work among its words is not passed over."""
    text = "Strip\n\nUS terms\n\nCh 6.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (5)\nRow 2: Ch 1, sc in each sc across, turn. (5)\n"
    assert counts(check(f"{text}Rows 3-4: As Row 2, {besides}. (5)\n"))[2:] == [made] * 2


def test_so_many_round_an_edge() -> None:
    """ "In each of 60 ch round the lower edge" tells how many these are."""
    text = "Cosy\n\nUS terms\n\nSIDES\nCh 31.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (30)\nFasten off.\n\nFRILL\n"
    text += "Round 1: With right side facing join B at a side seam, ch 1, sc in each of 60 ch round the lower edge, join. (60)\n"
    assert counts(check(text)) == [30, 60]


def test_a_list_behind_its_terms() -> None:
    """ "Abbr. (US): ch chain * …": the first entry is not lost behind the terms."""
    text = "Rug\n\nAbbr. (US): ch chain * sl st slip stitch * sc single crochet * st(s) stitch(es)\n\nRnd 1: 6 sc in magic ring. 6 sts\nRnd 2: ch 1, sc in each st around, sl st to first st. 6 sts\n"
    assert "abbreviation-undefined" not in [rule for rule, _ in all_findings(check(text))]
