"""Hooks and yarns: names of one size that are of two, and words against numbers."""

from __future__ import annotations

from typing import Any

import pytest
from helpers import all_findings, check, load_table

TABLE = load_table("hooks")


def said(line: str, rule: str) -> list[tuple[str, str]]:
    """Marked words and weight of the findings of one rule on a line of materials."""
    report = check(f"Small Mat\n{line}\n")
    return [(report.source.slice(f.span).strip(), f.weight.value) for f in report.findings if f.rule == rule]


def hook(line: str) -> list[tuple[str, str]]:
    """What is said of a hook."""
    return said(line, "hook-size-disagrees")


def yarn(line: str) -> list[tuple[str, str]]:
    """What is said of a yarn."""
    return said(line, "yarn-weight-disagrees")


FORMS = [
    "{mm} mm (US {letter}-{number}) hook",
    "Hook: {mm}mm [US {letter}/{number}]",
    "Crochet hook US {number}/{letter}/{mm} mm",
    "Size {letter}/{number} ({mm} mm) hook",
    "hook size {letter}{number}, {mm} mm",
    "{letter}-{number} hook ({mm} mm)",
    "{letter}/{number}/{mm}mm hook",
    "{mm} mm crochet hook (U.S. size {letter}-{number})",
    "{letter}-{number} / {mm} mm hook",
    "{mm} mm ({letter}) hook",
    "Hook: {letter} ({mm} mm)",
    "Crochet hook {mm} mm/US {number}",
    "Hook {mm} mm – US {letter}-{number}",
]


class TestHooks:
    """hook-size-disagrees."""

    @pytest.mark.parametrize("form", FORMS)
    def test_printed_forms(self, form: str) -> None:
        """Each way of printing a hook is read: right ones pass, another hook's millimetres are a correction."""
        assert hook(form.format(mm="5", letter="H", number="8")) == []
        assert hook(form.format(mm="5.0", letter="H", number="8")) == []
        assert [weight for _, weight in hook(form.format(mm="5", letter="J", number="10"))] == ["correction"]

    @pytest.mark.parametrize("row", TABLE["hooks"], ids=lambda row: f"{row['mm']} mm")
    def test_published_sizes(self, row: dict[str, Any]) -> None:
        """Every published size passes under its names, and not with the millimetres of the next hook but one."""
        assert hook(f"{row['mm']} mm (US {row['us']}) hook") == []
        assert hook(f"{row['mm'] + 1.5} mm (US {row['us']}) hook")

    @pytest.mark.parametrize("row", TABLE["old_uk"], ids=lambda row: f"UK {row['uk']}")
    def test_published_old_uk_numbers(self, row: dict[str, Any]) -> None:
        """Old UK numbers run the other way, and pass with their own millimetres."""
        assert hook(f"{row['mm']} mm (UK {row['uk']}) hook") == []
        assert hook(f"{row['mm'] + 1.5} mm (UK {row['uk']}) hook")

    @pytest.mark.parametrize(
        "line",
        [
            "7 mm (K-10½) hook",
            "3 mm (US D-3) hook",
            "4.25 mm (US G) hook",
            "2.5 mm (C-2) hook",
            "11 mm (P-16) hook",
            "3.75 mm (UK 9) hook",
            "Steel hook 2.5 mm (US 7)",
            "Hook No. 9 (8 mm)",
        ],
    )
    def test_sizes_that_makers_mark_apart(self, line: str) -> None:
        """One letter or number for two sizes by different makers is a question, never a correction."""
        assert [weight for _, weight in hook(line)] == ["query"]

    @pytest.mark.parametrize(
        "line",
        [
            "Steel hook No. 7 (1.65 mm)",
            "1.5 mm (US 7) hook",
            "Hook No. 9 (3.5 mm)",
            "Hooks 4 mm and 5 mm (US G-6 and H-8)",
            "Hooks 4 (4.5, 5) mm [US G-6 (7, H-8)]",
            "Hooks 4/4.5/5 mm (G-6/7/H-8)",
            "G-6 (4 mm) and I-9 (5.5 mm) hooks",
            "5 mm hook, 8 buttons 12 mm",
            "Hook 5 mm (US H-8); two 9 mm eyes",
            "5 mm (US H-8, UK 6) hook",
            "4 mm [UK 8, US G/6] hook",
            "9 mm (M-13) hook",
            "9 mm (US M/N-13) hook",
            "10 mm (N/P-15) hook",
            "Motif C-3 is crocheted last",
            "5-5.5 mm hook",
            "Hook H, 2 stitch markers, 6 mm beads",
            "6.5 mm (K-10 1/2) hook",
            "6.5 mm (US 10.5/K) hook",
            "Hook: J/6 mm or size needed",
        ],
    )
    def test_nothing_to_say(self, line: str) -> None:
        """Right sizes, several hooks side by side, and things that are no hooks are left alone."""
        assert hook(line) == []

    def test_lines_below_are_no_part_of_it(self) -> None:
        """What the next line begins with, a number or buttons, neither joins a hook nor hides it."""
        assert hook("4 mm (old UK 10) hook\n5 buttons, 15 mm across") == [("old UK 10", "correction")]
        assert hook("4 mm (old UK 8) hook\n5 buttons, 15 mm across") == []

    def test_letter_against_number(self) -> None:
        """A letter and a number that belong to two hooks disagree without any millimetres."""
        assert hook("Hook: US H-9") == [("US H-9", "correction")]
        assert hook("H-9 (5 mm) hook") == [("H-9", "correction")]

    def test_is_asked_in_plain_words(self) -> None:
        """The message names both hooks and asks which one is meant."""
        report = check("Small Mat\nHook: 4.5 mm (US H-8)\n")
        [finding] = [one for one in report.findings if one.rule == "hook-size-disagrees"]

        assert finding.message == "4.5 mm is US 7; H-8 is 5 mm. Which is meant?"
        assert [report.source.slice(place.span) for place in finding.related] == ["4.5 mm"]


