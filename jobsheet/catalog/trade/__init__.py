"""Tolerances, dividing plates, and where the trade disagrees."""
