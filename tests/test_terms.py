"""US or UK: what a pattern says of its terms, and what its stitches show."""

from __future__ import annotations

import pytest
from helpers import check

ROUND = "\n\nCircle\nMake a magic ring.\nRnd 1: 6 dc in ring, join.\n"


@pytest.mark.parametrize(
    ("words", "terms", "said"),
    [
        ("TERMS\nUK", "uk", True),
        ("Terms: US", "us", True),
        ("Terminology\n\nBritish", "uk", True),
        ("UK crochet terms throughout.", "uk", True),
        ("Worked with 2 htr at the edge; check your tension.", "uk", False),
        ("A mat for a small table.", "us", False),
    ],
)
def test_terms_are_told(words: str, terms: str, said: bool) -> None:
    """What the pattern says is believed, on the heading's line or below it; else its stitch names decide."""
    found = check(f"Mat\n\n{words}{ROUND}").terms

    assert (terms, said) == (found.terms, found.said)
