"""Houses as a publisher's editor meets them: lists in odd places, rows called for, counts, numbers of times, sizes."""

from __future__ import annotations

from typing import Any

import pytest
from helpers import all_findings, check, counts, rulebook


def in_house(text: str, house: str) -> Any:
    """A pattern restyled to a house file's text, with its log; every further restyling must change nothing."""
    from lint.house.loading import read_house
    from lint.restyling import restyle
    from lint.source import SourceText

    held = read_house(house, "house.yaml", rulebook())
    result = restyle(SourceText(text), held, rulebook())
    assert restyle(SourceText(result.text), held, rulebook()).text == result.text
    return result


def rules_found(text: str, house: str) -> set[str]:
    """The rules of the findings on a pattern that is held to a house."""
    return {finding.rule for finding in check(text, house=house).findings}


_TOY = """Sprout
{head}
MR - magic ring
ch - chain
sc - single crochet
slst - slip stitch
MC - moss green

R1: 6 sc in MR (6)
R2: 2 sc in each st (12)
slst in next st, fasten off.
"""


@pytest.mark.parametrize("head", ["You will need: green yarn, 3 mm hook.", "Terms: American", "A small pea."])
def test_a_list_without_a_heading_is_the_pattern_s_list(head: str) -> None:
    """A list below the materials or the terms is changed with the rows, for its stitches would be others else."""
    result = in_house(_TOY.format(head=head), "extends: uk\n")
    assert "dc - double crochet\nss - slip stitch\n" in result.text
    assert "single crochet" not in result.text and "\nR1: 6 dc in MR (6)\n" in result.text


def test_what_such_a_list_lacks_is_found() -> None:
    """The rows use "st", which is not in the list; colours alone make no list."""
    assert ("abbreviation-undefined", 10) in all_findings(check(_TOY.format(head="US terms")))
    yarns = "Sprout\nYarn:\nMC - moss green\nCC - pea\nA - white\n\nR1: 6 sc in a magic ring (6)\nR2: 2 sc in each st (12)\n"
    report = check(yarns)
    assert counts(report) == [6, 12] and not report.pattern.abbreviations


_RUN_IN = """Mat
Abbreviations: ch, chain; dc, double crochet; tr, treble; sp, space; ss, slip stitch. {talk}

Ch 12.
Row 1: Dc in 2nd ch from hook and in each ch to end. (11 dc)
Row 2: 3 ch (counts as 1 tr), miss first dc, tr in each dc to end, ss in sp. (11 tr)
"""


@pytest.mark.parametrize("talk", ["UK terms.", "Keep the tension even."])
@pytest.mark.parametrize("form", ["ch (chain)", "ch – chain", "chain (ch)"])
def test_a_sentence_behind_the_list_is_no_meaning(talk: str, form: str) -> None:
    """What is told behind the last entry stays at the end, and no entry is doubled or lost."""
    house = f'terms: uk\nabbreviation_list: {{form: "{form}", order: alphabetical}}\n'
    before, after = (
        text.splitlines()[1]
        for text in (_RUN_IN.format(talk=talk), in_house(_RUN_IN.format(talk=talk + " UK"), house).text)
    )
    assert after.removesuffix(" UK").endswith(talk)
    assert after.count("slip stitch") == after.count("space") == after.count("treble") == before.count("treble") == 1


def test_a_treble_explained_in_brackets_keeps_its_meaning() -> None:
    """In "tr (treble)" the short side is the abbreviation, whatever the other side is known as."""
    house = 'extends: uk\nabbreviation_list: {form: "ch (chain)"}\n'
    text = (
        "Mat\nUK terms\nAbbreviations\ndc – double crochet\nTreble – tr\nch – chain\n\n" + _RUN_IN.partition("\n\n")[2]
    )
    assert "\ntr (Treble)\n" in in_house(text, house).text


@pytest.mark.parametrize("count", ["; {} sts", " = {} sc", " - {} sts", " (12)"])
@pytest.mark.parametrize(
    "talk", ["Put in the eyes 4 stitches apart.", "Fasten off and close the hole.", "Stuff firmly."]
)
def test_what_stands_below_a_count_without_a_stop_is_a_line_of_its_own(count: str, talk: str) -> None:
    """A count closes its row, with a full stop or without."""
    printed = [count.format(number) for number in (6, 12, 12)]
    report = check(
        f"Pea\nUS terms\nRnd 1: 6 sc in magic ring{printed[0]}\nRnd 2: 2 sc in each st{printed[1]}\n{talk}\n"
        f"Rnd 3: sc in each st{printed[2]}\n{talk}\n".replace("ring (12)", "ring (6)")
    )
    assert counts(report) == [6, 12, 12]


