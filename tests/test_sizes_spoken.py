"""Sizes told in words: other names for them in gates, figures with "or", the name at each figure of a label."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

HEAD = """Whinfell Cap

US terms. Ch 1 at the start of a row does not count as a st.
{sizes}

ch = chain, sc = single crochet, st = stitch

BAND
"""
BODY = """Ch 13 (15, 17).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 (14, 16) sc)
"""


def in_sizes(report) -> list[list[int | None]]:
    """The counts of every labelled row that is worked, size by size."""
    return [[n for n in counts(report, size) if n] for size in range(3)]


GLOSSES = (
    ("Sizes: S (0-6 months), M (6-12 months), L (1-2 years)", "For 0-6 months:", "For 6-12 months and 1-2 years:"),
    ("Sizes: S (M, L)\nTo fit ages 2 (4, 6) years", "2 years only:", "For 4 and 6 years only:"),
    ("Sizes: S (M, L)\n\nS - Baby\nM - Child\nL - Adult", "For Baby:", "Child and Adult only:"),
    ("Sizes: 0-6 (6-12, 12-18) months\nSmall (medium, large): 0-6 months, 6-12 months, 12-18 months", "Small only:", "Medium and large only:"),
)  # fmt: skip


@pytest.mark.parametrize(("sizes", "one", "others"), GLOSSES)
def test_a_gate_may_name_sizes_by_what_they_are_for(sizes: str, one: str, others: str) -> None:
    """The front gives each size another name, and a passage is told by that."""
    rows = f"{one}\nRow 2: Ch 1, sc in each st across, turn. (12 sc)\n{others}\nRow 2: Ch 1, 2 sc in first st, sc in each st across, turn. (15 (17) sc)\n"
    report = check(
        HEAD.format(sizes=sizes) + BODY + rows + "All sizes:\nRow 3: Ch 1, sc in each st across. (12 (15, 17) sc)\n"
    )
    assert in_sizes(report) == [[12, 12, 12], [14, 15, 15], [16, 17, 17]]
    assert not corrections(report)


def test_an_age_that_is_no_size_leaves_its_passage_unread() -> None:
    """ "For 3 years:" where no size is for that: the rows behind it are for nobody known."""
    rows = "For 3 years:\nRow 2: Ch 1, 2 sc in first st, sc in each st across, turn. (13 sc)\n"
    report = check(HEAD.format(sizes="Sizes: S (0-6 months), M (6-12 months), L (1-2 years)") + BODY + rows)
    assert [outcomes(report, size)[-1] for size in range(3)] == ["not-recomputed"] * 3


OR_SIZES = "Sizes: S, M or L"
OR_BODY = """Ch 13.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)
Row 2: Ch 1, 2 sc in first st, sc in each st across, turn. (13 sc)
"""


@pytest.mark.parametrize(
    ("words", "lasts"),
    [
        ("Rep Row 2, 1, 3 or 4 times.", [14, 16, 17]),
        ("Rep Row 2 until Row 3, 5 or 6 is complete.", [14, 16, 17]),
        ("Rep Row 2 for 1, 3 or 4 rows.", [14, 16, 17]),
        ("Rep Row 2, 2 times.", [15, 15, 15]),
    ],
)
def test_figures_with_or_are_one_for_each_size(words: str, lasts: list[int]) -> None:
    """In a pattern of three sizes "1, 3 or 4 times" is once in S, three times in M, four times in L."""
    report = check(HEAD.format(sizes=OR_SIZES) + OR_BODY + words + "\nNext row: Ch 1, sc in each st across.\n")
    assert [counts(report, size)[-1] for size in range(3)] == lasts


@pytest.mark.parametrize(
    "label",
    [
        "Rows 2 to 4 (S), 5 (M), 7 (L):",
        "Rows 2-4 (for S), 2-5 (for M), 2-7 (for L):",
        "Rows 2-4 for S, 2-5 for M and 2-7 for L:",
    ],
)
def test_a_label_that_names_the_size_at_each_figure(label: str) -> None:
    """Each size works the rows up to its own figure."""
    rows = f"{label} Ch 1, sc in each st across, turn.\nRow 5 (6, 8): Ch 1, 2 sc in first st, sc in each st across.\n"
    report = check(HEAD.format(sizes="Sizes: S (M, L)") + BODY + rows)
    assert in_sizes(report) == [[12] * 4 + [13], [14] * 5 + [15], [16] * 7 + [17]]
    assert not [one for one in corrections(report) if one[0] == "row-number-out-of-order"]


def test_a_label_that_names_not_every_size_is_not_guessed_at() -> None:
    """ "Rows 2 to 4 (S), 5 (M):" says nothing of L."""
    report = check(
        HEAD.format(sizes="Sizes: S (M, L)") + BODY + "Rows 2 to 4 (S), 5 (M): Ch 1, sc in each st across, turn.\n"
    )
    assert outcomes(report, 2)[-1] == "not-recomputed"


@pytest.mark.parametrize(
    ("line", "names"),
    [
        ("Size: small (medium : large) adult feet", ("small", "medium", "large")),
        ("SIZE: S (M, L) – foot circumference 8 (8¾, 9½) inches", ("S", "M", "L")),
        ("Sizes: 2 (4, 6) years old", ("2", "4", "6")),
        ("Sizes: Child (Teen) Adult", ("Child", "Teen", "Adult")),
    ],
)
def test_what_stands_behind_a_list_of_sizes_is_no_size(line: str, names: tuple[str, ...]) -> None:
    """Whose feet they are, or a measure behind a dash."""
    assert check(HEAD.format(sizes=line) + BODY).pattern.sizes == names


@pytest.mark.parametrize("label", ["R2 – R4 (R5, R7):", "R2 - R4 (R5) R7:", "R2-R4 (5, 7):"])
def test_a_letter_may_stand_at_each_figure_of_a_label(label: str) -> None:
    """ "R4 (R5, R7)" is a list over the sizes."""
    text = (
        HEAD.format(sizes="Sizes: S (M, L)")
        + BODY.replace("Row 1", "R1")
        + f"{label} Ch 1, sc in each st across, turn.\n"
    )
    assert [len(rows) for rows in in_sizes(check(text))] == [4, 5, 7]


COMMAS = """Whinfell Hat

