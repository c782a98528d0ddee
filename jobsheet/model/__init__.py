"""Values only: job, machine, setting, figure, limit, remark. Nothing here reads, reckons or draws. Begin in `job.py`."""
