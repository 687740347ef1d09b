"""What stands between two loops, behind a leg's name, or in a line of chains, is neither lost nor guessed.

Truths worked out by hand; what the words mean is common practice, no source.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts

HEAD = "Piece\n\nUS terms\n\nPIECE\n"
LEGS = (
    "Toy\n\nUS terms\n\nLEG 1\nRnd 1: 18 sc in magic ring. (18)\n\n"
    "LEG 2\nRnd 1: 18 sc in magic ring. (18)\nDo not fasten off.\n"
)


def last(rows: str, head: str = HEAD) -> int | None:
    """The count of the last row."""
    return counts(check(f"{head}{rows}\n"))[-1]


def on_a_round(stitches: int, words: str) -> int | None:
    """The count of words worked on a round of so many stitches."""
    return last(f"Rnd 1: {stitches} sc in magic ring. ({stitches})\nRnd 2: {words}")


def in_a_row(stitches: int, words: str) -> int | None:
    """The count of words worked on a row of so many stitches."""
    return last(f"Row 1: Fsc {stitches}, turn. ({stitches})\nRow 2: {words}")


@pytest.mark.parametrize(
    ("between", "made"),
    [
        ("skip next sc,", 4),
        ("sk 1,", 4),
        ("miss next sc,", 4),
        ("skip next 2 sts,", 3),
        ("", 6),
        ("omit next sc,", None),
        ("skip the remaining sts,", None),
        ("skip sc just made,", None),
    ],
)
def test_what_is_skipped_between_two_loops(between: str, made: int | None) -> None:
    """A stitch that lies between two loops drawn up is used by the stitch they make."""
    words = f"*draw up a loop in next sc, {between} draw up a loop in next sc, yo and draw through all 3 loops on hook; rep from * around"
    assert on_a_round(12, words) == made


@pytest.mark.parametrize("sign", ["=", "|", "→", "-", "–"])
def test_a_count_behind_the_name_of_a_leg(sign: str) -> None:
    """ "18 sc on the first leg = 35" has a count, which is wrong."""
    words = f"Rnd 1: 18 sc on the second leg, 18 sc on the first leg {sign} 35 sts\n"
    rules = [rule for rule, _ in corrections(check(LEGS + words))]
    assert rules == ["count-differs"]
    assert not corrections(check(LEGS + words.replace("35", "36")))


@pytest.mark.parametrize(
    ("stitches", "words", "made"),
    [
        (9, "Ch 1, double inc in first st, sc in next 8 sts, turn.", 11),
        (9, "Ch 1, sc in next 8 sts, make a double increase in the last st, turn.", 11),
        (9, "Ch 1, sc in next 6 sts, double decrease, turn.", 7),
        (9, "Ch 1, sc in next 6 sts, double dec over last 3 sts, turn.", 7),
        (9, "Ch 1, double dec at each end, turn.", 5),
        (9, "Ch 1, sc in next 8 sts, double inc 1 st at end, turn.", None),
        (9, "Ch 1, sc in next 8 sts, 3 sc in the 9th, turn.", 11),
        (9, "Ch 1, sc in next 7 sts, 3 sc in the 9th, turn.", None),
    ],
)
def test_doubled_shaping(stitches: int, words: str, made: int | None) -> None:
    """A double increase makes three of one stitch, a double decrease one of three; "the 9th" is the one behind eight."""
    assert in_a_row(stitches, words) == made


def test_doubled_shaping_in_the_round() -> None:
    """So they do in repeats."""
    assert on_a_round(12, "[sc in next 3 sts, double inc] 3 times") == 18
    assert on_a_round(12, "sc double inc in next st, sc in next 11 sts") == 14
    assert on_a_round(12, "sc in next 9 sts, sc double dec") == 10
    assert on_a_round(12, "[double decrease over next 3 sts] 4 times") == 4
    assert on_a_round(12, "*sc in each of 5 sts, 2 sc in the 6th; rep from * around") == 14


def test_so_many_from_the_hook() -> None:
    """ "into 2nd ch from hook 11 sts": that chain and the ten behind it."""
    assert last("Row 1: Ch 12. Hdc into 2nd ch from hook 11 sts (11)") == 11


@pytest.mark.parametrize(
    ("line", "made"),
    [
        ("Ch 1.", 12),
        ("Ch 1", 12),
        ("Ch 3 (counts as dc).", 12),
        ("Ch 7.", None),
        ("Ch 4, join to the other side of the leg.", None),
        ("Make a chain of 4 and join it to the body.", None),
    ],
)
def test_chains_in_a_line_of_their_own(line: str, made: int | None) -> None:
    """Where the rows' numbers go on, such chains lead to the next row, or leave open what it is worked into."""
    rows = "Row 1: Fdc 12, turn. (12)\nRow 2: Ch 3 (counts as dc), dc in each st across, turn. (12)\n"
    report = check(f"{HEAD}{rows}{line}\nRow 3: Dc in each st across, turn.\n")
    assert counts(report)[-1] == made
    assert "turning-chain-missing" not in [rule for rule, _ in all_findings(report)]


