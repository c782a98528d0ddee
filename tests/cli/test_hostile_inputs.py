"""Every verb with what is no job, no card and no place to write: exit code 2 and
a sentence, never a traceback.
"""

from __future__ import annotations

import os
import re
import sys
from pathlib import Path

import pytest

from jobsheet.__main__ import main
from jobsheet.storage.job_writing import write_job

VERBS = Path(sys.modules[main.__module__].__file__).parent / "cli" / "verbs"
ENDING = {
    "check": [], "figures": [], "dials": [], "fits": [], "cabinet": [], "sheet": ["-o", "{folder}/out.pdf"],
    "picture": ["-o", "{folder}/out.svg"], "stopwatch": ["10", "--seconds", "5", "--length", "80 mm"], "divide": [],
    "ran": ["10=1"], "order": [], "lesson": ["--seed", "3", "-o", "{folder}/lesson"],
}  # fmt: skip
#: The verb and what stands before the file, for those that take a file in another place.
BEFORE = {
    "capability": ["capability", "bench-mill-b-1", "--job"],
    "merge": ["prove", "merge", "bench-mill-b-1"],
    "needs": ["prove", "needs"],
    "shelf compare": ["shelf", "compare", "sample_jobs/hm-100-drilled-plate-b1.yaml"],
    "shelf find": ["shelf", "find"],
    "shelf check": ["shelf", "check"],
}
NO_FILE = {"why", "work", "open", "reach", "prove", "shelf"}  # these are asked below
#: Whatever verb is not named takes a job's file and nothing that must stand behind it.
ENDING.update(
    {path.stem: [] for path in VERBS.glob("[!_]*.py") if path.stem not in {*ENDING, *BEFORE, *NO_FILE}}
)
HOSTILE = (
    "missing",
    "folder",
    "pipe",
    "device",
    "binary",
    "empty",
    "huge",
    "controls",
    "long name",
    "no name",
)
#: What a terminal would act upon.
ACTS = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ud800-\udfff]")


def hostile(kind: str, folder: Path) -> str:
    path = folder / "one.yaml"
    if kind == "folder":
        path.mkdir()
    elif kind == "pipe":
        os.mkfifo(path)
    elif kind == "device":
        return "/dev/zero"
    elif kind == "binary":
        path.write_bytes(bytes(range(256)) * 20)
    elif kind == "empty":
        path.write_bytes(b"")
    elif kind == "huge":
        with path.open("wb") as stream:
            stream.truncate(30_000_000)
    elif kind == "controls":
        path = folder / "a\x1b[31m\nNo remarks.\x9b\u202e.yaml"
        path.write_text('"\\e]0;x\\a": 1\nkind\x1b: \x7f\n', "utf-8")
    elif kind == "long name":
        path = folder / f"{'n' * 300}.yaml"
    elif kind == "no name":
        return ""
    return str(path)


def refused(capsys, arguments: list[str]) -> str:
    assert main(arguments) == 2
    said = capsys.readouterr()
    assert said.err.strip()
    assert "Traceback" not in said.err
    assert not ACTS.search(said.err + said.out)
    return said.err


def test_every_verb_is_asked():
    assert {path.stem for path in VERBS.glob("[!_]*.py")} == {*ENDING, "capability"} | NO_FILE
    assert not set(ENDING) & NO_FILE


#: These are words there, or as if no file were named.
NOT_A_FILE = {
    ("divide", "device"), ("cabinet", "no name"), ("capability", "no name"), ("shelf find", "folder"), ("shelf check", "folder"),
    ("shelf find", "no name"), ("shelf check", "no name"),
}  # fmt: skip
PAIRS = [(verb, kind) for verb in (*ENDING, *BEFORE) for kind in HOSTILE if (verb, kind) not in NOT_A_FILE]


@pytest.mark.parametrize(("verb", "kind"), PAIRS)
def test_a_file_that_is_no_job(verb, kind, tmp_path, capsys):
    file = hostile(kind, tmp_path)
    ending = [word.format(folder=tmp_path) for word in ENDING.get(verb, [])]
    said = refused(capsys, [*BEFORE.get(verb, [verb]), file, *ending])
    assert not (tmp_path / "out.pdf").exists()
    assert "\nNo remarks." not in said


OUTPUTS = {
    "sheet": ["sheet", "{job}", "-o", "{out}"], "picture": ["picture", "{job}", "-o", "{out}"],
    "capability": ["capability", "bench-mill-b-1", "-o", "{out}"],
    "prove": ["prove", "plan", "bench-mill-b-1", "--cutter", "end mill 12 mm, 4 teeth, 30 mm out", "--material", "S235", "--kind", "slot", "-o", "{out}"],
}  # fmt: skip
PLACES = ("folder", "pipe", "device", "job", "text", "no folder", "long name")


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("verb", OUTPUTS)
def test_a_place_that_an_export_may_not_take(verb, place, tmp_path, capsys, hm100):
    job, out = tmp_path / "plate.yaml", tmp_path / "out.pdf"
    job.write_text(write_job(hm100), "utf-8")
    if place == "folder":
        out.mkdir()
    elif place == "pipe":
        os.mkfifo(out)
    elif place == "device":
        out.symlink_to("/dev/null")
    elif place == "job":
        out.hardlink_to(job)
    elif place == "text":
        out.write_text("my notes")
    elif place == "no folder":
        out = tmp_path / "none" / "out.pdf"
    else:
        out = tmp_path / f"{'n' * 252}.pdf"
    before = sorted((one.name, one.lstat().st_mode, one.lstat().st_size) for one in tmp_path.iterdir())
    refused(capsys, [word.format(job=job, out=out) for word in OUTPUTS[verb]])
    assert (
        sorted((one.name, one.lstat().st_mode, one.lstat().st_size) for one in tmp_path.iterdir()) == before
    )


