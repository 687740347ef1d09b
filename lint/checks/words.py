"""Abbreviations defined and used, terms mixed, words not understood, brackets, phrases of the word rules."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from itertools import zip_longest

import regex

from lint.checks.abbreviated import POSTS, abbreviations_in, as_printed, joined, known, stem
from lint.checks.calls import not_there
from lint.checks.context import Context
from lint.checks.gated import stands_on, unknown_sizes
from lint.checks.leftovers import lost
from lint.checks.names import misnamed
from lint.checks.passedby import passed_spans
from lint.checks.sizelists import wrong_lists
from lint.expression import Expression, expression
from lint.finding import Finding, Related
from lint.ledger import LedgerRow
from lint.lexicon import Lexeme, in_own_terms, own_forms
from lint.madeonce import made_once
from lint.pattern import Abbreviation
from lint.rulebook import AbbreviationFile
from lint.source import Span
from lint.tree import MAKES_STITCHES, NOT_UNDERSTOOD, Chain, Remark, RowCall, Step, Unread, Work, walk
from lint.working.rownames import answers_to


def check_unread(context: Context) -> Iterator[Finding]:
    """not-understood, brackets-unbalanced, repeat-mark-missing: what stopped the reading of a row."""
    gated = unknown_sizes(context)
    short = [
        *(span for span, _, _ in wrong_lists(context)),
        *gated.values(),
        *passed_spans(context),
    ]  # said by other rules
    gone = list(lost(context))
    other_names = misnamed(context)
    for part in context.pattern.parts:
        for row in part.rows:
            if row.label is None or row.span.start in gated:
                continue
            for step in walk(row.steps):
                if isinstance(step, Unread):
                    if _meets(step.span, short) or _meets(row.span, gone):
                        break
                    yield _unread(context, step, part.name, row.label.words)
                    break
    for span in context.pattern.unplaced:
        line = f"Line {context.source.line_of(span)}"
        why_not = f"nothing tells that it is a row: “{_shown(context.source.slice(span).strip())}”"
        yield context.finding("not-understood", span, None, line, why_not=why_not)
    reported: set[Span] = set()
    follow = {other for explained in context.causes.values() for other in explained.mends}
    for index, row in enumerate(context.ledger.rows):
        if index in follow:
            continue  # what comes of an earlier mistake is told with that
        cell = next((cell for cell in row.cells if cell.stopped_at is not None), row.cells[0])
        if (
            cell.stopped_at is not None
            and not _meets(cell.stopped_at, short)
            and not (row.row.unread() and (row.row.label is not None or row.row.span.start in gated))
            and cell.stopped_at not in reported
            and not _meets(row.row.span, gone)
            and not stands_on(context, row, short)
            and not _as_stopped_there(row, context.ledger.rows[:index])
            and not (row.row.label is not None and not_there(row))
            and not any((cell.stopped_by or "").startswith(f"{name} is nowhere") for name in other_names)
            and not cell.leans
            and not (cell.misfits and not cell.assumed)  # what does not come out is told by itself
        ):
            reported.add(cell.stopped_at)
            span = row.row.label.span if row.row.label is not None else cell.stopped_at
            why_not = cell.stopped_by or "it is not known what it is worked into"
            unread = row.row.unread()
            in_vain = all(isinstance(step, (Unread, Remark)) for step in row.row.steps)  # rows told in other words
            if row.row.label is None and not _works(row.row.steps) and not in_vain:
                continue  # "Fasten off. Block to the measurements given."
            if row.row.label is None and unread:
                why_not = _why_not(unread[0], _shown(context.source.slice(unread[0].span)))
            named = row.label if row.row.label is not None else f"Line {context.source.line_of(span)}"
            explained = context.causes.get(index)
            likely = explained.likely if explained is not None else ()
            yield context.finding("not-understood", span, row.part.name, named, why_not=why_not, likely=likely)


def _meets(span: Span, others: list[Span]) -> bool:
    return any(other.start <= span.end and span.start <= other.end for other in others)


def _as_stopped_there(row: LedgerRow, before: Sequence[LedgerRow]) -> bool:
    """Whether a piece is worked as another, of which a row could not be worked: that is told there."""
    named = [step.part.lower() for step in row.row.steps if isinstance(step, RowCall) and step.part is not None]
    there = False
    for one in before:
        part = one.part.name.lower()
        there = there or any(name in part or part in name for name in named)
        if there and any(cell.stopped_by is not None for cell in one.cells):
            return True
    return False


def _works(steps: tuple[Step, ...]) -> bool:
    """Whether a line makes stitches that are known, or works rows again."""
    known = (step for step in walk(steps) if not (isinstance(step, Work) and step.undefined))
    return any(isinstance(step, (*MAKES_STITCHES, Chain, RowCall)) for step in known)


def _unread(context: Context, step: Unread, part: str, row: str) -> Finding:
    if step.fault in ("never opened", "never closed"):
        return context.finding("brackets-unbalanced", step.span, part, row, sign=step.words, fault=f"is {step.fault}")
    if step.fault is not None:
        return context.finding(
            "repeat-mark-missing", step.span, part, row, words=context.source.slice(step.span), sign=step.fault
        )
    shown = _shown(context.source.slice(step.span))
    return context.finding("not-understood", step.span, part, row, why_not=_why_not(step, shown))


def _shown(words: str) -> str:
    """Words of the text in one line, cut where they are many."""
    return " ".join((words if len(words) <= 60 else words[:57] + "…").split())


def _why_not(step: Unread, words: str) -> str:
    if step.why == NOT_UNDERSTOOD:
        return f"the words “{words}” were not understood"
    return f"{step.why}: “{words}”"


_OLDER = " Older British patterns print “sc” for the slip stitch: is that what is meant?"


def check_terms(context: Context) -> Iterator[Finding]:
    """terms-mixed: a stitch name of the other country; one finding a word, with all its places."""
    listed = _defined(context)
    places: dict[str, list[tuple[Lexeme, str, str]]] = {}
    for part, row, lexeme in context.once(row_lexemes):
        house_letter = len(lexeme.text) == 1  # "x" for single crochet is no country's
        if lexeme.kind != "stitch" or house_letter or lexeme.lower in listed or lexeme.meant:
            continue
        names = lexeme.lower.split("/")  # "tr/dc" has the names of both countries
        if not any(in_own_terms(one, context.book, context.terms.terms) for one in names):
            places.setdefault(lexeme.lower, []).append((lexeme, part, row))
    names = {"us": "US", "uk": "UK"}
    for word, found in places.items():
        lexeme, part, row = found[0]
        yield context.finding(
            "terms-mixed",
            lexeme.span,
            part,
            row,
            word=lexeme.text,
            own=names[context.terms.terms],
            other=names["uk" if context.terms.terms == "us" else "us"],
            more=_OLDER if context.terms.terms == "uk" and word == "sc" else "",
            related=tuple(Related(other.span, "here too") for other, _, _ in found[1:20]),
        )


_SHAPED = ("increase", "decrease")
_NUMBERED = expression(r"\s?[:.]?\s?\d")
_SIGNS = expression(r"[\s:.)–—-]*")


def row_lexemes(context: Context) -> list[tuple[str, str, Lexeme]]:
    """Every lexeme of every row behind its label, with the names of its part and row."""
    labels = [row.label for part in context.pattern.parts for row in part.rows if row.label is not None]
    names = {label.words.lower() for label in labels if expression(r"(?i)\b(?:dec|inc)").search(label.words)}
    rows_named: dict[str, bool] = {}  # by "dec", "inc": whether a label names such a row
    found: list[tuple[str, str, Lexeme]] = []
    for part in context.pattern.parts:
        for row in part.rows:
            start = row.label.span.end if row.label is not None else row.span.start
            start = _SIGNS.match(context.source.text, start, row.span.end).end()  # there the reader began
            text = context.source.text[start : row.span.end]
            lexemes = context.lexicon.read(text, start)
            for lexeme, after in zip_longest(lexemes, lexemes[1:]):
                if lexeme.lower in ("r", "rs") and _NUMBERED.match(text, lexeme.end - start):
                    continue  # "R2" and "R 2" name a row
                called = lexeme.kind in _SHAPED and after is not None and after.kind in ("row", "round")
                if called and lexeme.lower not in rows_named:
                    rows_named[lexeme.lower] = any(answers_to(name, f"{lexeme.lower} row") for name in names)
                if called and rows_named[lexeme.lower]:
                    continue  # "Work Dec row": a row that its label names
                found.append((part.name, row.label.words if row.label is not None else "", lexeme))
    return found


# abbreviations ---------------------------------------------------------------------------------------


@made_once
def _standard_forms(abbreviations: Mapping[str, AbbreviationFile]) -> frozenset[str]:
    """Everything that is an abbreviation by the standard lists, in lower case."""
    found = {form.lower() for listed in abbreviations.values() for rule in listed.abbreviations for form in rule.forms}
    found |= {"mr", "blo", "flo"}
    return frozenset(form for form in found if not any(map(str.isdigit, form)))


def _defined(context: Context) -> set[str]:
    """Every form that the pattern's own list has; "ch-sp(s): chain space(s)" tells sp and sps as well."""
    forms = {form for entry in context.pattern.abbreviations for form in entry.forms}
    forms |= {piece for form in forms for piece in form.split("-") if "-" in form and piece}
    forms |= {form.replace(" ", "") for form in forms}  # "slst", where the list has "sl st"
    forms |= {"slip st"} if "slst" in forms else set()  # its own name, half spelled out
    forms |= {"chsp"} if {"ch", "sp"} <= forms else set()
    swapped = {entry.meaning.strip().rstrip(".").lower() for entry in context.pattern.abbreviations}
    return forms | swapped | _named(context)  # "stitch = st", and the "treble" of "tr = treble" is told with it


