"""Whole small motifs and flat pieces as the trade words them: every count of theirs stands (worked by hand, no source)."""

from __future__ import annotations

from helpers import all_findings, check, counts, spaces


def _rules(text: str, weights: tuple[str, ...] = ("correction",)) -> list[str]:
    return [rule for rule, _ in all_findings(check(text), weights)]


_OLD_RING = "Rosette\nUS terms\n\nRnd 1: 20 sc in ring, sl st in first sc. (20 sc)\n"


def test_loops_closed_into_the_base_of_the_first() -> None:
    """The first loop stands on the stitch that holds the join: the skipped ones come after it."""
    text = _OLD_RING + (
        "Rnd 2: * Ch 6, skip 4 sc, sc in next sc; repeat from * around, ending with ch 6, sl st at base of first ch-6. (4 loops)\n"
    )
    assert counts(check(text))[1] == 3
    assert spaces(check(text))[1] == {6: 4}
    assert _rules(text) == []
    assert _rules(text.replace("(4 loops)", "(5 loops)")) == ["count-differs"]


_MESH = (
    "Curtain\nUS terms\n\nNote: 1 open mesh (om) = ch 1, sk 1, 1 dc. 1 double mesh (dm) = ch 3, sk 3, 1 dc.\n\nCh 24.\n"
    "Row 1: Dc in 6th ch from hook, *ch 1, sk 1 ch, dc in next ch; rep from * across, turn. (10 om)\n"
    "Row 2: Ch 4 (counts as dc and ch 1), sk 1 ch, dc in next dc, 9 om, turn. ({} om)\n"
)


def test_a_definition_ends_where_the_next_one_begins() -> None:
    """Two meshes explained in one line: neither loses its last stitch, and one that is told in full counts too."""
    report = check(_MESH.format(10))
    assert counts(report) == [11, 11]
    assert spaces(report) == [{1: 10}, {1: 10}]
    assert _rules(_MESH.format(10)) == []
    assert _rules(_MESH.format(12)) == ["count-differs"]


def test_new_yarn_that_is_fastened_to_a_place() -> None:
    """ "Fasten Cream to any sp" joins yarn, and says where the round begins."""
    text = (
        "Tile\nUK terms\n\n1st round: Using Rust, 6 dc into ring, ss in first dc. (6 dc) Fasten off.\n"
        "2nd round: Fasten Sand to any dc, 1 ch, 2 dc in each dc round, ss in first dc. (12 dc)\nFasten off Sand.\n"
    )
    assert counts(check(text)) == [6, 12]
    assert "yarn-not-joined" not in _rules(text)
    assert "yarn-not-joined" in _rules(text.replace("Fasten Sand to any dc, ", ""))


def test_a_count_behind_a_long_dash_is_no_length_of_chain() -> None:
    """ "joining to beg ch — 24 dc"."""
    text = (
        "Disc\nUS terms\n\nRnd 1: Ch 3 (counts as dc here and throughout), 11 dc in ring; join to top of beg ch-3 — 12 dc\n"
        "Rnd 2: Ch 3, dc in same st, 2 dc in each dc around, joining to beg ch — {} dc\n"
    )
    assert counts(check(text.format(24))) == [12, 24]
    assert _rules(text.format(24), ("correction", "query")) == []
    assert _rules(text.format(22)) == ["count-differs"]


def test_corner_spaces_are_not_all_spaces() -> None:
    """ "4 corner sps, 4 ch-1 sps" beside each other."""
    text = (
        "Tile\nUS terms\n\nRnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 times more, join to top of beg ch-3. (12 dc, 4 corner sps)\n"
        "Rnd 2: Sl st in next 2 dc and in sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next sp; rep from * around, omitting last corner group, join to top of beg ch-3. (24 dc, 4 corner sps, 4 ch-1 sps)\n"
    ).replace("around, omitting last corner group", "2 times more, ch 1")
    assert _rules(text) == []
    assert _rules(text.replace("4 ch-1 sps", "5 ch-1 sps")) == ["count-differs"]


def test_the_last_group_is_left_out_by_what_it_is_called() -> None:
    """ "omitting last shell", "omitting last corner group": the group that the passage ends in."""
    text = (
        "Star\nUS terms\n\nRnd 1: Ch 5 (counts as dc and ch 2), *dc in ring, ch 2; rep from * 4 times more, join to 3rd ch of beg ch-5. (6 ch-2 sps)\n"
        "Rnd 2: Sl st in sp, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp, *ch 3, (2 dc, ch 2, 2 dc) in next sp; rep from * around, omitting last {}, join to top of ch-3. (24 dc, 6 ch-2 sps)\n"
    )
    for name in ("shell", "fan", "group"):
        report = check(text.format(name))
        assert counts(report)[1] == 24
        assert spaces(report)[1] == {2: 6, 3: 6}


def test_the_last_pass_goes_where_its_last_stitch_is_said_to_go() -> None:
    """ "sc in ch-2 sp of next fan … across, working last sc in 3rd ch of turning ch": no fan is left for that one."""
    text = (
        "Stole\nUS terms\n\nSpecial Stitches:\nFan: (2 dc, ch 2, 2 dc) in st or sp indicated.\n\nChain 26.\n"
        "Row 1: Sc in 2nd ch from hook, *skip next 5 ch, fan in next ch, skip next 5 ch, sc in next ch. Repeat from * across. Turn. (2 fans, 3 sc)\n"
        "Row 2: Ch 5 (counts as first dc plus ch 2), 2 dc in first sc, *sc in ch-2 sp of next fan, fan in next sc. Repeat from * across, ending (2 dc, ch 2, dc) in last sc. Turn. (2 sc, 1 fan)\n"
        "Row 3: Ch 1, sc in first dc, *fan in next sc, sc in ch-2 sp of next fan. Repeat from * across, working last sc in 3rd ch of turning ch. Turn. (2 fans, 3 sc)\n"
    )
    report = check(text)
    assert counts(report)[0] == counts(report)[2] == 11
    assert spaces(report)[2] == {2: 2}
    assert _rules(text) == []


def test_rows_worked_again_join_their_own_yarn() -> None:
    """ "Rep Rows 2 and 3" behind a row that is fastened off needs no other word where Row 2 begins "Join B"."""
    text = (
        "Strip\n\nUS terms\n\nSTRIP\nRow 1: Fsc 12, turn. (12)\n"
        "Row 2: Join B in last st, ch 1, sc in each st across, turn. (12)\n"
        "Row 3: Ch 1, sc in each st across. Fasten off, turn. (12)\nRows 4-9: Rep Rows 2 and 3.\n"
    )
    assert "yarn-not-joined" not in _rules(text)
    assert "yarn-not-joined" in _rules(text.replace("Join B in last st, ch 1", "Ch 1"))
