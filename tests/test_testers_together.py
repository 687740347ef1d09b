"""All testers together: gauge and hook, yarn, measures, sizes and rows that nobody covered, names left out."""

from __future__ import annotations

import pytest
from testers_help import HAT, inspected, kinds, reviewed

from lint.reports.testers_data import as_csv, as_data
from lint.reports.testers_page import as_testers_page

GAUGE = "Swatch\nUS terms\nMaterials: worsted yarn; 6 mm hook\nGauge: 12 sc and 15 rows = 4 in [10 cm]\n\nRow 1: Ch 11, sc in 2nd ch from hook and in each ch across. (10 sc)\n"


class TestGauge:
    """More stitches than the gauge: larger hook; fewer: smaller (published gauge lessons)."""

    @pytest.mark.parametrize(
        ("got", "fit", "hook"),
        [
            ("Gauge: 14 sc to 4 in with a 5 mm hook", "more", 6.0),
            ("Gauge: 9 sc to 4 in with a 6 mm hook", "fewer", 4.5),  # 6 mm suggested, 4.5 mm needed: a published test
            ("Gauge: 12 sc to 10 cm with a 6 mm hook", "meets", None),
            ("Gauge: 13 sc and 15 rows to 4 inches, I/9 hook", "more", 6.0),  # measured on an I/9 in a published test
            ("Swatch: 6 sc x 8 rows in 2 in, hook 6.5 mm", "meets", None),
            ("Gauge: 2 in = 6 sc", "meets", None),
            ("tension 4 inches 14 stitches, 5mm", "more", 6.0),
        ],
    )
    def test_hook_that_would_meet_it(self, got: str, fit: str, hook: float | None) -> None:
        """The gauge got beside the gauge stated, and the hook that would come near it."""
        (line,) = reviewed(GAUGE, mia_eml=got).together.gauges

        assert (line.fit, line.hook) == (fit, hook)

    def test_rows_and_hook_of_a_table(self) -> None:
        """Columns of stitches, rows and hook make one gauge, in whatever words."""
        table = "Tester;Tension rows (10 cm);Hook used;Sts per 10 cm;Row;Count\nMia;15;J-10;12,5;1;10\n"
        (line,) = reviewed(GAUGE, t_csv=table).together.gauges

        assert (line.stitches, line.rows, line.got.hook_mm) == (12.5, 15, 6.0)


class TestYarn:
    """Yarn used against yarn stated."""

    def test_more_than_stated(self) -> None:
        """Twice what is stated, as in a published test (200 by the designer, 400 by testers): raise the amount?"""
        pattern = GAUGE.replace("worsted yarn", "worsted yarn, 200 yd")
        review = reviewed(pattern, mia_eml="I used 400 yd of yarn\n", bea_eml="Yarn used: 390 yards\n")

        assert kinds(review) == ["yarn-more"]
        assert [line.most for line in review.together.yarn] == [pytest.approx(400 * 0.9144)]

    def test_by_size(self) -> None:
        """Each size has an amount of its own; a tester of the second size who needs 110 g has enough."""
        review = reviewed(HAT, mia_eml="Size: M\nused 110 g of yarn\n", bea_eml="Size: S\nused 110 g of yarn\n")

        assert {line.size: (line.stated, line.more) for line in review.together.yarn} == {
            0: (100, True),
            1: (120, False),
        }

    def test_balls(self) -> None:
        """Balls are as many grams and metres as a ball is said to hold."""
        pattern = GAUGE.replace("worsted yarn", "worsted yarn, 50 g / 85 m balls: 3 balls")
        review = reviewed(
            pattern, mia_eml="used 160 g of yarn", bea_eml="went through 2.5 balls", cy_eml="used 250 m of yarn"
        )

        assert {line.unit: (line.stated, line.more) for line in review.together.yarn} == {
            "g": (150, True),
            "ball": (3, False),
            "m": (255, False),
        }


