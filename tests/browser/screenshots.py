"""Makes the README's pictures from the demo patterns: `python tests/browser/screenshots.py`.

Needs the `browser` extra and Debian's chromium.  Writes report.png, diagram.png and testers.png to corpus_demo/.
"""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright

from lint import check_text
from lint.reports.page import as_page
from lint.reports.testers_page import as_testers_page
from lint.testers.review import review

DEMO = Path(__file__).resolve().parents[2] / "corpus_demo"


def report_page(name: str) -> str:
    """The editor's report on a demo pattern."""
    return as_page(check_text((DEMO / f"{name}.txt").read_text(encoding="utf-8")))


def testers_page(name: str) -> str:
    """The report on the demo's testers."""
    files = [(path.name, path.read_bytes()) for path in sorted((DEMO / "testers").iterdir())]
    return as_testers_page(review(check_text((DEMO / f"{name}.txt").read_text(encoding="utf-8")), files))


def main() -> None:
    """Write all pictures."""
    with sync_playwright() as playwright, tempfile.TemporaryDirectory() as folder:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        for name, picture, show, shown in (
            ("plumstone-coaster-set", "report.png", "#line-38", report_page),
            ("inkberry-hexagon-blanket", "diagram.png", "#pictures", report_page),
            ("withybed-shawl", "testers.png", "#counts", testers_page),
        ):
            file = Path(folder, f"{name}.html")
            file.write_text(shown(name), encoding="utf-8")
            page = browser.new_page(viewport={"width": 1180, "height": 640}, color_scheme="light")
            page.goto(file.as_uri())
            page.evaluate(f"document.querySelector('{show}').scrollIntoView()")
            page.screenshot(path=DEMO / picture)
        browser.close()


if __name__ == "__main__":
    main()
