"""Words that may be work or a count, a place or a number of passes: what is not sure is not recomputed.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes

TWELVE = "Ball\n\nUS terms\n\nBALL\nRnd 1: 12 sc in magic ring. (12)\n"
FLAT = "Cloth\n\nUS terms\n\nCLOTH\nRow 1: Ch 13, sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n"


def made(words: str, before: str = TWELVE) -> int | None:
    """The count of a row of these words on twelve stitches."""
    return counts(check(before + words + "\n"))[-1]


@pytest.mark.parametrize(
    ("words", "count"),
    [
        ("Rnd 2: (4 sc, inc) around, 2 sc.", 14),
        ("Rnd 2: *4 sc, inc; rep from * around. 2 sc.", 14),
        ("Rnd 2: (4 sc, inc) around; 2 sc; join.", 14),
        ("Rnd 2: (2 sc, inc) around, 16 sc.", 16),
    ],
)
def test_what_the_last_pass_leaves(words: str, count: int) -> None:
    """Fewer stitches than two passes make are worked behind the passes; a greater figure is the count."""
    report = check(TWELVE + words + "\n")
    assert counts(report)[-1] == count
    assert not corrections(report)


@pytest.mark.parametrize("words", ["to 2 sts.", "with 3 sc.", "so 4 sc, join."])
def test_words_that_lead_to_no_count(words: str) -> None:
    """ "To make 12 sts" sums up; "to 2 sts" tells something else, and no count is held against the round."""
    report = check(f"{TWELVE}Rnd 2: Sc in each st around {words}\n")
    assert counts(report)[-1] is None
    assert not corrections(report)


@pytest.mark.parametrize("words", ["repeat (6)", "repeat - 6", "once around."])
def test_a_figure_that_may_be_of_passes(words: str) -> None:
    """A small figure behind "repeat" may say how often, and "once around" may be all the way."""
    report = check(f"{TWELVE}Rnd 2: (sc, inc) {words}\n")
    assert counts(report)[-1] is None
    assert not corrections(report)


@pytest.mark.parametrize("words", ["2 sc for the next 2 sts", "dec for the next 4 sts", "dec for next 3 sts"])
def test_so_many_for_so_many(words: str) -> None:
    """Whether each of them takes all that is said, the words leave open."""
    report = check(f"{TWELVE}Rnd 2: Sc in next 4 sts, {words}, sc in each remaining st.\n")
    assert counts(report)[-1] is None
    assert ("not-understood", 7) in all_findings(report)


@pytest.mark.parametrize(
    ("words", "count"),
    [
        ("Rnd 2: Sc in next 5 sts, 2 sc in 6th st, 2 sc in 12th st, sc in the rest.", 14),
        ("Rnd 2: Sc 5, 2 sc in 11th and 12th st, sc in the rest.", 14),
        ("Rnd 2: Skip 2 sts, 2 sc in 3rd st, sc in the rest.", 11),
        ("Rnd 2: Ch 3, 2 dc in 6th and 12th st, dc in the rest.", None),
        ("Rnd 2: (Sc, inc) twice, 2 sc in 12th st, sc in the rest.", None),
    ],
)
def test_numbers_are_counted_from_the_start_of_the_row(words: str, count: int | None) -> None:
    """What was worked before the numbered stitches lies before them; where it is not known how much that is, all is left."""
    assert made(words) == count


def test_an_exception_that_is_spoken_of_again() -> None:
    """Stitches left out of a run, and then "those", are not worked where the row has come to."""
    words = "Row 2: Ch 1, sc in each st except first st and last st, 2 sc in those, turn."
    assert outcomes(check(FLAT + words + "\n"))[-1] == "not-recomputed"


@pytest.mark.parametrize(
    ("words", "count"),
    [
        ("Row 2: Ch 3, sk next sc and sc, dc in each st across, turn.", None),
        ("Row 2: Ch 1, (sk 1 st and sc, 2 sc in next st) across, turn.", 12),
    ],
)
def test_passed_over_or_worked_without_a_count(words: str, count: int | None) -> None:
    """Where two names stand behind "sk", no count says which is meant; behind "1 st" the other is worked."""
    assert made(words, FLAT) == count


def test_even_rows_on_some_of_the_stitches() -> None:
    """On 8 of 12 stitches: which these are is not known, and the next row is not counted on all of them."""
    line = "Work even on {} sts for 4 cm.\nNext row: Ch 1, sc in each st across.\n"
    assert counts(check(FLAT + line.format(8)))[-1] is None
    assert counts(check(FLAT + line.format(12)))[-1] == 12


@pytest.mark.parametrize(
    "words",
    ["changing sc to inc", "with sl st instead of sc"],
)
def test_a_stitch_for_another_that_is_not_understood(words: str) -> None:
    """A stitch that is changed is no colour, and slip stitches for stitches alter the count."""
    rows = "Rnd 2: (Sc, inc) around. (18)\n"
    assert counts(check(f"{TWELVE}{rows}Rnd 3: As Rnd 2, {words}.\n"))[-1] is None


def test_more_work_behind_a_number_of_rounds() -> None:
    """ "For 3 rounds, dec around": the decreases are not in each of them, and in which is not said."""
    assert made("Rnd 2: Sc in each st for 3 more rounds, dec around.") is None
    assert made("Rnd 2: Sc in each st for 3 more rounds. 12 sts") == 12


def test_starting_in_the_next_stitch_behind_a_chain() -> None:
    """Behind a chain of one, the next stitch may be the first or the second."""
    assert made("Row 2: Ch 1, starting in next st, sc in each st across.", FLAT) is None
    assert made("Row 2: Ch 1, starting in first st, sc in each st across.", FLAT) == 12


@pytest.mark.parametrize(
    ("line", "count"),
    [
        ("Join the ear with 2 sc.", 12),  # sewn on
        ("Last round ch 3 counts as dc.", 12),
        ("Now go back to Rnd 1.", None),
        ("The next rounds are worked in the remaining 6 stitches.", None),
    ],
)
def test_lines_between_rounds(line: str, count: int | None) -> None:
    """A note is no round of its own; what sets the work elsewhere is no note."""
    report = check(f"{TWELVE}{line}\nRnd 2: Sc in each st around.\n")
    assert counts(report)[-1] == count


def test_a_row_in_pattern_without_a_sign() -> None:
    """ "Next row patt 4, dec, patt 6" is a row, and not passed over."""
    report = check(FLAT + "Next row patt 4, dec, patt 6, turn.\n")
    assert len(counts(report)) == 2


@pytest.mark.parametrize(
    ("entry", "count"),
    [
        ("V-st: V stitch, (dc, ch 1, dc) in same st", 24),
        ("V-st: a fan, (dc, ch 1, dc) in same st", None),
        ("V-st: shell, ch 1, shell in same st", None),
    ],
)
def test_a_name_before_a_recipe(entry: str, count: int | None) -> None:
    """The entry's own name is no work; another group's name may be, and is not passed over."""
    text = f"Mat\n\nUS terms\n\nAbbreviations\n{entry}\n\nMAT\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: V-st in each sc around.\n"
    assert counts(check(text))[-1] == count


def test_an_edge_stitch_of_several_stitches() -> None:
    """An edge stitch that is told as two stitches is not one."""
    text = "Mat\n\nUS terms\n\nAbbreviations\nES = edge stitch: 2 sts in one\n\nMAT\n"
    rows = "Rnd 1: 12 sc in magic ring. (12)\nRnd 2: ES, sc in next 11 sc.\n"
    assert counts(check(text + rows))[-1] is None


def test_in_pattern_where_rows_gain_and_lose() -> None:
    """Rows that lose a stitch and gain it again may be the pattern's own: "patt to last 2 sts" is not counted."""
    rows = "Row 2: Ch 1, sc in first 10 sts, dec, turn. (11)\nRow 3: Ch 1, sc in each st across, inc in last st, turn. (12)\n"
    assert made(rows + "Row 4: Ch 1, patt to last 2 sts, dec, turn.", FLAT) is None


@pytest.mark.parametrize(("change", "rule"), [(", changing to B in last st", 0), ("", 1)])
def test_yarn_changed_at_the_end_of_a_round(change: str, rule: int) -> None:
    """The yarn that a round ends by changing to is on the hook when the other is fastened off."""
    text = f"Hat\n\nUS terms\n\nHAT\nRnd 1: With A, 6 sc in magic ring. (6)\nRnd 2: Inc around{change}. (12)\nFasten off A.\nRnd 3: Sc around. (12)\n"
    assert len([one for one, _ in corrections(check(text)) if one == "yarn-not-joined"]) == rule


def test_how_tightly_a_round_is_worked() -> None:
    """ "Work Rnd 2 loosely." calls for no round again."""
    assert made("Work Rnd 2 loosely.\nRnd 2: Sc in each st around.") == 12
    assert made("Work Rnd 1 as for the base.\nRnd 2: Sc in each st around.") is None
