"""Cutters, drills, taps, threads, and the lines by which a cabinet names them. Sizes and names only,
nothing of a job. Begin in `cutters.py`.
"""
