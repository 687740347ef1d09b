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


_HEADED = """Mitt
US terms

{}
ch: chain
dc: double crochet
sc: single crochet
sl st: slip stitch
st: stitch

CUFF
{}Ch 12.
Row 1: Dc in 4th ch from hook (counts as 2 dc), dc in each ch across, turn. (10 dc)
Row 2: Ch 3 (counts as dc), fpdc around each of next 8 sts, dc in top of ch 3. (10 sts)
"""


@pytest.mark.parametrize("heading", [">> ABBREVIATIONS (American)", "~ Abbreviations ~", "★ Abbreviations", "= KEY ="])
def test_a_heading_between_ornaments_is_one(heading):
    """The list under it explains its words."""
    missing = [f for f in check(_HEADED.format(heading, "")).findings if f.rule == "abbreviation-undefined"]
    assert ["fpdc" in finding.message for finding in missing] == [True]


@pytest.mark.parametrize(
    ("words", "missing"),
    [
        ("fpdc: front post double crochet.\n", False),
        ("bpdc: back post double crochet. fpdc: front post double crochet.\n", False),
        ("fpdc: the tall ones.\n", True),
    ],
)
def test_an_abbreviation_may_be_explained_where_it_is_needed(words, missing):
    """A line over the rows that gives its meaning explains it as the list would."""
    assert ("abbreviation-undefined" in rules(_HEADED.format("Abbreviations", words))) == missing


@pytest.mark.parametrize("sign", ["»", ">", ">>", "›"])
def test_a_guillemet_sets_a_label_apart(sign):
    """ "Rnd 1 » 6 sc in magic ring"."""
    report = check(
        f"Ball\nUS terms\n\nRnd 1 {sign} 6 sc in magic ring. (6)\nRnds 2 to 4 {sign} sc in each st around. (6)\n"
    )
    assert counts(report) == [6, 6, 6, 6]


_OVAL = "Oval\nUS terms\n\nCh 7.\nRnd 1: Sc in 2nd ch from hook, sc in next 4 ch, 3 sc in last ch{} sc in next 4 ch, 2 sc in last ch. (14)\n"


@pytest.mark.parametrize(
    "turned",
    [
        "; turn the chain around and work on the other side:",
        ". Turn it clockwise and go on along the bottom of the chain,",
        ". Turn the piece upside down.",
    ],
)
def test_the_chain_is_turned_round_to_its_other_side(turned):
    """What follows goes into the chains from below."""
    report = check(_OVAL.format(turned))
    assert counts(report) == [14] and not {"places-run-out", "not-understood"} & set(dict(all_findings(report)))


def test_turning_on_words_that_are_not_known_is_not_passed_over():
    """ "Turn it as you like" may be any turn: the row is not counted."""
    assert counts(check(_OVAL.format("; turn it this way and that and work on:"))) == [None]


_CORNER = """Cloth
US terms

Row 1: Ch 6, dc in 4th ch from hook and in next 2 ch, turn. (1 tile)
Row 2: Ch 6, dc in 4th ch from hook and in next 2 ch, {}ch 3, 3 dc in same sp, turn. (2 tiles)
Row 3: Ch 6, dc in 4th ch from hook and in next 2 ch, *sl st in next ch-3 sp, ch 3, 3 dc in same sp; rep from * across, turn. (3 tiles)
"""


@pytest.mark.parametrize(
    "joined", ["sl st in ch-3 sp of tile in previous row, ", "rotate, sl st in ch-3 sp of last row, "]
)
def test_a_tile_is_joined_to_the_row_below(joined):
    """The tile is turned to the row below, and not to the other side of its own chain."""
    report = check(_CORNER.format(joined))
    assert counts(report) == [3, 6, 9] and "places-run-out" not in dict(all_findings(report))
