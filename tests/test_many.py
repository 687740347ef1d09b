"""Many patterns: folders, what is ignored, results as they come, an index over all, several processes, kept results."""

from __future__ import annotations

import csv
import io
import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from command import run_command
from helpers import DEMO, ROOT
from made_documents import COASTER, MAKERS

SOUND = "Disc\n\nUS terms\n\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each sc around. (12)\n"
FAULTY = SOUND.replace("(12)", "(13)")


def said(raw: bytes) -> list[str]:
    """The lines of an output."""
    return raw.decode().replace("\r\n", "\n").splitlines()


def run(*arguments: str | Path):
    """The command `check`."""
    return run_command("check", *arguments)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Patterns in folders: sound, faulty, a document, a file that cannot be read, and what is no pattern."""
    for name, raw in {
        "a-sound.txt": SOUND.encode(),
        "b/faulty.md": FAULTY.encode(),
        "b/broken.docx": b"PK\x03\x04 no document",
        "b/old/faulty.txt": FAULTY.encode(),
        "c coaster.docx": MAKERS["docx"](COASTER),
        "picture.png": b"\x89PNG",
        ".hidden/x.txt": FAULTY.encode(),
    }.items():
        (tmp_path / "in" / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "in" / name).write_bytes(raw)
    return tmp_path / "in"


def checked_in(told: subprocess.CompletedProcess, folder: Path) -> dict[str, bool]:
    """The files that a run's JSON tells of, and whether they could be checked."""
    entries = json.loads(told.stdout)
    entries = [entries] if isinstance(entries, dict) else entries
    paths = [Path(entry["source"]["path"]).relative_to(folder).as_posix() for entry in entries]
    return dict(zip(paths, ("error" not in entry for entry in entries), strict=True))


ALL = {
    "a-sound.txt": True,
    "b/broken.docx": False,
    "b/faulty.md": True,
    "b/old/faulty.txt": True,
    "c coaster.docx": True,
}


def test_folders_to_their_depths(folder: Path) -> None:
    """Every pattern of a folder and of those below it is checked; one that cannot be read stops none of the others."""
    told = run(folder, "--json", "-")

    assert checked_in(told, folder) == ALL
    assert told.returncode == 2
    assert len(said(told.stderr)) == 1 and "broken.docx" in said(told.stderr)[0]


@pytest.mark.parametrize(
    ("options", "left"),
    [
        (["--kind", "docx"], ["b/broken.docx", "c coaster.docx"]),
        (["--ignore", "b/"], ["a-sound.txt", "c coaster.docx"]),
        (["--ignore", "old/", "--ignore", "*.docx"], ["a-sound.txt", "b/faulty.md"]),
        (["--ignore", "/*.txt"], ["b/broken.docx", "b/faulty.md", "b/old/faulty.txt", "c coaster.docx"]),
    ],
)
def test_kinds_and_what_is_ignored(folder: Path, options: list[str], left: list[str]) -> None:
    """Of a folder only some kinds are taken, and not what is to be ignored."""
    assert list(checked_in(run(folder, "--json", "-", *options), folder)) == left


def test_ignore_file(folder: Path) -> None:
    """A folder's own list says what in it is no pattern; a file that is named is checked all the same."""
    (folder / "frogproof.ignore").write_text("# drafts\nb/\n*.docx\n", encoding="utf-8")

    assert list(checked_in(run(folder, "--json", "-"), folder)) == ["a-sound.txt"]
    assert json.loads(run(folder / "b" / "faulty.md", "--json", "-").stdout)["title"] == "Disc"


def test_links_that_lead_out(folder: Path, tmp_path: Path) -> None:
    """A link out of the folder is told and not followed; one to a folder is left."""
    (tmp_path / "secret.txt").write_text("the words of somebody else", encoding="utf-8")
    try:
        (folder / "link.txt").symlink_to(tmp_path / "secret.txt")
        (folder / "round").symlink_to(folder)
    except OSError:
        pytest.skip("links cannot be made here")
    told = run(folder, "--json", "-")

    assert checked_in(told, folder) == {**ALL, "link.txt": False}
    assert b"leads out of its folder" in told.stderr and b"somebody else" not in told.stdout


