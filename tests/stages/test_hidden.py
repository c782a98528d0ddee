"""Hidden lines of a solid."""

import numpy as np

from jobsheet.stages.hidden import chained


def test_stretches_that_meet_become_one_line():
    lines = chained(np.array([(0, 0, 1, 0), (1, 0, 1, 1), (3, 3, 4, 4)], float), 4)
    assert sorted(len(line) for line in lines) == [2, 3]
