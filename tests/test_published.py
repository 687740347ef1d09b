"""Patterns written out from published counts: every count must be recomputed and agree.

The figures stand in tests/published/ with their sources.  Each pattern is written twice, as a US and as a UK house
would, and once more for every printed count with that count changed: one correction, at that row.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import pytest
from helpers import all_findings, check, corrections, counts, line_of, load_table, mades, outcomes, spaces

SHAPES = load_table("flat_shapes")
CHAINS = load_table("turning_chains")
UK_NAMES = {row["stitch"]: row["uk"] for row in CHAINS["rows"]} | {"sl st": "ss"}  # ss: the UK slip stitch
HEIGHTS = {row["stitch"]: row["chains"] for row in reversed(CHAINS["rows"])}


# how a house writes ----------------------------------------------------------------------------------------------


def _ordinal(number: int) -> str:
    return f"{number}{'st' if number == 1 else 'nd' if number == 2 else 'rd' if number == 3 else 'th'}"


@dataclass(frozen=True)
class House:
    """The wording of a publisher: US terms with "Rnd 2: … around", or UK terms with "2nd round: … to end"."""

    terms: str

    @property
    def us(self) -> bool:
        return self.terms == "us"

    def st(self, stitch: str) -> str:
        return stitch if self.us else UK_NAMES[stitch]

    def ch(self, number: int) -> str:
        return f"ch {number}" if self.us else f"{number} ch"

    def sp(self, number: int) -> str:
        return f"ch-{number} sp" if self.us else f"{number}-ch sp"

    def one(self, stitch: str, place: str) -> str:
        """One stitch into a place."""
        return f"{self.st(stitch)} in {place}" if self.us else f"1 {self.st(stitch)} into {place}"

    def several(self, number: int, stitch: str, place: str) -> str:
        """So many stitches into one place."""
        return f"{number} {self.st(stitch)} {'in' if self.us else 'into'} {place}"

    def along(self, number: int, stitch: str) -> str:
        """One stitch into each of the next so many of its own kind."""
        place = f"next {self.st(stitch)}" if number == 1 else f"each of next {number} {self.st(stitch)}"
        return self.one(stitch, place)

    def group(self, words: str, place: str) -> str:
        return f"({words}) {'in' if self.us else 'into'} {place}"

    def more(self, passes: int) -> str:
        """The end of a starred repeat that is worked so many times in all."""
        times = {2: "once more", 3: "twice more"}.get(passes, f"{passes - 1} times more")
        return f"rep from * {times}"

    @property
    def round_through(self) -> str:
        return "rep from * around" if self.us else "rep from * to end"

    @property
    def across(self) -> str:
        return "rep from * across" if self.us else "rep from * to end"

    def counting(self, stitch: str | None, throughout: bool = False) -> str:
        """The gloss that says whether a chain counts."""
        through = "" if not throughout else " here and throughout" if self.us else " throughout"
        if stitch is None:
            return f"(does not count as a st{through})"
        return f"(counts as {self.st(stitch)}{through})" if self.us else f"(counts as 1 {self.st(stitch)}{through})"

    def join(self, chain: int | None, stitch: str) -> str:
        """The join into the top of a chain that counts, or into the round's first stitch."""
        if self.us:
            return f"join with sl st in {f'top of beg ch-{chain}' if chain else f'first {stitch}'}"
        return f"join with ss into {f'top of {chain} ch' if chain else f'first {self.st(stitch)}'}"

    def label(self, kind: str, number: int) -> str:
        if self.us:
            return f"{'Rnd' if kind == 'round' else 'Row'} {number}"
        return f"{_ordinal(number)} {kind}"

    def figure(self, number: int, unit: str | int) -> str:
        """One figure of a printed count: of stitches by name, or of spaces by their chains."""
        if isinstance(unit, int):
            return f"{number} {'' if self.us else 'x '}{self.sp(unit)}{'s' if number != 1 else ''}"
        return f"{number} {self.st(unit) if unit != 'sts' else unit}"


US, UK = House("us"), House("uk")
HOUSES = pytest.mark.parametrize("house", [US, UK], ids=["us", "uk"])


