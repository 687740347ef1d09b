"""The models of rules/testers.yaml: the words of testers' reports, and causes of counts that differ."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict, field_validator


class _Strict(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)


class SlipCause(_Strict):
    """What may be behind a tester's count that differs: its title, and a question with the numbers in it."""

    name: str
    title: str
    says: str
    seen: str  # the numbers in which it was seen, and in what sort of place


class TesterFile(_Strict):
    """rules/testers.yaml: the words of testers' reports, and causes of counts that differ."""

    columns: dict[str, list[str]]
    measures: list[str]
    short_names: dict[str, str]
    size_names: dict[str, list[str]]
    row_words: list[str]
    round_words: list[str]
    foundation_words: list[str]
    as_printed: list[str]
    kinds: dict[str, list[str]]
    slanting: list[str]
    causes: list[SlipCause]

    @field_validator("causes")
    @classmethod
    def _once(cls, causes: list[SlipCause]) -> list[SlipCause]:
        names = [cause.name for cause in causes]
        twice = next((name for name in names if names.count(name) > 1), None)
        if twice is not None:
            raise ValueError(f"'{twice}' stands twice")
        return causes

    def cause(self, name: str) -> SlipCause:
        """The cause of a name.  KeyError if there is none."""
        return {cause.name: cause for cause in self.causes}[name]
