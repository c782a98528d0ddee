"""Rules ask facts: none of them reads a word that a person wrote, and other words change no remark."""

from __future__ import annotations

import ast
import random
from pathlib import Path

import pytest
from msgspec.structs import replace

import jobsheet.reckoning
import jobsheet.review
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job
from tests.review.test_rules import cases, edited, facts_named, remarks, start_of

HERE = Path(jobsheet.review.__file__).parent
ASKING = sorted([*HERE.glob("rules/**/*.py"), *HERE.glob("plan/*.py")])
#: Texts in which a person writes what they like.
FREE = ("note", "what", "with_what", "also_fetch", "condition", "why")
#: What may be read all the same, and why.
KNOWN: dict[str, set[str]] = {}
#: Modules that match words.
MATCHING = ("re", "jobsheet.units.lazily", "fnmatch", "difflib")
#: Words of the trade that rules were told by once, with none that has a size.
WORDS = [
    "measure",
    "gauge",
    "micrometer",
    "straps",
    "clamps",
    "screw",
    "screwed",
    "off",
    "through",
    "bolt",
    "vice",
    "jaws",
    "parallels",
    "bed",
    "table",
    "packing",
    "backing",
    "wood",
    "scrap",
    "round",
    "bar",
    "at",
    "the",
    "moving",
    "jaw",
    "swivel",
    "vee",
    "spacer",
    "left",
    "end",
    "of",
    "jaws",
    "angle",
    "plate",
    "jack",
    "wax",
    "support",
    "tabs",
    "slug",
    "middle",
    "hold",
    "held",
    "plug",
    "plugged",
    "jig",
    "bush",
    "guided",
    "oil",
    "dry",
    "paste",
    "ramp",
    "centre",
    "cutting",
    "slow",
    "entry",
    "spring",
    "pass",
    "same",
    "dial",
    "to",
    "the",
    "measured",
    "size",
    "from",
    "the",
    "high",
    "side",
    "back",
    "off",
    "tilt",
    "head",
    "raise",
    "lower",
    "trammed",
    "indicator",
    "check",
    "saw",
    "drill",
    "out",
    "deburr",
    "break",
    "edges",
    "mark",
    "stamp",
    "turn",
    "over",
    "unclamp",
    "cool",
    "rest",
    "inside",
    "offset",
    "bore",
    "hole",
    "counted",
    "first",
    "stops",
    "pins",
    "against",
    "upright",
    "stood",
    "cast",
    "casting",
    "bright",
    "sawn",
    "hot",
    "rolled",
    "pickled",
    "general",
    "limits",
    "unless",
    "stated",
    "by",
    "hand",
    "one",
    "time",
    "take",
    "remove",
    "loosen",
    "zero",
    "dials",
    "find",
    "set",
    "pick",
    "up",
    "floating",
    "no",
    "chamfer",
    "tip",
    "point",
    "mineral",
    "clear",
    "of",
    "holes",
    "under",
    "each",
    "clamp",
]


def module_of(path):
    return ast.parse(path.read_text(encoding="utf-8"))


@pytest.mark.parametrize("path", ASKING, ids=lambda path: path.name)
def test_no_rule_reads_what_a_person_wrote(path):
    read = set()
    for node in ast.walk(module_of(path)):
        if isinstance(node, ast.Attribute) and isinstance(node.ctx, ast.Load):
            read.add(node.attr)
        elif isinstance(node, ast.Call) and getattr(node.func, "id", "") == "getattr":
            read.update(one.value for one in node.args[1:2] if isinstance(one, ast.Constant))
    assert not (read & set(FREE)) - KNOWN.get(path.name, set())


def test_the_cabinet_is_asked_by_lists_of_things_only():
    """Lists to fetch are looked up part by part; no sentence, note or name of a
    step asks a drawer for anything.
    """
    path = Path(jobsheet.reckoning.__file__).parent / "cabinet" / "cabinet_needs.py"
    nodes = [node for node in ast.walk(module_of(path)) if not isinstance(node, ast.Expr)]
    read = {node.attr for node in nodes if isinstance(node, ast.Attribute)}
    read |= {node.value for node in nodes if isinstance(node, ast.Constant) and isinstance(node.value, str)}
    assert read & set(FREE) == {"with_what", "also_fetch"}


@pytest.mark.parametrize("path", ASKING, ids=lambda path: path.name)
def test_no_rule_matches_words(path):
    found = [
        name
        for node in ast.walk(module_of(path))
        if isinstance(node, ast.Import | ast.ImportFrom)
        for name in ([one.name for one in node.names] if isinstance(node, ast.Import) else [node.module])
        if name in MATCHING
    ]
    called = [
        node.func.id
        for node in ast.walk(module_of(path))
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
    ]
    assert not found
    assert not {"says", "said", "words_of", "holding_words", "held_by"} & set(called)


def in_other_words(job, chance):
    """The job with every free text by random words of the trade; a text that was
    empty stays so, or has words too.
    """

    def text(_before=""):
        return " ".join(chance.choices(WORDS, k=chance.randint(1, 12)))

    def step(one):
        fields = one.fields
        here = [name for name in ("what", "note", "with_what") if name in type(fields).__struct_fields__]
        return replace(one, fields=replace(fields, **{name: text() for name in here}))

    def set_up(one):
        holding = replace(one.holding, note=text())
        return replace(
            one, title=text(), note=text(), holding=holding, operations=tuple(step(o) for o in one.operations)
        )

    return replace(
        job, also_fetch=text(), why=text(), note=text(), set_ups=tuple(set_up(one) for one in job.set_ups)
    )


def told(job, facts=None):
    return [(one.rule, one.message, one.operations, one.set_up) for one in remarks(job, facts=facts)]


@pytest.mark.parametrize("path", sorted(sample_jobs().glob("*.yaml")), ids=lambda path: path.stem)
@pytest.mark.parametrize("seed", ["one", "two", "three"])
def test_other_words_change_no_remark_of_a_sample(path, seed):
    job = read_job(path)
    assert told(in_other_words(job, random.Random(f"{path.stem} {seed}"))) == told(job)


#: Of the planted mistakes one in three is told in other words in the suite, all of them in the long run.
SOME = [
    pytest.param(*one.values, id=one.id, marks=[pytest.mark.long] if index % 3 else [])
    for index, one in enumerate(cases())
]


@pytest.mark.parametrize(("rule", "case"), SOME)
def test_other_words_change_no_remark_of_a_planted_mistake(hm100, rule, case):
    start = start_of(case["job"]) if "job" in case else hm100
    job = edited(start, [tuple(one) for one in case["edits"]])
    facts = facts_named(case)
    assert told(in_other_words(job, random.Random(rule)), facts) == told(job, facts)
