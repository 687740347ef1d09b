"""Tells headings over rows from other lines: "Back", "SLEEVE (make 2)", "Shape Armholes"."""

from __future__ import annotations

from dataclasses import dataclass

import regex

from lint.documents.rowtables import is_head
from lint.expression import expression
from lint.reading.lines.labels import LabelReader
from lint.reading.page.sections import SectionFinder
from lint.reading.words.piecewords import AGAIN

_MAKE_WORDS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8, "ten": 10, "twelve": 12}
_MAKE = expression(r"\(?\s*\b(?:make|work|mk)\s+(?P<n>\d+|[a-z]+)\b[^)]*\)?|\(\s*(?:x\s?(?P<x>\d+)|(?P<y>\d+)\s?x)\s*\)|\(\s*(?P<b>\d{1,2})(?:\s?(?:pcs|pieces|parts))?\s*\)|\(\s*(?P<c>\d{1,2}|[a-z]+)\s+(?:in all|in total|needed|required|of)\s*\)|-\s*make\s+(?P<d>\d+)", regex.I)  # fmt: skip
_ALIKE = expression(
    r"(?i)(?:\s+(?:[-–—]\s+|\()|,\s+)(?:work(?:ed)?\s+|make\s+)?(?P<n>both|two|three|four|six|[2-9]|1\d)\s+(?:alike|the\s+same)\)?$"
)
_STARTS_WORK = expression(
    r"[\W_]*(?:ch(?:ain)?s?\b\.?\s*-?\s*\d|ch\d|\d[\d/-]*(?:\s?[(\[]\d[\d\s,;:/()\[\]-]{1,60}[)\]\d])?\s?ch\b|[(\[]\d[\d\s,;:/-]{3,60}[)\]]\s?ch\b|make\s+(?:a|an|[(\[]?\d)|with\b|using\b|join\b|attach\b|rejoin\b|begin|start|commence|magic|foundation|fasten|do not|turn\b(?!\s+(?:the\s+)?heel\W*$)|change\b|switch\b|insert\b|put\b|fill\b|pull\b|place\b|stuff|weave|sew\b|work(?:ing|ed)?\b|cont\b|now\b|repeat\b|rep\b|at end|continue|mark\b|remove|leave|finish off|cut\b|fold\b|note\b|nb\b|see\b)",
    regex.IGNORECASE,
)
_JOINS = expression(
    r"(?i)(?:ch\s?-?\s?\d+|\d[\d/-]*(?:\s?[(\[]\d[\d\s,;:/()\[\]-]{1,60}[)\]\d])?\s?ch|chain|fsc|make|magic|mr\b|begin|skip|sk|miss|leave|leaving|count|with|join|rejoin|attach|return|using|starting|chang(?:e|ing)|switch)\b"
)  # a line before the first row
_TERMS_SAID = expression(
    r"(?i)(?:written in |in )?(?:us|uk|u\.s\.|u\.k\.|american|british)\s+(?:crochet\s+)?(?:terms|terminology|abbreviations)(?:\s+(?:used|throughout))?\W*"
)
GATE = expression(r"(?i)^\W*(?:for\s+)?(?:all\s+sizes|sizes?\b.*|.*\bsizes?\s+only)\W*$")

# "Colour B" between two rounds changes the yarn and begins no piece; nor do "In grey", "White color." under its heading
_COLOUR = expression(
    r"(?i)(?:(?:colou?r|yarn|shade)\s+(?:[a-h]|\d|one|two|three|four|five)|MC|CC\d?"
    r"|in\s+(?:\p{L}+\s+){0,2}\p{L}+|\p{L}+(?:\s\p{L}+)?\s(?:colou?r|yarn|thread|wool|cotton|floss))(?:\s*\([^()]*\))?\W*"
)


