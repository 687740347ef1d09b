"""Further pieces drawn by chance: bases, animals, rows called for again, squares of groups, V-stitches."""

from __future__ import annotations

from drawnpiece import CHAINS, Piece
from drawnstyles import ordinal


def oval(piece: Piece) -> None:
    """An oval base around both sides of a chain, and its wall."""
    s = piece.style
    k, side = s.words["sc"], s.pick((8, 10, 12))  # chains of one side
    s.parted = ", " if s.parted == ". " else s.parted
    plain, now = side - 2, 2 * side + 2
    piece.lines.append(s.pick((f"Ch {side + 1}.", f"With 4 mm hook, ch {side + 1}.")))
    back = s.pick(
        (
            "working on other side of chain",
            "working along the opposite side of the chain",
            "now work on the other side of the chain",
        )
    )
    piece.round(1, [f"{k} in 2nd ch from hook", f"{k} in next {plain} ch", f"3 {k} in last ch", back, f"{k} in next {plain} ch", f"2 {k} in last ch"], [now], "sc")  # fmt: skip
    for number in range(2, 2 + s.pick((1, 2, 3))):
        between = [] if number == 2 else [s.some(number - 2, "sc")]
        now += 6
        ends = [s.times([*between, "inc"], times, False) for times in (1, 3, 2)]
        piece.round(number, [ends[0], s.some(plain, "sc"), ends[1], s.some(plain, "sc"), ends[2]], [now], "sc")
    piece.round(
        number + 1,
        [s.pick((f"{k} in back loop of each st around", f"working in back loops only, {k} in each st around"))],
        [now],
        "sc",
    )
    piece.round(number + 2, [s.each("sc", "around")], [now], "sc", number + 4)


def animal(piece: Piece) -> None:
    """Two legs joined with chains into a body."""
    s = piece.style
    k, start, chains = s.words["sc"], s.pick((5, 6)), s.pick((1, 2, 3))
    s.parted = ", " if s.parted == ". " else s.parted
    piece.lines.append(s.pick(("LEGS (make 2)", "Legs (make two)", "Leg (make 2)")))
    piece.round(1, [f"{start} {k} in magic ring"], [start], "sc")
    piece.round(2, [s.pick((f"2 {k} in each st around", f"inc x {start}", "inc around"))], [2 * start], "sc")
    even = s.pick((2, 3, 4))
    piece.round(3, [s.each("sc", "around")], [2 * start], "sc", 2 + even)
    piece.lines.append(
        s.pick(("Fasten off the first leg. Do not fasten off the second leg.", "Fasten off first leg only."))
    )
    piece.lines.append(s.pick(("BODY", "Body")))
    total, first = 4 * start + 2 * chains, 3 + even
    joined = s.pick(
        (f"ch {chains}, join to first leg with {k} in any st", f"ch {chains}, join to the first leg with {k}")
    )
    rest = [f"{k} in next {2 * start - 1} sts of first leg", f"{k} in each of next {chains} ch" if chains > 1 else f"{k} in next ch", f"{k} in each of {2 * start} sts of second leg", f"{k} in each of next {chains} ch" if chains > 1 else f"{k} in next ch"]  # fmt: skip
    piece.round(first, [joined, *rest], [total], "sc")
    piece.round(first + 1, [s.each("sc", "around")], [total], "sc", first + 3)


def calls(piece: Piece) -> None:
    """A strip whose rows are called for again by their numbers."""
    s = piece.style
    kind = s.pick(("sc", "hdc"))
    k, chain, now = s.words[kind], CHAINS[kind], piece.sized(s.pick((20, 24, 31)), 4)
    piece.lines += [
        "Turning chain does not count as a stitch.",
        f"Ch {s.number(piece.told([one + chain for one in now]))}.",
    ]
    piece.row(1, [f"{k} in {ordinal(chain + 1)} ch from hook and in each ch across"], now, kind)
    piece.row(2, [s.each(kind, "across")], now, kind, chain=chain)
    last = 2 + s.pick((4, 5, 8))
    label = s.label(3, last, around=False)
    again = s.pick(("Rep Row 2", "Repeat Row 2", "As Row 2", "Same as Row 2", "Work as Row 2"))
    piece.work(label, [again], now, kind, [now] * (last - 2))
    now, number = [one - 2 for one in now], last + 1
    piece.row(number, [f"{k}2tog, {k} in each st to last 2 sts, {k}2tog"], now, kind, chain=chain)
    piece.row(number + 1, [s.each(kind, "across")], now, kind, chain=chain)
    times = s.pick((1, 2, 3))
    rows = [[one - 2 * cycle for one in now] for cycle in range(1, times + 1) for _ in range(2)]
    often = "once more" if times == 1 else f"{times} more times"
    again = s.pick((f"Rep Rows {number} and {number + 1} {often}", f"Repeat last 2 rows {often}"))
    piece.work(s.label(number + 2, number + 1 + 2 * times, around=False), [again], rows[-1], kind, rows)


def granny(piece: Piece) -> None:
    """A granny square of groups of three."""
    s = piece.style
    k, space, between = s.words["dc"], s.pick((1, 2, 3)), s.pick((0, 0, 1))
    join = s.pick(
        (
            f"{s.words['sl st']} to top of ch-3",
            f"join with {s.words['sl st']} in top of beg ch-3",
            f"join with a {s.words['sl st']} to top of beginning ch-3",
        )
    )
    piece.lines.append(f"Ch 3 at start of each round counts as a {k}.")
    groups = s.pick((f"(3 {k} in ring, ch {space}) 3 times", f"*3 {k} in ring, ch {space}; rep from * 2 more times"))
    piece.round(1, ["make a magic ring", f"ch 3, 2 {k} in ring, ch {space}", groups, join], [12], "dc")
    gap = f", ch {between}" if between else ""
    slipped = f"{s.words['sl st']} in next 2 sts, {s.words['sl st']} in corner sp"
    for number in range(2, 2 + s.pick((1, 2))):
        side = f"3 {k} in next {f'ch-{between} sp' if between else 'sp between groups'}{gap}" if number == 3 else ""
        corner = f"(3 {k}, ch {space}, 3 {k}) in next corner sp{gap}"
        one = ", ".join(filter(None, (corner, side)))
        begun = ", ".join(filter(None, (f"ch 3, (2 {k}, ch {space}, 3 {k}) in same sp{gap}", side)))
        piece.round(
            number,
            [slipped, begun, s.pick((f"*{one}; rep from * 2 more times", f"[{one}] 3 times")), join],
            [12 * number],
            "dc",
        )


def v_stitches(piece: Piece) -> None:
    """Rows of V-stitches, in every size."""
    s = piece.style
    dc, skip = s.words["dc"], s.words["skip"]
    times = piece.sized(s.pick((6, 8)), 2)
    now = [2 * one + 2 for one in times]
    piece.lines += [
        f"V-st: ({dc}, ch 1, {dc}) in same st.",
        f"Ch 3 counts as a {dc}.",
        f"Ch {s.number(piece.told([3 * one + 3 for one in times]))}.",
    ]
    sc = s.words["sc"]
    piece.row(1, [f"{sc} in 2nd ch from hook and in each ch across"], [3 * one + 2 for one in times], "sc")
    piece.row(2, [f"{skip} first 2 sts", "V-st in next st", f"*{skip} 2 sts, V-st in next st; rep from * to last 2 sts", f"{skip} 1 st, {dc} in last st"], now, "dc", chain=3)  # fmt: skip
    piece.row(3, ["V-st in each V-st across", f"{dc} in top of tch"], now, "dc", s.pick((3, 5)), chain=3)
