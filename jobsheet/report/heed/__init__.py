"""What is to be heeded: notes, stop notes, boxes to tick, what was set aside. When a note is true is decided
in `review/notes/`, not here. Begin in `safety.py`.
"""