# rows told without a label: "Work 12 rows even", "Dec 1 st at each end of next row", "Cont straight until …"
_ROWS_TOLD = expression(
    r"(?i)(?:work|cont(?:inue)?)\s+(?:even|straight|without|\d[\d\s,:;()\[\]/-]*(?:more\s+)?(?:rows?|rnds?|rounds?))\b"
    r"|(?:dec|inc)(?:rease)?\s+\d+\s+sts?\b|rep(?:eat)?\s+(?:rows?|rnds?|rounds?|(?:the\s+)?last)\b"
)

# "As for Back.", "Like the first sleeve": a piece that is worked like another, with or without a verb
LIKE_ANOTHER = (
    r"(?i:(?:(?:work|make|crochet|knit)\s+(?:(?:another|a\s+second|one\s+more)\s+(?:piece|one)?\s*)?)?"
    r"(?:exactly\s+)?(?:the\s+)?(?:same\s+as|as\s+(?:given\s+)?for|as|like|to\s+(?:match|correspond(?:\s+(?:to|with))?)|follow\s+(?:the\s+)?(?:instructions|directions|pattern)\s+for)\s+(?:the\s+)?(?P<as>\p{L}[\p{L}-]*)(?:\s+\p{L}+)?\s*(?=[.,;]|$|\s(?:to|until|but)\b))"
)
_LIKE_ANOTHER = expression(r"[\W_]*" + LIKE_ANOTHER)
_ROWS_NAMED = r"(?:(?:rows?|rnds?|rounds?)\s+\d{1,3}(?:\s*(?:-|–|to|and|&)\s*\d{1,3})?|\d{1,3}(?:st|nd|rd|th)\b(?:\s*(?:-|–|to|and|&)\s*\d{1,3}(?:st|nd|rd|th)\b)?\s+(?:rows?|rnds?|rounds?))"
# "Skip 18 sts, join yarn in next st and work as for first flap.", "Work Rows 1-8 of Front."
_LIKE_ANOTHER_LATER = expression(
    rf"(?i)(?:^|[.,;]\s|\band\s)\s*(?:then\s+)?(?:(?:complete|finish)\s+(?=as|like)|)(?:(?:work|rep(?:eat)?)\s+{_ROWS_NAMED}\s+(?:of|on|as(?:\s+(?:given\s+)?for)?|like)\s+(?:the\s+)?(?P<as>\p{{L}}[\p{{L}}-]*)|{LIKE_ANOTHER})"
)

# The words with which a piece begins: a chain of so many, or a ring; before them the multiple, the colour or the hook.
START = expression(
    r"(?i)[\W_]*(?:multiples?\s+of\s+\d[^.;]*[.;]\s*)?"
    r"(?:(?:start|begin|commenc)\w*\s+(?:at|from|in)\s+(?:\w+\s+){0,2}\w+,\s*)?"
    r"(?:(?:with|using)\s+(?:(?![^,]{0,40}\b(?:facing|sides?|rs|ws|held|together)\b)(?:\w+\s+){0,2}\w+,"
    r"|[^;:,]{0,30}?(?:\d\s*mm|\bhook\b)[^.;:,]{0,40}?,?|(?:\p{L}+\s+){1,3}(?=make\s+\d+\s?ch))\s*)?(?:loosely\s+)?"
    r"(?:(?:(?:commenc|begin|start)\w*\s+with|work)\s+(?=\d+\s?ch|ch(?:ain)?\s?\d+\s*(?:[.,;(]|sts?\b|$)))?"
    r"(?:(?:(?:commenc|begin|start)\w*\s+with|work|make|crochet)\s+an?\s+(?:\p{L}+\s+)?(?=ch(?:ain)?\s+of\s+\d))?"
    r"(?:(?:start|begin)\w*\s+by\s+(?:(?=chaining)|making\s+(?:an?\s+)?(?=\d+\s?ch|ch(?:ain)?\s+of\s+\d)))?(?:ch(?:ain(?:ing)?)?s?\b\.?\s*-?\s*(?:of\s|[(\[{]\s*|(?:size\s)?[\p{L}\d/-]{1,9}\s?:\s?)?\d|ch\d|\d[\d/-]*(?:\s?[(\[]\d[\d\s,;:/()\[\]-]{1,60}[)\]\d])?\s?ch\b|[(\[]\d[\d\s,;:/-]{3,60}[)\]]\s?ch\b|make\s+(?:a\s+magic|[(\[]?\d)|magic (?:ring|circle|loop)"
    r"|(?:work\s+)?(?:\d[\d\s,;:()\[\]-]{0,40}f(?:sc|hdc|dc|tr)\b|f(?:sc|hdc|dc|tr)\s+\d))"
)


