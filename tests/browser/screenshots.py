"""Makes the README's pictures from the demo patterns: `python tests/browser/screenshots.py`.

Needs the `browser` extra and Debian's chromium.  Writes corpus_demo/report.png and corpus_demo/diagram.png.
"""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright

from lint import check_text
from lint.reports.page import as_page

DEMO = Path(__file__).resolve().parents[2] / "corpus_demo"


def main() -> None:
    """Write both pictures."""
    with sync_playwright() as playwright, tempfile.TemporaryDirectory() as folder:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        for name, picture, show in (
            ("plumstone-coaster-set", "report.png", "#line-38"),
            ("inkberry-hexagon-blanket", "diagram.png", "#pictures"),
        ):
            file = Path(folder, f"{name}.html")
            file.write_text(as_page(check_text((DEMO / f"{name}.txt").read_text(encoding="utf-8"))), encoding="utf-8")
            page = browser.new_page(viewport={"width": 1180, "height": 640}, color_scheme="light")
            page.goto(file.as_uri())
            page.evaluate(f"document.querySelector('{show}').scrollIntoView()")
            page.screenshot(path=DEMO / picture)
        browser.close()


if __name__ == "__main__":
    main()
