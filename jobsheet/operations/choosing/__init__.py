"""Which kind of step comes next: by the words that are typed, and by what stands before. Begin in `likely.py`."""
