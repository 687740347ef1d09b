"""Wordings of lace, colour work and Tunisian crochet: each row worked as its words say, or said to be not understood."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, mades, outcomes, spaces

_HEAD = "Fennel Panel\n\nUS terms\n\nPANEL\n"


def _second_row(words: str, stitches: int = 12) -> str:
    """A pattern of a row of single crochet and one more row of these words."""
    first = f"Row 1: Ch {stitches + 1}, sc in 2nd ch from hook and in each ch across. ({stitches})"
    return f"{_HEAD}{first}\nRow 2: {words}\n"


def _second_round(words: str, stitches: int = 12) -> str:
    """A pattern of a round of single crochet and one more round of these words."""
    return f"{_HEAD}Rnd 1: {stitches} sc in magic ring. ({stitches})\nRnd 2: {words}\n"


@pytest.mark.parametrize(
    "entry",
    [
        "RP = return pass: ch 1, *yo, pull through 2 lps; rep from * until 1 lp remains",
        "RetP: yo, draw through 1 loop, *yo, draw through 2 loops; repeat from * to end",
    ],
)
def test_pass_told_in_the_list_is_no_stitch(entry: str) -> None:
    """An entry of the list that tells how a Tunisian row's loops are worked off makes no stitch of the row."""
    name = entry.split(" ")[0].rstrip(":")
    text = (
        f"Sorrel Cloth\n\nUS terms\n\nAbbreviations\nch = chain\n{entry}\nTss = Tunisian simple stitch\n\nCLOTH\nCh 12.\n"
        f"Row 1: Pull up a loop in 2nd ch from hook and in each ch across; {name}. (12)\n"
        f"Row 2: Tss2tog, Tss in each st to last 3 sts, Tss2tog, Tss in last st; {name}. (10)\n"
    )
    assert counts(check(text)) == [12, 10]
    assert not [rule for rule, _ in corrections(check(text)) if rule.startswith(("places", "count"))]


@pytest.mark.parametrize(
    "words",
    [
        "Ch 1, turn, white: 4 sc; red: 5 sc; white: 3 sc.",
        "Ch 1, turn, white: 4 sc. Red: 8 sc.",
        "Ch 1, turn, *white: 2 sc; red: 1 sc; rep from * across. (12)",
        "Ch 1, turn, (white: 2 sc; red: 2 sc) x 3.",
        "Ch 1, turn, red 5 sc, white 7 sc.",
        "Ch 1, turn, with white: 4 sc; with red: 8 sc.",
    ],
)
def test_colours_before_their_stitches(words: str) -> None:
    """A colour in front of a run of stitches, with or without a colon, changes no count and makes no count of the run."""
    report = check(_second_row(words))
    assert counts(report) == [12, 12]
    assert not corrections(report)


def test_unknown_word_before_stitches_stays_unread() -> None:
    """A word that names no yarn, before a colon and stitches, leaves its row not recomputed."""
    assert counts(check(_second_row("Ch 1, turn, 4 sc; spindly: 8 sc."))) == [12, None]


@pytest.mark.parametrize("words", ["finish with sc", "end with sc, turn", "finishing with hdc."])
def test_finish_with_a_bare_stitch(words: str) -> None:
    """ "Finish with sc" behind a run may be one stitch, or all that are left: it is not guessed."""
    assert counts(check(_second_row(f"Ch 1, turn, hdc in first 5 sts, {words}"))) == [12, None]


def test_finish_with_one_stitch_in_its_place() -> None:
    """ "Ending with sc in last st" says where the one stitch goes."""
    assert counts(check(_second_row("Ch 1, turn, sc in next 11 sts, ending with sc in last st."))) == [12, 12]


def test_chains_between_single_stitches_of_a_run() -> None:
    """ "1 tr into each of next 6 tr. with 1 ch. between each": so many stitches and one chain fewer; stops are no ends."""
    text = (
        "Fennel Mat\n\nUK terms\n\nMAT\n1st row.—Commence with 14 ch., 1 tr. into 4th ch. from hook, 1 tr. into each ch. to end, turn. (12 tr.)\n"
        "2nd row.—3 ch. (counts as 1 tr.), miss first tr., 1 tr. into each of next 6 tr. with 1 ch. between each, 1 tr. into each of next 4 tr., 1 tr. into top of 3 ch.\n"
    )
    report = check(text)
    assert counts(report) == [12, 12]
    assert spaces(report)[1] == {1: 5}


