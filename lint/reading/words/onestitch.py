"""The names of stitches that count as one, whatever their make: clusters, popcorns, bobbles, puffs."""

from __future__ import annotations

_ONE_STITCH = {
    "cluster": ("cluster", "clusters", "cl", "cls"),
    "popcorn": ("popcorn", "popcorns", "popcorn st", "pc", "pcs"),
    "bobble": ("bobble", "bobbles", "bobble st"),
    "puff": ("puff", "puffs", "puff st", "puff stitch", "puff stitches"),
}


def one_stitch_name(word: str) -> str:
    """One name for all forms of the stitches that count as one whatever their make."""
    for name, forms in _ONE_STITCH.items():
        if word in forms:
            return name
    return word
