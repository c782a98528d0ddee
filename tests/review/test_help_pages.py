"""Every thing that can be asked about in the window has a page of the help, and
each page leads only to pages.
"""

import re
from pathlib import Path

import pytest

import jobsheet.limits.each
from jobsheet.cutting.formula import all_formulas
from jobsheet.gui.ink.tokens import SEVERITIES
from jobsheet.gui.ink.tokens import VERDICTS as SHOWN
from jobsheet.model.figure import VERDICTS
from jobsheet.operations import registry
from jobsheet.operations.names import FIGURES
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import rules
from jobsheet.review.pages.help_pages import found, page, pages
from jobsheet.storage.job_file import read_job

JOBS = sorted(Path(__file__).parents[2].glob("sample_jobs/*.yaml")) + sorted(
    Path(__file__).parents[1].glob("operations/jobs/*.yaml")
)
ASKED = [
    *(f"remark:{one.id}" for one in rules()), *(f"verdict:{word}" for word in sorted({*VERDICTS, *SHOWN})), *(f"severity:{word}" for word in SEVERITIES),
    *(f"formula:{name}" for name in all_formulas()), *(f"figure:{name}" for name in FIGURES), *(f"kind:{name}" for name in registry.kinds()),
    *(f"field:{name}/{entry.name}" for name in registry.kinds() for entry in registry.kind(name).entries),
]  # fmt: skip


def named_limits():
    """The name and title of every limit, as its file has them."""
    for path in sorted(Path(jobsheet.limits.each.__file__).parent.glob("[!_]*.py")):
        text = path.read_text(encoding="utf-8")
        found = re.findall(r'"([a-z]+(?:-[a-z]+)*)",\s*"([A-Z][a-z ]+)"', text)
        found += re.findall(r'name="([a-z-]+)", title="([A-Z][a-z ]+)"', text)
        found += [
            (f"{tool}-torsion", f"{tool.title()} torsion") for tool in ("drill", "tap") if "-torsion" in text
        ]
        yield from [(path.stem, *one) for one in sorted(set(found))] or [(path.stem, "", "")]


def test_everything_that_can_be_asked_about_has_a_page():
    lacking = [
        id_
        for id_, one in ((id_, page(id_)) for id_ in ASKED)
        if one is None or not one.title or not (any(said for _, said in one.lines) or one.see)
    ]
    assert not lacking


@pytest.mark.parametrize(("stem", "name", "title"), list(named_limits()))
def test_every_limit_has_a_page_under_its_title(stem, name, title):
    if stem in ("spindle_torque", "spindle_power", "chatter", "speed_range"):  # named where trials teach them
        name = stem.replace("_", "-")
        title = name.replace("-", " ").capitalize()
    assert page(f"limit:{name}").title == title


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_every_limit_and_formula_that_a_job_shows_has_a_page(path):
    for outcome in Reckoner().reckon(read_job(path)).operations.values():
        for limit in outcome.limits:
            assert page(f"limit:{limit.name}").title == limit.title
            assert page(f"verdict:{limit.verdict}")
        for step in outcome.figures.working if outcome.figures else ():
            assert page(f"formula:{step.formula}")


def test_pages_lead_only_to_pages_and_say_nothing_that_is_never_said():
    for one in pages().values():
        assert all(page(other) for other in one.see), one.id
        assert not re.search(r"\b(safe|approved|guaranteed)\b", one.text, re.IGNORECASE) or one.id.startswith(
            "note:"
        )


def test_pages_are_found_by_words():
    assert [one.id for one in found("quill push")][:1] == ["limit:quill-push"]
    assert "remark:spot-before-drilling" in [one.id for one in found("spot before")]
    assert found("zzz") == ()
