"""One pattern of many: what is to be checked, as plain values that go to any process, and the checking of it."""

from __future__ import annotations

import gc
import hashlib
import traceback
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from lint.documents.inputs import Found, content
from lint.documents.registry import read_document
from lint.documents.unreadable import Unreadable
from lint.house.loading import book_for, house_beside, load_house
from lint.house.model import House
from lint.inspection import inspect
from lint.maker.view import NoSuchSize, report_for, size_called
from lint.reports.outputs import OUTPUTS, Asked, WrongKind
from lint.reports.summary import Checked, summary_of
from lint.rulebook import Rulebook, load_rulebook
from lint.rulefolder import RuleFileError


@dataclass(frozen=True, slots=True)
class Task:
    """A pattern to check: its bytes, or why there are none; `house` is a House in JSON, "" for none.

    `anchor` tells the pattern from all others on a page.
    """

    path: str
    raw: bytes
    problem: str
    house: str
    anchor: str


class Houses:
    """The house that each pattern is held to: the one named for all, else the house.yaml beside or above it; each is read once."""

    def __init__(self, book: Rulebook, named: House | None = None, none: bool = False) -> None:
        self._book, self._none = book, none
        self._named = named.model_dump_json() if named is not None else None
        self._beside: dict[tuple[Path, str | None], tuple[Path | None, str, str]] = {}

    def of(self, pattern: str, folder: str | None = None) -> tuple[str, str]:
        """A pattern's house in JSON, "" for none, and what is wrong with its file, "" for nothing.

        `folder`: the one that the pattern was found under.
        """
        if self._named is not None or self._none or pattern == "-":
            return self._named or "", ""
        key = Path(pattern).parent, folder
        if key not in self._beside:
            self._beside[key] = self._look(Path(pattern), Path(folder) if folder is not None else None)
        return self._beside[key][1:]

    @property
    def files(self) -> list[Path]:
        """The house files that were found beside patterns."""
        return [path for path, _, _ in self._beside.values() if path is not None]

    def _look(self, pattern: Path, folder: Path | None) -> tuple[Path | None, str, str]:
        path = house_beside(pattern, folder)
        if path is None:
            return None, "", ""
        try:
            return path, load_house(path, self._book).model_dump_json(), ""
        except RuleFileError as error:
            return path, "", f"the house file beside it cannot be used: {'; '.join(str(error).splitlines())}"


def tasks_of(found: Iterable[Found], houses: Houses) -> Iterator[Task]:
    """The tasks of files, each read when its turn comes."""
    seen: dict[str, int] = {}
    for one in found:
        raw, problem = content(one)
        house, wrong = houses.of(one.path, one.folder)
        anchor = "p" + hashlib.sha256(one.path.encode("utf-8", "surrogatepass")).hexdigest()[:10]
        seen[anchor] = seen.get(anchor, 0) + 1
        yield Task(one.path, raw, problem or wrong, house, anchor if seen[anchor] == 1 else f"{anchor}-{seen[anchor]}")


def checked(task: Task, asked: Asked) -> Checked:
    """Check one pattern, in whatever process.  Raises nothing but WrongKind, so that no pattern stops the others."""
    if task.problem:
        return Checked(task.path, problem=task.problem)
    try:
        held, book = _house_and_book(task.house)
        report = inspect(read_document(task.raw, task.path), book, asked.terms, asked.with_workings, held)
        if asked.size is not None:
            report = report_for(report, size_called(report, asked.size), asked.with_workings)
        shares = {output: OUTPUTS[output].share(report, task.raw, asked, task.anchor) for output in asked.outputs}
        return Checked(task.path, summary_of(report), shares)
    except (Unreadable, NoSuchSize) as error:
        return Checked(task.path, problem=str(error))
    except WrongKind:
        raise
    except Exception as error:  # noqa: BLE001 - a fault of the program's own must not cost the other patterns
        return Checked(task.path, problem=_own_fault(error))
    finally:
        _freeze()
        gc.enable()


def _own_fault(error: Exception) -> str:
    last = traceback.extract_tb(error.__traceback__)[-1]
    place = f"{Path(last.filename).stem}, line {last.lineno}"
    return f"could not be checked, through a fault of the program's own ({type(error).__name__} in {place}); please report it"


@lru_cache(maxsize=16)
def _house_and_book(house: str) -> tuple[House | None, Rulebook]:
    """A house and the rules as it has them; made once in each process."""
    book = load_rulebook()
    if not house:
        return None, book
    held = House.model_validate_json(house)
    return held, book_for(held, book)


@lru_cache(maxsize=1)
def _freeze() -> None:
    """After the first pattern: what was loaded stays, and need not be looked through for garbage ever after."""
    gc.freeze()
