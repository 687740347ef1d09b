"""Measures: inches against centimetres, gauge against the finished size, and figures that leave their line."""

from __future__ import annotations

from typing import Any

import pytest
from helpers import check, load_table

from lint.reading.facts.measures import number


def found(text: str, rule: str) -> list[Any]:
    """The findings of one rule on a text."""
    return [finding for finding in check(text).findings if finding.rule == rule]


def said(text: str, rule: str) -> list[tuple[str, str, tuple[str, ...]]]:
    """Marked words, weight and sizes of the findings of one rule."""
    report = check(text)
    return [(report.source.slice(f.span), f.weight.value, f.sizes) for f in report.findings if f.rule == rule]


SIZED = "Tube Scarf\nSizes: S (M, L)\n"


@pytest.mark.parametrize(
    ("printed", "value"),
    [
        ("7½", 7.5),
        ("7 1/2", 7.5),
        ("7-1/2", 7.5),
        ("7,5", 7.5),
        ("-", None),
        ("1/0", None),
        ("9" * 400, None),
        ("", None),
    ],
)
def test_numbers(printed: str, value: float | None) -> None:
    """Numbers as they are printed; a dash, a fraction of nothing and digits beyond all measure are none."""
    assert number(printed) == value


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


def tube(gauge: str, size: str, stitches: str = "72", sizes: str = "") -> str:
    """A cowl worked around in one count, under a gauge and a finished size."""
    each = f"sc in each sc around; join. ({stitches} sc)"
    return (
        f"Plain Cowl\n{sizes}Finished size: {size}\nGauge: {gauge}\n\nCOWL\n"
        f"Ch {stitches}, join with sl st in first ch to form a ring.\n"
        f"Rnd 1: Ch 1 (does not count as a st), sc in each ch around; join with sl st in first sc. ({stitches} sc)\n"
        f"Rnds 2-9: Ch 1, {each}\n"
    )


def strip(gauge: str, size: str, stitches: int = 30) -> str:
    """A flat piece of one width."""
    return (
        f"Plain Strip\nFinished size: {size}\nGauge: {gauge}\n\nSTRIP\nCh {stitches + 1}.\n"
        f"Row 1: Sc in 2nd ch from hook and in each ch across. ({stitches} sc)\n"
        f"Rows 2-9: Ch 1 (does not count as a st), turn, sc in each sc across. ({stitches} sc)\n"
    )


class TestGauge:
    """gauge-disagrees."""

    @pytest.mark.parametrize(
        "gauge",
        [
            "{n} sts and 14 rows = 4 in / 10 cm",
            "{n} sc to 4 in",
            "{n} sc x 14 rnds = 4 inches (10 cm)",
            "{n} sts over 10 cm",
            "10 cm (4 in) = {n} sc x 14 rnds",
            "10 cm: 14 rows/{n} sts",
            '14 rnds and {n} sts in a 4" square',
            "14 rnds = 4 in (10 cm); {n} sc = 4 in (10 cm)",
            "{n} single crochet and 14 rounds measure approx 4 inches square",
            "{n},0 sts per 10 cm",
        ],
    )
    def test_printed_shapes(self, gauge: str) -> None:
        """A gauge is read in every shape it is printed in, and held against the size around."""
        assert found(tube(gauge.format(n=12), "24 in (61 cm) around"), "gauge-disagrees") == []
        assert len(found(tube(gauge.format(n=16), "24 in (61 cm) around"), "gauge-disagrees")) == 1

    def test_small_gauge(self) -> None:
        """Stitches to one inch are a gauge as well."""
        assert found(tube("3 sts = 1 inch", "Circumference: 24 in"), "gauge-disagrees") == []
        assert len(found(tube("4 sts = 1 inch", "Circumference: 24 in"), "gauge-disagrees")) == 1

    @pytest.mark.parametrize(
        ("gauge", "size"),
        [
            ("16 dc and 8 rows = 4 in", "24 in around"),
            ("16 sts of pattern repeat = 4 in", "24 in around"),
            ("Rnds 1-3 = 4 in across", "24 in around"),
            ("8 rows of 3 shells = 4 in", "24 in around"),
            ("16 sc = 4 in", "8 in tall"),
            ("16 sc = 4 in", "24 in around the neck"),
            ("16 sc = 4 in", "24 in around, 30 in around when stretched to the shoulders; ring 6 in around"),
            ("12½ sc = 4 in", "24 in around"),
            ("12 sc = 4 in (10 cm)", "60 cm (23½ in) around"),
            ("16 sc or, with the larger hook, 12 sc = 4 in", "24 in around"),
        ],
    )
    def test_silent_where_not_clear(self, gauge: str, size: str) -> None:
        """Gauges of another stitch, figures of other things, and measures of a place say nothing."""
        assert found(tube(gauge, size), "gauge-disagrees") == []

    def test_one_size_out(self) -> None:
        """Where one size alone does not fit, its figure is marked, not the gauge."""
        text = tube("12 sc = 4 in", "20 (24, 32) in around", "60 (72, 84)", "Sizes: S (M, L)\n")

        assert said(text, "gauge-disagrees") == [("32", "query", ("L",))]

    def test_is_asked_in_plain_words(self) -> None:
        """The message does the sum for the designer, and asks which figure is meant otherwise."""
        [finding] = found(tube("16 sc = 4 in (10 cm)", "24 in (61 cm) around"), "gauge-disagrees")

        assert finding.weight.value == "query"
        assert finding.message.startswith("72 sts at 16 sts to 4 in are 18 in around, but the finished size is 24 in.")

    def test_flat_piece(self) -> None:
        """A flat piece of one count is held against its width, and with two unnamed sides against either."""
        assert found(strip("15 sc = 4 in", "8 in wide, 20 in long"), "gauge-disagrees") == []
        assert found(strip("15 sc = 4 in", "20 x 8 in"), "gauge-disagrees") == []
        assert len(found(strip("15 sc = 4 in", "6 in wide, 20 in long"), "gauge-disagrees")) == 1

    @pytest.mark.parametrize("row", load_table("measures")["widths"], ids=lambda row: row["source"])
    def test_published_arithmetic(self, row: dict[str, Any]) -> None:
        """Published sums of stitches from gauge and width pass, and do not with a quarter more width."""
        gauge = f"{row['sts']} sc to {row['over']} in"

        assert found(strip(gauge, f"{row['width']} in wide", row["stitches"]), "gauge-disagrees") == []
        assert found(strip(gauge, f"{row['width'] * 1.25:g} in wide", row["stitches"]), "gauge-disagrees")

    def test_back_and_front(self) -> None:
        """The chest of a pullover in two alike pieces is twice the width of one; a body measure is left alone."""
        rows = (
            "Ch 61.\nRow 1: Sc in 2nd ch from hook and in each ch across. (60 sc)\n"
            "Rows 2-20: Ch 1 (does not count as a st), turn, sc in each sc across. (60 sc)\n"
        )
        for size, times in (("Chest: 30 in", 0), ("Chest: 36 in", 1), ("To fit chest: 36 in", 0)):
            text = f"Vest\nFinished size\n{size}\nGauge: 16 sc = 4 in\n\nBACK\n{rows}\nFRONT\n{rows}"

            assert len(found(text, "gauge-disagrees")) == times