@pytest.mark.parametrize("stop", ["", "."])
def test_chains_joined_by_and(stop: str) -> None:
    """ "1 sc in next st. and 3 ch": chains to make, where chains are told by the number in front."""
    words = f"1 ch, turn, 1 sc in each of next 4 sts, 1 sc in next st{stop} and 3 ch, miss 2 sts, 1 sc in each of next 5 sts."
    report = check(_second_row(words))
    assert counts(report) == [12, 10]
    assert spaces(report)[1] == {3: 1}


def test_loop_missed_by_its_length() -> None:
    """ "Miss 3-ch. loop" passes one loop of three chains, not three stitches."""
    text = (
        "Fennel Doily\n\nUK terms\n\nDOILY\n1st round: 1 ch., 12 d.c. into a ring, join. (12 d.c.)\n"
        "2nd round: 1 ch., *1 d.c. into next d.c., 3 ch., 1 d.c. into next d.c., 5 ch.; repeat from * all round, join. (12 d.c.)\n"
        "3rd round: 1 ch., *miss 3-ch. loop, 7 d.c. into next 5-ch. loop; repeat from * all round, join.\n"
    )
    assert counts(check(text)) == [12, 12, 42]


def test_colours_of_materials_under_a_title() -> None:
    """Colours that the materials name are declared, though the title above heads the only part."""
    text = (
        "Windmill Mat\n\nUS terms\n\nMaterials: cotton yarn in oat and navy, 20 g each; 4 mm hook\n\n"
        "Rnd 1: With oat, 6 sc in a magic ring. (6)\nRnd 2: Join navy in any st, 2 sc in each st around. (12)\n"
    )
    assert "colour-not-declared" not in [finding.rule for finding in check(text).findings]


@pytest.mark.parametrize(
    "start", ["With green crochet 12 ch.", "With green, ch 12.", "Using dark green, crochet 12 ch."]
)
def test_piece_begun_behind_its_name(start: str) -> None:
    """ "Leaf: With green crochet 12 ch." begins a piece of its own, with yarn of its own."""
    text = (
        "Rosehip\n\nUS terms\n\nMaterials: cotton yarn in rose and green; 3 mm hook\n\nBloom: With rose, ch 6, sl st in first ch to form ring.\n"
        f"Rnd 1: 6 sc in ring. Fasten off. (6)\n\nLeaf: {start}\nRow 1: Sc in 2nd ch from hook and in each ch across. (11)\n"
    )
    report = check(text)
    assert counts(report) == [6, 11]
    assert not corrections(report)


def test_one_mistake_followed_over_rows_without_a_count() -> None:
    """What is one off by the first mistake, and stays so over rows of which no count is printed, is no second mistake."""
    rows = (
        "Row 1: Ch 13, sc in 2nd ch from hook and in each ch across. (12)\n"
        "Row 2: Ch 1, turn, sc in each st to last 2 sts, sc2tog. (12)\n"  # 11
        "Rows 3-5: Ch 1, turn, 2 sc in first st, sc in each st to end. (15)\n"  # 14
        "Row 6: Ch 1, turn, sc in each st to end. (15)\n"
    )
    assert [rule for rule, _ in corrections(check(_HEAD + rows))] == ["count-differs"]


def test_another_difference_is_another_mistake() -> None:
    """A row that is off by another number than the mistake before it has a finding of its own."""
    rows = (
        "Row 1: Ch 13, sc in 2nd ch from hook and in each ch across. (12)\n"
        "Row 2: Ch 1, turn, sc in each st to last 2 sts, sc2tog. (12)\n"  # 11
        "Rows 3-5: Ch 1, turn, 2 sc in first st, sc in each st to end. (18)\n"  # 14
    )
    assert len(corrections(check(_HEAD + rows))) == 2


_CABLED = (
    "Skein Square\n\nUS terms\n\nSQUARE\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12)\n"
    "Row 2: Ch 2 (does not count), turn, hdc in each st across. (12)\nRow 3: Ch 1, turn, sc in each st. (12)\n"
    "Row 4: Ch 2 (does not count), turn, hdc in first 4 sts, FPdc around each of next 4 sts 2 rows below, hdc in last 4 sts. (8 hdc, 4 FPdc)\n"
    "Row 5: Ch 1, turn, sc in each st. (12)\nRow 6: Ch 2 (does not count), turn, hdc in first 4 sts, {}, hdc in last {} sts. (8 hdc, 4 FPtr)\n"
)
_CABLE = "skip next 2 FPdc 2 rows below, FPtr around each of next 2 FPdc, FPtr around each of 2 skipped FPdc"


