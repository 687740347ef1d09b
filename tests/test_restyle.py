"""Restyling: what is certain is changed, names and talk are not, every row makes the same, and round trips come back."""

from __future__ import annotations

from typing import Any

import pytest
from helpers import DEMO, check, counts, rulebook, spaces

SOUND = sorted(path for path in DEMO.glob("*.txt"))


def house(text: str) -> Any:
    """A house from the text of its file."""
    from lint.house.loading import read_house

    return read_house(text, "house.yaml", rulebook())


def restyled(text: str, house_text: str, terms: str = "auto") -> Any:
    """A text put into the form of a house."""
    from lint.restyling import restyle
    from lint.source import SourceText

    return restyle(SourceText(text), house(house_text), rulebook(), terms)


def refused(text: str, house_text: str) -> str:
    """Why a text is not restyled."""
    from lint.restyling import NotRestyled

    with pytest.raises(NotRestyled) as caught:
        restyled(text, house_text)
    return str(caught.value)


MAT = """Double Crochet Mat
US terms.

Abbreviations
ch = chain
dc = double crochet
FPdc = front post double crochet
sc = single crochet

Gauge: 14 dc = 10 cm
Note: Ch 3 at the start of a row counts as dc.

Mat
Ch 14.
Row 1 (RS): Dc in 4th ch from hook (3 skipped ch count as dc), dc in each ch across. (12 dc)
Row 2: Ch 1 (does not count as a st), turn, sc in each of next 4 dc, dc2tog over next 2 dc, sc in each dc to end. (11 sts)
Row 3: Ch 3, turn, FPdc around next st, dc in each st to end. (11 sts)
"""


