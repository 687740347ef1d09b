"""Pieces over the sizes: multiples, left and right, side seams, sleeves in armholes, what a part goes on with."""

from __future__ import annotations

import pytest
from helpers import check

RULES = {
    "multiple-does-not-fit",
    "pieces-do-not-mirror",
    "edges-differ",
    "armhole-sleeve-differs",
    "stitches-told-differ",
    "row-parity-differs",
}


def asked(text: str) -> list[tuple[str, tuple[str, ...]]]:
    """Rule and sizes of what is asked about the pieces."""
    return [(f.rule, f.sizes) for f in check(text).findings if f.rule in RULES]


def piece(name: str, stitches: str, rows: str = "2-20", more: str = "") -> str:
    """A piece of one width: its stitches and rows are one figure, or bracketed lists over the sizes."""
    figures = [int(figure) + 1 for figure in stitches.replace("(", " ").replace(")", " ").replace(",", " ").split()]
    chain = str(figures[0]) + (f" ({', '.join(map(str, figures[1:]))})" if len(figures) > 1 else "")
    return (
        f"{name}\nCh {chain}.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. ({stitches} sc)\n"
        f"Rows {rows}: Ch 1, sc in each sc across, turn. ({stitches} sc)\n{more}\n"
    )


SIZED = "Cardigan\nUS terms\nSizes: S (M, L)\n{}\n\n"


class TestMultiples:
    """multiple-does-not-fit."""

    @pytest.mark.parametrize(
        ("says", "right", "wrong"),
        [
            ("Multiple of 6 sts + 1", 43, 45),
            ("Multiple of 6 + 1 (plus 1 for foundation chain)", 43, 45),
            ("Stitch multiple: 6 + 1", 43, 45),
            ("The width is a multiple of 12 sc plus 1, plus 1 ch for turning.", 73, 75),
            ("Chain a multiple of 6 plus 2.", 43, 45),
            ("Ch a multiple of 6 + 1, add 1 for turning chain", 43, 45),
            ("The start chain is divisible by 4.", 43, 45),
            ("Multiple of 12 + 7 (plus 1 for base row)", 43, 45),
            ("Multiple of 5 sts + 1", 11, 13),  # 11, 56, 101 are valid: gauge arithmetic, a published lesson
            ("Multiple of 5 sts + 1", 56, 58),
            ("Multiple of 5 sts + 1", 101, 103),
            ("Multiple of 3 sts + 2", 5, 6),  # 5 and 8 are valid: another published lesson
            ("Multiple of 3 sts + 2", 8, 9),
        ],
    )
    def test_in_one_size(self, says: str, right: int, wrong: int) -> None:
        """A start that is such a number passes, with its turning chain or without; another is asked about."""
        assert asked(f"Scarf\nUS terms\n{says}\n\n{piece('SCARF', str(right))}") == []
        assert asked(f"Scarf\nUS terms\n{says}\n\n{piece('SCARF', str(wrong))}") == [("multiple-does-not-fit", ())]

    def test_nearest_numbers_are_named(self) -> None:
        """The message gives the numbers next below and above."""
        text = f"Scarf\nUS terms\nMultiple of 6 + 1, plus 1 for the base chain.\n\n{piece('SCARF', '45')}"
        [finding] = [f for f in check(text).findings if f.rule == "multiple-does-not-fit"]

        assert "46 chains" in finding.message
        assert "44 or 50" in finding.message

    def test_one_size_alone(self) -> None:
        """In several sizes the one that does not follow is named; a piece in another stitch is left alone."""
        head = SIZED.format("Multiple of 6 sts + 1.")
        sleeve = piece("SLEEVE", "32 (34, 36)")

        assert asked(head + piece("BACK", "43 (49, 55)") + sleeve) == []
        assert asked(head + piece("BACK", "43 (49, 53)") + sleeve) == [("multiple-does-not-fit", ("L",))]

    @pytest.mark.parametrize("says", ["Multiple of 0 sts", "Multiple of 1", "Multiple of", "multiples of colors"])
    def test_no_multiple(self, says: str) -> None:
        """Figures of nothing ask for nothing."""
        assert asked(f"Scarf\nUS terms\n{says}\n\n{piece('SCARF', '45')}") == []


