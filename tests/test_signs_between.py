"""What parts labels, work and counts in house styles that use few signs or odd ones; common practice, no source."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts

_FLAT = "Mat\n\nUS terms\n\nMAT\nRow 1: Fsc 30, turn. (30)\nRow 2: {}\n"
_ROUND = "Ball\n\nUS terms\n\nBALL\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: {}\n"


@pytest.mark.parametrize(
    "words",
    [
        "Ch 1, sc in each st across, turn 30 sts.",
        "Ch 1, sc in each st across, turn // 30",
        "Ch 1, sc in each st across // 30 sts",
        "Ch 1, 1 sc in each st to end 30 sts.",
    ],
)
def test_counts_behind_a_turn_or_strokes(words: str) -> None:
    """A count may stand behind "turn", behind two strokes, or straight behind the work."""
    report = check(_FLAT.format(words))
    assert counts(report)[-1] == 30
    assert "not-understood" not in [rule for rule, _ in all_findings(report)]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("2 sc in each st around, join 12 sts.", 12),
        ("2 sc in each st around, sl st to join // 12 sc", 12),
        ("(inc) x 6 12 sts.", 12),
        ("2 sc in each st around, join You will have 12 sts.", 12),
        ("Sc in next 3 sts and 9 sts", None),
        ("Sc 3, turn 3 sc", None),
    ],
)
def test_counts_without_a_sign_in_rounds(words: str, made: int | None) -> None:
    """The same behind a join; what may be work as well is not taken for a count."""
    assert counts(check(_ROUND.format(words)))[-1] == made


@pytest.mark.parametrize(
    ("label", "rows"), [("Rnds 3 - 5 ", 3), ("Rnds 3 through 5 ", 3), ("Rnd 3 – ", 1), ("Rnds 3–5 ", 3)]
)
def test_a_range_with_spaces_and_no_sign_behind_it(label: str, rows: int) -> None:
    """ "Rnds 3 - 5 Sc in each st" is three rounds."""
    text = _ROUND.format("Inc x 6 (12)") + f"{label}Sc in each st around (12)\n"
    assert counts(check(text)) == [6, 12, *[12] * rows]


def test_a_round_whose_dash_stands_before_a_number_of_decreases() -> None:
    """ "Rnd 3 - 6 dec" is one round of six decreases, not a range."""
    report = check(_ROUND.format("Inc x 6 (12)") + "Rnd 3 - 6 dec = 6 sts\n")
    assert (counts(report), corrections(report)) == ([6, 12, 6], [])


@pytest.mark.parametrize(
    "first",
    [
        "Rnd 1 into a magic ring, ch 1, 8 sc in ring, sl st in first sc (8)",
        "Rnd 1: In a magic ring; ch 1; 8 sc in ring; sl st in first sc (8)",
        "Rnd 1 Start with a magic ring, 8 sc (8)",
        "Ch 10.\nRow 1 Starting in 3rd ch from hook, work 1 hdc in each ch to end. (8)",
    ],
)
def test_first_rounds_that_begin_with_where(first: str) -> None:
    """A row's first words may tell where it begins, with no sign behind the label."""
    assert counts(check(f"Cup\n\nUS terms\n\nCUP\n{first}\n"))[0] == 8


@pytest.mark.parametrize("joint", ["-", "to", "through", "thru"])
def test_bare_numbers_with_ranges_in_words(joint: str) -> None:
    """ "2 through 4." labels rows where numbers alone do."""
    text = f"Mat\n\nUS terms\n\nCh 21.\n1. Starting in 2nd ch from hook, sc in each ch. (20)\n2 {joint} 4. Turn, ch 1, sc in each st. (20)\n"
    assert counts(check(text)) == [20, 20, 20, 20]


