"""Demand against capacity, one limit a file in `each/`; the words of a verdict in `verdict.py`, what trials
say in `evidence.py`. A limit judges and mends nothing: what would be better is asked in `reckoning/`. Begin
in `register.py`.
"""
