"""Restyling of counts that are sentences, and of lists beside which stitches are defined."""

from __future__ import annotations

import pytest
from helpers import check, mades, rulebook

_MAT = """Mat
US terms

ABBREVIATIONS: Chain = ch; single crochet = sc; double crochet = dc; stitch = st; round = rnd

Bead: ch 3 and 3 dc. The ch 3 is not counted as a st.

Ch 12.
Row 1: Sc in 2nd ch from hook and in each ch across. 11 sc.
Row 2: Ch 1, turn, sc in each st across. 11
Row 3: Ch 1, turn, sc in each st across. You now have 11 sts.
"""


def restyled(text: str, house: str) -> str:
    """The text in the form of a house."""
    from lint.house.loading import house_path, load_house
    from lint.houseclerk import restyled as in_house
    from lint.source import SourceText

    return in_house(SourceText(text), load_house(house_path(house), rulebook()), rulebook(), "auto").text


@pytest.mark.parametrize(
    ("house", "first", "second"), [("example-us", "(11 sc)", "(11 sts)"), ("example-uk", "[11 dc]", "[11 sts]")]
)
def test_counts_that_are_sentences(house: str, first: str, second: str) -> None:
    """ "11 sc." behind a full stop is the row's count; a sentence in words stays; once more changes nothing."""
    text = restyled(_MAT, house)
    lines = text.splitlines()
    assert lines[-3].endswith(f"across. {first}")
    assert lines[-2].endswith(f"across. {second}")
    assert lines[-1].endswith("You now have 11 sts.")
    assert restyled(text, house) == text


def test_a_stitch_defined_below_the_list_stays_there() -> None:
    """The list is put in order without the line that says how a stitch is worked."""
    text = restyled(_MAT, "example-us")
    assert "\nBead: ch 3 and 3 dc. The ch 3 is not counted as a st.\n" in text
    assert "ABBREVIATIONS: ch = Chain; dc = double crochet; rnd = round; sc = single crochet; st = stitch\n" in text


_LISTED_WITH_TALK = """Otter Cloth
US terms

ABBREVIATIONS
tr = treble crochet
st = stitch
sc = single crochet
dc2tog - work 2 dc together
ch = chain

Tip: work the sc loosely.
How to read this: words in brackets are worked into one place.

INSTRUCTIONS
Ch 12.
Row 1: Sc in 2nd ch from hook and in each ch across. (11 sts)
Row 2: Ch 1, turn, sc in each st across. (11 sts)
"""


def test_talk_below_the_list_is_no_entry() -> None:
    """A tip and a word to the reader keep their places and their signs; "dc2tog - …" is an entry like the others."""
    text = restyled(_LISTED_WITH_TALK, "example-us")
    listed, talk = text.split("\n\n")[1:3]
    assert listed.splitlines()[1:] == [
        "ch = chain",
        "dc2tog = work 2 dc together",
        "sc = single crochet",
        "st = stitch",
        "tr = treble crochet",
    ]
    assert talk == "Tip: work the sc loosely.\nHow to read this: words in brackets are worked into one place."


def test_talk_below_the_list_is_not_said_to_be_unused() -> None:
    """The check of unused entries speaks of entries alone."""
    words = [finding.message for finding in check(_LISTED_WITH_TALK).findings if finding.rule == "abbreviation-unused"]
    assert len(words) == 2 and not any("Tip" in word or "How" in word for word in words)


def test_groups_of_the_list_are_ordered_each_by_itself() -> None:
    """What a heading or a gap parts stays apart."""
    grouped = _LISTED_WITH_TALK.replace("sc = single crochet", "\nOther words\nrep = repeat\nsc = single crochet")
    listed = restyled(grouped, "example-us").split("ABBREVIATIONS\n")[1].split("\n\nTip")[0]
    assert listed.splitlines()[:4] == ["st = stitch", "tr = treble crochet", "", "Other words"]


_WITH_NAMES = """Fern Mat
UK terms

Notes
A blanket takes treble the amount of yarn. My dog Treble chewed the first one. Treble stitches are tall here.
Find me at Treble Clef Designs. Work the trebles loosely, and treble your chain for a wider mat.

Instructions
Ch 12.
Row 1: Dc in 2nd ch from hook and in each ch across. (11 dc)
Row 2: Ch 1, turn, dc in each st across. (11 dc) (Dc the cat will want to help.)
Row 3: Ch 3, turn, tr in next 10 sts. (11 tr) Treble is my dog.
Dc the edges together.
"""


