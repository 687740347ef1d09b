"""Whole patterns drawn by chance: pieces whose counts are known from how they are made, in a drawn house style.

A piece is made row by row; its words come from the style, its counts from arithmetic here and not from reading.
Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from random import Random

from drawnfurther import animal, calls, granny, oval, v_stitches
from drawnmore import bag, bobbles, cable, disc, edged, flower, mesh, mitten, neck, ripple
from drawnpiece import CHAINS, Piece
from drawnstyles import Style, ordinal

_SIZES = ("XS", "S", "M", "L", "XL", "2XL", "3XL")


def ball(piece: Piece) -> None:
    """A ball in a spiral: rounds of increases, even ones, decreases."""
    s = piece.style
    k, start = s.words["sc"], s.pick((5, 6, 7, 8))
    s.parted = ", " if s.parted == ". " else s.parted
    begun = s.pick((f"{start} {k} in magic ring", f"Make a magic ring, work {start} {k} into ring", f"start with a magic ring, {start} {k}",
                    f"ch 2, {start} {k} in 2nd ch from hook"))  # fmt: skip
    piece.round(1, [begun], [start], "sc")
    piece.round(
        2,
        [s.pick((f"2 {k} in each st around", f"(inc) x {start}", "inc around", f"[inc] {start} times"))],
        [2 * start],
        "sc",
    )
    number, between = 2, s.pick((1, 2, 3))
    for plain in range(1, between + 1):
        number += 1
        piece.round(number, [s.times([s.some(plain, "sc"), s.more("sc")], start, True)], [start * (plain + 2)], "sc")
    even = s.pick((1, 2, 4))
    piece.round(number + 1, [s.each("sc", "around")], [start * (between + 2)], "sc", number + even)
    number += even
    for plain in range(between, 0, -1):
        number += 1
        piece.round(number, [s.times([s.some(plain, "sc"), s.fewer("sc")], start, True)], [start * (plain + 1)], "sc")
    piece.lines.append(
        s.pick(("Fasten off, leaving a long tail for sewing.", "Stuff firmly. Fasten off and close the hole."))
    )


def panel(piece: Piece) -> None:
    """A flat piece in every size: even rows, increases and decreases at both ends, armholes, rows called for again."""
    s = piece.style
    kind = s.pick(("sc", "hdc", "dc"))
    k, chain = s.words[kind], CHAINS[kind]
    now = piece.sized(s.pick((32, 40, 48)), s.pick((4, 6, 8)))
    piece.lines += [
        f"Ch {chain} at the beginning of a row does not count as a stitch throughout.",
        s.pick(("BACK", "Back")),
    ]
    chains = piece.told([one + chain for one in now])
    piece.lines.append(
        s.pick((f"Ch {s.number(chains)}.", f"With 4 mm hook, ch {s.number(chains)}.", f"Make {s.number(chains)} ch."))
    )
    hook = ordinal(chain + 1)
    piece.row(1, [s.pick((f"{k} in {hook} ch from hook and in each ch across", f"starting in {hook} ch from hook, work 1 {k} in each ch to end"))], now, kind)  # fmt: skip
    piece.row(2, [s.each(kind, "across")], now, kind, chain=chain)
    even = s.pick((3, 4, 6))
    piece.row(3, [s.each(kind, "across")], now, kind, 2 + even, chain=chain)
    number = 3 + even
    for _ in range(s.pick((1, 2, 3))):
        if s.chance.random() < 0.5:
            now = [one + 2 for one in now]
            words = f"2 {k} in first st, {k} in each st to last st, 2 {k} in last st"
        else:
            now = [one - 2 for one in now]
            words = s.pick((f"{k}2tog, {k} in each st to last 2 sts, {k}2tog", f"{k}2tog over first 2 sts, {k} to last 2 sts, {k}2tog over last 2 sts"))  # fmt: skip
        piece.row(number, [words], now, kind, chain=chain)
        number += 1
    cut = piece.sized(3, 1)
    now = [one - 2 * away for one, away in zip(now, cut, strict=True)]
    away = s.number(piece.told(cut))
    slipped = f"{s.words['sl st']} in first {away} sts, ch {chain}, {k} in each st to last {away} sts, leave remaining sts unworked"
    piece.lines.append(s.pick(("Shape armholes", "Armhole shaping")))
    piece.row(number, (["turn"] if s.turns_first else []) + [slipped], now, kind)
    piece.row(number + 1, [s.each(kind, "across")], now, kind, chain=chain)
    piece.lines.append("Fasten off.")


def square(piece: Piece) -> None:
    """A square in rounds with a space in each corner, each side longer by two or four stitches."""
    s = piece.style
    kind = s.pick(("dc", "hdc", "sc"))
    k, chain, space = s.words[kind], {"dc": 3, "hdc": 2, "sc": 1}[kind], s.pick((1, 2, 3))
    counts, side, join = kind == "dc", s.pick((2, 3)), s.joining.format(ss=s.words["sl st"], k=k)
    join = f"{s.words['sl st']} in top of beg ch-3" if counts else join
    piece.lines.append(
        f"Ch {chain} at start of round {f'counts as a {k}' if counts else 'does not count as a stitch'}."
    )
    first = [f"{side - 1} {k} in ring, ch {space}", f"({side} {k} in ring, ch {space}) 3 times"]
    first = first if counts else [f"({side} {k} in ring, ch {space}) 4 times"]
    piece.round(1, ["make a magic ring", f"ch {chain}", *first, join], [4 * side], kind)
    corners = ["corner sp", f"ch-{space} sp", "next corner sp", f"next ch-{space} sp"]
    for number in range(2, 2 + s.pick((1, 2, 3, 4))):
        each = 2 if counts else s.pick((1, 2))
        corner = f"({each} {k}, ch {space}, {each} {k}) in {s.pick(corners)}"
        inside = f"({each} {k}, ch {space}, {each} {k})"
        every = f"{inside} in {s.pick(('each corner', 'each corner sp', f'each ch-{space} sp', f'each ch-{space} corner sp'))}"
        more = s.pick(
            (
                f"*{k} in each st to corner, {s.pick((corner, every))}; rep from * ",
                f"*1 {k} in each st to corner sp, {s.pick((corner, every))}; repeat from * ",
            )
        )
        begun = [f"{k} in each st to corner" if number > 2 else s.some(side - 1, kind), corner] if counts else []
        words = [*begun, more + ("2 more times" if counts else "around")]
        end = [f"{k} in each st to end"] if number > 2 else []
        if not counts and s.chance.random() < 0.4:
            sides = s.pick(("along each side", "across each side", "along all four sides", "around"))
            words, end = s.pick(([f"{k} in each st {sides}", every], [every, f"{k} in each st {sides}"])), []
        side += 2 * each
        piece.round(number, [f"ch {chain}", *words, *end, join], [4 * side], kind)


def yoke(piece: Piece) -> None:
    """A raglan yoke in joined rounds: four corners, in every size."""
    s = piece.style
    kind = s.pick(("dc", "hdc"))
    k, space, join = s.words[kind], s.pick((1, 2)), s.joining.format(ss=s.words["sl st"], k=s.words[kind])
    front, sleeve = piece.sized(s.pick((16, 20)), 2), piece.sized(s.pick((8, 10)), 2)
    now = [2 * (one + other) for one, other in zip(front, sleeve, strict=True)]
    piece.lines.append("Ch 2 at start of round does not count as a stitch.")
    piece.lines.append(
        f"Ch {s.number(piece.told(now))}, join with {s.words['sl st']} in first ch to form a ring, being careful not to twist."
    )
    piece.round(1, ["ch 2", f"{k} in each ch around", join], now, kind)
    plain = [s.number(piece.told([one - 1 for one in part])) for part in (front, sleeve)]
    corner = f"({k}, ch {space}, {k}) in next st"
    now = [one + 4 for one in now]
    piece.round(
        2,
        [
            "ch 2",
            f"*{k} in next {plain[0]} sts, {corner}, {k} in next {plain[1]} sts, {corner}; rep from * once more",
            join,
        ],
        now,
        kind,
    )
    for number in range(3, 3 + s.pick((1, 2, 3))):
        each = s.pick((1, 2))
        inside = f"({each} {k}, ch {space}, {each} {k})"
        words = s.pick((f"*{k} in each st to next ch-{space} sp, {inside} in ch-{space} sp; rep from * 3 more times",
                        f"[{k} in each st to ch-{space} sp, {inside} in sp] 4 times"))  # fmt: skip
        now = [one + 8 * each for one in now]
        piece.round(number, ["ch 2", words, f"{k} in each st to end", join], now, kind)


def shells(piece: Piece) -> None:
    """Rows of shells between single stitches, in every size."""
    s = piece.style
    sc, dc, skip = s.words["sc"], s.words["dc"], s.words["skip"]
    times = piece.sized(s.pick((4, 5, 6)), 2)
    now = [6 * one + 1 for one in times]
    piece.lines += ["Ch 1 does not count as a stitch.", f"Ch {s.number(piece.told([one + 1 for one in now]))}."]
    piece.row(1, [f"{sc} in 2nd ch from hook and in each ch across"], now, "any")
    shell = s.pick(
        (
            f"{skip} 2 sts, 5 {dc} in next st, {skip} 2 sts, {sc} in next st",
            f"{skip} 2, 5 {dc} in next st, {skip} 2, {sc} in next st",
        )
    )
    piece.row(
        2,
        [
            f"{sc} in first st",
            s.pick((f"*{shell}; rep from * across", f"[{shell}] {s.number(piece.told(times))} times")),
        ],
        now,
        "any",
        chain=1,
    )


def shawl(piece: Piece) -> None:
    """A triangle that grows from the middle of its top edge."""
    s = piece.style
    k, space, half = s.words["dc"], s.pick((1, 2)), 3
    piece.lines += [f"Ch 3 counts as a {k} throughout.", "Ch 4."]
    piece.row(1, [f"(2 {k}, ch {space}, 3 {k}) in 4th ch from hook"], [6], "dc")
    for number in range(2, 2 + s.pick((2, 3, 4))):
        each = s.pick((1, 2))
        half += 1 + each
        words = [f"{k} in first st", f"{k} in each st to ch-{space} sp", f"({each} {k}, ch {space}, {each} {k}) in {s.pick((f'ch-{space} sp', f'next ch-{space} sp'))}",
                 s.pick((f"{k} in each st to last st, 2 {k} in last st", f"{k} in each st across to tch, 2 {k} in top of tch"))]  # fmt: skip
        piece.row(number, words, [2 * half], "dc", chain=3)


def ribbing(piece: Piece) -> None:
    """Rows of post stitches, in every size."""
    s = piece.style
    dc = s.words["dc"]
    front, back, now = f"FP{dc}", f"BP{dc}", piece.sized(s.pick((20, 24, 30)), 4)
    piece.lines += ["Ch 2 does not count as a stitch.", f"Ch {s.number(piece.told([one + 2 for one in now]))}."]
    piece.row(1, [f"{dc} in 3rd ch from hook and in each ch across"], now, "dc")
    rib = s.pick(
        (
            f"*{front} around next st, {back} around next st; rep from * across",
            f"({front}, {back}) across",
            f"[1 {front}, 1 {back}] to end",
        )
    )
    piece.row(2, [rib], now, "any", s.pick((2, 4, 5)), chain=2)


PIECES: dict[str, tuple[Callable[[Piece], None], bool]] = {  # and whether it is made in several sizes
    "ball": (ball, False), "panel": (panel, True), "square": (square, False), "yoke": (yoke, True), "shells": (shells, True),
    "shawl": (shawl, False), "ribbing": (ribbing, True), "oval": (oval, False), "animal": (animal, False), "calls": (calls, True),
    "granny": (granny, False), "V-stitches": (v_stitches, True), "ripple": (ripple, True), "mesh": (mesh, True), "disc": (disc, False),
    "bag": (bag, False), "flower": (flower, False), "neck": (neck, True), "mitten": (mitten, True), "cable": (cable, True),
    "bobbles": (bobbles, True), "edged": (edged, False),
}  # fmt: skip


@dataclass(frozen=True)
class Drawn:
    """A drawn pattern: its text, what each of its rows makes in each size, and the line of a planted mistake (0: none)."""

    text: str
    made: tuple[tuple[int, ...], ...]
    line: int = 0
    lines: int = 0  # lines of work


def drawn(seed: int, wrong: int | None = None, by: int = 0) -> Drawn:
    """The pattern of a seed; the same for the same seed.  `wrong`: the line of work whose printed count is out `by` so many."""
    chance = Random(seed)
    name = chance.choice(sorted(PIECES))
    make, several = PIECES[name]
    sizes = chance.choice((1, 1, 3, 4, 5, 7)) if several else 1
    style = Style(chance, sizes)
    head = style.head(f"Marram {name.title()}", list(_SIZES[:sizes]) if sizes > 1 else [])
    piece = Piece(style, wrong, by)
    make(piece)
    dressed = piece.lines if wrong else style.dressed(piece.lines)
    text = "\n".join([*head, *dressed]) + "\n"
    line = text[: text.index(piece.planted)].count("\n") + 1 if piece.planted else 0
    made = tuple((row,) * sizes if isinstance(row, int) else tuple(row) for row in piece.made)
    return Drawn(text, made, line, piece.worked)
