"""Wordings of squares, doilies, shawls and edgings: joins at corners, closing loops, gaps, the other side of a chain."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts, outcomes, spaces

_RING_OF_FOUR = "Rnd 1: Ch 4, join to form ring, ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join. (12 dc)\n"


def _faults(report) -> list[str]:
    """The rules of every correction and query, those of chains left unsaid apart."""
    return [rule for rule, _ in all_findings(report, ("correction", "query")) if rule != "turning-chain-unsaid"]


def test_new_yarn_at_any_corner_begins_in_the_corners_space():
    """Joined in a corner, the round begins in its space, and the stitches on the way to the next corner are passed over."""
    report = check(
        "Tile\n"
        + _RING_OF_FOUR
        + "Rnd 2: Join D in any corner, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same corner, "
        "*ch 1, (3 dc, ch 2, 3 dc) in next corner; rep from * twice more, ch 1, join. (24 dc)\n"
        "Rnd 3: Join E in any corner, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in that same corner, ch 1, 3 dc in next ch-1 sp, ch 1, "
        "*(3 dc, ch 2, 3 dc) in next corner, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * around, join. (36 dc)\n"
    )
    assert counts(report) == [12, 24, 36]
    assert _faults(report) == []


def test_a_chain_said_to_count_elsewhere_counts_after_slip_stitches_into_a_space():
    """An earlier row said of a chain of this length that it counts; this one is read alike, and nothing is asked."""
    report = check(
        "Mat\n1st rnd: 6 ch, join with ss to form ring, 3 ch (stands for 1 tr), 23 tr into ring, ss to top of 3 ch. (24 tr)\n"
        "2nd rnd: 5 ch (stands for 1 tr and 2 ch), miss next tr, *1 tr into next tr, 2 ch, miss 1 tr; rep from * to end, ss to 3rd of 5 ch.\n"
        "3rd rnd: Ss into first sp, 3 ch, 3 tr into same sp, *4 tr into next sp; rep from * to end, ss to top of 3 ch. (48 tr)\n",
        "uk",
    )
    assert counts(report) == [24, 12, 48]
    assert "turning-chain-unsaid" not in [f.rule for f in report.findings]


def test_a_row_that_agrees_either_way_settles_no_habit():
    """A later row that shows the chain not to count is not at fault for an earlier one that left it open."""
    report = check(
        "Strip\nRow 1: Ch 22, hdc in 3rd ch from hook and in each ch across, turn. (20 hdc)\n"
        "Row 2: Ch 2, hdc in each hdc across, turn. (20 hdc)\n"
        "Row 3: Ch 2, hdc in first hdc, hdc in each of next 19 hdc, turn. (20 hdc)\n"
    )
    assert outcomes(report) == ["agrees"] * 3
    assert [f.rule for f in report.findings if f.rule == "turning-chain-unsaid"] == ["turning-chain-unsaid"]


@pytest.mark.parametrize(
    "closing",
    [
        "to form last loop",
        "in place of last ch-5 loop",
        "for the last ch-5 lp",
        "to complete final loop",
        "(acts as ch-5 loop)",
    ],
)
def test_a_stitch_that_closes_the_last_loop_is_that_loop(closing: str):
    """Whatever the words, the joining stitch makes a loop and no stitch, and the next round begins in it."""
    report = check(
        "Mat\nRnd 1: Ch 5, sl st in first ch to form ring. Ch 1, 8 sc in ring, join.\n"
        f"Rnd 2: Ch 1, sc in first sc, *ch 5, sk 1 sc, sc in next sc; rep from * twice more, ch 2, dc in first sc {closing}.\n"
        "Rnd 3: Ch 1, sc in joining loop, *ch 6, sc in next loop; rep from * twice more, ch 6, join with sl st in first sc.\n"
    )
    assert counts(report) == [8, 4, 4]
    assert spaces(report)[1:] == [{5: 4}, {6: 4}]
    assert _faults(report) == []


def test_to_last_loop_with_nothing_worked_in_it_is_left_to_the_count():
    """ "Rep to last loop, ch 5, join" may leave the last loop or take it in: the printed count tells, else nothing does."""
    start = (
        "Mat\nRnd 1: Ch 5, sl st in first ch to form ring. Ch 1, 8 sc in ring, join.\n"
        "Rnd 2: Ch 1, sc in first sc, (ch 5, sk 1 sc, sc in next sc) 3 times, ch 5, sk 1 sc, join. (4 loops)\n"
        "Rnd 3: Sl st in first 2 ch, ch 1, sc in same loop, *ch 5, sc in next loop; rep from * to last loop, ch 5, join."
    )
    assert counts(check(start + "\n"))[2] is None
    assert counts(check(start + " (4 sc)\n"))[2] == 4


@pytest.mark.parametrize(
    ("words", "made"),
    [("*dc in sp before next dc; rep from * across", 12), ("*dc in space just before next st; rep from * across", 12)],
)
def test_the_space_before_a_stitch_is_passed_with_it(words: str, made: int):
    """Working between stitches, one gap for each of the stitches after the first."""
    report = check(
        "Wrap\nRow 1: Ch 14, dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn. (12 dc)\n"
        f"Row 2: Ch 3 (counts as dc), {words}, turn.\n"
    )
    assert counts(report) == [12, made]


def test_the_gap_after_a_skipped_stitch_is_not_guessed():
    """Which gap "before next dc" is once a stitch was skipped is not said."""
    report = check(
        "Wrap\nRow 1: Ch 14, dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn. (12 dc)\n"
        "Row 2: Ch 3 (counts as dc), *ch 1, sk next st, dc in sp before next dc; rep from * to last st, dc in last st, turn.\n"
    )
    assert counts(report) == [12, None]


def test_the_space_before_a_group_is_the_first_gap_of_the_row():
    """Before the first group lies a gap of its own, and the gaps between the groups come after it."""
    report = check(
        "Stripe\nRow 1: Ch 22, 2 dc in 4th ch from hook (skipped ch count as dc), sk 2 ch, (3 dc in next ch, sk 2 ch) 5 times, "
        "dc in last ch, turn. (19 dc)\n"
        "Row 2: Ch 3 (counts as dc), 2 dc in sp before next group, *3 dc in sp between next 2 groups; rep from * across, "
        "dc in top of turning ch, turn.\n"
    )
    assert counts(report) == [19, 19]


@pytest.mark.parametrize(
    "way",
    [
        "working on the other side, sc 7",
        "continue along the bottom of the foundation ch, sc in next 7 ch",
        "rotate to work into the unused loops of the foundation chain, sc in next 7 loops",
        "working in free loops of beginning ch, sc in next 7 ch",
        "turn and continue on other side of ch, sc in next 7 ch",
        "other side of ch: sc in next 7 ch",
        "underside (sc in next 7 ch)",
        "working along foundation ch, sc in next 7 ch",
    ],
)
def test_the_other_side_of_the_chain_in_many_words(way: str):
    """An oval goes on along the chain's other side, where as many chains lie as on this one."""
    report = check(
        f"Oval\nRnd 1: Ch 10, sc in 2nd ch from hook, sc in next 7 ch, 3 sc in last ch; {way}, 2 sc in last ch, join with sl st "
        "in first sc. (20 sc)\nRnd 2: Ch 1, sc in each sc around, join. (20 sc)\n"
    )
    assert counts(report) == [20, 20]
    assert _faults(report) == []


