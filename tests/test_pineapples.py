"""Pineapples told once: "Rep rnd 4, having 1 less ch-3 lp in each pineapple on each rnd" (common practice, no source)."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

# 4 pineapples: shells of 4 dc between runs of sc and ch-3 loops, one of each loop fewer in every round
_MAT = """Mat
US terms

Shell: (2 dc, ch 2, 2 dc) in indicated sp.
Beg shell: Ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp.

Rnd 1: Ch 4, join to form a ring, ch 4 (counts as dc, ch 1), [dc in ring, ch 1] 7 times, join in 3rd ch of beg ch-4. (8 dc, 8 ch-1 sps)
Rnd 2: Sl st in ch-1 sp, beg shell in same sp, *ch 1, 5 tr in next ch-1 sp, ch 1**, shell in next ch-1 sp, rep from * around, ending last rep at **, join in top of beg ch-3. (4 shells, 20 tr)
Rnd 3: Sl st in next dc, sl st in ch-2 sp, beg shell in same sp, *ch 2, sk next ch-1 sp, sc in next tr, [ch 3, sc in next tr] 4 times, ch 2, sk next ch-1 sp**, shell in ch-2 sp of next shell, rep from * around, ending last rep at **, join in top of beg ch-3. (36 sts)
Rnd 4: Sl st in next dc, sl st in ch-2 sp, beg shell in same sp, *ch 2, sk next ch-2 sp, sc in next ch-3 lp, [ch 3, sc in next ch-3 lp] 3 times, ch 2, sk next ch-2 sp**, shell in ch-2 sp of next shell, rep from * around, ending last rep at **, join in top of beg ch-3. (32 sts)
"""


@pytest.mark.parametrize(
    "words",
    [
        "Rnds 5 and 6: Rep rnd 4, having 1 less ch-3 lp in each pineapple on each rnd.",
        "Rnds 5 and 6: As rnd 4, with one loop fewer per pineapple.",
        "Rnd 5: Rep rnd 4, decreasing 1 ch-3 lp in each pineapple.\nRnd 6: Rep rnd 5, having 1 less lp in every pineapple.",
    ],
)
def test_the_run_in_each_pineapple_is_shorter_by_one(words):
    """24 - 16 sc and 16 dc of the shells: 32, then 28 and 24; the last pass is shortened as the others are."""
    report = check(f"{_MAT}{words} (24 sts)\n")
    assert counts(report)[3:] == [32, 28, 24]
    assert not {"count-differs", "corners-differ", "not-understood"} & set(dict(all_findings(report)))


@pytest.mark.parametrize(
    "more", ["1 more ch-3 lp in each pineapple", "1 less ch-3 lp in some pineapples", "less lps in each"]
)
def test_pineapples_that_do_not_shrink_so_are_not_counted(more):
    """There are no places for a loop more, and which pineapples "some" are is not told."""
    assert counts(check(f"{_MAT}Rnd 5: Rep rnd 4, having {more}.\n"))[4:] == [None]


def test_of_two_runs_the_words_do_not_tell_which():
    """A round with a second counted run in its passes: which of them is shorter is not said."""
    two = _MAT.replace(", shell in ch-2 sp of next shell, rep from * around, ending last rep at **, join in top of beg ch-3. (32 sts)",
                       ", [shell in ch-2 sp of next shell] once, rep from * around, ending last rep at **, join in top of beg ch-3. (32 sts)")  # fmt: skip
    assert two != _MAT
    assert counts(check(f"{two}Rnd 5: Rep rnd 4, having 1 less ch-3 lp in each pineapple.\n"))[4:] == [None]
