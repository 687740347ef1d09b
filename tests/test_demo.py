"""The patterns in corpus_demo/ against their truth: true counts, planted mistakes, and nothing else called wrong."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest
import yaml
from helpers import DEMO, TESTS, check

TRUTH = yaml.safe_load((TESTS / "demo_mistakes.yaml").read_text(encoding="utf-8"))
SOUND = [name for name, truth in TRUTH.items() if not truth["mistakes"]]
PLANTED = [(name, mistake["line"], mistake["rule"]) for name, truth in TRUTH.items() for mistake in truth["mistakes"]]


@cache
def report_on(name: str) -> Any:
    """The report on one demo pattern."""
    return check((DEMO / name).read_text(encoding="utf-8"))


def found(name: str, weight: str | None = None) -> list[tuple[int, str]]:
    """Line and rule of every finding, of one weight if given."""
    report = report_on(name)
    return [
        (report.source.line_of(f.span), f.rule) for f in report.findings if weight is None or f.weight.value == weight
    ]


def counted(name: str) -> dict[str, int | None]:
    """Stitches of every numbered row, by piece and number: "BACK / Row 30", headings within a piece left out."""
    pieces = {row.split(" / ")[0] for row in TRUTH[name]["counts"]}
    piece, result = "", {}
    for row in report_on(name).ledger.rows:
        piece = row.part.name if row.part.name in pieces else piece
        if row.number is not None:
            made = row.cells[0].made
            result[f"{piece} / {'Rnd' if row.kind == 'round' else 'Row'} {row.number}"] = (
                None if made is None else made.stitches
            )
    return result


def test_every_pattern_has_its_truth() -> None:
    """Each pattern in the folder has an entry, and each entry a pattern."""
    assert sorted(TRUTH) == sorted(path.name for path in DEMO.glob("*.txt"))


@pytest.mark.parametrize("name", TRUTH)
class TestCounts:
    """What the rows make."""

    def test_counts_are_true(self, name: str) -> None:
        """Every row that can be worked as written has its true count."""
        true = TRUTH[name]["counts"]
        made = counted(name)

        assert true == {row: made.get(row) for row in true}

    def test_no_row_is_missing(self, name: str) -> None:
        """Every numbered row of the text stands in the ledger."""
        report = report_on(name)
        labels = [row.label.span for part in report.pattern.parts for row in part.rows if row.label is not None]

        assert {span.start for span in labels} <= {row.span.start for row in report.ledger.rows}


@pytest.mark.parametrize(
    ("name", "line", "rule"), PLANTED, ids=[f"{name.split('-')[0]}-{line}-{rule}" for name, line, rule in PLANTED]
)
def test_planted_mistake_is_found(name: str, line: int, rule: str) -> None:
    """The planted mistake has its finding, on its line, under its name."""
    assert (line, rule) in found(name)


@pytest.mark.parametrize("name", SOUND)
class TestSound:
    """The patterns without a mistake."""

    def test_no_correction(self, name: str) -> None:
        """Nothing in a sound pattern is called certainly wrong."""
        assert [] == found(name, "correction")

    def test_everything_is_recomputed(self, name: str) -> None:
        """Every row of a sound pattern is recomputed, and none differs from its print."""
        rows = report_on(name).ledger.rows

        assert len(rows) == sum(row.cells[0].made is not None for row in rows)
        assert not [row.label for row in rows if row.cells[0].outcome.value == "differs"]


@pytest.mark.parametrize("name", [name for name in TRUTH if name not in SOUND])
def test_nothing_else_is_called_wrong(name: str) -> None:
    """A faulty pattern has corrections at its planted mistakes only."""
    planted = {mistake["line"] for mistake in TRUTH[name]["mistakes"]}

    assert {line for line, _ in found(name, "correction")} <= planted


@pytest.mark.parametrize("name", [name for name in TRUTH if name not in SOUND])
def test_one_mistake_is_one_finding(name: str) -> None:
    """No planted mistake shows more than once among the corrections."""
    lines = [line for line, _ in found(name, "correction")]

    assert len(lines) == len(set(lines))


@pytest.mark.parametrize("name", TRUTH)
def test_verdict(name: str) -> None:
    """The grade says "corrections" of the patterns with planted mistakes and of no other."""
    assert (name not in SOUND) == (report_on(name).grade.verdict == "corrections")
