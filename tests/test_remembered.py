"""What is kept of words: the same answer, few and short words alone, and nothing after it is forgotten."""

from random import Random

import pytest

from lint.expression import expression
from lint.reading.facts import measures
from lint.reading.lines.labels import LabelReader
from lint.reading.sizes import listings
from lint.remembered import forget_all, remembered
from lint.rulebook import load_rulebook


def test_each_wording_is_made_once():
    """A function is asked once for the same words, and anew after all is forgotten."""
    asked = []

    @remembered()
    def upper(words: str, times: int) -> str:
        asked.append(words)
        return words.upper() * times

    assert [upper("sc", 2), upper("sc", 2), upper("sc", 1)] == ["SCSC", "SCSC", "SC"]
    assert asked == ["sc", "sc"]
    forget_all()
    assert upper("sc", 2) == "SCSC" and asked == ["sc", "sc", "sc"]


def test_long_words_are_not_kept():
    """What is longer than a line is made each time: a hostile text would fill the memory."""
    asked = []

    @remembered(words=1)
    def length(_: int, words: str) -> int:
        asked.append(words)
        return len(words)

    assert length(0, "x" * 50_000) == length(0, "x" * 50_000) == 50_000
    assert len(asked) == 2


def test_a_label_read_before_stands_where_the_line_does():
    """A line that is asked about again further on has its label there, not where it was first read."""
    reader = LabelReader(load_rulebook().layout)
    for offset in (0, 40, 7, 0):
        found = reader.at_line("* Rnd 5 (RS): 2 sc in each st. (24 sts)", offset)
        assert found is not None and found.label.numbers == (5,)
        assert (found.label.span.start, found.start, found.body) == (offset + 2, offset + 2, offset + 14)


def test_lists_are_missed_nowhere():
    """A list of a shape that is looked for only beside certain signs always has them."""
    chance, found = Random(4), 0
    pieces = [
        "1",
        "2",
        "30",
        "two",
        "½",
        "-",
        "(",
        ")",
        "[",
        "]",
        "{",
        "}",
        ",",
        ", ",
        "/",
        " / ",
        ":",
        " : ",
        ";",
        " and ",
        " ",
        "\n",
    ]
    for _ in range(20_000):
        text = "".join(chance.choices(pieces, k=chance.randint(3, 14)))
        for shape, needed in listings.NEEDED.items():
            if listings.SHAPES[shape].search(text) is not None:
                found += 1
                assert needed.search(text) is not None, (shape, text)
    assert found > 500


_PIECES = "1|2½|3.5|22|7 1/2|(|)|[|]|,| , |; |/|-| – |—| and | & | to | x |×| by | in|in | cm|\"| inches|-inch| wide|each | row |\n| |:|.|''"


@pytest.mark.parametrize("sizes", [1, 3])
def test_measures_are_missed_nowhere(sizes):
    """Where lists of measures are not looked for, none are found: no words of which one is made shut it out."""
    chance = Random(sizes)
    lists, _ = measures._list_pattern(measures._INCH, sizes)
    lead = measures.leads_to(measures._INCH)
    assert lead in lists.pattern
    everywhere = expression(lists.pattern.replace(lead, ""))
    texts = ["".join(chance.choices(_PIECES.split("|"), k=chance.randint(3, 24))) for _ in range(1_500)]
    found = [[match.span("all") for match in lists.finditer(text)] for text in texts]
    assert found == [[match.span("all") for match in everywhere.finditer(text)] for text in texts]
    assert sum(map(len, found)) > 300