class TestMirrors:
    """pieces-do-not-mirror, edges-differ."""

    @pytest.mark.parametrize(
        ("left", "right", "found"),
        [
            (("20", "2-10"), ("20", "2-10"), False),
            (("20", "2-10"), ("21", "2-10"), True),
            (("20", "2-10"), ("20", "2-12"), True),
            (("20", "2-10"), ("20", "2-11"), False),  # a side begun a row later
        ],
    )
    def test_left_and_right(self, left: tuple[str, str], right: tuple[str, str], found: bool) -> None:
        """Two fronts have the same stitches and rows."""
        text = f"Cardigan\nUS terms\n\n{piece('LEFT FRONT', *left)}{piece('RIGHT FRONT', *right)}"

        assert bool(asked(text)) == found

    @pytest.mark.parametrize(
        ("right", "found"),
        [("20 (24, 28)", []), ("20 (25, 28)", [("pieces-do-not-mirror", ("M",))]), ("23 (27, 31)", [])],
    )
    def test_over_sizes(self, right: str, found: list[tuple[str, tuple[str, ...]]]) -> None:
        """One size alone that is not alike is asked about; an overlap that is the same in all sizes is meant."""
        assert asked(SIZED.format("") + piece("LEFT FRONT", "20 (24, 28)") + piece("RIGHT FRONT", right)) == found

    @pytest.mark.parametrize(
        ("rows", "finishing", "found"),
        [
            ("2-20 (22, 24)", "Sew side seams.", []),
            ("2-20 (22, 28)", "Sew side seams.", [("edges-differ", ("L",))]),
            ("2-20 (22, 28)", "Sew the sides together.", [("edges-differ", ("L",))]),
            ("2-20 (22, 25)", "Sew side seams.", []),
            ("2-20 (22, 28)", "Sew shoulder seams.", []),
        ],
    )
    def test_side_seams(self, rows: str, finishing: str, found: list[tuple[str, tuple[str, ...]]]) -> None:
        """Back and front whose sides are sewn have as many rows, to a row."""
        pieces = piece("BACK", "20 (24, 28)", "2-20 (22, 24)") + piece("FRONT", "20 (24, 28)", rows)

        assert asked(f"{SIZED.format('')}{pieces}FINISHING\n{finishing}\n") == found

    def test_necks_beside_each_other(self) -> None:
        """A front that is worked on in two halves is no longer than its back for that."""
        front = piece(
            "FRONT", "20", "2-10", "Fasten off. Join yarn in last st.\nNext row: Ch 1, sc in next 8 sc. (8 sc)\n"
        )

        assert asked(f"Vest\nUS terms\n\n{piece('BACK', '20', '2-6')}{front}FINISHING\nSew side seams.\n") == []


class TestArmholes:
    """armhole-sleeve-differs."""

    HEAD = "Top\nUS terms\nSizes: S (M, L)\n{}\nGauge: 16 sc and 20 rows = 4 in\n\n" + piece("SLEEVE", "56 (60, 64)")

    @pytest.mark.parametrize(
        ("finishing", "sizes"),
        [
            ("Place markers 7 (7½, 8) in down from shoulder seam on each side.", None),
            ("Mark 7 (7½, 8) in [18 (19, 20.5) cm] down from shoulder on Back and Front.", None),
            ("Place markers 7 (7½, 9) in down from shoulder seam on each side.", ("L",)),
            ("Measure 6 (6½, 7) in down from the shoulder seams.", ()),
            ("Leave 6 in open.", None),
        ],
    )
    def test_markers(self, finishing: str, sizes: tuple[str, ...] | None) -> None:
        """A sleeve of 56 (60, 64) sts at 4 to the inch goes between markers 7 (7½, 8) in down from the shoulder."""
        found = asked(f"{self.HEAD.format('')}FINISHING\n{finishing} Sew sleeve between markers.\n")

        assert found == ([] if sizes is None else [("armhole-sleeve-differs", sizes)])

    @pytest.mark.parametrize(("arm", "sizes"), [("14 (15, 16)", None), ("14 (15, 18)", ("L",)), ("12 (13, 14)", None)])
    def test_measures(self, arm: str, sizes: tuple[str, ...] | None) -> None:
        """Twice the armhole's depth is the upper arm in most sizes: the other is asked about; a set-in sleeve is not."""
        told = f"Measurements\nArmhole depth: 7 (7½, 8) in\nUpper arm: {arm} in"

        assert asked(self.HEAD.format(told)) == ([] if sizes is None else [("armhole-sleeve-differs", sizes)])


class TestGoingOn:
    """stitches-told-differ, row-parity-differs."""

    @pytest.mark.parametrize(
        ("words", "sizes"),
        [
            ("Continue on 60 (66, 72) sts of yoke.", None),
            ("Continue on 60 (66, 70) sts of yoke.", ("L",)),
            ("Work on these 60 (66, 70) sts.", ("L",)),
            ("You should have 60 (66, 70) sts.", ("L",)),
            ("60 (64, 72) sts remain.", ("M",)),
            ("There are 60/66/70 sts.", ("L",)),
            ("Continue on the first 20 (22, 24) sts.", None),
            ("Continue on 30 sts.", None),
        ],
    )
    def test_stitches_told(self, words: str, sizes: tuple[str, ...] | None) -> None:
        """The stitches that a part is said to go on with are those of the row before, size by size."""
        text = (
            "Top\nUS terms\nSizes: S (M, L)\nYOKE\nCh 60 (66, 72), join with sl st in first ch to form a ring.\n"
            f"Rnd 1: Ch 1, sc in each ch around; join. (60 (66, 72) sc)\nBODY\n{words}\n"
            "Rnd 1: Ch 1, sc in each sc around; join.\n"
        )
        assert asked(text) == ([] if sizes is None else [("stitches-told-differ", sizes)])

    @pytest.mark.parametrize(
        ("rows", "sizes"),
        [("2-20 (22, 24)", None), ("2-20 (23, 24)", ("M",)), ("2-21 (22, 23)", ("M",)), ("2-21 (23, 25)", None)],
    )
    def test_parity(self, rows: str, sizes: tuple[str, ...] | None) -> None:
        """All sizes have an even number of rows before the armholes, or all an odd one (a published grading lesson)."""
        text = (
            SIZED.format("Notes\nWork with RS facing.")
            + piece("BACK", "20 (24, 28)", rows)
            + "ARMHOLES\nNext row: Ch 1, sc in each sc across, turn. (20 (24, 28) sc)\n"
        )
        assert asked(text) == ([] if sizes is None else [("row-parity-differs", sizes)])