class TestTerms:
    """Stitch names change country, and nothing else."""

    def test_every_name_changes(self) -> None:
        """Rows, list, gauge and notes are all in the new terms; the title keeps its name."""
        text = restyled(MAT, "terms: uk").text

        assert text.startswith("Double Crochet Mat\nUK terms.\n")
        assert "ch = chain\ntr = treble crochet\nFPtr = front post treble crochet\ndc = double crochet\n" in text
        assert "Gauge: 14 tr = 10 cm" in text
        assert "counts as tr." in text
        assert "tr2tog over next 2 tr" in text
        assert "FPtr around next st" in text

    def test_comes_back(self) -> None:
        """Changed and changed back, the text is as it was, letter for letter."""
        assert restyled(restyled(MAT, "terms: uk").text, "terms: us").text == MAT

    def test_name_left_is_told(self) -> None:
        """A stitch's name in the title is left, and the log says so."""
        assert any("stands in a name" in why for _, why in restyled(MAT, "terms: uk").kept)

    def test_fabric_stays(self) -> None:
        """Every row makes what it made."""
        assert counts(check(restyled(MAT, "terms: uk").text)) == counts(check(MAT)) == [12, 11, 11]

    @pytest.mark.parametrize(
        ("us", "uk"),
        [
            ("Sc in", "Dc in"),
            ("hdc in", "htr in"),
            ("dc in", "tr in"),
            ("tr in", "dtr in"),
            ("dtr in", "ttr in"),
            ("trtr in", "qtr in"),
            ("half double crochet in", "half treble crochet in"),
            ("Treble crochet in", "Double treble crochet in"),
            ("BPDC in", "BPTR in"),
            ("back post dc in", "back post tr in"),
            ("extended sc in", "extended dc in"),
            ("standing bpsc in", "standing bpdc in"),
            ("long double crochet in", "long treble crochet in"),
        ],
    )
    def test_single_names(self, us: str, uk: str) -> None:
        """Each name, in its own letter case, becomes its counterpart and comes back."""
        row = "Strip\nTerms: %s\nCh 20.\nRow 1: {} each ch across.\n"
        there = restyled((row % "US").format(us), "terms: uk").text

        assert there == (row % "UK").format(uk)
        assert restyled(there, "terms: us").text == (row % "US").format(us)

    def test_gloss_is_turned_round(self) -> None:
        """A list that explains each name in the other country's terms does so afterwards too."""
        uk = "Mat\nUK terms.\nAbbreviations\ndc: double crochet (US single crochet)\ntr: treble (US dc)\n\nMat\nCh 8.\nRow 1: 1 dc in 2nd ch from hook, 1 tr in each ch to end.\n"
        us = restyled(uk, "terms: us").text

        assert "sc: single crochet (UK double crochet)" in us
        assert "dc: double crochet (UK tr)" in us

    def test_form_that_does_not_come_back_is_told(self) -> None:
        """A UK "treble" has no counterpart of its own; that it won't come back is told."""
        uk = "Mat\nUK terms.\nCh 8.\nRow 1: 1 treble in 4th ch from hook, 1 treble in each ch to end.\n"

        assert any("changed back it would be “treble crochet”" in why for _, why in restyled(uk, "terms: us").kept)

    def test_both_names_side_by_side(self) -> None:
        """ "tr/dc" names one stitch in both countries and stays."""
        uk = "Mat\nUK terms.\nCh 8.\nRow 1: 1 dc in 2nd ch from hook, 1 tr/dc in each ch to end.\n"

        assert "tr/dc" in restyled(uk, "terms: us").text

    def test_terms_unknown(self) -> None:
        """Where the text does not tell its terms nothing is changed unless they are given."""
        text = "Mat\nCh 8.\nRow 1: Dc in 4th ch from hook, tr in each ch to end.\n"

        assert "--terms" in refused(text, "terms: uk")
        assert "Tr in 4th" in restyled(text, "terms: uk", "us").text

    def test_older_british_sc(self) -> None:
        """sc among UK names may be a slip stitch of older patterns or a US name: nothing is changed."""
        text = "Mat\nUK terms.\nCh 8.\nRow 1: 1 dc in 2nd ch from hook, 1 sc in next ch, 1 htr in each ch to end.\n"

        assert "“sc”" in refused(text, "terms: us") and "line 4" in refused(text, "terms: us")

    def test_terms_that_are_said_nowhere_are_said(self) -> None:
        """A text that would not be known for its new terms is told them in a line of its own."""
        text = "Mat\nCh 8.\nRow 1: Sc in 2nd ch from hook, sc in each ch to end.\n"

        assert restyled(text, "terms: uk").text.startswith("Mat\nUK terms.\nCh 8.")


FORMS = """Cosy
US terms. This pretty slip stitch cosy wants no more than a skein.

Cosy
Make a magic ring.
Rnd 1: Ch 1 (does not count as a st), 6 single crochet in ring; join with slst in first sc. (6 sc)
Rnd 2: Ch 1 (does not count as a st), 2 sc in each stitch around; join with Slip Stitch in first sc. (12 sc)
Tie off with a slip stitch knot, as my aunt does.
"""
FORM_HOUSE = """abbreviations:
  - {use: sl st, means: slip stitch, replace: [slst, slip stitch]}
  - {use: sc, means: single crochet, plural: sc, replace: [single crochet]}
  - {use: st, means: stitch, replace: [stitch]}
"""


