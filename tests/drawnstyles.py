"""House styles drawn by chance: how a designer writes labels, work, repeats, lists over the sizes and counts.

One style is used for a whole pattern, as a designer would.  Every wording is common practice, no source.
"""

from __future__ import annotations

import re
import textwrap
from random import Random

Figure = int | list[int]  # a number for all sizes, or one for each

US = {"sc": "sc", "hdc": "hdc", "dc": "dc", "skip": "sk", "sl st": "sl st", "any": "sts"}
UK = {"sc": "dc", "hdc": "htr", "dc": "tr", "skip": "miss", "sl st": "ss", "any": "sts"}
_MEANT = {
    "US": {"sc": "single crochet", "hdc": "half double crochet", "dc": "double crochet"},
    "UK": {"dc": "double crochet", "htr": "half treble crochet", "tr": "treble crochet"},
}
LABELS = (
    "Row {n}:", "ROW {n}:", "Row {n} -", "R{n}:", "Row {n}.", "Row {n} –", "**Row {n}:**", "{o} row:", "{o} Row -", "Row {n} :", "{n}.",
    "{n})", "Row {n}", "Row {n} ({s}):", "Row {n} [{s}]:", "Row #{n}:", "Row {n} - {s}:", "Row {n}, {s}:", "{o} row ({s}):", "Row. {n}:",
    "R {n}:", "*Row {n}*", "Row {n} =", "• Row {n}:", "[Row {n}]", "{n}:",
)  # fmt: skip
COUNTS = (
    " ({c})", " [{c}]", " ({c} sts)", " – {c} sts.", " = {c} sts", " — {c} {k}.", " ({c} {k})", " {{{c} sts}}", " <{c}>", ": {c} sts",
    " {c} sts.", " [{c} {k}]", " – {c} {k}", " ({c} {k} total)", " You will have {c} sts.", ". ({c})", " ({c} stitches)", "\n({c} sts)",
    " ...{c} sts", " // {c} sts", " → {c}", " (total {c} sts)", " ({c} sts in total)", " ({c} sts made)", ". St count: {c}",
    "\nStitch count: {c}", " (= {c} sts)", " – {c} sts in all.", " – total of {c} sts.", " = {c}.", " | {c} sts", " ~ {c} sts", " {{{c}}}",
    ". [{c} {k}]",
)  # fmt: skip
# how lists over the sizes are printed: all of it, and what parts the figures behind the first
LISTS = (
    ("{a} ({b})", ", "), ("{a} ({b})", ":"), ("{a}[{b}]", ":"), ("{a} [{b}]", ", "), ("{all}", "-"), ("{all}", "/"), ("{a} ({b})", "-"),
    ("{a} ({b})", " : "), ("{a}({b})", ","), ("{a}, ({b})", ", "), ("{a} ({b})", "; "), ("({all})", ", "),
)  # fmt: skip
REPEATS = (
    "star",
    "star",
    "closed star",
    "brackets",
    "brackets",
    "parentheses",
    "x",
    "around",
    "around",
    "rep",
    "to end",
)
TALK = (
    "Stuff lightly as you go.", "Photo 2 shows the piece at this point.", "Place a marker in the first stitch and move it up as you work.",
    "Check your gauge here.", "See picture below.", "Tip: count your stitches at the end of each row.", "Keep an even tension.",
)  # fmt: skip


def ordinal(number: int) -> str:
    """ "1st", "12th", "23rd"."""
    last = "th" if 10 <= number % 100 <= 20 else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{last}"


