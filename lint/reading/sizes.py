"""Finds the names of the sizes that a pattern is written for."""

from __future__ import annotations

import regex

from lint.reading.sections import SectionFinder
from lint.source import SourceText

_MEASURE = regex.compile(
    r"\d\s*(?:½|¼|¾|\d/\d)?\s*(?:cm|mm|ins?\b|inch|\"|”|″|'|[x×]\s?\d)|\b(?:about|approx|across|square|diameter|tall|long|wide|high|fits?|one size)\b",
    regex.I,
)


def size_names(source: SourceText, finder: SectionFinder) -> tuple[str, ...]:
    """The sizes in the order printed; () for a pattern in one size."""
    lines = source.text.splitlines()
    for index, line in enumerate(lines):
        heading = finder.at_line(line)
        if heading is None or heading.key != "size":
            continue
        if not line[heading.start : heading.end].lower().startswith(("size", "to fit", "sizing")):
            continue
        said = line[heading.content :].strip() or next(
            (below.strip() for below in lines[index + 1 :] if below.strip()), ""
        )
        names = split_sizes(said) or _measured(said)
        if len(names) > 1:
            return names
    match = regex.search(r"(?im)^\W*sizes?\s+(?=[^:\s])(.{2,})$", source.text)  # "SIZES S/M/L/XL. …"
    return split_sizes(match[1].strip()) if match else ()


def _measured(line: str) -> tuple[str, ...]:
    """The figures of "To fit 81 (86, 91) cm", which name the sizes where nothing else does."""
    match = regex.search(r"(?<![\d(\[])(\d[\d½¼¾.]*)\s?[(\[](\d[\d½¼¾.]*(?:\s*[,:;]\s*\d[\d½¼¾.]*)+)[)\]]", line)
    return (match[1], *regex.split(r"\s*[,:;]\s*", match[2])) if match else ()


def split_sizes(line: str) -> tuple[str, ...]:
    """ "S (M, L)", "Child [Teen, Adult]", "S/M (L/XL)", "(0-3, 3-6, 6-9) months", "S (M) L (XL)"."""
    line = regex.split(r"\.\s", line + " ")[0].strip(" .")
    if _MEASURE.search(line) or not line or len(line) > 90:
        return ()
    line = regex.sub(r"(?i)\s*(months?|years?|yrs?|mos?)\s*$", "", line)
    if regex.fullmatch(r"[^()\[\]]+(?:\s*\([^()]+\)){2,}", line):
        names = [name.strip() for name in regex.split(r"[,;:()]", line) if name.strip()]  # "XS (S, M) (L, XL)"
        return tuple(names) if all(len(name) <= 20 for name in names) else ()
    match = regex.fullmatch(r"(?P<first>[^()\[\]]*?)\s*[(\[](?P<rest>[^()\[\]]+)[)\]]\s*", line)
    if match:
        first, rest = match["first"].strip(), match["rest"]
        cut = (
            r"\s*,\s*"
            if "," in rest
            else r"\s+[-–]\s+"
            if regex.search(r"\s[-–]\s", rest)
            else r"\s*[-–]\s*"
            if regex.search(r"[A-Za-z]\s*[-–]\s*[A-Za-z]", rest)
            else r"\s*[,:;]\s*"
        )
        names = ([first] if first else []) + regex.split(cut, rest)
    elif regex.fullmatch(r"[\w.-]+(?:\s*\([\w.-]+\)\s*[\w.-]+)+(?:\s*\([\w.-]+\))?", line):
        names = regex.findall(r"[\w.-]+", line)  # "S (M) L (XL)"
    elif regex.fullmatch(r"[\w.]+(?:\s*/\s*[\w.]+)+", line):
        names = regex.split(r"\s*/\s*", line)
    elif regex.fullmatch(r"[A-Za-z\d]{1,4}(?:\s?[-–]\s?[A-Za-z\d]{1,4}){2,}|[^;|]+(?:\s*[;|]\s*[^;|]+)+", line):
        names = regex.split(r"\s*[-–;|]\s*", line)  # "S-M-L-XL", "S | M | L"
    elif regex.search(r",|\band\b|&", line):
        names = regex.split(r"\s*,\s*(?:(?:and|&)\s+)?|\s+(?:and|&)\s+", line)
    else:
        return ()
    names = [name.strip() for name in names if name.strip()]
    return tuple(names) if all(0 < len(name) <= 20 for name in names) else ()
