"""What a house demands, in plain words."""

from __future__ import annotations

from collections.abc import Iterator

from lint.house.model import House
from lint.rulebook import Rulebook

_PLACES = {"beside the chain": "beside the chain", "in a note": "once, among the notes at the front"}
STEPS = {
    1: "whole ones",
    0.5: "halves",
    0.25: "quarters",
    0.125: "eighths",
    0.1: "tenths",
}  # what measures are rounded to
_COUNTRY = {"us": "US", "uk": "UK"}


def explained(house: House, book: Rulebook) -> str:
    """The house file said in sentences, by topic; topics that it is silent on are named at the end."""
    lines = [f"{house.title[:1].upper()}{house.title[1:]}", ""]
    silent = []
    for topic, sentences in (
        ("Terms", _terms(house)),
        ("Abbreviations", _abbreviations(house)),
        ("Row labels", _labels(house)),
        ("Counts", _counts(house)),
        ("Wording", _wording(house)),
        ("Turning chains", _turning(house)),
        ("Brackets and marks", _brackets(house)),
        ("Measures and sizes", _measures(house)),
        ("Sections", _sections(house, book)),
        ("Rules", _rules(house)),
    ):
        told = list(sentences)
        if told:
            lines += [topic, *(f"  - {sentence}" for sentence in told), ""]
        else:
            silent.append(topic.lower())
    if silent:
        lines.append(f"The house says nothing of: {', '.join(silent)}.")
    return "\n".join(lines).rstrip() + "\n"


def _terms(house: House) -> Iterator[str]:
    if house.terms is not None:
        yield f"Stitch names are in {_COUNTRY[house.terms]} terms."


def _abbreviations(house: House) -> Iterator[str]:
    for entry in sorted(house.abbreviations, key=lambda one: one.use.casefold()):
        sentence = f"“{entry.use}” for {entry.means}"
        if entry.replace:
            sentence += f", in place of {_listed(entry.replace)}"
        if entry.never:
            sentence += f"; never {_listed(entry.never)}"
        yield sentence + "."
    if house.abbreviations:
        spared = [entry.use for entry in house.abbreviations if not entry.listed]
        but = f", but for {_listed(spared)}" if spared else ""
        yield f"A pattern's list explains every one of these that it uses{but}."
    form, order = house.abbreviation_list.form, house.abbreviation_list.order
    if form is not None:
        yield f"An entry of the list looks like “{form}”."
    if order == "alphabetical":
        yield "The list is in the order of the alphabet."
    if order == "as it stands":
        yield "The list may be in any order."


def _labels(house: House) -> Iterator[str]:
    labels = house.labels
    for what, sample in (("row", labels.row), ("round", labels.round)):
        if sample is not None:
            yield f"The first {what} is labelled “{sample}”."
    for what, sample in (("rows", labels.rows), ("rounds", labels.rounds)):
        if sample is not None:
            yield f"Several {what} together are labelled “{sample}”."


def _counts(house: House) -> Iterator[str]:
    if house.counts.form is not None:
        yield f"A count of twelve stitches is printed “{house.counts.form}”."
    if house.counts.required is not None:
        where = {
            "every row": "Every row and round prints its count, but for those that only repeat others.",
            "where it changes": "Every row and round that changes the count prints it.",
            "nowhere": "No row has to print a count.",
        }
        yield where[house.counts.required]


def _wording(house: House) -> Iterator[str]:
    wording = house.wording
    said = (
        (wording.skip, "A place is passed over with “{}”."),
        (wording.chain, "Three chains are “{}”."),
        (wording.chain_space, "A space of three chains is “{}”."),
        (wording.stitches, "Two double crochets are “{}”."),
        (wording.times, "A repeat that is worked three times says “{}”."),
        (wording.more, "Three repeats after the first are “{}”."),
        (wording.first_word, "The first word of a row is written as in “{}”."),
        (wording.gauge, "The section on the gauge is headed “{}”."),
    )
    for sample, sentence in said:
        if sample is not None:
            yield sentence.format(sample)


def _turning(house: House) -> Iterator[str]:
    turning = house.turning_chain
    if turning.note is not None:
        yield f"A beginning chain that counts has the note “{turning.note}”."
    if turning.note_not is not None:
        yield f"One that does not count has the note “{turning.note_not}”."
    if turning.place is not None:
        yield f"The note stands {_PLACES[turning.place]}."


def _brackets(house: House) -> Iterator[str]:
    brackets = house.brackets
    for what, kinds in (
        ("Repeats", brackets.repeats),
        ("Groups in one place", brackets.groups),
        ("Counts", brackets.counts),
    ):
        if kinds is not None:
            yield f"{what} stand in {' or '.join(kinds)}." if kinds else f"{what} stand in no brackets."
    if brackets.marks is not None:
        marks = " and ".join(brackets.marks)
        yield f"Repeats are marked with {marks} and nothing else." if marks else "No marks stand for repeats."


def _measures(house: House) -> Iterator[str]:
    units = house.units
    for what in ("inches", "centimetres", "yards", "metres"):
        form = getattr(units, what)
        if form is not None:
            yield f"{what.capitalize()} are spelled “{form}”."
    if units.first is not None:
        yield f"{units.first.capitalize()} come first."
    for what, step in (("Inches", units.inches_to), ("Centimetres", units.centimetres_to)):
        if step is not None:
            yield f"{what} are rounded to {STEPS[step]}."
    if house.sizes is not None:
        yield f"A number for each of three sizes is written “{house.sizes}”."


def _sections(house: House, book: Rulebook) -> Iterator[str]:
    if house.sections is not None:
        names = {one.key: one.name for one in book.sections.required}
        yield f"A pattern has, in this order: {', '.join(names.get(key, key) for key in house.sections)}."


def _rules(house: House) -> Iterator[str]:
    for rule, weight in house.rules.items():
        yield f"{rule} is not looked for." if weight == "off" else f"{rule} weighs as a {weight}."
    for words in house.word_rules:
        yield f"{words.name} ({words.weight.value}): {_listed(words.phrases)}."
    if house.plain_words:
        yield f"These need no explaining: {', '.join(house.plain_words)}."


def _listed(words: list[str]) -> str:
    quoted = [f"“{word}”" for word in words]
    return quoted[0] if len(quoted) == 1 else f"{', '.join(quoted[:-1])} and {quoted[-1]}"
