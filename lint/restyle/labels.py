"""Row labels in the house's form: their word, the side the number stands on, the joint of a range, the sign behind."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import regex

from lint.expression import expression
from lint.house.samples import LabelForm, label_form, range_form
from lint.pattern import Label, Row
from lint.restyle.edits import Edit, cased
from lint.restyle.ground import Ground
from lint.rulebook import LayoutFile
from lint.source import Span
from lint.tree import RowCall, walk

RULE = "label-not-house"
_SIGN = expression(r"[ \t]*(?::|\.(?!\d)|[-–—]+|;|=|\||●|\))(?!\s*\d+\s*[-–]\s*\d+\s*:)|")
_JOINT = expression(r"(?<=\d)\s*(?:-|–|—|\bto\b|\bthru\b|\bthrough\b)\s*(?=\d)")
# "2-5", "2nd to 5th", "2-R5": the word may be said again before a later figure
_FIGURES = (
    r"(?:\d+(?:st|nd|rd|th)?\b|[\s,;:/&()\[\]\-–—]|\b(?:to|thru|through|and)\b|(?<=\W)(?:{word})\b?\.?\s*(?=\d))*"
    r"(?:\d+(?:st|nd|rd|th)?|(?<=\d|st|nd|rd|th)[)\]])"
)


@dataclass(frozen=True, slots=True)
class _Core:
    """A label cut up: what stands before its word, the word, the figures, and what follows them."""

    prefix: str
    word: str
    figures: str
    extras: str


def edits(ground: Ground) -> Iterator[Edit]:
    """Every label that the house writes otherwise."""
    labels = ground.house.labels
    if not (labels.row or labels.round):
        return
    for part in ground.pattern.parts:
        for row in part.rows:
            if row.label is not None:
                yield from _edits(ground, row.label)
            if not row.unread():
                yield from _references(ground, row)


def _references(ground: Ground, row: Row) -> Iterator[Edit]:
    """Rows called for by their numbers: "Rep R3", "As 5th round", "Rep 2nd to 5th rows", as the house would label them."""
    word = _any_word(ground.book.layout)
    again = rf"(?:(?:{word})\b?\.?\s*)?"
    joint = r"\s*(?:-|–|—|,|&|\band\b|\bto\b|\bthru\b|\bthrough\b)\s*(?:and\s+)?"
    figures, ordinals = rf"\d+(?:{joint}{again}\d+)*", rf"\d+(?:st|nd|rd|th)(?:{joint}{again}\d+(?:st|nd|rd|th))*"
    named = expression(
        rf"(?i)(?<!\w)(?:(?P<word>{word})\.?(?P<space>\s?)(?P<figures>{figures})(?!\w|\s+(?:more\s+)?times)"
        rf"|(?<!\b(?:every|each|next|following|foll|alternate|alt)\s+)(?P<ordinals>{ordinals})\s+(?P<behind>{word})(?!\w))"
    )
    kind = row.label.kind if row.label is not None else _kind_of_part(ground, row)
    for step in walk(row.steps):
        form = _form_for(ground, step.kind or kind) if isinstance(step, RowCall) else None
        for match in named.finditer(ground.source.text, step.span.start, step.span.end) if form is not None else ():
            single, several = form
            printed = match["figures"] or match["ordinals"]
            told = expression(rf"(?i)(?<=\W)(?:{word})\b?\.?\s*(?=\d)").sub("", printed)
            many = expression(r"\d\D+\d").search(told) is not None
            own = _plural(single) if many else single.singular
            words = (match["word"] or match["behind"]).lower()
            if single.ordinal == (match["behind"] is not None) and words in (own.lower(), single.singular.lower()):
                continue  # "row 3" beside labels "Row 3:" is the house's, too
            yield Edit(
                Span(*match.span()), _written(_Core("", "", told, ""), single, several, many), RULE, "row labels"
            )


def _kind_of_part(ground: Ground, row: Row) -> str:
    """Whether a line without a label stands among rows or among rounds; nothing where it stands among both."""
    part = next(part for part in ground.pattern.parts if row in part.rows)
    kinds = {one.label.kind for one in part.rows if one.label is not None}
    return kinds.pop() if len(kinds) == 1 else ""


def _form_for(ground: Ground, kind: str) -> tuple[LabelForm, LabelForm | None] | None:
    """How the house labels one row or round, and several."""
    labels = ground.house.labels
    forms = {"row": (labels.row, labels.rows), "round": (labels.round, labels.rounds)}
    single, several = forms.get(kind, (None, None))
    return (label_form(single), range_form(several) if several else None) if single is not None else None


def _plural(form: LabelForm) -> str:
    return form.singular + "s" if len(form.singular) > 1 else form.singular


def _edits(ground: Ground, label: Label) -> Iterator[Edit]:
    text, forms = ground.source.text, _form_for(ground, label.kind)
    if forms is None or label.unclear:
        return
    form, ranged = forms
    printed = ground.source.slice(label.span)
    bare = expression(r"(\d+(?:\s*[-–]\s*\d+)?)\s*[).:|●•]?").fullmatch(printed)
    core = _Core("", "", bare[1], "") if bare else _cut(printed, ground.book.layout)
    if core is None:
        yield from _word_alone(ground, label, form, printed)
        return
    many = len(label.numbers) > 1 or any(len(numbers) > 1 for numbers in label.by_size)
    new = _written(core, form, ranged, many)
    sign = _SIGN.match(text, label.span.end)
    end = sign.end()
    apart = "" if end >= len(text) or text[end].isspace() or text[end] in "*_" and text[end - 1] not in " \t" else " "
    if form.sign:
        new += form.sign + apart  # but "**Row 1:** Ch 3", where the mark closes what is set in bold
    elif sign[0].strip():
        new += apart
    yield Edit(Span(label.span.start, end), new, RULE, "row labels")


def samples(ground: Ground, kind: str) -> list[str]:
    """How the pattern's own labels of a kind ("row" or "round") would write the first row, one for each label."""
    found = []
    for part in ground.pattern.parts:
        for row in part.rows:
            label = row.label
            if label is None or label.kind != kind or label.unclear or len(label.numbers) != 1 or label.by_size:
                continue
            core = _cut(ground.source.slice(label.span), ground.book.layout)
            if core is None or core.prefix:
                continue
            sign = _SIGN.match(ground.source.text, label.span.end)[0].replace("\t", " ")
            sign = sign if sign.strip() not in (";", "|", "●") else ""
            ordinal = expression(r"\d+(?:st|nd|rd|th)").match(core.figures) is not None
            printed = ground.source.slice(label.span)
            space = " " if f"{core.word} " in printed or ordinal else ""
            found.append(f"1st {core.word}{sign}" if ordinal else f"{core.word}{space}1{sign}")
    return [sample for sample in found if _readable(sample)]


