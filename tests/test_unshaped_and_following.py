"""Work told without its rows: straight until a length, shaping in the next rows and those that follow, rows over a part.

Truths worked out by hand; common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, worked_rows

from lint.ledger import Outcome

_BACK = (
    "Vest\nUK terms\n\nSizes: S (M, L)\n\nBACK\nMake 31 (33, 37) ch.\n"
    "Row 1: 1 dc in 2nd ch from hook and in each ch to end, turn. 30 (32, 36) dc\n"
)
_ROW_2 = "Row 2: 1 ch, 1 dc in each dc to end, turn.\n"
_LAST = "Row 50: 1 ch, 1 dc in each st to end, turn.\n"


def sizes(text: str, number: int = 3) -> list[list[int | None]]:
    """The stitches of every row that makes any, a list a size; rows that a size does not work are left out."""
    found: list[list[int | None]] = [[] for _ in range(number)]
    for row in check(text).ledger.rows:
        for size in range(number):
            cell = row.cells[min(size, len(row.cells) - 1)]
            made = cell.made.stitches if cell.made is not None else None
            if cell.outcome is not Outcome.NOT_WORKED and made != 0:
                found[size].append(made)
    return found


@pytest.mark.parametrize(
    "words",
    [
        "Carry on straight until Back measures 21 (22, 23.5) cm, ending with a RS row.",
        "Continue without further shaping until work measures 20 cm.",
        "Cont even in patt until armhole is 18 (19, 20) cm deep.",
        "Keep straight in dc for 12 (13, 14) cm.",
        "Work in patt as set until sleeve measures 30, 31, 32 cm.",
        "Work straight as Row 2 until piece measures 20 (21, 22) cm.",
        "Work even until piece is 20 cm long, or 5 cm less than desired length.",
    ],
)
def test_unshaped_until_a_length(words: str) -> None:
    """Nothing is gained or lost, however many rows that are; the row after it is counted."""
    for size, made in enumerate(sizes(_BACK + _ROW_2 + words + "\n" + _LAST)):
        assert set(made) == {(30, 32, 36)[size]} and len(made) >= 3, words


@pytest.mark.parametrize(
    "words",
    [
        "Carry on straight until 4 sts before the marker.",
        "Work straight until armhole measures 18 cm and dec 1 st at neck edge.",
        "Work straight until armhole measures 18 cm, at the same time dec 1 st at neck edge on every row.",
        "Cont in patt, increasing 1 st at each end of every 4th row, until sleeve measures 30 cm.",
    ],
)
def test_other_work_beside_a_length_is_not_passed_over(words: str) -> None:
    """Shaping told in the same sentence leaves the count open."""
    assert [made[-1] for made in sizes(_BACK + _ROW_2 + words + "\n" + _LAST)] == [None, None, None]


def test_in_pattern_needs_a_pattern_that_keeps_its_count() -> None:
    """With which row of a lace pattern the work ends, and so how many stitches there are, a length does not say."""
    lace = "Row 2: 1 ch, 1 dc in first dc, *1 ch, miss 1 dc, 1 dc in next dc; rep from * to last st, 1 dc in last dc, turn.\n"
    text = _BACK + lace + "Cont straight in patt until Back measures 30 cm.\n" + _LAST
    assert [made[-1] for made in sizes(text)] == [None, None, None]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Dec 1 st at each end of next row and 2 (2, 3) foll alt rows.", (24, 26, 28)),
        ("Dec 1 st at each end of next and foll 2 alt rows. 24 (26, 30) sts", (24, 26, 30)),
        ("Dec 1 st at armhole edge of next 3 (3, 5) rows, then on foll 2 alt rows.", (25, 27, 29)),
        ("Dec 1 st at each end of next 3 rows, then on every foll alt row until 20 (20, 24) sts rem.", (20, 20, 24)),
        ("Inc 1 st at each end of this and every foll 4th row until there are 34 (38, 42) sts.", (34, 38, 42)),
        ("Inc 1 st in this way at each end of every foll 6th row until there are 34 (36, 40) dc.", (34, 36, 40)),
    ],
)
def test_shaping_in_rows_that_follow(words: str, made: tuple[int, ...]) -> None:
    """How many rows follow is said, or what they come to."""
    assert tuple(one[-1] for one in sizes(_BACK + _ROW_2 + words + "\n" + _LAST)) == made


@pytest.mark.parametrize(
    "words",
    [
        "Dec 1 st at each end of next row and foll alt rows.",
        "Dec 1 st at each end of next 3 rows, then on every row.",
        "Dec 1 st at each end of next row and foll 4 alt rows until armhole measures 10 cm.",
    ],
)
def test_how_many_rows_follow_is_not_said(words: str) -> None:
    """Rows without a number, or with two ends, are not counted."""
    assert [made[-1] for made in sizes(_BACK + _ROW_2 + words + "\n" + _LAST)] == [None, None, None]


def test_shaping_from_a_labelled_row_on() -> None:
    """ "Row 3: … of this and every foll alt row" begins at Row 3, with an even row between."""
    words = "Row 3: Inc 1 st at each end of this and every foll alt row until there are 36 (36, 40) sts.\n"
    assert sizes(_BACK + _ROW_2 + words)[1] == [32, 32, 34, 34, 36]


@pytest.mark.parametrize(
    ("words", "rows"),
    [
        ("Work 1 row.", 1),
        ("Work 3 more rows.", 3),
        ("Work 2 rows straight in patt.", 2),
        ("Work 4 rows of dc in BLO.", 4),
    ],
)
def test_rows_told_by_their_number(words: str, rows: int) -> None:
    """Each of them is as the row below."""
    assert sizes(_BACK + _ROW_2 + words + "\n")[0] == [30] * (2 + rows)


def test_no_line_that_tells_rows_is_passed_over() -> None:
    """Under words that are no heading, and where their count can't be told, they are told as not counted."""
    text = _BACK + _ROW_2 + "Work 1 row in each shade.\n" + _LAST
    assert ("not-understood", 10) in all_findings(check(text), ("query",))
    text = _BACK + _ROW_2 + "Other shoulder\nWork 6 (6, 8) rows even in dc. Fasten off.\n"
    assert [len(made) for made in sizes(text)] == [8, 8, 10]


