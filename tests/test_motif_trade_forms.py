"""Wordings met in motifs, toys, lace, blankets and edgings: labels, counts, places and remarks in further house styles."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, line_of, mades, outcomes

_TERMS = "US terms\n\n"


def _strip(rows: str, chain: int = 11) -> str:
    return f"Fennel Strip\n{_TERMS}STRIP\nCh {chain}.\n{rows}\n"


@pytest.mark.parametrize(
    "label",
    ["Row (2):", "For Row 2,", "Row 2*:", "Row 2†:"],
)
def test_further_labels(label: str) -> None:
    """A number in brackets, "For Row 2,", a footnote's sign and the number of rows said again are all labels."""
    report = check(
        _strip(
            f"Row 1: Sc in 2nd ch from hook and in each ch across. (10)\n{label} ch 1, turn, sc in each sc across. (10)"
        )
    )
    assert outcomes(report) == ["agrees", "agrees"]


def test_range_with_its_number_of_rows() -> None:
    """ "4 - 8 rows = 5 rows:" stands for five rows."""
    text = "1 row: Sc in 2nd ch from hook and in each ch across. (10)\n2 - 3 rows = 2 rows: Ch 1, turn, sc in each sc across. (10)\n4 row: Ch 1, turn, 2 sc in each sc across. (20)"
    assert counts(check(_strip(text))) == [10, 10, 10, 20]


def test_for_a_row_as_a_remark() -> None:
    """ "For Row 2, use the smaller hook" labels no row."""
    text = "Row 1: Sc in 2nd ch from hook and in each ch across. (10)\nFor Row 2, use the smaller hook.\nRow 2: Ch 1, turn, sc in each sc across. (10)"
    assert counts(check(_strip(text)))[0] == 10
    assert outcomes(check(_strip(text))).count("agrees") == 2


@pytest.mark.parametrize(
    "count", ["<{}>", "<{} sc>", "~ {} sts", "/{}", "/{} sc", "» {} sc", "~{} sc~", "~{} sc: {} each side~"]
)
def test_counts_set_apart(count: str) -> None:
    """Signs that set a count apart are read, and a wrong count in them is found."""
    for stated, outcome in ((10, "agrees"), (12, "differs")):
        end = count.replace("{}", str(stated), 1).replace("{}", "5")
        row = f"Row 1: Sc in 2nd ch from hook and in each ch across, turn {end}"
        assert outcomes(check(_strip(row)))[0] == outcome, end


def test_wave_as_a_repeat_mark() -> None:
    """A "~" that other words repeat from stays the mark of a repeat."""
    row = "Row 1: Sc in 2nd ch from hook and in each ch across. (10)\nRow 2: Ch 1, turn, ~sc in next sc, 2 sc in next sc; rep from ~ across. (15)"
    assert outcomes(check(_strip(row))) == ["agrees", "agrees"]


_EAR = f"Ear\n{_TERMS}EAR\nRnd 1: 5 sc in magic ring. (5)\nRnd 2: 2 sc in each st around. (10)\n"


@pytest.mark.parametrize(
    ("words", "stitches"),
    [
        ("Row 3: 5 sc through both layers. (5)", 5),
        ("Row 3: Sc in next 5 sts through both layers. (5)", 5),
        ("Rnd 3: Fold flat, sc across through both layers.", 5),
        ("Rnd 3: Sc across through both thicknesses. (5)", 5),
        ("Rnd 3: Sc in each st around through both layers. (10)", 10),
        ("Rnd 3: Sc in next 3 sts, sc in next 4 sts through both layers, sc in next 3 sts. (10)", 10),
    ],
)
def test_through_both_layers(words: str, stitches: int) -> None:
    """A stitch through both layers of a round that is folded takes two of its places; two pieces are not folded."""
    report = check(_EAR + words + "\n")
    assert counts(report)[-1] == stitches
    assert not [rule for rule, _ in all_findings(report, ("correction", "query")) if rule != "gauge-missing"]


