"""Toys translated from other languages: letters for stitches, lists under other names, parts told in sentences.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes

_ROUNDS = "1 row: 6X in MR (6)\n2 row: 6V (12)\n"


def test_a_list_of_signs_under_another_name() -> None:
    """ "Designations" heads a list of abbreviations, whose letters may be explained in brackets behind their names."""
    report = check(
        "Seal\n\nDesignations:\nMR - magic ring\nX - single crochet\nV - increase (two single crochets in one loop)\n"
        "A - decrease (two loops worked together)\n\nTorso\n" + _ROUNDS + "3 row: (X, V)*6 (18)\n4 row: (X, A)*6 (12)\n"
    )
    assert counts(report) == [6, 12, 18, 12]
    assert corrections(report) == []


def test_a_numbered_section_is_a_section() -> None:
    """ "II. ABBREVIATIONS" among numbered sections heads the list; the pieces are numbered on."""
    report = check(
        "Seal\n\nI. SUPPLIES\nCotton, 2 mm hook\n\nII. ABBREVIATIONS\nX: sc\nV: 2 sc in 1 st\nA: sc2tog\nMR: magic ring\n\n"
        "III. FLIPPER\nR1: 6X in MR (6)\nR2: 6V (12)\nR3: 6A (6)\n"
    )
    assert counts(report) == [6, 12, 6]
    assert [part.name for part in report.pattern.parts] == ["FLIPPER"]


@pytest.mark.parametrize(
    ("meaning", "row", "made"),
    [
        ("A: sc2tog", "10X, A", 11),
        ("A: 2 sc together", "A, 10X", 11),
        ("D - decrease (crochet 2 loops together)", "10X, D", 11),
        ("M: sc3tog", "9X, M", 10),
        ("M = 3 single crochets together", "3M, 3X", 6),
        ("W: 3 single crochets in the same loop", "W, 11X", 14),
        ("W: 3 sc in one loop", "2W, 10X", 16),
    ],
)
def test_letters_take_as_many_places_as_they_say(meaning: str, row: str, made: int) -> None:
    """A letter for a decrease goes over its places, one for an increase into one: the round is used up, and comes out."""
    report = check(f"Seal\n\nAbbreviations\nX: sc\nV: increase\n{meaning}\n\nHEAD\nR1: 6X in MR\nR2: 6V\nR3: {row}\n")
    assert counts(report)[-1] == made
    assert not [rule for rule, _ in all_findings(report) if rule in ("places-left-over", "places-run-out")]


def test_a_cluster_of_decreasing_stitches_still_stands_in_one_place() -> None:
    """ "CL: dc3tog" names a cluster, which goes into one place."""
    report = check(
        "Mat\nUS terms\n\nSpecial stitches\nCL: dc3tog\n\nRnd 1: 6 sc in magic ring.\nRnd 2: CL in each st around. (6)\n"
    )
    assert counts(report) == [6, 6]


def test_pieces_named_in_a_sentence_of_their_own() -> None:
    """ "Paws (4 parts)." over a first round heads a piece; "Stuff it." over a later one does not."""
    report = check(
        "Seal\nUS terms\n\nTorso.\n1 row: 6 sc in mr (6)\n2 row: 6 inc (12)\nStuff it.\n3 row: 12 sc (12)\n\n"
        "Paws (4 parts).\nBlue yarn.\n1 row: 5 sc in mr (5)\n2 row: 5 sc (5)\n"
    )
    assert [part.name for part in report.pattern.parts] == ["Torso", "Paws"]
    assert [part.make for part in report.pattern.parts] == [1, 4]
    assert counts(report) == [6, 12, 12, 5, 5]


def test_a_ring_in_the_first_round_begins_anew() -> None:
    """Where no heading was seen, a first round in a magic ring goes on from nothing."""
    report = check(
        "seal\nus terms\n\ntorso\nrnd 1: 8 sc in magic ring (8)\nrnd 2: inc around (16)\nnow the two little flippers:\n"
        "rnd 1: 5 sc in magic ring (5)\nrnd 2: 5 sc (5)\n"
    )
    assert counts(report) == [8, 16, 5, 5]
    assert corrections(report) == []


def test_the_yarn_in_brackets_under_a_heading_is_no_heading() -> None:
    """ "(in blue, later white)" stands under the piece's name, and takes nothing from it."""
    report = check(
        "Seal\nUS terms\n\nNOSE\n(in blue, later white)\nRnd 1: 4 sc in magic ring (4)\nRnd 2: inc in all 4 st (8)\n"
    )
    assert [part.name for part in report.pattern.parts] == ["NOSE"]


