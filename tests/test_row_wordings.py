"""Work in rows, in many wordings: what each makes, worked out by hand.  Common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes

SC_20 = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
SC_21 = "Ch 22.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (21 sc)\n"
SC_24 = "Ch 25.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (24 sc)\n"
DC_12 = "Ch 14.\nRow 1: Dc in 4th ch from hook (skipped chs count as first dc) and in each ch across, turn. (12 dc)\n"
DC_20 = "Ch 22.\nRow 1: Dc in 4th ch from hook (skipped chs count as first dc) and in each ch across, turn. (20 dc)\n"
MESH = (
    "Ch 23.\nRow 1: Dc in 4th ch from hook (skipped chs count as first dc) and in each ch across, turn. (21 dc)\n"
    "Row 2: Ch 4 (counts as dc and ch 1), sk next dc, dc in next dc, *ch 1, sk next dc, dc in next dc; rep from * across, turn.\n"
)  # 11 dc, 10 ch-1 sps, one of them of the turning chain
SHELLS = (
    "Ch 26.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (25 sc)\n"
    "Row 2: Ch 1, sc in first sc, *sk 2 sc, 5 dc in next sc, sk 2 sc, sc in next sc; rep from * across, turn.\n"
)  # 4 shells, 5 sc
ARCHES = (
    SC_21 + "Row 2: Ch 1, sc in first sc, *ch 5, sk 3 sc, sc in next sc; rep from * across, turn.\n"
)  # 6 sc, 5 arches
SHAWL = (
    "Ch 4, sl st in first ch to form ring.\nRow 1: Ch 3 (counts as dc throughout), 2 dc in ring, ch 2, 3 dc in ring, turn.\n"
    "Row 2: Ch 3, 2 dc in first st, ch 1, (3 dc, ch 2, 3 dc) in ch-2 sp, ch 1, 3 dc in last st, turn.\n"
)

MADE = [
    # stitches skipped and worked afterwards
    (SC_20, "Row 2: Ch 3 (counts as dc), *sk next st, dc in next st, dc in skipped st; rep from * to last st, dc in last st, turn.", 20, {}),
    (SC_20, "Row 2: Ch 3 (counts as dc), *sk next 2 sts, tr in next st, working behind tr just made dc in each of 2 skipped sts; rep from * to last st, dc in last st, turn.", 20, {}),
    # shaping told by where it falls
    (SC_24, "Row 2: Ch 1, decrease 4 sts evenly across row, turn.", 20, {}),
    (SC_24, "Row 2: Ch 1, sc across, dec 4 sts evenly spaced, turn.", 20, {}),
    (SC_24, "Row 2: Ch 1, sc in each st, inc 6 sts evenly across.", 30, {}),
    (SC_24, "Row 2: Ch 1, sc in each st across, dec 1 st at each end, turn.", 22, {}),
    (SC_24, "Row 2: Ch 1, inc 1 st at beg and end of row, turn.", 26, {}),
    (SC_24, "Row 2: Ch 1, sc across, decreasing 2 sts at each end.", 20, {}),
    # words on the side, and stars that are no bold
    (SC_20, "Row 2: From here on, 2 sc in each st.", 40, {}),
    (SC_20, "Row 2: With the wrong side facing, ch 1, sc loosely in each st across, turn.", 20, {}),
    (SC_20, "Row 2: Ch 1, *2 sc in next st, sc in next st*", 30, {}),
    # the middle of a row
    (SHAWL, "Row 3: Ch 3, 2 dc in first st, *ch 1, 3 dc in next ch-1 sp; rep from * to center ch-2 sp, ch 1, (3 dc, ch 2, 3 dc) in center ch-2 sp, *ch 1, 3 dc in next ch-1 sp; rep from * to last st, ch 1, 3 dc in last st, turn.", 18, {1: 4, 2: 1}),
    (SC_21, "Row 2: Ch 1, sc to center st, 3 sc in center st, sc to end, turn.", 23, {}),
    # the turning chain as a place
    (DC_20, "Row 2: Turn, ch 1, sc in each dc and in top of turning chain.", 20, {}),
    (DC_20, "Row 2: Ch 3 (counts as dc), turn, sk first dc, dc in each dc and in top of ch-3.", 20, {}),
    (MESH, "Row 3: Ch 3 (counts as dc), *2 dc in next ch-1 sp; rep from * across, ending 2 dc in ch-4 sp, turn.", 21, {}),
    (MESH, "Row 3: Ch 1, sc in first dc, *sc in next sp, sc in next dc; rep from * to tch, 2 sc in tch, turn.", 21, {}),
    (MESH, "Row 3: Ch 3 (counts as dc), dc in first sp, ch 1, *sk next dc, dc in next sp, ch 1; rep from * to last sp, dc in last sp, dc in 3rd ch of tch, turn.", 12, {1: 9}),
    (ARCHES, "Row 3: Ch 5 (counts as dc and ch 2), sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * across, ch 2, dc in last sc, turn.\nRow 4: Ch 1, sc in first dc, *ch 5, sc in next ch-5 lp; rep from * across, ch 5, sc in 3rd ch of turning ch-5, turn.", 6, {5: 5}),
    (DC_20, "Row 2: Ch 2, sk first st, [fpdc around next st, bpdc around next st] to last st, hdc in tch, turn.", 20, {}),
    (SC_21, "Row 2: Ch 4, sk 2 sc, dc in next sc, *ch 1, sk 1 sc, dc in next sc; rep from * to end, turn.", 11, {1: 10}),
    ("Ch 20.\nRow 1: Sc in 2nd ch from hook and in each ch across, ch 3, turn. (19 sc)\n", "Row 2: Sk 1 sc, dc in each sc to end, ch 1, turn.\nRow 3: Sc in each dc, sc in top of t-ch.", 19, {}),
    ("Ch 22.\nRow 1: Sc in 4th ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * across, turn.\n", "Row 2: Ch 2, sk first sc, *sc in next ch-1 sp, ch 1, sk next sc; rep from * across, ending with sc in turning ch sp, turn.", 10, {1: 9}),
    # a chain that is a leg of the first decrease
    (DC_12, "Row 2: Ch 2, dc in next st (counts as dc2tog), dc in each st to last 2 sts, dc2tog, turn.", 10, {}),
    # a chain ring worked chain by chain
    ("Ch 60, join with sl st to first ch to form ring.\n", "Rnd 1: Ch 3 (counts as dc), dc in each ch around, join.", 60, {}),
    # shells and what is left of them
    (SHELLS, "Row 3: Ch 3 (counts as dc), 2 dc in first sc, *sc in center dc of next 5-dc group, 5 dc in next sc; rep from * across, ending with 3 dc in last sc, turn.", 25, {}),
    (SHELLS, "Row 3: Ch 3 (counts as dc), 2 dc in same st, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; rep from * to last shell, sk 2 dc, sc in next dc, sk 2 dc, 3 dc in last sc, turn.", 25, {}),
    # spaces
    (ARCHES, "Row 3: Ch 1, sl st in next 2 chs, sc in same ch-5 sp, (ch 4, sc in next ch-5 sp) across, turn.", 5, {4: 4}),
    (SC_20, "Row 2: Ch 1, sc in first 6 sc, ch 8, sk next 8 sc, sc in last 6 sc, turn.\nRow 3: Ch 1, sc in each sc across, working 8 sc in ch-8 sp, turn.", 20, {}),
    (SC_20, "Row 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 6, turn, sc in 2nd ch from hook and in next 4 chs, sc in each sc across, turn.\nRow 4: Ch 1, sc in each st and ch-1 sp across.", 25, {}),
    # a second side, joined to what a row left
    (SC_20, "Row 2: Ch 1, sc in first 6 sts, turn.\nRow 3: Ch 1, sc in each st across, fasten off.\nRow 4: With right side facing, skip next 8 sts, join yarn with sl st in next st, ch 1, sc in same st, sc in next 5 sts, turn.", 6, {}),
    # rows worked again
    (SC_20, "Row 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. (18 sc)\nRep Rows 2 and 3 four times more.\nNext row: Ch 1, sc in each st across, turn.", 10, {}),
    (SC_20, "Row 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. Rep Rows 2 and 3 four times more.\nNext row: Ch 1, sc in each st across, turn.", 10, {}),
    (SC_20, "Row 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn.\nRep last 2 rows until 12 sts remain.\nNext row: Ch 1, sc in each st across, turn.", 12, {}),
    (SC_20, "Row 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn.\nRow 4: Rep Rows 2 and 3 twice more.", 14, {}),
    (SC_20, "Inc row: Ch 1, 2 sc in first st, sc to last st, 2 sc in last st, turn.\nRep Inc row 4 more times.", 30, {}),
    (SC_20, "Row 2: Ch 1, sc in each st across, turn.\nRep Row 2 until piece measures 25 cm.\nRow 9: Ch 1, sc in each st across.", 20, {}),
    # rows with a name for a label
    (SC_21, "Edging: Ch 1, sc in first st, *ch 3, sk next st, sc in next st; rep from * across, fasten off.", 11, {3: 10}),
    (SC_21, "Border Row 1: Ch 1, sc in each st across.", 21, {}),
    (SC_21, "Second row: Ch 1, sc in each st across.", 21, {}),
]  # fmt: skip

NOT_TOLD = [
    (SC_20, "Rnd 2: Ch 1, sc in end of each row around, join."),  # how many row ends there are is not known here
    (SC_20, "Row 2: Ch 1, turn, dc in skipped sc, sc in each st across."),  # this row skipped none
    (SC_20, "Row 2: Ch 1, sc to center st, 3 sc in center st, sc to end."),  # twenty stitches have no middle one
    (
        SC_20,
        "Row 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, 2 sc in first st, rep Row 2 across, turn.",
    ),  # neither row
    (SC_20, "Row 2: Ch 1, sc in each st (this round only: 2 sc in last st)."),  # a gloss, or work?
    (SC_20, "Row 2: Ch 1, make sure to work 2 sc in last st, sc in each st."),  # more than a remark
    (SC_24, "Row 2: Ch 1, sc across, dec 13 sts evenly."),  # twelve pairs are all there is
    (SC_20, "Row 2: Ch 1, sc2tog, sc to last 2 sts, sc2tog, turn.\nRep Row 2 until 11 sts remain."),  # two a row
]


@pytest.mark.parametrize(("before", "words", "stitches", "spaces"), MADE, ids=[words[:70] for _, words, _, _ in MADE])
def test_wording_makes(before: str, words: str, stitches: int, spaces: dict[int, int]) -> None:
    """The last row makes what was worked out by hand, and nothing is called wrong."""
    report = check(f"Test\nUS terms\n\n{before}{words}\n")
    made = report.ledger.rows[-1].cells[0].made

    assert made is not None
    assert (stitches, spaces) == (made.stitches, made.spaces)
    assert [] == all_findings(report, ("correction",))


@pytest.mark.parametrize(("before", "words"), NOT_TOLD, ids=[words[:70] for _, words in NOT_TOLD])
def test_what_is_not_told_is_not_counted(before: str, words: str) -> None:
    """A row whose count hangs on something unknown is not recomputed."""
    report = check(f"Test\nUS terms\n\n{before}{words}\n")

    assert report.ledger.rows[-1].cells[0].outcome.value == "not-recomputed"


def test_one_skipped_chain_is_never_a_stitch() -> None:
    """A foundation chain one short is found, though a chain that counted would make the figure come out."""
    report = check(
        "Test\nUS terms\n\nCh 25.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (25 sc)\n"
        "Row 2: Ch 1, sc in each sc across, turn. (25 sc)\n"
    )

    assert "count-differs" in [finding.rule for finding in report.findings]


def test_a_wrong_count_does_not_make_the_turning_chain_a_stitch() -> None:
    """One row's figure, one too high, is a mistake of that row where the rows after it speak against it."""
    report = check(
        f"Test\nUS terms\n\n{SC_20}Row 2: Ch 1, sc in each st across, turn. (21 sc)\n"
        "Row 3: Ch 1, sc in each st across, turn. (20 sc)\nRow 4: Ch 1, sc in each st across, turn. (20 sc)\n"
    )

    assert [("count-differs", 6)] == all_findings(report, ("correction",))


