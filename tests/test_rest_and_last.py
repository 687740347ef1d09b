"""What goes into the last stitch, into the rest of a row, over a turning chain, or over so many; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

_FLAT = "Tab\n\nUS terms\n\nTAB\nRow 1: Fsc 16, turn. (16)\nRow 2: {}\n"
_ROUND = "Knob\n\nUS terms\n\nKNOB\nRnd 1: 16 sc in magic ring. (16)\nRnd 2: {}\n"
_SOLE = "Sole\n\nUS terms\n\nSOLE\nCh 7.\nRnd 1: Sc in 2nd ch from hook, sc in next 4 ch, 3 sc in last ch; on the other side of the chain: {}\n"
_MESH = (
    "Net\n\nUS terms\n\nNET\nRow 1: Fdc 11, turn. (11)\nRow 2: Ch 4 (counts as dc and ch 1), skip first 2 dc, *dc in next dc, ch 1, "
    "skip next dc; rep from * to last dc, dc in last dc, turn. (6 dc, 5 ch-1 sps)\nRow 3: Ch 3 (counts as dc), {}\n"
)
_SHELLS = (
    "Edge\n\nUS terms\n\nEDGE\nRow 1: Fsc 13, turn. (13)\nRow 2: Ch 1, sc in first sc, *skip 2 sc, 5 dc in next sc, skip 2 sc, sc in "
    "next sc; rep from * across, turn. (3 sc, 10 dc)\nRow 3: {}\n"
)


@pytest.mark.parametrize(
    ("pattern", "words", "made"),
    [
        (_SOLE, "4 sc, inc in last st.", 14),
        (_SOLE, "sc in next 4 ch, increase in the last ch, join.", 14),
        (_FLAT, "Ch 1, inc in first st, sc in next 14 sts, inc in last st, turn.", 18),
        (_FLAT, "Ch 1, sc across, inc in last st, turn.", 17),
        (_FLAT, "Ch 1, 2 sc in first st, sc in rest, 2 sc in last st, turn.", 18),
        (_FLAT, "Ch 1, 2 sc in first st, 1 sc in all others, turn.", 17),
    ],
)
def test_an_increase_in_the_last_stitch(pattern: str, words: str, made: int) -> None:
    """It is a stitch of the row like any other, and the run before it leaves that stitch to it."""
    report = check(pattern.format(words))
    assert counts(report)[-1] == made
    assert not {"places-left-over", "places-run-out"} & {rule for rule, _ in all_findings(report)}


def test_an_increase_in_the_last_stitch_works_nothing_before_it() -> None:
    """The stitches that no clause goes into are left over, and not worked because the last one is increased in."""
    report = check(_FLAT.format("Ch 1, sc in next 9 sts, inc in last st, turn."))
    assert "places-left-over" in [rule for rule, _ in all_findings(report)]


@pytest.mark.parametrize(
    ("pattern", "words", "made"),
    [
        (_ROUND, "8 inc. 8 sc.", 24),
        (_ROUND, "4 dec; 8 sc; Join.", 12),
        (_ROUND, "8 sc; 8 sc", 16),
        (_ROUND, "8 inc. 8 sc. 24 sc.", 24),
        (_ROUND, "sc in each st around. 16 sc.", 16),
        (_FLAT, "Ch 1, sc in next 8 sts, turn. 8 sc.", 8),
    ],
)
def test_a_figure_that_comes_out_only_as_work(pattern: str, words: str, made: int) -> None:
    """Behind a full stop "8 sc" may be the count or work: where only work uses up the row below, it is work."""
    assert counts(check(pattern.format(words)))[-1] == made


def test_a_printed_count_that_is_wrong_stays_one() -> None:
    """It differs from what the row makes, and as work it does not come out either."""
    assert "count-differs" in [rule for rule, _ in all_findings(check(_ROUND.format("sc in each st around. 15 sc.")))]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("dc in each dc and ch-1 sp, 2 dc in turning ch. (11)", 11),
        ("dc in each dc and ch-1 sp, 2 dc in turning ch. (12)", 12),
        ("dc in each dc and ch-1 sp, 2 dc in turning ch.", None),
        ("dc in each dc and ch-1 sp, dc in 3rd ch of turning ch.", 11),
        ("dc in each dc across, 2 dc in turning ch.", 7),
    ],
)
def test_whether_two_over_the_turning_chain_take_its_space(words: str, made: int | None) -> None:
    """With the run before going into every space, only the printed count tells."""
    assert counts(check(_MESH.format(words)))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        (
            "Ch 3, *sc in 3rd dc of next shell, ch 2, dc in next sc, ch 2; rep from * across, omitting last ch 2, turn.",
            5,
        ),
        (
            "Ch 3, skip 2 dc, sc in next dc, ch 2, dc in next sc, ch 2, skip 2 dc, sc in next dc, ch 2, skip 2 dc, dc in last sc, turn.",
            5,
        ),
        ("Ch 1, sc in first sc, *ch 2, sc in 3rd dc of next shell, ch 2, sc in next sc; rep from * across, turn.", 5),
    ],
)
def test_a_tall_chain_before_a_stitch_far_in(words: str, made: int) -> None:
    """Nothing else stands on the first stitch: a chain as tall as the row's last stitch is its like."""
    assert counts(check(_SHELLS.format(words)))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, sc in first 4 sts, sc in next 8 sts, increasing 2 sts evenly, sc in last 4 sts, turn.", 18),
        ("Ch 1, sc in first 4 sts, dec 2 sts evenly over next 8 sts, sc in last 4 sts, turn.", 14),
        ("Ch 1, sc in next 4 sts, sc in next 8 sts, decreasing 2 evenly across these sts, sc in last 4 sts, turn.", 14),
        ("Ch 1, *sc in next 8 sts, increasing 2 evenly; rep from * across, turn.", 20),
        ("Ch 1, sc in first 4 sts, increasing 3 sts evenly across rem sts, turn.", 19),
        ("Ch 1, sc in each st across, increasing 4 sts evenly, turn.", 20),
        ("Ch 1, sc in next 8 sts, decreasing 2 evenly across those, turn.", None),
    ],
)
def test_shaping_spread_over_so_many(words: str, made: int | None) -> None:
    """What is said of a run of so many stitches shapes these, and no others."""
    assert counts(check(_FLAT.format(words)))[-1] == made