def _named(context: Context) -> set[str]:
    """What a list only names, as known to all: the "ch" and "sc" of "Abbreviations: ch, sc, mr (magic ring)"."""
    lists = (context.source.slice(one.span) for one in context.pattern.sections if one.key == "abbreviations")
    pieces = {piece.strip(" .\n").lower() for text in lists for piece in expression(r"[,;/•·|]").split(text)}
    return pieces & _standard_forms(context.book.abbreviations)


_LONGEST_MEANING = 6  # words: "half double crochet 2 stitches together"


def has_list(context: Context) -> bool:
    """Whether the pattern explains two standard abbreviations or more, under a heading or not.

    A special stitch told in full ("V-st: (dc, ch 1, dc) in st named") does not make a list.
    """
    standard = _standard_forms(context.book.abbreviations)
    short = (entry for entry in context.pattern.abbreviations if len(entry.meaning.split()) <= _LONGEST_MEANING)
    return sum(any(form in standard for form in entry.forms) for entry in short) >= 2


def explains_letters(context: Context) -> bool:
    """Whether the pattern explains two letters of its own or more, a list of a kind: "X - single crochet, V - increase"."""
    return sum(_letter_told(context, entry) for entry in context.pattern.abbreviations) >= 2


def _letter_told(context: Context, entry: Abbreviation) -> bool:
    """Whether an entry explains a letter of the pattern's own with one stitch: "X - single crochet", "V: inc"."""
    kinds = [item.kind for item in context.lexicon.read(entry.meaning.strip(" ."))]
    one = len(kinds) == 1 and kinds[0] in ("stitch", "increase", "decrease", "chain")
    return one and any(len(form) == 1 for form in entry.forms[:1])


