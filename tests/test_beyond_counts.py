"""What counts do not show: how a piece grows and lies, columns of posts, rows called for, names, left-overs of other patterns.

Every faulty pattern has a sound twin of other words than the rule's own examples, on which the rule is silent.
"""

from __future__ import annotations

import pytest
from helpers import check

DISC = (
    "Dish Mat\nMat\nRnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each sc around. (12 sc)\n"
    "Rnd 3: *Sc in next sc, 2 sc in next sc; rep from * around. (18 sc)\n"
    "Rnd 4: *Sc in next 2 sc, 2 sc in next sc; rep from * around. (24 sc)\n"
)
RIB = (
    "Wristlet\nCUFF\nCh 18.\nRow 1: Dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn. (16 dc)\n"
    "Row 2: Ch 3 (counts as dc now and throughout), dc in next 5 dc, FPdc around next 4 dc, dc in next 6 dc, turn. (16 sts)\n"
    "Row 3: Ch 3, dc in next 5 dc, BPdc around next 4 sts, dc in next 6 dc, turn. (16 sts)\n"
    "Row 4: Ch 3, dc in next 5 dc, FPdc around next 4 sts, dc in next 6 dc, turn. (16 sts)\n"
)
ROWS = (
    "Runner\nRUNNER\nCh 16.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (15 sc)\n"
    "Row 2 (WS): Ch 1, sc in each sc across, turn. (15 sc)\n"
    "Row 3 (RS): Ch 1, sc in front loop of each sc across, turn. (15 sc)\n"
)
MOUSE = (
    "Mouse\nBODY\nRnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each sc around. (12 sc)\nFasten off.\n\n"
    "EAR (make 2)\nRnd 1: 7 sc in magic ring. (7 sc)\nFasten off.\n\nFINISHING\n"
)
SIZED = (
    "Headband\nSizes: S (M, L)\nBAND\nCh 60 (66, 72), join with sl st to form a ring.\n"
    "Rnd 1: Ch 1, sc in each ch around, join. (60 (66, 72) sc)\nFasten off. "
)

LIST = "Moss Strip\nABBREVIATIONS\nch = chain\nsc = single crochet\ndc = double crochet\ntr = treble crochet\n"
LISTED = (
    "\nSTRIP\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across. (8 sc)\n"
    "Row 2: Ch 3 (counts as dc), turn, dc in next 3 sc, tr in next 4 sc. (8 sts)\n"
)


def rules(text: str) -> set[str]:
    """The rules that a pattern breaks."""
    return {finding.rule for finding in check(text).findings}


