"""Likely causes: which small change makes a row, and the rows after it, come out; and one cause, one finding."""

from __future__ import annotations

import re
from typing import Any

import pytest
from helpers import check, corrections, line_of

DISC = (
    "Disc\nMake a magic ring.\n"
    "Rnd 1: Ch 1 (does not count as a st), 6 sc in ring; join with sl st in first sc. (6 sc)\n"
    "Rnd 2: Ch 1, 2 sc in each sc around; join with sl st in first sc. (12 sc)\n"
    "Rnd 3: Ch 1, *sc in next sc, 2 sc in next sc; rep from * 5 times more; join with sl st in first sc. (18 sc)\n"
    "Rnd 4: Ch 1, *sc in next 2 sc, 2 sc in next sc; rep from * 5 times more; join with sl st in first sc. (24 sc)\n"
    "Rnd 5: Ch 1, sc in each sc around; join with sl st in first sc. (24 sc)\n"
)
PANEL = (
    "Panel\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n"
    "Row 2: Ch 1 (does not count as a st), turn, *sc in next 3 sc, 2 sc in next sc; rep from * across. (25 sc)\n"
    "Row 3: Ch 1, turn, sc in each sc across. (25 sc)\n"
)


def count_findings(text: str) -> list[Any]:
    """The findings about counts and fit."""
    rules = ("count-differs", "corners-differ", "place-not-there", "repeat-does-not-fit")
    rules += ("places-left-over", "places-run-out")
    return [finding for finding in check(text).findings if finding.rule in rules]


def mended(text: str) -> str:
    """The text with its first finding's first likely cause put right."""
    cause = count_findings(text)[0].likely[0]
    return text[: cause.span.start] + cause.replacement + text[cause.span.end :]


@pytest.mark.parametrize(
    ("sound", "right", "wrong"),
    [
        (
            DISC,
            "rep from * 5 times more; join with sl st in first sc. (18",
            "rep from * 4 times more; join with sl st in first sc. (18",
        ),
        (DISC, "(18 sc)", "(19 sc)"),
        (DISC, "(12 sc)", "(21 sc)"),
        (DISC, "*sc in next 2 sc, 2 sc", "*sc in next 3 sc, 2 sc"),
        (DISC, "*sc in next 2 sc, 2 sc", "*sc in next 2 sc, 3 sc"),
        (DISC, "*sc in next sc, 2 sc in next sc", "*2 sc in next sc"),
        (DISC, "*sc in next 2 sc, 2 sc in next sc", "*sc in next 2 sc, 2 sc in next sc, 2 sc in next sc"),
        (PANEL, "Ch 21.", "Ch 22."),
        (PANEL, "Ch 21.", "Ch 20."),
    ],
    ids=[
        "repeat",
        "count",
        "count turned about",
        "places",
        "stitches",
        "dropped",
        "doubled",
        "chain long",
        "chain short",
    ],
)
def test_first_cause_undoes_the_slip(sound: str, right: str, wrong: str) -> None:
    """A single slip's first likely cause, put into the text, gives the sound pattern back."""
    assert count_findings(sound) == []
    assert mended(sound.replace(right, wrong, 1)) == sound


def test_cause_says_what_then_comes_out() -> None:
    """A likely cause is said in plain words: what to change, what the row then makes, what comes out with it."""
    text = DISC.replace(
        "5 times more; join with sl st in first sc. (18", "4 times more; join with sl st in first sc. (18"
    )
    cause = count_findings(text)[0].likely[0]

    assert cause.change == "work the repeat 5 times more instead of 4 times more"
    assert cause.then.startswith("Rnd 3 makes 18 sc, as printed")


def test_sound_pattern_has_no_causes() -> None:
    """Nothing is asked where everything comes out."""
    assert all(not finding.likely for finding in check(DISC).findings)


def test_at_most_three_causes() -> None:
    """No more than three questions are asked of one row."""
    text = DISC.replace("2 sc in each sc around", "sc in next 5 sc, 2 sc in next sc")

    assert all(len(finding.likely) <= 3 for finding in count_findings(text))


def test_rows_that_follow_are_told_of_in_one_finding() -> None:
    """A slip in a row that others repeat gives one finding, which names the rows that come right with it."""
    text = (
        "Wedge\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n"
        "Row 2: Ch 1 (does not count as a st), turn, sc in first sc, sc in each sc across. (21 sc)\n"
        "Rows 3-6: Rep Row 2. (22, 23, 24 and 25 sc)\n"
    )
    found = count_findings(text)

    assert len(found) == 1
    assert found[0].row == "Row 2"
    assert "Row 3 to Row 6 follow from this" in found[0].message


