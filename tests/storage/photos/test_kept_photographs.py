"""Photographs are taken in by their content and found again by it; what is no
photograph is refused in one sentence.
"""

from __future__ import annotations

from hashlib import sha256

import pytest
from msgspec.structs import replace

from jobsheet.errors import CommandError, DocumentError
from jobsheet.model.job import Photograph
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.job_writing import write_job
from jobsheet.storage.photos.kept_photographs import (
    checked,
    owner_words,
    places,
    problem_words,
    shots_of,
    take_out_of_sheets,
    taken_along,
    taken_in,
)
from jobsheet.storage.photos.photographs_read import MOST
from tests.photographs_made import jpeg_that_says, photograph, png_that_says
from tests.report.plans import bench, job


@pytest.fixture
def plan():
    return job([bench(10)])


def with_one(plan, content, shows="the straps"):
    return replace(plan, photographs=(Photograph(content=content, shows=shows, about="set-up-1"),))


def test_a_photograph_lies_beside_the_job_under_its_content(tmp_path, plan):
    raw = photograph()
    (tmp_path / "IMG_1.jpg").write_bytes(raw)
    folders = places(tmp_path / "job.yaml")
    content = taken_in(tmp_path / "IMG_1.jpg", plan, folders)
    assert content == sha256(raw).hexdigest()
    assert (tmp_path / "photographs" / f"{content}.jpg").read_bytes() == raw
    (shot,) = shots_of(with_one(plan, content), folders)
    assert (shot.raw, shot.kind, shot.width, shot.height, shot.problem) == (raw, "jpg", 640, 480, "")


def test_of_a_job_without_a_file_it_waits_among_one_s_own_and_is_taken_along(tmp_path, plan, own_home):
    (tmp_path / "a.png").write_bytes(photograph(kind="PNG"))
    content = taken_in(tmp_path / "a.png", plan, places(None))
    waiting = own_home / "photographs" / f"{content}.png"
    assert waiting.is_file()
    saved = with_one(plan, content)
    new = tmp_path / "jobs" / "x.yaml"
    new.parent.mkdir()
    assert taken_along(saved, places(None), places(new)) == ()
    assert (tmp_path / "jobs" / "photographs" / f"{content}.png").is_file()
    assert not waiting.exists()


def test_a_copy_in_another_folder_has_its_own_and_the_first_keeps_its(tmp_path, plan):
    (tmp_path / "a.jpg").write_bytes(photograph())
    old, new = places(tmp_path / "x.yaml"), places(tmp_path / "other" / "x.yaml")
    content = taken_in(tmp_path / "a.jpg", plan, old)
    assert taken_along(with_one(plan, content), old, new) == ()
    assert (old[0] / f"{content}.jpg").read_bytes() == (new[0] / f"{content}.jpg").read_bytes()


def test_what_cannot_come_along_is_said(tmp_path, plan):
    gone = with_one(plan, "ab" * 32)
    (said,) = taken_along(gone, places(tmp_path / "x.yaml"), places(tmp_path / "y" / "x.yaml"))
    assert said == (
        "The photograph of set-up 1 (“the straps”) is not there any more: photographs/abababab*.jpg."
        " Put it back, or take it out of the job."
    )


@pytest.mark.parametrize(
    ("name", "raw", "says"),
    [
        (
            "big.jpg",
            b"\xff\xd8\xff" + b"\0" * 40_000_000,
            "big.jpg has 40 MB; a photograph here may have 15 MB",
        ),
        (
            "words.jpg",
            b"set-ups:\n  - a job\n",
            "words.jpg is no JPEG or PNG picture, whatever its name says",
        ),
        ("huge.jpg", jpeg_that_says(65_000, 65_000), "says that it has 65 000 × 65 000 points"),
        ("huge.png", png_that_says(65_000, 65_000), "says that it has 65 000 × 65 000 points"),
        ("wide.png", png_that_says(2**31 - 1, 1), "points; a photograph here may have 64 million"),
        ("empty.png", b"", "is no JPEG or PNG picture"),
        (
            "draw.jpg",
            b'<svg xmlns="http://www.w3.org/2000/svg"><image href="http://x/y"/></svg>',
            "is no JPEG or PNG",
        ),
    ],
)
def test_what_is_no_photograph_is_refused_in_one_sentence_and_nothing_is_kept(
    tmp_path, plan, name, raw, says
):
    (tmp_path / name).write_bytes(raw)
    with pytest.raises(CommandError, match=says.replace("(", r"\(")) as refused:
        taken_in(tmp_path / name, plan, places(tmp_path / "x.yaml"))
    assert "\n" not in str(refused.value)
    assert len(str(refused.value)) < 220
    assert not (tmp_path / "photographs").exists()


def test_a_folder_and_a_file_that_is_not_there_are_refused(tmp_path, plan):
    folder = tmp_path / "a.jpg"
    folder.mkdir()
    for path, says in ((folder, "is a folder"), (tmp_path / "none.jpg", "cannot be read")):
        with pytest.raises(CommandError, match=says):
            taken_in(path, plan, places(None))


def test_a_file_that_was_changed_is_not_printed_as_the_photograph(tmp_path, plan):
    (tmp_path / "a.jpg").write_bytes(photograph())
    folders = places(tmp_path / "x.yaml")
    content = taken_in(tmp_path / "a.jpg", plan, folders)
    (folders[0] / f"{content}.jpg").write_bytes(photograph(tone=90))
    (shot,) = shots_of(with_one(plan, content), folders)
    assert "is another picture now" in problem_words(plan, shot)
    assert shot.raw == b""


