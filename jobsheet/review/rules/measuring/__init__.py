"""Rules about measuring. One question a file, and none knows another. Begin with
`measure_before_unclamping.py`.
"""
