"""Word documents: what is printed is what is read, and comments change nothing but themselves."""

from __future__ import annotations

import io
import re

import pytest
from made_documents import COASTER, as_docx, blank_docx, changed, found, read, saved, unzipped

from lint.documents.docx import TRACKED
from lint.documents.docxcomments import Comment, with_comments
from lint.inspection import inspect
from lint.reports.marked import as_docx as marked
from lint.source import Span

W = 'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"'


def opened(raw: bytes):
    """A document as python-docx opens it."""
    import docx

    return docx.Document(io.BytesIO(raw))


def document_of(body: str) -> bytes:
    """A .docx with this in its body, in WordprocessingML."""
    raw = saved(blank_docx())
    parts = unzipped(raw)
    old = re.search(r"<w:body>.*?(?=<w:sectPr)", parts["word/document.xml"].decode(), re.DOTALL)[0]
    return changed(raw, "word/document.xml", old, f"<w:body>{body}")


def numbered(levels: str, paragraphs: list[tuple[str, int]], more: str = "") -> bytes:
    """A .docx with one list: its levels, and paragraphs with the level of each."""
    body = "".join(
        f'<w:p><w:pPr><w:numPr><w:ilvl w:val="{level}"/><w:numId w:val="77"/></w:numPr></w:pPr><w:r><w:t>{words}</w:t></w:r></w:p>'
        for words, level in paragraphs
    )
    raw = document_of(body)
    listed = f'<w:abstractNum w:abstractNumId="77">{levels}</w:abstractNum>'
    text = unzipped(raw)["word/numbering.xml"].decode()
    end = f'{listed}<w:num w:numId="77"><w:abstractNumId w:val="77"/>{more}</w:num></w:numbering>'
    return changed(raw, "word/numbering.xml", text, text.replace("</w:numbering>", end))


def level(number: int, text: str, kind: str = "decimal", start: int = 1, more: str = "") -> str:
    """One level of a list."""
    return f'<w:lvl w:ilvl="{number}"><w:start w:val="{start}"/><w:numFmt w:val="{kind}"/>{more}<w:lvlText w:val="{text}"/></w:lvl>'


def lines(raw: bytes) -> list[str]:
    """The lines that are read out of a .docx, blank ones left out."""
    return [line for line in read(raw, "a.docx").text.splitlines() if line]


def test_automatic_numbers_are_written_out() -> None:
    """The numbers that Word prints before a list's paragraphs are read as text, deeper ones starting again."""
    raw = numbered(
        level(0, "Rnd %1:", start=3) + level(1, "%2)", "lowerLetter"),
        [("6 sc in ring", 0), ("first", 1), ("second", 1), ("inc around", 0), ("again", 1)],
    )

    assert lines(raw) == ["Rnd 3: 6 sc in ring", "a) first", "b) second", "Rnd 4: inc around", "a) again"]


def test_numbers_of_outer_levels() -> None:
    """A level's text can name the numbers of the levels around it."""
    raw = numbered(level(0, "%1.") + level(1, "%1.%2", "upperRoman"), [("x", 0), ("y", 1), ("z", 1)])

    assert lines(raw) == ["1. x", "1.I y", "1.II z"]


def test_a_list_can_start_anew() -> None:
    """A number to start with, given where the list is used, overrules the list's own."""
    more = '<w:lvlOverride w:ilvl="0"><w:startOverride w:val="9"/></w:lvlOverride>'

    assert lines(numbered(level(0, "%1."), [("x", 0), ("y", 0)], more)) == ["9. x", "10. y"]


def test_bullets_are_never_stars() -> None:
    """A bullet that is printed as a star is read as a bullet: a star would begin a repeat."""
    assert lines(numbered(level(0, "*", "bullet"), [("DK yarn", 0)])) == ["• DK yarn"]


def test_rows_numbered_by_word_are_checked() -> None:
    """A pattern whose rounds carry automatic numbers is recomputed, and its wrong count is found."""
    raw = numbered(
        level(0, "Rnd %1:"),
        [("6 sc in a magic ring. (6)", 0), ("2 sc in each st around. (12)", 0), ("Sc in each st around. (13)", 0)],
    )

    assert ("count-differs", "correction", "13") in found(read(raw, "a.docx"))


def test_tracked_changes_are_accepted_and_said() -> None:
    """What was put in is read, what was struck out is not, and the report says so."""
    raw = document_of(
        "<w:p><w:r><w:t xml:space='preserve'>Rnd 1: </w:t></w:r><w:del w:id='1' w:author='a'><w:r><w:delText>5</w:delText></w:r></w:del>"
        "<w:ins w:id='2' w:author='a'><w:r><w:t>6</w:t></w:r></w:ins><w:r><w:t xml:space='preserve'> sc in ring. (6)</w:t></w:r></w:p>"
    )
    source = read(raw, "a.docx")

    assert source.text == "Rnd 1: 6 sc in ring. (6)\n"
    assert source.origin.notes == (TRACKED,)
    assert read(as_docx(COASTER), "a.docx").origin.notes == ()


