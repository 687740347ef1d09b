"""OpenDocument, RTF and web pages: lists with their numbers, tables, tracked changes, and what is not printed."""

from __future__ import annotations

import pytest
from made_documents import COASTER, as_rtf, found, odt_of, read

from lint.documents import odt, rtf, webpage
from lint.documents.unreadable import Unreadable


def odt_lines(body: str, styles: str = "") -> list[str]:
    """The lines that are read out of an .odt, blank ones left out."""
    return [line for line in read(odt_of(body, styles), "a.odt").text.splitlines() if line]


def rtf_lines(body: str) -> list[str]:
    """The lines that are read out of an .rtf, blank ones left out."""
    head = "{\\rtf1\\ansi\\ansicpg1252\\deff0{\\fonttbl{\\f0\\fcharset0 Arial;}}{\\colortbl;\\red0;}{\\stylesheet{\\s0 Normal;}}"
    return [line for line in read((head + body + "}").encode("latin-1"), "a.rtf").text.splitlines() if line]


def page_lines(body: str) -> list[str]:
    """The lines that are read out of a web page, blank ones left out."""
    raw = f"<!DOCTYPE html><html><head><title>t</title></head><body>{body}</body></html>".encode()
    return [line for line in read(raw, "a.html").text.splitlines() if line]


# OpenDocument ------------------------------------------------------------------------------------

LIST_STYLE = (
    '<text:list-style style:name="L"><text:list-level-style-number text:level="1" style:num-format="1" style:num-prefix="Rnd " '
    'style:num-suffix=":" text:start-value="2"/><text:list-level-style-number text:level="2" style:num-format="a" style:num-suffix=")"/>'
    '</text:list-style><text:list-style style:name="B"><text:list-level-style-bullet text:level="1" text:bullet-char="*"/></text:list-style>'
)


def item(words: str, inner: str = "", more: str = "") -> str:
    """An item of an OpenDocument list."""
    return f"<text:list-item{more}><text:p>{words}</text:p>{inner}</text:list-item>"


NINE = ' text:start-value="9"'


def test_odt_numbers() -> None:
    """Lists are numbered as printed: prefix and suffix, deeper levels, going on after an interruption."""
    inner = f"<text:list>{item('x')}{item('y')}</text:list>"
    body = (
        f'<text:list text:style-name="L">{item("6 sc", inner)}{item("inc", inner)}</text:list><text:p>Stop.</text:p>'
        f'<text:list text:style-name="L" text:continue-numbering="true">{item("sc")}{item("dec", "", NINE)}</text:list>'
        f'<text:list text:style-name="B">{item("yarn")}</text:list>'
    )

    assert odt_lines(body, LIST_STYLE) == [
        "Rnd 2: 6 sc", "a) x", "b) y", "Rnd 3: inc", "a) x", "b) y", "Stop.", "Rnd 4: sc", "Rnd 9: dec", "• yarn",
    ]  # fmt: skip


def test_odt_words() -> None:
    """Spaces, tabs, breaks, spans and headings read as printed; notes, changes and fields of the page do not stand in the way."""
    body = (
        "<text:tracked-changes><text:changed-region><text:deletion><text:p>old</text:p></text:deletion></text:changed-region></text:tracked-changes>"
        '<text:h>Brimble</text:h><text:p>ch<text:s text:c="3"/>chain<text:tab/>x<text:line-break/>1<text:span text:style-name="S">1</text:span>/2'
        '<text:change text:change-id="1"/> in<text:note><text:note-body><text:p>small print</text:p></text:note-body></text:note></text:p>'
    )
    styles = '<style:style style:name="S" style:family="text"><style:text-properties style:text-position="super 58%"/></style:style>'
    source = read(odt_of(body, styles), "a.odt")

    assert source.text == "Brimble\nch   chain\tx\n1 1/2 in\n\nNotes\nsmall print\n"
    assert source.origin.notes == (odt.FOOTNOTES, odt.TRACKED)


def test_odt_tables() -> None:
    """A table is read row by row, with its place."""
    row = "".join(f"<table:table-cell><text:p>{words}</text:p></table:table-cell>" for words in ("1", "6 sc", "6"))
    body = f"<text:p>A</text:p><table:table><table:table-header-rows><table:table-row>{row}</table:table-row></table:table-header-rows><table:table-row>{row}</table:table-row></table:table>"
    source = read(odt_of(body), "a.odt")

    assert source.text == "A\n\n1 | 6 sc | 6\n1 | 6 sc | 6\n"
    assert source.place(len(source.text) - 2) == "table 1, row 2"


# RTF ---------------------------------------------------------------------------------------------


