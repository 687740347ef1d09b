"""The HTML page and the terminal summary: what a reader finds in them."""

from __future__ import annotations

import io
import re
import sys
import unicodedata
from dataclasses import replace
from html.parser import HTMLParser
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lint.finding import Finding, Likely, Related, Weight
from lint.inspection import Report, inspect
from lint.reports.page import as_page, as_pages
from lint.reports.terminal import one_line, show
from lint.source import SourceText, Span

SQUARE = """Brickfield Square

UK terms
Abbreviations
ch = chain
dc = double crochet
tr = treble
ss = slip stitch

SQUARE (make 4)
Make 4 ch and join with ss into first ch to form a ring.
1st round: 3 ch (counts as 1 tr), 15 tr into ring, ss into top of 3 ch. (16 tr)
2nd round: 1 ch (does not count as a st), 1 dc into each tr, ss into first dc. (17 dc)
3rd to 6th rounds: 1 ch, 1 dc into each dc, ss into first dc. (16 dc)
7th round: 1 ch, frabble 1 dc into each wuzzock. (16 dc)
"""

HOSTILE = (
    "<script>alert(1)</script>\n"
    "</span></div><img src=x onerror=alert(2)> \"quoted\" 'too' &lt; &amp;\n"
    "\u202eright to left\u202c עברית \U0001f9f6\U0001f3fd \u0000\u0007\u001b[31m\u007f\u0085\r\n"
    "{{ 7 * 7 }} {% raw %} javascript:alert(3) https://example.com/ ]]> -->\n"
)


class Page(HTMLParser):
    """What stands on a page: every tag, the pattern's words by line, the words of every mark, all visible text."""

    def __init__(self, html: str) -> None:
        super().__init__(convert_charrefs=True)
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.lines: list[str] = []
        self.marks: dict[int, str] = {}
        self.refs: list[tuple[str, str]] = []
        self.text = ""
        self._open: list[int] = []
        self._words = False
        self._hidden = False
        self.feed(html)
        self.close()

    def handle_starttag(self, tag, attrs):
        attributes = dict(attrs)
        self.tags.append((tag, attributes))
        if tag == "mark":
            self._open.append(int(attributes["data-note"]))
            self.marks.setdefault(self._open[-1], "")
        elif tag == "span" and attributes.get("class") == "words":
            self._words = True
            self.lines.append("")
        elif tag == "a" and "ref" in (attributes.get("class") or "").split():
            self.refs.append((attributes["data-number"], attributes["href"]))
        self._hidden = tag in ("style", "script")
        self.text += " "

    def handle_endtag(self, tag):
        if tag == "mark":
            self._open.pop()
        elif tag == "span":
            self._words = False
        self._hidden = False

    def handle_data(self, data):
        if self._words:
            self.lines[-1] += data
        for note in self._open:
            self.marks[note] += data
        if not self._hidden:
            self.text += data

    @property
    def ids(self) -> list[str]:
        return [attributes["id"] for _, attributes in self.tags if "id" in attributes]

    def headings(self) -> list[int]:
        return [int(tag[1]) for tag, _ in self.tags if re.fullmatch(r"h[1-6]", tag)]


def finding_at(
    text: str, words: str, weight: Weight = Weight.CORRECTION, rule: str = "count-differs", **more
) -> Finding:
    start = text.index(words)
    return Finding(rule, weight, Span(start, start + len(words)), more.pop("message", "The count differs."), **more)


def same_text(shown: str, text: str) -> bool:
    """Whether shown is the text, control characters apart, each of which has one visible sign."""
    return len(shown) == len(text) and all(
        is_shown == is_read or (unicodedata.category(is_read) in ("Cc", "Cs") and is_shown.isprintable())
        for is_shown, is_read in zip(shown, text, strict=True)
    )


