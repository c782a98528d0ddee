"""Rules on how the work sits in the jaws of a vice, and on what lies under it. One question a file, and
none knows another. Begin with `tight_enough.py`.
"""
