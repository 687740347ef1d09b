"""Row labels in order, yarn joined before it is worked with, sections present."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lint.checks.context import Context
from lint.checks.words import explains_letters, has_list, spells_all_out
from lint.expression import expression
from lint.finding import Finding, Related
from lint.pattern import Label, Part, Row
from lint.source import Span
from lint.tree import (
    MAKES_STITCHES,
    Chain,
    FastenOff,
    Group,
    JoinYarn,
    MakeRing,
    OpenWork,
    Remark,
    Repeat,
    RowCall,
    Step,
    Unread,
    UseYarn,
    Work,
    walk,
)

_OF_A_SORT = expression(
    r"(?i)\d+\s?(?:st|nd|rd|th)\s+(?!row|rnd|round)\p{L}+\s+\p{L}+"
)  # "1st dec row": has its own count


_GOES_ON = expression(
    r"(?i)\b(?:cont(?:inue|inuing)?|keep|carry|go\s+on|rep(?:eat)?)\b"
)  # words that may be for more rows


def check_order(context: Context) -> Iterator[Finding]:
    """row-number-out-of-order: a number left out, doubled or slipped, in any size; numbers may start again at 1."""
    names = context.pattern.sizes
    for part in context.pattern.parts:
        yield from _backwards(context, part)
        if any(row.label is not None and row.label.alternate for row in part.rows):
            continue  # "Row 2 and all even rows": the others have gaps
        slips: dict[Span, list[tuple[int, _Slip]]] = {}
        for size in range(max(1, len(names))):
            for slip in _slips(part, size):
                slips.setdefault(slip.label.span, []).append((size, slip))
        for found in slips.values():
            slip = found[0][1]
            yield context.finding(
                "row-number-out-of-order",
                slip.label.span,
                part.name,
                slip.label.words,
                sizes=tuple(names[size] for size, _ in found) if len(found) < len(names) else (),
                why=f"follows {slip.before.words if slip.before is not None else 'the start of the piece'}",
                guess=slip.guess,
                expected=slip.expected,
                found=slip.label.at(found[0][0])[0],
                related=(Related(slip.before.span, "the row before"),) if slip.before is not None else (),
            )


def _is_range_up_to(label: Label, number: int) -> bool:
    """Whether a label names several rows, and could end on a number."""
    return len(label.numbers) > 1 and not label.by_size and label.numbers[0] <= number


def _backwards(context: Context, part: Part) -> Iterator[Finding]:
    """Ranges that end before they begin: "Rows 11-1"."""
    for row, coming in zip(part.rows, (*part.rows[1:], None), strict=True):
        label = row.label
        if label is None or label.by_size or len(label.numbers) != 2 or label.numbers[1] > label.numbers[0]:
            continue
        if not expression(r"\d\s*[-–—]\s*\d").search(label.words):
            continue
        after = coming.label.numbers[:1] if coming is not None and coming.label is not None else ()
        guess = f" Should the range end on {after[0] - 1}?" if after and after[0] - 1 > label.numbers[0] else ""
        why = f"begins on {label.numbers[0]} and ends on {label.numbers[1]}"
        yield context.finding("row-number-out-of-order", label.span, part.name, label.words, why=why, guess=guess)


@dataclass(frozen=True, slots=True)
class _Slip:
    """A label that does not go on from the one before (None: the start of the piece)."""

    label: Label
    before: Label | None
    expected: int
    guess: str


@dataclass(frozen=True, slots=True)
class _Numbered:
    """A label, and the numbers that one size reads in it."""

    label: Label
    numbers: tuple[int, ...]


def _slips(part: Part, size: int) -> Iterator[_Slip]:
    """The labels out of order as one size reads them; a number that only other sizes work is not left out."""
    others, shared = set(), set()  # of rows that this size does not work; of ranges that end later in others
    for row in part.rows:
        if row.label is not None:
            numbers = {number for told in (*row.label.by_size, row.label.numbers) for number in told}
            if not _works(row, size):
                others |= numbers
            elif row.label.by_size:
                shared |= numbers.difference(row.label.at(size))
    for index, run in enumerate(_runs(part, size)):
        yield from _order(run, others, shared, opens=not index)


def _runs(part: Part, size: int) -> Iterator[list[_Numbered]]:
    """The labels that should number on from each other: rows called for and numbers with gaps part them."""
    run: list[_Numbered] = []
    joined = False  # yarn was joined in a line of its own: the other side of a neck has the numbers of the first
    for row in part.rows:
        label = row.label
        joined = joined or label is None and any(isinstance(step, JoinYarn) for step in row.steps)
        if label is not None and (label.unclear or label.rows is not None or _OF_A_SORT.search(label.words)):
            parts = True
        elif label is not None and not label.numbers and any(isinstance(step, JoinYarn) for step in row.steps):
            parts = True  # "Buttonband: Rejoin yarn at lower edge, …": a new beginning
        elif label is None or not label.numbers:
            parts = (
                (label is None or bool(row.unread()))
                and (
                    any(isinstance(step, (RowCall, OpenWork)) for step in row.steps)
                    or any(expression(r"(?i)\b(?:row|rnd|round)s?\b").search(step.words) for step in row.unread())
                )
            )  # or several rows told under a name: "Shape sleeve: Inc 1 st at each end of next row and every foll alt row …"
            parts = parts or any(isinstance(step, RowCall) and _several(step) for step in row.steps)
        elif not _works(row, size):
            continue
        else:
            numbers = label.at(size)
            parts = numbers != tuple(range(numbers[0], numbers[0] + len(numbers)))  # "Rows 2, 4 and 6"
            if not parts:
                if joined and run and run[0].numbers[0] <= numbers[0] <= run[-1].numbers[-1]:
                    yield run
                    run = []
                run.append(_Numbered(label, numbers))
                joined = False
                parts = len(numbers) == 1 and any(isinstance(step, RowCall) and _several(step) for step in row.steps)
                parts = parts or len(numbers) == 1 and any(_GOES_ON.search(step.words) for step in row.unread())
        if parts:
            yield run
            run = []
    yield run


def _several(call: RowCall) -> bool:
    """Whether a row is the first of several that its words call for: "Row 5: Work 4 rows even"."""
    return call.rows is not None or call.times is not None or call.until is not None or call.open_ended


def _order(run: list[_Numbered], others: set[int], shared: set[int], opens: bool) -> Iterator[_Slip]:
    """One slip for each number that is off; one that slipped by itself does not move those after it.

    `others`: numbers that only other sizes work; `shared`: those at the end of a range that this size leaves earlier, behind
    which a row may have one number for all.  `opens`: the run is the first of its piece, and should begin at 1.
    """
    last: tuple[int, Label] | None = None
    printed: int | None = None  # the number of a label that slipped: those after it may go on from that
    for at, (one, coming) in enumerate(zip(run, (*run[1:], None), strict=False)):
        label, first, count = one.label, one.numbers[0], len(one.numbers)
        if at == 0 and coming is not None and 1 < coming.numbers[0] <= first and _rest_goes_on(run):
            expected = coming.numbers[0] - count  # "Rnd 6, Rnds 6-11, Rnd 12": the first one slipped
            if expected > 0:
                yield _Slip(label, None, expected, f" Should it be {expected}?")
                last = (expected + count - 1, label)
                continue
        if last is not None and {last[1].kind, label.kind} == {"row", "round"}:
            last = (one.numbers[-1], label)  # rounds after rows have numbers of their own, or go on
            continue
        goes_on = last[0] + 1 if last is not None else 1
        alone = coming is not None and coming.numbers[0] == goes_on + count  # the next numbers on as if this were right
        fits = first in (goes_on, (printed or -1) + 1) or first == 1 and last is not None and not alone
        elsewhere = others if label.by_size else others | shared
        near = goes_on < first <= goes_on + len(elsewhere)  # a number of thirty figures is not run up to
        fits = fits or near and elsewhere.issuperset(range(goes_on, first))
        if fits or last is None and not (opens and alone and first > 1):
            last = (one.numbers[-1], label)
            continue
        word = "row" if label.kind == "row" else "round"
        left_out = first > goes_on and not alone
        guess = f" Is a {word} {goes_on} left out?" if left_out else f" Should it be {goes_on}?"
        follows = coming is not None and coming.numbers[0] == one.numbers[-1] + 1
        if follows and first < goes_on and last is not None and _is_range_up_to(last[1], first - 1):
            guess = f" Should {last[1].words} end on {first - 1}?"  # what comes goes on from this number as printed
        yield _Slip(label, last[1] if last is not None else None, goes_on, guess)
        last = (one.numbers[-1] if left_out else goes_on - 1 + count, label)
        printed = one.numbers[-1]


def _rest_goes_on(run: list[_Numbered]) -> bool:
    """Whether every label but the first goes on from the one before it."""
    pairs = zip(run[1:], run[2:], strict=False)
    return all(one.numbers[-1] + 1 == other.numbers[0] and one.label.kind == other.label.kind for one, other in pairs)


def _works(row: Row, size: int) -> bool:
    return (row.sizes is None or size in row.sizes) and row.label is not None and row.label.worked(size)


# of the second of two legs
_KEPT = (
    *(
        "do not fasten",
        "don't fasten",
        "do not cut",
        "don't cut",
        "do not break",
        "don't break",
        "do not fo",
        "don't fo",
    ),
    *("keep the yarn", "keep yarn", "leave the yarn", "leave yarn", "yarn attached"),
)


# "change to Oatmeal", "join colour B", "with Rust"; "cut the Denim", "fasten off B"; "3 sc in C" within a row
_TAKEN_UP = expression(
    r"(?i)\b(?:to|with|in|using|join|attach|rejoin)\s+(?:the\s+|new\s+|colou?r\s+|yarn\s+)*+([\p{L}\d]+)"
)
_CUT = expression(
    r"(?:(?i:\bcut)\s+(?i:(?:the|colou?r)\s+)*+(?!(?i:yarn|thread)\b)|(?i:\b(?:fasten|finish|break|end)(?:\s+off)?+)\s+(?i:(?:the|colou?r|yarn)\s+)*+(?=\p{Lu}))"
    r"([\p{L}\d]++)(?:\s+(?i:yarn|colou?r))?\s*$"
)
_CHANGED = expression(r"(?i)\W*(?:chang|switch)(?:e|es|ing)?\s+(?:back\s+)?(?:to|colou?rs?|yarns?)\b")
_WITHIN = expression(r"\b(?:in|with)\s+(?:[Cc]olou?r\s+)?(?!BLO|FLO)\p{Lu}\w*")


def _changes(context: Context, step: Step) -> bool:
    """Whether a remark behind work takes up another yarn: "sc around, changing to B in last st"."""
    return isinstance(step, Remark) and _CHANGED.match(context.source.slice(step.span)) is not None


def _named(context: Context, step: FastenOff | JoinYarn | Remark | UseYarn) -> str | None:
    """The yarn that a step names, in small letters."""
    words = context.source.slice(step.span)
    said = getattr(step, "colour", None) or next(
        iter((_CUT if isinstance(step, FastenOff) else _TAKEN_UP).findall(words)), None
    )
    return said.lower() if said else None


def check_yarn(context: Context) -> Iterator[Finding]:
    """yarn-not-joined: work that goes on after fastening off, with no yarn joined."""
    # a colour in the label joins its yarn, unless this pattern says "Join B" behind such labels
    label_joins = not any(
        row.label is not None and row.label.colour and any(isinstance(step, JoinYarn) for step in walk(row.steps))
        for part in context.pattern.parts
        for row in part.rows
    )
    everyone = range(max(1, len(context.pattern.sizes)))
    for part in context.pattern.parts:
        attached: bool | None = None  # not known at the start of a piece
        off: Span | None = None
        cut_for: set[int] = set()  # the sizes whose yarn it was
        colour: str | None = None
        held: str | None = None  # the yarn on the hook, where the words name it
        for row in part.rows:
            if row.label is not None and _WITHIN.search(context.source.slice(row.span)):
                held = None  # "3 sc in C, 3 sc in B": either may be
            if (
                label_joins
                and row.label is not None
                and row.label.colour
                and colour is not None
                and row.label.colour.lower() != colour.lower()
            ):
                attached = True
            stays = row.label is None and any(word in context.source.slice(row.span).lower() for word in _KEPT)
            for step in row.steps:
                if isinstance(step, FastenOff) and not stays:
                    cut = _named(context, step)
                    if cut is None or cut == held:
                        attached, off, cut_for = False, step.span, set(row.sizes or everyone)
                    elif held is None:
                        attached = None  # which of the yarns is worked with is not told
                elif isinstance(step, (JoinYarn, UseYarn)) or _changes(context, step):
                    attached, colour, held = True, getattr(step, "colour", None) or colour, _named(context, step)
                elif isinstance(step, MakeRing) or _stands_anew(context, step):
                    attached = True
                elif isinstance(step, (OpenWork, Unread)):
                    attached = None  # words that may join yarn; "Work the second sleeve in the same way": its own join is meant
                elif isinstance(step, RowCall) and attached is False and _joined_in(step, row, part.rows):
                    attached = None  # and whether it is fastened off at their end is not looked into
                elif isinstance(step, (Chain, RowCall, *MAKES_STITCHES)) and attached is False:
                    if cut_for.isdisjoint(row.sizes or everyone):
                        continue  # other sizes, which are written out by themselves
                    if row.label is not None and not _own_start(step, row):
                        if not any(isinstance(s, (JoinYarn, UseYarn)) for s in walk(row.steps)):
                            yield context.finding(
                                "yarn-not-joined",
                                step.span,
                                part.name,
                                row.label.words,
                                related=(Related(off, "fastened off here"),),
                            )
                    attached = True


def _joined_in(call: RowCall, row: Row, rows: tuple[Row, ...]) -> bool:
    """Whether the first of the rows that are worked again joins its yarn: "Rep Rows 3 and 4" where "Row 3: Join B, …"."""
    before = [one for one in rows if one.label is not None and one.span.start < row.span.start]
    if call.first is not None:
        called = [one for one in before if not set(call.first.values).isdisjoint(one.label.numbers)]
    else:
        called = before[-(call.number.lone or 1) :][:1]
    return any(isinstance(step, (JoinYarn, UseYarn)) for one in called for step in walk(one.steps))


def _stands_anew(context: Context, step: Step) -> bool:
    """Whether a step is a standing stitch, "standing dc in any ch-2 sp", which new yarn is joined with."""
    words = context.source.slice(step.span).lower().split() if isinstance(step, Work) else []
    forms = [template.partition("{")[0].strip() for template in context.book.stitches.standing]
    return any(word.startswith(form) for word in words for form in forms)


def _own_start(step, row) -> bool:
    """A row that begins on a chain of its own, or "6 sc in magic ring", "ch 2, 8 hdc in magic ring", starts with new yarn."""
    if isinstance(step, Repeat) and step.items:
        step = step.items[0]  # "*ch 12, sl st in 2nd ch from hook …; rep from * 4 times more": curls
    work = [one for one in walk(row.steps) if isinstance(one, (Work, Group)) and one.places]
    if isinstance(step, Chain) and any(one.places[0].which.value == "from hook" for one in work):
        return True
    begun = work[:1] if isinstance(step, Chain) else [step]
    places = [place for one in begun if isinstance(one, (Work, Group)) for place in one.places]
    return bool(places) and places[0].targets[0].kind.value == "ring"


_BLANKS = expression(r"(\s)\1{2,}+")  # runs of blanks, over which patterns would stumble


def check_sections(context: Context) -> Iterator[Finding]:
    """section-missing: what every pattern has to give, known by heading or content."""
    text = context.source.text
    span = context.pattern.title_span or Span(0, min(len(text), max(1, text.find("\n"))) if text else 0)
    keys = {section.key for section in context.pattern.sections if context.source.slice(section.span).strip(" :\n")}
    if not context.ledger.rows:
        yield context.finding(
            "section-missing", span, what="any instructions that could be found (rows or rounds with labels)"
        )
    squeezed = _BLANKS.sub(r"\1\1", text)
    for section in context.book.sections.required:
        if section.key == "title":
            given = bool(context.pattern.title)
        else:
            listed = section.key == "abbreviations" and (
                has_list(context) or explains_letters(context) or spells_all_out(context)
            )
            given = (
                listed
                or any(key in keys for key in section.headings)
                or any(expression(pattern).search(squeezed) for pattern in section.known_by)
            )
        if not given:
            yield context.finding("section-missing", span, what=section.name)
