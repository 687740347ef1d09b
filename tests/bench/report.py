"""How fast and how large the report is, outside the normal run: python tests/bench/report.py [--browser]

Figures to reach, on one core of a small machine when nothing else runs: the report of a hundred-row pattern built in 150 ms
after checking and at most 400 kB; a diagram of 2,000 stitches in 300 ms; loaded by Chromium in 1 s; no serious violation
that axe-core finds.  The last two need the `browser` extra and Debian's chromium.
"""

from __future__ import annotations

import shutil
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from lint import check_text
from lint.pictures.diagram import diagram
from lint.reports.page import as_page
from lint.working.graph import stitch_graph

RUNS = 7
_STITCHES = 2_000


def hundred_rows(stitches: int, faulty: bool = True) -> str:
    """A blanket of a hundred printed rows in two colours, with a wrong count in three of them."""
    body = []
    for row in range(2, 101):
        count = stitches + (2 if faulty and row in (23, 57, 88) else 0)
        if row % 4 in (0, 1):
            words = (
                f"With {'AB'[row % 2]}, ch 3 (counts as dc), dc in next st and in each st across, turn. ({count} dc)"
            )
        elif row % 4 == 2:
            words = f"Ch 1 (does not count as a st), sc in each st across, turn. ({count} sc)"
        else:
            words = (
                "Ch 1, sc in first st, *2 sc in next st, sc2tog; rep from * to last 3 sts, sc in each st to end, turn."
            )
        body.append(f"Row {row}: {words}")
    return (
        "Long Furrow Blanket\nUS terms\n\nAbbreviations\nch = chain\nsc = single crochet\ndc = double crochet\nst(s) = stitch(es)\nrep = repeat\n"
        f"\nBLANKET\nWith A, ch {stitches + 1}.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. ({stitches} sc)\n"
        + "\n".join(body)
        + "\nFasten off.\n"
    )


def best(work: Callable[[], object], clock: Callable[[], float] = time.process_time) -> float:
    """The best of several runs, in milliseconds of this process's own time; another clock where others work for it."""
    times = []
    for _ in range(RUNS):
        began = clock()
        work()
        times.append(clock() - began)
    return min(times) * 1000


def built() -> dict[str, str]:
    """The hundred-row reports, one drawn as an outline and one stitch by stitch; prints time and size."""
    pages = {}
    for name, stitches in (("outline", 151), ("drawn", 19)):
        report = check_text(hundred_rows(stitches))
        pages[name] = as_page(report)
        kilobytes = len(pages[name].encode()) / 1000
        took = best(lambda report=report: as_page(report))
        print(f"report of 100 rows ({name}): {took:.0f} ms (at most 150), {kilobytes:.0f} kB (at most 400)")
    return pages


def drawn() -> None:
    """A round piece and a flat one of nearly 2,000 stitches, drawn one by one."""
    disc = "".join(
        f"Rnd {n}: *Sc in next {n - 2} sc, 2 sc in next sc; rep from * 5 times more. ({6 * n} sc)\n"
        for n in range(3, 26)
    )
    round_piece = f"Disc\nUS terms. Worked in a spiral.\nRnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each sc. (12 sc)\n{disc}"
    for name, text in (("round", round_piece), ("flat", hundred_rows(19, faulty=False))):
        report = check_text(text)
        heights = {rule.key: rule.height for rule in report.book.stitches.stitches}
        piece = max(stitch_graph(report.pattern, report.book), key=lambda one: one.stitches)
        graphed = best(lambda report=report: stitch_graph(report.pattern, report.book))
        took = best(lambda piece=piece, heights=heights: diagram(piece, heights, "bench"))
        print(
            f"diagram ({name}, {piece.stitches} stitches): {took:.0f} ms, and {graphed:.0f} ms to work its graph"
            f" (at most 300 for {_STITCHES:,})"
        )


def loaded(pages: dict[str, str]) -> None:
    """The time until Chromium has loaded and laid out a report, and what axe-core finds on it."""
    from axe_playwright_python.sync_playwright import Axe
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright, tempfile.TemporaryDirectory() as folder:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        for name, html in pages.items():
            file = Path(folder, f"{name}.html")
            file.write_text(html, encoding="utf-8")

            def load() -> None:
                page = browser.new_page()
                page.goto(file.as_uri())
                page.evaluate("document.documentElement.scrollHeight")
                page.close()

            print(f"loaded by Chromium ({name}): {best(load, time.perf_counter):.0f} ms (at most 1000)")
            file.write_text(html.replace("default-src 'none'; ", ""), encoding="utf-8")  # so that the engine may run
            page = browser.new_page()
            page.goto(file.as_uri())
            found = Axe().run(page).response["violations"]
            serious = [one["id"] for one in found if one["impact"] in ("serious", "critical")]
            print(f"axe-core ({name}): {len(serious)} serious violations (0) {serious or ''}")
        browser.close()


if __name__ == "__main__":
    reports = built()
    drawn()
    if "--browser" in sys.argv:
        loaded(reports)