def test_two_slips_are_two_findings() -> None:
    """A second slip further on, which mending the first does not mend, has its own finding and its own cause."""
    text = DISC.replace("(18 sc)", "(19 sc)").replace(
        "sc in each sc around; join with sl st in first sc. (24",
        "sc in each sc around; join with sl st in first sc. (25",
    )
    found = count_findings(text)

    assert [finding.row for finding in found] == ["Rnd 3", "Rnd 5"]
    assert [finding.likely[0].change for finding in found] == ["print 18 instead of 19", "print 24 instead of 25"]


def test_last_stitch_goes_into_the_turning_chain() -> None:
    """One place left over, and a chain below that counts: the last stitch may belong on top of it."""
    text = (
        "Strip\nCh 22.\nRow 1: Dc in 4th ch from hook (3 skipped ch count as dc) and in each ch across. (20 dc)\n"
        "Row 2: Ch 3 (counts as dc), turn, dc in each of next 18 dc. (20 dc)\n"
    )

    assert count_findings(text)[0].likely[0].change == "add “dc in top of turning ch” at the end"


def test_space_of_another_length() -> None:
    """A space that is not there may be one of the length that is."""
    text = (
        "Mat\nMake a magic ring.\n"
        "Rnd 1: Ch 3 (counts as dc here and throughout), dc in ring, ch 1, (2 dc in ring, ch 1) 5 times; join with sl st in top of beg ch-3. (12 dc, 6 ch-1 sps)\n"
        "Rnd 2: Sl st in next dc and in next ch-1 sp, ch 3, 3 dc in same sp, (4 dc in next ch-2 sp) 5 times; join with sl st in top of beg ch-3. (24 dc)\n"
    )

    assert count_findings(text)[0].likely[0].change == "“4 dc in next ch-1 sp” instead of “4 dc in next ch-2 sp”"


def test_causes_are_the_same_every_time() -> None:
    """The search is bounded by work, not by the clock: the same text gives the same causes."""
    text = DISC.replace("2 sc in each sc around", "sc in next 5 sc, 2 sc in next sc")

    assert [finding.likely for finding in count_findings(text)] == [finding.likely for finding in count_findings(text)]


def test_a_repeat_of_nothing_is_not_recomputed() -> None:
    """Marks with no words between them are no work: nothing is raised, and no count is made up."""
    report = check(DISC.replace("2 sc in each sc around", "** rep from * around"))

    assert report.ledger.rows[2].cells[0].made is None


def test_one_slipped_row_number_is_one_finding() -> None:
    """A number that slipped by itself does not put those after it out of order."""
    text = DISC.replace("Rnd 3:", "Rnd 13:")

    assert corrections(check(text)) == [("row-number-out-of-order", line_of(text, "Rnd 13:"))]


def test_corners_of_an_assumed_row_are_not_guessed() -> None:
    """Of a row that was not read only the printed count is known: what is said of its corners is not recomputed."""
    text = DISC.replace("2 sc in each sc around", "wibble in each sc around").replace(
        "*sc in next sc, 2 sc in next sc; rep from * 5 times more",
        "*sc in each sc to next corner, 3 sc in corner; rep from * around",
    )

    assert check(text).ledger.rows[3].cells[0].made is None


def test_a_cause_never_tears_a_list_over_the_sizes() -> None:
    """A clause that may be lacking is no list of which one figure was changed, or taken out."""
    report = check(
        "Yoke\n\nSizes: S (M, L)\n\nCh 40 (44, 48); join to form a ring.\n"
        "Rnd 1: Ch 1, sc in each ch around, join. 40 (44, 48) sc\n"
        "Rnd 2: Ch 1, *sc in next 9 (10, 11) sts, 2 sc in next st; rep from * twice more, join. 44 (48, 52) sc\n"
    )
    causes = [cause.change for finding in report.findings for cause in finding.likely]
    assert causes
    assert not [change for change in causes if re.search(r"next \(|next (?!9 \(10, 11\))\d+ \(", change)]


@pytest.mark.parametrize("number", ["10000000000", "1" + "0" * 40])
def test_a_number_that_slipped_by_many_figures(number: str) -> None:
    """A label with a number of many figures is out of order like any other, and is not counted up to."""
    text = f"Ball\n\nTerms: US\n\nBODY\nRnd 1: 6 sc in magic ring. (6)\nRnd {number}: Sc in each sc around. (6)\nRnd 3: Sc in each sc around. (6)\n"
    assert corrections(check(text)) == [("row-number-out-of-order", line_of(text, f"Rnd {number}"))]
