"""Words of garments in several sizes that tell who works what, and how many; patterns are invented, common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, worked_rows


def table(text: str) -> list[list[int | None]]:
    """What every labelled row makes in each size; None where it is not recomputed or not worked."""
    return [
        [cell.made.stitches if cell.made is not None else None for cell in row.cells]
        for row in worked_rows(check(text))
    ]


@pytest.mark.parametrize(
    "figures", ["{0}, {1}, {2} or {3}", "{0}, {1}, {2}, or {3}"], ids=["without a comma", "with a comma"]
)
def test_lists_whose_last_figure_stands_behind_or(figures: str) -> None:
    """ "For a calf of 30, 34, 38 or 42 cm" names the sizes, and all such lists have one figure for each of them."""
    text = (
        f"Test gaiters\n\nFor a calf of {figures.format(30, 34, 38, 42)} cm\n\nUS terms\n\nLEG\n"
        f"Row 1: Fsc {figures.format(40, 44, 48, 52)}, turn. ({figures.format(40, 44, 48, 52)} sc)\n"
        f"Row 2: Ch 1, sc in next {figures.format(9, 10, 11, 12)} sts, sc2tog, sc in each st across, turn.\n"
        f"The two larger sizes only:\nRow 3: Ch 1, sc in first 20 or 22 sts, sc2tog, sc in each st across, turn.\n"
    )
    report = check(text)
    assert report.pattern.sizes == ("30", "34", "38", "42")
    assert table(text) == [[40, 44, 48, 52], [39, 43, 47, 51], [None, None, 46, 50]]


@pytest.mark.parametrize("words", ["sc in next 5 or 6 sts", "sc2tog 2, 3 or 4 times"])
def test_what_is_left_to_the_maker_is_no_list(words: str) -> None:
    """As many figures as there are sizes are needed, and in two sizes "5 or 6" may mean either."""
    text = f"Test cap\n\nUS terms\n\nSizes: S (M)\n\nCAP\nRow 1: Fsc 20 (24), turn.\nRow 2: Ch 1, {words}, turn.\n"
    assert table(text)[1] == [None, None]


WRITTEN_OUT = "Test caps\n\nUS terms\n\nSizes: Child (50 cm), Adult (56 cm)\n\nCHILD\n{}Rnd 2: Sc in each st around. (8 sc)\nFasten off.\n\nADULT\n{}"


def test_yarn_that_another_size_fastened_off() -> None:
    """Each size is a piece by itself: what the last one cut is no yarn of the next."""
    rounds = "Rnd 1: Sc in each of 9 ch, join. (9 sc)\nRnd 2: Ch 1, sc in each st around.\n"
    text = WRITTEN_OUT.format("Ch 8, join.\nRnd 1: Sc in each ch around.\n", f"Ch 9, join.\n{rounds}")
    assert "yarn-not-joined" not in dict(all_findings(check(text)))


def test_yarn_that_the_same_size_fastened_off() -> None:
    """Within one size work that goes on after fastening off has no yarn."""
    text = WRITTEN_OUT.format("Ch 8, join.\nRnd 1: Sc in each ch around.\n", "").replace(
        "\n\nADULT\n", "\nRnd 3: Ch 1, sc in each st around.\n\nADULT\nRnd 1: 9 sc in magic ring.\n"
    )
    assert ("yarn-not-joined", 12) in all_findings(check(text))


@pytest.mark.parametrize(("ring", "joined"), [("magic ring", True), ("each st", False)])
def test_a_round_that_begins_on_a_chain_and_a_ring(ring: str, joined: bool) -> None:
    """ "Ch 2, 8 hdc in magic ring" starts a piece of its own, and needs no yarn joined; a chain before other stitches does."""
    text = (
        "Test flower\n\nUS terms\n\nFLOWER\nRnd 1: 8 sc in magic ring. (8 sc)\nFasten off.\n"
        f"Rnd 2: Ch 2, 8 hdc in {ring}, join. (8 hdc)\n"
    ).replace("8 hdc in each", "hdc in each")
    assert ("yarn-not-joined" not in dict(all_findings(check(text)))) is joined


@pytest.mark.parametrize(
    ("last", "goes_on"),
    [("[sc in next 3 sts, 2 sc in next st] 6 times. (30 sc)", 24), ("[sc in next 3 sts, 2 sc in next st] 5 times. (25 sc)", 20)],
    ids=["the printed count", "what was made"],
)  # fmt: skip
def test_rows_worked_even_behind_a_slip(last: str, goes_on: int) -> None:
    """What rows without a count go on from is told by the next that shapes, however many lie between."""
    text = (
        "Test cap\n\nUS terms\n\nCROWN\nRnd 1: 18 sc in magic ring. (18 sc)\n"
        "Rnd 2: [Sc in next 8 sts, 2 sc in next st] 2 times. (24 sc)\nRnd 3: Ch 1, sc in each st around.\n"
        f"Rnds 4-6: Sc in each st around.\nRnd 7: {last}\n"
    )
    assert [row[0] for row in table(text)][1:6] == [20, *[goes_on] * 4]


BORDER = "Test waistcoat\n\nUS terms\n\nBORDER\nRow 1: Join yarn at the hem, ch 1, work 90 sc {}, turn.\nRow 2: Ch 1, sc in each sc, turn.\n"


@pytest.mark.parametrize(
    ("edges", "made"),
    [
        ("evenly up right front, round neck and down left front", 90),
        ("evenly along the left front, across back neck, down right front", 90),
        ("up the right front edge, around neckline, and down the left front edge", None),
        ("up the right front edge, around neckline, and down the left front edge, (90 sc)", 90),
    ],
)
def test_stitches_over_several_edges(edges: str, made: int | None) -> None:
    """So many stitches spread go over all the edges that are named, however these are parted; without a word the count tells."""
    assert table(BORDER.format(edges)) == [[made], [made]]


@pytest.mark.parametrize(
    "edges",
    ["evenly up right front, 3 sc in the corner, around neckline", "evenly up right front, around neck working 3 sc in each corner"],
)  # fmt: skip
def test_more_work_among_edges_is_not_passed_over(edges: str) -> None:
    """What is worked besides makes another number, which is not told."""
    assert table(BORDER.format(edges))[0] == [None]


CROWN = (
    "Test beret\n\nUS terms\n\nSizes: S (M, L)\n\nTASSEL\nRnd 1: 3 sc in magic ring.\nRnd 3: Sc in each st.\n\nCROWN\n"
    "Rnd 1: 10 sc in magic ring. (10 sc)\nRnd 2: 2 sc in each st around. (20 sc)\n{}\n"
    "Rnd 3: [Sc in next st, 2 sc in next st] 10 times.\nRnd 4: Sc in each st around.\n"
)


@pytest.mark.parametrize(
    "note",
    [
        "Only M and L work Rnd 3.",
        "Sizes M and L only work Rnd 3.",
        "Work Rnd 3 for M and L only.",
        "M and L: work Rnd 3.",
        "Size S: omit Rnd 3.",
        "S skips Rnd 3.",
        "Leave out Rnd 3 for size S.",
        "Size S does not work Rnd 3.",
    ],
)
def test_a_note_right_above_the_row_that_some_sizes_work(note: str) -> None:
    """It holds for that row alone, though another piece has a row of the same number."""
    assert table(CROWN.format(note)) == [[3] * 3, [3] * 3, [10] * 3, [20] * 3, [None, 30, 30], [20, 30, 30]]


@pytest.mark.parametrize(
    "note", ["Only M and L work Rnd 3, twice.", "Sizes M and L work Rnd 2 again.", "Sizes M and L work Rnd 2."]
)
def test_notes_that_do_not_tell_which_rows_some_sizes_work(note: str) -> None:
    """They are not passed over: what they may speak of is not recomputed for any size."""
    assert [None, None, None] in table(CROWN.format(note))


@pytest.mark.parametrize(
    "words",
    [
        "dc in each ch along other side of chain",
        "then work 1 dc in each ch along the opposite side",
        "1 dc in each ch back down the other side of the chain",
        "now work 1 dc in each of next 8 ch on the other side of the ch",
        "work in dc along other side of ch",
        "dc across the opposite side",
    ],
)
def test_stitches_told_before_the_side_they_go_to(words: str) -> None:
    """Those of the clause that names the other side are worked there, not in what is left of this one."""
    text = (
        "Test slipper\n\nUS terms\n\nSOLE\nCh 12.\n"
        f"Row 1: Dc in 4th ch from hook, dc in each ch to last ch, 5 dc in last ch, {words}. (21 dc)\n"
    )
    report = check(text)
    assert all_findings(report, ("correction",)) == []
    assert [row[0] for row in table(text)] == [21]


STRAPPED = "Test bralette\n\nUS terms\n\nBAND\n{}Row 2: Sc in 2nd ch from hook, {}. (103 sc)\n"


@pytest.mark.parametrize(
    "first",
    [
        "Row 1: Ch 30, work 18 sc evenly along the hem of the left cup, ch 8, 18 sc evenly along the right cup, ch 30, turn. (36 sc)\n",
        "Ch 30 for the first tie.\nRow 1: Work 18 sc evenly along the first cup, ch 8, 18 sc evenly along the second cup, ch 30 for the second tie, turn. (36 sc)\n",
    ],
    ids=["in the row", "in the line before"],
)
@pytest.mark.parametrize(
    "words",
    [
        "sc in each ch and each sc to end",
        "sc in each ch and sc across",
        "sc in each ch, sc in each sc, sc in each ch, sc in each sc, sc in each ch",
    ],
)
def test_ties_on_either_side_of_stitches_along_an_edge(first: str, words: str) -> None:
    """Their chains are worked back over, wherever they are told; a run over stitches ends at chains that come next."""
    text = STRAPPED.format(first, words)
    assert all_findings(check(text), ("correction",)) == []
    assert table(text)[-1] == [103]


def test_a_chain_that_is_worked_into_is_no_tie() -> None:
    """Stitches that are said to go along the chain use it."""
    text = "Test band\n\nUS terms\n\nBAND\nCh 30.\nRow 1: Work 29 sc evenly along the chain, turn.\nRow 2: Ch 1, sc in each st and each ch. (29 sc)\n"
    assert table(text) == [[29], [29]]


SHAPED = (
    "Test tank\n\nUS terms\n\nSizes: S (M, L)\n\nFRONT\nRow 1: Fdc 24 (26, 28), turn. (24 (26, 28) dc)\n{}\n"
    "Next Row: Ch 1, sc in each st across, turn.\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "Keeping armhole edge straight, dec 1 st at neck edge on next 4 (5, 6) rows.",
        "Keeping side edge even, dec 1 st at neck edge every other row 4 (5, 6) times; 20 (21, 22) dc rem.",
        "Dec 1 st at armhole edge on next 2 rows AT THE SAME TIME dec 1 st at neck edge on every row 2 (3, 4) times. 20 (21, 22) sts rem.",
        "Work in dc, dec 1 st at neck edge on next row and every foll alt row until 20 (21, 22) sts rem.",
    ],
)
def test_shaping_goes_on_from_what_it_leaves(words: str) -> None:
    """An edge that is kept straight is no work; of shaping that is not told row by row the print tells what is left."""
    assert table(SHAPED.format(words))[-1] == [20, 21, 22]


@pytest.mark.parametrize(
    "words",
    [
        "Work in dc, dec 1 st at neck edge on next row and every foll alt row until 20 (21, 22) sts rem, then inc 3 sts.",
        "Work in pattern, dec at neck until 20 (21, 22) rows are done.",
    ],
)
def test_shaping_whose_end_is_not_the_rows_end(words: str) -> None:
    """Where more is worked behind it, or rows are counted, what is left is not known."""
    assert table(SHAPED.format(words))[-1] == [None, None, None]


def test_a_turning_chain_behind_work_along_row_ends() -> None:
    """ "Work along row ends." opens the round, and the chain behind it begins it: it is no space for later stitches."""
    text = (
        "Test warmers\n\nUK terms\n\n3 ch at the start of a round counts as 1 tr; 1 ch does not count.\n\nWARMER\n12 ch.\n"
        "Row 1: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn. (11 dc)\nWork along row ends.\n"
        "Round 1: 1 ch, 40 dc evenly around top of rib, ss in first dc. (40 dc)\n"
        "Round 2: 3 ch, 1 tr in each dc to end, ss in top of 3 ch.\n"
    )
    assert [row[0] for row in table(text)] == [11, 40, 40]


def test_a_note_in_brackets_in_a_list_without_signs() -> None:
    """ "dec decrease (by working tr2tog)" explains the word as one without the note does."""
    text = (
        "Test waistcoat\n\nAbbreviations: ch chain, dec decrease (by working tr2tog), inc 2 tr in one st, "
        "ss slip stitch, st stitch, tr treble, tr2tog work 2 tr together\n\nBACK\nMake 12 ch.\n"
        "1st row: 1 tr in 4th ch from hook, 1 tr in each ch to end, turn.\n2nd row: 3 ch, dec, inc, 1 tr in each st to end.\n"
    )
    assert "abbreviation-undefined" not in dict(all_findings(check(text)))


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("ch 6, skip next 8 sts for first sleeve, sc in next 10 sts, ch 6, skip 8 sts for the second sleeve", 20),
        ("ch 6, skip next 8 sts for the next st, sc in each st", None),
    ],
)
def test_stitches_skipped_for_a_piece_by_its_place(words: str, made: int | None) -> None:
    """ "For first sleeve" tells what becomes of the stitches; "for the next st" is not understood."""
    text = f"Test tee\n\nUS terms\n\nYOKE\nRnd 1: 36 sc in magic ring, join.\nJoin shoulders and sides.\nRnd 2: Ch 1, sc in next 10 sts, {words}, join.\n"
    assert table(text)[1] == [made]


@pytest.mark.parametrize(
    "definition",
    [
        "Raglan point = (hdc, ch 2, hdc), worked in the ch-2 sp of the corner below",
        "Raglan point: (hdc, ch 2, hdc) in the ch-2 sp",
    ],
)
@pytest.mark.parametrize(("place", "made"), [("", 36), (" in ch-2 sp", 36), (" in next st", 32)])
def test_a_stitch_goes_where_its_definition_puts_it(definition: str, place: str, made: int) -> None:
    """Where a row names no place for it, the space of the pattern's own words is meant, and no stitch is used."""
    text = (
        f"Test yoke\n\nUS terms\n\nNotes\n{definition}.\n\nYOKE\nRnd 1: 24 hdc in magic ring, join. (24 hdc)\n"
        "Rnd 2: Ch 1, *(hdc, ch 2, hdc) in next st, hdc in next 5 sts; rep from * around, join. (28 hdc)\n"
        f"Rnd 3: Sl st to ch-2 sp, ch 1, *raglan point{place}, hdc in each st to next ch-2 sp; rep from * around, join.\n"
    )
    assert table(text)[-1] == [made]
