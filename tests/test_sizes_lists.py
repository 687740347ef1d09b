"""A list over the sizes that lacks a number, or has one too many, is found wherever it stands, and only there."""

from __future__ import annotations

import pytest
import regex
from helpers import check, mades

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
    "one bracket": lambda v: f"({', '.join(v)})",
}
BARE = {"semicolons": "; ".join, "commas": ", ".join, "bare hyphens": "-".join}
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
    row = check(written(notation, place, lambda values: values[:-1])).ledger.rows
    assert any(all(cell.made is None for cell in one.cells) for one in row) or words == "{1|1"


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
