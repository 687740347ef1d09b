"""A pattern held to a house: what is found, how it is grouped, the house that patterns imply, glossaries, commands."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from helpers import DEMO, check, rulebook

SOUND = sorted(DEMO.glob("*.txt"))
STRIP = """Strip
US terms.
Materials: 50 g of DK yarn, 4 mm hook
Gauge: 16 sc = 4 in
Finished size: 4 in wide
Abbreviations
ch = chain
sc = single crochet
slst = slip stitch
st = stitch

Strip
Ch 14.
Row 1: Sc in 2nd ch from hook and in each ch across. (13 sc)
Row 2: Ch 1 (does not count as a st), turn, slst in first sc, sc in each st across. (12 sts)
Row 3: Ch 1, turn, slst in first sc, sc in each st across. (12 sts)
"""
HOUSE = "abbreviations:\n  - {use: sl st, means: slip stitch, replace: [slst]}\n"


def found(text: str, house: str, rule: str) -> list[Any]:
    """The findings of a rule on a text that is held to a house."""
    return [finding for finding in check(text, house=house).findings if finding.rule == rule]


class TestChecks:
    """What a house asks for, found once with all its places."""

    def test_one_finding_for_all_places(self) -> None:
        """Forty places of one form are one finding, each place listed in it."""
        rows = "".join(f"Row {row}: Ch 1, turn, slst in first sc, sc in each st across.\n" for row in range(4, 42))
        [finding] = found(STRIP + rows, HOUSE, "abbreviation-not-house")

        assert "(40 places)" in finding.message
        assert len(finding.related) == 39
        assert (finding.found, finding.expected, finding.replacement) == ("slst", "sl st", "sl st")

    def test_without_a_house_nothing(self) -> None:
        """No rule of a house speaks where there is none."""
        assert not [f for f in check(STRIP).findings if f.rule.endswith("-house") or f.rule == "abbreviation-forbidden"]

    def test_list_is_spoken_of_apart(self) -> None:
        """The pattern's own list has a finding of its own."""
        [finding] = found(STRIP, HOUSE, "abbreviation-list-not-house")

        assert finding.found == "slst"

    def test_house_in_other_terms(self) -> None:
        """A house of the other country says so once, and does not hold its list against names that are not of it."""
        house = "extends: uk\n"

        assert len(found(STRIP, house, "terms-not-house")) == 1
        assert found(STRIP, house, "abbreviation-not-house") == []

    @pytest.mark.parametrize(("required", "rows"), [("every row", 2), ("where it changes", 1), ("nowhere", 0)])
    def test_where_counts_are_required(self, required: str, rows: int) -> None:
        """Counts are missed where the house requires them."""
        text = "Strip\nUS terms.\nCh 14.\nRow 1: Sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 1, turn, sc in each sc across.\n"
        missing = found(text, f"counts: {{required: {required}}}", "count-missing")

        assert sum(1 + len(finding.related) for finding in missing) == rows

    def test_rule_off_and_heavier(self) -> None:
        """A house can do without a rule, and can have another weigh more."""
        assert found(STRIP, "rules: {section-missing: off}", "section-missing") == []
        [finding] = found(STRIP, HOUSE + "rules: {abbreviation-not-house: correction}", "abbreviation-not-house")
        assert finding.weight.value == "correction"

    def test_words_of_its_own(self) -> None:
        """A house's own word list is looked for in the rows, with its own sentence."""
        house = "word_rules:\n  - {name: no-nice, phrases: [nicely], message: 'No “{words}”, please.', why: It says nothing.}\n"
        text = STRIP.replace("sc in each st across. (12 sts)", "sc nicely in each st across. (12 sts)")

        assert [finding.message for finding in found(text, house, "no-nice")][:1] == ["No “nicely”, please."]

    def test_words_of_its_own_together(self) -> None:
        """All places of one phrase are one finding; a list for the whole text is held against notes too."""
        house = (
            "word_rules:\n  - {name: no-ball, phrases: [ball of yarn, nicely], message: 'Is “{words}” a skein?', "
            "why: Yarn is sold by the skein., where: everywhere}\n"
        )
        text = STRIP.replace("50 g of DK yarn", "1 ball\nof yarn, DK weight").replace(
            ", sc in each st", ", sc nicely in each st"
        )
        ball, nicely = found(text, house, "no-ball")

        assert ball.message == "Is “ball of yarn” a skein?"
        assert len(nicely.related) == 1
        assert len(found(text, house.replace(", where: everywhere", ""), "no-ball")) == 1

    def test_plain_words_of_its_own(self) -> None:
        """A word that the house takes for plain needs no explaining."""
        text = STRIP.replace("Row 3: Ch 1,", "Row 3: Ch 1, pm,")

        assert [f.found or f.message for f in check(text).findings if f.rule == "abbreviation-undefined"]
        assert found(text, "plain_words: [pm]", "abbreviation-undefined") == []

    def test_sections_required(self) -> None:
        """What the house requires is missed, and what it does not require is not."""
        house = "sections: [title, materials, skill]"

        assert [finding.message for finding in found(STRIP, house, "section-missing")] == [
            "The pattern does not give a section on skill."
        ]

    def test_rounding(self) -> None:
        """A measure that is not rounded as the house rounds is shown."""
        text = STRIP.replace("4 in wide", "4 in (10.3 cm) wide")
        [finding] = found(text, "units: {centimetres_to: 0.5}", "measure-not-house")

        assert check(text).source.slice(finding.span) == "10.3"


