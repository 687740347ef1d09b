"""The rules as they are shown to a reader: read without the models that check the files, so that the answer comes at once."""

from __future__ import annotations

from dataclasses import dataclass

import yaml

from lint.rulefolder import rules_folder

_FILES = {"checks.yaml": "checks", "word_rules.yaml": "word_rules"}


@dataclass(frozen=True, slots=True)
class RuleText:
    """Why there is a rule; `good`, `bad`: its examples; `house`: the house file that they are held to; `says`: what is said of the bad one."""

    name: str
    area: str
    weight: str
    why: str
    good: str
    bad: str
    house: str
    says: str
    source: str


def rule_texts() -> list[RuleText]:
    """All rules, the checks first, each in the order of its file.  Raises RuleFileError."""
    try:
        return [
            _text(entry)
            for file, key in _FILES.items()
            for entry in yaml.load(
                (rules_folder() / file).read_text(encoding="utf-8"),
                Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader),
            )[key]
        ]
    except (OSError, UnicodeDecodeError, yaml.YAMLError, AttributeError, KeyError, TypeError, IndexError):
        from lint.ruletexts import load_rules  # says every fault of the files, with its place

        load_rules()
        raise


def _text(entry: dict) -> RuleText:
    example = entry["example"]
    return RuleText(
        entry["name"],
        entry["area"],
        entry["weight"],
        " ".join(entry["why"].split()),
        example["good"],
        example["bad"],
        example.get("house", ""),
        example.get("says", ""),
        entry.get("source", "common practice, no source"),
    )
