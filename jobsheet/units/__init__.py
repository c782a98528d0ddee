"""Text to number and back: the grammar that people type, the table of units. Begin in `grammar.py`."""