@pytest.mark.parametrize("behind", ["", ", skip next 4 sts"])
def test_cable_over_a_row_below(behind: str) -> None:
    """Every stitch of a cable that stands in a row below covers one of this row, whether or not they are said to be skipped."""
    report = check(_CABLED.format(_CABLE + behind, 4))
    assert counts(report)[-1] == 12
    assert not [finding for finding in report.findings if finding.rule.startswith(("places", "count", "place-"))]
    wrong = check(_CABLED.format(_CABLE + behind, 5))
    assert [rule for rule, _ in corrections(wrong)], "one stitch too many is found"


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, turn, sc in every other sc across.", 6),
        ("Ch 1, turn, hdc in every second st.", 6),
        ("Ch 1, turn, (sc, ch 2, sc) in every third st to end.", 8),
        ("Ch 1, turn, 2 sc in every third st across.", 16),  # an increase in each third one, as ever
        ("Ch 1, turn, sc2tog in every third st across.", None),
        ("Ch 1, turn, sc in every fifth st across.", None),
        ("Ch 1, turn, *sc in every other st, ch 1; rep from * across.", None),
        ("Ch 1, turn, sc in every other row.", None),
        ("Ch 1, turn, sc in every other one.", None),
        ("Ch 1, turn, dc in every other st, ch 1.", None),
        ("Ch 1, turn, 2 dc in every other st.", 18),
        ("Ch 1, turn, 2 dc in every other st, skipping the rest.", None),
        ("Ch 1, turn, 2 dc in every other st, missing the ones between.", None),
        ("Ch 1, turn, sc in every other st, ch 1, turn.", 6),
    ],
)
def test_every_nth_stitch(words: str, made: int | None) -> None:
    """One stitch in every second or third is read where the row comes out even, whichever the first of them is."""
    assert counts(check(_second_row(words))) == [12, made]


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, turn, hdc in first 4 sts, complete the row in sc.", 12),
        ("Ch 1, turn, 2 hdc in each of first 4 sts, finish row with sc, turn.", 16),
        ("Ch 1, turn, hdc in first 4 sts, finish the row with 1 sc.", None),
        ("Ch 1, turn, 3 sc in first and last sc, sc in all others.", 16),
        ("Ch 1, turn, 2 sc in first st, 3 sc in last st, 1 sc in each of the other sts.", 15),
        ("Ch 1, turn, 2 sc in 4th st, sc in all others.", 13),
        ("Ch 1, turn, 2 sc in first st, ch 3, 2 sc in last st, sc in all others.", None),
        ("Ch 1, turn, sc in all the others.", None),
        ("Ch 1, turn, sc halfway across, hdc to end.", 12),
        ("Ch 1, turn, 2 sc in each st halfway across the row, sc to end.", 18),
        ("Ch 1, turn, sc in half the row, leave the rest unworked.", 6),
        ("Ch 1, turn, sc in the first half of the row.", None),
        ("Ch 1, turn, sc halfway, hdc halfway.", None),
    ],
)
def test_what_is_left_of_a_row(words: str, made: int | None) -> None:
    """The other stitches, the rest of a row and half of it are worked where the words before tell which they are."""
    assert counts(check(_second_row(words))) == [12, made]


def test_half_of_an_odd_row_is_not_guessed() -> None:
    """A row of 13 has no middle between two stitches."""
    assert counts(check(_second_row("Ch 1, turn, sc halfway across, 2 sc in next st, sc to end.", 13))) == [13, None]


@pytest.mark.parametrize(
    "others", ["and 1 hdc in all other sts around", "1 hdc in all others", "hdc in each of the other sts"]
)
def test_corners_and_all_others(others: str) -> None:
    """Behind work in each corner the others are all that are left."""
    square = f"{_HEAD}Rnd 1: Ch 1, 8 sc in magic ring, join. (8 sc)\nRnd 2: Ch 1, *sc in next st, 3 sc in next st; rep from * around, join. (16 sc)\n"
    report = check(f"{square}Rnd 3: Ch 1, 3 hdc in each corner st, {others}, join. (24 hdc)\n")
    assert outcomes(report) == ["agrees"] * 3


