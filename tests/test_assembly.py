"""Pieces made against pieces used, and stitches sewn against the stitches that are there."""

from __future__ import annotations

import pytest
from helpers import check

BALL = "Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each sc around. (12 sc)\nFasten off.\n"


def found(text: str, rule: str) -> list[tuple[str, str]]:
    """The words marked and the weight of every finding of a rule."""
    report = check(text)
    return [(" ".join(report.source.slice(f.span).split()), f.weight.value) for f in report.findings if f.rule == rule]


def bug(assembly: str, *headings: str) -> str:
    """A toy of a body and other small balls, and how they are put together."""
    parts = "\n".join(f"{heading}\n{BALL}" for heading in ("BODY", *headings))
    return f"Bug\n\n{parts}\nASSEMBLY\n{assembly}\n"


class TestPieces:
    """Make n, and how many are sewn on."""

    @pytest.mark.parametrize(
        ("assembly", "headings", "weights"),
        [
            ("Sew both horns to the body.", ("HORN", "WING (make 2)"), ["correction"]),
            ("Sew both horns to the body.", ("HORN",), ["query"]),
            ("Sew both horns to the body.", ("HORN (make 2)",), []),
            ("Attach the four wings to the body.", ("WING (make 2)",), ["correction"]),
            ("Attach the four wings to the body.", ("FRONT WING (make 2)", "BACK WING (make 2)"), []),
            ("Sew 3 spots on.", ("SPOT (make 3)",), []),
            ("Sew 4 spots on.", ("SPOT (make 3)",), ["correction"]),
            ("Sew the horn to the top of the body.", ("HORN (make 2)",), ["query"]),
            ("Sew the horn to each side of the body.", ("HORN (make 2)",), []),
            ("Sew a horn to either side.", ("HORN (make 2)",), []),
            ("Sew one horn to the left, the other to the right.", ("HORN (make 2)",), []),
            ("Sew the horns on.", ("HORN (make 2)",), []),
            ("Sew the horns on.", ("HORN",), []),
            ("Sew the horn on.", ("HORN",), []),
            ("Sew both horns to the body.", ("LEFT HORN", "RIGHT HORN"), []),
            ("Sew both horns to the body.", ("HORNS",), []),
            ("Sew two horns to the body.", ("HORN 1", "HORN 2"), []),
            ("Sew the horn between the two wings.", ("HORN", "WING (make 2)"), []),
            ("Sew the tail of the horn in.", ("HORN (make 2)",), []),
            ("Sew both horns and both legs on.", ("HORN (make 2)", "BODY AND LEGS"), []),
            ("Sew both eyes on.", ("HORN",), []),
            ("Join both horns in the seam.", ("HORN", "WING (make 2)", "Make 2 horns."), []),
        ],
    )
    def test_counts(self, assembly: str, headings: tuple[str, ...], weights: list[str]) -> None:
        """Only a plain contradiction is marked."""
        assert weights == [weight for _, weight in found(bug(assembly, *headings), "pieces-disagree")]

    @pytest.mark.parametrize(
        "line",
        [
            "Make one more.",
            "Make another one the same.",
            "Work the second horn in the same way.",
            "Make 2.",
            "Repeat for the other horn.",
        ],
    )
    def test_more_made_in_words(self, line: str) -> None:
        """A sentence under the piece can say that there is a second one."""
        text = bug("Sew both horns to the body.", "HORN", "WING (make 2)").replace(
            "HORN\n" + BALL, f"HORN\n{BALL}{line}\n"
        )

        assert [] == found(text, "pieces-disagree")

    def test_pair_of_eyes(self) -> None:
        """A pair of eyes in the materials does not make the whole thing twice."""
        text = bug("Sew 4 spots on.", "SPOT (make 3)").replace("Bug\n", "Bug\nMaterials: 1 pair safety eyes\n", 1)

        assert [("4 spots", "correction")] == found(text, "pieces-disagree")

    def test_made_under_the_heading(self) -> None:
        """ "Make 2." under the heading counts as if it stood beside it."""
        text = bug("Sew the three horns on.", "HORN", "WING (make 2)").replace("HORN\n", "HORN\nMake 2.\n", 1)

        assert [("the three horns", "correction")] == found(text, "pieces-disagree")

    def test_all_made_twice(self) -> None:
        """Where the whole thing is made twice, a piece of it can be used twice."""
        text = bug("Sew both soles on.", "SOLE", "WING (make 2)").replace("Bug\n", "Bug\nMake two alike.\n", 1)

        assert [] == found(text, "pieces-disagree")

    def test_yarn_tail(self) -> None:
        """A tail of yarn is no tail of a toy."""
        text = bug("Weave in the tail. Sew the horn on with the yarn tail.", "HORN", "TAIL (make 2)")

        assert [] == found(text.replace("Fasten off.", "Fasten off, leaving a tail for sewing."), "pieces-disagree")


