"""Two printed counts in one row of filet: both are held against the row, and neither is worked (common practice, no source)."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, line_of, worked_rows

_TEXT = """Curtain

{terms} terms

Abbreviations
bl(s) = block(s)
ch = chain
{dc} = {name}
sp(s) = space(s)

Filet stitches
Space over space: Ch 2, {dc} in next {dc}.
Space over block: Ch 2, skip 2 {dc}, {dc} in next {dc}.
Block over space: 2 {dc} in next sp, {dc} in next {dc}.
Block over block: {dc} in next 3 {dc}.

Notes
Ch 3 at the start of a row counts as a {dc}.

Panel

Ch 18.
Row 1: {dc} in 4th ch from hook (counts as 2 {dc}), {dc} in each ch across, turn. (16 {dc})
Row 2: {row}
"""


def _panel(row: str, terms: str = "US"):
    """The report on a second row over 16 stitches, five squares."""
    dc, name = ("dc", "double crochet") if terms == "US" else ("tr", "treble")
    words = row.replace("dc", dc)
    return check(_TEXT.format(terms=terms, dc=dc, name=name, row=words))


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize(
    "row",
    [
        "Ch 3, 1 bl, 3 sps, 1 bl: 3 sps, 2 bls. (10 dc)",
        "Ch 3, 1 bl, 3 sps, 1 bl. 3 sps, 2 bls. (10 dc)",
        "Ch 3, 1 bl, 3 sps, 1 bl (3 sps, 2 bls). (10 dc)",
        "Ch 3, 1 bl, 3 sps, 1 bl, turn. 3 sps, 2 bls. (10 dc)",
        "Ch 3, 1 bl, 3 sps, 1 bl. 3 sps, 2 bls. (10)",
    ],
)
def test_squares_and_stitches_are_both_counted(row: str, terms: str) -> None:
    """The squares are told again behind the row, and then its stitches: nothing more is worked."""
    report = _panel(row, terms)
    assert counts(report) == [16, 10] and corrections(report) == []


@pytest.mark.parametrize(
    "row",
    [
        "Ch 3, 1 bl, 3 sps, 1 bl: 3 sps, 2 bls. (11 dc)",
        "Ch 3, 1 bl, 3 sps, 1 bl: 2 sps, 2 bls. (10 dc)",
        "Ch 3, 1 bl, 3 sps, 1 bl (3 sps, 3 bls). (10 dc)",
        "Ch 3, 1 bl, 3 sps, 1 bl (3 sps, 2 bls). (12 dc)",
        "Ch 3, 1 bl, 3 sps, 1 bl. 3 sps, 2 bls. (9)",
    ],
)
def test_either_print_may_be_wrong(row: str) -> None:
    """Whichever of the two is no count of the row is found, once."""
    report = _panel(row)
    line = line_of(report.source.text, "Row 2")
    assert counts(report) == [16, 10] and corrections(report) == [("count-differs", line)]


@pytest.mark.parametrize("row", ["Ch 3, 1 bl, 3 sps. 1 bl. (10 dc)", "Ch 3, 2 sps. 3 bls. (12 dc)"])
def test_squares_behind_a_stop_are_work_where_the_row_wants_them(row: str) -> None:
    """What is left of the row below tells that the last squares are worked; the print behind them counts the stitches."""
    report = _panel(row)
    assert counts(report)[1] == int(row.split("(")[1].split()[0]) and corrections(report) == []


def test_work_behind_a_stop_and_a_wrong_print() -> None:
    """The last square is worked, and only the stitches are counted wrong."""
    report = _panel("Ch 3, 1 bl, 3 sps. 1 bl. (9 dc)")
    assert counts(report) == [16, 10]
    assert [item.unit for item in worked_rows(report)[1].cells[0].stated.items] == ["kind:dc"]
    assert corrections(report) == [("count-differs", line_of(report.source.text, "Row 2"))]


def test_stitches_behind_a_stop_are_no_print() -> None:
    """ "Sc in next 9. 3 sc." before a count is work as it always was."""
    report = check(
        "Cuff\n\nUS terms\n\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: Sc in next 9 sts. 3 sc in next 3 sts. (12)\n"
    )
    assert counts(report)[1] != 9


@pytest.mark.parametrize(("printed", "right"), [(5, True), (4, True), (6, False)])
def test_blocks_told_stitch_by_stitch_at_the_edge(printed: int, right: bool) -> None:
    """ "dc in next 3 dc, 4 bls" is five blocks of the fabric, four by their name."""
    report = _panel(f"Ch 3, dc in next 3 dc, 4 bls. {printed} bls. (16 dc)")
    assert counts(report) == [16, 16] and (corrections(report) == []) == right


_IN_ONE_LINE = """Blind

US terms

bl(s)  block(s)
ch  chain
dc  double crochet
rep  repeat
sk  skip
sp(s)  space(s)
st  stitch

Space: ch 2, sk 2 st, dc in next dc. Block: over a space, 2 dc in space, dc in next dc; over a block, dc in next 3 dc.
Ch 3 that opens a row is the first dc; ch 5 is the first dc plus ch 2.

Ch 20.
Row 1: Dc in 8th ch from hook, *ch 2, sk 2 ch, dc in next ch; rep from * to end: 5 sps. (6 dc)
Row 2: Ch 3, turn, 2 dc in sp, dc in next dc, 3 sps, 1 bl, ending in 3rd ch of turning ch. (10 dc)
Row 3: Ch 5, turn, sk 2 dc, dc in next dc, 4 sps. (6 dc)
"""


def test_squares_told_in_one_line() -> None:
    """ "Space: ch 2, …" is no piece's heading, and no line of the list is joined with the next."""
    report = check(_IN_ONE_LINE)
    assert counts(report) == [6, 10, 6] and corrections(report) == []
    unsaid = [finding for finding in report.findings if finding.rule == "turning-chain-unsaid"]
    assert all("ch 3" not in finding.message and "ch 5" not in finding.message for finding in unsaid)


def test_a_mesh_bag_is_a_piece() -> None:
    """A piece's name before its chain is still its heading."""
    report = check("Set\n\nUS terms\n\nStrap: ch 10.\nRow 1: Sc in 2nd ch from hook and in each ch across. (9)\n")
    assert counts(report) == [9] and report.ledger.rows[0].part.name == "Strap"


@pytest.mark.parametrize(
    ("note", "unsaid"),
    [
        ("Ch 3 that opens a round is your first dc. A ch 1 is never counted.", False),
        ("Ch 3 at the start of a round is a dc.", False),
        ("Ch 3 at the start of a round is one dc high.", True),
    ],
)
def test_a_chain_that_is_the_first_stitch(note: str, unsaid: bool) -> None:
    """ "Is your first dc" says that it counts; how high it is says nothing of that."""
    report = check(f"Disc\n\nUS terms\n\n{note}\n\nRnd 1: In a magic ring ch 3, 11 dc, join to top of ch 3. (12)\n")
    asked = "turning-chain-unsaid" in [finding.rule for finding in report.findings]
    assert counts(report) == [12] and asked == unsaid
