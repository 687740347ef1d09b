"""The rule files: every example shows what it says, every fault names its place, and additions need no Python."""

from __future__ import annotations

import re
import shutil
from pathlib import Path
from typing import Any

import pytest
from helpers import RULES, check, corrections, counts, rulebook

RULE_NAMES = [*rulebook().checks, *(rule.name for rule in rulebook().word_rules)]
FILES = sorted(path.name for path in RULES.glob("*.yaml"))
FORMATION = re.compile(r"^(?P<file>.+\.yaml):(?P<line>\d+):(?P<column>\d+): (?P<fault>.+)$")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A copy of rules/ to add to or to spoil."""
    return Path(shutil.copytree(RULES, tmp_path / "rules"))


_read: list[Any] = []  # every rulebook stays alive: lint.lexicon knows them by their identity


def load(folder: Path) -> Any:
    """The rulebook of a folder, read anew even if the folder was read before."""
    from lint.rulebook import load_rulebook

    _read.append(getattr(load_rulebook, "__wrapped__", load_rulebook)(folder))
    return _read[-1]


def inspected(text: str, folder: Path) -> Any:
    """The report on a text by the rules of a folder."""
    from lint.inspection import inspect
    from lint.source import SourceText

    return inspect(SourceText(text), load(folder))


def faults(folder: Path) -> list[tuple[str, int, int, str]]:
    """File, line, column and words of every fault that keeps a folder from being used."""
    from lint.rulefolder import RuleFileError

    with pytest.raises(RuleFileError) as caught:
        load(folder)
    found = [FORMATION.match(line) for line in str(caught.value).splitlines()]

    assert all(found), str(caught.value)
    return [
        (Path(match["file"]).name, int(match["line"]), int(match["column"]), match["fault"]) for match in found if match
    ]


def change(path: Path, old: str, new: str) -> tuple[int, int]:
    """Change the first place of a file that has these words; its line and column, from 1."""
    text = path.read_text(encoding="utf-8")
    place = text.index(old)
    path.write_text(text[:place] + new + text[place + len(old) :], encoding="utf-8")
    return text.count("\n", 0, place) + 1, place - (text.rfind("\n", 0, place) + 1) + 1


# every rule's own examples ----------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", RULE_NAMES)
class TestExamples:
    """The examples that stand with each check and word rule."""

    def test_bad_example_shows_it(self, name: str) -> None:
        """The bad example has the finding, with a whole sentence to show."""
        example = rulebook().rule(name).example
        report = check(example.bad, house=example.house)
        found = [finding for finding in report.findings if finding.rule == name]

        assert found
        assert all(finding.message and "{" not in finding.message for finding in found)
        assert found[0].message == example.says  # as `frogproof explain` shows it

    def test_good_example_does_not(self, name: str) -> None:
        """The good example does not have the finding."""
        example = rulebook().rule(name).example

        assert name not in [finding.rule for finding in check(example.good, house=example.house).findings]

    def test_is_written_for_the_reader(self, name: str) -> None:
        """The rule says why it matters, names its source, and belongs to an area of the grade."""
        rule = rulebook().rule(name)

        assert re.fullmatch(r"[a-z]+(-[a-z]+)*", rule.name)
        assert rule.why.strip().endswith((".", "?"))
        assert rule.source
        assert rule.area in [area.name for area in rulebook().grade.areas]


def test_rule_names_are_unique() -> None:
    """No check and no word rule shares its name with another."""
    from lint.ruletexts import CheckFile, WordRuleFile
    from lint.yamlfile import read_model

    names = [check.name for check in read_model(RULES / "checks.yaml", CheckFile).checks]
    names += [rule.name for rule in read_model(RULES / "word_rules.yaml", WordRuleFile).word_rules]

    assert len(names) == len(set(names))


def test_every_finding_has_a_rule() -> None:
    """All examples together give no finding whose rule does not stand in the files."""
    for name in RULE_NAMES:
        for text in (rulebook().rule(name).example.good, rulebook().rule(name).example.bad):
            assert {finding.rule for finding in check(text).findings} <= set(RULE_NAMES)


# faults -----------------------------------------------------------------------------------------------------------


class TestFaults:
    """A rule file that cannot be used says where and why."""

    def test_sound_copy_loads(self, folder: Path) -> None:
        """A plain copy of the rules is the same rulebook."""
        assert rulebook() == load(folder)

    @pytest.mark.parametrize("name", FILES)
    def test_broken_yaml(self, folder: Path, name: str) -> None:
        """A line that is no YAML is named by file, line and column."""
        path = folder / name
        lines = path.read_text(encoding="utf-8").rstrip("\n").count("\n") + 1
        path.write_text(
            path.read_text(encoding="utf-8").rstrip("\n") + "\nbroken: [one, two\nnext: }\n", encoding="utf-8"
        )
        [(file, line, _, fault)] = faults(folder)

        assert name == file
        assert lines < line <= lines + 3
        assert fault

    @pytest.mark.parametrize("name", FILES)
    def test_unknown_key_at_the_top(self, folder: Path, name: str) -> None:
        """A key that no rule file has is named where it stands."""
        path = folder / name
        text = path.read_text(encoding="utf-8").rstrip("\n") + "\n"
        path.write_text(text + "colour_of_hook: red\n", encoding="utf-8")
        [(file, line, column, fault)] = faults(folder)

        assert (name, text.count("\n") + 1, 1) == (file, line, column)
        assert "colour_of_hook" in fault

    @pytest.mark.parametrize("name", FILES)
    def test_doubled_key_at_the_top(self, folder: Path, name: str) -> None:
        """A key that stands twice is named at its second place."""
        path = folder / name
        text = path.read_text(encoding="utf-8").rstrip("\n") + "\n"
        key = re.search(r"(?m)^(\w+):", text)
        assert key is not None
        path.write_text(text + f"{key[1]}: []\n", encoding="utf-8")
        [(file, line, column, fault)] = faults(folder)

        assert (name, text.count("\n") + 1, 1) == (file, line, column)
        assert key[1] in fault

    @pytest.mark.parametrize("name", FILES)
    def test_missing_key_at_the_top(self, folder: Path, name: str) -> None:
        """A file without its keys says which one is missing."""
        text = (folder / name).read_text(encoding="utf-8")
        keys = re.findall(r"(?m)^(\w+):", text)
        (folder / name).write_text("{}\n", encoding="utf-8")
        found = faults(folder)

        assert {(name, 1)} == {(file, line) for file, line, _, _ in found}
        assert all(any(key in fault for _, _, _, fault in found) for key in keys)

    @pytest.mark.parametrize("name", FILES)
    def test_not_a_mapping(self, folder: Path, name: str) -> None:
        """A file that is a bare word, or empty, is refused."""
        for text in ("", "word\n", "- one\n- two\n"):
            (folder / name).write_text(text, encoding="utf-8")

            assert [name] == [file for file, _, _, _ in faults(folder)]

    def test_missing_file(self, folder: Path) -> None:
        """A rule file that is not there is named."""
        from lint.rulefolder import RuleFileError

        (folder / "words.yaml").unlink()

        with pytest.raises(RuleFileError, match=r"words\.yaml"):
            load(folder)

    @pytest.mark.parametrize(
        ("name", "old", "new", "words"),
        [
            ("checks.yaml", "    weight: correction", "    weight: fatal", "weight"),
            ("checks.yaml", "area: counts", "aera: counts", "aera"),
            ("checks.yaml", "area: counts", "area: [counts]", "area"),
            ("word_rules.yaml", "phrases: [a few stitches", "phrases: [[a few stitches]", "phrases"),
            ("stitches.yaml", "height: 1", "height: one", "height"),
            ("stitches.yaml", "turning_chain_counts: never", "turning_chain_counts: perhaps", "turning_chain_counts"),
            ("abbreviations_us.yaml", "terms: us", "terms: american", "terms"),
            ("grade.yaml", "weight: 4", "weight: heavy", "weight"),
        ],
    )
    def test_wrong_value(self, folder: Path, name: str, old: str, new: str, words: str) -> None:
        """A value of the wrong kind, or a key misspelt, is named on its line."""
        line, _ = change(folder / name, old, new)
        found = faults(folder)

        assert {name} == {file for file, *_ in found}
        assert (line, True) in [(at, words in fault) for _, at, _, fault in found]

    def test_key_doubled_inside(self, folder: Path) -> None:
        """A key doubled inside an entry is named at its second place."""
        line, column = change(
            folder / "checks.yaml", "    weight: correction\n", "    weight: correction\n    weight: query\n"
        )

        assert [("checks.yaml", line + 1, column + 4)] == [found[:3] for found in faults(folder)]

    def test_key_missing_inside(self, folder: Path) -> None:
        """A check without its reason is named at its entry."""
        path = folder / "word_rules.yaml"
        line = path.read_text(encoding="utf-8").split("\n").index("  - name: open-count-words") + 1
        change(path, "    why:", "    # why:")
        [(file, at, _, fault)] = faults(folder)

        assert ("word_rules.yaml", line) == (file, at)
        assert "why" in fault

    def test_several_faults_at_once(self, folder: Path) -> None:
        """All faults of a file are named together, each on its line."""
        lines = {change(folder / "checks.yaml", "    weight: correction", "    weight: fatal")[0]}
        lines.add(change(folder / "checks.yaml", "    weight: style", "    weight: light")[0])

        assert lines == {line for _, line, _, _ in faults(folder)}


# additions --------------------------------------------------------------------------------------------------------

LISTED = """Strip
Abbreviations
ch = chain
sc = single crochet

