"""What the part shall be, read from its lines. Here is what the words of a line mean and where a feature lies
on the part; whether the steps of a plan make it is asked in `stages/`. Begin with `feature_line.py`;
`sizes_line.py` reads the sizes of the whole.
"""
