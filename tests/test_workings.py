"""How a count comes: the workings of a row, clause by clause, and how the reports show them."""

from __future__ import annotations

import json
from typing import Any

import pytest
from command import run_command
from helpers import DEMO, assert_workings_hold, check
from hypothesis import given, settings
from hypothesis import strategies as st

from lint.inspection import inspect
from lint.reports.data import as_data
from lint.reports.page import as_page
from lint.reports.terminal import show
from lint.reports.workings import formula, shown_workings
from lint.source import SourceText
from lint.working.plain import Plain

DEMOS = {path.name: path.read_text(encoding="utf-8") for path in sorted(DEMO.glob("*.txt"))}


def panel(*rows: str, chain: int = 13) -> str:
    """A small flat piece: a foundation row of single crochet, then the rows given."""
    first = f"Row 1: Sc in 2nd ch from hook and in each ch across, turn. ({chain - 1} sc)"
    named = [row if row.startswith("Row") else f"Row {number}: {row}" for number, row in enumerate(rows, 2)]
    return "\n".join(["Slip Mat", "US terms", "", "MAT", f"Ch {chain}.", first, *named, ""])


def told(text: str, label: str, size: int = 0) -> Any:
    """The workings of the row of this label."""
    report = check(text)
    return next(row for row in report.ledger.rows if row.label == label).cells[size].workings


def figures(workings: Any) -> list[tuple[int, int]]:
    """What each clause uses and makes."""
    return [(line.uses, line.makes) for line in workings.lines]


def shown(text: str, label: str) -> Any:
    """The workings of a row as the reports show them."""
    report = check(text)
    return shown_workings(report, next(row for row in report.ledger.rows if row.label == label))


class TestTheyAreTheWorking:
    """Workings are what was worked, whatever the words and the way."""

    @pytest.mark.parametrize("name", DEMOS)
    def test_demo_patterns(self, name: str) -> None:
        """In every row of the demo patterns, and in each size, the workings come to what the row makes."""
        report = check(DEMOS[name])

        assert any(cell.workings for row in report.ledger.rows for cell in row.cells)
        assert_workings_hold(report)

    @settings(derandomize=True, max_examples=60, deadline=None)
    @given(
        st.lists(
            st.sampled_from(
                [
                    "sc in next 3 sts",
                    "2 dc in next st",
                    "sc2tog over next 2 sts",
                    "ch 2",
                    "sk next st",
                    "(dc, ch 1, dc) in next st",
                    "dc in same st",
                    "[sc in next st, 2 sc in next st] twice",
                    "*sc in next st, ch 1, sk next st; rep from * to last 2 sts",
                    "*2 sc in next st, sc in next 2 sts; rep from * across",
                    "3 hdc in next 2 sts",
                    "sl st in next st",
                    "sc in each st across",
                    "(sc in next st) 4 times",
                    "dc3tog over next 3 sts",
                    "sc in next ch-2 sp",
                ]
            ),
            min_size=1,
            max_size=6,
        ),
        st.sampled_from(["Ch 1", "Ch 3 (counts as dc)", "Ch 2 (does not count)", "Ch 4 (counts as dc and ch 1)"]),
        st.integers(4, 31),
    )
    def test_any_clauses(self, clauses: list[str], start: str, chain: int) -> None:
        """Clauses in any order on any width: the workings come to what the row makes, too many places or too few."""
        row = f"{start}, {', '.join(clauses)}, turn."

        assert_workings_hold(check(panel(row, "Ch 1, sc in each st across, turn.", row, chain=chain)))

    @pytest.mark.parametrize("name", DEMOS)
    def test_short_way_tells_the_same(self, name: str, monkeypatch: pytest.MonkeyPatch) -> None:
        """Plain runs worked the short way have the same workings as worked the long way."""
        short = [cell.workings for row in check(DEMOS[name]).ledger.rows for cell in row.cells]
        monkeypatch.setattr(Plain, "as_plain", lambda self, step: None)

        assert [cell.workings for row in check(DEMOS[name]).ledger.rows for cell in row.cells] == short

    def test_row_not_understood_has_none(self) -> None:
        """A row that was not recomputed has no workings."""
        assert told(panel("Ch 1, frabble 1 sc into each wuzzock, turn."), "Row 2") is None


