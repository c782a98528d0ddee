"""What a command does not need, it does not load: asked in fresh processes, as a person starts them."""

from __future__ import annotations

import subprocess
import sys

import pytest

from jobsheet.paths import sample_jobs

PLATE = str(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
#: On a machine without a proof log: where nothing was tried there is nothing to learn, and no numpy.
UNTRIED = str(sample_jobs() / "hm-100-drilled-plate-k2.yaml")


def loaded(code: str) -> set[str]:
    """The top-level names of all modules after that code has run."""
    script = f"import sys\n{code}\nsys.stderr.write(' '.join(sorted({{name.split('.')[0] for name in sys.modules}})))"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    return set(done.stderr.split())


@pytest.mark.parametrize(
    "arguments",
    [
        ["figures", UNTRIED],
        ["figures", UNTRIED, "--json"],
        ["--help"],
        ["work", "spindle-speed", "cutting_speed=30 m/min", "diameter=12 mm"],
        ["why", "spot", "before", "drilling"],
        ["why", "--list"],
    ],
    ids=lambda arguments: " ".join(arguments[:1]),
)
def test_the_command_line_starts_without_what_it_does_not_need(arguments):
    names = loaded(f"from jobsheet.__main__ import main\nmain({arguments!r})")
    assert not names & {"PySide6", "shiboken6", "reportlab", "pint", "numpy", "manifold3d", "pypdf", "PIL"}


def test_where_trials_are_learned_from_only_numpy_comes_with_them():
    names = loaded(f"from jobsheet.__main__ import main\nmain(['figures', {PLATE!r}])")
    assert not names & {"PySide6", "shiboken6", "reportlab", "pint", "manifold3d", "pypdf", "PIL", "scipy"}


def test_the_review_asks_the_solids_and_makes_no_pages():
    names = loaded(f"from jobsheet.__main__ import main\nmain(['check', {UNTRIED!r}])")
    assert "manifold3d" in names  # the command line waits for all rules, those that need stages too
    assert not names & {"PySide6", "shiboken6", "reportlab", "pint", "pypdf", "PIL", "numpy"}


def test_a_sheet_is_made_without_qt(tmp_path):
    names = loaded(
        f"from jobsheet.__main__ import main\nmain(['sheet', {PLATE!r}, '-o', {str(tmp_path / 'x.pdf')!r}])"
    )
    assert {"reportlab", "numpy", "manifold3d"} <= names  # the pictures of the stages are drawn from solids
    assert not names & {"PySide6", "shiboken6", "pint", "pypdf"}


def test_nothing_of_ours_is_loaded_by_asking_for_the_names_of_kinds():
    script = "import sys; from jobsheet.operations.registry import kinds; kinds(); print('jobsheet.operations.kinds.face' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


@pytest.mark.parametrize("verb", ["figures", "check", "dials"])
def test_a_plan_that_a_verb_read_before_is_not_parsed_again(verb, tmp_path):
    """Nor is the parser fetched."""
    (tmp_path / "plan.yaml").write_bytes((sample_jobs() / "hm-100-drilled-plate-k2.yaml").read_bytes())
    arguments = ["jobsheet", verb, str(tmp_path / "plan.yaml")]
    # A person's Python keeps its compiled modules, and with them what was read of tables.
    code = f"sys.dont_write_bytecode = False\nsys.argv = {arguments!r}\nfrom jobsheet.__main__ import main\nmain()"
    loaded(code)
    assert not loaded(code) & {"yaml", "typing_extensions"}
