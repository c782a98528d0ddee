"""Files of an earlier day are read for ever: nothing in them is lost, and they give the figures they gave.

`format-1/` was written by the program itself, before anything was built on its first form: jobs with every
kind of step in both systems of units, a person's own folder (a card begun from a class, a cabinet, the
workshop's numbers, a material, a proof log with a trial struck out, what a crash left behind) and sheets that
carry their job. Nothing in there is ever written again. Where an issue changes a figure or a form on purpose,
what is expected here changes with it, and says why; the files stay.
"""

from __future__ import annotations

import io
import json
import re
import shutil
from pathlib import Path

import pytest
import yaml

from jobsheet.__main__ import main
from jobsheet.operations.registry import kinds
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import write_job
from jobsheet.storage.records import proof_log
from tests.later import on_day

OLD = Path(__file__).parent / "format-1"
JOBS = sorted((OLD / "jobs").glob("*.yaml"))
OWN = "on-a-machine-of-ones-own"
CARD = "grandfather-s-mill-drill"
#: What the numbers of a figure may differ by; what is printed has three digits
#: or four, and is compared as printed.
LAST_DIGIT = 1e-6


def plain(text):
    """A file as nothing but groups, lists and what was typed."""
    return yaml.load(text, Loader=yaml.CBaseLoader)


#: Words that only join what became a fact.
JOINING = {"two", "at", "the", "on", "flat", "up", "to", "a", "and", "end", "packed", "vise"}


def words_in(held):
    """Every word and number of a holding, its facts by name too: `bar: yes` says bar."""
    said = " ".join(f"{name} {value}" for name, value in held.items())
    found = set(re.findall(r"[^\s,;:]+", said.casefold()))
    # A round bar at the moving jaw is one fact, strap clamps are a kind.
    facts = {
        "bar": {"round", "moving", "jaw"},
        "straps": {"strap", "clamps"},
        "packing": {"below"},
        "parallels": {"jaws"},
    }
    return found.union(*(more for name, more in facts.items() if name in found))


def lost_of_holding(old, new, where):
    """Words of an old holding that are neither a fact nor in the note."""
    kept = words_in(new)
    return [
        f"{where}.{name}: {word!r} of {text!r}"
        for name, text in old.items()
        for word in re.findall(r"[^\s,;:]+", str(text).casefold())
        if word not in kept | JOINING
    ]


def lost(old, new, where="", skip=("format",)):
    """What of the old file is no longer in the new one, each with its place; a later format may say more."""
    if isinstance(old, dict) and isinstance(new, dict):
        if where.endswith(".holding") and "kind" in new:
            return lost_of_holding(old, new, where)
        return [
            one
            for name, value in old.items()
            if name not in skip
            for one in (lost(value, new[name], f"{where}.{name}") if name in new else [f"{where}.{name}"])
        ]
    if isinstance(old, list) and isinstance(new, list) and len(old) == len(new):
        pairs = enumerate(zip(old, new, strict=True))
        return [one for index, (was, now) in pairs for one in lost(was, now, f"{where}[{index}]")]
    return [] if old == new else [f"{where}: {old!r} became {new!r}"]


def differs(old, new, where=""):
    """Where the new figures are not the old ones."""
    if isinstance(old, dict) and isinstance(new, dict):
        return [one for name in old for one in differs(old[name], new.get(name), f"{where}.{name}")]
    if isinstance(old, list) and isinstance(new, list) and len(old) == len(new):
        pairs = enumerate(zip(old, new, strict=True))
        return [one for index, (was, now) in pairs for one in differs(was, now, f"{where}[{index}]")]
    if isinstance(old, float) and isinstance(new, int | float):
        return (
            [] if new == pytest.approx(old, rel=LAST_DIGIT, abs=1e-15) else [f"{where}: {old} became {new}"]
        )
    return [] if old == new else [f"{where}: {old!r} became {new!r}"]


#: What a limit says in words.
WORDS = ("title", "shown", "sentence", "working", "evidence")
#: What is judged otherwise since: capacities of the hand are bands with a middle, and what goes
#: by a factor is tight from six tenths on; what the cut asks of them is as it was, and the
#: words are held by `tests/limits/`.
JUDGED_ANEW = {
    "hand-pace": ("demand", "capacity", "share", "verdict"), "quill-push": ("capacity", "share", "verdict"),
    "holding": ("verdict",), "marked-speed": ("verdict",), "table-push": ("verdict",),
    "wrench": ("verdict",),
    # One stress has one share: a third of what breaks the cutter, as its figure says; held by
    # tests/limits/test_threshold_edges.py.
    "cutter-bending": ("capacity", "share", "verdict"),
    # By the direction of the force, the log with it (corrections to the reference):
    # held by tests/cutting/test_chatter.py.
    "chatter": ("demand", "capacity", "share", "verdict"),
}  # fmt: skip


