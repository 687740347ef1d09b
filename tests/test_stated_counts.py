"""What printed counts count: groups beside stitches and spaces, one side of a shape, beginning stitches by name."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts, outcomes

_SQUARE = """Fenlight Square

ABBREVIATIONS
ch: chain
dc: double crochet
rep: repeat
sc: single crochet
sk: skip
sl st: slip stitch
sp(s): space(s)
yo: yarn over

SPECIAL STITCHES
Cluster (Cl): [Yo, insert hook in st or sp indicated, yo and pull up a loop, yo and draw through 2 loops] 3 times, yo and draw through all 4 loops on hook.
Beginning Cluster (Beg Cl): Ch 2, [yo, insert hook in same st or sp, yo and pull up a loop, yo and draw through 2 loops] twice, yo and draw through all 3 loops on hook.
V-st: (Dc, ch 1, dc) in st or sp indicated.

SQUARE
Ch 6, sl st in first ch to form ring.
Rnd 1: Beg Cl in ring, ch 3, [Cl in ring, ch 3] 7 times; join with sl st in top of Beg Cl. {8 Cl, 8 ch-3 sps}
Rnd 2: Sl st in first ch-3 sp, (Beg Cl, ch 3, Cl) in same sp, ch 1, 3 dc in next ch-3 sp, ch 1, *(Cl, ch 3, Cl) in next ch-3 sp, ch 1, 3 dc in next ch-3 sp, ch 1; rep from * 2 more times; join. {8 Cl, 12 dc, 8 ch-1 sps, 4 ch-3 sps}
Rnd 3: Sl st in first ch-3 sp, (Beg Cl, ch 3, Cl) in same sp, *ch 1, V-st in next ch-1 sp, dc in next 3 dc, V-st in next ch-1 sp, ch 1**, (Cl, ch 3, Cl) in next corner ch-3 sp; rep from * around, ending last rep at **; join. {THIRD}
Rnd 4: Ch 1, sc in top of Beg Cl, *5 sc in next ch-3 sp, sc in next Cl, sc in next ch-1 sp, 3 sc in ch-1 sp of next V-st, sk last dc of V-st, sc in next 3 dc, 3 sc in ch-1 sp of next V-st, sc in next ch-1 sp, sc in next Cl; rep from * around, omitting last sc; join with sl st in first sc. {72 sc}
Rnd 5: Ch 1, sc in same st and in next 2 sc, *3 sc in next sc (corner made), sc in next 17 sc; rep from * 2 times more, 3 sc in next sc, sc in last 14 sc; join. Fasten off. {FIFTH}
"""
_THIRD, _FIFTH = "8 Cl, 8 V-sts, 12 dc, 8 ch-1 sps, 4 corners", "80 sc; 20 sc on each side, counting one corner sc"


def _square(third: str = _THIRD, fifth: str = _FIFTH) -> str:
    return _SQUARE.replace("THIRD", third).replace("FIFTH", fifth)


def _faults(report) -> list[tuple[str, int]]:
    return [found for found in all_findings(report, ("correction", "query")) if found[0] != "turning-chain-unsaid"]


def test_spaces_beside_v_stitches_and_a_beginning_cluster_named_in_the_next_round():
    """Where V-stitches are counted, "8 ch-1 sps" are those between; "top of Beg Cl" is where the round began."""
    report = check(_square())
    assert counts(report) == [8, 20, 36, 72, 80]
    assert _faults(report) == []


@pytest.mark.parametrize("third", ["8 Cl, 8 V-sts, 12 dc, 16 ch-1 sps", "8 Cl, 28 dc, 16 ch-1 sps, 4 ch-3 sps"])
def test_spaces_inside_v_stitches_may_be_counted_with_the_others(third):
    """All ch-1 spaces, those inside the V-stitches among them, are as good a count."""
    assert _faults(check(_square(third))) == []


def test_spaces_that_neither_way_of_counting_gives_differ():
    """A figure between the two is a mistake."""
    rules = [rule for rule, _ in _faults(check(_square("8 Cl, 8 V-sts, 12 dc, 12 ch-1 sps")))]
    assert rules == ["count-differs"]


@pytest.mark.parametrize(
    "side", ["20 sc on each side", "19 sc per side, not counting the corner sc", "21 along each side"]
)
def test_a_figure_for_each_side_is_read_beside_the_total(side):
    """The corners may be counted with a side or not."""
    report = check(_square(fifth=f"80 sc; {side}"))
    assert outcomes(report)[-1] == "agrees"
    assert _faults(report) == []


def test_a_figure_for_each_side_that_no_counting_gives_is_a_mistake():
    """The words of the one side are what is marked."""
    report = check(_square(fifth="80 sc; 28 sc on each side"))
    (found,) = [finding for finding in report.findings if finding.rule == "count-differs"]
    assert "28 sc on each side" in found.message
    assert report.source.slice(found.span) == "28 sc on each side"


def test_special_stitches_alone_are_no_list_of_abbreviations():
    """Without a list of the plain abbreviations one line says so, and not one for each of them."""
    head, _, rest = _square().partition("ABBREVIATIONS")
    report = check(head + rest[rest.index("SPECIAL STITCHES") :])
    assert "abbreviation-undefined" not in [finding.rule for finding in report.findings]


def test_a_chain_written_with_a_full_stop_begins_a_piece():
    """An abbreviation's full stop ends no sentence."""
    report = check(
        "Rag\nCh. 12\nRow 1: Sc in 2nd ch from hook and in each ch across. (11 sc)\nRow 2: Ch. 1, turn, sc in each sc. (11)\n"
    )
    assert counts(report) == [11, 11]