def test_names_that_are_stitches_words_stay() -> None:
    """Somebody's name, a brand and "treble the amount" are no stitches; the stitches beside them change their terms."""
    text = restyled(_WITH_NAMES, "us")
    for kept in (
        "treble the amount",
        "dog Treble",
        "Treble Clef",
        "treble your chain",
        "Dc the cat",
        "Treble is my dog",
    ):
        assert kept in text
    for changed in ("Double crochet stitches are", "the double crochets loosely", "Sc the edges", "dc in next 10 sts"):
        assert changed in text


def test_a_sentence_about_somebody_is_a_remark() -> None:
    """The row before it is counted, and the name works nothing."""
    assert [made.stitches for made in mades(check(_WITH_NAMES))[:3]] == [11, 11, 11]


@pytest.mark.parametrize("words", ["crab st", "spike st"])
def test_a_stitch_of_one_name_in_both_countries_keeps_it(words: str) -> None:
    """What both countries call the same is not made another stitch's name."""
    pattern = f"Mat\nUS terms\n\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across. (11 sc)\nRow 2: Ch 1, {words} in each st across. (11 sts)\n"
    assert f"Ch 1, {words} in each st" in restyled(pattern, "uk").replace("1 ch", "Ch 1")


@pytest.mark.parametrize(
    ("label", "wanted"),
    [
        ("R3-R5:", "Rnds 3-5:"),
        ("Rnds 3 to R5:", "Rnds 3-5:"),
        ("Round 3 through Round 5:", "Rnds 3-5:"),
        ("Rnd 3, Rnd 4, Rnd 5:", "Rnds 3, 4, 5:"),
    ],
)
def test_labels_that_say_their_word_twice(label: str, wanted: str) -> None:
    """The word of a label stands once, before its figures; also where the rows are called for again."""
    text = (
        f"Ball\nUS terms\n\nR1: 6 sc in a magic ring. (6)\nR2: Inc in each st around. (12)\n"
        f"{label} Sc in each st around. (12)\nR6-R9: Rep R2 to R5.\n"
    )
    lines = restyled(text, "example-us").splitlines()
    assert lines[5].startswith(f"{wanted} Sc in each")
    assert lines[6] == "Rnds 6-9: Rep Rnds 2-5."


def test_a_form_that_stays_in_the_text_stays_in_the_list() -> None:
    """A row that is not understood keeps "ss", so the list keeps it too, beside the house's "sl st"; the log says why."""
    from lint.house.loading import house_path, load_house
    from lint.houseclerk import restyled as in_house
    from lint.source import SourceText

    text = (
        "Mat\nUS terms\n\nAbbreviations\nch = chain\nsc = single crochet\nss = slip stitch\n\n"
        "Ch 12, ss in 2nd ch from hook to begin.\n\nRow 1: Sc in 2nd ch from hook and in each ch across. (11)\n"
        "Row 2: Ch 1, turn, ss in each st across. (11)\nRow 3: Ch 1, turn, do the flimsy thing, ss in last st.\n"
    )
    result = in_house(SourceText(text), load_house(house_path("example-us"), rulebook()), rulebook(), "auto")
    assert "Row 2: Ch 1, turn, sl st in each st across." in result.text
    assert "sl st = slip stitch\nss = slip stitch\n" in result.text
    assert any("“ss” is still printed here" in why for _, why in result.kept)


def test_a_form_that_leaves_the_text_leaves_the_list() -> None:
    """Where every row is understood, the house's form takes the old one's place in the list."""
    text = restyled(
        _LISTED_WITH_TALK.replace("st = stitch", "slst = slip stitch").replace(
            "Ch 1, turn, sc in each st", "Ch 1, turn, slst in each st"
        ),
        "example-us",
    )
    assert "sl st = slip stitch\n" in text and "slst" not in text


def result_in(text: str, house: str):
    """The whole result of restyling to a house file's words: text, changes and what was left."""
    from lint.house.loading import read_house
    from lint.houseclerk import restyled as in_house
    from lint.source import SourceText

    return in_house(SourceText(text), read_house(house, "house.yaml", rulebook()), rulebook(), "auto")


@pytest.mark.parametrize(
    ("title", "wanted"),
    [
        ("Fern Mat (UK terms)", "Fern Mat (US terms)"),
        ("Fern Mat (UK)", "Fern Mat (US)"),
        ("Fern Mat – UK version", "Fern Mat – US version"),
        ("British Fern Mat", "British Fern Mat"),
    ],
)
def test_a_title_that_tells_the_terms_is_rewritten_in_place(title: str, wanted: str) -> None:
    """The statement is changed where it stands and comes back; "British" alone is part of the name."""
    text = (
        f"{title}\n\nYarn\nBritish stitches sampler kit\n\nPattern (UK terms)\nCh 12.\n"
        "Row 1: Dc in 2nd ch from hook and in each ch across. (11 dc)\nRow 2: Ch 1, turn, htr in each st across. (11)\n"
    )
    there = restyled(text, "us")
    assert there.startswith(f"{wanted}\n\nYarn\nBritish stitches sampler kit\n\nPattern (US terms)\n")
    assert restyled(there, "uk") == text


