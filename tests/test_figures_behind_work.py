"""Figures at a row's end without a sign, or behind an odd one: its count, or more work; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts

_FLAT = "Strip\n\nUS terms\n\nSTRIP\nRow 1: Fsc 20, turn. (20)\nRow 2: {}\n"
_SIZED = "Yoke\n\nUS terms\n\nSizes: S, M, L\n\nYOKE\nRow 1: Fsc (20, 24, 28), turn. (20, 24, 28)\nRow 2: {}\n"
_ROUND = "Ball\n\nUS terms\n\nBALL\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: {}\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, sc in next 18 sts, sc2tog 19 sts.", 19),
        ("Ch 1, sc in next 10 sts, sc2tog 10 sts.", 15),
        ("Ch 1, sc in next 18 sts, sc2tog 2 sts.", 19),
        ("Ch 1, sc in next 7 sts, sc3tog 3 sts, sc in next 10 sts.", 18),
        ("Ch 1, sc in next 8 sts, sc3tog 12 sts.", 12),
    ],
)
def test_stitches_behind_a_decrease(words: str, made: int) -> None:
    """ "sc2tog 19 sts" ends with the count; "sc2tog 10 sts" goes over ten, where only so the row comes out."""
    report = check(_FLAT.format(words))
    assert (counts(report)[-1], [rule for rule, _ in corrections(report)].count("count-differs")) == (made, 0)


def test_a_wrong_count_behind_a_decrease_is_told() -> None:
    """A figure that is neither the count nor how far the decreases go."""
    report = check(_FLAT.format("Ch 1, sc in next 18 sts, sc2tog 18 sts."))
    assert ("count-differs", 7) in all_findings(report)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, sc to last (4, 6, 8) sts, sc2tog (2, 3, 4) times.", [18, 21, 24]),
        ("Ch 1, sc to last (4, 6, 8) sts, sc2tog (2, 3, 4).", [18, 21, 24]),
        ("Ch 1, sc to last 2 sts, sc2tog (19, 23, 27).", [19, 23, 27]),
    ],
)
def test_a_list_behind_a_decrease(words: str, made: list[int]) -> None:
    """A list over the sizes there is how often, or the count."""
    report = check(_SIZED.format(words))
    assert [counts(report, size)[-1] for size in range(3)] == made
    assert "count-differs" not in [rule for rule, _ in corrections(report)]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("(sc, inc) x 6 / 18", 18),
        ("[sc, inc] 6 times > 18 sts", 18),
        ("Inc in each st / 24 sc", 24),
        ("6 sc / 6 hdc", None),
        ("6 inc / 6 sc", None),
    ],
)
def test_strokes_and_arrows(words: str, made: int | None) -> None:
    """A stroke stands before a count; other stitches behind it are work, and not taken for the count."""
    assert counts(check(_ROUND.format(words)))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, sc to last 8 sts, dec 3 sts evenly over last 8 sts.", 17),
        ("Ch 1, sc in next 8 sts, increasing 2 sts evenly, sc in each rem st.", 22),
    ],
)
def test_shaping_of_so_many_stitches_is_of_no_run_beside_them(words: str, made: int) -> None:
    """The run before or behind is worked plainly."""
    report = check(_FLAT.format(words))
    assert (counts(report)[-1], "places-left-over" in [rule for rule, _ in all_findings(report)]) == (made, False)


@pytest.mark.parametrize(
    ("words", "told"), [("Fsc 16 (20), turn. 16 (20) sc.", []), ("Fsc 16 (20), turn.\n17 (20) sc.", ["count-differs"])]
)
def test_foundation_stitches_are_counted_as_those_they_are(words: str, told: list[str]) -> None:
    """ "12 sc" behind "Fsc 12, turn." is the count, on a line of its own as well."""
    text = f"Cuff\n\nUS terms\n\nSizes: S (M)\n\nCUFF\nRow 1: {words}\nRow 2: Ch 1, sc2tog, sc in each st across.\n"
    report = check(text)
    assert [counts(report, size)[-1] for size in range(2)] == [15, 19]
    assert [rule for rule, _ in all_findings(report) if rule == "count-differs"] == told


def test_shaping_of_stitches_that_a_run_has_taken_is_not_guessed() -> None:
    """ "Sc in each st, inc 3 evenly over first 6 sts" works none of them twice."""
    for words in (
        "sc in each st across, inc 3 sts evenly over first 6 sts.",
        "sc across, dec 2 sts evenly over last 8 sts.",
    ):
        report = check(_FLAT.format(f"Ch 1, {words}"))
        assert counts(report)[-1] is None
        assert "places-run-out" not in [rule for rule, _ in all_findings(report)]
