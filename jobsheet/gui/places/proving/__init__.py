"""The place where a machine is proved: the ladder, what was entered on it, what the machine has shown and what
to conclude. Reckoning belongs to `jobsheet/proving`. Begin with `proving_window.py`.
"""