@dataclass(frozen=True)
class Line:
    """One row or round as written, and the figures printed after it: (number, stitch or length of the space)."""

    words: str
    figures: tuple[tuple[int, str | int], ...]


@dataclass(frozen=True)
class Written:
    """A small pattern."""

    house: House
    kind: str
    opening: str
    lines: tuple[Line, ...]
    note: str = ""

    @property
    def text(self) -> str:
        head = [
            "Sample",
            "",
            f"{self.house.terms.upper()} terms.",
            *([self.note] if self.note else []),
            "",
            "SAMPLE",
            "",
            self.opening,
        ]
        return "\n".join([*head, *(self.line(index) for index in range(len(self.lines)))]) + "\n"

    def line(self, index: int) -> str:
        label = self.house.label(self.kind, index + 1)
        printed = ", ".join(self.house.figure(*figure) for figure in self.lines[index].figures)
        words = self.lines[index].words
        first = 1 if words[0] == "*" else 0
        words = words[:first] + words[first].upper() + words[first + 1 :]
        return f"{label}: {words}. ({printed})" if self.house.us else f"{label}: {words}. [{printed}]"

    @property
    def stitches(self) -> list[int]:
        """The total of stitches printed for every line."""
        return [sum(number for number, unit in line.figures if isinstance(unit, str)) for line in self.lines]

    @property
    def spaces(self) -> list[dict[int, int]]:
        """The chain spaces printed for every line."""
        return [{unit: number for number, unit in line.figures if isinstance(unit, int)} for line in self.lines]

    def misprinted(self) -> Iterator[tuple[str, Written]]:
        """The pattern with one figure changed, once for every figure, with the label of its row."""
        for index, line in enumerate(self.lines):
            for place, (number, unit) in enumerate(line.figures):
                figures = list(line.figures)
                figures[place] = (number + 1 if index % 2 else number - 1, unit)
                lines = list(self.lines)
                lines[index] = replace(line, figures=tuple(figures))
                yield self.house.label(self.kind, index + 1), replace(self, lines=tuple(lines))


def assert_agrees(written: Written) -> None:
    """Every row is recomputed, comes out as printed, and nothing is called wrong or asked."""
    report = check(written.text)

    assert written.stitches == counts(report), written.text
    assert written.spaces == spaces(report), written.text
    assert ["agrees"] * len(written.lines) == outcomes(report), written.text
    assert [] == corrections(report), written.text


def assert_misprints_found(written: Written) -> None:
    """Whichever figure is misprinted, that row has the only correction."""
    for label, misprint in written.misprinted():
        report = check(misprint.text)
        found = [
            (finding.rule, finding.row)
            for finding in report.findings
            if finding.weight.value == "correction" and finding.rule != "section-missing"
        ]

        assert [("count-differs", label)] == found, misprint.text
        assert [("count-differs", line_of(misprint.text, f"{label}:"))] == corrections(report), misprint.text


# shapes worked in rounds -----------------------------------------------------------------------------------------


def _ring(house: House, chains: int = 4) -> str:
    if house.us:
        return f"Ch {chains}; join with sl st in first ch to form a ring."
    return f"{chains} ch, join with ss into first ch to form a ring."


def circle(house: House, stitch: str, rounds: list[int], chain_counts: bool) -> Written:
    """A flat circle in joined rounds: increases spread evenly, one plain stitch more between them each round."""
    start, height, st = rounds[0], HEIGHTS[stitch], house.st(stitch)
    lines = []
    for number, count in enumerate(rounds, 1):
        chain = house.ch(height)
        if number == 1:
            chain += f" {house.counting(stitch if chain_counts else None, throughout=True)}"
        plain = number - 2
        if chain_counts:
            if number == 1:
                work = [house.several(start - 1, stitch, "ring")]
            elif number == 2:
                work = [
                    house.one(stitch, "same place as join"),
                    house.several(2, stitch, f"each of next {start - 1} {st}"),
                ]
            else:
                work = [house.along(plain - 1, stitch)] if plain > 1 else []
                work += [house.several(2, stitch, f"next {st}")]
                work += [
                    f"*{house.along(plain, stitch)}, {house.several(2, stitch, f'next {st}')}",
                    house.more(start - 1),
                ]
        elif number == 1:
            work = [house.several(start, stitch, "ring")]
        elif number == 2:
            work = [house.several(2, stitch, f"each {st} around" if house.us else f"each {st} to end")]
        else:
            work = [f"*{house.along(plain, stitch)}, {house.several(2, stitch, f'next {st}')}", house.round_through]
        joined = house.join(height if chain_counts else None, stitch)
        lines.append(Line(_listed([chain, *work], joined), ((count, stitch),)))
    return Written(house, "round", _ring(house), tuple(lines))


