"""The note in brackets that says whether a beginning chain counts, in the house's words."""

from __future__ import annotations

from collections.abc import Iterator

from lint.expression import expression
from lint.restyle.edits import Edit
from lint.restyle.ground import Ground
from lint.source import Span
from lint.tree import Chain, walk

RULE = "turning-chain-note-not-house"
_TAIL = r"(?P<tail>(?:,? (?:here and throughout|now and throughout|throughout|from here on))?)"
_COUNTS = expression(
    rf"(?i)(?:counts?|counting|to count|counted|counts here) as (?:(?:a|an|1|one|first|the first|the 1st|1st) )?"
    rf"(?P<stitch>\p{{L}}+){_TAIL}"
)
_NOT = expression(
    rf"(?i)(?:does not|doesn't|doesn’t|do not) count(?: as (?:(?:a|1|one) )?(?:st|stitch))?{_TAIL}"
    rf"|(?:is )?not counted(?: as (?:(?:a|1|one) )?(?:st|stitch))?{_TAIL.replace('tail', 'end')}"
)


def edits(ground: Ground) -> Iterator[Edit]:
    """Every note beside a chain that the house words otherwise."""
    wanted = ground.house.turning_chain
    if wanted.note is None and wanted.note_not is None:
        return
    for row in ground.rows:
        for step in walk(row.row.steps):
            if isinstance(step, Chain) and step.counting is not None:
                span = _bracketed(ground.source.text, step.counting.span)
                edit = _edit(ground, span) if span is not None else None
                if edit is not None:
                    yield edit


def _bracketed(text: str, span: Span) -> Span | None:
    """The words between the round or square brackets that a note fills."""
    start = text.rfind("(", max(0, span.start - 3), span.start + 1)
    start = start if start >= 0 else text.rfind("[", max(0, span.start - 3), span.start + 1)
    if start < 0:
        return None
    end = text.find(")" if text[start] == "(" else "]", start)
    return Span(start + 1, end) if 0 < end <= span.end + 2 else None


def _edit(ground: Ground, span: Span) -> Edit | None:
    wanted, words = ground.house.turning_chain, ground.source.slice(span)
    counts = _COUNTS.fullmatch(words)
    if counts and wanted.note is not None:
        sample = wanted.note.strip("()").removesuffix("dc")
        return Edit(span, f"{sample}{counts['stitch']}{counts['tail']}", RULE, "notes on turning chains")
    not_counted = _NOT.fullmatch(words)
    if not_counted and wanted.note_not is not None:
        tail = not_counted["tail"] or not_counted["end"] or ""
        return Edit(span, wanted.note_not.strip("()") + tail, RULE, "notes on turning chains")
    return None
