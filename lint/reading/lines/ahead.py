"""What comes in the lines below one, and whether it goes on with that."""

from __future__ import annotations

from collections.abc import Sequence

from lint.expression import expression
from lint.reading.lines.headings import Line, begins_work
from lint.reading.lines.labels import LabelReader
from lint.reading.page.sections import SectionFinder

# what a chain that begins rows counts as: the sentence is about the chain from its first words on, and nothing is worked in it
_CHAIN_NOTE = expression(
    r"(?i)(?!\W*ch(?:ain)?s?\s?\d+\s?[(\[])\W*"  # but "Ch 3 (counts as dc)." between two rows is made
    r"(?:(?:please|note|nb|that|in|this|pattern|here|and|throughout|the|each|every|all|any|an?|your|beg|beginning|start|starting|turn|turning"
    r"|initial|first|row|round|rnd)[\s,:.-]+){0,8}(?:\d+[ -]?|t-?)?ch(?:ain)?(?:s|es)?\b"
    r"(?![^.;\n]*(?:\d\s?(?:sc|h?dc|h?tr)\b|\b(?:in|into)\s+(?:the\s+)?(?:each|every|next|first|last)\s+(?!row|round|rnd)))"
    r"[^.,;\n]{0,60}?\b(?:counts|counted|count\s+as|(?:do|does|will|should|to|not|never|always)\s+(?:not\s+|never\s+|always\s+)?count)\b"
    r"[^.,;\n]{0,60}(?:,?\s+(?:here\s+and\s+)?throughout)?\.?"
)
_BEGUN = expression(r"(?i)\s*beg(?:in(?:ning)?)?\.? at (?:the )?(?:lower|bottom|top|upper|back|front|side) edge\.?\s*")
_SENTENCE_ENDS = expression(r"(?<=\.)\s+")
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
        if finder.at_line(below.text) is not None or begins_work(below.text):
            return False  # another section, or a chain nearer to the row
    return False


def stands_apart(above: str, line: str) -> bool:
    """Whether a line without a label begins a piece, or tells of its chains, behind a sentence that does neither.

    "V-st: (dc, ch 1, dc) in one st." / "Ch 3 counts as a dc." / "Ch 27.": three rows, of which the last one is worked.
    """
    if not above.endswith((".", "!", ")")):
        return False
    return begins_work(line) and not begins_work(above) or tells_of_chains(line)


def tells_of_chains(text: str) -> bool:
    """Whether all sentences of a text tell what the chains that begin rows count as, or where the piece is begun."""
    if _BEGUN.fullmatch(text) is not None:
        return True
    return all(_CHAIN_NOTE.fullmatch(sentence) is not None for sentence in _SENTENCE_ENDS.split(text.strip()))