@pytest.fixture(scope="module")
def square() -> Report:
    """The square with a finding of each weight."""
    report = inspect(SourceText(SQUARE, "square.txt"))
    below = finding_at(SQUARE, "(16 tr)").span
    findings = (
        finding_at(SQUARE, "UK terms", Weight.STYLE, "abbreviation-unused", message="A matter of style."),
        finding_at(
            SQUARE,
            "1 dc into each tr",
            Weight.QUERY,
            "repeat-ambiguous",
            message="2nd round: Is this so?",
            row="2nd round",
        ),
        finding_at(
            SQUARE,
            "17 dc",
            part="SQUARE",
            row="2nd round",
            found="17",
            expected="16",
            message="2nd round: the words make 16, but the count printed is 17.",
            related=(Related(below, "the round below has 16 tr"),),
            likely=(Likely("Is “17” a slip for “16”", "the next round agrees"),),
            sizes=("M", "L"),
        ),
    )
    return replace(report, findings=findings)


def with_text(report: Report, text: str, *spans: Span) -> Report:
    """The report with another text, and a finding at each of the spans."""
    findings = tuple(Finding("count-differs", list(Weight)[i % 3], span, f"Note {i}") for i, span in enumerate(spans))
    return replace(report, source=SourceText(text), findings=findings)


@st.composite
def texts_and_spans(draw):
    """Any text, and any stretches of it."""
    text = draw(st.text(st.characters(exclude_categories=()) | st.sampled_from("<>&\"'\n\r\t (){}"), max_size=60))
    place = st.integers(0, len(text))
    pairs = draw(st.lists(st.tuples(place, place), max_size=6))
    return text, [Span(min(pair), max(pair)) for pair in pairs]


@settings(max_examples=150, deadline=None, derandomize=True)
@given(texts_and_spans())
def test_text_is_never_altered(square, drawn):
    """Whatever the text and wherever the findings are, the lines on the page are the lines of the text."""
    text, spans = drawn

    shown = "\n".join(Page(as_page(with_text(square, text, *spans))).lines)

    assert same_text(shown, text) or same_text(shown, text.removesuffix("\n"))


@settings(max_examples=100, deadline=None, derandomize=True)
@given(texts_and_spans())
def test_every_findings_words_are_marked_with_its_number(square, drawn):
    """The words of each finding, and no others, stand in marks of its number, and one link leads to its note."""
    text, spans = drawn
    spans = sorted(spans, key=lambda span: span.start)

    page = Page(as_page(with_text(square, text, *spans)))

    for number, span in enumerate(spans, 1):
        assert same_text(page.marks[number], text[span.start : span.end].replace("\n", ""))
    assert sorted(page.refs) == sorted((str(n), f"#note-{n}") for n in range(1, len(spans) + 1))


def test_overlapping_words_carry_both_numbers(square):
    """Of two findings that overlap, each keeps all its words."""
    text = "sc in next sc, 2 sc in next sc"

    page = Page(as_page(with_text(square, text, Span(0, 16), Span(10, 30))))

    assert page.marks == {1: text[0:16], 2: text[10:30]}
    assert page.lines == [text]


def test_an_empty_place_is_marked_too(square):
    """A finding between two words has a mark with no words in it, and a link to its note."""
    page = Page(as_page(with_text(square, "one two", Span(4, 4))))

    assert page.marks == {1: ""}
    assert page.refs == [("1", "#note-1")]


def test_hostile_text_is_inert(square):
    """Markup, scripts and control characters in text, title, message and names are shown as text and do nothing."""
    start = HOSTILE.index("<img")
    pattern = replace(square.pattern, title="<script>title</script>\x1b[2J", sizes=("<i>S</i>", "M"))
    bad = Finding(
        "no-such-rule",
        Weight.QUERY,
        Span(start, start + 9),
        "<script>message</script>",
        "<b onclick=x>part</b>",
        "<u>row</u>",
        ("<i>S</i>",),
        "<s>expected</s>",
        "<s>found</s>",
        (Related(Span(0, 3), "<iframe>label"),),
        (Likely("<object>change", "<embed>then"),),
        "<svg onload=x>",
    )

    html = as_page(replace(square, source=SourceText(HOSTILE), pattern=pattern, findings=(bad,)))
    page = Page(html)

    allowed = set(
        "html head meta title style body main footer header section article aside div span p a ul ol li h1 h2 h3 h4 strong bdi mark q dl dt dd details summary table caption thead tbody tfoot tr th td figure figcaption svg g path circle text polyline nav form fieldset legend label input".split()
    )
    assert {tag for tag, _ in page.tags} <= allowed
    assert not [name for _, attributes in page.tags for name in attributes if name.startswith("on") or name == "src"]
    assert not re.search(r"[\x00-\x08\x0b-\x1f\x7f-\x9f]", html)
    assert same_text("\n".join(page.lines), HOSTILE.removesuffix("\n"))
    for words in ("<script>message</script>", "<iframe>label", "<svg onload=x>", "<u>row</u>"):
        assert words in page.text


