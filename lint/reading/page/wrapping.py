"""Tells whether a line goes on with the row above it, cut by the page's width, or is a sentence of its own."""

from __future__ import annotations

from lint.expression import expression

# "Rep Rows 2 and 3 four times more." in a line of its own
_CALLS_ROWS = expression(
    r"(?i)[\[(]?(?:continue to |now )?rep(?:eat)?\s+(?:the\s+)?(?:last|these|inc|dec|increase|decrease|rows?\b|rnds?\b|rounds?\b|\d+(?:st|nd|rd|th))"
    r"|(?i:(?:now )?work\s+(?:even|straight|\d[^.;:]{0,40}?\b(?:rows|rnds|rounds)))\b"
    r"|(?i:[\[(]?work\s+(?:the\s+)?(?:(?:rows?|rnds?|rounds?)\s+\d|\d+(?:st|nd|rd|th)\b))"  # "[Work 8th row] twice"
)
# "turn. — 33 (35) sts": a count at the end of a row, without a stop
_SIGN = r"(?:[.;:|→➜➔⇒]|=>?|->|\s(?:[-–—]{1,4}>?|>{1,2}|»|~))"
_FIGURES = r"\d[\d\s,;:/()\[\]{}–-]*"
_LONGEST_COUNT = 300  # characters
_UNITS = r"(?:(?:ch-?\s?\d+|\d+-?\s?ch)[-\s])?(?:sts?|stitches|sc|hdc|dc|tr|htr|dtr|sps?|spaces|loops|lps)"
_AT_THE_LAST = (
    r"(?:\s+(?:(?:at|by)\s+(?:the\s+)?end\s+of|in|on|after)\s+(?:the\s+)?(?:last|final)\s+(?:row|rnd|round))?"
)
_COUNTED = expression(
    # a list for many sizes is long, and so are several sorts: "— 64 (68, 72) hdc and 4 ch-2 sps in the last rnd"
    rf"(?i){_SIGN}\s*[(\[{{]?{_FIGURES}{_UNITS}(?:(?:,|;|\s+and|\s+\+)\s+{_FIGURES}{_UNITS})*{_AT_THE_LAST}$|"
    rf"{_SIGN}\s*[(\[{{]?\d[^.;:]{{0,60}}\b(?:sts?|stitches|sc|hdc|dc|tr|htr)$|,\s*\d{{1,4}} (?:sts|stitches)$"
    r"|[\w)\]}*.]\s+[-–—]{1,4}\s\d{1,4}$"  # "sc in each st – 12"
    r"|[a-z)\]}*]\.\s\d{1,4}$"  # "sc in each st. 12"
    r"|[\w)\]}*]\s*(?:[=|→➜➔⇒]|[-=]>)\s*\d{1,4}$"  # "(2x, a)*6 = 18", and the last cell of a table
)
# what may still be said of a row behind its count
_BEHIND_COUNT = expression(
    r"(?i)(?:ch(?:ain)?\s?\d+,?\s+)?turn\b|rep(?:eat)?\b|fasten\b(?!.*(?:close|sew|stuff|tail|weave))|sl st\b|ss\b|stitch count|you\b|there\b"
    r"|join\b(?!.*\d\s?(?:sc|dc|hdc|htr|tr|sts?)\b)"
)
# what is done to the piece when its row is over
_BY_HAND = expression(
    r"(?:fo|fasten off|cut|break|stuff|fill|press|flatten|fold|pinch|sew|weave|close|embroider|"
    r"(?:(?:insert|attach|place|put|fix|glue)\s)?(?:(?:the|safety)\s){0,2}(?:eyes|nose))\b(?!.*\b(?:sc|dc|hdc|htr|tr)\b)"
)
LAYERS = expression(r"(?i)\bthrough (?:both|all) (?:layers|sides|thicknesses|walls)\b")
# "Join the last row to the base chain with ss.": a seam, which is no round's closing
_SEAMED = expression(
    r"(?i)(?:sl st |ss |slip stitch |sew |then |now )?(?:join|seam)\s+(?:the\s+)?(?:(?:last|first|final)\s+(?:row|rnd|round)\b|(?:\p{L}+\s+){0,2}(?:ends|edges|sides)\b)"
)
_STITCHES_LAST = expression(r"(?i)\d\s?(?:sc|dc|hdc|htr|tr|sts?)$")
# a clause is at its end, with no stop; so is a row that tells last how many it stands for, "(24) – 3 rows"
_RUN_ENDS = expression(
    r"(?i)\b(?:around|across|to (?:the )?end)$|(?:[–—=-]|[)\]}],?) ?\d{1,3} (?:rows|rounds|rnds)(?: unchanged)?$"
)
_ENDS_IN_COUNT = r"[(\[{](?![^()\[\]{}]*\b(?:in|into|next)\b)[^()\[\]{}]*\d[^()\[\]{}]*[)\]}]\.?$"
_SO_OFTEN = expression(rf"(?i)(?:{_FIGURES}\s*(?:more\s+)?(?:times|x)|twice|once|thrice|around|across)\b")
_UNIT = expression(
    r"(?i)(?:sc|dc|hdc|htr|tr|sts?|stitches|sps?|spaces)\b\s*(?:[,.;]|and\b|$)"
)  # "– 75 (120)" / "DC, 78 (123) SC"
_FASTENED = expression(r"(?i)\b(?:fasten off|cut yarn|break yarn)\s*[.!]$")
_TELLS = expression(r"(?i)(?:you|there|stitch count)\b")  # how many stitches that are
# a row on a chain is done when both its sides are: "… 4 sc in last ch." / "Now work along the other side of the chain: …"
_ON_CHAIN = expression(r"(?i)\bfrom (?:the )?hook\b|\blast ch(?:ain)?\b")
_OTHER_SIDE = expression(
    r"(?i)(?:now,? |then,? )?(?:(?:work(?:ing)?|continu(?:e|ing)|crochet) )?(?:on|along|in|into|down|up|across|around)? ?(?:to )?the (?:other|opposite|second) side\b"
)
# a line that ends in such a word goes on in the next
_HANGS = expression(  # but not "(24) – 3 rows", which tells how many rows a label stands for; searched from the end on
    r"(?ir)(?:\b(?:of|to|from|in|on|until|till|and|or|rep|repeat|(?<![)\]}–—=/-]\s?,?\s?\d{1,3}\s)(?<!\b(?:end of|end of the|this|each|every|last|next|whole|entire)\s)(?:rows?|rnds?|rounds?)|after|through|thru|before|as|for|with|than|at|the)|\b\d+(?:st|nd|rd|th)|,)\s*$"
)
# "The flap is worked in rows" / "Row 1: Ch 1, …" but not "at end of" / "Row 64: 145 sts"
_ROW_BEGINS = expression(
    r"(?i)[\W_]*(?:(?:rows?|rnds?|rounds?|rds?)\s*\d{1,3}|\d{1,3}(?:st|nd|rd|th)?(?:\s?(?:[-–&]|\b(?:to|and|through|thru)\b)\s?\d{1,3}(?:st|nd|rd|th)?)?\s+(?:rows?|rnds?|rounds?))"
    r"\b[^:.;]{0,20}:\s+(?!\W*\d+\s*(?:sts?|stitches|sc|hdc|dc|tr|htr)\W*$)\S"
)
# "across the first 5 (6)" / "7 tr": a list over the sizes, with the word before it
_LIST_LAST = expression(r"(?i)(?P<word>[\p{L}=]*)\s*\b(?P<list>\d+\s*[(\[][\d\s,;:/–-]*\d\s*[)\]])$")
_BEFORE_WORK = ("of", "the", "next", "first", "last", "following", "skip", "sk", "in", "into", "over", "work", "ch")
# "Ch 1, turn." in a line of its own, between one row and the next
TURNS_ALONE = expression(
    r"(?i)\W*(?:(?:ch(?:ain)?s?\W{0,2}\d{1,2}|\d{1,2}\s?ch(?:ain)?s?)\W+(?:(?:and|then|to)\s+)?turn|turn\W+(?:(?:and|then)\s+)?(?:ch(?:ain)?s?\W{0,2}\d{1,2}|\d{1,2}\s?ch(?:ain)?s?))(?:\s+(?:your\s+|the\s+)?work(?:\s+over)?)?(?:\s*\([^()\n]{0,60}\))?\W*"
)
# "… 1 SC" / "IN THE SAME ST": in a text of capitals the first letter tells nothing
_IN_CAPITALS = expression(r"(?:IN|INTO|OF|OVER|AROUND|NEXT|EACH|THE|SAME|TO|AND)\s+\p{Lu}{2,}")
_TERMINAL = (".", ")", "]", "}", "!", "?", ":", ";")


