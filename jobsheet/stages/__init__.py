"""The work after every step: stock less the sweeps so far, as solids, and its pictures with hidden lines.
Solids check figures and never feed one; only here is the modeller known. Begin in `solids.py`.
"""
