"""The margin of the open row: what to dial, the beat of the handle, the limits towards their fence, the
answers beside them and the worked figures. It never asks and never changes anything but itself. Begin with
`margin.py`.
"""
