"""Lace, blankets and toys in words of many hands: what is said in passing, of spaces, pieces and squares, and what must stay work."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, spaces

HEAD = "MAT\n\nUS terms.\n\n"
FILET = (
    HEAD
    + """Space (sp): ch 2, skip next 2 sts, dc in next dc.
Block (bl): dc in each of next 2 dc, or 2 dc in next ch-2 sp; dc in next dc.
Ch 3 at the beginning of a row counts as the first dc.

Ch 30.
Row 1: Dc in 4th ch from hook and in each ch across. (28 dc)
"""
)


def stitches(text: str) -> list[int | None]:
    """The stitches of every row of a pattern, its chain's 0 left out."""
    return [number for number in counts(check(text)) if number != 0]


def test_a_figure_for_each_side_is_not_that_of_all():
    """ "20 sc along each side" says nothing of how many sides there are; "each of the 4 sides" does."""
    base = HEAD + "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n"
    assert stitches(base + "Rnd 1: Ch 1, work 20 sc evenly along each side; join.\n") == [10, None]
    assert stitches(base + "Rnd 1: Ch 1, work 20 sc evenly along each long edge; join.\n") == [10, None]
    assert stitches(base + "Rnd 1: Ch 1, work 20 sc evenly along each of the 4 sides; join.\n") == [10, 80]
    assert stitches(base + "Rnd 1: Ch 1, work 20 sc evenly along one side; join.\n") == [10, 20]


LACE = (
    HEAD
    + """Fan: 2 dc, ch 2, 2 dc all in same sp. Beginning fan: Sl st to ch-2 sp, ch 3, dc, ch 2, 2 dc in same sp. The ch 3 at the beginning of a rnd counts as 1 dc.

Ch 6, join with sl st to form ring.
Rnd 1: Ch 3, 19 dc in ring; join. (20 dc)
Rnd 2: Ch 3, dc in same st, ch 2, 2 dc in same st, *ch 3, skip 3 dc, (2 dc, ch 2, 2 dc) in next dc; rep from * 3 more times, ch 3; join. (20 dc)
"""
)


def test_a_beginning_shell_goes_where_its_slip_stitch_leads():
    """Its own "sl st to ch-2 sp" takes it into the first shell, whether the row names that place or not."""
    for begun in ("Beginning fan", "Beginning fan in next fan", "Beginning fan in first ch-2 sp"):
        text = (
            LACE
            + f"Rnd 3: {begun}, *ch 2, 4 tr in next ch-3 sp, ch 2, fan in next fan; rep from * around, omitting last fan; join. (5 fans, 20 tr)\n"
        )
        report = check(text)
        assert counts(report)[-1] == 40, begun
        assert not [one for one in corrections(report) if "differ" in one[0]], begun


def test_the_loop_before_a_shell_left_out_is_left_by_every_pass():
    """The last pass has no shell to cross the loop for; a loop more would still be told."""
    text = (
        LACE
        + "Rnd 3: Beginning fan, *ch 2, sc in next ch-3 sp, ch 2, sc in same sp, ch 2, fan in next fan; rep from * around, omitting last fan; join.\n"
    )
    last = "Rnd 4: Beginning fan, *ch 3, skip next ch-2 sp, sc in next ch-2 sp, ch 3, fan in next fan; rep from * around, omitting last fan; join. (5 fans, 5 sc)\n"
    report = check(text + last)
    assert counts(report)[-1] == 25
    assert "repeat-does-not-fit" not in [rule for rule, _ in corrections(report)]
    assert counts(check(text + last.replace("5 fans, 5 sc", "5 fans, 6 sc")))[-1] == 25
    assert "count-differs" in [rule for rule, _ in corrections(check(text + last.replace("5 sc)", "6 sc)")))]


def test_a_space_between_shells_lies_in_none_of_them():
    """ "ch-2 sp between fans" passes over the fan's own space of the same length."""
    text = LACE.replace("ch 3, skip 3 dc", "ch 2, skip 3 dc").replace(
        "more times, ch 3; join", "more times, ch 2; join"
    )
    text += "Rnd 3: Sl st in next dc, ch 1, *sc in next ch-2 sp between fans, ch 7; rep from * around; join. (5 sc)\n"
    assert counts(check(text))[-1] == 5
    assert counts(check(text.replace(" between fans", "").replace("(5 sc)", "(10 sc)")))[-1] == 10


