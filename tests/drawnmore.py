"""More pieces drawn by chance: ripples, mesh, discs, bags, flowers, necks, mittens, crossed cables, bobbles, edgings."""

from __future__ import annotations

from drawnpiece import Piece
from drawnstyles import ordinal


def ripple(piece: Piece) -> None:
    """Chevrons: so many up, an increase, so many down, a decrease; every row is as long as the first."""
    s = piece.style
    kind = s.pick(("sc", "dc"))
    k, leg, chain = s.words[kind], s.pick((3, 4, 5)), {"sc": 1, "dc": 2}[kind]
    times = piece.sized(s.pick((3, 4, 5)), 1)
    wide = 2 * leg + 3  # one chevron: the increase of three in one, two legs less the two worked together at its foot
    now = [one * wide for one in times]
    piece.lines += [
        f"Turning ch {chain} does not count as a stitch.",
        f"Ch {s.number(piece.told([one + chain for one in now]))}.",
    ]
    piece.row(1, [f"{k} in {ordinal(chain + 1)} ch from hook and in each ch across"], now, kind)
    up, down = s.some(leg, kind), s.some(leg - 1, kind)
    foot = s.pick((f"{k}3tog", f"{k}3tog over next 3 sts", f"{k} next 3 sts together"))
    body = s.pick(
        (f"{up}, 3 {k} in next st, {down}, {foot}",)
    )  # uses leg + 1 + leg - 1 + 3, makes leg + 3 + leg - 1 + 1
    number = s.number(piece.told(times))
    words = s.pick(
        (
            f"*{body}; rep from * across",
            f"[{body}] {number} times",
            f"*{body}; repeat from * to end",
            f"({body}) across",
        )
    )
    piece.row(2, [words], now, kind, chain=chain)
    piece.row(3, [words], now, kind, 2 + s.pick((2, 4)), chain=chain)


def mesh(piece: Piece) -> None:
    """Open squares: a double crochet, a chain, one passed over; counted in double crochets."""
    s = piece.style
    dc, skip = s.words["dc"], s.words["skip"]
    squares = piece.sized(s.pick((10, 12, 15)), 2)
    now = [one + 1 for one in squares]
    plain = [2 * one + 1 for one in squares]
    piece.lines += [
        s.pick((f"Ch 3 at start of row counts as a {dc}.", f"The turning ch-3 counts as 1 {dc} throughout.")),
        f"Ch {s.number(piece.told([one + 2 for one in plain]))}.",
    ]
    piece.row(1, [f"{dc} in 4th ch from hook and in each ch across"], plain, "dc")
    ways = (
        f"*ch 1, {skip} next st, {dc} in next st; rep from * across",
        f"[ch 1, {skip} 1 st, 1 {dc} in next {dc}] {s.number(piece.told(squares))} times",
        f"*ch 1, {skip} 1, {dc} in next {dc}; rep from * to end, working last {dc} in top of tch",
    )
    piece.row(2, [s.pick(ways)], now, "dc", chain=3)
    again = (
        f"*ch 1, {skip} next ch-1 sp, {dc} in next {dc}; rep from * across",
        f"*ch 1, {dc} in next {dc}; rep from * to end",
        f"[ch 1, {skip} ch-1 sp, {dc} in next {dc}] {s.number(piece.told(squares))} times",
    )
    last = s.pick((3, 4, 6))
    piece.row(3, [s.pick(again)], now, "dc", last, chain=3)
    filled = (f"{dc} in each ch-1 sp and {dc} across", f"*{dc} in next ch-1 sp, {dc} in next {dc}; rep from * across")
    piece.row(last + 1, [s.pick(filled)], plain, "dc", chain=3)