def begins_work(text: str) -> bool:
    """Whether a line starts a piece: its chain or ring; not a note on what a chain counts as."""
    return START.match(text) is not None and not expression(
        r"(?i)\bcount(?:s|ed)?\b|\b(?:not|never)\s+a\s+st|\bat (?:the )?(?:start|beg\w*|end) of (?:an?|all|each|every) (?:rows?|rnds?|rounds?)\b|=|(?<!\d\s?)–|–(?!\s?\d)|:(?!\s*\d)"
    ).search(text)


def _tells_a_chain(line: str) -> bool:
    """Whether a line is a name, a size's perhaps, and the chain that its maker begins with: "Medium: Ch 44"."""
    name, colon, words = line.partition(":")
    return bool(colon) and len(name.split()) <= 3 and begins_work(words.strip())


# "STRIP. Ch 30." – a heading in capitals, and the piece's start behind it in one line
# or with a colon, "Strap: ch 80, …"; what is a piece by its name needs no colon, "Picot edging - Ch 1, …"
_PIECE_NAME = r"(?i:(?:\p{L}+ ){0,2}(?:edging|border|trim|trimming|straps?|handles?|ties?|cord|band|brim|cuffs?|collar|ribbing|hem|neckband))"
_CHAINS = r"(?:(?:with|using) (?:(?:\w+ )?\w+,? |[^.;:,()]{1,40}\bhook\b[^.;:,()\d]{0,25},? ))?(?:crochet |make )?(?:ch ?\d|\d+ ?ch|chain \d)"  # "With green crochet 12 ch."
_BEGUN = r"(?:start(?:ing)?|beg(?:in(?:ning)?)?\.?) (?:at|from) (?:\w+ ){0,3}\w+\.?\s*$"  # where, and the chain in the next line
RUN_IN = expression(
    r"\s*(?P<name>[A-Z][A-Z0-9 '&-]{2,40}?)(?P<make> \((?:[Mm]ake )?\w+\))?(?:\.| ?(?:\. ?){2,}| ?[…—–-]) *(?=(?i:ch|make|with|join|fsc|start(?:ing)?|beg(?:in(?:ning)?)?|work)\b)"
    rf"|\s*(?P<name>[A-Z][A-Z0-9 '&-]{{2,40}}?)(?P<make> \([Mm]ake \w+\))?: +(?=(?i:{_CHAINS}|make \d|(?:re)?join\b|(?:starting|beginning) (?:at|from) [\w ]{{2,20}}, (?:ch|make) \d|{_BEGUN}|work (?:exactly )?(?:the )?(?:same as|as (?:given )?for)\b))"
    rf"|\s*(?P<name>(?=\p{{Lu}}){_PIECE_NAME})(?P<make> \([Mm]ake \w+\))?(?:\.| [-–—]) +(?=(?i:ch \d|ch\d|\d+ ch|chain \d|(?:re)?join\b|attach\b|{_BEGUN}))"
    r"|\s*(?P<name>(?!(?:Turn|Join|Next|Begin|Finish|Fasten|Continue|Repeat|Note|Skip|Start|Then|Now|Row|Round|Rnd)\b)\p{Lu}\p{Ll}+(?: \p{Lu}\p{Ll}+)?)(?P<make> \([Mm]ake \w+\))?(?:\.(?: \p{Lu}\p{L}+\.)?| ?\.?[–—]) *(?=(?i:(?:make )?(?:ch ?\d+|\d+ ?ch)[.;]?\s*$))"
    rf"|\s*(?P<name>\p{{Lu}}\p{{Ll}}+(?: \p{{L}}+){{0,2}}?)(?P<make> \([Mm]ake \w+\))?: +(?=(?i:{_CHAINS}|(?:re)?join\b|attach\b))"
    rf"|\s*(?P<name>\p{{Lu}}[\p{{L}}\d]+(?: [\p{{L}}\d]+){{0,2}}?)(?P<make> \([Mm]ake \w+\))?(?:: +| [-–—] +)(?={LIKE_ANOTHER})"
    r"|\s*(?P<name>(?i:border|edging|edge|trim|ruffle|heading))(?P<make>)(?::|[ \t]+[-–—])[ \t]+(?=(?i:(?:\d+[ \t]?)?(?:sc|dc|hdc|tr|htr|ss|sl st|work)\b|do not (?:turn|fasten|cut|break)\b|don['’]t (?:turn|fasten|cut)\b|turn\b|(?:with|using) \w+, |ch[ \t]?\d|\d+[ \t]?ch\b|(?:re)?join\b|attach\b))"
)

