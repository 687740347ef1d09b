"""The pattern's own short words for stitches: "X: single crochet", "v = inc", "PB = single crochet", "F = BLO"."""

from __future__ import annotations

from dataclasses import replace

from lint.expression import expression
from lint.lexeme import IN_LOOP
from lint.lexicon import Lexeme, Lexicon
from lint.reading.words import listentries
from lint.reading.words.bareletters import bare_letters
from lint.reading.words.shapingnames import recipe_beside, shaping_told
from lint.source import SourceText

# a letter explained in a line of its own: "x: single crochet"
_LETTER_LINE = expression(r"(?m)^[^\w\n]{0,8}(?P<form>\p{L})[ \t]*[:=–—-][ \t]*(?P<body>\p{L}[^\n,;:]{1,40})$")
# … or in several lines with nothing between: "X sc", and below it "V inc"
_BARE_LINES = expression(r"(?m)(?:^[ \t]*\p{L}[ \t]+(?:sc|inc|dec|hdc|dc|tr|htr)[ \t]*(?:\n|\Z)){2,}")
_BARE_LINE = expression(r"(?m)^[ \t]*(?P<form>\p{L})[ \t]+(?P<body>\p{L}+)[ \t]*$")
_THIRD_LOOP = expression(r"(?i)\W*(?:in(?:to)? )?(?:the )?(?:3rd|third) loops?(?: only)?\W*")  # "3LO", "TLO": of an hdc
_PASSES = ("return_pass", "forward_pass")
# "Rev: yo, draw through 1 lp, *yo, draw through 2 lps; rep from * to end": it draws up none, and works all of them off
_WORKS_OFF = expression(
    r"(?i)\W*(?:(?:ch 1|1 ch)\W+(?:then\W+)?)?(?:yo|yoh|yrh|yarn (?:over|round)(?: hook)?)\b(?!.*\b(?:insert|(?:draw|pull)(?:ing)? up|in|into)\b)"
    r"(?>.*?\bthrough\b).*\b(?:(?:until|till?) (?:only )?(?:1|one) (?:loop|lp)|rep(?:eat)?\b|to (?:the )?end\b|across\b)"
)
# … but not "yo, draw through 4 lps, ch 3": the row is no longer as wide
_CLOSES_SEVERAL = expression(
    r"(?i)\bthrough\s+(?:the\s+)?(?:(?:first|next|last|all)\s+)*(?:[3-9]|\d\d|three|four|five|six)\b|[*\[(].*\bch\b"
)
_OF_WORK = ("stitch", "increase", "decrease", "chain", "skip", "together", "any_stitch", "back_loop", "front_loop")
_MEANT = ("stitch", "increase", "decrease", "chain", "back_loop", "front_loop", "marker_word", *_PASSES)


def house_letters(entries: list[listentries.Entry], plain: Lexicon, source: SourceText) -> list[tuple[str, str, str]]:
    """The pattern's own short words for stitches: "X: single crochet", "V: increase", "PB = single crochet"."""
    found: list[tuple[str, str, str]] = []
    for entry in entries:
        meant = plain.read(expression(r"\(.*?\)|\.$").sub("", entry.body).strip())
        whole = plain.read(entry.body)
        if recipe_beside(whole) is not None:
            meant = shaping_told(whole)
        elif [item.kind for item in meant] == ["stitch", ",", "stitch"] and meant[0].value == meant[2].value:
            meant = meant[:1]  # "sc, single crochet": one stitch under two names
        if _WORKS_OFF.match(entry.body) and not _CLOSES_SEVERAL.search(entry.body):
            found += [(form, "return_pass", form) for form in entry.forms if form and not plain.knows(form)]
            continue
        if _THIRD_LOOP.fullmatch(entry.body):
            found += [(form, "third_loop", "third loop") for form in entry.forms if form and not plain.knows(form)]
            continue
        if meant and all(item.kind in ("any_stitch", ",") for item in meant):  # "pt, pts: stitch, stitches"
            forms = {
                number for form in entry.forms for number in (form.removesuffix("s"), form.removesuffix("s") + "s")
            }
            found += [(form, "any_stitch", form) for form in sorted(forms) if len(form) > 1 and not plain.knows(form)]
            continue
        if "picot" in entry.forms:  # "P (picot): ch 4, sc in 4th ch from hook", and "P lp: ch 2, p, ch 3, p, ch 2"
            found += [(form, "picot", "picot") for form in entry.forms if len(form) < 4 and not plain.knows(form)]
            continue
        meant = _with_its_loop(meant)
        told = len(meant) > 1 and meant[0].kind in _PASSES and meant[1].kind in ("dash", ":", ",", "(")
        if not meant or len(meant) != 1 and not told or meant[0].kind not in _MEANT:
            continue  # "RtP = return pass - ch 1, *yo, draw through 2 lps; rep from *" tells how it is worked besides
        for form in entry.forms:
            printed = source.text[entry.span.start : entry.span.start + len(form)]
            letter = len(form) == 1
            named = IN_LOOP in meant[0].value and plain.read(form)[0].kind in ("back_loop", "front_loop")
            own = named or not plain.knows(form)  # "BL: sc in back loop only" is no loop there
            if expression(r"\p{L}+").fullmatch(form) and (letter or len(form) > 1 and own):
                found.append((printed if letter else form, meant[0].kind, meant[0].value))
    taken = {form.lower() for form, _, _ in found}
    lines = [line for some in _BARE_LINES.finditer(source.text) for line in _BARE_LINE.finditer(some[0])]
    for line in [*_LETTER_LINE.finditer(source.text), *lines]:
        meant = plain.read(line["body"].strip(" ."))
        if (
            len(meant) == 1
            and meant[0].kind in ("stitch", "increase", "decrease")
            and line["form"].lower() not in taken
        ):
            found.append((line["form"], meant[0].kind, meant[0].value))
    single = {form for form, _, _ in found if len(form) == 1}
    found += [
        (form.swapcase(), kind, value)
        for form, kind, value in found
        if form in single and form.swapcase() not in single and kind != "marker_word"  # "m" may be metres
    ]
    if any(kind in ("stitch", "chain") for _, kind, _ in found):
        return found
    bare = bare_letters(source.text)  # "v: inc, 2 sc in one st" may be listed, and x nowhere
    meant = {form: kind for form, kind, _ in found}
    agree = all(meant.get(form, kind) == kind for form, kind, _ in bare)
    return found + [one for one in bare if one[0] not in meant] if agree else found


def stitch_letters(entries: list[listentries.Entry], plain: Lexicon) -> frozenset[str]:
    """Letters that the list explains with stitches, whether or not they are understood: no colours, for all their ":"."""
    letters = [(form, entry.body) for entry in entries for form in entry.forms if len(form) == 1]
    return frozenset(form for form, body in letters if any(item.kind in _OF_WORK for item in plain.read(body)))


def _with_its_loop(meant: list[Lexeme]) -> list[Lexeme]:
    """ "sc in back loop only", "back loop sc" as one word, that names the stitch and its loop."""
    words = [item for item in meant if item.kind not in ("in", "the")]
    words.sort(key=lambda item: item.kind != "stitch")
    if [item.kind for item in words] not in (["stitch", "back_loop"], ["stitch", "front_loop"]):
        return meant
    stitch, loop = words
    return [replace(stitch, value=f"{stitch.value}{IN_LOOP}{'blo' if loop.kind == 'back_loop' else 'flo'}")]
