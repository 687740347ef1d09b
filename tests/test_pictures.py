"""Pictures drawn from the words: where stitches lie, the chart symbols, outlines, growth and the plan of the assembly."""

from __future__ import annotations

from math import atan2, degrees, hypot
from xml.etree import ElementTree

import pytest
from helpers import DEMO, check

from lint.pictures.diagram import diagram
from lint.pictures.layout import PlacedLayer, place
from lint.pictures.symbols import chains_between, picot, upright
from lint.pictures.tubes import cut_open
from lint.reports.page import as_page
from lint.reports.pictures import pictures
from lint.working.graph import Layer, Piece, Stitch, stitch_graph

SQUARE = """Square
US terms
Rnd 1: Ch 4, join to form a ring. Ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2, join. (12 dc)
Rnd 2: Ch 3 (counts as dc), dc in next 2 dc, *(2 dc, ch 2, 2 dc) in ch-2 sp, dc in next 3 dc; rep from * 2 times more, (2 dc, ch 2, 2 dc) in last ch-2 sp, join. (28 dc)
"""
FLAP = """Flap
US terms
Ch 7.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (6 sc)
Row 2: Ch 1, sc in each sc across, turn. (6 sc)
Row 3: Ch 1, sc2tog, sc in next 2 sc, sc2tog. (4 sc)
"""
BALL = """Ball
US terms. Worked in a spiral.
Rnd 1: 6 sc in magic ring. (6)
Rnd 2: 2 sc in each sc around. (12)
Rnd 3: (Sc in next sc, 2 sc in next sc) 6 times. (18)
Rnds 4-6: Sc in each sc around. (18)
Rnd 7: (Sc in next sc, sc2tog) 6 times. (12)
Rnd 8: Sc2tog 6 times. (6)
"""
DISC = BALL.split("Rnds 4-6")[0] + "Rnd 4: (Sc in next 2 sc, 2 sc in next sc) 6 times. (24)\n"


def drawn(text: str) -> tuple[list[Piece], dict[str, int]]:
    """The pieces of a pattern's stitch graph, and how tall each stitch is."""
    report = check(text)
    heights = {rule.key: rule.height for rule in report.book.stitches.stitches}
    return list(stitch_graph(report.pattern, report.book)), heights


def laid(text: str) -> tuple[PlacedLayer, ...]:
    """The first piece of a pattern, each layer in its place, as the report draws it."""
    pieces, heights = drawn(text)
    return place(cut_open(pieces[0], heights) or pieces[0], heights)


def svg_of(text: str) -> list[ElementTree.Element]:
    """The pictures of a pattern's report, parsed."""
    report = check(text)
    return [ElementTree.fromstring(str(picture.svg)) for picture in pictures(report, report.findings)]


def marked(svg: ElementTree.Element, sort: str) -> list[ElementTree.Element]:
    """The elements of a picture that have a class."""
    return [element for element in svg.iter() if sort in (element.get("class") or "").split()]


def test_corners_of_a_square_lie_on_its_diagonals() -> None:
    """A round with four corners is drawn as a square that stands upright."""
    last = laid(SQUARE)[-1]
    corners = [point for point, stitch in zip(last.points, last.layer.stitches, strict=True) if stitch.corner]

    assert sorted(round(degrees(atan2(-y, x))) % 360 for x, y in corners) == [45, 135, 225, 315]


def test_sides_of_a_square_are_straight() -> None:
    """What lies between two corners lies on the line between them."""
    last = laid(SQUARE)[-1]
    far = max(max(abs(x), abs(y)) for x, y in last.points)

    assert all(max(abs(x), abs(y)) == pytest.approx(far) for x, y in last.points)


def test_rounds_lie_on_rings() -> None:
    """A round without corners lies on a circle, each round farther out than the one before."""
    radii = [{round(hypot(*point), 6) for point in one.points} for one in laid(DISC)[1:]]

    assert all(len(some) == 1 for some in radii)
    assert [max(some) for some in radii] == sorted(max(some) for some in radii)


def test_a_plain_stitch_stands_straight_over_its_place() -> None:
    """Rows of one stitch in each stitch make columns, whichever way the row is worked."""
    layers = laid(FLAP)
    for one in layers[1:3]:
        for point, stitch in zip(one.points, one.layer.stitches, strict=True):
            ((layer, at),) = stitch.parents
            assert point[0] == pytest.approx(layers[layer].points[at][0])


def test_a_decrease_stands_over_both_its_places() -> None:
    """Two stitches together have two places, and lie between them."""
    layers = laid(FLAP)
    first, point = layers[3].layer.stitches[0], layers[3].points[0]
    places = [layers[layer].points[at][0] for layer, at in first.parents]

    assert len(places) == 2
    assert min(places) <= point[0] <= max(places)


