"""Rules on ways of holding other than a vice or straps. One question a file, and none knows another. Begin
with `say_how_it_is_held.py`.
"""
