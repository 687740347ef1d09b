"""What row labels look like: the expressions that find them, made of the label words of rules/layout.yaml."""

from __future__ import annotations

from functools import lru_cache

import regex

from lint.expression import Expression, expression

ORDINAL_WORDS = {
    "first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9, "tenth": 10,
}  # fmt: skip
CARDINAL_WORDS = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11,
    "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
    "twenty": 20,
}  # fmt: skip
_NUMBER = r"\d{1,4}(?:\s?(?:st|nd|rd|th|d)\b)?"
_ORDINAL = r"\d{1,3}\s?(?:st|nd|rd|th)"
_NO_SORT = (
    r"(?:and|to|or|every|foll(?:owing)?|alt(?:ernate)?|other|same|last|next|rem(?:aining)?|more)\b"  # "3rd and every"
)
_JOINT = r"\s*(?:-|–|—|\b(?:up\s+)?to(?:\s+and\s+including)?\b|\bthru\b|\bthrough\b|\bt/m\b|\btill?\b|\bbis\b|&|\+|\band\b|,)\s*"
# "Rows 3 to 9 inclusive:", "3rd to 9th rnds incl:"
_INCLUSIVE = r"(?:\s*,?\s*\(?\bincl(?:usive)?\b\.?\)?)?"
_GLUED = r"(?=(?:rows?|rnds?|rounds?)\b)"  # "6rnd: 12 sc", "7-9rows: 24 sc"
# What may follow a label that has no colon or dash of its own.
# "Rows 3 and up", "Rounds 15+", "Rnd 3 - end": how many rows that is, the label does not say
_ONWARD = r"\s*(?:\+|(?:and|&)\s+(?:up|on|onwards?)\b|onwards?\b|[-–—]\s*end\b)"
_WORK_FOLLOWS = r"(?=\s*(?:ch\b|chs?\d|rep|repeat|\d+\s*\w|\(|\[|\{|\*|•|join|with\b|turn\b|(?:sc|h?dc|h?tr|dtr)(?:\d?tog)?\b|hdc|htr|f(?:sc|hdc|dc)\b|sl\s?st|slip\b|ss\b|miss\b|shell|v-?sts?\b|cl\b|standing\b|attach\b|make\b|chain\b|(?:(?:is|are)\s+)?(?:(?:the|worked)\s+)*(?:same\s+)?as\b|in(?:to)?\b|(?:start(?:ing)?|begin(?:ning)?)\s+(?:in|with)\b|inc\b|dec\b|invdec\b|blo\b|flo\b|magic\b|m[rc]\b|adjustable\b|using\b|change\b|work(?:ing)?\b|we\s+(?:knit|crochet|work)\b|skip\b|sk\b|\Z))"
# what makes "For Row 2, …" a label: it tells a row's work, not how a row is to be treated
_WORK_NAMED = r"\s*(?:ch\b|chs?\d|\d+\s*\w|\*|[(\[]|turn\b|(?:sc|h?dc|h?tr|dtr)(?:\d?tog)?\b|sl\s?st\b|skip\b|sk\b|join\b|rep(?:eat)?\s+r)"
# what makes "Next row 1ch, …" one: a stitch or a group of them, and no figure alone, which might be a count or a row's number
_WORK_BARE = r"(?!ch\s?-?\d+\s+(?:counts?|does|is|will)\b)(?:(?:\d+\s?)?(?:ch|(?:sc|h?dc|h?tr|dtr)(?:\d?tog)?|sl\s?st|ss)\b|(?:ch|chs)\s?\d|patt?\s+(?:\d|to\b)|\*|[(\[](?!\s*\d+\s*\p{L}*\s*[)\]]))"
# what two blanks may part from a row's number in a sentence about it: "Rnd 3  is the widest part"
_TOLD_OF_ROWS = r"(?:is|are|was|were|be|measures?|should|has|have|will|forms?|makes?|can|may|see|of|and|or|to|looks?|shows?|counts?|only|on)\b"
_WORKED = r"(?<!\p{L})(?:sc|h?dc|h?tr|inc|dec|ch|sts?)(?!\p{L})"  # somewhere behind them, for "Rows 1-2  Cream" tells the yarn
# "Rnd 1, yellow –", "Row 4, wrong side:": a colour or a side behind a comma, never a word of work
_NO_COLOUR = r"(?:and|or|to|as|then|rep(?:eat)?|work|turn|join|with|from|in|on|for|at|until|if|you|we|it|this|the|but|so|see|ch|chs|chain|sc|h?dc|h?tr|dtr|fp\w+|bp\w+|sl|ss|slip|sk|skip|miss|inc|dec|cont(?:inue)?|\d\w*"
# nor a word of which stitches or how often, for that changes the work: "Rnd 3, once over:", "Row 4, other half:"
_NO_COLOUR += r"|once|twice|thrice|two|three|four|five|six|both|each|every|all|half|only|over|again|same|last|next|first|second|third|times?|more|even|odd|alternate|other|except|before|after|ends?|back|front|pat(?:t|tern)?|short|(?:de|in)creas\w+|shap\w+|doubl\w+|skipping|leaving|omitting|without|until|evenly|across|around)"
_BEHIND_COMMA = rf"\s*,\s+(?!{_NO_COLOUR}\b)\p{{L}}+(?:\s(?!{_NO_COLOUR}\b)\p{{L}}+)?(?=\s*[:–—]|\s+-\s)"