@pytest.mark.parametrize("ring", ["3rd ch of beg ch 3 [12]", "top of ch 3 (12)", "top of beg ch 3 (12)"])
def test_a_count_behind_the_chain_that_is_joined_to(ring: str) -> None:
    """ "join to top of ch 3 (12)" with a round "2nd Rnd" below it is no list over sizes."""
    text = (
        f"Cup\n\nUS terms\n\nCh 3 counts as a dc.\n\n1st Rnd - Make a magic ring; ch 3; 11 dc in ring; sl st in {ring}\n"
        f"2nd Rnd - Ch 3; dc in same st; 2 dc in each st around; sl st in {ring.replace('12', '24')}\n"
    )
    report = check(text)
    assert counts(report) == [12, 24]
    assert not {"sizes-unnamed", "join-not-there"}.intersection(rule for rule, _ in all_findings(report))


def test_a_list_all_in_brackets_may_begin_a_piece() -> None:
    """ "Make (37, 43, 49) ch." is the foundation of three sizes."""
    text = (
        "Top\n\nUS terms\n\nSizes (S, M, L)\n\nCh 1 at the beginning of a row does not count as a stitch.\n\n"
        "Make (37, 43, 49) ch.\n1st row: sc in 2nd ch from hook, sc in each rem ch. ((36, 42, 48) sts)\n"
    )
    report = check(text)
    assert [counts(report, size) for size in range(3)] == [[36], [42], [48]]


def test_entries_that_explain_twice_join_no_lines() -> None:
    """ "inc: increase: work 2 sts …" makes no run-on list of lines that are entries by themselves."""
    text = (
        "Mat\n\nAbbreviations\nch: chain\nsc: single crochet\nst(s): stitch(es)\ninc: increase: work 2 stitches in one\n\n"
        "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across (10 sts)\nRow 2: Ch 1, turn, inc in first st, sc in each st. (11 sts)\n"
    )
    assert corrections(check(text)) == []


@pytest.mark.parametrize("note", ["Turning ch does not count as a st.", "Turning chains do not count as stitches."])
def test_what_is_said_of_turning_chains_holds_for_skipped_ones(note: str) -> None:
    """Chains skipped at the hook are the first row's turning chain: nothing is left to ask."""
    text = f"Mat\n\nUS terms\n\n{note}\n\nCh 22.\nRow 1: Hdc in 3rd ch from hook and in each ch across. (20)\n"
    assert "turning-chain-unsaid" not in [rule for rule, _ in all_findings(check(text))]


def test_a_count_that_leaves_spaces_out_elsewhere_is_corrected() -> None:
    """A count that would be right with the spaces in it is a mistake where the piece's other counts leave them out."""
    rows = "".join(
        f"Row {n}: Ch 3, turn, dc in first st, dc in each st to ch-1 sp, (2 dc, ch 1, 2 dc) in ch-1 sp, "
        f"dc in each st to last st, 2 dc in last st. ({6 * n + (n == 4)} sts)\n"
        for n in range(2, 5)
    )
    text = f"Shawl\n\nUS terms\n\nCh 3 counts as a dc throughout.\n\nCh 4.\nRow 1: (2 dc, ch 1, 3 dc) in 4th ch from hook. (6 sts)\n{rows}"
    assert [rule for rule, _ in corrections(check(text))] == ["count-differs"]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, sc in next 28 sts, sc2tog 29 sts.", 29),
        ("Ch 1, sc in next 28 sts, sc2tog <29>", 29),
        ("Sc2tog 30 sts.", None),
        ("Sc2tog over next 30 sts.", 15),
        ("Ch 1, sc in each st across ~ 30 sts", 30),
        ("Ch 1, sc in each st across. ~ 30 sts\nFasten off.", 30),
        ("Ch 1, (sc, hdc) to the end = 30 sts", 30),
        ("Ch 1, sc in each st across. Stitch count: (30)", 30),
        ("Ch 1, sc in each st to last 3 sts, leaving last sts unworked.", 27),
    ],
)
def test_counts_and_rests_at_the_end_of_a_row(words: str, made: int | None) -> None:
    """A count straight behind a decrease is no number of places; "last sts" that are left are all the rest."""
    report = check(_FLAT.format(words))
    assert counts(report)[-1] == made
    assert "places-left-over" not in [rule for rule, _ in all_findings(report)]


