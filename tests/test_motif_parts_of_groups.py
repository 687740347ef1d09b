"""Places told by the group that they are part of, and other wordings of motifs and textures (common practice, no source)."""

from __future__ import annotations

import pytest

from lint.inspection import inspect
from lint.rulebook import load_rulebook
from lint.source import SourceText

BOOK = load_rulebook()
PETALS = (
    "Rnd 1: Ch 1, 6 sc in magic ring, sl st in first sc. (6)\n"
    "Rnd 2: Ch 1, *sc in next sc, ch 3; rep from * around, sl st in first sc. (6 sc)\n"
    "Rnd 3: Ch 1, (sc, hdc, 3 dc, hdc, sc) in each ch-3 sp around, sl st in first sc. (42)\nRnd 4: "
)
SQUARE = "Rnd 1: Ch 3 (counts as dc), 2 dc in magic ring, ch 2, [3 dc in ring, ch 2] 3 times, sl st in top of ch 3. (12 dc)\nRnd 2: "


def made(rows: str, head: str = "") -> int | None:
    """The stitches of the last row, None where it is not recomputed."""
    text = f"Piece\n\nUS terms\n\n{head}PIECE\n\n{rows}\n"
    report = inspect(SourceText(text, "piece"), BOOK, workings=False)
    cell = [row for row in report.ledger.rows if row.row.label is not None][-1].cells[-1]
    return cell.made.stitches if cell.made is not None else None


@pytest.mark.parametrize(
    ("words", "stitches"),
    [
        ("*sc in first dc of next petal, ch 3, sc in last dc of same petal, ch 3; rep from * around, join.", 12),
        ("*sc in last dc of next petal, ch 5; rep from * around, join.", 6),
        ("*sc in first hdc of next petal, ch 5; rep from * around, join.", 6),
        ("*sc in each dc of next petal, ch 5; rep from * around, join.", 18),
        ("*sc in 1st and 3rd dc of next petal, ch 5; rep from * around, join.", 12),
    ],
)
def test_stitch_of_a_group_is_looked_for_in_that_group(words: str, stitches: int) -> None:
    """The first, last, nth or each stitch of a petal is one of its kind in the next petal, not the next one of the round."""
    assert made(PETALS + "Ch 1, " + words) == stitches


def test_second_dc_of_a_petal_is_its_second_dc() -> None:
    """Slip stitches over three come to the 2nd dc, and so the last petal holds no other."""
    words = "Sl st in next hdc and 2 dc, ch 1, sc in same dc, *ch 5, sc in 2nd dc of next petal; rep from * around, ch 5, join."
    assert made(PETALS + words) == 6


def test_slip_stitches_up_to_a_place_go_into_it_where_work_goes_into_the_same() -> None:
    """ "Sl st in each st to center dc, ch 1, sc in same dc": the round begins in that dc, and comes to no ninth petal."""
    words = "Sl st in each st to center dc of first petal, ch 1, sc in same dc, *ch 5, sc in center dc of next petal; rep from * around, ch 5, join."
    assert made(PETALS + words) == 6


@pytest.mark.parametrize(
    ("definition", "stitches"),
    [
        ("M1: insert hook under the horizontal strand before the next bar, yo and pull up a loop", 9),
        ("M1: pull up a loop in the gap between two sts, then insert hook in next st and pull up a loop", None),
    ],
)
def test_loop_between_two_bars_takes_no_stitch(definition: str, stitches: int | None) -> None:
    """A loop drawn up in a gap is one more; where the hook goes into more, how many it takes is not told."""
    head = f"Abbreviations\nch: chain\nTss: Tunisian simple stitch\nyo: yarn over\nst(s): stitch(es)\n{definition}\n\n"
    rows = (
        "Ch 8.\nRow 1: Pull up a loop in 2nd ch from hook and in each ch across; return pass. (8)\n"
        "Row 2: M1, Tss to end; return pass."
    )
    assert made(rows, head) == stitches


def test_chain_that_stands_for_a_treble_and_a_chain_holds_a_space() -> None:
    """ "Ch 4 counts as a dc and a chain": the space beside it is worked into."""
    rows = (
        "Ch 4 at the start of a row counts as a dc and a chain.\n\nRow 1: Fsc 3, turn. (3)\n"
        "Row 2: Ch 4, skip next sc, dc in last sc, turn. (2 dc, 1 ch-1 sp)\nRow 3: Ch 1, sc in first dc, 3 sc in ch-1 sp, sc in top of tch, turn."
    )
    assert made(rows) == 5


@pytest.mark.parametrize(("count", "stitches"), [(" (7 sc per side)", 28), ("", None)])
def test_first_stitches_come_round_where_a_count_of_sides_says_so(count: str, stitches: int | None) -> None:
    """A round that begins in the space ahead works what it passed at its end, or not: without a count nothing tells."""
    words = "Ch 1, *(2 sc, ch 1, 2 sc) in next ch-2 sp, sc in each dc to next corner; rep from * 3 more times, sl st in first sc."
    assert made(SQUARE + words + count) == stitches


@pytest.mark.parametrize("place", ["the st you skipped", "the st you just skipped", "the stitch that was missed"])
def test_stitch_you_skipped_is_the_one_passed_over(place: str) -> None:
    """A crossed pair told with "you"."""
    rows = f"Row 1: Fsc 8, turn. (8)\nRow 2: Ch 3 (counts as dc), *sk 1, dc in next st, dc in {place}; rep from * to last st, dc in last st, turn."
    assert made(rows) == 8


@pytest.mark.parametrize("way", ["Carry on up the other side of the chain", "Moving to the other side of the chain"])
def test_work_goes_on_along_the_other_side_of_the_chain(way: str) -> None:
    """An oval whose second half is told with words for going on."""
    rows = f"Ch 6.\nRnd 1: Sc in 2nd ch from hook, sc in next 3 ch, 3 sc in last ch. {way}: sc in next 3 ch, 2 sc in last ch, sl st in first sc."
    assert made(rows) == 12


def test_counts_by_sentences_behind_the_yarn_cut() -> None:
    """ "Fasten off. 4 ch-3 sps. 3 ch-5 corner sps.": both sentences are the count, and the second one is wrong."""
    rows = (
        "Rnd 1: Ch 1, 8 sc in magic ring, sl st in first sc. (8)\nRnd 2: Ch 1. *1 sc in next sc. Ch 5. 1 sc in next sc. Ch 3. "
        "Rep from * around. Join with sl st to first sc. Fasten off. 4 ch-3 sps. 3 ch-5 corner sps."
    )
    report = inspect(SourceText(f"Piece\n\nUS terms\n\nPIECE\n\n{rows}\n", "piece"), BOOK, workings=False)
    assert "count-differs" in {finding.rule for finding in report.findings}
