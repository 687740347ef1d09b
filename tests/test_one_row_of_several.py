"""Words that leave open which rows, which places or how often: told by the row's own fit, or not counted at all.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

ROUNDS = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: Sc in each st around. (12)\n"
ROWS = "Row 1: Fsc 20, turn. (20)\nRow 2: Ch 1, sc in each st across, turn. (20)\n"
RING_24 = "Ch 8, join to form ring.\nRnd 1: Ch 3 (counts as dc), 23 dc in ring. (24 dc)\n"


def made(rows: str, head: str = "US terms") -> list[int | None]:
    """The counts of a piece's rows."""
    return counts(check(f"Mat\n\n{head}\n\nMAT\n{rows}\n"))


@pytest.mark.parametrize(
    ("words", "tail"),
    [
        ("Rnds 4-6: Rep Rnd 3, inc in last st.", [None, None, None]),
        ("Rnds 4-6: Rep Rnd 3, sc in next 2 sts.", [None, None, None]),
        ("Rnds 4-6: Rep Rnd 3, sl st in next st.", [12, 12, 12]),
        ("Rnds 4-6: Rep Rnd 3. Sc in next st.", [12, 12, 12]),
    ],
)
def test_other_work_behind_rows_that_are_called(words: str, tail: list[int | None]) -> None:
    """Which of several rows has the stitches told behind the call is not said; a slip stitch makes none."""
    assert made(ROUNDS + words)[3:] == tail


@pytest.mark.parametrize(
    ("words", "tail"),
    [
        ("Rows 3-5: Rep Row 2, changing to B, inc 1 st at each end.", [22, 24, 26]),
        ("Rows 3-6: Rep Row 2, dec 1 st at each end of every RS row.", [None] * 4),
        ("Rows 3-6: Rep Rows 1 and 2, dec 1 st at each end.", [None] * 4),
        ("Rows 3-5: Rep Row 2, inc 1 st at each end on Rows 3 and 5.", [None] * 3),
    ],
)
def test_shaping_of_rows_that_are_called(words: str, tail: list[int | None]) -> None:
    """Shaping is of each row only where one row is called over and over, and no others are named."""
    assert made(ROWS + words)[2:] == tail


def test_tall_chain_of_a_round_whose_join_is_left_unsaid() -> None:
    """ "Ch 5, sk 2 dc, *dc in next dc, ch 2, sk 2 dc" begins with a dc and its space, as the round's fit tells."""
    words = "Rnd 2: Ch 5, sk 2 dc, *dc in next dc, ch 2, sk 2 dc; rep from * around. (8 dc, 8 ch-2 sps)"
    report = check(f"Mat\n\nUS terms\n\nMAT\n{RING_24}{words}\n")
    assert counts(report) == [24, 8]
    assert not [rule for rule, _ in all_findings(report) if rule in ("count-differs", "repeat-does-not-fit")]


@pytest.mark.parametrize(
    ("words", "number"),
    [
        ("Ch 1, *sc 2, ch 1, sk 1*, sc 3, rep from * to *, sc 11.", 18),  # once: 2 + 3 + 2 + 11
        ("Ch 1, *sc 2, hdc 2*, dc 4, rep from * to *, sc in last 4.", 20),  # twice: 4 + 4 + 8 + 4
        ("Ch 1, *sc 2, ch 1, sk 1*, sc 2, rep from * to *, sc 2.", None),  # neither comes out
    ],
)
def test_passage_called_for_between_other_work(words: str, number: int | None) -> None:
    """ "*A*, B, rep from * to *, C" is worked once more, or as often as fits: the row must tell."""
    assert made(ROWS + f"Row 3: {words}")[-1] == number


@pytest.mark.parametrize("words", ["hdc in next st across, hdc in last 3 sts.", "sc in next sc across and in last st."])
def test_across_that_does_not_say_how_far(words: str) -> None:
    """ "Next st across" with more stitches behind it: to where is not said."""
    assert made(ROWS + f"Row 3: Ch 1, {words}")[-1] is None


@pytest.mark.parametrize(("over", "number"), [("next 4 sts", 16), ("these 4 sts", None)])
def test_chain_over_stitches_that_may_be_worked_already(over: str, number: int | None) -> None:
    """ "Ch 4 over these 4 sts" does not say whether they are still to come."""
    assert made(ROWS + f"Row 3: Ch 1, sc 8, ch 4 over {over}, sc 8.")[-1] == number


@pytest.mark.parametrize(
    "entry", ["MB: make bobble: 5 dc in one st", "Bobble (MB): 5 dc in same st", "MB = bobble (5 dc in one st)"]
)
def test_bobble_counts_as_one_stitch(entry: str) -> None:
    """A bobble is one stitch, though its entry leaves unsaid that its legs are closed together."""
    head = f"Abbreviations\nsc = single crochet\ndc = double crochet\n{entry}\n\nUS terms"
    rows = "Rnd 1: 12 sc in magic ring. (12)\nRnd 2: *Sc in next st, MB in next st; rep from * around.\n"
    assert made(rows, head)[-1] == 12


def test_size_spoken_to_as_those_who_wear_it() -> None:
    """ "Babies stop here": the size Baby."""
    text = (
        "Cap\n\nSizes: Baby (Toddler, Child)\nUS terms\n\nCAP\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: 2 sc in each st around. (24)\n"
        "Babies stop here.\nRnd 3: *Sc in next 3 sts, 2 sc in next st; rep from * around. (30)\n"
    )
    assert [counts(check(text), size)[-1] for size in range(3)] == [None, 30, 30]
