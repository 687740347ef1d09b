"""Yarn amounts, ease, skill level, hooks and notions: each mistake found, and its sound twin left alone."""

from __future__ import annotations

import pytest
from helpers import check

ROWS = "\nVEST\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, sc in each sc across. (10 sc)\n"


def rules(text: str, *wanted: str) -> list[tuple[str, str]]:
    """What is found under some rules: the rule, and the words marked."""
    report = check(text)
    return [(f.rule, report.source.slice(f.span).rstrip(".")) for f in report.findings if f.rule in wanted]


def sized(materials: str, more: str = "") -> str:
    """A vest in four sizes with its materials."""
    return f"Plain Vest\nUS terms\nSizes: S (M, L, XL)\n{more}\nMaterials\n{materials}\n{ROWS}"


class TestAmounts:
    """yarn-amount-falls, yarn-total-disagrees."""

    @pytest.mark.parametrize(
        ("line", "marked"),
        [
            ("6 (7, 9, 8) balls of DK yarn; 4 mm hook", ["8"]),
            ("DK yarn, 50 g balls: 6 (7, 8, 9) balls; 4 mm hook", []),
            ("450 (500, 480, 600) yds of DK yarn; 4 mm hook", ["480"]),
            ("300 (350, 350, 400) g of DK yarn; 4 mm hook", []),
            ("A: 3 (4, 4, 5) balls; B: 2 (2, 1, 3) skeins; 4 mm hook", ["1"]),
        ],
    )
    def test_larger_sizes_take_no_less(self, line: str, marked: list[str]) -> None:
        """An amount that falls from one size to the next is asked about; equal amounts are normal."""
        assert [words for _, words in rules(sized(line), "yarn-amount-falls")] == marked

    @pytest.mark.parametrize(
        ("line", "found"),
        [
            ("3 balls of DK yarn (50 g / 110 m), 400 m in total", True),
            ("4 balls of DK yarn (50 g / 110 m), 400 m in total", False),
            ("5 skeins of worsted yarn (100 g / 200 yd each), total 1,200 yds", True),
            ("6 skeins of worsted yarn (100 g / 200 yd each), total 1,200 yds", False),
            ("3 balls of DK yarn (50 g / 110 m)", False),
        ],
    )
    def test_balls_hold_what_is_asked_for(self, line: str, found: bool) -> None:
        """Balls times their length against the total, where one line gives all three."""
        text = f"Plain Scarf\nUS terms\nMaterials\n{line}; 4 mm hook\n{ROWS}"

        assert bool(rules(text, "yarn-total-disagrees")) == found


class TestEase:
    """ease-disagrees."""

    @pytest.mark.parametrize(
        ("fits", "made", "ease", "marked"),
        [
            ("To fit bust: 32 (36, 40, 44) in", "Finished bust: 36 (40, 44, 48) in", "4 in of positive ease", []),
            ("To fit bust: 32 (36, 40, 44) in", "Finished bust: 36 (40, 43, 48) in", "4 in of positive ease", ["43"]),
            ("To fit chest: 81 (91, 101, 111) cm", "Finished chest: 91 (101, 111, 121) cm", "Ease: 10 cm", []),
            ("To fit chest: 81 (91, 101, 111) cm", "Finished chest: 86 (96, 106, 116) cm", "Ease: 10 cm", ["10 cm"]),
            ("To fit hips: 32 (36, 40, 44) in", "Finished hips: 30 (34, 38, 42) in", "2 in of negative ease", []),
            ("To fit bust: 32 (36, 40, 44) in", "Finished hips: 40 (44, 48, 52) in", "2 in of ease", []),
        ],
    )
    def test_finished_less_body(self, fits: str, made: str, ease: str, marked: list[str]) -> None:
        """The finished measure less the body's is the ease that is told, in every size, for the same part of the body."""
        found = rules(sized("DK yarn; 4 mm hook", f"{fits}\n{made}\nWorn with {ease}.\n"), "ease-disagrees")

        assert [words for _, words in found] == marked


class TestLevel:
    """level-too-low."""

    POSTS = "\nSpecial stitches\nShell: 5 dc in same st.\n" + ROWS.replace(
        "Row 2: Ch 1, sc in each sc across.",
        "Row 2: Ch 3 (counts as dc), FPdc in next sc, skip next 2 sts, shell in next st, skip next 2 sts, dc in last 3 sts.",
    ).replace("(10 sc)\nRow 2", "(10 sc)\nRow 2")

    @pytest.mark.parametrize("level", ["Skill level: Beginner", "Difficulty - absolute beginner", "Level: Basic"])
    def test_lowest_levels(self, level: str) -> None:
        """Post stitches and special stitches are more than the lowest level has (project levels of 2018)."""
        assert rules(f"Mat\nUS terms\n{level}\n{self.POSTS}", "level-too-low")
        assert not rules(f"Mat\nUS terms\n{level}\n{ROWS}", "level-too-low")

    @pytest.mark.parametrize(
        "level",
        [
            "Skill level: Easy",
            "Skill level: Intermediate",
            "Level: confident beginner",
            "Skill level: Beginner to intermediate",
            "",
        ],
    )
    def test_higher_levels_are_left_alone(self, level: str) -> None:
        """A level that is higher, or a range, is the designer's own judgement."""
        assert not rules(f"Mat\nUS terms\n{level}\n{self.POSTS}", "level-too-low")