@pytest.mark.parametrize(
    "way",
    [
        "; on the other side: 2 sc (8)",
        ", now along the opposite side of the chain: 2 sc [8]",
        ". Underside: 2 sc (8 sc)",
    ],
)
def test_the_stitches_behind_the_other_side_are_no_count(way: str):
    """What stands behind "on the other side:" is worked there, though the printed count follows at once."""
    report = check(f"Foot\nCh 4.\nR1: 2 sc in 2nd ch from hook, 1 sc, 3 sc in last ch{way}\nR2: sc in each st (8)\n")
    assert counts(report)[-2:] == [8, 8]
    assert _faults(report) == []


def test_a_border_along_sides_told_by_their_number_is_counted():
    """Down the side, along the chain and up again: every number is told, so the round's count is known."""
    report = check(
        "Cloth\nCh 15.\nRow 1: Sc in second ch from hook and in each ch to end; turn. (14 sc)\nRows 2-14: Ch 1, sc in each sc across; turn.\n"
        "Border\nRnd 1: Ch 1, 3 sc in first sc, sc in next 12 sc, 3 sc in last sc; working down side, sc evenly in 12 row ends; "
        "working along foundation ch, 3 sc in first ch, sc in next 12 ch, 3 sc in last ch; working up other side, "
        "12 sc evenly in row ends; join with sl st in first sc. (60 sc)\n"
        "Rnd 2: Ch 1, sc in first sc, 3 sc in next sc (corner), *sc in each sc to center sc of next corner, 3 sc in center sc; "
        "rep from * 2 more times, sc in each sc to end; join. (68 sc)\n"
    )
    assert outcomes(report)[-2:] == ["agrees", "agrees"]


@pytest.mark.parametrize(
    "note", ["now and always", "in this or any rnd", "at the start of every round", "here and in all rounds"]
)
def test_a_note_for_all_rounds_in_other_words(note: str):
    """What is said once for all is not asked for again."""
    report = check(
        f"Disc\nRnd 1: Ch 4, join to form ring, ch 3 (counts as dc {note}), 11 dc in ring, join. (12 dc)\n"
        "Rnd 2: Ch 3, dc in same st, 2 dc in each of next 11 dc, join. (24 dc)\n"
    )
    assert counts(report) == [12, 24]
    assert "turning-chain-unsaid" not in [f.rule for f in report.findings]


@pytest.mark.parametrize("arrow", ["-->", "->", "=>", "→"])
def test_a_count_behind_an_arrow(arrow: str):
    """However the arrow is typed."""
    report = check(
        "Strip\nRow 1: Ch 14, dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn. (12 dc)\n"
        f"Row 2: Ch 3 (counts as dc), dc in each of next 10 dc, turn {arrow} 12 sts\n"
    )
    assert outcomes(report) == ["agrees", "differs"]


def test_a_count_of_groups_without_brackets_is_no_unread_word():
    """ "4 groups" tells how many there are, in a unit that is not counted."""
    report = check("Tile\n" + _RING_OF_FOUR.replace("(12 dc)", "Fasten off. 4 groups"))
    assert outcomes(report) == ["not-stated"]
    assert counts(report) == [12]


def test_a_v_stitch_defined_in_a_note():
    """ "Notes: V-st = …" in one line defines it."""
    report = check(
        "Scarf\nNotes: V-st = (dc, ch 1, dc) in place indicated.\n\n"
        "Row 1: Ch 20, V-st in 5th ch from hook, (sk 2 ch, V-st in next ch) 4 times, sk 2 ch, dc in last ch, turn.\n"
        "Row 2: Ch 3 (counts as dc), V-st in each V-st across, dc in last st, turn. (12 dc)\n"
    )
    assert counts(report)[1] == 12
    assert "abbreviation-undefined" not in [f.rule for f in report.findings]


