"""A house file as frozen values.  None everywhere means that the house says nothing of it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field

from lint.expression import expression
from lint.finding import Weight
from lint.house import samples

_GAPS = ("words", "row", "part")  # what a finding's sentence may name


class _Strict(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)


def _shown_by(read: Callable[[str], object]) -> AfterValidator:
    def check(sample: str) -> str:
        read(sample)
        return sample

    return AfterValidator(check)


class HouseAbbreviation(_Strict):
    """One line of the house's list.

    `use` is the form printed, `means` what the list says of it, `replace` the forms that stand for the same and are
    rewritten, `never` the forms that the house won't have though nobody can tell what to put instead, `listed`
    whether a pattern that uses it has to explain it.
    """

    use: str = Field(min_length=1)
    means: str = Field(min_length=1)
    replace: list[str] = []
    never: list[str] = []
    listed: bool = True
    plural: str | None = None
    source: str = "common practice, no source"

    @property
    def several(self) -> str:
        """The printed form for more than one: sl sts, ch-sps."""
        return self.plural or self.use + "s"


class Labels(_Strict):
    """Row labels, shown by samples."""

    row: Annotated[str, _shown_by(samples.label_form)] | None = None
    round: Annotated[str, _shown_by(samples.label_form)] | None = None
    rows: Annotated[str, _shown_by(samples.range_form)] | None = None
    rounds: Annotated[str, _shown_by(samples.range_form)] | None = None


class Counts(_Strict):
    """Printed counts: their form, and where one has to stand."""

    form: Annotated[str, _shown_by(samples.count_form)] | None = None
    required: Literal["every row", "where it changes", "nowhere"] | None = None


class Wording(_Strict):
    """How single things are worded in rows, each shown by one sample."""

    skip: Literal["skip", "sk", "miss"] | None = None
    chain: Literal["ch 3", "ch3", "3 ch", "3ch"] | None = None
    chain_space: Literal["ch-3 sp", "ch-3 space", "3-ch sp", "3ch sp", "3 ch sp"] | None = None
    stitches: Literal["2 dc", "2dc"] | None = None
    times: Literal["3 times", "three times", "x 3", "x3", "× 3"] | None = None
    more: Literal["3 more times", "3 times more"] | None = None
    first_word: Literal["Sc in", "sc in"] | None = None
    gauge: Literal["gauge", "tension"] | None = None


class TurningChain(_Strict):
    """How and where a pattern says that a beginning chain counts."""

    note: Literal["(counts as dc)", "(counts as a dc)", "(counts as first dc)", "(counts as 1 dc)"] | None = None
    note_not: (
        Literal["(does not count as a st)", "(does not count as st)", "(not counted as a st)", "(does not count)"]
        | None
    ) = None
    place: Literal["beside the chain", "in a note"] | None = None


class Brackets(_Strict):
    """What each kind of brackets may mean; a kind that is not named may mean anything."""

    repeats: list[Literal["( )", "[ ]", "{ }"]] | None = None
    groups: list[Literal["( )", "[ ]", "{ }"]] | None = None
    counts: list[Literal["( )", "[ ]", "{ }"]] | None = None
    marks: list[Literal["*", "**", "†", "‡", "#", "•", "+"]] | None = None


class Units(_Strict):
    """Units as the house spells them, which comes first, and to what measures are rounded."""

    inches: Literal["in", "in.", "ins", '"', "inches"] | None = None
    centimetres: Literal["cm", "cms", "centimetres", "centimeters"] | None = None
    yards: Literal["yd", "yds", "yards"] | None = None
    metres: Literal["m", "metres", "meters"] | None = None
    first: Literal["inches", "centimetres"] | None = None
    inches_to: Literal[1, 0.5, 0.25, 0.125] | None = None
    centimetres_to: Literal[1, 0.5, 0.1] | None = None


class AbbreviationList(_Strict):
    """The pattern's own list: its form, its order, and whether the house keeps it in shape."""

    form: Annotated[str, _shown_by(samples.entry_form)] | None = None
    order: Literal["alphabetical", "as it stands"] | None = None


def _sentence(message: str) -> str:
    """A finding's sentence; raises ValueError for a gap that nothing would fill."""
    gaps = expression(r"\{([^{}]*)\}").findall(message)
    odd = next((gap for gap in gaps if gap not in _GAPS), None)
    if odd is not None or message.count("{") != len(gaps) or message.count("}") != len(gaps):
        raise ValueError(f"'{message}' has a gap that nothing fills; there are {{words}}, {{row}} and {{part}}")
    return message


class HouseWords(_Strict):
    """A word list of the house's own: any of the phrases is a finding, in the rows or in the whole text."""

    name: str = Field(pattern=r"^[a-z]+(-[a-z]+)*$")
    phrases: list[Annotated[str, Field(min_length=1)]] = Field(min_length=1)
    message: Annotated[str, AfterValidator(_sentence)]
    why: str
    where: Literal["rows", "everywhere"] = "rows"
    weight: Weight = Weight.STYLE
    area: str = "wording"


class House(_Strict):
    """Everything that a house asks for, its base already worked in."""

    name: str | None = None
    extends: str | None = None
    terms: Literal["us", "uk"] | None = None
    abbreviations: list[HouseAbbreviation] = []
    abbreviation_list: AbbreviationList = AbbreviationList()
    labels: Labels = Labels()
    counts: Counts = Counts()
    wording: Wording = Wording()
    turning_chain: TurningChain = TurningChain()
    brackets: Brackets = Brackets()
    units: Units = Units()
    sizes: Annotated[str, _shown_by(samples.list_form)] | None = None
    sections: list[str] | None = None  # required, in this order
    rules: dict[str, Literal["off", "style", "query", "correction"]] = {}
    word_rules: list[HouseWords] = []
    plain_words: list[str] = []

    @property
    def title(self) -> str:
        """The name to show."""
        return self.name or "this house"

    def over(self, base: House) -> House:
        """This house's own file laid over its base: what it does not say, the base says."""
        merged: dict[str, object] = {}
        for key in self.model_fields_set:
            own, under = getattr(self, key), getattr(base, key)
            if isinstance(own, BaseModel):
                own = under.model_copy(update={name: getattr(own, name) for name in own.model_fields_set})
            elif isinstance(own, dict):
                own = {**under, **own}
            elif key == "abbreviations":
                own = _laid_over(own, under, "means")
            elif key == "word_rules":
                own = _laid_over(own, under, "name")
            elif key == "plain_words":
                own = [*under, *(word for word in own if word not in under)]
            merged[key] = own
        return base.model_copy(update=merged)


def _laid_over(own: list, under: list, key: str) -> list:
    """Entries of the base that the house does not replace, then the house's."""
    named = {getattr(entry, key) for entry in own}
    return [*(entry for entry in under if getattr(entry, key) not in named), *own]
