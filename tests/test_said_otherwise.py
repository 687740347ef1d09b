"""Rows whose words stand in an order of their own: places, counts and other rows told in other ways, and look-alikes that are work."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts, mades, outcomes, worked_rows

_US = "Mat\n\nAbbreviations (US terms): ch = chain; sc = single crochet; hdc = half double crochet; dc = double crochet; st(s) = stitch(es); sp(s) = space(s); sl st = slip stitch; sk = skip\n\n"
_UK = "Mat\n\nAbbreviations (UK terms): ch = chain; dc = double crochet; tr = treble; dtr = double treble; st(s) = stitch(es); sl st = slip stitch\n\n"
_BASE = "Ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. Turn. [12 sc]\n"


@pytest.mark.parametrize(
    "words",
    [
        "Keep going in the same way as Row 2",
        "Continue in the same manner as Row 2",
        "Work in the same fashion as Row 2",
        "Carry on in the same way as Row 2",
        "Work in exactly the same way as Row 2",
    ],
)
def test_the_same_way_as_a_row_is_that_row(words: str) -> None:
    """ "in the same way as Row 2" calls Row 2, whichever words of going on lead to it."""
    report = check(_US + _BASE + f"Row 2: Ch 1, 2 sc in first st, sc in each st to end. Turn.\nRows 3 to 5: {words}.\n")
    assert counts(report) == [12, 13, 14, 15, 16]


def test_going_on_in_the_same_way_without_a_row_is_not_counted() -> None:
    """Without a row it is called after, what is worked stays open."""
    report = check(
        _US + _BASE + "Row 2: Ch 1, sc in each st. Turn.\nRows 3 to 5: Keep going in the same way as the hem.\n"
    )
    assert set(outcomes(report)[-3:]) == {"not-recomputed"}


def test_corner_before_its_middle_stitch() -> None:
    """ "the next corner's middle sc" is the middle sc of the next corner."""
    for place in ("the next corner's middle sc", "the middle sc of the next corner"):
        report = check(
            _US + "Rnd 1: Ch 4, join to form a ring. Ch 1, (3 sc, ch 1) 4 times in ring, join. (12 sc)\n"
            "Rnd 2: Ch 1, (3 sc in next ch-1 sp, sc in next 3 sc) 4 times, join. (24 sc)\n"
            "Rnd 3: Sl st to middle sc of first corner, ch 1, *3 sc in middle sc of corner, sc in each sc up to "
            f"{place}; rep from * 3 more times, join. (32 sc)\n"
        )
        assert counts(report) == [12, 24, 32]


def test_slip_stitches_over_several_sorts() -> None:
    """ "sl st over dc, 2 tr and 1 dtr and into next dtr" works no treble: all of it is walked over."""
    head = (
        _UK
        + "Rnd 1: Ch 6, join to form a ring. 1 ch, (1 dc, 2 tr, 3 dtr, 2 tr, 1 dc) 4 times in ring, join. (36 sts)\n"
    )
    walked = "sl st over dc, 2 tr and 1 dtr and into next dtr, 1 ch, 1 dc in same dtr"
    report = check(head + f"Rnd 2: {walked}, *6 ch, sk 8 sts, 1 dc in next dtr; rep from * twice more, 6 ch, join.\n")
    assert counts(report) == [36, 4]


def test_trebles_behind_slip_stitches_are_worked() -> None:
    """With a place of their own the trebles are work: "sl st over next dc, 2 tr in next st"."""
    row = "Row 2: Sl st over next 2 dc, 2 tr in next st, turn.\n"
    report = check(_UK + "Ch 13.\nRow 1: 1 dc in 2nd ch from hook and in each ch to end, turn. (12 dc)\n" + row)
    assert counts(report)[-1] == 2


def test_other_stitches_skipped() -> None:
    """ "skip the other 6 sts" are those behind the worked ones; "skip every other st" is not that."""
    tube = "Rnd 1: Ch 12, join to form a ring. Ch 1, sc in each ch, join. (12 sc)\n"
    report = check(_US + tube + "Rnd 2: Ch 1, sc in next 6 sts, ch 4, skip the other 6 sts, join.\n")
    assert mades(report)[-1].stitches == 6
    assert mades(report)[-1].spaces == {4: 1}
    report = check(_US + tube + "Rnd 2: Ch 1, sc in next 6 sts, ch 4, skip the other 7 sts, join.\n")
    assert all_findings(report, ("correction", "query")) != []


def test_chains_told_among_the_count_behind_a_comma() -> None:
    """ "12 tr, counting the 3 missed ch as 1 tr": the figure is the count, and the words tell what is among them."""
    report = check(
        _UK
        + "Make 14 ch.\nRow 1: 1 tr in 4th ch from hook, 1 tr in each ch, turn. 12 tr, counting the 3 missed ch as 1 tr.\n"
    )
    assert (counts(report)[-1], outcomes(report)[-1]) == (12, "agrees")
    report = check(
        _UK
        + "Make 14 ch.\nRow 1: 1 tr in 4th ch from hook, 1 tr in each ch, turn. 11 tr, counting the 3 missed ch as 1 tr.\n"
    )
    assert outcomes(report)[-1] == "differs"


@pytest.mark.parametrize("sign", [">>", ">", "»", "~"])
def test_count_behind_an_arrow_head_and_a_row_called_below(sign: str) -> None:
    """A count behind such a sign ends its row, and a line below that calls the row begins anew."""
    report = check(
        _US + f"Rnd 1: Ch 12, join to form a ring. Ch 1, sc in each ch, join. {sign} 12 sc\n"
        f"Rnd 2: Ch 1, (sc in next st, 2 sc in next st) to end, join. {sign} 18 sc\nWork Rnd 2 once more.\nRnd 4: Ch 1, sc in each st, join.\n"
    )
    assert counts(report) == [12, 18, 27]
    report = check(_US + f"Rnd 1: Ch 12, join to form a ring. Ch 1, sc in each ch, join. {sign} 13 sc\n")
    assert outcomes(report) == ["differs"]


def test_beginning_chain_counted_in_the_print_and_joined_below_its_top() -> None:
    """ "(6 hdc counting beg ch)", joined in the 2nd of 3 chains: a stitch and a space; joined in the 3rd, it is no space."""
    tube = _US + "Rnd 1: Ch 12, join to form a ring. Ch 1, sc in each ch, join. (12 sc)\n"
    lace = "Rnd 2: Ch 3, sk 1 st, *hdc in next st, ch 1, sk 1 st; rep from * around, sl st to 2nd ch of beg ch-3. (6 hdc counting beg ch)\n"
    report = check(tube + lace)
    assert mades(report)[-1].spaces == {1: 6}
    plain = "Rnd 2: Ch 3, dc in next st and in each st around, sl st to 3rd ch of beg ch-3. (12 dc counting beg ch)\n"
    assert mades(check(tube + plain))[-1].spaces == {}


def test_yarn_behind_a_row_number() -> None:
    """ "Row 2 B:" is worked in the yarn B where the materials declare it."""
    yarn = "Yarn: A (moss), B (bone), 50 g each\n\n"
    rows = "Ch 13.\nRow 1 (RS) A: Sc in 2nd ch from hook and in each ch. Turn. [12 sc]\nRow 2 B: Ch 1, sc in first 11 sts. Turn. [12 sc]\n"
    assert outcomes(check(_US + yarn + rows)) == ["agrees", "differs"]


def test_parts_of_a_row_are_no_yarns() -> None:
    """ "Row 2 A", "Row 2 B" without such yarns are parts of a row: none of them is taken for a whole one."""
    rows = (
        _BASE + "Row 2 A: Ch 1, sc in first 5 sts. Turn.\nRow 2 B: Join in next st, ch 1, sc in each st to end. Turn.\n"
    )
    yarn = "Yarn: A (moss), B (bone), 50 g each\n\n"
    assert set(outcomes(check(_US + rows))[1:]) == {"not-recomputed"}
    assert set(outcomes(check(_US + yarn + rows))[1:]) == {"not-recomputed"}


def test_post_stitches_round_post_stitches() -> None:
    """ "FPdc round FPdc" goes around the next one, and "to end of round" is no post."""
    report = check(
        _US
        + "FPdc = front post dc; BPdc = back post dc\n\nRnd 1: Ch 12, join to form a ring. Ch 2, dc in each ch, join. (12 dc)\n"
        "Rnd 2: Ch 2, (FPdc round next st, BPdc round next st) to end of round, join. (12 sts)\n"
        "Rnd 3: Ch 2, (FPdc round FPdc, BPdc round BPdc) to end of round, join. (11 sts)\n"
    )
    assert counts(report) == [12, 12, 12]
    assert outcomes(report)[-1] == "differs"


def test_all_across_behind_a_comma() -> None:
    """ "…, all across" is how far the row goes."""
    report = check(
        _US
        + "Ch 13.\nRow 1: *Sc in next ch, hdc in next ch; rep from * to last ch. Turn.\n".replace(
            "*Sc in next ch", "Skip first ch, *sc in next ch"
        ).replace(" to last ch", " to end")
        + "Row 2: Ch 1, sc in every hdc and hdc in every sc, all across. Turn. [12 sts]\n"
    )
    assert (counts(report)[-1], outcomes(report)[-1]) == (12, "agrees")


def test_lists_headed_by_country_or_letters() -> None:
    """ "US abbreviations: ch-chain; …", "ABBREVIATIONS (UK) ch chain, …" and "Letters used:" head lists of abbreviations."""
    rows = "Row 1: Ch 6, sc in 2nd ch from hook and in each ch. (5 sc)\n"
    for head in (
        "US abbreviations: ch-chain; sc-single crochet; st-stitch",
        "ABBREVIATIONS (US) ch chain, sc single crochet, st stitch",
    ):
        found = {one.rule for one in check(f"Mat\n\n{head}\n\n{rows}").findings}
        listed = [one for one in check(f"Mat\n\n{head}\n\n{rows}").findings if "a list of abbreviations" in one.message]
        assert "abbreviation-undefined" not in found
        assert listed == []
    toy = "Ball\n\nLetters used (US terms):\nS – single crochet\nI – increase (2 S in one stitch)\nD – decrease (2 S as one)\n\nBODY\n"
    report = check(toy + "R1. 6S in magic ring (6)\nR2. 6I (12)\nR3. 6 x (S, I) (18)\nR4. 6 x (S, D) (13)\n")
    assert counts(report) == [6, 12, 18, 12]
    assert outcomes(report)[-1] == "differs"


_MOSAIC = (
    "Cloth\n\nAbbreviations (US terms): ch = chain; sc = single crochet; dc = double crochet; st = stitch; sk = skip; sp = space; "
    "rep = repeat; Mdc = mosaic double crochet: dc in the skipped st 2 rows below\n\nCh 22.\nRow 1: Sc in 2nd ch from hook and in each ch. Turn. (21 sc)\n"
    "Row 2: Ch 1, sc in each sc. Turn. (21 sc)\nRow 3: Ch 1, sc in first 3 sc, *ch 1, sk 1, sc in next 5; rep from * to end. Turn. (18 sc, 3 ch-1 sps)\n"
)


@pytest.mark.parametrize(
    "words",
    [
        "sc in each sc, ch 1 and sk each ch-1 sp",
        "sc in each sc and ch 1, sk 1 over each ch-1 sp",
        "sc in each sc across, ch 1, skip each ch-1 sp",
        "sc in each sc and ch 1 over each ch-1 sp",
    ],
)
def test_chains_over_the_loops_of_a_mosaic(words: str) -> None:
    """Stitches over stitches and chains over spaces run side by side, and the long stitch hangs before its loop in every repeat."""
    rows = f"Row 4: Ch 1, {words}. Turn.\nRow 5: Ch 1, sc in first 3 sc, *Mdc, sc in next 5; rep from * to end. Turn. (18 sc, 3 Mdc)\n"
    report = check(_MOSAIC + rows + "Row 6: Ch 1, sc in each st. Turn.\nRows 7-10: Rep Rows 3-6.\n")
    assert counts(report) == [21, 21, 18, 18, 21, 21, 18, 18, 21, 21]
    assert mades(report)[3].spaces == {1: 3}


def test_chain_and_spaces_skipped_behind_a_run_are_not_side_by_side() -> None:
    """Behind so many stitches, "ch 1, sk next ch-1 sp" is one chain over one space."""
    report = check(_MOSAIC + "Row 4: Ch 1, sc in next 3 sc, ch 1, sk next ch-1 sp, sc in next 5 sc, turn.\n")
    assert (counts(report)[-1], mades(report)[-1].spaces) == (8, {1: 1})


def test_marker_by_its_letter() -> None:
    """Where the list says that M is a marker, "sc to M" goes to it; where it does not, the row is not understood."""
    rows = (
        "Rnd 1: Ch 12, join to form a ring. Ch 1, sc in each ch, join. (12 sc)\nRnd 2: Ch 1, sc in next 5 sts, place marker, 2 sc in each of next 2 sts, place marker, sc in last 5 sts, join. (14 sc)\n"
        "Rnd 3: Ch 1, sc to M, 2 sc in next st, sc in next 2 sts, 2 sc in next st, sc to end, join. (16 sc)\n"
    )
    report = check(_US.replace("sk = skip", "sk = skip; M = marker") + rows)
    assert counts(report) == [12, 14, 16]
    assert outcomes(check(_US + rows))[-1] == "not-recomputed"


def test_turned_inside_out_is_no_turn_of_a_row() -> None:
    """A tube worked in a spiral is in rounds, for all that it is turned inside out at the end."""
    toy = "Toe\n\nWork in a spiral throughout.\n\nTIP\nR1: Ch 6, sc in 2nd ch from hook and in next 3 ch, 4 sc in last ch; on other side of ch sc in next 4 ch. [12 sc]\n"
    heel = "HEEL\nJoin yarn at the corner.\nR1: Ch 12, sc in each of the 12 ch. [12 sc]\nR2: Sc in each st. [12 sc]\nTurn inside out and close the gap.\n"
    kinds = [row.kind for row in worked_rows(check(toy + heel))]
    assert set(kinds) == {"round"}
    flat = heel.replace("Turn inside out and close the gap.", "R3: Turn, sc in each st.")
    assert worked_rows(check(toy + flat))[-1].kind == "row"


def test_times_in_all_are_those_of_the_label() -> None:
    """ "Rows 4-7: as Rows 2 and 3, twice in all": its four rows, or two of them where the label names but two; else it is told."""
    rows = _BASE + "Row 2: Ch 1, 2 sc in first st, sc in each st to end. Turn.\nRow 3: Ch 1, sc in each st. Turn.\n"
    ends = "Row 8: Ch 1, sc in each st. Turn.\n"
    report = check(_US + rows + "Rows 4-7: As Rows 2 and 3, 2 times in all.\n" + ends)
    assert counts(report) == [12, 13, 13, 14, 14, 15, 15, 15]
    assert all_findings(report, ("correction",)) == []
    report = check(_US + rows + "Rows 4-5: As Rows 2 and 3, 2 times in all.\n" + ends.replace("8", "6"))
    assert counts(report) == [12, 13, 13, 14, 14, 14]
    report = check(_US + rows + "Rows 4-9: As Rows 2 and 3, 2 times in all.\n" + ends.replace("8", "10"))
    assert "range-length-differs" in [rule for rule, _ in all_findings(report, ("correction",))]


def test_figure_and_the_letter_of_a_decrease() -> None:
    """ "6D" are six decreases where D is one; "2D ROW" is the second row where it is not."""
    toy = "Ball\n\nLetters used (US terms):\nS – single crochet\nI – increase\nD – decrease\n\nBODY\n"
    assert counts(check(toy + "R1. 6S in magic ring (6)\nR2. 6I (12)\nR3. 6D (6)\n")) == [6, 12, 6]
    old = (
        "Ch 13.\n1ST ROW: Sc in 2nd ch from hook and in each ch. [12 sc]\n2D ROW: Ch 1, turn, sc in each st. [12 sc]\n"
    )
    assert counts(check(_US + old)) == [12, 12]


@pytest.mark.parametrize("count", ["", " (39 sc)"])
def test_a_row_with_a_letter_that_is_no_yarn_defines_no_stitch(count: str) -> None:
    """ "Row 1 A: Sc in 2nd ch …" is a row, whatever the letter stands for, and never a stitch called "Row 1 A"."""
    text = f"Mat\n\nUS terms\n\nCh 40.\nRow 1 A: Sc in 2nd ch from hook and each ch to end.{count}\nRow 2 A: Ch 1, turn, sc in each sc.{count}\n"
    assert set(counts(check(text))) <= {None, 39}
