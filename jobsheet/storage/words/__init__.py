"""What the words of older files say, as facts: of a bench step, of how a cut is done, of the header. Only
old files are read with them; a new word goes into no list here but as a fact. Begin in `from_format_1.py`.
"""
