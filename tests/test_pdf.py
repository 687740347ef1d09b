"""PDFs: columns, wrapped lines, hyphens, running heads and tables come out as a reader sees them; notes are put in."""

from __future__ import annotations

import io

import pytest
from helpers import DEMO
from made_documents import COASTER, as_pdf, found, found_in_text, printed, read
from reportlab.lib import colors
from reportlab.lib.pagesizes import A4
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.pdfgen import canvas
from reportlab.platypus import FrameBreak, PageBreak, Paragraph, Spacer, Table, TableStyle

from lint.documents.flow import RUNNING
from lint.documents.pdfnotes import Note, with_notes
from lint.documents.unreadable import Unreadable
from lint.inspection import inspect
from lint.reports.marked import as_pdf as marked
from lint.source import Span

BODY = ParagraphStyle("body", fontName="Helvetica", fontSize=10, leading=12.5)
HEAD = ParagraphStyle("head", fontName="Helvetica-Bold", fontSize=14, leading=18, spaceBefore=12)


def paragraphs(text: str) -> list:
    """A story of one paragraph a line."""
    return [Paragraph(line, BODY) if line.strip() else Spacer(1, 12.5) for line in text.splitlines()]


def drawn(*lines: tuple[float, float, str], size: float = 11) -> bytes:
    """A page with words where they are put: left edge and baseline in points."""
    out = io.BytesIO()
    page = canvas.Canvas(out, pagesize=A4)
    page.setFont("Helvetica", size)
    for left, base, words in lines:
        page.drawString(left, base, words)
    page.save()
    return out.getvalue()


def text_of(raw: bytes) -> str:
    """The text of a PDF."""
    return read(raw, "a.pdf").text


@pytest.mark.parametrize("name", ["pockle-the-mole.txt", "plumstone-coaster-set.txt"])
def test_two_columns_have_the_findings_of_the_text(name: str) -> None:
    """A pattern printed in two narrow columns is read column by column: its findings are those of the text."""
    text = (DEMO / name).read_text(encoding="utf-8")

    assert found(read(printed(paragraphs(text), columns=2), "a.pdf")) == found_in_text(text)


def test_columns_in_reading_order() -> None:
    """A title over two columns comes first, then the left column to its end, then the right."""
    left = [f"Rnd {number}: Sc in each st around, join with sl st." for number in range(1, 9)]
    right = [f"Row {number}: Dc in each st across, turn." for number in range(1, 9)]
    lines = [(70, 780, "BRIMBLE COASTER AND ITS MATCHING BAG, A PATTERN IN TWO PIECES FOR EVERYONE")]
    for at, (one, other) in enumerate(zip(left, right, strict=True)):
        lines += [(70, 740 - 14 * at, one), (320, 740 - 14 * at, other)]

    assert text_of(drawn(*lines)).replace("\n\n", "\n").splitlines() == [lines[0][2], *left, *right]


def test_wrapped_lines_are_joined() -> None:
    """Lines that the page's edge has broken are one line again, also over the end of a page."""
    row = "Rnd 5: *Sc in next 7 sts, 2 sc in next st, ch 2, skip next 2 sts, hdc in next st; rep from * around, join with sl st in first sc."
    text = "\n".join([*(f"Note {number}. Keep the tension even." for number in range(1, 60)), row, "Fasten off."])

    assert row in text_of(printed(paragraphs(text))).splitlines()
    assert row in text_of(printed(paragraphs(text), columns=2)).splitlines()


def test_a_row_over_two_pages() -> None:
    """A row that runs over the end of a page is one line, and each of its words is told with its own page."""
    row = "Rnd 5: *Sc in next 7 sts, 2 sc in next st, ch 2, skip next 2 sts, hdc in next st; rep from * around, skip the last 2 sts, then turn the work over and go back along the same side of it, ch 1, and sc in each st to the mark; join with a sl st"
    above = Spacer(1, A4[1] - 120 - 12 - 2.5 * 12.5)
    source = read(printed([above, Paragraph(row, BODY), Paragraph("Fasten off.", BODY)]), "a.pdf")

    assert row in source.text.splitlines()
    assert [source.place(source.text.index(words)) for words in ("Rnd 5", "sl st", "Fasten")] == [
        "page 1",
        "page 2",
        "page 2",
    ]