_CALLED = """Brim
US terms
Rounds 1 and 2 are firm.

Round 1: 6 sc in magic ring. (6 sc)
Round 2: 2 sc in each sc. (12 sc)
Round 3: Sc in each sc. (12 sc)
{again}
"""
_LABELS = {
    "sample": 'abbreviations: [{use: rnd, means: round, plural: rnds, replace: [round, rd]}]\nlabels: {round: "%s", rounds: "%s"}\n',
    "Round": ("Round 1:", "Rounds 2-5:"),
    "R": ("R1:", "R2-5:"),
}


@pytest.mark.parametrize(
    ("again", "form", "wanted"),
    [
        ("4th-5th rounds: Rep 2nd to 3rd rounds once.", "Round", "Rounds 4-5: Rep Rounds 2-3 once."),
        ("4th-5th rounds: Rep 2nd and 3rd rounds.", "R", "R4-5: Rep R2 and 3."),
        (
            "Rnds 4-7: Rep Rnds 2 and 3, then Rnd 3 twice.",
            "Round",
            "Rounds 4-7: Rep Rounds 2 and 3, then Round 3 twice.",
        ),
        ("Rnd 4: As 3rd rnd.", "Round", "Round 4: As Round 3."),
        ("Round 4: Rep Round 3.", "R", "R4: Rep R3."),
    ],
)
def test_rows_called_for_are_labelled_as_rows_are(again: str, form: str, wanted: str) -> None:
    """All of a range takes the label's form, which the house's word for a round elsewhere does not change."""
    house = _LABELS["sample"] % _LABELS[form]
    text = in_house(_CALLED.format(again=again), house).text
    assert text.splitlines()[-1] == wanted
    assert not rules_found(text, house) & {"label-not-house", "abbreviation-not-house"}


def test_rows_called_for_in_ordinals() -> None:
    """A house of ordinals calls for "3rd round", whichever word it prints elsewhere; what comes every 2nd round stays."""
    house = (
        'abbreviations: [{use: rnd, means: round, plural: rnds, replace: [round, rd]}]\nlabels: {round: "1st round:"}\n'
    )
    again = "Rnds 4-7: Rep rnds 2 and 3, then Rnd 3 twice.\nRnd 8: As Rnd 3."
    text = in_house(_CALLED.format(again=again), house).text
    assert text.splitlines()[-2:] == [
        "4th-7th rounds: Rep 2nd and 3rd rounds, then 3rd round twice.",
        "8th round: As 3rd round.",
    ]


def test_every_fourth_row_is_no_label() -> None:
    """ "Every 4th row" says how often, not which row."""
    text = "Wing\nUS terms\nCh 22.\nRow 1: Sc in 2nd ch from hook and in each ch across. (21 sc)\nRow 2: Ch 1, turn, sc in each sc. (21 sc)\nDec 1 st at each end of every 4th row 3 times.\n"
    assert "every 4th row 3 times" in in_house(text, 'labels: {row: "Row 1:", rows: "Rows 2-5:"}\n').text


@pytest.mark.parametrize(
    ("sample", "wanted"),
    [
        ("3 times", ("Inc 6 times.", "Sc2tog 6 times.", "Rep Rnd 5 18 times.", "* 5 times.", "twice")),
        ("three times", ("Inc six times.", "Sc2tog six times.", "Rep Rnd 5 eighteen times.", "* five times.", "twice")),
        ("x 3", ("Inc x 6.", "Sc2tog x 6.", "Rep Rnd 5 eighteen times.", "* five times.", "x 2")),
    ],
)
def test_numbers_of_times_wherever_they_stand(sample: str, wanted: tuple[str, ...]) -> None:
    """Behind one stitch, and behind rows that are called for, as behind a repeat; signs stay away from "Rep Rnd 5"."""
    text = in_house(
        "Pea\nUS terms\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: Inc x 6. (12)\nRnd 3: Sc2tog six times. (6)\n"
        "Rnd 4: (Sc in next st, 2 sc in next st) twice, sc in next 2 sts. (8)\nRnd 5: Sc in each st. (8)\n"
        "Rnds 6-23: Rep Rnd 5 eighteen times.\nRnd 24: *Sc in next sc, 2 sc in same sc; rep from * five times. (18)\n",
        f"wording: {{times: {sample}}}\n",
    ).text
    for words in wanted:
        assert words in text