@pytest.mark.parametrize("row", ["Next row Ss in each of first 4 sts, 1 ch, 1 dc in each st to last 4 sts, turn.",
                                 "Next row (RS) 1 ch, miss first 4 sts, 1 dc in each st to last 4 sts, turn."])  # fmt: skip
def test_next_row_without_a_sign(row: str) -> None:
    """Leaflets print it in bold letters, with no colon behind it."""
    assert sizes(_BACK + _ROW_2 + row + " 22 (24, 28) sts\n")[2][-1] == 28


@pytest.mark.parametrize("line", ["Next row is worked in the back loops.", "Last row (30 sts)", "Next rows 5 to 7"])
def test_no_label_in_talk_of_rows(line: str) -> None:
    """Words on a row, and a count behind it, are no label of it."""
    labels = [row.label for row in worked_rows(check(_BACK + _ROW_2 + line + "\n"))]
    assert not any(label.startswith(("Next", "Last")) for label in labels)


_TUBE = (
    "Leggings\nUS terms\n\nBODY\nCh 40, join into a ring.\nRnd 1: Ch 1, sc in each ch around, join. (40 sc)\n"
    "Row 2: Ch 1, sc in next 16 sts, turn. (16 sc)\nRow 3: Ch 1, sc in each of the 16 sts, turn. (16 sc)\n"
)


@pytest.mark.parametrize("count", [" (40 sc)", ""])
def test_a_round_after_rows_over_a_part_of_one(count: str) -> None:
    """How the short rows are taken in again the words do not tell; what is printed is gone on from."""
    report = check(
        _TUBE + f"Rnd 4: Ch 1, sc in each st around, join.{count}\nRnd 5: Ch 1, sc in each sc around, join.\n"
    )
    assert counts(report)[-2:] == [None, 40 if count else None] and corrections(report)[3:] == []


def test_a_round_closed_by_a_chain_after_such_rows() -> None:
    """Where the printed count says so, the rows alone are joined into a round."""
    report = check(_TUBE + "Rnd 4: Ch 1, sc in each of the 16 sts, ch 4, join. (16 sc)\n")
    assert counts(report)[-1] == 16


def test_a_count_is_held_against_the_next_heading() -> None:
    """The first row under the next heading shows which of a printed and a made count is meant."""
    text = (
        "Hat\nUS terms\n\nCROWN\nR1: 8 sc in a magic ring. (8)\nR2: 2 sc in each st. (16)\n"
        "R3: [Sc in next st, 2 sc in next st] 7 times. (24)\n\nSIDES\nR1: Sc in each st. (24)\nR2: Sc in each st. (24)\n"
    )
    assert counts(check(text))[-2:] == [24, 24]


