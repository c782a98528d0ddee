"""What can be asked why, as pages to read: titles and short answers; ids stay in files. No page has words
of its own where the thing it is about has them. Begin in `explained.py`.
"""
