"""A list over the sizes that lacks a number, or has one too many, is found wherever it stands, and only there."""

from __future__ import annotations

import pytest
import regex
from helpers import check, mades, worked_rows

# one pattern in every notation: {a|b|c|d} is written as that notation writes it
TEXT = """Test vest

US terms

Sizes: S{, }M{, }L{, }XL

MATERIALS
DK weight yarn, {3|4|4|5} balls
4.0 mm hook

GAUGE
16 sc and 20 rows = 4 in (10 cm), 2 (2) strands held together

FINISHED SIZE
Chest: {30½|34|38|42} in, length {20|21|22|23½} in

ABBREVIATIONS
ch = chain, rep = repeat, sc = single crochet, st(s) = stitch(es)

PANEL
Ch {11|13|15|17}.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. ({10|12|14|16} sc)
Row 2: Ch 1, sc in each of first {4|5|6|7} sts, 2 sc in next st, sc in each st across, turn. ({11|13|15|17} sc)
Rows 3-{4|6|8|10}: Ch 1, sc in each st across, turn.
Rep last row {1|1|2|2} times.
Fasten off, leaving {20|22|24|26} in for sewing.

FINISHING
Sew the {6|7|8|9} sts at each side, 1/2 in from the edge.
"""
NOTATIONS = {
    "brackets": lambda v: f"{v[0]} ({', '.join(v[1:])})",
    "square": lambda v: f"{v[0]} [{', '.join(v[1:])}]",
    "colons": lambda v: f"{v[0]} ({': '.join(v[1:])})",
    "hyphens": lambda v: f"{v[0]} ({'-'.join(v[1:])})",
    "alternating": lambda v: " ".join(f"({one})" if index % 2 else one for index, one in enumerate(v)),
    "strokes": lambda v: "/".join(v),
    "groups": lambda v: f"{v[0]} ({', '.join(v[1:3])})" + (f" ({', '.join(v[3:])})" if v[3:] else ""),
    "first group bare": lambda v: f"{', '.join(v[:2])} ({', '.join(v[2:])})",
    "one bracket": lambda v: f"({', '.join(v)})",
}
BARE = {"semicolons": "; ".join, "commas": ", ".join, "bare hyphens": "-".join, "bare colons": ":".join}
LISTS = regex.compile(r"\{([^{}]*\|[^{}]*)\}")
PLACES = [match.start() for match in LISTS.finditer(TEXT)]


def written(notation: str, change_at: int | None = None, change=lambda values: values) -> str:
    """The pattern in one notation, the list at one place changed."""
    write = NOTATIONS.get(notation) or BARE[notation]

    def one(match: regex.Match) -> str:
        values = match[1].split("|")
        return write(change(values) if match.start() == change_at else values)

    sizes = write(["S", "M", "L", "XL"])
    return regex.sub(r"S\{, \}M\{, \}L\{, \}XL", sizes, LISTS.sub(one, TEXT))


def found(text: str) -> list[tuple[int, str, str]]:
    report = check(text)
    wrong = [finding for finding in report.findings if finding.rule == "size-list-length"]
    return [(report.source.line_of(finding.span), finding.expected, finding.found) for finding in wrong]


@pytest.mark.parametrize("notation", NOTATIONS)
def test_sound_lists(notation: str) -> None:
    """Lists of the right length, and figures that are no lists, are never called wrong."""
    assert found(written(notation)) == []


@pytest.mark.parametrize("notation", NOTATIONS)
@pytest.mark.parametrize("place", PLACES)
def test_one_number_missing(notation: str, place: int) -> None:
    """A list that lacks one number is found at its own line, with both figures, and nothing else is called wrong."""
    line = TEXT.count("\n", 0, place) + 1
    assert found(written(notation, place, lambda values: values[:-1])) == [(line, "4", "3")]


@pytest.mark.parametrize("notation", BARE)
@pytest.mark.parametrize("words", ["{11|", "{10|", "{4|5", "{1|1"])
def test_one_number_missing_without_brackets(notation: str, words: str) -> None:
    """So is a list without brackets in the rows, once; among measures and in labels such figures may be others."""
    place = TEXT.index(words)
    assert found(written(notation)) == []
    assert found(written(notation, place, lambda values: values[:-1])) == [(TEXT.count("\n", 0, place) + 1, "4", "3")]
    rows = check(written(notation, place, lambda values: values[:-1])).ledger.rows
    lost = any(all(cell.made is None for cell in one.cells) for one in rows)
    assert lost == (words != "{10|") or words == "{1|1"  # what is printed of a row's count changes none of its stitches


@pytest.mark.parametrize("notation", ["brackets", "strokes", "alternating"])
def test_one_number_too_many(notation: str) -> None:
    """A list that has a number more than there are sizes is found too."""
    place = PLACES[4]
    assert found(written(notation, place, lambda values: [*values, "19"])) == [
        (TEXT.count("\n", 0, place) + 1, "4", "5")
    ]


