"""What everything is painted with: the look of the moment and its tokens, type and lines, signs, bars, drawn
lines. No widget that holds anything lives here, and nothing of a job. Begin with `look.py`.
"""