def test_a_place_that_a_clause_has_lost_is_not_passed_over():
    """A full stop in the middle of a clause leaves a place by itself, which is no remark."""
    report = check(
        "Rag\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\nRow 2: Ch 1, turn, 2 sc in next st. Both ends. (12 sc)\n"
    )
    assert outcomes(report) == ["agrees", "not-recomputed"]


def test_a_bare_list_of_abbreviations_may_have_plurals_in_brackets():
    """ "st(s) stitch(es)" explains st and sts, without any sign between."""
    report = check(
        "Rag\nAbbreviations: ch chain, sc single crochet, sl st(s) slip stitch(es), st(s) stitch(es), sc2tog single crochet two together\n\nRAG\nCh 11.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across. (10 sts)\nRow 2: Ch 1, turn, sc in next st, sl st in next st, sc in each st to last 2 sts, sc2tog.\n"
    )
    assert "abbreviation-undefined" not in [finding.rule for finding in report.findings]


def test_post_prefix_in_the_list_explains_post_stitches():
    """ "BP back post" and "sc" in the list explain BPsc, which uses both."""
    report = check(
        "Rag\nAbbreviations\nch = chain\nsc = single crochet\nst = stitch\nBP = back post\n\nRAG\nCh 11.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\nRow 2: Ch 1 (does not count as a st), turn, BPsc around each st across. (10 sc)\n"
    )
    assert not {finding.rule for finding in report.findings} & {"abbreviation-undefined", "abbreviation-unused"}


@pytest.mark.parametrize(
    "note",
    [
        "All turning chains count unless otherwise stated.",
        "Turning chains always count.",
        "Turning chains count as a stitch.",
    ],
)
def test_a_note_that_turning_chains_count_needs_no_stitch(note):
    """It answers for every row that begins with one; nothing is asked."""
    report = check(
        f"Mat\nNote: {note}\nMAT\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across. (11 sc)\nRow 2: Ch 3, turn, dc in each st across.\n"
    )
    assert "turning-chain-unsaid" not in [finding.rule for finding in report.findings]


@pytest.mark.parametrize(("picots", "outcome"), [(5, "agrees"), (6, "differs")])
def test_a_picot_told_in_brackets_as_made_is_worked(picots, outcome):
    """ "(ch 3, sl st in last sc - picot made)" makes one each time: it is no remark."""
    report = check(
        "Lace\nLACE\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n"
        "Row 2: Ch 1 (does not count), turn, sc in next 4 sc, (ch 3, sl st in last sc - picot made), "
        f"*sc in next 4 sc, (ch 3, sl st in last sc - picot made); rep from * across. (20 sc, {picots} picots)\n"
    )
    assert outcomes(report)[-1] == outcome


def test_a_note_for_one_piece_and_against_another_is_not_for_both():
    """ "Counts in the rim and never counts in the lid": in the lid the counts decide, and it is asked."""
    report = check(
        "Pot\nNote: Ch 3 counts as a dc in the rim and never counts in the lid.\n\n"
        "RIM\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across. (11 sc)\nRow 2: Ch 3, turn, sk first st, dc in each st across. (11 dc)\n\n"
        "LID\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across. (11 sc)\nRow 2: Ch 3, turn, dc in first st and in each st across. (11 dc)\n"
    )
    assert counts(report) == [11, 11, 11, 11]
    assert "count-differs" not in [finding.rule for finding in report.findings]


def test_a_full_stop_behind_a_whole_word_ends_the_sentence():
    """ "dc in each. 3 dc in corner" is two clauses; only "ea." and its like are cut short."""
    report = check(
        "Tile\nTILE\nRnd 1: Magic ring, ch 3 (counts as dc), 2 dc, ch 2, (3 dc, ch 2) 3 times in ring, join. (12 dc)\n"
        "Rnd 2: Ch 1, sc in each dc, 3 sc in each. corner, join.\n"
    )
    assert outcomes(report)[-1] == "not-recomputed"


def test_a_meaning_that_begins_with_a_figure_in_a_list_without_signs():
    """ "ch chain, inc 2 dc in one st" explains inc as well as ch."""
    listed = "Abbreviations: ch chain, dc double crochet, inc 2 dc in one st, st stitch, sts stitches\n\n"
    rows = "Ch 12.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (10 dc)\nRow 2: Ch 3 (counts as dc), dc in next 4 sts, inc, dc in last 4 sts. (11 dc)\n"
    report = check("Strip\nUS terms\n" + listed + rows)
    assert counts(report)[-1] == 11
    assert not [finding for finding in report.findings if finding.rule.startswith("abbreviation-")]
