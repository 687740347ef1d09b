"""Every key that a house file may have, with what it may say: a file that loads, to copy and to cut down."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, get_args

from pydantic import BaseModel

from lint.house.model import House, HouseAbbreviation, HouseWords

# what a key says; a key of few choices lists them behind these words
WORDS = {
    "name": "shown in reports",
    "extends": "a base to stand upon: us, uk, another name that `frogproof house` lists, or the path of a house file",
    "terms": "whose stitch names are printed",
    "abbreviations": "one line for each; a base's list holds on, but for lines with the same `means`",
    "abbreviations.use": "the form printed",
    "abbreviations.means": "what it is short for",
    "abbreviations.plural": "the form for more than one, where it is not the form with an s",
    "abbreviations.replace": "forms of the same meaning: found, and rewritten by restyle",
    "abbreviations.never": "forms that may mean several things: found, and left for you",
    "abbreviations.listed": "whether a pattern's list has to explain it: true or false",
    "abbreviations.source": "where you have it from; a note for yourself",
    "abbreviation_list": "the pattern's own list",
    "abbreviation_list.form": "how an entry looks, by a sample: “ch = chain”, “ch: chain”, “ch – chain”, “ch (chain)”, “chain (ch)”",
    "abbreviation_list.order": "",
    "labels": "how rows are labelled, by samples",
    "labels.row": "“Row 1:”, “Row 1.”, “R1:”, “1st row:” …",
    "labels.rows": "several together: “Rows 2-5:”, “Rows 2 to 5:”, “2nd to 5th rows:” …",
    "labels.round": "“Rnd 1:”, “Round 1:”, “1st round:” …",
    "labels.rounds": "“Rnds 2-5:” …",
    "counts": "printed counts",
    "counts.form": "by a sample: “(12 sts)”, “(12)”, “[12 sts]”, “— 12 sts”, “; 12 sts”, “= 12 sts”",
    "counts.required": "where a count has to stand",
    "wording": "how things are worded in rows, each by a sample",
    "wording.skip": "how a place is passed over",
    "wording.chain": "three chains",
    "wording.chain_space": "a space of three chains",
    "wording.stitches": "two of a stitch",
    "wording.times": "how often a repeat is worked",
    "wording.more": "how often after the first time",
    "wording.first_word": "the first word of a row",
    "wording.gauge": "the heading over it",
    "turning_chain": "what is said of a chain that begins a row",
    "turning_chain.note": "that it counts as a stitch",
    "turning_chain.note_not": "that it does not count",
    "turning_chain.place": "beside each chain, or once among the notes",
    "brackets": "what brackets may be used for: ( ), [ ], { }; one or several, or none: []",
    "brackets.repeats": "around what is repeated",
    "brackets.groups": "around what goes into one place",
    "brackets.counts": "around counts",
    "brackets.marks": "marks of repeats: *, **, †, ‡, #, •, +",
    "units": "measures outside the rows",
    "units.inches": "",
    "units.centimetres": "",
    "units.yards": "",
    "units.metres": "",
    "units.first": "which stands first where both are given",
    "units.inches_to": "rounded to",
    "units.centimetres_to": "rounded to",
    "sizes": "a number for each size, by a sample: “60 (66, 72)”, “60 [66: 72]”, “60 (66-72)”, “60(66-72)”, “60/66/72” …",
    "sections": "what a pattern must have, in this order: some of ",
    "rules": "weights of rules by their names, which `frogproof rules` lists: off, style, query, correction",
    "word_rules": "words that your house does not print",
    "word_rules.name": "a name for the rule: small letters and hyphens",
    "word_rules.phrases": "the words",
    "word_rules.message": "what is told of them; {words}, {row} and {part} stand for what was found",
    "word_rules.why": "the reason, which `frogproof explain` gives",
    "word_rules.where": "",
    "word_rules.weight": "",
    "word_rules.area": "what it is scored with, as `frogproof rules` heads its lists",
    "plain_words": "short forms that need no explaining in your patterns",
}
_SHOWN: dict[str, str] = {
    "name": "My House",
    "extends": "us",
    "terms": "us",
    "abbreviations.use": "sl st",
    "abbreviations.means": "slip stitch",
    "abbreviations.plural": "sl sts",
    "abbreviations.replace": "[slst, ss]",
    "abbreviations.never": "[SS]",
    "abbreviations.listed": "true",
    "abbreviations.source": "our style sheet",
    "abbreviation_list.form": '"ch = chain"',
    "labels.row": '"Row 1:"',
    "labels.rows": '"Rows 2-5:"',
    "labels.round": '"Rnd 1:"',
    "labels.rounds": '"Rnds 2-5:"',
    "counts.form": '"(12 sts)"',
    "brackets.repeats": '["[ ]", "( )"]',
    "brackets.groups": '["( )"]',
    "brackets.counts": '["( )"]',
    "brackets.marks": '["*", "**"]',
    "sizes": '"60 (66, 72)"',
    "sections": "[title, materials, gauge, size, abbreviations, instructions]",
    "rules": "{count-missing: correction, abbreviation-unused: off}",
    "word_rules.name": "no-praise",
    "word_rules.phrases": "[lovely, gorgeous]",
    "word_rules.message": '"“{words}” praises the pattern; leave it out."',
    "word_rules.why": "The photograph speaks for itself.",
    "word_rules.weight": "style",
    "word_rules.area": "wording",
    "plain_words": "[tbc]",
}
_LISTS: dict[str, type[BaseModel]] = {"abbreviations": HouseAbbreviation, "word_rules": HouseWords}
_HEAD = """\
# Every key that a house file may have.  Save it, put your own choices in, and strike out what your house has no rule
# for: nothing is asked of a key that is left out.  Many choices are shown by a sample: write it as you print it.
# `frogproof house FILE` tells whether the file is right, `frogproof house FILE --explain` what it demands.
"""


def all_keys(sections: list[str]) -> str:
    """A house file with every key, each with its choices behind it."""
    lines = []
    for key, field in House.model_fields.items():
        inside = _LISTS.get(key) or _model_in(field.annotation)
        if inside is None:
            lines += [""] if key == "sizes" else []
            lines.append(_line("", key, key, field.annotation) + (", ".join(sections) if key == "sections" else ""))
        else:
            lines += ["", f"{key}:  # {WORDS[key]}", *_below(key, inside)]
    return _HEAD + "\n".join(lines) + "\n"


def _below(key: str, inside: type[BaseModel]) -> Iterator[str]:
    lead = "  - " if key in _LISTS else "  "
    for name, field in sorted(inside.model_fields.items(), key=lambda item: item[0] not in ("use", "name", "means")):
        yield _line(lead, name, f"{key}.{name}", field.annotation)
        lead = " " * len(lead)


def _line(lead: str, name: str, path: str, annotation: Any) -> str:
    choices = ["'\"'" if choice == '"' else str(choice) for choice in _choices(annotation)]
    value = _SHOWN.get(path) or (choices[0] if choices[0].replace(".", "").isalnum() else f"'{choices[0]}'")
    told = ", ".join(choices) if choices and value[0] not in "[{" else ""
    told = f"{WORDS[path]}: {told}" if WORDS[path] and told else WORDS[path] or told
    return f"{lead}{name}: {value}".ljust(44) + f"  # {told}"


def _choices(annotation: Any) -> list[Any]:
    """The values that a key may have, where they are few."""
    if hasattr(annotation, "__members__"):
        return [one.value for one in annotation]
    inside = get_args(annotation)
    if inside and all(isinstance(one, (str, int, float)) for one in inside):
        return list(inside)
    return [choice for one in inside for choice in _choices(one)]


def _model_in(annotation: Any) -> type[BaseModel] | None:
    return annotation if isinstance(annotation, type) and issubclass(annotation, BaseModel) else None
