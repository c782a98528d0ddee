"""Verdicts, severities and faces have words, and one that is not known is said as it is."""

from __future__ import annotations

import pytest

from jobsheet.gui.ink.spoken import face_word, severity_word, verdict_word
from jobsheet.gui.ink.tokens import SEVERITIES, VERDICTS
from jobsheet.model.lying import NORMALS


def test_every_verdict_and_severity_of_the_look_is_said(qapp):
    assert [verdict_word(one) for one in VERDICTS] == list(VERDICTS)
    assert [severity_word(one) for one in SEVERITIES] == list(SEVERITIES)


@pytest.mark.parametrize("face", sorted(NORMALS))
def test_every_face_can_be_up(qapp, face):
    assert face_word(face).endswith(" up")


def test_the_ends_are_called_ends(qapp):
    assert face_word("left") == "Left end up"
    assert face_word("rear") == "Rear up"


def test_what_is_not_known_is_said_as_it_is(qapp):
    assert (verdict_word("odd"), severity_word("odd"), face_word("odd")) == ("odd", "odd", "odd")
