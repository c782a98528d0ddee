"""Neutral pages become a PDF; only here is the page library known. Begin in `pdf.py`."""
