"""What the guides say can be done can be done."""

from __future__ import annotations

import re
import sys
import types
from pathlib import Path

import pytest

from jobsheet.__main__ import main

HERE = Path(__file__).resolve().parent.parent


def test_the_worked_example_of_a_kind_works():
    """The example of DEVELOPERS.md, as it stands there, is a kind that can be reckoned and worded."""
    text = (HERE / "DEVELOPERS.md").read_text(encoding="utf-8")
    code = re.search(r"```python\n(\"\"\"Deburring.*?)```", text, re.DOTALL)
    assert code
    module = types.ModuleType("jobsheet.operations.kinds.deburr_wheel")
    sys.modules[module.__name__] = module
    try:
        exec(compile(code[1], "DEVELOPERS.md", "exec"), module.__dict__)  # our own guide
        from tests.operations.test_every_kind import setting

        kind = module.KIND
        assert sorted(entry.name for entry in kind.entries) == sorted(kind.fields.__struct_fields__)
        for units in ("mm", "in"):
            fields = kind.blank(units)
            figures = kind.figures(fields, setting(units))
            assert figures.shown("spindle_speed") == "1450 rpm"
            assert kind.rows(fields, figures, setting(units))[0].do
            assert kind.dials(fields, figures, setting(units))
    finally:
        del sys.modules[module.__name__]


def test_the_readme_begins_with_the_job_and_shows_pictures_that_are_there():
    text = (HERE / "README.md").read_text(encoding="utf-8")
    first = text.split("\n\n")[0]
    assert first.startswith("You have a part to make on a manual milling machine")
    for picture in re.findall(r"!\[[^\]]+\]\(([^)]+)\)", text):
        assert (HERE / picture).is_file(), picture


@pytest.mark.parametrize(
    "line",
    [
        line.strip()
        for line in (HERE / "README.md").read_text(encoding="utf-8").splitlines()
        if line.startswith("    .venv/bin/jobsheet")
    ],
)
def test_the_commands_of_the_readme_run(line, monkeypatch, tmp_path, capsys):
    import shlex

    monkeypatch.chdir(HERE)
    made = ("plate.pdf", "plate.svg", "card.pdf")
    arguments = [str(tmp_path / word) if word in made else word for word in shlex.split(line)[1:]]
    assert main(arguments) == 0
    capsys.readouterr()


def test_every_path_of_the_map_is_there():
    text = (HERE / "DEVELOPERS.md").read_text(encoding="utf-8")
    for name in (
        "units/table.py",
        "storage/layout.py",
        "model/job.py",
        "operations/entry.py",
    ):
        assert name in text
        assert (HERE / "jobsheet" / name).is_file()
