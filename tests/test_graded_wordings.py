"""Wordings of graded pieces: shaping told over rows, rows in all, pieces like another, edges that are joined to later."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, worked_rows

BACK = """Osiery

Sizes: S (M, L)
UK terms

BACK
Make 40 (44, 48) ch.
Foundation row: 1 dc into 2nd ch from hook, 1 dc into each ch to end. 39 (43, 47) dc.
Next row: 1 ch, 1 dc into each dc to end.
"""


def made(report, size: int) -> list[int | None]:
    """The stitches of every row that the size works, foundation chains left out."""
    rows = [row for row in report.ledger.rows if row.label != "Foundation"]
    return [row.cells[size].made.stitches if row.cells[size].made else None for row in rows]


@pytest.mark.parametrize("words", ["until work has", "until there are", "until you have"])
def test_rows_in_all_where_no_row_has_a_number(words: str) -> None:
    """The rows met are counted: six in S and M, eight in L."""
    report = check(BACK + f"Rep last row {words} 6 (6, 8) rows in all.\n")
    assert [[n for n in made(report, size) if n] for size in range(3)] == [[39] * 6, [43] * 6, [47] * 8]


@pytest.mark.parametrize(
    "words",
    [
        "Dec 1 st at each end of next and every foll alt row until 33 (37, 39) sts rem.",
        "Dec 1 st at each end of next row and every alt row until 33 (37, 39) sts rem.",
    ],
)
def test_shaping_of_the_next_and_every_alternate_row(words: str) -> None:
    """39, 43 and 47 stitches lose two in every second row until 33, 37 and 39 are left."""
    report = check(BACK + words + "\n")
    assert [[n for n in made(report, size) if n][2:] for size in range(3)] == [
        [37, 37, 35, 35, 33],
        [41, 41, 39, 39, 37],
        [45, 45, 43, 43, 41, 41, 39],
    ]


@pytest.mark.parametrize("ending", ["", ", do not fasten off", ", but do not fasten off", ". Do not fasten off"])
def test_a_piece_like_a_numbered_one(ending: str) -> None:
    """ "Work as for Leg 1, but do not fasten off" works that leg's rows again."""
    leg = "Rnd 1: Ch 10 (12, 14), join with sl st to form a ring, ch 1, sc in each ch around. (10, 12, 14)\nRnd 2: Sc in each st around. (10, 12, 14)\n"
    text = f"Otter\n\nSizes: S (M, L)\nUS terms\n\nLEG 1\n{leg}Fasten off.\n\nLEG 2\nWork as for Leg 1{ending}.\n"
    report = check(text)
    assert [part.name for part in report.pattern.parts] == ["LEG 1", "LEG 2"]
    assert [made(report, size) for size in range(3)] == [[10] * 4, [12] * 4, [14] * 4]


@pytest.mark.parametrize("words", ["Work as for Back, reversing the stripes.", "Work the same as Back but in ridges."])
def test_a_piece_like_another_in_a_way_that_is_not_known_is_told(words: str) -> None:
    """Its rows are not recomputed, and nobody is left to think they were."""
    report = check(BACK + f"\nFRONT\n{words}\n")
    assert ("not-understood", 12) in all_findings(report)


def test_an_edge_that_rows_not_understood_may_have_left_is_not_run_out_of() -> None:
    """After rows that were not read, "miss 15 sts, rejoin yarn" may go on anywhere: no count, and no correction."""
    text = (
        BACK
        + """Next row: shape as you like across the neck.
Next row: 1 ch, 1 dc into each of first 12 (14, 16) sts, turn. 12 (14, 16) sts.
Fasten off.
Miss next 15 sts, rejoin yarn to next st.
Next row: 1 ch, 1 dc into same st, 1 dc into each dc to end. 12 (14, 16) sts.
"""
    )
    report = check(text)
    assert [rule for rule, _ in all_findings(report, ("correction",))] == []
    assert worked_rows(report)[-1].cells[0].made is None


def test_a_piece_run_in_before_a_label_without_a_sign() -> None:
    """ "First strap: Row 1 1ch, …" opens a piece, and Row 1 of it."""
    text = BACK + (
        "First strap: Row 1 1ch, 1dc in each of first 5 sts, turn. 5 dc\nRow 2 1ch, 1dc in each dc to end, turn.\n"
        "Rows 3-5; 3-6; 3-7 As row 2.\n"
    )
    report = check(text)
    assert [part.name for part in report.pattern.parts] == ["BACK", "First strap"]
    assert [len(made(report, size)) - made(report, size).count(None) for size in range(3)] == [7, 8, 9]


