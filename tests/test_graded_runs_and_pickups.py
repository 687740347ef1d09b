"""Rows told by number and run, stitches left in brackets, free loops of chains, pick-ups, tubes; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import check

_SOCK = "Test sock\nUS terms\n\nSOCK\nCh 24, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. (24 sc)\n{}\n"


def _made(text: str) -> list[int | None]:
    return [row.cells[0].made and row.cells[0].made.stitches for row in check(text).ledger.rows]


@pytest.mark.parametrize(
    "words",
    [
        "Crochet 3 rounds with 1 sc in each sc.",
        "Work 3 more rnds of 1 sc in each st around.",
        "Work 3 rounds, working sc in each st around. (24 sc)",
    ],
)
def test_so_many_rounds_with_one_run(words: str) -> None:
    """Each of them has a stitch in each."""
    assert _made(_SOCK.format(words))[2:] == [24, 24, 24]


@pytest.mark.parametrize(
    "words", ["Crochet 3 rounds with 2 sc in each sc.", "Work 3 rows of sc in each st, inc 1 st somewhere."]
)
def test_rounds_of_which_more_is_said(words: str) -> None:
    """Two in each, or shaping besides, is not that run: nothing is made up."""
    assert _made(_SOCK.format(words))[-1] is None


_HEEL = "Test heel\nUS terms\n\nHEEL\nCh 17.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (16 sc)\nRow 2: Ch 1, sc in next 11 sc, {}\n"


@pytest.mark.parametrize("told", ["turn (5 sc left unworked). (11 sc)", "turn. (5 sts remain unworked) (11 sc)"])
def test_what_is_left_in_brackets(told: str) -> None:
    """What a bracket says to be left is left on purpose, and is no count."""
    report = check(_HEEL.format(told))
    assert "places-left-over" not in {finding.rule for finding in report.findings}
    assert report.ledger.rows[-1].cells[0].outcome.value == "agrees"


def test_a_count_in_brackets_leaves_nothing() -> None:
    """A figure without the word for what is left counts the row."""
    report = check(_HEEL.format("turn. (5 sc)"))
    assert "places-left-over" in {finding.rule for finding in report.findings}
    assert report.ledger.rows[-1].cells[0].outcome.value == "differs"


_NECK = _SOCK.format("Rnd 2: Ch 1, sc in each sc around, join. Fasten off.") + "\nEDGING\n{}\nRnd 1: Ch 1, {}, join.\n"


@pytest.mark.parametrize(
    ("joined", "words", "made"),
    [
        ("Join yarn in free loop of first foundation ch.", "sc in free loop of each ch around", 24),
        ("Join yarn at the neck.", "sc in free loops of foundation ch around", 24),
        ("Join yarn at the neck.", "sc in free loop of each ch around", None),
    ],
)
def test_free_loops_of_chains(joined: str, words: str, made: int | None) -> None:
    """All chains of the foundation where it is named, here or where yarn is joined; else it may be any chain."""
    assert _made(_NECK.format(joined, words))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Rnd 1: Ch 1, pick up and sc 30 sts evenly around armhole, join.", 30),
        ("Rnd 1: Ch 1, pick up and work 30 sc evenly around the neck, join.", 30),
        ("Row 1: Ch 1, 5 sc along neck sts, 8 sc up side of neck, 12 sc across back neck sts, turn.", 25),
        ("Rnd 1: Ch 1, pick up and knit 30 sts around armhole, join.", None),
    ],
)
def test_stitches_picked_up(words: str, made: int | None) -> None:
    """ "Pick up and sc" is sc along that edge; what is knitted is not crocheted."""
    assert _made(_SOCK.format("Fasten off.") + f"\nBAND\nJoin yarn at the seam.\n{words}\n")[-1] == made


def test_a_cuff_closed_with_its_chain() -> None:
    """The last row held against the beginning chain makes a tube: its row ends go round."""
    text = (
        "Test cuff\nUS terms\n\nCUFF\nCh 7.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (6 sc)\n"
        "Rows 2-20: Ch 1, sc in each st across, turn.\nHold the last row against the starting chain and sl st through both layers.\n\n"
        "HAND\nRnd 1: Ch 1, sc in each row end around, join.\n"
    )
    assert _made(text)[-1] == 20


_BACK = (
    "Test vest\nUS terms\n\nBACK\n\nRibbing\nCh 7.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (6 sc)\n"
    "Rows 2-20: Ch 1, sc in each st across, turn. (6 sc)\n\nMain Panel\nRow 1: Ch 1, sc in each row end across, turn. (20 sc)\n"
    "Rows 2-12: Ch 1, sc in each st across, turn. (20 sc)\n\nFRONT\n{}\n"
)


def test_a_row_of_which_section() -> None:
    """Two sections have a Row 10: up to which of them is not said, and not made up."""
    assert _made(_BACK.format("Work same as Back through Row 10."))[-1] is None


@pytest.mark.parametrize("words", ["Work same as Ribbing through Row 10.", "Work as for Ribbing to end of Row 10."])
def test_through_a_row(words: str) -> None:
    """ "Through Row 10" is up to its end."""
    assert _made(_BACK.format(words))[-10:] == [6] * 10


_CROWN = "Test hat\nUS terms\n\nCROWN\nRnd 1: 60 sc in magic ring. (60 sc)\nRnd 2: *Sc in next 8 sts, sc2tog; rep from * around. (54 sc)\n{}\n"


@pytest.mark.parametrize(
    "words",
    [
        "Continue in this way, working 1 st less between decreases on each round, until 36 sts remain.",
        "Cont decreasing in this manner, working 1 less st between decs each rnd until 36 sts remain.",
    ],
)
def test_runs_that_shrink_until_so_many_are_left(words: str) -> None:
    """Each round has a shorter run than the one before, down to the number that is said."""
    assert _made(_CROWN.format(words))[2:] == [48, 42, 36]


@pytest.mark.parametrize(
    "words",
    [
        "Continue in this way, working 1 st less between decreases on each round, until 35 sts remain.",
        "Continue in this way, working 1 st less between decreases on each round, until hat fits.",
    ],
)
def test_runs_that_never_come_to_it(words: str) -> None:
    """A number that the rounds pass by, or a length, leaves them not counted."""
    assert _made(_CROWN.format(words))[-1] is None


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Rnd 2: Ch 1, sc in each sc around, increasing 1 st, join. (25 sc)", 25),
        ("Rnd 2: Ch 1, sc in each sc around, decreasing 3 sts, join.", 21),
        ("Rnd 2: Ch 1, sc. in each sc. around, inc. 4 sts. evenly spaced, join.", 28),
        ("Rnd 2: Ch 1, sc in each sc around, increasing 1 st in each corner, join.", None),
    ],
)
def test_shaping_of_which_no_place_is_said(words: str, made: int | None) -> None:
    """Wherever it falls, a round has so many more; so many in each corner are not those."""
    assert _made(_SOCK.format(words))[-1] == made


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("2 sc. in each ch. 1 sp. around, join.", 24),
        ("sc. in each sp. around, join. 12 sc.", 12),
    ],
)
def test_a_stop_between_a_chain_and_its_length(words: str, made: int) -> None:
    """ "Ch. 1 sp." is a space of one chain; behind the join a figure is the row's count."""
    rows = (
        "Rnd 2: Ch 4 (counts as dc and ch 1), sk next sc, *dc in next sc, ch 1, sk next sc; rep from * around, join. (12 dc)\n"
        f"Rnd 3: Ch 1, {words}"
    )
    assert _made(_SOCK.format(rows))[-1] == made


