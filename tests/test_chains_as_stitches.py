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


THUMB = (
    "Mitt\n\nUS terms\n\nMITT\nCh 20, join.\nRnd 1: Ch 1, sc in each ch around, join. (20 sc)\n"
    "Rnd 2: Ch 1, {}, ch 3, skip next 3 sc, sc in each rem sc, join. (17 sc)\n"
)


@pytest.mark.parametrize("words", ["1 sc in each sc and 1 sc in each of 3 ch", "sc in each sc and in each of the 3 ch"])
def test_single_chains_by_their_number(words: str) -> None:
    """The three chains over the thumb are three places, where they lie among the stitches."""
    report = check(THUMB.format("sc in next 8 sc") + f"Rnd 3: Ch 1, {words}, join. (20 sc)\n")
    assert counts(report)[-1] == 20
    assert all_findings(report, ("correction",)) == []


def test_chains_of_a_row_that_was_not_understood() -> None:
    """The count tells of no chains, so that how many there are to be gone over stays open."""
    unread = THUMB.format("sc in next 8 sc as the wimple")
    for words, made in (("sc in each sc and in each ch", None), ("sc in each sc", 17)):
        assert counts(check(unread + f"Rnd 3: Ch 1, {words}, join.\n"))[-1] == made


def test_a_space_behind_numbered_stitches() -> None:
    """ "sc in ch-1 sp, sc in each of 6 sc, sc in ch-1 sp": the last space is worked like the first."""
    mesh = "Row 2: Ch 1, sc in next 7 sc, ch 1, skip next sc, sc in next 6 sc, ch 1, skip next sc, sc in last 5 sc, turn.\n"
    words = "sc in each of 5 sc, sc in ch-1 sp, sc in each of 6 sc, sc in ch-1 sp"
    text = (
        "Tab\n\nUS terms\n\nTAB\nRow 1: Fsc 20, turn. (20 sc)\n"
        + mesh
        + f"Row 3: Ch 1, {words}, turn, leave rem sts.\n"
    )
    assert counts(check(text))[-1] == 13
