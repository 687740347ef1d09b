"""Garments over the sizes in further wordings: stitches left, edges joined, labels, lists and counts as they are met.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes, worked_rows

_PANEL = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n"


def table(text: str, sizes: int) -> list[tuple[int | None, ...]]:
    """The stitches of every row, one figure a size."""
    report = check(text)
    return list(zip(*(counts(report, size) for size in range(sizes)), strict=True))


@pytest.mark.parametrize(
    "left",
    [
        "turn. The other 8 sts are the heel and wait.",
        "turn; the remaining 8 sts form the heel.",
        "turn. The rest of the sts stay for the heel.",
        "turn, leave the other sts on hold.",
        "turn, leaving the other 8 sts for later - 12 sc",
        "turn and leave the rest - 12 sc",
    ],
)
def test_stitches_are_told_to_be_left(left: str) -> None:
    """What is said of the stitches behind the turn leaves them, and a count may stand behind it."""
    report = check(f"Mule\nUS terms\n\n{_PANEL}Row 2: Ch 1, turn, sc in next 12 sts, {left}\n")
    assert counts(report) == [20, 12] and corrections(report) == []


def test_more_stitches_told_to_be_left_than_there_are() -> None:
    """A figure that does not fit what is left is asked about."""
    report = check(
        f"Mule\nUS terms\n\n{_PANEL}Row 2: Ch 1, turn, sc in next 12 sts, turn. The other 7 sts are the heel. (12)\n"
    )
    assert counts(report) == [20, 12]
    assert ("places-left-over", 6) in all_findings(report)


@pytest.mark.parametrize("words", ["The other 8 sts are worked in hdc.", "The other 8 sts get 2 sc each."])
def test_the_rest_of_the_row_may_be_worked(words: str) -> None:
    """Where the words tell work into those stitches, the row is not counted as if they were left."""
    assert counts(check(f"Mule\nUS terms\n\n{_PANEL}Row 2: Ch 1, turn, sc in next 12 sts, turn. {words}\n"))[1] is None


_HALVES = (
    "Slipover\nUS terms\n\nBACK\n{}\nLEFT\nRow 1: Ch 1, turn, sc in next 6 sts, turn, leaving rem sts unworked. (6 sc)\n\n"
    "RIGHT\n{}\nRow 1: Ch 1, sc in each st to end. ({} sc)\n"
)


@pytest.mark.parametrize(
    ("joined", "made"),
    [
        ("Join yarn in the next free st.", 14),
        ("With RS facing, rejoin yarn to next free st at the neck edge.", 14),
        ("Skip 8 sts from the left shoulder for the neck, join yarn in next st.", 6),
        ("Skip the 8 center sts and rejoin yarn in next st.", 6),
    ],
)
def test_the_second_half_is_joined(joined: str, made: int) -> None:
    """The free stitch is the first that the other half has left; those at the middle are passed over from there."""
    assert counts(check(_HALVES.format(_PANEL, joined, made)))[-1] == made


_SIZED = "Sock\nUS terms\n\nSizes: S [M] L\n\n{}"


def test_a_count_of_one_row_is_no_range() -> None:
    """ "R 2 – 12 [14] 16 sc in next …" is row 2; "R 3 – 5 [6] 7:" are several."""
    text = _SIZED.format(
        "R 1 – 12 [14] 16 sc in a magic ring. (12 [14] 16)\nR 2 – 12 [14] 16 sc evenly round, as before. (12 [14] 16)\n"
        "R 3 – 5 [6] 7: sc in each st around. (12 [14] 16)\nR 6 [7] 8: as R 3. (12 [14] 16)\n"
    )
    labels = [row.label for row in worked_rows(check(text))]
    assert len(labels) == 2 + 5 + 1  # the range is run out for the largest size
    assert table(text, 3)[-1] == (12, 14, 16)


@pytest.mark.parametrize("call", ["as R 2", "Repeat R 2", "repeat R. 2", "like R2"])
def test_a_row_called_by_its_letter(call: str) -> None:
    """ "R 2" names a row with a space or without one, and is no abbreviation to be explained."""
    text = (
        "Coaster\nUS terms\nAbbreviations: sc = single crochet, st = stitch, ch = chain\n\nR 1: 6 sc in a magic ring. (6)\n"
        f"R 2: 2 sc in each st. (12)\nR 3: {call}. (24)\n"
    )
    report = check(text)
    assert counts(report) == [6, 12, 24] and corrections(report) == []


def test_lists_on_both_sides_of_a_range() -> None:
    """Alternating lists may stand before and behind "to" or a dash, and before the weight of a ball."""
    text = (
        "Vest\nUS terms\n\nSizes 8 (10) 12 (14) 16\nYarn: 5 (6) 7 (8) 9 x 50 g balls of DK wool\n\n"
        "Ch 21 (23) 25 (27) 29.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 (22) 24 (26) 28 sc)\n"
        "Rows 2 to 4 (4) 5 (5) 6: Ch 1, turn, sc in each st across. (20 (22) 24 (26) 28 sc)\n"
        "Rows 5 (5) 6 (6) 7 to 8 (9) 10 (11) 12: Ch 1, turn, sc in each st across. (20 (22) 24 (26) 28 sc)\n"
        "Rows 9 (10) 11 (12) 13-15 (16) 17 (18) 19: Ch 1, turn, sc in each st across. (20 (22) 24 (26) 28 sc)\n"
    )
    report = check(text)
    worked = [sum(cell is not None for cell in counts(report, size)) for size in range(5)]
    assert worked == [15, 16, 17, 18, 19] and corrections(report) == []


def test_a_range_without_a_sign_in_a_pattern_of_sizes() -> None:
    """ "Rows 2-4 Ch 1, turn, …" has the label's figures and then its words."""
    text = (
        "Cowl\nUS terms\n\nSizes: S (M)\n\nCh 21 (25).\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 (24) sc)\n"
        "Rows 2-4 Ch 1, turn, sc in each st across.\nRow 5 Ch 1, turn, 2 sc in first st, sc in each st across. (21 (25) sc)\n"
    )
    assert [made for made in table(text, 2)] == [(20, 24)] * 4 + [(21, 25)]