@pytest.mark.parametrize("path", SOUND, ids=lambda path: path.stem)
def test_nothing_found_once_restyled(path: Path) -> None:
    """What restyling mends is not found any more."""
    from lint.house.loading import book_for, house_path, load_house
    from lint.inspection import inspect
    from lint.restyling import restyle
    from lint.source import SourceText

    held = load_house(house_path("example-uk"), rulebook())
    text = restyle(SourceText(path.read_text(encoding="utf-8")), held, rulebook()).text
    findings = inspect(SourceText(text), book_for(held, rulebook()), house=held).findings
    others = ("abbreviation-forbidden", "bracket-not-house", "section-out-of-order", "measure-not-house")

    assert [f.message for f in findings if f.rule.endswith("-not-house") and f.rule not in others] == []


class TestImplied:
    """The house file that patterns imply."""

    def implied(self, *texts: str) -> str:
        """The text of the house file."""
        from lint.houseclerk import implied
        from lint.source import SourceText

        return implied([SourceText(text, f"{number}.txt") for number, text in enumerate(texts, 1)], rulebook(), "auto")

    def test_choices_are_found(self) -> None:
        """Labels, counts, chains and abbreviations as the pattern has them."""
        from lint.house.loading import read_house

        house = read_house(self.implied(STRIP), "found.yaml", rulebook())

        assert (house.terms, house.labels.row, house.counts.form) == ("us", "Row 1:", "(12 sts)")
        assert (house.wording.chain, house.turning_chain.note_not) == ("ch 3", "(does not count as a st)")
        assert [entry.use for entry in house.abbreviations] == ["ch", "sc", "slst", "st"]

    def test_what_is_not_shown_is_not_said(self) -> None:
        """A pattern without sizes or repeats says nothing of how they are written."""
        words = self.implied(STRIP)

        assert "sizes:" not in words and "times:" not in words

    def test_minority_is_a_comment(self) -> None:
        """What is found less often stands behind the choice as a comment, and is what restyling would change."""
        words = self.implied(STRIP.replace("Row 3: Ch 1, turn, slst", "Row 3: 1 ch, turn, sl st"))

        assert 'chain: "ch 3"  # otherwise once: 1 ch' in words
        assert "use: slst" in words or "use: sl st" in words
        assert "# also found:" in words

    @pytest.mark.parametrize("path", SOUND, ids=lambda path: path.stem)
    def test_own_house_fits(self, path: Path) -> None:
        """The house that a pattern implies can be read, and finds nothing but the minority that it names."""
        from lint.house.loading import read_house
        from lint.restyling import restyle
        from lint.source import SourceText

        text = path.read_text(encoding="utf-8")
        words = self.implied(text)
        changes = restyle(SourceText(text), read_house(words, "found.yaml", rulebook()), rulebook()).changes

        assert "otherwise" in words or "also found" in words or not [c for c in changes if "list" not in c.rule]


