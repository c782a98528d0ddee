"""What everything is painted with: the look of the moment and its tokens, type and lines, signs, bars, drawn
lines, and the few things that wait until the first figures are painted. No widget that holds anything lives
here, and nothing of a job. Begin with `look.py`.
"""