def test_a_chain_that_begins_the_next_piece() -> None:
    """A row worked into the chain from the hook stands on it."""
    assert last("Row 1: Fsc 12, turn. (12)\nCh 7.\nRow 2: Sc in 2nd ch from hook and in each ch across, turn.") == 6


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sk dc, hdc, 4 dc in next sc", None),
        ("sk (dc, hdc), 4 dc in next sc", 11),
        ("sk dc, hdc in next st, 4 dc in next sc", 12),
    ],
)
def test_two_names_behind_a_skip(words: str, made: int | None) -> None:
    """ "sk dc, hdc, …" passes over both, or works the second: where both fit, and no count tells, nothing is said."""
    rows = (
        "Row 1: Fsc 10, turn. (10)\n"
        "Row 2: Ch 1, sc in first 4 sts, hdc in next st, dc in next st, sc in next st, hdc in next st, dc in next st, sc in next st, turn. (10)\n"
    )
    assert last(f"{rows}Row 3: Ch 1, sc in first st, {words}, sc in last 6 sts, turn.") == made


def test_a_count_tells_what_is_passed_over() -> None:
    """With a count there is nothing to ask."""
    rows = (
        "Row 1: Fsc 10, turn. (10)\n"
        "Row 2: Ch 1, sc in first 7 sts, hdc in next st, dc in next st, sc in next st, turn. (10)\n"
    )
    assert last(f"{rows}Row 3: Ch 1, sc in first st, sk dc, hdc, 4 dc in next sc, sc in last 6 sts, turn. (11)") == 11


AS_COUNTED = [
    "(count {})",
    "(sc: {})",
    "(st ct: {})",
    "(now {} sts)",
    "({} total stitches)",
    "({} sts per round)",
    "({} sc, not counting sl st)",
    "({} sc, excluding the join)",
    "(makes {} sc)",
    "(end with {} sts)",
    "({} loops)",
    ". You should have ({})",
    "… {} sts",
    ". Count = {}",
    ", {} sc in total",
    ". Now there are {} sc",
    ", for {} sts total",
    ", ending with {} sts",
    ", {} sts in this rnd",
    ". {} sts at end of rnd",
    ". Sts = {}",
    ". # of sts: {}",
    ". Result: {} sts",
    ". Rnd has {} sts.",
    ". The round now has {} sts.",
    ". End: {} sts",
    ", change to blue in the last sc | {}",
    ", stuff = {}",
    ", put eyes between rounds 1 and 2 → {}",
]


@pytest.mark.parametrize("form", AS_COUNTED)
def test_counts_with_words_about_them(form: str) -> None:
    """A right figure agrees, a wrong one is told: no count at a row's end is passed over."""
    for figure, rules in ((14, []), (13, ["count-differs"])):
        rows = f"Rnd 1: 12 sc in magic ring. (12)\nRnd 2: 2 sc in next st, sc in next 10 sts, 2 sc in next st{form.format(figure)}\n"
        report = check(HEAD + rows)
        assert counts(report)[-1] == 14
        assert [rule for rule, _ in corrections(report) if rule == "count-differs"] == rules


@pytest.mark.parametrize(
    "form", [". {} sts remain.", " ({} sts remain)", ", {} sts remaining", ". {} sts left.", " ({} rem)"]
)
def test_what_remains(form: str) -> None:
    """ "7 sts remain" behind decreases is the row's count."""
    for figure, rules in ((6, []), (7, ["count-differs"])):
        report = check(f"{HEAD}Rnd 1: 12 sc in magic ring. (12)\nRnd 2: Sc2tog around{form.format(figure)}\n")
        assert [rule for rule, _ in corrections(report) if rule == "count-differs"] == rules


@pytest.mark.parametrize(
    "words",
    [
        "sl st in next 3 sts, sc in next 6 sts, turn, leaving rest unworked (3 sts remain).",
        "sc in next 8 sts, turn. (4 sts remain)",
        "sc2tog, sc in next 6 sts, leave 4 sts unworked (4 sts remain).",
    ],
)
def test_what_remains_unworked(words: str) -> None:
    """What a row leaves unworked is no count of it."""
    report = check(f"{HEAD}Row 1: Fsc 12, turn. (12)\nRow 2: {words}\n")
    assert "count-differs" not in [rule for rule, _ in corrections(report)]


