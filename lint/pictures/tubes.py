"""Pieces that stand up or close: cut open along their first stitches and laid flat, they are drawn as rows."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import pi

from lint.pictures.layout import drawn_height, row_width
from lint.working.graph import Layer, Piece

FLAT = 0.75  # the share of its height that a round must widen by for the piece to count as lying flat
_ROUNDS = 4  # fewer are a ring
_UPRIGHT = 1 / 3  # the share of rounds, at least, that are no wider than the one before


def lies_flat(rounds: list[Layer], heights: dict[str, int]) -> bool:
    """Whether rounds widen as fast as a disc does."""
    high = sum(tallest(layer, heights) for layer in rounds)
    return max(row_width(layer) for layer in rounds) / (2 * pi) >= FLAT * high


def tallest(layer: Layer, heights: dict[str, int]) -> float:
    """The height of a row as drawn, in stitch widths."""
    return max(drawn_height(stitch.kind, heights) for stitch in layer.stitches)


def cut_open(piece: Piece, heights: dict[str, int]) -> Piece | None:
    """The piece as rows, if its rounds make a tube, a cup or a ball; None for any other."""
    rounds = [layer for layer in piece.layers if layer.row is not None and layer.stitches]
    if len(rounds) < _ROUNDS or not all(layer.circular for layer in rounds) or lies_flat(rounds, heights):
        return None
    widths = [row_width(layer) for layer in rounds]
    upright = sum(after <= before for before, after in pairwise(widths))
    if upright < _UPRIGHT * len(rounds):
        return None
    return replace(piece, layers=tuple(_opened(layer) for layer in piece.layers))


def _opened(layer: Layer) -> Layer:
    """A round as a row; of a ring of chains the picture shows one."""
    stitches = tuple(one._replace(kind="ch") if one.kind == "ring" else one for one in layer.stitches)
    return replace(layer, circular=False, stitches=stitches)
