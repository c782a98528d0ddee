"""What lies on the desk: the job with its history, its figures, its file and its journal, the review, the
answers and the solids. No place and no window may be known here. Begin with `desk.py`.
"""