def test_a_chain_behind_its_multiple_is_worked():
    """The multiple tells, the chain is made; a last repeat ended otherwise is cut where its decreases are not the ending."""
    report = check(
        "Ripple\nMultiple of 12 + 3. Ch 51.\n"
        "Row 1: Dc in 4th ch from hook (counts as 2 dc), dc in next 3 ch, (dc2tog) twice, dc in next 3 ch, *2 dc in each of next 2 ch, "
        "dc in next 3 ch, dc2tog twice, dc in next 3 ch; rep from * across to last ch, 2 dc in last ch; turn. (48 dc)\n"
        "Row 2: Ch 3 (counts as dc), dc in first st, *dc in next 3 sts, dc2tog twice, dc in next 3 sts, 2 dc in each of next 2 sts; "
        "rep from * across, ending last rep with 2 dc in last st; turn. (48 dc)\n"
    )
    assert outcomes(report)[-2:] == ["agrees", "agrees"]
    assert _faults(report) == []


def test_a_stitch_explained_by_hand_with_brackets_is_one_entry():
    """Commas and remarks in a how-to are no new abbreviations, and a chain on the line below it is the piece's."""
    report = check(
        "Wrap\nAbbreviations: ch = chain; hdc = half double crochet; yo = yarn over; st = stitch; tog = together.\n"
        "Star st: Insert hook in places indicated, pulling up a loop in each (6 loops on hook), yo, draw through all loops, "
        "ch 1 to close (eye made).\n"
        "Ch 24.\nRow 1: Hdc in 3rd ch from hook (2 skipped chs count as hdc) and in each ch across, turn. (23 hdc)\n"
    )
    assert counts(report) == [23]
    assert "abbreviation-twice" not in [f.rule for f in report.findings]


@pytest.mark.parametrize(
    "joined",
    [
        "sl st in ch-3 sp of block in row below, ch 3, 3 dc in same ch-3 sp",
        "join with sl st to the ch-3 space of the first tile, ch 3, 3 dc in that same space",
    ],
)
def test_a_block_joined_to_the_one_below_leaves_nothing(joined: str):
    """Corner to corner: the stitches of the block below are passed on the way to its space."""
    report = check(
        "Diagonal\nRow 1: Ch 6, dc in 4th ch from hook, dc in next 2 ch, turn.\n"
        f"Row 2: Ch 6, dc in 4th ch from hook, dc in each of next 2 ch, {joined}, turn.\n"
    )
    assert counts(report) == [3, 6]
    assert _faults(report) == []


def test_spaces_beside_the_shells_are_passed_when_the_shells_own_are_named():
    """ "Ch-2 sp of next shell" leaves out the ch-2 spaces between the shells."""
    report = check(
        "Fans\nSpecial stitches\nShell: (2 dc, ch 2, 2 dc) in space stated.\nBeginning shell: (ch 3, dc, ch 2, 2 dc) in space stated.\n\n"
        "Rnd 1: Ch 5, join into a ring with sl st. Ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) 5 times, ch 2, join. (18 dc)\n"
        "Rnd 2: Sl st in each of next 2 dc and in ch-2 sp, beginning shell in same sp, *ch 3, shell in next ch-2 sp; "
        "rep from * 4 times more, ch 3, join. (24 dc)\n"
        "Rnd 3: Sl st in next dc and in ch-2 sp, beginning shell in same sp, *ch 2, 7 tr in next ch-3 sp, ch 2, shell in next shell; "
        "rep from * ending 7 tr in last ch-3 sp, ch 2, join. (66 sts)\n"
        "Rnd 4: Sl st in next dc and into ch-2 sp, beginning shell in same sp, *ch 2, (tr in next tr, ch 1) 6 times, tr in next tr, "
        "ch 2, shell in ch-2 sp of next shell; rep from * around, omitting last shell; join. (66 sts)\n"
    )
    assert outcomes(report) == ["agrees"] * 4
    assert _faults(report) == []


@pytest.mark.parametrize(
    "picot",
    [
        "ch 3, sl st in top of last sc",
        "ch 4, sl st in last sc",
        "ch 3, sl st back into the top of the sc",
        "ch 3 and sl st in last sc for a picot",
        "ch 3, sl st in first of these 3 ch",
        "3-ch picot",
        "(ch 3, sl st in third ch from hook - picot made)",
    ],
)
def test_a_picot_closed_on_the_stitch_before_it_uses_nothing(picot: str):
    """A picot stands on the stitch just made, and the next stitch of the round below is still free."""
    report = check(
        "Mat\nRnd 1: Ch 4, join; ch 3 (counts as dc), 15 dc in ring; join in top of ch-3. (16 dc)\n"
        f"Rnd 2: Ch 1, *sc in next 2 dc, {picot}, sc in next 2 dc; rep from * around; join. (16 sc)\n"
    )
    assert outcomes(report) == ["agrees", "agrees"]
    assert _faults(report) == []


def test_picots_inside_a_bracket_are_counted():
    """The slip stitch belongs to the picot, and not to a list of its own."""
    report = check(
        "Mat\nRnd 1: Ch 4, join; ch 3 (counts as dc), 11 dc in ring; join in top of ch-3. (12 dc)\n"
        "Rnd 2: Ch 1, *sc in next 2 dc, (sc, ch 3, sl st in top of last sc, sc) in next dc; rep from * around; join. (16 sc, 4 picots)\n"
    )
    assert outcomes(report) == ["agrees", "agrees"]
    assert _faults(report) == []


def test_a_picot_closed_with_a_single_crochet_is_counted_as_the_print_counts():
    """ "Ch 4, sc in 4th ch from hook": some count the sc and most do not; with no count nothing is said."""
    start = "Mat\nRnd 1: Ch 4, join; ch 3 (counts as dc), 11 dc in ring; join in top of ch-3. (12 dc)\n"
    words = "Rnd 2: Ch 1, *sc in next 3 dc, ch 4, sc in 4th ch from hook; rep from * around; join."
    assert [counts(check(f"{start}{words}{count}\n"))[1] for count in (" (12 sc)", " (16 sc)", "")] == [12, 16, None]