def test_folded_round_short_of_stitches() -> None:
    """Of a folded round four of five pairs worked leave places over, and the words do not say so."""
    report = check(_EAR + "Row 3: Fold flat, 4 sc through both layers. (4)\n")
    assert ("places-left-over", 7) in all_findings(report)


_SQUARE = f"Square\n{_TERMS}SQUARE\nCh 4, join to form ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join. (12 dc, 4 ch-2 sps)\n"


@pytest.mark.parametrize(
    ("round_", "stitches"),
    [
        ("Ch 1, sc in same st, *sc each dc along, 3 dc into 2-ch sp; rep from * around, join.", 24),
        ("Ch 1, *sc in each dc across, 3 dc in next 2-ch sp; rep from * around, join.", 24),
        ("Ch 1, [sc in each dc across, (sc, ch 2, sc) in next ch-2 sp] 4 times, join.", 20),
    ],
)
def test_sides_of_a_square_in_a_repeat(round_: str, stitches: int) -> None:
    """Within a repeat "each dc across" is one side, up to the space that the next clause goes into."""
    report = check(f"{_SQUARE}Rnd 2: {round_}\n")
    assert counts(report) == [12, stitches]
    assert not [rule for rule, _ in all_findings(report) if rule.startswith(("repeat", "places"))]


def test_side_through_smaller_spaces() -> None:
    """A run that takes in ch-1 spaces ends at the longer space of the corner."""
    text = f"{_SQUARE}Rnd 2: Ch 4 (counts as dc, ch 1), sk next dc, dc in next dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, *dc in next dc, ch 1, sk next dc, dc in next dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * around, join. (24 dc, 4 ch-1 sps, 4 ch-2 sps)\nRnd 3: Ch 1, *sc in each dc and ch-1 sp across, 3 sc in next ch-2 sp; rep from * 3 more times, sc in last 2 dc, join.\n"
    assert counts(check(text)) == [12, 24, 40]


def test_last_pass_with_another_number() -> None:
    """ "ending last rep with 2 hdc instead of 3" gives the last pass its own number."""
    text = f"Ring\n{_TERMS}RING\nRnd 1: 12 sc in magic ring, join. (12)\nRnd 2: Ch 1, *hdc in next st, 3 hdc in next st; rep from * around, ending last rep with 2 hdc instead of 3, join. (STATED)\n"
    assert outcomes(check(text.replace("STATED", "23")))[1] == "agrees"
    assert outcomes(check(text.replace("STATED", "24")))[1] == "differs"


@pytest.mark.parametrize(
    ("row", "stitches"),
    [
        ("As Row 2 in MC.", 10),
        ("Do Row 2 again.", 10),
        ("Work Row 2 again.", 10),
        ("Repeat Row 2 again.", 10),
        ("Ch 1, turn, sc in all but last 2 sts.", 8),
        ("Ch 1, turn, sc in all sts but the last 2 sts.", 8),
        ("Ch 1, turn, sc in all except the last st.", 9),
    ],
)
def test_rows_again_and_all_but_some(row: str, stitches: int) -> None:
    """Rows called for once more, in a colour, and runs over all but the last stitches."""
    text = "Row 1: Sc in 2nd ch from hook and in each ch across. (10)\nRow 2: Ch 1, turn, sc in each sc across. (10)\n"
    report = check(_strip(f"{text}Row 3: {row}"))
    assert counts(report) == [10, 10, stitches]


def test_chain_always_a_stitch() -> None:
    """ "The beg ch-3 is always a dc" settles the chain: nothing is asked, and the counts follow."""
    text = f"Bag\n{_TERMS}Notes\nThe beg ch-3 is always a dc.\n\nBAG\nCh 4, join to form ring.\nRnd 1: Ch 3, 11 dc in ring, join.\nRnd 2: Ch 3, dc in same st, 2 dc in each dc around, join.\n"
    report = check(text)
    assert counts(report) == [12, 24]
    assert not [rule for rule, _ in all_findings(report) if rule == "turning-chain-unsaid"]


