"""What the command `explain` says: of every rule its name, of one why it matters, an example, and what is said of that."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from lint.rulelist import RuleText

if TYPE_CHECKING:  # a rule is shown without the models of the rule files
    from lint.house.model import House
    from lint.rulebook import Rulebook
    from lint.ruletexts import CheckRule, WordRule


def all_rules(rules: Iterable[RuleText]) -> str:
    """The rules' names with their weights, a line each."""
    return "".join(f"{rule.name}  ({rule.weight})\n" for rule in rules)


def explained(rule: RuleText) -> str:
    """One rule in full."""
    blocks = [f"{rule.name}  ({rule.weight})", rule.why]
    if rule.house:
        blocks.append(f"Where a house file says:\n{_indented(rule.house)}")
    if rule.good.strip():
        blocks.append(f"As it should be:\n{_indented(rule.good)}")
    if rule.bad.strip():
        blocks.append(f"As it is found:\n{_indented(rule.bad)}")
    if rule.says:
        blocks.append(f"What is said of that:\n{_indented(rule.says)}")
    blocks.append(f"Source: {rule.source}")
    return "\n\n".join(blocks) + "\n"


def rules_of_house(house: House, book: Rulebook) -> list[RuleText]:
    """All rules as a house has them, its own among them, each with the weight that the house gives it, or "off"."""
    return [_text(rule, house.rules.get(rule.name)) for rule in (*book.checks.values(), *book.word_rules)]


def _text(rule: CheckRule | WordRule, weight: str | None) -> RuleText:
    example = rule.example
    why = " ".join(rule.why.split())
    says = example.says or (rule.message if "{" not in rule.message else "")
    texts = (example.good, example.bad, example.house, says)
    return RuleText(rule.name, rule.area, weight or rule.weight.value, why, *texts, rule.source)


def _indented(text: str) -> str:
    return "\n".join("    " + line for line in text.strip().splitlines())
