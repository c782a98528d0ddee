"""Metals: shipped ones, a person's own, densities. What a metal does in a cut is no figure of this folder;
formulas stand in `cutting/`. Begin in `materials.py`.
"""