@pytest.mark.parametrize(
    "between",
    [
        "Put the eyes between rows 1 and 2, 3 sc apart.",
        "Switch to blue",
        "We do not fill it.",
        "Leave a long thread and pull the hole closed.",
    ],
)
def test_lines_between_counted_rows_are_no_work(between: str) -> None:
    """What is done between rounds neither lengthens the round above, nor begins a piece."""
    report = check(f"Seal\nUS terms\n\nHEAD\n1. 6 sc in mr = 6\n2. (sc, inc)*3 = 9\n{between}\n3. 9 sc = 9\n")
    assert counts(report) == [6, 9, 9]
    assert [part.name for part in report.pattern.parts] == ["HEAD"]


def test_talk_under_a_table_is_not_of_its_last_row() -> None:
    """The last cell of a table's row is its count, and a sentence under it one of its own."""
    report = check(
        "Seal\nUS terms\n\nTAIL\n\nRnd | What to do | Sts\nR1 | 6 sc in MR | 6\nR2 | inc x6 | 12\nCut the yarn and hide the end.\n"
    )
    assert counts(report) == [6, 12]
    assert set(outcomes(report)) == {"agrees"}


def test_rounds_that_go_on_by_number_are_rounds_still() -> None:
    """A body whose bare numbers go on from the head's is worked in rounds, and so is a sole on both sides of a chain."""
    report = check(
        "Seal\nUS terms\n\nHEAD\n1. 6 sc in mr = 6\n2. 6 inc = 12\n\nBODY\n3. (sc, inc)*6 = 18\n4. 18 sc = 18\n\n"
        "SOLE\n1. ch 4, from the 2nd ch 2 sc, 3 sc in last ch, 1 sc on the other side, 2 sc in last = 8\n2. 8 sc = 8\n"
    )
    kinds = [row.row.label.kind for row in report.ledger.rows if row.row.label is not None]
    assert kinds == ["round"] * 6
    assert counts(report) == [6, 12, 18, 18, 8, 8]


@pytest.mark.parametrize(
    ("start", "made"),
    [
        ("ch 6, from the second loop from the hook 4 sc, 3 sc in the last loop", 7),
        ("ch 6, starting from 2nd ch 4 sc, 3 sc in last ch", 7),
        ("ch 6, from 2nd ch from hook 4 sc, 3 sc in last ch", 7),
    ],
)
def test_a_start_told_before_its_stitches_keeps_their_number(start: str, made: int) -> None:
    """The figure behind "2nd ch" is of the stitches, and the loops of a chain are its chains."""
    report = check(f"Seal\nUS terms\n\nFOOT\nRow 1: {start}.\n")
    assert counts(report) == [made]


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("4 x (2 sc, inc) 6 sc [22]", 22),
        ("4x (2 sc, inc) 6 sc = 22", 22),
        ("3 x (2 sc, inc) 9 sc (22)", 21),
        ("4 x (2 sc, inc) 6 sc", None),  # the figure may be the count
        ("4 x (2 sc, inc) in next 3 sts", None),
    ],
)
def test_times_before_a_bracket_with_work_behind_it(row: str, made: int | None) -> None:
    """Stitches behind the bracket are worked where a count stands behind them."""
    report = check(
        f"Seal\nUS terms\n\nHEAD\nRnd 1: 6 sc in mr (6)\nRnd 2: (sc, inc) x 3 (9)\nRnd 3: inc x 9 (18)\nRnd 4: {row}\n"
    )
    assert counts(report)[-1] == made


def test_legs_joined_with_a_colon_or_in_figures() -> None:
    """ "Ch 2, join with leg 1: 9X on leg 1, 2X on the CH, …": the figures are what the body's first round makes."""
    letters = "Seal\n\nAbbreviations\nX: sc\nV: increase\n\nLEG x2\nR1: 6X in MR (6)\nR2: (X, V)*3 (9)\n\nBODY\n"
    for words in (
        "CH 2, join with leg 1: 9X on leg 1, 2X on the CH, 9X on leg 2, 2X on the CH (22)",
        "from the second leg 2 ch, attach to the first leg, 9X along the first leg, 2X along the chain, 9X along the second leg, 2X along the chain (22)",
    ):
        assert counts(check(letters + f"R3: {words}\nR4: 22X (22)\n"))[-2:] == [22, 22]


def test_a_stitch_in_its_name_with_hyphens() -> None:
    """ "4-dc-bobble" is one stitch."""
    report = check("Seal\nUS terms\n\nRnd 1: 6 sc in mr (6)\nRnd 2: sc 2, 4-dc-bobble in next st, sc 3 (6)\n")
    assert counts(report) == [6, 6]


