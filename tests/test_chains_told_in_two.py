"""A foundation chain told in two pieces, before a stitch that is counted from the hook."""

import pytest
from helpers import check, corrections, counts

STRIP = "Strip\nUS terms\n\nRow 1: {} and in each ch across, turn. ({})\n"


@pytest.mark.parametrize(
    ("begun", "count", "wrong"),
    [
        ("Ch 14, ch 1 for turning, sc in 2nd ch from hook", "14 sc", "15 sc"),
        ("Ch 14, plus ch 1 for turning, sc in 2nd ch from hook", "14 sc", "13 sc"),
        ("Ch 14 and ch 1 more, sc in 2nd ch from hook", "14 sc", "1 sc"),
        ("Ch 14, ch 2 more, hdc in 3rd ch from hook", "14 hdc", "16 hdc"),
    ],
)
def test_two_chains_are_one(begun: str, count: str, wrong: str) -> None:
    """The chain counted from the hook lies beyond the second piece, so that the first is worked into as well."""
    report = check(STRIP.format(begun, count))
    assert counts(report) == [14] and corrections(report) == []
    assert ("count-differs", 4) in corrections(check(STRIP.format(begun, wrong)))


def test_a_picot_behind_a_turning_chain_is_its_own() -> None:
    """The second chain alone is closed to a ring by its slip stitch: the row's stitches are those below."""
    text = STRIP.format("Ch 9, sc in 2nd ch from hook", "8 sc") + (
        "Row 2: Ch 1, ch 3, sl st in 3rd ch from hook, sc in each sc across. (8 sc)\n"
    )
    assert counts(check(text)) == [8, 8]


@pytest.mark.parametrize(
    "begun", ["Ch 14, then ch 3 more.", "Ch 14. Ch 3.", "Ch 14 (not too tightly), ch 3.", "Ch 17."]
)
def test_a_line_of_two_chains_is_one(begun: str) -> None:
    """A line of chains and nothing else is what the first row is worked into, all of it."""
    text = f"Strip\nUS terms\n\n{begun}\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (15 dc, with the ch-3)\n"
    assert counts(check(text)) == [15]
    assert corrections(check(text)) == []
    assert [rule for rule, _ in corrections(check(text.replace("15 dc", "16 dc")))] == ["count-differs"]