@pytest.mark.parametrize(
    "line", ["Change to B and work along one edge of the brim.", "Working along one long edge of the brim,"]
)
def test_a_band_worked_along_one_edge(line: str) -> None:
    """ "One edge" is no stitch to work; the last row joined to the foundation makes the band a ring."""
    text = (
        "Test hat\nUS terms\n\nBRIM\nCh 7.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (6 sc)\n"
        "Rows 2-20: Ch 1, sc in each st across, turn.\nJoin last row to foundation with sl st to form a ring.\n\n"
        f"BODY\n{line}\nRnd 1: Ch 1, sc in each row end around, join. (20 sc)\n"
    )
    assert _made(text)[-1] == 20


def test_each_chain_of_the_foundation_from_below() -> None:
    """ "In each ch of the foundation chain" is its other side, when rows stand on it."""
    text = _SOCK.format("Rnd 2: Ch 1, 2 sc in each sc around, join. (48 sc) Fasten off.")
    assert (
        _made(text + "\nNECK\nJoin yarn at centre back.\nRnd 1: Ch 1, sc in each ch of the foundation chain, join.\n")[
            -1
        ]
        == 24
    )


def test_a_heading_over_a_change_of_colour() -> None:
    """A section's name right below a row, over the line that changes the yarn and a first row."""
    text = _SOCK.format(
        "Rnds 2-4: Ch 1, sc in each sc around, join.\nHand\nChange to B.\nRnd 1: Ch 1, hdc in each st around, join."
    )
    assert [part.name for part in check(text).pattern.parts] == ["SOCK", "Hand"]


