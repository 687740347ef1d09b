"""Cloths of a few rows: moss, mosaic, ripples, half circles, spikes; and lines around them."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes


def test_sorts_by_their_bare_names_are_worked_side_by_side() -> None:
    """ "Sc in dc, dc in sc across" goes into every stitch of each sort, not into one and then the others."""
    text = "US terms\nCh 20\nR1: sc in 2nd ch from hook, *dc in next, sc in next; rep from * across (19)\n"
    report = check(text + "R2: ch 1, turn, dc in sc, sc in dc across\nR3: ch 1, turn; sc in dc, dc in sc to end (19)\n")
    assert counts(report) == [19, 19, 19]


def test_last_stitches_may_take_spaces_in() -> None:
    """In mosaic crochet "to last 3 sts" counts the chains that stand for a stitch; a wrong count is still found."""
    text = """US terms
Ch 22.
Row 1: Sc in 2nd ch from hook and in each ch across. (21 sc)
Row 2: Ch 1, turn, sc in each st across. (21 sc)
Row 3: Ch 1, turn, sc in first 2 sts, *ch 2, sk 1, sc in next 3 sts; rep from * to last 3 sts, ch 2, sk 1, sc in last 2 sts. (16 sc, 5 ch-2 sps)
Row 4: Ch 1, turn, sc in first 2 sts, *ch 2, sk ch-2 sp, sc in next 3 sts; rep from * to last 3 sts, ch 2, sk ch-2 sp, sc in last 2 sts. (16 sc, 5 ch-2 sps)
Row 5: Ch 1, turn, sc in first 2 sts, *dc in skipped st 3 rows below, sc in next 3 sts; rep from * to last 3 sts, dc in skipped st 3 rows below, sc in last 2 sts. ({} sts)
"""
    report = check(text.format(21))
    assert counts(report) == [21, 21, 16, 16, 21]
    assert corrections(report) == []
    assert "differs" in outcomes(check(text.format(22)))


def test_the_last_pass_gives_way_to_what_is_worked_in_the_last_chain() -> None:
    """ "Rep from * to end, working 2 sc in last ch": in place of the 3 that the passes before it end in."""
    text = "US terms\nCh {}.\nRow 1: 2 sc in 2nd ch from hook, *sc in next 4 ch, sk 2 ch, sc in next 4 ch, 3 sc in next ch; "
    text += "rep from * to end, working 2 sc in last ch. ({} sc)\n"
    assert outcomes(check(text.format(35, 34)))[-1] == "agrees"
    assert outcomes(check(text.format(35, 35)))[-1] == "differs"


def test_a_half_circle_has_no_side_across_its_ends() -> None:
    """Rows that begin in a ring and are turned at the next one's start are flat: their ends do not meet."""
    text = """US terms
Row 1: Ch 4, join to form ring. Ch 6 (counts as dc, ch 3), (3 dc, ch 3, 3 dc, ch 3, dc) in ring. (8 dc, 3 ch-3 sps)
Row 2: Ch 6 (counts as dc, ch 3), turn, 3 dc in first ch-3 sp, ch 1, (3 dc, ch 3, 3 dc) in next ch-3 sp, ch 1, (3 dc, ch 3, dc) in last ch-3 sp. (14 dc, 3 ch-3 sps, 2 ch-1 sps)
"""
    assert corrections(check(text)) == []


@pytest.mark.parametrize("words", ["spike st in next st 2 rows below", "spike sc 2 rows down", "sc 2 rows below"])
def test_long_stitches_with_no_place_but_the_rows_below(words: str) -> None:
    """A stitch "2 rows down" stands over the next one and passes it."""
    text = "US terms\nCh 16.\nRow 1: Sc in 2nd ch from hook and each ch across. (15 sc)\nRow 2: Ch 1, turn, sc in each sc. (15)\n"
    report = check(f"{text}Row 3: Ch 1, turn, *sc in next 2 sc, {words}; rep from * to end. (15 sts)\n")
    assert outcomes(report) == ["agrees"] * 3


@pytest.mark.parametrize(
    "line",
    ["Using 4mm hook make 31ch.", "With 4.00 mm hook, ch 31.", "With larger hook ch 31.", "Using hook H, 31 ch."],
)
def test_a_chain_behind_its_hook_begins_the_piece(line: str) -> None:
    """A hook may be named before the chain, with or without a comma."""
    report = check(f"US terms\nCUFF\n{line}\nRow 1: Sc into 2nd ch from hook, sc into each ch to end. 30 sts.\n")
    assert counts(report) == [30]


def test_a_count_behind_a_comma_before_the_join() -> None:
    """ "Hdc in each st around, 16 hdc, join" prints the count; it works no more stitches."""
    text = "US terms\nRnd 1: 8 sc in magic ring. (8)\nRnd 2: 2 sc in each st around, {} sc, join with sl st.\n"
    assert outcomes(check(text.format(16)))[-1] == "agrees"
    assert outcomes(check(text.format(17)))[-1] == "differs"


@pytest.mark.parametrize("words", ["Join side seam leaving a 4 cm gap for thumb.", "Join shoulder and sleeve seams."])
def test_seams_are_no_row(words: str) -> None:
    """What is joined as a seam works no stitches, and asks nothing."""
    text = "US terms\nCUFF\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10)\nRow 2: Ch 1, turn, sc tblo in each st. (10)\n"
    assert all_findings(check(text + words + "\n"), ("correction", "query")) == all_findings(
        check(text), ("correction", "query")
    )


