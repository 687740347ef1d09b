"""Nothing lost: files are written whole or not at all, never over what was read, and come out the same every time."""

from __future__ import annotations

import ast
import os
import subprocess
import sys
from pathlib import Path

import pytest
from command import run_command as run
from helpers import DEMO, ROOT
from made_documents import COASTER, MAKERS

from lint.writing import NotWritten, write_files

WRITERS = {"write_text", "write_bytes", "open", "rename", "replace", "mkdir", "makedirs", "touch"}


def test_every_writer_goes_one_way() -> None:
    """No other module of the package writes, moves or makes a file."""
    for path in sorted((ROOT / "lint").rglob("*.py")):
        if path.name == "writing.py":
            continue
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if not isinstance(node, ast.Call):
                continue
            name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            words = [
                one.value for one in (*node.args, *(k.value for k in node.keywords)) if isinstance(one, ast.Constant)
            ]
            assert name not in WRITERS - {"open", "replace"}, (path, node.lineno)
            if name == "open":
                assert all(not set(str(word)) & set("wax+") for word in words[-1:] if len(str(word)) < 4), (
                    path,
                    node.lineno,
                )
            if name == "replace":
                owner = node.func.value if isinstance(node.func, ast.Attribute) else None
                assert not (isinstance(owner, ast.Name) and owner.id == "os"), (path, node.lineno)


def test_all_or_none(tmp_path: Path) -> None:
    """Where one of several outputs cannot be made, none is touched and nothing half written is left."""
    (tmp_path / "old.txt").write_text("as it was")

    def breaks():
        yield b"half"
        raise OSError(28, "No space left on device")

    with pytest.raises(NotWritten, match="new.txt: cannot be written .No space left on device"):
        write_files({str(tmp_path / "old.txt"): "new words", str(tmp_path / "new.txt"): breaks()})
    assert [path.name for path in tmp_path.iterdir()] == ["old.txt"]
    assert (tmp_path / "old.txt").read_text() == "as it was"


def test_interrupted(tmp_path: Path) -> None:
    """Ctrl-C while a file is being written leaves the old one."""
    (tmp_path / "old.txt").write_text("as it was")

    def stopped():
        yield b"half"
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        write_files({str(tmp_path / "old.txt"): stopped()})
    assert [(path.name, path.read_text()) for path in tmp_path.iterdir()] == [("old.txt", "as it was")]


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no bound on the size of files")
def test_full_disk(tmp_path: Path) -> None:
    """When no more fits, one line says so, and the old files are as they were."""
    for name in ("a.html", "a.json"):
        (tmp_path / name).write_text("as it was")
    code = (
        "import resource, sys\nresource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000))\n"
        "from lint.cli import main\nmain(sys.argv[1:])"
    )
    arguments = ["check", str(DEMO / "pockle-the-mole.txt"), "--csv", "a.csv", "--html", "a.html", "--json", "a.json"]
    env = {**os.environ, "PYTHONPATH": str(ROOT), "PYTHONDONTWRITEBYTECODE": "1"}
    told = subprocess.run([sys.executable, "-c", code, *arguments], cwd=tmp_path, capture_output=True, env=env)

    assert told.returncode == 2 and told.stderr.count(b"\n") == 1 and b"cannot be written" in told.stderr
    assert {path.name: path.read_text() for path in tmp_path.iterdir()} == {
        "a.html": "as it was",
        "a.json": "as it was",
    }


@pytest.mark.parametrize("link", ["same", "symlink", "hard link", "another spelling"])
@pytest.mark.parametrize("option", ["--html", "--json", "--csv", "--sarif", "--docx"])
def test_never_over_a_pattern(tmp_path: Path, option: str, link: str) -> None:
    """No output goes over a file that was read, by whatever name it is called."""
    pattern = tmp_path / "a.docx"
    pattern.write_bytes(MAKERS["docx"](COASTER))
    raw, out = pattern.read_bytes(), tmp_path / "out"
    if link == "symlink":
        out.symlink_to(pattern)
    elif link == "hard link":
        os.link(pattern, out)
    else:
        out = pattern if link == "same" else tmp_path / "." / ".." / tmp_path.name / "a.docx"
    told = run("check", pattern, option, out)

    assert told.returncode == 2 and told.stderr.count(b"\n") == 1 and b"one of the files that were read" in told.stderr
    assert pattern.read_bytes() == raw and pattern.stat().st_size == out.stat().st_size


