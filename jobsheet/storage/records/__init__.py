"""Records that only grow: what test cuts showed of a machine, and what happened with a job."""
