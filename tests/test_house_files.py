"""House files: what they say is held to, every mistake in them is shown at its place, and they can stand upon each other."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
from helpers import RULES, rulebook

HOUSES = sorted(path.stem for path in (RULES / "houses").glob("*.yaml"))


def read(text: str, path: Path | None = None) -> Any:
    """A house from a text, or from a file of that text."""
    from lint.house.loading import load_house, read_house

    if path is None:
        return read_house(text, "house.yaml", rulebook())
    path.write_text(text, encoding="utf-8")
    return load_house(path, rulebook())


def faults(text: str, path: Path | None = None) -> list[str]:
    """The lines that say what is wrong with a house."""
    from lint.rulefolder import RuleFileError

    with pytest.raises(RuleFileError) as caught:
        read(text, path)
    return str(caught.value).splitlines()


@pytest.mark.parametrize("name", HOUSES)
def test_houses_that_come_with_it_load(name: str) -> None:
    """Every house in rules/houses loads and says its terms."""
    from lint.house.loading import house_path, load_house

    assert load_house(house_path(name), rulebook()).terms in ("us", "uk")


@pytest.mark.parametrize("name", HOUSES)
def test_every_form_is_known_to_the_reader(name: str) -> None:
    """No house asks for an abbreviation that the reader would not take for what it is."""
    from lint.house.loading import house_path, load_house
    from lint.lexicon import Lexicon

    house = load_house(house_path(name), rulebook())
    lexicon = Lexicon(rulebook(), house.terms)
    for entry in house.abbreviations:
        for form in entry.replace:
            one, other = lexicon.read(form), lexicon.read(entry.use)
            if len(one) == len(other) == 1:
                assert one[0].kind == other[0].kind, (form, entry.use)
                assert one[0].kind != "stitch" or one[0].value == other[0].value, (form, entry.use)


class TestFaults:
    """Each mistake is told as file:line:column with its key and what would be right."""

    def test_terms_that_the_base_does_not_have(self) -> None:
        """UK terms on a base whose list is in US terms would ask for stitch names that mean something else."""
        [fault] = faults("name: Mill Lane\nextends: us\nterms: uk\n")
        assert fault.startswith("house.yaml:3:1: terms: 'uk' will not do on 'us'")
        assert fault.endswith("extend a house in UK terms")
        assert read("name: Mill Lane\nextends: uk\nterms: uk\n").terms == "uk"

    def test_unknown_key(self) -> None:
        """A key that no house file has."""
        [line] = faults("name: Ours\ncolour: red\n")

        assert line.startswith("house.yaml:2:1:")
        assert "colour" in line

    def test_unknown_choice(self) -> None:
        """A value that is none of those there are: they are named."""
        [line] = faults("terms: us\nwording:\n  skip: jump\n")

        assert line.startswith("house.yaml:3:3:")
        assert "wording.skip" in line and "'skip', 'sk' or 'miss'" in line

    @pytest.mark.parametrize(
        ("key", "sample", "right"),
        [
            ("labels: {row: %s}", "Rows one", "Row 1:"),
            ("labels: {rows: %s}", "Rows", "Rows 2-5:"),
            ("counts: {form: %s}", "(12 sts]", "(12 sts)"),
            ("sizes: %s", "60 66 72", "60 (66, 72)"),
            ("abbreviation_list: {form: %s}", "chain", "ch = chain"),
        ],
    )
    def test_sample_that_shows_nothing(self, key: str, sample: str, right: str) -> None:
        """A sample that cannot be read is told with one that can."""
        [line] = faults("terms: us\n" + key % f'"{sample}"' + "\n")

        assert line.startswith("house.yaml:2:")
        assert sample in line and right in line

    def test_form_for_two_things(self) -> None:
        """A form that two entries claim is told at its second place."""
        [line] = faults(
            "abbreviations:\n  - {use: sl st, means: slip stitch, replace: [ss]}\n  - {use: ss, means: spike stitch}\n"
        )

        assert line.startswith("house.yaml:3:6:")
        assert "'ss'" in line and "slip stitch" in line

    def test_rule_that_does_not_exist(self) -> None:
        """A rule's name that is misspelt is told with the one that is nearest."""
        [line] = faults("rules:\n  count-differ: off\n")

        assert line.startswith("house.yaml:2:3:")
        assert "count-differs" in line

    def test_section_that_does_not_exist(self) -> None:
        """A section that is unknown is told with those there are."""
        [line] = faults("sections: [title, weather]\n")

        assert line.startswith("house.yaml:1:19:")
        assert "gauge" in line

    def test_several_at_once(self) -> None:
        """All mistakes of a file are told, not only the first."""
        assert len(faults("terms: fr\nunits: {inches: zoll}\nlabels: {round: Rd}\n")) == 3

    def test_faults_do_not_hide_each_other(self) -> None:
        """A wrong value beside an unknown rule, section and base: all are told, in the order of the file."""
        lines = faults(
            "extends: usa\nterms: fr\nsections: [title, weather]\nrules: {count-differ: off, count-missing: heavy}\n"
        )

        assert [line.split(": ")[0].removeprefix("house.yaml:") for line in lines] == [
            "1:1",
            "2:1",
            "3:19",
            "4:9",
            "4:28",
        ]

    @pytest.mark.parametrize(
        ("text", "right"),
        [
            ("abbreviation: []\n", "is 'abbreviations' meant?"),
            ("labels: {rov: 'Row 1:'}\n", "is 'row' meant?"),
            ("abbreviations:\n  - {use: sc, mean: single crochet}\n", "is 'means' meant?"),
            ("plain_words: kg\n", "write a list, [kg]"),
            ("labels: 'Row 1:'\n", "write keys with values"),
            ("wording: {skip: mis}\n", "write 'skip', 'sk' or 'miss'"),
            ("abbreviations:\n  - {use: 2, means: two}\n", "in quotation marks"),
            ("word_rules:\n  - {name: No Nice, phrases: [x], message: m, why: w}\n", "such as no-fillers"),
            ("word_rules:\n  - {name: no-nice, phrases: [nice], message: 'No {word}', why: w}\n", "{words}"),
            ("word_rules:\n  - {name: no-nice, phrases: [nice], message: 'No {words', why: w}\n", "{words}"),
        ],
    )
    def test_what_would_be_right(self, text: str, right: str) -> None:
        """Each mistake is told with what would be right, in words for people who write patterns."""
        assert any(right in line for line in faults(text)), faults(text)
        assert not any("Input should" in line for line in faults(text))

    def test_broken_yaml(self) -> None:
        """A file that is no YAML is told by its place."""
        [line] = faults("terms: us\nlabels: {row: [\n")

        assert re.match(r"house\.yaml:\d+:\d+: ", line)

    def test_not_a_house(self) -> None:
        """A list, or nothing at all, is no house."""
        assert faults("- terms\n") == faults("")

    def test_no_file(self, tmp_path: Path) -> None:
        """A file that is not there is told with the houses that are."""
        from lint.house.loading import load_house
        from lint.rulefolder import RuleFileError

        with pytest.raises(RuleFileError, match="example-uk"):
            load_house(tmp_path / "ours.yaml", rulebook())

    def test_aliases_that_grow_without_bounds(self) -> None:
        """A small file whose aliases would fill the memory is refused."""
        lines = ['a: &a ["x","x","x","x","x","x","x","x","x","x"]']
        for one, before in zip("bcdefg", "abcdef", strict=True):
            lines.append(f"{one}: &{one} [{','.join(['*' + before] * 10)}]")
        [line] = faults("\n".join(lines) + "\n")

        assert "aliases" in line

    def test_alias_that_holds_itself(self) -> None:
        """An alias inside its own value is refused."""
        [line] = faults("plain_words: &a [x, *a]\n")

        assert line.startswith("house.yaml:1:")

    def test_code_in_a_file(self) -> None:
        """A tag that would make an object of the program is only a word."""
        assert faults('terms: !!python/object/apply:os.system ["true"]\n')