class TestYarns:
    """yarn-weight-disagrees."""

    @pytest.mark.parametrize(
        "form",
        [
            "{word} weight yarn ({n})",
            "{word} (#{n}), 100 g",
            "{word} weight #{n} yarn",
            "{word} weight cotton-linen blend ({n})",
            "#{n} {word} weight yarn",
            "Yarn: {word}, category {n}",
            "Category {n} {word} yarn",
            "{word} wool [{n}]",
            "{word} weight yarn (#{n} soft)",
            "{word}/{n} yarn",
            "{word} weight (CYC {n})",
            "Yarn weight: {n} ({word})",
        ],
    )
    def test_printed_forms(self, form: str) -> None:
        """Each way of printing word and number is read, and other numbers are asked about or corrected."""
        assert yarn(form.format(word="Aran", n=4)) == []
        assert len(yarn(form.format(word="Aran", n=2))) == 1

    @pytest.mark.parametrize("row", TABLE["yarn_weights"], ids=lambda row: row["word"])
    def test_published_weights(self, row: dict[str, Any]) -> None:
        """Every word of the published system passes with its number, and not with one two further."""
        assert yarn(f"{row['word']} weight yarn ({row['number']})") == []
        assert yarn(f"{row['word']} weight yarn ({(row['number'] + 3) % 8})")

    @pytest.mark.parametrize(
        "line",
        [
            "DK weight baby yarn (3)",
            "DK or worsted weight yarn (4)",
            "DK yarn: white, 2 balls",
            "Worsted weight yarn (2 skeins)",
            "DK (8 ply) wool",
            "DK cotton, light blue (2)",
            "Chunky yarn (2 x 100 g)",
            "Sport weight superfine alpaca (2)",
            "Cotton thread size 10, fine",
            "Sizes: Small (4), Medium (6) for a wool hat",
            "DK weight yarn, #7 steel hook",
            "Lace (2)",
            "Worsted weight yarn (3.5 oz)",
            "DK yarn (3-4 balls)",
            "4 ply cotton (1)",
            "Fine merino wool #3",
            "Soft light gray wool, #4",
        ],
    )
    def test_nothing_to_say(self, line: str) -> None:
        """Agreeing words, amounts, colors and sizes are left alone."""
        assert yarn(line) == []

    def test_weights(self) -> None:
        """A plain contradiction is a correction; a name that some use otherwise, or a bare number, is a query."""
        assert yarn("DK weight yarn (4)") == [("DK weight", "correction")]
        assert yarn("Bulky weight yarn (6)") == [("Bulky weight", "query")]
        assert yarn("Aran wool (2)") == [("Aran", "query")]
        assert yarn("DK weight (#4 medium) yarn") == [("DK weight", "correction")]


def test_a_yarn_number_above_a_hook_is_the_yarns() -> None:
    """ "CYC #3" at the end of a line names no hook that is told in the next; "#7" and its millimetres in one line do."""
    text = "Cowl\nMaterials\nDK weight yarn, CYC #3\n{}\nCowl\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n"
    assert not any(rule == "hook-size-disagrees" for rule, _ in all_findings(check(text.format("5 mm hook"))))
    assert ("hook-size-disagrees", 4) in all_findings(check(text.format("Hook #7 (5.5 mm)")))
    assert ("hook-size-disagrees", 4) in all_findings(check(text.format("US H-8\n(5.5 mm) hook")))


@pytest.mark.parametrize(
    ("lines", "disagrees"),
    [
        ("100 g worsted yarn, colors A and B\n4 mm hook", False),
        ("Worsted yarn in A and B\n4 mm hook", False),
        ("Yarn: color A and color B, 4 mm hook", False),
        ("Hooks: for sizes S and M, 5.5 mm; for L, 6 mm hook", False),
        ("Worsted yarn in A\nHook: B, 4 mm", True),
        ("Size B 4 mm hook", True),
        ("Hook B\n4 mm", True),
        ("Crochet hook, B/4 mm", True),
    ],
)
def test_a_letter_of_a_yarn_or_a_size_is_no_hook(lines: str, disagrees: bool) -> None:
    """A letter behind a word for a color, in a list of letters or at the end of the line above names no hook."""
    text = f"Cowl\nMaterials\n{lines}\n\nCowl\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n"
    assert any(rule == "hook-size-disagrees" for rule, _ in all_findings(check(text))) == disagrees


@pytest.mark.parametrize(
    ("line", "asked"),
    [
        ("For S, use 5 mm hook.\nFor M and L, use 5.5 mm hook.", False),
        ("Use 5 mm for size S, 5.5 mm for sizes M and L.", False),
        ("Or size needed for gauge.", True),
    ],
)
def test_hooks_told_by_size(line: str, asked: bool) -> None:
    """Where a line of the materials says which size takes which hook, each has its use."""
    text = (
        f"Cowl\nUS terms\nSizes: S (M, L)\n\nMaterials\n5 mm and 5.5 mm crochet hooks\n{line}\n\nCowl\nCh 11 (13, 15).\n"
        "Row 1: With 5 mm hook, sc in 2nd ch from hook and in each ch across. (10 (12, 14) sc)\n"
    )
    assert any(rule == "hook-not-used" for rule, _ in all_findings(check(text))) == asked
