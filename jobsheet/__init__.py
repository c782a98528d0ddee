"""Job sheets for manual milling machines. A job becomes figures, limits, remarks and paper: each folder is
one layer, and imports run down the list in `DEVELOPERS.md`, never up. What belongs to no layer stands in
the three files here, and nothing else may. Begin in `__main__.py`.
"""
