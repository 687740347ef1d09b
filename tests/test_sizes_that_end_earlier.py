"""Row numbers behind a range that some sizes leave earlier, and sentences on sizes that were not understood."""

import pytest
from helpers import all_findings, check

GRADED = (
    "Cuff\n\nSizes: S (M, L)\n\n"
    "Row 1: Ch 9 (11, 13), sc in 2nd ch from hook and in each ch across, turn. (8 (10, 12) sc)\n"
    "{}\n{}: Ch 1, sc in each st across, turn.\n"
)


def found(range_: str, then: str) -> list[tuple[str, int]]:
    """What is found in a cuff whose range of rows is followed by a row with another label."""
    return [one for one in all_findings(check(GRADED.format(range_, then))) if one[0] == "row-number-out-of-order"]


@pytest.mark.parametrize(
    "range_",
    [
        "Rows 2-7: Ch 1, sc in each st across, turn. Small ends with Row 5, Medium after Row 6.",
        "Rows 2-5 (6, 7): Ch 1, sc in each st across, turn.",
    ],
)
def test_one_number_for_all_behind_a_range_that_ends_by_size(range_: str) -> None:
    """The numbers that longer sizes work are not left out of the shorter ones; what nobody works is."""
    assert found(range_, "Row 8") == []
    assert found(range_, "Row 9") == [("row-number-out-of-order", 7)]


def test_a_slip_in_a_list_of_numbers_is_found_still() -> None:
    """Where the next row has its number by size, each goes on from its own."""
    range_ = "Rows 2-5 (6, 7): Ch 1, sc in each st across, turn."
    assert found(range_, "Row 6 (7, 8)") == []
    assert found(range_, "Row 7 (7, 8)") == [("row-number-out-of-order", 7)]


@pytest.mark.parametrize(
    ("sentence", "names"),
    [
        ("Finish all ends for size S.", []),
        ("End with a RS row for S.", []),
        ("If making size XL, stop here.", ["XL"]),
    ],
)
def test_a_sentence_that_was_not_understood_is_no_size(sentence: str, names: list[str]) -> None:
    """Its words are not asked about as the name of a size, unless they name one that the pattern does not have."""
    report = check(GRADED.format(f"Row 2: Ch 1, sc in each st across, turn.\n{sentence}", "Row 3"))
    asked = [report.source.slice(one.span) for one in report.findings if one.rule == "size-not-listed"]
    assert asked == names
