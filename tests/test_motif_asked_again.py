"""Wordings of motifs that were once miscounted or passed over (worked by hand; common practice, no source)."""

from __future__ import annotations

from helpers import all_findings, check, counts, spaces


def _rules(text: str, weights: tuple[str, ...] = ("correction", "query")) -> list[str]:
    return [rule for rule, _ in all_findings(check(text), weights)]


_LAYERS = (
    "Windmill\nUS terms\n\nRnd 1: (2 dc, ch 1) 4 times in magic ring, sl st in first dc. (8 dc, 4 ch-1 sps)\n"
    "Rnd 2: 5 dc in each ch-1 sp around, sl st in first dc. (20 dc)\n"
    "Rnd 3: Ch 1 (not a st), [sc in next 5 dc, {} between 2 petals of Rnd 2] 4 times, sl st in first sc. (24 sc)\n"
)


def test_a_long_stitch_into_an_earlier_gap_covers_no_stitch() -> None:
    """A long stitch between the groups of an earlier round lies between two stitches of the one below."""
    text = _LAYERS.format("long sc")
    assert counts(check(text)) == [8, 20, 24]
    assert "repeat-does-not-fit" not in _rules(text)
    assert _rules(text.replace("(24 sc)", "(25 sc)"), ("correction",)) == ["count-differs"]


_TILE = (
    "Tile\nUS terms. Ch 1 never counts.\n\nRnd 1: 6 sc in magic ring, sl st in first sc. (6 sc)\n"
    "Rnd 2: Ch 1, 3 sc in each sc around, sl st in first sc. (18 sc)\n"
    "Rnd 3: Ch 1, sc in first st, 3 sc in next st, *sc in next 2 sts, 3 sc in next st; rep from * 4 times more, sc in last st, "
    "sl st in first sc. (30 sc)\nRnd 4: Ch 1, {}, sl st in first sc. ({} sc)\n"
)


def test_corners_and_the_stitches_left_are_one_way_round() -> None:
    """Corners named first and "all other sts" after: a corner stitch is worked as a corner, the others once."""
    for words in (
        "3 sc in each corner st and sc in each remaining st around",
        "2 sc in each corner st, then sc in all other sts around",
        "2 sc in each corner and 1 sc in each of the other sts",
    ):
        more = 2 if words.startswith("3") else 1
        text = _TILE.format(words, 30 + 6 * more)
        assert counts(check(text))[3] == 30 + 6 * more, words
        assert _rules(text) == []
        assert _rules(_TILE.format(words, 30)) == ["count-differs"]


def test_every_other_stitch_beside_corners_is_not_guessed() -> None:
    """ "Every other st" may be every second one or all the others: its row is not counted."""
    for words in ("3 sc in each corner st and sc in every other st around", "sc in each other st, 3 sc in corners"):
        assert counts(check(_TILE.format(words, 42)))[3] is None
        assert _rules(_TILE.format(words, 42)) == ["not-understood"]


def test_a_star_within_a_bracket_is_where_its_last_pass_ends() -> None:
    """ "[…, * ch 2, …] 5 times, ending last rep at *": the last pass stops at the star."""
    text = (
        "Spoke\nUS terms. Ch 1 never counts.\n\nRnd 1: Ch 1, 15 sc in magic ring, sl st in first sc. (15 sc)\n"
        "Rnd 2: Ch 1, [sc in next 3 sc, * ch 2] 5 times, ending last rep at *, hdc in first sc. (15 sc, {} ch-2 sps)\n"
    )
    assert spaces(check(text.format(4)))[1].get(2) == 4
    assert _rules(text.format(5), ("correction",)) == ["count-differs"]
    lost = text.replace("* ch 2", "ch 2")
    assert counts(check(lost.format(4)))[1] is None


_TWICE = (
    "Pincushion\nUS terms. Ch 1 never counts.\n\nTOP\nRnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each sc around. (12 sc)\n"
    "Fasten off.{}\n\nBASE\n{}\n\nEDGE\nRnd 1: Join B in any st, ch 1, 2 sc in each sc around. (24 sc)\n"
)


def test_a_second_piece_the_same_is_a_piece() -> None:
    """Alone under its heading such a sentence works the piece before once more; changed, it is not recomputed."""
    for words in (
        "Crochet a second piece the same.",
        "Make another circle in exactly the same way.",
        "Work a second one like the first.",
    ):
        report = check(_TWICE.format("", words))
        made = [(row.part.name, row.cells[0].made.stitches) for row in report.ledger.rows]
        assert made == [("TOP", 6), ("TOP", 12), ("BASE", 6), ("BASE", 12), ("EDGE", 24)], words
    changed = check(_TWICE.format("", "Crochet a second piece the same, but with 2 rounds more."))
    assert [row.cells[0].made for row in changed.ledger.rows if row.part.name == "BASE"] == [None]


def test_a_piece_made_again_works_none_upon_itself() -> None:
    """Said of the piece just worked, it only tells how many are made."""
    report = check(_TWICE.format(" Make a second piece the same.", "Work as for Top."))
    assert [row.part.name for row in report.ledger.rows] == ["TOP", "TOP", "BASE", "BASE", "EDGE"]
    assert counts(report)[:2] == [6, 12]
