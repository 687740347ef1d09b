"""Passages that only some sizes work, and sizes that leave off before the others."""

from __future__ import annotations

import pytest
from helpers import check, worked_rows

HEAD = "Test hat\n\nUS terms\n\nSizes: {sizes}\n\nCROWN\nMake a magic ring.\nRnd 1: 6 sc in ring. (6 sc)\n"
GROW = "Rnd {}: 2 sc in each st around. ({} sc)\n"
PLAIN = "Rnd {}: Sc in each st around.\n"


def table(body: str, sizes: str = "S (M, L)") -> list[list[int | None]]:
    """The stitches of every row of every size; None where it is not worked."""
    return [
        [cell.made.stitches if cell.made is not None else None for cell in row.cells]
        for row in worked_rows(check(HEAD.format(sizes=sizes) + body))
    ]


@pytest.mark.parametrize(
    ("sizes", "gate", "worked"),
    [
        ("S (M, L)", "Sizes M and L only", [False, True, True]),
        ("S (M, L)", "Sizes M & L only:", [False, True, True]),
        ("S (M, L)", "For sizes M to L only:", [False, True, True]),
        ("S (M, L)", "Medium and Large sizes only", [False, True, True]),
        ("S (M, L)", "Size L only", [False, False, True]),
        ("S (M, L)", "L only:", [False, False, True]),
        ("S (M, L)", "Largest size only", [False, False, True]),
        ("Child (Teen, Adult)", "Adult size only", [False, False, True]),
        ("0-3 (3-6, 6-12) months", "For Sizes 3-6 and 6-12 months:", [False, True, True]),
        ("S/M (L/XL, 2X)", "Sizes L/XL and 2XL only:", [False, True, True]),
        ("XL (XXL, XXXL)", "Sizes 2X and 3X only", [False, True, True]),
    ],
)
def test_a_gate_shuts_the_other_sizes_out(sizes: str, gate: str, worked: list[bool]) -> None:
    """Rows under the line are worked by the sizes it names, and by no other; "All sizes" ends it."""
    body = f"{gate}\n{GROW.format(2, 12)}\nAll sizes\n{PLAIN.format(3)}"
    now = [12 if own else 6 for own in worked]
    assert table(body, sizes) == [[6] * 3, [12 if own else None for own in worked], now]


def test_a_gate_in_front_of_a_row_is_for_that_row() -> None:
    """On the row's own line the words hold for that row, or up to "All sizes" where that stands below."""
    alone = f"Size L only: {GROW.format(2, 12)}{PLAIN.format(3)}"
    assert table(alone) == [[6] * 3, [None, None, 12], [6, 6, 12]]
    until = f"Size L only: {GROW.format(2, 12)}{PLAIN.format(3)}All sizes: {PLAIN.format(4)}"
    assert table(until) == [[6] * 3, [None, None, 12], [None, None, 12], [6, 6, 12]]


def test_a_gate_in_the_label() -> None:
    """The label's brackets may name the sizes."""
    assert table("Rnd 2 (sizes M and L only): 2 sc in each st around.\n")[1] == [None, 12, 12]


def test_a_gate_ends_with_its_piece() -> None:
    """A new heading is for every size again."""
    body = f"Size L only\n{GROW.format(2, 12)}\nBRIM\nRnd 1: Sc in each st around.\n"
    assert table(body)[2] == [6, 6, 12]


def test_a_gate_ends_unsaid() -> None:
    """A row that prints a count for every size is for every size."""
    body = f"Size L only\n{GROW.format(2, 12)}Rnd 3: Sc in each st around. (6 (6, 12) sc)\n{PLAIN.format(4)}"
    assert table(body)[2:] == [[6, 6, 12]] * 2


def test_lists_of_the_sizes_that_are_meant() -> None:
    """In a passage for two sizes of three a list may have two numbers."""
    body = "Sizes M and L only\nRnd 2: 2 sc in each of next 3 (4) sts, sc in each st around. (9 (10) sc)\n"
    assert table(body)[1] == [None, 9, 10]


def test_a_size_is_done_and_goes_on_later() -> None:
    """A size that is done works nothing up to the row, or the piece, that it is sent to."""
    body = f"Size S: the increases are done; go on to Rnd 4.\n{GROW.format(2, 12)}{GROW.format(3, 24)}{PLAIN.format(4)}"
    assert table(body) == [[6] * 3, [None, 12, 12], [None, 24, 24], [6, 24, 24]]
    body = f"Size S: the crown is done.\n{GROW.format(2, 12)}\nBRIM\nRnd 1: Sc in each st around.\n"
    assert table(body) == [[6] * 3, [None, 12, 12], [6, 12, 12]]


