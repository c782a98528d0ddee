"""The command line: one verb a file in `verbs/`. What a verb answers is worked out further down; here it is
asked for and printed. Begin in `main.py`.
"""
