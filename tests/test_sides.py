"""Right and wrong side in row labels: what contradicts the turns is marked, and nothing else."""

from __future__ import annotations

from typing import Any

import pytest
from helpers import check, line_of

RULE = "side-of-work-disagrees"


def sides(text: str) -> list[tuple[int, str]]:
    """Line and weight of every finding on the side of the work."""
    report = check(text)
    return [(report.source.line_of(f.span), f.weight.value) for f in report.findings if f.rule == RULE]


def strip(*labels: str, turn: str = ", turn") -> str:
    """A strip of 12 single crochet with one row under each label."""
    first = f"{labels[0]}: Sc in 2nd ch from hook and in each ch across{turn}. (12 sc)"
    rows = [f"{label}: Ch 1, sc in each sc across{turn}. (12 sc)" for label in labels[1:]]
    return "\n".join(["Strip", "", "STRIP", "Ch 13.", first, *rows, ""])


class TestRows:
    """Flat rows that are turned."""

    def test_one_label_slipped(self) -> None:
        """One label among right ones is marked, and only that."""
        text = strip("Row 1 (RS)", "Row 2 (WS)", "Row 3 (WS)", "Row 4 (WS)", "Row 5 (RS)")

        assert [(7, "correction")] == sides(text)

    def test_all_right(self) -> None:
        """Sides that alternate are not marked, on whichever side the piece begins."""
        assert [] == sides(strip("Row 1 (RS)", "Row 2 (WS)", "Row 3 (RS)", "Row 4"))
        assert [] == sides(strip("Row 1 (WS)", "Row 2 (RS)", "Row 3 (WS)", "Row 4"))

    def test_first_label_slipped(self) -> None:
        """Where all later labels agree with each other it is the first that is marked."""
        assert [(5, "correction")] == sides(strip("Row 1 (WS)", "Row 2 (WS)", "Row 3 (RS)", "Row 4 (WS)"))

    def test_slipped_for_good(self) -> None:
        """Labels that follow from a slip have no finding of their own."""
        text = strip("Row 1 (RS)", "Row 2 (WS)", "Row 3 (RS)", "Row 4 (WS)", "Row 5 (WS)", "Row 6 (RS)")

        assert [(9, "correction")] == sides(text)

    def test_next_row(self) -> None:
        """A row without a number is counted on from the row above it."""
        assert [(7, "correction")] == sides(strip("Row 1 (RS)", "Row 2", "Next row (WS)"))
        assert [] == sides(strip("Row 1 (RS)", "Row 2", "Next row (RS)"))

    @pytest.mark.parametrize(("label", "found"), [("Row 13 (WS)", 1), ("Row 13 (RS)", 0)])
    def test_over_a_range(self, label: str, found: int) -> None:
        """Rows worked again turn as their models do."""
        text = strip("Row 1 (RS)", "Row 2 (WS)", "Row 3") + (
            f"Rows 4-12: Rep Rows 2 and 3 four times more, then Row 2 once. (12 sc)\n"
            f"{label}: Ch 1, sc in each sc across. (12 sc)\n"
        )

        assert found == len(sides(text))

    @pytest.mark.parametrize(("last", "found"), [("WS", 1), ("RS", 0)])
    def test_over_rows_of_one_kind(self, last: str, found: int) -> None:
        """A range with words of its own turns once a row."""
        assert found == len(sides(strip("Row 1 (RS)", "Rows 2-6", f"Row 7 ({last})")))

    def test_turn_at_the_start(self) -> None:
        """A turn at the row's start is the same turn."""
        text = (
            "Strip\n\nSTRIP\nCh 13.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across. (12 sc)\n"
            "Row 2 (WS): Ch 1, turn, sc in each sc across. (12 sc)\nRow 3 (WS): Ch 1, turn, sc in each sc across. (12 sc)\n"
        )

        assert [(7, "correction")] == sides(text)

    def test_unsaid_turn(self) -> None:
        """Rows that do not say whether to turn are taken as turned, and make a question at most."""
        assert [(6, "query")] == sides(strip("Row 1 (RS)", "Row 2 (RS)", turn=""))
        assert [] == sides(strip("Row 1 (RS)", "Row 2 (WS)", turn=""))

    def test_do_not_turn(self) -> None:
        """Rows that are said not to be turned stay on their side."""
        assert [] == sides(strip("Row 1 (RS)", "Row 2 (RS)", turn=", do not turn"))
        assert [(6, "correction")] == sides(strip("Row 1 (RS)", "Row 2 (WS)", turn=", do not turn"))

    def test_side_of_each_size(self) -> None:
        """Where sizes work unlike numbers of rows, the sizes that a label is wrong for are named."""
        text = (
            "Strip\nSizes: S (M)\n\nSTRIP\nCh 13.\n"
            "Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n"
            "Rows 2-5 (2-6): Ch 1, sc in each sc across, turn. (12 sc)\n"
            "Next row (WS): Ch 1, sc in each sc across, turn. (12 sc)\n"
        )
        found = [f for f in check(text).findings if f.rule == RULE]

        assert [(("M",), "query")] == [(f.sizes, f.weight.value) for f in found]


