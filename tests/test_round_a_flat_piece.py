"""A repeat that goes round a flat piece from its top edge: how often it is worked along the row ends is not known."""

from helpers import check, corrections, counts

FLAT = (
    "Ch 13, sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n",
    "Row 2: Ch 1, sc in each st across, turn. (12 sc)\n",
)


def bordered(round_: str) -> str:
    """A flat piece of twelve stitches with a border's first round."""
    return "Coaster\n\nRow 1: " + "".join(FLAT) + f"\nBorder\nRnd 1: {round_}\n"


def test_a_repeat_past_a_flat_piece_s_corner_is_not_known_to_end_there():
    """The top edge has its own pass only where the words tell how often there are more."""
    for words in (
        "Ch 1, *12 sc along the side, 3 sc in corner; rep from * around, join. (60 sc)",
        "Ch 1, *sc in next 11 sts, 3 sc in corner; rep from * around, join. (56 sc)",
        "Ch 1, *sc in each st to corner, 3 sc in corner; rep from * around, join. (60 sc)",
    ):
        report = check(bordered(words))
        assert counts(report) == [12, 12, None] and corrections(report) == [], words


def test_told_passes_round_a_flat_piece_are_counted_still():
    """Four sides of as many each are what they are, wherever the stitches go; a wrong print is found."""
    report = check(bordered("Ch 1, *12 sc along the side, 3 sc in corner; rep from * 3 more times, join. (58 sc)"))
    assert counts(report)[-1] == 60 and ("count-differs", 7) in corrections(report)
