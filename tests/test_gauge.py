"""The gauge in its printed shapes; widths, lengths and motifs by the gauge against the finished size."""

from __future__ import annotations

import pytest
from helpers import check

from lint.reading.facts.gauge import Gauge, pattern_gauges


def gauges(text: str) -> tuple[Gauge, ...]:
    """The gauges that a pattern gives."""
    report = check(text)
    return pattern_gauges(report.source.text, report.pattern, report.book.stitches)


def asked(text: str) -> list[tuple[str, tuple[str, ...]]]:
    """What is marked under gauge-disagrees, and in which sizes."""
    report = check(text)
    return [(report.source.slice(f.span), f.sizes) for f in report.findings if f.rule == "gauge-disagrees"]


class TestShapes:
    """How a gauge is printed."""

    @pytest.mark.parametrize(
        ("line", "stitches_in_10_cm", "rows_in_10_cm"),
        [
            ("Tension: 16 sts and 9 rows to 10 cm/4 in", 16, 9),
            ("Tension: 18 tr x 10 rows = 10 cm", 18, 10),
            ('Gauge 4" = 14 sts', 13.8, None),
            ("Gauge: 7 sts = 2 in", 13.8, None),
            ("Gauge: 4 in/10 cm = 14 sts and 8 rows", 13.8, 7.9),
            ("Gauge: A 10 cm (4 in) square = 16 sts and 9 rows", 16, 9),
            ("Gauge: 10 cm in treble = 16 sts", 16, None),
            ("Gauge: 4 sts per inch", 15.7, None),
            ("Gauge: 4 sts and 5 rows to the inch", 15.7, 19.7),
            ("Gauge: 1.6 sts per cm", 16, None),
            ("Gauge: 16 sts x 9 rows / 10 cm", 16, 9),
            ("Gauge: Work 16 sts in 18 rows for a 4-inch square", 15.7, 17.7),
            ("Gauge: 16 sts = 4 in; 9 rows = 4 in", 15.7, 8.9),
            ("Gauge\n16 sts = 10 cm\n9 rows = 8 cm", 16, 11.2),
            ("Gauge swatch: 16 sts = 10 cm", 16, None),
            ("Stitch gauge: 16 sts = 10 cm", 16, None),
            ("Tension square\nTension is 16 sts and 20 rows to 10 cm", 16, 20),
        ],
    )
    def test_printed_shapes(self, line: str, stitches_in_10_cm: float, rows_in_10_cm: float | None) -> None:
        """Stitches and rows are read in every shape that they are printed in, rows with a measure of their own too."""
        (gauge,) = gauges(f"Mat\nUK terms\n{line}\n")

        assert round(gauge.per_cm * 10, 1) == stitches_in_10_cm
        assert (round(gauge.rows_per_cm * 10, 1) if gauge.rows_per_cm else None) == rows_in_10_cm

    @pytest.mark.parametrize(
        "line",
        [
            "Gauge: Rnds 1-3 = 3 in",
            "Gauge: 0 sts = 4 in",
            "Gauge: 16 sts = 0 in",
            "Gauge: 4 in = 0 sts",
            "Gauge: not important",
            "Gauge: 3 shells = 4 in",
            "Gauge: sts per inch",
            "Gauge: 16 sts = 1/0 in",
        ],
    )
    def test_what_is_no_stitch_gauge(self, line: str) -> None:
        """Rounds of a motif, pattern groups and figures of nothing give no gauge in stitches."""
        assert gauges(f"Mat\nUS terms\n{line}\n") == ()


def strip(size: str, rows: int = 40, more: str = "", gauge: str = "15 sc and 20 rows = 4 in") -> str:
    """A flat piece, 8 inches wide and, in 40 rows, 8 long."""
    return (
        f"Plain Strip\nFinished size: {size}\nGauge: {gauge}\n\nSTRIP\nCh 31.\n"
        f"Row 1: Sc in 2nd ch from hook and in each ch across. (30 sc)\n"
        f"Rows 2-{rows}: Ch 1 (does not count as a st), turn, sc in each sc across. (30 sc)\n{more}\n"
    )