@pytest.mark.parametrize(
    "joined",
    [
        "ch 1, sl st in corresponding ch-2 sp of First Hexagon, ch 1",
        "ch 1, sl st in matching corner sp of previous hexagon, ch 1",
        "ch 1, drop loop, insert hook from front to back in ch-2 sp of finished hexagon, pull dropped loop through, ch 1",
        "ch 1, join with sl st to ch-2 sp of neighbouring motif, ch 1",
        "ch 1, sl st in any corner sp of a completed motif, ch 1",
    ],
)
def test_a_motif_joined_as_it_is_worked_keeps_its_own_round(joined: str):
    """What goes into another piece uses no place of this one's round, and its corner is a corner still."""
    report = check(
        "Hexagon\nRnd 1: With A, ch 4, join with sl st to form ring; ch 3 (counts as dc), dc in ring, ch 1, *2 dc in ring, ch 1; "
        "rep from * 4 more times; join. (12 dc)\n"
        "Rnd 2: Sl st in next dc and in ch-1 sp; ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, *(2 dc, ch 2, 2 dc) in next ch-1 sp; "
        f"rep from * 3 times more; 2 dc in last ch-1 sp, {joined}, 2 dc in same ch-1 sp; join. (24 dc)\n"
    )
    assert outcomes(report) == ["agrees", "agrees"]
    assert _faults(report) == []


@pytest.mark.parametrize(
    "ring",
    [
        "Make a loop, ch 3 (counts as dc), 11 dc in loop, pull loop tight",
        "Wind yarn round finger to form a ring, ch 3 (counts as dc), 11 dc in ring, draw up",
        "Wrap thread twice around finger, ch 3 (counts as dc), 11 dc into ring, pull ring closed",
        "Begin with a loop around the finger; ch 3 (counts as dc), 11 dc in loop, close ring",
        "Make an adjustable loop, ch 3 (counts as dc), 11 dc in loop, tighten the ring close",
    ],
)
def test_a_ring_told_by_how_it_is_made(ring: str):
    """Twelve stitches in a ring, whatever the ring is called."""
    assert (
        counts(check(f"Disc\nRnd 1: {ring}, join. (12 dc)\nRnd 2: Ch 3 (counts as dc), dc in each dc around, join.\n"))[
            0
        ]
        == 12
    )


@pytest.mark.parametrize(
    "told",
    [
        ". 12",
        " ... 12",
        ". This makes 12 sc.",
        ". You end up with 12 sc.",
        ", 12 sc in all.",
        ", 12 sc altogether.",
        ". That is 12 sc.",
    ],
)
def test_counts_told_in_passing(told: str):
    """A count at the row's end, in a sentence or bare, is compared."""
    start = "Ball\nRnd 1: 6 sc in a magic ring.\nRnd 2: 2 sc in each sc around"
    assert outcomes(check(start + told + "\n")) == ["not-stated", "agrees"]
    assert outcomes(check(start + told.replace("12", "13") + "\n")) == ["not-stated", "differs"]


def test_the_last_chain_of_the_other_side_holds_the_first_stitch_too():
    """ "2 sc in same ch as the first sc" ends the oval and leaves nothing."""
    report = check(
        "Rug\nCh 11.\nRnd 1: Sc in 2nd ch from hook, sc in next 8 ch, 3 sc in last ch, working along opposite side sc in next 8 ch, "
        "2 sc in same ch as the first sc, join with sl st to first sc. (22 sc)\n"
    )
    assert outcomes(report)[-1] == "agrees"
    assert _faults(report) == []


def test_a_foundation_that_one_commences_with():
    """ "Commence with 26 ch" above the first row is its foundation."""
    report = check(
        "Edging\nCommence with 26 ch.\n1st row: 1 dc in 2nd ch from hook, *miss 3 ch, 7 tr in next ch, miss 3 ch, 1 dc in next ch; "
        "rep from * to end, turn. (25 sts)\n",
        "uk",
    )
    assert outcomes(report)[-1] == "agrees"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("*3 dc + ch 2 + 3 dc in next ch-2 sp; rep from * around", 24),
        ("*3dc-ch2-3dc in next ch-2 sp; rep from * around", 24),
        ("*skip to next ch-2 sp and work (3 dc, ch 2, 3 dc) into it; rep from * around", 24),
        ("*skip to next ch-2 sp, 5 dc into it; rep from * around", 20),
        ("2 dc each in next 4 ch-2 sps", 8),
        ("*3-dc group in next ch-2 sp, ch 1; rep from * around", 12),
        ("*3 dc grp in next ch-2 sp, ch 1; rep from * around", 12),
        ("*dc-cl in next ch-2 sp, ch 3; rep from * around", 4),
        ("*rev sc in next dc; rep from * around", 12),
        ("work reverse sc (crab st) in each dc around", 12),
        ("working from left to right, crab st in each dc around", 12),
        ("sc in each dc all the way round", 12),
    ],
)
def test_a_second_round_in_other_words(words: str, made: int):
    """On a ring of four groups of 3 dc with ch-2 corners."""
    report = check(f"Tile\n{_RING_OF_FOUR}Rnd 2: Join B in any ch-2 sp, {words}, join.\n")
    if "ch-2 sp" not in words:
        report = check(f"Tile\n{_RING_OF_FOUR}Rnd 2: Ch 1, {words}, join.\n")
    assert counts(report) == [12, made]


def test_unknown_words_that_go_into_a_place_are_not_passed_over():
    """ "Granny group in next sp" may be a stitch: it is said to be not understood."""
    report = check(
        f"Tile\n{_RING_OF_FOUR}Rnd 2: Sl st in next 2 dc and in corner sp, ch 1, *granny clump in next sp, ch 1; rep from * around, join.\n"
    )
    assert counts(report) == [12, None]


