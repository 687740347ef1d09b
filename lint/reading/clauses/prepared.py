"""Makes a row's words ready to be read clause by clause: forms that say the same put into one, asides and counts set apart."""

from __future__ import annotations

from lint.lexeme import Lexeme
from lint.reading.clauses.tunisian import bars_as_stitches
from lint.reading.counting.apart import counts_set_apart
from lint.reading.counting.asides import asides, emphasis
from lint.reading.counting.worded import counts_in_words
from lint.reading.places.wholerows import without_over_all
from lint.reading.words.alongsides import sides_to_corners
from lint.reading.words.barefigures import figures_as_stitches
from lint.reading.words.chainagain import again_along_chain
from lint.reading.words.chainsides import other_sides_told
from lint.reading.words.clausesigns import clauses_parted
from lint.reading.words.colourwork import colours_apart
from lint.reading.words.knownwords import in_known_words
from lint.reading.words.linestops import without_short_stops
from lint.reading.words.rowletters import letters_as_rows
from lint.reading.words.saidotherwise import said_plainly
from lint.reading.words.shapingorder import shapings_in_order
from lint.reading.words.shortlists import crosses, pairs_as_two, signs_as_commas
from lint.reading.words.squarelists import squares_as_list
from lint.reading.words.stream import Stream
from lint.reading.words.unfit import UnfitList, with_unfit_folded
from lint.reading.words.yokesections import sections_named


def prepared(stream: Stream) -> tuple[Stream, list[Lexeme], list[UnfitList]]:
    """The row's stream as its clauses are read, its words as they were before asides were left out, and lists that do not fit."""
    stream = sections_named(other_sides_told(without_short_stops(stream).with_size_lists()))
    words = stream.lexemes
    stream, unfit = with_unfit_folded(stream)
    if (plain := again_along_chain(without_over_all(stream.lexemes))) is not stream.lexemes:
        stream = Stream(plain, stream.vocabulary)
    stream = clauses_parted(
        signs_as_commas(figures_as_stitches(colours_apart(bars_as_stitches(crosses(pairs_as_two(stream))))))
    )
    stream = sides_to_corners(shapings_in_order(said_plainly(squares_as_list(letters_as_rows(in_known_words(stream))))))
    return counts_set_apart(counts_in_words(stream.without(asides(stream) | emphasis(stream)))), words, unfit
