"""What the pictures of a set-up say beside work and holding: numbered points, the first cut, the zero, what
is made; and how large they are. Nothing is painted here. Begin in `numbered.py`.
"""
