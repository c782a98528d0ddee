"""The shelf: a folder of job files, found again by words and sizes.

The files are the truth; the index is one's own, on the local disk, and can be thrown away at any
time. Begin with `shelf_index.py`.
"""