_NUMBER_LABEL = expression(r"\W*\d{1,3}(?:\s?[-–]\s?\d{1,3})?\)")  # its bracket closes nothing
_CLOSES_NUMBER = expression(r"\s*\d[\d\s,;:/–-]{0,60}[)\]]")


def hangs_on(above: str, text: str) -> bool:
    """Whether the line above ends in a word that the next one has to go on with, and that is no row of its own."""
    if text[:1].isupper() and _COUNTED.search(above[-_LONGEST_COUNT:]) is not None:
        return False  # "– 36 sc at the end of the last rnd" / "Body"
    words = above[label.end() :] if (label := _NUMBER_LABEL.match(above)) is not None else above
    opened = max(map(words.rfind, "([")) > max(
        map(words.rfind, ")]")
    )  # a bracket may close that an earlier line opened
    if (opened or sum(map(words.count, "([")) > sum(map(words.count, ")]"))) and _CLOSES_NUMBER.match(text):
        return True  # "…, (2 dc in ring, ch" / "2) 3 times", "34 (36 : 38 :" / "40 : 42)": no row 2, and no row 40
    return _HANGS.search(above) is not None and _ROW_BEGINS.match(text) is None


# "Ch 3. Miss first 2 sts. V-st in next st. …" / "Miss 1 st, tr in last st.": a row whose clauses are parted by full stops
_IN_SENTENCES = expression(r"\w\.\s+(?:\p{Lu}|\*)")
_CLAUSE = expression(
    r"(?i)(?:miss|(?:dtr|[fb]p[dsht]\w+|v-?sts?|shells?|cl|bobble|puff|picot|inc|dec)\s+(?:in|around))\b"
)


