"""How leaflets and toy pages say things beside the work: headings with a full stop, talk behind counts (common practice, no source)."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts, spaces

_HEAD = "Trinket\nUS terms\nCh 1 does not count as a stitch.\n\n"
_FLAT = _HEAD + "Ch 12.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (11 sc)\n"


def _corrections(text: str) -> list[str]:
    return [rule for rule, _ in all_findings(check(text), ("correction",))]


def _lacking(text: str) -> list[str]:
    return [finding.message for finding in check(text).findings if finding.rule == "section-missing"]


def test_own_stitches_ending_in_a_hiss_have_their_plural() -> None:
    """ "5 open arches" are the "open arch" of the list, as "3 crosses" would be the cross."""
    text = _HEAD + (
        "Special stitches\nOpen arch: ch 2, sk next 2 sts, dc in next dc.\n\nNet\nCh 20.\n"
        "Row 1: Dc in 4th ch from hook (3 skipped ch count as dc) and in each ch across, turn. (18 dc)\n"
        "Row 2: Ch 3 (counts as dc), dc in next 2 dc, {} open arches, turn.\n"
    )
    assert counts(check(text.format(5))) == [18, 8]
    assert spaces(check(text.format(5)))[1] == {2: 5}
    assert counts(check(text.format(6)))[1] is None, "there are places for five"


def test_a_heading_with_a_full_stop_opens_its_list() -> None:
    """ "Abbreviations. ch, chain. sc, single crochet." is a list, and "Notes. …" no row."""
    text = (
        "Trivet\n\n{} ch, chain. rep, repeat. sc, single crochet. st(s), stitch(es).\nNotes. Work loosely. Ch 1 is no stitch.\n\n"
        "Pad\nCh 9.\nRow 1. 1 sc in 2nd ch from hook and in each ch to end. Turn. 8 sc.\n"
    )
    lacks = "The pattern does not give a list of abbreviations."
    assert lacks not in _lacking(text.format("Abbreviations."))
    assert lacks in _lacking(
        text.replace("{} ch, chain. rep, repeat. sc, single crochet. st(s), stitch(es).", "A trivet.")
    )
    assert counts(check(text.format("Abbreviations."))) == [8]


@pytest.mark.parametrize("words", ["Begin with a foundation chain of 12", "Make a chain of 12", "Start with ch 12"])
def test_a_chain_told_in_words_begins_the_piece(words: str) -> None:
    """The chain stands under the list of stitches, with no heading of its own, and Row 1 is worked into it."""
    text = (
        _HEAD
        + "Filet terms\nBlock: dc in next 3 dc.\n\n{}.\n\nRow 1. Sc in 2nd ch from hook and in each ch across. {} sc.\n"
    )
    assert counts(check(text.format(words, 11)))[-1:] == [11]
    assert "count-differs" in _corrections(text.format(words, 12))


@pytest.mark.parametrize("sign", ["= {}", "- {}", ". {}.", "; {}"])
def test_a_count_of_each_row_needs_no_brackets(sign: str) -> None:
    """ "Rows 2-4: … = 9, 7, 5 sc" has one figure for each row."""
    row = "{}: Ch 1, sc2tog, sc to last 2 sc, sc2tog, turn " + sign + "\n"
    assert counts(check(_FLAT + row.format("Rows 2-4", "9, 7, 5 sc"))) == [11, 9, 7, 5]
    assert "count-differs" in _corrections(_FLAT + row.format("Rows 2-4", "9, 7, 6 sc"))


def test_three_figures_for_one_row_are_told_of_sizes() -> None:
    """Where no sizes are named, a list behind a lone row leaves it uncounted."""
    row = "Row 2: Ch 1, sc2tog, sc to last 2 sc, sc2tog, turn = 9, 7, 5 sc\n"
    assert counts(check(_FLAT + row))[1] is None


@pytest.mark.parametrize(
    "words",
    [
        "Place beads between Rnds 1 and 2, 3 sts apart.",
        "Insert eyes between R1 and R2, 4 stitches apart.",
        "put beads between rnds 1 and 2",
        "Cut yarn, close the opening.",
        "Close up hole.",
    ],
)
def test_talk_behind_a_count_is_no_work(words: str) -> None:
    """What is set on or closed behind a row's count leaves the row as it is."""
    text = _HEAD + "Rnd 1: 6 sc in magic ring (6)\nRnd 2: 2 sc in each sc ({}) {}\n"
    assert counts(check(text.format(12, words))) == [6, 12]
    assert "count-differs" in _corrections(text.format(11, words))


