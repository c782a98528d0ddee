"""Rules on what the solids say: one for each kind of fact. One question a file, and none knows another.
Begin with `something_is_left.py`.
"""
