"""Wordings of garments, socks and mittens: gaps, edges, markers, pieces as others; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes

HEAD = """Bothy

US terms. Ch 1 at the start does not count as a st.

ch = chain, sc = single crochet, sc2tog = single crochet 2 together, hdc = half double crochet, sl st = slip stitch, st = stitch, rnd = round

"""
RING = "Ch 16, join with sl st to first ch.\nRnd 1: Ch 1, hdc in each ch around, join. (16 hdc)\n"
GAP = "Rnd 2: Ch 1, hdc in next 6 hdc, ch 2, skip next 4 hdc, hdc in next 6 hdc, join. (12 hdc)\n"
FLAT = "Ch 16.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (15 sc)\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("hdc in each hdc and in the ch-2 sp around", 13),
        ("hdc in each st and in the ch-2 sp", 13),
        ("hdc in each hdc and in the 2 ch around", 14),
        ("hdc in each hdc and each ch around", 14),
    ],
)
def test_a_run_over_stitches_and_the_gap_among_them(words: str, made: int) -> None:
    """A space that is named beside the stitches of a run lies among them: the run goes on behind it."""
    report = check(HEAD + RING + GAP + f"Rnd 3: Ch 1, {words}, join. ({made} hdc)\n")
    assert counts(report) == [16, 12, made] and outcomes(report)[-1] == "agrees"


def test_a_run_up_to_a_space_may_end_there() -> None:
    """Where the words leave the rest unworked, the row ends at the space."""
    text = HEAD.replace("rnd = round", "rem = remaining") + FLAT
    text += "Row 2: Ch 1, sc in next 6 sc, ch 2, skip next 3 sc, sc in next 6 sc, turn. (12 sc)\n"
    text += "Row 3: Ch 1, sc in each sc and in the ch-2 sp, turn, leaving rem sts unworked. (7 sc)\n"
    assert counts(check(text)) == [15, 12, 7]


@pytest.mark.parametrize(
    "words", ["Ch 24 + 1 turning ch.", "24 ch plus 1 turning chain.", "Make 24 ch + 1 turning ch."]
)
def test_turning_chains_told_beside_the_foundation(words: str) -> None:
    """ "24 ch + 1 turning ch" are 25 chains, and a row may begin with a turning chain told by its number."""
    rows = "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (24 sc)\nRow 2: 1 turning ch, sc in each sc across, turn. (24 sc)\n"
    report = check(HEAD + words + "\n" + rows)
    assert counts(report) == [24, 24] and outcomes(report) == ["agrees", "agrees"]


@pytest.mark.parametrize("ending", ["= 14 sc", "(14 sc)", "- 14 sc", ", turn. (14 sc)"])
def test_every_following_chain_is_each_of_them(ending: str) -> None:
    """ "1 sc in every following ch" runs to the end, whatever sign stands behind it."""
    head = HEAD.replace("st = stitch", "foll = following, st = stitch")
    report = check(head + f"Ch 15.\nRow 1: 1 sc in 2nd ch from hook, 1 sc in every foll ch {ending}\n")
    assert counts(report) == [14]


def test_the_last_one_goes_where_it_is_said() -> None:
    """ "The last one in the turning ch": of the run before it."""
    text = "Scarf\n\nUK terms\n\nch = chain, tr = treble\n\nMake 12 ch.\n"
    text += "Row 1: 1 tr in 4th ch from hook (the 3 missed ch count as 1 tr), 1 tr in each ch to end, turn = 10 tr.\n"
    text += "Row 2: 3 ch (= 1 tr), miss the first tr, 1 tr in every tr, the last one in the turning ch = 10 tr.\n"
    assert counts(check(text)) == [10, 10]


@pytest.mark.parametrize("figures", ["60 (66, 72)", "60 / 66 / 72"])
def test_work_behind_a_join_of_yarn_is_not_passed_over(figures: str) -> None:
    """A list over the sizes behind "and work" is work, as one number is."""
    sizes = "Sizes: S (M, L)\n" if "(" in figures else "Sizes: S / M / L\n"
    text = HEAD.replace("Bothy\n", "Bothy\n\n" + sizes)
    text += f"EDGING\nRow 1: Rejoin yarn at the hem of the right front and work {figures} sc evenly up the front edge, turn.\n"
    text += f"Row 2: Ch 1, sc in each sc across. {figures} sc\n"
    report = check(text)
    assert [counts(report, size) for size in range(3)] == [[60, 60], [66, 66], [72, 72]]


SHOULDERS = """BACK
Ch 19.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (18 sc)

RIGHT SHOULDER
Row 1: Ch 1, sc in next 5 sts, turn. (5 sc)
Row 2: Ch 1, sc in each st to end. (5 sc)
Fasten off.

