"""What an edit would change, in words."""

from jobsheet.edit.commands import SetField
from jobsheet.edit.difference import changes
from jobsheet.edit.several_steps import DeleteSteps, MoveSteps
from jobsheet.edit.step_commands import AddOperation


def test_a_field_from_and_to(hm100):
    after = SetField("face-rough", "spindle", "900 rpm").apply(hm100)
    assert changes(hm100, after) == ("step 20, spindle: 560 rpm → 900 rpm",)


def test_only_what_moved_is_said_to_move(hm100):
    after = MoveSteps(("drill",), "set-up-1", 1).apply(hm100)
    lines = changes(hm100, after)
    assert [line for line in lines if line.startswith("moves")] == [line for line in lines if "Drill" in line]
    assert len([line for line in lines if line.startswith("moves")]) == 1


def test_added_and_taken_out(hm100):
    assert changes(hm100, DeleteSteps(("tap",)).apply(hm100))[0].startswith("takes out step 70")
    assert changes(hm100, AddOperation("set-up-1", "ream", "drill").apply(hm100))[0].startswith(
        "adds step 65"
    )


def test_nothing_changed_says_nothing(hm100):
    assert changes(hm100, hm100) == ()