@pytest.mark.parametrize(
    ("rule", "sound", "right", "wrong"),
    [
        (
            "growth-uneven",
            DISC
            + "Rnd 5: *Sc in next 3 sc, 2 sc in next sc; rep from * around. (30 sc)\n"
            + "Rnd 6: *Sc in next 4 sc, 2 sc in next sc; rep from * around. (36 sc)\n"
            + "Rnd 7: *Sc in next 5 sc, 2 sc in next sc; rep from * around. (42 sc)\n",
            "Rnd 5: *Sc in next 3 sc, 2 sc in next sc; rep from * around. (30 sc)\n"
            "Rnd 6: *Sc in next 4 sc, 2 sc in next sc; rep from * around. (36 sc)\n",
            "Rnd 5: *Sc in next 2 sc, 2 sc in next sc; rep from * around. (32 sc)\n"
            "Rnd 6: 2 sc in next 4 sc, sc in each sc to end. (36 sc)\n",
        ),
        (
            "may-not-lie-flat",
            DISC,
            DISC[DISC.index("Mat\n") :],
            "Mat\nRnd 1: 12 sc in magic ring. (12 sc)\nRnd 2: 2 sc in each sc around. (24 sc)\n"
            "Rnd 3: *Sc in next sc, 2 sc in next sc; rep from * around. (36 sc)\n"
            "Rnd 4: *Sc in next 2 sc, 2 sc in next sc; rep from * around. (48 sc)\nThe mat lies flat.\n",
        ),
        (
            "posts-off-column",
            RIB + "Row 5: Ch 3, dc in next 5 dc, BPdc around next 4 sts, dc in next 6 dc, turn. (16 sts)\n",
            "Row 5: Ch 3, dc in next 5 dc, BPdc around next 4 sts, dc in next 6 dc",
            "Row 5: Ch 3, dc in next 4 dc, BPdc around next 4 sts, dc in next 7 sts",
        ),
        ("row-not-there", ROWS + "Rows 4-9: Rep Rows 2 and 3. (15 sc)\n", "Rows 2 and 3", "Rows 7 and 8"),
        ("row-not-there", ROWS + "Row 4: Rep Row 2. (15 sc)\n", "Rep Row 2", "Rep Rows 3 and 4"),
        ("called-row-side", ROWS + "Row 4 (WS): As Row 2.\nRow 5 (RS): As Row 3.\n", "As Row 3", "As Row 2"),
        (
            "cycle-ends-elsewhere",
            ROWS + "Rows 4-10: Rep Rows 2 and 3, ending with Row 2. (15 sc)\n",
            "Rows 4-10",
            "Rows 4-11",
        ),
        (
            "range-length-differs",
            ROWS + "Rows 4-19: Rep Rows 2 and 3 eight times. (15 sc)\n",
            "eight times",
            "seven times",
        ),
        (
            "words-lost",
            DISC + "Rnd 5: [Sc in next 3 sc, 2 sc in next sc] 6 times. (30 sc)\n",
            "[Sc in next 3 sc, 2 sc in next sc] 6",
            "Work as follows: 6",
        ),
        ("piece-not-made", MOUSE + "Sew the ears to the body.\n", "Sew the ears", "Sew the ears and the tail"),
        ("size-not-listed", SIZED + "Size L only: block to 26 in.\n", "Size L only", "Size 2XL only"),
        (
            "abbreviation-not-standard",
            "Scarf\nAbbreviations\nch: chain\nsc: single crochet\ndc: double crochet\n\nSCARF\nCh 9.\n"
            "Row 1: Sc in 2nd ch from hook and in each ch across. (8 sc)\nRow 2: Ch 3 (does not count), turn, dc in each sc. (8 dc)\n",
            "dc: double crochet",
            "dc: half double crochet",
        ),
        (
            "special-stitch-name",
            "Trim\nSpecial stitch\nFlower: (dc, ch 1, dc, ch 1, dc) in same st.\n\nTRIM\nCh 10.\n"
            "Row 1: Sc in 2nd ch from hook, *skip 3 ch, flower in next ch, skip 3 ch, sc in next ch; rep from * across.\n",
            "flower in next",
            "fan in next",
        ),
        ("forms-mixed", DISC, "Rnd 3", "Round 3"),
        (
            "turning-chain-inconsistent",
            ROWS
            + "Row 4 (WS): Ch 1, sc in each sc across, turn. (15 sc)\nRow 5 (RS): Ch 1, sc in each sc across. (15 sc)\n",
            "Row 5 (RS): Ch 1",
            "Row 5 (RS): Ch 2",
        ),
        (
            "turning-chain-missing",
            ROWS + "Row 4 (WS): Ch 1, sc in each sc across, turn. (15 sc)\n",
            "Row 4 (WS): Ch 1, sc",
            "Row 4 (WS): Sc",
        ),
        (
            "row-number-out-of-order",
            ROWS + "Rows 4-11: Rep Rows 2 and 3. (15 sc)\nRow 12: Ch 1, sc in each sc across. (15 sc)\n",
            "Rows 4-11",
            "Rows 4-1",
        ),
        (
            "shaping-uneven",
            DISC + "Rnd 5: " + ", ".join(["sc in next 3 sc, 2 sc in next sc"] * 6) + ". (30 sc)\n",
            "sc in next 3 sc, 2 sc in next sc, sc in next 3 sc, 2 sc in next sc. (30 sc)",
            "sc in next 2 sc, 2 sc in next sc, sc in next 4 sc, 2 sc in next sc. (30 sc)",
        ),
        (
            "shaping-uneven",
            DISC + "Rnd 5: (3 sc, inc) x 6 (30)\n",
            "(3 sc, inc) x 6",
            "(3 sc, inc) x 3, 3 sc, inc, inc, 6 sc, inc",
        ),
        (
            "shaping-left-out",
            "Tilt\nCh 16.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across. (15 sc)\n"
            "Row 2: Ch 1, turn, 2 sc in first sc, sc in next 12 sc, sc2tog. (15 sc)\n"
            "Row 3: Ch 1, turn, sc2tog, sc in next 12 sc, 2 sc in last sc. (15 sc)\n"
            "Row 4: Ch 1, turn, 2 sc in first sc, sc in next 12 sc, sc2tog. (15 sc)\n"
            "Row 5: Ch 1, turn, sc2tog, sc in next 12 sc, 2 sc in last sc. (15 sc)\n"
            "Row 6: Ch 1, turn, 2 sc in first sc, sc in next 12 sc, sc2tog. (15 sc)\n",
            "Row 4: Ch 1, turn, 2 sc in first sc, sc in next 12 sc, sc2tog",
            "Row 4: Ch 1, turn, sc in next 15 sc",
        ),
        (
            "place-not-there",
            "Fern\nSPECIAL STITCHES\nShell: (3 dc, ch 1, 3 dc) in st or sp indicated.\n"
            "Fan: (dc, ch 1, dc) in st or sp indicated.\n\nFERN\nCh 26.\n"
            "Row 1: Sc in 2nd ch from hook, *skip next 3 ch, shell in next ch, skip next 3 ch, sc in next ch; rep from * across.\n"
            "Row 2: Ch 1, turn, sc in first sc, *shell in ch-1 sp of next shell, sc in next sc; rep from * across.\n",
            "ch-1 sp of next shell",
            "ch-1 sp of next fan",
        ),
        (
            "special-stitch-name",
            "Nub Cloth\nSPECIAL STITCHES\nBobble: [Yo, insert hook in st, yo and pull up a loop, yo and pull through 2 loops]"
            " 4 times in same st, yo and pull through all 5 loops.\n\nCLOTH\nCh 22.\n"
            "Row 1: Sc in 2nd ch from hook and in each ch across. (21 sc)\n"
            "Row 2: Ch 1, turn, sc in first 4 sc, *bobble in next sc, sc in next 3 sc; rep from * to last sc, sc in last sc.\n",
            "*bobble",
            "*popcorn",
        ),
        ("abbreviation-twice", LIST + "trtr = triple treble\n" + LISTED, "trtr = ", "tr = "),
        ("abbreviation-not-standard", LIST + LISTED, "dc = double crochet", "dc = double chain"),
        (
            "colour-not-declared",
            "Stripe\nMATERIALS\nDK yarn: color A (cream), color B (moss). 4 mm hook.\n\nSTRIPE\nWith A, ch 9.\n"
            "Row 1: With A, sc in 2nd ch from hook and in each ch across. (8 sc)\nRow 2: With B, ch 1, turn, sc in each sc across. (8 sc)\n",
            "With B",
            "With C",
        ),
        (
            "colour-not-declared",
            "Belt\nMaterials: MC: 2 balls oat; CC1: 1 ball rust\n\nBELT\nWith MC, ch 9.\n"
            "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\n"
            "Row 2: Change to CC1. Ch 1, sc in each sc across. (8 sc)\n",
            "Change to CC1",
            "Change to CC2",
        ),
        (
            "count-differs",
            "Corner Cloth\nBlock: ch 3 and 3 dc.\nCLOTH\nRow 1: Ch 6, dc in 4th ch from hook, dc in each of next 2 ch. (1 block)\n"
            "Row 2: Ch 6, turn, dc in 4th ch from hook, dc in each of next 2 ch, sl st in ch-3 sp of last block, ch 3, 3 dc in same sp."
            " (2 blocks)\nRow 3: Ch 6, turn, dc in 4th ch from hook, dc in each of next 2 ch, *sl st in next ch-3 sp, ch 3, 3 dc in"
            " same sp; rep from * across. (3 blocks)\n",
            "(3 blocks)",
            "(4 blocks)",
        ),
        (
            "join-not-there",
            "Medallion\nMake a magic ring.\nRnd 1: Ch 1, 9 sc in ring, join with sl st in first sc. (9 sc)\n"
            "Rnd 2: Ch 1, 2 sc in each sc around, join with sl st in first sc. (18 sc)\n",
            "9 sc in ring, join with sl st in first sc",
            "9 sc in ring, join with sl st in top of ch 3",
        ),
    ],
)
def test_slip_is_told_and_the_sound_twin_is_not(rule: str, sound: str, right: str, wrong: str) -> None:
    """The rule speaks of the faulty pattern, and is silent on the sound one."""
    assert right in sound
    assert rule not in rules(sound)
    assert rule in rules(sound.replace(right, wrong))


