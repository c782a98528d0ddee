"""Rules on what holds the work. One question a file, and none knows another. Begin with
`vee_for_round_work.py`.
"""
