"""Ways in which the same pattern may be written: wrapped, with other signs, other words for the same.

Each takes a text and gives it back in that way; what it does not touch stays as it is.  Common practice, no source.
"""

from __future__ import annotations

import textwrap
from collections.abc import Callable

import regex

Way = Callable[[str], str]

_LABEL = regex.compile(r"\s*(?:Rows?|Rnds?|Rounds?|ROWS?|RNDS?|R|Rd)\b")
_LABELLED = regex.compile(r"\s*(?:Rows?|Rnds?|Rounds?|ROWS?|RNDS?|R|Rd)\b[^:.]*[:.]")
_COUNT = regex.compile(r"\.? ?[(\[](\d[^()\[\]]*)[)\]]\.?$")
_ONE = r"\b(dc|sc|tr|hdc|htr)"  # one stitch: no figure stands before it
_SORT = r"(st|sc|dc|hdc|tr)"
_FULL = {
    "sc": "single crochet", "dc": "double crochet", "hdc": "half double crochet", "htr": "half treble crochet", "tr": "treble crochet",
    "ch": "chain", "sl st": "slip stitch", "sp": "space", "sps": "spaces", "st": "stitch", "sts": "stitches", "rep": "repeat",
    "sk": "skip", "rnd": "round", "beg": "beginning",
}  # fmt: skip
_NUMBERS = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
_ORDINALS = ("", "First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth", "Ninth")


def _sub(pattern: str, to: str | Callable[[regex.Match], str]) -> Way:
    """Every match of a pattern in other words."""
    compiled = regex.compile(pattern)
    return lambda text: compiled.sub(to, text)


def _rows(change: Way) -> Way:
    """A change of the lines that begin with a row's label."""
    return lambda text: "\n".join(change(line) if _LABEL.match(line) else line for line in text.split("\n"))


def _work(change: Way) -> Way:
    """A change of what stands behind a row's label."""

    def changed(line: str) -> str:
        label = _LABELLED.match(line)
        return label[0] + change(line[label.end() :]) if label is not None else line

    return _rows(changed)


def _worked(pattern: str, to: str | Callable[[regex.Match], str]) -> Way:
    """Words of the work in other words."""
    return _work(_sub(pattern, to))


def _count(to: str) -> Way:
    """The count at the end of a row in another form."""
    return _rows(lambda line: _COUNT.sub(to, line))


def _wrapped(width: int) -> Way:
    def wrap(text: str) -> str:
        return "\n".join(piece for line in text.split("\n") for piece in textwrap.wrap(line, width) or [""])

    return wrap


def _semicolons(words: str) -> str:
    """Semicolons for the commas between clauses, not for those in brackets."""
    depth, found = 0, []
    for sign in words:
        depth += (sign in "([{") - (sign in ")]}")
        found.append(";" if sign == "," and not depth else sign)
    return "".join(found)


def _ordinal(number: int) -> str:
    ending = "th" if number % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"


def _run_on(text: str) -> str:
    """Rows that follow each other in one paragraph."""
    lines: list[str] = []
    for line in text.split("\n"):
        last = next((i for i in range(len(lines) - 1, -1, -1) if lines[i].strip()), None)
        if last is not None and _LABEL.match(line) and _LABEL.match(lines[last]):
            lines[last:] = [f"{lines[last].rstrip()} {line}"]
        else:
            lines.append(line)
    return "\n".join(lines)


def _table(form: str) -> Way:
    """Rows as the lines of a table: label, words, count."""
    row = regex.compile(r"((?:Row|Rnd|Round)s? \d+[^:]*): (.*?)\s*(?:[(\[](\d[^()\[\]]*)[)\]])?\.?$")

    def line(text: str) -> str:
        found = row.match(text)
        return form.format(found[1], found[2].rstrip("."), found[3] or "") if found else text

    return lambda text: "\n".join(map(line, text.split("\n")))


def _broken_at(signs: str) -> Way:
    """Every clause of a row in a line of its own."""

    def broken(words: str) -> str:
        depth, found = 0, []
        for index, sign in enumerate(words):
            depth += (sign in "([{") - (sign in ")]}")
            found.append(sign + "\n" if sign in signs and not depth and words[index + 1 : index + 2] == " " else sign)
        return "".join(found).replace("\n ", "\n")

    return _work(broken)


