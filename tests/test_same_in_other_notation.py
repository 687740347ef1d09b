"""The demo's sound patterns written in other ways: wrapped, abbreviated otherwise, with other signs. The fabric is the same."""

from __future__ import annotations

import textwrap
from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest
import regex
from helpers import DEMO, check

_SOUND = sorted(path for path in DEMO.glob("*.txt") if "faulty" not in path.stem)
_LABEL = regex.compile(r"\s*(?:Rows?|Rnds?|Rounds?|ROWS?|RNDS?|R|Rd)\b")
_LABELLED = regex.compile(r"\s*(?:Rows?|Rnds?|Rounds?|ROWS?|RNDS?|R|Rd)\b[^:.]*[:.]")
_COUNT = regex.compile(r"\.? ?[(\[](\d[^()\[\]]*)[)\]]\.?$")


def _rows(change: Callable[[str], str]) -> Callable[[str], str]:
    """A change of the lines that begin with a row's label."""
    return lambda text: "\n".join(change(line) if _LABEL.match(line) else line for line in text.split("\n"))


def _wrapped(width: int) -> Callable[[str], str]:
    def wrap(text: str) -> str:
        return "\n".join(piece for line in text.split("\n") for piece in textwrap.wrap(line, width) or [""])

    return wrap


def _work(change: Callable[[str], str]) -> Callable[[str], str]:
    """A change of what stands behind a row's label."""

    def changed(line: str) -> str:
        label = _LABELLED.match(line)
        return label[0] + change(line[label.end() :]) if label is not None else line

    return _rows(changed)


def _semicolons(words: str) -> str:
    """Semicolons for the commas between clauses, not for those in brackets."""
    depth, found = 0, []
    for sign in words:
        depth += (sign in "([{") - (sign in ")]}")
        found.append(";" if sign == "," and not depth else sign)
    return "".join(found)


def _in_order(found: regex.Match) -> str:
    number = int(found[2])
    ending = "th" if number % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending} {found[1].lower()} -"


WAYS: dict[str, Callable[[str], str]] = {
    "lines of 60": _wrapped(60),
    "lines of 38": _wrapped(38),
    "hyphens of a word processor": lambda text: text.replace("-", "\u2011"),
    "wide signs": lambda text: text.replace("(", "\uff08").replace(")", "\uff09").replace(",", "\uff0c"),
    "hard spaces": lambda text: text.replace(" sts", "\u00a0sts").replace("next ", "next\u00a0"),
    "line ends of Windows": lambda text: text.replace("\n", "\r\n"),
    "each of the": lambda text: regex.sub(
        r"\bin next (\d+) (sts?|dc|sc|tr|hdc|ch)\b", r"in each of the next \1 \2", text
    ),
    "into": lambda text: regex.sub(r"\b(dc|sc|tr|hdc) in (next|each|first|last|same)\b", r"\1 into \2", text),
    "skip": lambda text: regex.sub(r"\b(?:sk|skip)\b", "miss", text),
    "number first": lambda text: regex.sub(r"\b[Cc]h (\d+)\b(?! sps?)", r"\1 ch", text),
    "sp written out": lambda text: regex.sub(r"\bsps?\b", "space", text),
    "numbers in words": lambda text: regex.sub(
        r"\bnext ([2-5])\b", lambda one: "next " + ("two", "three", "four", "five")[int(one[1]) - 2], text
    ),
    "capitals": _rows(str.upper),
    "bullets": _rows(lambda line: "• " + line),
    "count behind a dash": _rows(lambda line: _COUNT.sub(r" – \1.", line)),
    "count in a sentence": _rows(lambda line: _COUNT.sub(r". You now have \1.", line)),
    "count behind an equals sign": _rows(lambda line: _COUNT.sub(r" = \1", line)),
    "count behind three dashes": _rows(lambda line: _COUNT.sub(r" --- \1", line)),
    "semicolons": _work(_semicolons),
    "figures close to stitches": _work(lambda words: regex.sub(r"\b(\d+) (sc|dc|hdc|tr)\b", r"\1\2", words)),
    "then": _work(lambda words: regex.sub(r", (?=(?:sc|dc|hdc|tr|ch|skip|sk|join|turn)\b)", ", then ", words)),
    "crosses for times": _work(lambda words: regex.sub(r"([)\]]) (\d+) times\b", r"\1 x \2", words)),
    "labels in order": lambda text: regex.sub(r"(?m)^(Rnd|Row|Round) (\d+):", _in_order, text),
    "stars on both sides": lambda text: regex.sub(
        r"\*([^*;]+); rep from \* (around|across|to end)", r"*\1*, rep from * to * \2", text
    ),
    "brackets for stars": lambda text: regex.sub(
        r"\*([^*;()\[\]]+); rep from \* (around|across|to end)", r"(\1) \2", text
    ),
}


@cache
def _plain(path: Path) -> tuple[tuple[int | None, ...], ...]:
    return made_by(path.read_text(encoding="utf-8"))


def made_by(text: str) -> tuple[tuple[int | None, ...], ...]:
    """The stitches of every labelled row in every size."""
    rows = [row for row in check(text).ledger.rows if row.row.label is not None]
    return tuple(tuple(cell.made.stitches if cell.made is not None else None for cell in row.cells) for row in rows)


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("path", _SOUND, ids=lambda path: path.stem)
def test_the_same_pattern_in_another_notation_has_the_same_counts(path: Path, way: str) -> None:
    """How a pattern is set and abbreviated changes no count, and takes no row away."""
    text = path.read_text(encoding="utf-8")
    changed = WAYS[way](text)
    if changed != text:
        assert made_by(changed) == _plain(path)
