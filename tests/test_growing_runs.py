"""Rows called again whose runs between the shapings grow or shrink.

Truths worked out by hand: a round of six passes gains six stitches; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

RISING = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)\n"
FALLING = "Rnd 1: 36 sc in ring. (36)\nRnd 2: (4 sc, dec) 6 times. (30)\n"


def made(rows: str) -> list[int | None]:
    """The counts of a piece's rows."""
    return counts(check(f"Ball\n\nUS terms\n\nBALL\n{rows}\n"))


@pytest.mark.parametrize(
    ("words", "tail"),
    [
        ("Rnd 4: As Rnd 3, working one more sc between incs.", [24]),
        ("Rnd 4: Work as Rnd 3 but with 2 sc between increases.", [24]),
        ("Rnd 4: As Rnd 3 but with one less sc between incs.", [36]),
        ("Rnds 4-6: Rep Rnd 3, having 1 more sc between incs on each rnd.", [24, 30, 36]),
        ("Rnds 4 to 6: As last rnd, but with an extra sc between increases each time.", [24, 30, 36]),
        ("Rnds 4-6: Continue in this manner, working 1 more st between increases on every round.", [24, 30, 36]),
        ("Rnds 4-6: Cont in patt as est, adding one st between incs each rnd.", [24, 30, 36]),
        ("Rnd 4: As Rnd 3, but 2 sc between incs.\nRnd 5: As Rnd 4, but 3 sc between incs.", [24, 30]),
    ],
)
def test_runs_between_increases(words: str, tail: list[int | None]) -> None:
    """One stitch more in every run, from round to round."""
    assert made(RISING + words)[3:] == tail


def test_a_call_of_a_row_that_grew() -> None:
    """The row that is called has grown itself: the next one grows from there."""
    words = "".join(f"Rnd {n}: As Rnd {n - 1}, working one more sc between incs.\n" for n in (4, 5, 6))
    assert made(RISING + words)[3:] == [24, 30, 36]
    assert made(RISING + "Rnd 4: As Rnd 3, working one more sc between incs.\nRnd 5: Rep Rnd 4.\n")[3:] == [24, 32]


def test_runs_between_decreases() -> None:
    """One stitch fewer in every run, until none is left."""
    words = "Rnds 3-6: Cont in this way, working 1 sc fewer between decs each rnd."
    assert made(FALLING + words)[2:] == [24, 18, 12, 6]


@pytest.mark.parametrize(
    "words",
    [
        "Rnd 4: As Rnd 3 but with 2 dc between incs.",
        "Rnd 4: As Rnd 2 but with 2 sc between incs.",
        "Rnd 4: As Rnd 3 but with 2 sc between incs and hdc in last st.",
        "Rnds 4-6: Rep Rnd 3, working 1 more sc between incs.",
        "Rnds 4-6: Rep Rnd 3 with 2 sc between incs.",
    ],
)
def test_runs_that_are_not_surely_told(words: str) -> None:
    """Another stitch, a row without runs, several rows of which none is said to grow: not counted."""
    assert made(RISING + words)[3] is None


@pytest.mark.parametrize(
    ("words", "made_of"),
    [
        ("Rep Rnd 3 in hdc.", 27),
        ("As Rnd 3, but use hdc instead of sc.", 27),
        ("As Rnd 3, replacing sc with hdc. (27 hdc)", 27),
        ("As Rnd 3, with dc in place of sc. (27 dc)", 27),
        ("As Rnd 3, but use hdc instead of dc.", None),
        ("As Rnd 3, but use 2 hdc instead of sc.", None),
    ],
)
def test_a_row_called_in_another_stitch(words: str, made_of: int | None) -> None:
    """The stitch that is named stands in the place of the other; a row without that other is not counted."""
    report = check(f"Ball\n\nUS terms\n\nBALL\n{RISING}Rnd 4: {words}\n")
    assert counts(report)[-1] == made_of
    assert not [rule for rule, _ in all_findings(report, ("correction",)) if rule == "count-differs"]


@pytest.mark.parametrize(
    ("words", "tail"),
    [
        ("Rnds 4-6: Sc in each st around for 3 rnds. (18)", [18, 18, 18]),
        ("Rnds 4-6: Ch 1, sc in each st around for the next 3 rounds.", [18, 18, 18]),
        ("Rnds 4-5: 2 sc in each st around for 2 rounds.", [36, 72]),
        ("Rnd 4: Sc in each st around for 3 rounds.\nRnd 7: Sc2tog around.", [18, 18, 18, 9]),
        ("Rnd 4: Sc in each st around for 4 cm.", [None]),
        ("Rnd 4: Sc in each st around for 3 sts.", [None]),
    ],
)
def test_a_run_for_so_many_rows(words: str, tail: list[int | None]) -> None:
    """The row is worked so many times; the number after it goes on from the last of them."""
    report = check(f"Ball\n\nUS terms\n\nBALL\n{RISING}{words}\n")
    assert counts(report)[3:] == tail
    assert not [rule for rule, _ in all_findings(report, ("correction",)) if rule == "row-number-out-of-order"]