class TestClauses:
    """What a line says of its clause."""

    def test_beginning_chain_that_counts(self) -> None:
        """A beginning chain that counts is 1 stitch on the first place."""
        workings = told(panel("Ch 3 (counts as dc), dc in next 11 sts, turn. (12 dc)"), "Row 2")

        assert figures(workings) == [(1, 1), (11, 11)]
        assert (workings.lines[0].stands.stitch, workings.lines[0].stands.chains) == ("dc", 3)

    def test_beginning_chain_that_does_not(self) -> None:
        """A beginning chain that does not count makes nothing, and that is said."""
        lines = shown(panel("Ch 1 (does not count as a st), sc in each st across, turn. (12 sc)"), "Row 2")[0].lines

        assert [(line.makes, line.does) for line in lines] == [("0", "does not count as a stitch"), ("12", "")]

    def test_chains_before_the_first_stitch(self) -> None:
        """The chains of a foundation that are passed over for the first stitch are used too."""
        assert figures(told(panel(), "Row 1")) == [(13, 12)]

    def test_decrease_and_skip(self) -> None:
        """A decrease uses two places for one stitch, a skip uses places for none, stitches in one place use one."""
        workings = told(panel("Ch 1, sc2tog, sk 2 sts, 3 sc in next st, sc in next 7 sts, turn."), "Row 2")

        assert figures(workings)[1:] == [(2, 1), (2, 0), (1, 3), (7, 7)]
        assert workings.uses == 12

    def test_same_place_is_used_once(self) -> None:
        """A stitch into the place of the one before uses no place."""
        workings = told(panel("Ch 1, sc in next 12 sts, sc in same st, turn."), "Row 2")

        assert figures(workings)[1:] == [(12, 12), (0, 1)]

    def test_chains_worked_into_one_by_one(self) -> None:
        """A chain loop worked chain by chain is as many places as chains."""
        text = panel(
            "Ch 1, sc in next 5 sts, ch 3, sk 2 sts, sc in next 5 sts, turn. (10 sc)",
            "Ch 1, sc in next 5 sts, sc in each of next 3 ch, sc in next 5 sts, turn. (13 sc)",
        )

        assert figures(told(text, "Row 3"))[1:] == [(5, 5), (3, 3), (5, 5)]

    def test_joins_and_turns_are_left_out(self) -> None:
        """Words that make and use nothing have no line."""
        text = "Disc\nUS terms\n\nRnd 1: 6 sc in magic ring, join with sl st in first sc. (6 sc)\n"

        assert figures(told(text, "Rnd 1")) == [(0, 6)]

    def test_places_that_run_out(self) -> None:
        """Where the places run out the clause at which they do says how many are lacking."""
        workings = told(panel("Ch 1, sc in next 10 sts, sc in next 4 sts, turn. (14 sc)"), "Row 2")

        assert [line.lacking for line in workings.lines] == [0, 0, 2]

    def test_spaces(self) -> None:
        """Chain spaces are told by their length beside the stitches."""
        workings = told(panel("Ch 1, [sc in next st, ch 2, sk next st] 6 times, turn."), "Row 2")

        assert workings.spaces == {2: 6}
        assert workings.lines[-1].spaces == ((2, 6),)

    def test_words_on_the_way_belong_to_their_run(self) -> None:
        """What is worked on the way of a run stands with the run's words."""
        text = panel("Ch 1, sc in each st across, dec 1 st at each end, turn. (10 sc)")
        report = check(text)
        line = report.ledger.rows[-1].cells[0].workings.lines[-1]

        assert report.source.slice(line.span) == "sc in each st across, dec 1 st at each end"
        assert (line.uses, line.makes) == (12, 10)


class TestRepeats:
    """Repeats show one pass and how often it is worked."""

    def test_fixed_number(self) -> None:
        """A repeat tells its clauses once, with the number of passes."""
        (line,) = told(panel("[Sc in next st, 2 sc in next st] 6 times, turn. (18 sc)"), "Row 2").lines

        assert (line.uses, line.makes) == (12, 18)
        assert [(one.times, one.uses, one.makes) for one in line.passes] == [(6, 2, 3)]
        assert [(inner.uses, inner.makes) for inner in line.passes[0].lines] == [(1, 1), (1, 2)]

    def test_as_often_as_fits(self) -> None:
        """The number of passes that only the row below fixes is shown."""
        (one,) = shown(panel("Ch 1, *2 sc in next st, sc in next 3 sts; rep from * across, turn."), "Row 2")
        repeat = one.lines[1]

        assert (repeat.does, repeat.times, repeat.makes) == ("as often as there is room", "3 times", "3 × 5 = 15")

    def test_last_pass_cut_short(self) -> None:
        """A last pass that is worked in other words than those before stands by itself."""
        text = panel(
            "Ch 1, *sc in next 2 sts**, ch 2, sk next st; rep from * across, ending last rep at **, turn.", chain=12
        )
        passes = told(text, "Row 2").lines[-1].passes

        assert [(one.times, one.uses, one.makes) for one in passes] == [(3, 3, 2), (1, 2, 2)]

    def test_repeat_within_a_repeat(self) -> None:
        """A repeat inside another is a line of its pass."""
        workings = told(
            panel("Ch 1, *[sc in next st, 2 sc in next st] twice, sc in next 2 sts; rep from * once more, turn."),
            "Row 2",
        )

        assert formula(workings) == "2 × (2 × (1 + 2) + 2)"
        assert workings.uses == 12

    def test_passes_that_differ(self) -> None:
        """Passes over sides of different lengths are told apart."""
        text = (
            "Frame\nUS terms\n\nCh 4; join with sl st to form ring.\n"
            "Rnd 1: Ch 1, [2 sc in ring, ch 2, 3 sc in ring, ch 2] twice, join. (10 sc, 4 ch-2 sps)\n"
            "Rnd 2: Ch 1, *sc in each sc to next ch-2 sp, 3 sc in ch-2 sp; rep from * 3 times more, join.\n"
        )
        (_, line) = told(text, "Rnd 2").lines

        assert [(one.times, one.makes) for one in line.passes] == [(1, 5), (1, 6), (1, 5), (1, 6)]