def test_its_row_is_not_guessed() -> None:
    """A row with such a list is not recomputed, and is told once."""
    report = check(written("brackets", TEXT.index("{4|5|6|7}"), lambda values: values[:-1]))
    row = next(row for row in report.ledger.rows if row.label == "Row 2")
    assert all(cell.made is None for cell in row.cells)
    line = report.source.line_of(row.span)
    assert [f.rule for f in report.findings if report.source.line_of(f.span) == line] == ["size-list-length"]


def test_lists_for_some_sizes() -> None:
    """In a passage for two sizes, lists have two numbers or four."""
    text = written("brackets").replace(
        "Fasten off", "Sizes L and XL only\nRow 12: Ch 1, sc in each of next 3 (4) sts.\nFasten off"
    )
    assert found(text) == []


def test_a_count_and_the_next_lines_label_are_no_list():
    """ "sc 12 [30]" and below it "10) sc 6": a label begins the line."""
    report = check(
        "Pony\nBODY\n1) 6 sc in magic ring [6]\n2) inc in every st [12]\n3) sc 12 [12]\n4) sc 6, inc x 6 [18]\n"
    )
    assert report.pattern.sizes in ((), None) or len(report.pattern.sizes) < 2
    assert [made.stitches for made in mades(report)] == [6, 12, 12, 18]


HAT = "Test hat\n\nUS terms\n\nSizes: {}\n\nBRIM\nCh {}, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. ({} sc)\n"


def stitches(text: str) -> list[list[int | None]]:
    """What every labelled row makes in each size."""
    return [
        [cell.made.stitches if cell.made is not None else None for cell in row.cells]
        for row in worked_rows(check(text))
    ]


def test_colons_in_two_sizes() -> None:
    """ "8:10 sts" and "Rnds 2-4:5:" are lists in two sizes as well; nothing is wrong with them."""
    text = HAT.format("Child:Adult", "60:72", "60:72") + "Rnds 2-4:5: Ch 1, sc in each st around, join. (60:72 sc)\n"
    assert stitches(text)[1:] == [[60, 72]] * 3 + [[None, 72]]
    assert not [finding for finding in check(text).findings if "sc" in finding.message]


def test_colons_that_part_no_sizes() -> None:
    """A label's colon is its own, and a ratio or a time of day is no list."""
    report = check(
        HAT.format("S:M:L", "60:66:72", "60:66:72")
        + "Rnd 2:60:66:72 sc, join.\nBlock it for 1:30 hours, diluted 1:4.\n"
    )
    assert [[cell.made.stitches for cell in row.cells] for row in worked_rows(report)] == [[60, 66, 72]] * 2
    assert not [finding for finding in report.findings if finding.rule == "size-list-length"]


def test_what_sizes_are_also_called() -> None:
    """ "S:M:L (child : woman : man)" are three sizes, told twice, for the lists have three figures."""
    report = check(HAT.format("S:M:L (child : woman : man)", "60:66:72", "60:66:72"))
    assert report.pattern.sizes == ("S", "M", "L")


def test_a_chain_that_goes_on_with_and() -> None:
    """ "Ch 60; 66; 72 and join" has three figures."""
    text = "Test hat\n\nUS terms\n\nSizes: S; M; L\n\nBRIM\nCh 60; 66; 72 and join into a ring.\nRnd 1: Ch 1, sc in each ch around, join. (60; 66; 72 sc)\nRnd 2: Ch 1, sc in each sc around, join. (60; 66; 72 sc)\n"
    assert stitches(text) == [[60, 66, 72]] * 2
    assert found(text) == []


def test_a_count_in_commas_that_is_shared_out() -> None:
    """ "60, 66, 72 sc: 30, 33, 36 on the back and on the front" counts the whole in every size."""
    text = "Test hat\n\nUS terms\n\nSizes: S, M, L\n\nBODY\nCh 60, 66, 72, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. 60, 66, 72 sc\n"
    text += "Rnd 2: Ch 1, sc in each sc around, join. You will have 60, 66, 72 sc: 30, 33, 36 on the back and on the front.\n"
    report = check(text)
    assert [cell.outcome.value for cell in worked_rows(report)[-1].cells] == ["agrees"] * 3


@pytest.mark.parametrize("sign", [" / ", " – "])
def test_spaced_signs_tell_the_number_of_sizes(sign: str) -> None:
    """The lists settle how many sizes there are, where the line that names them could be cut in other ways."""
    text = HAT.format(sign.join(["S/M", "L/XL", "2X/3X"]), *[sign.join(["60", "66", "72"])] * 2)
    assert len(check(text).pattern.sizes) == 3
    assert found(text) == []


def test_figures_before_a_list() -> None:
    """A chain's length, a yarn's weight and a ball's are no figures of the list beside them."""
    text = HAT.format("S, M, L", "60, 66, 72", "60, 66, 72").replace(
        "BRIM", "Yarn: worsted #4, 100, 120, 140 yds\n\nBRIM"
    )
    assert found(text + "Rnd 2: Ch 1, 60, 66, 72 sc, join. 60, 66, 72 sc\n") == []
    text = HAT.format("S (M) L (XL)", "60 (66) 72 (78)", "60 (66) 72 (78)").replace(
        "BRIM", "2 (2) 3 (3) 50 g balls of wool\n\nBRIM"
    )
    assert found(text) == []