@pytest.mark.parametrize(
    ("above", "below", "joined"),
    [
        ("Work the increas-", "es evenly spaced around", "Work the increases evenly spaced around"),
        ("*dc in next ch-", "2 sp, ch 1; rep from *", "*dc in next ch-2 sp, ch 1; rep from *"),
        ("join with a sl-", "st in the first stitch of it", "join with a sl-st in the first stitch of it"),
        ("work a V-", "stitch in the next space", "work a V-stitch in the next space"),
        ("work rows 12-", "14 as you did before them", "work rows 12-14 as you did before them"),
        ("use a multi-", "coloured yarn for the edge", "use a multi-coloured yarn for the edge"),
    ],
)
def test_hyphens_at_line_ends(above: str, below: str, joined: str) -> None:
    """The hyphen of a divided word goes; that of ch-2, sl-st and their like stays."""
    filler = "This is a long line of the notes that reaches the right edge of the text block"
    pad = "and then and then and then and then and then and then and then and so, now: "
    lines = [(70, 700 - 14 * at, filler) for at in range(5)]
    edge = 70 + stringWidth(filler, "Helvetica", 11)
    words = pad + above
    while stringWidth(words, "Helvetica", 11) > edge - 70:
        words = words[words.index(" ") + 1 :]
    lines += [(edge - stringWidth(words, "Helvetica", 11), 630, words), (70, 616, below)]

    assert joined in text_of(drawn(*lines))


def test_running_heads_and_page_numbers_are_left_out() -> None:
    """What stands at the head or foot of every page is left out and the report says so; a row is never taken for one."""
    text = "\n".join(f"Rnd {number}: Sc in each st around. (36)" for number in range(1, 140))
    source = read(printed(paragraphs(text), head="Brimble Coaster by Quillmarsh Yarnroom"), "a.pdf")

    assert source.text.replace("\n\n", "\n") == text + "\n"
    assert source.origin.notes == (RUNNING,)
    assert source.place(source.text.index("Rnd 139")) == "page 3"


def test_rows_at_the_head_of_pages_stay() -> None:
    """Pages that begin with the same row keep it: only what names no row can be a running head."""
    story = [*paragraphs("Row 1: Sc in each st across, turn."), PageBreak()] * 3

    assert text_of(printed(story)).count("Row 1: Sc in each st across") == 3


def test_tables_read_as_rows() -> None:
    """A ruled table of rounds is read row by row, cells that are wrapped whole, and its wrong count is found."""
    long = (
        "[Sc in next 2 sts, 2 sc in next st] 6 times, join with a slip stitch in the first single crochet of the round"
    )
    rows = [
        ("Rnd", "Instruction", "Count"),
        ("1", "6 sc in a magic ring", "6"),
        ("2", "2 sc in each st around", "12"),
        ("3", "[Sc in next st, 2 sc in next st] 6 times", "18"),
        ("4", Paragraph(long, BODY), "25"),
    ]
    for placed in ("TOP", "MIDDLE"):
        ruled = TableStyle([("GRID", (0, 0), (-1, -1), 0.5, colors.black), ("VALIGN", (0, 0), (-1, -1), placed)])
        story = [Paragraph("Brimble Coaster", HEAD), Spacer(1, 20), Table(rows, (50, 260, 60), style=ruled)]
        source = read(printed(story), "a.pdf")

        assert f"Rnd 4: {long} (25)" in source.text
        assert ("count-differs", "correction", "25") in found(source)


def test_tabbed_lists() -> None:
    """A list of abbreviations set in two columns keeps each with its meaning."""
    lines = [("ch", "chain"), ("sc", "single crochet"), ("st(s)", "stitch(es)")]
    drawing = [(70, 700 - 14 * at, one) for at, (one, _) in enumerate(lines)]
    drawing += [(130, 700 - 14 * at, other) for at, (_, other) in enumerate(lines)]

    assert text_of(drawn(*drawing)).splitlines() == [f"{one} | {other}" for one, other in lines]


def test_headings_are_set_apart() -> None:
    """Larger or bolder letters make a heading, and the piece under it is known by its name."""
    story = [Paragraph("Brimble Coaster", HEAD)]
    for name in ("Left Lower Side Panel", "Right Lower Side Panel"):
        story += [
            Paragraph(name, HEAD),
            *paragraphs(
                "Row 1: Ch 6, sc in 2nd ch from hook and in each ch across. (5)\nRow 2: Ch 1, turn, sc in each st across. (5)"
            ),
        ]
    report = inspect(read(printed(story), "a.pdf"))

    assert [part.name for part in report.pattern.parts] == ["Left Lower Side Panel", "Right Lower Side Panel"]


