"""Sizes that leave off: "Size S stops here.", "End here for sizes S and M. Continue to Rnd 19.", "Small stop after Row 12."."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace

import regex

from lint.amount import Amount
from lint.expression import expression
from lint.pattern import Label, Stated
from lint.reading.sizes.gates import GateReader, Sizes, goes_on_to

_NAMES = r"[\w/][\w/.½¼¾,&+ ()–-]{0,60}?"
_DONE = r"(?:stops?|ends?|finish(?:es)?|(?:is|are)\s+(?:now\s+)?(?:done|finished|completed?)|done|fastens?\s+off)"
_AFTER = r"(?:\s+(?:after|at\s+the\s+end\s+of|at|with)\s+(?:row|rnd|round|rd)\s+(?P<after>\d+))"
_THING = (  # "the medium hat is finished here"; any other word may be a piece of the pattern
    r"(?:\s+(?:sizes?|version|one|hat|beanie|cap|bonnet|beret|socks?|slippers?|boot(?:ie|ee)s?|mittens?|mitts?|gloves?|cowl|sweater"
    r"|jumper|pullover|cardigan|vest|top|skirt|dress|basket|bag|blanket|mat|rug|cushion))?"
)
_MAKING = r"(?:if\s+(?:you(?:\s+are|'re|’re)\s+)?(?:making|working)\s+)?"
_FORMS = (
    rf"{_MAKING}(?:for\s+)?(?:the\s+)?(?P<said>sizes?\s+)?(?P<names>{_NAMES}){_THING}(?:\s+only)?\s*[:,–—-]?\s*(?P<done>{_DONE})(?:\s+(?P<here>here|now|at\s+this\s+point)\b|{_AFTER})?(?:\s+[\w\s]{{0,30}}?)?",
    rf"(?P<done>{_DONE})(?:\s+\p{{L}}+)?(?P<here>\s+here)?\s+for\s+(?:the\s+)?(?P<said>sizes?\s+)?(?P<names>{_NAMES}){_THING}(?:\s+only)?(?P<here>\s+here)?",
    rf"(?:you\s+have|you've|you’ve|this)\s+(?:now\s+)?(?P<done>finish(?:ed|es)|complete[ds])\s+(?:the\s+)?(?P<said>sizes?\s+)?(?P<names>{_NAMES}){_THING}(?P<here>\s+(?:here|now))?",
    rf"(?P<done>stop|end|finish)\s+(?:the\s+)?(?P<said>sizes?\s+)?(?P<names>{_NAMES}){_THING}(?:\s+(?P<here>here|now|at\s+this\s+point)\b|{_AFTER})",
)
_LONGEST = 400  # characters of a sentence that sends sizes on
_SENTENCE = expression(r"[^.;!)\]]+(?:[.;!)\]]+|$)")
# "Small stops after Rnd 3, Medium after Rnd 4": two of them in one sentence
_EACH_AFTER = expression(
    r"(?i),(?=\s*(?:and\s+)?(?!stop|end|finish|done|fasten)[\w/-]{1,20}(?:\s[\w/-]{1,20})?\s+after\s+(?:row|rnd|round|rd)\s+\d)"
    r"|,(?=\s*(?:(?:and|but|then)\s+)*(?:continue|carry|keep)\b[^,.;]{0,20}\b(?:for|with)\s)"  # "…, continue for L"
)
_SAYS = tuple(expression(rf"[\W_]*{form}[\s*_)\]]*[.;!]?\s*", regex.I) for form in _FORMS)
_THEN = expression(r"(?i)\s*(?:[,;–—]\s*|\band\s+)*(?:\b(?:and|then)\s+)*(?=(?:go|skip|proceed|continue|move|jump)\b)")
_GOING_ON = expression(
    rf"(?i)[\W_]*(?:(?:and|but|then)\s+)*(?:for\s+)?(?:the\s+)?(?:sizes?\s+)?(?P<names>{_NAMES}(?:\s+sizes?)?)\s*[:,–—-]?\s*"
    r"(?:goes|go|continues?|carry|carries|works?|keep|keeps)(?:\s+on|\s+going|\s+increasing|\s+working)?"
    r"(?:\s+(?:with|to|at|from)\s+(?P<where>(?:the\s+)?(?:next\s+)?(?:row|rnd|round|rd)(?:\s+\d+)?))?[\s*_)\]]*[.;!]?\s*"
)
_GOING_ON_FOR = expression(
    rf"(?i)[\W_]*(?:(?:and|but|then)\s+)*(?:continue|carry|keep)(?:\s+(?:on|going|working))?(?:\s+(?:on\s+)?(?:to|at|from|with)\s+(?P<where>(?:the\s+)?(?:next\s+)?(?:row|rnd|round|rd)(?:\s+\d+)?))?"
    rf"\s+(?:for|with)\s+(?:the\s+)?(?:sizes?\s+)?(?P<names>{_NAMES}(?:\s+sizes?)?)(?:\s+only)?[\s*_)\]]*[.;!]?\s*"
)
_THE = r"(?:all|both|the|your|any|these|those|loose|yarn)"
# not the ends that are woven in: "Finish all ends for size S.", "Weave in the ends on size M."
_STOPS = expression(
    rf"(?i)\b(?:(?:stop|done|fasten|complete)(?:s|es|ed)?|end(?:ed)?|(?<!\b(?:{_THE}|in)\s)ends"
    rf"|finish(?:es|ed)?(?!\s+(?:{_THE}\s+)+(?:ends|tails|seams|edges)\b))\b"
)
_LEAVES_OUT = expression(r"(?i)\b(?:go|skip|proceed|continue|move|jump|omit|leave|miss|only|do\s+not|don't)(?:s|es)?\b")
_GOES = r"(?:(?:can|may|should|now|then)\s+)*(?:go|skip|proceed|continue|move|jump)(?:es|s)?\s+(?:(?:on|straight|now|\w+ly)\s+)*to\b"
_SENT = expression(
    rf"(?i)[\W_]*(?:(?:for|in|if\s+(?:you\s+are\s+)?making)\s+)?(?:the\s+)?(?:sizes?\s+)?(?P<names>{_NAMES})(?:\s+sizes?)?(?:\s+only)?\s*[:,–—-]?\s*(?P<to>{_GOES}.+)"
    rf"|[\W_]*(?P<to>{_GOES}\s+[\w\s]+?)\s+for\s+(?:the\s+)?(?:sizes?\s+)?(?P<names>{_NAMES})(?:\s+sizes?)?(?:\s+only)?[\W_]*"
)
_ROWS = expression(r"(?i)\b(?:rows?|rnds?|rounds?|rds?)\b")
_OTHERWISE = expression(
    r"(?i)\b(?:twice|thrice|once|times|again|another|more|fewer|less|extra|not|without|repeat|omitted|skipped)s?\b"
)
_OF_SIZES = expression(r"(?i)\W*(?:for\s+)?(?:the\s+)?sizes?\b")  # "Size S measures 20 cm when finished"
_NAMED = expression(
    r"(?i)(?:\b(?:(?:for|only|making|end|stop|finish|finished|complete[ds]?)\s+)+(?:the\s+)?(?:sizes?\s+)?|\bsizes?\s+|(?:^|[.;:]\s)\W*)"
    r"(?P<name>(?!(?:first|last|second|third|fourth|fifth|sixth)\s+(?!sizes?\b))\p{L}[\w/-]*|\b\d[\w/-]*(?<=sizes?\s+[\w/-]+))"
)
# "for S once, for M and L 2 more times" up to the end of a line, but for a count
_EACH_TIMES = expression(
    rf"(?i)\b(?:rows?|rnds?|rounds?)\b(?:[\s:,;]+(?:and\s+)?(?:for\s+)?(?:the\s+)?(?:sizes?\s+)?(?P<name>{_NAMES})\s*:?\s+(?:once|twice|thrice|\d+)(?:\s+more)?(?:\s+times?)?(?:\s+more)?(?=[;,.\s]))+"
    r"\s*\.?\s*(?:[=–—(\[-][^.]*)?\.?\s*$"
)
_ALSO = expression(rf"[\W_]*(?:and\s+)?(?:sizes?\s+)?(?P<names>{_NAMES}){_AFTER}[\s*_)\]]*[.;!]?\s*", regex.I)


@dataclass(frozen=True, slots=True)
class Leaving:
    """Sizes that leave off where they are, or after a row; None: it is not told which."""

    sizes: Sizes | None
    after: int | None = None
    goes_on: str | None = None
    sent: bool = False  # they only leave out the rows up to where they go on


def leavings(reader: GateReader, line: str) -> tuple[list[Leaving], int]:
    """What the sentences of a line say of sizes that leave off, and where those begin, if nothing else follows."""
    found: list[Leaving] = []
    begin = len(line)
    if reader.number < 2 or not (_STOPS.search(line) or goes_on_to(line)):
        return found, begin
    for match in _SENTENCE.finditer(_EACH_AFTER.sub(";", line)):
        sentence = match[0]
        if not sentence.strip(" .;!*_()[]"):
            continue
        more = _going_on(reader, sentence, found) if found and len(sentence) < _LONGEST else None
        if more is None and len(sentence) < _LONGEST:
            more = _leaving(reader, sentence, bool(found))
        if more is not None:
            begin = min(begin, match.start())
            found += more
        elif found and (where := goes_on_to(sentence)):
            found[-1] = replace(found[-1], goes_on=where)
        else:
            begin = len(line)
    return found, begin


def told_first(reader: GateReader, line: str) -> int:
    """Where the words of a gate begin behind sentences on sizes that leave off: "End here for M. Size L only: …"; else 0."""
    for match in _SENTENCE.finditer(line):
        if match[0].strip() and _leaving(reader, match[0], False) is None:
            gate = reader.at_line(line[match.start() :])
            return match.start() if gate is not None and not gate.leaves else 0
    return 0


def _leaving(reader: GateReader, sentence: str, more: bool) -> list[Leaving] | None:
    """What a sentence says of sizes that leave off, and where it sends them."""
    sent = _SENT.fullmatch(sentence)
    sizes = reader.sizes_of(sent["names"]) if sent is not None else None
    if sizes is not None and len(sizes) < reader.number and (where := goes_on_to(sent["to"])):
        return [Leaving(sizes, None, where, sent=True)]
    then = _THEN.search(sentence)
    where = goes_on_to(sentence[then.end() :]) if then is not None else None
    for words, goes_on in ((sentence, None), *([(sentence[: then.start()], where)] if then and where else [])):
        for form in _SAYS:
            match = form.fullmatch(words)
            if match is None:
                continue
            sizes, after = reader.sizes_of(match["names"]), match.groupdict().get("after")
            if sizes is not None and len(sizes) < reader.number:
                return [Leaving(sizes, int(after) if after else None, goes_on)]
            if sizes is None and match["said"] and (match["here"] or after):
                return [Leaving(None)]
    match = _ALSO.fullmatch(sentence) if more else None
    sizes = reader.sizes_of(match["names"]) if match is not None else None
    return [Leaving(sizes, int(match["after"]))] if match is not None and sizes is not None else None


def _going_on(reader: GateReader, sentence: str, found: list[Leaving]) -> list[Leaving] | None:
    """What is said of the sizes that do not leave off: none of them leave, or they leave out the rows before one."""
    match = _GOING_ON.fullmatch(sentence) or _GOING_ON_FOR.fullmatch(sentence)
    spoken = reader.audience(match["names"]) if match is not None else None
    if spoken is None or spoken.sizes is None and not spoken.others:
        return None
    gone = {size for one in found for size in one.sizes or ()}
    sizes = tuple(size for size in range(reader.number) if size not in gone) if spoken.others else spoken.sizes
    if not gone.isdisjoint(sizes):
        return None
    where = match["where"] if match["where"] and expression(r"\d").search(match["where"]) else None
    return [Leaving(sizes, None, where, sent=True)] if where else []


def speaks_to_some(reader: GateReader, line: str) -> bool:
    """Whether a line that was not understood tells some sizes, but not all, to leave off, or to work other rows."""
    other_work = _STOPS.search(line) or _LEAVES_OUT.search(line)
    if _ROWS.search(line):
        other_work = other_work or _OTHERWISE.search(line)
    elif _OF_SIZES.match(line):
        return False
    if reader.number < 2 or not other_work:
        return False
    if _each_told(reader, line):
        return False
    named = (match["name"] for match in _NAMED.finditer(line))
    return any((sizes := reader.sizes_of(name)) and len(sizes) < reader.number for name in named)


def _each_told(reader: GateReader, line: str) -> bool:
    """Whether a line ends in a list that names every size once: "rep Dec row: for S once, for M and L 2 more times"."""
    listed = _EACH_TIMES.search(line)
    told = [reader.sizes_of(name) or () for name in listed.captures("name")] if listed is not None else []
    return sorted(size for sizes in told for size in sizes) == list(range(reader.number)) and all(told)


def cut_after(label: Label, leaving: Leaving, number: int, gone: Collection[int] = ()) -> Label:
    """The label, without rows that the sizes which leave off work no more; `number` of sizes in all, some `gone` before."""
    numbers = [label.at(size) if size not in gone else () for size in range(number)]
    for size in leaving.sizes or ():
        numbers[size] = tuple(row for row in numbers[size] if row <= (leaving.after or row))
    if all(own == label.at(size) for size, own in enumerate(numbers)):
        return label
    return replace(label, by_size=tuple(numbers))


def carried_over(figures: Amount, before: Stated | None, out: Collection[int]) -> bool:
    """Whether figures only say again what sizes that left off ended with, while those of the others go on: "18 (24, 24)"."""
    last = before.items[0].number if before is not None and before.items else None
    if last is None:
        return False
    same = {size: figures.at(size) == last.at(size) for size in range(len(figures.values))}
    return all(same.get(size, False) for size in out) and not all(same.values())
