"""A kind, and a limit, reads nothing of its setting that it does not name: what it does not name
may change without a new reckoning.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.errors import JobsheetError
from jobsheet.holdings.all_holdings import roles_of
from jobsheet.limits.register import LEARNING, LIMITS, READS, asked, asked_again, in_order, limits_of
from jobsheet.model.quantity import Quantity
from jobsheet.model.setting import Setting
from jobsheet.operations.kind import fields_from
from jobsheet.operations.reads import EVERYTHING, narrowed
from jobsheet.operations.registry import kind, kinds
from jobsheet.paths import sample_jobs
from jobsheet.reckoning import by_value
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job

SAMPLES = sorted(
    [
        *sample_jobs().glob("*.yaml"),
        *Path(__file__).with_name("jobs").glob("*.yaml"),
        *(Path(__file__).parent.parent / "review" / "jobs").glob("*.yaml"),
    ]
)


class Undeclared(AssertionError):
    """Something was read that is not named."""


class Lengths:
    """The extent of the work, of which only the named lengths may be read."""

    def __init__(self, extent, reads):
        self._extent, self._reads = extent, reads

    def __getitem__(self, axis):
        if f"extent.{'xyz'[axis]}" not in self._reads:
            raise Undeclared(f"extent.{'xyz'[axis]}")
        return self._extent[axis]

    def __iter__(self):
        return (self[axis] for axis in range(3))


class Watched:
    """A setting of which only what is named may be read."""

    def __init__(self, setting, reads):
        self._setting, self._reads = setting, reads

    def __getattr__(self, name):
        if name == "extent":
            return Lengths(self._setting.extent, self._reads)
        if name not in self._reads:
            raise Undeclared(name)
        return getattr(self._setting, name)


def what_it_says(made, fields, setting):
    """Figures, rows, dials and shapes, or what is wrong with them."""
    found = []
    try:
        found.append(tuple(made.sweep(fields, setting)))
    except (JobsheetError, ArithmeticError) as error:
        found.append(str(error))
    try:
        figures = made.figures(fields, setting)
        found += [figures, made.rows(fields, figures, setting), made.dials(fields, figures, setting)]
    except (JobsheetError, ArithmeticError) as error:
        found.append(str(error))
    return found


def watched(made, fields, setting):
    reads = made.looks_at(fields)
    assert reads <= EVERYTHING
    return what_it_says(made, fields, Watched(setting, reads))


def steps(path):
    job = read_job(path)
    found = Reckoner().reckon(job)
    return [(kind(one.kind), one.fields, found.settings[one.key]) for _, one in job.operations()]


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_a_kind_reads_nothing_that_it_does_not_name(path):
    for made, fields, setting in steps(path):
        said = what_it_says(made, fields, setting)
        assert watched(made, fields, setting) == said
        assert what_it_says(made, fields, narrowed(setting, made.looks_at(fields))) == said


@pytest.mark.parametrize("name", kinds())
@pytest.mark.parametrize("units", ["mm", "in"])
def test_a_kind_reads_nothing_more_in_any_of_its_ways(name, units):
    """Every choice of every entry, every field left empty that may be, each alone: on a
    machine with all there is to read.
    """
    made = kind(name)
    *_, (_, _, setting) = steps(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
    blank = made.blank(units)
    ways = [blank]
    for entry in made.entries:
        texts = [*entry.choices] if entry.asks == "choice" else ["through"] if entry.asks == "depth" else []
        for text in [*texts, *([""] if entry.optional else [])]:
            try:
                ways.append(fields_from(made.fields, made.entries, {**made.example, entry.name: text}, units))
            except (JobsheetError, TypeError):
                continue
    for fields in ways:
        for pilot in (None, 0.005):
            around = replace(setting, units=units, pilot=pilot)
            assert watched(made, fields, around) == what_it_says(made, fields, around)


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_a_limit_reads_nothing_that_it_does_not_name(path):
    for made, fields, setting in steps(path):
        try:
            figures = made.figures(fields, setting)
        except JobsheetError:
            continue
        for module in LIMITS:
            assert module.READS <= READS <= EVERYTHING
            more = (made.plays(fields).process,) if module in LEARNING else ()
            said = module.limit(figures, setting, fields, *more)
            assert module.limit(figures, Watched(setting, module.READS), fields, *more) == said


def test_what_is_watched_is_found():
    made = kind("face")
    *_, (_, _, setting) = steps(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
    with pytest.raises(Undeclared, match="material"):
        made.figures(made.blank("mm"), Watched(setting, made.looks_at(made.blank("mm")) - {"material"}))
    with pytest.raises(Undeclared, match=r"extent\.y"):
        made.figures(made.blank("mm"), Watched(setting, made.looks_at(made.blank("mm")) - {"extent.y"}))


def test_the_names_are_those_of_a_setting():
    lengths = {f"extent.{axis}" for axis in "xyz"}
    assert EVERYTHING - lengths == set(Setting.__struct_fields__) - {"extent"}


def changed_in(job, before, after):
    """The kinds of the steps whose figures were reckoned again, and whether the
    limits of all others stand too.
    """
    return {
        one.kind
        for _, one in job.operations()
        if before.operations[one.key].figures is not after.operations[one.key].figures
    }


class TestAnEditCostsOnlyWhatReadsIt:
    @pytest.fixture
    def job(self):
        return read_job(sample_jobs() / "hm-102-slide-plate.yaml")

    def edited(self, job, edit):
        made = Reckoner()
        before = made.reckon(job)
        tuple(before.operations.values())  # what nobody looked at was not reckoned
        after = made.reckon(edit(job))
        afresh = Reckoner().reckon(after.job)
        assert after.operations == afresh.operations
        assert after.settings == afresh.settings
        return before, after

    @pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
    @pytest.mark.parametrize("size", ["length", "width", "height"])
    def test_another_stock_gives_what_a_new_reckoning_gives(self, path, size):
        def grown(job):
            now = getattr(job.stock, size)
            return replace(job, stock=replace(job.stock, **{size: Quantity(now.value + 1e-3, "one more")}))

        self.edited(read_job(path), grown)

    @pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
    def test_another_grip_or_metal_gives_what_a_new_reckoning_gives(self, path):
        job = read_job(path)
        for owner, name, text in (
            *((f"holding:{one.key}", "above_jaws", "7.5 mm") for one in job.set_ups if roles_of(one.holding).jaws), ("job", "material", "304"),
            ("job", "fluid", "dry"), ("job", "machine", "bench-mill-b-2"),
        ):  # fmt: skip
            self.edited(job, SetField(owner, name, text).apply)

    def test_a_face_that_goes_deeper_costs_what_reads_the_height(self, job):
        first = next(one for _, one in job.operations() if one.kind == "face")
        before, after = self.edited(job, SetField(first.key, "depth", "0.77 mm").apply)
        for key, now in after.operations.items():
            if key == first.key:
                continue
            one = job.find(key)[1]
            if not {"thickness", "extent.z", "extent.x", "extent.y"} & kind(one.kind).looks_at(one.fields):
                assert now is before.operations[key]

    def test_more_over_the_jaws_asks_headroom_and_grip_alone(self, job):
        edit = SetField(f"holding:{job.set_ups[0].key}", "above_jaws", "7.5 mm").apply
        before, after = self.edited(job, edit)
        assert not changed_in(job, before, after)

    def test_the_machine_is_not_read_by_a_tram_check(self):
        job = read_job(Path(__file__).with_name("jobs") / "tram-check.yaml")
        before, after = self.edited(job, SetField("job", "fluid", "dry").apply)
        key = next(one.key for _, one in job.operations() if one.kind == "tram-check")
        assert after.operations[key] is before.operations[key]


def test_what_a_kind_does_not_read_is_found_by_value_again():
    """A second reckoner, another height: only what reads the height is reckoned,
    whatever the height is called.
    """
    job = read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
    tuple(Reckoner().reckon(job).operations.values())
    before = by_value._figured.misses
    higher = replace(job, stock=replace(job.stock, height=Quantity(0.0131, "13.1")))
    tuple(Reckoner().reckon(higher).operations.values())
    reading = {"thickness", "extent.z"}
    through = sum(bool(reading & kind(one.kind).looks_at(one.fields)) for _, one in job.operations())
    assert 0 < by_value._figured.misses - before == through


def test_limits_stand_in_one_order_however_they_were_asked():
    for path in SAMPLES:
        for made, fields, setting in steps(path):
            try:
                figures = made.figures(fields, setting)
            except JobsheetError:
                continue
            process = made.plays(fields).process
            whole = asked(figures, setting, fields, process)
            again = asked_again(whole, READS, figures, setting, fields, process)
            assert in_order(again) == limits_of(figures, setting, fields, process)
