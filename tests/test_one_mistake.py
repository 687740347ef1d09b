"""One mistake, one finding: what a slip upsets further on, or under another rule, is told with it; and its likely cause."""

from __future__ import annotations

from typing import Any

import pytest
from helpers import check

SOCK = (
    "Sock\nAbbreviations\nch: chain\nsc: single crochet\nsc2tog: single crochet 2 together\n\nTOE\n"
    "Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each sc around. (12 sc)\n"
    "Rnd 3: [Sc in next sc, 2 sc in next sc] 6 times. (18 sc)\nRnd 4: [Sc in next 2 sc, 2 sc in next sc] 6 times. (24 sc)\n"
    "Rnd 5: Sc in each sc around. (24 sc)\nRnd 6: [Sc in next 4 sc, sc2tog] 4 times. (20 sc)\n"
)
WRAP = (
    "Wrap\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (11 sc)\n"
    "Row 2: Ch 1, 2 sc in first sc, sc in each sc to end, turn. (12 sc)\nRow 3: Ch 1, sc in each sc to end, turn. (12 sc)\n"
    "Rows 4-9: Rep last 2 rows 3 times more. (15 sc)\nRow 10: Ch 1, sc in each sc to end. (15 sc)\n"
)
LACE = (
    "Lace\nCh 20.\nRow 1: Sc in 2nd ch from hook, *ch 3, skip next 2 ch, sc in next ch; rep from * 5 times more, turn."
    " (7 sc, 6 ch-3 sps)\n"
)
SIZED = (
    "Cuff\nSizes: S (M, L)\nCUFF\nCh 30 (34, 38), join with sl st to form a ring.\n"
    "Rnd 1: Ch 1, sc in each ch around, join. (30 (34, 38) sc)\n"
    "Rnd 2: Ch 1, sc in next 14 (16, 18) sc, ch 2, skip next 2 sc, sc in next 14 (16, 18) sc, join."
    " (28 (32, 36) sc, 1 ch-2 space)\n"
)


def found(text: str) -> list[Any]:
    """Corrections and queries, but for what small patterns lack."""
    return [
        finding
        for finding in check(text).findings
        if finding.weight.value != "style"
        and finding.rule not in ("section-missing", "turning-chain-unsaid", "abbreviation-undefined")
    ]


def mended(text: str) -> str:
    """The text with the first cause of its first finding that has one put right."""
    cause = next(finding.likely[0] for finding in found(text) if finding.likely)
    return text[: cause.span.start] + cause.replacement + text[cause.span.end :]


@pytest.mark.parametrize(
    ("sound", "right", "wrong", "rule"),
    [
        (WRAP, "Rep last 2 rows 3 times", "Rep last 2 rows 2 times", "range-length-differs"),
        (WRAP, "last 2 rows", "last 3 rows", "range-length-differs"),
        (SOCK, "[Sc in next 2 sc, 2 sc", "[Sc in next 2 sc, 2 htr", "terms-mixed"),
        (LACE, "*ch 3, skip", "*skip", "count-differs"),
        (SIZED, "sc in next 14 (16, 18) sc, ch 2", "sc in next 16 (16, 18) sc, ch 2", "places-run-out"),
    ],
    ids=["rows so often", "so many rows", "stitch of other terms", "chain of printed spaces", "one figure of a list"],
)
def test_first_cause_undoes_the_slip(sound: str, right: str, wrong: str, rule: str) -> None:
    """There is one finding, and its first cause, put into the text, makes it sound again."""
    faulty = sound.replace(right, wrong, 1)

    assert found(sound) == []
    assert [finding.rule for finding in found(faulty)] == [rule]
    assert found(mended(faulty)) == []


def test_rows_changed_about() -> None:
    """Two rows that have changed places are one mistake, told with both labels."""
    lines = SOCK.splitlines()
    third, fourth = (next(i for i, line in enumerate(lines) if line.startswith(f"Rnd {n}:")) for n in (3, 4))
    lines[third], lines[fourth] = (
        lines[fourth].replace("Rnd 4", "Rnd 3"),
        lines[third].replace("Rnd 3", "Rnd 4"),
    )
    faulty = "\n".join(lines) + "\n"
    told = [finding for finding in found(faulty) if finding.weight.value == "correction"]

    assert len(told) == 1
    assert told[0].likely[0].change == "Rnd 3 and Rnd 4 the other way round"
    assert mended(faulty) == SOCK


