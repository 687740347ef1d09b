"""Hostile and broken documents: one sentence each, in bounded time and memory, and never a traceback."""

from __future__ import annotations

import io
import random
import struct
import subprocess
import sys
import time
import zipfile

import pytest
from helpers import ROOT, check
from hypothesis import given, settings
from hypothesis import strategies as st
from made_documents import COASTER, MAKERS, as_docx, as_pdf, changed, odt_of, read, unzipped, zipped

from lint.documents.unreadable import Unreadable


def refused(raw: bytes, name: str) -> str:
    """What is said of a document that is refused: one line, a few words long."""
    with pytest.raises(Unreadable) as told:
        read(raw, name)
    said = str(told.value)
    assert "\n" not in said and 5 < len(said) < 200
    return said


def docx_part(words: bytes, part: str = "word/document.xml") -> bytes:
    """A .docx with one part put in the place of its own."""
    parts = unzipped(as_docx("x"))
    return zipped({**parts, part: words})


LAUGHS = (
    '<!DOCTYPE lolz [<!ENTITY a "lol">'
    + "".join(f'<!ENTITY {new} "{f"&{old};" * 10}">' for old, new in zip("abcdefgh", "bcdefghi", strict=True))
    + "]>"
)


def test_xml_bombs() -> None:
    """Entities that grow without end, and entities that fetch files, are refused with the declaration that they need."""
    for doctype in (
        LAUGHS,
        '<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]>',
        '<!DOCTYPE x SYSTEM "http://localhost/x.dtd">',
    ):
        for raw, name in (
            (
                docx_part(
                    f"<?xml version='1.0'?>{doctype}<w:document xmlns:w='x'><w:body>&a;</w:body></w:document>".encode()
                ),
                "a.docx",
            ),
            (zipped({"mimetype": b"", "content.xml": f"{doctype}<a>&i;</a>".encode()}), "a.odt"),
        ):
            assert "document type declaration" in refused(raw, name)


def test_zip_bombs() -> None:
    """A part that unpacks to more than a pattern can hold is not unpacked to its end."""
    assert "unpacks to more than" in refused(docx_part(b" " * 50_000_000), "a.docx")
    assert "unpacks to more than" in refused(docx_part(b" " * 50_000_000, "word/numbering.xml"), "a.docx")
    assert "unpacks to more than" in refused(zipped({"mimetype": b"", "content.xml": b" " * 50_000_000}), "a.odt")


def test_a_size_that_lies() -> None:
    """A zip file that names a small size for a large part is held to the bound all the same."""
    raw = bytearray(docx_part(b"<a>" + b" " * 50_000_000))
    at = raw.rindex(b"word/document.xml") - 46
    assert raw[at : at + 4] == b"PK\x01\x02"
    raw[at + 24 : at + 28] = struct.pack("<I", 100)

    refused(bytes(raw), "a.docx")


def test_many_parts_and_deep_ones() -> None:
    """Thousands of parts, or elements within elements without end, are refused."""
    assert "parts" in refused(zipped({"word/document.xml": b"", **{f"word/{n}": b"" for n in range(6000)}}), "a.docx")
    assert "parts within parts" in refused(docx_part(b"<p>" * 100_000), "a.docx")
    assert "parts within parts" in refused(b"<html>" + b"<div>" * 100_000 + b"x", "a.html")
    assert "parts within parts" in refused(b"{\\rtf1" + b"{" * 100_000 + b"x", "a.rtf")


def test_repeats_that_explode() -> None:
    """Cells and spaces that are written once and repeated a million times stay within bounds."""
    many = '<table:table-cell table:number-columns-repeated="1000000"><text:p>x<text:s text:c="1000000000"/>y</text:p></table:table-cell>'
    row = f'<table:table-row table:number-rows-repeated="1000000">{many}</table:table-row>'
    nested = "<text:p/>"
    for _ in range(6):
        nested = f'<table:table><table:table-row table:number-rows-repeated="1000"><table:table-cell table:number-columns-repeated="1000">{nested}</table:table-cell></table:table-row></table:table>'

    assert "characters" in refused(odt_of(f"<table:table>{row}</table:table>"), "a.odt")
    assert "has no text" in refused(odt_of(nested), "a.odt")


