"""Wordings met in print whose clauses were once misread without a word, and how a clause is shown to an editor.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

SQUARE = (
    "Rnd 1: Ch 4, join to form ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more, "
    "join. (12 dc, 4 ch-2 sps)\n"
)
RING_12 = "Rnd 1: 12 sc in magic ring. (12)\n"
ROW_20 = "Row 1: Fhdc 20, turn. (20)\n"
POINT = "Ch 12.\nRow 1: Sc in 2nd ch, sc in each of next 4 ch, 3 sc in next ch, sc in next 5 ch. (13)\n"


def last(rows: str, terms: str = "US") -> int | None:
    """The count of the last row of a piece."""
    return counts(check(f"Mat\n\n{terms} terms\n\nMAT\n{rows}\n"))[-1]


@pytest.mark.parametrize(
    ("rows", "made"),
    [
        (
            SQUARE
            + "Rnd 2: Sl st to first ch-2 sp, *(dc3tog cluster, ch 2) twice in ch-2 sp; rep from * around, join.",
            8,
        ),
        (RING_12 + "Rnd 2: *Dc cluster in next st, ch 2; rep from * around, join.", 12),
        (
            RING_12 + "Rnd 2: *Tr cluster in next st, ch 2; rep from * around, join.\n"
            "Rnd 3: *Tr cluster in tr cluster, ch 3; rep from * around, join.",
            12,
        ),
    ],
)
def test_stitch_named_before_a_cluster_is_what_it_is_made_of(rows: str, made: int) -> None:
    """ "Dc cluster" and "dc3tog cluster" are one stitch, not two."""
    assert last(rows) == made


@pytest.mark.parametrize("name", ["cl", "cluster", "cluster st"])
def test_short_form_of_a_cluster_names_the_same(name: str) -> None:
    """ "Cl" names the clusters of the row below, though no list says so."""
    rows = (
        RING_12 + "Rnd 2: *Cluster over next 2 sts, ch 1; rep from * around, join. (6 cl, 6 ch-1 sps)\n"
        f"Rnd 3: 2 sc in each {name} and sp around. (24)\n"
    )
    report = check(f"Mat\n\nUS terms\n\nMAT\n{rows}")
    assert counts(report)[-1] == 24
    assert not [rule for rule, _ in all_findings(report, ("query",)) if rule == "place-not-there"]


def test_star_behind_a_bracket_closes_the_star_before_it() -> None:
    """In "*4 dc, [dc, ch 2, dc]* repeat around" all between the stars is repeated, not the bracket alone."""
    assert last("Row 1: Fdc 20, turn. (20)\nRow 2: Ch 3, *dc 4, [dc, ch2, dc]* repeat around.") is None
    assert last("Row 1: Fdc 18, turn. (18)\nRow 2: *Dc 4, [dc, ch2, dc]* repeat around.") == 18


@pytest.mark.parametrize(
    "words",
    [
        "Into a magic ring work 3 ch (counts as 1st tr) 13 tr. Join.",
        "Into ring work 3 ch (counts as 1 tr), 13 tr, join.",
    ],
)
def test_all_that_follows_a_counted_chain_goes_into_the_ring(words: str) -> None:
    """ "13 tr" behind a chain that is said to count is work, not the printed count."""
    assert last(f"Round 1: {words}", "UK") == 14


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 3, turn, dc in ea sc making a 5 dc inc. in center st of 3 sc inc.", 17),
        ("Ch 1, turn, sc across working 3 sc increase in center st of previous 3 sc inc.", 15),
        ("Ch 1, turn, sc in 6 sts, 3 sc inc in next st, sc in 6 sts.", 15),
        ("Ch 1, turn, sc in 5 sts, 3 sc inc, sc in 5 sts.", 16),
        ("Ch 1, turn, sc across, working 3 sc in center st of the tassel.", None),
    ],
)
def test_number_of_an_increase_goes_into_its_one_place(words: str, made: int | None) -> None:
    """ "A 5 dc inc in center st" puts five into it; where a place is not known nothing is added to the run."""
    assert last(POINT + f"Row 2: {words}") == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 2 (counts as hdc), sk first hdc, hdc in next hdc across. Turn.", 20),
        ("Ch 1, sc in first 5 sts, hdc in next st across, turn.", 20),
        ("Ch 1, 2 hdc in next st across.", 40),
        ("Ch 1, *sc in next st, ch 1, skip next st across, turn.", None),
    ],
)
def test_next_stitch_across_is_each_stitch(words: str, made: int | None) -> None:
    """ "Hdc in next hdc across" goes into each of them to the row's end."""
    assert last(ROW_20 + f"Row 2: {words}") == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Sc in each st across, placing 2 sc in last st, (an increase).", 21),
        ("Sc 3, (an increase), sc 16.", None),
    ],
)
def test_an_increase_in_brackets_names_what_was_made(words: str, made: int | None) -> None:
    """ "(an increase)" behind two stitches in one place is no further one."""
    assert last(ROW_20 + f"Row 2: Ch 1, turn, {words}") == made


