"""How data files are read: strictly, with lines. Only this folder and `storage/` know the file format;
nothing here knows what a row means. Begin in `data.py`.
"""
