"""Figures over the sizes: the one off the line, the one that falls, in measures of every shape and in what parts are made of."""

from __future__ import annotations

import pytest
from helpers import check

from lint.checks.lines import ascending, fall, stray, stray_count

NINE = "1 (2, 3, 4, 5, 6, 7, 8, 9)"


def points(text: str, *rules: str) -> list[tuple[str, str, tuple[str, ...]]]:
    """Rule, marked words and sizes of what is found under some rules."""
    report = check(text)
    wanted = rules or ("size-step-broken", "measurement-disagrees")
    return [(f.rule, report.source.slice(f.span), f.sizes) for f in report.findings if f.rule in wanted]


class TestPublishedTable:
    """A published size block (Pope Knits, Heaven Cardigan) as it can be set; its three slips and no more are found."""

    BUST = ("86 94 102 110 118 124 134 142 150", "34.5 37.5 40.75 44 47.25 49.5 53.5 56.75 60")
    ARM = ("35 39 43 45 49 52 55 59 63", "14 16.5 17.25 18 19.5 20.75 22 23.5 25.25")
    FOUND = [
        ("measurement-disagrees", "16.5", ("2",)),
        ("measurement-disagrees", "60", ()),
        ("size-step-broken", "124", ("6",)),
    ]

    @staticmethod
    def bracketed(figures: str) -> str:
        """ "86 (94, 102 …)"."""
        first, *rest = figures.split()
        return f"{first} ({', '.join(rest)})"

    def lines(self, form: str) -> str:
        """The block in one of its forms."""
        out = []
        for name, (cm, inch) in (("Bust", self.BUST), ("Upper arm", self.ARM)):
            if form == "one line":
                out.append(f"{name}: {self.bracketed(cm)} cm / {self.bracketed(inch)} in")
            elif form == "two lines":
                out.append(f"{name}: {self.bracketed(cm)} cm\n{self.bracketed(inch)} in")
            elif form == "unit in the label":
                out.append(f"{name} (cm): {self.bracketed(cm)}\n{name} (in): {self.bracketed(inch)}")
            else:
                sign = "\t" if form == "tabs" else " | "
                out.append(f"{name} cm{sign}{sign.join(cm.split())}\n{name} in{sign}{sign.join(inch.split())}")
        return "\n".join(out)

    @pytest.mark.parametrize("form", ["one line", "two lines", "unit in the label", "tabs", "bars"])
    def test_in_every_form(self, form: str) -> None:
        """In lists on one line or two, and in tables whose unit stands in the first column."""
        text = f"Plain Cardigan\nSizes: {NINE}\nMeasurements\n{self.lines(form)}\n"

        assert sorted(points(text)) == self.FOUND

    def test_unit_over_the_table(self) -> None:
        """A table whose unit stands over it is read as well."""
        rows = "\t".join(self.BUST[0].split())
        text = f"Plain Cardigan\nSizes: {NINE}\nMeasurements\nAll measurements are in cm\nBust\t{rows}\n"

        assert points(text) == [("size-step-broken", "124", ("6",))]


def panel(sizes: str, stitches: str, rows: str = "2-20") -> str:
    """A panel whose start chain is one more than its stitches, in bracketed lists."""
    chain = ", ".join(str(int(number) + 1) for number in stitches.split())
    first, rest = chain.split(", ", 1)
    one, others = stitches.split(" ", 1)
    count = f"{one} ({others.replace(' ', ', ')}) sc"
    return (
        f"Panel\nUS terms\nSizes: {sizes}\nPANEL\nCh {first} ({rest}).\n"
        f"Row 1: Sc in 2nd ch from hook and in each ch across. ({count})\n"
        f"Rows {rows}: Ch 1, turn, sc in each sc across. ({count})\n"
    )


