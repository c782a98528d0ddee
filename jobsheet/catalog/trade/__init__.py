"""Tolerances, dividing plates, and where the trade disagrees. Nothing here decides: rules and sheets ask.
Begin in `tolerances.py`.
"""