class TestForms:
    """One change of the house each."""

    def test_abbreviations(self) -> None:
        """Forms in rows become the house's; talk around them stays."""
        text = restyled(FORMS, FORM_HOUSE).text

        assert "6 sc in ring; join with sl st in" in text
        assert "2 sc in each st around" in text
        assert "pretty slip stitch cosy" in text and "a slip stitch knot, as my aunt does" in text

    def test_pattern_own_stitch_stays(self) -> None:
        """A form that the pattern defines as its own stitch is not touched."""
        own = "Mat\nUS terms.\nSpecial stitches\nps: (ch 3, sl st in first ch)\n\nMat\nCh 9.\nRow 1: Sc in 2nd ch from hook, ps, sc in each ch across.\n"
        text = restyled(own, "abbreviations:\n  - {use: puff, means: puff stitch, replace: [ps]}\n").text

        assert text == own

    def test_round_that_is_no_round(self) -> None:
        """ "round the edge" tells where, and is no round."""
        text = "Mat\nUK terms.\nCh 8, ss in first ch.\nRound 1: 1 ch (does not count as a st), 12 dc round the ring, ss in first dc. (12 dc)\nRound 2: 1 ch, rep round 1.\n"
        new = restyled(text, "abbreviations:\n  - {use: rnd, means: round, replace: [round]}\n").text

        assert "round the ring" in new and "rep rnd 1" in new

    @pytest.mark.parametrize(
        ("wording", "old", "new"),
        [
            ("chain: ch 3", "3ch, turn, dc in next dc", "Ch 3, turn, dc in next dc"),
            ("chain: 3 ch", "Ch 3, turn, dc in next dc", "3 ch, turn, dc in next dc"),
            ("chain_space: 3-ch sp", "Ch 3, turn, dc in next ch-2 sp", "Ch 3, turn, dc in next 2-ch sp"),
            ("chain_space: ch-3 sp", "Ch 3, turn, dc in next 2-ch space", "Ch 3, turn, dc in next ch-2 sp"),
            ("stitches: 2 dc", "Ch 3, turn, 2dc in next dc", "Ch 3, turn, 2 dc in next dc"),
            ("stitches: 2dc", "Ch 3, turn, 2 dc in next dc, dc2tog", "Ch 3, turn, 2dc in next dc, dc2tog"),
            ("times: 3 times", "Ch 3, turn, (dc in next dc) x 4", "Ch 3, turn, (dc in next dc) 4 times"),
            ("times: x 3", "Ch 3, turn, (dc in next dc) 4 times", "Ch 3, turn, (dc in next dc) x 4"),
            ("times: three times", "Ch 3, turn, (dc in next dc) x 2", "Ch 3, turn, (dc in next dc) twice"),
            (
                "more: 3 more times",
                "*Dc in next dc; rep from * 4 times more",
                "*Dc in next dc; rep from * 4 more times",
            ),
            ("skip: sk", "Ch 3, turn, skip next dc, dc in next dc", "Ch 3, turn, sk next dc, dc in next dc"),
            ("first_word: sc in", "Ch 3, turn, dc in next dc", "ch 3, turn, dc in next dc"),
        ],
    )
    def test_wording(self, wording: str, old: str, new: str) -> None:
        """Single things in rows, worded as the house does."""
        lead = "Strip\nUS terms.\nCh 14.\nRow 1: Dc in 4th ch from hook and in each ch across.\nRow 2: "

        changed = restyled(lead + old + ".\n", f"wording: {{{wording}}}").text
        assert changed.splitlines()[4].lower() == f"row 2: {new}.".lower()
        assert changed.splitlines()[4] == f"Row 2: {new}."

    @pytest.mark.parametrize(
        ("labels", "old", "new"),
        [
            ('row: "Row 1:"', "1st row (RS) - Sc", "Row 1 (RS): Sc"),
            ('row: "Row 1:"', "ROW 1. Sc", "Row 1: Sc"),
            ('row: "1st row:"', "Row 1: Sc", "1st row: Sc"),
            ('row: "Row 1 –"', "Row 1: Sc", "Row 1 – Sc"),
            ('row: "R1:"', "Row 1: Sc", "R1: Sc"),
        ],
    )
    def test_labels(self, labels: str, old: str, new: str) -> None:
        """A row's label in the house's form."""
        text = f"Strip\nUS terms.\nCh 14.\n{old} in 2nd ch from hook and in each ch across. (13 sc)\n"

        assert restyled(text, f"labels: {{{labels}}}").text.splitlines()[3].startswith(new + " in 2nd")

    def test_label_of_a_range(self) -> None:
        """ "2nd to 5th rows" is a range in any form."""
        text = "Strip\nUS terms.\nCh 14.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n2nd to 5th rows: Ch 1, turn, sc in each sc across.\n"

        assert "\nRows 2-5: Ch" in restyled(text, 'labels: {row: "Row 1:", rows: "Rows 2-5:"}').text

    @pytest.mark.parametrize(
        ("form", "old", "new"),
        [
            ("(12 sts)", "across. [13]", "across. (13 sts)"),
            ("(12 sts)", "across - 13 sc.", "across (13 sc)."),
            ("(12 sts)", "across; 13 sc.", "across (13 sc)."),
            ("[12 sts]", "across. (13 sc)", "across. [13 sc]"),
            ("— 12 sts", "across. (13 sc)", "across. — 13 sc"),
            ("; 12 sts", "across. (13 sc)", "across; 13 sc"),
        ],
    )
    def test_counts(self, form: str, old: str, new: str) -> None:
        """A printed count in the house's signs."""
        text = f"Strip\nUS terms.\nCh 14.\nRow 1: Sc in 2nd ch from hook and in each ch {old}\n"

        assert restyled(text, f'counts: {{form: "{form}"}}').text.splitlines()[3].endswith(new)

    def test_notes_on_turning_chains(self) -> None:
        """The note beside a beginning chain in the house's words, its reach kept."""
        text = "Strip\nUS terms.\nCh 14.\nRow 1: Sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 3 (counts as first dc here and throughout), turn, dc in next sc and in each sc across.\n"

        assert (
            "(counts as 1 dc here and throughout)" in restyled(text, 'turning_chain: {note: "(counts as 1 dc)"}').text
        )

    def test_lists_over_the_sizes(self) -> None:
        """Every list over the sizes, in rows and measures, in the house's signs; other brackets stay."""
        text = "Strip\nUS terms.\nSizes: S (M: L)\nFinished width: 4 (5: 6) in (10 cm for size S)\nCh 11 (13: 15).\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 (12: 14) sc)\n"
        new = restyled(text, 'sizes: "60 [66, 72]"').text

        assert "Ch 11 [13, 15]." in new and "4 [5, 6] in (10 cm" in new and "(10 [12, 14] sc)" in new

    def test_units(self) -> None:
        """Units behind numbers outside the rows; "in" that is a place stays."""
        text = "Strip\nUS terms.\nFinished size: 4 inches (10 cms) wide\nCh 14.\nRow 1: Sc in 2nd ch from hook, sc in next 3 chs, 2 sc in each ch across.\n"
        new = restyled(text, "units: {inches: in, centimetres: cm}").text

        assert "4 in (10 cm) wide" in new and new.splitlines()[4] == text.splitlines()[4]

    def test_list_of_abbreviations(self) -> None:
        """The pattern's list in the house's shape and order, its own meanings kept, with what is lacking."""
        text = "Strip\nUS terms.\nAbbreviations\nsc: single crochet\nch: my chain\n\nStrip\nCh 14.\nRow 1: Sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 1, turn, sc in each st across.\n"
        new = restyled(text, 'extends: us\nabbreviation_list: {form: "ch = chain", order: alphabetical}').text

        assert "Abbreviations\nch = my chain\nsc = single crochet\nst = stitch\n\nStrip" in new

    def test_run_on_list_of_abbreviations(self) -> None:
        """A list in one line stays in one line, brackets in its words and all."""
        text = "Strip\nUS terms.\nAbbreviations: stitch(es) (st(s)); single crochet (sc); chain (ch).\n\nStrip\nCh 14.\nRow 1: Sc in 2nd ch from hook, sc in each ch across.\nRow 2: Ch 1, turn, sc in each st across.\n"
        new = restyled(text, 'abbreviation_list: {form: "ch = chain", order: alphabetical}').text

        assert "Abbreviations: ch = chain; sc = single crochet; st(s) = stitch(es).\n" in new