class Style:
    """The ways of one designer; `words` are the stitches' abbreviations by their US names."""

    def __init__(self, chance: Random, sizes: int) -> None:
        self.chance, self.sizes = chance, sizes
        self.terms, self.words = ("UK", UK) if chance.random() < 0.3 else ("US", US)
        self.label_form, self.count_form = self.pick(LABELS), self.pick(COUNTS)
        self.list_form, self.repeat_form = self.pick(LISTS), self.pick(REPEATS)
        self.joint = self.pick(("-", "–", " to ", " - ", " through "))
        self.parted = self.pick((", ", ", ", ", ", "; ", ". "))
        self.capital, self.number_first, self.glued = (chance.random() < share for share in (0.5, 0.4, 0.15))
        self.heading_form, self.loud = (
            self.pick(("{}", "{}", "{}:", "## {}", "**{}**", "— {} —")),
            chance.random() < 0.4,
        )
        self.bullet = self.pick(("", "", "• ", "- ", "* "))
        self.turns_first = chance.random() < 0.5
        self.increase = self.pick(
            (
                "inc",
                "2 {k} in next st",
                "2{k} in next st",
                "{k} inc",
                "inc in next st",
                "1 inc",
                "work 2 {k} in next st",
            )
        )
        self.decrease = self.pick(("dec", "{k}2tog", "{k}2tog over next 2 sts", "1 dec", "{k} next 2 sts together", "dec over next 2 sts"))  # fmt: skip
        self.joining = self.pick(
            ("Join with {ss} in first {k}", "{ss} to first {k}", "Join", "{ss} in first {k} to join", "{ss} to join")
        )

    def pick(self, ways):
        """One of several ways."""
        return self.chance.choice(ways)

    def number(self, value: Figure) -> str:
        """A figure, or a list over the sizes."""
        if isinstance(value, int) or len(set(value)) == 1:
            return str(value if isinstance(value, int) else value[0])
        form, parted = self.list_form
        first, *others = map(str, value)
        return form.format(a=first, b=parted.join(others), all=parted.join((first, *others)))

    def label(self, first: int, last: int, around: bool) -> str:
        """The label of a row or round, or of a range of them."""
        form = (
            self.label_form.replace("Row", "Rnd").replace("ROW", "RND").replace("row", "rnd")
            if around
            else self.label_form
        )
        side = "RS" if around or first % 2 else "WS"
        if last == first:
            return form.format(n=first, o=ordinal(first), s=side) + " "
        for word in ("Row", "ROW", "row", "Rnd", "RND", "rnd"):
            form = (
                form.replace(f"{word} ", f"{word}s ").replace(f"{word}:", f"{word}s:").replace(f"{word}.", f"{word}s.")
            )
        form = re.sub(r" [(\[]\{s\}[)\]]|,? -? ?\{s\}", "", form)
        return form.format(n=f"{first}{self.joint}{last}", o=f"{ordinal(first)}{self.joint}{ordinal(last)}") + " "

    def line(self, label: str, clauses: list[str], count: Figure | None, kind: str) -> str:
        """A row: its label, its clauses in the style's manner, and its count of a kind of stitch, if it has one."""
        words = self.parted.join(one[0].upper() + one[1:] if self.parted == ". " else one for one in clauses)
        words = words[0].upper() + words[1:] if self.capital else words
        words = re.sub(r"(\d) (sc|hdc|dc|tr|htr|inc|dec)\b", r"\1\2", words) if self.glued else words
        words += self.pick((".", "", ""))
        if count is None:
            return label + words
        printed = self.count_form.format(c=self.number(count), k=self.words[kind])
        return label + (words.rstrip(".") if printed[0] in ".:" else words) + printed

    def each(self, kind: str, where: str) -> str:
        """A stitch in every place, `where` "around" or "across"."""
        k = self.words[kind]
        return self.pick((f"{k} in each st {where}", f"{k} in each {k} {where}", f"1 {k} in each st {where}", f"work 1 {k} in each st {where}",
                          f"{k} in every st {where}", f"1 {k} in each st to end"))  # fmt: skip

    def some(self, number: int, kind: str) -> str:
        """A stitch in each of the next places."""
        k = self.words[kind]
        if self.number_first:
            return f"{number} {k}"
        if number == 1:
            return self.pick((f"{k} in next st", f"1 {k}", f"{k} in next {k}"))
        return self.pick((f"{k} in next {number} sts", f"{k} in each of next {number} sts", f"1 {k} in each of the next {number} sts",
                          f"{k} in next {number} {k}", f"{k} {number}"))  # fmt: skip

    def more(self, kind: str) -> str:
        """Two stitches in one place."""
        return self.increase.format(k=self.words[kind])

    def fewer(self, kind: str) -> str:
        """Two places worked together."""
        return self.decrease.format(k=self.words[kind])

    def times(self, parts: list[str], number: Figure, fills: bool) -> str:
        """Clauses worked so many times; `fills`: all the way to the row's end."""
        body, printed = ", ".join(parts), self.number(number)
        further = self.number(number - 1 if isinstance(number, int) else [one - 1 for one in number])
        if number == 1:
            return body
        if self.repeat_form == "around" and fills:
            return self.pick(
                (
                    f"({body}) around",
                    f"*{body}* repeat around",
                    f"*{body}; rep from * to end",
                    f"*{body}, repeat from * around",
                )
            )
        if self.repeat_form == "to end" and fills:
            return f"*{body}; repeat from * to end of row"
        if self.repeat_form == "star":
            return f"*{body}; rep from * " + ("once more" if further == "1" else f"{further} more times")
        if self.repeat_form == "closed star":
            return f"*{body}* {printed} times"
        if self.repeat_form == "x" and isinstance(number, int):
            return self.pick((f"[{body}] x{printed}", f"({body}) x {printed}", f"*{body}* x {printed}"))
        if self.repeat_form == "rep" and isinstance(number, int):
            return f"[{body}] rep {printed} times"
        return f"({body}) {printed} times" if self.repeat_form == "parentheses" else f"[{body}] {printed} times"

    def head(self, title: str, names: list[str]) -> list[str]:
        """Title, terms, sizes, materials, gauge, the list of abbreviations and notes, as one designer sets them out."""
        lines = [
            title,
            "",
            self.pick((f"This pattern uses {self.terms} terms.", f"Written in {self.terms} terminology.")),
            "",
        ]
        if names:
            lines += [self.pick(("Sizes: ", "SIZES\n", "To fit: ")) + self.number(names), ""]  # type: ignore[arg-type]
        kit = ["DK yarn, 200 g", "4 mm hook", "Stitch marker"]
        gauge = self.pick(
            ("16 sts and 18 rows = 10 cm", "16 sts x 18 rows = 4 in (10 cm) square", "16 stitches and 18 rows to 10 cm")
        )
        blocks = [
            [self.heading("Materials"), *(f"{self.bullet}{one}" for one in kit)],
            [f"Gauge: {gauge}"] if self.chance.random() < 0.5 else [self.heading("Gauge"), gauge],
            [self.heading("Abbreviations"), *self.listed()],
        ]
        if self.chance.random() < 0.4:
            notes = (
                "Read the whole pattern before you begin.",
                "Weave in ends as you go.",
                "Instructions are given in rows unless told otherwise.",
            )
            blocks.append([self.heading("Notes"), *(f"{self.bullet}{one}" for one in notes)])
        self.chance.shuffle(blocks)
        lines += [line for block in blocks for line in (*block, "")]
        return (
            [*lines, self.heading(self.pick(("Instructions", "Pattern"))), ""] if self.chance.random() < 0.5 else lines
        )

    def heading(self, words: str) -> str:
        """A section's heading in the style's manner."""
        return self.heading_form.format(words.upper() if self.loud else words)

    def listed(self) -> list[str]:
        """The abbreviations and their meanings, one in a line or all in one."""
        w = self.words
        meant = {"ch": "chain", w["sl st"]: "slip stitch", **_MEANT[self.terms], "st(s)": "stitch(es)", "rep": "repeat", "inc": "increase",
                 "dec": "decrease", "tog": "together", "rnd": "round", "tch": "turning chain", "beg": "beginning", "sp": "space",
                 w["skip"]: "skip", "RS": "right side", "WS": "wrong side", f"FP{w['dc']}, BP{w['dc']}": "post stitches",
                 **{f"{k}2tog": "2 stitches worked together" for k in _MEANT[self.terms]}}  # fmt: skip
        sign = self.pick((" - ", ": ", " = ", " – ", "\t"))
        entries = [f"{form}{sign}{meaning}" for form, meaning in meant.items()]
        if self.chance.random() < 0.3 and sign != "\t":
            return ["; ".join(entry.replace(", ", "/") for entry in entries) + "."]
        return [f"{self.bullet}{entry}" for entry in entries]

    def dressed(self, lines: list[str]) -> list[str]:
        """The rows as a page shows them: wrapped, with lines between, with talk between, set in or as a list."""
        manner = self.pick(("plain", "apart", "wrapped", "wrapped", "talk", "set in", "list"))
        if manner == "wrapped":
            width = self.pick((56, 64, 72, 80))
            return [piece for line in lines for one in line.split("\n") for piece in textwrap.wrap(one, width) or [""]]
        if manner == "talk":
            return [
                one
                for line in lines
                for one in ((line, "", self.pick(TALK), "") if self.chance.random() < 0.25 else (line,))
            ]
        if manner == "apart":
            return [one for line in lines for one in (line, "")]
        if manner == "list":
            return [f"- {line}" if re.match(r"\W*(?:R\d|Row|ROW|Rnd|RND)", line) else line for line in lines]
        return [f"  {line}" if line and manner == "set in" else line for line in lines]
