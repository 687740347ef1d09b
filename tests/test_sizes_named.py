"""Which sizes a pattern is written for: however they are named, and where no line names them."""

from __future__ import annotations

import pytest
from helpers import check, counts, outcomes, worked_rows

STRIP = """Test cuff

{line}

US terms

CUFF
Ch 21 (23, 27).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 (22, 26) sc)
Row 2: Ch 1, sc in each of next 8 (9, 10) sts, 2 sc in next st, sc in each st to end, turn. (21 (23, 27) sc)
"""
COUNTS = [[20, 22, 26], [21, 23, 27]]


def made(text: str) -> list[list[int | None]]:
    return [[cell.made.stitches if cell.made else None for cell in row.cells] for row in worked_rows(check(text))]


@pytest.mark.parametrize(
    ("line", "names"),
    [
        ("This cuff comes in three sizes: S (M, L).", ("S", "M", "L")),
        ("Quick to make. Sizes S (M) L.", ("S", "M", "L")),
        ("Available in S/M/L", ("S", "M", "L")),
        ("Small (Medium, Large)", ("Small", "Medium", "Large")),
        ("Sizes: XS/S (M/L, XL/2X)", ("XS/S", "M/L", "XL/2X")),
        ("Sizes: 0/3 (3/6, 6/12) months", ("0/3", "3/6", "6/12")),
        ("SIZE: 3-6 months (6-12 months, 12-24 months)", ("3-6 months", "6-12 months", "12-24 months")),
        ("Size: 104/110 (116/122, 128/134)", ("104/110", "116/122", "128/134")),
        ("Sizes: 2T (3T, 4T)", ("2T", "3T", "4T")),
        ("Size: S[M:L]", ("S", "M", "L")),
        ("Size: S{M,L}", ("S", "M", "L")),
        ("Size: S, (M, L)", ("S", "M", "L")),
        ("Sizes: S (M and L)", ("S", "M", "L")),
        ("Sizes\nS: 18 cm\nM: 20 cm\nL: 22 cm", ("S", "M", "L")),
        ("Toddler – 16 cm round the wrist\nChild – 18 cm\nAdult – 20 cm", ("Toddler", "Child", "Adult")),
        ("Sizes: Small (18 cm), Medium (20 cm), Large (22 cm)", ("Small", "Medium", "Large")),
        ("Size | S | M | L\nWrist | 18 | 20 | 22", ("S", "M", "L")),
        ("Directions are for size Small. Changes for Medium and Large are in parentheses.", ("Small", "Medium", "Large")),
        ("Women's sizes S (M, L)", ("S", "M", "L")),
        ("Wrist: 18 (20, 22) cm", ("18", "20", "22")),
        ('Finished wrist: 7 (8, 9)"', ("7", "8", "9")),
        ("To fit age 2 (4, 6) years", ("2", "4", "6")),
        ("Shoe size: UK 3 (5, 7)", ("3", "5", "7")),
        ("To fit weight: 3 (5, 7) kg", ("3", "5", "7")),
        ("To fit bust 32-34 (36-38, 40-42) in", ("32-34", "36-38", "40-42")),
    ],
)  # fmt: skip
def test_sizes_are_known_however_they_are_named(line: str, names: tuple[str, ...]) -> None:
    """Every size is worked, and none by the first one's figures."""
    report = check(STRIP.format(line=line))
    assert report.pattern.sizes == names
    assert made(STRIP.format(line=line)) == COUNTS
    assert "sizes-unnamed" not in {finding.rule for finding in report.findings}


@pytest.mark.parametrize("line", ["A cuff for any wrist.", "Larger sizes stand in brackets.", "Sizes: S (M, L, XL)"])
def test_sizes_without_names(line: str) -> None:
    """Where no line names as many sizes as the lists have figures, each is worked all the same, and its name asked for."""
    report = check(STRIP.format(line=line))
    assert report.pattern.sizes == ("1st size", "2nd size", "3rd size")
    assert made(STRIP.format(line=line)) == COUNTS
    (asked,) = [finding for finding in report.findings if finding.rule == "sizes-unnamed"]
    assert (report.source.line_of(asked.span), asked.weight.value) == (8, "query")


@pytest.mark.parametrize(
    "line",
    [
        "Size: 9 in (23 cm) across",
        "Size: about 25 1/2 in, fits most",
        "Hook: size L/11 (8 mm)",
        "Finished size: 20 cm x 30 cm (8 x 12 in)",
        "Yarn: medium (4), 200 g",
        "One size",
        "Rounds take 20 g (A), 30 g (B) and 12 g (C).",
    ],
)
def test_one_size(line: str) -> None:
    """Measures, hooks and yarns name no sizes."""
    text = f"Test mat\n\n{line}\n\nUS terms\n\nMAT\nMake a magic ring.\nRnd 1: 6 sc in ring. (6)\nRnd 2: 2 sc in each st around (12).\nRnd 3: sc in next 12 (12).\n"
    assert check(text).pattern.sizes == ()
    assert made(text) == [[6], [12], [12]]