@pytest.mark.parametrize(
    "words",
    [
        "place a sc between next 2 sts of rnd 1",
        "sc in next st, 3 sts apart",
        "close the opening with 3 sc",
        "put beads on the next 3 sc",
    ],
)
def test_work_among_such_words_is_not_passed_over(words: str) -> None:
    """Words like those of talk, with stitches among them, leave the row uncounted."""
    text = _HEAD + f"Rnd 1: 6 sc in magic ring (6)\nRnd 2: 2 sc in each of next 3 sc, {words}\n"
    assert counts(check(text))[1] is None


def test_work_is_told_along_the_other_side() -> None:
    """ "Along the other side of the chain work sc in each of next 4 ch": the chain from below, and worked into."""
    text = _HEAD + (
        "Ch 7.\nRnd 1: 3 sc in 2nd ch from hook, sc in next 4 ch, 3 sc in last ch; along the {} side of the chain work "
        "1 sc in each of next {} ch, join. (14 sc)\n"
    )
    for side in ("other", "opposite"):
        assert counts(check(text.format(side, 4))) == [14]
        assert "places-left-over" in _corrections(text.format(side, 3))


@pytest.mark.parametrize(
    "words",
    [
        "These 2 rows form the pattern.",
        "The last row sets the patt.",
        "Rows 1 and 2 form the pattern.",
        "2nd row forms patt.",
    ],
)
def test_rows_that_form_the_pattern_are_told_of(words: str) -> None:
    """The sentence works nothing, and the rows behind it are counted."""
    text = (
        _FLAT
        + "Row 2: Ch 1, sc in each sc across, turn. (11 sc)\n{}\nRow 3: Ch 1, sc2tog, sc in each sc across. (10 sc)\n"
    )
    assert counts(check(text.format(words))) == [11, 11, 10]


def test_rows_that_form_the_pattern_and_are_worked_again() -> None:
    """ "…, rep them 6 times" behind the same words is more than telling: what is worked is not passed over."""
    text = (
        _FLAT + "These 2 rows form the pattern, rep them 6 times.\nRow 3: Ch 1, sc2tog, sc in each sc across. (10 sc)\n"
    )
    assert counts(check(text))[-1] is None


def test_the_second_of_the_last_three() -> None:
    """ "In 2nd of last 3 sts" passes all three, where the words before have come as far as those; else it is not known."""
    text = _FLAT + "Row 2: Ch 1, sc in next {} sc, dc in 2nd of last 3 sc, turn. ({} sts)\n"
    assert counts(check(text.format(8, 9))) == [11, 9]
    assert counts(check(text.format(5, 6)))[1] is None


def test_whom_a_hat_fits_is_its_size() -> None:
    """ "Fits head 54-57 cm" gives a finished size; "Fits in a bag" gives none."""
    text = "Cap\n{}\n\nRnd 1: 6 sc in magic ring. (6)\n"
    lacks = "The pattern does not give a finished size."
    assert lacks not in _lacking(text.format("Fits head 54-57 cm (21-22½ in)"))
    assert lacks in _lacking(text.format("Fits in a bag"))


