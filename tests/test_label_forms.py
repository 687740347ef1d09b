"""Labels and counts in the many ways in which blogs, leaflets and spreadsheets set them."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, outcomes, worked_rows

_BALL = (
    ("1", "6 sc in magic ring", 6),
    ("2", "inc in each st", 12),
    ("3", "*sc in next st, inc; rep from * around", 18),
    ("4", "sc in each st around", 18),
    ("5", "*sc in next st, dec; rep from * around", 12),
    ("6", "dec 6 times", 6),
)
_STRIP = (
    ("1", "sc in 2nd ch from hook and in each ch across", 10),
    ("2", "ch 1, turn, sc in each st across", 10),
    ("3-5", "ch 1, turn, sc in each st across", 10),
    ("6", "ch 1, turn, inc, sc in next 8 sts, inc", 12),
    ("7 and 8", "ch 1, turn, sc in each st across", 12),
)


@pytest.mark.parametrize(
    "form",
    [
        "**Rnd {i}:** {w}. **({c})**",
        "**Rnd {i}** {w} ({c})",
        "__Round {i}__: {w}, _{c} sts_",
        "| Rnd {i} | {w} | {c} |",
        "Rnd {i}\t{w}\t{c}",
        "R{i} {w} ({c})",
        "{i}. {w} ({c})",
        "{i} - {w} ({c})",
        "Rnd {i}\n{w}\n({c})\n",
        "☐ Rnd {i}: {w} ({c})",
        "[ ] Rnd {i}: {w} ({c})",
        "[Rnd {i}] {w} [{c}]",
        "(Rnd {i}) {w} ({c})",
        "Rnd {i} → {w} → {c}",
        "Rnd #{i}: {w} ({c})",
        "Rnd No. {i}: {w} ({c})",
        "Rnd {i} = {w} = {c}",
        "Rnd {i} ({c}): {w}",
        "🌸 Rnd {i}: {w} 🧶 {c}",
        "Rnd {i} ..... {w} ..... {c}",
        "Rnd {i}: {w}\n{c} sts\n",
        "* Rnd {i}: {w} ({c})",
    ],
)
def test_rounds_of_a_ball(form: str) -> None:
    """Each way to set a round's label and count gives the same ball, and shows the one count that is wrong."""
    text = "Ball\nUS terms\n\nBODY\n" + "\n".join(form.format(i=i, w=w, c=c) for i, w, c in _BALL) + "\n"
    report = check(text)
    assert counts(report) == [c for _, _, c in _BALL]
    assert set(outcomes(report)) == {"agrees"}
    wrong = [(i, w, c + (i == "4")) for i, w, c in _BALL]
    report = check("Ball\nUS terms\n\nBODY\n" + "\n".join(form.format(i=i, w=w, c=c) for i, w, c in wrong) + "\n")
    assert outcomes(report).count("differs") == 1


@pytest.mark.parametrize(
    "form",
    [
        "**Row {i}** {w} ({c})",
        "R{i} - {w} - {c}",
        "[Row {i}] {w} [{c}]",
        "{i}. {w}. ({c})",
        "{i} – {w} – {c} sts",
        "✨ Row {i} ✨ {w} ✨ {c} sts",
        "Row {i} ({c} sts): {w}.",
        "Row {i}: {w}.\n{c} sts\n",
        "On row {i}: {w}. ({c})",
        "Row {i}\t{w}\t{c} sts",
        "{i}\t{w}\t{c}",
        "Row {i}: {w}. Sts: {c}",
        "Row {i}: {w}, {c} sts",
        "Rw {i}: {w}. ({c})",
        "○ Row {i} ○ {w}. ({c})",
        "    Row {i}    {w}    {c} sts",
    ],
)
def test_rows_of_a_strip(form: str) -> None:
    """Ranges and pairs of rows too."""
    text = "Strip\nUS terms\n\nCh 11.\n" + "\n".join(form.format(i=i, w=w, c=c) for i, w, c in _STRIP) + "\n"
    report = check(text)
    assert [made for made in counts(report) if made != 0] == [10] * 5 + [12] * 3
    assert [one for one in outcomes(report) if one != "not-stated"] == ["agrees"] * 8


