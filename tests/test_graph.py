"""The stitch graph, refereed by networkx: what is flat in the hand is planar, and no stitch floats."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise

import networkx as nx
import pytest
from helpers import Laid, check, counts, lay_rows

CIRCLE = """Circle

CIRCLE

Ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 11 dc in ring; join with sl st in top of beg ch-3. (12 dc)
Rnd 2: Ch 3, dc in same place as join, 2 dc in each of next 11 dc; join with sl st in top of beg ch-3. (24 dc)
Rnd 3: Ch 3, 2 dc in next dc, *dc in next dc, 2 dc in next dc; rep from * 10 times more; join with sl st in top of beg ch-3. (36 dc)
"""
SPIRAL_BALL = """Ball
Worked in a continuous spiral; do not join.

BALL

Make a magic ring.
Rnd 1: 6 sc in ring. (6 sc)
Rnd 2: 2 sc in each sc around. (12 sc)
Rnd 3: Sc in each sc around. (12 sc)
Rnd 4: *Sc in next sc, sc2tog over next 2 sc; rep from * around. (8 sc)
"""
SQUARE = """Square

SQUARE

Ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join with sl st in top of beg ch-3. (12 dc, 4 ch-2 sps)
Rnd 2: Ch 3, dc in each of next 2 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, *dc in each of next 3 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * twice more; join with sl st in top of beg ch-3. (28 dc, 4 ch-2 sps)
Rnd 3: Ch 3, dc in each of next 4 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, *dc in each of next 7 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * twice more, dc in each of last 2 dc; join with sl st in top of beg ch-3. (44 dc, 4 ch-2 sps)
"""
GRANNY = """Granny

GRANNY

Ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join with sl st in top of beg ch-3. (12 dc, 4 ch-2 sps)
Rnd 2: Sl st in each of next 2 dc and in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * twice more; join with sl st in top of beg ch-3. (24 dc, 4 ch-2 sps, 4 ch-1 sps)
"""
STRIP = """Strip

STRIP

Ch 14.
Row 1: Dc in 4th ch from hook (3 skipped ch count as dc) and in each ch across. (12 dc)
Row 2: Ch 3 (counts as dc), turn, dc in each of next 10 dc, dc in top of turning ch. (12 dc)
Row 3: Ch 3 (counts as dc), turn, dc in each of next 10 dc, dc in top of turning ch. (12 dc)
Row 4: Ch 3 (counts as dc), turn, dc in each of next 10 dc, dc in top of turning ch. (12 dc)
"""
TRIANGLE = """Triangle

TRIANGLE

Ch 13.
Row 1: Sc in 2nd ch from hook and in each ch across. (12 sc)
Row 2: Ch 1 (does not count as a st), turn, sc2tog over first 2 sc, sc in each of next 8 sc, sc2tog over last 2 sc. (10 sc)
Row 3: Ch 1 (does not count as a st), turn, 2 sc in first sc, sc in each of next 8 sc, 2 sc in last sc. (12 sc)
"""
TUBE = """Tube
Worked in a continuous spiral; do not join.

TUBE

Make a magic ring.
Rnd 1: 9 sc in ring. (9 sc)
Rnd 2: Sc in each sc around. (9 sc)
Rnd 3: Sc in each sc around. (9 sc)
Rnd 4: Sc in each sc around. (9 sc)
"""
FLAT = {
    "circle": CIRCLE,
    "ball": SPIRAL_BALL,
    "square": SQUARE,
    "granny": GRANNY,
    "strip": STRIP,
    "triangle": TRIANGLE,
    "tube": TUBE,
}
ALL = pytest.mark.parametrize("name", FLAT)


def graph_of(rows: list[Laid], foundation: bool = True) -> nx.Graph:
    """Every node beside its neighbours in its row and joined to the places that it was worked into."""
    graph = nx.Graph()
    for row in rows[0 if foundation else 1 :]:
        graph.add_nodes_from(map(id, row.nodes))
        graph.add_edges_from((id(one), id(other)) for one, other in pairwise(row.nodes))
        if row.circular and len(row.nodes) > 2:
            graph.add_edge(id(row.nodes[-1]), id(row.nodes[0]))
        graph.add_edges_from(
            (id(node), id(parent)) for node in row.nodes for parent in node.parents if foundation or row is not rows[1]
        )
    return graph


def with_edge_hub(graph: nx.Graph, rows: list[Laid]) -> nx.Graph:
    """The graph with one more node that touches all of the last row: planar only if that row is the outer edge."""
    hubbed = graph.copy()
    hubbed.add_edges_from(("hub", id(node)) for node in rows[-1].nodes)
    return hubbed


def stitches(row: Laid) -> list:
    """A row's stitches: its nodes without spaces, rings and single chains."""
    return [node for node in row.nodes if node.kind not in ("space", "ring", "ch")]


@ALL
def test_flat_work_is_planar(name: str) -> None:
    """Flat work can be drawn without crossings, and its last row all round the outside."""
    rows = lay_rows(FLAT[name])

    assert nx.check_planarity(with_edge_hub(graph_of(rows), rows))[0]


@ALL
def test_work_hangs_together(name: str) -> None:
    """Every stitch and space can be reached from every other: nothing floats."""
    assert nx.is_connected(graph_of(lay_rows(FLAT[name])))


