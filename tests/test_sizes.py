"""Patterns in several sizes: every number may be a list, and every size is worked by itself."""

from __future__ import annotations

import pytest
from helpers import check, counts, worked_rows

SIZES = {2: "S (L)", 3: "S (M, L)", 4: "S (M, L, XL)", 5: "XS (S, M, L, XL)"}


def strip(rows: str, sizes: int = 3, chain: str = "Ch 11 (13, 15).") -> str:
    """A strip of sc in so many sizes, with its first row."""
    first = "Row 1: Sc in 2nd ch from hook and in each ch across, turn."
    return f"Test strip\n\nUS terms\n\nSizes: {SIZES[sizes]}\n\nSTRIP\n{chain}\n{first}\n{rows}\n"


def numbers(text: str, size: int) -> list[int | None]:
    """The number of every labelled row that a size works, as the report gives it for the first size."""
    rows = worked_rows(check(text))
    return [row.number for row in rows if row.cells[size].outcome.value != "not-worked"]


@pytest.mark.parametrize(
    ("sizes", "chain", "made"),
    [
        (3, "Ch 11 (13, 15).", [10, 12, 14]),
        (3, "Ch 11 [13, 15].", [10, 12, 14]),
        (3, "Ch 11 (13: 15).", [10, 12, 14]),
        (3, "Ch 11 (13-15).", [10, 12, 14]),
        (3, "Ch 11 (13) 15.", [10, 12, 14]),
        (3, "Ch (11, 13, 15).", [10, 12, 14]),
        (3, "Ch 11/13/15.", [10, 12, 14]),
        (3, "Ch 11-13-15.", [10, 12, 14]),
        (3, "Ch 11; 13; 15.", [10, 12, 14]),
        (3, "Ch 11, 13, 15.", [10, 12, 14]),
        (4, "Ch 11 (13) 15 (17).", [10, 12, 14, 16]),
        (2, "Ch 11(13).", [10, 12]),
        (3, "Ch 11.", [10, 10, 10]),
    ],
)
def test_every_shape_of_list(sizes: int, chain: str, made: list[int]) -> None:
    """One number for each size, in whatever brackets and signs; a lone number is for all."""
    report = check(strip("", sizes, chain))
    assert [cell.made.stitches for cell in worked_rows(report)[0].cells] == made


@pytest.mark.parametrize(
    ("sizes", "label", "last"),
    [
        (3, "Rows 2-4 (6, 8)", [4, 6, 8]),
        (4, "Rows 2-4 (6) 8 (10)", [4, 6, 8, 10]),
        (4, "Rows 2-4/4/6/6", [4, 4, 6, 6]),
        (3, "Rows 2-4 (2-6, 2-8)", [4, 6, 8]),
        (3, "Rows 2 to (4, 6, 8)", [4, 6, 8]),
        (4, "Rows 2–4 (6: 8: 10)", [4, 6, 8, 10]),
        (3, "Rows 2 - 4 (6-8)", [4, 6, 8]),
        (2, "2nd to 4th (6th) rows", [4, 6]),
        (3, "Rows 2-4 (2-6 for M, 2-8 for L)", [4, 6, 8]),
        (3, "Next 3 (5, 7) rows", [4, 6, 8]),
    ],
)
def test_ranges_of_different_length(sizes: int, label: str, last: list[int]) -> None:
    """One range comes to so many rows in each size, aligned from its start; a shorter size works no more of them."""
    text = strip(f"{label}: Ch 1, sc in each st across, turn.", sizes, "Ch 11.")
    for size, end in enumerate(last):
        assert numbers(text, size) == list(range(1, end + 1))
        assert counts(check(text), size) == [10] * end + [None] * (max(last) - end)


def test_the_number_of_sizes_decides() -> None:
    """The same label is a list of ends in three sizes, and a list of ranges in two."""
    label = "Rows 2-4 (5-7): Ch 1, sc in each st across, turn."
    assert [len(numbers(strip(label, 3, "Ch 11."), size)) for size in range(3)] == [4, 5, 7]
    assert [len(numbers(strip(label, 2, "Ch 11."), size)) for size in range(2)] == [4, 4]


def test_a_label_that_is_a_list() -> None:
    """A row that every size calls by another number has the first size's, and can be called for by each size's own."""
    rows = """Rows 2-3 (4, 5): Ch 1, sc in each st across, turn.
Row 4 (5, 6): Ch 1, 2 sc in first st, sc in each st across, turn.
Rows 5-6 (6-7, 7-8): Rep Row 4 (5, 6)."""
    text = strip(rows)
    row = next(row for row in worked_rows(check(text)) if row.row.label.words == "Row 4 (5, 6)")
    assert row.number == 4
    for size, width in enumerate((10, 12, 14)):
        made = [count for count in counts(check(text), size) if count is not None]
        assert made[-3:] == [width + 1, width + 2, width + 3]