def test_rtf_words() -> None:
    """Signs in every notation read right; tables of fonts, pictures, notes and headers are left out."""
    body = (
        "{\\header Page head\\par}\\pard Hook \\'bd, 4\\u176 ?, \\ldblquote x\\rdblquote , \\{y\\}, 2\\~mm, sl\\_st\\par "
        '{\\pict\\pngblip 89504e47}{\\*\\unknown gone}{\\field{\\*\\fldinst HYPERLINK "x"}{\\fldrslt a link}}\\line next\\par'
    )

    assert rtf_lines(body) == ["Hook ½, 4°, “x”, {y}, 2\xa0mm, sl‑st", "a link", "next"]


def test_rtf_tracked_changes() -> None:
    """What was struck out is not read, what was put in is, hidden words are not, and the report says so."""
    body = "\\pard Rnd 1: {\\deleted 5}{\\revised 6} sc in ring. (6){\\v secret}\\par"
    raw = ("{\\rtf1\\ansi " + body + "}").encode()
    source = read(raw, "a.rtf")

    assert source.text == "Rnd 1: 6 sc in ring. (6)\n"
    assert source.origin.notes == (rtf.TRACKED,)


def test_rtf_tables_numbers_and_fractions() -> None:
    """Rows of a table stay rows, numbers of lists are read as they are written, raised figures do not stick."""
    table = "\\trowd\\pard\\intbl 1\\cell 6 sc in\\par ring\\cell 6\\cell\\row\\trowd\\pard\\intbl 2\\cell inc\\cell 12\\cell\\row"
    body = table + "\\pard{\\listtext\\pard\\plain 3.\\tab}sc around\\par 1{\\super 1}/2 in, 2{\\super nd}\\par"

    assert rtf_lines(body) == ["1 | 6 sc in ring | 6", "2 | inc | 12", "3.\tsc around", "1 1/2 in, 2nd"]


# web pages ---------------------------------------------------------------------------------------


def test_html_lists_and_tables() -> None:
    """Lists carry their numbers, tables are read row by row, end tags that are left out do no harm."""
    body = (
        "<ol start=3 type=a><li>x<li value=7>y<ol><li>in</ol></ol><ul><li>* z</ul>"
        "<table><tr><th>Rnd<th>Instruction<tr><td>1<td>6 sc in<br>ring</table>"
    )

    assert page_lines(body) == ["c. x", "g. y", "1. in", "• * z", "Rnd | Instruction", "Rnd 1: 6 sc in ring"]


def test_html_leaves_out_what_is_not_the_text() -> None:
    """Scripts, styles, menus, forms and what is hidden are left out; words marked as deleted too, and that is said."""
    body = (
        "<nav>Home</nav><script>var x='Rnd 1: 9 sc'</script><style>p{}</style><p hidden>no</p><p style='display: none'>no</p>"
        "<p>Rnd&nbsp;1: <del>5</del> <ins>6</ins>\n  sc in <b>ring</b>.</p><form>Your e-mail</form><!-- no -->"
    )
    source = read(f"<html><body>{body}</body></html>".encode(), "a.html")

    assert source.text == "Rnd\xa01: 6 sc in ring.\n"
    assert source.origin.notes == (webpage.DELETED,)


def test_html_keeps_what_is_set_as_typed() -> None:
    """Lines of a pre-formatted passage stay lines, and fractions with a raised figure stay apart."""
    assert page_lines("<pre>Rnd 1: 6 sc\nRnd 2:  inc</pre><p>1<sup>1</sup>/2</p>") == [
        "Rnd 1: 6 sc",
        "Rnd 2:  inc",
        "1 1/2",
    ]


@pytest.mark.parametrize("encoding", ["utf-8", "iso-8859-1", "utf-16"])
def test_html_encodings(encoding: str) -> None:
    """A page is read in the encoding that it names, or that its first bytes show."""
    raw = f"<html><head><meta charset='{encoding}'></head><body><p>½ crème</p></body></html>".encode(encoding)

    assert read(raw, "a.html").text == "½ crème\n"


def test_headings_name_the_pieces() -> None:
    """Headings of a page make the pieces of the pattern."""
    from lint.inspection import inspect

    rows = "<p>Row 1: Ch 6, sc in 2nd ch from hook and in each ch across. (5)</p><p>Row 2: Ch 1, turn, sc in each st across. (5)</p>"
    raw = f"<html><body><h1>Brimble</h1><h2>Left Lower Side</h2>{rows}<p><b>Right Lower Side</b></p>{rows}</body></html>".encode()

    assert [part.name for part in inspect(read(raw, "a.html")).pattern.parts] == ["Left Lower Side", "Right Lower Side"]


def test_rtf_of_a_pattern_is_checked() -> None:
    """A pattern in RTF has its wrong count found at its words."""
    assert ("count-differs", "correction", "25") in found(read(as_rtf(COASTER), "a.rtf"))


@pytest.mark.parametrize(("raw", "name"), [(b"{\\rtf1}", "a.rtf"), (b"<html></html>", "a.html"), (odt_of(""), "a.odt")])
def test_documents_without_words(raw: bytes, name: str) -> None:
    """A document with no words in it is said to have none."""
    with pytest.raises(Unreadable, match="has no text in it"):
        read(raw, name)