@pytest.mark.parametrize("words", ["sk next dc and ch, dc in next dc", "sk (dc, ch 1), dc in next dc"])
def test_a_chain_passed_over_with_its_stitch(words: str):
    """ "Skip first dc and ch" passes the space as well."""
    report = check(
        "Net\nRow 1: Ch 14, dc in 4th ch from hook (skipped chs count as dc), (ch 1, sk 1 ch, dc in next ch) 5 times, turn. (7 dc)\n"
        f"Row 2: Ch 1, sc in first dc, *{words}; rep from * once more, leave remaining sts unworked, turn.\n"
    )
    assert counts(report) == [7, 3]


def test_the_stitch_at_the_chains_base_is_the_first():
    """ "Ch 3, skip st at base": the chain stands on it."""
    report = check("Disc\nRnd 1: 8 sc in ring. Join.\nRnd 2: Ch 3, skip st at base, dc in each st to end. Join. (8)\n")
    assert outcomes(report)[-1] == "agrees"
    assert _faults(report) == []


def test_a_count_that_counts_the_chain_says_that_it_counts():
    """ "12 dc counting ch 3" answers the question of the chain, so that it is not asked."""
    report = check(
        "Strip\nRow 1: Ch 14, dc in 4th ch from hook and in each ch across. 12 dc counting ch 3.\n"
        "Row 2: Ch 3, turn, dc in next 11 dc. (12 dc, including turning ch)\n"
    )
    assert outcomes(report) == ["agrees", "agrees"]
    assert "turning-chain-unsaid" not in [f.rule for f in report.findings]


def test_times_that_only_one_reading_fits_are_settled_by_the_places():
    """With 20 spaces, one worked before the star, "18 times" must be 18 more: a matter of style alone."""
    report = check(
        "Web\n1ST ROW: Chain 7, join to form ring, ch 3 (counts as 1 dc), 19 dc in ring, join. (20 dc)\n"
        "2ND ROW: Ch 4 (counts as 1 dc and 1 ch), * dc in next dc, ch 1, repeat from * all around, join in 3rd st of ch 4.\n"
        "3RD ROW: Sl st into first sp, ch 1, sc in same sp, * ch 3, sc in next sp, repeat from * 18 times, ch 3, join in first sc.\n"
    )
    assert counts(report) == [20, 20, 20]
    assert [f.weight.value for f in report.findings if f.rule == "repeat-ambiguous"] == ["style"]


def test_the_spaces_beside_a_v_are_passed_when_its_own_is_named():
    """ "5 dc in ch-2 sp of next V": the ch-2 spaces on both sides of the V are left out, and the rest of the last V."""
    report = check(
        "Tulips\nRnd 1: Ch 32, join in a ring being careful not to twist chain. Ch 1, sc in each ch around, join. (32 sc)\n"
        "Rnd 2: Ch 1, sc in first sc, ch 2, sk 1 sc, (dc, ch 2, dc) in next sc, ch 2, sk 1 sc, *sc in next sc, ch 2, sk 1 sc, "
        "(dc, ch 2, dc) in next sc, ch 2, sk 1 sc; rep from * around, join. (8 sc, 16 dc)\n"
        "Rnd 3: Ch 1, *sc in sc, ch 2, 5 dc in ch-2 sp of next V, ch 2; rep from * around, join. (8 sc, 40 dc)\n"
    )
    assert outcomes(report) == ["agrees"] * 3
    assert _faults(report) == []


def test_gaps_between_groups_leave_the_turning_chain():
    """ "3 dc in each sp between groups across, dc in top of beg ch": the run does not take the chain."""
    report = check(
        "Stripe\nRow 1: Ch 20. Work 2 dc in 4th ch from hook, [sk next 2 ch, 3 dc in next ch] to last 4 ch, sk next 3 ch, dc in last ch. "
        "Turn. (16 dc)\nRow 2: Ch 3 for first dc, 3 dc in each sp between groups across, dc in top of beg ch. Turn.\n"
    )
    assert counts(report)[-1] == 14
    assert "places-run-out" not in [f.rule for f in report.findings]


def test_a_shell_defined_where_it_is_first_worked():
    """ "5 dc in next ch (shell made)" tells what a shell is; half shells at the row's ends are passed to the chain's top."""
    report = check(
        "Half shells\nCh 38.\nRow 1 (WS): Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch (shell made), sk 2 ch, sc in next ch; "
        "rep from * to end; turn. (6 shells)\n"
        "Row 2: Ch 3 (counts as dc), 2 dc in same sc (half shell made), *sc in 3rd dc of next shell, shell in next sc; "
        "rep from * to last shell, sc in 3rd dc of last shell, 3 dc in last sc; turn. (5 shells and 2 half shells)\n"
        "Row 3: Ch 1, sc in first dc, *shell in next sc, sc in 3rd dc of next shell; rep from * to last sc, shell in last sc, "
        "sc in top of turning ch; turn. (6 shells)\n"
    )
    assert outcomes(report)[-3:] == ["agrees"] * 3
    assert counts(report)[-3:] == [37, 37, 37]
    assert _faults(report) == []


def test_a_standing_stitch_in_the_middle_of_any_corner_begins_there():
    """A round that begins in a corner's middle meets the stitches before it at its end."""
    report = check(
        "Tile\nRnd 1 (A): 8 dc into ring, starting with ch 3 as first dc. Sl st to join. (8 dc)\n"
        "Rnd 2 (B): Standing dc in any st, 2 dc in same st, [dc in next st, 3 dc in next st] 3 times, dc in last st, join. (16 dc)\n"
        "Rnd 3 (C): Standing sc in center dc of any corner, 2 sc in same st, *sc in next 3 sts, 3 sc in next st (corner); "
        "rep from * twice more, sc in next 3 sts, join. (24 sc)\n"
    )
    assert outcomes(report) == ["agrees"] * 3
    assert _faults(report) == []


