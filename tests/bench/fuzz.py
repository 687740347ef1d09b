"""Random and hostile input, outside the normal run: python tests/bench/fuzz.py [--seconds 60] [--cases N] [--seed 1] [--hard]

Damaged demo patterns, words of the trade in any order, random characters, texts built to be hard; damaged documents of
every kind, house files, testers' reports, clauses, restyling.  Every one must come to its report and all that is written of
it, or to one clear line, without a traceback and within five seconds of one core; and nothing of it may be alive in a page
or a cell.  Prints how many did, the slowest, the most memory held, and each one that did not.  Exit status 1 if there was any.
"""

from __future__ import annotations

import argparse
import csv
import io
import resource
import signal
import sys
import time
import traceback
from collections import Counter
from collections.abc import Callable
from functools import lru_cache
from html.parser import HTMLParser
from random import Random

from hostile import DEMOS, SMALL, damaged, damaged_file, hard, house, noise, report_of_testers, soup

from lint.documents.registry import read_document
from lint.documents.unreadable import Unreadable
from lint.inspection import inspect
from lint.reports.outputs import Asked, Job, Output, file_of
from lint.reports.summary import Checked
from lint.rulebook import load_rulebook
from lint.source import SourceText
from lint.yamlfile import RuleFileError

LIMIT = 5.0  # seconds of one core
MOST_MEMORY = 1_500  # megabytes
ASKED = Asked(
    (Output.HTML, Output.JSON, Output.SARIF, Output.CSV, Output.XLSX, Output.GRADING, Output.SUMMARY, Output.INDEX),
    several=True,
)
_ALIVE = {
    "script",
    "iframe",
    "object",
    "embed",
    "img",
    "base",
    "meta-refresh",
    "audio",
    "video",
    "applet",
    "frame",
    "portal",
}
_FORMULA = ("=", "+", "-", "@", "\t", "\r")


class TooSlow(BaseException):
    """A case that was cut off."""


class Alive(Exception):
    """Something of a pattern that would do something where it is shown."""


# what is done with a case ------------------------------------------------------------------------------------------


def whole(raw: bytes, name: str) -> None:
    """A file as the command takes it, to everything that can be written of it."""
    from lint.reports.outputs import OUTPUTS
    from lint.reports.summary import summary_of

    try:
        source = read_document(raw, name)
    except Unreadable as error:
        _one_line(str(error))
        return
    report = inspect(source, load_rulebook(), "auto", True)
    shares = {output: OUTPUTS[output].share(report, raw, ASKED, "p1") for output in ASKED.outputs}
    checked = [Checked(name, summary_of(report), shares), Checked(name, problem="x")]
    for output, path in (
        (Output.HTML, "a"),
        (Output.INDEX, "a.html"),
        (Output.JSON, "a"),
        (Output.SARIF, "a"),
        (Output.GRADING, "a.html"),
    ):
        made = b"".join(file_of(output, Job(path, ASKED, checked)))
        if path.endswith("html") or output is Output.HTML:
            inert_page(made)
    for output in (Output.CSV, Output.INDEX, Output.GRADING):
        inert_cells(b"".join(file_of(output, Job("a.csv", ASKED, checked))))


def inert_page(raw: bytes) -> None:
    """Raises Alive where a page holds an element or an attribute that does something."""

    class Looks(HTMLParser):
        def handle_starttag(self, tag: str, attributes: list) -> None:
            for name, value in attributes:
                bad = name.startswith("on") or name in (
                    "src",
                    "srcdoc",
                    "action",
                    "formaction",
                    "srcset",
                    "poster",
                    "data",
                    "ping",
                )
                bad = bad or name in ("href", "xlink:href") and ":" in (value or "").split("/")[0]
                if bad:
                    raise Alive(f"{tag} {name}={value}")
            if tag in _ALIVE or tag == "link":
                raise Alive(tag)

    Looks(convert_charrefs=False).feed(raw.decode())


def inert_cells(raw: bytes) -> None:
    """Raises Alive where a cell of a CSV begins as a formula does (numbers may have a sign)."""
    for row in csv.reader(io.StringIO(raw.decode("utf-8-sig"), newline="")):
        for cell in row:
            if cell.startswith(_FORMULA) and not cell.replace("-", "", 1).replace(".", "", 1).isdigit():
                raise Alive(f"cell {cell!r}")


def _one_line(said: str) -> None:
    if "\n" in said or not 3 < len(said) < 300:
        raise Alive(f"not one clear line: {said!r}")


@lru_cache(maxsize=1)
def _small_report():
    return inspect(SourceText(SMALL, "hat.txt"), load_rulebook())


def demo_case(random: Random) -> None:
    """A demo pattern, damaged."""
    whole(damaged(random, random.choice(DEMOS)).encode("utf-8", "surrogatepass"), "a.txt")


def small_case(random: Random) -> None:
    """A small pattern, damaged."""
    whole(damaged(random, SMALL).encode("utf-8", "surrogatepass"), "a.txt")