def test_struck_out_ends_and_rows() -> None:
    """A paragraph whose end was struck out runs on, moved words stand once, a struck row of a table is gone."""
    raw = document_of(
        "<w:p><w:pPr><w:rPr><w:del w:id='1' w:author='a'/></w:rPr></w:pPr><w:r><w:t xml:space='preserve'>Rnd 1: 6 sc </w:t></w:r></w:p>"
        "<w:p><w:r><w:t>in ring.</w:t></w:r><w:moveFrom w:id='3' w:author='a'><w:r><w:t>gone</w:t></w:r></w:moveFrom></w:p>"
        "<w:p><w:moveTo w:id='4' w:author='a'><w:r><w:t>gone</w:t></w:r></w:moveTo></w:p>"
        "<w:tbl><w:tr><w:trPr><w:del w:id='2' w:author='a'/></w:trPr><w:tc><w:p><w:r><w:t>out</w:t></w:r></w:p></w:tc></w:tr>"
        "<w:tr><w:tc><w:p><w:r><w:t>in</w:t></w:r></w:p></w:tc></w:tr></w:tbl>"
    )

    assert lines(raw) == ["Rnd 1: 6 sc in ring.", "gone", "in"]


def tabled(rows: list[tuple[str, ...]]) -> bytes:
    """A .docx with a title and one table."""
    document = blank_docx()
    document.add_paragraph("Brimble Coaster")
    table = document.add_table(rows=0, cols=len(rows[0]))
    for cells in rows:
        for cell, words in zip(table.add_row().cells, cells, strict=True):
            cell.text = words
    return saved(document)


def test_tables_read_as_rows() -> None:
    """A table of rounds is read row by row, its wrong count is found at its words, and its place is told."""
    rows = [
        ("Rnd", "Instruction", "Count"),
        ("1", "6 sc in a magic ring", "6"),
        ("2", "2 sc in each st around", "12"),
        ("3", "[Sc in next st, 2 sc in next st] 6 times", "18"),
        ("4", "[Sc in next 2 sts, 2 sc in next st] 6 times", "25"),
    ]
    source = read(tabled(rows), "a.docx")

    assert source.text.splitlines()[2:5] == [
        "Rnd | Instruction | Count",
        "Rnd 1: 6 sc in a magic ring (6)",
        "Rnd 2: 2 sc in each st around (12)",
    ]
    assert [one for one in found(source) if one[0] == "count-differs"] == [("count-differs", "correction", "25")]
    assert source.place(source.text.index("25")) == "table 1, row 5"
    assert commented(marked(inspect(source), tabled(rows)))[-1][0] == "25"


@pytest.mark.parametrize(
    ("head", "row", "read_as"),
    [
        (("Row", "Count", "Instruction"), ("1", "6", "Ch 7, sc across"), "Row 1: Ch 7, sc across (6)"),
        (("Row #", "Color", "Directions", "Sts"), ("2-4", "B", "Sc across", "6"), "Row 2-4 (B): Sc across (6)"),
        (("Round", "Stitches", "Total"), ("R2", "inc x6", "12 sts"), "R2: inc x6 (12 sts)"),
        (("Rnd", "Pattern"), ("Rnd 2:", "inc around"), "Rnd 2: inc around"),
        (("Rnd", "Instruction", "Count"), ("3", "sc around", "[12]"), "Rnd 3: sc around [12]"),
        (("Rnd", "Instruction", "Remark"), ("3", "sc around", "Tight!"), "3 | sc around | Tight!"),
        (("Size", "Chest"), ("S", "81 cm"), "S | 81 cm"),
    ],
)
def test_columns_in_any_order(head: tuple[str, ...], row: tuple[str, ...], read_as: str) -> None:
    """A table whose head names its columns is read in the order of words; any other is left as it stands."""
    assert lines(tabled([head, row]))[-1] == read_as


def test_tables_for_layout_read_cell_by_cell() -> None:
    """A table that only sets passages side by side is read like columns."""
    document = blank_docx()
    cells = document.add_table(rows=1, cols=2).rows[0].cells
    cells[0].text = "Materials\nDK yarn"
    cells[0].add_paragraph("4 mm hook")
    cells[1].text = "Rnd 1: 6 sc in ring. (6)"
    cells[1].add_paragraph("Rnd 2: 2 sc in each st. (12)")

    assert lines(saved(document)) == [
        "Materials", "DK yarn", "4 mm hook", "Rnd 1: 6 sc in ring. (6)", "Rnd 2: 2 sc in each st. (12)",
    ]  # fmt: skip