@pytest.mark.parametrize(
    "sign",
    [
        "<",
        "<a ",
        "<!-- ",
        '<a x="',
        "<!",
        "<?",
        "&",
        "</x>",
        "<a",
        "<script>",
        "<![CDATA[",
        "<p>",
        "<b>x</b>",
        "<table><tr><td>",
    ],
)
def test_markup_that_never_ends(sign: str) -> None:
    """Web pages of broken tags are read or refused in one go."""
    try:
        read(f"<html>{sign * 100_000}".encode(), "a.html")
    except Unreadable:
        pass


@pytest.mark.parametrize(
    "sign",
    [
        "{\\field{\\*\\fldinst{HYPERLINK ",
        "\\bin9999999999 x",
        "\\u",
        "\\uc",
        "\\'",
        "\\f1 ",
        "{\\fonttbl",
        "}",
        "\\u-1 ",
        "\\ansicpg99999 \\'80",
    ],
)
def test_rtf_that_never_ends(sign: str) -> None:
    """RTF of broken groups and control words is read or refused in one go."""
    try:
        read(("{\\rtf1 x " + sign * 5_000).encode(), "a.rtf")
    except Unreadable:
        pass


def test_protected_documents() -> None:
    """Documents with a password, and old word-processor files, are told for what they are."""
    import pypdf

    writer = pypdf.PdfWriter(clone_from=io.BytesIO(as_pdf(COASTER)))
    writer.encrypt("secret", algorithm="RC4-128")
    out = io.BytesIO()
    writer.write(out)
    manifest = b"<manifest:manifest><manifest:encryption-data/></manifest:manifest>"

    assert "password" in refused(out.getvalue(), "a.pdf")
    assert "password" in refused(b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 600, "a.docx")
    assert "password" in refused(
        zipped({"mimetype": b"", "content.xml": b"x", "META-INF/manifest.xml": manifest}), "a.odt"
    )


def test_other_files() -> None:
    """A picture, a workbook, an empty or a mistaken file is refused by name."""
    assert "picture" in refused(b"\x89PNG\r\n\x1a\n", "a.png")
    assert "no .docx or .odt" in refused(zipped({"xl/workbook.xml": b""}), "a.xlsx")
    assert "no .docx document" in refused(b"Rnd 1: 6 sc", "a.docx")
    assert "no .pdf document" in refused(b"", "a.pdf")
    assert "no text document" in refused(
        changed(odt_of("<text:p>x</text:p>"), "content.xml", "office:text", "office:spreadsheet"), "a.odt"
    )


@pytest.mark.parametrize("kind", MAKERS)
@given(seed=st.integers(0, 10_000))
@settings(max_examples=25, deadline=None)
def test_damaged_documents(kind: str, seed: int) -> None:
    """A document with bytes changed, missing or cut off is read or refused, whatever the bytes."""
    chance = random.Random(seed)
    raw = bytearray(_SOUND[kind])
    for _ in range(chance.choice((1, 3, 30))):
        at = chance.randrange(len(raw))
        raw[at] = chance.randrange(256)
    if seed % 3 == 0:
        del raw[chance.randrange(len(raw)) :]
    if seed % 5 == 0:
        at = chance.randrange(len(raw) or 1)
        del raw[at : at + chance.randrange(200)]
    try:
        read(bytes(raw), f"a.{kind}")
    except Unreadable as error:
        assert "\n" not in str(error)


_SOUND = {kind: make(COASTER) for kind, make in MAKERS.items()}


@given(seed=st.integers(0, 10_000))
@settings(max_examples=25, deadline=None)
def test_damaged_parts(seed: int) -> None:
    """A .docx whose XML is damaged within its zip file is read or refused, and marked or refused."""
    from lint.documents.docxcomments import Comment, with_comments
    from lint.source import Span

    chance = random.Random(seed)
    parts = unzipped(_SOUND["docx"])
    name = chance.choice(
        [
            "word/document.xml",
            "word/styles.xml",
            "word/numbering.xml",
            "[Content_Types].xml",
            "_rels/.rels",
            "word/_rels/document.xml.rels",
        ]
    )
    data = bytearray(parts[name])
    for _ in range(3):
        at = chance.randrange(len(data))
        data[at : at + chance.randrange(6)] = bytes(chance.choices(b'<>/="&; wpr0', k=chance.randrange(6)))
    raw = zipped({**parts, name: bytes(data)})
    try:
        source = read(raw, "a.docx")
        with_comments(raw, source.origin, [Comment(Span(0, 5), ("x",))])
    except Unreadable as error:
        assert "\n" not in str(error)