def test_a_dash_is_a_size_that_does_not_work_the_row() -> None:
    """Neither a row whose count has a dash nor one whose number has is worked in that size."""
    rows = """Row 2: Ch 1, 2 sc in each of first - (2, 4) sts, sc in each st across, turn. (- (14, 18) sc)
Row - (3, 3): Ch 1, sc in each st across, turn. (- (14, 18) sc)
Row 2 (4, 4): Ch 1, sc in each st across, turn. (10 (14, 18) sc)"""
    outcomes = [[cell.outcome.value for cell in row.cells] for row in worked_rows(check(strip(rows)))]
    assert outcomes[1:] == [["not-worked", "agrees", "agrees"]] * 2 + [["agrees"] * 3]
    assert [row.number for row in worked_rows(check(strip(rows)))] == [1, 2, 3, 2]


def test_nought_is_a_clause_that_is_not_worked() -> None:
    """No stitch, no skip and no pass of a repeat where a size has a nought or a dash for it."""
    rows = "Row 2: Ch 1, 2 sc in each of next 0 (1, 2) sts, [sc in next st, 2 sc in next st] - (0, 2) times, sc in each st to last 0 (0, 1) sts, turn, leaving any rem sts unworked."
    assert [counts(check(strip(rows)), size)[1] for size in range(3)] == [10, 13, 17]


def test_repeats_by_size() -> None:
    """Rows worked again so many times, and until so many stitches, by size."""
    rows = """Row 2: Ch 1, 2 sc in first st, sc in each st across, turn.
Row 3: Ch 1, sc in each st across, turn.
Rep last 2 rows 1 (2, 3) times more. (12 (15, 18) sc)
Rep Row 2 until 14 (18, 20) sts."""
    report = check(strip(rows))
    for size, last in enumerate((14, 18, 20)):
        made = [row.cells[size].made.stitches for row in report.ledger.rows if row.cells[size].made is not None]
        assert made[-1] == last
    assert not [finding for finding in report.findings if finding.rule == "count-differs"]


def test_a_count_speaks_for_the_last_row_of_each_size() -> None:
    """The count printed on a range is held against the last row that each size works."""
    good = strip("Rows 2-3 (4, 5): Ch 1, 2 sc in first st, sc in each st across, turn. (12 (15, 18) sc)")
    bad = good.replace("(12 (15, 18) sc)", "(12 (16, 18) sc)")
    assert "count-differs" not in {finding.rule for finding in check(good).findings}
    (found,) = [finding for finding in check(bad).findings if finding.rule == "count-differs"]
    assert found.sizes == ("M",)


def test_a_spaced_dash_opens_the_count() -> None:
    """ "Rep Row 2 – 10 (12, 14) sc" repeats one row."""
    report = check(strip("Row 2: Ch 1, sc in each st across, turn.\nRows 3-5: Rep Row 2 – 10 (12, 14) sc."))
    assert [cell.outcome.value for cell in report.ledger.rows[-1].cells] == ["agrees"] * 3


def test_a_label_that_fits_no_number_of_sizes() -> None:
    """Where a label's list lacks a size, how many rows there are is not known."""
    report = check(strip("Rows 2-4 (6): Ch 1, sc in each st across, turn.", 3))
    assert {cell.outcome.value for cell in worked_rows(report)[1].cells} == {"not-recomputed"}


def out_of_order(rows: str) -> list[tuple[str, tuple[str, ...]]]:
    found = [finding for finding in check(strip(rows)).findings if finding.rule == "row-number-out-of-order"]
    return [(finding.row, finding.sizes) for finding in found]


def test_row_numbers_go_on_in_every_size() -> None:
    """Labels that differ by size, and rows of some sizes only, are in order where each size's own numbers are."""
    plain = ": Ch 1, sc in each st across, turn.\n"
    good = f"Rows 2-3 (4, 5){plain}Row 4 (5, 6){plain}Size L only\nRow 7{plain}All sizes\nRow 5 (6, 8){plain}"
    assert out_of_order(good) == []
    assert out_of_order(good.replace("Row 4 (5, 6)", "Row 4 (5, 5)")) == [("Row 4 (5, 5)", ("L",))]
    assert out_of_order(good.replace("Row 4 (5, 6)", "Row 3 (4, 5)")) == [("Row 3 (4, 5)", ())]


def test_a_row_left_out_for_every_size() -> None:
    """A number that no size works is left out, though sizes differ elsewhere."""
    plain = ": Ch 1, sc in each st across, turn.\n"
    assert out_of_order(f"Row 2{plain}Row 4{plain}Row 5{plain}") == [("Row 4", ())]


