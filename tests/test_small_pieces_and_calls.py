"""Rows called in brackets, notes that alone tell a chain, tiles with a name, labels joined by a plus, spaces told apart."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, spaces

_CLOTH = """Cloth

{terms} terms.

Panel
Ch 13.
Row 1: 1 SC in 2nd ch from hook and in each ch to end, turn. (12 SC)
Row 2: Ch 1, 2 SC in first st, 1 SC in each st to end, turn. (13 SC)
Row 3: Ch 1, SC2tog, 1 SC in each st to end, turn. (12 SC)
Row 4: Ch 1, 1 SC in each st to end, turn. (12 SC)
{more}
"""


def _cloth(more: str, terms: str = "US"):
    """The report on a cloth of four rows, and rows that call for them."""
    return check(_CLOTH.format(terms=terms, more=more).replace("SC", "sc" if terms == "US" else "dc"))


@pytest.mark.parametrize("terms", ["US", "UK"])
def test_rows_that_a_bracket_holds_are_worked_in_turn(terms: str) -> None:
    """Each pass has every row of the bracket, and what stands behind it is worked once."""
    report = _cloth("Rows 5-11: [Rep Rows 2-3, then Row 2] twice, then Row 3 once more. (13 SC)", terms)
    assert counts(report)[4:] == [13, 12, 13, 14, 13, 14, 13] and corrections(report) == []
    wrong = _cloth("Rows 5-11: [Rep Rows 2-3, then Row 2] twice, then Row 3 once more. (12 SC)", terms)
    assert counts(wrong)[4:] == [13, 12, 13, 14, 13, 14, 13] and [rule for rule, _ in corrections(wrong)] == [
        "count-differs"
    ]


def test_rows_of_a_bracket_that_has_more_within_are_not_guessed() -> None:
    """What is to be twice within the bracket is not told by the words behind it."""
    assert counts(_cloth("Rows 5-12: [Rep Rows 2-3, then Row 2 twice] twice."))[4:] == [None] * 8


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Row 5: Ch 1, 1 SC in each of next 11 sts, 2 SC in last st, turn.\nRow 6: Ch 1, SC2tog, 1 SC in each st, turn.\nRow 7: Rep Row 5, working the last 2 SC in last SC.", 13),
        ("Row 5: Ch 1, 1 SC in each of next 11 sts, 2 SC in last st, turn.\nRow 6: Ch 1, SC2tog, 1 SC in each st, turn.\nRow 7: Rep Row 5, working the last 3 SC in last SC.", None),
        ("Row 5: Rep Row 4, working the last 2 SC in last SC.", None),
    ],
)  # fmt: skip
def test_where_the_last_stitches_of_a_called_row_go(words: str, made: int | None) -> None:
    """They are the very stitches that the row ends with; where it ends in others, they may be so many more."""
    assert counts(_cloth(words))[-1] == made


_FILET = """Filet Mat

UK terms. tr: treble, ch: chain, st: stitch
em (empty mesh) = 2ch, miss 2 sts, 1tr in next tr
fm (filled mesh) = 1tr in each of next 3 sts (over an em: 2tr in the 2ch-sp, 1tr in tr)
{note}

21ch.
Row 1. 1tr in 4th ch from hook and in each ch to end. (19tr)
Row 2. {chain}1fm, 4em, 1fm, turn.
Row 3. {chain}2fm, 2em, 2fm, turn.
"""


def test_a_chain_that_only_a_note_tells() -> None:
    """Every row has it at its head and counts it; a square's own short name says what lies below."""
    note = "Every row starts 3ch, which is the first tr. The last tr goes in top of the 3ch."
    report = check(_FILET.format(note=note, chain=""))
    assert counts(report) == [19, 11, 15] and spaces(report)[1:] == [{2: 4}, {2: 2}]
    assert "not-understood" not in [rule for rule, _ in all_findings(report)]


def test_a_chain_that_rows_print_is_worked_once() -> None:
    """Where the rows print the chain, the note adds nothing to them."""
    note = "Every row starts 3ch, which is the first tr. The last tr goes in top of the 3ch."
    assert counts(check(_FILET.format(note=note, chain="3ch, "))) == [19, 11, 15]


def test_a_chain_that_does_not_count_is_not_put_in() -> None:
    """A chain that is no stitch changes nothing, and no stitch is made of it."""
    text = "Mat\n\nUS terms. Every row begins with ch 1, which is not a st.\n\nCh 7.\n"
    text += "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (6)\nRow 2: 2 sc in first st, sc in next 5 sts, turn. (7)\n"
    assert counts(check(text)) == [6, 7]