def test_row_ends_around_a_cuff() -> None:
    """ "in each row end around the cuff" works into every row end of the tube."""
    text = f"Cuff\n{_TERMS}CUFF\nCh 8.\nRow 1: Sc in 2nd ch from hook and in each ch across. (7)\nRows 2-20: Ch 1, turn, sc in each sc across. (7)\nSew last row to foundation ch.\n\nHAND\nRnd 1: Ch 1, sc in each row end around the cuff, join. (20)\n"
    assert outcomes(check(text))[-1] == "agrees"


def test_pivot_before_row_ends() -> None:
    """ "pivot and work 6 sc evenly down the row ends" is work behind a movement."""
    text = "Row 1: Sc in 2nd ch from hook and in each ch across. (10)\nRow 2: Ch 1, turn, sc in each sc across, pivot and work 6 sc evenly down the row ends. (16)"
    assert outcomes(check(_strip(text))) == ["agrees", "agrees"]


@pytest.mark.parametrize(
    "row",
    [
        "Skip first bar. TSS in each bar across. RP.",
        "Skip first bar, Tss in each bar to last bar, Tss in last bar. Return pass.",
    ],
)
def test_bars_of_a_tunisian_row(row: str) -> None:
    """ "Bar" alone is a vertical bar in Tunisian work, and the list of its stitches is known by its heading."""
    text = f"Cloth\n{_TERMS}Tunisian abbreviations\nTSS = Tunisian simple stitch\nTss2tog = Tunisian simple stitch 2 together\nRP = return pass\nch = chain\n\nCLOTH\nCh 12.\nRow 1: Pull up a loop in 2nd ch from hook and in each ch across. RP. (12 loops)\nRow 2: {row} (12 loops)\nRow 3: Skip first bar, Tss2tog, Tss in each bar to end. RP. (11 loops)\n"
    report = check(text)
    assert outcomes(report) == ["agrees"] * 3
    assert not [rule for rule, _ in corrections(report) if rule == "abbreviation-undefined"]


def test_behind_petals() -> None:
    """ "Working behind petals," works nothing; what follows is read."""
    text = f"Flower\n{_TERMS}FLOWER\nRnd 1: 12 sc in magic ring, join. (12 sc)\nRnd 2: *Ch 5, skip 2 sc, sl st in next sc; rep from * around. (4 ch-5 sps)\nRnd 3: (Sc, hdc, 3 dc, hdc, sc) in each ch-5 sp around. (28)\nRnd 4: Working behind petals, *sl st between next 2 petals, ch 6; rep from * around. (4 ch-6 sps)\n"
    report = check(text)
    assert counts(report)[:3] == [12, 0, 28]
    assert not [
        line
        for rule, line in all_findings(report)
        if rule == "not-understood" and line == line_of(text, "Working behind")
    ]


def test_last_stitch_before_the_turning_chain() -> None:
    """ "dc in last dc and in top of t-ch": the last dc is the one before the chain that the same words name."""
    text = f"Reeds\n{_TERMS}Special stitches\nV-st: (dc, ch 1, dc) in st or sp indicated.\nShell: 5 dc in st or sp indicated.\n\nREEDS\nCh 18.\nRow 1: Dc in 4th ch from hook (3 skipped chs count as dc), *sk 2 ch, V-st in next ch, sk 2 ch, shell in next ch; rep from * once more, dc in last 2 ch. (18 dc)\nRow 2: Ch 3 (counts as dc), turn, dc in next dc, *V-st in center dc of next shell, shell in ch-1 sp of next V-st; rep from * across, dc in last dc and in top of t-ch. (18 dc)\n"
    report = check(text)
    assert outcomes(report) == ["agrees", "agrees"]
    assert not [rule for rule, _ in corrections(report) if rule == "places-run-out"]