_IN_NEXT = rf"(?<!\d ){_ONE} in (?:each of )?(?:the )?next (\d+) (sts|sc|dc|hdc|tr)\b"
_IN_ONE = rf"(?<!\d ){_ONE} in next {_SORT}\b"
_IN_EACH = rf"(?<!\d ){_ONE} in each {_SORT} (around|across)\b"
_EACH_ACROSS = rf"\b(in each {_SORT}) across\b"
_GROUP = r"\(([^()]*\d (?:dc|sc|tr|hdc|htr)[^()]*)\) (in|into)\b"
_SPACE = r"\bch-(\d+) (sps?)\b"
_JOIN = r"\bjoin with sl st in first (\w+)"
_CHAIN = r"\b([Cc]h) (\d+)\b(?! sps?)"
_ROW = r"(?m)^((?:Row|Rnd|Round)s? \d+(?:[-–]\d+)?(?: \([^)]*\))?):"
_MORE = r"\b(\d+) (?:times more|more times)\b"
_TIMES = r"([)\]]) (\d+) times\b"
_CALL = r"\b(?:Rep|Repeat) (Row|Rnd|Round) (\d+)\b"

WAYS: dict[str, Way] = {
    # the page
    "lines of 60": _wrapped(60),
    "lines of 38": _wrapped(38),
    "hyphens of a word processor": lambda text: text.replace("-", "\u2011"),
    "en dashes for hyphens": lambda text: text.replace("-", "–"),
    "wide signs": lambda text: text.replace("(", "\uff08").replace(")", "\uff09").replace(",", "\uff0c"),
    "hard spaces": lambda text: text.replace(" sts", "\u00a0sts").replace("next ", "next\u00a0"),
    "line ends of Windows": lambda text: text.replace("\n", "\r\n"),
    "two spaces": _work(lambda words: words.replace(" ", "  ")),
    "no space behind commas": _work(lambda words: words.replace(", ", ",")),
    "space before signs": _work(lambda words: words.replace(",", " ,").replace(";", " ;")),
    "capitals": _rows(str.upper),
    "small letters": _work(str.lower),
    "every word with a capital": _work(str.title),
    "bullets": _rows(lambda line: "• " + line),
    "indented": _sub(r"(?m)^(?=\S)", "    "),
    "every clause in a line": _broken_at(",;"),
    "every sentence in a line": _broken_at(".;"),
    "one paragraph": _run_on,
    "a table with bars": _table("| {} | {} | {} |"),
    "a table with tabs": _table("{}\t{}\t{}"),
    # labels
    "labels in order": _sub(r"(?m)^(Rnd|Row|Round) (\d+):", lambda one: f"{_ordinal(int(one[2]))} {one[1].lower()} -"),
    "label 3rd Row": _sub(r"(?m)^(Row|Rnd|Round) (\d+)(?=:)", lambda one: f"{_ordinal(int(one[2]))} {one[1]}"),
    "label Row Three": _sub(r"(?m)^(Row|Rnd|Round) (\d)(?=[: ])", lambda one: f"{one[1]} {_NUMBERS[int(one[2])].title()}"),
    "label Third Row": _sub(r"(?m)^(Row|Rnd|Round) ([1-9])(?=[: ])", lambda one: f"{_ORDINALS[int(one[2])]} {one[1]}"),
    "label Row 3.": _sub(_ROW, r"\1."),
    "label Row 3)": _sub(r"(?m)^((?:Row|Rnd|Round)s? \d+(?:[-–]\d+)?):", r"\1)"),
    "label Row 3 -": _sub(r"(?m)^((?:Row|Rnd|Round)s? \d+(?:[-–]\d+)?):", r"\1 -"),
    "label with a space before its colon": _sub(_ROW, r"\1 :"),
    "label without a sign": _sub(_ROW, r"\1"),
    "label in bold": _sub(_ROW, r"**\1:**"),
    "label on its own line": _sub(_ROW + " ", "\\1:\n"),
    "label Row #3": _sub(r"(?m)^(Row|Rnd|Round) (\d+)", r"\1 #\2"),
    "Round for Rnd": _sub(r"\bRnd(s?)\b", r"Round\1"),
    "Rows 3 to 10": _sub(r"(?m)^(Rows|Rnds|Rounds) (\d+)[-–](\d+)", r"\1 \2 to \3"),
    "Rows 3 through 10": _sub(r"(?m)^(Rows|Rnds|Rounds) (\d+)[-–](\d+)", r"\1 \2 through \3"),
    # counts
    "count behind a dash": _count(r" – \1."),
    "count in a sentence": _count(r". You now have \1."),
    "count you should end up with": _count(r". You should end up with \1."),
    "count behind an equals sign": _count(r" = \1"),
    "count behind three dashes": _count(r" --- \1"),
    "count behind a colon": _count(r": \1"),
    "count behind a semicolon": _count(r"; \1"),
    "count behind dots": _count(r"... \1"),
    "count behind a bar": _count(r" | \1"),
    "count in square brackets": _count(r" [\1]"),
    "count in braces": _count(r" {\1}"),
    "count in angles": _count(r" <\1>"),
    "count in bold": _count(r" **(\1)**"),
    "count in italics": _count(r" *(\1)*"),
    "count as a sentence": _count(r". \1."),
    "count in all": _count(r", \1 in all."),
    "count total": _count(r" (\1 total)"),
    "count behind Total": _count(r". Total: \1."),
    "count a total of": _count(r" (total of \1)"),
    "count at end of row": _count(r" (\1 at end of row)"),
    "count in the line below": _count(".\n(\\1)"),
    "stitch count in the line below": _count("\nStitch count: \\1"),
    "turn behind the count": _rows(_sub(r", turn\. ?([(\[]\d[^()\[\]]*[)\]])$", r". \1 Turn.")),
    # signs
    "semicolons": _work(_semicolons),
    "turn as a sentence": _worked(r", turn\b", ". Turn"),
    "figures close to stitches": _worked(r"\b(\d+) (sc|dc|hdc|tr)\b", r"\1\2"),
    "crosses for times": _worked(_TIMES, r"\1 x \2"),
    "6x": _worked(_TIMES, r"\1 \2x"),
    "(x6)": _worked(_TIMES, r"\1 (x\2)"),
    "*6": _worked(_TIMES, r"\1*\2"),
    "6 x before": _worked(r"([(\[][^()\[\]]+[)\]]) (\d+) times\b", r"\2 x \1"),
    "stars on both sides": _sub(r"\*([^*;]+); rep from \* (around|across|to end)", r"*\1*, rep from * to * \2"),
    "brackets for stars": _sub(r"\*([^*;()\[\]]+); rep from \* (around|across|to end)", r"(\1) \2"),
    "stars of magazines": _worked(r"\*", "★"),
    "daggers for stars": _worked(r"\*", "†"),
    "space behind stars": _worked(r"\*(?=[A-Za-z(])", "* "),
    "braces for brackets": _worked(r"\[([^\[\]]+)\]", r"{\1}"),
    # words
    "in full": _worked(r"\b(sl st|hdc|htr|sc|dc|tr|ch|sps|sp|sts|st|rep|sk|rnd|beg)\b(?![-\d])", lambda one: _FULL[one[1]]),
    "numbers in words": _sub(r"\bnext ([2-5])\b", lambda one: f"next {_NUMBERS[int(one[1])]}"),
    "then": _worked(r", (?=(?:sc|dc|hdc|tr|ch|skip|sk|join|turn)\b)", ", then "),
    "into": _sub(r"\b(dc|sc|tr|hdc) in (next|each|first|last|same)\b", r"\1 into \2"),
    "skip": _sub(r"\b(?:sk|skip)\b", "miss"),
    "1st": _worked(r"\bfirst\b", "1st"),
    "in the": _worked(r"\bin (first|last|next|same)\b", r"in the \1"),
    "each of the": _sub(r"\bin next (\d+) (sts?|dc|sc|tr|hdc|ch)\b", r"in each of the next \1 \2"),
    "1 sc in each of next 5": _worked(_IN_NEXT, r"1 \1 in each of next \2 \3"),
    "5 sc": _worked(_IN_NEXT, r"\2 \1"),
    "sc 5": _worked(_IN_NEXT, r"\1 \2"),
    "sc next 5 sts": _worked(_IN_NEXT, r"\1 next \2 \3"),
    "sc over the next 5 sts": _worked(_IN_NEXT, r"\1 over the next \2 \3"),
    "sc across next 5 sts": _worked(_IN_NEXT, r"\1 across next \2 \3"),
    "in next 5 sts work sc": _worked(_IN_NEXT, r"in next \2 \3 work \1"),
    "1 sc in next st": _worked(_IN_ONE, r"1 \1 in next \2"),
    "sc next st": _worked(_IN_ONE, r"\1 next \2"),
    "1 sc in each": _worked(rf"(?<!\d ){_ONE} in each\b", r"1 \1 in each"),
    "in every": _worked(rf"{_ONE} in each {_SORT}\b", r"\1 in every \2"),
    "in each and every": _worked(rf"{_ONE} in each {_SORT}\b", r"\1 in each and every \2"),
    "in all": _worked(_IN_EACH, r"\1 in all \2 \3"),
    "sc around": _worked(_IN_EACH, r"\1 \3"),
    "to the end of the row": _worked(_EACH_ACROSS, r"\1 to the end of the row"),
    "two into the next": _worked(rf"\b2 (sc|dc|hdc|tr) in next {_SORT}\b", r"work two \1 into the next \2"),
    "sc 2 tog": _worked(r"\b(sc|dc|hdc|tr)(\d)tog\b", r"\1 \2 tog"),
    "2sctog": _worked(r"\b(sc|dc|hdc|tr)(\d)tog\b", r"\2\1tog"),
    "group in square brackets": _worked(_GROUP, r"[\1] \2"),
    "group all in": _worked(_GROUP, r"(\1) all \2"),
    # chains and spaces
    "number first": _sub(r"\b[Cc]h (\d+)\b(?! sps?)", r"\1 ch"),
    "ch3": _worked(_CHAIN, r"\1\2"),
    "3ch": _worked(r"\b[Cc]h (\d+)\b(?! sps?)", r"\1ch"),
    "chain 3": _worked(r"\b([Cc])h (\d+)\b(?! sps?)", r"\1hain \2"),
    "make 3 ch": _worked(r"\bch (\d+)\b(?! sps?)", r"make \1 ch"),
    "sp written out": _sub(r"\bsps?\b", "space"),
    "2-ch sp": _worked(_SPACE, r"\1-ch \2"),
    "ch2-sp": _worked(_SPACE, r"ch\1-\2"),
    "ch 2 sp": _worked(_SPACE, r"ch \1 \2"),
    # joins
    "sl st to join": _worked(_JOIN, r"sl st in first \1 to join"),
    "sl st to the first": _worked(_JOIN, r"sl st to first \1"),
    "join to": _worked(_JOIN, r"join to first \1 with a sl st"),
    "close": _worked(_JOIN, r"close with sl st in first \1"),
    "ss": _worked(r"\bsl st\b", "ss"),
    "slst": _worked(r"\bsl st\b", "slst"),
    # repeats
    "all the way around": _worked(r"\b(?:rep|repeat) from \* around", "repeat from * all the way around"),
    "to the end of the round": _worked(r"\b(?:rep|repeat) from \* around", "rep from * to end of rnd"),
    "repeat around from *": _worked(r"\b(?:rep|repeat) from \* around", "repeat around from *"),
    "another 4 times": _worked(_MORE, r"another \1 times"),
    "a further 4 times": _worked(_MORE, r"a further \1 times"),
    "in total": _worked(r"\brep(?:eat)? from \* (\d+) (?:times more|more times)\b", lambda one: f"rep from * for a total of {int(one[1]) + 1} times"),
    "until worked 5 times in all": _worked(r"\brep(?:eat)? from \* (\d+) (?:times more|more times)\b", lambda one: f"rep from * until you have worked it {int(one[1]) + 1} times in all"),
    "as Row 2": _sub(_CALL, r"As \1 \2"),
    "same as Row 2": _sub(_CALL, r"Same as \1 \2"),
    "repeat the 2nd row": _sub(_CALL, lambda one: f"Repeat the {_ordinal(int(one[2]))} {one[1].lower()}"),
}  # fmt: skip
