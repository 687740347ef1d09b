"""Patterns as blogs write them: arrows before counts, calls, chatter behind a count; notes that are for one piece."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes

_TOY = """Nib the Mole
US terms
Worked in a spiral.
BODY
R1: 7 sc in MR {arrow} 7
R2: inc x 7 {arrow} 14 (so round already!!)
R3: (sc, inc) x 7 {arrow} 21
R4 - R5: sc in every st {arrow} 21 (2 rounds)
Stuff him lightly now
R6: (sc, dec) x 7 {arrow} {last}
"""


@pytest.mark.parametrize("arrow", ["➜", "➡️", "⇒", "→", "▶", "->"])
def test_a_count_may_stand_behind_any_arrow(arrow: str) -> None:
    """Arrows of every shape open a count, with or without talk behind it."""
    report = check(_TOY.format(arrow=arrow, last=14))
    assert counts(report) == [7, 14, 21, 21, 21, 14]
    assert set(outcomes(report)) == {"agrees"}


def test_a_wrong_count_behind_an_arrow_is_found() -> None:
    """A count behind an arrow is held against the words."""
    assert ("count-differs", 10) in corrections(check(_TOY.format(arrow="➜", last=15)))


def test_a_call_ends_and_what_follows_is_worked() -> None:
    """ "change to blue! sc 2 …": no stitch goes with the colour."""
    report = check("US terms\nTAIL\nR1: 6 sc in MR (6)\nR2: change to blue! sc 2, inc x 2, sc 2 (8)\n")
    assert counts(report) == [6, 8]


_BOX = """US terms
{note}
LID
Ch 13.
Row 1: Dc in 2nd ch from hook and in each ch across, turn. 12 dc
Row 2: Ch 3, dc in each st across, turn. {lid}
RIM
Ch 13.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. 12 sc
Row 2: Ch 3, skip first st, dc in each st across, turn. 12 dc
"""


def test_a_note_for_one_piece_leaves_the_others_be() -> None:
    """What a note says of the lid is not said of the rim."""
    note = "The turning ch does not count as a st in the lid. For the rim, ch 3 stands for the first dc."
    report = check(_BOX.format(note=note, lid="12 dc"))
    assert counts(report)[-4:] == [12, 12, 12, 12]
    assert not [rule for rule, _ in corrections(report) if rule == "count-differs"]


def test_a_note_for_one_piece_holds_there() -> None:
    """What a note says of the lid holds in the lid."""
    report = check(
        _BOX.format(note="Ch 3 counts as a dc in the rim. Ch 3 never counts as a st in the lid.", lid="13 dc")
    )
    assert ("count-differs", 6) in corrections(report)


def test_a_count_may_follow_what_is_left() -> None:
    """A count behind "leaving the rest for …" is read, right or wrong."""
    text = "US terms\nHEEL\nCh 25.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn = 24 sc\n"
    text += "Row 2: Ch 1, sc in next 14 sts, turn, leaving the rest for the top of the foot = {} sc\n"
    assert outcomes(check(text.format(14)))[-1] == "agrees"
    assert outcomes(check(text.format(15)))[-1] == "differs"


def test_rows_worked_as_set_take_numbers_with_them() -> None:
    """Rows worked "as set" have the numbers between; without them a number is left out."""
    text = "UK terms\nPURSE\nMake 13ch.\nRow 1 1dc in 2nd ch from hook, 1dc in each ch to end, turn. 12 sts.\n"
    text += "Row 2 1ch, 1dc in each dc, turn. 12 sts.\n{}\nRow 8 1ch, 1dc in each dc. 12 sts.\n"
    assert "row-number-out-of-order" not in dict(corrections(check(text.format("Cont as set until 7 rows are done."))))
    assert "row-number-out-of-order" in dict(corrections(check(text.format(""))))


def test_rows_of_a_sort_have_numbers_of_their_own() -> None:
    """ "1st plain round" among the numbered rounds is worked, and is no number out of order."""
    text = "US terms\nHAT\n1st round: 12 sc in a magic ring. (12)\n2nd round: 2 sc in each sc. (24)\n"
    text += "1st plain round: sc in each sc. (24)\n3rd round: [sc in next 2 sc, 2 sc in next sc] around. (32)\n"
    text += "2nd and 3rd plain rounds: sc in each sc. (32)\n4th round: [sc in next 2 sc, sc2tog] around. ({})\n"
    report = check(text.format(24))
    assert counts(report) == [12, 24, 24, 32, 32, 32, 24]
    assert not [rule for rule, _ in corrections(report) if rule != "section-missing"]
    assert ("count-differs", 8) in corrections(check(text.format(25)))


def test_a_cord_of_slip_stitches_is_counted() -> None:
    """A chain worked back in slip stitches has those for its stitches."""
    text = "US terms\nSTALK\nRow 1: Ch 9, sl st in 2nd ch from hook and in next 7 ch ({} sl sts)\n"
    assert outcomes(check(text.format(8)))[-1] == "agrees"
    assert outcomes(check(text.format(9)))[-1] == "differs"


def test_a_slip_stitch_before_a_skip_takes_a_place() -> None:
    """In "(sl st, skip 1, 5 hdc in next, skip 1)" every pass takes four stitches."""
    text = "US terms\nICING\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n"
    report = check(text + "Rnd 3: (sl st, skip 1, 5 hdc in next, skip 1) x 3 (15 hdc)\n")
    assert all_findings(report, ("correction", "query")) == all_findings(check(text), ("correction", "query"))
    assert "repeat-does-not-fit" in dict(
        corrections(check(text + "Rnd 3: (sl st, skip 1, 5 hdc in next) x 5 (25 hdc)\n"))
    )


def test_tables_under_several_headings() -> None:
    """Every table's heading opens its own piece, and a star written with a backslash is a star."""
    text = "# Plum\n\nUS terms\n"
    for name in ("Fruit", "Leaf"):
        text += f"\n## {name}\n\n| Rnd | Work | Sts |\n|---|---|---|\n| 1 | 6 sc in MR | 6 |\n| 2 | \\*sc, inc\\* to end | 9 |\n"
    report = check(text)
    assert counts(report) == [6, 9, 6, 9]
    assert [part.name for part in report.pattern.parts] == ["Fruit", "Leaf"]