def _figures(word: str, sized: bool) -> str:
    """What the numbers of a label look like; lists over the sizes only where there are sizes."""
    unit = r"(?!\s*(?:times|dc|sc|sts?|ch|tr|htr|hdc)\b)"
    tight = rf"(?:(?<=\d)[-–—](?=\d)|(?<=s\.?\s\d{{1,3}})\s[-–—]\s|\s*(?:\bto\b|\bthru\b|\bthrough\b|&|\band\b)\s*){_NUMBER}(?=\s+(?:chs?\b|turn\b|(?:sc|h?dc|h?tr)\s+(?:(?:in|into|to)\s+(?:each|ea|every|all)|around|across|blo|flo)\b))"  # "Rows 3-5 ch 1, turn", "Rnds 3 - 5 sc in each"
    one_row = r"(?!(?<=[^\Ws]\.?\s?\d+\s[–—-]\s)\d+\s(?:inc|dec|inv)\b)"  # "Rnd 12 - 5 dec"
    if not sized:
        more = rf"{_JOINT}(?:{word}\s*[:.]?\s*{_NUMBER}|{one_row}{_NUMBER}{unit})"
        listed = rf"\)\s*[-–—]\s*(?:{word}\s?\.?\s?)?{_NUMBER}(?=\))"  # "Rounds 11)–14)", "R.5) – R.8)"
        return rf"{_NUMBER}(?:\.?{more}|{tight}|{listed})*(?:(?:\s*[\[(][\d,\s/\-–]+[\])]|(?:/\d+)+)?)"
    inside = rf"(?:{_NUMBER}|[-–—−,;:/&\s]|\b(?:to|thru|through|and)\b|\bfor\s+[\w/]+|\b{word}\s?(?=\d))"
    bracket = rf"[\[({{](?=[^()\[\]{{}}\n]*\d){inside}+[\])}}]"
    ends = rf"[\[({{](?=[^()\[\]{{}}\n]*\d\s*[,:;/]\s*[\d-]){inside}+[\])}}]"  # "2 - (6, 8)": a list, not a count
    empty = rf"[-–—−](?:\s*[-–—−])*(?=\s*{bracket})"
    after = rf"(?<=[)\]}}])\s*(?:{word}\s?)?{_NUMBER}{unit}(?=\s*(?:{bracket}|[-–—−:.=]|(?:to|thru|through|{word})\b))"  # 32 (36) 40 (44)
    run = r"\s*(?:[-–—−]|\bto\b|\bthru\b|\bthrough\b)\s*"  # "5 to 9; 5 to 10; 5 to 11"
    joint = r"\s*(?:[-–—−]|\bto\b|\bthru\b|\bthrough\b|&|\band\b|,?\s*\bor\b|,|/)\s*"
    # "R 1 – 10 [11] 12 sc evenly along": the stitches of one row, for its word is singular, and no run is worked "in each"
    stitches = r"(?!(?<=[^\Ws]\.?\s?\d+\s[–—-]\s)[\d\s\[\](){}/:;,–-]{0,120}[\d)\]}]\s(?:dc|sc|htr|hdc|tr|sts?|ch|inc|dec)\b(?!\s+(?:(?:in|into|to)\s+(?:each|ea|every|all)|around|across|blo|flo)\b))"
    more = rf"{joint}(?:{word}\s*[:.]?\s*)?(?:{stitches}{_NUMBER}{unit}|(?<=[a-z]\s*|\d[-–]){bracket}|(?<=\d\s[-–]\s){ends})|\s*,?\s*{bracket}|{after}|\s*;\s*{_NUMBER}(?:(?={run}{_NUMBER}){run}{_NUMBER}|(?=\s*(?:[;:]|{word}\b)))"
    colons = r"(?:(?<=\d)(?::| : )\d+(?:[-–]\d+)?)+(?=\s?[:.](?:\s|$)|\s?(?:-|–|\bto\b)\s?\d)"  # "2-24:28:32:", which has the label's own sign behind it
    return rf"(?:{_NUMBER}|{empty}|{bracket})(?:{more}|{tight}|{colons})*"


