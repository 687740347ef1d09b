"""Words that a page's width cuts, and counts that stand close to work (common practice, no source)."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

_HEAD = "Warming Pad\n\nUS terms\n\n"


def told(text: str, *rules: str) -> list[str]:
    """The findings of these rules."""
    return [rule for rule, _ in all_findings(check(text)) if rule in rules]


@pytest.mark.parametrize(
    "words",
    [
        "2 x (4 sc, inc) 10 sc – 22 sts.",
        "2 x (4 sc, inc) 10 sc = 22",
        "(4 sc, inc) x 2 10 sc (22)",
    ],
)
def test_work_behind_a_bracket_is_no_count_where_one_follows(words: str) -> None:
    """The ten stitches are worked; the count is what stands last."""
    text = _HEAD + f"PAD\nRnd 1: 20 sc in magic ring. (20)\nRnd 2: {words}\n"
    assert counts(check(text)) == [20, 22]
    assert not told(text, "places-left-over", "count-differs")


@pytest.mark.parametrize(
    "words",
    [
        "1 sc in each st across – 12 sc. 1 ch, turn.",
        "1 sc in each st across = 12 sc, 1 ch, turn",
        "1 sc in each st across - 12, 1 ch and turn",
        "1 sc in each st across (12). 1 ch",
        "1 sc in each st across, 12 sc. 1 ch, turn.",
    ],
)
def test_the_next_rows_chain_is_no_part_of_the_count(words: str) -> None:
    """In UK style the number stands before the chain, behind the count and before the turn."""
    text = _HEAD + f"PAD\nRow 1: Fsc 12, turn. (12)\nRow 2: 1 ch, {words}\nRow 3: 1 sc in each st across. (12)\n"
    assert counts(check(text)) == [12, 12, 12]
    assert not told(text, "count-differs")


def test_a_chain_that_is_counted_stays_a_count() -> None:
    """Without a turn behind it, "3 chains" is what the row is said to have."""
    text = _HEAD + "PAD\nRow 1: Fsc 12, turn. (12)\nRow 2: Ch 1, 1 sc in each st across – 12 sc, 3 ch.\n"
    assert told(text, "count-differs")


def test_a_line_that_hangs_on_the_one_above_opens_no_piece() -> None:
    """ "10 sc in" / "A." and "the other side of the" / "chain: …" are one clause each."""
    text = (
        _HEAD
        + "PAD\nCh 9.\nRnd 1: Sc in 2nd ch from hook and in next 6 ch, 4 sc in last ch. Now work along the other side of the\n"
        "chain: sc in next 6 ch, 3 sc in last ch. Join. (20)\n"
        "Rnd 2: 5 sc in B, 5 sc in A, 10 sc in\nA.\nRnd 3: 20 sc.\n"
    )
    report = check(text)
    assert [part.name for part in report.pattern.parts] == ["PAD"]
    assert counts(check(text))[-3:] == [20, 20, 20]


def test_the_other_side_of_the_chain_goes_on_with_the_round() -> None:
    """The first side ends with the line, and its round has no count yet."""
    text = (
        _HEAD + "PAD\nCh 9.\nRnd 1: Sc in 2nd ch from hook and in next 6 ch, 4 sc in last ch.\n"
        "Now work along the other side of the chain: sc in next 6 ch, 3 sc in last ch. Join. (20)\n"
        "Rnd 2: Sc in each st around.\n= 20 sc\n"
    )
    assert counts(check(text))[-2:] == [20, 20]
    assert not told(text, "count-differs", "places-left-over")


def test_units_in_capitals_go_on_with_the_count() -> None:
    """ "– 12 (14)" / "SC, 1 CH-2 SP": the line above is not the whole of it."""
    text = (
        "WARMING PAD\n\nSIZES: SMALL (LARGE)\n\nUS TERMS\n\nPAD\nROW 1: FSC 13 (15), TURN. – 13 (15) SC\n"
        "ROW 2: CH 1, SC IN NEXT 6 (7) ST, CH 2, SKIP 1 ST, SC IN NEXT 6 (7) ST – 12 (14)\nSC, 1 (1) CH-2 SP\n"
    )
    assert counts(check(text), 1) == [15, 14]


def test_abbreviations_cut_by_the_page_are_no_piece() -> None:
    """ "U.S. terms: ch, chain; dc, double" / "crochet; …" tells words; the rows below have one heading."""
    text = (
        "WARMING PAD\n\nU.S. terms: ch, chain; sc, single\ncrochet; sk, skip; st, stitch.\n\n"
        "Ch 13.\n\n1st Row. Sc in 2nd ch from hook and in\neach ch across—12 sc. Ch 1, turn.\n"
    )
    assert {part.name for part in check(text).pattern.parts} == {"WARMING PAD"}
    assert counts(check(text))[-1] == 12


def test_a_fraction_cut_from_its_number() -> None:
    """5 1/2 in is 14 cm (1 in = 2.54 cm): the half alone is not what is printed."""
    text = (
        _HEAD
        + "Gauge: 14 sc and 16 rows = 4 in [10 cm]; each square = 5\n1/2 in [14 cm]\n\nPAD\nRnd 1: 6 sc in ring. (6)\n"
    )
    assert not told(text, "measurement-disagrees")


@pytest.mark.parametrize(
    "said", ["Do not fasten off the second leg.", "Do not fasten off this one.", "Do not fasten off."]
)
def test_what_is_not_fastened_off_may_be_named(said: str) -> None:
    """Which piece goes on is no work."""
    text = _HEAD + f"LEG\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 6 sc. {said}\n"
    assert counts(check(text)) == [6, 6]
    assert not told(text, "not-understood")


def test_counts_of_several_rounds_in_a_sentence() -> None:
    """ "There are now 13 sc; 14 sc." are the counts of two rounds, one after the other."""
    text = (
        _HEAD
        + "PAD\nRnd 1: 12 sc in magic ring. (12)\nRnds 2-3: 2 sc in first st, sc in each st around. There are now 13 sc; 14 sc.\n"
    )
    assert counts(check(text)) == [12, 13, 14]
    assert not told(text, "count-differs")


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("Ch 1, skip first 2 (3) 4\nsts, sc in each st across, turn = 18 (21)\n24 sc.", [18, 21, 24]),
        (
            "Ch 1, sc in each of the 10 (12) 14\nsts, leave the last 10 (12) 14\nsts unworked, turn = 10 (12) 14 sc.",
            [10, 12, 14],
        ),
        (
            "Ch 1, sc in each of next 10 (12)\n14 sts, sc2tog over next 2 sts, sc in each st across, turn = 19 (23) 27 sc.",
            [19, 23, 27],
        ),
    ],
)
def test_a_list_over_the_sizes_cut_by_the_page_goes_on(row: str, made: list[int]) -> None:
    """ "10 (12)" of three sizes is no count that ends its row, nor is one behind "each of the"."""
    text = f"Warm Jerkin\n\nSizes: S (M) L\n\nUS terms\n\nBACK\nRow 1: Fsc 20 (24) 28, turn. – 20 (24) 28 sc\nRow 2: {row}\n"
    report = check(text)
    assert [counts(report, size)[-1] for size in range(3)] == made
    assert not told(text, "count-differs", "not-understood", "size-list-length")


def test_a_bracket_goes_on_with_the_row_above() -> None:
    """ "(counts as the first dc), make 11 dc in" is no heading over eleven pieces."""
    text = (
        _HEAD
        + "ROUND PAD\nRound 1: Make a magic ring, ch 3\n(counts as the 1st dc), make 11 dc in\nthe ring. Close with a sl st in the\n3rd ch. (12 dc)\n"
    )
    assert counts(check(text)) == [12]


def test_a_stitch_told_in_two_lines_is_no_piece() -> None:
    """ "C4F (cable 4 front): sk 2 sts, FPtr" tells a stitch; what it is for follows in the next line."""
    text = (
        "Warming Pad\n\nUS terms\n\nSpecial stitches\nC4F (cable 4 front): sk 2 sts, FPtr\naround each of next 2 sts, working in front FPtr\n"
        "around each of the 2 skipped sts.\n\nPAD\nRow 1: Fdc 12, turn. (12)\nRow 2: Ch 2, dc in next 4 sts, C4F, dc in next 4 sts. (12)\n"
    )
    assert [part.name for part in check(text).pattern.parts] == ["PAD"]


def test_an_abbreviation_cut_from_its_meaning() -> None:
    """ "sc = single crochet, ch" / "= chain st" explains both."""
    text = "Warming Pad\n\nAbbreviations (US): sc = single crochet, ch\n= chain st, st = stitch\n\nPAD\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch. (12)\n"
    assert not told(text, "abbreviation-undefined")


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("Sc in first st; 2 sc in each st around.", 23),
        ("Sc in first 11 sts; 2 sc, 1 ch, 2 sc in last st; join. (15 sc)", 15),
        ("Sc in first 10 sts; 2 sc; (12)", 12),
        ("Sc in first 10 sts; 2 sc; 12 sc; join.", 12),
        ("*Sc in next st; 2 sc in next st; rep from * to last 2 sts; 2 sc.", 17),
        ("5 sc; inc; 5 sc; inc; 14 sc.", 14),
        ("2 sc; 3 sc in next st; 9 sc.", 14),
        ("3 sc; skip 1 st; 8 sc.", 11),
        ("Sc in next 4 sts; 2 sc; 3 sc in next st; sc in last 5 sts.", 14),
        ("Sc in first 6 sts; hdc in last 6 sts; 6 sc; 6 hdc.", 12),
        ("Sc in next 6 sts; 3 hdc; 3 sc.", 12),
        ("6 sc; 3 hdc; 3 sc; 12 sts.", 12),
        ("4 sc; 4 hdc; 4 dc.", 12),
        ("6 sc; 6 hdc.", 12),
        ("6 sc; 6 hdc; join.", 12),
        ("Sc in next 6 sts; 3 hdc; 3 sc; 9 sc, 3 hdc.", 12),
    ],
)
def test_clauses_parted_by_semicolons_are_no_counts(row: str, made: int) -> None:
    """ "; 2 sc in each st" goes somewhere, and "; 2 sc" behind ten stitches is too few for a count."""
    text = _HEAD + f"PAD\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: {row}\n"
    assert counts(check(text))[-1] == made
    assert not told(text, "count-differs", "places-left-over")


@pytest.mark.parametrize(
    "row",
    [
        "3rd rnd - (sc in next st, inc in next st) repeat 6 times [18]",
        "Rnd 3 - (sc, inc) 6 times [18]",
        "R3 – (sc, inc) x 6 (18)",
        "3rd rnd (sc, inc) around --- 18\nPut in the eyes.",
        "Rnd 3: (sc, inc) x6 – 18\nPut in the eyes.",
    ],
)
def test_a_bracket_that_is_worked_is_no_part_of_the_label(row: str) -> None:
    """A label may tell its side or colour in brackets; what is worked so often is no such thing."""
    label = "R" if row.startswith("R3") else "Rnd "
    head = (
        f"{label}1: 6 sc in magic ring (6)\n{label}2: 6 inc (12)\n"
        if not row[0].isdigit()
        else "1st rnd - 6 sc in magic ring (6)\n2nd rnd - 6 inc (12)\n"
    )
    report = check(_HEAD + "PAD\n" + head + row + "\n")
    assert counts(report) == [6, 12, 18]
    assert not [rule for rule, _ in all_findings(report, ("correction", "query"))]


@pytest.mark.parametrize("label", ["Rnd 3 (white)", "Rnd 3 - (dec rnd)", "Rnd 3 (inc)"])
def test_a_bracket_that_tells_stays_with_its_label(label: str) -> None:
    """What the round is worked in, or what is done in it, is said and not worked."""
    text = _HEAD + f"PAD\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 6 inc. (12)\n{label}: Sc in each st around. (12)\n"
    assert counts(check(text)) == [6, 12, 12]


@pytest.mark.parametrize(
    "row",
    [
        "In every ch-4 arch work: 1 sc; 1 hdc; 3 dc; 1 hdc; 1 sc. Close with a sl st in the 1st sc.",
        "In each ch-4 sp: 1 sc; 1 hdc; 3 dc; 1 hdc; 1 sc; 84 sts; join.",
        "Work 1 sc; 5 dc; 1 sc in each ch-4 sp; join.",
        "*1 sc; 5 dc; 1 sc in next ch-4 sp; rep from * around; join.",
    ],
)
def test_a_list_parted_by_semicolons_goes_into_one_place(row: str) -> None:
    """Twelve loops with seven stitches each are 84, whatever parts the stitches from each other."""
    text = (
        _HEAD
        + f"PAD\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: (Sc in next st, ch 4) 12 times, join. (12 sc, 12 ch-4 sps)\nRnd 3: {row}\n"
    )
    assert counts(check(text)) == [12, 12, 84]


def test_slip_stitches_are_no_stitches_of_what_a_row_has_made() -> None:
    """Behind four slip stitches and six stitches, "6 sc" is the count and not work."""
    row = "Ch 1, turn, sl st in first 4 sts, ch 1, sc in next 6 sts, leave the last 2 sts unworked. 6 sc."
    text = _HEAD + f"PAD\nRow 1: Fsc 12. (12)\nRow 2: {row}\n"
    assert counts(check(text)) == [12, 6]
    assert not told(text, "count-differs", "places-left-over", "places-run-out")


@pytest.mark.parametrize(
    ("row", "made", "differs"),
    [
        ("(Sc in next st, 2 sc in next st) 6 times; 18 sc. Fasten off, leaving a 30 cm tail.", 18, False),
        ("Sc in each st to last 2 sts; 10 sc.", 10, False),
        ("Sc in next 4 sts, hdc in next 8 sts; 8 hdc.", 12, False),
        ("6 inc, 6 sc, (total) 18 sc.", 18, False),
        ("Ch 4 (counts as tr), dc in next 11 sts; 11 dc, 1 tr.", 12, False),
        ("(Sc in next st, inc) 6 times; 12 sc.", 18, True),
        ("6 sc, inc, 5 sc; 12 sc.", 13, True),
    ],
)
def test_a_count_behind_a_semicolon_is_no_work(row: str, made: int, differs: bool) -> None:
    """Neither a tail's length behind it nor a slip, as of the count of the round before, makes a count the next clause."""
    text = _HEAD + f"PAD\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: {row}\n"
    assert counts(check(text))[-1] == made
    assert bool(told(text, "count-differs")) == differs


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("Sc in next 6 sts, then\n3 sc through both layers, 3 sc. (12)", 12),
        ("Sc in next 6 sts, ch 1\nThen sc through both layers in 6 sts. (12)", 12),
        ("Sc in each st around\n6 sc through both layers to close.", 12),
    ],
)
def test_work_through_both_layers_in_the_next_line(row: str, made: int) -> None:
    """Such a line closes the piece where the row above it is at an end; else it goes on with the row."""
    text = _HEAD + f"PAD\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: {row}\n"
    assert counts(check(text)) == [12, made]
    assert not told(text, "count-differs", "places-left-over")


