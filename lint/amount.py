"""Numbers of a pattern: one for all sizes, or one for each size."""

from __future__ import annotations

from dataclasses import dataclass

from lint.expression import expression


@dataclass(frozen=True, slots=True)
class Amount:
    """A printed number.  One value holds for every size; several are in the order of the sizes.

    None stands for the dash that says "this size does not work this".
    """

    values: tuple[int | None, ...]

    @classmethod
    def of(cls, number: int) -> Amount:
        return cls((number,))

    def at(self, size: int) -> int | None:
        """The number that the maker of one size (counted from 0) reads."""
        return self.values[size] if len(self.values) > 1 else self.values[0]

    def plus(self, other: Amount) -> Amount:
        """The sum, size by size; a dash stays a dash."""
        sizes = range(max(len(self.values), len(other.values)))
        pairs = [(self.at(size), other.at(size)) for size in sizes]
        return Amount(tuple(None if one is None else one + (more or 0) for one, more in pairs))

    @property
    def lone(self) -> int | None:
        """The number itself where it is one for all sizes, else None."""
        return self.values[0] if len(self.values) == 1 else None

    def __str__(self) -> str:
        shown = ["-" if value is None else str(value) for value in self.values]
        return shown[0] if len(shown) == 1 else f"{shown[0]} ({', '.join(shown[1:])})"


ONE = Amount.of(1)


THOUSANDS = expression(r"(?<![\d,.])\d{1,2},\d{3}(?!\d|,\d)")  # "1,200 yds", "(1,050, 1,150)"; "400,450,500" is a list


def without_thousands(text: str) -> str:
    """The text with "1,200" as " 1200": every word stays where it stands."""
    return THOUSANDS.sub(lambda match: " " + match[0].replace(",", ""), text) if "," in text else text
