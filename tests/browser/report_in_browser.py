"""The report in a real browser: Chromium of Debian, driven by playwright.  Outside the normal run; `.ci/run` runs it.

Accessibility is checked with axe-core's rules for WCAG 2.2 AA (Deque's open engine, through axe-playwright-python).
"""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, sync_playwright

from lint import check_text
from lint.drafts.comparison import compare_drafts
from lint.inspection import inspect
from lint.reports.drafts_page import as_drafts_page
from lint.reports.page import as_page, as_pages
from lint.reports.testers_page import as_testers_page
from lint.source import SourceText
from lint.testers.review import review

ROOT = Path(__file__).resolve().parents[2]
DEMO = sorted((ROOT / "corpus_demo").glob("*.txt"))
FAULTY = ROOT / "corpus_demo" / "plumstone-coaster-set.txt"
WIDTHS = {"desktop": (1280, 900), "phone": (375, 740), "small phone": (320, 568)}
HOSTILE = (
    '<script>alert(1)</script> Square\nUS terms\n\n"><img src=http://127.0.0.1:9/x onerror=alert(2)> PART\n'
    "Rnd 1: 6 sc in magic ring, <b onmouseover=alert(3)>join</b>. (7 sc)\n"
    "Rnd 2: \u202e2 sc\u202c in each sc around \U0001f9f6\U0001f3fd. (12 sc)\n{{ 7 * 7 }} javascript:alert(4)\n"
)


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """One headless Chromium for all tests of this module."""
    path = shutil.which("chromium")
    assert path, "Chromium is not installed (Debian's package is called chromium)"
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=path, args=["--no-sandbox"])
        yield browser
        browser.close()


class Opened:
    """A page opened in a context of its own, with everything that it asked for or complained of."""

    def __init__(self, browser: Browser, html: str, folder: Path, width: str = "desktop", dark: bool = False) -> None:
        file = folder / "report.html"
        file.write_text(html, encoding="utf-8")
        wide, high = WIDTHS[width]
        self.context = browser.new_context(
            viewport={"width": wide, "height": high}, color_scheme="dark" if dark else "light", java_script_enabled=True
        )
        self.page: Page = self.context.new_page()
        self.requests: list[str] = []
        self.complaints: list[str] = []
        self.page.on("request", lambda request: self.requests.append(request.url))
        self.page.on("console", lambda message: self.complaints.append(message.text))
        self.page.on("pageerror", lambda error: self.complaints.append(str(error)))
        self.page.on("dialog", lambda dialog: (self.complaints.append(dialog.message), dialog.dismiss()))
        self.page.goto(file.as_uri())
        self.file = file.as_uri()


def report_page(path: Path, large: bool = False) -> str:
    """The HTML page of a demo pattern."""
    return as_page(check_text(path.read_text(encoding="utf-8")), large)


def pages_on_testers() -> dict[str, str]:
    """The page on the demo's testers, and one with ten testers and rows of several sizes."""
    shawl = ROOT / "corpus_demo" / "withybed-shawl.txt"
    report = inspect(SourceText(shawl.read_text(encoding="utf-8"), shawl.name))
    files = [(path.name, path.read_bytes()) for path in sorted((ROOT / "corpus_demo" / "testers").iterdir())]
    demo = review(report, files)
    crowd = b"Tester,Row,Count\n" + b"".join(b"Tester %d,3,%d\n" % (number, 20 - number % 2) for number in range(10))
    draft = inspect(SourceText(report.source.text.replace("20 times more", "19 times more")))
    return {
        "demo": as_testers_page(demo),
        "crowd": as_testers_page(review(report, [("t.csv", crowd)])),
        "drafts": as_drafts_page(compare_drafts(report, draft, demo)),
    }


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("large", [False, True], ids=["usual", "large-print"])
@pytest.mark.parametrize("page", ["demo", "crowd", "drafts"])
def test_testers_pages(browser: Browser, tmp_path: Path, page: str, large: bool, width: str) -> None:
    """The pages on testers and drafts fit the window, ask for nothing, and have no violation that the engine can find."""
    html = pages_on_testers()[page]
    html = html.replace('id="large-print"', 'id="large-print" checked') if large else html
    opened = Opened(browser, html.replace("default-src 'none'; ", ""), tmp_path, width)

    assert opened.page.evaluate("document.documentElement.scrollWidth <= window.innerWidth")
    assert opened.requests == [opened.file]
    found = Axe().run(
        opened.page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}
    )
    assert [(one["id"], one["nodes"][0]["html"]) for one in found.response["violations"]] == []


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("path", DEMO, ids=lambda path: path.stem)
def test_nothing_runs_over_the_side(browser: Browser, tmp_path: Path, path: Path, width: str) -> None:
    """The page is never wider than the window; it asks for nothing and complains of nothing."""
    opened = Opened(browser, report_page(path), tmp_path, width)

    assert opened.page.evaluate("document.documentElement.scrollWidth <= window.innerWidth")
    assert opened.requests == [opened.file]
    assert opened.complaints == []


@pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])
@pytest.mark.parametrize("large", [False, True], ids=["usual", "large-print"])
@pytest.mark.parametrize("path", [FAULTY, DEMO[0]], ids=lambda path: path.stem)
def test_accessible(browser: Browser, tmp_path: Path, path: Path, large: bool, dark: bool) -> None:
    """No violation of WCAG 2.2 A and AA that the engine can find, in light and dark, usual and large print."""
    html = report_page(path, large)
    assert "script-src" not in html
    opened = Opened(
        browser, html.replace("default-src 'none'; ", ""), tmp_path, dark=dark
    )  # so that the engine may run
    opened.page.evaluate("document.querySelectorAll('details').forEach(one => one.open = true)")
    found = Axe().run(
        opened.page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}
    )

    assert [(one["id"], one["nodes"][0]["html"]) for one in found.response["violations"]] == []


def test_keyboard_alone(browser: Browser, tmp_path: Path) -> None:
    """From the top: the skip link, the boxes, then a badge leads to its note, and the note on to the next."""
    page = Opened(browser, report_page(FAULTY), tmp_path).page
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    page.keyboard.press("Tab")
    page.keyboard.press("Space")
    assert page.locator(".note.correction").first.is_hidden()
    page.keyboard.press("Space")
    assert page.locator(".note.correction").first.is_visible()
    page.locator(".jump .badge").first.focus()
    page.keyboard.press("Enter")
    assert page.evaluate("location.hash").startswith("#note-")


def test_only_lines_with_notes(browser: Browser, tmp_path: Path) -> None:
    """The box leaves the lines that have notes, and hides the others."""
    page = Opened(browser, report_page(FAULTY), tmp_path).page
    before = page.locator(".line:visible").count()
    page.locator("#only-noted").check()

    assert 0 < page.locator(".line:visible").count() < before
    assert page.locator(".line:visible mark").count() == page.locator(".line mark").count()


def test_works_without_a_script(browser: Browser, tmp_path: Path) -> None:
    """With scripts off the page is whole: the boxes work, the workings open."""
    file = tmp_path / "report.html"
    file.write_text(report_page(FAULTY), encoding="utf-8")
    page = browser.new_context(java_script_enabled=False).new_page()
    page.goto(file.as_uri())
    page.locator("#show-style").uncheck()

    assert page.locator(".matters").is_hidden()
    page.locator(".how:has(details:not([open])) summary").first.click()
    assert page.locator(".how details[open] .workings").first.is_visible()


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_prints_with_all_notes(browser: Browser, tmp_path: Path, paper: str) -> None:
    """On paper every note is there, the boxes are not, and nothing is cut off at the side."""
    page = Opened(browser, report_page(FAULTY), tmp_path).page
    page.emulate_media(media="print")

    assert page.locator(".note:visible").count() == page.locator(".note").count() > 0
    assert page.locator(".tools").is_hidden()
    assert page.pdf(format=paper).startswith(b"%PDF")


def test_hostile_text_does_nothing(browser: Browser, tmp_path: Path) -> None:
    """Markup and scripts in a pattern are shown as its text: nothing runs, nothing is asked for."""
    opened = Opened(browser, as_pages([check_text(HOSTILE), check_text(HOSTILE)]), tmp_path)
    opened.page.mouse.move(200, 400)

    assert opened.complaints == []
    assert opened.requests == [opened.file]
    assert opened.page.locator("img, script, b").count() == 0
    assert "<script>alert(1)</script> Square" in opened.page.inner_text("h2 >> nth=0")


