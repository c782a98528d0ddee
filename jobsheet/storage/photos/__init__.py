"""Photographs beside a job: files named by their content, in one folder beside it. Begin with `kept_photographs.py`."""
