"""Words of designers who speak while they write: rows named alone, brackets worked once more, "whichever you like"."""

from __future__ import annotations

import pytest
from helpers import all_findings, check, corrections, counts, spaces

_SQUARE = """Little square

UK terms

Row 1: 5ch, 1htr in 3rd ch from hook, 1htr in each of next 2ch, turn. 1 block
Row 2: 5ch, 1htr in 3rd ch from hook, 1htr in each of next 2ch, (ss in next 2ch-sp, 2ch, 3htr in same sp) once, turn. 2 blocks
Row 3: 5ch, 1htr in 3rd ch from hook, 1htr in each of next 2ch, (ss in next 2ch-sp, 2ch, 3htr in same sp) twice, turn. 3 blocks
{row}
"""


@pytest.mark.parametrize(
    "words",
    [
        "working the bracket once more on every row",
        "working the bit in brackets once more on every row".replace("bit", "part"),
        "but repeating the bracketed section one more time each row",
        "working the brackets one time more in each row",
    ],
)
def test_brackets_once_more_in_each_row(words: str) -> None:
    """Each of the rows called has the run once more than the one before."""
    report = check(_SQUARE.format(row=f"Rows 4-6: As Row 3, {words}. 6 blocks at the end of Row 6"))
    assert counts(report) == [3, 6, 9, 12, 15, 18] and corrections(report) == []


def test_a_wrong_figure_behind_growing_rows() -> None:
    """The count told of the last of them is held against it."""
    report = check(
        _SQUARE.format(
            row="Rows 4-6: As Row 3, working the bracket once more on every row. 7 blocks at the end of Row 6"
        )
    )
    assert counts(report)[3:] == [12, 15, 18] and [rule for rule, _ in corrections(report)] == ["count-differs"]


@pytest.mark.parametrize(
    "words",
    [
        "working the bracket once more",
        "working the bracket four times less on every row",
        "working something once more on every row",
    ],
)
def test_brackets_told_otherwise_are_not_guessed(words: str) -> None:
    """Not said of each row, or fewer than none: the rows are not counted."""
    report = check(_SQUARE.format(row=f"Rows 4-6: As Row 3, {words}."))
    assert counts(report)[3:] == [None] * 3


_STRIP = """Strip

US terms

Ch 6.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (5)
Row 2: Ch 1, 2 sc in first sc, sc in each sc across, turn. (6)
Row 3: Ch 1, sc in each sc across, turn. (6)
{row}
"""


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("Rows 4-7: Rows 2 and 3 twice more. (8)", [7, 7, 8, 8]),
        ("Rows 4-5: Rows 2 and 3. (7)", [7, 7]),
        ("Rows 4 and 5: Rows 2 and 3 again. (7)", [7, 7]),
        ("Rows 4-7: [Rows 2 and 3] twice. (8)", [7, 7, 8, 8]),
        ("Row 4: Row 2. (7)", [7]),
        ("Row 4: Row 2 in reverse. (7)", [None]),
        ("Row 4: Row 3 sts, turn. (7)", [None]),
        ("Rows 4 and 5: Rows 2 and 3 were the increases. (7)", [None, None]),
    ],
)
def test_rows_named_alone(row: str, made: list[int | None]) -> None:
    """A row that names others and says nothing besides works them; with any word more it is not understood."""
    report = check(_STRIP.format(row=row))
    assert counts(report)[3:] == made and corrections(report) == []


def test_rows_named_alone_too_few_for_their_label() -> None:
    """The label is held against how many rows that comes to."""
    report = check(_STRIP.format(row="Rows 4-9: Rows 2 and 3 twice more. (8)"))
    assert [rule for rule, _ in corrections(report)] == ["range-length-differs"]


_TILE = "Tile\n\n{terms} terms\n\nRnd 1: 12 {st} in magic ring, join with sl st to first {st}. (12)\nRnd 2: {words}\n"


@pytest.mark.parametrize("terms", ["US", "UK"])
@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("Ch 1, 2 ST in the st you joined to, ST in next 11, join. (13)", 13),
        ("Ch 1, ST in the st where you joined, ST in next 11 sts, join. (12)", 12),
        ("Join B in whichever st you like, ch 1, ST in same st and in each st around, join. (12)", 12),
        ("Join B with ST in any st of your choice, ST in next 11, join. (12)", 12),
    ],
)
def test_where_the_maker_begins(words: str, made: int, terms: str) -> None:
    """The join's own stitch, and any stitch the maker likes."""
    st = "sc" if terms == "US" else "dc"
    report = check(_TILE.format(terms=terms, st=st, words=words.replace("ST", st)))
    assert counts(report) == [12, made] and corrections(report) == []


def test_whichever_other_thing_is_no_place() -> None:
    """ "Whichever" without a wish stays what it is."""
    report = check(_TILE.format(terms="US", st="sc", words="Work whichever stitch in each st around, join. (12)"))
    assert counts(report)[1] is None


@pytest.mark.parametrize(
    ("behind", "made"),
    [
        ("fasten off; pin out the points", 12),
        ("fasten off, repeat for the other half", None),
        ("fasten off, make the same on the far edge", None),
    ],
)
def test_talk_behind_the_fastening(behind: str, made: int | None) -> None:
    """Talk behind the end of the yarn makes nothing; what may be more work is not taken for it."""
    report = check(_TILE.format(terms="US", st="sc", words=f"Ch 1, sc in each st around, join; {behind}. (12)"))
    assert counts(report)[1] == made


