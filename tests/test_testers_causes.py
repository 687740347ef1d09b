"""Testers' slips by the numbers they leave: sixteen causes, with the figures that were published where there are any.

The pages are those that the notes on pattern testing name: help pages and makers' questions on stitch counts; figures
of the tests below that have none there are made up in the same manner, and marked "no figure published".
"""

from __future__ import annotations

from typing import Any

import pytest
from helpers import rulebook

from lint.inspection import inspect
from lint.source import SourceText
from lint.testers.review import Review, review

HEAD = "Thistle Swatch\nUS terms\nGauge: 16 sts and 20 rows = 10 cm\n\n"


def judged(pattern: str, *reports: str) -> Review:
    """The review of mails, each of another tester."""
    report = inspect(SourceText(HEAD + pattern), rulebook())
    return review(report, [(f"tester {number}.eml", text.encode()) for number, text in enumerate(reports, 1)])


def rows(counts: dict[int, int], word: str = "Row") -> str:
    """Counts as a tester mails them."""
    return "\n".join(f"{word} {number}: {count} sts" for number, count in counts.items())


def flat(number: int, stitches: int, first: str, each: str, kind: str, printed: tuple[int, ...] | None = None) -> str:
    """A flat piece of so many rows, with counts printed on all of them or on some."""
    shown = {row: f" ({stitches} {kind})" if printed is None or row in printed else "" for row in range(1, number + 1)}
    lines = [first.rstrip(".") + "." + shown[1]]
    lines += [f"Row {row}: {each}{shown[row]}" for row in range(2, number + 1)]
    return "\n".join(lines)


DC = "Ch 3 (counts as dc), turn, dc in next dc and in each dc across, working last dc in top of turning ch."


def dc_piece(number: int, stitches: int, printed: tuple[int, ...] | None = None) -> str:
    """Rows of dc with a ch 3 that counts."""
    first = f"Ch {stitches + 2}.\nRow 1: Dc in 4th ch from hook (3 skipped ch count as dc) and in each ch across"
    return flat(number, stitches, first, DC, "dc", printed)


def hdc_piece(number: int, stitches: int) -> str:
    """Rows of hdc with a ch 2 that does not count."""
    first = (
        f"Ch {stitches + 2}.\nRow 1: Hdc in 3rd ch from hook (2 skipped ch do not count as a st) and in each ch across"
    )
    return flat(number, stitches, first, "Ch 2 (does not count as a st), turn, hdc in each hdc across.", "hdc")


def sc_piece(number: int, stitches: int, printed: tuple[int, ...] | None = None) -> str:
    """Rows of sc on a chain that is one longer."""
    first = f"Ch {stitches + 1}.\nRow 1: Sc in 2nd ch from hook and in each ch across"
    return flat(number, stitches, first, "Ch 1 (does not count as a st), turn, sc in each sc across.", "sc", printed)


JOINED = """Rnd 1: Ch 2, 6 sc in 2nd ch from hook, join with sl st in first sc. (6 sc)
Rnd 2: Ch 1 (does not count as a st), 2 sc in each sc around, join with sl st in first sc. (12 sc)
Rnds 3-8: Ch 1 (does not count as a st), sc in each sc around, join with sl st in first sc. (12 sc)
"""
THIRTEENS = """Rnd 1: Make a magic ring, 13 sc in ring. (13 sc)
Rnd 2: 2 sc in each sc around. (26 sc)
Rnd 3: *Sc in next sc, 2 sc in next sc; rep from * around. (39 sc)
Rnd 4: Sc in each sc around. (39 sc)
"""
EIGHTS = """Rnd 1: Make a magic ring, 8 sc in ring. (8 sc)
Rnd 2: 2 sc in each sc around. (16 sc)
Rnd 3: *Sc in next sc, 2 sc in next sc; rep from * around. (24 sc)
Rnd 4: Sc in each sc around. (24 sc)
Rnd 5: 2 sc in each sc around. (48 sc)
Rnd 6: Sc in each sc around. (48 sc)
"""
CIRCLE = """Rnd 1: Make a magic ring, 6 sc in ring. (6 sc)
Rnd 2: 2 sc in each sc around. (12 sc)
Rnd 3: *Sc in next sc, 2 sc in next sc; rep from * around. (18 sc)
Rnd 4: *Sc in next 2 sc, 2 sc in next sc; rep from * around. (24 sc)
Rnd 5: *Sc in next 3 sc, 2 sc in next sc; rep from * around. (30 sc)
Rnds 6-9: Sc in each sc around. (30 sc)
"""