def test_a_clause_between_shells_is_worked_so_many_times():
    """ "Fan between next 2 fans 3 times" is one in each gap; "dc in next dc 3 times" stays open."""
    text = (
        HEAD
        + "Fan: 3 dc in st indicated.\n\nCh 17.\nRow 1: Dc in 4th ch from hook, *sk 1 ch, fan in next ch, sk 1 ch; rep from * to last ch, dc in last ch. (4 fans, 3 dc)\n"
    )
    row = "Row 2: Ch 3 (counts as dc), turn, fan between next 2 fans {}, dc in top of ch-3. (3 fans, 2 dc)\n"
    assert counts(check(text + row.format("3 times")))[-1] == counts(check(text + row.format("twice")))[-1] + 3
    assert counts(check(text + "Row 2: Ch 3, turn, 2 dc in next dc 3 times.\n"))[-1] is None


def test_shells_that_are_told_stitch_by_stitch_are_not_counted_by_the_plain_ones():
    """Of "(2 dc, ch 1, 2 dc)" and one "3 dc in last st" the print's "2 shells" may mean the first."""
    text = HEAD + "Ch 17.\nRow 1: Sc in 2nd ch from hook and in each ch across. (16 sc)\n"
    text += "Row 2: Ch 1, turn, sc in first sc, *sk 2 sc, (2 dc, ch 1, 2 dc) in next sc, sk 2 sc, sc in next sc; rep from * once more, sk 2 sc, 3 dc in last sc. (2 shells)\n"
    assert counts(check(text))[-1] == 14
    assert "count-differs" not in [rule for rule, _ in corrections(check(text))]


def test_yarn_that_is_joined_in():
    """ "With B joined in," begins a row; "joined in any ch-1 sp" says where; what follows without a stop is not taken in."""
    text = (
        HEAD
        + "Colors A and B.\n\nWith A, ch 4; join to form ring.\nRnd 1: Ch 1, (sc in ring, ch 1) 6 times; join. (6 sc, 6 ch-1 sps)\n"
    )
    assert counts(check(text + "Rnd 2: With B joined in, ch 1, 2 sc in each ch-1 sp around; join. (12 sc)\n"))[-1] == 12
    assert (
        counts(
            check(
                text
                + "Rnd 2: With B joined in any ch-1 sp, ch 1, 3 sc in same sp, 3 sc in each ch-1 sp around; join. (18 sc)\n"
            )
        )[-1]
        == 18
    )
    assert counts(check(text + "Rnd 2: With B joined 3 sc in each ch-1 sp around; join.\n"))[-1] in (18, None)


def test_spaces_are_worked_as_if_they_were_stitches():
    """The run before takes them in; a repeat of single places does not say which of them are spaces then."""
    text = HEAD + "Ch 4; join to form ring.\nRnd 1: Ch 1, (sc in ring, ch 1) 8 times; join. (8 sc, 8 ch-1 sps)\n"
    row = "Rnd 2: Ch 1, sc in each st around{}. (16 sc)\n"
    for told in (
        ". Work into a ch-1 sp as if it were a st; join",
        ", treating each ch-1 sp as a st; join",
        ", including ch-1 sps; join",
    ):
        assert counts(check(text + row.format(told)))[-1] == 16, told
    twice = "Rnd 2: Ch 1, *sc in next st, sk next st; rep from * around, treating ch-1 sps as sts; join.\n"
    assert counts(check(text + twice))[-1] is None


def test_a_round_by_its_letter_within_a_round():
    """ "of R2" is the round of that label, so that petals can stand behind earlier ones."""
    text = (
        HEAD
        + "Flower\nR1: magic ring, ch 1, 10 sc in ring, sl st in first sc (10)\nR2: ch 1, *sc in next sc, ch 3, sk 1 sc; rep from * around, sl st in first sc (5 sc)\n"
    )
    text += "R3: *(sc, 3 dc, sc) in next ch-3 sp; rep from * around, sl st in first sc (25)\n"
    text += "R4: behind petals again, *BPsc around next sc of R2, ch 4; rep from * around, sl st in first BPsc (5)\n"
    report = check(text)
    assert counts(report)[-1] == 5
    assert spaces(report)[-1] == {4: 5}


