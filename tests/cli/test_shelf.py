"""`jobsheet shelf` as a shell sees it."""

from __future__ import annotations

import csv
import hashlib
import json
import shutil
import zipfile

import pytest

from jobsheet.__main__ import main
from jobsheet.shelf.archive import sums_are_right
from jobsheet.storage.job_file import read_job


@pytest.fixture
def shelf(samples, tmp_path, own_home):
    there = tmp_path / "shelf"
    there.mkdir()
    for path in samples.glob("*.yaml"):
        shutil.copy(path, there)
    return there


def told(capsys, *arguments):
    code = main(["shelf", *(str(one) for one in arguments)])
    found = capsys.readouterr()
    return code, found.out, found.err


def test_find_lists_what_has_it_and_says_where(capsys, shelf):
    code, out, _ = told(capsys, "find", shelf, "drill", "6.8")
    assert code == 0
    assert out.startswith("HM-103  Pivot block")
    assert "cutter: drill 6.8" in out
    code, out, _ = told(capsys, "find", shelf, "nothing like it")
    assert (code, "Nothing on this shelf" in out) == (1, True)
    data = json.loads(told(capsys, "find", shelf, "HM-102", "--json")[1])
    assert (data["count"], data["found"][0]["name"]) == (1, "Slide plate")


def test_show_says_what_happened(capsys, shelf):
    main(
        [
            "ran",
            str(shelf / "hm-103-pivot-block.yaml"),
            "60=1",
            "70=2",
            "--not-proof",
            "--date",
            "2026-11-20",
            "--size",
            "80=80.02 mm",
        ]
    )
    capsys.readouterr()
    code, out, _ = told(capsys, "show", shelf, "hm-103")
    assert code == 0
    assert "23 steps in 6 set-ups" in out
    assert "2026-11-20: step 70 noisy; found 80.02" in out
    code, _, err = told(capsys, "show", shelf, "HM-999")
    assert (code, "There is no part HM-999" in err) == (2, True)


def test_check_reads_everything_and_mends_nothing(capsys, shelf):
    assert told(capsys, "check", shelf)[0] == 0
    (shelf / "broken.yaml").write_text("format: 2\nfoo: bar\n")
    text = (shelf / "hm-102-slide-plate.yaml").read_text("utf-8")
    (shelf / "hm-102-slide-plate (conflicted copy).yaml").write_text(
        text.replace("depth: 1\n", "depth: 2\n"), encoding="utf-8"
    )
    shutil.copy(shelf / "hm-101-setting-block.yaml", shelf / "again.yaml")
    before = {path: path.read_bytes() for path in shelf.iterdir()}
    code, out, _ = told(capsys, "check", shelf)
    assert code == 1
    assert "broken.yaml, line 1:" in out
    assert "looks like a second copy of HM-102" in out
    assert "the very same file is there again" in out
    assert "10 jobs read" in out
    assert {path: path.read_bytes() for path in shelf.iterdir()} == before


def test_compare_says_every_change(capsys, shelf):
    one, other = shelf / "hm-100-drilled-plate-b1.yaml", shelf / "hm-100-drilled-plate-k2.yaml"
    code, out, _ = told(capsys, "compare", one, other)
    assert code == 1
    assert "Machine: bench-mill-b-1 → knee-mill-k-2" in out
    assert "step 60, spindle: 900 rpm → 800 rpm" in out
    assert told(capsys, "compare", one, one)[:2] == (0, "The two plans say the same.\n")


def test_the_archive_is_plain_files_with_their_sums(capsys, shelf, tmp_path):
    target = tmp_path / "shelf.zip"
    assert told(capsys, "export", shelf, "-o", target)[0] == 0
    with zipfile.ZipFile(target) as archive:
        assert archive.testzip() is None
        assert archive.read("bagit.txt").startswith(b"BagIt-Version: 1.0")
        lines = archive.read("manifest-sha256.txt").decode().splitlines()
        assert len(lines) == 7
        for line in lines:
            there, name = line.split("  ")
            raw = archive.read(name)
            assert hashlib.sha256(raw).hexdigest() == there
            assert raw == (shelf / name.removeprefix("data/")).read_bytes()
    assert sums_are_right(target) == ()
    assert told(capsys, "check", target)[:2] == (0, "shelf.zip: every file is what its sum says.\n")
    first = target.read_bytes()
    told(capsys, "export", shelf, "-o", target)
    assert target.read_bytes() == first


