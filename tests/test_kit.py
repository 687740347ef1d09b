"""Materials against what the text does with them: totals, gauge by the yarn's weight, colours by name, hooks, notions, level."""

from __future__ import annotations

import pytest
from helpers import check, load_table

ROWS = "\nMAT\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, sc in each sc across. (10 sc)\n"


def mat(materials: str, rows: str = ROWS, head: str = "") -> str:
    """A small pattern with its list of materials."""
    return f"Plain Mat\nUS terms\n{head}\nMaterials\n{materials}\n{rows}"


def asked(text: str, *rules: str) -> list[str]:
    """The words that are marked under some rules."""
    report = check(text)
    return [report.source.slice(f.span) for f in report.findings if f.rule in rules]


class TestHooksAndYarns:
    """hook-size-disagrees and yarn-weight-disagrees under headings, and in a list's short forms."""

    @pytest.mark.parametrize("lines", ["Hook\n5 mm (US {})", "Crochet hook\n- US {}, 5 mm"])
    def test_hook_under_its_heading(self, lines: str) -> None:
        """A hook's names are compared where only the heading over them says "hook"."""
        assert asked(f"Mat\nUS terms\n{lines.format('I-9')}\n{ROWS}", "hook-size-disagrees") == ["US I-9"]
        assert asked(f"Mat\nUS terms\n{lines.format('H-8')}\n{ROWS}", "hook-size-disagrees") == []

    @pytest.mark.parametrize(
        ("hook", "found"), [("No. 8 (old UK) / 5 mm hook", True), ("No. 6 (old UK) / 5 mm hook", False)]
    )
    def test_old_number_with_its_country_behind(self, hook: str, found: bool) -> None:
        """An old UK number is known by the country behind it as well."""
        assert bool(asked(mat(f"DK yarn; {hook}"), "hook-size-disagrees")) == found

    @pytest.mark.parametrize(
        ("line", "found"),
        [
            ("4/DK weight, 2 balls", True),
            ("3/DK weight, 2 balls", False),
            ("Fingering/3, 2 balls", True),
            ("Fingering/1, 2 balls", False),
            ("aran (5), 2 balls", True),
            ("aran (4), 2 balls", False),
        ],
    )
    def test_short_forms_in_a_list(self, line: str, found: bool) -> None:
        """In a list of materials a weight's word and number need no other word beside them."""
        assert bool(asked(mat(f"{line}; 4 mm hook"), "yarn-weight-disagrees")) == found


class TestTotals:
    """yarn-total-disagrees, yarn-amount-falls."""

    @pytest.mark.parametrize(
        ("line", "marked"),
        [
            ("3 x 50 g balls (115 m each), 460 m", ["460"]),
            ("4 x 50 g balls (115 m each), 460 m", []),
            ("8 skeins (232 yd each); 1624 yd total", ["1624"]),  # the total of seven, met in print for eight
            ("7 skeins (232 yd each); 1624 yd total", []),
            ("Approx 400 m: 3 balls of 110 m a ball", ["400"]),
            ("Approx 400 m: 4 balls of 110 m a ball", []),
            ("4 balls (50g/120m per ball) = 520 m", ["520"]),
            ("4 balls (50g/120m per ball) = 480 m", []),
            ("2 skeins, 220 yd/100 g each (440 yd)", []),
            ("4 x 50 g balls (250 g)", ["250"]),
            ("4 x 50 g balls (200 g)", []),
            ("5 skeins of worsted, 200 yd each, total 1,200 yds", ["1,200"]),
            ("balls of 0 m, 0 m in total", []),
            ("0 balls of 0 m each, 9 m in total", []),
        ],
    )
    def test_balls_times_each(self, line: str, marked: list[str]) -> None:
        """Balls times the measure of one against that of all: too short, or a whole ball too many."""
        assert asked(mat(f"DK yarn, {line}; 4 mm hook"), "yarn-total-disagrees") == marked

    def test_over_sizes(self) -> None:
        """Two lists with one ratio: 8 skeins of 232 yd are 1856, and 1624 is printed (met in a published tee)."""
        line = "3 (4, 5, 8) skeins at 232 yds: 696 (928, 1160, {}) yds"
        head = "Sizes: S (M, L, XL)"

        assert asked(mat(f"{line.format(1624)}; 4 mm hook", head=head), "yarn-total-disagrees") == ["1624"]
        assert asked(mat(f"{line.format(1856)}; 4 mm hook", head=head), "yarn-total-disagrees") == []

    def test_falls_before_a_sign_of_times(self) -> None:
        """ "6 [7, 7, 6] x 50 g balls" is a list of balls."""
        text = mat("6 [7, 7, 6] x 50 g balls; 4 mm hook", head="Sizes: S [M, L, XL]")

        assert asked(text, "yarn-amount-falls") == ["6"]