_WOMBAT = f"""Wombat
{_TERMS}LEG 1
Rd 1: 6 sc in MR [6]
Rd 2: inc all [12]
Rd 3: (3 sc, inc) 3 times [15]
Rds 4 – 6: sc all [15]
FO.

LEG 2
Rds 1 – 6: same as Leg 1 [15]
Do not FO.

BODY
Rd 7: BRIDGE [34]
Rd 8: sc all [34]
"""


@pytest.mark.parametrize(
    "bridge",
    [
        "ch 2, sc in 15 sts of leg 1, sc in 2 ch, sc in 15 sts of leg 2, sc in other side of 2 ch",
        "ch 2, sc around leg 1, sc in next 2 ch, sc around leg 2, sc in next 2 ch",
    ],
)
def test_body_begun_on_the_second_leg(bridge: str) -> None:
    """ "All" is every stitch, "same as Leg 1" that leg's rounds, and the chain between the legs is worked on both sides."""
    report = check(_WOMBAT.replace("BRIDGE", bridge))
    assert counts(report) == [6, 12, 15, 15, 15, 15, 6, 12, 15, 15, 15, 15, 34, 34]
    assert not [
        rule for rule, _ in all_findings(report, ("correction", "query")) if rule.startswith(("places", "not-"))
    ]


_ROSE = f"Rose\n{_TERMS}ROSE\nRnd 1: Ch 6 (counts as dc, ch 3), [dc in ring, ch 3] 5 times, sl st in 3rd ch of beg ch-6. (6 dc, 6 ch-3 sps)\nRnd 2: Ch 1, (sc, hdc, 3 dc, hdc, sc) in each ch-3 sp around, sl st in first sc. (42)\n".replace(
    "ROSE\n", "ROSE\nCh 5, sl st in first ch to form a ring.\n"
)


@pytest.mark.parametrize(
    ("words", "stitches", "loops"),
    [
        ("Ch 1, *BPsc around next dc of Rnd 1, ch 4; rep from * around, join.", 6, 6),
        ("Ch 1, working behind petals, *sc around post of next dc of Rnd 1, ch 4; rep from * around, join.", 6, 6),
        ("*Sl st in next dc of Rnd 1, ch 4; rep from * around.", 0, 6),
        ("Sl st in next dc of Rnd 1, *ch 4, sl st in next dc of Rnd 1; rep from * around, ch 4, join.", 0, 6),
        ("Ch 1, [BPsc around next dc of Rnd 1, ch 4] 6 times, join.", 6, 6),
        ("Ch 1, *BPsc around next dc of Rnd 1, ch 4; rep from * 5 more times, join.", 6, 6),
        ("Sl st in next dc of Rnd 1, *ch 4, sl st in next dc of Rnd 1; rep from * around.", None, None),
        ("Ch 1, *BPsc around next tr of Rnd 1, ch 4; rep from * around, join.", None, None),
    ],
)
def test_loops_behind_petals(words: str, stitches: int | None, loops: int | None) -> None:
    """A repeat whose stitches all go into an earlier round runs as often as that round has places."""
    report = check(f"{_ROSE}Rnd 3: {words}\n")
    made = mades(report)[-1]
    assert (made.stitches if made else None) == stitches
    assert (sum(made.spaces.values()) if made else None) == loops
    assert not [rule for rule, _ in all_findings(report) if rule in ("places-left-over", "repeat-does-not-fit")]


