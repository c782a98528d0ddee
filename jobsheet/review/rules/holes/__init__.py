"""Rules about making holes. One question a file, and none knows another. Begin with
`spot_before_drilling.py`.
"""
