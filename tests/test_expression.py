"""A regular expression that is compiled when it is first used."""

from __future__ import annotations

import pickle

import pytest
import regex

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
