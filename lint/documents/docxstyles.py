"""What the styles of a .docx say of a paragraph: whether it is a heading, its list, its bold, the space around it."""

from __future__ import annotations

from lint.documents.numerals import as_number
from lint.documents.xmltree import Element

_OFF = ("0", "false", "off", "none")


class Styles:
    """The styles of one document, by their ids; a style says what those it is based on say, unless it says otherwise."""

    def __init__(self, root: Element | None) -> None:
        self._styles: dict[str, Element] = {}
        self._default: str | None = None
        self._spacing: Element | None = root.find("docDefaults", "pPrDefault", "pPr", "spacing") if root else None
        for style in root.elements("style") if root is not None else ():
            key = style.get("styleId", "")
            self._styles[key] = style
            if style.get("type") == "paragraph" and style.get("default") not in (None, *_OFF):
                self._default = key

    def of(self, paragraph: Element) -> str | None:
        """The id of a paragraph's style."""
        named = paragraph.find("pPr", "pStyle")
        return named.get("val") if named is not None else self._default

    def _chain(self, style: str | None) -> list[Element]:
        chain: list[Element] = []
        while style in self._styles and self._styles[style] not in chain:
            chain.append(self._styles[style])
            based = chain[-1].find("basedOn")
            style = based.get("val") if based is not None else None
        return chain

    def numbers(self, style: str | None) -> tuple[str | None, str | None]:
        """The list and the level that a style puts its paragraphs in."""
        for one in self._chain(style):
            properties = one.find("pPr", "numPr")
            if properties is not None:
                number, level = properties.find("numId"), properties.find("ilvl")
                return (number.get("val") if number else None), (level.get("val") if level else None)
        return None, None

    def heading(self, paragraph: Element) -> bool:
        """Whether a paragraph is a heading by its outline level or its style's name."""
        own = paragraph.find("pPr", "outlineLvl")
        if own is not None:
            return as_number(own.get("val"), 9) < 9
        for one in self._chain(self.of(paragraph)):
            name = one.find("name")
            if name is not None and (name.get("val") or "").lower().startswith(("heading", "title")):
                return True
            level = one.find("pPr", "outlineLvl")
            if level is not None:
                return as_number(level.get("val"), 9) < 9
        return False

    def bold(self, run: Element, paragraph: Element) -> bool:
        """Whether a run is printed bold."""
        for holder in (run, *self._chain(self.of(paragraph))):
            sign = holder.find("rPr", "b")
            if sign is not None:
                return sign.get("val", "1") not in _OFF
        return False

    def space(self, paragraph: Element) -> tuple[int, int]:
        """The space before and after a paragraph, in twentieths of a point."""
        holders = [paragraph.find("pPr", "spacing")]
        holders += [one.find("pPr", "spacing") for one in self._chain(self.of(paragraph))]
        holders.append(self._spacing)
        found = []
        for side in ("before", "after"):
            said = [holder.get(side) for holder in holders if holder is not None and holder.get(side) is not None]
            found.append(as_number(said[0]) if said else 0)
        return found[0], found[1]


def switched_on(run: Element, sign: str) -> bool:
    """Whether a run carries a sign such as `vanish` itself."""
    found = run.find("rPr", sign)
    return found is not None and found.get("val", "1") not in _OFF