def test_page_needs_nothing_else(square):
    """Every link leads to a place on the page itself, and nothing is fetched or run."""
    html = as_page(with_text(square, "See https://example.com/ for more.", Span(4, 23)))
    page = Page(html)

    links = [attributes["href"] for _, attributes in page.tags if "href" in attributes]
    assert links and all(link.startswith("#") and link[1:] in page.ids for link in links)
    assert not {"script", "link", "img", "iframe", "object"} & {tag for tag, _ in page.tags}
    style = html[html.index("<style>") : html.index("</style>")]
    assert "url(" not in style and "@import" not in style


def test_weights_are_said_in_words(square):
    """Each note says its weight, and the head counts the notes of each."""
    html = as_page(square)

    for number, title in ((1, "Style"), (2, "Query"), (3, "Correction")):
        note = html[html.index(f'id="note-{number}"') :]
        assert re.search(rf">{number}</span> {title}<", note[: note.index("</article>")])
    page = Page(html)
    for said in ("1 correction", "1 query", "1 style note"):
        assert said in page.text


def test_note_tells_all_of_a_finding(square):
    """A note shows the message, both figures, the sizes, the likely cause as a question, the other place and the reason."""
    html = as_page(square)
    note = Page(html[html.index('id="note-3"') : html.index("</article>", html.index('id="note-3"'))]).text

    said = " ".join(note.split())
    assert "The words make 16, but the count printed is 17." in said
    assert re.search(r"As printed 17 .*As it comes out 16", said)
    assert "M and L" in said
    assert "Is “17” a slip for “16”? Then the next round agrees." in said
    assert "See line 12: the round below has 16 tr" in said
    assert " ".join(square.book.rule("count-differs").why.split()) in said


def test_note_comes_directly_after_its_line(square):
    """In the order of the page, a note follows the line that its words begin on, before the next line."""
    html = as_page(square)

    assert html.index('id="line-13"') < html.index('id="note-3"') < html.index('id="line-14"')


def test_ledger_has_every_row_in_the_patterns_own_terms(square):
    """Each row stands in the ledger, alike rows of a range in one line, with UK names in a UK pattern."""
    html = as_page(square)
    ledger = Page(html[html.index('id="ledger"') : html.index('id="unread"')])

    said = " ".join(ledger.text.split())
    assert re.search(r"1st round 16 tr 16 tr ✓ agrees", said)
    assert re.search(r"2nd round .*17 dc 16 dc ≠ differs", said)
    assert re.search(r"3–6 .*16 dc each ✓ agrees", said)
    assert "make 4" in said and " sc" not in said


def test_rows_that_were_not_understood_are_named(square):
    """The head names what was not checked, and the list gives the words that stopped it."""
    page = Page(as_page(square))
    said = " ".join(page.text.split())
    done, of = square.recomputed

    assert done < of and f"{done} of {of} rows recomputed" in said
    assert re.search(r"Not checked: SQUARE, 7th round", said)
    assert re.search(r"7th round, line 15: stopped at .*(?i:wuzzock|frabble)", said)


def test_sizes_stand_side_by_side():
    """A pattern in sizes has a column for each."""
    text = "Band\n\nSizes: S (M, L)\n\nBand\nCh 11 (13, 15).\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 (12, 14) sc)\n"
    report = inspect(SourceText(text))
    assert len(report.pattern.sizes) == 3

    html = as_page(report)
    said = " ".join(Page(html[html.index('id="ledger"') : html.index('id="unread"')]).text.split())

    assert re.search(r"As printed S M L", said)
    assert re.search(r"Row 1 .*10 sc ✓ agrees 12 sc ✓ agrees 14 sc ✓ agrees", said)


