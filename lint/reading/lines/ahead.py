"""What comes in the lines below one."""

from __future__ import annotations

from collections.abc import Sequence

from lint.reading.lines.headings import Line
from lint.reading.lines.labels import LabelReader
from lint.reading.page.sections import SectionFinder

_MOST_TALK = 8  # lines between a piece's chain and its first row: how it is joined, a tip, a picture's words


def row_follows(lines: Sequence[Line], index: int, labels: LabelReader, finder: SectionFinder, bare: bool) -> bool:
    """Whether a row comes below, with talk before it at most and no section: what stands above it is no more of one.

    `bare`: rows are labelled by list numbers alone.
    """
    for below in lines[index + 1 : index + _MOST_TALK]:
        if below.blank:
            continue
        if labels.at_line(below.text, 0, bare) is not None:
            return True
        if finder.at_line(below.text) is not None:
            return False
    return False