@pytest.mark.parametrize(
    ("count", "outcome"),
    [
        ("(24 sts, counting each ch as a st)", "agrees"),
        ("(23 sts, counting each ch as a st)", "differs"),
        ("(12 sts, counting each ch as a st)", "differs"),
        ("24 sts, including ch-1 sps.", "agrees"),
        ("(24 dc, counting all chs as sts)", "agrees"),
        ("(12 dc, counting beg ch as a dc)", "agrees"),
    ],
)
def test_count_that_takes_in_the_chains(count: str, outcome: str) -> None:
    """A printed count may say that it counts the chains as well; then they are counted."""
    words = f"Ch 4 (counts as dc, ch 1), *dc in next st, ch 1; rep from * around, join. {count}"
    assert outcomes(check(_second_round(words)))[1] == outcome


def test_single_chains_and_spaces_are_told_apart() -> None:
    """ "Counting each ch" counts single chains, "counting ch sps" each space once."""
    words = "Ch 1, *sc in next st, ch 3, skip next st; rep from * around, join. ({} sts, counting {})"
    for number, what in ((24, "each ch"), (12, "ch-3 sps"), (12, "each ch-3")):
        assert outcomes(check(_second_round(words.format(number, what))))[1] == "agrees", what


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, a pair of sc in each st around.", 24),
        ("Ch 1, sc in each pair of sts around.", None),
        ("Ch 1, *work a pair of hdc in next st, sc in next st; rep from * around.", 18),
        ("Ch 1, 2 sc in each st around, except the last, 1 sc in last st.", 23),
        ("Ch 1, sc in each st, except for the last, 3 sc in last st.", 14),
        ("Ch 1, 2 sc in each st around, except the last.", None),  # one in that, or none?
        ("Ch 1, *sc in next st, ch 3; rep from * around, except the last.", None),
        ("Ch 1, sc in each st around, except the last round.", None),
    ],
)
def test_pairs_and_all_but_the_last(words: str, made: int | None) -> None:
    """A pair of stitches is two; a run may leave out the last stitch, where what goes into that is said."""
    assert counts(check(_second_round(words))) == [12, made]


@pytest.mark.parametrize(("count", "outcome"), [("10 tr", "agrees"), ("9 tr", "differs")])
def test_chains_passed_told_as_two_stitches(count: str, outcome: str) -> None:
    """ "1 tr in 4th ch from hook (= 2 tr)": the chains passed stand for the first of two."""
    text = f"Fennel Mat\n\nUK terms\n\nMAT\nRow 1: Ch 12, 1 tr in 4th ch from hook (= 2 tr), 1 tr in each ch to end. ({count})\n"
    report = check(text)
    assert outcomes(report) == [outcome]
    assert "turning-chain-unsaid" not in [finding.rule for finding in report.findings]


_IN_BACK_LOOPS = "Rnd 2: Working in back loops only, ch 1, 2 sc in each st, join. (24)"


@pytest.mark.parametrize(
    ("second", "words", "made"),
    [
        (_IN_BACK_LOOPS, "Working into the unused front loops of Rnd 1, ch 1, sc in each st around, join.", 12),
        (_IN_BACK_LOOPS, "Working in the free loops of Rnd 1, (sc, ch 2, sc) in each of the 12 front loops.", 24),
        (_IN_BACK_LOOPS, "Working in the free front loops of Rnd 1, (sc, ch 2, sc) in each of the 12 front loops.", 24),
        ("Rnd 2: Ch 1, 2 sc in flo of each st, join. (24)", "BLO of Rnd 1: ch 1, 3 sc in each st, join.", 36),
        (
            "Rnd 2: Ch 1, 2 sc in each st, join. (24)",
            "Working in the unused loops of Rnd 1, ch 1, sc in each st.",
            None,
        ),
        (_IN_BACK_LOOPS, "Working in the unused back loops of Rnd 1, ch 1, sc in each st.", None),
        (_IN_BACK_LOOPS, "Working in the unused front loops of Rnd 2, ch 1, sc in each st.", None),
        (
            "Rnd 2: Ch 1, sc in blo of next 6 sts, sc in next 6 sts.",
            "Working in the free loops of Rnd 1, sc in each st.",
            None,
        ),
        (_IN_BACK_LOOPS, "Working in the remaining loops, ch 1, sc in each st, join.", None),
    ],
)
def test_loops_that_a_round_has_left(second: str, words: str, made: int | None) -> None:
    """The loops of a numbered round are known where the round on it took the other one of every stitch."""
    text = f"{_HEAD}Rnd 1: 12 sc in magic ring, join. (12)\n{second}\nRnd 3: {words}\n"
    assert counts(check(text))[2] == made