def disc(piece: Piece) -> None:
    """A flat circle in joined rounds whose beginning chain counts, or does not."""
    s = piece.style
    kind = s.pick(("dc", "hdc"))
    k, ss, counts = s.words[kind], s.words["sl st"], kind == "dc"
    start = {"dc": 12, "hdc": 8}[kind]
    chain = {"dc": 3, "hdc": 2}[kind]
    join = f"{ss} in top of beg ch-3" if counts else s.joining.format(ss=ss, k=k)
    piece.lines.append(f"Beginning ch {chain} {'counts as first ' + k if counts else 'does not count as a stitch'}.")
    ring = s.pick(("make a magic ring", f"ch 4, {ss} in first ch to form a ring"))
    first = f"{start - 1 if counts else start} {k} in ring"
    piece.round(1, [ring, f"ch {chain}", first, join], [start], kind)
    same = [f"{k} in same st"] if counts else []
    every = s.pick((f"2 {k} in each st around", f"2 {k} in each {k} around"))
    piece.round(2, [f"ch {chain}", *same, every if not counts else every.replace(f"2 {k} in each", f"2 {k} in each rem").replace("each rem", "each"), join], [2 * start], kind)  # fmt: skip
    for number in range(3, 3 + s.pick((1, 2, 3))):
        plain = number - 2
        if counts:
            rest = f"*{k} in next {plain} sts, 2 {k} in next st; rep from * to last {plain - 1} sts, {k} in last {plain - 1} sts" if plain > 1 else f"*{k} in next st, 2 {k} in next st; rep from * around"  # fmt: skip
            rest = f"[2 {k} in next st, {k} in next {plain} sts] {start - 1} times, 2 {k} in next st" + (f", {k} in next {plain - 1} sts" if plain > 1 else "")  # fmt: skip
            words = [f"ch {chain}", rest]
        else:
            words = [f"ch {chain}", s.times([s.some(plain, kind), s.more(kind)], start, True)]
        piece.round(number, [*words, join], [start * (plain + 2)], kind)


def bag(piece: Piece) -> None:
    """A tube with handles: chains over stitches that are passed over, worked into in the next round."""
    s = piece.style
    k, skip = s.words["sc"], s.words["skip"]
    s.parted = ", " if s.parted == ". " else s.parted
    quarter, hole, extra = s.pick((10, 12, 15)), s.pick((6, 8)), s.pick((4, 8, 12))
    total = 2 * (2 * quarter + hole)
    piece.lines.append(
        s.pick(
            (
                f"Ch {total}, join with {s.words['sl st']} in first ch, being careful not to twist.",
                f"Ch {total} and join with {s.words['sl st']} to first ch to form a ring. Do not twist.",
            )
        )  # fmt: skip
    )
    piece.round(1, [f"{k} in each ch around"], [total], "sc")
    even = s.pick((3, 5, 8))
    piece.round(2, [s.each("sc", "around")], [total], "sc", 1 + even)
    now = total - 2 * hole + 2 * (hole + extra)
    number = 2 + even
    handle = f"ch {hole + extra}, {skip} next {hole} sts"
    words = [s.some(quarter, "sc"), handle, s.some(2 * quarter, "sc"), handle, s.some(quarter, "sc")]
    piece.lines.append(s.pick(("HANDLES", "Handles")))
    piece.round(number, words, [total - 2 * hole], "sc", counted=False)
    over = s.pick((f"{k} in each st and ch around", f"{k} in each {k} and in each ch around"))
    piece.round(number + 1, [over], [now], "sc")
    piece.round(number + 2, [s.each("sc", "around")], [now], "sc", number + 3)


def flower(piece: Piece) -> None:
    """A middle and petals of several heights, one petal in each space or stitch."""
    s = piece.style
    sc, hdc, dc, ss, skip = (s.words[one] for one in ("sc", "hdc", "dc", "sl st", "skip"))
    s.parted = ", " if s.parted == ". " else s.parted
    petals = s.pick((5, 6, 8))
    wide = s.pick((1, 2, 3))
    made = 4 + wide
    inside = f"{sc}, {hdc}, {wide} {dc}, {hdc}, {sc}" if wide > 1 else f"{sc}, {hdc}, {dc}, {hdc}, {sc}"
    piece.round(1, ["make a magic ring", "ch 1 (does not count as a st)", f"{2 * petals} {sc} in ring", f"{ss} in first {sc}"], [2 * petals], "sc")  # fmt: skip
    ways = (
        f"*({inside}) in next st, {ss} in next st; rep from * around",
        f"[({inside}) in next {sc}, {ss} in next {sc}] {petals} times",
    )
    loops = (
        f"*ch 3, {skip} 1 st, {ss} in next st; rep from * around",
        f"[ch 3, {skip} next st, {ss} in next st] {petals} times",
    )
    if s.chance.random() < 0.5:
        piece.round(2, [s.pick(ways)], [petals * made], "any")
        return
    piece.round(2, [s.pick(loops)], [0], "any", counted=False)
    piece.round(3, [s.pick((f"({inside}) in each ch-3 sp around", f"*({inside}) in next ch-3 sp; rep from * around", f"({inside}) in each ch-3 loop around"))], [petals * made], "any")  # fmt: skip


