"""Runs the checking of many patterns, in this process or in several, in the order in which they were named.

Several processes are joblib's: with its dask backend the same call runs on a cluster.
"""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator, Sequence
from contextlib import closing
from itertools import islice
from pathlib import Path

from lint.batch.keeping import Kept
from lint.batch.task import Houses, Task, checked, tasks_of
from lint.documents.inputs import find
from lint.reports.outputs import Asked, Output, WrongKind
from lint.reports.summary import Checked
from lint.rulebook import load_rulebook

Results = Iterator[Checked]
_AT_ONCE = 32  # patterns for each process before the next are read: bounds what is held


def check_all(
    paths: Sequence[str],
    outputs: Sequence[str] = (),
    jobs: int = 1,
    cache: str | None = None,
    terms: str = "auto",
) -> Results:
    """Check patterns and folders of them; what comes of each is given in order, as soon as it is known.

    `outputs`: names of Output whose shares are wanted; `jobs`: processes, -1 for one a core.  Within
    `joblib.parallel_config(backend="dask")` the work is done on the cluster, whatever `jobs` says.
    """
    asked = Asked(tuple(map(Output, outputs)), terms, several=True)
    kept = Kept(Path(cache), asked) if cache is not None else None
    return results(tasks_of(find(paths), Houses(load_rulebook())), asked, jobs, kept)


def results(tasks: Iterable[Task], asked: Asked, jobs: int = 1, kept: Kept | None = None) -> Results:
    """What comes of each task, in order.  May raise WrongKind, and NotWritten where results cannot be kept."""
    workers = _workers(jobs)
    tasks = iter(tasks)
    while some := list(islice(tasks, _AT_ONCE * workers if workers > 1 else 1)):
        known = {at: one for at, task in enumerate(some) if kept is not None and (one := kept.get(task)) is not None}
        fresh = [task for at, task in enumerate(some) if at not in known]
        with closing(_fresh(fresh, asked, workers)) as coming:
            for at, task in enumerate(some):
                if at in known:
                    yield known[at]
                    continue
                one = next(coming)
                if kept is not None:
                    kept.put(task, one)
                yield one


def _workers(jobs: int) -> int:
    """How many processes there are to work with; joblib is only loaded where several are wanted, or is loaded already."""
    if jobs == 1 and "joblib" not in sys.modules:
        return 1
    from joblib import effective_n_jobs
    from joblib.parallel import get_active_backend

    usual = type(get_active_backend()[0]).__name__ == "LokyBackend"  # else somebody has chosen where the work is done
    workers = effective_n_jobs(jobs)
    return workers if usual else max(2, workers)


def _fresh(tasks: Sequence[Task], asked: Asked, workers: int) -> Iterator[Checked]:
    if workers == 1 or not tasks:
        yield from (checked(task, asked) for task in tasks)
        return
    done = 0
    try:
        for one in _side_by_side(tasks, asked, workers):
            yield one
            done += 1
    except (WrongKind, GeneratorExit):
        raise
    except Exception:  # noqa: BLE001 - a process has died; which of its patterns was to blame is found out one by one
        yield from (_alone(task, asked) for task in tasks[done:])


def _side_by_side(tasks: Sequence[Task], asked: Asked, workers: int) -> Iterator[Checked]:
    from joblib import Parallel, delayed

    return Parallel(n_jobs=workers, return_as="generator")(delayed(checked)(task, asked) for task in tasks)


def _alone(task: Task, asked: Asked) -> Checked:
    """Check a pattern in a process of its own, which may die of it."""
    try:
        return next(iter(_side_by_side([task], asked, 2)))
    except WrongKind:
        raise
    except Exception as error:  # noqa: BLE001 - whatever became of the process
        return Checked(
            task.path, problem=f"could not be checked: the process that read it ended ({type(error).__name__})"
        )
