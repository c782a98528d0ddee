"""Rules about the datum face and squaring. One question a file, and none knows another. Begin with
`sides_before_ends.py`.
"""
