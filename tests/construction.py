"""Patterns built from known units, whose counts are known from how they were built and not from reading their words.

A row is a list of units: a stitch, a chain space, a V-stitch, a shell, a cluster, a group in one place.  The next row is told
over a period of units, one after the other: worked into, gone over stitch by stitch, skipped, or left behind a chain; its own
units follow from that.  Words for the same are drawn by chance.  Common practice, no source.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from random import Random

LIST = (
    "Abbreviations\nch: chain\nsc: single crochet\nhdc: half double crochet\ndc: double crochet\ntr: treble crochet\n"
    "Fsc: foundation single crochet\nsl st: slip stitch\nst(s): stitch(es)\nsp(s): space(s)\nsk: skip\nrep: repeat\nRnd: round\n"
    "sc2tog, dc2tog: 2 sc or dc together\nFPdc, BPdc: front or back post dc\n\nSpecial stitches\n"
    "V-st: (dc, ch 1, dc) in same st or sp.\nShell: 5 dc in same st or sp.\nCluster (cl): dc3tog in same st or sp.\n"
    "Bobble (bob): dc5tog in same st or sp.\n"
)
_PLAIN = ("sc", "hdc", "dc", "tr")
_CHAINS = (1, 2, 3, 5)
_MOST = 120  # places of a row; longer ones only take longer


@dataclass(frozen=True)
class Unit:
    """One thing in a row: its name, and its stitches (by kind) and spaces (by length) in order."""

    name: str
    nodes: tuple[str | int, ...]

    @property
    def is_space(self) -> bool:
        return isinstance(self.nodes[0], int)


@dataclass(frozen=True)
class Built:
    """A pattern's text without counts, row by row, and what each row makes: stitches, and spaces by length."""

    head: str
    rows: tuple[str, ...]
    made: tuple[tuple[int, dict[int, int]], ...]

    @property
    def text(self) -> str:
        return self.head + "\n".join(self.rows) + "\n"

    def counted(self, wrong: int | None = None, by: int = 0) -> str:
        """The text with a printed count behind every row; that of the row `wrong` is out by so many."""
        counts = [stitches + (by if at == wrong else 0) for at, (stitches, _) in enumerate(self.made)]
        return self.head + "".join(f"{row} ({count} sts)\n" for row, count in zip(self.rows, counts, strict=True))


def stitch(kind: str) -> Unit:
    return Unit(kind, (kind,))


def space(length: int) -> Unit:
    return Unit(f"ch-{length} sp", (length,))


V_STITCH = Unit("V-st", ("dc", 1, "dc"))
SHELL = Unit("shell", ("dc",) * 5)


