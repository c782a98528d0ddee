"""Every expected failure is one sentence, with its place where there is one."""

from __future__ import annotations

import pytest

from jobsheet.errors import (
    MOST_SAID,
    CalcError,
    DocumentError,
    JobsheetError,
    Problem,
    QuantityError,
    as_sentence,
)


def test_an_input_is_named_with_its_value_and_what_it_must_be():
    assert (
        str(CalcError("chisel_ratio", 2, "between 0 and 1"))
        == "chisel ratio is 2; it must be between 0 and 1"
    )


def test_a_file_says_all_its_problems_each_in_one_line():
    error = DocumentError(
        "job\n.yaml", (Problem(3, "stock.length", "write a\nlength"), Problem(None, "", "and a width"))
    )
    assert str(error).splitlines() == [
        "job .yaml cannot be used:", "  line 3: stock.length: write a length", "  and a width",
    ]  # fmt: skip


@pytest.mark.parametrize(("whole", "says"), [(True, "  and 2 more"), (False, "  and at least 2 more")])
def test_more_than_one_can_read_are_counted(whole, says):
    many = tuple(Problem(line, "", "wrong") for line in range(1, MOST_SAID + 3))
    assert str(DocumentError("job", many, whole=whole)).splitlines()[-1] == says


def test_an_error_that_is_kept_holds_nothing_of_where_it_was_raised():
    def read():
        try:
            int("x")
        except ValueError as error:
            raise QuantityError("no number", 0, 1) from error

    with pytest.raises(QuantityError) as caught:
        read()
    kept = caught.value.kept()
    assert (kept.__traceback__, kept.__cause__, kept.__context__) == (None, None, None)
    assert (str(kept), kept.start, kept.end) == ("no number", 0, 1)


def test_a_sentence_begins_large_and_ends_once():
    assert as_sentence("the depth is missing") == "The depth is missing."
    assert as_sentence(JobsheetError("Write a depth.")) == "Write a depth."
    assert as_sentence("") == "."


def test_a_file_keeps_the_name_that_it_has():
    """Where capitals count, Letter.pdf is another file."""
    assert as_sentence("letter.pdf is there already") == "letter.pdf is there already."
    assert as_sentence("folder/job.yaml: cannot be read.") == "folder/job.yaml: cannot be read."
    assert as_sentence("stopped.") == "Stopped."