class TestBases:
    """A house says what it has of its own; the rest is its base's."""

    def test_own_over_base(self, tmp_path: Path) -> None:
        """What the house says counts, what it does not say is as in its base."""
        read(
            "wording: {skip: miss, chain: 3 ch}\nplain_words: [kg]\nrules: {count-missing: off}\n",
            tmp_path / "base.yaml",
        )
        house = read(
            "extends: base.yaml\nwording: {skip: sk}\nplain_words: [gr]\nrules: {turning-chain-unsaid: query}\n",
            tmp_path / "own.yaml",
        )

        assert (house.wording.skip, house.wording.chain) == ("sk", "3 ch")
        assert house.plain_words == ["kg", "gr"]
        assert house.rules == {"count-missing": "off", "turning-chain-unsaid": "query"}

    def test_abbreviation_of_the_base_replaced(self) -> None:
        """An entry with the meaning of one of the base's stands in its place."""
        house = read("extends: uk\nabbreviations:\n  - {use: sl st, means: slip stitch, replace: [ss]}\n")

        assert [entry.use for entry in house.abbreviations if entry.means == "slip stitch"] == ["sl st"]
        assert "htr" in [entry.use for entry in house.abbreviations]

    def test_base_that_is_not_there(self, tmp_path: Path) -> None:
        """A base that cannot be found is told at its key."""
        [line] = faults("name: Ours\nextends: theirs\n", tmp_path / "ours.yaml")

        assert line.startswith(f"{tmp_path / 'ours.yaml'}:2:1: extends")
        assert "uk" in line

    def test_houses_in_a_circle(self, tmp_path: Path) -> None:
        """Houses that extend each other are told, with the way round."""
        (tmp_path / "one.yaml").write_text("extends: two.yaml\n")
        [line] = faults("extends: one.yaml\n", tmp_path / "two.yaml")

        assert line.startswith(f"{tmp_path / 'one.yaml'}:1:1: extends")
        assert "two.yaml -> one.yaml -> two.yaml" in line

    def test_fault_in_the_base(self, tmp_path: Path) -> None:
        """A mistake in the base is told where it stands."""
        (tmp_path / "base.yaml").write_text("terms: de\n")
        [line] = faults("extends: base.yaml\n", tmp_path / "own.yaml")

        assert line.startswith(f"{tmp_path / 'base.yaml'}:1:1: terms")


