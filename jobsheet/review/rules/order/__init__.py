"""Rules about what comes before the first cut, and about the plan as a whole. One question a file, and none
knows another. Begin with `name_the_datum.py`.
"""
