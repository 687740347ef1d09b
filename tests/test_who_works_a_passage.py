"""Lines that speak to some sizes: signs between and behind their names, hooks told in front of rows; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

_HAT = (
    "Hat\nUS terms\nSizes: M - L - XL\n\nCROWN\nRound 1: Make a magic ring, 48-54-60 sc in ring. (48-54-60 sc)\n{}\n"
    "Next round: Ch 1, *hdc2tog, hdc in next {} sts; rep from * 5 more times. ({} hdc)\nAll sizes:\n"
    "Last round: Ch 1, hdc in each st around. ({} hdc)\n"
)


@pytest.mark.parametrize("gate", ["Sizes L|XL:", "L|XL:", "L | XL -", "L & XL only!", "L - XL -", "L and XL:"])
def test_names_of_sizes_with_any_sign_between(gate: str) -> None:
    """The passage is for two sizes, and its lists have two figures."""
    report = check(_HAT.format(gate, "7-8", "48-54", "48-48-54"))
    assert [counts(report, size) for size in range(3)] == [[48, None, 48], [54, 48, 48], [60, 54, 54]]
    assert not corrections(report)


@pytest.mark.parametrize("words", ["go straight on to", "go on straight to", "now skip to", "proceed directly to"])
def test_a_size_that_is_sent_on_in_any_words(words: str) -> None:
    """It leaves out what lies between; the others do not."""
    report = check(_HAT.format(f"For M, {words} the last round.\nSizes L and XL:", "7-8", "48-54", "48-48-54"))
    assert [counts(report, size) for size in range(3)] == [[48, None, 48], [54, 48, 48], [60, 54, 54]]


@pytest.mark.parametrize("words", ["All sizes - decrease -", "All sizes: now decrease:"])
def test_what_the_next_rows_do_is_no_row(words: str) -> None:
    """A sentence with a dash behind it leads the rows in, as one with a colon does."""
    report = check(_HAT.format(words, "6-7-8", "42-48-54", "42-48-54"))
    assert [len(counts(report, size)) for size in range(3)] == [3, 3, 3] and len(report.ledger.rows) == 3
    assert [counts(report, size)[-1] for size in range(3)] == [42, 48, 54]


_PLAIN = (
    "Hat\nUS terms\nSizes: M - L - XL\n\nCROWN\nRound 1: Make a magic ring, 48-54-60 sc in ring. (48-54-60 sc)\n{}\n"
    "Round 2: Ch 1, hdc in each st around.\nAll sizes:\nRound 3: Ch 1, hdc in each st around. (48-54-60 hdc)\n"
)


@pytest.mark.parametrize(
    ("line", "second"),
    [
        ("For M, use 5 mm hook.", [48, 54, 60]),
        ("For L and XL: Use 5.5 mm hook!", [48, 54, 60]),
        ("Size M – switch to the smaller hook.", [48, 54, 60]),
        ("For M, use the 5 mm hook. For L and XL, use the 5.5 mm hook.", [48, 54, 60]),
        ("For M, work loosely.", [48, 54, 60]),
        ("Size M: change to color B.", [48, 54, 60]),
        ("For M, go on as follows.", [48, None, None]),
        ("For M: With 5 mm hook, work as follows:", [48, None, None]),
        ("For M:", [48, None, None]),
        ("M -", [48, None, None]),
    ],
)
def test_a_hook_for_one_size_shuts_no_size_out(line: str, second: list[int | None]) -> None:
    """All that such a sentence says is which hook; a gate with rows behind it is another matter."""
    report = check(_PLAIN.format(line))
    assert [counts(report, size)[1] for size in range(3)] == second


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc 14/17, inc, sc 6, inc, sc to end", [38, 44]),
        ("[sc 1/2, dec] 6 times, sc to end", [30, 36]),
        ("sc 14/17, inc 2/3, sc to end", [38, 45]),
        ("sk 1/2, sc to end", [35, 40]),
        ("sc 14/17 or a few more, sc to end", [None, None]),
        ("sc 14, inc, work 1/2 in of ch, sc to end", [None, None]),
    ],
)
def test_a_stroke_between_the_figures_of_a_passage(words: str, made: list[int | None]) -> None:
    """In a passage for two of three sizes a run may have two figures."""
    report = check(
        "Mitt\nUS terms\nSizes: Child/Woman/Man\n\nHAND\nR1: Make a magic ring, 30/36/42 sc in ring (30/36/42)\n"
        f"Woman and Man:\nNext R: {words}\n"
    )
    assert [counts(report, size)[1] for size in range(3)] == [None, *made]


def test_a_count_behind_times_in_a_passage() -> None:
    """A bracket with as many figures as the passage has sizes is its count, and no list over all sizes with the figure before it."""
    report = check(
        "Mitt\nUS terms\nSizes: Child/Woman/Man\n\nHAND\nR1: Make a magic ring, 12/18/24 sc in ring (12/18/24)\n"
        "Woman and Man only -\nNext R: [sc 1/2, dec] 6 times (12/18)\nMan only -\nNext R: [sc 1, dec] 6 times (12)\n"
        "All sizes -\nNext R: [sc in next st, dec] 4 times (8)\n"
    )
    assert [counts(report, size) for size in range(3)] == [[12, None, None, 8], [18, 12, None, 8], [24, 18, 12, 8]]
    assert not corrections(report)
