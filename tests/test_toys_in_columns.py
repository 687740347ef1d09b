"""Small things in blanked columns, with labels behind a colour, with lists within a paragraph.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts

_HEAD = "Plum\nUS terms\n\nPLUM\n"
_BALL = (("1", "6 sc in magic ring", "6"), ("2", "inc x 6", "12"), ("3-4", "sc in each st", "12"))


@pytest.mark.parametrize("head", ["", "Rnd   What to do   Sts\n", "Round      Instructions      Stitch count\n"])
@pytest.mark.parametrize("unit", ["", " sts"])
def test_rows_in_columns_set_by_blanks(head: str, unit: str) -> None:
    """A bare number, the work and the count are told apart by the blanks between; talk below is no part of the last row."""
    rows = "".join(f"{number:8}{work:30}{count}{unit}\n" for number, work, count in _BALL)
    report = check(f"{_HEAD}{head}{rows}5       (sc, inc) x 6                 18{unit}\nFasten off and fill.\n")
    assert counts(report) == [6, 12, 12, 12, 18]
    assert not corrections(report)


def test_a_wrong_count_in_a_column_is_found() -> None:
    """The figure of the last column is the printed count."""
    report = check(
        f"{_HEAD}Rnd    Work    Sts\n1    6 sc in magic ring    6\n2    inc x 6    13\n3    sc in each st    12\n"
    )
    assert counts(report) == [6, 12, 12]
    assert ("count-differs", 7) in corrections(report)


def test_columns_with_one_for_the_colour() -> None:
    """The yarn of a row may stand in a column of its own."""
    report = check(
        f"{_HEAD}Rnd    Colour    Work    Sts\n1    red    6 sc in magic ring    6\n2    white    inc x 6    12\n3    red    12 sc    12\n"
    )
    assert counts(report) == [6, 12, 12]


@pytest.mark.parametrize(
    "line",
    [
        "Cuff, white. RND 3. In FLO inc in each st. {24}",
        "White. RND 3. inc in each st. {24}",
        "Fill the ball. RND 3. inc x 12. {24}",
    ],
)
def test_a_label_behind_the_colour_of_its_line(line: str) -> None:
    """A sentence before the label does not hide the round, nor make the next one stand on the round below."""
    report = check(
        f"{_HEAD}RND 1. 6 sc in a magic ring. {{6}}\nRND 2. inc x 6. {{12}}\n{line}\nRND 4. sc in each st. {{24}}\n"
    )
    assert counts(report) == [6, 12, 24, 24]
    assert not corrections(report)


def test_a_shortened_word_before_a_round_begins_no_row() -> None:
    """The full stop of "Rep." ends no sentence: the round behind it is called for."""
    report = check(f"{_HEAD}Rnd 1. 6 sc in magic ring. (6)\nRnd 2. 2 sc in each st. (12)\nRnd 3. Rep. rnd 2. (24)\n")
    assert counts(report) == [6, 12, 24]


def test_a_list_of_abbreviations_within_a_paragraph() -> None:
    """What a sentence among the materials lists is the pattern's own: its "pc" is a picot and no popcorn."""
    text = "Star\n\nThread in white, 2 mm hook. All use US abbreviations: ch, sl st, sc, dc, inc (2 sc in st), pc (picot: ch 3, sl st in 3rd ch from hook).\n\nSTAR\n"
    report = check(f"{text}Rnd 1: 6 sc in a ring. (6 sc)\nRnd 2: (Sc, pc) 6 times. (6 sc, 6 pc)\n")
    assert counts(report) == [6, 6]


def test_names_without_a_meaning_among_the_entries_of_a_list() -> None:
    """A list may leave well-known names unexplained among others; none of either sort is told as missing."""
    text = "Bear\n\nAbbreviations: mr (magic ring), sc, hdc, dc, slst (slip stitch), inc (increase), dec (decrease), ch, st, rnd, bo (bobble stitch)\n\nBEAR\n"
    report = check(f"{text}Rnd 1: 6 sc in mr (6)\nRnd 2: 6 inc, slst in next st (12)\nRnd 3: (dec) 6 times (6)\n")
    assert counts(report) == [6, 12, 6]
    assert "abbreviation-undefined" not in [rule for rule, _ in all_findings(report)]


@pytest.mark.parametrize("label", ["{i} r.", "{i} rnd.", "{i} row."])
def test_rounds_run_on_in_one_line(label: str) -> None:
    """A number before the word, a full stop behind it: each begins a round, be it behind a yarn or a count."""
    named = [label.format(i=number) for number in (1, 2, 3, 4)]
    text = f"Blue: {named[0]} 6 sc in MR = 6. {named[1]} inc*6 = 12. {named[2]} 12 sc = 12.\nWhite: {named[3]} (sc, inc)*6 = 18.\n"
    report = check(f"Doll\nUS terms\n\nARM\n{text}")
    assert counts(report) == [6, 12, 12, 18]
    assert [part.name for part in report.pattern.parts] == ["ARM"]