STRIP
Ch 13.
Row 1: Sc in 2nd ch from hook and in each ch across; blk the strip. (12 sc)
"""


class TestAdditions:
    """What a house can add to the rules without Python."""

    def test_an_abbreviation(self, folder: Path) -> None:
        """An abbreviation added to the list is known as one: used and not explained, it is a finding."""
        before = [report_finding.rule for report_finding in check(LISTED).findings]
        change(
            folder / "abbreviations_us.yaml",
            "abbreviations:\n",
            'abbreviations:\n  - {abbr: blk, forms: [blk], meaning: block, source: "house"}\n',
        )
        report = inspected(LISTED, folder)
        undefined = [
            report.source.slice(finding.span) for finding in report.findings if finding.rule == "abbreviation-undefined"
        ]

        assert "abbreviation-undefined" not in before
        assert ["blk"] == undefined

    def test_a_form_of_a_stitch(self, folder: Path) -> None:
        """A printed form added to a stitch is read as that stitch."""
        text = "Strip\n\nSTRIP\n\nCh 13.\nRow 1: Zing in 2nd ch from hook and in each ch across. (12 sc)\nRow 2: Ch 1 (does not count as a st), turn, 2 zing in each sc across. (24 sc)\n"
        change(folder / "stitches.yaml", "us: [sc, ", "us: [sc, zing, ")

        assert [None, None] == counts(check(text))
        assert [12, 24] == counts(inspected(text, folder))
        assert [] == corrections(inspected(text, folder))

    def test_a_new_stitch(self, folder: Path) -> None:
        """A whole stitch added to the file is worked, post and foundation versions too."""
        entry = "stitches:\n  - {key: zing, name: zing stitch, us: [zing], uk: [zong], height: 2, turning_chain_counts: never}\n"
        change(folder / "stitches.yaml", "stitches:\n", entry)
        text = "Strip\n\nSTRIP\n\nRow 1: Fzing 12. (12 zing)\nRow 2: Ch 2 (does not count as a st), turn, FPzing around each zing across. (12 sts)\n"

        assert [12, 12] == counts(inspected(text, folder))

    def test_a_way_of_saying(self, folder: Path) -> None:
        """A phrase added to a kind of the vocabulary is read like the others of its kind."""
        text = "Strip\n\nSTRIP\n\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\nRow 2: Ch 1 (does not count as a st), turn, leapfrog next sc, sc in each of next 11 sc. (11 sc)\n"
        change(folder / "words.yaml", "skip: [skip, ", "skip: [skip, leapfrog, ")

        assert [12, None] == counts(check(text))
        assert [12, 11] == counts(inspected(text, folder))

    @pytest.mark.parametrize("words", ["all about", "right about", "about"])
    def test_a_phrase_with_alternatives(self, folder: Path, words: str) -> None:
        """Brackets with strokes hold alternatives, of which one may be empty: each is read as a phrase of its own is."""
        change(folder / "words.yaml", "    - around\n", "    - around\n    - (|all|right) about\n")
        text = f"Strip\n\nSTRIP\n\nRnd 1: Ch 2, 6 sc in 2nd ch from hook. (6)\nRnd 2: 2 sc in each st {words}. (12)\n"

        assert [6, None] == counts(check(text))
        assert [6, 12] == counts(inspected(text, folder))

    def test_a_word_rule(self, folder: Path) -> None:
        """A word-list rule added to the file finds its phrases, with its own sentence and weight."""
        rule = """
  - name: jargon-of-the-house
    area: wording
    weight: style
    phrases: [wiggle the hook]
    message: "“{words}” is said nowhere else."
    why: Makers look it up in vain.
    example: {good: "Row 1: Sc in each st across.", bad: "Row 1: Wiggle the hook, sc in each st across."}
