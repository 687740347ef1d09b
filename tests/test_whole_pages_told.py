"""What whole patterns of common house styles say of their pieces: marks, headings over a yarn, pieces begun and worked as others.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes

PANEL = """Slipover

UK terms

BACK
Make 31 ch.
1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn. 30 sts.
2nd row: 1 ch, 1 dc in each st to end, turn.
3rd row: 1 ch, dc2tog, 1 dc in each st to last 2 sts, dc2tog, turn. 28 sts.
{marked}
Next row: 1 ch, 1 dc in each st to end, turn.

FRONT
{called}
Next row: 1 ch, 1 dc in each of next 10 sts, turn, leaving rem sts unworked. {count} sts.
"""


def parts(report) -> list[tuple[str, int]]:
    """The pieces by name, each with how many rows it has."""
    return [(part.name, len(part.rows)) for part in report.pattern.parts]


@pytest.mark.parametrize(
    "marked",
    [
        "Rep last row twice. 24 sts. **",
        "Rep last row twice (24 sts).**",
        "Rep 3rd row 2 times more: 24 sts **",
        "4th and 5th rows: As 3rd row. 24 sts. **",
    ],
)
@pytest.mark.parametrize("called", ["Work as given for Back to **.", "Work as Back to **."])
def test_a_piece_up_to_a_mark(marked: str, called: str) -> None:
    """The front has the rows of the back up to the one behind which the mark stands, and goes on from its stitches."""
    report = check(PANEL.format(marked=marked, called=called, count=10))
    made = [row.cells[0].made.stitches for row in report.ledger.rows if row.part.name == "FRONT"]
    assert made == [30, 30, 28, 26, 24, 10]
    assert not corrections(report)


def test_a_wrong_count_behind_a_mark_is_found() -> None:
    """The row behind the call stands on the rows that were called for."""
    report = check(PANEL.format(marked="Rep last row twice. 24 sts. **", called="Work as Back to **.", count=12))
    assert [rule for rule, _ in corrections(report)] == ["count-differs"]


@pytest.mark.parametrize("marked", ["Rep last row twice. 24 sts.", "Rep last row twice. 24 sts. ***"])
def test_a_mark_that_is_not_there(marked: str) -> None:
    """Where the sign stands nowhere, how much of the back is worked is not known."""
    report = check(PANEL.format(marked=marked, called="Work as Back to **.", count=10))
    assert [row.cells[0].made for row in report.ledger.rows if row.part.name == "FRONT"][0] is None


def test_the_mark_of_a_repeat_is_none_of_a_row() -> None:
    """ "Ending last rep at **" at a row's end names the sign within it, which stays where it stands."""
    report = check(
        "Mat\n\nUS terms\n\nMAT\nRnd 1: 11 sc in ring. (11)\n"
        "Rnd 2: *Sc in next sc, ch 2**, sc in next sc, ch 3; rep from * around, ending last rep at **\n"
    )
    assert counts(report) == [11, 11]


TOY = """Otter

US terms

HEAD
Rnd 1: 6 sc in MR. (6)
Fasten off.

{heading}
Rnd 1: 5 sc in MR. (5)
Rnd 2: inc in each st around. (10)
"""


@pytest.mark.parametrize(
    "heading",
    [
        "PAWS\nGrey\n",
        "Paws\n\nDark grey\n",
        "PAWS\nColor: grey\n",
        "PAWS\nYarn: grey\n",
        "Paws\nGrey",
        "PAWS\nMake four\n",
    ],
)
def test_a_name_over_its_yarn(heading: str) -> None:
    """A piece's name stands over a line that tells its yarn or its number, and its rounds are its own."""
    report = check(TOY.format(heading=heading))
    assert [(name.lower(), number) for name, number in parts(report)] == [("head", 2), ("paws", 2)]
    assert counts(report) == [6, 5, 10]


@pytest.mark.parametrize(
    "begun",
    [
        "With B, ch 16 and work as given for Front.",
        "Using B, ch 16, then work as for Front.",
        "Ch 16 and follow the directions for Front.",
        "With B, work same as Front.",
        "Follow the instructions for Front.",
    ],
)
def test_a_piece_begun_and_worked_as_another(begun: str) -> None:
    """The chain that is told is worked on, else the other piece's own."""
    report = check(
        "Pouch\n\nUS terms\n\nFRONT\nWith A, ch 16.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (15 sc)\n"
        f"Row 2: Ch 1, sc in each st across. (15 sc)\nFasten off.\n\nBACK\n{begun}\n"
    )
    made = [row.cells[0].made.stitches for row in report.ledger.rows if row.part.name == "BACK"]
    assert [number for number in made if number] == [15, 15]


