"""YAML rule files read with the place of every value, so that each error says file:line:column."""

from __future__ import annotations

from pathlib import Path
from typing import Any, TypeVar

import yaml
from pydantic import BaseModel, ValidationError

Model = TypeVar("Model", bound=BaseModel)
_Loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_WORDS = "tag:yaml.org,2002:"
_DEEPEST = 40
_MOST_VALUES = 50_000  # aliases written out: a small file must not grow beyond all bounds


class RuleFileError(Exception):
    """A rule file that cannot be used; the message is one `file:line:column: what is wrong` a line."""


def read_model(path: Path, model: type[Model]) -> Model:
    """Read one YAML file into a pydantic model.  Raises RuleFileError naming every fault found."""
    try:
        text = path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise RuleFileError(f"{path}: cannot be read ({error})") from error
    return validated(*load(text, str(path)), model, str(path))


def validated(data: Any, marks: dict[tuple, tuple[int, int]], model: type[Model], name: str) -> Model:
    """Plain data as a model.  Raises RuleFileError naming every fault found."""
    try:
        return model.model_validate(data)
    except ValidationError as error:
        raise RuleFileError("\n".join(_explain(fault, marks, name) for fault in error.errors())) from error


def load(text: str, name: str) -> tuple[Any, dict[tuple, tuple[int, int]]]:
    """Plain data of a YAML text, and the line and column (from 1) of every value by its path of keys."""
    try:
        node = yaml.compose(text, Loader=_Loader)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        place = f"{mark.line + 1}:{mark.column + 1}" if mark else "1:1"
        raise RuleFileError(f"{name}:{place}: {error.problem or 'not valid YAML'}") from error
    except (yaml.YAMLError, RecursionError) as error:
        raise RuleFileError(f"{name}:1:1: {' '.join(str(error).split())}") from error
    marks: dict[tuple, tuple[int, int]] = {}
    return (_build(node, (), marks, name) if node is not None else None), marks


def _build(node: yaml.Node, path: tuple, marks: dict, name: str) -> Any:
    if len(path) > _DEEPEST:
        raise RuleFileError(f"{name}:{_at(node)}: nested more than {_DEEPEST} deep, or an alias that holds itself")
    if len(marks) > _MOST_VALUES:
        raise RuleFileError(f"{name}:{_at(node)}: more than {_MOST_VALUES} values, with aliases written out")
    marks[path] = (node.start_mark.line + 1, node.start_mark.column + 1)
    if isinstance(node, yaml.MappingNode):
        result: dict[str, Any] = {}
        for key_node, value_node in node.value:
            key = _scalar(key_node) if isinstance(key_node, yaml.ScalarNode) else None
            if not isinstance(key, (str, int)):
                raise RuleFileError(f"{name}:{_at(key_node)}: a key must be a plain word")
            if key in result:
                raise RuleFileError(f"{name}:{_at(key_node)}: the key '{key}' stands twice")
            result[key] = _build(value_node, (*path, key), marks, name)
            marks[(*path, key)] = (key_node.start_mark.line + 1, key_node.start_mark.column + 1)
        return result
    if isinstance(node, yaml.SequenceNode):
        return [_build(item, (*path, index), marks, name) for index, item in enumerate(node.value)]
    return _scalar(node)


def _at(node: yaml.Node) -> str:
    return f"{node.start_mark.line + 1}:{node.start_mark.column + 1}"


def _scalar(node: yaml.ScalarNode) -> Any:
    """Only true and false are truth values: `no`, `on` and the like stay the words they are in a rule."""
    if node.tag == _WORDS + "bool":
        return node.value == "true" if node.value in ("true", "false") else node.value
    if node.tag == _WORDS + "int" and node.value.lstrip("-").isdigit():
        return int(node.value)
    if node.tag == _WORDS + "float":
        try:
            return float(node.value)
        except ValueError:
            return node.value
    return None if node.tag == _WORDS + "null" else node.value


def _explain(fault: Any, marks: dict, name: str) -> str:
    path = tuple(fault["loc"])
    while path and path not in marks:
        path = path[:-1]
    line, column = marks.get(path, (1, 1))
    keys = ".".join(str(key) for key in fault["loc"])
    if fault["type"] == "extra_forbidden":
        return f"{name}:{line}:{column}: unknown key '{fault['loc'][-1]}' (at {keys})"
    if fault["type"] == "missing":
        return f"{name}:{line}:{column}: the key '{fault['loc'][-1]}' is missing (at {keys})"
    return f"{name}:{line}:{column}: {keys}: {fault['msg'].removeprefix('Value error, ')}"