def test_a_piece_begun_in_a_colour() -> None:
    """ "In Color A, ch 9." and "In heather, ch 9." begin a piece; "In thumbhole, ch 9, sc …" names a place that is not known."""
    text = _HEAD + "Tab\n{}, ch 9{}.\nRow 1: Sc in 2nd ch from hook and in each ch across. ({} sc)\n"
    for words in ("In Color A", "In heather", "In MC"):
        assert counts(check(text.format(words, "", 8)))[-1] == 8
        assert "count-differs" in _corrections(text.format(words, "", 9))
    assert counts(check(text.format("In thumbhole", ", sc in next ch", 8)))[0] is None


def test_the_stitch_that_another_piece_is_joined_in() -> None:
    """ "Join to first leg with sc in any st" is one stitch of that leg; so many more go on around it."""
    text = _HEAD + (
        "Legs (make 2)\nRnd 1: 8 sc in magic ring. (8)\nRnd 2: Sc in each sc. (8)\n\nBody\n"
        "Rnd 3: Ch 2, join to first leg with sc in {} st, sc 7 around first leg, sc in each of the 2 ch, sc 8 around second leg, "
        "sc in the other side of the 2 ch ({})\nRnd 4: Sc in each st around. ({})\n"
    )
    assert counts(check(text.format("any", 20, 20))) == [8, 8, 20, 20]
    assert counts(check(text.format("the next", 20, 20))) == [8, 8, 20, 20]
    assert "count-differs" in _corrections(text.format("any", 21, 21))


def test_one_of_those_that_a_run_has_left() -> None:
    """ "Sc to last 4 sc, dc in 2nd of these": of the four; where no words tell which those are, the row is not counted."""
    text = _FLAT + "Row 2: Ch 1, {} dc in 2nd of these{}, turn. ({} sts)\n"
    assert counts(check(text.format("sc in each sc to last 4 sc,", "", 8))) == [11, 8]
    assert "count-differs" in _corrections(text.format("sc in each sc to last 4 sc,", "", 9))
    assert counts(check(text.format("sc in each sc to last 4 sc,", " 3 sc", 8)))[1] is None
    assert counts(check(text.format("", "", 1)))[1] is None


def test_a_marked_passage_called_for_between_other_work() -> None:
    """ "*A*, B, rep from * to *, C, rep from * to *, D": once more at each call, as yokes are written."""
    text = _HEAD + (
        "Yoke\nCh 32.\nRow 1: Dc in 4th ch from hook (3 skipped ch count as dc) and in each ch across, turn. (30 dc)\n"
        "Row 2: Ch 3 (counts as dc), dc in next 4 dc, *(dc, ch 1, dc) in next dc{0}, dc in next 5 dc, rep from * to {0}, "
        "dc in next 8 dc, rep from * to {0}, dc in next 4 dc, rep from * to {0}, dc in last 4 dc, turn. ({1} dc)\n"
    )
    for sign in ("*", "**"):
        report = check(text.format(sign, 34))
        assert counts(report) == [30, 34], sign
        assert spaces(report)[1] == {1: 4}
        assert "count-differs" in _corrections(text.format(sign, 35))


def test_what_lies_before_the_next_space_is_not_all_that_is_left() -> None:
    """ "Skip all dc to next ch-1 sp" goes on to the space behind the one come to; it does not leave all the rest."""
    text = _HEAD + (
        "Yoke\nCh 22.\nRow 1: Dc in 4th ch from hook (3 skipped ch count as dc) and in each ch across, turn. (20 dc)\n"
        "Row 2: Ch 3 (counts as dc), dc in next 4 dc, ch 1, dc in next 9 dc, ch 1, dc in last 6 dc, turn. (20 dc)\n"
        "Row 3: Ch 3 (counts as dc), dc in each dc to first ch-1 sp, ch 2, skip {}, dc in each dc to end, turn.\n"
    )
    for words, made in (
        ("all dc to next ch-1 sp", 11),
        ("to next ch-1 sp", 11),
        ("each dc to next ch-1 sp", 11),
        ("all sts between the ch-1 sps", None),
    ):
        assert counts(check(text.format(words)))[2] == made, words
