"""Chains that a later row takes as stitches, as its printed count tells: handles, buttonholes, mesh.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

HOLE = (
    "Band\n\nUS terms\n\nBAND\nRow 1: Fsc 20, turn. (20 sc)\n"
    "Row 2: Ch 1 (does not count as a st), sc in next 8 sc, ch 4, skip next 4 sc, sc in next 8 sc, turn.{}\n"
)


@pytest.mark.parametrize("words", ["sc in each st across", "sc across"])
def test_a_count_that_takes_the_chains_as_stitches(words: str) -> None:
    """The row is counted as printed, and the words are asked about; they are no mistake in the count."""
    report = check(HOLE.format("") + f"Row 3: Ch 1, {words}. (20 sc)\n")
    assert counts(report)[-1] == 20
    assert ("chains-called-stitches", 8) in all_findings(report, ("query",))
    assert not any(rule == "count-differs" for rule, _ in all_findings(report, ("correction",)))


def test_the_stitches_alone() -> None:
    """Where the count is that of the stitches, nothing is asked; so where the words name the chains."""
    for words, made in (("sc in each sc across. (16 sc)", 16), ("sc in each st and ch across. (20 sc)", 20)):
        report = check(HOLE.format("") + f"Row 3: Ch 1, {words}\n")
        assert counts(report)[-1] == made
        assert not any(rule == "chains-called-stitches" for rule, _ in all_findings(report, ("query",)))


def test_whoever_counts_chains_means_them_afterwards() -> None:
    """ "(20 sts)" behind the buttonhole counts its chains: the next row works into them, count or none."""
    assert counts(check(HOLE.format(" (20 sts)") + "Row 3: Ch 1, sc in each st across.\n"))[-1] == 20


def test_a_wrong_count_is_still_found() -> None:
    """A figure that neither reading gives."""
    report = check(HOLE.format("") + "Row 3: Ch 1, sc in each st across. (19 sc)\n")
    assert ("count-differs", 8) in all_findings(report, ("correction",))


def test_a_row_without_a_count_is_not_guessed() -> None:
    """Where another row of the pattern meant the chains, one without a count may mean them or not."""
    again = "Row 4: Ch 1, sc in next 8 sc, ch 4, skip next 4 sc, sc in next 8 sc, turn.\n"
    rows = HOLE.format("") + "Row 3: Ch 1, sc in each st across, turn. (20 sc)\n" + again
    report = check(rows + "Row 5: Ch 1, sc in each st across, turn.\nRow 6: Ch 1, sc in each st across. (16 sc)\n")
    assert counts(report)[4] is None
    assert not any(rule == "count-differs" for rule, _ in all_findings(report, ("correction", "query")))
    assert counts(check(HOLE.format("") + "Row 3: Ch 1, sc in each st across.\n"))[-1] == 16