_MANDALA = """Mandala

UK terms

Round 1: Magic ring, 1ch, 8dc, ss to close. (8)
Round 2: 1ch, 1dc in same st, *4ch, miss 1, 1dc in next; rep from * to last st, 4ch, miss last st, ss in first dc. (4 lps)
Round 3: 1ch, (1dc, 1htr, 1tr, 1htr, 1dc) in every 4ch-lp, ss in first dc. (4 petals, 20 sts)
Round 4: {words}
"""


@pytest.mark.parametrize(("times", "made"), [("2 more times", 4), ("once more", 3)])
def test_tips_of_petals(times: str, made: int) -> None:
    """ "In the tr at the tip of any petal" is its middle treble; too few repeats show in the count."""
    words = f"Standing dc in tr at tip of any petal, *6ch, 1dc in the tr at the tip of next petal; rep from * {times}, 6ch, ss in first dc. (4 dc)"
    report = check(_MANDALA.format(words=words))
    assert counts(report)[3] == made and spaces(report)[3] == {6: made}
    assert (corrections(report) == []) == (made == 4)


_EDGING = """Edging

US terms

Ch 12.
Row 1: Dc in 4th ch from hook, dc in next 2 chs, ch 2, sk 2 chs, dc in next ch, ch 2, sk 2 chs, (dc, ch 2, dc) in last ch, turn. 7 dc.
Row 2: Ch 1, (sc, 5 dc, sc) in first ch-2 sp (scallop made), ch 2, sk next dc and ch-2 sp, dc in next dc, ch 2, dc in next 3 dc, dc in top of ch-3, turn. {count}
"""


@pytest.mark.parametrize(
    ("count", "right"), [("5 dc plus scallop.", True), ("5 dc and a scallop.", True), ("6 dc plus scallop.", False)]
)
def test_one_more_without_a_figure(count: str, right: bool) -> None:
    """A group named behind the figures is one of them, and no work behind the turn."""
    report = check(_EDGING.format(count=count))
    assert counts(report) == [7, 12] and (corrections(report) == []) == right


@pytest.mark.parametrize(("listed", "wrong"), [("9 sts, 11 sts, 13 sts", False), ("9 sts, 11 sts, 12 sts", True)])
def test_a_figure_for_each_row_that_is_called(listed: str, wrong: bool) -> None:
    """Figures behind rows that are called count each of them, and are no work."""
    text = "Shawl\n\nUS terms\n\nCh 4.\nRow 1: 2 dc in 4th ch from hook, turn. 3 dc\n"
    text += "Row 2: Ch 3 (counts as dc), dc in same st, dc in next dc, 2 dc in top of tch, turn. 5 dc\n"
    text += "Row 3: Ch 3, dc in same st, dc in each dc to last st, 2 dc in top of tch, turn. 7 dc\n"
    report = check(f"{text}Rows 4, 5 and 6: As Row 3. {listed.replace('sts', 'dc')}\n")
    assert counts(report) == [3, 5, 7, 9, 11, 13] and bool(corrections(report)) == wrong


@pytest.mark.parametrize(
    ("first", "last"),
    [
        (
            "draw up a lp in the back bump of the 2nd ch from hook and of every ch to the end",
            "sc in each bar across as if for tss",
        ),
        ("draw up a lp in 2nd ch from hook and in each ch across", "sl st in each bar across as if working tss"),
    ],
)
def test_tunisian_rows_told_with_their_manner(first: str, last: str) -> None:
    """How the hook goes in is a manner, and "of" is said twice of the chain's bumps."""
    text = f"Cloth\n\nUS terms\nR = return pass\n\nCh 10.\nRow 1. F: {first}. 10 lps. R.\n"
    text += f"Row 2. F: sk first bar, tss in each bar across. R. 10 sts.\nBind off: sk first bar, {last}.\n"
    report = check(text)
    assert counts(report) == [10, 10, 9] and corrections(report) == []


def test_a_figure_and_a_colour_letter_explained() -> None:
    """ "A number and a color letter is that many sc": figures with colours are work among other clauses."""
    text = "Pot\n\nUS terms\n\nA: gray, B: gold.\nA number and a color letter is that many sc in that color.\n\n"
    text += "Rnd 1: with A, 8 sc in a magic ring. (8)\nRnd 2: *1A, inc with B* 4 times. (12)\nRnd 3: *2A, inc with B* 4 times. (15)\n"
    report = check(text)
    assert counts(report) == [8, 12, 16] and [rule for rule, _ in corrections(report)] == ["count-differs"]


def test_a_span_is_a_size() -> None:
    """ "Wingspan 120 cm" is a finished size, and "Tension: 18 dc to 10 cm" no entry of a list."""
    text = "Shawl\n\nUS terms. Wingspan 120cm after blocking. Tension: 18dc to 10cm.\nch - chain; dc - double crochet; st - stitch\n\nCh 4.\nRow 1: 2 dc in 4th ch from hook. 3 dc\n"
    report = check(text)
    assert "finished size" not in " ".join(one.message for one in report.findings if one.rule == "section-missing")
    assert "abbreviation-unused" not in [rule for rule, _ in all_findings(report)] or "Tension" not in " ".join(
        one.message for one in report.findings
    )