def test_merged_cells_are_read_once() -> None:
    """A cell that runs over several columns or rows gives its words once."""
    document = blank_docx()
    table = document.add_table(rows=2, cols=3)
    table.cell(0, 0).merge(table.cell(0, 1)).text = "wide"
    table.cell(0, 2).merge(table.cell(1, 2)).text = "high"
    table.cell(1, 0).text = "a"

    assert lines(saved(document)) == ["wide | high", "a"]


def test_what_is_not_printed_is_not_read() -> None:
    """Hidden words, field codes and soft hyphens are left out; breaks, tabs and hard hyphens are read as printed."""
    raw = document_of(
        "<w:p><w:r><w:rPr><w:vanish/></w:rPr><w:t>secret</w:t></w:r><w:r><w:t>sl</w:t><w:noBreakHyphen/><w:t>st</w:t><w:tab/>"
        "<w:t>cro</w:t><w:softHyphen/><w:t>chet</w:t><w:br/><w:t>next</w:t></w:r>"
        "<w:r><w:fldChar w:fldCharType='begin'/></w:r><w:r><w:instrText>PAGE</w:instrText></w:r></w:p>"
    )

    assert lines(raw) == ["sl-st\tcrochet", "next"]


def test_raised_figures_do_not_stick() -> None:
    """A raised fraction after a figure is a number of its own; a raised ending of a word is not."""
    high = "<w:rPr><w:vertAlign w:val='superscript'/></w:rPr>"
    raw = document_of(
        f"<w:p><w:r><w:t>1</w:t></w:r><w:r>{high}<w:t>1</w:t></w:r><w:r><w:t>/2 in, the 2</w:t></w:r><w:r>{high}<w:t>nd</w:t></w:r></w:p>"
    )

    assert lines(raw) == ["1 1/2 in, the 2nd"]


def test_links_controls_and_boxes_are_read() -> None:
    """Words in links, content controls and text boxes are read, those of a box once."""
    box = "<w:txbxContent><w:p><w:r><w:t>In a box</w:t></w:r></w:p></w:txbxContent>"
    mc = 'xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006"'
    raw = document_of(
        "<w:p><w:hyperlink><w:r><w:t>A link</w:t></w:r></w:hyperlink><w:r>"
        f"<mc:AlternateContent {mc}><mc:Choice><w:drawing>{box}</w:drawing></mc:Choice><mc:Fallback><w:pict>{box}</w:pict></mc:Fallback></mc:AlternateContent>"
        "</w:r></w:p><w:sdt><w:sdtContent><w:p><w:r><w:t>A control</w:t></w:r></w:p></w:sdtContent></w:sdt>"
    )

    assert lines(raw) == ["A link", "In a box", "A control"]


# comments ----------------------------------------------------------------------------------------


def styled() -> bytes:
    """A pattern whose wrong count stands across a bold and a plain run."""
    document = blank_docx()
    document.add_heading("Brimble Coaster", 1)
    document.add_paragraph("Rnd 1: 6 sc in a magic ring. (6)")
    paragraph = document.add_paragraph("Rnd 2: 2 sc in ")
    paragraph.add_run("each st around").italic = True
    paragraph.add_run(" & turn. (1").bold = True
    paragraph.add_run("3)")
    return saved(document)


def runs(raw: bytes) -> list[list[tuple[str, bool | None, bool | None]]]:
    """The text of every paragraph with its formatting, neighbours of one formatting taken together."""
    paragraphs = []
    for paragraph in opened(raw).paragraphs:
        joined: list[tuple[str, bool | None, bool | None]] = []
        for run in paragraph.runs:
            if joined and joined[-1][1:] == (run.bold, run.italic):
                joined[-1] = (joined[-1][0] + run.text, run.bold, run.italic)
            elif run.text:
                joined.append((run.text, run.bold, run.italic))
        paragraphs.append(joined)
    return paragraphs


def commented(raw: bytes) -> list[tuple[str, str]]:
    """Every comment with the words that it is on."""
    document = opened(raw)
    text = document.element.xml
    told = []
    for comment in document.comments:
        number = comment.comment_id
        between = re.search(
            rf'<w:commentRangeStart[^>]*w:id="{number}"[^>]*/>(.*?)<w:commentRangeEnd[^>]*w:id="{number}"',
            text,
            re.DOTALL,
        )[1]
        told.append(("".join(re.findall(r"<w:t(?: [^>]*)?>([^<]*)</w:t>", between)), comment.text))
    return told