@pytest.mark.parametrize(
    "row",
    [
        "Row 2: Ch 1, sc in each of next 3 (4, 5) sts, 2 sc in next st, sc in each st across, turn.",
        "Row 2: Ch 1, sc in each st to last 2/3/4 sts, turn.",
        "Row 2: Ch 1, 17 (18, 19, 20) sc, sc in each st across, turn.",
        "Row 2: Ch 1, [sc in next st, 2 sc in next st] 2 (3, 4) times, sc in each st across, turn.",
        "Row 2: Ch 1, (sc in next st) 20 (21) times, turn.",
        "Row 2: Ch 1, sc in each st across, turn. (20 (22) sc)",
        "Next 2 (3, 4) rows: Ch 1, sc in each st across, turn.",
    ],
)
@pytest.mark.parametrize("line", ["", "Sizes: S (M, L, XL, 2X)"])
def test_a_list_that_fits_no_number_of_sizes_is_never_worked_by_its_first_figure(line: str, row: str) -> None:
    """A row with figures for sizes that are not the pattern's is not recomputed, which is told."""
    text = f"Test cuff\n\n{line}\n\nUS terms\n\nCUFF\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n{row}\n"
    report = check(text)
    last = [row for row in report.ledger.rows if row.row.label is not None][-1]
    assert all(cell.made is None for cell in last.cells)
    assert {"not-understood", "size-list-length", "sizes-unnamed"} & {finding.rule for finding in report.findings}


@pytest.mark.parametrize(
    "count",
    [
        "20 (22) 24 sts.",
        "– 20 (22, 24) sc",
        "= 20 (22, 24)",
        "You will have 20 (22, 24) sts.",
        "(20, 22, 24)",
        "(20, 22, 24) sts",
        "[20, 22, 24 sc]",
        "20 (22, 24, 26, 28, 30) sts.",
    ],
)
def test_a_count_that_fits_no_number_of_sizes(count: str) -> None:
    """A printed count changes no stitch: its row is worked by its words where the sizes are known, and the list is told once."""
    line = "Sizes: S (M, L, XL, 2X)"
    text = f"Test cuff\n\n{line}\n\nUS terms\n\nCUFF\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Ch 1, sc in each st across, turn. {count}\n"
    report = check(text)
    last = [row for row in report.ledger.rows if row.row.label is not None][-1]
    assert [cell.made and cell.made.stitches for cell in last.cells] == [20] * 5
    assert [finding.rule for finding in report.findings if "20" in finding.message] == ["size-list-length"]


def test_a_count_of_sizes_that_are_not_named() -> None:
    """Where no sizes are named, a row with such a count is not recomputed, which is told."""
    text = "Test cuff\n\nUS terms\n\nCUFF\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Ch 1, sc in each st across, turn. (20 (22, 24) sc)\n"
    report = check(text)
    assert made(text)[-1] == [None]
    assert {"not-understood", "sizes-unnamed"} & {finding.rule for finding in report.findings}


def test_a_chain_that_fits_no_number_of_sizes() -> None:
    """A piece that begins on such a chain is not worked on its first figure."""
    text = (
        "Test cuff\n\nUS terms\n\nCUFF\nCh 21 (23, 25).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
    )
    assert made(text) == [[None]]


NAMED_COUNTS = """Hazelmere Cuff

Sizes: {sizes}
{chain}.
Row 1: Sc in 2nd ch from hook and in each ch across. {first}
Row 2: Ch 1, turn, sc in next {run}, 2 sc in each of next 2 sts, sc in each st to end. {second}
"""


@pytest.mark.parametrize(
    ("sizes", "chain", "first", "run", "second"),
    [
        ("S/M and L/XL", "Ch S/M: 11, L/XL: 13", "S/M: 10, L/XL: 12 sc", "4 (5) sts", "S/M 12 sc, L/XL 14 sc"),
        ("S/M and L/XL", "Ch 11 (S/M), 13 (L/XL)", "(S/M: 10 sts; L/XL: 12 sts)", "4 (5) sts", "(12 (14) sc)"),
        ("Child, Adult", "Ch 11, 13", "10, 12 sc", "4, 5 sts", "12, 14 sc"),
        ("Child-Adult", "Ch 11-13", "10-12 sc", "4-5 sts", "12-14 sc"),
        ("(Child, Adult)", "Chain (11, 13)", "(10, 12)", "(4, 5) sts", "(12, 14) sc"),
    ],
)
def test_two_sizes_in_every_shape(sizes: str, chain: str, first: str, run: str, second: str) -> None:
    """Chain, run and count of two sizes: 11 and 13 ch make 10 and 12 sc, two increases 12 and 14."""
    report = check(NAMED_COUNTS.format(sizes=sizes, chain=chain, first=first, run=run, second=second))
    assert [counts(report, size) for size in range(2)] == [[10, 12], [12, 14]]
    assert [outcomes(report, size) for size in range(2)] == [["agrees", "agrees"]] * 2