def test_eyes_are_fixed_and_no_stitch_is_worked():
    """What is fixed, where and when; buttons sewn on with stitches are work that is not understood."""
    text = HEAD + "Head\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st. (12)\n"
    for told in (
        ", fixing the eyes between Rnds 1 and 2 once you get there",
        ", placing the nose at Rnd 1, 3 sts apart",
        ". Stuff the head, but not tightly",
    ):
        assert counts(check(text + f"Rnd 3: Sc in each st around{told}. (12)\n"))[-1] == 12, told
    assert counts(check(text + "Rnd 3: Sewing on buttons with sc in next 4 sts.\n"))[-1] is None
    assert counts(check(text + "Rnd 3: Sc in each st around, but not in the last 2.\n"))[-1] == 10


def test_rows_are_worked_in_the_order_that_is_told():
    """ "Rows 3, 2 and 3" are three rows, though the first is the last; so many figures behind "Work" alone tell nothing."""
    text = FILET + "Row 2: Ch 3, turn, 9 sps.\nRow 3: Ch 3, turn, 1 bl, 7 sps, 1 bl.\nRows 4-6: {} Rows 3, 2 and 3{}.\n"
    for verb, tail in (("Rep", ""), ("Work", " in that order"), ("Rep", " in the order given")):
        assert counts(check(text.format(verb, tail)))[1:] == [10, 14, 14, 10, 14], verb


def test_squares_behind_semicolons_are_worked():
    """A sort that comes again is no count; a count has each sort once."""
    rows = "Row 2: Ch 3, turn, 2 sps; 1 bl; 3 sps; 1 bl; 2 sps.\n"
    assert counts(check(FILET + rows))[-1] == 14
    assert counts(check(FILET + rows.replace("; ", ". ")))[-1] == 14
    counted = "Row 2: Ch 3, turn, 2 sps, 1 bl, 3 sps, 1 bl, 2 sps; 14 dc; 7 sps; 2 bls.\n"
    assert counts(check(FILET + counted))[-1] == 14
    assert "count-differs" in [rule for rule, _ in corrections(check(FILET + counted.replace("7 sps;", "8 sps;")))]


@pytest.mark.parametrize(
    ("words", "wrong"),
    [
        ("1 bl; 7 sps; 1 bl; 14 dc.", False),
        ("7 sps; 2 bls.", False),
        ("2 sps; 1 bl; 3 sps; 1 bl; 2 sps; 7 sps; 2 bls.", False),
        ("7 sps, 2 bls; 3 bls; 7 sps.", True),
    ],
)
def test_the_last_of_the_squares_may_count_them(words, wrong):
    """What stands behind is a count where each sort comes once and nothing is new; its figures are compared."""
    report = check(FILET + "Row 2: Ch 3, turn, " + words + "\n")
    assert counts(report)[-1] == 14
    assert ("count-differs" in [rule for rule, _ in corrections(report)]) is wrong


def test_squares_fill_a_row_to_its_end():
    """ "Sps across" is as many as there is room for, and a figure behind it counts the squares."""
    assert counts(check(FILET + "Row 2: Ch 3, turn, 2 bls, then sps to end.\n"))[-1] == 14
    told = "Row 2: Ch 3, turn, and then spaces all along: there should be 9.\n"
    assert counts(check(FILET + told))[-1] == 10
    assert "count-differs" not in [rule for rule, _ in corrections(check(FILET + told))]
    assert "count-differs" in [rule for rule, _ in corrections(check(FILET + told.replace("be 9", "be 8")))]


