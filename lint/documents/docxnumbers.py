"""The automatic numbers of a .docx: what Word prints before a paragraph of a list, which is written nowhere as text.

Meaning of the elements: ECMA-376 part 1, section 17.9 (from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from lint.documents.docxstyles import Styles
from lint.documents.numerals import FORMATS, as_number
from lint.documents.xmltree import Element

BULLET = "•"  # whatever sign is printed: a star would be read as the mark of a repeat


@dataclass(frozen=True, slots=True)
class _Level:
    start: int
    format: str
    text: str
    suffix: str  # what stands between the number and the paragraph
    style: str | None
    restarts: bool


@dataclass(slots=True)
class _List:
    """An abstract list: its levels, and how far each has counted."""

    levels: dict[int, _Level]
    counted: dict[int, int] = field(default_factory=dict)


class Numbering:
    """Counts the lists of one document as its paragraphs are met, in order."""

    def __init__(self, root: Element | None, styles: Styles) -> None:
        self._styles = styles
        self._lists: dict[str, _List] = {}
        self._by_number: dict[str, str] = {}  # a list in use, to its abstract list
        self._overrides: dict[str, dict[int, int]] = {}
        linked: dict[str, str] = {}
        for abstract in root.elements("abstractNum") if root is not None else ():
            key = abstract.get("abstractNumId", "")
            levels = {as_number(level.get("ilvl")): _level(level) for level in abstract.elements("lvl")}
            self._lists[key] = _List(levels)
            link = abstract.find("numStyleLink")
            if link is not None:
                linked[key] = link.get("val", "")
        for used in root.elements("num") if root is not None else ():
            number = used.get("numId", "")
            abstract = used.find("abstractNumId")
            self._by_number[number] = abstract.get("val", "") if abstract is not None else ""
            self._overrides[number] = {
                as_number(one.get("ilvl")): as_number(start.get("val"))
                for one in used.elements("lvlOverride")
                if (start := one.find("startOverride")) is not None
            }
        for key, style in linked.items():
            target = self._by_number.get(styles.numbers(style)[0] or "")
            if target in self._lists and target != key:
                self._lists[key] = self._lists[target]

    def label(self, paragraph: Element) -> str:
        """What is printed before a paragraph, with the space behind it; "" where it is in no list.  Counts it."""
        properties = paragraph.find("pPr")
        own = properties.find("numPr") if properties is not None else None
        style = self._styles.of(paragraph)
        number, level = self._styles.numbers(style)
        if own is not None:
            number = _value(own, "numId", number)
            level = _value(own, "ilvl", level)
        listed = self._lists.get(self._by_number.get(number or "", ""))
        if listed is None:
            return ""
        if level is None:  # the level that the style is tied to
            level = next((str(at) for at, one in listed.levels.items() if style and one.style == style), "0")
        at = as_number(level)
        if at not in listed.levels:
            return ""
        self._count(listed, number or "", at)
        return _printed(listed, at)

    def _count(self, listed: _List, number: str, at: int) -> None:
        override = self._overrides.get(number, {}).pop(at, None)  # a new start holds where the list is first used
        if override is not None:
            listed.counted[at] = override
        elif at in listed.counted:
            listed.counted[at] += 1
        else:
            listed.counted[at] = listed.levels[at].start
        for deeper in [level for level in listed.counted if level > at]:
            if listed.levels[deeper].restarts:
                del listed.counted[deeper]


def _printed(listed: _List, at: int) -> str:
    level = listed.levels[at]
    if level.format == "bullet":
        return BULLET + " "
    text = level.text
    for other, one in listed.levels.items():
        shown: Callable[[int], str] = FORMATS.get(one.format, str)
        text = text.replace(f"%{other + 1}", shown(listed.counted.get(other, one.start)))
    return text + level.suffix if text.strip() else ""


def _level(element: Element) -> _Level:
    suffix = {"nothing": "", "tab": " ", "space": " "}.get(_value(element, "suff", "tab") or "tab", " ")
    return _Level(
        as_number(_value(element, "start", "1"), 1),
        _value(element, "numFmt", "decimal") or "decimal",
        _value(element, "lvlText", "") or "",
        suffix,
        _value(element, "pStyle", None),
        _value(element, "lvlRestart", None) != "0",
    )


def _value(element: Element, local: str, default: str | None) -> str | None:
    found = element.find(local)
    return found.get("val", default) if found is not None else default
