"""What a stitch is called by the rows upon it: a FPdc is a dc to them."""

from __future__ import annotations

from lint.working.fabric import UNTOLD_KIND

_BASES = ("FP", "BP")


def family(kind: str) -> str:
    """The plain stitch behind a post stitch or decrease: FPdc is a dc to the next row."""
    if kind[:2] in _BASES:
        kind = kind[2:]
    if kind.endswith("tog"):
        kind = kind.rstrip("tog").rstrip("0123456789")
    return kind[1:] if kind in ("fsc", "fhdc", "fdc", "ftr") else kind


def goes_by(kind: str, name: str | None) -> bool:
    """Whether a stitch of a kind answers to a name: a FPdc to "dc", one of a row that is known by its count alone to any."""
    return kind == name or family(kind) == name or kind == UNTOLD_KIND