def test_a_turning_chain_that_all_rows_count_is_a_stitch() -> None:
    """Where every row's figure counts the ch 1, it counts; what is asked is only that it be said."""
    report = check(
        f"Test\nUS terms\n\n{SC_20}Row 2: Ch 1, sk first st, sc in each st across, turn. (20 sc)\n"
        "Row 3: Ch 1, sk first st, sc in each st across, turn. (20 sc)\n"
    )

    assert "turning-chain-unsaid" in [finding.rule for finding in report.findings]
    assert [] == all_findings(report, ("correction",))


def test_slip_stitches_at_the_ends_of_a_row_may_be_counted():
    """A small leaf counts them; they use up the chains they are worked into."""
    report = check(
        "Leaf\nLEAF\nRow 1: Ch 7, sl st in 2nd ch from hook, sc in next ch, hdc in next 2 ch, sc in next ch, sl st in last ch. (6 sts)\n"
    )
    assert outcomes(report) == ["agrees"]
    report = check(
        "Leaf\nLEAF\nRow 1: Ch 7, sl st in 2nd ch from hook, sc in next ch, hdc in next 2 ch, sc in next ch, sl st in last ch. (7 sts)\n"
    )
    assert outcomes(report) == ["differs"]


def test_slip_stitches_told_by_their_number_use_as_many_places():
    """ "sl st 3" in a row passes three stitches."""
    report = check(
        "Step\nSTEP\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\nRow 2: Turn, sl st 3, ch 1, sc 4, leave last 3 sts. (4 sc)\n"
    )
    assert counts(report) == [10, 4]
    assert [rule for rule, _ in corrections(report)] == ["abbreviations-missing"] or corrections(report) == []


