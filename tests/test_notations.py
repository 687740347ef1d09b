"""Small patterns in wordings of many houses: every row must come to the count worked out by hand."""

from __future__ import annotations

import pytest

from lint import check_text

PATTERNS = {
    "triangle, partial last repeat": (
        """Tri
TRIANGLE (make 5)
Rnd 1: Magic ring, ch 3 (counts as dc throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] twice, sl st to top of ch-3 to close.
Rnd 2: Sl st to next ch-2 sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp, ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1] twice, join.
Rnd 3: Sl st in next 2 dc and into ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *ch 1, 3 dc in next ch-1 sp, ch 1**, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * around, ending last rep at **; join.
Rnd 4: Ch 1, sc in same st as join, sc in each of next 2 dc, *3 sc in ch-2 sp, sc in each dc and ch-1 sp to next ch-2 sp; rep from * around, join.
""",
        [9, 18, 27, 42],
    ),
    "the stitch not named again, numbers before with a cross": (
        """Ball
BALL
R1: 6 sc in MR
R2: 6 x inc
R3: (sc in next, 2 in next) 6 times
R4: *1 sc in each of next 2, 2 in the third; rep from * around
R5: two sc in the next stitch, one in each of the next three; repeat around
R6: 6x sc-dec, 6 x 3 sc-inc
R7: 3 x sc2tog, sc in each remaining st
""",
        [6, 12, 18, 24, 30, 42, 39],
    ),
    "rings, corners and picots in short": (
        """Tile
TILE
Begin with magic circle.
Rnd 1: Ch 3 (counts as dc), 2 dc, ch 2, *3 dc, ch 2* 3 times into circle, join.
Rnd 2: Ch 1, sc in each dc around, 2sc/ch1/2sc in each corner, join.
Rnd 3: Ch 1, sc in each sc around, 3 sc in each corner-space, join.
Rnd 4: Ch 1, *sc in next 3 sc, ch-3 picot; rep from * around to last st, sc in last st; join.
""",
        [12, 28, 40, 40],
    ),
    "shells with a hyphen": (
        """Edge
EDGE
Ch 20 plus 1 for turning.
Row 1: Sc in 2nd ch from hook and in each ch across.
Row 2: Ch 1, turn, sc in first st, *sk 2 sts, 5dc-shell in next st, sk 2 sts, sc in next st; rep from * to last st, sc in last st.
Row 3: Ch 1, turn, sc in next 10 sts, leave last 10 sts.
""",
        [20, 20, 10],
    ),
    "a cross between a number and its stitch": (
        """Ball
BALL
R1: 6 sc in MR
R2: 6xinc
R3: (1xsc, inc) x 6
R4: 18xsc
R5: (sc, 1xdec)*6
R6: 6xdec
""",
        [6, 12, 18, 18, 12, 6],
    ),
    "small letters of the pattern's own": (
        """Lark
Stitches: x = sc, v = inc, a = dec, F = BLO

BODY
1 rnd: 6x in ring (6)
2 rnd: 6v (12)
3 rnd: (1x, v)*6 (18)
4 rnd: 18x (18)
5-6 rnd: F 18x
7 rnd: 3x, (1x, a)*4, 3x
8 rnd: (a, 5x) x 2
""",
        [6, 12, 18, 18, 18, 18, 14, 12],
    ),
    "each through the back loop": (
        """Band
BAND
Ch 9.
Row 1: Sc in 2nd ch from hook and in each ch across.
Row 2: Ch 1, turn, 1 sc tbl of each st to end.
Row 3: Ch 1, turn, dc-inc, sc through back loop of next 6 sts, sc in last st.
""",
        [8, 8, 9],
    ),
    "abbreviations with full stops": (
        """Table Mat
MAT
Ch. 6, join with sl. st. to form ring.
1st rnd. Ch. 3 (counts as d.c.), 15 d.c. in ring, join with sl. st. to top of ch. 3.
2nd rnd. Ch. 5 (counts as d.c., ch. 2), * d.c. in next d.c., ch. 2; rep. from * around, join with sl. st. in 3rd ch. of ch. 5.
3rd rnd. Sl. st. in next ch.-sp., ch. 3, 2 d.c. in same sp., * 3 d.c. in next ch. sp.; rep. from * around, join.
4th rnd. Ch. 3, d.c. in next 2 d.c., * ch. 1, sk. 1 d.c., d.c. in ea. of foll. 3 d.c.; rep. from * 10 times more, ch. 1, sk. 1 d.c., join.
""",
        [16, 16, 48, 36],
    ),
    "hat, R labels, decreases around": (
        """Hat
Ch 2 at the start of a round does not count as a stitch.

HAT
R1: 10 hdc in magic ring, sl st to first hdc.
R2: ch 2, 2 hdc in each st, join.
R3: ch 2, *2 hdc in next st, hdc in next st* around, join.
R4: ch 2, (hdc in next st, hdc2tog) 10 times, join.
R5: ch 2, hdc2tog around, join.
""",
        [10, 20, 30, 20, 10],
    ),
    "UK fans, place before the end": (
        """Fans
UK terms

EDGING
Make 32 ch.
1st row: 1 dc in 2nd ch from hook, *miss 2 ch, 5 tr in next ch, miss 2 ch, 1 dc in next ch; rep from * to end.
2nd row: 3 ch (counts as tr), 2 tr in first dc, *miss 2 tr, 1 dc in next tr, miss 2 tr, 5 tr in next dc; rep from * 3 times more, miss 2 tr, 1 dc in next tr, miss 2 tr, 3 tr in last dc, turn.
3rd row: 1 ch, 1 dc in first tr, *5 ch, miss 5 sts, 1 dc in next st; rep from * to end, turn.
4th row: 1 ch, 1 dc in first dc, (3 dc in 5-ch sp, 3 ch, 3 dc in same sp, 1 dc in next dc) 5 times.
""",
        [31, 31, 6, 36],
    ),
    "toy, bare star pairs and numbers": (
        """Ball
Spiral rounds.

BALL
Rnd 1: 6 sc in magic ring (6)
Rnd 2: inc around (12)
Rnd 3: (sc, inc) x6 (18)
Rnd 4: *2 sc, inc* repeat 6 times (24)
Rnds 5-8: sc around (24)
Rnd 9: *sc in next 2 sts, dec* around (18)
Rnd 10: (sc 1, dec) 6x (12)
Rnd 11: dec (6 times) (6)
""",
        [6, 12, 18, 24, 24, 24, 24, 24, 18, 12, 6],
    ),
    "old thread style, run on, loop closed by a stitch": (
        """OLD MEDALLION
MEDALLION. Ch 6, join to form ring. 1st rnd: Ch 3, 17 d c in ring, join to top of ch 3. 2nd rnd: Ch 4, * d c in next d c, ch 1; repeat from * 16 times, join in 3rd st of ch 4. 3rd rnd: S c in first sp, * ch 4, s c in next sp; repeat from * around, ending with ch 4, join in first s c—18 lps. 4th rnd: Sl st to center of first lp, s c in same lp, * ch 5, s c in next lp; repeat from * around, ending with ch 2, d c in first s c.
""",
        [18, 18, 18, 18],
    ),
    "V-stitches into V-stitches": (
        """V Scarf
US terms. V-st = (dc, ch 1, dc) in same st or sp.

SCARF
Ch 25.
Row 1: Dc in 4th ch from hook, *sk 2 ch, V-st in next ch; rep from * to last 3 ch, sk 2 ch, dc in last ch, turn.
Row 2: Ch 3 (counts as dc), dc in next dc, V-st in each V-st across, dc in top of turning ch, turn.
Row 3: Ch 3, dc in next dc, V-st in ch-1 sp of each V-st across, dc in top of ch-3.
""",
        [15, 15, 15],
    ),
    "oval round both sides of a chain, two in each": (
        """Rug
Ch 1 at the start of a round does not count as a stitch.

RUG
Ch 11
Round 1 - 2 sc in 2nd ch from hook, 1 sc in next 8 ch, 4 sc in last ch. Working on the other side of the ch, 1 sc in next 8 ch, 2 sc in last ch. Sl st to first sc. (24)
Round 2 - Ch 1, 2 sc in next 2 sc, sc 8, 2 sc in next 4 sc, sc 8, 2 sc in next 2 sc, sl st to first sc. (32)
Round 3 - Ch 1, BLO, sc in each st around. Sl st in first sc. (32)
""",
        [24, 32, 32],
    ),
    "bobbles, and a border along edges": (
        """Bobbles
Bobble (bo): keeping last loop of each st on hook, work 5 dc in same st, yo and draw through all loops.

SQUARE
Ch 14.
Row 1: Sc in 2nd ch from hook and each ch across, turn.
Row 2 (WS): Ch 1, sc in first 2 sts, *bo in next st, sc in next 3 sts; rep from * once more, bo in next st, sc in last 2 sts, turn.
Row 3: Ch 1, sc in each st across, turn.
Border
Rnd 1: Ch 1, 3 sc in first st, sc in next 11 sts, 3 sc in last st, 4 sc evenly down side, 3 sc in corner, 11 sc evenly along foundation ch, 3 sc in corner, 4 sc evenly up side, join.
""",
        [13, 13, 13, 42],
    ),
}


