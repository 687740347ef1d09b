"""The names of stitches that count as one, whatever their make: clusters, popcorns, bobbles, puffs."""

from __future__ import annotations

_ONE_STITCH = {
    "cluster": ("cluster", "clusters", "cl", "cls"),
    "popcorn": ("popcorn", "popcorns", "pc", "pcs"),
    "bobble": ("bobble", "bobbles", "bo"),
    "puff": ("puff", "puffs", "ps"),
}
_STS = (" stitches", " stitch", " sts", " st")


def one_stitch_name(word: str) -> str:
    """One name for all forms of the stitches that count as one whatever their make: "cl", "cluster st", "clusters"."""
    bare = next((word.removesuffix(tail) for tail in _STS if word.endswith(tail)), word)
    return next((name for name, forms in _ONE_STITCH.items() if bare in forms), word)