@pytest.mark.parametrize(
    "words",
    [
        "sc in each st, then go back and close the gaps.",
        "sc in each st, stopping short of the border.",
        "sc in each st (2 in the point).",
        "sc in each st (twice in the first).",
        "sc in each st [1 fewer in the middle].",
        "sc in each st, missing the dips.",
        "*sc in next st, ch 3; rep from * across, but for the last one.",
        "[sc, ch 1, skip 1] 3 times, the reverse, turn.",
        "3 shells evenly.",
    ],
)
def test_what_alters_a_row_is_not_passed_over(words: str) -> None:
    """Words that take away from a row, add to it or turn it about leave it not recomputed."""
    assert counts(check(_second_row(f"Ch 1, turn, {words}"))) == [12, None]


def test_so_many_evenly_into_so_many() -> None:
    """ "18 sc evenly into these 12 sts" are eighteen, not eighteen in each."""
    assert counts(check(_second_row("Ch 1, turn, 18 sc evenly into these 12 sts."))) == [12, 18]


def test_a_chain_between() -> None:
    """ "With a ch between" puts one chain between two stitches of a run."""
    report = check(_second_row("Ch 1, turn, sc in each st, with a ch between."))
    assert (counts(report)[1], spaces(report)[1]) == (12, {1: 11})


_PANEL = f"{_HEAD}Row 1: Ch 13, sc in 2nd ch from hook and in each ch across. (12)\nRow 2: Ch 1, turn, 2 sc in first st, sc in each st. (13)\n"


@pytest.mark.parametrize(
    ("words", "last"),
    [
        ("Rep Row 2 in the following color sequence: 2 rows B, 1 row C, 2 rows A.", 18),
        ("Rep Row 2, working in this stripe order: *1 row B, 1 row A; rep from * once more.", 17),
        ("Rep Row 2 in stripes of 2 rows B and 2 rows A.", 17),
        ("Rep Row 2, changing to B in last sc.", 14),
        ("Rep Row 2 in the following sequence: 2 rows sc, 2 rows hdc.", None),
        ("Rep Row 2, alternating sc and dc.", None),
        ("Rep Row 2, changing to hdc in last 3 rows.", None),
        ("Rep Row 2 in the same color 5 more times.", 18),
        ("Rep Row 2 in color B, 3 more times.", 16),
        ("Rep Row 2 in the same colors until you have 20 sc.", 20),
        ("Row 3: Rep Row 2, changing colors every 2 rows.", 14),
        ("Row 3: Rep Row 2, keeping to pattern.", 14),
        ("Row 3: Rep Row 2, continuing for 6 rows.", None),
        ("Row 3: Rep Row 2, continuing until 2 sts remain.", None),
        ("Row 3: Rep Row 2, keeping last 2 sts unworked.", None),
        ("Rows 3-4: Rep Row 2, alternating with Row 1.", None),
    ],
)
def test_rows_again_in_stripes(words: str, last: int | None) -> None:
    """An order of colours tells how many rows are worked again; other stitches than those called for are not passed over."""
    report = check(f"{_PANEL}{words}\nNext row: Ch 1, turn, sc in each st across.\n")
    assert counts(report)[-1] == last


def test_order_of_stripes_against_the_label() -> None:
    """The rows that an order of stripes comes to are those of the label, or the label is wrong."""
    words = "Rep Row 2 in the following stripe sequence: 2 rows B, 2 rows A."
    assert counts(check(f"{_PANEL}Rows 3-6: {words}\n")) == [12, 13, 14, 15, 16, 17]
    assert not corrections(check(f"{_PANEL}Rows 3-6: {words}\n"))
    assert "range-length-differs" in [rule for rule, _ in corrections(check(f"{_PANEL}Rows 3-7: {words}\n"))]


@pytest.mark.parametrize("words", ["join yarn in first ch", "join B with sl st in first ch"])
def test_foundation_edge_told_in_a_line_of_its_own(words: str) -> None:
    """Yarn joined on the chain's other side, in a line above the first row there, begins that row on it."""
    text = (
        f"{_HEAD}Ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12)\nRow 2: Ch 1, turn, 2 sc in each sc across. (24)\n"
        "Rep Row 2 until piece measures 10 cm. Fasten off.\n\nTRIM\n"
        f"With RS facing and working along the opposite side of the foundation ch, {words}.\n"
        "Row 1: Ch 1, *sc in next 3 ch, ch 2; rep from * across. (12 sc, 4 ch-2 sps)\n"
    )
    assert outcomes(check(text))[-1] == "agrees"