"""
        path = folder / "word_rules.yaml"
        path.write_text(path.read_text(encoding="utf-8").rstrip("\n") + rule, encoding="utf-8")
        text = (
            "Strip\n\nSTRIP\n\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, wiggle the hook. (12 sc)\n"
        )
        report = inspected(text, folder)
        found = [finding for finding in report.findings if finding.rule == "jargon-of-the-house"]

        assert [("wiggle the hook", "style", "“wiggle the hook” is said nowhere else.")] == [
            (report.source.slice(f.span), f.weight.value, f.message) for f in found
        ]
        assert "jargon-of-the-house" not in [finding.rule for finding in check(text).findings]

    def test_another_weight(self, folder: Path) -> None:
        """A weight changed in the file changes the finding's."""
        bad = rulebook().rule("row-number-out-of-order").example.bad
        text = (folder / "checks.yaml").read_text(encoding="utf-8")
        head, tail = text.split("  - name: row-number-out-of-order\n")
        (folder / "checks.yaml").write_text(
            head + "  - name: row-number-out-of-order\n" + tail.replace("weight: correction", "weight: query", 1),
            encoding="utf-8",
        )

        assert ["correction"] == [f.weight.value for f in check(bad).findings if f.rule == "row-number-out-of-order"]
        assert ["query"] == [
            f.weight.value for f in inspected(bad, folder).findings if f.rule == "row-number-out-of-order"
        ]


@pytest.mark.parametrize("words", ["(all|right about", "(all|(right|left)) about", "all | right"])
def test_alternatives_out_of_their_brackets_are_a_fault_of_the_file(folder: Path, words: str) -> None:
    """A stroke that stands in no brackets of its own is told with its place, and nothing is read."""
    line, _ = change(folder / "words.yaml", "    - ar\n", f"    - {words}\n")

    (fault,) = faults(folder)

    assert fault[0] == "words.yaml" and "alternatives" in fault[3], fault
    assert fault[1] <= line


def test_more_alternatives_than_anybody_meant_are_a_fault_of_the_file(folder: Path) -> None:
    """A phrase that would stand for thousands is a slip of the pen."""
    change(folder / "words.yaml", "    - ar\n", "    - " + " ".join(["(a|b|c|d)"] * 8) + "\n")

    (fault,) = faults(folder)

    assert "65536 phrases" in fault[3]
