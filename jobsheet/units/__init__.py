"""Text to number and back: the grammar that people type, the table of units. Nothing here knows what a
number is the size of. Begin in `grammar.py`.
"""