def test_explained_says_everything() -> None:
    """Every choice of a house is found in what it is said to demand, and what it leaves open is named."""
    from lint.house.explained import explained

    words = explained(
        read(
            "name: The Oast Press\nterms: uk\nlabels: {row: 'Row 1:'}\ncounts: {form: '[12 sts]', required: every row}\n"
            "wording: {skip: miss, chain: 3 ch}\nunits: {first: centimetres, centimetres_to: 0.5}\n"
            "abbreviations:\n  - {use: ss, means: slip stitch, replace: [sl st], never: [sc]}\nrules: {turning-chain-unsaid: off}\n"
        ),
        rulebook(),
    )

    for said in (
        "The Oast Press", "UK terms", "“Row 1:”", "“[12 sts]”", "Every row", "“miss”", "“3 ch”", "Centimetres come first",
        "rounded to halves", "“ss” for slip stitch, in place of “sl st”; never “sc”", "turning-chain-unsaid is not looked for",
        "says nothing of: turning chains, brackets and marks, sections",
    ):  # fmt: skip
        assert said in words


@pytest.mark.parametrize(
    "words",
    ['abbreviation_list:\n  form: "ch c\\nhain"\n', 'terms: us\n? "ter\\nms"\n: us\n? "ter\\nms"\n: us\n'],
)
def test_a_fault_is_told_in_one_line_where_its_words_run_over_several(words: str) -> None:
    """A value or a key with a line end in it is shown in the fault's own line."""
    assert all(line.startswith("house.yaml:") for line in faults(words))


@pytest.mark.parametrize(
    "words", ["1" + "0" * 30 + ": us\n", "rules:\n  " + "9" * 40 + ": off\n", "terms: " + "9" * 5000]
)
def test_numbers_where_words_belong_are_told(words: str) -> None:
    """A number of any length for a key or a value is told at its place, in a short line."""
    assert all(line.startswith("house.yaml:") and len(line) < 400 for line in faults(words))


def test_a_house_stands_on_house_files_alone(tmp_path: Path) -> None:
    """A house that lies beside strangers' patterns cannot have other files read: what it stands on ends in .yaml."""
    secret, large = tmp_path / "secret", tmp_path / "large.yaml"
    secret.write_text("mine: alone\n")
    large.write_text("# " + "x" * 1_000_000)
    (told,) = faults("extends: secret\n", tmp_path / "house.yaml")
    assert "'secret' is no house file" in told and "mine" not in told
    assert "at most 1,000,000 bytes" in faults("extends: large.yaml\n", tmp_path / "house.yaml")[0]