@pytest.mark.parametrize(
    ("form", "wanted"), [("(12)", "(6)"), ("; 12 sts", "; 6 sts"), ("— 12 sts", " — 6 sts"), ("[12]", " [6]")]
)
@pytest.mark.parametrize("printed", [". (6 sts)", ". 6 sts.", "; 6 sts", " (6)"])
def test_counts_come_with_their_unit_or_without(form: str, wanted: str, printed: str) -> None:
    """The sample shows whether "sts" is printed, and a count that is a sentence takes its signs as well."""
    text = f"Pea\nUS terms\nRnd 1: 6 sc in magic ring{printed}\nRnd 2: Sc in each sc around, join. (6 sc)\n"
    house = f'counts: {{form: "{form}"}}\n'
    assert in_house(text, house).text.splitlines()[2].rstrip(".").endswith(wanted)


def test_a_unit_with_a_stop_of_its_own() -> None:
    """ "8 in. open" is one unit with its stop, whatever follows; a sentence's own stop stays one."""
    text = "Tee\nUS terms\nSize: 20 in. Gauge matters.\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch. (11 sc)\n\nFinishing\nLeave 8 in. open, then 3 cm. more.\n"
    assert (
        "Leave 8 in. open, then 3 centimetres more."
        in in_house(text, "units: {inches: in., centimetres: centimetres}\n").text
    )
    inches = in_house(text, "units: {inches: inches}\n").text
    assert "Leave 8 inches open" in inches and "20 inches. Gauge" in inches


def test_brackets_that_a_house_never_uses() -> None:
    """An empty list is said as "no brackets", in the finding and in the explanation."""
    from lint.house.explained import explained
    from lint.house.loading import read_house

    house = "brackets: {counts: [], marks: []}\nabbreviation_list: {order: as it stands}\n"
    text = "Pea\nUS terms\nRnd 1: 6 sc in magic ring. (6 sc)\n"
    [finding] = [one for one in check(text, house=house).findings if one.rule == "bracket-not-house"]
    assert finding.message.endswith("this house uses none.")
    said = explained(read_house(house, "house.yaml", rulebook()), rulebook())
    assert "Counts stand in no brackets." in said and "No marks stand for repeats." in said
    assert "The list may be in any order." in said


def test_all_keys_of_a_house_file_are_shown() -> None:
    """`house --keys` writes a file that is right as it stands, and every choice that it names is one."""
    from typing import get_args

    from pydantic import BaseModel

    from lint.house.keys import WORDS
    from lint.house.loading import read_house
    from lint.house.model import House
    from lint.houseclerk import keys

    text = keys(rulebook())
    held = read_house(text, "house.yaml", rulebook())
    assert held.model_fields_set == set(House.model_fields)
    asked = set()
    for key, field in House.model_fields.items():
        asked.add(key)
        for one in (field.annotation, *get_args(field.annotation)):
            if isinstance(one, type) and issubclass(one, BaseModel):
                asked |= {f"{key}.{name}" for name in one.model_fields}
    assert asked == set(WORDS)
    for sample in ("3 ch sp", "× 3", "not counted as a st", "where it changes", "0.125", "UK terms"[:2].lower()):
        assert sample in text


@pytest.mark.parametrize(
    "key", ["wording.times", "wording.chain", "units.inches", "turning_chain.note", "counts.required"]
)
def test_every_choice_that_the_keys_name_is_taken(key: str) -> None:
    """What stands behind a key as its choices can be written there, as it stands."""
    from lint.house.loading import read_house
    from lint.houseclerk import keys

    top, below = key.split(".")
    block = keys(rulebook()).partition(f"\n{top}:")[2]
    line = next(line for line in block.splitlines() if line.strip().startswith(f"{below}:"))
    choices = line.rpartition("# ")[2].rpartition(": ")[2].split(", ")
    assert len(choices) > 2
    for choice in choices:
        value = choice if choice.startswith("'") else f"'{choice}'"
        assert read_house(f"{top}: {{{below}: {value}}}\n", "house.yaml", rulebook())


_VEST = """Vest
US terms
Sizes: S (M, L)
Draft of 10/11/2024
Chest: 36/40/44 in, yarn 900/1000/1100 yards

Ch20/22/24.
Row 1: Sc in 2nd ch from hook and in each ch. (19 (21, 23) sc)
Row 2: Ch 1, turn, sc in each st. = 19/21/23 sc
Rows 3-6: Rep Row 2.
"""