class TestWorked:
    """What parts start and end with, and how many rows they have."""

    FIVE = "S (M, L, XL, 2X)"

    @pytest.mark.parametrize(
        ("sizes", "stitches"),
        [
            ("S (M, L, XL)", "172 196 220 244"),  # Simply Crochet, correction to issue 54: chains 24 apart
            (FIVE, "20 24 32 32 36"),  # off by one unit of 4: as a repeat falls
            (FIVE, "40 44 48 56 64"),  # steps that grow with the sizes
            (FIVE, "60 66 70 76 82"),
            ("S (M, L)", "40 46 46"),
        ],
    )
    def test_starts_that_are_meant(self, sizes: str, stitches: str) -> None:
        """Even steps, repeats that fall unevenly, and equal sizes leave nothing to ask."""
        assert points(panel(sizes, stitches)) == []

    @pytest.mark.parametrize(
        ("sizes", "stitches", "marked", "size"),
        [
            (FIVE, "40 44 48 62 56", "62", "XL"),
            (FIVE, "100 110 120 137 140", "137", "XL"),
            ("S (M, L)", "40 52 46", "46", "L"),
            ("S (M, L, XL)", "172 220 196 244", "196", "L"),
        ],
    )
    def test_starts_off_the_line(self, sizes: str, stitches: str, marked: str, size: str) -> None:
        """One size off the line of all others, or two that changed places, is one question, though every row comes out."""
        chain = str(int(marked) + 1)  # the start chain is printed first
        assert points(panel(sizes, stitches)) == [("size-step-broken", chain, (size,))]

    @pytest.mark.parametrize(
        ("rows", "found"),
        [
            ("2-20 (24, 28, 32)", []),
            ("2-20 (20, 24, 24)", []),
            ("2-20 (24, 38, 32)", [("38", "L")]),
            ("2-20 (28, 24, 32)", [("24", "L")]),
        ],
    )
    def test_numbers_of_rows(self, rows: str, found: list[tuple[str, str]]) -> None:
        """The number of rows over the sizes is looked at in the label's list."""
        text = panel("S (M, L, XL)", "40 44 48 52", rows)

        assert points(text) == [("size-step-broken", words, (size,)) for words, size in found]

    def test_published_groups_pass(self) -> None:
        """Groups of a published correction, a step of 4 between its two largest sizes (Simply Crochet, correction to issue 54)."""
        for groups in ("31 35", "32 36", "28 32"):
            assert points(panel("L (XL)", groups)) == []


class TestFalls:
    """Measures that must not fall."""

    @pytest.mark.parametrize(
        ("sizes", "line", "found"),
        [
            ("S (M, L)", "Finished bust: 34 (38, 42) in", []),
            ("S (M, L)", "Finished bust: 34 (42, 38) in", [("38", "L")]),
            ("S (M)", "Finished bust: 38 (34) in", [("34", "M")]),
            ("S (M, L, XL)", "Length: 20 (21, 20, 22) in", [("20", "L")]),
            ("S (M, L, XL)", "Length: 20 (20, 20, 21) in", []),
            ("XL (L, M, S)", "Finished bust: 48 (44, 40, 36) in", []),
            ("S (M, L, XL)", "Neck depth: 3 (3, 2½, 3½) in", []),
            ("Willow (Ash)", "Finished bust: 38 (34) in", []),
        ],
    )
    def test_measures(self, sizes: str, line: str, found: list[tuple[str, str]]) -> None:
        """Round and along the body a larger size is not smaller; depths may be, and sizes may run downwards."""
        text = f"Vest\nSizes: {sizes}\nFinished measurements\n{line}\n"

        assert points(text) == [("size-step-broken", words, (size,)) for words, size in found]

    def test_message(self) -> None:
        """What is said names both sizes."""
        report = check("Vest\nSizes: S (M, L)\nFinished measurements\nFinished bust: 34 (42, 38) in\n")
        [finding] = [f for f in report.findings if f.rule == "size-step-broken"]

        assert finding.message == "38 for size L is less than the 42 for size M. Is it meant so?"