def test_no_count_is_missing_behind_ranges_of_other_lengths() -> None:
    """A range that ends sooner in some sizes changes no count; the next row needs none."""
    text = (
        "Cowl\nUS terms\n\nSizes: S (M)\n\nCh 21 (25).\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 (24) sc)\n"
        "Rows 2-4 (6): Ch 1, turn, sc in each st across.\nMark both ends.\nRows 5 (7)-8 (10): Ch 1, turn, sc in each st across.\n"
    )
    assert "count-missing" not in {rule for rule, _ in all_findings(check(text))}


@pytest.mark.parametrize(
    "count",
    [
        "— 48 (56, 64, 72, 80, 88) hdc and 4 ch-2 sps in the last rnd",
        "— 48 (56, 64, 72, 80, 88) hdc and 4 ch-2 sps after the last rnd",
        "— 48 (56, 64, 72, 80, 88) hdc, 4 ch-2 sps at the end of the final rnd",
    ],
)
def test_a_long_count_closes_its_row(count: str) -> None:
    """A sentence below a count without a stop is no more of the row, however long the list and whatever is told of it."""
    text = (
        "Yoke\nUS terms\n\nSizes: 1 (2, 3, 4, 5, 6)\n\nCh 28 (36, 44, 52, 60, 68), join with sl st in first ch.\n"
        "Rnd 1: Ch 1 (not a st), [hdc in next 6 (8, 10, 12, 14, 16) ch, (hdc, ch 2, hdc) in next ch] 4 times, join. — 32 (40, 48, 56, 64, 72) hdc and 4 ch-2 sps\n"
        "Rnd 2: Ch 1, *hdc in each st to ch-2 sp, (hdc, ch 2, hdc) in ch-2 sp; rep from * 3 more times, hdc in each st to end, join. — 40 (48, 56, 64, 72, 80) hdc and 4 ch-2 sps\n"
        f"Rnd 3: Rep Rnd 2. {count}\n"
        "Each side now has 12 (14, 16, 18, 20, 22) sts.\n"
    )
    report = check(text)
    assert outcomes(report) == ["agrees"] * 3 and corrections(report) == []


@pytest.mark.parametrize(
    ("joined", "worked"),
    [
        ("Join yarn in any ch of the starting chain.", "sc in each ch around"),
        ("Join yarn with sl st in any ch of the beginning chain at the back.", "sc in each ch around the neck"),
        ("Join yarn in any foundation ch.", "sc in each ch around the neck opening"),
    ],
)
def test_a_neck_is_edged_along_the_chain(joined: str, worked: str) -> None:
    """The chain that the piece was begun on is worked all round."""
    text = (
        "Cape\nUS terms\n\nYOKE\nCh 30; join with sl st in first ch.\nRnd 1: Ch 1, 2 sc in each ch around, join. (60)\nFasten off.\n\n"
        f"NECK\n{joined}\nRnd 1: Ch 1, {worked}; join. (30)\n"
    )
    assert counts(check(text)) == [60, 30]