@pytest.mark.parametrize("heading", ["SIZE {}", "Size {}:", "{}", "For size {} only"])
def test_a_whole_passage_for_each_size(heading: str) -> None:
    """Pieces under a heading for each size are worked by that size alone, whatever their row numbers."""
    text = "Test bag\n\nUS terms\n\nSizes: Small (Large)\n\n"
    for size, number in (("SMALL", 6), ("LARGE", 8)):
        text += f"{heading.format(size)}\n\nBASE\nMake a magic ring.\nRnd 1: {number} sc in ring.\nRnd 2: 2 sc in each st around.\n\n"
        text += "SIDE\nRnds 1-2: Sc in each st around.\n\n"
    rows = worked_rows(check(text))
    assert [[c.made.stitches if c.made else None for c in row.cells] for row in rows] == [
        *([n, None] for n in (6, 12, 12, 12)),
        *([None, n] for n in (8, 16, 16, 16)),
    ]


def test_sizes_that_the_pattern_does_not_have() -> None:
    """Rows under a gate whose sizes are unknown are not guessed."""
    body = f"Sizes 4 and 5 only\n{GROW.format(2, 12)}"
    rows = worked_rows(check(HEAD.format(sizes="S (M, L)") + body))
    assert {cell.outcome.value for cell in rows[1].cells} == {"not-recomputed"}


def test_a_size_sent_nowhere() -> None:
    """Where a size is sent to a row that is not there, what follows is not guessed."""
    body = f"Size S: go on to Rnd 9.\n{GROW.format(2, 12)}"
    rows = worked_rows(check(HEAD.format(sizes="S (M, L)") + body))
    assert {cell.outcome.value for cell in rows[1].cells} == {"not-recomputed"}


def test_the_list_of_sizes_is_no_gate() -> None:
    """Lines of the front matter that begin with a size's name shut nothing out."""
    text = HEAD.format(sizes="S (M, L)").replace("CROWN", "Size S: 30 cm\nSize L: 40 cm\n\nCROWN")
    assert [cell.outcome.value for cell in worked_rows(check(text))[0].cells] == ["agrees"] * 3


@pytest.mark.parametrize(
    "gate", ["*Sizes M and L only*", "[Sizes M, L only]", "** For sizes M & L only: **", "(sizes M to L only)"]
)
def test_a_gate_in_brackets_or_stars(gate: str) -> None:
    """What stands around the words changes nothing."""
    body = f"{gate}\n{GROW.format(2, 12)}*All sizes*\n{PLAIN.format(3)}"
    assert table(body) == [[6] * 3, [None, 12, 12], [6, 12, 12]]


def test_a_gate_behind_the_label() -> None:
    """The sizes may be named where the row's words begin; the row is for them alone."""
    body = f"Rnd 2: Size L only: 2 sc in each st around.\n{PLAIN.format(3)}"
    assert table(body) == [[6] * 3, [None, None, 12], [6, 6, 12]]


@pytest.mark.parametrize(
    "words",
    [
        "Size S stops here.",
        "End here for size S.",
        "S: stop here.",
        "For size S, fasten off.",
        "Size S is now complete.",
        "Smallest size ends here.",
        "Fasten off here for size S only.",
        "Size S stops after Rnd 2.",
        "Size S ends here. Continue to Rnd 9.",
    ],
)
def test_a_size_leaves_off(words: str) -> None:
    """A size that leaves off works none of the rounds below, up to the one that it is sent to, or the next piece."""
    sent = "Rnd 9" in words
    body = f"{GROW.format(2, 12)}{words}\n{GROW.format(3, 24)}{PLAIN.format(9)}\nBRIM\nRnd 1: Sc in each st around.\n"
    assert table(body) == [[6] * 3, [12] * 3, [None, 24, 24], [12 if sent else None, 24, 24], [12, 24, 24]]
    behind = body.replace(f"\n{words}", f" {words}")
    assert table(behind) == table(body)


def test_sizes_leave_off_within_a_range() -> None:
    """Rows of a range above, after the one that is named, are not worked by the sizes that stop there."""
    body = (
        "Rnds 2-4: 2 sc in each of next 3 sts, sc in each st around.\nSize S stops after Rnd 2. Size M after Rnd 3.\n"
    )
    assert table(body) == [[6] * 3, [9] * 3, [None, 12, 12], [None, None, 15]]


def test_unknown_sizes_leave_off() -> None:
    """Where it can't be told which sizes leave off, what is below is not guessed."""
    rows = worked_rows(
        check(HEAD.format(sizes="S (M, L)") + f"{GROW.format(2, 12)}Size 9 stops here.\n{PLAIN.format(3)}")
    )
    assert {cell.outcome.value for cell in rows[-1].cells} == {"not-recomputed"}