# a bracket behind the number that is worked, and tells nothing of the row: "Rnd 3 - (sc, inc) 6 times", "… (inc) x 6"
_WORK_LISTED = r"\s*(?:sc|dc|hdc|htr|tr|dtr|ch|sl st|ss|sk|skip|miss|inc|dec)\b[^()\n]*(?:,|\bin\b|\bnext\b)"
# what tells what to do, or points at rows, and is no name of one: "Repeat round 3. Ch 1", "Join each round. Sc …"
_NO_NAME = (
    r"work|join|turn|rep|repeat|finish|end|ends|close|complete|continue|cont|begin|start|fasten|crochet|do|make|change|mark|count"
    r"|place|move|remove|keep|alternate|in|on|at|after|before|for|from|to|of|until|this|that|these|those|each|every|last|the|same|as"
    r"|see|all|you|your|if|when|now|then|with|using|sew|weave|leave|skip|miss|follow|both|only|stop|stops|and|or|is|are"
)
_COUNT_ALONE = r"\s*\d[\d\s(),:;/\[\]-]*(?:\p{L}+\.?)?\s*(?:\n|\Z)"  # "Last inc round - 24 sts"
_SO_OFTEN = r"\s*(?:[x×*]\s?\d|\d+\s?(?:x\b|×|times\b)|(?:twice|thrice|rep|repeat|around|across|in|into)\b)"


_SPELLED_SIGN = (
    r"\s*(?P<sign>:|(?<=\s)[-–—=]+(?=\s)|\.(?=\s+(?-i:\p{Lu}|\d)))"  # "Row One – Sc in …", "First row. Sc in …"
)


