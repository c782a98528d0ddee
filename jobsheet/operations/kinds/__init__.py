"""One kind of operation a file: fields, figures, what it sweeps, how it reads on the sheet. No kind knows
another; what two share goes down into `shared/`. Begin with `tram_check.py`, a short one.
"""