_GROUP = expression(
    r"tiles?|blocks?|mesh(?:es)?|shells?|fans?|scallops?|petals?|v-st(?:itch)?|clusters?|bobbles?|puffs?"
)
_FAR = 40  # lines in which a stitch that is told at the front is worked; common practice, no source

_SAYS_MAKE = expression(r"(?i)\(?\bmake\b|\(\s*(?:x\s?\d+|\d+\s?x)\s*\)$")
# "MB     make bobble": an entry of a list, and no piece that is made so many times
_MAKES_STITCH = expression(
    rf"(?i)[\p{{L}}\d]{{1,5}}\s+make\s+(?:an?\s+)?(?!(?:{'|'.join(_MAKE_WORDS)}|a|an|pair|both|as|many|several|more|another|at|each|enough)\b)\p{{L}}+(?:\s\p{{L}}+){{0,2}}"
)
_YARN_SAID = expression(r"(?:colou?r|yarn)\s*[:–-]\s*")
_MAKE_ALONE = expression(rf"(?i)\W*make\s+(?:{'|'.join(_MAKE_WORDS)}|\d{{1,2}})\W*")
_LEADS_ON = expression(
    r"(?i)(?:then|next|now|finally|proceed|as|for|on|at|to|when|if)\b|.*\bfollows$|.*\bthus$"
)  # "Next:"
# a piece's name over the headings of its sections; "FO" over the next piece is none
_PIECE_OVER = expression(r"\W*\p{L}{3,}(?:[ '’-]+\p{L}+){0,3}\W*")
_IN_BRACKETS = expression(r"\([^()]*\)")
_EMPHASIS = expression(r"(?<=[\w.:)])[*_]{2,3}(?!\w)|(?<!\w)[*_]{2,3}(?=\w)")  # "**Ears** (make 2)"
_SHAPES = expression(r"(?i)(?:shap(?:e|ing)|divid(?:e|ing))\b")
_OF_SEVERAL = expression(r"(?i)(?:first|second|third|front|back|top|bottom|left|right|upper|lower|inner|outer)\b")
_OFF = expression(r"(?i)\b(?:fasten|finish|bind|cast) off\W*$")
_NUMBER_FIRST = expression(r"[\W_]*\d")
# "2. WING (x2)", "III. Body": the pieces of a pattern numbered
_LISTED = expression(r":[^()]*;|:[^():]*[,·•/|][^():]*:|(?i::\s*(?:sk|skip|miss|insert|yo|yarn over|yoh|yrh|wrap)\b)")
_PIECE_NUMBER = expression(r"(?:\d{1,2}|[IVX]{1,4})\s?[.)]\s+(?=\p{Lu})")
# "Body.", "Ears (2 pieces).": a piece's name as a sentence
_NAME_STOPPED = expression(
    r"(?!(?i:ch(?:ain)?s?|slip|crochet|knit)\b)\p{Lu}\p{L}+(?:[ -]\p{L}+){0,2}(?: \([^()]{1,20}\)| \d{1,2} ?(?:pcs|pieces|parts))?\."
)
_YARN_BEHIND = expression(r"(?P<name>\p{Lu}[^.:;]{2,30}\.)\s(?P<yarn>\p{Lu}[\p{L} -]{2,24}?)(?: yarn)?\.")
_MEASURED = expression(r"(?i)\d\s?(?:sc|dc|hdc|tr|htr|ch|mm|cm|in|yd|g|oz|m)\b|[–—]\s")