@pytest.mark.parametrize(
    ("words", "warned"), [("two safety eyes", True), ("a drawstring", True), ("according to gauge", False)]
)
def test_caution_stands_where_a_child_could_come_to_harm(square, words, warned):
    """Toys, babies' things and cords bring the standing note about hazards; other words do not."""
    page = Page(as_page(with_text(square, f"You need {words}.")))

    assert warned is ("not safety; local law" in " ".join(page.text.split()))


def test_page_is_in_order_for_every_reader(square):
    """The page says its language, fits a phone, has one main heading and skips no level, and no id stands twice."""
    html = as_page(square)
    page = Page(html)

    assert '<html lang="en">' in html and 'name="viewport"' in html
    levels = page.headings()
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))
    assert len(page.ids) == len(set(page.ids))
    assert {"main", "header", "footer"} <= {tag for tag, _ in page.tags}


def test_several_patterns_share_a_page(square):
    """The index gives each pattern's verdict, and every pattern keeps its own anchors."""
    other = with_text(square, "one two", Span(0, 3))

    page = Page(as_pages([square, other, square]))

    assert len(page.ids) == len(set(page.ids))
    assert page.headings().count(1) == 1
    assert page.text.count(square.grade.sentence) == 6
    links = [attributes["href"][1:] for _, attributes in page.tags if "href" in attributes]
    assert set(links) <= set(page.ids)


def test_one_line_sums_up(square):
    """One line gives title, points of each weight, rows recomputed, score and verdict."""
    report = replace(square, grade=replace(square.grade, score=91.5, verdict="corrections"))
    done, of = report.recomputed

    assert one_line(report) == (
        f"Brickfield Square: 1 correction, 1 query, 1 style note; {done} of {of} rows recomputed; score 91.5 - corrections needed"
    )


def test_summary_is_plain_text_when_piped(square, capsys):
    """The summary gives place, weight, message and causes of each finding, and the rows not recomputed, without colour."""
    show(square)
    said = capsys.readouterr().out

    column = SQUARE.splitlines()[12].index("17 dc") + 1
    assert f"13:{column} Correction - SQUARE, 2nd round: The words make 16, but the count printed is 17." in said
    assert "Is “17” a slip for “16”? Then the next round agrees." in said
    assert re.search(r"SQUARE, 7th round, line 15: stopped at ", said)
    assert said.index("3:1 Style") < said.index("13:") and "\x1b" not in said


def test_summary_works_where_only_ascii_is_understood(square, monkeypatch):
    """A terminal that knows only ASCII gets plain signs, and nothing breaks."""
    raw = io.BytesIO()
    monkeypatch.setattr(sys, "stdout", io.TextIOWrapper(raw, encoding="ascii"))

    show(with_text(square, HOSTILE, Span(0, 5)))
    show(square)
    sys.stdout.flush()

    assert 'Is "17" a slip for "16"?' in raw.getvalue().decode("ascii")


def test_style_stands_apart(square):
    """Matters of style have a section of their own after the text; their marks lead there."""
    text = "One line.\nAnother line."
    report = replace(
        square,
        source=SourceText(text),
        findings=(
            Finding("count-differs", Weight.CORRECTION, Span(0, 3), "First."),
            Finding("style-mixed", Weight.STYLE, Span(10, 17), "Second."),
        ),
    )
    html = as_page(report)
    beside, apart = html.split('id="style"')

    assert 'id="note-1"' in beside and 'id="note-2"' not in beside
    assert 'id="note-2"' in apart


def test_notes_lead_to_each_other(square):
    """From each note one gets to the one before and the one after, by a link."""
    report = with_text(square, "one two three", Span(0, 3), Span(4, 7), Span(8, 13))
    steps = re.findall(r'<p class="steps">(.*?)</p>', as_page(report), re.S)

    assert [re.findall(r'href="#note-(\d)"', some) for some in steps] == [["2"], ["1", "3"], ["2"]]


