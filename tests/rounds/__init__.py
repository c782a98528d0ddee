"""Long rounds of chance: files that were spoilt, writers that are killed, two at one file, disks that refuse.

`python -m tests.rounds mutated killed two refused --minutes 5` goes on where the last run of the same commit
ended, and prints the sums of all runs of it; `python -m tests.rounds` prints the page of counts alone. Each
failure found becomes an ordinary test.
"""