_TILES = """Corner Rug

US terms. ch - chain, dc - double crochet, sl st - slip stitch, sp - space

Words for the pieces
Inc tile: ch 6, dc in 4th ch from hook and in each of next 2 ch.
Tile: sl st in next ch-3 sp, ch 3, 3 dc in same sp.

Growing
Row 1: inc tile. Turn. [1 tile]
Row 2: inc tile, tile. Turn. [2 tiles]
Row 3: inc tile, 2 tiles. Turn. [{last} tiles]
"""


def test_tiles_under_names_of_their_own() -> None:
    """A name with a colon is a stitch and no piece where the rows are made of it; its skipped chains are a space."""
    report = check(_TILES.format(last=3))
    assert counts(report) == [3, 6, 9] and spaces(report) == [{3: 1}, {3: 2}, {3: 3}]
    assert [part.name for part in report.pattern.parts] == ["Growing"] and corrections(report) == []
    assert [rule for rule, _ in corrections(check(_TILES.format(last=4)))] == ["count-differs"]


def test_a_piece_with_a_chain_behind_its_name_stays_one() -> None:
    """A strap is a piece, and so is a block whose name no row works."""
    text = "Bag\n\nUS terms\n\nBlock: ch 9, join with sl st to form ring.\nRnd 1: Ch 1, 12 sc in ring, join. (12)\n"
    assert [part.name for part in check(text).pattern.parts] == ["Block"]


@pytest.mark.parametrize("label", ["Rnds 2 + 3:", "Rnds 2 + 3 -", "Rounds 2 & 3:"])
def test_two_rounds_joined_by_a_plus(label: str) -> None:
    """They are two rounds, and the next is the fourth."""
    text = f"Ball\n\nUS terms\n\nRnd 1: 6 sc in magic ring. (6)\n{label} sc in each st around. (6)\nRnd 4: 2 sc in each st. (12)\n"
    report = check(text)
    assert counts(report) == [6, 6, 6, 12] and corrections(report) == []


def test_a_plus_before_work_is_no_second_round() -> None:
    """Whether "Rnd 2 + 6 sc" is two rounds is not guessed."""
    text = "Ball\n\nUS terms\n\nRnd 1: 6 sc in magic ring. (6)\nRnd 2 + 3 sc in each st around. (6)\n"
    assert counts(check(text))[1:] in ([None], [None, None])


def test_list_numbers_closed_at_both_ends_of_a_range() -> None:
    """ "3)-5)" is three rounds; "3) - 5 sc" is one, with five stitches."""
    text = "Ball\n\nUS terms\n\nHead\n1) 6sc in MR (6)\n2) 6inc (12)\n3)-5) 12sc (3 rounds)\n6) 6dec (6)\n"
    report = check(text)
    assert counts(report) == [6, 12, 12, 12, 12, 6] and corrections(report) == []


_SHAWL = """Shawl

US terms. Ch 4 counts as dc and ch 1.

Row 1: In magic ring work ch 4, 3 dc, ch 2, 3 dc, ch 1, dc, turn. {first}
Row 2: Ch 1, sc in first dc, *ch 3, sc in next {sp}; rep from * across, {words}, ch 3, sc in 3rd ch of ch-4. (5 sc)
"""


@pytest.mark.parametrize("words", ["center sp included", "including the center ch-2 sp"])
def test_a_space_that_is_among_all_of_them(words: str) -> None:
    """Where the run goes into spaces of any length, the middle one is one of them; else it may be one more."""
    first = "(8 dc, 2 ch-1 sps, center sp)"
    report = check(_SHAWL.format(first=first, sp="sp", words=words))
    assert counts(report) == [8, 5] and corrections(report) == []
    assert counts(check(_SHAWL.format(first=first, sp="ch-1 sp", words=words)))[1] is None
    wrong = check(_SHAWL.format(first="(9 dc, 2 ch-1 sps, and the center sp)", sp="sp", words=words))
    assert [rule for rule, _ in corrections(wrong)] == ["count-differs"]


def test_a_figure_behind_or_is_no_count() -> None:
    """ "for a round or two" tells no stitches, whatever sentence it stands in."""
    text = "Bowl\n\nUS terms\n\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st. This makes the edge curl for a round or two. {count}\n"
    assert corrections(check(text.format(count="(12)"))) == []
