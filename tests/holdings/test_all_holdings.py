"""Each kind of holding: its facts are written and read back, its form has each once, its bodies stand where its numbers say."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.errors import DocumentError, NoSuchEntry
from jobsheet.holdings.all_holdings import (
    changed_to,
    entries_of,
    holding_kind,
    holdings,
    kind_of,
    roles_of,
    words_of,
)
from jobsheet.holdings.placed import bodies_of, own_vice
from jobsheet.model.held_work import NOTHING, Around
from jobsheet.model.lying import lying, stock_box
from jobsheet.model.shop import Shop
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import blank_job, job_from_text
from jobsheet.storage.job_writing import write_job

B1 = "bench-mill-b-1"
#: What is typed for each way of asking, to fill every field of every kind.
TYPED = {
    "force": "12 kN",
    "length": "12 mm", "torque": "20 N·m", "thread": "M12", "angle": "30°", "count": "2", "flag": "yes", "text": "words",
    "places": "10, 5; 70, 5",
}  # fmt: skip


def full(name):
    """A holding of that kind with every fact said."""
    kind = holding_kind(name)
    values = {
        entry.name: entry.read(entry.choices[0] if entry.choices else TYPED[entry.asks], "mm")
        for entry in kind.entries
    }
    return kind.fields(**values)


def with_holding(holding, **more):
    job = blank_job(B1)
    return replace(job, set_ups=(replace(job.set_ups[0], holding=holding, **more),))


def test_there_are_as_many_as_the_design_asks():
    wanted = {
        "vice",
        "straps",
        "angle plate",
        "vee block",
        "fixture plate",
        "chuck",
        "centres",
        "sine plate",
        "hand vice",
    }
    assert wanted | {"other words"} <= set(holdings())


@pytest.mark.parametrize("name", holdings())
def test_every_fact_is_written_and_read_back(name):
    job = with_holding(full(name))
    text = write_job(job)
    assert f"kind: {name}" in text
    assert job_from_text(text, "x") == job
    assert write_job(job_from_text(text, "x")) == text


@pytest.mark.parametrize("name", holdings())
def test_the_form_has_each_fact_once(name):
    kind = holding_kind(name)
    names = [entry.name for entry in kind.entries]
    assert sorted(names) == sorted(set(names))
    assert set(names) == set(kind.fields.__struct_fields__)
    assert all(entry.title for entry in kind.entries)


@pytest.mark.parametrize("name", holdings())
def test_nothing_said_is_a_holding_too(name):
    """Only its kind was chosen: words, bodies and grip ask nothing that is not there."""
    holding = changed_to(NOTHING, name, "mm")
    kind = kind_of(holding)
    around = Around(size=(0.08, 0.05, 0.02))
    assert words_of(holding)
    kind.bodies(holding, around)
    kind.rests(holding)
    assert kind.mass(holding, find_card(B1)) >= 0


def test_by_hand_cannot_be_chosen():
    with pytest.raises(NoSuchEntry):
        holding_kind("by hand")
    text = write_job(with_holding(own_vice(find_card(B1)))).replace("kind: vice", "kind: by hand")
    with pytest.raises(DocumentError) as told:
        job_from_text(text, "x")
    assert "no way of holding called “by hand”" in str(told.value)


def test_a_vise_is_a_vice():
    text = write_job(with_holding(own_vice(find_card(B1)))).replace("kind: vice", "kind: vise")
    assert job_from_text(text, "x").set_ups[0].holding.kind == "vice"


def test_another_kind_keeps_what_both_ask():
    straps = full("straps")
    angle = changed_to(straps, "angle plate", "mm")
    assert angle.bolt == straps.bolt
    assert angle.tighten == straps.tighten
    assert angle.note == straps.note
    assert not hasattr(angle, "at")
    assert changed_to(angle, "nothing yet", "mm").kind == ""


def test_nothing_holds_nothing():
    assert not roles_of(NOTHING).holds
    assert [entry.name for entry in entries_of(NOTHING)] == ["kind", "note"]


def placed(holding, size=("80", "50", "20"), **laid):
    job = with_holding(holding, **laid)
    one = dict(zip(("length", "width", "height"), size, strict=True))
    from jobsheet.edit.commands import SetField

    for name, text in one.items():
        job = SetField("job:stock", name, text).apply(job)
    set_up = job.set_ups[0]
    return bodies_of(set_up, lying(set_up, stock_box(job)), find_card(B1))


def vice(**facts):
    kind = holding_kind("vice")
    return kind.fields(
        **{entry.name: entry.read(facts[entry.name], "mm") for entry in kind.entries if entry.name in facts}
    )


def only(found, part):
    return [body for body in found if body.part == part]


def test_jaws_stand_where_the_numbers_say():
    """B-1's vice: jaws 80 wide, 25 deep. Work 80 × 50 × 20, 6 above the jaws: the jaws reach from 11 below it to 14."""
    found = placed(vice(above_jaws="6", rests_on="parallels", parallel_width="6"), fixed_jaw="rear")
    (fixed,), (moving,) = only(found, "fixed jaw"), only(found, "moving jaw")
    assert (fixed.low[2], fixed.high[2]) == pytest.approx((-0.011, 0.014))
    assert fixed.low[1] == pytest.approx(0.050)
    assert moving.high[1] == pytest.approx(0.0)
    assert (fixed.low[0], fixed.high[0]) == pytest.approx((0.0, 0.080))
    parallels = only(found, "parallel")
    assert [(one.low[1], one.high[1]) for one in parallels] == [
        pytest.approx((0.0, 0.006)),
        pytest.approx((0.044, 0.050)),
    ]


