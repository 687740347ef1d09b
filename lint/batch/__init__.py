"""Many patterns: each checked by itself, in one process or many, and what came of it kept between runs."""

from lint.batch.running import Results, check_all, results

__all__ = ["Results", "check_all", "results"]