def test_a_count_over_sizes_straight_behind_a_decrease() -> None:
    """ "…, sc2tog (18, 20, 22)" and "<18/20/22>" end the row with its counts."""
    for sizes, first, last in (
        ("S (M, L)", "20 (22, 24)", "(18, 20, 22)"),
        ("S/M/L", "20/22/24", "<18/20/22>"),
    ):
        text = (
            f"Top\n\nUS terms\n\nSizes: {sizes}\n\nTOP\nRow 1: Fsc {first}, turn.\n"
            f"Row 2: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog {last}\n"
        )
        assert [counts(check(text), size)[-1] for size in range(3)] == [18, 20, 22]


def test_all_the_way_around_before_the_count() -> None:
    """ "Dec around 6 sts." decreases all the way, and has 6."""
    assert counts(check(_ROUND.format("Inc around 12 sts.") + "Rnd 3: Dec around 6 sts.\n")) == [6, 12, 6]


@pytest.mark.parametrize("label", ["Row 2 - WS:", "Row 2 (WS):", "Row 2, WS:", "Row 2 [WS]:", "Row 2 – wrong side:"])
def test_labels_with_a_side(label: str) -> None:
    """The side of the work in a label, whatever parts it from the number."""
    text = _FLAT.format("").replace("Row 2: ", f"{label} Ch 1, turn, sc in each st across. (30)")
    assert counts(check(text)) == [30, 30]


@pytest.mark.parametrize("talk", ["Count your chains before you go on.", "Picture 2 shows the chain.", ""])
def test_talk_between_the_chain_and_the_first_row(talk: str) -> None:
    """A piece's chain stands right below a note that ends the list above, and lines of talk or its own next line follow."""
    text = (
        "Cowl\n\nUS terms\n\nAbbreviations\nch: chain\nsc: single crochet\nst: stitch\n\n"
        "Ch 1 does not count as a stitch.\nCh 52, join with sl st in first ch to form a ring,\nbeing careful not to twist.\n"
        f"\n{talk}\n\nRnd 1: Ch 1, sc in each ch around, join with sl st in first sc. (52)\n"
    )
    assert counts(check(text)) == [52]


def test_a_wrapped_line_that_begins_with_a_bracket_closed() -> None:
    """ "…, (2 dc in ring, ch" / "2) 3 times" is no row 2."""
    text = (
        "Tile\n\nUS terms\n\nCh 3 counts as a dc.\n\n1st Rnd - make a magic ring, ch 3, 1 dc in ring, ch 2, (2 dc in ring, ch\n"
        "2) 3 times, sl st in 3rd ch of beg ch-3 (8)\n"
    )
    assert counts(check(text)) == [8]


_DEFINED = (
    "Wrap\n\nUS terms\n\nAbbreviations\nch: chain\nsc: single crochet\ndc: double crochet\nsk: skip\nst(s): stitch(es)\nrep: repeat\n\n"
    "{}Ch 3 counts as a dc.\nCh 27.\nRow 1: Sc in 2nd ch from hook and in each ch across. (26)\n"
    "Row 2: Ch 3, turn, sk first 2 sts, V-st in next st, *sk 2 sts, V-st in next st; rep from * to last 2 sts, sk 1 st, dc in last st. (18 sts)\n"
)


@pytest.mark.parametrize(
    "above",
    [
        "",
        "Gauge: 16 sts = 10 cm\n",
        "INSTRUCTIONS\n\n",
        "PATTERN\nSpecial stitch: ",
        "Gauge:\n16 sts and 18 rows = 10 cm\n\n",
    ],
)
@pytest.mark.parametrize(
    "defined", ["V-st: (dc, ch 1, dc) in same st.", "V-stitch (V-st) = (dc, ch 1, dc) in same st."]
)
def test_a_definition_and_a_note_right_above_the_chain(above: str, defined: str) -> None:
    """What tells of a stitch and of chains that begin rows is no part of the piece's chain below it, wherever it stands."""
    report = check(_DEFINED.format(f"{above}{defined}\n"))
    assert (counts(report), corrections(report)) == ([26, 18], [])


