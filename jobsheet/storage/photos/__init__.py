"""Photographs beside a job: files named by their content, in one folder beside it. What they show nobody
here asks. Begin with `kept_photographs.py`.
"""