def test_edges_that_are_no_chain_are_not_guessed() -> None:
    """How many stitches lie round a neck or an armhole is not known from the row below."""
    text = f"Top\nUS terms\n\nBACK\n{_PANEL}Fasten off.\n\nARMBAND\nJoin yarn at the underarm.\nRnd 1: Ch 1, sc in each st around the armhole; join. (44)\n"
    assert counts(check(text))[-1] is None


_MITT = "Mitt\nUS terms\nWorked in a spiral.\n\nRnd 1: 10 sc in a magic ring. (10)\nRnd 2: 2 sc in each st. (20)\n{}"


@pytest.mark.parametrize(
    ("bridge", "back"),
    [
        ("ch 5, sk 5 sts, sc in each st to end. (15 sc, 5 ch)", "sc in each ch, sc in each sc. (20)"),
        (
            "ch 5, sk next 5 sts for the thumb, sc in next 15 sts. (15 sc, 5 ch)",
            "sc in each of 5 ch, sc in each sc. (20)",
        ),
        ("sc in next 4 sts, ch 5, sk 5 sts, sc in each st to end. (15 sc, 5 ch)", "sc in each sc, sc in each ch. (20)"),
        (
            "sc in next 4 sts, ch 5, sk 5 sts, sc in each st to end. (15 sc, 5 ch)",
            "sc in next 4 sc, sc in each ch, sc in each sc. (20)",
        ),
    ],
)
def test_a_chain_over_a_thumb(bridge: str, back: str) -> None:
    """A spiral has no beginning chain: what leads over skipped stitches is a space, and each of its chains a place."""
    report = check(_MITT.format(f"Rnd 3: {bridge}\nRnd 4: {back}\nRnd 5: sc in each st. (20)\n"))
    assert counts(report) == [10, 20, 15, 20, 20] and all_findings(report, ("correction", "query")) == []


def test_a_joined_round_still_begins_with_its_chain() -> None:
    """Where rounds are joined, a chain before a skip may be the beginning chain."""
    text = (
        "Mat\nUS terms\n\nRnd 1: Ch 3 (counts as dc), 11 dc in a magic ring, join in top of ch 3. (12)\n"
        "Rnd 2: Ch 4 (counts as dc and ch 1), sk next dc, *dc in next dc, ch 1, sk next dc; rep from * around, join in 3rd ch. (6 dc)\n"
    )
    assert counts(check(text)) == [12, 6]


@pytest.mark.parametrize(
    "turned",
    ["Turn the cuff on its side.", "Turn the cuff right side out, then turn it sideways."],
)
def test_a_piece_that_is_laid_otherwise_is_worked_in_rounds(turned: str) -> None:
    """In a spiral pattern a piece whose rows are not turned is a round piece, however it is laid before."""
    text = (
        "Wristlet\nUS terms\nThe hand is worked in a spiral.\n\nCuff\nCh 7.\nRow 1: Sc in 2nd ch from hook and in each ch, turn. (6)\n"
        f"Rows 2-20: Ch 1, sc in each st, turn. (6)\nSl st the last row to the foundation chain through 6 sts to form a ring.\n\nHand\n{turned}\n"
        "R1: Sc in each row end. (20)\nR2: Sc in each st. (20)\n"
    )
    report = check(text)
    assert counts(report)[-2:] == [20, 20]
    assert [row.row.label.kind for row in worked_rows(report)][-2:] == ["round", "round"]


@pytest.mark.parametrize(
    "seam",
    [
        "Sl st the last row to the foundation chain through 6 sts.",
        "Sl st through 6 sts of last row and foundation chain.",
        "Slip stitch the first and last rows together through all 6 sts.",
    ],
)
def test_a_band_is_closed_through_its_stitches(seam: str) -> None:
    """How many stitches a seam goes through makes it no row."""
    text = (
        "Skirt\nUS terms\n\nBAND\nCh 7.\nRow 1: Sc in 2nd ch from hook and in each ch across. (6)\nRows 2-18: Ch 1, turn, sc in each st. (6)\n"
        f"{seam}\n\nBODY\nRnd 1: Ch 1, sc in the end of each row, join. (18)\n"
    )
    assert counts(check(text))[-1] == 18


