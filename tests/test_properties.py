"""Properties that hold for any text, and equalities between two ways of writing the same work."""

from __future__ import annotations

import pytest
from helpers import DEMO, assert_workings_hold, check, corrections, counts, spaces
from hypothesis import given, settings
from hypothesis import strategies as st

DEMO_TEXTS = [path.read_text(encoding="utf-8") for path in sorted(DEMO.glob("*.txt"))]
steady = settings(derandomize=True, max_examples=60, deadline=None)
few = settings(derandomize=True, max_examples=20, deadline=None)  # where one example is a whole pattern

# Words that stand in patterns, in any order: far likelier to reach the depths of the program than random characters.
WORDS = st.lists(
    st.sampled_from(
        "Rnd Row 1: 2: 3 4-9: Ch 3 ch sc dc 2tog hdc tr sl st sts in next each of the ring sp ch-2 sk skip * ** ( ) [ ] { } , ; . : "
        "rep from times more twice around across to last turn join with inc dec first same corner (12 sts) (6, 8) = - – ½ 0 99999999 "
        "back loop only FPdc work evenly fasten off as for Rnds even until magic shell st(s) dc2tog counts as marker Row(s) \n \n".split(
            " "
        )
    ),
    max_size=60,
).map(" ".join)


def assert_survived(text: str) -> None:
    """A report comes of the text: the text unaltered, every finding at a place in it, a grade."""
    report = check(text)

    assert text == report.source.text
    for finding in report.findings:
        for span in (finding.span, *(other.span for other in finding.related)):
            assert 0 <= span.start <= span.end <= len(text), (finding, text)
        assert finding.message
    assert 0 <= report.grade.score <= 100
    assert_workings_hold(report)
    for row in report.ledger.rows:
        assert all(
            (cell.made is None) == (cell.outcome.value in ("not-recomputed", "not-worked")) for cell in row.cells
        ), text


@st.composite
def damaged_demos(draw: st.DrawFn) -> str:
    """A demo pattern with lines shuffled, characters dropped, doubled, exchanged or put in."""
    text = draw(st.sampled_from(DEMO_TEXTS))
    kind = draw(st.sampled_from(["lines", "delete", "double", "insert", "exchange", "cut"]))
    if kind == "lines":
        return "\n".join(draw(st.permutations(text.split("\n"))))
    if kind == "cut":
        start = draw(st.integers(0, len(text)))
        return text[start : start + draw(st.integers(0, 400))]
    characters = list(text)
    for place in sorted(draw(st.lists(st.integers(0, len(text) - 1), min_size=1, max_size=12)), reverse=True):
        if kind == "delete":
            del characters[place : place + draw(st.integers(1, 5))]
        elif kind == "double":
            characters[place:place] = characters[place : place + draw(st.integers(1, 30))]
        elif kind == "insert":
            characters.insert(place, draw(st.sampled_from(list("*()[]{}0123456789,;:.\n\t –—'\"½\x00é\u2028x"))))
        else:
            other = draw(st.integers(0, len(characters) - 1))
            if place < len(characters):
                characters[place], characters[other] = characters[other], characters[place]
    return "".join(characters)


class TestAnyText:
    """Whatever is typed, a report comes of it."""

    @steady
    @given(st.text())
    def test_random_text(self, text: str) -> None:
        """Random characters are survived."""
        assert_survived(text)

    @steady
    @given(WORDS)
    def test_random_words(self, words: str) -> None:
        """Words of patterns in no order are survived."""
        assert_survived(words)

    @steady
    @given(WORDS)
    def test_random_row(self, words: str) -> None:
        """A row of random words between sound rows is survived."""
        assert_survived(
            f"Strip\n\nSTRIP\n\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across. (12 sc)\nRow 2: {words}\nRow 3: Ch 1, turn, sc in each st across. (12 sc)\n"
        )

    @settings(derandomize=True, max_examples=45, deadline=None)
    @given(damaged_demos())
    def test_damaged_demo(self, text: str) -> None:
        """A demo pattern shuffled, cut or mistyped is survived."""
        assert_survived(text)

    @pytest.mark.parametrize(
        "text",
        [
            "",
            "\n",
            " ",
            "\ufeff",
            "\r\n\r\n",
            "Rnd 1:",
            "*",
            "(" * 500,
            "Row 1: " + "[" * 200,
            "Row 1: Ch 999999999.",
            "Row 2: Rep Row 2.",
            "Rows 1-9999999: Sc in each st.",
        ],
    )
    def test_odd_text(self, text: str) -> None:
        """Empty and absurd texts are survived."""
        assert_survived(text)


