"""Skeletons of what is added most often: one text a sort, with the files it needs and their tests. Begin in
`__main__.py`; `test_one_of_each.py` makes one of each in a copy and runs what everything here has to pass.
"""
