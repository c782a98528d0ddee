"""What was written at the machine is typed in afterwards in the order in which it stands; and
what tells one print from another.
"""

from __future__ import annotations

import io
import re

import pytest
from msgspec.structs import replace
from pypdf import PdfReader

from jobsheet.model.job import Revision
from jobsheet.model.prints import prints
from jobsheet.model.trials import OUTCOMES
from jobsheet.paths import sample_jobs
from jobsheet.report.blocks import Columns, Outcomes, Steps
from jobsheet.sheet.pages import fits_on
from jobsheet.sheet.pdf import make_pdf
from jobsheet.storage.job_file import read_job
from tests.report.plans import bench, drill, job, pages, plate
from tests.sheet import printed_once

#: The digits of the screen on which it is typed in (look-2, bench-entry): 1 to 8,
#: and 0 for a step that was not cut.
DIGITS = "1 clean · 2 noisy · 3 slowed · 4 chatter · 5 stalled · 6 slipped · 7 broke · 8 too hard to wind · 0 not cut"


def printed(plan, paper="a4", **options):
    document = pages(plan, fits=fits_on(paper), printed_on="2026-11-29", name="hm-x", **options)
    return document, [
        page.extract_text() for page in PdfReader(io.BytesIO(make_pdf((document,), paper))).pages
    ]


def flat(text: str) -> str:
    return re.sub(r"\s+", " ", text)


def boxes(document):
    def walk(blocks):
        for block in blocks:
            if isinstance(block, Outcomes):
                yield block
            elif isinstance(block, Columns):
                for part in block.parts:
                    yield from walk(part)

    return [block for page in document.pages for block in walk(page.blocks)]


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("path", sorted(sample_jobs().glob("*.yaml")), ids=lambda path: path.stem)
def test_every_step_that_cuts_has_one_box_for_its_digit_in_the_order_of_the_steps(path, paper):
    plan = read_job(path)
    document, texts = printed_once.sample(path.stem, paper).document, printed_once.texts(path.stem, paper)
    numbers = [int(number) for block in boxes(document) for number in block.steps]
    loaded = {
        int(row.number) for page in document.pages for block in page.blocks if isinstance(block, Steps) for row in block.rows if row.verdict
    }  # fmt: skip
    assert numbers == [one.number for _, one in plan.operations() if one.number in loaded]
    # Where there are boxes, the page says what the digits mean.
    for page, text in zip(document.pages, texts, strict=True):
        own = [block for block in boxes(replace(document, pages=(page,))) if block.steps]
        assert (DIGITS in flat(text)) == bool(own)


def test_digit_words_change_and_minutes_stand_in_the_order_of_the_screen():
    _, texts = printed(
        job([bench(10), drill(20, [(14, 12)]), drill(30, [(14, 12)], cutter="drill 6.0, drawer 3")])
    )
    text = flat(texts[-1])
    at = [text.index(word) for word in ("20 30", "would change", "min to set", "min to cut", "made by")]
    assert at == sorted(at)
    assert OUTCOMES[0] == "clean"


def test_the_day_of_printing_the_file_and_its_code_stand_on_every_page():
    document = printed_once.sample("hm-103-pivot-block").document
    texts = printed_once.texts("hm-103-pivot-block")
    for number, text in enumerate(texts, 1):
        assert "printed 2026-11-29" in text
        assert "hm-103-pivot-block.yaml · check " in text
        assert f"{number} of {len(document.pages)}" in text


def test_the_same_print_is_the_same_bytes_and_another_day_is_another():
    one, same, other = (
        make_pdf((pages(plate(), printed_on=day),)) for day in ("2026-11-29", "2026-11-29", "2026-11-30")
    )
    assert one == same != other


def test_revisions_say_what_changed_as_it_was_typed_and_leave_a_row_for_the_next():
    typed = "slot 2 <b>deeper</b> &amp; not 3; as said on the 'phone"
    plan = replace(
        plate(),
        revisions=(
            Revision(number=1, changed="first", who="Trainer", when="2026-11-25"),
            Revision(number=2, changed=typed, who="B", when="2026-11-29"),
        ),
    )
    _, texts = printed(plan)
    text = flat("\n".join(texts))
    assert typed in text
    assert "HM-100, A, plan 2" in text
    assert text.index("2026-11-29", text.index("Revisions")) < text.index(
        "2026-11-25", text.index("Revisions")
    )


def test_a_step_card_asks_for_its_own_digit():
    _, (text,) = printed(plate(), wanted=prints(("step",), (60,)))
    assert DIGITS in flat(text)
    assert "60 would change" in flat(text)
