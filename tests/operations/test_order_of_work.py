"""The list of kinds in the order of work."""

from jobsheet.operations.choosing.order_of_work import GROUPS, in_order
from jobsheet.operations.registry import kinds
from jobsheet.operations.roles import BESIDE, HOLES, MILLS


def test_every_role_and_every_kind_stands_in_the_order_of_work():
    assert sorted(role for _, roles in GROUPS for role in roles) == sorted((*MILLS, *HOLES, *BESIDE))
    assert sorted(one.name for one in in_order()) == sorted(kinds())