def test_rows_start_on_the_right_and_turn() -> None:
    """Row 1 runs from right to left and Row 2 back (reading order of right-handers' charts, as teaching sites tell it)."""
    _, one, two, _ = laid(FLAP)

    assert one.points[0][0] > one.points[-1][0]
    assert two.points[0][0] < two.points[-1][0]


@pytest.mark.parametrize(
    ("kind", "height", "strokes"),
    [("sc", 1, 2), ("hdc", 2, 2), ("dc", 3, 3), ("tr", 4, 4), ("dtr", 5, 5), ("trtr", 6, 6)],
)
def test_slashes_tell_the_yarn_overs(kind: str, height: int, strokes: int) -> None:
    """A plus for sc, a bare T for hdc, then a slash for each yarn over more (trade chart symbols, as described by makers' sites)."""
    assert upright(kind, height, [(0.0, 0.0)], (0.0, -2.0)).count("M") == strokes


def test_a_space_has_an_oval_for_each_chain() -> None:
    """A ch-5 space is five ovals."""
    assert chains_between((0.0, 0.0), (5.0, 0.0), (2.5, -1.0), 5).count("M") == 5


def test_yarns_have_their_own_colours() -> None:
    """Rounds in different yarns are drawn in different colours, told apart in words too."""
    text = SQUARE.replace("Rnd 1: ", "Rnd 1: With A, ").replace("Rnd 2: ", "Rnd 2: Join B with sl st in any ch-2 sp; ")
    report = check(text)
    (picture,) = pictures(report, report.findings)

    assert [name for name, _ in picture.yarns] == ["A", "B"]
    assert len({colour for _, colour in picture.yarns}) == 2


def test_the_faulty_round_is_marked() -> None:
    """The stitches of a round that differs are marked, and bear the note's number."""
    (svg,) = svg_of(
        FLAP.replace(
            "Row 2: Ch 1, sc in each sc across, turn. (6 sc)", "Row 2: Ch 1, sc in each sc across, turn. (7 sc)"
        )
    )

    assert marked(svg, "halo")
    assert "2 (" in " ".join(element.text or "" for element in marked(svg, "noted"))


def test_places_left_over_are_circled() -> None:
    """A place that nothing was worked into is shown on the row below."""
    (svg,) = svg_of(
        FLAP.replace("Row 3: Ch 1, sc2tog, sc in next 2 sc, sc2tog. (4 sc)", "Row 3: Ch 1, sc in next 5 sc. (5 sc)")
    )

    assert len(marked(svg, "left")) == 1


def test_a_large_piece_is_an_outline() -> None:
    """Beyond two thousand stitches a piece is drawn as its outline, and it says so."""
    report = check(
        "Panel\nUS terms\nCh 61.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (60 sc)\nRows 2-50: Ch 1, sc in each sc across, turn. (60 sc)\n"
    )
    (picture,) = pictures(report, report.findings)

    assert 'class="outline"' in picture.svg
    assert "Too many stitches" in " ".join(picture.caption)


def test_growth_is_plotted_round_by_round() -> None:
    """A piece in rounds has a plot of its counts, with the line of a flat circle: 6 sc more a round (makers' rule of thumb)."""
    report = check(BALL)
    (picture,) = pictures(report, report.findings)
    svg = ElementTree.fromstring(str(picture.growth))
    titles = [title.text for title in svg.iter() if title.tag.endswith("title")][1:]

    assert titles == [f"Rnd {n}: {count}" for n, count in enumerate([6, 12, 18, 18, 18, 18, 12, 6], 1)]
    assert "lies flat" in "".join(svg.itertext())


def test_pieces_that_look_alike_are_drawn_once() -> None:
    """Two pieces worked alike have one picture."""
    rows = FLAP.split("US terms\n")[1]

    assert len(svg_of(f"Pair\nUS terms\n\nLEFT FLAP\n{rows}\nRIGHT FLAP\n{rows}")) == 1


def test_the_demo_blanket_is_laid_out() -> None:
    """Nine strips: five of six hexagons, four of five with a half at each end."""
    report = check((DEMO / "inkberry-hexagon-blanket.txt").read_text(encoding="utf-8"))
    svg = ElementTree.fromstring(str(pictures(report, report.findings)[-1].svg))

    assert len(marked(svg, "motif-0")) == 50
    assert len(marked(svg, "motif-1")) == 8


