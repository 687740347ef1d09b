"""House files found, read and laid over their bases; every fault is told as `file:line:column: what would be right`."""

from __future__ import annotations

from difflib import get_close_matches
from functools import lru_cache
from pathlib import Path

from pydantic import ValidationError

from lint.house.model import House
from lint.rulebook import RequiredSection, Rulebook
from lint.rulefolder import RuleFileError, rules_folder
from lint.ruletexts import Example, WordRule
from lint.yamlfile import Fault, faults_of, in_lines, load

BESIDE = "house.yaml"  # the project's own, beside its patterns
_MOST_BASES = 8
_LONGEST = 1_000_000  # bytes of a house file: what is longer is something else
_KINDS = (".yaml", ".yml")


def house_names() -> list[str]:
    """The houses that come with the rules."""
    return sorted(path.stem for path in (rules_folder() / "houses").glob("*.yaml"))


def house_path(name: str) -> Path:
    """The file of a house that comes with the rules, or the path as given."""
    shipped = rules_folder() / "houses" / f"{name}.yaml"
    return shipped if name in house_names() else Path(name)


def house_beside(pattern: Path, folder: Path | None = None) -> Path | None:
    """The project's house file: beside a pattern, or in the nearest folder above, up to the one that was named."""
    places = [pattern if pattern.is_dir() else pattern.parent]
    while folder is not None and places[-1] != folder and folder in places[-1].parents:
        places.append(places[-1].parent)
    return next((place / BESIDE for place in places if (place / BESIDE).is_file()), None)


def load_house(path: Path, book: Rulebook) -> House:
    """A house with its bases.  Raises RuleFileError that names every fault of the file where the first are found."""
    try:
        text = _text_of(path)
    except FileNotFoundError as error:
        raise RuleFileError(f"{path}: there is no such house file; houses that come with it: {_listed()}") from error
    except (OSError, UnicodeDecodeError) as error:
        raise RuleFileError(f"{path}: cannot be read ({error})") from error
    return read_house(text, str(path), book, path)


def _text_of(path: Path) -> str:
    """The text of a house file; raises OSError, UnicodeDecodeError, and RuleFileError for what is longer than any."""
    with path.open("rb") as opened:
        raw = opened.read(_LONGEST + 1)
    if len(raw) > _LONGEST:
        raise RuleFileError(f"{path}:1:1: a house file has at most {_LONGEST:,} bytes")
    return raw.decode("utf-8-sig")


def read_house(text: str, name: str, book: Rulebook, path: Path | None = None, below: tuple[Path, ...] = ()) -> House:
    """A house from its text.  `path`: where it lies, to find its base from; `below`: the files that extend it."""
    data, marks = load(text, name)
    if not isinstance(data, dict):  # a key with nothing behind it is one that the house says nothing of
        raise RuleFileError(f"{name}:1:1: a house file is a list of keys, such as 'terms: us'")
    own, faults = _as_far_as_valid({key: value for key, value in data.items() if value is not None})
    faults += [*_doubled_forms(own), *_unknown_rules(own, book), *_unknown_sections(own, book)]
    base_path, chain = None, below
    if own.extends is not None:
        base_path = _base_path(own.extends, path)
        chain = (*below, path.resolve()) if path is not None else below
        wrong = _wrong_base(own.extends, base_path, chain)
        faults += [Fault(("extends",), wrong)] if wrong else []
    if faults:
        raise RuleFileError(in_lines(faults, marks, name))
    if base_path is None:
        return own
    try:
        base_text = _text_of(base_path)
    except (OSError, UnicodeDecodeError) as error:
        raise RuleFileError(
            in_lines([Fault(("extends",), f"{base_path} cannot be read ({error})")], marks, name)
        ) from error
    base = read_house(base_text, str(base_path), book, base_path, chain)
    if own.terms is not None and base.terms not in (None, own.terms):
        words = f"'{own.terms}' will not do on '{own.extends}', whose list is in {base.terms.upper()} terms; extend a house in {own.terms.upper()} terms"
        raise RuleFileError(in_lines([Fault(("terms",), words)], marks, name))
    return own.over(base)


