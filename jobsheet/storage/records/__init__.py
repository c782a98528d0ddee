"""Records that only grow: what test cuts showed of a machine, and what happened with a job. Nothing that
was written is ever written over. Begin in `proof_log.py`.
"""