def figures_of(answer):
    """Of what `figures --json` says the figures and limits, by the step's
    key: words around them may change.
    """
    return {
        step["key"]: {
            "number": step["number"],
            "kind": step["kind"],
            "reckoned": "problem" not in step,
            "figures": {
                # A wall that gives way by more than 0.05 mm is said in words now; its number stays.
                name: {part: said for part, said in one.items() if name != "wall_error" or part != "shown"}
                for name, one in step["figures"].items()
                if name != "cutting_stiffness"
            },
            "limits": {
                limit["name"]: {
                    name: value
                    for name, value in limit.items()
                    if name not in WORDS and name not in JUDGED_ANEW.get(limit["name"], ())
                }
                for limit in step["limits"]
            },
        }
        for step in answer["operations"]
    }


@pytest.fixture(autouse=True)
def invented_trials_of_that_day(monkeypatch):
    """The trials that were shipped then: they were put in the place of
    others, and the figures rest on them.
    """
    shipped = OLD / "shipped-proof"
    known = {path.stem: path for path in shipped.glob("*.txt")}
    usual = proof_log._shipped_path
    monkeypatch.setattr(proof_log, "_shipped_path", lambda machine: known.get(machine) or usual(machine))


@pytest.fixture(autouse=True)
def that_day():
    """The day on which the figures were kept: what a test cut taught counts a little less every day."""
    with on_day("2026-11-28"):
        yield


@pytest.fixture
def old_home(own_home):
    """The person's own folder as the old program left it."""
    shutil.copytree(OLD / "home", own_home, dirs_exist_ok=True)
    return own_home


@pytest.fixture
def home_of(request, own_home):
    """The folder that a job was reckoned with: the person's own, where it names their machine."""

    def home(path):
        return request.getfixturevalue("old_home") if path.stem == OWN else own_home

    return home


def said(capsys, *arguments):
    main([*map(str, arguments)])
    return json.loads(capsys.readouterr().out)


def test_every_kind_of_step_is_there_in_both_systems(old_home):
    used = {"mm": set(), "in": set()}
    for path in JOBS:
        job = read_job(path)
        used[job.units] |= {step.kind for _, step in job.operations()}
    of_that_day = {path.stem for path in (OLD / "figures").glob("*.json")}
    assert of_that_day == {path.stem for path in JOBS}
    assert used["mm"] == used["in"]
    assert len(used["in"]) == 23
    assert used["in"] <= set(kinds())


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_a_job_loses_nothing(path, old_home):
    text = path.read_text(encoding="utf-8")
    again = write_job(read_job(path))
    assert lost(plain(text), plain(again)) == []
    if plain(again)["format"] == plain(text)["format"]:
        assert again == text


#: Figures of a kind of step that an issue changed on purpose: they must still be there, as something else.
CHANGED = {
    # The second method for power takes the feed a tooth, as the unit-power
    # tables define it, not the mean chip.
    "mills": ("figures.second_power", "figures.method_ratio"),
    # The point twists off under what the point takes; the cone's torque goes through the body.
    "centre-drill": ("limits.drill-torsion",),
    # A pocket's edge rubs at its wall down to the floor: all of its depth counts, not one layer
    # (tests/limits/test_flute_length.py).
    "pocket": ("limits.flute-length",),
}
#: Where the speed of a hole is left to the program: it falls evenly with the depth, not in steps, and a
#: reamer starts at half of its drill's; what hangs on the speed follows.
LEFT = ("drill", "enlarge", "ream")
BY_SPEED = (
    "wanted_speed", "spindle_speed", "cutting_speed", "removal_rate", "power", "time_each", "cutting_time", "down_feed",
)  # fmt: skip
LIMITS_BY_SPEED = ("spindle-torque", "spindle-power", "speed-range")
MILLS = {"edge-chamfer", "face", "fly-cut", "keyway", "pocket", "side-mill", "slot"}


def without_changed(step):
    """A step without what was changed on purpose, each asked to be there."""
    for name in (*CHANGED.get(step["kind"], ()), *(CHANGED["mills"] if step["kind"] in MILLS else ())):
        part, figure = name.split(".")
        if step["reckoned"] and (part == "limits" or figure in step[part]):
            assert step[part].pop(figure)
    if step["kind"] in LEFT and "wanted_speed" in step["figures"]:
        for part, names in (("figures", BY_SPEED), ("limits", LIMITS_BY_SPEED)):
            step[part] = {name: value for name, value in step[part].items() if name not in names}
    return step


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_a_job_gives_the_figures_it_gave(path, home_of, capsys):
    home_of(path)
    expected = json.loads((OLD / "figures" / f"{path.stem}.json").read_text(encoding="utf-8"))
    was, now = figures_of(expected), figures_of(said(capsys, "figures", path, "--json"))
    assert [
        (key, set(step["figures"]))
        for key, step in was.items()
        if not set(step["figures"]) <= set(now[key]["figures"])
    ] == []
    was, now = ({key: without_changed(step) for key, step in one.items()} for one in (was, now))
    assert differs(was, now) == []