CASES = {  # cause: pattern, the tester's words
    "turning-chain-not-worked": (dc_piece(6, 20), rows({1: 20, 2: 19, 3: 18, 4: 17, 5: 16, 6: 15})),  # -1 each row
    "first-stitch-doubled": (dc_piece(24, 74), rows({1: 74, 24: 97})),  # 74 -> 97 after 24 rows
    "first-stitch-skipped": (hdc_piece(6, 20), rows({1: 20, 2: 19, 3: 18, 4: 17, 6: 15})),  # -1 each row
    "chain-at-one-end": (dc_piece(6, 20), rows({n: 20 for n in range(1, 7)}) + "\nOne edge slants to the left."),
    "last-stitch-missed": (sc_piece(9, 20), rows({1: 20, 2: 20, 3: 19, 4: 19, 5: 19, 6: 18, 7: 18, 8: 17, 9: 17})),
    "chain-missed-in-start": (sc_piece(4, 56), rows({1: 55, 2: 55, 3: 55})),  # 57 ch, 56 due, 55 got
    "slip-knot-counted": (sc_piece(4, 56), "Foundation ch: 56\n" + rows({1: 55, 2: 55})),  # -1 in the first row
    "first-row-convention": (sc_piece(4, 11), rows({1: 12, 2: 11, 3: 11})),  # 11 stitches from 12 chains
    "one-by-accident": (CIRCLE, rows({4: 24, 5: 30, 6: 31, 7: 31, 8: 31}, "Rnd")),  # ±1 at a random row, stays
    "repeats-left-out": (THIRTEENS, rows({1: 13, 2: 26, 3: 36, 4: 36}, "Rnd")),  # 36 for 39
    "repeat-doubled": (EIGHTS, rows({3: 24, 4: 24, 5: 72, 6: 72}, "Rnd")),  # 72 for 48
    "join-worked": (JOINED, rows({2: 12, 3: 13, 4: 14, 5: 15, 6: 16}, "Rnd")),  # +1 each round, no figure published
    "wrong-row-followed": (sc_piece(8, 40), rows({1: 40, 2: 40, 3: 38, 4: 37, 5: 34, 6: 33, 7: 31, 8: 30})),  # 10 lost
    "early-fault-seen-late": (sc_piece(25, 30), rows({1: 30, 2: 30, 23: 29, 24: 29})),  # row 3, seen 20 rows on
    "no-printed-count": (sc_piece(12, 30, (1, 2, 12)), rows({1: 30, 2: 30, 12: 29})),  # cannot be placed
    "other-countrys-names": (
        hdc_piece(4, 20),
        rows({1: 20, 2: 20, 4: 20}) + "\nGauge: 16 sts and 12 rows to 10 cm",
    ),  # height, not the count; no figure published
}


@pytest.mark.parametrize("cause", CASES)
def test_cause_is_named_first(cause: str) -> None:
    """A tester's slip is named first by its signature."""
    pattern, mail = CASES[cause]
    found = judged(pattern, mail)
    named = [point.likely[0].name for point in found.points if point.likely]

    assert all(row.first.made is not None for row in found.report.ledger.rows if row.row.label is not None)
    assert named == [cause]


@pytest.mark.parametrize("cause", [name for name in CASES if name not in ("chain-at-one-end", "other-countrys-names")])
def test_slip_of_one_is_no_fault_of_the_pattern(cause: str) -> None:
    """One who differs, beside two with the printed counts, has slipped: nothing is asked of the pattern."""
    pattern, mail = CASES[cause]
    printed = rows({row.number: due for row, due in _dues(pattern)}, "Rnd" if "Rnd" in pattern else "Row")
    found = judged(pattern, mail, printed, printed)

    assert {point.kind for point in found.points} == {"testers-slip"}
    assert [point.testers for point in found.points] == [("Tester 1",)]


def _dues(pattern: str) -> list[tuple[Any, int]]:
    ledger = inspect(SourceText(HEAD + pattern), rulebook()).ledger
    return [(row, row.first.made.stitches) for row in ledger.rows if row.number is not None]


def test_published_places_are_named() -> None:
    """A fault of row 3 that is seen in row 23 is said to lie in one of the rows between."""
    pattern, mail = CASES["early-fault-seen-late"]
    (point,) = judged(pattern, mail).points

    assert "Row 3 to Row 22" in point.likely[0].says


def test_a_row_without_a_printed_count_cannot_be_placed() -> None:
    """Where no count is printed on the way, the question says so."""
    pattern, mail = CASES["no-printed-count"]
    (point,) = judged(pattern, mail).points

    assert "Row 3 to Row 11" in point.likely[0].says and "cannot be placed" in point.likely[0].says


def test_one_row_alone_was_miscounted() -> None:
    """Off in one row, right before and after it: nothing stays, so no stitch was made too many."""
    (point,) = judged(sc_piece(6, 20), rows({1: 20, 2: 20, 3: 19, 4: 20, 5: 20})).points

    assert point.likely[0].name == "counted-wrongly"
    assert "Only Row 3 is off" in point.likely[0].says