def test_a_wrapped_line_that_begins_a_clause_with_a_capital() -> None:
    """ "… to last 2 sts." / "Miss 1 st, tr in last st." is one row where full stops part its clauses."""
    text = (
        "Wrap\n\nUK terms\n\nCh 3 counts as a tr.\n\nCh 12.\nRow 1: Tr in 4th ch from hook and in each ch. (10)\n"
        "Row 2: Ch 3. Miss first st. Tr in each st to last 2 sts.\nMiss 1 st. Tr in tch. (9)\n"
    )
    assert counts(check(text)) == [10, 9]


@pytest.mark.parametrize("joint", ["to", "and", "-", "through"])
def test_a_row_that_ends_in_the_word_row(joint: str) -> None:
    """ "… repeat from * to end of rnd" ends its row: what stands below is a label of its own."""
    text = (
        "Ball\n\nUS terms\n\n1st rnd: 6 sc in magic ring\n2nd rnd: *inc; repeat from * to end of rnd\n"
        f"3rd {joint} 4th rnds: Sc in each st around\n"
    )
    assert counts(check(text)) == [6, 12, 12, 12]


@pytest.mark.parametrize("words", ["is not counted", "is never a stitch", "stands for nothing"])
def test_notes_on_beginning_chains_begin_no_piece(words: str) -> None:
    """ "Ch 1 at the start of a rnd is not counted." in a list of notes begins no piece, though a row follows soon."""
    text = (
        "Tee\n\nUS terms\n\nNotes\n"
        f"• Ch 1 at the start of a rnd {words}.\n• Raglan corner = (hdc, ch 1, hdc), worked in the ch-1 sp of the corner below.\n\n"
        "YOKE\nCh 16 and join with sl st into a ring.\nRnd 1: Ch 1, *(hdc, ch 1, hdc) in next ch, hdc in next 3 ch; rep from * around. (20)\n"
        "Rnd 2: Sl st to first ch-1 sp, ch 1, *raglan corner in ch-1 sp, hdc in each st to next ch-1 sp; rep from * around. (28)\n"
    )
    assert counts(check(text)) == [20, 28]


@pytest.mark.parametrize(
    "rows",
    [
        "Row One Ch 1, turn, sc in each st across. (30)",
        "Second Row Ch 1, turn, sc in each st across. (30)",
        "| Row 2 | WS | Ch 1, turn, sc in each st across | 30 |",
        "Row 2 - WS\tCh 1, turn, sc in each st across\t30",
        "– Row 2: Ch 1, turn, sc in each st across. (30)",
        "– [Row 2] Ch 1, turn, sc in each st across. (30)",
    ],
)
def test_labels_in_words_columns_and_behind_dashes(rows: str) -> None:
    """Labels spelled out without a sign, with the side in a column of its own, and behind a bullet of any dash."""
    report = check(_FLAT.partition("Row 2")[0] + rows + "\n")
    assert counts(report) == [30, 30]


def test_a_wrapped_line_that_begins_with_the_word_hook() -> None:
    """ "… in 2nd ch from" / "hook (6)" is no heading of materials."""
    text = "Cup\n\nUS terms\n\nRnd 1: Ch 2, 6 sc in 2nd ch from\nhook (6)\nRnd 2: Inc around. (12)\n"
    assert counts(check(text)) == [6, 12]


