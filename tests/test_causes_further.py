"""Causes that lie farther off: in an uncounted row before, in one size, in the row that is called for, in two numbers at once."""

from __future__ import annotations

from typing import Any

import pytest
from helpers import check, counts

ROUNDS = (
    "Moss Disc\nMake a magic ring.\n"
    "Rnd 1: Ch 1 (does not count as a st), 6 sc in ring; join with sl st in first sc. (6 sc)\n"
    "Rnd 2: Ch 1, 2 sc in each sc around; join with sl st in first sc. (12 sc)\n"
    "Rnd 3: Ch 1, [sc in next sc, 2 sc in next sc] 6 times; join with sl st in first sc. (18 sc)\n"
    "Rnd 4: Ch 1, [sc in next 2 sc, 2 sc in next sc] 6 times; join with sl st in first sc. (24 sc)\n"
)
CORNERS = (
    "Lattice Tile\nMake a magic ring.\n"
    "Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times;"
    " join with sl st in top of beg ch-3.{one}\n"
    "Rnd 2: Sl st in next 2 dc and in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1,"
    " (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1,"
    " (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; join.{two}\n"
    "Rnd 3: Sl st in next 2 dc and in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1,"
    " [3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1] 3 times, 3 dc in next ch-1 sp, ch 1; join.\n"
)
SPOKEN = CORNERS.format(one=" (12 dc, 4 ch-2 sps)", two=" (24 dc, 4 ch-2 sps, 4 ch-1 sps)")
TOP = (
    "Heron Top\nSizes: S (M, L)\nBACK\nCh 61 (67, 73).\n"
    "Row 1 (RS): Sc in 2nd ch from hook and in each ch across. (60 (66, 72) sc)\n"
    "Row 2: Ch 1, turn, sc in each sc across. (60 (66, 72) sc)\n"
    "Row 3: Ch 1, turn, sl st in first 4 (5, 5) sc, sc in next 52 (56, 62) sc, leave last 4 (5, 5) sc unworked."
    " (52 (56, 62) sc)\n"
    "Row 4: Ch 1, turn, sc in each sc across. (52 (56, 62) sc)\n"
)
SLEEVE = (
    "Heron Sleeve\nSizes: S (M, L)\nSLEEVE\nCh 31 (33, 35).\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across. (30 (32, 34) sc)\n"
    "Row 2: Ch 1 (does not count as a st), turn, 2 sc in first sc, sc in each sc to last sc, 2 sc in last sc."
    " (32 (34, 36) sc)\n"
    "Row 3: Ch 1, turn, sc in each sc across.\n"
    "Rep Rows 2 and 3 5 (6, 7) times more. (42 (46, 50) sc)\n"
    "Next row: Ch 1, turn, sc in first 21 (23, 25) sc, leave last 21 (23, 25) sc unworked.\n"
)
STRIP = (
    "Moor Strip\nCh 21.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across. (20 sc)\n"
    "Row 2 (WS): Ch 3 (counts as dc), turn, dc in next sc and in each sc across. (20 dc)\n"
    "Row 3 (RS): Ch 1, turn, sc in each dc across. (20 sc)\nRow 4 (WS): Same as Row 2.\n"
    "Row 5 (RS): Same as Row 3.\nRow 6 (WS): Same as Row 2.\n"
)
BORDER = (
    "Post Tile\nMake a magic ring.\n"
    "Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times;"
    " join with sl st in top of beg ch-3. (12 dc, 4 ch-2 sps)\n"
    "Rnd 2: Ch 3, *dc in next 2 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp**, dc in next dc; rep from * around,"
    " ending last rep at **; join. (28 dc, 4 ch-2 sps)\n"
)


def asked(text: str) -> list[Any]:
    """The corrections and queries on a pattern, but for sections that it lacks."""
    found = [finding for finding in check(text).findings if finding.weight.value != "style"]
    return [f for f in found if f.rule not in ("section-missing", "turning-chain-unsaid", "abbreviation-undefined")]


def only(text: str) -> Any:
    """The one finding."""
    found = asked(text)
    assert len(found) == 1, [finding.message for finding in found]
    return found[0]


@pytest.mark.parametrize("sound", [ROUNDS, SPOKEN, CORNERS.format(one="", two=""), TOP, SLEEVE, STRIP, BORDER])
def test_sound_patterns_are_silent(sound: str) -> None:
    """Nothing is asked of the patterns that the slips below are put into."""
    assert asked(sound) == []


@pytest.mark.parametrize(
    ("sound", "right", "wrong"),
    [
        (SPOKEN, ", ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; join", ", (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; join"),
        (CORNERS.format(one="", two=""), "next ch-2 sp, ch 1; join.\nRnd 3", "next ch-2 sp; join.\nRnd 3"),
        (ROUNDS, "(does not count as a st), 6 sc in ring; join", "(does not count as a st); join"),
        (TOP, "sc in next 52 (56, 62) sc", "sc in next 52 (56, 61) sc"),
        (TOP, "Ch 61 (67, 73)", "Ch 61 (67, 74)"),
        (SLEEVE, "5 (6, 7) times more", "5 (6, 8) times more"),
        (STRIP, "Row 5 (RS): Same as Row 3", "Row 5 (RS): Same as Row 2"),
        (SPOKEN, "(2 dc, ch 2, 3 dc) in same sp, ch 1, (3 dc, ch 2", "(2 dc, ch 2, 3 dc) in same sp, ch 1, (2 dc, ch 2"),
    ],
    ids=[
        "a clause that parts its neighbours elsewhere",
        "a clause of an uncounted row",
        "the only clause of a round",
        "one size's number",
        "one size's chain",
        "one size's rows",
        "another row called",
        "an item of a group",
    ],
)  # fmt: skip
def test_first_cause_undoes_the_slip(sound: str, right: str, wrong: str) -> None:
    """The first cause of the one finding, put into the text, gives a pattern on which nothing is asked."""
    assert right in sound
    text = sound.replace(right, wrong, 1)
    cause = only(text).likely[0]
    again = text[: cause.span.start] + cause.replacement + text[cause.span.end :]

    assert asked(again) == []
    assert counts(check(again)) == counts(check(sound))


