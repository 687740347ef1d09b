"""Notes at the foot of a page: read behind all other text, in .docx, .odt and .rtf."""

from __future__ import annotations

from pathlib import Path

from command import run_command
from helpers import check
from made_documents import as_docx, changed, odt_of, read, unzipped, zipped

_ROWS = "Strip\nUS terms\nCh 12.\nRow 1: Dc in 4th ch from hook and in each ch across. (10 dc)\nRow 2: Ch 3, turn, dc in next 9 dc. (10 dc)"
_NOTE = "The ch 3 counts as a dc throughout."


def _docx_with_note() -> bytes:
    raw = as_docx(_ROWS)
    raw = changed(
        raw,
        "word/document.xml",
        "Ch 3, turn",
        'Ch 3</w:t></w:r><w:r><w:footnoteReference w:id="2"/></w:r><w:r><w:t>, turn',
    )
    names = 'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"'
    notes = f'<w:footnotes {names}><w:footnote w:id="0"><w:p/></w:footnote><w:footnote w:id="2"><w:p><w:r><w:footnoteRef/></w:r>'
    notes += "<w:r><w:t>The ch 3 counts as a dc</w:t></w:r><w:r><w:t> throughout.</w:t></w:r></w:p></w:footnote></w:footnotes>"
    return zipped({**unzipped(raw), "word/footnotes.xml": notes.encode()})


def test_footnotes_of_a_docx_are_read_as_notes() -> None:
    """What a footnote says of a chain holds; the reader is told where it was read."""
    source = read(_docx_with_note(), "strip.docx")
    assert source.text.rstrip().endswith(f"Notes\n\n{_NOTE}")
    assert "footnote" in " ".join(source.origin.notes).lower()
    rules = {finding.rule for finding in check(source.text).findings}
    assert "turning-chain-unsaid" not in rules
    assert "turning-chain-unsaid" in {finding.rule for finding in check(_ROWS).findings}


def test_a_comment_on_a_document_with_footnotes(tmp_path: Path) -> None:
    """Comments still go to the words of the main text, and the footnotes stay as they were."""
    wrong = changed(_docx_with_note(), "word/document.xml", "next 9 dc. (10 dc)", "next 9 dc. (11 dc)")
    (tmp_path / "strip.docx").write_bytes(wrong)
    run_command("check", tmp_path / "strip.docx", "--docx", tmp_path / "out.docx")
    out = unzipped((tmp_path / "out.docx").read_bytes())
    assert out["word/footnotes.xml"] == unzipped(wrong)["word/footnotes.xml"]
    assert b"11 dc" in out["word/comments.xml"]


def test_footnotes_of_an_odt_are_read_as_notes() -> None:
    """The same in OpenDocument, where a note stands among the words."""
    paragraphs = _ROWS.split("\n")
    note = f"<text:note><text:note-citation>1</text:note-citation><text:note-body><text:p>{_NOTE}</text:p></text:note-body></text:note>"
    paragraphs[-1] = paragraphs[-1].replace("Ch 3,", f"Ch 3{note},")
    source = read(odt_of("".join(f"<text:p>{one}</text:p>" for one in paragraphs)), "strip.odt")
    assert source.text.rstrip().endswith(f"Notes\n\n{_NOTE}")
    assert "Ch 3, turn" in source.text


def test_footnotes_of_an_rtf_are_read_as_notes() -> None:
    """A footnote stands in the middle of its sentence, inside the raised sign that calls it, as word processors write it."""
    note = r"{\super\chftn{\footnote\pard\plain{\super\chftn} " + _NOTE + "}}"
    lines = _ROWS.replace("Ch 3,", f"Ch 3{note},").split("\n")
    words = r"{\rtf1\ansi\deff0{\fonttbl{\f0 Arial;}}" + "".join(rf"\pard {line}\par " for line in lines) + "}"
    source = read(words.encode(), "strip.rtf")
    assert source.text.rstrip().endswith(f"\n\nNotes\n{_NOTE}")
    assert "Ch 3, turn, dc in next 9 dc." in source.text
    assert "turning-chain-unsaid" not in {finding.rule for finding in check(source.text).findings}
    assert "footnote" in " ".join(source.origin.notes).lower()


def test_a_footnote_in_a_table_of_an_rtf() -> None:
    """The row that it stands in goes on behind it."""
    row = r"\trowd\pard\intbl Row 1{\footnote\pard The right side.}\cell\pard\intbl 10 sc\cell\row"
    words = r"{\rtf1\ansi\pard Strip\par " + row + r"\pard Weave in the ends.\par}"
    text = read(words.encode(), "strip.rtf").text
    assert "Row 1 | 10 sc" in text and text.rstrip().endswith("The right side.")