class TestCare:
    """What is not certain is left, and said to be."""

    def test_row_not_understood_is_left(self) -> None:
        """A row that is not understood keeps its wording, and is named."""
        text = "Strip\nUS terms.\nCh 14.\nRow 1: Sc in 2nd ch from hook and in each ch across.\nRow 2: 1 ch, turn, zigwork 3 skip over the fnord sc, sc in each sc.\n"
        result = restyled(text, "wording: {chain: ch 3, skip: sk}")

        assert result.text.splitlines()[4] == text.splitlines()[4]
        assert any(why.startswith("Row 2 is not understood") for _, why in result.kept)

    def test_edit_that_changes_a_row_is_left(self) -> None:
        """An edit under which a row would come out otherwise is not made, and said not to be."""
        from lint import restyling
        from lint.restyle.edits import Edit
        from lint.source import Span

        text = "Strip\nUS terms.\nCh 14.\nRow 1: Sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 1, turn, 2 sc in each sc across.\n"

        def wrong(ground: Any) -> Any:
            at = ground.source.text.find("2 sc in each")
            yield Edit(Span(at, at + 1), "3", "wording-not-house", "numbers")

        ways, restyling.WAYS = restyling.WAYS, (wrong,)
        try:
            result = restyled(text, "name: Ours")
        finally:
            restyling.WAYS = ways

        assert result.text == text
        assert any("would not come out the same" in why for _, why in result.kept)


