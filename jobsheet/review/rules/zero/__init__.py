"""Rules on finding the zero, and on what loses it. One question a file, and none knows another. Begin with
`find_the_zero_here.py`.
"""
