"""Wordings of rows met in whole patterns: brackets worked once, row ends by their rows, what ends a round, times said once.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts

BALL = "Ball\n\nUS terms\n\nBALL\nRnd 1: 14 sc in magic ring. (14)\n"


@pytest.mark.parametrize(
    ("words", "count"),
    [
        ("(sc, inc), 8 sc, (sc, inc) x 2. (17)", 17),
        ("Sc in next 4 sts, (2 sc in next st, sc in next st), sc in next 8 sts. (15)", 15),
        ("(dec, sc), 11 sc. (13)", 13),
    ],
)
def test_a_bracket_worked_once(words: str, count: int) -> None:
    """No number of times follows: it is worked once, and the count bears that out."""
    report = check(f"{BALL}Rnd 2: {words}\n")
    assert counts(report)[-1] == count
    assert not corrections(report)


@pytest.mark.parametrize(
    "words",
    [
        "(sc, inc), 8 sc, (sc, inc) x 2",
        "(sc, inc) (21)",
        "(dc, ch 1, dc), sc in next 12 sts. (14)",
        "(sc, hdc, dc), sc in next 12 sts. (15)",
        "Sc in next 6 sts (sc in next st, 2 sc in next st), sc in next 6 sts. (15)",
    ],
)
def test_a_bracket_that_may_lack_its_number(words: str) -> None:
    """Without a count, alone in its row, or where it may be meant for one place, it is asked about."""
    report = check(f"{BALL}Rnd 2: {words}\n")
    assert counts(report)[-1] is None
    assert all_findings(report, ("query",))


def test_a_bracket_that_lacks_its_number_is_found_by_the_count() -> None:
    """The round worked with the bracket once does not come to what is printed."""
    report = check(f"{BALL}Rnd 2: 6 sc, (sc, inc). (18)\n")
    assert [line for _, line in corrections(report)] == [7]


FLAT = (
    "Mat\n\nUS terms\n\nMAT\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8)\n"
    "Rows 2-6: Ch 1, sc in each st across, turn. (8)\n\nEDGING\n"
)


@pytest.mark.parametrize(
    ("place", "count"),
    [
        ("in end of each of next 6 rows", 6),
        ("in the ends of the next 4 rows", 4),
        ("in side of each of the next 6 rows", 6),
        ("in end of next 5 rows", 5),
    ],
)
def test_row_ends_by_their_rows(place: str, count: int) -> None:
    """So many rows have as many ends on one side."""
    report = check(f"{FLAT}Rnd 1: Ch 1, sc {place}.\n")
    assert counts(report)[-1] == count


@pytest.mark.parametrize("place", ["in end of Row 6", "in end of each of the last 2 rows"])
def test_row_ends_that_are_not_told(place: str) -> None:
    """How many stitches go there is not read, and nothing is counted."""
    assert counts(check(f"{FLAT}Rnd 1: Ch 1, sc {place}.\n"))[-1] is None


@pytest.mark.parametrize("why", ["to even out the edge", "to hide the jog", "to finish level"])
def test_why_a_round_ends_with_slip_stitches(why: str) -> None:
    """The purpose is no work."""
    report = check(f"{BALL}Rnd 2: Sc in each st around. (14)\nSl st in next 2 sts {why}. Fasten off.\n")
    assert counts(report)[-1] == 14
    assert not all_findings(report, ("correction", "query"))


def test_times_that_a_count_has_borne_out_hold_when_the_row_is_worked_again() -> None:
    """ "Rep from * 3 times" is four passes by its count; the same words have no other meaning in the rounds behind."""
    report = check(
        "Yoke\n\nUS terms\n\nYOKE\nRnd 1: 4 sc in ring. (4)\nRnd 2: Ch 1, 3 sc in each sc around. (12)\n"
        "Rnd 3: Ch 1, *sc in next st, (sc, ch 1, sc) in next st, sc in next st; rep from * 3 times, join. (16 sc, 4 ch-1 sps)\n"
        "Rnd 4: Ch 1, *sc in each st to next ch-1 sp, (sc, ch 1, sc) in ch-1 sp; rep from * 3 times, sc in each st to end, join. (24 sc)\n"
        "Rnds 5-7: Rep Rnd 4.\n"
    )
    assert counts(report) == [4, 12, 16, 24, 32, 40, 48]


SHELLS = (
    "Scarf\n\nUS terms\n\nSPECIAL STITCHES\nFan = (3 dc, ch 1, 3 dc) in {place}.\n\nSCARF\nCh 12.\n"
    "Row 1: Sc in 2nd ch from hook, skip next 4 ch, fan in next ch, skip next 4 ch, sc in last ch, turn. (1 fan, 2 sc)\n"
)


@pytest.mark.parametrize(
    "place", ["st or sp indicated", "ch sp or lp indicated", "ch-2 sp or st stated", "indicated stitch or chain space"]
)
def test_where_a_group_goes_is_no_part_of_it(place: str) -> None:
    """The places that a definition leaves to the row."""
    assert counts(check(SHELLS.format(place=place))) == [8]


@pytest.mark.parametrize("told", ["then as cl but with 2 dc only", "work as for cluster, with 2 dc"])
def test_a_beginning_cluster_told_by_the_cluster(told: str) -> None:
    """It is the one stitch that it stands for."""
    report = check(
        "Flower\n\nUS terms\n\nSPECIAL STITCHES\n"
        "Cluster (cl): (yo, insert hook in st, yo and draw up a loop, yo and draw through 2 loops) 3 times in same st, yo and draw through all loops.\n"
        f"Beginning cluster (beg cl): ch 2, {told}.\n\nFLOWER\nRnd 1: 8 sc in ring. (8)\n"
        "Rnd 2: Beg cl in same st, ch 2, *cl in next st, ch 2; rep from * around, join. (8 cl)\n"
    )
    assert counts(report) == [8, 8]


def test_a_beginning_of_a_mere_group_stays_unread() -> None:
    """ "As cl but with 2 dc" of a cluster that is three stitches does not say how many stitches it is."""
    report = check(
        "Flower\n\nUS terms\n\nSPECIAL STITCHES\nCluster (cl): 3 dc in same sp.\n"
        "Beginning cluster (beg cl): ch 3, then as cl but with 2 dc only.\n\nFLOWER\nRnd 1: 8 sc in ring. (8)\n"
        "Rnd 2: Beg cl in same st, ch 2, *cl in next st, ch 2; rep from * around, join.\n"
    )
    assert counts(report)[-1] is None


@pytest.mark.parametrize(
    "note",
    ["Work 3 ch at the start of every row for the first tr.", "Make 3 ch at the beginning of a row for the first tr."],
)
def test_a_chain_for_the_first_stitch(note: str) -> None:
    """What the chain is made for says that it counts."""
    report = check(
        f"Mat\n\nUK terms\n\nNOTES\n{note}\n\nMAT\nMake 12 ch.\nRow 1: 1 tr in 4th ch from hook, 1 tr in each ch to end, turn.\n"
        "Row 2: 3 ch, miss first tr, 1 tr in each tr to end, working last tr in top of 3 ch.\n"
    )
    assert counts(report) == [10, 10]
    assert not [rule for rule, _ in all_findings(report) if rule == "turning-chain-unsaid"]


@pytest.mark.parametrize(
    "behind",
    [
        "turn.\nCont on these 10 sts only.\nRow 3: Ch 1, sc in each st across. (10)\n",
        "turn. (10)\nWork on these sts for the first side.\nRow 3: Ch 1, sc in each st across. (10)\n",
        "fasten off. (10)\nSkip next 10 sts, join yarn in next st.\nRow 3: Ch 1, sc in same st and in each st across. (10)\n",
    ],
)
def test_stitches_left_on_purpose(behind: str) -> None:
    """The next sentence goes on with these stitches alone, or the other side is joined: nothing to ask."""
    report = check(f"Top\n\nUS terms\n\nTOP\nRow 1: Fsc 30, turn. (30)\nRow 2: Ch 1, sc in next 10 sts, {behind}")
    assert not [rule for rule, _ in all_findings(report) if rule == "places-left-over"]


def test_thousands_in_a_list_over_sizes() -> None:
    """ "980 (1,080, 1,190)" has one number a size."""
    report = check(
        "Vest\n\nUS terms\n\nSizes: S (M, L)\nYarn: 980 (1,080, 1,190) yds worsted\n\nBODY\nCh 50 (56, 62), join.\n"
        "Rnd 1: Ch 1, sc in each ch around. 50 (56, 62) sc.\nRnd 2: Ch 1, sc in each of 50 (56, 62) sts. 50 (56, 62) sc.\n"
    )
    assert not [rule for rule, _ in all_findings(report) if rule == "size-list-length"]


def test_sizes_with_blanks_between() -> None:
    """ "Sizes XS/S M L XL" heads a table, and names four sizes."""
    report = check(
        "Skirt\n\nUS terms\n\nMaterials\nSizes XS/S M L XL\nMain color 4 5 5 6 balls\n\nSKIRT\nCh 50 (56-62-68), join.\n"
        "1st rnd: Ch 1. 1 sc in each ch around. 50 (56-62-68) sc.\n2nd rnd: Ch 1. 1 sc in each sc around. 50 (56-62-68) sc.\n"
    )
    assert report.pattern.sizes == ("XS/S", "M", "L", "XL")
    assert not [rule for rule, _ in all_findings(report) if rule == "sizes-unnamed"]


def test_so_many_balls_name_no_hook() -> None:
    """ "C Sand x 2" under the hook is an amount of yarn."""
    report = check(
        "Rug\n\nUK terms\n\nYarn\nA Fern x 3\nB Sand x 2\n\nHook\n4mm\n\nRUG\nMake 10 ch.\nRow 1: 1 dc in 2nd ch from hook, 1 dc in each ch to end.\n"
    )
    assert not [rule for rule, _ in all_findings(report) if rule == "hook-size-disagrees"]


@pytest.mark.parametrize(
    "place",
    [
        "any st after a corner",
        "first sc after any corner sp",
        "the next st following a ch-2 sp",
        "first st after any ch-2 sp",
    ],
)
def test_a_round_begun_beside_a_corner(place: str) -> None:
    """Each side is worked from its first stitch to the corner behind it."""
    report = check(
        "Tile\n\nUS terms\n\nTILE\nRnd 1: (3 sc in ring, ch 2) 4 times, join. Fasten off. (12)\n"
        f"Rnd 2: Join B in {place}, ch 1, *sc in next 3 sts, (sc, ch 2, sc) in corner sp; rep from * 3 more times, join. Fasten off. (20)\n"
        f"Rnd 3: Join A in {place}, ch 1, *sc in next 5 sts, (sc, ch 2, sc) in corner sp; rep from * 3 more times, join. (28)\n"
    )
    assert counts(report) == [12, 20, 28]
    assert not corrections(report)


@pytest.mark.parametrize("place", ["st to the left of any corner", "first st after Rnd 1", "first st after the marker"])
def test_a_round_begun_elsewhere(place: str) -> None:
    """Where that is, is not read: nothing is counted from a place that was guessed."""
    report = check(
        "Tile\n\nUS terms\n\nTILE\nRnd 1: (3 sc in ring, ch 2) 4 times, join. Fasten off. (12)\n"
        f"Rnd 2: Join B in {place}, ch 1, *sc in next 3 sts, (sc, ch 2, sc) in corner sp; rep from * 3 more times, join.\n"
    )
    assert counts(report)[-1] is None
