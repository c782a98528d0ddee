"""What the part shall be as a picture: from its lines, whatever the steps do;
nothing where no line can be read.
"""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.part_picture import HEIGHT, WIDTH, part_pictures
from jobsheet.model.finished import Finished
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job


def _job(**more):
    return replace(read_job(sample_jobs() / "hm-104-cover-plate.yaml"), **more)


def test_it_is_made_of_the_lines_and_not_of_the_steps(qapp):
    (whole,) = part_pictures(Desk(_job()))
    assert (whole.width, whole.height) == (WIDTH, HEIGHT)
    job = _job()
    bare = replace(job, set_ups=(replace(job.set_ups[0], operations=()),))
    assert part_pictures(Desk(bare)) == (whole,)


def test_one_feature_less_is_another_picture(qapp):
    job = _job()
    (whole,) = part_pictures(Desk(job))
    (less,) = part_pictures(
        Desk(replace(job, finished=Finished(sizes=job.finished.sizes, features=job.finished.features[:1])))
    )
    assert len(less.items) < len(whole.items)


def test_where_nothing_is_said_or_can_be_read_there_is_none(qapp):
    assert part_pictures(Desk(_job(finished=Finished()))) == ()
    assert (
        part_pictures(Desk(_job(finished=Finished(sizes="as wide as it is", features=("a nice hole",)))))
        == ()
    )