LEFT SHOULDER
"""


def test_the_yarn_is_rejoined_in_a_stitch() -> None:
    """ "Rejoin the yarn in the next st" names the stitch as "join yarn in next st" does."""
    text = (
        HEAD
        + SHOULDERS
        + "Skip the next 8 sts and rejoin the yarn in the next st.\nRow 1: Ch 1, sc in each st to end, turn.\n"
    )
    assert counts(check(text)) == [18, 5, 5, 5]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("skip the first 2 sts and the last 2 sts for the thumb, hdc in each of the next 12 sts", 12),
        ("sk the first st and the last st, hdc in each rem st", 14),
        ("hdc in each st around, skipping the first 3 sts and the last 3 sts", 10),
    ],
)
def test_first_and_last_stitches_skipped_together(words: str, made: int) -> None:
    """What is skipped at both ends of a round is told in one breath."""
    report = check(HEAD + RING + f"Rnd 2: Ch 1, {words}, join. ({made} hdc)\n")
    assert counts(report) == [16, made] and not [f for f in all_findings(report) if f[0] == "places-left-over"]


def test_skipped_ends_with_yarn_joined_between_are_not_understood() -> None:
    """Where the round begins anew between them, which are the last is not known."""
    words = "Skip the first 3 sts and the last 3 sts, join yarn in next st, ch 1, hdc in each st, join. (10 hdc)"
    assert outcomes(check(HEAD + RING + f"Rnd 2: {words}\n")) == ["agrees", "not-recomputed"]


@pytest.mark.parametrize("side", ["first side of the heel", "first side of heel flap", "other side of the gusset"])
def test_the_side_of_a_heel_is_an_edge(side: str) -> None:
    """Stitches along "the first side" of a heel are as many as the words say."""
    report = check(HEAD + f"HEEL\n{FLAT}Rnd 2: Ch 1, 9 sc along the {side}, sc in next 15 sts, join. (24 sc)\n")
    assert counts(report)[-1] == 24


@pytest.mark.parametrize(
    "words",
    [
        "turn the work to go on along the other side of the ch:",
        "turn to proceed down the opposite side of the foundation ch,",
    ],
)
def test_turns_that_lead_along_the_other_side(words: str) -> None:
    """The piece is turned round its chain, and not over."""
    report = check(
        HEAD
        + f"Ch 9.\nRnd 1: Sc in 2nd ch from hook, sc in next 6 ch, 3 sc in last ch, {words} sc in next 6 ch, 2 sc in last ch. (18 sc)\n"
    )
    assert counts(report) == [18] and outcomes(report) == ["agrees"]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("5 times evenly spaced across work sc2tog", 10),
        ("3 times evenly spaced: 2 sc in next st", 18),
        ("work sc2tog 4 times evenly spaced", 11),
    ],
)
def test_shaping_spread_over_the_run_before(words: str, made: int) -> None:
    """So many times one stitch more or less than the run makes."""
    assert counts(check(HEAD + FLAT + f"Row 2: Ch 1, sc in each st across, {words}, turn. ({made} sc)\n")) == [15, made]


def test_times_of_something_that_does_not_shape_are_not_understood() -> None:
    """ "4 times evenly spaced ch 1" changes the row in a way that is not known."""
    report = check(HEAD + FLAT + "Row 2: Ch 1, sc in each st across, 4 times evenly spaced ch 1, turn.\n")
    assert outcomes(report)[-1] == "not-recomputed"


GROWING = RING + "Rnd 2: Ch 1, *hdc in next 3 sts, 2 hdc in next st; rep from * around, join. (20 hdc)\n"


@pytest.mark.parametrize(
    "words",
    [
        "Continue as established for 5 more rnds.",
        "Carry on like this for another 5 rnds.",
        "Keep increasing in this way for 5 rnds.",
        "Do this for 5 more rnds.",
        "Proceed in pattern until work measures 12 cm.",
    ],
)
def test_going_on_is_never_passed_over(words: str) -> None:
    """Rows told by "go on like this" stand in the ledger, and the row behind them is not recomputed."""
    report = check(HEAD + GROWING + words + "\nNext rnd: Ch 1, hdc in each st around, join.\n")
    assert [row.cells[0].outcome.value for row in report.ledger.rows[3:]] == ["not-recomputed"] * 2


def test_talk_that_sounds_like_going_on_is_none() -> None:
    """ "Keep in mind that every 2 rows make one ridge" works nothing."""
    text = (
        HEAD
        + GROWING
        + "Keep in mind that every 2 rnds make one ridge.\nRnd 3: Ch 1, hdc in each st around, join. (20 hdc)\n"
    )
    assert outcomes(check(text)) == ["agrees"] * 3


MARKED = (
    "Rnd 2: Ch 1, hdc in next 4 sts, place marker, hdc in next 8 sts, place marker, hdc in next 4 sts, join. (16 hdc)\n"
)


@pytest.mark.parametrize(
    ("words", "last"),
    [
        ("moving the markers up as you go", 17),
        ("carrying markers up", 17),
        ("moving both markers 1 st to the left", None),
    ],
)
def test_markers_moved(words: str, last: int | None) -> None:
    """Markers go up with the work; where they are moved aside, nothing can be told by them."""
    rows = f"Rnd 3: Ch 1, hdc in each st around, {words}, join. (16 hdc)\n"
    rows += "Rnd 4: Ch 1, hdc in each st to first marker, 2 hdc in next st, hdc in each st around, join. (17 hdc)\n"
    assert counts(check(HEAD + RING + MARKED + rows)) == [16, 16, 16, last]


LEG = "FIRST LEG\nCh 8.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (7 sc)\nRow 2: Ch 1, 2 sc in first st, sc in each st across, turn. (8 sc)\nRow 3: Ch 1, sc in each st across. (8 sc)\nFasten off.\n\n"


@pytest.mark.parametrize(
    ("call", "made"),
    [
        ("Work as for First Leg, but do not fasten off at the end of Row 3.", [7, 8, 8]),
        ("Work as first leg up to and including Row 2.", [7, 8]),
        ("Work as for First Leg to Row 2 inclusive.", [7, 8]),
    ],
)
def test_a_piece_worked_as_another_to_a_row(call: str, made: list[int]) -> None:
    """The rows of the other piece are worked again, up to the one named."""
    report = check(HEAD + LEG + f"SECOND LEG\n{call}\n")
    rows = [row for row in report.ledger.rows[4:] if row.cells[0].made is not None and row.cells[0].made.stitches]
    assert [row.cells[0].made.stitches for row in rows] == made


def test_a_toe_that_is_slip_stitched_together_is_a_seam() -> None:
    """What is closed after the last round takes nothing from it."""
    text = (
        HEAD
        + RING
        + "Rnd 2: Ch 1, hdc in each st around, join. (16 hdc)\nTurn the sock inside out and join the toe with sl st.\n"
    )
    assert outcomes(check(text)) == ["agrees"] * 2


BUTTONS = (
    FLAT
    + "Row 2: Ch 1, sc in next 3 sc, *ch 2, skip 2 sc, sc in next 2 sc; rep from * across, turn. (9 sc, 3 buttonholes)\n"
)


def test_buttonholes_are_places() -> None:
    """ "2 sc in each buttonhole" goes into the space that the row before made."""
    report = check(HEAD + BUTTONS + "Row 3: Ch 1, sc in each sc and 2 sc in every buttonhole across. (15 sc)\n")
    assert counts(report) == [15, 9, 15]


def test_chains_over_an_underarm_are_told_from_lace() -> None:
    """ "Each underarm ch" is plain with two gaps; among more spaces nobody can tell which are meant."""
    gaps = "Rnd 2: Ch 1, [hdc in next 4 hdc, ch 3, skip next 4 hdc] twice, join. (8 hdc)\n"
    lace = "Rnd 2: Ch 1, [hdc in next 2 hdc, ch 2, skip next 2 hdc] 4 times, join. (8 hdc)\n"
    last = "Rnd 3: Ch 1, hdc in each hdc and in each underarm ch around, join.\n"
    assert counts(check(HEAD + RING + gaps + last)) == [16, 8, 14]
    assert counts(check(HEAD + RING + lace + last)) == [16, 8, None]


@pytest.mark.parametrize(
    "told",
    [
        "There are now 16 hdc: 6 on the back and 10 on the front.",
        "You should have 16 sts, 4 for each sleeve and 8 for the back.",
    ],
)
def test_a_count_shared_out_among_parts(told: str) -> None:
    """What of a count lies on each part is no work, and the count is compared."""
    right = check(HEAD + RING + f"Rnd 2: Ch 1, hdc in each st around, join. {told}\n")
    wrong = check(HEAD + RING + f"Rnd 2: Ch 1, hdc in each st around, join. {told.replace('16', '17')}\n")
    assert outcomes(right)[-1] == "agrees" and outcomes(wrong)[-1] == "differs"
    assert corrections(wrong) == [("count-differs", 9)]


@pytest.mark.parametrize(
    "note", ["counts as hdc in same st", "counts as first hdc in the same st", "counts as 1 hdc in same place"]
)
def test_a_chain_that_counts_where_the_yarn_was_joined(note: str) -> None:
    """It says where the chain stands, and nothing more is worked there."""
    text = HEAD + FLAT + f"Row 2: Sl st in next 4 sts, ch 2 ({note}), hdc in next 6 sts, turn.\n"
    assert counts(check(text)) == [15, 7]


def test_more_than_what_the_chain_counts_as_is_not_passed_over() -> None:
    """ "(counts as hdc, hdc in same st)" tells work among the words of a note."""
    text = HEAD + FLAT + "Row 2: Ch 2 (counts as hdc, hdc in same st), hdc in next 6 sts, turn.\n"
    assert outcomes(check(text))[-1] == "not-recomputed"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc evenly around, working 64 sc, join", 64),
        ("sc evenly around, for a total of 64 sc, join", 64),
        ("sc evenly around, making 64 sc in all, join", 64),
        ("sc evenly around, working 3 sc in each corner, join", None),
        ("sc evenly around, join", None),
    ],
)
def test_how_many_come_of_an_edge_is_told_behind(words: str, made: int | None) -> None:
    """A number behind "evenly around" is the whole; what goes into corners is not."""
    assert counts(check(HEAD + FLAT + f"EDGING\nRnd 1: Ch 1, {words}.\n"))[-1] == made


@pytest.mark.parametrize("tail", ["", ", working in both loops", ", working in back loops"])
def test_rows_even_in_one_loop_or_both(tail: str) -> None:
    """Which loops are worked changes no count."""
    report = check(HEAD + RING + f"Work 4 rnds even in hdc{tail}.\nNext rnd: Ch 1, hdc in each st around, join.\n")
    assert [row.cells[0].made.stitches for row in report.ledger.rows if row.cells[0].made.stitches] == [16] * 6


LISTS = (
    "Abbreviations (US)\nch = chain; sc = single crochet; sl st = slip stitch; st = stitch; t-ch = turning chain\nfan = 4 sc in the stitch named",
    "Key to abbreviations\nch = chain; sc = single crochet; sl st = slip stitch; st = stitch\nfan = 4 sc in st or sp indicated",
)


@pytest.mark.parametrize("listed", LISTS)
def test_the_last_line_of_a_list_of_abbreviations_is_an_entry(listed: str) -> None:
    """A line that is an entry of its own is no end of the one above it."""
    text = f"Bothy\n\nUS terms\n\n{listed}\n\nPIECE\nCh 12.\n"
    text += "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (11 sc)\nRow 2: Ch 1, sc in first st, fan in next st, sc in each st across. (14 sc)\n"
    assert counts(check(text)) == [11, 14]


def test_headings_in_capitals_before_their_content() -> None:
    """ "ABBREVIATIONS ch chain, …" and "GAUGE 13 dc …" need no sign."""
    text = "OSIER CARDIGAN\n\nGAUGE 13 sc / 15 rows = 4 in.\n\n"
    text += (
        "ABBREVIATIONS ch chain, sc single crochet, sc2tog single crochet 2 together, st(s) stitch(es)\n\nUS terms\n\n"
    )
    text += "BODY\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (11 sc)\nRow 2: Ch 1, sc2tog, sc in each st across. (10 sc)\n"
    report = check(text)
    assert {section.key for section in report.pattern.sections} >= {"gauge", "abbreviations"}
    assert not [finding for finding in report.findings if finding.rule == "abbreviation-undefined"]


SLEEVE = "SLEEVE\n" + FLAT + "Make the other sleeve alike.\n\nNECK EDGE\n"


def test_one_round_of_so_many_along_an_edge() -> None:
    """ "Work 1 round of 40 sc along the neck edge" makes 40, and the next round stands on them."""
    report = check(
        HEAD
        + SLEEVE
        + "Work 1 round of 40 sc along the neck edge.\nRound 2: Ch 1, sc in each sc around, join. (40 sc)\n"
    )
    assert counts(report)[-1] == 40


@pytest.mark.parametrize(
    "line",
    [
        "Work a total of 40 sc along the neck edge.",
        "Now crochet 40 stitches around the neck.",
        "Work one row of sc along the side.",
    ],
)
def test_work_along_an_edge_is_never_taken_for_talk(line: str) -> None:
    """What is not understood stands in the ledger, and the next round is not worked upon the sleeve."""
    report = check(HEAD + SLEEVE + line + "\nRound 2: Ch 1, sc in each sc around, join.\n")
    assert counts(report)[-1] is None
    assert ("not-understood", 13) in all_findings(report)


@pytest.mark.parametrize("tail", ["one in each row", "1 sc in each row end", "one st in each row end"])
def test_one_in_each_row_end_adds_none(tail: str) -> None:
    """It tells where the stitches go that were counted before it."""
    assert counts(
        check(HEAD + f"EDGING\nRow 1: Ch 1, work 24 sc along the side of the band, {tail}, turn. (24 sc)\n")
    ) == [24]


def test_stitches_skipped_in_the_middle() -> None:
    """ "Skip 8 sts in the middle" passes over as many as "skip the middle 8 sts"."""
    text = (
        HEAD
        + SHOULDERS
        + "Skip 8 sts in the middle and join yarn in the next st.\nRow 1: Ch 1, sc in each st to end, turn.\n"
    )
    assert counts(check(text)) == [18, 5, 5, 5]
