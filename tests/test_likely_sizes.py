"""Likely causes in patterns of several sizes: each says for which size it holds, with that size's figures."""

from __future__ import annotations

import pytest
from helpers import all_findings, check

BAND = """Fernhill Band

Sizes: S (M, L)

US terms

BAND
Ch 61 (71, 81).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. {first}
Row 2: Ch 1, *sc in next {run} sts, sc2tog; rep from * across, turn. {second}
Row 3: Ch 1, sc in each st across, turn. {second}
Row 4: Ch 1, sc in each st across, turn. {second}
"""


def causes(text: str) -> list[tuple[str, str]]:
    """What each likely cause of the one finding on counts would change, and what then comes out."""
    (found,) = [one for one in check(text).findings if one.rule not in ("section-missing", "abbreviation-undefined")]
    return [(cause.change, cause.then) for cause in found.likely]


@pytest.mark.parametrize(
    ("size", "run", "made"), [("S", "9 (8, 6)", 50), ("M", "8 (9, 6)", 56), ("L", "8 (8, 9)", 70)]
)  # fmt: skip
def test_a_cause_in_one_figure_of_a_list_names_its_size_and_prints_that_sizes_count(
    size: str, run: str, made: int
) -> None:
    """60, 70 and 80 stitches over 10, 10 and 8 leave 54, 63 and 70; no cause speaks of the sizes that come out."""
    text = BAND.format(first="60 (70, 80) sc", run=run, second="54 (63, 70) sc")
    for change, then in causes(text):
        assert change.endswith(f"for size {size}")
        assert "54 (63, 70)" not in then
        if "as printed" in then:
            assert then.split(",")[0].endswith(f"sc in size {size}")


def test_a_clause_that_would_harm_the_sizes_that_come_out_is_no_cause() -> None:
    """A stitch more in the repeat would mend L and put S and M out; only the figure of L is thought of."""
    text = BAND.format(first="60 (70, 80) sc", run="8 (8, 5)", second="54 (63, 70) sc")
    changes = [change for change, _ in causes(text)]
    assert changes and all(change.endswith("for size L") and not change.startswith("add ") for change in changes)


def test_a_row_on_a_chain_that_lacks_a_figure_is_not_told_besides() -> None:
    """One list is a figure short: that is one finding, at the list."""
    text = BAND.format(first="60 (70, 80) sc", run="8 (8, 6)", second="54 (63, 70) sc").replace(
        "61 (71, 81)", "61 (71)"
    )
    assert [one for one in all_findings(check(text)) if one[0] != "abbreviation-undefined"] == [("size-list-length", 8)]


def test_rows_that_the_first_size_does_not_work_follow_from_a_cause_for_all_sizes() -> None:
    """Two chains too few in every size: one finding, also for the rows that M and L alone work further on."""
    text = """Fernhill Yoke

Sizes: S (M, L)

US terms

YOKE
Ch 41 (51, 61).
Row 1: Sc in 2nd ch from hook, sc in next 20 (25, 30) ch, ch 2, sc in next 17 (22, 27) ch, turn. 40 (50, 60) sc
Row 2: Ch 1, 2 sc in first st, sc in each st to ch-2 sp, 2 sc in sp, sc in each st to end, turn. 43 (53, 63) sc
Rows 3-4 (5, 6): Ch 1, 2 sc in first st, sc in each st to end, turn. 45 (56, 67) sc
Sizes M and L only
Next row: Ch 1, sc in each st to end, turn. 56 (67) sc
"""
    found = [one for one in check(text).findings if one.rule not in ("section-missing", "abbreviation-undefined")]
    assert [(one.rule, one.row) for one in found if one.weight.value == "correction"] == [("places-left-over", "Row 1")]


@pytest.mark.parametrize(
    ("write", "size", "run"),
    [
        ("{} ({}, {})".format, "M", (8, 9, 6)),
        ("{}-{}-{}".format, "M", (8, 9, 6)),
        ("{}-{}-{}".format, "L", (8, 8, 8)),
        ("{}/{}/{}".format, "L", (8, 8, 7)),
        ("{}[{}:{}]".format, "S", (9, 8, 6)),
        ("{} ({}) {}".format, "L", (8, 8, 8)),
    ],
)
def test_a_cause_changes_the_figure_of_its_size_and_no_other(write, size: str, run: tuple[int, ...]) -> None:
    """Of several like figures in a list, in whatever notation, the one of the size at fault is mended."""
    sizes, right = ["S", "M", "L"], (8, 8, 6)
    text = BAND.format(first="60 (70, 80) sc", run=write(*run), second="54 (63, 70) sc")
    (found,) = [one for one in check(text).findings if one.rule not in ("section-missing", "abbreviation-undefined")]
    mended = [text[: c.span.start] + c.replacement + text[c.span.end :] for c in found.likely if c.span is not None]
    wanted = [figure if name != size else right[at] for at, (name, figure) in enumerate(zip(sizes, run, strict=True))]
    assert BAND.format(first="60 (70, 80) sc", run=write(*wanted), second="54 (63, 70) sc") in mended
    assert all(cause.change.endswith(f"for size {size}") for cause in found.likely)
