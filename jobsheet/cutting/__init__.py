"""Formulas of cutting: standard library only, SI floats in and out. Each names its source and its range;
nothing here knows a step, a machine or a material. Begin in `speed.py`; `formula.py` says what a formula
is.
"""
