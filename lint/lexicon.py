"""Names the tokens of a line: which are stitches, places, numbers, marks… under the terms in force."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from lint.expression import expression
from lint.lexeme import IN_LOOP, Lexeme, stitch_and_loop, third_loops
from lint.madeonce import made_once
from lint.misprints import MAYBE_DAMAGED, misprints_mended
from lint.ordinalwords import is_ordinal, is_the_first
from lint.rulebook import Rulebook, StitchFile, StitchRule, WordFile
from lint.tokens import ARROWS, MARKS, PhraseBook, PhraseHit, Token

_LOOPS = ("blo", "flo", "bl", "fl")  # what a stitch's name may be joined with: "scBLO"
_ENDINGS = ("tog", "cl")  # "dctog", "dccl"


class Lexicon:
    """The vocabulary of one pattern: the standard words under its terms, and its own special stitches."""

    def __init__(self, book: Rulebook, terms: str, own: Iterable[tuple[str, str, str]] = ()) -> None:
        """`own`: (printed form, kind, name) of each stitch, or other word, that the pattern itself defines.

        One that is a single capital letter ("X", "A") is read only where it is printed as one: "x 6" is six times.
        One that is a small letter is read only where it can be no other word: "6x, v", not "x 6" and "a stitch".
        """
        own = list(own)
        small = [
            (form, kind, name) for form, kind, name in own if len(form) == 1 and form.islower() and kind != "special"
        ]
        self._small = {form: (kind, name) for form, kind, name in small}
        kept_apart = set(small)
        own = [entry for entry in own if entry not in kept_apart]
        self._letters = {form.lower() for form, _, _ in own if len(form) == 1 and form.isupper()}
        self.book = book
        self.terms = terms
        self._numbers = book.words.numbers
        self._ordinals = book.words.ordinals
        own = [(form.lower(), kind, name) for form, kind, name in own]
        standard = _standard_book(book, terms)
        self._phrases = PhraseBook(own, standard) if own else standard
        self._read: dict[tuple[str, int], tuple[Lexeme, ...]] = {}  # the reader and several checks read the same rows

    def knows(self, word: str) -> bool:
        """Whether a single word has a meaning of its own."""
        return bool(self._phrases.single(word.lower())[0])

    def read(self, text: str, offset: int = 0) -> list[Lexeme]:
        """The lexemes of a stretch of text that starts at `offset` of the source."""
        key = (text, offset)
        if key not in self._read:
            self._read[key] = tuple(self._lexemes(text, offset))
        return list(self._read[key])

    def _lexemes(self, text: str, offset: int) -> list[Lexeme]:
        tokens, hits = self._phrases.cut(text, offset)
        lexemes: list[Lexeme] = []
        index, hit_index = 0, 0
        while index < len(tokens):
            token = tokens[index]
            lower = token.lower
            if lower == "\\" and tokens[index + 1 : index + 2] and tokens[index + 1].glued:
                index += 1  # markdown's way to write a star that is a star
                continue
            if lower == "_":
                index += 1  # markdown's way to set words apart: "_6 sts_"
                continue
            while hit_index < len(hits) and hits[hit_index].first < index:
                hit_index += 1
            hit = hits[hit_index] if hit_index < len(hits) else None
            named = hit is not None and hit.first == index and self._begins_with_figure(tokens, hit)
            if lower[0].isdecimal() and not named and _can_be_read(lower[:9]):
                follower = tokens[index + 1] if index + 1 < len(tokens) else None
                if "." in lower:
                    lexemes.append(Lexeme("decimal", token.text, token.start, token.end, token.glued))
                elif (
                    follower
                    and follower.glued
                    and is_ordinal(lower, follower.lower)
                    and not (follower.text == "D" and "d" in self._letters)  # "6D", where D is the pattern's decrease
                ):
                    first = lower == "1" and is_the_first([one.lower for one in tokens[index + 2 : index + 4]])
                    lexemes.append(
                        Lexeme(
                            "first" if first else "ordinal",  # "1st 5 sts", "1st and last st"
                            token.text + follower.text,
                            token.start,
                            follower.end,
                            token.glued,
                            number=int(lower[:9]),
                        )
                    )
                    index += 1
                else:
                    gap = text[tokens[index - 1].end - offset : token.start - offset] if index else ""
                    cell = "cell" if "\n" in gap or "\t" in gap or "   " in gap else ""  # it begins a line or a column
                    lexemes.append(
                        Lexeme("number", token.text, token.start, token.end, token.glued, cell, int(lower[:9]))
                    )
                index += 1
                continue
            longer = hit is not None and hit.first == index and hit.last > index + 1  # "p-lp" where "p" is a picot
            if lower in self._small and not longer and _stands_as_stitch(tokens, index):
                kind, name = self._small[lower]
                lexemes.append(Lexeme(kind, token.text, token.start, token.end, token.glued, name))
                index += 1
                continue
            if hit and hit.first == index and not longer and lower in self._letters and not token.text.isupper():
                kind, value = _standard_book(self.book, self.terms).single(lower)
                small = Lexeme(kind, token.text, token.start, token.end, token.glued, value)
                lexemes.append(small if kind else self._single(token, lower))
                index += 1
                continue
            if hit and hit.first == index:
                last = tokens[hit.last - 1]
                words = token.text + "".join(
                    [one.text if one.glued else f" {one.text}" for one in tokens[hit.first + 1 : hit.last]]
                )
                after = hits[hit_index + 1] if hit_index + 1 < len(hits) else None
                if hit.kind == "prefix":
                    if after and after.first == hit.last and after.kind == "stitch":  # "front post" + "dc"
                        last = tokens[after.last - 1]
                        words += " " + " ".join(item.text for item in tokens[after.first : after.last])
                        lexemes.append(
                            Lexeme("stitch", words, token.start, last.end, token.glued, hit.value + after.value)
                        )
                        index = after.last
                    else:
                        lexemes.append(Lexeme("word", words, token.start, last.end, token.glued))
                        index = hit.last
                    continue
                whole = Lexeme(hit.kind, words, token.start, last.end, token.glued, hit.value)
                lexemes += stitch_and_loop(whole) if hit.kind == "stitch" else [whole]
                index = hit.last
                continue
            compound = self._compound(tokens, index)
            if compound is not None:
                last = tokens[index + 2]
                words = "".join(item.text for item in tokens[index : index + 3])
                lexemes.append(Lexeme("number", words, token.start, last.end, token.glued, "word", compound))
                index += 3
                continue
            lexemes += self._glued_together(token, lower) or [self._single(token, lower)]
            index += 1
        lexemes = third_loops(self._both_terms(lexemes))
        return misprints_mended(lexemes) if MAYBE_DAMAGED.search(text) else lexemes

    def _begins_with_figure(self, tokens: Sequence[Token], hit: PhraseHit) -> bool:
        """Whether a figure begins a name of the pattern's own: "3-ch picot", "2dc-cl", "4 tr bobble", "3LO"."""
        if hit.kind not in ("special", "third_loop") or hit.last < hit.first + 2:
            return False
        kinds = [self._phrases.single(tokens[at].lower)[0] for at in (hit.first + 1, hit.last - 1)]
        return tokens[hit.first + 1].glued or kinds[0] in ("stitch", "chain") and kinds[1] not in ("stitch", "chain")

    def _both_terms(self, lexemes: list[Lexeme]) -> list[Lexeme]:
        """ "tr/dc": one stitch under its names in both countries; its value is the US one's."""
        index = 1
        while index < len(lexemes) - 1:
            one, slash, other = lexemes[index - 1], lexemes[index], lexemes[index + 1]
            if slash.kind == "/" and one.kind == other.kind == "stitch" and slash.glued and other.glued:
                key = self._shared_stitch(one.lower, other.lower)
                if key is not None:
                    both = Lexeme("stitch", one.text + "/" + other.text, one.start, other.end, one.glued, key)
                    lexemes[index - 1 : index + 2] = [both]
            index += 1
        return lexemes

    def _shared_stitch(self, one: str, other: str) -> str | None:
        """The stitch that two names stand for, the one in UK and the other in US terms (or the other way round)."""
        us, uk = (_standard_book(self.book, terms) for terms in ("us", "uk"))
        for british, american in ((one, other), (other, one)):
            there, here = uk.single(british)[1], us.single(american)[1]
            if (
                there
                and here
                and there.removeprefix("FP").removeprefix("BP") == here.removeprefix("FP").removeprefix("BP")
            ):
                return there
        return None

    def _glued_together(self, token, lower: str) -> list[Lexeme]:
        """The two words of "2 dctog", "3dccl", "6xinc", "scBLO"; [] for any other word."""
        crossed = self._phrases.single(lower[1:]) if token.glued and lower[0] == "x" and len(lower) > 1 else ("", "")
        if crossed[0] in ("stitch", "increase", "decrease"):
            cross = self._single(Token(token.text[0], token.start, token.start + 1, True, "x"), "x")
            return [cross, Lexeme(crossed[0], token.text[1:], token.start + 1, token.end, True, crossed[1])]
        if lower[-1] == "\N{CYRILLIC SMALL LETTER VE}":  # "7 scв magic ring": the translator's "in", left standing
            kind, key = self._phrases.single(lower[:-1])
            stitch = Lexeme(
                kind, token.text[:-1], token.start, token.end - 1, token.glued, key, meant=lower[:-1] + " in"
            )
            return [stitch, Lexeme("in", token.text[-1], token.end - 1, token.end, True)] if kind == "stitch" else []
        if not lower.startswith(_LOOPS) and not lower.endswith((*_LOOPS, *_ENDINGS)):
            return []
        for loop in _LOOPS:
            bare = next((b for b in (lower.removesuffix(loop), lower.removeprefix(loop)) if b != lower), "")
            kind, key = self._phrases.single(bare) if bare else ("", "")
            if kind == "stitch":
                value = f"{key}{IN_LOOP}{loop[0]}lo"
                return stitch_and_loop(Lexeme("stitch", token.text, token.start, token.end, token.glued, value), bare)
        ending = next((ending for ending in _ENDINGS if lower.endswith(ending)), "")
        kind, key = self._phrases.single(lower[: -len(ending)]) if ending else ("", "")
        if kind != "stitch":
            return []
        cut = token.end - len(ending)
        stitch = Lexeme("stitch", token.text[: -len(ending)], token.start, cut, token.glued, key)
        sort = "together" if ending == "tog" else "one_stitch"
        return [stitch, Lexeme(sort, token.text[-len(ending) :], cut, token.end, True, ending)]

    def _compound(self, tokens: list[Token], index: int) -> int | None:
        """The number of "twenty-five"."""
        tens = self._numbers.get(tokens[index].lower, 0)
        if tens < 20 or index + 2 >= len(tokens):
            return None
        dash, last = tokens[index + 1], tokens[index + 2]
        ones = self._numbers.get(last.lower, 0) if dash.text in ("-", "–") and dash.glued and last.glued else 0
        return tens + ones if not tens % 10 and 0 < ones < 10 else None

    def _single(self, token, lower: str) -> Lexeme:
        if lower in self._numbers:
            return Lexeme("number", token.text, token.start, token.end, token.glued, "word", self._numbers[lower])
        if lower in self._ordinals:
            return Lexeme("ordinal", token.text, token.start, token.end, token.glued, "word", self._ordinals[lower])
        if lower == "asterisk":  # "repeat from the asterisk"
            return Lexeme("star", token.text, token.start, token.end, token.glued, "*")
        if lower[0] == "*":
            return Lexeme("star", token.text, token.start, token.end, token.glued, token.text)
        if lower[0] in MARKS or lower in ("+", "^", "~"):
            kind = "star" if lower != "+" else "+"
            return Lexeme(kind, token.text, token.start, token.end, token.glued, token.text)
        if lower == "!":  # a blog's full stop
            return Lexeme(".", token.text, token.start, token.end, token.glued)
        if lower[0] in ARROWS + "»›" or lower[-1] == ">" and len(lower) > 1:
            return Lexeme("→", token.text, token.start, token.end, token.glued)
        if lower[0] in "-–—−":
            return Lexeme("dash", token.text, token.start, token.end, token.glued)
        if lower.startswith(".."):
            return Lexeme("...", token.text, token.start, token.end, token.glued)
        if lower.startswith("//"):  # "sc in each st, turn // 12 sts"
            return Lexeme("|", token.text, token.start, token.end, token.glued)
        if not lower.isascii() and _PICTURE.fullmatch(token.text):  # "sc in each st 🌸 12"
            return Lexeme("●", token.text, token.start, token.end, token.glued)
        if lower[0].isalpha():
            return Lexeme("word", token.text, token.start, token.end, token.glued)
        return Lexeme(lower, token.text, token.start, token.end, token.glued)


