"""Clauses parted by other signs than commas, or by none, and words that must not swallow the clause behind them.

Truths worked out by hand; the forms are common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, mades, outcomes

HEAD = """US terms.

ABBREVIATIONS
ch chain, sc single crochet, dc double crochet, sl st slip stitch, st(s) stitch(es), sk skip, sp space, rep repeat, rnd round

DISC
Ch 4, join with sl st in first ch to form a ring.
Rnd 1: Ch 1, 12 sc in ring, join with sl st in first sc. (12 sc)
Rnd 2: """


def last(words: str) -> tuple[int | None, list[tuple[str, int]]]:
    """The stitches of round 2, and its corrections."""
    report = check(f"{HEAD}{words}\n")
    return counts(report)[-1], corrections(report)


@pytest.mark.parametrize("sign", [" + ", " / ", " - ", " – ", ", "])
def test_signs_before_a_clause_that_tells_its_place(sign):
    """A plus, a stroke or a dash by itself parts clauses as a comma does."""
    words = sign.join(["Ch 1", "sc in next 3 sts", "ch 3", "sc in same st", "sk next st", "sc in next 8 sts"])
    assert last(f"{words}, join with sl st in first sc. (12 sc, 1 ch-3 sp)") == (12, [])


@pytest.mark.parametrize("sign", [" + ", " - ", " "])
def test_same_stitch_as_the_join_does_not_take_the_next_clause_along(sign):
    """ "same st as join" ends where the next clause begins, whatever stands between."""
    words = f"Ch 3 (counts as dc), dc in same st as join{sign}2 dc in each st around; join with sl st in top of ch 3. (24 dc)"
    assert last(words) == (24, [])


@pytest.mark.parametrize("sign", [" + ", " - ", " ", ", "])
def test_name_of_an_edge_does_not_take_the_next_clause_along(sign):
    """Stitches along an edge end where the next clause begins."""
    words = f"Ch 1, 9 sc evenly down the left edge{sign}3 sc in next st, join with sl st in first sc."
    assert last(words)[0] == 12


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, 2 sc in each st around - 24 sc", 24),
        ("Ch 1, 2 sc in each st around – 24 sc, join.", 24),
    ],
)
def test_dash_before_a_figure_with_no_place_sets_a_count_apart(words, made):
    """Behind a dash a figure without a place is the count where the row has run to its end."""
    assert last(words)[0] == made


@pytest.mark.parametrize("count", ["24 dc. 12 ch-1 sps.", "24 dc; 12 ch-1 sps."])
def test_each_sort_of_a_count_in_a_sentence_of_its_own(count):
    """Behind work that has gone all the way, each figure counts: none of them is work."""
    words = f"Ch 3. *2 dc in next sc. Ch 1. Rep from * across, working the last ch 1 before the join. {count}"
    report = check(f"{HEAD}{words}\n")
    assert counts(report)[-1] in (24, None)
    ended = check(f"{HEAD}Ch 1, *2 dc in next sc, ch 1; rep from * around. {count}\n")
    assert counts(ended)[-1] == 24
    assert dict(mades(ended)[-1].spaces) == {1: 12}


def test_count_of_two_sorts_behind_a_call():
    """ "Rep Rnd 2. 24 dc; 12 ch-1 sps." works nothing more."""
    report = check(
        f"{HEAD}Ch 1, *2 dc in next sc, ch 1; rep from * around. (24 dc, 12 ch-1 sps)\n"
        "Rnd 3: Ch 1, *dc in next 2 dc, ch 1; rep from * around. (24 dc, 12 ch-1 sps)\n"
        "Rnd 4: Rep Rnd 3. 24 dc; 12 ch-1 sps. Fasten off.\n"
    )
    assert counts(report) == [12, 24, 24, 24]
    assert corrections(report) == []


@pytest.mark.parametrize(
    "ending",
    [
        ", ending last rep at **",
        " evenly, ending last rep at **",
        " (ending at ** on last rep)",
        ", stopping at ** on the last rep",
        ", but stop at ** the last time",
    ],
)
def test_last_pass_stops_at_its_mark_however_that_is_said(ending):
    """Six passes of 1 and 4 dc, the last of them without its corner: 26, and the chain that counts is one more."""
    words = f"Ch 3, *dc in next st**, (2 dc, ch 2, 2 dc) in next st; rep from * around{ending}; join with sl st in top of ch 3."
    report = check(f"{HEAD}{words}\n")
    assert counts(report)[-1] == 27
    assert dict(mades(report)[-1].spaces) == {2: 5}


def test_two_marks_that_a_repeat_might_end_at():
    """Which of the two is meant is not said: the round is not counted."""
    words = (
        "Ch 3, dc in next st, *(2 dc, ch 2, 2 dc) in next st**, dc in next 2 sts**; rep from * to ** twice more; join."
    )
    report = check(f"{HEAD}{words}\n")
    assert outcomes(report)[-1] == "not-recomputed"