def test_results_are_told_one_by_one_and_summed_up(folder: Path) -> None:
    """Each pattern has a line, and all of them the last."""
    lines = said(run(folder, "--csv", folder.parent / "a.csv").stdout)

    assert [line.split(":")[-2].strip() for line in lines] == ["Disc", "Disc", "Disc", "Brimble Coaster", "5 patterns"]
    assert [line.split(":")[0] for line in lines[:-1]] == [str(folder / name) for name, read in ALL.items() if read]
    assert lines[-1] == "5 patterns: 4 with corrections to make, 1 not checked"


def test_several_processes_say_the_same(folder: Path) -> None:
    """With two processes the outputs are those of one, byte for byte and in the same order."""
    one, two = run(folder, "--json", "-"), run(folder, "--json", "-", "--jobs", "2")

    assert (one.stdout, one.stderr, one.returncode) == (two.stdout, two.stderr, two.returncode)


def test_pages_and_their_index(folder: Path) -> None:
    """Each pattern has a page in the folder, also those of one name; the index leads to them, and lists what has none."""
    out = folder.parent / "out"
    run(folder, folder / "a-sound.txt", "--pages", out)
    index = (out / "index.html").read_text(encoding="utf-8")
    rows = list(csv.DictReader(io.StringIO((out / "index.csv").read_text(encoding="utf-8-sig"))))

    pages = sorted(path.relative_to(out).as_posix() for path in out.rglob("*.html"))
    assert pages == [
        "a-sound.txt-2.html",
        "a-sound.txt.html",
        "b/faulty.md.html",
        "b/old/faulty.txt.html",
        "c coaster.docx.html",
        "index.html",
    ]
    for page in ("a-sound.txt-2.html", "b/faulty.md.html", "c%20coaster.docx.html"):
        assert f'href="{page}"' in index
    assert "broken.docx" in index and "<script" not in index
    assert [row["Verdict"] for row in rows][1:3] == ["not checked", "corrections needed"]
    assert rows[1]["Not checked because"]


def test_index_sorts_without_a_script() -> None:
    """Every way to sort has a box, and every line its place under it: worst first, by title, by figures."""
    from lint.reports.index import as_index
    from lint.reports.summary import Checked, Summary

    def line(path: str, title: str, verdict: str, score: float, corrections: int, rows: int) -> Checked:
        return Checked(path, Summary(title, "text", "us", 1, verdict, "", score, corrections, 0, 0, rows, 9, ""))

    all_lines = [
        line("1", "<b>Cap", "ready", 100, 0, 9),
        line("2", "apron", "corrections", 70, 1, 2),
        Checked("3", problem="is a scan"),
        line("4", "Bonnet", "corrections", 60, 4, 9),
    ]
    page = "".join(as_index(all_lines, ["a.html", "", "", ""]))
    rows = page.split("<tr ")[2:]
    places = [
        dict(one.split(":") for one in row.split('style="')[1].split('"')[0].strip(";").split(";")) for row in rows
    ]

    def order(name: str) -> list[str]:
        names = ["is a scan", "Bonnet", "apron", "Cap"]  # in which they stand on the page
        return [names[at] for at in sorted(range(4), key=lambda at: int(places[at][f"--{name}"]))]

    assert [name for name in ("is a scan", "Bonnet", "apron", "Cap") if name in page] and "<b>" not in page
    assert order("worst") == ["is a scan", "Bonnet", "apron", "Cap"]
    assert order("given") == ["Cap", "apron", "is a scan", "Bonnet"]
    assert order("score") == ["is a scan", "Bonnet", "apron", "Cap"]
    assert order("corrections") == ["is a scan", "Bonnet", "apron", "Cap"]
    assert order("unread") == ["is a scan", "apron", "Cap", "Bonnet"]
    assert order("title") == ["is a scan", "Cap", "apron", "Bonnet"] or order("title")[1:] == ["Cap", "apron", "Bonnet"]
    for name in places[0]:
        assert f'id="by-{name[2:]}"' in page and f"order: var({name})" in page


def test_page_names_stay_in_the_folder() -> None:
    """Whatever a file is called, with the signs of any system, its page lies in the folder and has a name of its own."""
    from lint.batch.pages import page_paths
    from lint.documents.inputs import Found

    names = ["..", "../../x.txt", "/etc/x.txt", "C:\\patterns\\x.txt", "C:x.txt", "..\\x.txt", "X.TXT", "", "index"]
    paths = page_paths("out", [Found(name, name) for name in names])

    assert len({path.casefold() for path in paths}) == len(paths)
    assert all(Path("out") in Path(os.path.normpath(path)).parents for path in paths)
    assert os.path.join("out", "index.html") not in paths


