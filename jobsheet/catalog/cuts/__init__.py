"""Where a cut begins: feeds, depths, fluids. Tables and their sources only: which of the values a step
takes is the adviser's. Begin in `feeds.py`.
"""
