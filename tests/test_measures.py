"""Measures: inches against centimetres, gauge against the finished size, and figures that leave their line."""

from __future__ import annotations

from typing import Any

import pytest
from helpers import check, load_table


def found(text: str, rule: str) -> list[Any]:
    """The findings of one rule on a text."""
    return [finding for finding in check(text).findings if finding.rule == rule]


def said(text: str, rule: str) -> list[tuple[str, str, tuple[str, ...]]]:
    """Marked words, weight and sizes of the findings of one rule."""
    report = check(text)
    return [(report.source.slice(f.span), f.weight.value, f.sizes) for f in report.findings if f.rule == rule]


SIZED = "Tube Scarf\nSizes: S (M, L)\n"


class TestInchesAndCentimetres:
    """measurement-disagrees."""

    @pytest.mark.parametrize(
        "line",
        [
            "Finished size: 14 in (35.5 cm) wide",
            "Size: 9½ x 12 ins [24 x 30.5 cm]",
            'Measures 7" x 7 1/2" (18 cm x 19 cm)',
            "Leave a tail of 12 in (30 cm).",
            "About 40 in [100 cm] long",
            "Gauge: 10 sc = 3 1/4 in / 8.25 cm",
            "Size: 8-1/4 inches (21 cm) deep",
            "Size: 13,5 cm [5¼ in] square",
            "Size: 30 in long, 10 cm wide",
            "Size: 25 cm wide and 60 in long",
            "Use a strip of 6 in (10 cm for the smaller bag).",
            "Size: 10 x 14 in (35.5 x 25.5 cm)",
            "Repeat for 8 in, 20 cm from the edge.",
        ],
    )
    def test_sound_pairs_say_nothing(self, line: str) -> None:
        """Measures rounded as the trade rounds them, and measures of two things, are left alone."""
        assert found(f"Tube Scarf\n{line}\n", "measurement-disagrees") == []

    @pytest.mark.parametrize(
        "line",
        [
            "Chest: 31 (33½, 36) in / 79 (85, 91.5) cm",
            "Chest: 31/33½/36 in (79/85/91.5 cm)",
            "Chest: (31, 33½, 36) in, (79, 85, 91.5) cm",
            "Chest: 31 (33½) 36 in / 79 (85) 91.5 cm",
            'Chest: 31" [33 1/2", 36"], 79 [85, 91.5] cm',
            "Chest: 79 [85: 91.5] cm; 31 [33½: 36] in",
            "Chest: 31, 33½ and 36 in (79, 85 and 91.5 cm)",
            "Chest: 79-85-91.5 cm (31-33½-36 in)",
            "Chest: 31-32 (33-34, 35-36) in / 79-81 (84-86.5, 89-91.5) cm",
            "Chest: - (33½, 36) in / - (85, 91.5) cm",
        ],
    )
    def test_lists_of_all_shapes(self, line: str) -> None:
        """Lists over the sizes are compared figure by figure, in every shape they are printed in."""
        assert found(SIZED + line + "\n", "measurement-disagrees") == []
        wrong = line.replace("36", "39")
        marks = said(SIZED + wrong + "\n", "measurement-disagrees")

        assert len(marks) == 1
        assert marks[0][1:] == ("correction", ("L",))

    def test_the_pair_is_marked_in_both_units(self) -> None:
        """A single pair is marked at the second figure, with the first as its related place."""
        text = "Tube Scarf\nFinished size: 22 in (50 cm) around\n"
        [finding] = found(text, "measurement-disagrees")

        assert text[finding.span.start : finding.span.end] == "50"
        assert [text[place.span.start : place.span.end] for place in finding.related] == ["22"]
        assert finding.message == "22 in is 56 cm, but 50 cm is printed beside it (which is 19¾ in). Which is meant?"

    def test_the_figure_out_of_line_is_marked(self) -> None:
        """In a list it is the figure off the line of its neighbours that is marked, whichever unit comes first."""
        assert said(SIZED + "Around: 20 (25, 24) in / 51 (56, 61) cm\n", "measurement-disagrees") == [
            ("25", "correction", ("M",))
        ]
        assert said(SIZED + "Around: 20 (22, 24) in / 51 (65, 61) cm\n", "measurement-disagrees") == [
            ("65", "correction", ("M",))
        ]

    def test_inside_a_row(self) -> None:
        """A length in the words of a row is looked at as well, and told with its row."""
        text = (
            "Scarf\nSCARF\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\n"
            "Row 2: Ch 1, turn, sc in each sc across. (12 sc)\nRow 3: Rep Row 2 until piece measures 15 in (30 cm).\n"
        )
        [finding] = found(text, "measurement-disagrees")

        assert (finding.part, finding.row) == ("SCARF", "Row 3")

    def test_about_is_rounder(self) -> None:
        """What is "about" so long is asked about where an exact measure would be wrong."""
        assert said("Mat\nSize: about 6 in (16.5 cm) across\n", "measurement-disagrees") == [("16.5", "query", ())]
        assert said("Mat\nSize: 6 in (16.5 cm) across\n", "measurement-disagrees") == [("16.5", "correction", ())]

    def test_two_lists_of_two_things(self) -> None:
        """Two whole lists of which no figure agrees are one question."""
        [finding] = found(SIZED + "Chest: 20 (22, 24) in (81 (86, 91) cm)\n", "measurement-disagrees")

        assert finding.weight.value == "query"

    @pytest.mark.parametrize("row", load_table("measures")["pairs"], ids=lambda row: row["source"])
    def test_published_conversions(self, row: dict[str, Any]) -> None:
        """Every rounding that was met in print is let pass, and is found when two inches are added."""
        for inch, cm in row["pairs"]:
            assert found(f"Mat\nSize: {inch} in ({cm} cm) across\n", "measurement-disagrees") == []
            assert found(f"Mat\nSize: {inch + 2} in ({cm} cm) across\n", "measurement-disagrees")