@pytest.mark.parametrize(
    ("gate", "worked"),
    [
        ("2nd and 3rd sizes only:", [False, True, True]),
        ("First size only", [True, False, False]),
        ("All sizes except S:", [False, True, True]),
        ("For all but the smallest size:", [False, True, True]),
        ("Sizes M (L) only", [False, True, True]),
        ("Cont for size L only:", [False, False, True]),
    ],
)
def test_gates_in_other_words(gate: str, worked: list[bool]) -> None:
    """Sizes may be named by their place, or by those that are shut out."""
    body = f"{gate}\n{GROW.format(2, 12)}All sizes continue as follows:\n{PLAIN.format(3)}"
    now = [12 if own else 6 for own in worked]
    assert table(body) == [[6] * 3, [12 if own else None for own in worked], now]


def test_the_other_sizes() -> None:
    """ "Other sizes" are those that the gates before shut out; without such a gate it is not known which they are."""
    body = f"Size S only:\n{PLAIN.format(2)}All other sizes:\n{GROW.format(2, 12)}Now for all sizes:\n{PLAIN.format(3)}"
    assert table(body) == [[6] * 3, [6, None, None], [None, 12, 12], [6, 12, 12]]
    assert table(f"All other sizes:\n{GROW.format(2, 12)}")[1] == [None, None, None]


@pytest.mark.parametrize(
    "words", ["For size L, rep Rnd 2 once more.", "Size L: work Rnd 2 once more.", "L only - Rep Rnd 2 once more."]
)
def test_a_sentence_for_one_size(words: str) -> None:
    """A line of work may be for one size alone."""
    rows = "Rnd 2: 2 sc in each of next 3 sts, sc in each st around. (9 sc)\n"
    report = check(HEAD.format(sizes="S (M, L)") + f"{rows}{words}\nNext rnd: Sc in each st around.\n")
    made = [[cell.made.stitches if cell.made else None for cell in row.cells] for row in report.ledger.rows]
    assert made[-2:] == [[None, None, 12], [9, 9, 12]]


@pytest.mark.parametrize("label", ["Rnd 2, size L only", "Rnd 2 - size L only", "Rnd 2 for size L only"])
def test_a_gate_within_the_label(label: str) -> None:
    """The sizes may stand between the label and its colon."""
    body = f"{label}: 2 sc in each st around.\n{PLAIN.format(3)}"
    assert table(body) == [[6] * 3, [None, None, 12], [6, 6, 12]]


@pytest.mark.parametrize(
    "words",
    [
        "For larger sizes, rep Rnd 2 once more.",
        "For larger sizes, work one more round as Rnd 2.",
        "Size 9 only: rep Rnd 2.",
    ],
)
def test_a_sentence_for_sizes_that_can_not_be_told(words: str) -> None:
    """What is below such a line is not guessed."""
    rows = worked_rows(check(HEAD.format(sizes="S (M, L)") + f"{GROW.format(2, 12)}{words}\n{PLAIN.format(3)}"))
    assert {cell.outcome.value for cell in rows[-1].cells} == {"not-recomputed"}


def test_label_lists_of_the_sizes_that_are_meant() -> None:
    """In a passage for two sizes of three a label's list may have two numbers."""
    body = "Sizes M and L only\nRnds 2-3 (4): Sc in each st around.\nNext 2 (3) rnds: Sc in each st around.\n"
    assert [sum(made is not None for made in size) for size in zip(*table(body), strict=True)] == [1, 5, 7]


@pytest.mark.parametrize(
    "words",
    [
        "Stop here for size S and go on to the Brim. M and L continue with Rnd 3.",
        "S: stop here, then skip to the Brim. The other sizes carry on.",
        "Size S ends here; go to Brim. M and L go on with the next rnd.",
        "For S move on to the Brim.",
        "Size S can skip to the Brim now.",
        "Jump to the Brim for size S.",
        "M and L continue. S: go to the Brim.",
    ],
)
def test_a_size_is_sent_on_in_a_sentence(words: str) -> None:
    """One sentence may say that a size leaves off and where it goes on, another that the others work the next round."""
    body = f"{GROW.format(2, 12)}{words}\n{GROW.format(3, 24)}\nBRIM\nRnd 1: Sc in each st around.\n"
    assert table(body) == [[6] * 3, [12] * 3, [None, 24, 24], [12, 24, 24]]


