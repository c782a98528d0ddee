"""What kinds of operation share; no kind knows another. What belongs to one kind alone stays in its own
file. Begin in `common.py`.
"""
