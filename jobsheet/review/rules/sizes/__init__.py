"""Rules about sizes and their limits. One question a file, and none knows another. Begin with
`inside_the_stock.py`.
"""