def test_what_stands_over_the_end_has_no_jaw_under_it():
    """150 long in jaws of 80: 20 over the left, so the jaws reach from 20 to 100 from its left end."""
    found = placed(vice(above_jaws="6", over_left="20"), size=("150", "50", "20"), fixed_jaw="rear")
    (fixed,) = only(found, "fixed jaw")
    assert (fixed.low[0], fixed.high[0]) == pytest.approx((0.020, 0.100))
    found = placed(vice(above_jaws="6", over_right="20"), size=("150", "50", "20"), fixed_jaw="rear")
    (fixed,) = only(found, "fixed jaw")
    assert (fixed.low[0], fixed.high[0]) == pytest.approx((0.050, 0.130))


def test_a_bar_keeps_the_moving_jaw_off():
    found = placed(vice(above_jaws="6", bar="yes", bar_size="10"), fixed_jaw="rear")
    (moving,), (bar,) = only(found, "moving jaw"), only(found, "bar")
    assert moving.high[1] == pytest.approx(-0.010)
    assert (bar.low[1], bar.high[1]) == pytest.approx((-0.010, 0.0))


def test_the_fixed_jaw_can_be_at_an_end():
    found = placed(vice(above_jaws="6"), fixed_jaw="left")
    (fixed,) = only(found, "fixed jaw")
    assert fixed.high[0] == pytest.approx(0.0)
    assert fixed.high[1] - fixed.low[1] == pytest.approx(0.080)


def test_parallels_taken_out_are_gone():
    assert not only(
        placed(vice(above_jaws="6", rests_on="parallels", parallels_then="taken out")), "parallel"
    )


def straps(**facts):
    kind = holding_kind("straps")
    return kind.fields(
        **{entry.name: entry.read(facts[entry.name], "mm") for entry in kind.entries if entry.name in facts}
    )


def test_a_strap_comes_from_the_edge_nearest_to_its_nose():
    """Nose at 40, 5: from the front; bolt 30 before the nose, heel 40 further, 14 thick on work 20 high."""
    found = placed(
        straps(
            at="40, 5", bolt="M12", bolt_to_nose="30", heel_to_bolt="40", strap_width="30", strap_thickness="14",
            stud_above="25", rests_on="table",
        )
    )  # fmt: skip
    (strap,), (stud,) = only(found, "strap"), only(found, "stud")
    assert (strap.low[0], strap.high[0]) == pytest.approx((0.025, 0.055))
    assert strap.low[1] == pytest.approx(0.005 - 0.070)
    assert (strap.low[2], strap.high[2]) == pytest.approx((0.020, 0.034))
    assert stud.high[2] == pytest.approx(0.059)
    assert (stud.low[1] + stud.high[1]) / 2 == pytest.approx(0.005 - 0.030)
    assert strap.sure


def test_a_preview_names_the_facts_that_another_kind_loses():
    from jobsheet.edit.commands import SetField
    from jobsheet.edit.difference import changes

    before = SetField("holding:set-up-1", "over_left", "6").apply(blank_job(B1))
    said = changes(before, SetField("holding:set-up-1", "kind", "straps").apply(before))
    assert "set-up 1, held by: vice → straps" in said
    assert "set-up 1, over the left end: 6 → –" in said


@pytest.mark.parametrize("name", holdings())
def test_no_figure_rests_on_a_fact_that_is_not_declared(name):
    """Half-typed text in a field dims the figures that rest on it, and no others."""
    kind, machine, metal = holding_kind(name), find_card(B1), find("S235")
    start = full(name)

    def reckoned(fields):
        grip = kind.grip(fields, machine, metal, Shop())
        return grip, kind.top(fields, machine, 0.03), kind.mass(fields, machine)

    for entry in kind.entries:
        if entry.name in kind.reckons:
            continue
        others = [None, *entry.choices[1:]] if entry.name != "note" else ["other words"]
        for value in others:
            assert reckoned(replace(start, **{entry.name: value})) == reckoned(start), entry.name
