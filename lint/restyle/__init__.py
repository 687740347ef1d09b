"""Ways of putting a pattern into a house's form; each is a function from a Ground to edits, listed here and nowhere else."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from lint.restyle import (
    abbreviations,
    chains,
    counts,
    headings,
    labels,
    listing,
    repeats,
    sizelists,
    terms,
    turning,
    units,
)
from lint.restyle.edits import Edit
from lint.restyle.ground import Ground

Way = Callable[[Ground], Iterator[Edit]]

# In this order: each is run on the text that those before it have left.
WAYS: tuple[Way, ...] = (
    terms.edits,
    abbreviations.edits,
    chains.edits,
    repeats.edits,
    labels.edits,
    turning.edits,
    counts.edits,
    sizelists.edits,
    units.edits,
    headings.edits,
    listing.edits,
)