class TestKit:
    """hook-not-listed, notion-not-listed."""

    @pytest.mark.parametrize(
        ("materials", "words", "marked"),
        [
            ("DK yarn; 4 mm hook", "With 5 mm hook, ch 11.", ["5 mm hook"]),
            ("DK yarn; 4 mm and 5 mm hooks", "With 5 mm hook, ch 11.", []),
            ("DK yarn; 4 mm hook", "Change to larger hook, ch 11.", ["Change to larger hook"]),
            ("DK yarn; 4 mm and 5 mm hooks", "With larger hook, ch 11.", []),
            ("DK yarn; hook in the size that gives the gauge", "With 5 mm hook, ch 11.", []),
        ],
    )
    def test_hooks(self, materials: str, words: str, marked: list[str]) -> None:
        """A hook that the rows ask for stands in the list of materials."""
        text = f"Mat\nUS terms\nMaterials\n{materials}\n{ROWS.replace('Ch 11.', words)}"

        assert [found for _, found in rules(text, "hook-not-listed")] == marked

    @pytest.mark.parametrize(
        ("materials", "words", "found"),
        [
            ("DK yarn; 4 mm hook", "Place a stitch marker.", True),
            ("DK yarn; 4 mm hook; scrap yarn as marker", "Place a stitch marker.", False),
            ("DK yarn; 4 mm hook", "Stuff firmly before closing.", True),
            ("DK yarn; 4 mm hook; fiberfill", "Stuff firmly before closing.", False),
            ("DK yarn; 4 mm hook", "Sew on buttons.", True),
            ("DK yarn; 4 mm hook; 3 buttons", "Sew on buttons.", False),
            ("DK yarn", "Place a stitch marker.", False),
        ],
    )
    def test_notions(self, materials: str, words: str, found: bool) -> None:
        """What is used besides yarn and hook is listed; without a list of materials nothing is said of it."""
        text = f"Mat\nUS terms\nMaterials\n{materials}\n{ROWS.replace('turn. (10 sc)', f'turn. (10 sc) {words}')}"

        assert bool(rules(text, "notion-not-listed")) == found


def test_balls_of_a_put_up_told_with_a_stroke() -> None:
    """Seven balls of 120 m do not hold 960 m; what stands in the line below belongs to the yarn, a hook of 4 mm does not."""
    text = (
        "Vest\n\nUS terms\nSizes: S (M, L)\n\nMATERIALS\n{yarn}\n4 mm (US G-6) hook\n\nBACK\nCh 21 (25, 29).\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 (24, 28) sc)\n"
    )
    for yarn in (
        "DK yarn (120 m / 50 g), 720 (840, 960) m or 6 (7, 7) balls",
        "DK yarn, approx. 720 (840, 960) m\n6 (7, 7) balls of 50 g / 120 m",
    ):
        found = [one for one in check(text.format(yarn=yarn)).findings if one.rule == "yarn-total-disagrees"]
        assert [one.sizes for one in found] == [("L",)]
        right = check(text.format(yarn=yarn.replace("(7, 7)", "(7, 8)")))
        assert not [one for one in right.findings if one.rule == "yarn-total-disagrees"]


def test_an_ease_that_only_follows() -> None:
    """A measure whose inches and centimetres disagree is asked about; the ease that it upsets is not asked about as well."""
    text = (
        "Vest\n\nUS terms\nSizes: S (M, L, XL)\nTo fit bust: 81 (91, 101, 121) cm / 32 (36, 40, 44) in\n"
        "Finished bust: 90 (100, 110, 120) cm\n\nBACK\nCh 21 (25, 29, 33).\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 (24, 28, 32) sc)\n"
    )
    rules = [one.rule for one in check(text).findings]
    assert "measurement-disagrees" in rules and "ease-disagrees" not in rules
    assert "ease-disagrees" in [one.rule for one in check(text.replace(" / 32 (36, 40, 44) in", "").replace("81 (91, 101, 121)", "81 (91, 101, 109)")).findings]  # fmt: skip


SLEEVED = """Fell Top

US terms
Sizes: S (M, L, XL)
Gauge: 16 sc and 20 rows = 10 cm

BACK
Ch 73 (81, 89, 97).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. 72 (80, 88, 96) sts
Rows 2-40: Ch 1, sc in each st across, turn.

Shape Armholes
Next row: Sl st across first 4 sts, ch 1, sc in each st to last 4 sts, turn. 64 (72, 80, 88) sts
Work even for {rows} rows.
Fasten off.

FRONT
Work as for Back.

SLEEVES (make 2)
Ch {chains}.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Rows 2-30: Ch 1, sc in each st across, turn.
Fasten off.
"""


@pytest.mark.parametrize(
    ("rows", "chains", "told"),
    [
        ("39 (41, 43, 45)", "65 (68, 71, 75)", []),
        ("39 (41, 43, 49)", "65 (68, 71, 75)", [("armhole-sleeve-differs", ("XL",))]),
        ("39 (51, 43, 45)", "65 (68, 71, 75)", [("size-step-broken", ("M",))]),
    ],
)
def test_the_armhole_in_rows_against_the_sleeve(
    rows: str, chains: str, told: list[tuple[str, tuple[str, ...]]]
) -> None:
    """40 rows are 20 cm, a straight sleeve for it 64 sts wide; one slip of a size is asked about once, in front and back."""
    report = check(SLEEVED.format(rows=rows, chains=chains))
    rules = ("armhole-sleeve-differs", "size-step-broken")
    assert [(one.rule, one.sizes) for one in report.findings if one.rule in rules] == told