def test_yarn_joined_to_the_foundation() -> None:
    """ "Join yarn to first ch of foundation ch" begins a row on the chain's other side."""
    text = f"{_PANEL}Fasten off.\n\nTRIM\nJoin yarn to first ch of foundation ch.\nRow 1: Ch 1, sc in each ch across. (12)\n"
    assert counts(check(text))[-1] == 12


def test_outer_points_are_corners() -> None:
    """ "Working 3 sc in each outer point": where a star's round turns."""
    text = f"{_HEAD}Rnd 1: 5 sc in magic ring, join. (5)\nRnd 2: Ch 1, (sc, ch 2, sc) in each st, join. (10 sc, 5 ch-2 sps)\nRnd 3: Ch 1, sc in each st around, working 3 sc in each outer point, join. (25)\n"
    assert outcomes(check(text)) == ["agrees"] * 3


_TILES = (
    f"{_HEAD}Row 1: Ch 6, dc in 4th ch from hook and in next 2 ch. (1 tile)\n"
    "Row 2: Ch 6, turn, dc in 4th ch from hook and in next 2 ch, sl st in ch-3 sp of tile below, ch 3, 3 dc in same sp. (2 tiles)\n"
    "Row 3: Ch 6, turn, dc in 4th ch from hook and in next 2 ch, *sl st in next ch-3 sp, ch 3, 3 dc in same sp; rep from * across. (3 tiles)\n"
)


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Rows 4-5: Work as Row 3, increasing one tile in every row.", [12, 15]),
        ("Rows 4-5: Rep Row 3, with one more tile each row.", [12, 15]),
        ("Rows 4-5: Rep Row 3, making 2 tiles more in every row.", [None, None]),
        ("Rows 4-5: Rep Row 3, making one tile fewer in every row.", [None, None]),
        ("Rows 4-5: Rep Row 3, increasing as you like.", [None, None]),
    ],
)
def test_growth_told_of_rows_worked_again(words: str, made: list[int | None]) -> None:
    """How rows worked again grow is held against what they make; where that is another thing they are not counted."""
    assert counts(check(_TILES + words + "\n"))[3:] == made


_GRANNY = (
    f"{_HEAD}Ch 4, sl st in first ch to form a ring.\n"
    "Rnd 1: Ch 3 (counts as dc throughout), 2 dc in ring, [ch 2, 3 dc in ring] 3 times, ch 2, join with sl st in top of ch 3. (12 dc)\n"
    "Rnd 2: Sl st in next 2 dc and in corner sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp, [ch 1, (3 dc, ch 2, 3 dc) in next corner] 3 times, ch 1, join. (24 dc)\n"
    "Rnd 3: Sl st in next 2 dc and in corner sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp, *ch 1, 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next corner; rep from * twice more, ch 1, 3 dc in next ch-1 sp, ch 1, join. (36 dc)\n"
)


def test_one_more_group_along_each_side() -> None:
    """A granny square's round worked again with one more group along each side has one for every space of the side."""
    words = "Rnds 4-5: Work as for Rnd 3, with one more group along each side in every round. (60 dc)\n"
    report = check(_GRANNY + words)
    assert counts(report) == [12, 24, 36, 48, 60]
    assert spaces(report)[-1] == {2: 4, 1: 16}
    assert not corrections(report)


def test_more_groups_than_there_is_room_for() -> None:
    """Two more groups along each side do not come out of a round with one space more: nothing is guessed."""
    words = "Rnd 4: Work as for Rnd 3, with two more groups along each side in every round.\n"
    assert counts(check(_GRANNY + words))[3] is None