def test_filet_is_told_in_sentences():
    """Both squares in a paragraph, what the row says of its first space, and one that goes on till the chain is used up."""
    text = """FILET

Abbreviations: ch, chain; dc, double crochet; sp, space; bl, block.

The work has two squares. A space is a chain of 2 and a dc in the next dc, passing over 2 stitches. A block is 2 dc in the space below, or in the 2 dc of a block below, and a dc in the next dc. Ch 5 at the beginning of a row counts as dc and ch 2.

Begin by making a chain of 20.
Row 1. Make a dc in the 8th ch from the hook, which gives you the first space. Now *ch 2, skip 2 ch, dc in next ch, and repeat from * until the chain is used up. (5 sps)
Row 2. Ch 5, turn, dc in next dc; 1 space; 1 block; 1 space; 1 space. (1 bl, 4 sps)
Row 3. Ch 3 (counts as dc), turn, fill each space with 2 dc and put a dc on each dc. (16 dc)
"""
    report = check(text)
    assert counts(report)[:2] == [6, 8]
    assert spaces(report)[:2] == [{2: 5}, {2: 4}]


def test_a_tunisian_row_is_told_by_hand():
    """The loop is drawn in one chain and in every other; the one on the hook is a stitch already."""
    text = """CLOTH

UK terms. Tunisian crochet.

Start by making 12 ch.
Row 1: Insert the hook in the second ch from the hook, yrh, draw a loop through and leave it on the hook; do the same in every ch to the end. (12 loops) Return pass.
Row 2: The loop on your hook is the first stitch, so miss the first vertical bar. Tss in each bar to the end. (12 sts) Return pass.
Edging
Round 1: 1 ch, 12 dc along the cast-off edge, 3 dc in corner, 10 dc down the side, 3 dc in corner, ss to first dc. (28 dc)
"""
    assert [number for number in counts(check(text)) if number] == [12, 12, 28]


def test_a_corner_in_quotation_marks_is_defined():
    """A "cor" is so many stitches in a space: the pattern's own word, whatever its list says beside."""
    text = (
        HEAD
        + """Abbreviations: ch = chain; cor = corner; dc = double crochet; sl st = slip stitch; sp = space; st = stitch.

Notes
* A "cor" is (2 dc, ch 2, 2 dc) in the ch-2 sp of the corner.
* Ch 3 counts as a dc.

SQUARE
Rnd 1: In a magic ring, ch 3, 2 dc, ch 2, (3 dc, ch 2) 3 times; join. (12 dc)
Rnd 2: Ch 3, dc in next 2 sts, cor, *dc in next 3 sts, cor; rep from * 2 more times; join. (28 dc)
"""
    )
    assert counts(check(text)) == [12, 28]


def test_a_pineapple_s_last_loop():
    """ "In remaining lp of pineapple" is the one within it, and not the loop beside a shell."""
    text = (
        LACE
        + "Rnd 3: Beginning fan, *ch 3, sc in next ch-3 sp, ch 3, sc in same sp, ch 3, fan in next fan; rep from * around, omitting last fan; join.\n"
    )
    text += "Rnd 4: Beginning fan, *ch 4, sc in remaining lp of pineapple, ch 4, fan in next fan; rep from * around, omitting last fan; join. (5 fans, 5 sc)\n"
    report = check(text)
    assert counts(report)[-1] == 25
    assert not [
        one for one in all_findings(report, ("correction",)) if one[0] in ("count-differs", "repeat-does-not-fit")
    ]


def test_what_a_chain_equals_is_no_stitch_of_the_pattern():
    """ "ch3 at start = dc" says that it counts; nothing is defined by it."""
    text = (
        HEAD
        + "ch3 at start = dc. ch1 at start is not a st.\n\nRnd 1: Magic ring, ch 3, 11 dc in ring; join. (12 dc)\nRnd 2: Ch 3, dc in same st, 2 dc in each dc around; join. (24 dc)\n"
    )
    report = check(text)
    assert counts(report) == [12, 24]
    assert "turning-chain-unsaid" not in [rule for rule, _ in all_findings(report)]


def test_squares_are_told_one_behind_the_other_in_a_paragraph():
    """Each sentence is a square of its own, and the block's last stitch closes it, over a space or over a block."""
    text = (
        HEAD
        + """Abbreviations: bl = block; ch = chain; dc = double crochet; sk = skip; sp = space.

Each sp is ch 2, sk 2, dc in next dc. Each bl is 3 dc over the sp below or over the bl below. Ch 3 at the beginning of a row counts as dc.

Ch 21.
Row 1: Dc in 4th ch from hook and in each ch across. (19 dc)
Row 2: Ch 3, turn, 2 sps, 2 bls, 2 sps. (11 dc)
Row 3: Ch 3, turn, 1 bl, 4 sps, 1 bl. (11 dc)
"""
    )
    assert counts(check(text)) == [19, 11, 11]
    assert spaces(check(text))[1:] == [{2: 4}, {2: 4}]