STATED = {  # what materials say: grams and metres in all, in the second of three sizes
    "DK yarn, 1 (2: 2) x 50 g balls (120 m per ball)": {"ball": 2, "g": 100, "m": 240},
    "DK yarn, 2 (3, 3) skeins of Moorland DK (50 g / 120 m)": {"ball": 3, "g": 150, "m": 360},
    "DK yarn (50g/105m) x 4 (5: 5) balls": {"ball": 5, "g": 250, "m": 525},
    "DK 100g balls: 3 (3, 4)": {"ball": 3, "g": 300},
    "4 mm hook, 3 x 100 g skeins in A, 1 x 100 g skein in B": {"ball": 4, "g": 400},
    "260 (280, 300) g DK yarn (230 m per 100 g)": {"g": 280},
    "110 (130, 150) m / 120 (142, 164) yds of DK yarn": {"m": 130},
    "about 250 m DK yarn": {"m": 250},
}


@pytest.mark.parametrize("words", STATED)
def test_yarn_stated_in_all_shapes(words: str) -> None:
    """Amounts a size and in all, with or without what a ball holds; what a ball holds is never taken for the whole."""
    from lint.testers.stated import figures_of

    pattern = HAT.replace("DK yarn, 100 (120, 140) g; 4.5 mm hook", words)
    yarn = figures_of(inspected(pattern)).yarn

    assert {unit: amounts[1] for unit, amounts in yarn.items()} == STATED[words]


def test_measures() -> None:
    """Finished measures beside those stated for the size, by the words that say of what."""
    review = reviewed(HAT, mia_eml="Size: L\nAround: 51 cm\nDepth 20 cm\n")

    assert {line.what: (line.stated, line.off) for line in review.together.measures} == {
        "around": (55, True),
        "deep": (20, False),
    }


def test_nobody_covered() -> None:
    """Sizes that nobody made and rows that nobody counted are told."""
    review = reviewed(HAT, mia_eml="Size: M\nPart: Crown\nRnds 1-8 all fine\n")

    assert [review.names.sizes[size] for size in review.together.untested] == ["S", "L"]
    rows = review.report.ledger.rows
    assert {(rows[index].part.name, rows[index].label) for index in review.together.uncounted} == {
        ("BRIM", "Rnd 1"),
        ("BRIM", "Rnd 2"),
    }


def test_places_with_remarks_come_in_the_order_of_the_pattern() -> None:
    """Typing errors and unclear places are collected by place, those of one place together."""
    review = reviewed(
        HAT,
        mia_eml='Size: M\nTypo in Crown Rnd 4: "nxt"\nCrown Rnd 2 is unclear\n',
        bea_eml="Size: S\nI wasn't sure about Crown Rnd 2\n",
    )

    found = [(point.kind, point.index, point.testers) for point in review.points if point.remarks]
    assert found == [("unclear", 1, ("Mia", "Bea")), ("typo", 3, ("Mia",))]


def test_open_points_come_first() -> None:
    """What is open stands before slips and notes."""
    review = reviewed(
        HAT, mia_eml="Size: M\nCrown Rnd 3: 20\nlovely!\nCrown Rnd 2 is unclear\n", bea_eml="Size: M\nCrown Rnd 3: 21\n"
    )

    opens = [point.open for point in review.points]
    assert opens == sorted(opens, reverse=True) and True in opens and False in opens


def test_names_can_be_left_out() -> None:
    """With initials no name of a tester stands anywhere in what is given out, file names and quoted words included."""
    review = reviewed(
        HAT,
        hide_names=True,
        moth_eml="From: Mia Moth <mia@example.org>\nSize: M\nCrown Rnd 3: 20\nBest wishes from Mia to all\n",
        t_csv="Row;Part;Mia Moth (M);Max Mole (S)\n4;Crown;27;24\n",
    )

    shown = as_testers_page(review) + as_csv(review) + str(as_data(review))
    assert "MM" in review.testers and "MM2" in review.testers
    for name in ("Mia", "Moth", "Mole", "moth.eml"):
        assert name not in shown