@pytest.mark.parametrize(
    "skipped",
    [
        "sk the ch-2 sp, the next 6 hdc and the ch-2 sp after them",
        "sk next ch-2 sp, the next 6 hdc, and the next ch-2 sp",
        "miss the ch-2 sp, next 6 hdc and the ch-2 sp behind them",
    ],
)
def test_a_sleeve_is_skipped_with_its_corners(skipped: str) -> None:
    """The stitches between two corners are passed over with both of these."""
    text = (
        "Yoke\nUS terms\n\nCh 20, join with sl st in first ch.\n"
        "Rnd 1: Ch 1 (not a st), [hdc in next 4 ch, (hdc, ch 2, hdc) in next ch] 4 times, join. (24 hdc, 4 ch-2 sps)\n"
        f"Rnd 2: Ch 1, hdc in next 5 hdc, ch 3, {skipped}, hdc in next 6 hdc, ch 3, {skipped}, hdc in last hdc, join. (12 hdc, 2 ch-3 sps)\n"
    )
    assert counts(check(text)) == [24, 12]


@pytest.mark.parametrize(
    ("sewn", "made"),
    [
        ("Fasten off. Sew on the buttons opposite the ch-2 sps.", 18),
        ("Fasten off. Thread a ribbon through the ch-2 sps.", 18),
        ("Sew on a button, sc in next st.", 18),  # the last of the 14 stitches, which the run to the end leaves to it
        ("Sew on a button with sc in next st.", None),
    ],
)
def test_what_is_sewn_on_is_no_work(sewn: str, made: int | None) -> None:
    """A sentence that sews or threads is none of the row; work behind a comma is not passed over."""
    text = (
        f"Coat\nUS terms\n\n{_PANEL}Row 2: Ch 1, turn, sc in next 4 sts, ch 2, sk 2 sts, sc in each st to end. {sewn}\n"
    )
    assert counts(check(text))[1] == made


@pytest.mark.parametrize(
    ("front", "names"),
    [
        ("BOOTS – sizes S (M/L)", ("S", "M", "L")),
        ("BOOTS\n\nFor babies of 3 (6, 9) months.", ("3", "6", "9")),
        ("BOOTS\n\nTo be worn by children aged 2 (4, 6) years.\n\nFoot: 13 (15, 17) cm", ("2", "4", "6")),
    ],
)
def test_sizes_are_named_by_the_way(front: str, names: tuple[str, ...]) -> None:
    """The title may name the sizes, or a sentence that says for whom they are."""
    body = "Ch {0}.\nRow 1: Sc in 2nd ch from hook and in each ch. {1} sc.\nRow 2: Ch 1, turn, sc in each st. {1} sc.\n"
    one, other = ("11 (13/15)", "10 (12/14)") if "/" in front else ("11 (13, 15)", "10 (12, 14)")
    assert check(f"{front}\n\nUS terms\n\n{body.format(one, other)}").pattern.sizes == names


def test_a_measure_all_round_is_no_round() -> None:
    """ "Chest all round: 46 cm" tells a measure and begins no piece."""
    text = f"Vest\nUS terms\n\nChest all round: 46 cm\n\nBACK\n{_PANEL}"
    assert counts(check(text)) == [20]


def test_a_row_worked_again_in_brackets() -> None:
    """A line of a row called in brackets is a line of its own, though the count above it has no stop."""
    text = (
        "Vest\nUS terms\n\nSizes: S (M, L)\n\nFRONT\nCh 11 (13, 15).\nRow 1 - Sc in 2nd ch from hook and in each ch, turn - 10 (12, 14) sc\n"
        "Row 2 - Ch 1, sc in each st, turn - 10 (12, 14) sc\nRow 3 - Ch 1, sc2tog, sc in each st, turn - 9 (11, 13) sc\n"
        "[Work 2nd row] zero (one, two) times more.\n"
    )
    rows = check(text).ledger.rows[-3:]
    made = [[cell.made.stitches if cell.made is not None else None for cell in row.cells] for row in rows]
    assert made == [[9, 11, 13], [None, 11, 13], [None, None, 13]]


@pytest.mark.parametrize("lead", ["Terms are British.", "UK terms.", "All terms are UK."])
def test_a_list_behind_a_sentence(lead: str) -> None:
    """The first entry of a list is told, though the terms stand in front of it."""
    text = (
        f"Vest\n\n{lead} ch, chain; dc, double crochet; st, stitch; tr, treble.\n\nThe 3ch stands for a treble.\n\nBACK\n"
        "Make 11ch.\n1st row: 1dc in 2nd ch from hook, 1dc in each ch to end. 10 dc\n2nd row: 3ch, miss first st, 1tr in each st to end. 10 tr\n"
    )
    assert [rule for rule, _ in corrections(check(text))] == []


