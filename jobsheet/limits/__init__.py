"""Demand against capacity, one limit a file in `each/`; the words of a verdict in `verdict.py`, what trials say in `evidence.py`. Begin in `register.py`."""