def test_a_file_of_an_archive_that_was_changed_is_named(capsys, shelf, tmp_path):
    target, other = tmp_path / "shelf.zip", tmp_path / "changed.zip"
    told(capsys, "export", shelf, "-o", target)
    with zipfile.ZipFile(target) as archive, zipfile.ZipFile(other, "w") as copy:
        for name in archive.namelist():
            raw = archive.read(name)
            copy.writestr(name, raw.replace(b"drill 6.8", b"drill 6.9") if "hm-103" in name else raw)
    code, out, _ = told(capsys, "check", other)
    assert (code, "data/hm-103-pivot-block.yaml is not what its sum says" in out) == (1, True)
    (tmp_path / "no.zip").write_bytes(b"PK nothing")
    code, _, err = told(capsys, "check", tmp_path / "no.zip")
    assert (code, "is no archive of a shelf" in err) == (2, True)


def test_the_index_as_a_table_and_never_over_something_else(capsys, shelf, tmp_path):
    table = tmp_path / "shelf.csv"
    told(capsys, "export", shelf, "-o", table)
    rows = list(csv.DictReader(table.read_text("utf-8").splitlines()))
    assert sorted(row["number"] for row in rows) == ["HM-100"] * 3 + ["HM-101", "HM-102", "HM-103", "HM-104"]
    other = tmp_path / "letter.csv"
    other.write_text("Dear Sir")
    code, _, err = told(capsys, "export", shelf, "-o", other)
    assert (code, "choose another name" in err) == (2, True)
    code, _, err = told(capsys, "export", shelf, "-o", tmp_path / "x.doc")
    assert (code, "ends in nothing that can be written" in err) == (2, True)


def test_sheets_go_back_on_the_shelf_and_nothing_is_written_over(capsys, shelf, samples, tmp_path):
    paper = tmp_path / "sheets.pdf"
    main(["sheet", str(samples / "hm-104-cover-plate.yaml"), "-o", str(paper)])
    capsys.readouterr()
    code, out, _ = told(capsys, "import", shelf, paper)
    assert (code, "on the shelf already" in out) == (0, True)
    (shelf / "hm-104-cover-plate.yaml").unlink()
    code, out, _ = told(capsys, "import", shelf, paper)
    assert (code, "HM-104 is on the shelf as HM-104.yaml" in out) == (0, True)
    assert (shelf / "HM-104.yaml").read_bytes() == (samples / "hm-104-cover-plate.yaml").read_bytes()
    (tmp_path / "other.pdf").write_bytes(b"%PDF-1.4 nothing")
    assert told(capsys, "import", shelf, tmp_path / "other.pdf")[0] == 1


# --- plans that were printed ---


def test_a_numbered_plan_is_kept_when_it_is_printed_and_found_by_its_code(samples, tmp_path, capsys):
    from jobsheet.storage.check_code import check_code

    plain, numbered = tmp_path / "plain.yaml", tmp_path / "numbered.yaml"
    text = (samples / "hm-100-drilled-plate-b1.yaml").read_text(encoding="utf-8")
    plain.write_text(text, encoding="utf-8")
    numbered.write_text(
        text.replace("datums:\n", "plan revisions:\n  - number: 3\n    changed: lower\n    when: 2026-11-29\ndatums:\n", 1), encoding="utf-8"
    )  # fmt: skip
    for one in (plain, numbered):
        assert main(["sheet", str(one), "-o", str(tmp_path / f"{one.stem}.pdf")]) in (0, 1)
    assert not (tmp_path / "plain.plans").exists()
    (kept,) = (tmp_path / "numbered.plans").iterdir()
    code = check_code(numbered.read_bytes())
    assert kept.name.startswith("plan-3-")
    assert kept.name.endswith(f"printed-{code}.yaml")
    numbered.write_text(numbered.read_text(encoding="utf-8").replace("lower", "higher"), encoding="utf-8")
    capsys.readouterr()
    # the paper in hand has the old code, with an O read for a 0
    assert main(["shelf", "find", str(tmp_path), code.replace("0", "O").lower()]) == 0
    assert "numbered.yaml" in capsys.readouterr().out
    assert main(["shelf", "show", str(tmp_path), "HM-100"]) == 0
    assert f"plan 3, printed {kept.name[7:17]}, check {code}" in capsys.readouterr().out