def test_rounds_closed_by_a_stitch_said_to_join():
    """ "Ch 1, dc in first sc to join" closes the last loop, where the next round begins; the ring is joined in its last chain."""
    report = check(
        "Mat\nRnd 1: Ch 6, join with sl st in 6th ch from hook; ch 1, (sc in ring, ch 4) 7 times, sc in ring, ch 1, dc in first sc to join. "
        "(8 ch-4 sps)\n"
        "Rnd 2: Ch 1, sc in sp formed by joining dc, (ch 5, sc in next ch-4 sp) 7 times, ch 2, dc in first sc to join. (8 ch-5 sps)\n"
        "Rnd 3: Ch 1, 3 sc in sp formed by joining dc, *(3 sc, ch 3, 3 sc) in next ch-5 sp; rep from * around to first sp, "
        "(3 sc, ch 3) in first sp, join. (48 sc)\n"
    )
    assert counts(report) == [8, 8, 48]
    assert _faults(report) == []


def test_gaps_round_a_round_of_stitches():
    """A granny circle worked between the stitches: as many gaps as stitches."""
    report = check(
        "Circle\nRnd 1: In a magic ring, ch 3 (counts as dc), 11 dc, sl st to 3rd ch. 12 dc\n"
        "Rnd 2: (Ch 3, dc) in first sp between sts, 2 dc in each sp between sts around, sl st to 3rd ch. 24 dc\n"
        "Rnd 3: Sl st to next sp between 2-dc groups, ch 3, 2 dc in same sp, 3 dc in each sp between groups around, join. 36 dc\n"
    )
    assert outcomes(report)[1:] == ["agrees", "agrees"]


@pytest.mark.parametrize("ring", ["4 ch, ss to join", "4 ch, ss in 4th ch from hook", "4 ch, join with ss in first ch"])
def test_a_ring_joined_in_few_words(ring: str):
    """Six clusters in the ring, the first made of the chain."""
    report = check(
        f"Hexagon\nRound 1: {ring}, 3 ch, tr2tog in ring (counts as first cl), *3 ch, tr3tog in ring (cl made); rep from * 4 more times, 3 ch, ss to top of first cl. (6 cl)\n",
        "uk",
    )
    assert counts(report) == [6]


def test_stitches_spread_round_an_edge_with_the_corners_among_them():
    """ "96 sc evenly around outer edge, working 3 sc in each corner": the total is the text's."""
    report = check(
        "Finish\nRnd 1: With right side facing, join yarn in any st along edge; ch 1, work 96 sc evenly around outer edge, "
        "working 3 sc in each corner; join in first sc. (96 sc)\n"
        "Rnd 2: Ch 1, sc in same st, *sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st; rep from * around, omitting final sc; "
        "join in first sc. (16 scallops)\n"
    )
    assert counts(report) == [96, 96]


@pytest.mark.parametrize(
    "listed",
    [
        "US terms: ch (chain), sc (single crochet), dc (double crochet), sl st (slip stitch), sp (space), rnd (round).",
        "ch chain, dc double crochet, sc single crochet, sl st slip stitch, sp space, rnd round",
        "Abbreviations used: ch (chain), sc (single crochet), dc (double crochet), sl st (slip stitch), sp (space), rnd (round).",
    ],
)
def test_a_list_of_abbreviations_in_a_line_of_its_own(listed: str):
    """Known by its content: nothing is missing, and nothing that it explains is unexplained."""
    report = check(
        f"Coaster\n{listed}\n\nRnd 1: Ch 4, join with sl st to form ring, ch 3 (counts as dc), 11 dc in ring, join with sl st in top of ch-3. (12 dc)\n"
        "Rnd 2: Ch 1, sc in same sp, sc in each dc around, join. (12 sc)\n"
    )
    missing = [f.message for f in report.findings if f.rule == "section-missing" and "abbreviations" in f.message]
    assert missing == []
    assert "abbreviation-undefined" not in [f.rule for f in report.findings]


@pytest.mark.parametrize(
    "size", ["Throw, about 120 x 150 cm", "Height: 11 cm. Gauge: 8 rnds = 10 cm", "Makes a stole of 40 by 160 cm"]
)
def test_a_finished_size_in_a_line(size: str):
    """A size is known by its measures as well as by a heading."""
    report = check(f"Throw\n{size}\n\nRow 1: Ch 14, sc in 2nd ch from hook and in each ch across. (13 sc)\n")
    assert not [f for f in report.findings if f.rule == "section-missing" and "finished size" in f.message]


def test_a_turning_chain_missing_among_rows_that_chain_and_turn():
    """ "Turn, sc across" after rows of "Ch 1, turn": the chain is missing there alone."""
    report = check(
        "Scarf\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\nRow 2: Ch 1, turn, sc in each st across. (20 sc)\n"
        "Row 3: Turn, sc in each st across. (20 sc)\nRow 4: Ch 1, turn, sc in each st across. (20 sc)\n"
    )
    assert [rule for rule, line in all_findings(report, ("query",)) if line == 5] == ["turning-chain-missing"]


def test_a_name_in_the_list_and_its_making_below():
    """ "SH = shell" and "Shell (SH): 5 dc in st" explain one thing; "BP sc" is the BPsc of the list."""
    report = check(
        "Edging\nAbbreviations: BPsc = back post single crochet; ch = chain; dc = double crochet; sc = single crochet; st = stitch; SH = shell\n"
        "Shell (SH): 5 dc in st.\n\nCh 14.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (13 sc)\n"
        "Row 2: Ch 1, sc in first st, *SH in next sc, sc in next sc; rep from * across, turn.\nRow 3: Ch 1, BP sc around each st across, turn.\n"
    )
    rules = [f.rule for f in report.findings]
    assert "abbreviation-twice" not in rules
    assert not [f for f in report.findings if f.rule == "abbreviation-unused" and "bpsc" in f.message.lower()]