@pytest.mark.parametrize("path", SOUND, ids=lambda path: path.stem)
@pytest.mark.parametrize("name", ["example-us", "example-uk"])
def test_demo_patterns(path: Any, name: str) -> None:
    """A demo pattern in a house's form makes the same in every row and size, and has nothing left to restyle."""
    from lint.house.loading import house_path, load_house
    from lint.restyling import restyle
    from lint.source import SourceText

    held = load_house(house_path(name), rulebook())
    text = path.read_text(encoding="utf-8")
    result = restyle(SourceText(text), held, rulebook())
    before, after = check(text), check(result.text)

    assert after.terms.terms == held.terms
    for size in range(max(1, len(before.pattern.sizes))):
        assert counts(after, size) == counts(before, size)
    assert spaces(after) == spaces(before) if None not in counts(before) else True
    assert restyle(SourceText(result.text), held, rulebook()).changes == ()


CAPITALS = """Marrow Mat
US terms.
Sizes: S (M, L)

Abbreviations
CH: chain
HDC: half double crochet
MC: magic circle
SC: single crochet
St(s): stitch(es)

Mat
CH 21.
R1. SC in 2nd CH from hook and in each CH across (20)
R2. CH 1, turn, SC in each ST to last 2 STS, SC in last 2 STS; 20 sc.
3rd (3rd-4th, 3rd-5th) rows: Rep R2.
Next row: With the same yarn, CH 1, turn, *SC in next ST; Rep from * across. (20)
"""


class TestLetterCase:
    """Letter case is part of an abbreviation's form."""

    def test_capitals_become_the_form_of_the_house(self) -> None:
        """HDC is hdc in a house that prints hdc, but for the capital that a sentence begins with."""
        text = restyled(CAPITALS, "extends: us").text

        assert "R2. Ch 1, turn, sc in each st to last 2 sts, sc in last 2 sts; 20 sc." in text
        assert "With the same yarn, ch 1, turn, *sc in next st; rep from * across. (20)" in text
        assert "sc: single crochet\nst(s): stitch(es)\n" in text

    def test_small_letters_are_no_capitals_of_something_else(self) -> None:
        """A magic circle mc does not become the main colour MC."""
        text = "Ball\nUS terms.\nAbbreviations\nch = chain\nmc = magic circle\nsc = single crochet\n\nBall\nRnd 1: 6 sc in mc. (6)\n"

        assert "6 sc in mc" in restyled(text, "extends: us").text
        assert "mc = magic circle" in restyled(text, "extends: us").text

    def test_all_in_capitals(self) -> None:
        """A row that shouts throughout is left as it is."""
        row = "ROW 1: SC IN 2ND CH FROM HOOK AND IN EACH CH ACROSS."

        assert row in restyled(f"Mat\nUS terms.\nCh 8.\n{row}\n", "extends: us").text

    def test_house_in_capitals(self) -> None:
        """A house may print SC, at the row's beginning too."""
        house_text = "abbreviations:\n  - {use: SC, means: single crochet, replace: [sc]}\n"
        text = restyled(
            "Mat\nUS terms.\nCh 8.\nRow 1: Sc in 2nd ch from hook, sc in each ch across.\n", house_text
        ).text

        assert "Row 1: SC in 2nd ch from hook, SC in each ch across." in text