class TestLength:
    """Rows by the row gauge against a length."""

    @pytest.mark.parametrize(
        ("size", "marked"),
        [
            ("8 in wide, 8 in long", []),
            ("8 in wide, 12 in long", ["15 sc and 20 rows = 4 in"]),
            ("8 x 8 in", []),
            ("8 x 12 in", ["15 sc and 20 rows = 4 in"]),
            ("12 x 8 in", ["15 sc and 20 rows = 4 in"]),
            ("20 x 20.5 cm", []),
        ],
    )
    def test_flat_piece(self, size: str, marked: list[str]) -> None:
        """40 rows at 20 to 4 in are 8 in long, whichever side of the size they are."""
        assert [words for words, _ in asked(strip(size))] == marked

    @pytest.mark.parametrize(
        "more",
        [
            "Row 41: Rep Row 2 until piece measures 12 in.",
            "Continue in sc until strip measures 12 in.",
            "Repeat Row 2 to desired length.",
            "Fold the strip and sew the sides.",
        ],
    )
    def test_lengths_that_rows_do_not_tell(self, more: str) -> None:
        """A piece that is worked to a measure, or folded, is not as long as its rows say."""
        assert asked(strip("8 x 12 in", more=more)) == []

    def test_rows_of_several_heights(self) -> None:
        """One row gauge says nothing of a piece whose rows are of several stitches."""
        text = strip("8 x 20 in").replace(
            "Rows 2-40: Ch 1 (does not count as a st), turn, sc in each sc across. (30 sc)", "{}"
        )
        mixed = "".join(
            f"Row {n}: Ch {1 if n % 2 else 2} (does not count as a st), turn, {'sc' if n % 2 else 'dc'} in each st across. (30)\n"
            for n in range(2, 42)
        )
        assert asked(text.format(mixed)) == []

    def test_a_tail_of_yarn_is_no_length(self) -> None:
        """A measure of yarn that is left leaves the number of rows what it is."""
        assert asked(strip("8 x 12 in", more="Fasten off, leaving a tail of 10 in."))

    def test_without_row_gauge(self) -> None:
        """Without rows in the gauge no length is reckoned."""
        assert asked(strip("8 x 12 in", gauge="15 sc = 4 in")) == []

    @pytest.mark.parametrize(("tall", "found"), [("9 in tall", False), ("12 in tall", True), ("height 6 in", True)])
    def test_tube(self, tall: str, found: bool) -> None:
        """Rounds of one count make the height of a cowl: 27 at 12 to 4 in are 9 in."""
        text = (
            f"Plain Cowl\nFinished size: 24 in around, {tall}\nGauge: 12 sc and 12 rnds = 4 in\n\nCOWL\n"
            "Ch 72, join with sl st in first ch to form a ring.\n"
            "Rnd 1: Ch 1 (does not count as a st), sc in each ch around; join with sl st in first sc. (72 sc)\n"
            "Rnds 2-27: Ch 1, sc in each sc around; join. (72 sc)\n"
        )
        assert bool(asked(text)) == found


def top(size: str) -> str:
    """A top in three sizes: back and front 15 (17, 19) in wide and 20 (20.8, 21.6) long, sleeves 10 (11, 12) by 12."""

    def piece(name: str, stitches: tuple[int, int, int], last: str) -> str:
        chain = f"{stitches[0] + 1} ({stitches[1] + 1}, {stitches[2] + 1})"
        count = f"{stitches[0]} ({stitches[1]}, {stitches[2]}) sc"
        return (
            f"{name}\nCh {chain}.\nRow 1: Sc in 2nd ch from hook and in each ch across. ({count})\n"
            f"Rows 2-{last}: Ch 1 (does not count as a st), turn, sc in each sc across. ({count})\nFasten off.\n\n"
        )

    return (
        f"Plain Top\nUS terms\nSizes: S (M, L)\nFinished size\n{size}\nGauge: 16 sc and 20 rows = 4 in\n\n"
        + piece("BACK", (60, 68, 76), "100 (104, 108)")
        + piece("FRONT", (60, 68, 76), "100 (104, 108)")
        + piece("SLEEVE (make 2)", (40, 44, 48), "60")
    )


class TestPieces:
    """Measures that name a piece."""

    @pytest.mark.parametrize(
        "size",
        [
            "Chest: 30 (34, 38) in\nLength: 20 (20¾, 21½) in",
            "Back width: 15 (17, 19) in",
            "Width of sleeve: 10 (11, 12) in\nSleeve length: 12 in",
            "Length to armhole: 12 in",
            "To fit chest: 32 (36, 40) in",
        ],
    )
    def test_sound(self, size: str) -> None:
        """Measures that come out by the gauge, in every size, leave nothing to ask; nor do those of a part of a length."""
        assert asked(top(size)) == []

    @pytest.mark.parametrize(
        ("size", "marked", "sizes"),
        [
            ("Chest: 30 (36, 38) in", "36", ("M",)),
            ("Back width: 15 (17, 21) in", "21", ("L",)),
            ("Back length: 20 (20¾, 24) in", "24", ("L",)),
            ("Length: 24 (20¾, 21½) in", "24", ("S",)),
            ("Sleeve length: 15 in", "16 sc and 20 rows = 4 in", ()),
            ("Width of sleeve: 10 (13, 12) in", "13", ("M",)),
        ],
    )
    def test_faulty(self, size: str, marked: str, sizes: tuple[str, ...]) -> None:
        """The size that does not come out is marked; where none does, the gauge is."""
        assert asked(top(size)) == [(marked, sizes)]

    @pytest.mark.parametrize(
        ("line", "marked"),
        [
            ("Finished bust: 30 (34, 38) in", []),
            ("Finished bust: 30 (36, 38) in", [("36", ("M",))]),
            ("Length: 20 (20¾, 24) in", [("24", ("L",))]),
        ],
    )
    def test_a_measure_in_a_line_of_its_own(self, line: str, marked: list[tuple[str, tuple[str, ...]]]) -> None:
        """A measure behind the gauge, under no heading but its own name, is held against it as well."""
        text = top("To fit chest: 32 (36, 40) in").replace("rows = 4 in\n", f"rows = 4 in\n{line}\n")
        assert asked(text) == marked

    def test_two_figures_out(self) -> None:
        """Two measures that are out in one size each are two questions."""
        assert len(asked(top("Chest: 30 (36, 38) in\nSleeve length: 12 (12, 15) in"))) == 2

    @pytest.mark.parametrize(("bust", "found"), [("30 (34, 38)", False), ("30 (34, 42)", True)])
    def test_body_in_rounds(self, bust: str, found: bool) -> None:
        """A body worked in rounds is as wide around as its stitches."""
        text = (
            f"Top\nSizes: S (M, L)\nFinished size\nFinished bust: {bust} in\nGauge: 16 sc = 4 in\n\nBODY\n"
            "Ch 120 (136, 152), join with sl st in first ch to form a ring.\n"
            "Rnd 1: Ch 1 (does not count as a st), sc in each ch around; join with sl st in first sc. (120 (136, 152) sc)\n"
            "Rnds 2-20: Ch 1, sc in each sc around; join. (120 (136, 152) sc)\n"
        )
        assert bool(asked(text)) == found


