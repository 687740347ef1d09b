"""Testers' counts of an old draft set on the rows of a new one: by what the rows are, not by their numbers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from lint.drafts.alignment import Alignment
from lint.inspection import Report
from lint.ledger import Outcome
from lint.testers.claims import Unmatched
from lint.testers.due import due_in
from lint.testers.placing import Placed, Placement
from lint.testers.review import Review, names_of, review_placed


def moved(review: Review, new: Report, alignment: Alignment) -> Review:
    """The same reports judged beside a new draft; what was "as printed" is what the old draft printed."""
    lost: list[Unmatched] = []
    names = names_of(new)
    size_of = {place: names.size(name) for place, name in enumerate(review.names.sizes)} if names.sizes else {}
    placed = tuple(_moved(review, new, alignment, size_of, lost))
    remarks = tuple(
        (remark, None if index is None else alignment.new_of.get(index)) for remark, index in review.placement.remarks
    )
    sizes = {tester: size_of.get(size, size) for tester, size in review.placement.sizes.items()}
    placement = Placement(
        placed, remarks, tuple(dict.fromkeys(lost)), {t: s for t, s in sizes.items() if s is not None}
    )
    return review_placed(new, names, review.intake, placement)


def _moved(
    review: Review, new: Report, alignment: Alignment, size_of: dict[int, int | None], lost: list[Unmatched]
) -> Iterator[Placed]:
    rows = new.ledger.rows
    for one in review.placement.placed:
        index, size = alignment.new_of.get(one.index), size_of.get(one.size, 0 if not size_of else None)
        if index is None or size is None or rows[index].cells[size].outcome is Outcome.NOT_WORKED:
            label = review.report.ledger.rows[one.index].label
            lost.append(Unmatched(one.claim.place, f"{label}: {one.got}", "the new draft does not have this row"))
            continue
        yield replace(one, index=index, size=size, due=due_in(rows[index], size, one.unit), other_draft=False)