def run(*arguments: str) -> subprocess.CompletedProcess:
    """The command, as a user runs it."""
    return subprocess.run([sys.executable, "-m", "lint", "check", *arguments], cwd=ROOT, capture_output=True, text=True)


def test_command_says_one_line(tmp_path) -> None:
    """A document that cannot be read gives one line on standard error and status 2; the others are checked all the same."""
    broken, sound = tmp_path / "broken.docx", tmp_path / "sound.docx"
    broken.write_bytes(as_docx(COASTER)[:500])
    sound.write_bytes(as_docx(COASTER))
    told = run(str(broken), str(sound))

    assert told.returncode == 2
    assert told.stderr.count("\n") == 1 and told.stderr.startswith(f"{broken}: is damaged")
    assert "the count printed is 25" in told.stdout


def test_zip_with_two_parts_of_one_name() -> None:
    """A package that holds a part twice is read without a warning."""
    out = io.BytesIO()
    with pytest.warns(UserWarning), zipfile.ZipFile(out, "w") as target:
        for name, data in unzipped(as_docx("x")).items():
            target.writestr(name, data)
        target.writestr("word/document.xml", unzipped(as_docx("y"))["word/document.xml"])

    assert read(out.getvalue(), "a.docx").text == "y\n"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Rnd 1: 6 sc in ring.\n" * 40_000, "is a text of 840,000 characters, and at most 100,000"),
        ("\n" * 1_000_000, "is a text of 1,000,000 characters"),
        ("a\n" * 6_000, "has 6,001 lines"),
        ("Rnd 1: 6 sc in ring.\n" * 2_501, "names 2,501 rows and rounds, and at most 2,500"),
        ("Hat\n" + "sc in next st, " * 2_000, "has a line of 30,000 characters (line 2)"),
        ("Hat\nRnd 1: " + "(" * 3_000, "has 3,000 characters without a space in line 2"),
        ("Hat\n\nRnd 1: " + "9" * 100 + " sc", "has a number of 100 figures in line 3"),
    ],
)
def test_texts_beyond_bounds(text: str, said: str) -> None:
    """What is longer than any pattern, line, word or number is refused in a sentence that says where."""
    assert refused(text.encode(), "a.txt").startswith(said)
    if len(text) < 40_000:
        assert said.split(" ")[0] in refused(as_docx(text), "a.docx")


def test_texts_within_bounds() -> None:
    """A book of patterns, a pattern in one paragraph, an address and a long number are read."""
    for text in ("Rnd 1: 6 sc in ring.\n" * 2_500, "sc in next st, " * 1_200, "http://x/" + "a" * 1_900, "9" * 60):
        assert read(text.encode(), "a.txt").text == text


def test_house_files_of_aliases() -> None:
    """Aliases that grow without end, or hold themselves, are refused with their place."""
    from helpers import rulebook

    from lint.house.loading import read_house
    from lint.rulefolder import RuleFileError

    laughs = "a0: &a0 [x]\n" + "".join(f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]\n" for n in range(1, 20))
    for text in (laughs, "x: &x [*x]\n", "x: !!python/object/apply:os.system [true]\n", "[" * 5_000, "x: " * 3_000):
        with pytest.raises(RuleFileError, match="^house.yaml:"):
            read_house(text, "house.yaml", rulebook())


WIDE = "Panel\nUS terms\n\nCh 401.\nRow 1: Sc in 2nd ch from hook and in each ch across. (400 sc)\n"