@pytest.mark.parametrize(
    ("words", "made"),
    [
        (
            "Crochet behind the petals: *ch 3, 1 sc around the post of the next dc of the 1st rnd from behind; repeat from * 4 more times.",
            5,
        ),
        (
            "Working in back of petals, ch 1, BPsc around first dc of Rnd 1, ch 3, *BPsc around next dc of Rnd 1, ch 3; rep from * around, join.",
            5,
        ),
        ("Working behind petals, *ch 3, sc around the back of next dc of Rnd 1; rep from * around.", 5),
        ("Work behind the petals, *ch 3, sc around next dc; rep from * 4 more times.", None),
    ],
)
def test_loops_behind_petals(words: str, made: int | None) -> None:
    """Loops behind a rose's petals go round the posts of the round named; where none is named it is not guessed."""
    text = (
        f"{_HEAD}Ch 5, join with sl st to form ring.\n"
        "Rnd 1: Ch 5 (counts as dc, ch 2), *dc in ring, ch 2; rep from * 3 more times, join with sl st in 3rd ch of ch-5. (5 dc, 5 ch-2 sps)\n"
        "Rnd 2: Ch 1, (sc, 3 dc, sc) in each ch-2 sp around, join with sl st in first sc. (25 sts)\n"
        f"Rnd 3: {words}\n"
    )
    report = check(text)
    assert counts(report)[2] == made
    assert made is None or spaces(report)[2] == {3: 5}


def _missing(materials: str) -> set[str]:
    """What the report says is missing of a pattern with these materials."""
    text = f"Fennel Mat\n\nUS terms\n\n{materials}\n\nMAT\nRnd 1: 12 sc in magic ring. (12)\n"
    said = [finding.message for finding in check(text).findings if finding.rule == "section-missing"]
    return {what for what in ("hook", "gauge") for message in said if what in message}


@pytest.mark.parametrize("hook", ["crochet hook no. 2.5", "Steel crochet hook 1·25", "hook, size 3,5"])
def test_hook_by_a_number_with_a_fraction(hook: str) -> None:
    """Hooks numbered with a fraction are numbered by millimetres; whole numbers are of some country's scale."""
    assert "hook" not in _missing(f"Materials: cotton yarn, 50 g; {hook}")
    assert "hook" in _missing("Materials: cotton yarn, 50 g; crochet hook no. 7")


def test_gauge_without_its_name() -> None:
    """ "12 sts = 10 cm" is a gauge, whatever stands around it; "12 sts = 1 repeat" is none."""
    assert "gauge" not in _missing("chunky yarn, 40 m | 6.5 mm hook | 12 sts = 10 cm")
    assert "gauge" in _missing("chunky yarn, 40 m | 6.5 mm hook | 12 sts = 1 repeat")


def test_rows_go_on_from_a_printed_count_with_bobbles() -> None:
    """Behind a row with a stitch too many the print is gone on from, though it counts bobbles beside other stitches."""
    rows = (
        "Bobble: (Yo, insert hook in st, yo, pull up a loop, yo, pull through 2 loops) 4 times in same st, yo, pull through all loops.\n\n"
        "PANEL\nRow 1: Ch 13, sc in 2nd ch from hook and in each ch across. (12)\n"
        "Row 2: Ch 1, turn, sc in first 5 sts, bobble in next st, sc in last 7 sts. (11 sc, 1 bobble)\n"
        "Row 3: Ch 1, turn, sc in each st across. (12)\n"
    )
    report = check(f"Fennel Panel\n\nUS terms\n\nSpecial stitches\n{rows}")
    assert counts(report)[2] == 12
    assert len(corrections(report)) == 1


@pytest.mark.parametrize(
    ("chain", "last", "made"),
    [
        ("Ch 4", "tr in last dc", ({"tr": 2, "dc": 8}, {})),
        ("Ch 4", "(dc, tr) in last dc", ({"tr": 2, "dc": 9}, {})),
        ("Ch 4", "dc in last dc", ({"dc": 10}, {1: 1})),
        ("Ch 3", "tr in last dc", ({"dc": 9, "tr": 1}, {})),
        ("Ch 5", "tr in last dc", ({"dc": 9, "tr": 1}, {2: 1})),
    ],
)
def test_turning_chain_is_like_the_edge_that_it_is_as_tall_as(chain: str, last: str, made: tuple) -> None:
    """Where nothing is said of it, a chain just as tall as the taller stitch that ends the row stands for such a stitch."""
    text = (
        "Samphire Shawlette\nUS terms\n\nSHAWLETTE\nCh 12.\nRow 1: Dc in 4th ch from hook and in each ch across. (10 dc)\n"
        f"Row 2: {chain}, turn, dc in next 8 dc, {last}.\n"
    )
    row = mades(check(text))[-1]
    assert (dict(row.by_kind), dict(row.spaces)) == made
