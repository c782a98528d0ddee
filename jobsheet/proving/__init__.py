"""What test cuts teach: the learned capacity of a machine, the chance that a cut ends badly, the size of
the next rung. `chance` and `rungs` are plain Python, for the edit's hot path; `learned` imports numpy and
is itself imported late. Reading and writing the log belongs to `storage/records/`. Begin in `learned.py`.
"""