def test_the_opposite_edge_of_a_chain_is_its_other_side() -> None:
    """An oval may go on along "the opposite edge of the chain"; another piece's other edge is not known."""
    oval = "US terms\nSOLE\nRnd 1: Ch 8, sc in 2nd ch from hook, sc in next 5 ch, 3 sc in last ch, "
    oval += "working along the opposite edge of the chain: sc in next 5 ch, 2 sc in last ch ({})\n"
    assert outcomes(check(oval.format(16)))[-1] == "agrees"
    assert outcomes(check(oval.format(17)))[-1] == "differs"
    band = "US terms\nBAND\nCh 8.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (7)\n"
    assert (
        outcomes(check(band + "Row 2: Ch 1, sc in each st along the other edge of the cuff. (7)\n"))[-1]
        == "not-recomputed"
    )


@pytest.mark.parametrize(
    "words",
    [
        "block to the measurements given",
        "block to size",
        "block lightly",
        "then block the panel flat to the finished size",
    ],
)
def test_blocking_is_no_block(words: str) -> None:
    """Behind "Fasten off", to block is what is done with the piece, and no group of stitches."""
    report = check(f"Panel\n\nUS terms\n\nPANEL\nRow 1: Fsc 6, turn. (6)\nFasten off. Weave in ends, {words}.\n")
    assert all(cell.stopped_by is None for row in report.ledger.rows for cell in row.cells)


def test_what_a_chain_of_a_block_comes_to_be() -> None:
    """A sentence that says what the chain makes, and that it is no stitch, works nothing and settles how it counts."""
    report = check(
        "Square\n\nUS terms\n\nBlock: ch 3 and 3 dc. The ch 3 makes a ch-3 sp beside the dc; it is not counted as a st.\n\nSQUARE\n"
        "Row 1: Ch 6, dc in 4th ch from hook, dc in each of next 2 ch. (1 block)\n"
        "Row 2: Ch 6, turn, dc in 4th ch from hook, dc in each of next 2 ch, sl st in ch-3 sp of block of Row 1, ch 3, 3 dc in same sp. (2 blocks)\n"
    )
    rules = {one.rule for one in report.findings}
    assert not rules & {"not-understood", "turning-chain-unsaid", "count-differs"}