def test_rows_that_would_take_for_ever_are_not_recomputed() -> None:
    """A number that is a slip of the pen makes every row after it as wide: they are worked up to a bound, and told beyond."""
    wide = "Row 2: Ch 1, turn, 50 sc in each sc across.\n"  # a slip of the pen
    rows = check(
        WIDE + wide + "".join(f"Row {n}: Ch 1, turn, sc in each sc across.\n" for n in range(3, 60))
    ).ledger.rows
    assert rows[2].first.made.stitches == 20_000
    assert rows[-1].first.outcome.value == "not-recomputed"
    assert rows[-1].first.stopped_by == "the pattern has more stitches than are worked at once"


def test_a_filet_space_that_nobody_explains() -> None:
    """ "2 sps" where nothing says what they are made of is no stitch, and no chain that could be made longer."""
    words = "Row 2: Ch 6, turn, 2 sps, sc in next sc.\n"
    assert check(WIDE + words).ledger.rows[-1].first.outcome.value == "not-recomputed"


def test_a_row_wider_than_any() -> None:
    """More stitches than any row can hold: said so at once, and not worked."""
    row = check(WIDE + "Row 2: Ch 1, turn, 500 sc in each sc across.\n").ledger.rows[-1].first
    assert row.outcome.value == "not-recomputed"
    assert row.stopped_by == "more stitches than any row can hold"


def test_a_repeat_that_runs_on_far_beyond_its_row() -> None:
    """A number of times that is a slip of the pen: the row is told as it is, and the rest of it is not worked."""
    rows = check(
        WIDE + "Row 2: Ch 1, turn, *sc in next 2 sc, ch 2, skip next 2 sc; rep from * 5555 times. (200 sc)\n"
        "Row 3: Ch 1, turn, sc in each sc. (200 sc)\n"
    ).ledger.rows
    assert rows[-2].first.stopped_by == "the repeat is worked 5555 times, and the row below has places for 100"
    assert rows[-1].first.made.stitches == 200


def test_a_printed_count_of_more_spaces_than_there_are_chains_in_the_world() -> None:
    """A figure of a count is compared, and nothing of its size is made."""
    head = "Ring\nUS terms\n\nRnd 1: 12 sc in magic ring. (12 sc)\n"
    count = "(12 sc, 999999999999 ch-2 sps)"
    rows = check(
        head + f"Rnd 2: *Sc in next sc, ch 2; rep from * around, join with sl st in first sc. {count}\n"
    ).ledger.rows
    assert rows[-1].first.made.stitches == 12
    assert rows[-1].first.outcome.value == "differs"


@pytest.mark.parametrize("words", ["sc2000000tog", "3000000 sc tog"])
def test_more_stitches_together_than_any_hook_holds(words: str) -> None:
    """A decrease over millions of stitches is not worked, but told as not understood."""
    last = check(WIDE + f"Row 2: Ch 1, turn, {words}, sc in next 2 sc. (3 sc)\n").ledger.rows[-1].first
    assert last.outcome.value == "not-recomputed"
    assert words in last.stopped_by


@pytest.mark.parametrize(
    "line",
    [
        "Row 2: Sc across; " + "1; " * 6_000 + "\nRep Row 2\n",
        "Row 1" + " - 12" * 3_900,
        "Size S stops" + " , " * 6_000 + "x",
        "Size S stops" + " and then " * 1_900 + "x",
        "go to" + " " * 19_000 + "x. Size S stops.",
        "Rows 3 for" + " " * 19_000 + "x:",
        "You have 1" + " " * 18_000 + "x",
        "Row 2: " + "=" * 19_000,
        "Size S " + "-" * 19_000,
        "Row 2: " + "-, " * 6_300,
        "1 sc inc, " * 1_900,
        "work in " * 2_400 + "\nRow 2: Sc across.",
        "go back to the " * 1_200 + "\nRow 2: Sc across.",
        "12 (14, 16) " * 800,
    ],
)
def test_lines_full_of_one_sign(line: str) -> None:
    """What is tried at each sign of a long line looks no further than a sentence or a label is long."""
    head = "Hat\n\nSizes: S (M, L)\n\nUS terms\n\nHAT\nRow 1: Fsc 12 (14, 16), turn. (12, 14, 16)\n"
    begun = time.process_time()
    check(f"{head}{line}\n")
    assert time.process_time() - begun < 5