@pytest.mark.parametrize(
    ("form", "chest", "chain", "count"),
    [
        ("60 (66, 72)", "36 (40, 44) in, yarn 900 (1000, 1100)", "Ch20 (22, 24)", "19 (21, 23)"),
        ("60(66-72)", "36(40-44) in, yarn 900(1000-1100)", "Ch20(22-24)", "19(21-23)"),
        ("60/66/72", "36/40/44 in, yarn 900/1000/1100", "Ch20/22/24", "19/21/23"),
    ],
)
def test_lists_over_the_sizes_with_strokes_and_without_spaces(form: str, chest: str, chain: str, count: str) -> None:
    """Every shape of a list becomes the house's; a date is no list."""
    text = in_house(_VEST, f"sizes: {form}\n").text
    assert f"Chest: {chest} yards" in text and f"\n{chain}.\n" in text and "10/11/2024" in text
    assert text.count(f"{count} sc") == 2
    assert "size-list-not-house" not in rules_found(text, f"sizes: {form}\n")


def test_a_range_of_ordinals_as_a_label() -> None:
    """A house of ordinals shows how several rows are labelled, too."""
    text = in_house(_VEST, 'labels: {row: "1st row:", rows: "2nd to 5th rows:"}\n').text
    assert "\n3rd to 6th rows: Rep 2nd row.\n" in text


@pytest.mark.parametrize(
    ("file", "place", "told"),
    [
        ("labels:\n  row: Row 1:\n", "2:13", "a second colon stands in this line; put the words in quotation marks"),
        ("labels:\n\trow: x\n", "2:1", "a tab stands at the beginning"),
        ("name: 'b\nterms: us\n", "1:7", "the quotation mark that stands here is not closed"),
        ("plain_words: [b, c\nterms: us\n", "1:14", "the bracket that opens here is not closed"),
        ("brackets:\n  marks: [*]\n", "2:11", "the sign * has a meaning of its own"),
        ("name: *\n", "1:7", "the sign * has a meaning of its own"),
        ("terms\nname: c\n", "2:5", "the line above lacks its colon"),
        ("labels:\n  row: 'Row 1:'\n rows: d\n", "3:2", "keys that belong together begin in one column"),
    ],
)
def test_slips_in_the_writing_of_a_house_file(file: str, place: str, told: str) -> None:
    """One sentence in plain words, with its place: nobody has to know what a token is."""
    from lint.house.loading import read_house
    from lint.rulefolder import RuleFileError

    with pytest.raises(RuleFileError) as caught:
        read_house(file, "house.yaml", rulebook())
    assert str(caught.value).startswith(f"house.yaml:{place}: ") and told in str(caught.value)
    assert "\n" not in str(caught.value)


def test_a_key_with_nothing_below_it_asks_for_nothing() -> None:
    """Who strikes out all lines below "wording:" need not strike out that; entries of a list are counted from 1."""
    from lint.house.loading import read_house
    from lint.rulefolder import RuleFileError

    assert read_house("wording:\nabbreviations:\nterms: us\n", "house.yaml", rulebook()).terms == "us"
    with pytest.raises(RuleFileError, match=r"2:5: abbreviations\.1\.means: the key 'means' is missing"):
        read_house("abbreviations:\n  - {use: sc}\n", "house.yaml", rulebook())


_PLAIN = """Strip
US terms
Abbreviations
ch = chain
sc = single crochet
st = stitch

Ch 12.
Row 1: Sc in 2nd ch from hook and in each ch. (11 sc)
Row 2: Ch 1, turn, sc in each sc. (11 sc)
Row 3: Rep Row 2.
Row 4: Ch 1, turn, sc in each st.
"""


def messages(text: str, house: str) -> dict[str, str]:
    """The sentence of each rule's last finding on a pattern that is held to a house."""
    return {finding.rule: finding.message for finding in check(text, house=house).findings}


def test_what_a_house_does_not_list_is_not_lacking() -> None:
    """`listed: false` spares a form in the check and in the glossary alike."""
    from lint.glossary import glossary

    assert "abbreviation-undefined" in messages(_PLAIN, "terms: us\n")
    house = "abbreviations: [{use: Rep, means: repeat, listed: false}, {use: st, means: stitch, listed: false}]\n"
    assert "abbreviation-undefined" not in messages(_PLAIN, house)
    assert [one.form for one in glossary(check(_PLAIN, house=house))] == ["ch", "sc"]