@pytest.mark.parametrize("name", PATTERNS)
def test_counts_come_out(name: str) -> None:
    """Every labelled row is recomputed, to the number worked out by hand."""
    text, expected = PATTERNS[name]

    rows = [row for row in check_text(text).ledger.rows if row.row.label is not None]

    assert expected == [row.cells[0].made and row.cells[0].made.stitches for row in rows]


@pytest.mark.parametrize(
    ("row", "why"),
    [
        ("Row 2: Ch 1, turn, dec 1 st at each end of every alternate row.", "how many rows that is is not said"),
        ("Row 2: Ch 1, turn, sc in each st around (Size S) wimble.", "words that nobody knows"),
        ("Row 2: Ch 1, turn, shell in next sc, sc in next 11 sc.", "a shell that is nowhere defined"),
        ("Row 2: Ch 1, turn, sc in next 3, 2 sc in first sc, around.", "a run with no mark where it begins"),
        ("Row 2: Ch 1, turn, work even in pattern.", "a pattern that is not named"),
    ],
)
def test_never_guessed(row: str, why: str) -> None:
    """What the words leave open is not recomputed, and is never a pass."""
    text = f"Strip\n\nSTRIP\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\n{row} (12 sc)\n"

    cell = check_text(text).ledger.rows[-1].cells[0]

    assert cell.made is None, why
    assert cell.outcome.value == "not-recomputed"
    assert cell.stopped_by


