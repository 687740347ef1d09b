"""YAML rule files read with the place of every value, so that each error says file:line:column."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path
from typing import Any, TypeVar, get_args

import yaml
from pydantic import BaseModel, ValidationError

from lint.rulefolder import RuleFileError
from lint.yamlwords import plain_problem

Model = TypeVar("Model", bound=BaseModel)
Marks = dict[tuple, tuple[int, int]]  # the line and column of every value, by its path of keys
_Loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_WORDS = "tag:yaml.org,2002:"
_DEEPEST = 40
_MOST_FIGURES = 18
_MOST_VALUES = 50_000  # aliases written out: a small file must not grow beyond all bounds


@dataclass(frozen=True, slots=True, order=True)
class Fault:
    """One mistake in a file: the keys that lead to it, and what would be right."""

    keys: tuple
    words: str


def read_model(path: Path, model: type[Model]) -> Model:
    """Read one YAML file into a pydantic model.  Raises RuleFileError naming every fault found."""
    try:
        text = path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise RuleFileError(f"{path}: cannot be read ({error})") from error
    return validated(*load(text, str(path)), model, str(path))


def validated(data: Any, marks: Marks, model: type[Model], name: str) -> Model:
    """Plain data as a model.  Raises RuleFileError naming every fault found."""
    try:
        return model.model_validate(data)
    except ValidationError as error:
        raise RuleFileError(in_lines(faults_of(error, model), marks, name)) from error


def faults_of(error: ValidationError, model: type[BaseModel]) -> list[Fault]:
    """Every fault, with the keys that lead to it and what would be right there."""
    return [Fault(tuple(fault["loc"]), _right(fault, model)) for fault in error.errors()]


def in_lines(faults: Iterable[Fault], marks: Marks, name: str) -> str:
    """`file:line:column: key: what would be right`, one a line, in the order of the file."""
    placed = sorted((_place(fault.keys, marks), index, fault) for index, fault in enumerate(faults))
    return "\n".join(
        _said(name, f"{line}:{column}", f"{_named(fault.keys)}: {fault.words}").replace(": : ", ": ")
        for (line, column), _, fault in placed
    )


def _named(keys: tuple) -> str:
    """The keys that lead to a value; entries of a list are counted from 1, as people do."""
    return ".".join(str(key + 1) if isinstance(key, int) else str(key) for key in keys)


def _said(name: str, at: str, words: str) -> str:
    """A fault and its place in one short line, also where it shows a key or a value that is long or runs over several."""
    return f"{name}:{at}: " + " ".join(word if len(word) <= 60 else f"{word[:59]}…" for word in words.split())


def _place(keys: tuple, marks: Marks) -> tuple[int, int]:
    while keys and keys not in marks:
        keys = keys[:-1]
    return marks.get(keys, (1, 1))


def load(text: str, name: str) -> tuple[Any, Marks]:
    """Plain data of a YAML text, and the line and column (from 1) of every value by its path of keys."""
    try:
        node = yaml.compose(text, Loader=_Loader)
    except yaml.MarkedYAMLError as error:
        line, column, words = plain_problem(error, text)
        raise RuleFileError(_said(name, f"{line}:{column}", words)) from error
    except (yaml.YAMLError, RecursionError) as error:
        raise RuleFileError(_said(name, "1:1", str(error))) from error
    marks: Marks = {}
    return (_build(node, (), marks, name) if node is not None else None), marks


def _build(node: yaml.Node, path: tuple, marks: dict, name: str) -> Any:
    if len(path) > _DEEPEST:
        raise RuleFileError(_said(name, _at(node), f"nested more than {_DEEPEST} deep, or an alias that holds itself"))
    if len(marks) > _MOST_VALUES:
        raise RuleFileError(_said(name, _at(node), f"more than {_MOST_VALUES} values, with aliases written out"))
    marks[path] = (node.start_mark.line + 1, node.start_mark.column + 1)
    if isinstance(node, yaml.MappingNode):
        result: dict[str, Any] = {}
        for key_node, value_node in node.value:
            key = key_node.value if isinstance(key_node, yaml.ScalarNode) else None
            if key is None:
                raise RuleFileError(_said(name, _at(key_node), "a key must be a plain word"))
            if key in result:
                raise RuleFileError(_said(name, _at(key_node), f"the key '{key}' stands twice"))
            result[key] = _build(value_node, (*path, key), marks, name)
            marks[(*path, key)] = (key_node.start_mark.line + 1, key_node.start_mark.column + 1)
        return result
    if isinstance(node, yaml.SequenceNode):
        return [_build(item, (*path, index), marks, name) for index, item in enumerate(node.value)]
    return _scalar(node)


def _at(node: yaml.Node) -> str:
    return f"{node.start_mark.line + 1}:{node.start_mark.column + 1}"


def _scalar(node: yaml.ScalarNode) -> Any:
    """Only true and false are truth values: `no`, `on` and the like stay the words they are in a rule.

    So does a number of more figures than any number of a rule has.
    """
    if node.tag == _WORDS + "bool":
        return node.value == "true" if node.value in ("true", "false") else node.value
    if node.tag == _WORDS + "int" and node.value.lstrip("-").isdigit() and len(node.value) <= _MOST_FIGURES:
        return int(node.value)
    if node.tag == _WORDS + "float":
        try:
            return float(node.value)
        except ValueError:
            return node.value
    return None if node.tag == _WORDS + "null" else node.value


def _right(fault: Any, model: type[BaseModel]) -> str:
    """What would be right in place of a value, or of a key, that a model does not take."""
    kind, given, context = fault["type"], fault["input"], fault.get("ctx", {})
    if kind == "extra_forbidden":
        known, key = _keys(model, fault["loc"][:-1]), str(fault["loc"][-1])
        near = get_close_matches(key, known, 1)
        meant = f"is '{near[0]}' meant?" if near else f"there are {', '.join(known)}"
        return f"there is no key '{key}' here; {meant}"
    if kind == "missing":
        return f"the key '{fault['loc'][-1]}' is missing"
    shown = f"'{given}' will not do" if isinstance(given, (str, int, float)) else "that will not do"
    if kind in ("literal_error", "enum"):
        return f"{shown}; write {context['expected']}"
    if kind == "list_type" and isinstance(given, (str, int, float)):
        return f"{shown}; write a list, [{given}]"
    if kind in _SHAPES:
        return f"{shown}; write {_SHAPES[kind]}"
    return str(fault["msg"]).removeprefix("Value error, ")


_SHAPES = {
    "list_type": "a list, such as [one, two]",
    "dict_type": "keys with values, such as {key: value}",
    "model_type": "keys with values, such as {key: value}",
    "string_type": "words, in quotation marks where they look like a number",
    "string_too_short": "at least one letter",
    "too_short": "at least one entry",
    "bool_type": "true or false",
    "bool_parsing": "true or false",
    "int_parsing": "a whole number",
    "float_parsing": "a number",
    "string_pattern_mismatch": "small letters and hyphens, such as no-fillers",
}


def _keys(model: type[BaseModel], keys: tuple) -> list[str]:
    """The keys that a model takes at the end of a path of keys."""
    held: type[BaseModel] | None = model
    for key in keys:
        if isinstance(key, str) and held is not None:  # a number is a place in a list of what was named before
            inside = held.model_fields[key].annotation if key in held.model_fields else None
            held = next(_models_in(inside), None)
    return list(held.model_fields) if held is not None else []


def _models_in(annotation: Any) -> Iterator[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    for inner in get_args(annotation):
        yield from _models_in(inner)
