"""Rules about the machine and its speeds. One question a file, and none knows another. Begin with
`nothing_beyond.py`.
"""