def test_a_card_of_ones_own_keeps_its_text_and_is_found(old_home):
    from jobsheet.storage.card_files import find_card
    from jobsheet.storage.paper_file import paper_from_text
    from jobsheet.storage.paper_text import paper_text

    text = (old_home / "machines" / f"{CARD}.yaml").read_text(encoding="utf-8")
    assert paper_text(paper_from_text(text, CARD)) == text
    card = find_card(CARD)
    assert card.title == "Grandfather's mill-drill"
    assert [step.marked for step in card.spindle.ranges[0].steps] == [
        "200",
        "350",
        "600",
        "950",
        "1500",
        "2200",
    ]


def test_a_cabinet_of_ones_own_keeps_its_text_and_every_line_is_read(old_home):
    from jobsheet.storage.cabinet_file import own_path, read_cabinet
    from jobsheet.storage.paper_file import paper_from_text
    from jobsheet.storage.paper_text import paper_text

    text = own_path().read_text(encoding="utf-8")
    assert own_path() == old_home / "cabinet.yaml"
    assert paper_text(paper_from_text(text, "cabinet.yaml")) == text
    cabinet = read_cabinet(own_path(), own=True)
    assert cabinet.name == "Cabinet at home"
    assert (cabinet.own, len(cabinet.sections)) == (True, 11)
    # 19 drills of the set by halves less the two that are missing, 60 by number,
    # 26 by letter; 12 other lines.
    assert (len(cabinet.of("drills")), len(cabinet.things)) == (17 + 60 + 26, 17 + 60 + 26 + 12)
    assert {thing.place for thing in cabinet.things} == {"tin 1", "stand", "index", "shelf", "box", "wall"}


def test_the_workshops_numbers_are_read(old_home):
    from jobsheet.storage.shop_file import Shop, workshop

    shop, usual = workshop(), Shop()
    assert shop.fastest_pace == pytest.approx(1.0)  # 60 turns a minute
    assert shop.tool_change_time == 240
    assert (shop.country, shop.works_alone) == ("gb", "yes")
    assert shop.slowest_pace == usual.slowest_pace


def test_the_proof_log_keeps_every_record_and_teaches_what_it_taught(old_home, capsys):
    from jobsheet.storage.records.proof_log import read_log
    from jobsheet.storage.records.proof_record import record_text

    text = (old_home / "proof" / f"{CARD}.txt").read_text(encoding="utf-8")
    log = read_log(CARD)
    assert (log.problems, len(log.trials), len(log.strikes)) == ((), 5, 1)
    assert set(log.struck) == {"4825354d6d2b"}
    for record in log.records:
        assert record_text(record).strip() in text
    expected = json.loads((OLD / "proof.json").read_text(encoding="utf-8"))
    # What was asked of the frame is worked anew from the cut: of chatter another
    # figure is learned from the same records.
    expected["learned"], found = torque_of(expected), said(capsys, "prove", "show", CARD, "--json")
    assert expected["learned"]
    assert differs(expected, {**found, "learned": torque_of(found)}) == []


def torque_of(shown):
    return [one for one in shown["learned"] if one["limit"] != "chatter"]


def test_what_a_crash_left_behind_comes_back_with_its_half_typed_fields(old_home):
    journal = pytest.importorskip("jobsheet.gui.desk.journal")
    ((path, entry),) = journal.left_behind()
    assert path == old_home / "journal" / "4711-7f3a.json"
    assert entry.drafts == (("drill-1", "spindle", "9oo rpm"), ("face-1", "depth", "twenty thou"))
    job = job_from_text(entry.job, "journal")
    assert lost(plain(entry.job), plain(write_job(job))) == []
    assert job.find("drill-1")[1].fields.depth.text == "0.6"


def test_the_windows_choices_are_kept(old_home):
    settings = pytest.importorskip("jobsheet.gui.window.settings")
    assert settings.read() == settings.Settings(scheme="dark", bench=True)


@pytest.mark.parametrize("path", sorted((OLD / "sheets").glob("*.pdf")), ids=lambda path: path.stem)
def test_a_sheet_still_carries_its_job(path, old_home):
    from pypdf import PdfReader

    ((_, (held,)),) = PdfReader(io.BytesIO(path.read_bytes())).attachments.items()
    text = held.decode("utf-8")
    assert text == (OLD / "jobs" / f"{path.stem}.yaml").read_text(encoding="utf-8")
    assert lost(plain(text), plain(write_job(job_from_text(text, path.name)))) == []


@pytest.mark.parametrize("path", sorted((OLD / "sheets-with-card").glob("*.pdf")), ids=lambda path: path.stem)
def test_a_sheet_still_carries_its_card_and_its_log(path, old_home):
    carried = pytest.importorskip("jobsheet.storage.carried")
    text = (OLD / "jobs" / f"{path.stem}.yaml").read_text(encoding="utf-8")
    pdf_jobs = pytest.importorskip("jobsheet.storage.pdf_jobs")
    inside = carried.carried_of(pdf_jobs.inside(path).beside, text)
    card = OLD / "home" / "machines" / f"{inside.machine}.yaml"
    assert inside.card == card.read_text(encoding="utf-8")
    assert carried.here(inside) == "same"
    (old_home / "machines" / card.name).unlink()
    assert carried.here(inside) == "none"
    assert carried.take_over(inside).name == inside.machine
    assert carried.here(inside) == "same"