def test_a_list_behind_a_comma_whose_first_figure_has_the_unit() -> None:
    """ "25 ch, (29, 33)." is one chain for each of three sizes."""
    text = "Top\n\nUS terms\n\nSizes: S, (M, L)\n\nTOP\n25 ch, (29, 33).\nRow 1: Sc in 2nd ch from hook and in each ch. (24, (28, 32) sts)\n"
    assert [counts(check(text), size) for size in range(3)] == [[24], [28], [32]]


@pytest.mark.parametrize("note", ["Ch 3 at start of round counts as a dc.", "The beginning ch-3 counts as a dc."])
def test_a_note_on_chains_among_the_instructions_asks_nothing(note: str) -> None:
    """It is a note for all rounds, not a line of work that is not understood."""
    text = f"Tile\n\nUS terms\n\nINSTRUCTIONS\n\n{note}\nRnd 1: Make a magic ring, ch 3, 11 dc in ring, sl st in top of beg ch-3. (12)\n"
    report = check(text)
    assert (counts(report), "not-understood" in [rule for rule, _ in all_findings(report)]) == ([12], False)


@pytest.mark.parametrize(
    "words",
    [
        "2 sc in each ch across and count your stitches.",
        "Ch 3 counts as dc, dc in next 4 sts, turn.",
    ],
)
def test_work_in_which_a_chain_and_a_count_are_named_is_no_note(words: str) -> None:
    """Such a line is worked or told as not understood: it is not passed over, and the next row does not stand on the one before."""
    text = f"Mat\n\nUS terms\n\nMAT\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n{words}\nRow 3: Ch 1, turn, sc in each st.\n"
    assert counts(check(text))[-1] != 20


@pytest.mark.parametrize(
    ("line", "made"),
    [("Inc in each st around.", 12), ("Miss 1 st, sc in each st around.", 5), ("Dec in each st around.", 3)],
)
def test_a_line_of_work_below_a_row_of_one_sentence_is_its_own(line: str, made: int) -> None:
    """Only a row whose clauses are parted by full stops goes on in a line that begins a clause."""
    report = check(f"Ball\n\nUS terms\n\nBALL\nRnd 1: 6 sc in magic ring.\n{line}\nRnd 3: Sc in each st around.\n")
    assert counts(report) == [6, made]


@pytest.mark.parametrize("talk", ["Ch 20 and work 20 rows of sc for your swatch.", "Ch 5 loops are worked loosely."])
def test_a_chain_among_the_notes_is_not_the_piece(talk: str) -> None:
    """The chain nearest to the first row begins the piece; nothing is asked about the other."""
    text = (
        f"Cowl\n\nUS terms\n\nGauge\n16 sts = 10 cm\n{talk}\n\nCh 52, join with sl st to form a ring.\n"
        "Rnd 1: Ch 1, sc in each ch around. (52)\n"
    )
    report = check(text)
    assert (counts(report), "not-understood" in [rule for rule, _ in all_findings(report)]) == ([52], False)


@pytest.mark.parametrize(
    ("words", "made"), [("Sc around 6 sts.", 6), ("Dec around 6 sts.", 6), ("Sc in next 3 sts // 6 sc", 9)]
)
def test_figures_that_may_be_work_are_not_taken_for_a_count(words: str, made: int) -> None:
    """ "Sc around 6 sts." goes over six of twelve, and says so; only a shaping goes all the way around before its count."""
    report = check(_ROUND.format("Inc x 6 (12)") + f"Rnd 3: {words}\n")
    assert counts(report)[-1] == made
    assert ("places-left-over" in [rule for rule, _ in all_findings(report)]) == words.startswith("Sc")


@pytest.mark.parametrize("words", ["Ch 1, turn, sc in next 4 sts.", "Ch 3 (counts as dc), dc in next 4 sts, turn."])
def test_what_follows_a_rows_own_turn_is_not_taken_out_of_it(words: str) -> None:
    """Work behind the next row's chain, in the same line, is no part of "in each ch across": which row it is is not said."""
    text = f"Mat\n\nUS terms\n\nMAT\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. {words}\n"
    assert counts(check(text)) == [None]
