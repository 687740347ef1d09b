"""Models of the rule files that hold figures and printed forms: materials, shapes, forms."""

from __future__ import annotations

from pydantic import Field, field_validator

from lint.strict import Strict, each_once


class HookSize(Strict):
    """A hook's size in mm with its US letters, its US number and its old UK number."""

    mm: float
    letters: list[str] = []
    number: str | None = None
    uk: str | None = None
    source: str

    @property
    def us(self) -> str | None:
        """The US name as it is printed: H-8, M/N-13, 7."""
        letters = "/".join(self.letters)
        return f"{letters}-{self.number}" if letters and self.number else letters or self.number


class SteelHook(Strict):
    """A number of a steel hook with its sizes in mm, one for each scale in use."""

    number: str
    mm: list[float] = Field(min_length=1)
    source: str


class YarnWeight(Strict):
    """A word for a yarn's weight, with the category numbers it stands for."""

    word: str
    numbers: list[int] = Field(min_length=1)
    also: list[int] = []
    plain: bool = False  # an everyday word that speaks of a weight only beside "weight" or "yarn"
    source: str


class Tolerance(Strict):
    """How far apart two measures may stand: so many cm, or a share of the measure, whichever is larger."""

    cm: float
    share: float
    source: str

    def allows(self, one: float, other: float) -> bool:
        """Whether two measures in cm can be the same one, rounded."""
        return abs(one - other) <= max(self.cm, self.share * max(one, other)) + 1e-9


class Tolerances(Strict):
    """The tolerances of the checks of measures."""

    measurement: Tolerance
    gauge: Tolerance


class StitchRange(Strict):
    """How many single crochet to 4 in a yarn of some category gives."""

    number: int
    sts: tuple[int, int]
    source: str


class Far(Strict):
    """By what factor a gauge has to leave its yarn's range before it is asked about."""

    factor: float = Field(gt=1)
    source: str


class MaterialFile(Strict):
    """rules/materials.yaml."""

    hooks: list[HookSize]
    hooks_of_some_makers: list[HookSize]
    steel_hooks: list[SteelHook]
    yarn_weights: list[YarnWeight]
    stitch_ranges: list[StitchRange]
    far: Far
    tolerances: Tolerances

    @field_validator("yarn_weights")
    @classmethod
    def _once(cls, weights: list[YarnWeight]) -> list[YarnWeight]:
        return each_once(weights, [weight.word for weight in weights])


class Growth(Strict):
    """How many stitches a round of one stitch adds, at least and at most, if it is to lie flat."""

    stitch: str
    least: int
    most: int
    usual: str


class ShapeFile(Strict):
    """rules/shapes.yaml: what lies flat, and which words say that a piece is meant to."""

    growth: list[Growth]
    flat: list[str]
    not_flat: list[str]


class SameThing(Strict):
    """One thing in several printed forms, each with its plural; some only count where a number follows ("Rnd 2")."""

    same: list[list[str]] = Field(min_length=2)
    before_number: bool = False


class FormFile(Strict):
    """rules/forms.yaml: things with several printed forms, and names of pieces."""

    forms: list[SameThing]
    piece_names: list[str]