@pytest.mark.parametrize(
    "key", ["JS = joining stitch, a standing sc\nES = ending stitch, a sc", "JS: joining st\nES: End Stitch"]
)
@pytest.mark.parametrize("count", ["10 sts", "10 sc", "10"])
def test_edge_stitches_of_an_overlay_row(key: str, count: str) -> None:
    """Joining and ending stitches are one stitch each, in one place, of the row's own sort where no other is named."""
    text = f"Tile\n{_TERMS}Key\nsc = single crochet\nch = chain\n{key}\n\nTILE\nCh 11.\nRow 1: sc in 2nd ch from hook and in each ch across. (10)\nRow 2: JS, 8 sc, ES. ({count})\nRow 3: JS in first st, sc to last st, ES. ({count})\n"
    assert outcomes(check(text)) == ["agrees"] * 3
    assert outcomes(check(text.replace("8 sc", "7 sc")))[1] == "differs"


def test_a_group_omitted_in_the_last_pass() -> None:
    """ "omitting last (2 dc, ch 2, 2 dc)" takes that whole group out of the last pass."""
    text = f"{_SQUARE}Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, *ch 3, sk 3 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * 3 more times, omitting last (2 dc, ch 2, 2 dc), join.\n"
    report = check(text)
    made = mades(report)[-1]
    assert (made.stitches, made.spaces) == (16, {2: 4, 3: 4})


def test_forward_pass_in_the_label() -> None:
    """ "Row 2, FwP:" is Row 2, worked on the forward pass."""
    text = f"Cloth\n{_TERMS}CLOTH\nFoundation: ch 9\nRow 1, FwP: insert hook in 2nd ch from hook, pull up a loop, pull up a loop in each remaining ch. 9 loops on hook. RP.\nRow 2, FwP: skip first vertical bar, *tps in next st, tss in next st; rep from * to last 2 sts, tps in next st, tss in last st. 9 loops on hook. RP.\nRows 3-4: repeat Row 2.\n"
    report = check(text)
    assert counts(report)[-4:] == [9, 9, 9, 9]


def test_talk_below_a_count() -> None:
    """A line in small letters below "=12" is talk of its own, and no unit of the count."""
    text = f"Ball\n{_TERMS}BALL\nrnd 1 – 6 sc in a magic loop =6\nrnd 2 – inc in every st =12\nstuff firmly\nrnd 3 – dec x 6 =6\n"
    assert outcomes(check(text)) == ["agrees"] * 3


@pytest.mark.parametrize(
    "row",
    [
        "S c in 2nd st from hook and in each remaining st of ch.",
        "S c in 2nd st from hook, s c in next 4 sts of ch, s c in each st of chain.",
        "S c in 2nd ch from hook, s c in each of next 5 ch, s c in last 4 sts of ch.",
        "S c in 2nd ch from hook and in each rem ch of foundation ch.",
    ],
)
def test_stitches_of_the_chain(row: str) -> None:
    """ "St of ch" is a chain of the one that the piece is begun on."""
    report = check(_strip(f"1st row: {row} (10 s c)"))
    assert outcomes(report) == ["agrees"]
    assert not corrections(report)


@pytest.mark.parametrize("form", ["Rnd {i} | MC | {w} | {c} sc", "Rounds {i}) {w} ({c} sts)"])
def test_colours_in_a_cell_and_brackets_behind_numbers(form: str) -> None:
    """A colour in a column of its own, and numbers with a bracket behind them, ranges too."""
    rows = [("1", "6 sc in magic ring", 6), ("2", "2 sc in each st", 12), ("3", "sc in each st", 12)]
    text = "\n".join(form.format(i=i, w=w, c=c) for i, w, c in rows)
    if "|" not in form:
        text += "\nRounds 4)–6) sc in each st. (12 sts)\nRound 7) *dec* 6 times. (6 sts)"
    report = check(f"Ball\n{_TERMS}BALL\n{text}\n")
    assert set(outcomes(report)) == {"agrees"}
    assert len(outcomes(report)) == (3 if "|" in form else 7)


def test_round_begun_between_any_two() -> None:
    """A standing stitch between any two begins the round in a gap, and each gap is a space there."""
    text = f"Lantern\n{_TERMS}LANTERN\nRnd 1: 12 dc in magic ring, join. [12 dc]\nRnd 2: Standing dc in sp between any two dc, dc in same sp, 2 dc in each sp around, join. [STATED dc]\n"
    assert outcomes(check(text.replace("STATED", "24")))[-1] == "agrees"
    assert outcomes(check(text.replace("STATED", "26")))[-1] == "differs"