def _listed(pieces: list[str], last: str = "") -> str:
    """Clauses with commas between them, a semicolon before "rep from *" and before the join."""
    words = pieces[0]
    for piece in pieces[1:]:
        words += ("; " if piece.startswith("rep from") else ", ") + piece
    return f"{words}; {last}" if last else words


def spiral(house: House, stitch: str, rounds: list[int], every: int | None = None) -> Written:
    """Rounds without a join: each grows, stays or shrinks by an even step from one to the next."""
    st, lines = house.st(stitch), []
    for number, count in enumerate(rounds, 1):
        below = rounds[number - 2] if number > 1 else 0
        if number == 1:
            words = house.several(count, stitch, "ring")
        elif count == below:
            words = house.one(stitch, f"each {st} around" if house.us else f"each {st} to end")
        elif count == 2 * below:
            words = house.several(2, stitch, f"each {st} around" if house.us else f"each {st} to end")
        else:
            steps = abs(count - below)
            plain = below // steps - (1 if count > below else 2)
            change = house.several(2, stitch, f"next {st}") if count > below else f"{st}2tog over next 2 {st}"
            words = (
                f"*{house.along(plain, stitch)}, {change}; {house.round_through}"
                if plain
                else f"*{change}; {house.round_through}"
            )
        lines.append(Line(words, ((count, stitch),)))
    note = "Worked in a continuous spiral; do not join or turn. There are no turning chains."
    return Written(house, "round", "Make a magic ring.", tuple(lines), note)


def sc_square(house: House) -> Written:
    """A square in a spiral: 3 sc in each corner stitch."""
    st, table = house.st("sc"), SHAPES["sc_square"]
    lines = [
        Line(house.several(4, "sc", "ring"), ((4, "sc"),)),
        Line(house.several(3, "sc", f"each of next 4 {st}"), ((12, "sc"),)),
    ]
    passage = f"*{house.along(1, 'sc')}, {house.several(3, 'sc', f'next {st}')}, {house.along(1, 'sc')}"
    lines.append(Line(f"{passage}; {house.more(4)}", ((20, "sc"),)))
    assert [line.figures[0][0] for line in lines] == table["rounds"]
    return Written(
        house, "round", "Make a magic ring.", tuple(lines), "Worked in a continuous spiral; do not join or turn."
    )


def solid_motif(house: House, corners: int, totals: list[int], in_corner: int, chains: int) -> Written:
    """A motif of dc: so many dc each side of a chain space in every corner, one dc in every dc between."""
    st, lines = house.st("dc"), []
    first = totals[0] // corners
    groups = (
        house.group(f"{house.several(first, 'dc', 'ring')}, {house.ch(chains)}", "")
        .removesuffix(" in ")
        .removesuffix(" into ")
    )
    chain = f"{house.ch(3)} {house.counting('dc')}"
    opening = [
        chain,
        house.one("dc", "ring") if first == 2 else house.several(first - 1, "dc", "ring"),
        house.ch(chains),
    ]
    lines.append(
        Line(
            _listed([*opening, f"{groups} {corners - 1} times"], house.join(3, "dc")),
            ((totals[0], "dc"), (corners, chains)),
        )
    )
    each = st if in_corner == 1 else f"{in_corner} {st}"
    corner = house.group(f"{each}, {house.ch(chains)}, {each}", f"next {house.sp(chains)}")
    for number, total in enumerate(totals[1:], 2):
        side = totals[number - 2] // corners
        left = in_corner * (number - 2)  # the stitches of the last side that stand before the round's first
        work = [f"{house.ch(3)} {house.counting('dc')}", house.along(side - left - 1, "dc"), corner]
        work += [f"*{house.along(side, 'dc')}, {corner}", house.more(corners - 1)]
        work += [house.one("dc", f"each of last {left} {st}" if left > 1 else f"last {st}")] if left else []
        lines.append(Line(_listed(work, house.join(3, "dc")), ((total, "dc"), (corners, chains))))
    return Written(house, "round", _ring(house), tuple(lines))


