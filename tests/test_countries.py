"""US and UK names of the stitches, against published tables; and other languages, to look up."""

from __future__ import annotations

import pytest
from helpers import rulebook

# "Crochet hook, yarn and stitch conversions" of a UK shop, whole; the last from Oombawka Design and Crochet for All
TABLE = [
    ("single crochet", "sc", "double crochet", "dc"),
    ("half double crochet", "hdc", "half treble crochet", "htr"),
    ("double crochet", "dc", "treble crochet", "tr"),
    ("treble crochet", "tr", "double treble crochet", "dtr"),
    ("double treble crochet", "dtr", "triple treble crochet", "ttr"),
    ("triple treble crochet", "trtr", "quadruple treble crochet", "qtr"),
]


@pytest.mark.parametrize(("us", "us_short", "uk", "uk_short"), TABLE)
def test_published_pairs(us: str, us_short: str, uk: str, uk_short: str) -> None:
    """Names and abbreviations of one stitch stand for each other as in the published table."""
    pairs = {pair.stitch: pair.forms for pair in rulebook().countries.pairs}

    assert (us, uk) in pairs[us_short]
    assert pairs[us_short][0] == (us_short, uk_short)


def test_every_pair_is_read() -> None:
    """Each form of a pair is known to the reader under its own terms, as that stitch."""
    for pair in rulebook().countries.pairs:
        stitch = rulebook().stitch(pair.stitch)
        assert {us for us, _ in pair.forms} <= set(stitch.us)
        assert {uk for _, uk in pair.forms} <= set(stitch.uk)


def test_every_counted_stitch_has_a_pair() -> None:
    """No stitch of the rules would be left behind when terms are changed; one of the same names everywhere needs no pair."""
    stitches = rulebook().stitches.stitches
    counted = {stitch.key for stitch in stitches if stitch.counted and set(stitch.us) != set(stitch.uk)}

    assert counted == {pair.stitch for pair in rulebook().countries.pairs}


# Crochet Terms Translation Chart, the Dutch and Danish rows; Rule of the Jewel for Norwegian; Code-Knacker for German
ABROAD = [
    ("nl", "sc", "vaste"),
    ("nl", "dc", "stokje"),
    ("da", "dc", "stangmaske"),
    ("no", "dc", "stav"),
    ("de", "dec", "Abnahme"),
]


@pytest.mark.parametrize(("code", "key", "word"), ABROAD)
def test_published_names_abroad(code: str, key: str, word: str) -> None:
    """Names in other languages are those of the source."""
    from lint.rulebook import load_languages

    [language] = [language for language in load_languages() if language.code == code]

    assert word in [term.words for term in language.terms if term.key == key][0]
    assert all(term.source for term in language.terms)