def test_a_bomb_that_was_put_in_by_hand_is_never_decoded(tmp_path, plan):
    raw = png_that_says(65_000, 65_000)
    content = sha256(raw).hexdigest()
    folders = places(tmp_path / "x.yaml")
    folders[0].mkdir()
    (folders[0] / f"{content}.png").write_bytes(raw)
    (shot,) = shots_of(with_one(plan, content), folders)
    assert "65 000 × 65 000" in shot.problem
    assert shot.raw == b""


@pytest.mark.parametrize(
    "content", ["../../etc/passwd", "http://x/y.jpg", "AB" * 32, "ab" * 31, "ab" * 32 + ".jpg"]
)
def test_a_job_names_no_photograph_by_a_path(plan, content):
    text = write_job(with_one(plan, "ab" * 32)).replace("ab" * 32, content)
    with pytest.raises(
        DocumentError, match=r"line \d+: photographs\[0\].content: a photograph is named by the SHA-256"
    ):
        job_from_text(text, "x.yaml")


def test_a_job_with_too_many_is_refused(plan):
    many = tuple(Photograph(content=f"{at:064x}") for at in range(25))
    with pytest.raises(DocumentError, match="there are 25; a job has at most 24"):
        job_from_text(write_job(replace(plan, photographs=many)), "x.yaml")


def test_a_job_with_photographs_comes_back_as_it_was_written(plan):
    shown = with_one(plan, "ab" * 32, shows="<b>straps</b> &amp; \u202e stop")
    text = write_job(shown)
    assert job_from_text(text, "x").photographs == shown.photographs
    assert write_job(job_from_text(text, "x")) == text


def test_where_the_job_still_has_no_file_what_waits_stays(tmp_path, plan, own_home):
    (tmp_path / "a.jpg").write_bytes(photograph())
    content = taken_in(tmp_path / "a.jpg", plan, places(None))
    assert taken_along(with_one(plan, content), places(None), places(None)) == ()
    assert (own_home / "photographs" / f"{content}.jpg").is_file()


def test_of_several_each_is_taken_along_that_is_there(tmp_path, plan):
    """The lost one in the middle is said, and keeps none of the others back."""
    folders, contents = places(tmp_path / "x.yaml"), []
    for at, tone in enumerate((40, 90)):
        (tmp_path / f"{at}.jpg").write_bytes(photograph(tone=tone))
        contents.append(taken_in(tmp_path / f"{at}.jpg", plan, folders))
    names = (contents[0], "ab" * 32, contents[1])
    several = replace(plan, photographs=tuple(Photograph(content=one) for one in names))
    new = places(tmp_path / "y" / "x.yaml")
    (said,) = taken_along(several, folders, new)
    assert said.startswith("The photograph of the job is not there any more: photographs/abababab*.jpg.")
    assert sorted(one.stem for one in new[0].iterdir()) == sorted(contents)


def test_where_the_disk_refuses_it_is_said_whose_it_is(tmp_path, plan):
    folders = places(tmp_path / "x.yaml")
    (tmp_path / "a.jpg").write_bytes(photograph())
    content = taken_in(tmp_path / "a.jpg", plan, folders)
    (tmp_path / "file").write_text("no folder", encoding="utf-8")
    (said,) = taken_along(with_one(plan, content), folders, (tmp_path / "file",))
    assert said.startswith("The photograph of set-up 1 does not come along: ")


def test_whose_a_photograph_is():
    two = job([bench(10)])
    for about, words in (
        ("set-up-1", "set-up 1"),
        (two.set_ups[0].operations[0].key, "step 10"),
        ("gone", "the job"),
        ("", "the job"),
    ):
        assert owner_words(two, Photograph(content="ab" * 32, about=about)) == words


def test_a_photograph_has_as_many_points_as_it_may_and_not_one_more():
    """8000 × 8000 are 64 million."""
    assert checked(png_that_says(8000, 8000), "a.png").width == 8000
    with pytest.raises(CommandError, match="says that it has 8 000 × 8 001 points"):
        checked(png_that_says(8000, 8001), "a.png")


def test_a_job_has_as_many_as_it_may_and_the_same_again_is_none_more(tmp_path, plan):
    (tmp_path / "a.jpg").write_bytes(photograph())
    (tmp_path / "b.jpg").write_bytes(photograph(tone=90))
    folders = places(tmp_path / "x.yaml")
    content = taken_in(tmp_path / "a.jpg", plan, folders)
    others = [Photograph(content=f"{at:064x}") for at in range(MOST - 1)]
    full = replace(plan, photographs=(Photograph(content=content), *others))
    assert taken_in(tmp_path / "a.jpg", full, folders) == content
    with pytest.raises(CommandError, match=f"has {MOST} photographs already; take one out first"):
        taken_in(tmp_path / "b.jpg", full, folders)
    assert taken_in(tmp_path / "b.jpg", replace(full, photographs=full.photographs[:-1]), folders)


def test_what_sheets_carried_waits_among_one_s_own(own_home):
    raw = photograph()
    content = sha256(raw).hexdigest()
    take_out_of_sheets({content: raw, "cd" * 32: b"no picture"})
    assert [one.name for one in (own_home / "photographs").iterdir()] == [f"{content}.jpg"]
