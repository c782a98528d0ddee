"""What is shipped or kept as data, as typed objects: metals, tools, where a cut begins,
tolerances. Begin in `reading/data.py`.
"""