class TestGaugeAndYarn:
    """gauge-unlike-yarn, by the published weight system."""

    @pytest.mark.parametrize("row", load_table("yarn_gauge")["ranges"], ids=lambda row: row["word"])
    def test_published_ranges(self, row: dict) -> None:
        """Both ends of the published range pass."""
        for stitches in row["sts"]:
            text = mat(f"{row['word']} weight yarn; 4 mm hook", head=f"Gauge: {stitches} sc = 4 in")
            assert asked(text, "gauge-unlike-yarn") == []

    @pytest.mark.parametrize(
        ("word", "stitches"),
        [
            ("fingering", 10),
            ("sport", 8),
            ("sport", 36),
            ("DK", 7),
            ("worsted", 28),
            ("bulky", 24),
            ("super bulky", 18),
        ],
    )
    def test_far_from_the_range(self, word: str, stitches: int) -> None:
        """What is half a range and more away is another yarn."""
        text = mat(f"{word} weight yarn; 4 mm hook", head=f"Gauge: {stitches} sc = 4 in")

        assert asked(text, "gauge-unlike-yarn") == [f"{stitches} sc = 4 in"]

    @pytest.mark.parametrize(
        ("yarn", "gauge", "more"),
        [
            ("Worsted yarn held double", "6 sc = 4 in", ""),
            ("Worsted yarn", "24 sc = 4 in", "Stuff firmly.\n"),
            ("Worsted yarn", "24 tr = 4 in", ""),
            ("Lace weight yarn", "20 sc = 4 in", ""),
            ("Worsted yarn and DK yarn", "24 sc = 4 in", ""),
        ],
    )
    def test_left_alone(self, yarn: str, gauge: str, more: str) -> None:
        """Yarn held double, toys, other stitches, lace, and two weights say nothing certain."""
        assert asked(mat(f"{yarn}; 4 mm hook", ROWS + more, f"Gauge: {gauge}"), "gauge-unlike-yarn") == []


class TestColours:
    """colour-not-declared, colour-not-used."""

    @staticmethod
    def striped(materials: str, one: str, other: str) -> str:
        """Two colours, the second taken up in the words of a row."""
        rows = ROWS.replace("Ch 11.", f"With {one}, ch 11.").replace("Row 2:", f"Row 2: Change to {other}.")
        return mat(f"{materials}; 5 mm hook", rows)

    @pytest.mark.parametrize(
        ("materials", "one", "other", "marked"),
        [
            ("DK yarn: Navy, 1 ball; Cream, 1 ball", "Navy", "Cream", []),
            ("DK yarn: Navy, 1 ball; Cream, 1 ball", "Navy", "Rust", ["Rust"]),
            ("DK yarn: Navy, 1 ball; Cream, 1 ball", "Navy", "Navy", ["Cream"]),
            ("Color A: navy, 2 balls\nColor B: cream, 1 ball", "Color A", "Color B", []),
            ("Color A: navy, 2 balls\nColor B: cream, 1 ball", "Color A", "Color C", ["C"]),
            ("MC: navy, 2 balls\nCC1: cream, 1 ball", "MC", "CC2", ["CC2"]),
            ("DK yarn, 2 balls", "Navy", "Cream", []),
        ],
    )
    def test_names_and_letters(self, materials: str, one: str, other: str, marked: list[str]) -> None:
        """A colour in the rows that no list has is asked about, once, though another is then not used."""
        assert asked(self.striped(materials, one, other), "colour-not-declared", "colour-not-used") == marked