@pytest.mark.parametrize(
    "text",
    [
        # stitches a round of a ball: lang_es_a in a table of published shapes, "amigurumi ball"
        "Ball\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each sc. (12)\nRnd 3: *Sc, inc; rep from * around. (18)\n"
        "Rnd 4: *Sc in next 2 sc, inc; rep from * around. (24)\nRnds 5-7: Sc in each sc around. (24)\n"
        "Rnd 8: *Sc in next 2 sc, dec; rep from * around. (18)\nRnd 9: *Sc, dec; rep from * around. (12)\n",
        "Flat Cap\nA cap with a flat top.\nMake a magic ring.\nRnd 1: 8 dc in ring. (8 dc)\nRnd 2: 2 dc in each dc. (16 dc)\n"
        "Rnd 3: *Dc in next dc, 2 dc in next dc; rep from * around. (24 dc)\nRnds 4-6: Dc in each dc around. (24 dc)\n",
        # hyperbolic planes double on purpose: a published lesson, start 6, 12, 24, 48, 96
        "Ruffled Coral\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each sc. (12)\nRnd 3: 2 sc in each sc. (24)\n"
        "Rnd 4: 2 sc in each sc. (48)\nRnd 5: 2 sc in each sc. (96)\n",
    ],
    ids=["ball", "cap", "hyperbolic"],
)
def test_shapes_that_are_not_flat_are_left_alone(text: str) -> None:
    """Nothing is asked of balls, hats and ruffles."""
    assert rules(text).isdisjoint({"may-not-lie-flat", "growth-uneven"})


