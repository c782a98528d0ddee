"""Rules about what a hand can do. One question a file, and none knows another. Begin with
`pace_the_hand_can_hold.py`.
"""