def test_colours_declared_in_square_brackets_and_figures_explained() -> None:
    """ "Cotton in Ink [K] and Chalk [W]", and a note that says what "4K" means: figures are stitches without a count, too."""
    text = (
        "Pouch\nUS terms\nYarn: cotton, 50 g each of Ink [K] and Chalk [W]\n{}\nBody\nRnd 1: 8 sc in magic ring.\n"
        "Rnd 2: 8K.\nRnd 3: *2K, 2W; rep from * around.\nRnd 4: (1W, 3K) x 2. (8 sts)\n"
    )
    note = "“4K, 1W” means 4 sc in Ink, then 1 sc in Chalk.\n"
    assert counts(check(text.format(note))) == [8, 8, 8, 8]
    assert counts(check(text.format(""))) == [8, None, None, 8]


@pytest.mark.parametrize(
    "row", ["inc 7 → 14", "inc 7 = 14", "inc 7 – 14 sts", "inc 7 => 14 sts", "inc in each st around"]
)
@pytest.mark.parametrize(
    "under",
    [
        "Pinch flat; sc 5 through both sides.",
        "Join thread at the tip, 2 sc.",
        "7 sc through both layers.",
        "Close with 2 sc",
    ],
)
def test_how_a_piece_is_closed_is_not_of_its_last_round(row: str, under: str) -> None:
    """A sentence on the line under a round that is told to its end is none of that round's work."""
    report = check(f"Seal\nUS terms\n\nFIN\nRnd 1: 7 sc in MR (7)\nRnd 2: {row}\n{under}\n")
    labelled = [row.cells[0].made for row in report.ledger.rows if row.row.label is not None]
    assert labelled[1] is None or labelled[1].stitches == 14
    assert corrections(report) == []


def test_so_many_stitches_from_the_second_chain() -> None:
    """ "Sc 4 from 2nd ch": in that chain and the three after it."""
    for words in ("ch 5, sc 4 from 2nd ch → 4", "ch 5, 4 sc from the 2nd ch from hook (4)"):
        assert counts(check(f"Seal\nUS terms\n\nPAW\nRow 1: {words}\nRow 2: ch 1, turn, sc 4 (4)\n")) == [4, 4]
    assert counts(check("Seal\nUS terms\n\nPAW\nRow 1: ch 9, 3 sc from 2nd ch across\n")) == [None]


def test_lists_parted_by_signs_and_glosses_with_a_colon() -> None:
    """ "sc = single crochet ★ inc = increase", "dec (decrease: sc next 2 sts tog)", and the list right behind its heading."""
    for listed in (
        "ABBREVIATIONS\nsc = single crochet ★ inc = increase ★ dec = decrease ★ MR = magic ring",
        "Abbreviations: sc (single crochet), inc (increase: 2 sc in one), dec (decrease: sc next 2 together), MR (magic ring)",
        "ABBREVIATIONS sc – single crochet; inc – increase; dec – decrease; MR – magic ring",
    ):
        report = check(
            f"Seal\nUS terms\n\n{listed}\n\nFIN\nRnd 1: MR 6 → 6\nRnd 2: inc 6 → 12\nRnd 3: {{sc 2, dec}} × 3 → 9\n"
        )
        assert counts(report) == [6, 12, 9]
        assert corrections(report) == []


@pytest.mark.parametrize(
    "words",
    [
        "inc-5sc-inc-5sc",
        "inc - 5sc - inc - 5sc",
        "inc . 5sc . inc . 5sc",
        "5sc; inc; 5sc; inc",
        "inc | 5sc | inc | 5sc",
        "(5sc-inc) x2",
    ],
)
def test_a_list_parted_by_other_signs(words: str) -> None:
    """Two increases and ten stitches on a round of twelve, whatever parts them; nothing of it is a printed count."""
    report = check(f"Ball\n\nUS terms\n\nBODY\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: {words}\n")
    assert report.ledger.rows[-1].first.made.stitches == 14
    assert report.ledger.rows[-1].row.stated is None


@pytest.mark.parametrize("words", ["8 times: sc 2, inc", "8x: 2 sc, inc (32)", "8*(2 sc, inc)", "8*(2 sc, inc) = 32"])
def test_how_often_stands_first(words: str) -> None:
    """Eight times three places of twenty-four, four stitches each."""
    report = check(f"Ball\n\nUS terms\n\nBODY\nRnd 1: 24 sc in magic ring. (24)\nRnd 2: {words}\n")
    assert report.ledger.rows[-1].first.made.stitches == 32
