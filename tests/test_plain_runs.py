"""The short way of working plain runs gives what the long way gives."""

from __future__ import annotations

import pytest
from helpers import DEMO, check, counts, mades

from lint.working.plain import Plain

TEXTS = {path.name: path.read_text(encoding="utf-8") for path in sorted(DEMO.glob("*.txt"))}
TEXTS["faults"] = """Faults
US terms

Ch 21.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)
Row 2: Ch 1, *sc in next 4 dc, 2 sc in next sc, sc2tog; rep from * 4 times more, turn.
Row 3: Ch 1, sc in next 3 sts, ch 2, sk 2 sts, sc2tog over next 2 sts, dec, sc in next st, 3 dc in next st, turn.
Row 4: Ch 1, sc in next 2 sts, 2 sc in next 2 sts, 2 sc in each of next 2 sts, inc, sc in next 30 sts, turn.
"""


@pytest.mark.parametrize("name", TEXTS)
def test_both_ways_agree(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every row makes the same, and the same is found, whichever way its plain clauses are worked."""
    short = check(TEXTS[name])
    monkeypatch.setattr(Plain, "as_plain", lambda self, step: None)
    long = check(TEXTS[name])

    assert any(counts(short))
    assert mades(long) == mades(short)
    assert [(f.rule, f.span, f.message) for f in long.findings] == [(f.rule, f.span, f.message) for f in short.findings]