def test_an_old_plan_prints_by_what_it_is_superseded(samples, tmp_path):
    import subprocess

    from jobsheet.storage.kept.closed_plans import PRINTED, close_plan

    job = tmp_path / "plate.yaml"
    data = (samples / "hm-100-drilled-plate-b1.yaml").read_bytes()
    job.write_bytes(data)
    kept = close_plan(job, data, 0, PRINTED, "2026-11-30")
    job.write_bytes(
        data.replace(b"datums:\n", b"plan revisions:\n  - number: 2\n    changed: lower\ndatums:\n", 1)
    )
    assert main(["sheet", str(kept.path), "-o", str(tmp_path / "old.pdf")]) in (0, 1)
    words = subprocess.run(
        ["pdftotext", "-layout", str(tmp_path / "old.pdf"), "-"], capture_output=True, text=True, check=True
    ).stdout
    pages = words.split("\f")[:-1]
    assert all("SUPERSEDED BY PLAN 2" in page for page in pages)
    assert len(list(kept.path.parent.iterdir())) == 1


def test_old_sheets_are_put_there_found_and_shown(capsys, shelf, tmp_path):
    scan = tmp_path / "front.pdf"
    scan.write_bytes(b"%PDF-1.4\n")
    code, out, _ = told(
        capsys, "attach", shelf, "HM-77", scan, "--name", "Lever", "--words", "gudgeon", "--drawer", "4"
    )
    assert (code, out) == (
        0,
        "HM-77 is on the shelf as HM-77.old-sheet.yaml, without a plan yet; files: 1.\n",
    )
    assert told(capsys, "find", shelf, "gudgeon")[1].startswith("HM-77  Lever")
    out = told(capsys, "show", shelf, "hm-77")[1]
    assert out.startswith(
        "HM-77, Lever: old sheets, no plan yet: HM-77.old-sheet.yaml\n  Words: gudgeon\n  Drawer: 4\n"
    )
    assert "front: old-sheets/" in out
    code, _, err = told(capsys, "attach", shelf, "HM-78", tmp_path / "gone.pdf")
    assert (code, "one.pdf cannot be read: No such file" in err) == (2, True)


def test_check_holds_codes_and_photographs_against_each_other(capsys, shelf):
    from jobsheet.storage.kept.closed_plans import PRINTED, close_plan
    from jobsheet.storage.photos.kept_photographs import places, taken_in
    from tests.photographs_made import photograph

    path = shelf / "hm-104-cover-plate.yaml"
    kept = close_plan(path, path.read_bytes(), 0, PRINTED, "2026-11-30")
    shot = shelf / "shot.jpg"
    shot.write_bytes(photograph())
    content = taken_in(shot, read_job(path), places(path))
    shot.unlink()
    path.write_bytes(path.read_bytes().replace(b"set-ups:\n", f"photographs:\n  - content: {content}\nset-ups:\n".encode(), 1))  # fmt: skip
    assert told(capsys, "check", shelf)[:2] == (0, "7 jobs read, nothing wrong.\n")
    kept.path.write_bytes(kept.path.read_bytes() + b"# changed\n")
    (shelf / "photographs" / f"{content}.jpg").unlink()
    code, out, _ = told(capsys, "check", shelf)
    assert code == 1
    assert f"was changed since it left the desk: it is not the plan of code {kept.code}" in out
    assert "hm-104-cover-plate.yaml: The photograph of the job is not there any more" in out
    assert "2 wrong" in out


def test_a_folder_of_sheets_goes_back_and_names_that_differ_by_case_do_not_collide(
    capsys, shelf, samples, tmp_path
):
    papers = tmp_path / "papers"
    papers.mkdir()
    for name in ("hm-104-cover-plate", "hm-102-slide-plate"):
        main(["sheet", str(samples / f"{name}.yaml"), "-o", str(papers / f"{name}.pdf")])
        (shelf / f"{name}.yaml").unlink()
    (shelf / "hm-104.YAML").write_text("mine", encoding="utf-8")
    capsys.readouterr()
    code, out, _ = told(capsys, "import", shelf, papers)
    assert code == 0
    assert "HM-102 is on the shelf as HM-102.yaml" in out
    assert "HM-104 is on the shelf as HM-104-2.yaml" in out
    (tmp_path / "none").mkdir()
    assert "none: there is no PDF in this folder." in told(capsys, "import", shelf, tmp_path / "none")[1]
