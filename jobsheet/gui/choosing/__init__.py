"""Lists from which one thing is taken, by typing, by arrows, by the mouse: a kind of step, a material, a
machine, a cutter. Begin in `find_line.py`, which all of them are typed into.
"""
