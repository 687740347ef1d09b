"""Texts far longer than any pattern's: read up to what a row may have, in time that grows no faster than they do."""

import time

import pytest
from helpers import check, counts

from lint.reading.clauses.reader import MOST_WORDS


def test_a_definition_longer_than_any_row_is_not_read():
    """A stitch whose definition goes on for thousands of words is not understood, and its row not recomputed."""
    body = "5 dc in next st, " * MOST_WORDS
    report = check(f"Mat\n\nSpecial stitches\nFan: {body}\n\nCh 20.\nRow 1: Sc in 2nd ch from hook and in each ch across. (19 sc)\n"
                   "Row 2: Ch 1, turn, fan in next st, sc in each st across. (19 sc)\n")  # fmt: skip
    assert counts(report)[-2:] == [19, None]


@pytest.mark.parametrize("run", ["L", "yarns", "sc", "12cm,", "a.b.", "(1)"])
@pytest.mark.parametrize("before", ["Cloth\n\nRow 1: ", "Cloth\n\nFan: "])
def test_unbroken_runs(run: str, before: str):
    """Tens of thousands of characters without a space come to their report in good time."""
    began = time.process_time()
    check(before + run * (30_000 // len(run)))
    assert time.process_time() - began < 5