def test_a_shoulder_that_turns_early_beside_a_neck_that_is_joined_to_later() -> None:
    """What the first shoulder leaves is passed over and worked by the second: nothing to ask."""
    text = (
        BACK
        + """Next row: 1 ch, 1 dc into each of first 12 (14, 16) sts, turn. 12 (14, 16) sts.
Fasten off.
Miss next 15 sts, rejoin yarn to next st.
Next row: 1 ch, 1 dc into same st, 1 dc into each dc to end. 12 (14, 16) sts.
"""
    )
    report = check(text)
    assert [rule for rule, _ in all_findings(report, ("correction", "query"))] == []
    assert [made(report, size)[-1] for size in range(3)] == [12, 14, 16]
    alone = check(text[: text.index("Fasten off")])
    assert ("places-left-over", 10) in all_findings(alone)


def test_a_label_of_a_range_that_lacks_a_figure() -> None:
    """ "Rows 4-6 (7)" in three sizes is a list that is short, and told as such, once."""
    text = (
        BACK
        + "Next row: 1 ch, 1 dc into each dc to end. 39 (43, 47) dc.\nRows 4-6 (7): 1 ch, 1 dc into each dc to end.\n"
    )
    found = [one for one in check(text).findings if one.rule in ("size-list-length", "not-understood")]
    assert [(one.rule, text[one.span.start : one.span.end]) for one in found] == [("size-list-length", "6 (7)")]


@pytest.mark.parametrize(("cm", "wrong"), [("86   91   102", None), ("86   91   107", "107")])
def test_a_table_whose_lines_begin_with_their_unit(cm: str, wrong: str | None) -> None:
    """34, 36 and 40 inches are 86, 91 and 102 cm; the figure that is out is found at its place."""
    text = BACK.replace("UK terms", f"UK terms\n\nTo fit chest\nins  34   36   40\ncm   {cm}")
    found = [one for one in check(text).findings if one.rule == "measurement-disagrees"]
    assert [text[one.span.start : one.span.end] for one in found] == ([wrong] if wrong else [])


def test_a_row_that_differs_in_some_sizes_and_does_not_fit_in_others_tells_both() -> None:
    """87, 91 and 95 stitches: the repeat fits in S and L and makes one more than printed in L; in M two are left over."""
    text = """Quillow

Sizes: S (M, L)
US terms

YOKE
Ch 88 (92, 96).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. 87 (91, 95) sc
Row 2: Ch 1, sc in next 3 (5, 7) sts, *2 sc in next st, sc in next 3 sts; rep from * across, turn. 108 (112, 116) sc
"""
    (found,) = [one for one in check(text).findings if one.rule in ("count-differs", "repeat-does-not-fit")]
    assert (found.rule, found.weight.value, found.sizes) == ("count-differs", "correction", ("L",))
    assert "117 sc" in found.message and "In size M" in found.message


@pytest.mark.parametrize("opening", ["Starting at wrist, ch 10 (12, 14).", "Ch 10 (12, 14).", "Make 10 (12, 14) ch."])
def test_pieces_run_in_in_capitals_with_a_colon(opening: str) -> None:
    """ "LEFT MITT: Work same as Right Mitt." is a piece, and its rows are worked."""
    text = f"""Tansy Mitts

Sizes: S (M, L)
US terms

Abbreviations: ch, chain; sc, single crochet; st, stitch

RIGHT MITT: {opening}
Row 1: Sc in 2nd ch from hook and in each ch across, turn. 9 (11, 13) sc
LEFT MITT: Work same as Right Mitt.
"""
    report = check(text)
    assert [part.name for part in report.pattern.parts] == ["RIGHT MITT", "LEFT MITT"]
    assert [made(report, size) for size in range(3)] == [[9, 9], [11, 11], [13, 13]]


def test_a_row_called_by_the_name_in_its_brackets() -> None:
    """ "Rep dec row" is the row labelled "Next row (dec)"."""
    text = (
        BACK
        + "Next row (dec): 1 ch, dc2tog, 1 dc into each dc to end. 38 (42, 46) dc.\nRep dec row 1 (2, 2) times more. 37 (40, 44) dc.\n"
    )
    report = check(text)
    assert [[n for n in made(report, size) if n][-1] for size in range(3)] == [37, 40, 44]