def granny_square(house: House, table: list[dict]) -> Written:
    """Groups of 3 dc, two of them with ch 2 in each corner, ch 1 between groups along the sides."""
    st, lines = house.st("dc"), []
    corner = house.group(f"3 {st}, {house.ch(2)}, 3 {st}", f"next {house.sp(2)}")
    side = f"{house.several(3, 'dc', f'next {house.sp(1)}')}, {house.ch(1)}"
    for row in table:
        number = row["round"]
        chain = f"{house.ch(3)} {house.counting('dc')}"
        if number == 1:
            start = [chain, house.several(2, "dc", "ring"), house.ch(2)]
            work = [f"*{house.several(3, 'dc', 'ring')}, {house.ch(2)}", house.more(3)]
        else:
            along = [] if number == 2 else [side] if number == 3 else [f"({side}) {number - 2} times"]
            travel = f"{house.st('sl st')} {'in' if house.us else 'into'} each of next 2 {st} and {'in' if house.us else 'into'} next {house.sp(2)}"
            start = [travel, chain, house.group(f"2 {st}, {house.ch(2)}, 3 {st}", "same sp"), house.ch(1), *along]
            work = [_listed([f"*{corner}", house.ch(1), *along]), house.more(3)]
        figures = [(row["dc"], "dc"), (row["corner_spaces"], 2)]
        figures += [(row["side_spaces"], 1)] if row["side_spaces"] else []
        lines.append(Line(_listed([*start, *work], house.join(3, "dc")), tuple(figures)))
    return Written(house, "round", _ring(house), tuple(lines))


def circle_of_pairs(house: House) -> Written:
    """20 dc in the ring, then no increase: ch 2 between pairs does the widening."""
    row = SHAPES["circles_with_chains"][0]
    chain = f"{house.ch(3)} {house.counting('dc')}"
    first = _listed([chain, house.several(19, "dc", "ring")], house.join(3, "dc"))
    passage = f"*{house.along(2, 'dc')}, {house.ch(2)}"
    second = _listed([chain, house.along(1, "dc"), house.ch(2), passage, house.more(9)], house.join(3, "dc"))
    lines = (
        Line(first, ((row["rounds"][0], "dc"),)),
        Line(second, ((row["rounds"][1], "dc"), (row["chain_spaces"][1], row["chains"]))),
    )
    return Written(house, "round", _ring(house, 6), lines)


def star(house: House) -> Written:
    """8 spokes with ch 2 between them, then 5 dc in each space."""
    row = SHAPES["circles_with_chains"][1]
    chain = f"{house.ch(3)} {house.counting('dc')}"
    spokes = f"*{house.one('dc', 'ring')}, {house.ch(2)}"
    first = _listed([chain, house.ch(2), spokes, house.more(row["spokes"] - 1)], house.join(3, "dc"))
    slip = f"{house.st('sl st')} {'in' if house.us else 'into'} next {house.sp(2)}"
    points = f"*{house.several(row['dc_in_each'], 'dc', f'next {house.sp(2)}')}"
    second = _listed(
        [slip, chain, house.several(row["dc_in_each"] - 1, "dc", "same sp"), points, house.more(row["spaces"] - 1)],
        house.join(3, "dc"),
    )
    lines = (Line(first, ((row["spokes"], "dc"), (row["spaces"], 2))), Line(second, ((row["round_2"], "dc"),)))
    return Written(house, "round", _ring(house, 6), lines)


def circle_to_square(house: House) -> Written:
    """A circle of 24 sc turned into a square: 5 sc along each side and 3 in each corner."""
    row, st = SHAPES["circle_to_square"], house.st("sc")
    circular = circle(house, "sc", [6, 12, 18, row["circle"]], False)
    passage = f"*{house.along(row['per_side'], 'sc')}, {house.several(row['in_corner'], 'sc', f'next {st}')}"
    words = _listed([house.ch(1), passage, house.more(row["corners"])], house.join(None, "sc"))
    return replace(circular, lines=(*circular.lines, Line(words, ((row["square"], "sc"),))))