@pytest.mark.parametrize(
    ("words", "rows"),
    [
        ("Sew the squares together, 3 across and 4 down.", [3, 3, 3, 3]),
        ("Join the squares in 4 rows of 5 squares.", [5, 5, 5, 5]),
        ("Lay the squares out in rows of 2, 3 and 2.", [2, 3, 2]),
    ],
)
def test_layouts_in_words(words: str, rows: list[int]) -> None:
    """The plan of the assembly has as many motifs in each row as the words say."""
    svg = svg_of(
        f"{SQUARE.replace('Square', 'Throw', 1).replace('Rnd 1', 'SQUARE (make 20)' + chr(10) + 'Rnd 1')}\nASSEMBLY\n{words}\n"
    )[-1]

    assert svg.get("class") == "plan"
    assert len(marked(svg, "motif")) == sum(rows)
    assert len(marked(svg, "label")) == len(rows)


def test_hostile_names_are_inert() -> None:
    """A part's name with markup in it is text in the picture."""
    page = as_page(check(FLAP.replace("Flap", "</title><script>alert(1)</script>", 1)))

    assert "<script" not in page


def test_a_row_that_was_not_recomputed_breaks_the_drawing() -> None:
    """Rows on an edge that is not known are drawn by themselves, and the caption says so."""
    report = check(
        FLAP.replace("Row 2: Ch 1, sc in each sc across, turn. (6 sc)", "Row 2: Ch 1, wiggle in every blorp, turn.")
    )
    found = pictures(report, report.findings)

    assert all(len(picture.svg) for picture in found)
    assert not any("Row 2" in picture.svg for picture in found)


OVAL = """Mat
US terms
Ch 8.
Rnd 1: 3 sc in 2nd ch from hook, sc in next 5 ch, 3 sc in last ch; working along other side of foundation ch, sc in next 5 ch, join with sl st in first sc. (16 sc)
"""
LOOPS = """Loops
US terms
Ch 5, join with sl st to form a ring.
Rnd 1: Ch 1, 12 sc in ring, join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, sc in first sc, ch 6, sk next 2 sc, *sc in next sc, ch 6, sk next 2 sc; rep from * around, join with sl st in first sc. (4 sc, 4 ch-6 sps)
Rnd 3: Ch 1, 6 sc in each ch-6 sp around, join with sl st in first sc. (24 sc)
"""


def test_both_sides_of_a_chain_are_drawn_on_their_own_side() -> None:
    """Round a foundation chain, the stitches of the first side stand over it, those of the other side under it."""
    base, first = laid(OVAL)
    sides = [
        (point[1], base.points[stitch.parents[0][1]])
        for point, stitch in zip(first.points, first.layer.stitches, strict=False)
    ]

    assert all(y < 0 for y, _ in sides[3:8]) and all(y > 0 for y, _ in sides[11:16])
    for (x, _), (_, (chain, _)) in zip(first.points[3:8] + first.points[11:16], sides[3:8] + sides[11:16], strict=True):
        assert abs(x - chain) < 1.5


def test_stitches_in_a_loop_stand_evenly_about_its_middle() -> None:
    """Six stitches in a chain loop lie as far to one side of its middle as to the other, in every loop of the round."""
    *_, loops, last = laid(LOOPS)
    for start in range(0, 24, 6):
        (layer, at) = last.layer.stitches[start].parents[0]
        assert last.layer.stitches[start + 5].parents == ((layer, at),)
        middle = atan2(*reversed(loops.points[at]))
        group = sum(x for x, _ in last.points[start : start + 6]), sum(y for _, y in last.points[start : start + 6])
        assert abs(degrees(atan2(group[1], group[0]) - middle)) % 360 == pytest.approx(0, abs=2)


@pytest.mark.parametrize(
    ("words", "loop"),
    [
        ("sc in back loop only of each st across", "back"),
        ("sc in FLO of each st across", "front"),
        ("sc in 3rd loop of each st across", "third"),
        ("sc in each st in back loops only across", "back"),
        ("sc in each st across", None),
    ],
)
def test_single_loops_are_kept(words: str, loop: str | None) -> None:
    """A stitch knows the one loop that its words name, wherever in the clause they stand."""
    pieces, _ = drawn(FLAP.replace("Row 2: Ch 1, sc in each sc across", f"Row 2: Ch 1, {words}"))

    assert {stitch.loop for stitch in pieces[0].layers[2].stitches} == {loop}


def test_a_post_stitch_has_a_hook_at_its_foot() -> None:
    """Front and back post stitches differ from a plain one, and from each other, by the foot (chart symbols, from memory)."""
    plain, front, back = (upright(kind, 3, [(0.0, 0.0)], (0.0, -2.0)) for kind in ("dc", "FPdc", "BPdc"))

    assert front.count("M") == back.count("M") == plain.count("M") + 1
    assert front != back


