"""Restyling of counts that are sentences, and of lists beside which stitches are defined."""

from __future__ import annotations

import pytest
from helpers import rulebook

_MAT = """Mat
US terms

ABBREVIATIONS: Chain = ch; single crochet = sc; double crochet = dc; stitch = st; round = rnd

Bead: ch 3 and 3 dc. The ch 3 is not counted as a st.

Ch 12.
Row 1: Sc in 2nd ch from hook and in each ch across. 11 sc.
Row 2: Ch 1, turn, sc in each st across. 11
Row 3: Ch 1, turn, sc in each st across. You now have 11 sts.
"""


def restyled(text: str, house: str) -> str:
    """The text in the form of a house."""
    from lint.house.loading import house_path, load_house
    from lint.houseclerk import restyled as in_house
    from lint.source import SourceText

    return in_house(SourceText(text), load_house(house_path(house), rulebook()), rulebook(), "auto").text


@pytest.mark.parametrize(
    ("house", "first", "second"), [("example-us", "(11 sc)", "(11 sts)"), ("example-uk", "[11 dc]", "[11 sts]")]
)
def test_counts_that_are_sentences(house: str, first: str, second: str) -> None:
    """ "11 sc." behind a full stop is the row's count; a sentence in words stays; once more changes nothing."""
    text = restyled(_MAT, house)
    lines = text.splitlines()
    assert lines[-3].endswith(f"across. {first}")
    assert lines[-2].endswith(f"across. {second}")
    assert lines[-1].endswith("You now have 11 sts.")
    assert restyled(text, house) == text


def test_a_stitch_defined_below_the_list_stays_there() -> None:
    """The list is put in order without the line that says how a stitch is worked."""
    text = restyled(_MAT, "example-us")
    assert "\nBead: ch 3 and 3 dc. The ch 3 is not counted as a st.\n" in text
    assert "ABBREVIATIONS: ch = Chain; dc = double crochet; rnd = round; sc = single crochet; st = stitch\n" in text