def test_shaping_of_so_many_leaves_the_others() -> None:
    """The rest of the round is not worked by an increase that is told of its first stitches."""
    report = check(_ROUND.format("Sc in next 8 sts, increasing 4 evenly."))
    assert "places-left-over" in [rule for rule, _ in all_findings(report)]


def test_shaping_spread_over_rows_is_not_guessed() -> None:
    """Whether "evenly over the next 2 rows" is in each row or in all is not said."""
    assert counts(check(_FLAT.format("Dec 4 sts evenly over the next 2 rows.")))[-1] is None


def test_what_more_is_to_be_worked_behind_fastening_off() -> None:
    """The second half is rows of this piece: told as not understood, while the row before keeps its count."""
    report = check(
        _FLAT.format(
            "Ch 1, sc in first 8 sts, turn, leave rem sts unworked. (8) Fasten off. Work the second half in the same way."
        )
    )
    assert counts(report)[1] == 8
    assert "not-understood" in [rule for rule, _ in all_findings(report)]


_TWENTY = "Cloth\n\nUS terms.\n\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc in next 17 sts and leave next 3 sts unworked", 17),
        ("sc in next 17 sts, leaving the next 3 sts unworked", 17),
        ("sc in next st and the next 16 sts, leave last 3 sts unworked", 17),
        ("sc in next st and next 3 sts unworked", None),
        ("sc in next st, and the next 3 sts are left unworked", None),
    ],
)
def test_next_ones_left_at_the_end(words: str, made: int | None) -> None:
    """The next stitches may be the last, and left; those that are left are never worked."""
    report = check(f"{_TWENTY}Row 2: Ch 1, turn, {words}.\n")
    assert counts(report)[1] == made
    assert not [one for one in all_findings(report) if one[0] == "places-left-over"]


def test_too_few_left() -> None:
    """Where more stand there than those that are left, the rest is asked about."""
    report = check(f"{_TWENTY}Row 2: Ch 1, turn, sc in next 15 sts, leaving the next 3 sts unworked. (15)\n")
    assert ("places-left-over", 7) in all_findings(report)