@pytest.mark.parametrize(
    "behind",
    ["- 19 sc twice.", "- 19 sc [Row 2, then Row 1] twice.", "- 19 sc (as before) 2 times."],
)
def test_what_is_told_behind_a_count_is_not_passed_over(behind: str) -> None:
    """Words behind a count that tell how often, or call rows again, stop the row; a mere remark does not."""
    text = f"Scarf\nUS terms\n\n{_PANEL}Row 2 - Ch 1, turn, sc2tog, sc in each st {{}}\n"
    assert counts(check(text.format(behind)))[1] is None
    assert counts(check(text.format("- 19 sc (phew!)")))[1] == 19


@pytest.mark.parametrize("line", ["[Work 2nd row] twice more.", "(Work Row 2) 2 times."])
def test_rows_in_brackets_make_rows(line: str) -> None:
    """Rows that are called in brackets, with how often behind them, are worked; none of them is taken for talk."""
    text = f"Scarf\nUS terms\n\n{_PANEL}Row 2: Ch 1, turn, sc2tog, sc in each st. (19 sc)\n{line}\nNext row: Ch 1, turn, sc in each st. (17 sc)\n"
    assert counts(check(text))[-1] == 17


def test_a_middle_piece_leaves_what_the_next_is_joined_to() -> None:
    """Three parts of one row, of which the middle one does not say that it leaves the third."""
    text = (
        f"Cardigan\nUS terms\n\nBODY\n{_PANEL}\nFIRST FRONT\nRow 1: Ch 1, turn, sc in next 5 sts, turn, leaving rem sts unworked. (5 sc)\nFasten off.\n\n"
        "BACK\nSkip 2 sts of the last row of Body and join yarn in next st.\nRow 1: Ch 1, sc in same st and in next 5 sts, turn. (6 sc)\n"
        "Rep Row 1 of First Front until Back has 8 rows above the armhole.\nFasten off.\n\n"
        "SECOND FRONT\nSkip 2 sts of the last row of Body and join yarn in next st.\nRow 1: Ch 1, sc in same st and in each st to end. (5 sc)\n"
    )
    made = counts(check(text))
    assert made[:3] == [20, 5, 6] and made[-1] == 5


@pytest.mark.parametrize(
    "until",
    [
        "until Back has 12 rows above the armhole",
        "until 12 rows have been worked from the markers",
        "until you have 12 rows above the rib",
    ],
)
def test_rows_reckoned_from_somewhere(until: str) -> None:
    """How many rows that is the words do not say; what each of them makes is known where all make the same."""
    text = f"Vest\nUS terms\n\nBACK\n{_PANEL}Row 2: Ch 1, turn, sc in each st. (20)\nRep Row 2 {until}.\nNext row: Ch 1, turn, sc2tog, sc in each st. (19)\n"
    assert counts(check(text))[-1] == 19


def test_two_sides_in_one_entry() -> None:
    """ "WS/RS wrong/right side" explains both, in a list without signs."""
    text = (
        "Vest\nUK terms\n\nAbbreviations\nch chain; dc double crochet; st(s) stitch(es); WS/RS wrong/right side\n\n"
        "BACK\nMake 11 ch.\nRow 1 (RS): 1 dc in 2nd ch from hook, 1 dc in each ch to end. 10 dc\nRow 2 (WS): 1 ch, 1 dc in each st. 10 dc\n"
    )
    assert [rule for rule, _ in corrections(check(text))] == []


@pytest.mark.parametrize(
    "words",
    [
        "Row 2:\nSize S: Ch 1, sc in next 10 sts, leave rest unworked, turn.\nSizes M, L: Ch 1, sc in next 12 sts, leave rest unworked, turn.",
        "Row 2\nFor size S: ch 1, sc in next 10 sts, leave rest unworked, turn\nFor sizes M and L: ch 1, sc in next 12 sts, leave rest unworked, turn",
        "Row 2: Size S: Ch 1, sc in next 10 sts, leave rest unworked, turn. Sizes M, L: Ch 1, sc in next 12 sts, leave rest unworked, turn.",
    ],
)
def test_a_row_told_size_by_size_under_its_label(words: str) -> None:
    """The label stands alone, and each line below it is that row for the sizes that it names."""
    report = check(
        "Vest\n\nUS terms\n\nSizes: S (M, L)\n\nVEST\nCh 41 (45, 49).\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. 40 (44, 48) sc.\n"
        f"{words}\nRow 3: Ch 1, sc in each st across.\n"
    )
    last = report.ledger.rows[-1]
    assert [cell.made.stitches for cell in last.cells] == [10, 12, 12]
    assert not [rule for rule, _ in all_findings(report, ("query", "correction")) if rule == "not-understood"]
