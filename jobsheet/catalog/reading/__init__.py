"""How data files are read: strictly, with lines."""