@pytest.mark.parametrize(
    "ring",
    [
        "Slip knot, ch 4, insert hook in 1st chain, yo and pull through (ring made)",
        "Ch 5, insert hook into first ch, draw loop through to make a ring",
    ],
)
def test_a_ring_closed_by_hand(ring: str):
    """The movements that close a ring of chains are told instead of a slip stitch."""
    report = check(
        f"Disc\nRnd 1: {ring}, ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each of the other 11 dc, join. (24 dc)\n"
    )
    assert outcomes(report) == ["agrees", "agrees"]


def test_the_length_of_a_chain_loop_is_not_how_many_there_are():
    """ "In each 5 ch loop" names loops of five chains, however many; with the row below unknown, nothing is counted."""
    start = "Motif\nRound 1: 6 ch, ss into ring. 6 ch (counts as 1 tr and 3 ch), *1 tr in ring, 3 ch; rep from * 4 times more, ss into 3rd of 6 ch. (6 tr)\n"
    petals = "Round {}: 1 dc, 1 htr, 3 tr, 1 htr, 1 dc in each {} ch loop, ss in first dc.\n"
    assert counts(check(start + petals.format(2, 3), "uk")) == [6, 42]
    unknown = "Round 2: Wibble round the wobble of each tr.\n"
    assert counts(check(start + unknown + petals.format(3, 5), "uk")) == [6, None, None]


def test_one_gap_after_another_round_a_wheel():
    """ "Dc in sp between next 2 dc" goes from gap to gap, as the count of spaces shows."""
    report = check(
        "Wheel\nRnd 1: Ch 6, join in a ring, ch 3 (counts as dc), 15 dc in ring, join. (16 dc)\n"
        "Rnd 2: Ch 5 (counts as dc & ch 2), *dc in sp between next 2 dc, ch 2; rep from * around, join in 3rd ch of ch-5. (16 sps)\n"
        "Rnd 3: Ch 3 (counts as dc), 2 dc in ch-2 sp, *ch 1, 3 dc in next ch-2 sp; continue from * to end, ch 1, join. (48 dc)\n"
    )
    assert outcomes(report) == ["agrees"] * 3
    assert _faults(report) == []


def test_a_skip_of_one_over_a_mesh_is_of_the_chain():
    """ "Ch 1, sk 1, dc in next dc" on a mesh passes over the chain, where passing over a dc would not come out."""
    report = check(
        "Filet\nCh 24.\nRow 1: Dc in 6th ch from hook (counts as dc and ch 1), (ch 1, sk 1 ch, dc in next ch) 9 times, turn. (10 sps)\n"
        "Row 2: Ch 4 (counts as dc & ch 1), sk ch-1 sp, dc in next dc, (dc in next ch-1 sp, dc in next dc) 3 times, "
        "(ch 1, sk 1, dc in next dc) 5 times, ch 1, sk 1 ch, dc in next ch of turning ch, turn. (14 dc)\n"
    )
    assert outcomes(report)[-1] == "agrees"
    assert _faults(report) == []


def test_rows_that_are_the_same_as_others():
    """A label without a colon: "5th and 6th rows are the same as the 3rd and 4th rows"."""
    report = check(
        "Strip\n1st row: Ch 13, sc in 2nd ch from hook, sc in each ch across, turn. (12 sc)\n"
        "2nd row: Ch 3 (counts as dc), dc in each of next 11 sc, turn. (12 dc)\n"
        "3rd row: Ch 1, sc in each dc across, turn. (12 sc)\n4th row: Ch 3 (counts as dc), dc in each sc across, turn. (12 dc)\n"
        "5th and 6th rows are the same as the 3rd and 4th rows.\n"
    )
    assert counts(report) == [12] * 6


def test_a_chain_tried_behind_a_list_without_brackets():
    """The search for a likely cause may put a chain behind the last stitch of a list: it is worked like any other."""
    report = check(
        "Abbreviations\n"
        "tog - half treble 2 together: (yarn round hook, insert hook into next st and draw up a loop) twice, yarn round hook and draw "
        "through all 5 loops\n"
        "27th row: Turn, ss into each of first 4 sts, 2 ch, 1 htr into each of next 44 sts, leave last 4 sts unworked. - 44 sts\n"
        "28th row: Turn, 2 ch, htr2tog over first 2 sts, 1 htr into each st to last 2 sts, htr2tog over last 2 sts. - 42 sts\n",
        "uk",
    )
    assert counts(report)[0] == 44


@pytest.mark.parametrize(
    "words",
    [
        "Ch 3 (counts as dc), dc in the joining st, [2 dc in next dc] 11 times, join.",
        "Ch 3 (counts as dc), dc at base of ch, 2 dc in all remaining dc, join.",
        "Ch 3 (counts as dc), dc in the st at base of ch-3, work 2 dc into each dc round, join.",
        "Ch 3 (counts as dc), 1 dc into same dc as ss, 2 dc into each following dc, join.",
    ],
)
def test_doubling_a_round_in_other_words(words: str):
    """Twenty-four on a ring of twelve, however it is said."""
    start = "Disc\nRnd 1: Ch 4, join to form ring, ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: "
    assert counts(check(start + words + "\n")) == [12, 24]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        (
            "Join B to any corner, (ch 3 (counts as dc), 2 dc, ch 2, 3 dc) in corner, (3 dc, ch 2, 3 dc) in each remaining corner, join.",
            24,
        ),
        (
            "Sl st to corner, ch 3 (counts as dc), 2 dc in corner, ch 2, 3 dc in corner, *3 dc in next corner, ch 2, 3 dc in same corner; rep from * around, join. (24 dc)",
            24,
        ),
        (
            "Sl st to corner, ch 3 (counts as dc), 2 dc in corner, ch 2, 3 dc in corner, *3 dc in next corner, ch 2, 3 dc in same corner; rep from * around, join.",
            None,
        ),
    ],
)
def test_corners_that_are_left_and_corners_named_twice(words: str, made: int | None):
    """ "Each remaining corner" goes into corners alone; "in corner" said twice is the same one only where a count says so."""
    assert counts(check(f"Tile\n{_RING_OF_FOUR}Rnd 2: {words}\n")) == [12, made]


