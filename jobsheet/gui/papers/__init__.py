"""Papers: machine card and cabinet as typed text, a ruled column at the left, what it means at the right.
What they share stands here; no place may be known. Begin with `paper_window.py`.
"""