# shapes worked in rows -------------------------------------------------------------------------------------------


def _first_row(house: House, stitch: str, row: dict) -> str:
    nth = f"{_ordinal(row['chain_from_hook'])} ch from hook"
    skipped = row["skipped"] if "skipped" in row else row["chain_from_hook"] - 1
    glosses = ""
    if row["skipped_counts"]:
        verb = "skipped" if house.us else "missed"
        glosses = f" ({skipped} {verb} ch count as {house.st(stitch) if house.us else '1 ' + house.st(stitch)})"
    each = "in each ch across" if house.us else f"1 {house.st(stitch)} into each ch to end"
    return f"{house.one(stitch, nth)}{glosses} and {each}" if house.us else f"{house.one(stitch, nth)}{glosses}, {each}"


def _foundation(house: House, chains: int) -> str:
    return f"Ch {chains}." if house.us else f"{chains} ch."


def from_chain(house: House, stitch: str, chains: int, row: dict, stitches: int) -> Written:
    """A foundation chain and the first row on it."""
    return Written(
        house, "row", _foundation(house, chains), (Line(_first_row(house, stitch, row), ((stitches, stitch),)),)
    )


def strip(house: House, stitch: str, turning: int, counted: bool | None, width: int = 12, rows: int = 4) -> Written:
    """Plain rows with a turning chain; counted None: whether it counts is not said."""
    st = house.st(stitch)
    counts_as = counted if counted is not None else stitch != "sc"
    first = {"chain_from_hook": turning + 1, "skipped_counts": counts_as}
    chains = width + turning - (1 if counts_as else 0)
    lines = [Line(_first_row(house, stitch, first), ((width, stitch),))]
    for _ in range(rows - 1):
        gloss = f" {house.counting(stitch if counted else None)}" if counted is not None else ""
        if counts_as:
            work = [house.along(width - 2, stitch), house.one(stitch, f"top of {'turning ch' if house.us else 't-ch'}")]
        else:
            work = [house.one(stitch, f"each {st} {'across' if house.us else 'to end'}")]
        lines.append(Line(_listed([f"{house.ch(turning)}{gloss}", "turn", *work]), ((width, stitch),)))
    return Written(house, "row", _foundation(house, chains), tuple(lines))


def hyperbolic_rows(house: House, table: dict) -> Written:
    """Rows of sc with 2 sc in every so many-th stitch."""
    st, every, counted = house.st("sc"), table["increase_every"], table["rows"]
    first = {"chain_from_hook": 2, "skipped_counts": False}
    lines = [Line(_first_row(house, "sc", first), ((counted[0], "sc"),))]
    for count in counted[1:]:
        passage = f"*{house.along(every - 1, 'sc')}, {house.several(2, 'sc', f'next {st}')}"
        lines.append(
            Line(_listed([f"{house.ch(1)} {house.counting(None)}", "turn", passage, house.across]), ((count, "sc"),))
        )
    return Written(house, "row", _foundation(house, counted[0] + 1), tuple(lines))


# the tests -------------------------------------------------------------------------------------------------------


def _name(row: dict) -> str:
    rounds = row.get("rounds") or row.get("rows")
    return f"{row.get('stitch', '')} {'-'.join(map(str, rounds))}{' counted chain' if row.get('chain_counts') else ''}".strip()


def _shapes(house: House) -> dict[str, Written]:
    """Every shape of the tables that is worked in rounds and has one way of working, by name."""
    square, hexagon = SHAPES["dc_square"], SHAPES["solid_hexagon"]
    shapes = {
        "sc square": sc_square(house),
        "dc square": solid_motif(house, 4, square["rounds"], 2, 4),
        "granny square": granny_square(house, SHAPES["granny_square"]),
        "solid hexagon": solid_motif(house, 6, hexagon["rounds"], 1, 2),
        "circle of pairs": circle_of_pairs(house),
        "star": star(house),
        "circle to square": circle_to_square(house),
    }
    for row in SHAPES["polygons_by_first_round"]:
        shapes[f"first round of a {row['shape']}"] = solid_motif(
            house, row["corners"], [row["corners"] * row["dc_in_group"]], 1, 2
        )
    for row in SHAPES["hyperbolic"]["rows"]:
        shapes[f"hyperbolic plane {row['ratio']}"] = hyperbolic_rows(house, row)
    for row in SHAPES["hyperbolic"]["rounds"]:
        shapes["hyperbolic disc"] = spiral(house, "sc", row["rounds"])
    for row in SHAPES["balls"]:
        shapes[f"ball {_name(row)}"] = spiral(house, "sc", row["rounds"])
    return shapes


