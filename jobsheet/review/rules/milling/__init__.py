"""Rules about the order and size of milling cuts. One question a file, and none knows another. Begin with
`rough_before_finish.py`.
"""