def test_a_foot_is_worked_back_along_its_own_chain():
    """Just as many stitches as the chain has left are worked along it; more of them go on along the round."""
    text = HEAD + "Body\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"
    foot = "Rnd 3: 4 sc, ch 4, sl st in 2nd ch from hook, 2 sl st, 8 sc. (12)\nRnd 4: Sc in each st around. (12)\n"
    assert counts(check(text + foot)) == [6, 12, 12, 12]
    assert not corrections(check(text + foot))
    picot = "Rnd 3: 4 sc, ch 3, sl st in 3rd ch from hook, 8 sc. (12)\n"
    assert counts(check(text + picot))[-1] == 12


def test_rows_of_a_piece_with_a_number_in_its_name():
    """ "Rnds 1 and 2 of Motif 1" is that piece's; a number of times is none of its name."""
    text = (
        HEAD
        + "Motif 1\nRnd 1: 8 sc in magic ring. (8)\nRnd 2: 2 sc in each st around. (16)\n\nMotif 2\n{}\nRnd 3: Sc in each st around. (16)\n"
    )
    assert counts(check(text.format("Work Rnds 1-2 of Motif 1.")))[-1] == 16


def test_the_yarn_that_rests_and_the_one_that_is_kept():
    """Neither "drop A from hook" nor "do not fasten off B" works anything."""
    text = (
        HEAD
        + "Colors A and B.\n\nRnd 1: With A, magic ring, 6 sc in ring; drop A from hook; with B, 6 sc in ring. Do not fasten off B. (12 sc)\n"
    )
    assert counts(check(text)) == [12]


def test_the_chain_that_a_round_starts_in():
    """ "2nd ch from hook: …" in front of a colon is where the first stitch goes; "other side:" the chain from below."""
    text = HEAD + "Tummy\nCh 6.\n1 rnd: 2nd ch from hook: 4 sc, inc; other side: 3 sc, inc [11]\n"
    assert counts(check(text))[-1] == 11
    told = (
        HEAD
        + "Head\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st. (12)\nRnd 3: Sc in each st around, put the eyes between Rnds 1 and 2, 4 sts between them. (12)\n"
    )
    assert counts(check(told))[-1] == 12


def test_back_along_the_chain_without_a_turn():
    """ "Do not turn, but work back along the other side of the ch"."""
    text = (
        HEAD
        + "Ch 8.\nRnd 1: 3 sc in 2nd ch from hook, sc in next 5 ch, 3 sc in last ch; do not turn, but work back along the other side of the ch, sc in next 5 ch; join. (16 sc)\n"
    )
    assert counts(check(text))[-1] == 16


def test_yarn_that_is_joined_where_the_row_before_ended():
    """In front of a turn that is the first stitch to be worked; without one it is not told which way the row goes."""
    text = HEAD + "Colors A and B.\n\nWith B, ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n"
    assert counts(check(text + "Row 2: Join A in last st, ch 1, turn, sc in each st across.\n"))[-1] == 10
    assert counts(check(text + "Row 2: With A joined in last st, ch 1, sc in each st across.\n"))[-1] is None
    assert counts(check(text + "Row 2: Join A in first st, ch 1, sc in each st across.\n"))[-1] == 10


def test_every_nth_stitch_is_skipped():
    """A run that passes over each 6th one; where the places do not come out, which are passed is not told."""
    text = HEAD + "Rnd 1: 12 sc in magic ring. (12)\nRnd 2: 2 sc in each st around. (24)\n"
    assert counts(check(text + "Rnd 3: Sc in each st around, skipping every 6th st; join. (20)\n"))[-1] == 20
    assert counts(check(text + "Rnd 3: Sc in each st around but skip every other st; join.\n"))[-1] == 12
    assert counts(check(text + "Rnd 3: Sc in each st around, skipping every 7th st; join.\n"))[-1] is None
    assert counts(check(text + "Rnd 3: Sc in next 4 sts, skipping every 6th st; join.\n"))[-1] is None


