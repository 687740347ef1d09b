"""Corners that have something else, groups with an article, words that quotes define, letters and labels set close."""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts

_SQUARE = """Square

US terms. Ch 3 counts as a dc.

Rnd 1: Ch 4, join to form ring. Ch 3, 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join to top of ch-3. (12 dc)
Rnd 2: Ch 1, sc in each dc around, 3 sc in each ch-2 sp, join. (24 sc)
Rnd 3: Ch 1, sc in each st around, {words}, join. (32 sc)
"""


@pytest.mark.parametrize(
    "words",
    ["but work 3 sc in the middle st of each corner", "but 3 sc in each corner st", "but make 3 sc in center st of each corner"],
)  # fmt: skip
def test_what_corners_have_instead(words: str) -> None:
    """So many in each corner stitch, and one in every other."""
    assert counts(check(_SQUARE.format(words=words))) == [12, 24, 32]
    assert [rule for rule, _ in corrections(check(_SQUARE.format(words=words).replace("3 sc in", "2 sc in", 2)))] != []


@pytest.mark.parametrize("words", ["but skip the middle st of each corner", "but not in the corner sts"])
def test_corners_that_lose_something_are_not_guessed(words: str) -> None:
    """A skip there is no work, and the round is not counted as if it were not said."""
    assert counts(check(_SQUARE.format(words=words)))[2] is None


def test_petals_with_an_article() -> None:
    """A group's name before its bracket adds nothing; "the first" of an earlier round is found by its article, too."""
    text = "Flower\n\nUK terms. BPdc - back post double crochet\n\nRnd 1: In a magic ring, 1ch, 5tr, ss to first tr. (5tr)\n"
    text += "Rnd 2: 1ch, BPdc round the first tr of Rnd 1, *3ch, BPdc round next tr of Rnd 1; rep from * 3 times more, 3ch, ss to first BPdc. (5 BPdc, 5 loops)\n"
    text += "Rnd 3: a petal of (1dc, 3tr, 1dc) in every 3ch-loop, ss to first dc. (25 sts)\n"
    report = check(text)
    assert counts(report) == [5, 5, 25] and [rule for rule, _ in corrections(report) if rule == "count-differs"] == []


def test_a_word_that_quotes_define() -> None:
    """ "“Corner” means …" tells what is worked, wherever a row says corner; a count may name corners by their chain."""
    text = 'Tile\n\nUS terms. Ch 3 counts as a dc.\n\n- "Corner" means (2 dc, ch 2, 2 dc), all in one space.\n\n'
    text += "Rnd 1: Ch 4, join to form ring. Ch 3, dc in ring, ch 1, (2 dc in ring, ch 1) 3 times more, join. (8 dc, 4 ch-1 sps)\n"
    text += "Rnd 2: Sl st in next dc and in ch-1 sp, (ch 3, dc, ch 2, 2 dc) in same sp, *corner in next ch-1 sp; rep from * around, join. (16 dc, {corners} ch-2 corners)\n"
    report = check(text.format(corners=4))
    assert counts(report) == [8, 16] and corrections(report) == []
    assert [rule for rule, _ in corrections(check(text.format(corners=5)))] in (["corners-differ"], ["count-differs"])


_TOY = "Ball\n\nX sc\nV inc\nA dec\n\nBall\n1rnd: MR 6X (6)\n2rnd: 6V (12)\n3-4rnd: 12X (12)\n5rnd: 6A ({count})\n"


def test_letters_without_a_sign_and_numbers_set_close() -> None:
    """Lines of a letter and its stitch are a list, and a wrong count does not take its meaning away."""
    assert counts(check(_TOY.format(count=6))) == [6, 12, 12, 12, 6]
    wrong = check(_TOY.format(count=8))
    assert counts(wrong) == [6, 12, 12, 12, 6] and [rule for rule, _ in corrections(wrong)] == ["count-differs"]


def test_one_such_line_is_no_list() -> None:
    """A lone letter before a stitch may be anything."""
    assert counts(check(_TOY.format(count=6).replace("X sc\nV inc\nA dec\n", "Q sc\n").replace("X", "Q")))[0] is None


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("Mine are 5\" from side to side.", True),
        ("It is 9 cm high.", True),
        ("3.5mm hook; 18cm x 160cm.", True),
        ("Tension: 4 in x 4 in over 20 sts.", False),
        ("Leave a tail 9 cm from the end.", False),
    ],
)  # fmt: skip
def test_a_size_told_in_passing(words: str, found: bool) -> None:
    """A measure from side to side, a height, two measures crosswise; a swatch and a tail are none."""
    report = check(f"Mat\n\n{words}\n\nRnd 1: 6 sc in magic ring. (6)\n")
    lacking = [
        one.message for one in report.findings if one.rule == "section-missing" and "finished size" in one.message
    ]
    assert (not lacking) is found