@pytest.mark.parametrize(
    "turning", ["Ch 1, turn.", "Ch 1. Turn.", "1 ch, turn", "Turn, ch 1.", "Ch 1 and turn your work."]
)
@pytest.mark.parametrize("between", ["\n", "\n\n"])
def test_the_chain_and_turn_between_two_rows(turning: str, between: str) -> None:
    """In a line of its own it leads to the next row, and begins no piece on one chain."""
    rows = [
        "Row 1: Fsc 12. (12)",
        turning,
        "Row 2: Sc in each st across. (12)",
        turning,
        "Row 3: Sc2tog, sc in each st. (11)",
    ]
    text = _HEAD + "PAD\n" + between.join(rows) + "\n"
    assert counts(check(text)) == [12, 12, 11]
    assert not told(text, "count-differs", "places-run-out", "not-understood")


def test_a_chain_that_begins_a_piece_stays_its_foundation() -> None:
    """ "Ch 11, turn." under a heading is what the rows are worked on."""
    text = (
        _HEAD
        + "PAD\nRow 1: Fsc 12, turn. (12)\nFasten off.\n\nSTRAP\nCh 11, turn.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10)\n"
    )
    assert counts(check(text)) == [12, 10]


def test_capitals_go_on_with_the_clause_above() -> None:
    """ "… 1 SC" / "IN THE SAME ST": a stitch before its place is no count."""
    text = "WARMING PAD\n\nUS TERMS\n\nPAD\nROUND 1: 12 SC IN MAGIC RING. (12)\nROUND 2: SC IN NEXT 11 STS. 2 SC\nIN THE LAST ST. (13)\n"
    assert counts(check(text)) == [12, 13]
    assert not told(text, "count-differs", "places-left-over")