def test_a_stitch_named_among_what_is_skipped_is_not_worked():
    """ "sk ch-3 sp and sc, sc in next sc": the first sc is passed over."""
    report = check(
        "Runner\nRUNNER\nCh 17.\n"
        "R1: Dc in 4th ch from hook and in each ch across. (15 dc)\n"
        "R2: Ch 3 (counts as dc), turn, sk first dc, dc in next 2 dc, *ch 3, sk 3 dc, sc in next 3 dc, ch 3, sk 3 dc, dc in next 3 dc* across. (6 dc, 3 sc)\n"
        "R3: Ch 3 (counts as dc), turn, sk first dc, dc in next 2 dc, *ch 4, sk ch-3 sp and sc, sc in next sc, ch 4, sk sc and ch-3 sp, dc in next 3 dc* across. (6 dc, 1 sc)\n"
    )
    assert counts(report) == [15, 9, 7]


@pytest.mark.parametrize("name", ["Edging -", "Edging.", "Picot edging –", "Edging:"])
def test_an_edging_in_one_line_is_a_row_of_its_own(name):
    """By a colon, a dash or a full stop; the row above ends before it, and the edging goes on from it."""
    report = check(
        f"Mat\nRow 1: Ch 11, sc in 2nd ch from hook and in each ch across. (10 sc)\n{name} Ch 1, turn, 2 sc in first sc, sc in each sc to end. (11 sc)\n"
    )
    made = [row.cells[0].made.stitches for row in report.ledger.rows if row.cells[0].made is not None]
    assert made[-2:] == [10, 11]
    assert corrections(report) == [] or {rule for rule, _ in corrections(report)} <= {"abbreviations-missing"}