def test_a_count_in_every_row_is_asked_for_in_those_words() -> None:
    """A row that changes nothing lacks its count in such a house; one that repeats another has that one's."""
    said = messages(_PLAIN, "counts: {required: every row}\n")["count-missing"]
    assert said.startswith("No count is printed here, and this house prints one in every row (Strip: Row 4")
    assert "Row 3" not in said


def test_findings_say_what_becomes_of_the_words() -> None:
    """An entry that goes is said to be left out, a rounding is said in words."""
    house = "wording: {skip: skip}\nunits: {inches_to: 0.25, centimetres_to: 1}\n"
    text = _PLAIN.replace("st = stitch", "sk = skip\nst = stitch\n\nSize: 4.1 in wide, 10.2 cm long")
    said = [finding.message for finding in check(text, house=house).findings]
    assert any(one.startswith("Skip: “sk = skip” would be left out in this house") for one in said)
    assert "Measures: this house rounds inches to quarters." in said
    assert "Measures: this house rounds centimetres to whole ones." in said


@pytest.mark.parametrize(("skip", "wanted"), [("miss", "missed"), ("sk", "skipped"), ("skip", "skipped")])
def test_places_that_were_passed_over(skip: str, wanted: str) -> None:
    """ "Missed 3 ch count as 1 dc" goes with the house's word for skip."""
    for printed in ("missed", "skipped"):
        text = f"Strip\nUS terms\nCh 12.\nRow 1: Dc in 4th ch from hook ({printed} 3 ch count as 1 dc), dc in each ch. (10 dc)\n"
        assert f"({wanted} 3 ch count" in in_house(text, f"wording: {{skip: {skip}}}\n").text


def test_the_older_british_sc_is_named() -> None:
    """ "sc" in a pattern of UK terms may be the slip stitch of older patterns: the finding asks."""
    text = "Mat\nUK terms\nMake 6 ch, join with sc into a ring.\n1st round: 1 ch, 12 dc into ring, sc to first dc. (12 dc)\n"
    assert "for the slip stitch: is that what is meant?" in messages(text, "terms: uk\n")["terms-mixed"]


def test_one_fault_of_style_is_found_once() -> None:
    """What the house's form settles is not found again as brackets, or as two forms of one thing."""
    text = "Pea\nUS terms\nRnd 1: 6 sc in magic ring. [6 sc]\nRnd 2: 2 single crochet in each sc. [12 sc]\nRnd 3: Sc in each sc. [12 sc]\n"
    assert "forms-mixed" in rules_found(text, "terms: us\n")
    both = 'abbreviations: [{use: sc, means: single crochet, replace: [single crochet]}]\ncounts: {form: "(12 sts)"}\nbrackets: {counts: ["( )"]}\n'
    found = rules_found(text, both)
    assert {"abbreviation-not-house", "count-not-house"} <= found
    assert not found & {"forms-mixed", "bracket-not-house"}
    assert "bracket-not-house" in rules_found(text, 'brackets: {counts: ["( )"]}\n')


def test_a_list_over_the_sizes_is_set_off_from_its_chain() -> None:
    """A house that prints "3ch" still sets "ch" off behind a bracket."""
    text = "Vest\nUK terms\nSizes: S (M, L)\nMake 20 (22, 24) ch.\nRow 1: 1 dc into 2nd ch from hook, 1 dc into each ch to end. (19 (21, 23) dc)\nRow 2: 1 ch, turn, 1 dc into each dc.\n"
    restyled = in_house(text, "wording: {chain: 3ch}\n").text
    assert "\nMake 20 (22, 24) ch.\n" in restyled and "\nRow 2: 1ch, turn" in restyled


@pytest.mark.parametrize("count", ["; 10 sts", " = 10 sts", " - 10 sts", " (10)"])
def test_a_slip_stitch_below_a_count_is_worked_behind_it(count: str) -> None:
    """The count closes its line, though a line of small letters goes on with the work."""
    text = f"Ear\nUS terms\nRnd 1: 5 sc in magic ring. (5 sc)\nRnd 2: 2 sc in each st. (10 sc)\nRnd 3: sc in each st{count}\nsl st in next st, fasten off.\n"
    assert counts(check(text)) == [5, 10, 10]
    assert "; 10 sts\nsl st in next st" in in_house(text, 'counts: {form: "; 12 sts"}\n').text
