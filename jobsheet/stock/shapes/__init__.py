"""One shape of stock a file; `SHAPE` at its end binds what it says. No shape knows another. Begin with
`hexagon.py`.
"""