SQUARE = (
    "Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join with sl st in top of beg ch-3."
    " (12 dc, 4 ch-2 sps)\nFasten off.\n"
)


def throw(layout: str, *headings: str) -> str:
    """A blanket of squares, and how they are laid out."""
    parts = "\n".join(f"{heading}\nMake a magic ring.\n{SQUARE}" for heading in headings)
    return f"Throw\n\n{parts}\nFINISHING\n{layout}\n"


@pytest.mark.parametrize(
    ("layout", "headings", "marked"),
    [
        ("Lay out the squares 3 across and 4 down for the front. Repeat for the back.", ("SQUARE (make 24)",), 0),
        ("Lay out the squares 4 across and 5 down.", ("SQUARE (make 12 for a small throw, 20 for a large one)",), 0),
        ("Make 20 squares in all. Lay them out, 4 squares across and 5 down.", ("SQUARE (make 12)",), 0),
        ("Lay out the squares 3 across and 4 down.", ("SQUARE (make 12)",), 0),
        ("Lay out the squares 3 across and 4 down.", ("SQUARE (make 10)",), 1),
        ("Lay out the squares 3 across and 4 down.", ("DARK SQUARE (make 6)", "PALE SQUARE (make 6)"), 0),
        ("Lay out the squares 3 across and 5 down.", ("DARK SQUARE (make 6)", "PALE SQUARE (make 6)"), 1),
        ("Join the squares in four rows of three squares.", ("SQUARE (make 12)",), 0),
        ("Join the squares in four rows of three squares.", ("SQUARE (make 14)",), 1),
        ("Sew the motifs together in rows of 2, 3 and 2.", ("MOTIF (make 7)",), 0),
        ("Sew the motifs together in rows of 2, 3 and 2.", ("MOTIF (make 8)",), 1),
        ("Join squares into 5 strips of 4 squares each.", ("SQUARE (make 20)",), 0),
        ("Join squares into 5 strips of 4 squares each.", ("SQUARE (make 24)",), 1),
        ("Lay out the squares in rows.", ("SQUARE (make 12)",), 0),
        ("Lay out the squares 3 across and 4 down.", ("SQUARE (make 6 in each color)",), 0),
        ("Lay out the squares 3 across and 4 down.", ("SQUARE (make 12)", "HALF SQUARE (make 4)"), 0),
        ("Lay out the squares 3 across and 4 down.", ("SQUARE",), 0),
        ("Work two rows of sc around the blanket.", ("SQUARE (make 12)",), 0),
    ],
)
def test_layout(layout: str, headings: tuple[str, ...], marked: int) -> None:
    """Rows times columns of the layout against the squares made."""
    assert marked == len(found(throw(layout, *headings), "pieces-disagree"))


def bag(assembly: str, sizes: str = "", chain: str = "9", count: str = "8") -> str:
    """A strap and a flap of some stitches, and how they are sewn on."""
    piece = (
        f"Ch {chain}.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. ({count} sc)\n"
        f"Row 2: Ch 1 (does not count as a st), sc in each sc across. ({count} sc)\nFasten off.\n"
    )
    return f"Bag\n{sizes}\n\nSTRAP\n{piece}\nFLAP\n{piece}\nFINISHING\n{assembly}\n"