_LATTICE = """US terms
Chain 42.
1st row: Sc in 2nd ch from hook, *ch 5, skip 3 ch, sc in next ch; repeat from * across. (10 loops)
2nd row: Ch 5, turn, *sc in next loop, ch 5; repeat from * across, ending with sc in last loop, ch 2, dc in last sc.
3rd row: Ch 1, turn, sc in first dc, *ch 5, sc in next loop; repeat from * across, ending with sc in last loop. ({} loops)
"""


def test_a_lattice_keeps_its_loops() -> None:
    """The chain at the edge is the like of what the row ends in; the half loop at an edge is none of the next ones."""
    report = check(_LATTICE.format(10))
    assert [dict(row.cells[0].made.spaces) for row in report.ledger.rows[1:]] == [{5: 10}, {2: 2, 5: 9}, {5: 10}]
    assert all_findings(report, ("correction",)) == []
    assert outcomes(check(_LATTICE.format(12)))[-1] == "differs"


def test_a_puff_stitch_may_be_called_a_puff() -> None:
    """A stitch defined as "Puff st" is meant by "puff" and "puffs" as well."""
    text = "US terms\nPuff st: (yo, insert hook, pull up a loop) 3 times in same st, yo, draw through all 7 loops.\nFsc 24.\n"
    text += "Row 1: Ch 2 (does not count), turn, hdc in first st, *puff st in next st, sk 1 st; rep from * to last st, hdc in "
    text += "last st. (11 puffs, 2 hdc)\nRow 2: Ch 1, turn, sc in first st, 2 sc in each puff, sc in last st. (24 sc)\n"
    report = check(text)
    assert all_findings(report, ("correction", "query")) == []
    assert counts(report) == [13, 24]


def test_the_patterns_own_meaning_of_a_short_form_goes_first() -> None:
    """ "Xdc" may be an extended dc elsewhere; here it is what its line says."""
    text = "US terms\nCrossed dc (Xdc): skip next st, dc in next st, dc in skipped st.\nCh 12.\n"
    text += "Row 1: Dc in 4th ch from hook (skipped 3 ch count as dc) and each ch across. 10 dc.\n"
    text += "Row 2: Ch 3 (counts as dc), turn, *Xdc; rep from * across to last st, dc in last st. 10 dc; {} Xdc.\n"
    assert outcomes(check(text.format(4))) == ["agrees", "agrees"]
    assert outcomes(check(text.format(5)))[-1] == "differs"


def test_a_border_in_a_line_of_its_own_leaves_the_row_above_alone() -> None:
    """Rows without full stops do not run on into "Border: sc around"."""
    text = "US terms\nCh 11.\nR1 -- sc in 2nd ch & in ea ch across = 10\nR2-R4 -- ch 1, turn, sc BLO ea st = 10\n"
    report = check(text + "Border: sc around, 3 sc in ea corner, sl st to beg.\n")
    assert counts(report)[:4] == [10, 10, 10, 10]
    assert [part.name for part in report.pattern.parts][-1] == "Border"


def test_picots_that_no_line_defines_are_the_only_small_loops() -> None:
    """ "10 picots" are the round's loops of few chains, where it has no others."""
    text = "UK terms\nCh 21.\nRow 1: 1 dc in 2nd ch from hook, 1 dc in each ch to end. [20 dc]\n"
    text += "Row 2: 1 ch, *(1 dc, 3 ch, 1 dc) in next dc, 1 dc in each of next 3 dc; rep from * to end. [25 dc, {} picots]\n"
    assert outcomes(check(text.format(5)))[-1] == "agrees"
    assert outcomes(check(text.format(6)))[-1] == "differs"


_CLOTH = "Cloth\n\nUS terms\n\nCh 8.\nRow 1: Sc in 2nd ch from hook and in each ch across. (7)\n" + "".join(
    f"Row {number}: Ch 1, turn, sc in each sc. (7)\n" for number in (2, 3)
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        (
            "Insert hook under first st of Row 1, yo, pull up a loop. Insert hook in next sc, yo, pull up a loop, yo, draw through all loops on hook. Sc",
            7,
        ),
        (
            "Insert hook in marked stitch of Row 1, yo, pull up a loop, then insert hook in next sc, yo, pull up a loop, yo and draw through all 3 loops, sc",
            7,
        ),
        (
            "Insert hook in next sc, yo, pull up a loop, insert hook in next sc, yo, pull up a loop, yo, draw through all loops on hook, sc",
            6,
        ),
    ],
)
def test_a_decrease_by_hand_over_an_earlier_row(words: str, made: int) -> None:
    """A leg in an earlier row takes no place of the row below; loops drawn through at once are not kept on the hook."""
    report = check(
        f"{_CLOTH}Row 4: Ch 1, turn, sc in first {3 if made == 7 else 2} sc. {words} in last 3 sc. ({made})\n"
    )
    assert counts(report)[-1] == made
    assert corrections(report) == []
    assert "tss" not in report.ledger.rows[-1].cells[0].made.by_kind
