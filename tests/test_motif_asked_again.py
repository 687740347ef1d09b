"""Wordings of motifs that were once miscounted or passed over (worked by hand; common practice, no source)."""

from __future__ import annotations

from helpers import all_findings, check, counts


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
