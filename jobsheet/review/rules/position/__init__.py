"""Rules on places, zeros and dials. One question a file, and none knows another. Begin with
`half_the_edge_finder.py`.
"""