class TestKept:
    """--cache: what has not changed is not checked again."""

    def _run(self, folder: Path, *options: str) -> tuple[bytes, list[Path]]:
        cache = folder.parent / "kept"
        told = run(folder, "--json", "-", "--cache", cache, *options)
        return told.stdout, sorted(cache.rglob("*.kept"))

    def test_same_output(self, folder: Path) -> None:
        """A second run says the same, byte for byte, without loading what patterns are read with."""
        first, entries = self._run(folder)
        code = (
            "import sys\nfrom lint.cli import main\ntry:\n    main(sys.argv[1:])\nexcept SystemExit:\n    pass\n"
            "sys.stderr.write(str('spacy' in sys.modules))"
        )
        arguments = ["check", str(folder), "--json", "-", "--cache", str(folder.parent / "kept")]
        again = subprocess.run([sys.executable, "-c", code, *arguments], cwd=ROOT, capture_output=True)

        assert (len(entries), again.stdout) == (4, first)
        assert again.stderr.endswith(b"False")

    def test_changes_are_seen(self, folder: Path) -> None:
        """Another text, other terms, another house or another output is checked anew."""
        _, before = self._run(folder)
        (folder / "a-sound.txt").write_text(FAULTY, encoding="utf-8")
        changed, after = self._run(folder)
        assert len(after) == len(before) + 1
        assert json.loads(changed)[0]["findings"][0]["rule"] == "count-differs" or any(
            one["rule"] == "count-differs" for one in json.loads(changed)[0]["findings"]
        )
        assert len(self._run(folder, "--terms", "uk")[1]) == len(after) + 4
        (folder / "house.yaml").write_text("extends: us\n", encoding="utf-8")
        assert len(self._run(folder)[1]) == len(after) + 4 + 4  # beside it and below it

    def test_rules_are_part_of_the_key(self, monkeypatch, tmp_path: Path) -> None:
        """When a rule or the program changes, nothing that was kept counts."""
        from lint.batch import keeping

        rules = tmp_path / "rules"
        rules.mkdir()
        (rules / "a.yaml").write_text("a: 1\n")
        monkeypatch.setattr(keeping, "rules_folder", lambda: rules)
        keeping.program.cache_clear()
        before = keeping.program()
        (rules / "a.yaml").write_text("a: 2\n")
        keeping.program.cache_clear()

        assert keeping.program() != before
        keeping.program.cache_clear()

    def test_damage_counts_for_nothing(self, folder: Path) -> None:
        """Entries that are cut off, empty or of other shape are made anew."""
        first, entries = self._run(folder)
        for entry, raw in zip(entries, (b"", b"x", entries[0].read_bytes()[:50], b"x\x9c\x03\x00"), strict=True):
            entry.write_bytes(raw)

        assert self._run(folder)[0] == first


def test_fail_on(tmp_path: Path) -> None:
    """Exit status 1 comes at corrections, at queries too, or never; what could not be done is told all the same."""
    (tmp_path / "faulty.txt").write_text(FAULTY, encoding="utf-8")
    (tmp_path / "query.txt").write_text(SOUND + "Rnd 3: Sc in every mysterious stitch. (18)\n", encoding="utf-8")
    weights = {one["weight"] for one in json.loads(run(tmp_path / "query.txt", "--json", "-").stdout)["findings"]}

    def status(name: str, *options: str) -> int:
        return run(tmp_path / name, *options).returncode

    assert [status("faulty.txt", "--fail-on", on) for on in ("correction", "query", "never")] == [1, 1, 0]
    assert "query" in weights
    assert status("query.txt", "--fail-on", "query") == 1
    assert status("query.txt", "--fail-on", "never") == 0
    assert status("none.txt", "--fail-on", "never") == 2