@lru_cache(maxsize=8)
def label_forms(words: tuple[str, ...], named: tuple[str, ...], sized: bool) -> dict[str, Expression]:
    """The expression for each form of a label; `words` for rows and rounds, `named` such as "foundation", with sizes or not."""
    word = "(?:" + "|".join(regex.escape(item) for item in words) + ")"
    names = "(?:" + "|".join(regex.escape(item) for item in sorted(named, key=len, reverse=True)) + ")"
    figures = _figures(word, sized)
    extra = rf"(?P<extra>(?:\s*[-–]?\s*\((?!\s*\d)(?!{_WORK_LISTED})[^()\n]{{0,40}}\)(?!{_SO_OFTEN})|,?\s+col(?:ou?r)?\.?\s+\w+|\s*,\s*(?:rs|ws)\b|{_BEHIND_COMMA}|\s+(?:rs|ws)\b(?=\s*[:.–—-])|\s*[-–—/|]\s*(?:rs|ws|right side|wrong side)\b(?=\s*[:.|]|\t|[ ]{{2}})|\s+\((?:\d+\s+(?:rows|rounds|rnds))\)|\s*/\s*\d+\s+(?:rows|rounds|rnds)\s*/|\s*,?\s*(?:fwp|fp|forward(?:\s+pass)?)(?=\s*:)|\s*=\s*\d+\s+(?:rows|rounds|rnds)(?=\s*[:.–—-]))*)"
    ordinals = rf"{_NUMBER}\.?(?:{_JOINT}(?:{_NUMBER}\.?|(?:[\[(][^\])]*[\])])))*"
    ordinals = rf"(?:{figures}|{_NUMBER}\.?(?:{_JOINT}{_NUMBER}\.?)*)" if sized else ordinals
    # "Next row 1ch, 1dc in each st", "Dec row Ss in first st": no sign, but work that begins there, or a new sentence of it
    unsigned = rf"(?:(?={_WORK_BARE})|(?=(?-i:\p{{Lu}})){_WORK_FOLLOWS})"
    # the label's own sign: ":", ".", "–", ")" … or, failing that, words of work straight after it
    sign = rf"(?:(?P<sign>\s*(?:[*†‡]{{1,2}}:|:|\.{{2,}}|…|\.(?!\d)|->|=>|>{{1,2}}|[→➜➔➝⇒▶►»›]|\p{{So}}[\ufe0e\ufe0f]?|[-–—~]+|;|=|\||●|/(?=\s)|\)|,(?=\s*col))\s*(?:\((?:rs|ws|right side|wrong side)\)[.:]?)?)|\s*(?=\n|\Z)|\s+{_WORK_FOLLOWS}|[ \t]{{2,}}(?!{_TOLD_OF_ROWS})(?=\S[^\n]*{_WORKED}))"
    comma = rf"(?P<sign>,)\s+(?={_WORK_BARE})"  # "Next rnd, sc in each st": a comma in front of stitches
    # "Row (1):"; in a pattern of sizes brackets hold the other sizes' numbers
    enclosed = (
        rf"(?:(?P<numbers>{figures})"
        + ("" if sized else r"|\(\s*(?P<numbers>\d{1,3}(?:\s*[-–]\s*\d{1,3})?)\s*\)")
        + ")"
    )
    flags = regex.IGNORECASE
    cardinal = "(?:" + "|".join(sorted(CARDINAL_WORDS, key=len, reverse=True)) + r")\b"
    so_many = rf"(?:(?P<rows>{figures})|(?P<how_many>{cardinal}))"  # "Next 4 rows", "Last two rnds"
    spelled = "(?-i:(?=[A-Z]))(?:" + "|".join(ORDINAL_WORDS) + ")"
    # "Thumb rnd - skip 4", "Hem, round 2. Ch 1": without a colon nothing but a name may stand before the word
    called = rf"(?<!\b(?:{_NO_NAME})\b[\p{{L}}\d’', -]*)(?P<sign>\s[-–—]+|\.)(?!{_COUNT_ALONE})(?=\s*\S){_WORK_FOLLOWS}"
    title = r"(?-i:[A-Z])[\w’'-]*(?: [A-Za-z][\w’'-]*){0,2}?"
    return {
        "worded": expression(
            rf"(?:(?:for|on|in)\s+(?=[^:\n]{{1,24}}:)|(?P<led>for\s+))?(?P<core>(?P<side>\(?(?:rs|ws)\)?\s+)?\b(?P<word>{word})\.?\s*:?\s*(?:#|no\.?\s|nr\.?\s|n[°º]|№)?\s*{enclosed}{_INCLUSIVE}(?P<onward>{_ONWARD})?{extra})(?(led)\s*(?P<sign>,)(?={_WORK_NAMED})|{sign})",
            flags,
        ),
        "alternating": expression(  # "Row 2 and all even rows:", "Rnd 3 (and every alternate rnd):"
            rf"(?P<core>(?P<word>{word})\s+(?P<numbers>\d{{1,2}})\s*,?\s*[(\[]?\s*(?:and|&)\s+(?P<alternate>(?:all|every|each)\s+(?:the\s+)?(?:even|odd|alternate|alt|other|ws|rs|wrong[ -]side|right[ -]side|following\s+alt(?:ernate)?)(?:[ -]numbered)?)\s+{word}\s*[)\]]?{extra}){sign}",
            flags,
        ),
        "spelled": expression(
            rf"(?P<core>(?P<word>{word})\s+(?P<spelled>{cardinal})(?:\s*(?:to|through|thru|and|-|–)\s*(?P<until>{cardinal}))?{extra})(?:{_SPELLED_SIGN}|\s+{_WORK_FOLLOWS})",
            flags,
        ),
        "ordinal": expression(
            rf"(?P<core>(?P<numbers>{ordinals})(?:\s+|(?<=\d){_GLUED})(?P<word>{word})\b{_INCLUSIVE}{extra}){sign}",
            flags,
        ),
        "kept apart": expression(  # "1st brim round:", "2nd and 3rd dec rows:"
            rf"(?P<core>(?P<numbers>{_ORDINAL}(?:{_JOINT}{_ORDINAL})*)\s+(?!{_NO_SORT})\p{{L}}[\p{{L}}-]+\s+(?P<word>{word})\b{extra})\s*(?P<sign>:)",
            flags,
        ),
        "several": expression(
            rf"(?P<core>(?:(?:for\s+)?(?:the\s+)?(?:next|following)|then)\s+{so_many}\s+(?P<word>{word})\b{extra})(?:{sign}|{comma})"
            rf"|(?P<core>(?:the\s+)?(?:last|final)\s+{so_many}\s+(?P<word>{word})\b{extra})(?P<sign>\s*:|\s[-–—]+(?=\s))(?!{_COUNT_ALONE})",
            flags,
        ),
        "named": expression(
            rf"(?P<core>(?P<name>{names})\s+(?P<word>{word}s?|ring)\b{extra})(?:\s*(?P<sign>:|\.|[-–—]+)|{comma}|\s+{unsigned})",
            flags,
        ),
        "prefixed": expression(
            rf"(?P<core>(?P<prefix>{title}),? (?P<word>{word})\.?\s*:?\s*(?P<numbers>{figures}){extra})(?:\s*(?P<sign>:)|{called})",
            flags,
        ),
        "titled": expression(
            rf"(?P<core>(?P<title>{title}) (?P<word>{word})\b{extra})(?:\s*(?P<sign>:)|{called})"
            rf"|(?P<core>(?P<word>{word}) (?P<title>(?-i:[A-Z]))\b{extra})\s*(?P<sign>:|\.(?=\s+{_WORK_NAMED}))"  # "Rnd A:", "Row A. Sc in …"
            rf"|(?P<core>(?P<title>{spelled}) (?P<word>{word})\b{extra})(?:{_SPELLED_SIGN}|\s+{_WORK_FOLLOWS})",
            flags,
        ),
        "start": expression(
            r"(?P<core>(?P<name>foundation(?: chain| ch)?|base(?: chain| ch)?|start(?:ing)?(?: chain| ch)?|beginning ch(?:ain)?|set[ -]?up))\s*(?P<sign>:)(?=\s*\S)",
            flags,
        ),
        "bare": expression(
            r"(?P<core>(?P<numbers>\d{1,3}(?:\.?\s*(?:[-–]|\band\b|&|\bto\b|\bthru\b|\bthrough\b)\s*\d{1,3}|\)\s?[-–]\s?\d{1,3}(?=\)))?)\s*(?:[).]|:|\||\t|●|•|(?<=\s)[-–—](?=\s+(?:\D|\d+\s?\p{L}))))(?=\s*\S)"
            rf"|(?P<core>(?P<numbers>\d{{1,3}}(?:\s?[-–]\s?\d{{1,3}})?))[ ]{{2,}}(?=(?:\p{{L}}+(?:\s\p{{L}}+)?[ ]{{2,}})?{_WORK_FOLLOWS})"  # the first column of a table
            r"|(?P<core>\[(?P<numbers>\d{1,3}(?:\s?[-–]\s?\d{1,3})?)\][:.]?)(?=\s+\S)",  # "[4-6] sc in each st"
            flags,
        ),
        "inline": expression(
            r"(?<=[.!)\]};]\s{0,3})(?<=\s)|(?<=[.)])(?=\d)"
            r"|(?=(?-i:R(?:ow|nd|ound)s?)\s\d)(?<=[\d)\]]\s(?:\p{L}{1,8}\s)?|\beach\s(?:row|rnd|round)\s)",  # "= 31 sts Row 2:"
            flags,
        ),
    }


__all__ = ["CARDINAL_WORDS", "ORDINAL_WORDS", "label_forms"]
