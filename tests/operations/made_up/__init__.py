"""Kinds of step that the program does not have: nothing of it may need to know their names."""
