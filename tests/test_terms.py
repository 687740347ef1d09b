"""US or UK: what a pattern says of its terms, and what its stitches show."""

from __future__ import annotations

import pytest
from helpers import check, mades

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


@pytest.mark.parametrize(
    ("words", "terms", "kind"),
    [
        ("Ch 3, 2 dc in ring, (ch 3, 3 dc in ring) x 3, ch 3, ss to top of ch 3.", "us", "dc"),
        ("3 ch (counts as 1 dc), 2 dc in ring, (3 ch, 3 dc in ring) x 3, 3 ch, ss to top of 3 ch.", "us", "dc"),
        ("1 ch, (1 dc in ring, 3 ch) x 8, ss to first dc.", "uk", "sc"),
        ("1 ch, 1 dc in ring, (3 ch, 1 dc in ring) x 7, 3 ch, ss to first dc.", "uk", "sc"),
    ],
)
def test_the_height_of_the_first_chain_tells_a_dc_from_a_dc(words: str, terms: str, kind: str):
    """ "Ss" is written in both countries; three chains are as high as a US dc."""
    report = check(f"Motif\nRnd 1: Ch 4, ss to form ring. {words}\n")
    assert report.terms.terms == terms
    assert [set(made.by_kind) for made in mades(report)] == [{kind}]