def _readable(sample: str) -> bool:
    try:
        label_form(sample)
    except ValueError:
        return False
    return True


def _cut(printed: str, layout: LayoutFile) -> _Core | None:
    word = _any_word(layout)
    figures = _FIGURES.replace("{word}", word)
    match = expression(
        rf"(?is)(?P<prefix>(?:[^\d]*\s)?)(?P<word>{word})\b?\.?\s*:?\s*(?P<figures>{figures})(?P<extras>.*)"
    ).fullmatch(printed) or expression(
        rf"(?is)(?P<prefix>)(?P<figures>{figures})\s+(?P<word>{word})\b(?P<extras>.*)"
    ).fullmatch(printed)
    if match is None:
        return None
    once = expression(rf"(?i)(?<=\W)(?:{word})\b?\.?\s*(?=\d)").sub("", match["figures"].strip())
    return _Core(match["prefix"], match["word"], once, match["extras"])


def _any_word(layout: LayoutFile) -> str:
    """A pattern for all words of row labels, the longest first."""
    words = sorted((*layout.row_words, *layout.round_words, *layout.either_words), key=len, reverse=True)
    return "|".join(regex.escape(one) for one in words)


def _written(core: _Core, form: LabelForm, ranged: LabelForm | None, many: bool) -> str:
    figures = expression(r"(?i)(\d)(?:st|nd|rd|th)\b").sub(r"\1", core.figures)
    if ranged is not None:
        figures = _JOINT.sub(ranged.joint, figures)
    if form.ordinal:
        figures = expression(r"\d+").sub(lambda match: _ordinal(int(match[0])), figures)
        word = _plural(form) if many else form.singular
        return f"{core.prefix}{figures} {word}{core.extras}"
    word = form.singular
    if many:
        word = ranged.word if ranged is not None else _plural(form)
    return f"{core.prefix}{word}{form.space}{figures}{core.extras}"


def _ordinal(number: int) -> str:
    ending = {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{'th' if 10 < number % 100 < 14 else ending}"


def _word_alone(ground: Ground, label: Label, form: LabelForm, printed: str) -> Iterator[Edit]:
    """ "Next round:", "Division rnd:": the word alone."""
    layout = ground.book.layout
    words = layout.row_words if label.kind == "row" else layout.round_words
    for match in expression(rf"(?i)\b(?:{'|'.join(words)})\b").finditer(printed):
        new = form.singular if len(form.singular) > 1 else match[0]
        new += "s" if match[0].lower().endswith("s") else ""
        span = Span(label.span.start + match.start(), label.span.start + match.end())
        yield Edit(span, cased(new.lower(), match[0]), RULE, "row labels")