def graded(line: str, sizes: str = "S (M, L, XL, 2X)") -> list[tuple[str, str, tuple[str, ...]]]:
    """What is said of a line in five sizes."""
    return said(f"Plain Vest\nSizes: {sizes}\n{line}\n", "size-step-broken")


class TestSteps:
    """size-step-broken."""

    @pytest.mark.parametrize("row", load_table("measures")["graded"], ids=lambda row: row["source"])
    def test_published_tables_pass(self, row: dict[str, Any]) -> None:
        """Measures of published size tables, unevenly rounded as they are, are left alone."""
        names = [f"size {number}" for number in range(1, len(row["values"]) + 1)]
        first, *rest = row["values"]
        line = f"Finished chest: {first} ({', '.join(str(value) for value in rest)}) {row['unit']}"

        assert graded(line, f"{names[0]} ({', '.join(names[1:])})") == []

    @pytest.mark.parametrize("table", load_table("measures")["tables"], ids=lambda table: table["source"])
    def test_whole_published_tables(self, table: dict[str, Any]) -> None:
        """Of a published size table exactly that is found which a technical editor finds."""
        lines = "\n".join(table["lines"])
        text = f"Plain Pullover\nSizes: 1 (2, 3, 4, 5, 6, 7, 8, 9)\nFinished measurements\n{lines}\n"
        rules = ("size-step-broken", "measurement-disagrees")
        points = [[rule, words] for rule in rules for words, _, _ in said(text, rule)]

        assert sorted(points) == sorted(table["found"])

    def test_published_start_chains_pass(self) -> None:
        """A published correction's start chains, 24 apart throughout, leave nothing to ask (Simply Crochet, correction to issue 54)."""
        text = (
            "Wrap\nSizes: S (M, L, XL)\nBACK\nCh 173 (197, 221, 245).\n"
            "Row 1: Sc in 2nd ch from hook and in each ch across. (172 (196, 220, 244) sc)\n"
        )

        assert [finding.rule for finding in check(text).findings if finding.rule != "section-missing"] == []

    @pytest.mark.parametrize(
        "line",
        [
            "Chest: 30 (32, 36, 40, 44) in",
            "Length: 20 (20, 20¾, 20¾, 21¼) in",
            "Chest: 81 (86, 91, 102, 112) cm",
            "Chest: 32 (36, 40, 44, 50) in",
            "Neck depth: 3 (3, 3, 2, 2) in",
            "Sew the 9 (10, 11, 13, 13) sts together.",
            "Sew the 40 (44, 46, 52, 56) sts together.",
        ],
    )
    def test_uneven_steps_pass(self, line: str) -> None:
        """Smaller steps between small sizes, equal sizes, and roundings are normal."""
        assert graded(line) == []

    def test_one_size_off_the_line(self) -> None:
        """A figure a step off the line of all others is asked about, in its size."""
        assert graded("Chest: 32 (36, 44, 44, 48) in") == [("44", "query", ("L",))]
        assert graded("Chest: 81 (91, 101, 111, 21) cm") == [("21", "query", ("2X",))]
        assert graded("Sew the 40 (44, 48, 62, 56) sts together.") == [("62", "query", ("XL",))]

    def test_a_wrong_conversion_is_said_once(self) -> None:
        """A figure that disagrees with its other unit is not asked about twice."""
        assert graded("Chest: 32 (36, 46, 44, 48) in (81 (91.5, 101.5, 112, 122) cm)") == []

    def test_rows_that_agree_are_trusted(self) -> None:
        """Counts of rows that come out as printed are the design's own."""
        text = (
            "Vest\nSizes: S (M, L, XL, 2X)\nPANEL\nCh 21 (25, 33, 33, 37).\n"
            "Row 1: Sc in 2nd ch from hook and in each ch across. (20 (24, 32, 32, 36) sc)\n"
        )
        assert found(text, "size-step-broken") == []
