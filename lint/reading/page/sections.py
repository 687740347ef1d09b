"""Finds the sections of a document by their headings: materials, gauge, abbreviations, notes, finishing…"""

from __future__ import annotations

from dataclasses import dataclass

import regex

from lint.expression import expression
from lint.madeonce import made_once
from lint.remembered import remembered
from lint.rulebook import LayoutFile


@dataclass(frozen=True, slots=True)
class Heading:
    """A section heading in a line: its key, its offsets in the line, and where its content starts."""

    key: str
    start: int
    end: int
    content: int


_NUMBERED = expression(r"\s*(?:\d{1,2}|[IVX]{1,4})\s?[.)]\s+(?=\p{Lu})")  # "2. ABBREVIATIONS"

# "ABBREVIATIONS ch – chain; dc – double crochet; …": the list behind a heading in capitals, with no sign between
_CAPITALS = expression(
    r"\s*(?P<name>\p{Lu}{3,}(?: \p{Lu}+){0,2})\s+(?=\p{Ll}[^;,\s]*+\s[^;,\n]{0,120}+[;,][^;,\n]{1,120}+[;,])"
)

_ORNAMENT = r"[*#_•>»«<~=|+✿❀★☆\p{So}-]"  # ">> GAUGE", "~ Notes ~"


class SectionFinder:
    """Knows section headings by the lists of rules/layout.yaml."""

    def __init__(self, layout: LayoutFile) -> None:
        names = {name.lower(): key for key, listed in layout.sections.items() for name in listed}
        joined = "|".join(regex.escape(name) for name in sorted(names, key=len, reverse=True))
        self._names = names
        told = "|".join(regex.escape(name) for name in (*layout.us_statements, *layout.uk_statements, "us", "uk"))
        # alone on its line, or with a colon or dash and content behind it: "Abbreviations, UK terms: …"
        self._line = expression(
            rf"\s*+{_ORNAMENT}*+\s*+(?P<name>{joined})\b(?:\.(?=[:–—])|,?\s+(?:in\s+)?(?:{told})(?=\s*(?:[:–—]|\s-\s|$)))?\s*(?P<paren>\([^)]*\))?\s*{_ORNAMENT}*+\s*(?:(?P<sign>[:–—]|\s-\s|\.(?=\s*$))(?:[*_]{{2}}(?=\s))?\s*|(?P<alone>$)|(?P<open>[\[(](?=[^\])]*[\])]\s*$)))",
            regex.IGNORECASE,
        )
        # "UK TERMS: ch chain; dc double crochet; …": the list of abbreviations behind the statement of the terms
        self._terms_listed = expression(
            rf"\s*+[*#_•-]*+\s*+(?P<name>{told})\s*[:–—]\s*(?=(?:[^,;\n]+?[\s=:–—-][^,;\n]+[,;]){{2}}[^,;\n]+[\s=:–—-])",
            regex.IGNORECASE,
        )
        # in capitals, and its content straight behind it: "GAUGE 13 dc and 7 rows = 4 in", "ABBREVIATIONS ch chain, …"
        capitals = "|".join(
            regex.escape(name.upper())
            for name in sorted(names, key=len, reverse=True)
            if names[name] in ("abbreviations", "gauge", "materials")
        )
        self._capitals = expression(
            rf"\s*+[*#_•-]*+\s*+(?P<name>{capitals})\s+(?:\((?i:{told})\)\s+)?(?!\p{{Lu}}{{2}}|[^\w(])(?=\S+\s+\S)"
        )
        # "Abbreviations. ch, chain. dc, double crochet.": a full stop behind the name, as in leaflets; or "GAUGE. …"
        leaflet = "|".join(
            regex.escape(form)
            for name in sorted(names, key=len, reverse=True)
            if names[name] in ("abbreviations", "gauge", "materials", "notes", "specials")
            for form in (name[0].upper() + name[1:], name.upper())
        )
        self._stopped = expression(
            rf"\s*+(?P<name>{leaflet})(?:\s*\([^()]*\))?(?:\.|\s?(?:\.\s?){{2,}}|\s?…)\s+(?=[^\s.])"
        )
        # between ornaments: ":: ABBREVIATIONS ::", "~ Notes ~"
        self._ornamented = expression(
            rf"\s*+[^\w\s()]{{1,8}}\s*(?P<name>{joined})\s*+[^\w\s()]{{1,8}}\s*$", regex.IGNORECASE
        )
        # run on in a line of its own capitals: "SIZE: … GAUGE: …"
        self._inline = expression(rf"(?<=[.;]\s{{1,3}})(?P<name>{joined})\s*:\s*", regex.IGNORECASE)

    @remembered(words=1)
    def at_line(self, line: str) -> Heading | None:
        """The heading that a line begins with."""
        capitals = _CAPITALS.match(line)
        if capitals is not None and self._names.get(capitals["name"].lower()) == "abbreviations":
            return Heading("abbreviations", capitals.start("name"), capitals.end("name"), capitals.end())
        listed = self._terms_listed.match(line)
        if listed is not None:
            return Heading("abbreviations", listed.start("name"), listed.end("name"), listed.end())
        if not line.lstrip()[:1].isalnum() and (between := self._ornamented.match(line)) is not None:
            return Heading(
                self._names[between["name"].lower()], between.start("name"), between.end("name"), between.end()
            )
        numbered = _NUMBERED.match(line)
        match = self._line.match(line, numbered.end() if numbered is not None else 0)
        match = match or (self._stopped.match(line) or self._capitals.match(line) if numbered is None else None)
        if not match or numbered is not None and match["alone"] is None:
            return None
        key = self._names[match["name"].lower()]
        return Heading(key, match.start("name"), match.end("name"), match.end())

    def inline(self, line: str) -> list[Heading]:
        """Headings further on in a line (only written in capitals, to tell them from words)."""
        return [
            Heading(self._names[match["name"].lower()], match.start("name"), match.end("name"), match.end())
            for match in self._inline.finditer(line)
            if match["name"].isupper()
        ]


section_finder = made_once(SectionFinder)