def test_never_over_other_inputs(tmp_path: Path) -> None:
    """House files, testers' reports, drafts and standard input are inputs, too."""
    for name in ("old.txt", "new.txt"):
        (tmp_path / name).write_text(COASTER, encoding="utf-8")
    (tmp_path / "house.yaml").write_text("extends: us\n")
    (tmp_path / "t.csv").write_text("Tester,Row,Count\nMia,1,6\n")
    held = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    old, new, house, tester = (tmp_path / name for name in ("old.txt", "new.txt", "house.yaml", "t.csv"))
    with open(old, "rb") as words:
        command = [sys.executable, "-m", "lint", "check", "-", "--csv", str(old)]
        assert subprocess.run(command, cwd=ROOT, stdin=words, capture_output=True).returncode == 2
    for arguments in (
        ("check", old, "--house", house, "--html", house),
        ("check", old, "--csv", house),
        ("testers", old, tester, "--csv", tester),
        ("testers", old, tester, "--html", old),
        ("recheck", old, new, "--html", new),
        ("restyle", old, "--to", "uk", "-o", old),
        ("restyle", old, "--to", "uk", "-o", tmp_path / "o", "--log", old),
        ("house", "--from", old, "-o", old),
        ("check", tmp_path, "--pages", tmp_path, "--json", old),
    ):
        told = run(*arguments)
        assert (told.returncode, told.stderr.count(b"\n")) == (2, 1), (arguments, told.stderr)
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == held


def test_links_and_leave_are_kept(tmp_path: Path) -> None:
    """An output that is a link stays one, and who may read a file does not change; a new file is as others made here."""
    (tmp_path / "real.csv").write_text("old")
    (tmp_path / "real.csv").chmod(0o640)
    (tmp_path / "link.csv").symlink_to("real.csv")
    write_files({str(tmp_path / "link.csv"): "new", str(tmp_path / "fresh.csv"): "new"})
    (tmp_path / "plain").write_text("x")

    assert (tmp_path / "link.csv").is_symlink() and (tmp_path / "real.csv").read_text() == "new"
    assert (tmp_path / "real.csv").stat().st_mode & 0o777 == 0o640
    assert (tmp_path / "fresh.csv").stat().st_mode == (tmp_path / "plain").stat().st_mode


def test_devices_are_written_to() -> None:
    """What is no file, such as the null device, is written to and not replaced."""
    told = run("check", DEMO / "peg-tub-basket.txt", "--html", os.devnull)

    assert (told.returncode, told.stderr) == (0, b"")
    assert not Path(os.devnull).is_file()


def test_second_run_is_the_same(tmp_path: Path) -> None:
    """Every output of a second run is the first one's, byte for byte."""
    document = tmp_path / "a.docx"
    document.write_bytes(MAKERS["docx"](COASTER))
    (tmp_path / "a.pdf").write_bytes(MAKERS["pdf"](COASTER))
    names = ("html", "json", "docx", "sarif", "csv", "xlsx")
    made = []
    for turn in ("1", "2"):
        folder = tmp_path / turn
        folder.mkdir()
        options = [word for name in names for word in (f"--{name}", folder / f"o.{name}")]
        run("check", document, *options, "--grading", folder / "g.xlsx", "--index", folder / "i.html")
        run("check", tmp_path / "a.pdf", "--pdf-notes", folder / "o.pdf")
        run("testers", document, "--form", folder / "form.xlsx")
        made.append({path.name: path.read_bytes() for path in folder.iterdir()})

    assert len(made[0]) == len(names) + 4
    assert made[0] == made[1]