@pytest.mark.parametrize(
    ("stitch", "counts"),
    [
        ("sc", (6, 12, 18, 24, 30)),  # published circle lessons, counts stated
        ("hdc", (8, 16, 24, 32, 40)),
        ("dc", (12, 24, 36, 48, 60)),
    ],
)
def test_published_circles_lie_flat(stitch: str, counts: tuple[int, ...]) -> None:
    """Circles whose counts are printed in lessons are passed."""
    first, step = counts[0], counts[1] - counts[0]
    rows = [
        f"Rnd 1: {first} {stitch} in magic ring. ({first})",
        f"Rnd 2: 2 {stitch} in each {stitch} around. ({counts[1]})",
    ]
    for number, count in enumerate(counts[2:], 3):
        plain = f"{stitch} in next {number - 2} {stitch}, "
        rows.append(f"Rnd {number}: *{plain}2 {stitch} in next {stitch}; rep from * {step - 1} times more. ({count})")

    assert "may-not-lie-flat" not in rules("Coaster\nCOASTER\n" + "\n".join(rows) + "\n")


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        (
            "Mitt\nMITT\nCh 20; join with sl st to form a ring.\n"
            "Rnd 1: Ch 1 (does not count as a st), sc in each ch around; join. (20 sc)\n"
            "Rnd 2: Ch 1, sc in each sc to marker, 2 sc in marked sc, sc in each sc around; join. (21 sc)\n",
            "marker-not-placed",
        ),
        (SIZED.replace("Fasten off. ", "Size XL only: work one more round.\nFasten off.\n"), "size-not-listed"),
    ],
)
def test_what_is_wanting_is_asked_once(text: str, rule: str) -> None:
    """Where a marker or a size is wanting, the row that cannot be counted for it is not asked about again."""
    found = rules(text)

    assert rule in found and "not-understood" not in found


def test_one_form_for_another_in_the_same_number() -> None:
    """ "Stitch" is held against "st", and "stitches" against "sts"."""
    text = (
        ROWS
        + "Row 4 (WS): Ch 1, skip next stitch, 2 sc in next st, sc in next st, sc in each st across, turn. (15 sc)\n"
    )
    said = next(one.message for one in check(text).findings if one.rule == "forms-mixed")

    assert "should they all be “st”?" in said