def soup_case(random: Random) -> None:
    """Words in any order."""
    whole(soup(random).encode("utf-8", "surrogatepass"), "a.txt")


def noise_case(random: Random) -> None:
    """Characters in any order, in some encoding."""
    whole(noise(random).encode(random.choice(("utf-8", "utf-16", "cp1252")), "replace"), "a.txt")


def document_case(random: Random) -> None:
    """A damaged document; most are only read."""
    name, raw = damaged_file(random)
    if random.random() < 0.1:
        whole(raw, name)
        return
    try:
        read_document(raw, name)
    except Unreadable as error:
        _one_line(str(error))


def house_case(random: Random) -> None:
    """A damaged house file."""
    from lint.house.loading import read_house

    try:
        read_house(house(random), "house.yaml", load_rulebook())
    except RuleFileError as error:
        if not all(line.startswith(("house.yaml:", "/")) for line in str(error).splitlines()):
            raise Alive(f"no place in {error}") from error


def testers_case(random: Random) -> None:
    """A damaged report of a tester, to its page and its tables."""
    from lint.reports.testers_data import as_csv
    from lint.reports.testers_page import as_testers_page
    from lint.testers.review import review

    judged = review(_small_report(), [report_of_testers(random)], random.random() < 0.3)
    inert_page(as_testers_page(judged).encode("utf-8", "backslashreplace"))
    inert_cells(as_csv(judged).encode("utf-8", "backslashreplace"))


def clause_case(random: Random) -> None:
    """A clause, read and told in words."""
    from lint.reports.clause import read_clauses

    for answer in read_clauses([soup(random), noise(random)], load_rulebook(), random.choice(("us", "uk", "auto"))):
        answer.as_data()
        answer.in_words()


def restyle_case(random: Random) -> None:
    """A small pattern, damaged, put into other terms."""
    from lint.house.model import House
    from lint.restyling import NotRestyled, restyle

    try:
        restyle(SourceText(damaged(random, SMALL)), House(terms=random.choice(("us", "uk"))), load_rulebook())
    except NotRestyled as error:
        _one_line(str(error))


KINDS: dict[Callable[[Random], None], int] = {
    demo_case: 2,
    small_case: 10,
    soup_case: 25,
    noise_case: 10,
    document_case: 20,
    house_case: 5,
    testers_case: 10,
    clause_case: 15,
    restyle_case: 3,
}


def survives(do: Callable[[], None]) -> tuple[float, str | None]:
    """How long a case takes on one core, and the traceback if there is one."""
    began = time.process_time()
    signal.setitimer(signal.ITIMER_VIRTUAL, 3 * LIMIT)
    try:
        do()
        trace = None
    except TooSlow:
        trace = "".join(traceback.format_exc(limit=-6))
    except Exception:  # noqa: BLE001 - whatever it is, it is what we look for
        trace = traceback.format_exc()
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
    return time.process_time() - began, trace


def _cut_off(*_: object) -> None:
    raise TooSlow


def main() -> int:
    """Run until the time or the number of cases is up."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--seconds", type=float, default=60.0)
    parser.add_argument("--cases", type=int, default=None)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", help="cases of one kind")
    parser.add_argument("--case", type=int, help="one case of the seed, with its traceback")
    parser.add_argument("--hard", action="store_true", help="only the texts built to be hard, each with its time")
    options = parser.parse_args()
    signal.signal(signal.SIGVTALRM, _cut_off)
    whole(SMALL.encode(), "a.txt")
    began, cases, bad, slowest, told = time.monotonic(), 0, 0, (0.0, ""), Counter()
    if options.hard:
        for name, text in hard():
            took, trace = survives(lambda text=text: whole(text.encode(), "a.txt"))
            bad += bool(trace) or took > LIMIT
            print(f"{took:6.2f} s  {name}\n{trace or ''}"[-2_000:], end="", flush=True)
        return 1 if bad else 0
    kinds = {kind: weight for kind, weight in KINDS.items() if options.only in (None, kind.__name__)}
    while cases < options.cases if options.cases else time.monotonic() - began < options.seconds:
        number = cases if options.case is None else options.case
        random = Random(f"{options.seed}/{number}")
        (kind,) = random.choices(list(kinds), list(kinds.values()))
        took, trace = survives(lambda random=random, kind=kind: kind(random))
        cases += 1
        if trace or took > LIMIT:
            bad += 1
            where = (trace or "slow").strip().splitlines()
            told[where[-1][:80]] += 1
            if told[where[-1][:80]] < 4:
                print(f"CASE {options.seed}/{number} {kind.__name__}: {took:.2f} s\n{trace or ''}"[-2_500:], flush=True)
        slowest = max(slowest, (took, f"{kind.__name__} {number}"))
        if options.case is not None:
            break
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1000
    print(
        f"{cases} cases, {bad} bad or over {LIMIT:g} s; slowest {slowest[0]:.2f} s ({slowest[1]}); most memory {memory:.0f} MB"
    )
    return 1 if bad or memory > MOST_MEMORY else 0


if __name__ == "__main__":
    sys.exit(main())