def test_a_comment_stands_at_each_finding() -> None:
    """The marked document has a comment at the words of every finding, though they cross a change of type."""
    raw = styled()
    report = inspect(read(raw, "a.docx"))
    told = commented(marked(report, raw))

    assert [words for words, _ in told] == [
        report.source.slice(one.span) for one in sorted(report.findings, key=lambda one: one.span.start)
    ]
    assert any(words == "13" and "make 12 sts, but the count printed is 13" in text for words, text in told)
    assert {comment.author for comment in opened(marked(report, raw)).comments} == {"frogproof"}


def test_text_and_formatting_stay() -> None:
    """A marked document has the same words in the same type as before."""
    raw = styled()

    assert runs(marked(inspect(read(raw, "a.docx")), raw)) == runs(raw)


def without_marks(xml: str) -> str:
    """A document's XML with everything taken out that comments put in."""
    xml = re.sub(r'<w:commentRange(?:Start|End) w:id="\d+"/>', "", xml)
    return re.sub(r'<w:r><w:commentReference w:id="\d+"/></w:r>', "", xml)


def test_every_other_byte_is_the_designers() -> None:
    """Every other part is the same byte for byte, and so is the text's, runs that were cut put together again."""
    raw = as_docx(COASTER)
    after, before = unzipped(marked(inspect(read(raw, "a.docx")), raw)), unzipped(raw)
    grown = {"word/document.xml", "word/comments.xml", "[Content_Types].xml", "word/_rels/document.xml.rels"}

    assert {name for name in after if after[name] != before.get(name)} <= grown
    assert list(before) == [name for name in after if name in before]
    joined = without_marks(after["word/document.xml"].decode())
    joined = joined.replace('</w:t></w:r><w:r><w:t xml:space="preserve">', "").replace(' xml:space="preserve"', "")
    assert joined == before["word/document.xml"].decode().replace(' xml:space="preserve"', "")


def test_comments_of_others_stay() -> None:
    """A document with an editor's comments keeps them, and the new ones have numbers of their own."""
    document = opened(styled())
    document.add_comment(document.paragraphs[1].runs, text="Lovely!", author="Ed", initials="E")
    raw = saved(document)
    told = commented(marked(inspect(read(raw, "a.docx")), raw))

    assert told[0] == ("Rnd 1: 6 sc in a magic ring. (6)", "Lovely!")
    assert len(told) > 2


@pytest.mark.parametrize(
    "words", ["Rnd 2", "each", " & ", "each st around & turn", "Coaster\nRnd 1", "(13)", "3)", "B", "Brimble Coaster"]
)
def test_comments_on_any_words(words: str) -> None:
    """A comment stands on exactly the words it is meant for, wherever runs and paragraphs begin and end."""
    raw = styled()
    source = read(raw, "a.docx")
    at = source.text.index(words)
    marked_up = with_comments(raw, source.origin, [Comment(Span(at, at + len(words)), ("Is this so?",))])

    assert commented(marked_up) == [(words.replace("\n", "").replace("&", "&amp;"), "Is this so?")]
    assert runs(marked_up) == runs(raw)


def test_comments_on_top_of_each_other() -> None:
    """Comments may lie in each other, touch, cross and share their ends."""
    raw = styled()
    source = read(raw, "a.docx")
    at = source.text.index("each st around")
    spans = [Span(at, at + 14), Span(at, at + 4), Span(at + 4, at + 7), Span(at + 2, at + 20), Span(at, at + 14)]
    marked_up = with_comments(raw, source.origin, [Comment(span, (str(number),)) for number, span in enumerate(spans)])

    assert commented(marked_up) == [
        (source.slice(span).replace("&", "&amp;"), str(number)) for number, span in enumerate(spans)
    ]
    assert runs(marked_up) == runs(raw)


def test_comments_where_word_takes_none() -> None:
    """A finding on an automatic number or in a text box is told at the nearest words that can bear a comment."""
    raw = numbered(level(0, "Rnd %1:"), [("6 sc in ring.", 0)])
    source = read(raw, "a.docx")

    assert commented(with_comments(raw, source.origin, [Comment(Span(0, 5), ("x",))])) == [("6 sc in ring.", "x")]


def test_hostile_words_stay_words() -> None:
    """Markup and control characters in a comment are shown, not obeyed."""
    raw = styled()
    source = read(raw, "a.docx")
    text = "</w:t><w:t>\x00\x0b & \ud800"
    marked_up = with_comments(raw, source.origin, [Comment(Span(0, 7), (text,))])

    assert opened(marked_up).comments.get(0).text == "</w:t><w:t>\ufffd\ufffd & \ufffd"
