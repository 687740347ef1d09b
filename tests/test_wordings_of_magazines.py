"""Marks, counts, labels and repeats as magazines, blogs and exported pages set them.

Truths worked out by hand; what the words mean is common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, counts

HEAD = "Piece\n\nUS terms\n\nPIECE\n"


def on_a_round(stitches: int, words: str):
    """The pattern with these words as the round over so many stitches."""
    return check(f"{HEAD}Rnd 1: {stitches} sc in magic ring. ({stitches})\nRnd 2: {words}\n")


def differs(result) -> bool:
    """Whether a printed count is told to differ."""
    return any(one.rule == "count-differs" for one in result.findings)


@pytest.mark.parametrize(
    "told",
    [
        "rep from * until you have worked it 6 times in all",
        "repeat from * until this has been done 6 times",
        "rep from * until it has been worked a total of 6 times",
        "repeat around from *",
        "repeat 5 times from *",
        "rep 5 more times from *",
    ],
)
def test_how_often_told_before_the_mark_or_as_a_total(told: str) -> None:
    """Six passes of one plain stitch and one increase over twelve stitches make eighteen."""
    assert counts(on_a_round(12, f"*sc in next st, 2 sc in next st; {told}."))[-1] == 18


def test_what_limits_a_repeat_behind_its_mark_still_counts() -> None:
    """ "Around" before the mark does not hide the stitches at the end."""
    words = "*sc in next st, 2 sc in next st; repeat around from * to last 2 sts, sc in last 2 sts."
    assert counts(on_a_round(12, words))[-1] == 17


@pytest.mark.parametrize("mark", list("★☆✱⋆∗✽⁎※†‡#"))
def test_marks_of_a_passage(mark: str) -> None:
    """Alone, in pairs, and within another passage."""
    assert counts(on_a_round(12, f"{mark}sc in next st, inc in next st; rep from {mark} around."))[-1] == 18
    inner = f"*sc in next st, {mark}inc in next st; rep from {mark} once more; rep from * around."
    assert counts(on_a_round(12, inner))[-1] == 20
    broken = f"{mark}sc in next st, inc in next st{mark}{mark}, sc in next st; rep from {mark} 3 times more, ending last rep at {mark}{mark}, sc in last st."
    assert counts(on_a_round(12, broken))[-1] == 16


@pytest.mark.parametrize(
    "count",
    [
        ", {} in all.", ". {} in total.", " ({} at end of rnd)", ": {}\nStuff the body.", "; {}. Stuff firmly.",
        "; {}\nFasten off after the first leg.", ". *({})*", ". **({})**\nStuff the body.", ". *{} sc*", ". Fasten off A: {} sc",
        ". Fasten off ... {} sc", ". Fasten off and weave in ends: {} sc", "\n{} sts total", "\nStitch count: {}",
    ],
)  # fmt: skip
def test_a_count_is_compared_wherever_it_stands(count: str) -> None:
    """The right one agrees, a wrong one is told; neither is work or lost."""
    for printed in (12, 13):
        result = on_a_round(12, "Sc in each sc around" + count.format(printed))
        assert counts(result)[1] == 12
        assert differs(result) is (printed == 13)


def test_a_line_that_begins_anew_is_no_phrase_with_the_one_above() -> None:
    """ "To end", and below it "Stitch count": no "end stitch"."""
    assert differs(on_a_round(12, "Sc in each sc to end\nStitch count: 13"))


@pytest.mark.parametrize("words", ["Sc in each st around. #13 sc#", "Sc in each st around. †13 sc†"])
def test_a_passage_that_would_not_be_worked_is_not_passed_over(words: str) -> None:
    """Nothing is left for it: what it is meant for is not guessed."""
    assert counts(on_a_round(12, words))[-1] is None


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Sc in each and every sc around.", 12),
        ("Sc in all of the sts around.", 12),
        ("Sc in each st around; sl st in 1st sc of this rnd.", 12),
        ("Sc in each st around; join to 1st st of round with sl st.", 12),
        ("*Sc in next 2 sts, sc2tog; rep from * around. (9)\nWeave the tail through the last 9 sts.", 9),
    ],
)
def test_words_for_the_same(words: str, made: int) -> None:
    """Each is read as its plain form is."""
    assert counts(on_a_round(12, words))[1] == made


@pytest.mark.parametrize("words", ["6 sc MR. (6)", "6 sc magic ring (6)"])
def test_a_ring_named_without_in(words: str) -> None:
    """ "6 sc MR" is worked into the ring."""
    assert counts(check(f"{HEAD}Rnd 1: {words}\n")) == [6]


def test_stitches_over_several_are_read_alike_through_a_row() -> None:
    """One print settles for all of them that one goes into each."""
    words = "*Hdc over next 2 sts, sc over next 2 sts, hdc over next 2 sts; rep from * once more. (8 hdc, 4 sc)"
    assert counts(on_a_round(12, words))[-1] == 12


def test_no_stitch_closes_eight_places_unasked() -> None:
    """ "Sc over the next 8 sts" are eight."""
    assert counts(on_a_round(12, "Sc over the next 8 sts, 2 sc in each of next 4 sts."))[-1] == 16


@pytest.mark.parametrize("label", ["Row One –", "Row one.", "First Row -", "FIRST ROW:", "First row. "])
def test_labels_in_words(label: str) -> None:
    """With a dash or a full stop for their sign."""
    assert counts(check(f"{HEAD}{label} Fsc 12, turn. (12)\n")) == [12]


@pytest.mark.parametrize("count", ["= 12 sts", "– 12", "(12 sts)", "→ 12 Fsc"])
def test_rows_that_run_on_behind_a_count(count: str) -> None:
    """The next label begins a row where no full stop stands before it."""
    assert counts(check(f"{HEAD}Row 1: Fsc 12, turn {count} Row 2: Ch 1, 2 sc in each st across {count}\n"))[-1] == 24


def test_steps_of_one_row_with_blank_lines_between() -> None:
    """Bullets of one sort under a label are one row."""
    steps = "Row 1\n\n• Ch 13.\n\n• Sc in 2nd ch from hook and in each ch across.\n\n• You now have 12 sc.\n"
    assert counts(check(HEAD + steps)) == [12]


def test_a_table_parted_by_tabs() -> None:
    """The count stands in a column of its own."""
    result = check(
        f"{HEAD}Rnd 1\t12 sc in magic ring. Fasten off A\t12 sc\nRnd 2\tJoin B, sc in each st around\t13 sc\n"
    )
    assert counts(result) == [12, 12]
    assert differs(result)


def test_a_name_with_the_dash_of_an_office_program() -> None:
    """ "V–st" is the V-st of the list."""
    special = "Special stitches\nV–st: (dc, ch 1, dc) in same st\n\n"
    rows = "Row 1: Fsc 12, turn. (12)\nRow 2: Ch 1, *sk next st, v–st in next st; rep from * 5 times more. (12 dc)\n"
    assert counts(check(f"Scarf\n\nUS terms\n\n{special}SCARF\n{rows}"))[-1] == 12


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch. 1, turn, sc. in each st. across.", 12),
        ("Ch. 1, turn, 2 sc. in first st., sc. in each st. across.", 13),
        ("Turn, ch. 1, 2 sc. in first st., sc. evenly in each st. across.", 13),
    ],
)
def test_short_forms_with_full_stops(words: str, made: int) -> None:
    """The stop behind "Ch." ends no sentence."""
    assert counts(check(f"{HEAD}Row 1: Fsc 12, turn. (12)\nRow 2: {words}\n"))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Sc in each st around except the last 2, 2 sc in each of those.", 14),
        ("Sc in each st to last 3 sts, 2 sc in each of these.", 15),
        ("Sc in next 10 sts, 2 sc in each of these.", None),
        ("Skip next 2 sts, sc in each of next 10 sts, sc in each of those.", None),
    ],
)
def test_each_of_those(words: str, made: int | None) -> None:
    """Those that the run before it left out; where it left out none, it is not guessed which are meant."""
    assert counts(on_a_round(12, words))[-1] == made


@pytest.mark.parametrize(
    "rest", ["(2 dc in next sp) 11 times", "2 dc in each sp around", "*2 dc in next sp; rep from * around"]
)
def test_spaces_of_a_round_without_chains_lie_between_its_stitches(rest: str) -> None:
    """Where the round below has no chains, "next sp" is a gap: as many as stitches, and the first is begun in."""
    text = "Rnd 1: Ch 3 (counts as dc), 11 dc in magic ring, join. (12)\nRnd 2: Sl st in next sp, ch 3, dc in same sp, "
    result = check(f"{HEAD}{text}{rest}, join. (24)\n")
    assert counts(result) == [12, 24]
    assert not [one for one in result.findings if one.rule in ("places-run-out", "place-not-there")]


@pytest.mark.parametrize(
    ("line", "words", "made"),
    [
        ("Ch 3.", "dc in next 11 sts", 12),
        ("Ch 4.", "sc in each st around", None),
        ("Now ch 5.", "hdc in each st around", None),
    ],
)
def test_chains_in_a_line_of_their_own_lead_up_to_a_stitch_of_their_height(
    line: str, words: str, made: int | None
) -> None:
    """More of them than the next stitch is high are a bridge, or stitches to be: the round is not counted."""
    result = check(f"{HEAD}Rnd 1: 12 dc in magic ring. (12)\n{line}\nRnd 2: {words}.\n")
    assert counts(result)[-1] == made


@pytest.mark.parametrize(("words", "asked"), [("sc in first 6 sts only", False), ("sc in first 6 sts", True)])
def test_only_says_that_the_rest_is_left(words: str, asked: bool) -> None:
    """Stitches left over are asked about, unless the words say so."""
    result = check(f"{HEAD}Row 1: Fsc 12, turn. (12)\nRow 2: Ch 1, {words}, turn. (6)\n")
    assert counts(result) == [12, 6]
    assert any(one.rule == "places-left-over" for one in result.findings) is asked


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Sc around, placing 2 sc in the last st.", 13),
        ("Sc around, working 2 sc in the first st.", None),
        ("Sc around, with 2 sc in first st.", None),
        ("Working 2 sc in the first st, sc around.", 13),
    ],
)
def test_the_first_stitch_told_of_behind_a_run(words: str, made: int | None) -> None:
    """The run has gone over it by then: whether it is meant instead or besides is not guessed."""
    assert counts(on_a_round(12, words))[-1] == made


@pytest.mark.parametrize(
    "words",
    [
        "inc in first and last st, sc in all others",
        "inc in first and last st and sc in each of the others",
        "2 sc in first and last st, sc in each st between",
        "inc in first and last sts, sc in all sts between",
    ],
)
def test_all_but_the_ends(words: str) -> None:
    """What is told of the ends leaves the stitches between them."""
    assert counts(check(f"{HEAD}Row 1: Fsc 20, turn. (20)\nRow 2: Ch 1, {words}.\n"))[-1] == 22


@pytest.mark.parametrize(
    "rest", ["*3 dc in next sp; rep from * around", "3 dc in each sp around", "(3 dc in next sp) 3 times"]
)
@pytest.mark.parametrize("way", ["Sl st in next sp", "Sl st in next 2 dc and in next sp"])
def test_spaces_of_a_round_of_groups_lie_between_the_groups(rest: str, way: str) -> None:
    """Four groups of three have four spaces between them, and not twelve."""
    text = (
        "Rnd 1: Ch 3 (counts as dc), 11 dc in magic ring, join. (12)\n"
        "Rnd 2: Ch 3 (counts as dc), 2 dc in same st, sk 2 sts, *3 dc in next st, sk 2 sts; rep from * 2 more times, join. (12)\n"
    )
    assert counts(check(f"{HEAD}{text}Rnd 3: {way}, ch 3, 2 dc in same sp, {rest}, join.\n"))[-1] == 12


@pytest.mark.parametrize("first", ["1st of next", "first of the next", "the first of the next"])
def test_the_first_of_the_next_stitches_is_one(first: str) -> None:
    """ "2 sc in 1st of next 4 sts" goes into one of them; the rest is worked by the clause behind it."""
    assert counts(on_a_round(12, f"*2 sc in {first} 4 sts, sc in next 3 sts; rep from * around."))[-1] == 15
