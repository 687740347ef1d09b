"""Size lists and wordings of graded garments: odd signs between the figures, sizes by letters, rows like another."""

from __future__ import annotations

import pytest
from helpers import check, counts, worked_rows


def made(report, size: int) -> list[int]:
    """The stitches of every row that the size works, those without a number too, foundation chains left out."""
    rows = [row for row in report.ledger.rows if row.label != "Foundation"]
    return [row.cells[size].made.stitches for row in rows if row.cells[size].made]


CUFF = """Alder Cuff

{sizes}

US terms

CUFF
Ch {chain}.
Row 1: Sc in 2nd ch from hook and in each ch across. {first}
Row 2: Ch 1, turn, sc in next {run} sts, 2 sc in each of next 2 sts, sc in each st to end. {second}
"""


@pytest.mark.parametrize(
    ("sizes", "chain", "first", "run", "second"),
    [
        ("To fit wrist: 15 & 16 & 18 cm", "21 & 23 & 27", "20 & 22 & 26 sc", "4 & 5 & 6", "22 & 24 & 28 sc"),
        ("Sizes: S | M | L", "21 | 23 | 27", "⟨20 | 22 | 26⟩", "4 | 5 | 6", "⟨22 | 24 | 28⟩"),
        ("Sizes: (S) M (L)", "(21) 23 (27)", "= (20) 22 (26) sc", "(4) 5 (6)", "= (22) 24 (28) sc"),
        (
            "SIZE: A - 2 years, B - 4 years, C - 6 years",
            "21 (23, 27)",
            "A 20, B 22, C 26 sc",
            "4 (5, 6)",
            "(22, 24, 28)",
        ),
        ("Sizes: A 92, B 104 and C 116 cm", "21 (23, 27)", "20 (22, 26)", "4 (5, 6)", "22 (24, 28)"),
        ("for 3 months (6 months, 12 months)", "21 (23, 27)", "20 (22, 26)", "4 (5, 6)", "22 (24, 28)"),
    ],
)
def test_lists_and_sizes_in_odd_signs(sizes: str, chain: str, first: str, run: str, second: str) -> None:
    """20, 22 and 26 stitches, then two more: every size has its own figure, and the print of each is compared."""
    report = check(CUFF.format(sizes=sizes, chain=chain, first=first, run=run, second=second))
    assert len(report.pattern.sizes) == 3 and not any(finding.rule == "sizes-unnamed" for finding in report.findings)
    assert [counts(report, size) for size in range(3)] == [[20, 22], [22, 24], [26, 28]]
    assert [row.cells[size].stated is not None for row in worked_rows(report) for size in range(3)] == [True] * 6


def test_rounds_numbered_in_brackets_are_no_list() -> None:
    """ "(1) 6 (2) 12 (3) 18" numbers rounds: no sizes come of it."""
    report = check("Ball\n\nUS terms\n\nRounds have (1) 6 (2) 12 (3) 18 sts.\n\nRnd 1: 6 sc in magic ring. (6)\n")
    assert report.pattern.sizes == ()


def test_rows_named_one_by_one_are_no_list() -> None:
    """ "Rep Rows 2 & 3 & 4" calls three rows in every size of three."""
    text = CUFF.format(
        sizes="Sizes: S (M, L)", chain="21 (23, 27)", first="(20, 22, 26)", run="4 (5, 6)", second="(22, 24, 28)"
    )
    report = check(
        text + "Row 3: Ch 1, turn, sc in each st across.\nRow 4: Ch 1, turn, sc in each st across.\nRep Rows 3 & 4.\n"
    )
    assert made(report, 2) == [26, 28, 28, 28, 28, 28]


ROUNDS = """Alder Band

Sizes: S (M, L)

US terms

Ch {chain}, join with sl st to form a ring.
Rnd 1: Ch 1, sc in each ch around, join. (20, 24, 28)
Rnd 2: Ch 1, sc in each st around, join.
"""


@pytest.mark.parametrize(
    "words",
    [
        "Work 2 (3, 4) more rounds like round 2.",
        "Then work 2 (3, 4) rounds even.",
        "Work 2, 3, 4 more rnds as rnd 2.",
        "Then 2 (3, 4) rounds: sc around (20, 24, 28)",
        "Work 2 (3, 4) rounds even in both loops.",
        "Next 2 (3, 4) rounds: Ch 1, sc in each st around, join. <20 (24, 28)>",
    ],
)
def test_rounds_like_another(words: str) -> None:
    """Two, three and four rounds of 20, 24 and 28 after the two that are written."""
    report = check(ROUNDS.format(chain="20 (24, 28)") + words + "\n")
    assert [made(report, size) for size in range(3)] == [[20] * 4, [24] * 5, [28] * 6]


