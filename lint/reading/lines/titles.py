"""What a page of steps sets apart from a row's words: a title behind the label, "Round 2: Increase Round", and the count below."""

from __future__ import annotations

from collections.abc import Sequence

from lint.expression import expression
from lint.reading.lines.headings import Line
from lint.reading.lines.labels import LabelReader
from lint.source import Span

# words in capitals as titles have them, "The Petals", "Increase Round", and no word that tells where or how often
_TITLE = expression(
    r"[\s:.–—-]*(?P<words>(?!(?i:.*\b(?:each|every|all|around|across|next|last|first|same|repeat|rep|turn|join|fasten|until|again|even|twice|as|for|plain|only)\b))"
    r"\p{Lu}[\p{L}’'-]*(?:,?\s(?:\p{Lu}[\p{L}’'-]*|of|the|a|an|and|&)){0,4})[\s*_#:!\p{So}\ufe0e\ufe0f]*$"
)
_STITCHES = expression(
    r"(?i)\b(?:f?sc|hdc|f?dc|htr|tr|dtr|sl st|ss|blo|flo|inc|dec|sts?|ch|chs|single|double|half|treble|slip|chain|stitch(?:es)?|skip|sk|miss|times|more|less)\b"
)
# "The cuff is worked in rows that become the ribs.": sentences with no figure and no stitch in them
TALK = expression(rf"(?s)(?:(?!\d|{_STITCHES.pattern}).)*[.!]")
_RING = expression(r"(?i)\b(?:ring|circle|loop|mr)\b")
_STEP = expression(r"\s*(?:[•·*–-]\s+|\d{1,2}[.)]\s+)?\S")
_LONGEST = 3_000  # characters of a row in steps: each of its lines is read with those before it
_BULLET = expression(r"\s*([•·▪◦‣])\s*\S")
_WORK = expression(
    r"(?i)\b(?:\d+\s?)?(?:sc|dc|hdc|htr|tr|ch|chain|sl st|ss|inc|dec)\b(?:\s*\d|\s+(?:in|into|around|across)\b)|\bmagic (?:ring|circle)|\d\s?(?:sc|dc|hdc|htr|tr|ch)\b"
)
# "You now have 24 hdc.", "Stitch count: 12", "Total: 36 sts": a line that only tells a row's count
_COUNT = expression(
    r"(?i)[\s*_•–-]*(?:you (?:should |will |now |should now |will now )?have(?: now)?|(?:stitch |final |total )?count|total(?: stitches| sts)?)\b"
    r"\s*[:=–-]?\s*(?:a total of )?\d[\w\s,&+()-]{0,60}?[.!*_\s]*$"
)
_BARE = expression(r"(?i)(?:count|total)\s*[:=–-]?\s*\d+[.!*_\s]*$")


def title_behind(labels: LabelReader, lines: Sequence[Line], index: int, begin: int) -> bool:
    """Whether what stands behind a label in its line is the row's title, and its work follows in lines below."""
    line = lines[index]
    title = _TITLE.match(line.text, begin)
    if title is None or _STITCHES.search(title["words"]):
        return False
    steps: list[str] = []
    for below in lines[index + 1 : index + 8]:
        if below.blank and not steps:
            continue
        if below.blank or labels.at_line(below.text, 0) is not None:
            break
        steps.append(below.text)
    if not steps or _STEP.match(steps[0]) is None or not any(_WORK.search(step) for step in steps):
        return False
    return _RING.search(title["words"]) is None or _RING.search(" ".join(steps)) is not None


def steps_go_on(lines: Sequence[Line], index: int, row: Span) -> bool:
    """Whether a blank line only parts the steps of one row: bullets above it and below it, of one sort."""
    if row.end - row.start > _LONGEST:
        return False
    above = next((lines[at] for at in range(index - 1, -1, -1) if not lines[at].blank), None)
    below = next((lines[at] for at in range(index + 1, len(lines)) if not lines[at].blank), None)
    signs = [_BULLET.match(line.text) for line in (above, below) if line is not None]
    return len(signs) == 2 and all(signs) and signs[0][1] == signs[1][1]


def tells_count(words: str) -> bool:
    """Whether a line only says how many stitches there are now, and not how many squares."""
    counted = _STITCHES.search(words) or expression(r"(?i)\b(?:spaces?|sps?|loops?|lps?)\b").search(words)
    return _COUNT.match(words) is not None and (counted is not None or _BARE.search(words) is not None)


__all__ = ["steps_go_on", "tells_count", "title_behind"]