@ALL
def test_planarity_would_notice_a_crossing(name: str) -> None:
    """Two stitches of the last row exchanged in their places leave work that no longer lies flat."""
    rows = lay_rows(FLAT[name])
    graph = with_edge_hub(graph_of(rows), rows)
    last = [node for node in rows[-1].nodes if node.parents]
    one, other = last[1], last[len(last) // 2]
    graph.remove_edges_from([(id(one), id(one.parents[0])), (id(other), id(other.parents[0]))])
    graph.add_edges_from([(id(one), id(other.parents[0])), (id(other), id(one.parents[0]))])

    assert not nx.check_planarity(graph)[0]


@ALL
def test_stitches_are_the_sum_of_the_counts(name: str) -> None:
    """The graph has as many stitches as the rows' counts together."""
    rows = lay_rows(FLAT[name])
    report = check(FLAT[name])

    assert sum(counts(report)) == sum(len(stitches(row)) for row in rows)
    assert sum(counts(report)) == report.ledger.stitches


@ALL
def test_every_parent_lies_in_the_row_below(name: str) -> None:
    """A stitch is worked into the row below its own, into one place unless it is a decrease."""
    rows = lay_rows(FLAT[name])
    for below, row in pairwise(rows):
        places = set(map(id, below.nodes))

        assert all(id(parent) in places for node in row.nodes for parent in node.parents)
    # The chains skipped at the start of a first row are foundation chains themselves and stand on nothing.
    hanging = [node for row in rows[1:] for node in stitches(row) if not node.parents]

    assert len(hanging) == (1 if name == "strip" else 0)
    assert all(node is rows[1].nodes[0] for node in hanging)


@ALL
def test_rows_are_worked_in_order(name: str) -> None:
    """Each row meets the places of the row below one after the other: flat rows from their far end."""
    rows = lay_rows(FLAT[name])
    for below, row in pairwise(rows):
        place = {id(node): index for index, node in enumerate(below.nodes)}
        met = [place[id(parent)] for node in row.nodes for parent in node.parents]
        steps = [after - before for before, after in pairwise(met)]
        backwards = sum(step < 0 for step in steps)

        assert min(backwards, sum(step > 0 for step in steps)) <= (1 if row.circular else 0)


def test_rectangle_is_a_grid() -> None:
    """A strip of plain dc is a grid of its rows and stitches."""
    rows = lay_rows(STRIP)

    assert nx.is_isomorphic(nx.grid_2d_graph(4, 12), graph_of(rows, foundation=False))


def test_tube_is_a_cylinder() -> None:
    """Even rounds of 9 are four rings of 9, each stitch on one of the ring below."""
    rows = lay_rows(TUBE)

    assert nx.is_isomorphic(nx.cartesian_product(nx.cycle_graph(9), nx.path_graph(4)), graph_of(rows, foundation=False))


def test_decrease_closes_the_gap() -> None:
    """A decrease stands on two neighbours, a plain stitch on one."""
    rows = lay_rows(SPIRAL_BALL)
    graph, last = graph_of(rows), rows[-1]

    assert [1, 2] * 4 == [len(node.parents) for node in last.nodes]
    assert all(graph.has_edge(*map(id, node.parents)) for node in last.nodes[1::2])


@pytest.mark.parametrize(
    ("words", "parents"),
    [
        ("dc in each of next 12 dc", [1] * 12),
        ("dc2tog over next 2 dc, dc in each of next 10 dc", [2] + [1] * 10),
        ("dc in each of next 4 dc, dc3tog over next 3 dc, dc in each of next 5 dc", [1] * 4 + [3] + [1] * 5),
        ("2 dc in next dc, dc in each of next 11 dc", [1] * 13),
        ("sk next dc, dc in each of next 11 dc", [1] * 11),
    ],
)
def test_parents(words: str, parents: list[int]) -> None:
    """A plain dc has one parent, dc2tog two, dc3tog three; increases and skips have no more than one."""
    text = f"Strip\n\nSTRIP\n\nCh 14.\nRow 1: Dc in 3rd ch from hook (2 skipped ch do not count as a st) and in each ch across. (12 dc)\nRow 2: Ch 2 (does not count as a st), turn, {words}. ({len(parents)} dc)\n"

    assert parents == [len(node.parents) for node in lay_rows(text)[-1].nodes]


def test_corner_has_as_many_children_as_stitches() -> None:
    """Each corner space of a square holds the 4 dc of its group, each plain dc of a side holds one."""
    rows = lay_rows(SQUARE)
    for below, row in pairwise(rows[1:]):
        children = Counter(id(parent) for node in stitches(row) for parent in node.parents)

        assert [4] * 4 == [children[id(node)] for node in below.nodes if node.is_space]
        assert {1} == {children[id(node)] for node in stitches(below)}


def test_ring_holds_the_first_round() -> None:
    """All stitches of a first round are children of the ring."""
    foundation, first, *_ = lay_rows(CIRCLE)

    assert ["ring"] == [node.kind for node in foundation.nodes]
    assert 12 == sum(foundation.nodes[0] in node.parents for node in first.nodes)


def test_growth_of_a_flat_circle() -> None:
    """From round to round of a circle, 12 places hold two stitches and the rest one."""
    rows = lay_rows(CIRCLE)
    for below, row in pairwise(rows[1:]):
        children = Counter(id(parent) for node in row.nodes for parent in node.parents)

        assert (
            Counter({2: 12, 1: len(below.nodes) - 12})
            == Counter(children[id(node)] for node in below.nodes) + Counter()
        )


def test_every_stitch_can_be_undone_to_the_ring() -> None:
    """Followed from stitch to parent, every stitch of a circle comes back to the ring, one round at a time."""
    rows = lay_rows(CIRCLE)
    downward = nx.DiGraph((id(node), id(parent)) for row in rows for node in row.nodes for parent in node.parents)
    depths = nx.single_source_shortest_path_length(downward.reverse(), id(rows[0].nodes[0]))

    assert nx.is_directed_acyclic_graph(downward)
    assert [{number} for number in range(4)] == [{depths[id(node)] for node in row.nodes} for row in rows]