def test_each_missing_section_is_told() -> None:
    """A pattern of rows alone lacks five sections, and each is named."""
    text = "Strip\n\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\n"

    missing = [finding.message for finding in check_text(text).findings if finding.rule == "section-missing"]

    assert 5 == len(missing) == len(set(missing))


def test_settled_reading_is_kept() -> None:
    """Once the counts have told that ch 1 does not count, a later wrong count can't be saved by counting it."""
    text = (
        "Strip\n\nSTRIP\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\n"
        "Row 2: Ch 1, turn, sc in each sc across. (12 sc)\n"
        "Row 3: Ch 1, turn, 2 sc in first sc, sc in each sc across. (14 sc)\n"
    )

    report = check_text(text)

    assert 13 == report.ledger.rows[-1].cells[0].made.stitches
    assert "count-differs" in [finding.rule for finding in report.findings]


def test_unlabelled_row_is_not_passed_over() -> None:
    """A row whose label was lost is worked or said to be not recomputed, never dropped."""
    text = (
        "Strip\n\nSTRIP\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\n\n"
        "Now turn and work another wimble row of sc in each sc. (13 sc)\n\nRow 3: Ch 1, turn, sc in each sc across. (13 sc)\n"
    )

    recomputed, of = check_text(text).recomputed

    assert recomputed < of