class TestKit:
    """Hooks and notions, listed and used."""

    @pytest.mark.parametrize(
        ("materials", "words", "rule", "found"),
        [
            ("4 mm hook; 2 buttons", "", "notion-not-used", True),
            ("4 mm hook; 2 buttons", "Sew on buttons.", "notion-not-used", False),
            ("4 mm hook; 9 mm safety eyes", "", "notion-not-used", True),
            ("4 mm hook; 9 mm safety eyes", "Attach 9 mm safety eyes.", "notion-not-used", False),
            ("4 mm hook; stitch markers; yarn needle", "", "notion-not-used", False),
            ("4 mm hook", "Attach 9 mm safety eyes.", "notion-not-listed", True),
            ("4 mm hook", "Thread ribbon through the eyelets.", "notion-not-listed", True),
            ("4 mm hook; 1 m of ribbon", "Thread ribbon through the eyelets.", "notion-not-listed", False),
            ("4 mm hook; 3 buttons, 15 mm", "Sew 5 buttons to the band.", "notions-differ", True),
            ("4 mm hook; 5 buttons, 15 mm", "Sew 5 buttons to the band.", "notions-differ", False),
            ("4 mm hook; three buttons", "Sew two buttons on, then sew 1 button on top.", "notions-differ", False),
            ("4 mm hook; 6 buttons", "Work a band with 5 buttonholes. Sew on the buttons.", "buttonholes-differ", True),
            ("4 mm hook; 6 buttons", "Work six buttonholes evenly. Sew on the buttons.", "buttonholes-differ", False),
            ("4 mm hook; 6 buttons", "Work 5 more buttonholes. Sew on the buttons.", "buttonholes-differ", False),
            ("4 mm hook; 6 buttons", "Work 3 buttonholes on each front. Sew them on.", "buttonholes-differ", False),
            ("4 mm hook; 6 buttons", "Work the band (6 buttonholes made).", "buttonholes-differ", False),
            ("4 mm and 5 mm hooks", "With 4 mm hook, work on.", "hook-not-used", True),
            ("4 mm and 5 mm hooks", "Change to larger hook.", "hook-not-used", False),
            ("4 mm and 5 mm hooks", "With larger hook, work on.", "hook-not-used", True),
            ("4 mm and 5 mm hooks", "With larger hook, work on. Edging: with smaller hook.", "hook-not-used", False),
            ("4 mm hook, or size to obtain gauge; 5 mm hook", "With smaller hook, work on.", "hook-not-used", True),
            ("hooks 5.5 mm for the mat and 4.5 mm for the edging", "", "hook-not-used", False),
            ("4 mm or 5 mm hook", "", "hook-not-used", False),
            ("E-4 (3.5 mm) hook", "With G hook, work on.", "hook-not-listed", True),
            ("E-4 (3.5 mm) hook", "With E hook, work on.", "hook-not-listed", False),
            ("US H-8 hook", "With 5 mm hook, work on.", "hook-not-listed", False),
        ],
    )
    def test_listed_and_used(self, materials: str, words: str, rule: str, found: bool) -> None:
        """What is used is listed, what is listed is used, and as many of them."""
        assert bool(asked(mat(f"DK yarn; {materials}", f"{ROWS}{words}\n"), rule)) == found


class TestLevel:
    """level-too-high."""

    THREE = (
        ROWS.replace("across. (10 sc)\n", "across, turn. (10 sc)\n") + "Row 3: Ch 1, sc in each sc across. (10 sc)\n"
    )

    @pytest.mark.parametrize(
        ("level", "rows", "found"),
        [
            ("Skill level: Intermediate", THREE, True),
            ("Level: Advanced", THREE, True),
            ("Skill level: Easy", THREE, False),
            ("Skill level: easy to intermediate", THREE, False),
            ("Skill level: Intermediate", THREE.replace("sc in each sc across. (10 sc)", "sc2tog, sc in last 8 sc. (9 sc)"), False),
            ("Skill level: Intermediate", THREE.replace("Row 3: Ch 1,", "Row 3: Ch 1, working in BLO,"), False),
            ("Skill level: Intermediate", ROWS, False),
            ("Skill level: Experienced", THREE.replace("sc in each sc across. (10 sc)", "sc2tog, sc in last 8 sc. (9 sc)"), True),
            ("Skill level: Experienced", THREE.replace("Row 3: Ch 1,", "Row 3: Ch 1, working in BLO,"), False),
            ("Skill level: Experienced", THREE.replace("Row 3: Ch 1, sc in each sc across. (10 sc)", "Row 3: Ch 1, grumple across."), False),
        ],
    )  # fmt: skip
    def test_plain_rows(self, level: str, rows: str, found: bool) -> None:
        """Plain rows of one stitch are for a beginner; anything beyond them is the designer's own judgement."""
        assert bool(asked(mat("DK yarn; 4 mm hook", rows, level), "level-too-high")) == found


