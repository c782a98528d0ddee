"""Lines, arcs and text as values; nobody paints here. Begin in `drawn.py`."""