class TestSeams:
    """Stitches that are sewn."""

    @pytest.mark.parametrize(
        ("assembly", "marked"),
        [
            ("Sew the 8 sts of the strap to the bag.", []),
            ("Sew the 9 sts of the strap to the bag.", ["9"]),
            ("Sew the 9 sts of the last row of the strap to the bag.", ["9"]),
            ("Sew the 4 sts of the strap, folded double, to the bag.", []),
            ("Sew the 9 sts of the foundation of the strap to the bag.", []),
            ("Sew the 20 sts of the lining to the bag.", []),
            ("Sew the 8 sts of the strap to the 8 sts of the flap.", []),
            ("Sew the 8 sts of the strap to the 7 sts of the flap.", ["7"]),
            ("Sew the 8 sts of the strap to the 10 sts of the side, easing to fit.", []),
            ("Leave the 9 sts of the strap open.", []),
            ("Whip stitch the 9 stitches at the top edge of the flap to the front.", ["9"]),
            ("Sew the strap on over 3 sts.", []),
            ("Sew the first 3 sts of the strap to the bag.", []),
            ("Sew the 3 unworked sts of the strap to the bag.", []),
        ],
    )
    def test_one_size(self, assembly: str, marked: list[str]) -> None:
        """A number that the last row does not have is marked."""
        assert marked == [words for words, _ in found(bag(assembly), "seam-counts-differ")]

    def test_sizes(self) -> None:
        """In a list over the sizes, the size that differs is named."""
        report = check(
            bag("Sew the 8 (10, 13) sts of the strap to the bag.", "Sizes: S (M, L)", "9 (11, 13)", "8 (10, 12)")
        )
        [one] = [f for f in report.findings if f.rule == "seam-counts-differ"]

        assert ("L",) == one.sizes
        assert ("12", "13") == (one.expected, one.found)

    def test_row_not_recomputed(self) -> None:
        """Against a row that was not counted nothing is held."""
        text = bag("Sew the 9 sts of the strap to the bag.").replace("sc in each sc across.", "wimble all over.")

        assert [] == found(text, "seam-counts-differ")


_PIECE = "Ch {n}.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. ({m} sc)\nRow 2: Ch 1 (does not count as a st), sc in each sc across. ({m} sc)\nFasten off.\n"
_DISC = "Rnd 1: {n} sc in magic ring. ({n} sc)\nRnd 2: 2 sc in each sc around. ({m} sc)\nFasten off.\n"
_TILE = "Rnd 1: Ch 4, join to form ring, ch 3 (counts as dc), {k} dc in ring, ch 2, ({n} dc in ring, ch 2) 3 times, join. ({m} dc)\nFasten off.\n"


def _two(one: str, other: str, words: str, names: tuple[str, str] = ("FRONT", "BACK")) -> list[str]:
    """The rules found on a pattern of two pieces that `words` put together."""
    report = check(f"Thing\nUS terms\n\n{names[0]}\n{one}\n{names[1]}\n{other}\nASSEMBLY\n{words}\n")
    return [one.message for one in report.findings if one.rule == "joined-edges-differ"]


@pytest.mark.parametrize(
    ("words", "asks"),
    [
        ("Sew Front and Back together along their last rows, matching stitches.", True),
        ("Hold front and back together and sc through both layers along the last rows, stitch for stitch.", True),
        ("Sew Front and Back together along the last rows, easing to fit, matching stitches.", False),
        ("Sew Front and Back together along the sides, matching stitches.", False),
        ("Sew Front and Back together along the last rows.", False),
        ("Sew Front to the foundation edge of Back, matching stitches.", False),
    ],
)
def test_last_rows_that_are_joined_stitch_for_stitch(words: str, asks: bool) -> None:
    """Two last rows are held against each other only where the words join them stitch for stitch."""
    found = _two(_PIECE.format(n=31, m=30), _PIECE.format(n=33, m=32), words)

    assert bool(found) is asks
    assert all("30" in message and "32" in message for message in found)
    assert not _two(_PIECE.format(n=31, m=30), _PIECE.format(n=31, m=30), words)


def test_discs_joined_all_round_stitch_for_stitch() -> None:
    """Of pieces in rounds the edge is the last round, with no word needed."""
    words = "Place front and back wrong sides together and sc through both layers around, matching stitches."

    assert _two(_DISC.format(n=6, m=12), _DISC.format(n=7, m=14), words)
    assert not _two(_DISC.format(n=6, m=12), _DISC.format(n=6, m=12), words)


@pytest.mark.parametrize(
    ("names", "n", "words", "asks"),
    [
        (("PLAIN SQUARE", "FLOWER SQUARE"), 4, "Sew the squares together.", True),
        (("PLAIN SQUARE", "FLOWER SQUARE"), 3, "Sew the squares together.", False),
        (("SMALL SQUARE", "LARGE SQUARE"), 4, "Sew the squares together.", False),
        (("PLAIN SQUARE", "FLOWER SQUARE"), 9, "Sew the squares together.", False),
        (("PLAIN SQUARE", "FLOWER SQUARE"), 4, "Sew a square to each end of the strap.", False),
    ],
)
def test_sides_of_motifs_that_are_joined(names: tuple[str, str], n: int, words: str, asks: bool) -> None:
    """Motifs of one shape that are all joined to each other need as many stitches a side, unless they are of other sizes."""
    one, other = _TILE.format(k=2, n=3, m=12), _TILE.format(k=n - 1, n=n, m=4 * n)

    assert bool(_two(one, other, words, names)) is asks
