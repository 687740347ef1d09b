"""Lines of a tester's mail or notes, read one by one: whose they are, which row they speak of, and what they say.

A line that gives no figure is kept as a remark, with its kind by the words in it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import regex

from lint.expression import expression
from lint.rulemodels import HookSize
from lint.testers.claims import Claim, Counted, GaugeGot, Measured, Place, Remark, Who, YarnUsed
from lint.testers.names import Names, plain
from lint.testers.phrases import about_gauge, figures_in, read_count, read_gauge, read_hook, read_measures, read_yarn

_WROTE = expression(
    r"(?i)\s*(?:(?P<name>[\p{L}][\p{L} .'’_-]{0,30}?)\s+(?:wrote|writes|said|says|posted)|posted\s+by\s+(?P<name>[\p{L}][\p{L} .'’_-]{0,30}?))\s*:?\s*"
)
_KEYED = expression(r"\s*[-*•]?\s*(?P<key>[\p{L}][\p{L} /-]{0,28}?)\s*(?:[:=]|\s–\s)\s*(?P<value>.*)")
_MAIL = expression(r"\s*<[^>]*>|[\"']")
_HEADERS = (
    "counts for",
    "to",
    "cc",
    "bcc",
    "subject",
    "date",
    "sent",
    "reply to",
    "message id",
    "mime version",
    "content type",
    "content transfer encoding",
)
_FILLERS = expression(r"\b(?:is|are|was|were|all|also|both|still|too|for me|everything|counts?|sts|again)\b")
_QUOTED = expression(r"[“\"‘][^”\"‘’]{2,}[”\"’]")
_MENDED = expression(r"(?i)\bshould\s+(?:be|read|say)\b|\binstead of\b|->|→")
_SAYS_GOT = expression(r"(?i)\b(?:got|get|had|have|counted|came|ended|made)\b[^.]{0,20}\d")
_TALK = expression(
    r"(?i)\W*(?:(?:hi|hello|hey|dear)\b.{0,30}|thanks?(?: you)?.{0,30}|best|cheers|love|regards|kind regards|best wishes|"
    r"(?:here (?:are|is)|these are) my (?:counts|report|numbers|results|notes).{0,20})\W*"
)


_GIVES = expression(r"\s*[:=–—-]?\s*\d{1,4}\b(?!\s*[%.,]?\d)")
_AND_FINE = expression(
    r"\s*[:=–—-]?\s*(?P<count>\d{1,4}(?:\s*(?:sts?|stitches))?)[\s,;.!–—-]+(?P<words>\p{L}.*|[✓✔✅]+\s*)$"
)
_LISTED = expression(r"(?P<row>\d{1,3})\s*(?:[).:=]|\s[-–—])\s*(?P<count>\d{1,4})(?:\s*(?:sts?|stitches))?\s*[.,;✓]?")
_KEYS = {"gauge": "gauge", "yarn": "yarn used", "hook": "hook"}
_UP_TO = expression(r"(?i)\b(?:up\s+to|until|till|through|as\s+far\s+as)(?:\s+and\s+including)?\s*$")


@dataclass(frozen=True, slots=True)
class Context:
    """What lines before have said: whose report it is, the size, and the part that is spoken of."""

    who: Who
    part: str | None = None


class ProseReader:
    """Reads lines one by one, and keeps what holds for those after them."""

    def __init__(self, names: Names, hooks: list[HookSize], who: Who) -> None:
        self.names = names
        self.hooks = hooks
        self.context = Context(who)

    def line(self, words: str, place: Place) -> Iterator[Claim]:
        """What one line says; nothing for an empty line, a greeting, or one that only names a tester, a size or a part."""
        words = words.strip()
        if not plain(words) or _TALK.fullmatch(words) or self._keyed(words) or self._heading(words):
            return
        if set(plain(words).split()) <= set(plain(self.context.who.tester).split()):
            return  # the name under a mail
        quoted, words = words, self._in_known_words(words)
        who, words = self._with_size(words)
        if set(plain(words).split()) <= set(plain(who.tester).split()):  # it only told which size was made, or by whom
            self.context = replace(self.context, who=who)
            return
        if about_gauge(words) and (gauge := read_gauge(words)):
            yield GaugeGot(who, place, *gauge, read_hook(words, self.hooks), quoted)
            return
        listed = _LISTED.fullmatch(words)
        if listed is not None:  # "5) 30"
            yield Counted(who, listed["row"], place, int(listed["count"]), part=self.context.part, quoted=quoted)
            return
        words = self._behind_part(words)
        labels = self.names.labels_in(words)
        if labels:
            yield from self._of_rows(who, words, labels, place, quoted)
            return
        if (gauge := read_gauge(words)) is not None:
            yield GaugeGot(who, place, *gauge, read_hook(words, self.hooks), quoted)
        elif yarn := read_yarn(words):
            yield from (YarnUsed(who, place, amount, unit, quoted) for amount, unit in yarn)
        elif (hook := read_hook(words, self.hooks)) is not None and "hook" in words.lower():
            yield GaugeGot(who, place, hook_mm=hook, quoted=quoted)
        elif self.kind(words) == "note" and (measures := read_measures(words)):
            yield from (Measured(who, place, what, cm, quoted) for what, cm in measures)
        else:
            yield Remark(who, place, self.kind(words), quoted, self.context.part, about=_quote(words))

    def _in_known_words(self, words: str) -> str:
        """A line with a key in the word for it that the readers of figures know: "Garnverbrauch: 210 m"."""
        found = _KEYED.fullmatch(words)
        key = _KEYS.get(self.names.headings.get(plain(found["key"])) or "") if found is not None else None
        if key is None:
            return words
        bare = expression(r"\d{1,2}(?:[.,]\d{1,2})?").fullmatch(found["value"].strip())
        return f"{key} {found['value']}{' mm' if bare and key == 'hook' else ''}"

    def kind(self, words: str) -> str:
        """The kind of a remark by the words in it: typo, unclear, suggestion, error, else note."""
        text = f" {plain(words)} "
        if _QUOTED.search(words) and _MENDED.search(words):
            return "typo"
        for kind, phrases in self.names.words.kinds.items():
            if any(f" {plain(phrase)} " in text for phrase in phrases):
                return kind
        return "unclear" if words.rstrip(' "”)').endswith("?") else "note"

    def is_as_printed(self, words: str) -> bool:
        """Whether words only say that a count is right: "ok", "all match", "✓"."""
        text = _FILLERS.sub(" ", f" {plain(words)} ").strip()
        text = " ".join(text.split())
        if expression(r"\d|n['’]t\b|\b(?:not|never|but|wrong)\b").search(words.lower()):
            return False
        return text in self._fine or any(f" {word} " in f" {text} " for word in self._fine if len(word) > 4)

    @property
    def _fine(self) -> list[str]:
        return [plain(word) for word in self.names.words.as_printed]

    # what holds for the lines after it ---------------------------------------------------------------------------

    def _keyed(self, words: str) -> bool:
        """ "Size: M", "From: Mia <mia@…>", "Tester: Mia (M)": takes it over, and says whether the line was such."""
        wrote = _WROTE.fullmatch(words)
        if wrote is not None and not self.names.headings.get(plain(wrote["name"])):
            self.context = Context(Who(wrote["name"].strip()))  # in a thread: "Maple wrote:"
            return True
        found = _KEYED.fullmatch(words)
        if found is None:
            return False
        key, value = plain(found["key"]), found["value"].strip()
        meaning = self.names.headings.get(key)
        if key in _HEADERS or meaning is not None and not value:
            return True  # a form's line that was left blank
        if meaning == "tester" and value and len(value) <= 80:
            name = _MAIL.sub("", value).strip() or value.strip("<> ").partition("@")[0]
            size = expression(r"[(\[,]\s*(?:size\s+)?([^()\[\],]+?)\s*[)\]]?\s*$").search(name)
            if size is not None and self.names.size(size[1]) is not None:
                self.context = Context(Who(name[: size.start()].strip(), size[1]))
            else:
                same = self.context.who.size if key != "from" else None
                self.context = Context(Who(name.partition("@")[0] if "@" in name else name, same))
            return True
        if meaning == "size" and value and len(value) <= 40:
            self.context = replace(self.context, who=replace(self.context.who, size=value))
            return True
        if meaning == "part" and self.names.part(value):
            self.context = replace(self.context, part=value)
            return True
        return False

    def _heading(self, words: str) -> bool:
        """A line that is nothing but a part's name."""
        bare = words.strip(" :#*=–—-.")
        if len(bare.split()) > 5 or expression(r"\d").search(bare) and not bare.endswith(":"):
            return False
        if (
            bare
            and (words.rstrip().endswith(":") or bare.isupper() or plain(bare) in map(plain, self.names.parts))
            and self.names.part(bare)
        ):
            self.context = replace(self.context, part=bare)
            return True
        if words.rstrip().endswith(":") and len(bare.split()) < 3 and plain(bare) not in self.names.headings:
            self.context = replace(
                self.context, part=None
            )  # another part, or another tester, under a name not known here
        return False

    def _behind_part(self, words: str) -> str:
        """A line without the part's name that it begins with, "Head: all fine up to Rnd 9", which then holds."""
        found = expression(r"\s*(?:in\s+(?:the\s+)?)?([\p{L} ]{2,30}?)\s*[:–—]\s+(?=\S)").match(words)
        if found is None or self.names.part(found[1]) is None or self.names.row_pattern.search(found[1]):
            return words
        self.context = replace(self.context, part=found[1])
        return words[found.end() :]

    def _with_size(self, words: str) -> tuple[Who, str]:
        """The tester with the size that a line names, and the line without it."""
        made = self.names.size_made.search(words)
        if made is not None and self.names.size(made["size"]) is not None:
            self.context = replace(self.context, who=replace(self.context.who, size=made["size"]))
            words = words[: made.start()] + words[made.end() :]
            return self.context.who, expression(r"^\s*I?\s*[.,;:–—]?\s*").sub("", words)
        found = self.names.in_words.search(words)
        if found is None or self.names.size(found["size"]) is None and not found[0].lower().startswith("size"):
            return self.context.who, words
        rest = f"{words[: found.start()]} {words[found.end() :]}".strip(" ,;")
        return replace(self.context.who, size=found["size"]), rest

    # rows ----------------------------------------------------------------------------------------------------

    def _of_rows(self, who: Who, words: str, labels: list[regex.Match], place: Place, quoted: str) -> Iterator[Claim]:
        """What a line says of one row or of several: "Rows 3-8 fine except Row 5, where I had 31"."""
        kind = self.kind(words)
        bare = _QUOTED.sub(" ", words)
        counts = len(labels) == 1 or bool(expression(r"(?i)\d").search(self.names.row_pattern.sub(" ", bare)))
        says = _SAYS_GOT.search(bare) or any(_GIVES.match(words, label.end()) for label in labels)
        if kind in ("typo", "unclear", "suggestion") and not says or not counts and kind != "note":
            part = self._part_before(words[: labels[0].start()]) or self.context.part
            yield Remark(who, place, kind, quoted, part, labels[0][0], _quote(words))
            return
        if len(labels) == 1:
            yield from self._of_row(who, words, labels[0], labels[0][0], place, quoted)
            return
        begins = [0, *(_begin(words, one.end(), other.start()) for one, other in zip(labels, labels[1:], strict=False))]
        said: str | None = None  # "Sleeve R3 - 15. R4 - 15": the part of the line
        for at, (label, begin, end) in enumerate(zip(labels, begins, [*begins[1:], len(words)], strict=True)):
            piece = words[begin:end]
            name = label[0]
            excepted = expression(r"(?i)\b(?:except|apart from|but(?: not)?|save|other than)\b[^.;]*$").search(piece)
            if excepted is not None and at + 1 < len(labels):
                row, other = self.names.row_of(label), self.names.row_of(labels[at + 1])
                kept = [n for n in row.numbers if n not in other.numbers]
                name = f"{label['word'].rstrip('s')}s {', '.join(map(str, kept))}" if kept else name
                piece = piece[: excepted.start()]
            inner = self.names.labels_in(piece)
            if inner:
                for claim in self._of_row(who, piece, inner[0], name, place, quoted):
                    said = said or (claim.part if isinstance(claim, Counted) else None)
                    yield replace(claim, part=said) if said and claim.part in (None, self.context.part) else claim

    def _of_row(
        self, who: Who, words: str, label: regex.Match, name: str, place: Place, quoted: str
    ) -> Iterator[Claim]:
        before, after = words[: label.start()], words[label.end() :]
        part = self._part_before(before)
        own = before if part is None else ""
        part = part or self.names.part_beside(words) or self.context.part
        own = expression(r"(?i)\s*\b(?:in|on|at|for|of|after|by)(?:\s+the)?\s*$").sub("", own)
        rest = _QUOTED.sub(" ", f"{own} {after}").replace("->", "→")
        row = self.names.row(name)
        base = Counted(who, name, place, part=part, quoted=quoted)
        figures = figures_in(rest)
        if row is not None and len(row.numbers) == len(figures) > 1:  # "Rows 7 & 8: 44, 50"
            word = label["word"].rstrip("s")
            for number, count in zip(row.numbers, figures, strict=True):
                yield replace(base, row=f"{word} {number}", count=count)
            return
        fine = _AND_FINE.match(rest)
        if fine is not None and self.is_as_printed(fine["words"]):  # "12 all good!"
            rest = fine["count"]
        found = read_count(rest)
        if found is not None:
            yield replace(base, count=found.count, off=found.off, unit=found.unit, printed=found.printed)
            yield from (replace(base, count=count, unit=unit) for count, unit in found.more)
        elif self.is_as_printed(rest):
            if row is not None and row.numbers and _UP_TO.search(before):  # "all fine up to row 6"
                name = f"{label['word'].rstrip('s')}s 1-{max(row.numbers)}"
            yield Counted(who, name, place, as_printed=True, part=part, quoted=quoted)
        else:
            yield Remark(who, place, self.kind(words), quoted, part, name, _quote(words))

    def _part_before(self, words: str) -> str | None:
        """ "Sleeve, Rnd 5"."""
        part = words.strip(" ,:;–—-.*•")
        return part if part and self.names.part(part) else None


def _begin(words: str, start: int, label: int) -> int:
    """Where what is said of a row begins: at its label, or at the count before it, "27 in Rnd 4"."""
    before = expression(
        r"(?:(?:then|and|but)\s+)?\d{1,4}(?:\s*(?:sts?|stitches))?\s+(?:in|on|at|for)\s+(?:the\s+)?$"
    ).search(
        words[start:label],
    )
    return start + before.start() if before is not None else label


def _quote(words: str) -> str:
    found = expression(r"[“\"‘]([^”\"‘’]{2,})[”\"’]").search(words)
    return found[1] if found else ""
