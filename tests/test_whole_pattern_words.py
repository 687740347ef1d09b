"""Words that stand in whole patterns around and between the rows: joined yarn, pieces under headings, sewing.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

_STRIPES = """Mat
UK terms

Materials: DK in Cream (A) and Moss (B)

MAT
Using A, make 13ch.
Row 1: 1dc in 2nd ch from hook, 1dc in each ch to end, turn. 12dc.
Row 2: 1ch, 1dc in each dc to end, turn. 12dc. Fasten off A.
Row 3: {}1ch, 1dc in each dc to end. 12dc.
"""


def rules(text: str) -> set[str]:
    """The rules that a text's corrections and queries break."""
    return {rule for rule, _ in all_findings(check(text), ("correction", "query"))}


@pytest.mark.parametrize("words", ["Join in B, ", "Join in yarn B. ", "Join in Moss. ", "Join in new yarn, "])
def test_yarn_that_is_joined_in_is_joined(words):
    """ "Join in B" brings new yarn, and is no join of the row."""
    assert "yarn-not-joined" not in rules(_STRIPES.format(words))
    assert "yarn-not-joined" in rules(_STRIPES.format(""))


def test_a_chain_in_a_colour_begins_a_piece_under_its_heading():
    """ "TAIL" over "Using A, make 8ch, ss in …" is a piece of its own: nothing is left over of the ear above it."""
    text = "Calf\nUK terms\n\nEAR\nRound 1: 6dc in magic ring. (6)\nRound 2: 2dc in each st. (12)\nFasten off.\n\n"
    report = check(text + "TAIL\nUsing A, make 8ch, ss in 2nd ch from hook and in each ch to end. Fasten off.\n")
    assert [part.name for part in report.pattern.parts] == ["EAR", "TAIL"] and counts(report) == [6, 12]
    assert "places-left-over" not in dict(all_findings(report))


@pytest.mark.parametrize(
    ("words", "asked"),
    [("Close the gap with a few stitches.", False), ("Work a few stitches in the next st.", True)],
)
def test_stitches_of_a_needle_need_no_number(words, asked):
    """How often a hole is sewn through is the maker's; how many stitches are crocheted is not."""
    text = f"Calf\nUS terms\n\nEAR\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12) {words}\n"
    assert ("open-count-words" in rules(text)) == asked