@dataclass(frozen=True)
class Line:
    """A line of the text, and where it starts."""

    start: int
    text: str

    @property
    def end(self) -> int:
        return self.start + len(self.text)

    @property
    def blank(self) -> bool:
        return not self.text.strip()


@dataclass(frozen=True)
class PartHeadings:
    """Knows the headings of one text by its lines."""

    lines: list[Line]
    labels: LabelReader
    finder: SectionFinder
    bare: bool  # rows are labelled by list numbers alone
    lower_case: bool  # the whole text is

    def at(self, index: int, after_blank: bool, under: bool = False) -> bool:
        """Whether a line is a heading over rows, or the name of a piece over such a heading (`under`: over that one)."""
        text = self._named(self.lines[index].text)
        if text.endswith(".") and self._opens_rows(index, text):
            text = text.rstrip(".")
        if (
            not self.like(text)
            or self._told_of_above(index, text)
            or _tells_a_chain(text)
            or _MAKES_STITCH.fullmatch(text) is not None
            or (
                not after_blank
                and not text.isupper()
                and not _SAYS_MAKE.search(text)
                and not self._stands_between_rows(index, text)
            )
        ):
            return False
        for below, following in enumerate(self.lines[index + 1 : index + 14], index + 1):
            if following.blank:
                continue
            other = following.text.strip()
            if self.labels.at_line(other, 0, self.bare) is not None or self.labels.inline(other, 0):
                return True
            if _tells_a_chain(other):
                return True
            heading = self.finder.at_line(other)
            if heading is not None and heading.key not in ("notes",):
                yarn = heading.key in ("materials", "colours") and other[heading.content :].strip()
                coming = next((line.text for line in self.lines[below + 1 : below + 3] if not line.blank), "")
                if not yarn or self.labels.at_line(coming, 0, self.bare) is None:
                    return False  # but "LEGS" / "Yarn: brown" / "Rnd 1"
                continue
            if self.like_another(index, other) or AGAIN.match(other.lower()) or _ROWS_TOLD.match(other):
                return True
            if (
                _STARTS_WORK.match(other)
                and not expression(r"(?i)[\W_]*(?:note|nb|see)\b").match(other)
                and not self.like(other)
            ):
                if begins_work(other) or expression(
                    r"(?i)[\W_]*(?:ch(?:ain)?s?\b\s*-?\s*\d|ch\d|\d+\s?ch\b|make\s+(?:a\s+magic|\d)|with\s+\w+,|join|magic|begin|commence|start|(?:work|make)\s+(?:exactly\s+|the\s+same\s+|same\s+)?as\b)"
                ).match(
                    other,
                ):
                    return True
                continue
            if self._colour_alone(other) or _MAKE_ALONE.fullmatch(other):
                continue  # "LEGS" / "Brown" / "Rnd 1"
            if heading is None and self.like(self._named(other)) and self._named(other) != text:
                few = after_blank and _PIECE_OVER.fullmatch(_IN_BRACKETS.sub("", text)) is not None
                return few and not under and self.at(below, self.lines[below - 1].blank, under=True)
        return False

    def _colour_alone(self, text: str) -> bool:
        """Whether a line only names the yarn of the piece: "Brown", "Light grey.", "Colour: honey brown"."""
        words = _YARN_SAID.sub("", text.strip(" *_.:").lower()).split()
        return 0 < len(words) <= 3 and words[-1] in self.labels.colours and all(map(str.isalpha, words))

    def _told_of_above(self, index: int, text: str) -> bool:
        """Whether a line tells the yarn or the number of the piece whose name stands above it: "Light brown", "Make two"."""
        if not self._colour_alone(text) and _MAKE_ALONE.fullmatch(text) is None:
            return False
        above = next((at for at in (index - 1, index - 2) if at >= 0 and not self.lines[at].blank), None)
        return above is not None and self.names_piece(above)

    def names_piece(self, index: int) -> bool:
        """Whether a line could be a piece's name: few words, no row's label and no section's heading."""
        line = self.lines[index].text
        named = self._named(line)
        return (
            self.like(named) and self.labels.at_line(line, 0, self.bare) is None and self.finder.at_line(line) is None
        )

    def names_stitches(self, index: int, name: str) -> bool:
        """Whether a name before a colon is a group of stitches that begins a clause of labelled rows below: "Inc tile: ch 6, …"."""
        words = name.lower().split()
        if not words or not _GROUP.fullmatch(words[-1]):
            return False
        name = regex.escape(" ".join(words))
        begins = expression(rf"(?i)(?:^\s*|[,;*]\s*|\bthen\s+)(?:\d+\s+)?{name}s?\b(?!\s*[)\]}}])", own_words=True)
        below = (line.text for line in self.lines[index + 1 : index + _FAR])
        labels = ((text, self.labels.at_line(text, 0, self.bare)) for text in below)
        return any(found is not None and begins.search(text[found.body :]) for text, found in labels)

    def _named(self, line: str) -> str:
        """A line's words without its marks, and without the number of a piece where rows do not stand under such numbers."""
        text = line.strip().strip("*_# ")
        number = _PIECE_NUMBER.match(text) if not self.bare else None
        text = text[number.end() :] if number is not None else text
        told = _YARN_BEHIND.fullmatch(text)  # "Head. Black.", "Horns (2 parts). Cream yarn."
        return told["name"] if told is not None and self._colour_alone(told["yarn"]) else text

    def like_another(self, index: int, words: str) -> bool:
        """Whether words at a line say that a piece is worked like one that a line above is the heading of."""
        match = _LIKE_ANOTHER.match(words)
        if match is None and (_STARTS_WORK.match(words) or _JOINS.match(words)):
            match = _LIKE_ANOTHER_LATER.search(words)
        if match is None:
            return False
        named = match["as"].lower()
        before = (line.text.strip(" \t*_#:.").lower() for line in self.lines[:index])
        return named in ("first", "other") or any(
            expression(rf"\b{regex.escape(named)}\b", own_words=True).search(text) and len(text.split()) <= 5
            for text in before
        )

    def _opens_rows(self, index: int, text: str) -> bool:
        """Whether a name that ends in a full stop stands over a first row, with at most a line of talk between: "Ears (2 pieces)." """
        above = self.lines[index - 1].text.strip() if index else ""
        if _NAME_STOPPED.fullmatch(text) is None or _NAME_STOPPED.fullmatch(above) is not None:
            return False  # "Blue yarn." under the piece's name
        if text.rstrip(".").lower() in self.labels.colours and self.like(self._named(above)):
            return False  # "Head and body (in one piece)" / "Brown."
        if index > 1 and (above.isupper() or _SAYS_MAKE.search(above)) and self.like(self._named(above)):
            return False  # "HEAD" / "Orange."
        below = [line.text for line in self.lines[index + 1 : index + 5] if not line.blank][:2]
        labels = [self.labels.at_line(line, 0, self.bare) for line in below]
        first = next((found.label for found in labels if found is not None), None)
        return first is not None and first.numbers[:1] == (1,)

    def _stands_between_rows(self, index: int, text: str) -> bool:
        """A word or two over a labelled row, with no blank line before: "Flap", "Buttonhole row", "Sleeves (both alike)"."""
        above = self.lines[index - 1].text.strip() if index else ""
        apart = index == 1 or index > 1 and self.lines[index - 2].blank
        piece_above = bool(_OF_SEVERAL.match(text)) and apart and self.like(self._named(above))  # "BACK" / "Lower back"
        below = [line for line in self.lines[index + 1 : index + 4] if not (piece_above and line.blank)]
        ahead = [line.text.strip() for line in below[:2]] + ["", ""]
        following = ahead[1] if _JOINS.match(ahead[0]) else ahead[0]
        name = _IN_BRACKETS.sub("", _ALIKE.sub("", text)).strip(" :")
        most = 7 if _SHAPES.match(name) else 3  # "Shape armholes and divide for neck"
        few = len(name.split()) <= most and expression(r"\p{Lu}[\p{L}' -]+").fullmatch(name) is not None
        few = few and not (text.endswith(":") and (name.lower() in self.labels.colours or _LEADS_ON.match(name)))
        labelled = bool(following) and self.labels.at_line(following, 0, self.bare) is not None
        if not labelled and _OFF.search(above) is not None:  # a talk may stand between the name and its first row
            coming = (line.text for line in self.lines[index + 1 : index + 6])
            labelled = any(self.labels.at_line(line, 0, self.bare) is not None for line in coming)
        labelled = labelled or _ROWS_TOLD.match(ahead[0]) is not None or piece_above and begins_work(ahead[0])
        return few and (labelled or self.like_another(index, ahead[0]))

    def like(self, text: str) -> bool:
        """Whether words could be a heading: few, and no work."""
        if (
            not text
            or len(text) > 70
            or len(_IN_BRACKETS.sub("", text).split()) > 9
            or text.endswith((".", ",", ";"))
            and not text.isupper()
        ):
            return False
        if expression(r"\.\s(?i:ch(?:ain)?\s?\d{1,3}|\d{1,3}\s?ch)\W*$").search(text):
            return False  # "Body. White. CH 9": a chain behind the name
        if expression(r"\([^()]*\)\W*").fullmatch(text):
            return False  # "(in green, then off-white)" under a heading
        if (
            _STARTS_WORK.match(text)
            or GATE.match(text)
            or _COLOUR.fullmatch(text)
            or _NUMBER_FIRST.match(text)
            or "=" in text
        ):
            return False
        if not expression(r"\p{L}").search(text):
            return False  # the rule under a table's head
        if " | " in text or is_head(text) or _LISTED.search(text) or _TERMS_SAID.fullmatch(text):
            return False  # the head of a table; "U.S. terms: ch, chain; dc, double"; "US terms" over the chain
        if text[0].islower() and not self.lower_case and not self.bare:
            return False
        return not _MEASURED.search(_MAKE.sub("", text))  # "(8 in all)" is no length

    def name(self, text: str) -> tuple[str, int]:
        """A heading's name, and how many of the piece are made."""
        name = self._named(text).rstrip(":–—- .")
        make = self.make(name)
        bare = _ALIKE.sub("", _MAKE.sub("", name)).strip(" -–—:,") or name
        return _EMPHASIS.sub("", bare), make

    @staticmethod
    def make(text: str) -> int:
        """How many of a piece a heading says are made."""
        if (alike := _ALIKE.search(text)) is not None:
            return number_of(alike["n"]) or 2
        match = _MAKE.search(text)
        if not match:
            return 1
        return number_of(next((item for item in match.groups() if item), "1")) or 1


def number_of(word: str) -> int | None:
    """The number of a figure or of a word, "two"; None where it is neither."""
    return int(word) if word.isdigit() else _MAKE_WORDS.get(word.lower())
