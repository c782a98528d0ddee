"""One verb a file, found by walking this folder. A verb reads its words, asks further down and prints; no
verb knows another, and what two share stands beside this folder. Begin with `reach.py`, a short one.
"""
