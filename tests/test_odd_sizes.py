"""One size that is unlike the others: in what is measured, in rows, in seams, in gates and lists; and what must be let be."""

from __future__ import annotations

import pytest
from helpers import all_findings, check

SIZES = "S (M, L, XL, 2X)"
FRONT = """Harbour Tunic
Sizes
{sizes}
Finished Measurements
Chest: {chest} in
Length from shoulder to hem: {length} in
Upper arm: {arm} in
To fit chest: {fit} in. It is worn with 4 in. of ease.
Materials
Worsted weight yarn, 5.5 mm (I-9) hook
Gauge
16 sts and 12 rows = 4 in in hdc
Abbreviations
ch - chain; hdc - half double crochet; st(s) - stitch(es); RS - right side
"""
WORK = """BACK
Ch 73 (81, 89, 97, 105).
Row 1 (RS): Hdc in 2nd ch from hook and in each ch across. Turn. 72 (80, 88, 96, 104) hdc.
Row 2: Ch 1, hdc in each st across. Turn.
Rows 3-62 (62, 64, 64, 66): Repeat Row 2.
Fasten off.
FRONT
Work same as Back through Row {rows}.
Left Shoulder
Row 1 (RS): Ch 1, hdc in first {first} sts, leave remaining sts unworked. Turn. {first} hdc.
Rows 2-6: Ch 1, hdc in each st across. Turn.
Fasten off.
Right Shoulder
With RS facing, skip the next 24 sts and join yarn in the next st.
Row 1 (RS): Ch 1, hdc in same st and in each st across. Turn. 24 (28, 32, 36, 40) hdc.
Rows 2-6: Ch 1, hdc in each st across. Turn.
Fasten off.
SLEEVES (make 2)
Ch 61 (65, 69, 73, 77).
Row 1: Hdc in 2nd ch from hook and in each ch across. Turn. 60 (64, 68, 72, 76) hdc.
Rows 2-48: Ch 1, hdc in each st across. Turn.
FINISHING
Sew shoulder seams over the {seam} sts of each shoulder. Sew side seams.
"""
SOUND = {
    "sizes": SIZES,
    "chest": "36 (40, 44, 48, 52)",
    "length": "20½ (20½, 21¼, 21¼, 22)",
    "arm": "15 (16, 17, 18, 19)",
    "fit": "32 (36, 40, 44, 48)",
    "rows": "56 (56, 58, 58, 60)",
    "first": "24 (28, 32, 36, 40)",
    "seam": "24 (28, 32, 36, 40)",
}


def _found(**changed: str) -> list[tuple[str, int]]:
    return all_findings(check((FRONT + WORK).format(**(SOUND | changed))), ("correction", "query"))


def test_the_sound_tunic() -> None:
    """Nothing is asked about a tunic in which everything comes out, rounded as print rounds."""
    assert _found() == []
    assert _found(length="20¾ (20¾, 21¼, 21½, 22)", chest="36 (40, 44, 48, 52½)") == []


@pytest.mark.parametrize(
    ("changed", "rule", "line"),
    [
        ({"chest": "36 (40, 44, 48, 54)", "fit": "32 (36, 40, 44, 50)"}, "gauge-disagrees", 5),
        ({"chest": "38 (40, 44, 48, 52)", "fit": "34 (36, 40, 44, 48)"}, "gauge-disagrees", 5),
        ({"length": "20½ (20½, 21¼, 22¼, 22¼)"}, "gauge-disagrees", 6),
        ({"arm": "15 (16, 17, 18, 20)"}, "gauge-disagrees", 7),
        ({"fit": "32 (36, 40, 44, 46)"}, "ease-disagrees", 5),
        ({"rows": "56 (56, 58, 57, 60)"}, "row-parity-differs", 23),
        ({"rows": "56 (56, 58, 58, 56)"}, "edges-differ", 21),
        ({"seam": "24 (28, 32, 36, 42)"}, "seam-counts-differ", 37),
    ],
)
def test_the_one_size_that_is_out(changed: dict[str, str], rule: str, line: int) -> None:
    """A slip in one size, mostly the last, is asked about once and where it stands, even within the gauge's tolerance."""
    assert _found(**changed) == [(rule, line)]


@pytest.mark.parametrize(
    ("cuff", "found"),
    [
        ("8 (9, 10, 11, 12)", False),  # as the gauge has it
        ("7 (8, 9, 10, 11)", False),  # drawn in alike
        ("8 (9, 11, 11, 12)", True),
        ("8 (9, 10, 11, 13)", True),
    ],
)
def test_a_cuff_is_compared_with_those_of_the_other_sizes(cuff: str, found: bool) -> None:
    """A cuff is drawn in, in all sizes alike: the one that is not is asked about, and only once."""
    sleeve = "Ch 33 (37, 41, 45, 49).\nRow 1: Hdc in 2nd ch from hook and in each ch across. Turn. 32 (36, 40, 44, 48) hdc.\n"
    sleeve += "Row 2: Ch 1, 2 hdc in first st, hdc in each st to last st, 2 hdc in last st. Turn. 34 (38, 42, 46, 50) hdc.\nRows 3-15: Repeat Row 2.\n"
    work = WORK[: WORK.index("Ch 61")] + sleeve + WORK[WORK.index("FINISHING") :]
    front = FRONT.replace("To fit chest", "Sleeve: " + cuff + " in at the cuff\nTo fit chest")
    assert (
        all_findings(check((front + work).format(**SOUND)), ("correction", "query")) == [("gauge-disagrees", 8)] * found
    )