@pytest.mark.parametrize(
    "words",
    [
        "Sl st up to 3rd ch of first ch-5, ch 1, sc in same ch, *ch 6, sc in 3rd ch of next ch-5; rep from * around, ch 6, join.",
        "Sl st to centre of ch-5, ch 1, sc in same sp, *ch 6, sc in next ch-5 sp; repeat from * until all loops are worked, ch 6, join.",
        "Sl st in loop, ch 1, *sc in loop, ch 6; rep from * in each loop around, join.",
    ],
)
def test_loops_upon_loops(words: str):
    """Six loops on six."""
    report = check(
        "Mat\nRnd 1: Ch 5, join to form ring, ch 1, 12 sc in ring, join. (12 sc)\n"
        f"Rnd 2: Ch 1, sc in first sc, ch 5, sk 1 sc, (sc in next sc, ch 5, sk 1 sc) 5 times, join. (6 loops)\nRnd 3: {words}\n"
    )
    assert counts(report) == [12, 6, 6]
    assert spaces(report)[2] == {6: 6}


def test_the_second_stitch_after_a_chain_that_stands_on_the_first():
    """ "Ch 3, dc in 2nd dc and in each dc to end" is a plain row."""
    report = check(
        "Strip\nRow 1: Ch 14, dc in 4th ch from hook (skipped ch count as dc) and in each ch across, turn. (12 dc)\n"
        "Row 2: Ch 3 (counts as dc), dc in 2nd dc and in each dc to end, turn.\n"
    )
    assert counts(report) == [12, 12]


@pytest.mark.parametrize(
    "words",
    [
        "Ch 1, sc in first st, *shell in next ch-2 sp, sc in next sc; rep from * across, ending with sc in last sc, turn.",
        "Ch 1, *sc in next sc, shell in next ch-2 sp; rep from * to last sc, sc in last sc, turn.",
        "Ch 1, sc in sc, *shell in shell, sc in sc; rep from * across, turn.",
    ],
)
def test_stitches_of_a_shell_are_passed_on_the_way_to_the_next_sc(words: str):
    """A repeat into spaces and named stitches leaves out the stitches between them, in its last pass as well."""
    report = check(
        "Fans\nSpecial stitches\nShell = (2 dc, ch 2, 2 dc) in one place.\n\nRow 1: Ch 23, sc in 2nd ch from hook, "
        f"(sk 3 ch, shell in next ch, sk 2 ch, sc in next ch) 3 times, turn. (4 sc, 12 dc)\nRow 2: {words}\n"
    )
    assert counts(report) == [16, 16]
    assert _faults(report) == []


def test_v_stitch_in_v_stitch_across():
    """Neither next nor each is said, but how far."""
    report = check(
        "Scarf\nNotes: V-st = (dc, ch 1, dc) in one place.\n\nRow 1: Ch 20, V-st in 5th ch from hook (4 skipped ch count as dc), "
        "(sk 2 ch, V-st in next ch) 4 times, sk 2 ch, dc in last ch, turn. (12 dc)\n"
        "Row 2: Ch 3 (counts as dc), V-st in V-st across, dc in last st, turn.\n"
    )
    assert counts(report) == [12, 12]


def test_a_beginning_cluster_is_one_of_the_clusters_whatever_it_is_called() -> None:
    """ "beg-cl (beginning cluster)" beside "cl (3-dc cluster)" counts among the clusters."""
    report = check(
        "Ring\nUS terms\nSpecial stitches\nBeg-cl (beginning cluster): ch 2, dc2tog in same sp.\nCl (3-dc cluster): dc3tog in same sp.\n\n"
        "Ch 6, join with sl st to form a ring.\nRnd 1: Ch 1, *sc in ring, ch 3; rep from * 5 times more, join with sl st in first sc. (6 sc, 6 ch-3 sps)\n"
        "Rnd 2: Sl st in next ch, beg-cl in same sp, ch 4, *cl in next ch-3 sp, ch 4; rep from * around, join with sl st in top of beg-cl. (6 cl, 6 ch-4 sps)\n"
    )

    assert not [one for one in report.findings if one.rule == "count-differs"]


@pytest.mark.parametrize(("first", "asked"), [(3, False), (1, True)])
def test_three_in_the_first_chain_go_round_its_end(first: int, asked: bool) -> None:
    """Round a chain, three stitches in its first chain have gone round the end: the other side ends before it."""
    report = check(
        f"Mat\nUS terms\nCh 10.\nRnd 1: {first} sc in 2nd ch from hook, sc in next 7 ch, 3 sc in last ch, working along other side of foundation ch, sc in next 7 ch, join with sl st in first sc. ({17 + first} sc)\n"
    )

    assert bool([one for one in report.findings if one.rule == "places-left-over"]) is asked


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("3 sc in the corners, sc in each dc around.", 24),
        ("Sc in each dc around, 3 sc in corners.", 24),
        ("Sc in the sts, 3 sc in the corners.", 24),
        ("3 sc in corner sps, sc in each dc around.", 24),
    ],
)
def test_corners_in_the_plural_are_each_of_them(words: str, made: int | None) -> None:
    """ "In the corners" is in each corner, and "in the sts" in each stitch; no single one is meant."""
    text = f"Tile\n{_RING_OF_FOUR}Rnd 2: {words}\n"
    assert counts(check(text)) == [12, made]
