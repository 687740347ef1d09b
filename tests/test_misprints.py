"""Words that scanning or typing has damaged: read as the one word that can have stood there, and told.

The forms are those of old leaflets and translated toys: common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import all_findings, check, counts

_BALL = "Ball\n\nUS terms\n\nRnd 1: 6 sc in magic ring. (6)\n"


def _told(report) -> list[tuple[str, str]]:
    return [(one.found, one.expected) for one in report.findings if one.rule == "misprint"]


@pytest.mark.parametrize(
    ("words", "made", "misprints"),
    [
        ("(l sc, inc) 3 times.", 9, [("l", "1")]),
        ("6 lnc.", 12, [("lnc", "inc")]),
        ("*sc, 1NC* 3 times.", 9, [("1NC", "inc")]),
        ("6 ’NC.", 12, [("’NC", "inc")]),
        ("6 İNC.", 12, []),  # a dotted capital is no damage
        ("Sp first st, sc in next 5 sts.", 5, [("Sp", "skip")]),
        ("Sc in next 2 sc, skin next 2 sc, sc in last 2 sc.", 4, [("skin", "skip")]),
        ("6 s\N{CYRILLIC SMALL LETTER ES}.", 6, [("s\N{CYRILLIC SMALL LETTER ES}", "sc")]),
        ("5 sc, s1 st in last sc.", 5, [("s1 st", "sl st")]),
    ],
)
def test_damaged_words(words: str, made: int, misprints: list[tuple[str, str]]) -> None:
    """A letter for a figure, a figure for a letter, a word for skip: read, counted, and asked about."""
    report = check(f"{_BALL}Rnd 2: {words}\n")
    assert counts(report) == [6, made]
    assert _told(report) == misprints


def test_figures_with_a_letter_in_them() -> None:
    """ "1 O sc" and "2l sc" behind other work; the letter may be a Cyrillic one."""
    text = (
        _BALL + "Rnd 2: 6 inc. (12)\nRnd 3: 12 inc. (24)\nRnd 4: 1 О sc, 14 sc. (24)\nRnd 5: sc2tog, 2l sc, sc. (23)\n"
    )  # noqa: RUF001
    report = check(text)
    assert counts(report) == [6, 12, 24, 24, 23]
    assert [expected for _, expected in _told(report)] == ["10", "21"]


def test_and_for_second() -> None:
    """ "in and ch from hook" can only be the second; "in next st and ch 2" is left as it is."""
    report = check("Strip\n\nUS terms\n\nCh 8.\nRow 1: Sc in and ch from hook and in each ch across. (7)\n")
    assert counts(report) == [7]
    assert _told(report) == [("and", "2nd")]


@pytest.mark.parametrize(
    "words",
    [
        "I sc in each st here.",  # a pronoun
        "6 s dc.",  # any figure may have stood there
        "l in each st.",
        "ch 2, skip 2 sts, sc in next ch-2 sp, sp 2.",
        "3 lsc.",  # a long single crochet
        "6 sc, NC, sp 2.",  # a new colour
    ],
)
def test_words_that_may_be_others(words: str) -> None:
    """Nothing is taken for a misprint that may have been another word, or is none."""
    assert _told(check(f"{_BALL}Rnd 2: {words}\n")) == []


def test_translators_in() -> None:
    """The Russian "in" left standing at the stitch: "7 scв magic ring"."""
    report = check("Ear\n\nUS terms\n\n1 row: 7 sc\N{CYRILLIC SMALL LETTER VE} MAGİC RİNG (7)\n2 row: 7 sc (7)\n")
    assert counts(report) == [7, 7]


def test_own_words_in_another_script() -> None:
    """A list that explains Cyrillic letters is read, and its words are no misprints."""
    report = check(
        "Ear\n\nUS terms\n\nAbbreviations\nсбн - single crochet\nпр - increase\n\nRnd 1: 6 сбн in magic ring (6)\nRnd 2: 6 пр (12)\n"
    )  # noqa: RUF001
    assert counts(report) == [6, 12]
    assert [one for one in all_findings(report) if one[0] == "misprint"] == []


def test_one_finding_a_word() -> None:
    """A word that is damaged in every round is asked about once, with its other places."""
    report = check(f"{_BALL}Rnd 2: (l sc, inc) 3 times. (9)\nRnd 3: (l sc, inc, l sc) 3 times. (12)\n")
    found = [one for one in report.findings if one.rule == "misprint"]
    assert len(found) == 1
    assert [report.source.line_of(other.span) for other in found[0].related] == [7, 7]


def test_a_figure_typed_twice_may_be_one() -> None:
    """Eleven stitches in one place are as likely one, with its digit typed twice: which, is not known."""
    text = "Bag\nUS terms.\nRow 1: Ch 13, sc in 2nd ch from hook and in each ch. (12 sc)\n"
    for words, made in (("1l sc in next st, sc in next 6 sts", None), ("1l sc, 2 sc in last st", 13)):
        assert (
            counts(
                check(
                    f"{text}Row 2: Ch 1, sc in next 5 sts, {words}.\n"
                    if made is None
                    else f"{text}Row 2: Ch 1, {words}.\n"
                )
            )[1]
            == made
        )


def test_an_increase_behind_a_bar_and_the_colour_of_skin() -> None:
    """A bar glued to "nc" is no column of a table, and a colour named behind another is no skip."""
    circle = "Head\nUS terms.\nRnd 1: 8 sc in magic ring. (8)\n"
    assert counts(check(circle + "Rnd 2: (sc, |nc) x 4.\n"))[1] == 12
    assert counts(check(circle + "Rnd 2: 4 sc brown, skin next 4 sts.\n"))[1] is None
    assert counts(check(circle + "Rnd 2: 4 sc, Skin next st, 3 sc.\n"))[1] == 7


@pytest.mark.parametrize("often", ["\N{CYRILLIC SMALL LETTER HA} 3", "\N{CYRILLIC CAPITAL LETTER HA}3", "x 3"])
def test_a_cross_of_another_script(often: str) -> None:
    """The Cyrillic letter that looks like an x says how often, and needs no question."""
    report = check(f"{_BALL}Rnd 2: (sc, inc) {often} (9)\n")
    assert counts(report) == [6, 9]
    assert _told(report) == []
