"""The stage strip: the work after each step as small fixed drawings. Blocks and lines are values, made
without the toolkit; the strip paints them and says which was pressed. Begin with `strip.py`.
"""