def test_rule_for_chains_within_a_row() -> None:
    """A bracket in the first round that names the chain and says "throughout" is a rule for all."""
    text = f"Hexie\n{_TERMS}HEXIE\nRnd 1: 12 dc into magic circle (ch 3 counts as first dc throughout). Close with sl st. (12 dc)\nRnd 2: Ch 3, dc in same st, 2 dc in each st around. Close with sl st. (24 dc)\n"
    report = check(text)
    assert outcomes(report) == ["agrees", "agrees"]
    assert not [rule for rule, _ in all_findings(report) if rule == "turning-chain-unsaid"]


@pytest.mark.parametrize("heading", ["Tentacle (8 in all):", "TENTACLE (8 in all)", "Tentacle (8 needed)"])
def test_headings_with_how_many(heading: str) -> None:
    """ "(8 in all)" is how many of a piece are made, and no length; the piece begins on its own chain."""
    text = f"Octavia\n{_TERMS}Head:\n1. 6 sc in a magic circle (6)\n2. Inc around (12)\n3. Sc around (12)\n\n{heading}\n1. Ch 21. 2 sc in 2nd ch from hook and in each ch across (40)\n"
    report = check(text)
    assert counts(report) == [6, 12, 12, 40]
    assert not [rule for rule, _ in all_findings(report) if rule == "places-left-over"]


def test_names_spelt_out_with_their_short_form() -> None:
    """ "1 double crochet (dc)" is one stitch, and "36 chain (ch)" is one chain."""
    text = "Bookmark\nUK terms\n\nBOOKMARK\nMake 36 chain (ch).\nRound 1: 1 double crochet (dc) into 2nd ch from hook, 1 dc into each of next 33 ch, 3 dc into last ch, then working along other side of foundation ch, 1 dc into each of next 33 ch, 2 dc into next ch, join with a slip stitch (ss) to first dc. (72 dc)\nRound 2: 1 ch, *miss 1 dc, 5 treble (tr) into next dc, miss 1 dc, ss into next dc; repeat from * 17 times more. Fasten off. (90 tr)\n"
    report = check(text)
    assert outcomes(report) == ["agrees", "agrees"]
    assert not corrections(report)


def test_rows_along_row_ends() -> None:
    """ "Work 8 sc along row ends" makes its number, along an edge that is named or not."""
    text = f"Cabin\n{_TERMS}CENTRE\nCh 9.\nRow 1. Sc in second ch from hook, sc in remaining 7 ch. 8 sc.\nRows 2 thru 8. Ch 1, turn. Sc across. 8 sc.\n\nLOG 1\nRow 1. Ch 1, rotate work a quarter turn. Work 8 sc along row ends. 8 sc.\nRow 2. Ch 1, turn. Sc across. 8 sc.\n\nLOG 2\nRow 1. Ch 1, rotate work. 2 sc along row ends of Log 1, 8 sc along side of centre. 10 sc.\n"
    assert set(outcomes(check(text))) == {"agrees"}


@pytest.mark.parametrize(
    "row",
    [
        "With A sc 3, with B sc 4, with A sc 3.",
        "A: 3 sc, B: 4 sc, A: 3 sc.",
        "3 sc A, 4 sc B, 3 sc A.",
        "(A) 3 sc, (B) 4 sc, (A) 3 sc.",
        "Sc 3 in A, sc 4 in B, sc 3 in A.",
        "3 sc in A, 4 sc in B, 3 sc in A.",
        "[With A sc 1, with B sc 1] 5 times.",
    ],
)
def test_colours_within_a_row(row: str) -> None:
    """The colours of a tapestry row change no count, wherever they stand beside its stitches."""
    text = f"Fob\n{_TERMS}Yarn in two colours: A (navy), B (cream)\n\nFOB\nWith A, ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. Turn. (10)\nRow 2: Ch 1. {row} Turn. (STATED)\n"
    assert outcomes(check(text.replace("STATED", "10")))[-1] == "agrees"
    assert outcomes(check(text.replace("STATED", "11")))[-1] == "differs"