@pytest.mark.parametrize(
    ("clause", "said"),
    [
        ("(2 dc, ch 2, 2 dc) in next ch-2 sp", "2 dc, 2 chains, 2 dc, all in the next ch-2 space"),
        ("popcorn into 2nd of next 3 sc", "1 popcorn in the second sc of the next 3"),
        ("sc between shells", "1 sc in the gap between shells"),
        ("V-stitch = dc, ch 2, dc", "uses 1 place, makes 2 stitches and 1 ch-2 space"),
        ("dc in next ch, ch 1, dc in the ch skipped before it", "1 dc in the skipped chain: uses 1, makes 1"),
        ("Join with sl st in top of ch 3.", "join in the beginning or turning chain"),
    ],
)
def test_clause_is_said_in_plain_words(clause: str, said: str) -> None:
    """What `frogproof read` says of a clause."""
    from click.testing import CliRunner

    from lint.cli import commands

    out = CliRunner().invoke(commands, ["read", clause]).output
    assert said in [line.strip() for line in out.splitlines()]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc in next 9 sts, work next 2 sts together, sc in last 9 sts.", 19),
        ("2tog, sc to last 2 sts, 2tog.", 18),
        ("2 sts tog twice, sc 16.", 18),
        ("2 tog x 10.", 10),
        ("3 sts tog at each end, sc in each st between.", None),
        ("sc 9, ch 2 over next 2 sts, sc 9.", 18),
        ("sc in each st excluding the last 2.", 18),
    ],
)
def test_short_words_for_shaping(words: str, made: int | None) -> None:
    """ "2tog", "2 sts tog twice", chains over stitches, a run that stops short."""
    assert last(ROW_20 + f"Row 2: Ch 1, turn, {words}") == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("dec over every two sts.", 10),
        ("sc2tog over each 2 sts around.", 10),
        ("sc 2, dec over every 2 sts to last 2 sts, sc 2.", 12),
        ("2 sc in first st, then 1 sc in next, continue around.", None),
    ],
)
def test_over_and_over(words: str, made: int | None) -> None:
    """ "Over every two sts" goes on to the end; "continue around" behind single places does not say with what."""
    assert last(ROW_20 + f"Row 2: Ch 1, turn, {words}") == made


TAB = (
    "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)\n"
    "Rnd 4: Sc 7, ch 4, sk 4, sc 7. (14)\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Sc around, working 5 sc over the chain.", 19),
        ("Sc around, working 1 sc in each ch.", 18),
        ("Sc in each st and 4 sc in the ch-sp.", 18),
        ("Sc in each st, and 4 sc in the chain.", 18),
        ("Sc around (including the chain).", None),
    ],
)
def test_what_goes_over_a_chain_on_the_way(words: str, made: int | None) -> None:
    """A run around goes on behind the chain that it crosses; each chain of it takes what "each ch" says."""
    assert last(TAB + f"Rnd 5: {words}") == made


def test_chain_over_the_first_stitches_of_a_round_is_a_bridge() -> None:
    """ "Ch 4, skip 4" at a round's start stands for no stitch and is no turning chain: an opening."""
    rows = TAB.replace("Sc 7, ch 4, sk 4, sc 7. (14)", "Ch 4, skip 4, sc in next 14. (14 sc, 4 ch)")
    report = check(f"Mat\n\nUS terms\n\nMAT\n{rows}Rnd 5: Sc in each st and ch around. (18)\n")
    assert counts(report) == [6, 12, 18, 14, 18]
    assert not [rule for rule, _ in all_findings(report) if rule == "count-differs"]