BAD = "x\x1b[31m\x07\u202e\n\x9b"


@pytest.mark.parametrize(
    "arguments",
    [
        [BAD], [f"--{BAD}"], ["check"], ["check", "a", f"--{BAD}"], ["why", BAD], ["work", BAD], ["work", "spindle_speed", BAD],
        ["reach", BAD], ["capability", BAD], ["capability", "bench-mill-b-1", "--material", BAD], ["divide", BAD],
        ["divide", "7", "--ratio", BAD], ["divide", "7", "--circles", BAD], ["divide", "²"], ["divide", "nan"], ["divide", "1e999"],
        ["prove", BAD], ["prove", "show", BAD], ["prove", "show", "../../etc/passwd"], ["prove", "strike", "bench-mill-b-1", BAD, "--note", BAD],
        ["prove", "plan", "bench-mill-b-1", "--cutter", BAD, "--material", "S235", "--kind", "slot"],
        ["prove", "plan", "bench-mill-b-1", "--cutter", "end mill 12 mm", "--material", BAD, "--kind", "slot"],
        ["prove", "plan", "bench-mill-b-1", "--cutter", "end mill 12 mm", "--material", "S235", "--kind", BAD],
        ["prove", "plan", "bench-mill-b-1", "--cutter", "end mill 12 mm", "--material", "S235", "--kind", "slot", "--set", BAD],
        ["ran", "a", BAD], ["ran", BAD, "--take-back", BAD], ["shelf", BAD], ["shelf", "find", BAD, BAD], ["shelf", "show", "sample_jobs", BAD],
        ["shelf", "export", "sample_jobs", "-o", BAD], ["prove", "changed", "bench-mill-b-1", BAD], ["prove", "keep", "bench-mill-b-1", BAD], ["prove", "give-back", "bench-mill-b-1", BAD],
        ["stopwatch", "a", BAD, "--seconds", BAD], ["picture", "a", "-o", BAD], ["picture", "a", "-o", ""],
    ],
    ids=lambda arguments: ascii(" ".join(arguments))[:60],
)  # fmt: skip
def test_words_that_a_terminal_would_act_upon(arguments, capsys):
    refused(capsys, arguments)


@pytest.mark.parametrize("verb", ["stopwatch"])
@pytest.mark.parametrize("seconds", ["nan", "inf", "-1", "0"])
def test_numbers_that_are_none(verb, seconds, capsys, samples):
    job = samples / "hm-100-drilled-plate-b1.yaml"
    refused(capsys, [verb, str(job), "20", "--seconds", seconds, "--length", "80 mm"])


def test_a_text_of_a_job_acts_on_no_terminal(hm100, tmp_path, capsys):
    """As an older program may have saved it: escaped in quotes, and refused by its line."""
    path = tmp_path / "plate.yaml"
    path.write_text(write_job(hm100).replace("S235", '"S\\e[31m"', 1), "utf-8")
    assert "line " in refused(capsys, ["check", str(path)])


def test_json_keeps_the_very_text_and_acts_on_no_terminal(hm100, tmp_path, capsys):
    import json

    path = tmp_path / "plate.yaml"
    path.write_text(write_job(hm100).replace("name: Drilled plate", 'name: "a\u202eb"'), "utf-8")
    assert main(["figures", str(path), "--json"]) in (0, 1)
    out = capsys.readouterr().out
    assert not ACTS.search(out)
    assert json.loads(out)


def test_all_prints_go_through_one_place():
    cli = VERBS.parent
    for path in cli.rglob("*.py"):
        if path.name != "output.py":
            text = path.read_text("utf-8")
            assert not re.search(r"click\.s?echo|\bprint\(|sys\.std(out|err)\.write", text), path.name


@pytest.mark.parametrize("ending", ["json", "text"])
@pytest.mark.parametrize("depth", ["12", "60"])
@pytest.mark.parametrize("verb", ["check", "figures", "dials", "fits", "cabinet", "sheet", "picture"])
def test_a_plan_whose_stock_is_all_cut_away_is_a_plan(verb, depth, ending, hm100, tmp_path, capsys):
    """60 typed for 6.0: every verb still says what it can, and check says which step takes all."""
    job = tmp_path / "plate.yaml"
    job.write_text(write_job(hm100).replace("depth: 0.4", f"depth: {depth}", 1), "utf-8")
    arguments = [verb, str(job), *(word.format(folder=tmp_path) for word in ENDING[verb])]
    if ending == "json" and verb not in ("sheet", "picture"):
        arguments.append("--json")
    assert main(arguments) in (0, 1)
    said = capsys.readouterr()
    assert "Traceback" not in said.err
    if verb == "check":
        assert "cuts away all that is left of the work" in said.out
        assert "not checked" not in said.out or ending == "json"