@pytest.mark.parametrize("call", ["Rep Rows 2 and 3, 1, 2, 2 times more.", "Rows 4-5, 7, 7: Rep Rows 2 and 3."])
def test_a_list_behind_the_last_of_some_rows(call: str) -> None:
    """The list over the sizes begins behind the row's number."""
    text = (
        "Vest\nUS terms\n\nSizes: S, M, L\n\nBACK\nCh 21, 23, 27.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20, 22, 26 sc)\n"
        "Row 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, sc2tog, sc in each st across, turn.\n"
    )
    assert [made[-1] for made in sizes(text + call + "\n")] == [18, 19, 23]
    assert "size-list-length" not in [rule for rule, _ in corrections(check(text + call + "\n"))]


@pytest.mark.parametrize("end", ["to end of armhole shaping", "until armhole shaping is complete"])
def test_as_another_piece_to_the_end_of_a_shaping(end: str) -> None:
    """With which row the shaping ends is not said, though the heading under which it stands is."""
    text = (
        _BACK + _ROW_2 + "\nSHAPE ARMHOLES\nRow 3: 1 ch, dc2tog, 1 dc in each st to end, turn.\n" + _LAST
        + f"\nFRONT\nWork as for Back {end}.\n"
    )  # fmt: skip
    assert sizes(text)[0][-1] is None


def test_sleeve_joined_at_the_underarm() -> None:
    """Its beginning chain counts as it does elsewhere, and the underarm is a place for stitches."""
    text = "Top\nUS terms\n\nSLEEVE\nJoin yarn at the underarm.\n"
    text += "Rnd 1: Ch 3 (counts as dc), dc in each of 18 sts of yoke, 2 dc in underarm, join in top of ch-3. (21 dc)\n"
    assert counts(check(text)) == [21] and "count-differs" not in [rule for rule, _ in corrections(check(text))]


def test_left_part_joined_where_the_middle_one_turned() -> None:
    """ "…, turn" leaves stitches though the words do not say so, if the next part is joined there."""
    text = (
        "Cardigan\nUS terms\n\nBODY\nCh 31.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (30 sc)\n\n"
        "RIGHT FRONT\nRow 1: Ch 1, sc in next 7 sts, turn, leave rem sts unworked. (7 sc)\nFasten off.\n\n"
        "BACK\nSkip next 2 sts of last row of body, join yarn in next st.\nRow 1: Ch 1, sc in same st and next 11 sts, turn. (12 sc)\nFasten off.\n\n"
        "LEFT FRONT\nSkip next 2 sts, join yarn in next st.\nRow 1: Ch 1, sc in same st and in each st to end, turn.\n"
        "Complete to match Right Front, reversing shaping.\n"
    )
    report = check(text)
    assert sizes(text, 1)[0] == [30, 7, 12, 7, None]
    assert "pieces-do-not-mirror" not in [rule for rule, _ in all_findings(report)]


def test_row_ends_named_before_they_are_worked() -> None:
    """A seamed band has as many row ends as rows."""
    text = (
        "Skirt\nUS terms\n\nBAND\nCh 7.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (6 sc)\n"
        "Rows 2-30: Ch 1, sc in each st across, turn.\nSl st the last row to the foundation chain.\n"
        "Rnd 1: Ch 1, working in the ends of the rows, sc in each row end around, join.\n"
    )
    assert counts(check(text))[-1] == 30


@pytest.mark.parametrize("where", ["of each 3-sc group", "at each corner"])
def test_centres_of_threes_in_a_flat_row(where: str) -> None:
    """Where a row shows no corners, the stitches made three to a place are those meant."""
    text = (
        "Band\nUS terms\n\nBAND\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n"
        "Row 2: Ch 1, sc in first 3 sc, 3 sc in next sc, sc in next 4 sc, 3 sc in next sc, sc in last 3 sc, turn. (16 sc)\n"
        f"Row 3: Ch 1, sc in each sc, working 3 sc in center sc {where}, turn.\n"
    )
    assert counts(check(text))[-1] == 20


def test_a_count_behind_a_dash_is_no_length() -> None:
    """ "in last 2 ch - 22 sts" works into two chains, and counts the row."""
    text = "Bag\nUS terms\n\nBASE\nCh 22, join into a ring.\nRnd 1: Ch 1, sc in next 20 ch, sc in last 2 ch - 22 sts\n"
    assert counts(check(text))[-1] == 22


