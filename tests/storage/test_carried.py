"""What printed sheets carry beside their job: the card and the log, and whose counts."""

from __future__ import annotations

import pytest
from pypdf import PdfReader

from jobsheet.__main__ import main
from jobsheet.errors import DocumentError
from jobsheet.paths import own_folder, resources, sample_jobs
from jobsheet.storage import carried
from jobsheet.storage.card_files import LONGEST, card_digest, card_path, find_card, planned_for
from jobsheet.storage.job_file import read_job
from jobsheet.storage.pdf_jobs import inside, job_text
from jobsheet.storage.records.proof_log import read_log

SAMPLE = sample_jobs() / "hm-100-drilled-plate-b2.yaml"
MACHINE = "bench-mill-b-2"


def own_card(name, text):
    folder = own_folder() / "machines"
    folder.mkdir(parents=True, exist_ok=True)
    (folder / f"{name}.yaml").write_text(text, encoding="utf-8")


@pytest.fixture
def elsewhere(own_home, tmp_path):
    """A job planned on a machine of a person's own, printed there; and that machine is not known here."""
    shipped = (resources() / "machines" / f"{MACHINE}.yaml").read_text(encoding="utf-8")
    own_card("corner-mill", shipped.replace("Bench mill B-2", "Corner mill"))
    log = (resources() / "proof" / f"{MACHINE}.txt").read_text(encoding="utf-8")
    job = tmp_path / "plate.yaml"
    job.write_text(SAMPLE.read_text(encoding="utf-8").replace(MACHINE, "corner-mill"), encoding="utf-8")
    assert log
    printed = tmp_path / "plate.pdf"
    assert main(["sheet", str(job), "-o", str(printed)]) == 0
    card_path("corner-mill").unlink()
    return printed


def test_sheets_carry_the_card_and_the_log_of_the_machine(own_home, tmp_path):
    printed = tmp_path / "plate.pdf"
    assert main(["sheet", str(SAMPLE), "-o", str(printed)]) == 0
    held = PdfReader(printed).attachments
    assert held[f"{MACHINE} card.yaml"] == [card_path(MACHINE).read_bytes()]
    assert held[f"{MACHINE} proof log.txt"][0].startswith(b"format: 1")
    with_it = carried.carried_of(inside(printed).beside, f"machine: {MACHINE}")
    assert with_it.title == "Bench mill B-2"
    assert carried.here(with_it) == "same"


def test_the_log_that_is_carried_is_the_log(own_home, tmp_path):
    printed = tmp_path / "plate.pdf"
    assert main(["sheet", str(SAMPLE), "-o", str(printed)]) == 0
    (text,) = PdfReader(printed).attachments[f"{MACHINE} proof log.txt"]
    from jobsheet.storage.records.proof_log import records_from

    records, problems = records_from(text, MACHINE)
    assert problems == ()
    assert records == read_log(MACHINE).records
    assert records


def test_a_card_that_is_not_here_is_taken_over_with_its_log(elsewhere):
    with_it = carried.carried_of(inside(elsewhere).beside, job_text(elsewhere))
    assert carried.here(with_it) == "none"
    assert carried.take_over(with_it) == carried.Taken("corner-mill")
    taken = read_job(elsewhere)
    assert taken.machine == "corner-mill"
    assert find_card("corner-mill").title == "Corner mill"
    assert carried.here(with_it) == "same"


def test_a_card_of_ones_own_is_never_written_over(elsewhere):
    own_card("corner-mill", (resources() / "machines" / "bench-mill-b-1.yaml").read_text(encoding="utf-8"))
    before = card_path("corner-mill").read_bytes()
    with_it = carried.carried_of(inside(elsewhere).beside, job_text(elsewhere))
    assert carried.here(with_it) == "other"
    first = carried.take_over(with_it).name
    second = carried.take_over(with_it).name
    assert (first, second) == ("corner-mill-of-the-sheets", "corner-mill-of-the-sheets-2")
    assert card_path("corner-mill").read_bytes() == before
    assert find_card(first).title == "Corner mill"
    assert planned_for(read_job(elsewhere), first).card_hash == card_digest(first)


def test_a_doctored_card_is_refused_and_nothing_is_kept(elsewhere):
    with_it = carried.Carried(
        machine="corner-mill", card="format: 1\nbelts: [100 rpm, -5 rpm]\nefficiency: 50\n"
    )
    with pytest.raises(DocumentError, match="card"):
        carried.take_over(with_it)
    assert not (own_folder() / "machines" / "corner-mill.yaml").exists()


def test_a_log_that_cannot_be_read_is_said_and_the_card_counts(elsewhere):
    with_it = carried.carried_of(inside(elsewhere).beside, job_text(elsewhere))
    taken = carried.take_over(
        carried.Carried(machine="corner-mill", card=with_it.card, log="format: 1\n\nnonsense\n")
    )
    assert taken.name == "corner-mill"
    assert taken.log_left.startswith("The card is kept, its proof log is not:")
    assert find_card("corner-mill").title == "Corner mill"


def test_the_name_of_a_card_of_the_sheets_is_one_and_free_however_long_it_was(elsewhere):
    with_it = carried.carried_of(inside(elsewhere).beside, job_text(elsewhere))
    long = "m" * LONGEST
    own_card(long, (resources() / "machines" / "bench-mill-b-1.yaml").read_text(encoding="utf-8"))
    names = [carried.take_over(carried.Carried(machine=long, card=with_it.card)).name for _ in range(3)]
    assert len(set(names)) == 3
    assert all(find_card(name).title == "Corner mill" for name in names)


def test_what_somebody_put_in_beside_is_no_reason_to_refuse(own_home, tmp_path):
    from pypdf import PdfWriter

    writer = PdfWriter()
    writer.add_blank_page(100, 100)
    writer.add_attachment("plate.yaml", SAMPLE.read_bytes())
    writer.add_attachment("photo.jpg", b"\xff\xd8" + bytes(6_000_000))
    path = tmp_path / "x.pdf"
    writer.write(path)
    found = inside(path)
    assert [name for name, _ in found.jobs] == ["plate.yaml"]
    assert found.beside == ()


def test_a_script_is_told_what_to_do_and_a_card_here_counts(elsewhere, capsys, monkeypatch):
    monkeypatch.setattr("sys.stdin.isatty", lambda: False, raising=False)
    assert main(["figures", str(elsewhere)]) == 2
    assert "take it over" in capsys.readouterr().err
    own_card("corner-mill", (resources() / "machines" / "bench-mill-b-1.yaml").read_text(encoding="utf-8"))
    main(["figures", str(elsewhere)])
    assert "the one here counts" in capsys.readouterr().err


def test_a_file_without_a_verb_is_opened(tmp_path):
    from jobsheet.cli.main import run

    opened = []
    path = tmp_path / "a b.yaml"
    path.write_text("format: 1\n", encoding="utf-8")
    for word in (str(path), "not-there.pdf"):
        assert run([word], lambda one: opened.append(one) or 0) == 0
    assert opened == [str(path), "not-there.pdf"]
    assert run(["chekc"], opened.append) == 2


def test_a_text_that_names_no_machine_brings_none():
    assert carried.carried_of((("a.machine.yaml", "x"),), "format: 2\nunits: mm\n") is None