def test_one_row_does_not_make_a_chain_of_one_count() -> None:
    """ "Ch 1, sc in next 19 sc" on 20 is a stitch short, and no proof that the ch 1 counts; later rows fit either way."""
    rows = (
        "Plain Strip\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n"
        "Row 2: Ch 1, turn, sc in each sc across. (20 sc)\nRow 3: Ch 1, turn, sc in next 19 sc. (20 sc)\n"
        "Row 4: Ch 1, turn, sc in each sc across. (20 sc)\n"
    )
    finding = only(rows)

    assert (finding.rule, finding.row) == ("places-left-over", "Row 3")
    assert finding.likely[0].replacement == "20"


@pytest.mark.parametrize(
    ("right", "wrong", "said"),
    [
        ("Ch 61 (67, 73)", "Ch 61 (67, 74)", "begin with 73 ch instead of 74 for size L"),
        ("(52 (56, 62) sc)\nRow 4", "(52 (57, 62) sc)\nRow 4", "print 56 instead of 57 for size M"),
    ],
)
def test_cause_names_the_size(right: str, wrong: str, said: str) -> None:
    """Where one figure of a list is off, the cause says whose."""
    assert only(TOP.replace(right, wrong, 1)).likely[0].change == said


def test_group_is_shown_whole() -> None:
    """A stitch that a corner's group lacks is shown in its group, not by itself."""
    text = ROUNDS.replace("Moss Disc", "Disc") + (
        "Rnd 5: Ch 1, [sc in next 5 sc, (sc, ch 2, sc) in next sc] 4 times; join with sl st in first sc. (28 sc, 4 ch-2 sps)\n"
    )
    cause = only(text.replace("(sc, ch 2, sc)", "(sc, sc)")).likely[0]

    assert cause.change == "“(sc, ch 2, sc) in next sc” instead of “(sc, sc) in next sc”"


def test_two_numbers_that_cancel() -> None:
    """One corner too great and one too small leave the count right; both are named."""
    text = SPOKEN[: SPOKEN.index("Rnd 3")].replace(
        "ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, (3 dc, ch 2, 3 dc) in next",
        "ch 1, (3 dc, ch 2, 4 dc) in next ch-2 sp, ch 1, (3 dc, ch 2, 2 dc) in next",
        1,
    )
    finding = only(text)

    assert finding.rule == "corners-differ"
    assert finding.likely[0].change == (
        "“(3 dc, ch 2, 3 dc) in next ch-2 sp” instead of “(3 dc, ch 2, 4 dc) in next ch-2 sp”, and "
        "“(3 dc, ch 2, 3 dc) in next ch-2 sp” instead of “(3 dc, ch 2, 2 dc) in next ch-2 sp”"
    )


def test_clause_behind_the_last_passes_mark() -> None:
    """What stands behind ** is lacking in every pass but the last."""
    cause = only(BORDER.replace("**, dc in next dc; rep", "**; rep")).likely[0]

    assert cause.change == "add “dc in next dc” at the end of the repeat, all but the last time"
    assert cause.replacement == ", dc in next dc"


def test_row_called_is_marked_where_it_is_called() -> None:
    """ "Same as Rnd 3" that does not fit is marked at those words, and the round that then cannot fit follows from it."""
    text = ROUNDS + (
        "Rnd 5: Same as Rnd 3.\n"
        "Rnd 6: Ch 1, [sc in next 3 sc, 2 sc in next sc] 6 times; join with sl st in first sc. (30 sc)\n"
    )
    finding = only(text)

    assert finding.row == "Rnd 5"
    assert text[finding.span.start : finding.span.end] == "Same as Rnd 3"
    assert "Rnd 6 follows from this" in finding.message


def test_total_called_by_one_stitchs_name() -> None:
    """A count that gives the number of all stitches as that of one kind may mean them all."""
    text = (
        "Rib\nCh 21.\nRow 1: Dc in 4th ch from hook (skipped chs count as dc) and in each ch across. (19 dc)\n"
        "Row 2: Ch 3 (counts as dc), turn, dc in next 4 dc, sc in next 2 dc, dc in next 4 dc, sc in next dc, dc in next 7 dc. (19 dc)\n"
    )
    assert only(text).likely[0].change == "print “19 sts” instead of “19 dc”"


def test_range_that_ends_too_late() -> None:
    """Where the next rows go on from the printed number, the range is asked about and not the row."""
    text = (
        "Ball\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"
        "Rnds 3-6: Sc in each st around. (12)\nRnd 6: [Sc in next 4 sts, sc2tog] twice. (10)\n"
        "Rnd 7: Sc2tog 5 times. (5)\n"
    )
    assert "Should Rnds 3-6 end on 5?" in only(text).message


def test_oval_goes_round_the_chains_end() -> None:
    """Three stitches in the 2nd chain from the hook have gone round its end: nothing is left of it on the other side."""
    text = (
        "Mat\nCh 21.\nRnd 1: 3 sc in 2nd ch from hook, sc in next 18 ch, 3 sc in last ch; working along other side of"
        " chain, sc in next 18 ch; join with sl st in first sc. (42 sc)\n"
    )
    assert asked(text) == []
    assert asked(text.replace("3 sc in 2nd ch", "sc in 2nd ch").replace("(42", "(40")) != []