def neck(piece: Piece) -> None:
    """A panel divided for the neck: one shoulder, stitches left in the middle, the other shoulder."""
    s = piece.style
    kind = s.pick(("sc", "hdc"))
    k, chain = s.words[kind], {"sc": 1, "hdc": 2}[kind]
    s.parted = ", " if s.parted == ". " else s.parted
    shoulder, middle = piece.sized(s.pick((8, 10, 12)), 2), piece.sized(s.pick((10, 12)), 2)
    now = [2 * one + other for one, other in zip(shoulder, middle, strict=True)]
    one, between = s.number(piece.told(shoulder)), s.number(piece.told(middle))
    piece.lines += [
        f"Ch {chain} does not count as a stitch.",
        f"Ch {s.number(piece.told([each + chain for each in now]))}.",
    ]
    piece.row(1, [f"{k} in {ordinal(chain + 1)} ch from hook and in each ch across"], now, kind)
    piece.row(2, [s.each(kind, "across")], now, kind, 4, chain=chain)
    piece.lines.append(s.pick(("First shoulder", "FIRST SHOULDER", "Shape first shoulder")))
    first = s.pick((f"{k} in first {one} sts, leave remaining sts unworked", f"{k} in next {one} sts, leave remaining sts unworked",
                    f"{k} in each of first {one} sts; leave the rest unworked"))  # fmt: skip
    piece.row(5, [first], shoulder, kind, chain=chain)
    piece.row(6, [s.each(kind, "across")], shoulder, kind, 7, chain=chain)
    piece.lines += ["Fasten off.", s.pick(("Second shoulder", "SECOND SHOULDER", "Shape second shoulder"))]
    s.turns_first = False
    second = s.pick((f"{s.words['skip']} next {between} sts of Row 4, join yarn in next st", f"{s.words['skip']} center {between} unworked sts of Row 4, join yarn in next st"))  # fmt: skip
    piece.row(5, [second, f"ch {chain}", f"{k} in same st and in each st to end"], shoulder, kind)
    piece.row(6, [s.each(kind, "across")], shoulder, kind, 7, chain=chain)
    piece.lines.append("Fasten off.")