def throw(size: str, gauge: str, more: str = "") -> str:
    """A throw of six by eight squares."""
    return (
        f"Fen Throw\nUS terms\nFinished size: {size}\nGauge: {gauge}\n\nSQUARE (make 48)\nMake a magic ring.\n"
        "Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st in top of ch-3. (12 dc)\n"
        f"\nFINISHING\nSew the squares together, 6 squares across and 8 squares down.\n{more}\n"
    )


class TestMotifs:
    """A motif's size times the layout against the finished size."""

    @pytest.mark.parametrize(
        ("size", "gauge", "more"),
        [
            ("30 x 40 in", "Each square = 5 in", ""),
            ("40 x 30 in", "1 square measures 5 in", ""),
            ("76 x 101.5 cm", "One square = 12.5 cm (5 in)", ""),
            ("33 x 43 in", "Each square = 5 in", "Border: work 4 rnds of sc around."),
            ("30 x 40 in", "16 sts = 4 in", ""),
            ("30 x 40 in", "Square: 5 x 5 in", ""),
        ],
    )
    def test_sound(self, size: str, gauge: str, more: str) -> None:
        """Six by eight squares of five inches are 30 by 40, either way round, and a border makes them larger."""
        assert asked(throw(size, gauge, more)) == []

    @pytest.mark.parametrize(
        ("size", "gauge", "more", "says"),
        [
            ("36 x 48 in", "Each square = 5 in", "", "6 motifs at 5 in each are 30 in wide"),
            ("40 x 36 in", "1 square measures 5 in", "", "6 motifs at 5 in each are 30 in wide"),
            ("76 x 111.5 cm", "One square = 12.5 cm (5 in)", "", "8 motifs at 12.5 cm each are 100 cm long"),
            ("26 x 40 in", "Each square = 5 in", "Border: work 2 rnds of sc around.", "6 motifs at 5 in each"),
        ],
    )
    def test_faulty(self, size: str, gauge: str, more: str, says: str) -> None:
        """A finished size that so many motifs do not make, or that is less than theirs, is asked about."""
        [finding] = [f for f in check(throw(size, gauge, more)).findings if f.rule == "gauge-disagrees"]

        assert says in finding.message


def disc(size: str, gauge: str) -> str:
    """A mat of four rounds."""
    rounds = "".join(
        f"Rnd {n}: *{f'sc in next {n - 2} sc, ' if n > 2 else ''}2 sc in next sc; rep from * 5 more times. ({6 * n} sc)\n"
        for n in range(2, 5)
    )
    return f"Mat\nUS terms\nFinished size: {size}\nGauge: {gauge}\n\nMAT\nRnd 1: 6 sc in magic ring. (6 sc)\n{rounds}"


class TestFirstRounds:
    """A gauge of the first rounds of a motif."""

    @pytest.mark.parametrize(
        ("size", "gauge", "says"),
        [
            ("4 in across", "Rnds 1-3 = 3 in", None),
            ("4 in across", "Rnds 1–4 = 4 in across", None),
            ("10 cm (4 in) in diameter", "First 2 rnds = 5 cm", None),
            ("4 in across", "Rnds 1-3 = 5 in", "The first 3 of 4 rounds at the gauge are 5 in across"),
            ("6 in across", "Rnds 1-4 = 4 in", "All 4 rounds at the gauge are 4 in across"),
            (
                "10 cm (4 in) in diameter",
                "First 2 rnds measure 12 cm",
                "The first 2 of 4 rounds at the gauge are 12 cm",
            ),
            ("4 in across", "Rnds 1-9 = 9 in", None),
        ],
    )
    def test_rounds(self, size: str, gauge: str, says: str | None) -> None:
        """Some rounds are less wide than all of them, and all of them as wide as the whole."""
        found = [f.message for f in check(disc(size, gauge)).findings if f.rule == "gauge-disagrees"]

        assert len(found) == (says is not None)
        assert says is None or found[0].startswith(says)
