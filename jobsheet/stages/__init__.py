"""The work after every step: stock less the sweeps so far, as solids, and its pictures with hidden lines."""