@pytest.mark.parametrize(
    "words",
    [
        "If you are making size S, you may stop now and start the brim.",
        "Only M and L work Rnd 3, and L works it twice.",
        "Size S: omit Rnd 3 and do not join.",
        "S has 12 sts and goes on to the Brim.",
    ],
)
def test_words_for_some_sizes_that_are_not_understood(words: str) -> None:
    """Where a line tells some sizes to leave something out in words that are not understood, nothing is guessed."""
    rows = worked_rows(
        check(
            HEAD.format(sizes="S (M, L)") + f"{GROW.format(2, 12)}{words}\n{PLAIN.format(3)}\nBRIM\n{PLAIN.format(1)}"
        )
    )
    assert {cell.outcome.value for cell in rows[-2].cells} == {"not-recomputed"}


def test_a_remark_on_a_size_is_no_gate() -> None:
    """What a size measures here changes nothing for the rows below."""
    body = f"{GROW.format(2, 12)}In size L the crown is now 10 cm across.\n{PLAIN.format(3)}"
    assert table(body) == [[6] * 3, [12] * 3, [12] * 3]


@pytest.mark.parametrize(
    "words",
    [
        "Rnds 2 and 3 are worked for sizes M and L only.",
        "Rnds 2-3 are for the two larger sizes.",
        "Rnds 2 and 3 are made in M and L only.",
    ],
)
def test_notes_give_rows_to_some_sizes(words: str) -> None:
    """A note may say beforehand, or a line over them, which sizes work some rounds."""
    rows = f"{GROW.format(2, 12)}{GROW.format(3, 24)}{PLAIN.format(4)}"
    noted = check(HEAD.format(sizes="S (M, L)").replace("CROWN", f"NOTES\n{words}\n\nCROWN") + rows)
    made = [[cell.made.stitches if cell.made is not None else None for cell in row.cells] for row in worked_rows(noted)]
    assert made == table(f"{words}\n{rows}") == [[6] * 3, [None, 12, 12], [None, 24, 24], [6, 24, 24]]


def test_a_note_on_rows_of_two_pieces() -> None:
    """Where two pieces have a round of that number, which of them is meant is not guessed."""
    text = HEAD.format(sizes="S (M, L)").replace("CROWN", "NOTES\nRnd 2 is for sizes M and L only.\n\nCROWN")
    rows = worked_rows(check(f"{text}{GROW.format(2, 12)}\nBRIM\n{PLAIN.format(1)}{PLAIN.format(2)}"))
    assert {cell.outcome.value for cell in rows[1].cells} == {"not-recomputed"}


@pytest.mark.parametrize("words", ["Rnds 2 and 3 are for the crown.", "Rnd 2 is worked in A."])
def test_a_note_on_rows_that_names_no_size(words: str) -> None:
    """What else rounds are for shuts no size out."""
    text = HEAD.format(sizes="S (M, L)").replace("CROWN", f"NOTES\n{words}\n\nCROWN")
    assert [cell.outcome.value for cell in worked_rows(check(text + GROW.format(2, 12)))[1].cells] == ["agrees"] * 3


@pytest.mark.parametrize(
    "words",
    [
        "Rnd 2 is not worked for size S.",
        "Rnd 2 is left out for the smallest size.",
        "Rnd 2 is skipped in size S.",
        "Size S skips Rnd 2.",
        "Work Rnd 2 only for M and L.",
    ],
)
def test_notes_take_rows_from_some_sizes(words: str) -> None:
    """A note may as well say which sizes do not work a round."""
    body = f"{words}\n{GROW.format(2, 12)}{PLAIN.format(3)}"
    assert table(body) == [[6] * 3, [None, 12, 12], [6, 12, 12]]


@pytest.mark.parametrize(
    "words",
    [
        "Rnd 2 is for two sizes only.",
        "Size L works Rnd 2 twice.",
        "Small needs fewer rounds here, so leave one out.",
        "Size L needs one more round here.",
    ],
)
def test_other_rows_for_some_sizes_stop_the_count(words: str) -> None:
    """Which rounds a size works is not told in words that are understood: no size's count is guessed."""
    body = f"{words}\n{GROW.format(2, 12)}{PLAIN.format(3)}"
    assert table(body) == [[6] * 3, [None] * 3, [None] * 3]


@pytest.mark.parametrize(
    "words",
    [
        "Size L measures 12 cm when finished.",
        "Place a marker in the first st of each round; do not skip it.",
        "Sizes M and L: the work grows faster here.",
    ],
)
def test_what_is_said_of_sizes_besides_stops_no_count(words: str) -> None:
    """Measures and hints take no round from any size."""
    body = f"{GROW.format(2, 12)}{words}\n{PLAIN.format(3)}"
    assert table(body) == [[6] * 3, [12] * 3, [12] * 3]