@HOUSES
@pytest.mark.parametrize("row", SHAPES["circles"], ids=_name)
class TestCircles:
    """Flat circles of the published round lists."""

    def test_joined_rounds_agree(self, house: House, row: dict) -> None:
        """A flat circle in joined rounds makes the published counts."""
        assert_agrees(circle(house, row["stitch"], row["rounds"], row["chain_counts"]))

    def test_spiral_agrees(self, house: House, row: dict) -> None:
        """The same circle worked in a spiral makes the same counts."""
        assert_agrees(spiral(house, row["stitch"], row["rounds"]))

    def test_misprint_in_joined_rounds(self, house: House, row: dict) -> None:
        """One misprinted count in a joined circle is one correction, at its round."""
        assert_misprints_found(circle(house, row["stitch"], row["rounds"], row["chain_counts"]))

    def test_misprint_in_spiral(self, house: House, row: dict) -> None:
        """One misprinted count in a spiral is one correction, at its round."""
        assert_misprints_found(spiral(house, row["stitch"], row["rounds"]))


@HOUSES
@pytest.mark.parametrize("row", SHAPES["circle_rule"], ids=lambda row: row["stitch"])
def test_round_n_has_n_times_the_first(house: House, row: dict) -> None:
    """Round n of a flat circle has n times the stitches of its first round, up to round 12."""
    assert_agrees(circle(house, row["stitch"], [row["per_round"] * number for number in range(1, 13)], False))


@HOUSES
@pytest.mark.parametrize("shape", _shapes(US))
class TestShapes:
    """Squares, hexagons, polygons, balls, ruffles."""

    def test_counts_agree(self, house: House, shape: str) -> None:
        """The shape's published counts, of stitches and of spaces, are what its words make."""
        assert_agrees(_shapes(house)[shape])

    def test_misprint_is_found(self, house: House, shape: str) -> None:
        """One misprinted figure is one correction, at its row."""
        assert_misprints_found(_shapes(house)[shape])


@HOUSES
@pytest.mark.parametrize(("table", "corners"), [("dc_square", 4), ("solid_hexagon", 6)])
def test_sides_between_corners(house: House, table: str, corners: int) -> None:
    """A square of dc has four sides and a hexagon six, each of the published number of stitches."""
    shape = "dc square" if table == "dc_square" else "solid hexagon"
    made = mades(check(_shapes(house)[shape].text))

    assert [(corners, (side,) * corners) for side in SHAPES[table]["per_side"]] == [(m.corners, m.sides) for m in made]


@HOUSES
@pytest.mark.parametrize("row", SHAPES["polygons_by_first_round"], ids=lambda row: row["shape"])
def test_corners_of_a_first_round(house: House, row: dict) -> None:
    """Groups in the ring with a space between them give the polygon its corners."""
    written = solid_motif(house, row["corners"], [row["corners"] * row["dc_in_group"]], 1, 2)

    assert [row["corners"]] == [made.corners for made in mades(check(written.text))]


@HOUSES
def test_granny_square_by_its_formula(house: House) -> None:
    """Round n of a granny square has 12n dc, 4 corner spaces and 4(n - 1) side spaces, up to round 9."""
    table = [{"round": n, "dc": 12 * n, "corner_spaces": 4, "side_spaces": 4 * (n - 1)} for n in range(1, 10)]
    report = check(granny_square(house, table).text)

    assert [12 * n for n in range(1, 10)] == counts(report)
    assert [{2: 4} | ({1: 4 * (n - 1)} if n > 1 else {}) for n in range(1, 10)] == spaces(report)
    assert [] == corrections(report)