def test_large_print_is_asked_for(square):
    """The page opens in large print where that is asked for, and else leaves it to its reader."""
    assert '<input type="checkbox" id="large-print" checked>' in as_page(square, large=True)
    assert '<input type="checkbox" id="large-print">' in as_page(square)


def head_of(text: str) -> str:
    """What the head of a pattern's report says."""
    html = as_page(inspect(SourceText(text)))
    return " ".join(Page(html[html.index("<header") : html.index("</header>")]).text.split())


_STRIP = "Strip\nUS terms\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1 (does not count as a st), sc in each sc across, turn. (10 sc)\n"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (_STRIP, ["All 2 rows and rounds come out as printed."]),
        (
            _STRIP + "Row 3: Ch 1, sc in each sc across, turn. (12 sc)\n",
            [
                "2 of 3 rows and rounds come out as printed.",
                "Row 3 of Strip does not come out.",
                "The words make 10 sc, but the count printed is 12 sc.",
            ],
        ),
        (
            _STRIP + "Row 3: Ch 1, sc in each sc across, turn.\n",
            ["One row or round works, but has no printed count to compare with."],
        ),
        (
            _STRIP + "Row 3: Frabble across, turn. (10 sc)\n",
            ["One row or round could not be followed, and nothing is said about its count."],
        ),
        ("My cosy\nTake some yarn.\n", ["No rows or rounds were found in this text, so no count could be checked."]),
        ("", ["No rows or rounds were found in this text, so no count could be checked."]),
    ],
)
def test_verdict_in_plain_words(text: str, said: list[str]) -> None:
    """The head says in sentences how many rows come out, which do not, and what was not checked."""
    head = head_of(text)

    for sentence in said:
        assert sentence in head


def test_an_area_that_was_not_checked_has_no_points() -> None:
    """Where no row was found, the areas of counts and rows say that they were not checked, not that all is well."""
    head = head_of("My cosy\nTake some yarn.\n")

    assert re.search(r"Counts and fit not checked Wording of the rows not checked", head)


def test_notes_of_one_sort_on_the_same_words_stand_together() -> None:
    """The sections that are missing are one box with all their numbers, each of which can be led to."""
    html = as_page(inspect(SourceText(_STRIP)))
    page = Page(html)
    box = html[html.index('<article class="note') : html.index("</article>", html.index('<article class="note'))]
    numbers = [number for number, _ in page.refs if f'id="note-{number}"' in box]

    assert len(numbers) > 2 and "corrections</h3>" in box
    assert all(f'href="#note-{number}"' in html for number in numbers)


def test_long_words_in_workings_are_cut_between_words() -> None:
    """Where the words of a repeat are shortened, no word is cut in two."""
    words = "*(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * 2 more times"
    text = (
        "Square\nUS terms\nRnd 1: Ch 4, join to form ring, ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join. (12 dc)\n"
        "Rnd 2: Sl st to ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, join. (24 dc)\n"
        f"Rnd 3: Sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, 3 dc in next ch-1 sp, ch 1, {words}, join. (38 dc)\n"
    )
    said = " ".join(Page(as_page(inspect(SourceText(text)))).text.split())
    (cut,) = {one for one in re.findall(r"\*\(3 dc[^…]{5,60} … [^…]{5,45}more times", said)}
    before, after = cut.split(" … ")

    assert f" {before} " in f" {words} " and f" {after} " in f" {words} "


def test_a_line_on_terms_over_the_chain_is_no_heading() -> None:
    """ "US terms" directly over "Ch 11." names no piece: the piece has the pattern's name."""
    assert [part.name for part in inspect(SourceText(_STRIP)).pattern.parts] == ["Strip"]


def test_foundations_are_no_rows_in_either_number():
    """The verdict and the line of figures count the same rows: what the piece is begun on is none of them."""
    report = inspect(
        SourceText(
            "Strip\n\nUS terms\n\nSTRIP\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n"
            "Row 2: Ch 1, sc in each sc across, turn. (10 sc)\n"
        )
    )
    assert report.recomputed == (2, 2)
    assert "2 of 2 rows recomputed" in one_line(report)