class TestEaseOfOtherSizes:
    """ease-disagrees, where nothing is said of the ease."""

    @pytest.mark.parametrize(
        ("finished", "marked"),
        [
            ("36 (40, 44, 48, 52)", []),
            ("36 (40, 43, 48, 52)", ["43"]),
            ("35 (38, 42, 47, 50)", []),
        ],
    )
    def test_one_size_alone(self, finished: str, marked: list[str]) -> None:
        """One size with another ease than all others is asked about; ease that varies is meant."""
        head = f"Sizes: S (M, L, XL, 2X)\nTo fit bust: 32 (36, 40, 44, 48) in\nFinished bust: {finished} in"

        assert asked(mat("DK yarn; 4 mm hook", head=head), "ease-disagrees") == marked


class TestOddMaterials:
    """Lists with no numbers, with zeros and with huge ones come to a report."""

    @pytest.mark.parametrize(
        "line",
        [
            "",
            "yarn",
            "hook",
            "0 mm hook (US 0)",
            "mm hook (US )",
            "DK ()",
            "# yarn",
            "0 (0, 0) balls of 0 m, 0 (0, 0) m in total",
            f"{'9' * 400} balls of {'9' * 400} m each, {'9' * 400} m in total",
            "1/0 balls of 1/0 m",
            "½ ball of ½ m each, ½ m in total",
            "(, ) g; ( ) m; -5 (-6, --) g",
            "١٢ balls, ٣ m each, ٤ m in total",
        ],
    )
    @pytest.mark.parametrize("head", ["", "Sizes: S (M, L)\nGauge: 0 sts = 4 in", "Gauge: 16 sts = 1/0 in"])
    def test_comes_to_a_report(self, line: str, head: str) -> None:
        """Nothing in a list of materials or a gauge stops the reading."""
        report = check(mat(line, head=head))

        assert [row.cells[0].made.stitches for row in report.ledger.rows][-1] == 10


def test_a_common_colour_in_small_letters_that_is_nowhere_listed():
    """ "Change to blue" where the materials have red and white; a colour that is listed is not asked after."""
    text = (
        "Mat\nUS terms\nMaterials: worsted yarn in red and white; 5 mm hook\nMAT\nWith red, ch 11.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across. Change to white. (10 sc)\nRow 2: Ch 1, turn, sc in each sc. Change to {}. (10 sc)\n"
        "Row 3: Ch 1, turn, sc in each sc. (10 sc)\n"
    )
    assert [f.message for f in check(text.format("blue")).findings if f.rule == "colour-not-declared"] == [
        "Color blue is worked here, but the materials only name red, white. Which color is meant?"
    ]
    assert "colour-not-declared" not in [f.rule for f in check(text.format("red")).findings]


BUTTONED = """Plover Jacket
Sizes: S (M, L)
Materials
4 mm (G-6) hook
{} buttons, 12 mm across
Band
Ch 41 (45, 49).
Row 1: Sc in 2nd ch from hook and in each ch across. (40 (44, 48) sc)
Finishing
Sew on {} buttons.
"""


def test_buttons_of_every_size():
    """Buttons in the list against those that are sewn on, one number or one a size; a hook's size above is none of them."""
    for listed, sewn, differ in (
        ("5 (5, 6)", "5 (5, 6)", False),
        ("5 (5, 6)", "5 (6, 6)", True),
        ("5", "6", True),
        ("5", "5 (5, 5)", False),
        ("Five", "5", False),
    ):
        found = [f for f in check(BUTTONED.format(listed, sewn)).findings if f.rule == "notions-differ"]
        assert bool(found) == differ
    assert [f.sizes for f in check(BUTTONED.format("5 (5, 6)", "5 (6, 6)")).findings if f.rule == "notions-differ"] == [
        ("M",)
    ]


def test_buttonholes_of_every_size():
    """Buttonholes against the buttons of the list, one number or one a size."""
    for listed, holes, differ in (
        ("5 (5, 6)", "5 (5, 6)", ()),
        ("5 (5, 6)", "5 (6, 6)", ("M",)),
        ("5", "6", ("all",)),
        ("5", "5", ()),
    ):
        text = BUTTONED.format(listed, listed).replace("Finishing", f"Make {holes} buttonholes.\nFinishing")
        found = [f for f in check(text).findings if f.rule == "buttonholes-differ"]
        assert [f.sizes or ("all",) for f in found] == ([differ] if differ else [])