@pytest.mark.parametrize(
    "words",
    [
        "sc2tog 5 (6, 7) times evenly spaced around, sc in all other sts",
        "sc2tog 5 (6, 7) times evenly around, sc in the remaining sts",
        "sc2tog evenly 5 (6, 7) times around",
        "5 (6, 7) sc2tog evenly spaced around",
        "dec 5 (6, 7) sts evenly around",
    ],
)
def test_decreases_spread_evenly(words: str) -> None:
    """So many stitches are lost, and the others are worked plain: 15, 18 and 21 are left."""
    report = check(ROUNDS.format(chain="20 (24, 28)") + f"Rnd 3: Ch 1, {words}, join. 15 (18, 21) sc\n")
    assert [counts(report, size)[-1] for size in range(3)] == [15, 18, 21]
    assert not any(finding.rule == "count-differs" for finding in report.findings)


def test_a_count_and_rows_called_behind_it() -> None:
    """ "(28) Repeat Rnds 3 and 4" works the rounds again, and not 28 stitches more."""
    text = ROUNDS.format(chain="20 (24, 28)")
    text += "Rnd 3: Ch 1, sc in each st around, join. (20, 24, 28)\n"
    report = check(text + "Rnd 4: Ch 1, sc in each st around, join. 20 (24, 28) sc. Repeat Rnds 3 and 4 once.\n")
    assert made(report, 0) == [20] * 6
    one = "Band\n\nUS terms\n\nRow 1: Fsc 34. (34)\nRow 2: Ch 1, turn, sc in each st across. (34 sc) Repeat Row 2 twice more.\n"
    assert made(check(one), 0) == [34] * 4


def test_stops_of_short_words() -> None:
    """ "Rep. 2nd row", "S.s. over first 2 sts.": the stop ends a short word, and no sentence."""
    text = """Alder Band

Sizes: 34 (36, 38) in bust
UK terms

Make 21 (23, 25) ch.
1st row: 1 d.c. in 2nd ch. from hook, 1 d.c. in each ch. to end, turn. 20 (22, 24) d.c.
2nd row: 1 ch. (not counted), 1 d.c. in each d.c. to end, turn.
Rep. 2nd row until 4 (4, 6) rows have been worked in all.
Next row: S.s. over first 2 sts., 1 ch., 1 d.c. in each d.c. to last 2 sts., turn, leaving these sts. unworked.
"""
    report = check(text)
    assert [made(report, size) for size in range(3)] == [[20] * 4 + [16], [22] * 4 + [18], [24] * 6 + [20]]


MITTEN = """Mitten

Sizes: S (M, L)

US terms

Ch 24 (28, 32). Join with a sl st to form a ring.
Rnd 1: sc in each ch around (24, 28, 32)
"""


@pytest.mark.parametrize(
    "words", ["inc, sc in each st to last st, inc", "2 sc in first st, sc in each st to last st, 2 sc in last st"]
)
@pytest.mark.parametrize("printed", ["(26, 30, 34)", "(26/30/34)", "[26: 30: 34]"])
def test_a_count_in_brackets_behind_any_word(words: str, printed: str) -> None:
    """ "inc (26, 30, 34)" at the end of a round ends on its count: nobody works 26 increases there."""
    report = check(MITTEN + f"Rnd 2: {words} {printed}\nRnd 3: as Rnd 2 (28, 32, 36)\n")
    assert [counts(report, size) for size in range(3)] == [[24, 26, 28], [28, 30, 32], [32, 34, 36]]
    assert all(row.cells[size].stated for row in worked_rows(report) for size in range(3))


def test_so_many_increases_in_brackets() -> None:
    """ "inc (2, 3, 4)" in the midst of a round is how many."""
    report = check(MITTEN + "Rnd 2: sc 2, inc (2, 3, 4), sc in each st around (26, 31, 36)\n")
    assert [counts(report, size) for size in range(3)] == [[24, 26], [28, 31], [32, 36]]


@pytest.mark.parametrize("words", ["left for the thumb", "left unworked", "skipped for the thumb", "left free"])
def test_stitches_left_for_later(words: str) -> None:
    """Six, seven and eight stitches left at the hand, and two in the gap."""
    text = MITTEN + "Rnd 2: sc in next 18 (21, 24) sts, leave last 6 (7, 8) sts unworked (18, 21, 24)\nFasten off.\n"
    report = check(
        text
        + f"\nTHUMB\nJoin yarn.\nRnd 1: sc in each of the 6 (7, 8) sts {words}, 2 sc in the gap (8, 9, 10)\nRnd 2: sc around (8, 9, 10)\n"
    )
    assert [counts(report, size)[2:] for size in range(3)] == [[8, 8], [9, 9], [10, 10]]