def spells_all_out(context: Context) -> bool:
    """Whether the rows have no abbreviation in them that a list would have to explain: "double crochet in each stitch"."""
    standard = _standard_forms(context.book.abbreviations)
    words = [word for _, _, lexeme in context.once(row_lexemes) for word in abbreviations_in(lexeme, standard)]
    plain = {word.lower() for word in (*context.book.plain_words.units, *context.book.plain_words.notation)}
    return bool(context.ledger.rows) and not any(word not in plain for word in words)


def check_undefined(context: Context) -> Iterator[Finding]:
    """abbreviation-undefined: one finding a word, with all its places."""
    if not has_list(context):
        return
    defined = _defined(context) | _glossed(context)
    standard = _standard_forms(context.book.abbreviations)
    plain = {
        word.lower()
        for word in (
            *context.book.plain_words.units,
            *context.book.plain_words.size_names,
            *context.book.plain_words.notation,
        )
    }
    own = own_forms(context.book, context.terms.terms)
    places: dict[str, list[tuple[Lexeme, str, str]]] = {}
    for part, row, lexeme in joined(context.once(row_lexemes)):
        if lexeme.kind == "stitch" and lexeme.lower not in own:
            continue  # terms-mixed has it
        if lexeme.meant:
            continue  # misprint has it
        if lexeme.kind == "together":
            if lexeme.lower == "together":
                continue  # a plain word: "sew the ends together"
            if not any(form in defined for form in (lexeme.lower, "tog")):
                places.setdefault(lexeme.lower, []).append((lexeme, part, row))
            continue
        if known(lexeme.lower, defined):
            continue  # "beg cl" in the list says what "beg" is
        for word in abbreviations_in(lexeme, standard):
            if word in plain or known(word, defined):
                continue
            places.setdefault(stem(word), []).append((lexeme, part, row))
    for piece in context.pattern.parts:
        for row in piece.rows:
            side = expression(r"\b(RS|WS)\b").search(row.label.words) if row.label is not None else None
            if side and not known(side[1].lower(), defined):
                at = row.label.span.start + context.source.slice(row.label.span).find(side[1])
                word = Lexeme("side", side[1], at, at + 2, False)
                places.setdefault(side[1].lower(), []).append((word, piece.name, row.label.words))
    for word, found in places.items():
        lexeme, part, row = found[0]
        if _told_by_sign(context, word):
            continue
        yield context.finding(
            "abbreviation-undefined",
            lexeme.span,
            part or None,
            row or None,
            word=as_printed(lexeme, word),
            related=tuple(Related(other.span, "here too") for other, _, _ in found[1:20]),
        )


