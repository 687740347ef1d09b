"""From a pattern's text to its tree: the only module that knows the order of the reading stages."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import replace
from itertools import accumulate

from lint.expression import expression
from lint.lexicon import Lexeme, Lexicon
from lint.pattern import Abbreviation, Label, Part, Pattern, Row, Stated
from lint.place import Which
from lint.reading import definitions
from lint.reading.chainnotes import countings
from lint.reading.clauses.changetables import has_change_table, row_of_change
from lint.reading.clauses.reader import Reading, read_row
from lint.reading.counting.attheend import shaped_until
from lint.reading.elsewhere import set_elsewhere, without_wishes
from lint.reading.ended import behind_fastening, makes_stitches
from lint.reading.filetways import with_ways_over
from lint.reading.firstuse import with_first_uses
from lint.reading.likework import (
    as_another_piece,
    goes_on,
    goes_to_loops,
    is_work,
    label_in_vain,
    vain_number,
    works_an_edge,
)
from lint.reading.lines.ahead import tells_of_chains
from lint.reading.lines.headings import begins_work
from lint.reading.lines.labels import HOW_MANY, SEVERAL
from lint.reading.lines.layout import Layout, LayoutReader
from lint.reading.lines.leaving import carried_over
from lint.reading.lines.marks import marked
from lint.reading.lines.roundparts import round_by_words
from lint.reading.lines.secondpieces import without_again
from lint.reading.lines.tallies import tell_tallies, without_each_row, without_rows_told
from lint.reading.lines.texts import PartText, RowText
from lint.reading.ownforms import entries_of, forms_of, known_forms, named_alone, specials_of
from lint.reading.page.colournames import colour_names
from lint.reading.page.terms import Terms, find_terms
from lint.reading.places.rings import ring_words
from lint.reading.sizes.audience import UNKNOWN_SIZES, canonical, size_places
from lint.reading.sizes.sizes import shown_by_lists
from lint.reading.spacenotes import counted_with_spaces, spaces_that_count
from lint.reading.untoldchains import with_untold_chains
from lint.reading.words import listentries
from lint.reading.words.borrowing import with_borrowed
from lint.reading.words.colourwork import figures_explained
from lint.reading.words.houseletters import house_letters, stitch_letters
from lint.reading.words.linestops import with_line_stops, without_emphasis
from lint.reading.words.piecewords import PIECE_WORDS
from lint.reading.words.stream import Stream, Vocabulary
from lint.reading.words.unfit import of_each_row, without_unfit_series
from lint.rulebook import Rulebook
from lint.source import SourceText, Span
from lint.tree import (
    MAKES_STITCHES,
    Chain,
    Evenly,
    FastenOff,
    Group,
    Join,
    JoinYarn,
    OpenWork,
    Repeat,
    RowCall,
    Skip,
    Turn,
    Unread,
    Work,
    walk,
)

_COUNTS = expression(  # "Ch 3 counts as dc."
    r"(?i)(?:^|(?<=[.;]\s))[^.;\n]*\b(?:(?:every|each|all)\s+(?:rows?|rounds?|rnds?)\s+(?:starts?|begins?)|counts?\s+as|(?:never|not)\s+count(?:s|ed)?|not a st(?:itch)?|(?:\d+\s?ch|ch\s?\d+)\s=\s1)\b[^.;\n]*"
)
_NAMED_WORK = expression(r"\W*(?P<name>[^:=(]*[^\s:=(])(?:\s*\((?P<form>[\w-]+)\))?[^:=]*[:=]")
_AS_ANOTHER = expression(r"(?i)[^.]{0,40}\b(?:as|like)\s(?:(?:given|for|in|the)\s)+\p{L}")
_TOLD_OF = expression(r"(?i)\bat\s+(?:the\s+)?end\s+of\s+(?:row|round|rnd|rd|r)\s*(?P<row>\d+)\b[^.;\d]*$")
_TOLD_BEHIND = expression(  # "20 sts after Row 19", "(8 blocks at the end of R8)"
    r"(?i)\b(?:(?:at|by|after)\s+(?:the\s+)?end\s+of|after|by|in|on)\s+(?:row|round|rnd|rd|r)\s*(?P<row>\d+)\W*$"
)
# "Decrease for the top:" over the rows that do so
_LEADS_IN = expression(
    r"(?i)\W*(?!.*\b(?:in|into|each|every|next|last|around|across|at|twice|once)\b)(?:now\s+|begin(?:ning)?\s+(?:to\s+)?|start\s+)?(?:decreas|increas|shap)\w*\b[^.;:\d]*(?:\d+ (?:sts|stitches)\b[^.;:\d]*)?(?::|(?<=\w)\s+[–—-]+)\s*"
)
_NAME = expression(  # of a piece; "Work the dec row: for S once more" is a sentence
    r"(?i)(?!\W*(?:row|rnd|round|rd|r\d|(?:work|repeat|rep|make)\s+(?:the\s+)?(?:[\w-]+\s+){1,2}(?:row|rnd|round)\b))\W*(?P<name>[A-Za-z][\w-]*(?: [\w-]+){0,3}(?: ?\([\w -]+\))?)\s*[:=]\s"
)


def read_pattern(source: SourceText, book: Rulebook, wanted_terms: str = "auto") -> tuple[Pattern, Terms, Lexicon]:
    """The tree of a pattern, the terms it was read in, and the lexicon used."""
    layout = LayoutReader(source, book).read()
    tell_tallies(layout.parts)
    terms = find_terms(source.text, book.layout, wanted_terms)
    plain = Lexicon(book, terms.terms)
    known = known_forms(book.abbreviations, book.stitches)
    entries = entries_of(source, layout, known, book)
    rings = ring_words(entries, source.text)
    letters = house_letters(entries, plain, source)
    lexicon = Lexicon(book, terms.terms, letters) if letters else plain
    specials, squares = with_ways_over(specials_of(entries, lexicon, book), entries)
    if specials or rings or letters:
        own = [
            (form, "turning_chain" if definitions.is_turning_chain(special) else "special", special.name)
            for form, special in forms_of([*entries, *squares], specials, named_alone(book))
        ]
        lexicon = Lexicon(book, terms.terms, [*own, *((form, "ring", form) for form in rings), *letters])
    sizes = layout.sizes
    vocabulary = Vocabulary(
        {special.name: special for special in specials},
        max(1, len(sizes)),
        colour_names(source.text, book) - stitch_letters(entries, plain),
        *count_words(book),
        size_places(sizes),
        expression(
            r"(?i)\btunisian\b|\btss\b|\bloops on (?:the )?hook\b(?<!\bthrough\s(?:\w+\s){0,3}loops on (?:the )?hook)|\b(?:return|forward) pass\b"
        ).search(
            source.text,
        )
        is not None,
    )
    first_bare = layout.first_bare
    vocabulary = replace(
        vocabulary,
        figured=figures_explained(source.text),
        first_bare=first_bare,
        parted=shown_by_lists(source.text).parted,
    )
    reader = _RowReader(source, lexicon, vocabulary, rings)
    parts = tuple(part for part in (reader.part(item) for item in layout.parts) if part.rows)
    parts = with_first_uses(with_borrowed(parts))
    parts = counted_with_spaces(parts, spaces := spaces_that_count(source.text))
    notes = tuple(countings(source, layout, lexicon, vocabulary, book.words))
    parts = with_untold_chains(parts, notes, source.text)
    abbreviations = tuple(_listed(entries))
    pattern = Pattern(
        layout.title,
        layout.title_span,
        parts,
        tuple(layout.sections),
        abbreviations,
        tuple(specials),
        notes,
        sizes,
        unplaced=tuple(_unplaced(source, layout, parts, entries, lexicon)),
        sizes_unnamed=layout.sizes_unnamed,
        spaces_counted=spaces,
        facts={"spiral": any(word in source.text.lower() for word in book.layout.spiral_words)},
    )
    return pattern, terms, lexicon


def _unplaced(
    source: SourceText, layout: Layout, parts: tuple[Part, ...], entries: list[listentries.Entry], lexicon: Lexicon
) -> Iterator[Span]:
    """Lines that look like work and were taken for talk: three stitches and two numbers or more."""
    taken = [row.span for part in parts for row in part.rows]
    taken += [entry.span for entry in entries] + [section.span for section in layout.sections]
    taken.sort(key=lambda span: span.start)
    reached = list(accumulate((span.end for span in taken), max))  # how far those up to each of them go
    for span in layout.prose:
        before = bisect_left(taken, span.end, key=lambda other: other.start)
        if before and reached[before - 1] > span.start:
            continue
        words = _COUNTS.sub("", source.slice(span))
        kinds = [lexeme.kind for lexeme in lexicon.read(words, span.start)]
        stitches = sum(kind in ("stitch", "chain", "increase", "decrease", "special") for kind in kinds)
        if stitches >= 3 and kinds.count("number") >= 2:
            yield span


def count_words(book: Rulebook) -> tuple[frozenset[str], tuple[str, ...], frozenset[str]]:
    """The words behind, before and in printed counts, as the vocabulary of a stream wants them."""
    words = book.words
    return frozenset(words.count_tails), tuple(words.count_openers), frozenset(words.count_units)


class _RowReader:
    def __init__(self, source: SourceText, lexicon: Lexicon, vocabulary: Vocabulary, rings: list[str]) -> None:
        self.rings = rings
        self.source = source
        self.lexicon = lexicon
        self.vocabulary = vocabulary
        self.change_table = has_change_table(source.text)
        self.rounds = False  # whether the part before is worked in rounds
        self.rounds_to = 0  # the number of the last round, where the part before is worked in rounds
        self.counted: Stated | None = None  # what was printed last
        self.ended: set[int] = set()  # "Sizes … only" that the rows under it have outgrown

    def part(self, text: PartText) -> Part:
        numbers = [row.label.numbers for row in text.rows if row.label is not None and row.label.numbers]
        goes_on = self.rounds_to > 0 and numbers[:1] == [(self.rounds_to + 1,)]
        first = next((row for row in text.rows if row.label is not None), None)
        like = first is not None and _AS_ANOTHER.match(self.source.slice(first.span)) is not None
        on = goes_on or like and self.rounds  # "R1-R7: As for the belly"
        round_part = round_by_words(self.source, text, on, self.rings, self.rounds)
        self.rounds = round_part
        self.rounds_to = numbers[-1][-1] if round_part and numbers else 0
        last = max((at for at, item in enumerate(text.rows) if item.label is not None), default=0)
        ended = [row for at, item in enumerate(text.rows) for row in self._marked(item, round_part, at < last)]
        rows = [own for row in ended for own in _chain_apart(row)]
        rows = without_again(rows, self.source, text.of_piece > 1)
        return Part(text.name, text.span, text.make, tuple(rows), text.piece, text.of_piece)

    def _marked(self, text: RowText, round_part: bool, more: bool) -> Iterator[Row]:
        """A row, with the mark that stands behind it on the last of what it comes to."""
        span, mark = marked(self.source, text.span)
        rows = list(self._ended(replace(text, span=span) if span != text.span else text, round_part, more))
        yield from rows[:-1]
        yield from (replace(row, mark=mark) if mark else row for row in rows[-1:])

    def _ended(self, text: RowText, round_part: bool, more: bool) -> Iterator[Row]:
        """A row, and by itself what follows where its yarn is fastened off, if that is not understood."""
        label = text.label
        row = self.row(text, round_part, more)
        at = behind_fastening(row, self.source) if row is not None and label is not None else None
        if row is not None and at is not None:
            ended = self.row(replace(text, span=Span(text.span.start, at)), round_part, more)
            rest = replace(text, label=None, span=Span(at, text.span.end))
            reading, lexemes = self.read(rest.span, rest.sizes)
            works = reading.stated is not None or makes_stitches(row, at)
            works = works or any(one.kind in ("row", "round") for one in lexemes)  # "Make another row of sc."
            if ended is not None and (ended.stated is not None or not works):
                yield ended
                unknown = OpenWork(rest.span, self.source.slice(rest.span))
                row = self.row(rest, round_part, more) or Row(rest.span, None, (unknown,), None, rest.sizes)
        if row is not None:
            yield row

    def row(self, text: RowText, round_part: bool, more: bool) -> Row | None:
        """A stretch of a part as a row; None if it only talks. `more`: rows with labels stand behind it."""
        sizes = text.sizes
        if (
            text.label is None
            and len(said := without_wishes(self.source.slice(text.span), self.vocabulary.sizes == 1))
            < text.span.end - text.span.start
        ):
            text = replace(text, span=Span(text.span.start, text.span.start + len(said)))
            if not said.strip():
                return None
        if text.label is None and tells_of_chains(self.source.slice(text.span)):
            return None  # "Ch 3 at the start of a round counts as a dc.": for all rows, and read with the notes
        if text.sizes_unknown:
            at = text.label.span if text.label is not None else text.span
            unread = Unread(at, self.source.slice(at), UNKNOWN_SIZES)
            reading, lexemes = self.read(text.span)
            label = text.label
            if label is None and not is_work(reading, lexemes):
                if not any(lexeme.kind in ("row", "round", "stitch", "chain") for lexeme in lexemes):
                    return None
                label = Label(at, "row", (), words="A line for some sizes")
            return Row(at.to(text.span), label, (unread, *reading.steps))
        reading, lexemes = self.read(text.span, sizes, text.label)
        if text.gate and (text.gate in self.ended or self._speaks_for_all(text, reading)):
            self.ended.add(text.gate)
            sizes = None
        self.counted = reading.stated or self.counted
        vain = label_in_vain(lexemes) if text.label is None else None
        if vain is not None:
            span = Span(text.span.start, lexemes[vain].start)
            kind, number = vain_number(lexemes[:vain]) or ("row", 0)
            text.label = Label(span, kind, (number,) if number else (), words=self.source.slice(span).strip())
        elif text.label is None and as_another_piece(reading, self.source.slice(text.span)):
            text.label = Label(reading.steps[0].span, "row", (), words="The piece worked as another")
        words = self.source.slice(text.span)
        not_read = goes_on(reading, words) or goes_to_loops(reading, words) or works_an_edge(reading, lexemes)
        told = _LEADS_IN.fullmatch(words) if text.label is None else None
        if told is not None and (more or not any(map(str.isdigit, words))):
            return None
        if text.label is None and not_read:
            step = OpenWork(text.span, words)
            until = shaped_until([step], Stream(lexemes, self.vocabulary).with_size_lists())
            return Row(text.span, None, (step,), reading.stated or until, sizes)
        if text.label is None:
            named = self._named(words)
            if named and self._defines(words):
                return None
            if named and (row := self.named_row(text)) is not None:
                return row
            if not named and is_work(reading, lexemes):
                return Row(text.span, None, tuple(reading.steps), reading.stated, sizes)
            moved = set_elsewhere(tuple(reading.steps), words, text.span) if more else None
            return Row(text.span, None, (moved,), None, sizes) if moved is not None else None
        label = text.label
        if label.kind == "either":
            label = replace(label, kind="round" if round_part else "row")
        steps = without_rows_told(label, tuple(reading.steps))
        stated = reading.stated
        if stated is not None and self.vocabulary.sizes > 1 and stated.series:
            rows = {len(label.at(size)) for size in range(self.vocabulary.sizes)}
            if self.vocabulary.sizes not in rows:
                stated = stated.over_sizes(self.vocabulary.sizes)
            if sizes is not None and len(sizes) > 1 and len(sizes) not in rows:
                stated = stated.over_sizes(self.vocabulary.sizes, sizes)
            if stated.series and len(stated.series) not in rows:  # neither one for each size nor one for each row
                steps, stated = without_unfit_series(steps, stated, self.vocabulary.sizes if rows == {1} else 1)
            if stated is not None and stated.series and len(stated.series) not in rows:
                words = self.source.slice(stated.span)
                steps = (Unread(stated.span, words, f"the count has {len(stated.series)} figures"), *steps)
        elif stated is not None and stated.series:
            steps = of_each_row(steps, stated, len(label.at(0)))
        if stated is not None and self._of_another_row(text, label, stated.span):
            stated = None
        if label.unclear:
            words = self.source.slice(label.span)
            untold = "the numbers are not one for each size" if label.numbers else HOW_MANY
            why = "this may be so many rows or the number of one" if label.tally else untold
            steps = (Unread(label.span, words, why), *steps)
        return Row(label.span.to(text.span), label, steps, stated, sizes)

    def _of_another_row(self, text: RowText, label: Label, at: Span) -> bool:
        """Whether the count at a place is told of another row than the label's last: "At the end of Row 10: 60 dc"."""
        told = _TOLD_BEHIND.search(self.source.slice(at)) or _TOLD_OF.search(
            self.source.text, text.span.start, at.start
        )
        lasts = {label.at(size)[-1:] for size in range(self.vocabulary.sizes)}
        return told is not None and bool(label.numbers) and (int(told["row"]),) not in lasts

    def _named(self, words: str) -> bool:
        """Whether a line begins with a name and a sign, "Edging: …"; a size's name is none, "Small: Ch 21 (for medium ch 23)"."""
        name = _NAME.match(words) if not begins_work(words) else None
        return name is not None and canonical(name["name"]) not in self.vocabulary.size_names

    def _defines(self, words: str) -> bool:
        """Whether a line only tells how a named stitch is made: "Picot: ch 3, sl st in 3rd ch from hook", "V-stitch (V-st): …"."""
        match = _NAMED_WORK.match(words)
        forms = (match["name"], match["form"] or "") if match is not None else ()
        return any(form.lower() in self.vocabulary.specials for form in forms)

    def named_row(self, text: RowText) -> Row | None:
        """ "Edging: Ch 1, sc in each st across." is a row; "Picot: ch 3, sl st in 3rd ch from hook" only defines."""
        match = _NAMED_WORK.match(self.source.slice(text.span))
        if match is None:
            return None
        reading, lexemes = self.read(Span(text.span.start + match.end(), text.span.end), text.sizes)
        steps = tuple(reading.steps)
        if any(isinstance(step, JoinYarn) for step in steps) and not any(isinstance(step, Work) for step in steps):
            if set(match["name"].lower().split()) & set(PIECE_WORDS):
                return Row(
                    text.span, None, steps, reading.stated, text.sizes
                )  # "Second side of neck: skip 10 sts, join"
        ends = any(isinstance(step, (Repeat, Turn, Join, FastenOff, Evenly)) for step in walk(steps))
        runs = any(place.which is Which.EACH for s in walk(steps) if isinstance(s, (Work, Group)) for place in s.places)
        works = any(isinstance(step, MAKES_STITCHES) for step in steps)
        leaves = works and any(
            isinstance(step, Skip) and step.rest for step in steps
        )  # "…, leave remaining sts. (12 sc)"
        if not (ends or runs or leaves or reading.stated is not None) or not is_work(reading, lexemes):
            return None
        if not any(isinstance(step, (*MAKES_STITCHES, RowCall, Unread)) for step in walk(steps)):
            return Row(text.span, None, steps, reading.stated, text.sizes)  # "Straps: ch 25 and fasten off."
        joins = any(isinstance(step, Join) for step in steps)
        at = Span(text.span.start + match.start("name"), text.span.start + match.end("name"))
        label = Label(at, "round" if joins else "row", (), words=match["name"])
        if match["name"].lower().endswith(SEVERAL):  # "All rnds:"
            steps = (Unread(at, match["name"], HOW_MANY), *steps)
        return Row(text.span, label, steps, reading.stated, text.sizes)

    def _speaks_for_all(self, text: RowText, reading: Reading) -> bool:
        """Whether a gate has ended unsaid: the row gives its number or its count for sizes that the gate shuts out."""
        out = [size for size in range(self.vocabulary.sizes) if text.sizes is not None and size not in text.sizes]
        numbers = [item.number for item in reading.stated.items] if reading.stated is not None else []
        listed = [one for one in numbers if len(one.values) > 1 and not carried_over(one, self.counted, out)]
        labelled = text.label is not None and bool(text.label.by_size)
        return any(number.at(size) is not None for number in listed for size in out) or (
            labelled and any(text.label.at(size) for size in out)
        )

    def read(
        self, span: Span, sizes: tuple[int, ...] | None = None, label: Label | None = None
    ) -> tuple[Reading, list[Lexeme]]:
        lexemes = without_emphasis(self.lexicon.read(self.source.slice(span), span.start), self.source)
        lexemes = with_line_stops(lexemes, self.source)
        lexemes = without_each_row(label, lexemes)
        stream = Stream(lexemes, replace(self.vocabulary, gate=sizes or ()))
        told = row_of_change(self.source.slice(span), stream) if self.change_table else None
        return told or read_row(stream), lexemes


def _chain_apart(row: Row) -> tuple[Row, ...]:
    """ "Make 74 ch and work Rows 1 and 2 as for Front.": the chain, and the rows that are worked upon it."""
    call = next((at for at, step in enumerate(row.steps) if isinstance(step, RowCall) and step.part), 0)
    chained = row.label is None and call > 0 and isinstance(row.steps[call - 1], Chain)
    if not chained or any(isinstance(step, MAKES_STITCHES) for step in row.steps[:call]):
        return (row,)
    cut = row.steps[call].span.start
    begun = replace(row, span=Span(row.span.start, row.steps[call - 1].span.end), steps=row.steps[:call], stated=None)
    return begun, replace(row, span=Span(cut, row.span.end), steps=row.steps[call:])


def _listed(entries: list[listentries.Entry]) -> list[Abbreviation]:
    return [definitions.abbreviation_of(entry) for entry in entries]