def test_a_weight_in_a_list() -> None:
    """ "50 (100) 100 (150) 200 g" has five figures; four of them and a weight of balls are four."""
    text = (
        "Test top\nUS terms\n\nSizes: 2 (4) 6 (8) 10 years\n\nMaterials: cotton, {} g. Hook 4 mm\n\nTOP\nCh 21 (23) 25 (27) 29.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. 20 (22) 24 (26) 28 sc.\n"
        "Row 2: Ch 1, sc in each sc across, turn. 20 (22) 24 (26) 28 sc.\nRow 3: Ch 1, sc in next 20 (22) 24 (26) 28 sc, turn.\n"
    )
    rules = [
        {one.rule for one in check(text.format(figures)).findings}
        for figures in ("50 (100) 100 (150) 200", "50 (100) 100 (150)")
    ]
    assert ["size-list-length" in one for one in rules] == [False, True]


_V_NECK = """Test slipover
UK terms

FRONT
Make 21 ch.
1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn. 20 dc.
Shape armholes and divide for neck
1st row: 1 ch, 1 dc in each of next 8 dc, dc2tog, turn, leaving rem sts unworked. 9 sts.
Dec 1 st at neck edge on next 3 rows. 6 sts.
Cont straight until front {} back to shoulder. Fasten off.
With RS facing, rejoin yarn to next free st.
1st row: 1 ch, dc2tog, 1 dc in each dc to end, turn. 9 sts.
Complete to match first half, reversing shapings.
"""


@pytest.mark.parametrize("reached", ["matches", "measures same as"])
def test_a_half_completed_behind_rows_to_the_length_of_another_piece(reached: str) -> None:
    """A section's longer name, rows up to another piece's length, and the other half in all that the first one has."""
    report = check(_V_NECK.format(reached))
    assert [part.name for part in report.pattern.parts] == ["FRONT", "Shape armholes and divide for neck"]
    assert [row.cells[0].made.stitches for row in report.ledger.rows][-5:] == [6, 9, 8, 7, 6]


@pytest.mark.parametrize(
    ("words", "made"),
    [("of centre front st", 22), ("of the center st", 22), ("of the 3rd rib", None)],
)
def test_shaping_beside_the_middle_stitch(words: str, made: int | None) -> None:
    """At each side of it one is lost, which makes two."""
    assert _made(_SOCK.format(f"Rnd 2: Ch 1, sc in each sc around, dec 1 st at each side {words}, join."))[-1] == made


@pytest.mark.parametrize(
    "words", ["Work even until strip measures 10 in.", "Work straight until strip fits round the head."]
)
def test_row_ends_behind_rows_to_a_length(words: str) -> None:
    """Nobody knows how many they are."""
    text = (
        "Test strip\nUS terms\n\nSTRIP\nCh 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\n"
        f"Rows 2-6: Ch 1, sc in each st across, turn. (8 sc)\n{words}\n\nEDGE\nRow 1: Ch 1, sc in each row end across, turn.\n"
    )
    assert _made(text)[-1] is None
