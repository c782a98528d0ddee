"""Rules on what the drawing asks: what the steps leave, what they make that nobody asked for, and whether
it is measured. One question a file, and none knows another. Begin with `hole_missing.py`.
"""
