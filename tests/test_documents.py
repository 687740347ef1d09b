"""Patterns in documents: every kind gives the findings of the plain text, at the same words, and says where they stand."""

from __future__ import annotations

import pytest
from helpers import DEMO, check
from made_documents import COASTER, MAKERS, as_headed_docx, found, found_in_text, read

from lint.documents.inputs import find, gather
from lint.documents.unreadable import Unreadable

PATTERNS = sorted(path.name for path in DEMO.glob("*.txt"))


@pytest.mark.parametrize("name", PATTERNS)
@pytest.mark.parametrize("kind", ["docx", "odt", "rtf", "html"])
def test_text_is_the_same(kind: str, name: str) -> None:
    """The text read out of a document is the text that it was made of, blank lines and all."""
    text = (DEMO / name).read_text(encoding="utf-8")

    assert read(MAKERS[kind](text), f"a.{kind}").text == text


@pytest.mark.parametrize("kind", MAKERS)
def test_same_findings_at_the_same_words(kind: str) -> None:
    """A pattern in a document has the findings of its text, at the same words, and no others."""
    assert found(read(MAKERS[kind](COASTER), f"a.{kind}")) == found_in_text(COASTER) != []


@pytest.mark.parametrize("name", ["pockle-the-mole.txt", "plumstone-coaster-set.txt", "withybed-shawl.txt"])
def test_printed_pages_have_the_findings_of_the_text(name: str) -> None:
    """A demo pattern printed to pages, its lines wrapped, has the findings of its text, at the same words."""
    text = (DEMO / name).read_text(encoding="utf-8")

    assert found(read(MAKERS["pdf"](text), "a.pdf")) == found_in_text(text)


@pytest.mark.parametrize("name", ["pockle-the-mole.txt", "plumstone-coaster-set.txt"])
def test_headings_set_apart_without_empty_lines(name: str) -> None:
    """Bold headings and space before paragraphs do what blank lines do in a text."""
    text = (DEMO / name).read_text(encoding="utf-8")

    assert found(read(as_headed_docx(text), "a.docx")) == found_in_text(text)


FOURTH = [line for line in COASTER.splitlines() if line.strip()].index(
    next(line for line in COASTER.splitlines() if line.startswith("Rnd 4"))
) + 1  # fmt: skip


@pytest.mark.parametrize(
    ("kind", "place"), [*((kind, f"paragraph {FOURTH}") for kind in ("docx", "odt", "rtf")), ("pdf", "page 1")]
)
def test_findings_name_their_place(kind: str, place: str) -> None:
    """A finding in a document is told with its paragraph or page, empty paragraphs not counted."""
    source = read(MAKERS[kind](COASTER), f"a.{kind}")

    assert source.place(source.text.index("(25)")) == place


@pytest.mark.parametrize("kind", MAKERS)
def test_kind_is_told_by_content(kind: str) -> None:
    """A document is read as what it is, whatever its file is named."""
    assert "Rnd 4" in read(MAKERS[kind](COASTER), "-").text
    assert read(MAKERS[kind](COASTER), "pattern.txt").origin.kind == kind


def test_markdown_keeps_its_stars() -> None:
    """Markdown is read as plain text: a star is the mark of a repeat."""
    text = COASTER.replace("Brimble Coaster", "# Brimble Coaster")

    assert read(text.encode(), "coaster.md").text == text
    assert read(text.encode(), "coaster.md").origin is None


@pytest.mark.parametrize(
    "encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "cp1252", "mac_roman", "cp850"]
)
def test_text_in_any_encoding(encoding: str) -> None:
    """The signs that patterns are printed with are read right in every encoding that Western texts were saved in."""
    signs = {"mac_roman": "“é” – 4.5° … crème fraîche", "cp850": "é ½ ¼ ° crème fraîche"}.get(
        encoding, "½ “é” – × ° crème"
    )
    text = f"Plüsh Coaster\nHook: 4 mm. Size: 9 in. {signs}\nRnd 1: 6 sc in ring. (6)\n"

    assert read(text.encode(encoding), "a.txt").text == text


def test_cyrillic_text() -> None:
    """A text that is not in Latin letters is told by its statistics."""
    text = (
        "Схема вязания салфетки крючком: набираем шесть воздушных петель и соединяем их в кольцо, затем вяжем ряд.\n"
        * 4
    )

    assert read(text.encode("cp1251"), "a.txt").text == text


@pytest.mark.parametrize("raw", [b"\x00\x01\x02\x03" * 300, bytes(range(256)) * 20])
def test_bytes_that_are_no_text(raw: bytes) -> None:
    """What is no text is refused."""
    with pytest.raises(Unreadable, match="is not text"):
        read(raw, "a.txt")


def test_folder_takes_every_kind(tmp_path) -> None:
    """A folder gives its documents of all kinds, but no hidden files, no lock files and no reports of this program."""
    from lint.reports.page import as_page

    for kind, make in MAKERS.items():
        (tmp_path / f"coaster.{kind}").write_bytes(make(COASTER))
    (tmp_path / "coaster.md").write_text(COASTER)
    (tmp_path / "~$coaster.docx").write_bytes(b"lock")
    (tmp_path / ".hidden.txt").write_text("x")
    (tmp_path / "picture.png").write_bytes(b"\x89PNG")
    (tmp_path / "report.html").write_text(as_page(check(COASTER)))

    assert sorted(one.name for one in find([str(tmp_path)])) == sorted(
        [*(f"coaster.{kind}" for kind in MAKERS), "coaster.md"]
    )
    assert all(item.source is not None for item in gather([str(tmp_path)]))


def test_reports_name_the_place() -> None:
    """JSON, page and summary of a document say paragraph and not only line; those of a text have no such place."""
    from lint.inspection import inspect
    from lint.reports.data import as_data
    from lint.reports.page import as_page

    report = inspect(read(MAKERS["docx"](COASTER), "a.docx"))
    places = [one["place"] for one in as_data(report)["findings"]]

    assert f"paragraph {FOURTH}" in places
    assert f"paragraph {FOURTH}" in as_page(report)
    assert as_data(report)["source"]["kind"] == "docx"
    assert all("place" not in one for one in as_data(check(COASTER))["findings"])