def test_a_gauge_is_no_row() -> None:
    """ "Rnds 1-3 = 4 in" is a gauge; "Rnd 1 = 6 sc in ring = 6" a round."""
    report = check("US terms\nGauge: Rnds 1-3 = 4 in\n\nBALL\nRnd 1 = 6 sc in ring = 6\nRnd 2 = 2 sc in each st = 12\n")
    assert counts(report) == [6, 12]


def test_digits_of_other_scripts() -> None:
    """Digits of another script are digits; those of a script that is not known stop a row and nothing else."""
    report = check("US terms\nBALL\nRnd \u0661: 6 sc in ring (\u0666)\nRnd 2: 2 sc in each st (\u0661\u0662)\n")
    assert counts(report) == [6, 12]
    assert counts(check("US terms\nBALL\nRnd 1: 6 sc in ring (6)\nRnd 2: sc in next \U00010d45 sts (6)\n")) == [6, None]
    assert counts(check("US terms\nBALL\nRnd 1: 6 sc in ring (6)\nRnd 2: sc in next \ua8d5\U00010d41 sts (6)\n")) == [
        6,
        None,
    ]


@pytest.mark.parametrize(
    "words",
    [
        "R1 to R4 make a flat circle.",
        "Rounds 1-2 make a circle 3¾ in in diameter.",
        "Rnds 1 and 2 create a small oval.",
        "R1 and R2 make a flat circle, R3 a scalloped edge.",
        "Rounds 1 to 2 make a disc; Round 3 adds a narrow rim.",
    ],
)
def test_what_some_rows_come_to_is_no_row(words: str) -> None:
    """A sentence that says what shape rows make is told of them and works nothing."""
    report = check(f"Mat\nUS terms\n\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each sc around. (12)\n{words}\n")
    assert counts(report) == [6, 12]


@pytest.mark.parametrize(
    "words",
    ["Rounds 3-4 make a ball stitch in each st around. (12)", "Rounds 3-4 make a small circle with 6 more sc. (12)"],
)
def test_rows_whose_work_begins_with_a_shape_are_not_lost(words: str) -> None:
    """Where more is said than a shape and its size, the rows may be work: told as not understood, and not passed over."""
    report = check(f"Mat\nUS terms\n\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each sc around. (12)\n{words}\n")
    assert outcomes(report) == ["agrees", "agrees", "not-recomputed", "not-recomputed"]


def test_a_round_that_makes_a_ring_is_a_row() -> None:
    """ "Rnd 1: Make a magic circle, 6 sc in circle." works six stitches."""
    report = check("Mat\nUS terms\n\nRnd 1 Make a magic circle, 6 sc in circle. (6)\nRnds 2-3 make 6 sc around. (6)\n")
    assert counts(report)[:1] == [6]


def test_row_numbers_in_square_brackets() -> None:
    """ "[4-6] sc in each st": the rounds of a toy by bare numbers in brackets, which are no lists over sizes."""
    words = "".join(f"[{number}] {work} ({count})\n" for number, work, count in _BALL[:3])
    report = check(f"Ball\n\nBALL\n{words}[4-6] sc in each st (18)\n[7] (sc 1, dec) x 6 (12)\n")
    assert counts(report) == [6, 12, 18, 18, 18, 18, 12]
    assert not report.pattern.sizes


def test_bracketed_row_numbers_beside_lists_over_sizes() -> None:
    """The brackets of a label are not those of a size."""
    rows = "[1] 6 (8) sc in magic ring [6 (8)]\n[2] 2 sc in each st [12 (16)]\n[3] sc in each st [12 (16)]\n"
    report = check(f"Ball\nUS terms\nSizes: S (M)\n\nBALL\n{rows}")
    assert [counts(report, size) for size in (0, 1)] == [[6, 12, 12], [8, 16, 16]]


@pytest.mark.parametrize(
    "label", ["Rnd 3, second half only:", "Rnd 3, every other st:", "3rd rnd, once over:", "Rnd 3, decreasing:"]
)
def test_labels_with_words_that_change_the_work_stop_their_row(label: str) -> None:
    """A label that says which stitches or how often is not understood; its row keeps its number, and no row is missed."""
    rows = f"Rnd 1: 6 sc in ring (6 sc)\nRnd 2: 2 sc in each sc (12 sc)\n{label} Sc in each sc around.\nRnd 4: sc in each sc (12 sc)\n"
    report = check(f"Ball\nUS terms\n\nBALL\n{rows}")
    assert outcomes(report)[:3] == ["agrees", "agrees", "not-recomputed"]
    assert corrections(report) == []


