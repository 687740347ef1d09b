"""Sizes that leave off: told ahead of the rows, in a line with the next gate, and where all sizes work again.

The forms are common practice, no source; counts worked out by hand.
"""

from __future__ import annotations

import pytest
from helpers import check, corrections, counts, outcomes

_CROWN = (
    "Rnd 1: 8 sc in magic ring. (8)\n",
    "Rnd 2: 2 sc in each st. (16)\n",
    "Rnd 3: *sc, 2 sc in next st* 8 times. (24)\n",
    "Rnd 4: *2 sc, 2 sc in next st* 8 times. (32)\n",
    "Rnd 5: *3 sc, 2 sc in next st* 8 times. (40)\n",
)


def _hat(front: str = "", third: str = "", fourth: str = "", last: str = "Rnd 6 (all sizes): sc in each st.") -> str:
    """A crown in three sizes, what is said before it and behind its third and fourth rounds, and its last line."""
    rows = "".join(_CROWN[:3]) + third + _CROWN[3] + fourth + _CROWN[4]
    return f"Hat\n\nSizes: Small (Medium, Large)\nUS terms.\n{front}\n{rows}{last} 24 (32, 40) sts.\n"


@pytest.mark.parametrize(
    "text",
    [
        _hat("Small: stop after Rnd 3. Medium: stop after Rnd 4. Large: work all rounds.\n"),
        _hat("Small stops after Rnd 3, Medium after Rnd 4.\n"),
        _hat("Notes: Small stops after Rnd 3, and Medium after Rnd 4.\n"),
        _hat("", "SMALL stop after Rnd 3.\n", "Medium stop here.\n"),
        _hat("", "Small stop here.\n", "End here for Medium. Large only:\n"),
        _hat("", "Small stop here.\n", "Medium stop here.\n", "Next Rnd: sc in each st."),
        _hat("", "Small stop here.\n", "Medium stop here.\n", "Rnd 6, all sizes: sc in each st."),
        _hat("", "End here for Small. Continue to Rnd 4.\n", "Medium hat is finished here; continue for Large only.\n"),
        _hat("", "Stop here for Small. Other sizes continue to Rnd 4.\n", "This completes the Medium.\n"),
        _hat("", "If you are making the Small, stop here.\n", "Fasten off for Medium, continue to Rnd 5 for Large.\n"),
        _hat("", "End Small here. Carry on to Rnd 4 for all other sizes.\n", "You have now finished size Medium.\n"),
        _hat("", "Small: go to Rnd 6.\n", "End here for Medium. Continue to Rnd 6.\n"),
    ],
)
def test_sizes_stop_and_all_go_on(text: str) -> None:
    """A size that has left off works no more rows, until a label or a count is for all sizes."""
    report = check(text)
    assert [counts(report, size) for size in range(3)] == [
        [8, 16, 24, None, None, 24],
        [8, 16, 24, 32, None, 32],
        [8, 16, 24, 32, 40, 40],
    ]
    assert outcomes(report)[3:] == ["not-worked", "not-worked", "agrees"]
    assert corrections(report) == []


def test_a_wrong_count_where_all_go_on() -> None:
    """The last round is held against what each size brings to it."""
    text = _hat("Small stops after Rnd 3, Medium after Rnd 4.\n").replace("24 (32, 40) sts", "24 (36, 40) sts")
    report = check(text)
    assert [outcomes(report, size)[-1] for size in range(3)] == ["agrees", "differs", "agrees"]


def test_which_piece_is_meant_is_not_guessed() -> None:
    """Where two pieces have a Rnd 1, a note at the front on "Rnd 3" takes no rows from either."""
    text = _hat("Small stops after Rnd 3.\n", last="Rnd 6: sc in each st.").replace(" 24 (32, 40) sts.", " (40)")
    report = check(text + "\nPompom\nRnd 1: 6 sc in magic ring. (6)\n")
    assert counts(report)[:6] == [8, 16, 24, 32, 40, 40]


def test_who_leaves_off_is_not_guessed() -> None:
    """Words about something else that is called as a size is make no size leave off, or go on, on the quiet."""
    report = check(_hat("", "You have now finished the Small bobble.\n", "Medium stop here.\n"))
    assert corrections(report) == []
    assert counts(report)[3] is None


@pytest.mark.parametrize("fourth", ["(24, 32, 32 sts)", "(32 sts)", "(-, 32, 32 sts)"])
def test_the_figure_that_a_size_left_off_with_is_told_again(fourth: str) -> None:
    """A count that has a size's last figure once more, beside those of sizes that go on, does not bring it back."""
    text = "".join(_CROWN[:3]) + "Small stops here.\n" + _CROWN[3].replace("(32)", fourth)
    report = check(f"Hat\n\nSizes: Small (Medium, Large)\nUS terms.\n\n{text}")
    assert [counts(report, size) for size in range(2)] == [[8, 16, 24, None], [8, 16, 24, 32]]
    assert corrections(report) == []


@pytest.mark.parametrize("line", ["Finish all ends for size Small.", "Weave in all ends on size Small."])
def test_ends_that_are_woven_in(line: str) -> None:
    """They are yarn: no size leaves off there, and none has other rows."""
    report = check(
        _hat("", f"{line}\n", "", "Rnd 6: sc in each st. (40)\nRnd 7: sc in each st.").replace(" 24 (32, 40) sts", "")
    )
    for size in range(3):
        assert counts(report, size) == [8, 16, 24, 32, 40, 40, 40]


@pytest.mark.parametrize("line", ["Size Small ends here.", "Fasten off and weave in the ends for size Small."])
def test_a_size_that_ends_is_no_end_of_yarn(line: str) -> None:
    """Who ends there works none of the rows below; so may who fastens off, which is not passed over."""
    report = check(_hat("", f"{line}\n", "", "Rnd 6: sc in each st.").replace(" 24 (32, 40) sts", ""))
    assert counts(report)[3:] == [None] * 3
