"""Machine card and cabinet, edited as papers: a ruled column of typed text at the left, what it means at the
right. Both are subjects of the same window. Begin with `paper_window.py`.
"""