def test_spaces_left_out_in_other_sizes() -> None:
    """One size's count that would be right with the spaces counted is a slip where the others leave them out."""
    text = (
        "Top\nUS terms\n\nSizes: S (M, L)\n\nYOKE\nCh 20 (24, 28), join into a ring.\nRnd 1: Ch 1, sc in each ch around, join. 20 (24, 28) sc\n"
        "Rnd 2: Ch 1, sc in first 2 sts, ch 4, skip 4 sts, sc in each st around, join. 16 (21, 24) sc\n"
    )
    assert ("count-differs", 9) in corrections(check(text))


def test_rows_of_other_sizes_make_no_line() -> None:
    """Rows that only larger sizes work are not set on the line of the smaller size's rows."""
    words = "Inc 1 st at each end of next row and every foll 3rd row until there are 38 (42, 50) sts.\n"
    report = check(_BACK + _ROW_2 + words + _LAST)
    assert "growth-uneven" not in [rule for rule, _ in all_findings(report)]


def test_turning_the_heel_is_a_heading() -> None:
    """It stands over rows, and does not turn the row before it."""
    text = (
        "Sock\nUS terms\n\nHEEL\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n"
        "Repeat Row 1 of Heel until the flap has 1 row.\nTurn Heel\nNext row: Ch 1, sc in next 4 sts, sc2tog twice, sc in next 4 sts, turn. (10 sc)\n"
    )
    assert "Turn Heel" in [part["name"] for part in _parts(text)]


def _parts(text: str) -> list[dict]:
    report = check(text)
    return [{"name": part.name} for part in report.pattern.parts]


_FLAT = "Scarf\nUS terms\n\nSCARF\nCh 31.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (30 sc)\n"


@pytest.mark.parametrize("count", [" (30 sc)", ""])
def test_a_row_across_all_after_short_rows(count: str) -> None:
    """Labelled as short rows, or by its count: the row goes over the stitches left as well, and is not called wrong."""
    short = "Short Row 1: Ch 1, sc in next 20 sts, turn. (20 sc)\nShort Row 2: Ch 1, sc in next 10 sts, turn. (10 sc)\n"
    report = check(
        _FLAT + short + f"Row 2: Ch 1, sc in each st across, turn.{count}\nRow 3: Ch 1, sc in each st across, turn.\n"
    )
    assert counts(report)[-2:] == [None, 30 if count else None]
    assert "count-differs" not in [rule for rule, _ in corrections(report)]


def test_a_shoulder_goes_on_over_its_own_stitches() -> None:
    """Rows over a part that is left for good are counted on that part alone."""
    text = (
        _FLAT
        + "Row 2: Ch 1, sc in next 12 sts, turn. (12 sc)\nRow 3: Ch 1, sc2tog, sc in each st across, turn. (12 sc)\n"
    )
    assert counts(check(text))[-1] == 11 and ("count-differs", 8) in corrections(check(text))


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("patt 12 (13, 15) sts, turn, leaving rem sts unworked. 12 (13, 15) sts", (12, 13, 15)),
        ("ss over 3 (3, 4) sts, 1 ch, patt to last 3 (3, 4) sts, turn.", (24, 26, 28)),
        ("1 ch, dc2tog, patt to last 2 sts, dc2tog, turn.", (28, 30, 34)),
        ("work in patt to last 5 sts, leave these sts unworked, turn.", (25, 27, 31)),
    ],
)
def test_worked_in_pattern_over_so_many(row: str, made: tuple[int, ...]) -> None:
    """Where the pattern's rows keep their number, so many stitches are worked in it as are named."""
    assert tuple(one[-1] for one in sizes(_BACK + _ROW_2 + f"Next row: {row}\n")) == made


def test_worked_in_a_lace_pattern() -> None:
    """What a lace row makes of so many stitches is not said."""
    lace = "Row 2: 1 ch, 1 dc in first dc, *1 ch, miss 1 dc, 1 dc in next dc; rep from * to last st, 1 dc in last dc, turn.\n"
    assert [made[-1] for made in sizes(_BACK + lace + "Next row: Patt to last 4 sts, turn.\n")] == [None, None, None]


def test_joined_in_the_round_after_work() -> None:
    """A chain that closes a round of work is a chain over a gap, and no ring to be worked into."""
    text = "Hat\nUS terms\n\nBRIM\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n"
    text += "Rnd 2: Ch 1, sc in each st across, ch 4, join with sl st to first sc to continue in the round.\n"
    assert counts(check(text + "Rnd 3: Ch 1, sc in each sc and in each ch around, join.\n"))[-1] == 24