def mitten(piece: Piece) -> None:
    """A tube with a gusset between two markers, whose stitches are left for the thumb."""
    s = piece.style
    k = s.words["sc"]
    s.parted = ", " if s.parted == ". " else s.parted
    now = piece.sized(s.pick((24, 28)), 4)
    piece.lines.append(f"Ch {s.number(piece.told(now))}, join with {s.words['sl st']} in first ch.")
    piece.round(1, [f"{k} in each ch around"], now, "sc")
    piece.round(2, [s.each("sc", "around")], now, "sc", 4)
    piece.lines.append(s.pick(("Thumb gusset", "THUMB GUSSET")))
    half = [one // 2 for one in now]
    number, wide = 5, 1
    for _ in range(s.pick((1, 2, 3))):
        before = s.number(piece.told([one - 1 for one in half]))
        inside = (
            s.pick((f"2 {k} in next st, {k} in next {wide - 2} sts, 2 {k} in next st",))
            if wide > 2
            else f"3 {k} in next st"
        )
        now = [one + 2 for one in now]
        wide += 2
        rest = s.pick((f"{k} in each st to end", f"{k} in each st around", f"{k} to end"))
        piece.round(number, [f"{k} in first {before} sts", inside, rest], now, "sc")
        number += 1
    before = s.number(piece.told([one - 1 for one in half]))
    now = [one - wide + 1 for one in now]
    left = s.pick((f"ch 1, {s.words['skip']} next {wide} sts for thumb", f"ch 1, {s.words['skip']} {wide} sts"))
    piece.round(
        number,
        [f"{k} in first {before} sts", left, f"{k} in each st to end"],
        [one - 1 for one in now],
        "sc",
        counted=False,
    )
    piece.round(number + 1, [f"{k} in each st and ch around"], now, "sc")


def cable(piece: Piece) -> None:
    """Rows of crossed post stitches on a ground of double crochet."""
    s = piece.style
    dc, skip = s.words["dc"], s.words["skip"]
    crosses = piece.sized(s.pick((3, 4)), 1)
    now = [6 * one + 2 for one in crosses]
    number = s.number(piece.told(crosses))
    piece.lines += [
        "Ch 2 at beginning of row does not count as a stitch.",
        f"Ch {s.number(piece.told([one + 2 for one in now]))}.",
    ]
    piece.row(1, [f"{dc} in 3rd ch from hook and in each ch across"], now, "dc")
    cross = f"{skip} next 2 sts, FP{dc} around each of next 2 sts, FP{dc} around each of 2 skipped sts"
    cross = s.pick((cross, f"{skip} 2 sts, FP{dc} around next 2 sts, working in front FP{dc} around 2 skipped sts"))
    body = f"{dc} in next 2 sts, {cross}"
    piece.row(2, [s.pick((f"*{body}; rep from * to last 2 sts, {dc} in last 2 sts", f"[{body}] {number} times, {dc} in last 2 sts"))], now, "any", chain=2)  # fmt: skip
    back = f"{dc} in next 2 sts, BP{dc} around next 4 sts"
    piece.row(3, [s.pick((f"*{back}; rep from * to last 2 sts, {dc} in last 2 sts", f"[{back}] {number} times, {dc} in last 2 sts"))], now, "any", chain=2)  # fmt: skip


def bobbles(piece: Piece) -> None:
    """Bobbles of the pattern's own between single crochets; each is one stitch."""
    s = piece.style
    sc, dc = s.words["sc"], s.words["dc"]
    s.parted = ", " if s.parted == ". " else s.parted
    times = piece.sized(s.pick((4, 5, 6)), 1)
    plain = s.pick((2, 3, 5))
    now = [one * (plain + 1) + plain for one in times]
    number, name = s.number(piece.told(times)), s.pick(("bobble", "bob", "BO", "popcorn"))
    piece.lines.append(s.pick((f"{name}: 5 {dc} in same st, leaving last loop of each on hook, yo, draw through all loops on hook.",
                               f"Special stitch: {name} = work 5 {dc} in the next st, holding back last loop of each, yo and pull through all 6 loops.")))  # fmt: skip
    piece.lines += ["Ch 1 does not count as a stitch.", f"Ch {s.number(piece.told([one + 1 for one in now]))}."]
    piece.row(1, [f"{sc} in 2nd ch from hook and in each ch across"], now, "sc")
    run = s.some(plain, "sc")
    body = f"{run}, {name} in next st"
    piece.row(2, [s.pick((f"*{body}; rep from * to last {plain} sts, {sc} in last {plain} sts", f"[{body}] {number} times, {sc} in last {plain} sts",
                          f"{run}, *{name} in next st, {run}; rep from * to end"))], now, "any", chain=1)  # fmt: skip
    piece.row(3, [s.each("sc", "across")], now, "sc", 4, chain=1)


def edged(piece: Piece) -> None:
    """A square in rows with a border along its four sides, three in each corner."""
    s = piece.style
    k, ss = s.words["sc"], s.words["sl st"]
    s.parted = ", " if s.parted == ". " else s.parted
    side = s.pick((15, 18, 21))
    piece.lines += ["Ch 1 does not count as a stitch.", f"Ch {side + 1}."]
    piece.row(1, [f"{k} in 2nd ch from hook and in each ch across"], [side], "sc")
    piece.row(2, [s.each("sc", "across")], [side], "sc", side, chain=1)
    piece.lines.append(s.pick(("BORDER", "Border", "Edging")))
    along = side - 2
    ends = s.pick((f"{k} in end of each of next {along} rows", f"{k} evenly along side, working {along} {k}", f"work {along} {k} evenly along row ends"))  # fmt: skip
    words = ["ch 1", f"3 {k} in first st", f"{k} in next {along} sts", f"3 {k} in last st", ends, f"working along foundation ch, 3 {k} in first ch",
             f"{k} in next {along} ch", f"3 {k} in last ch", ends, f"{ss} in first {k}"]  # fmt: skip
    total = 4 * along + 12
    piece.round(1, words, [total], "sc")
    corner = s.pick(
        (f"3 {k} in center st of corner", f"3 {k} in middle {k} of 3-{k} corner", f"3 {k} in 2nd {k} of corner")
    )
    piece.round(2, ["ch 1", s.pick((f"{k} in each st around, working {corner.replace('of corner', 'of each corner').replace('3-' + k + ' corner', 'each 3-' + k + ' corner')}",)), f"{ss} in first {k}"], [total + 8], "sc")  # fmt: skip