def test_word_that_is_not_explained_is_told_with_the_count() -> None:
    """A stitch mistyped as one that the list does not have is one mistake: the count's finding tells of the word."""
    faulty = SOCK.replace("Rnd 5: Sc in each", "Rnd 5: Dc in each")
    told = [
        finding for finding in check(faulty).findings if finding.rule in ("count-differs", "abbreviation-undefined")
    ]

    assert [finding.rule for finding in told] == ["count-differs"]
    assert "“Dc” is used but not explained" in told[0].message


def test_piece_that_goes_on_under_a_new_heading_follows() -> None:
    """A mistake in the last row before a heading is not told again under it: the row there goes on from the printed count."""
    faulty = WRAP.replace("Rep last 2 rows 3", "Rep last row 3").replace("Row 10:", "BORDER\nRow 10:")

    assert [finding.rule for finding in found(faulty)] == ["range-length-differs"]
    assert check(faulty).ledger.rows[-1].first.outcome.value == "agrees"


def test_labels_after_a_slipped_one_are_not_slips() -> None:
    """Where the first label under a heading slipped, it alone is told."""
    faulty = SOCK.replace("Rnd 5:", "HEEL\nRnd 6:")
    labels = [finding for finding in found(faulty) if finding.rule == "row-number-out-of-order"]

    assert [(finding.row, finding.expected) for finding in labels] == [("Rnd 6", "5")]


def test_last_stitch_into_the_turning_chain_is_not_asked_of_rounds() -> None:
    """A spiral has no turning chain: a place left over there is not its top."""
    faulty = SOCK.replace("Rnd 5: Sc in each sc around.", "Rnd 5: Sc in next 23 sc.")
    changes = [cause.change for finding in found(faulty) for cause in finding.likely]

    assert changes
    assert not any("turning ch" in change for change in changes)


def test_the_odd_one_is_changed_and_not_its_twin() -> None:
    """Of two numbers either of which would mend the row, the one without a twin is asked about."""
    text = (
        "Band\nCh 31.\nRow 1: Sc in 2nd ch from hook and in each ch across. (30 sc)\n"
        "Row 2: Ch 1, turn, sc in next 6 sc, hdc in next 18 sc, sc in next 6 sc. (30 sts)\n"
    )
    faulty = text.replace("hdc in next 18", "hdc in next 17")

    assert mended(faulty) == text


def test_a_row_whose_only_clause_is_lost() -> None:
    """A row that works nothing is asked about with the clause of its neighbours."""
    faulty = SOCK.replace("Rnd 5: Sc in each sc around.", "Rnd 5: Ch 1; join.").replace("Rnd 6:", "Rnd 6: Ch 1,")
    faulty = faulty.replace("Rnd 4:", "Rnd 4: Ch 1, sc in each sc around; join. (18 sc)\nRnd 5:").replace(
        "Rnd 5: Ch 1; join.", "Rnd 6: Ch 1; join."
    )
    told = next(finding for finding in found(faulty) if finding.likely)

    assert told.likely[0].change.startswith("add “sc in each sc around”")


def test_clause_of_a_row_farther_off() -> None:
    """A clause that is lost may stand in a row that shapes alike some rows before."""
    rows = ["Wedge", "Ch 21.", "Row 1: Sc in 2nd ch from hook and in each ch across. (20 sc)"]
    plain = "Ch 1, turn, sc in each sc across."
    for number in range(2, 10):
        wide = 20 + 2 * (number // 4)
        shaped = f"Ch 1, turn, 2 sc in first sc, sc in each of next {wide - 4} sc, 2 sc in last sc."
        rows.append(f"Row {number}: {shaped if number % 4 == 0 else plain} ({wide} sc)")
    sound = "\n".join(rows) + "\n"
    faulty = sound.replace("Row 8: Ch 1, turn, 2 sc in first sc, ", "Row 8: Ch 1, turn, ")

    assert found(faulty)[0].likely[0].change.startswith("add “2 sc in first sc”")