@pytest.mark.parametrize("count", ["6 (7, {}) sc", "(6, 7, {}) sc", "= 6-7-{} sc", "6 (7, {}) sc.", "— 6 (7, {}) sts"])
def test_a_list_over_the_sizes_behind_a_repeat(count: str) -> None:
    """A list behind "rep from * around" is the count of each size, and no work that the repeat leaves room for."""
    head = "Hat\n\nUS terms\n\nSizes: S (M, L)\n\nHAT\nRnd 1: 6 (7, 8) sc in magic ring. 6 (7, 8) sc\nRnd 2: 2 sc in each st around. 12 (14, 16) sc\n"
    report = check(f"{head}Rnd 3: *Sc2tog; rep from * around. {count.format(9)}\n")
    assert [counts(report, size)[-1] for size in (0, 1, 2)] == [6, 7, 8]
    assert "count-differs" in [rule for rule, _ in corrections(report)]
    right = check(f"{head}Rnd 3: *Sc2tog; rep from * around. {count.format(8)}\n")
    assert "count-differs" not in [rule for rule, _ in corrections(right)]


@pytest.mark.parametrize(
    "words",
    [
        "Ch 5, in 2nd ch from hook: slst, sc, hdc, slst",
        "Ch 5, sc in 2nd ch from hook, sc, hdc, sl st",
        "Ch 5, sl st in 2nd ch from hook, sc in next ch, hdc in next ch, sl st in last ch",
    ],
)
def test_counts_that_take_slip_stitches_in(words: str) -> None:
    """A count may take the slip stitches of a row on its own chain in, whether their places are said or not."""
    assert "count-differs" not in [rule for rule, _ in corrections(check(f"{HEAD}Row 1: {words} (4)\n"))]
    assert "count-differs" in [rule for rule, _ in corrections(check(f"{HEAD}Row 1: {words} (5)\n"))]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("sc in next 6 sts, join first arm: 3 sc through arm and body, 3 sc", 12),
        ("6 sc, attach arm: 3 sc through both, 3 sc", 12),
        ("sc in next 6 sts, change to red: 6 sc", 12),
        ("6 sc, change to red: 3 sc, change to white: 3 sc", 12),
        ("sc around, change to red: 11 sc", 12),
    ],
)
def test_work_behind_a_colon(words: str, made: int) -> None:
    """What stands behind the colon of "join the arm:", "change to red:" is work, unless the row has come to its end."""
    assert on_a_round(12, words) == made


def test_a_count_behind_a_colon() -> None:
    """At the row's end it is the count."""
    report = check(f"{HEAD}Rnd 1: 12 sc in magic ring. (12)\nRnd 2: sc around, change to red: 11 sc\n")
    assert "count-differs" in [rule for rule, _ in corrections(report)]


@pytest.mark.parametrize("spaces", [4, 5])
def test_spaces_in_brackets_behind_the_stitches(spaces: int) -> None:
    """ "24 dc (4 ch-2 sps)" counts both."""
    rows = (
        "Rnd 1: Ch 4, join with sl st to form a ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2;"
        " rep from * 2 more times, join with sl st to top of ch-3. (12 dc, 4 ch-2 sps)\n"
        "Rnd 2: Sl st to ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp;"
        f" rep from * 2 more times, join with sl st to top of ch-3. 24 dc ({spaces} ch-2 sps)\n"
    )
    found = [rule for rule, _ in corrections(check(HEAD + rows)) if rule.endswith("differ") or rule.endswith("differs")]
    assert bool(found) == (spaces == 5)


@pytest.mark.parametrize("words", ["work 6 sc in this round", "make 6 sc in total", "then 6 sc in the row"])
def test_work_that_a_count_could_be(words: str) -> None:
    """Where nothing says that the row has come to its end, a figure of its own stitch may be work: nothing is guessed."""
    assert on_a_round(12, f"sc in next 6 sts, {words}") is None


@pytest.mark.parametrize(
    "words", ["(total of 3 rounds)", "(total 3 rounds)", "for a total of 3 rounds", "(end with round 3)"]
)
def test_a_number_of_rounds_is_no_count(words: str) -> None:
    """How many rounds there are says nothing of their stitches."""
    report = check(f"{HEAD}Rnd 1: 12 sc in magic ring. (12)\nRnd 2: sc around {words}\n")
    assert "count-differs" not in [rule for rule, _ in corrections(report)]
