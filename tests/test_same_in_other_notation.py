"""The demo's patterns and a mitten written in other ways: wrapped, abbreviated otherwise, with other signs. The fabric is the same."""

from __future__ import annotations

from functools import cache

import pytest
from helpers import DEMO
from ways import WAYS

from lint.inspection import work
from lint.rulebook import load_rulebook
from lint.source import SourceText

MITTEN = """Test mitten

US terms

MITTEN
Rnd 1: 6 sc in magic ring. (6 sc)
Rnd 2: 2 sc in each sc around. (12 sc)
Rnd 3: *Sc in next sc, 2 sc in next sc; rep from * around. (18 sc)
Rnd 4: *Sc in next sc, sc2tog; rep from * around. (12 sc)
Rnd 5: *2 sc in next sc, sc in next sc; rep from * around. (18 sc)

THUMB
Row 1: Ch 7, sc in 2nd ch from hook and in each ch across, turn. (6 sc)
Row 2: Ch 1, *sc in next sc, 2 sc in next sc; rep from * across, turn. (9 sc)
"""
TEXTS = {path.stem: path.read_text("utf-8") for path in sorted(DEMO.glob("*.txt")) if "faulty" not in path.stem}
TEXTS["mitten"] = MITTEN
CHANGED = [(name, way) for name, text in TEXTS.items() for way in WAYS if WAYS[way](text) != text]


def made_by(text: str) -> tuple[tuple[int | None, ...], ...]:
    """The stitches of every labelled row in every size."""
    ledger = work(SourceText(text, "pattern.txt"), load_rulebook()).ledger
    rows = [row for row in ledger.rows if row.row.label is not None]
    return tuple(tuple(cell.made.stitches if cell.made is not None else None for cell in row.cells) for row in rows)


@cache
def _plain(name: str) -> tuple[tuple[int | None, ...], ...]:
    return made_by(TEXTS[name])


@pytest.mark.parametrize(("name", "way"), CHANGED, ids=[f"{name}-{way}" for name, way in CHANGED])
def test_the_same_pattern_in_another_notation_has_the_same_counts(name: str, way: str) -> None:
    """How a pattern is set and abbreviated changes no count, and takes no row away."""
    assert made_by(WAYS[way](TEXTS[name])) == _plain(name)


def test_every_way_changes_a_pattern() -> None:
    """No way is written that none of these patterns shows."""
    assert {way for _, way in CHANGED} == set(WAYS)