_PICTURE = expression(r"[✾✿❀❁❃❇❈❉❊❋❖❦❧☙♡◆◇◈■▪□▫\p{Extended_Pictographic}\p{Emoji_Modifier}\u200d\ufe0e\ufe0f]+")


def _can_be_read(figures: str) -> bool:
    """Whether figures are digits that have a value here: some scripts' newest have none, and may stand among others."""
    try:
        return int(figures.replace(".", "")) >= 0
    except ValueError:
        return False


def _stands_as_stitch(tokens: Sequence[Token], index: int) -> bool:
    """Whether a small letter can only be a stitch: behind its number or in a list, and not before a number of times."""
    before = tokens[index - 1].lower if index else ""
    after = tokens[index + 1].lower if index + 1 < len(tokens) else ""
    counted = before[:1].isdecimal()
    listed = before in ("", ",", "(", "[", "{", ":", ";", "*", ".", "-", "–")
    ends = after in ("", ",", ")", "]", "}", ";", ".", "(", "[", "*", "=", "-", "–")
    further = tokens[index + 2].lower if index + 2 < len(tokens) else ""
    ends = ends or after in ("x", "×") and further[:1].isdecimal()  # "v x 6"
    pointed = before in ("next", "any", "each", "free", "same", "first", "last", "corresponding")
    if pointed and (ends or after in ("of", "on", "around", "across", "and")):
        return True  # "sl st in next p of First Motif", where p is a picot
    return (counted or listed) and ends or counted and tokens[index].glued and not after[:1].isdecimal()