def test_the_stitch_under_the_chain_is_skipped() -> None:
    """ "Ch 3, dc in each st around, skipping the first": the chain counts and stands there, so that 24 stay 24."""
    text = "Mitten\n\nSizes: S (M, L)\nUS terms\nCh 3 counts as a dc.\n\nCh 24 (28, 32). Join with a sl st to form a ring.\n"
    text += "Rnd 1: Ch 3, dc in each ch around, skipping the first, join. (24, 28, 32)\n"
    report = check(text + "Rnds 2-3: Ch 3, dc in each st around, skipping the first, join. (24, 28, 32)\n")
    assert [counts(report, size) for size in range(3)] == [[24] * 3, [28] * 3, [32] * 3]


def test_stitches_of_a_piece_passed_over() -> None:
    """ "skip 4 sts of body" passes over four, and so the count of the row that joins pieces comes out."""
    text = "Yoke\n\nSizes: S (M, L)\nUS terms\n\nRow 1: Fsc 40 (44, 48). (40, 44, 48)\n"
    report = check(
        text
        + "Row 2: Ch 1, turn, sc in next 16 (18, 20) sts, skip 8 sts of body, sc in each remaining st. (32, 36, 40)\n"
    )
    assert [counts(report, size)[-1] for size in range(3)] == [32, 36, 40]


def test_a_figure_missing_between_ampersands() -> None:
    """Two figures for three sizes stop their row, and are told."""
    sizes = CUFF.format(sizes="To fit wrist: 15 & 16 & 18 cm", chain="21 & 23 & 27", first="20 & 22 & 26 sc", run="4 & 5 & 6", second="22 & 26 sc")  # fmt: skip
    report = check(sizes)
    assert [finding.rule for finding in report.findings].count("size-list-length") == 1


def test_a_pattern_written_out_for_each_size() -> None:
    """A passage for each size, headed by it: its rows are worked by that size alone, and "0-6 months" is one size."""
    row = "Row 1: Fsc {}. ({})\nRow 2: Ch 1, turn, sc in each st across. ({})\nFasten off.\n"
    passages = "\nSIZE 0-6 MONTHS\n\nStrap\n" + row.format(20, 20, 20) + "\nSIZE 6-12 MONTHS\n\nStrap\n" + row.format(24, 24, 25)  # fmt: skip
    report = check("Strap\n\nUS terms\n" + passages)
    assert report.pattern.sizes == ("0-6 MONTHS", "6-12 MONTHS")
    assert [[n for n in counts(report, size) if n] for size in range(2)] == [[20, 20], [24, 24]]
    assert [finding.sizes for finding in report.findings if finding.rule == "count-differs"] == [("6-12 MONTHS",)]


def test_one_size_that_is_a_span_of_ages() -> None:
    """ "Size: 0-6 months" is one size, not two."""
    report = check("Strap\n\nSize: 0-6 months\n\nUS terms\n\nRow 1: Fsc 20. (20)\n")
    assert report.pattern.sizes == ()


def test_a_stitch_explained_where_it_is_used() -> None:
    """ "Sl st (slip stitch)" explains itself, and "Abbreviations in US terms:" begins a list."""
    text = "Top\n\nAbbreviations in US terms: ch(s) = chain(s); sc = single crochet; st(s) = stitch(es)\n\nCh 21 with hook no. 3,5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
    report = check(text + "Row 2: Sl st (slip stitch) over first 4 sc, ch 1, sc in each sc to end. (16 sc)\n")
    assert not any(finding.rule == "abbreviation-undefined" for finding in report.findings)
    assert counts(report) == [20, 16]


@pytest.mark.parametrize(
    "words",
    [
        "FRONT\nLike the back.",
        "Front piece: Like the back piece.",
        "Front: Same as back.",
        "FRONT: As for Back.",
        "FRONT - as for Back",
        "FRONT\nMake another piece like the back.",
    ],
)
@pytest.mark.parametrize("heading", ["BACK", "Back piece:"])
def test_a_piece_like_another_without_a_verb(heading: str, words: str) -> None:
    """The front has the rows of the back, whatever verb calls them or none."""
    rows = "Ch 21 (23, 25).\nRow 1: Sc in 2nd ch from hook and in each ch across. 20 (22, 24) sc\nRows 2-5: Ch 1, turn, sc in each sc across.\nFasten off.\n"
    report = check(f"Top\n\nSizes: S (M, L)\nUS terms\n\n{heading}\n{rows}\n{words}\n\nAssembly: Sew side seams.\n")
    assert len(report.pattern.parts) == 2
    assert [made(report, size) for size in range(3)] == [[20] * 10, [22] * 10, [24] * 10]