class TestStarts:
    """Where a new count of sides begins, or none can be kept."""

    @pytest.mark.parametrize(
        "between",
        [
            "Fasten off.\nWith RS facing, join yarn in first st.",
            "With right side facing, rejoin yarn with sl st in first sc.",
            "Turn the piece over.",
            "Turn 90 degrees.",
            "Work even until piece measures 10 cm.",
            "Repeat Row 2 until piece measures 10 cm.",
            "Cut yarn and rejoin at the other edge with RS facing you.",
        ],
    )
    def test_new_start(self, between: str) -> None:
        """New yarn, words on the side, and rows without a number end what is known."""
        text = strip("Row 1 (RS)", "Row 2 (WS)") + f"{between}\nNext row (RS): Ch 1, sc in each sc across, turn.\n"
        other = text.replace("Next row (RS)", "Next row (WS)")

        assert not sides(text) or not sides(other)
        assert "correction" not in [weight for _, weight in sides(text)]

    def test_joined_facing(self) -> None:
        """A label is held against the side with which the yarn is joined."""
        text = strip("Row 1 (RS)", "Row 2 (WS)") + (
            "Fasten off.\n\nEDGING\nWith RS facing, join yarn with sl st in first sc.\n"
            "Row 1 (WS): Ch 1, sc in each sc across, turn. (12 sc)\nRow 2 (WS): Ch 1, sc in each sc across. (12 sc)\n"
        )

        assert line_of(text, "Row 1 (WS)") in [line for line, _ in sides(text)]

    def test_right_side_rows_only(self) -> None:
        """Yarn that is cut after every row begins anew on the same side."""
        text = strip("Row 1 (RS)", turn=". Fasten off") + (
            "Row 2 (RS): Join B with sl st in first sc, ch 1, sc in each sc across. Fasten off. (12 sc)\n"
        )

        assert [] == sides(text)

    def test_another_piece(self) -> None:
        """Each piece has sides of its own."""
        text = strip("Row 1 (RS)", "Row 2 (WS)") + (
            "\nFLAP\nCh 13.\nRow 1 (WS): Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n"
            "Row 2 (RS): Ch 1, sc in each sc across. (12 sc)\n"
        )

        assert [] == sides(text)

    def test_goes_on_under_a_heading(self) -> None:
        """Rows that number on under a new heading keep their sides."""
        text = (
            strip("Row 1 (RS)", "Row 2 (WS)") + "\nSHAPE TOP\nRow 3 (WS): Ch 1, sc in each sc across, turn. (12 sc)\n"
        )

        assert [(line_of(text, "Row 3"), "correction")] == sides(text)

    def test_other_craft(self) -> None:
        """Rows of a forward and a return pass are not turned."""
        text = strip("Row 1 (RS)", "Row 2 (RS)", turn="").replace("Strip\n", "Tunisian strip\n", 1)

        assert [] == sides(text)

    def test_note_that_rows_stay(self) -> None:
        """A note that the right side faces throughout keeps silent rows from being taken as turned."""
        text = strip("Row 1 (RS)", "Row 2 (RS)", turn="")
        text = text.replace("STRIP\n", "Notes: The right side faces you in every row.\n\nSTRIP\n", 1)

        assert [] == sides(text)


def ring(second: str, end: str = "") -> str:
    """Two rounds of a circle, the second under a label of its own."""
    return (
        "Circle\n\nCIRCLE\nMake a magic ring.\n"
        f"Rnd 1 (RS): Ch 1 (does not count as a st), 6 sc in ring; join with sl st in first sc{end}. (6 sc)\n"
        f"{second}: Ch 1, 2 sc in each sc around; join with sl st in first sc{end}. (12 sc)\n"
    )


class TestRounds:
    """Rounds stay on their side unless they are turned."""

    @pytest.mark.parametrize(
        ("second", "end", "weights"),
        [
            ("Rnd 2 (RS)", "", []),
            ("Rnd 2 (WS)", "", ["query"]),
            ("Rnd 2 (WS)", ", turn", []),
            ("Rnd 2 (RS)", ", turn", ["correction"]),
        ],
    )
    def test_rounds(self, second: str, end: str, weights: list[str]) -> None:
        """Only a turn brings the other side to the front."""
        assert weights == [weight for _, weight in sides(ring(second, end))]

    def test_note_on_turning(self) -> None:
        """Where a note says that rounds are turned, rounds that say nothing tell nothing."""
        text = ring("Rnd 2 (WS)").replace("CIRCLE\n", "Note: Turn at the end of every round.\n\nCIRCLE\n", 1)

        assert [] == sides(text)


def test_says_what_contradicts() -> None:
    """The finding points at the label that it was counted from, and asks."""
    report: Any = check(strip("Row 1 (RS)", "Row 2", "Row 3 (WS)"))
    [finding] = [f for f in report.findings if f.rule == RULE]

    assert ["Row 1 (RS)"] == [report.source.slice(one.span) for one in finding.related]
    assert "turned 2 times" in finding.message and "?" in finding.message
    assert ("RS", "WS") == (finding.expected, finding.found)
