"""A small edit of a pattern: on its tree, so that rows can be worked again, and as words for its text."""

from __future__ import annotations

from dataclasses import dataclass, replace

from lint.pattern import Pattern, Stated, StatedItem
from lint.source import Span
from lint.tree import Alongside, Either, Group, Passage, Repeat, Step
from lint.working.instances import Instance


@dataclass(frozen=True, slots=True)
class Edit:
    """Steps put in place of one step, or other printed figures.  `cost`: how unlikely such a slip is, by itself."""

    change: str  # "work the repeat 5 times instead of 6"
    cost: float
    old: Step | Stated
    new: tuple[Step, ...] | Stated
    span: Span | None = None  # the stretch of the text that changes
    words: str | None = None  # what it changes to
    clause: str | None = None  # the whole clause as it would read
    also: tuple[tuple[Step, tuple[Step, ...]], ...] = ()  # further steps that change with it
    least: int = 1  # rows that it must mend to be thought of

    @property
    def in_words(self) -> bool:
        """Whether it changes the words of a row, and not a printed count."""
        return not isinstance(self.old, Stated)

    def of_instance(self, instance: Instance) -> Instance:
        """A row to be worked, with the edit made."""
        if isinstance(self.old, Stated):
            stated = self.new if instance.stated == self.old else instance.stated
            inherited = self.new if instance.inherited == self.old else instance.inherited
            return replace(instance, stated=stated, inherited=inherited)
        return replace(instance, steps=self._of_steps(instance.steps))

    def of_pattern(self, pattern: Pattern) -> Pattern:
        """The pattern with the edit made, wherever its rows are called for."""
        parts = []
        for part in pattern.parts:
            rows = []
            for row in part.rows:
                if isinstance(self.old, Stated):
                    rows.append(replace(row, stated=self.new) if row.stated == self.old else row)
                elif row.span.start <= self.old.span.start < row.span.end:
                    rows.append(replace(row, steps=self._of_steps(row.steps)))
                else:
                    rows.append(row)
            parts.append(replace(part, rows=tuple(rows)))
        return replace(pattern, parts=tuple(parts))

    def _of_steps(self, steps: tuple[Step, ...]) -> tuple[Step, ...]:
        for old, new in ((self.old, self.new), *self.also):
            steps = substitute(steps, old, new)
        return steps


def lowered(words: str) -> str:
    """Words that opened a sentence, as they stand within one: "Sc in next sc", but not "FPdc around next dc"."""
    return words[:1].lower() + words[1:] if words[1:2].islower() or words[1:2] == " " else words


def substitute(steps: tuple[Step, ...], old: Step, new: tuple[Step, ...]) -> tuple[Step, ...]:
    """Steps with others in place of one; a passage that is said once and worked again holds the same steps."""
    result: list[Step] = []
    for step in steps:
        if step.span == old.span and step == old:
            result.extend(new)
        else:
            result.append(_within(step, old, new))
    return tuple(result)


def _within(step: Step, old: Step, new: tuple[Step, ...]) -> Step:
    if isinstance(step, Repeat):
        last = substitute(step.last_pass, old, new) if step.last_pass is not None else None
        return replace(step, items=substitute(step.items, old, new), last_pass=last)
    if isinstance(step, (Group, Passage, Alongside)):
        return replace(step, items=substitute(step.items, old, new))
    if isinstance(step, Either):
        return replace(step, options=tuple(substitute(option, old, new) for option in step.options))
    return step


def with_item(stated: Stated, old: StatedItem, new: StatedItem) -> Stated:
    """A printed count with one figure changed."""
    return replace(stated, items=tuple(new if item is old else item for item in stated.items))


def spliced(text: str, whole: Span, span: Span, words: str) -> str:
    """The words of a clause as they would read with a stretch of them changed."""
    return " ".join((text[whole.start : span.start] + words + text[span.end : whole.end]).split())
