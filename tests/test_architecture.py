"""The shape of the package: imports go one way, spaCy stays in one place, modules stay small and say what they are for."""

from __future__ import annotations

import ast
import subprocess
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import networkx as nx
import pytest
from helpers import ROOT, TESTS

PACKAGE = ROOT / "lint"
MOST_LINES = 400

# Lowest first.  A module imports from its own layer and from those below, never from above.
LAYERS = [
    ["writing"],
    ["compiled"],
    [
        "expression",
        "alternatives",
        "source",
        "amount",
        "madeonce",
        "remembered",
        "rulefolder",
        "strict",
        "yamlwords",
        "yamlfile",
        "rulemodels",
        "testerwords",
        "countries",
    ],
    ["documents"],
    ["finding", "place", "growth", "tree", "loops", "runs", "pattern"],
    ["ruletexts"],
    ["rulelist"],
    ["rulebook"],
    ["house"],
    ["tokens", "ordinalwords"],
    ["lexeme"],
    ["misprints"],
    ["lexicon"],
    ["reading"],
    ["restyle"],
    ["working", "ledger"],
    ["faults"],
    ["likely"],
    ["checks"],
    ["grade"],
    ["inspection"],
    ["maker"],
    ["grading"],
    ["sameness"],
    ["restyling"],
    ["customs"],
    ["glossary"],
    ["pictures"],
    ["testers"],
    ["drafts"],
    ["reports"],
    ["batch"],
    ["houseclerk", "ruleclerk"],
    ["cli_house"],
    ["cli_check"],
    ["cli"],
    ["__init__", "__main__"],
]
LEVEL = {name: level for level, names in enumerate(LAYERS) for name in names}
# The folders of lint/reading, lowest first; the modules that stand in no folder come last.
READING = ["facts", "page", "sizes", "words", "places", "counting", "lines", "repeating", "clauses", ""]
LEDGER_READS = {
    "lint.working.columns",
    "lint.working.compare",
    "lint.working.fabric",
    "lint.working.workings",
}  # working.pieces fills the ledger

PATHS = sorted(PACKAGE.rglob("*.py"))


def module_name(path: Path) -> str:
    """lint/reading/work.py is lint.reading.work; a package is named by its folder."""
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" and len(parts) > 2 else parts)


MODULES = {module_name(path): path for path in PATHS}
EVERY_MODULE = pytest.mark.parametrize("name", MODULES)


def component(name: str) -> str:
    """The layer's name for a module: lint.reading.places.work belongs to reading."""
    return name.split(".")[1]


@cache
def tree_of(name: str) -> ast.Module:
    """A module's syntax tree."""
    return ast.parse(MODULES[name].read_text(encoding="utf-8"))


def imported(name: str) -> Iterator[tuple[str, bool]]:
    """Every module that a module imports, and whether at its head (else inside a function, at run time)."""
    tree = tree_of(name)
    inside = {
        id(node)
        for scope in ast.walk(tree)
        if isinstance(scope, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda)
        for node in ast.walk(scope)
    }
    for node in ast.walk(tree):
        at_head = id(node) not in inside
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield alias.name, at_head
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{name} line {node.lineno}: a relative import"
            for alias in node.names:
                inner = f"{node.module}.{alias.name}"
                yield (inner if inner in MODULES else str(node.module)), at_head


def own(name: str) -> set[str]:
    """The modules of the package that a module imports."""
    return {
        "lint.__init__" if other == "lint" else other for other, _ in imported(name) if other.split(".")[0] == "lint"
    }


@EVERY_MODULE
def test_module_has_a_layer(name: str) -> None:
    """Every module belongs to a layer: a new one has to be given its place."""
    assert component(name) in LEVEL


@EVERY_MODULE
def test_imports_go_one_way(name: str) -> None:
    """A module imports nothing from a layer above its own."""
    above = {other for other in own(name) if LEVEL[component(other)] > LEVEL[component(name)]}

    assert not above


@pytest.mark.parametrize("name", [name for name in MODULES if component(name) == "reading"])
def test_reading_goes_one_way(name: str) -> None:
    """A module that reads imports nothing from a folder above its own."""
    above = {other for other in own(name) if component(other) == "reading" and _folder(other) > _folder(name)}

    assert not above


