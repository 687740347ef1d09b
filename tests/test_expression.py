"""A regular expression that is compiled when it is first used."""

from __future__ import annotations

import pickle
import sys
from pathlib import Path

import pytest
import regex

from lint import check_text, compiled
from lint.compiled import Kept
from lint.expression import expression


def test_finds_what_the_compiled_expression_finds() -> None:
    """It has the methods of what `regex.compile` gives (the library's own documentation)."""
    words = "Rnd 1: 6 sc; RND 2: 12 sc"
    same = regex.compile(r"rnd (\d)", regex.IGNORECASE)
    one = expression(r"rnd (\d)", regex.IGNORECASE)
    assert one.findall(words) == same.findall(words) == ["1", "2"]
    assert one.sub("Row", words) == same.sub("Row", words)
    assert one.search(words, 3)[1] == "2"
    assert one.groups == 1


def test_is_made_once() -> None:
    """The same pattern with the same flags is the same expression; with others it is another."""
    assert expression("sc") is expression("sc")
    assert expression("sc").match("SC") is None
    assert expression("sc", regex.I).match("SC") is not None


def test_faulty_pattern_is_told_at_its_first_use() -> None:
    """Whoever takes patterns from outside tries them where they come in."""
    faulty = expression("(sc")
    with pytest.raises(regex.error):
        faulty.search("sc")


def test_goes_to_another_process() -> None:
    """Patterns are checked side by side: what holds an expression can be sent."""
    one = expression(r"(\d+) sts")
    one.search("12 sts")
    assert pickle.loads(pickle.dumps(one)).search("12 sts")[1] == "12"


@pytest.fixture
def kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A file for what is kept, where modules may be kept as well."""
    monkeypatch.setattr(sys, "dont_write_bytecode", False)
    return tmp_path / "expressions.kept"


def test_kept_from_run_to_run(kept: Path) -> None:
    """What one run compiled is there in the next, and finds the same."""
    first = Kept(kept)
    first.compiled(r"(\d+) sc", regex.I)
    first.write()
    (key,) = pickle.loads(kept.read_bytes())
    assert key == (r"(\d+) sc", regex.I)
    assert Kept(kept).compiled(*key).search("12 SC")[1] == "12"


def test_two_runs_at_once_keep_what_both_compiled(kept: Path) -> None:
    """The one that ends last takes nothing away."""
    one, other = Kept(kept), Kept(kept)
    one.compiled("one", 0)
    other.compiled("other", 0)
    one.write()
    other.write()
    assert set(pickle.loads(kept.read_bytes())) == {("one", 0), ("other", 0)}


@pytest.mark.parametrize("held", [b"", b"no such thing", pickle.dumps([1]), pickle.dumps({("sc", 0): b"broken"})])
def test_a_damaged_file_is_no_fault_of_the_patterns(kept: Path, held: bytes) -> None:
    """Whatever is in the file, the expression is found or made."""
    kept.write_bytes(held)
    assert Kept(kept).compiled("sc", 0).search("6 sc") is not None


def test_nothing_is_kept_where_modules_are_not(kept: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Whoever tells Python to leave no compiled files gets none."""
    monkeypatch.setattr(sys, "dont_write_bytecode", True)
    one = Kept(kept)
    one.compiled("sc", 0)
    one.write()
    assert not kept.exists()


OWN_WORDS = """Zorbel Jumper
US terms

Sizes: Quimlet (Vrandy, Ostrig)

Materials
A: Grimwald, B: Plonque DK yarn, 4 mm hook
Chest Quimlet 80 cm
Vrandy 90 cm
Ostrig 100 cm

Abbreviations
sc = single crochet; wozz = 3 sc in next st; ch = chain

SNARFLE (make 2)
Row 1: With Grimwald, ch 4, sc in 2nd ch from hook and in each ch across. (3)
Row 2: Ch 1, turn, wozz, sc in next 2 sts. (5)

KRUNDEL
Work as for Snarfle. With Plonque, sew the second snarfle to the krundel.
"""


def test_words_of_an_author_are_not_kept(kept: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A design that is not published yet leaves nothing behind in the program's folder."""
    standing = Kept(kept)
    monkeypatch.setattr(compiled, "_standing", standing)
    check_text(OWN_WORDS)
    standing.compiled("told to keep", 0)
    standing.write()
    patterns = " ".join(pattern for pattern, _ in pickle.loads(kept.read_bytes()))
    assert "told to keep" in patterns
    odd = ("zorbel", "quimlet", "vrandy", "ostrig", "grimwald", "plonque", "wozz", "snarfle", "krundel")
    assert [word for word in odd if word in patterns.lower()] == []