class TestGlossary:
    """The list of what a pattern uses."""

    def listed(self, text: str, house: str = "") -> list[str]:
        """The lines of the list."""
        from lint.glossary import as_list, glossary

        report = check(text, house=house)
        return as_list(glossary(report), report.house).splitlines()

    def test_exactly_what_is_used(self) -> None:
        """Used and not listed is there; listed and not used is not; the pattern's own meanings stay."""
        text = STRIP.replace("st = stitch\n", "st = any stitch\ndc = double crochet\n").replace("ch = chain\n", "")

        assert self.listed(text) == ["ch = chain", "sc = single crochet", "slst = slip stitch", "st = any stitch"]

    def test_forms_are_those_of_the_house(self) -> None:
        """A form that the house replaces stands under the house's, whether the pattern explains it or not."""
        assert "sl st = slip stitch" in self.listed(STRIP, HOUSE)
        assert "sl st = slip stitch" in self.listed(STRIP.replace("slst = slip stitch\n", ""), HOUSE)
        assert not [line for line in self.listed(STRIP, HOUSE) if line.startswith("slst")]

    def test_what_the_house_does_not_have_explained(self) -> None:
        """A form whose word the house prints in full has no place in the list."""
        house = "abbreviations:\n  - {use: slip stitch, means: slip stitch, replace: [slst], listed: false}\n"

        assert self.listed(STRIP, house) == ["ch = chain", "sc = single crochet", "st = stitch"]

    def test_own_stitch_keeps_its_name(self) -> None:
        """A form that the pattern defines as a stitch of its own is not the house's, though it looks alike."""
        text = STRIP.replace("slst = slip stitch", "slst = skip 1 st, sc in next st")

        assert "slst = skip 1 st, sc in next st" in self.listed(text, HOUSE)

    def test_in_the_form_of_the_house(self) -> None:
        """The list takes the house's shape."""
        assert "chain (ch)" in self.listed(STRIP, 'abbreviation_list: {form: "chain (ch)"}')


