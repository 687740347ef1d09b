"""What the fuzzing runs are made of: texts built to be hard, texts by chance, and damaged files of every kind."""

from __future__ import annotations

import io
import re
import sys
import zipfile
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path
from random import Random

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

DEMOS = [path.read_text(encoding="utf-8") for path in sorted((ROOT / "corpus_demo").glob("*.txt"))]
HOUSES = [path.read_text(encoding="utf-8") for path in sorted((ROOT / "rules" / "houses").glob("*.yaml"))]
SMALL = (
    "Pebble Hat\nUS terms\n\nMaterials\n4 mm (US G-6) hook, 50 g DK yarn\nGauge: 16 sc and 18 rows = 10 cm\n\nSizes: S (M, L)\n\nHAT\n"
    "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each sc around. (12)\nRnd 3: *Sc in next sc, 2 sc in next sc; rep from * around. (18)\n"
    "Rnd 4: Ch 3, dc in next 2 (3, 4) sts, [ch 2, sk 1, dc] 5 times, join with sl st. (8 dc)\nRnds 5-9: Rep Rnd 4.\n"
)
WORDS = (
    "Rnd Row Rnds Rows 1: 2: 3 4-9: 2-1: Next Ch 3 ch-2 sc dc 2tog hdc tr sl st sts in next each of the ring sp skip * ** ( ) "
    "[ ] { } , ; . : rep from times more twice around across to last turn join with inc dec first same corner (12 sts) (6, 8) "
    "= - – ½ 0 99999999 back loop only FPdc work evenly fasten off as for until magic shell st(s) dc2tog counts marker Row(s) "
    'S (M, L, XL) 4 (5, 6, 7) Size Sizes: Small Bust 32" 81 cm Gauge: Tension 16 sts and 9 rows = 10 4 in hook 4.5 mm US G-6 '
    "UK Materials yarn DK weight #3 50 g 100 m balls Finished size 8 x 10 inches Abbreviations BACK FRONT SLEEVE (make 2) x6 × / "
    "Work even Shape armholes Left reversing shaping only for all sizes -- --- | \t \n \n \n Strips of half 0 sts 1/0 0/0 ∞ ² ٣"
).split(" ")
# what does something where it is not shown as the words that it is: in pages, in cells, in templates, on terminals
BARBS = (
    "<script>alert(1)</script>", '"><img src=x onerror=alert(1)>', "<!--", "]]>", "&#60;b&#62;", "javascript:alert(1)", "{{ 7 * 7 }}",
    "{% include 'x' %}", "%s %(x)s", '=HYPERLINK("http://x")', "+SUM(A1)", "-1+1", "@x", "\t=1", "\x1b[31m", "\u202e", "\u2028", "\x00",
    "</style><style>*{}", "' style='x", "../../x", "\r\n\r\n", "\ufeff", "😀\u200d", "e\u0301" * 5,
)  # fmt: skip