def test_two_sizes_out_are_a_design() -> None:
    """Where two of five sizes leave the others, none of them is called the odd one."""
    assert _found(rows="56 (56, 57, 57, 60)") == []
    assert _found(chest="36 (40, 44, 49, 54)", fit="32 (36, 40, 45, 50)") == []


def test_a_length_that_falls_is_none_of_the_neck() -> None:
    """ "Length from back neck" has to grow with the size; the depth of a neck need not."""
    head = "Pond Vest\nSizes: S (M, L, XL, 2X)\n{}: 22 (24, 26, 25, 30) cm\nBack\nCh 11.\nRow 1: Hdc in 2nd ch from hook and in each ch across. (10 hdc)\n"
    assert ("size-step-broken", 3) in all_findings(check(head.format("Length from back neck")))
    assert not any(rule == "size-step-broken" for rule, _ in all_findings(check(head.format("Front neck drop"))))


def test_a_leap_at_the_end() -> None:
    """A last step three times as wide as any other stands out; one half as wide again is how ranges end."""
    text = "Vest\nSizes: XS (S, M, L, XL, 2X, 3X)\nArmhole depth: {}\nBack\nCh 11.\nRow 1: Hdc in 2nd ch from hook and in each ch across. (10 hdc)\n"
    leap, wider = "7 (7½, 8, 8½, 9, 9½, 11½) in", "7 (7½, 8, 8½, 9, 9½, 10¼) in"
    assert ("size-step-broken", 3) in all_findings(check(text.format(leap)))
    assert not any(rule == "size-step-broken" for rule, _ in all_findings(check(text.format(wider))))


GATED = """Nut Hat
Sizes: Baby (Child, Adult)
Hat
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 1, 12 sc in ring, join. (12 sc)
Rnd 2: Ch 1, 2 sc in each sc around, join. (24 sc)
Sizes {} only
Rnd 3: Ch 1, [sc in next {} sc, 2 sc in next sc] {} times, join. ({} sc)
All sizes
Rnd 4: Ch 1, sc in each sc around, join. (24 (30, 36) sc)
Rnd 5: Ch 1, sc in each sc around, join. (24 (30, 36) sc)
"""


def test_a_passage_for_a_size_that_there_is_not() -> None:
    """It is asked which size is meant, once and at the name; lists and rows that hang on it are not called wrong."""
    report = check(GATED.format("Youth (Adult)", "3 (1)", "6 (12)", "30 (36)"))
    assert all_findings(report, ("correction", "query")) == [("size-not-listed", 7)]
    assert [report.source.slice(f.span) for f in report.findings if f.rule == "size-not-listed"] == ["Youth"]
    assert not all_findings(check(GATED.format("Child (Adult)", "3 (1)", "6 (12)", "30 (36)")), ("correction", "query"))


def test_a_wrong_figure_in_a_passage_is_still_found() -> None:
    """In a passage for sizes that there are, a wrong figure is wrong."""
    found = all_findings(check(GATED.format("Child (Adult)", "3 (1)", "6 (12)", "30 (35)")), ("correction", "query"))
    assert found == [("count-differs", 8)]


LISTED = """Scarf
Sizes: 1 (2, 3, 4, 5)
Scarf
Ch {}.
Row 1: Sc in 2nd ch from hook and in each ch across. (20 (28, 38, 46, 56) sc)
Row 2: Ch 1, turn, sc in each sc across{}. (20 (28, 38, 46, 56) sc)
Row 3: Ch 1, turn, sc in each sc across. (20 (28, 38, 46, 56) sc)
"""


def test_a_chain_that_lacks_a_figure() -> None:
    """Its place is told by the counts that lie over it, and rows that only stand on it are not asked about."""
    report = check(LISTED.format("21 (29, 39, 57)", ""))
    assert all_findings(report, ("correction", "query")) == [("size-list-length", 4)]
    (message,) = [f.message for f in report.findings if f.rule == "size-list-length"]
    assert "between 39 and 57" in message


def test_words_of_its_own_are_still_told() -> None:
    """A row behind such a list that is not understood by itself is told as well."""
    found = all_findings(check(LISTED.format("21 (29, 39, 57)", ", flurbing twice")), ("correction", "query"))
    assert ("not-understood", 6) in found
