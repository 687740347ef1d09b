"""Abbreviations that a list explains in another form than the rows print, and how one that it lacks is shown.

The forms are common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, counts

LIST = "Abbreviations\nch - chain; sl st - slip stitch; sc - single crochet; dc - double crochet; st - stitch; sp - space\n"


def unexplained(row: str) -> list[str]:
    """What is told of the words of a row."""
    text = f"Mat\n\nUS terms\n\n{LIST}\nMAT\nRnd 1: Ch 4, join with sl st to form ring, 12 sc in ring. (12)\nRnd 2: {row}\n"
    rules = ("abbreviation-undefined", "terms-mixed")
    return [finding.message for finding in check(text).findings if finding.rule in rules]


@pytest.mark.parametrize(
    "row",
    [
        "Sc in each sc around, join with slip st.",
        "Sc in each sc around, join with slst.",
        "Sl st in the tops of the 12 sc's.",
        "Ch 4, dc in next sc, *ch 1, dc in next sc; rep from * around, dc in first chsp.",
        "Join with a standing sc, sc in each sc around.",
    ],
)
def test_another_form_of_what_is_explained(row: str) -> None:
    """The list says what it is."""
    assert not [told for told in unexplained(row) if "“rep”" not in told]


def test_a_word_within_a_phrase_is_shown_alone() -> None:
    """ "Do not FO" has one abbreviation in it."""
    assert any("“FO”" in told for told in unexplained("Sc in each sc around. Do not FO."))


def test_a_standing_post_stitch_is_of_both_countries() -> None:
    """It is no stitch of the other country's, whether it is explained or not."""
    assert not any(
        "UK" in told for told in unexplained("Join with a standing fpsc around any sc, sc in each sc around.")
    )


def test_a_stitch_under_the_names_of_both_countries() -> None:
    """ "tr/dc" is one stitch, and mixes nothing."""
    text = "Mat\n\nUK terms\n\nMAT\nRnd 1: Ch 4, join to form ring, 12 tr/dc in ring. (12)\nRnd 2: 2 tr/dc in each st. (24)\n"
    assert "terms-mixed" not in [finding.rule for finding in check(text).findings]


@pytest.mark.parametrize(
    ("behind", "found"),
    [
        ("Weave in ends. hdc2tog = half double crochet 2 together: draw up a loop in each of 2 sts.", []),
        ("Sew the side (hdc2tog = half double crochet two together).", []),
        ("Weave in ends. Work hdc2tog = 12 sts.", ["hdc2tog"]),
        ("Weave in ends.", ["hdc2tog"]),
    ],
)
def test_meaning_told_in_a_sentence_elsewhere(behind: str, found: list[str]) -> None:
    """A word that a sentence behind the rows explains is explained; common practice, no source."""
    report = check(
        "Mat\n\nAbbreviations (US)\nch: chain\nhdc: half double crochet\nst(s): stitch(es)\n\nMAT\nCh 12.\n"
        f"Row 1: Hdc in 3rd ch from hook and in each ch across, turn.\nRow 2: Ch 2, hdc2tog, hdc in each st.\n\nFinishing\n{behind}\n"
    )
    said = [one.message for one in report.findings if one.rule == "abbreviation-undefined"]
    assert len(said) == len(found) and all(word in line for word, line in zip(found, said, strict=True))


@pytest.mark.parametrize(
    "heading",
    [":: ABBREVIATIONS ::", "~ Abbreviations ~", "--- Abbreviations ---", "✿ Abbreviations ✿", "[Abbreviations]"],
)
def test_a_heading_between_ornaments(heading: str) -> None:
    """What stands below it is the list, whatever its heading is set off with; common practice, no source."""
    pattern = f"Ball\n\n{heading}\nsc = single crochet\nqx = make 2 sc in the next st\n\nBALL\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: qx in each st around.\n"
    assert counts(check(pattern)) == [6, 12]
