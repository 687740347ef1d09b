"""What a yarn's label says in two units, and lists of measures in two units with one pair that is out."""

from __future__ import annotations

import pytest
from helpers import all_findings, check

YARN = "Reed Scarf\nMaterials\n{}\n5 mm (H-8) hook\nScarf\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n"


@pytest.mark.parametrize(
    ("words", "out"),
    [
        ("Worsted weight yarn, 200 yd (183 m) per 3.5 oz (100 g) ball", False),
        ("Worsted weight yarn, 218 yards/200 metres, 100 g/3.5 oz", False),
        ("Worsted weight yarn, 1¾ oz (50 g) balls, 120 m = 131 yd", False),
        ("Worsted weight yarn, 200 yd (193 m) per 100 g ball", True),
        ("Worsted weight yarn, 120 m / 113 yd balls", True),
        ("Worsted weight yarn, 1.75 oz (100 g) balls", True),
        ("Worsted weight yarn, 300 yd A (120 m of it held double)", False),
        ("Worsted weight yarn, 300 yd of A, 120 m of B", False),
    ],
)
def test_two_units_of_one_ball(words: str, out: bool) -> None:
    """Yards beside metres and ounces beside grams are the same length and weight, as labels are rounded."""
    found = [line for rule, line in all_findings(check(YARN.format(words))) if rule == "measurement-disagrees"]
    assert found == ([3] if out else [])


MEASURED = "Reed Vest\nSizes: S (M, L, XL, 2X)\nFinished bust: 36 (40, 44, 48, 52) in / {} cm\nBack\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n"


def test_the_one_pair_that_is_out() -> None:
    """2 cm at a bust are within two in a hundred, but no rounding where all the other sizes are rounded to half a centimetre."""
    found = all_findings(check(MEASURED.format("91.5 (101.5, 112, 124, 132)")), ("correction",))
    assert ("measurement-disagrees", 3) in found
    for sound in ("91.5 (101.5, 112, 122, 132)", "91 (102, 112, 122, 132)", "90 (100, 110, 120, 130)"):
        report = check(MEASURED.format(sound))
        assert ("measurement-disagrees", 3) not in all_findings(report, ("correction",))