_UNSAID = """Mat

Abbreviations
ch = chain
sc = single crochet
slip st = slip stitch
sl st = slip stitch

Ch 12.

R1: Sc in 2nd ch from hook and in each ch across. (11 sc)
R2: Ch 1, turn, sc in each st across. (11 sc)
R3: Ch 1, turn, slip st in next 11 sts. (11 sts)
R4: Do the flimsy thing in next st.
"""


def test_the_log_numbers_lines_as_the_pattern_had_them() -> None:
    """A line put in under the title and an entry that goes shift no number of the log, and the log says whose they are."""
    from lint.houseclerk import log_of

    house = "terms: uk\nlabels: {row: 'Row 1:', rows: 'Rows 2-5:'}\nabbreviations: [{use: sl st, means: slip stitch, replace: [slip st]}]"
    result = result_in(_UNSAID, house)
    assert result.text.startswith(
        "Mat\nUK terms.\n\nAbbreviations\nch = chain\ndc = double crochet\nsl st = slip stitch\n\n"
    )
    assert {change.line: change.old for change in result.changes if change.rule == "label-not-house"} == {
        11: "R1:",
        12: "R2:",
        13: "R3:",
        14: "R4:",
    }
    assert (14, "Row 4 is not understood, so its wording was left") in result.kept
    assert any(line == 2 and "was put in" in why for line, why in result.kept)
    assert log_of(result).startswith("Lines are numbered as in the pattern that was given.\n")


_BRITISH_CHAINS = """Tile
UK terms

Make a magic ring.
Rnd 1: 3 ch (counts as tr), 11 tr in ring, ss in 3rd ch of 3-ch. (12 tr)
Rnd 2: 3 ch (counts as tr), tr in same place, 2 tr in each tr around, join with ss in 3rd ch of beg 3-ch. (24 tr)
Rnd 3: 5 ch (counts as tr and 2 ch), *miss next st, tr in next st, 2 ch; rep from * to last st, miss last st, ss to 3rd ch of 5-ch. (12 tr, 12 2-ch sps)
Rnd 4: ss in next 2-ch sp, 3 ch, 2 tr in same sp, 3 tr in each 2-ch sp around, ss to top of starting 3-ch. (36 tr)
"""


def test_rounds_joined_to_a_chain_with_its_number_first() -> None:
    """ "ss in 3rd ch of beg 3-ch" closes the round, as "sl st in 3rd ch of beg ch-3" does."""
    report = check(_BRITISH_CHAINS)
    assert [made.stitches for made in mades(report)] == [12, 24, 12, 36]
    assert not {"not-understood", "count-differs"} & {finding.rule for finding in report.findings}


def test_such_chains_become_those_of_an_american_house() -> None:
    """The chain that is joined to is worded as the house words chains."""
    text = restyled(_BRITISH_CHAINS, "example-us")
    assert "sl st in 3rd ch of ch-3." in text and "3rd ch of beg ch-3." in text and "top of starting ch-3." in text


_WRAPPED = """Tote
US terms.

Abbreviations: ch = chain; dc = double crochet; rnd = round; sc = single crochet;
sk = skip; sl st = slip stitch; sp(s) = space(s); st = stitch

Ch 4, sl st in first ch to form a ring.
Rnd 1: Ch 1, 8 sc in ring; join with sl st in first sc. (8 sc)
Rnd 2: Ch 1, (sc in next st, sk next st) 4 times; join with sl st in first sc. (4 sc)
"""


def test_a_list_in_running_lines_comes_back_as_it_was() -> None:
    """What one house does not list goes and comes back at its place; lines are broken where they were."""
    there = restyled(_WRAPPED, "example-uk")
    assert "sk" not in there and "rnd" not in there
    assert "ch – chain; dc – double crochet; sp(s) – space(s);\nss – slip stitch;" in there
    assert _WRAPPED.split("\n\n")[1] == restyled(there, "example-us").split("\n\n")[1]