def test_a_note_on_turning_chains_tells_of_the_chains_skipped_at_the_start():
    """ "Turning chains count as a stitch" answers for "4th ch from hook" as well: nothing is asked."""
    report = check(
        "Mat\nNote: Turning chain counts as a stitch.\n"
        "Row 1: Ch 40, dc in 4th ch from hook and in each ch to end. (38 dc)\nRow 2: Ch 3, turn, dc in each dc. (38 dc)\n"
    )
    assert counts(report) == [38, 38]
    assert "turning-chain-unsaid" not in [finding.rule for finding in report.findings]


_BOBBLES = (
    "Mat\nBobble: (Yo, insert hook in st, yo and pull up a loop, yo and pull through 2 loops) 5 times in same st, yo and pull through all 6 loops.\nMAT\n"
    "Ch 17.\nRow 1: Sc in 2nd ch from hook, sc in each ch across. (16 sc)\n"
    "Row 2: Ch 1, turn, sc in first 2 sc, *bobble in next sc, sc in next 3 sc; rep from * twice more, sc in last 2 sc. (13 sc, 3 bobbles)\n"
)


def test_each_sc_over_a_row_with_bobbles_is_each_stitch():
    """A row worked plain over bobbles names the stitch it is worked in; nobody leaves the bobbles out."""
    report = check(
        _BOBBLES
        + "Row 3: Ch 1, turn, sc in each sc across. (16 sc)\nRow 4: Ch 1, turn, sc in each sc across. (16 sc)\n"
    )
    assert counts(report) == [16, 16, 16, 16]