def test_a_number_of_rounds_more_is_no_label() -> None:
    """ "2 more rounds: …" tells how many rounds there are; none of them is round 2."""
    rows = "Rnd 1: 6 sc in ring (6 sc)\nRnd 2: 2 sc in each sc (12 sc)\n2 more rounds: sc in each sc around.\n"
    assert corrections(check(f"Ball\nUS terms\n\nBALL\n{rows}")) == []


def test_a_remark_ends_before_the_turn() -> None:
    """ "…, taking your time, turn." turns the work."""
    rows = "Row 1: Sc in 2nd ch from hook and in each ch across, taking your time, turn. (10)\n"
    report = check(f"Strip\nUS terms\n\nSTRIP\nCh 11.\n{rows}")
    assert any(type(step).__name__ == "Turn" for step in report.pattern.parts[0].rows[-1].steps)


TALLIED = """Tarn Hat

US terms

ch = chain, sc = single crochet, sl st = slip stitch, st = stitch

Ch 18, join with sl st to first ch.
Round 1: Sc in each ch around. (18 sc)
Round 2: Sc in each st around. (18 sc)
"""


@pytest.mark.parametrize(
    ("rows", "numbers"),
    [
        (
            "5 rounds: sc in each st around.\nRound 8: [sc in next 4 sts, 2 sc in next st] 3 times.\n",
            [1, 2, 3, 4, 5, 6, 7, 8],
        ),
        (
            "2 rounds: sc in each st around.\n3 rounds: sc in each st around.\nRound 8: sc in each st around.\n",
            list(range(1, 9)),
        ),
        ("5 rounds: sc in each st around.\n", [1, 2, 3, 4, 5, 6, 7]),
        (
            "3 rounds: sc in each st around.\n4 rounds: sc in each st around.\nRound 5: sc in each st around.\n",
            [1, 2, 3, 4, 5],
        ),
        ("3 rounds: sc in each st around.\nRound 4: sc in each st around.\n", [1, 2, 3, 4]),
        ("3 rounds: sc in each st around.\nRound 6: sc in each st around.\n", [1, 2, 3, 4, 5, 6]),
    ],
)
def test_a_number_of_rounds_or_the_number_of_one(rows: str, numbers: list[int]) -> None:
    """ "5 rounds:" are five of them, unless the numbers around it lead to round 5; nothing is out of order then."""
    report = check(TALLIED + rows)
    assert [row.number for row in worked_rows(report)] == numbers
    assert all(cell is not None for cell in counts(report))
    assert not [one for one in all_findings(report) if one[0] == "row-number-out-of-order"]


@pytest.mark.parametrize(
    "rows", ["3 rounds: sc in each st around.\n", "4 rounds: sc in each st around.\nRound 6: sc in each st around.\n"]
)
def test_where_neither_can_be_told_the_row_is_not_understood(rows: str) -> None:
    """ "3 rounds" behind Round 2 with nothing after it may be round 3 or three more."""
    assert outcomes(check(TALLIED + rows))[2] == "not-recomputed"


def test_a_range_with_its_letter_and_bracket_twice() -> None:
    """ "R.3) – R.5)" are the rounds from 3 to 5."""
    text = "Ball\n\nUS terms\n\nBALL\nR.1) 6 sc in magic ring (6)\nR.2) 6 inc (12)\nR.3) – R.5) 12 sc (12)\nR.6) 6 dec (6)\n"
    assert counts(check(text)) == [6, 12, 12, 12, 12, 6]
    assert not corrections(check(text))


@pytest.mark.parametrize("words", ["Work same as Row 2.", "Same as Row 2.", "Work the same as Row 2. (12)"])
def test_rows_worked_the_same_as_another(words: str) -> None:
    """All the rows of the label are the row that is named."""
    text = f"Pad\n\nUS terms\n\nPAD\nRow 1: Fsc 12, turn. (12)\nRow 2: Ch 1, sc in each st across, turn. (12)\nRows 3-6: {words}\n"
    assert counts(check(text)) == [12] * 6
