"""Random and hostile input, outside the normal run: python tests/bench/fuzz.py [--seconds 60] [--cases N] [--jobs 1] [--seed 1] [--hard]

Damaged demo patterns, words of the trade in any order, random characters, texts built to be hard; damaged documents of
every kind, house files, testers' reports, clauses, restyling.  Every one must come to its report and all that is written of
it, or to one clear line, without a traceback and within five seconds of one core; and nothing of it may be alive in a page
or a cell.  Prints how many did, the slowest, the most memory that a process held, and each one that did not.  Exit status 1 if
there was any.  The cases are the same however many processes share them: each is made of the seed and its number.
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
from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass
from functools import lru_cache
from html.parser import HTMLParser
from itertools import count, takewhile
from random import Random

from hostile import DEMOS, SMALL, damaged, damaged_file, hard, house, noise, patchwork, report_of_testers, soup

from lint.documents.registry import read_document
from lint.documents.unreadable import Unreadable
from lint.inspection import inspect
from lint.reports.outputs import Asked, Job, Output, file_of
from lint.reports.summary import Checked
from lint.rulebook import load_rulebook
from lint.rulefolder import RuleFileError
from lint.source import SourceText

LIMIT = 5.0  # seconds of one core
MOST_MEMORY = 1_500  # megabytes
LOT = 50  # cases that a process does before it tells of them
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


Looks = list[tuple[Callable[[bytes], None], bytes]]  # what is looked at when the clock has stopped


def whole(raw: bytes, name: str) -> Looks:
    """A file as the command takes it, to everything that can be written of it; what is to be looked at in that."""
    from lint.reports.outputs import OUTPUTS
    from lint.reports.summary import summary_of

    try:
        source = read_document(raw, name)
    except Unreadable as error:
        _one_line(str(error))
        return []
    report = inspect(source, load_rulebook(), "auto", True)
    shares = {output: OUTPUTS[output].share(report, raw, ASKED, "p1") for output in ASKED.outputs}
    checked = [Checked(name, summary_of(report), shares), Checked(name, problem="x")]
    looks: Looks = []
    for output, path in (
        (Output.HTML, "a"),
        (Output.INDEX, "a.html"),
        (Output.JSON, "a"),
        (Output.SARIF, "a"),
        (Output.GRADING, "a.html"),
    ):
        made = b"".join(file_of(output, Job(path, ASKED, checked)))
        if path.endswith("html") or output is Output.HTML:
            looks.append((inert_page, made))
    for output in (Output.CSV, Output.INDEX, Output.GRADING):
        looks.append((inert_cells, b"".join(file_of(output, Job("a.csv", ASKED, checked)))))
    return looks


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


def demo_case(random: Random) -> Looks:
    """A demo pattern, damaged."""
    return whole(damaged(random, random.choice(DEMOS)).encode("utf-8", "surrogatepass"), "a.txt")


def small_case(random: Random) -> Looks:
    """A small pattern, damaged."""
    return whole(damaged(random, SMALL).encode("utf-8", "surrogatepass"), "a.txt")


def soup_case(random: Random) -> Looks:
    """Words in any order."""
    return whole(soup(random).encode("utf-8", "surrogatepass"), "a.txt")


def patchwork_case(random: Random) -> Looks:
    """Rows of clauses that do not belong together."""
    return whole(patchwork(random).encode("utf-8"), "a.txt")


def noise_case(random: Random) -> Looks:
    """Characters in any order, in some encoding."""
    return whole(noise(random).encode(random.choice(("utf-8", "utf-16", "cp1252")), "replace"), "a.txt")


def document_case(random: Random) -> Looks:
    """A damaged document; most are only read."""
    name, raw = damaged_file(random)
    if random.random() < 0.1:
        return whole(raw, name)
    try:
        read_document(raw, name)
    except Unreadable as error:
        _one_line(str(error))
    return []


def house_case(random: Random) -> None:
    """A damaged house file."""
    from lint.house.loading import read_house

    try:
        read_house(house(random), "house.yaml", load_rulebook())
    except RuleFileError as error:
        if not all(line.startswith(("house.yaml:", "/")) for line in str(error).splitlines()):
            raise Alive(f"no place in {error}") from error


def testers_case(random: Random) -> Looks:
    """A damaged report of a tester, to its page and its tables."""
    from lint.reports.testers_data import as_csv
    from lint.reports.testers_page import as_testers_page
    from lint.testers.review import review

    judged = review(_small_report(), [report_of_testers(random)], random.random() < 0.3)
    return [
        (inert_page, as_testers_page(judged).encode("utf-8", "backslashreplace")),
        (inert_cells, as_csv(judged).encode("utf-8", "backslashreplace")),
    ]


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


KINDS: dict[Callable[[Random], Looks | None], int] = {
    demo_case: 2,
    small_case: 10,
    soup_case: 20,
    patchwork_case: 15,
    noise_case: 10,
    document_case: 20,
    house_case: 5,
    testers_case: 10,
    clause_case: 15,
    restyle_case: 3,
}


def survives(do: Callable[[], Looks | None]) -> tuple[float, str | None]:
    """How long a case takes on one core, and the traceback if there is one."""
    began = time.process_time()
    signal.setitimer(signal.ITIMER_VIRTUAL, 3 * LIMIT)
    took, trace = None, None
    try:
        looks = do()
        took = time.process_time() - began
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        for look, made in looks or ():
            look(made)
    except TooSlow:
        trace = "".join(traceback.format_exc(limit=-6))
    except Exception:  # noqa: BLE001 - whatever it is, it is what we look for
        trace = traceback.format_exc()
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
    return (time.process_time() - began if took is None else took), trace


def _cut_off(*_: object) -> None:
    raise TooSlow


# many cases ---------------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Case:
    """One case and what came of it."""

    name: str
    seconds: float
    trace: str | None

    @property
    def bad(self) -> bool:
        return self.trace is not None or self.seconds > LIMIT


@dataclass(frozen=True)
class Lot:
    """Some cases in a row, as one process did them; of the good ones only the slowest is told of."""

    cases: int
    bad: tuple[Case, ...]
    slowest: Case
    memory: float  # the most that the process ever held, megabytes


def one_case(seed: int, number: int, only: str | None) -> Case:
    """A case, made of the seed and its number alone."""
    kinds = {kind: weight for kind, weight in KINDS.items() if only in (None, kind.__name__)}
    random = Random(f"{seed}/{number}")
    (kind,) = random.choices(list(kinds), list(kinds.values()))
    return Case(f"{seed}/{number} {kind.__name__}", *survives(lambda: kind(random)))


def lot_of(seed: int, numbers: range, only: str | None) -> Lot:
    """The cases of these numbers, one after the other."""
    done = [one_case(seed, number, only) for number in numbers]
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1000
    slowest = max(done, key=lambda case: case.seconds)
    return Lot(len(done), tuple(case for case in done if case.bad), slowest, memory)


def lots(options: argparse.Namespace) -> Iterator[Lot]:
    """What came of all cases, in lots, until their number or the time is up."""
    until = time.monotonic() + options.seconds
    numbers = (
        (range(at, min(at + LOT, options.cases)) for at in range(0, options.cases, LOT))
        if options.cases
        else takewhile(lambda _: time.monotonic() < until, (range(at, at + LOT) for at in count(0, LOT)))
    )
    if options.jobs == 1:
        _begin()
        yield from (lot_of(options.seed, some, options.only) for some in numbers)
        return
    with ProcessPoolExecutor(options.jobs, initializer=_begin) as pool:
        waiting = []
        for some in numbers:  # no more in hand than the processes need: each lot is begun when there is time for it
            waiting.append(pool.submit(lot_of, options.seed, some, options.only))
            if len(waiting) > options.jobs:
                yield waiting.pop(0).result()
        yield from (lot.result() for lot in waiting)


def _begin() -> None:
    signal.signal(signal.SIGVTALRM, _cut_off)
    whole(SMALL.encode(), "a.txt")  # what every process does once counts for no case


def run(options: argparse.Namespace) -> int:
    """All cases, with a word on each sort of fault."""
    cases, memory, slowest, told = 0, 0.0, Case("", 0.0, None), Counter()
    try:
        for lot in lots(options):
            for case in lot.bad:
                where = (case.trace or "slow").strip().splitlines()[-1][:80]
                told[where] += 1
                if told[where] < 4:
                    print(f"CASE {case.name}: {case.seconds:.2f} s\n{(case.trace or '')[-2_500:]}", flush=True)
            if cases // 10_000 < (cases + lot.cases) // 10_000:
                print(f"{cases + lot.cases} cases, {told.total()} bad", flush=True)
            cases += lot.cases
            memory = max(memory, lot.memory)
            slowest = max(slowest, lot.slowest, key=lambda case: case.seconds)
    except BrokenProcessPool:
        told["a process died"] += 1
        print(f"a process died in the cases from {cases} on", flush=True)
    print(
        f"{cases} cases, {told.total()} bad or over {LIMIT:g} s; slowest {slowest.seconds:.2f} s ({slowest.name}); "
        f"most memory {memory:.0f} MB"
    )
    return 1 if told or memory > MOST_MEMORY else 0


def run_hard() -> int:
    """The texts built to be hard, each with its time."""
    _begin()
    bad = 0
    for name, text in hard():
        took, trace = survives(lambda text=text: whole(text.encode(), "a.txt"))
        bad += bool(trace) or took > LIMIT
        print(f"{took:6.2f} s  {name}\n{trace or ''}"[-2_000:], end="", flush=True)
    return 1 if bad else 0


def main() -> int:
    """Run until the time or the number of cases is up."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--seconds", type=float, default=60.0)
    parser.add_argument("--cases", type=int, default=None)
    parser.add_argument("--jobs", type=int, default=1, help="processes that share the cases")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", help="cases of one kind")
    parser.add_argument("--case", type=int, help="one case of the seed, with its traceback")
    parser.add_argument("--hard", action="store_true", help="only the texts built to be hard, each with its time")
    options = parser.parse_args()
    if options.hard:
        return run_hard()
    if options.case is not None:
        _begin()
        case = one_case(options.seed, options.case, options.only)
        print(f"CASE {case.name}: {case.seconds:.2f} s\n{case.trace or ''}")
        return 1 if case.bad else 0
    return run(options)


if __name__ == "__main__":
    sys.exit(main())
