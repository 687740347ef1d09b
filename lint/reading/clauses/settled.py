"""What the words of a row say together, settled when all its clauses are read: the last steps of reading it."""

from __future__ import annotations

from lint.lexicon import Lexeme
from lint.reading.clauses.alongside import in_gaps
from lint.reading.clauses.base import Reading
from lint.reading.clauses.markers import unclear_markers
from lint.reading.clauses.skips import at_both_ends
from lint.reading.clauses.tunisian import loops_as_stitches
from lint.reading.counting.atordinals import at_ordinals
from lint.reading.counting.attheend import shaped_until
from lint.reading.counting.lastcounts import perhaps_more
from lint.reading.counting.nocounts import remaining_told
from lint.reading.counting.trailingdots import left_to_the_reader
from lint.reading.places.chainsinone import chains_in_one
from lint.reading.places.cornersinturn import corners_in_turn
from lint.reading.places.guard import nothing_swallowed
from lint.reading.places.pointedback import back_at_first, those_meant
from lint.reading.places.thoseonly import within_clause
from lint.reading.places.wholerows import over_whole_row
from lint.reading.repeating.growth import shaped_calls
from lint.reading.repeating.loosestars import fold_loose
from lint.reading.words.brackets import brackets_once
from lint.reading.words.closing import (
    after_fastening,
    chain_told_by_count,
    closing_join,
    joined_on_the_way,
    picots_closed,
)
from lint.reading.words.gains import increase_noted
from lint.reading.words.lastbefore import last_before_place
from lint.reading.words.layers import layers_noted, seam_behind_count
from lint.reading.words.pastrowends import chains_past_row_ends
from lint.reading.words.runs import place_come_to, side_by_side
from lint.reading.words.sizeguard import none_passed_over
from lint.reading.words.stream import Stream
from lint.reading.words.unclearfigures import unclear_behind_join, unclear_beside_squares
from lint.reading.words.unfit import UnfitList, unfit_lists_unread, without_unfit_counts


def settle(reading: Reading, stream: Stream, words: list[Lexeme], unfit: list[UnfitList]) -> None:
    """Change the steps and the count of a row that was read clause by clause; `words`: as they were before asides were left out."""
    reading.steps = [in_gaps(step, reading.gap) for step in reading.steps] if reading.gap else reading.steps
    reading.steps = nothing_swallowed(unclear_markers(reading.steps, stream.lexemes), stream.lexemes)
    reading.steps = back_at_first(those_meant(reading.steps), stream.lexemes)
    reading.steps = none_passed_over(reading.steps, stream.lexemes, stream.vocabulary)
    sizes = stream.vocabulary.sizes
    reading.steps, reading.stated, counts = without_unfit_counts(reading.steps, reading.stated, unfit)
    read = [item for item in words if not any(one.start <= item.start < one.end for one in counts)]
    reading.steps = unfit_lists_unread(reading.steps, read, sizes, stream.vocabulary.size_names)
    reading.steps = at_both_ends(within_clause(reading.steps), stream)
    reading.steps = last_before_place(picots_closed(joined_on_the_way(fold_loose(reading.steps))))
    reading.steps = chain_told_by_count(side_by_side(closing_join(place_come_to(reading.steps))), stream.lexemes)
    reading.steps = left_to_the_reader(reading.steps, stream.lexemes, reading.stated)
    reading.steps = unclear_behind_join(reading.steps, stream.lexemes)
    reading.steps = unclear_beside_squares(reading.steps, stream.lexemes, reading.stated)
    reading.steps = corners_in_turn(reading.steps, stream.lexemes)
    reading.steps = seam_behind_count(after_fastening(reading.steps, stream.lexemes), words, reading.stated)
    reading.steps = increase_noted(layers_noted(reading.steps, words, stream.lexemes), words)
    reading.steps = over_whole_row(chains_in_one(chains_past_row_ends(reading.steps)), words)
    reading.steps = at_ordinals(shaped_calls(reading.steps, stream.lexemes), stream.lexemes)
    reading.stated = remaining_told(reading.steps, loops_as_stitches(reading.steps, reading.stated), words)
    reading.stated = perhaps_more(reading.steps, reading.stated, words, sizes)
    reading.stated = reading.stated or shaped_until(reading.steps, stream)
    reading.steps = brackets_once(reading.steps, reading.stated)
