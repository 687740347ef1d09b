"""One clause, many wordings: what each makes on a row that is known, worked out by hand.

Wordings that once were misread without a warning stand here, so that they stay mended.  Common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import check, outcomes, worked_rows

GRANNY = """Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc throughout), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st in top of ch 3.
"""  # 12 dc, four ch-2 corners
ROUND_24 = "Rnd 1: 24 sc in magic ring, join with sl st in first sc.\n"
ROUND_12 = "Rnd 1: 12 sc in magic ring, join with sl st in first sc.\n"
LOOPS_8 = """Rnd 1: 8 sc in magic ring, sl st in first sc.
Rnd 2: Ch 1, sc in same st, *ch 4, sc in next sc; rep from * around, ending with ch 2, dc in first sc to form last loop.
"""
ROW_20 = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
SCALLOPS = """Ch 20.
Row 1: Sc in 2nd ch from hook, *sk 2 chs, 5 dc in next ch, sk 2 chs, sc in next ch; rep from * across, turn.
"""
GRANNY_2 = (
    GRANNY
    + """Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, ch 1, join.
"""
)  # 24 dc, four ch-2 corners, four ch-1 sides
TIGHT_GRANNY = (
    GRANNY
    + """Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, join.
"""
)  # the same with no chains between the groups
ROUND_12_DC = "Rnd 1: In magic ring, ch 3 (counts as dc), 11 dc in ring, join with sl st in top of ch 3.\n"
ROUND_24_DC = "Rnd 1: In magic ring, ch 3 (counts as dc), 23 dc in ring, join with sl st in top of ch 3.\n"
ARCHES_8 = """Rnd 1: 16 sc in magic ring, join with sl st in first sc.
Rnd 2: Ch 1, sc in same st, ch 3, sk 1 sc, *sc in next sc, ch 3, sk 1 sc; rep from * 6 more times, join with sl st in first sc.
"""  # 8 sc, eight ch-3 arches
MESH_12 = "Rnd 1: In magic ring, ch 4 (counts as dc and ch 1), (dc, ch 1) 11 times in ring, join with sl st in 3rd ch of ch 4.\n"
SHELL_WORDS = "Special stitches\nShell: (3 dc, ch 2, 3 dc) in indicated sp.\nBeg shell: Ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp.\n\nDOILY\n"
V_STITCH = "Special stitch\nV-st: (dc, ch 1, dc) in same st.\n\nPIECE\nCh 30.\n"

MADE = [
    # two runs over different places are one way round
    (GRANNY, "Rnd 2: Ch 1, sc in each dc around, 3 sc in each ch-2 sp, join.", 24, {}),
    (GRANNY, "Rnd 2: Ch 1, sc in each dc around and 2 sc in each ch-2 sp around, join.", 20, {}),
    (GRANNY, "Rnd 2: Ch 1, 1 sc in each dc, (sc, ch 2, sc) in each corner sp, join.", 20, {2: 4}),
    (GRANNY, "Rnd 2: Ch 1, sc in each st around, working 3 sc in each corner, join.", 24, {}),
    # the loop of the stitch says how, not where
    (ROUND_12, "Rnd 2: Ch 1, sc blo in each st around, sl st in first sc.", 12, {}),
    (ROUND_12, "Rnd 2: Ch 1, hdc in third loop of each st around, sl st in first hdc.", 12, {}),
    (ROUND_12, "Rnd 2: Ch 1, hdc in the 3rd loop of each st around, join.", 12, {}),
    (ROUND_12, "Rnd 2: Ch 1, sc in each st in back loops only around, join.", 12, {}),
    # stitches left
    (ROW_20, "Row 2: Ch 1, sc in each st across, leaving last 3 sts unworked, turn.", 17, {}),
    (ROW_20, "Row 2: Ch 1, sc in next 12 sts, leaving remaining 8 sc unworked, turn.", 12, {}),
    # chains between slip stitches are spaces of their own, in every pass
    (ROUND_24, "Rnd 2: *Ch 5, sk 2 sts, sl st in next st; rep from * around.", 0, {5: 8}),
    (ROUND_12, "Rnd 2: *Ch 3, sl st in next sc; rep from * around.\nRnd 3: (Sl st, ch 2, dc, ch 2, sl st) in each ch-3 sp around.", 12, {2: 24}),
    (ROUND_12, "Rnd 2: Ch 1, (sc, ch 2, sc) in each st around, join.\nRnd 3: *Sl st in next ch-2 sp, ch 4; rep from * around, join.", 0, {4: 12}),
    # the last pass
    (GRANNY, "Rnd 2: Sl st to corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next corner sp; rep from * around, omitting last corner, join.", 24, {2: 4, 1: 4}),
    (ROUND_24, "Rnd 2: Ch 1, sc in same st, *ch 5, sk 2 sts, sc in next st; rep from * around, omitting last sc, join with sl st in first sc.", 8, {5: 8}),
    (ROUND_24, "Rnd 2: Ch 1, *sc in next st, ch 3, sk 1 st; rep from * around, omitting last ch 3, join.", 12, {3: 11}),
    (ROUND_24, "Rnd 2: Ch 1, sc in first st, *ch 5, sk next 2 sts, sc in next st; rep from * around, ending with ch 5, join.", 8, {5: 8}),
    (SCALLOPS, "Row 2: Ch 3 (counts as dc), 2 dc in first sc, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; rep from * across, ending with 3 dc (instead of 5) in last sc, turn.", 19, {}),
    (SCALLOPS, "Row 2: Ch 3 (counts as dc), 2 dc in first sc, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; rep from * across, ending (last rep) with 3 dc in last sc, turn.", 19, {}),
    # corners of stitches
    (GRANNY, "Rnd 2: Ch 1, sc in each dc around, 3 sc in each ch-2 sp, join.\nRnd 3: Ch 1, sc in each sc around, working 3 sc in center sc of each corner, join.", 32, {}),
    (GRANNY, "Rnd 2: Ch 1, sc in each dc around, 3 sc in each ch-2 sp, join.\nRnd 3: Ch 1, *sc in each sc to corner, 3 sc in center sc of corner; rep from * 3 more times, sc in each remaining sc, join.", 32, {}),
    # chains counted from the hook
    ("", "Row 1: Ch 4 (first 3 chs count as dc), (2 dc, ch 2, 3 dc) in 4th ch from hook, turn.", 6, {2: 1}),
    ("", "Rnd 1: Ch 5, (dc, ch 1) 7 times in 5th ch from hook, join with sl st in 4th ch of beg ch-5.", 8, {1: 8}),
    ("Ch 30.\n", "Row 1: Starting in 2nd ch from hook, sc in each ch across.", 29, {}),
    ("Ch 30.\n", "Row 1: Beginning in 4th ch from hook, dc in each ch across.", 28, {}),
    (V_STITCH, "Row 1: V-st in 6th ch from hook, *sk 2 ch, V-st in next ch; rep from * to last 3 chs, sk 2 ch, dc in last ch; turn.", 18, {1: 8}),
    (ROW_20, "Row 2: Ch 4 (counts as dc and ch 1), sk first 2 sts, dc in next st, *ch 1, sk next st, dc in next st; rep from * to last st, dc in last st, turn.", 11, {1: 9}),
    # loops closed by a stitch
    (LOOPS_8, "Rnd 3: Ch 1, sc in loop just made, *ch 5, sc in next loop; rep from * around, ch 5, join with sl st in first sc.", 8, {5: 8}),
    (LOOPS_8, "Rnd 3: *Ch 5, sc in next loop; rep from * 6 more times, ch 2, tr in top of dc (this forms last ch-5 loop).", 7, {5: 8}),
    (LOOPS_8, "Rnd 3: *Ch 5, sc in next loop; rep from * around, ending with ch 2, dc in dc at beginning of rnd.", 7, {5: 8}),
    # between the stitches
    (ROUND_24, "Rnd 2: Ch 1, sc between each sc around, join.", 24, {}),
    # "corner" tells a corner's spaces from those of the sides
    (GRANNY_2, "Rnd 3: Ch 1, sc in each dc and 3 sc in each corner sp around, join.", 36, {}),
    (GRANNY_2, "Rnd 3: Ch 1, sc in each dc, 1 sc in each ch-1 sp and 3 sc in each corner sp around, join.", 40, {}),
    (GRANNY_2, "Rnd 3: Sl st to corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *ch 1, 3 dc in ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in corner sp; rep from * around, ending last rep without corner, join.", 36, {2: 4, 1: 8}),
    # a list without brackets goes into one place
    (ARCHES_8, "Rnd 3: Sc, hdc, dc, hdc, sc in each ch-3 sp around, join.", 40, {}),
    (ARCHES_8, "Rnd 3: Work 2 sc, ch 3 and 2 sc in each ch-3 loop around, join.", 32, {3: 8}),
    (ARCHES_8, "Rnd 3: *Sc, hdc, dc, hdc, sc in next ch-3 sp; rep from * around, join.", 40, {}),
    (ARCHES_8, "Rnd 3: In each ch-3 sp make 2 dc, ch 2, 2 dc. Join.", 32, {2: 8}),
    (ARCHES_8, "Rnd 3: Into each loop: sc, hdc, dc, hdc, sc. Join.", 40, {}),
    (GRANNY, "Rnd 2: Ch 2 (counts as hdc), hdc in next 2 dc, hdc in each dc around, working 2 hdc, ch 2, 2 hdc in each corner, join.", 28, {2: 4}),
    # a round that begins with a group: its chain stands for the first stitch, but not in a petal
    (MESH_12, "Rnd 2: (Sl st, ch 3, dc) in first ch-1 sp, 2 dc in each ch-1 sp around, join.", 24, {}),
    (MESH_12, "Rnd 2: (Sl st, ch 4, dc) in first ch-1 sp, (dc, ch 1, dc) in each ch-1 sp around, join to 3rd ch of ch 4.", 24, {1: 12}),
    (GRANNY, "Rnd 2: (Sl st, ch 3 [counts as dc], 2 dc, ch 2, 3 dc) in corner sp, *ch 1, (3 dc, ch 2, 3 dc) in next corner sp; rep from * 2 more times, ch 1, join.", 24, {1: 4, 2: 4}),
    (SHELL_WORDS + MESH_12, "Rnd 2: Sl st in next ch-1 sp, beg shell in same sp, (sk next sp, shell in next ch-1 sp) 5 times, sk last sp, join with sl st in top of beg ch 3.", 36, {2: 6}),
    (SHELL_WORDS + MESH_12, "Rnd 2: Sl st in next ch-1 sp, beg shell in same sp, *sk next sp, shell in next ch-1 sp; rep from * around, join with sl st in top of beg ch 3.", 36, {2: 6}),
    # the middle of a group that the joining chain begins
    (GRANNY, "Rnd 2: *Sc in center dc of next 3-dc group, ch 5; rep from * around, join.", 4, {5: 4}),
    # a chain and the decrease after it are the first cluster
    (MESH_12, "Rnd 2: Sl st in ch-1 sp, ch 3, dc2tog in same sp (beg cl made), ch 3, (dc3tog in next ch-1 sp, ch 3) 11 times, join with sl st in top of beg cl.", 12, {3: 12}),
    (ROUND_12_DC, "Rnd 2: Ch 3, dc2tog over next 2 sts, ch 5, *dc3tog over next 3 sts, ch 5; rep from * around, join with sl st in top of first cluster.", 4, {5: 4}),
    # loops
    (ROUND_24_DC, "Rnd 2: *Ch 5, sk 2 dc, sc in next dc; rep from * around, ending with ch 2, dc in joining sl st.", 7, {5: 8}),
    (ROUND_24_DC, "Rnd 2: Ch 1, sc in same st, *ch 3, sk 2 dc, sc in next dc; rep from * around, ch 3, join.", 8, {3: 8}),
    (ROUND_24_DC, "Rnd 2: Ch 1, sc in same st, (ch 3, sk 2 dc, sc in next dc) 7 times, ch 3, join.", 8, {3: 8}),
    (ROUND_24_DC, "Rnd 2: Ch 5, sk 1 dc, *tr in next dc, ch 2, sk 1 dc; rep from * around, join last ch-2 to 3rd ch of ch-5.", 12, {2: 12}),
    (ARCHES_8, "Rnd 3: Sl st in next ch, sc in loop, *ch 6, sc in next loop; rep from * around, join last ch-6 to first sc.", 8, {6: 8}),
    (ARCHES_8, "Rnd 3: Ch 1, sc in same st, *2 sc in next sp, ch 3, 2 sc in same sp, sc in next sc; rep from * around, omitting the last sc on final repeat, join.", 40, {3: 8}),
    # stitches named by what they are made of
    (ROUND_24, "Rnd 2: Ch 1, sc in same st, *sk 2 sts, shell of 7 dc in next st, sk 2 sts**, sc in next st; rep from * around, ending last rep at **, join.", 32, {}),
    (ROUND_12, "Rnd 2: Sc in next 5 sts, 5-dc bobble in next st, sc in next 6 sts.", 12, {}),
    # repeats that name no star
    (ROUND_12, "Rnd 2: Sc 1, inc 1, repeat around.", 18, {}),
    (GRANNY, "Rnd 2: Ch 1, [sc in next 3 sts, (sc, ch 2, sc) in corner] repeat between [ ] 3 more times, join.", 20, {2: 4}),
    # gaps
    (TIGHT_GRANNY, "Rnd 3: Sl st in next 2 dc and in corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *3 dc in sp between next 2 groups, (3 dc, ch 2, 3 dc) in next corner sp; rep from * 2 more times, 3 dc in next sp, join.", 36, {2: 4}),
    (ROUND_12_DC, "Rnd 2: Sl st in sp between first 2 sts, ch 3, dc in same sp, (2 dc in next sp between sts) 11 times, join.", 24, {}),
    # how the round begins
    (GRANNY, "Rnd 2: Sl st to corner sp, ch 3, 2 dc, ch 2, 3 dc in corner sp, *ch 1, (3 dc, ch 2, 3 dc) in next corner sp; rep from * 2 more times, ch 1, join.", 24, {1: 4, 2: 4}),
    (GRANNY, "Rnd 2: Attach new color in any corner with standing dc; 2 dc, ch 2, 3 dc in same corner, ch 1, [3 dc, ch 2, 3 dc, ch 1] in each of next 3 corners, join.", 24, {1: 4, 2: 4}),
    (GRANNY, "Rnd 2: (Sl st, ch 5, 3 dc) in first ch-2 sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, 2 dc in first sp, join to 3rd ch of ch-5.", 24, {1: 4, 2: 4}),
    # all of a sort beside a run
    (GRANNY, "Rnd 2: Ch 1, sc in each dc and (sc, ch 2, sc) in each of 4 corner sps, join.", 20, {2: 4}),
    (GRANNY, "Rnd 2: Ch 1, sc in each of the 12 dc around and 2 sc in each ch-2 sp, join.", 20, {}),
    (GRANNY, "Rnd 2: Ch 1, 5 sc in each of the 4 ch-2 sps and sc in each dc, join.", 32, {}),
    (ROUND_12, "Rnd 2: Ch 1, 2 sc in all sts, join.", 24, {}),
    # arches by their centre chain
    (ARCHES_8, "Rnd 3: Ch 1, *sc in center ch of next ch-3, ch 4; rep from * around, join.", 8, {4: 8}),
    (ARCHES_8, "Rnd 3: Sl st to center ch of ch-3, ch 5 (counts as dc and ch 2), dc in same ch, ch 3, *(dc, ch 2, dc) in center ch of next ch-3, ch 3; rep from * around, join with sl st in 3rd ch of ch-5.", 16, {2: 8, 3: 8}),
    # petals, and repeats that come back to their start
    (ARCHES_8, "Rnd 3: Sl st in next ch-3 sp, (ch 3, 4 dc, ch 3, sl st) in same sp, *(sl st, ch 3, 4 dc, ch 3, sl st) in next ch-3 sp; rep from * around, join.", 32, {3: 16}),
    (ROUND_12, "Rnd 2: *(Ch 2, dc, ch 2, sl st) in same st, sl st in next st; rep from * around.", 12, {2: 24}),
    # what "around" and "inc" belong to
    (ROUND_12, "Rnd 2: Sc 1, inc 1 around.", 18, {}),
    (ROUND_24, "Rnd 2: Sc 2, dec around.", 18, {}),
    (ROUND_12, "Rnd 2: (Sc, sc inc) x 6.", 18, {}),
    (ROUND_12, "Rnd 2: Hdc inc around.", 24, {}),
    # a last pass of other words; slip stitches that are worked into
    (ROUND_24, "Rnd 2: Ch 1, sc in next 4 sts, *ch 10, sk next 4 sts, sc in next 8 sts; rep from * once more, ending last rep with sc in last 4 sts, join.", 16, {10: 2}),
    (ROUND_24, "Rnd 2: Sc 6, sl st 4, sc 14.\nRnd 3: Sc in each st around.", 24, {}),
    # what a definition calls a beginning stitch is one of them
    (SHELL_WORDS + MESH_12, "Rnd 2: Sl st in ch-1 sp, (beg shell, ch 1, shell) in same sp, sk next ch-1 sp, *(shell, ch 1, shell) in next ch-1 sp, sk next ch-1 sp; rep from * around, join.", 72, {1: 6, 2: 12}),
    # a round of loops begins with a loop
    (ROUND_24, "Rnd 2: Ch 5, *sk next 2 sc, sl st in next sc, ch 5; rep from * 6 more times, sk last 2 sc, sl st in base of first ch-5.", 0, {5: 8}),
    (ROUND_24, "Rnd 2: Ch 5, *sk next 2 sc, sc in next sc, ch 5; rep from * 6 more times, sk last 2 sc, sl st in base of first ch-5.", 7, {5: 8}),
    # chains between
    (ROUND_12, "Rnd 2: Ch 1, sc in each st around with ch 1 between, join.", 12, {1: 11}),
]  # fmt: skip

NOT_TOLD = [
    (ROUND_12, "Rnd 2: Ch 1, *sc in next 4 sts, 2 sc in next st; rep from * around, join."),  # 12 is not 5n
    (ROUND_12, "Rnd 2: Ch 1, *sc in next st, ch 3; rep from * around, omitting last dc, join."),  # there is no dc
    (ROUND_12, "Rnd 2: Ch 1, sc in each st around, 3 sc in each corner, join."),  # a circle has none
    (ROUND_12, "Rnd 2: Ch 1, dc in each st around, dc in each st around, join."),  # nothing is left for the second
    (ROUND_12, "Rnd 2: Ch 1, sc in next 3 sts (2 sc in next st, ch 1, sc in next st), join."),  # work, or a gloss?
    (ARCHES_8, "Rnd 3: Ch 1, sc in each sc of Rnd 1, join."),  # how many of them are free is not told
    (ARCHES_8, "Rnd 3: *Ch 4, sl st around post of next sc of Rnd 1; rep from * around."),
    (
        ARCHES_8,
        "Rnd 3: Working behind loops, *ch 4, sl st around post of next sc; rep from * around.",
    ),  # of which round?
    (GRANNY, "Rnd 2: Ch 1, sc in each dc around, 3 sc in ch-2 sp, join."),  # there are four
    (ROUND_24, "Rnd 2: Ch 1, sc in next 23 sts, wibble, join."),  # perhaps a stitch
    (ARCHES_8, "Rnd 3: In next ch-3 sp make 2 dc, hdc, ch 2, sc in next sc, join."),  # what goes into the space?
]


@pytest.mark.parametrize(("before", "words", "stitches", "spaces"), MADE, ids=[words[:70] for _, words, _, _ in MADE])
def test_wording_makes(before: str, words: str, stitches: int, spaces: dict[int, int]) -> None:
    """The last row makes what was worked out by hand."""
    made = worked_rows(check(f"Test\nUS terms\n\n{before}{words}\n"))[-1].cells[0].made
    assert made is not None
    assert (made.stitches, made.spaces) == (stitches, spaces)


@pytest.mark.parametrize(("before", "words"), NOT_TOLD, ids=[words[:70] for _, words in NOT_TOLD])
def test_what_does_not_come_out_is_not_counted(before: str, words: str) -> None:
    """A row that does not come out on the row below, or is not understood, shows no count."""
    assert outcomes(check(f"Test\nUS terms\n\n{before}{words}\n"))[-1] == "not-recomputed"


def test_house_that_means_n_in_each_is_kept_to() -> None:
    """ "2 dc in next 2 sts" is four once a printed count has said so."""
    text = """Test
US terms

Ch 17.
Row 1: Dc in 4th ch from hook and in each ch across, turn. (15 dc)
Row 2: Ch 3 (counts as dc), dc in next 5 sts, 2 dc in next 2 sts, dc in each st to end, turn. (17 dc)
Row 3: Ch 3 (counts as dc), 2 dc in next 2 sts, dc in each st to end, turn.
"""
    assert [row.cells[0].made.stitches for row in worked_rows(check(text))] == [15, 17, 19]