class TestSums:
    """The sum as a person would write it down."""

    @pytest.mark.parametrize(
        ("row", "said"),
        [
            ("Ch 1, sc in each st across, turn. (12 sc)", "12 sc; printed: 12 sc"),
            ("Ch 1, 2 sc in each st across, turn. (24 sc)", "12 × 2 = 24 sc; printed: 24 sc"),
            ("Ch 3 (counts as dc), dc in next 11 sts, turn. (12 dc)", "1 + 11 = 12 dc; printed: 12 dc"),
            (
                "Ch 1, sc in next 4 sts, [sc in next st, 2 sc in next st] 4 times, turn. (15 sc)",
                "4 + 4 × (1 + 2) = 16 sc; printed: 15 sc",
            ),
            ("Ch 1, [3 dc in next st, ch 1, sk 1 st] 6 times, turn.", "6 × 3 = 18 dc, 6 ch-1 sps"),
        ],
    )
    def test_wording(self, row: str, said: str) -> None:
        """The sum follows the clauses, and the printed count stands beside it."""
        assert shown(panel(row), "Row 2")[0].sum == said

    def test_names_in_the_patterns_terms(self) -> None:
        """In a pattern in UK terms stitches and spaces go by their UK names."""
        text = "Cloth\nUK terms\n\nMake 4 ch and join with ss to form a ring.\n1st round: 3 ch (counts as 1 tr), 11 tr into ring, ss into top of 3 ch. (12 tr)\n"
        (one,) = shown(text, "1st round")

        assert one.sum == "1 + 11 = 12 tr; printed: 12 tr"
        assert one.lines[0].does == "counts as 1 tr"


SIZED = """Hat Band
US terms
Sizes: S (M, L)

BAND
Ch 13 (15, 17).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 (14, 16) sc)
Row 2: Ch 1, *2 sc in next st, sc in next st; rep from * across, turn. (18 (21, 25) sc)
Rows 3-9: Ch 1, sc in each st across, turn.
"""


class TestSizesAndRanges:
    """Each size has workings of its own; what is alike is told once."""

    def test_each_size(self) -> None:
        """The number of passes is that of the size."""
        assert [formula(told(SIZED, "Row 2", size)) for size in range(3)] == [
            "6 × (2 + 1)",
            "7 × (2 + 1)",
            "8 × (2 + 1)",
        ]

    def test_rows_of_a_range_point_to_the_first(self) -> None:
        """In JSON the rows of a range that are alike have lines once; the others say where they stand."""
        rows = as_data(check(SIZED))["parts"][0]["rows"]
        at = next(index for index, row in enumerate(rows) if row["label"] == "Row 3")

        assert all("lines" in one for one in rows[at]["workings"])
        for row in rows[at + 1 :]:
            assert [one["same_as"] for one in row["workings"]] == [{"row": at, "size": size} for size in range(3)]

    def test_only_rows_that_differ_where_no_report_asks(self) -> None:
        """Without a report that shows them, only rows that differ are worked a second time for their workings."""
        rows = inspect(SourceText(SIZED), workings=False).ledger.rows

        assert [(row.label, size) for row in rows for size, cell in enumerate(row.cells) if cell.workings] == [
            ("Row 2", 2)
        ]