@pytest.mark.parametrize(
    "row",
    [
        "In each ch-2 sp work 3 dc; 12 dc. Join.",
        "In each ch-2 sp: 1 dc; 1 tr; 1 dc; 8 dc; join.",
    ],
)
def test_a_count_behind_a_list_does_not_go_into_the_place(row: str) -> None:
    """The same stitch does not stand twice side by side in a list: the last figure counts the round."""
    text = (
        _HEAD
        + f"PAD\nRnd 1: 4 sc in magic ring. (4)\nRnd 2: (2 sc in next st, ch 2) 4 times, join. (8 sc, 4 ch-2 sps)\nRnd 3: {row}\n"
    )
    assert counts(check(text)) == [4, 8, 12]
    assert not told(text, "not-understood", "places-run-out")


@pytest.mark.parametrize(
    "said", ["TO ASSEMBLE THE PIECES SEW THEM", "IN ALL YOU HAVE 6 STS NOW", "THE SECOND EYE IS THE SAME"]
)
def test_a_sentence_in_capitals_behind_a_row_that_is_at_an_end(said: str) -> None:
    """Behind a stop or a count a line in capitals is a sentence of its own."""
    text = f"WARMING PAD\n\nUS TERMS\n\nPAD\nRND 1: 6 SC IN MAGIC RING. (6)\nRND 2: SC IN EACH ST AROUND. (6)\n{said}\n"
    assert counts(check(text))[:2] == [6, 6]


@pytest.mark.parametrize(
    "row",
    [
        "Row 1: Sc in 2nd ch from hook and in each ch across – 11 sc. Now work along the other side of the chain: sc in each ch. (22)",
        "Row 1: Skip 12 ch. Now work along the other side of the chain: sc in each ch. (11)",
    ],
)
@pytest.mark.parametrize("chain", ["Ch 12.", "Ch 2.", "Ch 1."])
def test_the_other_side_of_a_chain_too_short_for_it(chain: str, row: str) -> None:
    """Whatever an author writes is told, and nothing breaks off over it."""
    assert check(_HEAD + f"PAD\n{chain}\n{row}\n").findings
