"""The same patterns in other notations: python tests/bench/notations.py [FOLDER …] [--list] [--together SEED]

Sound patterns (corpus_demo without a FOLDER; "faulty" in a name: left out) are written in the ways of
tests/ways.py: wrapped, with other signs, other words for the same.  For every way:

  rows      rows in all patterns that the way changes
  same      of those, rows that make in every size what they made before
  wrong     rows that make something else, or another number of rows: each is a fault of the reading
  lost      rows that are not recomputed any more
  false     corrections that the pattern did not have before
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable
from functools import reduce
from pathlib import Path
from random import Random

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

from helpers import check  # noqa: E402
from test_same_in_other_notation import made_by  # noqa: E402
from ways import WAYS  # noqa: E402


def corrections(text: str) -> list[str]:
    """The corrections of a text, each with its rule."""
    return [f"{one.rule}: {one.message}" for one in check(text).findings if one.weight.value == "correction"]


def several(seed: int, number: int = 40) -> dict[str, Callable[[str], str]]:
    """So many ways of which each is two or three of the others, one after the other."""
    chance = Random(seed)

    def in_turn(names: list[str]) -> Callable[[str], str]:
        return lambda text: reduce(lambda so_far, name: WAYS[name](so_far), names, text)

    picked = (chance.sample(list(WAYS), chance.choice((2, 3))) for _ in range(number))
    return {" + ".join(names): in_turn(names) for names in picked}


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("folders", nargs="*", type=Path)
    options.add_argument("--list", action="store_true")
    options.add_argument("--together", type=int, metavar="SEED", help="two or three ways at once, by chance")
    chosen = options.parse_args()
    folders = chosen.folders or [ROOT / "corpus_demo"]
    texts = {
        path.name: path.read_text(encoding="utf-8")
        for folder in folders
        for path in sorted(folder.glob("*.txt"))
        if "faulty" not in path.stem
    }
    plain = {name: (made_by(text), len(corrections(text))) for name, text in texts.items()}
    print(f"{'way':<30}{'rows':>7}{'same':>7}{'wrong':>7}{'lost':>7}{'false':>7}")
    for way, change in (WAYS if chosen.together is None else several(chosen.together)).items():
        rows = same = wrong = lost = false = 0
        for name, text in texts.items():
            changed = change(text)
            if changed == text:
                continue
            before, now = plain[name][0], made_by(changed)
            rows += len(before)
            pairs = list(zip(before, now, strict=False))
            same += sum(one == other for one, other in pairs)
            gone = sum(one != other and None in other for one, other in pairs)
            off = sum(one != other and None not in other for one, other in pairs) + abs(len(before) - len(now))
            more = corrections(changed)[plain[name][1] :] if len(corrections(changed)) > plain[name][1] else []
            wrong, lost, false = wrong + off, lost + gone, false + len(more)
            if chosen.list and (off or gone or more):
                print(f"  {way}, {name}: {off} wrong, {gone} lost", *more[:2], sep="\n      ")
        print(f"{way:<30}{rows:>7}{same:>7}{wrong:>7}{lost:>7}{false:>7}")


if __name__ == "__main__":
    main()