@pytest.mark.parametrize(
    ("encoding", "line_end"), [("utf-8-sig", "\r\n"), ("cp1252", "\r\n"), ("utf-16", "\n"), ("utf-8", "\r")]
)
def test_line_ends_and_encodings(tmp_path: Path, encoding: str, line_end: str) -> None:
    """A text as any system saves it has the same findings on the same lines."""
    from lint.batch import check_all

    text = (DEMO / "plumstone-coaster-set.txt").read_text(encoding="utf-8")
    path = tmp_path / "a – pattern é.txt"
    path.write_bytes(text.replace("\n", line_end).encode(encoding, "replace"))
    (one,) = check_all([str(path)], ["json"])
    (plain,) = check_all([str(DEMO / "plumstone-coaster-set.txt")], ["json"])

    def points(share: str) -> list[tuple]:
        return [
            (f["rule"], f["start"]["line"], f["start"]["column"], f["message"]) for f in json.loads(share)["findings"]
        ]

    (share,), (expected,) = one.shares.values(), plain.shares.values()
    assert points(share) == points(expected)


def test_broken_house_beside_some_patterns(folder: Path) -> None:
    """A house file that cannot be used costs the patterns beside it and below it, and no others."""
    (folder / "b" / "house.yaml").write_text("terms: martian\n", encoding="utf-8")
    told = run(folder, "--json", "-")

    assert [name for name, good in checked_in(told, folder).items() if good] == [
        "a-sound.txt",
        "c coaster.docx",
    ]
    assert told.stderr.count(b"house.yaml:1:1: terms") == 3


def test_fault_of_the_program_stops_nothing(monkeypatch, folder: Path) -> None:
    """Where the program itself fails over a pattern, one line says so and the others are checked."""
    from lint.batch import check_all, task

    real = task.inspect

    def failing(source, *rest):
        if source.path.endswith(".md"):
            raise KeyError("oops")
        return real(source, *rest)

    monkeypatch.setattr(task, "inspect", failing)
    told = {Path(one.path).name: one.problem for one in check_all([str(folder)])}

    assert "fault of the program" in told["faulty.md"] and "\n" not in told["faulty.md"]
    assert told["a-sound.txt"] == told["c coaster.docx"] == ""


def test_process_that_dies_stops_nothing(folder: Path, tmp_path: Path) -> None:
    """A process that a pattern kills is told, and the other patterns are checked."""
    script = tmp_path / "dying.py"
    script.write_text(
        "import os, sys\nfrom lint.batch import running, task\n\n"
        "def checked(one, asked):\n"
        "    if one.path.endswith('.md'):\n        os._exit(3)\n"
        "    return task.checked(one, asked)\n\n"
        "running.checked = checked\n"
        "if __name__ == '__main__':\n"
        "    for one in running.check_all([sys.argv[1]], jobs=2):\n        print(one.path, '|', one.problem)\n",
        encoding="utf-8",
    )
    env = {**os.environ, "PYTHONPATH": str(ROOT)}
    told = subprocess.run([sys.executable, str(script), str(folder)], capture_output=True, env=env, cwd=ROOT)
    lines = dict(line.split(" | ") if " | " in line else (line.rstrip(" |"), "") for line in said(told.stdout))

    assert len(lines) == 5
    assert "process that read it ended" in next(words for path, words in lines.items() if path.endswith(".md"))
    assert not next(words for path, words in lines.items() if path.endswith("old/faulty.txt"))