class TestReports:
    """How the reports show workings."""

    def test_json(self) -> None:
        """A row's entry has the sum, the lines with words, place, uses and makes, and passes of repeats."""
        text = panel("Ch 1, [sc in next 2 sts, ch 1, sk 1 st] 4 times, turn. (8 sc)")
        data = json.loads(json.dumps(as_data(check(text))))
        (entry,) = data["parts"][0]["rows"][-1]["workings"]
        repeat = entry["lines"][-1]

        assert (entry["sum"], entry["makes"], entry["uses"]) == ("4 × 2 = 8 sc, 4 ch-1 sps; printed: 8 sc", 8, 12)
        assert repeat["words"] == "[sc in next 2 sts, ch 1, sk 1 st] 4 times"
        assert repeat["makes"] == {"stitches": 8, "spaces": {"ch-1": 4}}
        assert (repeat["does"], repeat["so_far"], repeat["start"]["line"]) == ("4 times", 8, 7)
        assert [(one["times"], len(one["lines"])) for one in repeat["passes"]] == [(4, 3)]

    def test_json_of_a_row_not_recomputed(self) -> None:
        """A row that was not recomputed has null for its workings."""
        data = as_data(check(panel("Ch 1, frabble 1 sc into each wuzzock, turn.")))

        assert data["parts"][0]["rows"][-1]["workings"] == [None]

    def test_page_opens_what_is_asked(self) -> None:
        """On the page the workings of a row that differs stand open, those of others closed."""
        page = as_page(
            check(
                panel("Ch 1, [sc in next st, 2 sc in next st] 6 times, turn. (17 sc)", "Ch 1, sc in next 18 sts, turn.")
            )
        )

        assert page.count("<details open><summary>How it comes") == 1
        assert "6 × (1 + 2) = 18 sc; printed: 17 sc" in page
        assert page.count("<summary>How it comes") == 3

    def test_note_in_the_margin_has_the_sum(self) -> None:
        """The note on a count that differs says how it comes; notes on other things in the same row do not."""
        page = as_page(check(panel("Ch 1, [sc in next st, 2 sc in next st] 6 times, FPdc in same st, turn. (17 sts)")))

        assert (
            page.count('<p dir="auto">How it comes: 6 × (1 + 2) + 1 = 19 sts (18 sc, 1 FPdc); printed: 17 sts</p>') == 1
        )

    def test_page_sets_sizes_side_by_side(self) -> None:
        """Sizes worked by the same clauses stand in one table."""
        page = as_page(check(SIZED))

        assert page.count('class="workings several"') == 3
        assert "L: 8 × (2 + 1) = 24 sc; printed: 25 sc" in page

    def test_terminal(self, capsys: pytest.CaptureFixture[str]) -> None:
        """The summary gives the sum under the finding of a row that differs."""
        show(check(panel("Ch 1, [sc in next st, 2 sc in next st] 6 times, turn. (17 sc)")))

        assert "    How it comes: 6 × (1 + 2) = 18 sc; printed: 17 sc\n" in capsys.readouterr().out


class TestReadAPattern:
    """`frogproof read FILE`: every row clause by clause, or the one that an editor doubts."""

    @pytest.fixture
    def mat(self, tmp_path):
        """A file with two rows that come out and one that is not understood."""
        path = tmp_path / "mat.txt"
        path.write_text(
            panel("Ch 1, turn, 2 sc in first sc, sc in each sc across. (13 sc)", "Sc in next st, frabble in next st."),
            encoding="utf-8",
        )
        return path

    def test_every_clause_is_told_with_the_count_so_far(self, mat):
        """What a clause uses and makes, and the sum against the print."""
        said = run_command("read", mat).stdout.decode()
        assert "2 sc in first sc – uses 1, makes 2, so far 2" in said
        assert "in all 2 + 11 = 13 sc; printed: 13 sc" in said
        assert "not recomputed: “frabble in next st” was not understood" in said

    @pytest.mark.parametrize("name", ["row 2", "Row 2:", "MAT Row 2", "r 2"])
    def test_one_row_by_its_label(self, mat, name):
        """In any case, with or without its sign and its part."""
        said = run_command("read", mat, "--row", name).stdout.decode()
        assert "Row 2 (line" in said and "Row 1 (line" not in said

    def test_a_label_that_is_not_there_is_told(self, mat):
        """One sentence, and nothing else."""
        told = run_command("read", mat, "--row", "Row 9")
        assert told.returncode == 2 and told.stderr.decode().strip() == f"{mat}: there is no row “Row 9”"


def test_a_clause_cut_out_behind_its_bracket_is_read_with_it():
    """ "2 dc in next st, ch 1) 3 times" was opened before the words that were asked about."""
    assert (
        "uses 3 places, makes 6 stitches and 3 ch-1 spaces"
        in run_command("read", "2 dc in next st, ch 1) 3 times").stdout.decode()
    )


def test_a_stitch_named_as_one_is_one():
    """ "JS = Joining Stitch:" says no more than that it is one stitch."""
    told = json.loads(
        run_command("read", "--json", "-", "JS = Joining Stitch:").stdout
        or run_command("read", "--json", "-", words=b"JS = Joining Stitch:").stdout
    )
    assert (told[0]["uses"], told[0]["makes"]["stitches"]) == (1, 1)
