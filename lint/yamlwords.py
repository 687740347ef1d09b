"""What is wrong with the writing of a YAML file, said to somebody who has never heard of YAML."""

from __future__ import annotations

import yaml

from lint.expression import expression

_QUOTED = 'put the words in quotation marks, as in row: "Row 1:"'

_SIGNS = tuple("*&!%@`>|#")


def plain_problem(error: yaml.MarkedYAMLError, text: str) -> tuple[int, int, str]:
    """The line and column (from 1) of a mistake, and what would be right there."""
    mark = error.problem_mark or error.context_mark
    if mark is None:
        return 1, 1, error.problem or "this is no YAML"
    lines, problem = text.splitlines() or [""], error.problem or ""
    line = lines[min(mark.line, len(lines) - 1)]
    opened = error.context_mark or mark
    if "\t" in expression(r"\s*").match(line)[0]:
        words = "a tab stands at the beginning of this line; set lines in with spaces"
    elif "mapping values" in problem or "unexpected ':'" in problem or "but got ':'" in problem:
        once = len(expression(r":(?=\s|$)").findall(line)) < 2 and mark.line > 0
        words = "the line above lacks its colon, with a space behind it: row: …" if once else ""
        words = words or f"a second colon stands in this line; {_QUOTED}"
    elif "end of stream" in problem:
        mark, words = opened, "the quotation mark that stands here is not closed"
    elif expression(r"expected ',' or").search(problem):
        mark, words = opened, "the bracket that opens here is not closed, or a comma is missing behind it"
    elif expression(r"alphabetic|token|alias|anchor|node content|line break").search(problem):
        mark = next((one for one in (opened, mark) if _sign(lines, one) in _SIGNS), mark)
        known = _sign(lines, mark) in _SIGNS
        words = f"the sign {_sign(lines, mark)} has" if known else "one of the signs before this place has"
        words += f" a meaning of its own in such a file; {_QUOTED}"
    elif expression(r"block end|expected key|'-' indicator|sequence entries").search(problem):
        words = "this does not fit the lines around it: keys that belong together begin in one column, a list's lines with -, "
        words += "and nothing follows a closing quotation mark"
    else:
        words = expression(r"\s+").sub(" ", problem)
    return mark.line + 1, mark.column + 1, words


def _sign(lines: list[str], mark: yaml.Mark) -> str:
    """The sign at a place; nothing behind a line's end."""
    return lines[mark.line][mark.column : mark.column + 1] if mark.line < len(lines) else ""