def stitch_forms(rule: StitchRule, terms: str) -> list[str]:
    """Every printed form of a stitch under the terms, plurals too."""
    forms: list[str] = []
    for form in rule.us if terms == "us" else rule.uk:
        forms.append(form)
        forms.append(form + ("es" if form.endswith("stitch") else "s"))
        if " " not in form:
            forms.append(form + "'s")
    return forms


def _made_of(rules: StitchFile) -> tuple[tuple[str, list[str]], ...]:
    """What is put before a stitch's key for its post, foundation and standing versions, and how that is printed."""
    return (
        ("FP", rules.post.front),
        ("BP", rules.post.back),
        ("f", rules.foundation),
        ("", [*rules.standing, *rules.long, *rules.backwards]),
    )


def standard_phrases(stitches: StitchFile, words: WordFile, terms: str) -> list[tuple[str, str, str]]:
    """(phrase, kind, value) of the standard vocabulary under the terms."""
    phrases: list[tuple[str, str, str]] = []
    for rule in stitches.stitches:
        for form in stitch_forms(rule, terms):
            phrases.append((form.lower(), "stitch", rule.key))
        if not rule.counted:
            continue
        for form in rule.us if terms == "us" else rule.uk:
            for prefix, templates in _made_of(stitches):
                for template in templates:
                    if not template.endswith(" {}") and " " not in form:
                        word = template.replace("{}", form).lower()
                        phrases += [(word, "stitch", prefix + rule.key), (word + "s", "stitch", prefix + rule.key)]
    for prefix, templates in _made_of(stitches):
        phrases += [(template[:-3].lower(), "prefix", prefix) for template in templates if template.endswith(" {}")]
    # The other country's stitch words are known for what they are there, so that a row stays readable.
    other = "uk" if terms == "us" else "us"
    for rule in stitches.stitches:
        if rule.counted:
            phrases += [
                (form.lower(), "stitch", rule.key)
                for form in stitch_forms(rule, other)
                if len(form) > 2 or form == "sc"
            ]
    for kind, listed in words.words.items():
        phrases += [(form, kind, word.lower()) for word in listed for form in _spellings(word.lower())]
    return phrases


