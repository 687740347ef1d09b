"""Where rules/ stands, and what is raised where a rule file or a house file cannot be used."""

from __future__ import annotations

from pathlib import Path


class RuleFileError(Exception):
    """A rule file that cannot be used; the message is one `file:line:column: what is wrong` a line."""


def rules_folder() -> Path:
    """rules/ inside the installed package, else beside lint/ in a checkout."""
    here = Path(__file__).resolve().parent
    inside = here / "rules"
    return inside if inside.is_dir() else here.parent / "rules"
