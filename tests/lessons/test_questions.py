"""What a bench takes for right, at its bounds."""

from __future__ import annotations

from jobsheet.lessons.figure_exercise import figure_exercise
from jobsheet.lessons.questions import checked
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job


def test_every_answer_is_right_by_its_own_bounds(samples):
    for path in sorted(samples.glob("*.yaml")):
        reckoned = Reckoner().reckon(read_job(path))
        for question in figure_exercise(reckoned, 3, 1, 1).questions:
            number = question.answer.split()[1 if question.kind == "tap drill" else 0]
            typed = (
                "+".join(question.answer.replace(" turns, line ", "+").split())
                if question.kind == "dial"
                else number
            )
            assert checked(question, typed).right, (path.name, question)
            assert all(
                not checked(question, f"{one.value}").right
                for one in question.slips
                if question.kind != "dial"
            )
