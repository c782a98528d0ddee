"""What is remembered of one plan goes with it: no memory is left out, and none grows past its room."""

import gc
from functools import lru_cache

from jobsheet import remembered
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job
from jobsheet.units.grammar import read

#: What was read from a file, and stays until that file is another; what has no room at
#: all is bounded by the program itself.
OF_FILES = ("own_materials", "finding", "card_files", "cabinet_file", "proof_log", "run_log", "shop_file")


def test_another_plan_finds_nothing_of_the_last_one():
    job = read_job(next(iter(sorted(sample_jobs().glob("hm-101*.yaml")))))
    Reckoner().reckon(job)
    read("12.5 mm", "length")
    remembered.forget_the_plan()
    gc.unfreeze()  # what stood before the first test is looked through too
    kept = type(lru_cache(lambda: None))
    left = [
        f"{one.__module__}.{one.__qualname__}"
        for one in gc.get_objects()
        if isinstance(one, kept)
        and one.__module__.startswith("jobsheet.")
        and one.cache_parameters()["maxsize"]
        if one.cache_info().currsize and not any(part in one.__module__ for part in OF_FILES)
    ]
    assert not left
