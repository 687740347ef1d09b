"""What several test modules use: checking a text, naming what came out, and working rows on the graph."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

import yaml

TESTS = Path(__file__).resolve().parent
ROOT = TESTS.parent
DEMO = ROOT / "corpus_demo"
RULES = ROOT / "rules"


def check(text: str, terms: str = "auto", house: str = "") -> Any:
    """The report on a pattern's text, held to a house file's text if one is given."""
    from lint import check_text

    return check_text(text, terms, house=house)


def load_table(name: str) -> dict[str, Any]:
    """A table of tests/published/."""
    return yaml.safe_load((TESTS / "published" / f"{name}.yaml").read_text(encoding="utf-8"))


def worked_rows(report: Any) -> list[Any]:
    """The labelled rows of a report's ledger: all but foundation chains and rings."""
    return [row for row in report.ledger.rows if row.row.label is not None]


def counts(report: Any, size: int = 0) -> list[int | None]:
    """The stitches of every labelled row in one size; None where it was not recomputed."""
    return [row.cells[size].made.stitches if row.cells[size].made is not None else None for row in worked_rows(report)]


def outcomes(report: Any, size: int = 0) -> list[str]:
    """What came of every labelled row in one size."""
    return [row.cells[size].outcome.value for row in worked_rows(report)]


def mades(report: Any, size: int = 0) -> list[Any]:
    """What every labelled row makes in one size."""
    return [row.cells[size].made for row in worked_rows(report)]


def spaces(report: Any) -> list[dict[int, int]]:
    """The chain spaces of every labelled row, by their length."""
    return [dict(made.spaces) for made in mades(report)]


def all_findings(report: Any, weights: tuple[str, ...] = ("correction", "query", "style")) -> list[tuple[str, int]]:
    """Rule and line of every finding of these weights; the sections that small test patterns lack are left out."""
    return [
        (finding.rule, report.source.line_of(finding.span))
        for finding in report.findings
        if finding.weight.value in weights and finding.rule != "section-missing"
    ]


def corrections(report: Any) -> list[tuple[str, int]]:
    """Rule and line of every correction, but for missing sections."""
    return all_findings(report, ("correction",))


def line_of(text: str, words: str) -> int:
    """The line, from 1, on which words stand first."""
    return text[: text.index(words)].count("\n") + 1


def assert_workings_hold(report: Any) -> None:
    """The workings of every row come to what the row makes, and so does the sum as it is written."""
    from lint.reports.workings import formula

    for row in report.ledger.rows:
        for cell in row.cells:
            told = cell.workings
            if told is None:
                assert cell.made is None or not (cell.made.stitches or cell.made.spaces)
                continue
            assert (told.makes, told.spaces) == (cell.made.stitches, cell.made.spaces), row.label
            assert eval(formula(told).replace("×", "*")) == told.makes, (row.label, formula(told))
            for line in told.lines:
                _assert_line_holds(line)


def _assert_line_holds(line: Any) -> None:
    parts = line.passes or ()
    assert line.uses >= 0 and line.lacking >= 0
    assert line.makes == sum(one.times * one.makes for one in parts) + sum(a * b for a, b in line.units)
    for one in parts:
        for inner in one.lines:
            _assert_line_holds(inner)


@dataclass(frozen=True)
class Laid:
    """A row that was worked: its nodes in the order of working, and whether its ends meet."""

    nodes: list[Any]
    circular: bool


def lay_rows(text: str) -> list[Laid]:
    """Work the rows of a one-piece, one-size pattern upon each other and keep the nodes of each."""
    from lint.reading.document import read_pattern
    from lint.source import SourceText
    from lint.working.bench import Bench
    from lint.working.chains import ChainRules
    from lint.working.choices import Choices
    from lint.working.fabric import Fabric

    book = rulebook()
    pattern, _, _ = read_pattern(SourceText(text), book)
    rules = ChainRules(heights={rule.key: rule.height for rule in book.stitches.stitches})
    fabric, laid = Fabric(), []
    for part in pattern.parts:
        for row in part.rows:
            is_round = row.label is not None and row.label.kind == "round"
            below = Fabric(fabric.nodes, fabric.circular or is_round)
            worked = Bench(below, 0, is_round, rules, Choices()).work(row.steps)
            nodes = worked.fabric.nodes
            laid.append(Laid(list(nodes), worked.fabric.circular))
            met_from_its_other_end = row.label is not None and not is_round
            fabric = Fabric(list(reversed(nodes)) if met_from_its_other_end else nodes, worked.fabric.circular)
    return laid


@lru_cache(maxsize=1)
def rulebook() -> Any:
    """The rules as they stand in rules/."""
    from lint.rulebook import load_rulebook

    return load_rulebook()
