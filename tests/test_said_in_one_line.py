"""Wordings that fresh patterns brought: labels for some sizes, corners by name, rows gone on with.  Counts by arithmetic."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections

VEST = "Vest\n\nUS terms\n\nSizes: S (M, L, XL)\n\nBACK\nRow 1: Fsc 20 (22, 24, 26), turn.\nRow 2: Ch 1, sc in each st, turn.\n{label} Ch 1, sc2tog, sc to end.\nNext row: Ch 1, sc across.\n"


@pytest.mark.parametrize(
    "label",
    [
        "Rows 3 - 5 (3 - 6 for sizes L and XL):",
        "Rows 3-5 (sizes L and XL: Rows 3-6):",
        "Rows 3 - 5 (L, XL: 3 - 6):",
        "Rows 3 - 5 for sizes S and M, 3 - 6 for sizes L and XL:",
        "Rows 3 - 5 (S and M) / 3 - 6 (L and XL):",
    ],
)
def test_rows_of_some_sizes_in_a_label(label: str) -> None:
    """Three decreases for the small sizes, four for the large ones."""
    report = check(VEST.format(label=label))
    assert [cell.made.stitches for cell in report.ledger.rows[-1].cells] == [17, 19, 20, 22]
    assert not [one for one in corrections(report) if one[0] == "row-number-out-of-order"]


def test_rows_in_a_labels_bracket_that_are_not_read() -> None:
    """A bracket with other row numbers may change how many rows there are: the row is not recomputed, nor the next."""
    report = check(VEST.format(label="Rows 3 - 5 (or 3 - 6 if you like):"))
    assert all(cell.made is None for row in report.ledger.rows[2:] for cell in row.cells)


def test_a_group_called_corner_and_the_corner_it_goes_into() -> None:
    """ "To next corner" is up to the space of the row below, though the pattern calls its own group a corner."""
    report = check(
        "Square\n\nUS terms\n\nSpecial stitches\nCorner: (2 dc, ch 2, 2 dc) in place stated.\n\nSQUARE\n"
        "Rnd 1: Ch 1, 16 sc in magic ring, join. (16 sc)\n"
        "Rnd 2: Ch 1, *sc in next 3 sts, (sc, ch 2, sc) in next st; rep from * 3 more times, join. (20 sc, 4 ch-2 sps)\n"
        "Rnd 3: Join B with sl st in any ch-2 sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, *dc in each sc to next corner, "
        "Corner in next ch-2 sp; rep from * 2 more times, dc in each sc to end, join. (36 dc, 4 ch-2 sps)\n"
    )
    assert report.ledger.rows[-1].first.made.stitches == 36
    assert not [one for one in corrections(report) if one[0] == "places-run-out"]


@pytest.mark.parametrize(
    "words",
    [
        'Continue to rep Rows 2 and 3 until scarf measures 60".',
        "Continue repeating Rows 2-3 until piece measures about 60 in [152 cm], ending with Row 3.",
    ],
)
def test_rows_gone_on_with(words: str) -> None:
    """Rows that gain nothing may be worked as often as wanted: what comes after them stands on as many stitches."""
    report = check(
        "Scarf\n\nUS terms\n\nSCARF\nRow 1: Fsc 20, turn. (20 sc)\nRow 2: Ch 1, sc in each st across, turn.\n"
        f"Row 3: Ch 1, sc in each st across, turn.\n{words}\nLast Row: Rep Row 2.\n"
    )
    assert report.ledger.rows[-1].first.made.stitches == 20
    assert "not-understood" not in {one.rule for one in report.findings}


def test_a_multiple_to_be_added_is_none_of_the_chain() -> None:
    """ "Add a multiple of 8" says nothing of what the chain is a multiple of."""
    text = "Scarf\n\nUS terms\n\nNote: For a wider scarf, {words} 8 to the starting ch.\n\nSCARF\nCh 51.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (50 sc)\n"
    assert "multiple-does-not-fit" not in dict(all_findings(check(text.format(words="add a multiple of"))))
    assert "multiple-does-not-fit" in dict(all_findings(check(text.format(words="the chain is a multiple of").replace(" to the starting ch", ""))))  # fmt: skip


def test_ease_told_of_the_size_shown() -> None:
    """The ease of the size that the sample is in is that of this size alone."""
    text = (
        "Vest\n\nUS terms\nSizes: S (M, L)\nTo fit bust: 34 (38, 42) in\nFinished bust: 36½ (40½, 45) in\n"
        "Sample shown in size M with {ease} in of positive ease.\n\nBACK\nCh 21 (25, 29).\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 (24, 28) sc)\n"
    )
    assert "ease-disagrees" not in dict(all_findings(check(text.format(ease="2½"))))
    assert "ease-disagrees" in dict(all_findings(check(text.format(ease="5"))))


@pytest.mark.parametrize(
    ("words", "made", "spaces"),
    [
        ("Ch 3, turn, dc in each st across. Ch 3 counts as dc. (31)", 31, {}),
        ("Ch 3, turn, dc in each st across; ch 3 does not count as a st. (31)", 31, {}),
        ("Ch 2, turn, hdc in each st across; do not count ch 2 as st. (31)", 31, {}),
        ("Ch 2, turn, hdc in each st across. Do not count the turning ch as a st. (31)", 31, {}),
        ("Ch 1, turn, sc in each st; count the last 2 sts as one. (31)", None, {}),
    ],
)
def test_what_a_row_says_of_its_chain_behind_its_work(words: str, made: int | None, spaces: dict[int, int]) -> None:
    """A sentence on the chain that the row begins with is no chain of its own, wherever it stands."""
    report = check(
        f"Wrap\n\nUS terms.\n\nCh 32.\nRow 1: Sc in 2nd ch from hook and in each ch across. (31 sc)\nRow 2: {words}\n"
    )
    last = report.ledger.rows[-1].cells[0].made
    assert (last.stitches if last is not None else None) == made
    assert last is None or dict(last.spaces) == spaces
    assert corrections(report) == []