def test_each_sc_is_only_the_sc_where_the_count_says_so():
    """The printed count decides for the narrow reading."""
    report = check(_BOBBLES + "Row 3: Ch 1, turn, sc in each sc, skipping bobbles. (13 sc)\n")
    assert counts(report)[-1] in (13, None)
    report = check(_BOBBLES + "Row 3: Ch 1, turn, sc in each sc across. (13 sc)\n")
    assert counts(report)[-1] == 13


@pytest.mark.parametrize("words", ["hdc-blo 12", "hdc blo 12", "12 hdc in blo", "blo hdc 12"])
def test_the_loop_may_stand_between_a_stitch_and_its_number(words):
    """In which loop is not how many."""
    report = check(
        f"Rib\nRIB\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\nRow 2: Ch 1 (does not count), turn, {words}. (12 hdc)\n"
    )
    assert counts(report) == [12, 12]


def test_a_row_as_for_another_piece_is_the_row_of_its_own_name_there():
    """ "Foundation row: As for Back" calls that piece's foundation row, "2nd row: As given for Back" its 2nd row."""
    report = check(
        "Vest\nUK terms\n\nBACK\nMake 22 ch.\nFoundation row: 1 dc into 2nd ch from hook, 1 dc into each ch to end. (21 dc)\n"
        "1st row: 1 ch, 1 dc into each dc to end. (21 dc)\n2nd row: 1 ch, dc2tog, 1 dc into each dc to end. (20 dc)\n\n"
        "FRONT\nMake 12 ch.\nFoundation row: As for Back. (11 dc)\n1st row: As for Back. (11 dc)\n2nd row: As given for Back. (10 dc)\n3rd row: As for Back.\n"
    )
    assert counts(report) == [21, 21, 20, 11, 11, 10, None]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc into every stitch of previous row", 20),
        ("1 sc in each sc of the previous row", 20),
        ("work one sc into each of the stitches of the preceding row", 20),
        ("sc in each st of last row", 20),
        ("sc in next 5 sts, another sc in same st, sc in each st to end", 21),
        ("sc in next 5 sts, a further 3 sc, turn, leaving rest unworked", 8),
        ("sc in next 5 sts, an additional 2 sc in same st, sc in each st to end", 22),
        ("sc in next st, dc in next st, and so on across", 20),
        ("sc in first half of the sts, hdc in second half of the sts", None),
        ("sc in the other half", None),
        ("sc around the hem", None),
        ("sc in the other piece", None),
    ],
)
def test_what_each_and_another_stand_for(words: str, made: int | None) -> None:
    """Each stitch of the previous row is each of the twenty; how many go into another piece, or a half, is not guessed."""
    report = check(f"Panel\n\nUS terms\n\nPANEL\nRow 1: Fsc 20, turn. (20)\nRow 2: Ch 1, {words}.\n")
    assert counts(report) == [20, made]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc in each st across, another sc in last st", 21),
        ("sc in each st across, a further 2 sc in last st", 22),
        ("2 sc over next 4 sts, sc in next 16 sts", None),
        ("2 sc over next 2 sts, sc in next 18 sts", 20),
        ("sc in 6th and 4th st, sc in next 13 sts", None),
        ("sc in the next third of the sts", None),
        ("2 sc in the 1st and 7th sts, sc in next 13 sts", None),
        ("sc in next 3 sts, 2 sc in 1st st, sc across", None),
    ],
)
def test_places_told_by_their_numbers(words: str, made: int | None) -> None:
    """What goes into the last stitch again, into the 7th, or over several: worked as said, or not counted; of twenty."""
    report = check(f"Panel\n\nUS terms\n\nPANEL\nRow 1: Fsc 20, turn. (20)\nRow 2: Ch 1, {words}, turn.\n")
    assert counts(report) == [20, made]
