"""What can be asked why, as pages to read: titles and short answers; ids stay in files. Begin in `explained.py`."""