def test_a_list_of_bare_names_explains_none_of_them():
    """ "sc, inc, dec" names three stitches: the first of them does not mean the others."""
    text = (
        "MOUSE\n\nUS abbreviations: sc, inc, dec, ch, MR (magic ring).\n\nR1. 6sc in MR. (6)\nR2. [1sc, inc]x3. (9)\n"
    )
    assert counts(check(text)) == [6, 9]
    told = "MOUSE\n\nAbbreviations: ch, chain; sc, single crochet; inc, increase.\n\nR1. 6sc in magic ring. (6)\nR2. [1sc, inc]x3. (9)\n"
    assert counts(check(told)) == [6, 9]


def test_what_a_thing_comes_to_and_the_thread_by_its_number():
    """ "Each mouse is 4 cm" is the finished size; "each round is 1 cm" is none. Thread is told by its number."""
    missing = "section-missing"
    text = (
        "MICE\n\nMercerized Crochet, size 30, white. Hook 1.5 mm.\nEach {} is 4 cm.\n\nRnd 1: 6 sc in magic ring. (6)\n"
    )
    told = [one.message for one in check(text.format("mouse")).findings if one.rule == missing]
    assert not [words for words in told if "finished size" in words or "yarn" in words]
    told = [one.message for one in check(text.format("round")).findings if one.rule == missing]
    assert [words for words in told if "finished size" in words]


TOY = """SHEEP

MR – magic ring
X – single crochet
V – increase
A – decrease
CH – chain

"""


def test_a_piece_with_its_yarn_behind_a_stop_is_a_heading():
    """ "Head. Black." stands over rows, "Body. White. CH 6" over those on its chain; "Stuff. Close." is no piece."""
    text = (
        TOY
        + "Head. Black.\n1) 6X in MR (6)\n2) 6V (12)\nStuff. Close.\n\nLegs 4 pcs. White.\n1) 5X in MR (5)\n2-4) 5X (5) 3 rows\n\nBody. White. CH 6\n1) from the 2nd loop from hook 4X, 3X in last, on the other side X, X, X, V (12)\n"
    )
    report = check(text)
    assert counts(report) == [6, 12, 5, 5, 5, 5, 12]
    assert [part.name for part in report.pattern.parts] == ["Head", "Legs 4 pcs", "Body"]
    assert not corrections(report)


def test_a_count_with_so_many_rows_behind_it():
    """ "(5) 3 rows" is the count of each of three rows; "(5) 3 X" goes on working."""
    text = TOY + "Arm\n1) 5X in MR (5)\n2-4) 5X (5) 3 rows\n"
    assert counts(check(text)) == [5, 5, 5, 5]
    assert counts(check(text.replace("(5) 3 rows", "(6) 3 rows")))[-1] == 5
    assert "count-differs" in [rule for rule, _ in corrections(check(text.replace("(5) 3 rows", "(6) 3 rows")))]


def test_a_corner_of_its_own_beside_corner_spaces():
    """Where "Corner" is a group, "each corner sp" is still the space; a beginning corner slips there behind other slips."""
    text = (
        HEAD
        + """Corner = (2 dc, ch 2, 2 dc) in corner sp. Beg corner = sl st in corner sp, ch 3 (counts as dc), 1 dc, ch 2 and 2 dc in same sp.

Rnd 1: Ch 4, join to form ring, ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join. (12 dc)
Rnd 2: Sl st in each of next 2 dc, beg corner, (dc in each of next 3 dc, corner) 3 times, dc in each of last 3 dc; join. (28 dc)
Rnd 3: Ch 1, sc in each dc and 3 sc in each corner sp around; join. (40 sc)
"""
    )
    report = check(text)
    assert counts(report) == [12, 28, 40]
    assert not corrections(report)