@few
@given(damaged_demos())
def test_findings_come_in_the_same_order(text: str) -> None:
    """Two runs on one text give the same findings in the same order, which is the order of the text."""
    first, second = check(text).findings, check(text).findings
    places = [(finding.span.start, finding.span.end) for finding in first]

    assert first == second
    assert places == sorted(places)


@pytest.mark.parametrize("text", DEMO_TEXTS, ids=[path.stem for path in sorted(DEMO.glob("*.txt"))])
def test_blank_lines_at_the_end_change_nothing(text: str) -> None:
    """White space after the last line makes no row and no finding."""
    plain, padded = check(text), check(text + " \n\t\n\n")

    assert counts(plain) == counts(padded)
    assert [(f.rule, f.span) for f in plain.findings] == [(f.rule, f.span) for f in padded.findings]


# two ways of writing the same work --------------------------------------------------------------------------------

PASSAGES = st.lists(
    st.sampled_from(
        [
            ("sc in next sc", 1),
            ("sc in each of next 2 sc", 2),
            ("2 sc in next sc", 1),
            ("3 sc in next sc", 1),
            ("sc2tog over next 2 sc", 2),
            ("(sc, ch 2, sc) in next sc", 1),
            ("ch 1, sk next sc, sc in next sc", 2),
            ("ch 3", 0),
        ]
    ),
    min_size=1,
    max_size=4,
).filter(lambda pieces: sum(uses for _, uses in pieces) > 0 and pieces[-1][0] != "ch 3")
PASSES = st.integers(2, 7)


def second_row(words: str, width: int) -> tuple[list[int | None], list[dict[int, int]], list]:
    """Counts, spaces and corrections of a row without a printed count, worked on so many sc."""
    text = f"Strip\n\nSTRIP\n\nCh {width + 1}.\nRow 1: Sc in 2nd ch from hook and in each ch across. ({width} sc)\nRow 2: Ch 1 (does not count as a st), turn, {words}.\n"
    report = check(text)
    return counts(report), spaces(report), corrections(report)