def test_notes_before_stitches_are_no_count() -> None:
    """Work behind a bracket that is not understood is never taken for the row's printed count."""
    text = f"Fob\n{_TERMS}FOB\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. Turn. (10)\nRow 2: Ch 1. (Y) 1 sc, (Z) 8 sc, (Y) 1 sc. Turn. (10)\n"
    report = check(text)
    assert counts(report)[-1] in (10, None)
    assert not corrections(report) or outcomes(report)[-1] == "not-recomputed"


@pytest.mark.parametrize(
    ("words", "stitches"),
    [
        ("Dc in each dc to 1 st before ch-2 sp, sk next dc, 3 dc in ch-2 sp, sk next dc, dc in each dc to end", 11),
        ("Dc in each dc to 2 dc before next ch-2 sp, sk 2 dc, 5 dc in ch-2 sp, sk 2 dc, dc in each dc to end", 11),
        (
            "*Dc in next dc, ch 1, sk next dc*; rep from * to * to 1 st before ch-2 sp, dc in next dc, 2 dc in ch-2 sp, dc in each st to end",
            10,
        ),
    ],
)
def test_runs_that_stop_short_of_a_space(words: str, stitches: int) -> None:
    """ "To 1 st before ch-2 sp" leaves that stitch to the next words."""
    text = f"Shawlette\n{_TERMS}SHAWL\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Dc in next 5 sc, ch 2, dc in next 5 sc, turn. (10 dc)\nRow 3: {words}, turn.\n"
    report = check(text)
    assert counts(report)[1:] == [10, stitches]


def test_fans_between_and_counts_between_dashes() -> None:
    """ "All fans: 7 dc" defines the fan, and "– 31 sc – ch 1, turn." prints a count before the next row's chain."""
    text = f"Runner\n{_TERMS}Special stitches\nAll fans: 7 dc.\n\nRUNNER\nCh 20.\nRow 1: Sc in 2nd ch from hook and in each ch across – STATED sc – ch 1, turn.\nRow 2: Sc in first sc, *sk 2 sc, fan in next sc, sk 2 sc, sc in next sc* 3 times – 3 fans, 4 sc – ch 3, turn.\nRow 3: 3 dc in first sc (half fan made), *sc in 4th dc of next fan, fan in next sc* twice, sc in 4th dc of next fan, 4 dc in last sc – ch 1, turn.\n"
    report = check(text.replace("STATED", "19"))
    assert counts(report) == [19, 25, 25]
    assert outcomes(report) == ["agrees", "agrees", "not-stated"]
    assert outcomes(check(text.replace("STATED", "20")))[0] == "differs"


@pytest.mark.parametrize("ending", ["dc in 3rd ch of turning ch-6", "dc in last dc", "1 dc in last st"])
def test_ending_like_a_stitch_of_the_pass(ending: str) -> None:
    """The last pass stops where its ending is worked instead, and keeps a dc that is only like the ending's."""
    text = f"Scarf\n{_TERMS}SCARF\nCh 18.\nRow 1: Sc in 2nd ch from hook, *ch 3, sk 3 chs, dc in next ch, ch 3, sk 3 chs, sc in next ch; rep from * across, turn: 3 sc, 2 dc and 4 ch-3 sps.\nRow 2: Ch 6 (counts as dc and ch 3), *sc in next dc, ch 3, dc in next sc, ch 3; rep from * across, ending last rep with dc in last sc, turn: 3 dc, 2 sc, 4 ch-3 sps.\nRow 3: Ch 3 (counts as dc), *3 dc in next ch-3 sp, dc in next sc, 3 dc in next ch-3 sp, dc in next dc; rep from * across, ending with {ending}, turn: 17 dc.\n"
    report = check(text)
    assert outcomes(report) == ["agrees"] * 3
    assert not corrections(report)


