"""Lines, arcs and text as values; nobody paints here. Screen and paper ink the same values each in its own
way. Begin in `drawn.py`.
"""