def hard() -> Iterator[tuple[str, str]]:
    """Texts built to take long, go deep or break something, with a name each: far beyond the bounds, and just within."""
    head = "Hat\nUS terms\n\n"

    def filled(words: str, size: int = 99_000) -> str:
        """As many lines of these words, nearly as long as lines may be, as fit."""
        line = words * (19_000 // len(words))
        return head + "\n".join([line] * (size // len(line)))

    yield "a thousand million times", f"{head}Rnd 1: 6 sc in ring. (6)\nRnd 2: [2 sc in each sc] 1000000000 times.\n"
    yield "a number of a million figures", f"{head}Rnd 1: {'9' * 1_000_000} sc in ring.\n"
    yield "numbers of fifty figures", filled("9" * 50 + " ")
    yield "a thousand brackets", f"{head}Rnd 1: {'(' * 900}sc in ring{')' * 900}.\n"
    yield "ten thousand open brackets", f"{head}Rnd 1: {'[ ' * 9_000}\n"
    yield "stars without end", f"{head}Rnd 1: {'* ' * 9_000} sc; rep from * around.\n"
    yield (
        "a row that repeats itself",
        f"{head}Ch 10.\nRow 1: Sc in each ch.\nRow 2: Rep Row 2.\nRow 3: Rep Rows 1-3 until 90 rows in all.\n",
    )
    yield (
        "rows up to a number beyond any",
        f"{head}Work 999999999 SLEEVE\nWork Rows 1, 2 and 999999999 as for Back.\n",
    )
    yield "hundreds of runs in one row", head + "Row 2: " + "1 sc in each st, " * 400 + "turn.\n"
    yield (
        "ranges backwards and endless",
        f"{head}Ch 10.\nRow 9-2: Sc in each ch.\nRows 3-999999999: Ch 1, sc in each sc, turn.\n",
    )
    yield (
        "stitches that name each other",
        f"{head}Shell: work 2 fans in same st.\nFan: work 2 shells in same st.\nRnd 1: Shell in ring.\nRnd 2: Fan in each shell.\n",
    )
    yield "a long line of work", f"{head}Rnd 1: " + "sc in next st, " * 1_200
    yield "rows without end", head + "".join(f"Rnd {n}: Sc in each sc around. (6)\n" for n in range(1, 2_700))
    yield "a thousand sizes", "Top\nSizes: " + ", ".join(f"{n} cm" for n in range(1000)) + "\nRow 1: " + ", ".join(["10"] * 1000) + " sc.\n"  # fmt: skip
    yield from _too_wide(
        "Hat\nUS terms\n\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\n"
    )
    yield "headings without end", "\n\n".join(f"PART {n}\n\nRnd 1: 6 sc in ring. (6)" for n in range(1_200))
    yield "abbreviations without end", "Abbreviations\n" + "".join(f"ab{n}: stitch {n}\n" for n in range(4_500))
    for name, words in {
        "numbers": "12 (13, 14) ", "lengths": "4 in (10 cm) x 6 in ", "commas": ", ", "blanks": " ", "one letter": "a " , "dashes": "- ", "long words": "a" * 1_900 + " ",
        "hooks": "4.5 mm (US 7) hook ", "sentences": "Sew the 4 ears to the head. ", "notes": "Ch 3 counts as a dc throughout. ",
        "sizes": "S (M, L) ", "labels": "Rnd 1: 6 sc. ", "semicolons": "; 1", "joints": "and then ", "runs": "- 12 ", "angles": "<1 ",
        "gates": "Size S: ch 20. ", "entries": "ch = chain; ", "places": "work on the next ",
    }.items():  # fmt: skip
        yield f"a megabyte of {name}", head + words * (1_000_000 // len(words))
        yield f"lines full of {name}", filled(words)
    for name, words in {"numbers": "12 (13, 14)", "lengths": "4 in (10 cm) x 6 in", "hooks": "4.5 mm (US 7) hook", "sizes": "S (M, L)", "dashes": "-" * 18, "blanks": " " * 18}.items():  # fmt: skip
        yield f"five thousand lines of {name}", head + f"{words}\n" * 4_900
    yield "a megabyte of line ends", head + "\n" * 1_000_000


def _too_wide(head: str) -> Iterator[tuple[str, str]]:
    """Rows of a few words that ask for twenty thousand stitches each, or more, or for as many places that are not there."""
    wide = "Row 2: Ch 1, 100 sc in each sc, turn.\nRow 3: Ch 1, 20 sc in each sc, turn.\n"
    repeat = "Row 4: Ch 1, *sc in next sc, dc in next st; rep from * across.\nRow 5: Ch 1, *sc in next sc, dc in next st; rep from * across. (3 sc)\n"
    for name, words in {
        "places that are not there": "Ch 1, sc in next 300000 sts, turn. (10 sc)",
        "places passed over": "Ch 1, *sk 300000 sts, sc in next st; rep from * 300000 times. (10 sc)",
        "decreases that are not there": "Ch 1, 300000 sc2tog, turn. (10 sc)",
        "rows that explode": "Ch 1, 200 sc in each sc, turn.",
    }.items():
        yield name, head + "".join(f"Row {number}: {words}\n" for number in range(2, 300))
    yield "wide rows", head + wide + "".join(f"Row {number}: Ch 1, sc in each sc, turn.\n" for number in range(4, 300))
    yield "wide repeats", head + wide + repeat + "Rows 6-4000: Rep Rows 4 and 5.\n"


# by chance --------------------------------------------------------------------------------------------------------


def damaged(random: Random, text: str) -> str:
    """A text with characters, words, lines or numbers lost, doubled, moved or exchanged, or barbs put in."""
    for _ in range(random.randint(1, 8)):
        kind = random.randrange(8)
        at = random.randrange(len(text) + 1)
        upto = min(len(text), at + random.randint(1, 40))
        if kind == 0:
            text = text[:at] + text[upto:]
        elif kind == 1:
            text = text[:upto] + text[at:upto] + text[upto:]
        elif kind == 2:
            text = text[:at] + " " + random.choice(WORDS) + " " + text[at:]
        elif kind == 3:
            lines = text.split("\n")
            random.shuffle(lines)
            text = "\n".join(lines)
        elif kind == 4:
            start = random.randrange(len(text) + 1)
            text = text[start : start + random.randint(0, 1500)]
        elif kind == 5:
            sign = chr(random.choice([random.randrange(32, 127), random.randrange(160, 0x2FFF)]))
            text = text[:at] + sign + text[upto:]
        elif kind == 6:
            text = text[:at] + random.choice(BARBS) + text[at:]
        else:
            text = text[:at] + str(random.choice([0, 1, 7, 10**9, 10**30, 3.5])) + text[at:]
    return text


@lru_cache(maxsize=1)
def _clauses() -> tuple[str, ...]:
    """The clauses of the rows in the demo patterns, the rules' examples and the tests."""
    paths = (*sorted((ROOT / "rules").glob("*.yaml")), *sorted((ROOT / "tests").glob("test_*.py")))
    texts = "\n".join((*DEMOS, *(path.read_text(encoding="utf-8") for path in paths)))
    rows = re.findall(r"\bR(?:ow|nd|ound)s? ?[\d &–-]*[^:\n\"]{0,20}: *([^\"\\\n]+)", texts)
    return tuple(sorted({part.strip() for row in rows for part in re.split(r"(?<=\w)[,;.] ", row) if part.strip()}))


# what may stand before and behind a clause: whom it speaks to, how often, how far, where
_LED_BY = (
    "",
    "",
    "",
    "For size S: ",
    "All sizes: ",
    "Sizes M and L only: ",
    "With B, ",
    "Working in back loops, ",
    "*",
    "(",
)
_FOLLOWED_BY = (
    "", "", "", "", "", " for size M only", " (sizes M and L only)", " 0 (0, 1) times", " 3 (4, 5) times", " at each end", " evenly", " twice",
    " to last 2 sts", " in last st", " x 4", ")", "*", " around", " in each corner", " 2 rows below", " and mark it",
)  # fmt: skip


def patchwork(random: Random) -> str:
    """A pattern whose rows are sewn together of clauses that do not belong together."""
    rows = [
        random.choice((", ", "; ", ". ")).join(
            random.choice(_LED_BY) + random.choice(_clauses()) + random.choice(_FOLLOWED_BY)
            for _ in range(random.randint(1, 4))
        )
        for _ in range(random.randint(2, 6))
    ]
    sizes = random.choice(("", "Sizes: S (M, L)\n"))
    start = random.choice(("Ch 21.", "Fsc 20.", "6 sc in magic ring.", "Ch 40 (44, 48).", ""))
    label = random.choice(("Row", "Rnd"))
    told = "\n".join(f"{label} {at}: {row}. ({random.randint(1, 60)} sts)" for at, row in enumerate(rows, 1))
    return f"Fen Mat\n\n{sizes}US terms\n\nMAT\n{start}\n{told}\n"


def soup(random: Random) -> str:
    """Words of the trade in any order, barbs among them."""
    return " ".join(random.choice(BARBS if random.random() < 0.03 else WORDS) for _ in range(random.randint(0, 60)))


def noise(random: Random) -> str:
    """Any characters, lone surrogates too."""
    return "".join(chr(random.randrange(1, 0x11000)) for _ in range(random.randint(0, 120)))


def bitten(random: Random, raw: bytes) -> bytes:
    """A file with bytes lost, doubled, exchanged or put in."""
    for _ in range(random.randint(1, 6)):
        at = random.randrange(len(raw) + 1)
        upto = min(len(raw), at + random.choice((1, 1, 2, 8, 200)))
        kind = random.randrange(5)
        if kind == 0:
            raw = raw[:at] + raw[upto:]
        elif kind == 1:
            raw = raw[:upto] + raw[at:upto] * random.choice((1, 3, 50)) + raw[upto:]
        elif kind == 2:
            raw = raw[:at] + bytes(random.randrange(256) for _ in range(upto - at)) + raw[upto:]
        elif kind == 3:
            raw = raw[:at] + random.choice(_PIECES) + raw[at:]
        else:
            raw = raw[: max(at, 8)]
    return raw


_PIECES = (
    b"<", b">", b"&", b"&x;", b"<!DOCTYPE x [<!ENTITY a 'b'>]>", b"<w:p>", b"</w:p>", b"<w:tbl><w:tr><w:tc>", b"]]>", b"<![CDATA[", b"{", b"}",
    b"\\u8364?", b"\\bin99999 ", b"\\'ff", b"<table><tr><td>", b"<script>", b"999999999999", b"-1", b"\xff\xfe", b"\x00", b"endobj", b"stream\n",
    b"xref\n0 99999999\n", b"/Kids [1 0 R 1 0 R]", b"w:val=\"999999999\"", b'text:c="99999999"', b'table:number-columns-repeated="99999999"',
)  # fmt: skip


def damaged_file(random: Random) -> tuple[str, bytes]:
    """A document of any kind, damaged; of zip files, one of the parts or the whole."""
    kind = random.choice(("docx", "odt", "rtf", "pdf", "html", "docx", "odt"))
    raw = _document(kind)
    if kind in ("docx", "odt") and random.random() < 0.85:
        parts = dict(_parts(raw))
        name = random.choice([name for name in parts if name.endswith(".xml")])
        parts[name] = bitten(random, parts[name])
        return f"a.{kind}", _zipped(parts)
    return f"a.{kind}", bitten(random, raw)


@lru_cache(maxsize=16)
def _document(kind: str) -> bytes:
    from made_documents import MAKERS

    return MAKERS[kind](SMALL)


@lru_cache(maxsize=16)
def _parts(raw: bytes) -> tuple[tuple[str, bytes], ...]:
    with zipfile.ZipFile(io.BytesIO(raw)) as packed:
        return tuple((name, packed.read(name)) for name in packed.namelist())


def _zipped(parts: dict[str, bytes]) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as packed:
        for name, raw in parts.items():
            packed.writestr(name, raw)
    return out.getvalue()


def house(random: Random) -> str:
    """A house file that comes with the rules, damaged, or of aliases and types that it may not have."""
    if random.random() < 0.1:
        depth = random.randint(2, 30)
        return "a0: &a0 [x, x]\n" + "".join(f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]\n" for n in range(1, depth))
    text = damaged(random, random.choice(HOUSES))
    return text + random.choice(
        ("", "", "\nextends: ../../../etc/passwd\n", "\nx: !!python/object/apply:os.system [true]\n", "\nx: &x [*x]\n")
    )


def report_of_testers(random: Random) -> tuple[str, bytes]:
    """A tester's report as a table, a workbook, a mail or prose, damaged."""
    table = (
        "Tester,Size,Round,Count,Hook,Notes\nMia,M,1,6,4 mm,fine\nMia,M,2,12,,=1+1\nAda,S,3,17,3.5 mm,<b>one off</b>\n"
    )
    kind = random.randrange(4)
    if kind == 0:
        return "t.csv", damaged(random, table).encode("utf-8", "backslashreplace")
    if kind == 1:
        parts = dict(_parts(_workbook()))
        name = random.choice([name for name in parts if "sheet" in name or "shared" in name])
        parts[name] = bitten(random, parts[name])
        return "t.xlsx", _zipped(parts) if random.random() < 0.9 else bitten(random, _workbook())
    prose = "From: Mia <m@x>\nSubject: hat\n\nRnd 3 - I got 17 instead of 18, size M\nRnds 5 to 9: 8 each\ngauge 15 sts to 10 cm with a 4.5 mm hook\n"
    return random.choice(("t.eml", "mia.txt")), damaged(random, prose).encode("utf-8", "backslashreplace")


@lru_cache(maxsize=1)
def _workbook() -> bytes:
    from openpyxl import Workbook

    book = Workbook()
    for row in (("Round", "Count", "Size"), (1, 6, "M"), (2, "=6+6", "M"), (3, 17, "S")):
        book.active.append(row)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()