def built(seed: int) -> Built:
    """A pattern of some rows or rounds; the same for the same seed."""
    chance = Random(seed)
    flat = chance.random() < 0.6
    times = chance.choice((2, 3, 4, 6))
    period = [stitch("sc")] * chance.choice((1, 2, 2, 3, 3, 4))
    times = max(times, -(-6 // len(period)))
    whole = len(period) * times + 2 * flat
    ring = f"Ch {whole}, join with sl st to form a ring, ch 1 (does not count as a st), sc in each ch around, join with sl st in first sc."
    rows = [f"Row 1: Fsc {whole}, turn." if flat else f"Rnd 1: {ring}"]
    made = [(whole, {})]
    edge = "sc"
    for number in range(2, 2 + chance.choice((2, 3, 4))):
        passes = 2 if times % 2 == 0 and chance.random() < 0.3 and len(period) < 5 else 1
        words, units = _body(chance, period * passes)
        if not any(not unit.is_space for unit in units):
            break
        times //= passes
        told, units = _repeated(chance, words, times, flat, edge), units * times
        if flat:
            kind = chance.choice(("dc", "sc"))
            begins = "Ch 3 (counts as dc)" if kind == "dc" else "Ch 1 (does not count as a st), sc in first st"
            ends = chance.choice((f"{kind} in last {edge}", f"{kind} in last st"))
            rows.append(f"Row {number}: {begins}, {told}, {ends}, turn.")
            units, edge = [stitch(kind), *units, stitch(kind)], kind
        else:
            rows.append(f"Rnd {number}: Ch 1 (does not count as a st), {told}, join with sl st in first st.")
        units = _joined(units)
        made.append(_count(units))
        inner = units[1:-1] if flat else units
        if inner[0].is_space or len(inner) % times or sum(len(unit.nodes) for unit in inner) > _MOST:
            break
        period = inner[: len(inner) // times]
        period = period[::-1] if flat else period  # turned: the last comes first
        if len(period) > 7:
            break
    return Built(f"Test piece\n\nUS terms\n\n{LIST}\nPIECE\n", tuple(rows), tuple(made))


def _count(units: list[Unit]) -> tuple[int, dict[int, int]]:
    nodes = [node for unit in units for node in unit.nodes]
    return sum(isinstance(node, str) for node in nodes), dict(Counter(node for node in nodes if isinstance(node, int)))


def _joined(units: list[Unit]) -> list[Unit]:
    """The units, where chains that follow each other are one space."""
    found: list[Unit] = []
    for unit in units:
        if found and unit.is_space and found[-1].is_space:
            found[-1] = space(found[-1].nodes[0] + unit.nodes[0])
        else:
            found.append(unit)
    return found


def _body(chance: Random, units: list[Unit]) -> tuple[list[str], list[Unit]]:
    """The clauses of one pass over these units, and what they make."""
    words: list[str] = []
    made: list[Unit] = []
    at, worked = 0, False
    while at < len(units):
        unit, act = units[at], chance.random()
        last = at + 1 == len(units)
        if act < 0.28 and (worked or not last) and (skipped := _skipped(unit)):
            if chance.random() < 0.6 and made and not made[-1].is_space:
                made.append(space(chance.choice(_CHAINS)))
                words.append(f"ch {made[-1].nodes[0]}")
            words.append(skipped)
            at += 1
            continue
        pair = not last and unit == units[at + 1]
        if act < 0.36 and unit in (V_STITCH, SHELL):
            told, new = _thing(chance)
            leads, middle = ("sk next dc", "next ch-1 sp") if unit == V_STITCH else ("sk next 2 dc", "next dc")
            told = f"{leads}, {told} in {middle}, {leads}"
        elif act < 0.42 and pair and unit in (V_STITCH, SHELL):
            each = chance.choice(("each of next 2", "next 2"))
            told, new = f"3 sc in {each} {unit.name}s", [Unit("group", ("sc",) * 3)] * 2
            at += 1
        elif act < 0.42 and pair and unit.name in _PLAIN:
            kind = chance.choice(("sc", "dc"))
            told, new = f"{kind}2tog over next 2 {unit.name}", [stitch(f"{kind}2tog")]
            at += 1
        elif act < 0.46 and unit.name in ("dc", "tr"):
            kind = chance.choice(("FPdc", "BPdc"))
            told, new = f"{kind} around next {unit.name}", [stitch(kind)]
        elif (gone := _gone_over(chance, unit)) and (act < 0.56 and _all_taken(words) or unit.name == "group"):
            told, new = gone
        else:
            told, new = _thing(chance)
            told = f"{told} {_place(chance, unit)}"
        words.append(told)
        made += new
        at, worked = at + 1, True
        if chance.random() < 0.3:
            made.append(space(chance.choice(_CHAINS)))
            words.append(f"ch {made[-1].nodes[0]}")
    return words, made


def _all_taken(words: list[str]) -> bool:
    """Whether "next dc" can't be taken for the rest of the V-stitch or shell that was worked into last."""
    return not any("V-st" in told or "shell" in told for told in words[-2:])


def _thing(chance: Random) -> tuple[str, list[Unit]]:
    """What may be worked into one place."""
    kind, several, chains = chance.choice(_PLAIN), chance.choice((2, 3)), chance.choice((1, 2, 3))
    leg = (kind,) * several
    things = (
        ("V-st", [V_STITCH]),
        ("shell", [SHELL]),
        ("cl", [stitch("cl")]),
        ("bob", [stitch("bob")]),
        (kind, [stitch(kind)]),
        (f"{several} {kind}", [Unit("group", leg)]),
        (f"({kind}, ch {chains}, {kind})", [Unit("group", (kind, chains, kind))]),
        (f"({several} {kind}, ch {chains}, {several} {kind})", [Unit("group", (*leg, chains, *leg))]),
        (f"(cl, ch {chains}, cl)", [Unit("group", ("cl", chains, "cl"))]),
        ("2 V-sts", [V_STITCH, V_STITCH]),
        ("2 shells", [SHELL, SHELL]),
    )
    return chance.choice(things)


def _place(chance: Random, unit: Unit) -> str:
    if unit == V_STITCH:
        return chance.choice(("in next V-st", "in ch-1 sp of next V-st", "in center of next V-st", "into next V-st"))
    if unit == SHELL:
        return chance.choice(("in 3rd dc of next shell", "in center dc of next shell", "in center of next shell"))
    if unit.is_space or unit.name in ("cl", "bob"):
        return chance.choice((f"in next {unit.name}", f"in the next {unit.name}", f"into next {unit.name}"))
    return chance.choice((f"in next {unit.name}", "in next st")) if unit.name in _PLAIN else "in next st"


def _skipped(unit: Unit) -> str:
    """Words that pass over a unit; "" where it has no name of its own."""
    named = unit.is_space or unit in (V_STITCH, SHELL) or unit.name in (*_PLAIN, "cl", "bob")
    return f"sk next {unit.name}" if named else ""


def _gone_over(chance: Random, unit: Unit) -> tuple[str, list[Unit]] | None:
    """One stitch in each stitch and space of a unit that holds several."""
    kind = chance.choice(("sc", "hdc", "dc"))
    if unit == SHELL:
        told = (f"{kind} in each of next 5 dc", f"{kind} in each dc of next shell", f"{kind} in next 5 dc")
        return chance.choice(told), [stitch(kind)] * 5
    if len(unit.nodes) == 1:
        return None
    words: list[str] = []
    at = 0
    while at < len(unit.nodes):
        node, alike = unit.nodes[at], 1
        while at + alike < len(unit.nodes) and unit.nodes[at + alike] == node:
            alike += 1
        name = f"ch-{node} sp" if isinstance(node, int) else node
        words.append(f"{kind} in next {name}" if alike == 1 else f"{kind} in each of next {alike} {name}")
        at += alike
    return ", ".join(words), [stitch(kind)] * len(unit.nodes)


def _repeated(chance: Random, words: list[str], times: int, flat: bool, edge: str) -> str:
    """A passage so many times, in one of the ways in which that is said."""
    once = ", ".join(words)
    end = "across" if flat else "around"
    more = f"{times - 1} times more" if times > 2 else "once more"
    ways = [f"*{once}; rep from * {end}", f"*{once}; rep from * {more}", f"[{once}] {times} times"]
    ways.append(f"*{once}; rep from * to last {edge}" if flat else f"*{once}; rep from * to end")
    if "(" not in once:
        ways.append(f"({once}) {end}")
    return chance.choice(ways) if times > 1 else once
