"""Formulas of cutting: standard library only, SI floats in and out."""
