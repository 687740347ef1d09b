"""A line's lexemes with a cursor, and the numbers in it (one, or a list over the sizes)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from lint.amount import Amount
from lint.lexicon import Lexeme
from lint.reading.sizes.audience import canonical
from lint.reading.sizes.figures import FIRST_BARE, size_list
from lint.reading.sizes.listedcounts import counts_whole_row
from lint.reading.sizes.namedlists import named_list, times_list
from lint.reading.words.cursor import CLOSERS, OPENERS, SIGNS, Cursor
from lint.reading.words.gatelists import parted_in_gate
from lint.tree import Special

COUNT_SIGNS = ("=", "|", "→", "=>", "->")
_STITCHES = ("stitch", "special", "one_stitch", "group_word", "increase", "decrease", "picot")
_AFTER_STITCH = ("in", "over", "around", "across", "each", "next", "together", "evenly", "to")
_AFTER_NUMBER = (",", ";", ".", "end", "times")
_BEFORE_COUNT = (".", ";", ":", "=", "turn", "join", "no_turn", "across", "around", "ending", "times", *CLOSERS)
_COUNTED = ("any_stitch", "stitch", "chain", "space", "row", "round")
_WHICH = ("each", "next", "same", "first", "last")  # of the places that follow in a row
_BESIDE = ("before", "after", "around", "behind", "under", "over", "above", "beside", "as", "with")
_OF_PLACES = ("of", "the", "between", "ordinal", "other", "center", "in", "to", "from", *_WHICH)
_MOST_SIGNS = 4  # figures and signs to a size: "3, (4"
_LIST_SIGNS = {",", "/", ":", ";", "|"}
_FOLDED = ("/", ";", ":", "|", "and")  # what parts the numbers of a list without brackets, and of nothing else


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """What the parser must know of the pattern besides its words."""

    specials: dict[str, Special] = field(default_factory=dict)
    sizes: int = 1
    colours: frozenset[str] = frozenset()
    count_tails: frozenset[str] = frozenset()  # words that may stand behind a printed count
    count_openers: tuple[str, ...] = ()  # words that open a sentence which tells one
    count_units: frozenset[str] = frozenset()  # words for what a count may be of besides stitches and spaces
    size_names: Mapping[str, int] = field(default_factory=dict)  # the place of each, by its canonical name
    loops_kept: bool = False  # the pattern is worked in Tunisian crochet, or a part of it is
    figured: bool = False  # figures with a colour behind them are stitches, as the pattern says
    first_bare: bool = False  # lists over the sizes are such as "8, 9 (10, 11)"
    parted: tuple[str, ...] = ()  # what parts the figures of the pattern's lists, where these have no brackets
    gate: tuple[int, ...] = ()  # the sizes that the words are for, where they are for some only


class Stream(Cursor):
    """The lexemes of a row with what the pattern says besides them: knows work, counts and lists over the sizes."""

    def __init__(self, lexemes: list[Lexeme], vocabulary: Vocabulary) -> None:
        super().__init__(lexemes)
        self.vocabulary = vocabulary

    def pass_to(self, *kinds: str) -> None:
        """Pass everything up to the next lexeme of these kinds, or to the row's count; with none named, to the clause's end."""
        end = self.next_of(*(kinds or SIGNS))
        later = range(self.at + 1, end)
        self.at = next(
            (
                i
                for i in range(self.at, end)
                if self.leads_to_work(i) or i in later and (self.counts_at(i) or self.placed_work_at(i))
            ),
            end,
        )

    def counts_at(self, index: int) -> bool:
        """Whether a sign at `index` sets a count apart that ends the words: "= 36", "→ 36", "| 36 sts"."""
        item, ahead = self.lexemes[index], index - self.at
        apart = item.text in ("—", "–") and self.kind(ahead - 1) != "number" or not item.glued  # not "3–5"
        signed = item.text in COUNT_SIGNS or item.kind == "dash" and apart
        if not signed or self.kind(ahead + 1) != "number":
            return False
        unit = self.kind(ahead + 2) in ("any_stitch", "stitch")
        return self.kind(ahead + 3 if unit else ahead + 2) in (".", "end")

    def parts_from_count(self, ahead: int = 0) -> bool:
        """Whether the dash there is no hyphen of "ch-12" but sets a count apart: "beg ch — 44 dc", "top of beg ch—12 sts"."""
        dash = self.peek(ahead)
        if self.kind(ahead) != "dash":
            return False
        if dash.text in "–—" and not (dash.glued and self.peek(ahead + 1).glued):
            return True
        if len(dash.text) == 1 and dash.text != "—" or self.kind(ahead + 1) != "number":
            return False
        unit = self.peek(ahead + 2)
        return unit.kind in ("stitch", "any_stitch", "special", "one_stitch", "chain") or (
            unit.lower in self.vocabulary.count_units
        )

    def leads_to_work(self, index: int) -> bool:
        """Whether a connecting word at `index` ("and", "then", "by"…) leads to work."""
        item = self.lexemes[index]
        weak = item.kind in ("with", "by")  # "with a sl st", "by 1 dc" belong to what stands before
        if not weak and item.kind not in ("and", "then") and item.lower not in ("but", "while", "before"):
            return False
        if item.lower in ("while", "before") and self.kind(index + 1 - self.at) != "make":
            return False  # "join as before (20 sc)"
        if item.lower == "now" and index and self.lexemes[index - 1].lower in ("are", "have", "has", "is", "should"):
            return False  # "there are now 42 dc"
        at = index + 1
        while at < len(self.lexemes) and self.lexemes[at].kind in ("and", "then", "the", "make", "with", "by"):
            weak = False if self.lexemes[at].kind in ("then", "make") else weak
            at += 1
        ahead = at - self.at
        begun = {"join": ("yarn", "color"), "repeat": ("row", "round")}.get(self.kind(ahead), ())
        if self.kind(ahead) == "attach" or self.kind(ahead + 1) in begun:
            return True  # "skip the centre st of the last row and rejoin yarn"
        return self.work_at(at, 2 if weak else 1)

    def work_at(self, index: int, least: int = 1) -> bool:
        """Whether so many stitches, or a stitch and where it goes, a chain, a skip or a bracket stand at `index`."""
        ahead = index - self.at
        if self.kind(ahead) == "number":
            past = self._past_amount(index) - self.at
            space = "space" in (self.kind(further) for further in range(past + 1, past + 4))
            part = past + 3 if self.kind(past + 2) in ("each", "the") else past + 2
            shared = self.kind(past + 1) == "for" and self.kind(part) == "word"  # "30 dc for each sleeve" tells
            worked = self.kind(past) in _STITCHES and not shared or self.kind(past) == "chain" and not space
            several = past > ahead + 1 or self.peek(ahead).amount is not None
            return (several or self.peek(ahead).number >= least) and worked
        if least > 1:
            return False
        if self.kind(ahead) in _STITCHES:
            after = self.kind(ahead + 1)
            return after in _AFTER_STITCH or after == "number" and self.kind(ahead + 2) in ("together", *_AFTER_NUMBER)
        chain = self.kind(ahead) == "chain" and self.kind(ahead + 1) == "number"
        return chain or self.kind(ahead) in ("skip", *OPENERS)

    def placed_work_at(self, index: int) -> bool:
        """Whether work and where it goes stand at `index` with no sign before them: "… same st as join 2 dc in each st"."""
        before = self.peek(index - 1 - self.at)
        if before.kind in _OF_PLACES or before.lower in _BESIDE:
            return False  # "the first of the 3 dc in next corner"
        at = self._past_amount(index) if self.lexemes[index].kind == "number" else index
        kinds = [self.kind(ahead) for ahead in range(at - self.at, at - self.at + 4)]
        if kinds[0] not in ("stitch", "increase") or kinds[1] not in ("in", "over"):
            return False
        return at > index or kinds[2] in _WHICH or kinds[2] == "the" and kinds[3] in _WHICH

    def _past_amount(self, index: int) -> int:
        """Index behind the number at `index`, or behind the list over the sizes that begins with it."""
        if self.vocabulary.sizes < 2:
            return index + 1
        rest = self.inside(index, len(self.lexemes))
        return index + rest.at if rest.amount() is not None else index + 1

    def without(self, indexes: set[int]) -> Stream:
        """A stream over all lexemes but those at `indexes`."""
        if not indexes:
            return self
        return Stream([item for index, item in enumerate(self.lexemes) if index not in indexes], self.vocabulary)

    def inside(self, first: int, last: int) -> Stream:
        """A stream over lexemes first..last (exclusive)."""
        return Stream(self.lexemes[first:last], self.vocabulary)

    def amount(self) -> Amount | None:
        """A number, or a list over the sizes, at the cursor; None (and nothing taken) if there is none."""
        if self.kind() == "number" and self.peek().amount is not None:
            return self.take().amount
        tight = self.kind(1) == ":" and self.kind(2) == "number" and self.peek(1).glued and self.peek(2).glued
        more = [",", ";"] if self.vocabulary.sizes > 2 else [":"] if tight else []  # "8:10 sts" in two sizes
        listed = self._listed(("/", "-", *more))
        if listed is not None:
            self.at += listed[1]
            return Amount(listed[0])
        if self._two_with_a_comma():
            first, _, second = (self.take() for _ in range(3))
            return Amount((first.number, second.number))
        if self.kind() == "number" and not self.word("once", "twice", "thrice"):
            return self.take().quantity
        return None

    def bare_list(self, first: int, last: int) -> tuple[int, int, Lexeme] | None:
        """The first list without brackets, "12-12-14", between two indexes: where it begins and ends, and as one lexeme."""
        if self.vocabulary.sizes < 3:
            return None
        for at in range(first, min(last, len(self.lexemes))):
            if self.lexemes[at].kind == "number" and self.lexemes[at].amount is None:
                inner = self.inside(at, len(self.lexemes))
                found = inner._listed(("/", "-", ",", ";"))
                if found is None:
                    return None
                begun, ended = self.lexemes[at], self.lexemes[at + found[1] - 1]
                words = self.words(at, at + found[1])
                whole = Lexeme("number", words, begun.start, ended.end, begun.glued, amount=Amount(found[0]))
                return at, at + found[1], whole
        return None

    def bare_amount(self) -> Amount | None:
        """Takes the "24, 24, 26" at the cursor: one for each size, where no run of rows can be meant; None for a lone number."""
        listed = self.bare_list(self.at, self.at + 1)
        if listed is None:
            return None
        self.at = listed[1]
        return listed[2].amount

    def _two_with_a_comma(self) -> bool:
        """Whether "8, 10 sts" at the cursor is one figure for each of two sizes: nothing else may stand behind "next 8"."""
        plain = all(self.kind(ahead) == "number" and self.peek(ahead).amount is None for ahead in (0, 2))
        if self.vocabulary.sizes != 2 or not plain or self.kind(1) != ",":
            return False
        behind = self.kind(3)
        if self.kind(-1) == "chain":
            return behind in (".", ";", "end")
        return self.kind(-1) in ("next", "first", "last") and behind == "any_stitch"

    def row_number(self) -> Amount | None:
        """The number of a row, or one for each size: "43", "43rd (45th, 47th)"."""
        if self.kind() not in ("number", "ordinal", "ordinals"):
            return None
        lexeme = self.take()
        return lexeme.quantity

    def one_of_numbers(self) -> Amount | None:
        """The "5, 7 or 9" of "until Row 5, 7 or 9 is complete": one for each size."""
        listed = self._listed((",",)) if self.peek().amount is None else None
        if listed is None or self.kind(listed[1] - 2) != "or":
            return None
        self.at += listed[1]
        return Amount(listed[0])

    def with_size_lists(self) -> Stream:
        """A stream in which every list over the sizes is one lexeme: where a number can stand, a list can stand.

        Numbers parted by commas or hyphens without brackets stay as they are: they may be rows, or a run of rows.
        """
        if self.vocabulary.sizes < 2:
            return self
        lexemes: list[Lexeme] = []
        whole = self.without(self._bold_figures())
        names = self.vocabulary.size_names
        while not whole.done:
            start = whole.at
            named = named_list(whole.lexemes, start, names) if names and whole._may_name() else None
            own = len(self.vocabulary.gate)  # in "[sc 1/2, dec] 6 times (12/18)" for two sizes the bracket is a count
            named = named or times_list(whole.lexemes, start, self.vocabulary.sizes, own)
            if named is not None:
                first, last = whole.lexemes[start], whole.lexemes[named.end - 1]
                words = whole.words(start, named.end)
                lexemes.append(Lexeme("number", words, first.start, last.end, first.glued, amount=Amount(named.values)))
                unit = named.said or whole.lexemes[slice(*named.unit)]
                said = lexemes[-2].kind if len(lexemes) > 1 else ""  # "Ch 6 (M 7 ch, L 8 ch)" has it before the list
                lexemes += [item for item in unit if item.kind != "chain" or said != "chain"]
                whole.at = named.end
                continue
            signs = (*_FOLDED, "-") if whole._parted_by_dashes() else _FOLDED
            signs = (*signs, FIRST_BARE) if self.vocabulary.first_bare else signs
            found = whole._listed(signs if self.vocabulary.sizes > 2 else ()) or whole._listed_in_gate()
            found = found or whole._listed_with_or(range(self.vocabulary.sizes))
            apart = whole._listed_apart() if found is None else None
            if apart is not None and not (whole.kind(1) == "times" and own == len(apart.values) - 1):
                first, unit = whole.take(), whole.take()
                whole.take_if(",")
                whole.at = whole.matching(whole.at) + 1
                words = whole.words(start, whole.at)
                lexemes += [Lexeme("number", words, first.start, unit.start, first.glued, amount=apart), unit]
                continue
            if found is None:
                lexemes.append(whole.take())
                continue
            values, length = found
            whole.at += length
            first, last = whole.lexemes[start], whole.lexemes[whole.at - 1]
            kind = "ordinals" if any(item.kind == "ordinal" for item in whole.lexemes[start : whole.at]) else "number"
            words = whole.words(start, whole.at)
            listed = Lexeme(kind, words, first.start, last.end, first.glued, amount=Amount(values))
            alone = first.kind in OPENERS and (
                whole._stands_alone(start) or counts_whole_row(lexemes, values, whole.kind())
            )
            lexemes += [first, listed, last] if alone else [listed]
        return Stream(lexemes, self.vocabulary)

    def _may_name(self) -> bool:
        """Whether a list with the sizes' names may begin at the cursor."""
        if self.kind() == "number":
            return any(self.kind(ahead) in OPENERS or self.word("for", ahead=ahead) for ahead in (1, 2, 3))
        begun = canonical(self.peek().text)
        named = begun and any(name.startswith(begun) for name in self.vocabulary.size_names)
        return (
            bool(named)
            or self.word("size", "for")
            or any(self.kind(ahead) in (":", "=", "dash") for ahead in range(1, 6))
        )

    def _bold_figures(self) -> set[int]:
        """Indexes of the stars that set a figure in bold: "12 (**14**, 16)"."""
        stars = [index for index, item in enumerate(self.lexemes) if item.kind == "star"]
        found: set[int] = set()
        for one, other in pairwise(stars):
            between = self.lexemes[one + 1 : other + 1]
            if other == one + 2 and between[0].kind == "number" and all(item.glued for item in between):
                found |= {one, other}
        return found

    def _stands_alone(self, start: int) -> bool:
        """Whether the list in brackets just passed is a printed count: "turn. (22, 24, 26)"."""
        before = self.lexemes[start - 1].kind if start else "end"
        return before in _BEFORE_COUNT and (self.done or self.kind() in (".", ";", *CLOSERS))

    def _listed(self, bare: tuple[str, ...]) -> tuple[tuple[int | None, ...], int] | None:
        """A list over the sizes, and its length in lexemes; `bare` is what may part its numbers without brackets."""
        sizes = self.vocabulary.sizes
        if sizes < 2 or self.kind() not in ("number", "ordinal", "dash", *OPENERS):
            return None
        return size_list(self._figures(), sizes, bare)

    def _listed_apart(self) -> Amount | None:
        """A list whose first figure has the unit behind it: "76 ch (84, 92)", "5 sts (7, 9)"; not for two sizes only."""
        sizes = self.vocabulary.sizes
        units = ("chain", "stitch", "any_stitch", "space", "row", "round", "times")
        list_at = 3 if self.kind(2) == "," else 2
        if sizes < 3 or self.kind() != "number" or self.kind(1) not in units or self.kind(list_at) not in OPENERS:
            return None
        list_at += self.at
        behind = self.lexemes[list_at : (self.matching(list_at) or self.at) + 1]
        alone = [item for item in behind if item.kind != self.kind(1)]  # "5 sts (7 sts, 9 sts)"
        figures = Stream(alone, self.vocabulary)
        found = size_list([str(self.peek().number), *figures._figures()], sizes, ())
        whole = found is not None and found[1] == len(figures.lexemes) + 1
        return Amount(found[0]) if whole else None

    def _listed_in_gate(self) -> tuple[tuple[int | None, ...], int] | None:
        """A list over the sizes of a passage that is for some only: "Sizes M and L only: sc in next 8 (9) sts"."""
        gate = self.vocabulary.gate
        if len(gate) < 2 or self.kind() not in ("number", "ordinal", *OPENERS):
            return None
        found = size_list(self._figures(), len(gate), ()) or size_list(self._figures(), len(gate), ("/",))
        if found is not None and self.kind(found[1] - 2) == "/" and self.kind(found[1]) not in (*_COUNTED, "times"):
            found = None  # a fraction, a date
        if found is None:
            found = parted_in_gate(self, len(gate), self.vocabulary.parted)
        if found is None:
            return self._listed_with_or(gate)
        own = dict(zip(gate, found[0], strict=True))
        return tuple(own.get(size) for size in range(self.vocabulary.sizes)), found[1]

    def _listed_with_or(self, among: Sequence[int]) -> tuple[tuple[int | None, ...], int] | None:
        """ "20, 22, 24 or 26 sts", in a passage for two sizes "20 or 22 sts": one figure for each of these sizes."""
        sizes = len(among)
        at = 2 * sizes - 3  # of the "or", or of the comma before it
        if sizes < 2 or self.kind() != "number" or "or" not in (self.kind(at), self.kind(at + 1)):
            return None
        found = size_list(self._figures(), sizes, (",",))
        if found is None or self.kind(found[1] - 2) != "or":
            return None
        if sizes == 2 and (sizes == self.vocabulary.sizes or self.kind(found[1]) not in _COUNTED):
            return None  # "2 or 3 times" may leave it to the maker
        own = dict(zip(among, found[0], strict=True))
        return tuple(own.get(size) for size in range(self.vocabulary.sizes)), found[1]

    def _joined(self, index: int) -> bool:
        """Whether the "and", "or" at an index stands between plain numbers, "5 & 6 & 7 sts"; not between rows that are named."""
        first = index - 1 - (self.lexemes[index].kind == "or" and self.lexemes[index - 1].kind == ",")  # "5, 6, or 7"
        ends = [self.lexemes[first], *self.lexemes[index + 1 : index + 2]]
        plain = all(item.kind == "number" and item.amount is None for item in ends)
        return plain and (self.kind(-1) not in ("row", "round") or self.lexemes[index].kind == "or")

    def _parted_by_dashes(self) -> bool:
        """Whether just one figure for each of three sizes or more stands at the cursor, dashes between: "58 – 67 – 76"."""
        number = 2 * self.vocabulary.sizes - 1
        run = [item.kind for item in self.lexemes[self.at : self.at + number + 1]]
        listed = ["number", "dash"] * self.vocabulary.sizes
        return number > 4 and run[:number] == listed[:number] and run[number:] not in (["dash"], ["number"])

    def _figures(self) -> list[str]:
        """The numbers and signs from the cursor on, as `figures` reads them."""
        tokens: list[str] = []
        depth = 0
        spaced = self._parted_by_dashes()
        longest = _MOST_SIGNS * self.vocabulary.sizes + _MOST_SIGNS  # no list is longer, and a page of figures is none
        for index in range(self.at, min(len(self.lexemes), self.at + longest)):
            lexeme = self.lexemes[index]
            if lexeme.kind in ("number", "ordinal") and lexeme.amount is None:
                tokens.append(str(lexeme.number))
            elif lexeme.kind == "dash":
                empty = all(token == "-" for token in tokens)
                tight = lexeme.glued and index + 1 < len(self.lexemes) and self.lexemes[index + 1].glued
                if not depth and not empty and not tight and not spaced:
                    break  # "next 12 – 14 sts": a count behind a dash
                tokens.append("-")
            elif lexeme.kind in OPENERS or lexeme.kind in CLOSERS:
                depth += 1 if lexeme.kind in OPENERS else -1
                if depth < 0:
                    break
                tokens.append("(" if lexeme.kind in OPENERS else ")")
            elif lexeme.kind in _LIST_SIGNS or lexeme.kind in ("and", "or") and (depth or self._joined(index)):
                tokens.append(lexeme.kind)
            else:
                break
        return tokens
