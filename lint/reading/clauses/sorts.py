"""The sorts of clause, in the order in which they are tried: one visible list.

Each says what its first word may be and what reads it.  The first that can read the words has them; one that cannot
leaves no trace, since the cursor is set back behind it.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from typing import NamedTuple

from lint.reading.clauses.boundoff import bound_off
from lint.reading.clauses.edgeshapings import decreased_at_edges, decreased_over_ends, increased_in_ends
from lint.reading.clauses.opening import OpeningClauses as Clauses
from lint.reading.clauses.sidewords import all_sides, other_sides
from lint.reading.counting.otherplaces import in_all_others, rest_of_row
from lint.reading.places.asstitches import spaces_as_stitches
from lint.reading.places.fromhook import starts_in_chain
from lint.reading.places.included import space_included
from lint.reading.places.limbs import limb_joined
from lint.reading.places.ofpieces import piece_run
from lint.reading.places.thoseonly import those_only
from lint.reading.places.together import told_together
from lint.reading.places.whichgives import filled_with, which_gives
from lint.reading.places.wholerows import gap_closed
from lint.reading.repeating.growth import growing_on
from lint.reading.repeating.inthisway import in_this_way
from lint.reading.repeating.othersides import to_match
from lint.reading.repeating.piececalls import from_foundation, piece_again, piece_call
from lint.reading.repeating.rhythms import going_on, named_row_worked
from lint.reading.repeating.rowcalls import rows_of_piece
from lint.reading.repeating.twoedges import two_edges
from lint.reading.words.allbut import all_but_ends
from lint.reading.words.fittings import but_how, closed_alike, fitting_fixed, so_far_apart
from lint.reading.words.lastpass import before_the_end, so_many_at_end
from lint.reading.words.pickups import side_and_hook
from lint.reading.words.stream import CLOSERS, OPENERS, Stream
from lint.tree import Step

ANY = None  # a sort that looks at more than the first word


class Sort(NamedTuple):
    """One sort of clause: what its first word may be (None: anything), and what reads it from a lexeme on."""

    kinds: tuple[str, ...] | None
    read: Callable[[Clauses, int], bool]


def of_words(read: Callable[[Stream, list[Step], int], bool]) -> Callable[[Clauses, int], bool]:
    """A reader that needs only the words and the steps before them, as one of clauses."""
    return lambda clauses, start: read(clauses.stream, clauses.steps, start)


@cache
def readers_of(kind: str) -> tuple[Callable[[Clauses, int], bool], ...]:
    """What may read a clause whose first word is of this kind, in order."""
    return tuple(sort.read for sort in SORTS if sort.kinds is None or kind in sort.kinds)


# what reads a clause, by the kind of its first word
BY_FIRST_WORD: dict[str, Callable[[Clauses, int], bool]] = {
    "chain": Clauses.read_chain,
    "turning_chain": Clauses.read_turning_chain,
    "special": Clauses.read_own_increase,
    "in": Clauses.read_place_first,
    "over": Clauses.read_place_first,
    "skip": Clauses.read_skip,
    "join": Clauses.read_join,
    "joining": Clauses.read_join,
    "the": Clauses.read_the,
    "another": Clauses.read_another,
    "other_side": Clauses.read_other_side,
    "last": Clauses.read_last_place,
    "first": Clauses.read_last_place,
    "attach": Clauses.read_attach,
    "turn": Clauses.read_turn,
    "no_turn": Clauses.read_no_turn,
    "no_join": Clauses.read_no_join,
    "no_fasten": Clauses.read_no_fasten,
    "fasten_off": Clauses.read_fasten_off,
    "with": Clauses.read_with,
    "make": Clauses.read_make,
    "ring": Clauses.read_ring,
    "back_loop": Clauses.read_loops,
    "front_loop": Clauses.read_loops,
    "both_loops": Clauses.read_loops,
    "third_loop": Clauses.read_loops,
    "repeat": Clauses.read_repeat,
    "as": Clauses.read_row_call,
    "same": Clauses.read_this,
    "alternate": Clauses.read_alternate,
    "place": Clauses.read_put,
    "evenly": Clauses.read_evenly,
    "middle": Clauses.read_which_one,
    "foundation": Clauses.read_foundation,
    "around": Clauses.read_whole_row,
    "across": Clauses.read_whole_row,
    "ending": Clauses.read_ending,
    "omit": Clauses.read_omit,
    "unworked": Clauses.read_leave,
    "leave": Clauses.read_leave_last,
    "marker": Clauses.read_put_marker,
    "beginning": Clauses.read_beginning_remark,
    "for": Clauses.read_for_remark,
    "at": Clauses.read_at_remark,
    "from": Clauses.read_again,
    "throughout": Clauses.read_throughout,
    "counts": Clauses.read_counting_sentence,
    "counts_not": Clauses.read_counting_sentence,
    "forming": Clauses.read_counting_sentence,
    "each": Clauses.read_each_remark,
    "all": Clauses.read_all_in_ring,
    "change": Clauses.read_change,
    "hold_back": Clauses.read_hold_back,
    "row": Clauses.read_rows,
    "round": Clauses.read_rows,
    "telling": Clauses.read_telling,
    "open_work": Clauses.read_open_work,
    "bind_off": bound_off,
    "unchanged": Clauses.read_unchanged,
    "return_pass": Clauses.read_return_pass,
    "edge_stitch": Clauses.read_edge_stitch,
    "movement": Clauses.read_movements,
    "forward_pass": Clauses.read_forward_pass,
    "to": Clauses.read_until,
    "increase": Clauses.read_shaping,
    "decrease": Clauses.read_shaping,
    "word": Clauses.read_word,
    "multiple": Clauses.read_whole_sentence,
    "rotate": Clauses.read_rotate,
    "stuff": Clauses.read_sentence_remark,
}

# what a clause about the other sides may begin with
_OF_OTHERS = (
    "make",
    "repeat",
    "open_work",
    "telling",
    "word",
    "number",
    "remaining",
    "other_side",
    "then",
    "the",
    "ending",
)
# what stands before its work: "6 sc", "shell in next sp", "the 3 dc"
NAMED = (
    "number",
    "stitch",
    "special",
    "one_stitch",
    "group_word",
    "increase",
    "decrease",
    "picot",
    "beginning",
    "the",
)

SORTS = (
    # stars and signs, and what hangs on the words before
    Sort(("stitch",), Clauses.read_about_somebody),
    Sort(("star", "+"), Clauses.read_opened_star),
    Sort(("+", "/"), Clauses.read_joined),
    Sort(("at", "in", "for"), Clauses.read_last_pass),
    Sort(ANY, Clauses.sizes_behind),
    Sort(ANY, Clauses.read_needle_loops),
    Sort(ANY, Clauses.read_edges_joined),
    Sort(ANY, Clauses.read_note_on_chain),
    Sort(tuple(OPENERS), Clauses.read_opened_bracket),
    Sort(ANY, of_words(all_but_ends)),
    Sort(("/",), Clauses.rows_between_strokes),
    Sort(tuple(CLOSERS), Clauses.read_stray_closer),
    # ends of last passes, other pieces, rows that grow, sides: words of many kinds
    Sort(("make", "foundation", "word"), of_words(from_foundation)),
    Sort(("make",), of_words(named_row_worked)),
    Sort(("make", "open_work", "word"), of_words(going_on)),
    Sort(("make", "with", "ending"), of_words(so_many_at_end)),
    Sort(("ending",), Clauses.read_end_stitch),
    Sort(("word",), of_words(before_the_end)),
    Sort(("make", "open_work", "repeat"), of_words(piece_again)),
    Sort(("open_work", "make", "word"), of_words(to_match)),
    Sort(("at", "word", "increase", "decrease"), of_words(two_edges)),
    Sort(("make", "number", "stitch"), decreased_at_edges),
    Sort(("make", "with", "number"), increased_in_ends),
    Sort(("decrease",), decreased_over_ends),
    Sort(("make", "as", "open_work"), of_words(piece_call)),
    Sort(("open_work", "word", "make", "increase", "decrease"), of_words(growing_on)),
    Sort(("open_work", "word", "make", "and", "then"), of_words(in_this_way)),
    Sort(("make", "number"), of_words(piece_run)),
    Sort(("make", "in", "over", "across", "word"), of_words(those_only)),
    Sort(("join", "attach", "word"), of_words(limb_joined)),
    Sort(("make", "word"), of_words(spaces_as_stitches)),
    Sort(("word", "middle", "corner", "the"), of_words(space_included)),
    Sort(("word", "make", "attach", "telling"), of_words(fitting_fixed)),
    Sort(("word",), of_words(but_how)),
    Sort(("join", "word"), of_words(closed_alike)),
    Sort(("join", "word"), of_words(gap_closed)),
    Sort(("right_side", "wrong_side", "number", "decimal", "word"), of_words(side_and_hook)),
    Sort(("word",), Clauses.read_after_row),
    Sort(("number",), of_words(so_far_apart)),
    Sort(("ordinal",), of_words(starts_in_chain)),
    Sort(("word",), of_words(which_gives)),
    Sort(("word", "stuff"), of_words(filled_with)),
    Sort(_OF_OTHERS, of_words(other_sides)),
    Sort(("make", "number"), of_words(all_sides)),
    Sort(ANY, of_words(told_together)),
    Sort(ANY, Clauses.run_shaped_evenly),
    Sort(("word",), Clauses.read_alternating),
    Sort(ANY, of_words(in_all_others)),
    Sort(ANY, of_words(rest_of_row)),
    # rows and passages called, and the row's own stitches told by words
    Sort(ANY, Clauses.read_but_work),
    Sort(ANY, Clauses.read_every_nth),
    Sort(ANY, Clauses.read_drawn_alike),
    Sort(ANY, Clauses.read_passage),
    Sort(ANY, Clauses.motif_clause),
    Sort(ANY, Clauses.read_behind_others),
    Sort(("make",), of_words(rows_of_piece)),
    Sort(ANY, Clauses.read_rows_even),
    Sort(ANY, Clauses.read_unshaped),
    Sort(("same", "last", "first", "the", "row", "round", "ordinal"), Clauses.rows_are_pattern),
    Sort(("number",), Clauses.read_apart),
    # what the first word alone decides
    *(Sort((kind,), read) for kind, read in BY_FIRST_WORD.items()),
    # numbers and names before their work, and what is left
    Sort(ANY, Clauses.read_add_chain),
    Sort(("number",), Clauses.read_once_more),
    Sort(("number",), Clauses.read_plus_ends),
    Sort(ANY, Clauses.read_blocked),
    Sort(("group_word", "the"), Clauses.read_group_of),
    Sort(ANY, Clauses.read_often),
    Sort(NAMED, Clauses.read_number_first),
    Sort(ANY, Clauses.read_set_out),
)