def test_a_colour_before_a_label_is_no_piece() -> None:
    """ "White: Rnd 3:" goes on with the piece, whose stitches are known; "Border: Rnd 1:" begins one."""
    report = check(
        f"{_HEAD}Rnd 1: 6 sc in magic ring (6)\nWhite: Rnd 2: inc x 6 (12)\nWith red: Rnd 3. sc in each st (12)\n"
    )
    assert counts(report) == [6, 12, 12]
    assert len(report.pattern.parts) == 1


@pytest.mark.parametrize("where", ["from the second loop", "from the 2nd loop:", "starting from the second loop"])
def test_the_loop_of_the_chain_in_translated_words(where: str) -> None:
    """Behind the chain itself "the second loop" is its second chain from the hook."""
    report = check(
        f"Doll\nUS terms\n\nFOOT\nRnd 1: 6 ch, {where} 4 sc, 3 sc in one loop, on the other side 3 sc, inc = 12\n"
    )
    assert counts(report) == [12]
    assert not corrections(report)


def test_a_seam_behind_the_count_of_rounds() -> None:
    """What closes the piece through both layers, told behind the count, is no part of the rounds."""
    report = check(
        f"{_HEAD}Rnd 1: 12 sc in magic ring = 12.\nRnds 2-5. 12 sc = 12. Fold and 6 sc through both layers.\n"
    )
    assert counts(report) == [12] * 5
    assert not corrections(report)


def test_setup_and_a_chain() -> None:
    """ "Setup: Ch 13." is the chain that the first row goes into."""
    report = check(
        "Cosy\nUS terms\n\nCOSY\nSetup: Ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\n"
    )
    assert counts(report)[-1] == 12


@pytest.mark.parametrize(
    "begun",
    [
        "Join in any sp between dc, ch 1,",
        "Join yarn in any sp between 2 dc, ch 1,",
        "Join between any 2 dc, ch 1,",
        "Sl st in sp between first 2 dc, ch 1,",
        "Ch 1,",
    ],
)
def test_a_round_begun_in_a_gap_works_that_gap_too(begun: str) -> None:
    """A round of stitches has as many gaps as stitches, and each of them takes stitches wherever the yarn was joined."""
    report = check(
        f"Mat\nUS terms\n\nMAT\nRnd 1: 12 dc in magic ring; sl st in first dc. (12)\nRnd 2: {begun} 2 sc in each sp between dc around; sl st in first sc. (24)\n"
    )
    assert counts(report) == [12, 24]
    assert not corrections(report)


@pytest.mark.parametrize(
    "said", ["Inside the magic ring we make 6 single crochet.", "In the magic ring you work 6 sc."]
)
def test_somebody_works_into_the_ring(said: str) -> None:
    """Translators say who makes the stitches; a count behind a full stop ends the row, whatever call stands below."""
    report = check(
        f"{_HEAD}Rnd 1: {said} 6\nRnd 2: inc in every st. 12\nRnds 3-4: sc in every st. 12\nDone! Snip, weave, wear.\n"
    )
    assert counts(report) == [6, 12, 12, 12]


def test_a_stitch_told_below_a_list_parted_by_semicolons() -> None:
    """The list's last entry has no stop; the line below begins an entry of its own, and is no more of that."""
    text = "Mat\n\nKey: ch (chain); dc (double crochet); sc (single crochet); st (stitch)\nCl (cluster): (yo, draw up a loop in st, yo and through 2 loops) 3 times, yo and through all 4 loops.\n\nMAT\n"
    report = check(f"{text}Rnd 1: Ch 2, (Cl, ch 2) 6 times in ring; join to first Cl. (6 Cl)\n")
    assert "cl" in {form for entry in report.pattern.abbreviations for form in entry.forms}
    assert "abbreviation-undefined" not in [rule for rule, place in all_findings(report) if place == 6]


@pytest.mark.parametrize("talk", ["Rnd 3  is the widest part of the plum.", "Rnds 1-3  should measure 5 cm across."])
def test_two_blanks_in_a_sentence_about_a_round(talk: str) -> None:
    """What is told of a round is no row of that number, however it is spaced."""
    report = check(
        f"{_HEAD}Rnd 1: 6 sc in ring (6)\nRnd 2: inc x 6 (12)\nRnd 3: 12 sc (12)\n{talk}\nRnd 4: 12 sc (12)\n"
    )
    assert counts(report) == [6, 12, 12, 12]
    assert not corrections(report)