class TestRepeats:
    """A repeat is what it says written out."""

    @steady
    @given(PASSAGES, PASSES)
    def test_written_out_by_hand(self, pieces: list[tuple[str, int]], passes: int) -> None:
        """A bracketed repeat makes what the passage makes when it is written out as often."""
        passage, width = ", ".join(words for words, _ in pieces), passes * sum(uses for _, uses in pieces)
        by_hand = second_row(", ".join([passage] * passes), width)

        assert by_hand == second_row(f"[{passage}] {passes} times", width)
        assert by_hand[0][1] is not None
        assert [] == by_hand[2]

    @steady
    @given(PASSAGES, PASSES)
    def test_brackets_and_stars(self, pieces: list[tuple[str, int]], passes: int) -> None:
        """ "[…] n times" makes what "*…; rep from * n - 1 times more" makes."""
        passage, width = ", ".join(words for words, _ in pieces), passes * sum(uses for _, uses in pieces)
        stars = f"*{passage}; rep from * {passes - 1} time{'s' if passes > 2 else ''} more"

        assert second_row(f"[{passage}] {passes} times", width) == second_row(stars, width)

    @steady
    @given(PASSAGES, PASSES)
    def test_across_runs_as_often_as_fits(self, pieces: list[tuple[str, int]], passes: int) -> None:
        """ "rep from * across" makes what the number of passes that fit makes."""
        passage, width = ", ".join(words for words, _ in pieces), passes * sum(uses for _, uses in pieces)

        assert second_row(f"[{passage}] {passes} times", width) == second_row(f"*{passage}; rep from * across", width)

    @steady
    @given(PASSAGES, PASSES, st.integers(1, 3))
    def test_stitches_left_over_are_found(self, pieces: list[tuple[str, int]], passes: int, over: int) -> None:
        """A counted repeat that leaves stitches of the row below is found, whatever the passage."""
        passage, width = ", ".join(words for words, _ in pieces), passes * sum(uses for _, uses in pieces)
        found = check(
            f"Strip\n\nSTRIP\n\nCh {width + over + 1}.\nRow 1: Sc in 2nd ch from hook and in each ch across. ({width + over} sc)\nRow 2: Ch 1 (does not count as a st), turn, [{passage}] {passes} times.\n"
        )

        assert "places-left-over" in [finding.rule for finding in found.findings]

    @few
    @given(st.integers(2, 9), st.integers(3, 9))
    def test_multiplying_a_circle(self, times: int, start: int) -> None:
        """A circle whose repeat runs k times as often, begun on k times the stitches, has k times every count."""

        def circle(first: int) -> list[int | None]:
            lines = [f"Rnd 1: {first} sc in ring.", "Rnd 2: 2 sc in each sc around."]
            lines += [f"Rnd {n}: [Sc in next {n - 2} sc, 2 sc in next sc] {first} times." for n in range(3, 7)]
            return counts(
                check("Circle\nWorked in a spiral; do not join.\n\nCIRCLE\n\nMake a magic ring.\n" + "\n".join(lines))
            )

        assert [count * times for count in circle(start)] == circle(start * times)

    @few
    @given(st.integers(2, 6), st.integers(2, 6))
    def test_repeat_inside_a_repeat(self, inner: int, outer: int) -> None:
        """A repeat inside a repeat is worked as often as both together."""
        nested = f"[[2 sc in next sc, sc in next sc] {inner} times, sc in next sc] {outer} times"
        flat = f"[{', '.join(['2 sc in next sc, sc in next sc'] * inner)}, sc in next sc] {outer} times"
        width = (2 * inner + 1) * outer

        assert second_row(flat, width) == second_row(nested, width)


@pytest.mark.parametrize(
    ("words", "uses", "makes"),
    [
        ("sc in next sc", 1, 1),
        ("2 sc in next sc", 1, 2),
        ("sc2tog over next 2 sc", 2, 1),
        ("sc in next sc, 2 sc in next sc", 2, 3),
    ],
)
@pytest.mark.parametrize("printed", ["more", "in all"])
def test_times_that_could_mean_two_things(words: str, uses: int, makes: int, printed: str) -> None:
    """ "rep from * 5 times" is read as 5 or 6 in all, whichever the printed count and the places agree with."""
    passes = 6 if printed == "more" else 5
    text = (
        f"Strip\n\nSTRIP\n\nCh {passes * uses + 1}.\nRow 1: Sc in 2nd ch from hook and in each ch across. ({passes * uses} sc)\n"
        f"Row 2: Ch 1 (does not count as a st), turn, *{words}; rep from * 5 times. ({passes * makes} sc)\n"
    )
    report = check(text)

    assert [passes * uses, passes * makes] == counts(report)
    assert [] == corrections(report)
    assert ["style"] == [finding.weight.value for finding in report.findings if finding.rule == "repeat-ambiguous"]


def test_half_a_character_is_no_trouble() -> None:
    """A lone surrogate, as a broken file can hold, is a character like any other."""
    assert_survived("Hat\n\nRnd 1: 6 sc in \ud83e ring. (6)\n")


def test_a_row_without_end_is_not_read() -> None:
    """What is longer than any row is said to be not understood, and its words are quoted only from their start."""
    report = check("Hat\n\nRnd 1: 6 sc in ring. (6)\nRnd 2: " + "sc in next st, " * 2_000 + "turn.\n")

    assert counts(report) == [6, None]
    assert len(report.ledger.rows[-1].cells[0].stopped_by) < 200
