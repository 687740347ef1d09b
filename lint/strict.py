"""What the models of all rule files share."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict


class Strict(BaseModel):
    """A model that nothing changes, and that takes no field it does not know."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)


def each_once(items: list, names: list[str]) -> list:
    """The items, where no name stands twice.  ValueError if one does."""
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise ValueError(f"'{twice}' stands twice")
    return items