@pytest.mark.parametrize(
    ("line", "names"),
    [
        ("Sizes: Size 1 (0-6 months), Size 2 (6-12 months)", ("1", "2")),
        ("Sizes: S (0-6 months), M (6-12 months) and L (1-2 years)", ("S", "M", "L")),
        ("Sizes: Newborn (0-3 months), Baby (3-6 months)", ("Newborn", "Baby")),
        ("Sizes: S (M), L (XL)", ("S", "M", "L", "XL")),
    ],
)
def test_what_a_size_is_for_stands_in_brackets(line: str, names: tuple[str, ...]) -> None:
    """Brackets of another sort behind every name explain it; brackets of the same sort hold sizes of their own."""
    assert check(f"Mitts\nUS terms\n\n{line}\n\nMITT\nRnd 1: 6 sc in magic ring. (6)\n").pattern.sizes == names


def test_passages_headed_by_a_name_and_what_it_is_for() -> None:
    """Under "SIZE 1 (0-6 months)" and "SIZE 2 (6-12 months)" each size works its own passage."""
    passages = "".join(
        f"SIZE {n} ({ages} months)\nRnd 1: {n + 5} sc in magic ring. ({n + 5})\nRnd 2: 2 sc in each st. ({2 * n + 10})\n\n"
        for n, ages in ((1, "0-6"), (2, "6-12"))
    )
    report = check(f"Mitts\nUS terms\n\nSizes: Size 1 (0-6 months), Size 2 (6-12 months)\n\n{passages}")
    worked = [[cell.outcome.value for cell in row.cells] for row in report.ledger.rows]
    assert worked == [["agrees", "not-worked"]] * 2 + [["not-worked", "agrees"]] * 2


def test_sizes_without_names_are_said_by_their_order(capsys: pytest.CaptureFixture[str]) -> None:
    """ "In the 3rd size", "for the 3rd size": not "for size 3rd size"."""
    from lint.reports.terminal import show

    text = (
        "Marsh Hat\n\nUS terms\n\nBODY\nCh 41 (45, 49).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (40, 44, 48)\n"
        "Row 2: Ch 1, sc in first 20 (22, 24) sts, 2 sc in next st, sc in each st across, turn. (41, 45, 49)\n"
        "Row 3: Ch 1, sc in each st across. (41, 45, 50)\n"
    )
    show(check(text))
    shown = capsys.readouterr().out
    assert "In the 3rd size" in shown
    assert "3rd size 3rd" not in shown and "size 3rd size" not in shown


def test_lists_in_brackets_alone_show_the_sizes() -> None:
    """ "Ch (41, 45, 49)", "in first (20, 22, 24) sts": numbers to work are sizes; counts of several rows are none."""
    text = (
        "Marsh Hat\n\nUS terms\n\nBODY\nCh (41, 45, 49).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (40, 44, 48)\n"
        "Row 2: Ch 1, sc in first (20, 22, 24) sts, 2 sc in next st, sc in each st across, turn. (41, 45, 49)\n"
        "Row 3: Ch 1, sc in each st across. (41, 45, 50)\n"
    )
    assert [counts(check(text), size) for size in range(3)] == [[40, 41, 41], [44, 45, 45], [48, 49, 49]]

    rounds = (
        "Ball\n\nUS terms\n\nBALL\nRnd 1: 6 sc in magic ring. (6)\nRnds 2-4: Inc 6 sts evenly in each rnd. (12, 18, 24)\n"
        "Rnds 5-7: Sc in each st around. (24, 24, 24)\nRnds 8-10: Dec 6 sts evenly in each rnd. (18, 12, 6)\n"
    )
    assert counts(check(rounds)) == [6, 12, 18, 24, 24, 24, 24, 18, 12, 6]


_LABELS = """Test strap

Sizes: Small (Large)

UK terms

Make 9 (11) ch.
Row 1: 1 dc in 2nd ch from hook and in each ch to end, turn. (8 (10) dc)
{}: 1 ch, 2 dc in first st, 1 dc in each st to end, turn.
"""


@pytest.mark.parametrize("label", ["Row 2 and Row 3 (Large)", "Row 2, Row 3 (Large)", "Row 2 and Row 3 for size Large"])
def test_a_size_behind_the_second_of_two_labels(label: str) -> None:
    """It may be that of the second row alone, so that neither is counted."""
    assert made(_LABELS.format(label))[1:] == [[None, None]] * 2


@pytest.mark.parametrize("label", ["Rows 2 and 3 (Large)", "Rows 2-3 (Large only)"])
def test_a_size_behind_one_label_of_two_rows(label: str) -> None:
    """It is that of both."""
    assert made(_LABELS.format(label))[1:] == [[None, 11], [None, 12]]


def test_two_rows_named_by_themselves_for_all() -> None:
    """Without a size, or for all sizes, both are for everybody."""
    for label in ("Row 2 and Row 3", "Row 2 and Row 3 (RS, WS)"):
        assert made(_LABELS.format(label))[1:] == [[9, 11], [10, 12]]
