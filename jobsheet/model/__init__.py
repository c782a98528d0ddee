"""Values only: job, machine, setting, figure, limit, remark. Nothing here reads, reckons or draws. What a
value means is said at its fields. Begin in `job.py`.
"""