def test_talk_that_something_is_like_another_is_no_piece() -> None:
    """ "Yarn: like the back of a sheep" names nothing that was made."""
    report = check(
        "Top\n\nUS terms\n\nBACK\nRow 1: Fsc 20. (20)\n\nColour: like the sea.\n\nRow 2: Ch 1, turn, sc in each st across. (20)\n"
    )
    assert [part.name for part in report.pattern.parts] == ["BACK"]


@pytest.mark.parametrize("words", ["increasing 4 sts in each rnd", "inc 4 sts every rnd", "increasing 4 sts each rnd"])
def test_so_many_more_in_each_round_as_before(words: str) -> None:
    """ "Continue in this way, increasing 4 sts in each rnd": four more a round in every size, as many rounds as it has."""
    text = MITTEN + "Rnd 2: *sc in next 5 (6, 7) sts, 2 sc in next st; rep from * around (28, 32, 36)\n"
    report = check(text + f"Rnds 3-4 (5, 6): Continue in this way, {words}. (36, 44, 52)\n")
    assert [[n for n in counts(report, size) if n] for size in range(3)] == [
        [24, 28, 32, 36],
        [28, 32, 36, 40, 44],
        [32, 36, 40, 44, 48, 52],
    ]
    assert not any(finding.rule == "count-differs" for finding in report.findings)


def test_the_other_side_of_each_chain() -> None:
    """Legs joined by four chains: they are worked on both sides, so the body has both legs and eight."""
    leg = "Ch {n}, join with sl st to form a ring.\nRnd 1: sc in each ch around ({n})\nRnd 2: sc in each st around ({n})\n"
    leg = leg.format(n="28 (32, 36)")
    text = f"Leggings\n\nSizes: S (M, L)\nUS terms\nWorked in a spiral.\n\nFIRST LEG\n{leg}Fasten off.\n\nSECOND LEG\nWork as the first leg, but do not fasten off.\n\nBODY\n"
    report = check(
        text
        + "Rnd 1: Ch 4, sc in each of the 28 (32, 36) sts of the first leg, sc in each of the 4 ch, sc in each of the 28 (32, 36) sts of the second leg, sc in the other side of each of the 4 ch (64, 72, 80)\n"
    )
    assert [counts(report, size)[-1] for size in range(3)] == [64, 72, 80]


ROWS = """Alder Cuff

Sizes: S (M, L)

US terms

CUFF
Ch 21 (23, 25).
Row 1: Sc in 2nd ch from hook and in each ch across. (20, 22, 24)
Row 2: Ch 1, turn, sc in each st across.
"""


@pytest.mark.parametrize(
    "words",
    [
        "3rd to 5th, 6th or 7th rows: Ch 1, turn, sc in each st across.",
        "3rd to 5th, 6th, or 7th rows - as Row 2.",
        "Rows 3 to 5, 6 or 7: Rep Row 2.",
        "Next 3, 4 or 5 rows: As Row 2.",
        "Work 3, 4 or 5 rows even.",
        "Rep Row 2 for 3 & 4 & 5 rows.",
    ],
)
def test_rows_of_each_size_joined_by_or(words: str) -> None:
    """ "Rows 3 to 5, 6 or 7" ends at another row in each size; the last figure's "or" shows that they are the sizes'."""
    report = check(ROWS + words + "\n")
    assert [made(report, size) for size in range(3)] == [[20] * 5, [22] * 6, [24] * 7]


@pytest.mark.parametrize("rows", ["Row 3: {0}\nRow 4: {0}\nRow 5: {0}\n", "Rows 3-5: {0}\n"])
def test_a_size_told_beforehand_to_stop_later(rows: str) -> None:
    """S stops after Row 2, and M after Row 3 that is still to come: M works it, and nothing behind it."""
    text = ROWS + "S, stop after Row 2; M, stop after Row 3.\n" + rows.format("Ch 1, turn, sc in each st across.")
    report = check(text + "\nTIE\nRow 1: Fsc 5.\n")
    assert [made(report, size) for size in range(3)] == [[20] * 2 + [5], [22] * 3 + [5], [24] * 5 + [5]]
