"""A house file written from what patterns show: the choices found, and what else stands in them as comments."""

from __future__ import annotations

import json
from collections.abc import Iterator

from lint.house.model import House
from lint.restyle.habits import FormHabit, Habit


def as_house_file(habits: list[Habit], forms: list[FormHabit], names: list[str]) -> str:
    """The text of a house file, to be read by its next editor."""
    lines = [
        f"# The house that {'this pattern implies' if len(names) == 1 else 'these patterns imply'}: {', '.join(names)}.",
        "# What stands behind # was found too, less often.  Strike out what is chance, and add what is missing;",
        "# `frogproof house FILE --explain` says what it demands, `frogproof house --keys` what else it could.",
        "# name: the name that reports show",
    ]
    done: set[str] = set()
    keys = list(House.model_fields)
    for habit in sorted(habits, key=lambda habit: keys.index(habit.key.partition(".")[0])):
        top, _, below = habit.key.partition(".")
        if below and top not in done:
            lines.append(f"{top}:")
            done.add(top)
        lines.append(f"{'  ' if below else ''}{below or top}: {_value(habit.form)}{_comment(habit)}")
    if forms:
        lines.append("abbreviations:")
        lines += _abbreviations(forms)
    return "\n".join(lines) + "\n"


def _value(form: str | tuple[str, ...]) -> str:
    return _quoted(form) if isinstance(form, str) else f"[{', '.join(map(_quoted, form))}]"


def _comment(habit: Habit) -> str:
    if not habit.otherwise:
        return ""
    examples = [_plain(words) for words in habit.examples if words.strip()]
    shown = f": {', '.join(examples)}" if examples else ""
    times = "once" if habit.otherwise == 1 else f"{habit.otherwise} times"
    return f"  # otherwise {times}{shown}"


def _abbreviations(forms: list[FormHabit]) -> Iterator[str]:
    for habit in forms:
        entry = habit.entry
        fields = [f"use: {_quoted(entry.use)}", f"means: {_quoted(entry.means)}"]
        if entry.plural is not None:
            fields.append(f"plural: {_quoted(entry.plural)}")
        if entry.replace:
            fields.append(f"replace: [{', '.join(_quoted(form) for form in entry.replace)}]")
        if not entry.listed:
            fields.append("listed: false")
        others = ", ".join(f"{form} ({number})" for form, number in habit.others)
        yield f"  - {{{', '.join(fields)}}}{f'  # also found: {_plain(others)}' if others else ''}"


def _quoted(words: str) -> str:
    """A word as YAML takes it: in quotes unless it is plain."""
    plain = words.replace(" ", "").isalpha() and words.isascii() and words.strip() == words
    return words if plain else json.dumps(words, ensure_ascii=False)


def _plain(words: str) -> str:
    return " ".join(words.split())[:60]
