"""A pytest plugin: the tests of real windows run one after the other, the rest beside them.

They share one screen, and two windows at once would take the keyboard from each other.
"""

import pytest


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Put all tests marked `e2e` into one group, which `--dist loadgroup` gives to one worker."""
    if not config.pluginmanager.hasplugin("xdist"):
        return
    for item in items:
        if item.get_closest_marker("e2e"):
            item.add_marker(pytest.mark.xdist_group("screen"))