@pytest.mark.parametrize(
    ("words", "chains", "after"),
    [
        ("(3 sc, picot, 3 sc) in each ch-6 sp around", 4, 3),
        ("(3 sc, ch 3, sl st in 3rd ch from hook, 3 sc) in each ch-6 sp around", 3, 3),
    ],
)
def test_picots_stand_on_the_stitch_they_follow(words: str, chains: int, after: int) -> None:
    """Each picot of a round is kept with its place and its chains, and is drawn as so many ovals."""
    text = LOOPS.replace("6 sc in each ch-6 sp around", words)
    text = text.replace("US terms\n", "US terms\nSpecial stitches\nPicot: ch 4, sl st in 4th ch from hook.\n\nMOTIF\n")
    pieces, _ = drawn(text)
    picots = pieces[0].layers[-1].picots

    assert [(one.after, one.chains) for one in picots] == [(after + 6 * n, chains) for n in range(4)]
    assert picot((0.0, 0.0), (0.0, -1.0), chains).count("M") == chains


def test_a_note_on_an_abbreviation_marks_no_stitches() -> None:
    """Only notes on counts and on what is worked are shown on the stitches."""
    (svg,) = svg_of(SQUARE.replace("US terms\n", "US terms\nAbbreviations\nch = chain\n"))

    assert not marked(svg, "halo") and not marked(svg, "noted")


def test_labels_stand_clear_of_the_strokes() -> None:
    """The number of a round stands at least a third of a stitch from every stitch of its round."""
    for text in (SQUARE, BALL, LOOPS):
        (svg,) = svg_of(text)
        layers = laid(text)
        for label in marked(svg, "label"):
            x, y = float(label.get("x")) / 100, float(label.get("y")) / 100 - 0.22
            near = min(hypot(x - px, y - py) for one in layers[1:] for px, py in one.points)
            assert near > 0.33, (text[:6], label.text)


@pytest.mark.parametrize(
    ("words", "asks"),
    [
        ("Lay out four rows of five hexagons.", True),
        ("Row 1: 5 hexagons. Row 2: 4 hexagons.", False),
        ("Strip 1: 5 hexagons\nStrip 2: 1 half hexagon, 4 hexagons, 1 half hexagon", False),
    ],
)
def test_hexagons_that_do_not_interlock_are_asked_about(words: str, asks: bool) -> None:
    """Hexagons lie between those of the next row; where the rows as worded don't let them, the picture asks."""
    text = f"Throw\nUS terms\n\nHEXAGON (make 20)\nRnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each sc. (12 sc)\n\nAssembly\n{words}\n"
    report = check(text)
    plans = [one for one in pictures(report, report.findings) if one.title == "Assembly"]

    assert not asks or plans
    assert all(("half to the side" in " ".join(one.caption)) is asks for one in plans)


def test_a_ring_among_the_stitches_of_an_edge_is_drawn_over() -> None:
    """An edge that is left to work on may have a ring among its stitches: the stitch in it stands on its place."""
    edge = Layer("", None, False, (Stitch("sc"), Stitch("ring"), Stitch("sc")))
    row = Layer("Row 1", None, False, tuple(Stitch("dc", ((0, at),)) for at in range(3)))
    svg = str(diagram(Piece((), (edge, row)), {"sc": 1, "dc": 3}, "Edge"))
    assert svg.count("<path") and "inf" not in svg


_CUFF = "CUFF\nCh 32, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. (32 sc)\n" + "".join(
    f"Rnd {n}: Ch 1, sc in each st around, join. (32 sc)\n" for n in range(2, 9)
)
_MAT = "MAT\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: Inc in each st. (12)\n" + "".join(
    f"Rnd {n + 2}: (Sc in next {n} sts, inc) 6 times. ({6 * n + 12})\n" for n in range(1, 6)
)
_BALL = "BALL\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: Inc in each st. (12)\nRnds 3-6: Sc in each st. (12)\nRnd 7: (Dec) 6 times. (6)\n"
_FLOWER = "FLOWER\nRnd 1: 8 sc in magic ring. (8)\nRnd 2: (Sc, ch 9) in each st around. (8)\nRnd 3: 12 dc in each ch-9 sp. (96)\nRnd 4: Sc in each st. (96)\n"


@pytest.mark.parametrize(("rounds", "opened"), [(_CUFF, True), (_BALL, True), (_MAT, False), (_FLOWER, False)])
def test_what_does_not_lie_flat_is_drawn_cut_open(rounds: str, opened: bool) -> None:
    """The rounds of a tube and of a ball lie over each other as rows; those of a disc and of a flower are left round."""
    report = check(f"US terms\n{rounds}")
    (picture,) = pictures(report, report.findings)
    assert any("cut open" in line for line in picture.caption) is opened
    assert "rounds" in picture.svg.split("</title>")[0]
