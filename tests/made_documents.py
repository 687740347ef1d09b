"""Makes documents of every kind out of a pattern's text, as designers' programs write them."""

from __future__ import annotations

import io
import zipfile
from functools import lru_cache
from html import escape

from lint.documents.registry import read_document
from lint.inspection import inspect
from lint.source import SourceText


def read(raw: bytes, name: str) -> SourceText:
    """The text of a document."""
    return read_document(raw, name)


@lru_cache(maxsize=32)
def found_in_text(text: str) -> list[tuple[str, str, str]]:
    """The findings of a plain text."""
    return found(SourceText(text))


def found(source: SourceText) -> list[tuple[str, str, str]]:
    """Rule, weight and words of every finding in a text."""
    report = inspect(source, workings=False)
    return sorted((one.rule, one.weight.value, " ".join(source.slice(one.span).split())) for one in report.findings)


def saved(document) -> bytes:
    """The bytes of a python-docx document."""
    out = io.BytesIO()
    document.save(out)
    return out.getvalue()


def blank_docx():
    """A Word document with nothing in it, its paragraphs without space between them."""
    import docx
    from docx.shared import Pt

    document = docx.Document()
    document.styles["Normal"].paragraph_format.space_after = Pt(0)
    return document


def as_docx(text: str) -> bytes:
    """A .docx of one paragraph a line."""
    document = blank_docx()
    for line in text.splitlines():
        document.add_paragraph(line)
    return saved(document)


def as_headed_docx(text: str) -> bytes:
    """A .docx without empty paragraphs: what stands after a blank line and before rows or lists is a bold heading."""
    document = blank_docx()
    lines = text.splitlines()
    for number, line in enumerate(lines):
        set_off = number and not lines[number - 1].strip()
        paragraph = document.add_paragraph() if line.strip() else None
        if paragraph is not None:
            short = len(line.split()) <= 6 and ":" not in line and not line.rstrip().endswith((".", ","))
            paragraph.add_run(line).bold = bool(set_off and short)
            paragraph.paragraph_format.space_before = 12 * 12700 if set_off else 0
    return saved(document)


ODT_HEAD = (
    '<office:document-content xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" '
    'xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" '
    'xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" '
    'xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" '
    'xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0" office:version="1.3">'
)


def odt_of(body: str, styles: str = "") -> bytes:
    """An .odt with this body."""
    content = f"{ODT_HEAD}<office:automatic-styles>{styles}</office:automatic-styles><office:body><office:text>{body}</office:text></office:body></office:document-content>"
    return zipped({"mimetype": b"application/vnd.oasis.opendocument.text", "content.xml": content.encode()})


def as_odt(text: str) -> bytes:
    """An .odt of one paragraph a line, runs of spaces written as the format writes them."""

    def line(words: str) -> str:
        head, *rest = escape(words).split("  ")
        return head + "".join('<text:s text:c="2"/>' + part for part in rest)

    return odt_of("".join(f"<text:p>{line(words)}</text:p>" for words in text.splitlines()))


def as_rtf(text: str) -> bytes:
    """An .rtf of one paragraph a line."""

    def sign(one: str) -> str:
        if one in "\\{}":
            return "\\" + one
        return one if one < "\x80" else f"\\u{ord(one) - 0x10000 if ord(one) > 0x7FFF else ord(one)}?"

    lines = "\\par\n".join("".join(map(sign, line)) for line in text.splitlines())
    return (
        "{\\rtf1\\ansi\\ansicpg1252\\deff0{\\fonttbl{\\f0\\fswiss\\fcharset0 Arial;}}\\pard " + lines + "\\par}"
    ).encode()


def as_html(text: str) -> bytes:
    """A web page of one paragraph a passage, its lines apart by breaks."""
    passages = "".join(
        f"<p>{'<br>'.join(escape(line) for line in passage.splitlines())}</p>\n" for passage in text.split("\n\n")
    )
    return f"<!DOCTYPE html><html><head><meta charset='utf-8'><title>A page</title></head><body>{passages}</body></html>".encode()


def as_pdf(text: str, **settings) -> bytes:
    """A .pdf as a word processor prints it: lines wrapped at the page's edge, pages numbered."""
    from reportlab.lib.styles import ParagraphStyle
    from reportlab.platypus import Paragraph, Spacer

    style = ParagraphStyle("body", fontName="Helvetica", fontSize=11, leading=14)
    story = [Paragraph(escape(line), style) if line.strip() else Spacer(1, 14) for line in text.splitlines()]
    return printed(story, **settings)


def printed(story: list, columns: int = 1, head: str = "") -> bytes:
    """A .pdf of a story of reportlab, in one or two columns, with a running head and page numbers."""
    from reportlab.lib.pagesizes import A4
    from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate

    def decorate(canvas, document) -> None:
        canvas.setFont("Helvetica", 9)
        canvas.drawString(70, 805, head)
        canvas.drawCentredString(A4[0] / 2, 30, str(document.page))

    out = io.BytesIO()
    document = BaseDocTemplate(out, pagesize=A4, leftMargin=70, rightMargin=70, topMargin=60, bottomMargin=60)
    gap = 24
    width = (A4[0] - 140 - gap * (columns - 1)) / columns
    frames = [
        Frame(70 + at * (width + gap), 60, width, A4[1] - 120, leftPadding=0, rightPadding=0) for at in range(columns)
    ]
    document.addPageTemplates(PageTemplate(frames=frames, onPage=decorate))
    document.build(story)
    return out.getvalue()


def zipped(parts: dict[str, bytes]) -> bytes:
    """A zip file."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as target:
        for name, data in parts.items():
            target.writestr(name, data)
    return out.getvalue()


def unzipped(raw: bytes) -> dict[str, bytes]:
    """The parts of a zip file by their names, in order."""
    with zipfile.ZipFile(io.BytesIO(raw)) as package:
        return {name: package.read(name) for name in package.namelist()}


def changed(raw: bytes, part: str, old: str, new: str) -> bytes:
    """A zip file with words of one part changed."""
    parts = unzipped(raw)
    assert old in parts[part].decode()
    parts[part] = parts[part].decode().replace(old, new).encode()
    return zipped(parts)


MAKERS = {
    "docx": as_docx,
    "odt": as_odt,
    "rtf": as_rtf,
    "html": as_html,
    "pdf": as_pdf,
}

COASTER = """Brimble Coaster

Worked in rounds. US terms.

Materials
DK weight yarn (3), 20 yd / 18 m; 4 mm (US G-6) hook

Gauge
Rnds 1 to 3 measure 2 in / 5 cm across

Finished size
4 in / 10 cm across

Abbreviations
ch: chain
rnd(s): round(s)
sc: single crochet
sl st: slip stitch
st(s): stitch(es)

Instructions

Ch 4, join with sl st in first ch to form a ring.

Rnd 1: Ch 1, 6 sc in ring, join with sl st in first sc. (6)
Rnd 2: Ch 1, 2 sc in each st around, join with sl st in first sc. (12)
Rnd 3: Ch 1, *sc in next st, 2 sc in next st; rep from * around, join with sl st in first sc. (18)
Rnd 4: Ch 1, *sc in next 2 sts, 2 sc in next st; rep from * around, join with sl st in first sc. (25)

Fasten off.
"""
