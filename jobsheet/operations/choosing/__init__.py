"""Which kind of step comes next: by the words that are typed, and by what stands before. Nothing is added
to a job here: it says what is likely, and a person takes it. Begin in `likely.py`.
"""
