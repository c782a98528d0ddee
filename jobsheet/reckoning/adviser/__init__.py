"""The best cut of a step here, and why: one place that everything asks which suggests, mends or plans. It
recommends and changes nothing. Begin at `best_cut.py`.
"""
