"""The checks: every one a function from a Context to findings, listed here and nowhere else."""

from __future__ import annotations

from lint.checks.context import Context
from lint.finding import Finding

CHECKS = ()


def run_checks(context: Context) -> tuple[Finding, ...]:
    """All findings in the order of the text; of two alike at one place, one."""
    found: dict[tuple, Finding] = {}
    for check in CHECKS:
        for finding in check(context):
            found.setdefault((finding.rule, finding.span.start, finding.span.end, finding.message), finding)
    return tuple(sorted(found.values(), key=lambda f: (f.span.start, f.span.end, f.rule, f.message)))