class TestRowsByNumber:
    """Labels in every shape, and rows that are called for by theirs."""

    LABELS = "labels: {row: 'Row 1:', rows: 'Rows 2-5:'}"

    def test_ordinals_over_the_sizes(self) -> None:
        """An ordinal for each size is a number for each size."""
        text = restyled(CAPITALS, self.LABELS).text

        assert "\nRows 3 (3-4, 3-5): Rep Row 2.\n" in text

    @pytest.mark.parametrize(
        ("printed", "made"),
        [
            ("Rep R2.", "Rep Row 2."),
            ("Repeat R1-2.", "Repeat Rows 1-2."),
            ("As 2nd row.", "As Row 2."),
            ("Rep row 2.", "Rep row 2."),
            ("Rep Rows 1-2.", "Rep Rows 1-2."),
        ],
    )
    def test_rows_called_for(self, printed: str, made: str) -> None:
        """A row that is called for has the label of the house, and keeps its own where the word is the same."""
        text = f"Mat\nUS terms.\nCh 8.\nR1: Sc in 2nd ch from hook and in each ch across.\nR2: Ch 1, turn, sc in each sc across.\nR3: {printed}\n"

        assert f"Row 3: {made}\n" in restyled(text, self.LABELS).text

    def test_count_behind_stitches(self) -> None:
        """A count after "in last 2 sts;" is a count."""
        assert "in last 2 STS (20 sc)." in restyled(CAPITALS, "counts: {form: (12 sts)}").text


def test_first_word_is_the_first() -> None:
    """Words before it that are only told make a stitch no first word."""
    text = restyled(CAPITALS, "wording: {first_word: Sc in}\nextends: us").text

    assert "With the same yarn, ch 1, turn" in text


def test_log_names_whole_words() -> None:
    """Nothing of the log is an empty change: a blank that is put in is shown with the words around it."""
    text = "Mat\nUS terms.\nCh 8.\nRow 1: 1sc in 2nd ch from hook, 6sc in next 6 ch.\n"
    changes = restyled(text, "wording: {stitches: 2 dc}").changes

    assert [(change.old, change.new) for change in changes] == [("1sc", "1 sc"), ("6sc", "6 sc")]


def test_order_of_the_list_is_one_line_of_the_log() -> None:
    """Entries that change places are told together; what is added comes to its place at once."""
    from lint.houseclerk import log_of

    text = "Mat\nUS terms.\nAbbreviations\nsc = single crochet\nst(s) = stitch(es)\nch = chain\n\nMat\nCh 8.\nRnd 1: Sc in 2nd ch from hook and in each ch across, rep from * around.\n"
    result = restyled(text.replace("Rnd 1: Sc", "Rnd 1: *Sc"), "extends: us\nabbreviation_list: {order: alphabetical}")
    log = log_of(result)

    assert log.count("order of the list") == 1
    assert "ch = chain\nrep = repeat\nrnd(s) = round(s)\nsc = single crochet\nst(s) = stitch(es)\n" in result.text