def goes_on(above: str, text: str, lower_case: bool, sizes: int = 1) -> bool:
    """Whether a line's words go on with the row whose words so far are `above`; `lower_case`: the text has no capitals."""
    if sizes > 1 and _list_hangs(above, sizes) or not above.endswith(_TERMINAL) and _IN_CAPITALS.match(text):
        return True
    if expression(r"[•·*-]\s").match(text):
        return True
    if sum(map(above.count, "([{")) > sum(map(above.count, ")]}")):
        return True  # in the middle of its brackets
    ends_in_count = _COUNTED.search(above[-_LONGEST_COUNT:]) is not None
    counted = (text[0].isupper() or lower_case) and ends_in_count
    anew = lower_case or text.lstrip("[(")[:1].isupper()
    if (above.endswith(_TERMINAL) or ends_in_count and anew) and _CALLS_ROWS.match(text):
        return False
    ended = counted or above.endswith(_TERMINAL) or any(one.search(above) for one in (_RUN_ENDS, _STITCHES_LAST))
    closed_off = expression(_ENDS_IN_COUNT).search(above) is not None
    if ended and (closed_off or not text[0].islower()) and LAYERS.search(text):
        return False  # "6 sc through both layers.": how the piece is closed
    if ended and text[0].isupper() and _SEAMED.match(text):
        return False
    if closed_off and _BY_HAND.match(text):
        return False  # "R6-R9) 11sc (11)" / "fo for the first leg"
    if text[0].isupper() and _FASTENED.search(above) and not _TELLS.match(text):
        return False
    closed = text[0].isupper() and _RUN_ENDS.search(above) is not None
    if (
        not (counted or closed or above.endswith(_TERMINAL))
        or text[0].islower()
        and not lower_case
        or text[0] in "([{*,;<~»"
    ):
        return True
    if expression(r"[)\]}]\.?$").search(above) and expression(_ENDS_IN_COUNT).search(above):
        return (_SO_OFTEN.match(text) or _UNIT.match(text)) is not None  # else the row closed with its count
    if _IN_SENTENCES.search(above) is not None and _CLAUSE.match(text) and not _RUN_ENDS.search(above.rstrip(".")):
        return True
    if counted:
        return (_SO_OFTEN.match(text) or _UNIT.match(text) or _BEHIND_COUNT.match(text)) is not None
    one_side = _ON_CHAIN.search(above) is not None and _COUNTED.search(above[-_LONGEST_COUNT:].rstrip(".")) is None
    if expression(r"[=–—]\s*\d").match(text) or one_side and _OTHER_SIDE.match(text):
        return True
    return expression(
        rf"(?i)(?:{_FIGURES}\s?)?(?:times|twice|once|(?:sc|dc|hdc|tr|htr)(?:\d?tog)?|ch|sts?|stitches|sl st|ss|join|skip|sk|turn|rep|repeat|stitch count|you|there|fasten off|fasten)\b|(?i)(?:total|count|sts?|stitches)(?:\s+(?:sts|stitches|count))?\s*[:=–-]?\s*\d+\s*(?:sts?|stitches|sc|hdc|htr|dc|tr)?\W*$"
    ).match(
        text,
    ) is not None and not expression(r"(?i)fasten off.*(?:close|sew|stuff|tail|weave)").match(text)


def _list_hangs(above: str, sizes: int) -> bool:
    """Whether words end in a list over the sizes that lacks some yet, or that work is to follow."""
    match = _LIST_LAST.search(above)
    if match is None:
        return False
    return len(expression(r"\d+").findall(match["list"])) < sizes or match["word"].lower() in _BEFORE_WORK


__all__ = ["LAYERS", "TURNS_ALONE", "goes_on", "hangs_on"]