def test_a_piece_begun_and_not_understood_is_told() -> None:
    """What is worked upon a piece's chain is not read, and no row stands below it: the piece is not lost without a word."""
    report = check(
        "Pouch\n\nUS terms\n\nFRONT\nCh 16.\nRow 1: Sc in 2nd ch from hook and in each ch across. (15 sc)\n\n"
        "BACK\nCh 16 and work it in sc just like the Front.\n"
    )
    assert ("not-understood", 10) in all_findings(report, ("query",))


HAT = "Hat\n\nUS terms\n\nHAT\nRnd 1: 10 dc in ring. (10)\nRnd 2: 2 dc in each st around. (20)\n"


@pytest.mark.parametrize(
    "wish",
    [
        "For bigger sizes, repeat Rnd 2.",
        "If making a larger size, work another round.",
        "For larger hats, repeat Rnd 2.",
    ],
)
def test_other_sizes_than_the_only_one(wish: str) -> None:
    """A pattern of one size tells who wants a larger one what to do: no order for the size that it has."""
    report = check(f"{HAT}{wish}\nRnd 3: Dc in each st around. (20)\n")
    assert counts(report)[-1] == 20
    assert not corrections(report)


def test_the_larger_of_two_is_an_order() -> None:
    """ "For the larger flower, repeat Rnd 2" is no wish where nothing says so: the round is worked, or asked about."""
    report = check(f"{HAT}For the larger flower, repeat Rnd 2.\nRnd 3: Dc in each st around. (20)\n")
    assert counts(report)[-1] != 20 or all_findings(report, ("correction", "query"))


@pytest.mark.parametrize("row", ["R2: sc around (6)", "R2: inc around (12)"])
@pytest.mark.parametrize(("word", "ring"), [("MC", "magic circle"), ("AR", "adjustable ring")])
def test_rounds_by_the_words_for_a_ring(row: str, word: str, ring: str) -> None:
    """ "R1: 6 sc in MC" with the word explained is a round, so that its last stitch meets its first."""
    report = check(
        f"Ball\n\nUS terms\n\nAbbreviations\n{word}: {ring}\nsc: single crochet\ninc: 2 sc in one stitch\n\nBALL\n"
        f"R1: 6 sc in {word} (6)\n{row}\n"
    )
    assert [line.row.label.kind for line in report.ledger.rows] == ["round", "round"]


def test_rows_that_turn_are_no_rounds() -> None:
    """ "R1" under rows that are turned stays a row."""
    report = check(
        "Strap\n\nUS terms\n\nSTRAP\nCh 9.\nR1: sc in 2nd ch from hook and in each ch across, turn (8)\n"
        "R2: ch 1, sc in each st across, turn (8)\n"
    )
    assert {line.row.label.kind for line in report.ledger.rows if line.row.label} == {"row"}
    assert outcomes(report) == ["agrees", "agrees"]


def test_a_list_under_the_terms_with_blanks_only() -> None:
    """ "UK terms" and lines such as "htr half treble": a list of abbreviations, and none is missing."""
    report = check(
        "Square\n\nUK terms\nch chain\nhtr half treble\ntr treble\nst(s) stitch(es)\n\nSQUARE\n"
        "Round 1: 4 ch, join into a ring. 3 ch (counts as 1 tr), 11 tr into ring. (12 tr)\n"
    )
    missing = [
        one.message for one in report.findings if one.rule == "section-missing" and "abbreviations" in one.message
    ]
    assert not missing


def test_a_chain_is_none_of_the_last_rows() -> None:
    """ "Rep last 3 rows" where only two stand above, and a chain: they are not there."""
    report = check(
        "Scarf\n\nUS terms\n\nSCARF\nFoundation: Ch 12.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (11)\n"
        "Row 2: Ch 1, sc in each st across, turn. (11)\nRep last 3 rows twice.\n"
    )
    assert report.ledger.rows[-1].cells[0].made is None
