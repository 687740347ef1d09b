"""What garments in several sizes say beside their lists; patterns and figures are invented, common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, worked_rows


def table(text: str) -> list[list[int | None]]:
    """What every labelled row makes in each size; None where it is not recomputed or not worked."""
    return [
        [cell.made.stitches if cell.made is not None else None for cell in row.cells]
        for row in worked_rows(check(text))
    ]


BAND = (
    "Test mitt\n\nUS terms\n\nHAND\nRnd 1: 24 hdc in magic ring, join. (24 hdc)\n\nCUFF\nCh 9.\n"
    "Row 1: Hdc in 2nd ch from hook and in each of next 7 ch, sl st in next 2 hdc of the hand, turn. (8 hdc)\n"
)


@pytest.mark.parametrize("skipped", ["Skip the 2 sl sts", "Skip first 2 sl sts"])
def test_slip_stitches_that_hang_a_band_on_a_piece(skipped: str) -> None:
    """They are no places of the band, so skipping them skips none of its stitches; no turning chain is asked for."""
    text = BAND + f"Row 2: {skipped}, hdc in each of the 8 hdc, turn. (8 hdc)\n"
    assert table(text)[2] == [8]
    assert all_findings(check(text), ("correction", "query")) == []


def test_a_stitch_skipped_on_such_a_band_is_missed() -> None:
    """A skip of other stitches is one all the same."""
    assert table(BAND + "Row 2: Skip the first hdc, hdc in each rem hdc, turn.\n")[2] == [7]


def test_figures_glued_to_stitches_in_a_list_of_abbreviations() -> None:
    """ "tr2tog work 2tr together" explains it, without a sign between form and meaning."""
    text = (
        "Test cowl\n\nABBREVIATIONS (UK)\nch chain, dc double crochet, ss slip stitch, st stitch, tr treble, "
        "tr2tog work 2tr together\n\nCOWL\nMake 8 ch, ss in first ch.\nRound 1: 3 ch, 11 tr in ring, ss to top of 3 ch.\n"
        "Round 2: 3 ch, tr2tog, 1 tr in each st, ss to top of 3 ch.\n"
    )
    assert not [finding for finding in check(text).findings if "tr2tog" in finding.message]


@pytest.mark.parametrize(
    "rows",
    [
        "Rows 2-6 (8, 9,\n10): Ch 1, sc in each st, turn.\nRow 7 (9,\n10, 11): Ch 1, sc2tog, sc in each st.\n",
        "Rows 2-6 (8, 9,\n10)\nCh 1, sc in each st, turn.\nRow 7 (9,\n10, 11)\nCh 1, sc2tog, sc in each st.\n",
        "Rows 2-6 (8) 9\n(10): Ch 1, sc in each st, turn.\nRow 7 (9) 10\n(11): Ch 1, sc2tog, sc in each st.\n",
        "Rows 2-6/8/\n9/10: Ch 1, sc in each st, turn.\nRow 7/9/10/\n11: Ch 1, sc2tog, sc in each st.\n",
    ],
)
def test_a_label_cut_by_the_end_of_a_line(rows: str) -> None:
    """The figures in the next line belong to the label, and nothing is asked of its number."""
    text = f"Test vest\n\nUS terms\n\nSizes: S (M, L, XL)\n\nBACK\nRow 1: Fsc 12 (14, 16, 18), turn.\n{rows}"
    assert table(text)[-1] == [11, 13, 15, 17]
    assert [row[0] for row in table(text)].count(12) == 6
    assert not {"row-number-out-of-order", "not-understood"} & {rule for rule, _ in all_findings(check(text))}


@pytest.mark.parametrize(
    ("words", "stitches"),
    [
        ("sc2tog twice (twice, 3 times)", [14, 18, 21]),
        ("sc2tog once (twice, 3 times)", [15, 18, 21]),
        ("(sc2tog) once (once, twice)", [15, 19, 22]),
        ("*sc2tog; rep from * once (twice, 3 times) more", [14, 17, 20]),
        ("*sc2tog; rep from * once (twice, 3 times)", [14, 17, 20]),
        ("[sc2tog] 1 time (2 times, 3 times)", [15, 18, 21]),
    ],
)
def test_times_in_words_over_the_sizes(words: str, stitches: list[int]) -> None:
    """ "once (twice, 3 times)" is a list of times; its bracket is never passed over as a remark."""
    text = f"Test hat\n\nUS terms\n\nSizes: S (M, L)\n\nBRIM\nRow 1: Fsc 16 (20, 24), turn.\nRow 2: Ch 1, {words}, sc in each st to end.\n"
    assert table(text)[1] == stitches


def test_a_plural_in_brackets_names_no_size() -> None:
    """The "(s)" of "st(s)" is not size S."""
    text = "Test hat\n\nUS terms\n\nSizes: S (M, L)\n\nBRIM\nRow 1: Fsc 16 (20, 24), turn.\nRow 2: Ch 1, skip 1 (1, 2) st(s), sc in each st to end.\n"
    assert table(text)[1] == [15, 19, 22]


@pytest.mark.parametrize(
    "shaped",
    [
        "Cont to inc 1 st at each end of every 3rd row 4 (5, 6) times. 20 (26, 32) sts.",
        "Shape sleeve by increasing 1 st at each end of every 3rd row 4 (5, 6) times.",
        "Inc 1 st at each end of 3rd and every foll 4th row until there are 20 (26, 32) sts.",
        "Work in hdc and inc 1 st at each end every 3rd row 4 (5, 6) times: 20 (26, 32) sts.",
        "Gradually dec or inc 1 st on every 3rd row until the sleeve fits.",
    ],
)
def test_a_line_that_shapes_rows_is_not_taken_for_talk(shaped: str) -> None:
    """The rows after it stand on what it makes; where that is not known, nothing is said about them."""
    text = (
        f"Test vest\n\nUS terms\n\nSizes: S (M, L)\n\nSLEEVE\nRow 1: Fhdc 12 (16, 20), turn.\n{shaped}\n"
        "Next row: Ch 1, hdc in each st, turn. 20 (26, 32) hdc.\n"
    )
    assert table(text)[-1] in ([20, 26, 32], [None] * 3)
    assert (table(text)[-1][0] is None) == shaped.startswith(("Work in hdc and", "Gradually"))
    assert all_findings(check(text), ("correction",)) == []


_SLANTED = "Test sock\nUS terms\nSizes: {}\n\nSOCK\nCh {}, join to form a ring.\nRnd 1: Ch 1, sc in each ch around. {} sc.\n{}\n"


@pytest.mark.parametrize(
    ("sizes", "chain", "count"),
    [
        ("35/37 *(38/40-41/43)*", "20 *(24-28)*", "20 *(24-28)*"),
        ("35/37 (38/40-41/43)", "20 (24-28)", "20 (24-28)"),
        ("S **(M, L)**", "20 **(24, 28)**", "20 _(24, 28)_"),
    ],
)
def test_lists_in_slanted_letters(sizes: str, chain: str, count: str) -> None:
    """The signs around the brackets only slant them; of two ways to cut the sizes' names the one counts that the lists have."""
    report = check(
        _SLANTED.format(sizes, chain, count, "Rnd 2: *Sc in next 3 sts, 2 sc in next st; rep from * around.")
    )
    assert len(report.pattern.sizes) == 3
    assert [[cell.made.stitches for cell in row.cells] for row in report.ledger.rows][1:] == [
        [20, 24, 28],
        [25, 30, 35],
    ]
    assert "size-list-length" not in {finding.rule for finding in report.findings}


def test_a_repeat_behind_a_figure_is_not_slanted_letters() -> None:
    """A star before a bracket of work begins a repeat, in a pattern of one size and of several."""
    rows = "Rnd 2: Sc in next 4 *(sc, ch 1, sc) in next st, sc in next st* 8 times. (28)"
    report = check(_SLANTED.format("S (M, L)", "20 (20, 20)", "20 (20, 20)", rows))
    assert [cell.made.stitches for cell in report.ledger.rows[-1].cells] == [28, 28, 28]