def test_spikes_over_the_stitch_below_which_they_lie() -> None:
    """ "Spike sc into Rnd 1 below next st" covers that stitch; "for desired length" ends rows called for."""
    text = f"Hotpad\n{_TERMS}PAD\nRnd 1: 8 sc in magic ring, join. (8)\nRnd 2: 2 sc in each st around, join. (16)\nRnd 3: *Sc in next 3 sts, spike sc into Rnd 1 below next st* around, join. (16)\nRnd 4: Sc in each st around; to make hanging loop, ch 10, sl st in same st. Fasten off.\n"
    report = check(text)
    assert counts(report) == [8, 16, 16, 16]
    assert not corrections(report)
    rows = "Row 1: Sc in 2nd ch from hook and in each ch across. (10)\nRow 2: Ch 1, turn, sc in each sc across. (10)\nRep Row 2 for desired length."
    assert not [rule for rule, _ in all_findings(check(_strip(rows))) if rule == "not-understood"]


def test_sentences_on_chains_behind_a_count() -> None:
    """ "10 hdc. The ch 2 never counts." is a printed count and a rule, and no work."""
    text = f"Rug\n{_TERMS}RUG\n1. Ch 3, join into ring. Ch 2, 10 hdc in ring. Join to first hdc. 10 hdc. The ch 2 never counts.\n2. Ch 2, 2 hdc in each. Join. 20 hdc.\n3. Ch 2, *1 hdc in each of 2, 2 hdc in next*. Repeat 6 times total, 1 hdc in each of last 2 sts. Join. 26 hdc.\n"
    report = check(text)
    assert counts(report) == [10, 20, 26]
    assert set(outcomes(report)) == {"agrees"}
    assert not [rule for rule, _ in all_findings(report) if rule == "turning-chain-unsaid"]


@pytest.mark.parametrize(("spaces", "outcome"), [(8, "agrees"), (7, "agrees"), (9, "differs")])
def test_chains_between_the_stitches_of_a_round(spaces: int, outcome: str) -> None:
    """ "Dc in each sc with ch 1 between": with the last and the first as well, where the printed count says so."""
    text = f"Daisy\n{_TERMS}DAISY\nRnd 1: 8 sc in magic ring, join. (8 sc)\nRnd 2: Ch 2, dc in each sc with ch 1 between, join. (8 dc, {spaces} ch-1 sps)\n"
    assert outcomes(check(text))[-1] == outcome


def test_stitches_along_the_foundation() -> None:
    """ "18 sc along foundation" is its number, along the edge that the piece was begun on."""
    text = f"Square\n{_TERMS}CENTRE\nch 7.\nRow 1: sc in 2nd ch from hook and in each ch to end. 6 sc\nRows 2-6: ch 1, turn, sc in each st to end. 6 sc\n\nBORDER\nRnd 1: ch 1, do not turn, 6 sc along row-ends, ch 2, 6 sc along foundation, ch 2, 6 sc along row-ends, ch 2, 6 sc along top, ch 2, join. 24 sc, 4 ch-2 sps\n"
    assert set(outcomes(check(text))) == {"agrees"}


@pytest.mark.parametrize("words", ["3rd ch of initial ch-3", "top of opening ch 3", "3rd ch of initial 3ch"])
def test_the_chain_that_a_round_opens_with(words: str) -> None:
    """Its first chain, however it is called, is where the round is joined."""
    round_1 = f"Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in {words}. (12)\n"
    report = check(f"Mat\nUS terms\nMake a magic ring.\n{round_1}Rnd 2: Ch 1, sc in each st around. (12)\n")
    assert counts(report) == [12, 12]
