"""What a tester says beside counts that a slip may show in: leaning edges, stitches far taller or shorter than meant."""

from __future__ import annotations

from collections import defaultdict

from lint.testers.claims import Counted, Intake, Remark
from lint.testers.names import plain
from lint.testers.signatures import Facts
from lint.testers.together import Together, is_along
from lint.testerwords import TesterFile


def facts_of(intake: Intake, together: Together, words: TesterFile) -> dict[str, Facts]:
    """By tester; testers of whom nothing of the kind is known are left out."""
    said: dict[str, list[str]] = defaultdict(list)
    for claim in intake.claims:
        if isinstance(claim, Remark):
            said[claim.who.tester].append(claim.words)
        elif isinstance(claim, Counted) and (claim.note or claim.quoted):
            said[claim.who.tester].append(f"{claim.note} {claim.quoted}")
    slanting = {tester for tester, told in said.items() if _slants(" ".join(told), words)}
    tall: dict[str, tuple[float, str]] = {}
    for line in together.measures:
        for one in line.got:
            if line.stated and is_along(line.what):
                tall[one.who.tester] = (
                    one.cm / line.stated,
                    f"{_taller(one.cm / line.stated)} than meant: {line.what} {one.cm:.3g} cm for {line.stated:.3g}",
                )
    for line in together.gauges:
        if line.tall is not None:
            words_ = f"{_taller(line.tall)} than meant: {line.rows:.3g} rows to 10 cm for {line.due_rows:.3g}"
            tall[line.got.who.tester] = (line.tall, words_)
    found = {}
    for tester in slanting | tall.keys():
        ratio, told = tall.get(tester, (None, ""))
        found[tester] = Facts(tester in slanting, ratio, told)
    return found


def _slants(text: str, words: TesterFile) -> bool:
    text = f" {plain(text)} "
    return any(f" {plain(phrase)} " in text for phrase in words.slanting)


def _taller(ratio: float) -> str:
    return "far taller" if ratio > 1 else "far shorter"
