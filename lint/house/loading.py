"""House files found, read and laid over their bases; every fault is told as `file:line:column: what would be right`."""

from __future__ import annotations

from difflib import get_close_matches
from functools import lru_cache
from pathlib import Path
from typing import Any

from lint.house.model import House
from lint.rulebook import Example, RequiredSection, Rulebook, WordRule, rules_folder
from lint.yamlfile import RuleFileError, load, validated

BESIDE = "house.yaml"  # the project's own, beside its patterns
_MOST_BASES = 8


def house_names() -> list[str]:
    """The houses that come with the rules."""
    return sorted(path.stem for path in (rules_folder() / "houses").glob("*.yaml"))


def house_path(name: str) -> Path:
    """The file of a house that comes with the rules, or the path as given."""
    shipped = rules_folder() / "houses" / f"{name}.yaml"
    return shipped if name in house_names() else Path(name)


def house_beside(pattern: Path) -> Path | None:
    """The project's house file beside a pattern (or in a folder of patterns), if there is one."""
    folder = pattern if pattern.is_dir() else pattern.parent
    return folder / BESIDE if (folder / BESIDE).is_file() else None


def load_house(path: Path, book: Rulebook) -> House:
    """A house with its bases.  Raises RuleFileError that names every fault of the file where the first are found."""
    try:
        text = path.read_text(encoding="utf-8-sig")
    except FileNotFoundError as error:
        raise RuleFileError(f"{path}: there is no such house file; houses that come with it: {_listed()}") from error
    except (OSError, UnicodeDecodeError) as error:
        raise RuleFileError(f"{path}: cannot be read ({error})") from error
    return read_house(text, str(path), book, path)


def read_house(text: str, name: str, book: Rulebook, path: Path | None = None, below: tuple[Path, ...] = ()) -> House:
    """A house from its text.  `path`: where it lies, to find its base from; `below`: the files that extend it."""
    data, marks = load(text, name)
    if not isinstance(data, dict):
        raise RuleFileError(f"{name}:1:1: a house file is a list of keys, such as 'terms: us'")
    own = validated(data, marks, House, name)
    _check(own, marks, name, book)
    if own.extends is None:
        return own
    line, column = marks[("extends",)]
    at = f"{name}:{line}:{column}: extends"
    base_path = _base_path(own.extends, path)
    if not base_path.is_file():
        raise RuleFileError(
            f"{at}: there is no house '{own.extends}'; give one of {_listed()}, or the path of a house file"
        )
    chain = (*below, path.resolve()) if path is not None else below
    if base_path.resolve() in chain:
        names = " -> ".join(item.name for item in (*chain, base_path.resolve()))
        raise RuleFileError(f"{at}: houses extend each other in a circle ({names}); let one of them extend none")
    if len(chain) > _MOST_BASES:
        raise RuleFileError(f"{at}: more than {_MOST_BASES} houses stand upon each other")
    try:
        base_text = base_path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        raise RuleFileError(f"{at}: {base_path} cannot be read ({error})") from error
    return own.over(read_house(base_text, str(base_path), book, base_path, chain))


def _base_path(name: str, path: Path | None) -> Path:
    if name in house_names():
        return house_path(name)
    return (path.parent if path is not None else Path()) / name


@lru_cache(maxsize=1)
def _listed() -> str:
    return ", ".join(house_names())


# what the parts of a house must keep to among each other ------------------------------------------------------


def _check(house: House, marks: dict, name: str, book: Rulebook) -> None:
    faults = [*_doubled_forms(house), *_unknown_rules(house, book), *_unknown_sections(house, book)]
    if faults:
        lines = []
        for path, words in faults:
            line, column = marks.get(path, (1, 1))
            lines.append(f"{name}:{line}:{column}: {'.'.join(str(key) for key in path)}: {words}")
        raise RuleFileError("\n".join(lines))


def _doubled_forms(house: House) -> list[tuple[tuple[Any, ...], str]]:
    faults, held, meanings = [], {}, {}
    for index, entry in enumerate(house.abbreviations):
        if entry.means in meanings:
            faults.append((("abbreviations", index, "means"), f"'{entry.means}' stands twice; put both into one entry"))
        meanings[entry.means] = entry
        for key, forms in (("use", [entry.use]), ("replace", entry.replace), ("never", entry.never)):
            for form in forms:
                if form in held:
                    faults.append(
                        (
                            ("abbreviations", index, key),
                            f"'{form}' already belongs to '{held[form]}'; a form may stand for one thing only",
                        )
                    )
                held[form] = entry.means
    return faults


def _unknown_rules(house: House, book: Rulebook) -> list[tuple[tuple[Any, ...], str]]:
    own = {rule.name for rule in house.word_rules}
    known = [*book.checks, *(rule.name for rule in book.word_rules), *own]
    faults: list[tuple[tuple[Any, ...], str]] = []
    for rule in house.rules:
        if rule not in known:
            near = get_close_matches(rule, known, 1)
            meant = f"is '{near[0]}' meant?" if near else "`frogproof explain` lists them all"
            faults.append((("rules", rule), f"there is no rule of this name; {meant}"))
    areas = [area.name for area in book.grade.areas]
    for index, rule in enumerate(house.word_rules):
        if rule.area not in areas:
            faults.append((("word_rules", index, "area"), f"'{rule.area}' is no area; give one of {', '.join(areas)}"))
        if rule.name in book.checks or rule.name in [other.name for other in book.word_rules]:
            faults.append((("word_rules", index, "name"), f"'{rule.name}' is a rule already; choose another name"))
    return faults


def _unknown_sections(house: House, book: Rulebook) -> list[tuple[tuple[Any, ...], str]]:
    known = sorted({"title", "instructions", *book.layout.sections, *(one.key for one in book.sections.required)})
    return [
        (("sections", index), f"'{key}' is no section; give some of {', '.join(known)}")
        for index, key in enumerate(house.sections or [])
        if key not in known
    ]


def book_for(house: House, book: Rulebook) -> Rulebook:
    """The rules as this house has them: its own word lists, plain words and required sections added."""
    plain = book.plain_words.model_copy(update={"notation": [*book.plain_words.notation, *house.plain_words]})
    words = [
        WordRule(**rule.model_dump(), example=Example(good="", bad=rule.phrases[0]), source=house.title)
        for rule in house.word_rules
    ]
    required = book.sections.required
    if house.sections is not None:
        known = {one.key: one for one in required}
        required = [known.get(key) or _by_heading(key) for key in house.sections if key != "instructions"]
    return book.model_copy(
        update={
            "word_rules": [*book.word_rules, *words],
            "plain_words": plain,
            "sections": book.sections.model_copy(update={"required": required}),
        }
    )


def _by_heading(key: str) -> RequiredSection:
    return RequiredSection(
        key=key, name=f"a section on {key}", headings=[key], known_by=[], why="The house asks for it."
    )
