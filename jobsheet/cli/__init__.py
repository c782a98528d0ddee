"""The command line: one verb a file in `verbs/`. Begin in `main.py`."""
