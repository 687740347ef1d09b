"""The demo's sound patterns written in other ways: wrapped, abbreviated otherwise, with other signs. The fabric is the same."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from helpers import DEMO, check
from ways import WAYS

_SOUND = sorted(path for path in DEMO.glob("*.txt") if "faulty" not in path.stem)


@cache
def _plain(path: Path) -> tuple[tuple[int | None, ...], ...]:
    return made_by(path.read_text(encoding="utf-8"))


def made_by(text: str) -> tuple[tuple[int | None, ...], ...]:
    """The stitches of every labelled row in every size."""
    rows = [row for row in check(text).ledger.rows if row.row.label is not None]
    return tuple(tuple(cell.made.stitches if cell.made is not None else None for cell in row.cells) for row in rows)


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("path", _SOUND, ids=lambda path: path.stem)
def test_the_same_pattern_in_another_notation_has_the_same_counts(path: Path, way: str) -> None:
    """How a pattern is set and abbreviated changes no count, and takes no row away."""
    text = path.read_text(encoding="utf-8")
    changed = WAYS[way](text)
    if changed != text:
        assert made_by(changed) == _plain(path)