def _heeds_signals() -> None:
    """A shell that runs the tests in the background has its children ignore Ctrl-C."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


@pytest.mark.skipif(sys.platform == "win32", reason="Windows sends no such signal to one process")
@pytest.mark.parametrize("sent", [signal.SIGINT, signal.SIGTERM])
def test_stopped_half_way(folder: Path, sent: signal.Signals) -> None:
    """Ctrl-C, or a request to end, says what was finished, leaves whole pages and no other file, and nothing half written."""
    for number in range(300):
        (folder / f"d{number:03}.txt").write_text(COASTER.replace("Brimble", f"Brimble {number}"), encoding="utf-8")
    out = folder.parent / "out"
    command = [
        sys.executable,
        "-m",
        "lint",
        "check",
        str(folder),
        "--pages",
        str(out),
        "--json",
        str(out.parent / "a.json"),
    ]
    process = subprocess.Popen(
        command, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE, preexec_fn=_heeds_signals
    )
    until = time.monotonic() + 60
    while time.monotonic() < until and not (out / "d002.txt.html").exists():
        time.sleep(0.02)
    process.send_signal(sent)
    stdout, stderr = process.communicate(timeout=60)

    assert process.returncode == 2
    done = len(said(stdout))
    last = said(stderr)[-1]
    assert last.startswith(f"stopped: {done + 1} of 305 patterns were checked, the last ") and "\n" not in last
    assert "no other file was written" in last
    assert not (out.parent / "a.json").exists() and not (out / "index.html").exists()
    assert all(path.read_text(encoding="utf-8").endswith("</html>") for path in out.rglob("*.html"))
    assert not list(out.parent.rglob("*.part"))


def test_dask_cluster(folder: Path) -> None:
    """On a cluster of this machine the same call, and the command, say what one process says."""
    pytest.importorskip("distributed", reason="the extra `dask` is not installed")
    script = (
        "import subprocess, sys\n"
        "if __name__ == '__main__':\n"
        "    import joblib\n    from distributed import Client, LocalCluster\n    from lint.batch import check_all\n"
        "    folder = sys.argv[1]\n"
        "    with LocalCluster(n_workers=1, threads_per_worker=1, dashboard_address=None) as cluster, Client(cluster):\n"
        "        with joblib.parallel_config(backend='dask'):\n"
        "            told = [one.problem or one.summary.line for one in check_all([folder])]\n"
        "        command = [sys.executable, '-m', 'lint', 'check', folder, '--json', '-', '--cluster', cluster.scheduler_address]\n"
        "        raw = subprocess.run(command, capture_output=True).stdout\n"
        "    assert told == [one.problem or one.summary.line for one in check_all([folder])], told\n"
        "    sys.stdout.buffer.write(raw)\n"
    )
    path = folder.parent / "on_a_cluster.py"
    path.write_text(script, encoding="utf-8")
    env = {**os.environ, "PYTHONPATH": str(ROOT)}
    told = subprocess.run([sys.executable, str(path), str(folder)], capture_output=True, env=env, cwd=ROOT)

    assert told.returncode == 0, told.stderr.decode()
    assert told.stdout == run(folder, "--json", "-").stdout


@pytest.mark.parametrize(
    ("shell", "words"), [("bash", "complete -o"), ("zsh", "#compdef frogproof"), ("fish", "complete --no-files")]
)
def test_shell_completion(shell: str, words: str) -> None:
    """The command prints what each shell needs, and answers it."""
    made = subprocess.run([sys.executable, "-m", "lint", "completion", shell], cwd=ROOT, capture_output=True, text=True)
    env = {
        **os.environ,
        "_FROGPROOF_COMPLETE": "bash_complete",
        "COMP_WORDS": "frogproof check --fail",
        "COMP_CWORD": "2",
    }
    asked = subprocess.run([sys.executable, "-m", "lint"], cwd=ROOT, capture_output=True, text=True, env=env)

    assert words in made.stdout
    assert asked.stdout == "plain,--fail-on\n"


def test_hook_runs_the_command() -> None:
    """The hook's entry is a command that the program has, and its files are those that can be read."""
    import re

    import yaml
    from click.testing import CliRunner

    from lint.cli import commands
    from lint.documents.registry import SUFFIXES

    (hook,) = yaml.safe_load((ROOT / ".pre-commit-hooks.yaml").read_text(encoding="utf-8"))
    program, *arguments = hook["entry"].split()
    told = CliRunner().invoke(commands, [*arguments, "--help"])

    assert (program, told.exit_code) == ("frogproof", 0)
    taken = {suffix for suffix in SUFFIXES if re.search(hook["files"], f"a{suffix}")}
    assert {".txt", ".docx", ".pdf"} <= taken and not re.search(hook["files"], "a.yaml")


def test_drafts_of_one_pattern_are_told_apart(tmp_path: Path) -> None:
    """Two files with one title: what is said of each names its file; of a file by itself the title is enough."""
    for name in ("first.txt", "second.txt"):
        (tmp_path / name).write_text("Fell Hat\n\nUS terms\n\nHAT\nRnd 1: 6 sc in magic ring. (6)\n", encoding="utf-8")
    both = "\n".join(said(run(tmp_path).stdout))
    assert f"({tmp_path / 'first.txt'})" in both and f"({tmp_path / 'second.txt'})" in both
    assert said(run(tmp_path / "first.txt").stdout)[0] == "Fell Hat"