US terms
{sizes}

Rnd 1: 6 sc in a magic ring. (6 sts)
Rnd 2: 2 sc in each st around. (12 sts)
{gate}
Rnd 3: 2 sc in each st around. (24 sts)

SIDES
Rnd 1: Sc in each st around. (12, 24, 24 sts)
Rnd 2: Sc in next 10, 20, 20 sts, 2 sc in each of last 2, 4, 4 sts. (14, 28, 28 sts)
"""


@pytest.mark.parametrize(
    ("line", "gate", "names"),
    [
        ("FITS HEAD CIRCUMFERENCE: 18, 20, 22 in [46, 51, 56 cm]", "Size 18: skip to the Sides. Sizes 20 and 22:", ("18", "20", "22")),
        ("Sizes: A (B) C = shoe size 5 (6) 7", "Sizes B and C only:", ("A", "B", "C")),
    ],
)  # fmt: skip
def test_sizes_named_by_a_measure_or_before_one(line: str, gate: str, names: tuple[str, ...]) -> None:
    """A measure in the other unit, or two sizes named further on, are no list of sizes."""
    report = check(COMMAS.format(sizes=line, gate=gate))
    assert report.pattern.sizes == names
    assert in_sizes(report) == [[6, 12, 12, 14], [6, 12, 24, 24, 28], [6, 12, 24, 24, 28]]


DASHES = """Ch 13 – 15 – 17.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 – 14 – 16 sc)
Row 2: Ch 1, sc in next 6 – 7 – 8 sts, 2 sc in next st, sc in each st across, turn. (13 – 15 – 17 sc)
Rows 3 to 4 – 5 – 6: Ch 1, sc in each st across, turn.
Row 5 – 6 – 7: Ch 1, sc in each st across, turn – 13 – 15 – 17 sc
"""


def test_lists_with_dashes_between() -> None:
    """One figure for each of three sizes, spaced dashes between; a dash behind the row leads its count."""
    report = check(HEAD.format(sizes="Sizes: S – M – L") + DASHES)
    assert in_sizes(report) == [[12] + [13] * 4, [14] + [15] * 5, [16] + [17] * 6]
    assert not corrections(report)


def test_a_dash_before_a_count_is_no_list() -> None:
    """ "next 12 – 12 sts": a run, and the count behind it."""
    rows = "Row 2: Ch 1, sc in next 12 (14, 16) sts – 12 (14, 16) sts\n"
    assert in_sizes(check(HEAD.format(sizes="Sizes: S (M, L)") + BODY + rows)) == [[12, 12], [14, 14], [16, 16]]


def test_the_word_sizes_is_no_part_of_the_first_name() -> None:
    """ "To fit sizes 0-3 (3-6, 6-9) months"."""
    assert check(HEAD.format(sizes="To fit sizes 0-3 (3-6, 6-9) months.") + BODY).pattern.sizes == ("0-3", "3-6", "6-9")


def test_a_label_with_a_comma_behind_its_piece() -> None:
    """ "Armhole, row 1:" is a label as "Armhole row 1:" is."""
    rows = (
        "Armhole, row 1: Sl st in next 2 sts, ch 1, sc in each st to end, turn.\nRow 2: Ch 1, sc in each st across.\n"
    )
    assert in_sizes(check(HEAD.format(sizes="Sizes: S (M, L)") + BODY + rows)) == [
        [12, 10, 10],
        [14, 12, 12],
        [16, 14, 14],
    ]


FEN = (
    "Fen Vest\n\nSizes: S (M, L, XL)\nUS terms\n\nBODY\nCh 41 (45, 49, 53).\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (40, 44, 48, 52 sc)\n"
)


@pytest.mark.parametrize(
    "row",
    [
        "Row 2: Sizes S and M only: Ch 1, sc across. Sizes L and XL only: Ch 1, sc2tog, sc across.",
        "Row 2: For sizes S and M, ch 1, sc across. For sizes L and XL, ch 1, sc2tog, sc across.",
    ],
)
def test_one_row_that_speaks_to_one_size_after_another(row: str) -> None:
    """Each size has its own words of the row, and the next row goes on from them."""
    report = check(FEN + row + "\nRow 3: Ch 1, sc in each st across.\n")
    assert [counts(report, size)[-1] for size in range(4)] == [40, 44, 47, 51]


def test_a_shaping_of_none_changes_nothing() -> None:
    """ "Dec 1 st at each end for sizes L (XL) only": the others work the run as it is."""
    report = check(FEN + "Row 2: Ch 1, sc across, dec 1 st at each end for sizes L (XL) only.\n")
    assert [counts(report, size)[-1] for size in range(4)] == [40, 44, 46, 50]


@pytest.mark.parametrize("signs", ["<>", "«»", "‹›"])
def test_lists_in_angle_brackets(signs: str) -> None:
    """ "20 <22, 24, 26>": a list over the sizes, and a count."""
    text = FEN + "Row 2: Ch 1, sc in next 20 (22, 24, 26) sts, turn, leaving rem sts. 20 (22, 24, 26)\n"
    report = check(text.replace("(", signs[0]).replace(")", signs[1]))
    assert [counts(report, size)[-1] for size in range(4)] == [20, 22, 24, 26]


def test_sizes_in_months_of_a_sentence() -> None:
    """Each name keeps its unit: "size 3 months; changes for 6 months and 12 months are in parentheses"."""
    text = (
        "Test bonnet\nUS terms\n\nInstructions are for size 3 months; changes for 6 months and 12 months are in parentheses.\n\n"
        "BONNET\nCh 21 (23, 25).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. 20 (22, 24) sc.\n"
        "Row 2: Ch 1, sc in next 20 (22, 24) sc, turn. 20 (22, 24) sc.\n"
    )
    report = check(text)
    assert report.pattern.sizes == ("3 months", "6 months", "12 months")
    assert "sizes-unnamed" not in {finding.rule for finding in report.findings}
