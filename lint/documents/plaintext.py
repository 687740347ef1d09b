"""Plain text in whatever encoding it was saved; the file is the text, character for character."""

from __future__ import annotations

import codecs

from lint.documents.unreadable import Unreadable

_MARKS = (
    (codecs.BOM_UTF8, "utf-8-sig"),
    (codecs.BOM_UTF32_LE, "utf-32"),  # before UTF-16, whose mark it begins with
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
_ONE_BYTE = ("cp1252", "mac_roman", "cp850")  # Windows, old Macs, DOS: what Western patterns were ever saved in
# signs that patterns are printed with beyond letters and ASCII
_TRADE_SIGNS = frozenset("½¼¾⅓⅔⅛×÷±°–—‘’“”…•·†‡©®™£\u00a0")
_MANY = 8  # in so many characters one that is not ASCII: not a Western text with some signs


def decoded(raw: bytes) -> str:
    """The text of a file; raises Unreadable where it is none."""
    text = _decoded(raw)
    return text.replace("\r", "\n") if "\n" not in text else text  # files of old machines end lines with CR


def _decoded(raw: bytes) -> str:
    try:
        for mark, encoding in _MARKS:
            if raw.startswith(mark):
                return raw.decode(encoding)
        if b"\x00" in raw[:4096]:
            return _wide(raw)
        return raw.decode("utf-8")
    except UnicodeDecodeError:
        if b"\x00" in raw[:4096]:
            raise Unreadable("is not text") from None
    return _one_byte(raw)


def _wide(raw: bytes) -> str:
    """UTF-16 without its mark: every second byte of English text is nothing."""
    head = raw[:4096]
    halves = [head[0::2].count(0) / max(1, len(head[0::2])), head[1::2].count(0) / max(1, len(head[1::2]))]
    if len(raw) % 2 == 0 and max(halves) > 0.7 and min(halves) < 0.1:
        return raw.decode("utf-16-be" if halves[0] > halves[1] else "utf-16-le")
    raise Unreadable("is not text")


def _one_byte(raw: bytes) -> str:
    """A text of one byte a character: the encoding under which its signs are letters in words and signs of the trade."""
    high = sum(byte > 0x7F for byte in raw)
    if high * _MANY > len(raw):
        return _by_statistics(raw)
    best, text = -1.0, None
    for encoding in _ONE_BYTE:
        try:
            tried = raw.decode(encoding)
        except UnicodeDecodeError:
            continue
        worth = _worth(tried)
        if worth > best:
            best, text = worth, tried
    return text if text is not None and best >= 0.5 else _by_statistics(raw)


def _worth(text: str) -> float:
    """How many of the characters beyond ASCII make sense where they stand, of 1."""
    fit, of = 0.0, 0
    for at, sign in enumerate(text):
        if sign < "\x80":
            continue
        of += 1
        beside = text[at - 1 : at] + text[at + 1 : at + 2]
        if sign in _TRADE_SIGNS:
            fit += 1
        elif sign.isalpha() and sign < "\u0250" and any(other.isalpha() for other in beside) and not _figure(beside):
            fit += 0.9 if sign.islower() or beside.isupper() else 0.4  # a capital among small letters is odd
    return fit / of if of else 1.0


def _figure(text: str) -> bool:
    return any(sign.isdigit() for sign in text)


def _by_statistics(raw: bytes) -> str:
    from charset_normalizer import from_bytes

    best = from_bytes(raw).best()
    if best is None:
        raise Unreadable("is not text in an encoding that can be told; save it as UTF-8")
    return str(best)