def test_the_log_says_what_was_put_in_and_taken_out() -> None:
    """An entry that comes or goes is no change of words."""
    from lint.houseclerk import log_of

    assert "line 4: taken out “; rnd = round”, round" in log_of(result_in(_WRAPPED, "extends: example-uk"))
    back = log_of(result_in(restyled(_WRAPPED, "example-uk"), "extends: example-us"))
    assert "line 4: put in “; rnd = round”, entries that the list lacks" in back


def test_a_plural_in_brackets_is_no_entry_of_its_own() -> None:
    """ "sp(s), space(s)" is one entry of a list that is set with commas."""
    text = (
        _WRAPPED.split("Abbreviations")[0]
        + "Abbreviations\nch, chain\nsc, single crochet\nsp(s), space(s)\n\n"
        + _WRAPPED[_WRAPPED.index("Ch 4") :]
    )
    assert "sp(s) = space(s)\n" in restyled(text, "example-us")


_BOLD = """Hat

US terms

**Abbreviations:**
- **BLO** – back loop only
- **ch** – chain
- **dc** – double crochet
- **slst** – slip stitch
- **st(s)** – stitch(es)

**Round 1:** Ch 4, 11 dc in 4th ch from hook, join with slst to top of beg ch. (12 dc)
**Round 2:** Ch 2 (does not count as a st), 2 dc in each st around, slst to first st. (24 dc)
"""


def test_marks_of_bold_stay_round_the_words_that_they_set() -> None:
    """Labels and entries in Markdown's bold keep their marks in pairs; an added entry has them too."""
    american = restyled(_BOLD, "example-us")
    assert "\n**Rnd 1:** Ch 4," in american
    assert (
        "\n- **beg** = beginning\n- **BLO** = back loop only\n" in american
        and "\n- **sl st** = slip stitch\n" in american
    )
    turned = result_in(_BOLD, "extends: us\nabbreviation_list: {form: chain (ch)}").text
    assert "\n- back loop only (**BLO**)\n" in turned and "\n- slip stitch (**sl st**)\n" in turned


def test_a_house_s_own_chain_space_is_not_changed_to_and_fro() -> None:
    """A house may print "sp" and "ch-3 space": the space with its length is worded as a whole, once."""
    house = "extends: us\nwording: {chain_space: ch-3 space}"
    text = (
        "Mat\nUS terms\n\nMake a magic ring.\nRnd 1: Ch 1, (sc in ring, ch 3) 4 times; join. (4 sc, 4 ch-3 sps)\n"
        "Rnd 2: Ch 1, 3 sc in each ch-3 sp around, sl st in next space; join. (12 sc)\n"
    )
    once = result_in(text, house).text
    assert "4 ch-3 spaces)" in once and "each ch-3 space around" in once
    assert not result_in(once, house).changes


def test_a_count_over_the_sizes_behind_a_full_stop() -> None:
    """ "54 (58, 62) hdc." becomes a count behind a dash in a house that prints it so."""
    text = (
        "Vest\nSizes: S (M, L)\nUS terms\n\nBack\nCh 56 (60, 64).\n"
        "Row 1: Hdc in 3rd ch from hook and in each ch across. 54 (58, 62) hdc.\n"
    )
    assert "across. — 54 (58, 62) hdc" in result_in(text, "counts: {form: — 12 sts}").text


def test_the_endings_of_ordinals_are_no_abbreviations() -> None:
    """ "1st round", "3rd round" use neither "st" nor "rd": neither the glossary nor a house's list explains them."""
    from lint.glossary import glossary

    text = (
        "Ball\nUS terms\n\nAbbreviations\nch = chain\nsc = single crochet\n\n1st round: Ch 2, 6 sc in 2nd ch from hook. (6 sc)\n"
        "2nd round: 2 sc in each sc around. (12 sc)\n3rd round: Sc in each sc around. (12 sc)\n"
    )
    assert [one.form for one in glossary(check(text))] == ["ch", "sc"]
    listed = (
        result_in(text, "extends: us\nlabels: {round: '1st round:'}").text.split("Abbreviations\n")[1].split("\n\n")[0]
    )
    assert listed == "ch = chain\nsc = single crochet"


def test_a_sentence_that_may_be_work_is_not_taken_for_one_about_somebody() -> None:
    """ "Dc the cat will want to help." is a remark; "Sc the rest has to be worked." may be work, and stops the row."""
    text = "Mat\nUS terms\n\nRnd 1: 12 sc in magic ring. (12)\nRnd 2: {} Inc in each st. (24)\n"
    told = [check(text.format(words)).ledger.rows[-1].first.outcome.value for words in _SAID]
    assert told == ["agrees", "not-recomputed"]


_SAID = ("Dc the cat will want to help.", "Sc the rest has to be worked.")
