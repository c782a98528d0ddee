"""How data files are read: strictly, with lines, remembered by their text."""
