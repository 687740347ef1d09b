"""What one stitch is called in other countries and languages: models of rules/countries.yaml and rules/lookup/languages.yaml."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict, Field, field_validator


class _Strict(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)


def _each_once(names: list[str]) -> None:
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise ValueError(f"'{twice}' stands twice")


class StitchPairs(_Strict):
    """The forms of one stitch that stand for each other: [US form, UK form]."""

    stitch: str
    forms: list[tuple[str, str]] = Field(min_length=1)

    @field_validator("forms")
    @classmethod
    def _once(cls, forms: list[tuple[str, str]]) -> list[tuple[str, str]]:
        for side in (0, 1):
            _each_once([pair[side] for pair in forms])
        return forms


class CountryFile(_Strict):
    """rules/countries.yaml: what the two countries call the same stitch."""

    pairs: list[StitchPairs]
    names: list[tuple[str, str]]


class ForeignTerm(_Strict):
    """A stitch or working word, by its US abbreviation, in another language."""

    key: str
    words: list[str] = Field(min_length=1)
    abbr: list[str] = []
    source: str


class Language(_Strict):
    """A language and its words."""

    code: str
    name: str
    terms: list[ForeignTerm]

    @field_validator("terms")
    @classmethod
    def _once(cls, terms: list[ForeignTerm]) -> list[ForeignTerm]:
        _each_once([term.key for term in terms])
        return terms


class LanguageFile(_Strict):
    """rules/lookup/languages.yaml: a reference to look words up in."""

    languages: list[Language]