def _as_far_as_valid(data: dict) -> tuple[House, list[Fault]]:
    """The house of those keys that are right, so that the others' faults don't hide theirs; and the faults."""
    try:
        return House.model_validate(data), []
    except ValidationError as error:
        right = {key: dict(value) if isinstance(value, dict) else value for key, value in data.items()}
        for fault in error.errors():
            key, *below = fault["loc"]
            if below and isinstance(right.get(key), dict):
                right[key].pop(below[0], None)
            else:
                right.pop(key, None)
        return House.model_validate(right), faults_of(error, House)


def _wrong_base(name: str, path: Path, chain: tuple[Path, ...]) -> str | None:
    """What is wrong with the house that another stands upon, if anything.

    A house may lie beside patterns of strangers: it can name no file of another kind to be read out.
    """
    if name not in house_names() and path.suffix.lower() not in _KINDS:
        return f"'{name}' is no house file; give one of {_listed()}, or the path of a file that ends in .yaml"
    if not path.is_file():
        return f"there is no house '{name}'; give one of {_listed()}, or the path of a house file"
    if path.resolve() in chain:
        names = " -> ".join(item.name for item in (*chain, path.resolve()))
        return f"houses extend each other in a circle ({names}); let one of them extend none"
    return f"more than {_MOST_BASES} houses stand upon each other" if len(chain) > _MOST_BASES else None


def _base_path(name: str, path: Path | None) -> Path:
    if name in house_names():
        return house_path(name)
    return (path.parent if path is not None else Path()) / name


@lru_cache(maxsize=1)
def _listed() -> str:
    return ", ".join(house_names())


# what the parts of a house must keep to among each other ------------------------------------------------------


def _doubled_forms(house: House) -> list[Fault]:
    faults, held, meanings = [], {}, {}
    for index, entry in enumerate(house.abbreviations):
        if entry.means in meanings:
            faults.append(
                Fault(("abbreviations", index, "means"), f"'{entry.means}' stands twice; put both into one entry")
            )
        meanings[entry.means] = entry
        for key, forms in (("use", [entry.use]), ("replace", entry.replace), ("never", entry.never)):
            for form in forms:
                if form in held:
                    faults.append(
                        Fault(
                            ("abbreviations", index, key),
                            f"'{form}' already belongs to '{held[form]}'; a form may stand for one thing only",
                        )
                    )
                held[form] = entry.means
    return faults


def _unknown_rules(house: House, book: Rulebook) -> list[Fault]:
    own = {rule.name for rule in house.word_rules}
    known = [*book.checks, *(rule.name for rule in book.word_rules), *own]
    faults: list[Fault] = []
    for rule in house.rules:
        if rule not in known:
            near = get_close_matches(rule, known, 1)
            meant = f"is '{near[0]}' meant?" if near else "`frogproof explain` lists them all"
            faults.append(Fault(("rules", rule), f"there is no rule of this name; {meant}"))
    areas = [area.name for area in book.grade.areas]
    for index, rule in enumerate(house.word_rules):
        if rule.area not in areas:
            words = f"'{rule.area}' is no area; give one of {', '.join(areas)}"
            faults.append(Fault(("word_rules", index, "area"), words))
        if rule.name in book.checks or rule.name in [other.name for other in book.word_rules]:
            words = f"'{rule.name}' is a rule already; choose another name"
            faults.append(Fault(("word_rules", index, "name"), words))
    return faults


def sections_known(book: Rulebook) -> list[str]:
    """The names of all sections that a house may ask for."""
    return sorted({"title", "instructions", *book.layout.sections, *(one.key for one in book.sections.required)})


def _unknown_sections(house: House, book: Rulebook) -> list[Fault]:
    known = sections_known(book)
    return [
        Fault(("sections", index), f"'{key}' is no section; give some of {', '.join(known)}")
        for index, key in enumerate(house.sections or [])
        if key not in known
    ]


def book_for(house: House, book: Rulebook) -> Rulebook:
    """The rules as this house has them: its own word lists, plain words and required sections added."""
    spared = [form for one in house.abbreviations if not one.listed for form in (one.use, one.several)]
    plain = book.plain_words.model_copy(update={"notation": [*book.plain_words.notation, *house.plain_words, *spared]})
    words = [
        WordRule(**rule.model_dump(), together=True, example=Example(good="", bad=rule.phrases[0]), source=house.title)
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