@HOUSES
def test_edging_of_27_a_side_and_3_a_corner(house: House) -> None:
    """27 stitches along each of four sides and 3 in each corner are 120."""
    row = SHAPES["edging"]
    sc = house.st("sc")
    side, corner = f"work {row['per_side']} {sc} evenly along side", f"3 {sc} {'in' if house.us else 'into'} corner"
    words = f"{house.ch(1)} {house.counting(None)}, *{side}, {corner}; {house.more(4)}; {house.join(None, 'sc')}"
    text = Written(
        house,
        "round",
        "Join A with sl st in any corner." if house.us else "Join A with ss into any corner.",
        (Line(words, ((row["total"], "sc"),)),),
    ).text

    assert [row["total"]] == counts(check(text)), text


@HOUSES
@pytest.mark.parametrize("row", CHAINS["worked_examples"], ids=lambda row: f"ch {row['chain']}")
class TestWorkedExamples:
    """The published examples of a foundation chain and the row on it."""

    def test_agrees(self, house: House, row: dict) -> None:
        """The first row has the published number of stitches."""
        assert_agrees(from_chain(house, row["stitch"], row["chain"], row, row["stitches"]))

    def test_misprint_is_found(self, house: House, row: dict) -> None:
        """A misprinted first row is one correction."""
        assert_misprints_found(from_chain(house, row["stitch"], row["chain"], row, row["stitches"]))


@HOUSES
@pytest.mark.parametrize("row", CHAINS["first_stitch_in_foundation"], ids=lambda row: row["stitch"])
class TestFirstStitchInFoundation:
    """Which chain from the hook takes the first stitch."""

    def _written(self, house: House, row: dict) -> Written:
        return from_chain(house, row["stitch"], 20, row, 20 - row["skipped"] + row["skipped_counts"])

    def test_agrees(self, house: House, row: dict) -> None:
        """The skipped chains stand for one stitch where they count, for none where they do not."""
        assert_agrees(self._written(house, row))

    def test_misprint_is_found(self, house: House, row: dict) -> None:
        """A misprinted first row is one correction."""
        assert_misprints_found(self._written(house, row))

    def test_unsaid_is_read_from_the_height(self, house: House, row: dict) -> None:
        """Nothing said of the skipped chains, they count for stitches taller than sc."""
        text = self._written(house, row).text
        silent = text.replace(text[text.index(" (") : text.index(")") + 1], "") if row["skipped_counts"] else text
        report = check(silent)

        assert [20 - row["skipped"] + row["skipped_counts"]] == counts(report), silent
        assert [] == corrections(report), silent


@HOUSES
@pytest.mark.parametrize(
    "row",
    CHAINS["rows"],
    ids=lambda row: f"{row['stitch']}-ch{row['chains']}-{'counts' if row['counts_as_stitch'] else 'not'}",
)
class TestTurningChains:
    """Strips whose rows begin with the published turning chain."""

    def test_said(self, house: House, row: dict) -> None:
        """With the chain said to count or not, every row keeps its stitches."""
        assert_agrees(strip(house, row["stitch"], row["chains"], row["counts_as_stitch"]))

    def test_misprint_is_found(self, house: House, row: dict) -> None:
        """One misprinted count in the strip is one correction, at its row."""
        assert_misprints_found(strip(house, row["stitch"], row["chains"], row["counts_as_stitch"]))


@HOUSES
@pytest.mark.parametrize("stitch", ["sc", "hdc", "dc", "tr", "dtr"])
def test_unsaid_turning_chain_is_read_from_its_height(house: House, stitch: str) -> None:
    """Nothing said of turning chains, ch 1 before sc does not count and those of taller stitches do."""
    assert_agrees(strip(house, stitch, HEIGHTS[stitch], None))


@HOUSES
def test_forgotten_last_stitch(house: House) -> None:
    """A counting chain whose top is not worked into leaves one stitch over: the commonest drift."""
    written = strip(house, "dc", 3, True, rows=2)
    last = f", {house.one('dc', 'top of turning ch' if house.us else 'top of t-ch')}"
    text = written.text.replace(last, "")
    report = check(text)

    assert text != written.text
    assert [12, 11] == counts(report)
    assert [("places-left-over", line_of(text, house.label("row", 2) + ":"))] == all_findings(report)