def test_a_join_within_a_list_for_one_loop():
    """ "In next lp make 4 sc, ch 2, sl st in next p of First Motif, ch 2, 4 sc": all in that loop, and what follows in the next."""
    text = (
        HEAD
        + """Abbreviations: ch, chain; lp, loop; p, picot; sc, single crochet; sl st, slip stitch.

Picot (p): Ch 4, sl st in 4th ch from hook.

First Motif
Rnd 1: 12 sc in magic ring; join. (12 sc)
Rnd 2: Ch 1, *sc in next sc, ch 5, skip 2 sc; repeat from * around; join. (4 sc)
Rnd 3: Ch 1, in each lp around make 3 sc, p, 3 sc; join. (24 sc, 4 p)

Second Motif
Rnd 1: 12 sc in magic ring; join. (12 sc)
Rnd 2: Ch 1, *sc in next sc, ch 5, skip 2 sc; repeat from * around; join. (4 sc)
Rnd 3: Ch 1, in next lp make 3 sc, ch 2, sl st in next p of First Motif, ch 2, 3 sc, in each of remaining 3 lps make 3 sc, p, 3 sc; join. (24 sc)
"""
    )
    report = check(text)
    assert counts(report) == [12, 4, 24, 12, 4, 24]
    assert not [one for one in corrections(report) if one[0] != "abbreviation-undefined"]


def test_filet_rows_begin_with_a_space_or_with_a_block():
    """One row of ch 3 among rows of ch 5 opens with a block; among plain rows the odd chain is still asked about."""
    rows = "".join(f"Row {n}: Ch 5, turn, skip 2 sts, dc in next dc, 8 sps.\n" for n in range(2, 8))
    text = FILET.replace("skip next 2 sts", "skip next 2 sts or next ch-2 sp") + rows
    report = check(text + "Row 8: Ch 3, turn, 9 bls. (28 dc)\n")
    assert "turning-chain-inconsistent" not in [rule for rule, _ in all_findings(report)]
    plain = HEAD + "Ch 12.\nRow 1: Dc in 4th ch from hook and in each ch across. (10 dc)\n"
    plain += "".join(f"Row {n}: Ch 3, turn, dc in next 9 dc. (10 dc)\n" for n in range(2, 9))
    plain += "Row 9: Ch 2, turn, dc in next 9 dc. (10 dc)\n"
    assert "turning-chain-inconsistent" in [rule for rule, _ in all_findings(check(plain))]


def test_work_along_an_edge_is_said_in_the_pattern_s_terms():
    """Under UK terms "24 dc along side" is told as dc, and so is what is done on the way."""
    from lint.reports.clause import read_clauses
    from lint.rulebook import load_rulebook

    told = read_clauses(["1 dc in each tr and 3 dc in each corner sp, miss 1 st, 24 dc along side"], load_rulebook())[0]
    assert "24 dc spread evenly along an edge" in told.said
    assert any(words.startswith("on the way, 3 dc") for words in told.said)


def test_the_gap_between_v_stitches_is_not_that_beside_a_pair():
    """Two dc that stand in one space are a group, but no V-stitch: the first gap lies behind the first V-stitch."""
    text = (
        HEAD
        + """V-st: (dc, ch 1, dc) in place stated.

Ch 24.
Row 1: Dc in 4th ch from hook, *sk 1 ch, V-st in next ch, sk 1 ch; rep from * to last 2 ch, dc in last 2 ch. (6 V-sts, 4 dc)
Row 2: Ch 3 (counts as dc), turn, dc in next dc, 2 dc in sp before first V-st, V-st between next 2 V-sts 5 times, 2 dc in sp after last V-st, dc in next dc, dc in top of ch-3. (5 V-sts, 8 dc)
Row 3: Ch 3, turn, dc in next dc, sk 2 dc, V-st between next 2 V-sts 4 times, sk next V-st, sk 2 dc, dc in next dc, dc in top of ch-3. (4 V-sts, 4 dc)
"""
    )
    report = check(text)
    assert counts(report) == [16, 18, 12]
    assert "places-left-over" not in [rule for rule, _ in all_findings(report)]
    wrong = text.replace("V-sts 4 times, sk next V-st", "V-sts 3 times, sk next V-st").replace(
        "(4 V-sts, 4 dc)", "(3 V-sts, 4 dc)"
    )
    assert "places-left-over" in [rule for rule, _ in all_findings(check(wrong))]
