"""Cautions, colour letters, markers and abbreviations explained twice."""

from __future__ import annotations

import pytest
from helpers import check


def rules(text: str) -> list[str]:
    """The rules of this module's subjects that a text shows."""
    wanted = ("caution-missing", "colour-not-declared", "colour-not-used", "marker-not-placed", "abbreviation-twice")
    return [finding.rule for finding in check(text).findings if finding.rule in wanted]


def piece(front: str, rows: str = "Row 2: Ch 1, sc in each sc across.", after: str = "") -> str:
    """A strip with words before its first row, a second row, and words at its end."""
    return (
        f"Strip\n{front}\n\nSTRIP\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n"
        f"{rows}\n{after}\n"
    )


class TestCautions:
    """Small parts and cords on things for children."""

    @pytest.mark.parametrize(
        ("front", "after", "marked"),
        [
            ("Materials: 2 safety eyes", "", True),
            ("A toy.\nMaterials: 2 beads", "", True),
            ("A child's hat.\nMaterials: 3 buttons", "", True),
            ("A baby hood with a ribbon.", "", True),
            ("A shawl.\nMaterials: 3 buttons", "", False),
            ("A bag with a drawstring.", "", False),
            ("A toy.", "", False),
            ("Materials: 2 safety eyes", "Small parts: not suitable for children under three.", False),
            ("Materials: 2 safety eyes", "Warning: choking hazard.", False),
            ("A baby's blanket in a lace stitch. Tie the ends off.", "", False),
        ],
    )
    def test_cautions(self, front: str, after: str, marked: bool) -> None:
        """A remark stands where a hazard to children has no word of caution, and nowhere else."""
        assert (["caution-missing"] if marked else []) == rules(piece(front, after=after))


class TestColours:
    """Colours known by letters."""

    @pytest.mark.parametrize(
        ("front", "rows", "found"),
        [
            ("Yarn: A (oat), B (rust)", "Row 2: With C, ch 1, sc across. Cut A and B.", ["colour-not-declared"]),
            ("Yarn: A (oat), B (rust)", "Row 2: With B, ch 1, sc in each sc across. With A, sew.", []),
            (
                "Yarn: A (oat), B (rust)",
                "Row 2: With RS facing and C, ch 1, sc across. Cut A and B.",
                ["colour-not-declared"],
            ),
            ("Yarn: Oat (A), Rust (B)", "Row 2: With B, ch 1, sc in each sc across.", ["colour-not-used"]),
            ("Yarn: oat, rust", "Row 2: With C, ch 1, sc in each sc across.", []),
            ("Yarn: A (oat), B (rust)", "Row 2: Ch 1, sc in each sc across.", []),
            ("Yarn: A (oat), B (rust)\nHook: H (5 mm)", "Row 2: With B, ch 1, sc across. Cut A.", []),
            ("Yarn: A (oat), B (rust)\n5 mm hook (H)", "Row 2: With B, ch 1, sc across. Cut A.", []),
        ],
    )
    def test_colours(self, front: str, rows: str, found: list[str]) -> None:
        """Letters are compared only where the pattern declares letters and works with them."""
        assert found == rules(piece(front, rows))


class TestMarkers:
    """Markers that are used."""

    @pytest.mark.parametrize(
        ("rows", "marked"),
        [
            ("Row 2: Ch 1, sc in each sc to marker.", True),
            ("Row 2: Ch 1, sc in marked st.", True),
            ("Row 2: Ch 1, sc in each sc across. Place marker in last sc.\nRow 3: Sc to marker.", False),
            ("Row 2: Ch 1, sc in each sc across (pm in last sc).\nRow 3: Remove marker.", False),
            ("Row 2: Ch 1, sc in each sc across, mark the last sc.\nRow 3: Sc in marked st.", False),
            ("Row 2: Ch 1, sc in each sc across.", False),
        ],
    )
    def test_markers(self, rows: str, marked: bool) -> None:
        """A marker that no sentence above places is asked about."""
        assert (["marker-not-placed"] if marked else []) == rules(piece("", rows))

    def test_placed_in_the_notes(self) -> None:
        """A note before the rows can place the marker."""
        text = piece("Notes: Mark the first st of every row.", "Row 2: Ch 1, sc in marked st.")

        assert [] == rules(text)


@pytest.mark.parametrize(
    ("lines", "marked"),
    [
        ("sc = single crochet\nsc = skip chain", True),
        ("sc = single crochet\nsc = single crochet stitch", False),
        ("st = stitch\nst(s) = stitch(es)", False),
        ("st = stitch\nsts = stitches", False),
    ],
)
def test_abbreviation_twice(lines: str, marked: bool) -> None:
    """Two meanings for one abbreviation are asked about, not the same meaning in other words."""
    text = piece(f"Abbreviations\nch = chain\nrep = repeat\n{lines}")

    assert marked is ("abbreviation-twice" in rules(text))
