"""A page of each pattern in a folder: which file it goes to, always within that folder."""

from __future__ import annotations

import os
from collections.abc import Iterable

from lint.documents.inputs import Found

INDEX = ("index.html", "index.csv")  # the table over all of them
_STEPS = ("", ".", "..")


def page_paths(folder: str, found: Iterable[Found]) -> list[str]:
    """The file of each pattern's page: its own name with .html behind it, numbered where two would have the same."""
    taken = set(INDEX)
    paths = []
    for one in found:
        steps = [step for step in one.name.replace("\\", "/").replace(":", "/").split("/") if step not in _STEPS]
        stem = "/".join(steps) or "pattern"
        name = next(name for name in _names(stem) if name.casefold() not in taken)
        taken.add(name.casefold())  # some disks make no difference between capitals and small letters
        paths.append(os.path.join(folder, *name.split("/")))
    return paths


def _names(stem: str) -> Iterable[str]:
    yield f"{stem}.html"
    number = 2
    while True:
        yield f"{stem}-{number}.html"
        number += 1
