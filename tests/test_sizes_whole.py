"""Whole pieces in many sizes, in several houses' notations, against counts that plain arithmetic gives."""

from __future__ import annotations

from helpers import check


def made(text: str) -> list[list[int | None]]:
    """The stitches of every row that a size works, size by size; foundation chains are left out."""
    report = check(text)
    assert "count-differs" not in {finding.rule for finding in report.findings}
    return [
        [row.cells[size].made and row.cells[size].made.stitches for row in report.ledger.rows if row.label != "Foundation" and row.cells[size].outcome.value != "not-worked"]
        for size in range(len(report.pattern.sizes))
    ]  # fmt: skip


def test_a_yoke_in_twelve_sizes() -> None:
    """Lists in three brackets; eight stitches more a round, for so many rounds by size."""

    def listed(figures: list) -> str:
        first, *rest = map(str, figures)
        return f"{first} ({', '.join(rest[:3])}) ({', '.join(rest[3:7])}) ({', '.join(rest[7:])})"

    names = ["XXS", "XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X", "6X", "7X"]
    fronts, sleeves = [20 + size for size in range(12)], [10 + size // 2 for size in range(12)]
    chains = [2 * front + 2 * sleeve + 4 for front, sleeve in zip(fronts, sleeves, strict=True)]
    last = [6 + size // 3 for size in range(12)]
    corner = "(sc, ch 1, sc) in next st"
    text = f"""Samphire Yoke

US terms

SIZES: {listed(names)}

YOKE
Ch {listed(chains)}, join with sl st in first ch to form a ring.
Rnd 1: Ch 1 (does not count as a st throughout), sc in each ch around, join with sl st in first sc. ({listed(chains)} sc)
Rnd 2: Ch 1, sc in next {listed(fronts)} sts, {corner}, sc in next {listed(sleeves)} sts, {corner}, sc in next {listed(fronts)} sts, {corner}, sc in next {listed(sleeves)} sts, {corner}, join with sl st in first sc.
Rnd 3: Ch 1, *sc in each st to next ch-1 sp, (sc, ch 1, sc) in ch-1 sp; rep from * 3 more times, sc in each st to end, join with sl st in first sc. ({listed([chain + 12 for chain in chains])} sc, 4 ch-1 sps)
Rnds 4-{listed(last)}: Rep Rnd 3. ({listed([chain + 4 + 8 * (end - 2) for chain, end in zip(chains, last, strict=True)])} sc, 4 ch-1 sps)
"""
    expected = [
        [chain, chain + 4] + [chain + 4 + 8 * n for n in range(1, end - 1)]
        for chain, end in zip(chains, last, strict=True)
    ]
    assert made(text) == expected


def test_leg_warmers_whose_sizes_are_measures() -> None:
    """Lists parted by semicolons alone, in labels and repeats too; the sizes bear no names."""
    text = """Rail Leg Warmers

US terms

Finished calf: 25; 29; 33 cm

LEG
Ch 40; 46; 52, join with sl st in first ch to form a ring.
Rnd 1: Ch 1 (does not count as a st throughout), sc in each ch around, join with sl st in first sc. (40; 46; 52 sc)
Rnds 2-10; 12; 14: Ch 1, sc in each st around, join with sl st in first sc.
Next rnd: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, join with sl st in first sc. (38; 44; 50 sc)
Rep last rnd 3; 4; 5 times more. (32; 36; 40 sc)
Next 5; 6; 7 rnds: Ch 1, sc in each st around, join with sl st in first sc.
"""
    expected = [
        [chain] * plain + [chain - 2 * n for n in range(1, decreases + 2)] + [chain - 2 * (decreases + 1)] * end
        for chain, plain, decreases, end in ((40, 10, 3, 5), (46, 12, 4, 6), (52, 14, 5, 7))
    ]
    assert made(text) == expected


def test_a_blanket_that_names_its_sizes_at_the_figures() -> None:
    """One size leaves off, and a passage is for the others, with a figure for each of them alone."""
    text = """Curlew Blanket

US terms

This blanket comes in three sizes: small (medium, large).

BLANKET
Chain 61 (small), 91 (medium) or 121 (large).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (60 sc for small, 90 sc for medium, 120 sc for large)
Row 2: Ch 1, *sc in next 2 sts, sk 1 st, 3 sc in next st, sk 1 st, sc in next st; rep from * across, turn. (60 (90, 120) sc)
Rows 3-40 (60, 80): Rep Row 2.
Small: stop here.
Sizes medium and large only:
Next 10 (15) rows: Ch 1, sc in each st across, turn. (90 (120) sc)
"""
    assert made(text) == [[60] * 40, [90] * 70, [120] * 95]


def test_one_sizes_wrong_count_is_told_where_all_sizes_leave_stitches() -> None:
    """Stitches left in every size may be meant; the one size whose count does not come out is a correction of its own."""
    report = check(
        "Band\nUS terms\nSizes: S (M, L)\n\nBAND\nCh 21 (25, 29).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 (24, 28) sc)\n"
        "Row 2: Ch 1, sc in next 16 (20, 25) sts, turn. (16 (20, 24) sc)\n"
    )
    told = [(one.rule, one.sizes) for one in report.findings if one.row == "Row 2"]

    assert ("count-differs", ("L",)) in told


def test_an_abbreviation_not_used_is_told_as_printed() -> None:
    """The message has the letters of the list: “WS”, not “ws”."""
    report = check(
        "Bit\nUS terms\nAbbreviations\nsc = single crochet\nWS = wrong side\n\nRnd 1: 6 sc in magic ring. (6 sc)\n"
    )

    assert any("“WS”" in one.message for one in report.findings if one.rule == "abbreviation-unused")