def test_sizes_that_are_numbers() -> None:
    """Row numbers in a label's brackets are rows, though the sizes bear such numbers too."""
    text = strip("Rows 2 - (4, 6, 8): Ch 1, sc in each st across, turn. (10, 12, 14)").replace("S (M, L)", "4 (6, 8)")
    for size, last in enumerate((4, 6, 8)):
        assert numbers(text, size) == list(range(1, last + 1))
    assert [cell.outcome.value for cell in worked_rows(check(text))[3].cells] == ["agrees"] * 3


def test_dashes_before_a_list() -> None:
    """Of several dashes the first may open the count, and each of the others is a size that does not work the row."""
    text = strip(
        "Row 2: Ch 1, sc in each st across, turn - - (12, 14) sc.\nRow 3: Ch 1, sc in each st across, turn. - (-, 14) sc."
    )
    outcomes = [[cell.outcome.value for cell in row.cells] for row in worked_rows(check(text))]
    assert outcomes[1:] == [["not-worked", "agrees", "agrees"], ["not-worked", "not-worked", "agrees"]]
    assert not [finding for finding in check(text).findings if finding.rule == "size-list-length"]


@pytest.mark.parametrize(
    "figures",
    [
        "4, (5, 5), (6, 7)",
        "4 (5, 5)(6, 7)",
        "4 (5, 5) (6) (7)",
        "4 (5, 5) 6 (7)",
        "(4, 5) (5, 6, 7)",
        "4 (5, 5, 6 and 7)",
        "4(5,5,6,7)",
        "4 (5 - 5 - 6 - 7)",
        "4{5,5,6,7}",
        "4 / 5 / 5 / 6 / 7",
        "4; 5; 5; 6; 7",
        "4, 5, 5, 6, 7",
        "**4** (5, **5**, 6, **7**)",
        "four (five, five, six, seven)",
    ],
)
def test_lists_in_groups_and_without_brackets(figures: str) -> None:
    """A list may be cut into several brackets, be parted by commas alone, or have every second figure in bold."""
    row = f"Row 2: Ch 1, 2 sc in each of first {figures} sts, sc in each st to end, turn."
    report = check(strip(row, 5, "Ch 21 (23, 25, 27, 29)."))
    assert [cell.made.stitches for cell in worked_rows(report)[1].cells] == [24, 27, 29, 32, 35]


@pytest.mark.parametrize(
    ("label", "last"),
    [
        ("Rows 2-4; 6; 8", [4, 6, 8]),
        ("Next 3, 5, 7 rows", [4, 6, 8]),
        ("Next 3; 5; 7 rows", [4, 6, 8]),
        ("Next 3 (5) 7 rows", [4, 6, 8]),
        ("Rows 2-4, (6, 8)", [4, 6, 8]),
        ("Rows 2-4-6-8", [4, 6, 8]),
    ],
)
def test_labels_in_every_shape(label: str, last: list[int]) -> None:
    """A label's list may have the shape of any other."""
    text = strip(f"{label}: Ch 1, sc in each st across, turn.", 3, "Ch 11.")
    for size, end in enumerate(last):
        assert counts(check(text), size) == [10] * end + [None] * (max(last) - end)
    assert "size-list-length" not in {finding.rule for finding in check(text).findings}


def test_commas_alone_in_a_label() -> None:
    """Rows 2, 3, 4 are three rows, but where all lists are parted by commas alone they are one row of each size."""
    plain = "Row 2, 2, 2: Ch 1, sc in each of first 5, 6, 7 sts, sc in each st across, turn. (10, 12, 14 sc)"
    assert len(worked_rows(check(strip(plain, 3, "Ch 11, 13, 15.")))) == 2
    several = "Rows 2, 3, 4: Ch 1, sc in each st across, turn. (10 (12, 14) sc)"
    assert len(worked_rows(check(strip(several)))) == 4


@pytest.mark.parametrize(
    "figures",
    [
        "4 sts for S, 5 sts for M and 6 sts for L",
        "4 (S), 5 (M), 6 (L) sts",
        "4 (for size S), 5 (for size M) or 6 (for size L) sts",
    ],
)
def test_lists_that_name_their_sizes(figures: str) -> None:
    """The size may be named at each figure; so it may in the chain, and in the count."""
    row = f"Row 2: Ch 1, sc in each of first {figures}, 2 sc in next st, sc in each st to end, turn. (11 sc for S, 13 sc for M, 15 sc for L)"
    report = check(strip(row, 3, "Ch 11 (size S), 13 (size M) or 15 (size L)."))
    assert [cell.outcome.value for cell in worked_rows(report)[1].cells] == ["agrees"] * 3
    wrong = check(strip(row.replace("13 sc", "12 sc"), 3, "Ch 11 for S, 13 for M, 15 for L."))
    assert [finding.sizes for finding in wrong.findings if finding.rule == "count-differs"] == [("M",)]
