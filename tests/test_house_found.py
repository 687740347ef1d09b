"""The house file that patterns imply: where counts stand, what brackets mean, units, the list's order, the sections'."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml
from helpers import DEMO, check, rulebook


def implied(text: str) -> str:
    """The house file that one pattern implies."""
    from lint.houseclerk import implied as house_file
    from lint.source import SourceText

    return house_file([SourceText(text, "pattern.txt")], rulebook(), "auto")


def house_of(text: str) -> dict[str, Any]:
    """The same as data."""
    return yaml.safe_load(implied(text))


_COASTER = """Tern Coaster
US terms

MATERIALS
Cotton in white, 4 mm hook

GAUGE
16 sc = 10 cm (4 in)

ABBREVIATIONS
ch = chain
rnd = round
sc = single crochet
st = stitch

COASTER
Rnd 1: Ch 1 (does not count as a st), 6 sc in magic ring. [6 sc]
Rnd 2: Ch 1 (does not count as a st), 2 sc in each st around. [12 sc]
Rnd 3: Ch 1 (does not count as a st), (sc in next st, 2 sc in next st) 6 times. [18 sc]
Rnd 4: Ch 1 (does not count as a st), sc in each st around.{}
"""


def test_what_a_pattern_demands_of_itself() -> None:
    """Every demand that the pattern keeps to comes out of it."""
    house = house_of(_COASTER.format(""))
    assert house["counts"]["required"] == "where it changes"
    assert house["brackets"] == {"repeats": ["( )"], "counts": ["[ ]"]}
    assert house["units"]["first"] == "centimetres"
    assert house["abbreviation_list"]["order"] == "alphabetical"
    assert house["sections"] == ["title", "materials", "gauge", "abbreviations", "instructions"]
    assert house["turning_chain"]["place"] == "beside the chain"


def test_counts_in_every_row() -> None:
    """A pattern that prints a count where nothing changes, too, wants one in every row."""
    assert house_of(_COASTER.format(" [18 sc]"))["counts"]["required"] == "every row"


def test_a_list_by_use_is_left_as_it_stands() -> None:
    """A list that follows no alphabet, in neither of its columns, is as it stands."""
    text = _COASTER.format("").replace("ch = chain\nrnd = round\n", "st = stitch\nch = chain\n", 1)
    text = text.replace("sc = single crochet\nst = stitch\n", "sc = single crochet\nrnd = round\n")
    assert house_of(text)["abbreviation_list"]["order"] == "as it stands"


@pytest.mark.parametrize("path", sorted(DEMO.glob("*.txt")), ids=lambda path: path.stem)
def test_a_pattern_keeps_to_the_house_that_it_implies(path: Path) -> None:
    """What is read off a pattern asks nothing more of it, but where it has two ways itself."""
    text = path.read_text(encoding="utf-8")
    house = implied(text)
    more = {one.rule for one in check(text, house=house).findings} - {one.rule for one in check(text).findings}
    if "# otherwise" in house or "# also found" in house:
        more &= {"section-missing", "count-missing", "section-out-of-order", "turning-chain-note-misplaced"}
    assert more == set()