def test_scans_are_refused() -> None:
    """A PDF of pictures of pages is refused with a clear word; one with a picture among its pages says which."""
    from PIL import Image
    from reportlab.lib.utils import ImageReader

    def page_of(*kinds: str) -> bytes:
        out = io.BytesIO()
        page = canvas.Canvas(out, pagesize=A4)
        for kind in kinds:
            if kind == "picture":
                page.drawImage(ImageReader(Image.new("RGB", (60, 80), "white")), 0, 0, *A4)
            else:
                page.drawString(70, 700, "Rnd 1: 6 sc in ring. (6)")
            page.showPage()
        page.save()
        return out.getvalue()

    with pytest.raises(Unreadable, match="is a scan"):
        read(page_of("picture", "picture"), "a.pdf")
    assert "page 1" in read(page_of("picture", "words"), "a.pdf").origin.notes[0]


def test_words_across_the_page_are_left_out() -> None:
    """A notice along the page's edge does not fall into the rows beside it."""
    out = io.BytesIO()
    page = canvas.Canvas(out, pagesize=A4)
    page.drawString(70, 700, "Rnd 1: 6 sc in ring. (6)")
    page.saveState()
    page.translate(40, 600)
    page.rotate(90)
    page.drawString(0, 0, "Do not copy")
    page.restoreState()
    page.save()

    assert text_of(out.getvalue()) == "Rnd 1: 6 sc in ring. (6)\n"


def test_turned_pages() -> None:
    """A page that is stored lying on its side is read as it is shown."""
    import pypdf

    writer = pypdf.PdfWriter()
    page = writer.add_page(
        pypdf.PdfReader(
            io.BytesIO(drawn((70, 700, "Rnd 1: 6 sc in ring. (6)"), (70, 686, "Rnd 2: inc around. (12)")))
        ).pages[0]
    )
    page.rotate(90)
    page.transfer_rotation_to_content()
    page.rotate(270)
    out = io.BytesIO()
    writer.write(out)

    assert text_of(out.getvalue()) == "Rnd 1: 6 sc in ring. (6)\nRnd 2: inc around. (12)\n"


# notes -------------------------------------------------------------------------------------------


def annotations(raw: bytes) -> list[tuple[int, str, list[float]]]:
    """Page, words and corners of every highlight, by another library than the one that wrote them."""
    import pypdf

    told = []
    for number, page in enumerate(pypdf.PdfReader(io.BytesIO(raw)).pages):
        for one in page.get("/Annots", []):
            note = one.get_object()
            assert note["/Subtype"] == "/Highlight" and note["/T"] == "frogproof"
            told.append((number, str(note["/Contents"]), [float(at) for at in note["/QuadPoints"]]))
    return told


def under(raw: bytes, page: int, quads: list[float]) -> str:
    """The words beneath a highlight."""
    import pypdfium2

    document = pypdfium2.PdfDocument(raw)
    textpage = document[page].get_textpage()
    words = [
        textpage.get_text_bounded(
            min(quad[0::2]) + 0.3, min(quad[1::2]) + 0.3, max(quad[0::2]) - 0.3, max(quad[1::2]) - 0.3
        )
        for quad in (quads[at : at + 8] for at in range(0, len(quads), 8))
    ]
    textpage.close()
    document.close()
    return " ".join(" ".join(words).split())


def test_a_note_stands_at_each_finding() -> None:
    """The marked PDF has a highlight on the words of every finding, and its note says what is the matter."""
    raw = as_pdf(COASTER)
    report = inspect(read(raw, "a.pdf"))
    told = annotations(marked(report, raw))
    wanted = [report.source.slice(one.span) for one in sorted(report.findings, key=lambda one: one.span.start)]

    assert [under(raw, page, quads) for page, _, quads in told] == wanted
    assert any("make 24 sts, but the count printed is 25 sts" in text for _, text, _ in told)


def test_the_file_stays_as_it_is() -> None:
    """The marked PDF begins with the designer's file, byte for byte, and its text is the same."""
    raw = as_pdf(COASTER)
    after = marked(inspect(read(raw, "a.pdf")), raw)

    assert after.startswith(raw)
    assert text_of(after) == text_of(raw)


def test_notes_over_columns() -> None:
    """A finding whose words run over the end of a column is highlighted in both."""
    row = "Rnd 9: *Sc in next 7 sts, 2 sc in next st, ch 2, skip next 2 sts, hdc in next st, ch 4, sl st in next st; rep from * around"
    story = [
        Paragraph("Brimble", BODY),
        Spacer(1, 690),
        Paragraph(row, BODY),
        Paragraph("Fasten off.", BODY),
        FrameBreak(),
    ]
    raw = printed(story, columns=2)
    source = read(raw, "a.pdf")
    at = source.text.index("Rnd 9")
    told = annotations(with_notes(raw, source.origin, [Note(Span(at, at + len(row)), "Is it?", (255, 0, 0))]))

    assert source.text[at:].startswith(row)
    assert len({quad for _, _, quads in told for quad in quads[0::8]}) > 1
