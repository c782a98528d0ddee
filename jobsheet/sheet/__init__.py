"""Neutral pages become a PDF; only here is the page library known. What is said on a page is not decided
here. Begin in `pdf.py`.
"""