def _spellings(phrase: str) -> tuple[str, ...]:
    """A phrase, and the short spellings of "through" that it may have."""
    if "through" not in phrase.split():
        return (phrase,)
    return (phrase, *(phrase.replace("through", short) for short in ("thru", "thro", "thro'")))


def own_forms(book: Rulebook, terms: str) -> frozenset[str]:
    """Every form, in lower case, that the stitches' words have under the terms, post and joined forms too."""
    return _own_forms(book.stitches, terms)


def in_own_terms(word: str, book: Rulebook, terms: str) -> bool:
    """Whether a stitch's word, in lower case, is one under the terms; so is "standing FPdc" where "FPdc" is."""
    own, rules = own_forms(book, terms), book.stitches
    if word in own:
        return True
    manners = [template.partition("{")[0] for template in (*rules.standing, *rules.long, *rules.backwards)]
    return any(word.startswith(manner) and word.removeprefix(manner) in own for manner in manners)


@made_once
def _own_forms(stitches: StitchFile, terms: str) -> frozenset[str]:
    templates = [template for _, some in _made_of(stitches) for template in some]
    plain = [form for rule in stitches.stitches for form in stitch_forms(rule, terms)]
    return frozenset(text.lower() for form in plain for text in (form, *(t.replace("{}", form) for t in templates)))


def _standard_book(book: Rulebook, terms: str) -> PhraseBook:
    """The phrase book without special stitches."""
    return _phrase_book(book.stitches, book.words, terms)


@made_once
def _phrase_book(stitches: StitchFile, words: WordFile, terms: str) -> PhraseBook:
    return PhraseBook(standard_phrases(stitches, words, terms))