def _told_by_sign(context: Context, word: str) -> bool:
    """Whether a sentence anywhere begins with the word, the sign "=" and its meaning: "Seam. sc2tog = single crochet …"."""
    told = rf"(?im)(?:^\W*|[.;(]\s+|\()(?:{regex.escape(word)})\s*=\s*\p{{L}}{{3,}}"
    return expression(told, own_words=True).search(context.source.text) is not None


def _glossed(context: Context) -> set[str]:
    """The forms that a row explains where it first uses them: "Sl st (slip stitch)", "single crochet (sc)"."""
    found: set[str] = set()
    lexemes = [lexeme for _, _, lexeme in context.once(row_lexemes)]
    for one, opened, other, closed in zip(lexemes, lexemes[1:], lexemes[2:], lexemes[3:], strict=False):
        if opened.kind == "(" and closed.kind == ")" and one.kind == other.kind and one.lower != other.lower:
            if one.value == other.value and one.kind not in ("number", "word", "dash"):
                found |= {one.lower, other.lower}
    return found


def check_unused(context: Context) -> Iterator[Finding]:
    """abbreviation-unused: an entry of the list that no instruction, note or other definition uses."""
    if not has_list(context):
        return
    text = context.source.text
    entries = context.pattern.abbreviations
    for entry in entries:
        forms = [
            form
            for form in entry.forms
            if expression(r"\p{L}").search(form) and not expression(r"[()\[\]*]").search(form)
        ]
        if not forms or any(len(form.split()) > 3 for form in forms[:1]) or entry.meaning.strip() == "":
            continue
        if not _used(text, forms, entry.span):
            printed = context.source.slice(entry.span)
            at = printed.lower().find(forms[0])
            word = printed[at : at + len(forms[0])] if at >= 0 else forms[0]
            yield context.finding("abbreviation-unused", entry.span, word=word)


@lru_cache(maxsize=1_000)  # the abbreviations of one pattern are those of the next
def _alone(word: str) -> Expression:
    """Finds a word where it stands alone; "fp" and "bp" also before the stitch that they are said of, "blo" on either side."""
    if word.lower() in ("blo", "flo", "bl", "fl"):  # "scBLO", "BLsc"
        return expression(rf"(?i)(?:(?<!\p{{L}})|(?<=sc|dc|tr)){word}(?:(?!\p{{L}})|(?=h?dc|sc|h?tr))")
    ends = "" if word.lower() in POSTS else r"(?![\p{L}])"
    return expression(rf"(?i)(?<![\p{{L}}]){regex.escape(word)}{ends}", own_words=True)


def _used(text: str, forms: list[str], own: Span) -> bool:
    for form in forms:
        spaced = expression(r"^(fp|bp)(?=\w)").sub(r"\1 ", form)  # "BP sc" for BPsc
        for variant in {form, form + "s", form.replace(" ", ""), spaced}:
            if any(not own.start <= match.start() < own.end for match in _alone(variant).finditer(text)):
                return True
    if len(forms[0]) >= 2 and expression(r"tog$").search(forms[0]):
        return False
    return False


@lru_cache(maxsize=256)
def _any_of(phrases: tuple[str, ...]) -> Expression:
    listed = "|".join(
        r"\s+".join(regex.escape(word) for word in phrase.split()) for phrase in sorted(phrases, key=len, reverse=True)
    )
    return expression(rf"(?i)(?<!\w)(?:{listed})(?!\w)")


def _sentence(text: str, at: int) -> str:
    """The sentence of a line that a place stands in."""
    starts = max(text.rfind(sign, 0, at) for sign in (". ", "\n"))
    ends = [end for sign in (".", "\n") if (end := text.find(sign, at)) >= 0]
    return text[starts + 1 : min(ends, default=len(text))]


def check_word_rules(context: Context) -> Iterator[Finding]:
    """Every word-list rule of rules/word_rules.yaml, and of a house."""
    for rule in context.book.word_rules:
        pattern = _any_of(tuple(rule.phrases))
        rows = [row.span for part in context.pattern.parts for row in part.rows]
        whole = [Span(0, len(context.source.text))]
        alike: dict[str | int, list[Span]] = {}
        for ground in rows if rule.where == "rows" else whole:
            for match in pattern.finditer(context.source.text, ground.start, ground.end):
                if rule.unless and _any_of(tuple(rule.unless)).search(_sentence(context.source.text, match.start())):
                    continue
                key = " ".join(match[0].lower().split()) if rule.together else match.start()
                alike.setdefault(key, []).append(Span(*match.span()))
        for spans in alike.values():
            related = tuple(Related(span, "here too") for span in spans[1:])
            words = " ".join(context.source.slice(spans[0]).split())
            yield context.finding_at(rule.name, spans[0], words=words, related=related)