def _folder(name: str) -> int:
    """The place among the folders of lint/reading of one of its modules."""
    parts = name.split(".")
    is_folder = (PACKAGE / "reading" / parts[2]).is_dir() if len(parts) == 3 else False
    return READING.index(parts[2] if len(parts) == 4 or is_folder else "")


def test_no_circles() -> None:
    """No module imports itself by way of others."""
    graph = nx.DiGraph((name, other) for name in MODULES for other in own(name))

    assert list(nx.simple_cycles(graph)) == []


def test_ledger_reads_only_what_it_holds() -> None:
    """The ledger takes from the working layer only the data that it keeps."""
    assert {other for other in own("lint.ledger") if component(other) == "working"} <= LEDGER_READS


def test_inspection_runs_without_reports() -> None:
    """Importing the core loads no report and no command."""
    loaded = _loaded("import lint.inspection")

    assert "lint.inspection" in loaded
    assert not [name for name in loaded if name.startswith(("lint.reports", "lint.cli"))]


@EVERY_MODULE
def test_only_tokens_imports_spacy(name: str) -> None:
    """spaCy is imported in lint/tokens.py alone, and there only when it is needed."""
    spacy = [at_head for other, at_head in imported(name) if other.split(".")[0] == "spacy"]

    assert not any(spacy)
    assert bool(spacy) == (name == "lint.tokens")


def test_importing_the_package_does_not_load_spacy() -> None:
    """All modules can be imported without loading spaCy."""
    loaded = _loaded("import " + ", ".join(name for name in MODULES if not name.endswith(("__main__", "__init__"))))

    assert "lint.tokens" in loaded
    assert not [name for name in loaded if name.split(".")[0] in ("spacy", "thinc")]


def _loaded(statement: str) -> set[str]:
    """The modules that a fresh interpreter has loaded after a statement."""
    run = [sys.executable, "-c", f"{statement}\nimport sys\nprint('\\n'.join(sys.modules))"]
    return set(subprocess.run(run, cwd=ROOT, capture_output=True, text=True, check=True).stdout.split())


@EVERY_MODULE
def test_package_knows_nothing_of_its_tests(name: str) -> None:
    """Nothing in the package imports a test, a test's helper or a library that only tests need."""
    of_tests = {
        "tests",
        "pytest",
        "hypothesis",
        "networkx",
        "docx",
        "reportlab",
        "pypdf",
        "jsonschema",
        *(path.stem for path in TESTS.glob("*.py")),
    }

    assert not of_tests & {other.split(".")[0] for other, _ in imported(name)}


@EVERY_MODULE
def test_module_is_small(name: str) -> None:
    """No module is longer than 400 lines."""
    assert len(MODULES[name].read_text(encoding="utf-8").splitlines()) <= MOST_LINES


@EVERY_MODULE
def test_module_says_what_it_is_for(name: str) -> None:
    """Every module that holds anything has a docstring, and so has every public function and class in it."""
    tree = tree_of(name)
    public = [
        node for node in tree.body if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_")
    ]

    assert not tree.body or ast.get_docstring(tree)
    assert [] == [node.name for node in public if not ast.get_docstring(node)]


@pytest.mark.parametrize("path", sorted(TESTS.glob("test_*.py")), ids=lambda path: path.stem)
def test_tests_say_what_they_hold(path: Path) -> None:
    """Every test has a docstring of one sentence."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    tests = [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef) and node.name.startswith("test_")]

    assert tests
    assert [] == [node.name for node in tests if "\n\n" in (ast.get_docstring(node) or "\n\n")]


@EVERY_MODULE
def test_expressions_are_compiled_when_first_used(name: str) -> None:
    """Only `expression` compiles and keeps them: at a start, half of them are needed by no text (rules' own are tried at once)."""
    if name in ("lint.compiled", "lint.expression", "lint.rulebook"):
        return
    used = {
        node.attr
        for node in ast.walk(ast.parse(MODULES[name].read_text(encoding="utf-8")))
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id == "regex"
    }
    assert used <= {"Match", "escape", "error", "I", "M", "S", "IGNORECASE", "MULTILINE", "DOTALL"}
