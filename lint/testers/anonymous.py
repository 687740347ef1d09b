"""Testers' names replaced by initials, wherever they stand: in claims, in quoted words, in the names of files."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields, is_dataclass, replace
from pathlib import PurePath

import regex

from lint.expression import expression
from lint.testers.claims import Intake, Place, Who


def anonymous(intake: Intake) -> Intake:
    """The same claims with initials for names; two testers with the same initials are numbered."""
    testers = list(dict.fromkeys(claim.who.tester for claim in intake.claims))
    initials = _initials(testers)
    names = list(dict.fromkeys([*(one.place.file for one in (*intake.claims, *intake.unmatched))]))
    files = {name: f"report {number}{PurePath(name).suffix}" for number, name in enumerate(names, 1)}
    sheets: dict[tuple[str, str | None], int] = {}
    for key in dict.fromkeys((one.place.file, one.place.sheet) for one in (*intake.claims, *intake.unmatched)):
        sheets[key] = sum(file == key[0] for file, _ in sheets) + 1
    words = {word: initials[tester] for tester in testers for word in (tester, *tester.split()) if len(word) > 2}
    found = expression(
        rf"(?i)\b(?:{'|'.join(regex.escape(word) for word in sorted(words, key=len, reverse=True))})\b"
        if words
        else "(?!)"
    )
    by_word = {word.casefold(): value for word, value in words.items()}

    def hidden(text: str) -> str:
        return found.sub(lambda match: by_word[match[0].casefold()], text)

    def change(value):
        if isinstance(value, Who):
            return Who(initials[value.tester], value.size)
        if isinstance(value, Place):
            sheet = str(sheets[value.file, value.sheet]) if value.sheet else None  # a title may be a name
            return replace(value, file=files.get(value.file, value.file), sheet=sheet)
        return hidden(value) if isinstance(value, str) else value

    return Intake(
        tuple(_each(claim, change) for claim in intake.claims),
        tuple(_each(one, change) for one in intake.unmatched),
        intake.unread,
    )


def _each(value, change: Callable):
    assert is_dataclass(value)
    return replace(value, **{field.name: change(getattr(value, field.name)) for field in fields(value)})


def _initials(testers: list[str]) -> dict[str, str]:
    found: dict[str, str] = {}
    met: dict[str, int] = {}
    for tester in testers:
        letters = "".join(word[0].upper() for word in expression(r"[\p{L}\p{N}]+").findall(tester)[:3]) or "T"
        met[letters] = met.get(letters, 0) + 1
        found[tester] = letters if met[letters] == 1 else f"{letters}{met[letters]}"
    return found