@pytest.mark.parametrize("path", DEMO, ids=lambda path: path.stem)
def test_ledger_fits_a_phone(browser: Browser, tmp_path: Path, path: Path) -> None:
    """On a phone the rows of the ledger stand one below the other, and none has to be pushed to the side to be read."""
    page = Opened(browser, report_page(path), tmp_path, "phone").page
    wide = "one => [...one.querySelectorAll('tbody > tr:not(.how) > *')].some(cell => cell.getBoundingClientRect().right > innerWidth)"

    assert page.locator(".ledger table:not(.workings)").evaluate_all(f"tables => tables.filter({wide}).length") == 0
    assert page.locator(".ledger td.came, .ledger .sized td").first.is_visible()


def test_verdict_comes_first(browser: Browser, tmp_path: Path) -> None:
    """What does not come out is told in words within the first window of a phone, before any table."""
    page = Opened(browser, report_page(FAULTY), tmp_path, "phone").page
    top = page.locator(".plain").first.bounding_box()

    assert top is not None and top["y"] + top["height"] < WIDTHS["phone"][1]
    page.locator(".first-points .badge").first.click()
    assert page.locator(":target").count() == 1


def test_a_box_of_several_notes_is_led_to_and_hidden(browser: Browser, tmp_path: Path) -> None:
    """Each number of a box that holds several notes leads to its own line, and the box goes with its weight."""
    html = as_page(
        check_text("Strip\nUS terms\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n")
    )
    page = Opened(browser, html, tmp_path).page
    page.locator(".jump .badge").nth(1).click()

    assert page.locator(".several li:target").count() == 1
    page.locator("#show-correction").uncheck()
    assert page.locator(".several").first.is_hidden()


def test_paper_has_no_closed_boxes(browser: Browser, tmp_path: Path) -> None:
    """On paper nothing is printed that only a click would open."""
    page = Opened(browser, report_page(FAULTY), tmp_path).page
    page.emulate_media(media="print")

    assert (
        page.locator("details:not([open]) > summary:visible").evaluate_all(
            "all => all.filter(one => !one.closest('.how')).length"
        )
        == 0
    )


def test_a_long_report_opens_fast_enough_to_use(browser: Browser, tmp_path: Path) -> None:
    """A hundred rows make a page that opens whole, with all its lines."""
    rows = "\n".join(f"Row {n}: Ch 1, sc in each sc across, turn. (40 sc)" for n in range(2, 102))
    text = f"Panel\nUS terms\nCh 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (40 sc)\n{rows}\n"
    page = Opened(browser, as_page(check_text(text)), tmp_path).page

    assert page.locator(".line").count() == text.count("\n")


def index_page() -> str:
    """The table over the demo patterns, and one that could not be read."""
    from lint.batch import check_all
    from lint.reports.index import as_index
    from lint.reports.summary import Checked

    checked = [*check_all([str(ROOT / "corpus_demo")]), Checked("a scan.pdf", problem="has no text in it")]
    return "".join(as_index(checked, [f"{number}.html" for number in range(len(checked))]))


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("large", [False, True], ids=["usual", "large-print"])
def test_index_of_many(browser: Browser, tmp_path: Path, large: bool, width: str) -> None:
    """The table fits the window, asks for nothing, and has no violation that the engine can find."""
    html = index_page()
    html = html.replace('id="large-print"', 'id="large-print" checked') if large else html
    opened = Opened(browser, html.replace("default-src 'none'; ", ""), tmp_path, width)

    assert opened.page.evaluate("document.documentElement.scrollWidth <= window.innerWidth")
    assert opened.requests == [opened.file] and opened.complaints == []
    found = Axe().run(
        opened.page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}
    )
    assert [(one["id"], one["nodes"][0]["html"]) for one in found.response["violations"]] == []


def test_index_is_sorted_and_chosen(browser: Browser, tmp_path: Path) -> None:
    """The boxes put the lines in order and hide those of a verdict, with no script on the page."""
    page = Opened(browser, index_page(), tmp_path).page

    def shown() -> list[str]:
        rows = page.locator(".patterns tbody tr").all()
        seen = [
            (row.bounding_box()["y"], row.locator("th").inner_text().split("\n")[0]) for row in rows if row.is_visible()
        ]
        return [title for _, title in sorted(seen)]

    assert shown()[0] == "a scan.pdf"
    page.check("#by-title")
    assert [title.casefold() for title in shown()] == sorted(title.casefold() for title in shown())
    page.check("#by-score")
    assert shown()[1] == "POCKLE THE MOLE"
    page.uncheck("#show-ready")
    assert len(shown()) == 4