@pytest.mark.parametrize("words", ["Continue increasing 6 sts per rnd as set.", "Inc 6 sts per round as before."])
def test_so_many_increases_a_round(words: str) -> None:
    """ "Increasing 6 sts per rnd" gains six in each round of a range."""
    rows = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"
    assert counts(check(f"Mat\n\nUS terms\n\nMAT\n{rows}Rnds 3-5: {words}\n")) == [6, 12, 18, 24, 30]


BACK = (
    "Ch 41.\nRow 1 (RS): 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn. 40 dc.\n"
    "Row 2: 1 ch (does not count as st), 1 dc in each dc to end, turn.\n"
)


@pytest.mark.parametrize("through", ["thro' back loop only", "thro the back loops", "thro’ back loop"])
def test_through_cut_short(through: str) -> None:
    """British leaflets write "thro'"."""
    assert last(BACK + f"Row 3: 1 ch, dc {through} to end.", "UK") == 40


def test_rows_number_on_from_a_band_that_yarn_is_joined_for() -> None:
    """ "Buttonband: rejoin yarn …" is the first row of the band, and "Row 2" behind it is in order."""
    rows = BACK + (
        "Row 3: 2 ch, htr in each st. Fasten off.\nButtonband: With RS facing, rejoin yarn at lower edge, work 30 dc evenly along "
        "front edge, turn.\nRow 2: 1 ch, 3 dc, *2 ch, miss 2 dc, 6 dc; rep from * twice more, 3 dc.\n"
    )
    report = check(f"Mat\n\nUK terms\n\nBACK\n{rows}")
    assert counts(report)[-2:] == [30, 24]
    assert not [rule for rule, _ in all_findings(report) if rule == "row-number-out-of-order"]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Work even until piece measures 10 cm.", 19),
        ("Work even for 4 in.", 19),
        ("Work straight until 12 rows have been worked.", 19),
        ("Work even in patt until piece measures 10 cm.", None),
    ],
)
def test_work_even_keeps_the_number_of_stitches(words: str, made: int | None) -> None:
    """How long a piece is worked even changes no count; a pattern of stitches may."""
    assert last(ROW_20 + f"{words}\nNext row: Ch 1, sc2tog, sc to end.") == made


def test_yoke_with_a_narrower_back_is_no_uneven_square() -> None:
    """Two sleeves alike, a back and a front unlike: nothing is asked about the sides between the corners."""
    rows = (
        "Ch 60, join to form a ring.\nRnd 1: Ch 1, dc in each ch around, join. (60)\n"
        "Rnd 2: Ch 3, dc in next 8 sts, (dc, ch 2, dc) in next st, dc in next 12 sts, (dc, ch 2, dc) in next st, dc in next 18 sts, "
        "(dc, ch 2, dc) in next st, dc in next 12 sts, (dc, ch 2, dc) in next st, dc in next 5 sts, join. (64 dc)\n"
    )
    report = check(f"Yoke\n\nUS terms\n\nYOKE\n{rows}")
    assert counts(report)[-1] == 64
    assert not [rule for rule, _ in all_findings(report) if rule == "corners-differ"]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("working 3 sc in last ch", 15),
        ("working 2 sc in the last ch", 14),
        ("working 3 sc in the chain", None),
    ],
)
def test_last_chain_is_no_run_over_chains(words: str, made: int | None) -> None:
    """Several stitches into the last chain go into that one alone."""
    assert last(f"Ch 14.\nRow 1: Sc in 2nd ch from hook and in each ch across, {words}.") == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("1 sc inc in next st, sc to end", 21),
        ("1 hdc inc in each st", 40),
        ("sc in next 9 sts, a 4 dc inc in next st, sc to end", 23),
        ("3 sc inc in first and last st, sc in all others", 24),
        ("0 sc inc in next st, sc to end", None),
    ],
)
def test_one_increase_is_two_stitches(words: str, made: int | None) -> None:
    """A number before "inc" is how many go into one place, but for one: that is how many increases."""
    assert last(ROW_20 + f"Row 2: Ch 1, {words}.") == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("The other 8 sts are the thumb and wait.", 12),
        ("The remaining 8 sts will be left for the heel.", 12),
        ("The remaining 8 sts are increased.", None),
        ("The remaining 8 sts are halved.", None),
    ],
)
def test_stitches_that_are_left_wait(words: str, made: int | None) -> None:
    """What is told of the others behind a turn may be work on them, and is then not passed over."""
    assert last(ROW_20 + f"Row 2: Ch 1, sc in next 12 sts, turn. {words}") == made
