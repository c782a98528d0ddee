"""Results remembered by identity."""

from jobsheet.model.identity import by_identity


def test_the_same_value_is_asked_once_and_an_equal_one_again():
    asked = []

    @by_identity(2)
    def length(value):
        asked.append(value)
        return len(value)

    one, other = [1, 2], [1, 2]
    assert (length(one), length(one), length(other)) == (2, 2, 2)
    assert len(asked) == 2
    assert length([3]) == 1
    # More than two are not kept: the first is asked anew.
    assert length(one) == 2
    assert len(asked) == 4