class TestColumns:
    """Size tables with a line for each size."""

    @pytest.mark.parametrize(
        "form",
        [
            "Size | Bust | Length\nS | {} in | 20 in\nM | {} in | 21 in\nL | {} in | 22 in",
            "Size\tBust (in)\tLength (in)\nS\t{}\t20\nM\t{}\t21\nL\t{}\t22",
            "S: bust {} in, length 20 in\nM: bust {} in, length 21 in\nL: bust {} in, length 22 in",
            'S - {}" bust\nM - {}" bust\nL - {}" bust',
        ],
    )
    def test_in_every_form(self, form: str) -> None:
        """A column is read over its lines, and the figure that falls is marked in its own."""
        head = "Vest\nUS terms\nSizes: S (M, L)\nFinished measurements\n"

        assert points(head + form.format(34, 38, 42) + "\n") == []
        if "bust\nM" not in form:  # a bare word behind the figure says nothing of what it is
            assert points(head + form.format(34, 42, 38) + "\n") == [("size-step-broken", "38", ("L",))]

    @pytest.mark.parametrize(
        "table", ["S | 34\nM | 38", "S | 34 in\nM |\nL | 42 in", "S | x in\nM | y in\nL | z in", "S\nM\nL"]
    )
    def test_tables_that_lack_something(self, table: str) -> None:
        """Lines without a figure, a unit or a size are no table."""
        assert points(f"Vest\nSizes: S (M, L)\nFinished measurements\nBust\n{table}\n") == []


class TestLines:
    """The arithmetic by itself."""

    def test_stray(self) -> None:
        """The figure that breaks an otherwise straight line is told with what the line has in its place."""
        found = stray([86, 94, 102, 110, 118, 124, 134, 142, 150], 0.75, 3.2)

        assert found is not None
        assert (found.index, found.line) == (5, 126)

    @pytest.mark.parametrize(
        ("values", "index"),
        [
            ([41, 43, 46, 48, 57], 4),  # three times any step before it
            ([13, 15, 17, 19, 24], 4),  # two and a half times steps that are all even
            ([9, 9.5, 10, 10, 10.5, 12], 5),  # the others rise, and lie on no line
            ([80, 90, 93, 96, 99], 0),
            ([44, 46, 48, 51, 58], None),  # steps grow towards the large sizes
            ([20, 26, 24, 25, 40], None),  # no order to leave
            ([10, 12, 14, 19], None),  # too few sizes to tell
        ],
    )
    def test_a_leap_at_an_end(self, values: list[float], index: int | None) -> None:
        """The first or last step of a list that is far larger than any other is a question, a wide one is not."""
        found = stray(values, 0.3, 1.25)

        assert (found.index if found is not None else None) == index

    @pytest.mark.parametrize("values", [[], [1], [None, 1, 2, 3], [3, 3, 3, 3], [10**30] * 5])
    def test_nothing_to_tell(self, values: list[int | None]) -> None:
        """Lists of nothing, of unknown figures and of equal ones have no line to leave."""
        assert stray(values, 0.0, 1.0) is stray_count(values) is fall(values, strict=False) is None

    @pytest.mark.parametrize(
        ("names", "rising"),
        [
            (("S", "M", "L", "XL", "2X"), True),
            (("2", "4", "6"), True),
            (("0-3 mos", "3-6 mos", "6-12 mos"), True),
            (("Small", "Medium", "Large"), True),
            (("L", "M", "S"), False),
            (("Willow", "Ash"), False),
            ((), True),
        ],
    )
    def test_order_of_sizes(self, names: tuple[str, ...], rising: bool) -> None:
        """Sizes run upwards by their usual names, or by their numbers; other names tell nothing."""
        assert ascending(names) is rising


def test_one_figure_is_asked_about_once() -> None:
    """A width that leaves the line of the sizes and is not what the gauge makes is one question, with both places."""
    rows = "Rows 2-9: Ch 1 (does not count as a st), turn, sc in each sc across. (40 (44, 48, 52, 56) sc)\n"
    text = (
        "Panel\nUS terms\nSizes: S (M, L, XL, 2X)\nFinished size: 10 (11, 16, 13, 14) in wide\nGauge: 16 sc = 4 in\n\n"
        "PANEL\nCh 41 (45, 49, 53, 57).\nRow 1: Sc in 2nd ch from hook and in each ch across. (40 (44, 48, 52, 56) sc)\n"
        + rows
    )
    report = check(text)
    found = [f for f in report.findings if f.rule in ("size-step-broken", "gauge-disagrees")]

    assert [(f.rule, report.source.slice(f.span), f.sizes) for f in found] == [("size-step-broken", "16", ("L",))]
    assert "the gauge" in [place.label for place in found[0].related]
