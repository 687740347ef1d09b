"""Pieces that are called, held together and headed: whole patterns' words between their rows.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

_FRONT = """Sachet
UK terms

Front
Make 13ch.
Row 1: 1dc in 2nd ch from hook, 1dc in each ch to end, turn. 12 sts.
Row 2: 1ch, 1dc in each st to end, turn. 12 sts. Fasten off.

Back
{}
Row 3: 1ch, 1dc in each st to end. {} sts.
"""


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Make 13ch and work rows 1 and 2 as given for Front.", 12),
        ("Make 9ch. Work rows 1 and 2 as given for Front.", 8),
        ("Work rows 1 and 2 as for the front.", 12),
    ],
)
def test_rows_of_another_piece_are_worked_on_the_chain_before_them(words, made):
    """The chain is the new piece's own: of nine chains, eight stitches."""
    report = check(_FRONT.format(words, made))
    assert counts(report)[-1] == made
    assert not {"turning-chain-unsaid", "count-differs"} & set(dict(all_findings(report)))


def test_a_chain_that_does_not_give_the_count_is_told():
    """Nine chains give eight stitches, and not the twelve printed."""
    report = check(_FRONT.format("Make 9ch and work rows 1 and 2 as given for Front.", 12))
    assert counts(report)[-1] == 8 and "count-differs" in dict(all_findings(report))


_DISC = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Hold the belly against the back, wrong sides together. Sc in each st around through both pieces.", 12),
        ("Hold both circles with WS facing each other, sc in each st around.", 12),
        ("Hold front and back together, right sides facing out, and sc in each st around.", 12),
        ("Hold yarn to the wrong side, sc in each st around.", None),
        ("Hold the last 4 sts with wrong sides together, sc in each st around.", None),
    ],
)
def test_how_pieces_are_held_is_no_work(words, made):
    """The sides that meet change no count; yarn or stitches that are held may."""
    assert counts(check(f"Turtle\nUS terms\n\n{_DISC}Rnd 3: {words} (12)\n"))[-1] == made


@pytest.mark.parametrize("behind", ["after Row 4", "after the last row", "at end of Row 4"])
def test_the_row_after_which_it_is_not_turned(behind):
    """ "Rep Row 2. Do not turn after Row 4." says nothing of stitches."""
    text = f"Crate\nUS terms\n\nRow 1: Fsc 7, turn. (7)\nRow 2: Ch 1, sc in each sc, turn. (7)\nRows 3 and 4: Rep Row 2. Do not turn {behind}.\n"
    assert counts(check(text)) == [7, 7, 7, 7]


def test_rounds_called_as_another_piece_are_rounds():
    """ "R1-R2. As for the belly": what follows is counted round, as the belly is."""
    text = f"Turtle\nUS terms\n\nBELLY\n{_DISC.replace('Rnd ', 'R')}\nSHELL\nR1-R2. Work as for the belly. (12)\nR3. 1 sc in each st. (12)\n"
    kinds = [row.kind for row in check(text).ledger.rows]
    assert kinds == ["round"] * 5


_COVERS = "Bauble\nUS terms\n\nCAP\n" + _DISC + "Fasten off.\n\n{}\n\nCh 5, join to form a ring.\n" + _DISC


@pytest.mark.parametrize(
    ("headings", "name"),
    [("COVER\nFirst Half", "First Half"), ("Cover (in two pieces)\nLower cover", "Lower cover"), ("COVER", "COVER")],
)
def test_a_piece_of_several_has_its_name_under_theirs(headings, name):
    """A blank line behind the two names parts them from the chain, not from the piece."""
    assert [part.name for part in check(_COVERS.format(headings)).pattern.parts] == ["CAP", name]


_PETALS = "Daisy\nUS terms\n\nRnd 1: Ch 4 (counts as dc, ch 1), [dc in magic ring, ch 1] 4 times, join in 3rd ch. Fasten off. (5 dc, 5 ch-1 sps)\nRnd 2: Join White in any ch-1 sp. {}\n"


@pytest.mark.parametrize(
    "words",
    [
        "*Ch 3, 2 tr in same sp, ch 3, sl st in same sp, sl st in next ch-1 sp; rep from * around.",
        "*(Ch 3, 2 tr, ch 3, sl st) in same sp, sl st in next ch-1 sp; rep from * around.",
        "*Ch 3, 2 tr in same sp, ch 3, sl st in same sp, sl st in next dc and in next ch-1 sp; rep from * around.",
        "*Ch 3, 2 tr in same sp, ch 3, sl st in same sp, sl st in next ch-1 sp; rep from * around, omitting last sl st.",
    ],
)
def test_petals_that_move_on_come_round_once(words):
    """Five spaces, five petals: the last slip stitch is in the first space again."""
    assert check(_PETALS.format(words)).ledger.rows[-1].cells[0].made.by_kind["tr"] == 10


def test_a_petal_that_never_moves_on_is_not_counted():
    """Without the slip stitch in the next space all petals would stand in one."""
    words = "*Ch 3, 2 tr in same sp, ch 3, sl st in same sp; rep from * around."
    assert counts(check(_PETALS.format(words)))[-1] is None


def test_rounds_numbered_alone_may_begin_with_a_ring_and_with_yarn():
    """ "1. With Yellow, make a magic ring." and "3. Join Green with sc in any st." are rounds."""
    text = "Daisy\nUS terms\n\nFlower\n1. With Yellow, make a magic ring. Ch 1, 6 sc in ring, join. (6)\n2. Ch 1, 2 sc in each sc around, join. Fasten off. (12)\n"
    assert counts(check(text + "3. Join Green with sc in any sc, sc in next 11 sc, join. (12)\n")) == [6, 12, 12]


def test_steps_of_the_making_up_are_no_rows():
    """ "1. Join the legs to the body." stays talk."""
    text = f"Calf\nUS terms\n\nEAR\n{_DISC}\nFINISHING\n1. Join the legs to the body.\n2. Make a pompom.\n3. Join yarn and sew.\n"
    assert counts(check(text)) == [6, 12]


@pytest.mark.parametrize("need", ["You will need 50g of 4ply and a 3mm hook.", "50 yds fingering, 3 mm hook"])
def test_yarn_is_told_by_its_amount_and_weight(need):
    """No word "yarn" is needed."""
    told = [finding.message for finding in check(f"Sachet\nUS terms\n\n{need}\n\n{_DISC}").findings]
    assert not any("the yarn" in message for message in told)


def test_turning_chains_of_two_lengths_are_told_in_one_sentence():
    """ "Turning chains of 3ch count as 1tr and turning chains of 4ch count as 1tr and 1ch"."""
    notes = "Turning chains of 3ch count as 1tr and turning chains of 4ch count as 1tr and 1ch.\n\n"
    rows = "12ch.\nRow 1: 1tr in 4th ch from hook (3ch count as 1tr), 1tr in each ch, turn. (10tr)\nRow 2: 4ch, miss 2 sts, *1tr in next st, 1ch, miss 1 st; rep from * to last 2 sts, miss 1 st, 1tr in last st. (5tr)\n"
    assert "turning-chain-unsaid" not in dict(all_findings(check("Wrap\nUK terms\n\n" + notes + rows)))