class TestCommands:
    """The command line: what is written, and what is refused."""

    def run(self, *arguments: str) -> Any:
        """The result of a command."""
        from lint.cli import commands

        return CliRunner().invoke(commands, [str(one) for one in arguments])

    @pytest.fixture
    def pattern(self, tmp_path: Path) -> Path:
        """A pattern in a folder of its own."""
        path = tmp_path / "strip.txt"
        path.write_text(STRIP, encoding="utf-8")
        return path

    def test_restyle_writes_text_and_log(self, pattern: Path) -> None:
        """The result goes to its file, the pattern stays, and every change is told."""
        house = pattern.parent / "ours.yaml"
        house.write_text(HOUSE)
        out = pattern.parent / "out.txt"
        result = self.run("restyle", pattern, "--house", house, "-o", out)

        assert result.exit_code == 0
        assert pattern.read_text() == STRIP and "sl st in first sc" in out.read_text()
        assert "line 15: “slst” -> “sl st”" in result.output
        assert "every row makes the same as before" in result.output

    def test_house_beside_the_pattern(self, pattern: Path) -> None:
        """A house.yaml beside the pattern is taken, by check too, unless --no-house is said."""
        (pattern.parent / "house.yaml").write_text(HOUSE)

        assert self.run("restyle", pattern, "-o", pattern.parent / "out.txt").exit_code == 0
        assert "sl st” where the pattern has “slst" in self.run("check", pattern).output
        assert "sl st” where the pattern has “slst" not in self.run("check", pattern, "--no-house").output

    def test_house_above_the_pattern(self, pattern: Path) -> None:
        """A house.yaml in the folder that is named holds for the folders in it, but for those with one of their own."""
        (pattern.parent / "house.yaml").write_text("name: The Outer Press\n")
        for name in ("one", "two"):
            (pattern.parent / name).mkdir()
            (pattern.parent / name / "strip.txt").write_text(STRIP)
        (pattern.parent / "two" / "house.yaml").write_text("name: The Inner Press\n")
        said = self.run("check", pattern.parent).output

        assert said.count("Held to the style of The Outer Press") == 2
        assert said.count("Held to the style of The Inner Press") == 1
        assert "Held to" not in self.run("check", pattern.parent / "one").output

    def test_terms_alone(self, pattern: Path) -> None:
        """--to without --house changes the terms and nothing else, even beside a house.yaml."""
        (pattern.parent / "house.yaml").write_text(HOUSE)
        said = self.run("restyle", pattern, "--to", "uk", "-o", "-").output

        assert "slst in first dc" in said

    def test_nothing_read_is_written_over(self, pattern: Path) -> None:
        """Neither the log nor a report nor a house file that is found goes over the pattern."""
        out = pattern.parent / "out.txt"
        for command in (
            ("restyle", pattern, "--to", "uk", "-o", out, "--log", pattern),
            ("restyle", pattern, "--to", "uk", "-o", out, "--log", out),
            ("check", pattern, "--csv", pattern),
            ("house", "--from", pattern, "-o", pattern),
            ("recheck", pattern, pattern, "--html", pattern),
        ):
            assert self.run(*command).exit_code == 2
        assert pattern.read_text() == STRIP and not out.exists()

    def test_text_is_not_called_a_document(self, pattern: Path) -> None:
        """A restyled pattern is plain text, and does not go under a word processor's ending."""
        out = pattern.parent / "out.docx"
        result = self.run("restyle", pattern, "--to", "uk", "-o", out)

        assert result.exit_code == 2 and not out.exists()
        assert ".txt" in result.output

    def test_recheck_is_held_to_the_house_too(self, pattern: Path) -> None:
        """Two drafts beside a house.yaml: what was not in its form and now is, is settled."""
        (pattern.parent / "house.yaml").write_text(HOUSE)
        new = pattern.parent / "new.txt"
        new.write_text(STRIP.replace("slst", "sl st"))

        assert "sl st” where the pattern has “slst" in self.run("recheck", pattern, new).output
        assert "sl st” where the pattern has “slst" not in self.run("recheck", pattern, new, "--no-house").output

    def test_glossary_of_the_other_terms(self, pattern: Path) -> None:
        """A house of the other country's terms does not lend its forms, and that is said."""
        said = self.run("glossary", pattern, "--house", "uk").output

        assert "sc = single crochet" in said
        assert "US terms" in said and "restyle it first" in said

    def test_not_over_the_pattern(self, pattern: Path) -> None:
        """The pattern itself is never written to, by whatever name."""
        result = self.run("restyle", pattern, "--to", "uk", "-o", pattern.parent / "." / "strip.txt")

        assert result.exit_code == 2
        assert pattern.read_text() == STRIP

    def test_nothing_written_where_refused(self, pattern: Path) -> None:
        """Where it is not certain, nothing is written, and one line says why."""
        pattern.write_text(STRIP.replace("US terms.\n", "UK terms.\n"))
        out = pattern.parent / "out.txt"
        result = self.run("restyle", pattern, "--to", "us", "-o", out)

        assert result.exit_code == 2 and not out.exists()
        assert "“Sc”" in result.output

    def test_broken_house(self, pattern: Path) -> None:
        """A house file with mistakes ends a check before any report is written."""
        house = pattern.parent / "ours.yaml"
        house.write_text("terms: fr\n")
        page = pattern.parent / "page.html"
        result = self.run("check", pattern, "--house", house, "--html", page)

        assert result.exit_code == 2 and not page.exists()
        assert f"{house}:1:1: terms" in result.output

    def test_houses_are_listed_and_explained(self) -> None:
        """The houses that come with it are named, and say what they demand."""
        assert "example-uk" in self.run("house").output.split()
        assert "UK terms" in self.run("house", "example-uk", "--explain").output

    def test_glossary_abroad(self, pattern: Path) -> None:
        """The list, and what its words are called in a language asked for."""
        assert "sc = vaste, vasten (v)" in self.run("glossary", pattern, "--language", "nl").output
        assert self.run("glossary", pattern, "--language", "xx").exit_code == 2


class TestReport:
    """What the report gives for looking up."""

    def test_glossary_and_rules_in_the_page(self) -> None:
        """The page has the list to paste, names elsewhere, and each rule that has a note."""
        from lint.reports.page import as_page

        page = as_page(check(STRIP, house=HOUSE))

        assert "The abbreviations it uses" in page and "sl st = slip stitch" in page
        assert "German: " in page and "feste Masche" in page
        assert "<summary>abbreviation-not-house</summary>" in page

    def test_forty_places_are_one_line(self) -> None:
        """A terminal report names the lines of all places alike in one line."""
        from lint.reports.wording import related_lines

        report = check(STRIP.replace("turn, slst", "turn, slst in next sc, slst"), house=HOUSE)
        [finding] = [one for one in report.findings if one.rule == "abbreviation-not-house"]

        assert related_lines(report, finding) == [((15, 16), "here too")]
