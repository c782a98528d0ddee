"""The way in: what is read before the toolkit wakes, what a start keeps for the next one, and what happens
when something unforeseen does. Nothing may import from here but the program's entry. Begin with `app.py`.
"""
